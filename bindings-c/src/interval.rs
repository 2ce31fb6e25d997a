//! Intervals, as text.

use crate::error::{brim_error, brim_status};
use crate::guard::answer;
use crate::text::{room, text};
use brimline_core::Interval;
use std::ffi::c_char;

/// What two intervals, written as `[-2 L, -1.5 L]` or `(-inf, 0 L]`, have in common; empty where
/// that is nothing.
///
/// Errors: `BRIM_ERROR_SYNTAX` for another form, `BRIM_ERROR_OUT_OF_RANGE` where the lower end is
/// above the upper, `BRIM_ERROR_WRONG_KIND`; of the ends those of `brim_amount_parse`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_interval_intersect(
    a: *const c_char,
    a_length: usize,
    b: *const c_char,
    b_length: usize,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    answer(error, || {
        // SAFETY: pointers as the header asks.
        let (a, b, room) = unsafe {
            (
                text(a, a_length, "a")?,
                text(b, b_length, "b")?,
                room(buffer, capacity, length)?,
            )
        };
        let both = Interval::parse(a)?.intersect(&Interval::parse(b)?)?;
        room.put(&both.map(|both| both.to_string()).unwrap_or_default())
    })
}
