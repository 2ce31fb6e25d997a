//! One look at the opening: what it counts for, what ran out, and what it proves.

use super::entry::{Grade, Measured, PlugState};
use super::evidence::{Repeat, State};
use super::finding::Finding;
use super::ledger::{Ledger, Span};
use super::measured::Booked;
use super::sheet::Sheet;
use super::verdict::{Row, Verdict};
use crate::procedure::{Defect, Severity, Sign};
use crate::quantity::Amount;
use alloc::vec::Vec;

/// A temperature that can prove something on this sheet.
#[derive(Debug, Clone, Copy)]
pub(super) struct Sample {
    pub(super) seq: u64,
    pub(super) reading: Amount,
    pub(super) at: i128,
}

/// What became of an observation.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Outcome {
    /// It says what the verdict cell says.
    Counts,
    /// What ran out was the opening's own contents, or too short a look at a flow.
    Spurt,
    /// Too short a look at nothing.
    ShortLook,
    /// The plug was not open.
    NotOpen,
    /// No temperature proves anything.
    NoTemperature,
    /// The last temperature was too old.
    Stale,
    /// It contradicts what these entries prove.
    Contradicted {
        below: Option<u64>,
        above: Option<u64>,
    },
}

/// One look at the opening.
#[derive(Debug, Clone)]
pub(super) struct Observation {
    pub(super) seq: u64,
    pub(super) grade: Grade,
    pub(super) outcome: Outcome,
    pub(super) defects: Vec<Defect>,
    pub(super) sample: Option<Sample>,
    /// How the unit leaned.
    pub(super) tilt: Option<Amount>,
    pub(super) captured: Option<Booked>,
    pub(super) verdict: Option<Verdict>,
    /// What is known of the departure after it.
    pub(super) now: Span,
}

impl State {
    /// Takes one look in.
    pub(super) fn observe(
        &mut self,
        sheet: &Sheet<'_>,
        grade: Grade,
        watched: Amount,
        captured: Option<Measured>,
        seq: u64,
        at: i128,
    ) {
        let is_open = self.plug == Some(PlugState::Open);
        let is_first = is_open && self.looks_since_open == 0;
        if is_open {
            self.looks_since_open = self.looks_since_open.saturating_add(1);
        }
        let flows = grade.is_flow();
        let captured = match captured {
            Some(_) if !flows => {
                self.find(
                    Finding::new("captured_without_flow", Severity::Caution)
                        .of([seq])
                        .field("captured"),
                );
                None
            }
            Some(measured) => self.book(sheet, &measured, true, None, seq),
            None => None,
        };
        if let Some(booked) = captured {
            self.volumes.captured = self.volumes.captured.saturating_add(booked.nominal);
        }
        let Some(procedure) = sheet.procedure else {
            if let Some(booked) = captured {
                self.ledger = self.ledger.moved(booked.span.negated());
            }
            return;
        };
        if !is_open {
            self.find(Finding::new("plug_not_open", Severity::Caution).of([seq]));
        }
        let watched = watched.count().unwrap_or(0);
        let freshness = self.freshness(sheet, at);
        let sample = freshness.unwrap_or(None);
        let read = match freshness {
            Err(Outcome::Stale) => self.sample,
            _ => sample,
        };
        let mut defects = self.defects(sheet, sample, at.saturating_sub(watched));
        if grade == Grade::Spitting {
            defects.push(Defect::Foam);
        }
        let sign = defects
            .iter()
            .map(|defect| procedure.sign(*defect))
            .reduce(Sign::and);
        let is_own_contents = is_first
            && captured.is_some_and(|booked| 0 < booked.nominal && booked.nominal <= sheet.hold_up);
        let is_short = watched < sheet.watch;
        let outcome = match freshness {
            _ if flows && (is_short || is_own_contents) => Outcome::Spurt,
            _ if is_short => Outcome::ShortLook,
            _ if !is_open => Outcome::NotOpen,
            Err(outcome) => outcome,
            Ok(_) => Outcome::Counts,
        };
        // What ran out, whatever it proves.
        let blind = !is_open || freshness.is_err() || matches!(sign, Some(Sign::High | Sign::Both));
        let outflow = |ledger: &Ledger| match captured {
            Some(booked) => booked.span.negated(),
            None if outcome == Outcome::Spurt && grade.is_at_lip() => {
                Span::new(sheet.hold_up.saturating_neg(), 0)
            }
            None if blind => Span::UP_TO_ZERO,
            None => Span {
                lo: ledger.now.hi.map(|hi| hi.max(0).saturating_neg()),
                hi: Some(0),
            },
        };
        let row = Row::of(grade);
        let mut look = Observation {
            seq,
            grade,
            outcome,
            defects,
            sample: read,
            tilt: self.tilt.map(|(tilt, _)| tilt),
            captured,
            verdict: None,
            now: self.ledger.now,
        };
        match outcome {
            Outcome::Counts => match self.proved(sheet, row, sign, flows, seq, outflow) {
                Some(ledger) => {
                    self.ledger = ledger;
                    look.verdict = Some(row.verdict(sign));
                }
                None => {
                    let (below, above) = (self.ledger.bounds_below, self.ledger.bounds_above);
                    if let Some(booked) = captured {
                        self.ledger = self.ledger.moved(booked.span.negated());
                    }
                    look.outcome = Outcome::Contradicted { below, above };
                    look.verdict = Some(Verdict::NotProven);
                    let bounds = [below, above.filter(|above| below != Some(*above))];
                    let finding = Finding::new("contradiction", Severity::Caution);
                    self.find(finding.of([seq]).of(bounds.into_iter().flatten()));
                }
            },
            Outcome::ShortLook => {}
            _ => {
                if flows {
                    self.ledger = self.ledger.moved(outflow(&self.ledger));
                }
                look.verdict = (outcome != Outcome::Spurt).then_some(Verdict::Incomplete);
            }
        }
        look.now = self.ledger.now;
        if flows && look.outcome != Outcome::Spurt {
            self.poured_dry = 0;
            self.checked_dry = 0;
        }
        if look.verdict == Some(Verdict::AtLevel) {
            self.found = Some((seq, self.volumes));
        }
        if look.verdict.is_some() {
            if self.repeat == Repeat::UntilObserved {
                self.repeat = Repeat::No;
            }
            self.deciding = Some(look.clone());
        }
        self.looks.push(look);
    }

    /// The ledger after a look that may be used, or nothing if it contradicts what is known.
    fn proved(
        &self,
        sheet: &Sheet<'_>,
        row: Row,
        sign: Option<Sign>,
        flows: bool,
        seq: u64,
        outflow: impl Fn(&Ledger) -> Span,
    ) -> Option<Ledger> {
        let mut ledger = self.ledger;
        if flows {
            if !matches!(sign, Some(Sign::High | Sign::Both)) {
                ledger = ledger.constrained(Span::FROM_ZERO, seq)?;
            }
            ledger = ledger.moved(outflow(&ledger));
        }
        let reading = row.apparent(sheet.lip_band);
        match sign {
            None => ledger.constrained(reading, seq),
            Some(Sign::Low) => ledger.constrained(
                Span {
                    hi: None,
                    ..reading
                },
                seq,
            ),
            Some(Sign::High) => ledger.constrained(
                Span {
                    lo: None,
                    ..reading
                },
                seq,
            ),
            Some(Sign::Both) => Some(ledger),
        }
    }
}
