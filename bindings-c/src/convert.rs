//! Conversion of doubles.

use crate::error::{brim_error, brim_status};
use crate::guard::answer;
use crate::text::{out, text};
use crate::unit::{brim_unit, unit};
use brimline_core::convert;
use std::ffi::c_char;

/// Converts a number from one unit to another of the same kind, units by name: `brim_convert(104,
/// "deg F", BRIM_TERMINATED, "deg C", BRIM_TERMINATED, &result, NULL)` gives 40. The result is the
/// double nearest to the exact value.
///
/// Errors: `BRIM_ERROR_NOT_A_NUMBER` for a NaN or an infinity, `BRIM_ERROR_OUT_OF_RANGE` where the
/// result is above the largest double, `BRIM_ERROR_WRONG_KIND` for units of two kinds; of the names
/// those of `brim_unit_parse`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_convert(
    number: f64,
    from: *const c_char,
    from_length: usize,
    to: *const c_char,
    to_length: usize,
    result: *mut f64,
    error: *mut brim_error,
) -> brim_status {
    answer(error, || {
        // SAFETY: pointers as the header asks.
        let (from, to, result) = unsafe {
            (
                text(from, from_length, "from")?,
                text(to, to_length, "to")?,
                out(result, "result")?,
            )
        };
        result.put(convert(number, from, to)?);
        Ok(())
    })
}

/// Converts a number from one unit to another of the same kind, units by number.
///
/// Errors: as `brim_convert`; `BRIM_ERROR_UNIT_UNKNOWN` for a number of no unit.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_convert_units(
    number: f64,
    from: brim_unit,
    to: brim_unit,
    result: *mut f64,
    error: *mut brim_error,
) -> brim_status {
    answer(error, || {
        // SAFETY: pointers as the header asks.
        let result = unsafe { out(result, "result")? };
        result.put(convert(number, unit(from, "from")?, unit(to, "to")?)?);
        Ok(())
    })
}
