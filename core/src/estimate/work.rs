//! What is billed of a job, whether it happened or is assumed, and the lines it comes to.

use super::fluid_prices::{FluidPolicy, FluidPrices};
use super::goods::Stream;
use super::labour::{Billed, LabourPrice, PaidBy};
use super::lines::{Cause, Lines, Policy, What, in_steps, pieces};
use super::opening::{Opening, plan};
use super::price_list::PriceList;
use crate::check::Job;
use crate::error::{Error, ErrorKind, Fault};
use crate::money::Price;
use crate::procedure::{Labour, Procedure, Seal, Threadlocker};
use crate::quantity::{Amount, Unit};
use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

/// Decimals of a quantity of volume and of time where the shop bills no steps.
const VOLUME_PLACES: u8 = 6;
const TIME_PLACES: u8 = 4;

/// A fluid that went in.
#[derive(Debug, Clone)]
pub(super) struct Poured<'w> {
    pub(super) fluid: &'w str,
    /// Where that is said: an entry's field, or the sheet's.
    pub(super) path: String,
    /// In exact counts of volume.
    pub(super) count: i128,
    pub(super) entries: Vec<u64>,
    /// The containers that were named, with what came out of them in exact counts of volume.
    pub(super) containers: Vec<(&'w str, i128)>,
}

/// What is billed of a job.
#[derive(Debug, Clone)]
pub(super) struct Work<'w> {
    pub(super) job: Job,
    pub(super) sheet: Option<&'w Procedure>,
    pub(super) poured: Vec<Poured<'w>>,
    /// How often the plug was closed for good, and the entries that say so.
    pub(super) closings: (u64, Vec<u64>),
    /// How many plugs were replaced, likewise.
    pub(super) plugs: (u64, Vec<u64>),
    /// The entries that say a leak was looked for; none where it was not.
    pub(super) leak_search: Option<Vec<u64>>,
    /// What came out, in exact counts of volume, and the entries that say so.
    pub(super) out: (i128, Vec<u64>),
    pub(super) stream: Stream,
}

impl<'w> Work<'w> {
    /// A job of which nothing was done yet.
    pub(super) const fn of(job: Job, sheet: Option<&'w Procedure>) -> Self {
        Work {
            job,
            sheet,
            poured: Vec::new(),
            closings: (0, Vec::new()),
            plugs: (0, Vec::new()),
            leak_search: None,
            out: (0, Vec::new()),
            stream: Stream::Oil,
        }
    }

    /// The lines it comes to under a price list.
    ///
    /// # Errors
    /// `unresolved` for everything that has no price, all at once; `out_of_range` for more money than a sum holds.
    pub(super) fn lines<'p>(&self, prices: &'p PriceList) -> Result<Lines<'p>, Error> {
        let mut lines = Lines::new(prices);
        let mut faults = Vec::new();
        let mut take = |put: Result<(), Error>| {
            if let Err(error) = put {
                faults.extend(error.into_faults());
            }
        };
        take(self.labour(prices, &mut lines));
        if let Some(entries) = &self.leak_search {
            take(leak_search(prices, entries, &mut lines));
        }
        for poured in &self.poured {
            take(fluid(prices, poured, &mut lines));
        }
        take(self.closing(prices, &mut lines));
        for supply in prices.supplies(self.job) {
            let cause = cause(Policy::EachJob, &[]);
            let what = (What::Supplies, supply.id.as_str());
            take(
                pieces(1).and_then(|one| lines.put(what, cause, one, supply.price, &supply.taxes)),
            );
        }
        take(self.disposal(prices, &mut lines));
        match Error::from_faults(faults) {
            Some(error) => Err(error),
            None => Ok(lines),
        }
    }

    /// The labour of the job alone, and the wait for it.
    pub(super) fn labour(&self, prices: &PriceList, lines: &mut Lines<'_>) -> Result<(), Error> {
        let own = prices.labour(self.job).ok_or_else(|| {
            let fault = Fault::new(ErrorKind::Unresolved).at("job");
            let hint = "give the job its labour in the price list";
            fault.got(self.job.slug()).hint(hint)
        })?;
        let times = Times::of(own, self.sheet);
        put_work(own, What::Labour, &times, &[], lines)?;
        let wait = prices
            .wait()
            .filter(|wait| wait.paid_by == PaidBy::Customer);
        if let Some((wait, rate)) = wait.and_then(|wait| Some((wait, wait.rate?)))
            && let (Some(hands_on), Some(bay)) = (times.hands_on, times.bay)
        {
            let count = |time: Amount| time.count().unwrap_or(0);
            let left = count(bay).saturating_sub(count(hands_on));
            if left > 0 {
                let unit = rate.per().unwrap_or(Unit::Hour);
                let time = in_steps(left, unit, None, None, TIME_PLACES)?;
                let cause = cause(Policy::Customer, &[]);
                lines.put((What::Wait, &own.id), cause, time, rate, &wait.taxes)?;
            }
        }
        Ok(())
    }

    /// Plug, seal and threadlocker.
    fn closing(&self, prices: &PriceList, lines: &mut Lines<'_>) -> Result<(), Error> {
        let asked = self.sheet.and_then(|sheet| sheet.closing.as_ref());
        let thread = asked.and_then(|closing| closing.thread.as_deref());
        let mut faults = Vec::new();
        let mut missing = |path: &str, got: &str| {
            let fault = Fault::new(ErrorKind::Unresolved).got(got).at(path);
            faults.push(fault.hint("give it its price in the price list"));
        };
        let (count, entries) = &self.plugs;
        if *count > 0 {
            match prices.plug(thread) {
                Some(plug) => {
                    let cause = cause(Policy::Replaced, entries);
                    let what = (What::Plug, plug.id.as_str());
                    lines.put(what, cause, pieces(*count)?, plug.price, &plug.taxes)?;
                }
                None => missing("procedure.closing.thread", thread.unwrap_or("plug")),
            }
        }
        let (count, entries) = &self.closings;
        let seal = asked.and_then(|closing| closing.seal);
        if *count > 0 && seal == Some(Seal::New) {
            match prices.seal(thread) {
                Some(seal) => {
                    let cause = cause(Policy::Sheet, entries);
                    let what = (What::Seal, seal.id.as_str());
                    lines.put(what, cause, pieces(*count)?, seal.price, &seal.taxes)?;
                }
                None => missing("procedure.closing.seal", Seal::New.slug()),
            }
        }
        let locker = asked.and_then(|closing| closing.threadlocker);
        if let Some(strength) = locker.filter(|own| *count > 0 && *own != Threadlocker::None) {
            match prices.threadlocker(strength) {
                Some(locker) => {
                    let cause = cause(Policy::Sheet, entries);
                    let what = (What::Threadlocker, locker.id.as_str());
                    lines.put(what, cause, pieces(*count)?, locker.price, &locker.taxes)?;
                }
                None => missing("procedure.closing.threadlocker", strength.slug()),
            }
        }
        match Error::from_faults(faults) {
            Some(error) => Err(error),
            None => Ok(()),
        }
    }

    fn disposal(&self, prices: &PriceList, lines: &mut Lines<'_>) -> Result<(), Error> {
        let (count, entries) = &self.out;
        let Some(price) = prices.disposal(self.stream).filter(|_| *count > 0) else {
            return Ok(());
        };
        let unit = price.price.per().unwrap_or(Unit::Litre);
        let volume = in_steps(*count, unit, None, price.step, VOLUME_PLACES)?;
        let cause = cause(Policy::VolumeOut, entries);
        let what = (What::Disposal, self.stream.slug());
        lines.put(what, cause, volume, price.price, &price.taxes)
    }

    /// The containers that hold what went in, where the list names any and some can be told: by fluid.
    pub(super) fn opened<'p>(&self, prices: &'p PriceList) -> Vec<(&'p FluidPrices, Opening<'p>)> {
        let mut opened = Vec::new();
        for poured in self.poured.iter().filter(|poured| poured.count > 0) {
            let Some(own) = prices.fluid(poured.fluid) else {
                continue;
            };
            if own.billing.policy != FluidPolicy::Bulk && !own.containers.is_empty() {
                let plan = plan(prices, own, poured).ok().flatten();
                opened.extend(plan.map(|plan| (own, plan)));
            }
        }
        opened
    }
}

pub(super) fn cause(policy: Policy, entries: &[u64]) -> Cause {
    Cause {
        policy,
        entries: entries.to_vec(),
    }
}

/// How long the work takes: as the list says, or else the sheet.
pub(super) struct Times {
    pub(super) hands_on: Option<Amount>,
    pub(super) bay: Option<Amount>,
}

impl Times {
    pub(super) fn of(work: &LabourPrice, sheet: Option<&Procedure>) -> Self {
        let asked = sheet.and_then(|sheet| sheet.labour.as_ref());
        let stated = |read: fn(&Labour) -> Option<Amount>| asked.and_then(read);
        Times {
            hands_on: work.hands_on.or_else(|| stated(|labour| labour.hands_on)),
            bay: work.bay.or_else(|| stated(|labour| labour.bay)),
        }
    }
}

fn put_work(
    work: &LabourPrice,
    what: What,
    times: &Times,
    entries: &[u64],
    lines: &mut Lines<'_>,
) -> Result<(), Error> {
    let (policy, time, path) = match work.billed {
        Billed::HandsOn => (Policy::HandsOn, times.hands_on, "hands_on"),
        Billed::Bay => (Policy::Bay, times.bay, "bay"),
        Billed::Fixed => (Policy::Fixed, None, "price"),
    };
    let what = (what, work.id.as_str());
    let cause = cause(policy, entries);
    // The list is read with a rate or a price, whichever is billed.
    let missing = || Fault::new(ErrorKind::Internal).at("prices.labour");
    if work.billed == Billed::Fixed {
        let price = work.price.ok_or_else(missing)?;
        return lines.put(what, cause, pieces(1)?, price, &work.taxes);
    }
    let rate = work.rate.ok_or_else(missing)?;
    let unit = rate.per().unwrap_or(Unit::Hour);
    let time = time.and_then(|time| time.count()).ok_or_else(|| {
        let fault = Fault::new(ErrorKind::Unresolved).got(&work.id);
        let hint = "neither the price list nor the sheet says how long it takes";
        fault.at(format!("procedure.labour.{path}")).hint(hint)
    })?;
    let time = in_steps(time, unit, None, work.step, TIME_PLACES)?;
    lines.put(what, cause, time, rate, &work.taxes)
}

pub(super) fn leak_search(
    prices: &PriceList,
    entries: &[u64],
    lines: &mut Lines<'_>,
) -> Result<(), Error> {
    let own = prices.leak_search().ok_or_else(|| {
        let hint = "give looking for a leak its price in the price list";
        Fault::new(ErrorKind::Unresolved)
            .at("prices.leak_search")
            .hint(hint)
    })?;
    put_work(own, What::LeakSearch, &Times::of(own, None), entries, lines)
}

pub(super) fn fluid(
    prices: &PriceList,
    poured: &Poured<'_>,
    lines: &mut Lines<'_>,
) -> Result<(), Error> {
    let own = prices.fluid(poured.fluid).ok_or_else(|| {
        let known = prices.fluids().iter().map(|own| own.fluid.clone());
        let fault = Fault::new(ErrorKind::Unresolved).at(poured.path.as_str());
        let hint = "give the fluid its price in the price list";
        fault.got(poured.fluid).allowed(known).hint(hint)
    })?;
    if poured.count <= 0 {
        return Ok(());
    }
    let (policy, price) = match own.billing.policy {
        FluidPolicy::WholeContainer => return whole(prices, own, poured, lines),
        FluidPolicy::Used => (Policy::Used, own.used),
        FluidPolicy::Bulk => (Policy::Bulk, own.bulk),
    };
    // The list is read with the price of its policy.
    let missing = || Fault::new(ErrorKind::Internal).at("prices.fluids");
    let price: Price = price.ok_or_else(missing)?;
    let unit = price.per().unwrap_or(Unit::Litre);
    let (least, step) = (own.billing.least, own.billing.step);
    let volume = in_steps(poured.count, unit, least, step, VOLUME_PLACES)?;
    let cause = cause(policy, &poured.entries);
    lines.put((What::Fluid, &own.fluid), cause, volume, price, &own.taxes)
}

fn whole(
    prices: &PriceList,
    own: &FluidPrices,
    poured: &Poured<'_>,
    lines: &mut Lines<'_>,
) -> Result<(), Error> {
    let opened = plan(prices, own, poured)?.map(|plan| plan.containers);
    for (container, count) in opened.into_iter().flatten() {
        let cause = cause(Policy::WholeContainer, &poured.entries);
        let what = (What::Fluid, container.id.as_str());
        lines.put(what, cause, pieces(count)?, container.price, &own.taxes)?;
    }
    Ok(())
}
