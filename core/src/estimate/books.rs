//! What single records cost a shop, as far as the price list and the sheet say it.

use super::facts::Facts;
use super::lines::Lines;
use super::price_list::PriceList;
use super::work::{Poured, Work, fluid, leak_search};
use crate::check::{Args, Entry, Fact, Job, LevelCheck, standing};
use crate::error::Error;
use crate::money::Money;
use crate::procedure::{Pack, Procedure};
use crate::quantity::{Amount, Rounding, Unit};
use crate::record::Record;
use alloc::vec::Vec;

/// What prices rest on.
pub(super) struct Books<'b> {
    pub(super) prices: &'b PriceList,
    pub(super) pack: &'b Pack,
}

impl<'b> Books<'b> {
    /// The very sheet a record rests on.
    fn sheet(&self, record: &Record) -> Option<&'b Procedure> {
        let own = record.procedure();
        let sheet = self.pack.procedure(&own.id, own.edition?)?;
        (own.digest.as_deref() == Some(sheet.digest())).then_some(sheet)
    }

    /// What doing a check again costs: the labour of a recheck.
    pub(super) fn again(&self, record: &Record) -> Option<Money> {
        let work = Work::of(Job::Recheck, self.sheet(record));
        self.net(|lines| work.labour(self.prices, lines))
    }

    pub(super) fn search(&self) -> Option<Money> {
        self.net(|lines| leak_search(self.prices, &[], lines))
    }

    /// What lines come to without tax; nothing where one of them has no price.
    fn net(&self, put: impl FnOnce(&mut Lines<'_>) -> Result<(), Error>) -> Option<Money> {
        let mut lines = Lines::new(self.prices);
        put(&mut lines).ok()?;
        Some(lines.total().ok()?.net)
    }

    /// The fluid of a record that was poured and not billed, and what it would have cost the customer.
    pub(super) fn given_away(
        &self,
        record: &Record,
        billed: Amount,
    ) -> Option<(Option<Money>, Args)> {
        let check = LevelCheck::of(self.pack, record.journal());
        let standing = check.standing();
        let facts = Facts::of(&check, &standing);
        let poured = facts.poured();
        let left = poured.saturating_sub(billed.count()?);
        let unit = billed.unit();
        // A line ends at six decimals, and a bill may have several.
        let above = Amount::from_count(left, unit, 5, Rounding::Floor).ok()?;
        if above.is_negative() || above.mantissa() == 0 {
            return None;
        }
        let volume = |count| Amount::from_count(count, unit, 6, Rounding::HalfUp).ok();
        let args = Args::none()
            .with_some("poured", volume(poured))
            .with("billed", billed)
            .with_some("not_billed", volume(left));
        let is_same = standing.sheet.map(Procedure::digest) == record.procedure().digest.as_deref();
        // Of two fluids in one job nobody knows which was left off the bill.
        let net = match facts.work.poured.as_slice() {
            [only] if is_same => self.beyond(only, billed.count()?),
            _ => None,
        };
        Some((net, args))
    }

    /// What a fluid costs beyond what was billed of it. The least of a sale was billed with the first of it.
    fn beyond(&self, poured: &Poured<'_>, billed: i128) -> Option<Money> {
        let billed = Poured {
            count: billed,
            containers: Vec::new(),
            ..poured.clone()
        };
        let price = |poured: &Poured<'_>| self.net(|lines| fluid(self.prices, poured, lines));
        let (whole, part) = (price(poured)?, price(&billed)?);
        let beyond = whole.minor_units().saturating_sub(part.minor_units());
        Money::new(beyond, whole.currency()).ok()
    }

    /// By what a job took longer than was promised.
    pub(super) fn late(&self, record: &Record) -> Option<Args> {
        let journal = record.journal();
        let promised = self.prices.labour(journal.header().job)?.promised?;
        let entries = standing(journal.entries().iter());
        let mut work = entries.iter().filter(|entry| is_work(entry));
        let began = work.next()?;
        let ended = work.next_back().unwrap_or(began);
        let (began, ended) = (began.at.nanoseconds(), ended.at.nanoseconds());
        let took = ended.saturating_sub(began);
        let is_late = promised.count().is_some_and(|promised| took > promised);
        let took = Amount::from_count(took, Unit::Minute, 1, Rounding::Ceiling).ok()?;
        let args = Args::none().with("took", took).with("promised", promised);
        is_late.then_some(args)
    }
}

fn is_work(entry: &Entry) -> bool {
    !matches!(entry.fact, Fact::Note { .. } | Fact::Approved { .. })
}
