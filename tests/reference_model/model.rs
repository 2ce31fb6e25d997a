//! The rules of a level check, read out plainly: a pack and a journal in, the decisive part of the result out.
//!
//! Everything is asked afresh of the entries before an observation; nothing is remembered between them but the
//! ledger.

use crate::booking::{Booking, lets_out};
use crate::conditions::{Sign, Temperature, defects, sign, stated, temperature};
use crate::leak::{interval_value, reading};
use crate::ledger::{Contradiction, Interval, Ledger};
use crate::record::{Entry, entries};
use crate::sheet::{Pack, Sheet};
use crate::volume::Measures;
use crate::words::{Exact, Kind, quantity_of};
use num_traits::Zero;
use serde_json::{Value, json};

/// The answer, in the shape of the result document, and what happened on the way there.
pub struct Answer {
    pub result: Value,
    pub met: Vec<String>,
}

/// An observation that sets the verdict.
struct Observation {
    place: usize,
    verdict: &'static str,
    /// At level with no defect, a fresh temperature and no contradiction.
    found_level: bool,
}

struct Check<'a> {
    sheet: Option<&'a Sheet>,
    entries: &'a [Entry],
    booking: &'a Booking,
    ledger: Ledger,
    observations: Vec<Observation>,
    met: Vec<String>,
}

pub fn evaluate(pack: &Pack, journal: &Value) -> Answer {
    let sheet = pack.in_force(journal);
    let mut met = Vec::new();
    let mut see = |what: &str| met.push(what.to_string());
    let entries = entries(journal, &mut see);
    let half_width = &journal["profile"]["half_width"];
    let measures = Measures {
        pack,
        sheet,
        half_width,
    };
    let unit = sheet.map_or("L", |sheet| sheet.unit);

    let booking = Booking::of(&measures, &entries, &mut see);

    let mut check = Check {
        sheet,
        entries: &entries,
        booking: &booking,
        ledger: Ledger::new(),
        observations: Vec::new(),
        met,
    };
    for (place, entry) in entries.iter().enumerate() {
        if let Some(poured) = &booking.added[place] {
            check.ledger.moved(&poured.within);
        }
        if let Some(let_out) = &booking.drained[place] {
            check.ledger.moved(&let_out.within.negated());
        }
        if entry.is("flow") {
            check.flow(place);
        }
        if check.stops_engine_with_plug_open(place) {
            check.see("event: engine stopped with the plug open");
            check.ledger.moved(&Interval::at_most(Exact::zero()));
        }
    }

    let found_level_at = check
        .observations
        .iter()
        .rev()
        .find(|seen| seen.found_level);
    let window = found_level_at.map_or(entries.len(), |observation| observation.place + 1);
    let counted = booking.counted(window);
    let asks = ["check", "top_up", "leak_follow_up", "recheck"];
    let applies = journal["job"]
        .as_str()
        .is_some_and(|job| asks.contains(&job));
    let found = &check.ledger.found;
    let leak = reading(
        sheet,
        applies,
        &counted,
        found,
        found_level_at.is_some(),
        unit,
    );

    let verdict = check.verdict(pack);
    let result = json!({
        "verdict": verdict,
        "as_found": interval_value(found, unit),
        "net_added": interval_value(&check.ledger.net_added(), unit),
        "now": interval_value(&check.ledger.now, unit),
        "leak": leak,
    });
    let mut met = check.met;
    met.push(format!("verdict: {verdict}"));
    let reading = |member| result["leak"][member].as_str().unwrap_or_default();
    met.push(format!(
        "leak: {}, {}",
        reading("by_sheet"),
        reading("certainty")
    ));
    Answer { result, met }
}

impl Check<'_> {
    fn see(&mut self, what: impl Into<String>) {
        self.met.push(what.into());
    }

    fn flow(&mut self, place: usize) {
        let Some(sheet) = self.sheet else {
            // Without a sheet a flow is no observation; what was captured is out of the unit all the same.
            self.let_out_measured(place);
            return;
        };
        let (before, flow) = (&self.entries[..place], &self.entries[place]);
        let flows = lets_out(flow);
        let shorter = length(flow) < sheet.watch;
        if !flows && shorter {
            self.see("event: short look");
            return;
        }

        let plug_open = stated(before, "plug") == Some("open");
        let temperature = temperature(sheet, before, flow);
        let defects = defects(sheet, before, flow, &temperature);
        let sign = sign(sheet, &defects);
        let fresh = temperature != Temperature::NotFresh;
        let proves = plug_open && fresh;

        if flows && (shorter || self.is_hold_up(sheet, place)) {
            self.see(format!(
                "event: spurt, {}",
                if shorter { "short" } else { "hold-up" }
            ));
            let by = self.outflow(sheet, place, proves, sign);
            self.ledger.moved(&by);
            return;
        }
        if !proves {
            self.see(format!(
                "event: {}",
                if plug_open {
                    "not fresh"
                } else {
                    "plug not open"
                }
            ));
            if flows {
                let by = self.outflow(sheet, place, proves, sign);
                self.ledger.moved(&by);
            }
            self.observe(place, "incomplete", false);
            return;
        }

        for defect in &defects {
            self.see(match defects.len() {
                1 => format!("alone: {defect}"),
                _ => format!("among others: {defect}"),
            });
        }
        let untouched = self.ledger.clone();
        let row = match flow.says("grade") {
            Some("none" | "wet") => "none",
            Some("slow_drip" | "fast_drip" | "trickle") => "at_level",
            _ => "over",
        };
        let verdict = match self.constrain_by(sheet, place, row, sign) {
            Ok(()) => verdict_of(row, sign),
            Err(Contradiction) => {
                self.see("event: contradiction");
                self.ledger = untouched;
                self.let_out_measured(place);
                "not_proven"
            }
        };
        self.see(format!("cell: {row}, {sign:?}"));
        self.observe(place, verdict, verdict == "at_level");
    }

    /// The three steps of an observation that proves something.
    fn constrain_by(
        &mut self,
        sheet: &Sheet,
        place: usize,
        row: &str,
        sign: Sign,
    ) -> Result<(), Contradiction> {
        if row != "none" {
            if !sign.may_be_high() {
                self.ledger.constrain(&Interval::at_least(Exact::zero()))?;
            }
            let by = self.outflow(sheet, place, true, sign);
            self.ledger.moved(&by);
        }
        let reading = match row {
            "none" => Interval::at_most(Exact::zero()),
            "at_level" => Interval::between(Exact::zero(), sheet.lip_band.clone()),
            _ => Interval::at_least(Exact::zero()),
        };
        match sign {
            Sign::None => self.ledger.constrain(&reading),
            Sign::Low => self.ledger.constrain(&Interval::new(reading.lo, None)),
            Sign::High => self.ledger.constrain(&Interval::new(None, reading.hi)),
            Sign::Both => Ok(()),
        }
    }

    /// What the flow let out: measured, or somewhere between nothing and what there was to let out.
    fn outflow(&self, sheet: &Sheet, place: usize, proves: bool, sign: Sign) -> Interval {
        let flow = &self.entries[place];
        let dribble = !matches!(flow.says("grade"), Some("stream" | "gush" | "spitting"));
        let spurt = length(flow) < sheet.watch;
        let surplus = self.ledger.now.hi.clone().map(|hi| hi.max(Exact::zero()));
        match &self.booking.captured[place] {
            Some(captured) => captured.within.negated(),
            None if spurt && dribble => Interval::between(-sheet.hold_up.clone(), Exact::zero()),
            None if !proves || sign.may_be_high() => Interval::at_most(Exact::zero()),
            None => Interval::new(surplus.map(|surplus| -surplus), Some(Exact::zero())),
        }
    }

    fn let_out_measured(&mut self, place: usize) {
        if let Some(captured) = &self.booking.captured[place] {
            self.ledger.moved(&captured.within.negated());
        }
    }

    /// A first flow since the plug was opened that let out no more than the opening itself holds.
    fn is_hold_up(&self, sheet: &Sheet, place: usize) -> bool {
        let before = &self.entries[..place];
        let opened = (0..place).rev().find(|at| {
            let entry = &before[*at];
            entry.is("plug")
                && entry.says("state") == Some("open")
                && stated(&before[..*at], "plug") != Some("open")
        });
        let first = opened.is_some_and(|opened| !before[opened..].iter().any(|e| e.is("flow")));
        let little = self.booking.captured[place]
            .as_ref()
            .is_some_and(|captured| {
                !captured.nominal.is_zero() && captured.nominal <= sheet.hold_up
            });
        first && little
    }

    fn observe(&mut self, place: usize, verdict: &'static str, found_level: bool) {
        self.observations.push(Observation {
            place,
            verdict,
            found_level,
        });
    }

    /// The engine was stopped, where the sheet wants it running, while the plug was out.
    fn stops_engine_with_plug_open(&self, place: usize) -> bool {
        let (before, entry) = (&self.entries[..place], &self.entries[place]);
        self.sheet.is_some_and(Sheet::asks_running)
            && entry.is("engine")
            && entry.says("state") == Some("off")
            && stated(before, "engine") != Some("off")
            && stated(before, "plug") == Some("open")
    }

    /// After such a stop the check is repeated: plug closed, plug open, an observation.
    fn is_to_be_repeated(&self) -> bool {
        let plug = |state, after: usize| {
            let is = |e: &Entry| e.is("plug") && e.says("state") == Some(state);
            (after + 1..self.entries.len()).find(|place| is(&self.entries[*place]))
        };
        let stops = (0..self.entries.len()).rev();
        let Some(stop) = stops
            .clone()
            .find(|place| self.stops_engine_with_plug_open(*place))
        else {
            return false;
        };
        let reopened = plug("closed", stop).and_then(|closed| plug("open", closed));
        !reopened.is_some_and(|reopened| {
            self.observations
                .iter()
                .any(|observation| observation.place > reopened)
        })
    }

    fn is_on_hold(&self, pack: &Pack) -> bool {
        let never_meets = |poured: &Entry| {
            let fluid = poured.says("fluid").and_then(|id| pack.fluids.get(id));
            let asked = self.sheet.and_then(|sheet| sheet.fluid.as_ref());
            matches!((fluid, asked), (Some(fluid), Some(asked)) if fluid.never.contains(asked))
        };
        let holds = |entry: &Entry| match entry.kind.as_str() {
            "hold" => true,
            "fluid" => {
                let foul = ["milky", "pink_foam", "foreign"];
                entry.says("coolant_strip") == Some("positive")
                    || entry
                        .says("appearance")
                        .is_some_and(|seen| foul.contains(&seen))
            }
            "added" => never_meets(entry),
            _ => false,
        };
        let last_hold = self.entries.iter().rposition(holds);
        let last_release = self.entries.iter().rposition(|entry| entry.is("release"));
        last_hold > last_release
    }

    fn verdict(&self, pack: &Pack) -> &'static str {
        match self.observations.last() {
            _ if self.is_on_hold(pack) => "on_hold",
            _ if self.sheet.is_none() => "no_procedure",
            _ if self.is_to_be_repeated() => "repeat",
            Some(observation) => observation.verdict,
            None => "incomplete",
        }
    }
}

fn length(flow: &Entry) -> Exact {
    quantity_of(Kind::Time, flow.says("for").expect("how long"))
}

/// The verdict by what was seen and which way it errs.
fn verdict_of(row: &str, sign: Sign) -> &'static str {
    match (row, sign) {
        ("none", Sign::None) => "low",
        ("none", Sign::High) => "not_full",
        ("at_level", Sign::None) => "at_level",
        ("at_level", Sign::Low) => "not_low",
        ("at_level", Sign::High) => "not_full",
        ("over", Sign::None) => "over",
        ("over", Sign::Low) => "not_low",
        _ => "not_proven",
    }
}
