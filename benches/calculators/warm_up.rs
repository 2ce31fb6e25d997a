//! Warming up: what is reckoned once, and the forecast that is kept up reading by reading.

use crate::given::{Given, amount, time};
use brimline::warm_up::{
    Asked, Cooling, Forecast, Sample, cool_down, fit, mixed_temperature, response_time,
    sensor_doubts,
};
use brimline::{Amount, Unit};
use criterion::{BatchSize, Criterion};
use std::hint::black_box;

pub fn warm_up(c: &mut Criterion) {
    time(
        c,
        "warm_up.mixed_temperature",
        |given| ["volume", "temperature", "added", "added_temperature"].map(|name| given.any(name)),
        |[volume, temperature, added, warm]| {
            mixed_temperature(*volume, *temperature, *added, *warm)
        },
    );
    time(
        c,
        "warm_up.cool_down",
        |given| Cooling {
            first: given.any("first"),
            second: given.any("second"),
            elapsed: given.any("elapsed"),
            ambient: given.any("ambient"),
            max: given.any("max"),
            reheat_per_minute: given.any("reheat_per_minute"),
            reheat_time: given.any("reheat_time"),
        },
        |cooling| cool_down(*cooling),
    );
    time(
        c,
        "warm_up.response_time",
        |given| [given.any("time_constant"), given.ratio("share")],
        |[time_constant, share]| response_time(*time_constant, *share),
    );
    let fitted = |given: &Given| {
        let (scatter, end) = (given.maybe("scatter", None), given.maybe("asymptote", None));
        (given.samples(), scatter, end)
    };
    time(c, "warm_up.fit", fitted, |(samples, scatter, end)| {
        fit(samples, *scatter, *end)
    });
    time(
        c,
        "warm_up.sensor_doubts",
        |given| (given.samples(), given.0["running"] == true),
        |(samples, running)| sensor_doubts(samples, *running),
    );
    forecasts(c);
}

/// A warm-up towards 83 °C with readings a little off, `step` seconds apart, more or less where they are irregular.
fn readings(regular: bool) -> Vec<Sample> {
    let reading = |place: i32| {
        let off = f64::from(place * 7919 % 101 - 50) / 50.0;
        let seconds = 20.0 * f64::from(place) + if regular { 0.0 } else { 8.0 * off };
        let celsius = 83.0 - 63.0 * (-seconds / 1200.0).exp() + 0.2 * off;
        Sample {
            at: Amount::from_computed((seconds * 10.0).round() / 10.0, Unit::Second)
                .expect("a time"),
            reading: Amount::from_computed((celsius * 10.0).round() / 10.0, Unit::DegreeCelsius)
                .expect("a temperature"),
        }
    };
    (1..=60).map(reading).collect()
}

/// A forecast that holds 59 readings takes in the sixtieth; then it answers.
fn forecasts(c: &mut Criterion) {
    for (regular, word) in [(true, "regular"), (false, "irregular")] {
        let samples = readings(regular);
        let (last, before) = samples.split_last().expect("there are sixty");
        let asked = Asked {
            min: Some(amount("70 °C")),
            max: Some(amount("80 °C")),
            ..Asked::default()
        };
        let mut forecast = Forecast::new(asked).expect("a window");
        for sample in before {
            forecast
                .sample(sample.at, sample.reading)
                .expect("in order");
        }
        c.bench_function(
            &format!("warm_up.Forecast.sample, 60 readings, {word}"),
            |b| {
                let turn = |mut own: Forecast| {
                    let taken = own.sample(black_box(last.at), black_box(last.reading));
                    (taken, own)
                };
                b.iter_batched(|| forecast.clone(), turn, BatchSize::SmallInput);
            },
        );
        forecast.sample(last.at, last.reading).expect("in order");
        c.bench_function(
            &format!("warm_up.Forecast.answer, 60 readings, {word}"),
            |b| {
                b.iter(|| black_box(&forecast).answer());
            },
        );
    }
}
