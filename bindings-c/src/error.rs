//! Statuses, and the detail of an error in a handle of the caller's.

use crate::getter::{tell, value};
use crate::guard;
use crate::handle::{self, Handle};
use crate::text::{at, out};
use brimline_core::{Error, Fault};
use std::ffi::c_char;
use std::ptr;

/// What a call answers: `BRIM_OK`, or what kind of error the first fault is. Numbers are never
/// changed or reused; later versions add some. Words: `BRIM_LIST_STATUS`.
pub type brim_status = i32;

/// The call did what it says.
pub const BRIM_OK: brim_status = 0;
/// The text is not well-formed JSON.
pub const BRIM_ERROR_SYNTAX: brim_status = 1;
/// A limit was passed; see `brim_options_limit`.
pub const BRIM_ERROR_LIMIT: brim_status = 2;
/// The document's `format` is not one this version reads.
pub const BRIM_ERROR_WRONG_FORMAT: brim_status = 3;
/// A value of another JSON type was expected.
pub const BRIM_ERROR_WRONG_TYPE: brim_status = 4;
/// A required member is absent.
pub const BRIM_ERROR_MISSING_FIELD: brim_status = 5;
/// A member that the format does not have.
pub const BRIM_ERROR_UNKNOWN_FIELD: brim_status = 6;
/// The same member stands twice in one object.
pub const BRIM_ERROR_DUPLICATE_FIELD: brim_status = 7;
/// A word or number outside the list of those allowed.
pub const BRIM_ERROR_UNKNOWN_VALUE: brim_status = 8;
/// Two members that exclude each other, or none of a set of which one is needed.
pub const BRIM_ERROR_CONFLICT: brim_status = 9;
/// A reference to something that is not there; of a handle: it was freed, or is of another type.
pub const BRIM_ERROR_UNRESOLVED: brim_status = 10;
/// The same identity given twice.
pub const BRIM_ERROR_DUPLICATE_ID: brim_status = 11;
/// A chain of references that returns to its start.
pub const BRIM_ERROR_CYCLE: brim_status = 12;
/// `seq` does not rise.
pub const BRIM_ERROR_SEQUENCE: brim_status = 13;
/// Not a date or time in the expected form.
pub const BRIM_ERROR_NOT_A_TIME: brim_status = 14;
/// A sealed document whose bytes are not those that were sealed.
pub const BRIM_ERROR_CHANGED: brim_status = 15;
/// The host's storage did not keep or give what was asked of it.
pub const BRIM_ERROR_STORAGE: brim_status = 16;
/// Not a number in plain decimal notation, or not finite.
pub const BRIM_ERROR_NOT_A_NUMBER: brim_status = 20;
/// More digits than an amount holds.
pub const BRIM_ERROR_TOO_MANY_DIGITS: brim_status = 21;
/// A comma that may be a decimal sign or a thousands separator.
pub const BRIM_ERROR_DECIMAL_COMMA: brim_status = 22;
/// A fraction that has no finite decimal.
pub const BRIM_ERROR_FRACTION: brim_status = 23;
/// A number without its unit.
pub const BRIM_ERROR_UNIT_MISSING: brim_status = 24;
/// A unit this library does not know.
pub const BRIM_ERROR_UNIT_UNKNOWN: brim_status = 25;
/// A unit that names more than one size.
pub const BRIM_ERROR_UNIT_AMBIGUOUS: brim_status = 26;
/// A unit of another kind of quantity than the one expected.
pub const BRIM_ERROR_WRONG_KIND: brim_status = 27;
/// A value outside the range that is meaningful here.
pub const BRIM_ERROR_OUT_OF_RANGE: brim_status = 28;
/// NULL where something is needed.
pub const BRIM_ERROR_NULL_POINTER: brim_status = 40;
/// The buffer is too small; the needed length was reported.
pub const BRIM_ERROR_BUFFER_TOO_SMALL: brim_status = 41;
/// A text is not UTF-8.
pub const BRIM_ERROR_NOT_UTF8: brim_status = 42;
/// A defect of the library itself, caught at its border.
pub const BRIM_ERROR_INTERNAL: brim_status = 90;

/// The detail of an error: every fault of what was handed in, in the order they stand there.
///
/// A call that is given one empties it first, and fills it if it fails. Ownership: `brim_error_new`
/// to `brim_error_free`. Threads: one at a time. Lifetime: its own; nothing in it points elsewhere.
pub struct brim_error {
    _opaque: [u8; 0],
}

/// The calls that read an error have no other to put theirs in.
const NO_DETAIL: *mut brim_error = ptr::null_mut();

impl Handle for brim_error {
    type Held = Option<Error>;
    const MARK: u64 = u64::from_le_bytes(*b"brimerr\0");
}

/// A new, empty error handle, for any number of calls; NULL only after a defect of the library.
#[unsafe(no_mangle)]
pub extern "C" fn brim_error_new() -> *mut brim_error {
    guard::caught(|| Ok(handle::give(None))).unwrap_or(ptr::null_mut())
}

/// Frees an error handle. NULL is allowed.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_error_free(error: *mut brim_error) {
    // SAFETY: the handle is NULL or the caller's to give back.
    unsafe { handle::free(error) }
}

/// The faults of an error; none if the last call did well.
fn faults(error: &Option<Error>) -> Vec<&Fault> {
    error.iter().flat_map(Error::faults).collect()
}

/// How many faults there are; 0 if the last call did well.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_error_fault_count(
    error: *const brim_error,
    count: *mut usize,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        value(error, "error", count, "count", NO_DETAIL, |held| {
            Ok(faults(held).len())
        })
    }
}

/// What kind a fault is: one of `BRIM_ERROR_...`.
///
/// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_error_fault_kind(
    error: *const brim_error,
    index: usize,
    kind: *mut brim_status,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        value(error, "error", kind, "kind", NO_DETAIL, |held| {
            Ok(at(&faults(held), index, "index")?.kind.code())
        })
    }
}

/// Where in the text a fault stands: line and column in characters, both from 1, and the bytes
/// before it. All three are 0 where that is not known, and at most 4294967295.
///
/// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_error_fault_position(
    error: *const brim_error,
    index: usize,
    line: *mut u32,
    column: *mut u32,
    offset: *mut u32,
) -> brim_status {
    guard::answer(NO_DETAIL, || {
        // SAFETY: pointers as the header asks.
        let (held, line, column, offset) = unsafe {
            let held = handle::look(error, "error")?;
            (
                held,
                out(line, "line")?,
                out(column, "column")?,
                out(offset, "offset")?,
            )
        };
        let position = at(&faults(held), index, "index")?.position;
        line.put(position.map_or(0, |place| place.line));
        column.put(position.map_or(0, |place| place.column));
        offset.put(position.map_or(0, |place| place.offset));
        Ok(())
    })
}

/// Where in the document a fault stands, as `entries[3].volume`, or which argument it is about;
/// empty if neither.
///
/// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_error_fault_path(
    error: *const brim_error,
    index: usize,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(
            error,
            "error",
            buffer,
            capacity,
            length,
            NO_DETAIL,
            |held| Ok(at(&faults(held), index, "index")?.path.clone()),
        )
    }
}

/// What was found, shortened to 80 characters; empty if nothing is to be told.
///
/// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_error_fault_got(
    error: *const brim_error,
    index: usize,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(
            error,
            "error",
            buffer,
            capacity,
            length,
            NO_DETAIL,
            |held| {
                Ok(at(&faults(held), index, "index")?
                    .got
                    .clone()
                    .unwrap_or_default())
            },
        )
    }
}

/// What to do about a fault, in English; empty if nothing is to be told.
///
/// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_error_fault_hint(
    error: *const brim_error,
    index: usize,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(
            error,
            "error",
            buffer,
            capacity,
            length,
            NO_DETAIL,
            |held| {
                Ok(at(&faults(held), index, "index")?
                    .hint
                    .clone()
                    .unwrap_or_default())
            },
        )
    }
}

/// How many values are listed that would have been accepted.
///
/// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_error_allowed_count(
    error: *const brim_error,
    index: usize,
    count: *mut usize,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        value(error, "error", count, "count", NO_DETAIL, |held| {
            Ok(at(&faults(held), index, "index")?.allowed.len())
        })
    }
}

/// One of the values that would have been accepted.
///
/// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_error_allowed(
    error: *const brim_error,
    index: usize,
    item: usize,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(
            error,
            "error",
            buffer,
            capacity,
            length,
            NO_DETAIL,
            |held| {
                let faults = faults(held);
                Ok(at(&at(&faults, index, "index")?.allowed, item, "item")?.clone())
            },
        )
    }
}

/// The whole error in English, a line for each fault; empty if the last call did well.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_error_message(
    error: *const brim_error,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(
            error,
            "error",
            buffer,
            capacity,
            length,
            NO_DETAIL,
            |held| Ok(held.as_ref().map(Error::to_string).unwrap_or_default()),
        )
    }
}

/// The whole error as JSON:
/// `{"kind","code","message","faults":[{"kind","code","path"?,"line"?,"column"?,"offset"?,
/// "got"?,"allowed"?,"hint"?}]}`; empty if the last call did well.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_error_json(
    error: *const brim_error,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(
            error,
            "error",
            buffer,
            capacity,
            length,
            NO_DETAIL,
            |held| Ok(held.as_ref().map(Error::to_json).unwrap_or_default()),
        )
    }
}
