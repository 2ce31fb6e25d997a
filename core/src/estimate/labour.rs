//! What work costs, and who pays for the wait.

use super::terms::{Fields, Terms, price, step_fits, taxes};
use crate::check::Job;
use crate::document::{Node, Reader};
use crate::error::{ErrorKind, Fault};
use crate::money::Price;
use crate::procedure::above_zero;
use crate::quantity::{Amount, Kind};
use crate::word::words;
use alloc::string::String;
use alloc::vec::Vec;
use serde::Serialize;

words! {
    /// What of the work is billed.
    pub enum Billed {
        /// The time with hands on the vehicle.
        HandsOn = "hands_on",
        /// The time the bay is occupied.
        Bay = "bay",
        /// A price that time does not change.
        Fixed = "fixed",
    }
}

words! {
    /// Who pays for the time the bay is occupied and nobody works.
    pub enum PaidBy {
        /// The customer, on a line of its own.
        Customer = "customer",
        /// The shop.
        Shop = "shop",
    }
}

/// Work, and what of it is billed.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[non_exhaustive]
pub struct LabourPrice {
    /// The shop's name for it.
    pub id: String,
    /// The jobs it is for; empty for looking for a leak.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub jobs: Vec<Job>,
    /// Time with hands on the vehicle. Absent: the sheet's.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub hands_on: Option<Amount>,
    /// Time the bay is occupied. Absent: the sheet's.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub bay: Option<Amount>,
    /// Time after which the customer is told to come back.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub promised: Option<Amount>,
    /// What is billed.
    pub billed: Billed,
    /// For one unit of time, where time is billed.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub rate: Option<Price>,
    /// The fixed price.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub price: Option<Price>,
    /// The step in which time is billed, begun steps in all. Absent: as it is, to four decimals of the rate's unit.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub step: Option<Amount>,
    /// The taxes it bears.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub taxes: Vec<String>,
}

/// Who pays for the wait: bay time less hands-on time.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[non_exhaustive]
pub struct WaitPolicy {
    /// Who.
    pub paid_by: PaidBy,
    /// For one unit of time, where the customer pays.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub rate: Option<Price>,
    /// The taxes it bears.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub taxes: Vec<String>,
}

pub(super) fn jobs(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Vec<Job>> {
    reader.list(node, |reader, node| reader.word(node, Job::WORDS))
}

/// Labour of jobs, or of looking for a leak, whose time no sheet states.
pub(super) fn work(
    reader: &mut Reader<'_>,
    node: &Node<'_>,
    terms: &Terms<'_>,
    of_jobs: bool,
) -> Option<LabourPrice> {
    const OF_JOBS: Fields = &[
        "id", "jobs", "hands_on", "bay", "promised", "billed", "rate", "price", "step", "taxes",
    ];
    const OF_SEARCH: Fields = &[
        "id", "hands_on", "bay", "billed", "rate", "price", "step", "taxes",
    ];
    let object = &reader.object(node, if of_jobs { OF_JOBS } else { OF_SEARCH })?;
    let id = reader.required(object, "id", Reader::text);
    let jobs = if of_jobs {
        reader.required(object, "jobs", jobs)
    } else {
        Some(Vec::new())
    };
    let mut time = |name| {
        reader.optional(object, name, |reader, node| {
            reader.amount_from_zero(node, Kind::Time)
        })
    };
    let (hands_on, bay, promised) = (time("hands_on"), time("bay"), time("promised"));
    let billed = reader.required(object, "billed", |reader, node| {
        reader.word(node, Billed::WORDS)
    });
    let rate = reader.optional(object, "rate", |reader, node| {
        price(reader, node, terms, Some(Kind::Time))
    });
    let fixed = reader.optional(object, "price", |reader, node| {
        price(reader, node, terms, None)
    });
    let step = reader.optional(object, "step", |reader, node| {
        above_zero(reader, node, Kind::Time)
    });
    let taxes = taxes(reader, object, terms);
    let billed = billed?;
    let needed: &[&'static str] = match billed {
        Billed::Fixed => &["price"],
        Billed::HandsOn if of_jobs => &["rate"],
        Billed::Bay if of_jobs => &["rate"],
        Billed::HandsOn => &["rate", "hands_on"],
        Billed::Bay => &["rate", "bay"],
    };
    for name in needed.iter().filter(|name| object.get(name).is_none()) {
        let hint = "what is billed needs it";
        reader.note_at(*name, Fault::new(ErrorKind::MissingField).hint(hint));
    }
    step_fits(reader, step, rate);
    Some(LabourPrice {
        id: id?,
        jobs: jobs?,
        hands_on,
        bay,
        promised,
        billed,
        rate,
        price: fixed,
        step,
        taxes,
    })
}

pub(super) fn wait(
    reader: &mut Reader<'_>,
    node: &Node<'_>,
    terms: &Terms<'_>,
) -> Option<WaitPolicy> {
    let object = &reader.object(node, &["paid_by", "rate", "taxes"])?;
    let paid_by = reader.required(object, "paid_by", |reader, node| {
        reader.word(node, PaidBy::WORDS)
    });
    let rate = reader.optional(object, "rate", |reader, node| {
        price(reader, node, terms, Some(Kind::Time))
    });
    let taxes = taxes(reader, object, terms);
    let paid_by = paid_by?;
    if paid_by == PaidBy::Customer && object.get("rate").is_none() {
        let hint = "the customer pays for the wait, so it needs its rate";
        reader.note_at("rate", Fault::new(ErrorKind::MissingField).hint(hint));
    }
    Some(WaitPolicy {
        paid_by,
        rate,
        taxes,
    })
}
