//! What must hold of volumes, sumps, exchanges and containers, whatever the numbers are.

use brimline::volume::{
    Base, Container, ContainerPlan, Expansion, Opened, Sump, at_temperature, base_density,
    containers, correction_factor, cycles_needed, density_at, exchange, flush, flush_needed,
    level_for, mass, segment_share, temperature_error, tilt_error, volume_below, volume_of_mass,
    wrong_left,
};
use brimline::{Amount, ErrorKind, Kind, Unit};
use proptest::prelude::*;

const BASES: [Base; 4] = [Base::At15C, Base::At60F, Base::At60F2004, Base::At15C2004];

fn amount(mantissa: i64, decimals: u8, unit: Unit) -> Amount {
    Amount::new(mantissa, decimals, unit).unwrap()
}

const VOLUMES: [Unit; 4] = [
    Unit::Litre,
    Unit::Millilitre,
    Unit::UsQuart,
    Unit::ImperialPint,
];

fn volume() -> impl Strategy<Value = Amount> {
    (1..=99_999_i64, 0..=3_u8, prop::sample::select(&VOLUMES[..]))
        .prop_map(|(mantissa, decimals, unit)| amount(mantissa, decimals, unit))
}

fn temperature() -> impl Strategy<Value = Amount> {
    (-500..=1500_i64).prop_map(|tenths| amount(tenths, 1, Unit::DegreeCelsius))
}

fn density() -> impl Strategy<Value = Amount> {
    (8010..=11_630_i64).prop_map(|tenths| amount(tenths, 1, Unit::KilogramPerCubicMetre))
}

fn base() -> impl Strategy<Value = Base> {
    prop::sample::select(&BASES[..])
}

/// Any amount there can be, mostly of one kind.
fn mostly(kind: Kind) -> impl Strategy<Value = Amount> {
    let own: Vec<Unit> = Unit::ALL
        .iter()
        .copied()
        .filter(|unit| unit.kind() == kind)
        .collect();
    let unit = prop_oneof![
        20 => prop::sample::select(own),
        1 => prop::sample::select(Unit::ALL),
    ];
    let mantissa = prop_oneof![
        -999_999_999_999_999..=999_999_999_999_999_i64,
        -20..=2000_i64
    ];
    (mantissa, 0..=9_u8, unit)
        .prop_map(|(mantissa, decimals, unit)| amount(mantissa, decimals, unit))
}

/// Relative difference.
fn apart(one: Amount, other: Amount) -> f64 {
    (one.si() / other.si() - 1.0).abs()
}

fn is_rounded(base: Base) -> bool {
    matches!(base, Base::At60F2004 | Base::At15C2004)
}

fn prismoid() -> impl Strategy<Value = Sump> {
    // Sides that grow evenly from one rectangle to another.
    (
        10..=500_i64,
        [10..=400_i64, 10..=400],
        [10..=400_i64, 10..=400],
    )
        .prop_map(|(height, [a, b], [c, d])| {
            let area = |size| amount(size, 2, Unit::SquareCentimetre);
            // In quarters of mm², so that the middle is whole.
            let [bottom, middle, top] = [4 * a * b, (a + c) * (b + d), 4 * c * d].map(area);
            Sump::prismoid(amount(height, 0, Unit::Millimetre), bottom, middle, top).unwrap()
        })
}

fn cylinder() -> impl Strategy<Value = Sump> {
    (10..=900_i64, 10..=900_i64).prop_map(|(diameter, length)| {
        let mm = |length| amount(length, 0, Unit::Millimetre);
        Sump::lying_cylinder(mm(diameter), mm(length)).unwrap()
    })
}

fn strapping() -> impl Strategy<Value = Sump> {
    prop::collection::vec((1..=50_i64, 1..=900_i64), 2..12).prop_map(|steps| {
        let (mut level, mut held) = (0, 0);
        let rows = steps.iter().map(|(rise, more)| {
            (level, held) = (level + rise, held + more);
            (
                amount(level, 0, Unit::Millimetre),
                amount(held, 2, Unit::Litre),
            )
        });
        Sump::strapping(&rows.collect::<Vec<_>>()).unwrap()
    })
}

fn sump() -> impl Strategy<Value = Sump> {
    prop_oneof![prismoid(), cylinder(), strapping()]
}

fn sizes() -> impl Strategy<Value = Vec<(i64, Option<u64>, Option<u64>)>> {
    let price = prop::option::of(0..=5000_u64);
    let stock = prop::option::weighted(0.3, 0..=6_u64);
    prop::collection::vec((1..=200_i64, price, stock), 1..=6)
}

const NAMES: [&str; 6] = ["one", "two", "three", "four", "five", "six"];

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
    fn there_and_back_is_where_it_was(
        held in volume(), from in temperature(), to in temperature(), density in density(), base in base(),
    ) {
        let oil = Expansion::Oil { density, base };
        let there = at_temperature(held, from, to, oil).unwrap();
        let back = at_temperature(there, to, from, oil).unwrap();
        prop_assert_eq!(there.unit(), held.unit());
        prop_assert!((back.to_f64() - held.to_f64()).abs() <= 1e-9 + 1e-11 * held.to_f64(), "{held} {there} {back}");
        // What it is more is what is told of it.
        let more = temperature_error(held, to, from, oil).unwrap();
        prop_assert!((held.to_f64() + more.to_f64() - there.to_f64()).abs() <= 1e-8 + 1e-10 * held.to_f64());
    }

    #[test]
    fn warm_fluid_takes_more_room(
        held in volume(), one in temperature(), other in temperature(), density in density(), base in base(),
    ) {
        prop_assume!(one != other);
        let (one, other) = if one < other { (one, other) } else { (other, one) };
        let factor = |at| correction_factor(density, at, base).unwrap();
        prop_assert!(factor(other) < factor(one) || is_rounded(base) && factor(other) == factor(one));
        let grown = at_temperature(held, one, other, Expansion::Oil { density, base }).unwrap();
        prop_assert!(grown >= held);
        let plain = Expansion::Coefficient(amount(7, 4, Unit::PerKelvin));
        prop_assert!(temperature_error(held, one, other, plain).unwrap() <= amount(0, 0, Unit::Litre));
    }

    #[test]
    fn heavier_oil_grows_less(at in temperature(), one in density(), other in density(), base in base()) {
        let (one, other) = if one < other { (one, other) } else { (other, one) };
        let factor = |density| (correction_factor(density, at, base).unwrap().si() - 1.0).abs();
        let lost = if is_rounded(base) { 1e-5 } else { 0.0 };
        prop_assert!(factor(other) <= factor(one) + lost);
    }

    #[test]
    fn densities_and_masses_invert(held in volume(), at in temperature(), density in density(), base in base()) {
        let hot = density_at(density, at, base).unwrap();
        let back = base_density(hot, at, base).unwrap();
        let within = if is_rounded(base) { 8e-6 } else { 1e-11 };
        prop_assert!(apart(back, density) <= within, "{density} {hot} {back}");
        let weight = mass(held, at, density, base).unwrap();
        let back = volume_of_mass(weight, at, density, base).unwrap();
        prop_assert!((back.si() - held.si()).abs() <= 1e-11 + 1e-10 * held.si(), "{held} {weight} {back}");
    }

    #[test]
    fn the_forms_agree(at in temperature(), tenths in 8050..=11_600_i64) {
        // The same oil, by its density at 15 °C and at 60 °F. The constant per °C is printed to four digits.
        let at_15c = amount(tenths, 1, Unit::KilogramPerCubicMetre);
        let fahrenheit_60 = amount(60, 0, Unit::DegreeFahrenheit);
        let at_60f = density_at(at_15c, fahrenheit_60, Base::At15C).unwrap();
        let hot = [(at_15c, Base::At15C), (at_60f, Base::At60F), (at_60f, Base::At60F2004), (at_15c, Base::At15C2004)];
        let hot = hot.map(|(density, base)| density_at(density, at, base).unwrap());
        for other in hot {
            prop_assert!(apart(hot[0], other) < 1.2e-4, "{at} {hot:?}");
        }
    }

    #[test]
    fn level_and_volume_invert(sump in sump(), share in 1..=999_u32) {
        // Strapping tables begin above zero.
        let top = highest(&sump);
        let level = Amount::from_computed(top * f64::from(share) / 1000.0, Unit::Millimetre).unwrap();
        let Ok(below) = volume_below(&sump, level) else { return Ok(()); };
        let back = level_for(&sump, below).unwrap();
        // The print of the volume has twelve digits.
        prop_assert!((back.to_f64() - level.to_f64()).abs() < 1e-5 * top, "{level} {below} {back}");
        let again = volume_below(&sump, back).unwrap();
        prop_assert!((again.to_f64() - below.to_f64()).abs() <= 2e-9 + 1e-10 * below.to_f64(), "{below} {again}");
    }

    #[test]
    fn more_level_is_more_volume(sump in sump(), one in 0..=1000_u32, other in 0..=1000_u32) {
        prop_assume!(one != other);
        let (one, other) = (one.min(other), one.max(other));
        let top = highest(&sump);
        let at = |share: u32| {
            let level = Amount::from_computed(top * f64::from(share) / 1000.0, Unit::Millimetre).unwrap();
            volume_below(&sump, level).ok()
        };
        if let (Some(less), Some(more)) = (at(one), at(other)) {
            prop_assert!(less < more);
        }
    }

    #[test]
    fn the_rest_of_a_circle_is_the_other_segment(level in 0..=1000_i64) {
        let share = |level| {
            let diameter = amount(1, 0, Unit::Metre);
            segment_share(amount(level, 0, Unit::Millimetre), diameter).unwrap().si()
        };
        prop_assert!((share(level) + share(1000 - level) - 1.0).abs() < 2e-9);
    }

    #[test]
    fn a_steeper_tilt_deceives_more(
        one in 0..450_i64, other in 0..450_i64, surface in 1..=2000_i64, offset in 1..=500_i64,
    ) {
        prop_assume!(one != other);
        let (one, other) = (one.min(other), one.max(other));
        let error = |tilt| {
            let surface = amount(surface, 0, Unit::SquareCentimetre);
            tilt_error(surface, amount(offset, 0, Unit::Millimetre), amount(tilt, 1, Unit::Degree)).unwrap()
        };
        let (less, more) = (error(one), error(other));
        prop_assert!(less.height < more.height && less.volume < more.volume);
        let litres = more.height.si() * surface as f64 * 0.1;
        prop_assert!((more.volume.to_f64() - litres).abs() < 1e-8 + 1e-8 * litres);
    }

    #[test]
    fn so_many_cycles_are_enough_and_one_less_is_not(
        capacity in 100..=2000_i64, part in 5..=100_i64, fresh in 0..=99_900_i64,
    ) {
        let whole = amount(capacity * 100, 4, Unit::Litre);
        let drained = amount(capacity * part, 4, Unit::Litre);
        let fresh = amount(fresh, 3, Unit::Percent);
        let needed = cycles_needed(whole, drained, fresh).unwrap();
        let after = |cycles| exchange(whole, drained, cycles).unwrap();
        prop_assert_eq!(after(needed.cycles).fresh, needed.fresh);
        prop_assert!(needed.fresh.si() >= fresh.si() - 1e-9);
        if let Some(less) = needed.cycles.checked_sub(1) {
            prop_assert!(after(less).fresh.si() < fresh.si() + 1e-9);
        }
        // All of it wrong is old fluid.
        let wrong = wrong_left(whole, whole, drained, needed.cycles).unwrap();
        prop_assert_eq!(wrong, needed.old);
        prop_assert!((needed.old.si() + needed.fresh.si() - 1.0).abs() < 2e-9);
    }

    #[test]
    fn draining_in_parts_beats_flushing(capacity in volume(), part in 1..=100_i64, cycles in 0..=20_u32) {
        // One volume through, mixing all the while, leaves more than the same in drains.
        let drained = Amount::from_computed(capacity.to_f64() * part as f64 / 100.0, capacity.unit()).unwrap();
        prop_assume!(drained <= capacity);
        let drains = exchange(capacity, drained, cycles).unwrap();
        let flushed = flush(capacity, drains.used).unwrap();
        prop_assert!(drains.old.si() <= flushed.old.si() + 1e-8);
    }

    #[test]
    fn a_flush_and_what_it_needs_invert(capacity in volume(), fresh in 0..=999_999_i64) {
        let fresh = amount(fresh, 6, Unit::One);
        let needed = flush_needed(capacity, fresh).unwrap().volume;
        let told = flush(capacity, needed).unwrap();
        let lost = 1e-9 / capacity.to_f64();
        prop_assert!((told.fresh.si() - fresh.si()).abs() < 2e-9 + lost, "{capacity} {needed:?} {fresh} {}", told.fresh);
    }

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
                within_date: true,
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

    #[test]
    fn nothing_is_answered_with_nonsense(
        volumes in prop::array::uniform4(mostly(Kind::Volume)),
        temperatures in [mostly(Kind::Temperature), mostly(Kind::Temperature)],
        density in mostly(Kind::Density),
        weight in mostly(Kind::Mass),
        coefficient in mostly(Kind::Expansion),
        lengths in [mostly(Kind::Length), mostly(Kind::Length)],
        areas in prop::array::uniform3(mostly(Kind::Area)),
        tilt in mostly(Kind::Angle),
        fresh in mostly(Kind::Ratio),
        cycles in any::<u32>(),
        base in base(),
    ) {
        let [a, b, c, d] = volumes;
        let [t, u] = temperatures;
        let [h, l] = lengths;
        let [x, y, z] = areas;
        let mut told = Vec::new();
        let mut keep = |answer: Result<Vec<Amount>, brimline::Error>| {
            match answer {
                Ok(amounts) => told.extend(amounts),
                Err(error) => {
                    let kinds = [ErrorKind::OutOfRange, ErrorKind::WrongKind, ErrorKind::TooManyDigits];
                    assert!(kinds.contains(&error.kind()), "{error}");
                    assert!(!error.first().path.is_empty(), "{error}");
                }
            }
        };
        let one = |answer: Result<Amount, brimline::Error>| answer.map(|amount| vec![amount]);
        keep(one(correction_factor(density, t, base)));
        keep(one(density_at(density, t, base)));
        keep(one(base_density(density, t, base)));
        for expansion in [Expansion::Oil { density, base }, Expansion::Coefficient(coefficient)] {
            keep(one(at_temperature(a, t, u, expansion)));
            keep(one(temperature_error(a, t, u, expansion)));
        }
        keep(one(mass(a, t, density, base)));
        keep(one(volume_of_mass(weight, t, density, base)));
        keep(tilt_error(x, h, tilt).map(|error| vec![error.height, error.volume]));
        keep(one(segment_share(h, l)));
        for sump in [Sump::prismoid(h, x, y, z), Sump::lying_cylinder(h, l), Sump::strapping(&[(h, a), (l, b)])] {
            match sump {
                Ok(sump) => {
                    keep(one(volume_below(&sump, h)));
                    keep(one(volume_below(&sump, l)));
                    keep(one(level_for(&sump, a)));
                }
                Err(error) => keep(Err(error)),
            }
        }
        keep(exchange(a, b, cycles).map(|left| vec![left.old, left.fresh, left.used]));
        keep(cycles_needed(a, b, fresh).map(|left| vec![left.old, left.fresh, left.used]));
        keep(flush(a, b).map(|left| vec![left.old, left.fresh]));
        keep(one(flush_needed(a, fresh).map(|needed| needed.volume)));
        keep(one(wrong_left(a, b, c, cycles)));
        let sizes: Vec<Container<'_>> = [b, c]
            .iter()
            .zip(NAMES)
            .map(|(volume, name)| Container { name, volume: *volume, price: Some(cycles.into()), stock: None })
            .collect();
        keep(containers(a, &sizes, &[], d).map(|plans| {
            let plans = [plans.fewest, plans.cheapest, plans.least_waste].into_iter().flatten();
            plans.flat_map(|plan| [plan.total, plan.left]).collect()
        }));
        for amount in told {
            prop_assert!(amount.to_f64().is_finite());
        }
    }
}

/// The highest level of a sump, mm, as its refusal tells it.
fn highest(sump: &Sump) -> f64 {
    let above = amount(999_999_999, 0, Unit::Millimetre);
    let error = volume_below(sump, above).unwrap_err();
    let allowed = error.first().allowed[0].clone();
    let (_, top) = allowed.split_once(" to ").unwrap();
    Amount::parse(top).unwrap().to_f64()
}
