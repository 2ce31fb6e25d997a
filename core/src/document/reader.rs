//! Reading the members of a document, noting every fault where it stands and going on.

use super::fault::{Faults, Part};
use super::limits::Limits;
use super::parse::tree;
use super::path::Step;
use super::place::offset_in;
use super::tree::Node;
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
    path: Vec<Step>,
    /// The piece of the text that is being read, which is JSON by itself.
    part: Part<'t>,
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
            part: Part { text, depth: 0 },
            faults: Faults::new(limits),
        })
    }

    pub(crate) const fn limits(&self) -> &'t Limits {
        self.limits
    }

    /// The tree of the whole text; what is no JSON, or passes a limit, is noted.
    pub(crate) fn parse(&mut self) -> Option<Node<'t>> {
        self.parse_around(&[])
    }

    /// The tree of the whole text, with members of these names left for [`document`](Self::document) to read.
    pub(crate) fn parse_around(&mut self, unread: &[&str]) -> Option<Node<'t>> {
        self.tree_of(self.text, unread)
    }

    /// The tree of a part of the text that is JSON by itself, such as a line, standing at the present path.
    pub(crate) fn parse_part(&mut self, part: &'t str) -> Option<Node<'t>> {
        self.tree_of(part, &[])
    }

    /// A document within the document, whose depth is counted from itself: its tree is read, and then what is in it.
    pub(crate) fn document<T>(
        &mut self,
        node: &Node<'t>,
        read: impl FnOnce(&mut Self, &Node<'t>) -> Option<T>,
    ) -> Option<T> {
        let Node::Ext(text) = *node else {
            return self.wrong_type(node, "an object");
        };
        let (around, measures) = (self.part, self.measures);
        let value = self.parse_part(text).and_then(|inner| read(self, &inner));
        (self.part, self.measures) = (around, measures);
        value
    }

    fn tree_of(&mut self, part: &'t str, unread: &[&str]) -> Option<Node<'t>> {
        self.part = Part {
            text: part,
            depth: self.path.len(),
        };
        match tree(part, self.limits, unread) {
            Ok(node) => Some(node),
            Err(refusal) => {
                let mut path = self.path.clone();
                path.extend(refusal.path);
                let offset = offset_in(self.text, part).saturating_add(refusal.offset);
                self.faults
                    .note(self.part, path, Some(offset), refusal.fault);
                None
            }
        }
    }

    /// All faults with their places, or nothing if there are none.
    pub(crate) fn finish(self) -> Result<(), Error> {
        self.faults.told(self.text)
    }

    /// Notes a fault at the value that is being read.
    pub(crate) fn note(&mut self, fault: Fault) {
        self.faults.note(self.part, self.path.clone(), None, fault);
    }

    /// Notes a fault one step further in, or at the present value where nothing stands there.
    pub(crate) fn note_at(&mut self, step: impl Into<Step>, fault: Fault) {
        self.inside(step, |reader| reader.note(fault));
    }

    /// Does something one step further in.
    pub(crate) fn inside<T>(
        &mut self,
        step: impl Into<Step>,
        act: impl FnOnce(&mut Self) -> T,
    ) -> T {
        self.path.push(step.into());
        let answer = act(self);
        self.path.pop();
        answer
    }

    pub(super) fn wrong_type<T>(&mut self, node: &Node<'_>, expected: &'static str) -> Option<T> {
        if let Node::Refused(fault) = node {
            self.note((**fault).clone());
            return None;
        }
        let mut fault = Fault::new(ErrorKind::WrongType)
            .got(node.type_name())
            .allowed([expected]);
        if matches!(node, Node::Null) {
            fault = fault.hint("leave the field out instead of writing null");
        }
        self.note(fault);
        None
    }

    /// An object whose members are not known, so that those it must have can still be read.
    pub(crate) fn any_object<'n, 'a>(&mut self, node: &'n Node<'a>) -> Option<Object<'n, 'a>> {
        match node {
            Node::Object(_) => Some(Object(node)),
            _ => self.wrong_type(node, "an object"),
        }
    }

    /// An object that may hold these members only; unknown and repeated ones are noted.
    pub(crate) fn object<'n, 'a>(
        &mut self,
        node: &'n Node<'a>,
        fields: &[&'static str],
    ) -> Option<Object<'n, 'a>> {
        let Node::Object(members) = node else {
            return self.wrong_type(node, "an object");
        };
        let mut stood: u64 = 0;
        for (index, (key, member)) in members.iter().enumerate() {
            let place = fields.iter().position(|field| field == key);
            let stands_again = place.map(|place| {
                let bit = u32::try_from(place)
                    .ok()
                    .and_then(|place| 1_u64.checked_shl(place));
                let Some(bit) = bit else {
                    // More fields than bits: only a part of a catalogue has so many.
                    return members.iter().take(index).any(|(before, _)| before == key);
                };
                let again = stood & bit != 0;
                stood |= bit;
                again
            });
            let name = key.to_string();
            let (step, fault) = match stands_again {
                Some(false) => continue,
                Some(true) => (
                    Step::Again(name.into()),
                    Fault::new(ErrorKind::DuplicateField).hint("keep one of them"),
                ),
                None => (
                    Step::from(name),
                    Fault::new(ErrorKind::UnknownField)
                        .allowed(fields.iter().copied())
                        .hint(
                            "correct the name, or put what is yours under ext where the format has it",
                        ),
                ),
            };
            self.inside(step, |reader| {
                if let Node::Refused(over) = member {
                    reader.note((**over).clone());
                }
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
            Some(node) => self.inside(name, |reader| read(reader, node)),
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
        self.inside(name, |reader| read(reader, node))
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
        let read_all = items
            .iter()
            .enumerate()
            .filter_map(|(index, item)| self.inside(index, |reader| read(reader, item)));
        Some(read_all.collect())
    }
}
