//! Containers that were opened before, and why one of them is not used.

use super::container::exact;
use super::{from_zero, named};
use crate::error::Error;
use crate::quantity::{Amount, Unit};
use crate::word::words;
use alloc::format;
use alloc::vec::Vec;
use serde::Serialize;

/// A container that was opened before.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Opened<'a> {
    /// What it is called.
    pub name: &'a str,
    /// What is left in it, zero and above.
    pub volume: Amount,
    /// Whether the fluid in it is the one that is asked for.
    pub same_fluid: bool,
    /// Whether it stood tightly closed.
    pub sealed: bool,
    /// Whether it and the fluid are clean.
    pub clean: bool,
    /// Whether the day it was opened is on it.
    pub dated: bool,
    /// Whether it is within the time the shop allows after that day; `None` where that cannot be told.
    pub within_date: Option<bool>,
}

words! {
    /// Why an opened container is not used.
    pub enum OpenedDefect {
        /// It holds another fluid.
        OtherFluid = "other_fluid",
        /// It did not stand closed.
        NotSealed = "not_sealed",
        /// It or the fluid is not clean.
        NotClean = "not_clean",
        /// Nobody wrote on it when it was opened.
        NotDated = "not_dated",
        /// It was opened too long ago.
        OutOfDate = "out_of_date",
        /// How long it has been open cannot be told.
        AgeUnknown = "age_unknown",
    }
}

/// Whether an opened container can be used.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct OpenedUse<'a> {
    /// What it is called.
    pub name: &'a str,
    /// Whether it can.
    pub usable: bool,
    /// Why not.
    pub reasons: Vec<OpenedDefect>,
}

/// The opened containers that are used.
pub(super) struct Used<'a> {
    pub(super) told: Vec<OpenedUse<'a>>,
    pub(super) names: Vec<&'a str>,
    /// What they hold, in counts.
    pub(super) volume: i128,
    /// What they hold more than is needed.
    pub(super) left: i128,
}

impl<'a> Used<'a> {
    pub(super) fn of(opened: &[Opened<'a>], need: i128) -> Result<Self, Error> {
        let mut used = Used {
            told: Vec::with_capacity(opened.len()),
            names: Vec::new(),
            volume: 0,
            left: 0,
        };
        for (index, container) in opened.iter().enumerate() {
            let path = || format!("opened[{index}].volume");
            named(path(), from_zero("volume", container.volume, Unit::Litre))?;
            let volume = exact(path(), container.volume)?;
            let reasons = container.defects();
            let usable = reasons.is_empty();
            let name = container.name;
            if usable && volume > 0 && used.volume < need {
                used.names.push(name);
                used.volume = used.volume.saturating_add(volume);
            }
            used.told.push(OpenedUse {
                name,
                usable,
                reasons,
            });
        }
        used.left = used.volume.saturating_sub(need).max(0);
        Ok(used)
    }
}

impl Opened<'_> {
    fn defects(&self) -> Vec<OpenedDefect> {
        let table = [
            (!self.same_fluid, OpenedDefect::OtherFluid),
            (!self.sealed, OpenedDefect::NotSealed),
            (!self.clean, OpenedDefect::NotClean),
            (!self.dated, OpenedDefect::NotDated),
            // Without a date nothing is known of its age, and that is told already.
            (
                self.dated && self.within_date == Some(false),
                OpenedDefect::OutOfDate,
            ),
            (
                self.dated && self.within_date.is_none(),
                OpenedDefect::AgeUnknown,
            ),
        ];
        let found = table.into_iter().filter(|(stands, _)| *stands);
        found.map(|(_, defect)| defect).collect()
    }
}
