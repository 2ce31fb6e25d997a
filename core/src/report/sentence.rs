//! A message filled with its arguments.

use super::catalogue::message;
use crate::check::{Arg, Args, Finding, NextAct, Reason, Unmet, Verdict};
use crate::procedure::LintFinding;
use crate::quantity::{Amount, Kind, Rounding, Unit};
use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;
use core::fmt::Display;

/// Keeps a number with its unit on one line.
pub(super) const GLUE: char = '\u{a0}';

/// Volumes are told to the thousandth.
const PLACES: u8 = 3;

/// The arguments of one message, by name.
#[derive(Debug, Clone, Default)]
pub(super) struct Given(Vec<(&'static str, String)>);

impl Given {
    pub(super) const fn nothing() -> Self {
        Given(Vec::new())
    }

    pub(super) fn with(mut self, name: &'static str, value: impl Display) -> Self {
        self.0.push((name, value.to_string()));
        self
    }

    pub(super) fn with_some(self, name: &'static str, value: Option<impl Display>) -> Self {
        match value {
            Some(value) => self.with(name, value),
            None => self,
        }
    }

    /// The value as it is told: an id by its words, a nested act by its own message, a volume in few digits.
    fn told(&self, name: &str) -> Option<String> {
        let value = self.raw(name)?;
        if name == "unmet"
            && let Some(text) = message("unmet", value)
        {
            return Some(first_letter(fill(text, self), char::to_lowercase));
        }
        if let Some(words) = message(name, value) {
            return Some(fill(words, self));
        }
        Some(self.brief(name, value).unwrap_or_else(|| value.into()))
    }

    fn raw(&self, name: &str) -> Option<&str> {
        let (_, value) = self.0.iter().find(|(own, _)| *own == name)?;
        Some(value.as_str()).filter(|value| !value.is_empty())
    }

    /// A quantity in one piece; a volume of many digits in fewer, unless it would then read like another one here.
    fn brief(&self, name: &str, value: &str) -> Option<String> {
        let exact = Amount::parse(value).ok()?;
        let short = shortened(name, exact);
        let collides = self.0.iter().any(|(_, other)| {
            Amount::parse(other).is_ok_and(|other| other != exact && other == short)
        });
        let told = if collides { exact } else { short };
        Some(told.to_string().replace(' ', "\u{a0}"))
    }
}

/// A volume to the thousandth: ends of intervals outward, others to the nearest.
fn shortened(name: &str, amount: Amount) -> Amount {
    if amount.kind() != Kind::Volume || amount.decimals() <= PLACES {
        return amount;
    }
    let rounding = match name.rsplit('_').next() {
        Some("from") => Rounding::Floor,
        Some("to") => Rounding::Ceiling,
        _ => Rounding::HalfEven,
    };
    let short = amount.to(amount.unit(), PLACES, rounding).ok();
    // What is not nothing is not told as nothing; zeros at the end say nothing.
    short
        .filter(|short| !short.is_zero())
        .and_then(|short| short.to_exact(amount.unit()))
        .unwrap_or(amount)
}

/// One end of an interval as it is told: to the thousandth, outward.
pub(super) fn end(amount: Amount, outward: Rounding) -> Amount {
    let name = if outward == Rounding::Floor {
        "from"
    } else {
        "to"
    };
    shortened(name, amount)
}

impl From<&Args> for Given {
    fn from(args: &Args) -> Self {
        let text = |arg: &Arg| match arg {
            Arg::Text(text) => text.clone(),
            Arg::Whole(value) => value.to_string(),
        };
        Given(args.iter().map(|(name, arg)| (name, text(arg))).collect())
    }
}

/// A text with its arguments in place.
fn fill(text: &str, given: &Given) -> String {
    let mut out = String::new();
    let mut rest = text;
    while let Some((before, after)) = rest.split_once('[') {
        let (optional, after) = after.split_once(']').unwrap_or((after, ""));
        out.push_str(&filled(before, given).0);
        if let (part, true) = filled(optional, given) {
            out.push_str(&part);
        }
        rest = after;
    }
    out.push_str(&filled(rest, given).0);
    out
}

/// A text without optional parts, and whether every argument was given.
fn filled(text: &str, given: &Given) -> (String, bool) {
    let (mut out, mut whole) = (String::new(), true);
    let mut rest = text;
    while let Some((before, after)) = rest.split_once('{') {
        let (name, after) = after.split_once('}').unwrap_or((after, ""));
        out.push_str(before);
        match given.told(name) {
            Some(value) => out.push_str(&value),
            None => {
                // An argument that is not given leaves its place visible.
                whole = false;
                out.push_str(&format!("{{{name}}}"));
            }
        }
        rest = after;
    }
    out.push_str(rest);
    (out, whole)
}

/// What a message says with its arguments, quantities glued together. An id without a message says itself.
pub(super) fn say(part: &str, id: &str, given: &Given) -> String {
    let Some(text) = message(part, id) else {
        return id.replace('_', " ");
    };
    fill(text, given)
}

/// The same as a sentence: it begins with a capital.
pub(super) fn sentence(part: &str, id: &str, given: &Given) -> String {
    first_letter(say(part, id, given), char::to_uppercase)
}

fn first_letter<C: Iterator<Item = char>>(text: String, case: impl Fn(char) -> C) -> String {
    let mut letters = text.chars();
    letters
        .next()
        .map(|first| case(first).chain(letters).collect())
        .unwrap_or_default()
}

fn plain(text: String) -> String {
    text.replace(GLUE, " ")
}

/// The verdict in one sentence.
///
/// ```
/// use brimline::{Verdict, report};
/// assert!(report::verdict(Verdict::Low).starts_with("Low: "));
/// ```
#[must_use]
pub fn verdict(verdict: Verdict) -> &'static str {
    message("answer", verdict.slug()).unwrap_or(verdict.slug())
}

/// A finding in one sentence, without its severity and entries.
#[must_use]
pub fn finding(finding: &Finding) -> String {
    plain(sentence("finding", finding.id, &Given::from(&finding.args)))
}

/// A reason in one sentence, without its entries.
#[must_use]
pub fn reason(reason: &Reason) -> String {
    plain(sentence("reason", reason.id, &Given::from(&reason.args)))
}

/// What stands in the way of an act, in one sentence, with the wait that mends it.
#[must_use]
pub fn unmet(unmet: &Unmet) -> String {
    plain(obstacle(unmet))
}

/// A next act in a sentence or two, with the wait before it. Its cautions are told by [`caution`]; they belong to it.
#[must_use]
pub fn next_act(act: &NextAct) -> String {
    plain(advice(act))
}

/// A defect of a sheet in one sentence, without its place.
#[must_use]
pub fn lint(finding: &LintFinding) -> String {
    let given = Given(
        finding
            .args
            .iter()
            .map(|(name, value)| (*name, value.clone()))
            .collect(),
    );
    plain(sentence("lint", finding.id, &given))
}

/// A caution of the library in full; `None` for a sheet's own, whose text stands on the sheet.
///
/// ```
/// assert!(brimline::report::caution("hot_fluid").is_some());
/// ```
#[must_use]
pub fn caution(id: &str) -> Option<&'static str> {
    message("caution", id)
}

pub(super) fn obstacle(unmet: &Unmet) -> String {
    let said = sentence("unmet", unmet.id, &Given::from(&unmet.args));
    waited(said, unmet.wait)
}

pub(super) fn advice(act: &NextAct) -> String {
    let said = sentence("next", act.id, &Given::from(&act.args));
    waited(said, act.wait)
}

/// A time as it is told: from two minutes on in whole minutes.
pub(super) fn duration(time: Amount, rounding: Rounding) -> Amount {
    let is_long = time.si() >= 120.0;
    let minutes = time.to(Unit::Minute, 0, rounding).ok();
    minutes.filter(|_| is_long).unwrap_or(time)
}

fn waited(mut said: String, wait: Option<Amount>) -> String {
    if let Some(wait) = wait {
        said.push(' ');
        let wait = duration(wait, Rounding::Ceiling);
        said.push_str(&say("phrase", "wait", &Given::nothing().with("wait", wait)));
    }
    said
}

#[cfg(test)]
mod tests {
    use super::*;

    fn volumes(used: &str, limit: &str) -> Given {
        Given::nothing().with("used", used).with("limit", limit)
    }

    #[test]
    fn an_optional_part_is_told_only_whole() {
        let text = "Pour in[ {volume}][ of {fluid}].";
        assert_eq!(fill(text, &Given::nothing()), "Pour in.");
        let given = Given::nothing().with("fluid", "sedge-thin");
        assert_eq!(fill(text, &given), "Pour in of sedge-thin.");
        let empty = Given::nothing().with("fluid", "");
        assert_eq!(fill(text, &empty), "Pour in.");
    }

    #[test]
    fn volumes_that_differ_never_read_alike() {
        let text = "{used} of {limit}";
        let told = |used, limit| plain(fill(text, &volumes(used, limit)));
        assert_eq!(told("0.900238 L", "1.1 L"), "0.9 L of 1.1 L");
        assert_eq!(told("1.100001 L", "1.1 L"), "1.100001 L of 1.1 L");
        assert_eq!(told("0.000004 L", "1.1 L"), "0.000004 L of 1.1 L");
    }

    #[test]
    fn ends_of_intervals_are_told_outward() {
        let given = Given::nothing()
            .with("shortage_from", "1.024441 L")
            .with("shortage_to", "1.061177 L");
        let told = fill("{shortage_from}, {shortage_to}", &given);
        assert_eq!(plain(told), "1.024 L, 1.062 L");
    }

    #[test]
    fn ids_are_told_in_words_and_acts_by_their_own_message() {
        let given = Given::nothing().with("grade", "slow_drip");
        assert_eq!(
            sentence("reason", "short_look", &given).split(',').next(),
            Some("A slow drip came")
        );
        let given = Given::nothing()
            .with("unmet", "below_window")
            .with("reading", "31 °C")
            .with("limit", "42 °C");
        let told = plain(sentence("next", "mend", &given));
        assert_eq!(
            told,
            "Put right first: the fluid is at 31 °C; the sheet asks for 42 °C or more."
        );
    }
}
