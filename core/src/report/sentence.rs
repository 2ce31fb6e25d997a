//! A message filled with its arguments.

use super::language::DecimalSign;
use super::teller::Teller;
use super::wording::{fill, named};
use crate::check::{Arg, Args};
use crate::money::{Money, Price};
use crate::quantity::{Amount, Kind, Rounding, Unit};
use alloc::string::{String, ToString};
use alloc::vec::Vec;

/// Keeps a number with its unit on one line.
pub(super) const GLUE: char = '\u{a0}';

/// Volumes are told to the thousandth, where the shop has no preference.
const PLACES: u8 = 3;

/// Arguments whose ids have their words under another name.
const ELSEWHERE: [(&str, &str); 1] = [("asked", "position")];

/// What one argument is.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Value {
    /// A quantity, and where it is rounded to.
    Amount(Amount, Rounding),
    /// A number that is written already, with what it is a number of.
    Written(String),
    /// A whole number, of which plural forms may depend.
    Whole(u64),
    /// An id, a name, or words.
    Text(String),
}

impl From<Amount> for Value {
    fn from(amount: Amount) -> Self {
        Value::Amount(amount, Rounding::HalfEven)
    }
}

impl From<&Amount> for Value {
    fn from(amount: &Amount) -> Self {
        (*amount).into()
    }
}

impl From<&Arg> for Value {
    fn from(arg: &Arg) -> Self {
        match arg {
            Arg::Amount(amount) => amount.into(),
            Arg::Money(money) => (*money).into(),
            Arg::Text(text) => text.into(),
            Arg::Whole(whole) => Value::Whole(whole.unsigned_abs()),
        }
    }
}

/// Values that are words, numbers with their sign, or whole numbers.
macro_rules! values {
    ($($Type:ty => $value:ident $make:expr;)*) => {
        $(impl From<$Type> for Value {
            fn from($value: $Type) -> Self {
                $make
            }
        })*
    };
}

values! {
    &str => text Value::Text(text.into());
    String => text Value::Text(text);
    &String => text Value::Text(text.clone());
    Money => money Value::Written(money.to_string());
    Price => price Value::Written(price.to_string());
    u64 => whole Value::Whole(whole);
    &u64 => whole Value::Whole(*whole);
    u32 => whole Value::Whole(whole.into());
    usize => whole Value::Whole(u64::try_from(whole).unwrap_or(u64::MAX));
}

/// The arguments of one message, by name.
#[derive(Debug, Clone, Default)]
pub(super) struct Given(Vec<(&'static str, Value)>);

impl Given {
    pub(super) const fn nothing() -> Self {
        Given(Vec::new())
    }

    /// An argument with its name. The ends of intervals (`from`, `to`, `shortage_from`, …) are rounded outward.
    pub(super) fn with(mut self, name: &'static str, value: impl Into<Value>) -> Self {
        let mut value = value.into();
        if let Value::Amount(_, rounding) = &mut value {
            match name.rsplit('_').next() {
                Some("from") => *rounding = Rounding::Floor,
                Some("to") => *rounding = Rounding::Ceiling,
                _ => {}
            }
        }
        self.0.push((name, value));
        self
    }

    pub(super) fn with_some(self, name: &'static str, value: Option<impl Into<Value>>) -> Self {
        match value {
            Some(value) => self.with(name, value),
            None => self,
        }
    }

    fn get(&self, name: &str) -> Option<&Value> {
        let (_, value) = self.0.iter().find(|(own, _)| *own == name)?;
        Some(value).filter(|value| **value != Value::Text(String::new()))
    }

    pub(super) fn count(&self, name: &str) -> Option<u64> {
        match self.get(name)? {
            Value::Whole(count) => Some(*count),
            _ => None,
        }
    }

    fn amounts(&self) -> impl Iterator<Item = (Amount, Rounding)> {
        self.0.iter().filter_map(|(_, value)| match value {
            Value::Amount(amount, rounding) => Some((*amount, *rounding)),
            _ => None,
        })
    }
}

impl From<&Args> for Given {
    fn from(args: &Args) -> Self {
        let all = args.iter();
        all.fold(Given::nothing(), |given, (name, arg)| given.with(name, arg))
    }
}

/// A volume of many digits to the thousandth.
fn shortened(amount: Amount, rounding: Rounding) -> Amount {
    if amount.kind() != Kind::Volume || amount.decimals() <= PLACES {
        return amount;
    }
    let short = amount.to(amount.unit(), PLACES, rounding).ok();
    // What is not nothing is not told as nothing; zeros at the end say nothing.
    short
        .filter(|short| !short.is_zero())
        .and_then(|short| short.to_exact(amount.unit()))
        .unwrap_or(amount)
}

/// A time as it is told: from two minutes on in whole minutes.
pub(super) fn duration(time: Amount, rounding: Rounding) -> Amount {
    let is_long = time.si() >= 120.0;
    let minutes = time.to(Unit::Minute, 0, rounding).ok();
    minutes.filter(|_| is_long).unwrap_or(time)
}

/// The same text beginning with a capital.
fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters
        .next()
        .map(|first| first.to_uppercase().chain(letters).collect())
        .unwrap_or_default()
}

impl Teller {
    /// What a message says with its arguments, numbers glued to their units. An id without a message says itself.
    pub(super) fn say(&self, part: &str, id: &str, given: &Given) -> String {
        self.worded(part, id, given)
            .unwrap_or_else(|| id.replace('_', " "))
    }

    /// The same as a sentence: it begins with a capital.
    pub(super) fn sentence(&self, part: &str, id: &str, given: &Given) -> String {
        capital(&self.say(part, id, given))
    }

    /// A message without arguments, such as a heading.
    pub(super) fn word(&self, part: &str, id: &str) -> String {
        self.say(part, id, &Given::nothing())
    }

    fn worded(&self, part: &str, id: &str, given: &Given) -> Option<String> {
        let count = |name: &str| given.count(name);
        let text = self.catalogue().text(part, id, count)?;
        Some(fill(text, &|argument| self.argument(argument, given)))
    }

    /// An argument as it is told: a quantity in the shop's unit, an id by its words.
    fn argument(&self, argument: &str, given: &Given) -> Option<String> {
        let (name, as_printed) = named(argument);
        Some(match given.get(name)? {
            Value::Amount(amount, _) if as_printed => self.printed(*amount, given),
            Value::Amount(amount, rounding) => {
                self.number(&self.rounded(*amount, *rounding, given).to_string())
            }
            Value::Written(number) => self.number(number),
            Value::Whole(whole) => whole.to_string(),
            Value::Text(id) => {
                let elsewhere = ELSEWHERE.iter().find(|(own, _)| *own == name);
                let part = elsewhere.map_or(name, |(_, part)| part);
                self.worded(part, id, given).unwrap_or_else(|| id.clone())
            }
        })
    }

    /// What was printed, and beside it what that is in the unit of the shop.
    fn printed(&self, amount: Amount, given: &Given) -> String {
        let printed = self.number(&shortened(amount, Rounding::HalfEven).to_string());
        let preferred = self.profile().preferred(amount.kind());
        if preferred.is_none_or(|preferred| preferred.unit == amount.unit()) {
            return printed;
        }
        let beside = self.rounded(amount, Rounding::HalfEven, given);
        alloc::format!("{printed} ({})", self.number(&beside.to_string()))
    }

    /// An amount in few digits, unless it would then read like nothing, or like another one that is told beside it.
    fn rounded(&self, exact: Amount, rounding: Rounding, given: &Given) -> Amount {
        let others = || given.amounts().filter(|(other, _)| *other != exact);
        let harms = |short: Amount| {
            let is_alike = |(other, rounding): (Amount, Rounding)| {
                let other = other.to(short.unit(), short.decimals(), rounding);
                other.is_ok_and(|other| other == short)
            };
            let lost = short.is_zero() && !exact.is_zero() && exact.kind() != Kind::Temperature;
            lost || others().any(is_alike)
        };
        if let Some(told) = self.profile().told(exact, rounding, &harms) {
            return told;
        }
        let short = shortened(exact, rounding);
        if others().any(|(other, _)| other == short) {
            exact
        } else {
            short
        }
    }

    /// A number with the shop's decimal sign, glued to its unit.
    pub(super) fn number(&self, written: &str) -> String {
        let glued = written.replace(' ', "\u{a0}");
        match self.catalogue().decimal_sign() {
            DecimalSign::Point => glued,
            sign => glued.replacen('.', sign.slug(), 1),
        }
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;

    fn plain(text: &str) -> String {
        text.replace(GLUE, " ")
    }

    fn filled(text: &str, given: &Given) -> String {
        let teller = Teller::english();
        plain(&fill(text, &|argument| teller.argument(argument, given)))
    }

    fn amount(text: &str) -> Amount {
        Amount::parse(text).unwrap()
    }

    #[test]
    fn volumes_that_differ_never_read_alike() {
        let told = |used, limit| {
            let given = Given::nothing().with("used", amount(used));
            filled("{used} of {limit}", &given.with("limit", amount(limit)))
        };
        assert_eq!(told("0.900238 L", "1.1 L"), "0.9 L of 1.1 L");
        assert_eq!(told("1.100001 L", "1.1 L"), "1.100001 L of 1.1 L");
        assert_eq!(told("0.000004 L", "1.1 L"), "0.000004 L of 1.1 L");
    }

    #[test]
    fn ends_of_intervals_are_told_outward() {
        let given = Given::nothing()
            .with("shortage_from", amount("1.024441 L"))
            .with("shortage_to", amount("1.061177 L"));
        let told = filled("{shortage_from}, {shortage_to}", &given);
        assert_eq!(told, "1.024 L, 1.062 L");
    }

    #[test]
    fn ids_are_told_in_words_and_acts_by_their_own_message() {
        let teller = Teller::english();
        let given = Given::nothing().with("grade", "slow_drip");
        assert_eq!(
            teller
                .sentence("reason", "short_look", &given)
                .split(',')
                .next(),
            Some("A slow drip came")
        );
        let given = Given::nothing()
            .with("unmet", "below_window")
            .with("reading", amount("31 °C"))
            .with("limit", amount("42 °C"));
        let told = plain(&teller.sentence("next", "mend", &given));
        assert_eq!(
            told,
            "Put right first: The fluid is at 31 °C; the sheet asks for 42 °C or more."
        );
    }

    #[test]
    fn what_a_host_typed_is_not_taken_for_a_quantity() {
        let given = Given::nothing().with("text", "1.50 l");
        assert_eq!(filled("{text}", &given), "1.50 l");
    }

    #[test]
    fn a_form_goes_with_its_count() {
        let told = |count: u64| {
            let given = Given::nothing().with("bytes", count);
            Teller::english().say("finding", "torn_line", &given)
        };
        assert!(told(1).contains("(1 byte)"));
        assert!(told(2).contains("(2 bytes)") && told(0).contains("(0 bytes)"));
    }
}
