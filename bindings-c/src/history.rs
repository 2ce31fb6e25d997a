//! Histories: what the records of each unit say together.

use crate::amount::brim_amount;
use crate::error::{brim_error, brim_status};
use crate::getter::{tell, value, value_if};
use crate::guard::answer;
use crate::handle::{self, Handle};
use crate::known::{self, brim_end};
use crate::record::{self, brim_record};
use crate::teller::brim_teller;
use crate::text::{at, out};
use brimline_core::{History, report};
use std::ffi::c_char;

/// The records of a shop by vehicle and unit, each in order of time.
///
/// Ownership: `brim_history_of` to `brim_history_free`. Threads: one at a time. Lifetime: its
/// own;
/// it does not need the records.
pub struct brim_history {
    _opaque: [u8; 0],
}

impl Handle for brim_history {
    type Held = History;
    const MARK: u64 = u64::from_le_bytes(*b"brimhis\0");
}

/// The history of records, as they were recorded; no pack is asked. A record that comes twice
/// counts
/// once, and the order in which records are given says nothing. `records` points to `count`
/// handles;
/// NULL is allowed where `count` is 0.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_history_of(
    records: *const *const brim_record,
    count: usize,
    history: *mut *mut brim_history,
    error: *mut brim_error,
) -> brim_status {
    answer(error, || {
        // SAFETY: pointers as the header asks.
        let (records, history) =
            unsafe { (record::list(records, count)?, out(history, "history")?) };
        history.put(handle::give(History::of(&records)));
        Ok(())
    })
}

/// Frees a history. NULL is allowed.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_history_free(history: *mut brim_history) {
    // SAFETY: the handle is NULL or the caller's to give back.
    unsafe { handle::free(history) }
}

/// The history as canonical JSON.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_history_json(
    history: *const brim_history,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(
            history,
            "history",
            buffer,
            capacity,
            length,
            error,
            |history| Ok(history.to_json()),
        )
    }
}

/// The history in plain English lines, with every caution in full.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_history_text(
    history: *const brim_history,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(
            history,
            "history",
            buffer,
            capacity,
            length,
            error,
            |history| Ok(report::history(history)),
        )
    }
}

/// As `brim_history_text`, by a teller.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_history_text_with(
    history: *const brim_history,
    teller: *const brim_teller,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(
            history,
            "history",
            buffer,
            capacity,
            length,
            error,
            |history| Ok(handle::look(teller, "teller")?.history(history)),
        )
    }
}

/// How many units there are, by vehicle and unit in the order of their names.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_history_vehicle_count(
    history: *const brim_history,
    count: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        value(history, "history", count, "count", error, |history| {
            Ok(history.vehicles().len())
        })
    }
}

/// The vehicle of a unit.
///
/// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_history_vehicle(
    history: *const brim_history,
    index: usize,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(
            history,
            "history",
            buffer,
            capacity,
            length,
            error,
            |history| Ok(at(history.vehicles(), index, "index")?.vehicle.clone()),
        )
    }
}

/// The name of a unit; empty where the records name none.
///
/// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_history_unit(
    history: *const brim_history,
    index: usize,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(
            history,
            "history",
            buffer,
            capacity,
            length,
            error,
            |history| {
                let unit = at(history.vehicles(), index, "index")?.unit.clone();
                Ok(unit.unwrap_or_default())
            },
        )
    }
}

/// How many visits of a unit there are.
///
/// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_history_visit_count(
    history: *const brim_history,
    index: usize,
    count: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        value(history, "history", count, "count", error, |history| {
            Ok(at(history.vehicles(), index, "index")?.visits.len())
        })
    }
}

/// How many losses between visits of a unit are known.
///
/// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_history_loss_count(
    history: *const brim_history,
    index: usize,
    count: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        value(history, "history", count, "count", error, |history| {
            Ok(at(history.vehicles(), index, "index")?.losses.len())
        })
    }
}

/// Whether a unit loses more than at first: `rising`, `not_shown`, `falling` or `not_told`.
///
/// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_history_trend(
    history: *const brim_history,
    index: usize,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(
            history,
            "history",
            buffer,
            capacity,
            length,
            error,
            |history| Ok(at(history.vehicles(), index, "index")?.trend.slug()),
        )
    }
}

/// One end of all that a unit lost. `present` is 1 where there is one; else it is 0 and all of
/// `amount` is 0.
///
/// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last, `BRIM_ERROR_UNKNOWN_VALUE` for a
/// number of no end.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_history_lost(
    history: *const brim_history,
    index: usize,
    end: brim_end,
    present: *mut i32,
    amount: *mut brim_amount,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        value_if(
            history,
            "history",
            present,
            amount,
            "amount",
            error,
            |history| known::end(at(history.vehicles(), index, "index")?.lost, end),
        )
    }
}

/// One end of the distance from the last loss to the leak limit at its rate. `present` is 1 where
/// there is one; else it is 0 and all of `amount` is 0.
///
/// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last, `BRIM_ERROR_UNKNOWN_VALUE` for a
/// number of no end.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_history_to_limit(
    history: *const brim_history,
    index: usize,
    end: brim_end,
    present: *mut i32,
    amount: *mut brim_amount,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        value_if(
            history,
            "history",
            present,
            amount,
            "amount",
            error,
            |history| known::end(at(history.vehicles(), index, "index")?.to_limit, end),
        )
    }
}

/// How many things a person should know of a unit.
///
/// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_history_notice_count(
    history: *const brim_history,
    index: usize,
    count: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        value(history, "history", count, "count", error, |history| {
            Ok(at(history.vehicles(), index, "index")?.notices.len())
        })
    }
}

/// The id of one of them.
///
/// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_history_notice_id(
    history: *const brim_history,
    index: usize,
    notice: usize,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(
            history,
            "history",
            buffer,
            capacity,
            length,
            error,
            |history| {
                let unit = at(history.vehicles(), index, "index")?;
                Ok(at(&unit.notices, notice, "notice")?.id)
            },
        )
    }
}
