//! What is kept of a job: a sealed record, in which any changed byte is noticed.

mod reading;
mod recorded;
mod sealing;

pub use recorded::{RecordedFinding, SealedPack};
pub(crate) use sealing::FORMAT as RECORD_FORMAT;
pub use sealing::Record;
