//! Any bytes at all.

use super::documents::read;
use super::places::{faults_of_the_error, seen_elsewhere};
use crate::document_corpus::{accepted_journals, accepted_packs};
use crate::vector_cases::{answer, cases};
use brimline::{Error, ErrorKind, Pack, evaluate};
use proptest::prelude::*;
use proptest::test_runner::{RngAlgorithm, TestRng, TestRunner};
use serde_json::Value;
use std::env;

/// One edit of a text's bytes.
#[derive(Debug, Clone)]
enum Edit {
    Replace(prop::sample::Index, u8),
    Insert(prop::sample::Index, Vec<u8>),
    Remove(prop::sample::Index, usize),
    /// A piece of the text itself, elsewhere.
    Copy(prop::sample::Index, prop::sample::Index, usize),
}

fn edits() -> impl Strategy<Value = Vec<Edit>> {
    let place = any::<prop::sample::Index>;
    let telling = prop::sample::select(b"{}[]\",:\\0-9.eE+ \n\tntu\xc3\xa9\xf0".to_vec());
    let edit = prop_oneof![
        (place(), telling.clone()).prop_map(|(at, byte)| Edit::Replace(at, byte)),
        (place(), any::<u8>()).prop_map(|(at, byte)| Edit::Replace(at, byte)),
        (place(), prop::collection::vec(telling, 1..6))
            .prop_map(|(at, bytes)| Edit::Insert(at, bytes)),
        (place(), 1..40_usize).prop_map(|(at, count)| Edit::Remove(at, count)),
        (place(), place(), 1..200_usize).prop_map(|(from, to, count)| Edit::Copy(from, to, count)),
    ];
    prop::collection::vec(edit, 1..5)
}

fn edited(text: &str, edits: &[Edit]) -> String {
    let mut bytes = text.as_bytes().to_vec();
    for edit in edits {
        if bytes.is_empty() {
            break;
        }
        let len = bytes.len();
        match edit {
            Edit::Replace(at, byte) => bytes[at.index(len)] = *byte,
            Edit::Insert(at, piece) => {
                let at = at.index(len);
                bytes.splice(at..at, piece.iter().copied());
            }
            Edit::Remove(at, count) => {
                let at = at.index(len);
                bytes.drain(at..len.min(at + count));
            }
            Edit::Copy(from, to, count) => {
                let (from, to) = (from.index(len), to.index(len));
                let piece = bytes[from..len.min(from + count)].to_vec();
                bytes.splice(to..to, piece);
            }
        }
    }
    String::from_utf8_lossy(&bytes).into_owned()
}

/// Reads a text as everything it could be; never a panic, every error sound, and the same bytes each time.
fn survives(text: &str, pack: &Pack) -> Vec<String> {
    let (document, seen) = (serde_json::from_str::<Value>(text), seen_elsewhere(text));
    let answer = || {
        let journal = read(text);
        let told = match &journal {
            Ok(journal) => evaluate(pack, journal).expect("it was read").to_json(),
            Err(error) => error.to_json(),
        };
        let as_pack = Pack::from_json(text);
        let lint = as_pack.as_ref().map(|pack| pack.lint().len());
        (format!("{told}{lint:?}"), journal.err(), as_pack.err())
    };
    let ((first, journal, as_pack), (second, ..)) = (answer(), answer());
    let mut wrong = Vec::new();
    if first != second {
        wrong.push(format!("two answers: {first} and {second}"));
    }
    for error in [journal, as_pack].into_iter().flatten() {
        wrong.extend(faults_of_the_error(text, seen.as_ref(), &error));
        if error
            .faults()
            .any(|fault| fault.kind == ErrorKind::Internal)
        {
            wrong.push(format!("internal: {error}"));
        }
    }
    // Well-formed elsewhere is well-formed here, and the other way about.
    let refused_as_text = refusal_of_the_text(text);
    // What the other reader gives up on is not what is told apart here.
    let gives_up = |error: &serde_json::Error| {
        let said = error.to_string();
        said.starts_with("number out of range") || said.starts_with("recursion limit")
    };
    match document {
        Err(error) if gives_up(&error) => {}
        Ok(_) if refused_as_text => wrong.push("refused, and well-formed elsewhere".into()),
        Err(error) if !refused_as_text => wrong.push(format!("read, and elsewhere: {error}")),
        _ => {}
    }
    wrong
}

/// Whether a text is refused as no JSON at all.
fn refusal_of_the_text(text: &str) -> bool {
    let syntax = |error: &Error| error.faults().any(|fault| fault.kind == ErrorKind::Syntax);
    Pack::from_json(text)
        .err()
        .is_some_and(|error| syntax(&error))
}

/// The same cases each run; `BRIMLINE_SEED` starts from another seed.
fn runner(cases: u32) -> TestRunner {
    let seed: u64 =
        env::var("BRIMLINE_SEED").map_or(1, |seed| seed.parse().expect("a whole number"));
    let seed = [seed, 0, 0, 0].map(u64::to_le_bytes).concat();
    let config = ProptestConfig {
        cases,
        failure_persistence: None,
        ..ProptestConfig::default()
    };
    TestRunner::new_with_rng(config, TestRng::from_seed(RngAlgorithm::ChaCha, &seed))
}

#[test]
fn any_edit_of_a_document_is_answered() {
    let pack = Pack::embedded().expect("it reads");
    let mut texts: Vec<String> = accepted_packs().into_values().collect();
    texts.extend(
        accepted_journals()
            .into_values()
            .map(|journal| journal.text),
    );
    let chosen = (any::<prop::sample::Index>(), edits());
    runner(3_000)
        .run(&chosen, |(index, edits)| {
            let text = edited(&texts[index.index(texts.len())], &edits);
            prop_assert_eq!(survives(&text, &pack), Vec::<String>::new());
            Ok(())
        })
        .unwrap_or_else(|error| panic!("{error}"));
}

#[test]
fn any_text_at_all_is_answered() {
    let pack = Pack::embedded().expect("it reads");
    let text = prop_oneof![
        any::<String>(),
        "[\\[\\]{}:,\"0-9a-z\\\\ \n.eE+-]{0,60}",
        "(\\{\"(seq|at|kind|ext|entries)\":){1,6}(null|1|\"x\"|\\[\\])\\}{0,6}",
    ];
    runner(2_000)
        .run(&text, |text| {
            prop_assert_eq!(survives(&text, &pack), Vec::<String>::new());
            Ok(())
        })
        .unwrap_or_else(|error| panic!("{error}"));
}

#[test]
fn answers_are_the_same_each_time() {
    for case in cases().iter().step_by(7) {
        assert_eq!(
            answer(&case.request),
            answer(&case.request),
            "{}",
            case.name
        );
    }
}
