//! What a warranty file is asked for and a record does not say.

use super::sealing::Record;
use crate::check::{DrainedWhy, Entry, Fact, PlugState, Verdict, standing};
use crate::procedure::Severity;
use alloc::collections::BTreeSet;
use alloc::vec::Vec;
use serde::Serialize;

/// One thing a record does not say.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct Lack {
    /// The stable name.
    pub id: &'static str,
    /// `stop`: what the file is to show is not shown; `caution`: it will be asked for; `note`: it would help.
    pub severity: Severity,
    /// The entries that do not say it, by `seq`; none where it is the whole job.
    pub entries: Vec<u64>,
}

impl Record {
    /// What a warranty file is asked for and this record does not say; only what this job calls for. Entries count as
    /// they were corrected; what the sheet asks of a look is told as the sealed reasons have it.
    ///
    /// ```
    /// use brimline::{Pack, Record};
    /// let journal = r#"{"format":"brimline-journal/1","procedure":"pipit-level","edition":1,"job":"top_up","entries":[
    ///     {"seq":1,"at":"2026-03-02T09:00:00Z","kind":"added","volume":"0.5 L","measured_by":"jug","by":"Tilda"}]}"#;
    /// let record = Record::seal(&Pack::embedded()?, journal)?;
    /// let lacks = record.evidence();
    /// let batch = lacks.iter().find(|lack| lack.id == "batch").expect("no batch was named");
    /// assert_eq!(batch.entries, [1]);
    /// // The plug was never opened, so nobody asks for its torque.
    /// assert!(lacks.iter().all(|lack| lack.id != "torque"));
    /// # Ok::<(), brimline::Error>(())
    /// ```
    #[must_use]
    pub fn evidence(&self) -> Vec<Lack> {
        let mut file = File {
            record: self,
            entries: standing(self.journal().entries().iter()),
            lacks: Vec::new(),
        };
        file.of_the_job();
        file.of_the_looks();
        file.of_the_fluid();
        file.of_the_closing();
        file.lacks
    }
}

struct File<'r> {
    record: &'r Record,
    entries: Vec<&'r Entry>,
    lacks: Vec<Lack>,
}

const fn is_look(fact: &Fact) -> bool {
    matches!(fact, Fact::Flow { .. })
}

const fn is_closing(fact: &Fact) -> bool {
    matches!(
        fact,
        Fact::Plug {
            state: PlugState::Closed
        }
    )
}

const fn is_opening(fact: &Fact) -> bool {
    matches!(fact, Fact::Plug { .. }) && !is_closing(fact)
}

impl File<'_> {
    /// Something the whole job does not say.
    fn lack(&mut self, id: &'static str, severity: Severity, lacks: bool) {
        if lacks {
            let entries = Vec::new();
            self.lacks.push(Lack {
                id,
                severity,
                entries,
            });
        }
    }

    /// Something these entries do not say.
    fn lack_of(&mut self, id: &'static str, severity: Severity, entries: Vec<u64>) {
        if !entries.is_empty() {
            self.lacks.push(Lack {
                id,
                severity,
                entries,
            });
        }
    }

    /// The entries of which something is so.
    fn which(&self, is: impl Fn(&Entry) -> bool) -> Vec<u64> {
        let entries = self.entries.iter().filter(|entry| is(entry));
        entries.map(|entry| entry.seq).collect()
    }

    fn any(&self, is: impl Fn(&Fact) -> bool) -> bool {
        self.entries.iter().any(|entry| is(&entry.fact))
    }

    /// The looks of which the sealed reasons say one of these.
    fn looks_told(&self, ids: &[&str]) -> Vec<u64> {
        let reasons = self.record.because().iter();
        let told = reasons.filter(|reason| ids.contains(&reason.id.as_str()));
        told.filter_map(|reason| reason.entries.first().copied())
            .collect::<BTreeSet<u64>>()
            .into_iter()
            .collect()
    }

    fn of_the_job(&mut self) {
        let header = self.record.journal().header();
        let subject = header.subject.as_ref();
        let pin = header.pack.as_ref();
        let has_unit = subject.is_some_and(|subject| subject.unit.is_some());
        let has_odometer = subject.is_some_and(|subject| subject.odometer.is_some());
        let has_digest = pin.is_some_and(|pin| pin.digest.is_some());
        self.lack(
            "sheet",
            Severity::Stop,
            self.record.procedure().edition.is_none(),
        );
        self.lack(
            "hold_release",
            Severity::Stop,
            self.record.verdict() == Verdict::OnHold,
        );
        self.lack("vehicle", Severity::Caution, subject.is_none());
        self.lack("unit", Severity::Note, !has_unit);
        self.lack("odometer", Severity::Caution, !has_odometer);
        self.lack("edition", Severity::Note, header.edition.is_none());
        self.lack("pack", Severity::Note, pin.is_none());
        self.lack("pack_digest", Severity::Note, pin.is_some() && !has_digest);
        let signed = |fact: &Fact| {
            is_look(fact)
                || is_closing(fact)
                || matches!(
                    fact,
                    Fact::Reading { .. } | Fact::Tightened { .. } | Fact::Added { .. }
                )
        };
        let unsigned = self.which(|entry| signed(&entry.fact) && entry.by.is_none());
        self.lack_of("technician", Severity::Caution, unsigned);
    }

    fn of_the_looks(&mut self) {
        let opened = self.any(is_opening);
        self.lack("look", Severity::Stop, opened && !self.any(is_look));
        let cold = self.looks_told(&["temperature_missing", "temperature_stale"]);
        self.lack_of("temperature", Severity::Stop, cold);
        let leaning = self.looks_told(&["tilt_unknown"]);
        self.lack_of("tilt", Severity::Caution, leaning);
        let unranged = self.looks_told(&["ranges"]);
        self.lack_of("ranges", Severity::Caution, unranged);
        let uncaught = self.uncaught();
        self.lack_of("captured", Severity::Caution, uncaught);
        let uncleaned = self.which(
            |entry| matches!(&entry.fact, Fact::Seepage { cleaned, .. } if *cleaned != Some(true)),
        );
        self.lack_of("residue_cleaned", Severity::Note, uncleaned);
    }

    /// Flows of which nobody says how much ran out, in an entry of its own neither.
    fn uncaught(&self) -> Vec<u64> {
        let mut open = Vec::new();
        for entry in &self.entries {
            match &entry.fact {
                Fact::Flow {
                    grade,
                    captured: None,
                    ..
                } if grade.is_flow() => open.push(entry.seq),
                Fact::Drained {
                    why: DrainedWhy::Captured,
                    ..
                } => {
                    open.pop();
                }
                _ => {}
            }
        }
        open
    }

    fn of_the_fluid(&mut self) {
        let poured = |is: fn(&Fact) -> bool| self.which(|entry| is(&entry.fact));
        let unnamed = poured(|fact| matches!(fact, Fact::Added { fluid: None, .. }));
        let no_batch = poured(|fact| matches!(fact, Fact::Added { batch: None, .. }));
        let no_container = poured(|fact| {
            matches!(
                fact,
                Fact::Added {
                    container: None,
                    ..
                }
            )
        });
        let unmeasured = poured(|fact| match fact {
            Fact::Added { measured, .. } | Fact::Drained { measured, .. } => measured.by.is_none(),
            _ => false,
        });
        self.lack_of("fluid", Severity::Caution, unnamed);
        self.lack_of("batch", Severity::Caution, no_batch);
        self.lack_of("container", Severity::Note, no_container);
        self.lack_of("measured_by", Severity::Note, unmeasured);
    }

    fn of_the_closing(&mut self) {
        let mut plugs = self.entries.iter().enumerate().rev();
        let last = plugs.find(|(_, entry)| matches!(entry.fact, Fact::Plug { .. }));
        let Some((place, last)) = last.filter(|_| self.any(is_opening)) else {
            return;
        };
        let closing = alloc::vec![last.seq];
        if !is_closing(&last.fact) {
            return self.lack_of("closing", Severity::Stop, closing);
        }
        let after: Vec<&Entry> = self.entries.iter().skip(place).copied().collect();
        let tightened = |is: fn(&Fact) -> bool| -> Vec<u64> {
            let entries = after.iter().filter(|entry| is(&entry.fact));
            entries.map(|entry| entry.seq).collect()
        };
        let all = tightened(|fact| matches!(fact, Fact::Tightened { .. }));
        let no_tool = tightened(|fact| matches!(fact, Fact::Tightened { tool: None, .. }));
        let no_adapter = tightened(|fact| matches!(fact, Fact::Tightened { adapter: None, .. }));
        let unchecked = !self.is_confirmed(&after, "drips_checked");
        let wet = !self.is_confirmed(&self.entries, "cleaned_dry");
        let of_closing = |lacks: bool| if lacks { closing.clone() } else { Vec::new() };
        self.lack_of("torque", Severity::Stop, of_closing(all.is_empty()));
        self.lack_of("tool", Severity::Caution, no_tool);
        self.lack_of("adapter", Severity::Note, no_adapter);
        self.lack_of("drips_checked", Severity::Caution, of_closing(unchecked));
        self.lack_of("cleaned_dry", Severity::Note, of_closing(wet));
    }

    /// Whether a thing is confirmed among these, or always holds in this shop.
    fn is_confirmed(&self, entries: &[&Entry], wanted: &str) -> bool {
        let profile = self.record.journal().header().profile.as_ref();
        profile.is_some_and(|profile| profile.standing.iter().any(|what| what == wanted))
            || entries
                .iter()
                .any(|entry| matches!(&entry.fact, Fact::Confirmed { what } if what == wanted))
    }
}
