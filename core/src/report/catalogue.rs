//! Every English sentence of the library's answers, by id. Another language is another table of the same shape.
//!
//! A text names its arguments in braces. A part in square brackets is told only if all it names is given.
//! An argument that is itself an id (`grade`, `source`, `why`, …) is told by the words listed under its name.

mod history;
mod pages;
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
}

macro_rules! table {
    ($($part:ident { $($id:ident: $text:literal,)* })*) => {
        &[$($(Message { part: stringify!($part), id: stringify!($id), text: $text },)*)*]
    };
}
use table;

/// Every message, part by part.
///
/// ```
/// let cautions = brimline::report::messages().filter(|message| message.part == "caution");
/// assert!(cautions.count() > 15);
/// ```
pub fn messages() -> impl Iterator<Item = &'static Message> {
    [
        sentences::SENTENCES,
        words::WORDS,
        pages::PAGES,
        history::HISTORY,
    ]
    .into_iter()
    .flatten()
}

/// The text for an id, if the catalogue has one.
///
/// ```
/// let text = brimline::report::message("unmet", "step_exceeded");
/// assert_eq!(text, Some("{planned} is more than the step of {step}."));
/// ```
#[must_use]
pub fn message(part: &str, id: &str) -> Option<&'static str> {
    messages()
        .find(|message| message.part == part && message.id == id)
        .map(|message| message.text)
}
