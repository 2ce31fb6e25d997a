//! What an estimate and an invoice say, met once each.

use super::Said;
use brimline::estimate::Asked;
use brimline::{Estimate, Invoice, LevelCheck, Pack, PriceList, estimate, invoice, report};
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

/// Jobs before they begin, running, passed and found.
fn checks() -> Vec<LevelCheck> {
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
    Vec::from([
        check("check", &approved("70 EUR")),
        check("check", &(approved("70 EUR") + poured)),
        check("check", &(approved("70 EUR") + poured + hold)),
        check("check", FOUND),
        check("check", past),
        check("exchange", ""),
        check("condition_only", ""),
    ])
}

const ASKED: [&str; 3] = [
    "{}",
    r#"{"planned":"0.5 L","stock":{"full":[]}}"#,
    r#"{"likely":"0.6 L","stock":{"full":[{"container":"sedge-thin-bottle","count":9}],"opened":[{"name":"red cap",
        "rest":"0.4 L","fluid":"sedge-mid","sealed":true,"clean":true}],"bulk":"0.1 L"}}"#,
];

/// Every estimate and every invoice of these jobs.
fn told() -> Vec<(LevelCheck, Vec<Estimate>, Invoice)> {
    let prices = PriceList::embedded().expect("the embedded list reads");
    let before = check("check", "");
    let before = estimate(&prices, &before, &Asked::default());
    let quote = before.expect("it can be estimated").quote();
    let of = |check: LevelCheck| {
        let asked = ASKED.map(|asked| Asked::from_json(asked).expect("what is asked reads"));
        let told =
            asked.map(|asked| estimate(&prices, &check, &asked).expect("it can be estimated"));
        let billed = invoice(&prices, &check, Some(&quote)).expect("it can be billed");
        (check, told.to_vec(), billed)
    };
    checks().into_iter().map(of).collect()
}

/// A job whose approval is no sum: it can be billed, not estimated.
const UNREAD: &str = r#"{"seq":1,"at":"2026-03-02T09:00:00Z","kind":"approved","ceiling":"around eighty","by":"Ivo"}"#;

pub fn hear(said: &mut Said) {
    let prices = PriceList::embedded().expect("the embedded list reads");
    let unread = invoice(&prices, &check("check", UNREAD), None).expect("it can be billed");
    for finding in unread.findings() {
        said.hear("finding", finding.id, &finding.args);
    }
    for (_, estimates, invoice) in told() {
        for told in estimates {
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
        for finding in invoice.findings() {
            said.hear("finding", finding.id, &finding.args);
        }
    }
}

fn is_whole(text: &str, cautions: &[String], sums: &[String], check: &LevelCheck) {
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
    for sum in sums {
        assert!(flat.contains(sum.as_str()), "{sum} is left out:\n{text}");
    }
    let own = || check.sheet().into_iter().flat_map(|sheet| &sheet.cautions);
    for id in cautions {
        let own = own()
            .filter(|own| own.id == *id)
            .map(|own| own.text.as_str());
        for said in own.chain(report::caution(id)) {
            assert!(flat.contains(said), "caution {id} is left out:\n{text}");
        }
    }
}

#[test]
fn every_telling_of_a_counter_is_whole() {
    for (check, estimates, invoice) in told() {
        for told in estimates {
            let sums = told.cases().map(|case| case.total.total.to_string());
            is_whole(
                &report::estimate(&told, check.sheet()),
                told.cautions(),
                &sums,
                &check,
            );
        }
        let sums: Vec<String> = invoice
            .lines()
            .iter()
            .map(|line| line.net.to_string())
            .collect();
        is_whole(
            &report::invoice(&invoice, check.sheet()),
            invoice.cautions(),
            &sums,
            &check,
        );
    }
}

/// The one telling of an invoice has what the disposal log and the shop need, and names taxes as they are read.
#[test]
fn an_invoice_is_told_with_all_it_holds() {
    for (check, _, invoice) in told() {
        let told = report::invoice(&invoice, check.sheet());
        let (lines, rest) = told
            .split_once("Against the estimate")
            .expect("it was estimated");
        assert!(lines.contains("Tax, goods and work: 19 % of "), "{told}");
        assert!(rest.contains("What came out"), "{told}");
        let (_, shop) = rest.split_once("For the shop").unwrap_or_default();
        for finding in invoice.findings() {
            let flat = shop.split_whitespace().collect::<Vec<_>>().join(" ");
            assert!(flat.contains(&report::finding(finding)), "{told}");
        }
        assert_eq!(shop.is_empty(), invoice.findings().is_empty(), "{told}");
        assert_eq!(
            rest.contains("What is left over"),
            !invoice.leftover().is_empty()
        );
    }
}
