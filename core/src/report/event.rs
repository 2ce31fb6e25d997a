//! One entry of a journal in a sentence.

use super::sentence::Given;
use super::teller::Teller;
use crate::check::{Entry, Fact, Measured};
use crate::money::Money;
use alloc::string::String;

/// What an entry says. `looked` tells of a flow without its grade, for where the grade is told beside it.
pub(super) fn event(teller: &Teller, entry: &Entry, looked: bool) -> String {
    let given = given(teller, &entry.fact);
    let id = match &entry.fact {
        Fact::Flow { .. } if looked => "look",
        Fact::Correction { replaces: None, .. } => "void",
        fact => fact.kind(),
    };
    teller.sentence("event", id, &given)
}

fn measured(amount: &'static str, measured: Option<&Measured>) -> Given {
    Given::nothing()
        .with_some(amount, measured.map(|measured| measured.amount))
        .with_some(
            "by",
            measured.and_then(|measured| Some(measured.by?.slug())),
        )
}

fn given(teller: &Teller, fact: &Fact) -> Given {
    let nothing = Given::nothing();
    // A slug of the host's, in its words where it has any, else as it is read aloud.
    let words = |part: &str, slug: &Option<String>| {
        let slug = slug.as_deref();
        slug.map(|slug| teller.word(part, slug))
    };
    match fact {
        Fact::Confirmed { what } => nothing.with("what", what),
        Fact::Level { tilt, toward } => nothing.with("tilt", tilt).with("toward", toward.slug()),
        Fact::Engine { state } => nothing.with("state", state.slug()),
        Fact::Selector { position } => nothing.with("position", teller.word("position", position)),
        Fact::Ranges { dwell } => nothing.with("dwell", dwell),
        Fact::Temperature { reading, source } => nothing
            .with("reading", reading)
            .with("source", source.slug()),
        Fact::Plug { state } => nothing.with("plug", state.slug()),
        Fact::Flow {
            grade,
            watched,
            captured,
            trend,
        } => measured("captured", captured.as_ref())
            .with("watched", watched)
            .with("grade", grade.slug())
            .with_some("trend", trend.map(|trend| trend.slug())),
        Fact::Reading {
            value,
            side,
            status,
        } => nothing
            .with("value", value)
            .with_some("side", side.as_ref())
            .with_some("status", words("status", status)),
        Fact::Added {
            measured: volume,
            fluid,
            container,
            batch,
        } => measured("amount", Some(volume))
            .with_some("fluid", fluid.as_ref())
            .with_some("container", container.as_ref())
            .with_some("batch", batch.as_ref()),
        Fact::Drained {
            measured: volume,
            why,
        } => measured("amount", Some(volume)).with("drained", why.slug()),
        Fact::Fluid {
            appearance,
            smell,
            debris,
            coolant_strip,
        } => nothing
            .with_some("appearance", words("appearance", appearance))
            .with_some("smell", words("smell", smell))
            .with_some("debris", words("debris", debris))
            .with_some("strip", coolant_strip.map(|strip| strip.slug())),
        Fact::Seepage { place, class, .. } => {
            nothing.with("place", place).with("class", class.slug())
        }
        Fact::Tightened {
            torque,
            tool,
            adapter,
        } => nothing
            .with("torque", torque)
            .with_some("tool", tool.as_ref())
            .with_some("adapter", adapter.as_ref()),
        Fact::Driven { distance, peak } => nothing
            .with("distance", distance)
            .with_some("peak", peak.as_ref()),
        // Whatever else was written there stays as it is.
        Fact::Approved { ceiling } => match Money::parse(ceiling) {
            Ok(_) => nothing.with("ceiling", teller.number(ceiling)),
            Err(_) => nothing.with("ceiling", ceiling),
        },
        Fact::Hold { reason } | Fact::Release { reason } => nothing.with("stated", reason),
        Fact::Correction {
            of,
            replaces,
            reason,
        } => nothing.with("of", of).with("stated", reason).with_some(
            "event",
            replaces.as_deref().map(|entry| event(teller, entry, false)),
        ),
        Fact::Note { text } => nothing.with("text", text),
    }
}
