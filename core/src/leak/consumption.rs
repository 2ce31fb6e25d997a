//! What is lost from visit to visit, over the distance and over the days between.

use super::{above_zero, computed, from_zero, number, out_of_range};
use crate::error::{Error, ErrorKind, Fault};
use crate::quantity::{Amount, Interval, Unit, convert};
use crate::word::words;
use alloc::format;
use alloc::string::ToString;
use alloc::vec::Vec;
use jiff::civil::Date;
use serde::Serialize;

/// One visit: where the odometer stood, and what had to be added for the level to be right again.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Visit {
    /// The odometer, if it was read.
    pub odometer: Option<Amount>,
    /// The day.
    pub date: Option<Date>,
    /// What was added less what ran out again; below zero where there was too much.
    pub net: Amount,
    /// How far `net` may be off either way at most, the level left at the visit before included; half of its last printed
    /// place where it is not known.
    pub uncertainty: Option<Amount>,
    /// How far `odometer` may be off either way at most; half of its last printed place where it is not known.
    pub odometer_uncertainty: Option<Amount>,
}

impl Visit {
    /// A visit of which no more is known; with more, written `Visit { date, ..Visit::new(odometer, net) }`.
    #[must_use]
    pub const fn new(odometer: Amount, net: Amount) -> Self {
        Visit {
            odometer: Some(odometer),
            date: None,
            net,
            uncertainty: None,
            odometer_uncertainty: None,
        }
    }
}

/// What was lost between two visits, as everything it can have been.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct Rate {
    /// The index of the earlier visit.
    pub from: usize,
    /// The index of the later visit.
    pub to: usize,
    /// Volume per 1000 km, in the unit of the later visit; absent where there may be no distance between, or an odometer was
    /// not read.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub per_1000_km: Option<Interval>,
    /// Volume per 30 days, in the unit of the later visit; absent where the days are not known or none lies between.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub per_30_days: Option<Interval>,
}

words! {
    /// Whether more is lost than at first.
    pub enum Trend {
        /// All that the last rate can be is above all that the first can be.
        Rising = "rising",
        /// The first and the last rate may be the same: no change is shown, and none is ruled out.
        NotShown = "not_shown",
        /// All that the last rate can be is below all that the first can be.
        Falling = "falling",
        /// There are no two rates to compare.
        NotTold = "not_told",
    }
}

/// What several visits say together.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct Consumption {
    /// One rate from each visit to the next. What the first visit found has no distance to be set against.
    pub rates: Vec<Rate>,
    /// The first rate against the last: per distance where both have one, else per time.
    pub trend: Trend,
    /// The distance from the last visit until the allowed shortage is reached at the last rate, in the unit of the last
    /// odometer; unbounded where that rate may be nothing or the loss is rising, absent where the last visit found no loss
    /// or the rate is not told.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub distance: Option<Interval>,
    /// Ids of what to mind.
    pub cautions: &'static [&'static str],
}

/// What goes with every answer, then what goes with a distance, last what goes with one of a rising loss.
const CAUTIONS: &[&str] = &[
    "no_normal_use",
    "leak_on_hot",
    "no_dry_start",
    "sooner_if_rising",
];

/// What is lost per 1000 km and per 30 days between visits, whether it rises, and how far it is to an allowed `shortage`.
///
/// Visits in the order they were made, the odometer where it was read, in any unit of length and never back, dates where they
/// are known and never back; `shortage` above zero. Each rate is what was lost over what lies between, with both at all they can be; days
/// are counted from date to date. A distance is told only where the last visit found a loss; while the loss rises its far
/// end is left open, and the shortage may come before even its near end. A unit that is sealed has no normal consumption. Common practice, no source.
///
/// # Errors
///
/// [`WrongKind`](ErrorKind::WrongKind) and [`OutOfRange`](ErrorKind::OutOfRange), with the place, as `visits[2].odometer`.
///
/// ```
/// use brimline::{Amount, leak::{Trend, Visit, consumption}};
/// let visit = |odometer, net| Ok::<_, brimline::Error>(Visit {
///     odometer_uncertainty: Some(Amount::parse("0 km")?),
///     uncertainty: Some(Amount::parse("0.1 L")?),
///     ..Visit::new(Amount::parse(odometer)?, Amount::parse(net)?)
/// });
/// let visits = [visit("40000 km", "1.2 L")?, visit("50000 km", "0.4 L")?, visit("60000 km", "0.9 L")?];
/// let told = consumption(&visits, Amount::parse("0.5 L")?)?;
/// assert_eq!(told.rates[1].per_1000_km.unwrap().to_string(), "[0.08 L, 0.1 L]");
/// assert_eq!(told.trend, Trend::Rising);
/// // The loss is rising, so nothing is told of the far end.
/// assert_eq!(told.distance.unwrap().to_string(), "[5000 km, +inf)");
/// # Ok::<(), brimline::Error>(())
/// ```
pub fn consumption(
    visits: &[Visit],
    shortage: impl Into<Option<Amount>>,
) -> Result<Consumption, Error> {
    let mut rates = Vec::new();
    let mut before: Option<Read> = None;
    for (to, visit) in visits.iter().enumerate() {
        let placed = |error: Error| {
            let path = format!("visits[{to}].{}", error.first().path);
            Error::from(error.first().clone().at(path))
        };
        let mut read = Read::of(visit).map_err(placed)?;
        if let (Some(earlier), Some(from)) = (&before, to.checked_sub(1)) {
            let (per_1000_km, per_30_days) = earlier.rates_to(&read).map_err(placed)?;
            rates.push(Rate {
                from,
                to,
                per_1000_km,
                per_30_days,
            });
            read.last_date = visit.date.or(earlier.last_date);
            read.last_odometer = visit.odometer.or(earlier.last_odometer);
        }
        before = Some(read);
    }
    Consumption::of(rates, visits.last(), shortage.into())
}

impl Consumption {
    /// What rates say together; the last of them ends at the visit `last`.
    pub(crate) fn of(
        rates: Vec<Rate>,
        last: Option<&Visit>,
        shortage: Option<Amount>,
    ) -> Result<Self, Error> {
        let allowed = shortage.map(|allowed| above_zero("shortage", allowed, Unit::Litre));
        let trend = trend(&rates);
        let rate = rates.last().and_then(|last| last.per_1000_km);
        let unit = last
            .filter(|last| is_loss(&last.net))
            .and_then(|last| Some(last.odometer?.unit()));
        let distance = match (allowed.transpose()?, rate, unit) {
            (Some(allowed), Some(rate), Some(unit)) => reach(allowed, rate, trend, unit)?,
            _ => None,
        };
        let told = match (distance, trend) {
            (None, _) => 1,
            (_, Trend::Rising) => CAUTIONS.len(),
            _ => 3,
        };
        Ok(Consumption {
            rates,
            trend,
            distance,
            cautions: CAUTIONS.get(..told).unwrap_or(CAUTIONS),
        })
    }
}

/// One visit with all that its numbers can be.
struct Read {
    visit: Visit,
    /// In its own unit.
    net: (f64, f64),
    /// In km, if it was read.
    odometer: Option<(f64, f64)>,
    /// The last odometer up to here.
    last_odometer: Option<Amount>,
    /// The last date up to here.
    last_date: Option<Date>,
}

impl Read {
    fn of(visit: &Visit) -> Result<Self, Error> {
        let range = |amount: Amount, off: Option<Amount>, unit, [name, off_name]: [&str; 2]| {
            let middle = number(name, amount, unit)?;
            let off = match off {
                Some(off) => from_zero(off_name, off, unit)?,
                None => number(name, amount.resolution(), unit)? / 2.0,
            };
            Ok::<_, Error>((middle - off, middle + off))
        };
        // Of the right kind, and from then on in its own unit.
        number("net", visit.net, Unit::Litre)?;
        let net = ["net", "uncertainty"];
        let odometer = ["odometer", "odometer_uncertainty"];
        Ok(Read {
            visit: *visit,
            net: range(visit.net, visit.uncertainty, visit.net.unit(), net)?,
            odometer: visit
                .odometer
                .map(|at| range(at, visit.odometer_uncertainty, Unit::Kilometre, odometer))
                .transpose()?,
            last_odometer: visit.odometer,
            last_date: visit.date,
        })
    }

    /// What was lost from here to a later visit, per 1000 km and per 30 days.
    fn rates_to(&self, later: &Read) -> Result<(Option<Interval>, Option<Interval>), Error> {
        let date = later.visit.date;
        if let (Some(last), Some(at)) = (self.last_odometer, later.visit.odometer)
            && at < last
        {
            let hint = "put the visits in the order they were made; a replaced odometer begins a new history";
            let fault = out_of_range("odometer", at).hint(hint);
            return Err(fault.allowed([format!("at least {last}")]).into());
        }
        if let (Some(last), Some(date)) = (self.last_date, date)
            && date < last
        {
            let fault = Fault::new(ErrorKind::OutOfRange)
                .at("date")
                .got(&date.to_string());
            let hint = "put the visits in the order they were made";
            return Err(fault
                .allowed([format!("{last} or later")])
                .hint(hint)
                .into());
        }
        let driven = self.odometer.zip(later.odometer);
        let driven = driven.map_or((0.0, 0.0), |(from, to)| (to.0 - from.1, to.1 - from.0));
        let days = self.visit.date.zip(date).map_or(0.0, |(from, to)| {
            to.duration_since(from).as_secs_f64() / DAY_SECONDS
        });
        let unit = later.visit.net.unit();
        Ok((
            per(later.net, driven, 1000.0, unit)?,
            per(later.net, (days, days), 30.0, unit)?,
        ))
    }
}

const DAY_SECONDS: f64 = 86_400.0;

/// All that a loss can be for so much of what lies between; `None` where that may be nothing.
fn per(
    lost: (f64, f64),
    over: (f64, f64),
    size: f64,
    unit: Unit,
) -> Result<Option<Interval>, Error> {
    let (least, most) = over;
    if least <= 0.0 {
        return Ok(None);
    }
    let lo = lost.0 / if lost.0 < 0.0 { least } else { most };
    let hi = lost.1 / if lost.1 < 0.0 { most } else { least };
    let [lo, hi] = [lo, hi].map(|end| computed("net", end * size, unit));
    Interval::new(Some(lo?), Some(hi?)).map(Some)
}

fn is_loss(amount: &Amount) -> bool {
    !amount.is_negative() && !amount.is_zero()
}

/// The distance to a shortage in L at a rate; `None` where nothing is lost.
fn reach(
    allowed: f64,
    per_1000_km: Interval,
    trend: Trend,
    unit: Unit,
) -> Result<Option<Interval>, Error> {
    let far = |rate: Amount| {
        let km = allowed / number("shortage", rate, Unit::Litre)? * 1000.0;
        let far = convert(km, Unit::Kilometre, unit)?;
        computed("shortage", far, unit)
    };
    let Some(most) = per_1000_km.hi().filter(is_loss) else {
        return Ok(None);
    };
    let least = per_1000_km.lo().filter(is_loss);
    let least = least.filter(|_| trend != Trend::Rising);
    // What lies further off than an amount can tell is as good as unbounded.
    let latest = least.and_then(|least| far(least).ok());
    Interval::new(Some(far(most)?), latest).map(Some)
}

fn trend(rates: &[Rate]) -> Trend {
    let (Some(first), Some(last), true) = (rates.first(), rates.last(), rates.len() > 1) else {
        return Trend::NotTold;
    };
    let per_distance = first.per_1000_km.zip(last.per_1000_km);
    let is_below = |one: Interval, other: Interval| {
        let gap = one.hi().zip(other.lo());
        gap.is_some_and(|(hi, lo)| hi < lo)
    };
    match per_distance.or(first.per_30_days.zip(last.per_30_days)) {
        Some((first, last)) if is_below(first, last) => Trend::Rising,
        Some((first, last)) if is_below(last, first) => Trend::Falling,
        Some(_) => Trend::NotShown,
        None => Trend::NotTold,
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, clippy::indexing_slicing)]

    use super::*;

    fn amount(text: &str) -> Amount {
        Amount::parse(text).unwrap()
    }

    fn visit(odometer: &str, date: &str, net: &str, off: &str) -> Visit {
        Visit {
            date: date.parse().ok(),
            uncertainty: Some(amount(off)),
            odometer_uncertainty: Some(amount("0 km")),
            ..Visit::new(amount(odometer), amount(net))
        }
    }

    fn told(interval: Option<Interval>) -> alloc::string::String {
        interval.map_or("none".into(), |interval| interval.to_string())
    }

    // Worked by hand; the rule is common practice, no source.

    #[test]
    fn rates_over_distance_and_days() {
        let visits = [
            visit("40000 km", "2024-01-01", "3 L", "0.1 L"),
            visit("45000 km", "2024-03-01", "0.5 L", "0.1 L"),
            visit("45000 km", "2024-03-31", "0.2 L", "0.05 L"),
        ];
        let answer = consumption(&visits, amount("0.5 L")).unwrap();
        // 2024 has a 29 February: 60 days, then 30.
        let [driven, parked] = &answer.rates[..] else {
            unreachable!("two rates of three visits")
        };
        assert_eq!((driven.from, driven.to), (0, 1));
        assert_eq!(told(driven.per_1000_km), "[0.08 L, 0.12 L]");
        assert_eq!(told(driven.per_30_days), "[0.2 L, 0.3 L]");
        assert_eq!(told(parked.per_1000_km), "none");
        assert_eq!(told(parked.per_30_days), "[0.15 L, 0.25 L]");
        assert_eq!((answer.trend, answer.distance), (Trend::NotShown, None));
    }

    #[test]
    fn a_trend_is_firm_only_where_the_ends_are_apart() {
        let trend = |last: &str, off: &str| {
            let visits = [
                visit("0 km", "", "1 L", "0 L"),
                visit("1000 km", "", "0.40 L", "0.10 L"),
                visit("2000 km", "", "9 L", "0 L"),
                visit("3000 km", "", last, off),
            ];
            consumption(&visits, None).unwrap().trend
        };
        assert_eq!(trend("0.60 L", "0.10 L"), Trend::NotShown);
        assert_eq!(trend("0.61 L", "0.10 L"), Trend::Rising);
        assert_eq!(trend("0.20 L", "0.10 L"), Trend::NotShown);
        assert_eq!(trend("0.19 L", "0.10 L"), Trend::Falling);
        let alone = [
            visit("0 km", "", "1 L", "0 L"),
            visit("9 km", "", "1 L", "0 L"),
        ];
        assert_eq!(consumption(&alone, None).unwrap().trend, Trend::NotTold);
        assert_eq!(consumption(&[], None).unwrap().trend, Trend::NotTold);
    }

    #[test]
    fn the_distance_is_open_where_nothing_may_be_lost() {
        let distance = |net: &str, off: &str| {
            let visits = [
                visit("0 km", "", "0 L", "0 L"),
                visit("1000 km", "", net, off),
            ];
            told(consumption(&visits, amount("500 mL")).unwrap().distance)
        };
        assert_eq!(distance("0.4 L", "0.1 L"), "[1000 km, 1666.66666667 km]");
        assert_eq!(distance("0.1 L", "0.1 L"), "[2500 km, +inf)");
        // None was found to be lost, whatever may have been.
        assert_eq!(distance("0 L", "0.1 L"), "none");
        assert_eq!(distance("-0.1 L", "0.2 L"), "none");
        let one = [visit("0 km", "", "1 L", "0 L")];
        assert_eq!(consumption(&one, amount("1 L")).unwrap().distance, None);
    }

    #[test]
    fn what_has_no_odometer_has_a_rate_by_time() {
        let unread = |date: &str| Visit {
            odometer: None,
            ..visit("0 km", date, "0.5 L", "0.1 L")
        };
        let visits = [
            visit("1000 km", "2024-01-01", "0 L", "0 L"),
            unread("2024-01-31"),
            visit("3000 km", "2024-03-01", "0.5 L", "0.1 L"),
        ];
        let answer = consumption(&visits, amount("1 L")).unwrap();
        let rates = answer.rates.iter();
        assert!(rates.clone().all(|rate| rate.per_1000_km.is_none()));
        assert!(
            rates
                .clone()
                .all(|rate| told(rate.per_30_days) == "[0.4 L, 0.6 L]")
        );
        assert_eq!((answer.trend, answer.distance), (Trend::NotShown, None));
        // One that was not read does not hide one that goes back.
        let back = visit("999 km", "2024-03-01", "0.5 L", "0.1 L");
        let error = consumption(&[visits[0], visits[1], back], None).unwrap_err();
        assert_eq!(error.first().path, "visits[2].odometer");
    }

    #[test]
    fn a_rising_loss_leaves_the_far_end_open() {
        let visits = [
            visit("0 km", "", "0 L", "0 L"),
            visit("1000 km", "", "0.2 L", "0.1 L"),
            visit("2000 km", "", "0.9 L", "0.1 L"),
        ];
        let rising = consumption(&visits, amount("1 L")).unwrap();
        assert_eq!(rising.trend, Trend::Rising);
        assert_eq!(told(rising.distance), "[1000 km, +inf)");
        let on_hot = ["no_normal_use", "leak_on_hot", "no_dry_start"];
        assert_eq!(rising.cautions[..3], on_hot);
        assert_eq!(rising.cautions[3..], ["sooner_if_rising"]);
        let alone = consumption(&visits[..2], amount("1 L")).unwrap();
        assert_eq!(alone.cautions, on_hot);
        let not_asked = consumption(&visits, None).unwrap();
        assert_eq!(not_asked.cautions, ["no_normal_use"]);
    }

    #[test]
    fn what_is_not_said_is_half_of_the_last_place() {
        let [first, last] = ["100 km", "200 km"].map(|at| Visit::new(amount(at), amount("0.50 L")));
        let rates = consumption(&[first, last], None).unwrap().rates;
        // 0.495 to 0.505 L over 99 to 101 km.
        assert_eq!(told(rates[0].per_1000_km), "[4.900990099 L, 5.101010101 L]");
        // An odometer that may not have moved at all tells no rate.
        let vague = Visit {
            odometer_uncertainty: Some(amount("200 km")),
            ..last
        };
        let rates = consumption(&[first, vague], None).unwrap().rates;
        assert_eq!(rates[0].per_1000_km, None);
    }

    #[test]
    fn miles_and_quarts_are_read_and_told() {
        let visits = [
            visit("1000 mi", "", "0 US qt", "0 US qt"),
            visit("2000 mi", "", "1.609344 US qt", "0 L"),
        ];
        let answer = consumption(&visits, amount("1 US qt")).unwrap();
        assert_eq!(told(answer.rates[0].per_1000_km), "[1 US qt, 1 US qt]");
        // 1000 km at 1 US qt per 1000 km, by the definition of the mile.
        assert_eq!(
            told(answer.distance),
            "[621.371192237 mi, 621.371192237 mi]"
        );
    }

    #[test]
    fn refusals_name_the_visit() {
        let good = visit("1000 km", "2024-05-02", "1 L", "0 L");
        for (bad, kind, path) in [
            (
                visit("999 km", "", "1 L", "0 L"),
                ErrorKind::OutOfRange,
                "visits[1].odometer",
            ),
            (
                visit("999 L", "", "1 L", "0 L"),
                ErrorKind::WrongKind,
                "visits[1].odometer",
            ),
            (
                visit("2000 km", "2024-05-01", "1 L", "0 L"),
                ErrorKind::OutOfRange,
                "visits[1].date",
            ),
            (
                visit("2000 km", "", "1 kg", "0 L"),
                ErrorKind::WrongKind,
                "visits[1].net",
            ),
            (
                visit("2000 km", "", "1 L", "-1 L"),
                ErrorKind::OutOfRange,
                "visits[1].uncertainty",
            ),
        ] {
            let error = consumption(&[good, bad], None).unwrap_err();
            assert_eq!((error.kind(), error.first().path.as_str()), (kind, path));
        }
        let vague = Visit {
            odometer_uncertainty: Some(amount("1 L")),
            ..good
        };
        let error = consumption(&[vague], None).unwrap_err();
        assert_eq!(error.first().path, "visits[0].odometer_uncertainty");
        let error = consumption(&[good], amount("0 L")).unwrap_err();
        assert_eq!(error.first().path, "shortage");
        // A date between that is not known does not hide one that goes back.
        let unknown = visit("1500 km", "", "1 L", "0 L");
        let back = visit("2000 km", "2024-05-01", "1 L", "0 L");
        let error = consumption(&[good, unknown, back], None).unwrap_err();
        assert_eq!(error.first().path, "visits[2].date");
    }
}
