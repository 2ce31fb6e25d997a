//! Any amount of any unit, and what it is exactly.

use crate::quantity_definitions::definition;
use brimline::{Amount, Unit};
use num_bigint::BigInt;
use num_rational::BigRational;
use proptest::prelude::*;

fn any_unit() -> impl Strategy<Value = Unit> {
    (0..Unit::ALL.len()).prop_map(|position| Unit::ALL[position])
}

pub fn any_amount() -> impl Strategy<Value = Amount> {
    let mantissa = prop_oneof![
        -999_999_999_999_999_i64..=999_999_999_999_999,
        -10_000_i64..=10_000
    ];
    (mantissa, 0..=9_u8, any_unit())
        .prop_map(|(mantissa, decimals, unit)| Amount::new(mantissa, decimals, unit).unwrap())
}

pub fn any_two() -> impl Strategy<Value = (Amount, Amount)> {
    (any_amount(), any_amount()).prop_map(|(one, other)| {
        let units: Vec<Unit> = Unit::ALL
            .iter()
            .copied()
            .filter(|unit| unit.kind() == one.kind())
            .collect();
        let unit = units[other.mantissa().unsigned_abs() as usize % units.len()];
        (
            one,
            Amount::new(other.mantissa(), other.decimals(), unit).unwrap(),
        )
    })
}

pub fn parts(amount: &Amount) -> (i64, u8, Unit) {
    (amount.mantissa(), amount.decimals(), amount.unit())
}

pub fn number(amount: &Amount) -> BigRational {
    BigRational::new(
        amount.mantissa().into(),
        BigInt::from(10).pow(amount.decimals().into()),
    )
}

pub fn value(amount: &Amount) -> BigRational {
    let (size, zero) = definition(amount.unit());
    number(amount) * size + zero
}
