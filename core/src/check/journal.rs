//! A journal: the header of a job and its entries, as one document or as JSON Lines.

use super::entry::Entry;
use super::finding::Finding;
use super::measured::{HalfWidths, half_widths};
use super::read;
use crate::document::{Ext, Limits, Node, Object, Reader, Step, canonical};
use crate::error::{Error, ErrorKind, Fault};
use crate::procedure::{Severity, edition_number, format, measures};
use crate::quantity::{Amount, Kind, Measures};
use crate::word::words;
use alloc::collections::BTreeMap;
use alloc::string::{String, ToString};
use alloc::vec;
use alloc::vec::Vec;
use serde::Serialize;

/// The format this version reads and writes.
const FORMAT: &str = "brimline-journal/1";

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

/// A journal, read and checked.
#[derive(Debug, Clone)]
pub struct Journal {
    pub(super) header: Header,
    pub(super) entries: Vec<Entry>,
    /// Bytes of a last line that was cut off.
    pub(super) torn: Option<usize>,
    /// Entries that came again, by the `seq` of the one that was kept.
    pub(super) repeats: Vec<u64>,
}

impl Journal {
    /// Reads a journal under the default [`Limits`].
    ///
    /// # Errors
    /// Every fault of the document, with path and position.
    pub fn from_json(text: &str, pack_measures: Option<Measures>) -> Result<Self, Error> {
        Self::from_json_with(text, pack_measures, &Limits::default())
    }

    /// Reads a journal: one JSON document with `entries`, or JSON Lines with the header first. Of JSON Lines, a
    /// last line that was cut off is dropped and told in the findings.
    ///
    /// # Errors
    /// Every fault of the document, with path and position.
    pub fn from_json_with(
        text: &str,
        pack_measures: Option<Measures>,
        limits: &Limits,
    ) -> Result<Self, Error> {
        limits.check_bytes(text)?;
        let mut reader = Reader::new(limits);
        reader.measures = pack_measures;
        match lines(text) {
            Some(lines) => from_lines(reader, text, &lines, limits),
            None => from_document(reader, text, limits),
        }
    }

    /// What the journal says before its first entry.
    #[must_use]
    pub fn header(&self) -> &Header {
        &self.header
    }

    /// The entries as they were recorded, corrections among them.
    #[must_use]
    pub fn entries(&self) -> &[Entry] {
        &self.entries
    }

    /// How the journal was delivered: entries that came twice, a last line that was cut off.
    pub(super) fn delivery(&self) -> Vec<Finding> {
        let mut findings: Vec<Finding> = self
            .repeats
            .iter()
            .map(|seq| repeat_delivery(*seq))
            .collect();
        if let Some(bytes) = self.torn {
            let bytes = u64::try_from(bytes).unwrap_or(u64::MAX);
            findings.push(Finding::new("torn_line", Severity::Caution).with("bytes", bytes));
        }
        findings
    }

    /// The canonical form as one document.
    #[must_use]
    pub fn to_json(&self) -> String {
        #[derive(Serialize)]
        struct Document<'j> {
            #[serde(flatten)]
            header: &'j Header,
            entries: &'j [Entry],
        }
        canonical(&Document {
            header: &self.header,
            entries: &self.entries,
        })
    }
}

/// The lines of JSON Lines: several, of which the first is an object of its own.
fn lines(text: &str) -> Option<Vec<&str>> {
    let mut lines = text.lines().filter(|line| !line.trim().is_empty());
    let (first, second) = (lines.next()?, lines.next()?);
    let generous = Limits::default().with_text(usize::MAX);
    let alone = matches!(Node::parse(first, &generous), Ok(Node::Object(_)));
    alone.then(|| [first, second].into_iter().chain(lines).collect())
}

fn from_document(mut reader: Reader<'_>, text: &str, limits: &Limits) -> Result<Journal, Error> {
    let read = reader.parse(text).and_then(|node| {
        let fields = &[
            "format",
            "job_id",
            "pack",
            "procedure",
            "edition",
            "job",
            "subject",
            "profile",
            "entries",
            "ext",
        ];
        let object = reader.object(&node, fields)?;
        let header = header(&mut reader, &object);
        // A finished line without entries is the beginning of JSON Lines.
        let is_line = text.ends_with('\n') && text.trim().lines().count() == 1;
        let entries = if is_line && object.get("entries").is_none() {
            Some(Vec::new())
        } else {
            reader.required(&object, "entries", |reader, node| match node {
                Node::List(items) if items.len() > limits.entries() => {
                    reader.note(limits.too_many_entries(items.len()));
                    None
                }
                _ => reader.list(node, read::entry),
            })
        };
        let entries = entries.map(|entries| rising(&mut reader, entries));
        Some((header?, entries?))
    });
    reader.finish(text, &[(Vec::new(), text)])?;
    whole(read, None)
}

fn from_lines(
    mut reader: Reader<'_>,
    text: &str,
    lines: &[&str],
    limits: &Limits,
) -> Result<Journal, Error> {
    let (first, rest) = lines.split_first().unwrap_or((&"", &[]));
    let head = reader.parse(first).and_then(|node| {
        let fields = &[
            "format",
            "job_id",
            "pack",
            "procedure",
            "edition",
            "job",
            "subject",
            "profile",
            "ext",
        ];
        let object = reader.object(&node, fields)?;
        header(&mut reader, &object)
    });
    let mut parts = vec![(Vec::new(), *first)];
    let mut torn = None;
    let mut entries = Vec::with_capacity(rest.len());
    if rest.len() > limits.entries() {
        reader.note_at("entries", limits.too_many_entries(rest.len()));
    } else {
        for (index, line) in rest.iter().enumerate() {
            let is_last = index.saturating_add(1) == rest.len();
            if is_last && !text.ends_with('\n') && is_cut_off(line, limits) {
                torn = Some(line.len());
                break;
            }
            let path = vec![Step::Key("entries".into()), Step::Index(index)];
            parts.push((path, *line));
            let entry = reader.inside(Step::Key("entries".into()), |reader| {
                reader.inside(Step::Index(index), |reader| {
                    reader
                        .parse(line)
                        .and_then(|node| read::entry(reader, &node))
                })
            });
            entries.extend(entry);
        }
    }
    let entries = rising(&mut reader, entries);
    reader.finish(text, &parts)?;
    whole(head.map(|head| (head, entries)), torn)
}

/// Whether a line stops before its JSON does.
fn is_cut_off(line: &str, limits: &Limits) -> bool {
    Node::parse(line, limits).is_err_and(|fault| fault.kind == ErrorKind::Syntax)
}

fn whole(read: Option<(Header, Delivered)>, torn: Option<usize>) -> Result<Journal, Error> {
    // A document that read without a fault is there.
    let Some((header, (entries, repeats))) = read else {
        return Err(Fault::new(ErrorKind::Internal).into());
    };
    Ok(Journal {
        header,
        entries,
        torn,
        repeats,
    })
}

/// The entries that stand, and the places of those that came again.
type Delivered = (Vec<Entry>, Vec<u64>);

/// Checks that `seq` rises, and drops repeated deliveries: entries with the `id` and content of an earlier one.
fn rising(reader: &mut Reader<'_>, entries: Vec<Entry>) -> Delivered {
    let mut kept: Vec<Entry> = Vec::with_capacity(entries.len());
    let mut repeats = Vec::new();
    let mut named: BTreeMap<String, usize> = BTreeMap::new();
    for (index, entry) in entries.into_iter().enumerate() {
        let earlier = entry
            .id
            .as_ref()
            .and_then(|id| named.get(id))
            .and_then(|at| kept.get(*at));
        if let Some(earlier) = earlier
            && earlier.says_the_same(&entry)
        {
            repeats.push(earlier.seq);
            continue;
        }
        if let Some(last) = kept.last()
            && entry.seq <= last.seq
        {
            let fault = Fault::new(ErrorKind::Sequence)
                .got(&entry.seq.to_string())
                .allowed([alloc::format!("more than {}", last.seq)])
                .hint("number the entries in the order they were recorded");
            reader.inside(Step::Key("entries".into()), |reader| {
                reader.inside(Step::Index(index), |reader| reader.note_at("seq", fault));
            });
        }
        if let Some(id) = &entry.id {
            named.entry(id.clone()).or_insert(kept.len());
        }
        kept.push(entry);
    }
    (kept, repeats)
}

/// Reads the header of a journal that is being recorded live.
pub(super) fn header_from_json(
    text: &str,
    pack_measures: Option<Measures>,
    limits: &Limits,
) -> Result<Header, Error> {
    limits.check_bytes(text)?;
    let mut reader = Reader::new(limits);
    reader.measures = pack_measures;
    let read = reader.parse(text).and_then(|node| {
        let fields = &[
            "format",
            "job_id",
            "pack",
            "procedure",
            "edition",
            "job",
            "subject",
            "profile",
            "ext",
        ];
        let object = reader.object(&node, fields)?;
        header(&mut reader, &object)
    });
    reader.finish(text, &[(Vec::new(), text)])?;
    read.ok_or_else(|| Fault::new(ErrorKind::Internal).into())
}

/// Reads one entry of a journal that is being recorded live.
pub(super) fn entry_from_json(
    text: &str,
    measures: Option<Measures>,
    limits: &Limits,
) -> Result<Entry, Error> {
    limits.check_bytes(text)?;
    let mut reader = Reader::new(limits);
    reader.measures = measures;
    let entry = reader
        .parse(text)
        .and_then(|node| read::entry(&mut reader, &node));
    reader.finish(text, &[(Vec::new(), text)])?;
    entry.ok_or_else(|| Fault::new(ErrorKind::Internal).into())
}

fn header(reader: &mut Reader<'_>, object: &Object<'_, '_>) -> Option<Header> {
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
    // The shop's own measures go before the pack's.
    reader.measures = profile
        .as_ref()
        .and_then(|profile| profile.measures)
        .or(reader.measures);
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

/// An entry delivered again.
pub(super) fn repeat_delivery(of: u64) -> Finding {
    Finding::new("repeat_delivery", Severity::Note).of([of])
}

/// An entry under the `id` of another that says something else.
pub(super) fn id_reused(first: u64, again: u64) -> Finding {
    Finding::new("id_reused", Severity::Caution)
        .of([first, again])
        .field("id")
}

/// Entries that share an `id` and say different things.
pub(super) fn reused_ids<'e>(entries: impl Iterator<Item = &'e Entry>) -> Vec<Finding> {
    let mut first: BTreeMap<&str, u64> = BTreeMap::new();
    let mut findings = Vec::new();
    for entry in entries {
        let Some(id) = entry.id.as_deref() else {
            continue;
        };
        match first.get(id) {
            Some(seq) => findings.push(id_reused(*seq, entry.seq)),
            None => {
                first.insert(id, entry.seq);
            }
        }
    }
    findings
}
