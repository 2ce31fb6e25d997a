//! Writing entries in their canonical form: members in documented order.

use super::entry::{Entry, Fact, Measured};
use crate::quantity::Kind;
use serde::ser::SerializeMap;
use serde::{Serialize, Serializer};

impl Serialize for Entry {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut map = serializer.serialize_map(None)?;
        map.serialize_entry("seq", &self.seq)?;
        map.serialize_entry("at", &self.at.text)?;
        map.serialize_entry("kind", self.fact.kind())?;
        optional(&mut map, "by", self.by.as_ref())?;
        optional(&mut map, "id", self.id.as_ref())?;
        members(&mut map, &self.fact)?;
        optional(&mut map, "ext", self.ext.as_ref())?;
        map.end()
    }
}

fn optional<M: SerializeMap, T: Serialize>(
    map: &mut M,
    name: &str,
    value: Option<T>,
) -> Result<(), M::Error> {
    value.map_or(Ok(()), |value| map.serialize_entry(name, &value))
}

fn volume_or_mass<M: SerializeMap>(map: &mut M, measured: &Measured) -> Result<(), M::Error> {
    let is_mass = measured.amount.kind() == Kind::Mass;
    map.serialize_entry(if is_mass { "mass" } else { "volume" }, &measured.amount)?;
    optional(map, "measured_by", measured.by)
}

fn members<M: SerializeMap>(map: &mut M, fact: &Fact) -> Result<(), M::Error> {
    match fact {
        Fact::Confirmed { what } => map.serialize_entry("what", what),
        Fact::Level { tilt, toward } => {
            map.serialize_entry("tilt", tilt)?;
            map.serialize_entry("toward", toward)
        }
        Fact::Engine { state } => map.serialize_entry("state", state),
        Fact::Selector { position } => map.serialize_entry("position", position),
        Fact::Ranges { dwell } => map.serialize_entry("dwell", dwell),
        Fact::Temperature { reading, source } => {
            map.serialize_entry("reading", reading)?;
            map.serialize_entry("source", source)
        }
        Fact::Plug { state } => map.serialize_entry("state", state),
        Fact::Flow {
            grade,
            watched,
            captured,
            trend,
        } => {
            map.serialize_entry("grade", grade)?;
            map.serialize_entry("for", watched)?;
            optional(map, "captured", captured.map(|measured| measured.amount))?;
            optional(
                map,
                "captured_by",
                captured.and_then(|measured| measured.by),
            )?;
            optional(map, "trend", trend.as_ref())
        }
        Fact::Reading {
            value,
            side,
            status,
        } => {
            map.serialize_entry("value", value)?;
            optional(map, "side", side.as_ref())?;
            optional(map, "status", status.as_ref())
        }
        Fact::Added {
            measured,
            fluid,
            container,
            batch,
        } => {
            volume_or_mass(map, measured)?;
            optional(map, "fluid", fluid.as_ref())?;
            optional(map, "container", container.as_ref())?;
            optional(map, "batch", batch.as_ref())
        }
        Fact::Drained { measured, why } => {
            volume_or_mass(map, measured)?;
            map.serialize_entry("why", why)
        }
        Fact::Fluid {
            appearance,
            smell,
            debris,
            coolant_strip,
        } => {
            optional(map, "appearance", appearance.as_ref())?;
            optional(map, "smell", smell.as_ref())?;
            optional(map, "debris", debris.as_ref())?;
            optional(map, "coolant_strip", coolant_strip.as_ref())
        }
        Fact::Seepage {
            place,
            class,
            cleaned,
            dye,
        } => {
            map.serialize_entry("place", place)?;
            map.serialize_entry("class", class)?;
            optional(map, "cleaned", cleaned.as_ref())?;
            optional(map, "dye", dye.as_ref())
        }
        Fact::Tightened {
            torque,
            tool,
            adapter,
        } => {
            map.serialize_entry("torque", torque)?;
            optional(map, "tool", tool.as_ref())?;
            optional(map, "adapter", adapter.as_ref())
        }
        Fact::Driven { distance, peak } => {
            map.serialize_entry("distance", distance)?;
            optional(map, "peak", peak.as_ref())
        }
        Fact::Approved { ceiling } => map.serialize_entry("ceiling", ceiling),
        Fact::Hold { reason } | Fact::Release { reason } => map.serialize_entry("reason", reason),
        Fact::Correction {
            of,
            replaces,
            reason,
        } => {
            map.serialize_entry("of", of)?;
            match replaces {
                Some(entry) => map.serialize_entry("replaces", entry)?,
                None => map.serialize_entry("void", &true)?,
            }
            map.serialize_entry("reason", reason)
        }
        Fact::Note { text } => map.serialize_entry("text", text),
    }
}
