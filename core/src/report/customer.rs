//! What a customer is told of a job: found, done, what it means, what comes next.

use super::known::told;
use super::sentence::Given;
use super::teller::Teller;
use crate::check::{BySheet, Certainty, Course, Evaluation, Fact, LevelCheck, PlugState, Verdict};
use crate::procedure::Severity;
use crate::quantity::{Amount, Interval};
use crate::record::{FollowUp, FollowUpRules, Outcome};
use alloc::string::String;
use alloc::vec::Vec;

/// What a customer is told, under four names.
pub(super) fn customer(
    teller: &Teller,
    course: &Course<'_>,
    evaluation: &Evaluation,
    again: Option<&FollowUp>,
) -> Vec<(String, String)> {
    let nothing = Given::nothing;
    let say = |id: &str, given: &Given| teller.sentence("customer", id, given);
    let found = evaluation.as_found();
    let known =
        (found.lo().is_some() || found.hi().is_some()).then(|| told(teller, "departure", &found));
    let found = known.map_or_else(
        || say("found_unknown", &nothing()),
        |known| say("found", &nothing().with("known", known)),
    );
    let net = told(teller, "net", &evaluation.net_added());
    let mut done = Vec::from([say("net", &nothing().with("known", net))]);
    done.extend(plug(course, evaluation).map(|(id, torque)| {
        let given = nothing().with_some("torque", torque);
        say(id, &given)
    }));
    let line = |id: &str, text: String| (teller.word("customer", id), text);
    Vec::from([
        line("head_found", found),
        line("head_done", done.join(" ")),
        line("head_means", means(teller, evaluation).join(" ")),
        line("head_next", next(teller, evaluation, again).join(" ")),
    ])
}

/// Whether the unit is proven to have been short.
fn was_short(evaluation: &Evaluation) -> bool {
    let hi = evaluation.as_found().hi();
    hi.is_some_and(|hi| hi.is_negative())
}

/// When a second look is due; only where that is what comes next.
pub(super) fn second_look(check: &LevelCheck, evaluation: &Evaluation) -> Option<FollowUp> {
    let is_wanted = is_at_level_still(evaluation)
        && was_short(evaluation)
        && evaluation.leak().by_sheet != BySheet::Above;
    is_wanted.then(|| {
        let job = Outcome::so_far(check, evaluation);
        FollowUp::of(&job, None, &FollowUpRules::default())
    })
}

fn is_at_level_still(evaluation: &Evaluation) -> bool {
    evaluation.verdict() == Verdict::AtLevel && holds(Verdict::AtLevel, &evaluation.now())
}

/// Whether what the last look said is still so.
fn holds(verdict: Verdict, now: &Interval) -> bool {
    let not_above = now.hi().is_some_and(|hi| hi.is_zero() || hi.is_negative());
    let not_below = now.lo().is_some_and(|lo| !lo.is_negative());
    match verdict {
        Verdict::AtLevel => not_above && not_below,
        Verdict::Low | Verdict::NotFull => not_above,
        Verdict::Over | Verdict::NotLow => not_below,
        _ => true,
    }
}

fn means(teller: &Teller, evaluation: &Evaluation) -> Vec<String> {
    let verdict = evaluation.verdict();
    let then = match verdict {
        Verdict::AtLevel => "at_level_then",
        Verdict::Low => "low_then",
        Verdict::Over => "over_then",
        Verdict::NotLow => "not_low_then",
        _ => "not_full_then",
    };
    let now = evaluation.now();
    let is_still_so = holds(verdict, &now);
    let held = evaluation.next().iter().find(|act| act.id == "settle_hold");
    let given = match held {
        Some(act) => Given::from(&act.args),
        None => Given::nothing().with("known", told(teller, "departure", &now)),
    };
    let id = if is_still_so { verdict.slug() } else { then };
    let mut means = Vec::from([teller.sentence("means", id, &given)]);
    let say = |id: &str| teller.sentence("customer", id, &Given::nothing());
    let reading = evaluation.leak();
    let leaks = match reading.by_sheet {
        BySheet::Above => Some("past_limit"),
        BySheet::Below if was_short(evaluation) => Some("below_limit"),
        _ => None,
    };
    means.extend(leaks.map(say));
    if leaks.is_some() && reading.certainty == Certainty::Marginal {
        means.push(say("marginal"));
    }
    means
}

fn next(teller: &Teller, evaluation: &Evaluation, again: Option<&FollowUp>) -> Vec<String> {
    let say = |id: &str, given: &Given| teller.sentence("customer", id, given);
    let nothing = Given::nothing;
    let is_at_level = is_at_level_still(evaluation);
    let mut next = Vec::new();
    match (evaluation.verdict(), evaluation.leak().by_sheet) {
        (Verdict::OnHold, _) => next.push(say("settle_hold", &nothing())),
        (_, BySheet::Above) => next.push(say("find_leak", &nothing())),
        _ if !is_at_level => next.push(say("not_done", &nothing())),
        _ => {}
    }
    if !next.is_empty() {
        return next;
    }
    let is_done = evaluation.next().is_empty();
    if !is_done {
        next.push(say("listed_first", &nothing()));
    }
    if was_short(evaluation) {
        let given = nothing()
            .with_some("distance", again.and_then(FollowUp::distance))
            .with_some(
                "date",
                again
                    .and_then(FollowUp::date)
                    .map(|date| alloc::format!("{date}")),
            );
        next.push(say("check_again", &given));
    } else if is_done {
        next.push(say("watch_it", &nothing()));
    }
    next
}

/// What is to be said of the plug: the message, and the torque it got since it was last out. Nothing of a plug that never
/// came out.
fn plug(course: &Course<'_>, evaluation: &Evaluation) -> Option<(&'static str, Option<Amount>)> {
    let mut is_in = None;
    let mut torque = None;
    for step in &course.steps {
        let entry = step.entry;
        match &entry.fact {
            Fact::Plug { state } => {
                is_in = Some(*state == PlugState::Closed);
                torque = torque.filter(|_| is_in == Some(true));
            }
            Fact::Tightened {
                torque: entered, ..
            } if is_in == Some(true) => {
                torque = Some((entry.seq, *entered));
            }
            _ => {}
        }
    }
    match (is_in?, torque) {
        (false, _) => Some(("plug_out", None)),
        (true, None) => Some(("untightened", None)),
        (true, Some((seq, torque))) if is_stopped(evaluation, seq) => {
            Some(("tightened_doubt", Some(torque)))
        }
        (true, Some((_, torque))) => Some(("tightened", Some(torque))),
    }
}

/// Whether a finding on this entry says to stop.
fn is_stopped(evaluation: &Evaluation, seq: u64) -> bool {
    let findings = evaluation.findings().iter();
    let mut stops = findings.filter(|finding| finding.severity == Severity::Stop);
    stops.any(|finding| finding.entries.contains(&seq))
}
