//! What one of something costs: exact, and finer than the smallest unit of the currency where it has to be.

use super::currency::Currency;
use super::sum::{self, Money};
use crate::error::{Error, ErrorKind, Fault};
use crate::quantity::{Amount, Rounding};
use core::fmt;
use serde::{Serialize, Serializer};

/// The price of one of a unit, zero or above: up to 15 digits, 9 of them decimals.
///
/// ```
/// use brimline::money::Price;
/// use brimline::{Amount, Rounding};
/// let litre = Price::parse("11.9050 EUR")?;
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
}

impl Price {
    /// Reads a plain decimal and an ISO 4217 code: `0.0425 EUR`.
    ///
    /// # Errors
    ///
    /// As for [`Money::parse`], but for the digits: parts of the smallest unit are read.
    pub fn parse(text: &str) -> Result<Self, Error> {
        let (number, currency) = sum::read(text)?;
        Ok(Price {
            mantissa: number.mantissa.unsigned_abs(),
            decimals: number.decimals,
            currency,
        })
    }

    /// Its currency.
    #[must_use]
    pub const fn currency(self) -> Currency {
        self.currency
    }

    /// What a quantity costs at this price for one of the quantity's unit: the exact product, rounded once to the smallest
    /// unit of the currency.
    ///
    /// # Errors
    ///
    /// [`OutOfRange`](ErrorKind::OutOfRange) for a quantity below zero, and past 15 digits of money.
    pub fn of(self, quantity: &Amount, rounding: Rounding) -> Result<Money, Error> {
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
        let left = steps.checked_rem_euclid(divisor)?;
        let up = rounding.goes_up(floor, left.unsigned_abs(), divisor.unsigned_abs());
        floor.checked_add(up.into())
    };
    // What does not fit the arithmetic does not fit a sum of money either.
    Money::of_minor(minor().unwrap_or(i128::MAX), currency)
}

impl fmt::Display for Price {
    /// Number as written, one space, code: `0.0425 EUR`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        sum::write(f, self.mantissa, self.decimals)?;
        write!(f, " {}", self.currency)
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
    use alloc::string::ToString;

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
