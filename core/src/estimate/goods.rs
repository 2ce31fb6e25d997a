//! What parts, supplies and disposal cost.

use super::labour::jobs;
use super::terms::{Terms, price, step_fits, taxes};
use crate::check::Job;
use crate::document::{Node, Reader};
use crate::money::Price;
use crate::procedure::{Threadlocker, volume};
use crate::quantity::{Amount, Kind};
use crate::word::words;
use alloc::string::String;
use alloc::vec::Vec;
use serde::Serialize;

words! {
    /// Where what came out goes.
    pub enum Stream {
        /// Used oil.
        Oil = "oil",
        /// Oil with coolant or with a foreign fluid in it, kept apart.
        Mixed = "mixed",
    }
}

/// A part.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[non_exhaustive]
pub struct PartPrice {
    /// The shop's name for it.
    pub id: String,
    /// The thread it fits, as the sheet prints it. Absent: any.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub thread: Option<String>,
    /// For one.
    pub price: Price,
    /// The taxes it bears.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub taxes: Vec<String>,
}

/// Threadlocker for one plug.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[non_exhaustive]
pub struct ThreadlockerPrice {
    /// The shop's name for it.
    pub id: String,
    /// Its strength.
    pub strength: Threadlocker,
    /// For one plug.
    pub price: Price,
    /// The taxes it bears.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub taxes: Vec<String>,
}

/// What every job uses up.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[non_exhaustive]
pub struct SupplyPrice {
    /// The shop's name for it.
    pub id: String,
    /// The jobs it is billed on. Empty: all.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub jobs: Vec<Job>,
    /// For one job.
    pub price: Price,
    /// The taxes it bears.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub taxes: Vec<String>,
}

/// What disposal costs.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[non_exhaustive]
pub struct DisposalPrice {
    /// Where it goes.
    pub stream: Stream,
    /// For one unit of volume.
    pub price: Price,
    /// The step in which it is billed, begun steps in all (volume). Absent: as it came out, to six decimals.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub step: Option<Amount>,
    /// The taxes it bears.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub taxes: Vec<String>,
}

pub(super) fn part(
    reader: &mut Reader<'_>,
    node: &Node<'_>,
    terms: &Terms<'_>,
) -> Option<PartPrice> {
    let object = &reader.object(node, &["id", "thread", "price", "taxes"])?;
    let id = reader.required(object, "id", Reader::text);
    let thread = reader.optional(object, "thread", Reader::text);
    let price = reader.required(object, "price", |reader, node| {
        price(reader, node, terms, None)
    });
    let taxes = taxes(reader, object, terms);
    Some(PartPrice {
        id: id?,
        thread,
        price: price?,
        taxes,
    })
}

pub(super) fn locker(
    reader: &mut Reader<'_>,
    node: &Node<'_>,
    terms: &Terms<'_>,
) -> Option<ThreadlockerPrice> {
    let object = &reader.object(node, &["id", "strength", "price", "taxes"])?;
    let id = reader.required(object, "id", Reader::text);
    let strength = reader.required(object, "strength", |reader, node| {
        let strengths = Threadlocker::WORDS.get(1..).unwrap_or_default();
        reader.word(node, strengths)
    });
    let price = reader.required(object, "price", |reader, node| {
        price(reader, node, terms, None)
    });
    let taxes = taxes(reader, object, terms);
    Some(ThreadlockerPrice {
        id: id?,
        strength: strength?,
        price: price?,
        taxes,
    })
}

pub(super) fn supply(
    reader: &mut Reader<'_>,
    node: &Node<'_>,
    terms: &Terms<'_>,
) -> Option<SupplyPrice> {
    let object = &reader.object(node, &["id", "jobs", "price", "taxes"])?;
    let id = reader.required(object, "id", Reader::text);
    let jobs = reader.optional(object, "jobs", jobs);
    let price = reader.required(object, "price", |reader, node| {
        price(reader, node, terms, None)
    });
    let taxes = taxes(reader, object, terms);
    Some(SupplyPrice {
        id: id?,
        jobs: jobs.unwrap_or_default(),
        price: price?,
        taxes,
    })
}

pub(super) fn disposed(
    reader: &mut Reader<'_>,
    node: &Node<'_>,
    terms: &Terms<'_>,
) -> Option<DisposalPrice> {
    let object = &reader.object(node, &["stream", "price", "step", "taxes"])?;
    let stream = reader.required(object, "stream", |reader, node| {
        reader.word(node, Stream::WORDS)
    });
    let price = reader.required(object, "price", |reader, node| {
        price(reader, node, terms, Some(Kind::Volume))
    });
    let step = reader.optional(object, "step", volume);
    step_fits(reader, step, price);
    let taxes = taxes(reader, object, terms);
    Some(DisposalPrice {
        stream: stream?,
        price: price?,
        step,
        taxes,
    })
}
