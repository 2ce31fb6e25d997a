//! The arguments of calculators from `tests/vectors/calculators`, and the clock over them.

use brimline::signal::{ByteOrder, Linear};
use brimline::torque::{Friction, ThreadCondition, Wrench};
use brimline::volume::{Base, Expansion, Sump};
use brimline::warm_up::Sample;
use brimline::{Amount, Error, Interval, Kind, Unit};
use criterion::Criterion;
use serde_json::Value;
use std::fs;
use std::hint::black_box;
use std::path::Path;

pub fn amount(text: &str) -> Amount {
    Amount::parse(text).expect("an amount")
}

/// The arguments of one case.
pub struct Given(pub Value);

impl Given {
    pub fn text(&self, name: &str) -> &str {
        self.0[name].as_str().unwrap_or_default()
    }

    pub fn count(&self, name: &str) -> u32 {
        let count = self.0[name].as_u64();
        count.expect("a count").try_into().expect("a small one")
    }

    pub fn list(&self, name: &str) -> impl Iterator<Item = Given> {
        let list = self.0[name].as_array().expect("a list");
        list.iter().cloned().map(Given)
    }

    pub fn maybe(&self, name: &str, kind: impl Into<Option<Kind>>) -> Option<Amount> {
        let text = self.0[name].as_str()?;
        Some(Amount::parse_as(text, kind, None).expect("an amount"))
    }

    pub fn any(&self, name: &str) -> Amount {
        self.maybe(name, None).expect("it is given")
    }

    pub fn ratio(&self, name: &str) -> Amount {
        self.maybe(name, Kind::Ratio).expect("it is given")
    }

    pub fn bytes(&self, name: &str) -> Vec<u8> {
        let digits = self.text(name);
        let starts = (0..digits.len()).step_by(2);
        let bytes = starts.map(|start| u8::from_str_radix(&digits[start..start + 2], 16));
        bytes.collect::<Result<_, _>>().expect("hex digits")
    }

    pub fn interval(&self, name: &str) -> Interval {
        let [lo, hi] = [0, 1].map(|end| self.0[name][end].as_str().map(amount));
        Interval::new(lo, hi).expect("an interval")
    }

    pub fn base(&self) -> Base {
        Base::from_slug(self.text("base")).unwrap_or_default()
    }

    pub fn expansion(&self) -> Expansion {
        match self.maybe("coefficient", None) {
            Some(coefficient) => Expansion::Coefficient(coefficient),
            None => Expansion::Oil {
                density: self.any("density"),
                base: self.base(),
            },
        }
    }

    pub fn friction(&self) -> Friction {
        match self.maybe("k", Kind::Ratio) {
            Some(k) => Friction::K(k),
            None => Friction::Condition(
                ThreadCondition::from_slug(self.text("condition")).expect("a condition"),
            ),
        }
    }

    pub fn wrench(&self) -> Wrench {
        Wrench {
            adapter: self.maybe("adapter", None),
            angle: self.maybe("angle", None),
            graduation: self.maybe("graduation", None),
            ..Wrench::new(self.any("lever"))
        }
    }

    pub fn sump(&self) -> Sump {
        let sump = Given(self.0["sump"].clone());
        let made = match sump.text("shape") {
            "prismoid" => Sump::prismoid(
                sump.any("height"),
                sump.any("bottom"),
                sump.any("middle"),
                sump.any("top"),
            ),
            "lying_cylinder" => Sump::lying_cylinder(sump.any("diameter"), sump.any("length")),
            _ => {
                let rows = sump.list("rows");
                let rows: Vec<_> = rows
                    .map(|row| (row.any("level"), row.any("volume")))
                    .collect();
                Sump::strapping(&rows)
            }
        };
        made.expect("a sump")
    }

    pub fn layout(&self) -> Linear {
        let layout = Given(self.0["layout"].clone());
        Linear {
            start: layout.count("start"),
            length: layout.count("length"),
            order: ByteOrder::from_slug(layout.text("order")).expect("a byte order"),
            signed: layout.0["signed"].as_bool().unwrap_or_default(),
            unit: Unit::parse(layout.text("unit")).expect("a unit"),
            scale: layout.difference("scale"),
            offset: layout.maybe("offset", None),
            min: layout.maybe("min", None),
            max: layout.maybe("max", None),
        }
    }

    /// A scale, which for a temperature may be written in its unit.
    pub fn difference(&self, name: &str) -> Amount {
        let (number, unit) = (self.any(name), self.any(name).resolution().unit());
        Amount::new(number.mantissa(), number.decimals(), unit).expect("an amount")
    }

    pub fn samples(&self) -> Vec<Sample> {
        let samples = self.list("samples");
        samples
            .map(|sample| Sample {
                at: sample.any("at"),
                reading: sample.any("reading"),
            })
            .collect()
    }
}

/// Every answered case of a calculator.
pub fn cases(name: &str) -> Vec<Given> {
    let (room, _) = name.split_once('.').expect("a room and a name");
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/vectors/calculators");
    let text = fs::read_to_string(folder.join(format!("{room}.json"))).expect("the vectors");
    let vectors: Vec<Value> = serde_json::from_str(&text).expect("a list of cases");
    let answered = vectors
        .into_iter()
        .filter(|case| case["in"]["function"] == name && case["out"].is_object());
    let arguments = answered.map(|mut case| Given(case["in"]["arguments"].take()));
    arguments.collect()
}

/// Times one call: of all cases in turn, the next each time.
pub fn time<T, R>(
    criterion: &mut Criterion,
    name: &str,
    read: impl Fn(&Given) -> T,
    call: impl Fn(&T) -> Result<R, Error>,
) {
    let cases: Vec<T> = cases(name).iter().map(read).collect();
    assert!(!cases.is_empty(), "{name} has cases");
    for case in &cases {
        if let Err(error) = call(case) {
            panic!("{name}: {error}");
        }
    }
    let mut turns = cases.iter().cycle();
    criterion.bench_function(name, |bencher| {
        bencher.iter(|| turns.next().map(|case| call(black_box(case))));
    });
}
