//! Viscosity against temperature, the viscosity index, and grades.

use crate::amount::brim_amount;
use crate::calculator::reckon;
use crate::error::{brim_error, brim_status};
use crate::list::{number, numbers};
use brimline_core::fluid::{self, Procedure};

/// Which procedure a viscosity index was found by.
pub type brim_index_procedure = i32;

/// For an index up to 100.
pub const BRIM_INDEX_PROCEDURE_A: brim_index_procedure = 1;
/// For an index above 100.
pub const BRIM_INDEX_PROCEDURE_B: brim_index_procedure = 2;

numbers! { Procedure of Procedure::WORDS.len();
    BRIM_INDEX_PROCEDURE_A A, BRIM_INDEX_PROCEDURE_B B,
}

/// The kinematic viscosity of an oil at a temperature, in mm2/s, from two measured ones in either
/// order (ASTM D341). Viscosities of 0.21 to 20000000 mm2/s, temperatures of -70 to 370 deg C.
///
/// Errors: `BRIM_ERROR_WRONG_KIND`; `BRIM_ERROR_OUT_OF_RANGE` outside those spans;
/// `BRIM_ERROR_CONFLICT` for two measurements at one temperature, or where the hotter oil is not
/// the thinner one.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_viscosity_at(
    viscosity_1: *const brim_amount,
    temperature_1: *const brim_amount,
    viscosity_2: *const brim_amount,
    temperature_2: *const brim_amount,
    temperature: *const brim_amount,
    viscosity: *mut brim_amount,
    error: *mut brim_error,
) -> brim_status {
    reckon!(
        error,
        [
            viscosity_1,
            temperature_1,
            viscosity_2,
            temperature_2,
            temperature
        ],
        viscosity = fluid::viscosity_at(
            viscosity_1,
            temperature_1,
            viscosity_2,
            temperature_2,
            temperature
        )?
    )
}

/// The temperature at which an oil has a kinematic viscosity, in deg C, from two measured
/// viscosities in either order; spans as for `brim_viscosity_at`.
///
/// Errors: as `brim_viscosity_at`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_temperature_for(
    viscosity_1: *const brim_amount,
    temperature_1: *const brim_amount,
    viscosity_2: *const brim_amount,
    temperature_2: *const brim_amount,
    viscosity: *const brim_amount,
    temperature: *mut brim_amount,
    error: *mut brim_error,
) -> brim_status {
    reckon!(
        error,
        [
            viscosity_1,
            temperature_1,
            viscosity_2,
            temperature_2,
            viscosity
        ],
        temperature = fluid::temperature_for(
            viscosity_1,
            temperature_1,
            viscosity_2,
            temperature_2,
            viscosity
        )?
    )
}

/// The viscosity index of an oil from its viscosities at 40 deg C and 100 deg C (ASTM D2270): from
/// 2 mm2/s on at 100 deg C, and more than that at 40 deg C. `index` is whole, as it is reported,
/// and `unrounded` the ratio it comes from; `l` and `h` are the viscosities at 40 deg C, in mm2/s,
/// of oils of index 0 and 100 with the same viscosity at 100 deg C. Lubricants lie from below 0 to
/// some 400 (from memory): far outside, one of the viscosities or its temperature was mistaken.
///
/// Errors: `BRIM_ERROR_WRONG_KIND`; `BRIM_ERROR_OUT_OF_RANGE`; `BRIM_ERROR_CONFLICT` where the oil
/// is not thicker at 40 deg C.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_viscosity_index(
    viscosity_40: *const brim_amount,
    viscosity_100: *const brim_amount,
    index: *mut i64,
    procedure: *mut brim_index_procedure,
    l: *mut brim_amount,
    h: *mut brim_amount,
    unrounded: *mut brim_amount,
    error: *mut brim_error,
) -> brim_status {
    reckon!(error, [viscosity_40, viscosity_100],
        found = fluid::viscosity_index(viscosity_40, viscosity_100)?;
        index = found.index, procedure = number(found.procedure),
        l = found.l, h = found.h, unrounded = found.unrounded)
}

/// The ISO viscosity grade of an oil from its viscosity at 40 deg C, and the limits of that grade
/// in mm2/s at 40 deg C (ISO 3448). Between two grades and outside the series `grade` is 0, and
/// the limits are those of the neighbours; the unit of a limit is 0 where there is no neighbour.
///
/// Errors: `BRIM_ERROR_WRONG_KIND`; `BRIM_ERROR_OUT_OF_RANGE` for a viscosity not above zero.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_grade(
    viscosity_40: *const brim_amount,
    grade: *mut u32,
    low: *mut brim_amount,
    high: *mut brim_amount,
    error: *mut brim_error,
) -> brim_status {
    reckon!(error, [viscosity_40],
        found = fluid::grade(viscosity_40)?;
        grade = found.grade.unwrap_or(0), low = found.low, high = found.high)
}

/// The limits of an ISO viscosity grade, in mm2/s at 40 deg C (ISO 3448).
///
/// Errors: `BRIM_ERROR_UNKNOWN_VALUE` for a number that is no grade, with all that are.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_grade_limits(
    grade: u32,
    low: *mut brim_amount,
    high: *mut brim_amount,
    error: *mut brim_error,
) -> brim_status {
    reckon!(error, [], limits = fluid::grade_limits(grade)?; low = limits.lo(), high = limits.hi())
}
