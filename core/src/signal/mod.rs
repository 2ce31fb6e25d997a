//! What a vehicle network says of a gearbox: bytes in, quantities with a status out.

mod diagnostic;
mod frame;
mod linear;

pub use diagnostic::{Refusal, Reply, ReplyState, diagnostic_reply};
pub use frame::{Frame, LevelStatus, transmission_frame};
pub use linear::{ByteOrder, Linear, linear};

use crate::quantity::Amount;
use crate::word::words;
use serde::Serialize;

words! {
    /// What a value from a network is worth. Only `valid` may be used.
    pub enum State {
        /// Within the range of valid values.
        Valid = "valid",
        /// A code whose meaning belongs to the parameter.
        ParameterSpecific = "parameter_specific",
        /// A code kept for later use.
        Reserved = "reserved",
        /// The sender knows that its value is wrong.
        Error = "error",
        /// The sender has no value.
        NotAvailable = "not_available",
        /// A valid code for something that cannot be, or that lies outside the range given for it.
        Implausible = "implausible",
    }
}

/// One value from a network.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct Reading {
    /// What it is worth.
    pub state: State,
    /// The value, where the code stands for one: with `valid` and `implausible`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub value: Option<Amount>,
}

impl Reading {
    const fn new(state: State, value: Amount) -> Self {
        Reading {
            state,
            value: Some(value),
        }
    }

    const fn none(state: State) -> Self {
        Reading { state, value: None }
    }
}
