//! What a job will cost.

use crate::check::brim_check;
use crate::error::{brim_error, brim_status};
use crate::findings::brim_findings;
use crate::getter::{tell, value};
use crate::guard::answer;
use crate::handle::{self, Handle};
use crate::lines::{brim_lines, brim_money};
use crate::list::{self, brim_case};
use crate::price_list::brim_price_list;
use crate::teller::{brim_teller, or_english};
use crate::text::{out, text_if};
use brimline_core::estimate::Asked;
use brimline_core::{Estimate, estimate};
use std::ffi::c_char;

/// What a job will cost: best, likely and worst.
///
/// Ownership: `brim_check_estimate` to `brim_estimate_free`. Threads: one at a time. Lifetime: its
/// own.
pub struct brim_estimate {
    _opaque: [u8; 0],
}

impl Handle for brim_estimate {
    type Held = Estimate;
    const MARK: u64 = u64::from_le_bytes(*b"brimest\0");
}

/// What a job will cost: the best, the likely and the worst case under one price list, each a
/// consistent set of lines. What was poured is a fact in every case. `asked` is what the host knows
/// besides, as JSON, or NULL: `{"likely"?,"planned"?,"ceiling"?,"stock"?:{"full","opened","bulk"},
/// "on"?}`.
///
/// Errors: every fault of what is asked, with path and position; `BRIM_ERROR_UNRESOLVED` without a
/// sheet, and for everything that has no price, all at once; `BRIM_ERROR_CONFLICT` and
/// `BRIM_ERROR_OUT_OF_RANGE` at the ceiling.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_check_estimate(
    check: *const brim_check,
    prices: *const brim_price_list,
    asked: *const c_char,
    asked_length: usize,
    estimate: *mut *mut brim_estimate,
    error: *mut brim_error,
) -> brim_status {
    answer(error, || {
        // SAFETY: pointers as the header asks.
        let (check, prices, asked, output) = unsafe {
            (
                handle::look(check, "check")?,
                handle::look(prices, "prices")?,
                text_if(asked, asked_length, "asked")?,
                out(estimate, "estimate")?,
            )
        };
        let asked = asked.map(Asked::from_json).transpose()?;
        let told = self::estimate(prices, check, &asked.unwrap_or_default())?;
        output.put(handle::give(told));
        Ok(())
    })
}

/// Frees an estimate. NULL is allowed.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_estimate_free(estimate: *mut brim_estimate) {
    // SAFETY: the handle is NULL or the caller's to give back.
    unsafe { handle::free(estimate) }
}

/// The canonical JSON of the estimate document.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_estimate_json(
    estimate: *const brim_estimate,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(
            estimate,
            "estimate",
            buffer,
            capacity,
            length,
            error,
            |estimate| Ok(estimate.to_json()),
        )
    }
}

/// The lines of a case.
///
/// Errors: `BRIM_ERROR_UNKNOWN_VALUE` for a number of no case.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_estimate_lines(
    estimate: *const brim_estimate,
    case: brim_case,
    lines: *mut *mut brim_lines,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        value(estimate, "estimate", lines, "lines", error, |estimate| {
            let case = estimate.case(list::value(case, "case")?);
            Ok(handle::give(case.lines.clone()))
        })
    }
}

/// What a case comes to, tax included.
///
/// Errors: `BRIM_ERROR_UNKNOWN_VALUE` for a number of no case.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_estimate_total(
    estimate: *const brim_estimate,
    case: brim_case,
    total: *mut brim_money,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        value(estimate, "estimate", total, "total", error, |estimate| {
            let case = estimate.case(list::value(case, "case")?);
            Ok(case.total.total.into())
        })
    }
}

/// What to mind: before the next pour, before the start.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_estimate_findings(
    estimate: *const brim_estimate,
    findings: *mut *mut brim_findings,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        value(
            estimate,
            "estimate",
            findings,
            "findings",
            error,
            |estimate| Ok(handle::give(estimate.findings().to_vec())),
        )
    }
}

/// The ids of the cautions that go with the state of the job, a line each. They belong beside every
/// telling of the estimate.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_estimate_cautions(
    estimate: *const brim_estimate,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(
            estimate,
            "estimate",
            buffer,
            capacity,
            length,
            error,
            |estimate| Ok(estimate.cautions().join("\n")),
        )
    }
}

/// The estimate in plain lines of at most 80 columns, with every caution in full. `check` is the one
/// it was made of: its sheet words its own cautions. The teller may be NULL, for English.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_estimate_text(
    estimate: *const brim_estimate,
    check: *const brim_check,
    teller: *const brim_teller,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(
            estimate,
            "estimate",
            buffer,
            capacity,
            length,
            error,
            |estimate| {
                let (check, teller) = (handle::look(check, "check")?, or_english(teller)?);
                Ok(teller.estimate(estimate, check.sheet()))
            },
        )
    }
}
