//! Reading the members of a document, keeping every fault with its path.

use super::canonical::Ext;
use super::limits::{Limits, exceeded};
use super::tree::{Node, locate, position};
use crate::error::{Error, ErrorKind, Fault};
use crate::quantity::{Amount, Kind, Measures};
use alloc::borrow::{Cow, ToOwned};
use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;
use core::fmt::Write;
use core::str::FromStr;
use jiff::civil::Date;

/// One step into a document.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) enum Step {
    Key(Cow<'static, str>),
    Index(usize),
}

impl Step {
    pub(super) fn key(name: &str) -> Self {
        Step::Key(Cow::Owned(name.to_owned()))
    }
}

/// The members of one object whose fields are known.
pub(crate) struct Object<'n, 'a> {
    members: &'n [(Cow<'a, str>, Node<'a>)],
}

impl<'n, 'a> Object<'n, 'a> {
    /// The value of a member, if it stands there.
    pub(crate) fn get(&self, name: &str) -> Option<&'n Node<'a>> {
        self.members
            .iter()
            .find(|(key, _)| key == name)
            .map(|(_, value)| value)
    }

    /// The text of a member, without saying anything of a fault in it.
    pub(crate) fn peek_text(&self, name: &str) -> Option<&str> {
        match self.get(name) {
            Some(Node::Text(text)) => Some(text),
            _ => None,
        }
    }
}

/// Walks a document, noting each fault where it stands and going on.
///
/// Every `read_…` answers `None` after noting a fault, so the caller can finish the rest of the document
/// before giving up.
pub(crate) struct Reader<'l> {
    limits: &'l Limits,
    /// What bare `qt`, `pt`, `gal` and `fl oz` mean, where the document says so.
    pub(crate) measures: Option<Measures>,
    path: Vec<Step>,
    found: Vec<(Fault, Vec<Step>)>,
    left_out: usize,
}

impl<'l> Reader<'l> {
    pub(crate) fn new(limits: &'l Limits) -> Self {
        Reader {
            limits,
            measures: None,
            path: Vec::new(),
            found: Vec::new(),
            left_out: 0,
        }
    }

    /// Parses a text to its tree; a fault in the JSON itself is noted at the present path.
    pub(crate) fn parse<'a>(&mut self, text: &'a str) -> Option<Node<'a>> {
        Node::parse(text, self.limits)
            .map_err(|fault| self.note(fault))
            .ok()
    }

    /// Notes a fault at the present path.
    pub(crate) fn note(&mut self, fault: Fault) {
        if self.found.len() < self.limits.faults() {
            self.found.push((fault, self.path.clone()));
        } else {
            self.left_out = self.left_out.saturating_add(1);
        }
    }

    /// Notes a fault one step further in.
    pub(crate) fn note_at(&mut self, step: impl Into<Cow<'static, str>>, fault: Fault) {
        self.inside(Step::Key(step.into()), |reader| reader.note(fault));
    }

    /// Does something one step further in.
    pub(crate) fn inside<T>(&mut self, step: Step, act: impl FnOnce(&mut Self) -> T) -> T {
        self.path.push(step);
        let answer = act(self);
        self.path.pop();
        answer
    }

    /// All faults with their places in `text`, or nothing if there are none. A document in one piece has one
    /// part with no path; JSON Lines have a part for each line.
    pub(crate) fn finish(self, text: &str, parts: &[(Vec<Step>, &str)]) -> Result<(), Error> {
        if self.found.is_empty() {
            return Ok(());
        }
        let mut offsets: Vec<Option<usize>> = self.found.iter().map(|_| None).collect();
        for (prefix, part) in parts {
            let wanted: Vec<(usize, &[Step])> = self
                .found
                .iter()
                .enumerate()
                .filter_map(|(index, (_, path))| {
                    Some((index, path.strip_prefix(prefix.as_slice())?))
                })
                .collect();
            if !wanted.is_empty() {
                locate(text, part, &wanted, &mut |index, offset| {
                    if let Some(place) = offsets.get_mut(index) {
                        *place = Some(offset);
                    }
                });
            }
        }
        let left_out = self.left_out;
        let limit = self.limits.faults();
        let mut faults: Vec<Fault> = Vec::with_capacity(self.found.len());
        for ((mut fault, path), offset) in self.found.into_iter().zip(offsets) {
            // A syntax fault inside one line of JSON Lines was told from the start of that line.
            let within = fault.position.map_or(0, |place| place.offset as usize);
            if let Some(offset) = offset.or(fault.position.map(|_| 0)) {
                fault.position = Some(position(text, offset.saturating_add(within)));
            }
            fault.path = spell(&path);
            faults.push(fault);
        }
        if left_out > 0 {
            faults.push(exceeded("faults", limit, limit.saturating_add(left_out)));
        }
        Error::from_faults(faults).map_or(Ok(()), Err)
    }

    fn wrong_type<T>(&mut self, node: &Node<'_>, expected: &'static str) -> Option<T> {
        let mut fault = Fault::new(ErrorKind::WrongType)
            .got(node.type_name())
            .allowed([expected]);
        if matches!(node, Node::Null) {
            fault = fault.hint("leave the field out instead of writing null");
        }
        self.note(fault);
        None
    }

    /// An object that may hold these members only; unknown and repeated ones are noted.
    pub(crate) fn object<'n, 'a>(
        &mut self,
        node: &'n Node<'a>,
        fields: &'static [&'static str],
    ) -> Option<Object<'n, 'a>> {
        let Node::Object(members) = node else {
            return self.wrong_type(node, "an object");
        };
        for (index, (key, _)) in members.iter().enumerate() {
            if !fields.contains(&key.as_ref()) {
                let fault = Fault::new(ErrorKind::UnknownField)
                    .got(key)
                    .allowed(fields.iter().copied())
                    .hint(
                        "correct the name, or put what is yours under ext where the format has it",
                    );
                self.note_at(key.to_string(), fault);
            }
            if members
                .iter()
                .take(index)
                .any(|(earlier, _)| earlier == key)
            {
                let fault = Fault::new(ErrorKind::DuplicateField)
                    .got(key)
                    .hint("keep one of them");
                self.note_at(key.to_string(), fault);
            }
        }
        Some(Object { members })
    }

    /// A member that must be there.
    pub(crate) fn required<'n, 'a, T>(
        &mut self,
        object: &Object<'n, 'a>,
        name: &'static str,
        read: impl FnOnce(&mut Self, &'n Node<'a>) -> Option<T>,
    ) -> Option<T> {
        match object.get(name) {
            Some(node) => self.inside(Step::Key(name.into()), |reader| read(reader, node)),
            None => {
                self.note_at(name, Fault::new(ErrorKind::MissingField));
                None
            }
        }
    }

    /// A member that may be absent. A faulty one answers `None` as well, after its fault is noted.
    pub(crate) fn optional<'n, 'a, T>(
        &mut self,
        object: &Object<'n, 'a>,
        name: &'static str,
        read: impl FnOnce(&mut Self, &'n Node<'a>) -> Option<T>,
    ) -> Option<T> {
        let node = object.get(name)?;
        self.inside(Step::Key(name.into()), |reader| read(reader, node))
    }

    /// The items of a list; those with faults are noted and left out.
    pub(crate) fn list<'n, 'a, T>(
        &mut self,
        node: &'n Node<'a>,
        mut read: impl FnMut(&mut Self, &'n Node<'a>) -> Option<T>,
    ) -> Option<Vec<T>> {
        let Node::List(items) = node else {
            return self.wrong_type(node, "a list");
        };
        let read_all = items.iter().enumerate().filter_map(|(index, item)| {
            self.inside(Step::Index(index), |reader| read(reader, item))
        });
        Some(read_all.collect())
    }

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
            other => self.wrong_type(other, "any JSON"),
        }
    }

    /// True or false.
    pub(crate) fn flag(&mut self, node: &Node<'_>) -> Option<bool> {
        match node {
            Node::Bool(value) => Some(*value),
            other => self.wrong_type(other, "true or false"),
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
            other => self.wrong_type(other, "a whole number"),
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

    /// A quantity of one of several kinds, the one its unit says.
    pub(crate) fn amount_of(&mut self, node: &Node<'_>, kinds: &[Kind]) -> Option<Amount> {
        if matches!(node, Node::Integer(_) | Node::Number) {
            let hint = "write the quantity as text with its unit, as in \"1.2 L\"";
            self.note(
                Fault::new(ErrorKind::WrongType)
                    .got("a number")
                    .allowed(["a text"])
                    .hint(hint),
            );
            return None;
        }
        let text = self.str(node)?;
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

/// A path as people read it: `entries[3].volume`.
fn spell(path: &[Step]) -> String {
    let mut out = String::new();
    for step in path {
        match step {
            Step::Key(name) if out.is_empty() => out.push_str(name),
            Step::Key(name) => {
                out.push('.');
                out.push_str(name);
            }
            // Writing to a String cannot fail.
            Step::Index(index) => write!(out, "[{index}]").unwrap_or_default(),
        }
    }
    out
}
