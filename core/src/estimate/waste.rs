//! What came out of a unit, for the disposal log.

use super::facts::Facts;
use super::goods::Stream;
use crate::check::LevelCheck;
use crate::error::Error;
use crate::quantity::{Amount, Interval, Rounding, Unit};
use alloc::vec::Vec;
use serde::Serialize;

/// What came out of a unit and where it goes.
///
/// It is all that was drained, caught and lost; new fluid left in a container is none of it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct Waste {
    /// Where it goes: mixed once coolant or a foreign fluid was found in it.
    pub stream: Stream,
    /// How much, as it was measured (volume).
    pub volume: Amount,
    /// What is proved of that: how far the measuring may be off, and no end where something was not measured.
    pub between: Interval,
    /// The entries that say so.
    pub entries: Vec<u64>,
    /// Flows that were not measured, and drained volumes that could not be booked.
    pub unmeasured: Vec<u64>,
}

/// What came out on a job, for the disposal log, in the unit its volumes are told in.
///
/// # Errors
/// `out_of_range` for more than an amount holds.
///
/// ```
/// use brimline::{LevelCheck, Pack, estimate::waste};
/// let journal = r#"{"format":"brimline-journal/1","procedure":"pipit-level","job":"check","entries":[
///     {"seq":1,"at":"2026-03-02T09:00:00Z","kind":"plug","state":"open"},
///     {"seq":2,"at":"2026-03-02T09:01:00Z","kind":"drained","volume":"0.3 L","measured_by":"jug","why":"excess"}]}"#;
/// let out = waste(&LevelCheck::replay(&Pack::embedded()?, journal)?)?;
/// assert_eq!((out.stream.slug(), out.volume.to_string().as_str()), ("oil", "0.3 L"));
/// assert_eq!(out.between.to_string(), "[0.28 L, 0.32 L]");
/// # Ok::<(), brimline::Error>(())
/// ```
pub fn waste(check: &LevelCheck) -> Result<Waste, Error> {
    let standing = check.standing();
    Waste::of(&Facts::of(check, &standing), standing.unit)
}

impl Waste {
    pub(super) fn of(facts: &Facts<'_>, unit: Unit) -> Result<Self, Error> {
        let told = |count, rounding| Amount::from_count(count, unit, 6, rounding);
        let (count, entries) = &facts.work.out;
        let to = facts.out_to.map(|to| told(to, Rounding::Ceiling));
        Ok(Waste {
            stream: facts.work.stream,
            volume: told(*count, Rounding::HalfUp)?,
            between: Interval::new(
                Some(told(facts.out_from, Rounding::Floor)?),
                to.transpose()?,
            )?,
            entries: entries.clone(),
            unmeasured: facts.unmeasured.clone(),
        })
    }
}
