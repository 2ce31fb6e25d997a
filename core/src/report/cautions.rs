//! The cautions of one telling: each told once in full, and referred to by its number.

use super::page::Page;
use super::sentence::Given;
use super::teller::Teller;
use crate::check::NextAct;
use crate::procedure::{Act, Procedure};
use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

/// The next acts that are acts of a gate, to which a sheet may add its own cautions.
const ACTS: [(&str, Act); 4] = [
    ("open_plug", Act::Open),
    ("pour", Act::Pour),
    ("close_plug", Act::Close),
    ("stop_engine", Act::StopEngine),
];

/// Cautions by id, in the order they were first needed.
#[derive(Debug)]
pub(super) struct Cautions<'s> {
    teller: &'s Teller,
    sheet: Option<&'s Procedure>,
    ids: Vec<String>,
}

impl<'s> Cautions<'s> {
    pub(super) const fn on(teller: &'s Teller, sheet: Option<&'s Procedure>) -> Self {
        Cautions {
            teller,
            sheet,
            ids: Vec::new(),
        }
    }

    /// Takes the cautions of an act in, the library's and the sheet's own for it, and refers to them.
    pub(super) fn need_for(&mut self, act: &NextAct) -> String {
        let done = ACTS.iter().find(|(id, _)| *id == act.id);
        let own = self.sheet.map_or(&[][..], |sheet| &sheet.cautions);
        let own = own.iter().filter(|own| {
            done.is_some_and(|(_, act)| own.acts.is_empty() || own.acts.contains(act))
        });
        let ids: Vec<&str> = act
            .cautions
            .iter()
            .copied()
            .chain(own.map(|own| own.id.as_str()))
            .collect();
        self.need(&ids)
    }

    /// Takes cautions in, and gives the words that refer to them: `(cautions 1, 4)`; empty for none.
    pub(super) fn need<I: AsRef<str>>(&mut self, ids: &[I]) -> String {
        let mut numbers = Vec::new();
        for id in ids.iter().map(AsRef::as_ref) {
            let known = self.ids.iter().position(|own| own == id);
            let place = known.unwrap_or(self.ids.len());
            if known.is_none() {
                self.ids.push(id.into());
            }
            numbers.push(place.saturating_add(1));
        }
        numbers.sort_unstable();
        numbers.dedup();
        if numbers.is_empty() {
            return String::new();
        }
        let listed: Vec<String> = numbers.iter().map(ToString::to_string).collect();
        let given = Given::nothing()
            .with("count", numbers.len())
            .with("numbers", listed.join(", "));
        self.teller.say("phrase", "mind", &given)
    }

    /// Every caution that was needed, numbered, in full sentences.
    pub(super) fn tell(&self, page: &mut Page) {
        page.heading(&self.teller.word("heading", "cautions"));
        for (caution, number) in self.all().iter().zip(1..) {
            page.put(&format!("{number:>4}  "), caution);
        }
    }

    /// Every caution that was needed in full sentences, in the order of their numbers.
    pub(super) fn all(&self) -> Vec<String> {
        self.ids.iter().map(|id| self.sentences(id)).collect()
    }

    /// The library's words for it, then the sheet's own; the id itself if neither has any.
    fn sentences(&self, id: &str) -> String {
        let own = self.sheet.map_or(&[][..], |sheet| &sheet.cautions);
        let said: Vec<&str> = self
            .teller
            .caution(id)
            .into_iter()
            .chain(
                own.iter()
                    .filter(|own| own.id == id)
                    .map(|own| own.text.as_str()),
            )
            .collect();
        if said.is_empty() {
            id.into()
        } else {
            said.join(" ")
        }
    }
}
