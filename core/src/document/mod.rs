//! Reading and writing JSON documents: all faults of a document at once, each with its place.

mod canonical;
mod difference;
mod digest;
mod fault;
mod field;
mod limits;
mod parse;
mod path;
mod place;
mod reader;
mod tree;
mod utf8;

pub use canonical::canonical;
pub(crate) use canonical::{Ext, day};
pub use difference::Difference;
pub(crate) use difference::differences;
pub use digest::digest;
pub(crate) use digest::digest_of;
pub use limits::Limits;
pub(crate) use parse::is_json;
pub(crate) use path::Step;
pub(crate) use reader::{Object, Reader};
pub(crate) use tree::Node;
pub use utf8::from_utf8;
