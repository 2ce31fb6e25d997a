//! Conversions that lie halfway between two doubles, or as near to it as can be.

use super::conversion::Pair;
use super::nearest::exact;
use crate::quantity_definitions::rational;
use brimline::convert;
use num_bigint::BigInt;
use num_rational::BigRational;
use num_traits::{One, Signed, ToPrimitive, Zero};

/// Numbers whose conversion lies as near to halfway between two doubles as the pair allows, or exactly there.
///
/// With the ratio of the units a/b in lowest terms, scaled by a power of two so that the result has the 53 bits
/// of a double, number · a = b · whole + b/2 + rest; a small rest is sought.
fn near_ties(ratio: &BigRational) -> Vec<f64> {
    let mut found = Vec::new();
    let about = ratio.numer().bits() as i32 - ratio.denom().bits() as i32;
    for down in about - 1..=about + 1 {
        let scaled = ratio * rational("2").pow(-down);
        let (a, b) = (scaled.numer(), scaled.denom());
        let Some(inverse) = a.modinv(b) else { continue };
        let mut near = 0;
        for rest in 0_i64..20_000 {
            let rest = if rest % 2 == 0 {
                rest / 2
            } else {
                -(rest + 1) / 2
            };
            // The remainder of a division by a positive number, taken upward from zero.
            let number: BigInt = ((((b >> 1) + rest) * &inverse) % b + b) % b;
            let (low, high) = (BigInt::one() << 52, BigInt::one() << 53);
            let steps: BigInt = if number < low {
                (&low - &number + b - BigInt::one()) / b
            } else {
                BigInt::zero()
            };
            let number: BigInt = number + steps * b;
            if number < high {
                found.push(number.to_f64().expect("53 bits"));
                near += 1;
            }
            if near == 12 {
                break;
            }
        }
    }
    found
}

#[test]
fn numbers_next_to_a_tie() {
    let mut ties = 0;
    let mut close = 0;
    for pair in Pair::all().filter(|pair| pair.from != pair.to && pair.shift.is_zero()) {
        for number in near_ties(&pair.slope) {
            pair.check(number);
            pair.check(-number * 2_f64.powi(100));
            let (above, below) = pair.exact(number);
            let found = convert(number, pair.from, pair.to).unwrap();
            let place = exact(found.next_up() - found);
            let away =
                (BigRational::new(above, below) - exact(found)).abs() / place - rational("1/2");
            ties += u32::from(away.is_zero());
            close += u32::from(!away.is_zero() && away.abs() < rational("1/1000000000"));
        }
    }
    assert!(ties > 100 && close > 300, "{ties} ties, {close} close");
}
