//! What an estimate promised, kept until the invoice: its likely lines and their total.

use super::lines::{Cause, Line, Policy, What};
use crate::document::{Limits, Node, Reader};
use crate::error::{Error, ErrorKind, Fault};
use crate::money::{Money, mixed};
use crate::procedure::format;
use crate::quantity::{Amount, Kind, Unit};
use alloc::vec::Vec;

/// What an estimate promised: the lines of its likely case, and their total.
///
/// An estimate is made today and billed against on another day, so it is read again from its document.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Quote {
    pub(super) lines: Vec<Line>,
    pub(super) total: Money,
}

/// The format this version reads and writes.
pub(crate) const FORMAT: &str = "brimline-estimate/1";

const FIELDS: &[&str] = &[
    "format", "prices", "job", "times", "poured", "best", "likely", "worst", "approval", "stock",
    "findings", "cautions",
];

impl Quote {
    /// Reads what an estimate promised from the document of the estimate, under the default [`Limits`].
    ///
    /// # Errors
    /// Every fault of what is read of the document, with path and position.
    pub fn from_json(text: &str) -> Result<Self, Error> {
        Self::from_json_with(text, &Limits::default())
    }

    /// Reads what an estimate promised from the document of the estimate.
    ///
    /// # Errors
    /// Every fault of what is read of the document, with path and position.
    pub fn from_json_with(text: &str, limits: &Limits) -> Result<Self, Error> {
        let mut reader = Reader::new(text, limits)?;
        let node = reader.parse();
        let read = node.and_then(|node| Self::read(&mut reader, &node));
        reader.finish()?;
        // A document that read without a fault is there.
        read.ok_or_else(|| Fault::new(ErrorKind::Internal).into())
    }

    /// Reads what an estimate promised from an estimate that stands in another document.
    pub(crate) fn read(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Self> {
        let object = reader.object(node, FIELDS)?;
        let known = reader.required(&object, "format", |reader, node| {
            format(reader, node, FORMAT)
        });
        let quote = reader.required(&object, "likely", likely);
        known.and(quote)
    }

    /// The lines that were promised.
    #[must_use]
    pub fn lines(&self) -> &[Line] {
        &self.lines
    }

    /// What they come to, tax included.
    #[must_use]
    pub fn total(&self) -> Money {
        self.total
    }
}

fn likely(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Quote> {
    const FIELDS: &[&str] = &["volume", "assumes", "lines", "net", "taxes", "total"];
    let object = reader.object(node, FIELDS)?;
    let lines = reader.required(&object, "lines", |reader, node| reader.list(node, line));
    let total = reader.required(&object, "total", Reader::money);
    let (lines, total) = (lines?, total?);
    for (place, line) in lines.iter().enumerate() {
        let (net, own) = (line.net.currency(), total.currency());
        if net != own {
            reader.inside("lines", |reader| {
                reader.inside(place, |reader| reader.note_at("net", mixed(own, net)));
            });
        }
    }
    Some(Quote { lines, total })
}

fn line(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Line> {
    const FIELDS: &[&str] = &[
        "id",
        "item",
        "cause",
        "quantity",
        "unit_code",
        "price",
        "net",
        "taxes",
    ];
    let object = reader.object(node, FIELDS)?;
    let id = reader.required(&object, "id", |reader, node| reader.word(node, What::WORDS));
    let item = reader.required(&object, "item", Reader::text);
    let cause = reader.required(&object, "cause", cause);
    let quantity = reader.required(&object, "quantity", quantity);
    let price = reader.required(&object, "price", Reader::price);
    let net = reader.required(&object, "net", Reader::money);
    let taxes = reader.optional(&object, "taxes", |reader, node| {
        reader.list(node, Reader::text)
    });
    let quantity = quantity?;
    Some(Line {
        id: id?,
        item: item?,
        cause: cause?,
        quantity,
        unit_code: Unit::rec20(quantity.unit()).unwrap_or_default(),
        price: price?,
        net: net?,
        taxes: taxes.unwrap_or_default(),
    })
}

/// An amount; pieces are written as a plain number.
fn quantity(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Amount> {
    let is_plain = node.text().is_some_and(|text| !text.contains(' '));
    if is_plain {
        reader.amount(node, Kind::Ratio)
    } else {
        reader.any_amount(node)
    }
}

fn cause(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Cause> {
    let object = reader.object(node, &["policy", "entries"])?;
    let policy = reader.required(&object, "policy", |reader, node| {
        reader.word(node, Policy::WORDS)
    });
    let entries = reader.optional(&object, "entries", |reader, node| {
        reader.list(node, |reader, node| reader.whole(node, 0))
    });
    Some(Cause {
        policy: policy?,
        entries: entries.unwrap_or_default(),
    })
}
