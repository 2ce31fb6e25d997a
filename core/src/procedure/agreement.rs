//! Whether the parts of a pack agree: identities, replacement and supersession.
//!
//! It is asked of the document itself, so that a part with faults of its own does not hide another.

use super::ring::{Way, rings};
use crate::document::{Node, Reader, Step};
use crate::error::{ErrorKind, Fault};
use alloc::collections::BTreeMap;
use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

/// Notes every identity given twice and every ring of replacements.
pub(super) fn agreement(reader: &mut Reader<'_>, pack: &Node<'_>) {
    let list = |name| pack.member(name).map_or(&[][..], Node::items);
    let (fluids, sheets) = (list("fluids"), list("procedures"));
    let fluid = |node: &Node<'_>| Some(node.member("id")?.text()?.to_string());
    let edition = |node: &Node<'_>, field: &str| {
        let id = node.member("id")?.text()?;
        Some(format!("{id} edition {}", node.member(field)?.whole()?))
    };
    Part {
        list: "fluids",
        names: fluids.iter().map(fluid).collect(),
        identity: "id",
        refers: "replaces",
        hint: "replacing goes one way; end the chain somewhere",
    }
    .agrees(reader, pack, |node| {
        let replaced = node.member("replaces").map_or(&[][..], Node::items);
        replaced
            .iter()
            .map(|node| node.text().map(ToString::to_string))
            .collect()
    });
    Part {
        list: "procedures",
        names: sheets.iter().map(|node| edition(node, "edition")).collect(),
        identity: "edition",
        refers: "supersedes",
        hint: "an edition supersedes an earlier one",
    }
    .agrees(reader, pack, |node| {
        Vec::from([edition(node, "supersedes")])
    });
}

/// One list of a pack whose items have identities and refer to each other.
struct Part {
    list: &'static str,
    /// The identity of each item, as far as it can be read.
    names: Vec<Option<String>>,
    /// The member that is at fault where an identity stands twice.
    identity: &'static str,
    /// The member that refers to other items.
    refers: &'static str,
    hint: &'static str,
}

impl Part {
    fn agrees(
        &self,
        reader: &mut Reader<'_>,
        pack: &Node<'_>,
        references: impl Fn(&Node<'_>) -> Vec<Option<String>>,
    ) {
        let mut places: BTreeMap<&str, usize> = BTreeMap::new();
        for (place, name) in self.names.iter().enumerate() {
            let Some(name) = name else { continue };
            if places.contains_key(name.as_str()) {
                let fault = Fault::new(ErrorKind::DuplicateId)
                    .got(name)
                    .hint("give each its own identity");
                let steps = [self.list.into(), place.into(), self.identity.into()];
                note_below(reader, &steps, fault);
            } else {
                places.insert(name, place);
            }
        }
        let items = pack.member(self.list).map_or(&[][..], Node::items);
        let ways: Vec<Vec<Option<usize>>> = items
            .iter()
            .map(|node| {
                let names = references(node).into_iter();
                names
                    .map(|name| places.get(name?.as_str()).copied())
                    .collect()
            })
            .collect();
        rings(&ways, |trail| {
            let Some((place, way)) = trail.last().copied() else {
                return;
            };
            let fault = Fault::new(ErrorKind::Cycle)
                .got(&self.spelled(trail))
                .hint(self.hint);
            let steps = [
                self.list.into(),
                place.into(),
                self.refers.into(),
                way.into(),
            ];
            // A list of references names the one at fault, a single reference is it.
            let is_list = items
                .get(place)
                .and_then(|node| node.member(self.refers))
                .is_some_and(|node| !node.items().is_empty());
            let steps = steps.get(..if is_list { 4 } else { 3 }).unwrap_or_default();
            note_below(reader, steps, fault);
        });
    }

    /// A ring by name, from its first member back to it, as far as a fault tells it.
    fn spelled(&self, trail: &[Way]) -> String {
        let mut out = String::new();
        let first = trail.first();
        for (place, _) in trail.iter().chain(first) {
            let name = self.names.get(*place).and_then(Option::as_deref);
            if !out.is_empty() {
                out.push_str(" > ");
            }
            out.push_str(name.unwrap_or_default());
            if out.len() > 400 {
                break;
            }
        }
        out
    }
}

/// Notes a fault further in.
fn note_below(reader: &mut Reader<'_>, steps: &[Step], fault: Fault) {
    match steps.split_first() {
        Some((step, rest)) => reader.inside(step.clone(), |reader| note_below(reader, rest, fault)),
        None => reader.note(fault),
    }
}
