//! The smallest change of one temperature, capture or counted volume that would turn the answer.
//!
//! Each candidate is tried by replaying the whole journal with it, so what is told here is what would happen.

use super::correction::{Capture, Counted};
use super::entry::{Entry, Fact, Measured};
use super::evidence::State;
use super::leak::{BySheet, Certainty, Leak};
use super::sheet::Sheet;
use super::verdict::Verdict;
use crate::quantity::{Amount, Rounding};
use crate::word::words;
use alloc::collections::BTreeMap;
use alloc::vec::Vec;
use core::cmp::Ordering;
use serde::Serialize;

words! {
    /// What a change would turn.
    pub enum Turns {
        /// The verdict.
        Verdict = "verdict",
        /// The leak reading or its certainty.
        Leak = "leak",
    }
}

words! {
    /// What would have to be otherwise.
    pub enum Changed {
        /// The temperature at the look.
        Temperature = "temperature",
        /// What was captured from a flow.
        Captured = "captured",
        /// What was drained for another reason.
        Drained = "drained",
        /// What was added.
        Added = "added",
    }
}

/// One change that would turn the answer.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct Flip {
    /// What it would turn.
    pub turns: Turns,
    /// What would have to be otherwise.
    pub changed: Changed,
    /// The entry it is in.
    pub entry: u64,
    /// What the entry says.
    pub from: Amount,
    /// What it would have to say.
    pub to: Amount,
    /// The verdict then.
    pub verdict: Verdict,
    /// The sheet's count then.
    pub by_sheet: BySheet,
    /// Its certainty then.
    pub certainty: Certainty,
}

/// The answer as far as a flip can turn it.
#[derive(Clone, Copy, PartialEq, Eq)]
struct Answer {
    verdict: Verdict,
    by_sheet: BySheet,
    certainty: Certainty,
}

fn answer(sheet: &Sheet<'_>, entries: &[Counted<'_>]) -> (State, Leak, Answer) {
    let state = State::after(sheet, entries);
    let leak = state.leak(sheet);
    let verdict = state.verdict(sheet);
    (
        state,
        leak,
        Answer {
            verdict,
            by_sheet: leak.by_sheet,
            certainty: leak.certainty,
        },
    )
}

impl Turns {
    fn has(self, now: Answer, then: Answer) -> bool {
        match self {
            Turns::Verdict => then.verdict != now.verdict,
            Turns::Leak => (then.by_sheet, then.certainty) != (now.by_sheet, now.certainty),
        }
    }
}

/// The answer with one entry saying another amount.
fn answer_with(
    sheet: &Sheet<'_>,
    entries: &[Counted<'_>],
    (index, changed, to): (usize, Changed, Amount),
) -> Option<Answer> {
    let mut this = *entries.get(index)?;
    let entry;
    match &mut this.supplied {
        Some(supply) => supply.measured.amount = to,
        None => {
            entry = with_amount(this.entry, changed, to)?;
            this.entry = &entry;
        }
    }
    let mut tried = entries.to_vec();
    *tried.get_mut(index)? = this;
    Some(answer(sheet, &tried).2)
}

/// For the verdict and for the leak reading, the smallest change of each sort that turns it.
pub(super) fn flips(sheet: &Sheet<'_>, entries: &[Counted<'_>]) -> Vec<Flip> {
    let (state, leak, now) = answer(sheet, entries);
    let mut found: Vec<(usize, Flip)> = Vec::new();
    for (index, changed, from, to) in candidates(sheet, entries, &state, &leak) {
        let (Some(then), Some(counted)) = (
            answer_with(sheet, entries, (index, changed, to)),
            entries.get(index),
        ) else {
            continue;
        };
        for turns in [Turns::Verdict, Turns::Leak] {
            if !turns.has(now, then) {
                continue;
            }
            let told_by = counted
                .supplied
                .map_or(counted.entry.seq, |supply| supply.seq);
            let flip = Flip::of(turns, changed, told_by, (from, to), then);
            let known = found
                .iter_mut()
                .find(|(_, own)| own.turns == turns && own.changed == changed);
            match known {
                None => found.push((index, flip)),
                Some(known) if distance(from, to) < distance(known.1.from, known.1.to) => {
                    *known = (index, flip);
                }
                Some(_) => {}
            }
        }
    }
    let mut flips: Vec<Flip> = found
        .into_iter()
        .map(|(index, flip)| nearest(sheet, entries, now, index, flip))
        .collect();
    flips.sort_by_key(|flip| (flip.turns, flip.changed));
    flips
}

/// The nearest value that still turns the answer, found by halving: one digit less would not turn it.
fn nearest(
    sheet: &Sheet<'_>,
    entries: &[Counted<'_>],
    now: Answer,
    index: usize,
    mut flip: Flip,
) -> Flip {
    let (mut keeps, mut turns) = (flip.from.mantissa(), flip.to.mantissa());
    while turns.abs_diff(keeps) > 1 {
        let middle = keeps.midpoint(turns);
        let Ok(to) = Amount::new(middle, flip.to.decimals(), flip.to.unit()) else {
            break;
        };
        match answer_with(sheet, entries, (index, flip.changed, to)) {
            Some(then) if flip.turns.has(now, then) => {
                turns = middle;
                flip = Flip::of(flip.turns, flip.changed, flip.entry, (flip.from, to), then);
            }
            _ => keeps = middle,
        }
    }
    flip
}

impl Flip {
    fn of(
        turns: Turns,
        changed: Changed,
        entry: u64,
        (from, to): (Amount, Amount),
        then: Answer,
    ) -> Self {
        Flip {
            turns,
            changed,
            entry,
            from,
            to,
            verdict: then.verdict,
            by_sheet: then.by_sheet,
            certainty: then.certainty,
        }
    }
}

fn distance(from: Amount, to: Amount) -> i128 {
    let count = |amount: Amount| amount.count().unwrap_or(0);
    count(to).saturating_sub(count(from)).saturating_abs()
}

/// What might be otherwise: the index of the entry, what of it, and from what to what.
fn candidates(
    sheet: &Sheet<'_>,
    entries: &[Counted<'_>],
    state: &State,
    leak: &Leak,
) -> Vec<(usize, Changed, Amount, Amount)> {
    let mut out = Vec::new();
    let window = sheet
        .conditions()
        .and_then(|conditions| conditions.temperature.as_ref());
    if let (Some(window), Some(sample)) =
        (window, state.deciding.as_ref().and_then(|look| look.sample))
    {
        let index = entries
            .iter()
            .position(|counted| counted.entry.seq == sample.seq);
        for (limit, meets_above) in [(window.min, true), (window.max, false)] {
            if let (Some(index), Some(limit)) = (index, limit) {
                let to = across(sample.reading, limit, meets_above);
                out.extend(to.map(|to| (index, Changed::Temperature, sample.reading, to)));
            }
        }
    }
    let hold_up = sheet.procedure.and_then(|sheet| sheet.method.hold_up);
    let gaps = gaps(sheet, leak);
    for (index, changed, from) in volumes(entries) {
        let comes_out = matches!(changed, Changed::Captured | Changed::Drained);
        for gap in gaps.into_iter().flatten() {
            let gap = if comes_out { gap.saturating_neg() } else { gap };
            let tried = shifted(from.amount, gap).into_iter().flatten();
            out.extend(tried.map(|to| (index, changed, from.amount, to)));
        }
        // What the opening itself holds is no sign of the level.
        if let (Changed::Captured, Some(hold_up)) = (changed, hold_up) {
            let to = across(from.amount, hold_up, false);
            out.extend(to.map(|to| (index, changed, from.amount, to)));
        }
    }
    out
}

/// How far each count that decides the leak reading is from where it decides otherwise.
fn gaps(sheet: &Sheet<'_>, leak: &Leak) -> [Option<i128>; 3] {
    let Some((limit, about)) = sheet
        .leak_limit()
        .and_then(|limit| Some((limit.limit()?.count()?, limit.about)))
    else {
        return [None; 3];
    };
    let about = about.and_then(|about| about.count()).unwrap_or(0);
    [
        Some(limit.saturating_sub(leak.used)),
        leak.shortage
            .hi
            .map(|hi| limit.saturating_sub(about).saturating_sub(hi)),
        leak.shortage
            .lo
            .map(|lo| limit.saturating_add(about).saturating_sub(lo)),
    ]
}

/// The pours and captures that are tried: of those printed and measured alike, which turn the answer alike, the
/// first and the last. So a journal of many pours is not replayed for each of them.
fn volumes(entries: &[Counted<'_>]) -> Vec<(usize, Changed, Measured)> {
    let told = |(index, counted): (usize, &Counted<'_>)| match &counted.entry.fact {
        Fact::Added { measured, .. } => Some((index, Changed::Added, *measured)),
        Fact::Flow { captured, .. } => {
            let supplied = counted.supplied.map(|supply| supply.measured);
            Some((index, Changed::Captured, supplied.or(*captured)?))
        }
        Fact::Drained { measured, .. } if counted.capture == Capture::NotOne => {
            Some((index, Changed::Drained, *measured))
        }
        _ => None,
    };
    let mut ends = BTreeMap::new();
    for this in entries.iter().enumerate().filter_map(told) {
        let (_, changed, measured) = this;
        let amount = measured.amount;
        let sort = (
            changed,
            amount.unit().code(),
            amount.decimals(),
            measured.by,
        );
        ends.entry(sort)
            .and_modify(|(_, last)| *last = this)
            .or_insert((this, this));
    }
    let mut tried: Vec<_> = ends
        .into_values()
        .flat_map(|(first, last)| [first, last])
        .collect();
    tried.sort_by_key(|(index, _, _)| *index);
    tried.dedup_by_key(|(index, _, _)| *index);
    tried
}

/// The reading nearest to its own on the other side of a limit, in its own last digit.
fn across(reading: Amount, limit: Amount, meets_above: bool) -> Option<Amount> {
    let order = reading.compare(&limit).ok()?;
    let is_met = if meets_above {
        order.is_ge()
    } else {
        order.is_le()
    };
    // A met lower limit is left downwards, an unmet one is met upwards; an upper limit the other way about.
    let upwards = meets_above != is_met;
    let rounding = if upwards {
        Rounding::Ceiling
    } else {
        Rounding::Floor
    };
    let nearest = limit
        .to(reading.unit(), reading.decimals(), rounding)
        .ok()?;
    let leaves = is_met && nearest.compare(&limit) == Ok(Ordering::Equal);
    if !leaves {
        return Some(nearest);
    }
    let by = if upwards { 1 } else { -1 };
    Amount::new(
        nearest.mantissa().checked_add(by)?,
        nearest.decimals(),
        nearest.unit(),
    )
    .ok()
}

/// An amount moved by a gap, to the digits on either side and one beyond each, in its own last digit.
fn shifted(from: Amount, gap: i128) -> [Option<Amount>; 4] {
    let moved = from.count().and_then(|count| count.checked_add(gap));
    let rounded = |rounding, beyond: i64| {
        let amount = Amount::from_count(moved?, from.unit(), from.decimals(), rounding).ok()?;
        let same_digits = amount
            .to(from.unit(), from.decimals(), Rounding::Floor)
            .ok()?;
        let mantissa = same_digits.mantissa().checked_add(beyond)?;
        let to = Amount::new(mantissa, from.decimals(), from.unit()).ok()?;
        (!to.is_negative() && to != from).then_some(to)
    };
    [
        rounded(Rounding::Floor, 0),
        rounded(Rounding::Ceiling, 0),
        rounded(Rounding::Floor, -1),
        rounded(Rounding::Ceiling, 1),
    ]
}

/// The same entry saying another amount.
fn with_amount(entry: &Entry, changed: Changed, amount: Amount) -> Option<Entry> {
    let mut other = entry.clone();
    match (&mut other.fact, changed) {
        (Fact::Temperature { reading, .. }, Changed::Temperature) => *reading = amount,
        (Fact::Added { measured, .. }, Changed::Added)
        | (Fact::Drained { measured, .. }, Changed::Drained) => measured.amount = amount,
        (Fact::Flow { captured, .. }, Changed::Captured) => {
            let by = captured.as_ref().and_then(|measured| measured.by);
            *captured = Some(Measured { amount, by });
        }
        _ => return None,
    }
    Some(other)
}
