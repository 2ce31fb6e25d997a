//! What makes a record look as if it was written afterwards: numbers and times that are too much alike.

use super::{ComebackRules, Notice, Record};
use crate::check::{Entry, Fact};
use crate::procedure::Severity;
use crate::quantity::Amount;
use alloc::collections::BTreeMap;
use alloc::vec::Vec;

const NANOSECONDS: i128 = 1_000_000_000;

/// What is too much alike within one record.
pub(super) fn alike(record: &Record, entries: &[&Entry], rules: &ComebackRules) -> Vec<Notice> {
    let mut notices = Vec::new();
    notices.extend(readings(record, entries, rules));
    notices.extend(times(record, entries, rules));
    notices
}

fn reaches(count: usize, least: u32) -> bool {
    u32::try_from(count).map_or(true, |count| count >= least)
}

/// Temperatures of the fluid that are all the same.
fn readings(record: &Record, entries: &[&Entry], rules: &ComebackRules) -> Option<Notice> {
    let read = || {
        entries.iter().filter_map(|entry| match &entry.fact {
            Fact::Temperature { reading, source } if source.reads_fluid() => {
                Some((entry.seq, *reading))
            }
            _ => None,
        })
    };
    let (_, first) = read().next()?;
    if !reaches(read().count(), rules.readings) || read().any(|(_, reading)| reading != first) {
        return None;
    }
    let alike = read().map(|(seq, _)| seq);
    let notice = Notice::new("temperatures_alike", Severity::Caution).of(record, alike);
    Some(notice.with("reading", first))
}

/// Times that are all the same, equally far apart, or nearer together than the work takes.
fn times(record: &Record, entries: &[&Entry], rules: &ComebackRules) -> Option<Notice> {
    let (first, last) = (entries.first()?, entries.last()?);
    if !reaches(entries.len(), rules.entries) {
        return None;
    }
    let apart = |before: &Entry, after: &Entry| {
        let (before, after) = (before.at.nanoseconds(), after.at.nanoseconds());
        after.saturating_sub(before)
    };
    let mut gaps = entries.windows(2).map(|pair| match pair {
        [before, after] => apart(before, after),
        _ => 0,
    });
    let first_gap = gaps.next()?;
    let is_even = gaps.all(|gap| gap == first_gap);
    let took = apart(first, last);
    let at_once = i128::from(rules.at_once_seconds).saturating_mul(NANOSECONDS);
    let id = match (is_even, first_gap) {
        (true, 0) => "times_equal",
        (true, _) => "times_even",
        _ if (0..=at_once).contains(&took) => "times_at_once",
        _ => return None,
    };
    let seconds = |time: i128| u64::try_from(time.checked_div(NANOSECONDS)?).ok();
    let told = match id {
        "times_even" => seconds(first_gap),
        "times_at_once" => seconds(took),
        _ => None,
    };
    let seqs = entries.iter().map(|entry| entry.seq);
    let notice = Notice::new(id, Severity::Caution).of(record, seqs);
    Some(notice.with_some("seconds", told))
}

/// What each person wrote in job after job. Entries that name nobody are taken as one person's.
#[derive(Debug, Default)]
pub(super) struct Habits<'r> {
    poured: BTreeMap<Option<&'r str>, Same<'r>>,
    watched: BTreeMap<Option<&'r str>, Same<'r>>,
}

/// Jobs of one person, as long as all say the same.
#[derive(Debug, Default)]
struct Same<'r> {
    amount: Option<Amount>,
    /// Each job, and how many of the entries belong to the jobs up to it.
    jobs: Vec<(&'r Record, usize)>,
    entries: Vec<u64>,
    differs: bool,
}

impl<'r> Same<'r> {
    fn take(&mut self, record: &'r Record, seqs: impl IntoIterator<Item = u64>, amount: Amount) {
        self.differs = self.differs || *self.amount.get_or_insert(amount) != amount;
        if self.differs {
            return;
        }
        self.entries.extend(seqs);
        match self.jobs.last_mut() {
            Some((last, until)) if core::ptr::eq(*last, record) => *until = self.entries.len(),
            _ => self.jobs.push((record, self.entries.len())),
        }
    }

    /// Each job with its entries.
    fn jobs(&self) -> impl Iterator<Item = (&'r Record, &[u64])> {
        let mut from = 0;
        self.jobs.iter().map(move |(record, until)| {
            let entries = self.entries.get(from..*until).unwrap_or_default();
            from = *until;
            (*record, entries)
        })
    }
}

impl<'r> Habits<'r> {
    pub(super) fn take(&mut self, record: &'r Record, entries: &[&'r Entry]) {
        let mut first: Option<&'r Entry> = None;
        let mut sum: Option<Amount> = None;
        for entry in entries.iter().copied() {
            let by = entry.by.as_deref();
            match &entry.fact {
                Fact::Flow { watched, .. } => {
                    let same = self.watched.entry(by).or_default();
                    same.take(record, [entry.seq], *watched);
                }
                // All that was poured in a job, under the name that stands on the first pour.
                Fact::Added { measured, .. } => {
                    let more =
                        sum.map_or(Ok(measured.amount), |sum| sum.checked_add(measured.amount));
                    // Volumes and masses have no sum; the last one stands for such a job.
                    sum = Some(more.unwrap_or(measured.amount));
                    first = first.or(Some(entry));
                }
                _ => {}
            }
        }
        if let (Some(first), Some(sum)) = (first, sum) {
            let poured = entries
                .iter()
                .filter(|entry| matches!(entry.fact, Fact::Added { .. }));
            let same = self.poured.entry(first.by.as_deref()).or_default();
            same.take(record, poured.map(|entry| entry.seq), sum);
        }
    }

    pub(super) fn alike(self, rules: &ComebackRules) -> Vec<Notice> {
        let told = |id: &'static str, habits: BTreeMap<Option<&str>, Same<'_>>| {
            let alike = habits
                .into_iter()
                .filter(|(_, same)| !same.differs && reaches(same.jobs.len(), rules.jobs));
            alike
                .map(|(by, same)| {
                    let jobs = u64::try_from(same.jobs.len()).unwrap_or(u64::MAX);
                    let notice = Notice::new(id, Severity::Note)
                        .with("jobs", jobs)
                        .with_some("amount", same.amount)
                        .with_some("by", by);
                    same.jobs().fold(notice, |notice, (record, entries)| {
                        notice.of(record, entries.iter().copied())
                    })
                })
                .collect::<Vec<_>>()
        };
        let mut notices = told("pours_alike", self.poured);
        notices.extend(told("looks_alike", self.watched));
        notices
    }
}
