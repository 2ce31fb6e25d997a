//! Versions.

use crate::error::{brim_error, brim_status};
use crate::guard::answer;
use crate::text::room;
use brimline_core::document::canonical;
use brimline_core::versions;
use std::ffi::c_char;

/// The version of this header. It rises when a program compiled with an older one would no longer
/// do.
pub const BRIM_ABI_VERSION: i32 = 1;

/// The version of the library's binary interface. Compare it with `BRIM_ABI_VERSION`, which the
/// program was compiled with.
#[unsafe(no_mangle)]
pub extern "C" fn brim_abi_version() -> i32 {
    BRIM_ABI_VERSION
}

/// The versions of everything, as JSON:
/// `{"library","rules","documents":{"pack","journal","result","record","prices","messages",
/// "profile","estimate","invoice","history","comebacks","follow_up","audit","shadow"},"abi"}`.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_versions(
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    answer(error, || {
        // SAFETY: pointers as the header asks.
        let room = unsafe { room(buffer, capacity, length)? };
        let told = canonical(&versions());
        // The object, with one member more.
        let members = told.strip_suffix('}').unwrap_or(&told);
        room.put(&format!("{members},\"abi\":{BRIM_ABI_VERSION}}}"))
    })
}
