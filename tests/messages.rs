//! Every id has its message, every message its use, and every argument a message names is given.

#[path = "messages/counter.rs"]
mod counter;
#[path = "messages/journals.rs"]
mod journals;
#[path = "messages/trade.rs"]
mod trade;
mod vector_cases;

use brimline::check::{Args, Journal};
use brimline::{
    Act, Amount, Evaluation, LevelCheck, Options, Pack, Verdict, evaluate_with, report,
};
use journals::{DEFECTIVE, evaluated, lines_upto, more};
use serde_json::Value;
use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::{Path, PathBuf};
use vector_cases::{answer, cases, root};

/// The parts whose ids come from the rules.
const RULED: [&str; 7] = [
    "finding", "reason", "next", "unmet", "caution", "lint", "lack",
];

/// The parts that put an argument's ids into words.
const WORDED: [&str; 8] = [
    "grade", "source", "why", "sign", "plug", "phase", "verdict", "unmet",
];

/// The parts whose ids are no words of the code: a host's, and grades.
const OPEN: [&str; 6] = [
    "position",
    "status",
    "appearance",
    "smell",
    "debris",
    "evidence_grade",
];

fn sources(folder: &Path) -> Vec<PathBuf> {
    let mut files = Vec::new();
    for entry in fs::read_dir(folder).expect("the folder is there") {
        let path = entry.expect("a folder lists").path();
        if path.is_dir() {
            files.extend(sources(&path));
        } else if path.extension().is_some_and(|ext| ext == "rs") {
            files.push(path);
        }
    }
    files.sort();
    files
}

/// The code of a file, without its tests and comments.
fn code(file: &Path) -> String {
    let text = fs::read_to_string(file).expect("a source file reads");
    let code = text.split("#[cfg(test)]\nmod").next().unwrap_or_default();
    let lines = code
        .lines()
        .filter(|line| !line.trim_start().starts_with("//"));
    lines.collect::<Vec<_>>().join("\n")
}

/// Each literal that could be an id, with the code right before it, without spaces.
fn literals(code: &str) -> Vec<(String, String)> {
    let mut found = Vec::new();
    let mut before = String::new();
    for (index, part) in code.split('"').enumerate() {
        if index % 2 == 0 {
            before.extend(part.chars().filter(|letter| !letter.is_whitespace()));
            continue;
        }
        let is_id = part.starts_with(|letter: char| letter.is_ascii_lowercase())
            && part.chars().all(|letter| {
                letter.is_ascii_lowercase() || letter.is_ascii_digit() || letter == '_'
            });
        if is_id {
            found.push((before.clone(), part.to_string()));
        }
        before.push('"');
    }
    found
}

/// What an id is that stands behind this code, where the code says so.
fn part_of(file: &str, before: &str) -> Option<&'static str> {
    let ends = [
        ("Finding::new(", "finding"),
        ("finding(", "finding"),
        ("stop(", "finding"),
        ("FollowUpReason::new(", "follow_up"),
        ("Reason::new(", "reason"),
        ("Unmet::new(", "unmet"),
        ("act(", "next"),
        ("self.lack(", "lack"),
        ("self.lack_of(", "lack"),
        ("self.hold(seq,", "why"),
    ];
    let made = ends.iter().find(|(end, _)| before.ends_with(end));
    match made {
        Some((_, part)) => Some(part),
        None if file == "lint.rs" && before.ends_with("self.find(") => Some("lint"),
        None if file == "explain.rs" && before.ends_with("=>") => Some("reason"),
        None => None,
    }
}

#[test]
fn every_id_in_the_rules_has_a_message() {
    let mut seen = 0;
    let mut missing = Vec::new();
    let core = root().join("core/src");
    for file in [
        sources(&core.join("check")),
        sources(&core.join("procedure")),
        sources(&core.join("record")),
    ]
    .concat()
    {
        let name = file
            .file_name()
            .unwrap_or_default()
            .to_string_lossy()
            .to_string();
        for (before, id) in literals(&code(&file)) {
            let Some(part) = part_of(&name, &before) else {
                continue;
            };
            seen += 1;
            if report::message(part, &id).is_none() {
                missing.push(format!("{name}: {part} {id}"));
            }
        }
    }
    assert!(missing.is_empty(), "no message for {missing:#?}");
    assert!(
        seen > 100,
        "only {seen} ids found: is the scan still right?"
    );
}

#[test]
fn every_message_is_used() {
    let files = sources(&root().join("core/src"));
    let told: Vec<String> = files
        .iter()
        .filter(|file| !file.to_string_lossy().contains("catalogue"))
        .map(|file| code(file))
        .collect();
    let used: BTreeSet<String> = told
        .iter()
        .flat_map(|code| literals(code))
        .map(|(_, id)| id)
        .collect();
    let unused: Vec<String> = report::messages()
        .filter(|message| !used.contains(message.id))
        .filter(|message| !OPEN.contains(&message.part) || !used.contains(message.part))
        .map(|message| format!("{} {}", message.part, message.id))
        .collect();
    assert!(unused.is_empty(), "told nowhere: {unused:#?}");
}

#[test]
fn no_id_has_two_messages() {
    let mut seen = BTreeSet::new();
    for message in report::messages() {
        assert!(
            seen.insert((message.part, message.id)),
            "{} {} stands twice",
            message.part,
            message.id
        );
    }
}

/// The names a text has, outside and inside its optional parts.
fn names(text: &str) -> (BTreeSet<&str>, BTreeSet<&str>) {
    let (mut always, mut optional) = (BTreeSet::new(), BTreeSet::new());
    for (index, part) in text.split(['[', ']']).enumerate() {
        let names = part
            .split('{')
            .skip(1)
            .filter_map(|part| part.split('}').next())
            .map(|name| name.trim_end_matches('!'));
        let into = if index % 2 == 0 {
            &mut always
        } else {
            &mut optional
        };
        into.extend(names);
    }
    (always, optional)
}

/// What was said while journals were evaluated: by part and id, the names of the arguments each time.
#[derive(Default)]
struct Said {
    names: BTreeMap<(String, String), Vec<BTreeSet<String>>>,
    unworded: BTreeSet<String>,
}

impl Said {
    fn hear(&mut self, part: &str, id: &str, args: &Args) {
        let names = args.iter().map(|(name, _)| name.to_string()).collect();
        self.count(part, id, names);
        for (name, value) in args.iter().filter(|(name, _)| WORDED.contains(name)) {
            let value = match value {
                brimline::check::Arg::Text(text) => text.clone(),
                other => format!("{other:?}"),
            };
            if report::message(name, &value).is_none() {
                self.unworded.insert(format!("{name} {value}"));
            }
        }
    }

    fn count(&mut self, part: &str, id: &str, names: BTreeSet<String>) {
        let key = (part.to_string(), id.to_string());
        let all = self.names.entry(key).or_default();
        if !all.contains(&names) {
            all.push(names);
        }
    }

    fn hear_all(&mut self, evaluation: &Evaluation) {
        for finding in evaluation.findings() {
            self.hear("finding", finding.id, &finding.args);
        }
        for reason in evaluation.because().iter().chain(evaluation.why_not()) {
            self.hear("reason", reason.id, &reason.args);
        }
        for act in evaluation.next() {
            self.hear("next", act.id, &act.args);
            for caution in &act.cautions {
                self.count("caution", caution, BTreeSet::new());
            }
        }
        for (_, act) in Act::WORDS {
            for unmet in &evaluation.gate(*act).unmet {
                self.hear("unmet", unmet.id, &unmet.args);
            }
        }
        for caution in evaluation.cautions() {
            if report::caution(caution).is_some() {
                self.count("caution", caution, BTreeSet::new());
            }
        }
    }
}

fn heard() -> Said {
    let mut said = Said::default();
    for (pack, text) in evaluated().into_iter().chain(more()) {
        let journal = match Journal::from_json(&text, pack.measures()) {
            Ok(journal) => journal,
            Err(error) => panic!("{error}\n{text}"),
        };
        for wanted in [Verdict::AtLevel, Verdict::Low] {
            let mut options = Options::default();
            options.why_not = Some(wanted);
            let evaluation = evaluate_with(&pack, &journal, &options)
                .expect("a journal that was read evaluates");
            said.hear_all(&evaluation);
        }
        let check = LevelCheck::replay(&pack, &text).expect("what was read is replayed");
        let planned = Amount::parse("9 L").ok();
        let gate = check
            .gate(Act::Pour, planned, None)
            .expect("no moment was named");
        for unmet in &gate.unmet {
            said.hear("unmet", unmet.id, &unmet.args);
        }
        // What stands in the way at every moment, as a bay terminal asks.
        for upto in 0..=journal.entries().len() {
            let lines = lines_upto(&journal, upto);
            let evaluation = brimline::evaluate(&pack, lines.as_str());
            said.hear_all(&evaluation.expect("the beginning of a journal evaluates"));
        }
    }
    // The cautions that calculators give, by their vectors.
    for case in cases().iter().filter(|case| case.request.op == "calculate") {
        let told: Value = serde_json::from_str(&answer(&case.request)).expect("JSON");
        for caution in told["cautions"].as_array().into_iter().flatten() {
            let id = caution.as_str().expect("an id");
            said.count("caution", id, BTreeSet::new());
        }
    }
    // What a record can lack, by its vectors.
    for case in cases().iter().filter(|case| case.request.op == "evidence") {
        let told: Value = serde_json::from_str(&answer(&case.request)).expect("JSON");
        for lack in told["lacks"].as_array().into_iter().flatten() {
            let id = lack["id"].as_str().expect("an id");
            said.count("lack", id, BTreeSet::new());
        }
    }
    counter::hear(&mut said);
    let defective = Pack::from_json(DEFECTIVE).expect("a defective sheet still reads");
    for finding in defective.lint() {
        let names = finding.args.keys().map(ToString::to_string).collect();
        said.count("lint", finding.id, names);
        assert!(!report::lint(&finding).contains('{'));
    }
    said
}

#[test]
fn what_a_message_names_is_given() {
    let said = heard();
    assert!(
        said.unworded.is_empty(),
        "no words for {:#?}",
        said.unworded
    );
    let mut wrong = Vec::new();
    for ((part, id), given) in &said.names {
        let Some(text) = report::message(part, id) else {
            wrong.push(format!("{part} {id}: no message"));
            continue;
        };
        let (always, optional) = names(text);
        for name in always {
            if given.iter().any(|given| !given.contains(name)) {
                wrong.push(format!("{part} {id}: {name} is not always given"));
            }
        }
        for name in optional {
            if given.iter().all(|given| !given.contains(name)) {
                wrong.push(format!("{part} {id}: {name} is never given"));
            }
        }
    }
    assert!(wrong.is_empty(), "{wrong:#?}");
    let unheard: Vec<String> = report::messages()
        .filter(|message| RULED.contains(&message.part))
        .filter(|message| {
            !said
                .names
                .contains_key(&(message.part.to_string(), message.id.to_string()))
        })
        .map(|message| format!("{} {}", message.part, message.id))
        .collect();
    assert!(unheard.is_empty(), "never met here: {unheard:#?}");
}

#[test]
fn every_telling_is_whole() {
    let mut told = 0;
    for (pack, journal) in evaluated().into_iter().chain(more()) {
        let evaluation = brimline::evaluate(&pack, journal.as_str()).expect("a vector evaluates");
        let story = report::story(&pack, &journal).expect("what evaluates is told");
        for text in [report::text(&evaluation), story] {
            told += 1;
            assert!(
                !text.contains(['{', '}', '[', ']']),
                "a place left open:\n{text}"
            );
            for line in text.lines() {
                assert!(
                    line.chars().count() <= 80 && line.trim_end() == line,
                    "line {line:?}"
                );
            }
            let flat = text.split_whitespace().collect::<Vec<_>>().join(" ");
            assert!(flat.contains(report::verdict(evaluation.verdict())));
            for id in evaluation.cautions() {
                let sheet = evaluation.sheet();
                let own = sheet.into_iter().flat_map(|sheet| &sheet.cautions);
                let said = own.filter(|own| own.id == *id).map(|own| own.text.as_str());
                for said in said.chain(report::caution(id)) {
                    assert!(flat.contains(said), "caution {id} is left out:\n{text}");
                }
            }
        }
    }
    assert!(told > 200, "only {told} told");
}
