//! Reading a pack: every fault of it at once.

use super::closing::{closing, labour};
use super::conditions::conditions;
use super::edition::{Procedure, capacity, caution, leak_limit, refill};
use super::method::method;
use crate::document::{Ext, Node, Reader};
use crate::error::{ErrorKind, Fault};
use crate::fluid::Fluid;
use crate::quantity::{Amount, Kind, Measures, Unit};
use alloc::collections::BTreeSet;
use alloc::string::{String, ToString};
use alloc::vec::Vec;
use core::cmp::Ordering;

/// What a pack document holds.
pub(super) struct PackDocument {
    pub(super) id: String,
    pub(super) version: String,
    pub(super) title: String,
    pub(super) measures: Option<Measures>,
    pub(super) fluids: Vec<Fluid>,
    pub(super) procedures: Vec<Procedure>,
    pub(super) ext: Option<Ext>,
}

/// The format this version reads and writes.
pub(crate) const FORMAT: &str = "brimline-pack/1";

/// A document's `format`, which must be the one read here.
pub(crate) fn format(reader: &mut Reader<'_>, node: &Node<'_>, known: &'static str) -> Option<()> {
    let text = reader.str(node)?;
    if text == known {
        return Some(());
    }
    let hint = "a newer format needs a newer version of this library";
    reader.note(
        Fault::new(ErrorKind::WrongFormat)
            .got(text)
            .allowed([known])
            .hint(hint),
    );
    None
}

/// Which measures bare `qt` and its kin are in.
pub(crate) fn measures(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Measures> {
    reader.word(node, Measures::WORDS)
}

pub(super) fn pack(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<PackDocument> {
    let fields = &[
        "format",
        "id",
        "version",
        "title",
        "measures",
        "fluids",
        "procedures",
        "ext",
    ];
    let object = reader.object(node, fields)?;
    let known = reader.required(&object, "format", |reader, node| {
        format(reader, node, FORMAT)
    });
    let id = reader.required(&object, "id", Reader::text);
    let version = reader.required(&object, "version", Reader::text);
    let title = reader.required(&object, "title", Reader::text);
    let measures = reader.optional(&object, "measures", measures);
    reader.measures = measures;
    let fluids = reader.required(&object, "fluids", |reader, node| reader.list(node, fluid));
    let procedures = reader.required(&object, "procedures", |reader, node| {
        reader.list(node, procedure)
    });
    let ext = reader.optional(&object, "ext", Reader::ext);
    known?;
    Some(PackDocument {
        id: id?,
        version: version?,
        title: title?,
        measures,
        fluids: fluids?,
        procedures: procedures?,
        ext,
    })
}

fn fluid(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Fluid> {
    let fields = &[
        "id",
        "replaces",
        "mixes_with",
        "full_exchange_only",
        "never",
        "density_15",
        "viscosity_40",
        "viscosity_100",
    ];
    let object = reader.object(node, fields)?;
    let id = reader.required(&object, "id", Reader::text);
    let mut names = |name| reader.optional(&object, name, texts).unwrap_or_default();
    let (replaces, mixes_with) = (names("replaces"), names("mixes_with"));
    let (full_exchange_only, never) = (names("full_exchange_only"), names("never"));
    let density_15 = reader.optional(&object, "density_15", |reader, node| {
        above_zero(reader, node, Kind::Density)
    });
    let mut viscosity = |name| {
        reader.optional(&object, name, |reader, node| {
            above_zero(reader, node, Kind::KinematicViscosity)
        })
    };
    let (viscosity_40, viscosity_100) = (viscosity("viscosity_40"), viscosity("viscosity_100"));
    let others: BTreeSet<&str> = [&replaces, &mixes_with, &full_exchange_only]
        .into_iter()
        .flatten()
        .map(String::as_str)
        .collect();
    reader.optional(&object, "never", |reader, node| {
        for (index, node) in node.items().iter().enumerate() {
            if let Some(name) = node.text().filter(|name| others.contains(name)) {
                let hint = "a fluid under never may stand under no other relation";
                reader.note_at(index, Fault::new(ErrorKind::Conflict).got(name).hint(hint));
            }
        }
        Some(())
    });
    Some(Fluid {
        id: id?,
        replaces,
        mixes_with,
        full_exchange_only,
        never,
        density_15,
        viscosity_40,
        viscosity_100,
    })
}

fn texts(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Vec<String>> {
    reader.list(node, Reader::text)
}

pub(super) fn amounts(reader: &mut Reader<'_>, node: &Node<'_>, kind: Kind) -> Option<Vec<Amount>> {
    reader.list(node, |reader, node| reader.amount(node, kind))
}

pub(crate) fn above_zero(reader: &mut Reader<'_>, node: &Node<'_>, kind: Kind) -> Option<Amount> {
    let amount = reader.amount_from_zero(node, kind)?;
    if amount.is_zero() {
        reader.note(
            Fault::new(ErrorKind::OutOfRange)
                .got(&amount.to_string())
                .hint("this must be more than nothing"),
        );
        return None;
    }
    Some(amount)
}

/// A volume the ledger can hold: above zero and not beyond what any unit could.
pub(crate) fn volume(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Amount> {
    let amount = above_zero(reader, node, Kind::Volume)?;
    bounded(reader, amount)
}

pub(crate) fn volume_from_zero(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Amount> {
    let amount = reader.amount_from_zero(node, Kind::Volume)?;
    bounded(reader, amount)
}

fn bounded(reader: &mut Reader<'_>, amount: Amount) -> Option<Amount> {
    let most = Amount::new(1_000, 0, Unit::Litre).ok();
    let over = most.is_none_or(|most| !amount.compare(&most).is_ok_and(Ordering::is_le));
    if over {
        let fault = Fault::new(ErrorKind::OutOfRange)
            .got(&amount.to_string())
            .allowed(["up to 1000 L"]);
        reader.note(fault);
        return None;
    }
    Some(amount)
}

pub(crate) fn edition_number(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<u32> {
    let value = reader.whole(node, 1)?;
    let number = u32::try_from(value).ok();
    if number.is_none() {
        let fault = Fault::new(ErrorKind::OutOfRange).got(&value.to_string());
        reader.note(fault.allowed(["1 to 4294967295"]));
    }
    number
}

fn procedure(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Procedure> {
    let fields = &[
        "id",
        "edition",
        "supersedes",
        "effective",
        "unit",
        "fits",
        "source",
        "fluid",
        "capacity",
        "method",
        "conditions",
        "refill",
        "leak_limit",
        "closing",
        "cautions",
        "labour",
        "ext",
    ];
    let object = reader.object(node, fields)?;
    let id = reader.required(&object, "id", Reader::text);
    let edition = reader.required(&object, "edition", edition_number);
    let supersedes = reader.optional(&object, "supersedes", edition_number);
    let effective = reader.optional(&object, "effective", Reader::date);
    let unit = reader.optional(&object, "unit", Reader::text);
    let fits = reader.optional(&object, "fits", texts);
    let source = reader.optional(&object, "source", Reader::text);
    let fluid = reader.optional(&object, "fluid", Reader::text);
    let capacity = reader.optional(&object, "capacity", capacity);
    let method = reader.required(&object, "method", method);
    let conditions = reader.optional(&object, "conditions", conditions);
    let refill = reader.optional(&object, "refill", refill);
    let leak_limit = reader.optional(&object, "leak_limit", leak_limit);
    let closing = reader.optional(&object, "closing", closing);
    let cautions = reader.optional(&object, "cautions", |reader, node| {
        reader.list(node, caution)
    });
    let labour = reader.optional(&object, "labour", labour);
    let ext = reader.optional(&object, "ext", Reader::ext);
    Some(Procedure {
        id: id?,
        edition: edition?,
        supersedes,
        effective,
        unit,
        fits: fits.unwrap_or_default(),
        source,
        fluid,
        capacity,
        method: method?,
        conditions,
        refill,
        leak_limit,
        closing,
        cautions: cautions.unwrap_or_default(),
        labour,
        ext,
        digest: String::new(),
    })
}
