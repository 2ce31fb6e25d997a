//! How the entries of a journal came: in order, and some of them again.

use super::entry::Entry;
use super::finding::Finding;
use super::read;
use crate::document::{Node, Reader};
use crate::error::{ErrorKind, Fault};
use crate::procedure::Severity;
use alloc::collections::BTreeMap;
use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

/// The entries that came so far.
#[derive(Debug, Default)]
pub(super) struct Delivery {
    pub(super) entries: Vec<Entry>,
    /// Entries that came again, by the `seq` of the one that was kept.
    pub(super) repeats: Vec<u64>,
    last: Option<u64>,
    named: BTreeMap<String, Vec<usize>>,
}

impl Delivery {
    /// Reads the next entry, and checks that its `seq` rises even where the rest of it cannot be read. One with
    /// the `id` and content of an earlier one is a repeated delivery, and dropped.
    pub(super) fn take(&mut self, reader: &mut Reader<'_>, node: &Node<'_>) {
        let entry = read::entry(reader, node);
        let earlier = entry.as_ref().and_then(|entry| {
            let places = self.named.get(entry.id.as_ref()?)?;
            let mut of_name = places.iter().filter_map(|place| self.entries.get(*place));
            of_name.find(|earlier| earlier.says_the_same(entry))
        });
        if let Some(earlier) = earlier {
            self.repeats.push(earlier.seq);
            return;
        }
        let number = node.member("seq").and_then(Node::whole);
        if let (Some(last), Some(number)) = (self.last, number)
            && number <= last
        {
            let fault = Fault::new(ErrorKind::Sequence)
                .got(&number.to_string())
                .allowed([format!("more than {last}")])
                .hint("number the entries in the order they were recorded");
            reader.note_at("seq", fault);
        }
        self.last = number.or(self.last);
        if let Some(entry) = entry {
            if let Some(id) = &entry.id {
                self.named
                    .entry(id.clone())
                    .or_default()
                    .push(self.entries.len());
            }
            self.entries.push(entry);
        }
    }
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
