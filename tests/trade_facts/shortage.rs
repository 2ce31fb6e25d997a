//! What a volume is worth, and when a shortage is a leak.

use super::bay::{Bay, pack, sheet};
use super::print::told;
use brimline::Verdict;
use serde_json::{Value, json};

/// Half-widths of the ways of measuring: trade values, no source.
#[test]
fn measuring_has_its_half_widths() {
    let pack = pack(sheet(&[]));
    let net = |kind: &str, fields: Value| {
        let bay = Bay::quiet("check").says(kind, fields);
        bay.evaluated(&pack).net_added().to_string()
    };
    let added = |by: &str| net("added", json!({"volume": "1 L", "measured_by": by}));
    assert_eq!(added("sealed"), "[0.99 L, 1.01 L]");
    assert_eq!(added("meter"), "[0.98 L, 1.02 L]");
    assert_eq!(added("jug"), "[0.98 L, 1.02 L]");
    assert_eq!(added("eye"), "[0.94 L, 1.06 L]");
    let drained = json!({"volume": "1 L", "measured_by": "eye", "why": "service"});
    assert_eq!(net("drained", drained), "[-1.1 L, -0.9 L]");
    // 838 g of 838 kg/m³: 833 g over 858.95 kg/m³ is 0.9697887 L, 843 g over 817.05 kg/m³ is 1.0317606 L.
    let weighed = json!({"mass": "838 g", "measured_by": "scale"});
    assert_eq!(net("added", weighed), "[0.969788 L, 1.031761 L]");
}

/// A shop that pours half a litre or half a quart at a time does not reach the same limit: common practice, no
/// source.
#[test]
fn a_limit_in_litres_is_not_one_in_quarts() {
    let three = |limit: (&str, &str), volume: &str| {
        let (word, limit) = limit;
        let changed = [("/leak_limit", json!({word: limit}))];
        let poured = (0..3).fold(Bay::ready().flow("none"), |bay, _| bay.pours(volume));
        let evaluation = poured.flow("trickle").evaluated(&pack(sheet(&changed)));
        assert_eq!(evaluation.verdict(), Verdict::AtLevel);
        evaluation.leak().by_sheet.slug()
    };
    // Three half-quarts are 1.42 L; three half-litres are 1.5 L exactly, which is "1.5 L or more" and not "more".
    assert_eq!(three(("at_least", "1.5 L"), "0.5 US qt"), "below");
    assert_eq!(three(("at_least", "1.5 L"), "0.5 L"), "above");
    assert_eq!(three(("more_than", "1.5 L"), "0.5 L"), "below");
    // 1.5 L is printed 1.6 qt and 1.6 qt is printed 1.5 L, and 14 mL lie between.
    assert_eq!(told("1.5 L", "US qt", 1), "1.6 US qt");
    assert_eq!(told("1.6 US qt", "L", 1), "1.5 L");
    assert_eq!(told("1.6 US qt", "mL", 0), "1514 mL");
    // Three pours of 0.4 imperial quarts are 1.44 US quarts.
    assert_eq!(three(("more_than", "1.4 US qt"), "0.4 imp qt"), "above");
    assert_eq!(three(("more_than", "1.4 US qt"), "0.4 US qt"), "below");
}

/// Fourteen tenths are 1.4 and no more; in binary doubles they are more.
#[test]
fn fourteen_small_pours_are_exactly_the_limit() {
    assert!((0..14).fold(0.0, |sum, _| sum + 0.1) > 1.4);
    let changed = [("/leak_limit", json!({"more_than": "1.4 US qt"}))];
    let poured = (0..14).fold(Bay::ready().flow("none"), |bay, _| bay.pours("0.1 US qt"));
    let evaluation = poured.flow("trickle").evaluated(&pack(sheet(&changed)));
    let leak = evaluation.leak();
    assert_eq!(leak.by_sheet.slug(), "below");
    assert_eq!(
        leak.counted.used.map(|used| used.to_string()),
        Some("1.4 US qt".into())
    );
    assert_eq!(
        leak.margin.map(|margin| margin.to_string()),
        Some("0 US qt".into())
    );
}

/// With 1.2 poured and a limit of 1.4 a whole step would hide on which side the shortage lies: common practice, no
/// source.
#[test]
fn the_step_before_the_limit_is_the_rest_to_it() {
    let changed = [
        ("/leak_limit", json!({"more_than": "1.4 US qt"})),
        ("/refill", json!({"step": "0.4 US qt", "stop": "3 US qt"})),
    ];
    let pack = pack(sheet(&changed));
    let next = |steps: usize| {
        let bay = (0..steps).fold(Bay::ready().flow("none"), |bay, _| {
            bay.pours("0.4 US qt").flow("none")
        });
        let evaluation = bay.evaluated(&pack);
        let pour = evaluation.next().iter().find(|act| act.id == "pour");
        let volume = pour.and_then(|act| act.args.get("volume").cloned());
        serde_json::to_string(&volume).expect("it is JSON")
    };
    assert!(next(2).contains("0.4 US qt"), "{}", next(2));
    assert!(next(3).contains("0.2 US qt"), "{}", next(3));
}

/// A leak limit speaks of what was found, so it does not apply to a fill after a drain; common practice, no source.
#[test]
fn a_fill_after_a_drain_has_no_leak_limit() {
    let changed = [("/leak_limit", json!({"more_than": "1 L"}))];
    for (job, applies) in [
        ("check", true),
        ("top_up", true),
        ("leak_follow_up", true),
        ("recheck", true),
        ("new_fill", false),
        ("exchange", false),
        ("condition_only", false),
    ] {
        let bay = Bay::quiet(job).says("added", json!({"volume": "5 L"}));
        let by_sheet = bay.evaluated(&pack(sheet(&changed))).leak().by_sheet.slug();
        assert_eq!(
            by_sheet,
            if applies { "above" } else { "not_applicable" },
            "{job}"
        );
    }
}
