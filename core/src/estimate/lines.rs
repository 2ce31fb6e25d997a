//! Lines of money, each with its cause, and what they come to.

use super::price_list::PriceList;
use crate::error::Error;
use crate::money::{Money, Price, TaxRate, Taxable, totals};
use crate::quantity::{Amount, Rounding, Unit};
use crate::word::words;
use alloc::string::{String, ToString};
use alloc::vec::Vec;
use serde::{Serialize, Serializer};

words! {
    /// What a line is for.
    pub enum What {
        /// The work of the job.
        Labour = "labour",
        /// The time the bay was occupied and nobody worked.
        Wait = "wait",
        /// Looking for a leak.
        LeakSearch = "leak_search",
        /// Fluid that went in.
        Fluid = "fluid",
        /// A new plug.
        Plug = "plug",
        /// A new seal.
        Seal = "seal",
        /// Threadlocker for the plug.
        Threadlocker = "threadlocker",
        /// What every job uses up.
        Supplies = "supplies",
        /// Disposal of what came out.
        Disposal = "disposal",
    }
}

words! {
    /// The rule that put a line there.
    pub enum Policy {
        /// Each container that had to be opened.
        WholeContainer = "whole_container",
        /// What went in, out of containers.
        Used = "used",
        /// What went in, out of the drum.
        Bulk = "bulk",
        /// The time with hands on the vehicle.
        HandsOn = "hands_on",
        /// The time the bay is occupied.
        Bay = "bay",
        /// A fixed price.
        Fixed = "fixed",
        /// The customer pays for the wait.
        Customer = "customer",
        /// The sheet asks for it at each closing.
        Sheet = "sheet",
        /// It was replaced.
        Replaced = "replaced",
        /// On every such job.
        EachJob = "each_job",
        /// By the volume that came out.
        VolumeOut = "volume_out",
    }
}

/// Why a line is there.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct Cause {
    /// The rule.
    pub policy: Policy,
    /// The entries of the journal it rests on, by `seq`; none for what is assumed, or due on every such job.
    pub entries: Vec<u64>,
}

/// A line of money.
///
/// The net is the price times the quantity, rounded once, so that whoever reads the line can check it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct Line {
    /// What it is for: the stable id.
    pub id: What,
    /// What of that, by the price list's name: of a container, a fluid, a part, work, a stream.
    pub item: String,
    /// Why it is there.
    pub cause: Cause,
    /// How much, in the unit of the price; pieces are a ratio, written as a plain number.
    #[serde(serialize_with = "quantity")]
    pub quantity: Amount,
    /// That unit by UN/ECE Recommendation 20; `C62` for pieces.
    pub unit_code: &'static str,
    /// For one of the unit.
    pub price: Price,
    /// Without tax.
    pub net: Money,
    /// The taxes it bears, by the price list's names.
    pub taxes: Vec<String>,
}

fn quantity<S: Serializer>(amount: &Amount, serializer: S) -> Result<S::Ok, S::Error> {
    serializer.collect_str(&Quantity(amount))
}

/// A quantity as a line writes it: pieces without a unit.
pub(crate) struct Quantity<'q>(pub(crate) &'q Amount);

impl core::fmt::Display for Quantity<'_> {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        let text = self.0.to_string();
        let piece = (self.0.unit() == Unit::One).then(|| text.split(' ').next());
        f.write_str(piece.flatten().unwrap_or(&text))
    }
}

impl Line {
    /// How much, as the line writes it: `0.75 L`, `2`.
    #[must_use]
    pub fn quantity_text(&self) -> String {
        Quantity(&self.quantity).to_string()
    }
}

/// What lines come to.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct Total {
    /// The lines without tax.
    pub net: Money,
    /// Each tax that a line bears, in the order of the price list.
    pub taxes: Vec<TaxSum>,
    /// All of it.
    pub total: Money,
}

/// What one tax comes to.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct TaxSum {
    /// Its name.
    pub id: String,
    /// Its rate (ratio).
    pub rate: Amount,
    /// The lines that bear it, without tax.
    pub base: Money,
    /// The tax.
    pub tax: Money,
}

/// Lines under one price list, in the order they were put.
#[derive(Debug)]
pub(super) struct Lines<'p> {
    prices: &'p PriceList,
    pub(super) lines: Vec<Line>,
}

impl<'p> Lines<'p> {
    pub(super) fn new(prices: &'p PriceList) -> Self {
        Lines {
            prices,
            // As many as most jobs have.
            lines: Vec::with_capacity(8),
        }
    }

    /// Puts a line, in the unit of its price.
    ///
    /// # Errors
    /// `out_of_range` for more money than a sum holds.
    pub(super) fn put(
        &mut self,
        (id, item): (What, &str),
        cause: Cause,
        quantity: Amount,
        price: Price,
        taxes: &[String],
    ) -> Result<(), Error> {
        let net = price.of(&quantity, self.prices.mode())?;
        self.lines.push(Line {
            id,
            item: item.into(),
            cause,
            unit_code: quantity.unit().rec20().unwrap_or_default(),
            quantity,
            price,
            net,
            taxes: taxes.to_vec(),
        });
        Ok(())
    }

    /// What they come to.
    ///
    /// # Errors
    /// `out_of_range` for more money than a sum holds.
    pub(super) fn total(&self) -> Result<Total, Error> {
        total(self.prices, &self.lines)
    }
}

fn total(prices: &PriceList, lines: &[Line]) -> Result<Total, Error> {
    let names = lines.iter().flat_map(|line| &line.taxes);
    let names: Vec<&str> = names.map(String::as_str).collect();
    let mut left = names.as_slice();
    let taxable = lines.iter().map(|line| {
        let split = left.split_at_checked(line.taxes.len());
        let (taxes, rest) = split.unwrap_or_default();
        left = rest;
        Taxable {
            net: line.net,
            taxes,
        }
    });
    let taxable: Vec<Taxable<'_>> = taxable.collect();
    let rates: Vec<TaxRate<'_>> = prices
        .taxes()
        .iter()
        .map(|tax| TaxRate {
            id: &tax.id,
            rate: tax.rate,
        })
        .collect();
    let told = totals(prices.currency(), &taxable, &rates, prices.rounding())?;
    let taxes = told.taxes.iter().map(|tax| TaxSum {
        id: tax.id.into(),
        rate: tax.rate,
        base: tax.base,
        tax: tax.tax,
    });
    Ok(Total {
        net: told.net,
        taxes: taxes.collect(),
        total: told.total,
    })
}

/// So many pieces.
pub(super) fn pieces(count: u64) -> Result<Amount, Error> {
    Amount::new(i64::try_from(count).unwrap_or(i64::MAX), 0, Unit::One)
}

/// A count of a kind as it is billed: in a unit, begun steps in all, no less than the least.
///
/// Without a step it ends at `places` decimals, to the nearest.
pub(super) fn in_steps(
    count: i128,
    unit: Unit,
    least: Option<Amount>,
    step: Option<Amount>,
    places: u8,
) -> Result<Amount, Error> {
    let least = least.and_then(|least| least.count()).filter(|_| count > 0);
    let count = count.max(least.unwrap_or(0));
    let step = step.and_then(|step| Some((step.to_exact(unit)?, step.count()?)));
    let Some((step, size)) = step.filter(|(_, size)| *size > 0) else {
        return Amount::from_count(count, unit, places, Rounding::HalfUp);
    };
    let begun = count.checked_rem(size).is_some_and(|left| left > 0);
    let steps = count
        .checked_div(size)
        .unwrap_or(0)
        .saturating_add(begun.into());
    step.times(i64::try_from(steps).unwrap_or(i64::MAX))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]

    use super::*;

    fn billed(volume: &str, least: Option<&str>, step: Option<&str>) -> String {
        let amount = |text: &str| Amount::parse(text).unwrap();
        let count = amount(volume).count().unwrap();
        let told = in_steps(count, Unit::Litre, least.map(amount), step.map(amount), 6);
        told.unwrap().to_string()
    }

    #[test]
    fn begun_steps_count_whole_and_exactly() {
        // Worked by hand.
        assert_eq!(billed("0.71 L", None, Some("0.05 L")), "0.75 L");
        assert_eq!(billed("0.75 L", None, Some("0.05 L")), "0.75 L");
        assert_eq!(billed("750.001 mL", None, Some("50 mL")), "0.80 L");
        assert_eq!(billed("0.02 L", Some("0.1 L"), Some("0.05 L")), "0.10 L");
        assert_eq!(billed("0 L", Some("0.1 L"), None), "0 L");
        assert_eq!(billed("1 US qt", None, None), "0.946353 L");
    }
}
