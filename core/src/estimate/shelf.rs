//! Whether what is on the shelf is enough for the worst case.

use super::asked::{Asked, Rest, Stock};
use super::fluid_prices::FluidPrices;
use super::invoice::Opened;
use super::price_list::PriceList;
use crate::check::Finding;
use crate::error::{Error, ErrorKind, Fault};
use crate::procedure::Severity;
use crate::quantity::{Amount, Rounding, Unit};
use crate::volume::{self, Container, OpenedDefect, containers_for};
use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;
use jiff::civil::Date;
use serde::Serialize;

/// What the worst case would take off the shelf.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct Shelf {
    /// What the worst case still needs (volume).
    pub need: Amount,
    /// How much is missing: do not start.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub short: Option<Amount>,
    /// The fewest full containers to open.
    pub containers: Vec<Opened>,
    /// The opened containers to use up first.
    pub opened: Vec<String>,
    /// What to take from the drum (volume).
    #[serde(skip_serializing_if = "Option::is_none")]
    pub bulk: Option<Amount>,
    /// What is left over of it all (volume).
    #[serde(skip_serializing_if = "Option::is_none")]
    pub left: Option<Amount>,
    /// Opened containers that are not used, and why not.
    pub unused: Vec<Unused>,
}

/// An opened container that is not used.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct Unused {
    /// The shop's name for it.
    pub name: String,
    /// Why not; nothing where the shop uses none.
    pub reasons: Vec<OpenedDefect>,
}

/// What the shelf says to a need, its findings and its cautions.
pub(super) struct Told {
    pub(super) shelf: Shelf,
    pub(super) finding: Option<Finding>,
    pub(super) cautions: &'static [&'static str],
}

/// Holds a need of one fluid, in exact counts of volume, against the shelf.
///
/// # Errors
/// `unresolved` for a container that the price list does not know, with its path.
pub(super) fn shelf(
    prices: &PriceList,
    own: &FluidPrices,
    stock: &Stock,
    day: Option<Date>,
    need: i128,
    unit: Unit,
) -> Result<Told, Error> {
    known(prices, stock)?;
    let policy = prices.opened();
    let uses_opened = policy.is_some_and(|policy| policy.usable);
    let most_days = policy.and_then(|policy| policy.max_age_days);
    let sizes: Vec<Container<'_>> = own
        .containers
        .iter()
        .map(|container| Container {
            name: &container.id,
            volume: container.size,
            price: None,
            stock: Some(in_stock(stock, &container.id)),
        })
        .collect();
    let opened: Vec<volume::Opened<'_>> = stock
        .opened
        .iter()
        .filter(|_| uses_opened)
        .map(|rest| volume::Opened {
            name: &rest.name,
            volume: rest.rest,
            same_fluid: rest.fluid == own.fluid,
            sealed: rest.sealed,
            clean: rest.clean,
            dated: rest.opened_on.is_some(),
            within_date: is_within(rest, day, most_days),
        })
        .collect();
    let plans = containers_for(need, unit, &sizes, &opened, stock.bulk)?;
    let need = Amount::from_count(need, unit, 6, Rounding::Ceiling)?;
    let plan = plans.fewest.as_ref();
    let not_used = plans.opened.iter().filter(|used| !used.usable);
    let mut unused: Vec<Unused> = not_used
        .map(|used| Unused {
            name: used.name.into(),
            reasons: used.reasons.clone(),
        })
        .collect();
    unused.extend(
        stock
            .opened
            .iter()
            .filter(|_| !uses_opened)
            .map(|rest| Unused {
                name: rest.name.clone(),
                reasons: Vec::new(),
            }),
    );
    let finding = plans.short.map(|short| {
        let finding = Finding::new("stock_short", Severity::Stop);
        finding.with("need", need).with("short", short)
    });
    let containers = plan.map_or(Vec::new(), |plan| {
        let counted = plan.containers.iter();
        let opened = counted.map(|counted| Opened {
            container: counted.name.into(),
            count: counted.count,
        });
        opened.collect()
    });
    Ok(Told {
        finding,
        cautions: plans.cautions,
        shelf: Shelf {
            need,
            short: plans.short,
            containers,
            opened: plan.map_or(Vec::new(), |plan| {
                plan.opened.iter().map(ToString::to_string).collect()
            }),
            bulk: plan.and_then(|plan| plan.bulk),
            left: plan.map(|plan| plan.left),
            unused,
        },
    })
}

/// Whether every full container is one that the list knows.
fn known(prices: &PriceList, stock: &Stock) -> Result<(), Error> {
    let unknown = stock
        .full
        .iter()
        .enumerate()
        .filter(|(_, full)| prices.container(&full.container).is_none());
    let faults = unknown.map(|(place, full)| {
        let known = prices.fluids().iter().flat_map(|own| &own.containers);
        Fault::new(ErrorKind::Unresolved)
            .at(format!("stock.full[{place}].container"))
            .got(&full.container)
            .allowed(known.map(|own| own.id.clone()))
            .hint("give the container its size and price in the price list")
    });
    Error::from_faults(faults.collect()).map_or(Ok(()), Err)
}

fn in_stock(stock: &Stock, container: &str) -> u64 {
    let own = stock.full.iter().filter(|full| full.container == container);
    own.fold(0, |sum, full| sum.saturating_add(full.count))
}

/// Whether a container was opened not too long before a day. Where a limit is set and the day is not known, or lies before
/// it was opened, that cannot be told.
fn is_within(rest: &Rest, day: Option<Date>, most_days: Option<u64>) -> Option<bool> {
    let age = |opened: Date, day: Date| {
        let age = opened.until(day).ok()?.get_days();
        u64::try_from(age).ok()
    };
    match (rest.opened_on, day) {
        (Some(opened), Some(day)) => {
            age(opened, day).map(|age| most_days.is_none_or(|most| age <= most))
        }
        _ => most_days.is_none().then_some(true),
    }
}

impl Asked {
    /// The day opened containers are held against.
    pub(super) fn day(&self, newest: Option<Date>) -> Option<Date> {
        self.on.or(newest)
    }
}
