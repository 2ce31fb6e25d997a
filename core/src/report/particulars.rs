//! What a page needs beside the job itself: the shop's own lines, its tool, its scan tool, its containers.

use super::picture::Rig;
use crate::calculate::tool;
use crate::document::{Limits, Node, Object, Reader};
use crate::error::{Error, ErrorKind, Fault};
use crate::estimate::{PriceList, Quote};
use crate::quantity::{Amount, Kind, Unit};
use alloc::string::ToString;
use alloc::vec::Vec;

/// What a page needs beside the job; all of it may be left out.
///
/// ```
/// use brimline::report::Particulars;
/// let read = Particulars::read(r#"{"shop":["Fernhollow Gear & Drive"],"scan_unit":"°F"}"#, |particulars| {
///     particulars.shop.len()
/// })?;
/// assert_eq!(read, 1);
/// # Ok::<(), brimline::Error>(())
/// ```
#[derive(Debug, Clone, Default)]
pub struct Particulars<'a> {
    /// The lines the shop stands with at the head of the page: its name, where it is, how it is reached.
    pub shop: Vec<&'a str>,
    /// The torque tool that is used, with its adapter.
    pub rig: Option<Rig<'a>>,
    /// The unit the scan tool shows temperatures in.
    pub scan_unit: Option<Unit>,
    /// The size of the containers the fluid comes in (volume, above zero).
    pub container: Option<Amount>,
    /// The digest of the record that was sealed over the job.
    pub record: Option<&'a str>,
    /// The prices the job is billed at; without them a work sheet has no lines of money.
    pub prices: Option<PriceList>,
    /// What was promised before the job.
    pub estimate: Option<Quote>,
}

const MEMBERS: &[&str] = &[
    "shop",
    "tool",
    "adapter",
    "angle",
    "scan_unit",
    "container",
    "record",
    "prices",
    "estimate",
];

/// Members that are documents of their own.
const DOCUMENTS: &[&str] = &["prices", "estimate"];

impl Particulars<'_> {
    /// Reads particulars from JSON, and does something with them while they last.
    ///
    /// The members are `shop` (a list of lines), `tool` (as for `torque.tool_suits`), `adapter` and `angle` of it, `scan_unit`,
    /// `container`, `record`, `prices` (a price list) and `estimate` (the document of an estimate).
    ///
    /// # Errors
    /// Every fault of the text, with path and position.
    pub fn read<R>(text: &str, and: impl FnOnce(&Particulars<'_>) -> R) -> Result<R, Error> {
        let limits = Limits::default();
        let mut reader = Reader::new(text, &limits)?;
        let node = reader.parse_around(DOCUMENTS);
        let read = node
            .as_ref()
            .and_then(|node| particulars(&mut reader, node));
        reader.finish()?;
        match read {
            Some(particulars) => Ok(and(&particulars)),
            // What read without a fault is there.
            None => Err(Fault::new(ErrorKind::Internal).into()),
        }
    }
}

fn particulars<'n, 't>(reader: &mut Reader<'t>, node: &'n Node<'t>) -> Option<Particulars<'n>> {
    let object = reader.object(node, MEMBERS)?;
    let shop = reader.optional(&object, "shop", |reader, node| {
        reader.list(node, |reader, node| reader.str(node))
    });
    let rig = rig(reader, &object);
    let scan_unit = reader.optional(&object, "scan_unit", temperature_unit);
    let container = reader.optional(&object, "container", |reader, node| {
        let size = reader.amount(node, Kind::Volume)?;
        let is_size = !size.is_zero() && !size.is_negative();
        if !is_size {
            let fault = Fault::new(ErrorKind::OutOfRange).got(&size.to_string());
            reader.note(fault.allowed(["above zero"]));
        }
        is_size.then_some(size)
    });
    let record = reader.optional(&object, "record", |reader, node| reader.str(node));
    let prices = reader.optional(&object, "prices", |reader, node| {
        reader.document(node, PriceList::read)
    });
    let estimate = reader.optional(&object, "estimate", |reader, node| {
        reader.document(node, Quote::read)
    });
    Some(Particulars {
        shop: shop.unwrap_or_default(),
        rig,
        scan_unit,
        container,
        record,
        prices,
        estimate,
    })
}

fn rig<'n, 't>(reader: &mut Reader<'t>, object: &Object<'n, 't>) -> Option<Rig<'n>> {
    let tool = reader.optional(object, "tool", tool);
    let mut amount =
        |name, kind| reader.optional(object, name, |reader, node| reader.amount(node, kind));
    let adapter = amount("adapter", Kind::Length);
    let angle = amount("angle", Kind::Angle);
    if object.get("tool").is_none() {
        for name in ["adapter", "angle"] {
            if object.get(name).is_some() {
                let fault = Fault::new(ErrorKind::Conflict);
                let hint = "an adapter goes on a tool: give the tool, or leave the adapter out";
                reader.note_at(name, fault.hint(hint));
            }
        }
    }
    Some(Rig {
        tool: tool?,
        adapter,
        angle,
    })
}

fn temperature_unit(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Unit> {
    let text = reader.str(node)?;
    let read = Unit::parse_as(text, Kind::Temperature, reader.measures);
    read.map_err(|error| reader.note(error.first().clone()))
        .ok()
}
