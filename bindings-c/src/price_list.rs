//! Price lists of a counter.

use crate::error::{brim_error, brim_status};
use crate::getter::{tell, value};
use crate::guard::answer;
use crate::handle::{self, Handle};
use crate::options::brim_options;
use crate::text::{out, text};
use brimline_core::{Limits, PriceList};
use std::ffi::c_char;

/// The price list of a counter, read and checked: fluid, parts, work and disposal, and what of it
/// is billed.
///
/// Ownership: `brim_price_list_embedded`, `brim_price_list_from_json` or `brim_price_list_copy` to
/// `brim_price_list_free`. Threads: one at a time; give each thread a copy, which costs next to
/// nothing. Lifetime: its own; estimates and invoices made by it go on after it is freed.
pub struct brim_price_list {
    _opaque: [u8; 0],
}

impl Handle for brim_price_list {
    type Held = PriceList;
    const MARK: u64 = u64::from_le_bytes(*b"brimprc\0");
}

/// The embedded demonstration list: invented prices of an invented shop, for the embedded pack.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_price_list_embedded(
    prices: *mut *mut brim_price_list,
    error: *mut brim_error,
) -> brim_status {
    answer(error, || {
        // SAFETY: pointers as the header asks.
        let prices = unsafe { out(prices, "prices")? };
        prices.put(handle::give(PriceList::embedded()?));
        Ok(())
    })
}

/// Reads a price list from its JSON, within the limits of the options.
///
/// Errors: every fault of the document, with path and position.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_price_list_from_json(
    json: *const c_char,
    json_length: usize,
    options: *const brim_options,
    prices: *mut *mut brim_price_list,
    error: *mut brim_error,
) -> brim_status {
    answer(error, || {
        // SAFETY: pointers as the header asks.
        let (json, options, prices) = unsafe {
            (
                text(json, json_length, "json")?,
                handle::look_if(options, "options")?,
                out(prices, "prices")?,
            )
        };
        let read = match options {
            Some(options) => PriceList::from_json_with(json, &options.limits)?,
            None => PriceList::from_json_with(json, &Limits::default())?,
        };
        prices.put(handle::give(read));
        Ok(())
    })
}

/// Another handle of the same list, for another thread. It shares the list's data.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_price_list_copy(
    prices: *const brim_price_list,
    copy: *mut *mut brim_price_list,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        value(prices, "prices", copy, "copy", error, |prices| {
            Ok(handle::give(prices.clone()))
        })
    }
}

/// Frees a price list. NULL is allowed.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_price_list_free(prices: *mut brim_price_list) {
    // SAFETY: the handle is NULL or the caller's to give back.
    unsafe { handle::free(prices) }
}

/// The canonical JSON of the list.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_price_list_json(
    prices: *const brim_price_list,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(
            prices,
            "prices",
            buffer,
            capacity,
            length,
            error,
            |prices| Ok(prices.to_json()),
        )
    }
}

/// The list's own name.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_price_list_id(
    prices: *const brim_price_list,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(
            prices,
            "prices",
            buffer,
            capacity,
            length,
            error,
            |prices| Ok(prices.id().to_string()),
        )
    }
}

/// The shop's version of the list.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_price_list_version(
    prices: *const brim_price_list,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(
            prices,
            "prices",
            buffer,
            capacity,
            length,
            error,
            |prices| Ok(prices.version().to_string()),
        )
    }
}

/// The currency of every price in the list, by its ISO 4217 code.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_price_list_currency(
    prices: *const brim_price_list,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(
            prices,
            "prices",
            buffer,
            capacity,
            length,
            error,
            |prices| Ok(prices.currency().code()),
        )
    }
}

/// SHA-256 of the canonical JSON, in lower-case hex.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_price_list_digest(
    prices: *const brim_price_list,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(
            prices,
            "prices",
            buffer,
            capacity,
            length,
            error,
            |prices| Ok(prices.digest().to_string()),
        )
    }
}
