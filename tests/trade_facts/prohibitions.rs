//! What is not done, and not said. Common practice, no source.

use super::bay::{Bay, pack, sheet};
use brimline::{Act, Verdict};
use serde_json::json;

/// What ran out above the level stays out: putting it back makes the overfill again.
#[test]
fn excess_is_not_put_back() {
    let bay = Bay::ready()
        .flow("stream")
        .says("drained", json!({"volume": "0.4 L", "why": "excess"}))
        .warm("50 °C")
        .flow("trickle");
    let evaluation = bay.evaluated(&pack(sheet(&[])));
    assert_eq!(evaluation.verdict(), Verdict::AtLevel);
    let gate = evaluation.gate(Act::Pour);
    assert!(!gate.allowed);
    assert!(
        gate.unmet
            .iter()
            .any(|unmet| unmet.id == "would_restore_excess")
    );
}

#[test]
fn the_plug_is_closed_before_the_engine_stops() {
    let open = Bay::ready().flow("trickle").evaluated(&pack(sheet(&[])));
    let gate = open.gate(Act::StopEngine);
    assert!(gate.unmet.iter().any(|unmet| unmet.id == "plug_not_closed"));
    let closed = Bay::ready()
        .flow("trickle")
        .says("plug", json!({"state": "closed"}))
        .evaluated(&pack(sheet(&[])));
    assert!(closed.gate(Act::StopEngine).allowed);
}

/// Coolant in the fluid, milky or pink foam: no level is told until somebody lifts the hold by name.
#[test]
fn contamination_holds_the_job() {
    let pack = pack(sheet(&[]));
    for fluid in [
        json!({"coolant_strip": "positive"}),
        json!({"appearance": "milky"}),
        json!({"appearance": "pink_foam"}),
    ] {
        let held = || {
            Bay::ready()
                .says("fluid", fluid.clone())
                .warm("50 °C")
                .flow("trickle")
        };
        let evaluation = held().evaluated(&pack);
        assert_eq!(evaluation.verdict(), Verdict::OnHold);
        assert!(!evaluation.gate(Act::Pour).allowed);
        let released = held().says("release", json!({"reason": "tested again", "by": "Tilda"}));
        assert_eq!(released.evaluated(&pack).verdict(), Verdict::AtLevel);
    }
}

/// A verdict is never a pass or a fail.
#[test]
fn no_verdict_says_ok() {
    for word in Verdict::SLUGS {
        for part in word.split('_') {
            assert!(
                !["ok", "pass", "fail", "good", "bad", "leak"].contains(&part),
                "{word}"
            );
        }
    }
}
