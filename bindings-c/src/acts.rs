//! Next acts: what to do now, the first thing first.

use crate::amount::brim_amount;
use crate::error::{brim_error, brim_status};
use crate::getter::{tell, value, value_if};
use crate::guard::answer;
use crate::handle::{self, Handle};
use crate::said;
use crate::text::{at, room, text};
use brimline_core::check::NextAct;
use brimline_core::document::canonical;
use std::ffi::c_char;

/// What to do next, the first thing first, each with a stable id and the cautions that go with it.
/// From `brim_evaluation_next` or `brim_check_advice`. Whoever shows an act to a person shows its
/// cautions with it.
///
/// Ownership: the caller's, to `brim_acts_free`. Threads: one at a time. Lifetime: its own; it is a
/// copy.
pub struct brim_acts {
    _opaque: [u8; 0],
}

impl Handle for brim_acts {
    type Held = Vec<NextAct>;
    const MARK: u64 = u64::from_le_bytes(*b"brimact\0");
}

/// Frees next acts. NULL is allowed.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_acts_free(acts: *mut brim_acts) {
    // SAFETY: the handle is NULL or the caller's to give back.
    unsafe { handle::free(acts) }
}

/// How many acts there are.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_acts_count(
    acts: *const brim_acts,
    count: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe { value(acts, "acts", count, "count", error, |acts| Ok(acts.len())) }
}

/// The id of an act.
///
/// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_acts_id(
    acts: *const brim_acts,
    index: usize,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(acts, "acts", buffer, capacity, length, error, |acts| {
            Ok(at(acts, index, "index")?.id)
        })
    }
}

/// How long to wait before an act, where that is said: `present` is 1, else 0.
///
/// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_acts_wait(
    acts: *const brim_acts,
    index: usize,
    present: *mut i32,
    wait: *mut brim_amount,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        value_if(acts, "acts", present, wait, "wait", error, |acts| {
            Ok(at(acts, index, "index")?.wait)
        })
    }
}

/// What an act says under a name, as text, such as the `volume` to pour; empty if nothing.
///
/// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_acts_arg(
    acts: *const brim_acts,
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
        let (acts, name, room) = unsafe {
            (
                handle::look(acts, "acts")?,
                text(name, name_length, "name")?,
                room(buffer, capacity, length)?,
            )
        };
        room.put(&said::under(&at(acts, index, "index")?.args, name))
    })
}

/// How many cautions go with an act.
///
/// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_acts_caution_count(
    acts: *const brim_acts,
    index: usize,
    count: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        value(acts, "acts", count, "count", error, |acts| {
            Ok(at(acts, index, "index")?.cautions.len())
        })
    }
}

/// The id of one of the cautions that go with an act.
///
/// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_acts_caution(
    acts: *const brim_acts,
    index: usize,
    item: usize,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(acts, "acts", buffer, capacity, length, error, |acts| {
            Ok(*at(&at(acts, index, "index")?.cautions, item, "item")?)
        })
    }
}

/// All acts as JSON: `[{"id","args","wait"?,"cautions"}]`.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_acts_json(
    acts: *const brim_acts,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(acts, "acts", buffer, capacity, length, error, |acts| {
            Ok(canonical(acts))
        })
    }
}
