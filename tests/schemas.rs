//! The JSON Schemas of `core/schemas`, held to the library by a general-purpose validator.

mod document_corpus;
mod vector_cases;

use brimline::check::{
    BySheet, Certainty, Changed, DrainedWhy, Grade, Job, MeasuredBy, PlugState, SeepageClass,
    Source, StripResult, Toward, Trend, Turns,
};
use brimline::procedure::{
    Counts, Defect, EngineState, MethodKind, Seal, Severity, Sign, Threadlocker, Warming,
};
use brimline::{Act, Error, ErrorKind, Journal, Measures, Options, Pack, Verdict, evaluate_with};
use document_corpus::{
    accepted_journals, accepted_packs, assembled, fullest_journal, fullest_pack,
};
use jsonschema::Validator;
use serde_json::{Map, Value, json};
use std::collections::BTreeSet;
use std::fs;
use vector_cases::{answer, cases, root};

fn schema(name: &str) -> Value {
    let path = root().join(format!("core/schemas/{name}.schema.json"));
    let text = fs::read_to_string(path).expect("the schema reads");
    serde_json::from_str(&text).expect("a schema is JSON")
}

fn validator(schema: &Value) -> Validator {
    jsonschema::draft202012::options()
        .should_validate_formats(true)
        .build(schema)
        .expect("a schema is one of draft 2020-12")
}

/// What the validator says against a document.
fn said(validator: &Validator, document: &Value) -> Vec<String> {
    validator
        .iter_errors(document)
        .map(|error| format!("{}: {error}", error.instance_path()))
        .collect()
}

fn assert_none(failures: Vec<String>) {
    assert!(
        failures.is_empty(),
        "{} failures:\n{}",
        failures.len(),
        failures.join("\n")
    );
}

#[test]
fn the_schemas_are_schemas() {
    for name in ["pack", "journal", "result", "error"] {
        let schema = schema(name);
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

fn each_object(value: &Value, act: &mut dyn FnMut(&Map<String, Value>)) {
    match value {
        Value::Object(members) => {
            act(members);
            members.values().for_each(|value| each_object(value, act));
        }
        Value::Array(items) => items.iter().for_each(|value| each_object(value, act)),
        _ => {}
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
        let against = match answer.get("error") {
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

/// The closed lists of words, each where the schema has it.
#[test]
fn words_are_those_of_the_library() {
    let lists: &[(&str, &str, &[&str])] = &[
        ("pack", "/$defs/measures", Measures::SLUGS),
        ("pack", "/$defs/method/properties/kind", MethodKind::SLUGS),
        ("pack", "/$defs/method/properties/warming", Warming::SLUGS),
        ("pack", "/$defs/sign", Sign::SLUGS),
        (
            "pack",
            "/$defs/conditions/properties/engine",
            EngineState::SLUGS,
        ),
        ("pack", "/$defs/leak_limit/properties/counts", Counts::SLUGS),
        ("pack", "/$defs/closing/properties/seal", Seal::SLUGS),
        (
            "pack",
            "/$defs/closing/properties/threadlocker",
            Threadlocker::SLUGS,
        ),
        ("pack", "/$defs/caution/properties/acts/items", Act::SLUGS),
        ("journal", "/$defs/measures", Measures::SLUGS),
        ("journal", "/properties/job", Job::SLUGS),
        (
            "journal",
            "/$defs/entry_level/properties/toward",
            Toward::SLUGS,
        ),
        (
            "journal",
            "/$defs/entry_engine/properties/state",
            EngineState::SLUGS,
        ),
        (
            "journal",
            "/$defs/entry_temperature/properties/source",
            Source::SLUGS,
        ),
        (
            "journal",
            "/$defs/entry_plug/properties/state",
            PlugState::SLUGS,
        ),
        (
            "journal",
            "/$defs/entry_flow/properties/grade",
            Grade::SLUGS,
        ),
        (
            "journal",
            "/$defs/entry_flow/properties/trend",
            Trend::SLUGS,
        ),
        (
            "journal",
            "/$defs/entry_flow/properties/captured_by",
            MeasuredBy::SLUGS,
        ),
        (
            "journal",
            "/$defs/entry_added/properties/measured_by",
            MeasuredBy::SLUGS,
        ),
        (
            "journal",
            "/$defs/entry_drained/properties/measured_by",
            MeasuredBy::SLUGS,
        ),
        (
            "journal",
            "/$defs/entry_drained/properties/why",
            DrainedWhy::SLUGS,
        ),
        (
            "journal",
            "/$defs/entry_fluid/properties/coolant_strip",
            StripResult::SLUGS,
        ),
        (
            "journal",
            "/$defs/entry_seepage/properties/class",
            SeepageClass::SLUGS,
        ),
        ("result", "/$defs/verdict", Verdict::SLUGS),
        ("result", "/$defs/by_sheet", BySheet::SLUGS),
        ("result", "/$defs/certainty", Certainty::SLUGS),
        (
            "result",
            "/properties/findings/items/properties/severity",
            Severity::SLUGS,
        ),
        (
            "result",
            "/properties/flip/items/properties/turns",
            Turns::SLUGS,
        ),
        (
            "result",
            "/properties/flip/items/properties/changed",
            Changed::SLUGS,
        ),
    ];
    let mut enums = 0;
    for name in ["pack", "journal", "result"] {
        each_object(&schema(name), &mut |object| {
            enums += usize::from(object.contains_key("enum"));
        });
    }
    assert_eq!(lists.len(), enums, "a list of words is not compared");
    for (name, place, words) in lists {
        let listed = schema(name)
            .pointer(place)
            .map(|about| about["enum"].clone());
        assert_eq!(listed, Some(json!(words)), "{name} {place}");
    }
    let bias = &schema("pack")["$defs"]["method"]["properties"]["bias"]["properties"];
    let members: BTreeSet<&str> = bias
        .as_object()
        .expect("an object")
        .keys()
        .map(String::as_str)
        .collect();
    assert_eq!(members, Defect::SLUGS.iter().copied().collect());
    let kinds: Vec<Value> = ErrorKind::ALL
        .iter()
        .map(|kind| json!({"properties": {"kind": {"const": kind.slug()}, "code": {"const": kind.code()}}}))
        .collect();
    assert_eq!(schema("error")["$defs"]["pair"]["oneOf"], json!(kinds));
}

/// One document with one thing changed.
struct Mutant {
    /// Where, with list places left out and the kind of entry said.
    place: String,
    what: String,
    document: Value,
}

/// What each value is changed to: one of every type, and words that no list has.
fn strangers(own: &Value) -> Vec<Value> {
    let mut all = vec![
        json!(null),
        json!(true),
        json!(false),
        json!(7),
        json!(-1),
        json!(1.5),
        json!(""),
        json!(" "),
        json!("no such word"),
        json!([]),
        json!([7]),
        json!({}),
        json!({"no_such_member": 7}),
    ];
    all.retain(|value| value != own);
    all
}

/// Every mutant of a document whose place and change were not seen before.
fn mutants(document: &Value, seen: &mut BTreeSet<String>) -> Vec<Mutant> {
    let mut places = Vec::new();
    gather(document, String::new(), String::new(), &mut places);
    let mut out = Vec::new();
    for (pointer, place) in places {
        let own = document
            .pointer(&pointer)
            .expect("the place is in it")
            .clone();
        let mut add = |what: String, changed: Option<Value>| {
            if seen.insert(format!("{place} {what}")) {
                let mut other = document.clone();
                match changed {
                    Some(value) => *other.pointer_mut(&pointer).expect("it is there") = value,
                    None => remove(&mut other, &pointer),
                }
                out.push(Mutant {
                    place: place.clone(),
                    what,
                    document: other,
                });
            }
        };
        for stranger in strangers(&own) {
            add(format!("becomes {stranger}"), Some(stranger));
        }
        if let Value::Object(members) = &own {
            for (key, value) in [("no_such_member", json!(7)), ("ext", json!([null]))] {
                let mut more = members.clone();
                if more.insert(key.into(), value).is_none() {
                    add(format!("gains {key}"), Some(Value::Object(more)));
                }
            }
        }
        if !pointer.is_empty() {
            add("is gone".into(), None);
        }
    }
    out
}

/// Every place of a document but those inside `ext`, with its spelling; what stands beside it belongs to it.
fn gather(value: &Value, pointer: String, mut place: String, out: &mut Vec<(String, String)>) {
    let mut inner = Vec::new();
    match value {
        Value::Object(members) => {
            let kind = members.get("kind").and_then(Value::as_str).unwrap_or("");
            let names: Vec<&str> = members.keys().map(String::as_str).collect();
            place = format!("{place}{kind}{{{}}}", names.join(" "));
            for (key, value) in members.iter().filter(|(key, _)| *key != "ext") {
                inner.push((value, format!("{pointer}/{key}"), format!("{place}.{key}")));
            }
        }
        Value::Array(items) => {
            for (index, item) in items.iter().enumerate() {
                inner.push((item, format!("{pointer}/{index}"), format!("{place}[]")));
            }
        }
        _ => {}
    }
    out.push((pointer, place));
    for (value, pointer, place) in inner {
        gather(value, pointer, place, out);
    }
}

fn remove(document: &mut Value, pointer: &str) {
    let (parent, last) = pointer.rsplit_once('/').expect("it is not the root");
    match document.pointer_mut(parent).expect("it has a parent") {
        Value::Object(members) => {
            members.remove(last);
        }
        Value::Array(items) => {
            items.remove(last.parse().expect("a place in a list"));
        }
        _ => unreachable!("only objects and lists have places"),
    }
}

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
fn disagreements(
    schema: &Validator,
    mutants: &[Mutant],
    read: impl Fn(&str) -> Result<(), Error>,
) -> Vec<String> {
    let disagreement = |mutant: &Mutant| {
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
    mutants.iter().filter_map(disagreement).collect()
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
    assert!(mutants.len() > 3_000, "only {} mutants", mutants.len());
    assert_none(disagreements(
        &validator(&schema("pack")),
        &mutants,
        read_pack,
    ));
}

#[test]
fn schema_and_library_agree_on_journals() {
    let texts = accepted_journals()
        .into_values()
        .map(|journal| journal.text);
    let mutants = journal_mutants(texts.filter(|text| read_journal(text).is_ok()));
    assert!(mutants.len() > 3_000, "only {} mutants", mutants.len());
    assert_none(disagreements(
        &validator(&schema("journal")),
        &mutants,
        read_journal,
    ));
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
        let found = disagreements(&validator(&wrong), &pack_mutants, read_pack);
        assert!(!found.is_empty(), "pack change {index} goes unseen");
    }
    for (index, change) in journals.iter().enumerate() {
        let mut wrong = schema("journal");
        change(&mut wrong);
        let found = disagreements(&validator(&wrong), &journal_mutants, read_journal);
        assert!(!found.is_empty(), "journal change {index} goes unseen");
    }
}

/// Every member of every object of the two schemas stands in some accepted document.
#[test]
fn every_member_is_used_by_a_document() {
    let mut places = Vec::new();
    for text in accepted_packs().values() {
        let pack = serde_json::from_str(text).expect("JSON");
        gather(&pack, String::new(), "pack".into(), &mut places);
    }
    for journal in accepted_journals().values() {
        let journal = assembled(&journal.text);
        gather(&journal, String::new(), "journal".into(), &mut places);
    }
    // `gather` leaves ext out; where it stands, it is among the names of its object.
    let used: BTreeSet<&str> = places.iter().map(|(_, place)| place.as_str()).collect();
    let mut unused = Vec::new();
    for name in ["pack", "journal"] {
        each_object(&schema(name), &mut |object| {
            let members = object.get("properties").and_then(Value::as_object);
            let kind = members
                .and_then(|members| members.get("kind")?.get("const")?.as_str())
                .unwrap_or("");
            for member in members.into_iter().flat_map(Map::keys) {
                let in_names = |place: &&&str| {
                    let mut objects = place.split(['{', '}']);
                    let kinds = place.contains(&format!("{kind}{{"));
                    kinds && objects.any(|names| names.split(' ').any(|own| own == member))
                };
                if used.iter().find(in_names).is_none() {
                    unused.push(format!("{name} {kind} {member}"));
                }
            }
        });
    }
    assert_none(unused);
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
