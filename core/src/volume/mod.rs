//! Volume and temperature, the shape of a sump, exchanging a fluid, which containers to open.
//!
//! A volume means something only with its temperature: fluid gains about 1 % on 13 °C. Where several volumes meet here they
//! are taken at one temperature; [`at_temperature`] brings them there.

mod container;
mod container_sums;
mod exchange;
mod expansion;
mod sump;
mod tilt;

pub use container::{
    Container, ContainerCount, ContainerPlan, ContainerPlans, Opened, OpenedDefect, OpenedUse,
    containers,
};
pub use exchange::{
    CyclesNeeded, Exchange, Flush, cycles_needed, exchange, flush, flush_needed, wrong_left,
};
pub use expansion::{
    Base, Expansion, at_temperature, base_density, correction_factor, density_at, mass,
    temperature_error, volume_of_mass,
};
pub use sump::{Sump, level_for, segment_share, volume_below};
pub use tilt::{TiltError, tilt_error};

use crate::error::{Error, ErrorKind, Fault};
use crate::quantity::{Amount, Kind, Unit, convert};
use alloc::string::{String, ToString};

/// The number of an argument in a unit, refused under its name where it is of another kind.
fn number(name: &'static str, amount: Amount, unit: Unit) -> Result<f64, Error> {
    if amount.unit() == unit {
        return Ok(amount.to_f64());
    }
    of_kind(name, amount, unit.kind())?;
    convert(amount.to_f64(), amount.unit(), unit).map_err(|error| at(&error, name))
}

/// The same, refused at zero and below.
fn above_zero(name: &'static str, amount: Amount, unit: Unit) -> Result<f64, Error> {
    let number = number(name, amount, unit)?;
    if number > 0.0 {
        return Ok(number);
    }
    Err(out_of_range(name, amount).allowed(["above zero"]).into())
}

/// The same, refused below zero.
fn from_zero(name: &'static str, amount: Amount, unit: Unit) -> Result<f64, Error> {
    let number = number(name, amount, unit)?;
    if number >= 0.0 {
        return Ok(number);
    }
    let fault = out_of_range(name, amount);
    Err(fault.allowed(["zero and above"]).into())
}

fn of_kind(name: &'static str, amount: Amount, kind: Kind) -> Result<(), Error> {
    if amount.kind() == kind {
        return Ok(());
    }
    let units = Unit::ALL.iter().filter(|unit| unit.kind() == kind);
    let fault = Fault::new(ErrorKind::WrongKind)
        .at(name)
        .got(amount.unit().symbol());
    Err(fault.allowed(units.map(|unit| unit.symbol())).into())
}

fn out_of_range(path: impl Into<String>, got: Amount) -> Fault {
    Fault::new(ErrorKind::OutOfRange)
        .at(path)
        .got(&got.to_string())
}

/// What was computed in a unit, refused under the name of the argument that makes it too large.
fn computed(name: &'static str, number: f64, unit: Unit) -> Result<Amount, Error> {
    Amount::from_computed(number, unit).map_err(|error| at(&error, name))
}

/// An error as one of the argument at a path.
fn at(error: &Error, path: impl Into<String>) -> Error {
    error.first().clone().at(path).into()
}
