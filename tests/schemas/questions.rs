//! The schemas of what a host asks with: a header, the question of an estimate, particulars, rules, old jobs.

use super::agreement::disagreements;
use super::members::shown;
use super::mutant::{Mutant, mutants};
use super::validator::{assert_none, said, schema, validator};
use crate::document_corpus::{accepted_journals, assembled, fullest_journal};
use crate::vector_cases::cases;
use brimline::estimate::Asked;
use brimline::record::{ComebackRules, FollowUpRules, OldJob};
use brimline::report::Particulars;
use brimline::{Error, Estimate, LevelCheck, Measures, Pack, PriceList, estimate};
use serde_json::{Value, json};
use std::collections::BTreeSet;
use std::sync::OnceLock;

/// A kind of question: its schema, how it is read, and documents of it.
struct Question {
    schema: &'static str,
    read: fn(&str) -> Result<(), Error>,
    documents: Vec<Value>,
}

fn pack() -> &'static Pack {
    static PACK: OnceLock<Pack> = OnceLock::new();
    PACK.get_or_init(|| Pack::embedded().expect("the embedded pack reads"))
}

fn questions() -> &'static [Question] {
    static ALL: OnceLock<Vec<Question>> = OnceLock::new();
    ALL.get_or_init(gathered)
}

fn gathered() -> Vec<Question> {
    let headers = accepted_journals().into_values().map(|journal| {
        let mut header = assembled(&journal.text);
        header
            .as_object_mut()
            .map(|header| header.remove("entries"));
        header
    });
    let old_jobs = given("shadow", 1).into_iter();
    let mut all = vec![
        Question {
            schema: "header",
            read: |text| LevelCheck::start(pack(), text).map(drop),
            documents: headers.collect(),
        },
        Question {
            schema: "asked",
            read: |text| Asked::from_json(text).map(drop),
            documents: given("estimate", 3),
        },
        Question {
            schema: "particulars",
            read: |text| Particulars::read(text, |_| ()),
            documents: given("page", 3),
        },
        Question {
            schema: "comeback-rules",
            read: |text| ComebackRules::from_json(text).map(drop),
            documents: given("comebacks", 2),
        },
        Question {
            schema: "follow-up-rules",
            read: |text| FollowUpRules::from_json(text).map(drop),
            documents: given("follow_up", 2),
        },
        Question {
            schema: "old-job",
            read: |text| OldJob::from_json(text, Some(Measures::Us)).map(drop),
            documents: old_jobs.collect(),
        },
    ];
    for question in &mut all {
        question.documents.push(fullest(question.schema));
    }
    all
}

/// The argument of an operation in every vector that has it; of many in one text, each.
fn given(op: &str, place: usize) -> Vec<Value> {
    let own = cases().into_iter().filter(|case| case.request.op == op);
    let texts = own.map(|case| case.request.args[place].clone());
    let lines = texts.flat_map(|text| {
        let whole = serde_json::from_str(&text).map(|document| vec![document]);
        whole.unwrap_or_else(|_| text.lines().map(parsed).collect())
    });
    lines.collect()
}

fn parsed(text: &str) -> Value {
    serde_json::from_str(text).expect("JSON")
}

/// Every member a question can have.
fn fullest(schema: &str) -> Value {
    match schema {
        "header" => {
            let mut header = parsed(&fullest_journal());
            header
                .as_object_mut()
                .map(|header| header.remove("entries"));
            header
        }
        "asked" => json!({
            "likely": "0.6 L", "planned": "0 L", "ceiling": "180.00 EUR", "on": "2026-03-02",
            "stock": {
                "full": [{"container": "sedge-thin-bottle", "count": 0}],
                "opened": [{"name": "red", "rest": "0.4 L", "fluid": "sedge-thin", "sealed": true,
                    "clean": false, "opened_on": "2025-09-03"}],
                "bulk": "60 L",
            },
        }),
        "particulars" => json!({
            "shop": ["Fernhollow Gear & Drive"], "adapter": "40 mm", "angle": "90 deg", "scan_unit": "°F",
            "container": "0.946 L", "record": "any", "prices": parsed(&prices().to_json()),
            "estimate": parsed(&promised().to_json()),
            "tool": {"name": "click wrench", "type": "setting_adjustable", "max": "25 N·m", "min": "5 N·m",
                "graduation": "0.5 N·m", "permissible": "0.04", "lever": "230 mm"},
        }),
        "comeback-rules" => json!({
            "soon_days": 0, "soon_distance": "1000 mi", "readings": 2, "entries": 3, "at_once_seconds": 0, "jobs": 2,
        }),
        "follow-up-rules" => json!({
            "allowed_shortage": "0.5 US qt", "marginal_distance": "300 mi", "marginal_days": 0,
            "short_distance": "1000 mi", "short_days": 0, "most_distance": "5000 mi", "most_days": 0,
        }),
        _ => json!({
            "id": "4711", "verdict": "at_level", "leak": "below", "journal": parsed(&fullest_journal()),
        }),
    }
}

fn prices() -> PriceList {
    PriceList::embedded().expect("the embedded list reads")
}

fn promised() -> Estimate {
    let header =
        r#"{"format":"brimline-journal/1","procedure":"pipit-level","edition":2,"job":"check"}"#;
    let check = LevelCheck::start(pack(), header).expect("it begins");
    estimate(&prices(), &check, &Asked::default()).expect("it has its prices")
}

/// Every change of every document that is read. Documents within a document have schemas of their own; what is changed
/// within them is seen there.
fn changed(question: &Question) -> Vec<Mutant> {
    let mut seen = BTreeSet::new();
    let read = question.documents.iter();
    let read = read.filter(|document| (question.read)(&document.to_string()).is_ok());
    let all = read.flat_map(|document| mutants(document, &mut seen));
    all.filter(|mutant| !is_within(&mutant.place)).collect()
}

fn is_within(place: &str) -> bool {
    [".prices", ".estimate", ".journal"].iter().any(|own| {
        let rest = place.strip_prefix(own).unwrap_or_default();
        rest.starts_with('.') || rest.contains("}.")
    })
}

#[test]
fn what_is_read_is_valid() {
    for question in questions() {
        let (validator, mut read) = (validator(&schema(question.schema)), 0);
        for document in &question.documents {
            if (question.read)(&document.to_string()).is_ok() {
                read += 1;
                assert_none(said(&validator, document));
            }
        }
        assert!(read > 1, "only {read} of {}", question.schema);
    }
}

#[test]
fn schema_and_library_agree_on_questions() {
    for question in questions() {
        let mutants = changed(question);
        assert!(
            mutants.len() > 100,
            "only {} of {}",
            mutants.len(),
            question.schema
        );
        let schema = validator(&schema(question.schema));
        assert_none(disagreements(&schema, &mutants, question.read).collect());
    }
}

/// The comparison can fail: a schema that lets in what it does not name is caught.
#[test]
fn a_question_that_is_open_is_caught() {
    for question in questions() {
        let mut wrong = schema(question.schema);
        wrong["additionalProperties"] = json!(true);
        let mutants = changed(question);
        let found = disagreements(&validator(&wrong), &mutants, question.read).next();
        assert!(found.is_some(), "{} may be open", question.schema);
    }
}

#[test]
fn every_member_is_used_by_a_question() {
    for question in questions() {
        assert_none(shown(question.schema, &question.documents).0);
    }
}

/// The least of every count is read, and one less is not; so is the most that every JSON reader keeps exact.
#[test]
fn the_ends_of_counts_are_those_of_the_library() {
    let mut counts = 0;
    for question in questions()
        .iter()
        .filter(|question| question.schema.ends_with("-rules"))
    {
        let (schema, read) = (schema(question.schema), question.read);
        let members = schema["properties"].as_object().expect("an object");
        for (name, about) in members
            .iter()
            .filter(|(_, about)| about["type"] == "integer")
        {
            counts += 1;
            let ends = [&about["minimum"], &about["maximum"]];
            let [least, most] = ends.map(|end| end.as_i64().expect("a count has both ends"));
            for (count, is_read) in [
                (least, true),
                (least - 1, false),
                (most, true),
                (most + 1, false),
            ] {
                let document = json!({name: count});
                assert_eq!(read(&document.to_string()).is_ok(), is_read, "{document}");
            }
        }
    }
    assert_eq!(counts, 8, "five of comebacks and three of follow-ups");
}
