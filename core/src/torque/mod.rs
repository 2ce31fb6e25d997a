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
mod tool_reason;
mod tool_type;

pub use adapter::{Setting, Wrench, applied_torque, wrench_setting};
pub use equivalents::{Equivalents, Print, PrintClass, SlipFactor, equivalents};
pub use joint::{Friction, JointTorque, Preload, ThreadCondition, preload, torque_for_preload};
pub use plausible::{Basis, Fits, Plausibility, PlugKind, UnitSlip, plausible};
pub use thread::{StrengthClass, Thread, proof_load};
pub use tool::{Tool, ToolChoice, ToolFit, ToolJob, tool_suits};
pub use tool_reason::{ToolReason, ToolReasonId};
pub use tool_type::ToolType;

use crate::error::Error;
use crate::quantity::argument::{computed, of_kind, out_of_range};
use crate::quantity::{Amount, Kind, Unit};

/// The number of an amount in a unit of its kind.
fn number(amount: Amount, unit: Unit) -> f64 {
    amount.number_in(unit).unwrap_or_default()
}

/// Refuses an argument of another kind, and one at zero or below.
fn above_zero(name: &'static str, amount: Amount, kind: Kind) -> Result<(), Error> {
    of_kind(name, amount, kind)?;
    if amount.is_zero() || amount.is_negative() {
        return Err(out_of_range(name, amount).allowed(["above zero"]).into());
    }
    Ok(())
}
