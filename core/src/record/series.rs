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
    let mut seen: BTreeMap<&str, (&Record, u64)> = BTreeMap::new();
    for record in records {
        let (_, times) = seen.entry(record.digest()).or_insert((record, 0));
        *times = times.saturating_add(1);
    }
    let mut units: BTreeMap<(Option<&str>, Option<&str>), Vec<&Record>> = BTreeMap::new();
    for (record, _) in seen.values() {
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
    let twice = seen.values().copied().filter(|(_, times)| *times > 1);
    (series.collect(), twice.collect())
}

/// Where the odometer stood, if it was read.
pub(crate) fn odometer_of(record: &Record) -> Option<Amount> {
    record.journal().header().subject.as_ref()?.odometer
}
