//! Answers told in English.

use crate::acts::brim_acts;
use crate::error::{brim_error, brim_status};
use crate::evaluation::brim_evaluation;
use crate::findings::brim_findings;
use crate::gate::brim_gate;
use crate::getter::tell;
use crate::guard::answer;
use crate::handle;
use crate::pack::brim_pack;
use crate::text::{self, at, room, text};
use brimline_core::report::Teller;
use brimline_core::{Error, ErrorKind, Evaluation, Fault, report};
use std::ffi::c_char;

/// The whole answer in English lines of at most 80 columns, with every caution in full.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_evaluation_text(
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
            |evaluation| Ok(report::text(evaluation)),
        )
    }
}

/// A whole check told entry by entry in English, with every caution in full.
///
/// Errors: every fault of the journal, with path and position.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_story(
    pack: *const brim_pack,
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
                handle::look(pack, "pack")?,
                text::journal(journal, journal_length, "journal")?,
                room(buffer, capacity, length)?,
            )
        };
        room.put(&report::story(pack, &journal)?)
    })
}

/// A finding in one English sentence.
///
/// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_findings_text(
    findings: *const brim_findings,
    index: usize,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(
            findings,
            "findings",
            buffer,
            capacity,
            length,
            error,
            |findings| Ok(report::finding(at(findings, index, "index")?)),
        )
    }
}

/// An item that stands in the way, in one English sentence.
///
/// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_gate_unmet_text(
    gate: *const brim_gate,
    index: usize,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(gate, "gate", buffer, capacity, length, error, |gate| {
            Ok(report::unmet(at(&gate.unmet, index, "index")?))
        })
    }
}

/// An act in an English sentence or two. Its cautions belong to it: `brim_acts_caution_text`.
///
/// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_acts_text(
    acts: *const brim_acts,
    index: usize,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(acts, "acts", buffer, capacity, length, error, |acts| {
            Ok(report::next_act(at(acts, index, "index")?))
        })
    }
}

/// One of the cautions that go with an act, in English.
///
/// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_acts_caution_text(
    acts: *const brim_acts,
    index: usize,
    item: usize,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(acts, "acts", buffer, capacity, length, error, |acts| {
            let id = *at(&at(acts, index, "index")?.cautions, item, "item")?;
            Ok(report::caution(id).unwrap_or(id))
        })
    }
}

/// A caution of the library in English, by its id, as the calculators give them.
///
/// Errors: `BRIM_ERROR_UNKNOWN_VALUE` for an id of none.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_caution_text(
    id: *const c_char,
    id_length: usize,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    answer(error, || {
        // SAFETY: pointers as the header asks.
        let (id, room) = unsafe { (text(id, id_length, "id")?, room(buffer, capacity, length)?) };
        match report::caution(id) {
            Some(caution) => room.put(caution),
            None => Err(Fault::new(ErrorKind::UnknownValue).at("id").got(id).into()),
        }
    })
}

/// One of the cautions that go with the state of the job: the library's in English, a sheet's own in
/// the words of the sheet.
///
/// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_evaluation_caution_text(
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
            |evaluation| state_caution(&Teller::english(), evaluation, index),
        )
    }
}

/// One of the cautions that go with the state of the job, in full.
pub(crate) fn state_caution(
    teller: &Teller,
    evaluation: &Evaluation,
    index: usize,
) -> Result<String, Error> {
    let id = at(evaluation.cautions(), index, "index")?;
    let said = teller
        .caution(id)
        .or_else(|| own_caution(evaluation, id))
        .unwrap_or(id);
    Ok(said.to_string())
}

/// The text of a caution of the sheet's own.
fn own_caution<'a>(evaluation: &'a Evaluation, id: &str) -> Option<&'a str> {
    let cautions = &evaluation.sheet()?.cautions;
    cautions
        .iter()
        .find(|own| own.id == id)
        .map(|own| own.text.as_str())
}
