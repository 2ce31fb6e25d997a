//! Which containers to open for a fill.

use super::container_sums::{Size, search};
use super::opened::{Opened, OpenedUse, Used};
use super::{above_zero, from_zero, named, out_of_range};
use crate::error::{Error, ErrorKind, Fault};
use crate::quantity::{Amount, Rounding, Unit};
use alloc::collections::BTreeSet;
use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;
use core::cmp::Reverse;
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
/// tenths of a quart are enough for 1.4 quarts. Sizes are taken in from the largest down, those of one volume as they are
/// listed; of plans that are equally good by every measure the one found first stays. All volumes at one temperature.
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
    from_zero("need", need, Unit::Litre)?;
    containers_for(
        exact("need", need)?,
        need.unit(),
        sizes,
        opened,
        bulk.into(),
    )
}

/// The same for an exact count of volume, zero and above, told in a unit in which it may have no end.
pub(crate) fn containers_for<'a>(
    counts: i128,
    unit: Unit,
    sizes: &[Container<'a>],
    opened: &[Opened<'a>],
    bulk: Option<Amount>,
) -> Result<ContainerPlans<'a>, Error> {
    let priced = !sizes.is_empty() && sizes.iter().all(|size| size.price.is_some());
    let full = read_sizes(sizes, counts, priced)?;
    let in_bulk = bulk.map_or(Ok(0), |bulk| {
        from_zero("bulk.available", bulk, Unit::Litre)?;
        exact("bulk.available", bulk)
    })?;
    let used = Used::of(opened, counts)?;
    let open_left = counts.saturating_sub(used.volume).max(0);
    let full_need = open_left.saturating_sub(in_bulk).max(0);
    let plans = Plans {
        unit,
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
        told.short = Some(amount(missing, unit)?);
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
    let least = full_need.unsigned_abs();
    let find = |known_price| search(&full, sizes.len(), least, spare, known_price);
    let found = find(None)?;
    let fewest = plans.plan(&found.least_cost)?;
    let least_waste = plans.plan(&found.least_waste)?;
    if is_cheapest_told {
        let found = find(fewest.price.min(least_waste.price))?;
        told.cheapest = Some(plans.plan(&found.least_cost)?);
    }
    told.fewest = Some(fewest);
    told.least_waste = Some(least_waste);
    Ok(told)
}

/// What every plan starts from.
struct Plans<'p, 'a> {
    unit: Unit,
    sizes: &'p [Container<'a>],
    used: &'p Used<'a>,
    /// What the opened ones leave to be filled, in counts.
    open_left: i128,
    priced: bool,
}

impl<'a> Plans<'_, 'a> {
    /// The plan that takes so many of each size, of none where nothing is said.
    fn plan(&self, counts: &[u64]) -> Result<ContainerPlan<'a>, Error> {
        let unit = self.unit;
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

/// The sizes there are any of, the largest first.
fn read_sizes(sizes: &[Container<'_>], need: i128, priced: bool) -> Result<Vec<Size>, Error> {
    let mut names = BTreeSet::new();
    let mut full = Vec::with_capacity(sizes.len());
    for (place, size) in sizes.iter().enumerate() {
        let path = |member: &str| format!("sizes[{place}].{member}");
        named(
            path("volume"),
            above_zero("volume", size.volume, Unit::Litre),
        )?;
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
    full.sort_by_key(|size| Reverse(size.volume));
    Ok(full)
}

/// What all of them hold, in counts.
fn all(sizes: &[Size]) -> i128 {
    sizes.iter().fold(0_i128, |sum, size| {
        let volume = size.volume.saturating_mul(size.stock.into());
        sum.saturating_add(i128::try_from(volume).unwrap_or(i128::MAX))
    })
}

/// A volume in exact counts.
pub(super) fn exact(path: impl Into<String>, volume: Amount) -> Result<i128, Error> {
    let fault = || out_of_range(path, volume).hint("no fill is that large");
    volume.count().ok_or_else(|| fault().into())
}

/// Exact counts in the unit of the need, which may be too small a unit for them.
fn amount(counts: i128, unit: Unit) -> Result<Amount, Error> {
    named(
        "need",
        Amount::from_count(counts, unit, 9, Rounding::HalfEven),
    )
}

#[cfg(test)]
mod tests {
    #![allow(
        clippy::unwrap_used,
        clippy::indexing_slicing,
        clippy::arithmetic_side_effects
    )]

    use super::*;
    use crate::volume::OpenedDefect;

    fn litres(text: &str) -> Amount {
        Amount::parse(text).unwrap()
    }

    fn size<'a>(name: &'a str, volume: &str) -> Container<'a> {
        let volume = litres(volume);
        Container {
            name,
            volume,
            price: None,
            stock: None,
        }
    }

    fn opened<'a>(name: &'a str, volume: &str) -> Opened<'a> {
        Opened {
            name,
            volume: litres(volume),
            same_fluid: true,
            sealed: true,
            clean: true,
            dated: true,
            within_date: Some(true),
        }
    }

    fn told(plan: &Option<ContainerPlan<'_>>) -> String {
        let plan = plan.as_ref().unwrap();
        let counts = plan.containers.iter();
        let counts: Vec<String> = counts
            .map(|container| format!("{} {}", container.count, container.name))
            .collect();
        format!("{}, left {}", counts.join(" + "), plan.left)
    }

    #[test]
    fn the_measures_differ() {
        let priced = |name, volume, price| Container {
            price: Some(price),
            ..size(name, volume)
        };
        let sizes = [priced("bottle", "1 L", 900), priced("can", "5 L", 4000)];
        let plans = containers(litres("6.5 L"), &sizes, &[], None).unwrap();
        assert_eq!(told(&plans.fewest), "2 can, left 3.5 L");
        assert_eq!(told(&plans.least_waste), "2 bottle + 1 can, left 0.5 L");
        // 5800 against 8000 and 6300.
        assert_eq!(told(&plans.cheapest), "2 bottle + 1 can, left 0.5 L");
        assert_eq!(plans.cheapest.unwrap().price, Some(5800));
        let plans = containers(litres("4.5 L"), &sizes, &[], None).unwrap();
        assert_eq!(told(&plans.cheapest), "1 can, left 0.5 L");
        // The largest first would leave a litre.
        let sizes = [size("three", "3 L"), size("four", "4 L")];
        let plans = containers(litres("6 L"), &sizes, &[], None).unwrap();
        assert_eq!(told(&plans.fewest), "2 three, left 0 L");
        assert!(plans.cheapest.is_none());
    }

    #[test]
    fn volumes_count_exactly() {
        let tenth = [size("tenth", "0.1 US qt")];
        let plans = containers(litres("1.4 US qt"), &tenth, &[], None).unwrap();
        assert_eq!(told(&plans.fewest), "14 tenth, left 0 US qt");
        let bottle = [size("bottle", "1 L")];
        let plans = containers(litres("3.000000001 L"), &bottle, &[], None).unwrap();
        assert_eq!(told(&plans.fewest), "4 bottle, left 0.999999999 L");
    }

    #[test]
    fn stock_ends() {
        let some = |name, volume, stock| Container {
            stock: Some(stock),
            ..size(name, volume)
        };
        let sizes = [
            some("bottle", "1 L", 2),
            some("can", "5 L", 1),
            some("drum", "60 L", 0),
        ];
        let plan = |need| containers(litres(need), &sizes, &[], None).unwrap();
        assert_eq!(told(&plan("3 L").least_waste), "1 can, left 2 L");
        assert_eq!(told(&plan("7 L").least_waste), "2 bottle + 1 can, left 0 L");
        let short = plan("7.1 L");
        assert_eq!(short.short, Some(litres("0.1 L")));
        assert!(short.fewest.is_none() && short.least_waste.is_none());
        assert_eq!(short.cautions, ["no_dry_start"]);
    }

    #[test]
    fn opened_ones_go_first_if_they_may() {
        let sizes = [size("bottle", "1 L")];
        let good = opened("good", "0.5 L");
        let old = Opened {
            within_date: Some(false),
            ..opened("old", "0.9 L")
        };
        let unknown = Opened {
            sealed: false,
            dated: false,
            within_date: None,
            ..opened("unknown", "0.9 L")
        };
        let ageless = Opened {
            within_date: None,
            ..opened("ageless", "0.9 L")
        };
        let plans = containers(
            litres("1.5 L"),
            &sizes,
            &[old, good, unknown, ageless],
            None,
        )
        .unwrap();
        assert_eq!(told(&plans.fewest), "1 bottle, left 0 L");
        let plan = plans.fewest.unwrap();
        assert_eq!(plan.opened, ["good"]);
        assert_eq!(plan.total, litres("1.5 L"));
        assert_eq!(plans.opened[0].reasons, [OpenedDefect::OutOfDate]);
        assert!(plans.opened[1].usable);
        let [not_sealed, not_dated] = [OpenedDefect::NotSealed, OpenedDefect::NotDated];
        assert_eq!(plans.opened[2].reasons, [not_sealed, not_dated]);
        assert_eq!(plans.opened[3].reasons, [OpenedDefect::AgeUnknown]);
        assert!(plans.cautions.contains(&"opened_fluid"));
        // Enough by itself; the second stays closed.
        let second = opened("second", "1 L");
        let plans = containers(litres("0.4 L"), &sizes, &[good, second], None).unwrap();
        assert_eq!(told(&plans.fewest), ", left 0.1 L");
        assert_eq!(plans.fewest.unwrap().opened, ["good"]);
    }

    #[test]
    fn bulk_makes_up_what_is_short() {
        let sizes = [size("half", "0.5 L"), size("can", "5 L")];
        let plan = |need, bulk| containers(litres(need), &sizes, &[], litres(bulk)).unwrap();
        let all = plan("4 L", "10 L");
        assert_eq!(told(&all.fewest), ", left 0 L");
        assert_eq!(all.fewest.unwrap().bulk, Some(litres("4 L")));
        // One can and two litres of the five leave nothing over; so would four halves and all five.
        let some = plan("7 L", "5 L").least_waste.unwrap();
        assert_eq!(
            (some.containers[0].name, some.bulk),
            ("can", Some(litres("2 L")))
        );
        assert!(some.left.is_zero());
        assert!(plan("20 L", "1 L").fewest.is_some());
        let none = containers(litres("2 L"), &[], &[], litres("1.5 L")).unwrap();
        assert_eq!(none.short, Some(litres("0.5 L")));
    }

    #[test]
    fn what_is_equally_good_is_decided_by_the_order() {
        let sizes = [size("left", "1 L"), size("right", "1000 mL")];
        let plans = containers(litres("2 L"), &sizes, &[], None).unwrap();
        assert_eq!(told(&plans.fewest), "2 left, left 0 L");
        // 3 + 3 and 4 + 2 both hold six: the first needs none of the smallest.
        let sizes = [
            size("two", "2 L"),
            size("three", "3 L"),
            size("four", "4 L"),
        ];
        let plans = containers(litres("6 L"), &sizes, &[], None).unwrap();
        assert_eq!(told(&plans.fewest), "2 three, left 0 L");
    }

    /// Every plan there is, one size after the other.
    fn every_plan(sizes: &[(i64, u64, u64)], need: i64, each: &mut dyn FnMut(u64, i64, u64)) {
        fn go(
            sizes: &[(i64, u64, u64)],
            need: i64,
            [count, held, price]: [u64; 3],
            each: &mut dyn FnMut(u64, i64, u64),
        ) {
            let Some(((volume, cost, stock), rest)) = sizes.split_first() else {
                if held as i64 >= need {
                    each(count, held as i64 - need, price);
                }
                return;
            };
            for taken in 0..=(*stock).min(need.unsigned_abs().div_ceil(volume.unsigned_abs())) {
                let held = held + taken * volume.unsigned_abs();
                go(
                    rest,
                    need,
                    [count + taken, held, price + taken * cost],
                    each,
                );
            }
        }
        go(sizes, need, [0; 3], each);
    }

    #[test]
    fn no_plan_is_better() {
        // Against every plan there is, on sizes from a small generator.
        let mut state = 7_u64;
        let mut next = |most: u64| {
            state = state
                .wrapping_mul(6_364_136_223_846_793_005)
                .wrapping_add(1_442_695_040_888_963_407);
            (state >> 33) % most
        };
        for _ in 0..400 {
            let names = ["a", "b", "c", "d"];
            let rows: Vec<(i64, u64, u64)> = (0..1 + next(4))
                .map(|_| {
                    (
                        1 + next(9) as i64,
                        next(9),
                        if next(3) == 0 { next(4) } else { 40 },
                    )
                })
                .collect();
            let need = 1 + next(24) as i64;
            let sizes: Vec<Container<'_>> = rows
                .iter()
                .zip(names)
                .map(|(&(volume, price, stock), name)| Container {
                    name,
                    volume: Amount::new(volume, 1, Unit::UsQuart).unwrap(),
                    price: Some(price),
                    stock: (stock < 40).then_some(stock),
                })
                .collect();
            let (mut few, mut cheap, mut tight) = (None, None, None);
            every_plan(&rows, need, &mut |count, left, price| {
                let better = |best: &mut Option<[u64; 3]>, rank| {
                    if best.is_none_or(|best| rank < best) {
                        *best = Some(rank);
                    }
                };
                let left = left.unsigned_abs();
                better(&mut few, [count, left, price]);
                better(&mut cheap, [price, left, count]);
                better(&mut tight, [left, count, price]);
            });
            let need = Amount::new(need, 1, Unit::UsQuart).unwrap();
            let plans = containers(need, &sizes, &[], None).unwrap();
            let rank = |plan: &Option<ContainerPlan<'_>>| {
                plan.as_ref().map(|plan| {
                    let count: u64 = plan.containers.iter().map(|size| size.count).sum();
                    let left = (plan.left.to_f64() * 10.0 + 0.5) as u64;
                    (count, left, plan.price.unwrap())
                })
            };
            let [few, cheap, tight] = [few, cheap, tight];
            assert_eq!(
                rank(&plans.fewest),
                few.map(|[c, l, p]| (c, l, p)),
                "{rows:?} {need}"
            );
            assert_eq!(
                rank(&plans.cheapest),
                cheap.map(|[p, l, c]| (c, l, p)),
                "{rows:?} {need}"
            );
            assert_eq!(
                rank(&plans.least_waste),
                tight.map(|[l, c, p]| (c, l, p)),
                "{rows:?} {need}"
            );
            assert_eq!(plans.short.is_some(), few.is_none());
        }
    }

    #[test]
    fn what_is_no_stock_is_refused() {
        let refused = |need: &str, sizes: &[Container<'_>]| {
            let error = containers(litres(need), sizes, &[], None).unwrap_err();
            (error.kind(), error.first().path.clone())
        };
        let out = |path: &str| (ErrorKind::OutOfRange, path.to_string());
        let bottle = size("bottle", "1 L");
        assert_eq!(refused("-1 L", &[bottle]), out("need"));
        assert_eq!(
            refused("2 L", &[bottle, size("none", "0 L")]),
            out("sizes[1].volume")
        );
        assert_eq!(
            refused("2 L", &[size("drop", "0.1 mL")]),
            out("sizes[0].volume")
        );
        let dear = Container {
            price: Some(u64::MAX),
            ..bottle
        };
        assert_eq!(refused("2 L", &[dear]), out("sizes[0].price"));
        let twice = (ErrorKind::DuplicateId, "sizes[1].name".to_string());
        assert_eq!(refused("2 L", &[bottle, size("bottle", "5 L")]), twice);
        let mass = (ErrorKind::WrongKind, "sizes[0].volume".to_string());
        assert_eq!(refused("2 L", &[size("kilo", "1 kg")]), mass);
        assert_eq!(refused("999999999999999 m³", &[bottle]), out("need"));
        let bad = [opened("left", "-0.5 L")];
        let error = containers(litres("2 L"), &[bottle], &bad, None).unwrap_err();
        assert_eq!(error.first().path, "opened[0].volume");
        let error = containers(litres("2 L"), &[bottle], &[], litres("-1 L")).unwrap_err();
        assert_eq!(error.first().path, "bulk.available");
    }

    #[test]
    fn a_search_that_would_not_end_is_given_up() {
        let names: Vec<String> = (0..12).map(|index| format!("size {index}")).collect();
        let sizes: Vec<Container<'_>> = names
            .iter()
            .zip([101, 103, 107, 109, 113, 127, 131, 137, 139, 149, 151, 157])
            .map(|(name, prime)| Container {
                name,
                volume: Amount::new(prime * 10_000_019, 9, Unit::Litre).unwrap(),
                price: None,
                stock: None,
            })
            .chain([size("quart", "0.1 US qt"), size("pint", "0.3 imp pt")])
            .collect();
        let error = containers(litres("400.123456789 L"), &sizes, &[], None).unwrap_err();
        assert_eq!(
            (error.kind(), error.first().path.as_str()),
            (ErrorKind::OutOfRange, "sizes")
        );
    }
}
