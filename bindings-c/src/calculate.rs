//! Every calculator by its name, in JSON.

use crate::error::{brim_error, brim_status};
use crate::guard::answer;
use crate::handle;
use crate::options::brim_options;
use crate::text::{room, text};
use brimline_core::calculate;
use std::ffi::c_char;

/// Asks one calculator by its name: its arguments as one JSON object, its answer as JSON. So
/// `leak.drops_for` of `{"volume":"0.5 L","over":"24 h","drop":"0.05 mL"}` answers
/// `{"value":"8.64 s"}`. A calculator that answers one quantity answers it as `value`. Of the
/// options only the limits count.
///
/// Errors: `BRIM_ERROR_UNKNOWN_VALUE` for a name of no calculator, with those there
/// are; every fault of the arguments,
/// with path and position; what the calculator refuses, with the argument as path.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_calculate(
    function: *const c_char,
    function_length: usize,
    arguments: *const c_char,
    arguments_length: usize,
    options: *const brim_options,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    answer(error, || {
        // SAFETY: pointers as the header asks.
        let (function, arguments, options, room) = unsafe {
            (
                text(function, function_length, "function")?,
                text(arguments, arguments_length, "arguments")?,
                handle::look_if(options, "options")?,
                room(buffer, capacity, length)?,
            )
        };
        let answer = match options {
            Some(options) => calculate::calculate_with(function, arguments, &options.limits),
            None => calculate::calculate(function, arguments),
        };
        room.put(&answer?)
    })
}
