//! What a check says beside its answer: findings, reasons and next acts, each by a stable id with its args.

use crate::money::Money;
use crate::procedure::Severity;
use crate::quantity::Amount;
use alloc::string::{String, ToString};
use alloc::vec::Vec;
use serde::{Serialize, Serializer};

/// One argument of a message: a quantity, a sum of money, a whole number, an id or a name. Never a sentence.
#[derive(Debug, Clone, PartialEq, Eq)]
#[non_exhaustive]
pub enum Arg {
    /// A quantity, written as its text.
    Amount(Amount),
    /// A sum of money, written as its text.
    Money(Money),
    /// An id, or a name of the pack's or host's.
    Text(String),
    /// A whole number.
    Whole(i64),
}

impl From<Amount> for Arg {
    fn from(amount: Amount) -> Self {
        Arg::Amount(amount)
    }
}

impl From<Money> for Arg {
    fn from(money: Money) -> Self {
        Arg::Money(money)
    }
}

impl From<&str> for Arg {
    fn from(text: &str) -> Self {
        Arg::Text(text.to_string())
    }
}

impl From<String> for Arg {
    fn from(text: String) -> Self {
        Arg::Text(text)
    }
}

impl From<u64> for Arg {
    fn from(value: u64) -> Self {
        Arg::Whole(i64::try_from(value).unwrap_or(i64::MAX))
    }
}

impl Serialize for Arg {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        match self {
            Arg::Amount(amount) => amount.serialize(serializer),
            Arg::Money(money) => money.serialize(serializer),
            Arg::Text(text) => serializer.serialize_str(text),
            Arg::Whole(value) => serializer.serialize_i64(*value),
        }
    }
}

/// The arguments of a message by name, in documented order.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Args(Vec<(&'static str, Arg)>);

impl Args {
    /// No arguments.
    #[must_use]
    pub const fn none() -> Self {
        Args(Vec::new())
    }

    pub(crate) fn with(mut self, name: &'static str, value: impl Into<Arg>) -> Self {
        self.0.push((name, value.into()));
        self
    }

    pub(crate) fn with_some(self, name: &'static str, value: Option<impl Into<Arg>>) -> Self {
        match value {
            Some(value) => self.with(name, value),
            None => self,
        }
    }

    /// The argument of this name.
    #[must_use]
    pub fn get(&self, name: &str) -> Option<&Arg> {
        self.0
            .iter()
            .find(|(own, _)| *own == name)
            .map(|(_, value)| value)
    }

    /// All arguments.
    pub fn iter(&self) -> impl Iterator<Item = (&'static str, &Arg)> {
        self.0.iter().map(|(name, value)| (*name, value))
    }
}

impl Serialize for Args {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_map(self.iter())
    }
}

/// Something in the journal that a person should know of.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct Finding {
    /// The stable name.
    pub id: &'static str,
    /// How serious it is.
    pub severity: Severity,
    /// The entries it is about, by `seq`.
    pub entries: Vec<u64>,
    /// The field of the entry or the sheet it is about.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub field: Option<&'static str>,
    /// The quantities and ids it speaks of.
    pub args: Args,
}

impl Finding {
    pub(crate) const fn new(id: &'static str, severity: Severity) -> Self {
        Finding {
            id,
            severity,
            entries: Vec::new(),
            field: None,
            args: Args::none(),
        }
    }

    pub(crate) fn of(mut self, entries: impl IntoIterator<Item = u64>) -> Self {
        self.entries.extend(entries);
        self
    }

    pub(crate) fn field(mut self, name: &'static str) -> Self {
        self.field = Some(name);
        self
    }

    pub(crate) fn with(mut self, name: &'static str, value: impl Into<Arg>) -> Self {
        self.args = self.args.with(name, value);
        self
    }
}

/// Why the answer is what it is, down to entries of the journal and fields of the sheet.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct Reason {
    /// The stable name.
    pub id: &'static str,
    /// The entries it rests on, by `seq`.
    pub entries: Vec<u64>,
    /// The fields of the sheet it rests on.
    pub fields: Vec<&'static str>,
    /// The quantities and ids it speaks of.
    pub args: Args,
}

impl Reason {
    pub(super) const fn new(id: &'static str) -> Self {
        Reason {
            id,
            entries: Vec::new(),
            fields: Vec::new(),
            args: Args::none(),
        }
    }

    pub(super) fn of(mut self, entries: impl IntoIterator<Item = u64>) -> Self {
        self.entries.extend(entries);
        self
    }

    pub(super) fn fields(mut self, names: impl IntoIterator<Item = &'static str>) -> Self {
        self.fields.extend(names);
        self
    }

    pub(super) fn with(mut self, name: &'static str, value: impl Into<Arg>) -> Self {
        self.args = self.args.with(name, value);
        self
    }

    pub(super) fn with_some(mut self, name: &'static str, value: Option<impl Into<Arg>>) -> Self {
        self.args = self.args.with_some(name, value);
        self
    }
}

/// One thing to do next.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct NextAct {
    /// The stable name.
    pub id: &'static str,
    /// The quantities and ids it speaks of.
    pub args: Args,
    /// How long to wait first (time).
    #[serde(skip_serializing_if = "Option::is_none")]
    pub wait: Option<Amount>,
    /// The cautions that go with it.
    pub cautions: Vec<&'static str>,
}

/// What stands in the way of an act.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct Unmet {
    /// The stable name.
    pub id: &'static str,
    /// How long it takes to mend itself, where that is known (time).
    #[serde(skip_serializing_if = "Option::is_none")]
    pub wait: Option<Amount>,
    /// The quantities and ids it speaks of.
    pub args: Args,
}

impl Unmet {
    pub(super) const fn new(id: &'static str) -> Self {
        Unmet {
            id,
            wait: None,
            args: Args::none(),
        }
    }

    pub(super) fn with(mut self, name: &'static str, value: impl Into<Arg>) -> Self {
        self.args = self.args.with(name, value);
        self
    }
}
