//! The calculators of `warm_up`, by name.

use super::arguments::{Arguments, told, value};
use super::{Answer, Function};
use crate::document::{Node, Reader};
use crate::quantity::{Amount, Kind};
use crate::warm_up::{self, Asked, Cooling, Doubted, Named, Pour, Sample};
use alloc::vec::Vec;
use serde::Serialize;

pub(super) const FUNCTIONS: &[Function] = &[
    Function {
        name: "warm_up.fit",
        takes: &["samples", "scatter", "asymptote"],
        ask: fit,
    },
    Function {
        name: "warm_up.crossing",
        takes: &["samples", "scatter", "asymptote", "temperature"],
        ask: crossing,
    },
    Function {
        name: "warm_up.forecast",
        takes: &["samples", "min", "max", "scatter", "pours", "held"],
        ask: forecast,
    },
    Function {
        name: "warm_up.mixed_temperature",
        takes: &["volume", "temperature", "added", "added_temperature"],
        ask: mixed_temperature,
    },
    Function {
        name: "warm_up.cool_down",
        takes: &[
            "first",
            "second",
            "elapsed",
            "ambient",
            "max",
            "reheat_per_minute",
            "reheat_time",
        ],
        ask: cool_down,
    },
    Function {
        name: "warm_up.response_time",
        takes: &["time_constant", "share"],
        ask: response_time,
    },
    Function {
        name: "warm_up.cold_soak",
        takes: &["readings", "spread"],
        ask: cold_soak,
    },
    Function {
        name: "warm_up.sensor_doubts",
        takes: &["samples", "running"],
        ask: sensor_doubts,
    },
];

fn sample(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Sample> {
    let object = reader.object(node, &["at", "reading"])?;
    let at = reader.required(&object, "at", |reader, node| {
        reader.amount(node, Kind::Time)
    });
    let reading = reader.required(&object, "reading", |reader, node| {
        reader.amount(node, Kind::Temperature)
    });
    Some(Sample {
        at: at?,
        reading: reading?,
    })
}

fn pour(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Pour> {
    let object = reader.object(node, &["at", "volume", "temperature"])?;
    let mut amount =
        |name, kind| reader.required(&object, name, |reader, node| reader.amount(node, kind));
    let at = amount("at", Kind::Time);
    let volume = amount("volume", Kind::Volume);
    let temperature = amount("temperature", Kind::Temperature);
    Some(Pour {
        at: at?,
        volume: volume?,
        temperature: temperature?,
    })
}

fn named(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Named> {
    let object = reader.object(node, &["name", "reading"])?;
    let name = reader.required(&object, "name", |reader, node| reader.text(node));
    let reading = reader.required(&object, "reading", |reader, node| {
        reader.amount(node, Kind::Temperature)
    });
    Some(Named {
        name: name?,
        reading: reading?,
    })
}

/// What `fit` and `crossing` share: readings, their scatter, the asymptote.
type Readings = (Vec<Sample>, Option<Amount>, Option<Amount>);

fn readings(given: &mut Arguments<'_, '_, '_>) -> Option<Readings> {
    let samples = given.list("samples", sample);
    let scatter = given.amount_if("scatter", Kind::TemperatureDifference);
    let asymptote = given.amount_if("asymptote", Kind::Temperature);
    Some((samples?, scatter, asymptote))
}

fn fit(given: &mut Arguments<'_, '_, '_>) -> Option<Answer> {
    let (samples, scatter, asymptote) = readings(given)?;
    told(warm_up::fit(&samples, scatter, asymptote))
}

fn crossing(given: &mut Arguments<'_, '_, '_>) -> Option<Answer> {
    let temperature = given.amount("temperature", Kind::Temperature);
    let (samples, scatter, asymptote) = readings(given)?;
    let temperature = temperature?;
    told(warm_up::fit(&samples, scatter, asymptote).and_then(|fit| fit.crossing(temperature)))
}

fn forecast(given: &mut Arguments<'_, '_, '_>) -> Option<Answer> {
    let samples = given.list("samples", sample);
    let asked = Asked {
        min: given.amount_if("min", Kind::Temperature),
        max: given.amount_if("max", Kind::Temperature),
        scatter: given.amount_if("scatter", Kind::TemperatureDifference),
        held: given.amount_if("held", Kind::Volume),
    };
    let pours = given.read_if("pours", |reader, node| reader.list(node, pour));
    told(warm_up::forecast(
        &samples?,
        &pours.unwrap_or_default(),
        asked,
    ))
}

fn mixed_temperature(given: &mut Arguments<'_, '_, '_>) -> Option<Answer> {
    let volume = given.amount("volume", Kind::Volume);
    let temperature = given.amount("temperature", Kind::Temperature);
    let added = given.amount("added", Kind::Volume);
    let added_temperature = given.amount("added_temperature", Kind::Temperature);
    value(warm_up::mixed_temperature(
        volume?,
        temperature?,
        added?,
        added_temperature?,
    ))
}

fn cool_down(given: &mut Arguments<'_, '_, '_>) -> Option<Answer> {
    let mut amount = |name, kind| given.amount(name, kind);
    let first = amount("first", Kind::Temperature);
    let second = amount("second", Kind::Temperature);
    let elapsed = amount("elapsed", Kind::Time);
    let ambient = amount("ambient", Kind::Temperature);
    let max = amount("max", Kind::Temperature);
    let reheat_per_minute = amount("reheat_per_minute", Kind::TemperatureDifference);
    let reheat_time = amount("reheat_time", Kind::Time);
    told(warm_up::cool_down(Cooling {
        first: first?,
        second: second?,
        elapsed: elapsed?,
        ambient: ambient?,
        max: max?,
        reheat_per_minute: reheat_per_minute?,
        reheat_time: reheat_time?,
    }))
}

fn response_time(given: &mut Arguments<'_, '_, '_>) -> Option<Answer> {
    let time_constant = given.amount("time_constant", Kind::Time);
    let share = given.amount("share", Kind::Ratio);
    value(warm_up::response_time(time_constant?, share?))
}

fn cold_soak(given: &mut Arguments<'_, '_, '_>) -> Option<Answer> {
    let readings = given.list("readings", named);
    let spread = given.amount_if("spread", Kind::TemperatureDifference);
    told(warm_up::cold_soak(&readings?, spread))
}

fn sensor_doubts(given: &mut Arguments<'_, '_, '_>) -> Option<Answer> {
    #[derive(Serialize)]
    struct Doubts {
        doubts: Vec<Doubted>,
    }
    let samples = given.list("samples", sample);
    let running = given.read("running", |reader, node| reader.flag(node));
    let doubts = warm_up::sensor_doubts(&samples?, running?);
    told(doubts.map(|doubts| Doubts { doubts }))
}
