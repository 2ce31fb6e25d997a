//! When a job is to be looked at again: after what distance or time, and why.

use super::outcome::Outcome;
use super::{FollowUpRules, Record, VehicleHistory};
use crate::check::{Arg, Args, BySheet, Certainty, Job, Moment, Verdict};
use crate::document::{canonical, day};
use crate::error::Error;
use crate::leak::Trend;
use crate::quantity::{Amount, Interval, Rounding, Unit};
use alloc::string::String;
use alloc::vec::Vec;
use jiff::Span;
use jiff::civil::Date;
use serde::Serialize;

/// The format this version writes.
pub(crate) const FORMAT: &str = "brimline-follow-up/1";

/// When a job is to be looked at again, and why.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct FollowUp {
    format: &'static str,
    digest: String,
    #[serde(skip_serializing_if = "Option::is_none")]
    job: Option<Job>,
    now: bool,
    hot_drive: bool,
    #[serde(skip_serializing_if = "Option::is_none")]
    distance: Option<Amount>,
    #[serde(skip_serializing_if = "Option::is_none")]
    odometer: Option<Amount>,
    #[serde(skip_serializing_if = "Option::is_none")]
    days: Option<u32>,
    #[serde(serialize_with = "day", skip_serializing_if = "Option::is_none")]
    date: Option<Date>,
    because: Vec<FollowUpReason>,
    cautions: Vec<&'static str>,
}

/// Why a job is to be looked at again, and by when for this reason alone.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct FollowUpReason {
    /// The stable name.
    pub id: &'static str,
    /// The distance it allows.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub distance: Option<Amount>,
    /// The days it allows.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub days: Option<u32>,
    /// The quantities and ids it speaks of.
    pub args: Args,
}

impl FollowUpReason {
    const fn new(id: &'static str) -> Self {
        FollowUpReason {
            id,
            distance: None,
            days: None,
            args: Args::none(),
        }
    }

    fn with_some(mut self, name: &'static str, value: Option<impl Into<Arg>>) -> Self {
        self.args = self.args.with_some(name, value);
        self
    }

    const fn within(mut self, distance: Option<Amount>, days: Option<u32>) -> Self {
        self.distance = distance;
        self.days = days;
        self
    }
}

impl FollowUp {
    /// The job to be done then; `None` where nothing asks for one.
    #[must_use]
    pub const fn job(&self) -> Option<Job> {
        self.job
    }

    /// Whether it is to be done before the vehicle is handed over.
    #[must_use]
    pub const fn is_now(&self) -> bool {
        self.now
    }

    /// Whether it is to be done after one drive that brings the unit to its full heat.
    #[must_use]
    pub const fn after_hot_drive(&self) -> bool {
        self.hot_drive
    }

    /// After what distance at the latest, in the unit of the odometer.
    #[must_use]
    pub const fn distance(&self) -> Option<Amount> {
        self.distance
    }

    /// Where the odometer stands then, if it was read.
    #[must_use]
    pub const fn odometer(&self) -> Option<Amount> {
        self.odometer
    }

    /// After how many days at the latest.
    #[must_use]
    pub const fn days(&self) -> Option<u32> {
        self.days
    }

    /// The calendar day that many days after the day in UTC on which the last work was done.
    #[must_use]
    pub const fn date(&self) -> Option<Date> {
        self.date
    }

    /// Why, the most pressing first.
    #[must_use]
    pub fn because(&self) -> &[FollowUpReason] {
        &self.because
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

/// When a job is to be looked at again, by the default [`FollowUpRules`].
///
/// `history` is that of the record's unit, if there is one; its rate is used where the record is its newest visit. No clock
/// is asked: the day is that of the last work and so many days.
///
/// # Errors
///
/// None under the default rules; the errors of [`follow_up_with`].
///
/// ```
/// use brimline::{Pack, Record, record::follow_up};
/// let journal = r#"{"format":"brimline-journal/1","procedure":"pipit-level","job":"check","entries":[]}"#;
/// let record = Record::seal(&Pack::embedded()?, journal)?;
/// let told = follow_up(&record, None)?;
/// assert!(told.is_now());
/// assert_eq!(told.because()[0].id, "level_not_found");
/// # Ok::<(), brimline::Error>(())
/// ```
pub fn follow_up(record: &Record, history: Option<&VehicleHistory>) -> Result<FollowUp, Error> {
    follow_up_with(record, history, &FollowUpRules::default())
}

/// The same, by rules of the host's own.
///
/// # Errors
///
/// [`WrongKind`](crate::ErrorKind::WrongKind) and [`OutOfRange`](crate::ErrorKind::OutOfRange), with the name of the rule.
pub fn follow_up_with(
    record: &Record,
    history: Option<&VehicleHistory>,
    rules: &FollowUpRules,
) -> Result<FollowUp, Error> {
    rules.check()?;
    let history = history.filter(|history| {
        let last = history.visits.last();
        last.is_some_and(|last| last.record == *record)
    });
    Ok(FollowUp::of(&Outcome::sealed(record), history, rules))
}

impl FollowUp {
    /// Of a job and the history it is the newest visit of, by rules that were checked.
    pub(crate) fn of(
        job: &Outcome<'_>,
        history: Option<&VehicleHistory>,
        rules: &FollowUpRules,
    ) -> Self {
        let (at_level, leak) = (job.verdict == Verdict::AtLevel, job.leak);
        let mut because = pressing(job);
        let is_now = !because.is_empty();
        let rated = history.map(|history| rated(history, rules));
        let has_due = |reason: &FollowUpReason| reason.distance.is_some() || reason.days.is_some();
        let is_rated = rated.iter().flatten().any(has_due);
        because.extend(if at_level {
            waiting(job, rules, is_rated)
        } else {
            Vec::new()
        });
        because.extend(rated.into_iter().flatten());
        let hot_drive = because
            .iter()
            .any(|reason| reason.id == "circuit_fills_hot");
        let distances = because.iter().filter_map(|reason| reason.distance);
        let least = distances.reduce(|one, other| if other < one { other } else { one });
        let odometer = job.odometer();
        let unit = odometer.or(least).map_or(Unit::Kilometre, |at| at.unit());
        let distance = least.and_then(|least| least.to(unit, 0, Rounding::Floor).ok());
        let days = because.iter().filter_map(|reason| reason.days).min();
        let last = job.worked_until().map(Moment::day);
        let is_rising = because.iter().any(|reason| reason.id == "loss_rising");
        let asks = is_now || hot_drive || distance.is_some() || days.is_some() || is_rising;
        if !asks {
            because.push(FollowUpReason::new("nothing_asks"));
        }
        let searches = leak.by_sheet == BySheet::Above && !job.is_leak_searched();
        let next = if searches {
            Job::LeakFollowUp
        } else {
            Job::Recheck
        };
        FollowUp {
            format: FORMAT,
            digest: job.digest.into(),
            job: asks.then_some(next),
            now: is_now,
            hot_drive,
            distance: distance.filter(|_| !is_now),
            odometer: odometer
                .zip(distance)
                .filter(|_| !is_now)
                .and_then(|(at, distance)| at.checked_add(distance).ok()),
            days: days.filter(|_| !is_now),
            date: last
                .zip(days)
                .filter(|_| !is_now)
                .and_then(|(last, days)| after(last, days)),
            because,
            cautions: cautions(at_level, asks, is_rising),
        }
    }
}

fn cautions(at_level: bool, asks: bool, is_rising: bool) -> Vec<&'static str> {
    let asked = [
        (true, "decision_limit"),
        (!at_level, "not_proven"),
        (!at_level, "no_dry_start"),
        (asks, "no_normal_use"),
        (asks, "leak_on_hot"),
        (is_rising, "sooner_if_rising"),
    ];
    let asked = asked.iter().filter(|(applies, _)| *applies);
    asked.map(|(_, id)| *id).collect()
}

fn after(last: Date, days: u32) -> Option<Date> {
    let span = Span::new().try_days(days).ok()?;
    last.checked_add(span).ok()
}

/// What is to be done before the vehicle is handed over.
fn pressing(job: &Outcome<'_>) -> Vec<FollowUpReason> {
    let (verdict, leak, own) = (job.verdict, job.leak, job.header.job);
    let mut because = Vec::new();
    if verdict == Verdict::OnHold {
        because.push(FollowUpReason::new("on_hold"));
    } else if verdict != Verdict::AtLevel && own != Job::ConditionOnly {
        let reason = FollowUpReason::new("level_not_found");
        because.push(reason.with_some("verdict", Some(verdict.slug())));
    }
    if leak.by_sheet == BySheet::Above && !job.is_leak_searched() {
        let reason = FollowUpReason::new("past_limit");
        because.push(
            reason
                .with_some("used", leak.counted.used)
                .with_some("limit", leak.limit),
        );
    }
    because
}

/// What a level that was found asks for later.
fn waiting(job: &Outcome<'_>, rules: &FollowUpRules, is_rated: bool) -> Vec<FollowUpReason> {
    let (leak, own) = (job.leak, job.header.job);
    let close = |id| {
        let reason = FollowUpReason::new(id).with_some("limit", leak.limit);
        reason.within(Some(rules.marginal_distance), Some(rules.marginal_days))
    };
    let mut because = Vec::new();
    if own.fills_by_measure() || job.is_cooler_open() {
        because.push(FollowUpReason::new("circuit_fills_hot"));
    }
    let is_past = leak.by_sheet == BySheet::Above;
    let is_short = job.as_found.hi().is_some_and(|hi| hi.is_negative());
    if is_past && job.is_leak_searched() {
        because.push(close("leak_searched"));
    } else if leak.by_sheet == BySheet::Below && leak.certainty == Certainty::Marginal {
        because.push(close("leak_marginal").with_some("margin", leak.margin));
    } else if own.counts_for_leak() && is_short && !is_past && !is_rated {
        let reason = FollowUpReason::new("short_below_limit").with_some("used", leak.counted.used);
        because.push(reason.within(Some(rules.short_distance), Some(rules.short_days)));
    }
    because
}

/// How long the last rate takes, at the most it can be, to the allowed shortage.
fn rated(history: &VehicleHistory, rules: &FollowUpRules) -> Vec<FollowUpReason> {
    let last = history.losses.last();
    let most = |rate: Option<Interval>| rate?.hi().filter(|hi| !hi.is_negative() && !hi.is_zero());
    let by_distance = most(last.and_then(|last| last.per_1000_km));
    let by_time = most(last.and_then(|last| last.per_30_days));
    let mut because = Vec::new();
    if by_distance.or(by_time).is_some() {
        let metres = by_distance.and_then(|rate| reached(rules.allowed_shortage, rate, 1_000_000));
        let distance = metres.and_then(|metres| Amount::new(metres, 3, Unit::Kilometre).ok());
        let distance = distance.map(|distance| {
            let least = if distance < rules.most_distance {
                distance
            } else {
                rules.most_distance
            };
            least
                .to(Unit::Kilometre, 0, Rounding::Floor)
                .unwrap_or(least)
        });
        let days = by_time.and_then(|rate| reached(rules.allowed_shortage, rate, 30));
        let days = days.and_then(|days| u32::try_from(days).ok().or(Some(u32::MAX)));
        let reason = FollowUpReason::new("rate")
            .with_some("allowed", Some(rules.allowed_shortage))
            .with_some("per_1000_km", by_distance)
            .with_some("per_30_days", by_time);
        because.push(reason.within(distance, days.map(|days| days.min(rules.most_days))));
    }
    if history.trend == Trend::Rising {
        because.push(FollowUpReason::new("loss_rising"));
    }
    because
}

/// Whole parts of a distance or time, of which a rate has so many, until it comes to an amount; rounded down.
fn reached(allowed: Amount, rate: Amount, parts: i128) -> Option<i64> {
    let whole = allowed
        .count()?
        .checked_mul(parts)?
        .checked_div(rate.count()?)?;
    // What does not fit lies further off than anybody asks.
    Some(
        i64::try_from(whole)
            .unwrap_or(i64::MAX)
            .min(999_999_999_999_999),
    )
}
