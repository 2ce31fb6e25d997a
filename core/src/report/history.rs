//! The history of units, jobs that may come back, and when to look again, told in plain lines.

use super::cautions::Cautions;
use super::known::told;
use super::page::Page;
use super::sentence::Given;
use super::teller::Teller;
use super::text::heading;
use crate::check::PlugState;
use crate::quantity::Interval;
use crate::record::{Comebacks, FollowUp, History, Loss, Notice, VehicleHistory, Visit};
use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

/// The history of units in plain English lines of at most 80 columns: each visit, what was lost between them, who opened
/// the unit, what a person should know, and every caution in full.
///
/// ```
/// use brimline::{History, report};
/// assert!(report::history(&History::of(&[])).contains("No record"));
/// ```
#[must_use]
pub fn history(history: &History) -> String {
    Teller::english().history(history)
}

/// What may come back in plain English lines of at most 80 columns, with every caution in full.
///
/// ```
/// use brimline::{record::comebacks, report};
/// assert!(report::comebacks(&comebacks(&[])).contains("Nothing was found"));
/// ```
#[must_use]
pub fn comebacks(found: &Comebacks) -> String {
    Teller::english().comebacks(found)
}

/// When to look again, and why, in plain English lines of at most 80 columns, with every caution in full.
#[must_use]
pub fn follow_up(follow_up: &FollowUp) -> String {
    Teller::english().follow_up(follow_up)
}

impl Teller {
    /// The history of units in plain lines of at most 80 columns: each visit, what was lost between them, who opened the
    /// unit, what a person should know, and every caution in full.
    #[must_use]
    pub fn history(&self, history: &History) -> String {
        let mut page = Page::new();
        let mut cautions = Cautions::on(self, None);
        if history.vehicles().is_empty() {
            page.put(
                "",
                &self.sentence("phrase", "no_history", &Given::nothing()),
            );
        }
        notices(self, &mut page, "history", history.notices());
        for unit in history.vehicles() {
            of_unit(self, &mut page, unit);
            cautions.need(&unit.cautions);
        }
        cautions.tell(&mut page);
        page.into_text()
    }

    /// What may come back in plain lines of at most 80 columns, with every caution in full.
    #[must_use]
    pub fn comebacks(&self, found: &Comebacks) -> String {
        let mut page = Page::new();
        let mut cautions = Cautions::on(self, None);
        cautions.need(found.cautions());
        heading(self, &mut page, "comebacks");
        if found.notices().is_empty() {
            page.put(
                "  ",
                &self.sentence("phrase", "no_comebacks", &Given::nothing()),
            );
        }
        notices(self, &mut page, "comeback", found.notices());
        cautions.tell(&mut page);
        page.into_text()
    }

    /// When to look again, and why, in plain lines of at most 80 columns, with every caution in full.
    #[must_use]
    pub fn follow_up(&self, follow_up: &FollowUp) -> String {
        let mut page = Page::new();
        let mut cautions = Cautions::on(self, None);
        cautions.need(follow_up.cautions());
        heading(self, &mut page, "follow_up");
        let due = Given::nothing()
            .with_some("job", follow_up.job().map(|job| job.slug()))
            .with_some("distance", follow_up.distance())
            .with_some("odometer", follow_up.odometer())
            .with_some("days", follow_up.days())
            .with_some("date", follow_up.date().map(|date| date.to_string()));
        let has_due = follow_up.distance().is_some() || follow_up.days().is_some();
        let is_open = follow_up.job().is_some()
            && !(follow_up.is_now() || follow_up.after_hot_drive() || has_due);
        let asked = [
            (follow_up.is_now(), "due_now"),
            (follow_up.after_hot_drive(), "due_hot"),
            (follow_up.distance().is_some(), "due_distance"),
            (follow_up.days().is_some(), "due_days"),
            (is_open, "due_open"),
        ];
        for (_, id) in asked.iter().filter(|(applies, _)| *applies) {
            page.put("  ", &self.sentence("phrase", id, &due));
        }
        for reason in follow_up.because() {
            let said = self.sentence("follow_up", reason.id, &Given::from(&reason.args));
            page.put("  ", &said);
        }
        cautions.tell(&mut page);
        page.into_text()
    }
}

fn of_unit(teller: &Teller, page: &mut Page, unit: &VehicleHistory) {
    let named = Given::nothing()
        .with("vehicle", &unit.vehicle)
        .with_some("unit_name", unit.unit.as_ref());
    page.heading(&teller.say("phrase", "of_unit", &named));
    for (index, one) in unit.visits.iter().enumerate() {
        visit(teller, page, index, one);
    }
    for loss in &unit.losses {
        page.put("  ", &lost(teller, loss));
    }
    if !unit.losses.is_empty() {
        let nothing = Given::nothing();
        page.put(
            "  ",
            &teller.sentence("loss_trend", unit.trend.slug(), &nothing),
        );
    }
    if let Some(distance) = unit.to_limit {
        let given = Given::nothing()
            .with_some("limit", unit.limit)
            .with("distance", ends(teller, distance));
        page.put("  ", &teller.sentence("phrase", "to_limit", &given));
    }
    notices(teller, page, "history", &unit.notices);
}

fn visit(teller: &Teller, page: &mut Page, index: usize, visit: &Visit) {
    let opened = visit
        .plug
        .iter()
        .filter(|event| event.state == PlugState::Open);
    let mut by: Vec<&str> = opened.filter_map(|event| event.by.as_deref()).collect();
    by.dedup();
    let given = Given::nothing()
        .with_some("date", visit.date.map(|date| date.to_string()))
        .with_some("odometer", visit.odometer)
        .with("job", visit.job.slug())
        .with("verdict", visit.verdict.slug())
        .with("found", told(teller, "departure", &visit.as_found))
        .with("net", told(teller, "net", &visit.net))
        .with("by", by.join(", "))
        .with_some("last_opened", visit.last_opened());
    let label = format!("{:>4}  ", index.saturating_add(1));
    page.put(&label, &teller.sentence("phrase", "visit", &given));
}

fn lost(teller: &Teller, loss: &Loss) -> String {
    let given = Given::nothing()
        .with("earlier", loss.from.saturating_add(1))
        .with("later", loss.to.saturating_add(1))
        .with("lost", ends(teller, loss.lost))
        .with_some(
            "per_distance",
            loss.per_1000_km.map(|rate| ends(teller, rate)),
        )
        .with_some("per_time", loss.per_30_days.map(|rate| ends(teller, rate)));
    teller.sentence("phrase", "loss", &given)
}

/// What an interval can be: one amount, from one to another, or bounded on one side.
fn ends(teller: &Teller, interval: Interval) -> String {
    let (lo, hi) = (interval.lo(), interval.hi());
    let id = match (lo, hi) {
        (Some(lo), Some(hi)) if lo == hi => "ends_one",
        (Some(_), Some(_)) => "ends_both",
        (Some(_), None) => "ends_from",
        (None, Some(_)) => "ends_to",
        (None, None) => "ends_none",
    };
    let given = Given::nothing()
        .with_some("end_from", lo)
        .with_some("end_to", hi);
    teller.say("phrase", id, &given)
}

fn notices(teller: &Teller, page: &mut Page, part: &str, notices: &[Notice]) {
    for notice in notices {
        let severity = teller.word("severity", notice.severity.slug());
        let said = teller.sentence(part, notice.id, &Given::from(&notice.args));
        page.put("  ", &format!("{severity} {said}"));
        for cited in &notice.records {
            let entries: Vec<String> = cited.entries.iter().map(ToString::to_string).collect();
            let digest = cited.record.digest();
            let short = digest.get(..12).unwrap_or(digest);
            let given = Given::nothing()
                .with("record", short)
                .with_some("vehicle", cited.record.vehicle())
                .with_some("unit_name", cited.record.unit())
                .with_some("job_id", cited.record.job_id())
                .with("count", entries.len())
                .with("entries", entries.join(", "));
            page.put("      ", &teller.say("phrase", "cited", &given));
        }
    }
}
