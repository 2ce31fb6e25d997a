//! What findings, next acts and unmet items say beside their id.

use crate::amount::brim_amount;
use brimline_core::Amount;
use brimline_core::check::{Arg, Args};

/// What is said under a name, as text; empty if nothing.
pub(crate) fn under(args: &Args, name: &str) -> String {
    match args.get(name) {
        Some(Arg::Text(text)) => text.clone(),
        Some(Arg::Whole(whole)) => whole.to_string(),
        _ => String::new(),
    }
}

/// An amount that may be absent, as whether it is there and what it is.
pub(crate) fn present(amount: Option<Amount>) -> (i32, brim_amount) {
    (amount.is_some().into(), amount.into())
}
