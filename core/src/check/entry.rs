//! One entry of a journal: what happened, when, and who says so.

use super::moment::Moment;
use crate::document::Ext;
use crate::leak::SeepageClass;
use crate::procedure::EngineState;
use crate::quantity::Amount;
use crate::word::words;
use alloc::boxed::Box;
use alloc::string::String;

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
    /// What a strip test for coolant shows.
    pub enum StripResult {
        /// No coolant.
        Negative = "negative",
        /// Coolant.
        Positive = "positive",
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
