//! What fluid costs, and what of it is billed.

use super::terms::{Fields, Terms, many, price, taxes};
use crate::document::{Node, Object, Reader};
use crate::error::{ErrorKind, Fault};
use crate::money::Price;
use crate::procedure::{volume, volume_from_zero};
use crate::quantity::{Amount, Kind};
use crate::word::words;
use alloc::string::{String, ToString};
use alloc::vec::Vec;
use serde::Serialize;

words! {
    /// What of the fluid is billed.
    pub enum FluidPolicy {
        /// Each container that has to be opened, at its price.
        WholeContainer = "whole_container",
        /// What went in, at the `used` price.
        Used = "used",
        /// What went in, at the `bulk` price.
        Bulk = "bulk",
    }
}

/// The prices of a fluid, and what of it is billed.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[non_exhaustive]
pub struct FluidPrices {
    /// The pack's name for it.
    pub fluid: String,
    /// The containers it is bought in.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub containers: Vec<ContainerPrice>,
    /// For one unit of volume out of containers.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub used: Option<Price>,
    /// For one unit of volume out of the drum.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub bulk: Option<Price>,
    /// What is billed.
    pub billing: FluidBilling,
    /// The taxes it bears.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub taxes: Vec<String>,
}

/// What of a fluid is billed.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[non_exhaustive]
pub struct FluidBilling {
    /// By which rule.
    pub policy: FluidPolicy,
    /// The least that is billed once any is used (volume). Absent: none.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub least: Option<Amount>,
    /// The step in which it is billed, begun steps in all (volume). Absent: as it was used, to six decimals.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub step: Option<Amount>,
}

/// A container of a fluid.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[non_exhaustive]
pub struct ContainerPrice {
    /// The shop's name for it.
    pub id: String,
    /// What one holds (volume).
    pub size: Amount,
    /// For one.
    pub price: Price,
}

/// Whether containers that were opened on another job are used.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[non_exhaustive]
pub struct OpenedPolicy {
    /// Whether they are.
    pub usable: bool,
    /// How many days after they were opened. Absent: without an end.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub max_age_days: Option<u64>,
}

pub(super) fn fluid(
    reader: &mut Reader<'_>,
    node: &Node<'_>,
    terms: &Terms<'_>,
) -> Option<FluidPrices> {
    const MEMBERS: Fields = &["fluid", "containers", "used", "bulk", "billing", "taxes"];
    let object = &reader.object(node, MEMBERS)?;
    let fluid = reader.required(object, "fluid", Reader::text);
    let containers = many(reader, object, "containers", |reader, node| {
        container(reader, node, terms)
    });
    let mut by_volume = |name| {
        reader.optional(object, name, |reader, node| {
            price(reader, node, terms, Some(Kind::Volume))
        })
    };
    let (used, bulk) = (by_volume("used"), by_volume("bulk"));
    let billing = reader.required(object, "billing", billing);
    let taxes = taxes(reader, object, terms);
    let billing = billing?;
    let (member, own) = match billing.policy {
        FluidPolicy::WholeContainer => ("containers", None),
        FluidPolicy::Used => ("used", used),
        FluidPolicy::Bulk => ("bulk", bulk),
    };
    let priced = object.get(member).is_some_and(|node| match member {
        "containers" => !node.items().is_empty(),
        _ => true,
    });
    if !priced {
        let hint = "the policy that is billed by needs its price";
        let fault = Fault::new(ErrorKind::MissingField).hint(hint);
        reader.note_at(member, fault);
    }
    steps_fit(reader, object, &billing, own);
    Some(FluidPrices {
        fluid: fluid?,
        containers,
        used,
        bulk,
        billing,
        taxes,
    })
}

/// Whether the least and the step can be billed: in whole containers they cannot, else in the unit of the price.
fn steps_fit(
    reader: &mut Reader<'_>,
    object: &Object<'_, '_>,
    billing: &FluidBilling,
    price: Option<Price>,
) {
    let unit = price.and_then(Price::per);
    for (name, amount) in [("least", billing.least), ("step", billing.step)] {
        let Some(amount) = amount else { continue };
        let hint = match (billing.policy, unit) {
            (FluidPolicy::WholeContainer, _) => "whole containers have no least and no step",
            (_, Some(unit)) if amount.to_exact(unit).is_none() => {
                "state it in the unit of the price"
            }
            _ => continue,
        };
        let fault = Fault::new(ErrorKind::Conflict).got(&amount.to_string());
        reader.optional(object, "billing", |reader, _| {
            reader.note_at(name, fault.hint(hint));
            Some(())
        });
    }
}

fn billing(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<FluidBilling> {
    let object = reader.object(node, &["policy", "least", "step"])?;
    let policy = reader.required(&object, "policy", |reader, node| {
        reader.word(node, FluidPolicy::WORDS)
    });
    let least = reader.optional(&object, "least", volume_from_zero);
    let step = reader.optional(&object, "step", volume);
    Some(FluidBilling {
        policy: policy?,
        least,
        step,
    })
}

fn container(
    reader: &mut Reader<'_>,
    node: &Node<'_>,
    terms: &Terms<'_>,
) -> Option<ContainerPrice> {
    let object = &reader.object(node, &["id", "size", "price"])?;
    let id = reader.required(object, "id", Reader::text);
    let size = reader.required(object, "size", volume);
    let price = reader.required(object, "price", |reader, node| {
        price(reader, node, terms, None)
    });
    Some(ContainerPrice {
        id: id?,
        size: size?,
        price: price?,
    })
}

pub(super) fn opened(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<OpenedPolicy> {
    let object = reader.object(node, &["usable", "max_age_days"])?;
    let usable = reader.required(&object, "usable", Reader::flag);
    let max_age_days = reader.optional(&object, "max_age_days", |reader, node| {
        reader.whole(node, 0)
    });
    Some(OpenedPolicy {
        usable: usable?,
        max_age_days,
    })
}
