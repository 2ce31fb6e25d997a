//! Conversion of doubles, correctly rounded.

use super::divisor::Divisor;
use super::refusal;
use super::unit::Unit;
use crate::error::{Error, ErrorKind, Fault};
use alloc::string::String;

/// What names a unit: a [`Unit`], or its text.
pub trait IntoUnit {
    /// The unit named.
    ///
    /// # Errors
    ///
    /// As [`Unit::parse`].
    fn into_unit(self) -> Result<Unit, Error>;
}

impl IntoUnit for Unit {
    #[inline]
    fn into_unit(self) -> Result<Unit, Error> {
        Ok(self)
    }
}

impl IntoUnit for &str {
    #[inline]
    fn into_unit(self) -> Result<Unit, Error> {
        Unit::parse(self)
    }
}

impl IntoUnit for &String {
    #[inline]
    fn into_unit(self) -> Result<Unit, Error> {
        Unit::parse(self)
    }
}

/// Converts a number from one unit to another of the same kind.
///
/// The answer is the double nearest to the exact value, halfway cases to the even one: for every pair of a
/// kind and every finite double, tiny and huge ones included. Minus zero keeps its sign where both scales
/// start at the same zero.
///
/// ```
/// use brimline::{Unit, convert};
/// assert_eq!(convert(104.0, Unit::DegreeFahrenheit, Unit::DegreeCelsius)?, 40.0);
/// assert_eq!(convert(1.0, "lbf·ft", "N·m")?, 1.3558179483314004);
/// assert!(convert(1.0, "L", "N·m").is_err());
/// # Ok::<(), brimline::Error>(())
/// ```
///
/// # Errors
///
/// [`NotANumber`](crate::ErrorKind::NotANumber) for a NaN or an infinity, [`OutOfRange`](crate::ErrorKind::OutOfRange) where
/// the result is above the largest double, [`WrongKind`](crate::ErrorKind::WrongKind) for units of two kinds, and the
/// errors of [`Unit::parse`] for names.
#[inline]
pub fn convert(number: f64, from: impl IntoUnit, to: impl IntoUnit) -> Result<f64, Error> {
    convert_units(number, from.into_unit()?, to.into_unit()?)
}

fn convert_units(number: f64, from: Unit, to: Unit) -> Result<f64, Error> {
    if from.kind() != to.kind() {
        return Err(refusal::of_wrong_kind(from.kind(), to).into());
    }
    let Some(double) = Double::of(number) else {
        let fault = Fault::new(ErrorKind::NotANumber).hint("a finite number is needed");
        return Err(fault.got(&alloc::format!("{number}")).into());
    };
    let converted = if from.offset() == to.offset() {
        double.scaled(from, to)
    } else {
        double.shifted(from, to)
    };
    match converted {
        Some(result) => Ok(result),
        None => Err(Fault::new(ErrorKind::OutOfRange)
            .got(&alloc::format!("{number:e}"))
            .hint("the result is above the largest double")
            .into()),
    }
}

/// A finite double: ± mantissa · 2^exponent, the mantissa below 2^53.
struct Double {
    number: f64,
    mantissa: u64,
    exponent: i32,
}

/// Bits of the fraction of a double.
const FRACTION: u32 = 52;

impl Double {
    #[inline]
    fn of(number: f64) -> Option<Self> {
        let bits = number.to_bits();
        let fraction = bits & 0x000f_ffff_ffff_ffff;
        match (bits >> FRACTION) as i32 & 0x7ff {
            0x7ff => None,
            0 => Some(Double {
                number,
                mantissa: fraction,
                exponent: -1074,
            }),
            biased => {
                let mantissa = fraction | 0x0010_0000_0000_0000;
                Some(Double {
                    number,
                    mantissa,
                    exponent: biased.wrapping_sub(1075),
                })
            }
        }
    }

    /// Between two units whose scales start at the same zero.
    #[inline]
    fn scaled(self, from: Unit, to: Unit) -> Option<f64> {
        if self.mantissa == 0 || from.quanta() == to.quanta() {
            return Some(self.number);
        }
        let product = u128::from(self.mantissa).wrapping_mul(from.quanta().into());
        divided(
            self.number.is_sign_negative(),
            product,
            to.divisor(),
            self.exponent,
            false,
        )
    }

    /// Between two temperature scales of different zeros.
    ///
    /// In hundredths of a quantum: result · size = number · size of the one + difference of the zeros.
    fn shifted(self, from: Unit, to: Unit) -> Option<f64> {
        const HUNDREDTH: i64 = 10_000_000;
        let size = i128::from(from.quanta()).wrapping_mul(100);
        let shift = i128::from(from.offset().wrapping_sub(to.offset()) / HUNDREDTH);
        let number = i128::from(self.mantissa).wrapping_mul(if self.number.is_sign_negative() {
            size.wrapping_neg()
        } else {
            size
        });
        // `number` is below 2^63 and `shift` below 2^18. The smaller of the two, where it lies outside
        // 128 bits, only says on which side of the larger the sum is.
        let (sum, sticky, exponent) = match self.exponent {
            -100..=0 => {
                let shift = shift.wrapping_shl(self.exponent.unsigned_abs());
                (number.wrapping_add(shift), false, self.exponent)
            }
            1..=60 => (
                number
                    .wrapping_shl(self.exponent.unsigned_abs())
                    .wrapping_add(shift),
                false,
                0,
            ),
            ..-100 => {
                let (low, sticky) =
                    shifted_right(number, self.exponent.wrapping_add(100).unsigned_abs());
                (shift.wrapping_shl(100).wrapping_add(low), sticky, -100)
            }
            61.. => {
                let exponent = self.exponent.wrapping_sub(60);
                let (low, sticky) = shifted_right(shift, exponent.unsigned_abs());
                (number.wrapping_shl(60).wrapping_add(low), sticky, exponent)
            }
        };
        let negative = sum < 0;
        // What the sum leaves out is upward; below zero that is toward zero, so one is taken off the size.
        let magnitude = if negative && sticky {
            (!sum).unsigned_abs()
        } else {
            sum.unsigned_abs()
        };
        if magnitude == 0 && !sticky {
            return Some(0.0);
        }
        divided(negative, magnitude, to.divisor(), exponent, sticky)
    }
}

/// A value shifted right, rounded down, and whether anything was lost.
fn shifted_right(value: i128, by: u32) -> (i128, bool) {
    let by = by.min(127);
    let low = value >> by;
    (low, low << by != value)
}

/// The double nearest to ± (value, or a little more if `sticky`) / divisor · 2^exponent, halfway to even; `None`
/// above the largest. The value is not 0.
#[inline]
fn divided(
    negative: bool,
    value: u128,
    divisor: Divisor,
    exponent: i32,
    sticky: bool,
) -> Option<f64> {
    // The highest bit of the value goes to place 126, so the quotient has 63 or 64 bits.
    let up = value.leading_zeros().cast_signed().wrapping_sub(1);
    let (value, lost) = if up < 0 {
        (value >> 1, value & 1 == 1)
    } else {
        (value << up, false)
    };
    let (quotient, rest) = divisor.divide(value);
    let exponent = exponent
        .wrapping_sub(up)
        .wrapping_add(divisor.shift.cast_signed());
    rounded(negative, quotient, exponent, sticky || lost || rest != 0)
}

/// The double nearest to ± numerator / divisor, halfway to even; `None` above the largest. The numerator is not
/// 0 and the divisor below 2^127.
pub(super) fn nearest(negative: bool, numerator: u128, divisor: u128) -> Option<f64> {
    let up = numerator.leading_zeros();
    let mut exponent = up.cast_signed().wrapping_neg();
    let mut quotient = (numerator << up).checked_div(divisor)?;
    let mut rest = (numerator << up).checked_rem(divisor)?;
    while quotient < 1 << 63 {
        let up = rest.leading_zeros().min(quotient.leading_zeros()).min(64);
        rest = rest.checked_shl(up)?;
        quotient = (quotient << up) | rest.checked_div(divisor)?;
        rest = rest.checked_rem(divisor)?;
        exponent = exponent.wrapping_sub(up.cast_signed());
    }
    let down = 64_u32.saturating_sub(quotient.leading_zeros());
    let leading = quotient >> down;
    let sticky = rest != 0 || leading << down != quotient;
    rounded(
        negative,
        leading as u64,
        exponent.wrapping_add(down.cast_signed()),
        sticky,
    )
}

/// The double nearest to ± (quotient, or a little more if `sticky`) · 2^exponent; the quotient has 63 or 64 bits.
#[inline]
fn rounded(negative: bool, quotient: u64, exponent: i32, sticky: bool) -> Option<f64> {
    let bits = 64_i32.wrapping_sub(quotient.leading_zeros().cast_signed());
    // The place of the leading bit, and how many bits a double keeps there.
    let top = exponent.wrapping_add(bits).wrapping_sub(1);
    let kept = top.wrapping_add(1075).clamp(-1, 53);
    let drop = bits.wrapping_sub(kept).unsigned_abs();
    let mantissa = quotient.checked_shr(drop).unwrap_or(0);
    let lost = quotient ^ mantissa.checked_shl(drop).unwrap_or(0);
    // Below half a unit of the smallest double there is nothing to round up to.
    let up = match 1_u64.checked_shl(drop.wrapping_sub(1)) {
        Some(half) => lost > half || (lost == half && (sticky || mantissa & 1 == 1)),
        None => false,
    };
    let biased = top.wrapping_add(1022).max(0);
    if biased > 2045 {
        return None;
    }
    // The leading bit of a full mantissa adds one to the exponent, and so does a carry out of it.
    let magnitude = u64::from(biased.unsigned_abs())
        .wrapping_shl(FRACTION)
        .wrapping_add(mantissa)
        .wrapping_add(u64::from(up));
    let result = f64::from_bits(magnitude | (u64::from(negative) << 63));
    result.is_finite().then_some(result)
}
