//! A check gone through once more for those who show it: each entry that counts, with what is known after it.

use super::correction::counted;
use super::entry::{Entry, Fact};
use super::evaluation::interval;
use super::evidence::State;
use super::level_check::LevelCheck;
use crate::quantity::Interval;
use crate::warm_up::Outlook;
use alloc::vec::Vec;

/// One entry that counts, corrected where it was corrected, and what is known after it.
pub(crate) struct Step<'a> {
    pub(crate) entry: &'a Entry,
    pub(crate) as_found: Interval,
    pub(crate) now: Interval,
}

/// When the window should open, as it was told at a moment.
pub(crate) struct Foretold {
    /// The last reading or pour it counts from, in nanoseconds since 1970.
    pub(crate) from: i128,
    /// The entry it was told after.
    pub(crate) entry: u64,
    pub(crate) outlook: Outlook,
}

/// A whole check.
pub(crate) struct Course<'a> {
    pub(crate) steps: Vec<Step<'a>>,
    /// The forecast that stands, or else the first that had the window still to open.
    pub(crate) foretold: Option<Foretold>,
}

impl LevelCheck {
    /// Every entry that counts, in order, with what is known after it. The last step is what the result says.
    pub(crate) fn course(&self) -> Course<'_> {
        let sheet = self.sheet_now();
        let books = |drained: &_| sheet.books_drained(drained);
        let (entries, _) = counted(self.entries(), books);
        let foretold = |entry: &Entry, state: &State| {
            Some(Foretold {
                from: state.heat.last()?.at(),
                entry: entry.seq,
                outlook: state.outlook(&sheet)?,
            })
        };
        let opens = |told: &Foretold| told.outlook.opens.is_some_and(|span| span.is_ahead());
        let told = |span| interval(span, sheet.unit());
        let mut state = State::new();
        let mut steps = Vec::with_capacity(entries.len());
        let mut known = [Interval::UNBOUNDED; 2];
        let mut first = None;
        for counted in &entries {
            let before = (state.ledger.found, state.ledger.now);
            state.take(&sheet, counted);
            // Most entries change nothing that is known.
            if before != (state.ledger.found, state.ledger.now) {
                known = [told(state.ledger.found), told(state.ledger.now)];
            }
            let entry = counted.entry;
            let [as_found, now] = known;
            steps.push(Step {
                entry,
                as_found,
                now,
            });
            if first.is_none() && matches!(entry.fact, Fact::Temperature { .. }) {
                first = foretold(entry, &state).filter(opens);
            }
        }
        let stands = entries.last().and_then(|last| foretold(last.entry, &state));
        Course {
            foretold: stands.or(first),
            steps,
        }
    }
}
