//! Why: reasons down to entries of the journal and fields of the sheet, and what keeps another verdict away.

use super::evaluation::told;
use super::evidence::State;
use super::finding::Reason;
use super::leak::{BySheet, Certainty, Leak};
use super::look::{Observation, Outcome};
use super::sheet::Sheet;
use super::verdict::{Row, Verdict};
use crate::procedure::Defect;
use crate::quantity::Rounding;
use alloc::string::String;
use alloc::vec::Vec;

/// The fields of the sheet a defect rests on.
const fn fields(defect: Defect) -> &'static [&'static str] {
    match defect {
        Defect::BelowWindow => &["conditions.temperature.min", "method.warming"],
        Defect::AboveWindow => &["conditions.temperature.max", "method.warming"],
        Defect::EngineOff | Defect::EngineRunning => &["conditions.engine"],
        Defect::Selector => &["conditions.selector"],
        Defect::Ranges => &["conditions.ranges"],
        Defect::Cooler => &["conditions.cooler"],
        Defect::Foam => &[],
        Defect::TiltToward | Defect::TiltAway | Defect::TiltUnknown => &["conditions.tilt"],
        Defect::PourSettle | Defect::StopSettle => &["method.settle"],
    }
}

const fn shows(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Low => "shows_low",
        Verdict::AtLevel => "shows_at_level",
        Verdict::Over => "shows_over",
        Verdict::NotLow => "shows_not_low",
        Verdict::NotFull => "shows_not_full",
        _ => "shows_nothing",
    }
}

impl State {
    /// Every reason for the answer, entry by entry, then for the leak reading.
    pub(super) fn because(&self, sheet: &Sheet<'_>, leak: &Leak) -> Vec<Reason> {
        let mut reasons = Vec::new();
        for look in self.looks.iter() {
            self.because_of(sheet, look, &mut reasons);
        }
        for (seq, why) in &self.holds {
            reasons.push(Reason::new("held").of([*seq]).with("why", *why));
        }
        self.because_of_leak(sheet, leak, &mut reasons);
        reasons
    }

    /// The reasons that one look gives.
    pub(super) fn because_of(
        &self,
        sheet: &Sheet<'_>,
        look: &Observation,
        reasons: &mut Vec<Reason>,
    ) {
        let unit = sheet.unit();
        let id = match look.outcome {
            Outcome::Counts => shows(look.verdict.unwrap_or(Verdict::NotProven)),
            Outcome::Spurt => "spurt",
            Outcome::ShortLook => "short_look",
            Outcome::NotOpen => "plug_was_not_open",
            Outcome::NoTemperature => "temperature_missing",
            Outcome::Stale => "temperature_stale",
            Outcome::Contradicted { .. } => "contradicted",
        };
        let mut reason = Reason::new(id)
            .of([look.seq])
            .with("grade", look.grade.slug());
        if let Some(sample) = look.sample {
            reason = reason.of([sample.seq]).with("reading", sample.reading);
        }
        if let Outcome::Contradicted { below, above } = look.outcome {
            reason = reason.of([below, above].into_iter().flatten());
        }
        match look.outcome {
            Outcome::Spurt | Outcome::ShortLook => {
                reason = reason.fields(["method.watch", "method.hold_up"])
            }
            Outcome::NoTemperature | Outcome::Stale => {
                reason = reason.fields(["conditions.temperature.max_age"])
            }
            _ => {}
        }
        if let Some(booked) = look.captured {
            reason = reason.with_some("captured", told(booked.nominal, unit, Rounding::HalfUp));
        }
        reason = reason
            .with_some(
                "now_from",
                look.now.lo.and_then(|lo| told(lo, unit, Rounding::Floor)),
            )
            .with_some(
                "now_to",
                look.now.hi.and_then(|hi| told(hi, unit, Rounding::Ceiling)),
            );
        reasons.push(reason);
        if matches!(look.outcome, Outcome::Counts | Outcome::Contradicted { .. }) {
            reasons.extend(
                look.defects
                    .iter()
                    .map(|defect| self.because_of_defect(sheet, look, *defect)),
            );
        }
    }

    fn because_of_defect(&self, sheet: &Sheet<'_>, look: &Observation, defect: Defect) -> Reason {
        let sign = sheet
            .procedure
            .map_or("", |sheet| sheet.sign(defect).slug());
        let window = sheet
            .conditions()
            .and_then(|conditions| conditions.temperature.as_ref());
        let limit = match defect {
            Defect::BelowWindow => window.and_then(|window| window.min),
            Defect::AboveWindow => window.and_then(|window| window.max),
            Defect::TiltToward | Defect::TiltAway => sheet
                .conditions()
                .and_then(|conditions| Some(conditions.tilt.as_ref()?.max)),
            _ => None,
        };
        let is_window = matches!(defect, Defect::BelowWindow | Defect::AboveWindow);
        let reading = look.sample.map(|sample| sample.reading);
        let reading = reading.filter(|_| is_window);
        Reason::new(defect.slug())
            .of([look.seq])
            .fields(fields(defect).iter().copied())
            .with("sign", sign)
            .with_some("limit", limit)
            .with_some("reading", reading)
            .with_some("volume", self.size_of(sheet, look, defect, limit))
    }

    fn because_of_leak(&self, sheet: &Sheet<'_>, leak: &Leak, reasons: &mut Vec<Reason>) {
        let unit = sheet.unit();
        let volume = |count: i128| told(count, unit, Rounding::HalfUp);
        let limit = sheet.leak_limit().and_then(|limit| limit.limit());
        let id = match leak.by_sheet {
            BySheet::Above if leak.by_shortage => "leak_by_shortage",
            BySheet::Above => "leak_by_count",
            BySheet::Below => "leak_below",
            BySheet::Open => "leak_open",
            BySheet::NotApplicable => "leak_not_applicable",
        };
        let mut reason = Reason::new(id);
        if let Some((found, _)) = self.found {
            reason = reason.of([found]);
        }
        if leak.by_sheet != BySheet::NotApplicable {
            reason = reason
                .fields(["leak_limit"])
                .with_some("used", volume(leak.used))
                .with_some("limit", limit);
        }
        reasons.push(reason);
        if leak.certainty == Certainty::Marginal {
            let reason = Reason::new("leak_marginal")
                .fields(["leak_limit"])
                .with_some(
                    "shortage_from",
                    leak.shortage
                        .lo
                        .and_then(|lo| told(lo, unit, Rounding::Floor)),
                )
                .with_some(
                    "shortage_to",
                    leak.shortage
                        .hi
                        .and_then(|hi| told(hi, unit, Rounding::Ceiling)),
                )
                .with_some("limit", limit);
            reasons.push(reason);
        }
        // More than the level does not come by itself either.
        if self.ledger.found.lo.is_some_and(|lo| lo > 0) {
            let causes = [
                "may_be_overfilled",
                "may_hold_coolant",
                "may_be_another_opening",
            ];
            reasons.extend(causes.map(Reason::new));
        }
        // A sealed unit uses nothing up: what is short was lost outside, lost into the coolant, or never filled.
        if sheet.job.counts_for_leak()
            && (leak.used > 0 || leak.shortage.lo.is_some_and(|lo| lo > 0))
        {
            let causes = [
                "may_be_lost_outside",
                "may_be_lost_into_coolant",
                "may_be_never_filled",
            ];
            reasons.extend(causes.map(Reason::new));
        }
    }

    /// What keeps another verdict away; nothing if it is the verdict.
    pub(super) fn why_not(&self, sheet: &Sheet<'_>, wanted: Verdict) -> Vec<Reason> {
        let actual = self.verdict(sheet);
        let mut reasons = Vec::new();
        if actual == wanted {
            return reasons;
        }
        match actual {
            Verdict::OnHold => reasons.extend(
                self.holds
                    .iter()
                    .map(|(seq, why)| Reason::new("held").of([*seq]).with("why", *why)),
            ),
            Verdict::NoProcedure => reasons.push(Reason::new("no_procedure")),
            Verdict::Repeat => reasons.push(Reason::new("must_begin_again")),
            _ => {}
        }
        let Some(look) = &self.deciding else {
            reasons.push(Reason::new("nothing_seen"));
            return reasons;
        };
        if look.outcome != Outcome::Counts {
            self.because_of(sheet, look, &mut reasons);
            return reasons;
        }
        let clean = Row::of(look.grade).verdict(None);
        if clean != wanted {
            let said: String = clean.slug().into();
            reasons.push(
                Reason::new("grade_says_otherwise")
                    .of([look.seq])
                    .with("grade", look.grade.slug())
                    .with("verdict", said),
            );
        }
        reasons.extend(
            look.defects
                .iter()
                .map(|defect| self.because_of_defect(sheet, look, *defect)),
        );
        reasons
    }
}
