//! Edges: jobs that go to a limit exactly, of volume, of time, of temperature, and a little past it.

use crate::bench::{Bench, GRADES, MEANS, VOLUMES};
use crate::packs::LIMITS;
use crate::scripts::opened;
use serde_json::json;

pub fn to_the_limit(bench: &mut Bench) {
    let stated = &bench.sheet["leak_limit"];
    let is = |amount: &str| stated["more_than"] == amount || stated["at_least"] == amount;
    let limit = LIMITS
        .iter()
        .find(|limit| is(limit.amount))
        .unwrap_or(&LIMITS[1]);
    let about = stated["about"].as_str().unwrap_or("0.1 L");
    opened(bench, None);
    let by = bench
        .dice
        .weighted(&[(2, None), (2, Some("sealed")), (2, Some("jug"))]);
    let looks = bench.dice.chance(50);
    for pour in 1..=limit.pours {
        if looks || pour == limit.pours {
            bench.look("none", None);
        }
        bench.pour(limit.step, by);
        bench.wait();
    }
    // Past the limit by a little, by what `about` allows, or not at all.
    match bench.dice.below(5) {
        0 => bench.pour("1 mL", None),
        1 => bench.pour(about, None),
        2 => bench.look("none", None),
        _ => {}
    }
    bench.wait();
    if bench.dice.chance(30) {
        bench.look("none", None);
    }
    let captured = bench.dice.weighted(&[
        (4, None),
        (2, Some(("0.1 L", Some("jug")))),
        (2, Some(("0.2 L", Some("eye")))),
        (1, Some(("1 mL", None))),
    ]);
    bench.sample(None);
    let grade = bench
        .dice
        .pick(&["trickle", "trickle", "slow_drip", "none", "stream"]);
    bench.flow(10, grade, "30 s", captured);
}

pub fn spurts(bench: &mut Bench) {
    opened(bench, None);
    for _ in 0..=bench.dice.below(3) {
        if bench.dice.chance(80) {
            bench.sample(None);
        }
        let grade = bench.dice.pick(GRADES);
        let length = bench.dice.pick(&[
            "0 s", "2 s", "4.9 s", "5 s", "15 s", "30 s", "30 s", "0.5 min", "40 s",
        ]);
        let little = bench
            .dice
            .pick(&["0 mL", "20 mL", "30 mL", "1 US fl oz", "60 mL", "61 mL"]);
        let captured = bench.dice.chance(80).then_some((little, Some("scale")));
        bench.flow(6, grade, length, captured);
        match bench.dice.below(5) {
            0 => bench.plug("closed"),
            1 | 2 => bench.plug("open"),
            3 => {
                bench.plug("closed");
                bench.plug("open");
            }
            _ => {}
        }
    }
    bench.wait();
    let grade = bench.dice.pick(GRADES);
    bench.look(grade, None);
}

pub fn weighed(bench: &mut Bench) {
    opened(bench, None);
    for _ in 0..=bench.dice.below(3) {
        bench.look("none", None);
        let mass = bench
            .dice
            .pick(&["420 g", "0.2 kg", "0.9 lb", "3 g", "838 g"]);
        let by = bench.dice.weighted(&[
            (5, Some("scale")),
            (1, None),
            (1, Some("jug")),
            (1, Some("meter")),
        ]);
        let mut added = json!({"kind": "added", "mass": mass});
        if let Some(by) = by {
            added["measured_by"] = json!(by);
        }
        if bench.dice.chance(30) {
            added["fluid"] = json!(
                bench
                    .dice
                    .pick(&["fern-heavy", "fern-plain", "fern-unheard"])
            );
        }
        bench.enter(20, added);
        bench.wait();
    }
    bench.sample(None);
    bench.flow(10, "trickle", "30 s", Some(("84.5 g", Some("scale"))));
}

pub fn other_samples(bench: &mut Bench) {
    opened(bench, None);
    let grades = &["none", "trickle", "stream"];
    for _ in 0..=bench.dice.below(2) {
        for _ in 0..=bench.dice.below(2) {
            let source = bench
                .dice
                .pick(&["infrared", "pan", "coolant", "ambient", "scan"]);
            let window = bench.window();
            let readings: Vec<&str> = [window.inside, window.below, window.above].concat();
            let reading = bench.dice.pick(&readings);
            bench.enter(
                4,
                json!({"kind": "temperature", "reading": reading, "source": source}),
            );
        }
        let grade = bench.dice.pick(grades);
        bench.flow(2, grade, "30 s", None);
    }
}

/// Samples, pours, stops and looks placed to the second around every time limit.
pub fn clock_edges(bench: &mut Bench) {
    opened(bench, None);
    for _ in 0..=bench.dice.below(2) {
        if bench.sheet["conditions"]["engine"] == "off" && bench.dice.chance(60) {
            bench.enter(30, json!({"kind": "engine", "state": "idling"}));
            bench.enter(30, json!({"kind": "engine", "state": "off"}));
        } else {
            let (volume, by) = (bench.dice.pick(VOLUMES), bench.dice.pick(MEANS));
            bench.pour(volume, Some(by));
        }
        let settle = match bench.sheet["method"]["settle"].as_str() {
            Some("60 s" | "1 min") => 60,
            Some("90 s") => 90,
            _ => 0,
        };
        let age = bench.dice.weighted(&[(1, 10), (1, 30), (1, 60)]);
        let edge = bench.dice.weighted(&[(1, -1), (1, 0), (1, 1)]);
        // The look ends `age` after the sample, give or take the edge; it began 30 s before its end.
        bench.clock += settle + 30 - age - 5;
        bench.sample(None);
        let grade = bench.dice.pick(&["none", "trickle", "slow_drip", "gush"]);
        bench.flow(age + edge, grade, "30 s", None);
    }
}
