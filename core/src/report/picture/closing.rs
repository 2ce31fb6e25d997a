//! The closing torque: what the sheet asks at the plug, what the tool is set to for it, what was entered.

use super::super::sentence::{Given, Value};
use super::super::teller::Teller;
use super::Rig;
use super::axis::Axis;
use super::drawing::{Attributes, Drawing, clipped};
use crate::check::{Course, Fact, LevelCheck};
use crate::error::Error;
use crate::quantity::{Amount, Rounding, Unit};
use crate::torque::{ToolChoice, ToolFit, ToolJob, tool_suits};
use alloc::string::{String, ToString};
use alloc::vec::Vec;

/// What is drawn.
pub(in super::super) struct Tightening<'a> {
    teller: &'a Teller,
    pub(in super::super) target: Option<Amount>,
    tolerance: Option<Amount>,
    /// Torques that were entered, each with its entry and the tool it names.
    pub(in super::super) entered: Vec<(u64, Amount)>,
    pub(in super::super) rig: Option<&'a Rig<'a>>,
    /// How the tool suits.
    pub(in super::super) fit: Option<ToolFit<'a>>,
    /// What is to be minded, as caution ids.
    cautions: &'static [&'static str],
    unit: Unit,
}

const WIDTH: f64 = 360.0;
/// What fits into a line of the drawing.
const MOST_LETTERS: usize = 56;
/// How far under a scale its unit stands.
const UNIT_UNDER: f64 = 28.0;
const LINE: [f64; 2] = [12.0, 348.0];

impl<'a> Tightening<'a> {
    /// `None` where neither a sheet nor an entry says a torque.
    pub(in super::super) fn of(
        teller: &'a Teller,
        check: &LevelCheck,
        course: &Course<'_>,
        rig: Option<&'a Rig<'a>>,
    ) -> Result<Option<Self>, Error> {
        let closing = check.sheet().and_then(|sheet| sheet.closing.as_ref());
        let target = closing.and_then(|closing| closing.torque);
        let tolerance = closing
            .and_then(|closing| closing.tolerance)
            .filter(|tolerance| !tolerance.is_zero());
        let torque = |fact: &Fact| match fact {
            Fact::Tightened { torque, .. } => Some(*torque),
            _ => None,
        };
        let entered: Vec<(u64, Amount)> = course
            .steps
            .iter()
            .filter_map(|step| Some((step.entry.seq, torque(&step.entry.fact)?)))
            .collect();
        let first = entered.first().map(|(_, torque)| *torque);
        let Some(unit) = target.or(first).map(|torque| torque.unit()) else {
            return Ok(None);
        };
        let choice = match (target, rig) {
            (Some(target), Some(rig)) => Some(suiting(target, tolerance, rig)?),
            _ => None,
        };
        let cautions = choice.as_ref().map_or(&[][..], |choice| choice.cautions);
        let fit = choice.and_then(|choice| choice.tools.into_iter().next());
        Ok(Some(Tightening {
            teller,
            target,
            tolerance,
            entered,
            rig,
            fit,
            cautions,
            unit,
        }))
    }

    fn number(&self, amount: Amount) -> f64 {
        amount.number_in(self.unit).unwrap_or_default()
    }

    /// From nothing to the largest number there is.
    fn axis(&self) -> Axis {
        let tolerance = self
            .tolerance
            .map_or(0.0, |tolerance| self.number(tolerance));
        let asked = self.target.map(|target| self.number(target) + tolerance);
        let entered = self.entered.iter().map(|(_, torque)| self.number(*torque));
        let tool = self.rig.map(|rig| self.number(rig.tool.max));
        let set = self.fit.as_ref().and_then(|fit| fit.setting);
        let set = set.map(|setting| self.number(setting));
        let largest = entered
            .chain(asked)
            .chain(tool)
            .chain(set)
            .fold(0.0, f64::max);
        Axis::between([0.0, largest.max(1e-9) * 1.08], LINE)
    }

    pub(in super::super) fn draw(&self) -> String {
        let axis = self.axis();
        let mut drawing = Drawing::default();
        let mut y = self.plug(&mut drawing, &axis);
        if let Some(rig) = self.rig {
            y = self.tool(&mut drawing, rig, y + 30.0);
        }
        let title = self.teller.say("picture", "closing", &Given::nothing());
        let given = Given::nothing()
            .with_some("torque", self.target)
            .with_some("tolerance", self.tolerance)
            .with_some("setting", self.fit.as_ref().and_then(|fit| fit.setting));
        let described = self.teller.sentence("picture", "closing_told", &given);
        drawing.finish("closing", [WIDTH, y + 8.0], &title, &described)
    }

    /// The same in words.
    pub(in super::super) fn told_all(&self) -> Vec<(String, String)> {
        let word = |id: &str| self.teller.word("label", id);
        let asked = self.asked().map(|asked| (word("at_plug"), asked));
        let mut told: Vec<_> = asked.into_iter().collect();
        for (seq, torque) in &self.entered {
            told.push((word("at_plug"), self.entry(*seq, *torque)));
        }
        if let Some(setting) = self.fit.as_ref().and_then(|fit| fit.setting) {
            told.push((word("on_tool"), self.set_to(setting)));
        }
        told
    }

    /// What is to be minded while closing, as caution ids.
    pub(in super::super) fn cautions(&self) -> &'static [&'static str] {
        self.cautions
    }

    /// What the sheet asks.
    fn asked(&self) -> Option<String> {
        let given = Given::nothing()
            .with("torque", self.target?)
            .with_some("tolerance", self.tolerance);
        Some(self.teller.say("label", "asked", &given))
    }

    /// What was entered, in the unit of the sheet as well.
    fn entry(&self, seq: u64, torque: Amount) -> String {
        let converted = (torque.unit() != self.unit)
            .then(|| torque.to(self.unit, 1, Rounding::HalfEven).ok())
            .flatten();
        let given = Given::nothing()
            .with("entry", seq)
            .with("torque", torque)
            .with_some("converted", converted);
        self.teller.say("label", "entered", &given)
    }

    /// What the tool is set to, in its own unit.
    fn set_to(&self, setting: Amount) -> String {
        let given = Given::nothing().with("setting", Value::Written(setting.to_string()));
        self.teller.say("label", "set_to", &given)
    }

    /// A scale in one unit under a line, with what it is called above.
    fn scale(&self, drawing: &mut Drawing, axis: &Axis, named: &str, unit: Unit, y: f64) {
        let described = axis.described(named, unit.symbol());
        drawing.group(described, "", |drawing| {
            drawing.line(Attributes::class("rule"), [LINE[0], y], [LINE[1], y]);
            for mark in axis.marks(unit, 8) {
                let x = axis.at(mark.to_f64());
                drawing.line(Attributes::class("rule"), [x, y], [x, y + 4.0]);
                let attributes = Attributes::class("soft").with("data-value", mark);
                drawing.text(
                    attributes,
                    [x, y + 16.0],
                    "middle",
                    &self.teller.number(&mark.number()),
                );
            }
        });
        drawing.text(
            Attributes::class("soft"),
            [LINE[1], y + UNIT_UNDER],
            "end",
            unit.symbol(),
        );
    }

    /// What the sheet asks and what was entered; the place of the last line.
    fn plug(&self, drawing: &mut Drawing, axis: &Axis) -> f64 {
        let title = self.teller.say("label", "at_plug", &Given::nothing());
        drawing.text(Attributes::class("strong"), [4.0, 12.0], "start", &title);
        let y = 58.0;
        if let Some(target) = self.target {
            let words = self.asked().unwrap_or_default();
            let attributes = Attributes::class("asked")
                .with("data-torque", target)
                .with_some("data-tolerance", self.tolerance);
            drawing.group(attributes, &words, |drawing| {
                let number = self.number(target);
                if let Some(tolerance) = self.tolerance {
                    let tolerance = self.number(tolerance);
                    let [from, to] = [axis.at(number - tolerance), axis.at(number + tolerance)];
                    drawing.rect(
                        Attributes::class("band"),
                        [from, y - 24.0],
                        [to - from, 24.0],
                    );
                }
                let x = axis.at(number);
                drawing.line(Attributes::class("level"), [x, y - 24.0], [x, y]);
                text(drawing, "", x, 28.0, &words);
            });
        }
        self.scale(drawing, axis, "plug", self.unit, y);
        let mut under = y + 31.0;
        for (seq, torque) in &self.entered {
            let words = self.entry(*seq, *torque);
            let attributes = Attributes::class("entered")
                .with("data-entry", seq)
                .with("data-torque", torque);
            drawing.group(attributes, &words, |drawing| {
                let x = axis.at(self.number(*torque));
                let points = [
                    [x - 5.0, y - 14.0],
                    [x + 5.0, y - 14.0],
                    [x, y - 2.0],
                    [x - 5.0, y - 14.0],
                ];
                drawing.path(Attributes::class("found"), &points);
                drawing.text(Attributes::default(), [4.0, under], "start", &words);
            });
            under += 15.0;
        }
        if self.entered.is_empty() {
            y + UNIT_UNDER
        } else {
            under - 15.0
        }
    }

    /// The scale of the tool, its range, and what it is set to; the place of the last line.
    fn tool(&self, drawing: &mut Drawing, rig: &Rig<'_>, top: f64) -> f64 {
        let unit = rig.tool.graduation.unwrap_or(rig.tool.max).unit();
        let number = |amount: Amount| amount.number_in(unit).unwrap_or_default();
        let [_, largest] = self.axis().numbers();
        let largest = Amount::from_computed(largest, self.unit).map_or(0.0, number);
        let axis = Axis::between([0.0, largest.max(1e-9)], LINE);
        let nothing = Given::nothing;
        let title = self.teller.say("label", "on_tool", &nothing());
        drawing.text(Attributes::class("strong"), [4.0, top], "start", &title);
        let given = nothing()
            .with("tool", rig.tool.name)
            .with_some("adapter", rig.adapter)
            .with_some("angle", rig.angle);
        let named = clipped(&self.teller.say("label", "rig", &given), MOST_LETTERS);
        drawing.text(
            Attributes::class("soft"),
            [4.0, top + 14.0],
            "start",
            &named,
        );
        let y = top + 58.0;
        let lowest = rig.tool.min.map_or(number(rig.tool.max) / 5.0, number);
        let attributes = Attributes::class("band")
            .with("data-max", rig.tool.max)
            .with_some("data-min", rig.tool.min);
        let [from, to] = [axis.at(lowest), axis.at(number(rig.tool.max))];
        drawing.rect(attributes, [from, y - 10.0], [to - from, 10.0]);
        let setting = self.fit.as_ref().and_then(|fit| fit.setting);
        if let Some(setting) = setting {
            let applied = self.fit.as_ref().and_then(|fit| fit.applied);
            let words = self.set_to(setting);
            let attributes = Attributes::class("setting")
                .with("data-setting", setting)
                .with_some("data-applied", applied);
            drawing.group(attributes, &words, |drawing| {
                let x = axis.at(number(setting));
                let points = [
                    [x - 6.0, y - 22.0],
                    [x + 6.0, y - 22.0],
                    [x, y - 2.0],
                    [x - 6.0, y - 22.0],
                ];
                drawing.path(Attributes::class("found"), &points);
                text(drawing, "strong", x, y - 26.0, &words);
            });
        }
        self.scale(drawing, &axis, "tool", unit, y);
        let given = nothing()
            .with_some("min", rig.tool.min)
            .with("max", rig.tool.max);
        let range = self.teller.say("label", "range", &given);
        drawing.text(Attributes::class("soft"), [4.0, y + 31.0], "start", &range);
        y + 31.0
    }
}

/// How a tool suits a torque at the plug.
fn suiting<'a>(
    target: Amount,
    tolerance: Option<Amount>,
    rig: &Rig<'a>,
) -> Result<ToolChoice<'a>, Error> {
    let job = ToolJob {
        target,
        tolerance,
        adapter: rig.adapter,
        angle: rig.angle,
    };
    tool_suits(&job, &[rig.tool])
}

/// A text over a place, inside the drawing.
fn text(drawing: &mut Drawing, class: &str, x: f64, y: f64, words: &str) {
    let half = words.chars().count() as f64 * 3.0;
    let x = x.clamp(half.min(WIDTH / 2.0), (WIDTH - half).max(WIDTH / 2.0));
    drawing.text(Attributes::class(class), [x, y], "middle", words);
}
