//! Jobs at the embedded counter.

use brimline::estimate::{Asked, Line};
use brimline::{LevelCheck, Pack, PriceList};

/// A job on a sheet, with these entries: the rest of each, without `seq` and `at`.
pub fn job(sheet: &str, kind: &str, entries: &[String]) -> LevelCheck {
    let pack = Pack::embedded().expect("the embedded pack reads");
    LevelCheck::replay(&pack, &journal(sheet, kind, entries)).expect("the journal reads")
}

/// Its journal.
pub fn journal(sheet: &str, kind: &str, entries: &[String]) -> String {
    let entries: Vec<String> = entries
        .iter()
        .enumerate()
        .map(|(place, rest)| {
            let (seq, minute) = (place + 1, place % 60);
            format!(r#"{{"seq":{seq},"at":"2026-03-02T09:{minute:02}:00Z",{rest}}}"#)
        })
        .collect();
    let edition = if sheet == "pipit-level" { 2 } else { 1 };
    format!(
        r#"{{"format":"brimline-journal/1","procedure":"{sheet}","edition":{edition},"job":"{kind}","entries":[{}]}}"#,
        entries.join(",")
    )
}

pub fn entries(rest: &[&str]) -> Vec<String> {
    rest.iter().map(ToString::to_string).collect()
}

pub fn prices() -> PriceList {
    PriceList::embedded().expect("the embedded list reads")
}

/// The embedded list, with one thing in it told otherwise.
pub fn list(from: &str, to: &str) -> PriceList {
    let text = prices().to_json();
    assert!(text.contains(from), "{from}");
    PriceList::from_json(&text.replace(from, to)).expect("it reads")
}

pub fn asked(text: &str) -> Asked {
    Asked::from_json(text).expect("what is asked reads")
}

pub const OPEN: &str = r#""kind":"plug","state":"open""#;
pub const CLOSED: &str = r#""kind":"plug","state":"closed""#;
pub const TIGHT: &str = r#""kind":"tightened","torque":"13 N·m""#;

pub fn pour(volume: &str) -> String {
    format!(r#""kind":"added","volume":"{volume}","measured_by":"jug""#)
}

/// Lines as `id item quantity net`.
pub fn told(lines: &[Line]) -> Vec<String> {
    let tell = |line: &Line| {
        let quantity = line.quantity_text();
        format!("{} {} {quantity} {}", line.id.slug(), line.item, line.net)
    };
    lines.iter().map(tell).collect()
}
