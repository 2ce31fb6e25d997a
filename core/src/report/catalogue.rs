//! Every English sentence of the library's answers, by id. Another language is another table of the same shape,
//! a [`Catalogue`](super::Catalogue).
//!
//! A text names its arguments in braces. A part in square brackets is told only if all it names is given.
//! An argument that is itself an id (`grade`, `source`, `why`, …) is told by the words listed under its name.
//! `{limit!}` is told as it was printed, and beside it in the unit the shop prefers. What is worded otherwise after
//! the count of one has a second text: `files: "{count} files"; count one: "{count} file",`.

mod calculators;
mod counter;
mod history;
mod pages;
mod records;
mod sentences;
mod words;

/// One message: what kind of thing it tells, the id it tells, and the text.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[non_exhaustive]
pub struct Message {
    /// What it tells: `finding`, `reason`, `next`, `unmet`, `answer`, `caution`, …, or the name of an argument
    /// whose ids it puts into words.
    pub part: &'static str,
    /// The stable id.
    pub id: &'static str,
    /// The English text, with its arguments in braces.
    pub text: &'static str,
    /// The argument that counts, and the text where it is one, if that is worded otherwise.
    pub one: Option<(&'static str, &'static str)>,
}

/// The messages that tell one kind of thing.
pub(super) type Part = (&'static str, &'static [Message]);

/// An optional pair.
macro_rules! one {
    () => {
        None
    };
    ($count:ident $text:literal) => {
        Some((stringify!($count), $text))
    };
}

macro_rules! table {
    ($($part:ident { $($id:ident: $text:literal $(; $count:ident one: $one:literal)?,)* })*) => {
        &[$((stringify!($part), &[$($crate::report::Message {
            part: stringify!($part),
            id: stringify!($id),
            text: $text,
            one: $crate::report::catalogue::one!($($count $one)?),
        },)*]),)*]
    };
}
use {one, table};

/// Every file of the catalogue.
const TABLES: [&[Part]; 7] = [
    sentences::SENTENCES,
    words::WORDS,
    pages::PAGES,
    history::HISTORY,
    records::RECORDS,
    counter::COUNTER,
    calculators::CALCULATORS,
];

/// Every message, part by part.
///
/// ```
/// let cautions = brimline::report::messages().filter(|message| message.part == "caution");
/// assert!(cautions.count() > 15);
/// ```
pub fn messages() -> impl Iterator<Item = &'static Message> {
    TABLES
        .into_iter()
        .flatten()
        .flat_map(|(_, messages)| *messages)
}

/// A message and its place among all of them.
pub(super) fn find(part: &str, id: &str) -> Option<(usize, &'static Message)> {
    let mut before: usize = 0;
    for (name, messages) in TABLES.into_iter().flatten() {
        let found = (*name == part)
            .then(|| messages.iter().position(|message| message.id == id))
            .flatten();
        if let Some(place) = found {
            return Some((before.saturating_add(place), messages.get(place)?));
        }
        before = before.saturating_add(messages.len());
    }
    None
}

/// The text for an id, if the catalogue has one.
///
/// ```
/// let text = brimline::report::message("unmet", "plug_not_open");
/// assert_eq!(text, Some("The plug is not open."));
/// ```
#[must_use]
pub fn message(part: &str, id: &str) -> Option<&'static str> {
    find(part, id).map(|(_, message)| message.text)
}
