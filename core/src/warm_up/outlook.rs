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
    /// Hardly earlier, rounded down: two standard uncertainties before the likely time; at the steepest rate that
    /// a pair of readings leaves open where a line is drawn; at the rate of now where the asymptote is not known to lie beyond.
    pub earliest: Amount,
    /// Most likely; absent where the asymptote is not known to lie beyond, and further ahead than a line reaches back.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub likely: Option<Amount>,
    /// Hardly later, rounded up: two standard uncertainties after the likely time; at the flattest rate where a line
    /// is drawn, and no further ahead than half of what the line reaches back: warming slows down, and a line does not. Absent where
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
    pub rate_per_minute: Option<Amount>,
    /// When the lower limit is reached.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub opens: Option<Span>,
    /// When the upper limit is reached.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub closes: Option<Span>,
    /// Places, from 0, of the readings still held that were not believed.
    pub suspect: Vec<u32>,
    /// Whether it was asked when the window opens, and when it closes.
    #[serde(skip)]
    pub(crate) asked: [bool; 2],
}

/// What is further away than this many seconds is not told.
const HORIZON: f64 = 86_400.0;

/// Readings to spare, beyond the three that settle a response, before one is said to level out below a limit; common practice,
/// no source.
const TO_SPARE: f64 = 5.0;

/// So many seconds past a whole one it is that one.
const WHOLE: f64 = 1e-6;

/// A limit is nearby within this part of what the fluid has risen since the first reading: the curve is hardly led on then,
/// and its crossing is good before its asymptote is; common practice, no source.
const NEARBY: f64 = 0.25;

fn seconds(number: f64) -> Option<Amount> {
    let number = number.max(0.0);
    let amount = Amount::from_computed(number, Unit::Second).ok();
    amount.filter(|_| number <= HORIZON)
}

impl Span {
    /// Whether it is still to come.
    pub(crate) fn is_ahead(&self) -> bool {
        self.latest.is_none_or(|latest| !latest.is_zero())
    }

    fn of(earliest: f64, likely: Option<f64>, latest: Option<f64>) -> Option<Self> {
        Some(Span {
            earliest: seconds(libm::floor(earliest + WHOLE))?,
            likely: likely.and_then(|likely| seconds(libm::rint(likely))),
            latest: latest.and_then(|latest| seconds(libm::ceil(latest - WHOLE))),
        })
    }

    fn past() -> Option<Self> {
        Span::of(0.0, Some(0.0), Some(0.0))
    }
}

impl Forecast {
    /// What the readings so far tell, without allocating where none is suspect.
    ///
    /// By a first-order response from four readings on, where the readings show that its asymptote lies beyond the limit, or
    /// the limit is no further than a quarter of the rise so far; by
    /// the line through the latest six otherwise, which tells the likely time no further ahead than it reaches back; not at all where they do not
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
            rate_per_minute: rounded(rate * 60.0, difference(self.unit)),
            opens: None,
            closes: None,
            suspect: Vec::new(),
            asked: [self.min.is_some(), self.max.is_some()],
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
        let rising = ahead.filter(|ahead| ahead.rate > 0.0);
        let ahead = rising.ok_or(Reason::AsymptoteUnknown)?;
        let now = ahead.now.value;
        let (opens, mut reason) = ahead.to(self, self.over(self.min));
        let (closes, other) = ahead.to(self, self.over(self.max));
        let next = if opens.is_none_or(|span| !span.is_ahead()) {
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
        let slope = self
            .task()
            .slope(self.now, self.scatter)
            .ok_or(Reason::TooFew)?;
        if slope.likely <= 0.0 {
            return Err(Reason::NotWarming);
        }
        let mut span = |limit: Option<f64>| {
            let left = self.over(limit)? - slope.now;
            if left <= 0.0 {
                return Span::past();
            }
            let likely = left / slope.likely;
            if likely > HORIZON {
                reason = Reason::TooSlow;
                return None;
            }
            // The newest reading, which the line goes through, is off as well.
            let latest = Some((left + self.scatter) / slope.least)
                .filter(|latest| (0.0..=slope.reach / 2.0).contains(latest));
            let likely = Some(likely).filter(|likely| *likely <= slope.reach);
            Span::of(left / slope.most, likely, latest)
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
        let rate = task.slope(self.now, self.scatter).map(|slope| slope.likely);
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
            rate_per_minute: outlook.rate_per_minute.filter(|_| rate.is_some()),
            opens: past(self.min),
            closes: past(self.max),
            ..outlook
        }
    }
}

/// A fitted response, seen from now on.
struct Ahead {
    fitted: Fitted,
    now: Told,
    end: Told,
    /// Twice the standard uncertainty of the asymptote.
    margin: f64,
    rate: f64,
    variance: f64,
}

impl Ahead {
    fn of(forecast: &Forecast, fitted: Fitted) -> Option<Self> {
        let (curve, mut walk) = (fitted.curve, fitted.walk);
        walk.to(&curve, forecast.now);
        let end = curve.asymptote(&forecast.task());
        let variance = fitted
            .normal
            .variance()
            .max(forecast.scatter * forecast.scatter);
        Some(Ahead {
            fitted,
            now: walk.now,
            end,
            margin: 2.0 * fitted.normal.uncertainty(end.by, variance)?,
            rate: curve.heating - curve.loss * walk.now.value,
            variance,
        })
    }

    /// When a limit is reached, or why that is not known.
    fn to(&self, forecast: &Forecast, limit: Option<f64>) -> (Option<Span>, Option<Reason>) {
        let Some(limit) = limit else {
            return (None, None);
        };
        let now = &self.now;
        let left = self.end.value - limit;
        if left <= -self.margin && self.fitted.normal.freedom() >= TO_SPARE {
            return (None, Some(Reason::AsymptoteBelow));
        }
        let is_near = limit - now.value <= NEARBY * now.value;
        if limit > now.value && (left <= 0.0 || (left < self.margin && !is_near)) {
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

#[cfg(test)]
mod tests {
    #![allow(
        clippy::unwrap_used,
        clippy::arithmetic_side_effects,
        clippy::indexing_slicing
    )]

    use crate::quantity::{Amount, Kind, Unit};
    use crate::warm_up::{Asked, Forecast, Method, Pour, Reason, Sample, Span, fit, forecast};
    use alloc::string::ToString;
    use alloc::vec::Vec;

    fn amount(text: &str) -> Amount {
        Amount::parse(text).unwrap()
    }

    fn sample(seconds: f64, celsius: f64) -> Sample {
        Sample {
            at: Amount::from_computed(seconds, Unit::Second).unwrap(),
            reading: Amount::from_computed(celsius, Unit::DegreeCelsius).unwrap(),
        }
    }

    /// One a minute, from the first.
    fn minutes(readings: &[f64]) -> Vec<Sample> {
        let sample = |(minute, reading): (usize, &f64)| sample(60.0 * minute as f64, *reading);
        readings.iter().enumerate().map(sample).collect()
    }

    fn window(min: &str, max: &str) -> Asked {
        Asked {
            min: Some(amount(min)),
            max: Some(amount(max)),
            ..Asked::default()
        }
    }

    fn texts(span: Option<Span>) -> [alloc::string::String; 3] {
        let span = span.unwrap();
        let text =
            |amount: Option<Amount>| amount.map_or("-".into(), |amount| alloc::format!("{amount}"));
        [Some(span.earliest), span.likely, span.latest].map(text)
    }

    #[track_caller]
    fn spans(span: Option<Span>, truth: f64) {
        let span = span.unwrap();
        let latest = span.latest.map_or(f64::MAX, |latest| latest.si());
        assert!(
            span.earliest.si() <= truth && truth <= latest,
            "{truth}: {span:?}"
        );
        let likely = span.likely.unwrap().si();
        assert!(span.earliest.si() <= likely && likely <= latest, "{span:?}");
    }

    /// Drawn from 85 − 65·exp(−t/600) °C with a scatter of 0.3 °C: published with the fits in the tests of `fit`.
    const DRAWN: [f64; 8] = [19.9, 25.89, 31.93, 36.97, 41.3, 45.55, 48.79, 52.46];

    #[test]
    fn a_window_ahead_is_told_by_the_response() {
        let samples = minutes(&DRAWN);
        let outlook = forecast(&samples, &[], window("55 °C", "60 °C")).unwrap();
        assert_eq!((outlook.method, outlook.reason), (Method::FirstOrder, None));
        // The truth: 600·ln(65/30) and 600·ln(65/25), less the 420 s of the last reading.
        spans(outlook.opens, 463.9 - 420.0);
        spans(outlook.closes, 573.3 - 420.0);
        // As close to the answer of the full fit as a hundredth of its uncertainty leaves.
        let scatter = Amount::parse_as("0.5 °C", Kind::TemperatureDifference, None);
        let crossing = fit(&samples, scatter.ok(), None)
            .unwrap()
            .crossing(amount("60 °C"));
        let likely = outlook.closes.unwrap().likely.unwrap().si();
        assert!((crossing.unwrap().at.si() - 420.0 - likely).abs() <= 1.0);
        // dT/dt = (85 − 52.7)/600 a second.
        assert!((outlook.rate_per_minute.unwrap().to_f64() - 3.2).abs() < 0.3);
        assert!((outlook.now.unwrap().to_f64() - 52.72).abs() < 0.5);
    }

    #[test]
    fn what_has_happened_is_told_as_0_s() {
        let outlook = forecast(&minutes(&DRAWN), &[], window("35 °C", "45 °C")).unwrap();
        assert_eq!(texts(outlook.opens), ["0 s", "0 s", "0 s"]);
        assert_eq!(texts(outlook.closes), ["0 s", "0 s", "0 s"]);
        let alone = forecast(&minutes(&[46.0]), &[], window("35 °C", "45.5 °C")).unwrap();
        assert_eq!(
            (alone.method, alone.reason),
            (Method::None, Some(Reason::TooFew))
        );
        assert_eq!(alone.now.unwrap().to_string(), "46.00 °C");
        assert_eq!(alone.rate_per_minute, None);
        assert_eq!(texts(alone.closes), ["0 s", "0 s", "0 s"]);
        assert_eq!(forecast(&[], &[], Asked::default()).unwrap().now, None);
    }

    #[test]
    fn three_readings_draw_a_line() {
        // 0.9 °C a minute from 31 °C, and from a minute to the next half a degree off either way, 1.9: 14/1.9 min = 442.1 s.
        // The likely 14/0.9 min are further than the two minutes it reaches back.
        let samples = minutes(&[29.2, 30.1, 31.0]);
        let outlook = forecast(&samples, &[], window("45 °C", "113 °F")).unwrap();
        assert_eq!(
            (outlook.method, outlook.reason),
            (Method::Slope, Some(Reason::TooFew))
        );
        assert_eq!(texts(outlook.opens), ["442 s", "-", "-"]);
        assert_eq!(outlook.rate_per_minute.unwrap().to_string(), "0.90 Δ°C");
        assert_eq!(outlook.opens, outlook.closes);
        // Half a minute ahead; such readings may as well not rise at all.
        let near = forecast(&samples, &[], window("31.45 °C", "45 °C")).unwrap();
        assert_eq!(texts(near.opens), ["14 s", "30 s", "-"]);
        // To a tenth of a degree they do: 0.45/1.1 min, and (0.45 + 0.05)/0.7 min.
        let fine = Asked {
            scatter: Amount::parse_as("0.1 °C", Kind::TemperatureDifference, None).ok(),
            ..window("31.45 °C", "45 °C")
        };
        let near = forecast(&samples, &[], fine).unwrap();
        assert_eq!(texts(near.opens), ["24 s", "30 s", "48 s"]);
    }

    #[test]
    fn a_straight_line_is_not_led_on_as_a_response() {
        let samples = minutes(&[20.0, 23.1, 25.9, 29.0, 32.0, 35.1, 38.0]);
        let outlook = forecast(&samples, &[], window("45 °C", "60 °C")).unwrap();
        assert_eq!(outlook.method, Method::Slope);
        assert_eq!(outlook.reason, Some(Reason::AsymptoteUnknown));
        spans(outlook.opens, 140.0);
    }

    #[test]
    fn levelling_out_below_a_limit_is_said() {
        let readings = [
            20.0, 32.6, 40.3, 44.9, 47.7, 49.4, 50.4, 51.1, 51.4, 51.7, 51.8, 51.9,
        ];
        let outlook = forecast(&minutes(&readings), &[], window("50 °C", "60 °C")).unwrap();
        assert_eq!(outlook.method, Method::FirstOrder);
        assert_eq!(outlook.reason, Some(Reason::AsymptoteBelow));
        assert_eq!(texts(outlook.opens), ["0 s", "0 s", "0 s"]);
        assert_eq!(outlook.closes, None);
    }

    #[test]
    fn what_does_not_warm_has_no_forecast() {
        let falling = forecast(
            &minutes(&[45.0, 44.1, 43.2, 42.2]),
            &[],
            window("50 °C", "60 °C"),
        );
        let falling = falling.unwrap();
        assert_eq!(
            (falling.method, falling.reason),
            (Method::None, Some(Reason::NotWarming))
        );
        assert_eq!((falling.opens, falling.closes), (None, None));
        assert!(falling.rate_per_minute.unwrap().is_negative());
        // 0.001 °C a minute: ten thousand minutes to go.
        let slow = [20.0, 20.001, 20.002].map(|reading| reading);
        let slow = forecast(&minutes(&slow), &[], window("30 °C", "40 °C")).unwrap();
        assert_eq!((slow.reason, slow.opens), (Some(Reason::TooSlow), None));
    }

    #[test]
    fn a_reading_that_stands_still_has_no_forecast_until_it_moves() {
        let mut readings = Vec::from([30.0; 7]);
        let stuck = forecast(&minutes(&readings), &[], window("25 °C", "45 °C")).unwrap();
        assert_eq!(
            (stuck.method, stuck.reason),
            (Method::None, Some(Reason::Stuck))
        );
        assert_eq!(stuck.opens, None);
        assert_eq!(stuck.suspect, [5]);
        readings.extend([31.5, 33.0, 34.5]);
        let moving = forecast(&minutes(&readings), &[], window("25 °C", "45 °C")).unwrap();
        assert_eq!(moving.method, Method::Slope);
        assert_eq!(texts(moving.opens), ["0 s", "0 s", "0 s"]);
    }

    #[test]
    fn jumps_and_defaults_are_suspect_and_do_not_count() {
        let plain = forecast(&minutes(&DRAWN), &[], window("55 °C", "60 °C")).unwrap();
        let mut samples = minutes(&DRAWN);
        samples.insert(4, sample(200.0, -40.0));
        samples.insert(6, sample(250.0, 90.0));
        let doubted = forecast(&samples, &[], window("55 °C", "60 °C")).unwrap();
        assert_eq!(doubted.suspect, [4, 6]);
        assert_eq!((doubted.opens, doubted.closes), (plain.opens, plain.closes));
        // A doubted reading at the end moves time on, not the forecast.
        let mut samples = minutes(&DRAWN);
        samples.push(sample(430.0, 90.0));
        let later = forecast(&samples, &[], window("55 °C", "60 °C")).unwrap();
        let likely = |outlook: &super::Outlook| outlook.closes.unwrap().likely.unwrap().si();
        assert!((likely(&plain) - likely(&later) - 10.0).abs() <= 1.0);
    }

    #[test]
    fn a_sensor_that_moved_for_good_starts_the_forecast_anew() {
        let mut samples = minutes(&DRAWN);
        let moved = |minute: f64| sample(60.0 * minute, 10.0 + 2.0 * minute);
        samples.extend([8.0, 9.0, 10.0, 11.0].map(moved));
        let outlook = forecast(&samples, &[], window("40 °C", "50 °C")).unwrap();
        assert_eq!(outlook.suspect, [0, 1, 2, 3, 4, 5, 6, 7, 8]);
        assert_eq!(outlook.method, Method::Slope);
        // 8 °C at 2 °C a minute, or 3; the line reaches three minutes back.
        assert_eq!(texts(outlook.opens), ["160 s", "-", "-"]);
    }

    /// 90 − 70·exp(−t/600), with 0.5 L of 20 °C into 4.5 L after eight minutes.
    fn poured_curve(seconds: f64) -> f64 {
        let plain = |from: f64, seconds: f64| 90.0 - (90.0 - from) * libm::exp(-seconds / 600.0);
        let before = plain(20.0, seconds.min(480.0));
        if seconds <= 480.0 {
            return before;
        }
        plain(before * 0.9 + 2.0, seconds - 480.0)
    }

    fn rounded(seconds: f64) -> Sample {
        sample(seconds, libm::rint(poured_curve(seconds) * 10.0) / 10.0)
    }

    #[test]
    fn a_pour_moves_the_window_and_the_readings_before_it_still_count() {
        let asked = Asked {
            held: Some(amount("4.5 L")),
            ..window("58 °C", "65 °C")
        };
        let mut live = Forecast::new(asked).unwrap();
        for minute in 0..=8 {
            let Sample { at, reading } = rounded(60.0 * f64::from(minute));
            live.sample(at, reading).unwrap();
        }
        let before = live.answer();
        spans(
            before.opens,
            0.0_f64.max(600.0 * libm::log(70.0 / 32.0) - 480.0),
        );
        live.poured(amount("480 s"), amount("0.5 L"), amount("20 °C"))
            .unwrap();
        // No reading since: from the mixed temperature, 0.9 · 58.55 + 2 = 54.69 °C.
        let mixed = live.answer();
        assert_eq!(mixed.method, Method::FirstOrder);
        assert!((mixed.now.unwrap().to_f64() - 54.69).abs() < 0.1);
        spans(
            mixed.opens,
            600.0 * libm::log((90.0 - poured_curve(480.001)) / 32.0),
        );
        for minute in 9..=10 {
            let Sample { at, reading } = rounded(60.0 * f64::from(minute));
            live.sample(at, reading).unwrap();
        }
        let after = live.answer();
        assert!(after.suspect.is_empty());
        spans(
            after.closes,
            600.0 * libm::log((90.0 - poured_curve(600.0)) / 25.0),
        );
    }

    #[test]
    fn a_pour_into_an_unknown_volume_starts_the_forecast_anew() {
        let samples: Vec<Sample> = (0..=9)
            .map(|minute| rounded(60.0 * f64::from(minute)))
            .collect();
        let pour = Pour {
            at: amount("8 min"),
            volume: amount("0.5 L"),
            temperature: amount("20 °C"),
        };
        let outlook = forecast(&samples, &[pour], window("58 °C", "65 °C")).unwrap();
        assert_eq!(
            (outlook.method, outlook.reason),
            (Method::None, Some(Reason::TooFew))
        );
        assert_eq!(outlook.now.unwrap().to_string(), "58.10 °C");
        let none = Pour {
            volume: amount("0 L"),
            ..pour
        };
        let outlook = forecast(&samples, &[none], window("58 °C", "65 °C")).unwrap();
        assert_eq!(outlook.method, Method::FirstOrder);
    }

    #[test]
    fn a_drop_that_a_pour_explains_is_no_jump() {
        let asked = Asked {
            held: Some(amount("3 L")),
            ..window("58 °C", "65 °C")
        };
        // 3 L of 20 °C into 3 L of 60 °C.
        let readings = [56.0, 58.0, 60.0, 40.5, 42.3, 44.1];
        let pour = Pour {
            at: amount("121 s"),
            volume: amount("3 L"),
            temperature: amount("20 °C"),
        };
        let told = forecast(&minutes(&readings), &[pour], asked).unwrap();
        assert!(told.suspect.is_empty());
        let plain = forecast(&minutes(&readings), &[], asked).unwrap();
        assert_eq!(plain.suspect, [0, 1, 2, 3]);
    }

    #[test]
    fn no_number_of_readings_or_pours_is_too_many() {
        let asked = Asked {
            held: Some(amount("7 L")),
            ..window("58 °C", "65 °C")
        };
        let mut live = Forecast::new(asked).unwrap();
        for place in 0..1000_i32 {
            let seconds = f64::from(place);
            let Sample { at, reading } = sample(seconds, 90.0 - 70.0 * libm::exp(-seconds / 900.0));
            live.sample(at, reading).unwrap();
            assert!(live.task().points.len() <= 64);
        }
        let outlook = live.answer();
        assert_eq!(outlook.method, Method::FirstOrder);
        spans(
            outlook.closes,
            libm::rint(900.0 * libm::log(70.0 / 25.0) - 999.0).max(0.0),
        );
        for _ in 0..20 {
            live.poured(amount("1000 s"), amount("1 mL"), amount("20 °C"))
                .unwrap();
        }
        assert_eq!(live.answer().reason, Some(Reason::TooFew));
    }

    #[test]
    fn a_ninth_pour_lets_the_oldest_go_and_the_readings_before_it() {
        let asked = Asked {
            held: Some(amount("5 L")),
            ..window("50 °C", "60 °C")
        };
        let pour = |seconds: f64| Pour {
            at: Amount::from_computed(seconds, Unit::Second).unwrap(),
            volume: amount("1 mL"),
            temperature: amount("20 °C"),
        };
        // A degree a minute, and a reading between any two of nine pours.
        let samples: Vec<Sample> = (0..24)
            .map(|minute| sample(60.0 * f64::from(minute), 20.0 + f64::from(minute)))
            .collect();
        let pours: Vec<Pour> = (0..9)
            .map(|pour_no| pour(150.0 + 120.0 * f64::from(pour_no)))
            .collect();
        let told = forecast(&samples, &pours, asked).unwrap();
        assert!(told.method != Method::None, "{told:?}");
        let mut live = Forecast::new(asked).unwrap();
        for sample in &samples {
            live.sample(sample.at, sample.reading).unwrap();
        }
        for _ in 0..9 {
            live.poured(amount("23 min"), amount("1 mL"), amount("20 °C"))
                .unwrap();
        }
        // All nine after the last reading: the oldest took every reading with it.
        assert_eq!(live.answer().reason, Some(Reason::TooFew));
    }

    #[test]
    fn what_cannot_be_is_refused_and_leaves_the_forecast_as_it_was() {
        let path = |asked: Asked| Forecast::new(asked).unwrap_err().first().path.clone();
        assert_eq!(path(window("45 °C", "35 °C")), "max");
        assert_eq!(path(window("45 L", "35 °C")), "min");
        let with = |scatter, held| Asked {
            scatter,
            held,
            ..Asked::default()
        };
        assert_eq!(path(with(Some(amount("1 °C")), None)), "scatter");
        assert_eq!(path(with(None, Some(amount("0 L")))), "held");
        let mut samples = minutes(&DRAWN);
        let mut live = Forecast::new(window("55 °C", "60 °C")).unwrap();
        for sample in &samples {
            live.sample(sample.at, sample.reading).unwrap();
        }
        let before = live.answer();
        assert!(live.sample(amount("1 s"), amount("50 °C")).is_err());
        assert!(live.sample(amount("500 s"), amount("50 L")).is_err());
        assert!(
            live.poured(amount("1 s"), amount("1 L"), amount("20 °C"))
                .is_err()
        );
        assert!(
            live.poured(amount("500 s"), amount("-1 L"), amount("20 °C"))
                .is_err()
        );
        assert_eq!(live.answer(), before);
        samples.swap(2, 3);
        let error = forecast(&samples, &[], Asked::default()).unwrap_err();
        assert_eq!(error.first().path, "samples[3].at");
    }
}
