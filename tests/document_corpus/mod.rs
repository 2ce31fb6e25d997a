//! The documents of the vectors, the examples and the embedded pack, and two that use every field there is.

#![allow(dead_code, reason = "each test binary uses its part of it")]

use crate::vector_cases::{Case, cases, root};
use brimline::{Journal, Measures, Pack};
use serde_json::Value;
use std::collections::BTreeMap;
use std::fs;

/// A journal and what its pack says of bare quarts.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct JournalText {
    pub text: String,
    pub measures: Option<Measures>,
}

pub fn embedded_pack() -> String {
    fs::read_to_string(root().join("core/packs/fernhollow.json")).expect("the embedded pack reads")
}

/// Every field of a pack.
pub fn fullest_pack() -> String {
    fs::read_to_string(root().join("tests/document_corpus/pack.json")).expect("it is there")
}

/// Every field of a journal, and every kind of entry.
pub fn fullest_journal() -> String {
    fs::read_to_string(root().join("tests/document_corpus/journal.json")).expect("it is there")
}

fn pack_text(case: &Case) -> Option<&str> {
    let with_pack = ["evaluate", "live", "pack"].contains(&case.request.op.as_str())
        || case.request.op.starts_with("pack_");
    with_pack.then(|| case.request.args[0].as_str())
}

/// Every pack of the vectors that is read under the default limits, once, by name.
pub fn accepted_packs() -> BTreeMap<String, String> {
    let cases = cases();
    let mut packs: BTreeMap<String, String> = cases
        .iter()
        .filter_map(|case| Some((pack_text(case)?, case)))
        .filter(|(text, _)| !text.is_empty() && Pack::from_json(text).is_ok())
        .map(|(text, case)| (text.to_string(), format!("{}: {}", case.file, case.name)))
        .collect();
    packs.insert(embedded_pack(), "the embedded pack".into());
    packs.insert(fullest_pack(), "the fullest pack".into());
    packs.into_iter().map(|(text, name)| (name, text)).collect()
}

/// Every journal of the vectors and examples that is read under the default limits, once, by name.
pub fn accepted_journals() -> BTreeMap<String, JournalText> {
    let mut journals: BTreeMap<JournalText, String> = BTreeMap::new();
    for case in cases() {
        if !["evaluate", "live"].contains(&case.request.op.as_str()) {
            continue;
        }
        let text = &case.request.args[0];
        let pack = if text.is_empty() {
            Pack::embedded()
        } else {
            Pack::from_json(text)
        };
        let Ok(pack) = pack else { continue };
        let journal = JournalText {
            text: case.request.args[1].clone(),
            measures: pack.measures(),
        };
        if Journal::from_json(&journal.text, journal.measures).is_ok() {
            journals.insert(journal, format!("{}: {}", case.file, case.name));
        }
    }
    for file in fs::read_dir(root().join("examples/journals")).expect("the examples are there") {
        let path = file.expect("a folder lists").path();
        let journal = JournalText {
            text: fs::read_to_string(&path).expect("an example reads"),
            measures: Pack::embedded().expect("it reads").measures(),
        };
        journals.insert(journal, path.display().to_string());
    }
    let fullest = JournalText {
        text: fullest_journal(),
        measures: None,
    };
    journals.insert(fullest, "the fullest journal".into());
    journals
        .into_iter()
        .map(|(journal, name)| (name, journal))
        .collect()
}

/// A journal as one document: JSON Lines are put together, without a last line that was cut off.
pub fn assembled(text: &str) -> Value {
    if let Ok(document) = serde_json::from_str::<Value>(text)
        && document.get("entries").is_some()
    {
        return document;
    }
    let mut lines = text.lines().filter(|line| !line.trim().is_empty());
    let mut document: Value = lines
        .next()
        .and_then(|line| serde_json::from_str(line).ok())
        .expect("the first line of JSON Lines is the header");
    let entries: Vec<Value> = lines
        .map_while(|line| serde_json::from_str(line).ok())
        .collect();
    document["entries"] = Value::Array(entries);
    document
}
