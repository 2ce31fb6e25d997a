//! The sheet in words: which one it is, and what it asks.

use super::page::Page;
use super::sentence::Given;
use super::teller::Teller;
use crate::check::{ProcedureRef, Subject};
use crate::procedure::{Closing, Conditions, LeakLimit, Procedure};
use crate::quantity::{Amount, Unit};
use alloc::string::String;
use alloc::vec::Vec;

/// Which sheet: its unit, its name and edition, and where its values come from.
pub(super) fn identity(
    teller: &Teller,
    page: &mut Page,
    label: &str,
    named: &ProcedureRef,
    sheet: Option<&Procedure>,
) {
    page.put(label, &named_sheet(teller, named, sheet));
    if let Some(source) = sheet.and_then(|sheet| sheet.source.as_deref()) {
        page.put("  ", source);
    }
}

/// The sheet's name, with its edition and its unit.
pub(super) fn named_sheet(
    teller: &Teller,
    named: &ProcedureRef,
    sheet: Option<&Procedure>,
) -> String {
    let given = Given::nothing()
        .with_some("unit_name", sheet.and_then(|sheet| sheet.unit.as_deref()))
        .with("procedure", &named.id)
        .with_some("edition", named.edition);
    teller.say("ask", "sheet", &given)
}

/// The job, and what it is done on.
pub(super) fn subject(teller: &Teller, page: &mut Page, job: &str, subject: Option<&Subject>) {
    let given = Given::nothing()
        .with("job", job)
        .with_some("vehicle", subject.map(|subject| &subject.vehicle))
        .with_some(
            "unit_name",
            subject.and_then(|subject| subject.unit.as_ref()),
        )
        .with_some("odometer", subject.and_then(|subject| subject.odometer));
    page.put("  ", &teller.sentence("job", "title", &given));
    let said = [
        (
            "opened",
            subject.and_then(|subject| subject.last_opened.as_ref()),
        ),
        (
            "complaint",
            subject.and_then(|subject| subject.complaint.as_ref()),
        ),
    ];
    for (id, text) in said {
        if let Some(text) = text {
            page.put(
                "  ",
                &teller.sentence("job", id, &Given::nothing().with("said", text)),
            );
        }
    }
}

pub(super) fn ask(
    teller: &Teller,
    id: &str,
    name: &'static str,
    value: Option<Amount>,
) -> Option<String> {
    let value = value?;
    Some(teller.sentence("ask", id, &Given::nothing().with(name, value)))
}

/// Everything the sheet asks for, a line for each matter.
pub(super) fn asks(teller: &Teller, page: &mut Page, sheet: &Procedure) {
    let method = &sheet.method;
    let step = sheet.refill.as_ref().and_then(|refill| refill.step);
    let conditions = sheet.conditions.clone().unwrap_or_default();
    let lines = [
        alloc::vec![teller.sentence(
            "ask",
            "method",
            &Given::nothing().with("method", method.kind.slug())
        ),],
        fluid(teller, sheet).into_iter().collect(),
        window(teller, &conditions).into_iter().collect(),
        standing(teller, &conditions),
        [
            ask(teller, "watch", "watch", method.watch),
            ask(teller, "settle", "settle", method.settle),
            ask(teller, "step", "step", step),
        ]
        .into_iter()
        .flatten()
        .collect(),
        sheet
            .leak_limit
            .iter()
            .map(|limit| teller.sentence("ask", "leak", &leak_limit(limit)))
            .collect(),
        sheet
            .closing
            .iter()
            .filter_map(|asked| closing(teller, asked))
            .collect(),
    ];
    for line in lines.iter().filter(|line| !line.is_empty()) {
        page.put("  ", &line.join(" "));
    }
}

pub(super) fn fluid(teller: &Teller, sheet: &Procedure) -> Option<String> {
    let capacity = sheet.capacity.as_ref();
    let given = Given::nothing()
        .with("fluid", sheet.fluid.as_deref()?)
        .with_some("total", capacity.and_then(|capacity| capacity.total))
        .with_some("refill", capacity.and_then(|capacity| capacity.refill));
    Some(teller.sentence("ask", "fluid", &given))
}

pub(super) fn window(teller: &Teller, conditions: &Conditions) -> Option<String> {
    let window = conditions.temperature.as_ref()?;
    let id = match (window.min, window.max) {
        (Some(_), Some(_)) => "window",
        (Some(_), None) => "window_from",
        _ => "window_to",
    };
    let max_age = window.max_age.or(Amount::new(30, 0, Unit::Second).ok());
    let given = Given::nothing()
        .with_some("min", window.min)
        .with_some("max", window.max)
        .with_some("max_age", max_age);
    Some(teller.sentence("ask", id, &given))
}

pub(super) fn standing(teller: &Teller, conditions: &Conditions) -> Vec<String> {
    let nothing = Given::nothing;
    let ranges = conditions.ranges.as_ref();
    let asked = [
        (
            "engine",
            conditions
                .engine
                .map(|state| nothing().with("state", state.slug())),
        ),
        (
            "selector",
            conditions
                .selector
                .as_ref()
                .map(|position| nothing().with("position", teller.word("position", position))),
        ),
        (
            "tilt",
            conditions
                .tilt
                .as_ref()
                .map(|tilt| nothing().with("tilt", tilt.max)),
        ),
        (
            "ranges",
            ranges.map(|ranges| nothing().with_some("dwell", ranges.dwell)),
        ),
    ];
    asked
        .iter()
        .filter_map(|(id, given)| Some(teller.sentence("ask", id, given.as_ref()?)))
        .collect()
}

/// Whether the limit itself counts as past it, as the sheet says.
pub(super) fn limit_is(limit: &LeakLimit) -> &'static str {
    if limit.at_least.is_some() {
        "at_least"
    } else {
        "more_than"
    }
}

/// The limit as the sheet states it.
pub(super) fn leak_limit(limit: &LeakLimit) -> Given {
    let counts = limit.counts.map_or("net", |counts| counts.slug());
    Given::nothing()
        .with_some("limit", limit.limit())
        .with("limit_is", limit_is(limit))
        .with_some("about", limit.about)
        .with("counts", counts)
        .with("counted", counts)
}

pub(super) fn closing(teller: &Teller, closing: &Closing) -> Option<String> {
    let given = Given::nothing()
        .with("torque", closing.torque?)
        .with_some("tolerance", closing.tolerance)
        .with_some("thread", closing.thread.as_ref())
        .with_some("seal", closing.seal.map(|seal| seal.slug()))
        .with_some(
            "threadlocker",
            closing.threadlocker.map(|strength| strength.slug()),
        );
    Some(teller.sentence("ask", "torque", &given))
}
