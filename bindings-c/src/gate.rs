//! Gates: may this be done now?

use crate::amount::brim_amount;
use crate::error::{brim_error, brim_status};
use crate::getter::{tell, value, value_if};
use crate::guard::answer;
use crate::handle::{self, Handle};
use crate::said;
use crate::text::{at, room, text};
use brimline_core::check::Gate;
use brimline_core::document::canonical;
use std::ffi::c_char;

/// The answer to "may I do this now": whether it is allowed, and every item that stands in the way.
/// From `brim_evaluation_gate` or `brim_check_gate`.
///
/// Ownership: the caller's, to `brim_gate_free`. Threads: one at a time. Lifetime: its own; it is a
/// copy.
pub struct brim_gate {
    _opaque: [u8; 0],
}

impl Handle for brim_gate {
    type Held = Gate;
    const MARK: u64 = u64::from_le_bytes(*b"brimgat\0");
}

/// Frees a gate. NULL is allowed.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_gate_free(gate: *mut brim_gate) {
    // SAFETY: the handle is NULL or the caller's to give back.
    unsafe { handle::free(gate) }
}

/// Whether nothing stands in the way: 1 or 0.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_gate_allowed(
    gate: *const brim_gate,
    allowed: *mut i32,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        value(gate, "gate", allowed, "allowed", error, |gate| {
            Ok(gate.allowed.into())
        })
    }
}

/// How many items stand in the way.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_gate_unmet_count(
    gate: *const brim_gate,
    count: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        value(gate, "gate", count, "count", error, |gate| {
            Ok(gate.unmet.len())
        })
    }
}

/// The id of an item that stands in the way.
///
/// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_gate_unmet_id(
    gate: *const brim_gate,
    index: usize,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(gate, "gate", buffer, capacity, length, error, |gate| {
            Ok(at(&gate.unmet, index, "index")?.id)
        })
    }
}

/// How long an item takes to mend itself, where that is known: `present` is 1, else 0.
///
/// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_gate_unmet_wait(
    gate: *const brim_gate,
    index: usize,
    present: *mut i32,
    wait: *mut brim_amount,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        value_if(gate, "gate", present, wait, "wait", error, |gate| {
            Ok(at(&gate.unmet, index, "index")?.wait)
        })
    }
}

/// What an item says under a name, as text; empty if nothing.
///
/// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_gate_unmet_arg(
    gate: *const brim_gate,
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
        let (gate, name, room) = unsafe {
            (
                handle::look(gate, "gate")?,
                text(name, name_length, "name")?,
                room(buffer, capacity, length)?,
            )
        };
        room.put(&said::under(&at(&gate.unmet, index, "index")?.args, name))
    })
}

/// The gate as JSON: `{"allowed","unmet":[{"id","wait"?,"args"}]}`.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_gate_json(
    gate: *const brim_gate,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(gate, "gate", buffer, capacity, length, error, |gate| {
            Ok(canonical(gate))
        })
    }
}
