//! What findings, next acts and unmet items say beside their id.

use crate::amount::brim_amount;
use crate::text::room;
use brimline_core::check::{Arg, Args};
use brimline_core::{Amount, Error};
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

/// An amount that may be absent, as whether it is there and what it is.
pub(crate) fn present(amount: Option<Amount>) -> (i32, brim_amount) {
    (amount.is_some().into(), amount.into())
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
