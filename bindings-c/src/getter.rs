//! Answering what a handle stands for.

use crate::error::{brim_error, brim_status};
use crate::guard::answer;
use crate::handle::{self, Handle};
use crate::text::{out, room};
use brimline_core::Error;
use std::ffi::c_char;

/// Answers one value of what a handle stands for.
///
/// # Safety
/// As [`handle::look`] for the handle and [`out`] for the output.
pub(crate) unsafe fn value<H: Handle, T>(
    handle: *const H,
    name: &'static str,
    output: *mut T,
    output_name: &'static str,
    error: *mut brim_error,
    of: impl FnOnce(&H::Held) -> Result<T, Error>,
) -> brim_status {
    answer(error, || {
        // SAFETY: as the caller promises.
        let (held, output) = unsafe { (handle::look(handle, name)?, out(output, output_name)?) };
        output.put(of(held)?);
        Ok(())
    })
}

/// Answers one text of what a handle stands for.
///
/// # Safety
/// As [`handle::look`] for the handle and [`room`] for the buffer.
pub(crate) unsafe fn tell<H: Handle, T: AsRef<str>>(
    handle: *const H,
    name: &'static str,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
    of: impl FnOnce(&H::Held) -> Result<T, Error>,
) -> brim_status {
    answer(error, || {
        // SAFETY: as the caller promises.
        let (held, room) =
            unsafe { (handle::look(handle, name)?, room(buffer, capacity, length)?) };
        room.put(of(held)?.as_ref())
    })
}
