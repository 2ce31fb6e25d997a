//! One entry of a journal: what happened, when, and who says so.

use crate::document::Ext;
use crate::procedure::EngineState;
use crate::quantity::Amount;
use crate::word::words;
use alloc::boxed::Box;
use alloc::string::String;
use jiff::Timestamp;
use serde::ser::SerializeMap;
use serde::{Serialize, Serializer};

words! {
    /// Which way the unit leans.
    pub enum Toward {
        /// The opening is on the low side.
        Plug = "plug",
        /// The opening is on the high side.
        Away = "away",
        /// Not known.
        Unknown = "unknown",
    }
}

words! {
    /// Where a temperature was read.
    pub enum Source {
        /// A scan tool reading the gearbox fluid.
        Scan = "scan",
        /// The vehicle network reading the gearbox fluid.
        Network = "network",
        /// An infrared reading of the case.
        Infrared = "infrared",
        /// A probe on the pan.
        Pan = "pan",
        /// The engine coolant.
        Coolant = "coolant",
        /// The air of the shop.
        Ambient = "ambient",
    }
}

impl Source {
    /// Whether it speaks of the gearbox fluid, near enough to be doubted.
    #[must_use]
    pub const fn reads_fluid(self) -> bool {
        !matches!(self, Source::Coolant | Source::Ambient)
    }
}

words! {
    /// How the plug is.
    pub enum PlugState {
        /// Cracked loose and still sealing.
        Loosened = "loosened",
        /// Out.
        Open = "open",
        /// In and sealing.
        Closed = "closed",
    }
}

words! {
    /// What came out of the opening.
    pub enum Grade {
        /// Nothing.
        None = "none",
        /// Wet, without a drop.
        Wet = "wet",
        /// Drops that can be counted easily.
        SlowDrip = "slow_drip",
        /// Drops too fast to count.
        FastDrip = "fast_drip",
        /// A thread of fluid.
        Trickle = "trickle",
        /// A stream.
        Stream = "stream",
        /// All the opening passes.
        Gush = "gush",
        /// Foam.
        Spitting = "spitting",
    }
}

impl Grade {
    /// Whether fluid came out.
    #[must_use]
    pub const fn is_flow(self) -> bool {
        !matches!(self, Grade::None | Grade::Wet)
    }

    /// Whether it is a drip or a thread: the level stands at the lip.
    #[must_use]
    pub const fn is_at_lip(self) -> bool {
        matches!(self, Grade::SlowDrip | Grade::FastDrip | Grade::Trickle)
    }
}

words! {
    /// How a flow changed while it was watched.
    pub enum Trend {
        /// It grew.
        Rising = "rising",
        /// It stayed.
        Steady = "steady",
        /// It thinned.
        Thinning = "thinning",
        /// It stopped.
        Stopped = "stopped",
    }
}

words! {
    /// How a volume was measured.
    pub enum MeasuredBy {
        /// A full sealed container.
        Sealed = "sealed",
        /// A metered gun.
        Meter = "meter",
        /// A graduated jug.
        Jug = "jug",
        /// A scale.
        Scale = "scale",
        /// By eye.
        Eye = "eye",
    }
}

words! {
    /// Why fluid came out.
    pub enum DrainedWhy {
        /// It was above the level and stays out.
        Excess = "excess",
        /// It was caught from the last flow.
        Captured = "captured",
        /// It was lost while the plug went in.
        ClosingLoss = "closing_loss",
        /// It was drained to work on the unit.
        Service = "service",
    }
}

words! {
    /// How far a seepage has gone (US Army technical manuals, classes I to III).
    pub enum SeepageClass {
        /// Wet or discoloured; no drops.
        One = "I",
        /// Drops form and do not fall.
        Two = "II",
        /// Drops fall.
        Three = "III",
    }
}

words! {
    /// What a strip test for coolant shows.
    pub enum StripResult {
        /// No coolant.
        Negative = "negative",
        /// Coolant.
        Positive = "positive",
    }
}

/// A moment as it was written, and the instant it names.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Moment {
    pub(super) text: String,
    pub(super) instant: Timestamp,
}

impl Moment {
    /// The RFC 3339 text as it was written.
    #[must_use]
    pub fn text(&self) -> &str {
        &self.text
    }

    /// Nanoseconds since 1970-01-01T00:00:00Z.
    #[must_use]
    pub fn nanoseconds(&self) -> i128 {
        self.instant.as_nanosecond()
    }
}

/// A volume as it was measured: a volume or a mass by its unit, and how.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Measured {
    /// The volume or mass.
    pub amount: Amount,
    /// How it was measured, if said.
    pub by: Option<MeasuredBy>,
}

/// What happened.
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
#[allow(
    missing_docs,
    reason = "the fields are those of the journal format, told in the README's table of entries"
)]
pub enum Fact {
    Confirmed {
        what: String,
    },
    Level {
        tilt: Amount,
        toward: Toward,
    },
    Engine {
        state: EngineState,
    },
    Selector {
        position: String,
    },
    Ranges {
        dwell: Amount,
    },
    Temperature {
        reading: Amount,
        source: Source,
    },
    Plug {
        state: PlugState,
    },
    Flow {
        grade: Grade,
        watched: Amount,
        captured: Option<Measured>,
        trend: Option<Trend>,
    },
    Reading {
        value: String,
        side: Option<String>,
        status: Option<String>,
    },
    Added {
        measured: Measured,
        fluid: Option<String>,
        container: Option<String>,
        batch: Option<String>,
    },
    Drained {
        measured: Measured,
        why: DrainedWhy,
    },
    Fluid {
        appearance: Option<String>,
        smell: Option<String>,
        debris: Option<String>,
        coolant_strip: Option<StripResult>,
    },
    Seepage {
        place: String,
        class: SeepageClass,
        cleaned: Option<bool>,
        dye: Option<bool>,
    },
    Tightened {
        torque: Amount,
        tool: Option<String>,
        adapter: Option<String>,
    },
    Driven {
        distance: Amount,
        peak: Option<Amount>,
    },
    Approved {
        ceiling: String,
    },
    Hold {
        reason: String,
    },
    Release {
        reason: String,
    },
    Correction {
        of: u64,
        replaces: Option<Box<Entry>>,
        reason: String,
    },
    Note {
        text: String,
    },
}

impl Fact {
    /// The word of the entry's `kind`.
    #[must_use]
    pub const fn kind(&self) -> &'static str {
        match self {
            Fact::Confirmed { .. } => "confirmed",
            Fact::Level { .. } => "level",
            Fact::Engine { .. } => "engine",
            Fact::Selector { .. } => "selector",
            Fact::Ranges { .. } => "ranges",
            Fact::Temperature { .. } => "temperature",
            Fact::Plug { .. } => "plug",
            Fact::Flow { .. } => "flow",
            Fact::Reading { .. } => "reading",
            Fact::Added { .. } => "added",
            Fact::Drained { .. } => "drained",
            Fact::Fluid { .. } => "fluid",
            Fact::Seepage { .. } => "seepage",
            Fact::Tightened { .. } => "tightened",
            Fact::Driven { .. } => "driven",
            Fact::Approved { .. } => "approved",
            Fact::Hold { .. } => "hold",
            Fact::Release { .. } => "release",
            Fact::Correction { .. } => "correction",
            Fact::Note { .. } => "note",
        }
    }
}

/// One entry of a journal.
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct Entry {
    /// Its place; rises from entry to entry.
    pub seq: u64,
    /// When it was entered: the end of what it describes.
    pub at: Moment,
    /// Who says so.
    pub by: Option<String>,
    /// A name of the host's that makes a repeated delivery harmless.
    pub id: Option<String>,
    /// What happened.
    pub fact: Fact,
    pub(crate) ext: Option<Ext>,
}

impl Entry {
    /// Whether another entry says the same, whatever its place.
    pub(super) fn says_the_same(&self, other: &Entry) -> bool {
        self.at == other.at
            && self.by == other.by
            && self.fact == other.fact
            && self.ext == other.ext
    }
}

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
    let is_mass = measured.amount.kind() == crate::quantity::Kind::Mass;
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
