//! Jobs that may come back without anybody knowing it yet, found in what was recorded.

use super::pattern::{Habits, alike};
use super::series::{Series, by_unit, is_leak_searched, odometer_of};
use super::{ComebackRules, Notice, Record, Unbooked};
use crate::check::{BySheet, Entry, Fact, Job, PlugState, Verdict, standing};
use crate::document::canonical;
use crate::procedure::Severity;
use crate::quantity::Amount;
use alloc::collections::BTreeMap;
use alloc::string::String;
use alloc::vec::Vec;
use serde::Serialize;

/// The format this version writes.
pub(crate) const FORMAT: &str = "brimline-comebacks/1";

/// What was found in many records.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Comebacks {
    format: &'static str,
    records: usize,
    counts: BTreeMap<&'static str, usize>,
    notices: Vec<Notice>,
    cautions: Vec<&'static str>,
}

impl Comebacks {
    /// How many different records count.
    #[must_use]
    pub const fn records(&self) -> usize {
        self.records
    }

    /// How often each thing was found, by its id.
    #[must_use]
    pub const fn counts(&self) -> &BTreeMap<&'static str, usize> {
        &self.counts
    }

    /// What was found, by vehicle and unit in order of time; what is found over the jobs of a person comes last.
    #[must_use]
    pub fn notices(&self) -> &[Notice] {
        &self.notices
    }

    /// Ids of what to mind; they belong beside every telling of it.
    #[must_use]
    pub fn cautions(&self) -> &[&'static str] {
        &self.cautions
    }

    /// The canonical JSON of the answer.
    #[must_use]
    pub fn to_json(&self) -> String {
        canonical(self)
    }
}

/// Closed jobs that were never proven right, leaks nobody followed up, holds nobody lifted, units that were soon low again,
/// and records that look as if they were written afterwards; from what was recorded, under the rules of that day.
///
/// A job is not told where a later record of the same unit has found the level. A record that comes twice counts once, and so
/// does a job that was sealed again with more entries. The order in which records are given says nothing. What looks written afterwards is a question to be asked, not proof.
///
/// ```
/// use brimline::{Pack, Record, record::comebacks};
/// let journal = r#"{"format":"brimline-journal/1","procedure":"pipit-level","job":"check",
///     "subject":{"vehicle":"Tarnik Dale 12"},"entries":[
///     {"seq":1,"at":"2026-03-02T09:00:00Z","kind":"plug","state":"open"},
///     {"seq":2,"at":"2026-03-02T09:10:00Z","kind":"plug","state":"closed"}]}"#;
/// let record = Record::seal(&Pack::embedded()?, journal)?;
/// let found = comebacks(&[record]);
/// assert_eq!(found.notices()[0].id, "never_at_level");
/// assert_eq!(found.notices()[0].records[0].entries, [2]);
/// # Ok::<(), brimline::Error>(())
/// ```
#[must_use]
pub fn comebacks(records: &[Record]) -> Comebacks {
    comebacks_with(records, &ComebackRules::default())
}

/// The same, with rules of the host's own.
#[must_use]
pub fn comebacks_with(records: &[Record], rules: &ComebackRules) -> Comebacks {
    let (series, _) = by_unit(records);
    let mut notices = Vec::new();
    let mut habits = Habits::default();
    for series in &series {
        of_unit(series, rules, &mut notices, &mut habits);
    }
    notices.extend(habits.alike(rules));
    let mut counts = BTreeMap::new();
    for notice in &notices {
        let count: &mut usize = counts.entry(notice.id).or_default();
        *count = count.saturating_add(1);
    }
    Comebacks {
        format: FORMAT,
        records: series.iter().map(|series| series.records.len()).sum(),
        cautions: cautions(&counts),
        counts,
        notices,
    }
}

/// What goes with what was found.
fn cautions(counts: &BTreeMap<&'static str, usize>) -> Vec<&'static str> {
    let found = |ids: &[&str]| ids.iter().any(|id| counts.contains_key(id));
    let unproven = found(&[
        "never_at_level",
        "left_open",
        "opened_below_window",
        "hold_unresolved",
        "poured_unchecked",
    ]);
    let lost = found(&["leak_not_followed", "low_again"]);
    let asked = [
        (true, "decision_limit"),
        (unproven, "not_proven"),
        (unproven, "no_dry_start"),
        (lost, "no_normal_use"),
        (lost, "leak_on_hot"),
    ];
    let asked = asked.iter().filter(|(applies, _)| *applies);
    asked.map(|(_, id)| *id).collect()
}

fn of_unit<'r>(
    series: &Series<'r>,
    rules: &ComebackRules,
    notices: &mut Vec<Notice>,
    habits: &mut Habits<'r>,
) {
    let records = &series.records;
    let last = |asked: &dyn Fn(&Record) -> bool| {
        let is_one = series.vehicle.is_some();
        records
            .iter()
            .rposition(|record| is_one && asked(record))
            .unwrap_or(0)
    };
    let is_past = |record: &Record| record.leak().by_sheet == BySheet::Above;
    let last_found = last(&|record| record.verdict() == Verdict::AtLevel);
    // Searches are looked up only where there is a leak to be searched.
    let is_leaking = records.iter().any(|record| is_past(record));
    let last_search = last(&|record| is_leaking && is_leak_searched(record));
    notices.extend(series.jobs_twice());
    let mut before: Option<&Record> = None;
    for (at, record) in records.iter().enumerate() {
        let entries = standing(record.journal().entries().iter());
        if last_found <= at && record.verdict() != Verdict::AtLevel {
            level(record, &entries, notices);
        }
        if last_search <= at && is_past(record) && !is_leak_searched(record) {
            let leak = record.leak();
            let notice = Notice::new("leak_not_followed", Severity::Stop)
                .of(
                    record,
                    entries_of(record, &["leak_by_count", "leak_by_shortage"]),
                )
                .with_some("used", leak.counted.used)
                .with_some("limit", leak.limit);
            notices.push(notice);
        }
        if let Some(before) = before.filter(|_| series.vehicle.is_some()) {
            notices.extend(low_again(before, record, rules));
        }
        notices.extend(alike(record, &entries, rules));
        habits.take(record, &entries);
        before = Some(record);
    }
}

/// What is to be said of a job that did not find the level.
fn level(record: &Record, entries: &[&Entry], notices: &mut Vec<Notice>) {
    let verdict = record.verdict();
    let plug = entries.iter().rev().find_map(|entry| match entry.fact {
        Fact::Plug { state } => Some((entry.seq, state)),
        _ => None,
    });
    let job = record.journal().header().job;
    let gross = record.leak().counted.gross;
    if verdict == Verdict::OnHold {
        let notice = Notice::new("hold_unresolved", Severity::Stop);
        notices.push(notice.of(record, entries_of(record, &["held"])));
    } else if let Some((seq, state)) = plug
        && job != Job::ConditionOnly
    {
        let severity = match verdict {
            Verdict::Low | Verdict::Over | Verdict::Repeat => Severity::Stop,
            _ => Severity::Caution,
        };
        let id = match state {
            PlugState::Closed => "never_at_level",
            PlugState::Open | PlugState::Loosened => "left_open",
        };
        let notice = Notice::new(id, severity).of(record, [seq]);
        notices.push(notice.with("verdict", verdict.slug()));
    } else if plug.is_none() {
        // Of what could not be booked nobody knows how much all of it is.
        let unbooked = Unbooked::of(record).poured;
        let gross = gross.filter(|_| unbooked.is_empty());
        if !unbooked.is_empty() || gross.is_some_and(|gross| !gross.is_zero()) {
            let notice = Notice::new("poured_unchecked", Severity::Caution).of(record, unbooked);
            notices.push(notice.with_some("gross", gross));
        }
    }
    let below = entries_of(record, &["below_window"]);
    if !below.is_empty() {
        notices.push(Notice::new("opened_below_window", Severity::Caution).of(record, below));
    }
}

/// The entries of those reasons of the sealed answer.
fn entries_of(record: &Record, ids: &[&str]) -> Vec<u64> {
    let reasons = record.because().iter();
    let named = reasons.filter(|reason| ids.contains(&reason.id.as_str()));
    named
        .flat_map(|reason| reason.entries.iter().copied())
        .collect()
}

/// A unit that was left at its level and was found short again soon.
fn low_again(before: &Record, record: &Record, rules: &ComebackRules) -> Option<Notice> {
    let short = record.as_found().hi().filter(Amount::is_negative)?;
    let header = record.journal().header();
    if before.verdict() != Verdict::AtLevel || !header.job.counts_for_leak() {
        return None;
    }
    let days = before.began().zip(record.began());
    let days = days.map(|(from, to)| {
        to.day()
            .duration_since(from.day())
            .as_hours()
            .checked_div(24)
    });
    let days = days.flatten().and_then(|days| u64::try_from(days).ok());
    let driven = odometer_of(header).zip(odometer_of(before.journal().header()));
    let driven = driven.and_then(|(to, from)| to.checked_sub(from).ok());
    let driven = driven.filter(|driven| !driven.is_negative());
    let is_soon = days.is_some_and(|days| days <= rules.soon_days.into())
        || driven.is_some_and(|driven| driven <= rules.soon_distance);
    let notice = Notice::new("low_again", Severity::Caution)
        .of(before, [])
        .of(record, [])
        .with("shortage", short.times(-1).ok()?)
        .with_some("days", days)
        .with_some("distance", driven);
    is_soon.then_some(notice)
}
