//! A job as it was closed: the pack's name and digest, the journal, the answer, and a digest over all of it.

use super::reading;
use super::recorded::{Recorded, RecordedFinding, RecordedReason, SealedPack};
use crate::check::{
    Journal, JournalSource, LeakReading, Moment, PackPin, ProcedureRef, RULES, Verdict, evaluate,
};
use crate::document::{Limits, canonical, digest_of};
use crate::error::{Error, ErrorKind, Fault};
use crate::procedure::Pack;
use crate::quantity::Interval;
use alloc::borrow::Cow;
use alloc::format;
use alloc::string::String;
use alloc::sync::Arc;
use core::hash::{Hash, Hasher};
use core::ops::Range;
use serde::Serialize;

/// The format this version reads and writes.
pub(crate) const FORMAT: &str = "brimline-record/1";

/// A job as it was closed, sealed with a digest over the pack's own digest, the journal, the version of the rules and
/// the answer. Copies are cheap and share the same data; records are equal where their digests are.
///
/// ```
/// use brimline::{Pack, Record};
/// let pack = Pack::embedded()?;
/// let journal = r#"{"format":"brimline-journal/1","procedure":"pipit-level","job":"check","entries":[]}"#;
/// let record = Record::seal(&pack, journal)?;
/// assert_eq!(record.verdict().slug(), "incomplete");
/// assert_eq!(Record::reopen(record.to_json())?, record);
/// // Any changed byte is noticed.
/// let altered = record.to_json().replace("incomplete", "at_level");
/// assert_eq!(Record::reopen(&altered).unwrap_err().kind().slug(), "changed");
/// # Ok::<(), brimline::Error>(())
/// ```
#[derive(Debug, Clone)]
pub struct Record(Arc<Parts>);

#[derive(Debug)]
pub(super) struct Parts {
    pub(super) text: String,
    /// Where in the text the answer stands.
    pub(super) result: Range<usize>,
    /// Where in the text the digest stands.
    pub(super) digest: Range<usize>,
    pub(super) pack: SealedPack,
    pub(super) journal: Journal,
    pub(super) rules: String,
    pub(super) recorded: Recorded,
}

impl Record {
    /// Seals a job under the default [`Limits`]: evaluates the journal on the pack, and keeps both with the answer.
    ///
    /// The journal is one that was read before, or its text: one JSON document or JSON Lines.
    ///
    /// # Errors
    /// Every fault of the journal, with path and position; `conflict` at `journal.pack.id`, `.version` or `.digest` if
    /// the journal names another pack; `limit` if the record is more than can be read again.
    pub fn seal<'a>(pack: &Pack, journal: impl Into<JournalSource<'a>>) -> Result<Self, Error> {
        Self::seal_with(pack, journal, &Limits::default())
    }

    /// Seals a job within limits of the host's own.
    ///
    /// # Errors
    /// As [`seal`](Self::seal).
    pub fn seal_with<'a>(
        pack: &Pack,
        journal: impl Into<JournalSource<'a>>,
        limits: &Limits,
    ) -> Result<Self, Error> {
        let journal = match journal.into() {
            JournalSource::Journal(journal) => Cow::Borrowed(journal),
            JournalSource::Json(text) => {
                Cow::Owned(Journal::from_json_with(text, pack.measures(), limits)?)
            }
        };
        if let Some(pin) = &journal.header().pack {
            is_of(pack, pin)?;
        }
        let mut text = Head {
            format: FORMAT,
            pack: &SealedPack::of(pack),
            journal: &journal,
            rules: RULES,
        }
        .text();
        text.push_str(&evaluate(pack, &*journal)?.to_json());
        let digest = seal_of(&text);
        text.extend([SEAL, &digest, "\"}"]);
        // What is sealed is what can be opened again.
        Self::reopen_with(&text, limits)
    }

    /// Reopens a record under the default [`Limits`].
    ///
    /// # Errors
    /// `changed` if any byte is not as it was sealed; the faults of reading, with path and position, of what is cut off or
    /// no record; `wrong_format` of a newer one.
    pub fn reopen(text: &str) -> Result<Self, Error> {
        Self::reopen_with(text, &Limits::default())
    }

    /// Reopens a record within limits of the host's own.
    ///
    /// # Errors
    /// As [`reopen`](Self::reopen).
    pub fn reopen_with(text: &str, limits: &Limits) -> Result<Self, Error> {
        reading::record(text, limits).map(|parts| Record(Arc::new(parts)))
    }

    /// The record as it is kept: canonical JSON, to be stored byte for byte.
    #[must_use]
    pub fn to_json(&self) -> &str {
        &self.0.text
    }

    /// SHA-256 of the record without its `digest`, in lower-case hexadecimal.
    #[must_use]
    pub fn digest(&self) -> &str {
        self.part(&self.0.digest)
    }

    /// The answer as it was sealed: the canonical JSON of the result document.
    #[must_use]
    pub fn result_json(&self) -> &str {
        self.part(&self.0.result)
    }

    fn part(&self, range: &Range<usize>) -> &str {
        self.0.text.get(range.clone()).unwrap_or_default()
    }

    /// The pack the job was done on.
    #[must_use]
    pub fn pack(&self) -> &SealedPack {
        &self.0.pack
    }

    /// The journal.
    #[must_use]
    pub fn journal(&self) -> &Journal {
        &self.0.journal
    }

    /// The version of the rules the answer was given by.
    #[must_use]
    pub fn rules(&self) -> &str {
        &self.0.rules
    }

    /// The host's name of the job.
    #[must_use]
    pub fn job_id(&self) -> Option<&str> {
        self.journal().header().job_id.as_deref()
    }

    /// The vehicle, where the journal names it.
    #[must_use]
    pub fn vehicle(&self) -> Option<&str> {
        let subject = self.journal().header().subject.as_ref();
        subject.map(|subject| subject.vehicle.as_str())
    }

    /// The unit, where the journal names it.
    #[must_use]
    pub fn unit(&self) -> Option<&str> {
        self.journal().header().subject.as_ref()?.unit.as_deref()
    }

    /// When the first entry was made; `None` without entries.
    #[must_use]
    pub fn began(&self) -> Option<&Moment> {
        self.journal().entries().first().map(|entry| &entry.at)
    }

    /// When the last entry was made; `None` without entries.
    #[must_use]
    pub fn ended(&self) -> Option<&Moment> {
        self.journal().entries().last().map(|entry| &entry.at)
    }

    /// Which sheet the answer rests on.
    #[must_use]
    pub fn procedure(&self) -> &ProcedureRef {
        &self.0.recorded.procedure
    }

    /// What could be said of the level, as it was sealed.
    #[must_use]
    pub fn verdict(&self) -> Verdict {
        self.0.recorded.verdict
    }

    /// What was proved of the departure as found; negative is short.
    #[must_use]
    pub fn as_found(&self) -> Interval {
        self.0.recorded.as_found
    }

    /// What was proved of the net volume added.
    #[must_use]
    pub fn net_added(&self) -> Interval {
        self.0.recorded.net_added
    }

    /// What was proved of the departure at the end.
    #[must_use]
    pub fn now(&self) -> Interval {
        self.0.recorded.now
    }

    /// What the shortage said of a leak.
    #[must_use]
    pub fn leak(&self) -> &LeakReading {
        &self.0.recorded.leak
    }

    /// What a person should know of the journal, as it was sealed.
    #[must_use]
    pub fn findings(&self) -> &[RecordedFinding] {
        &self.0.recorded.findings
    }

    /// Why the answer was what it was, as it was sealed.
    #[must_use]
    pub fn because(&self) -> &[RecordedReason] {
        &self.0.recorded.because
    }
}

impl PartialEq for Record {
    fn eq(&self, other: &Self) -> bool {
        self.digest() == other.digest()
    }
}

impl Eq for Record {}

impl Hash for Record {
    fn hash<H: Hasher>(&self, state: &mut H) {
        self.digest().hash(state);
    }
}

/// Whether a pack is the one a journal names.
fn is_of(pack: &Pack, pin: &PackPin) -> Result<(), Error> {
    let named = [
        ("id", Some(pin.id.as_str()), pack.id()),
        ("version", Some(pin.version.as_str()), pack.version()),
        ("digest", pin.digest.as_deref(), pack.digest()),
    ];
    let other = named.into_iter().filter_map(|(name, named, given)| {
        let named = named.filter(|named| *named != given)?;
        let fault = Fault::new(ErrorKind::Conflict)
            .got(named)
            .allowed([String::from(given)])
            .hint("seal the journal with the pack it names");
        Some(fault.at(format!("journal.pack.{name}")))
    });
    Error::from_faults(other.collect()).map_or(Ok(()), Err)
}

/// What stands before the answer.
#[derive(Serialize)]
pub(super) struct Head<'r> {
    pub(super) format: &'static str,
    pub(super) pack: &'r SealedPack,
    pub(super) journal: &'r Journal,
    pub(super) rules: &'r str,
}

impl Head<'_> {
    pub(super) fn text(&self) -> String {
        let mut text = canonical(self);
        text.pop();
        text.push_str(",\"result\":");
        text
    }
}

/// What stands between the answer and the digest.
pub(super) const SEAL: &str = ",\"digest\":\"";

/// The digest of a record, from what stands before the seal.
pub(super) fn seal_of(before: &str) -> String {
    digest_of([before, "}"])
}
