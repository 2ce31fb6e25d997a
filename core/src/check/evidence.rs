//! The rules of evidence: entry by entry, what is known of the departure.

use super::correction::Counted;
use super::entry::{Fact, PlugState, Source, StripResult, Toward};
use super::finding::Finding;
use super::ledger::{Ledger, Span};
use super::look::{Observation, Sample};
use super::sheet::Sheet;
use super::trail::Trail;
use super::warming::Heat;
use crate::procedure::{EngineState, Severity};
use crate::quantity::Amount;
use alloc::collections::BTreeSet;
use alloc::string::String;
use alloc::vec::Vec;
use core::cmp::Ordering;

/// Nominal volumes so far.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub(super) struct Volumes {
    pub(super) added: i128,
    pub(super) captured: i128,
    pub(super) drained: i128,
}

impl Volumes {
    pub(super) fn net(&self) -> i128 {
        self.added
            .saturating_sub(self.captured)
            .saturating_sub(self.drained)
            .max(0)
    }
}

/// How far a check that was broken off has been begun again.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Repeat {
    No,
    UntilClosed,
    UntilOpened,
    UntilObserved,
}

/// Everything that is known after the entries so far.
#[derive(Debug, Clone)]
pub(super) struct State {
    pub(super) ledger: Ledger,
    pub(super) volumes: Volumes,
    /// The last look that found the level, and the volumes up to it.
    pub(super) found: Option<(u64, Volumes)>,
    pub(super) deciding: Option<Observation>,
    pub(super) looks: Trail<Observation>,
    pub(super) findings: Trail<Finding>,
    pub(super) repeat: Repeat,
    pub(super) holds: Vec<(u64, &'static str)>,
    pub(super) engine: Option<EngineState>,
    pub(super) engine_stopped_at: Option<i128>,
    pub(super) selector: Option<String>,
    pub(super) tilt: Option<(Amount, Toward)>,
    pub(super) ranges: Option<u64>,
    pub(super) cooler_open: bool,
    pub(super) sample: Option<Sample>,
    pub(super) plug: Option<PlugState>,
    pub(super) looks_since_open: u32,
    pub(super) last_pour: Option<(u64, i128)>,
    /// The last pour that no closing loss explains.
    pub(super) unexplained_pour: Option<u64>,
    /// Poured since the last flow, without any.
    pub(super) poured_dry: i128,
    /// How much of that had been poured when the opening was last checked.
    pub(super) checked_dry: i128,
    pub(super) closing_loss: i128,
    pub(super) excess_out: bool,
    pub(super) confirmed: BTreeSet<String>,
    pub(super) tightened: Option<u64>,
    pub(super) clock: super::plausible::Clock,
    /// What the shop was read at.
    pub(super) ambient: Option<Amount>,
    /// What was read and poured since the engine started.
    pub(super) heat: Trail<Heat>,
    /// When the newest entry was made.
    pub(super) at: Option<i128>,
}

impl State {
    pub(super) fn new() -> Self {
        State {
            ledger: Ledger::UNKNOWN,
            volumes: Volumes::default(),
            found: None,
            deciding: None,
            looks: Trail::default(),
            findings: Trail::default(),
            repeat: Repeat::No,
            holds: Vec::new(),
            engine: None,
            engine_stopped_at: None,
            selector: None,
            tilt: None,
            ranges: None,
            cooler_open: false,
            sample: None,
            plug: None,
            looks_since_open: 0,
            last_pour: None,
            unexplained_pour: None,
            poured_dry: 0,
            checked_dry: 0,
            closing_loss: 0,
            excess_out: false,
            confirmed: BTreeSet::new(),
            tightened: None,
            clock: super::plausible::Clock::default(),
            ambient: None,
            heat: Trail::default(),
            at: None,
        }
    }

    /// What is known after all of the entries.
    pub(super) fn after(sheet: &Sheet<'_>, entries: &[Counted<'_>]) -> Self {
        let mut state = State::new();
        for counted in entries {
            state.take(sheet, counted);
        }
        state
    }

    pub(super) fn find(&mut self, finding: Finding) {
        self.findings.push(finding);
    }

    /// Takes one entry in.
    pub(super) fn take(&mut self, sheet: &Sheet<'_>, counted: &Counted<'_>) {
        let entry = counted.entry;
        let (seq, at) = (entry.seq, entry.at.nanoseconds());
        self.doubt(sheet, entry);
        match &entry.fact {
            Fact::Confirmed { what } => self.confirm(what),
            Fact::Level { tilt, toward } => self.tilt = Some((*tilt, *toward)),
            Fact::Engine { state } => self.engine(sheet, *state, seq, at),
            Fact::Selector { position } => self.selector = Some(position.clone()),
            Fact::Ranges { dwell } => self.cycle_ranges(sheet, *dwell, seq),
            Fact::Temperature { reading, source } => self.sample(sheet, *reading, *source, seq, at),
            Fact::Plug { state } => self.plug(*state),
            Fact::Flow {
                grade,
                watched,
                captured,
                ..
            } => {
                if let (Some(unbooked), Some(_)) = (captured, counted.supplied) {
                    self.book(sheet, unbooked, true, None, seq);
                }
                let captured = counted.supplied.map(|supply| supply.measured).or(*captured);
                self.observe(sheet, *grade, *watched, captured, seq, at);
            }
            Fact::Reading { .. } => {
                self.find(Finding::new("reading_not_used", Severity::Caution).of([seq]))
            }
            Fact::Added {
                measured, fluid, ..
            } => {
                let held = self.held(sheet);
                let booked = self.pour(sheet, measured, fluid.as_deref(), seq, at);
                if !measured.amount.is_negative() && !measured.amount.is_zero() {
                    self.chill(held, booked, at);
                }
            }
            Fact::Drained { measured, why } => {
                self.drain(sheet, measured, *why, counted.capture, seq)
            }
            Fact::Fluid {
                appearance,
                coolant_strip,
                ..
            } => {
                match appearance.as_deref() {
                    Some("milky") => self.hold(seq, "milky"),
                    Some("pink_foam") => self.hold(seq, "pink_foam"),
                    Some("foreign") => self.hold(seq, "foreign_fluid"),
                    _ => {}
                }
                if *coolant_strip == Some(StripResult::Positive) {
                    self.hold(seq, "coolant");
                }
            }
            Fact::Tightened { torque, .. } => self.tighten(sheet, *torque, seq),
            Fact::Driven { peak, .. } => self.driven(sheet, *peak),
            Fact::Hold { .. } => self.hold(seq, "stated"),
            Fact::Release { .. } => self.holds.clear(),
            Fact::Seepage { .. }
            | Fact::Approved { .. }
            | Fact::Note { .. }
            | Fact::Correction { .. } => {}
        }
        self.at = Some(at);
    }

    pub(super) fn hold(&mut self, seq: u64, why: &'static str) {
        self.holds.push((seq, why));
    }

    fn confirm(&mut self, what: &str) {
        match what {
            "cooler_opened" => self.cooler_open = true,
            "cooler_filled" => self.cooler_open = false,
            "opening_checked" => self.checked_dry = self.poured_dry,
            _ => {}
        }
        if !self.confirmed.contains(what) {
            self.confirmed.insert(what.into());
        }
    }

    fn driven(&mut self, sheet: &Sheet<'_>, peak: Option<Amount>) {
        let thermostat = sheet
            .conditions()
            .and_then(|conditions| conditions.cooler.as_ref()?.thermostat);
        if let (Some(peak), Some(thermostat)) = (peak, thermostat)
            && peak.compare(&thermostat).is_ok_and(Ordering::is_ge)
        {
            self.cooler_open = false;
        }
    }

    fn engine(&mut self, sheet: &Sheet<'_>, state: EngineState, seq: u64, at: i128) {
        if state == EngineState::Off {
            let was_off = self.engine == Some(EngineState::Off);
            self.ranges = None;
            if !was_off {
                self.engine_stopped_at = Some(at);
            }
            if sheet.wants_running() && self.plug == Some(PlugState::Open) && !was_off {
                self.ledger = self.ledger.moved(Span::UP_TO_ZERO);
                self.repeat = Repeat::UntilClosed;
                self.find(Finding::new("engine_stopped_open", Severity::Stop).of([seq]));
            }
        }
        if self.engine.is_some_and(EngineState::is_running) != state.is_running() {
            self.heat = Trail::default();
        }
        self.engine = Some(state);
    }

    fn cycle_ranges(&mut self, sheet: &Sheet<'_>, dwell: Amount, seq: u64) {
        if !self.engine.is_some_and(EngineState::is_running) {
            self.find(Finding::new("ranges_without_engine", Severity::Caution).of([seq]));
            return;
        }
        let asked = sheet.ranges().and_then(|ranges| ranges.dwell);
        match asked {
            Some(asked) if dwell.compare(&asked).is_ok_and(Ordering::is_lt) => {
                let finding = Finding::new("ranges_too_short", Severity::Caution).of([seq]);
                self.find(finding.with("dwell", dwell).with("asked", asked));
            }
            _ => self.ranges = Some(seq),
        }
    }

    fn sample(&mut self, sheet: &Sheet<'_>, reading: Amount, source: Source, seq: u64, at: i128) {
        let window = sheet
            .conditions()
            .and_then(|conditions| conditions.temperature.as_ref());
        let proves = match source {
            Source::Scan | Source::Network => true,
            // Cooler than the fluid: warm enough here is warm enough there, where no upper limit asks more.
            Source::Infrared | Source::Pan => window.is_some_and(|window| {
                window.max.is_none()
                    && window
                        .min
                        .is_some_and(|min| reading.compare(&min).is_ok_and(Ordering::is_ge))
            }),
            Source::Coolant | Source::Ambient => false,
        };
        if matches!(source, Source::Scan | Source::Network) {
            self.warm(reading, at);
        }
        if source == Source::Ambient {
            self.ambient = Some(reading);
        }
        if proves {
            self.sample = Some(Sample { seq, reading, at });
        } else if window.is_some() && source != Source::Ambient {
            let finding = Finding::new("source_proves_nothing", Severity::Note)
                .of([seq])
                .field("source");
            self.find(finding.with("source", source.slug()));
        }
    }

    fn plug(&mut self, state: PlugState) {
        if state == PlugState::Open && self.plug != Some(PlugState::Open) {
            self.looks_since_open = 0;
        }
        if state != PlugState::Closed {
            // What was done to the closed plug is to be done again.
            self.tightened = None;
            self.confirmed.remove("drips_checked");
        }
        self.repeat = match (self.repeat, state) {
            (Repeat::UntilClosed, PlugState::Closed) => Repeat::UntilOpened,
            (Repeat::UntilOpened, PlugState::Open) => Repeat::UntilObserved,
            (unchanged, _) => unchanged,
        };
        self.plug = Some(state);
    }
}
