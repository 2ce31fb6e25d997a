//! Sums, differences and multiples of amounts, exact.

use super::amount::Amount;
use super::exact::{Exact, power_of_ten};
use super::kind::Kind;
use super::refusal;
use super::unit::Unit;
use crate::error::{Error, ErrorKind, Fault};

impl Amount {
    /// The sum, in this amount's unit and at least its printed resolution. A difference of temperatures may be
    /// added to a temperature, in either order; the sum is a temperature.
    ///
    /// # Errors
    ///
    /// [`WrongKind`](crate::ErrorKind::WrongKind) across kinds and for two temperatures;
    /// [`TooManyDigits`](crate::ErrorKind::TooManyDigits) where the exact sum does not end within the digits of an
    /// amount, [`OutOfRange`](crate::ErrorKind::OutOfRange) where it is too large.
    ///
    /// ```
    /// use brimline::Amount;
    /// let sum = Amount::parse("1.50 L")?.checked_add(Amount::parse("250 mL")?)?;
    /// assert_eq!(sum.to_string(), "1.75 L");
    /// let warm = Amount::parse("40 °C")?.checked_add(Amount::parse("9 Δ°F")?)?;
    /// assert_eq!(warm.to_string(), "45 °C");
    /// assert!(Amount::parse("40 °C")?.checked_add(Amount::parse("40 °C")?).is_err());
    /// # Ok::<(), brimline::Error>(())
    /// ```
    pub fn checked_add(self, other: Amount) -> Result<Amount, Error> {
        match (self.kind(), other.kind()) {
            (Kind::Temperature, Kind::Temperature) => Err(of_scale(
                "temperatures do not add: add a difference, in Δ°C or Δ°F",
                other,
            )),
            (Kind::Temperature, Kind::TemperatureDifference) => sum(self, other, self.unit()),
            (Kind::TemperatureDifference, Kind::Temperature) => sum(other, self, other.unit()),
            _ => {
                self.same_kind(other.unit())?;
                sum(self, other, self.unit())
            }
        }
    }

    /// The difference, in this amount's unit and at least its printed resolution. Two temperatures give a
    /// difference of temperatures; a difference taken off a temperature gives a temperature.
    ///
    /// # Errors
    ///
    /// As [`Amount::checked_add`].
    ///
    /// ```
    /// use brimline::Amount;
    /// let rise = Amount::parse("45 °C")?.checked_sub(Amount::parse("104 °F")?)?;
    /// assert_eq!(rise.to_string(), "5 Δ°C");
    /// # Ok::<(), brimline::Error>(())
    /// ```
    pub fn checked_sub(self, other: Amount) -> Result<Amount, Error> {
        match (self.kind(), other.kind()) {
            (Kind::Temperature, Kind::Temperature) => {
                difference(self, other, self.unit().of_difference())
            }
            (Kind::Temperature, Kind::TemperatureDifference) => {
                difference(self, other, self.unit())
            }
            _ => {
                self.same_kind(other.unit())?;
                difference(self, other, self.unit())
            }
        }
    }

    /// A whole multiple, with the same printed resolution.
    ///
    /// # Errors
    ///
    /// [`WrongKind`](crate::ErrorKind::WrongKind) for a temperature, which has no multiples;
    /// [`TooManyDigits`](crate::ErrorKind::TooManyDigits) or [`OutOfRange`](crate::ErrorKind::OutOfRange) where it
    /// does not fit.
    ///
    /// ```
    /// use brimline::Amount;
    /// assert_eq!(Amount::parse("0.1 US qt")?.times(14)?.to_string(), "1.4 US qt");
    /// # Ok::<(), brimline::Error>(())
    /// ```
    pub fn times(self, factor: i64) -> Result<Amount, Error> {
        if self.kind() == Kind::Temperature {
            return Err(of_scale(
                "a temperature has no multiples: multiply a difference, in Δ°C or Δ°F",
                self,
            ));
        }
        let product = i128::from(self.mantissa()).wrapping_mul(factor.into());
        Amount::of_wide(product, self.decimals(), self.unit())
    }
}

fn of_scale(hint: &'static str, got: Amount) -> Error {
    let fault = Fault::new(ErrorKind::WrongKind).got(got.unit().symbol());
    fault
        .allowed(refusal::symbols(Kind::TemperatureDifference))
        .hint(hint)
        .into()
}

/// Mantissas on the finer of the two resolutions, where both amounts have one unit.
pub(super) fn aligned(one: Amount, other: Amount) -> (i128, i128, u8) {
    let decimals = one.decimals().max(other.decimals());
    let scale = |amount: Amount| {
        let power = power_of_ten(decimals.saturating_sub(amount.decimals()));
        i128::from(amount.mantissa()).wrapping_mul(power.into())
    };
    (scale(one), scale(other), decimals)
}

fn sum(one: Amount, other: Amount, unit: Unit) -> Result<Amount, Error> {
    if other.unit() == unit.of_difference() {
        let (a, b, decimals) = aligned(one, other);
        return Amount::of_wide(a.saturating_add(b), decimals, unit);
    }
    Exact::of(&one)
        .plus(Exact::of(&other))
        .ended(unit, one.decimals())
}

fn difference(one: Amount, other: Amount, unit: Unit) -> Result<Amount, Error> {
    if other.unit() == one.unit() || other.unit() == unit.of_difference() {
        let (a, b, decimals) = aligned(one, other);
        return Amount::of_wide(a.saturating_sub(b), decimals, unit);
    }
    Exact::of(&one)
        .minus(Exact::of(&other))
        .ended(unit, one.decimals())
}
