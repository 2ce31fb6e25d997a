//! What may come back, found in many records.

use crate::error::{brim_error, brim_status};
use crate::getter::{tell, value};
use crate::guard::answer;
use crate::handle::{self, Handle};
use crate::list::{self, brim_severity};
use crate::record::{self, brim_record};
use crate::teller::brim_teller;
use crate::text::{at, out, text_if};
use brimline_core::record::{ComebackRules, Comebacks, comebacks_with};
use brimline_core::report;
use std::ffi::c_char;

/// What was found in many records: closed jobs that were never proven right, leaks nobody
/// followed
/// up, holds nobody lifted, units that were soon low again, and what looks written afterwards.
///
/// Ownership: `brim_comebacks_of` to `brim_comebacks_free`. Threads: one at a time. Lifetime: its
/// own; it does not need the records.
pub struct brim_comebacks {
    _opaque: [u8; 0],
}

impl Handle for brim_comebacks {
    type Held = Comebacks;
    const MARK: u64 = u64::from_le_bytes(*b"brimcbk\0");
}

/// Looks through records for what may come back. A record that comes twice counts once, and the
/// order in which records are given says nothing. `records` points to `count` handles; NULL is
/// allowed where `count` is 0. `rules` is a JSON object of the shop's own numbers, or NULL for
/// the
/// default ones.
///
/// Errors: every fault of the rules, with path and position.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_comebacks_of(
    records: *const *const brim_record,
    count: usize,
    rules: *const c_char,
    rules_length: usize,
    comebacks: *mut *mut brim_comebacks,
    error: *mut brim_error,
) -> brim_status {
    answer(error, || {
        // SAFETY: pointers as the header asks.
        let (records, rules, comebacks) = unsafe {
            (
                record::list(records, count)?,
                text_if(rules, rules_length, "rules")?,
                out(comebacks, "comebacks")?,
            )
        };
        let rules = match rules {
            Some(rules) => ComebackRules::from_json(rules)?,
            None => ComebackRules::default(),
        };
        comebacks.put(handle::give(comebacks_with(&records, &rules)));
        Ok(())
    })
}

/// Frees what was found. NULL is allowed.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_comebacks_free(comebacks: *mut brim_comebacks) {
    // SAFETY: the handle is NULL or the caller's to give back.
    unsafe { handle::free(comebacks) }
}

/// All that was found, as canonical JSON.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_comebacks_json(
    comebacks: *const brim_comebacks,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(
            comebacks,
            "comebacks",
            buffer,
            capacity,
            length,
            error,
            |comebacks| Ok(comebacks.to_json()),
        )
    }
}

/// All that was found in plain English lines, with every caution in full.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_comebacks_text(
    comebacks: *const brim_comebacks,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(
            comebacks,
            "comebacks",
            buffer,
            capacity,
            length,
            error,
            |comebacks| Ok(report::comebacks(comebacks)),
        )
    }
}

/// As `brim_comebacks_text`, by a teller.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_comebacks_text_with(
    comebacks: *const brim_comebacks,
    teller: *const brim_teller,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(
            comebacks,
            "comebacks",
            buffer,
            capacity,
            length,
            error,
            |comebacks| Ok(handle::look(teller, "teller")?.comebacks(comebacks)),
        )
    }
}

/// How many things were found.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_comebacks_count(
    comebacks: *const brim_comebacks,
    count: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        value(comebacks, "comebacks", count, "count", error, |comebacks| {
            Ok(comebacks.notices().len())
        })
    }
}

/// The id of one of them.
///
/// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_comebacks_id(
    comebacks: *const brim_comebacks,
    index: usize,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(
            comebacks,
            "comebacks",
            buffer,
            capacity,
            length,
            error,
            |comebacks| Ok(at(comebacks.notices(), index, "index")?.id),
        )
    }
}

/// How serious it is.
///
/// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_comebacks_severity(
    comebacks: *const brim_comebacks,
    index: usize,
    severity: *mut brim_severity,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        value(
            comebacks,
            "comebacks",
            severity,
            "severity",
            error,
            |comebacks| {
                Ok(list::number(
                    at(comebacks.notices(), index, "index")?.severity,
                ))
            },
        )
    }
}

/// How many records it is about.
///
/// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_comebacks_record_count(
    comebacks: *const brim_comebacks,
    index: usize,
    count: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        value(comebacks, "comebacks", count, "count", error, |comebacks| {
            Ok(at(comebacks.notices(), index, "index")?.records.len())
        })
    }
}

/// The digest of one of those records.
///
/// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_comebacks_digest(
    comebacks: *const brim_comebacks,
    index: usize,
    item: usize,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(
            comebacks,
            "comebacks",
            buffer,
            capacity,
            length,
            error,
            |comebacks| {
                let notice = at(comebacks.notices(), index, "index")?;
                Ok(at(&notice.records, item, "item")?
                    .record
                    .digest()
                    .to_string())
            },
        )
    }
}
