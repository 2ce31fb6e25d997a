//! Pages and pictures of a job.

use crate::error::{brim_error, brim_status};
use crate::guard::answer;
use crate::handle;
use crate::list::{self, numbers};
use crate::pack::brim_pack;
use crate::teller::{brim_teller, or_english};
use crate::text::{self, room, text_if};
use brimline_core::report::{Medium, Particulars, Picture, Teller};
use brimline_core::{Error, LevelCheck};
use std::ffi::c_char;

/// What a page is written as.
pub type brim_medium = i32;

/// One HTML document that needs nothing from elsewhere and runs nothing.
pub const BRIM_MEDIUM_HTML: brim_medium = 1;
/// Markdown; pictures are told in words.
pub const BRIM_MEDIUM_MARKDOWN: brim_medium = 2;
/// Lines of at most 80 columns; pictures are told in words.
pub const BRIM_MEDIUM_TEXT: brim_medium = 3;

numbers! { Medium of Medium::WORDS.len();
    BRIM_MEDIUM_HTML Html, BRIM_MEDIUM_MARKDOWN Markdown, BRIM_MEDIUM_TEXT Text,
}

/// What a picture shows.
pub type brim_picture_of = i32;

/// The temperatures by time, the window, the forecast, the plug and the pours.
pub const BRIM_PICTURE_OF_WARM_UP: brim_picture_of = 1;
/// What is known of the departure, entry by entry.
pub const BRIM_PICTURE_OF_NARROWING: brim_picture_of = 2;
/// The closing torque, on the tool.
pub const BRIM_PICTURE_OF_CLOSING: brim_picture_of = 3;

numbers! { Picture of Picture::WORDS.len();
    BRIM_PICTURE_OF_WARM_UP WarmUp, BRIM_PICTURE_OF_NARROWING Narrowing,
    BRIM_PICTURE_OF_CLOSING Closing,
}

/// Reads particulars, none where they are NULL, and tells with them by a teller, in English where it is NULL.
///
/// # Safety
/// The pointers are as the header asks.
unsafe fn with<R>(
    particulars: *const c_char,
    particulars_length: usize,
    teller: *const brim_teller,
    told: impl FnOnce(&Teller, &Particulars<'_>) -> Result<R, Error>,
) -> Result<R, Error> {
    // SAFETY: as the caller promises.
    let (particulars, teller) = unsafe {
        (
            text_if(particulars, particulars_length, "particulars")?,
            or_english(teller)?,
        )
    };
    Particulars::read(particulars.unwrap_or("{}"), |read| told(&teller, read))?
}

/// The work sheet of a job, on one printed page: what was found and done, what it means and what
/// comes next, the leak reading, the lines of money, what is not proven, three pictures, every
/// caution in full.
///
/// The particulars are JSON, each member of which may be left out, or NULL: `shop` (a list of
/// lines), `tool` (as for `torque.tool_suits`), `adapter` and `angle` of it, `record` (the digest of
/// the sealed record), `prices` (a price list), `estimate` (the document of an estimate). The teller
/// may be NULL, for English.
///
/// Errors: every fault of the journal, or else of the particulars, with path and position; what the
/// tool and the prices are refused for; `BRIM_ERROR_UNKNOWN_VALUE` for a number of no medium.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_work_sheet(
    pack: *const brim_pack,
    journal: *const c_char,
    journal_length: usize,
    particulars: *const c_char,
    particulars_length: usize,
    teller: *const brim_teller,
    medium: brim_medium,
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
        let medium = list::value(medium, "medium")?;
        // SAFETY: pointers as the header asks.
        let told = unsafe {
            with(particulars, particulars_length, teller, |teller, read| {
                teller.work_sheet(pack, &journal, read, medium)
            })?
        };
        room.put(&told)
    })
}

/// The bay card of a job that is to begin: the window as the scan tool shows it, what must be met
/// before the plug comes out, the acts in their order, what the pours add up to, how many containers
/// that is, what the wrench is set to, every caution in full. Of the journal only the header counts.
///
/// The particulars are those of `brim_work_sheet`, and `scan_unit`, as `degF`, and `container`, the
/// size of one. The teller may be NULL, for English.
///
/// Errors: those of `brim_work_sheet`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_bay_card(
    pack: *const brim_pack,
    journal: *const c_char,
    journal_length: usize,
    particulars: *const c_char,
    particulars_length: usize,
    teller: *const brim_teller,
    medium: brim_medium,
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
        let medium = list::value(medium, "medium")?;
        // SAFETY: pointers as the header asks.
        let told = unsafe {
            with(particulars, particulars_length, teller, |teller, read| {
                teller.bay_card(pack, &journal, read, medium)
            })?
        };
        room.put(&told)
    })
}

/// A picture of a check as SVG that stands alone, light or dark as the reader's screen is; an empty
/// text where there is nothing to draw. Of the particulars, as for `brim_work_sheet`, the tool
/// counts.
///
/// Errors: those of `brim_work_sheet`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_picture(
    pack: *const brim_pack,
    journal: *const c_char,
    journal_length: usize,
    of: brim_picture_of,
    particulars: *const c_char,
    particulars_length: usize,
    teller: *const brim_teller,
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
        let which = list::value(of, "of")?;
        // SAFETY: pointers as the header asks.
        let told = unsafe {
            with(particulars, particulars_length, teller, |teller, read| {
                let check = LevelCheck::replay(pack, &journal)?;
                teller.picture(&check, which, read.rig.as_ref())
            })?
        };
        room.put(&told.unwrap_or_default())
    })
}
