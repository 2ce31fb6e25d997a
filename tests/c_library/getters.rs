//! Getters: all that a result and an error tell.

use super::checks::readable;
use super::program::{answers, parsed, request};
use crate::vector_cases::{Request, answer, cases};
use brimline::{Act, Evaluation, report};
use serde_json::{Value, json};

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
    let result = parsed(&evaluation.to_json());
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
        let told = parsed(&told);
        assert_eq!(told, as_getters_tell(evaluation));
    }
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
        let mut expected = parsed(&answer(refused));
        for fault in expected["error"]["faults"].as_array_mut().expect("faults") {
            // An empty text is nothing to tell.
            let members = fault.as_object_mut().expect("a fault");
            members.retain(|_, value| *value != json!(""));
        }
        let told = parsed(&told);
        assert_eq!(told, expected, "{refused:?}");
    }
}
