//! Volumes, temperatures, densities and bases as they may be given, and amounts that may not.

use brimline::volume::Base;
use brimline::{Amount, Kind, Unit};
use proptest::prelude::*;

const BASES: [Base; 4] = [Base::At15C, Base::At60F, Base::At60F2004, Base::At15C2004];

pub fn amount(mantissa: i64, decimals: u8, unit: Unit) -> Amount {
    Amount::new(mantissa, decimals, unit).unwrap()
}

const VOLUMES: [Unit; 4] = [
    Unit::Litre,
    Unit::Millilitre,
    Unit::UsQuart,
    Unit::ImperialPint,
];

pub fn volume() -> impl Strategy<Value = Amount> {
    (1..=99_999_i64, 0..=3_u8, prop::sample::select(&VOLUMES[..]))
        .prop_map(|(mantissa, decimals, unit)| amount(mantissa, decimals, unit))
}

pub fn temperature() -> impl Strategy<Value = Amount> {
    (-500..=1500_i64).prop_map(|tenths| amount(tenths, 1, Unit::DegreeCelsius))
}

pub fn density() -> impl Strategy<Value = Amount> {
    (8010..=11_630_i64).prop_map(|tenths| amount(tenths, 1, Unit::KilogramPerCubicMetre))
}

pub fn base() -> impl Strategy<Value = Base> {
    prop::sample::select(&BASES[..])
}

/// Any amount there can be, mostly of one kind.
pub fn mostly(kind: Kind) -> impl Strategy<Value = Amount> {
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
