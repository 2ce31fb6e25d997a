//! Formats, their schemas, and what several schemas define.

use super::validator::{assert_none, names, schema};
use crate::vector_cases::root;
use brimline::versions;
use serde_json::{Map, Value};
use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::Path;

/// The formats that the code of the library names as its own.
fn written(folder: &Path, formats: &mut BTreeSet<String>) {
    for entry in fs::read_dir(folder).expect("the folder is there") {
        let path = entry.expect("a folder lists").path();
        if path.is_dir() {
            written(&path, formats);
        } else {
            let code = fs::read_to_string(&path).expect("a source file reads");
            let own = code.split("const FORMAT: &str = \"").skip(1);
            formats.extend(own.filter_map(|rest| rest.split('"').next().map(String::from)));
        }
    }
}

/// A format that is read or written is among the versions, and has its schema; no other schema names a format of its own.
#[test]
fn every_format_is_told_and_has_its_schema() {
    let mut own = BTreeSet::new();
    written(&root().join("core/src"), &mut own);
    let told = serde_json::to_value(versions().documents).expect("JSON");
    let told = told.as_object().expect("an object");
    let expected: Map<String, Value> = own
        .iter()
        .map(|format| {
            let name = format
                .trim_start_matches("brimline-")
                .trim_end_matches("/1");
            (name.replace('-', "_"), Value::from(format.as_str()))
        })
        .collect();
    assert_eq!(told, &expected);
    let mut held = BTreeSet::new();
    for name in names() {
        if let Some(format) = schema(&name)["properties"]["format"]["const"].as_str() {
            assert_eq!(format, format!("brimline-{name}/1"));
            held.insert(format.to_string());
        }
    }
    assert_eq!(held, own);
}

/// What several schemas define under one name is one thing: among what is answered, and among what is asked.
#[test]
fn shared_definitions_are_the_same() {
    let answers = [
        "result",
        "history",
        "comebacks",
        "follow-up",
        "audit",
        "shadow",
    ];
    let questions = [
        "journal",
        "asked",
        "particulars",
        "comeback-rules",
        "follow-up-rules",
    ];
    let (mut shared, mut failures) = (0, Vec::new());
    for names in [&answers[..], &questions[..]] {
        let mut defined: BTreeMap<String, Value> = BTreeMap::new();
        for name in names {
            let schema = schema(name);
            let definitions = schema["$defs"].as_object().expect("definitions").iter();
            // Ids are those of one document.
            for (word, about) in definitions.filter(|(word, _)| *word != "id") {
                match defined.get(word) {
                    None => drop(defined.insert(word.clone(), about.clone())),
                    Some(before) if before == about => shared += 1,
                    Some(_) => failures.push(format!("{name} defines {word} in its own way")),
                }
            }
        }
    }
    assert!(shared > 30, "only {shared}");
    assert_none(failures);
}
