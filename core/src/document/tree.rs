//! A document as it stands: every member in order with its place, the second of two equal keys included.

use super::path::Step;
use alloc::borrow::Cow;
use alloc::vec::Vec;

/// One value and where it begins, in bytes of the whole text.
#[derive(Debug, Clone)]
pub(crate) struct Node<'a> {
    pub(super) at: usize,
    pub(crate) value: Value<'a>,
}

/// One JSON value, borrowing its texts from the document where they hold no escapes.
#[derive(Debug, Clone)]
pub(crate) enum Value<'a> {
    Null,
    Bool(bool),
    Integer(i64),
    /// A number that is not a whole one, or too large for one.
    Number,
    Text(Cow<'a, str>),
    List(Vec<Node<'a>>),
    Object(Vec<(Cow<'a, str>, Node<'a>)>),
    /// What stands under a key `ext`: the host's, not read.
    Ext(&'a str),
    /// A value that passed a limit; its fault is noted already.
    Refused,
}

impl<'a> Node<'a> {
    /// What kind of JSON value this is, in words for messages.
    pub(super) const fn type_name(&self) -> &'static str {
        match self.value {
            Value::Null => "null",
            Value::Bool(_) => "true or false",
            Value::Integer(_) | Value::Number => "a number",
            Value::Text(_) => "a text",
            Value::List(_) => "a list",
            Value::Object(_) => "an object",
            Value::Ext(_) => "any JSON",
            Value::Refused => "nothing",
        }
    }

    /// The member of this name, the first of two.
    pub(crate) fn member(&self, name: &str) -> Option<&Node<'a>> {
        let Value::Object(members) = &self.value else {
            return None;
        };
        members
            .iter()
            .find(|(key, _)| key == name)
            .map(|(_, node)| node)
    }

    /// The text, if it is one.
    pub(crate) fn text(&self) -> Option<&str> {
        match &self.value {
            Value::Text(text) => Some(text),
            _ => None,
        }
    }

    /// The whole number, if it is one that counts something.
    pub(crate) fn whole(&self) -> Option<u64> {
        match self.value {
            Value::Integer(value) => u64::try_from(value).ok(),
            _ => None,
        }
    }

    /// The items, if it is a list.
    pub(crate) fn items(&self) -> &[Node<'a>] {
        match &self.value {
            Value::List(items) => items,
            _ => &[],
        }
    }

    /// The value one step further in.
    pub(super) fn child(&self, step: &Step<'_>) -> Option<&Node<'a>> {
        match (step, &self.value) {
            (Step::Key(name), _) => self.member(name),
            (Step::Index(index), Value::List(items)) => items.get(*index),
            (Step::Index(_), _) => None,
        }
    }
}
