//! Reading a record: its digest first, then every part of it.

use super::recorded::{Recorded, SealedPack, recorded};
use super::sealing::{FORMAT, Head, Parts, SEAL, seal_of};
use crate::check::{Journal, journal};
use crate::document::{Ext, Limits, Node, Reader};
use crate::error::{Error, ErrorKind, Fault};
use crate::procedure;
use alloc::borrow::ToOwned;
use alloc::format;
use alloc::string::{String, ToString};

/// What the parts of a record say.
struct Document<'t> {
    pack: SealedPack,
    journal: Journal,
    rules: String,
    recorded: Recorded,
    result: &'t str,
}

/// A record, if its bytes are those that were sealed.
pub(super) fn record(text: &str, limits: &Limits) -> Result<Parts, Error> {
    let mut reader = Reader::new(text, limits)?;
    let sealed = unsealed(text);
    // What has the shape of a record was changed, whatever else is wrong with it.
    if let Some((before, stated)) = sealed
        && text.starts_with(&format!("{{\"format\":\"{FORMAT}\","))
    {
        let own = seal_of(before);
        if own != stated {
            return Err(altered(&own, stated).into());
        }
    }
    let read = reader
        .parse_around(&["journal", "result"])
        .and_then(|node| document(&mut reader, &node));
    reader.finish()?;
    // A record that read without a fault is there.
    let read = read.ok_or_else(|| Fault::new(ErrorKind::Internal))?;
    let head = Head {
        format: FORMAT,
        pack: &read.pack,
        journal: &read.journal,
        rules: &read.rules,
    }
    .text();
    let is_canonical =
        |before: &str| before.strip_prefix(&head) == Some(read.result) && is_compact(read.result);
    let Some((before, stated)) = sealed.filter(|(before, _)| is_canonical(before)) else {
        return Err(rewritten().into());
    };
    let digest = before.len().saturating_add(SEAL.len());
    Ok(Parts {
        text: text.to_owned(),
        result: head.len()..before.len(),
        digest: digest..digest.saturating_add(stated.len()),
        pack: read.pack,
        journal: read.journal,
        rules: read.rules,
        recorded: read.recorded,
    })
}

/// What stands before the seal, and the digest it states; nothing if the text does not end in a seal.
fn unsealed(text: &str) -> Option<(&str, &str)> {
    let (before, stated) = text.strip_suffix("\"}")?.rsplit_once(SEAL)?;
    (stated.len() == 64).then_some((before, stated))
}

/// Whether a text has no white space between its tokens.
fn is_compact(json: &str) -> bool {
    Ext::new(json).is_some_and(|ext| ext.get() == json)
}

fn altered(own: &str, stated: &str) -> Fault {
    let hint = "take the record from where it was kept; what is to be corrected is corrected in the journal, and sealed anew";
    Fault::new(ErrorKind::Changed)
        .at("digest")
        .got(own)
        .allowed([stated.to_string()])
        .hint(hint)
}

fn rewritten() -> Fault {
    let hint =
        "it was written anew: keep a record byte for byte as it was sealed, without white space";
    Fault::new(ErrorKind::Changed).at("digest").hint(hint)
}

fn document<'t>(reader: &mut Reader<'t>, node: &Node<'t>) -> Option<Document<'t>> {
    let fields = &["format", "pack", "journal", "rules", "result", "digest"];
    let object = reader.object(node, fields)?;
    let known = reader.required(&object, "format", |reader, node| {
        procedure::format(reader, node, FORMAT)
    });
    let pack = reader.required(&object, "pack", sealed_pack);
    let journal = reader.required(&object, "journal", |reader, node| {
        reader.document(node, |reader, node| journal(reader, node, false))
    });
    let rules = reader.required(&object, "rules", Reader::text);
    let recorded = reader.required(&object, "result", |reader, node| {
        let recorded = reader.document(node, recorded)?;
        if rules.as_ref().is_some_and(|rules| *rules != recorded.rules) {
            let hint = "the answer and the record are of one version of the rules";
            let fault = Fault::new(ErrorKind::Conflict).got(&recorded.rules);
            reader.note_at("rules", fault.hint(hint));
        }
        Some(recorded)
    });
    reader.required(&object, "digest", Reader::text);
    let result = match object.get("result") {
        Some(Node::Ext(text)) => Some(*text),
        _ => None,
    };
    known?;
    let recorded = recorded?;
    Some(Document {
        pack: pack?,
        journal: delivered(journal?, &recorded),
        rules: rules?,
        result: result?,
        recorded,
    })
}

fn sealed_pack(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<SealedPack> {
    let object = reader.object(node, &["id", "version", "digest"])?;
    let id = reader.required(&object, "id", Reader::text);
    let version = reader.required(&object, "version", Reader::text);
    let digest = reader.required(&object, "digest", Reader::text);
    Some(SealedPack {
        id: id?,
        version: version?,
        digest: digest?,
    })
}

/// The journal, delivered as the answer found: what came twice or was cut off is told nowhere else.
fn delivered(mut journal: Journal, recorded: &Recorded) -> Journal {
    for finding in &recorded.findings {
        match finding.id.as_str() {
            "repeat_delivery" => journal.repeats.extend(&finding.entries),
            "torn_line" => {
                journal.torn = finding.bytes.and_then(|bytes| usize::try_from(bytes).ok());
            }
            _ => {}
        }
    }
    journal
}
