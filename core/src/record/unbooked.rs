//! Volumes that a record tells and that could not be booked, so that nobody knows how much went in or came out.

use super::{Record, RecordedFinding};
use crate::check::{DrainedWhy, Fact, standing};
use crate::procedure::Severity;
use crate::quantity::Interval;
use alloc::collections::BTreeSet;
use alloc::vec::Vec;

/// What is found of such a volume. Of a volume by scale an unknown density is a caution, and the volume is booked.
const FINDINGS: [&str; 3] = ["volume_negative", "volume_impossible", "density_unknown"];

/// The entries whose volumes could not be booked, by `seq`. A captured one counts as not measured already.
#[derive(Debug, Default)]
pub(crate) struct Unbooked {
    pub(crate) poured: Vec<u64>,
    pub(crate) drained: Vec<u64>,
}

impl Unbooked {
    pub(crate) fn of(record: &Record) -> Self {
        let is_one = |finding: &&RecordedFinding| {
            finding.severity == Severity::Stop && FINDINGS.contains(&finding.id.as_str())
        };
        let found = record.findings().iter().filter(is_one);
        let found: BTreeSet<u64> = found
            .flat_map(|finding| &finding.entries)
            .copied()
            .collect();
        let mut told = Unbooked::default();
        if found.is_empty() {
            return told;
        }
        for entry in standing(record.journal().entries().iter()) {
            match entry.fact {
                _ if !found.contains(&entry.seq) => {}
                Fact::Added { .. } => told.poured.push(entry.seq),
                Fact::Drained { why, .. } if why != DrainedWhy::Captured => {
                    told.drained.push(entry.seq);
                }
                _ => {}
            }
        }
        told
    }

    pub(super) fn entries(&self) -> impl Iterator<Item = u64> {
        self.poured.iter().chain(&self.drained).copied()
    }

    /// What is still proved of the departure as found: it may have been lower by what was poured, higher by what was drained.
    pub(super) fn before(&self, proved: Interval) -> Interval {
        known(proved, self.poured.is_empty(), self.drained.is_empty())
    }

    /// What is still proved of what was added, and of the departure after it.
    pub(super) fn after(&self, proved: Interval) -> Interval {
        known(proved, self.drained.is_empty(), self.poured.is_empty())
    }
}

/// An interval with those of its ends that are known.
fn known(proved: Interval, lo: bool, hi: bool) -> Interval {
    let (lo, hi) = (proved.lo().filter(|_| lo), proved.hi().filter(|_| hi));
    // An interval that was one is one with an end less.
    Interval::new(lo, hi).unwrap_or(proved)
}
