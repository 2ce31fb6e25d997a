//! When the fluid will be warm enough, and when no longer; what a temperature reading is worth.

mod cooling;
mod curve;
mod fit;
mod forecast;
mod least_squares;
mod mixing;
mod outlook;
pub(crate) mod sensor;
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
use crate::quantity::argument::{above_zero, from_zero, named, number, out_of_range};
use crate::quantity::{Amount, Unit};

/// One reading of a temperature and when it was taken.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Sample {
    /// Time from any moment that is the same for all.
    pub at: Amount,
    /// What was read.
    pub reading: Amount,
}

/// What was computed in SI, refused under the name of the argument that makes it too large.
fn computed(name: &str, value: f64, unit: Unit) -> Result<Amount, Error> {
    named(name, Amount::from_si(value, unit))
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
