//! How the level is found: the kind of opening, and which way each defect of a check misleads.

use super::read::volume_from_zero;
use crate::document::{Node, Reader};
use crate::quantity::{Amount, Kind};
use crate::word::words;
use alloc::vec::Vec;
use serde::{Serialize, Serializer};

words! {
    /// The level methods carried. One mechanism serves them all; they differ in the table of signs.
    pub enum MethodKind {
        /// A plug low on the case, the unit filled at the top.
        OverflowPlug = "overflow_plug",
        /// A plug in the side, the unit filled through it or through a hole above it.
        SidePlug = "side_plug",
        /// A tube inside the drain plug, whose own contents run out first.
        Standpipe = "standpipe",
    }
}

impl MethodKind {
    /// Whether fluid that runs down after the engine stops still misleads: where the engine is off and the
    /// opening is where the unit is filled.
    pub(crate) const fn waits_after_stop(self) -> bool {
        matches!(self, MethodKind::SidePlug)
    }
}

words! {
    /// What the fluid's level does as the unit warms.
    pub enum Warming {
        /// It rises, by expansion alone.
        Expands = "expands",
        /// It falls, because a cover or circuit takes fluid up when warm.
        Retains = "retains",
    }
}

words! {
    /// Which way a reading errs.
    pub enum Sign {
        /// The level reads too low: flow still proves "at least".
        Low = "low",
        /// The level reads too high: no flow still proves "at most".
        High = "high",
        /// Either way: nothing is proved.
        Both = "both",
    }
}

impl Sign {
    /// Two defects at once: the same way, or either way.
    #[must_use]
    pub fn and(self, other: Sign) -> Sign {
        if self == other { self } else { Sign::Both }
    }
}

words! {
    /// What can be wrong with the circumstances of an observation.
    pub enum Defect {
        /// Fluid colder than the sheet's window.
        BelowWindow = "below_window",
        /// Fluid warmer than the sheet's window.
        AboveWindow = "above_window",
        /// Engine off where it should run, or never stated.
        EngineOff = "engine_off",
        /// Engine running where it should be off, or never stated.
        EngineRunning = "engine_running",
        /// Selector elsewhere than the sheet says, or never stated.
        Selector = "selector",
        /// Ranges not cycled since the engine was started.
        Ranges = "ranges",
        /// Cooler opened and its circuit not filled hot since.
        Cooler = "cooler",
        /// Foam in what came out.
        Foam = "foam",
        /// Tilted towards the opening beyond the limit.
        TiltToward = "tilt_toward",
        /// Tilted away from the opening beyond the limit.
        TiltAway = "tilt_away",
        /// Tilted beyond the limit in an unknown direction, or the tilt never stated.
        TiltUnknown = "tilt_unknown",
        /// The last pour had not settled.
        PourSettle = "pour_settle",
        /// The fluid had not settled since the engine stopped.
        StopSettle = "stop_settle",
    }
}

impl Defect {
    /// The sign where the unit is filled at the top, and where it is filled through or below the opening.
    /// Common practice, no source.
    const fn signs(self) -> (Sign, Sign) {
        match self {
            Defect::BelowWindow => (Sign::Low, Sign::Low),
            Defect::AboveWindow => (Sign::High, Sign::High),
            Defect::EngineOff => (Sign::High, Sign::High),
            Defect::EngineRunning => (Sign::Both, Sign::Both),
            Defect::Selector => (Sign::Both, Sign::Both),
            Defect::Ranges => (Sign::High, Sign::High),
            Defect::Cooler => (Sign::High, Sign::High),
            Defect::Foam => (Sign::Both, Sign::Both),
            Defect::TiltToward => (Sign::High, Sign::High),
            Defect::TiltAway => (Sign::Low, Sign::Low),
            Defect::TiltUnknown => (Sign::Both, Sign::Both),
            Defect::PourSettle => (Sign::Low, Sign::Both),
            Defect::StopSettle => (Sign::Both, Sign::Low),
        }
    }
}

/// How the level is found.
#[derive(Debug, Clone, Serialize)]
#[non_exhaustive]
pub struct Method {
    /// The kind of opening.
    pub kind: MethodKind,
    /// What the level does as the unit warms; a reading outside the window proves nothing until this is declared.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub warming: Option<Warming>,
    /// How long a flow must be watched (time). Absent: no time is asked.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub watch: Option<Amount>,
    /// How long a pour needs to run down (time). Absent: none.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub settle: Option<Amount>,
    /// Free surface of the fluid (area).
    #[serde(skip_serializing_if = "Option::is_none")]
    pub surface: Option<Amount>,
    /// Distance of the opening from the middle of that surface (length).
    #[serde(skip_serializing_if = "Option::is_none")]
    pub offset: Option<Amount>,
    /// What runs out of the opening itself before the fluid speaks (volume). Absent: nothing.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub hold_up: Option<Amount>,
    /// How much above the correct level a drip can mean (volume). Absent: nothing.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub lip_band: Option<Amount>,
    /// Signs that this sheet states otherwise than the table does.
    #[serde(serialize_with = "as_map", skip_serializing_if = "Vec::is_empty")]
    pub bias: Vec<(Defect, Sign)>,
}

impl Method {
    /// Which way a defect misleads on this sheet.
    #[must_use]
    pub fn sign(&self, defect: Defect) -> Sign {
        if let Some((_, stated)) = self.bias.iter().find(|(own, _)| *own == defect) {
            return *stated;
        }
        let by_temperature = matches!(defect, Defect::BelowWindow | Defect::AboveWindow);
        if by_temperature && self.warming != Some(Warming::Expands) {
            return Sign::Both;
        }
        let (at_top, through) = defect.signs();
        match self.kind {
            MethodKind::OverflowPlug | MethodKind::Standpipe => at_top,
            MethodKind::SidePlug => through,
        }
    }
}

fn as_map<S: Serializer>(bias: &[(Defect, Sign)], serializer: S) -> Result<S::Ok, S::Error> {
    serializer.collect_map(bias.iter().copied())
}

pub(super) fn method(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Method> {
    let fields = &[
        "kind", "warming", "watch", "settle", "surface", "offset", "hold_up", "lip_band", "bias",
    ];
    let object = reader.object(node, fields)?;
    let kind = reader.required(&object, "kind", |reader, node| {
        reader.word(node, MethodKind::WORDS)
    });
    let warming = reader.optional(&object, "warming", |reader, node| {
        reader.word(node, Warming::WORDS)
    });
    let mut amount = |name, kind| {
        reader.optional(&object, name, |reader, node| {
            reader.amount_from_zero(node, kind)
        })
    };
    let (watch, settle) = (amount("watch", Kind::Time), amount("settle", Kind::Time));
    let (surface, offset) = (
        amount("surface", Kind::Area),
        amount("offset", Kind::Length),
    );
    let hold_up = reader.optional(&object, "hold_up", volume_from_zero);
    let lip_band = reader.optional(&object, "lip_band", volume_from_zero);
    let bias = reader.optional(&object, "bias", bias).unwrap_or_default();
    Some(Method {
        kind: kind?,
        warming,
        watch,
        settle,
        surface,
        offset,
        hold_up,
        lip_band,
        bias,
    })
}

fn bias(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Vec<(Defect, Sign)>> {
    let object = reader.object(node, Defect::SLUGS)?;
    let mut stated = Vec::new();
    for (name, defect) in Defect::WORDS {
        let sign = reader.optional(&object, name, |reader, node| reader.word(node, Sign::WORDS));
        stated.extend(sign.map(|sign| (*defect, sign)));
    }
    Some(stated)
}
