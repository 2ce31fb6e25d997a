//! Reading amounts and units.

use super::amount::Amount;
use super::kind::{Kind, Measures};
use super::number::{self, Number};
use super::unit::Unit;
use super::{refusal, spelling};
use crate::error::{Error, ErrorKind, Fault};
use core::fmt::Write;
use core::str::FromStr;

impl Amount {
    /// Reads an amount as people type it: `1.5 L`, `½ US qt`, `1 1/2 in`, `104 deg F`, `14Nm`, `−0.3 L`.
    ///
    /// The number is a plain decimal or a fraction that ends within nine decimals; its printed resolution is
    /// kept.
    ///
    /// ```
    /// use brimline::Amount;
    /// assert_eq!(Amount::parse("1.50 l")?.to_string(), "1.50 L");
    /// assert_eq!(Amount::parse("½ US qt")?.to_string(), "0.5 US qt");
    /// let error = Amount::parse("1,6 L").unwrap_err();
    /// assert_eq!(error.first().allowed, ["1.6 L", "16 L"]);
    /// # Ok::<(), brimline::Error>(())
    /// ```
    ///
    /// # Errors
    ///
    /// [`NotANumber`](crate::ErrorKind::NotANumber), [`TooManyDigits`](crate::ErrorKind::TooManyDigits),
    /// [`DecimalComma`](crate::ErrorKind::DecimalComma) with the readings, [`Fraction`](crate::ErrorKind::Fraction) with its
    /// neighbours, [`UnitMissing`](crate::ErrorKind::UnitMissing), and the errors of [`Unit::parse`].
    pub fn parse(text: &str) -> Result<Self, Error> {
        Amount::parse_as(text, None, None)
    }

    /// Reads an amount where its kind, or whose customary measures are meant, is known. A ratio may be a number alone.
    ///
    /// # Errors
    ///
    /// As [`Amount::parse`], and [`WrongKind`](crate::ErrorKind::WrongKind) with the units of the kind.
    ///
    /// ```
    /// # use brimline::{Amount, ErrorKind, Kind};
    /// let tolerance = Amount::parse_as("2 °C", Kind::TemperatureDifference, None)?;
    /// assert_eq!(tolerance.to_string(), "2 Δ°C");
    /// let error = Amount::parse_as("10 lb", Kind::Torque, None).unwrap_err();
    /// assert_eq!(error.kind(), ErrorKind::WrongKind);
    /// # Ok::<(), brimline::Error>(())
    /// ```
    pub fn parse_as(
        text: &str,
        kind: impl Into<Option<Kind>>,
        measures: impl Into<Option<Measures>>,
    ) -> Result<Self, Error> {
        read(text, kind.into(), measures.into()).map_err(|fault| fault.got(text).into())
    }

    /// The amount of the shortest decimal that names this double: 0.1 is 0.1.
    ///
    /// # Errors
    ///
    /// [`NotANumber`](crate::ErrorKind::NotANumber) for a NaN or an infinity, [`TooManyDigits`](crate::ErrorKind::TooManyDigits)
    /// where the decimal does not fit, [`OutOfRange`](crate::ErrorKind::OutOfRange) from 10¹⁵ on.
    ///
    /// ```
    /// # use brimline::{Amount, Unit};
    /// assert_eq!(Amount::from_f64(0.1, Unit::Litre)?.to_string(), "0.1 L");
    /// # Ok::<(), brimline::Error>(())
    /// ```
    pub fn from_f64(number: f64, unit: Unit) -> Result<Self, Error> {
        let mut shortest = Shortest {
            bytes: [0; 32],
            len: 0,
        };
        if !number.is_finite() || write!(shortest, "{number:e}").is_err() {
            let fault = Fault::new(ErrorKind::NotANumber).hint("a finite number is needed");
            return Err(fault.got(&alloc::format!("{number}")).into());
        }
        shortest
            .amount(unit)
            .map_err(|fault| fault.got(&alloc::format!("{number:e}")).into())
    }
}

impl Unit {
    /// Reads a unit as people type it: `ft-lb`, `N.m`, `deg F`, `cc`, `qt (US)`.
    ///
    /// # Errors
    ///
    /// [`UnitAmbiguous`](crate::ErrorKind::UnitAmbiguous) with the candidates for a name of several sizes (`oz`, bare `qt`),
    /// [`UnitUnknown`](crate::ErrorKind::UnitUnknown) with the nearest names,
    /// [`UnitMissing`](crate::ErrorKind::UnitMissing) for empty text.
    ///
    /// ```
    /// # use brimline::{ErrorKind, Unit};
    /// assert_eq!(Unit::parse("N.m")?, Unit::NewtonMetre);
    /// let error = Unit::parse("qt").unwrap_err();
    /// assert_eq!(error.kind(), ErrorKind::UnitAmbiguous);
    /// assert_eq!(error.first().allowed, ["US qt", "imp qt"]);
    /// # Ok::<(), brimline::Error>(())
    /// ```
    pub fn parse(text: &str) -> Result<Self, Error> {
        Unit::parse_as(text, None, None)
    }

    /// Reads a unit where its kind, or whose customary measures are meant, is known.
    ///
    /// The kind decides how a text reads: `°C` as a [`Kind::TemperatureDifference`] is `Δ°C`.
    ///
    /// # Errors
    ///
    /// As [`Unit::parse`], and [`WrongKind`](crate::ErrorKind::WrongKind) for a unit of another kind.
    ///
    /// ```
    /// # use brimline::{Kind, Measures, Unit};
    /// assert_eq!(Unit::parse_as("°C", Kind::TemperatureDifference, None)?, Unit::CelsiusDifference);
    /// assert_eq!(Unit::parse_as("qt", None, Measures::Imperial)?, Unit::ImperialQuart);
    /// # Ok::<(), brimline::Error>(())
    /// ```
    pub fn parse_as(
        text: &str,
        kind: impl Into<Option<Kind>>,
        measures: impl Into<Option<Measures>>,
    ) -> Result<Self, Error> {
        let (kind, measures) = (kind.into(), measures.into());
        spelling::read(text, kind, measures)
            .map_err(|refused| refusal::of_unit(text, refused, kind).got(text).into())
    }
}

fn read(text: &str, kind: Option<Kind>, measures: Option<Measures>) -> Result<Amount, Fault> {
    let (Number { mantissa, decimals }, unit) = number::read(text.trim())?;
    if unit.is_empty() {
        return match kind {
            Some(Kind::Ratio) => Ok(Amount::of_parts(mantissa, decimals, Unit::One)),
            _ => Err(refusal::of_missing_unit(kind)),
        };
    }
    let unit = spelling::read(unit, kind, measures)
        .map_err(|refused| refusal::of_unit(unit, refused, kind))?;
    Ok(Amount::of_parts(mantissa, decimals, unit))
}

impl FromStr for Amount {
    type Err = Error;

    fn from_str(text: &str) -> Result<Self, Error> {
        Amount::parse(text)
    }
}

impl FromStr for Unit {
    type Err = Error;

    fn from_str(text: &str) -> Result<Self, Error> {
        Unit::parse(text)
    }
}

/// The shortest text of a double in exponent form, which is at most 24 bytes.
struct Shortest {
    bytes: [u8; 32],
    len: usize,
}

impl Write for Shortest {
    fn write_str(&mut self, text: &str) -> core::fmt::Result {
        let end = self.len.saturating_add(text.len());
        self.bytes
            .get_mut(self.len..end)
            .ok_or(core::fmt::Error)?
            .copy_from_slice(text.as_bytes());
        self.len = end;
        Ok(())
    }
}

impl Shortest {
    fn amount(&self, unit: Unit) -> Result<Amount, Fault> {
        let (mut mantissa, mut exponent, mut tens) = (0_i64, 0_i32, 0_i32);
        let (mut negative, mut small, mut point, mut power) = (false, false, false, false);
        for byte in self.bytes.iter().take(self.len) {
            let digit = byte.wrapping_sub(b'0');
            match byte {
                b'-' if power => small = true,
                b'-' => negative = true,
                b'.' => point = true,
                b'e' => power = true,
                _ if power => tens = tens.saturating_mul(10).saturating_add(digit.into()),
                _ => {
                    mantissa = mantissa.saturating_mul(10).saturating_add(digit.into());
                    exponent = exponent.saturating_sub(point.into());
                }
            }
        }
        exponent = exponent.saturating_add(if small { tens.saturating_neg() } else { tens });
        if mantissa == 0 {
            return Ok(Amount::of_parts(0, 0, unit));
        }
        while exponent > 0 {
            mantissa = mantissa.checked_mul(10).ok_or_else(refusal::of_range)?;
            exponent = exponent.saturating_sub(1);
        }
        let decimals = u8::try_from(exponent.unsigned_abs()).map_err(|_| refusal::of_digits())?;
        let mantissa = if negative {
            mantissa.saturating_neg()
        } else {
            mantissa
        };
        Amount::fitted(mantissa.into(), decimals, unit)
    }
}
