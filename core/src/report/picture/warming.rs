//! The warm-up: readings by time and by where they were read, the window as a band, the forecast as a fan, the plug, the
//! looks and the pours.

use super::super::event::event;
use super::super::outlook;
use super::super::sentence::Given;
use super::super::teller::Teller;
use super::axis::Axis;
use super::clock::clock_marks;
use super::drawing::{Attributes, Drawing};
use super::sign::sign;
use crate::check::{Course, Entry, Fact, Foretold, LevelCheck, PlugState, Source};
use crate::quantity::{Amount, Unit};
use crate::warm_up::Span;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

/// What is drawn.
pub(in super::super) struct WarmUp<'a> {
    pub(super) teller: &'a Teller,
    /// Readings, pours, looks and acts on the plug, in order.
    pub(super) events: Vec<&'a Entry>,
    pub(super) min: Option<Amount>,
    pub(super) max: Option<Amount>,
    foretold: Option<&'a Foretold>,
    unit: Unit,
    /// The entry time counts from.
    first: &'a Entry,
}

/// What a forecast tells of the limits that are still ahead.
pub(super) struct Fans {
    /// Where it counts from, in seconds since the first event.
    from: f64,
    now: Amount,
    /// The entry it was told after.
    pub(super) entry: u64,
    fans: Vec<(Amount, Span)>,
}

pub(super) const WIDTH: f64 = 360.0;
const LEFT: f64 = 34.0;
const RIGHT: f64 = 352.0;
const TOP: f64 = 16.0;
const BOTTOM: f64 = 148.0;
/// The bar of the plug.
const PLUG: [f64; 2] = [170.0, 8.0];

const OPEN: Fact = Fact::Plug {
    state: PlugState::Open,
};
const CLOSED: Fact = Fact::Plug {
    state: PlugState::Closed,
};
const NANOSECOND: f64 = 1e-9;

pub(super) fn reading(entry: &Entry) -> Option<(Amount, Source)> {
    match &entry.fact {
        Fact::Temperature { reading, source } => Some((*reading, *source)),
        _ => None,
    }
}

impl<'a> WarmUp<'a> {
    /// `None` where no temperature was read.
    pub(in super::super) fn of(
        teller: &'a Teller,
        check: &'a LevelCheck,
        course: &'a Course<'_>,
    ) -> Option<Self> {
        let is_drawn = |fact: &Fact| {
            matches!(
                fact,
                Fact::Temperature { .. }
                    | Fact::Added { .. }
                    | Fact::Flow { .. }
                    | Fact::Plug { .. }
            )
        };
        let events: Vec<&Entry> = course
            .steps
            .iter()
            .map(|step| step.entry)
            .filter(|entry| is_drawn(&entry.fact))
            .collect();
        let (read, _) = events.iter().find_map(|entry| reading(entry))?;
        let asked = check.sheet().and_then(|sheet| sheet.conditions.as_ref());
        let window = asked.and_then(|asked| asked.temperature.as_ref());
        let (min, max) = window.map_or((None, None), |window| (window.min, window.max));
        Some(WarmUp {
            teller,
            first: events.first()?,
            unit: min.or(max).unwrap_or(read).unit(),
            foretold: course.foretold.as_ref(),
            events,
            min,
            max,
        })
    }

    fn number(&self, amount: Amount) -> f64 {
        amount.number_in(self.unit).unwrap_or_default()
    }

    /// Seconds since the first event.
    fn seconds(&self, nanoseconds: i128) -> f64 {
        let since = nanoseconds.saturating_sub(self.first.at.nanoseconds());
        since as f64 * NANOSECOND
    }

    fn time(&self, entry: &Entry) -> f64 {
        self.seconds(entry.at.nanoseconds())
    }

    pub(super) fn fans(&self) -> Option<Fans> {
        let foretold = self.foretold?;
        let outlook = &foretold.outlook;
        let limits = [(self.min, outlook.opens), (self.max, outlook.closes)];
        let ahead = limits
            .into_iter()
            .filter_map(|(limit, span)| Some((limit?, span?)))
            .filter(|(_, span)| span.is_ahead());
        let fans: Vec<_> = ahead.collect();
        let told = Fans {
            from: self.seconds(foretold.from),
            now: outlook.now?,
            entry: foretold.entry,
            fans,
        };
        (!told.fans.is_empty()).then_some(told)
    }

    fn axes(&self) -> [Axis; 2] {
        let fans = self.fans();
        let ends = fans.iter().flat_map(|told| {
            told.fans.iter().map(move |(_, span)| {
                let last = span.latest.or(span.likely).unwrap_or(span.earliest);
                told.from + last.to_f64()
            })
        });
        let times = self.events.iter().map(|entry| self.time(entry)).chain(ends);
        let readings = self.events.iter().filter_map(|entry| reading(entry));
        let readings = readings.map(|(reading, _)| reading);
        let limits = self.min.into_iter().chain(self.max);
        let numbers = readings.chain(limits).map(|amount| self.number(amount));
        [
            Axis::over(times, [0.03; 2], [LEFT, RIGHT]),
            Axis::over(numbers, [0.08, 0.22], [BOTTOM, TOP]),
        ]
    }

    pub(in super::super) fn draw(&self) -> String {
        let axes = self.axes();
        let mut drawing = Drawing::default();
        self.window(&mut drawing, &axes);
        self.grid(&mut drawing, &axes);
        self.fan(&mut drawing, &axes);
        self.plug(&mut drawing, &axes);
        self.readings(&mut drawing, &axes);
        let bottom = self.legend(&mut drawing);
        let title = self.teller.say("picture", "warm_up", &Given::nothing());
        drawing.finish("warm_up", [WIDTH, bottom + 8.0], &title, &self.described())
    }

    /// The readings that speak of the gearbox fluid.
    fn fluid(&self) -> impl DoubleEndedIterator<Item = &&Entry> {
        let reads =
            |entry: &&&Entry| reading(entry).is_some_and(|(_, source)| source.reads_fluid());
        self.events.iter().filter(reads)
    }

    /// The same in words, event by event.
    pub(in super::super) fn told_all(&self) -> Vec<(String, String)> {
        let label = |id: &str, entry: u64| {
            let given = Given::nothing().with("entry", entry);
            self.teller.say("label", id, &given)
        };
        let is_told =
            |entry: &&&Entry| matches!(entry.fact, Fact::Temperature { .. } | Fact::Plug { .. });
        let events = self.events.iter().filter(is_told);
        let mut told: Vec<_> = events
            .map(|entry| (label("entry", entry.seq), event(self.teller, entry, false)))
            .collect();
        if let Some(foretold) = self.foretold {
            let lines = outlook::lines(self.teller, &foretold.outlook).join(" ");
            told.push((label("forecast", foretold.entry), lines));
        }
        told
    }

    fn described(&self) -> String {
        let fluid = || self.fluid();
        let of =
            |entry: Option<&&Entry>| entry.and_then(|entry| reading(entry)).map(|(read, _)| read);
        let given = Given::nothing()
            .with_some("first", of(fluid().next()))
            .with_some("last", of(fluid().next_back()))
            .with_some("min", self.min)
            .with_some("max", self.max);
        self.teller.sentence("picture", "warm_up_told", &given)
    }

    /// The band of the window; where it has one limit it runs to the edge.
    fn window(&self, drawing: &mut Drawing, [_, up]: &[Axis; 2]) {
        if self.min.is_none() && self.max.is_none() {
            return;
        }
        let top = self.max.map_or(TOP, |max| up.at(self.number(max)));
        let bottom = self.min.map_or(BOTTOM, |min| up.at(self.number(min)));
        let attributes = Attributes::class("band")
            .with_some("data-min", self.min)
            .with_some("data-max", self.max);
        drawing.rect(
            attributes,
            [LEFT, top],
            [RIGHT - LEFT, (bottom - top).max(0.0)],
        );
        for (limit, y) in [(self.min, bottom), (self.max, top)] {
            if limit.is_some() {
                drawing.line(Attributes::class("edge"), [LEFT, y], [RIGHT, y]);
            }
        }
    }

    fn grid(&self, drawing: &mut Drawing, [along, up]: &[Axis; 2]) {
        drawing.group(up.described("y", self.unit.symbol()), "", |drawing| {
            for mark in up.marks(self.unit, 6) {
                let y = up.at(mark.to_f64());
                drawing.line(Attributes::class("hair"), [LEFT, y], [RIGHT, y]);
                let attributes = Attributes::class("soft").with("data-value", mark);
                drawing.text(
                    attributes,
                    [LEFT - 4.0, y + 4.0],
                    "end",
                    &self.teller.number(&mark.number()),
                );
            }
        });
        let unit = self.unit.symbol();
        drawing.text(Attributes::class("soft"), [LEFT - 4.0, 10.0], "end", unit);
        let described = along
            .described("x", "s")
            .with("data-origin", self.first.at.text());
        drawing.group(described, "", |drawing| {
            for (seconds, text) in clock_marks(self.first.at.text(), along.numbers()) {
                let x = along.at(seconds);
                drawing.line(Attributes::class("hair"), [x, BOTTOM], [x, BOTTOM + 3.0]);
                let under = [x.min(WIDTH - 18.0), BOTTOM + 15.0];
                drawing.text(Attributes::class("soft"), under, "middle", &text);
            }
        });
    }

    /// From where it was told to the limit: earliest to latest as an area, the likely time as a line.
    fn fan(&self, drawing: &mut Drawing, [along, up]: &[Axis; 2]) {
        let Some(Fans {
            from,
            now,
            entry,
            fans,
        }) = self.fans()
        else {
            return;
        };
        let start = [along.at(from), up.at(self.number(now))];
        for (limit, span) in fans {
            let y = up.at(self.number(limit));
            let at = |wait: Amount| [along.at(from + wait.to_f64()), y];
            let attributes = Attributes::class("forecast")
                .with("data-entry", entry)
                .with("data-now", now)
                .with("data-limit", limit)
                .with("data-earliest", span.earliest)
                .with_some("data-likely", span.likely)
                .with_some("data-latest", span.latest);
            drawing.group(attributes, "", |drawing| {
                // Without a latest time it may take as long as it likes.
                let latest = span.latest.map_or([RIGHT, y], at);
                let area = [start, at(span.earliest), latest];
                drawing.path(Attributes::class("fan"), &area);
                if let Some(likely) = span.likely {
                    drawing.path(Attributes::class("likely"), &[start, at(likely)]);
                }
            });
        }
    }

    /// When the plug was out, with the looks at the opening in it, and the pours.
    fn plug(&self, drawing: &mut Drawing, axes: &[Axis; 2]) {
        let [along, _] = axes;
        let x = |entry: &Entry| along.at(self.time(entry));
        let [y, high] = PLUG;
        let mut open: Option<&Entry> = None;
        let span = |drawing: &mut Drawing, from: &Entry, to: Option<&Entry>| {
            let end = to.map_or(RIGHT, x);
            let attributes = Attributes::class("out")
                .with("data-open", from.seq)
                .with_some("data-closed", to.map(|to| to.seq));
            drawing.rect(attributes, [x(from), y], [(end - x(from)).max(0.0), high]);
        };
        for entry in &self.events {
            if entry.fact == OPEN {
                open = open.or(Some(entry));
            } else if entry.fact == CLOSED
                && let Some(from) = open.take()
            {
                span(drawing, from, Some(entry));
            }
        }
        if let Some(from) = open {
            span(drawing, from, None);
        }
        for entry in &self.events {
            let (class, amount) = match &entry.fact {
                Fact::Flow { .. } => ("aside", None),
                Fact::Added { measured, .. } => ("pour", Some(measured.amount)),
                _ => continue,
            };
            let attributes = Attributes::class("event")
                .with("data-entry", entry.seq)
                .with_some("data-amount", amount);
            drawing.group(attributes, &event(self.teller, entry, false), |drawing| {
                let at = if amount.is_some() {
                    [x(entry), TOP]
                } else {
                    [x(entry), y + high / 2.0]
                };
                sign(drawing, class, at);
            });
        }
    }

    fn readings(&self, drawing: &mut Drawing, [along, up]: &[Axis; 2]) {
        let place =
            |entry: &Entry, reading| [along.at(self.time(entry)), up.at(self.number(reading))];
        let curve: Vec<[f64; 2]> = self
            .events
            .iter()
            .filter_map(|entry| {
                let (read, source) = reading(entry)?;
                matches!(source, Source::Scan | Source::Network).then(|| place(entry, read))
            })
            .collect();
        drawing.path(Attributes::class("curve"), &curve);
        let told = self.told();
        for entry in &self.events {
            let Some((read, source)) = reading(entry) else {
                continue;
            };
            let at = place(entry, read);
            let attributes = Attributes::class("reading")
                .with("data-entry", entry.seq)
                .with("data-at", entry.at.text())
                .with("data-source", source.slug())
                .with("data-reading", read);
            drawing.group(attributes, &event(self.teller, entry, false), |drawing| {
                sign(drawing, source.slug(), at);
                let [x, y] = at;
                // Under the first one, for the curve goes up from there; over the others.
                let (place, anchor) = match told.iter().position(|told| *told == entry.seq) {
                    Some(0) => ([x + 7.0, (y + 8.0).min(BOTTOM - 3.0)], "start"),
                    Some(_) => {
                        let x = x.clamp(LEFT + 18.0, RIGHT - 18.0);
                        ([x, (y - 8.0).max(TOP + 18.0)], "middle")
                    }
                    None => return,
                };
                let text = self.teller.number(&read.to_string());
                drawing.text(Attributes::class("strong"), place, anchor, &text);
            });
        }
    }

    /// The readings that are told in numbers: the first, the one the plug came out at, the last; not too near to each other.
    fn told(&self) -> Vec<u64> {
        let fluid = || self.fluid();
        let opened = self.events.iter().find(|entry| entry.fact == OPEN);
        let before = opened.and_then(|opened| fluid().rfind(|entry| entry.seq < opened.seq));
        let [along, _] = self.axes();
        let mut chosen: Vec<&Entry> = Vec::new();
        for entry in [fluid().next(), before, fluid().next_back()]
            .into_iter()
            .flatten()
        {
            let x = along.at(self.time(entry));
            let is_near = |other: &&Entry| libm::fabs(along.at(self.time(other)) - x) < 36.0;
            if !chosen.iter().any(is_near) {
                chosen.push(entry);
            }
        }
        chosen.iter().map(|entry| entry.seq).collect()
    }
}
