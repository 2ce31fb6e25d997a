//! Arguments of a formula: their numbers in the unit it is written in, each refused under its own name.

use super::amount::Amount;
use super::kind::Kind;
use super::unit::Unit;
use crate::error::{Error, ErrorKind, Fault};
use alloc::string::{String, ToString};

/// Refuses an argument of another kind.
#[inline]
pub(crate) fn of_kind(name: &str, amount: Amount, kind: Kind) -> Result<(), Error> {
    if amount.kind() == kind {
        Ok(())
    } else {
        Err(of_another_kind(name, amount, kind))
    }
}

#[cold]
#[inline(never)]
fn of_another_kind(name: &str, amount: Amount, kind: Kind) -> Error {
    let units = Unit::ALL.iter().filter(|unit| unit.kind() == kind);
    let fault = Fault::new(ErrorKind::WrongKind)
        .at(name)
        .got(amount.unit().symbol());
    fault.allowed(units.map(|unit| unit.symbol())).into()
}

/// The number of an argument in a unit, of whose kind it must be.
#[inline]
pub(crate) fn number(name: &str, amount: Amount, unit: Unit) -> Result<f64, Error> {
    of_kind(name, amount, unit.kind())?;
    named(name, amount.number_in(unit))
}

/// The same, refused at zero and below. A temperature is above zero in kelvin.
#[inline]
pub(crate) fn above_zero(name: &str, amount: Amount, unit: Unit) -> Result<f64, Error> {
    let number = number(name, amount, unit)?;
    if number > 0.0 {
        return Ok(number);
    }
    Err(of_range(name, amount, "above zero"))
}

/// The same, refused below zero.
#[inline]
pub(crate) fn from_zero(name: &str, amount: Amount, unit: Unit) -> Result<f64, Error> {
    let number = number(name, amount, unit)?;
    if number >= 0.0 {
        return Ok(number);
    }
    Err(of_range(name, amount, "zero and above"))
}

#[cold]
fn of_range(name: &str, got: Amount, allowed: &'static str) -> Error {
    out_of_range(name, got).allowed([allowed]).into()
}

/// An argument that is out of range.
#[cold]
#[inline(never)]
pub(crate) fn out_of_range(path: impl Into<String>, got: Amount) -> Fault {
    Fault::new(ErrorKind::OutOfRange)
        .at(path)
        .got(&got.to_string())
}

/// What was computed in a unit, refused under the name of the argument that makes it too large.
#[inline]
pub(crate) fn computed(name: &str, number: f64, unit: Unit) -> Result<Amount, Error> {
    named(name, Amount::from_computed(number, unit))
}

/// A result whose refusal is one of the argument at a path.
#[inline]
pub(crate) fn named<T>(path: impl Into<String>, result: Result<T, Error>) -> Result<T, Error> {
    result.map_err(|error| renamed(&error, path.into()))
}

#[cold]
#[inline(never)]
fn renamed(error: &Error, path: String) -> Error {
    error.first().clone().at(path).into()
}
