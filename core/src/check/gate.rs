//! May I do this now? Every item that stands in the way, and how long those that mend themselves take.

use super::entry::PlugState;
use super::evidence::State;
use super::finding::Unmet;
use super::leak::BySheet;
use super::look::Outcome;
use super::sheet::Sheet;
use super::verdict::Verdict;
use crate::procedure::{Act, Defect, EngineState};
use crate::quantity::{Amount, Rounding, Unit};
use alloc::vec::Vec;
use core::cmp::Ordering;
use serde::Serialize;

/// The answer of a gate.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct Gate {
    /// Whether nothing stands in the way.
    pub allowed: bool,
    /// What stands in the way.
    pub unmet: Vec<Unmet>,
}

/// What must be confirmed before the plug is opened; common practice, no source.
const BEFORE_OPENING: [&str; 5] = [
    "fill_opening_proven",
    "plug_identified",
    "closing_kit_ready",
    "pan_empty",
    "wheels_chocked",
];

/// A duration of this many nanoseconds, in whole seconds, never short.
pub(super) fn seconds(nanoseconds: i128) -> Option<Amount> {
    Amount::from_count(nanoseconds, Unit::Second, 0, Rounding::Ceiling).ok()
}

impl State {
    /// Whether an act is allowed at a moment. `planned` is the volume about to be poured.
    pub(super) fn gate(
        &self,
        sheet: &Sheet<'_>,
        act: Act,
        planned: Option<Amount>,
        at: i128,
    ) -> Gate {
        let mut unmet = Vec::new();
        let stops = matches!(act, Act::Open | Act::Pour);
        if stops && let Some((seq, why)) = self.holds.last() {
            unmet.push(Unmet::new("on_hold").with("entry", *seq).with("why", *why));
        }
        if stops && sheet.procedure.is_none() {
            unmet.push(Unmet::new("no_procedure"));
        }
        match act {
            Act::Open => self.open(sheet, at, &mut unmet),
            Act::Pour => self.may_pour(sheet, planned, at, &mut unmet),
            Act::Close => self.close(sheet, &mut unmet),
            Act::StopEngine => self.stop_engine(sheet, &mut unmet),
        }
        Gate {
            allowed: unmet.is_empty(),
            unmet,
        }
    }

    pub(super) fn is_confirmed(&self, sheet: &Sheet<'_>, what: &str) -> bool {
        sheet.stands(what) || self.confirmed.contains(what)
    }

    fn open(&self, sheet: &Sheet<'_>, at: i128, unmet: &mut Vec<Unmet>) {
        if self.plug == Some(PlugState::Open) {
            unmet.push(Unmet::new("plug_already_open"));
        }
        unmet.extend(
            BEFORE_OPENING
                .into_iter()
                .filter(|what| !self.is_confirmed(sheet, what))
                .map(Unmet::new),
        );
        let sample = match self.freshness(sheet, at) {
            Ok(sample) => sample,
            Err(outcome) => {
                let mut read = Unmet::new(if outcome == Outcome::Stale {
                    "temperature_stale"
                } else {
                    "temperature_missing"
                });
                read.args = read
                    .args
                    .with_some("reading", self.sample.map(|sample| sample.reading));
                unmet.push(read);
                None
            }
        };
        unmet.extend(
            self.defects(sheet, sample, at)
                .into_iter()
                .map(|defect| self.unmet_defect(sheet, defect, at)),
        );
    }

    /// A defect that a look at this moment would have, with what it takes to mend it.
    fn unmet_defect(&self, sheet: &Sheet<'_>, defect: Defect, at: i128) -> Unmet {
        let mut unmet = Unmet::new(defect.slug());
        let window = sheet
            .conditions()
            .and_then(|conditions| conditions.temperature.as_ref());
        let limit = match defect {
            Defect::BelowWindow => window.and_then(|window| window.min),
            Defect::AboveWindow => window.and_then(|window| window.max),
            _ => None,
        };
        if let (Some(limit), Some(sample)) = (limit, self.sample) {
            unmet = unmet.with("reading", sample.reading).with("limit", limit);
        }
        if let (Defect::TiltToward | Defect::TiltAway | Defect::TiltUnknown, Some((tilt, _))) =
            (defect, self.tilt)
        {
            unmet = unmet.with("tilt", tilt);
        }
        let conditions = sheet.conditions();
        unmet.args = match defect {
            Defect::Selector => unmet.args.with_some(
                "asked",
                conditions.and_then(|conditions| conditions.selector.as_deref()),
            ),
            Defect::Ranges => unmet
                .args
                .with_some("asked", sheet.ranges().and_then(|ranges| ranges.dwell)),
            _ => unmet.args,
        };
        let since = match defect {
            Defect::PourSettle => self.last_pour.map(|(_, poured)| poured),
            Defect::StopSettle => self.engine_stopped_at,
            _ => None,
        };
        unmet.wait = match since {
            Some(since) => seconds(since.saturating_add(sheet.settle).saturating_sub(at)),
            None if defect == Defect::BelowWindow => self.opens_in(sheet, at),
            None => None,
        };
        unmet
    }

    fn may_pour(
        &self,
        sheet: &Sheet<'_>,
        planned: Option<Amount>,
        at: i128,
        unmet: &mut Vec<Unmet>,
    ) {
        if sheet.procedure.is_some() && !sheet.fluid_is_resolved() {
            unmet.push(Unmet::new("fluid_unresolved"));
        }
        let seen = self.deciding.as_ref();
        let verdict = self.verdict(sheet);
        let puts_back_closing_loss = verdict == Verdict::AtLevel && self.closing_loss > 0;
        let pours_blind = sheet.job.fills_by_measure() && seen.is_none();
        if verdict == Verdict::AtLevel && self.excess_out {
            unmet.push(Unmet::new("would_restore_excess"));
        } else if puts_back_closing_loss {
            let put_back = sheet
                .procedure
                .and_then(|sheet| sheet.closing.as_ref()?.replace_closing_loss);
            if !put_back.unwrap_or(false) {
                unmet.push(Unmet::new("closing_loss_stays_out"));
            }
            if let Some(planned) = planned
                && planned
                    .count()
                    .is_none_or(|count| count > self.closing_loss)
            {
                unmet.push(Unmet::new("more_than_closing_loss").with("planned", planned));
            }
        } else if !pours_blind && verdict != Verdict::Low {
            unmet.push(Unmet::new("low_not_shown").with("verdict", verdict.slug()));
        } else if let (Some(look), Some((poured, poured_at))) = (seen, self.last_pour)
            && poured > look.seq
        {
            let mut look_first = Unmet::new("look_first").with("entry", poured);
            let left = poured_at.saturating_add(sheet.settle).saturating_sub(at);
            look_first.wait = if left > 0 { seconds(left) } else { None };
            unmet.push(look_first);
        }
        let leak = self.leak(sheet);
        if leak.by_sheet == BySheet::Above && !puts_back_closing_loss {
            unmet.push(Unmet::new("leak_limit_passed"));
        }
        if let (Some(planned), Some(step)) = (planned, sheet.step())
            && planned.compare(&step) == Ok(Ordering::Greater)
        {
            unmet.push(
                Unmet::new("step_exceeded")
                    .with("planned", planned)
                    .with("step", step),
            );
        }
        if self.opening_is_doubted(sheet) {
            unmet.push(Unmet::new("opening_doubted"));
        }
    }

    fn close(&self, sheet: &Sheet<'_>, unmet: &mut Vec<Unmet>) {
        if self.plug != Some(PlugState::Open) {
            unmet.push(Unmet::new("plug_not_open"));
        }
        let verdict = self.verdict(sheet);
        // A check that cannot be finished is closed all the same: the plug is safer in than out.
        let given_up = matches!(verdict, Verdict::OnHold | Verdict::Repeat);
        let to_leak = self.found.is_none() && self.leak(sheet).by_sheet == BySheet::Above;
        if verdict != Verdict::AtLevel && !given_up && !to_leak {
            unmet.push(Unmet::new("level_not_shown").with("verdict", verdict.slug()));
        }
        if let (Some(poured), Some((found, _))) = (self.unexplained_pour, self.found)
            && poured > found
            && !given_up
        {
            unmet.push(Unmet::new("look_first").with("entry", poured));
        }
        if !self.is_confirmed(sheet, "closing_kit_ready") {
            unmet.push(Unmet::new("closing_kit_ready"));
        }
        let runs = self.engine.is_some_and(EngineState::is_running);
        if self.closes_before_stop(sheet) && !runs && !given_up {
            unmet.push(Unmet::new(Defect::EngineOff.slug()));
        }
    }

    fn stop_engine(&self, sheet: &Sheet<'_>, unmet: &mut Vec<Unmet>) {
        let open = matches!(self.plug, Some(PlugState::Open | PlugState::Loosened));
        if open && self.closes_before_stop(sheet) {
            let state = self.plug.map_or("", PlugState::slug);
            unmet.push(Unmet::new("plug_not_closed").with("plug", state));
        }
        if self.engine == Some(EngineState::Off) {
            unmet.push(Unmet::new("engine_already_off"));
        }
    }

    fn closes_before_stop(&self, sheet: &Sheet<'_>) -> bool {
        let stated = sheet
            .procedure
            .and_then(|sheet| sheet.closing.as_ref()?.close_before_stop);
        stated.unwrap_or_else(|| sheet.wants_running())
    }
}
