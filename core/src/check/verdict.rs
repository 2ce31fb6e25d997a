//! The verdict: a reading of what is known, never more than it.

use super::entry::Grade;
use super::evidence::{Repeat, State};
use super::ledger::Span;
use super::sheet::Sheet;
use crate::procedure::Sign;
use crate::word::words;

words! {
    /// What can be said of the level.
    pub enum Verdict {
        /// The job is on hold; no level may be told.
        OnHold = "on_hold",
        /// No sheet applies.
        NoProcedure = "no_procedure",
        /// The check was broken off and must be made again.
        Repeat = "repeat",
        /// Nothing has been shown yet.
        Incomplete = "incomplete",
        /// Below the level.
        Low = "low",
        /// At the level.
        AtLevel = "at_level",
        /// Above the level.
        Over = "over",
        /// At the level or above it.
        NotLow = "not_low",
        /// At the level or below it.
        NotFull = "not_full",
        /// What was seen proves neither.
        NotProven = "not_proven",
    }
}

/// What was seen at the opening.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Row {
    None,
    AtLevel,
    Over,
}

impl Row {
    pub(super) fn of(grade: Grade) -> Self {
        match grade {
            Grade::None | Grade::Wet => Row::None,
            _ if grade.is_at_lip() => Row::AtLevel,
            _ => Row::Over,
        }
    }

    /// The departure it would mean without any defect.
    pub(super) const fn apparent(self, lip_band: i128) -> Span {
        match self {
            Row::None => Span::UP_TO_ZERO,
            Row::AtLevel => Span::new(0, lip_band),
            Row::Over => Span::FROM_ZERO,
        }
    }

    /// The verdict cell: what was seen, against which way the defects mislead.
    pub(super) const fn verdict(self, sign: Option<Sign>) -> Verdict {
        match (self, sign) {
            (Row::None, None) => Verdict::Low,
            (Row::AtLevel, None) => Verdict::AtLevel,
            (Row::Over, None) => Verdict::Over,
            (Row::None, Some(Sign::High)) | (Row::AtLevel, Some(Sign::High)) => Verdict::NotFull,
            (Row::AtLevel, Some(Sign::Low)) | (Row::Over, Some(Sign::Low)) => Verdict::NotLow,
            (Row::None, Some(Sign::Low))
            | (Row::Over, Some(Sign::High))
            | (_, Some(Sign::Both)) => Verdict::NotProven,
        }
    }
}

impl State {
    pub(super) fn verdict(&self, sheet: &Sheet<'_>) -> Verdict {
        if !self.holds.is_empty() {
            Verdict::OnHold
        } else if sheet.procedure.is_none() {
            Verdict::NoProcedure
        } else if self.repeat != Repeat::No {
            Verdict::Repeat
        } else {
            self.deciding
                .as_ref()
                .and_then(|look| look.verdict)
                .unwrap_or(Verdict::Incomplete)
        }
    }
}
