//! Packs: the sheets and fluids that one publisher puts out together.

use crate::error::{brim_error, brim_status};
use crate::getter::tell;
use crate::guard::answer;
use crate::handle::{self, Handle};
use crate::options::brim_options;
use crate::text::{out, room, text, text_if, texts};
use brimline_core::document::canonical;
use brimline_core::{Limits, Pack};
use std::ffi::c_char;

/// The service sheets and fluids of one publisher, read and checked.
///
/// Ownership: `brim_pack_embedded`, `brim_pack_from_json` or `brim_pack_copy` to `brim_pack_free`.
/// Threads: one at a time; give each thread a copy, which costs next to nothing. Lifetime: its own;
/// checks and evaluations made of it go on after it is freed.
pub struct brim_pack {
    _opaque: [u8; 0],
}

impl Handle for brim_pack {
    type Held = Pack;
    const MARK: u64 = u64::from_le_bytes(*b"brimpck\0");
}

/// The embedded demonstration pack: invented units, fluids and numbers of an invented shop.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_pack_embedded(
    pack: *mut *mut brim_pack,
    error: *mut brim_error,
) -> brim_status {
    answer(error, || {
        // SAFETY: pointers as the header asks.
        let pack = unsafe { out(pack, "pack")? };
        pack.put(handle::give(Pack::embedded()?));
        Ok(())
    })
}

/// Reads a pack from its JSON text, within the limits of the options.
///
/// Errors: every fault of the document, with path and position.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_pack_from_json(
    json: *const c_char,
    json_length: usize,
    options: *const brim_options,
    pack: *mut *mut brim_pack,
    error: *mut brim_error,
) -> brim_status {
    answer(error, || {
        // SAFETY: pointers as the header asks.
        let (json, options, pack) = unsafe {
            (
                text(json, json_length, "json")?,
                handle::look_if(options, "options")?,
                out(pack, "pack")?,
            )
        };
        let read = match options {
            Some(options) => Pack::from_json_with(json, &options.limits)?,
            None => Pack::from_json_with(json, &Limits::default())?,
        };
        pack.put(handle::give(read));
        Ok(())
    })
}

/// Another handle of the same pack, for another thread. It shares the pack's data.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_pack_copy(
    pack: *const brim_pack,
    copy: *mut *mut brim_pack,
    error: *mut brim_error,
) -> brim_status {
    answer(error, || {
        // SAFETY: pointers as the header asks.
        let (pack, copy) = unsafe { (handle::look(pack, "pack")?, out(copy, "copy")?) };
        copy.put(handle::give(pack.clone()));
        Ok(())
    })
}

/// Frees a pack. NULL is allowed.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_pack_free(pack: *mut brim_pack) {
    // SAFETY: the handle is NULL or the caller's to give back.
    unsafe { handle::free(pack) }
}

/// The pack's own name.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_pack_id(
    pack: *const brim_pack,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(pack, "pack", buffer, capacity, length, error, |pack| {
            Ok(pack.id().to_string())
        })
    }
}

/// The publisher's version of the pack.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_pack_version(
    pack: *const brim_pack,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(pack, "pack", buffer, capacity, length, error, |pack| {
            Ok(pack.version().to_string())
        })
    }
}

/// What the pack is called.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_pack_title(
    pack: *const brim_pack,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(pack, "pack", buffer, capacity, length, error, |pack| {
            Ok(pack.title().to_string())
        })
    }
}

/// SHA-256 of the canonical form, in lower-case hex.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_pack_digest(
    pack: *const brim_pack,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(pack, "pack", buffer, capacity, length, error, |pack| {
            Ok(pack.digest().to_string())
        })
    }
}

/// The canonical form of the pack, as JSON.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_pack_json(
    pack: *const brim_pack,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(pack, "pack", buffer, capacity, length, error, |pack| {
            Ok(pack.to_json())
        })
    }
}

/// Every defect of the sheets themselves, as JSON:
/// `[{"id","severity","procedure","edition","field","args"?}]`.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_pack_lint_json(
    pack: *const brim_pack,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(pack, "pack", buffer, capacity, length, error, |pack| {
            Ok(canonical(&pack.lint()))
        })
    }
}

/// Where two editions of a procedure differ, field by field, as JSON: `[{"field","from"?,"to"?}]`.
///
/// Errors: `BRIM_ERROR_UNRESOLVED` if the pack lacks one of them.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_pack_compare_json(
    pack: *const brim_pack,
    procedure: *const c_char,
    procedure_length: usize,
    from: u32,
    to: u32,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    answer(error, || {
        // SAFETY: pointers as the header asks.
        let (pack, procedure, room) = unsafe {
            (
                handle::look(pack, "pack")?,
                text(procedure, procedure_length, "procedure")?,
                room(buffer, capacity, length)?,
            )
        };
        room.put(&canonical(&pack.compare(procedure, from, to)?))
    })
}

/// The sheets for a vehicle, a unit or both (NULL leaves one out), in force on a day `YYYY-MM-DD`
/// (NULL: the newest), as JSON:
/// `{"answer":"one|several|none","candidates":[{"procedure","edition","unit"?}]}`.
///
/// Errors: `BRIM_ERROR_CONFLICT` if neither is named, `BRIM_ERROR_NOT_A_TIME`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_pack_select_json(
    pack: *const brim_pack,
    vehicle: *const c_char,
    vehicle_length: usize,
    unit: *const c_char,
    unit_length: usize,
    day: *const c_char,
    day_length: usize,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    answer(error, || {
        // SAFETY: pointers as the header asks.
        let (pack, vehicle, unit, day, room) = unsafe {
            (
                handle::look(pack, "pack")?,
                text_if(vehicle, vehicle_length, "vehicle")?,
                text_if(unit, unit_length, "unit")?,
                text_if(day, day_length, "day")?,
                room(buffer, capacity, length)?,
            )
        };
        room.put(&canonical(&pack.select(vehicle, unit, day)?))
    })
}

/// Whether one fluid of the pack may be poured onto another, by their ids, as JSON:
/// `{"answer","relation","path":[{"from","to","relation"}],"reason"}`. The answer is `yes`,
/// `after_exchange`, `no` or `unknown`; only `yes` is a yes. A fluid that the pack lacks is
/// `unknown`, and so is one that the other's sheet never lets in, whatever its own allows.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_pack_may_mix_json(
    pack: *const brim_pack,
    poured: *const c_char,
    poured_length: usize,
    onto: *const c_char,
    onto_length: usize,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    answer(error, || {
        // SAFETY: pointers as the header asks.
        let (pack, poured, onto, room) = unsafe {
            (
                handle::look(pack, "pack")?,
                text(poured, poured_length, "poured")?,
                text(onto, onto_length, "onto")?,
                room(buffer, capacity, length)?,
            )
        };
        room.put(&canonical(&pack.may_mix(poured, onto)))
    })
}

/// What each fluid on offer may do where the pack's fluid `required` is asked for, as JSON:
/// `[{"id","answer","fill","top_up","path":[{"from","to","relation"}],"reason"}]`, in the order of
/// the offers. The answer is `same`, `may_replace`, `may_top_up`, `after_exchange`, `never` or
/// `unknown`. `offered` points to `offered_count` ids, each of which ends with a NUL.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_pack_resolve_json(
    pack: *const brim_pack,
    required: *const c_char,
    required_length: usize,
    offered: *const *const c_char,
    offered_count: usize,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    answer(error, || {
        // SAFETY: pointers as the header asks.
        let (pack, required, offered, room) = unsafe {
            (
                handle::look(pack, "pack")?,
                text(required, required_length, "required")?,
                texts(offered, offered_count, "offered")?,
                room(buffer, capacity, length)?,
            )
        };
        room.put(&canonical(&pack.resolve(required, &offered)))
    })
}
