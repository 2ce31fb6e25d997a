//! The model held against jobs worked by hand; the arithmetic stands beside each.

use crate::model;
use crate::sheet::Pack;
use serde_json::{Value, json};

/// A running overflow plug without further conditions, and a limit in litres or in US quarts.
fn pack(limit: Value) -> Value {
    json!({"id": "fernhollow", "fluids": [
            {"id": "light", "density_15": "0.8 g/mL"},
            {"id": "axle", "density_15": "0.9 g/mL", "never": ["light"]}],
        "procedures": [{"id": "wren", "edition": 1, "fluid": "light", "capacity": {"total": "7.4 L"},
            "method": {"kind": "overflow_plug", "warming": "expands", "watch": "15 s", "hold_up": "30 mL"},
            "conditions": {"engine": "idling", "temperature": {"min": "45 °C", "max": "60 °C", "max_age": "60 s"}},
            "leak_limit": limit}]})
}

/// Numbers the entries, a minute between them, after an opening with the engine idling.
fn journal(entries: &[Value]) -> Value {
    let setup = [
        json!({"kind": "engine", "state": "idling"}),
        json!({"kind": "plug", "state": "open"}),
    ];
    let mut numbered = Vec::new();
    for (place, entry) in setup.iter().chain(entries).enumerate() {
        let mut entry = entry.clone();
        entry["seq"] = json!(place + 1);
        if entry["at"].is_null() {
            entry["at"] = json!(format!("2024-05-06T08:{:02}:00Z", place));
        }
        numbered.push(entry);
    }
    json!({"procedure": "wren", "job": "check", "entries": numbered})
}

fn answer(limit: Value, entries: &[Value]) -> Value {
    model::evaluate(&Pack::read(&pack(limit)), &journal(entries)).result
}

fn litres() -> Value {
    json!({"more_than": "1.2 L", "about": "0.1 L"})
}

fn warm() -> Value {
    json!({"kind": "temperature", "reading": "50 °C", "source": "scan"})
}

fn seen(grade: &str) -> Value {
    json!({"kind": "flow", "grade": grade, "for": "20 s"})
}

fn poured(volume: &str) -> Value {
    json!({"kind": "added", "volume": volume})
}

/// A look in the window, then a pour.
fn none_then(volume: &str) -> [Value; 3] {
    [warm(), seen("none"), poured(volume)]
}

fn assert_part(answer: &Value, expected: Value) {
    for (member, value) in expected.as_object().expect("members") {
        assert_eq!(&answer[member], value, "{member} of {answer}");
    }
}

#[test]
fn nothing_after_three_half_litres_and_a_trickle_after_the_fourth() {
    let mut entries = vec![warm(), seen("none")];
    for _ in 0..3 {
        entries.extend([poured("0.5 L"), warm(), seen("none")]);
    }
    entries.extend([poured("0.5 L"), warm(), seen("trickle")]);
    // After three: now in (-inf, 0], net 1.5, so found in (-inf, -1.5]. After the fourth now is in (-inf, 0.5] and,
    // something coming, in [0, 0.5]: found in [-2, -1.5]. What came was at most 0.5. Level found, 2 L used.
    assert_part(
        &answer(litres(), &entries),
        json!({"verdict": "at_level", "as_found": ["-2 L", "-1.5 L"], "now": ["0 L", "0 L"],
            "net_added": ["1.5 L", "2 L"],
            "leak": {"by_sheet": "above", "certainty": "clear", "limit": "1.2 L", "margin": "0.8 L",
                "counted": {"gross": "2 L", "net": "2 L", "used": "2 L"}, "shortage": ["1.5 L", "2 L"]}}),
    );
}

#[test]
fn fourteen_tenths_are_the_limit_and_not_more_than_it() {
    let mut entries: Vec<Value> = (0..14).map(|_| poured("0.1 US qt")).collect();
    entries.extend([warm(), seen("trickle")]);
    // 14 x 0.1 = 1.4. Something came, so it was short of level by at most 1.4 and possibly by nothing.
    let exactly = |limit| answer(limit, &entries)["leak"].clone();
    assert_part(
        &exactly(json!({"more_than": "1.4 US qt"})),
        json!({"by_sheet": "below", "certainty": "clear", "margin": "0 US qt", "shortage": [null, "1.4 US qt"],
            "counted": {"gross": "1.4 US qt", "net": "1.4 US qt", "used": "1.4 US qt"}}),
    );
    assert_part(
        &exactly(json!({"at_least": "1.4 US qt"})),
        json!({"by_sheet": "above", "certainty": "marginal", "margin": "0 US qt"}),
    );
}

#[test]
fn a_measured_capture_sharpens_the_shortage() {
    let [warm_look, none, pour] = none_then("0.5 L");
    let mut trickle = seen("trickle");
    trickle["captured"] = json!("120 mL");
    trickle["captured_by"] = json!("jug");
    let entries = [warm_look, none, pour, warm(), trickle];
    // Found in [-0.5, 0]. 0.12 +- 0.02 came out and it was level: net 0.36 to 0.4, found -0.4 to -0.36.
    // Nominal: 0.5 - 0.12 = 0.38 used, 0.82 under the limit; 0.4 <= 1.2 - 0.1.
    assert_part(
        &answer(litres(), &entries),
        json!({"verdict": "at_level", "as_found": ["-0.4 L", "-0.36 L"], "now": ["0 L", "0 L"],
            "net_added": ["0.36 L", "0.4 L"],
            "leak": {"by_sheet": "below", "certainty": "clear", "limit": "1.2 L", "margin": "0.82 L",
                "counted": {"gross": "0.5 L", "net": "0.38 L", "used": "0.38 L"}, "shortage": ["0.36 L", "0.4 L"]}}),
    );
}

#[test]
fn the_capture_may_be_entered_afterwards_but_only_once() {
    let captured =
        json!({"kind": "drained", "volume": "0.2 L", "why": "captured", "measured_by": "jug"});
    let [warm_look, none, pour] = none_then("0.5 L");
    let once = [
        warm_look,
        none,
        pour,
        warm(),
        seen("trickle"),
        captured.clone(),
    ];
    // 0.2 +- 0.02 out of 0.5: net 0.28 to 0.32, and level.
    let expected = json!({"as_found": ["-0.32 L", "-0.28 L"], "net_added": ["0.28 L", "0.32 L"]});
    assert_part(&answer(litres(), &once), expected.clone());
    let mut twice = once.to_vec();
    twice.push(captured);
    assert_part(&answer(litres(), &twice), expected);
}

#[test]
fn too_hot_and_nothing_comes_is_short_all_the_same() {
    let hot = json!({"kind": "temperature", "reading": "60.1 °C", "source": "scan"});
    let none = [hot.clone(), seen("none")];
    assert_part(
        &answer(litres(), &none),
        json!({"verdict": "not_full", "as_found": [null, "0 L"]}),
    );
    // The other way about nothing is known of a stream but that any amount may have come.
    let stream = [hot, seen("stream")];
    assert_part(
        &answer(litres(), &stream),
        json!({"verdict": "not_proven", "as_found": [null, null], "now": [null, null], "net_added": [null, "0 L"]}),
    );
}

#[test]
fn too_cold_and_something_comes_is_level_at_least() {
    let cold = json!({"kind": "temperature", "reading": "44.9 °C", "source": "scan"});
    let entries = [cold, seen("trickle")];
    // Level or over as found; what came left it level or over.
    assert_part(
        &answer(litres(), &entries),
        json!({"verdict": "not_low", "as_found": ["0 L", null], "now": ["0 L", null], "net_added": [null, "0 L"]}),
    );
}

#[test]
fn at_the_limit_of_the_window_exactly_it_is_met() {
    for reading in ["45 °C", "113 °F", "60 °C", "140 °F"] {
        let sample = json!({"kind": "temperature", "reading": reading, "source": "network"});
        assert_part(
            &answer(litres(), &[sample, seen("none")]),
            json!({"verdict": "low"}),
        );
    }
}

#[test]
fn an_old_sample_or_one_of_the_coolant_proves_nothing() {
    let coolant = json!({"kind": "temperature", "reading": "50 °C", "source": "coolant"});
    for entries in [
        vec![seen("none")],
        vec![coolant, seen("none")],
        vec![warm(), json!({"kind": "note"}), seen("none")],
    ] {
        let nothing = json!({"verdict": "incomplete", "as_found": [null, null]});
        assert_part(&answer(litres(), &entries), nothing);
    }
}

#[test]
fn a_spurt_moves_what_it_moved_and_sets_no_verdict() {
    let mut spurt = json!({"kind": "flow", "grade": "trickle", "for": "14 s"});
    assert_part(
        &answer(litres(), &[warm(), spurt.clone()]),
        json!({"verdict": "incomplete", "as_found": [null, null], "net_added": ["-0.03 L", "0 L"]}),
    );
    // Long enough, but the first of the opening and no more than the plug holds.
    spurt["for"] = json!("20 s");
    spurt["captured"] = json!("30 mL");
    let entries = [warm(), spurt.clone(), warm(), seen("none")];
    // Now at most level, 0.03 went: found at most 0.03 over.
    assert_part(
        &answer(litres(), &entries),
        json!({"verdict": "low", "as_found": [null, "0.03 L"], "net_added": ["-0.03 L", "-0.03 L"]}),
    );
    spurt["captured"] = json!("31 mL");
    // One more and it is a flow: level, and 0.031 over as found.
    assert_part(
        &answer(litres(), &[warm(), spurt]),
        json!({"verdict": "at_level", "as_found": ["0.031 L", "0.031 L"]}),
    );
}

#[test]
fn the_engine_stopped_with_the_plug_open_must_be_repeated() {
    let stop = json!({"kind": "engine", "state": "off"});
    let again = [
        json!({"kind": "plug", "state": "closed"}),
        json!({"kind": "engine", "state": "idling"}),
        json!({"kind": "plug", "state": "open"}),
    ];
    let mut entries = vec![warm(), seen("none"), poured("0.5 L"), stop];
    // Found at most level stays; any amount may have run out.
    let expected =
        json!({"verdict": "repeat", "as_found": [null, "0 L"], "net_added": [null, "0.5 L"]});
    assert_part(&answer(litres(), &entries), expected.clone());
    entries.extend(again);
    assert_part(&answer(litres(), &entries), expected);
    entries.extend([warm(), seen("none")]);
    assert_part(
        &answer(litres(), &entries),
        json!({"verdict": "low", "as_found": [null, "0 L"]}),
    );
}

#[test]
fn the_later_of_two_that_cannot_both_be_true_is_set_aside() {
    let mut gush = seen("gush");
    gush["captured"] = json!("0.4 L");
    let entries = [
        warm(),
        seen("none"),
        poured("0.3 L"),
        json!({"kind": "drained", "volume": "0.5 L", "why": "service"}),
        warm(),
        gush,
    ];
    // At most level, 0.3 in, 0.5 out: at most -0.2, so nothing can come. Its 0.4 went all the same: at most -0.6.
    assert_part(
        &answer(litres(), &entries),
        json!({"verdict": "not_proven", "as_found": [null, "0 L"], "now": [null, "-0.6 L"],
            "net_added": ["-0.6 L", "-0.6 L"]}),
    );
}

#[test]
fn the_limit_can_be_passed_before_the_level_is_found() {
    let mut entries = Vec::new();
    for _ in 0..3 {
        entries.extend(none_then("0.5 L"));
    }
    // 1.5 L went in and used is over 1.2; proved so far: 1.0 short, so not clear.
    let third = answer(litres(), &entries);
    assert_part(
        &third["leak"],
        json!({"by_sheet": "above", "certainty": "marginal", "margin": "0.3 L"}),
    );
    entries.extend([warm(), seen("none")]);
    // Nothing after 1.5 L either: 1.5 short at least, more than 1.2 + 0.1.
    let looked = answer(litres(), &entries);
    assert_part(
        &looked["leak"],
        json!({"by_sheet": "above", "certainty": "clear", "shortage": ["1.5 L", null]}),
    );
}

#[test]
fn a_limit_passed_only_by_what_is_proved_has_its_margin_from_there() {
    // Nothing came, 1.5 L in by jug; nothing came. Then 0.4 drained for service: 1.1 used, but short by 1.48 at least.
    let jug = json!({"kind": "added", "volume": "1.5 L", "measured_by": "jug"});
    let service = json!({"kind": "drained", "volume": "0.4 L", "why": "service"});
    let entries = [warm(), seen("none"), jug, warm(), seen("none"), service];
    assert_part(
        &answer(litres(), &entries)["leak"],
        json!({"by_sheet": "above", "certainty": "clear", "margin": "0.28 L", "shortage": ["1.48 L", null],
            "counted": {"gross": "1.5 L", "net": "1.1 L", "used": "1.1 L"}}),
    );
}

#[test]
fn the_wrong_fluid_holds_until_released() {
    let wrong = json!({"kind": "added", "volume": "0.1 L", "fluid": "axle"});
    let release = json!({"kind": "release", "reason": "flushed", "by": "Ines"});
    let held = [warm(), seen("none"), wrong.clone()];
    assert_part(
        &answer(litres(), &held),
        json!({"verdict": "on_hold", "net_added": ["0.1 L", "0.1 L"]}),
    );
    let released = [warm(), seen("none"), wrong, release];
    assert_part(&answer(litres(), &released), json!({"verdict": "low"}));
}

#[test]
fn without_a_sheet_only_the_bookkeeping_is_left() {
    let mut gush = seen("gush");
    gush["captured"] = json!("0.2 L");
    let mut journal = journal(&[warm(), poured("0.5 L"), gush, seen("none")]);
    journal["procedure"] = json!("unheard-of");
    assert_part(
        &model::evaluate(&Pack::read(&pack(litres())), &journal).result,
        json!({"verdict": "no_procedure", "as_found": [null, null], "now": [null, null],
            "net_added": ["0.3 L", "0.3 L"],
            "leak": {"by_sheet": "not_applicable", "certainty": "not_applicable", "shortage": [null, null],
                "counted": {"gross": "0.5 L", "net": "0.3 L", "used": "0.3 L"}}}),
    );
}

#[test]
fn imperial_quarts_are_not_us_quarts() {
    // 1.2 imp qt = 1363.827 mL; 1363.827 / 946.352946 = 1.441139..., over 1.4 by 0.041139...
    let entries = [poured("1.2 imp qt"), warm(), seen("trickle")];
    assert_part(
        &answer(json!({"more_than": "1.4 US qt"}), &entries)["leak"],
        json!({"by_sheet": "above", "certainty": "marginal", "margin": "0.04114 US qt",
            "shortage": [null, "1.44114 US qt"]}),
    );
}

#[test]
fn a_capture_that_cannot_be_leaves_the_flow_unmeasured() {
    let mut trickle = seen("trickle");
    trickle["captured"] = json!("120 L");
    let captured = json!({"kind": "drained", "volume": "0.1 L", "why": "captured"});
    let [warm_look, none, pour] = none_then("0.5 L");
    let mut entries = vec![warm_look, none, pour, warm(), trickle];
    // As if nothing had been said of it: found in [-0.5, 0], and any of it may have come out again.
    let unmeasured = json!({"as_found": ["-0.5 L", "0 L"], "net_added": ["0 L", "0.5 L"]});
    assert_part(&answer(litres(), &entries), unmeasured);
    entries.push(captured);
    // The volume entered afterwards is the flow's: 0.5 - 0.1 = 0.4 net.
    let measured = json!({"as_found": ["-0.4 L", "-0.4 L"], "net_added": ["0.4 L", "0.4 L"]});
    assert_part(&answer(litres(), &entries), measured);
}
