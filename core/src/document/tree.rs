//! A document as it stands: every member in order, the second of two equal keys included.

use super::limits::{Limits, exceeded};
use crate::error::{ErrorKind, Fault, Position};
use alloc::borrow::Cow;
use alloc::string::{String, ToString};
use alloc::vec::Vec;
use core::cell::RefCell;
use core::fmt;
use serde::de::{DeserializeSeed, Deserializer, Error as _, MapAccess, SeqAccess, Visitor};
use serde_json::value::RawValue;

/// One JSON value, borrowing its texts from the document where they hold no escapes.
#[derive(Debug, Clone)]
pub(crate) enum Node<'a> {
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
}

impl<'a> Node<'a> {
    /// Reads one JSON text within the limits. A fault has its position, and no path.
    pub(crate) fn parse(text: &'a str, limits: &Limits) -> Result<Self, Fault> {
        let refusal = RefCell::new(None);
        let seed = Seed {
            limits,
            depth: 0,
            refusal: &refusal,
        };
        let mut reader = serde_json::Deserializer::from_str(text);
        let parsed = seed
            .deserialize(&mut reader)
            .and_then(|node| reader.end().map(|()| node));
        parsed.map_err(|error| {
            let place = position_of_line(text, error.line(), error.column());
            let mut fault = refusal.take().unwrap_or_else(|| {
                let mut fault = Fault::new(ErrorKind::Syntax);
                if let Some(rest) = text
                    .get(place.offset as usize..)
                    .filter(|rest| !rest.is_empty())
                {
                    fault = fault.got(&rest.chars().take(20).collect::<String>());
                }
                if text.starts_with('\u{feff}') {
                    return fault.hint("remove the byte order mark before the first brace");
                }
                let said = error.to_string();
                fault.hint(
                    said.split(" at line ")
                        .next()
                        .unwrap_or_default()
                        .to_string(),
                )
            });
            fault.position = Some(place);
            fault
        })
    }

    /// What kind of JSON value this is, in a word for messages.
    pub(crate) fn type_name(&self) -> &'static str {
        match self {
            Node::Null => "null",
            Node::Bool(_) => "true or false",
            Node::Integer(_) | Node::Number => "a number",
            Node::Text(_) => "a text",
            Node::List(_) => "a list",
            Node::Object(_) => "an object",
            Node::Ext(_) => "any JSON",
        }
    }
}

#[derive(Clone, Copy)]
struct Seed<'l> {
    limits: &'l Limits,
    depth: usize,
    refusal: &'l RefCell<Option<Fault>>,
}

impl Seed<'_> {
    fn refuse<E: serde::de::Error>(&self, name: &'static str, limit: usize, got: usize) -> E {
        *self.refusal.borrow_mut() = Some(exceeded(name, limit, got));
        E::custom(name)
    }

    fn deeper<E: serde::de::Error>(mut self) -> Result<Self, E> {
        self.depth = self.depth.saturating_add(1);
        if self.depth > self.limits.depth() {
            return Err(self.refuse("depth", self.limits.depth(), self.depth));
        }
        Ok(self)
    }

    fn check_text<E: serde::de::Error>(&self, text: &str) -> Result<(), E> {
        if text.len() > self.limits.text() {
            return Err(self.refuse("text", self.limits.text(), text.len()));
        }
        Ok(())
    }
}

impl<'de> DeserializeSeed<'de> for Seed<'_> {
    type Value = Node<'de>;

    fn deserialize<D: Deserializer<'de>>(self, deserializer: D) -> Result<Node<'de>, D::Error> {
        deserializer.deserialize_any(self)
    }
}

impl<'de> Visitor<'de> for Seed<'_> {
    type Value = Node<'de>;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("any JSON value")
    }

    fn visit_unit<E>(self) -> Result<Node<'de>, E> {
        Ok(Node::Null)
    }

    fn visit_bool<E>(self, value: bool) -> Result<Node<'de>, E> {
        Ok(Node::Bool(value))
    }

    fn visit_i64<E>(self, value: i64) -> Result<Node<'de>, E> {
        Ok(Node::Integer(value))
    }

    fn visit_u64<E>(self, value: u64) -> Result<Node<'de>, E> {
        Ok(i64::try_from(value).map_or(Node::Number, Node::Integer))
    }

    fn visit_f64<E>(self, _: f64) -> Result<Node<'de>, E> {
        Ok(Node::Number)
    }

    fn visit_borrowed_str<E: serde::de::Error>(self, text: &'de str) -> Result<Node<'de>, E> {
        self.check_text(text)?;
        Ok(Node::Text(Cow::Borrowed(text)))
    }

    fn visit_str<E: serde::de::Error>(self, text: &str) -> Result<Node<'de>, E> {
        self.check_text(text)?;
        Ok(Node::Text(Cow::Owned(text.to_string())))
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut list: A) -> Result<Node<'de>, A::Error> {
        let inner = self.deeper()?;
        let mut items = Vec::new();
        while let Some(item) = list.next_element_seed(inner)? {
            items.push(item);
        }
        Ok(Node::List(items))
    }

    fn visit_map<A: MapAccess<'de>>(self, mut map: A) -> Result<Node<'de>, A::Error> {
        let inner = self.deeper()?;
        let mut members = Vec::with_capacity(8);
        while let Some(Key(key)) = map.next_key_seed(KeySeed(self))? {
            let value = match key.as_ref() {
                "ext" => Node::Ext(map.next_value::<&RawValue>()?.get()),
                _ => map.next_value_seed(inner)?,
            };
            members.push((key, value));
        }
        Ok(Node::Object(members))
    }
}

struct Key<'a>(Cow<'a, str>);

struct KeySeed<'l>(Seed<'l>);

impl<'de> DeserializeSeed<'de> for KeySeed<'_> {
    type Value = Key<'de>;

    fn deserialize<D: Deserializer<'de>>(self, deserializer: D) -> Result<Key<'de>, D::Error> {
        match deserializer.deserialize_str(self.0)? {
            Node::Text(text) => Ok(Key(text)),
            _ => Err(D::Error::custom("a key must be a text")),
        }
    }
}

/// The place of a line and a column of bytes, as the JSON reader tells them (both from 1).
fn position_of_line(text: &str, line: usize, column: usize) -> Position {
    let before: usize = text
        .split_inclusive('\n')
        .take(line.saturating_sub(1))
        .map(str::len)
        .sum();
    position(
        text,
        before
            .saturating_add(column.saturating_sub(1))
            .min(text.len()),
    )
}

/// Line and column of a byte offset.
pub(crate) fn position(text: &str, offset: usize) -> Position {
    let mut offset = offset.min(text.len());
    while !text.is_char_boundary(offset) {
        offset = offset.saturating_sub(1);
    }
    let before = text.get(..offset).unwrap_or_default();
    let line_start = before.rfind('\n').map_or(0, |end| end.saturating_add(1));
    let count = |n: usize| u32::try_from(n).unwrap_or(u32::MAX);
    Position {
        line: count(
            before
                .bytes()
                .filter(|byte| *byte == b'\n')
                .count()
                .saturating_add(1),
        ),
        column: count(
            before
                .get(line_start..)
                .unwrap_or_default()
                .chars()
                .count()
                .saturating_add(1),
        ),
        offset: count(offset),
    }
}

/// Where the value at a path begins. `wanted` holds the rest of each path with the index to report; a path
/// that ends early, or names something absent, answers with the place of the innermost value there is.
pub(crate) fn locate(
    text: &str,
    part: &str,
    wanted: &[(usize, &[super::Step])],
    found: &mut dyn FnMut(usize, usize),
) {
    let base = offset_in(text, part);
    let mut here = base;
    for letter in part.bytes() {
        if !letter.is_ascii_whitespace() {
            break;
        }
        here = here.saturating_add(1);
    }
    let children = Children::of(part);
    for (index, path) in wanted {
        if path
            .split_first()
            .and_then(|(step, _)| children.get(step))
            .is_none()
        {
            found(*index, here);
        }
    }
    for (step, child) in children.iter() {
        let inner: Vec<(usize, &[super::Step])> = wanted
            .iter()
            .filter_map(|(index, path)| {
                path.split_first()
                    .filter(|(first, _)| **first == step)
                    .map(|(_, rest)| (*index, rest))
            })
            .collect();
        if !inner.is_empty() {
            locate(text, child, &inner, found);
        }
    }
}

/// How far into `text` its slice `part` begins.
fn offset_in(text: &str, part: &str) -> usize {
    (part.as_ptr() as usize)
        .wrapping_sub(text.as_ptr() as usize)
        .min(text.len())
}

/// The values directly inside an object or a list, with what leads to each.
enum Children<'a> {
    Members(Vec<(String, &'a RawValue)>),
    Items(Vec<&'a RawValue>),
}

impl<'a> Children<'a> {
    fn of(part: &'a str) -> Self {
        let trimmed = part.trim_start();
        if trimmed.starts_with('{') {
            let mut reader = serde_json::Deserializer::from_str(part);
            return Children::Members(reader.deserialize_map(Members).unwrap_or_default());
        }
        Children::Items(serde_json::from_str(part).unwrap_or_default())
    }

    fn iter(&self) -> impl Iterator<Item = (super::Step, &'a str)> {
        let (members, items) = match self {
            Children::Members(members) => (members.as_slice(), [].as_slice()),
            Children::Items(items) => ([].as_slice(), items.as_slice()),
        };
        let members = members
            .iter()
            .map(|(key, raw)| (super::Step::key(key), raw.get()));
        members.chain(
            items
                .iter()
                .enumerate()
                .map(|(index, raw)| (super::Step::Index(index), raw.get())),
        )
    }

    fn get(&self, step: &super::Step) -> Option<&'a str> {
        self.iter().find(|(own, _)| own == step).map(|(_, raw)| raw)
    }
}

struct Members;

impl<'de> Visitor<'de> for Members {
    type Value = Vec<(String, &'de RawValue)>;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("an object")
    }

    fn visit_map<A: MapAccess<'de>>(self, mut map: A) -> Result<Self::Value, A::Error> {
        let mut members = Vec::new();
        while let Some(member) = map.next_entry()? {
            members.push(member);
        }
        Ok(members)
    }
}
