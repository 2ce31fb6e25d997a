//! What an estimate and an invoice say, met once each.

use super::Said;
use brimline::estimate::Asked;
use brimline::{LevelCheck, Pack, PriceList, estimate, invoice, report};
use std::collections::BTreeSet;

/// A check of the sheet that runs, with an approval and what came after it.
fn check(job: &str, entries: &str) -> LevelCheck {
    let pack = Pack::embedded().expect("the embedded pack reads");
    let journal = format!(
        r#"{{"format":"brimline-journal/1","procedure":"pipit-level","edition":2,"job":"{job}","entries":[{entries}]}}"#
    );
    LevelCheck::replay(&pack, &journal).expect("the journal reads")
}

/// A journal whose level was found: after two looks and one pour.
const FOUND: &str = r#"
    {"seq":1,"at":"2026-03-02T09:00:00Z","kind":"level","tilt":"0 deg","toward":"plug"},
    {"seq":2,"at":"2026-03-02T09:00:00Z","kind":"engine","state":"idling"},
    {"seq":3,"at":"2026-03-02T09:01:00Z","kind":"ranges","dwell":"4 s"},
    {"seq":4,"at":"2026-03-02T09:01:00Z","kind":"selector","position":"park"},
    {"seq":5,"at":"2026-03-02T09:01:30Z","kind":"temperature","reading":"44 °C","source":"scan"},
    {"seq":6,"at":"2026-03-02T09:01:31Z","kind":"plug","state":"open"},
    {"seq":7,"at":"2026-03-02T09:01:55Z","kind":"flow","grade":"slow_drip","for":"20 s"}"#;

pub fn hear(said: &mut Said) {
    let prices = PriceList::embedded().expect("the embedded list reads");
    let approved = |ceiling: &str| {
        format!(
            r#"{{"seq":1,"at":"2026-03-02T09:00:00Z","kind":"approved","ceiling":"{ceiling}","by":"Ivo"}}"#
        )
    };
    let poured = r#",{"seq":2,"at":"2026-03-02T09:05:00Z","kind":"plug","state":"open"},
        {"seq":3,"at":"2026-03-02T09:06:00Z","kind":"added","volume":"1 L","measured_by":"jug"},
        {"seq":4,"at":"2026-03-02T09:07:00Z","kind":"flow","grade":"trickle","for":"20 s"},
        {"seq":5,"at":"2026-03-02T09:08:00Z","kind":"drained","volume":"99 L","why":"excess"}"#;
    let hold =
        r#",{"seq":6,"at":"2026-03-02T09:09:00Z","kind":"hold","reason":"doubt","by":"Ivo"}"#;
    let past = r#"{"seq":1,"at":"2026-03-02T09:00:00Z","kind":"added","volume":"1.2 L","measured_by":"jug"}"#;
    let checks = [
        check("check", &approved("70 EUR")),
        check("check", &(approved("70 EUR") + poured)),
        check("check", &(approved("70 EUR") + poured + hold)),
        check("check", FOUND),
        check("check", past),
        check("exchange", ""),
        check("condition_only", ""),
    ];
    let asked = [
        "{}",
        r#"{"planned":"0.5 L","stock":{"full":[]}}"#,
        r#"{"likely":"0.6 L"}"#,
    ];
    for check in &checks {
        for asked in asked {
            let asked = Asked::from_json(asked).expect("what is asked reads");
            let told = estimate(&prices, check, &asked).expect("the job can be estimated");
            for finding in told.findings() {
                said.hear("finding", finding.id, &finding.args);
            }
            for assumed in told.cases().iter().flat_map(|case| &case.assumes) {
                said.hear("assumes", assumed.id, &assumed.args);
            }
            for id in told
                .cautions()
                .iter()
                .filter(|id| report::caution(id).is_some())
            {
                said.count("caution", id, BTreeSet::new());
            }
        }
        let told = invoice(&prices, check, None).expect("the job can be billed");
        for finding in told.findings() {
            said.hear("finding", finding.id, &finding.args);
        }
    }
}
