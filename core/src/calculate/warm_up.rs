//! The calculators of `warm_up`, by name.

use super::Function;

pub(super) const FUNCTIONS: &[Function] = &[];
