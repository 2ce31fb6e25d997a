//! What the library reads and what it answers is valid.

use super::validator::{assert_none, each_object, names, said, schema, validator};
use crate::document_corpus::{accepted_journals, accepted_packs, assembled};
use crate::vector_cases::{answer, cases};
use brimline::{Journal, Options, Pack, Verdict, evaluate_with};
use serde_json::{Value, json};

#[test]
fn the_schemas_are_schemas() {
    let names = names();
    assert!(names.len() >= 21, "only {} schemas", names.len());
    for name in &names {
        let schema = schema(name);
        assert_eq!(schema["$id"], format!("urn:brimline:schema:{name}:1"));
        assert!(
            jsonschema::draft202012::meta::is_valid(&schema),
            "{name} is no schema"
        );
        assert_eq!(
            schema["$schema"],
            "https://json-schema.org/draft/2020-12/schema"
        );
        // Every object is closed, every member described.
        let mut open = Vec::new();
        each_object(&schema, &mut |object| {
            let closed = object.get("additionalProperties");
            if object.contains_key("properties") && object.contains_key("type") {
                if closed != Some(&json!(false)) {
                    open.push(format!("{name}: open: {object:?}"));
                }
                for (member, about) in object["properties"].as_object().expect("an object") {
                    let words = about.get("description").or_else(|| {
                        let target = about.get("$ref")?.as_str()?.strip_prefix('#')?;
                        schema.pointer(target)?.get("description")
                    });
                    if words.is_none() && about.get("const").is_none() {
                        open.push(format!("{name}: {member} is not described"));
                    }
                }
            }
        });
        assert_none(open);
    }
}

#[test]
fn accepted_packs_are_valid() {
    let (schema, packs) = (validator(&schema("pack")), accepted_packs());
    assert!(packs.len() > 20, "only {} packs", packs.len());
    let failures = packs.iter().flat_map(|(name, text)| {
        let canonical = Pack::from_json(text).expect("it was read before").to_json();
        [text.as_str(), canonical.as_str()]
            .into_iter()
            .flat_map(|text| said(&schema, &serde_json::from_str(text).expect("JSON")))
            .map(|what| format!("{name}: {what}"))
            .collect::<Vec<_>>()
    });
    assert_none(failures.collect());
}

#[test]
fn accepted_journals_are_valid() {
    let (schema, journals) = (validator(&schema("journal")), accepted_journals());
    assert!(journals.len() > 200, "only {} journals", journals.len());
    let failures = journals.iter().flat_map(|(name, journal)| {
        let read = Journal::from_json(&journal.text, journal.measures).expect("it was read before");
        let canonical: Value = serde_json::from_str(&read.to_json()).expect("JSON");
        [assembled(&journal.text), canonical]
            .iter()
            .flat_map(|document| said(&schema, document))
            .map(|what| format!("{name}: {what}"))
            .collect::<Vec<_>>()
    });
    assert_none(failures.collect());
}

#[test]
fn every_answer_is_valid() {
    let (results, errors) = (validator(&schema("result")), validator(&schema("error")));
    let (mut told, mut refused, mut failures) = (0, 0, Vec::new());
    for case in cases() {
        let answer: Value = serde_json::from_str(&answer(&case.request)).expect("JSON");
        let is_result = ["evaluate", "live"].contains(&case.request.op.as_str());
        let against = match answer.get("error").filter(|error| error.is_object()) {
            Some(error) => {
                refused += 1;
                said(&errors, error)
            }
            None if is_result => {
                told += 1;
                said(&results, &answer)
            }
            None => continue,
        };
        let name = format!("{}: {}", case.file, case.name);
        failures.extend(against.into_iter().map(|what| format!("{name}: {what}")));
    }
    assert!(
        told > 300 && refused > 300,
        "{told} results, {refused} errors"
    );
    assert_none(failures);
}

/// With the flip and the reasons against every verdict, on every example.
#[test]
fn results_with_all_that_can_be_asked_are_valid() {
    let (schema, pack) = (
        validator(&schema("result")),
        Pack::embedded().expect("the embedded pack reads"),
    );
    let (mut flips, mut reasons, mut failures) = (0, 0, Vec::new());
    for (name, journal) in accepted_journals() {
        for (_, verdict) in Verdict::WORDS {
            let mut options = Options::default();
            options.flip = true;
            options.why_not = Some(*verdict);
            let Ok(evaluation) = evaluate_with(&pack, journal.text.as_str(), &options) else {
                continue;
            };
            flips += evaluation.flip().len();
            reasons += evaluation.why_not().len();
            let result = serde_json::from_str(&evaluation.to_json()).expect("JSON");
            failures.extend(
                said(&schema, &result)
                    .into_iter()
                    .map(|what| format!("{name}: {what}")),
            );
            if !name.ends_with(".json") {
                break;
            }
        }
    }
    assert!(
        flips > 10 && reasons > 10,
        "{flips} flips, {reasons} reasons"
    );
    assert_none(failures);
}
