//! Schema and library refuse the same documents, as far as a schema can see.

use super::members::shown;
use super::mutant::{Mutant, mutants};
use super::validator::{assert_none, said, schema, validator};
use crate::document_corpus::{
    accepted_journals, accepted_packs, assembled, fullest_journal, fullest_pack,
};
use brimline::{Error, ErrorKind, Journal, Measures, Pack};
use jsonschema::Validator;
use serde_json::{Value, json};
use std::collections::BTreeSet;

/// The kinds of fault that a schema cannot see: what a text says as a quantity or a moment, and how the parts of
/// a document stand to each other.
const BEYOND_A_SCHEMA: &[ErrorKind] = &[
    ErrorKind::Sequence,
    ErrorKind::DuplicateId,
    ErrorKind::Cycle,
    ErrorKind::NotATime,
    ErrorKind::NotANumber,
    ErrorKind::TooManyDigits,
    ErrorKind::DecimalComma,
    ErrorKind::Fraction,
    ErrorKind::UnitMissing,
    ErrorKind::UnitUnknown,
    ErrorKind::UnitAmbiguous,
    ErrorKind::WrongKind,
];

/// Two more, by path: a fluid under `never` and another relation, and the `seq` of a replacing entry.
fn is_beyond_a_schema(fault: &brimline::Fault) -> bool {
    BEYOND_A_SCHEMA.contains(&fault.kind)
        || fault.kind == ErrorKind::Conflict
            && (fault.path.contains(".never[") || fault.path.ends_with("replaces.seq"))
}

/// Where the schema and the library do not agree on a mutant.
pub fn disagreements(
    schema: &Validator,
    mutants: &[Mutant],
    read: impl Fn(&str) -> Result<(), Error>,
) -> impl Iterator<Item = String> {
    let disagreement = move |mutant: &Mutant| {
        let valid = schema.is_valid(&mutant.document);
        let (agrees, library) = match read(&mutant.document.to_string()) {
            Ok(()) => (valid, "read".to_string()),
            Err(error) => {
                let structural = error.faults().any(|fault| !is_beyond_a_schema(fault));
                (!valid || !structural, format!("refused: {error}"))
            }
        };
        let schema = if valid { "valid" } else { "invalid" };
        (!agrees).then(|| format!("{} {}: {schema}, {library}", mutant.place, mutant.what))
    };
    mutants.iter().filter_map(disagreement)
}

fn pack_mutants(texts: impl IntoIterator<Item = String>) -> Vec<Mutant> {
    let mut seen = BTreeSet::new();
    texts
        .into_iter()
        .flat_map(|text| mutants(&serde_json::from_str(&text).expect("JSON"), &mut seen))
        .collect()
}

fn read_pack(text: &str) -> Result<(), Error> {
    Pack::from_json(text).map(drop)
}

fn journal_mutants(texts: impl IntoIterator<Item = String>) -> Vec<Mutant> {
    let mut seen = BTreeSet::new();
    texts
        .into_iter()
        .flat_map(|text| mutants(&assembled(&text), &mut seen))
        .collect()
}

/// Journals are read as on a pack of US measures, so that what a pack says of bare quarts plays no part.
fn read_journal(text: &str) -> Result<(), Error> {
    Journal::from_json(text, Some(Measures::Us)).map(drop)
}

#[test]
fn schema_and_library_agree_on_packs() {
    let mutants = pack_mutants(accepted_packs().into_values());
    assert!(mutants.len() > 1_000, "only {} mutants", mutants.len());
    let schema = validator(&schema("pack"));
    assert_none(disagreements(&schema, &mutants, read_pack).collect());
}

#[test]
fn schema_and_library_agree_on_journals() {
    let texts = accepted_journals()
        .into_values()
        .map(|journal| journal.text);
    let mutants = journal_mutants(texts.filter(|text| read_journal(text).is_ok()));
    assert!(mutants.len() > 1_000, "only {} mutants", mutants.len());
    let schema = validator(&schema("journal"));
    assert_none(disagreements(&schema, &mutants, read_journal).collect());
}

/// Each of these changes to a schema is seen by the comparison, so it can fail.
#[test]
fn a_wrong_schema_is_caught() {
    type Change = fn(&mut Value);
    let packs: &[Change] = &[
        |schema| schema["required"] = json!(["format", "id", "version", "title", "fluids"]),
        |schema| schema["$defs"]["fluid"]["additionalProperties"] = json!(true),
        |schema| schema["$defs"]["closing"]["properties"]["seal"] = json!({"type": "string"}),
        |schema| schema["$defs"]["leak_limit"]["oneOf"] = json!([{}]),
        |schema| schema["$defs"]["quantity"]["pattern"] = json!(""),
    ];
    let journals: &[Change] = &[
        |schema| schema["$defs"]["entry_flow"]["required"] = json!(["seq", "at", "kind", "grade"]),
        |schema| schema["$defs"]["entry_hold"]["required"] = json!(["seq", "at", "kind", "reason"]),
        |schema| schema["$defs"]["entry_note"]["additionalProperties"] = json!(true),
        |schema| {
            schema["$defs"]["entry_correction"]["properties"]["void"] = json!({"type": "boolean"})
        },
        |schema| schema["$defs"]["whole"] = json!({"type": "number"}),
    ];
    let pack_mutants = pack_mutants([fullest_pack()]);
    let journal_mutants = journal_mutants([fullest_journal()]);
    for (index, change) in packs.iter().enumerate() {
        let mut wrong = schema("pack");
        change(&mut wrong);
        let wrong = validator(&wrong);
        let found = disagreements(&wrong, &pack_mutants, read_pack).next();
        assert!(found.is_some(), "pack change {index} goes unseen");
    }
    for (index, change) in journals.iter().enumerate() {
        let mut wrong = schema("journal");
        change(&mut wrong);
        let wrong = validator(&wrong);
        let found = disagreements(&wrong, &journal_mutants, read_journal).next();
        assert!(found.is_some(), "journal change {index} goes unseen");
    }
}

/// Every member of the two schemas stands in some accepted document.
#[test]
fn every_member_is_used_by_a_document() {
    let journals = accepted_journals().into_values();
    let journals: Vec<Value> = journals.map(|journal| assembled(&journal.text)).collect();
    let packs = accepted_packs().into_values();
    let packs: Vec<Value> = packs
        .map(|text| serde_json::from_str(&text).expect("JSON"))
        .collect();
    assert_none(shown("journal", &journals).0);
    assert_none(shown("pack", &packs).0);
}

/// What a schema cannot say, each shown: valid, and yet refused.
#[test]
fn what_only_the_library_sees() {
    let packs = [
        r#"[{"id":"a","never":["b"],"mixes_with":["b"]}]"#,
        r#"[{"id":"a","replaces":["a"]}]"#,
        r#"[{"id":"a"},{"id":"a"}]"#,
        r#"[{"id":"a","density_15":"0 kg/m³"}]"#,
        r#"[{"id":"a","density_15":"838 mm²/s"}]"#,
    ];
    for fluids in packs {
        let text = format!(
            r#"{{"format":"brimline-pack/1","id":"p","version":"1","title":"t","fluids":{fluids},"procedures":[]}}"#
        );
        let document = serde_json::from_str(&text).expect("JSON");
        assert_eq!(said(&validator(&schema("pack")), &document), [""; 0]);
        assert!(read_pack(&text).is_err(), "{text}");
    }
    let entries = [
        // `seq` does not rise.
        r#"{"seq":1,"at":"2026-03-02T09:00:00Z","kind":"note","text":"a"},
           {"seq":1,"at":"2026-03-02T09:00:00Z","kind":"note","text":"b"}"#,
        // No such day.
        r#"{"seq":1,"at":"2026-03-02T09:00:00Z","kind":"note","text":"a"},
           {"seq":2,"at":"2026-03-02T09:00:00Z","kind":"added","volume":"1.5 lb"}"#,
        // The replacing entry has another place.
        r#"{"seq":1,"at":"2026-03-02T09:00:00Z","kind":"note","text":"a"},
           {"seq":2,"at":"2026-03-02T09:00:00Z","kind":"correction","of":1,"reason":"typed wrong",
            "replaces":{"seq":3,"at":"2026-03-02T09:00:00Z","kind":"note","text":"b"}}"#,
        // A whole number written with a point or a minus: whole to a schema, not to the library.
        r#"{"seq":1.0,"at":"2026-03-02T09:00:00Z","kind":"note","text":"a"}"#,
        r#"{"seq":-0,"at":"2026-03-02T09:00:00Z","kind":"note","text":"a"}"#,
    ];
    for entries in entries {
        let text = format!(
            r#"{{"format":"brimline-journal/1","procedure":"p","job":"check","entries":[{entries}]}}"#
        );
        let document = serde_json::from_str(&text).expect("JSON");
        assert_eq!(said(&validator(&schema("journal")), &document), [""; 0]);
        assert!(read_journal(&text).is_err(), "{text}");
    }
}
