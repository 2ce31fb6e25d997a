//! JSON to its tree, within the limits: a visitor of the JSON library's that keeps every member.

use super::limits::{Limits, exceeded};
use super::path::Step;
use super::tree::Node;
use crate::error::{ErrorKind, Fault};
use alloc::borrow::Cow;
use alloc::boxed::Box;
use alloc::string::{String, ToString};
use alloc::vec::Vec;
use core::cell::RefCell;
use core::fmt;
use serde::de::{DeserializeSeed, Deserializer, IgnoredAny, MapAccess, SeqAccess, Visitor};
use serde_json::value::RawValue;

/// Why a text is no JSON: the fault, the way to it, and where the reader stopped, in bytes of the text.
#[derive(Debug)]
pub(super) struct Refusal {
    pub(super) fault: Fault,
    pub(super) path: Vec<Step>,
    pub(super) offset: usize,
}

/// Reads one JSON text; members of these names, and `ext`, are kept as text.
pub(super) fn tree<'a>(
    text: &'a str,
    limits: &Limits,
    unread: &[&str],
) -> Result<Node<'a>, Box<Refusal>> {
    let (way_back, passed) = (RefCell::new(Vec::new()), RefCell::new(None));
    let seed = Seed {
        limits,
        unread,
        depth: 0,
        way_back: &way_back,
        passed: &passed,
    };
    let mut reader = serde_json::Deserializer::from_str(text);
    let read = seed.deserialize(&mut reader);
    read.and_then(|node| reader.end().map(|()| node))
        .map_err(|error| {
            let offset = offset_of(text, &error);
            Box::new(Refusal {
                // A text that is too deep is told so, though it breaks off deeper still.
                fault: passed
                    .take()
                    .unwrap_or_else(|| syntax(text, offset, &error)),
                path: way_back.take().into_iter().rev().collect(),
                offset,
            })
        })
}

/// Whether a text is one JSON value and nothing else.
pub(crate) fn is_json(text: &str) -> bool {
    serde_json::from_str::<IgnoredAny>(text).is_ok()
}

fn syntax(text: &str, offset: usize, error: &serde_json::Error) -> Fault {
    let mut fault = Fault::new(ErrorKind::Syntax);
    let rest = text.get(offset..).unwrap_or_default();
    if !rest.is_empty() {
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
}

/// Where the JSON library stopped: it tells a line and a column of bytes, both from 1, of the byte it could not
/// take, or of the last one where the text ended too early.
fn offset_of(text: &str, error: &serde_json::Error) -> usize {
    let lines = text
        .split_inclusive('\n')
        .take(error.line().saturating_sub(1));
    let line: usize = lines.map(str::len).sum();
    let column = if error.is_eof() {
        error.column()
    } else {
        error.column().saturating_sub(1)
    };
    let mut offset = line.saturating_add(column).min(text.len());
    while !text.is_char_boundary(offset) {
        offset = offset.saturating_sub(1);
    }
    offset
}

#[derive(Clone, Copy)]
struct Seed<'l> {
    limits: &'l Limits,
    /// Members whose values are kept as text, beside `ext`.
    unread: &'l [&'l str],
    depth: usize,
    /// The steps that lead to where reading stopped, innermost first.
    way_back: &'l RefCell<Vec<Step>>,
    /// The depth that was passed, if it was.
    passed: &'l RefCell<Option<Fault>>,
}

impl Seed<'_> {
    /// One level further in, or the refusal of what stands there.
    fn deeper<'a>(mut self) -> Result<Self, Node<'a>> {
        self.depth = self.depth.saturating_add(1);
        if self.depth > self.limits.depth() {
            let over = exceeded("depth", self.limits.depth(), self.depth);
            *self.passed.borrow_mut() = Some(over.clone());
            return Err(Node::Refused(Box::new(over)));
        }
        Ok(self)
    }

    fn text<'a>(&self, text: Cow<'a, str>) -> Node<'a> {
        if text.len() > self.limits.text() {
            let over = exceeded("text", self.limits.text(), text.len());
            return Node::Refused(Box::new(over));
        }
        Node::Text(text)
    }

    /// Keeps the step that led to a failure, on the way back from it.
    fn through<T, E>(&self, read: Result<T, E>, step: impl FnOnce() -> Step) -> Result<T, E> {
        read.inspect_err(|_| self.way_back.borrow_mut().push(step()))
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

    fn visit_borrowed_str<E>(self, text: &'de str) -> Result<Node<'de>, E> {
        Ok(self.text(Cow::Borrowed(text)))
    }

    fn visit_str<E>(self, text: &str) -> Result<Node<'de>, E> {
        Ok(self.text(Cow::Owned(text.to_string())))
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut list: A) -> Result<Node<'de>, A::Error> {
        let inner = match self.deeper() {
            Ok(inner) => inner,
            Err(refusal) => {
                while list.next_element::<IgnoredAny>()?.is_some() {}
                return Ok(refusal);
            }
        };
        let mut items = Vec::new();
        loop {
            let read = list.next_element_seed(inner);
            match self.through(read, || Step::Index(items.len()))? {
                Some(item) => items.push(item),
                None => return Ok(Node::List(items.into_boxed_slice())),
            }
        }
    }

    fn visit_map<A: MapAccess<'de>>(self, mut map: A) -> Result<Node<'de>, A::Error> {
        let mut refusal = None;
        let inner = self.deeper().unwrap_or_else(|over| {
            refusal = Some(over);
            self
        });
        let mut members = Vec::with_capacity(8);
        while let Some(key) = map.next_key_seed(Key(self))? {
            let key = match (key, &refusal) {
                (Node::Text(key), None) => key,
                (over, known) => {
                    // The rest of an object that is not kept is passed over, however deep.
                    if known.is_none() {
                        refusal = Some(over);
                    }
                    map.next_value::<IgnoredAny>()?;
                    continue;
                }
            };
            let read = match key.as_ref() {
                name if name == "ext" || self.unread.contains(&name) => map
                    .next_value::<&RawValue>()
                    .map(|raw| Node::Ext(raw.get())),
                _ => map.next_value_seed(inner),
            };
            let value = self.through(read, || Step::from(key.to_string()))?;
            members.push((key, value));
        }
        Ok(refusal.unwrap_or_else(|| Node::Object(members.into_boxed_slice())))
    }
}

/// Reads a key as the text it is.
struct Key<'l>(Seed<'l>);

impl<'de> DeserializeSeed<'de> for Key<'_> {
    type Value = Node<'de>;

    fn deserialize<D: Deserializer<'de>>(self, deserializer: D) -> Result<Node<'de>, D::Error> {
        deserializer.deserialize_str(self.0)
    }
}
