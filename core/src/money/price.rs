//! What one of something costs: exact, and finer than the smallest unit of the currency where it has to be.

use super::currency::Currency;
use super::sum::{self, Money};
use crate::error::{Error, ErrorKind, Fault};
use crate::quantity::{Amount, Rounding, Unit};
use alloc::string::ToString;
use core::fmt;
use serde::{Serialize, Serializer};

/// The price of one of something, zero or above: up to 15 digits, 9 of them decimals. It may say of which unit.
///
/// ```
/// use brimline::money::Price;
/// use brimline::{Amount, Rounding, Unit};
/// let litre = Price::parse("11.9050 EUR/L")?;
/// assert_eq!(litre.per(), Some(Unit::Litre));
/// let used = Amount::parse("1.05 L")?;
/// // 12.50025 EUR
/// assert_eq!(litre.of(&used, Rounding::HalfUp)?.to_string(), "12.50 EUR");
/// assert_eq!(litre.of(&used, Rounding::Up)?.to_string(), "12.51 EUR");
/// # Ok::<(), brimline::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Price {
    mantissa: u64,
    decimals: u8,
    currency: Currency,
    per: Option<Unit>,
}

impl Price {
    /// Reads a plain decimal and an ISO 4217 code, and the unit of what is bought where there is one: `0.0425 EUR`,
    /// `18.40 EUR/L`.
    ///
    /// # Errors
    ///
    /// As for [`Money::parse`], but for the digits: parts of the smallest unit are read; and as for
    /// [`Unit::parse`] behind the stroke.
    pub fn parse(text: &str) -> Result<Self, Error> {
        // A stroke behind a digit is that of a fraction.
        let split = text.rsplit_once('/').filter(|(sum, _)| {
            let last = sum.trim_end().chars().next_back();
            last.is_some_and(char::is_alphabetic)
        });
        let (number, currency) = sum::read(split.map_or(text, |(sum, _)| sum))?;
        let per = split.map(|(_, unit)| Unit::parse(unit)).transpose()?;
        Ok(Price {
            mantissa: number.mantissa.unsigned_abs(),
            decimals: number.decimals,
            currency,
            per,
        })
    }

    /// Its currency.
    #[must_use]
    pub const fn currency(self) -> Currency {
        self.currency
    }

    /// The unit one of which it is the price of; `None` where it does not say.
    #[must_use]
    pub const fn per(self) -> Option<Unit> {
        self.per
    }

    /// What a quantity costs: the exact product, rounded once to the smallest unit of the currency. A price that does not
    /// say of which unit is one of the quantity's.
    ///
    /// # Errors
    ///
    /// [`OutOfRange`](ErrorKind::OutOfRange) for a quantity below zero, and past 15 digits of money;
    /// [`WrongKind`](ErrorKind::WrongKind) for a quantity of another kind than the price's unit;
    /// [`TooManyDigits`](ErrorKind::TooManyDigits) where the quantity does not end in the price's unit.
    pub fn of(self, quantity: &Amount, rounding: Rounding) -> Result<Money, Error> {
        let quantity = &self.in_its_unit(quantity)?;
        if quantity.is_negative() {
            let fault = Fault::new(ErrorKind::OutOfRange).at("quantity");
            let fault = fault.got(&alloc::format!("{quantity}"));
            return Err(fault
                .hint("bill what was used; a credit is a document of its own")
                .into());
        }
        // Both factors are below 2^50, so their product is exact.
        let product = i128::from(self.mantissa).saturating_mul(quantity.mantissa().into());
        let decimals = self.decimals.saturating_add(quantity.decimals());
        Ok(rounded(product, decimals, self.currency, rounding)?)
    }

    fn in_its_unit(self, quantity: &Amount) -> Result<Amount, Error> {
        let Some(per) = self.per.filter(|per| *per != quantity.unit()) else {
            return Ok(*quantity);
        };
        if let Some(exact) = quantity.to_exact(per) {
            return Ok(exact);
        }
        let fault = if per.kind() == quantity.kind() {
            let hint = "round the quantity to the unit of the price first";
            Fault::new(ErrorKind::TooManyDigits).hint(hint)
        } else {
            Fault::new(ErrorKind::WrongKind).allowed([per.symbol()])
        };
        Err(fault.at("quantity").got(&quantity.to_string()).into())
    }
}

/// A sum in steps of 10^-decimals, zero or above, rounded to the smallest unit of a currency.
pub(super) fn rounded(
    steps: i128,
    decimals: u8,
    currency: Currency,
    rounding: Rounding,
) -> Result<Money, Fault> {
    let power = |places: u8| 10_i128.checked_pow(places.into());
    let spare = decimals.saturating_sub(currency.decimals());
    let missing = currency.decimals().saturating_sub(decimals);
    let minor = || {
        let steps = steps.checked_mul(power(missing)?)?;
        let divisor = power(spare)?;
        let floor = steps.checked_div_euclid(divisor)?;
        // What is left is less than the divisor, so it fits.
        let left = steps.wrapping_sub(floor.wrapping_mul(divisor));
        let up = rounding.goes_up(floor, left.unsigned_abs(), divisor.unsigned_abs());
        floor.checked_add(up.into())
    };
    // What does not fit the arithmetic does not fit a sum of money either.
    Money::of_minor(minor().unwrap_or(i128::MAX), currency)
}

impl fmt::Display for Price {
    /// Number as written, one space, code, and the unit where it has one: `0.0425 EUR`, `18.40 EUR/L`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        sum::write(f, self.mantissa, self.decimals)?;
        write!(f, " {}", self.currency)?;
        match self.per {
            Some(per) => write!(f, "/{}", per.symbol()),
            None => Ok(()),
        }
    }
}

impl Serialize for Price {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]

    use super::*;

    fn cost(price: &str, quantity: &str, rounding: Rounding) -> alloc::string::String {
        let quantity = Amount::parse(quantity).unwrap();
        let price = Price::parse(price).unwrap();
        price.of(&quantity, rounding).unwrap().to_string()
    }

    #[test]
    fn halves_go_where_they_are_told() {
        // ISO 80000-1 Annex B, rules A (even) and B (up), from memory; reproduced with Python's decimal. Steps of a
        // hundredth here.
        for (price, even, up) in [
            ("0.125 EUR", "0.12 EUR", "0.13 EUR"),
            ("1.005 EUR", "1.00 EUR", "1.01 EUR"),
            ("2.675 EUR", "2.68 EUR", "2.68 EUR"),
            // Annex B: 12.25, 12.35 and no double rounding of 12.251, a place further on.
            ("1.225 EUR", "1.22 EUR", "1.23 EUR"),
            ("1.235 EUR", "1.24 EUR", "1.24 EUR"),
            ("1.2251 EUR", "1.23 EUR", "1.23 EUR"),
        ] {
            assert_eq!(cost(price, "1 ratio", Rounding::HalfEven), even);
            assert_eq!(cost(price, "1 ratio", Rounding::HalfUp), up);
        }
        // The half-cent rule of the US Streamlined Sales and Use Tax Agreement, section 324: up where the third decimal is
        // above four.
        for (price, told) in [
            ("1.234 USD", "1.23 USD"),
            ("1.235 USD", "1.24 USD"),
            ("1.2349 USD", "1.23 USD"),
        ] {
            assert_eq!(cost(price, "1 ratio", Rounding::HalfUp), told);
        }
        // HMRC VATREC12010: the tax of a whole invoice may be rounded down to a whole penny.
        assert_eq!(cost("2.0398 GBP", "1 ratio", Rounding::Down), "2.03 GBP");
    }

    #[test]
    fn no_currency_rounds_further_than_its_own_smallest_unit() {
        assert_eq!(cost("1500 JPY", "1.5 L", Rounding::HalfUp), "2250 JPY");
        assert_eq!(cost("0.333 JPY", "1.5 L", Rounding::HalfUp), "0 JPY");
        assert_eq!(cost("4.2 KWD", "0.25 L", Rounding::HalfUp), "1.050 KWD");
        assert_eq!(
            cost("999999999.999999 EUR", "1000.000001 L", Rounding::Down),
            "1000000000999.99 EUR"
        );
    }

    #[test]
    fn a_price_of_a_unit_is_asked_in_that_unit() {
        // By hand: 18.40 x 0.25; 96.00 x 0.4 (24 min of an hour).
        assert_eq!(cost("18.40 EUR/L", "250 mL", Rounding::HalfUp), "4.60 EUR");
        assert_eq!(cost("96.00 EUR/h", "24 min", Rounding::HalfUp), "38.40 EUR");
        for text in ["18.40 EUR/L", "7 USD/US qt", "0.5 EUR"] {
            assert_eq!(Price::parse(text).unwrap().to_string(), text);
        }
        assert_eq!(
            Price::parse("1/2 EUR / h").unwrap().to_string(),
            "0.5 EUR/h"
        );
        let refused = |price: &str, quantity: &str| {
            let price = Price::parse(price).unwrap();
            let quantity = Amount::parse(quantity).unwrap();
            let error = price.of(&quantity, Rounding::HalfUp).unwrap_err();
            let fault = error.faults().next().unwrap();
            (fault.kind, fault.path.clone())
        };
        let at = "quantity".to_string();
        assert_eq!(
            refused("96 EUR/h", "25 min"),
            (ErrorKind::TooManyDigits, at.clone())
        );
        assert_eq!(refused("18 EUR/L", "1 kg"), (ErrorKind::WrongKind, at));
        let kind = |text| Price::parse(text).unwrap_err().first().kind;
        assert_eq!(kind("18 EUR/qt"), ErrorKind::UnitAmbiguous);
        assert_eq!(kind("18 EUR/"), ErrorKind::UnitMissing);
    }

    #[test]
    fn too_much_and_less_than_nothing_are_refused() {
        let price = Price::parse("999999999999999 EUR").unwrap();
        let many = Amount::parse("999999999999999 L").unwrap();
        let error = price.of(&many, Rounding::HalfUp).unwrap_err();
        assert_eq!(error.faults().next().unwrap().kind, ErrorKind::OutOfRange);
        let back = Amount::parse("-1 L").unwrap();
        let error = price.of(&back, Rounding::HalfUp).unwrap_err();
        assert_eq!(error.faults().next().unwrap().path, "quantity");
        assert!(Price::parse("-0.01 EUR").is_err());
    }
}
