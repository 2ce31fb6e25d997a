//! Scripts: jobs as they happen in a bay, good, hurried, wrong and absurd.

use crate::bench::{Bench, GRADES, VOLUMES};
use crate::edges::{clock_edges, other_samples, spurts, to_the_limit, weighed};
use crate::packs::DEFECTS;
use serde_json::json;

pub type Script = fn(&mut Bench);

/// Weight, name, script.
pub const SCRIPTS: &[(usize, &str, Script)] = &[
    (10, "proper check", proper_check),
    (16, "one defect", one_defect),
    (6, "two defects", two_defects),
    (8, "impatient", impatient),
    (13, "small pours to the limit", to_the_limit),
    (8, "spurts and short looks", spurts),
    (8, "captures", captures),
    (8, "engine stopped, plug open", engine_stop),
    (5, "holds and releases", holds),
    (8, "contradiction", contradiction),
    (4, "overfull", overfull),
    (4, "weighed", weighed),
    (4, "pan and coolant samples", other_samples),
    (4, "edge of the clock", clock_edges),
    (12, "anything", anything),
];

pub fn opened(bench: &mut Bench, spoilt: Option<&str>) {
    bench.prepare(spoilt);
    bench.plug("open");
}

fn closed(bench: &mut Bench) {
    bench.plug("closed");
    if bench.dice.chance(50) {
        bench.enter(20, json!({"kind": "tightened", "torque": "14 N·m"}));
        bench.enter(60, json!({"kind": "engine", "state": "off"}));
    }
}

/// Pours with a look before each, until something comes.
fn fill(bench: &mut Bench, pours: usize, volume: &str, by: Option<&str>) {
    for _ in 0..pours {
        bench.look("none", None);
        bench.pour(volume, by);
        bench.wait();
    }
}

fn proper_check(bench: &mut Bench) {
    opened(bench, None);
    let pours = bench.dice.below(5);
    let (volume, by) = (bench.dice.pick(VOLUMES), bench.means());
    fill(bench, pours, volume, by);
    bench.sample(None);
    let grade = bench
        .dice
        .pick(&["slow_drip", "fast_drip", "trickle", "stream"]);
    let captured = bench
        .dice
        .chance(60)
        .then(|| (bench.dice.pick(VOLUMES), Some("scale")));
    bench.flow(10, grade, "30 s", captured);
    closed(bench);
    if bench.dice.chance(30) {
        bench.drained("40 mL", Some("jug"), "closing_loss");
        bench.pour("40 mL", Some("jug"));
    }
}

fn defective(bench: &mut Bench, defect: &'static str) {
    opened(bench, Some(defect));
    for _ in 0..=bench.dice.below(2) {
        if defect == "pour_settle" {
            let volume = bench.dice.pick(VOLUMES);
            bench.pour(volume, None);
        }
        let grade = bench.dice.pick(&GRADES[..GRADES.len() - 1]);
        bench.look(grade, Some(defect));
    }
}

fn one_defect(bench: &mut Bench) {
    let defect = bench.dice.pick(DEFECTS);
    if bench.dice.chance(40) {
        opened(bench, None);
        fill(bench, 1, "0.5 L", Some("jug"));
    }
    defective(bench, defect);
    if bench.dice.chance(50) {
        bench.wait();
        let grade = bench.dice.pick(GRADES);
        bench.look(grade, None);
    }
}

fn two_defects(bench: &mut Bench) {
    let (first, second) = (bench.dice.pick(DEFECTS), bench.dice.pick(DEFECTS));
    opened(bench, Some(first));
    bench.prepare(Some(second));
    let grade = bench.dice.pick(GRADES);
    let shown = if bench.dice.chance(50) { first } else { second };
    bench.look(grade, Some(shown));
}

/// Opened without asking, poured without waiting, looked at without a sample.
fn impatient(bench: &mut Bench) {
    if bench.dice.chance(60) {
        bench.prepare(None);
    }
    if bench.dice.chance(80) {
        let state = bench.dice.pick(&["open", "open", "loosened"]);
        bench.plug(state);
    }
    for _ in 0..=bench.dice.below(3) {
        if bench.dice.chance(50) {
            bench.sample(None);
        }
        let (grade, wait) = (
            bench.dice.pick(GRADES),
            bench.dice.weighted(&[(2, 5), (1, 45)]),
        );
        bench.flow(wait, grade, "30 s", None);
        let (volume, by) = (bench.dice.pick(VOLUMES), bench.means());
        bench.pour(volume, by);
    }
    if bench.dice.chance(70) {
        bench.wait();
        bench.look("trickle", None);
    }
}

fn captures(bench: &mut Bench) {
    opened(bench, None);
    fill(bench, 2, "0.5 L", Some("jug"));
    for _ in 0..=bench.dice.below(3) {
        let grade = bench.dice.pick(GRADES);
        bench.sample(None);
        let (volume, by) = (bench.any_amount(), bench.means());
        let captured = bench.dice.chance(30).then_some((volume, by));
        bench.flow(10, grade, "30 s", captured);
        for _ in 0..bench.dice.below(3) {
            let (volume, by) = (bench.any_amount(), bench.means());
            let why =
                bench
                    .dice
                    .pick(&["captured", "captured", "excess", "closing_loss", "service"]);
            bench.drained(volume, by, why);
        }
    }
}

fn engine_stop(bench: &mut Bench) {
    opened(bench, None);
    let pours = bench.dice.below(3);
    fill(bench, pours, "0.4 US qt", Some("sealed"));
    if bench.dice.chance(50) {
        bench.look("trickle", None);
    }
    bench.enter(20, json!({"kind": "engine", "state": "off"}));
    let steps: &[&str] = &["restart", "closed", "restart", "open", "look", "look"];
    let left_out = bench.dice.below(12);
    for (place, step) in steps
        .iter()
        .enumerate()
        .filter(|(place, _)| *place != left_out)
    {
        match *step {
            "restart" if place == 2 => bench.prepare(None),
            "restart" if bench.dice.chance(30) => {
                bench.enter(30, json!({"kind": "engine", "state": "idling"}));
            }
            "restart" => {}
            "look" => {
                bench.wait();
                let grade = bench.dice.pick(GRADES);
                bench.look(grade, None);
            }
            state => bench.plug(state),
        }
        if bench.dice.chance(8) {
            bench.enter(5, json!({"kind": "engine", "state": "off"}));
        }
    }
}

fn holds(bench: &mut Bench) {
    proper_check(bench);
    for _ in 0..=bench.dice.below(2) {
        let held = match bench.dice.below(5) {
            0 => json!({"kind": "hold", "reason": "asked the foreman", "by": "Ines"}),
            1 => {
                json!({"kind": "fluid", "coolant_strip": bench.dice.pick(&["positive", "negative"])})
            }
            2 => {
                json!({"kind": "fluid", "appearance": bench.dice.pick(&["milky", "pink_foam", "foreign", "dark"])})
            }
            _ => json!({"kind": "added", "volume": "0.2 L", "measured_by": "jug",
                "fluid": bench.dice.pick(&["fern-axle", "fern-heavy", "fern-unheard"])}),
        };
        bench.enter(20, held);
        if bench.dice.chance(40) {
            bench.enter(
                20,
                json!({"kind": "release", "reason": "looked again", "by": "Ines"}),
            );
        }
    }
}

/// What is seen does not agree with what was poured.
fn contradiction(bench: &mut Bench) {
    opened(bench, None);
    for _ in 0..2 + bench.dice.below(3) {
        bench.sample(None);
        let grade = bench
            .dice
            .pick(&["none", "trickle", "trickle", "stream", "gush"]);
        let captured = bench
            .dice
            .chance(50)
            .then(|| (bench.dice.pick(VOLUMES), Some("jug")));
        bench.flow(10, grade, "30 s", captured);
        match bench.dice.below(3) {
            0 => bench.drained("0.3 L", None, "excess"),
            1 => {
                bench.pour("0.3 L", None);
                bench.wait();
            }
            _ => {}
        }
    }
}

fn overfull(bench: &mut Bench) {
    opened(bench, None);
    bench.sample(None);
    let captured = bench.dice.chance(60).then_some(("0.6 L", Some("scale")));
    let grade = bench.dice.pick(&["stream", "gush"]);
    bench.flow(10, grade, "30 s", captured);
    if bench.dice.chance(50) {
        bench.drained("0.3 L", Some("jug"), "excess");
    }
    bench.wait();
    let grade = bench.dice.pick(&["stream", "trickle", "none"]);
    bench.look(grade, None);
    closed(bench);
}

fn anything(bench: &mut Bench) {
    if bench.dice.chance(60) {
        opened(bench, None);
    }
    for _ in 0..bench.dice.below(18) {
        let entry = bench.anything();
        let wait = bench.dice.weighted(&[(4, 10), (2, 25), (1, 100), (1, 0)]);
        if entry["kind"] == "flow" && bench.dice.chance(70) {
            bench.sample(None);
        }
        bench.enter(wait, entry);
    }
}
