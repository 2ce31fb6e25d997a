//! What a record says of its job, as it was sealed.

use crate::error::{brim_error, brim_status};
use crate::getter::{tell, value};
use crate::known::{self, brim_interval};
use crate::list::{self, brim_by_sheet, brim_certainty, brim_verdict};
use crate::record::brim_record;
use brimline_core::{Error, Interval, Record};
use std::ffi::c_char;

/// The name of the pack the job was done on.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_record_pack_id(
    record: *const brim_record,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(
            record,
            "record",
            buffer,
            capacity,
            length,
            error,
            |record| Ok(record.pack().id.clone()),
        )
    }
}

/// The version of that pack.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_record_pack_version(
    record: *const brim_record,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(
            record,
            "record",
            buffer,
            capacity,
            length,
            error,
            |record| Ok(record.pack().version.clone()),
        )
    }
}

/// The digest of that pack.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_record_pack_digest(
    record: *const brim_record,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(
            record,
            "record",
            buffer,
            capacity,
            length,
            error,
            |record| Ok(record.pack().digest.clone()),
        )
    }
}

/// The journal in its canonical form, as one JSON document.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_record_journal_json(
    record: *const brim_record,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(
            record,
            "record",
            buffer,
            capacity,
            length,
            error,
            |record| Ok(record.journal().to_json()),
        )
    }
}

/// The answer as it was sealed: the result document.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_record_result_json(
    record: *const brim_record,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(
            record,
            "record",
            buffer,
            capacity,
            length,
            error,
            |record| Ok(record.result_json().to_string()),
        )
    }
}

/// The version of the rules the answer was given by.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_record_rules(
    record: *const brim_record,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(
            record,
            "record",
            buffer,
            capacity,
            length,
            error,
            |record| Ok(record.rules().to_string()),
        )
    }
}

/// The procedure that the journal names.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_record_procedure(
    record: *const brim_record,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(
            record,
            "record",
            buffer,
            capacity,
            length,
            error,
            |record| Ok(record.procedure().id.clone()),
        )
    }
}

/// When the first entry was made, as it was written; empty without entries.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_record_began(
    record: *const brim_record,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(
            record,
            "record",
            buffer,
            capacity,
            length,
            error,
            |record| {
                Ok(record
                    .began()
                    .map_or_else(String::new, |moment| moment.text().to_string()))
            },
        )
    }
}

/// When the last entry was made, as it was written; empty without entries.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_record_ended(
    record: *const brim_record,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(
            record,
            "record",
            buffer,
            capacity,
            length,
            error,
            |record| {
                Ok(record
                    .ended()
                    .map_or_else(String::new, |moment| moment.text().to_string()))
            },
        )
    }
}

/// What could be said of the level, as it was sealed.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_record_verdict(
    record: *const brim_record,
    verdict: *mut brim_verdict,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        value(record, "record", verdict, "verdict", error, |record| {
            Ok(list::number(record.verdict()))
        })
    }
}

/// What the sheet's own count said of a leak.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_record_by_sheet(
    record: *const brim_record,
    by_sheet: *mut brim_by_sheet,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        value(record, "record", by_sheet, "by_sheet", error, |record| {
            Ok(list::number(record.leak().by_sheet))
        })
    }
}

/// How far what was proved bears that out.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_record_certainty(
    record: *const brim_record,
    certainty: *mut brim_certainty,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        value(record, "record", certainty, "certainty", error, |record| {
            Ok(list::number(record.leak().certainty))
        })
    }
}

fn interval(record: &Record, interval: brim_interval) -> Result<Interval, Error> {
    let shortage = record.leak().shortage;
    known::chosen(
        interval,
        [
            record.as_found(),
            record.net_added(),
            record.now(),
            shortage,
        ],
    )
}

/// An interval as text, as it was sealed: `[-2 L, -1.5 L]` or `(-inf, 0 L]`.
///
/// Errors: `BRIM_ERROR_UNKNOWN_VALUE` for a number of no interval.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_record_interval(
    record: *const brim_record,
    interval: brim_interval,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(
            record,
            "record",
            buffer,
            capacity,
            length,
            error,
            |record| Ok(self::interval(record, interval)?.to_string()),
        )
    }
}
