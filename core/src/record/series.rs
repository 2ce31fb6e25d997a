//! The records of one unit, in order of time.

use super::Record;
use crate::check::Moment;
use crate::quantity::Amount;
use alloc::collections::BTreeMap;
use alloc::vec::Vec;

/// The records of one unit, in order of time; those without a vehicle stand together under none.
#[derive(Debug)]
pub(crate) struct Series<'r> {
    pub(crate) vehicle: Option<&'r str>,
    pub(crate) unit: Option<&'r str>,
    pub(crate) records: Vec<&'r Record>,
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
        Series {
            vehicle,
            unit,
            records,
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

/// Where the odometer stood, if it was read.
pub(crate) fn odometer_of(record: &Record) -> Option<Amount> {
    record.journal().header().subject.as_ref()?.odometer
}
