//! The schemas of what many records say together, and of what one job leaves for the disposal log.

use super::members::shown;
use super::mutant::{Mutant, mutants};
use super::records::resealed;
use super::validator::{assert_none, said, schema, validator};
use crate::vector_cases::{answer, cases};
use brimline::{History, Pack, Record};
use serde_json::{Value, json};
use std::collections::BTreeSet;

/// Each operation, and the schema of what it answers.
const ANSWERS: [(&str, &str); 5] = [
    ("history", "history"),
    ("comebacks", "comebacks"),
    ("follow_up", "follow-up"),
    ("audit", "audit"),
    ("shadow", "shadow"),
];

/// What is answered to the vectors of an operation, by their names, and to a record that only another hand can seal.
fn answers(op: &str) -> Vec<(String, Value)> {
    let own = cases().into_iter().filter(|case| case.request.op == op);
    let told = own
        .filter(|case| case.expected.is_ok())
        .map(|case| (case.name.clone(), parsed(&answer(&case.request))));
    let other = (op == "history").then(uncounted);
    told.chain(other).collect()
}

fn parsed(text: &str) -> Value {
    serde_json::from_str(text).expect("JSON")
}

/// The history of a record whose count is more than an amount holds.
fn uncounted() -> (String, Value) {
    let pack = Pack::embedded().expect("the embedded pack reads");
    let journal = r#"{"format":"brimline-journal/1","procedure":"pipit-level","job":"check",
        "subject":{"vehicle":"Tarnik Dale 12"},"entries":[]}"#;
    let record = Record::seal(&pack, journal).expect("it seals");
    let record = resealed(record.to_json(), r#""used":"0 L""#, r#""used":null"#);
    let record = Record::reopen(&record).expect("a count may be null");
    let told = parsed(&History::of(&[record]).to_json());
    ("a count that is not told".into(), told)
}

fn invalid(schema: &Value, answers: &[(String, Value)]) -> Vec<String> {
    let validator = validator(schema);
    let failures = answers.iter().flat_map(|(name, told)| {
        let against = said(&validator, told).into_iter();
        against.map(move |what| format!("{name}: {what}"))
    });
    failures.collect()
}

#[test]
fn what_many_records_say_is_valid() {
    for (op, name) in ANSWERS {
        let answers = answers(op);
        assert!(answers.len() >= 10, "only {} of {op}", answers.len());
        assert_none(invalid(&schema(name), &answers));
    }
}

/// A disposal log takes what an invoice says of it.
#[test]
fn waste_is_that_of_an_invoice() {
    let answers = answers("waste");
    assert!(answers.len() >= 4, "only {}", answers.len());
    let waste = json!({"$ref": "urn:brimline:schema:invoice:1#/$defs/waste"});
    assert_none(invalid(&waste, &answers));
    let mut spoiled = answers.clone();
    for (_, told) in &mut spoiled {
        told["barrel"] = json!(1);
    }
    assert_eq!(invalid(&waste, &spoiled).len(), answers.len());
}

#[test]
fn every_member_is_answered_and_every_optional_one_is_absent_once() {
    for (op, name) in ANSWERS {
        let documents: Vec<Value> = answers(op).into_iter().map(|(_, told)| told).collect();
        let (unused, always_there) = shown(name, &documents);
        assert_none(unused);
        assert_none(always_there);
    }
}

/// The members that hold a text nobody can foresee.
const FREE: [&str; 5] = ["vehicle", "unit", "job_id", "by", "last_opened"];

fn is_free(own: &str, parent: &str, name: &str) -> bool {
    FREE.contains(&own) || (own, name) == ("job", "shadow") || parent == "prices" && own != "digest"
}

/// The members that are intervals.
const INTERVALS: [&str; 7] = [
    "as_found",
    "net",
    "now",
    "lost",
    "to_limit",
    "per_1000_km",
    "per_30_days",
];

/// The lists that are never empty, each with its schema.
const NEVER_EMPTY: [(&str, &str); 3] = [
    ("visits", "history"),
    ("because", "follow-up"),
    ("items", "audit"),
];

/// The member a mutant is about, without the names beside it, and the one that holds it.
fn place(mutant: &Mutant) -> (&str, &str) {
    let mut steps = mutant
        .place
        .rsplit('.')
        .map(|step| step.split('{').next().unwrap_or_default());
    (
        steps.next().unwrap_or_default(),
        steps.next().unwrap_or_default(),
    )
}

/// Whether a value that was changed might stand in the answer to other records.
fn might_be(mutant: &Mutant, now: &Value, name: &str) -> bool {
    let (own, parent) = place(mutant);
    let is_arg = |value: &Value| value.is_string() || value.is_i64();
    match (&mutant.was, now) {
        (_, now) if parent == "args" => is_arg(now),
        (_, now) if own == "fields[]" => now.is_string(),
        (Value::Object(_), Value::Object(members)) if own == "args" => members.values().all(is_arg),
        (Value::Object(_), Value::Object(members)) => {
            ["counts", "grades"].contains(&own) && members.is_empty()
        }
        (Value::Array(_), Value::Array(items)) => {
            let is_some = INTERVALS.contains(&own) || NEVER_EMPTY.contains(&(own, name));
            let are_entries = own == "entries" && items.iter().all(Value::is_u64);
            !is_some && (items.is_empty() || are_entries)
        }
        (Value::Number(_), now) => now.is_u64(),
        (Value::Bool(_), now) => now.is_boolean(),
        (Value::String(_), Value::String(text)) => {
            is_free(own, parent, name) && !text.trim().is_empty()
        }
        // An end of an interval.
        (Value::String(_), Value::Null) => own
            .strip_suffix("[]")
            .is_some_and(|own| INTERVALS.contains(&own)),
        _ => false,
    }
}

#[test]
fn what_no_records_could_say_is_refused() {
    for (op, name) in ANSWERS {
        let (validator, mut seen) = (validator(&schema(name)), BTreeSet::new());
        let answers = answers(op).into_iter();
        let mutants: Vec<Mutant> = answers
            .flat_map(|(_, told)| mutants(&told, &mut seen))
            .collect();
        assert!(mutants.len() > 300, "only {} of {op}", mutants.len());
        let mut failures = Vec::new();
        for mutant in &mutants {
            // What may be absent is told by the answers themselves.
            let Some(now) = &mutant.now else { continue };
            let valid = validator.is_valid(&mutant.document);
            if valid != might_be(mutant, now, name) {
                failures.push(format!("{name}: {} {}: {valid}", mutant.place, mutant.what));
            }
        }
        assert_none(failures);
    }
}
