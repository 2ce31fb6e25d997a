//! What records say together: a stable id, how serious it is, and the records and entries it is about.

use super::Record;
use crate::check::{Arg, Args};
use crate::procedure::Severity;
use alloc::vec::Vec;
use serde::{Serialize, Serializer};

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

/// A record that is spoken of. It is cited by its digest, the host's name of the job, the vehicle and the unit.
#[derive(Debug, Clone, PartialEq, Eq)]
#[non_exhaustive]
pub struct Cited {
    /// The record itself; copies share its data.
    pub record: Record,
    /// The entries, by `seq`.
    pub entries: Vec<u64>,
}

impl Cited {
    pub(crate) fn of(record: &Record, entries: impl IntoIterator<Item = u64>) -> Self {
        Cited {
            record: record.clone(),
            entries: entries.into_iter().collect(),
        }
    }
}

impl Serialize for Cited {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        #[derive(Serialize)]
        struct Told<'c> {
            digest: &'c str,
            #[serde(skip_serializing_if = "Option::is_none")]
            job_id: Option<&'c str>,
            #[serde(skip_serializing_if = "Option::is_none")]
            vehicle: Option<&'c str>,
            #[serde(skip_serializing_if = "Option::is_none")]
            unit: Option<&'c str>,
            entries: &'c [u64],
        }
        let told = Told {
            digest: self.record.digest(),
            job_id: self.record.job_id(),
            vehicle: self.record.vehicle(),
            unit: self.record.unit(),
            entries: &self.entries,
        };
        told.serialize(serializer)
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
