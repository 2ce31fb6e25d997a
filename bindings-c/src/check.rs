//! A check as it happens.

use crate::acts::brim_acts;
use crate::error::{brim_error, brim_status};
use crate::evaluation::brim_evaluation;
use crate::findings::brim_findings;
use crate::gate::brim_gate;
use crate::getter::{tell, value};
use crate::guard::answer;
use crate::handle::{self, Handle};
use crate::list::{self, brim_act};
use crate::options::brim_options;
use crate::pack::brim_pack;
use crate::text::{self, out, text, text_if};
use brimline_core::{Amount, Kind, LevelCheck, Limits};
use std::ffi::c_char;

/// A check as it happens: append an entry, get what follows from it.
///
/// Ownership: `brim_check_start`, `brim_check_replay` or `brim_check_copy` to `brim_check_free`.
/// Threads: one at a time. Lifetime: its own; it does not need the pack it was started on.
pub struct brim_check {
    _opaque: [u8; 0],
}

impl Handle for brim_check {
    type Held = LevelCheck;
    const MARK: u64 = u64::from_le_bytes(*b"brimchk\0");
}

/// Begins a check from the header of a journal, as JSON, within the limits of the options.
///
/// Errors: every fault of the header, with path and position.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_check_start(
    pack: *const brim_pack,
    header: *const c_char,
    header_length: usize,
    options: *const brim_options,
    check: *mut *mut brim_check,
    error: *mut brim_error,
) -> brim_status {
    answer(error, || {
        // SAFETY: pointers as the header asks.
        let (pack, header, options, check) = unsafe {
            (
                handle::look(pack, "pack")?,
                text(header, header_length, "header")?,
                handle::look_if(options, "options")?,
                out(check, "check")?,
            )
        };
        let started = match options {
            Some(options) => LevelCheck::start_with(pack, header, &options.limits)?,
            None => LevelCheck::start_with(pack, header, &Limits::default())?,
        };
        check.put(handle::give(started));
        Ok(())
    })
}

/// Builds a check from a whole journal, as if every entry had been recorded in turn.
///
/// Errors: every fault of the journal, with path and position.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_check_replay(
    pack: *const brim_pack,
    journal: *const c_char,
    journal_length: usize,
    check: *mut *mut brim_check,
    error: *mut brim_error,
) -> brim_status {
    answer(error, || {
        // SAFETY: pointers as the header asks.
        let (pack, journal, check) = unsafe {
            (
                handle::look(pack, "pack")?,
                text::journal(journal, journal_length, "journal")?,
                out(check, "check")?,
            )
        };
        check.put(handle::give(LevelCheck::replay(pack, &journal)?));
        Ok(())
    })
}

/// A copy that goes its own way from here. It costs next to nothing.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_check_copy(
    check: *const brim_check,
    copy: *mut *mut brim_check,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        value(check, "check", copy, "copy", error, |check| {
            Ok(handle::give(check.clone()))
        })
    }
}

/// Frees a check. NULL is allowed.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_check_free(check: *mut brim_check) {
    // SAFETY: the handle is NULL or the caller's to give back.
    unsafe { handle::free(check) }
}

/// Records one entry, as JSON. `findings` receives what is new with it, in a handle of the
/// caller's; NULL if that is not wanted. An entry that repeats an earlier one under the same `id`
/// changes nothing.
///
/// Errors: every fault of the entry, with path and position; `BRIM_ERROR_SEQUENCE` if its `seq`
/// does not rise. The check then stays as it was.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_check_record(
    check: *mut brim_check,
    entry: *const c_char,
    entry_length: usize,
    findings: *mut *mut brim_findings,
    error: *mut brim_error,
) -> brim_status {
    answer(error, || {
        // SAFETY: pointers as the header asks.
        let (check, entry) = unsafe {
            (
                handle::change(check, "check")?,
                text(entry, entry_length, "entry")?,
            )
        };
        let (recorded, new) = check.clone().record(entry)?;
        // SAFETY: the same.
        if let Ok(findings) = unsafe { out(findings, "findings") } {
            findings.put(handle::give(new));
        }
        *check = recorded;
        Ok(())
    })
}

/// Whether an act is allowed, in a handle of the caller's. `planned` is the volume about to be
/// poured, as text, or NULL; `at` the moment that is asked about, RFC 3339, or NULL for that of the
/// newest entry.
///
/// Errors: `BRIM_ERROR_UNKNOWN_VALUE` for a number of no act, `BRIM_ERROR_NOT_A_TIME`; of the
/// volume those of `brim_amount_parse`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_check_gate(
    check: *const brim_check,
    act: brim_act,
    planned: *const c_char,
    planned_length: usize,
    at: *const c_char,
    at_length: usize,
    gate: *mut *mut brim_gate,
    error: *mut brim_error,
) -> brim_status {
    answer(error, || {
        // SAFETY: pointers as the header asks.
        let (check, planned, at, gate) = unsafe {
            (
                handle::look(check, "check")?,
                text_if(planned, planned_length, "planned")?,
                text_if(at, at_length, "at")?,
                out(gate, "gate")?,
            )
        };
        let act = list::value(act, "act")?;
        let measures = check.measures();
        let planned = planned
            .map(|text| Amount::parse_as(text, Kind::Volume, measures))
            .transpose()?;
        gate.put(handle::give(check.gate(act, planned, at)?));
        Ok(())
    })
}

/// The answer so far, the same as `brim_evaluate` gives for the same journal, in a handle of the
/// caller's. Of the options only what is asked for beside the answer counts.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_check_evaluation(
    check: *const brim_check,
    options: *const brim_options,
    evaluation: *mut *mut brim_evaluation,
    error: *mut brim_error,
) -> brim_status {
    answer(error, || {
        // SAFETY: pointers as the header asks.
        let (check, options, evaluation) = unsafe {
            (
                handle::look(check, "check")?,
                handle::look_if(options, "options")?,
                out(evaluation, "evaluation")?,
            )
        };
        evaluation.put(handle::give(match options {
            Some(options) => check.evaluation_with(options.flip, options.why_not),
            None => check.evaluation(),
        }));
        Ok(())
    })
}

/// What to do next, in a handle of the caller's.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_check_advice(
    check: *const brim_check,
    acts: *mut *mut brim_acts,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        value(check, "check", acts, "acts", error, |check| {
            Ok(handle::give(check.advice()))
        })
    }
}

/// The journal as JSON Lines: the header, then a line for each entry, each ending in a line feed.
/// `brim_check_replay` reads it again.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_check_journal_lines(
    check: *const brim_check,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(check, "check", buffer, capacity, length, error, |check| {
            Ok(check.journal_lines())
        })
    }
}
