//! What a job came to, sealed or not: what a follow-up is decided from.

use super::Record;
use super::series::{is_search, odometer_of};
use crate::check::{
    Entry, Evaluation, Fact, Header, LeakReading, LevelCheck, Moment, Verdict, standing,
};
use crate::quantity::{Amount, Interval};
use alloc::vec::Vec;

/// What a job came to.
pub(crate) struct Outcome<'j> {
    /// The digest of its record; empty for a job that is not sealed yet.
    pub(super) digest: &'j str,
    pub(super) header: &'j Header,
    pub(super) verdict: Verdict,
    pub(super) as_found: Interval,
    pub(super) leak: &'j LeakReading,
    /// The entries as they count, in order.
    entries: Vec<&'j Entry>,
}

impl<'j> Outcome<'j> {
    pub(super) fn sealed(record: &'j Record) -> Self {
        let journal = record.journal();
        Outcome {
            digest: record.digest(),
            header: journal.header(),
            verdict: record.verdict(),
            as_found: record.as_found(),
            leak: record.leak(),
            entries: standing(journal.entries().iter()),
        }
    }

    /// Of a check as it stands, by its own evaluation.
    pub(crate) fn so_far(check: &'j LevelCheck, evaluation: &'j Evaluation) -> Self {
        Outcome {
            digest: "",
            header: check.header(),
            verdict: evaluation.verdict(),
            as_found: evaluation.as_found(),
            leak: evaluation.leak(),
            entries: standing(check.entries()),
        }
    }

    pub(super) fn odometer(&self) -> Option<Amount> {
        odometer_of(self.header)
    }

    pub(super) fn is_leak_searched(&self) -> bool {
        is_search(self.header.job, &self.entries)
    }

    /// When the last thing was done to the vehicle, as it counts; `None` if nothing was. A note, a correction or an approval
    /// is written about it, and may come later.
    pub(super) fn worked_until(&self) -> Option<&Moment> {
        let is_work = |fact: &Fact| !matches!(fact, Fact::Note { .. } | Fact::Approved { .. });
        let mut work = self.entries.iter().rev();
        work.find(|entry| is_work(&entry.fact))
            .map(|entry| &entry.at)
    }

    /// Whether the cooler circuit was opened, and nothing says that it filled since.
    pub(super) fn is_cooler_open(&self) -> bool {
        let mut open = false;
        for entry in &self.entries {
            match &entry.fact {
                Fact::Confirmed { what } if what == "cooler_opened" => open = true,
                Fact::Confirmed { what } if what == "cooler_filled" => open = false,
                _ => {}
            }
        }
        open
    }
}
