//! One visit of a unit to the shop, as it was recorded.

use super::series::odometer_of;
use super::{Record, Unbooked};
use crate::check::{BySheet, Fact, Job, Moment, PlugState, Verdict, standing};
use crate::document::day;
use crate::quantity::{Amount, Interval};
use alloc::string::String;
use alloc::vec::Vec;
use jiff::civil::Date;
use serde::{Serialize, Serializer};

/// One visit of a unit to the shop, as it was recorded.
///
/// Where an entry tells a volume that could not be booked, what rests on that volume is open on its side: nobody measured it.
#[derive(Debug, Clone, PartialEq, Eq)]
#[non_exhaustive]
pub struct Visit {
    /// Its record; copies share its data.
    pub record: Record,
    /// What the job was.
    pub job: Job,
    /// The calendar day of the first entry in UTC, by which days are counted.
    pub date: Option<Date>,
    /// The odometer.
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
    pub used: Option<Amount>,
    /// The leak limit, where one applied.
    pub limit: Option<Amount>,
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
            record: record.clone(),
            job: header.job,
            date: record.began().map(Moment::day),
            odometer: odometer_of(header),
            verdict: record.verdict(),
            as_found: unbooked.before(record.as_found()),
            net: unbooked.after(record.net_added()),
            now: unbooked.after(record.now()),
            by_sheet: leak.by_sheet,
            used: leak.counted.used,
            limit: leak.limit,
            plug: plug.collect(),
        }
    }

    /// When the first entry was made, as it was written.
    #[must_use]
    pub fn at(&self) -> Option<&str> {
        self.record.began().map(Moment::text)
    }

    /// When and by whom the unit was last opened, as the host told it.
    #[must_use]
    pub fn last_opened(&self) -> Option<&str> {
        let subject = self.record.journal().header().subject.as_ref();
        subject?.last_opened.as_deref()
    }
}

impl Serialize for Visit {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        #[derive(Serialize)]
        struct Told<'v> {
            digest: &'v str,
            #[serde(skip_serializing_if = "Option::is_none")]
            job_id: Option<&'v str>,
            job: Job,
            #[serde(skip_serializing_if = "Option::is_none")]
            at: Option<&'v str>,
            #[serde(serialize_with = "day", skip_serializing_if = "Option::is_none")]
            date: Option<Date>,
            #[serde(skip_serializing_if = "Option::is_none")]
            odometer: Option<Amount>,
            verdict: Verdict,
            as_found: Interval,
            net: Interval,
            now: Interval,
            by_sheet: BySheet,
            #[serde(skip_serializing_if = "Option::is_none")]
            used: Option<Amount>,
            #[serde(skip_serializing_if = "Option::is_none")]
            limit: Option<Amount>,
            #[serde(skip_serializing_if = "Option::is_none")]
            last_opened: Option<&'v str>,
            plug: &'v [PlugEvent],
        }
        let told = Told {
            digest: self.record.digest(),
            job_id: self.record.job_id(),
            job: self.job,
            at: self.at(),
            date: self.date,
            odometer: self.odometer,
            verdict: self.verdict,
            as_found: self.as_found,
            net: self.net,
            now: self.now,
            by_sheet: self.by_sheet,
            used: self.used,
            limit: self.limit,
            last_opened: self.last_opened(),
            plug: &self.plug,
        };
        told.serialize(serializer)
    }
}
