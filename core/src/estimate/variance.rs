//! What was billed otherwise than it was estimated, and why.

use super::lines::{Line, What};
use super::quote::Quote;
use crate::error::Error;
use crate::money::{Currency, Money};
use crate::quantity::Amount;
use crate::word::words;
use alloc::collections::BTreeSet;
use alloc::vec::Vec;
use core::cmp::Ordering;
use serde::Serialize;

words! {
    /// Why a line is billed otherwise than it was estimated.
    pub enum Why {
        /// The estimate did not have it.
        Added = "added",
        /// It was not needed.
        NotNeeded = "not_needed",
        /// It is not billed so far: the job is open or on hold.
        NotYet = "not_yet",
        /// There was more of it.
        More = "more",
        /// There was less of it.
        Less = "less",
        /// It is billed by another item of the price list.
        OtherItem = "other_item",
        /// Its price has changed.
        OtherPrice = "other_price",
        /// It is rounded otherwise.
        OtherRounding = "other_rounding",
    }
}

/// One thing that is billed otherwise than it was estimated.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct Variance {
    /// What for.
    pub id: What,
    /// Without tax, as estimated.
    pub estimated: Money,
    /// Without tax, as billed.
    pub billed: Money,
    /// How much more it is.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub more: Option<Money>,
    /// How much less it is.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub less: Option<Money>,
    /// Why.
    pub why: Vec<Why>,
    /// The entries that brought it about, by `seq`: those of the billed lines.
    pub entries: Vec<u64>,
}

/// What an invoice says against an estimate.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct Against {
    /// The total that was estimated, tax included.
    pub estimated: Money,
    /// How much more the invoice is.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub more: Option<Money>,
    /// How much less it is.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub less: Option<Money>,
    /// What differs, in the order of lines.
    pub lines: Vec<Variance>,
}

impl Against {
    pub(super) fn of(
        quote: &Quote,
        lines: &[Line],
        total: Money,
        is_finished: bool,
    ) -> Result<Self, Error> {
        let currency = total.currency();
        let mut told = Vec::new();
        for (_, what) in What::WORDS {
            let is_own = |line: &&Line| line.id == *what;
            let before: Vec<&Line> = quote.lines.iter().filter(is_own).collect();
            let after: Vec<&Line> = lines.iter().filter(is_own).collect();
            let variance = variance(*what, &before, &after, currency, is_finished)?;
            told.extend(variance);
        }
        let (more, less) = apart(quote.total, total)?;
        Ok(Against {
            estimated: quote.total,
            more,
            less,
            lines: told,
        })
    }
}

/// How much more and how much less one sum is than another.
pub(super) fn apart(before: Money, after: Money) -> Result<(Option<Money>, Option<Money>), Error> {
    let (was, is) = (before.minor_units(), after.minor_units());
    let by = |minor| Money::new(minor, after.currency()).map(Some);
    Ok(match is.cmp(&was) {
        Ordering::Equal => (None, None),
        Ordering::Greater => (by(is.saturating_sub(was))?, None),
        Ordering::Less => (None, by(was.saturating_sub(is))?),
    })
}

fn variance(
    id: What,
    before: &[&Line],
    after: &[&Line],
    currency: Currency,
    is_finished: bool,
) -> Result<Option<Variance>, Error> {
    let same = |one: &Line, other: &Line| {
        one.item == other.item
            && one.quantity == other.quantity
            && one.price == other.price
            && one.net == other.net
    };
    let has = |lines: &[&Line], own: &Line| lines.iter().any(|line| same(line, own));
    let is_same = before.len() == after.len()
        && before.iter().all(|line| has(after, line))
        && after.iter().all(|line| has(before, line));
    if is_same {
        return Ok(None);
    }
    let net = |lines: &[&Line]| {
        let mut nets = lines.iter().map(|line| line.net);
        nets.try_fold(Money::zero(currency), Money::plus)
    };
    let (estimated, billed) = (net(before)?, net(after)?);
    let (more, less) = apart(estimated, billed)?;
    Ok(Some(Variance {
        id,
        estimated,
        billed,
        more,
        less,
        why: why(before, after, is_finished),
        entries: {
            let mut told = BTreeSet::new();
            let entries = after.iter().flat_map(|line| &line.cause.entries);
            entries.copied().filter(|seq| told.insert(*seq)).collect()
        },
    }))
}

fn why(before: &[&Line], after: &[&Line], is_finished: bool) -> Vec<Why> {
    if before.is_empty() {
        return Vec::from([Why::Added]);
    }
    if after.is_empty() {
        return Vec::from([if is_finished {
            Why::NotNeeded
        } else {
            Why::NotYet
        }]);
    }
    let is_gone = |line: &&Line| after.iter().all(|own| own.item != line.item);
    let mut told = Vec::new();
    let mut say = |why| {
        if !told.contains(&why) {
            told.push(why);
        }
    };
    for line in after {
        let Some(was) = before.iter().find(|was| was.item == line.item) else {
            say(Why::OtherItem);
            continue;
        };
        let order = order(&line.quantity, &was.quantity);
        match order {
            Some(Ordering::Greater) => say(Why::More),
            Some(Ordering::Less) => say(Why::Less),
            _ => {}
        }
        if line.price != was.price {
            say(Why::OtherPrice);
        } else if order == Some(Ordering::Equal) && line.net != was.net {
            say(Why::OtherRounding);
        }
    }
    if before.iter().any(is_gone) {
        say(Why::OtherItem);
    }
    told
}

/// The order of two quantities of one kind.
fn order(one: &Amount, other: &Amount) -> Option<Ordering> {
    one.compare(other).ok()
}
