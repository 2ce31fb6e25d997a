//! Corrections take effect at the corrected place, and a drained volume that was caught supplies its flow.

use super::entry::{DrainedWhy, Entry, Fact, Measured};
use super::finding::Finding;
use crate::procedure::Severity;
use alloc::collections::BTreeMap;
use alloc::vec::Vec;

/// One entry as it counts.
#[derive(Debug, Clone, Copy)]
pub(super) struct Counted<'e> {
    pub(super) entry: &'e Entry,
    /// What a later entry says was captured from this flow.
    pub(super) supplied: Option<Supply>,
    /// What this drained volume is, if it says it was captured.
    pub(super) capture: Capture,
}

/// A captured volume that came with an entry of its own.
#[derive(Debug, Clone, Copy)]
pub(super) struct Supply {
    /// The entry that tells it.
    pub(super) seq: u64,
    pub(super) measured: Measured,
}

/// What became of a `drained` that says `captured`.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Capture {
    /// It says something else.
    NotOne,
    /// It supplied a flow, and moves nothing itself.
    Supplied,
    /// Every flow has its own: the same fluid told twice.
    Twice,
}

impl<'e> Counted<'e> {
    pub(super) const fn plain(entry: &'e Entry) -> Self {
        Counted {
            entry,
            supplied: None,
            capture: Capture::NotOne,
        }
    }
}

/// Whether an entry changes how earlier ones count.
pub(super) const fn reaches_back(entry: &Entry) -> bool {
    matches!(
        entry.fact,
        Fact::Correction { .. }
            | Fact::Drained {
                why: DrainedWhy::Captured,
                ..
            }
    )
}

/// The entries as they count, in order: corrected ones as they were corrected, without the corrections.
pub(crate) fn standing<'e>(
    entries: impl DoubleEndedIterator<Item = &'e Entry> + Clone,
) -> Vec<&'e Entry> {
    let corrects = |entry: &Entry| matches!(entry.fact, Fact::Correction { .. });
    if !entries.clone().any(corrects) {
        return entries.collect();
    }
    let (counted, _) = counted(entries, |_| true);
    counted.iter().map(|counted| counted.entry).collect()
}

/// The entries as they count, in order, without the corrections; and the corrections that correct nothing.
/// A captured volume that cannot be booked was not measured, so `books` says which can.
pub(super) fn counted<'e>(
    entries: impl DoubleEndedIterator<Item = &'e Entry> + Clone,
    books: impl Fn(&Measured) -> bool,
) -> (Vec<Counted<'e>>, Vec<Finding>) {
    let mut findings = Vec::new();
    // What stands at a place instead of its own entry; `None` where nothing does. The last correction wins, so
    // they are walked from the end, and one that was itself corrected is met in its corrected form.
    let mut instead: BTreeMap<u64, Option<&'e Entry>> = BTreeMap::new();
    if entries
        .clone()
        .any(|entry| matches!(entry.fact, Fact::Correction { .. }))
    {
        let places: Vec<u64> = entries.clone().map(|entry| entry.seq).collect();
        for entry in entries.clone().rev() {
            let standing = instead.get(&entry.seq).copied().unwrap_or(Some(entry));
            let Some(Fact::Correction { of, replaces, .. }) =
                standing.map(|standing| &standing.fact)
            else {
                continue;
            };
            if *of >= entry.seq || places.binary_search(of).is_err() {
                findings.push(
                    Finding::new("correction_without_target", Severity::Caution)
                        .of([entry.seq])
                        .field("of")
                        .with("of", *of),
                );
                continue;
            }
            instead.entry(*of).or_insert(replaces.as_deref());
        }
        findings.reverse();
    }
    let mut counted: Vec<Counted<'e>> = Vec::with_capacity(entries.clone().count());
    let mut open_flows: Vec<usize> = Vec::new();
    for entry in entries {
        let Some(standing) = instead.get(&entry.seq).copied().unwrap_or(Some(entry)) else {
            continue;
        };
        let mut this = Counted::plain(standing);
        match &standing.fact {
            Fact::Correction { .. } => continue,
            Fact::Flow {
                grade, captured, ..
            } if grade.is_flow() && !captured.as_ref().is_some_and(&books) => {
                open_flows.push(counted.len());
            }
            Fact::Drained {
                why: DrainedWhy::Captured,
                measured,
            } if books(measured) => {
                let flow = open_flows.pop().and_then(|index| counted.get_mut(index));
                this.capture = if flow.is_some() {
                    Capture::Supplied
                } else {
                    Capture::Twice
                };
                if let Some(flow) = flow {
                    flow.supplied = Some(Supply {
                        seq: standing.seq,
                        measured: *measured,
                    });
                }
            }
            _ => {}
        }
        counted.push(this);
    }
    (counted, findings)
}
