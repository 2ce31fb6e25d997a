//! A document as it stands: every member in order, the second of two equal keys included.

use crate::error::Fault;
use alloc::borrow::Cow;
use alloc::boxed::Box;

/// One JSON value, borrowing its texts from the document where they hold no escapes.
#[derive(Debug, Clone)]
pub(crate) enum Node<'a> {
    Null,
    Bool(bool),
    Integer(i64),
    /// A number that is not a whole one, or too large for one.
    Number,
    Text(Cow<'a, str>),
    List(Box<[Node<'a>]>),
    Object(Box<[(Cow<'a, str>, Node<'a>)]>),
    /// What stands under a key `ext`, which is the host's and not read, or is to be read by itself.
    Ext(&'a str),
    /// A value that passed a limit and was not kept.
    Refused(Box<Fault>),
}

impl<'a> Node<'a> {
    /// What kind of JSON value this is, in words for messages.
    pub(super) const fn type_name(&self) -> &'static str {
        match self {
            Node::Null => "null",
            Node::Bool(_) => "true or false",
            Node::Integer(_) | Node::Number => "a number",
            Node::Text(_) => "a text",
            Node::List(_) => "a list",
            Node::Object(_) => "an object",
            Node::Ext(_) => "any JSON",
            Node::Refused(_) => "a value over a limit",
        }
    }

    /// The member of this name, the first of two.
    pub(crate) fn member(&self, name: &str) -> Option<&Node<'a>> {
        let Node::Object(members) = self else {
            return None;
        };
        members
            .iter()
            .find(|(key, _)| key == name)
            .map(|(_, node)| node)
    }

    /// The text, if it is one.
    pub(crate) fn text(&self) -> Option<&str> {
        match self {
            Node::Text(text) => Some(text),
            _ => None,
        }
    }

    /// The whole number, if it is one that counts something.
    pub(crate) fn whole(&self) -> Option<u64> {
        match self {
            Node::Integer(value) => u64::try_from(*value).ok(),
            _ => None,
        }
    }

    /// The items, if it is a list.
    pub(crate) fn items(&self) -> &[Node<'a>] {
        match self {
            Node::List(items) => items,
            _ => &[],
        }
    }
}
