//! What a journal says before its first entry: the job, what it is done on, and the shop's own settings.

use super::measured::{HalfWidths, half_widths};
use crate::document::{Ext, Limits, Node, Object, Reader};
use crate::error::{Error, ErrorKind, Fault};
use crate::procedure::{edition_number, format, measures};
use crate::quantity::{Amount, Kind, Measures};
use crate::word::words;
use alloc::string::String;
use alloc::vec::Vec;
use serde::Serialize;

/// The format this version reads and writes.
pub(crate) const FORMAT: &str = "brimline-journal/1";

/// The members of a journal in one document. A header that stands alone has all but the last.
pub(super) const MEMBERS: &[&str] = &[
    "format",
    "job_id",
    "pack",
    "procedure",
    "edition",
    "job",
    "subject",
    "profile",
    "ext",
    "entries",
];

words! {
    /// What the job is.
    pub enum Job {
        /// Checking the level.
        Check = "check",
        /// Topping up.
        TopUp = "top_up",
        /// Filling after a drain or repair.
        NewFill = "new_fill",
        /// Exchanging the fluid.
        Exchange = "exchange",
        /// Following up a suspected leak.
        LeakFollowUp = "leak_follow_up",
        /// Checking again after an earlier job.
        Recheck = "recheck",
        /// Looking at the fluid's condition only.
        ConditionOnly = "condition_only",
    }
}

impl Job {
    /// Whether a shortage found in such a job speaks of a leak.
    #[must_use]
    pub const fn counts_for_leak(self) -> bool {
        matches!(
            self,
            Job::Check | Job::TopUp | Job::LeakFollowUp | Job::Recheck
        )
    }

    /// Whether the unit is filled by measure before its level is found.
    #[must_use]
    pub const fn fills_by_measure(self) -> bool {
        matches!(self, Job::NewFill | Job::Exchange)
    }
}

/// What a journal says before its first entry.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[non_exhaustive]
pub struct Header {
    pub(super) format: &'static str,
    /// The host's name of the job.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub job_id: Option<String>,
    /// The pack the job was done on.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub pack: Option<PackPin>,
    /// The procedure.
    pub procedure: String,
    /// Its edition. Absent: the one in force on the day of the first entry.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub edition: Option<u32>,
    /// What the job is.
    pub job: Job,
    /// What it is done on.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub subject: Option<Subject>,
    /// The shop's own settings.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub profile: Option<Profile>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(crate) ext: Option<Ext>,
}

/// The pack a journal names.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct PackPin {
    /// The pack's name.
    pub id: String,
    /// Its version.
    pub version: String,
    /// The digest of its canonical form.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub digest: Option<String>,
}

/// What the job is done on.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[non_exhaustive]
pub struct Subject {
    /// The vehicle.
    pub vehicle: String,
    /// The unit.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub unit: Option<String>,
    /// The distance it has run (length).
    #[serde(skip_serializing_if = "Option::is_none")]
    pub odometer: Option<Amount>,
    /// When and by whom the unit was last opened, in the host's words.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub last_opened: Option<String>,
    /// What the customer says.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub complaint: Option<String>,
}

/// The shop's own settings.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[non_exhaustive]
pub struct Profile {
    /// What bare `qt`, `pt`, `gal` and `fl oz` mean.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub measures: Option<Measures>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(super) half_width: Option<HalfWidths>,
    /// What always holds in this shop, by the words of `confirmed`.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub standing: Vec<String>,
}

/// Reads the header of a journal that is being recorded live.
pub(super) fn header_from_json(
    text: &str,
    pack_measures: Option<Measures>,
    limits: &Limits,
) -> Result<Header, Error> {
    let mut reader = Reader::new(text, limits)?;
    reader.measures = pack_measures;
    let node = reader.parse();
    let read = node.and_then(|node| header(&mut reader, &node));
    reader.finish()?;
    // A header that read without a fault is there.
    read.ok_or_else(|| Fault::new(ErrorKind::Internal).into())
}

/// Reads a header that stands alone.
pub(super) fn header(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Header> {
    let members = MEMBERS.split_last().map_or(MEMBERS, |(_, alone)| alone);
    let object = reader.object(node, members)?;
    header_of(reader, &object)
}

/// Reads the header of a journal in one document.
pub(super) fn header_of(reader: &mut Reader<'_>, object: &Object<'_, '_>) -> Option<Header> {
    let known = reader.required(object, "format", |reader, node| {
        format(reader, node, FORMAT)
    });
    let job_id = reader.optional(object, "job_id", Reader::text);
    let pack = reader.optional(object, "pack", pack_pin);
    let procedure = reader.required(object, "procedure", Reader::text);
    let edition = reader.optional(object, "edition", edition_number);
    let job = reader.required(object, "job", |reader, node| reader.word(node, Job::WORDS));
    let subject = reader.optional(object, "subject", subject);
    let profile = reader.optional(object, "profile", profile);
    let ext = reader.optional(object, "ext", Reader::ext);
    known?;
    Some(Header {
        format: FORMAT,
        job_id,
        pack,
        procedure: procedure?,
        edition,
        job: job?,
        subject,
        profile,
        ext,
    })
}

fn pack_pin(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<PackPin> {
    let object = reader.object(node, &["id", "version", "digest"])?;
    let id = reader.required(&object, "id", Reader::text);
    let version = reader.required(&object, "version", Reader::text);
    let digest = reader.optional(&object, "digest", Reader::text);
    Some(PackPin {
        id: id?,
        version: version?,
        digest,
    })
}

fn subject(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Subject> {
    let object = reader.object(
        node,
        &["vehicle", "unit", "odometer", "last_opened", "complaint"],
    )?;
    let vehicle = reader.required(&object, "vehicle", Reader::text);
    let unit = reader.optional(&object, "unit", Reader::text);
    let odometer = reader.optional(&object, "odometer", |reader, node| {
        reader.amount_from_zero(node, Kind::Length)
    });
    let last_opened = reader.optional(&object, "last_opened", Reader::text);
    let complaint = reader.optional(&object, "complaint", Reader::text);
    Some(Subject {
        vehicle: vehicle?,
        unit,
        odometer,
        last_opened,
        complaint,
    })
}

fn profile(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Profile> {
    let object = reader.object(node, &["measures", "half_width", "standing"])?;
    let measures = reader.optional(&object, "measures", measures);
    // The shop's own measures go before the pack's.
    reader.measures = measures.or(reader.measures);
    let half_width = reader.optional(&object, "half_width", half_widths);
    let standing = reader.optional(&object, "standing", |reader, node| {
        reader.list(node, Reader::slug)
    });
    Some(Profile {
        measures,
        half_width,
        standing: standing.unwrap_or_default(),
    })
}
