//! What a record says of the job without its pack: the answer as it was sealed, read back.

use crate::check::{
    BySheet, Certainty, Counted, LeakReading, ProcedureRef, RESULT_FORMAT, Verdict,
};
use crate::document::{Node, Reader};
use crate::error::{ErrorKind, Fault};
use crate::procedure::{Pack, Severity, edition_number, format};
use crate::quantity::{Amount, Interval, Kind};
use alloc::string::{String, ToString};
use alloc::vec::Vec;
use serde::Serialize;

/// The pack a record was sealed with.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct SealedPack {
    /// The pack's name.
    pub id: String,
    /// Its version.
    pub version: String,
    /// The digest of its canonical form.
    pub digest: String,
}

impl SealedPack {
    pub(super) fn of(pack: &Pack) -> Self {
        SealedPack {
            id: pack.id().into(),
            version: pack.version().into(),
            digest: pack.digest().into(),
        }
    }
}

/// A finding as it was sealed.
#[derive(Debug, Clone, PartialEq, Eq)]
#[non_exhaustive]
pub struct RecordedFinding {
    /// The stable name.
    pub id: String,
    /// How serious it is.
    pub severity: Severity,
    /// The entries it is about, by `seq`.
    pub entries: Vec<u64>,
    /// How many bytes were lost, where that is what it tells.
    pub(super) bytes: Option<u64>,
}

/// A reason as it was sealed.
#[derive(Debug, Clone, PartialEq, Eq)]
#[non_exhaustive]
pub struct RecordedReason {
    /// The stable name.
    pub id: String,
    /// The entries it rests on, by `seq`.
    pub entries: Vec<u64>,
}

/// The answer as it was sealed.
#[derive(Debug)]
pub(super) struct Recorded {
    pub(super) procedure: ProcedureRef,
    pub(super) rules: String,
    pub(super) verdict: Verdict,
    pub(super) as_found: Interval,
    pub(super) net_added: Interval,
    pub(super) now: Interval,
    pub(super) leak: LeakReading,
    pub(super) findings: Vec<RecordedFinding>,
    pub(super) because: Vec<RecordedReason>,
}

pub(super) fn recorded(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Recorded> {
    let fields = &[
        "format",
        "procedure",
        "rules",
        "verdict",
        "as_found",
        "net_added",
        "now",
        "leak",
        "findings",
        "because",
        "next",
        "gates",
        "forecast",
        "cautions",
    ];
    let object = reader.object(node, fields)?;
    let known = reader.required(&object, "format", |reader, node| {
        format(reader, node, RESULT_FORMAT)
    });
    let procedure = reader.required(&object, "procedure", procedure);
    let rules = reader.required(&object, "rules", Reader::text);
    let verdict = reader.required(&object, "verdict", |reader, node| {
        reader.word(node, Verdict::WORDS)
    });
    let as_found = reader.required(&object, "as_found", interval);
    let net_added = reader.required(&object, "net_added", interval);
    let now = reader.required(&object, "now", interval);
    let leak = reader.required(&object, "leak", leak);
    let findings = reader.required(&object, "findings", |reader, node| {
        reader.list(node, finding)
    });
    let because = reader.required(&object, "because", |reader, node| reader.list(node, reason));
    known?;
    Some(Recorded {
        procedure: procedure?,
        rules: rules?,
        verdict: verdict?,
        as_found: as_found?,
        net_added: net_added?,
        now: now?,
        leak: leak?,
        findings: findings?,
        because: because?,
    })
}

fn procedure(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<ProcedureRef> {
    let object = reader.object(node, &["id", "edition", "digest"])?;
    let id = reader.required(&object, "id", Reader::text);
    let edition = reader.optional(&object, "edition", edition_number);
    let digest = reader.optional(&object, "digest", Reader::text);
    Some(ProcedureRef {
        id: id?,
        edition,
        digest,
    })
}

fn leak(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<LeakReading> {
    let fields = &[
        "by_sheet",
        "counted",
        "limit",
        "shortage",
        "certainty",
        "margin",
    ];
    let object = reader.object(node, fields)?;
    let by_sheet = reader.required(&object, "by_sheet", |reader, node| {
        reader.word(node, BySheet::WORDS)
    });
    let counted = reader.required(&object, "counted", |reader, node| {
        let object = reader.object(node, &["gross", "net", "used"])?;
        let mut count = |name| reader.required(&object, name, volume);
        Some(Counted {
            gross: count("gross")?,
            net: count("net")?,
            used: count("used")?,
        })
    });
    let limit = reader.optional(&object, "limit", volume);
    let shortage = reader.required(&object, "shortage", interval);
    let certainty = reader.required(&object, "certainty", |reader, node| {
        reader.word(node, Certainty::WORDS)
    });
    let margin = reader.optional(&object, "margin", volume);
    Some(LeakReading {
        by_sheet: by_sheet?,
        counted: counted?,
        limit: limit.flatten(),
        shortage: shortage?,
        certainty: certainty?,
        margin: margin.flatten(),
    })
}

/// A volume, or `null` for one that is none.
#[allow(
    clippy::option_option,
    reason = "the outer says whether it could be read"
)]
fn volume(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Option<Amount>> {
    match node {
        Node::Null => Some(None),
        _ => reader.amount(node, Kind::Volume).map(Some),
    }
}

fn interval(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Interval> {
    let ends = reader.list(node, volume)?;
    let read = match *ends.as_slice() {
        [lo, hi] => Interval::new(lo, hi),
        _ => {
            let got = ends.len().to_string();
            let fault = Fault::new(ErrorKind::OutOfRange).got(&got);
            Err(fault.allowed(["two ends, null where there is none"]).into())
        }
    };
    let faults = match read {
        Ok(interval) => return Some(interval),
        Err(error) => error.into_faults(),
    };
    faults.into_iter().for_each(|fault| reader.note(fault));
    None
}

fn finding(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<RecordedFinding> {
    let object = reader.object(node, &["id", "severity", "entries", "field", "args"])?;
    let id = reader.required(&object, "id", Reader::slug);
    let severity = reader.required(&object, "severity", |reader, node| {
        reader.word(node, Severity::WORDS)
    });
    let entries = reader.required(&object, "entries", seqs);
    let args = reader.required(&object, "args", Reader::any_object);
    let bytes = args.and_then(|args| args.get("bytes").and_then(Node::whole));
    Some(RecordedFinding {
        id: id?,
        severity: severity?,
        entries: entries?,
        bytes,
    })
}

fn reason(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<RecordedReason> {
    let object = reader.object(node, &["id", "entries", "fields", "args"])?;
    let id = reader.required(&object, "id", Reader::slug);
    let entries = reader.required(&object, "entries", seqs);
    Some(RecordedReason {
        id: id?,
        entries: entries?,
    })
}

fn seqs(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Vec<u64>> {
    reader.list(node, |reader, node| reader.whole(node, 0))
}
