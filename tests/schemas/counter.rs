//! The schemas of price lists, estimates and invoices.

use super::mutant::mutants;
use super::validator::{assert_none, said, schema, validator};
use crate::vector_cases::{answer, cases};
use brimline::PriceList;
use serde_json::Value;
use std::collections::BTreeSet;

fn parsed(text: &str) -> Value {
    serde_json::from_str(text).expect("JSON")
}

fn embedded() -> Value {
    let prices = PriceList::embedded().expect("the embedded list reads");
    parsed(&prices.to_json())
}

#[test]
fn what_a_counter_answers_is_valid() {
    assert_none(said(&validator(&schema("prices")), &embedded()));
    for op in ["estimate", "invoice"] {
        let validator = validator(&schema(op));
        let mut told = 0;
        let mut failures = Vec::new();
        let own = cases().into_iter().filter(|case| case.request.op == op);
        for case in own.filter(|case| case.expected.is_ok()) {
            told += 1;
            let document = parsed(&answer(&case.request));
            let against = said(&validator, &document).into_iter();
            failures.extend(against.map(|what| format!("{}: {what}", case.name)));
        }
        assert!(told > 10, "only {told} of {op}");
        assert_none(failures);
    }
}

#[test]
fn no_list_that_is_read_is_invalid() {
    let validator = validator(&schema("prices"));
    let (mut read, mut held, mut failures) = (0, 0, Vec::new());
    for mutant in mutants(&embedded(), &mut BTreeSet::new()) {
        let is_read = PriceList::from_json(&mutant.document.to_string()).is_ok();
        let is_valid = validator.is_valid(&mutant.document);
        read += usize::from(is_read);
        held += usize::from(!is_valid);
        if is_read && !is_valid {
            failures.push(format!("{}: {}", mutant.place, mutant.what));
        }
    }
    assert!(read > 10 && held > 500, "{read} read, {held} held");
    assert_none(failures);
}

/// What a schema can hold: members, their types, and words of closed lists.
#[test]
fn what_is_no_list_at_all_is_held() {
    let validator = validator(&schema("prices"));
    for (place, wrong) in [
        ("/format", "\"brimline-prices/2\""),
        ("/currency", "\"euro\""),
        ("/rounding/mode", "\"usual\""),
        ("/fluids/0/billing/policy", "\"guess\""),
        (
            "/fluids/0/containers/0",
            "{\"id\":\"a\",\"price\":\"1 EUR\"}",
        ),
        ("/threadlocker/0/strength", "\"none\""),
        ("/labour/0/jobs/0", "\"wash\""),
        ("/wait", "{\"paid_by\":\"nobody\"}"),
        ("/opened/max_age_days", "-1"),
        ("/disposal/0/stream", "\"drain\""),
        ("/disposal/0/step", "0.1"),
        (
            "/fluids/0",
            "{\"fluid\":\"a\",\"billing\":{\"policy\":\"used\"},\"colour\":1}",
        ),
    ] {
        let mut document = embedded();
        *document.pointer_mut(place).expect("it is there") = parsed(wrong);
        assert!(!validator.is_valid(&document), "{place} {wrong}");
        assert!(PriceList::from_json(&document.to_string()).is_err());
    }
}
