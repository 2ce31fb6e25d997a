//! What stands twice in a price list, so that nobody could say which price holds.
//!
//! It is asked of the document itself, so that an item with faults of its own does not hide another.

use crate::document::{Node, Object, Reader, Step};
use crate::error::{ErrorKind, Fault};
use alloc::vec::Vec;

/// The lists, and the members by which their items are told apart. The items of a list in items are told apart throughout.
const LISTS: &[(&str, &[&str])] = &[
    ("taxes", &["id"]),
    ("fluids", &["fluid"]),
    ("plugs", &["id", "thread"]),
    ("seals", &["id", "thread"]),
    ("threadlocker", &["id", "strength"]),
    ("supplies", &["id"]),
    ("labour", &["id"]),
    ("disposal", &["stream"]),
];

/// The lists in items of a list.
const INNER: &[(&str, &str, Option<&str>)] = &[
    ("fluids", "containers", Some("id")),
    ("labour", "jobs", None),
];

/// Notes every identity given twice.
pub(super) fn note(reader: &mut Reader<'_>, list: &Object<'_, '_>) {
    let items = |name| list.get(name).map_or(&[][..], Node::items);
    for (name, members) in LISTS {
        for member in *members {
            let own = items(name).iter().enumerate();
            let texts = own.filter_map(|(place, item)| {
                let text = item.member(member)?.text()?;
                Some((
                    Vec::from([(*name).into(), place.into(), (*member).into()]),
                    text,
                ))
            });
            note_second(reader, texts);
        }
    }
    for (name, inner, member) in INNER {
        let own = items(name).iter().enumerate();
        let texts = own.flat_map(|(place, item)| {
            let within = item.member(inner).map_or(&[][..], Node::items);
            within.iter().enumerate().filter_map(move |(index, item)| {
                let mut steps =
                    Vec::from([(*name).into(), place.into(), (*inner).into(), index.into()]);
                steps.extend(member.map(Step::from));
                let named = member.map_or(Some(item), |member| item.member(member));
                Some((steps, named?.text()?))
            })
        });
        note_second(reader, texts);
    }
}

fn note_second<'n>(reader: &mut Reader<'_>, texts: impl Iterator<Item = (Vec<Step>, &'n str)>) {
    let mut seen = Vec::new();
    for (steps, text) in texts {
        if !seen.contains(&text) {
            seen.push(text);
            continue;
        }
        let hint = "it stands before already: keep one, so that one price holds";
        let fault = Fault::new(ErrorKind::DuplicateId).got(text).hint(hint);
        below(reader, &steps, fault);
    }
}

fn below(reader: &mut Reader<'_>, steps: &[Step], fault: Fault) {
    match steps.split_first() {
        Some((step, rest)) => reader.inside(step.clone(), |reader| below(reader, rest, fault)),
        None => reader.note(fault),
    }
}
