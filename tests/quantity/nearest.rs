//! Whether a double is the nearest there is to an exact value.

use num_bigint::BigInt;
use num_rational::BigRational;
use num_traits::{Signed, ToPrimitive, Zero};

pub fn exact(number: f64) -> BigRational {
    BigRational::from_float(number).expect("a finite number")
}

/// The double nearest to a value of ordinary size, by the exact test below.
pub fn nearest(value: &BigRational) -> f64 {
    let guess = value.to_f64().expect("a double");
    [guess, guess.next_up(), guess.next_down()]
        .into_iter()
        .find(|guess| is_nearest(value, *guess))
        .expect("one of the neighbours is nearest")
}

/// Whether no double is nearer to the value, and of two as near this is the even one.
pub fn is_nearest(value: &BigRational, found: f64) -> bool {
    is_nearest_to(value.numer(), value.denom(), found)
}

/// The same of above/below, which need not be in lowest terms; below is positive.
pub fn is_nearest_to(above: &BigInt, below: &BigInt, found: f64) -> bool {
    if !found.is_finite() || (!above.is_zero() && above.is_negative() != found.is_sign_negative()) {
        return false;
    }
    let even = found.to_bits() & 1 == 0;
    let fraction = found.to_bits() & ((1 << 52) - 1);
    let (whole, exponent) = match found.to_bits() >> 52 & 0x7ff {
        0 => (fraction, -1074),
        biased => (fraction | 1 << 52, biased as i32 - 1075),
    };
    // In quarters of the last place: halfway to the next double up and down, whose place below a power of two is
    // half as large.
    let up = 4 * whole + 2;
    let down = if fraction == 0 && exponent > -1074 {
        (4 * whole).checked_sub(1)
    } else {
        (4 * whole).checked_sub(2)
    };
    let scale = exponent - 2;
    let value = above.abs() << (-scale).max(0) as u32;
    let place = below << scale.max(0) as u32;
    let fits = |order: std::cmp::Ordering| order.is_lt() || (order.is_eq() && even);
    fits(value.cmp(&(&place * up))) && down.is_none_or(|down| fits((&place * down).cmp(&value)))
}
