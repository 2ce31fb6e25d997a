//! Every calculator of warm-ups asked by its name, in JSON.

use brimline::calculate::calculate;
use serde_json::json;

/// Asks in JSON, and reads the answer.
fn ask(function: &str, arguments: serde_json::Value) -> serde_json::Value {
    let answer = calculate(function, &arguments.to_string());
    serde_json::from_str(&answer.unwrap_or_else(|error| error.to_json())).expect("JSON")
}

#[test]
fn every_calculator_is_asked_by_name() {
    let readings = [19.9, 25.89, 31.93, 36.97, 41.3, 45.55, 48.79, 52.46];
    let samples: Vec<_> = (0..).zip(readings).map(|(minute, reading)| {
        json!({"at": format!("{minute} min"), "reading": format!("{reading} °C")})
    }).collect();
    let number = |value: &serde_json::Value| -> f64 {
        let text = value.as_str().expect("a text");
        text.split(' ')
            .next()
            .expect("a number")
            .parse()
            .expect("a number")
    };
    // scipy 1.17.1: see the tests of `fit`.
    let fit = ask("warm_up.fit", json!({"samples": samples}));
    assert!((number(&fit["asymptote"]) - 80.04189).abs() < 5e-4);
    assert!((number(&fit["standard_errors"]["asymptote"]) - 2.67195).abs() < 1e-3);
    assert_eq!(fit.as_object().expect("members").len(), 4);
    let held = ask(
        "warm_up.fit",
        json!({"samples": samples, "asymptote": "85 °C"}),
    );
    assert!((number(&held["time_constant"]) * 60.0 - 605.269).abs() < 5e-3);
    let crossing = ask(
        "warm_up.crossing",
        json!({"samples": samples, "temperature": "40 °C"}),
    );
    assert!((number(&crossing["at"]) * 60.0 - 220.9982).abs() < 5e-3);
    let told = ask(
        "warm_up.forecast",
        json!({"samples": samples, "min": "35 °C", "max": "60 °C", "pours": [], "held": "6 L"}),
    );
    assert_eq!(told["method"], "first_order");
    assert_eq!(
        told["opens"],
        json!({"earliest": "0 s", "likely": "0 s", "latest": "0 s"})
    );
    assert_eq!(told["suspect"], json!([]));
    let doubts = ask(
        "warm_up.sensor_doubts",
        json!({"samples": [{"at": "0 s", "reading": "-40 °C"}], "running": true}),
    );
    assert_eq!(
        doubts,
        json!({"doubts": [{"index": 0, "id": "reading_default"}]})
    );
    let soak = ask(
        "warm_up.cold_soak",
        json!({"readings": [
            {"name": "fluid", "reading": "68 °C"}, {"name": "coolant", "reading": "20 °C"}, {"name": "air", "reading": "19 °C"},
        ]}),
    );
    assert_eq!(
        soak,
        json!({"agree": false, "apart": "49 Δ°C", "odd": ["fluid"],
        "unit_question": {"name": "fluid", "reading": "68 °C", "other": "68 °F"}})
    );
    let mixed = ask(
        "warm_up.mixed_temperature",
        json!({"volume": "2 L", "temperature": "40 °C", "added": "2 L", "added_temperature": "20 °C"}),
    );
    assert_eq!(mixed, json!({"value": "30 °C"}));
    let plan = ask(
        "warm_up.cool_down",
        json!({"first": "70 °C", "second": "60 °C", "elapsed": "10 min", "ambient": "20 °C",
        "max": "45 °C", "reheat_per_minute": "1.5 °C", "reheat_time": "4 min"}),
    );
    assert_eq!(plan["target"], "39 °C");
    assert_eq!(
        plan["cautions"],
        json!([
            "hot_fluid",
            "close_before_stop",
            "reheats_on_start",
            "auto_start"
        ])
    );
    let time = ask(
        "warm_up.response_time",
        json!({"time_constant": "600 s", "share": "0 %"}),
    );
    assert_eq!(time, json!({"value": "0 s"}));
    let faults = ask(
        "warm_up.forecast",
        json!({"samples": [{"at": "1 L"}], "pours": [{"volume": "1 °C"}], "maximum": "1 °C"}),
    );
    assert_eq!(faults["faults"].as_array().expect("all of them").len(), 6);
}
