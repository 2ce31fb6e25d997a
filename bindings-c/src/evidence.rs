//! What a record lacks.

use crate::error::{brim_error, brim_status};
use crate::getter::{tell, value};
use crate::handle::{self, Handle};
use crate::list::{self, brim_severity};
use crate::teller::brim_teller;
use crate::text::at;
use brimline_core::document::canonical;
use brimline_core::record::Lack;
use brimline_core::report::lack;
use std::ffi::c_char;

/// What a warranty file is asked for and a record does not say, each with a stable id. From
/// `brim_record_evidence`.
///
/// Ownership: the caller's, to `brim_lacks_free`. Threads: one at a time. Lifetime: its own; it is a
/// copy.
pub struct brim_lacks {
    _opaque: [u8; 0],
}

impl Handle for brim_lacks {
    type Held = Vec<Lack>;
    const MARK: u64 = u64::from_le_bytes(*b"brimlak\0");
}

/// Frees what a record lacks. NULL is allowed.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_lacks_free(lacks: *mut brim_lacks) {
    // SAFETY: the handle is NULL or the caller's to give back.
    unsafe { handle::free(lacks) }
}

/// How many things are lacking.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_lacks_count(
    lacks: *const brim_lacks,
    count: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        value(lacks, "lacks", count, "count", error, |lacks| {
            Ok(lacks.len())
        })
    }
}

/// The id of what is lacking.
///
/// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_lacks_id(
    lacks: *const brim_lacks,
    index: usize,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(lacks, "lacks", buffer, capacity, length, error, |lacks| {
            Ok(at(lacks, index, "index")?.id)
        })
    }
}

/// How much it is missed.
///
/// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_lacks_severity(
    lacks: *const brim_lacks,
    index: usize,
    severity: *mut brim_severity,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        value(lacks, "lacks", severity, "severity", error, |lacks| {
            Ok(list::number(at(lacks, index, "index")?.severity))
        })
    }
}

/// How many entries do not say it; 0 where it is the whole job.
///
/// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_lacks_entry_count(
    lacks: *const brim_lacks,
    index: usize,
    count: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        value(lacks, "lacks", count, "count", error, |lacks| {
            Ok(at(lacks, index, "index")?.entries.len())
        })
    }
}

/// One of the entries that do not say it, by its `seq`.
///
/// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_lacks_entry(
    lacks: *const brim_lacks,
    index: usize,
    item: usize,
    seq: *mut u64,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        value(lacks, "lacks", seq, "seq", error, |lacks| {
            Ok(*at(&at(lacks, index, "index")?.entries, item, "item")?)
        })
    }
}

/// What is lacking in an English sentence.
///
/// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_lacks_text(
    lacks: *const brim_lacks,
    index: usize,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(lacks, "lacks", buffer, capacity, length, error, |lacks| {
            Ok(lack(at(lacks, index, "index")?.id).unwrap_or_default())
        })
    }
}

/// As `brim_lacks_text`, by a teller.
///
/// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_lacks_text_with(
    lacks: *const brim_lacks,
    index: usize,
    teller: *const brim_teller,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(lacks, "lacks", buffer, capacity, length, error, |lacks| {
            let teller = handle::look(teller, "teller")?;
            Ok(teller
                .lack(at(lacks, index, "index")?.id)
                .unwrap_or_default())
        })
    }
}

/// All of them as JSON: `[{"id","severity","entries"}]`.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_lacks_json(
    lacks: *const brim_lacks,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(lacks, "lacks", buffer, capacity, length, error, |lacks| {
            Ok(canonical(lacks))
        })
    }
}
