//! Checks: begun, recorded and replayed, and what is asked of them.

use super::program::{answers, request, told};
use crate::vector_cases::cases;
use brimline::document::canonical;
use brimline::{Act, Amount, Evaluation, Kind, LevelCheck, Pack, Verdict, evaluate, report};

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
pub fn readable() -> Vec<((String, String), Pack, Evaluation)> {
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
