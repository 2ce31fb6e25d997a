//! Where in the text a value stands: looked for only when something was wrong.

use super::path::Step;
use crate::error::Position;
use alloc::string::String;
use alloc::vec::Vec;
use core::fmt;
use serde::de::{Deserializer, MapAccess, Visitor};
use serde_json::value::RawValue;

/// Tells the byte at which the value at each path begins. A path that names something absent is told at the
/// innermost value there is on the way.
pub(super) fn locate(
    text: &str,
    part: &str,
    wanted: &[(usize, &[Step])],
    found: &mut dyn FnMut(usize, usize),
) {
    let before = part.len().saturating_sub(part.trim_ascii_start().len());
    let here = offset_in(text, part).saturating_add(before);
    let children = children(part);
    let mut inner: Vec<Vec<(usize, &[Step])>> = children.iter().map(|_| Vec::new()).collect();
    for (index, path) in wanted {
        let child = path
            .split_first()
            .and_then(|(step, rest)| Some((position_of(&children, step)?, rest)));
        match child.and_then(|(place, rest)| Some((inner.get_mut(place)?, rest))) {
            Some((own, rest)) => own.push((*index, rest)),
            None => found(*index, here),
        }
    }
    for ((_, child), own) in children.iter().zip(inner) {
        if !own.is_empty() {
            locate(text, child.get(), &own, found);
        }
    }
}

/// How far into `text` its slice `part` begins.
pub(super) fn offset_in(text: &str, part: &str) -> usize {
    (part.as_ptr() as usize)
        .wrapping_sub(text.as_ptr() as usize)
        .min(text.len())
}

fn position_of(children: &[(Step, &RawValue)], step: &Step) -> Option<usize> {
    match step {
        Step::Again(name) => children
            .iter()
            .rposition(|(own, _)| matches!(own, Step::Key(key) if key == name)),
        Step::Index(index) => Some(*index).filter(|index| *index < children.len()),
        Step::Key(_) => children.iter().position(|(own, _)| own == step),
    }
}

/// The values directly inside an object or a list, with what leads to each; nothing inside anything else.
pub(super) fn children(part: &str) -> Vec<(Step, &RawValue)> {
    if part.trim_ascii_start().starts_with('{') {
        let mut reader = serde_json::Deserializer::from_str(part);
        return reader.deserialize_map(Members).unwrap_or_default();
    }
    let items: Vec<&RawValue> = serde_json::from_str(part).unwrap_or_default();
    items
        .into_iter()
        .enumerate()
        .map(|(index, item)| (Step::Index(index), item))
        .collect()
}

struct Members;

impl<'de> Visitor<'de> for Members {
    type Value = Vec<(Step, &'de RawValue)>;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("an object")
    }

    fn visit_map<A: MapAccess<'de>>(self, mut map: A) -> Result<Self::Value, A::Error> {
        let mut members = Vec::new();
        while let Some((key, value)) = map.next_entry::<String, &RawValue>()? {
            members.push((Step::from(key), value));
        }
        Ok(members)
    }
}

/// A place that moves forward through a text, so that many are found in one pass.
pub(super) struct Place<'t> {
    text: &'t str,
    offset: usize,
    line: usize,
    column: usize,
}

impl<'t> Place<'t> {
    pub(super) const fn start(text: &'t str) -> Self {
        Place {
            text,
            offset: 0,
            line: 1,
            column: 1,
        }
    }

    pub(super) fn advance(&mut self, offset: usize) -> Position {
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
