//! What the sheet asks to hold while the level is read. What it does not ask is no defect.

use super::read::amounts;
use crate::document::{Node, Reader};
use crate::error::{ErrorKind, Fault};
use crate::quantity::{Amount, Kind};
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

pub(super) fn conditions(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Conditions> {
    let object = reader.object(
        node,
        &[
            "engine",
            "selector",
            "temperature",
            "tilt",
            "ranges",
            "cooler",
        ],
    )?;
    let engine = reader.optional(&object, "engine", |reader, node| {
        reader.word(node, EngineState::WORDS)
    });
    let selector = reader.optional(&object, "selector", Reader::slug);
    let temperature = reader.optional(&object, "temperature", temperature);
    let tilt = reader.optional(&object, "tilt", |reader, node| {
        let object = reader.object(node, &["max"])?;
        let angle = |reader: &mut Reader<'_>, node: &_| reader.amount_from_zero(node, Kind::Angle);
        let max = reader.required(&object, "max", angle)?;
        Some(TiltCondition { max })
    });
    let ranges = reader.optional(&object, "ranges", |reader, node| {
        let object = reader.object(node, &["dwell"])?;
        let dwell = reader.optional(&object, "dwell", |reader, node| {
            reader.amount_from_zero(node, Kind::Time)
        });
        Some(RangesCondition { dwell })
    });
    let cooler = reader.optional(&object, "cooler", |reader, node| {
        let object = reader.object(node, &["thermostat"])?;
        let thermostat = reader.optional(&object, "thermostat", |reader, node| {
            reader.amount(node, Kind::Temperature)
        });
        Some(CoolerCondition { thermostat })
    });
    Some(Conditions {
        engine,
        selector,
        temperature,
        tilt,
        ranges,
        cooler,
    })
}

fn temperature(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<TemperatureCondition> {
    let object = reader.object(node, &["min", "max", "printed", "max_age"])?;
    let mut limit = |name| {
        reader.optional(&object, name, |reader, node| {
            reader.amount(node, Kind::Temperature)
        })
    };
    let (min, max) = (limit("min"), limit("max"));
    let printed = reader.optional(&object, "printed", |reader, node| {
        amounts(reader, node, Kind::Temperature)
    });
    let max_age = reader.optional(&object, "max_age", |reader, node| {
        reader.amount_from_zero(node, Kind::Time)
    });
    if object.get("min").is_none() && object.get("max").is_none() {
        let hint = "state min, max or both, or leave temperature out";
        reader.note(
            Fault::new(ErrorKind::Conflict)
                .allowed(["min", "max"])
                .hint(hint),
        );
    }
    Some(TemperatureCondition {
        min,
        max,
        printed: printed.unwrap_or_default(),
        max_age,
    })
}
