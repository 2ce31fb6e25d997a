//! The calculators of `leak`, by name.

use super::Function;

pub(super) const FUNCTIONS: &[Function] = &[];
