//! What records say together: a stable id, how serious it is, and the records and entries it is about.

use super::Record;
use crate::check::{Arg, Args};
use crate::procedure::Severity;
use alloc::string::String;
use alloc::vec::Vec;
use serde::Serialize;

/// Something that records say together.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct Notice {
    /// The stable name.
    pub id: &'static str,
    /// How serious it is.
    pub severity: Severity,
    /// The records it is about, in order of time.
    pub records: Vec<Cited>,
    /// The quantities and ids it speaks of.
    pub args: Args,
}

/// A record that is spoken of.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct Cited {
    /// Its digest.
    pub digest: String,
    /// The host's name of the job.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub job_id: Option<String>,
    /// The vehicle.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub vehicle: Option<String>,
    /// The unit.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub unit: Option<String>,
    /// The entries, by `seq`.
    pub entries: Vec<u64>,
}

impl Cited {
    pub(crate) fn of(record: &Record, entries: impl IntoIterator<Item = u64>) -> Self {
        let header = record.journal().header();
        let subject = header.subject.as_ref();
        Cited {
            digest: record.digest().into(),
            job_id: header.job_id.clone(),
            vehicle: subject.map(|subject| subject.vehicle.clone()),
            unit: subject.and_then(|subject| subject.unit.clone()),
            entries: entries.into_iter().collect(),
        }
    }
}

impl Notice {
    pub(crate) const fn new(id: &'static str, severity: Severity) -> Self {
        Notice {
            id,
            severity,
            records: Vec::new(),
            args: Args::none(),
        }
    }

    pub(crate) fn of(mut self, record: &Record, entries: impl IntoIterator<Item = u64>) -> Self {
        self.records.push(Cited::of(record, entries));
        self
    }

    pub(crate) fn with(mut self, name: &'static str, value: impl Into<Arg>) -> Self {
        self.args = self.args.with(name, value);
        self
    }

    pub(crate) fn with_some(mut self, name: &'static str, value: Option<impl Into<Arg>>) -> Self {
        self.args = self.args.with_some(name, value);
        self
    }
}
