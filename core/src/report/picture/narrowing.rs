//! What is known of the departure, entry by entry: two bars a row that grow shorter from look to look.

use super::super::event::event;
use super::super::known::told;
use super::super::sentence::Given;
use super::super::teller::Teller;
use super::axis::Axis;
use super::drawing::{Attributes, Drawing, clipped};
use crate::check::{Course, Entry, Fact, LevelCheck};
use crate::quantity::{Amount, Interval, Unit};
use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

/// One entry that changed what is known.
pub(in super::super) struct Row {
    pub(in super::super) seq: u64,
    /// What it was, in a word or two.
    pub(in super::super) said: String,
    words: String,
    pub(in super::super) as_found: Interval,
    pub(in super::super) now: Interval,
}

/// The rows, and what they are drawn against.
pub(in super::super) struct Narrowing<'a> {
    teller: &'a Teller,
    pub(in super::super) rows: Vec<Row>,
    limit: Option<Amount>,
    unit: Unit,
}

const WIDTH: f64 = 360.0;
const PLOT: [f64; 2] = [140.0, 352.0];
/// What fits beside the bars.
const MOST_LETTERS: usize = 17;
const TOP: f64 = 34.0;
const ROW: f64 = 21.0;
/// How far the point of an open end stands out.
const POINT: f64 = 7.0;

impl<'a> Narrowing<'a> {
    /// `None` where no entry changed anything.
    pub(in super::super) fn of(
        teller: &'a Teller,
        check: &LevelCheck,
        course: &Course<'_>,
    ) -> Option<Self> {
        let (mut as_found, mut now) = (Interval::UNBOUNDED, Interval::UNBOUNDED);
        let mut rows = Vec::new();
        for step in &course.steps {
            if (step.as_found, step.now) != (as_found, now) {
                (as_found, now) = (step.as_found, step.now);
                rows.push(Row {
                    seq: step.entry.seq,
                    said: mark(teller, step.entry),
                    words: event(teller, step.entry, false),
                    as_found,
                    now,
                });
            }
        }
        let ends = |row: &Row| {
            [
                row.as_found.lo(),
                row.as_found.hi(),
                row.now.lo(),
                row.now.hi(),
            ]
        };
        let unit = rows.iter().flat_map(ends).flatten().next()?.unit();
        let limit = check
            .sheet()
            .and_then(|sheet| sheet.leak_limit.as_ref()?.limit());
        Some(Narrowing {
            teller,
            rows,
            limit,
            unit,
        })
    }

    fn number(&self, amount: Amount) -> f64 {
        amount.number_in(self.unit).unwrap_or_default()
    }

    fn axis(&self) -> Axis {
        let ends = self
            .rows
            .iter()
            .flat_map(|row| [row.as_found, row.now])
            .flat_map(|interval| [interval.lo(), interval.hi()])
            .flatten();
        let limit = self.limit.map(|limit| -self.number(limit));
        let numbers = ends.map(|end| self.number(end)).chain([0.0]).chain(limit);
        Axis::over(numbers, [0.12; 2], PLOT)
    }

    pub(in super::super) fn draw(&self) -> String {
        let axis = self.axis();
        let mut drawing = Drawing::default();
        let rows = TOP + ROW * self.rows.len() as f64;
        self.grid(&mut drawing, &axis, rows);
        for (index, row) in self.rows.iter().enumerate() {
            self.row(&mut drawing, &axis, row, TOP + ROW * index as f64);
        }
        let last = self.legend(&mut drawing, rows + 34.0);
        let nothing = Given::nothing();
        let described = [self.told("as_found"), self.told("now")].join(" ");
        let title = self.teller.say("picture", "narrowing", &nothing);
        drawing.finish("narrowing", [WIDTH, last + 8.0], &title, &described)
    }

    /// The same in words, row by row.
    pub(in super::super) fn told_all(&self) -> Vec<(String, String)> {
        let rows = self.rows.iter();
        rows.map(|row| {
            let known = [self.known("as_found", row), self.known("now", row)];
            let label = Given::nothing().with("entry", row.seq);
            let label = self.teller.say("label", "entry", &label);
            (label, format!("{} {}", row.words, known.join(" ")))
        })
        .collect()
    }

    /// What is known at the end.
    fn told(&self, id: &'static str) -> String {
        let last = self.rows.last();
        last.map_or_else(String::new, |row| self.known(id, row))
    }

    fn known(&self, id: &'static str, row: &Row) -> String {
        let interval = match id {
            "as_found" => row.as_found,
            _ => row.now,
        };
        let known = told(self.teller, "departure", &interval);
        self.teller
            .sentence("label", id, &Given::nothing().with("known", known))
    }

    /// The marks of the axis, the correct level and the leak limit.
    fn grid(&self, drawing: &mut Drawing, axis: &Axis, bottom: f64) {
        let [left, right] = PLOT;
        let short = self.teller.say("label", "short", &Given::nothing());
        let over = self.teller.say("label", "over", &Given::nothing());
        drawing.text(Attributes::class("soft"), [left, 12.0], "start", &short);
        drawing.text(Attributes::class("soft"), [right, 12.0], "end", &over);
        drawing.group(axis.described("x", self.unit.symbol()), "", |drawing| {
            for mark in axis.marks(self.unit, 6) {
                let x = axis.at(mark.to_f64());
                drawing.line(Attributes::class("hair"), [x, TOP - 2.0], [x, bottom]);
                // The sides say which way; a number alone reads as its size.
                let size = mark.number();
                let size = size.strip_prefix('-').unwrap_or(&size);
                let size = if mark.is_zero() { "0" } else { size };
                let size = self.teller.number(size);
                let attributes = Attributes::class("soft").with("data-value", mark);
                drawing.text(attributes, [x, bottom + 13.0], "middle", &size);
            }
            let unit = self.unit.symbol();
            drawing.text(
                Attributes::class("soft"),
                [left - 16.0, bottom + 13.0],
                "end",
                unit,
            );
        });
        let zero = axis.at(0.0);
        let level = self.teller.say("label", "level", &Given::nothing());
        let attributes = Attributes::class("level").with("data-level", "0");
        drawing.line(attributes, [zero, TOP - 4.0], [zero, bottom]);
        let inside = |x: f64, text: &str| {
            let half = text.chars().count() as f64 * 2.9;
            x.clamp(left + half, right - half)
        };
        drawing.text(
            Attributes::class("strong"),
            [zero.clamp(left + 62.0, right - 58.0), 12.0],
            "middle",
            &level,
        );
        if let Some(limit) = self.limit {
            let x = axis.at(-self.number(limit));
            let attributes = Attributes::class("limit").with("data-limit", limit);
            drawing.line(attributes, [x, TOP - 4.0], [x, bottom]);
            let text = self
                .teller
                .say("label", "limit", &Given::nothing().with("limit", limit));
            let at = [inside(x, &text), 26.0];
            drawing.text(Attributes::class("limit-text"), at, "middle", &text);
        }
    }

    fn row(&self, drawing: &mut Drawing, axis: &Axis, row: &Row, y: f64) {
        let attributes = Attributes::class("row")
            .with("data-entry", row.seq)
            .with("data-as-found", row.as_found)
            .with("data-now", row.now);
        drawing.group(attributes, &row.words, |drawing| {
            let seq = row.seq.to_string();
            drawing.text(Attributes::class("soft"), [22.0, y + 12.0], "end", &seq);
            let said = clipped(&row.said, MOST_LETTERS);
            drawing.text(Attributes::default(), [28.0, y + 12.0], "start", &said);
            self.bar(drawing, axis, "found", &row.as_found, [y + 2.0, 8.0]);
            self.bar(drawing, axis, "now", &row.now, [y + 12.0, 5.0]);
        });
    }

    /// An interval as a bar; an end that is not known runs to the edge of the drawing and ends in a point.
    fn bar(
        &self,
        drawing: &mut Drawing,
        axis: &Axis,
        class: &str,
        interval: &Interval,
        [y, high]: [f64; 2],
    ) {
        let [left, right] = axis.ends();
        let place = |end: Option<Amount>| end.map(|end| axis.at(self.number(end)));
        let (lo, hi) = (place(interval.lo()), place(interval.hi()));
        let from = lo.unwrap_or(left + POINT);
        let to = hi.unwrap_or(right - POINT);
        drawing.rect(Attributes::class(class), [from, y], [to - from, high]);
        let middle = y + high / 2.0;
        if interval.lo().is_some() && interval.lo() == interval.hi() {
            // A bar without a length is not seen.
            let r = 4.5;
            let points = [
                [from - r, middle],
                [from, middle - r],
                [from + r, middle],
                [from, middle + r],
            ];
            drawing.path(Attributes::class(class), &points);
        }
        let mut point = |side: &str, tip: f64, base: f64| {
            let points = [[base, y - 1.5], [tip, middle], [base, y + high + 1.5]];
            let class = format!("{class} open");
            drawing.path(Attributes::class(&class).with("data-open", side), &points);
        };
        if lo.is_none() {
            point("below", left, left + POINT);
        }
        if hi.is_none() {
            point("above", right, right - POINT);
        }
    }

    /// What each bar is, with what it says at the end; the place of the last line.
    fn legend(&self, drawing: &mut Drawing, top: f64) -> f64 {
        let lines = [("found", "as_found", 8.0), ("now", "now", 5.0)];
        let mut y = top;
        for (class, id, high) in lines {
            let attributes = Attributes::class(class);
            drawing.rect(attributes, [4.0, y - high / 2.0 - 3.5], [18.0, high]);
            let text = self.told(id);
            drawing.text(Attributes::default(), [28.0, y], "start", &text);
            y += 16.0;
        }
        y - 16.0
    }
}

/// An entry in a word or two.
fn mark(teller: &Teller, entry: &Entry) -> String {
    let nothing = Given::nothing();
    let given = match &entry.fact {
        Fact::Flow { grade, .. } => nothing.with("seen", grade.slug()),
        Fact::Added { measured, .. } | Fact::Drained { measured, .. } => {
            nothing.with("amount", measured.amount)
        }
        Fact::Engine { state } => nothing.with("state", state.slug()),
        _ => nothing,
    };
    teller.say("mark", entry.fact.kind(), &given)
}
