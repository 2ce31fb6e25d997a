//! What a field of a document reads as: a text, a word, a whole number, a date, a quantity.

use super::canonical::Ext;
use super::reader::Reader;
use super::tree::Node;
use crate::error::{Error, ErrorKind, Fault};
use crate::quantity::{Amount, Kind};
use alloc::borrow::ToOwned;
use alloc::format;
use alloc::string::{String, ToString};
use core::str::FromStr;
use jiff::civil::Date;

impl Reader<'_> {
    /// A text with something in it, as `&str`.
    pub(crate) fn str<'n>(&mut self, node: &'n Node<'_>) -> Option<&'n str> {
        let Node::Text(text) = node else {
            return self.wrong_type(node, "a text");
        };
        if text.trim().is_empty() {
            self.note(
                Fault::new(ErrorKind::OutOfRange)
                    .got(text)
                    .hint("write something, or leave the field out"),
            );
            return None;
        }
        Some(text)
    }

    /// A text with something in it.
    pub(crate) fn text(&mut self, node: &Node<'_>) -> Option<String> {
        self.str(node).map(str::to_owned)
    }

    /// The host's own JSON.
    pub(crate) fn ext(&mut self, node: &Node<'_>) -> Option<Ext> {
        match node {
            Node::Ext(json) => Ext::new(json),
            _ => self.wrong_type(node, "any JSON"),
        }
    }

    /// True or false.
    pub(crate) fn flag(&mut self, node: &Node<'_>) -> Option<bool> {
        match node {
            Node::Bool(value) => Some(*value),
            _ => self.wrong_type(node, "true or false"),
        }
    }

    /// A whole number of at least `least`, exact in every JSON reader.
    pub(crate) fn whole(&mut self, node: &Node<'_>, least: i64) -> Option<u64> {
        const MOST: i64 = 9_007_199_254_740_991;
        match node {
            Node::Integer(value) if (least..=MOST).contains(value) => u64::try_from(*value).ok(),
            Node::Integer(value) => {
                let allowed = [format!("{least} to {MOST}")];
                self.note(
                    Fault::new(ErrorKind::OutOfRange)
                        .got(&value.to_string())
                        .allowed(allowed),
                );
                None
            }
            _ => self.wrong_type(node, "a whole number"),
        }
    }

    /// One word of a closed list.
    pub(crate) fn word<T: Copy>(
        &mut self,
        node: &Node<'_>,
        words: &[(&'static str, T)],
    ) -> Option<T> {
        let text = self.str(node)?;
        let value = words
            .iter()
            .find(|(word, _)| *word == text)
            .map(|(_, value)| *value);
        if value.is_none() {
            let allowed = words.iter().map(|(word, _)| *word);
            self.note(
                Fault::new(ErrorKind::UnknownValue)
                    .got(text)
                    .allowed(allowed),
            );
        }
        value
    }

    /// A name made of lower-case letters, digits and underscores, from an open list.
    pub(crate) fn slug(&mut self, node: &Node<'_>) -> Option<String> {
        let text = self.str(node)?;
        if text
            .chars()
            .all(|c| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '_')
        {
            return Some(text.to_owned());
        }
        let hint = "write lower-case letters, digits and underscores, as in plug_identified";
        self.note(Fault::new(ErrorKind::UnknownValue).got(text).hint(hint));
        None
    }

    /// A quantity of the kind the field has.
    pub(crate) fn amount(&mut self, node: &Node<'_>, kind: Kind) -> Option<Amount> {
        self.amount_of(node, &[kind])
    }

    /// A quantity of any kind, the one its unit says.
    pub(crate) fn any_amount(&mut self, node: &Node<'_>) -> Option<Amount> {
        let text = self.quantity(node)?;
        let read = Amount::parse_as(text, None, self.measures);
        read.map_err(|error| {
            error
                .into_faults()
                .into_iter()
                .for_each(|fault| self.note(fault))
        })
        .ok()
    }

    /// The text of a quantity.
    fn quantity<'n>(&mut self, node: &'n Node<'_>) -> Option<&'n str> {
        if matches!(node, Node::Integer(_) | Node::Number) {
            let hint = "write the quantity as text with its unit, as in \"1.2 L\" or \"90 %\"";
            self.note(
                Fault::new(ErrorKind::WrongType)
                    .got("a number")
                    .allowed(["a text"])
                    .hint(hint),
            );
            return None;
        }
        self.str(node)
    }

    /// A quantity of one of several kinds, the one its unit says.
    pub(crate) fn amount_of(&mut self, node: &Node<'_>, kinds: &[Kind]) -> Option<Amount> {
        let text = self.quantity(node)?;
        let mut first = None;
        for kind in kinds {
            match Amount::parse_as(text, *kind, self.measures) {
                Ok(amount) => return Some(amount),
                Err(error) => first = first.or(Some(error)),
            }
        }
        for fault in first.map(Error::into_faults).unwrap_or_default() {
            self.note(fault);
        }
        None
    }

    /// A quantity of the kind the field has, not below zero.
    pub(crate) fn amount_from_zero(&mut self, node: &Node<'_>, kind: Kind) -> Option<Amount> {
        let amount = self.amount(node, kind)?;
        if amount.is_negative() {
            let hint = "this cannot be less than nothing";
            self.note(
                Fault::new(ErrorKind::OutOfRange)
                    .got(&amount.to_string())
                    .hint(hint),
            );
            return None;
        }
        Some(amount)
    }

    /// A calendar date, `2024-05-01`.
    pub(crate) fn date(&mut self, node: &Node<'_>) -> Option<Date> {
        let text = self.str(node)?;
        let parsed = (text.len() == 10)
            .then(|| Date::from_str(text).ok())
            .flatten();
        if parsed.is_none() {
            let fault = Fault::new(ErrorKind::NotATime)
                .got(text)
                .allowed(["YYYY-MM-DD, as 2024-05-01"]);
            self.note(fault);
        }
        parsed
    }
}
