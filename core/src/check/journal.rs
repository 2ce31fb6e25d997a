//! A journal: the header of a job and its entries, as one document or as JSON Lines.

use super::delivery::{Delivery, repeat_delivery};
use super::entry::Entry;
use super::finding::Finding;
use super::header::{Header, MEMBERS, header, header_of};
use super::read;
use crate::document::{Limits, Node, Reader, canonical, from_utf8, is_json};
use crate::error::{Error, ErrorKind, Fault};
use crate::procedure::Severity;
use crate::quantity::Measures;
use alloc::borrow::Cow;
use alloc::string::String;
use alloc::vec::Vec;
use serde::{Serialize, Serializer};

/// A journal, read and checked.
#[derive(Debug, Clone)]
pub struct Journal {
    pub(super) header: Header,
    pub(super) entries: Vec<Entry>,
    /// Bytes of a last line that was cut off.
    pub(crate) torn: Option<usize>,
    /// Entries that came again, by the `seq` of the one that was kept.
    pub(crate) repeats: Vec<u64>,
}

impl Journal {
    /// The text of a journal from its bytes, for [`from_json`](Self::from_json) and [`evaluate`](crate::evaluate).
    ///
    /// The last of several lines may have been cut off, and then anywhere: within a character as well. What is left of
    /// that character becomes as many bytes that no document may hold, so that the line reads as what it is, cut off.
    ///
    /// # Errors
    ///
    /// [`NotUtf8`](ErrorKind::NotUtf8) for bytes that are not UTF-8 anywhere else, with their place.
    ///
    /// ```
    /// let torn = "{}\n{\"note\":\"21 °".as_bytes();
    /// assert!(brimline::Journal::text(&torn[..torn.len() - 1])?.starts_with("{}\n{"));
    /// assert!(brimline::Journal::text(b"{\"note\":\"21 \xb0C\"}").is_err());
    /// # Ok::<(), brimline::Error>(())
    /// ```
    pub fn text(bytes: &[u8]) -> Result<Cow<'_, str>, Error> {
        const SUBSTITUTE: &str = "\u{1a}";
        let Err(stop) = core::str::from_utf8(bytes) else {
            return from_utf8(bytes, "journal").map(Cow::Borrowed);
        };
        let is_cut = stop.error_len().is_none();
        match bytes.split_at_checked(stop.valid_up_to()) {
            Some((whole, left)) if is_cut && whole.contains(&b'\n') => {
                let mut whole = String::from_utf8_lossy(whole).into_owned();
                whole.push_str(&SUBSTITUTE.repeat(left.len()));
                Ok(Cow::Owned(whole))
            }
            _ => from_utf8(bytes, "journal").map(Cow::Borrowed),
        }
    }

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
        let mut reader = Reader::new(text, limits)?;
        reader.measures = pack_measures;
        match lines(text) {
            Some((first, rest)) => from_lines(reader, first, &rest, !text.ends_with('\n')),
            None => from_document(reader, text),
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
        canonical(self)
    }
}

impl Serialize for Journal {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        #[derive(Serialize)]
        struct Document<'j> {
            #[serde(flatten)]
            header: &'j Header,
            entries: &'j [Entry],
        }
        let document = Document {
            header: &self.header,
            entries: &self.entries,
        };
        document.serialize(serializer)
    }
}

/// The first line of JSON Lines, which is an object of its own, and the lines after it; none if the text is one
/// document.
fn lines(text: &str) -> Option<(&str, Vec<&str>)> {
    let mut lines = text.lines().filter(|line| !line.trim().is_empty());
    let first = lines.next()?;
    let rest: Vec<&str> = lines.collect();
    let alone = !rest.is_empty() && first.trim_start().starts_with('{') && is_json(first);
    alone.then_some((first, rest))
}

fn from_document(mut reader: Reader<'_>, text: &str) -> Result<Journal, Error> {
    // A finished line without entries is the beginning of JSON Lines.
    let is_line = text.ends_with('\n') && text.trim().lines().count() == 1;
    let journal = reader
        .parse()
        .and_then(|node| journal(&mut reader, &node, is_line));
    reader.finish()?;
    // A journal that read without a fault is there.
    journal.ok_or_else(|| Fault::new(ErrorKind::Internal).into())
}

/// A journal in one document; a line of JSON Lines may lack its entries.
pub(crate) fn journal(reader: &mut Reader<'_>, node: &Node<'_>, is_line: bool) -> Option<Journal> {
    let mut delivery = Delivery::default();
    let object = reader.object(node, MEMBERS)?;
    let header = header_of(reader, &object);
    if !is_line || object.get("entries").is_some() {
        let most = reader.limits().entries();
        reader.required(&object, "entries", |reader, node| match node {
            Node::List(items) if items.len() > most => {
                reader.note(reader.limits().too_many_entries(items.len()));
                None
            }
            _ => reader.list(node, |reader, node| {
                delivery.take(reader, node);
                Some(())
            }),
        });
    }
    Some(Journal {
        header: header?,
        entries: delivery.entries,
        torn: None,
        repeats: delivery.repeats,
    })
}

/// `cut` says that the last line has no end of its own.
fn from_lines<'t>(
    mut reader: Reader<'t>,
    first: &'t str,
    rest: &[&'t str],
    cut: bool,
) -> Result<Journal, Error> {
    let header = reader
        .parse_part(first)
        .and_then(|node| header(&mut reader, &node));
    let mut delivery = Delivery::default();
    // What a power cut leaves of a line is no JSON.
    let torn = rest.last().filter(|last| cut && !is_json(last));
    let whole_lines = rest.len().saturating_sub(usize::from(torn.is_some()));
    reader.inside("entries", |reader| {
        if whole_lines > reader.limits().entries() {
            reader.note(reader.limits().too_many_entries(whole_lines));
            return;
        }
        for (index, line) in rest.iter().take(whole_lines).enumerate() {
            reader.inside(index, |reader| {
                if let Some(node) = reader.parse_part(line) {
                    delivery.take(reader, &node);
                }
            });
        }
    });
    reader.finish()?;
    Ok(Journal {
        // A header that read without a fault is there.
        header: header.ok_or_else(|| Fault::new(ErrorKind::Internal))?,
        entries: delivery.entries,
        torn: torn.map(|line| line.len()),
        repeats: delivery.repeats,
    })
}

/// Reads one entry of a journal that is being recorded live.
pub(super) fn entry_from_json(
    text: &str,
    measures: Option<Measures>,
    limits: &Limits,
) -> Result<Entry, Error> {
    let mut reader = Reader::new(text, limits)?;
    reader.measures = measures;
    let node = reader.parse();
    let entry = node.and_then(|node| read::entry(&mut reader, &node));
    reader.finish()?;
    // An entry that read without a fault is there.
    entry.ok_or_else(|| Fault::new(ErrorKind::Internal).into())
}
