//! What the host knows besides the journal: its own likely volume, a ceiling, what is on the shelf.

use crate::document::{Limits, Node, Reader};
use crate::error::{Error, ErrorKind, Fault};
use crate::money::Money;
use crate::procedure::{volume, volume_from_zero};
use crate::quantity::Amount;
use alloc::string::String;
use alloc::vec::Vec;
use jiff::civil::Date;

/// What an estimate is asked with, besides the journal.
///
/// ```
/// use brimline::estimate::Asked;
/// let asked = Asked::from_json(r#"{"likely":"0.6 L","ceiling":"180.00 EUR",
///     "stock":{"full":[{"container":"sedge-thin-bottle","count":2}]}}"#)?;
/// assert_eq!(asked.likely.unwrap().to_string(), "0.6 L");
/// # Ok::<(), brimline::Error>(())
/// ```
#[derive(Debug, Clone, Default, PartialEq)]
#[non_exhaustive]
pub struct Asked {
    /// What such a job takes in this shop, all of it (volume). Absent: it is assumed from the sheet.
    pub likely: Option<Amount>,
    /// What is about to be poured (volume). Absent: what the check says is poured next.
    pub planned: Option<Amount>,
    /// What the customer approved, tax included. An `approved` entry of the journal goes before it.
    pub ceiling: Option<Money>,
    /// What is on the shelf now.
    pub stock: Option<Stock>,
    /// The day opened containers are held against. Absent: the UTC day of the newest entry; without either, their age is not
    /// known.
    pub on: Option<Date>,
}

/// What is on the shelf.
#[derive(Debug, Clone, Default, PartialEq)]
#[non_exhaustive]
pub struct Stock {
    /// Full containers; those not named are not there.
    pub full: Vec<Full>,
    /// Containers that were opened on another job.
    pub opened: Vec<Rest>,
    /// What the drum holds (volume).
    pub bulk: Option<Amount>,
}

/// Full containers of one size.
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct Full {
    /// The price list's name for the container.
    pub container: String,
    /// How many there are.
    pub count: u64,
}

/// A container that was opened on another job.
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct Rest {
    /// The shop's name for it.
    pub name: String,
    /// What is left in it (volume).
    pub rest: Amount,
    /// The fluid in it.
    pub fluid: String,
    /// Whether it stood tightly closed.
    pub sealed: bool,
    /// Whether it and the fluid are clean.
    pub clean: bool,
    /// The day it was opened, where that is written on it.
    pub opened_on: Option<Date>,
}

impl Asked {
    /// Reads what is asked from its JSON text, under the default [`Limits`].
    ///
    /// # Errors
    /// Every fault of the document, with path and position.
    pub fn from_json(text: &str) -> Result<Self, Error> {
        Self::from_json_with(text, &Limits::default())
    }

    /// Reads what is asked from its JSON text.
    ///
    /// # Errors
    /// Every fault of the document, with path and position.
    pub fn from_json_with(text: &str, limits: &Limits) -> Result<Self, Error> {
        let mut reader = Reader::new(text, limits)?;
        let asked = reader.parse().and_then(|node| asked(&mut reader, &node));
        reader.finish()?;
        // A document that read without a fault is there.
        asked.ok_or_else(|| Fault::new(ErrorKind::Internal).into())
    }
}

fn asked(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Asked> {
    let object = reader.object(node, &["likely", "planned", "ceiling", "stock", "on"])?;
    let likely = reader.optional(&object, "likely", volume_from_zero);
    let planned = reader.optional(&object, "planned", volume_from_zero);
    let ceiling = reader.optional(&object, "ceiling", Reader::money);
    let stock = reader.optional(&object, "stock", stock);
    let on = reader.optional(&object, "on", Reader::date);
    Some(Asked {
        likely,
        planned,
        ceiling,
        stock,
        on,
    })
}

fn stock(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Stock> {
    let object = reader.object(node, &["full", "opened", "bulk"])?;
    let full = reader.optional(&object, "full", |reader, node| reader.list(node, full));
    let opened = reader.optional(&object, "opened", |reader, node| reader.list(node, rest));
    let bulk = reader.optional(&object, "bulk", volume_from_zero);
    Some(Stock {
        full: full.unwrap_or_default(),
        opened: opened.unwrap_or_default(),
        bulk,
    })
}

fn full(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Full> {
    let object = reader.object(node, &["container", "count"])?;
    let container = reader.required(&object, "container", Reader::text);
    let count = reader.required(&object, "count", |reader, node| reader.whole(node, 0));
    Some(Full {
        container: container?,
        count: count?,
    })
}

fn rest(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Rest> {
    const FIELDS: &[&str] = &["name", "rest", "fluid", "sealed", "clean", "opened_on"];
    let object = reader.object(node, FIELDS)?;
    let name = reader.required(&object, "name", Reader::text);
    let rest = reader.required(&object, "rest", volume);
    let fluid = reader.required(&object, "fluid", Reader::text);
    let sealed = reader.required(&object, "sealed", Reader::flag);
    let clean = reader.required(&object, "clean", Reader::flag);
    let opened_on = reader.optional(&object, "opened_on", Reader::date);
    Some(Rest {
        name: name?,
        rest: rest?,
        fluid: fluid?,
        sealed: sealed?,
        clean: clean?,
        opened_on,
    })
}
