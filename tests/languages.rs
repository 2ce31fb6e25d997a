//! Tellings in other languages: whatever is told comes from the messages.

#[path = "messages/journals.rs"]
#[allow(dead_code, reason = "each test binary uses its part of it")]
mod journals;
#[path = "languages/left_over.rs"]
mod left_over;
#[path = "languages/told.rs"]
mod told;
mod vector_cases;

use brimline::report::{self, Catalogue, Profile, Teller};
use brimline::{Pack, evaluate};
use journals::{evaluated, more};
use left_over::{has_point, left_over, words};
use serde_json::Value;
use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::{Path, PathBuf};
use told::{Told, everything};
use vector_cases::root;

fn parsed(text: &str) -> Value {
    serde_json::from_str(text).expect("JSON")
}

/// Every text of the English messages changed.
fn changed(change: &dyn Fn(&str) -> String) -> Catalogue {
    fn texts(value: &mut Value, change: &dyn Fn(&str) -> String) {
        match value {
            Value::String(text) => *text = change(text),
            Value::Object(members) => members.values_mut().for_each(|value| texts(value, change)),
            _ => {}
        }
    }
    let mut document = parsed(&Catalogue::english().to_json());
    texts(&mut document["messages"], change);
    Catalogue::from_json(&document.to_string()).expect("it tells all that English tells")
}

/// The same with a comma before the decimals.
fn with_a_comma(catalogue: Catalogue) -> Catalogue {
    let mut document = parsed(&catalogue.to_json());
    document["decimal_sign"] = ",".into();
    Catalogue::from_json(&document.to_string()).expect("a comma is a decimal sign")
}

fn teller(catalogue: Catalogue) -> Teller {
    Teller::new(catalogue, Profile::as_entered()).expect("no language is asked for")
}

/// Every letter of the texts made Greek, so that whatever is English in a telling is not from the messages.
fn foreign(text: &str) -> String {
    let mut inside = false;
    let letter = |letter: char| {
        inside = match letter {
            '{' => true,
            '}' => false,
            _ => inside,
        };
        if inside || !letter.is_ascii_alphabetic() {
            letter
        } else if letter.is_ascii_uppercase() {
            'Ω'
        } else {
            'ω'
        }
    };
    text.chars().map(letter).collect()
}

/// What stands where it must not, with how often and where it was seen first.
#[derive(Default)]
struct Amiss(BTreeMap<String, (usize, String)>);

impl Amiss {
    fn find(&mut self, what: impl Into<String>, told: &Told) {
        let seen = || (0, format!("{}\n{}", told.of, told.text));
        self.0.entry(what.into()).or_insert_with(seen).0 += 1;
    }

    fn assert_none(&self) {
        let said = self.0.iter();
        let said: Vec<String> = said
            .map(|(what, (times, seen))| format!("{what}: {times} times, as in {seen}"))
            .collect();
        assert!(said.is_empty(), "{}", said.join("\n"));
    }
}

#[test]
fn nothing_is_told_but_by_messages() {
    let all = everything(&teller(with_a_comma(changed(&foreign))), 1);
    assert!(all.len() > 1500, "only {} told", all.len());
    let mut amiss = Amiss::default();
    for told in &all {
        let rest = left_over(told);
        for word in words(&rest, |letter| letter.is_ascii_alphabetic()) {
            amiss.find(word, told);
        }
        if has_point(&rest) {
            amiss.find("a point before decimals", told);
        }
    }
    amiss.assert_none();
}

#[test]
fn every_caution_and_every_argument_is_there_in_any_words() {
    // Marked at both ends, so that a text that is cut anywhere is seen.
    let teller = teller(changed(&|text| format!("«{text}»")));
    for (pack, text) in evaluated().into_iter().chain(more()) {
        let evaluation = evaluate(&pack, text.as_str()).expect("it evaluates");
        let story = teller.story(&pack, &text).expect("what evaluates is told");
        for page in [teller.text(&evaluation), story] {
            assert!(
                !page.contains(['{', '}', '[', ']']),
                "a place left open:\n{page}"
            );
            let flat = page.split_whitespace().collect::<Vec<_>>().join(" ");
            let (opened, closed) = (flat.matches('«').count(), flat.matches('»').count());
            assert!(opened > 20 && opened == closed, "{opened} {closed}\n{page}");
            let of_acts = evaluation
                .next()
                .iter()
                .flat_map(|act| act.cautions.iter().copied());
            let ids = evaluation.cautions().iter().map(AsRef::as_ref);
            for caution in ids.chain(of_acts).filter_map(report::caution) {
                assert!(flat.contains(&format!("«{caution}»")), "{caution}\n{page}");
            }
        }
    }
}

/// Lists whose words are names of their own, or which are worded under another name.
const NAMES: &[&str] = &[
    "torque_strength_class",
    "leak_seepage_class",
    "volume_base",
    "fluid_blend_rule",
    "fluid_procedure",
    "signal_byte_order",
];
const ELSEWHERE: &[(&str, &str)] = &[
    ("torque_slip_factor", "factor"),
    ("torque_tool_reason_id", "tool_reason"),
    ("warm_up_reason", "forecast"),
];

fn sources(folder: &Path, into: &mut Vec<PathBuf>) {
    for entry in fs::read_dir(folder).expect("the folder is there") {
        let path = entry.expect("a folder lists").path();
        if path.is_dir() {
            sources(&path, into);
        } else {
            into.push(path);
        }
    }
}

/// `ToolType` as `tool_type`.
fn snake(name: &str) -> String {
    let mut out = String::new();
    for letter in name.chars() {
        if letter.is_uppercase() && !out.is_empty() {
            out.push('_');
        }
        out.extend(letter.to_lowercase());
    }
    out
}

#[test]
fn every_word_of_a_calculator_has_its_message_and_no_other() {
    let mut listed: BTreeSet<(String, String)> = BTreeSet::new();
    let rooms = [
        "torque", "volume", "warm_up", "fluid", "signal", "leak", "money",
    ];
    for room in rooms {
        let mut files = Vec::new();
        sources(&root().join("core/src").join(room), &mut files);
        for file in files {
            let code = fs::read_to_string(&file).expect("a source file reads");
            for list in code.split("words! {").skip(1) {
                let list = list.split("\n}").next().unwrap_or_default();
                let (_, list) = list.split_once("enum ").expect("a list has a name");
                let (name, cases) = list.split_once(" {").expect("a list has cases");
                let part = format!("{room}_{}", snake(name));
                let part = ELSEWHERE
                    .iter()
                    .find(|(own, _)| *own == part)
                    .map_or(part.clone(), |(_, other)| (*other).into());
                for line in cases
                    .lines()
                    .filter(|line| !line.trim_start().starts_with("//"))
                {
                    if let Some((_, id)) = line.split_once(" = \"") {
                        listed.insert((part.clone(), id.trim_end_matches("\",").into()));
                    }
                }
            }
        }
    }
    assert!(listed.len() > 100);
    let missing: Vec<_> = listed
        .iter()
        .filter(|(part, _)| !NAMES.contains(&part.as_str()))
        .filter(|(part, id)| report::message(part, id).is_none())
        .collect();
    assert!(missing.is_empty(), "no message for {missing:#?}");
    let is_of_a_room = |part: &str| {
        rooms.iter().any(|room| {
            part.strip_prefix(room)
                .is_some_and(|rest| rest.starts_with('_'))
        })
    };
    let unused: Vec<_> = report::messages()
        .filter(|message| is_of_a_room(message.part))
        .filter(|message| !listed.contains(&(message.part.into(), message.id.into())))
        .collect();
    assert!(unused.is_empty(), "told nowhere: {unused:#?}");
}

#[test]
fn a_profile_changes_units_and_nothing_else() {
    let profile = r#"{"format":"brimline-profile/1","units":{"volume":{"unit":"L","decimals":9}}}"#;
    let profile = Profile::from_json(profile).expect("it reads");
    let teller = Teller::new(Catalogue::english(), profile).expect("no language is asked for");
    let pack = Pack::embedded().expect("it reads");
    let journal =
        r#"{"format":"brimline-journal/1","procedure":"pipit-level","job":"check","entries":[]}"#;
    let evaluation = evaluate(&pack, journal).expect("it evaluates");
    assert_eq!(teller.text(&evaluation), report::text(&evaluation));
}

fn example(name: &str) -> String {
    let path = root().join("examples/messages").join(name);
    fs::read_to_string(path).expect("the example reads")
}

/// The German of the shipped example, for its shop.
fn german() -> Teller {
    let limits = brimline::Limits::default().with_faults(1000);
    let catalogue = Catalogue::from_json_with(&example("german.json"), &limits);
    let catalogue = catalogue.unwrap_or_else(|error| panic!("{error}"));
    let shop = Profile::from_json(&example("shop.json")).expect("the profile reads");
    Teller::new(catalogue, shop).expect("both are German")
}

/// Every word of a catalogue's texts, without the names of arguments, and in how many texts it is.
fn worded(catalogue: &Catalogue) -> BTreeMap<String, usize> {
    fn gather(value: &Value, into: &mut BTreeMap<String, usize>) {
        match value {
            Value::String(text) => {
                let apart = text.to_lowercase().replace('}', "{");
                let own: Vec<&str> = apart.split('{').step_by(2).collect();
                for word in words(&own.join(" "), char::is_alphabetic) {
                    *into.entry(word).or_default() += 1;
                }
            }
            Value::Object(members) => members.values().for_each(|value| gather(value, into)),
            _ => {}
        }
    }
    let mut into = BTreeMap::new();
    gather(&parsed(&catalogue.to_json())["messages"], &mut into);
    into
}

/// Words of the English messages that no more than one German text has: an English one, left there, brings some.
fn only_english(german: &Catalogue) -> BTreeSet<String> {
    let (english, german) = (worded(&Catalogue::english()), worded(german));
    let is_german = |word: &String| german.get(word).is_some_and(|texts| *texts > 1);
    let words = english.into_keys();
    words
        .filter(|word| !is_german(word) && !BOTH.contains(&word.as_str()))
        .collect()
}

/// Words that are English and German.
const BOTH: &[&str] = &[
    "aluminium",
    "byte",
    "bytes",
    "f",
    "form",
    "hybrid",
    "moment",
    "parameter",
    "sha",
    "will",
];

/// The shipped example is whole: where a message is new, its German belongs into `examples/messages/german.json`.
#[test]
fn the_german_example_is_whole() {
    let teller = german();
    let german = teller.catalogue();
    assert_eq!(
        (german.language(), german.decimal_sign().slug()),
        ("de", ",")
    );
    // Nothing was left in English by oversight: texts are alike only where they hold no words, or the same name.
    let (english, own) = (
        parsed(&Catalogue::english().to_json()),
        parsed(&german.to_json()),
    );
    let mut alike = Vec::new();
    for (part, texts) in english["messages"].as_object().expect("parts") {
        for (id, text) in texts.as_object().expect("texts") {
            let words = text.to_string();
            if &own["messages"][part][id] == text && foreign(&words) != words {
                alike.push(format!("{part} {id}"));
            }
        }
    }
    assert!(alike.is_empty(), "left in English: {alike:?}");
    let english = only_english(german);
    let said = worded(german);
    let said: Vec<&String> = said.keys().filter(|word| english.contains(*word)).collect();
    assert!(said.is_empty(), "English words in German: {said:?}");
    let pack = Pack::embedded().expect("it reads");
    let journal = r#"{"format":"brimline-journal/1","procedure":"pipit-level","edition":2,"job":"check","entries":[
        {"seq":1,"at":"2026-03-02T09:00:00Z","kind":"temperature","reading":"40.5 °C","source":"scan"},
        {"seq":2,"at":"2026-03-02T09:00:10Z","kind":"added","volume":"0.5 L","measured_by":"sealed"}]}"#;
    let story = teller.story(&pack, journal).expect("it is told");
    for line in [
        "  Öl mit 42 °C oder mehr, abgelesen höchstens 30 s vor dem Blick.",
        "09:00:00    1  Temperatur 40,5 °C mit dem Diagnosegerät.",
        "  Netto hinein  zwischen 0,49 L und 0,51 L hinein",
    ] {
        assert!(story.lines().any(|own| own == line), "{line}\n{story}");
    }
}

/// What is told in German has no word of the English messages that is no German one, and a comma before decimals.
#[test]
fn the_german_example_tells_nothing_in_english() {
    let teller = german();
    let english = only_english(teller.catalogue());
    assert!(english.len() > 800, "only {} words", english.len());
    let mut amiss = Amiss::default();
    for told in everything(&teller, 3) {
        let rest = left_over(&told);
        for word in words(&rest, char::is_alphabetic) {
            if english.contains(&word) {
                amiss.find(word, &told);
            }
        }
        if has_point(&rest) {
            amiss.find("a point before decimals", &told);
        }
    }
    amiss.assert_none();
}
