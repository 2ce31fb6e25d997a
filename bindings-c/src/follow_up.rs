//! When a job is to be looked at again.

use crate::amount::brim_amount;
use crate::error::{brim_error, brim_status};
use crate::getter::{tell, value, value_if};
use crate::guard::answer;
use crate::handle::{self, Handle};
use crate::history::brim_history;
use crate::record::brim_record;
use crate::teller::brim_teller;
use crate::text::{out, text_if};
use brimline_core::record::{FollowUp, FollowUpRules, follow_up_with};
use brimline_core::report;
use std::ffi::c_char;

/// When a job is to be looked at again, and why.
///
/// Ownership: `brim_follow_up_of` to `brim_follow_up_free`. Threads: one at a time. Lifetime: its
/// own; it does not need the record or the history.
pub struct brim_follow_up {
    _opaque: [u8; 0],
}

impl Handle for brim_follow_up {
    type Held = FollowUp;
    const MARK: u64 = u64::from_le_bytes(*b"brimfol\0");
}

/// When the job of a record is to be looked at again. `history` may be NULL; the rate of the
/// record's unit is used where the record is its newest visit. `rules` is a JSON object of the
/// shop's own numbers, or NULL for the default ones. No clock is asked.
///
/// Errors: every fault of the rules, with path and position.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_follow_up_of(
    record: *const brim_record,
    history: *const brim_history,
    rules: *const c_char,
    rules_length: usize,
    follow_up: *mut *mut brim_follow_up,
    error: *mut brim_error,
) -> brim_status {
    answer(error, || {
        // SAFETY: pointers as the header asks.
        let (record, history, rules, follow_up) = unsafe {
            (
                handle::look(record, "record")?,
                handle::look_if(history, "history")?,
                text_if(rules, rules_length, "rules")?,
                out(follow_up, "follow_up")?,
            )
        };
        let rules = match rules {
            Some(rules) => FollowUpRules::from_json(rules)?,
            None => FollowUpRules::default(),
        };
        let history = history.and_then(|history| history.of_record(record));
        follow_up.put(handle::give(follow_up_with(record, history, &rules)?));
        Ok(())
    })
}

/// Frees a follow-up. NULL is allowed.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_follow_up_free(follow_up: *mut brim_follow_up) {
    // SAFETY: the handle is NULL or the caller's to give back.
    unsafe { handle::free(follow_up) }
}

/// All of it as canonical JSON.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_follow_up_json(
    follow_up: *const brim_follow_up,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(
            follow_up,
            "follow_up",
            buffer,
            capacity,
            length,
            error,
            |follow_up| Ok(follow_up.to_json()),
        )
    }
}

/// All of it in plain English lines, with every caution in full.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_follow_up_text(
    follow_up: *const brim_follow_up,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(
            follow_up,
            "follow_up",
            buffer,
            capacity,
            length,
            error,
            |follow_up| Ok(report::follow_up(follow_up)),
        )
    }
}

/// As `brim_follow_up_text`, by a teller.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_follow_up_text_with(
    follow_up: *const brim_follow_up,
    teller: *const brim_teller,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(
            follow_up,
            "follow_up",
            buffer,
            capacity,
            length,
            error,
            |follow_up| Ok(handle::look(teller, "teller")?.follow_up(follow_up)),
        )
    }
}

/// The job to be done then, as `recheck`; empty where nothing asks for one.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_follow_up_job(
    follow_up: *const brim_follow_up,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(
            follow_up,
            "follow_up",
            buffer,
            capacity,
            length,
            error,
            |follow_up| {
                let job = follow_up.job().map(|job| job.slug());
                Ok(job.unwrap_or_default())
            },
        )
    }
}

/// 1 where it is to be done before the vehicle is handed over; else 0.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_follow_up_is_now(
    follow_up: *const brim_follow_up,
    now: *mut i32,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        value(follow_up, "follow_up", now, "now", error, |follow_up| {
            Ok(follow_up.is_now().into())
        })
    }
}

/// 1 where it is to be done after one drive that brings the unit to its heat; else 0.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_follow_up_after_hot_drive(
    follow_up: *const brim_follow_up,
    after: *mut i32,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        value(follow_up, "follow_up", after, "after", error, |follow_up| {
            Ok(follow_up.after_hot_drive().into())
        })
    }
}

/// After what distance at the latest. `present` is 1 where there is one; else it is 0 and all of
/// `amount` is 0.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_follow_up_distance(
    follow_up: *const brim_follow_up,
    present: *mut i32,
    amount: *mut brim_amount,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        value_if(
            follow_up,
            "follow_up",
            present,
            amount,
            "amount",
            error,
            |follow_up| Ok(follow_up.distance()),
        )
    }
}

/// After how many days at the latest; -1 where no days are asked.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_follow_up_days(
    follow_up: *const brim_follow_up,
    days: *mut i64,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        value(follow_up, "follow_up", days, "days", error, |follow_up| {
            Ok(follow_up.days().map_or(-1, i64::from))
        })
    }
}

/// The calendar day that many days after the day of the last work; empty where no days are
/// asked.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_follow_up_date(
    follow_up: *const brim_follow_up,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(
            follow_up,
            "follow_up",
            buffer,
            capacity,
            length,
            error,
            |follow_up| {
                let date = follow_up.date().map(|date| date.to_string());
                Ok(date.unwrap_or_default())
            },
        )
    }
}
