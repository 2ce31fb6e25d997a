//! The records of one unit, in order of time.

use super::{Notice, Record};
use crate::check::{Entry, Fact, Header, Job, Moment, standing};
use crate::procedure::Severity;
use crate::quantity::Amount;
use alloc::collections::{BTreeMap, BTreeSet};
use alloc::vec::Vec;

/// The records of one unit, in order of time; those without a vehicle stand together under none.
#[derive(Debug)]
pub(crate) struct Series<'r> {
    pub(crate) vehicle: Option<&'r str>,
    pub(crate) unit: Option<&'r str>,
    pub(crate) records: Vec<&'r Record>,
    /// Jobs that were sealed again with more entries; the last record of each counts, and stands among `records`.
    pub(crate) resealed: Vec<Vec<&'r Record>>,
}

impl Series<'_> {
    /// What is to be said of jobs that were sealed more than once.
    pub(super) fn jobs_twice(&self) -> impl Iterator<Item = Notice> {
        self.resealed.iter().map(|sealed| {
            let last = sealed.last();
            let job = last.and_then(|record| record.journal().header().job_id.as_deref());
            let notice = Notice::new("job_twice", Severity::Note).with_some("job", job);
            let cited = sealed.iter();
            cited.fold(notice, |notice, record| notice.of(record, []))
        })
    }
}

/// Records by the unit they are about, each once; and those that came more than once, with how often.
pub(crate) fn by_unit(records: &[Record]) -> (Vec<Series<'_>>, Vec<(&Record, u64)>) {
    let mut seen: Vec<([u8; 16], &Record, u64)> = records.iter().map(begun).collect();
    // Digests are told apart by how they begin, so that their texts are looked up for equal ones only.
    seen.sort_unstable_by(|(one, own, _), (other, others, _)| {
        let further = || own.digest().cmp(others.digest());
        one.cmp(other).then_with(further)
    });
    seen.dedup_by(|(_, record, times), (_, kept, kept_times)| {
        let again = record == kept;
        *kept_times = kept_times.saturating_add(if again { *times } else { 0 });
        again
    });
    let mut units: BTreeMap<(Option<&str>, Option<&str>), Vec<&Record>> = BTreeMap::new();
    for (_, record, _) in &seen {
        let subject = record.journal().header().subject.as_ref();
        let vehicle = subject.map(|subject| subject.vehicle.as_str());
        let unit = subject.and_then(|subject| subject.unit.as_deref());
        units.entry((vehicle, unit)).or_default().push(record);
    }
    let series = units.into_iter().map(|((vehicle, unit), mut records)| {
        // Those of one moment stand by their digests, so that the order they came in says nothing.
        records.sort_by_key(|record| record.began().map(Moment::nanoseconds));
        let resealed = vehicle.map_or_else(Vec::new, |_| keep_last_sealed(&mut records));
        Series {
            vehicle,
            unit,
            records,
            resealed,
        }
    });
    let twice = seen.iter().filter(|(_, _, times)| *times > 1);
    let twice = twice.map(|(_, record, times)| (*record, *times));
    (series.collect(), twice.collect())
}

/// A record once, behind the beginning of its digest.
fn begun(record: &Record) -> ([u8; 16], &Record, u64) {
    let mut begin = [0; 16];
    let digest = record.digest().bytes();
    begin
        .iter_mut()
        .zip(digest)
        .for_each(|(to, from)| *to = from);
    (begin, record, 1)
}

/// Leaves one record of each job that was sealed more than once: that with the most entries, of those the one that ended
/// last. Records are of one job where they have its name, and began at one moment.
fn keep_last_sealed<'r>(records: &mut Vec<&'r Record>) -> Vec<Vec<&'r Record>> {
    let began = |record: &Record| record.began().map(Moment::nanoseconds);
    // They stand in order of time, and hardly ever two begin at one moment.
    if records.is_sorted_by(|one, next| began(one) < began(next)) {
        return Vec::new();
    }
    let mut jobs: BTreeMap<(&str, Option<i128>), Vec<&Record>> = BTreeMap::new();
    for record in records.iter().copied() {
        if let Some(job) = record.journal().header().job_id.as_deref() {
            jobs.entry((job, began(record))).or_default().push(record);
        }
    }
    jobs.retain(|_, sealed| sealed.len() > 1);
    let mut replaced = BTreeSet::new();
    for sealed in jobs.values_mut() {
        sealed.sort_by_key(|record| {
            let ended = record.ended().map(Moment::nanoseconds);
            (record.journal().entries().len(), ended)
        });
        let earlier = sealed.iter().rev().skip(1);
        replaced.extend(earlier.map(|record| record.digest()));
    }
    if !replaced.is_empty() {
        records.retain(|record| !replaced.contains(record.digest()));
    }
    jobs.into_values().collect()
}

/// Whether the leak was looked for in this very job.
pub(super) fn is_leak_searched(record: &Record) -> bool {
    let journal = record.journal();
    is_search(journal.header().job, &standing(journal.entries().iter()))
}

/// Whether a job is a search for the leak, or one was confirmed in it. The entries are those that count.
pub(super) fn is_search(job: Job, entries: &[&Entry]) -> bool {
    let mut facts = entries.iter().map(|entry| &entry.fact);
    job == Job::LeakFollowUp
        || facts.any(|fact| matches!(fact, Fact::Confirmed { what } if what == "leak_searched"))
}

/// Where the odometer stood, if it was read.
pub(super) fn odometer_of(header: &Header) -> Option<Amount> {
    header.subject.as_ref()?.odometer
}
