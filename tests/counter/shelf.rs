//! What is on the shelf, against what the worst case takes.

use super::jobs::{OPEN, asked, job, list, prices};
use brimline::{ErrorKind, PriceList, estimate};

#[test]
fn what_is_not_on_the_shelf_is_told_before_the_start() {
    let check = job("pipit-level", "check", &[]);
    let shelf = |text: &str| {
        let told = estimate(
            &prices(),
            &check,
            &asked(&format!(r#"{{"on":"2026-03-02","stock":{text}}}"#)),
        );
        told.expect("estimated")
            .stock()
            .expect("the shelf was given")
            .clone()
    };
    // The worst case takes 1.1 L.
    let short = shelf(r#"{"full":[{"container":"sedge-thin-bottle","count":1}]}"#);
    assert_eq!(
        short.short.map(|short| short.to_string()).as_deref(),
        Some("0.1 L")
    );
    let enough = shelf(r#"{"full":[{"container":"sedge-thin-bottle","count":2}]}"#);
    assert_eq!((enough.short, enough.containers[0].count), (None, 2));
    let rest = |fluid: &str, day: &str| {
        shelf(&format!(
            r#"{{"full":[{{"container":"sedge-thin-bottle","count":1}}],"opened":[{{"name":"red cap","rest":"0.4 L",
                "fluid":"{fluid}","sealed":true,"clean":true,"opened_on":"{day}"}}]}}"#
        ))
    };
    // 180 days are within, 181 are not: 3 September 2025 is 180 days before 2 March 2026.
    let used = rest("sedge-thin", "2025-09-03");
    assert_eq!(
        (used.opened.as_slice(), used.unused.len()),
        (&["red cap".to_string()][..], 0)
    );
    assert_eq!(
        used.left.map(|left| left.to_string()).as_deref(),
        Some("0.3 L")
    );
    let stale = rest("sedge-thin", "2025-09-02");
    assert_eq!(stale.unused[0].reasons[0].slug(), "out_of_date");
    assert_eq!(
        rest("sedge-mid", "2026-03-01").unused[0].reasons[0].slug(),
        "other_fluid"
    );
    // Opened after the day of use: one of the two dates is wrong, and nobody can say how old it is.
    let ahead = rest("sedge-thin", "2026-03-03");
    assert_eq!(ahead.unused[0].reasons[0].slug(), "age_unknown");
    let unknown = asked(r#"{"stock":{"full":[{"container":"barrel","count":1}]}}"#);
    let error = estimate(&prices(), &check, &unknown).expect_err("refused");
    let fault = error.faults().next().expect("a fault");
    assert_eq!(
        (fault.kind, fault.path.as_str()),
        (ErrorKind::Unresolved, "stock.full[0].container")
    );
}

#[test]
fn an_age_that_nobody_can_tell_is_not_called_too_old() {
    let reasons = |list: &PriceList, entries: &[String], asked_with: &str| -> Vec<String> {
        let check = job("pipit-level", "check", entries);
        let told = estimate(list, &check, &asked(asked_with)).expect("estimated");
        let unused = &told.stock().expect("the shelf was given").unused;
        let reasons = unused.iter().flat_map(|unused| &unused.reasons);
        reasons.map(|reason| reason.slug().to_string()).collect()
    };
    let stock = |on: &str, opened_on: &str| {
        format!(
            r#"{{{on}"stock":{{"full":[{{"container":"sedge-thin-bottle","count":2}}],"opened":[{{"name":"red cap",
                "rest":"0.4 L","fluid":"sedge-thin","sealed":true,"clean":true{opened_on}}}]}}}}"#
        )
    };
    let dated = r#","opened_on":"2026-03-01""#;
    // No entry and no `on`: the day of use is not known.
    assert_eq!(reasons(&prices(), &[], &stock("", dated)), ["age_unknown"]);
    // Who did not write the day on it has that defect alone.
    assert_eq!(reasons(&prices(), &[], &stock("", "")), ["not_dated"]);
    // The first entry, or `on`, says the day.
    assert!(reasons(&prices(), &[OPEN.into()], &stock("", dated)).is_empty());
    assert!(reasons(&prices(), &[], &stock(r#""on":"2026-03-02","#, dated)).is_empty());
    // Where the shop sets no limit of days, nobody asks.
    let endless = list(r#","max_age_days":180"#, "");
    assert!(reasons(&endless, &[], &stock("", dated)).is_empty());
}
