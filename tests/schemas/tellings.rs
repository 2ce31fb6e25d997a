//! The schemas of messages and of profiles.

use super::mutant::mutants;
use super::validator::{assert_none, said, schema, validator};
use crate::vector_cases::cases;
use brimline::report::{Catalogue, Profile};
use brimline::{ErrorKind, Kind, Measures};
use serde_json::{Value, json};
use std::collections::BTreeSet;

fn parsed(text: &str) -> Value {
    serde_json::from_str(text).expect("JSON")
}

/// The documents of one operation's vectors, each with whether it is read.
fn documents(op: &str) -> Vec<(Value, bool)> {
    let own = cases().into_iter().filter(|case| case.request.op == op);
    let documents: Vec<_> = own
        .filter(|case| !case.name.contains("over the limit"))
        .map(|case| (parsed(&case.request.args[0]), case.expected.is_ok()))
        .collect();
    assert!(documents.len() > 5);
    documents
}

#[test]
fn what_is_read_is_valid() {
    let english = parsed(&Catalogue::english().to_json());
    assert_none(said(&validator(&schema("messages")), &english));
    for name in ["messages", "profile"] {
        let validator = validator(&schema(name));
        for (document, _) in documents(name).iter().filter(|(_, is_read)| *is_read) {
            assert_none(said(&validator, document));
        }
    }
}

/// What a document of messages is beside its texts, which no schema can hold against the English ones.
#[test]
fn the_frame_of_messages_is_held() {
    let schema = validator(&schema("messages"));
    let english = parsed(&Catalogue::english().to_json());
    for (member, wrong) in [
        ("format", json!("brimline-messages/2")),
        ("language", json!("High Fern")),
        ("language", json!("e")),
        ("decimal_sign", json!("'")),
        ("plurals", json!({"several": "n = 3"})),
        ("plurals", json!({"one": ""})),
        ("messages", json!([])),
        ("more", json!(1)),
    ] {
        let mut document = english.clone();
        document[member] = wrong.clone();
        assert!(!schema.is_valid(&document), "{member} {wrong}");
        assert!(Catalogue::from_json(&document.to_string()).is_err());
    }
    for text in [
        json!(" "),
        json!(1),
        json!({"one": "x"}),
        json!({"other": ""}),
    ] {
        let mut document = english.clone();
        document["messages"]["finding"]["torn_line"] = text.clone();
        assert!(!schema.is_valid(&document), "{text}");
        assert!(Catalogue::from_json(&document.to_string()).is_err());
    }
}

#[test]
fn schema_and_library_agree_on_profiles() {
    let schema = validator(&schema("profile"));
    let mut seen = BTreeSet::new();
    let read = documents("profile").into_iter().filter(|(_, read)| *read);
    let all: Vec<_> = read
        .flat_map(|(document, _)| mutants(&document, &mut seen))
        .collect();
    assert!(all.len() > 50, "only {} mutants", all.len());
    let beyond = [
        ErrorKind::UnitUnknown,
        ErrorKind::UnitAmbiguous,
        ErrorKind::UnitMissing,
        ErrorKind::WrongKind,
    ];
    for mutant in &all {
        let valid = schema.is_valid(&mutant.document);
        let agrees = match Profile::from_json(&mutant.document.to_string()) {
            Ok(_) => valid,
            Err(error) => !valid || error.faults().all(|fault| beyond.contains(&fault.kind)),
        };
        assert!(agrees, "{} {}: {valid}", mutant.place, mutant.what);
    }
}

#[test]
fn kinds_and_measures_are_those_of_the_library() {
    let profile = schema("profile");
    assert_eq!(
        profile["properties"]["measures"]["enum"],
        json!(Measures::SLUGS)
    );
    let kinds = profile["properties"]["units"]["properties"].as_object();
    let kinds: BTreeSet<_> = kinds.expect("kinds").keys().map(String::as_str).collect();
    assert_eq!(kinds, Kind::ALL.iter().map(|kind| kind.slug()).collect());
}
