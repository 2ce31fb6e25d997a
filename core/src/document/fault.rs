//! The faults of one document as they are found, told at once and in the order they stand.

use super::limits::{Limits, exceeded};
use super::path::{Step, spell};
use crate::error::{Error, Fault, Position};
use alloc::vec::Vec;

/// The faults found so far, each with its path and where it stands in bytes.
#[derive(Debug)]
pub(super) struct Faults<'l> {
    limits: &'l Limits,
    found: Vec<(usize, Fault)>,
    left_out: usize,
}

impl<'l> Faults<'l> {
    pub(super) const fn new(limits: &'l Limits) -> Self {
        Faults {
            limits,
            found: Vec::new(),
            left_out: 0,
        }
    }

    /// Notes a fault at a path and an offset.
    pub(super) fn note<'s, 'a: 's>(
        &mut self,
        path: impl IntoIterator<Item = &'s Step<'a>>,
        offset: usize,
        fault: Fault,
    ) {
        if self.found.len() < self.limits.faults() {
            self.found.push((offset, fault.at(spell(path))));
        } else {
            self.left_out = self.left_out.saturating_add(1);
        }
    }

    /// All of them with their positions in the text, or nothing if there are none.
    pub(super) fn told(mut self, text: &str) -> Result<(), Error> {
        self.found.sort_by_key(|(offset, _)| *offset);
        let mut place = Place::start(text);
        let mut faults: Vec<Fault> = Vec::with_capacity(self.found.len());
        for (offset, mut fault) in self.found {
            fault.position = Some(place.advance(offset));
            faults.push(fault);
        }
        if self.left_out > 0 {
            let limit = self.limits.faults();
            faults.push(exceeded(
                "faults",
                limit,
                limit.saturating_add(self.left_out),
            ));
        }
        Error::from_faults(faults).map_or(Ok(()), Err)
    }
}

/// A place that moves forward through a text, so that many are found in one pass.
struct Place<'t> {
    text: &'t str,
    offset: usize,
    line: usize,
    column: usize,
}

impl<'t> Place<'t> {
    const fn start(text: &'t str) -> Self {
        Place {
            text,
            offset: 0,
            line: 1,
            column: 1,
        }
    }

    fn advance(&mut self, offset: usize) -> Position {
        for letter in self
            .text
            .get(self.offset..offset)
            .unwrap_or_default()
            .chars()
        {
            if letter == '\n' {
                self.line = self.line.saturating_add(1);
                self.column = 1;
            } else {
                self.column = self.column.saturating_add(1);
            }
        }
        self.offset = offset;
        let count = |n: usize| u32::try_from(n).unwrap_or(u32::MAX);
        Position {
            line: count(self.line),
            column: count(self.column),
            offset: count(offset),
        }
    }
}
