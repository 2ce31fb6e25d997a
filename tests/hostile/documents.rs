//! The small documents that are spoilt, and what is asked of a refusal.

use brimline::{Error, Journal, Limits};
use std::thread;

pub const HEADER: &str =
    r#"{"format":"brimline-journal/1","procedure":"pipit-level","job":"check"}"#;

pub fn journal_of(entries: &str) -> String {
    let header = HEADER.trim_end_matches('}');
    format!("{header},\"entries\":[{entries}]}}")
}

pub fn note(seq: usize, text: &str) -> String {
    format!(r#"{{"seq":{seq},"at":"2026-03-02T09:00:00Z","kind":"note","text":"{text}"}}"#)
}

pub fn notes(count: usize, text: &str) -> String {
    let entries: Vec<String> = (0..count).map(|seq| note(seq, text)).collect();
    journal_of(&entries.join(","))
}

pub fn read(text: &str) -> Result<Journal, Error> {
    Journal::from_json(text, None)
}

pub fn read_with(text: &str, limits: &Limits) -> Result<Journal, Error> {
    Journal::from_json_with(text, None, limits)
}

/// The slugs and paths of every fault.
pub fn told(error: &Error) -> Vec<(&'static str, &str)> {
    error
        .faults()
        .map(|fault| (fault.kind.slug(), fault.path.as_str()))
        .collect()
}

pub fn refused<T: std::fmt::Debug>(read: Result<T, Error>) -> Error {
    read.expect_err("this is to be refused")
}

/// Nested lists, this many of them.
pub fn nested(depth: usize) -> String {
    "[".repeat(depth) + &"]".repeat(depth)
}

/// On the stack a spawned thread of this many bytes has.
pub fn on_a_stack_of(bytes: usize, act: impl FnOnce() + Send + 'static) {
    let thread = thread::Builder::new().stack_size(bytes).spawn(act);
    thread
        .expect("a thread starts")
        .join()
        .expect("it ends well");
}
