//! Reading the members of a document, noting every fault where it stands and going on.

use super::fault::Faults;
use super::limits::Limits;
use super::parse::Parser;
use super::path::Step;
use super::tree::{Node, Value};
use crate::error::{Error, ErrorKind, Fault};
use crate::quantity::Measures;
use alloc::string::ToString;
use alloc::vec::Vec;

/// The members of one object whose fields are known.
pub(crate) struct Object<'n, 'a>(&'n Node<'a>);

impl<'n, 'a> Object<'n, 'a> {
    /// The value of a member, if it stands there.
    pub(crate) fn get(&self, name: &str) -> Option<&'n Node<'a>> {
        self.0.member(name)
    }

    /// The text of a member, without saying anything of a fault in it.
    pub(crate) fn peek_text(&self, name: &str) -> Option<&'n str> {
        self.get(name).and_then(Node::text)
    }
}

/// Walks a document. What reads a value answers `None` after noting its fault, so that the rest of the document
/// is read before anything is given up.
pub(crate) struct Reader<'t> {
    text: &'t str,
    limits: &'t Limits,
    /// What bare `qt`, `pt`, `gal` and `fl oz` mean, where the document says so.
    pub(crate) measures: Option<Measures>,
    path: Vec<Step<'static>>,
    /// Where the value that is being read begins.
    at: usize,
    faults: Faults<'t>,
}

impl<'t> Reader<'t> {
    /// A reader of a text.
    ///
    /// # Errors
    /// `limit` if the text alone is too long.
    pub(crate) fn new(text: &'t str, limits: &'t Limits) -> Result<Self, Error> {
        limits.check_bytes(text)?;
        Ok(Reader {
            text,
            limits,
            measures: None,
            path: Vec::new(),
            at: 0,
            faults: Faults::new(limits),
        })
    }

    pub(crate) const fn limits(&self) -> &'t Limits {
        self.limits
    }

    /// The tree of the whole text; what is no JSON, or passes a limit, is noted.
    pub(crate) fn parse(&mut self) -> Option<Node<'t>> {
        self.parse_part(self.text)
    }

    /// The tree of a part of the text that is JSON by itself, such as a line, standing at the present path.
    pub(crate) fn parse_part(&mut self, part: &'t str) -> Option<Node<'t>> {
        let base = (part.as_ptr() as usize).wrapping_sub(self.text.as_ptr() as usize);
        let path = self.path.clone();
        let node = Parser::new(part, base, path, self.limits, &mut self.faults)
            .document()
            .ok()?;
        self.at = node.at;
        Some(node)
    }

    /// All faults with their places, or nothing if there are none.
    pub(crate) fn finish(self) -> Result<(), Error> {
        self.faults.told(self.text)
    }

    /// Notes a fault at the value that is being read.
    pub(crate) fn note(&mut self, fault: Fault) {
        self.faults.note(&self.path, self.at, fault);
    }

    /// Notes a fault at a member of an object, or at the object itself where it has no such member.
    pub(crate) fn note_at(&mut self, object: &Object<'_, '_>, name: &'static str, fault: Fault) {
        match object.get(name) {
            Some(node) => self.inside(name, node, |reader| reader.note(fault)),
            None => self.within(name, |reader| reader.note(fault)),
        }
    }

    /// Notes a fault further in below a value, or at the innermost value there is on the way.
    pub(crate) fn note_below(&mut self, node: &Node<'_>, steps: &[Step<'static>], fault: Fault) {
        match steps.split_first() {
            None => self.note(fault),
            Some((step, rest)) => match node.child(step) {
                Some(child) => self.inside(step.clone(), child, |reader| {
                    reader.note_below(child, rest, fault);
                }),
                None => self.within(step.clone(), |reader| reader.note(fault)),
            },
        }
    }

    /// Reads a value one step further in.
    pub(crate) fn inside<T>(
        &mut self,
        step: impl Into<Step<'static>>,
        node: &Node<'_>,
        read: impl FnOnce(&mut Self) -> T,
    ) -> T {
        let outer = core::mem::replace(&mut self.at, node.at);
        let answer = self.within(step, read);
        self.at = outer;
        answer
    }

    /// Does something one step further in, where no value stands.
    pub(crate) fn within<T>(
        &mut self,
        step: impl Into<Step<'static>>,
        act: impl FnOnce(&mut Self) -> T,
    ) -> T {
        self.path.push(step.into());
        let answer = act(self);
        self.path.pop();
        answer
    }

    pub(super) fn wrong_type<T>(&mut self, node: &Node<'_>, expected: &'static str) -> Option<T> {
        let mut fault = Fault::new(ErrorKind::WrongType)
            .got(node.type_name())
            .allowed([expected]);
        match node.value {
            Value::Refused => return None,
            Value::Null => fault = fault.hint("leave the field out instead of writing null"),
            _ => {}
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
        let Value::Object(members) = &node.value else {
            return self.wrong_type(node, "an object");
        };
        let mut stood: u64 = 0;
        for (key, member) in members {
            let place = fields.iter().position(|field| field == key);
            let bit = place.and_then(|place| 1_u64.checked_shl(u32::try_from(place).ok()?));
            let fault = match bit {
                Some(bit) if stood & bit == 0 => {
                    stood |= bit;
                    continue;
                }
                Some(_) => Fault::new(ErrorKind::DuplicateField).hint("keep one of them"),
                None => Fault::new(ErrorKind::UnknownField)
                    .allowed(fields.iter().copied())
                    .hint(
                        "correct the name, or put what is yours under ext where the format has it",
                    ),
            };
            self.inside(key.to_string(), member, |reader| {
                reader.note(fault.got(key));
            });
        }
        Some(Object(node))
    }

    /// A member that must be there.
    pub(crate) fn required<'n, 'a, T>(
        &mut self,
        object: &Object<'n, 'a>,
        name: &'static str,
        read: impl FnOnce(&mut Self, &'n Node<'a>) -> Option<T>,
    ) -> Option<T> {
        match object.get(name) {
            Some(node) => self.inside(name, node, |reader| read(reader, node)),
            None => {
                self.note_at(object, name, Fault::new(ErrorKind::MissingField));
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
        self.inside(name, node, |reader| read(reader, node))
    }

    /// The items of a list; those with faults are noted and left out.
    pub(crate) fn list<'n, 'a, T>(
        &mut self,
        node: &'n Node<'a>,
        mut read: impl FnMut(&mut Self, &'n Node<'a>) -> Option<T>,
    ) -> Option<Vec<T>> {
        let Value::List(items) = &node.value else {
            return self.wrong_type(node, "a list");
        };
        let read_all = items
            .iter()
            .enumerate()
            .filter_map(|(index, item)| self.inside(index, item, |reader| read(reader, item)));
        Some(read_all.collect())
    }
}

/// Whether a text is one JSON value and nothing else.
pub(crate) fn is_json(text: &str) -> bool {
    let limits = Limits::default();
    let mut faults = Faults::new(&limits);
    Parser::new(text, 0, Vec::new(), &limits, &mut faults).passes()
}
