//! What a temperature reading is worth: broken sensors, impossible rates, readings that stand still.

use super::{Sample, number, out_of_range, within};
use crate::error::Error;
use crate::quantity::{Amount, Unit};
use crate::word::words;
use alloc::vec::Vec;
use serde::Serialize;

/// Counts of temperature in a kelvin.
pub(crate) const KELVIN: i128 = 9_000_000_000;
/// Nanoseconds in a minute.
pub(crate) const MINUTE: i128 = 60_000_000_000;
/// A fluid at idle warms no faster, in kelvin a minute; common practice, no source.
pub(crate) const FASTEST_PER_MINUTE: i128 = 6;
/// Readings may differ by this much, in kelvin, before a rate is judged.
pub(crate) const SCATTER: i128 = 2;
/// A reading that stands still this long, in minutes, is asked about; common practice, no source.
pub(crate) const STUCK_AFTER: i128 = 5;
/// Above this many degrees Celsius a reading may stand still; common practice, no source.
const STILL_FROM: i64 = 60;

/// What sensors read when they are broken or absent, in whole degrees Celsius: raw ends of the byte and word
/// codings of SAE J1979 (A − 40) and SAE J1939 (0.03125 °C per bit from −273 °C).
pub(crate) const DEFAULT_READINGS: [i64; 3] = [-40, 215, -273];

/// Fluid in a gearbox is no colder and no warmer than these, in whole degrees Celsius; common practice, no source.
pub(crate) const PLAUSIBLE: [i64; 2] = [-40, 200];

fn celsius(degrees: i64) -> Option<Amount> {
    Amount::new(degrees, 0, Unit::DegreeCelsius).ok()
}

/// Whether a broken or absent sensor reads so.
pub(crate) fn is_default(reading: &Amount) -> bool {
    DEFAULT_READINGS
        .iter()
        .any(|degrees| celsius(*degrees).as_ref() == Some(reading))
}

/// Whether no fluid in a gearbox is so cold or so warm.
pub(crate) fn is_impossible(reading: &Amount) -> bool {
    let [coldest, warmest] = PLAUSIBLE.map(celsius);
    coldest.is_some_and(|coldest| *reading < coldest)
        || warmest.is_some_and(|warmest| *reading > warmest)
}

/// Whether no fluid changes by so many counts of temperature within so many nanoseconds.
pub(crate) fn jumps(apart: i128, elapsed: i128) -> bool {
    let beyond = apart
        .saturating_abs()
        .saturating_sub(SCATTER.saturating_mul(KELVIN));
    let fastest = elapsed
        .saturating_mul(FASTEST_PER_MINUTE)
        .saturating_mul(KELVIN);
    // Cross-multiplied: kelvin over nanoseconds against kelvin a minute.
    beyond.saturating_mul(MINUTE) > fastest
}

/// Whether two readings so many counts apart are one standing still.
pub(crate) fn is_still(apart: i128) -> bool {
    apart.saturating_abs().saturating_mul(2) <= KELVIN
}

/// Whether a reading is so cool that it cannot stand still this long, in nanoseconds, with the engine running.
pub(crate) fn is_stuck(reading: &Amount, elapsed: i128) -> bool {
    elapsed >= STUCK_AFTER.saturating_mul(MINUTE)
        && celsius(STILL_FROM).is_some_and(|still| *reading < still)
}

words! {
    /// Why a reading is doubted. It stays recorded as it came.
    pub enum Doubt {
        /// No fluid in a gearbox is so cold or so warm: it lies outside -40 °C to 200 °C.
        Impossible = "reading_impossible",
        /// It is what a broken or absent sensor reads.
        Default = "reading_default",
        /// No fluid changes so fast.
        Jumps = "reading_jumps",
        /// It has stood still for minutes with the engine running.
        Stuck = "reading_stuck",
    }
}

/// One doubted reading.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct Doubted {
    /// Its place among the readings, from 0.
    pub index: u32,
    /// Why.
    pub id: Doubt,
}

/// A reading in counts, and when.
#[derive(Debug, Clone, Copy)]
struct Seen {
    count: i128,
    at: i128,
}

impl Seen {
    const fn apart(&self, later: &Seen) -> i128 {
        later.count.saturating_sub(self.count)
    }

    const fn elapsed(&self, later: &Seen) -> i128 {
        later.at.saturating_sub(self.at)
    }

    fn jumps_to(&self, later: &Seen) -> bool {
        jumps(self.apart(later), self.elapsed(later))
    }
}

/// What to think of a reading.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Word {
    Believed,
    /// It agrees with one that was doubted: it is believed, and what was believed before is not.
    BelievedAnew,
    Doubted(Doubt),
}

/// Watches readings as they come.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Watch {
    believed: Option<Seen>,
    stirred: Option<i128>,
    jumped: Option<Seen>,
    still_since: Option<Seen>,
    /// Whether the last reading stands still for too long.
    pub(super) is_stuck: bool,
}

impl Watch {
    /// Takes in what a pour makes of a reading: between that and what was last read, the next does not jump.
    pub(super) fn stir(&mut self, mix: impl Fn(i128) -> i128) {
        let before = self.stirred.or(self.believed.map(|seen| seen.count));
        self.stirred = before.map(mix);
        self.still_since = None;
    }

    /// Whether what was believed last, and poured since, leaves a reading out of reach.
    fn is_out_of_reach(&self, seen: &Seen) -> bool {
        self.believed.is_some_and(|before| {
            let stirred = self.stirred.unwrap_or(before.count);
            let (low, high) = (before.count.min(stirred), before.count.max(stirred));
            let count = seen.count.clamp(low, high);
            Seen { count, ..before }.jumps_to(seen)
        })
    }

    pub(super) fn see(&mut self, reading: &Amount, at: i128, running: bool) -> Word {
        if is_default(reading) {
            return Word::Doubted(Doubt::Default);
        }
        let Some(count) = reading.count().filter(|_| !is_impossible(reading)) else {
            return Word::Doubted(Doubt::Impossible);
        };
        let seen = Seen { count, at };
        let mut word = Word::Believed;
        if self.is_out_of_reach(&seen) {
            let agrees = self.jumped.is_some_and(|before| !before.jumps_to(&seen));
            if !agrees {
                self.jumped = Some(seen);
                return Word::Doubted(Doubt::Jumps);
            }
            word = Word::BelievedAnew;
        }
        self.believed = Some(seen);
        (self.jumped, self.stirred) = (None, None);
        match self.still_since {
            Some(since) if is_still(since.apart(&seen)) => {
                if running && is_stuck(reading, since.elapsed(&seen)) {
                    self.still_since = Some(seen);
                    self.is_stuck = true;
                    return Word::Doubted(Doubt::Stuck);
                }
            }
            _ => {
                self.still_since = Some(seen);
                self.is_stuck = false;
            }
        }
        word
    }
}

/// Which readings are to be asked about: those no fluid in a gearbox has (outside -40 °C to 200 °C),
/// those a broken sensor gives, jumps no fluid makes, and
/// cool ones that stand still while the engine is `running`.
///
/// A jump is more than 2 °C and 6 °C a minute from the last believed reading; the second of two that
/// agree with each other is believed again. Standing still is 0.5 °C in 5 minutes below 60 °C; it is told once every 5 minutes. Nothing is deleted or
/// converted. Source: default readings from the codings of SAE J1979 and SAE J1939-71; the rest common practice, no source.
///
/// # Errors
///
/// [`WrongKind`](crate::ErrorKind::WrongKind); [`OutOfRange`](crate::ErrorKind::OutOfRange) for times that go back.
///
/// ```
/// use brimline::{Amount, warm_up::{Doubt, Sample, sensor_doubts}};
/// let sample = |at: &str, reading: &str| -> Result<Sample, brimline::Error> {
///     Ok(Sample { at: Amount::parse(at)?, reading: Amount::parse(reading)? })
/// };
/// let samples = [sample("0 s", "31 °C")?, sample("30 s", "-40 °F")?, sample("60 s", "32 °C")?];
/// let doubts = sensor_doubts(&samples, true)?;
/// assert_eq!((doubts[0].index, doubts[0].id), (1, Doubt::Default));
/// assert_eq!(doubts.len(), 1);
/// # Ok::<(), brimline::Error>(())
/// ```
pub fn sensor_doubts(samples: &[Sample], running: bool) -> Result<Vec<Doubted>, Error> {
    let (mut watch, mut doubts, mut last) = (Watch::default(), Vec::new(), None);
    for (index, sample) in samples.iter().enumerate() {
        let at = time(sample, last).map_err(|error| within(error, "samples", index))?;
        last = Some(at);
        if let Word::Doubted(id) = watch.see(&sample.reading, at, running) {
            let index = u32::try_from(index).unwrap_or(u32::MAX);
            doubts.push(Doubted { index, id });
        }
    }
    Ok(doubts)
}

/// The time of a sample in nanoseconds, refused where it goes back or anything is of another kind.
pub(super) fn time(sample: &Sample, last: Option<i128>) -> Result<i128, Error> {
    number("reading", sample.reading, Unit::Kelvin)?;
    moment(sample.at, last)
}

/// A time in nanoseconds, refused where it goes back or is of another kind.
pub(super) fn moment(at: Amount, last: Option<i128>) -> Result<i128, Error> {
    number("at", at, Unit::Second)?;
    let moment = at.count().unwrap_or(i128::MAX);
    if last.is_some_and(|last| moment < last) {
        let hint = "give readings and pours in the order they were taken";
        return Err(out_of_range("at", at).hint(hint).into());
    }
    Ok(moment)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, clippy::arithmetic_side_effects)]

    use super::*;

    fn doubts(readings: &[(&str, &str)], running: bool) -> Vec<(u32, &'static str)> {
        let sample = |(at, reading): &(&str, &str)| Sample {
            at: Amount::parse(at).unwrap(),
            reading: Amount::parse(reading).unwrap(),
        };
        let samples: Vec<Sample> = readings.iter().map(sample).collect();
        let doubts = sensor_doubts(&samples, running).unwrap();
        doubts
            .iter()
            .map(|doubt| (doubt.index, doubt.id.slug()))
            .collect()
    }

    #[test]
    fn broken_sensors_read_the_ends_of_their_coding() {
        // SAE J1979: A − 40 of a byte 00 and FF; SAE J1939: −273 °C of a word 0000.
        let ends = [
            ("0 s", "-40 °F"),
            ("1 s", "215 °C"),
            ("2 s", "419 °F"),
            ("3 s", "-273 °C"),
        ];
        let all = doubts(&ends, false);
        assert!(all.iter().all(|(_, id)| *id == "reading_default"));
        assert_eq!(all.len(), 4);
        assert_eq!(
            doubts(&[("0 s", "-300 °C")], false),
            [(0, "reading_impossible")]
        );
        assert_eq!(doubts(&[("0 s", "-39 °C")], false), []);
    }

    #[test]
    fn what_no_gearbox_is_at_is_never_believed() {
        let slipped = [("0 s", "1774 °C"), ("60 s", "1774 °C"), ("120 s", "31 °C")];
        let all = [(0, "reading_impossible"), (1, "reading_impossible")];
        assert_eq!(doubts(&slipped, true), all);
        assert_eq!(doubts(&[("0 s", "200 °C")], true), []);
        let beyond = [
            ("0 s", "200.1 °C"),
            ("60 s", "-40.1 °C"),
            ("120 s", "393 °F"),
        ];
        assert!(
            doubts(&beyond, true)
                .iter()
                .all(|(_, id)| *id == "reading_impossible")
        );
        assert_eq!(doubts(&beyond, true).len(), 3);
    }

    #[test]
    fn a_fluid_warms_by_2_degrees_and_6_a_minute_at_most() {
        assert_eq!(doubts(&[("0 s", "30 °C"), ("60 s", "38 °C")], true), []);
        let fast = [("0 s", "30 °C"), ("60 s", "38.1 °C"), ("120 s", "32 °C")];
        assert_eq!(doubts(&fast, true), [(1, "reading_jumps")]);
        let for_good = [
            ("0 s", "30 °C"),
            ("1 s", "50 °C"),
            ("2 s", "50 °C"),
            ("3 s", "51 °C"),
        ];
        assert_eq!(doubts(&for_good, true), [(1, "reading_jumps")]);
        let to_and_fro = [
            ("0 s", "30 °C"),
            ("1 s", "50 °C"),
            ("2 s", "70 °C"),
            ("3 s", "30 °C"),
        ];
        assert_eq!(
            doubts(&to_and_fro, true),
            [(1, "reading_jumps"), (2, "reading_jumps")]
        );
    }

    #[test]
    fn a_cool_reading_moves_within_5_minutes_of_running() {
        let still = [
            ("0 min", "30 °C"),
            ("4 min", "30.5 °C"),
            ("5 min", "30.4 °C"),
        ];
        assert_eq!(doubts(&still, true), [(2, "reading_stuck")]);
        assert_eq!(doubts(&still, false), []);
        assert_eq!(
            doubts(&[("0 min", "30 °C"), ("5 min", "30.6 °C")], true),
            []
        );
        assert_eq!(doubts(&[("0 min", "60 °C"), ("9 min", "60 °C")], true), []);
        let long: Vec<(u32, &str)> = doubts(
            &[
                ("0 min", "30 °C"),
                ("5 min", "30 °C"),
                ("7 min", "30 °C"),
                ("10 min", "30 °C"),
            ],
            true,
        );
        assert_eq!(long, [(1, "reading_stuck"), (3, "reading_stuck")]);
    }

    #[test]
    fn times_that_go_back_and_other_kinds_are_refused() {
        let sample = |at: &str, reading: &str| Sample {
            at: Amount::parse(at).unwrap(),
            reading: Amount::parse(reading).unwrap(),
        };
        let path = |samples: &[Sample]| {
            sensor_doubts(samples, true)
                .unwrap_err()
                .first()
                .path
                .clone()
        };
        assert_eq!(
            path(&[sample("2 s", "20 °C"), sample("1 s", "20 °C")]),
            "samples[1].at"
        );
        assert_eq!(path(&[sample("2 s", "20 L")]), "samples[0].reading");
        assert_eq!(path(&[sample("2 L", "20 °C")]), "samples[0].at");
    }
}
