//! The visits of each unit over the years: what was lost between them, and who opened it.

use super::loss::{Losses, losses, sum};
use super::series::{Series, by_unit, is_leak_searched};
use super::{Loss, Notice, Record, Unbooked, Visit};
use crate::check::BySheet;
use crate::document::canonical;
use crate::leak::Trend;
use crate::procedure::Severity;
use crate::quantity::{Amount, Interval};
use alloc::string::String;
use alloc::vec::Vec;
use serde::Serialize;

/// The format this version writes.
pub(crate) const FORMAT: &str = "brimline-history/1";

/// The records of a shop by vehicle and unit, each in order of time, as they were recorded; no pack is asked.
///
/// A record that comes twice counts once, and so does a job that was sealed again with more entries. The order in which
/// records are given says nothing.
///
/// ```
/// use brimline::{History, Pack, Record};
/// let journal = r#"{"format":"brimline-journal/1","procedure":"pipit-level","job":"check",
///     "subject":{"vehicle":"Tarnik Dale 12"},"entries":[]}"#;
/// let record = Record::seal(&Pack::embedded()?, journal)?;
/// let history = History::of(&[record.clone(), record]);
/// let visits = &history.vehicles()[0].visits;
/// assert_eq!(visits.len(), 1);
/// assert_eq!(history.notices()[0].id, "record_twice");
/// # Ok::<(), brimline::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct History {
    format: &'static str,
    records: usize,
    notices: Vec<Notice>,
    vehicles: Vec<VehicleHistory>,
}

/// The visits of one unit of one vehicle, and what they say together.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct VehicleHistory {
    /// The vehicle.
    pub vehicle: String,
    /// The unit, where the records name one. Visits that name none are a history of their own.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub unit: Option<String>,
    /// The visits, in order of time.
    pub visits: Vec<Visit>,
    /// What was lost between them. What the first visit found missing has nothing to be counted from.
    pub losses: Vec<Loss>,
    /// The first loss against the last, per distance where both have one, else per time.
    pub trend: Trend,
    /// All losses together.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub lost: Option<Interval>,
    /// The newest leak limit that applied.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub limit: Option<Amount>,
    /// The distance from the last loss until the leak limit is reached at its rate; unbounded where that may be nothing or
    /// the loss is rising.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub to_limit: Option<Interval>,
    /// What a person should know of it.
    pub notices: Vec<Notice>,
    /// Ids of what to mind.
    pub cautions: Vec<&'static str>,
}

impl History {
    /// The history of records.
    #[must_use]
    pub fn of(records: &[Record]) -> Self {
        let (all, twice) = by_unit(records);
        let mut notices: Vec<Notice> = twice
            .into_iter()
            .map(|(record, times)| {
                let notice = Notice::new("record_twice", Severity::Note).with("times", times);
                notice.of(record, [])
            })
            .collect();
        let mut vehicles: Vec<VehicleHistory> = Vec::new();
        for (at, series) in all.iter().enumerate() {
            let about = |id| {
                let notice = Notice::new(id, Severity::Note);
                let cited = series.records.iter();
                cited.fold(notice, |notice, record| notice.of(record, []))
            };
            let Some(vehicle) = series.vehicle else {
                notices.push(about("vehicle_missing"));
                continue;
            };
            // A vehicle's visits that name no unit stand before those that do.
            let next = all.get(at.saturating_add(1));
            let is_named_elsewhere = next.is_some_and(|next| next.vehicle == series.vehicle);
            if series.unit.is_none() && is_named_elsewhere {
                notices.push(about("unit_missing"));
            }
            vehicles.push(VehicleHistory::of(vehicle, series));
        }
        History {
            format: FORMAT,
            records: records.len(),
            notices,
            vehicles,
        }
    }

    /// Every unit, by vehicle and unit in the order of their names.
    #[must_use]
    pub fn vehicles(&self) -> &[VehicleHistory] {
        &self.vehicles
    }

    /// The units of one vehicle.
    pub fn of_vehicle(&self, vehicle: &str) -> core::slice::Iter<'_, VehicleHistory> {
        let from = self
            .vehicles
            .partition_point(|unit| unit.vehicle.as_str() < vehicle);
        let rest = self.vehicles.get(from..).unwrap_or_default();
        let count = rest.partition_point(|unit| unit.vehicle == vehicle);
        rest.get(..count).unwrap_or_default().iter()
    }

    /// The history that holds a record.
    #[must_use]
    pub fn of_record(&self, record: &Record) -> Option<&VehicleHistory> {
        let subject = record.journal().header().subject.as_ref()?;
        let mut units = self.of_vehicle(&subject.vehicle);
        units.find(|history| history.unit == subject.unit)
    }

    /// What is to be said of the records as a whole: those that came twice, and those that name no vehicle or unit.
    #[must_use]
    pub fn notices(&self) -> &[Notice] {
        &self.notices
    }

    /// The canonical JSON of the history document.
    #[must_use]
    pub fn to_json(&self) -> String {
        canonical(self)
    }
}

impl VehicleHistory {
    fn of(vehicle: &str, series: &Series<'_>) -> Self {
        let visits: Vec<Visit> = series
            .records
            .iter()
            .map(|record| Visit::of(record))
            .collect();
        let mut notices: Vec<Notice> = series.jobs_twice().collect();
        notices.extend(jobs_again(series));
        notices.extend(volumes_unbooked(series));
        let odometers = odometers(series, &visits, &mut notices);
        let told = losses(&visits, &odometers);
        notices.extend(levels_unknown(series, &told.losses));
        let mut cautions = told.cautions.to_vec();
        if let Some(notice) = lost_together(series, &visits, &told) {
            notices.push(notice);
            let on_leak = ["leak_on_hot", "no_dry_start"].into_iter();
            let missing: Vec<_> = on_leak.filter(|id| !cautions.contains(id)).collect();
            cautions.extend(missing);
        }
        VehicleHistory {
            vehicle: vehicle.into(),
            unit: series.unit.map(Into::into),
            losses: told.losses,
            trend: told.trend,
            lost: told.together,
            limit: told.limit,
            to_limit: told.to_limit,
            notices,
            cautions,
            visits,
        }
    }
}

/// Jobs of one name that began at different times: all of them count as visits.
fn jobs_again(series: &Series<'_>) -> Vec<Notice> {
    let named = series.records.iter().filter_map(|record| {
        let job = record.journal().header().job_id.as_deref();
        job.map(|job| (job, *record))
    });
    let mut named: Vec<(&str, &Record)> = named.collect();
    // Stable, so that those of one name stay in order of time.
    named.sort_by_key(|(job, _)| *job);
    let jobs = named.chunk_by(|(one, _), (next, _)| one == next);
    jobs.filter(|records| records.len() > 1)
        .map(|records| {
            let job = records.first().map(|(job, _)| *job);
            let notice = Notice::new("job_again", Severity::Caution).with_some("job", job);
            let cited = records.iter();
            cited.fold(notice, |notice, (_, record)| notice.of(record, []))
        })
        .collect()
}

/// The visits that tell a volume which could not be booked, and the entries that tell it.
fn volumes_unbooked(series: &Series<'_>) -> Option<Notice> {
    let mut notice = Notice::new("volume_unbooked", Severity::Caution);
    for record in &series.records {
        let entries: Vec<u64> = Unbooked::of(record).entries().collect();
        if !entries.is_empty() {
            notice = notice.of(record, entries);
        }
    }
    (!notice.records.is_empty()).then_some(notice)
}

/// Which odometer each visit was read on, by number; where it goes back or changes its unit another begins.
fn odometers(series: &Series<'_>, visits: &[Visit], notices: &mut Vec<Notice>) -> Vec<usize> {
    let mut last: Option<(&Record, Amount)> = None;
    let mut number = 0_usize;
    let mut numbers = Vec::new();
    for (visit, record) in visits.iter().zip(&series.records) {
        if let Some(now) = visit.odometer {
            if let Some((earlier, before)) = last {
                let id = if now.unit() != before.unit() {
                    Some("odometer_unit_changed")
                } else if now < before {
                    Some("odometer_back")
                } else {
                    None
                };
                if let Some(id) = id {
                    number = number.saturating_add(1);
                    let notice = Notice::new(id, Severity::Caution)
                        .of(earlier, [])
                        .of(record, []);
                    notices.push(notice.with("before", before).with("now", now));
                }
            }
            last = Some((record, now));
        }
        numbers.push(number);
    }
    let unread = visits.iter().zip(&series.records);
    let unread: Vec<&Record> = unread
        .filter(|(visit, _)| visit.odometer.is_none())
        .map(|(_, record)| *record)
        .collect();
    if !unread.is_empty() {
        let notice = Notice::new("odometer_missing", Severity::Note);
        let cited = unread.into_iter();
        notices.push(cited.fold(notice, |notice, record| notice.of(record, [])));
    }
    numbers
}

/// The visits after the first of which no loss is told: the level left before, or found, is not known on both sides.
fn levels_unknown(series: &Series<'_>, losses: &[Loss]) -> Option<Notice> {
    let mut found = losses.iter().map(|loss| loss.to).peekable();
    let mut notice = Notice::new("level_unknown", Severity::Note);
    for (at, record) in series.records.iter().enumerate().skip(1) {
        if found.next_if_eq(&at).is_none() {
            notice = notice.of(record, []);
        }
    }
    (!notice.records.is_empty()).then_some(notice)
}

/// Losses that are past the leak limit together, though no visit was by itself. What was lost before the limit was passed, or
/// the leak searched, was answered for then.
fn lost_together(series: &Series<'_>, visits: &[Visit], told: &Losses) -> Option<Notice> {
    let limit = told.limit.filter(|_| told.losses.len() > 1)?;
    let mut pairs = visits.iter().zip(&series.records);
    let since = pairs
        .rposition(|(visit, record)| visit.by_sheet == BySheet::Above || is_leak_searched(record));
    let since = since.unwrap_or(0);
    let losses = told.losses.iter().filter(|loss| loss.from >= since);
    let losses: Vec<_> = losses.map(|loss| loss.lost).collect();
    let lost = sum(&losses)?;
    let from = lost.lo()?;
    if from <= limit || losses.len() < 2 {
        return None;
    }
    let notice = Notice::new("lost_together", Severity::Stop)
        .with("lost_from", from)
        .with_some("lost_to", lost.hi())
        .with("limit", limit);
    let cited = series.records.iter().skip(since);
    Some(cited.fold(notice, |notice, record| notice.of(record, [])))
}
