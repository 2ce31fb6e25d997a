//! Booking: which volumes an entry puts in or takes out, and which flow a capture belongs to.

use crate::leak::Counted;
use crate::record::Entry;
use crate::volume::{Booked, Measures};
use crate::words::Exact;

/// What each entry books, in step with the entries.
pub struct Booking {
    pub added: Vec<Option<Booked>>,
    /// What each flow let out, where it was measured.
    pub captured: Vec<Option<Booked>>,
    /// What was drained, but for what a flow already speaks of.
    pub drained: Vec<Option<Booked>>,
}

/// Something came: a flow of any grade but none and wet.
pub fn lets_out(entry: &Entry) -> bool {
    entry.is("flow") && !matches!(entry.says("grade"), Some("none" | "wet"))
}

impl Booking {
    pub fn of(measures: &Measures, entries: &[Entry], see: &mut dyn FnMut(&str)) -> Self {
        let mut booking = Self {
            added: Vec::new(),
            captured: Vec::new(),
            drained: Vec::new(),
        };
        for entry in entries {
            let added = entry.is("added").then(|| measures.added(entry)).flatten();
            let captured = lets_out(entry).then(|| measures.captured(entry)).flatten();
            let drained = entry
                .is("drained")
                .then(|| measures.drained(entry))
                .flatten();
            if entry.is("added") && added.is_none() {
                see("event: volume not booked");
            }
            booking.added.push(added);
            booking.captured.push(captured);
            booking.drained.push(drained);
        }
        for place in 0..entries.len() {
            if entries[place].says("why") == Some("captured") {
                booking.supply(entries, place, see);
            }
        }
        booking
    }

    /// Drained as captured, a volume belongs to the latest flow that has none, and the entry books nothing itself;
    /// with no such flow it was entered twice and books nothing either.
    fn supply(&mut self, entries: &[Entry], place: usize, see: &mut dyn FnMut(&str)) {
        let Some(volume) = self.drained[place].take() else {
            return;
        };
        let unmeasured = |flow: &usize| lets_out(&entries[*flow]) && self.captured[*flow].is_none();
        match (0..place).rev().find(unmeasured) {
            Some(flow) => {
                self.captured[flow] = Some(volume);
                see("event: captured supplied later");
            }
            None => see("event: captured entered twice"),
        }
    }

    /// The nominal volumes of the first entries, so many of them.
    pub fn counted(&self, first: usize) -> Counted {
        let nominal = |booked: &[Option<Booked>]| -> Exact {
            booked[..first]
                .iter()
                .flatten()
                .map(|booked| &booked.nominal)
                .sum()
        };
        Counted {
            added: nominal(&self.added),
            captured: nominal(&self.captured),
            drained: nominal(&self.drained),
        }
    }
}
