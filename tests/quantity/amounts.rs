//! Amounts compared, added, taken from each other and rounded, all of it exactly.

use super::any::{any_two, number, parts, value};
use crate::quantity_definitions::{definition, rational};
use brimline::{Amount, ErrorKind, Interval, Kind, Rounding, Unit};
use num_bigint::BigInt;
use num_rational::BigRational;
use num_traits::{Signed, ToPrimitive, Zero};
use proptest::prelude::*;
use std::collections::HashSet;

#[test]
fn small_pours_reach_a_limit_exactly() {
    // In binary floating point fourteen times 0.1 is more than 1.4: the case that decides on amounts must not.
    assert!((0..14).map(|_| 0.1).sum::<f64>() > 1.4);
    let limit = Amount::parse("1.4 US qt").unwrap();
    let pour = Amount::parse("0.1 US qt").unwrap();
    let mut poured = Amount::parse("0.0 US qt").unwrap();
    for _ in 0..14 {
        assert!(poured < limit);
        poured = poured.checked_add(pour).unwrap();
    }
    assert_eq!(poured, limit);
    assert!(
        poured
            .checked_add(Amount::parse("0.000000001 US qt").unwrap())
            .unwrap()
            > limit
    );
}

#[test]
fn equal_values_are_one_in_a_set() {
    let texts = ["1 L", "1.0 L", "1000 mL", "1000 cm³", "0.001 m³"];
    let set: HashSet<Amount> = texts
        .iter()
        .map(|text| Amount::parse(text).unwrap())
        .collect();
    assert_eq!(set.len(), 1);
    let (gauge, absolute) = (
        Amount::parse("1 psi").unwrap(),
        Amount::parse("1 psi abs").unwrap(),
    );
    assert_ne!(gauge, absolute);
    assert_eq!(gauge.partial_cmp(&absolute), None);
}

#[test]
fn values_go_between_threads() {
    fn shared<T: Send + Sync + 'static>() {}
    shared::<Amount>();
    shared::<Interval>();
    shared::<Unit>();
}

fn any_rounding() -> impl Strategy<Value = Rounding> {
    (0..Rounding::WORDS.len()).prop_map(|position| Rounding::WORDS[position].1)
}

/// Rounding as the words say it, on rationals.
fn rounded(number: &BigRational, places: u8, rounding: Rounding) -> BigInt {
    let scaled = number * BigRational::from(BigInt::from(10).pow(places.into()));
    let (floor, ceiling) = (scaled.floor(), scaled.ceil());
    let (toward, away) = if scaled.is_negative() {
        (&ceiling, &floor)
    } else {
        (&floor, &ceiling)
    };
    let chosen = match rounding {
        Rounding::Floor => &floor,
        Rounding::Ceiling => &ceiling,
        Rounding::Down => toward,
        Rounding::Up => away,
        _ => match ((&scaled - toward).abs()).cmp(&(&scaled - away).abs()) {
            std::cmp::Ordering::Less => toward,
            std::cmp::Ordering::Greater => away,
            std::cmp::Ordering::Equal if rounding == Rounding::HalfUp => away,
            std::cmp::Ordering::Equal if (toward.numer() % BigInt::from(2)).is_zero() => toward,
            std::cmp::Ordering::Equal => away,
        },
    };
    chosen.to_integer()
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 1_000, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn order_is_that_of_the_values((one, other) in any_two()) {
        let order = one.compare(&other).unwrap();
        prop_assert_eq!(order, value(&one).cmp(&value(&other)));
        prop_assert_eq!(other.compare(&one).unwrap(), order.reverse());
        prop_assert_eq!(one == other, order.is_eq());
    }

    #[test]
    fn another_unit_is_rounded_as_said((one, other) in any_two(), places in 0..=9_u8, rounding in any_rounding()) {
        let unit = other.unit();
        let (size, zero) = definition(unit);
        let exact = (value(&one) - zero) / size;
        let expected = rounded(&exact, places, rounding);
        match one.to(unit, places, rounding) {
            Ok(found) => prop_assert_eq!(parts(&found), (expected.to_i64().unwrap(), places, unit)),
            Err(error) => {
                prop_assert!(matches!(error.kind(), ErrorKind::TooManyDigits | ErrorKind::OutOfRange));
                prop_assert!(expected.abs() >= BigInt::from(10).pow(15));
            }
        }
        match one.to_exact(unit) {
            Some(found) => {
                prop_assert_eq!(number(&found), exact);
                prop_assert!(found.decimals() == 0 || found.mantissa() % 10 != 0);
            }
            None => {
                let ends = (&exact * rational("1000000000")).is_integer();
                let digits = exact.numer().abs().to_string().len();
                prop_assert!(!ends || digits > 6, "{one} in {unit} is {exact}");
            }
        }
    }

    #[test]
    fn sums_and_differences_are_exact((one, other) in any_two()) {
        let difference = one.checked_sub(other);
        if one.kind() == Kind::Temperature {
            prop_assert_eq!(one.checked_add(other).unwrap_err().kind(), ErrorKind::WrongKind);
            if let Ok(difference) = difference {
                prop_assert_eq!(difference.kind(), Kind::TemperatureDifference);
                prop_assert_eq!(value(&difference), value(&one) - value(&other));
                prop_assert_eq!(other.checked_add(difference).ok().is_none_or(|sum| sum == one), true);
            }
            return Ok(());
        }
        for (found, expected) in [(one.checked_add(other), value(&one) + value(&other)), (difference, value(&one) - value(&other))] {
            let number = &expected / definition(one.unit()).0;
            match found {
                Ok(found) => {
                    prop_assert_eq!(value(&found), expected);
                    prop_assert_eq!(found.unit(), one.unit());
                }
                Err(error) => {
                    prop_assert!(matches!(error.kind(), ErrorKind::TooManyDigits | ErrorKind::OutOfRange));
                    let short = (&number * rational("1000000")).is_integer() && number.abs() < rational("1000000");
                    prop_assert!(!short || one.decimals() > 6 || other.decimals() > 6, "{one} and {other}: {number}");
                }
            }
        }
    }
}
