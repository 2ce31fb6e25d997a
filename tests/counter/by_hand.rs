//! Jobs of the embedded pack under the embedded price list, worked by hand from both documents.

use super::jobs::{CLOSED, OPEN, TIGHT, asked, entries, job, pour, prices, told};
use brimline::estimate::{Asked, Quote};
use brimline::{ErrorKind, PriceList, estimate, invoice, report};

#[test]
fn three_cases_are_consistent_sets_of_lines() {
    let told_of = estimate(
        &prices(),
        &job("pipit-level", "check", &[]),
        &Asked::default(),
    );
    let told_of = told_of.expect("the job can be estimated");
    let [best, likely, worst] = told_of.cases();
    // 30 min at 92.00 EUR/h; nothing poured.
    assert_eq!(
        told(&best.lines),
        [
            "labour level-check 0.5 h 46.00 EUR",
            "seal seal-ring 1 1.90 EUR",
            "threadlocker locker-medium 1 0.80 EUR",
            "supplies cloths-and-cleaner 1 3.50 EUR",
        ]
    );
    // 52.20 at 19 %: 9.918.
    assert_eq!(best.total.total.to_string(), "62.12 EUR");
    // Half of 1.1 L is 0.55 L: three steps of 0.25 L, 15.90. 68.10 at 19 %: 12.939.
    assert_eq!(told(&likely.lines)[1], "fluid sedge-thin 0.75 L 15.90 EUR");
    assert_eq!(likely.total.total.to_string(), "81.04 EUR");
    // 1.1 L, 48 min of search, a plug: 155.92 at 19 %: 29.6248.
    assert_eq!(
        told(&worst.lines)[1..4],
        [
            "leak_search leak-search 0.8 h 73.60 EUR",
            "fluid sedge-thin 1.10 L 23.32 EUR",
            "plug plug-fine 1 6.80 EUR",
        ]
    );
    assert_eq!(worst.total.total.to_string(), "185.54 EUR");
    let assumes: Vec<&str> = worst.assumes.iter().map(|assumed| assumed.id).collect();
    assert_eq!(
        assumes,
        ["to_limit", "leak_search", "new_plug", "before_new_approval"]
    );
}

#[test]
fn a_call_comes_before_the_pour_that_passes_the_ceiling() {
    let approved = r#""kind":"approved","ceiling":"80.00 EUR","by":"Ivo""#;
    let check = job(
        "pipit-level",
        "check",
        &[approved.into(), OPEN.into(), pour("0.5 L")],
    );
    let told = estimate(&prices(), &check, &asked(r#"{"planned":"0.25 L"}"#)).expect("estimated");
    let approval = told.approval().expect("a ceiling was approved");
    // 62.80 at 19 %: 11.932. With 0.75 L it is the likely case; with 0.70 L 67.04 and 12.7376.
    let text = |money: Option<brimline::money::Money>| money.map(|money| money.to_string());
    assert_eq!(approval.so_far.to_string(), "74.73 EUR");
    assert_eq!(text(approval.headroom).as_deref(), Some("5.27 EUR"));
    assert_eq!(text(approval.after).as_deref(), Some("81.04 EUR"));
    assert_eq!(
        approval.affordable.map(|left| left.to_string()).as_deref(),
        Some("0.2 L")
    );
    assert_eq!(approval.entries, [1]);
    let ids: Vec<&str> = told.findings().iter().map(|finding| finding.id).collect();
    assert_eq!(ids, ["call_before_pour", "worst_past_ceiling"]);
    // A fact in every case.
    assert!(
        told.cases()
            .iter()
            .all(|case| case.volume.to_string() != "0 L")
    );
    // Within the ceiling nothing is said of the pour.
    let told = estimate(&prices(), &check, &asked(r#"{"planned":"0.2 L"}"#)).expect("estimated");
    assert_eq!(told.findings().len(), 1);
}

#[test]
fn a_ceiling_that_cannot_be_kept_is_refused_where_it_stands() {
    let refused = |ceiling: &str| {
        let approved = format!(r#""kind":"approved","ceiling":"{ceiling}","by":"Ivo""#);
        let check = job("pipit-level", "check", &[OPEN.into(), approved]);
        let error = estimate(&prices(), &check, &Asked::default()).expect_err("refused");
        let fault = error.faults().next().expect("a fault").clone();
        (fault.kind, fault.path)
    };
    let at = "entries[1].ceiling".to_string();
    assert_eq!(
        refused("around eighty"),
        (ErrorKind::NotANumber, at.clone())
    );
    assert_eq!(refused("80 USD"), (ErrorKind::Conflict, at.clone()));
    // Labour is 46.00 and 8.74.
    assert_eq!(refused("54.73 EUR"), (ErrorKind::OutOfRange, at));
    let told = estimate(
        &prices(),
        &job("pipit-level", "check", &[]),
        &asked(r#"{"ceiling":"54.73 EUR"}"#),
    );
    let error = told.expect_err("refused");
    assert_eq!(
        error.faults().next().map(|fault| fault.path.as_str()),
        Some("ceiling")
    );
    let told = estimate(
        &prices(),
        &job("pipit-level", "check", &[]),
        &asked(r#"{"ceiling":"54.74 EUR"}"#),
    );
    assert!(told.is_ok());
}

#[test]
fn an_invoice_says_what_was_more_and_by_which_entries() {
    let estimated = estimate(
        &prices(),
        &job("pipit-level", "check", &[]),
        &Asked::default(),
    );
    let quote = Quote::from_json(&estimated.expect("estimated").to_json()).expect("it reads back");
    let all = [
        OPEN.to_string(),
        pour("0.6 L"),
        pour("0.4 L"),
        r#""kind":"confirmed","what":"leak_searched""#.into(),
        r#""kind":"confirmed","what":"plug_replaced""#.into(),
        CLOSED.into(),
        TIGHT.into(),
    ];
    let check = job("pipit-level", "check", &all);
    let billed = invoice(&prices(), &check, Some(&quote)).expect("it can be billed");
    // 153.80 at 19 %: 29.222.
    assert_eq!(billed.total().total.to_string(), "183.02 EUR");
    let against = billed.against().expect("an estimate was given");
    assert_eq!(
        against.more.map(|more| more.to_string()).as_deref(),
        Some("101.98 EUR")
    );
    let told: Vec<String> = against
        .lines
        .iter()
        .map(|own| {
            let more = own.more.map(|more| more.to_string()).unwrap_or_default();
            format!(
                "{} {more} {} {:?}",
                own.id.slug(),
                own.why[0].slug(),
                own.entries
            )
        })
        .collect();
    assert_eq!(
        told,
        [
            "leak_search 73.60 EUR added [4]",
            "fluid 5.30 EUR more [2, 3]",
            "plug 6.80 EUR added [5]",
        ]
    );
}

#[test]
fn each_policy_bills_what_it_says() {
    let lines = |sheet: &str, all: &[String]| {
        let billed = invoice(&prices(), &job(sheet, "check", all), None).expect("billed");
        let left = billed.leftover().first().map(|own| own.left.to_string());
        let fluid: Vec<String> = told(billed.lines());
        let fluid = fluid.into_iter().filter(|line| line.starts_with("fluid"));
        (fluid.collect::<Vec<_>>(), left.unwrap_or_default())
    };
    // One flask of 1 L at 33.50 is cheaper than two bottles of 0.5 L at 17.90.
    let (fluid, left) = lines("dunlin-pipe", &[pour("0.7 L")]);
    assert_eq!(
        (fluid[0].as_str(), left.as_str()),
        ("fluid teasel-wet-flask 1 33.50 EUR", "0.3 L")
    );
    // But bottles were named.
    let named =
        r#""kind":"added","volume":"0.7 L","measured_by":"sealed","container":"teasel-wet-bottle""#;
    let (fluid, left) = lines("dunlin-pipe", &entries(&[named]));
    assert_eq!(
        (fluid[0].as_str(), left.as_str()),
        ("fluid teasel-wet-bottle 2 35.80 EUR", "0.3 L")
    );
    // Out of the drum in begun tenths: nothing is left of it.
    let (fluid, left) = lines("siskin-side", &[pour("0.25 L")]);
    assert_eq!(
        (fluid[0].as_str(), left.as_str()),
        ("fluid sedge-mid 0.3 L 3.42 EUR", "")
    );
    // 180 g at 842 kg/m³ are 0.2138 L.
    let weighed =
        r#""kind":"added","mass":"180 g","measured_by":"scale","container":"sedge-thin-bottle""#;
    let (fluid, left) = lines("pipit-level", &entries(&[weighed]));
    assert_eq!(fluid, ["fluid sedge-thin 0.25 L 5.30 EUR"]);
    assert!(left.starts_with("0.78622"), "{left}");
    // 0.02 L is below the least of 0.1 L; no bottle was named, so nothing is told of one.
    let (fluid, left) = lines("pipit-level", &[pour("0.02 L")]);
    assert_eq!(fluid, ["fluid sedge-thin 0.10 L 2.12 EUR"]);
    assert_eq!(left, "");
    // In quarts, and a corrected pour counts as it was corrected.
    let corrected = r#""kind":"correction","of":1,"reason":"misread","replaces":
        {"seq":1,"at":"2026-03-02T09:00:00Z","kind":"added","volume":"0.35 US qt","measured_by":"jug","container":"sorrel-light-bottle"}"#;
    let (fluid, left) = lines("whimbrel-level", &[pour("3.5 US qt"), corrected.into()]);
    assert_eq!(
        (fluid[0].as_str(), left.as_str()),
        ("fluid sorrel-light 0.35 US qt 8.61 EUR", "0.65 US qt")
    );
}

#[test]
fn an_exchange_bills_its_fill_and_the_disposal() {
    let told_of = estimate(
        &prices(),
        &job("pipit-level", "exchange", &[]),
        &Asked::default(),
    );
    let told_of = told_of.expect("estimated");
    // 3.1 L at 21.20: 65.72; 3.1 L at 0.60: 1.86. 189.92 at 19 %: 36.0848; 1.86 at 4 %: 0.0744.
    let best = told_of.cases()[0];
    assert_eq!(told(&best.lines)[1], "fluid sedge-thin 3.10 L 65.72 EUR");
    assert_eq!(told(&best.lines)[5], "disposal oil 3.1 L 1.86 EUR");
    assert_eq!(best.total.net.to_string(), "191.78 EUR");
    assert_eq!(best.total.total.to_string(), "227.93 EUR");
    let worst = told_of.cases()[2];
    assert_eq!(worst.volume.to_string(), "6.8 L");
}

#[test]
fn what_came_out_goes_to_its_stream_with_its_bounds() {
    let out = [
        OPEN.to_string(),
        r#""kind":"flow","grade":"trickle","for":"20 s","captured":"0.1 L","captured_by":"jug""#
            .into(),
        r#""kind":"drained","volume":"0.3 L","measured_by":"eye","why":"excess""#.into(),
    ];
    let billed = invoice(&prices(), &job("pipit-level", "check", &out), None).expect("billed");
    // A jug is good to 20 mL, an eye to 100 mL of what came out.
    assert_eq!(billed.waste().volume.to_string(), "0.4 L");
    assert_eq!(billed.waste().between.to_string(), "[0.28 L, 0.52 L]");
    assert_eq!(
        told(billed.lines()).last().map(String::as_str),
        Some("disposal oil 0.4 L 0.24 EUR")
    );
    let mut mixed = out.to_vec();
    mixed.push(r#""kind":"fluid","coolant_strip":"positive""#.into());
    mixed.push(r#""kind":"flow","grade":"trickle","for":"20 s""#.into());
    let billed = invoice(&prices(), &job("pipit-level", "check", &mixed), None).expect("billed");
    assert_eq!(billed.waste().stream.slug(), "mixed");
    assert_eq!(billed.waste().between.to_string(), "[0.28 L, +inf)");
    assert_eq!(
        told(billed.lines()).last().map(String::as_str),
        Some("disposal mixed 0.4 L 0.96 EUR")
    );
    let ids: Vec<&str> = billed.findings().iter().map(|finding| finding.id).collect();
    assert_eq!(ids, ["billed_on_hold", "billed_open", "waste_unmeasured"]);
    // Told with what is open of it only.
    let told_of = |entries: &[String]| {
        let billed = invoice(&prices(), &job("pipit-level", "check", entries), None);
        let told = report::invoice(&billed.expect("billed"), None);
        let words: Vec<&str> = told.split_whitespace().collect();
        words.join(" ")
    };
    let both = "0.4 L, used oil; it may be as little as 0.28 L and as much as 0.52 L.";
    assert!(told_of(&out).contains(both));
    let least = "a foreign fluid was in it; it may be as little as 0.28 L. ";
    assert!(told_of(&mixed).contains(least));
    assert!(told_of(&[]).contains("0 L, used oil. "));
}

#[test]
fn what_has_no_price_is_told_all_at_once_with_its_path() {
    let bare = r#"{"format":"brimline-prices/1","id":"bare","version":"1","currency":"EUR",
        "rounding":{"mode":"half_up","place":"line"},"fluids":[],"labour":[]}"#;
    let bare = PriceList::from_json(bare).expect("it reads");
    let paths = |error: brimline::Error| -> Vec<String> {
        assert!(
            error
                .faults()
                .all(|fault| fault.kind == ErrorKind::Unresolved)
        );
        error.faults().map(|fault| fault.path.clone()).collect()
    };
    let check = job("pipit-level", "check", &[]);
    let error = estimate(&bare, &check, &Asked::default()).expect_err("refused");
    assert_eq!(
        paths(error),
        [
            "job",
            "prices.leak_search",
            "procedure.fluid",
            "procedure.closing.thread",
            "procedure.closing.seal",
            "procedure.closing.threadlocker",
        ]
    );
    let other = r#""kind":"added","volume":"0.5 L","fluid":"burdock-axle","measured_by":"jug""#;
    let check = job("pipit-level", "check", &entries(&[OPEN, other]));
    let error = invoice(&prices(), &check, None).expect_err("refused");
    assert_eq!(paths(error), ["entries[1].fluid"]);
    let gone = job("no-such-sheet", "check", &[]);
    let error = estimate(&prices(), &gone, &Asked::default()).expect_err("refused");
    assert_eq!(paths(error), ["procedure"]);
}

#[test]
fn the_wait_is_billed_once_and_only_where_the_customer_pays() {
    let text = prices().to_json();
    let customer = r#""wait":{"paid_by":"customer","rate":"24.00 EUR/h"}"#;
    let text = text.replace(r#""wait":{"paid_by":"shop"}"#, customer);
    let list = PriceList::from_json(&text).expect("it reads");
    let billed = invoice(&list, &job("siskin-side", "check", &[]), None).expect("billed");
    // 35 min in begun tenths of an hour; 70 min less 35 min, to four decimals of an hour: 0.5833 h at 24.00.
    assert_eq!(
        told(billed.lines())[..2],
        [
            "labour level-check 0.6 h 55.20 EUR",
            "wait level-check 0.5833 h 14.00 EUR"
        ]
    );
}
