//! Fluids and what may be poured onto what.

mod relation;

pub use relation::{Fluid, Relation};
