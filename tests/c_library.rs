//! The C library as C and C++ programs use it: every vector, every getter, misuse, and the example.

#[path = "c/compiler.rs"]
mod compiler;
mod vector_cases;

use brimline::calculate::functions;
use brimline::document::canonical;
use brimline::torque::{Wrench, wrench_setting};
use brimline::warm_up::{Asked, Forecast};
use brimline::{
    Act, Amount, Error, Evaluation, Kind, LevelCheck, Pack, Rounding, Unit, Verdict, convert,
    evaluate, report, versions,
};
use compiler::{Build, builds, compile, header, root, run, scratch};
use serde_json::{Value, json};
use std::collections::BTreeMap;
use std::fmt::Write;
use std::fs;
use std::path::PathBuf;
use std::sync::OnceLock;
use vector_cases::{Request, answer, cases, read_answers, write_requests};

const VECTORS: &[&str] = &[
    "tests/c/vectors.c",
    "tests/c/quantities.c",
    "tests/c/documents.c",
    "tests/c/calculators.c",
    "tests/c/torque.c",
    "tests/c/volume.c",
    "tests/c/warm_up.c",
    "tests/c/forecast.c",
    "tests/c/fluid.c",
    "tests/c/signal.c",
    "tests/c/leak.c",
    "tests/c/getters.c",
    "tests/c/writer.c",
];

/// The program that answers requests, in every build.
fn programs() -> &'static [(Build, PathBuf)] {
    static PROGRAMS: OnceLock<Vec<(Build, PathBuf)>> = OnceLock::new();
    PROGRAMS.get_or_init(|| {
        let compiled = |build| (build, compile("vectors", VECTORS, build));
        builds().into_iter().map(compiled).collect()
    })
}

/// The answers of one build of the program to requests.
fn answers_of(
    name: &str,
    requests: &[Request],
    (build, program): &(Build, PathBuf),
) -> Vec<String> {
    let asked = scratch(&format!("{name}-{build}.requests"));
    let answered = scratch(&format!("{name}-{build}.answers"));
    fs::write(&asked, write_requests(requests)).expect("requests write");
    run(program, &[&asked, &answered]);
    let answers = read_answers(&fs::read(&answered).expect("answers are there"));
    assert_eq!(answers.len(), requests.len());
    answers
}

/// The answers of the build that sees most: sanitized where that is to be had.
fn answers(name: &str, requests: &[Request]) -> Vec<String> {
    let best = programs().iter().max_by_key(|(build, _)| build.sanitized);
    answers_of(name, requests, best.expect("there are builds"))
}

fn request(op: &str, args: &[&str]) -> Request {
    Request {
        op: op.into(),
        args: args.iter().map(ToString::to_string).collect(),
    }
}

/// Every journal of the vectors that is evaluated without options, with its pack.
fn evaluated() -> Vec<(String, String)> {
    let all: Vec<(String, String)> = cases()
        .into_iter()
        .filter(|case| {
            case.request.op == "evaluate" && case.request.args[2..].iter().all(String::is_empty)
        })
        .map(|case| (case.request.args[0].clone(), case.request.args[1].clone()))
        .collect();
    assert!(all.len() > 60, "only {} journals", all.len());
    all
}

/// The journals that can be read, each with its pack and its evaluation.
fn readable() -> Vec<((String, String), Pack, Evaluation)> {
    let read = |(text, journal): &(String, String)| {
        let pack = if text.is_empty() {
            Pack::embedded()
        } else {
            Pack::from_json(text)
        };
        let pack = pack.ok()?;
        let evaluation = evaluate(&pack, journal.as_str()).ok()?;
        Some(((text.clone(), journal.clone()), pack, evaluation))
    };
    evaluated().iter().filter_map(read).collect()
}

fn told<T>(answer: Result<T, Error>, write: impl FnOnce(T) -> String) -> String {
    answer.map_or_else(|error| format!("{{\"error\":{}}}", error.to_json()), write)
}

#[test]
fn every_vector_gives_the_bytes_of_rust() {
    let requests: Vec<Request> = cases().into_iter().map(|case| case.request).collect();
    let expected: Vec<String> = requests.iter().map(answer).collect();
    for program in programs() {
        let told = answers_of("vectors", &requests, program);
        for ((request, told), expected) in requests.iter().zip(&told).zip(&expected) {
            assert_eq!(told, expected, "{}: {request:?}", program.0);
        }
    }
}

/// What has a typed function beside its name, one request or two each; expected is what Rust answers.
const TYPED: &[(&str, &str)] = &[
    (
        "torque.wrench_setting",
        r#"{"target":"14 N·m","lever":"230 mm","adapter":"40 mm","graduation":"0.5 N·m"}"#,
    ),
    (
        "torque.wrench_setting",
        r#"{"target":"14 N·m","lever":"0 mm"}"#,
    ),
    (
        "torque.applied_torque",
        r#"{"setting":"60 lbf·in","lever":"12 in","adapter":"2 in","angle":"45 deg"}"#,
    ),
    (
        "torque.preload",
        r#"{"torque":"14 N·m","diameter":"10 mm","condition":"dry_steel"}"#,
    ),
    (
        "torque.preload",
        r#"{"torque":"14 N·m","diameter":"10 mm","k":"1.5"}"#,
    ),
    (
        "torque.torque_for_preload",
        r#"{"preload":"1275 lbf","diameter":"0.19 in","k":"0.2"}"#,
    ),
    (
        "torque.torque_for_preload",
        r#"{"preload":"1275 lbf","diameter":"0.19 in","condition":"threadlocker"}"#,
    ),
    ("torque.proof_load", r#"{"thread":"M10","class":"8.8"}"#),
    ("torque.proof_load", r#"{"thread":"1/4-20","class":"10.9"}"#),
    (
        "torque.plausible",
        r#"{"torque":"124 lbf·ft","thread":"M10x1","plug":"steel"}"#,
    ),
    (
        "torque.plausible",
        r#"{"torque":"14 N·m","thread":"M10x1","plug":"hollow"}"#,
    ),
    (
        "volume.correction_factor",
        r#"{"density":"850 kg/m³","temperature":"40 °C"}"#,
    ),
    (
        "volume.at_temperature",
        r#"{"volume":"100 L","from":"20 °C","to":"40 °C","coefficient":"0.0007 per K"}"#,
    ),
    (
        "volume.temperature_error",
        r#"{"volume":"7 L","read_at":"40 °C","reference":"20 °C","density":"850 kg/m³","base":"base_60f_2004"}"#,
    ),
    (
        "volume.base_density",
        r#"{"density":"834.2214 kg/m³","temperature":"40 °C","base":"base_60f"}"#,
    ),
    (
        "volume.density_at",
        r#"{"density":"0.85 g/mL","temperature":"140 °F","base":"base_15c_2004"}"#,
    ),
    (
        "volume.mass",
        r#"{"volume":"7 L","temperature":"40 °C","density":"850 kg/m³"}"#,
    ),
    (
        "volume.volume_of_mass",
        r#"{"mass":"5 lb","temperature":"40 °C","density":"850 kg/m³"}"#,
    ),
    (
        "volume.tilt_error",
        r#"{"surface":"0.06 m²","offset":"200 mm","tilt":"1 deg"}"#,
    ),
    (
        "volume.segment_share",
        r#"{"level":"100 mm","diameter":"1 m"}"#,
    ),
    (
        "volume.exchange",
        r#"{"capacity":"10 L","drained":"4 L","cycles":2}"#,
    ),
    (
        "volume.cycles_needed",
        r#"{"capacity":"7.4 L","drained":"3.5 L","fresh":"85 %"}"#,
    ),
    ("volume.flush", r#"{"capacity":"7.4 L","flowed":"7.4 L"}"#),
    (
        "volume.flush_needed",
        r#"{"capacity":"60 L","fresh":"0.99"}"#,
    ),
    (
        "volume.wrong_left",
        r#"{"capacity":"10 L","wrong":"1 L","drained":"4 L","cycles":2}"#,
    ),
    (
        "warm_up.mixed_temperature",
        r#"{"volume":"6 L","temperature":"45 °C","added":"0.5 L","added_temperature":"20 °C"}"#,
    ),
    (
        "warm_up.cool_down",
        r#"{"first":"70 °C","second":"60 °C","elapsed":"10 min","ambient":"20 °C","max":"45 °C","reheat_per_minute":"1.5 °C","reheat_time":"4 min"}"#,
    ),
    (
        "warm_up.response_time",
        r#"{"time_constant":"2 min","share":"0.95"}"#,
    ),
    (
        "fluid.viscosity_at",
        r#"{"viscosity_1":"34 mm²/s","temperature_1":"40 °C","viscosity_2":"7.4 mm²/s","temperature_2":"100 °C","temperature":"20 °C"}"#,
    ),
    (
        "fluid.temperature_for",
        r#"{"viscosity_1":"34 mm²/s","temperature_1":"40 °C","viscosity_2":"7.4 mm²/s","temperature_2":"100 °C","viscosity":"11 mm²/s"}"#,
    ),
    (
        "fluid.viscosity_index",
        r#"{"viscosity_40":"73.30 mm²/s","viscosity_100":"8.86 mm²/s"}"#,
    ),
    ("fluid.grade", r#"{"viscosity_40":"28.8 mm²/s"}"#),
    ("fluid.grade", r#"{"viscosity_40":"1 mm²/s"}"#),
    ("fluid.grade_limits", r#"{"grade":46}"#),
    ("fluid.grade_limits", r#"{"grade":47}"#),
    (
        "signal.transmission_frame",
        r#"{"id":"18FEF8FE","data":"FF 5A FF FF 20 28 7A 13"}"#,
    ),
    (
        "signal.transmission_frame",
        r#"{"id":419362046,"data":"FFFFFFFF20287A"}"#,
    ),
    (
        "signal.linear",
        r#"{"data":"7B","layout":{"start":0,"length":8,"order":"little","unit":"°C","scale":"1 Δ°C","offset":"-40 °C","max":"80 °C"}}"#,
    ),
    (
        "signal.linear",
        r#"{"data":"FF80","layout":{"start":7,"length":16,"order":"big","signed":true,"unit":"mL","scale":"0.5 mL"}}"#,
    ),
    (
        "signal.diagnostic_reply",
        r#"{"request":"0105","reply":"41057B","layout":{"start":0,"length":8,"order":"little","unit":"°C","scale":"1 Δ°C","offset":"-40 °C"}}"#,
    ),
    (
        "signal.diagnostic_reply",
        r#"{"request":"22F190","reply":"7F2278"}"#,
    ),
    (
        "leak.against_limit",
        r#"{"estimate":"1.5 L","uncertainty":"0.1 L","limit":"1.4 L","rule":"simple_acceptance"}"#,
    ),
    (
        "leak.against_limit",
        r#"{"estimate":"50 °C","uncertainty":"1 Δ°C","limit":"48 °C","rule":"guarded_rejection","probability":"95 %"}"#,
    ),
    (
        "leak.conformance",
        r#"{"value":"507 mL","uncertainty":"10 mL","lower":"490 mL"}"#,
    ),
    (
        "leak.guard_band",
        r#"{"uncertainty":"0.1 L","probability":"0.95"}"#,
    ),
    ("leak.quantile", r#"{"probability":"0.3"}"#),
    ("leak.expanded_uncertainty", r#"{"uncertainty":"50 mL"}"#),
    (
        "leak.drip_rate",
        r#"{"drops":60,"in_time":"1 min","drop":"0.05 mL"}"#,
    ),
    (
        "leak.drops_for",
        r#"{"volume":"0.5 L","over":"24 h","drop":"0.05 mL"}"#,
    ),
];

/// A calculator's arguments one after another in the order it takes them, a layout as its members; none where they are
/// no object of single values.
fn one_after_another(function: &str, arguments: &str) -> Option<Vec<String>> {
    const LAYOUT: &[&str] = &[
        "start", "length", "order", "signed", "unit", "scale", "offset", "min", "max",
    ];
    let (_, takes) = functions().find(|(name, _)| *name == function)?;
    let object: serde_json::Map<String, Value> = serde_json::from_str(arguments).ok()?;
    let mut flat = vec![function.to_string()];
    for name in takes {
        match object.get(*name) {
            Some(Value::Object(members)) => {
                flat.extend(LAYOUT.iter().enumerate().map(|(index, member)| {
                    // The first three, the unit and the scale must be there.
                    let needed = index < 3 || index == 4 || index == 5;
                    members
                        .get(*member)
                        .map_or(if needed { "?" } else { "" }.into(), single)
                }));
            }
            None | Some(Value::Null) if *name == "layout" => {
                flat.extend(LAYOUT.iter().map(|_| String::new()));
            }
            Some(Value::String(hexadecimal)) if *name == "id" => {
                let read = u32::from_str_radix(hexadecimal.trim_start_matches("0x"), 16);
                flat.push(read.map_or("?".into(), |id| id.to_string()));
            }
            Some(Value::Array(_)) => return None,
            other => flat.push(other.map_or_else(String::new, single)),
        }
    }
    Some(flat)
}

fn single(value: &Value) -> String {
    value
        .as_str()
        .map_or_else(|| value.to_string(), str::to_string)
}

/// Whether a fault stands at a place in the text of the arguments: what is refused there never reaches the calculator.
fn is_of_the_text(answer: &Value) -> bool {
    let faults = answer["error"]["faults"].as_array();
    faults.is_some_and(|faults| faults.iter().any(|fault| fault.get("line").is_some()))
}

#[test]
fn typed_calculators_answer_as_by_name() {
    let own = TYPED
        .iter()
        .map(|(function, arguments)| request("calculate", &[function, arguments]));
    let of_vectors = cases().into_iter().map(|case| case.request);
    let asked = own.chain(of_vectors.filter(|request| request.op == "calculate"));
    let (expected, requests): (Vec<Value>, Vec<Request>) = asked
        .filter_map(|request| {
            let args = one_after_another(&request.args[0], &request.args[1])?;
            let expected: Value = serde_json::from_str(&answer(&request)).expect("JSON");
            // Only JSON has types and members.
            let kind = &expected["error"]["kind"];
            let of_json = kind == "wrong_type" || kind == "unknown_field";
            let op = "typed".into();
            (!of_json).then_some((expected, Request { op, args }))
        })
        .unzip();
    for program in programs() {
        let told = answers_of("typed", &requests, program);
        for ((request, expected), told) in requests.iter().zip(&expected).zip(&told) {
            let told: Value = serde_json::from_str(told).expect("JSON");
            if told == json!("by_name") {
                let function = request.args[0].as_str();
                assert!(!TYPED.iter().any(|(typed, _)| *typed == function));
            } else if is_of_the_text(expected) {
                assert!(
                    told == json!("unread") || told.get("error").is_some(),
                    "{request:?}: {told}, {expected}"
                );
            } else {
                assert_eq!(told, *expected, "{}: {request:?}", program.0);
            }
        }
    }
}

/// Every forecast of the vectors, kept up reading by reading.
#[test]
fn forecasts_are_kept_up_as_in_rust() {
    let (mut requests, mut expected) = (Vec::new(), Vec::new());
    for case in cases() {
        if case.request.op != "calculate" || case.request.args[0] != "warm_up.forecast" {
            continue;
        }
        let told: Value = serde_json::from_str(&answer(&case.request)).expect("JSON");
        let given: Value = serde_json::from_str(&case.request.args[1]).expect("JSON");
        if told.get("error").is_none() {
            requests.push(reading_by_reading(&given));
            expected.push(told);
        }
    }
    assert!(requests.len() > 5, "only {} forecasts", requests.len());
    for ((request, expected), told) in requests
        .iter()
        .zip(&expected)
        .zip(answers("forecasts", &requests))
    {
        let told: Value = serde_json::from_str(&told).expect("JSON");
        assert_eq!(told["json"], *expected, "{request:?}");
        let mut by_getters = expected.clone();
        by_getters
            .as_object_mut()
            .expect("an object")
            .remove("suspect");
        assert_eq!(told["told"], by_getters, "{request:?}");
        assert_eq!(told["text"], json!(in_english(request)), "{request:?}");
    }
}

/// The forecast of a request in English, as Rust tells it.
fn in_english(request: &Request) -> String {
    let read = |text: &String, kind| (!text.is_empty()).then(|| amount_of(text, kind));
    let [min, max, scatter, held, events @ ..] = request.args.as_slice() else {
        panic!("four limits and what happened: {request:?}");
    };
    let asked = Asked {
        min: read(min, Kind::Temperature),
        max: read(max, Kind::Temperature),
        scatter: read(scatter, Kind::TemperatureDifference),
        held: read(held, Kind::Volume),
    };
    let mut forecast = Forecast::new(asked).expect("it begins");
    for event in events.chunks_exact(3) {
        let (at, temperature) = (
            amount_of(&event[0], Kind::Time),
            amount_of(&event[2], Kind::Temperature),
        );
        let taken = match read(&event[1], Kind::Volume) {
            Some(volume) => forecast.poured(at, volume, temperature),
            None => forecast.sample(at, temperature),
        };
        taken.expect("it is taken in");
    }
    report::outlook(&forecast.answer())
}

fn amount_of(text: &str, kind: Kind) -> Amount {
    Amount::parse_as(text, kind, None).expect("a quantity")
}

/// What is asked of a forecast, then its readings and pours in order of time, a reading before a pour.
fn reading_by_reading(given: &Value) -> Request {
    let text = |value: &Value| value.as_str().unwrap_or_default().to_string();
    let mut args: Vec<String> = ["min", "max", "scatter", "held"]
        .iter()
        .map(|name| text(&given[*name]))
        .collect();
    let listed = |name: &str| given[name].as_array().cloned().unwrap_or_default();
    let mut events: Vec<(Amount, [String; 3])> = Vec::new();
    let samples = listed("samples").into_iter().map(|one| (one, "reading"));
    for (event, temperature) in
        samples.chain(listed("pours").into_iter().map(|one| (one, "temperature")))
    {
        let at = Amount::parse(&text(&event["at"])).expect("a time");
        let told = ["at", "volume", temperature].map(|name| text(&event[name]));
        events.push((at, told));
    }
    events.sort_by(|(one, _), (other, _)| one.compare(other).expect("times"));
    args.extend(events.into_iter().flat_map(|(_, told)| told));
    Request {
        op: "forecast".into(),
        args,
    }
}

/// The demonstration pack's fluids, and one that it lacks.
#[test]
fn fluids_are_related_as_in_rust() {
    let pack = Pack::embedded().expect("it is embedded");
    let mut fluids: Vec<&str> = pack.fluids().map(|fluid| fluid.id.as_str()).collect();
    fluids.push("unheard-of");
    let (mut requests, mut expected) = (Vec::new(), Vec::new());
    for one in &fluids {
        for other in &fluids {
            requests.push(request("may_mix", &["", one, other]));
            expected.push(canonical(&pack.may_mix(one, other)));
        }
        let mut args = vec!["", one];
        args.extend(&fluids);
        requests.push(request("resolve", &args));
        expected.push(canonical(&pack.resolve(one, &fluids)));
    }
    requests.push(request("resolve", &["", "sedge-mid"]));
    expected.push("[]".into());
    assert_eq!(answers("fluids", &requests), expected);
}

#[test]
fn a_check_gives_the_bytes_of_rust() {
    let mut requests = Vec::new();
    let mut expected = Vec::new();
    for (index, ((text, journal), pack, _)) in readable().into_iter().enumerate() {
        let check = LevelCheck::replay(&pack, &journal).expect("it was evaluated");
        let mut ask = |op: &str, args: &[&str], answer: String| {
            requests.push(request(op, args));
            expected.push(answer);
        };
        ask("live", &[&text, &journal], check.evaluation().to_json());
        ask("lines", &[&text, &journal], check.journal_lines());
        ask("advice", &[&text, &journal], canonical(&check.advice()));
        ask("pack_json", &[&text], pack.to_json());
        // What is asked for beside the answer replays the journal many times.
        if index % 4 == 0 {
            let asked = check.evaluation_with(true, Some(Verdict::Low)).to_json();
            ask("asked", &[&text, &journal, "low"], asked);
            let story = report::story(&pack, &journal).expect("it was evaluated");
            ask("story", &[&text, &journal], story);
        }
        for (act, planned, at) in [
            ("open", "", ""),
            ("pour", "0.5 L", ""),
            ("pour", "2 qt", "2031-01-01T00:00:00Z"),
            ("close", "", "in a while"),
        ] {
            let planned_amount = Some(planned)
                .filter(|text| !text.is_empty())
                .map(|text| Amount::parse_as(text, Kind::Volume, check.measures()))
                .transpose();
            let at_text = Some(at).filter(|text| !text.is_empty());
            let named = Act::from_slug(act).expect("an act");
            let gate = planned_amount.and_then(|planned| check.gate(named, planned, at_text));
            let answer = told(gate, |gate| canonical(&gate));
            ask("gate", &[&text, &journal, act, planned, at], answer);
        }
        let lines = check.journal_lines();
        let mut args = vec![text.as_str()];
        args.extend(lines.lines());
        let recorded = lines.lines().skip(1).try_fold(
            LevelCheck::start(&pack, lines.lines().next().expect("a header"))
                .expect("the header was read"),
            |check, entry| check.record(entry).map(|(check, _)| check),
        );
        let answer = told(recorded, |check| check.evaluation().to_json());
        ask("recorded", &args, answer);
    }
    assert!(requests.len() > 500, "only {} requests", requests.len());
    for ((request, expected), told) in requests
        .iter()
        .zip(&expected)
        .zip(answers("checks", &requests))
    {
        assert_eq!(told, *expected, "{request:?}");
    }
}

/// What the program asks of a finding, an act or an unmet item: members, one argument, and its sentence.
fn item(item: &Value, members: &[&str], argument: &str, sentence: String) -> Value {
    let mut told = json!({ "text": sentence });
    for member in members {
        if let Some(value) = item.get(*member) {
            told[*member] = value.clone();
        }
    }
    if let Some(value) = item["args"].get(argument) {
        told[argument] = value.clone();
    }
    told
}

fn listed(items: &Value) -> &[Value] {
    items.as_array().expect("a list")
}

/// A caution's id and its text.
fn caution(evaluation: &Evaluation, id: &str) -> [Value; 2] {
    let own = evaluation.sheet().and_then(|sheet| {
        let caution = sheet.cautions.iter().find(|caution| caution.id == id)?;
        Some(caution.text.as_str())
    });
    let text = report::caution(id)
        .or(own)
        .expect("every caution has a text");
    [json!(id), json!(text)]
}

/// What the getters tell of a result, taken from its document and its sentences.
fn as_getters_tell(evaluation: &Evaluation) -> Value {
    let result: Value = serde_json::from_str(&evaluation.to_json()).expect("JSON");
    let or_null = |value: &Value, name: &str| value.get(name).cloned().unwrap_or(Value::Null);
    let findings = listed(&result["findings"])
        .iter()
        .zip(evaluation.findings());
    let findings: Value = findings
        .map(|(told, finding)| {
            let members = ["id", "severity", "entries", "field"];
            item(told, &members, "limit", report::finding(finding))
        })
        .collect();
    let next = listed(&result["next"]).iter().zip(evaluation.next());
    let next: Value = next
        .map(|(told, act)| {
            let mut told = item(told, &["id", "wait"], "volume", report::next_act(act));
            let cautions = act.cautions.iter().flat_map(|id| caution(evaluation, id));
            told["cautions"] = cautions.collect();
            told
        })
        .collect();
    let gate = |act: &Act| {
        let told = &result["gates"][act.slug()];
        let unmet = listed(&told["unmet"])
            .iter()
            .zip(&evaluation.gate(*act).unmet);
        let unmet: Value = unmet
            .map(|(told, unmet)| item(told, &["id", "wait"], "verdict", report::unmet(unmet)))
            .collect();
        let gate = json!({"allowed": told["allowed"], "unmet": unmet, "json": told});
        (act.slug().to_string(), gate)
    };
    let acts = Act::WORDS.iter().map(|(_, act)| act);
    let cautions = evaluation
        .cautions()
        .iter()
        .flat_map(|id| caution(evaluation, id));
    let leak = &result["leak"];
    json!({
        "procedure": result["procedure"], "verdict": result["verdict"], "as_found": result["as_found"],
        "net_added": result["net_added"], "now": result["now"],
        "leak": {
            "by_sheet": leak["by_sheet"], "counted": leak["counted"], "limit": or_null(leak, "limit"),
            "shortage": leak["shortage"], "certainty": leak["certainty"], "margin": or_null(leak, "margin"),
        },
        "findings": findings, "findings_json": result["findings"],
        "next": next, "next_json": result["next"],
        "gates": acts.map(gate).collect::<serde_json::Map<_, _>>(),
        "cautions": cautions.collect::<Value>(),
        "text": report::text(evaluation),
    })
}

#[test]
fn getters_tell_all_that_the_document_tells() {
    let readable = readable();
    let requests: Vec<Request> = readable
        .iter()
        .map(|((text, journal), _, _)| request("getters", &[text, journal]))
        .collect();
    for ((_, _, evaluation), told) in readable.iter().zip(answers("getters", &requests)) {
        let told: Value = serde_json::from_str(&told).expect("the getters give JSON");
        assert_eq!(told, as_getters_tell(evaluation));
    }
}

#[test]
fn limits_hold_for_a_check() {
    let header =
        r#"{"format":"brimline-journal/1","job_id":"long enough","procedure":"p","job":"check"}"#;
    let limits = [
        "",
        r#"{"text":20}"#,
        r#"{"text":5}"#,
        r#"{"bytes":5}"#,
        r#"{"depth":0}"#,
    ];
    let requests = limits.map(|limits| request("start", &["", header, limits]));
    let said = answers("limits", &requests);
    let refused: Vec<bool> = said.iter().map(|said| said.contains("\"limit\"")).collect();
    assert_eq!(refused, [false, false, true, true, true], "{said:#?}");
}

#[test]
fn limits_hold_for_a_pack() {
    let pack =
        fs::read_to_string(root().join("tests/vectors/packs/smallest.json")).expect("it reads");
    let limits = [
        "",
        r#"{"bytes":20}"#,
        r#"{"depth":1}"#,
        r#"{"entries":0}"#,
        r#"{"text":2}"#,
    ];
    let requests = limits.map(|limits| request("pack", &[&pack, limits]));
    let said = answers("pack-limits", &requests);
    assert_eq!(said, requests.each_ref().map(answer));
    let refused: Vec<bool> = said.iter().map(|said| said.contains("\"limit\"")).collect();
    // A pack has no entries.
    assert_eq!(refused, [false, true, true, false, true], "{said:#?}");
}

#[test]
fn every_pair_of_units_converts_by_number_as_in_rust() {
    let mut requests = Vec::new();
    let mut expected = Vec::new();
    for from in Unit::ALL {
        for to in Unit::ALL {
            let (one, other) = (from.code().to_string(), to.code().to_string());
            requests.push(request("convert_units", &["12.5", &one, &other]));
            expected.push(told(convert(12.5, *from, *to), |number| {
                format!("{{\"bits\":\"{:016x}\"}}", number.to_bits())
            }));
        }
    }
    assert_eq!(answers("pairs", &requests), expected);
}

#[test]
fn getters_tell_every_fault() {
    let refused: Vec<Request> = cases()
        .into_iter()
        .filter(|case| case.expected.is_err())
        .map(|case| case.request)
        .collect();
    assert!(refused.len() > 60, "only {} refusals", refused.len());
    let requests: Vec<Request> = refused
        .iter()
        .map(|refused| {
            let mut args = vec![refused.op.as_str()];
            args.extend(refused.args.iter().map(String::as_str));
            request("faults", &args)
        })
        .collect();
    for (refused, told) in refused.iter().zip(answers("faults", &requests)) {
        let mut expected: Value = serde_json::from_str(&answer(refused)).expect("JSON");
        for fault in expected["error"]["faults"].as_array_mut().expect("faults") {
            // An empty text is nothing to tell.
            let members = fault.as_object_mut().expect("a fault");
            members.retain(|_, value| *value != json!(""));
        }
        let told: Value = serde_json::from_str(&told).expect("the getters give JSON");
        assert_eq!(told, expected, "{refused:?}");
    }
}

#[test]
fn a_hostile_host_is_answered() {
    for build in builds() {
        run(&compile("nulls", &["tests/c/nulls.c"], build), &[]);
        run(&compile("misuse", &["tests/c/misuse.c"], build), &[]);
        run(&compile("amiss", &["tests/c/amiss.c"], build), &[]);
    }
}

/// Every constant of the header has the number that the library gives its word, and every word has a constant.
#[test]
fn constants_are_the_numbers_of_words() {
    let mut rows = String::new();
    let mut counted: BTreeMap<&str, usize> = BTreeMap::new();
    for (name, number) in compiler::constants(&header()) {
        for (list, prefix) in LISTS {
            if let Some(word) = name.strip_prefix(prefix) {
                let mut word = word.to_lowercase();
                match *list {
                    "STRENGTH_CLASS" => word = word.replace('_', "."),
                    "BASE" => word.insert_str(0, "base_"),
                    _ => {}
                }
                writeln!(rows, "    word(BRIM_LIST_{list}, {name}, \"{word}\");")
                    .expect("it writes");
                *counted.entry(list).or_default() += 1;
            }
        }
        if let Some(unit) = name.strip_prefix("BRIM_UNIT_") {
            let same = |own: &&Unit| snake(&format!("{own:?}")) == unit;
            let own = Unit::ALL
                .iter()
                .find(same)
                .unwrap_or_else(|| panic!("no unit {unit}"));
            assert_eq!(number, i64::from(own.code()), "{name}");
            *counted.entry("UNIT").or_default() += 1;
        }
    }
    assert_eq!(counted["UNIT"], Unit::ALL.len());
    for (list, _) in LISTS {
        writeln!(rows, "    count(BRIM_LIST_{list}, {});", counted[list]).expect("it writes");
    }
    let source = scratch("words.c");
    fs::write(&source, WORDS.replace("ROWS", &rows)).expect("it writes");
    let source = source.to_str().expect("UTF-8");
    for build in builds() {
        run(&compile("words", &[source], build), &[]);
    }
}

const LISTS: &[(&str, &str)] = &[
    ("STATUS", "BRIM_ERROR_"),
    ("KIND", "BRIM_KIND_"),
    ("MEASURES", "BRIM_MEASURES_"),
    ("ROUNDING", "BRIM_ROUNDING_"),
    ("VERDICT", "BRIM_VERDICT_"),
    ("BY_SHEET", "BRIM_BY_SHEET_"),
    ("CERTAINTY", "BRIM_CERTAINTY_"),
    ("SEVERITY", "BRIM_SEVERITY_"),
    ("ACT", "BRIM_ACT_"),
    ("INDEX_PROCEDURE", "BRIM_INDEX_PROCEDURE_"),
    ("SIGNAL_STATE", "BRIM_SIGNAL_STATE_"),
    ("LEVEL_STATUS", "BRIM_LEVEL_STATUS_"),
    ("BYTE_ORDER", "BRIM_BYTE_ORDER_"),
    ("REPLY", "BRIM_REPLY_"),
    ("REFUSAL", "BRIM_REFUSAL_"),
    ("THREAD_CONDITION", "BRIM_THREAD_CONDITION_"),
    ("STRENGTH_CLASS", "BRIM_STRENGTH_CLASS_"),
    ("PLUG", "BRIM_PLUG_"),
    ("FITS", "BRIM_FITS_"),
    ("RULE", "BRIM_RULE_"),
    ("DECISION", "BRIM_DECISION_"),
    ("FORECAST_METHOD", "BRIM_FORECAST_METHOD_"),
    ("FORECAST_REASON", "BRIM_FORECAST_REASON_"),
    ("BASE", "BRIM_BASE_"),
];

/// Looks each word up both ways, and counts the numbers that have a word.
const WORDS: &str = r#"
#include "brimline.h"
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static void word(brim_list list, int32_t number, const char *expected) {
    char text[64] = "";
    int32_t back = -1;
    brim_word(list, number, text, sizeof text, NULL, NULL);
    brim_word_number(list, expected, BRIM_TERMINATED, &back, NULL);
    if (strcmp(text, expected) != 0 || back != number) {
        fprintf(stderr, "list %d, number %d: %s, not %s\n", (int)list, (int)number, text, expected);
        exit(1);
    }
}

static void count(brim_list list, int expected) {
    int32_t number;
    int found = 0;
    size_t length;
    for (number = 1; number < 1000; number++) {
        found += brim_word(list, number, NULL, 0, &length, NULL) == BRIM_OK;
    }
    if (found != expected) {
        fprintf(stderr, "list %d: %d words, %d constants\n", (int)list, found, expected);
        exit(1);
    }
}

int main(void) {
ROWS    return 0;
}
"#;

/// `UsFluidOunce` as `US_FLUID_OUNCE`.
fn snake(name: &str) -> String {
    let mut out = String::new();
    for letter in name.chars() {
        if letter.is_uppercase() && !out.is_empty() {
            out.push('_');
        }
        out.extend(letter.to_uppercase());
    }
    out
}

#[test]
fn the_example_tells_every_journal() {
    let mut journals: Vec<_> = fs::read_dir(root().join("examples/journals"))
        .expect("journals are there")
        .map(|entry| entry.expect("a folder lists").path())
        .collect();
    journals.sort();
    assert!(!journals.is_empty());
    for build in builds() {
        let program = compile("level_check", &["examples/c/level_check.c"], build);
        for journal in &journals {
            let text = fs::read_to_string(journal).expect("a journal reads");
            let pack = Pack::embedded().expect("it is embedded");
            let evaluation = evaluate(&pack, text.as_str()).expect("an example reads");
            assert_eq!(
                run(&program, &[journal]),
                as_the_example_tells(&evaluation),
                "{}",
                journal.display()
            );
        }
    }
}

fn as_the_example_tells(evaluation: &Evaluation) -> String {
    let mut out = String::new();
    let mut line = |name: &str, value: &str| writeln!(out, "{name:<12}{value}").expect("it writes");
    let leak = evaluation.leak();
    line("verdict", evaluation.verdict().slug());
    line("as found", &evaluation.as_found().to_string());
    line("net added", &evaluation.net_added().to_string());
    line("now", &evaluation.now().to_string());
    let margin = leak
        .margin
        .map_or(String::new(), |margin| format!(", margin {margin}"));
    line(
        "leak limit",
        &format!(
            "{}, {}{margin}",
            leak.by_sheet.slug(),
            leak.certainty.slug()
        ),
    );
    for finding in evaluation.findings() {
        line(finding.severity.slug(), finding.id);
    }
    if let Some(next) = evaluation.next().first() {
        line("next", next.id);
        for caution in &next.cautions {
            line("  mind", caution);
        }
    }
    for caution in evaluation.cautions() {
        line("caution", caution.as_ref());
    }
    out
}

/// The first example, as the README shows it in three languages.
#[test]
fn the_first_check_tells_what_it_tells_in_rust() {
    let journal = root().join("examples/journals/short_unit.json");
    let journal = fs::read_to_string(journal).expect("a journal reads");
    let pack = Pack::embedded().expect("it is embedded");
    let answer = evaluate(&pack, journal.as_str()).expect("an example reads");
    let expected = format!(
        "verdict   {}\nas found  {}\nleak      {}\n\n{}\n",
        answer.verdict().slug(),
        answer.as_found(),
        answer.leak().by_sheet.slug(),
        report::text(&answer)
    );
    for build in builds() {
        let program = compile("first_check", &["examples/c/first_check.c"], build);
        assert_eq!(run(&program, &[]), expected, "{build}");
    }
}

/// What a wrench is set to, with the cautions that belong to it.
#[test]
fn the_wrench_is_set_as_in_rust() {
    let [target, lever, adapter, graduation] = ["14 N·m", "230 mm", "40 mm", "0.5 N·m"]
        .map(|text| Amount::parse(text).expect("it parses"));
    let wrench = Wrench {
        adapter: Some(adapter),
        graduation: Some(graduation),
        ..Wrench::new(lever)
    };
    let found = wrench_setting(target, &wrench, None).expect("it can be set");
    let rounded = |amount: Amount, places| {
        let rounded = amount.to(amount.unit(), places, Rounding::HalfEven);
        rounded.expect("it rounds")
    };
    let mut expected = format!(
        "set it to   {}\nthat gives  {}\noff by      {}\n",
        found.setting,
        rounded(found.applied, 2),
        rounded(found.error, 1)
    );
    assert!(!found.cautions.is_empty());
    for id in found.cautions {
        let caution = report::caution(id).unwrap_or(id);
        writeln!(expected, "mind        {caution}").expect("it writes");
    }
    for build in builds() {
        let program = compile("wrench", &["examples/c/wrench.c"], build);
        assert_eq!(run(&program, &[]), expected, "{build}");
    }
}

#[test]
fn versions_are_those_of_rust_and_the_interface() {
    let told = answers("versions", &[request("versions", &[])]);
    let mut expected = serde_json::to_value(versions()).expect("JSON");
    expected["abi"] = json!(1);
    assert_eq!(
        serde_json::from_str::<Value>(&told[0]).expect("JSON"),
        expected
    );
}

#[test]
fn the_example_tells_what_is_wrong_with_a_journal() {
    let journal = scratch("wrong.json");
    fs::write(&journal, "{\"format\":\"brimline-journal/1\"}").expect("it writes");
    let build = builds()[0];
    let program = compile("level_check-refusal", &["examples/c/level_check.c"], build);
    let output = std::process::Command::new(program)
        .arg(&journal)
        .output()
        .expect("it runs");
    let said = String::from_utf8(output.stderr).expect("UTF-8");
    assert_eq!(output.status.code(), Some(1));
    assert!(
        said.contains("procedure: required field is missing"),
        "{said}"
    );
}
