//! The containers that were opened for what went in: those that were named, then the cheapest.

use super::fluid_prices::{ContainerPrice, FluidPolicy, FluidPrices};
use super::lines::pieces;
use super::price_list::PriceList;
use super::work::Poured;
use crate::error::{Error, ErrorKind, Fault};
use crate::money::Money;
use crate::quantity::{Amount, Rounding, Unit};
use crate::volume::{Container, containers_for};
use alloc::vec::Vec;

/// The containers that hold what went in.
pub(super) struct Opening<'p> {
    pub(super) containers: Vec<(&'p ContainerPrice, u64)>,
    /// What is left in them (volume).
    pub(super) left: Amount,
}

/// As many of each named container as hold what came out of it; then, where whole containers are billed, the cheapest that hold
/// what those do not. Elsewhere nobody opened those, so there is no telling.
pub(super) fn plan<'p>(
    prices: &PriceList,
    own: &'p FluidPrices,
    poured: &Poured<'_>,
) -> Result<Option<Opening<'p>>, Error> {
    let mut containers: Vec<(&ContainerPrice, u64)> = Vec::new();
    let mut held = 0_i128;
    for container in &own.containers {
        let named = poured.containers.iter();
        let named = named.filter(|(name, _)| *name == container.id);
        let out = named.fold(0_i128, |sum, (_, count)| sum.saturating_add(*count));
        let size = container.size.count().unwrap_or(0);
        let begun = out.checked_rem(size).is_some_and(|left| left > 0);
        let count = out.checked_div(size).unwrap_or(0);
        let count = count.saturating_add(begun.into()).max(0);
        held = held.saturating_add(count.saturating_mul(size));
        containers.push((container, u64::try_from(count).unwrap_or(u64::MAX)));
    }
    let unit = own
        .containers
        .first()
        .map_or(Unit::Litre, |own| own.size.unit());
    let rest = poured.count.saturating_sub(held);
    if rest > 0 && own.billing.policy != FluidPolicy::WholeContainer {
        return Ok(None);
    }
    if rest > 0 {
        for (place, count) in cheapest(prices, own, rest, unit)
            .map_err(|error| at(error, &poured.path))?
            .into_iter()
            .enumerate()
        {
            if let Some((container, all)) = containers.get_mut(place) {
                let size = container.size.count().unwrap_or(0);
                held = held.saturating_add(size.saturating_mul(count.into()));
                *all = all.saturating_add(count);
            }
        }
    }
    containers.retain(|(_, count)| *count > 0);
    let left = held.saturating_sub(poured.count);
    let left = Amount::from_count(left, unit, 9, Rounding::Floor)?;
    Ok(Some(Opening { containers, left }))
}

/// Faults of what is worked out, where the journal or the sheet asks for it.
fn at(error: Error, path: &str) -> Error {
    let faults = error.into_faults().into_iter();
    let faults = faults.map(|fault| fault.at(path)).collect();
    Error::from_faults(faults).unwrap_or_else(|| Fault::new(ErrorKind::Internal).into())
}

/// How many of each container, in the order of the list, hold a volume for the least money.
fn cheapest(
    prices: &PriceList,
    own: &FluidPrices,
    count: i128,
    unit: Unit,
) -> Result<Vec<u64>, Error> {
    let mut sizes = Vec::with_capacity(own.containers.len());
    for container in &own.containers {
        let cost: Money = container.price.of(&pieces(1)?, prices.mode())?;
        sizes.push(Container {
            name: &container.id,
            volume: container.size,
            price: Some(cost.minor_units()),
            stock: None,
        });
    }
    let plans = containers_for(count, unit, &sizes, &[], None)?;
    // There are always enough of each size, so there is a plan.
    let missing = || Fault::new(ErrorKind::Internal).at("prices.fluids");
    let plan = plans.cheapest.ok_or_else(missing)?;
    let of = |own: &ContainerPrice| {
        let counted = plan.containers.iter();
        let counted = counted.filter(|counted| counted.name == own.id);
        counted.fold(0_u64, |sum, counted| sum.saturating_add(counted.count))
    };
    Ok(own.containers.iter().map(of).collect())
}
