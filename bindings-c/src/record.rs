//! Records: what is kept of a job.

use crate::error::{brim_error, brim_status};
use crate::evidence::brim_lacks;
use crate::getter::tell;
use crate::guard::answer;
use crate::handle::{self, Handle};
use crate::list::{self, brim_rules};
use crate::options::brim_options;
use crate::pack::brim_pack;
use crate::text::{self, out, room, text};
use brimline_core::document::canonical;
use brimline_core::{Error, ErrorKind, Fault, Limits, Record};
use std::ffi::c_char;

/// A job as it was closed: its pack's name and digest, its journal, the answer, and a digest over
/// all of it. Nothing in it changes any more.
///
/// Ownership: `brim_record_seal`, `brim_record_reopen` or `brim_record_copy` to
/// `brim_record_free`. Threads: one at a time; give each thread a copy, which costs next to
/// nothing. Lifetime: its own; it does not need the pack.
pub struct brim_record {
    _opaque: [u8; 0],
}

impl Handle for brim_record {
    type Held = Record;
    const MARK: u64 = u64::from_le_bytes(*b"brimrec\0");
}

/// Seals a job: evaluates the journal, one JSON document or JSON Lines, on the pack, and keeps both
/// with the answer. Of the options, the limits count.
///
/// Errors: every fault of the journal, with path and position; `BRIM_ERROR_CONFLICT` if the journal
/// names another pack.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_record_seal(
    pack: *const brim_pack,
    journal: *const c_char,
    journal_length: usize,
    options: *const brim_options,
    record: *mut *mut brim_record,
    error: *mut brim_error,
) -> brim_status {
    answer(error, || {
        // SAFETY: pointers as the header asks.
        let (pack, journal, options, record) = unsafe {
            (
                handle::look(pack, "pack")?,
                text::journal(journal, journal_length, "journal")?,
                handle::look_if(options, "options")?,
                out(record, "record")?,
            )
        };
        let sealed = match options {
            Some(options) => Record::seal_with(pack, &*journal, &options.limits)?,
            None => Record::seal(pack, &*journal)?,
        };
        record.put(handle::give(sealed));
        Ok(())
    })
}

/// Reopens a record from the text it was kept as. Of the options, the limits count.
///
/// Errors: `BRIM_ERROR_CHANGED` if any byte is not as it was sealed; the faults of reading, with
/// path and position, of what is cut off or no record; `BRIM_ERROR_WRONG_FORMAT` of a newer one.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_record_reopen(
    json: *const c_char,
    json_length: usize,
    options: *const brim_options,
    record: *mut *mut brim_record,
    error: *mut brim_error,
) -> brim_status {
    answer(error, || {
        // SAFETY: pointers as the header asks.
        let (json, options, record) = unsafe {
            (
                text(json, json_length, "json")?,
                handle::look_if(options, "options")?,
                out(record, "record")?,
            )
        };
        let reopened = match options {
            Some(options) => Record::reopen_with(json, &options.limits)?,
            None => Record::reopen_with(json, &Limits::default())?,
        };
        record.put(handle::give(reopened));
        Ok(())
    })
}

/// Another handle of the same record, for another thread. It shares the record's data.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_record_copy(
    record: *const brim_record,
    copy: *mut *mut brim_record,
    error: *mut brim_error,
) -> brim_status {
    answer(error, || {
        // SAFETY: pointers as the header asks.
        let (record, copy) = unsafe { (handle::look(record, "record")?, out(copy, "copy")?) };
        copy.put(handle::give(record.clone()));
        Ok(())
    })
}

/// The records of a list of handles.
///
/// # Safety
/// The pointer is NULL or points to `count` handles, each as [`handle::look`] has it.
pub(crate) unsafe fn list(
    records: *const *const brim_record,
    count: usize,
) -> Result<Vec<Record>, Error> {
    if count == 0 {
        return Ok(Vec::new());
    }
    if records.is_null() {
        return Err(Fault::new(ErrorKind::NullPointer).at("records").into());
    }
    if count > isize::MAX.unsigned_abs() / size_of::<*const brim_record>() {
        let fault = Fault::new(ErrorKind::OutOfRange).at("count");
        return Err(fault.got(&count.to_string()).into());
    }
    // SAFETY: the caller promises so many pointers; hosts that lay out lists themselves may not align them.
    let each = (0..count).map(|index| unsafe { records.add(index).read_unaligned() });
    // SAFETY: as the caller promises of each.
    each.map(|one| unsafe { handle::look(one, "records") }.cloned())
        .collect()
}

/// Frees a record. NULL is allowed.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_record_free(record: *mut brim_record) {
    // SAFETY: the handle is NULL or the caller's to give back.
    unsafe { handle::free(record) }
}

/// The record as it is kept: canonical JSON, to be stored byte for byte.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_record_json(
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
            |record| Ok(record.to_json().to_string()),
        )
    }
}

/// SHA-256 of the record without its `digest`, in lower-case hex.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_record_digest(
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
            |record| Ok(record.digest().to_string()),
        )
    }
}

/// What a warranty file is asked for and the record does not say; only what its job calls for.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_record_evidence(
    record: *const brim_record,
    lacks: *mut *mut brim_lacks,
    error: *mut brim_error,
) -> brim_status {
    answer(error, || {
        // SAFETY: pointers as the header asks.
        let (record, lacks) = unsafe { (handle::look(record, "record")?, out(lacks, "lacks")?) };
        lacks.put(handle::give(record.evidence()));
        Ok(())
    })
}

/// Evaluates the journal again, and tells where the answer differs from the sealed one, by member
/// of the result document, as JSON: `[{"path","was"?,"now"?}]`. Another version or digest of the
/// pack is told first.
///
/// Errors: `BRIM_ERROR_CONFLICT` for another pack, as recorded for another version or digest of it
/// as well; `BRIM_ERROR_UNKNOWN_VALUE` for a number of no rules, and as recorded for rules this
/// library does not know.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_record_reevaluate_json(
    record: *const brim_record,
    pack: *const brim_pack,
    rules: brim_rules,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    answer(error, || {
        // SAFETY: pointers as the header asks.
        let (record, pack, room) = unsafe {
            (
                handle::look(record, "record")?,
                handle::look(pack, "pack")?,
                room(buffer, capacity, length)?,
            )
        };
        let rules = list::value(rules, "rules")?;
        room.put(&canonical(&record.reevaluate(pack, rules)?))
    })
}
