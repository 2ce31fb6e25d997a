//! Reading a price list: every fault of it at once.

use super::doubles;
use super::fluid_prices::{fluid, opened};
use super::goods::{disposed, locker, part, supply};
use super::labour::{wait, work};
use super::price_list::Parts;
use super::terms::{Terms, many, rounding, tax};
use crate::document::{Node, Reader};
use crate::error::{ErrorKind, Fault};
use crate::procedure::format;
use alloc::string::String;
use alloc::vec::Vec;

/// The format this version reads and writes.
pub(crate) const FORMAT: &str = "brimline-prices/1";

const FIELDS: &[&str] = &[
    "format",
    "id",
    "version",
    "currency",
    "rounding",
    "taxes",
    "fluids",
    "plugs",
    "seals",
    "threadlocker",
    "supplies",
    "labour",
    "leak_search",
    "wait",
    "opened",
    "disposal",
    "ext",
];

pub(super) fn price_list(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Parts> {
    let object = &reader.object(node, FIELDS)?;
    let known = reader.required(object, "format", |reader, node| {
        format(reader, node, FORMAT)
    });
    let id = reader.required(object, "id", Reader::text);
    let version = reader.required(object, "version", Reader::text);
    let currency = reader.required(object, "currency", Reader::currency);
    let rounding = reader.required(object, "rounding", rounding);
    let taxes = many(reader, object, "taxes", tax);
    let terms = &Terms {
        currency,
        taxes: object.get("taxes").map_or(Vec::new(), |taxes| {
            let ids = taxes.items().iter();
            ids.filter_map(|tax| tax.member("id")?.text()).collect()
        }),
    };
    let fluids = reader.required(object, "fluids", |reader, node| {
        reader.list(node, |reader, node| fluid(reader, node, terms))
    });
    let mut parts = |name| {
        many(reader, object, name, |reader, node| {
            part(reader, node, terms)
        })
    };
    let (plugs, seals) = (parts("plugs"), parts("seals"));
    let threadlocker = many(reader, object, "threadlocker", |reader, node| {
        locker(reader, node, terms)
    });
    let supplies = many(reader, object, "supplies", |reader, node| {
        supply(reader, node, terms)
    });
    let labour = reader.required(object, "labour", |reader, node| {
        reader.list(node, |reader, node| work(reader, node, terms, true))
    });
    let leak_search = reader.optional(object, "leak_search", |reader, node| {
        work(reader, node, terms, false)
    });
    let wait = reader.optional(object, "wait", |reader, node| wait(reader, node, terms));
    let opened = reader.optional(object, "opened", opened);
    let disposal = many(reader, object, "disposal", |reader, node| {
        disposed(reader, node, terms)
    });
    let ext = reader.optional(object, "ext", Reader::ext);
    doubles::note(reader, object);
    let bay = object.get("labour").and_then(|labour| {
        let billed = |work: &Node<'_>| work.member("billed").and_then(Node::text) == Some("bay");
        labour.items().iter().position(billed)
    });
    if let Some(place) = bay.filter(|_| object.get("wait").is_some()) {
        let hint = "bay time holds the wait already: bill hands_on, or leave wait out";
        let fault = Fault::new(ErrorKind::Conflict).got("bay").hint(hint);
        reader.inside("labour", |reader| {
            reader.inside(place, |reader| reader.note_at("billed", fault));
        });
    }
    known?;
    Some(Parts {
        format: FORMAT,
        id: id?,
        version: version?,
        currency: currency?,
        rounding: rounding?,
        taxes,
        fluids: fluids?,
        plugs,
        seals,
        threadlocker,
        supplies,
        labour: labour?,
        leak_search,
        wait,
        opened,
        disposal,
        ext,
        digest: String::new(),
    })
}
