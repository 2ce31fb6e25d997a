//! Who tells: the messages of a language and the units of a shop, through which answers are told.

use crate::acts::brim_acts;
use crate::error::{brim_error, brim_status};
use crate::evaluation::brim_evaluation;
use crate::findings::brim_findings;
use crate::forecast::brim_forecast;
use crate::gate::brim_gate;
use crate::getter::tell;
use crate::guard::answer;
use crate::handle::{self, Handle};
use crate::options::brim_options;
use crate::pack::brim_pack;
use crate::report::state_caution;
use crate::text::{self, at, out, room, text, text_if};
use brimline_core::report::Teller;
use brimline_core::{Error, ErrorKind, Fault, Limits};
use std::ffi::c_char;

/// Tells answers in the language of a document of messages and in the units of a shop's profile.
///
/// Ownership: `brim_teller_new` or `brim_teller_copy` to `brim_teller_free`. Threads: one at a time;
/// give each thread a copy, which costs next to nothing. Lifetime: its own.
pub struct brim_teller {
    _opaque: [u8; 0],
}

impl Handle for brim_teller {
    type Held = Teller;
    const MARK: u64 = u64::from_le_bytes(*b"brimtel\0");
}

/// The teller of a handle; English where it is NULL.
///
/// # Safety
/// As [`handle::look_if`].
pub(crate) unsafe fn or_english(teller: *const brim_teller) -> Result<Teller, Error> {
    // SAFETY: as the caller promises.
    let teller = unsafe { handle::look_if(teller, "teller")? };
    Ok(teller.cloned().unwrap_or_default())
}

/// Makes a teller of a document of messages and a profile, within the limits of the options. Without
/// messages, as NULL, it tells English, and without a profile each quantity in the unit it was
/// entered or printed in. No teller leaves a caution out.
///
/// Errors: every fault of the messages, or else of the profile, with path and position;
/// `BRIM_ERROR_CONFLICT` where the profile names another language.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_teller_new(
    messages: *const c_char,
    messages_length: usize,
    profile: *const c_char,
    profile_length: usize,
    options: *const brim_options,
    teller: *mut *mut brim_teller,
    error: *mut brim_error,
) -> brim_status {
    answer(error, || {
        // SAFETY: pointers as the header asks.
        let (messages, profile, options, teller) = unsafe {
            (
                text_if(messages, messages_length, "messages")?,
                text_if(profile, profile_length, "profile")?,
                handle::look_if(options, "options")?,
                out(teller, "teller")?,
            )
        };
        let limits = options.map_or_else(Limits::default, |options| options.limits.clone());
        teller.put(handle::give(Teller::from_json(messages, profile, &limits)?));
        Ok(())
    })
}

/// Another handle of the same teller, for another thread. It shares the messages.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_teller_copy(
    teller: *const brim_teller,
    copy: *mut *mut brim_teller,
    error: *mut brim_error,
) -> brim_status {
    answer(error, || {
        // SAFETY: pointers as the header asks.
        let (teller, copy) = unsafe { (handle::look(teller, "teller")?, out(copy, "copy")?) };
        copy.put(handle::give(teller.clone()));
        Ok(())
    })
}

/// Frees a teller. NULL is allowed.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_teller_free(teller: *mut brim_teller) {
    // SAFETY: the handle is NULL or the caller's to give back.
    unsafe { handle::free(teller) }
}

/// Every message as canonical JSON: the English one is what a translator starts from.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_teller_messages_json(
    teller: *const brim_teller,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(
            teller,
            "teller",
            buffer,
            capacity,
            length,
            error,
            |teller| Ok(teller.catalogue().to_json()),
        )
    }
}

/// The profile as canonical JSON.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_teller_profile_json(
    teller: *const brim_teller,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(
            teller,
            "teller",
            buffer,
            capacity,
            length,
            error,
            |teller| Ok(teller.profile().to_json()),
        )
    }
}

/// As `brim_story`, by a teller.
///
/// Errors: every fault of the journal, with path and position.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_story_with(
    pack: *const brim_pack,
    journal: *const c_char,
    journal_length: usize,
    teller: *const brim_teller,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    answer(error, || {
        // SAFETY: pointers as the header asks.
        let (pack, journal, teller, room) = unsafe {
            (
                handle::look(pack, "pack")?,
                text::journal(journal, journal_length, "journal")?,
                handle::look(teller, "teller")?,
                room(buffer, capacity, length)?,
            )
        };
        room.put(&teller.story(pack, &journal)?)
    })
}

/// As `brim_caution_text`, by a teller.
///
/// Errors: `BRIM_ERROR_UNKNOWN_VALUE` for an id of none.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_caution_text_with(
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
        let (id, teller, room) = unsafe {
            (
                text(id, id_length, "id")?,
                handle::look(teller, "teller")?,
                room(buffer, capacity, length)?,
            )
        };
        match teller.caution(id) {
            Some(caution) => room.put(caution),
            None => Err(Fault::new(ErrorKind::UnknownValue).at("id").got(id).into()),
        }
    })
}

/// As `brim_evaluation_text`, by a teller.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_evaluation_text_with(
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
                let teller = handle::look(teller, "teller")?;
                Ok(teller.text(evaluation))
            },
        )
    }
}

/// As `brim_evaluation_caution_text`, by a teller.
///
/// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_evaluation_caution_text_with(
    evaluation: *const brim_evaluation,
    index: usize,
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
                let teller = handle::look(teller, "teller")?;
                state_caution(teller, evaluation, index)
            },
        )
    }
}

/// As `brim_findings_text`, by a teller.
///
/// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_findings_text_with(
    findings: *const brim_findings,
    index: usize,
    teller: *const brim_teller,
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
            |findings| {
                let teller = handle::look(teller, "teller")?;
                Ok(teller.finding(at(findings, index, "index")?))
            },
        )
    }
}

/// As `brim_gate_unmet_text`, by a teller.
///
/// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_gate_unmet_text_with(
    gate: *const brim_gate,
    index: usize,
    teller: *const brim_teller,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(gate, "gate", buffer, capacity, length, error, |gate| {
            let teller = handle::look(teller, "teller")?;
            Ok(teller.unmet(at(&gate.unmet, index, "index")?))
        })
    }
}

/// As `brim_acts_text`, by a teller.
///
/// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_acts_text_with(
    acts: *const brim_acts,
    index: usize,
    teller: *const brim_teller,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(acts, "acts", buffer, capacity, length, error, |acts| {
            let teller = handle::look(teller, "teller")?;
            Ok(teller.next_act(at(acts, index, "index")?))
        })
    }
}

/// As `brim_acts_caution_text`, by a teller.
///
/// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an index past the last.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_acts_caution_text_with(
    acts: *const brim_acts,
    index: usize,
    item: usize,
    teller: *const brim_teller,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(acts, "acts", buffer, capacity, length, error, |acts| {
            let teller = handle::look(teller, "teller")?;
            let id = *at(&at(acts, index, "index")?.cautions, item, "item")?;
            Ok(teller.caution(id).unwrap_or(id).to_string())
        })
    }
}

/// As `brim_forecast_text`, by a teller.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_forecast_text_with(
    forecast: *const brim_forecast,
    teller: *const brim_teller,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(
            forecast,
            "forecast",
            buffer,
            capacity,
            length,
            error,
            |forecast| {
                let teller = handle::look(teller, "teller")?;
                Ok(teller.outlook(&forecast.answer()))
            },
        )
    }
}
