//! A sum of money: whole smallest units of one currency.

use super::currency::Currency;
use crate::error::{Error, ErrorKind, Fault};
use crate::quantity::{DecimalNumber, read_number};
use core::fmt;
use serde::{Serialize, Serializer};

/// The largest sum in smallest units: 15 digits.
pub(super) const MOST: u64 = 999_999_999_999_999;

/// A sum of money, zero or above, exact in the smallest unit of its currency, up to 15 digits of it.
///
/// ```
/// use brimline::money::Money;
/// let pour = Money::parse("4.97 EUR")?;
/// assert_eq!(pour.plus(Money::parse("0.3 EUR")?)?.to_string(), "5.27 EUR");
/// assert_eq!(pour.minor_units(), 497);
/// // Half a cent is a price, not a sum of money.
/// assert!(Money::parse("0.005 EUR").is_err());
/// assert!(pour.plus(Money::parse("1 JPY")?).is_err());
/// # Ok::<(), brimline::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Money {
    minor: u64,
    currency: Currency,
}

impl Money {
    /// A sum in smallest units: (1250, EUR) is `12.50 EUR`.
    ///
    /// # Errors
    ///
    /// [`OutOfRange`](ErrorKind::OutOfRange) past 15 digits.
    pub fn new(minor_units: u64, currency: Currency) -> Result<Self, Error> {
        if minor_units > MOST {
            return Err(too_much().into());
        }
        Ok(Money {
            minor: minor_units,
            currency,
        })
    }

    /// Nothing, in a currency.
    #[must_use]
    pub const fn zero(currency: Currency) -> Self {
        Money { minor: 0, currency }
    }

    /// Reads a plain decimal and an ISO 4217 code: `12.50 EUR`.
    ///
    /// # Errors
    ///
    /// [`NotANumber`](ErrorKind::NotANumber) and its kin as for an [`Amount`](crate::Amount);
    /// [`OutOfRange`](ErrorKind::OutOfRange) below zero or past 15 digits of smallest units;
    /// [`TooManyDigits`](ErrorKind::TooManyDigits) for parts of the smallest unit;
    /// [`UnitMissing`](ErrorKind::UnitMissing) without a code; [`UnknownValue`](ErrorKind::UnknownValue) for one that is
    /// not listed.
    pub fn parse(text: &str) -> Result<Self, Error> {
        let (number, currency) = read(text)?;
        let minor = scaled(number, currency.decimals()).ok_or_else(|| {
            Fault::new(ErrorKind::TooManyDigits).got(text).hint(
                "a sum of money ends at the smallest unit of its currency; only a price may go on",
            )
        })?;
        Money::new(minor, currency)
    }

    /// Its currency.
    #[must_use]
    pub const fn currency(self) -> Currency {
        self.currency
    }

    /// How many of the smallest unit of its currency it is.
    #[must_use]
    pub const fn minor_units(self) -> u64 {
        self.minor
    }

    /// The sum of two.
    ///
    /// # Errors
    ///
    /// [`Conflict`](ErrorKind::Conflict) for two currencies; [`OutOfRange`](ErrorKind::OutOfRange) past 15 digits.
    pub fn plus(self, other: Money) -> Result<Money, Error> {
        self.same_currency(other.currency)?;
        Money::new(self.minor.saturating_add(other.minor), self.currency)
    }

    pub(super) fn same_currency(self, other: Currency) -> Result<(), Fault> {
        if self.currency == other {
            return Ok(());
        }
        Err(mixed(self.currency, other))
    }

    /// The sum of so many smallest units.
    pub(super) fn of_minor(minor: i128, currency: Currency) -> Result<Money, Fault> {
        let minor = u64::try_from(minor).ok().filter(|minor| *minor <= MOST);
        let minor = minor.ok_or_else(too_much)?;
        Ok(Money { minor, currency })
    }
}

/// Two currencies where one is needed.
#[cold]
pub(crate) fn mixed(wanted: Currency, given: Currency) -> Fault {
    Fault::new(ErrorKind::Conflict)
        .got(given.code())
        .allowed([wanted.code()])
        .hint("all sums of one document are in one currency; exchange them first")
}

#[cold]
fn too_much() -> Fault {
    Fault::new(ErrorKind::OutOfRange).hint("money holds at most 15 digits of its smallest unit")
}

/// A number, zero or above, and its currency.
pub(super) fn read(text: &str) -> Result<(DecimalNumber, Currency), Fault> {
    let text = text.trim();
    let (number, code) = read_number(text).map_err(|fault| unread(fault, text))?;
    if code.is_empty() {
        let hint = "write the currency behind the number, as in 12.50 EUR";
        return Err(Fault::new(ErrorKind::UnitMissing).got(text).hint(hint));
    }
    let currency = Currency::read(code).map_err(|fault| fault.got(text))?;
    if number.mantissa < 0 {
        let hint = "money and prices are not below zero: a credit is a document of its own";
        return Err(Fault::new(ErrorKind::OutOfRange).got(text).hint(hint));
    }
    Ok((number, currency))
}

/// A text that does not begin with its number is told how money is written.
#[cold]
fn unread(fault: Fault, text: &str) -> Fault {
    let fault = fault.got(text);
    if text.starts_with(|sign: char| sign.is_ascii_digit() || matches!(sign, '-' | '+' | '−')) {
        return fault;
    }
    fault.hint("the number comes first, then the ISO 4217 code, as in 12.50 EUR")
}

/// A number in steps of 10^-decimals, if it is a whole number of them.
fn scaled(number: DecimalNumber, decimals: u8) -> Option<u64> {
    let mut steps = number.mantissa.unsigned_abs();
    for _ in number.decimals..decimals {
        steps = steps.checked_mul(10)?;
    }
    for _ in decimals..number.decimals {
        if steps.checked_rem(10)? != 0 {
            return None;
        }
        steps = steps.checked_div(10)?;
    }
    Some(steps)
}

/// A number of steps of 10^-decimals as it is written.
pub(super) fn write(f: &mut fmt::Formatter<'_>, steps: u64, decimals: u8) -> fmt::Result {
    let Some(power) = 10_u64.checked_pow(decimals.into()).filter(|_| decimals > 0) else {
        return write!(f, "{steps}");
    };
    let whole = steps.checked_div(power).unwrap_or_default();
    let part = steps.checked_rem(power).unwrap_or_default();
    write!(f, "{whole}.{part:0width$}", width = usize::from(decimals))
}

impl fmt::Display for Money {
    /// Number with all decimals of the currency, one space, code: `12.50 EUR`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write(f, self.minor, self.currency.decimals())?;
        write!(f, " {}", self.currency)
    }
}

impl Serialize for Money {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]

    use super::*;
    use alloc::string::ToString;

    fn refused(text: &str) -> ErrorKind {
        Money::parse(text)
            .unwrap_err()
            .faults()
            .next()
            .unwrap()
            .kind
    }

    #[test]
    fn money_reads_and_prints_with_the_decimals_of_its_currency() {
        for (text, printed) in [
            ("12.5 EUR", "12.50 EUR"),
            ("12.500 EUR", "12.50 EUR"),
            ("0 EUR", "0.00 EUR"),
            ("1200 JPY", "1200 JPY"),
            ("1.2 KWD", "1.200 KWD"),
            ("9999999999999.99 USD", "9999999999999.99 USD"),
        ] {
            assert_eq!(Money::parse(text).unwrap().to_string(), printed);
        }
    }

    #[test]
    fn what_is_no_sum_of_money_is_refused_by_its_kind() {
        assert_eq!(refused("-1 EUR"), ErrorKind::OutOfRange);
        assert_eq!(refused("12.50"), ErrorKind::UnitMissing);
        assert_eq!(refused("12.50 euro"), ErrorKind::UnknownValue);
        assert_eq!(refused("12,50 EUR"), ErrorKind::DecimalComma);
        assert_eq!(refused("0.5 JPY"), ErrorKind::TooManyDigits);
        assert_eq!(refused("999999999999999 EUR"), ErrorKind::OutOfRange);
        assert_eq!(refused("NaN EUR"), ErrorKind::NotANumber);
        for text in ["$12.50", "EUR 12.50", ""] {
            assert_eq!(refused(text), ErrorKind::NotANumber);
            let error = Money::parse(text).unwrap_err();
            let hint = error.first().hint.clone().unwrap_or_default();
            assert!(hint.ends_with("as in 12.50 EUR"), "{hint}");
        }
        let one = Money::parse("1 EUR").unwrap();
        let error = one.plus(Money::parse("1 USD").unwrap()).unwrap_err();
        assert_eq!(error.faults().next().unwrap().kind, ErrorKind::Conflict);
        let most = Money::new(MOST, one.currency()).unwrap();
        assert!(most.plus(one).is_err());
    }
}
