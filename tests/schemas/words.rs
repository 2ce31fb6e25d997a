//! The closed lists of words are those of the library.

use super::validator::{each_object, schema};
use crate::vector_cases::root;
use brimline::check::{
    BySheet, Certainty, Changed, DrainedWhy, Grade, Job, MeasuredBy, PlugState, SeepageClass,
    Source, StripResult, Toward, Trend, Turns,
};
use brimline::estimate::{Billed, FluidPolicy, PaidBy, Policy, Stream, What, Why};
use brimline::leak::Trend as LossTrend;
use brimline::money::Place;
use brimline::procedure::{
    Counts, Defect, EngineState, MethodKind, Seal, Severity, Sign, Threadlocker, Warming,
};
use brimline::record::{Grade as EvidenceGrade, OldJob, shadow};
use brimline::report::messages;
use brimline::torque::ToolType;
use brimline::volume::OpenedDefect;
use brimline::warm_up::{Method, Reason};
use brimline::{Act, ErrorKind, Measures, Pack, Rounding, Verdict};
use serde_json::{Value, json};
use std::collections::BTreeSet;
use std::fs;

/// Lists of words, each with its schema and its place there.
type Lists<'l> = [(&'l str, &'l str, &'l [&'l str])];

/// Every closed list of these schemas is the one it is compared with.
fn compare(schemas: &[&str], lists: &Lists<'_>) {
    let mut enums = 0;
    for name in schemas {
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
}

/// The closed lists of words, each where the schema has it.
#[test]
fn words_are_those_of_the_library() {
    let lists: &Lists<'_> = &[
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
    compare(&["pack", "journal", "result"], lists);
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

#[test]
fn words_of_a_counter_are_those_of_the_library() {
    let strengths: Vec<&str> = Threadlocker::SLUGS
        .iter()
        .copied()
        .filter(|word| *word != Threadlocker::None.slug())
        .collect();
    let lists: &Lists<'_> = &[
        (
            "prices",
            "/properties/rounding/properties/mode",
            Rounding::SLUGS,
        ),
        (
            "prices",
            "/properties/rounding/properties/place",
            Place::SLUGS,
        ),
        (
            "prices",
            "/properties/fluids/items/properties/billing/properties/policy",
            FluidPolicy::SLUGS,
        ),
        (
            "prices",
            "/properties/threadlocker/items/properties/strength",
            &strengths,
        ),
        (
            "prices",
            "/properties/supplies/items/properties/jobs/items",
            Job::SLUGS,
        ),
        (
            "prices",
            "/properties/labour/items/properties/billed",
            Billed::SLUGS,
        ),
        (
            "prices",
            "/properties/labour/items/properties/jobs/items",
            Job::SLUGS,
        ),
        (
            "prices",
            "/properties/leak_search/properties/billed",
            Billed::SLUGS,
        ),
        (
            "prices",
            "/properties/wait/properties/paid_by",
            PaidBy::SLUGS,
        ),
        (
            "prices",
            "/properties/disposal/items/properties/stream",
            Stream::SLUGS,
        ),
        ("estimate", "/properties/job", Job::SLUGS),
        (
            "estimate",
            "/properties/stock/properties/unused/items/properties/reasons/items",
            OpenedDefect::SLUGS,
        ),
        ("estimate", "/$defs/line/properties/id", What::SLUGS),
        (
            "estimate",
            "/$defs/line/properties/cause/properties/policy",
            Policy::SLUGS,
        ),
        (
            "estimate",
            "/$defs/finding/properties/severity",
            Severity::SLUGS,
        ),
        ("invoice", "/properties/job", Job::SLUGS),
        ("invoice", "/$defs/line/properties/id", What::SLUGS),
        (
            "invoice",
            "/$defs/line/properties/cause/properties/policy",
            Policy::SLUGS,
        ),
        (
            "invoice",
            "/$defs/finding/properties/severity",
            Severity::SLUGS,
        ),
        ("invoice", "/$defs/variance/properties/id", What::SLUGS),
        (
            "invoice",
            "/$defs/variance/properties/why/items",
            Why::SLUGS,
        ),
        ("invoice", "/$defs/waste/properties/stream", Stream::SLUGS),
        (
            "particulars",
            "/properties/tool/properties/type",
            ToolType::SLUGS,
        ),
    ];
    let schemas = ["prices", "estimate", "invoice", "asked", "particulars"];
    compare(&schemas, lists);
}

#[test]
fn words_of_many_records_are_those_of_the_library() {
    let told = |part: &'static str| -> Vec<&str> {
        let own = messages().filter(|message| message.part == part);
        own.map(|message| message.id).collect()
    };
    let [history, comeback, follow_up, audit, shadow] =
        ["history", "comeback", "follow_up", "audit", "shadow"].map(told);
    let jobs = [Job::LeakFollowUp.slug(), Job::Recheck.slug()];
    let missing = everything_missing();
    let notice = "/$defs/notice/properties/severity";
    let difference = "/properties/differences/items/properties";
    let (differs, lacks) = (
        format!("{difference}/id"),
        format!("{difference}/missing/items"),
    );
    let lists: &Lists<'_> = &[
        (
            "history",
            "/properties/vehicles/items/properties/trend",
            LossTrend::SLUGS,
        ),
        ("history", "/$defs/id", &history),
        ("history", notice, Severity::SLUGS),
        ("history", "/$defs/visit/properties/job", Job::SLUGS),
        (
            "history",
            "/$defs/visit/properties/plug/items/properties/state",
            PlugState::SLUGS,
        ),
        ("history", "/$defs/verdict", Verdict::SLUGS),
        ("history", "/$defs/by_sheet", BySheet::SLUGS),
        ("comebacks", "/$defs/id", &comeback),
        ("comebacks", notice, Severity::SLUGS),
        ("follow-up", "/properties/job", &jobs),
        ("follow-up", "/$defs/id", &follow_up),
        ("audit", "/properties/items/items/properties/id", &audit),
        ("shadow", &differs, &shadow),
        ("shadow", &lacks, &missing),
        ("shadow", "/$defs/grade", EvidenceGrade::SLUGS),
        ("shadow", "/$defs/verdict", Verdict::SLUGS),
        ("shadow", "/$defs/by_sheet", BySheet::SLUGS),
    ];
    let schemas = ["history", "comebacks", "follow-up", "audit", "shadow"];
    let questions = ["header", "comeback-rules", "follow-up-rules", "old-job"];
    compare(&[&schemas[..], &questions[..]].concat(), lists);
}

/// What a pour alone does not tell, by a sheet that asks for everything.
fn everything_missing() -> Vec<&'static str> {
    let path = root().join("tests/vectors/packs/litre.json");
    let pack = fs::read_to_string(path).expect("the pack is there");
    let pack = Pack::from_json(&pack).expect("the pack reads");
    let old = r#"{"id":"1","leak":"above","journal":{"format":"brimline-journal/1","procedure":"litre-level",
        "job":"check","entries":[{"seq":1,"at":"2025-01-10T00:00:00Z","kind":"added","volume":"1 L"}]}}"#;
    let old = OldJob::from_json(old, None).expect("an old job reads");
    shadow(&pack, &[old]).differences()[0].missing.clone()
}
