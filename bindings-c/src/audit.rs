//! What records cost a shop, and where a host's old rule differs.

use crate::error::{brim_error, brim_status};
use crate::guard::answer;
use crate::handle;
use crate::pack::brim_pack;
use crate::price_list::brim_price_list;
use crate::record::{self, brim_record};
use crate::teller::{brim_teller, or_english};
use crate::text::{room, text, texts_if};
use brimline_core::Error;
use brimline_core::estimate::{Audit, Audited, audit};
use brimline_core::record::{OldJob, Shadow, shadow};
use std::ffi::c_char;

/// What differs on the pack, of old jobs, one a line.
///
/// # Safety
/// The pointers are as the header asks.
unsafe fn beside(
    pack: *const brim_pack,
    jobs: *const c_char,
    jobs_length: usize,
) -> Result<Shadow, Error> {
    // SAFETY: as the caller promises.
    let (pack, jobs) = unsafe {
        (
            handle::look(pack, "pack")?,
            text(jobs, jobs_length, "jobs")?,
        )
    };
    let read = |job| OldJob::from_json(job, pack.measures());
    let jobs: Vec<OldJob> = jobs.lines().map(read).collect::<Result<_, _>>()?;
    Ok(shadow(pack, &jobs))
}

/// Runs beside a host's old rule: evaluates old jobs on the pack and answers, as JSON, what
/// differs and how good the evidence is. `jobs` has one job a line:
/// `{"id", "journal": {...}, "verdict"?, "leak"?}`.
///
/// Errors: every fault of the first job that cannot be read, with its path.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_shadow_json(
    pack: *const brim_pack,
    jobs: *const c_char,
    jobs_length: usize,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    answer(error, || {
        // SAFETY: pointers as the header asks.
        let (room, told) = unsafe {
            let room = room(buffer, capacity, length)?;
            (room, beside(pack, jobs, jobs_length)?)
        };
        room.put(&told.to_json())
    })
}

/// What `brim_shadow_json` answers, in plain lines of at most 80 columns. The teller may be NULL,
/// for English.
///
/// Errors: those of `brim_shadow_json`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_shadow_text(
    pack: *const brim_pack,
    jobs: *const c_char,
    jobs_length: usize,
    teller: *const brim_teller,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    answer(error, || {
        // SAFETY: pointers as the header asks.
        let (room, teller, told) = unsafe {
            let room = room(buffer, capacity, length)?;
            let teller = or_english(teller)?;
            (room, teller, beside(pack, jobs, jobs_length)?)
        };
        room.put(&teller.shadow(&told))
    })
}

/// What records cost, each with what was billed of it.
///
/// # Safety
/// The pointers are as the header asks.
unsafe fn cost(
    prices: *const brim_price_list,
    pack: *const brim_pack,
    records: *const *const brim_record,
    billed: *const *const c_char,
    count: usize,
) -> Result<Audit, Error> {
    // SAFETY: as the caller promises.
    let (prices, pack, records, billed) = unsafe {
        (
            handle::look(prices, "prices")?,
            handle::look(pack, "pack")?,
            record::list(records, count)?,
            texts_if(billed, count, "billed")?,
        )
    };
    let jobs = Audited::list(records, Some(&billed))?;
    audit(prices, pack, &jobs)
}

/// What records cost a shop, by its price list and without tax, as JSON: checks that were never
/// proven, leaks that were missed, fluid that was poured and not billed, pours nobody can tell the
/// volume of, promises that were missed. `records` points to `count` handles. `billed` points to as
/// many texts, each the volume of fluid the customer was billed, or NULL where that is not known; or
/// `billed` is NULL. A job that was sealed again counts once, by its last record, billed what the
/// last one tells that tells anything.
///
/// Errors: those of an amount, and `BRIM_ERROR_WRONG_KIND` for one that is no volume.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_audit_json(
    prices: *const brim_price_list,
    pack: *const brim_pack,
    records: *const *const brim_record,
    billed: *const *const c_char,
    count: usize,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    answer(error, || {
        // SAFETY: pointers as the header asks.
        let (room, told) = unsafe {
            let room = room(buffer, capacity, length)?;
            (room, cost(prices, pack, records, billed, count)?)
        };
        room.put(&told.to_json())
    })
}

/// What `brim_audit_json` answers, in plain lines of at most 80 columns, with every caution in
/// full. The teller may be NULL, for English.
///
/// Errors: those of `brim_audit_json`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_audit_text(
    prices: *const brim_price_list,
    pack: *const brim_pack,
    records: *const *const brim_record,
    billed: *const *const c_char,
    count: usize,
    teller: *const brim_teller,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    answer(error, || {
        // SAFETY: pointers as the header asks.
        let (room, teller, told) = unsafe {
            let room = room(buffer, capacity, length)?;
            let teller = or_english(teller)?;
            (room, teller, cost(prices, pack, records, billed, count)?)
        };
        room.put(&teller.audit(&told))
    })
}
