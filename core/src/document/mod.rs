//! Reading and writing JSON documents: all faults of a document at once, each with its place.

mod canonical;
mod digest;
mod fault;
mod limits;
mod tree;

pub(crate) use canonical::Ext;
pub use canonical::canonical;
pub use digest::digest;
pub(crate) use fault::{Object, Reader, Step};
pub use limits::Limits;
pub(crate) use tree::Node;
