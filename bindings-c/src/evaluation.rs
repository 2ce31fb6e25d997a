//! Evaluations: the answer to one journal.

use crate::acts::brim_acts;
use crate::error::{brim_error, brim_status};
use crate::findings::brim_findings;
use crate::gate::brim_gate;
use crate::getter::{tell, value};
use crate::guard::answer;
use crate::handle::{self, Handle};
use crate::list::{self, brim_act, brim_by_sheet, brim_certainty, brim_verdict};
use crate::options::brim_options;
use crate::pack::brim_pack;
use crate::text::{self, at, out, room, text_if};
use brimline_core::check::Options;
use brimline_core::{Evaluation, Pack, evaluate, evaluate_with};
use std::ffi::c_char;

/// The answer to one journal. Nothing in it changes any more.
///
/// Ownership: `brim_evaluate` or `brim_check_evaluation` to `brim_evaluation_free`. Threads: one at
/// a time. Lifetime: its own; it does not need the pack or the check it was made of.
pub struct brim_evaluation {
    _opaque: [u8; 0],
}

impl Handle for brim_evaluation {
    type Held = Evaluation;
    const MARK: u64 = u64::from_le_bytes(*b"brimeva\0");
}

/// Evaluates a journal, one JSON document or JSON Lines, on a pack.
///
/// Errors: every fault of the journal, with path and position.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_evaluate(
    pack: *const brim_pack,
    journal: *const c_char,
    journal_length: usize,
    options: *const brim_options,
    evaluation: *mut *mut brim_evaluation,
    error: *mut brim_error,
) -> brim_status {
    answer(error, || {
        // SAFETY: pointers as the header asks.
        let (pack, journal, options, evaluation) = unsafe {
            (
                handle::look(pack, "pack")?,
                text::journal(journal, journal_length, "journal")?,
                handle::look_if(options, "options")?,
                out(evaluation, "evaluation")?,
            )
        };
        let made = match options {
            Some(options) => evaluate_with(pack, &*journal, options)?,
            None => evaluate_with(pack, &*journal, &Options::default())?,
        };
        evaluation.put(handle::give(made));
        Ok(())
    })
}

/// Evaluates a journal in one call, text in and text out, for hosts that keep no handles: `pack` is
/// the text of a pack, or NULL for the embedded one; the result document goes into the buffer.
///
/// A buffer that is too small costs a second evaluation; 65536 bytes hold the result of most
/// journals.
///
/// Errors: every fault of the pack, or else of the journal, with path and position.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_evaluate_json(
    pack: *const c_char,
    pack_length: usize,
    journal: *const c_char,
    journal_length: usize,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    answer(error, || {
        // SAFETY: pointers as the header asks.
        let (pack, journal, room) = unsafe {
            (
                text_if(pack, pack_length, "pack")?,
                text::journal(journal, journal_length, "journal")?,
                room(buffer, capacity, length)?,
            )
        };
        let pack = match pack {
            Some(pack) => Pack::from_json(pack)?,
            None => Pack::embedded()?,
        };
        room.put(&evaluate(&pack, &*journal)?.to_json())
    })
}

/// Frees an evaluation. NULL is allowed.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_evaluation_free(evaluation: *mut brim_evaluation) {
    // SAFETY: the handle is NULL or the caller's to give back.
    unsafe { handle::free(evaluation) }
}

/// What can be said of the level.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_evaluation_verdict(
    evaluation: *const brim_evaluation,
    verdict: *mut brim_verdict,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        value(
            evaluation,
            "evaluation",
            verdict,
            "verdict",
            error,
            |evaluation| Ok(list::number(evaluation.verdict())),
        )
    }
}

/// The procedure that the journal names.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_evaluation_procedure(
    evaluation: *const brim_evaluation,
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
            |evaluation| Ok(evaluation.procedure().id.clone()),
        )
    }
}

/// The edition that applied; 0 if none did.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_evaluation_edition(
    evaluation: *const brim_evaluation,
    edition: *mut u32,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        value(
            evaluation,
            "evaluation",
            edition,
            "edition",
            error,
            |evaluation| Ok(evaluation.procedure().edition.unwrap_or(0)),
        )
    }
}

/// The digest of the edition that applied; empty if none did.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_evaluation_digest(
    evaluation: *const brim_evaluation,
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
            |evaluation| Ok(evaluation.procedure().digest.clone().unwrap_or_default()),
        )
    }
}

/// What the sheet's own count says of a leak.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_evaluation_by_sheet(
    evaluation: *const brim_evaluation,
    by_sheet: *mut brim_by_sheet,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        value(
            evaluation,
            "evaluation",
            by_sheet,
            "by_sheet",
            error,
            |evaluation| Ok(list::number(evaluation.leak().by_sheet)),
        )
    }
}

/// How far what is proved bears that count out.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_evaluation_certainty(
    evaluation: *const brim_evaluation,
    certainty: *mut brim_certainty,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        value(
            evaluation,
            "evaluation",
            certainty,
            "certainty",
            error,
            |evaluation| Ok(list::number(evaluation.leak().certainty)),
        )
    }
}

/// What a person should know of the journal, in a handle of the caller's.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_evaluation_findings(
    evaluation: *const brim_evaluation,
    findings: *mut *mut brim_findings,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        value(
            evaluation,
            "evaluation",
            findings,
            "findings",
            error,
            |evaluation| Ok(handle::give(evaluation.findings().to_vec())),
        )
    }
}

/// What to do next, in a handle of the caller's.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_evaluation_next(
    evaluation: *const brim_evaluation,
    acts: *mut *mut brim_acts,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        value(
            evaluation,
            "evaluation",
            acts,
            "acts",
            error,
            |evaluation| Ok(handle::give(evaluation.next().to_vec())),
        )
    }
}

/// Whether an act is allowed at the moment of the newest entry, in a handle of the caller's.
///
/// Errors: `BRIM_ERROR_UNKNOWN_VALUE` for a number of no act.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_evaluation_gate(
    evaluation: *const brim_evaluation,
    act: brim_act,
    gate: *mut *mut brim_gate,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        value(
            evaluation,
            "evaluation",
            gate,
            "gate",
            error,
            |evaluation| {
                Ok(handle::give(
                    evaluation.gate(list::value(act, "act")?).clone(),
                ))
            },
        )
    }
}

/// How many cautions go with the state of the job. They belong beside every telling of the result.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_evaluation_caution_count(
    evaluation: *const brim_evaluation,
    count: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        value(
            evaluation,
            "evaluation",
            count,
            "count",
            error,
            |evaluation| Ok(evaluation.cautions().len()),
        )
    }
}

/// The id of one of these cautions.
///
/// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_evaluation_caution(
    evaluation: *const brim_evaluation,
    index: usize,
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
            |evaluation| Ok(at(evaluation.cautions(), index, "index")?.clone()),
        )
    }
}

/// The result document: canonical JSON, the same bytes in every language.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_evaluation_json(
    evaluation: *const brim_evaluation,
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
            |evaluation| Ok(evaluation.to_json()),
        )
    }
}
