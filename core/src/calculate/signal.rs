//! The calculators of `signal`, by name.

use super::Function;

pub(super) const FUNCTIONS: &[Function] = &[];
