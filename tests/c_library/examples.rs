//! The examples in C, and what Rust tells in their place.

use super::program::compiled;
use crate::compiler::{builds, compile, root, run, scratch};
use brimline::torque::{Wrench, wrench_setting};
use brimline::{Amount, Evaluation, Pack, Rounding, evaluate, report};
use std::fmt::Write;
use std::fs;

#[test]
fn the_example_tells_every_journal() {
    let mut journals: Vec<_> = fs::read_dir(root().join("examples/journals"))
        .expect("journals are there")
        .map(|entry| entry.expect("a folder lists").path())
        .collect();
    journals.sort();
    assert!(!journals.is_empty());
    for (_, program) in compiled("level_check", &["examples/c/level_check.c"]) {
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
    for (build, program) in compiled("first_check", &["examples/c/first_check.c"]) {
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
    for (build, program) in compiled("wrench", &["examples/c/wrench.c"]) {
        assert_eq!(run(&program, &[]), expected, "{build}");
    }
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
