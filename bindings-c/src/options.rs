//! What is asked for beside an answer, and how much is read before a document is refused.

use crate::error::{brim_error, brim_status};
use crate::guard::{self, answer};
use crate::handle::{self, Handle};
use crate::list::{self, brim_verdict};
use brimline_core::check::Options;
use std::ptr;

/// What is asked for beside an answer, and how much is read before a document is refused.
/// Everywhere options are taken, NULL stands for those of `brim_options_new`, and a call looks at
/// them but does not keep them.
///
/// Ownership: `brim_options_new` to `brim_options_free`. Threads: one at a time. Lifetime: its own.
pub struct brim_options {
    _opaque: [u8; 0],
}

impl Handle for brim_options {
    type Held = Options;
    const MARK: u64 = u64::from_le_bytes(*b"brimopt\0");
}

/// One of the bounds on what a document may hold.
pub type brim_limit = i32;

/// Bytes of one document; 16 MiB if not set.
pub const BRIM_LIMIT_BYTES: brim_limit = 1;
/// Objects and lists inside each other; 32 if not set, 100 at most.
pub const BRIM_LIMIT_DEPTH: brim_limit = 2;
/// Members of any one list, such as the entries of a journal; 100000 if not set.
pub const BRIM_LIMIT_ENTRIES: brim_limit = 3;
/// Bytes of any one text value; 10000 if not set.
pub const BRIM_LIMIT_TEXT: brim_limit = 4;
/// Faults collected before the rest are left out; 100 if not set, at least one.
pub const BRIM_LIMIT_FAULTS: brim_limit = 5;

const LIMITS: &[(brim_limit, &str)] = &[
    (BRIM_LIMIT_BYTES, "bytes"),
    (BRIM_LIMIT_DEPTH, "depth"),
    (BRIM_LIMIT_ENTRIES, "entries"),
    (BRIM_LIMIT_TEXT, "text"),
    (BRIM_LIMIT_FAULTS, "faults"),
];

/// New options: the default limits, nothing more asked for; NULL only after a defect of the
/// library.
#[unsafe(no_mangle)]
pub extern "C" fn brim_options_new() -> *mut brim_options {
    guard::caught(|| Ok(handle::give(Options::default()))).unwrap_or(ptr::null_mut())
}

/// Frees options. NULL is allowed.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_options_free(options: *mut brim_options) {
    // SAFETY: the handle is NULL or the caller's to give back.
    unsafe { handle::free(options) }
}

/// Sets one limit.
///
/// Errors: `BRIM_ERROR_UNKNOWN_VALUE` for a number of no limit.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_options_limit(
    options: *mut brim_options,
    limit: brim_limit,
    value: usize,
    error: *mut brim_error,
) -> brim_status {
    answer(error, || {
        // SAFETY: pointers as the header asks.
        let options = unsafe { handle::change(options, "options")? };
        let limits = options.limits.clone();
        options.limits = match limit {
            BRIM_LIMIT_BYTES => limits.with_bytes(value),
            BRIM_LIMIT_DEPTH => limits.with_depth(value),
            BRIM_LIMIT_ENTRIES => limits.with_entries(value),
            BRIM_LIMIT_TEXT => limits.with_text(value),
            BRIM_LIMIT_FAULTS => limits.with_faults(value),
            other => return Err(list::unknown(other, "limit", LIMITS.iter().copied())),
        };
        Ok(())
    })
}

/// Asks for the smallest changes that would turn the answer (1), or not (0). They stand in the
/// result document.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_options_flip(
    options: *mut brim_options,
    flip: i32,
    error: *mut brim_error,
) -> brim_status {
    answer(error, || {
        // SAFETY: pointers as the header asks.
        unsafe { handle::change(options, "options")? }.flip = flip != 0;
        Ok(())
    })
}

/// Asks what keeps a verdict away; 0 asks for none. It stands in the result document.
///
/// Errors: `BRIM_ERROR_UNKNOWN_VALUE` for a number of no verdict.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_options_why_not(
    options: *mut brim_options,
    verdict: brim_verdict,
    error: *mut brim_error,
) -> brim_status {
    answer(error, || {
        // SAFETY: pointers as the header asks.
        let options = unsafe { handle::change(options, "options")? };
        options.why_not = list::value_if(verdict, "verdict")?;
        Ok(())
    })
}
