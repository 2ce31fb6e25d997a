//! What findings, next acts and unmet items say beside their id.

use crate::text::room;
use brimline_core::Error;
use brimline_core::check::{Arg, Args};
use std::ffi::c_char;

/// What is said under a name, as text; empty if nothing.
pub(crate) fn under(args: &Args, name: &str) -> String {
    match args.get(name) {
        Some(Arg::Amount(amount)) => amount.to_string(),
        Some(Arg::Money(money)) => money.to_string(),
        Some(Arg::Text(text)) => text.clone(),
        Some(Arg::Whole(whole)) => whole.to_string(),
        _ => String::new(),
    }
}

/// Writes the ids of the cautions that go with an answer, a line each.
///
/// # Safety
/// As [`room`].
pub(crate) unsafe fn caution(
    cautions: &[&str],
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
) -> Result<(), Error> {
    // SAFETY: as the caller promises.
    unsafe { room(buffer, capacity, length)? }.put(&cautions.join("\n"))
}
