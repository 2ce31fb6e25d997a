//! Records, sealed and spoiled.

use super::validator::{assert_none, said, schema, validator};
use crate::vector_cases::{answer, cases};
use brimline::Record;
use brimline::document::digest;
use serde_json::Value;

fn sealed() -> Vec<(String, String)> {
    let seals = cases().into_iter().filter(|case| case.request.op == "seal");
    seals
        .filter(|case| case.expected.is_ok())
        .map(|case| (case.name.clone(), answer(&case.request)))
        .collect()
}

#[test]
fn sealed_records_are_valid() {
    let schema = validator(&schema("record"));
    let failures = sealed().into_iter().flat_map(|(name, record)| {
        let said = said(&schema, &serde_json::from_str(&record).expect("JSON"));
        said.into_iter().map(move |what| format!("{name}: {what}"))
    });
    assert_none(failures.collect());
}

/// Sealed by another hand, so that the digest is right and what it is over is not what the library wrote.
pub fn resealed(record: &str, from: &str, to: &str) -> String {
    let before = record[..record.len() - 77].replacen(from, to, 1);
    let digest = digest(&format!("{before}}}"));
    format!(r#"{before},"digest":"{digest}"}}"#)
}

#[test]
fn schema_and_library_refuse_the_same_records() {
    let schema = validator(&schema("record"));
    let (_, record) = sealed().remove(0);
    let spoiled = [
        (r#""rules":"1","result""#, r#""result""#),
        (r#""rules":"1","result""#, r#""rules":1,"result""#),
        (r#""rules":"1","result""#, r#""rules":"","result""#),
        (
            r#""rules":"1","result""#,
            r#""rules":"1","mood":"good","result""#,
        ),
        (r#""version":"1""#, r#""version":null"#),
        (r#""id":"bare","#, ""),
        ("brimline-record/1", "brimline-record/9"),
        (r#""kind":"plug","#, r#""kind":"lid","#),
        (r#""verdict":"low""#, r#""verdict":"fine""#),
    ];
    for (from, to) in spoiled {
        let record = resealed(&record, from, to);
        let document: Value = serde_json::from_str(&record).expect("JSON");
        assert!(!schema.is_valid(&document), "the schema takes {to}");
        assert!(Record::reopen(&record).is_err(), "the library takes {to}");
    }
}
