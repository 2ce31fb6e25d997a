//! The rules of evidence: entry by entry, what is known of the departure.

use super::correction::{Capture, Counted};
use super::entry::{DrainedWhy, Fact, Grade, Measured, PlugState, Source, StripResult, Toward};
use super::finding::Finding;
use super::ledger::{Ledger, Span};
use super::measured::{Booked, Unbooked};
use super::sheet::Sheet;
use super::trail::Trail;
use super::verdict::{Row, Verdict};
use crate::fluid::Relation;
use crate::procedure::{Defect, EngineState, Severity, Sign};
use crate::quantity::Amount;
use alloc::string::String;
use alloc::vec::Vec;
use core::cmp::Ordering;

/// A temperature that can prove something on this sheet.
#[derive(Debug, Clone, Copy)]
pub(super) struct Sample {
    pub(super) seq: u64,
    pub(super) reading: Amount,
    pub(super) at: i128,
}

/// What became of an observation.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Outcome {
    /// It says what the verdict cell says.
    Counts,
    /// What ran out was the opening's own contents, or too short a look at a flow.
    Spurt,
    /// Too short a look at nothing.
    ShortLook,
    /// The plug was not open.
    NotOpen,
    /// No temperature proves anything.
    NoTemperature,
    /// The last temperature was too old.
    Stale,
    /// It contradicts what these entries prove.
    Contradicted {
        below: Option<u64>,
        above: Option<u64>,
    },
}

/// One look at the opening.
#[derive(Debug, Clone)]
pub(super) struct Observation {
    pub(super) seq: u64,
    pub(super) grade: Grade,
    pub(super) outcome: Outcome,
    pub(super) defects: Vec<Defect>,
    pub(super) sample: Option<Sample>,
    pub(super) captured: Option<Booked>,
    pub(super) verdict: Option<Verdict>,
    /// What is known of the departure after it.
    pub(super) now: Span,
}

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
    looks_since_open: u32,
    pub(super) last_pour: Option<(u64, i128)>,
    /// Poured since the last flow, without any.
    pub(super) poured_dry: i128,
    pub(super) closing_loss: i128,
    pub(super) excess_out: bool,
    pub(super) confirmed: Vec<String>,
    pub(super) tightened: Option<u64>,
    pub(super) clock: super::plausible::Clock,
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
            poured_dry: 0,
            closing_loss: 0,
            excess_out: false,
            confirmed: Vec::new(),
            tightened: None,
            clock: super::plausible::Clock::default(),
            at: None,
        }
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
                let captured = captured.or(counted.supplied);
                self.observe(sheet, *grade, *watched, captured, seq, at);
            }
            Fact::Reading { .. } => {
                self.find(Finding::new("reading_not_used", Severity::Caution).of([seq]))
            }
            Fact::Added {
                measured, fluid, ..
            } => self.pour(sheet, measured, fluid.as_deref(), seq, at),
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

    fn hold(&mut self, seq: u64, why: &'static str) {
        self.holds.push((seq, why));
    }

    fn confirm(&mut self, what: &str) {
        match what {
            "cooler_opened" => self.cooler_open = true,
            "cooler_filled" => self.cooler_open = false,
            _ => {}
        }
        if !self.confirmed.iter().any(|own| own == what) {
            self.confirmed.push(what.into());
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
        self.repeat = match (self.repeat, state) {
            (Repeat::UntilClosed, PlugState::Closed) => Repeat::UntilOpened,
            (Repeat::UntilOpened, PlugState::Open) => Repeat::UntilObserved,
            (unchanged, _) => unchanged,
        };
        self.plug = Some(state);
    }

    fn pour(
        &mut self,
        sheet: &Sheet<'_>,
        measured: &Measured,
        fluid: Option<&str>,
        seq: u64,
        at: i128,
    ) {
        if let Some(poured) = fluid
            && sheet.procedure.is_some()
        {
            self.poured_fluid(sheet, poured, seq);
        }
        self.doubt_pour(sheet, measured, seq);
        self.last_pour = Some((seq, at));
        let Some(booked) = self.book(sheet, measured, false, fluid, seq) else {
            return;
        };
        self.ledger = self.ledger.moved(booked.span);
        self.volumes.added = self.volumes.added.saturating_add(booked.nominal);
        self.poured_dry = self.poured_dry.saturating_add(booked.nominal);
    }

    fn poured_fluid(&mut self, sheet: &Sheet<'_>, poured: &str, seq: u64) {
        let relation = sheet.relation(poured);
        let finding = |id, severity| {
            Finding::new(id, severity)
                .of([seq])
                .field("fluid")
                .with("fluid", poured)
                .with("relation", relation.slug())
        };
        match relation {
            Relation::Same | Relation::Mixes => {}
            Relation::Never => {
                self.find(finding("fluid_foreign", Severity::Stop));
                self.hold(seq, "foreign_fluid");
            }
            Relation::FullExchangeOnly | Relation::Replaces if sheet.job.fills_by_measure() => {}
            Relation::FullExchangeOnly => {
                self.find(finding("fluid_needs_exchange", Severity::Stop))
            }
            Relation::Replaces | Relation::Unknown => {
                self.find(finding("fluid_unresolved", Severity::Stop))
            }
        }
    }

    fn drain(
        &mut self,
        sheet: &Sheet<'_>,
        measured: &Measured,
        why: DrainedWhy,
        capture: Capture,
        seq: u64,
    ) {
        match capture {
            Capture::Supplied => return,
            Capture::Twice => {
                self.find(Finding::new("double_entry", Severity::Caution).of([seq]));
                return;
            }
            Capture::NotOne => {}
        }
        let Some(booked) = self.book(sheet, measured, true, None, seq) else {
            return;
        };
        self.ledger = self.ledger.moved(booked.span.negated());
        self.volumes.drained = self.volumes.drained.saturating_add(booked.nominal);
        match why {
            DrainedWhy::ClosingLoss => {
                self.closing_loss = self.closing_loss.saturating_add(booked.nominal)
            }
            DrainedWhy::Excess => self.excess_out = true,
            DrainedWhy::Captured | DrainedWhy::Service => {}
        }
    }

    /// Books a volume, or finds why it cannot be.
    fn book(
        &mut self,
        sheet: &Sheet<'_>,
        measured: &Measured,
        drained: bool,
        fluid: Option<&str>,
        seq: u64,
    ) -> Option<Booked> {
        let density = sheet.density(fluid);
        let finding = |id, severity| {
            Finding::new(id, severity)
                .of([seq])
                .with("amount", measured.amount)
        };
        match sheet.booking.book(measured, drained, density) {
            Ok(booked) => {
                if measured.by.is_none() && !measured.amount.is_zero() {
                    self.find(finding("measured_by_missing", Severity::Note).field("measured_by"));
                }
                if measured.by == Some(super::entry::MeasuredBy::Scale) && density.is_none() {
                    self.find(finding("density_unknown", Severity::Caution));
                }
                Some(booked)
            }
            Err(why) => {
                let id = match why {
                    Unbooked::Negative => "volume_negative",
                    Unbooked::Impossible => "volume_impossible",
                    Unbooked::DensityUnknown => "density_unknown",
                };
                self.find(finding(id, Severity::Stop));
                None
            }
        }
    }

    /// The newest temperature that proves something, if it is fresh at a moment.
    pub(super) fn freshness(&self, sheet: &Sheet<'_>, at: i128) -> Result<Option<Sample>, Outcome> {
        if sheet
            .conditions()
            .is_none_or(|conditions| conditions.temperature.is_none())
        {
            return Ok(None);
        }
        match self.sample {
            None => Err(Outcome::NoTemperature),
            Some(sample) if at.saturating_sub(sample.at) > sheet.max_age => Err(Outcome::Stale),
            Some(sample) => Ok(Some(sample)),
        }
    }

    /// Every condition of the sheet that is unmet, or was never stated, for a look that began and ended then.
    pub(super) fn defects(
        &self,
        sheet: &Sheet<'_>,
        sample: Option<Sample>,
        began: i128,
    ) -> Vec<Defect> {
        let mut defects = Vec::new();
        let Some(conditions) = sheet.conditions() else {
            self.settle_defects(sheet, began, &mut defects);
            return defects;
        };
        if let (Some(window), Some(sample)) = (&conditions.temperature, sample) {
            let order =
                |limit: Option<Amount>| limit.and_then(|limit| sample.reading.compare(&limit).ok());
            if order(window.min) == Some(Ordering::Less) {
                defects.push(Defect::BelowWindow);
            }
            if order(window.max) == Some(Ordering::Greater) {
                defects.push(Defect::AboveWindow);
            }
        }
        match conditions.engine {
            Some(EngineState::Off) if self.engine != Some(EngineState::Off) => {
                defects.push(Defect::EngineRunning)
            }
            Some(wanted)
                if wanted.is_running() && !self.engine.is_some_and(EngineState::is_running) =>
            {
                defects.push(Defect::EngineOff);
            }
            _ => {}
        }
        if conditions.selector.is_some() && self.selector != conditions.selector {
            defects.push(Defect::Selector);
        }
        if conditions.ranges.is_some() && self.ranges.is_none() {
            defects.push(Defect::Ranges);
        }
        if conditions.cooler.is_some() && self.cooler_open {
            defects.push(Defect::Cooler);
        }
        if let Some(limit) = &conditions.tilt {
            match self.tilt {
                None => defects.push(Defect::TiltUnknown),
                Some((tilt, toward)) if tilt.compare(&limit.max) == Ok(Ordering::Greater) => {
                    defects.push(match toward {
                        Toward::Plug => Defect::TiltToward,
                        Toward::Away => Defect::TiltAway,
                        Toward::Unknown => Defect::TiltUnknown,
                    })
                }
                Some(_) => {}
            }
        }
        self.settle_defects(sheet, began, &mut defects);
        defects
    }

    fn settle_defects(&self, sheet: &Sheet<'_>, began: i128, defects: &mut Vec<Defect>) {
        let unsettled = |since: i128| began.saturating_sub(since) < sheet.settle;
        if self.last_pour.is_some_and(|(_, poured)| unsettled(poured)) {
            defects.push(Defect::PourSettle);
        }
        let wants_off = sheet.engine_wanted() == Some(EngineState::Off);
        let stops_count = sheet
            .procedure
            .is_some_and(|sheet| sheet.method.kind.waits_after_stop());
        if wants_off
            && stops_count
            && self.engine == Some(EngineState::Off)
            && self.engine_stopped_at.is_some_and(unsettled)
        {
            defects.push(Defect::StopSettle);
        }
    }

    fn observe(
        &mut self,
        sheet: &Sheet<'_>,
        grade: Grade,
        watched: Amount,
        captured: Option<Measured>,
        seq: u64,
        at: i128,
    ) {
        let is_open = self.plug == Some(PlugState::Open);
        let is_first = is_open && self.looks_since_open == 0;
        if is_open {
            self.looks_since_open = self.looks_since_open.saturating_add(1);
        }
        let flows = grade.is_flow();
        let captured = match captured {
            Some(_) if !flows => {
                self.find(
                    Finding::new("captured_without_flow", Severity::Caution)
                        .of([seq])
                        .field("captured"),
                );
                None
            }
            Some(measured) => self.book(sheet, &measured, true, None, seq),
            None => None,
        };
        if let Some(booked) = captured {
            self.volumes.captured = self.volumes.captured.saturating_add(booked.nominal);
        }
        let Some(procedure) = sheet.procedure else {
            if let Some(booked) = captured {
                self.ledger = self.ledger.moved(booked.span.negated());
            }
            return;
        };
        if !is_open {
            self.find(Finding::new("plug_not_open", Severity::Caution).of([seq]));
        }
        let watched = watched.count().unwrap_or(0);
        let freshness = self.freshness(sheet, at);
        let sample = freshness.unwrap_or(None);
        let mut defects = self.defects(sheet, sample, at.saturating_sub(watched));
        if grade == Grade::Spitting {
            defects.push(Defect::Foam);
        }
        let sign = defects
            .iter()
            .map(|defect| procedure.sign(*defect))
            .reduce(Sign::and);
        let is_own_contents = is_first
            && captured.is_some_and(|booked| 0 < booked.nominal && booked.nominal <= sheet.hold_up);
        let is_short = watched < sheet.watch;
        let outcome = match freshness {
            _ if flows && (is_short || is_own_contents) => Outcome::Spurt,
            _ if is_short => Outcome::ShortLook,
            _ if !is_open => Outcome::NotOpen,
            Err(outcome) => outcome,
            Ok(_) => Outcome::Counts,
        };
        // What ran out, whatever it proves.
        let blind = !is_open || freshness.is_err() || matches!(sign, Some(Sign::High | Sign::Both));
        let outflow = |ledger: &Ledger| match captured {
            Some(booked) => booked.span.negated(),
            None if outcome == Outcome::Spurt && grade.is_at_lip() => {
                Span::new(sheet.hold_up.saturating_neg(), 0)
            }
            None if blind => Span::UP_TO_ZERO,
            None => Span {
                lo: ledger.now.hi.map(|hi| hi.max(0).saturating_neg()),
                hi: Some(0),
            },
        };
        let row = Row::of(grade);
        let mut look = Observation {
            seq,
            grade,
            outcome,
            defects,
            sample,
            captured,
            verdict: None,
            now: self.ledger.now,
        };
        match outcome {
            Outcome::Counts => match self.proved(sheet, row, sign, flows, seq, outflow) {
                Some(ledger) => {
                    self.ledger = ledger;
                    look.verdict = Some(row.verdict(sign));
                }
                None => {
                    let (below, above) = (self.ledger.bounds_below, self.ledger.bounds_above);
                    if let Some(booked) = captured {
                        self.ledger = self.ledger.moved(booked.span.negated());
                    }
                    look.outcome = Outcome::Contradicted { below, above };
                    look.verdict = Some(Verdict::NotProven);
                    let bounds = [below, above.filter(|above| below != Some(*above))];
                    let finding = Finding::new("contradiction", Severity::Caution);
                    self.find(finding.of([seq]).of(bounds.into_iter().flatten()));
                }
            },
            Outcome::ShortLook => {}
            _ => {
                if flows {
                    self.ledger = self.ledger.moved(outflow(&self.ledger));
                }
                look.verdict = (outcome != Outcome::Spurt).then_some(Verdict::Incomplete);
            }
        }
        look.now = self.ledger.now;
        if flows && look.outcome != Outcome::Spurt {
            self.poured_dry = 0;
        }
        if look.verdict == Some(Verdict::AtLevel) {
            self.found = Some((seq, self.volumes));
        }
        if look.verdict.is_some() {
            if self.repeat == Repeat::UntilObserved {
                self.repeat = Repeat::No;
            }
            self.deciding = Some(look.clone());
        }
        self.looks.push(look);
    }

    /// The ledger after a look that may be used, or nothing if it contradicts what is known.
    fn proved(
        &self,
        sheet: &Sheet<'_>,
        row: Row,
        sign: Option<Sign>,
        flows: bool,
        seq: u64,
        outflow: impl Fn(&Ledger) -> Span,
    ) -> Option<Ledger> {
        let mut ledger = self.ledger;
        if flows {
            if !matches!(sign, Some(Sign::High | Sign::Both)) {
                ledger = ledger.constrained(Span::FROM_ZERO, seq)?;
            }
            ledger = ledger.moved(outflow(&ledger));
        }
        let reading = row.apparent(sheet.lip_band);
        match sign {
            None => ledger.constrained(reading, seq),
            Some(Sign::Low) => ledger.constrained(
                Span {
                    hi: None,
                    ..reading
                },
                seq,
            ),
            Some(Sign::High) => ledger.constrained(
                Span {
                    lo: None,
                    ..reading
                },
                seq,
            ),
            Some(Sign::Both) => Some(ledger),
        }
    }
}
