//! The warm-up as it runs: what was read and poured since the engine started, and when the window opens by it. It stands beside
//! the verdict and decides nothing.

use super::evidence::{State, Volumes};
use super::gate::seconds;
use super::sheet::Sheet;
use super::trail::Trail;
use crate::procedure::EngineState;
use crate::quantity::{Amount, Rounding, Unit};
use crate::warm_up::{Asked, Forecast, Outlook, Reason, Span, mixed_temperature};

/// A moment of the warm-up, in nanoseconds.
#[derive(Debug, Clone, Copy)]
pub(super) enum Heat {
    /// The fluid was read.
    Read(i128, Amount),
    /// Fluid was poured in.
    Poured(i128, Pour),
}

/// Fluid that was poured in; volumes in counts.
#[derive(Debug, Clone, Copy)]
pub(super) struct Pour {
    volume: i128,
    temperature: Amount,
    /// What it mixed with, where that is known.
    held: Option<i128>,
}

impl Heat {
    pub(super) const fn at(&self) -> i128 {
        match self {
            Heat::Read(at, _) | Heat::Poured(at, _) => *at,
        }
    }
}

/// The newest moments a forecast is made from.
const MOMENTS: usize = 64;

impl State {
    /// Takes a reading of the fluid in, while the engine runs.
    pub(super) fn warm(&mut self, reading: Amount, at: i128) {
        if self.engine.is_some_and(EngineState::is_running) {
            self.heat.push(Heat::Read(at, reading));
        }
    }

    /// Takes in a pour of more than nothing, as it was booked. Fluid that stood in the shop is as warm as the shop; where
    /// that was not read, or the pour not booked, nothing is known of what was read before it.
    pub(super) fn chill(&mut self, held: Option<i128>, booked: Option<i128>, at: i128) {
        match booked.zip(self.ambient) {
            Some((volume, temperature)) => {
                let pour = Pour {
                    volume,
                    temperature,
                    held,
                };
                self.heat.push(Heat::Poured(at, pour));
            }
            None => self.heat = Trail::default(),
        }
    }

    /// What is in the unit, in counts, by what the sheet says it holds and what was booked since; `None` where that is not
    /// above zero.
    pub(super) fn held(&self, sheet: &Sheet<'_>) -> Option<i128> {
        let total = sheet.procedure?.capacity.as_ref()?.total?.count()?;
        let Volumes {
            added,
            captured,
            drained,
        } = self.volumes;
        let held = total.saturating_add(added);
        let held = held.saturating_sub(captured).saturating_sub(drained);
        (held > 0).then_some(held)
    }

    /// What the fluid in the unit will be at after a pour of fluid that stood in the shop, where the sheet says how much the
    /// unit holds and both temperatures were read.
    pub(super) fn mixed(&self, sheet: &Sheet<'_>, poured: Amount) -> Option<Amount> {
        let held = litres(self.held(sheet)?)?;
        let sample = self.sample?;
        let mixed = mixed_temperature(held, sample.reading, poured, self.ambient?).ok()?;
        let places = sample.reading.decimals().max(1);
        mixed
            .to(sample.reading.unit(), places, Rounding::HalfEven)
            .ok()
    }

    /// When the window opens and closes, where the engine runs, the level has not been found and there is something to wait
    /// for.
    pub(super) fn outlook(&self, sheet: &Sheet<'_>) -> Option<Outlook> {
        let window = sheet.conditions()?.temperature.as_ref()?;
        let runs = self.engine.is_some_and(EngineState::is_running);
        if !runs || self.found.is_some() {
            return None;
        }
        let asked = Asked {
            min: window.min,
            max: window.max,
            ..Asked::default()
        };
        let mut forecast = Forecast::new(asked).ok()?;
        let skipped = self.heat.len().saturating_sub(MOMENTS);
        let first = self.heat.iter().nth(skipped)?.at();
        for heat in self.heat.iter().skip(skipped) {
            let Some(at) = clock(heat.at().saturating_sub(first)) else {
                continue;
            };
            // What is out of order in time tells nothing of a rate.
            let _ = match heat {
                Heat::Read(_, reading) => forecast.sample(at, *reading),
                Heat::Poured(_, pour) => {
                    let Some(volume) = litres(pour.volume) else {
                        continue;
                    };
                    forecast.hold(pour.held.and_then(litres));
                    forecast.poured(at, volume, pour.temperature)
                }
            };
        }
        let outlook = forecast.answer();
        let waits = |span: Option<Span>| span.as_ref().is_some_and(Span::is_ahead);
        let says_why = outlook
            .reason
            .is_some_and(|reason| !matches!(reason, Reason::TooFew));
        (waits(outlook.opens) || waits(outlook.closes) || says_why).then_some(outlook)
    }

    /// How long the window is likely to stay shut from a moment on.
    pub(super) fn opens_in(&self, sheet: &Sheet<'_>, at: i128) -> Option<Amount> {
        let opens = self.outlook(sheet)?.opens?;
        let told = self.heat.last()?.at();
        let wait = opens.likely.unwrap_or(opens.earliest).count()?;
        let left = told.saturating_add(wait).saturating_sub(at);
        if left > 0 { seconds(left) } else { None }
    }
}

/// A volume to the microlitre.
fn litres(count: i128) -> Option<Amount> {
    Amount::from_count(count, Unit::Litre, 6, Rounding::HalfEven).ok()
}

/// A time on the clock of the forecast, to the millisecond.
fn clock(nanoseconds: i128) -> Option<Amount> {
    let milliseconds = i64::try_from(nanoseconds.checked_div(1_000_000)?).ok()?;
    Amount::new(milliseconds, 3, Unit::Second).ok()
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]

    use crate::check::{Evaluation, evaluate};
    use crate::procedure::Pack;
    use alloc::format;
    use alloc::string::String;
    use alloc::vec::Vec;

    /// A transaxle of 6.8 L that warms from 30 °C by a degree a minute, so many minutes, with other entries before a minute.
    fn told(minutes: usize, others: &[(usize, &str)]) -> Evaluation {
        told_on("pipit-level", minutes, others)
    }

    /// The same on another sheet.
    fn told_on(sheet: &str, minutes: usize, others: &[(usize, &str)]) -> Evaluation {
        let mut facts: Vec<(usize, String)> = Vec::from([
            (
                0,
                r#""kind":"temperature","reading":"20 °C","source":"ambient""#.into(),
            ),
            (0, r#""kind":"engine","state":"idling""#.into()),
        ]);
        facts.extend((0..=minutes).map(|minute| {
            let celsius = 30_usize.saturating_add(minute);
            let fact = format!(r#""kind":"temperature","reading":"{celsius} °C","source":"scan""#);
            (minute, fact)
        }));
        facts.extend(others.iter().map(|(at, other)| (*at, (*other).into())));
        facts.sort_by_key(|(minute, _)| *minute);
        let entries = (1..).zip(&facts).map(|(seq, (minute, fact))| {
            format!(r#"{{"seq":{seq},"at":"2025-03-04T09:{minute:02}:{seq:02}Z",{fact}}}"#)
        });
        let entries: Vec<String> = entries.collect();
        let journal = format!(
            r#"{{"format":"brimline-journal/1","pack":{{"id":"fernhollow","version":"3"}},"procedure":"{sheet}","job":"check","entries":[{}]}}"#,
            entries.join(",")
        );
        evaluate(&Pack::embedded().unwrap(), journal.as_str()).unwrap()
    }

    fn now(evaluation: &Evaluation) -> f64 {
        evaluation.forecast().unwrap().now.unwrap().to_f64()
    }

    const POUR: &str =
        r#""kind":"added","volume":"0.25 L","measured_by":"meter","fluid":"sedge-thin""#;

    #[test]
    fn a_pour_chills_by_what_is_in_the_unit_as_booked() {
        // The last reading of 35 °C is of the minute of the pour, and before it: (6.8 · 35 + 0.25 · 20) / 7.05 = 34.47 °C.
        let full = told(5, &[(5, POUR)]);
        assert!((now(&full) - 34.47).abs() < 0.01, "{}", now(&full));
        // After 4.3 L came out: (2.5 · 35 + 0.25 · 20) / 2.75 = 33.64 °C.
        let drained = r#""kind":"drained","volume":"4.3 L","measured_by":"jug","why":"service""#;
        let low = told(5, &[(0, drained), (5, POUR)]);
        assert!((now(&low) - 33.64).abs() < 0.01, "{}", now(&low));
    }

    #[test]
    fn a_pour_by_mass_chills_as_its_volume() {
        // 0.2105 kg at 842 kg/m³ is 0.25 L.
        let mass =
            r#""kind":"added","mass":"0.2105 kg","measured_by":"scale","fluid":"sedge-thin""#;
        let (by_mass, by_volume) = (told(5, &[(5, mass)]), told(5, &[(5, POUR)]));
        assert_eq!(by_mass.forecast(), by_volume.forecast());
    }

    #[test]
    fn a_pour_of_unknown_temperature_lets_the_readings_before_it_go() {
        let unread = r#""kind":"correction","of":1,"void":true,"reason":"read in the yard""#;
        assert!(told(5, &[(6, unread)]).forecast().is_some());
        assert!(told(5, &[(5, POUR), (6, unread)]).forecast().is_none());
        let nothing = r#""kind":"added","volume":"0 L","measured_by":"meter","fluid":"sedge-thin""#;
        assert!(told(5, &[(5, nothing), (6, unread)]).forecast().is_some());
    }

    #[test]
    fn fluid_that_is_too_warm_is_put_right_with_care() {
        // Its window ends at 47 °C.
        let hot = told_on("siskin-side", 20, &[]);
        let mend = |evaluation: &Evaluation| {
            let mends = evaluation.next().iter().filter(|act| act.id == "mend");
            let cautions: Vec<_> = mends.flat_map(|act| act.cautions.clone()).collect();
            ["hot_fluid", "close_before_stop", "reheats_on_start"].map(|id| cautions.contains(&id))
        };
        assert_eq!(mend(&hot), [true; 3]);
        assert_eq!(mend(&told(5, &[])), [false; 3]);
    }
}
