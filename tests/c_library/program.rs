//! The program that answers requests through the C library, in every build.

use crate::compiler::{Build, builds, compile, run, scratch};
use crate::vector_cases::{Request, read_answers, write_requests};
use brimline::Error;
use serde_json::Value;
use std::fs;
use std::path::PathBuf;
use std::sync::OnceLock;

const VECTORS: &[&str] = &[
    "tests/c/vectors.c",
    "tests/c/quantities.c",
    "tests/c/documents.c",
    "tests/c/pages.c",
    "tests/c/records.c",
    "tests/c/tellings.c",
    "tests/c/histories.c",
    "tests/c/counter.c",
    "tests/c/calculators.c",
    "tests/c/torque.c",
    "tests/c/volume.c",
    "tests/c/warm_up.c",
    "tests/c/forecast.c",
    "tests/c/fluid.c",
    "tests/c/signal.c",
    "tests/c/leak.c",
    "tests/c/getters.c",
    "tests/c/writer.c",
];

/// A program in every build.
pub fn compiled(name: &str, sources: &[&str]) -> Vec<(Build, PathBuf)> {
    let compiled = |build| (build, compile(name, sources, build));
    builds().into_iter().map(compiled).collect()
}

/// The program that answers requests, in every build.
pub fn programs() -> &'static [(Build, PathBuf)] {
    static PROGRAMS: OnceLock<Vec<(Build, PathBuf)>> = OnceLock::new();
    PROGRAMS.get_or_init(|| compiled("vectors", VECTORS))
}

/// The answers of one build of the program to requests.
pub fn answers_of(
    name: &str,
    requests: &[Request],
    (build, program): &(Build, PathBuf),
) -> Vec<String> {
    let asked = scratch(&format!("{name}-{build}.requests"));
    let answered = scratch(&format!("{name}-{build}.answers"));
    fs::write(&asked, write_requests(requests)).expect("requests write");
    run(program, &[&asked, &answered]);
    let answers = read_answers(&fs::read(&answered).expect("answers are there"));
    assert_eq!(answers.len(), requests.len());
    answers
}

/// The answers of the build that sees most: sanitized where that is to be had.
pub fn answers(name: &str, requests: &[Request]) -> Vec<String> {
    let best = programs().iter().max_by_key(|(build, _)| build.sanitized);
    answers_of(name, requests, best.expect("there are builds"))
}

pub fn request(op: &str, args: &[&str]) -> Request {
    Request {
        op: op.into(),
        args: args.iter().map(ToString::to_string).collect(),
    }
}

pub fn told<T>(answer: Result<T, Error>, write: impl FnOnce(T) -> String) -> String {
    answer.map_or_else(|error| format!("{{\"error\":{}}}", error.to_json()), write)
}

/// A text as JSON.
pub fn parsed(text: &str) -> Value {
    serde_json::from_str(text).expect("JSON")
}
