//! What a forecast answers.

use super::curve::{Fitted, Shape, Told};
use super::difference;
use super::forecast::{Forecast, LEAST};
use crate::quantity::{Amount, Rounding, Unit};
use crate::word::words;
use alloc::vec::Vec;
use serde::Serialize;

words! {
    /// How a forecast was made.
    pub enum Method {
        /// From a first-order response fitted to the readings: the rate falls as the asymptote nears.
        FirstOrder = "first_order",
        /// From the straight line through the latest readings.
        Slope = "slope",
        /// Not at all.
        None = "none",
    }
}

words! {
    /// Why a forecast was not made by a first-order response, or not all of it.
    pub enum Reason {
        /// Fewer than four readings are believed, or for a line fewer than three.
        TooFew = "too_few",
        /// The readings do not rise.
        NotWarming = "not_warming",
        /// The readings do not tell yet whether they get there: the asymptote lies less than twice its standard uncertainty
        /// beyond.
        AsymptoteUnknown = "asymptote_unknown",
        /// The readings level out before they get there.
        AsymptoteBelow = "asymptote_below",
        /// At this rate it takes more than a day.
        TooSlow = "too_slow",
        /// The reading stands still.
        Stuck = "stuck",
    }
}

/// When something happens, in whole seconds from the last reading or pour; `0 s` where it has happened.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct Span {
    /// Hardly earlier, rounded down: two standard uncertainties before the likely time; by the steepest pair of readings where
    /// a line is drawn; at the rate of now where the asymptote is not known to lie beyond.
    pub earliest: Amount,
    /// Most likely; absent where the asymptote is not known to lie beyond.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub likely: Option<Amount>,
    /// Hardly later, rounded up: two standard uncertainties after the likely time, or by the flattest pair; absent where
    /// nothing bounds it within a day.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub latest: Option<Amount>,
}

/// When the window opens and closes.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct Outlook {
    /// How it was told.
    pub method: Method,
    /// Why not by a first-order response, or not all of it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub reason: Option<Reason>,
    /// The temperature at the last reading or pour by that method, to a hundredth of the unit last read in; without a method
    /// the last believed reading. Absent where there is none.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub now: Option<Amount>,
    /// How many degrees a minute it rises there, to a hundredth.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub rate: Option<Amount>,
    /// When the lower limit is reached.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub opens: Option<Span>,
    /// When the upper limit is reached.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub closes: Option<Span>,
    /// Places, from 0, of the readings still held that were not believed.
    pub suspect: Vec<u32>,
}

/// What is further away than this many seconds is not told.
const HORIZON: f64 = 86_400.0;

fn seconds(number: f64) -> Option<Amount> {
    let number = number.max(0.0);
    let amount = Amount::from_computed(number, Unit::Second).ok();
    amount.filter(|_| number <= HORIZON)
}

impl Span {
    fn of(earliest: f64, likely: Option<f64>, latest: Option<f64>) -> Option<Self> {
        Some(Span {
            earliest: seconds(libm::floor(earliest))?,
            likely: likely.and_then(|likely| seconds(libm::rint(likely))),
            latest: latest.and_then(|latest| seconds(libm::ceil(latest))),
        })
    }

    fn past() -> Option<Self> {
        Span::of(0.0, Some(0.0), Some(0.0))
    }
}

impl Forecast {
    /// What the readings so far tell, without allocating where none is suspect.
    ///
    /// By a first-order response from four readings on, where the readings show that its asymptote lies beyond the limit; by
    /// the line through the latest six otherwise, which is early where the warming slows down; not at all where they do not
    /// rise or stand still.
    ///
    /// Source: the delta method for the uncertainty, from the scatter asked for or, where larger, the one the readings show;
    /// the median of pairwise slopes after Theil (1950) and Sen (1968).
    #[must_use]
    pub fn answer(&self) -> Outlook {
        let told = if self.watch.is_stuck {
            Err(Reason::Stuck)
        } else {
            self.by_curve().or_else(|reason| self.by_slope(reason))
        };
        let mut outlook = told.unwrap_or_else(|reason| self.by_nothing(reason));
        let doubted = self.task().points.iter().filter(|point| point.doubted);
        outlook.suspect = doubted.map(|point| point.index).collect();
        outlook
    }

    /// A limit in kelvin over the first reading.
    fn over(&self, limit: Option<f64>) -> Option<f64> {
        let (_, first) = self.origin?;
        limit.map(|limit| limit - first)
    }

    fn outlook(&self, method: Method, reason: Option<Reason>, now: f64, rate: f64) -> Outlook {
        let rounded = |value, unit| {
            let amount = Amount::from_si(value, unit).ok()?;
            amount.to(unit, 2, Rounding::HalfEven).ok()
        };
        let first = self.origin.map_or(0.0, |(_, first)| first);
        Outlook {
            method,
            reason,
            now: rounded(first + now, self.unit),
            rate: rounded(rate * 60.0, difference(self.unit)),
            opens: None,
            closes: None,
            suspect: Vec::new(),
        }
    }

    fn by_curve(&self) -> Result<Outlook, Reason> {
        if self
            .task()
            .believed()
            .nth(LEAST.saturating_sub(1))
            .is_none()
        {
            return Err(Reason::TooFew);
        }
        let is_curved = |fitted: &Fitted| fitted.shape == Shape::Curved;
        let fitted = self.fitted.filter(is_curved);
        let ahead = fitted.and_then(|fitted| Ahead::of(self, fitted));
        let ahead = ahead.ok_or(Reason::AsymptoteUnknown)?;
        if ahead.rate <= 0.0 {
            return Err(Reason::NotWarming);
        }
        let now = ahead.fitted.last.value;
        let (opens, mut reason) = ahead.to(self, self.over(self.min));
        let (closes, other) = ahead.to(self, self.over(self.max));
        let next = if opens.is_none_or(|span| span.latest.is_some_and(|latest| latest.is_zero())) {
            reason.or(other)
        } else {
            reason
        };
        if next == Some(Reason::AsymptoteUnknown) {
            return Err(Reason::AsymptoteUnknown);
        }
        reason = reason.or(other);
        Ok(Outlook {
            opens,
            closes,
            ..self.outlook(Method::FirstOrder, reason, now, ahead.rate)
        })
    }

    fn by_slope(&self, mut reason: Reason) -> Result<Outlook, Reason> {
        let slope = self.task().slope(self.now).ok_or(Reason::TooFew)?;
        if slope.likely <= 0.0 {
            return Err(Reason::NotWarming);
        }
        let mut span = |limit: Option<f64>| {
            let left = self.over(limit)? - slope.now;
            if left <= 0.0 {
                return Span::past();
            }
            let latest = (slope.least > 0.0).then(|| left / slope.least);
            let span = Span::of(left / slope.most, Some(left / slope.likely), latest);
            if span.is_none_or(|span| span.likely.is_none()) {
                reason = Reason::TooSlow;
            }
            span
        };
        let (opens, closes) = (span(self.min), span(self.max));
        Ok(Outlook {
            opens,
            closes,
            ..self.outlook(Method::Slope, Some(reason), slope.now, slope.likely)
        })
    }

    fn by_nothing(&self, reason: Reason) -> Outlook {
        let task = self.task();
        let rate = task.slope(self.now).map(|slope| slope.likely);
        let last = task.believed().next_back().map(|point| point.over);
        let outlook = self.outlook(
            Method::None,
            Some(reason),
            last.unwrap_or(0.0),
            rate.unwrap_or(0.0),
        );
        let past = |limit: Option<f64>| {
            let is_past = self.over(limit)? <= last? && reason != Reason::Stuck;
            is_past.then(Span::past).flatten()
        };
        Outlook {
            now: outlook.now.filter(|_| last.is_some()),
            rate: outlook.rate.filter(|_| rate.is_some()),
            opens: past(self.min),
            closes: past(self.max),
            ..outlook
        }
    }
}

/// A fitted response, seen from now on.
struct Ahead {
    fitted: Fitted,
    end: Told,
    /// Twice the standard uncertainty of the asymptote.
    margin: f64,
    rate: f64,
    variance: f64,
}

impl Ahead {
    fn of(forecast: &Forecast, fitted: Fitted) -> Option<Self> {
        let curve = fitted.curve;
        let end = curve.asymptote(&forecast.task());
        let variance = fitted
            .normal
            .variance()
            .max(forecast.scatter * forecast.scatter);
        Some(Ahead {
            fitted,
            end,
            margin: 2.0 * fitted.normal.uncertainty(end.by, variance)?,
            rate: curve.heating - curve.loss * fitted.last.value,
            variance,
        })
    }

    /// When a limit is reached, or why that is not known.
    fn to(&self, forecast: &Forecast, limit: Option<f64>) -> (Option<Span>, Option<Reason>) {
        let Some(limit) = limit else {
            return (None, None);
        };
        let now = &self.fitted.last;
        let left = self.end.value - limit;
        if left <= -self.margin {
            return (None, Some(Reason::AsymptoteBelow));
        }
        if limit > now.value && (left < self.margin || left <= 0.0) {
            let soonest = Span::of((limit - now.value) / self.rate, None, None);
            return (soonest, Some(Reason::AsymptoteUnknown));
        }
        let time = self.fitted.curve.time_to(limit, now, &forecast.task());
        let Some(uncertainty) = self.fitted.normal.uncertainty(time.by, self.variance) else {
            return (None, Some(Reason::AsymptoteUnknown));
        };
        let (early, late) = (
            time.value - 2.0 * uncertainty,
            time.value + 2.0 * uncertainty,
        );
        let span = Span::of(early, Some(time.value), Some(late));
        let is_told = span.is_some_and(|span| span.likely.is_some());
        (span, (!is_told).then_some(Reason::TooSlow))
    }
}
