//! Amounts, as numbers and as text.

use crate::error::{brim_error, brim_status};
use crate::guard::answer;
use crate::list::{self, brim_kind, brim_measures, brim_rounding};
use crate::text::{out, room, text};
use crate::unit::{brim_unit, unit};
use brimline_core::{Amount, Error, ErrorKind, Fault};
use std::ffi::c_char;

/// What a person typed or a sheet prints, exactly: mantissa * 10^exponent of a unit. `1.50 L` is
/// 150, -2, `BRIM_UNIT_LITRE`. At most 15 digits, 9 of them decimals: the exponent is 0 to -9.
///
/// A value of 16 bytes like any other in C: mantissa at byte 0, exponent at 8, unit at 12; what
/// follows is not read.
#[derive(Clone, Copy)]
#[repr(C)]
pub struct brim_amount {
    /// The digits as an integer.
    pub mantissa: i64,
    /// The power of ten, 0 or negative.
    pub exponent: i32,
    /// The unit.
    pub unit: brim_unit,
}

impl From<Amount> for brim_amount {
    fn from(amount: Amount) -> Self {
        brim_amount {
            mantissa: amount.mantissa(),
            exponent: -i32::from(amount.decimals()),
            unit: amount.unit().code(),
        }
    }
}

impl From<Option<Amount>> for brim_amount {
    fn from(amount: Option<Amount>) -> Self {
        amount.map_or(brim_amount::NONE, brim_amount::from)
    }
}

impl brim_amount {
    /// What stands where there is no amount.
    pub(crate) const NONE: brim_amount = brim_amount {
        mantissa: 0,
        exponent: 0,
        unit: 0,
    };

    /// The amount of a record whose unit is not 0, which stands for none.
    pub(crate) fn read_if(self, name: &'static str) -> Result<Option<Amount>, Error> {
        if self.unit == Self::NONE.unit {
            return Ok(None);
        }
        self.read(name).map(Some)
    }

    pub(crate) fn read(self, name: &'static str) -> Result<Amount, Error> {
        let decimals = self
            .exponent
            .checked_neg()
            .and_then(|decimals| u8::try_from(decimals).ok());
        let Some(decimals) = decimals else {
            let fault = Fault::new(ErrorKind::OutOfRange).at(name);
            let hint = "the exponent of an amount is 0 to -9";
            return Err(fault.got(&self.exponent.to_string()).hint(hint).into());
        };
        Amount::new(self.mantissa, decimals, unit(self.unit, name)?)
    }
}

/// The amount of a caller's record.
///
/// # Safety
/// The pointer is NULL or points to an amount.
#[inline(never)]
pub(crate) unsafe fn amount(
    amount: *const brim_amount,
    name: &'static str,
) -> Result<Amount, Error> {
    if amount.is_null() {
        return Err(Fault::new(ErrorKind::NullPointer).at(name).into());
    }
    // SAFETY: as the caller promises; hosts that lay out records themselves may not align them. Any bytes are a
    // valid record.
    unsafe { amount.read_unaligned() }.read(name)
}

/// The amount of a caller's record that may be left out, as NULL.
///
/// # Safety
/// As [`amount`].
pub(crate) unsafe fn amount_if(
    given: *const brim_amount,
    name: &'static str,
) -> Result<Option<Amount>, Error> {
    if given.is_null() {
        return Ok(None);
    }
    // SAFETY: as the caller promises.
    unsafe { amount(given, name) }.map(Some)
}

/// Reads an amount as people type it: `1.5 L`, `1/2 US qt`, `1 1/2 in`, `104 deg F`, `14Nm`. The
/// kind and the measures are those of `brim_unit_parse`.
///
/// Errors: `BRIM_ERROR_NOT_A_NUMBER`, `BRIM_ERROR_TOO_MANY_DIGITS`, `BRIM_ERROR_DECIMAL_COMMA` with
/// the readings, `BRIM_ERROR_FRACTION` with the neighbours, `BRIM_ERROR_OUT_OF_RANGE`; of the unit
/// those of `brim_unit_parse`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_amount_parse(
    written: *const c_char,
    written_length: usize,
    kind: brim_kind,
    measures: brim_measures,
    amount: *mut brim_amount,
    error: *mut brim_error,
) -> brim_status {
    answer(error, || {
        // SAFETY: pointers as the header asks.
        let (written, amount) = unsafe {
            (
                text(written, written_length, "written")?,
                out(amount, "amount")?,
            )
        };
        let (kind, measures) = (
            list::value_if(kind, "kind")?,
            list::value_if(measures, "measures")?,
        );
        amount.put(Amount::parse_as(written, kind, measures)?.into());
        Ok(())
    })
}

/// Writes an amount: `1.50 L`, with an ASCII minus and one space.
///
/// Errors: `BRIM_ERROR_TOO_MANY_DIGITS`, `BRIM_ERROR_OUT_OF_RANGE`, `BRIM_ERROR_UNIT_UNKNOWN` for
/// what is no amount.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_amount_text(
    amount: *const brim_amount,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    answer(error, || {
        // SAFETY: pointers as the header asks.
        let (amount, room) = unsafe {
            (
                self::amount(amount, "amount")?,
                room(buffer, capacity, length)?,
            )
        };
        room.put(&amount.to_string())
    })
}

/// The amount of the shortest decimal that names a double: 0.1 is 0.1.
///
/// Errors: `BRIM_ERROR_NOT_A_NUMBER` for a NaN or an infinity, `BRIM_ERROR_TOO_MANY_DIGITS`,
/// `BRIM_ERROR_OUT_OF_RANGE` from 1e15 on, `BRIM_ERROR_UNIT_UNKNOWN`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_amount_from_double(
    number: f64,
    unit: brim_unit,
    amount: *mut brim_amount,
    error: *mut brim_error,
) -> brim_status {
    answer(error, || {
        // SAFETY: pointers as the header asks.
        let amount = unsafe { out(amount, "amount")? };
        amount.put(Amount::from_f64(number, self::unit(unit, "unit")?)?.into());
        Ok(())
    })
}

/// The double nearest to an amount's number, in its own unit.
///
/// Errors: as `brim_amount_text`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_amount_to_double(
    amount: *const brim_amount,
    number: *mut f64,
    error: *mut brim_error,
) -> brim_status {
    answer(error, || {
        // SAFETY: pointers as the header asks.
        let (amount, number) = unsafe { (self::amount(amount, "amount")?, out(number, "number")?) };
        number.put(amount.to_f64());
        Ok(())
    })
}

/// An amount in another unit of its kind, rounded to `places` decimals (0 to 9).
///
/// Errors: `BRIM_ERROR_WRONG_KIND`, `BRIM_ERROR_TOO_MANY_DIGITS`, `BRIM_ERROR_OUT_OF_RANGE`,
/// `BRIM_ERROR_UNIT_UNKNOWN`, `BRIM_ERROR_UNKNOWN_VALUE` for a number of no rounding.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_amount_to(
    amount: *const brim_amount,
    unit: brim_unit,
    places: i32,
    rounding: brim_rounding,
    result: *mut brim_amount,
    error: *mut brim_error,
) -> brim_status {
    answer(error, || {
        // SAFETY: pointers as the header asks.
        let (amount, result) = unsafe { (self::amount(amount, "amount")?, out(result, "result")?) };
        // Past 9 the core refuses, and so it does what no byte holds.
        let places = u8::try_from(places).unwrap_or(u8::MAX);
        let rounding = list::value(rounding, "rounding")?;
        result.put(
            amount
                .to(self::unit(unit, "unit")?, places, rounding)?
                .into(),
        );
        Ok(())
    })
}

/// Answers the amount made of two.
///
/// # Safety
/// As [`amount`] and [`out`].
unsafe fn of_two(
    a: *const brim_amount,
    b: *const brim_amount,
    result: *mut brim_amount,
    error: *mut brim_error,
    make: fn(Amount, Amount) -> Result<Amount, Error>,
) -> brim_status {
    answer(error, || {
        // SAFETY: as the caller promises.
        let (a, b, result) = unsafe { (amount(a, "a")?, amount(b, "b")?, out(result, "result")?) };
        result.put(make(a, b)?.into());
        Ok(())
    })
}

/// The sum of two amounts of one kind, exact, in the unit of the first. A difference of
/// temperatures may be added to a temperature.
///
/// Errors: `BRIM_ERROR_WRONG_KIND`, also for two temperatures; `BRIM_ERROR_TOO_MANY_DIGITS` where
/// the exact sum does not end within the digits of an amount, `BRIM_ERROR_OUT_OF_RANGE`,
/// `BRIM_ERROR_UNIT_UNKNOWN`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_amount_add(
    a: *const brim_amount,
    b: *const brim_amount,
    sum: *mut brim_amount,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe { of_two(a, b, sum, error, Amount::checked_add) }
}

/// The first amount less the second, exact, in the unit of the first. Two temperatures give a
/// difference of temperatures.
///
/// Errors: as `brim_amount_add`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_amount_subtract(
    a: *const brim_amount,
    b: *const brim_amount,
    difference: *mut brim_amount,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe { of_two(a, b, difference, error, Amount::checked_sub) }
}

/// A whole multiple of an amount, exact.
///
/// Errors: `BRIM_ERROR_WRONG_KIND` for a temperature, which has no multiples;
/// `BRIM_ERROR_TOO_MANY_DIGITS`, `BRIM_ERROR_OUT_OF_RANGE`, `BRIM_ERROR_UNIT_UNKNOWN`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_amount_times(
    amount: *const brim_amount,
    factor: i64,
    product: *mut brim_amount,
    error: *mut brim_error,
) -> brim_status {
    answer(error, || {
        // SAFETY: pointers as the header asks.
        let (amount, product) =
            unsafe { (self::amount(amount, "amount")?, out(product, "product")?) };
        product.put(amount.times(factor)?.into());
        Ok(())
    })
}

/// How an amount stands to another of its kind, exactly: -1 less, 0 equal, 1 greater.
///
/// Errors: `BRIM_ERROR_WRONG_KIND`, `BRIM_ERROR_TOO_MANY_DIGITS`, `BRIM_ERROR_OUT_OF_RANGE`,
/// `BRIM_ERROR_UNIT_UNKNOWN`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_amount_compare(
    a: *const brim_amount,
    b: *const brim_amount,
    order: *mut i32,
    error: *mut brim_error,
) -> brim_status {
    answer(error, || {
        // SAFETY: pointers as the header asks.
        let (a, b, order) = unsafe { (amount(a, "a")?, amount(b, "b")?, out(order, "order")?) };
        order.put(a.compare(&b)? as i32);
        Ok(())
    })
}
