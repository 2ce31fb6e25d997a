//! Every vector, answered by the Rust library.

mod vector_cases;

use serde_json::{Value, json};
use std::collections::BTreeSet;
use vector_cases::{Case, Request, answer, cases, missing};

/// What a case expects and the answer lacks.
fn failures(case: &Case) -> Vec<String> {
    let answer: Value = serde_json::from_str(&answer(&case.request)).expect("an answer is JSON");
    // A calculator may tell an error of measurement under that name; a refusal is an object.
    let refusal = answer.get("error").filter(|error| error.is_object());
    let said = match (&case.expected, refusal) {
        (Ok(out), None) => lacking(&case.request, out, &answer),
        (Err(error), Some(given)) => lacking_fault(error, given),
        (Ok(_), Some(error)) => vec![format!("refused: {}", error["message"])],
        (Err(_), None) => vec![format!("not refused: {answer}")],
    };
    said.into_iter()
        .map(|what| format!("{}: {}: {what}", case.file, case.name))
        .collect()
}

fn lacking(request: &Request, out: &Value, answer: &Value) -> Vec<String> {
    if request.op == "convert" {
        let number: f64 = out["number"]
            .as_str()
            .and_then(|text| text.parse().ok())
            .expect("a number as text");
        return missing(
            &json!({"bits": format!("{:016x}", number.to_bits())}),
            answer,
            "",
        );
    }
    // Findings are listed by id where a case speaks of them: those it names must be there, in any order.
    let mut out = out.clone();
    let mut lacking = Vec::new();
    if request.op != "pack_compare"
        && let Some(wanted) = out
            .as_object_mut()
            .and_then(|members| members.remove("findings"))
    {
        let given = answer["findings"].as_array().cloned().unwrap_or_default();
        for finding in wanted.as_array().expect("findings are a list") {
            if !given
                .iter()
                .any(|given| missing(finding, given, "").is_empty())
            {
                lacking.push(format!(
                    "no finding {finding} among {:?}",
                    given.iter().map(|f| f["id"].as_str()).collect::<Vec<_>>()
                ));
            }
        }
    }
    lacking.extend(missing(&out, answer, ""));
    lacking
}

/// A case names the first fault's members, or all faults under `faults`.
fn lacking_fault(wanted: &Value, given: &Value) -> Vec<String> {
    match wanted.get("faults") {
        Some(_) => missing(wanted, given, "error"),
        None => missing(wanted, &given["faults"][0], "error"),
    }
}

#[test]
fn every_vector_holds() {
    let cases = cases();
    assert!(cases.len() > 200, "only {} vectors", cases.len());
    let failures: Vec<String> = cases.iter().flat_map(failures).collect();
    assert!(
        failures.is_empty(),
        "{} of {} vectors fail:\n{}",
        failures.len(),
        cases.len(),
        failures.join("\n")
    );
}

#[test]
fn names_are_given_once() {
    let mut seen = BTreeSet::new();
    for case in cases() {
        assert!(
            seen.insert((case.file.clone(), case.name.clone())),
            "{}: {} stands twice",
            case.file,
            case.name
        );
    }
}

#[test]
fn live_gives_the_bytes_of_one_shot() {
    let mut compared = 0;
    for case in cases().iter().filter(|case| {
        case.request.op == "evaluate" && case.request.args[2..].iter().all(String::is_empty)
    }) {
        let live = Request {
            op: "live".into(),
            args: case.request.args[..2].to_vec(),
        };
        assert_eq!(
            answer(&case.request),
            answer(&live),
            "{}: {}",
            case.file,
            case.name
        );
        compared += 1;
    }
    assert!(compared > 60, "only {compared} compared");
}
