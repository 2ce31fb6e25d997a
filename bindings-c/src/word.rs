//! The words of the closed lists, by number and back.

use crate::error::{brim_error, brim_status};
use crate::guard::answer;
use crate::list::{Listed, unknown};
use crate::text::{out, room, text};
use brimline_core::check::{BySheet, Certainty};
use brimline_core::estimate::CaseKind;
use brimline_core::fluid::Procedure;
use brimline_core::leak::{Decision, Rule};
use brimline_core::procedure::Severity;
use brimline_core::record::Rules;
use brimline_core::report::{Medium, Picture};
use brimline_core::signal::{ByteOrder, LevelStatus, Refusal, ReplyState, State};
use brimline_core::torque::{Fits, PlugKind, StrengthClass, ThreadCondition};
use brimline_core::volume::Base;
use brimline_core::warm_up::{Method, Reason};
use brimline_core::{Act, Error, ErrorKind, Fault, Kind, Measures, Rounding, Verdict};
use std::ffi::c_char;

/// One of the closed lists whose words have numbers.
pub type brim_list = i32;

/// `brim_status`, as `unit_ambiguous`.
pub const BRIM_LIST_STATUS: brim_list = 1;
/// `brim_kind`, as `volume`.
pub const BRIM_LIST_KIND: brim_list = 2;
/// `brim_measures`, as `us`.
pub const BRIM_LIST_MEASURES: brim_list = 3;
/// `brim_rounding`, as `half_even`.
pub const BRIM_LIST_ROUNDING: brim_list = 4;
/// `brim_verdict`, as `at_level`.
pub const BRIM_LIST_VERDICT: brim_list = 5;
/// `brim_by_sheet`, as `below`.
pub const BRIM_LIST_BY_SHEET: brim_list = 6;
/// `brim_certainty`, as `clear`.
pub const BRIM_LIST_CERTAINTY: brim_list = 7;
/// `brim_severity`, as `caution`.
pub const BRIM_LIST_SEVERITY: brim_list = 8;
/// `brim_act`, as `stop_engine`.
pub const BRIM_LIST_ACT: brim_list = 9;
/// `brim_index_procedure`, as `a`.
pub const BRIM_LIST_INDEX_PROCEDURE: brim_list = 10;
/// `brim_signal_state`, as `not_available`.
pub const BRIM_LIST_SIGNAL_STATE: brim_list = 11;
/// `brim_level_status`, as `settling`.
pub const BRIM_LIST_LEVEL_STATUS: brim_list = 12;
/// `brim_byte_order`, as `little`.
pub const BRIM_LIST_BYTE_ORDER: brim_list = 13;
/// `brim_reply`, as `positive`.
pub const BRIM_LIST_REPLY: brim_list = 14;
/// `brim_refusal`, as `busy`.
pub const BRIM_LIST_REFUSAL: brim_list = 15;
/// `brim_thread_condition`, as `dry_steel`.
pub const BRIM_LIST_THREAD_CONDITION: brim_list = 16;
/// `brim_strength_class`, as `8.8`.
pub const BRIM_LIST_STRENGTH_CLASS: brim_list = 17;
/// `brim_plug`, as `steel`.
pub const BRIM_LIST_PLUG: brim_list = 18;
/// `brim_fits`, as `not_judged`.
pub const BRIM_LIST_FITS: brim_list = 19;
/// `brim_rule`, as `simple_acceptance`.
pub const BRIM_LIST_RULE: brim_list = 20;
/// `brim_decision`, as `undecided`.
pub const BRIM_LIST_DECISION: brim_list = 21;
/// `brim_forecast_method`, as `slope`.
pub const BRIM_LIST_FORECAST_METHOD: brim_list = 22;
/// `brim_forecast_reason`, as `too_few`.
pub const BRIM_LIST_FORECAST_REASON: brim_list = 23;
/// `brim_base`, as `base_15c`.
pub const BRIM_LIST_BASE: brim_list = 24;
/// `brim_rules`, as `as_recorded`.
pub const BRIM_LIST_RULES: brim_list = 25;
/// `brim_case`, as `likely`.
pub const BRIM_LIST_CASE: brim_list = 26;
/// `brim_medium`, as `html`.
pub const BRIM_LIST_MEDIUM: brim_list = 27;
/// `brim_picture_of`, as `narrowing`.
pub const BRIM_LIST_PICTURE_OF: brim_list = 28;

type Words = Vec<(i32, &'static str)>;
type TellWords = fn() -> Words;

/// Every list: its number, its name, and how its words are told.
const LISTS: &[(brim_list, &str, TellWords)] = &[
    (BRIM_LIST_STATUS, "status", statuses),
    (BRIM_LIST_KIND, "kind", of::<Kind>),
    (BRIM_LIST_MEASURES, "measures", of::<Measures>),
    (BRIM_LIST_ROUNDING, "rounding", of::<Rounding>),
    (BRIM_LIST_VERDICT, "verdict", of::<Verdict>),
    (BRIM_LIST_BY_SHEET, "by_sheet", of::<BySheet>),
    (BRIM_LIST_CERTAINTY, "certainty", of::<Certainty>),
    (BRIM_LIST_SEVERITY, "severity", of::<Severity>),
    (BRIM_LIST_ACT, "act", of::<Act>),
    (
        BRIM_LIST_INDEX_PROCEDURE,
        "index_procedure",
        of::<Procedure>,
    ),
    (BRIM_LIST_SIGNAL_STATE, "signal_state", of::<State>),
    (BRIM_LIST_LEVEL_STATUS, "level_status", of::<LevelStatus>),
    (BRIM_LIST_BYTE_ORDER, "byte_order", of::<ByteOrder>),
    (BRIM_LIST_REPLY, "reply", of::<ReplyState>),
    (BRIM_LIST_REFUSAL, "refusal", of::<Refusal>),
    (
        BRIM_LIST_THREAD_CONDITION,
        "thread_condition",
        of::<ThreadCondition>,
    ),
    (
        BRIM_LIST_STRENGTH_CLASS,
        "strength_class",
        of::<StrengthClass>,
    ),
    (BRIM_LIST_PLUG, "plug", of::<PlugKind>),
    (BRIM_LIST_FITS, "fits", of::<Fits>),
    (BRIM_LIST_RULE, "rule", of::<Rule>),
    (BRIM_LIST_DECISION, "decision", of::<Decision>),
    (BRIM_LIST_FORECAST_METHOD, "forecast_method", of::<Method>),
    (BRIM_LIST_FORECAST_REASON, "forecast_reason", of::<Reason>),
    (BRIM_LIST_BASE, "base", of::<Base>),
    (BRIM_LIST_RULES, "rules", of::<Rules>),
    (BRIM_LIST_CASE, "case", of::<CaseKind>),
    (BRIM_LIST_MEDIUM, "medium", of::<Medium>),
    (BRIM_LIST_PICTURE_OF, "picture_of", of::<Picture>),
];

fn of<L: Listed>() -> Words {
    let numbers = L::NUMBERS.iter();
    numbers
        .map(|(number, value)| (*number, value.word()))
        .collect()
}

fn statuses() -> Words {
    let kinds = ErrorKind::ALL.iter().map(|kind| (kind.code(), kind.slug()));
    std::iter::once((crate::error::BRIM_OK, "ok"))
        .chain(kinds)
        .collect()
}

/// The words of a list with their numbers.
fn words(list: brim_list) -> Result<Words, Error> {
    match LISTS.iter().find(|(own, ..)| *own == list) {
        Some((.., words)) => Ok(words()),
        None => {
            let known = LISTS.iter().map(|(own, name, _)| (*own, *name));
            Err(unknown(list, "list", known))
        }
    }
}

/// The word of a number of a list, as it stands in documents.
///
/// Errors: `BRIM_ERROR_UNKNOWN_VALUE`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_word(
    list: brim_list,
    number: i32,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    answer(error, || {
        // SAFETY: pointers as the header asks.
        let room = unsafe { room(buffer, capacity, length)? };
        let words = words(list)?;
        match words.iter().find(|(own, _)| *own == number) {
            Some((_, word)) => room.put(word),
            None => Err(unknown(number, "number", words.into_iter())),
        }
    })
}

/// The number of a word of a list.
///
/// Errors: `BRIM_ERROR_UNKNOWN_VALUE`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_word_number(
    list: brim_list,
    word: *const c_char,
    word_length: usize,
    number: *mut i32,
    error: *mut brim_error,
) -> brim_status {
    answer(error, || {
        // SAFETY: pointers as the header asks.
        let (word, number) = unsafe { (text(word, word_length, "word")?, out(number, "number")?) };
        let words = words(list)?;
        let Some((found, _)) = words.iter().find(|(_, own)| *own == word) else {
            let fault = Fault::new(ErrorKind::UnknownValue).at("word").got(word);
            return Err(fault.allowed(words.into_iter().map(|(_, own)| own)).into());
        };
        number.put(*found);
        Ok(())
    })
}
