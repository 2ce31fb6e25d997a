//! What a job costs, and what came out of it.

use crate::check::brim_check;
use crate::error::{brim_error, brim_status};
use crate::findings::brim_findings;
use crate::getter::{tell, value};
use crate::guard::answer;
use crate::handle::{self, Handle};
use crate::lines::{brim_lines, brim_money};
use crate::price_list::brim_price_list;
use crate::teller::{brim_teller, or_english};
use crate::text::{out, text_if};
use brimline_core::document::canonical;
use brimline_core::estimate::{Quote, waste};
use brimline_core::{Invoice, invoice};
use std::ffi::c_char;

/// What a job costs: the facts of its journal.
///
/// Ownership: `brim_check_invoice` to `brim_invoice_free`. Threads: one at a time. Lifetime: its
/// own.
pub struct brim_invoice {
    _opaque: [u8; 0],
}

impl Handle for brim_invoice {
    type Held = Invoice;
    const MARK: u64 = u64::from_le_bytes(*b"briminv\0");
}

/// What a job costs: the facts of its journal under a price list. `estimated` is the document of an
/// estimate, or NULL: with it the invoice tells how it differs from the likely case, and why.
///
/// Errors: every fault of the estimate, with path and position; `BRIM_ERROR_UNRESOLVED` for
/// everything that has no price, all at once; `BRIM_ERROR_CONFLICT` for an estimate in another
/// currency.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_check_invoice(
    check: *const brim_check,
    prices: *const brim_price_list,
    estimated: *const c_char,
    estimated_length: usize,
    invoice: *mut *mut brim_invoice,
    error: *mut brim_error,
) -> brim_status {
    answer(error, || {
        // SAFETY: pointers as the header asks.
        let (check, prices, estimated, output) = unsafe {
            (
                handle::look(check, "check")?,
                handle::look(prices, "prices")?,
                text_if(estimated, estimated_length, "estimated")?,
                out(invoice, "invoice")?,
            )
        };
        let quote = estimated.map(Quote::from_json).transpose()?;
        let told = self::invoice(prices, check, quote.as_ref())?;
        output.put(handle::give(told));
        Ok(())
    })
}

/// What came out, for the disposal log, as JSON:
/// `{"stream","volume","between":[lo,hi],"entries","unmeasured"}`.
///
/// Errors: `BRIM_ERROR_OUT_OF_RANGE` for more than an amount holds.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_check_waste_json(
    check: *const brim_check,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(check, "check", buffer, capacity, length, error, |check| {
            Ok(canonical(&waste(check)?))
        })
    }
}

/// Frees an invoice. NULL is allowed.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_invoice_free(invoice: *mut brim_invoice) {
    // SAFETY: the handle is NULL or the caller's to give back.
    unsafe { handle::free(invoice) }
}

/// The canonical JSON of the invoice document.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_invoice_json(
    invoice: *const brim_invoice,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(
            invoice,
            "invoice",
            buffer,
            capacity,
            length,
            error,
            |invoice| Ok(invoice.to_json()),
        )
    }
}

/// The lines.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_invoice_lines(
    invoice: *const brim_invoice,
    lines: *mut *mut brim_lines,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        value(invoice, "invoice", lines, "lines", error, |invoice| {
            Ok(handle::give(invoice.lines().to_vec()))
        })
    }
}

/// What they come to, tax included.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_invoice_total(
    invoice: *const brim_invoice,
    total: *mut brim_money,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        value(invoice, "invoice", total, "total", error, |invoice| {
            Ok(invoice.total().total.into())
        })
    }
}

/// What whoever bills the job should know of it.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_invoice_findings(
    invoice: *const brim_invoice,
    findings: *mut *mut brim_findings,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        value(invoice, "invoice", findings, "findings", error, |invoice| {
            Ok(handle::give(invoice.findings().to_vec()))
        })
    }
}

/// The ids of the cautions that go with the state of the job, a line each. They belong beside every
/// telling of the invoice.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_invoice_cautions(
    invoice: *const brim_invoice,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(
            invoice,
            "invoice",
            buffer,
            capacity,
            length,
            error,
            |invoice| Ok(invoice.cautions().join("\n")),
        )
    }
}

/// The invoice in plain lines of at most 80 columns, with every caution in full. `check` is the one
/// it was made of: its sheet words its own cautions. The teller may be NULL, for English.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_invoice_text(
    invoice: *const brim_invoice,
    check: *const brim_check,
    teller: *const brim_teller,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(
            invoice,
            "invoice",
            buffer,
            capacity,
            length,
            error,
            |invoice| {
                let (check, teller) = (handle::look(check, "check")?, or_english(teller)?);
                Ok(teller.invoice(invoice, check.sheet()))
            },
        )
    }
}
