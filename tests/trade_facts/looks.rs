//! What a look proves. Common practice, no source, throughout.

use super::bay::{Bay, pack, sheet};
use brimline::Verdict;
use serde_json::{Value, json};

#[test]
fn a_look_outside_the_window_is_one_sided() {
    let pack = pack(sheet(&[]));
    let verdict = |reading: &str, grade: &str| {
        let bay = Bay::ready().warm(reading).flow(grade);
        bay.evaluated(&pack).verdict().slug()
    };
    // Fluid that runs out cold would stand higher still when warm; cold and dry says nothing.
    assert_eq!(verdict("20 °C", "trickle"), "not_low");
    assert_eq!(verdict("20 °C", "stream"), "not_low");
    assert_eq!(verdict("20 °C", "none"), "not_proven");
    // Dry when too hot is short when right; flow when too hot may be the heat.
    assert_eq!(verdict("80 °C", "none"), "not_full");
    assert_eq!(verdict("80 °C", "stream"), "not_proven");
    // Exactly at either limit is in the window.
    assert_eq!(verdict("45 °C", "trickle"), "at_level");
    assert_eq!(verdict("131 °F", "trickle"), "at_level");
    // 113 °F is 45 °C; the reading is not rounded before it is compared.
    assert_eq!(verdict("112.6 °F", "trickle"), "not_low");
}

#[test]
fn an_engine_that_stands_lets_the_level_rise() {
    let stopped = |grade: &str| {
        let bay = Bay::quiet("check")
            .says("level", json!({"tilt": "0 deg", "toward": "away"}))
            .says("selector", json!({"position": "park"}))
            .says("engine", json!({"state": "off"}))
            .says("plug", json!({"state": "open"}))
            .warm("50 °C")
            .flow(grade);
        bay.evaluated(&pack(sheet(&[]))).verdict().slug()
    };
    assert_eq!(stopped("none"), "not_full");
    assert_eq!(stopped("stream"), "not_proven");
}

#[test]
fn a_temperature_is_good_for_thirty_seconds() {
    let pack = pack(sheet(&[]));
    let aged = |seconds: usize| {
        let bay = Bay::ready().waits(seconds - 20).flow("trickle");
        bay.evaluated(&pack).verdict()
    };
    assert_eq!(aged(30), Verdict::AtLevel);
    assert_eq!(aged(31), Verdict::Incomplete);
}

/// The pan is cooler than the fluid in it: warm enough there is warm enough, and too warm cannot be told.
#[test]
fn a_pan_read_from_outside_proves_the_lower_limit_alone() {
    let read = |changed: &[(&str, Value)], reading: &str, source: &str| {
        let mut bay = Bay::ready();
        bay.entries.pop();
        let reading = json!({"reading": reading, "source": source});
        let bay = bay.says("temperature", reading).flow("trickle");
        bay.evaluated(&pack(sheet(changed))).verdict().slug()
    };
    let no_upper = [("/conditions/temperature/max", Value::Null)];
    for source in ["infrared", "pan"] {
        assert_eq!(read(&no_upper, "45 °C", source), "at_level");
        assert_eq!(read(&no_upper, "44 °C", source), "incomplete");
        assert_eq!(read(&[], "50 °C", source), "incomplete");
    }
    for source in ["coolant", "ambient"] {
        assert_eq!(read(&no_upper, "50 °C", source), "incomplete");
    }
}

/// What stands in the tube of a drain plug runs out first and says nothing.
#[test]
fn the_first_spurt_is_no_flow() {
    let tube = [
        ("/method/kind", json!("standpipe")),
        ("/method/hold_up", json!("40 mL")),
    ];
    let pack = pack(sheet(&tube));
    let spurt = |captured: &str| {
        let flow = json!({"grade": "stream", "for": "15 s", "captured": captured});
        let bay = Bay::ready().waits(10).says("flow", flow);
        bay.evaluated(&pack).verdict()
    };
    assert_eq!(spurt("40 mL"), Verdict::Incomplete);
    assert_eq!(spurt("41 mL"), Verdict::Over);
    // A short look at a flow is no more than that.
    let short = Bay::ready().says("flow", json!({"grade": "stream", "for": "5 s"}));
    assert_eq!(short.evaluated(&pack).verdict(), Verdict::Incomplete);
}

#[test]
fn an_engine_stopped_with_the_plug_open_begins_the_check_again() {
    let bay = Bay::ready()
        .flow("none")
        .says("engine", json!({"state": "off"}));
    let evaluation = bay.evaluated(&pack(sheet(&[])));
    assert_eq!(evaluation.verdict(), Verdict::Repeat);
    // What was seen before still stands: it was short. What is in it now, nobody knows.
    assert_eq!(evaluation.as_found().to_string(), "(-inf, 0 L]");
    assert_eq!(evaluation.now().to_string(), "(-inf, 0 L]");
    assert_eq!(evaluation.next()[0].id, "begin_again");
}
