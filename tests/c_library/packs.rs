//! Packs: the fluids they relate, and the limits they are read with.

use super::program::{answers, request};
use crate::compiler::root;
use crate::vector_cases::answer;
use brimline::Pack;
use brimline::document::canonical;
use std::fs;

/// The demonstration pack's fluids, and one that it lacks.
#[test]
fn fluids_are_related_as_in_rust() {
    let pack = Pack::embedded().expect("it is embedded");
    let mut fluids: Vec<&str> = pack.fluids().map(|fluid| fluid.id.as_str()).collect();
    fluids.push("unheard-of");
    let (mut requests, mut expected) = (Vec::new(), Vec::new());
    for one in &fluids {
        for other in &fluids {
            requests.push(request("may_mix", &["", one, other]));
            expected.push(canonical(&pack.may_mix(one, other)));
        }
        let mut args = vec!["", one];
        args.extend(&fluids);
        requests.push(request("resolve", &args));
        expected.push(canonical(&pack.resolve(one, &fluids)));
    }
    requests.push(request("resolve", &["", "sedge-mid"]));
    expected.push("[]".into());
    assert_eq!(answers("fluids", &requests), expected);
}

#[test]
fn limits_hold_for_a_pack() {
    let pack =
        fs::read_to_string(root().join("tests/vectors/packs/smallest.json")).expect("it reads");
    let limits = [
        "",
        r#"{"bytes":20}"#,
        r#"{"depth":1}"#,
        r#"{"entries":0}"#,
        r#"{"text":2}"#,
    ];
    let requests = limits.map(|limits| request("pack", &[&pack, limits]));
    let said = answers("pack-limits", &requests);
    assert_eq!(said, requests.each_ref().map(answer));
    let refused: Vec<bool> = said.iter().map(|said| said.contains("\"limit\"")).collect();
    // A pack has no entries.
    assert_eq!(refused, [false, true, true, false, true], "{said:#?}");
}
