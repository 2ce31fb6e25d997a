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

/// Answers one value that may be absent: `present` is 1 where there is one; else it is 0 and the output is empty.
///
/// # Safety
/// As [`handle::look`] for the handle and [`out`] for both outputs.
pub(crate) unsafe fn value_if<H: Handle, V, T: From<Option<V>>>(
    handle: *const H,
    name: &'static str,
    present: *mut i32,
    output: *mut T,
    output_name: &'static str,
    error: *mut brim_error,
    of: impl FnOnce(&H::Held) -> Result<Option<V>, Error>,
) -> brim_status {
    answer(error, || {
        // SAFETY: as the caller promises.
        let (held, present, output) = unsafe {
            (
                handle::look(handle, name)?,
                out(present, "present")?,
                out(output, output_name)?,
            )
        };
        let told = of(held)?;
        present.put(told.is_some().into());
        output.put(told.into());
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
