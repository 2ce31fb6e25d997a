//! What a unit lost from visit to visit, by what was proved of its level at both.

use super::Visit;
use crate::check::{Span, interval};
use crate::leak::{self, Consumption, Rate, Trend, consumption};
use crate::quantity::{Amount, Interval, Rounding, Unit};
use alloc::vec::Vec;
use serde::Serialize;

/// What was lost between two visits.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct Loss {
    /// The index of the visit it is counted from: the last one before it at whose end the level was known.
    pub from: usize,
    /// The index of the visit that found it.
    pub to: usize,
    /// What was lost; below zero where the level had risen.
    pub lost: Interval,
    /// The same per 1000 km, where both odometers were read and the same one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub per_1000_km: Option<Interval>,
    /// The same per 30 days, where both days are known and not the same.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub per_30_days: Option<Interval>,
}

/// What the losses of one unit say together.
#[derive(Debug)]
pub(super) struct Losses {
    pub(super) losses: Vec<Loss>,
    pub(super) trend: Trend,
    /// The distance from the last loss to the leak limit.
    pub(super) to_limit: Option<Interval>,
    /// All losses together, where there are any.
    pub(super) together: Option<Interval>,
    /// The newest leak limit that applied.
    pub(super) limit: Option<Amount>,
    pub(super) cautions: &'static [&'static str],
}

/// A departure that is known at the end of a visit, or of one and of what was poured since.
#[derive(Clone, Copy)]
struct Level {
    visit: usize,
    within: Span,
}

/// What was lost between two visits, in counts.
struct Found {
    from: usize,
    to: usize,
    lost: Span,
    unit: Unit,
}

fn span(interval: Interval) -> Span {
    let count = |end: Option<Amount>| end.and_then(|end| end.count());
    Span {
        lo: count(interval.lo()),
        hi: count(interval.hi()),
    }
}

const fn is_bounded(span: Span) -> bool {
    span.lo.is_some() && span.hi.is_some()
}

/// The losses between visits in order of time. `odometers` counts up at every visit at which another odometer, or another
/// reading of it, began.
pub(super) fn losses(visits: &[Visit], odometers: &[usize]) -> Losses {
    let mut level: Option<Level> = None;
    let mut found: Vec<Found> = Vec::new();
    for (to, visit) in visits.iter().enumerate() {
        let [as_found, net, now] = [visit.as_found, visit.net, visit.now].map(span);
        // A loss that is known at one end only is told where the level is known again after it.
        let ends = is_bounded(as_found) || is_bounded(now);
        if let Some(level) = level.filter(|_| ends) {
            let lost = level.within.minus(as_found);
            let end = visit.as_found.hi().or(visit.as_found.lo());
            if let Some(end) = end {
                found.push(Found {
                    from: level.visit,
                    to,
                    lost,
                    unit: end.unit(),
                });
            }
        }
        let before = if is_bounded(as_found) {
            let within = as_found;
            Some(Level { visit: to, within })
        } else {
            level
        };
        // What was poured moves a level that is known, wherever it was known from.
        let moved = before.map(|before| Level {
            within: before.within.plus(net),
            ..before
        });
        level = if is_bounded(now) {
            let within = now;
            Some(Level { visit: to, within })
        } else {
            moved.filter(|moved| is_bounded(moved.within))
        };
    }
    together(visits, odometers, &found)
}

fn together(visits: &[Visit], odometers: &[usize], found: &[Found]) -> Losses {
    let mut losses = Vec::new();
    let mut rates = Vec::new();
    let mut last = None;
    for found in found {
        let lost = interval(found.lost, found.unit);
        let is_one = odometers.get(found.from) == odometers.get(found.to);
        let ends = ends(visits, found, lost, is_one);
        let rate = rate(found, lost, ends.as_ref());
        losses.push(Loss {
            from: found.from,
            to: found.to,
            lost,
            per_1000_km: rate.per_1000_km,
            per_30_days: rate.per_30_days,
        });
        rates.push(rate);
        last = ends.map(|[_, end]| (found.to, end));
    }
    let until = last.map_or(visits, |(to, _)| visits.get(..=to).unwrap_or(visits));
    let limit = until.iter().rev().find_map(|visit| visit.limit);
    let last = last.map(|(_, end)| end);
    let told = Consumption::of(rates, last.as_ref(), limit).ok();
    let lost: Vec<Interval> = losses.iter().map(|loss| loss.lost).collect();
    Losses {
        trend: told.as_ref().map_or(Trend::NotTold, |told| told.trend),
        to_limit: told.as_ref().and_then(|told| told.distance),
        together: sum(&lost),
        limit,
        cautions: match told {
            Some(told) if !losses.is_empty() => told.cautions,
            _ => &[],
        },
        losses,
    }
}

/// Losses together, in the unit of the last.
pub(super) fn sum(losses: &[Interval]) -> Option<Interval> {
    let last = losses.last()?;
    let unit = last.hi().or(last.lo())?.unit();
    let together = losses.iter().map(|loss| span(*loss)).reduce(Span::plus)?;
    Some(interval(together, unit))
}

/// The rates of one loss, by the calculator. Of a loss that is known at one end only, the rate is known at that end only.
fn rate(found: &Found, lost: Interval, ends: Option<&[leak::Visit; 2]>) -> Rate {
    let between = ends.and_then(|ends| consumption(ends, None).ok());
    let rate = between.and_then(|between| between.rates.into_iter().next());
    let known = |rate: Interval| {
        let [lo, hi] = [(lost.lo(), rate.lo()), (lost.hi(), rate.hi())];
        Interval::new(lo.0.and(lo.1), hi.0.and(hi.1)).ok()
    };
    Rate {
        from: found.from,
        to: found.to,
        per_1000_km: rate.as_ref().and_then(|rate| known(rate.per_1000_km?)),
        per_30_days: rate.as_ref().and_then(|rate| known(rate.per_30_days?)),
    }
}

/// The two visits of a loss as the calculator takes them: with the middle of what was lost, and how far that may be off; the
/// end that is known where only one is.
fn ends(
    visits: &[Visit],
    found: &Found,
    lost: Interval,
    by_distance: bool,
) -> Option<[leak::Visit; 2]> {
    let (lo, hi) = (lost.lo().or(lost.hi())?, lost.hi().or(lost.lo())?);
    let (low, high) = (lo.count()?, hi.count()?);
    let middle = low.saturating_add(high) >> 1;
    let amount = |count, rounding| Amount::from_count(count, hi.unit(), 9, rounding).ok();
    let net = amount(middle, Rounding::HalfEven)?;
    let uncertainty = Some(amount(high.saturating_sub(middle), Rounding::Ceiling)?);
    let visit = |visit: &Visit| leak::Visit {
        odometer: visit.odometer.filter(|_| by_distance),
        date: visit.date,
        net,
        uncertainty,
        odometer_uncertainty: None,
    };
    Some([visit(visits.get(found.from)?), visit(visits.get(found.to)?)])
}
