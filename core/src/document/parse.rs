//! JSON (RFC 8259) to its tree, with the place of every value and within the limits.
//!
//! A value that passes a limit is noted, passed over and left out, so that the faults of the rest are found as
//! well. Nesting is followed by recursion only as far as the limit of depth; what is passed over may be nested
//! as deep as it likes.

use super::fault::Faults;
use super::limits::{Limits, exceeded};
use super::path::Step;
use super::tree::{Node, Value};
use crate::error::{ErrorKind, Fault};
use alloc::borrow::Cow;
use alloc::string::String;
use alloc::vec::Vec;

/// The text stopped being JSON, and the place is noted.
#[derive(Debug)]
pub(super) struct Broken;

/// Reads one JSON text.
pub(super) struct Parser<'a, 'r, 'l> {
    text: &'a str,
    /// How many bytes of it are read.
    at: usize,
    /// Where it begins in the whole document.
    base: usize,
    path: Vec<Step<'a>>,
    limits: &'l Limits,
    faults: &'r mut Faults<'l>,
}

impl<'a, 'r, 'l> Parser<'a, 'r, 'l> {
    /// A parser of the part of a document that begins at `base` and stands at `path`.
    pub(super) fn new(
        text: &'a str,
        base: usize,
        path: Vec<Step<'a>>,
        limits: &'l Limits,
        faults: &'r mut Faults<'l>,
    ) -> Self {
        Parser {
            text,
            at: 0,
            base,
            path,
            limits,
            faults,
        }
    }

    /// The tree of a text that holds one value and nothing else.
    pub(super) fn document(mut self) -> Result<Node<'a>, Broken> {
        self.space();
        let node = self.value()?;
        self.end()?;
        Ok(node)
    }

    /// Whether the text holds one value and nothing else, however large or deep.
    pub(super) fn passes(mut self) -> bool {
        self.space();
        self.pass().is_ok() && self.end().is_ok()
    }

    fn end(&mut self) -> Result<(), Broken> {
        self.space();
        match self.peek() {
            None => Ok(()),
            Some(_) => self.broken("nothing may follow the document"),
        }
    }

    /// Notes that the text is no JSON from here on.
    fn broken<T>(&mut self, expected: &'static str) -> Result<T, Broken> {
        let rest = self.text.get(self.at..).unwrap_or_default();
        let mut fault = Fault::new(ErrorKind::Syntax);
        if !rest.is_empty() {
            fault = fault.got(&rest.chars().take(20).collect::<String>());
        }
        fault = fault.hint(if self.at == 0 && rest.starts_with('\u{feff}') {
            "remove the byte order mark before the first brace"
        } else {
            expected
        });
        self.note(self.at, fault);
        Err(Broken)
    }

    fn note(&mut self, at: usize, fault: Fault) {
        let offset = self.base.saturating_add(at);
        self.faults.note(&self.path, offset, fault);
    }

    fn peek(&self) -> Option<u8> {
        self.text.as_bytes().get(self.at).copied()
    }

    fn step(&mut self) {
        self.at = self.at.saturating_add(1);
    }

    fn space(&mut self) {
        while let Some(b' ' | b'\n' | b'\r' | b'\t') = self.peek() {
            self.step();
        }
    }

    /// Takes this byte if it stands next.
    fn takes(&mut self, byte: u8) -> bool {
        let there = self.peek() == Some(byte);
        if there {
            self.step();
        }
        there
    }

    fn since(&self, from: usize) -> &'a str {
        self.text.get(from..self.at).unwrap_or_default()
    }

    /// The value that begins here.
    fn value(&mut self) -> Result<Node<'a>, Broken> {
        let at = self.at;
        let value = match self.peek() {
            Some(b'{' | b'[') if self.path.len() >= self.limits.depth() => {
                let limit = self.limits.depth();
                self.note(at, exceeded("depth", limit, limit.saturating_add(1)));
                self.pass()?;
                Value::Refused
            }
            Some(b'{') => self.object()?,
            Some(b'[') => self.list()?,
            Some(b'"') => {
                let text = self.quoted()?;
                if text.len() > self.limits.text() {
                    self.note(at, exceeded("text", self.limits.text(), text.len()));
                    Value::Refused
                } else {
                    Value::Text(text)
                }
            }
            _ => self.plain()?,
        };
        let at = self.base.saturating_add(at);
        Ok(Node { at, value })
    }

    fn object(&mut self) -> Result<Value<'a>, Broken> {
        self.step();
        let mut members = Vec::new();
        self.space();
        if self.takes(b'}') {
            return Ok(Value::Object(members));
        }
        loop {
            let key_at = self.at;
            let key = self.key()?;
            if key.len() > self.limits.text() {
                self.note(key_at, exceeded("text", self.limits.text(), key.len()));
                self.pass()?;
            } else {
                self.path.push(Step::Key(key.clone()));
                let at = self.at;
                let node = if key == "ext" {
                    let value = Value::Ext(self.pass()?);
                    let at = self.base.saturating_add(at);
                    Node { at, value }
                } else {
                    self.value()?
                };
                self.path.pop();
                members.push((key, node));
            }
            if self.closes(b'}')? {
                return Ok(Value::Object(members));
            }
        }
    }

    fn list(&mut self) -> Result<Value<'a>, Broken> {
        self.step();
        let mut items = Vec::new();
        self.space();
        if self.takes(b']') {
            return Ok(Value::List(items));
        }
        loop {
            self.path.push(Step::Index(items.len()));
            items.push(self.value()?);
            self.path.pop();
            if self.closes(b']')? {
                return Ok(Value::List(items));
            }
        }
    }

    /// After a member or an item: whether the object or list ends here; if not, the next one stands next.
    fn closes(&mut self, bracket: u8) -> Result<bool, Broken> {
        self.space();
        if self.takes(bracket) {
            return Ok(true);
        }
        if !self.takes(b',') {
            return self.broken(if bracket == b'}' {
                "a comma or a closing brace belongs here"
            } else {
                "a comma or a closing bracket belongs here"
            });
        }
        self.space();
        Ok(false)
    }

    /// A key and its colon; the value stands next.
    fn key(&mut self) -> Result<Cow<'a, str>, Broken> {
        if self.peek() != Some(b'"') {
            return self.broken("the name of a member belongs here, in double quotes");
        }
        let key = self.quoted()?;
        self.space();
        if !self.takes(b':') {
            return self.broken("a colon belongs here");
        }
        self.space();
        Ok(key)
    }

    /// Passes over the value that begins here, however deep it is nested, and answers it as it stands.
    fn pass(&mut self) -> Result<&'a str, Broken> {
        let from = self.at;
        let mut awaited: Vec<u8> = Vec::new();
        loop {
            let opens = match self.peek() {
                Some(b'{') => Some(b'}'),
                Some(b'[') => Some(b']'),
                Some(b'"') => {
                    self.quoted()?;
                    None
                }
                _ => {
                    self.plain()?;
                    None
                }
            };
            if let Some(bracket) = opens {
                self.step();
                self.space();
                if !self.takes(bracket) {
                    awaited.push(bracket);
                    self.named(bracket)?;
                    continue;
                }
            }
            loop {
                let Some(bracket) = awaited.last().copied() else {
                    return Ok(self.since(from));
                };
                if !self.closes(bracket)? {
                    self.named(bracket)?;
                    break;
                }
                awaited.pop();
            }
        }
    }

    /// The key before a value, where it stands in an object.
    fn named(&mut self, bracket: u8) -> Result<(), Broken> {
        if bracket == b'}' {
            self.key()?;
        }
        Ok(())
    }

    /// A number, true, false or null.
    fn plain(&mut self) -> Result<Value<'a>, Broken> {
        for (word, value) in [
            ("true", Value::Bool(true)),
            ("false", Value::Bool(false)),
            ("null", Value::Null),
        ] {
            let rest = self.text.get(self.at..).unwrap_or_default();
            if rest.starts_with(word) {
                self.at = self.at.saturating_add(word.len());
                return Ok(value);
            }
        }
        self.number()
    }

    fn number(&mut self) -> Result<Value<'a>, Broken> {
        let from = self.at;
        self.takes(b'-');
        let leading_zero = self.takes(b'0');
        if !leading_zero && !self.digits() {
            self.at = from;
            return self.broken("a value belongs here");
        }
        if leading_zero && self.digits() {
            self.at = from;
            return self.broken("a number does not begin with a zero before other digits");
        }
        let mut whole = true;
        if self.takes(b'.') {
            whole = false;
            if !self.digits() {
                return self.broken("a digit belongs here");
            }
        }
        if self.takes(b'e') || self.takes(b'E') {
            whole = false;
            let _ = self.takes(b'+') || self.takes(b'-');
            if !self.digits() {
                return self.broken("a digit belongs here");
            }
        }
        let integer = self.since(from).parse().ok().filter(|_| whole);
        Ok(integer.map_or(Value::Number, Value::Integer))
    }

    fn digits(&mut self) -> bool {
        let from = self.at;
        while self.peek().is_some_and(|byte| byte.is_ascii_digit()) {
            self.step();
        }
        self.at > from
    }

    /// A text in double quotes, its escapes resolved.
    fn quoted(&mut self) -> Result<Cow<'a, str>, Broken> {
        self.step();
        let mut from = self.at;
        let mut resolved = String::new();
        loop {
            match self.peek() {
                Some(b'"') => {
                    let piece = self.since(from);
                    self.step();
                    if resolved.is_empty() {
                        return Ok(Cow::Borrowed(piece));
                    }
                    resolved.push_str(piece);
                    return Ok(Cow::Owned(resolved));
                }
                Some(b'\\') => {
                    resolved.push_str(self.since(from));
                    let letter = self.escape()?;
                    resolved.push(letter);
                    from = self.at;
                }
                Some(0..0x20) => {
                    return self.broken("a control character in a text is written as an escape");
                }
                Some(_) => self.step(),
                None => return self.broken("the text ends inside double quotes"),
            }
        }
    }

    fn escape(&mut self) -> Result<char, Broken> {
        let from = self.at;
        self.step();
        let letter = self.peek();
        self.step();
        let plain = match letter {
            Some(letter @ (b'"' | b'\\' | b'/')) => Some(char::from(letter)),
            Some(b'b') => Some('\u{8}'),
            Some(b'f') => Some('\u{c}'),
            Some(b'n') => Some('\n'),
            Some(b'r') => Some('\r'),
            Some(b't') => Some('\t'),
            Some(b'u') => self.code_point(),
            _ => None,
        };
        plain.map_or_else(
            || {
                self.at = from;
                self.broken("no such escape, or half of a pair of them")
            },
            Ok,
        )
    }

    /// The character after `\u`; one beyond the basic plane stands as a pair.
    fn code_point(&mut self) -> Option<char> {
        let first = self.four_digits()?;
        if !(0xd800..0xdc00).contains(&first) {
            return char::from_u32(first);
        }
        if !(self.takes(b'\\') && self.takes(b'u')) {
            return None;
        }
        let second = self
            .four_digits()
            .filter(|unit| (0xdc00..0xe000).contains(unit))?;
        let (high, low) = (first & 0x3ff, second & 0x3ff);
        char::from_u32((high << 10 | low).checked_add(0x1_0000)?)
    }

    fn four_digits(&mut self) -> Option<u32> {
        let end = self.at.checked_add(4)?;
        let digits = self.text.get(self.at..end)?;
        let unit = u32::from_str_radix(digits, 16)
            .ok()
            .filter(|_| !digits.starts_with('+'))?;
        self.at = end;
        Some(unit)
    }
}
