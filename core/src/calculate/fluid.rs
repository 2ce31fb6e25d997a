//! The calculators of `fluid`, by name.

use super::Function;

pub(super) const FUNCTIONS: &[Function] = &[];
