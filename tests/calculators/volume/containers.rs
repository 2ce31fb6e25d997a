//! Containers to buy and open for a need, against plainer ways to choose them.

use super::given::amount;
use brimline::Unit;
use brimline::volume::{Container, ContainerPlan, Opened, containers};
use proptest::prelude::*;

fn sizes() -> impl Strategy<Value = Vec<(i64, Option<u64>, Option<u64>)>> {
    let price = prop::option::of(0..=5000_u64);
    let stock = prop::option::weighted(0.3, 0..=6_u64);
    prop::collection::vec((1..=200_i64, price, stock), 1..=6)
}

pub const NAMES: [&str; 6] = ["one", "two", "three", "four", "five", "six"];

fn named(sizes: &[(i64, Option<u64>, Option<u64>)]) -> Vec<Container<'static>> {
    let named = sizes.iter().zip(NAMES);
    named
        .map(|(&(tenths, price, stock), name)| Container {
            name,
            volume: amount(tenths, 1, Unit::Litre),
            price,
            stock,
        })
        .collect()
}

fn count(plan: &ContainerPlan<'_>) -> u64 {
    plan.containers.iter().map(|size| size.count).sum()
}

/// How many containers it takes when the largest is taken as long as it fits, and one more of what covers the rest.
fn greedy(need: i64, sizes: &[(i64, Option<u64>, Option<u64>)]) -> Option<u64> {
    let mut sizes = sizes.to_vec();
    sizes.sort_by_key(|size| -size.0);
    let (mut left, mut taken) = (need, 0);
    for (volume, _, stock) in sizes {
        let enough = (left.max(0) as u64).div_ceil(volume as u64);
        let some = enough.min(stock.unwrap_or(u64::MAX));
        taken += some;
        left -= volume * some as i64;
    }
    (left <= 0).then_some(taken)
}

proptest! {
    #[test]
    fn plans_hold_what_they_say(need in 0..=600_i64, rows in sizes(), left in prop::option::of(0..=90_i64), bulk in 0..=80_i64) {
        let litres = |tenths| amount(tenths, 1, Unit::Litre);
        let sizes = named(&rows);
        let opened: Vec<Opened<'_>> = left
            .iter()
            .map(|left| Opened {
                name: "left",
                volume: litres(*left),
                same_fluid: true,
                sealed: true,
                clean: true,
                dated: true,
                within_date: Some(true),
            })
            .collect();
        let plans = containers(litres(need), &sizes, &opened, litres(bulk)).unwrap();
        if let Some(short) = plans.short {
            let stock = rows.iter().map(|(volume, _, stock)| volume * stock.unwrap_or(999) as i64);
            let all = stock.sum::<i64>() + left.unwrap_or(0) + bulk;
            prop_assert_eq!(short, litres(need - all));
            prop_assert!(plans.fewest.is_none() && plans.cheapest.is_none() && plans.least_waste.is_none());
            return Ok(());
        }
        let (fewest, least_waste) = (plans.fewest.unwrap(), plans.least_waste.unwrap());
        for plan in [Some(&fewest), plans.cheapest.as_ref(), Some(&least_waste)].into_iter().flatten() {
            let in_full: i64 = plan
                .containers
                .iter()
                .map(|taken| {
                    let place = NAMES.iter().position(|name| *name == taken.name).unwrap();
                    assert!(taken.count > 0 && taken.count <= rows[place].2.unwrap_or(u64::MAX));
                    rows[place].0 * taken.count as i64
                })
                .sum();
            let in_opened = if plan.opened.is_empty() { 0 } else { left.unwrap() };
            let total = litres(in_full + in_opened);
            let from_bulk = plan.bulk.unwrap_or(litres(0));
            prop_assert!(from_bulk <= litres(bulk));
            prop_assert_eq!(total.checked_add(from_bulk).unwrap(), plan.total);
            prop_assert_eq!(plan.total.checked_sub(litres(need)).unwrap(), plan.left);
            prop_assert!(!plan.left.is_negative());
            // Bulk is poured to the need and never wasted.
            prop_assert!(plan.bulk.is_none() || plan.left.is_zero());
            prop_assert!(count(&fewest) <= count(plan) && least_waste.left <= plan.left);
        }
        if let (Some(cheapest), 0) = (&plans.cheapest, bulk) {
            prop_assert!(cheapest.price <= fewest.price && cheapest.price <= least_waste.price);
        }
        prop_assert_eq!(plans.cheapest.is_some(), bulk == 0 && rows.iter().all(|row| row.1.is_some()));
    }

    #[test]
    fn greedy_takes_no_fewer(need in 0..=600_i64, rows in sizes()) {
        let plans = containers(amount(need, 1, Unit::Litre), &named(&rows), &[], None).unwrap();
        let greedy = greedy(need, &rows);
        prop_assert_eq!(plans.fewest.is_some(), greedy.is_some());
        if let (Some(fewest), Some(greedy)) = (plans.fewest, greedy) {
            prop_assert!(count(&fewest) <= greedy);
        }
    }

    #[test]
    fn the_order_of_the_list_decides_no_measure(need in 1..=600_i64, rows in sizes()) {
        let need = amount(need, 1, Unit::Litre);
        let sizes = named(&rows);
        let mut turned = sizes.clone();
        turned.reverse();
        let [one, other] = [sizes, turned].map(|sizes| {
            let plans = containers(need, &sizes, &[], None).unwrap();
            let measures = |plan: Option<ContainerPlan<'_>>| plan.map(|plan| (count(&plan), plan.left, plan.price));
            [plans.fewest, plans.cheapest, plans.least_waste].map(measures)
        });
        prop_assert_eq!(one, other);
    }
}
