//! The closed lists of words are those of the library.

use super::validator::{each_object, schema};
use brimline::check::{
    BySheet, Certainty, Changed, DrainedWhy, Grade, Job, MeasuredBy, PlugState, SeepageClass,
    Source, StripResult, Toward, Trend, Turns,
};
use brimline::procedure::{
    Counts, Defect, EngineState, MethodKind, Seal, Severity, Sign, Threadlocker, Warming,
};
use brimline::warm_up::{Method, Reason};
use brimline::{Act, ErrorKind, Measures, Verdict};
use serde_json::{Value, json};
use std::collections::BTreeSet;

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
        ("result", "/$defs/outlook/properties/method", Method::SLUGS),
        ("result", "/$defs/outlook/properties/reason", Reason::SLUGS),
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
