//! The list of conditions, and the defects of a look that does not meet them.

use super::bay::{Bay, pack, sheet};
use brimline::procedure::Defect;
use brimline::{Evaluation, Verdict};
use serde_json::{Value, json};
use std::collections::BTreeSet;

/// The defects that the reasons of a result name.
fn defects(evaluation: &Evaluation) -> Vec<&'static str> {
    let reasons = evaluation.because().iter().map(|reason| reason.id);
    reasons.filter(|id| Defect::SLUGS.contains(id)).collect()
}

/// What the heavy-vehicle frame says of a level reading: SAE J1939-71, PGN 65272, SPN 3026, a nibble. Codes 0 to 6
/// as published, the word of 7 and the codes 14 and 15 from memory; 8 to 13 were not seen.
const STATUSES: &[(u8, &str)] = &[
    (0, "conditions met"),
    (1, "settling timer still running"),
    (2, "transmission in gear"),
    (3, "fluid too cold"),
    (4, "fluid too hot"),
    (5, "vehicle moving"),
    (6, "vehicle not level"),
    (7, "engine speed too low"),
    (14, "error"),
    (15, "not available"),
];

/// A look at the opening under each status, and the defects it is told with.
fn under(status: u8) -> Vec<(Value, Bay, &'static [&'static str])> {
    let look = |bay: Bay| bay.flow("trickle");
    let running = |bay: Bay, defects: &'static [&'static str]| (sheet(&[]), look(bay), defects);
    let tilted =
        |toward: &str| Bay::ready().says("level", json!({"tilt": "2 deg", "toward": toward}));
    let in_gear = || Bay::ready().says("selector", json!({"position": "drive"}));
    match status {
        0 => vec![running(Bay::ready(), &[])],
        1 => {
            let off = [
                ("/method/kind", json!("side_plug")),
                ("/conditions/engine", json!("off")),
                ("/conditions/ranges", Value::Null),
            ];
            let stopped = Bay::ready().says("engine", json!({"state": "off"}));
            vec![
                running(
                    Bay::ready().says("added", json!({"volume": "0.2 L"})),
                    &["pour_settle"],
                ),
                (sheet(&off), look(stopped), &["stop_settle"]),
            ]
        }
        // What moves is not in park.
        2 | 5 => vec![running(in_gear(), &["selector"])],
        3 => vec![running(Bay::ready().warm("44.9 °C"), &["below_window"])],
        4 => vec![running(Bay::ready().warm("55.1 °C"), &["above_window"])],
        6 => vec![
            running(tilted("plug"), &["tilt_toward"]),
            running(tilted("away"), &["tilt_away"]),
            running(tilted("unknown"), &["tilt_unknown"]),
        ],
        7 => {
            let off = [("/conditions/ranges", Value::Null)];
            let stopped = Bay::quiet("check")
                .says("level", json!({"tilt": "0.1 deg", "toward": "away"}))
                .says("selector", json!({"position": "park"}))
                .says("engine", json!({"state": "off"}))
                .says("plug", json!({"state": "open"}))
                .warm("50 °C");
            vec![(sheet(&off), look(stopped), &["engine_off"])]
        }
        _ => Vec::new(),
    }
}

/// Every status of the published list has a defect of ours, and no more; what a bay can do wrong and a vehicle
/// cannot say of itself is listed.
#[test]
fn the_conditions_cover_the_published_list() {
    let mut covered = BTreeSet::new();
    for (status, words) in STATUSES {
        for (sheet, bay, wanted) in under(*status) {
            let evaluation = bay.evaluated(&pack(sheet));
            assert_eq!(defects(&evaluation), wanted, "{words}");
            let clean = evaluation.verdict() == Verdict::AtLevel;
            assert_eq!(clean, *status == 0, "{words}: {:?}", evaluation.verdict());
            covered.extend(wanted.iter().copied());
        }
        // A reading that is in error, or not there, is no reading.
        if *status > 7 {
            let mut bay = Bay::ready();
            bay.entries.retain(|entry| entry["kind"] != "temperature");
            let evaluation = bay.flow("trickle").evaluated(&pack(sheet(&[])));
            assert_eq!(evaluation.verdict(), Verdict::Incomplete, "{words}");
        }
    }
    let beyond_the_list = ["engine_running", "ranges", "cooler", "foam"];
    covered.extend(beyond_the_list);
    assert_eq!(covered, Defect::SLUGS.iter().copied().collect());
}

/// The four beyond the published list; common practice, no source.
#[test]
fn the_conditions_a_vehicle_does_not_tell() {
    let restarted = Bay::ready()
        .says("plug", json!({"state": "closed"}))
        .says("engine", json!({"state": "off"}))
        .says("engine", json!({"state": "idling"}))
        .says("plug", json!({"state": "open"}))
        .warm("50 °C");
    let cooler = [("/conditions/cooler", json!({"thermostat": "78 °C"}))];
    let opened = Bay::ready().says("confirmed", json!({"what": "cooler_opened"}));
    let off = [
        ("/method/kind", json!("side_plug")),
        ("/conditions/engine", json!("off")),
        ("/conditions/ranges", Value::Null),
    ];
    let cases = [
        (sheet(&[]), restarted.flow("trickle"), "ranges"),
        (sheet(&cooler), opened.flow("trickle"), "cooler"),
        (sheet(&[]), Bay::ready().flow("spitting"), "foam"),
        (sheet(&off), Bay::ready().flow("trickle"), "engine_running"),
    ];
    for (sheet, bay, wanted) in cases {
        assert_eq!(defects(&bay.evaluated(&pack(sheet))), [wanted]);
    }
}
