//! Findings: what a person should know of a journal.

use crate::error::{brim_error, brim_status};
use crate::getter::{tell, value};
use crate::guard::answer;
use crate::handle::{self, Handle};
use crate::list::{self, brim_severity};
use crate::said;
use crate::text::{at, room, text};
use brimline_core::check::Finding;
use brimline_core::document::canonical;
use std::ffi::c_char;

/// Findings: what a person should know of a journal, each with a stable id. From
/// `brim_evaluation_findings` or `brim_check_record`.
///
/// Ownership: the caller's, to `brim_findings_free`. Threads: one at a time. Lifetime: its own; it
/// is a copy.
pub struct brim_findings {
    _opaque: [u8; 0],
}

impl Handle for brim_findings {
    type Held = Vec<Finding>;
    const MARK: u64 = u64::from_le_bytes(*b"brimfin\0");
}

/// Frees findings. NULL is allowed.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_findings_free(findings: *mut brim_findings) {
    // SAFETY: the handle is NULL or the caller's to give back.
    unsafe { handle::free(findings) }
}

/// How many findings there are.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_findings_count(
    findings: *const brim_findings,
    count: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        value(findings, "findings", count, "count", error, |findings| {
            Ok(findings.len())
        })
    }
}

/// The id of a finding.
///
/// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_findings_id(
    findings: *const brim_findings,
    index: usize,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(
            findings,
            "findings",
            buffer,
            capacity,
            length,
            error,
            |findings| Ok(at(findings, index, "index")?.id),
        )
    }
}

/// How serious a finding is.
///
/// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_findings_severity(
    findings: *const brim_findings,
    index: usize,
    severity: *mut brim_severity,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        value(
            findings,
            "findings",
            severity,
            "severity",
            error,
            |findings| Ok(list::number(at(findings, index, "index")?.severity)),
        )
    }
}

/// The field of the entry or the sheet that a finding is about; empty if none.
///
/// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_findings_field(
    findings: *const brim_findings,
    index: usize,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(
            findings,
            "findings",
            buffer,
            capacity,
            length,
            error,
            |findings| Ok(at(findings, index, "index")?.field.unwrap_or_default()),
        )
    }
}

/// How many entries a finding is about.
///
/// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_findings_entry_count(
    findings: *const brim_findings,
    index: usize,
    count: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        value(findings, "findings", count, "count", error, |findings| {
            Ok(at(findings, index, "index")?.entries.len())
        })
    }
}

/// One of the entries that a finding is about, by its `seq`.
///
/// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_findings_entry(
    findings: *const brim_findings,
    index: usize,
    item: usize,
    seq: *mut u64,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        value(findings, "findings", seq, "seq", error, |findings| {
            Ok(*at(&at(findings, index, "index")?.entries, item, "item")?)
        })
    }
}

/// What a finding says under a name, as text; empty if nothing.
///
/// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_findings_arg(
    findings: *const brim_findings,
    index: usize,
    name: *const c_char,
    name_length: usize,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    answer(error, || {
        // SAFETY: pointers as the header asks.
        let (findings, name, room) = unsafe {
            (
                handle::look(findings, "findings")?,
                text(name, name_length, "name")?,
                room(buffer, capacity, length)?,
            )
        };
        room.put(&said::under(&at(findings, index, "index")?.args, name))
    })
}

/// All findings as JSON: `[{"id","severity","entries","field"?,"args"}]`.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_findings_json(
    findings: *const brim_findings,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(
            findings,
            "findings",
            buffer,
            capacity,
            length,
            error,
            |findings| Ok(canonical(findings)),
        )
    }
}
