//! An amount: an exact decimal with its unit and its printed resolution.

use super::arithmetic::aligned;
use super::exact::{self, Exact, power_of_ten};
use super::kind::Kind;
use super::number::{DECIMALS, MANTISSAS};
use super::refusal;
use super::rounding::Rounding;
use super::unit::Unit;
use crate::error::{Error, ErrorKind, Fault};
use core::cmp::Ordering;
use core::hash::{Hash, Hasher};

/// What a person typed or a sheet prints: an exact decimal of at most 15 digits, 9 of them decimals, with its
/// unit. `1.50 L` stays `1.50 L`.
///
/// Amounts are equal where their values are, whatever their units and zeros; they compare only within a kind.
///
/// ```
/// use brimline::{Amount, Unit};
/// let pour = Amount::parse("0.1 US qt")?;
/// let limit = Amount::parse("1.4 US qt")?;
/// assert_eq!(pour.times(14)?, limit);
/// assert_eq!(Amount::parse("1 L")?, Amount::parse("1000 mL")?);
/// assert_eq!(Amount::parse("1.50 L")?.number(), "1.50");
/// assert!(Amount::parse("1.3 L")? < limit);
/// # Ok::<(), brimline::Error>(())
/// ```
#[derive(Debug, Clone, Copy)]
pub struct Amount {
    mantissa: i64,
    decimals: u8,
    unit: Unit,
}

impl Amount {
    /// The amount of mantissa / 10^decimals: (150, 2, L) is `1.50 L`.
    ///
    /// # Errors
    ///
    /// [`TooManyDigits`](crate::ErrorKind::TooManyDigits) past 15 digits or 9 decimals.
    ///
    /// ```
    /// use brimline::{Amount, Unit};
    /// assert_eq!(Amount::new(150, 2, Unit::Litre)?.to_string(), "1.50 L");
    /// # Ok::<(), brimline::Error>(())
    /// ```
    pub fn new(mantissa: i64, decimals: u8, unit: Unit) -> Result<Self, Error> {
        if decimals > DECIMALS || mantissa.unsigned_abs() >= MANTISSAS {
            return Err(refusal::of_digits().into());
        }
        Ok(Amount {
            mantissa,
            decimals,
            unit,
        })
    }

    /// The amount of mantissa / 10^decimals, without trailing zeros.
    pub(crate) fn trimmed(mantissa: i64, decimals: u8, unit: Unit) -> Result<Self, Error> {
        let (mantissa, decimals) = exact::without_zeros(mantissa, decimals, 0);
        Amount::new(mantissa, decimals, unit)
    }

    /// An amount whose digits were counted before.
    pub(crate) const fn of_parts(mantissa: i64, decimals: u8, unit: Unit) -> Self {
        Amount {
            mantissa,
            decimals,
            unit,
        }
    }

    /// An amount of a computed mantissa.
    pub(super) fn of_wide(mantissa: i128, decimals: u8, unit: Unit) -> Result<Self, Error> {
        Ok(Amount::fitted(mantissa, decimals, unit)?)
    }

    pub(super) fn fitted(mantissa: i128, decimals: u8, unit: Unit) -> Result<Self, Fault> {
        let size = mantissa.unsigned_abs();
        if decimals > DECIMALS {
            return Err(refusal::of_digits());
        }
        if size >= MANTISSAS.into() {
            let whole = size.checked_div(power_of_ten(decimals).into());
            let fits = whole.is_some_and(|whole| whole < MANTISSAS.into());
            return Err(if fits {
                refusal::of_digits()
            } else {
                refusal::of_range()
            });
        }
        Ok(Amount {
            mantissa: mantissa as i64,
            decimals,
            unit,
        })
    }

    /// Its unit.
    #[must_use]
    pub const fn unit(&self) -> Unit {
        self.unit
    }

    /// Its kind.
    #[must_use]
    pub const fn kind(&self) -> Kind {
        self.unit.kind()
    }

    /// Its digits as an integer: 150 for `1.50 L`.
    #[must_use]
    pub const fn mantissa(&self) -> i64 {
        self.mantissa
    }

    /// How many of its digits are decimals, 0 to 9.
    #[must_use]
    pub const fn decimals(&self) -> u8 {
        self.decimals
    }

    /// One in its last printed place, as a difference: `0.01 L` for `1.50 L`.
    ///
    /// ```
    /// # use brimline::Amount;
    /// assert_eq!(Amount::parse("1.50 L")?.resolution().to_string(), "0.01 L");
    /// # Ok::<(), brimline::Error>(())
    /// ```
    #[must_use]
    pub const fn resolution(&self) -> Amount {
        Amount {
            mantissa: 1,
            decimals: self.decimals,
            unit: self.unit.of_difference(),
        }
    }

    /// Whether its number is below zero (for a temperature: on its own scale).
    #[must_use]
    pub const fn is_negative(&self) -> bool {
        self.mantissa < 0
    }

    /// Whether its number is zero (for a temperature: on its own scale).
    #[must_use]
    pub const fn is_zero(&self) -> bool {
        self.mantissa == 0
    }

    /// This amount in another unit, rounded to `places` decimals (0 to 9).
    ///
    /// # Errors
    ///
    /// [`WrongKind`](crate::ErrorKind::WrongKind), [`TooManyDigits`](crate::ErrorKind::TooManyDigits),
    /// [`OutOfRange`](crate::ErrorKind::OutOfRange).
    ///
    /// ```
    /// use brimline::{Amount, Rounding, Unit};
    /// let torque = Amount::parse("12 N·m")?.to(Unit::PoundForceInch, 1, Rounding::HalfEven)?;
    /// assert_eq!(torque.to_string(), "106.2 lbf·in");
    /// # Ok::<(), brimline::Error>(())
    /// ```
    pub fn to(&self, unit: Unit, places: u8, rounding: Rounding) -> Result<Amount, Error> {
        self.same_kind(unit)?;
        if places > DECIMALS {
            return Err(refusal::of_digits().into());
        }
        Exact::of(self).rounded(unit, places, rounding)
    }

    /// This amount in another unit where that is exact: `None` where the kinds differ or the decimal does not
    /// end within the digits of an amount. Trailing zeros are not printed.
    ///
    /// ```
    /// use brimline::{Amount, Unit};
    /// let limit = Amount::parse("1.4 US qt")?;
    /// assert_eq!(limit.to_exact(Unit::Millilitre).unwrap().to_string(), "1324.8941244 mL");
    /// assert!(Amount::parse("1.3 L")?.to_exact(Unit::UsQuart).is_none());
    /// # Ok::<(), brimline::Error>(())
    /// ```
    #[must_use]
    pub fn to_exact(&self, unit: Unit) -> Option<Amount> {
        if self.kind() == unit.kind() {
            Exact::of(self).ended(unit, 0).ok()
        } else {
            None
        }
    }

    /// How this amount stands to another of its kind, exactly.
    ///
    /// # Errors
    ///
    /// [`WrongKind`](crate::ErrorKind::WrongKind).
    ///
    /// ```
    /// # use brimline::Amount;
    /// let imperial = Amount::parse("1.2 imp qt")?;
    /// assert!(imperial.compare(&Amount::parse("1.44 US qt")?)?.is_gt());
    /// # Ok::<(), brimline::Error>(())
    /// ```
    pub fn compare(&self, other: &Amount) -> Result<Ordering, Error> {
        self.same_kind(other.unit)?;
        Ok(self.order(other))
    }

    /// The order of two amounts of one kind.
    fn order(&self, other: &Amount) -> Ordering {
        if self.unit == other.unit {
            let (one, other, _) = aligned(*self, *other);
            return one.cmp(&other);
        }
        Exact::of(self).cmp(&Exact::of(other))
    }

    pub(super) fn same_kind(&self, unit: Unit) -> Result<(), Error> {
        if self.kind() == unit.kind() {
            Ok(())
        } else {
            Err(refusal::of_wrong_kind(self.kind(), unit).into())
        }
    }

    /// The exact integer count of its kind's smallest step; `None` past 128 bits.
    ///
    /// Volume in 1e-22 mL, time in ns, temperature and its difference in 1/9e9 K (temperatures from absolute
    /// zero), mass in 1e-17 kg, length in 1e-16 m, angle in 1e-9 deg; the others in the table of `Kind::row`.
    pub(crate) fn count(&self) -> Option<i128> {
        Exact::of(self).count(self.kind().counts_in_quantum())
    }

    /// The amount of a count of the unit's kind: exact where it ends within `max_decimals`, else rounded there.
    /// Trailing zeros are not printed.
    pub(crate) fn from_count(
        count: i128,
        unit: Unit,
        max_decimals: u8,
        rounding: Rounding,
    ) -> Result<Amount, Error> {
        let counts = i128::from(unit.kind().counts_in_quantum());
        let (quanta, part) = exact::divided(count, counts);
        let mut places = max_decimals.min(DECIMALS);
        loop {
            let steps = exact::steps(quanta, part, counts.unsigned_abs(), unit, places);
            let (floor, left, divisor) = steps.ok_or_else(refusal::of_range)?;
            let up = i128::from(rounding.goes_up(floor, left, divisor));
            match exact::trimmed(floor.saturating_add(up), places, 0, unit) {
                // Digits before the point come first: decimals are given up until the amount fits.
                Err(fault) if fault.kind == ErrorKind::TooManyDigits && places > 0 => {
                    places = places.saturating_sub(1)
                }
                fitted => return Ok(fitted?),
            }
        }
    }
}

impl PartialEq for Amount {
    fn eq(&self, other: &Self) -> bool {
        self.kind() == other.kind() && self.order(other).is_eq()
    }
}

impl Eq for Amount {}

impl Hash for Amount {
    fn hash<H: Hasher>(&self, state: &mut H) {
        self.kind().hash(state);
        Exact::of(self).hash(state);
    }
}

impl PartialOrd for Amount {
    /// `None` across kinds.
    fn partial_cmp(&self, other: &Self) -> Option<Ordering> {
        (self.kind() == other.kind()).then(|| self.order(other))
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, clippy::arithmetic_side_effects)]

    use super::*;
    use alloc::string::ToString;

    fn count(text: &str) -> Option<i128> {
        Amount::parse(text).unwrap().count()
    }

    #[test]
    fn counts_are_whole() {
        // Worked by hand from the definitions: 1 L = 1000 mL, 1 US qt = 946.352946 mL, 1 in = 0.0254 m,
        // 1 lb = 0.45359237 kg, 0 °C = 273.15 K, 1 °F = 5/9 K.
        let e = |power| 10_i128.pow(power);
        assert_eq!(count("1 L"), Some(e(25)));
        assert_eq!(count("-1 US qt"), Some(-946_352_946 * e(16)));
        assert_eq!(count("0.000000001 US fl oz"), Some(295_735_295_625_000));
        assert_eq!(count("1.5 s"), Some(1_500_000_000));
        assert_eq!(count("0.5 deg"), Some(500_000_000));
        assert_eq!(count("1 in"), Some(254 * e(12)));
        assert_eq!(count("1 lb"), Some(45_359_237 * e(9)));
        assert_eq!(count("0 °C"), Some(27_315 * 9 * e(7)));
        assert_eq!(count("-459.67 °F"), Some(0));
        assert_eq!(count("9 Δ°F"), Some(45 * e(9)));
        assert_eq!(count("999999999999999 m³"), None);
    }

    #[test]
    fn a_count_goes_back() {
        for text in [
            "1.5 L",
            "0.0 L",
            "-946.352946 mL",
            "0.000000001 US fl oz",
            "104 °F",
            "-0.01 °C",
            "9.5 N·m",
            "1.25 h",
        ] {
            let amount = Amount::parse(text).unwrap();
            let back = Amount::from_count(
                amount.count().unwrap(),
                amount.unit(),
                9,
                Rounding::HalfEven,
            )
            .unwrap();
            assert_eq!(back, amount);
        }
        let third = 10_i128.pow(25) / 3;
        let ends = [Rounding::Floor, Rounding::Ceiling].map(|rounding| {
            Amount::from_count(third, Unit::Litre, 6, rounding)
                .unwrap()
                .to_string()
        });
        assert_eq!(ends, ["0.333333 L", "0.333334 L"]);
        let ends = [Rounding::Floor, Rounding::Ceiling].map(|rounding| {
            Amount::from_count(-third, Unit::Litre, 6, rounding)
                .unwrap()
                .to_string()
        });
        assert_eq!(ends, ["-0.333334 L", "-0.333333 L"]);
        // A hundredth of a quart and a fortieth of it are whole counts.
        let quart = count("0.000000001 US qt").unwrap();
        assert_eq!((quart % 100, quart % 40), (0, 0));
    }

    #[test]
    fn a_large_count_gives_up_decimals() {
        // 123 456 789 012.345 678 L has 18 digits; 15 are kept.
        let large = Amount::from_count(
            123_456_789_012_345_678 * 10_i128.pow(19),
            Unit::Litre,
            6,
            Rounding::Floor,
        );
        assert_eq!(large.unwrap().to_string(), "123456789012.345 L");
    }
}
