//! The faults of one document as they are found, told at once and in the order they stand.

use super::limits::{Limits, exceeded};
use super::path::{Step, spell};
use super::place::{Place, locate};
use crate::error::{Error, Fault};
use alloc::vec::Vec;

/// A piece of the text that is JSON by itself, and how many steps lead to it.
#[derive(Debug, Clone, Copy)]
pub(super) struct Part<'t> {
    pub(super) text: &'t str,
    pub(super) depth: usize,
}

/// One fault, the way to its value, and its place in bytes where that is known already.
#[derive(Debug)]
struct Found<'t> {
    part: Part<'t>,
    fault: Fault,
    path: Vec<Step>,
    offset: Option<usize>,
}

/// The faults found so far.
#[derive(Debug)]
pub(super) struct Faults<'t> {
    limits: &'t Limits,
    found: Vec<Found<'t>>,
    left_out: usize,
}

impl<'t> Faults<'t> {
    pub(super) const fn new(limits: &'t Limits) -> Self {
        Faults {
            limits,
            found: Vec::new(),
            left_out: 0,
        }
    }

    /// Notes a fault at a path, and at a place in bytes if it is known.
    pub(super) fn note(
        &mut self,
        part: Part<'t>,
        path: Vec<Step>,
        offset: Option<usize>,
        fault: Fault,
    ) {
        if self.found.len() < self.limits.faults() {
            self.found.push(Found {
                part,
                fault,
                path,
                offset,
            });
        } else {
            self.left_out = self.left_out.saturating_add(1);
        }
    }

    /// All of them with their positions in the text, or nothing if there are none.
    pub(super) fn told(mut self, text: &str) -> Result<(), Error> {
        for group in self
            .found
            .chunk_by_mut(|a, b| core::ptr::eq(a.part.text, b.part.text))
        {
            find_places(text, group);
        }
        self.found.sort_by_key(|found| found.offset);
        let mut place = Place::start(text);
        let mut faults: Vec<Fault> = Vec::with_capacity(self.found.len());
        for found in self.found {
            let mut fault = found.fault.at(spell(&found.path));
            fault.position = found.offset.map(|offset| place.advance(offset));
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

/// Finds where the values of the faults of one part stand.
fn find_places(text: &str, group: &mut [Found<'_>]) {
    let Some(part) = group.first().map(|found| found.part.text) else {
        return;
    };
    let mut offsets: Vec<Option<usize>> = group.iter().map(|found| found.offset).collect();
    let unplaced = group
        .iter()
        .enumerate()
        .filter(|(_, found)| found.offset.is_none());
    let wanted: Vec<(usize, &[Step])> = unplaced
        .filter_map(|(index, found)| Some((index, found.path.get(found.part.depth..)?)))
        .collect();
    if !wanted.is_empty() {
        locate(text, part, &wanted, &mut |index, offset| {
            if let Some(place) = offsets.get_mut(index) {
                *place = Some(offset);
            }
        });
    }
    for (found, offset) in group.iter_mut().zip(offsets) {
        found.offset = offset;
    }
}
