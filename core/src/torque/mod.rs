//! Wrenches and what they are set to, prints of one torque in several units, threads and what they bear.
//!
//! Every torque here is that of threads in the condition the sheet was printed for. No factor for threadlocker or
//! lubricant is applied anywhere: published ones contradict each other.

mod adapter;
mod equivalents;
mod joint;
mod plausible;
mod thread;
mod tool;
mod tool_type;

pub use adapter::{Setting, Wrench, applied_torque, wrench_setting};
pub use equivalents::{Equivalents, Print, PrintClass, SlipFactor, equivalents};
pub use joint::{Friction, JointTorque, Preload, ThreadCondition, preload, torque_for_preload};
pub use plausible::{Basis, Fits, Plausibility, PlugKind, UnitSlip, plausible};
pub use thread::{StrengthClass, Thread, proof_load};
pub use tool::{Tool, ToolChoice, ToolFit, ToolJob, ToolReason, ToolReasonId, tool_suits};
pub use tool_type::ToolType;

use crate::error::{Error, ErrorKind, Fault};
use crate::quantity::{Amount, Kind, Unit};

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

/// The same, refused at zero and below.
fn above_zero(name: &'static str, amount: Amount, kind: Kind) -> Result<f64, Error> {
    let value = si(name, amount, kind)?;
    if value > 0.0 {
        return Ok(value);
    }
    Err(out_of_range(name, amount).allowed(["above zero"]).into())
}

fn out_of_range(name: &'static str, got: Amount) -> Fault {
    Fault::new(ErrorKind::OutOfRange)
        .at(name)
        .got(&alloc::format!("{got}"))
}

/// A computed amount, refused under the name of the argument that makes it too large.
fn computed(name: &'static str, value: f64, unit: Unit) -> Result<Amount, Error> {
    Amount::from_si(value, unit).map_err(|error| error.first().clone().at(name).into())
}
