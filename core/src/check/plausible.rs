//! What is readable and still doubtful: recorded as it came, with a finding that asks.

use super::entry::{Entry, Fact, Measured, PlugState};
use super::evidence::State;
use super::finding::Finding;
use super::sheet::Sheet;
use super::verdict::Verdict;
use crate::procedure::{EngineState, Severity};
use crate::quantity::{Amount, Kind, Rounding, Unit};
use crate::warm_up::sensor;
use alloc::string::String;
use core::cmp::Ordering;

/// Where a sheet states no tolerance, a torque within a tenth of it is not asked about; common practice, no
/// source.
const ROUGHLY: i128 = 10;

/// What `confirmed` may say that means something here.
const CONFIRMATIONS: &[&str] = &[
    "fill_opening_proven",
    "closing_kit_ready",
    "pan_empty",
    "wheels_chocked",
    "plug_identified",
    "opening_checked",
    "cooler_opened",
    "cooler_filled",
    "supports_steady",
    "exhaust_extracted",
    "vent_clear",
    "fill_opening_closed",
    "cleaned_dry",
    "drips_checked",
    "levelling_off",
    "plug_replaced",
    "leak_searched",
];

/// What the shop says always holds and nothing here knows.
pub(super) fn unknown_standing(standing: &[String]) -> impl Iterator<Item = Finding> {
    let unknown = standing
        .iter()
        .filter(|what| !CONFIRMATIONS.contains(&what.as_str()));
    unknown.map(|what| {
        Finding::new("confirmed_unknown", Severity::Note)
            .field("profile.standing")
            .with("what", what.as_str())
    })
}

/// What was last read and poured, to judge the next by.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Clock {
    newest: Option<i128>,
    reading: Option<(u64, Amount, i128)>,
    steady_since: Option<(u64, Amount, i128)>,
    pours: [i128; 2],
}

impl State {
    /// Asks about one entry before it is taken in.
    pub(super) fn doubt(&mut self, sheet: &Sheet<'_>, entry: &Entry) {
        let at = entry.at.nanoseconds();
        if self.clock.newest.is_some_and(|newest| at < newest) {
            self.find(
                Finding::new("time_goes_back", Severity::Caution)
                    .of([entry.seq])
                    .field("at"),
            );
        }
        self.clock.newest = self.clock.newest.max(Some(at));
        match &entry.fact {
            Fact::Temperature { reading, source } if source.reads_fluid() => {
                self.doubt_reading(sheet, *reading, entry.seq, at);
            }
            Fact::Confirmed { what } if !CONFIRMATIONS.contains(&what.as_str()) => {
                let finding = Finding::new("confirmed_unknown", Severity::Note)
                    .of([entry.seq])
                    .field("what");
                self.find(finding.with("what", what.as_str()));
            }
            _ => {}
        }
    }

    fn doubt_reading(&mut self, sheet: &Sheet<'_>, reading: Amount, seq: u64, at: i128) {
        let finding = |id, severity| {
            Finding::new(id, severity)
                .of([seq])
                .field("reading")
                .with("reading", reading)
        };
        if sensor::is_default(&reading) {
            self.find(finding("reading_default", Severity::Stop));
        } else if sensor::is_impossible(&reading) {
            self.find(finding("reading_impossible", Severity::Stop));
        } else if let Some(other) = self.other_scale(sheet, reading) {
            self.find(finding("unit_doubt", Severity::Note).with("other", other));
        }
        let Some(count) = reading.count() else { return };
        let apart = |from: Amount| count.saturating_sub(from.count().unwrap_or(count));
        if let Some((before, last, then)) = self.clock.reading
            && sensor::jumps(apart(last), at.saturating_sub(then).max(0))
        {
            self.find(
                finding("reading_jumps", Severity::Caution)
                    .of([before])
                    .with("before", last),
            );
        }
        self.clock.reading = Some((seq, reading, at));
        match self.clock.steady_since {
            Some((first, base, since)) if sensor::is_still(apart(base)) => {
                let is_stuck = sensor::is_stuck(&reading, at.saturating_sub(since));
                if is_stuck && self.engine.is_some_and(EngineState::is_running) {
                    self.find(finding("reading_stuck", Severity::Caution).of([first]));
                    self.clock.steady_since = Some((seq, reading, at));
                }
            }
            _ => self.clock.steady_since = Some((seq, reading, at)),
        }
    }

    /// The same number in the other scale, where only that would lie within the window.
    fn other_scale(&self, sheet: &Sheet<'_>, reading: Amount) -> Option<Amount> {
        let window = sheet.conditions()?.temperature.as_ref()?;
        let other = match reading.unit() {
            Unit::DegreeCelsius => Unit::DegreeFahrenheit,
            Unit::DegreeFahrenheit if self.engine.is_some_and(EngineState::is_running) => {
                Unit::DegreeCelsius
            }
            _ => return None,
        };
        let within = |value: &Amount| {
            window
                .min
                .is_none_or(|min| value.compare(&min).is_ok_and(Ordering::is_ge))
                && window
                    .max
                    .is_none_or(|max| value.compare(&max).is_ok_and(Ordering::is_le))
        };
        // Without an upper limit a warm reading is within; one nobody reaches is still asked about.
        let boiling = Amount::new(100, 0, Unit::DegreeCelsius).ok()?;
        let is_doubtful = !within(&reading) || reading.compare(&boiling).is_ok_and(Ordering::is_gt);
        let other = Amount::new(reading.mantissa(), reading.decimals(), other).ok()?;
        let is_likely = within(&other) && other.compare(&boiling).is_ok_and(Ordering::is_lt);
        (is_doubtful && is_likely).then_some(other)
    }

    /// Asks about one pour before it is booked.
    pub(super) fn doubt_pour(&mut self, sheet: &Sheet<'_>, measured: &Measured, seq: u64) {
        let amount = measured.amount;
        let finding = |id, severity| Finding::new(id, severity).of([seq]).with("amount", amount);
        if amount.is_zero() {
            self.find(finding("zero_volume", Severity::Note));
            return;
        }
        // Booking says what is wrong with a volume below zero.
        if amount.is_negative() {
            return;
        }
        if let Some(step) = sheet.step()
            && amount.compare(&step) == Ok(Ordering::Greater)
        {
            self.find(finding("step_exceeded", Severity::Caution).with("step", step));
        }
        if !self.holds.is_empty() {
            self.find(finding("poured_on_hold", Severity::Stop));
        }
        let seen = self
            .deciding
            .as_ref()
            .map(|look| (look.verdict, look.grade));
        match seen.and_then(|(verdict, _)| verdict) {
            _ if sheet.procedure.is_none() || (sheet.job.fills_by_measure() && seen.is_none()) => {}
            Some(Verdict::Low) => {}
            Some(Verdict::AtLevel) if self.explains(amount) => {}
            Some(Verdict::AtLevel | Verdict::Over) => {
                self.find(finding("poured_after_level", Severity::Caution))
            }
            _ => self.find(finding("poured_unproven", Severity::Caution)),
        }
        if self.plug == Some(PlugState::Open) && seen.is_some_and(|(_, grade)| grade.is_flow()) {
            self.find(finding("poured_while_flowing", Severity::Caution));
        }
        let count = amount.count().unwrap_or(0);
        let [first, second] = self.clock.pours;
        if first > 0 && second == first.saturating_mul(2) && count == first.saturating_mul(3) {
            self.find(finding("running_total_doubt", Severity::Note));
        }
        self.clock.pours = [second, count];
    }

    /// Whether what was lost while closing explains a pour of this amount; a mass is not weighed against it.
    fn explains(&self, amount: Amount) -> bool {
        let is_volume = amount.kind() == Kind::Volume;
        self.closing_loss > 0
            && (!is_volume
                || amount
                    .count()
                    .is_some_and(|count| count <= self.closing_loss))
    }

    /// Holds a torque against the sheet's.
    pub(super) fn tighten(&mut self, sheet: &Sheet<'_>, torque: Amount, seq: u64) {
        self.tightened = Some(seq);
        if self.plug != Some(PlugState::Closed) {
            self.find(Finding::new("closing_order", Severity::Caution).of([seq]));
        }
        let Some(closing) = sheet.procedure.and_then(|sheet| sheet.closing.as_ref()) else {
            return;
        };
        let Some(asked) = closing.torque else { return };
        let places = asked.decimals().saturating_add(1);
        let converted = torque
            .to(asked.unit(), places, Rounding::HalfEven)
            .ok()
            .filter(|_| torque.unit() != asked.unit());
        let finding = |id, severity| {
            let mut finding = Finding::new(id, severity)
                .of([seq])
                .field("torque")
                .with("torque", torque)
                .with("asked", asked);
            finding.args = finding.args.with_some("converted", converted);
            finding
        };
        let (Some(count), Some(right)) = (torque.count(), asked.count()) else {
            return;
        };
        let stated = closing.tolerance.and_then(|tolerance| tolerance.count());
        let tolerance = stated.unwrap_or_else(|| right.checked_div(ROUGHLY).unwrap_or(0));
        if count.saturating_sub(right).saturating_abs() <= tolerance {
            return;
        }
        // The number of any print of the sheet, with another unit behind it.
        let slipped = |print: &Amount| {
            torque.unit() != print.unit()
                && Amount::new(torque.mantissa(), torque.decimals(), print.unit())
                    .is_ok_and(|same| same == *print)
        };
        if closing.printed.iter().chain([&asked]).any(slipped) {
            self.find(finding("torque_unit_doubt", Severity::Stop));
            self.tightened = None;
        } else {
            self.find(finding("torque_outside", Severity::Caution));
        }
    }
}
