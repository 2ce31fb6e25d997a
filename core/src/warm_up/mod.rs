//! When the fluid will be warm enough, and when no longer; what a temperature reading is worth.

mod cooling;
mod curve;
mod fit;
mod forecast;
mod mixing;
mod normal;
mod outlook;
mod sensor;
mod slope;
mod soak;

pub use cooling::{CoolDown, Cooling, cool_down, response_time};
pub use fit::{Crossing, Fit, StandardErrors, fit};
pub use forecast::{Asked, Forecast, Pour, forecast};
pub use mixing::mixed_temperature;
pub use outlook::{Method, Outlook, Reason, Span};
pub use sensor::{Doubt, Doubted, sensor_doubts};
pub use soak::{ColdSoak, Named, OtherUnit, cold_soak};

use crate::error::{Error, ErrorKind, Fault};
use crate::quantity::{Amount, Kind, Unit};
use alloc::string::ToString;

/// One reading of a temperature and when it was taken.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Sample {
    /// Time from any moment that is the same for all.
    pub at: Amount,
    /// What was read.
    pub reading: Amount,
}

/// The value of an argument in SI, refused under its name where it is of another kind.
fn si(name: &'static str, amount: Amount, kind: Kind) -> Result<f64, Error> {
    if amount.kind() == kind {
        return Ok(amount.si());
    }
    let units = Unit::ALL.iter().filter(|unit| unit.kind() == kind);
    let fault = Fault::new(ErrorKind::WrongKind)
        .at(name)
        .got(amount.unit().symbol());
    Err(fault.allowed(units.map(|unit| unit.symbol())).into())
}

/// The same, refused at zero and below: for a temperature, at absolute zero.
fn above_zero(name: &'static str, amount: Amount, kind: Kind) -> Result<f64, Error> {
    let value = si(name, amount, kind)?;
    if value > 0.0 {
        return Ok(value);
    }
    Err(out_of_range(name, amount).allowed(["above zero"]).into())
}

/// The same, refused below zero.
fn from_zero(name: &'static str, amount: Amount, kind: Kind) -> Result<f64, Error> {
    let value = si(name, amount, kind)?;
    if value >= 0.0 {
        return Ok(value);
    }
    Err(out_of_range(name, amount).allowed(["from zero"]).into())
}

fn out_of_range(name: &'static str, got: Amount) -> Fault {
    Fault::new(ErrorKind::OutOfRange)
        .at(name)
        .got(&got.to_string())
}

/// A computed amount, refused under the name of the argument that makes it too large.
fn computed(name: &'static str, value: f64, unit: Unit) -> Result<Amount, Error> {
    Amount::from_si(value, unit).map_err(|error| error.first().clone().at(name).into())
}

/// An error of one item of a list, its path led on from there.
fn within(error: Error, list: &str, index: usize) -> Error {
    let mut faults = error.into_faults();
    for fault in &mut faults {
        let dot = if fault.path.is_empty() { "" } else { "." };
        fault.path = alloc::format!("{list}[{index}]{dot}{}", fault.path);
    }
    Error::from_faults(faults).unwrap_or_else(|| Fault::new(ErrorKind::Internal).at(list).into())
}

/// The unit of a difference of two temperatures in this unit.
fn difference(unit: Unit) -> Unit {
    match unit {
        Unit::DegreeFahrenheit => Unit::FahrenheitDifference,
        _ => Unit::CelsiusDifference,
    }
}
