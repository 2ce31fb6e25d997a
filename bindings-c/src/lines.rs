//! Lines of money.

use crate::amount::brim_amount;
use crate::error::{brim_error, brim_status};
use crate::getter::{tell, value};
use crate::handle::{self, Handle};
use crate::text::at;
use brimline_core::document::canonical;
use brimline_core::estimate::Line;
use brimline_core::money::Money;
use std::ffi::c_char;

/// A sum of money, exactly: whole smallest units of a currency. `12.50 EUR` is 1250, "EUR".
#[derive(Clone, Copy)]
#[repr(C)]
pub struct brim_money {
    /// The smallest units.
    pub minor_units: i64,
    /// The ISO 4217 code, and a NUL.
    pub currency: [c_char; 4],
}

impl From<Money> for brim_money {
    fn from(money: Money) -> Self {
        let mut currency = [0; 4];
        for (place, letter) in currency.iter_mut().zip(money.currency().code().bytes()) {
            // The letters of a code are ASCII.
            *place = letter as c_char;
        }
        brim_money {
            // At most 15 digits.
            minor_units: i64::try_from(money.minor_units()).unwrap_or(i64::MAX),
            currency,
        }
    }
}

/// Lines of money in their order, for a host to map to its own. From `brim_estimate_lines` and
/// `brim_invoice_lines`.
///
/// Ownership: the caller's, to `brim_lines_free`. Threads: one at a time. Lifetime: its own; it is
/// a copy.
pub struct brim_lines {
    _opaque: [u8; 0],
}

impl Handle for brim_lines {
    type Held = Vec<Line>;
    const MARK: u64 = u64::from_le_bytes(*b"brimlin\0");
}

/// Frees lines. NULL is allowed.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_lines_free(lines: *mut brim_lines) {
    // SAFETY: the handle is NULL or the caller's to give back.
    unsafe { handle::free(lines) }
}

/// How many lines there are.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_lines_count(
    lines: *const brim_lines,
    count: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        value(lines, "lines", count, "count", error, |lines| {
            Ok(lines.len())
        })
    }
}

/// What a line is for: the stable id, as `fluid`.
///
/// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_lines_id(
    lines: *const brim_lines,
    index: usize,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(lines, "lines", buffer, capacity, length, error, |lines| {
            Ok(at(lines, index, "index")?.id.slug())
        })
    }
}

/// What of that, by the price list's name.
///
/// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_lines_item(
    lines: *const brim_lines,
    index: usize,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(lines, "lines", buffer, capacity, length, error, |lines| {
            Ok(at(lines, index, "index")?.item.clone())
        })
    }
}

/// The rule that put a line there, as `whole_container`.
///
/// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_lines_policy(
    lines: *const brim_lines,
    index: usize,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(lines, "lines", buffer, capacity, length, error, |lines| {
            Ok(at(lines, index, "index")?.cause.policy.slug())
        })
    }
}

/// How many entries a line rests on; 0 for what is assumed, or due on every such job.
///
/// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_lines_entry_count(
    lines: *const brim_lines,
    index: usize,
    count: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        value(lines, "lines", count, "count", error, |lines| {
            Ok(at(lines, index, "index")?.cause.entries.len())
        })
    }
}

/// One of the entries a line rests on, by its `seq`.
///
/// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_lines_entry(
    lines: *const brim_lines,
    index: usize,
    item: usize,
    seq: *mut u64,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        value(lines, "lines", seq, "seq", error, |lines| {
            Ok(*at(
                &at(lines, index, "index")?.cause.entries,
                item,
                "item",
            )?)
        })
    }
}

/// How much, in the unit of the price; pieces are a ratio.
///
/// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_lines_quantity(
    lines: *const brim_lines,
    index: usize,
    quantity: *mut brim_amount,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        value(lines, "lines", quantity, "quantity", error, |lines| {
            Ok(at(lines, index, "index")?.quantity.into())
        })
    }
}

/// How much, as text; pieces are a plain number.
///
/// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_lines_quantity_text(
    lines: *const brim_lines,
    index: usize,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(lines, "lines", buffer, capacity, length, error, |lines| {
            Ok(at(lines, index, "index")?.quantity_text())
        })
    }
}

/// The unit of the quantity by UN/ECE Recommendation 20, as `LTR`; `C62` for pieces.
///
/// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_lines_unit_code(
    lines: *const brim_lines,
    index: usize,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(lines, "lines", buffer, capacity, length, error, |lines| {
            Ok(at(lines, index, "index")?.unit_code)
        })
    }
}

/// The price of one of the unit, as `18.40 EUR/L`; it may be finer than money.
///
/// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_lines_price(
    lines: *const brim_lines,
    index: usize,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(lines, "lines", buffer, capacity, length, error, |lines| {
            Ok(at(lines, index, "index")?.price.to_string())
        })
    }
}

/// What a line comes to, without tax.
///
/// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_lines_net(
    lines: *const brim_lines,
    index: usize,
    net: *mut brim_money,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        value(lines, "lines", net, "net", error, |lines| {
            Ok(at(lines, index, "index")?.net.into())
        })
    }
}

/// The taxes a line bears, by the price list's names, a line of text each; empty if none.
///
/// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_lines_taxes(
    lines: *const brim_lines,
    index: usize,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(lines, "lines", buffer, capacity, length, error, |lines| {
            Ok(at(lines, index, "index")?.taxes.join("\n"))
        })
    }
}

/// All lines as JSON:
/// `[{"id","item","cause":{"policy","entries"},"quantity","unit_code","price","net","taxes"}]`.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_lines_json(
    lines: *const brim_lines,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(lines, "lines", buffer, capacity, length, error, |lines| {
            Ok(canonical(lines))
        })
    }
}
