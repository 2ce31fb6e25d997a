//! The exact value of an amount, as integers.

use super::amount::Amount;
use super::number::MANTISSAS;
use super::refusal;
use super::rounding::Rounding;
use super::unit::Unit;
use crate::error::{Error, Fault};

/// Billionths in a quantum.
const BILLION: u32 = 1_000_000_000;

/// Powers of ten that fit the decimals of an amount.
const POWERS: [u32; 10] = [
    1,
    10,
    100,
    1_000,
    10_000,
    100_000,
    1_000_000,
    10_000_000,
    100_000_000,
    BILLION,
];

/// 10 to the number of decimals; decimals beyond 9 do not occur and read as 9.
pub(super) fn power_of_ten(decimals: u8) -> u32 {
    POWERS
        .get(usize::from(decimals))
        .copied()
        .unwrap_or(BILLION)
}

/// A value as whole quanta of its kind, rounded down, and billionths of a quantum above them.
///
/// Every unit is a whole number of quanta and every amount ends within nine decimals, so the pair is exact
/// and there is one pair for a value: it compares and hashes as the value does.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub(super) struct Exact {
    pub(super) quanta: i128,
    pub(super) billionths: u32,
}

// A mantissa is below 2^50, a unit below 2^61 quanta and 10^9 below 2^30: every product here stays below
// 2^127, which the wrapping operations rely on.
impl Exact {
    /// The value of an amount, on the scale of its kind: temperatures from absolute zero.
    pub(super) fn of(amount: &Amount) -> Self {
        let unit = amount.unit();
        let product = i128::from(amount.mantissa()).wrapping_mul(i128::from(unit.quanta()));
        let value = match amount.decimals() {
            0 => Exact {
                quanta: product,
                billionths: 0,
            },
            decimals => {
                let power = power_of_ten(decimals);
                let (quanta, rest) = divided(product, power.into());
                let fine = BILLION.checked_div(power).unwrap_or(1);
                Exact {
                    quanta,
                    billionths: (rest as u32).wrapping_mul(fine),
                }
            }
        };
        value.plus(Exact::of_offset(unit))
    }

    /// The zero of a unit's scale.
    fn of_offset(unit: Unit) -> Self {
        let (quanta, billionths) = unit.zero();
        Exact {
            quanta: quanta.into(),
            billionths,
        }
    }

    pub(super) fn plus(self, other: Self) -> Self {
        let billionths = self.billionths.wrapping_add(other.billionths);
        let (carry, billionths) = match billionths.checked_sub(BILLION) {
            Some(rest) => (1, rest),
            None => (0, billionths),
        };
        Exact {
            quanta: self
                .quanta
                .saturating_add(other.quanta)
                .saturating_add(carry),
            billionths,
        }
    }

    pub(super) fn minus(self, other: Self) -> Self {
        let negated = match BILLION.wrapping_sub(other.billionths) {
            BILLION => Exact {
                quanta: other.quanta.saturating_neg(),
                billionths: 0,
            },
            rest => Exact {
                quanta: (!other.quanta),
                billionths: rest,
            },
        };
        self.plus(negated)
    }

    /// Whole steps of 10^-places of the unit, rounded down, with what is left over and of how much.
    fn steps(self, unit: Unit, places: u8) -> Option<(i128, u128, u128)> {
        steps(
            self.quanta,
            self.billionths.into(),
            BILLION.into(),
            unit,
            places,
        )
    }

    /// The amount with this many decimals.
    pub(super) fn rounded(
        self,
        unit: Unit,
        places: u8,
        rounding: Rounding,
    ) -> Result<Amount, Error> {
        let (floor, left, divisor) = self.steps(unit, places).ok_or_else(refusal::of_range)?;
        let up = i128::from(rounding.goes_up(floor, left, divisor));
        Amount::of_wide(floor.saturating_add(up), places, unit)
    }

    /// The amount itself, with no more decimals than it needs but at least `places` where they fit.
    pub(super) fn ended(self, unit: Unit, places: u8) -> Result<Amount, Error> {
        let (steps, left, _) = self.steps(unit, 9).ok_or_else(refusal::of_range)?;
        if left != 0 {
            return Err(refusal::of_endless(unit).into());
        }
        Ok(trimmed(steps, 9, places, unit)?)
    }

    /// In counts, see [`Kind`](super::Kind).
    pub(super) fn count(self, counts_in_quantum: u64) -> Option<i128> {
        let per_billionth = i128::from(counts_in_quantum / 1_000_000_000);
        self.quanta
            .checked_mul(i128::from(counts_in_quantum))?
            .checked_add(i128::from(self.billionths).checked_mul(per_billionth)?)
    }
}

/// Whole times a size above zero, rounded down, and what is left: one division, which is what wide integers cost most.
pub(super) const fn divided(count: i128, size: i128) -> (i128, u128) {
    let whole = count.div_euclid(size);
    let left = count.wrapping_sub(whole.wrapping_mul(size));
    (whole, left.unsigned_abs())
}

/// A value of `quanta` and `part`/`parts` of a quantum, in whole steps of 10^-places of the unit, rounded
/// down, with what is left over and of how much. Temperatures are taken from absolute zero.
pub(super) fn steps(
    quanta: i128,
    part: u128,
    parts: u128,
    unit: Unit,
    places: u8,
) -> Option<(i128, u128, u128)> {
    let (zero, billionths) = unit.zero();
    // Both parts are below `parts`, so their difference borrows at most one quantum.
    let zero_part = match billionths {
        0 => 0,
        billionths => u128::from(billionths).checked_mul(parts / 1_000_000_000)?,
    };
    let (borrow, part) = match part.checked_sub(zero_part) {
        Some(part) => (0, part),
        None => (1, part.checked_add(parts)?.checked_sub(zero_part)?),
    };
    let quanta = quanta.checked_sub(zero.into())?.checked_sub(borrow)?;
    let size = i128::from(unit.quanta());
    let power = power_of_ten(places);
    let (whole, left) = divided(quanta, size);
    let left = left.checked_mul(parts)?.checked_add(part)?;
    let scaled = left.checked_mul(u128::from(power))?;
    let divisor = size.unsigned_abs().checked_mul(parts)?;
    let whole = whole.checked_mul(i128::from(power))?;
    let begun = scaled.checked_div(divisor)?;
    let floor = whole.checked_add_unsigned(begun)?;
    Some((
        floor,
        scaled.wrapping_sub(begun.wrapping_mul(divisor)),
        divisor,
    ))
}

/// The amount of a mantissa, without the trailing zeros past `places` decimals, and without more of them where
/// they do not fit.
pub(super) fn trimmed(
    mut mantissa: i128,
    mut decimals: u8,
    places: u8,
    unit: Unit,
) -> Result<Amount, Fault> {
    // What is too long is wide, and hardly ever met.
    while decimals > 0
        && mantissa.unsigned_abs() >= MANTISSAS.into()
        && mantissa.checked_rem(10) == Some(0)
    {
        mantissa = mantissa.checked_div(10).unwrap_or_default();
        decimals = decimals.saturating_sub(1);
    }
    if let Ok(narrow) = i64::try_from(mantissa) {
        let (narrow, decimals) = without_zeros(narrow, decimals, places);
        return Amount::fitted(narrow.into(), decimals, unit);
    }
    Amount::fitted(mantissa, decimals, unit)
}

/// A mantissa and its decimals without the trailing zeros past `places` decimals.
pub(super) fn without_zeros(mut mantissa: i64, mut decimals: u8, places: u8) -> (i64, u8) {
    if mantissa % 10 == 0 {
        for (zeros, power) in [(8, 100_000_000), (4, 10_000), (2, 100), (1, 10)] {
            if decimals >= places.saturating_add(zeros) && mantissa.checked_rem(power) == Some(0) {
                mantissa = mantissa.checked_div(power).unwrap_or_default();
                decimals = decimals.saturating_sub(zeros);
            }
        }
    }
    (mantissa, decimals)
}
