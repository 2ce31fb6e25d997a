//! Coverage: what every run must have met, and how often; otherwise the agreement would say little.

use std::collections::BTreeMap;

/// How often what was met, by name.
pub type Met = BTreeMap<String, usize>;

const OFTEN: usize = 100;
const SELDOM: usize = 50;

const MUST_BE_MET: &[(usize, &str, &[&str])] = &[
    (
        OFTEN,
        "verdict",
        &[
            "at_level",
            "low",
            "over",
            "not_low",
            "not_full",
            "not_proven",
            "incomplete",
            "repeat",
            "on_hold",
            "no_procedure",
        ],
    ),
    (
        OFTEN,
        "cell",
        &[
            "none, None",
            "none, Low",
            "none, High",
            "none, Both",
            "at_level, None",
            "at_level, Low",
            "at_level, High",
            "at_level, Both",
            "over, None",
            "over, Low",
            "over, High",
            "over, Both",
        ],
    ),
    (
        SELDOM,
        "alone",
        &[
            "below_window",
            "above_window",
            "engine_off",
            "engine_running",
            "ranges",
            "cooler",
            "selector",
            "foam",
            "tilt_toward",
            "tilt_away",
            "tilt_unknown",
            "pour_settle",
            "stop_settle",
        ],
    ),
    (
        OFTEN,
        "leak",
        &[
            "above, clear",
            "above, marginal",
            "below, clear",
            "below, marginal",
            "open, open",
            "not_applicable, not_applicable",
        ],
    ),
    (
        OFTEN,
        "event",
        &[
            "contradiction",
            "spurt, short",
            "spurt, hold-up",
            "short look",
            "plug not open",
            "not fresh",
            "engine stopped with the plug open",
            "captured supplied later",
            "captured entered twice",
            "volume not booked",
            "repeated delivery",
            "same id, other content",
            "entry voided",
            "entry replaced",
            "correction corrected",
        ],
    ),
];

pub fn assert_met(met: &Met) {
    for (least, group, names) in MUST_BE_MET {
        for name in *names {
            let times = met
                .get(&format!("{group}: {name}"))
                .copied()
                .unwrap_or_default();
            assert!(
                times >= *least,
                "{group} {name:?} was met {times} times, at least {least} wanted"
            );
        }
    }
}
