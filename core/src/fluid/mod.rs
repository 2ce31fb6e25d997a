//! Fluids and what may be poured onto what.

mod relation;

pub(crate) use relation::replacement_cycle;
pub use relation::{Fluid, Relation};
