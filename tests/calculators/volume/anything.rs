//! Any amounts at all: a finite answer, or an error that says where.

use super::containers::NAMES;
use super::given::{base, mostly};
use brimline::volume::{
    Container, Expansion, Sump, at_temperature, base_density, containers, correction_factor,
    cycles_needed, density_at, exchange, flush, flush_needed, level_for, mass, segment_share,
    temperature_error, tilt_error, volume_below, volume_of_mass, wrong_left,
};
use brimline::{Amount, ErrorKind, Kind};
use proptest::prelude::*;

proptest! {
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
