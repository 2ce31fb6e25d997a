//! What an evaluation knows: its intervals and its counted volumes.

use crate::amount::brim_amount;
use crate::error::{brim_error, brim_status};
use crate::evaluation::brim_evaluation;
use crate::getter::{tell, value_if};
use crate::list;
use brimline_core::{Amount, Error, Evaluation, Interval};
use std::ffi::c_char;

/// One of the intervals of an evaluation.
pub type brim_interval = i32;

/// What is proved of the departure as found; negative is short.
pub const BRIM_INTERVAL_AS_FOUND: brim_interval = 1;
/// What is proved of the net volume added since.
pub const BRIM_INTERVAL_NET_ADDED: brim_interval = 2;
/// What is proved of the departure now; negative is short.
pub const BRIM_INTERVAL_NOW: brim_interval = 3;
/// What is proved of the shortage as found; positive is short.
pub const BRIM_INTERVAL_SHORTAGE: brim_interval = 4;

const INTERVALS: &[(brim_interval, &str)] = &[
    (BRIM_INTERVAL_AS_FOUND, "as_found"),
    (BRIM_INTERVAL_NET_ADDED, "net_added"),
    (BRIM_INTERVAL_NOW, "now"),
    (BRIM_INTERVAL_SHORTAGE, "shortage"),
];

/// One of the ends of an interval.
pub type brim_end = i32;

/// The lower end.
pub const BRIM_END_LO: brim_end = 1;
/// The upper end.
pub const BRIM_END_HI: brim_end = 2;

const ENDS: &[(brim_end, &str)] = &[(BRIM_END_LO, "lo"), (BRIM_END_HI, "hi")];

/// One of the volumes of the leak reading.
pub type brim_volume = i32;

/// What was added, nominal.
pub const BRIM_VOLUME_GROSS: brim_volume = 1;
/// What was added less what came out again, nominal, not below zero.
pub const BRIM_VOLUME_NET: brim_volume = 2;
/// The one of these two that the sheet holds against its limit.
pub const BRIM_VOLUME_USED: brim_volume = 3;
/// The sheet's limit.
pub const BRIM_VOLUME_LIMIT: brim_volume = 4;
/// How much the deciding count would have to change to turn the reading.
pub const BRIM_VOLUME_MARGIN: brim_volume = 5;

const VOLUMES: &[(brim_volume, &str)] = &[
    (BRIM_VOLUME_GROSS, "gross"),
    (BRIM_VOLUME_NET, "net"),
    (BRIM_VOLUME_USED, "used"),
    (BRIM_VOLUME_LIMIT, "limit"),
    (BRIM_VOLUME_MARGIN, "margin"),
];

fn interval(evaluation: &Evaluation, interval: brim_interval) -> Result<Interval, Error> {
    let (as_found, shortage) = (evaluation.as_found(), evaluation.leak().shortage);
    let (net_added, now) = (evaluation.net_added(), evaluation.now());
    chosen(interval, [as_found, net_added, now, shortage])
}

/// The interval of a number, of all in the order of their numbers.
pub(crate) fn chosen(interval: brim_interval, all: [Interval; 4]) -> Result<Interval, Error> {
    let place = INTERVALS.iter().position(|(own, _)| *own == interval);
    let chosen = place.and_then(|place| all.get(place).copied());
    chosen.ok_or_else(|| list::unknown(interval, "interval", INTERVALS.iter().copied()))
}

/// An interval as text: `[-2 L, -1.5 L]` or `(-inf, 0 L]`.
///
/// Errors: `BRIM_ERROR_UNKNOWN_VALUE` for a number of no interval.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_evaluation_interval(
    evaluation: *const brim_evaluation,
    interval: brim_interval,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(
            evaluation,
            "evaluation",
            buffer,
            capacity,
            length,
            error,
            |evaluation| Ok(self::interval(evaluation, interval)?.to_string()),
        )
    }
}

/// One end of an interval. `present` is 1 where there is an end; where it is unbounded `present` is
/// 0 and all of `amount` is 0.
///
/// Errors: `BRIM_ERROR_UNKNOWN_VALUE` for a number of no interval or end.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_evaluation_end(
    evaluation: *const brim_evaluation,
    interval: brim_interval,
    end: brim_end,
    present: *mut i32,
    amount: *mut brim_amount,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        value_if(
            evaluation,
            "evaluation",
            present,
            amount,
            "amount",
            error,
            |evaluation| {
                let interval = self::interval(evaluation, interval)?;
                self::end(Some(interval), end)
            },
        )
    }
}

/// One end of an interval that may be absent.
pub(crate) fn end(interval: Option<Interval>, end: brim_end) -> Result<Option<Amount>, Error> {
    match end {
        BRIM_END_LO => Ok(interval.and_then(|interval| interval.lo())),
        BRIM_END_HI => Ok(interval.and_then(|interval| interval.hi())),
        other => Err(list::unknown(other, "end", ENDS.iter().copied())),
    }
}

/// One of the volumes of the leak reading. `present` is 1 where there is one; else it is 0 and all
/// of `amount` is 0.
///
/// Errors: `BRIM_ERROR_UNKNOWN_VALUE` for a number of no volume.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_evaluation_volume(
    evaluation: *const brim_evaluation,
    volume: brim_volume,
    present: *mut i32,
    amount: *mut brim_amount,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        value_if(
            evaluation,
            "evaluation",
            present,
            amount,
            "amount",
            error,
            |evaluation| {
                let leak = evaluation.leak();
                Ok(match volume {
                    BRIM_VOLUME_GROSS => leak.counted.gross,
                    BRIM_VOLUME_NET => leak.counted.net,
                    BRIM_VOLUME_USED => leak.counted.used,
                    BRIM_VOLUME_LIMIT => leak.limit,
                    BRIM_VOLUME_MARGIN => leak.margin,
                    other => return Err(list::unknown(other, "volume", VOLUMES.iter().copied())),
                })
            },
        )
    }
}
