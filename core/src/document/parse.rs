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
        let text = self.since(from);
        let integer = text.parse().ok().filter(|_| whole && text != "-0");
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

#[cfg(test)]
mod tests {
    #![allow(
        clippy::unwrap_used,
        clippy::indexing_slicing,
        clippy::arithmetic_side_effects
    )]
    use super::*;
    use alloc::string::ToString;

    /// What another JSON reader makes of a text, its numbers told apart no further than here.
    fn elsewhere(value: serde_json::Value) -> serde_json::Value {
        use serde_json::Value as Other;
        match value {
            Other::Number(number) => number.as_i64().map_or("number".into(), Other::from),
            Other::Array(items) => items.into_iter().map(elsewhere).collect(),
            Other::Object(members) => members
                .into_iter()
                .map(|(key, value)| (key, elsewhere(value)))
                .collect(),
            other => other,
        }
    }

    fn here(node: &Node<'_>) -> serde_json::Value {
        use serde_json::Value as Other;
        match &node.value {
            Value::Null => Other::Null,
            Value::Bool(value) => (*value).into(),
            Value::Integer(value) => (*value).into(),
            Value::Number => "number".into(),
            Value::Text(text) => text.as_ref().into(),
            Value::List(items) => items.iter().map(here).collect(),
            Value::Object(members) => members
                .iter()
                .map(|(key, node)| (key.to_string(), here(node)))
                .collect(),
            Value::Ext(json) => serde_json::from_str(json).unwrap(),
            Value::Refused => "refused".into(),
        }
    }

    fn parsed(text: &str) -> Option<serde_json::Value> {
        let limits = Limits::default();
        let mut faults = Faults::new(&limits);
        let parser = Parser::new(text, 0, Vec::new(), &limits, &mut faults);
        let node = parser.document().ok();
        let mut ignored = Faults::new(&limits);
        let passes = Parser::new(text, 0, Vec::new(), &limits, &mut ignored).passes();
        assert_eq!(
            passes,
            node.is_some(),
            "{text}: passed over and read differ"
        );
        assert_eq!(
            faults.told(text).is_ok(),
            passes,
            "{text}: told and read differ"
        );
        node.map(|node| here(&node))
    }

    fn agrees(text: &str) {
        match serde_json::from_str(text) {
            Ok(other) => assert_eq!(parsed(text), Some(elsewhere(other)), "{text}"),
            // It reads no further than a number no double can hold, which is well-formed all the same.
            Err(error) if error.to_string().starts_with("number out of range") => {}
            Err(error) => assert_eq!(parsed(text), None, "{text}: {error}"),
        }
    }

    /// Every text of up to `most` of these pieces.
    fn every(pieces: &[&str], most: usize, text: &mut String, check: &impl Fn(&str)) {
        check(text);
        if most == 0 {
            return;
        }
        for piece in pieces {
            let length = text.len();
            text.push_str(piece);
            every(pieces, most - 1, text, check);
            text.truncate(length);
        }
    }

    #[test]
    fn every_short_text_is_read_as_elsewhere() {
        let structure = ["{", "}", "[", "]", ",", ":", "\"a\"", "1", "null", " "];
        every(&structure, 5, &mut String::new(), &agrees);
        let numbers = ["-", "+", "0", "7", "10", ".", "e", "E", " "];
        every(&numbers, 5, &mut String::new(), &agrees);
        let texts = [
            "\\", "\"", "n", "u", "x", "00e9", "d83d", "de97", "é", "\n", "\0",
        ];
        every(&texts, 4, &mut String::new(), &|inner| {
            agrees(&alloc::format!("\"{inner}\""));
        });
        let pairs = ["\\u", "\\n", "d83d", "de97", "D800", "+123", "0041"];
        every(&pairs, 4, &mut String::new(), &|inner| {
            agrees(&alloc::format!("\"{inner}\""));
        });
        for word in [
            "tru",
            "true",
            "truefalse",
            "nul",
            "null0",
            "False",
            "NaN",
            "'a'",
            "/**/1",
        ] {
            agrees(word);
        }
    }

    #[test]
    fn a_number_beyond_every_double_is_a_number() {
        assert_eq!(
            parsed("[1e999, -1e-999, 123456789012345678901234567890]"),
            Some(["number"; 3].into())
        );
    }

    #[test]
    fn every_value_has_its_place() {
        let text = " { \"a\" : [ 1 , \"é\" , { \"b\" : null } ] , \"ext\" : [ [ ] ] }";
        let limits = Limits::default();
        let mut faults = Faults::new(&limits);
        let node = Parser::new(text, 100, Vec::new(), &limits, &mut faults)
            .document()
            .unwrap();
        let list = node.member("a").unwrap();
        let inner = list.items()[2].member("b").unwrap();
        let places = [
            &node,
            list,
            &list.items()[1],
            inner,
            node.member("ext").unwrap(),
        ];
        let begins = places.map(|node| text[node.at - 100..].chars().next().unwrap());
        assert_eq!(begins, ['{', '[', '"', 'n', '[']);
    }

    #[test]
    fn a_limit_is_told_and_the_rest_still_read() {
        let text = r#"{"a":[[[1]]],"b":"long text","ext":[[[[]]]],"c":2,}"#;
        let limits = Limits::default().with_depth(2).with_text(4);
        let mut faults = Faults::new(&limits);
        let read = Parser::new(text, 0, Vec::new(), &limits, &mut faults).document();
        assert!(read.is_err());
        let error = faults.told(text).unwrap_err();
        let told: Vec<_> = error
            .faults()
            .map(|fault| (fault.kind.slug(), fault.path.as_str()))
            .collect();
        assert_eq!(told, [("limit", "a[0]"), ("limit", "b"), ("syntax", "")]);
    }
}
