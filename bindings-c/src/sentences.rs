//! Sentence by sentence: what a host puts on pages of its own.

use crate::error::{brim_error, brim_status};
use crate::evaluation::brim_evaluation;
use crate::getter::tell;
use crate::guard::answer;
use crate::list::{self, brim_verdict};
use crate::pack::brim_pack;
use crate::teller::{brim_teller, or_english};
use crate::text::{room, text};
use brimline_core::{ErrorKind, Fault, Interval};
use std::ffi::c_char;

/// A verdict in one sentence. The teller may be NULL, for English.
///
/// Errors: `BRIM_ERROR_UNKNOWN_VALUE` for a number of no verdict.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_verdict_text(
    verdict: brim_verdict,
    teller: *const brim_teller,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    answer(error, || {
        // SAFETY: pointers as the header asks.
        let (teller, room) = unsafe { (or_english(teller)?, room(buffer, capacity, length)?) };
        room.put(&teller.verdict(list::value(verdict, "verdict")?))
    })
}

/// Why the answer is what it is: a sentence for each reason, a line each, in the order of the result
/// document. The teller may be NULL, for English.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_evaluation_reasons_text(
    evaluation: *const brim_evaluation,
    teller: *const brim_teller,
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
            |evaluation| {
                let teller = or_english(teller)?;
                let reasons = evaluation.because().iter();
                let told: Vec<String> = reasons.map(|reason| teller.reason(reason)).collect();
                Ok(told.join("\n"))
            },
        )
    }
}

/// Every defect of the sheets themselves in a sentence, a line each, in the order of
/// `brim_pack_lint_json`. The teller may be NULL, for English.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_pack_lint_text(
    pack: *const brim_pack,
    teller: *const brim_teller,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(pack, "pack", buffer, capacity, length, error, |pack| {
            let teller = or_english(teller)?;
            let findings = pack.lint();
            let told: Vec<String> = findings.iter().map(|own| teller.lint(own)).collect();
            Ok(told.join("\n"))
        })
    }
}

/// A departure from the correct level, written as `[-2 L, -1.5 L]`, in words: short, over, or across
/// it. The teller may be NULL, for English.
///
/// Errors: those of `brim_interval_intersect`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_departure_text(
    interval: *const c_char,
    interval_length: usize,
    teller: *const brim_teller,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    answer(error, || {
        // SAFETY: pointers as the header asks.
        let (interval, teller, room) = unsafe {
            (
                text(interval, interval_length, "interval")?,
                or_english(teller)?,
                room(buffer, capacity, length)?,
            )
        };
        room.put(&teller.departure(&Interval::parse(interval)?))
    })
}

/// What an id that a calculator answers means, in words: by its room, as `leak`, the list it is of,
/// as `response`, and the id, as `report`. The teller may be NULL, for English.
///
/// Errors: `BRIM_ERROR_UNKNOWN_VALUE` where there are no words, as for names that stand for
/// themselves.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_answered_text(
    of_room: *const c_char,
    of_room_length: usize,
    of_list: *const c_char,
    of_list_length: usize,
    id: *const c_char,
    id_length: usize,
    teller: *const brim_teller,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    answer(error, || {
        // SAFETY: pointers as the header asks.
        let (of_room, of_list, id, teller, room) = unsafe {
            (
                text(of_room, of_room_length, "of_room")?,
                text(of_list, of_list_length, "of_list")?,
                text(id, id_length, "id")?,
                or_english(teller)?,
                room(buffer, capacity, length)?,
            )
        };
        match teller.answered(of_room, of_list, id) {
            Some(told) => room.put(told),
            None => Err(Fault::new(ErrorKind::UnknownValue).at("id").got(id).into()),
        }
    })
}
