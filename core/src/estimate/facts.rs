//! What of a job is billed so far: the facts of its journal.

use super::goods::Stream;
use super::work::{Poured, Work};
use crate::check::{
    Entry, Fact, Grade, Happened, Job, LevelCheck, PlugState, Standing, StripResult,
};
use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

/// What of a job is billed so far, and what else its journal says to the counter.
pub(super) struct Facts<'c> {
    pub(super) work: Work<'c>,
    /// The least and the most that came out, in exact counts of volume; no most where something was not measured.
    pub(super) out_from: i128,
    pub(super) out_to: Option<i128>,
    /// Flows that were not measured, and drained volumes that could not be booked.
    pub(super) unmeasured: Vec<u64>,
    /// Entries whose volume could not be booked, so that it is not billed.
    pub(super) unbooked: Vec<u64>,
    /// The approvals in order: their entries, and the ceilings as they were written.
    pub(super) approved: Vec<(&'c Entry, &'c str)>,
}

/// Where in the journal a field of an entry that counts stands: in the entry itself, or in what a correction puts there.
pub(super) fn path(check: &LevelCheck, entry: &Entry, field: &str) -> String {
    let within = |mut own: &Entry| {
        let mut path = String::new();
        // They share a `seq`, so they are told apart by where they are kept.
        while !core::ptr::eq(own, entry) {
            let Fact::Correction { replaces, .. } = &own.fact else {
                return None;
            };
            own = replaces.as_deref()?;
            path.push_str("replaces.");
        }
        Some(path)
    };
    let mut places = check.entries().enumerate();
    let path = places.find_map(|(place, own)| {
        let within = within(own)?;
        Some(format!("entries[{place}].{within}{field}"))
    });
    path.unwrap_or_default()
}

impl<'c> Facts<'c> {
    pub(super) fn of(check: &'c LevelCheck, standing: &'c Standing<'c>) -> Self {
        let mut facts = Facts {
            work: Work::of(standing.job, standing.sheet),
            out_from: 0,
            out_to: Some(0),
            unmeasured: Vec::new(),
            unbooked: Vec::new(),
            approved: Vec::new(),
        };
        let mut closing = Closing::default();
        for happened in &standing.entries {
            facts.take(check, standing, happened);
            closing.take(happened);
        }
        closing.close();
        let closings = u64::try_from(closing.seqs.len()).unwrap_or(u64::MAX);
        facts.work.closings = (closings, closing.seqs);
        facts
    }

    fn take(&mut self, check: &LevelCheck, standing: &'c Standing<'c>, happened: &Happened<'c>) {
        let seq = happened.entry.seq;
        if happened.unbooked {
            self.unbooked.push(seq);
        }
        match &happened.entry.fact {
            Fact::Added {
                fluid, container, ..
            } => {
                let named = fluid.as_deref();
                if named.is_some_and(|fluid| standing.is_foreign(fluid)) {
                    self.work.stream = Stream::Mixed;
                }
                let Some(moved) = happened.moved else { return };
                let own = standing.fluid(named).unwrap_or_default();
                let known = self.work.poured.iter().position(|pour| pour.fluid == own);
                let place = known.unwrap_or(self.work.poured.len());
                if known.is_none() {
                    let from_sheet = named.is_none() && !own.is_empty();
                    self.work.poured.push(Poured {
                        fluid: own,
                        path: if from_sheet {
                            "procedure.fluid".to_string()
                        } else {
                            path(check, happened.entry, "fluid")
                        },
                        count: 0,
                        entries: Vec::new(),
                        containers: Vec::new(),
                    });
                }
                if let Some(pour) = self.work.poured.get_mut(place) {
                    pour.count = pour.count.saturating_add(moved.nominal);
                    pour.entries.push(seq);
                    let named = container.as_deref();
                    pour.containers
                        .extend(named.map(|name| (name, moved.nominal)));
                }
            }
            Fact::Flow { grade, .. } => self.out(happened, *grade),
            Fact::Drained { .. } => self.out(happened, Grade::None),
            // Looking for the leak is what a follow-up is for: its own labour pays for it.
            Fact::Confirmed { what }
                if what == "leak_searched" && standing.job != Job::LeakFollowUp =>
            {
                self.work.leak_search.get_or_insert_default().push(seq);
            }
            Fact::Confirmed { what } if what == "plug_replaced" => {
                let (count, entries) = &mut self.work.plugs;
                *count = count.saturating_add(1);
                entries.push(seq);
            }
            Fact::Fluid {
                appearance,
                coolant_strip,
                ..
            } => {
                let looks = matches!(
                    appearance.as_deref(),
                    Some("milky" | "pink_foam" | "foreign")
                );
                if looks || *coolant_strip == Some(StripResult::Positive) {
                    self.work.stream = Stream::Mixed;
                }
            }
            Fact::Approved { ceiling } => self.approved.push((happened.entry, ceiling)),
            _ => {}
        }
    }

    /// What came out: measured, or not, or told so that it could not be booked.
    fn out(&mut self, happened: &Happened<'_>, grade: Grade) {
        let Some(moved) = happened.moved else {
            if grade.is_flow() || happened.unbooked {
                self.unmeasured.push(happened.entry.seq);
                self.out_to = None;
            }
            return;
        };
        let (count, entries) = &mut self.work.out;
        *count = count.saturating_add(moved.nominal);
        entries.push(moved.told_by);
        self.out_from = self.out_from.saturating_add(moved.least);
        self.out_to = self.out_to.map(|to| to.saturating_add(moved.most));
    }

    /// What was poured so far, in exact counts of volume, whatever the fluid.
    pub(super) fn poured(&self) -> i128 {
        let poured = self.work.poured.iter();
        poured.fold(0, |sum, pour| sum.saturating_add(pour.count))
    }
}

/// How often a plug that was open was closed for good: tightened, or at the end only put in.
#[derive(Default)]
struct Closing {
    is_due: bool,
    put_in: Option<u64>,
    seqs: Vec<u64>,
}

impl Closing {
    fn take(&mut self, happened: &Happened<'_>) {
        let seq = happened.entry.seq;
        match &happened.entry.fact {
            Fact::Plug {
                state: PlugState::Closed,
            } => self.put_in = Some(seq),
            Fact::Plug { .. } => {
                self.is_due = true;
                self.put_in = None;
            }
            Fact::Tightened { .. } if self.is_due => {
                self.seqs.push(seq);
                self.is_due = false;
            }
            _ => {}
        }
    }

    fn close(&mut self) {
        if self.is_due {
            self.seqs.extend(self.put_in);
        }
    }
}
