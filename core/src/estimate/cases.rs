//! How much goes in, at best, likely and at worst, and what that assumes.

use super::asked::Asked;
use super::facts::Facts;
use super::work::{Poured, Work};
use crate::check::{Args, BySheet, DrainedWhy, Fact, Job, Standing, Verdict};
use crate::error::{Error, ErrorKind, Fault};
use crate::procedure::{Counts, Procedure};
use crate::quantity::{Amount, Rounding, Unit};
use crate::word::words;
use alloc::string::ToString;
use alloc::vec::Vec;
use serde::Serialize;

words! {
    /// The cases of an estimate.
    pub enum CaseKind {
        /// Nothing more has to be poured.
        Best = "best",
        /// What such a job mostly takes.
        Likely = "likely",
        /// The worst before a new approval.
        Worst = "worst",
    }
}

/// One thing a case assumes.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct Assumption {
    /// The stable name.
    pub id: &'static str,
    /// The quantities it speaks of.
    pub args: Args,
}

fn assumed(id: &'static str) -> Assumption {
    Assumption {
        id,
        args: Args::none(),
    }
}

impl Assumption {
    fn with(mut self, name: &'static str, volume: Amount) -> Self {
        self.args = self.args.with(name, volume);
        self
    }
}

/// What one case assumes.
pub(super) struct Assumed {
    /// What goes in, all of it, in exact counts of volume.
    pub(super) count: i128,
    pub(super) assumes: Vec<Assumption>,
    leak_search: bool,
    new_plug: bool,
}

/// Best, likely and worst.
pub(super) struct Volumes<'w> {
    poured: i128,
    sheet: &'w Procedure,
    job: Job,
    /// What is drained yet, where the job says so.
    drains: i128,
    /// Whether a leak is to be looked for in any case.
    is_leak_due: bool,
    cases: [Assumed; 3],
}

fn count(amount: Option<Amount>) -> Option<i128> {
    amount.and_then(|amount| amount.count())
}

impl<'w> Volumes<'w> {
    pub(super) fn of(
        standing: &Standing<'_>,
        facts: &Facts<'_>,
        sheet: &'w Procedure,
        asked: &Asked,
    ) -> Result<Self, Error> {
        let poured = facts.poured();
        let capacity = sheet.capacity.as_ref();
        let refill = capacity.and_then(|capacity| capacity.refill.or(capacity.total));
        let plain = |count: i128, id| Assumed {
            count: count.max(poured),
            assumes: Vec::from([assumed(id)]),
            leak_search: false,
            new_plug: false,
        };
        let fills = standing.job.fills_by_measure();
        let cases = if standing.job == Job::ConditionOnly {
            [(); 3].map(|()| plain(poured, "nothing_more"))
        } else if standing.verdict == Verdict::AtLevel {
            [(); 3].map(|()| plain(poured, "level_found"))
        } else if fills {
            let refill = refill.or(asked.likely).ok_or_else(unknown)?;
            let total = capacity
                .and_then(|capacity| capacity.total)
                .unwrap_or(refill);
            let of = |volume: Amount| {
                let mut case = plain(volume.count().unwrap_or(0), "takes_refill");
                case.assumes = Vec::from([assumed("takes_refill").with("volume", volume)]);
                case
            };
            let mut worst = of(total);
            worst.assumes = Vec::from([assumed("takes_total").with("volume", total)]);
            [of(refill), of(refill), worst]
        } else {
            top_up(standing, facts, sheet, asked)?
        };
        // Looking for the leak is what a follow-up is for: its own labour pays for it.
        let searches = standing.job != Job::LeakFollowUp;
        let mut volumes = Volumes {
            poured,
            sheet,
            job: standing.job,
            drains: match standing.job {
                Job::Exchange if !is_drained(standing) => count(refill).unwrap_or(0),
                _ => 0,
            },
            is_leak_due: standing.by_sheet == BySheet::Above
                && searches
                && facts.work.leak_search.is_none(),
            cases,
        };
        if standing.verdict != Verdict::AtLevel && standing.job != Job::ConditionOnly {
            volumes.state(asked.likely);
        }
        let limited = standing.job.counts_for_leak() && sheet.leak_limit.is_some();
        let [best, likely, worst] = &mut volumes.cases;
        if volumes.is_leak_due {
            for case in [best, likely, &mut *worst] {
                case.leak_search = true;
                case.assumes.push(assumed("leak_due"));
            }
        } else if limited && searches && standing.by_sheet == BySheet::Open {
            worst.leak_search = true;
            worst.assumes.push(assumed("leak_search"));
            if passes(sheet, facts, likely.count) {
                likely.leak_search = true;
                likely.assumes.push(assumed("leak_search"));
            }
        }
        if limited && standing.by_sheet != BySheet::Below {
            worst.new_plug = true;
            worst.assumes.push(assumed("new_plug"));
        }
        worst.assumes.push(assumed("before_new_approval"));
        Ok(volumes)
    }

    /// Takes the host's own likely volume in, and keeps the cases in their order.
    fn state(&mut self, stated: Option<Amount>) {
        let [best, likely, worst] = &mut self.cases;
        let Some((stated, count)) = stated.and_then(|own| Some((own, own.count()?))) else {
            return;
        };
        let own = || Vec::from([assumed("stated_volume").with("volume", stated)]);
        likely.count = count.max(self.poured);
        likely.assumes = own();
        if best.count > likely.count {
            best.count = likely.count;
            best.assumes = own();
        }
        if worst.count < likely.count {
            worst.count = likely.count;
            worst.assumes = own();
        }
    }

    /// One case, and what is billed in it.
    pub(super) fn case<'s>(&'s self, which: CaseKind, facts: &Work<'s>) -> (&'s Assumed, Work<'s>) {
        let [best, likely, worst] = &self.cases;
        let case = match which {
            CaseKind::Best => best,
            CaseKind::Likely => likely,
            CaseKind::Worst => worst,
        };
        let mut work = self.so_far(facts, case.count.saturating_sub(self.poured));
        if case.leak_search {
            work.leak_search.get_or_insert_default();
        }
        if case.new_plug {
            let (count, _) = &mut work.plugs;
            *count = (*count).max(1);
        }
        (case, work)
    }

    /// What is billed if so much more is poured and the plug is closed then.
    pub(super) fn so_far<'s>(&'s self, facts: &Work<'s>, further: i128) -> Work<'s> {
        let mut work = facts.clone();
        if further > 0 {
            let fluid = self.sheet.fluid.as_deref().unwrap_or_default();
            match work.poured.iter_mut().find(|pour| pour.fluid == fluid) {
                Some(pour) => pour.count = pour.count.saturating_add(further),
                None => work.poured.push(Poured {
                    fluid,
                    path: "procedure.fluid".to_string(),
                    count: further,
                    entries: Vec::new(),
                    containers: Vec::new(),
                }),
            }
        }
        if self.job != Job::ConditionOnly {
            let (count, _) = &mut work.closings;
            *count = (*count).max(1);
        }
        if self.is_leak_due {
            work.leak_search.get_or_insert_default();
        }
        let (out, _) = &mut work.out;
        *out = out.saturating_add(self.drains);
        work
    }

    /// Whether the best case is the job as it stands, closed now.
    pub(super) fn best_is_so_far(&self) -> bool {
        let [best, ..] = &self.cases;
        best.count == self.poured
    }

    /// What the worst case still takes, in exact counts of volume.
    pub(super) fn still_needed(&self) -> i128 {
        let [_, _, worst] = &self.cases;
        worst.count.saturating_sub(self.poured)
    }
}

/// Whether what the unit holds was drained already.
fn is_drained(standing: &Standing<'_>) -> bool {
    standing.entries.iter().any(|happened| {
        let why = match happened.entry.fact {
            Fact::Drained { why, .. } => Some(why),
            _ => None,
        };
        why == Some(DrainedWhy::Service) && happened.moved.is_some()
    })
}

/// What came out and does not count towards the leak limit.
fn not_counted(sheet: &Procedure, facts: &Facts<'_>) -> i128 {
    let counts = sheet.leak_limit.as_ref().and_then(|limit| limit.counts);
    match counts {
        Some(Counts::Gross) => 0,
        _ => facts.work.out.0,
    }
}

/// Whether all that goes in is past the leak limit.
fn passes(sheet: &Procedure, facts: &Facts<'_>, all: i128) -> bool {
    let used = all.saturating_sub(not_counted(sheet, facts));
    let limit = sheet.leak_limit.as_ref();
    limit.is_some_and(|limit| {
        let at = count(limit.limit());
        at.is_some_and(|at| limit.passed_at(used.cmp(&at)))
    })
}

/// A check or a top-up: nothing, half of the leak limit, the leak limit.
fn top_up(
    standing: &Standing<'_>,
    facts: &Facts<'_>,
    sheet: &Procedure,
    asked: &Asked,
) -> Result<[Assumed; 3], Error> {
    let poured = facts.poured();
    let limit = sheet.leak_limit.as_ref().and_then(|limit| limit.limit());
    let limit = limit.filter(|_| standing.job.counts_for_leak());
    let refill = sheet.capacity.as_ref().and_then(|capacity| capacity.refill);
    let most = limit.or(refill).or(asked.likely).ok_or_else(unknown)?;
    let most_count = most.count().unwrap_or(0);
    let step = sheet.refill.as_ref().and_then(|refill| refill.step);
    let half = most_count.checked_div(2).unwrap_or(0);
    let likely = count(step).filter(|step| *step > 0).map_or(half, |step| {
        let begun = half.checked_rem(step).is_some_and(|left| left > 0);
        let steps = half
            .checked_div(step)
            .unwrap_or(0)
            .saturating_add(begun.into());
        steps.saturating_mul(step).min(most_count)
    });
    let case = |count: i128, assumption| Assumed {
        count: count.max(poured),
        assumes: Vec::from([assumption]),
        leak_search: false,
        new_plug: false,
    };
    let past = |count: i128, assumption| {
        let is_past = poured > count;
        case(
            count,
            if is_past {
                assumed("as_poured")
            } else {
                assumption
            },
        )
    };
    let unit: Unit = standing.unit;
    let likely_told = Amount::from_count(likely, unit, 6, Rounding::HalfUp)?;
    let to_most = match limit {
        Some(limit) => assumed("to_limit").with("limit", limit),
        None => assumed("takes_refill").with("volume", most),
    };
    // A net limit leaves room for what came out again.
    let room = limit.map_or(0, |_| not_counted(sheet, facts));
    Ok([
        case(0, assumed("nothing_more")),
        past(
            likely,
            assumed("assumed_volume").with("volume", likely_told),
        ),
        past(most_count.saturating_add(room), to_most),
    ])
}

/// Nothing says how much a unit could take.
fn unknown() -> Fault {
    let hint = "the sheet states neither a leak limit nor a capacity: state the likely volume";
    Fault::new(ErrorKind::Unresolved)
        .at("procedure.capacity.refill")
        .hint(hint)
}
