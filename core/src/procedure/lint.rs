//! Defects of a sheet itself, found before anybody works by it.

use super::closing::Closing;
use super::conditions::TemperatureCondition;
use super::edition::Procedure;
use super::method::MethodKind;
use super::pack::Pack;
use crate::quantity::Amount;
use crate::torque::{PlugKind, Print, PrintClass, Thread, equivalents, plausible};
use crate::word::words;
use alloc::collections::BTreeMap;
use alloc::string::{String, ToString};
use alloc::vec::Vec;
use core::cmp::Ordering;
use serde::Serialize;

words! {
    /// How serious a finding is.
    pub enum Severity {
        /// Worth knowing.
        Note = "note",
        /// The answer may be worth less than it looks.
        Caution = "caution",
        /// Do not go on before this is settled.
        Stop = "stop",
    }
}

/// One defect of one sheet.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct LintFinding {
    /// The stable name of the defect.
    pub id: &'static str,
    /// How serious it is.
    pub severity: Severity,
    /// The procedure.
    pub procedure: String,
    /// Its edition.
    pub edition: u32,
    /// The field it is about, by path within the procedure.
    pub field: String,
    /// The quantities and names it is about.
    #[serde(skip_serializing_if = "BTreeMap::is_empty")]
    pub args: BTreeMap<&'static str, String>,
}

struct Linter<'p> {
    sheet: &'p Procedure,
    found: Vec<LintFinding>,
}

impl Linter<'_> {
    fn find(
        &mut self,
        id: &'static str,
        severity: Severity,
        field: &str,
        args: &[(&'static str, String)],
    ) {
        self.found.push(LintFinding {
            id,
            severity,
            procedure: self.sheet.id.clone(),
            edition: self.sheet.edition,
            field: field.to_string(),
            args: args.iter().cloned().collect(),
        });
    }
}

impl Pack {
    /// Every defect of every sheet, sheet by sheet.
    ///
    /// ```
    /// // The embedded pack is without serious defects.
    /// let pack = brimline::Pack::embedded()?;
    /// assert!(pack.lint().iter().all(|finding| finding.severity == brimline::procedure::Severity::Note));
    /// # Ok::<(), brimline::Error>(())
    /// ```
    #[must_use]
    pub fn lint(&self) -> Vec<LintFinding> {
        let mut all = Vec::new();
        for sheet in self.procedures() {
            let mut linter = Linter {
                sheet,
                found: Vec::new(),
            };
            linter.supersession(self);
            linter.fluid(self);
            linter.conditions();
            linter.volumes();
            linter.closing();
            all.append(&mut linter.found);
        }
        all
    }
}

impl Linter<'_> {
    fn supersession(&mut self, pack: &Pack) {
        let Some(earlier) = self.sheet.supersedes else {
            return;
        };
        if pack.procedure(&self.sheet.id, earlier).is_none() {
            let args = [("edition", earlier.to_string())];
            self.find("supersedes_absent", Severity::Note, "supersedes", &args);
        }
    }

    fn fluid(&mut self, pack: &Pack) {
        match &self.sheet.fluid {
            None => self.find("fluid_unstated", Severity::Caution, "fluid", &[]),
            Some(name) if pack.fluid(name).is_none() => {
                self.find(
                    "fluid_unknown",
                    Severity::Stop,
                    "fluid",
                    &[("fluid", name.clone())],
                );
            }
            Some(_) => {}
        }
    }

    fn conditions(&mut self) {
        let sheet = self.sheet;
        let conditions = sheet.conditions.clone().unwrap_or_default();
        for (missing, id, field) in [
            (
                conditions.engine.is_none(),
                "engine_unstated",
                "conditions.engine",
            ),
            (
                conditions.tilt.is_none(),
                "tilt_unstated",
                "conditions.tilt",
            ),
            (
                sheet.method.watch.is_none(),
                "watch_unstated",
                "method.watch",
            ),
            (
                sheet.method.settle.is_none(),
                "settle_unstated",
                "method.settle",
            ),
        ] {
            if missing {
                self.find(id, Severity::Note, field, &[]);
            }
        }
        if sheet.method.kind == MethodKind::Standpipe
            && sheet.method.hold_up.is_none_or(|held| held.is_zero())
        {
            self.find("hold_up_unstated", Severity::Caution, "method.hold_up", &[]);
        }
        let Some(window) = &conditions.temperature else {
            self.find(
                "window_unstated",
                Severity::Caution,
                "conditions.temperature",
                &[],
            );
            return;
        };
        if sheet.method.warming.is_none() {
            self.find(
                "warming_undeclared",
                Severity::Caution,
                "method.warming",
                &[],
            );
        }
        self.window(window);
    }

    fn window(&mut self, window: &TemperatureCondition) {
        let field = "conditions.temperature";
        if let (Some(min), Some(max)) = (window.min, window.max)
            && min.compare(&max) == Ok(Ordering::Greater)
        {
            let args = [("min", min.to_string()), ("max", max.to_string())];
            self.find("window_empty", Severity::Stop, field, &args);
        }
        let governing: Vec<Amount> = [window.min, window.max].into_iter().flatten().collect();
        for (index, print) in window.printed.iter().enumerate() {
            let against = governing
                .iter()
                .filter_map(|limit| equivalents(&[*limit, *print]).ok());
            let classed: Vec<Print> = against
                .filter_map(|told| told.prints.last().cloned())
                .collect();
            if !classed.is_empty() && !classed.iter().any(agrees) {
                let said = governing
                    .iter()
                    .map(ToString::to_string)
                    .collect::<Vec<_>>()
                    .join(", ");
                let slipped = classed.iter().find(|print| print.factor.is_some());
                let worst = slipped.or(classed.first());
                let place = alloc::format!("{field}.printed[{index}]");
                self.print(&place, said, *print, worst);
            }
        }
    }

    fn volumes(&mut self) {
        let Some(leak) = &self.sheet.leak_limit else {
            return;
        };
        let Some(limit) = leak.limit() else { return };
        self.prints("leak_limit.printed", Some(limit), &leak.printed);
        if let Some(step) = self.sheet.refill.as_ref().and_then(|refill| refill.step)
            && !divides(step, limit)
        {
            // With this step an unmeasured last pour straddles the limit.
            let args = [("step", step.to_string()), ("limit", limit.to_string())];
            self.find("step_straddles_limit", Severity::Note, "refill.step", &args);
        }
        if let Some(capacity) = self
            .sheet
            .capacity
            .as_ref()
            .and_then(|capacity| capacity.refill)
            && limit.compare(&capacity) == Ok(Ordering::Greater)
        {
            let args = [
                ("limit", limit.to_string()),
                ("refill", capacity.to_string()),
            ];
            self.find(
                "limit_over_capacity",
                Severity::Caution,
                "leak_limit",
                &args,
            );
        }
    }

    fn closing(&mut self) {
        let running = self
            .sheet
            .conditions
            .as_ref()
            .and_then(|conditions| conditions.engine)
            .is_some_and(super::EngineState::is_running);
        let none = Closing {
            torque: None,
            tolerance: None,
            printed: Vec::new(),
            thread: None,
            seal: None,
            threadlocker: None,
            close_before_stop: None,
            replace_closing_loss: None,
        };
        let closing = self.sheet.closing.as_ref().unwrap_or(&none);
        match closing.close_before_stop {
            None if running => self.find(
                "closing_order_unstated",
                Severity::Note,
                "closing.close_before_stop",
                &[],
            ),
            Some(false) if running => {
                self.find(
                    "closing_order_loses_fluid",
                    Severity::Caution,
                    "closing.close_before_stop",
                    &[],
                );
            }
            _ => {}
        }
        if closing.torque.is_none() {
            self.find("torque_unstated", Severity::Caution, "closing.torque", &[]);
        }
        self.prints("closing.printed", closing.torque, &closing.printed);
        if let (Some(torque), Some(thread)) = (closing.torque, &closing.thread) {
            self.torque(torque, thread);
        }
    }

    /// Each courtesy print is the governing one converted, within half its last digit; what else it may be is told
    /// apart.
    fn prints(&mut self, field: &str, governing: Option<Amount>, printed: &[Amount]) {
        let Some(governing) = governing else { return };
        let all: Vec<Amount> = core::iter::once(governing)
            .chain(printed.iter().copied())
            .collect();
        let Ok(told) = equivalents(&all) else { return };
        for (index, print) in told.prints.iter().skip(1).enumerate() {
            if !agrees(print) {
                let place = alloc::format!("{field}[{index}]");
                self.print(&place, governing.to_string(), print.print, Some(print));
            }
        }
    }

    /// A print that does not agree, and what it may be instead.
    fn print(&mut self, place: &str, governing: String, print: Amount, told: Option<&Print>) {
        let mut args = alloc::vec![("governing", governing), ("printed", print.to_string())];
        let through = told.and_then(|told| told.through);
        let factor = told.and_then(|told| told.factor);
        let (id, severity) = match (through, factor) {
            (Some(other), _) => {
                args.push(("through", other.to_string()));
                ("print_chain_rounded", Severity::Note)
            }
            (None, Some(factor)) => {
                args.push(("factor", factor.slug().into()));
                ("print_unit_slip", Severity::Stop)
            }
            (None, None) => ("print_disagrees", Severity::Caution),
        };
        self.find(id, severity, place, &args);
    }

    /// Whether the torque is one that the thread could be meant to get.
    fn torque(&mut self, torque: Amount, thread: &str) {
        // What the plug is made of no sheet says: a torque past any steel bolt's is asked about, not judged.
        let told =
            Thread::parse(thread).and_then(|thread| plausible(torque, &thread, PlugKind::Unknown));
        let Ok(told) = told else {
            let args = [("thread", thread.into())];
            self.find("thread_unknown", Severity::Note, "closing.thread", &args);
            return;
        };
        if let Some(slip) = told.slip.filter(|slip| slip.torque < torque) {
            let args = [
                ("torque", torque.to_string()),
                ("thread", thread.into()),
                ("other", slip.torque.to_string()),
            ];
            self.find(
                "torque_unit_doubt",
                Severity::Caution,
                "closing.torque",
                &args,
            );
        }
    }
}

/// Whether a print says the same as the governing one.
fn agrees(print: &Print) -> bool {
    matches!(print.class, PrintClass::Exact | PrintClass::Agrees)
}

/// Whether a whole number of steps makes the limit exactly.
fn divides(step: Amount, limit: Amount) -> bool {
    match (step.count(), limit.count()) {
        (Some(step), Some(limit)) => limit.checked_rem(step) == Some(0),
        _ => false,
    }
}
