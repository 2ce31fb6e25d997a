//! The cautions of one telling: each told once in full, and referred to by its number.

use super::catalogue::message;
use super::page::Page;
use crate::procedure::Procedure;
use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

/// Cautions by id, in the order they were first needed.
#[derive(Debug)]
pub(super) struct Cautions<'s> {
    sheet: Option<&'s Procedure>,
    ids: Vec<String>,
}

impl<'s> Cautions<'s> {
    pub(super) const fn on(sheet: Option<&'s Procedure>) -> Self {
        Cautions {
            sheet,
            ids: Vec::new(),
        }
    }

    /// Takes cautions in, and gives the words that refer to them: `cautions 1, 4`; empty for none.
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
        let word = if numbers.len() == 1 {
            "mind_one"
        } else {
            "mind"
        };
        let word = message("heading", word).unwrap_or_default();
        format!("({word} {})", listed.join(", "))
    }

    /// Every caution that was needed, numbered, in full sentences.
    pub(super) fn tell(&self, page: &mut Page) {
        page.heading(message("heading", "cautions").unwrap_or_default());
        for (index, id) in self.ids.iter().enumerate() {
            let number = format!("{:>4}  ", index.saturating_add(1));
            page.put(&number, &self.sentences(id));
        }
    }

    /// The library's words for it, then the sheet's own; the id itself if neither has any.
    fn sentences(&self, id: &str) -> String {
        let own = self.sheet.map_or(&[][..], |sheet| &sheet.cautions);
        let said: Vec<&str> = message("caution", id)
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
