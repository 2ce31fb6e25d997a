//! Which containers to open for a fill.

use super::container_sums::{Size, search};
use super::{from_zero, out_of_range};
use crate::error::{Error, ErrorKind, Fault};
use crate::quantity::{Amount, Kind, Rounding, Unit};
use crate::word::words;
use alloc::collections::BTreeSet;
use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;
use serde::Serialize;

/// A size of full containers.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Container<'a> {
    /// What it is called; each size by a name of its own.
    pub name: &'a str,
    /// What one holds, above zero and at least 1/10 000 of the need.
    pub volume: Amount,
    /// What one costs, in the smallest unit of the one currency that is used, up to 10¹².
    pub price: Option<u64>,
    /// How many there are; `None` where there are always enough.
    pub stock: Option<u64>,
}

/// A container that was opened before.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Opened<'a> {
    /// What it is called.
    pub name: &'a str,
    /// What is left in it, zero and above.
    pub volume: Amount,
    /// Whether the fluid in it is the one that is asked for.
    pub same_fluid: bool,
    /// Whether it stood tightly closed.
    pub sealed: bool,
    /// Whether it and the fluid are clean.
    pub clean: bool,
    /// Whether the day it was opened is on it.
    pub dated: bool,
    /// Whether it is within the time the shop allows after that day.
    pub within_date: bool,
}

words! {
    /// Why an opened container is not used.
    pub enum OpenedDefect {
        /// It holds another fluid.
        OtherFluid = "other_fluid",
        /// It did not stand closed.
        NotSealed = "not_sealed",
        /// It or the fluid is not clean.
        NotClean = "not_clean",
        /// Nobody wrote on it when it was opened.
        NotDated = "not_dated",
        /// It was opened too long ago.
        OutOfDate = "out_of_date",
    }
}

/// Which containers to open, by three measures.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct ContainerPlans<'a> {
    /// The fewest full containers; of those the least left over, then the cheapest.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub fewest: Option<ContainerPlan<'a>>,
    /// The least money; of those the least left over, then the fewest. Only where every size has a price and there is no bulk.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub cheapest: Option<ContainerPlan<'a>>,
    /// The least left over; of those the fewest, then the cheapest.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub least_waste: Option<ContainerPlan<'a>>,
    /// Each opened container, and why it is not used.
    pub opened: Vec<OpenedUse<'a>>,
    /// How much is missing: do not start. Then there are no plans.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub short: Option<Amount>,
    /// What to mind, as caution ids.
    pub cautions: &'static [&'static str],
}

/// One plan.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct ContainerPlan<'a> {
    /// The full containers to open, in the order of the sizes.
    pub containers: Vec<ContainerCount<'a>>,
    /// The opened containers to use up first.
    pub opened: Vec<&'a str>,
    /// What to take from bulk.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub bulk: Option<Amount>,
    /// What all this holds, in the unit of the need, to nine decimals.
    pub total: Amount,
    /// What is left over of it, likewise.
    pub left: Amount,
    /// What the full containers cost, where every size has a price.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub price: Option<u64>,
}

/// A number of containers of one size.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct ContainerCount<'a> {
    /// What the size is called.
    pub name: &'a str,
    /// How many to open, one or more.
    pub count: u64,
}

/// Whether an opened container can be used.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct OpenedUse<'a> {
    /// What it is called.
    pub name: &'a str,
    /// Whether it can.
    pub usable: bool,
    /// Why not.
    pub reasons: Vec<OpenedDefect>,
}

/// A size may be as small as this part of the need.
const MOST_CONTAINERS: i128 = 10_000;
const HIGHEST_PRICE: u64 = 1_000_000_000_000;

const CAUTIONS: &[&str] = &["fluid_by_name"];
const CAUTIONS_OF_OPENED: &[&str] = &["fluid_by_name", "opened_fluid"];
const CAUTIONS_OF_SHORT: &[&str] = &["no_dry_start"];

/// Which containers to open for a fill: the fewest, the cheapest, and what leaves least over.
///
/// `need` zero and above. Opened containers that can be used go first, in the order of the list, as far as they are needed;
/// then `bulk`, of which no more is taken than what the full containers leave short. All volumes count exactly: fourteen
/// tenths of a quart are enough for 1.4 quarts. What is equally good by every measure of a plan is decided by the search,
/// which tries the larger sizes first and sizes of one volume as they are listed. All volumes at one temperature.
///
/// Source: arithmetic; what makes an opened container unfit is common practice, no source.
///
/// # Errors
///
/// [`WrongKind`](ErrorKind::WrongKind); [`OutOfRange`](ErrorKind::OutOfRange) for what is below zero, a size of nothing or
/// too small for the need, a price above 10¹², and sizes whose sums are more than a million;
/// [`DuplicateId`](ErrorKind::DuplicateId) for two sizes of one name. Paths such as `sizes[1].volume`.
///
/// ```
/// use brimline::{Amount, volume::{Container, containers}};
/// let size = |name, volume| -> Result<Container, brimline::Error> {
///     Ok(Container { name, volume: Amount::parse(volume)?, price: None, stock: None })
/// };
/// let sizes = [size("bottle", "1 L")?, size("can", "5 L")?];
/// let plans = containers(Amount::parse("6.5 L")?, &sizes, &[], None)?;
/// let [fewest, least_waste] = [plans.fewest.unwrap(), plans.least_waste.unwrap()];
/// assert_eq!((fewest.containers[0].count, fewest.left.to_string().as_str()), (2, "3.5 L"));
/// assert_eq!(least_waste.left.to_string(), "0.5 L");
/// # Ok::<(), brimline::Error>(())
/// ```
pub fn containers<'a>(
    need: Amount,
    sizes: &[Container<'a>],
    opened: &[Opened<'a>],
    bulk: impl Into<Option<Amount>>,
) -> Result<ContainerPlans<'a>, Error> {
    let counts = counted_need(need)?;
    let priced = !sizes.is_empty() && sizes.iter().all(|size| size.price.is_some());
    let full = read_sizes(sizes, counts, priced)?;
    let in_bulk = bulk.into().map_or(Ok(0), |bulk| {
        from_zero("bulk.available", bulk, Kind::Volume)?;
        exact("bulk.available", bulk)
    })?;
    let used = Used::of(opened, counts)?;
    let open_left = counts.saturating_sub(used.volume).max(0);
    let full_need = open_left.saturating_sub(in_bulk).max(0);
    let plans = Plans {
        need,
        sizes,
        used: &used,
        open_left,
        priced,
    };
    let mut told = ContainerPlans {
        fewest: None,
        cheapest: None,
        least_waste: None,
        opened: used.told.clone(),
        short: None,
        cautions: CAUTIONS,
    };
    let missing = full_need.saturating_sub(all(&full));
    if missing > 0 {
        told.short = Some(amount(missing, need.unit())?);
        told.cautions = CAUTIONS_OF_SHORT;
        return Ok(told);
    }
    if !used.names.is_empty() {
        told.cautions = CAUTIONS_OF_OPENED;
    }
    let is_cheapest_told = priced && in_bulk == 0;
    if full_need == 0 {
        let plan = plans.plan(&[])?;
        told.cheapest = is_cheapest_told.then(|| plan.clone());
        told.fewest = Some(plan.clone());
        told.least_waste = Some(plan);
        return Ok(told);
    }
    let spare = open_left.saturating_sub(full_need).unsigned_abs();
    let find = |by_price| {
        search(
            &full,
            sizes.len(),
            full_need.unsigned_abs(),
            spare,
            by_price,
        )
    };
    let found = find(false)?;
    told.fewest = Some(plans.plan(&found.least_cost)?);
    told.least_waste = Some(plans.plan(&found.least_waste)?);
    if is_cheapest_told {
        told.cheapest = Some(plans.plan(&find(true)?.least_cost)?);
    }
    Ok(told)
}

/// What every plan starts from.
struct Plans<'p, 'a> {
    need: Amount,
    sizes: &'p [Container<'a>],
    used: &'p Used<'a>,
    /// What the opened ones leave to be filled, in counts.
    open_left: i128,
    priced: bool,
}

impl<'a> Plans<'_, 'a> {
    /// The plan that takes so many of each size, of none where nothing is said.
    fn plan(&self, counts: &[u64]) -> Result<ContainerPlan<'a>, Error> {
        let unit = self.need.unit();
        let (mut full, mut price) = (0_i128, 0_u64);
        let mut containers = Vec::new();
        for (size, count) in self.sizes.iter().zip(counts.iter().copied()) {
            if count == 0 {
                continue;
            }
            let name = size.name;
            containers.push(ContainerCount { name, count });
            full = full.saturating_add(exact("sizes", size.volume)?.saturating_mul(count.into()));
            price = price.saturating_add(size.price.unwrap_or(0).saturating_mul(count));
        }
        let bulk = self.open_left.saturating_sub(full).max(0);
        let left = self
            .used
            .left
            .saturating_add(full.saturating_sub(self.open_left).max(0));
        let total = self.used.volume.saturating_add(full).saturating_add(bulk);
        Ok(ContainerPlan {
            containers,
            opened: self.used.names.clone(),
            bulk: (bulk > 0).then(|| amount(bulk, unit)).transpose()?,
            total: amount(total, unit)?,
            left: amount(left, unit)?,
            price: self.priced.then_some(price),
        })
    }
}

/// The opened containers that are used.
struct Used<'a> {
    told: Vec<OpenedUse<'a>>,
    names: Vec<&'a str>,
    /// What they hold, in counts.
    volume: i128,
    /// What they hold more than is needed.
    left: i128,
}

impl<'a> Used<'a> {
    fn of(opened: &[Opened<'a>], need: i128) -> Result<Self, Error> {
        let mut used = Used {
            told: Vec::with_capacity(opened.len()),
            names: Vec::new(),
            volume: 0,
            left: 0,
        };
        for (index, container) in opened.iter().enumerate() {
            let path = || format!("opened[{index}].volume");
            from_zero("volume", container.volume, Kind::Volume)
                .map_err(|error| at(&error, path()))?;
            let volume = exact(path(), container.volume)?;
            let reasons = container.defects();
            let usable = reasons.is_empty();
            let name = container.name;
            if usable && volume > 0 && used.volume < need {
                used.names.push(name);
                used.volume = used.volume.saturating_add(volume);
            }
            used.told.push(OpenedUse {
                name,
                usable,
                reasons,
            });
        }
        used.left = used.volume.saturating_sub(need).max(0);
        Ok(used)
    }
}

impl Opened<'_> {
    fn defects(&self) -> Vec<OpenedDefect> {
        let table = [
            (!self.same_fluid, OpenedDefect::OtherFluid),
            (!self.sealed, OpenedDefect::NotSealed),
            (!self.clean, OpenedDefect::NotClean),
            (!self.dated, OpenedDefect::NotDated),
            // Without a date nothing is known of its age.
            (self.dated && !self.within_date, OpenedDefect::OutOfDate),
        ];
        let found = table.into_iter().filter(|(stands, _)| *stands);
        found.map(|(_, defect)| defect).collect()
    }
}

/// The sizes there are any of, the largest first.
fn read_sizes(sizes: &[Container<'_>], need: i128, priced: bool) -> Result<Vec<Size>, Error> {
    let mut names = BTreeSet::new();
    let mut full = Vec::with_capacity(sizes.len());
    for (place, size) in sizes.iter().enumerate() {
        let path = |member: &str| format!("sizes[{place}].{member}");
        super::above_zero("volume", size.volume, Kind::Volume)
            .map_err(|error| at(&error, path("volume")))?;
        let volume = exact(path("volume"), size.volume)?;
        if need > volume.saturating_mul(MOST_CONTAINERS) {
            let fault = out_of_range(path("volume"), size.volume);
            let hint = "more than 10000 of them would be needed: leave this size out";
            return Err(fault.hint(hint).into());
        }
        let price = size.price.unwrap_or(0);
        if price > HIGHEST_PRICE {
            let fault = Fault::new(ErrorKind::OutOfRange).at(path("price"));
            let fault = fault.got(&price.to_string());
            return Err(fault.allowed([format!("0 to {HIGHEST_PRICE}")]).into());
        }
        if !names.insert(size.name) {
            let fault = Fault::new(ErrorKind::DuplicateId).at(path("name"));
            let hint = "give each size a name of its own";
            return Err(fault.got(size.name).hint(hint).into());
        }
        let stock = size.stock.unwrap_or(u64::MAX);
        if stock > 0 {
            full.push(Size {
                volume: volume.unsigned_abs(),
                price: if priced { price } else { 0 },
                stock,
                place,
            });
        }
    }
    // Stable, so that sizes of one volume stay as they are listed.
    full.sort_by(|one, other| other.volume.cmp(&one.volume));
    Ok(full)
}

/// What all of them hold, in counts.
fn all(sizes: &[Size]) -> i128 {
    sizes.iter().fold(0_i128, |sum, size| {
        let volume = size.volume.saturating_mul(size.stock.into());
        sum.saturating_add(i128::try_from(volume).unwrap_or(i128::MAX))
    })
}

fn counted_need(need: Amount) -> Result<i128, Error> {
    from_zero("need", need, Kind::Volume)?;
    exact("need", need)
}

/// A volume in exact counts.
fn exact(path: impl Into<String>, volume: Amount) -> Result<i128, Error> {
    let fault = || out_of_range(path, volume).hint("no fill is that large");
    volume.count().ok_or_else(|| fault().into())
}

fn amount(counts: i128, unit: Unit) -> Result<Amount, Error> {
    Amount::from_count(counts, unit, 9, Rounding::HalfEven)
}

fn at(error: &Error, path: String) -> Error {
    error.first().clone().at(path).into()
}
