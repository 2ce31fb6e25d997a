//! How a job stands: what happened as it counts, with the volume each entry moved, for those who bill it.

use super::correction::{Capture, Counted, counted};
use super::entry::{Entry, Fact, Measured, PlugState};
use super::header::Job;
use super::leak::BySheet;
use super::level_check::LevelCheck;
use super::measured::Booked;
use super::sheet::Sheet;
use super::verdict::Verdict;
use crate::fluid::Relation;
use crate::procedure::{Pack, Procedure};
use crate::quantity::{Amount, Unit};
use alloc::string::String;
use alloc::vec::Vec;

/// How a job stands after its newest entry.
pub(crate) struct Standing<'c> {
    pub(crate) pack: &'c Pack,
    pub(crate) job: Job,
    /// The sheet that applies, if one does.
    pub(crate) sheet: Option<&'c Procedure>,
    /// The unit volumes are told in.
    pub(crate) unit: Unit,
    pub(crate) verdict: Verdict,
    pub(crate) by_sheet: BySheet,
    /// How the plug is, where that was said.
    pub(crate) plug: Option<PlugState>,
    pub(crate) cautions: Vec<String>,
    /// The entries that count, in order.
    pub(crate) entries: Vec<Happened<'c>>,
}

/// An entry that counts.
pub(crate) struct Happened<'c> {
    pub(crate) entry: &'c Entry,
    /// What it moved, in exact counts of volume, where it could be booked.
    pub(crate) moved: Option<Moved>,
    /// Whether it tells a volume that could not be booked.
    pub(crate) unbooked: bool,
}

/// A volume that was booked.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Moved {
    /// As it was told.
    pub(crate) nominal: i128,
    pub(crate) least: i128,
    pub(crate) most: i128,
    /// The entry that tells it.
    pub(crate) told_by: u64,
}

impl LevelCheck {
    pub(crate) fn standing(&self) -> Standing<'_> {
        let sheet = self.sheet_now();
        let state = &self.state;
        let (entries, _) = counted(self.entries(), |drained| sheet.books_drained(drained));
        let verdict = state.verdict(&sheet);
        let leak = state.leak(&sheet);
        Standing {
            pack: sheet.pack,
            job: sheet.job,
            sheet: sheet.procedure,
            unit: sheet.unit(),
            verdict,
            by_sheet: leak.by_sheet,
            plug: state.plug,
            cautions: state.cautions(&sheet, verdict),
            entries: entries
                .iter()
                .map(|entry| happened(&sheet, entry))
                .collect(),
        }
    }
}

impl LevelCheck {
    /// What is to be poured next, if anything is.
    pub(crate) fn next_pour(&self) -> Option<Amount> {
        let pours = self.advice().iter().any(|act| act.id == "pour");
        self.state.next_pour(&self.sheet_now()).filter(|_| pours)
    }
}

fn happened<'c>(sheet: &Sheet<'_>, counted: &Counted<'c>) -> Happened<'c> {
    let entry = counted.entry;
    let book = |measured: &Measured, drained, fluid: Option<&str>| {
        let density = sheet.density(fluid);
        Some(sheet.booking.book(measured, drained, density).ok())
    };
    let mut told_by = entry.seq;
    let booked: Option<Option<Booked>> = match &entry.fact {
        Fact::Added {
            measured, fluid, ..
        } => book(measured, false, fluid.as_deref()),
        Fact::Drained { measured, .. } if counted.capture == Capture::NotOne => {
            book(measured, true, None)
        }
        Fact::Flow {
            grade, captured, ..
        } if grade.is_flow() => {
            told_by = counted.supplied.map_or(told_by, |supply| supply.seq);
            let supplied = counted.supplied.map(|supply| supply.measured);
            let captured = supplied.or(*captured);
            captured.and_then(|measured| book(&measured, true, None))
        }
        _ => None,
    };
    let moved = booked.flatten().map(|booked| Moved {
        nominal: booked.nominal,
        least: booked.span.lo.unwrap_or(booked.nominal).max(0),
        most: booked.span.hi.unwrap_or(booked.nominal),
        told_by,
    });
    Happened {
        entry,
        moved,
        unbooked: booked.is_some_and(|booked| booked.is_none()),
    }
}

impl Standing<'_> {
    /// The fluid of a pour: the one it names, or else the sheet's.
    pub(crate) fn fluid<'s>(&'s self, named: Option<&'s str>) -> Option<&'s str> {
        named.or_else(|| self.sheet.and_then(|sheet| sheet.fluid.as_deref()))
    }

    /// Whether a fluid that was poured must never meet the sheet's.
    pub(crate) fn is_foreign(&self, poured: &str) -> bool {
        let own = self.sheet.and_then(|sheet| sheet.fluid.as_deref());
        own.is_some_and(|own| self.pack.relation(poured, own) == Relation::Never)
    }
}
