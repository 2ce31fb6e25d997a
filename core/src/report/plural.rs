//! Which form of a text goes with a count: the plural categories of a language, by rules that are data.

use crate::document::{Node, Reader};
use crate::error::{ErrorKind, Fault};
use crate::word::words;
use alloc::borrow::ToOwned;
use alloc::string::String;
use alloc::vec::Vec;
use serde::{Serialize, Serializer};

words! {
    /// A plural category, as the Unicode CLDR names them.
    pub enum Plural {
        /// As after 0 in some languages.
        Zero = "zero",
        /// As after 1 in most languages that count.
        One = "one",
        /// As after 2 in some.
        Two = "two",
        /// As after 3 in many Slavic languages.
        Few = "few",
        /// As after 11 in Arabic.
        Many = "many",
        /// Every count for which no rule holds; every language has it.
        Other = "other",
    }
}

/// One comparison of a rule: `n % 10 = 2..4`.
#[derive(Debug, Clone, PartialEq, Eq)]
struct Relation {
    /// What is compared: the count, or the nothing behind the decimal sign of a whole number.
    counts: bool,
    modulus: Option<u64>,
    equal: bool,
    ranges: Vec<(u64, u64)>,
}

impl Relation {
    fn holds(&self, count: u64) -> bool {
        let value = if self.counts { count } else { 0 };
        let value = match self.modulus {
            Some(modulus) => value.checked_rem(modulus).unwrap_or(value),
            None => value,
        };
        let within = self
            .ranges
            .iter()
            .any(|(from, to)| (*from..=*to).contains(&value));
        within == self.equal
    }

    fn read(text: &str) -> Option<Self> {
        let (left, equal, right) = match text.split_once("!=") {
            Some((left, right)) => (left, false, right),
            None => text
                .split_once('=')
                .map(|(left, right)| (left, true, right))?,
        };
        let (operand, modulus) = match left.split_once('%') {
            Some((operand, modulus)) => (operand, Some(whole(modulus)?)),
            None => (left, None),
        };
        let counts = match operand.trim() {
            "n" | "i" => true,
            "v" | "w" | "f" | "t" | "c" | "e" => false,
            _ => return None,
        };
        let range = |text: &str| match text.split_once("..") {
            Some((from, to)) => Some((whole(from)?, whole(to)?)),
            None => whole(text).map(|value| (value, value)),
        };
        let ranges: Option<Vec<_>> = right.split(',').map(range).collect();
        Some(Relation {
            counts,
            modulus: modulus.filter(|modulus| *modulus > 0),
            equal,
            ranges: ranges?,
        })
    }
}

fn whole(text: &str) -> Option<u64> {
    let text = text.trim();
    let digits = text.bytes().all(|letter| letter.is_ascii_digit());
    text.parse().ok().filter(|_| digits)
}

/// When a category holds, as the CLDR writes it: `n % 10 = 2..4 and n % 100 != 12..14`.
///
/// Syntax: Unicode Technical Standard 35, part 3, "Language Plural Rules". Counts here are whole, so the operands
/// of what stands behind the decimal sign (`v w f t c e`) are 0.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Rule {
    text: String,
    /// One of these must hold, with all that it holds.
    any: Vec<Vec<Relation>>,
}

impl Rule {
    fn read(text: &str) -> Option<Self> {
        let all = |text: &str| text.split(" and ").map(Relation::read).collect();
        let any: Option<Vec<Vec<Relation>>> = text.split(" or ").map(all).collect();
        Some(Rule {
            text: text.to_owned(),
            any: any?,
        })
    }

    fn holds(&self, count: u64) -> bool {
        self.any
            .iter()
            .any(|all| all.iter().all(|relation| relation.holds(count)))
    }
}

/// The categories of one language and when each holds; where none does, it is `other`.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub(super) struct Plurals(Vec<(Plural, Rule)>);

impl Plurals {
    /// English: one, and every other count.
    pub(super) fn english() -> Self {
        let one = Rule::read("n = 1").map(|rule| (Plural::One, rule));
        Plurals(one.into_iter().collect())
    }

    pub(super) fn of(&self, count: u64) -> Plural {
        let held = self.0.iter().find(|(_, rule)| rule.holds(count));
        held.map_or(Plural::Other, |(plural, _)| *plural)
    }

    /// The words of every category, `other` last.
    pub(super) fn slugs(&self) -> Vec<&'static str> {
        let ruled = self.0.iter().map(|(plural, _)| plural.slug());
        ruled.chain([Plural::Other.slug()]).collect()
    }

    pub(super) const fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    pub(super) fn read(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Self> {
        let ruled = Plural::SLUGS
            .split_last()
            .map_or(Plural::SLUGS, |(_, ruled)| ruled);
        let object = reader.object(node, ruled)?;
        let mut read = Vec::new();
        for (slug, plural) in Plural::WORDS {
            if let Some(rule) = reader.optional(&object, slug, rule) {
                read.push((*plural, rule));
            }
        }
        Some(Plurals(read))
    }
}

fn rule(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Rule> {
    let text = reader.str(node)?;
    let rule = Rule::read(text);
    if rule.is_none() {
        let fault = Fault::new(ErrorKind::UnknownValue).got(text);
        reader.note(fault.hint(
            "write a plural rule as the CLDR does: n = 1, or n % 10 = 2..4 and n % 100 != 12..14",
        ));
    }
    rule
}

impl Serialize for Plurals {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_map(
            self.0
                .iter()
                .map(|(plural, rule)| (plural.slug(), &rule.text)),
        )
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;

    fn told(rules: &[(Plural, &str)], counts: &[u64]) -> Vec<&'static str> {
        let read = rules
            .iter()
            .map(|(plural, text)| (*plural, Rule::read(text).unwrap()));
        let plurals = Plurals(read.collect());
        counts.iter().map(|n| plurals.of(*n).slug()).collect()
    }

    #[test]
    fn counts_fall_into_the_categories_of_their_language() {
        // Rules and samples of CLDR 44 for Polish, Slovenian and Arabic, from memory.
        let polish = [
            (Plural::One, "i = 1 and v = 0"),
            (Plural::Few, "v = 0 and i % 10 = 2..4 and i % 100 != 12..14"),
            (
                Plural::Many,
                "v = 0 and i != 1 and i % 10 = 0..1 or v = 0 and i % 10 = 5..9 or v = 0 and i % 100 = 12..14",
            ),
        ];
        assert_eq!(
            told(&polish, &[1, 2, 4, 5, 12, 21, 22, 112, 0]),
            [
                "one", "few", "few", "many", "many", "many", "few", "many", "many"
            ]
        );
        let slovenian = [
            (Plural::One, "v = 0 and i % 100 = 1"),
            (Plural::Two, "v = 0 and i % 100 = 2"),
            (Plural::Few, "v = 0 and i % 100 = 3..4 or v != 0"),
        ];
        assert_eq!(
            told(&slovenian, &[1, 2, 3, 5, 101, 104]),
            ["one", "two", "few", "other", "one", "few"]
        );
        let arabic = [
            (Plural::Zero, "n = 0"),
            (Plural::Few, "n % 100 = 3..10"),
            (Plural::Many, "n % 100 = 11..99"),
        ];
        assert_eq!(
            told(&arabic, &[0, 3, 11, 100, 103]),
            ["zero", "few", "many", "other", "few"]
        );
    }

    #[test]
    fn what_is_no_rule_is_not_read() {
        for text in [
            "",
            "one",
            "n",
            "n = ",
            "n = a",
            "x = 1",
            "n = 1 and",
            "n = 1 or ",
            "n % a = 1",
            "n = 1..",
            "n = +1",
            "n = 1 @integer 1",
        ] {
            assert!(Rule::read(text).is_none(), "{text:?}");
        }
        // A division by nothing never panics and compares the count itself.
        assert!(Rule::read("n % 0 = 7").unwrap().holds(7));
    }
}
