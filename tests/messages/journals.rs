//! The journals whose tellings are looked at: those of the vectors, the examples, and some for what those lack.

use super::vector_cases::{cases, root};
use brimline::{Journal, Pack};
use serde_json::{Value, json};
use std::fs;

/// A pack with every defect the linter knows, on three sheets.
pub const DEFECTIVE: &str = r#"{"format":"brimline-pack/1","id":"defective","version":"1","title":"Defects (invented)",
  "fluids":[{"id":"fennel-thin"}],"procedures":[
  {"id":"plover-pipe","edition":3,"supersedes":2,"fluid":"fennel-thick","capacity":{"refill":"1 L"},
   "method":{"kind":"standpipe"},
   "conditions":{"engine":"idling","temperature":{"min":"50 °C","max":"40 °C","printed":["99 °F"]}},
   "refill":{"step":"0.25 L"},"leak_limit":{"more_than":"1.1 L","printed":["2 US qt"]},
   "closing":{"torque":"14 N·m","printed":["10 lbf·ft","120 lbf·in"],"thread":"Q7","close_before_stop":false}},
  {"id":"plover-bare","edition":1,"method":{"kind":"overflow_plug"},"conditions":{"engine":"idling"},
   "closing":{"torque":"124 lbf·ft","printed":["124 N·m"],"thread":"M10x1"}},
  {"id":"plover-least","edition":1,"method":{"kind":"side_plug"}}]}"#;

/// Journals that meet what the vectors do not, with their packs.
pub fn more() -> Vec<(Pack, String)> {
    let embedded = Pack::embedded().expect("the embedded pack reads");
    let defective = Pack::from_json(DEFECTIVE).expect("a defective sheet still reads");
    let folder = root().join("examples/journals");
    let mut all: Vec<(Pack, String)> = fs::read_dir(folder)
        .expect("the folder is there")
        .map(|entry| entry.expect("a folder lists").path())
        .map(|path| fs::read_to_string(path).expect("a journal reads"))
        .map(|journal| (embedded.clone(), journal))
        .collect();
    let odd = [
        r#""kind":"confirmed","what":"moon_risen","by":"Tilda""#,
        r#""kind":"temperature","reading":"-300 °C","source":"scan""#,
        r#""kind":"temperature","reading":"-40 °C","source":"network""#,
        r#""kind":"added","volume":"0.1 L","measured_by":"jug","batch":"seven""#,
        r#""kind":"added","volume":"0.2 L","measured_by":"jug""#,
        r#""kind":"added","volume":"0.3 L","measured_by":"jug""#,
        r#""kind":"plug","state":"closed""#,
        r#""kind":"tightened","torque":"20 N·m","tool":"click wrench","adapter":"40 mm""#,
        r#""kind":"tightened","torque":"20 lbf·ft""#,
        r#""kind":"reading","value":"31 mm","side":"left","status":"valid""#,
        r#""kind":"seepage","place":"pan seam","class":"II""#,
        r#""kind":"driven","distance":"12 km","peak":"84 °C""#,
        r#""kind":"fluid","appearance":"clear","smell":"none","debris":"fine_grey","coolant_strip":"negative""#,
        r#""kind":"hold","reason":"noise","by":"Tilda""#,
        r#""kind":"release","reason":"found: a loose shield","by":"Bram""#,
        r#""kind":"correction","of":3,"void":true,"reason":"never read""#,
    ];
    let entries: Vec<String> = odd
        .iter()
        .zip(1..)
        .map(|(told, seq)| format!(r#"{{"seq":{seq},"at":"2025-03-04T09:00:{seq:02}Z",{told}}}"#))
        .collect();
    let journal = |pack: &Pack, version: &str, procedure: &str| {
        let pin = format!(r#"{{"id":"{}","version":"{version}"}}"#, pack.id());
        let entries = entries.join(",");
        let journal = format!(
            r#"{{"format":"brimline-journal/1","job":"check","pack":{pin},"procedure":"{procedure}","entries":[{entries}]}}"#
        );
        (pack.clone(), journal)
    };
    all.push(journal(&embedded, "1", "pipit-level"));
    all.push((embedded.clone(), in_a_cold_shop()));
    all.push(journal(&defective, "1", "plover-pipe"));
    all
}

/// A unit found short just inside the window, in a shop so cold that the pour chills it out of it.
fn in_a_cold_shop() -> String {
    let told = fs::read_to_string(root().join("examples/journals/short_unit.json"));
    let mut journal: Value = serde_json::from_str(&told.expect("it reads")).expect("JSON");
    let entries = journal["entries"].as_array_mut().expect("entries");
    let first = entries.first_mut().expect("an entry");
    let at = first["at"].clone();
    *first = json!({"seq": 1, "at": at, "kind": "temperature", "reading": "-30 °C", "source": "ambient"});
    for entry in entries.iter_mut().skip(1) {
        if entry["source"] == "scan" && entry["reading"] == "44 °C" {
            entry["reading"] = json!("42 °C");
        }
    }
    journal.to_string()
}

/// Every journal of the vectors that evaluates, with its pack.
pub fn evaluated() -> Vec<(Pack, String)> {
    cases()
        .iter()
        .filter(|case| case.request.op == "evaluate" && case.expected.is_ok())
        .filter_map(|case| {
            let [pack, journal, ..] = case.request.args.as_slice() else {
                return None;
            };
            let pack = if pack.is_empty() {
                Pack::embedded()
            } else {
                Pack::from_json(pack)
            };
            Some((pack.ok()?, journal.clone()))
        })
        .collect()
}

pub fn lines_upto(journal: &Journal, upto: usize) -> String {
    let mut lines = brimline::document::canonical(journal.header());
    lines.push('\n');
    for entry in journal.entries().iter().take(upto) {
        lines.push_str(&brimline::document::canonical(entry));
        lines.push('\n');
    }
    lines
}
