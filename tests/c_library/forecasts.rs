//! Forecasts kept up reading by reading.

use super::program::{answers, parsed};
use crate::vector_cases::{Request, answer, cases};
use brimline::warm_up::{Asked, Forecast};
use brimline::{Amount, Kind, report};
use serde_json::{Value, json};

/// Every forecast of the vectors, kept up reading by reading.
#[test]
fn forecasts_are_kept_up_as_in_rust() {
    let (mut requests, mut expected) = (Vec::new(), Vec::new());
    for case in cases() {
        if case.request.op != "calculate" || case.request.args[0] != "warm_up.forecast" {
            continue;
        }
        let told = parsed(&answer(&case.request));
        let given = parsed(&case.request.args[1]);
        if told.get("error").is_none() {
            requests.push(reading_by_reading(&given));
            expected.push(told);
        }
    }
    assert!(requests.len() > 5, "only {} forecasts", requests.len());
    for ((request, expected), told) in requests
        .iter()
        .zip(&expected)
        .zip(answers("forecasts", &requests))
    {
        let told = parsed(&told);
        assert_eq!(told["json"], *expected, "{request:?}");
        let mut by_getters = expected.clone();
        by_getters
            .as_object_mut()
            .expect("an object")
            .remove("suspect");
        assert_eq!(told["told"], by_getters, "{request:?}");
        assert_eq!(told["text"], json!(in_english(request)), "{request:?}");
    }
}

/// The forecast of a request in English, as Rust tells it.
fn in_english(request: &Request) -> String {
    let read = |text: &String, kind| (!text.is_empty()).then(|| amount_of(text, kind));
    let [min, max, scatter, held, events @ ..] = request.args.as_slice() else {
        panic!("four limits and what happened: {request:?}");
    };
    let asked = Asked {
        min: read(min, Kind::Temperature),
        max: read(max, Kind::Temperature),
        scatter: read(scatter, Kind::TemperatureDifference),
        held: read(held, Kind::Volume),
    };
    let mut forecast = Forecast::new(asked).expect("it begins");
    for event in events.chunks_exact(3) {
        let (at, temperature) = (
            amount_of(&event[0], Kind::Time),
            amount_of(&event[2], Kind::Temperature),
        );
        let taken = match read(&event[1], Kind::Volume) {
            Some(volume) => forecast.poured(at, volume, temperature),
            None => forecast.sample(at, temperature),
        };
        taken.expect("it is taken in");
    }
    report::outlook(&forecast.answer())
}

fn amount_of(text: &str, kind: Kind) -> Amount {
    Amount::parse_as(text, kind, None).expect("a quantity")
}

/// What is asked of a forecast, then its readings and pours in order of time, a reading before a pour.
fn reading_by_reading(given: &Value) -> Request {
    let text = |value: &Value| value.as_str().unwrap_or_default().to_string();
    let mut args: Vec<String> = ["min", "max", "scatter", "held"]
        .iter()
        .map(|name| text(&given[*name]))
        .collect();
    let listed = |name: &str| given[name].as_array().cloned().unwrap_or_default();
    let mut events: Vec<(Amount, [String; 3])> = Vec::new();
    let samples = listed("samples").into_iter().map(|one| (one, "reading"));
    for (event, temperature) in
        samples.chain(listed("pours").into_iter().map(|one| (one, "temperature")))
    {
        let at = Amount::parse(&text(&event["at"])).expect("a time");
        let told = ["at", "volume", temperature].map(|name| text(&event[name]));
        events.push((at, told));
    }
    events.sort_by(|(one, _), (other, _)| one.compare(other).expect("times"));
    args.extend(events.into_iter().flat_map(|(_, told)| told));
    Request {
        op: "forecast".into(),
        args,
    }
}
