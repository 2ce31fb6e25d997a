//! Units, by number.

use crate::error::{brim_error, brim_status};
use crate::guard::answer;
use crate::list::{self, brim_kind, brim_measures};
use crate::text::{out, room, text};
use brimline_core::{Error, ErrorKind, Fault, Unit};
use std::ffi::c_char;

/// A unit of measure. Numbers are never changed or reused.
///
/// Definitions: 1 in = 25.4 mm, 1 lb = 0.45359237 kg, standard gravity 9.80665 m/s2, 1 US gal = 231
/// cubic inches, 1 imp gal = 4.54609 L (NIST SP 811, appendix B.8).
pub type brim_unit = u16;

/// Litre.
pub const BRIM_UNIT_LITRE: brim_unit = 1;
/// Millilitre.
pub const BRIM_UNIT_MILLILITRE: brim_unit = 2;
/// Cubic centimetre, the size of a millilitre.
pub const BRIM_UNIT_CUBIC_CENTIMETRE: brim_unit = 3;
/// Cubic metre.
pub const BRIM_UNIT_CUBIC_METRE: brim_unit = 4;
/// Cubic inch.
pub const BRIM_UNIT_CUBIC_INCH: brim_unit = 5;
/// United States gallon, 231 cubic inches.
pub const BRIM_UNIT_US_GALLON: brim_unit = 6;
/// United States liquid quart, a quarter of a gallon.
pub const BRIM_UNIT_US_QUART: brim_unit = 7;
/// United States liquid pint, an eighth of a gallon.
pub const BRIM_UNIT_US_PINT: brim_unit = 8;
/// United States fluid ounce, 1/128 of a gallon.
pub const BRIM_UNIT_US_FLUID_OUNCE: brim_unit = 9;
/// Imperial gallon, 4.54609 L.
pub const BRIM_UNIT_IMPERIAL_GALLON: brim_unit = 10;
/// Imperial quart, a quarter of a gallon.
pub const BRIM_UNIT_IMPERIAL_QUART: brim_unit = 11;
/// Imperial pint, an eighth of a gallon.
pub const BRIM_UNIT_IMPERIAL_PINT: brim_unit = 12;
/// Imperial fluid ounce, 1/160 of a gallon.
pub const BRIM_UNIT_IMPERIAL_FLUID_OUNCE: brim_unit = 13;
/// Newton metre.
pub const BRIM_UNIT_NEWTON_METRE: brim_unit = 14;
/// Newton centimetre.
pub const BRIM_UNIT_NEWTON_CENTIMETRE: brim_unit = 15;
/// Pound-force foot.
pub const BRIM_UNIT_POUND_FORCE_FOOT: brim_unit = 16;
/// Pound-force inch, a twelfth of a pound-force foot.
pub const BRIM_UNIT_POUND_FORCE_INCH: brim_unit = 17;
/// Ounce-force inch, a sixteenth of a pound-force inch.
pub const BRIM_UNIT_OUNCE_FORCE_INCH: brim_unit = 18;
/// Kilogram-force metre.
pub const BRIM_UNIT_KILOGRAM_FORCE_METRE: brim_unit = 19;
/// Kilogram-force centimetre.
pub const BRIM_UNIT_KILOGRAM_FORCE_CENTIMETRE: brim_unit = 20;
/// Kilogram.
pub const BRIM_UNIT_KILOGRAM: brim_unit = 21;
/// Gram.
pub const BRIM_UNIT_GRAM: brim_unit = 22;
/// Avoirdupois pound, 0.45359237 kg.
pub const BRIM_UNIT_POUND: brim_unit = 23;
/// Kilometre.
pub const BRIM_UNIT_KILOMETRE: brim_unit = 24;
/// International mile, 1609.344 m.
pub const BRIM_UNIT_MILE: brim_unit = 25;
/// Metre.
pub const BRIM_UNIT_METRE: brim_unit = 26;
/// Millimetre.
pub const BRIM_UNIT_MILLIMETRE: brim_unit = 27;
/// Inch, 25.4 mm.
pub const BRIM_UNIT_INCH: brim_unit = 28;
/// Square metre.
pub const BRIM_UNIT_SQUARE_METRE: brim_unit = 29;
/// Square centimetre.
pub const BRIM_UNIT_SQUARE_CENTIMETRE: brim_unit = 30;
/// Square inch.
pub const BRIM_UNIT_SQUARE_INCH: brim_unit = 31;
/// Kelvin.
pub const BRIM_UNIT_KELVIN: brim_unit = 32;
/// Degree Celsius as a point on the scale.
pub const BRIM_UNIT_DEGREE_CELSIUS: brim_unit = 33;
/// Degree Fahrenheit as a point on the scale.
pub const BRIM_UNIT_DEGREE_FAHRENHEIT: brim_unit = 34;
/// Difference of one degree Celsius, or of one kelvin.
pub const BRIM_UNIT_CELSIUS_DIFFERENCE: brim_unit = 35;
/// Difference of one degree Fahrenheit, 5/9 K.
pub const BRIM_UNIT_FAHRENHEIT_DIFFERENCE: brim_unit = 36;
/// Kilopascal above the surrounding air.
pub const BRIM_UNIT_KILOPASCAL: brim_unit = 37;
/// Bar above the surrounding air.
pub const BRIM_UNIT_BAR: brim_unit = 38;
/// Pound-force per square inch above the surrounding air.
pub const BRIM_UNIT_POUND_PER_SQUARE_INCH: brim_unit = 39;
/// Kilopascal above vacuum.
pub const BRIM_UNIT_KILOPASCAL_ABSOLUTE: brim_unit = 40;
/// Pound-force per square inch above vacuum.
pub const BRIM_UNIT_POUND_PER_SQUARE_INCH_ABSOLUTE: brim_unit = 41;
/// Degree of plane angle.
pub const BRIM_UNIT_DEGREE: brim_unit = 42;
/// Second.
pub const BRIM_UNIT_SECOND: brim_unit = 43;
/// Minute.
pub const BRIM_UNIT_MINUTE: brim_unit = 44;
/// Hour.
pub const BRIM_UNIT_HOUR: brim_unit = 45;
/// Kilogram per cubic metre, the size of a gram per litre.
pub const BRIM_UNIT_KILOGRAM_PER_CUBIC_METRE: brim_unit = 46;
/// Gram per millilitre, the size of a kilogram per litre.
pub const BRIM_UNIT_GRAM_PER_MILLILITRE: brim_unit = 47;
/// Square millimetre per second, the size of a centistokes.
pub const BRIM_UNIT_SQUARE_MILLIMETRE_PER_SECOND: brim_unit = 48;
/// Millilitre per second.
pub const BRIM_UNIT_MILLILITRE_PER_SECOND: brim_unit = 49;
/// Litre per minute.
pub const BRIM_UNIT_LITRE_PER_MINUTE: brim_unit = 50;
/// Decinewton metre, on older prints.
pub const BRIM_UNIT_DECINEWTON_METRE: brim_unit = 51;
/// The number itself. Where a ratio is meant, a number alone is read as one.
pub const BRIM_UNIT_ONE: brim_unit = 52;
/// A hundredth.
pub const BRIM_UNIT_PERCENT: brim_unit = 53;
/// Newton.
pub const BRIM_UNIT_NEWTON: brim_unit = 54;
/// Kilonewton.
pub const BRIM_UNIT_KILONEWTON: brim_unit = 55;
/// Pound-force.
pub const BRIM_UNIT_POUND_FORCE: brim_unit = 56;
/// Per kelvin, or per degree Celsius.
pub const BRIM_UNIT_PER_KELVIN: brim_unit = 57;
/// Per degree Fahrenheit.
pub const BRIM_UNIT_PER_FAHRENHEIT: brim_unit = 58;
/// Square millimetre.
pub const BRIM_UNIT_SQUARE_MILLIMETRE: brim_unit = 59;

/// The unit of a number.
pub(crate) fn unit(code: brim_unit, name: &'static str) -> Result<Unit, Error> {
    Unit::from_code(code).ok_or_else(|| unknown(code, name))
}

#[cold]
fn unknown(code: brim_unit, name: &'static str) -> Error {
    let fault = Fault::new(ErrorKind::UnitUnknown).at(name);
    let hint = "units by number are BRIM_UNIT_...";
    fault.got(&code.to_string()).hint(hint).into()
}

/// Answers one text of a unit.
///
/// # Safety
/// As [`room`] for the buffer.
unsafe fn tell(
    code: brim_unit,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
    of: impl FnOnce(Unit) -> &'static str,
) -> brim_status {
    answer(error, || {
        // SAFETY: as the caller promises.
        let room = unsafe { room(buffer, capacity, length)? };
        room.put(of(unit(code, "unit")?))
    })
}

/// Reads a unit as people type it: `ft-lb`, `N.m`, `deg F`, `cc`, `qt (US)`. A kind decides how a
/// text reads: `deg C` as a temperature difference is one. Measures say what bare `qt`, `pt`, `gal`
/// and `fl oz` mean.
///
/// Errors: `BRIM_ERROR_UNIT_AMBIGUOUS` with the candidates, `BRIM_ERROR_UNIT_UNKNOWN` with the
/// nearest names, `BRIM_ERROR_UNIT_MISSING`, `BRIM_ERROR_WRONG_KIND`; `BRIM_ERROR_UNKNOWN_VALUE`
/// for a number of no kind or measures.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_unit_parse(
    name: *const c_char,
    name_length: usize,
    kind: brim_kind,
    measures: brim_measures,
    unit: *mut brim_unit,
    error: *mut brim_error,
) -> brim_status {
    answer(error, || {
        // SAFETY: pointers as the header asks.
        let (name, unit) = unsafe { (text(name, name_length, "name")?, out(unit, "unit")?) };
        let (kind, measures) = (
            list::value_if(kind, "kind")?,
            list::value_if(measures, "measures")?,
        );
        unit.put(Unit::parse_as(name, kind, measures)?.code());
        Ok(())
    })
}

/// The kind of quantity a unit measures.
///
/// Errors: `BRIM_ERROR_UNIT_UNKNOWN`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_unit_kind(
    unit: brim_unit,
    kind: *mut brim_kind,
    error: *mut brim_error,
) -> brim_status {
    answer(error, || {
        // SAFETY: pointers as the header asks.
        let kind = unsafe { out(kind, "kind")? };
        kind.put(list::number(self::unit(unit, "unit")?.kind()));
        Ok(())
    })
}

/// The canonical symbol of a unit, the one that is printed.
///
/// Errors: `BRIM_ERROR_UNIT_UNKNOWN`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_unit_symbol(
    unit: brim_unit,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe { tell(unit, buffer, capacity, length, error, Unit::symbol) }
}

/// The code of a unit in the Unified Code for Units of Measure, case-sensitive form:
/// `[lbf_av].[ft_i]`. Where that code has no unit for it the nearest expression stands.
///
/// Errors: `BRIM_ERROR_UNIT_UNKNOWN`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_unit_ucum(
    unit: brim_unit,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe { tell(unit, buffer, capacity, length, error, Unit::ucum) }
}

/// The common code of a unit in UN/ECE Recommendation 20: `M92`; empty where it has none.
///
/// Errors: `BRIM_ERROR_UNIT_UNKNOWN`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_unit_rec20(
    unit: brim_unit,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(unit, buffer, capacity, length, error, |unit| {
            unit.rec20().unwrap_or_default()
        })
    }
}
