//! The arguments of one calculator, read by name.

use super::Answer;
use crate::document::{Node, Object, Reader, canonical};
use crate::error::{Error, ErrorKind, Fault};
use crate::quantity::{Amount, Kind};
use alloc::format;
use alloc::string::ToString;
use alloc::vec::Vec;
use serde::Serialize;

/// Reads arguments. What cannot be read is noted, and answers `None`.
pub(super) struct Arguments<'r, 'n, 't> {
    pub(super) reader: &'r mut Reader<'t>,
    pub(super) object: &'r Object<'n, 't>,
}

impl<'r, 'n, 't> Arguments<'r, 'n, 't> {
    pub(super) fn new(reader: &'r mut Reader<'t>, object: &'r Object<'n, 't>) -> Self {
        Arguments { reader, object }
    }

    /// A quantity that must be there.
    pub(super) fn amount(&mut self, name: &'static str, kind: Kind) -> Option<Amount> {
        self.read(name, |reader, node| reader.amount(node, kind))
    }

    /// A quantity that may be left out.
    pub(super) fn amount_if(&mut self, name: &'static str, kind: Kind) -> Option<Amount> {
        self.read_if(name, |reader, node| reader.amount(node, kind))
    }

    /// A word of a closed list that must be there.
    pub(super) fn word<T: Copy>(
        &mut self,
        name: &'static str,
        words: &[(&'static str, T)],
    ) -> Option<T> {
        self.read(name, |reader, node| reader.word(node, words))
    }

    /// A word of a closed list that may be left out.
    pub(super) fn word_if<T: Copy>(
        &mut self,
        name: &'static str,
        words: &[(&'static str, T)],
    ) -> Option<T> {
        self.read_if(name, |reader, node| reader.word(node, words))
    }

    /// A list that must be there.
    pub(super) fn list<T>(
        &mut self,
        name: &'static str,
        read: impl FnMut(&mut Reader<'t>, &'n Node<'t>) -> Option<T>,
    ) -> Option<Vec<T>> {
        self.read(name, |reader, node| reader.list(node, read))
    }

    /// What arguments settle between them, its faults noted where they stand; nothing where one that is there could not
    /// be read, which is noted already.
    pub(super) fn settled<T>(
        &mut self,
        read: &[(&str, bool)],
        settled: Result<T, Error>,
    ) -> Option<T> {
        let is_there = |name: &str| self.object.get(name).is_some();
        if read.iter().any(|(name, read)| is_there(name) && !read) {
            return None;
        }
        settled
            .map_err(|error| {
                for fault in error.into_faults() {
                    self.reader.note_at(fault.path.clone(), fault);
                }
            })
            .ok()
    }

    /// An argument that must be there.
    pub(super) fn read<T>(
        &mut self,
        name: &'static str,
        read: impl FnOnce(&mut Reader<'t>, &'n Node<'t>) -> Option<T>,
    ) -> Option<T> {
        self.reader.required(self.object, name, read)
    }

    /// An argument that may be left out.
    pub(super) fn read_if<T>(
        &mut self,
        name: &'static str,
        read: impl FnOnce(&mut Reader<'t>, &'n Node<'t>) -> Option<T>,
    ) -> Option<T> {
        self.reader.optional(self.object, name, read)
    }
}

/// A count of at least so many and at most what is counted with.
pub(super) fn count(reader: &mut Reader<'_>, node: &Node<'_>, least: u32) -> Option<u32> {
    let Node::Integer(whole) = node else {
        return reader.whole(node, least.into()).and(None);
    };
    let count = u32::try_from(*whole).ok().filter(|count| *count >= least);
    if count.is_none() {
        let allowed = [format!("{least} to {}", u32::MAX)];
        let fault = Fault::new(ErrorKind::OutOfRange).got(&whole.to_string());
        reader.note(fault.allowed(allowed));
    }
    count
}

/// The answer of a calculator that answers several things, as JSON.
pub(super) fn told<T: Serialize>(answer: Result<T, Error>) -> Option<Answer> {
    Some(answer.map(|answer| canonical(&answer)))
}

/// The answer of a calculator that answers one thing, as JSON.
pub(super) fn value<T: Serialize>(answer: Result<T, Error>) -> Option<Answer> {
    #[derive(Serialize)]
    struct Value<T> {
        value: T,
    }
    told(answer.map(|value| Value { value }))
}
