//! What the shortage says of a leak: the sheet's own count, and how far what is proved bears it out.

use super::evidence::{State, Volumes};
use super::ledger::Span;
use super::sheet::Sheet;
use crate::procedure::{Counts, LeakLimit};
use crate::word::words;
use core::cmp::Ordering;

words! {
    /// What the sheet's own count says.
    pub enum BySheet {
        /// Past the limit: a leak must be looked for.
        Above = "above",
        /// Not past the limit, with the level found.
        Below = "below",
        /// Not past the limit, with the level not found yet.
        Open = "open",
        /// The sheet has no limit, or the job is not one it applies to.
        NotApplicable = "not_applicable",
    }
}

words! {
    /// How far what is proved bears the count out.
    pub enum Certainty {
        /// All that is possible lies on the same side.
        Clear = "clear",
        /// Something possible lies on the other side.
        Marginal = "marginal",
        /// Nothing is said yet.
        Open = "open",
        /// There is nothing to say.
        NotApplicable = "not_applicable",
    }
}

/// The leak reading in counts of volume.
#[derive(Debug, Clone, Copy)]
pub(super) struct Leak {
    pub(super) by_sheet: BySheet,
    pub(super) certainty: Certainty,
    pub(super) gross: i128,
    pub(super) net: i128,
    pub(super) used: i128,
    pub(super) shortage: Span,
    pub(super) margin: Option<i128>,
    /// Whether the proved shortage alone is past the limit.
    pub(super) by_shortage: bool,
}

impl State {
    pub(super) fn leak(&self, sheet: &Sheet<'_>) -> Leak {
        let volumes = self.found.map_or(self.volumes, |(_, volumes)| volumes);
        let shortage = self.ledger.found.negated();
        let limit = sheet.leak_limit().filter(|_| sheet.job.counts_for_leak());
        let count = limit.and_then(|limit| Some((limit, limit.limit()?.count()?)));
        let used = used(sheet.leak_limit(), volumes);
        let mut leak = Leak {
            by_sheet: BySheet::NotApplicable,
            certainty: Certainty::NotApplicable,
            gross: volumes.added,
            net: volumes.net(),
            used,
            shortage,
            margin: None,
            by_shortage: false,
        };
        let Some((limit, at)) = count else {
            return leak;
        };
        let counted_past = limit.passed_at(used.cmp(&at));
        let shortage_past = shortage.lo.is_some_and(|lo| limit.passed_at(lo.cmp(&at)));
        leak.by_shortage = shortage_past && !counted_past;
        leak.by_sheet = if counted_past || shortage_past {
            BySheet::Above
        } else if self.found.is_some() {
            BySheet::Below
        } else {
            BySheet::Open
        };
        let about = limit.about.and_then(|about| about.count()).unwrap_or(0);
        // Strictly, unless "at least" puts the limit itself on the other side and nothing is soft.
        let sharp_at_least = limit.at_least.is_some() && about == 0;
        let (above_from, below_to) = (at.saturating_add(about), at.saturating_sub(about));
        let is_clear = match leak.by_sheet {
            BySheet::Above => shortage.lo.is_some_and(|lo| match lo.cmp(&above_from) {
                Ordering::Equal => sharp_at_least,
                order => order.is_gt(),
            }),
            _ => shortage.hi.is_some_and(|hi| match hi.cmp(&below_to) {
                Ordering::Equal => !sharp_at_least,
                order => order.is_lt(),
            }),
        };
        leak.certainty = match (leak.by_sheet, is_clear) {
            (BySheet::Open, _) => Certainty::Open,
            (_, true) => Certainty::Clear,
            (_, false) => Certainty::Marginal,
        };
        let from = if leak.by_shortage {
            shortage.lo.unwrap_or(used)
        } else {
            used
        };
        leak.margin = Some(from.saturating_sub(at).saturating_abs());
        leak
    }
}

/// The count that is held against the limit.
fn used(limit: Option<&LeakLimit>, volumes: Volumes) -> i128 {
    match limit.and_then(|limit| limit.counts) {
        Some(Counts::Gross) => volumes.added,
        _ => volumes.net(),
    }
}
