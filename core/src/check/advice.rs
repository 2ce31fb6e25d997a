//! What to do next: the pour that decides most, the cheapest step first, each with its cautions.

use super::entry::PlugState;
use super::evidence::{Repeat, State};
use super::finding::{Arg, Args, NextAct};
use super::gate::seconds;
use super::leak::{BySheet, Certainty, Leak};
use super::look::Outcome;
use super::sheet::Sheet;
use super::verdict::Verdict;
use crate::procedure::{Act, EngineState};
use crate::quantity::{Amount, Rounding, Unit};
use alloc::string::ToString;
use alloc::vec::Vec;
use core::cmp::Ordering;

/// The cautions that go with each act, by the act's id. None of them can be left out of an answer.
const CAUTIONS: &[(&str, &[&str])] = &[
    (
        "open_plug",
        &[
            "plug_identity",
            "hot_fluid",
            "support",
            "moving_parts",
            "exhaust_gas",
            "slip_fire",
        ],
    ),
    (
        "mend",
        &["support", "wheels_turn", "moving_parts", "auto_start"],
    ),
    ("read_temperature", &["moving_parts", "exhaust_gas"]),
    ("pour", &["no_dry_start", "hot_fluid", "slip_fire"]),
    ("look_again", &["hot_fluid"]),
    ("let_it_thin", &["hot_fluid", "slip_fire", "disposal"]),
    ("close_plug", &["close_before_stop", "hot_fluid"]),
    ("tighten", &["torque_unit"]),
    ("stop_engine", &["close_before_stop", "auto_start"]),
    ("look_for_drips", &["after_work", "leak_on_hot", "disposal"]),
    (
        "look_for_leak",
        &["leak_on_hot", "hot_fluid", "coolant_toxic"],
    ),
    (
        "settle_hold",
        &["no_dry_start", "coolant_toxic", "disposal"],
    ),
    (
        "begin_again",
        &["close_before_stop", "hot_fluid", "no_dry_start"],
    ),
    ("doubt_opening", &["plug_identity", "hot_fluid"]),
];

/// The cautions that putting something right has besides, by what stands in the way.
const MENDING: &[(&str, &[&str])] = &[(
    "above_window",
    &["hot_fluid", "close_before_stop", "reheats_on_start"],
)];

pub(super) fn act(id: &'static str) -> NextAct {
    let cautions = CAUTIONS
        .iter()
        .find(|(own, _)| *own == id)
        .map_or(&[][..], |(_, cautions)| cautions);
    NextAct {
        id,
        args: Args::none(),
        wait: None,
        cautions: cautions.to_vec(),
    }
}

impl NextAct {
    pub(super) fn with(mut self, name: &'static str, value: impl Into<Arg>) -> Self {
        self.args = self.args.with(name, value);
        self
    }
}

impl State {
    /// How much to pour next: the sheet's step, or what is left to the leak limit where a full step would
    /// hide on which side of it the shortage lies.
    pub(super) fn next_pour(&self, sheet: &Sheet<'_>) -> Option<Amount> {
        let step = sheet.step()?;
        let limit = sheet
            .leak_limit()
            .filter(|_| sheet.job.counts_for_leak())
            .and_then(|leak| leak.limit());
        let Some(limit) = limit else {
            return Some(step);
        };
        let (size, at) = (step.count()?, limit.count()?);
        let left = at.saturating_sub(self.poured_dry);
        if left <= 0 || left >= size {
            return Some(step);
        }
        let stated = sheet
            .procedure
            .and_then(|sheet| sheet.refill.as_ref()?.least);
        let least = stated.or_else(|| least_pour(limit.unit()))?;
        let to_limit = Amount::from_count(left, limit.unit(), 6, Rounding::Floor).ok()?;
        Some(if least.count()? > left {
            least
        } else {
            to_limit
        })
    }

    /// Whether so much went in with nothing coming that the opening itself is in doubt.
    pub(super) fn opening_is_doubted(&self, sheet: &Sheet<'_>) -> bool {
        let Some(procedure) = sheet.procedure else {
            return false;
        };
        let stated = procedure
            .refill
            .as_ref()
            .and_then(|refill| refill.stop?.count());
        let quarter = || procedure.capacity.as_ref()?.refill?.count()?.checked_div(4);
        let by_measure = sheet.job.fills_by_measure();
        let dry = self.poured_dry.saturating_sub(self.checked_dry);
        !by_measure
            && stated
                .or_else(quarter)
                .is_some_and(|stop| dry >= stop && stop > 0)
    }

    /// What to do next, the first thing first.
    pub(super) fn next(&self, sheet: &Sheet<'_>, leak: &Leak, at: i128) -> Vec<NextAct> {
        let mut acts = Vec::new();
        match self.verdict(sheet) {
            Verdict::OnHold => {
                self.towards_a_closed_plug(&mut acts);
                let why = self.holds.last().map_or("", |(_, why)| why);
                acts.push(act("settle_hold").with("why", why));
            }
            Verdict::NoProcedure => acts.push(act("find_sheet")),
            Verdict::Repeat => acts.push(act("begin_again").with("phase", self.phase())),
            _ if leak.by_sheet == BySheet::Above && self.found.is_none() => {
                self.towards_a_closed_plug(&mut acts);
                acts.push(act("look_for_leak"));
            }
            Verdict::Low => self.towards_the_level(sheet, at, &mut acts),
            Verdict::AtLevel => self.towards_closing(sheet, at, &mut acts),
            Verdict::Over if self.plug == Some(PlugState::Open) => acts.push(act("let_it_thin")),
            _ => self.towards_a_look(sheet, at, &mut acts),
        }
        if leak.by_sheet == BySheet::Above && self.found.is_some() {
            acts.push(act("look_for_leak"));
        }
        let unmeasured = self
            .looks
            .iter()
            .rev()
            .find(|look| look.grade.is_flow())
            .filter(|look| look.captured.is_none());
        if let (Some(look), Certainty::Marginal) = (unmeasured, leak.certainty) {
            acts.push(act("weigh_pan").with("entry", look.seq));
        }
        acts
    }

    const fn phase(&self) -> &'static str {
        match self.repeat {
            Repeat::UntilClosed => "close",
            Repeat::UntilOpened => "open",
            Repeat::UntilObserved | Repeat::No => "look",
        }
    }

    fn mends(&self, sheet: &Sheet<'_>, at: i128, acts: &mut Vec<NextAct>) {
        let gate = self.gate(sheet, Act::Open, None, at);
        for unmet in gate
            .unmet
            .into_iter()
            .filter(|unmet| unmet.id != "plug_already_open")
        {
            let mut next = match unmet.id {
                "temperature_missing" | "temperature_stale" => act("read_temperature"),
                id => act("mend").with("unmet", id),
            };
            next.wait = unmet.wait;
            let besides = MENDING.iter().filter(|(own, _)| *own == unmet.id);
            next.cautions
                .extend(besides.flat_map(|(_, cautions)| *cautions));
            for (name, value) in unmet.args.iter() {
                next = next.with(name, value.clone());
            }
            acts.push(next);
        }
    }

    fn towards_a_look(&self, sheet: &Sheet<'_>, at: i128, acts: &mut Vec<NextAct>) {
        self.mends(sheet, at, acts);
        acts.push(self.look());
    }

    /// A look, with the cautions of opening the plug where it is not open.
    fn look(&self) -> NextAct {
        let is_open = self.plug == Some(PlugState::Open);
        act(if is_open { "look_again" } else { "open_plug" })
    }

    fn towards_the_level(&self, sheet: &Sheet<'_>, at: i128, acts: &mut Vec<NextAct>) {
        let poured_since = self
            .last_pour
            .filter(|(seq, _)| self.deciding.as_ref().is_some_and(|look| *seq > look.seq));
        if let Some((_, poured)) = poured_since {
            let mut look = self.look();
            let left = poured.saturating_add(sheet.settle).saturating_sub(at);
            look.wait = if left > 0 { seconds(left) } else { None };
            if self
                .freshness(sheet, at)
                .is_err_and(|outcome| outcome == Outcome::Stale)
            {
                acts.push(act("read_temperature"));
            }
            acts.push(look);
            return;
        }
        if !sheet.fluid_is_resolved() {
            acts.push(act("find_fluid"));
            return;
        }
        if self.opening_is_doubted(sheet) {
            acts.push(act("doubt_opening"));
            return;
        }
        let mut pour = act("pour");
        let volume = self.next_pour(sheet);
        if let Some(volume) = volume {
            pour = pour.with("volume", volume);
        }
        if let Some(fluid) = sheet.procedure.and_then(|sheet| sheet.fluid.as_deref()) {
            pour = pour.with("fluid", fluid);
        }
        // A smaller pour than the step says why.
        let limit = sheet.leak_limit().and_then(|leak| leak.limit());
        if let (Some(volume), Some(step), Some(limit)) = (volume, sheet.step(), limit)
            && volume.compare(&step) == Ok(Ordering::Less)
        {
            pour = pour.with("step", step).with("limit", limit);
        }
        // A cold pour may chill the fluid out of the window.
        let window = sheet
            .conditions()
            .and_then(|asked| asked.temperature.as_ref());
        let mixed = volume.and_then(|volume| self.mixed(sheet, volume));
        if let (Some(mixed), Some(min)) = (mixed, window.and_then(|window| window.min))
            && mixed < min
        {
            pour = pour.with("mixed", mixed).with("min", min);
        }
        acts.push(pour);
    }

    fn towards_a_closed_plug(&self, acts: &mut Vec<NextAct>) {
        if self.plug == Some(PlugState::Open) {
            acts.push(act("close_plug"));
        }
    }

    fn towards_closing(&self, sheet: &Sheet<'_>, at: i128, acts: &mut Vec<NextAct>) {
        let closing = sheet.procedure.and_then(|sheet| sheet.closing.as_ref());
        self.towards_a_closed_plug(acts);
        if self.tightened.is_none() {
            let mut tighten = act("tighten");
            if let Some(torque) = closing.and_then(|closing| closing.torque) {
                tighten = tighten.with("torque", torque);
            }
            if let Some(tolerance) = closing.and_then(|closing| closing.tolerance) {
                tighten = tighten.with("tolerance", tolerance);
            }
            acts.push(tighten);
        }
        if self.engine.is_some_and(EngineState::is_running)
            && self.gate(sheet, Act::StopEngine, None, at).allowed
        {
            acts.push(act("stop_engine"));
        }
        if self.plug == Some(PlugState::Closed) && !self.is_confirmed(sheet, "drips_checked") {
            acts.push(act("look_for_drips"));
        }
    }

    /// The cautions that go with the state of the job, whatever is done next.
    pub(super) fn cautions(
        &self,
        sheet: &Sheet<'_>,
        verdict: Verdict,
    ) -> Vec<alloc::string::String> {
        let mut ids = alloc::vec!["decision_limit"];
        if self.engine.is_some_and(EngineState::is_running) {
            ids.extend(["exhaust_gas", "moving_parts", "auto_start"]);
        }
        if matches!(self.plug, Some(PlugState::Open | PlugState::Loosened)) {
            ids.extend(["hot_fluid", "close_before_stop", "slip_fire"]);
        }
        if self.plug != Some(PlugState::Closed) {
            ids.extend(["support", "wheels_turn", "levelling_off", "plug_identity"]);
        }
        if verdict == Verdict::Low || verdict == Verdict::OnHold {
            ids.push("no_dry_start");
        }
        if self
            .holds
            .iter()
            .any(|(_, why)| matches!(*why, "coolant" | "milky" | "pink_foam"))
        {
            ids.push("coolant_toxic");
        }
        if verdict != Verdict::AtLevel {
            ids.push("not_proven");
        }
        ids.push("after_work");
        let own = sheet
            .procedure
            .map(|sheet| sheet.cautions.as_slice())
            .unwrap_or_default();
        ids.into_iter()
            .map(ToString::to_string)
            .chain(own.iter().map(|caution| caution.id.clone()))
            .collect()
    }
}

/// The smallest pour worth measuring, where the sheet states none: a tenth of a litre, or of the quart the
/// limit is in; common practice, no source.
fn least_pour(unit: Unit) -> Option<Amount> {
    let family = match unit.symbol().split(' ').next() {
        Some("US") => Unit::UsQuart,
        Some("imp") => Unit::ImperialQuart,
        _ => Unit::Litre,
    };
    Amount::new(1, 1, family).ok()
}
