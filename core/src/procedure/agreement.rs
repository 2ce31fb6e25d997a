//! Whether the parts of a pack agree: identities, replacement and supersession.

use super::edition::Procedure;
use super::read::PackDocument;
use crate::document::{Reader, Step};
use crate::error::{ErrorKind, Fault};
use alloc::format;
use alloc::string::String;
use alloc::vec;
use alloc::vec::Vec;

/// Notes every identity given twice and every ring of replacements.
pub(super) fn agreement(reader: &mut Reader<'_>, pack: &PackDocument) {
    for (index, fluid) in pack.fluids.iter().enumerate() {
        if pack
            .fluids
            .iter()
            .take(index)
            .any(|earlier| earlier.id == fluid.id)
        {
            repeated(reader, "fluids", index, "id", &fluid.id);
        }
    }
    if let Some(cycle) = crate::fluid::replacement_cycle(&pack.fluids) {
        let named = cycle.join(" > ");
        let hint = "replacing goes one way; end the chain somewhere";
        reader.note_at(
            "fluids",
            Fault::new(ErrorKind::Cycle).got(&named).hint(hint),
        );
    }
    for (index, sheet) in pack.procedures.iter().enumerate() {
        let same = |other: &&Procedure| other.id == sheet.id && other.edition == sheet.edition;
        if pack
            .procedures
            .iter()
            .take(index)
            .any(|earlier| same(&earlier))
        {
            repeated(
                reader,
                "procedures",
                index,
                "edition",
                &format!("{} edition {}", sheet.id, sheet.edition),
            );
        }
    }
    for (index, sheet) in pack.procedures.iter().enumerate() {
        let Some(trail) = supersession_cycle(&pack.procedures, sheet) else {
            continue;
        };
        // A ring is told once, at its first member.
        if trail
            .iter()
            .skip(1)
            .all(|edition| *edition >= sheet.edition)
        {
            let named: Vec<String> = trail
                .iter()
                .map(|edition| format!("{} edition {edition}", sheet.id))
                .collect();
            let fault = Fault::new(ErrorKind::Cycle)
                .got(&named.join(" > "))
                .hint("an edition supersedes an earlier one");
            reader.inside(Step::Key("procedures".into()), |reader| {
                reader.inside(Step::Index(index), |reader| {
                    reader.note_at("supersedes", fault)
                });
            });
        }
    }
}

fn repeated(
    reader: &mut Reader<'_>,
    list: &'static str,
    index: usize,
    field: &'static str,
    name: &str,
) {
    let fault = Fault::new(ErrorKind::DuplicateId)
        .got(name)
        .hint("give each its own identity");
    reader.inside(Step::Key(list.into()), |reader| {
        reader.inside(Step::Index(index), |reader| reader.note_at(field, fault))
    });
}

fn supersession_cycle(all: &[Procedure], from: &Procedure) -> Option<Vec<u32>> {
    let mut trail = vec![from.edition];
    let mut next = from.supersedes;
    while let Some(edition) = next {
        trail.push(edition);
        if edition == from.edition {
            return Some(trail);
        }
        if trail.len() > all.len().saturating_add(1) {
            return None;
        }
        let sheet = all
            .iter()
            .find(|sheet| sheet.id == from.id && sheet.edition == edition);
        next = sheet.and_then(|sheet| sheet.supersedes);
    }
    None
}
