//! The calculators of `volume`, by name.

use super::Function;

pub(super) const FUNCTIONS: &[Function] = &[];
