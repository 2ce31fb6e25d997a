//! Where in a document: the members and items that lead to a value.

use alloc::borrow::Cow;
use alloc::string::String;
use core::fmt::Write;

/// One step into a document.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) enum Step<'a> {
    Key(Cow<'a, str>),
    Index(usize),
}

impl<'a> From<&'a str> for Step<'a> {
    fn from(name: &'a str) -> Self {
        Step::Key(Cow::Borrowed(name))
    }
}

impl From<String> for Step<'_> {
    fn from(name: String) -> Self {
        Step::Key(Cow::Owned(name))
    }
}

impl From<usize> for Step<'_> {
    fn from(index: usize) -> Self {
        Step::Index(index)
    }
}

/// How much of a member's name stands in a path.
const NAME: usize = 80;

/// A path as people read it: `entries[3].volume`.
pub(super) fn spell<'s, 'a: 's>(steps: impl IntoIterator<Item = &'s Step<'a>>) -> String {
    let mut out = String::new();
    for step in steps {
        match step {
            Step::Key(name) => {
                if !out.is_empty() {
                    out.push('.');
                }
                out.extend(name.chars().take(NAME));
                if name.chars().nth(NAME).is_some() {
                    out.push('…');
                }
            }
            // Writing to a String cannot fail.
            Step::Index(index) => write!(out, "[{index}]").unwrap_or_default(),
        }
    }
    out
}
