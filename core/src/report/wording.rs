//! The text of a message as its author writes it: arguments in braces, and parts in square brackets that are told
//! only if all they name is given.

use crate::error::{ErrorKind, Fault};
use alloc::collections::BTreeSet;
use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

/// Stands behind the name of an argument that is told as it was printed, with its conversion beside it.
const PRINTED: char = '!';

/// One piece of a text.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Piece<'t> {
    Plain(&'t str),
    /// What stands between braces.
    Argument(&'t str),
    Open,
    Close,
    /// A brace without its partner.
    Amiss,
}

/// The name of an argument, and whether it is told as it was printed.
pub(super) fn named(argument: &str) -> (&str, bool) {
    match argument.strip_suffix(PRINTED) {
        Some(name) => (name, true),
        None => (argument, false),
    }
}

/// A text piece by piece.
pub(super) fn pieces(text: &str) -> impl Iterator<Item = Piece<'_>> {
    let mut rest = text;
    core::iter::from_fn(move || {
        let first = rest.chars().next()?;
        let after = rest.get(1..).unwrap_or_default();
        let (piece, left) = match first {
            '[' => (Piece::Open, after),
            ']' => (Piece::Close, after),
            '}' => (Piece::Amiss, after),
            '{' => match after.split_once('}') {
                Some((name, left)) if !name.contains(['{', '[', ']']) => {
                    (Piece::Argument(name), left)
                }
                _ => (Piece::Amiss, after),
            },
            _ => {
                let end = rest.find(['[', ']', '{', '}']).unwrap_or(rest.len());
                let (plain, left) = rest.split_at_checked(end).unwrap_or((rest, ""));
                (Piece::Plain(plain), left)
            }
        };
        rest = left;
        Some(piece)
    })
}

/// Which arguments a text names: always, and part by part in brackets.
#[derive(Debug, Default)]
struct Outline<'t> {
    always: BTreeSet<&'t str>,
    parts: Vec<BTreeSet<&'t str>>,
    balanced: bool,
}

fn outline(text: &str) -> Outline<'_> {
    let mut outline = Outline {
        balanced: true,
        ..Outline::default()
    };
    let mut part: Option<BTreeSet<&str>> = None;
    for piece in pieces(text) {
        match (piece, &mut part) {
            (Piece::Plain(_), _) => {}
            (Piece::Argument(name), Some(part)) => {
                part.insert(name);
            }
            (Piece::Argument(name), None) => {
                outline.always.insert(name);
            }
            (Piece::Open, None) => part = Some(BTreeSet::new()),
            (Piece::Close, Some(_)) => outline.parts.extend(part.take()),
            (Piece::Open, Some(_)) | (Piece::Close, None) | (Piece::Amiss, _) => {
                outline.balanced = false;
            }
        }
    }
    outline.balanced &= part.is_none();
    outline
}

/// What is wrong with a text that stands for another, by the argument it is about; `counted` may be named besides.
///
/// Whatever the other tells, this one tells: an argument that is always given stands outside of brackets, one that is
/// not stands inside, and no bracket asks for more than one of the other's does.
pub(super) fn faults(
    other: &str,
    text: &str,
    counted: Option<&'static str>,
) -> Vec<(Option<String>, Fault)> {
    let (asked, own) = (outline(other), outline(text));
    let mut found = Vec::new();
    if !own.balanced {
        let fault = Fault::new(ErrorKind::UnknownValue).got(text);
        let hint = "close every brace and bracket, and put no bracket inside another";
        found.push((None, fault.hint(hint)));
        return found;
    }
    let is_always = |name: &str| asked.always.contains(name) || counted == Some(name);
    let is_part = |name: &str| asked.parts.iter().any(|part| part.contains(name));
    let names = asked.always.iter().chain(asked.parts.iter().flatten());
    let allowed: BTreeSet<&str> = names.copied().chain(counted).collect();
    let mentioned: BTreeSet<&str> = own
        .always
        .iter()
        .chain(own.parts.iter().flatten())
        .copied()
        .collect();
    let braced = |name: &str| format!("{{{name}}}");
    for name in mentioned.iter().filter(|name| !allowed.contains(*name)) {
        let fault = Fault::new(ErrorKind::UnknownValue).got(&braced(name));
        found.push((None, fault.allowed(allowed.iter().map(|name| braced(name)))));
    }
    for name in allowed.iter().filter(|name| {
        let loose = own.always.contains(*name);
        let told = loose || is_part(name) && own.parts.iter().any(|part| part.contains(*name));
        !told && (asked.always.contains(*name) || is_part(name))
    }) {
        let hint = if is_always(name) {
            "name it outside of square brackets: what it tells must not be lost"
        } else {
            "name it inside square brackets: what it tells must not be lost"
        };
        let fault = Fault::new(ErrorKind::MissingField).hint(hint);
        found.push((Some(braced(name)), fault));
    }
    for name in own
        .always
        .iter()
        .filter(|name| !is_always(name) && is_part(name))
    {
        let fault = Fault::new(ErrorKind::UnknownValue).got(&braced(name));
        let hint = "it is not always given: put it and the words around it into square brackets";
        found.push((None, fault.hint(hint)));
    }
    for part in &own.parts {
        let optional: BTreeSet<&str> = part
            .iter()
            .copied()
            .filter(|name| !is_always(name) && is_part(name))
            .collect();
        let is_apart = !asked.parts.iter().any(|part| optional.is_subset(part));
        if optional.len() > 1 && is_apart {
            let listed: Vec<String> = optional.iter().map(|name| braced(name)).collect();
            let fault = Fault::new(ErrorKind::Conflict).got(&listed.join(" "));
            let hint = "one may be given without the other: give each its own square brackets";
            found.push((None, fault.hint(hint)));
        }
    }
    found
}

/// A text with its arguments in place. Where one that must be given is not, its place stays visible.
pub(super) fn fill(text: &str, told: &dyn Fn(&str) -> Option<String>) -> String {
    let mut out = String::new();
    let mut part: Option<(usize, bool)> = None;
    for piece in pieces(text) {
        match piece {
            Piece::Plain(plain) => out.push_str(plain),
            Piece::Argument(argument) => match (told(argument), &mut part) {
                (Some(value), _) => out.push_str(&value),
                (None, Some((_, whole))) => *whole = false,
                (None, None) => out.push_str(&format!("{{{argument}}}")),
            },
            Piece::Open => part = Some((out.len(), true)),
            Piece::Close => {
                if let Some((start, false)) = part.take() {
                    out.truncate(start);
                }
            }
            Piece::Amiss => {}
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;
    use alloc::string::ToString;

    fn filled(text: &str, given: &[(&str, &str)]) -> String {
        let told = |name: &str| {
            let found = given.iter().find(|(own, _)| *own == name);
            found.map(|(_, value)| value.to_string())
        };
        fill(text, &told)
    }

    #[test]
    fn an_optional_part_is_told_only_whole() {
        let text = "Pour in[ {volume}][ of {fluid}].";
        assert_eq!(filled(text, &[]), "Pour in.");
        assert_eq!(
            filled(text, &[("fluid", "sedge-thin")]),
            "Pour in of sedge-thin."
        );
        assert_eq!(filled("[{a} and {b}]!", &[("a", "x")]), "!");
        assert_eq!(filled("{a}", &[]), "{a}");
    }

    #[test]
    fn a_text_tells_all_that_another_tells() {
        let english = "{a}[ b {b}][ c {c} with {d}].";
        let amiss = |text| {
            let found = faults(english, text, None);
            let told = found.into_iter().map(|(at, fault)| {
                let got = fault.got.unwrap_or_default();
                format!("{} {}{got}", fault.kind.slug(), at.unwrap_or_default())
            });
            told.collect::<Vec<_>>()
        };
        assert!(amiss("«[{c}, {d}][{b}] {a}»").is_empty());
        assert!(amiss("{a}[{a} {b}][{c}][{d}]").is_empty());
        assert_eq!(amiss("[b {b}][ c {c} with {d}]."), ["missing_field {a}"]);
        assert_eq!(amiss("[{a}][ {b}][{c} {d}]"), ["missing_field {a}"]);
        assert_eq!(amiss("{a}[{c} {d}]"), ["missing_field {b}"]);
        assert_eq!(amiss("{a}[{b}][{c} {d}]{x}"), ["unknown_value {x}"]);
        assert_eq!(amiss("{a}{b}[{c} {d}]"), ["unknown_value {b}"]);
        assert_eq!(amiss("{a}[{b} {c}][{d}]"), ["conflict {b} {c}"]);
        for text in [
            "{a}[{b}][{c} {d}",
            "{a}[{b}[{c} {d}]]",
            "{a}[{b}][{c} {d}]]",
            "{a",
            "a}",
            "{a[}]",
            "{a{b}}",
        ] {
            let kept = format!("unknown_value {text}");
            assert_eq!(amiss(text), [kept]);
        }
    }

    #[test]
    fn a_count_may_be_named_or_not() {
        let about = |text| faults("mind {numbers}", text, Some("count")).len();
        assert_eq!(about("mind {numbers}"), 0);
        assert_eq!(about("mind all {count}: {numbers}"), 0);
        assert_eq!(about("mind {count}"), 1);
    }
}
