//! Where in the journal a fault of the counter is told.

use super::jobs::{OPEN, entries, job, pour, prices};
use brimline::estimate::Asked;
use brimline::{ErrorKind, estimate, invoice};

#[test]
fn a_fluid_without_a_price_is_told_where_it_is_named() {
    let named = |fluid: &str| {
        format!(r#""kind":"added","volume":"0.5 L","fluid":"{fluid}","measured_by":"jug""#)
    };
    let refused = |entries: &[String]| -> Vec<(String, String)> {
        let error = invoice(&prices(), &job("pipit-level", "check", entries), None);
        let error = error.expect_err("it has no price");
        let told =
            |fault: &brimline::Fault| (fault.path.clone(), fault.got.clone().unwrap_or_default());
        error.faults().map(told).collect()
    };
    let at = |path: &str, fluid: &str| (path.to_string(), fluid.to_string());
    // The first pour is the sheet's own fluid, and has a price.
    assert_eq!(
        refused(&[OPEN.into(), pour("0.5 L"), named("burdock-axle")]),
        [at("entries[2].fluid", "burdock-axle")]
    );
    // Two without a price, each at the first entry that names it.
    let both = [
        named("burdock-axle"),
        named("sedge-thin"),
        named("yarrow-rear"),
        named("burdock-axle"),
    ];
    assert_eq!(
        refused(&both),
        [
            at("entries[0].fluid", "burdock-axle"),
            at("entries[2].fluid", "yarrow-rear")
        ]
    );
    // A correction names it; the entry it corrects names none.
    let corrected = r#""kind":"correction","of":1,"reason":"other can","replaces":{"seq":1,"at":"2026-03-02T09:00:00Z",
        "kind":"added","volume":"0.5 L","fluid":"burdock-axle","measured_by":"jug"}"#;
    assert_eq!(
        refused(&[pour("0.5 L"), pour("0.25 L"), corrected.into()]),
        [at("entries[2].replaces.fluid", "burdock-axle")]
    );
    // And one that replaces a correction.
    let again = r#""kind":"correction","of":3,"reason":"third can","replaces":{"seq":3,"at":"2026-03-02T09:02:00Z",
        "kind":"correction","of":1,"reason":"third can","replaces":{"seq":1,"at":"2026-03-02T09:00:00Z",
        "kind":"added","volume":"0.5 L","fluid":"yarrow-rear","measured_by":"jug"}}"#;
    assert_eq!(
        refused(&[
            pour("0.5 L"),
            pour("0.25 L"),
            corrected.into(),
            again.into()
        ]),
        [at("entries[3].replaces.replaces.fluid", "yarrow-rear")]
    );
}

#[test]
fn a_corrected_ceiling_is_told_where_it_stands() {
    let approved = r#""kind":"approved","ceiling":"80.00 EUR","by":"Ivo""#;
    let corrected = r#""kind":"correction","of":1,"reason":"misheard","replaces":{"seq":1,"at":"2026-03-02T09:00:00Z",
        "kind":"approved","ceiling":"80.00 USD","by":"Ivo"}"#;
    let check = job("pipit-level", "check", &entries(&[approved, corrected]));
    let error = estimate(&prices(), &check, &Asked::default()).expect_err("refused");
    let fault = error.faults().next().expect("a fault");
    assert_eq!(
        (fault.kind, fault.path.as_str()),
        (ErrorKind::Conflict, "entries[1].replaces.ceiling")
    );
}
