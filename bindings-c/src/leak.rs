//! Leaks against limits, with the uncertainty of the measurement, and drips.

use crate::amount::brim_amount;
use crate::calculator::reckon;
use crate::error::{brim_error, brim_status};
use crate::list::{self, number, numbers};
use brimline_core::leak::{self, Decision, Rule};

/// How much doubt a decision may carry; the caller chooses (JCGM 106:2012, clause 8).
pub type brim_rule = i32;

/// Decided by the estimate alone: the risk is shared.
pub const BRIM_RULE_SIMPLE_ACCEPTANCE: brim_rule = 1;
/// Called below only where the estimate is below by the guard band.
pub const BRIM_RULE_GUARDED_ACCEPTANCE: brim_rule = 2;
/// Called above only where the estimate is above by more than the guard band.
pub const BRIM_RULE_GUARDED_REJECTION: brim_rule = 3;

/// On which side of a limit.
pub type brim_decision = i32;

/// Above the limit.
pub const BRIM_DECISION_ABOVE: brim_decision = 1;
/// At the limit or below it, which is all it says: no gearbox is shown to be tight by it.
pub const BRIM_DECISION_BELOW: brim_decision = 2;
/// Within the guard band, where the rule decides nothing.
pub const BRIM_DECISION_UNDECIDED: brim_decision = 3;

numbers! { Rule of Rule::WORDS.len();
    BRIM_RULE_SIMPLE_ACCEPTANCE SimpleAcceptance,
    BRIM_RULE_GUARDED_ACCEPTANCE GuardedAcceptance,
    BRIM_RULE_GUARDED_REJECTION GuardedRejection,
}

numbers! { Decision of Decision::WORDS.len();
    BRIM_DECISION_ABOVE Above, BRIM_DECISION_BELOW Below, BRIM_DECISION_UNDECIDED Undecided,
}

/// Decides by a rule whether an estimate is above a limit. Any kind of quantity; the standard
/// `uncertainty` is of the same (of a temperature: a difference) and above zero. A guarded rule
/// takes the `probability` that its decision is right, a ratio of 0.5 to 0.999999999; simple
/// acceptance takes NULL. `exceeds` is the probability that the true value is above the limit,
/// `guard_band` how far from the limit the estimate must be, in the unit of the uncertainty; its
/// unit is 0 for simple acceptance.
///
/// Errors: `BRIM_ERROR_WRONG_KIND`; `BRIM_ERROR_OUT_OF_RANGE` for an uncertainty that is not above
/// zero or a probability outside the range; `BRIM_ERROR_CONFLICT` for a guarded rule without a
/// probability, or simple acceptance with one; `BRIM_ERROR_UNKNOWN_VALUE` for a number of no rule.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_against_limit(
    estimate: *const brim_amount,
    uncertainty: *const brim_amount,
    limit: *const brim_amount,
    rule: brim_rule,
    probability: *const brim_amount,
    exceeds: *mut brim_amount,
    guard_band: *mut brim_amount,
    decision: *mut brim_decision,
    error: *mut brim_error,
) -> brim_status {
    reckon!(error, [estimate, uncertainty, limit; probability],
        found = leak::against_limit(estimate, uncertainty, limit, list::value(rule, "rule")?, probability)?;
        exceeds = found.exceeds, guard_band = found.guard_band, decision = number(found.decision))
}

/// The probability, a ratio, that a true value lies within limits, from its estimate and standard
/// uncertainty (JCGM 106:2012, clause 7). Any kind of quantity; the uncertainty is of the same (of
/// a temperature: a difference) and above zero. NULL leaves one of the limits out.
///
/// Errors: `BRIM_ERROR_WRONG_KIND`; `BRIM_ERROR_OUT_OF_RANGE` for an uncertainty that is not above
/// zero or limits the wrong way round; `BRIM_ERROR_CONFLICT` without any limit.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_conformance(
    value: *const brim_amount,
    uncertainty: *const brim_amount,
    lower: *const brim_amount,
    upper: *const brim_amount,
    conforms: *mut brim_amount,
    error: *mut brim_error,
) -> brim_status {
    reckon!(error, [value, uncertainty; lower, upper],
        conforms = leak::conformance(value, uncertainty, lower, upper)?)
}

/// How far from a limit an estimate must be for a decision that is right with a probability, a
/// ratio of 0.5 to 0.999999999 (JCGM 106:2012, clause 8). In the unit of the standard uncertainty,
/// which is above zero.
///
/// Errors: `BRIM_ERROR_WRONG_KIND`, `BRIM_ERROR_OUT_OF_RANGE`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_guard_band(
    uncertainty: *const brim_amount,
    probability: *const brim_amount,
    guard_band: *mut brim_amount,
    error: *mut brim_error,
) -> brim_status {
    reckon!(
        error,
        [uncertainty, probability],
        guard_band = leak::guard_band(uncertainty, probability)?
    )
}

/// The number of standard deviations that a standard normal variable stays below with a
/// probability, a ratio of 0.000000001 to 0.999999999; a ratio, negative below a half.
///
/// Errors: `BRIM_ERROR_WRONG_KIND`, `BRIM_ERROR_OUT_OF_RANGE`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_quantile(
    probability: *const brim_amount,
    quantile: *mut brim_amount,
    error: *mut brim_error,
) -> brim_status {
    reckon!(
        error,
        [probability],
        quantile = leak::quantile(probability)?
    )
}

/// The half width of an interval that is expected to hold most of what the true value could be:
/// `factor` times the standard uncertainty, in its unit (JCGM 100:2008, 6.2.1). The factor, a
/// ratio above zero, is 2 where NULL leaves it out.
///
/// Errors: `BRIM_ERROR_WRONG_KIND`, `BRIM_ERROR_OUT_OF_RANGE`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_expanded_uncertainty(
    uncertainty: *const brim_amount,
    factor: *const brim_amount,
    expanded: *mut brim_amount,
    error: *mut brim_error,
) -> brim_status {
    reckon!(
        error,
        [uncertainty; factor],
        expanded = leak::expanded_uncertainty(uncertainty, factor)?
    )
}

/// What a drip loses, from drops counted in a time: in 24 hours and in 365 days, in L, and the
/// time from drop to drop, in s. At least one drop; the time and the volume of one `drop` above
/// zero. A drop has no volume of its own: published ones differ fivefold.
///
/// Errors: `BRIM_ERROR_WRONG_KIND`, `BRIM_ERROR_OUT_OF_RANGE`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_drip_rate(
    drops: u32,
    in_time: *const brim_amount,
    drop: *const brim_amount,
    per_day: *mut brim_amount,
    per_year: *mut brim_amount,
    one_drop_every: *mut brim_amount,
    error: *mut brim_error,
) -> brim_status {
    reckon!(error, [in_time, drop],
        rate = leak::drip_rate(drops, in_time, drop)?;
        per_day = rate.per_day, per_year = rate.per_year, one_drop_every = rate.one_drop_every)
}

/// The time from drop to drop, in s, of a drip that loses a volume over a time; all above zero,
/// and a drop no more than the volume.
///
/// Errors: `BRIM_ERROR_WRONG_KIND`, `BRIM_ERROR_OUT_OF_RANGE`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_drops_for(
    volume: *const brim_amount,
    over: *const brim_amount,
    drop: *const brim_amount,
    every: *mut brim_amount,
    error: *mut brim_error,
) -> brim_status {
    reckon!(
        error,
        [volume, over, drop],
        every = leak::drops_for(volume, over, drop)?
    )
}
