//! What is kept of a job: sealed, read again without its pack, and refused once a byte of it is changed.

#[path = "records/history.rs"]
mod history;
#[path = "records/sealing.rs"]
mod sealing;
mod vector_cases;
