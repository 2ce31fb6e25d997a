//! What each sign of the warm-up means.

use super::super::sentence::Given;
use super::drawing::Drawing;
use super::sign::legend;
use super::warming::{WIDTH, WarmUp, reading};
use crate::check::{Entry, Fact, Source};
use alloc::string::String;
use alloc::vec::Vec;

impl WarmUp<'_> {
    /// What each sign means, of those that are there; the place of the last line.
    pub(super) fn legend(&self, drawing: &mut Drawing) -> f64 {
        let mut items: Vec<(&str, String)> = Vec::new();
        let nothing = Given::nothing;
        let say = |id: &str, given: &Given| self.teller.say("label", id, given);
        for (slug, source) in Source::WORDS {
            let is_there = |entry: &&Entry| reading(entry).is_some_and(|(_, own)| own == *source);
            if self.events.iter().any(is_there) {
                items.push((slug, say("read", &nothing().with("source", *slug))));
            }
        }
        if self.min.is_some() || self.max.is_some() {
            let given = nothing()
                .with_some("min", self.min)
                .with_some("max", self.max);
            items.push(("band", say("window", &given)));
        }
        let has = |is: fn(&Fact) -> bool| self.events.iter().any(|entry| is(&entry.fact));
        if has(|fact| matches!(fact, Fact::Plug { .. })) {
            items.push(("out", say("plug_out", &nothing())));
        }
        if has(|fact| matches!(fact, Fact::Flow { .. })) {
            items.push(("aside", say("looked", &nothing())));
        }
        if has(|fact| matches!(fact, Fact::Added { .. })) {
            items.push(("pour", say("poured", &nothing())));
        }
        if let Some(told) = self.fans() {
            let given = nothing().with("entry", told.entry);
            items.push(("fan", say("forecast", &given)));
        }
        legend(drawing, &items, 196.0, WIDTH)
    }
}
