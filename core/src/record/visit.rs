//! One visit of a unit to the shop, as it was recorded.

use super::series::odometer_of;
use super::{Record, Unbooked};
use crate::check::{BySheet, Fact, Job, Moment, PlugState, Verdict, standing};
use crate::document::day;
use crate::quantity::{Amount, Interval};
use alloc::string::{String, ToString};
use alloc::vec::Vec;
use jiff::civil::Date;
use serde::Serialize;

/// One visit of a unit to the shop, as it was recorded.
///
/// Where an entry tells a volume that could not be booked, what rests on that volume is open on its side: nobody measured it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct Visit {
    /// The digest of its record.
    pub digest: String,
    /// The host's name of the job.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub job_id: Option<String>,
    /// What the job was.
    pub job: Job,
    /// When the first entry was made, as it was written.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub at: Option<String>,
    /// The calendar day of the first entry in UTC, by which days are counted.
    #[serde(serialize_with = "day", skip_serializing_if = "Option::is_none")]
    pub date: Option<Date>,
    /// The odometer.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub odometer: Option<Amount>,
    /// The verdict.
    pub verdict: Verdict,
    /// What was proved of the departure as found; negative is short.
    pub as_found: Interval,
    /// What was proved of the net volume added.
    pub net: Interval,
    /// What was proved of the departure at the end.
    pub now: Interval,
    /// What the sheet's own count said of a leak.
    pub by_sheet: BySheet,
    /// The count that was held against the limit.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub used: Option<Amount>,
    /// The leak limit, where one applied.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub limit: Option<Amount>,
    /// When and by whom the unit was last opened, as the host told it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub last_opened: Option<String>,
    /// What was done to the plug, as it counts.
    pub plug: Vec<PlugEvent>,
}

/// What somebody did to the plug.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct PlugEvent {
    /// The entry, by `seq`.
    pub entry: u64,
    /// When it was entered, as it was written.
    pub at: String,
    /// Who did it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub by: Option<String>,
    /// How the plug was then.
    pub state: PlugState,
}

impl Visit {
    pub(super) fn of(record: &Record) -> Self {
        let journal = record.journal();
        let header = journal.header();
        let subject = header.subject.as_ref();
        let began = record.began();
        let plug = standing(journal.entries().iter())
            .into_iter()
            .filter_map(|entry| match entry.fact {
                Fact::Plug { state } => Some(PlugEvent {
                    entry: entry.seq,
                    at: entry.at.text().into(),
                    by: entry.by.clone(),
                    state,
                }),
                _ => None,
            });
        let leak = record.leak();
        let unbooked = Unbooked::of(record);
        Visit {
            digest: record.digest().into(),
            job_id: header.job_id.clone(),
            job: header.job,
            at: began.map(|began| began.text().to_string()),
            date: began.map(Moment::day),
            odometer: odometer_of(header),
            verdict: record.verdict(),
            as_found: unbooked.before(record.as_found()),
            net: unbooked.after(record.net_added()),
            now: unbooked.after(record.now()),
            by_sheet: leak.by_sheet,
            used: leak.counted.used,
            limit: leak.limit,
            last_opened: subject.and_then(|subject| subject.last_opened.clone()),
            plug: plug.collect(),
        }
    }
}
