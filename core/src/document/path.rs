//! Where in a document: the members and items that lead to a value.

use alloc::borrow::Cow;
use alloc::string::String;
use core::fmt::Write;

/// One step into a document.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) enum Step {
    /// A member, the first of its name.
    Key(Cow<'static, str>),
    /// A member that stands again under a name that stood before.
    Again(Cow<'static, str>),
    Index(usize),
}

impl From<&'static str> for Step {
    fn from(name: &'static str) -> Self {
        Step::Key(Cow::Borrowed(name))
    }
}

impl From<String> for Step {
    fn from(name: String) -> Self {
        Step::Key(Cow::Owned(name))
    }
}

impl From<usize> for Step {
    fn from(index: usize) -> Self {
        Step::Index(index)
    }
}

/// How much of a member's name stands in a path.
const NAME: usize = 80;

/// A path as people read it: `entries[3].volume`. A name that would be misread stands in quotes: `["a.b"]`.
pub(super) fn spell(steps: &[Step]) -> String {
    let mut out = String::new();
    for step in steps {
        match step {
            // Writing to a String cannot fail.
            Step::Index(index) => write!(out, "[{index}]").unwrap_or_default(),
            Step::Key(name) | Step::Again(name) if is_plain(name) => {
                if !out.is_empty() {
                    out.push('.');
                }
                out.push_str(name);
            }
            Step::Key(name) | Step::Again(name) => {
                out.push_str("[\"");
                for letter in name.chars().take(NAME) {
                    if letter.is_control() || letter == '"' || letter == '\\' {
                        out.extend(letter.escape_default());
                    } else {
                        out.push(letter);
                    }
                }
                if name.chars().nth(NAME).is_some() {
                    out.push('…');
                }
                out.push_str("\"]");
            }
        }
    }
    out
}

fn is_plain(name: &str) -> bool {
    let misread = |c: char| c.is_control() || c.is_whitespace() || ".[]\"\\".contains(c);
    !name.is_empty() && name.chars().nth(NAME).is_none() && !name.contains(misread)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_that_would_be_misread_are_quoted() {
        let path = |names: &[&'static str]| {
            let steps: alloc::vec::Vec<Step> = names.iter().map(|name| (*name).into()).collect();
            spell(&steps)
        };
        assert_eq!(path(&["a", "größe"]), "a.größe");
        assert_eq!(path(&["a.b", "c"]), "[\"a.b\"].c");
        assert_eq!(path(&["a", "", "\"\n"]), "a[\"\"][\"\\\"\\n\"]");
        assert_eq!(spell(&["a".into(), 3_usize.into(), "b".into()]), "a[3].b");
    }
}
