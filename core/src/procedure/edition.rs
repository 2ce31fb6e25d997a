//! One edition of one procedure: the sheet.

use super::closing::{Closing, Labour};
use super::conditions::Conditions;
use super::method::{Defect, Method, Sign};
use super::read::{amounts, volume, volume_from_zero};
use crate::document::{Ext, Node, Reader, day};
use crate::error::{ErrorKind, Fault};
use crate::quantity::{Amount, Kind};
use crate::word::words;
use alloc::string::String;
use alloc::vec::Vec;
use core::cmp::Ordering;
use jiff::civil::Date;
use serde::Serialize;

/// One edition of one procedure.
#[derive(Debug, Clone, Serialize)]
#[non_exhaustive]
pub struct Procedure {
    /// The procedure's name within the pack; its editions share it.
    pub id: String,
    /// The edition, from 1.
    pub edition: u32,
    /// The edition this one replaces.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub supersedes: Option<u32>,
    /// The first day it is in force. Absent: always.
    #[serde(serialize_with = "day", skip_serializing_if = "Option::is_none")]
    pub effective: Option<Date>,
    /// The unit it is for.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub unit: Option<String>,
    /// The vehicles that carry the unit.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub fits: Vec<String>,
    /// Where the values come from.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub source: Option<String>,
    /// The fluid it takes, by the pack's name for it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub fluid: Option<String>,
    /// How much the unit holds.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub capacity: Option<Capacity>,
    /// How the level is found.
    pub method: Method,
    /// What must hold while it is read.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub conditions: Option<Conditions>,
    /// How fluid is added.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub refill: Option<Refill>,
    /// From which shortage on a leak must be looked for.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub leak_limit: Option<LeakLimit>,
    /// How the plug is closed.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub closing: Option<Closing>,
    /// Cautions of the sheet's own, shown beside the library's.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub cautions: Vec<Caution>,
    /// The time the work takes.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub labour: Option<Labour>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(crate) ext: Option<Ext>,
    #[serde(skip)]
    pub(crate) digest: String,
}

/// How much the unit holds.
#[derive(Debug, Clone, Serialize)]
#[non_exhaustive]
pub struct Capacity {
    /// Empty and dry to the correct level (volume).
    #[serde(skip_serializing_if = "Option::is_none")]
    pub total: Option<Amount>,
    /// After a drain, to the correct level (volume).
    #[serde(skip_serializing_if = "Option::is_none")]
    pub refill: Option<Amount>,
}

/// How fluid is added.
#[derive(Debug, Clone, Serialize)]
#[non_exhaustive]
pub struct Refill {
    /// The largest single pour (volume).
    #[serde(skip_serializing_if = "Option::is_none")]
    pub step: Option<Amount>,
    /// The smallest pour worth measuring (volume). Absent: a tenth of the limit's unit, litre or quart.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub least: Option<Amount>,
    /// Past this total with nothing coming, the opening is doubted (volume). Absent: a quarter of the refill capacity.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub stop: Option<Amount>,
}

words! {
    /// Which count is held against the leak limit.
    pub enum Counts {
        /// What was added, less what came out again.
        Net = "net",
        /// What was added.
        Gross = "gross",
    }
}

/// From which shortage on a leak must be looked for.
#[derive(Debug, Clone, Serialize)]
#[non_exhaustive]
pub struct LeakLimit {
    /// More than this (volume); excludes `at_least`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub more_than: Option<Amount>,
    /// This or more (volume); excludes `more_than`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub at_least: Option<Amount>,
    /// How soft the sheet says the limit is, either way (volume). Absent: not at all.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub about: Option<Amount>,
    /// Which count is used. Absent: net.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub counts: Option<Counts>,
    /// The same limit as the sheet prints it in other units; never decided on.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub printed: Vec<Amount>,
}

impl LeakLimit {
    /// The governing print.
    #[must_use]
    pub fn limit(&self) -> Option<Amount> {
        self.more_than.or(self.at_least)
    }

    /// Whether a count at this place relative to the limit is past it.
    #[must_use]
    pub fn passed_at(&self, place: Ordering) -> bool {
        match place {
            Ordering::Greater => true,
            Ordering::Equal => self.at_least.is_some(),
            Ordering::Less => false,
        }
    }
}

words! {
    /// The acts that a gate is asked about.
    pub enum Act {
        /// Opening the plug.
        Open = "open",
        /// Pouring fluid in.
        Pour = "pour",
        /// Closing the plug for good.
        Close = "close",
        /// Stopping the engine.
        StopEngine = "stop_engine",
    }
}

/// A caution of the sheet's own.
#[derive(Debug, Clone, Serialize)]
#[non_exhaustive]
pub struct Caution {
    /// Its stable name.
    pub id: String,
    /// What it says, in the language of the pack.
    pub text: String,
    /// The acts it belongs to. Empty: all.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub acts: Vec<Act>,
}

impl Procedure {
    /// SHA-256 of the canonical form of this edition.
    #[must_use]
    pub fn digest(&self) -> &str {
        &self.digest
    }

    /// Which way a defect misleads on this sheet.
    #[must_use]
    pub fn sign(&self, defect: Defect) -> Sign {
        self.method.sign(defect)
    }
}

pub(super) fn capacity(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Capacity> {
    let object = reader.object(node, &["total", "refill"])?;
    let total = reader.optional(&object, "total", volume);
    let refill = reader.optional(&object, "refill", volume);
    Some(Capacity { total, refill })
}

pub(super) fn refill(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Refill> {
    let object = reader.object(node, &["step", "least", "stop"])?;
    let step = reader.optional(&object, "step", volume);
    let least = reader.optional(&object, "least", volume);
    let stop = reader.optional(&object, "stop", volume);
    Some(Refill { step, least, stop })
}

pub(super) fn leak_limit(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<LeakLimit> {
    let object = reader.object(
        node,
        &["more_than", "at_least", "about", "counts", "printed"],
    )?;
    let more_than = reader.optional(&object, "more_than", volume);
    let at_least = reader.optional(&object, "at_least", volume);
    let about = reader.optional(&object, "about", volume_from_zero);
    let counts = reader.optional(&object, "counts", |reader, node| {
        reader.word(node, Counts::WORDS)
    });
    let printed = reader.optional(&object, "printed", |reader, node| {
        amounts(reader, node, Kind::Volume)
    });
    if object.get("more_than").is_some() == object.get("at_least").is_some() {
        let hint = "state exactly one of them";
        reader.note(
            Fault::new(ErrorKind::Conflict)
                .allowed(["more_than", "at_least"])
                .hint(hint),
        );
    }
    Some(LeakLimit {
        more_than,
        at_least,
        about,
        counts,
        printed: printed.unwrap_or_default(),
    })
}

pub(super) fn caution(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Caution> {
    let object = reader.object(node, &["id", "text", "acts"])?;
    let id = reader.required(&object, "id", Reader::slug);
    let text = reader.required(&object, "text", Reader::text);
    let acts = reader.optional(&object, "acts", |reader, node| {
        reader.list(node, |reader, node| reader.word(node, Act::WORDS))
    });
    Some(Caution {
        id: id?,
        text: text?,
        acts: acts.unwrap_or_default(),
    })
}
