//! Numbers in: `int`, `float`, `Decimal`, `Fraction`, and text where it is asked for.

use crate::border::caught;
use crate::document::utf8;
use crate::error::Refused;
use brimline::{Amount, ErrorKind, Fault, Unit};
use pyo3::exceptions::PyOverflowError;
use pyo3::intern;
use pyo3::prelude::*;
use pyo3::types::{PyFloat, PyString};
#[cfg(feature = "introspection")]
use pyo3::{inspect::PyStaticExpr, type_hint_identifier, type_hint_union};

/// The double nearest to a number.
pub(crate) struct Double(pub(crate) f64);

impl FromPyObject<'_, '_> for Double {
    type Error = Refused;
    #[cfg(feature = "introspection")]
    const INPUT_TYPE: PyStaticExpr = f64::INPUT_TYPE;

    #[inline]
    fn extract(given: Borrowed<'_, '_, PyAny>) -> Result<Self, Refused> {
        match given.extract() {
            Ok(number) => Ok(Double(number)),
            Err(failed) => Err(too_large(given.py(), failed)),
        }
    }
}

#[cold]
fn too_large(py: Python<'_>, failed: PyErr) -> Refused {
    if failed.is_instance_of::<PyOverflowError>(py) {
        let fault = Fault::new(ErrorKind::OutOfRange);
        return Refused::Library(fault.hint("the number is above the largest double").into());
    }
    failed.into()
}

/// A number as it was written.
pub(crate) struct Number<'a, 'py>(Borrowed<'a, 'py, PyAny>);

impl<'a, 'py> FromPyObject<'a, 'py> for Number<'a, 'py> {
    type Error = PyErr;
    #[cfg(feature = "introspection")]
    const INPUT_TYPE: PyStaticExpr =
        type_hint_union!(type_hint_identifier!("builtins", "str"), f64::INPUT_TYPE);

    fn extract(given: Borrowed<'a, 'py, PyAny>) -> PyResult<Self> {
        Ok(Number(given))
    }
}

impl Number<'_, '_> {
    /// The amount of this number in a unit; of a text alone where there is no unit.
    pub(crate) fn of(&self, unit: Option<Unit>) -> Result<Amount, Refused> {
        match (self.0.cast::<PyString>(), unit) {
            (Ok(text), None) => {
                let text = utf8(&text)?;
                Ok(caught(|| Amount::parse(text))?)
            }
            (Ok(text), Some(unit)) => {
                let text = utf8(&text)?;
                Ok(caught(|| Amount::parse(&format!("{text} {unit}")))?)
            }
            (Err(_), Some(unit)) => self.exact(unit),
            (Err(_), None) => {
                self.0.extract::<Double>()?;
                let fault = Fault::new(ErrorKind::UnitMissing);
                Err(refused(fault.hint("give the unit beside the number")))
            }
        }
    }

    fn exact(&self, unit: Unit) -> Result<Amount, Refused> {
        let py = self.0.py();
        let member = |name| self.0.getattr_opt(name);
        if !self.0.is_instance_of::<PyFloat>() {
            if let Some(tuple) = member(intern!(py, "as_tuple"))? {
                return of_decimal(&tuple.call0()?, unit);
            }
            if let Some(above) = member(intern!(py, "numerator"))? {
                return of_ratio(&above, &self.0.getattr(intern!(py, "denominator"))?, unit);
            }
        }
        let Double(number) = self.0.extract()?;
        Ok(caught(|| Amount::from_f64(number, unit))?)
    }
}

/// The amount of a decimal's sign, digits and exponent, with the decimals it was written with.
fn of_decimal(tuple: &Bound<'_, PyAny>, unit: Unit) -> Result<Amount, Refused> {
    let (sign, digits, exponent): (i64, Vec<u8>, Bound<'_, PyAny>) = tuple.extract()?;
    let Ok(exponent) = exponent.extract::<i64>() else {
        let fault = Fault::new(ErrorKind::NotANumber);
        return Err(refused(fault.hint("a finite number is needed")));
    };
    let zeros = usize::try_from(exponent).unwrap_or(0).min(20);
    let digits = digits.into_iter().chain(std::iter::repeat_n(0, zeros));
    let mantissa = digits.fold(0_i64, |mantissa, digit| {
        mantissa.saturating_mul(10).saturating_add(digit.into())
    });
    let decimals = u8::try_from(exponent.min(0).unsigned_abs()).unwrap_or(u8::MAX);
    let mantissa = if sign == 1 { -mantissa } else { mantissa };
    Ok(caught(|| Amount::new(mantissa, decimals, unit))?)
}

/// The amount of a whole number, or of a fraction that ends within the decimals of an amount.
fn of_ratio(
    above: &Bound<'_, PyAny>,
    below: &Bound<'_, PyAny>,
    unit: Unit,
) -> Result<Amount, Refused> {
    let (above, below) = (saturated(above)?, saturated(below)?);
    let is_long = |number: i64| number.unsigned_abs() >= 1_000_000_000_000_000;
    if below == 1 || is_long(above) {
        return Ok(caught(|| Amount::new(above, 0, unit))?);
    }
    if is_long(below) {
        let hint = "write a decimal: this fraction has none that ends within 9 digits";
        return Err(refused(Fault::new(ErrorKind::Fraction).hint(hint)));
    }
    Ok(caught(|| {
        Amount::parse(&format!("{above}/{below} {unit}"))
    })?)
}

fn refused(fault: Fault) -> Refused {
    Refused::Library(fault.into())
}

/// A whole number, the nearest end of 64 bits for one beyond: no amount has so many digits.
pub(crate) fn saturated(number: &Bound<'_, PyAny>) -> PyResult<i64> {
    match number.extract::<i64>() {
        Err(failed) if failed.is_instance_of::<PyOverflowError>(number.py()) => {
            Ok(if number.lt(0)? { -i64::MAX } else { i64::MAX })
        }
        whole => whole,
    }
}
