//! What the sheet asks to hold while the level is read. What it does not ask is no defect.

use crate::quantity::Amount;
use crate::word::words;
use alloc::string::String;
use alloc::vec::Vec;
use serde::Serialize;

words! {
    /// What the engine is doing.
    pub enum EngineState {
        /// Running at idle.
        Idling = "idling",
        /// Off.
        Off = "off",
        /// A hybrid's service mode: the pump runs, whatever the engine does.
        Ready = "ready",
    }
}

impl EngineState {
    /// Whether the gearbox pump runs.
    #[must_use]
    pub const fn is_running(self) -> bool {
        matches!(self, EngineState::Idling | EngineState::Ready)
    }
}

/// The conditions of one sheet, each optional.
#[derive(Debug, Clone, Default, Serialize)]
#[non_exhaustive]
pub struct Conditions {
    /// What the engine must be doing. Either running state meets the other.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub engine: Option<EngineState>,
    /// Where the selector must be, as `park`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub selector: Option<String>,
    /// How warm the fluid must be.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub temperature: Option<TemperatureCondition>,
    /// How level the unit must stand.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub tilt: Option<TiltCondition>,
    /// That the ranges were cycled since the engine was started.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub ranges: Option<RangesCondition>,
    /// That a cooler circuit which was opened has been filled hot.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub cooler: Option<CoolerCondition>,
}

/// The temperature window; at a limit exactly, it is met.
#[derive(Debug, Clone, Serialize)]
#[non_exhaustive]
pub struct TemperatureCondition {
    /// The lowest temperature.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub min: Option<Amount>,
    /// The highest temperature.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub max: Option<Amount>,
    /// The same limits as the sheet prints them in other units.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub printed: Vec<Amount>,
    /// How old the last sample may be (time). Absent: 30 s.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub max_age: Option<Amount>,
}

/// How far from level the unit may stand.
#[derive(Debug, Clone, Serialize)]
#[non_exhaustive]
pub struct TiltCondition {
    /// The greatest angle, met at exactly that angle.
    pub max: Amount,
}

/// Cycling the ranges.
#[derive(Debug, Clone, Serialize)]
#[non_exhaustive]
pub struct RangesCondition {
    /// How long each range is held (time). Absent: any time.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub dwell: Option<Amount>,
}

/// The cooler circuit.
#[derive(Debug, Clone, Serialize)]
#[non_exhaustive]
pub struct CoolerCondition {
    /// The temperature at which the circuit opens and fills.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub thermostat: Option<Amount>,
}
