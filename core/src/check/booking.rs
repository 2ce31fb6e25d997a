//! What was poured in and what came out: booked, or found why it cannot be.

use super::correction::Capture;
use super::entry::{DrainedWhy, Measured, MeasuredBy};
use super::evidence::State;
use super::finding::Finding;
use super::measured::{Booked, Unbooked};
use super::sheet::Sheet;
use crate::fluid::Relation;
use crate::procedure::Severity;

impl State {
    /// Takes one pour in, and tells the volume that was booked.
    pub(super) fn pour(
        &mut self,
        sheet: &Sheet<'_>,
        measured: &Measured,
        fluid: Option<&str>,
        seq: u64,
        at: i128,
    ) -> Option<i128> {
        if let Some(poured) = fluid
            && sheet.procedure.is_some()
        {
            self.poured_fluid(sheet, poured, seq);
        }
        self.doubt_pour(sheet, measured, seq);
        self.last_pour = Some((seq, at));
        let booked = self.book(sheet, measured, false, fluid, seq)?;
        self.ledger = self.ledger.moved(booked.span);
        if booked.nominal > self.closing_loss {
            self.unexplained_pour = Some(seq);
        }
        self.closing_loss = self.closing_loss.saturating_sub(booked.nominal).max(0);
        self.volumes.added = self.volumes.added.saturating_add(booked.nominal);
        self.poured_dry = self.poured_dry.saturating_add(booked.nominal);
        Some(booked.nominal)
    }

    fn poured_fluid(&mut self, sheet: &Sheet<'_>, poured: &str, seq: u64) {
        let relation = sheet.relation(poured);
        let finding = |id, severity| {
            Finding::new(id, severity)
                .of([seq])
                .field("fluid")
                .with("fluid", poured)
                .with("relation", relation.slug())
        };
        match relation {
            Relation::Same | Relation::Mixes => {}
            Relation::Never => {
                self.find(finding("fluid_foreign", Severity::Stop));
                self.hold(seq, "foreign_fluid");
            }
            Relation::FullExchangeOnly | Relation::Replaces if sheet.job.fills_by_measure() => {}
            Relation::FullExchangeOnly => {
                self.find(finding("fluid_needs_exchange", Severity::Stop))
            }
            Relation::Replaces | Relation::Unknown => {
                self.find(finding("fluid_unresolved", Severity::Stop))
            }
        }
    }

    /// Takes in what came out.
    pub(super) fn drain(
        &mut self,
        sheet: &Sheet<'_>,
        measured: &Measured,
        why: DrainedWhy,
        capture: Capture,
        seq: u64,
    ) {
        match capture {
            Capture::Supplied => return,
            Capture::Twice => {
                self.find(Finding::new("double_entry", Severity::Caution).of([seq]));
                return;
            }
            Capture::NotOne => {}
        }
        if sheet.procedure.is_some() && self.plug.is_none() {
            self.find(Finding::new("drained_unopened", Severity::Caution).of([seq]));
        }
        let Some(booked) = self.book(sheet, measured, true, None, seq) else {
            return;
        };
        self.ledger = self.ledger.moved(booked.span.negated());
        self.volumes.drained = self.volumes.drained.saturating_add(booked.nominal);
        match why {
            DrainedWhy::ClosingLoss => {
                self.closing_loss = self.closing_loss.saturating_add(booked.nominal)
            }
            DrainedWhy::Excess => self.excess_out = true,
            DrainedWhy::Captured | DrainedWhy::Service => {}
        }
    }

    /// Books a volume, or finds why it cannot be.
    pub(super) fn book(
        &mut self,
        sheet: &Sheet<'_>,
        measured: &Measured,
        drained: bool,
        fluid: Option<&str>,
        seq: u64,
    ) -> Option<Booked> {
        let density = sheet.density(fluid);
        let finding = |id, severity| {
            Finding::new(id, severity)
                .of([seq])
                .with("amount", measured.amount)
        };
        match sheet.booking.book(measured, drained, density) {
            Ok(booked) => {
                if measured.by.is_none() && !measured.amount.is_zero() {
                    self.find(finding("measured_by_missing", Severity::Note).field("measured_by"));
                }
                if measured.by == Some(MeasuredBy::Scale) && density.is_none() {
                    self.find(finding("density_unknown", Severity::Caution));
                }
                Some(booked)
            }
            Err(why) => {
                let id = match why {
                    Unbooked::Negative => "volume_negative",
                    Unbooked::Impossible => "volume_impossible",
                    Unbooked::DensityUnknown => "density_unknown",
                };
                self.find(finding(id, Severity::Stop));
                None
            }
        }
    }
}
