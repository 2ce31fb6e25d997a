//! How long calculators take, each over the arguments of its answered cases in `tests/vectors/calculators`, one after
//! another; then what is kept up reading by reading, planned, or asked in JSON.

#[path = "calculators/containers.rs"]
mod containers;
#[path = "calculators/fluid.rs"]
mod fluid;
#[path = "calculators/given.rs"]
mod given;
#[path = "calculators/leak.rs"]
mod leak;
#[path = "calculators/signal.rs"]
mod signal;
#[path = "calculators/torque.rs"]
mod torque;
#[path = "calculators/volume.rs"]
mod volume;
#[path = "calculators/warm_up.rs"]
mod warm_up;

use brimline::calculate::calculate;
use containers::plans;
use criterion::{Criterion, criterion_group, criterion_main};
use fluid::fluid;
use given::cases;
use leak::leak;
use signal::signal;
use std::hint::black_box;
<<<<<<< HEAD
use torque::torque;
use volume::volume;
use warm_up::warm_up;
=======
use std::path::Path;

fn amount(text: &str) -> Amount {
    Amount::parse(text).expect("an amount")
}

/// The arguments of one case.
struct Given(Value);

impl Given {
    fn text(&self, name: &str) -> &str {
        self.0[name].as_str().unwrap_or_default()
    }

    fn count(&self, name: &str) -> u32 {
        let count = self.0[name].as_u64();
        count.expect("a count").try_into().expect("a small one")
    }

    fn list(&self, name: &str) -> impl Iterator<Item = Given> {
        let list = self.0[name].as_array().expect("a list");
        list.iter().cloned().map(Given)
    }

    fn maybe(&self, name: &str, kind: impl Into<Option<Kind>>) -> Option<Amount> {
        let text = self.0[name].as_str()?;
        Some(Amount::parse_as(text, kind, None).expect("an amount"))
    }

    fn any(&self, name: &str) -> Amount {
        self.maybe(name, None).expect("it is given")
    }

    fn ratio(&self, name: &str) -> Amount {
        self.maybe(name, Kind::Ratio).expect("it is given")
    }

    fn bytes(&self, name: &str) -> Vec<u8> {
        let digits = self.text(name);
        let starts = (0..digits.len()).step_by(2);
        let bytes = starts.map(|start| u8::from_str_radix(&digits[start..start + 2], 16));
        bytes.collect::<Result<_, _>>().expect("hex digits")
    }

    fn interval(&self, name: &str) -> Interval {
        let [lo, hi] = [0, 1].map(|end| self.0[name][end].as_str().map(amount));
        Interval::new(lo, hi).expect("an interval")
    }

    fn base(&self) -> Base {
        Base::from_slug(self.text("base")).unwrap_or_default()
    }

    fn expansion(&self) -> Expansion {
        match self.maybe("coefficient", None) {
            Some(coefficient) => Expansion::Coefficient(coefficient),
            None => Expansion::Oil {
                density: self.any("density"),
                base: self.base(),
            },
        }
    }

    fn friction(&self) -> Friction {
        match self.maybe("k", Kind::Ratio) {
            Some(k) => Friction::K(k),
            None => Friction::Condition(
                ThreadCondition::from_slug(self.text("condition")).expect("a condition"),
            ),
        }
    }

    fn wrench(&self) -> Wrench {
        Wrench {
            adapter: self.maybe("adapter", None),
            angle: self.maybe("angle", None),
            graduation: self.maybe("graduation", None),
            ..Wrench::new(self.any("lever"))
        }
    }

    fn sump(&self) -> Sump {
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

    fn layout(&self) -> Linear {
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
    fn difference(&self, name: &str) -> Amount {
        let (number, unit) = (self.any(name), self.any(name).resolution().unit());
        Amount::new(number.mantissa(), number.decimals(), unit).expect("an amount")
    }

    fn samples(&self) -> Vec<Sample> {
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
fn cases(name: &str) -> Vec<Given> {
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
fn time<T, R>(
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

fn torque(c: &mut Criterion) {
    time(
        c,
        "torque.wrench_setting",
        |given| (given.any("target"), given.wrench()),
        |(target, wrench)| wrench_setting(*target, wrench, None),
    );
    time(
        c,
        "torque.applied_torque",
        |given| {
            let wrench = given.wrench();
            let adapter = wrench.adapter.expect("it is given");
            (given.any("setting"), wrench.lever, adapter, wrench.angle)
        },
        |(setting, lever, adapter, angle)| applied_torque(*setting, *lever, *adapter, *angle),
    );
    time(
        c,
        "torque.preload",
        |given| (given.any("torque"), given.any("diameter"), given.friction()),
        |(torque, diameter, friction)| preload(*torque, *diameter, *friction),
    );
    time(
        c,
        "torque.torque_for_preload",
        |given| {
            let diameter = given.any("diameter");
            (given.any("preload"), diameter, given.friction())
        },
        |(preload, diameter, friction)| torque_for_preload(*preload, *diameter, *friction),
    );
    let thread = |text: &str| Thread::parse(text).expect("a thread");
    time(
        c,
        "torque.proof_load",
        |given| {
            let class = StrengthClass::from_slug(given.text("class"));
            (thread(given.text("thread")), class.expect("a class"))
        },
        |(thread, class)| proof_load(thread, *class),
    );
    time(
        c,
        "torque.plausible",
        |given| {
            let plug = PlugKind::from_slug(given.text("plug")).expect("a plug");
            (given.any("torque"), thread(given.text("thread")), plug)
        },
        |(torque, thread, plug)| plausible(*torque, thread, *plug),
    );
    time(
        c,
        "torque.thread",
        |given| given.text("designation").to_owned(),
        |text| Thread::parse(text),
    );
    time(
        c,
        "torque.equivalents",
        |given| {
            let prints = given.0["printed"].as_array().expect("a list");
            let prints = prints.iter().filter_map(Value::as_str).map(amount);
            prints.collect::<Vec<_>>()
        },
        |printed| equivalents(printed),
    );
    let tool = |max, tool_type| Tool {
        name: "wrench",
        tool_type,
        max: amount(max),
        min: None,
        graduation: Some(amount("0.5 N·m")),
        permissible: None,
        lever: Some(amount("230 mm")),
    };
    let tools = ["10 N·m", "50 N·m", "200 N·m"].map(|max| tool(max, ToolType::SettingAdjustable));
    let job = ToolJob {
        target: amount("12 N·m"),
        tolerance: Some(amount("1 N·m")),
        adapter: Some(amount("40 mm")),
        angle: None,
    };
    c.bench_function("torque.tool_suits, 3 tools", |bencher| {
        bencher.iter(|| tool_suits(black_box(&job), &tools));
    });
}

fn volume(c: &mut Criterion) {
    let at = |given: &Given| {
        let density = given.any("density");
        (density, given.any("temperature"), given.base())
    };
    time(c, "volume.correction_factor", at, |(density, at, base)| {
        correction_factor(*density, *at, *base)
    });
    time(c, "volume.density_at", at, |(density, at, base)| {
        density_at(*density, *at, *base)
    });
    time(c, "volume.base_density", at, |(density, at, base)| {
        base_density(*density, *at, *base)
    });
    time(
        c,
        "volume.at_temperature",
        |given| {
            let volume = given.any("volume");
            let (from, to) = (given.any("from"), given.any("to"));
            (volume, from, to, given.expansion())
        },
        |(volume, from, to, expansion)| at_temperature(*volume, *from, *to, *expansion),
    );
    time(
        c,
        "volume.temperature_error",
        |given| {
            let volume = given.any("volume");
            let (read_at, reference) = (given.any("read_at"), given.any("reference"));
            (volume, read_at, reference, given.expansion())
        },
        |(volume, at, reference, expansion)| {
            temperature_error(*volume, *at, *reference, *expansion)
        },
    );
    time(
        c,
        "volume.mass",
        |given| (given.any("volume"), at(given)),
        |(volume, (density, at, base))| mass(*volume, *at, *density, *base),
    );
    time(
        c,
        "volume.volume_of_mass",
        |given| (given.any("mass"), at(given)),
        |(mass, (density, at, base))| volume_of_mass(*mass, *at, *density, *base),
    );
    time(
        c,
        "volume.tilt_error",
        |given| ["surface", "offset", "tilt"].map(|name| given.any(name)),
        |[surface, offset, tilt]| tilt_error(*surface, *offset, *tilt),
    );
    time(
        c,
        "volume.volume_below",
        |given| (given.sump(), given.any("level")),
        |(sump, level)| volume_below(sump, *level),
    );
    time(
        c,
        "volume.level_for",
        |given| (given.sump(), given.any("volume")),
        |(sump, volume)| level_for(sump, *volume),
    );
    time(
        c,
        "volume.segment_share",
        |given| [given.any("level"), given.any("diameter")],
        |[level, diameter]| segment_share(*level, *diameter),
    );
    let drained = |given: &Given| [given.any("capacity"), given.any("drained")];
    time(
        c,
        "volume.exchange",
        |given| (drained(given), given.count("cycles")),
        |([capacity, drained], cycles)| exchange(*capacity, *drained, *cycles),
    );
    time(
        c,
        "volume.cycles_needed",
        |given| (drained(given), given.ratio("fresh")),
        |([capacity, drained], fresh)| cycles_needed(*capacity, *drained, *fresh),
    );
    time(
        c,
        "volume.wrong_left",
        |given| (drained(given), given.any("wrong"), given.count("cycles")),
        |([capacity, drained], wrong, cycles)| wrong_left(*capacity, *wrong, *drained, *cycles),
    );
    time(
        c,
        "volume.flush",
        |given| [given.any("capacity"), given.any("flowed")],
        |[capacity, flowed]| flush(*capacity, *flowed),
    );
    time(
        c,
        "volume.flush_needed",
        |given| [given.any("capacity"), given.ratio("fresh")],
        |[capacity, fresh]| flush_needed(*capacity, *fresh),
    );
}

fn warm_up(c: &mut Criterion) {
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
                b.iter_batched(|| forecast.clone(), turn, criterion::BatchSize::SmallInput);
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

fn fluid(c: &mut Criterion) {
    let points = |given: &Given| {
        [
            "viscosity_1",
            "temperature_1",
            "viscosity_2",
            "temperature_2",
        ]
        .map(|name| given.any(name))
    };
    time(
        c,
        "fluid.viscosity_at",
        |given| (points(given), given.any("temperature")),
        |([v1, t1, v2, t2], at)| viscosity_at(*v1, *t1, *v2, *t2, *at),
    );
    time(
        c,
        "fluid.temperature_for",
        |given| (points(given), given.any("viscosity")),
        |([v1, t1, v2, t2], of)| temperature_for(*v1, *t1, *v2, *t2, *of),
    );
    time(
        c,
        "fluid.viscosity_index",
        |given| [given.any("viscosity_40"), given.any("viscosity_100")],
        |[at_40, at_100]| viscosity_index(*at_40, *at_100),
    );
    time(
        c,
        "fluid.blend",
        |given| {
            let rule = BlendRule::from_slug(given.text("rule")).expect("a rule");
            let parts = given.list("parts").map(|part| Component {
                viscosity: part.any("viscosity"),
                share: part.ratio("share"),
            });
            (parts.collect::<Vec<_>>(), rule)
        },
        |(parts, rule)| blend(parts, *rule),
    );
    time(
        c,
        "fluid.grade",
        |given| given.any("viscosity_40"),
        |viscosity| grade(*viscosity),
    );
    time(
        c,
        "fluid.grade_limits",
        |given| given.count("grade"),
        |number| grade_limits(*number),
    );
    let [thick, cold, thin, hot, at] =
        ["32 mm²/s", "40 °C", "5.4 mm²/s", "100 °C", "80 °C"].map(amount);
    let oil = Walther::new(thick, cold, thin, hot).expect("an oil");
    c.bench_function("fluid.Walther.viscosity_at", |bencher| {
        bencher.iter(|| oil.viscosity_at(black_box(at)));
    });
    c.bench_function("fluid.Walther.temperature_for", |bencher| {
        bencher.iter(|| oil.temperature_for(black_box(thin)));
    });
}

fn signal(c: &mut Criterion) {
    time(
        c,
        "signal.transmission_frame",
        |given| {
            let id = u32::from_str_radix(given.text("id"), 16).unwrap_or(0x18FE_F803);
            (id, given.bytes("data"))
        },
        |(id, data)| transmission_frame(*id, data),
    );
    time(
        c,
        "signal.linear",
        |given| (given.bytes("data"), given.layout()),
        |(data, layout)| linear(data, layout),
    );
    time(
        c,
        "signal.diagnostic_reply",
        |given| [given.bytes("request"), given.bytes("reply")],
        |[request, reply]| diagnostic_reply(request, reply).map(|reply| reply.state),
    );
}

fn leak(c: &mut Criterion) {
    time(
        c,
        "leak.against_limit",
        |given| {
            let rule = Rule::from_slug(given.text("rule")).unwrap_or(Rule::SimpleAcceptance);
            let values = ["estimate", "uncertainty", "limit"].map(|name| given.any(name));
            (values, rule, given.maybe("probability", Kind::Ratio))
        },
        |([estimate, uncertainty, limit], rule, probability)| {
            against_limit(*estimate, *uncertainty, *limit, *rule, *probability)
        },
    );
    time(
        c,
        "leak.conformance",
        |given| {
            let limits = ["lower", "upper"].map(|name| given.maybe(name, None));
            (given.any("value"), given.any("uncertainty"), limits)
        },
        |(value, uncertainty, [lower, upper])| conformance(*value, *uncertainty, *lower, *upper),
    );
    time(
        c,
        "leak.guard_band",
        |given| [given.any("uncertainty"), given.ratio("probability")],
        |[uncertainty, probability]| guard_band(*uncertainty, *probability),
    );
    time(
        c,
        "leak.quantile",
        |given| given.ratio("probability"),
        |probability| quantile(*probability),
    );
    time(
        c,
        "leak.combined_uncertainty",
        |given| {
            let parts = given.0["parts"].as_array().expect("a list");
            let parts = parts.iter().filter_map(Value::as_str).map(amount);
            parts.collect::<Vec<_>>()
        },
        |parts| combined_uncertainty(parts),
    );
    time(
        c,
        "leak.expanded_uncertainty",
        |given| (given.any("uncertainty"), given.maybe("factor", Kind::Ratio)),
        |(uncertainty, factor)| expanded_uncertainty(*uncertainty, *factor),
    );
    time(
        c,
        "leak.risks",
        |given| {
            let values = ["mean", "spread", "uncertainty"].map(|name| given.any(name));
            (
                values,
                given.interval("tolerance"),
                given.interval("acceptance"),
            )
        },
        |([mean, spread, doubt], tolerance, acceptance)| {
            risks(*mean, *spread, *doubt, *tolerance, *acceptance)
        },
    );
    time(
        c,
        "leak.drip_rate",
        |given| {
            (
                given.count("drops"),
                given.any("in_time"),
                given.any("drop"),
            )
        },
        |(drops, in_time, drop)| drip_rate(*drops, *in_time, *drop),
    );
    time(
        c,
        "leak.drops_for",
        |given| ["volume", "over", "drop"].map(|name| given.any(name)),
        |[volume, over, drop]| drops_for(*volume, *over, *drop),
    );
    time(
        c,
        "leak.seepage",
        |given| SeepageClass::from_slug(given.text("class")).expect("a class"),
        |class| Ok(seepage(*class)),
    );
    let visits = (0..10_i64).map(|place| {
        let odometer = Amount::new(80_000 + 12_000 * place, 0, Unit::Kilometre);
        let net = Amount::new(30 + 7 * place % 20, 2, Unit::Litre);
        Visit {
            date: format!("20{:02}-03-02", 16 + place).parse().ok(),
            ..Visit::new(odometer.expect("a length"), net.expect("a volume"))
        }
    });
    let (visits, shortage): (Vec<_>, _) = (visits.collect(), amount("0.5 L"));
    c.bench_function("leak.consumption, 10 visits", |bencher| {
        bencher.iter(|| consumption(black_box(&visits), shortage));
    });
}

/// What a shelf offers: names, volumes and prices.
const SHELVES: [(&str, &[(&str, u64)]); 4] = [
    (
        "litres",
        &[
            ("0.1 L", 210),
            ("0.25 L", 420),
            ("0.5 L", 700),
            ("1 L", 1_190),
            ("1.5 L", 1_720),
            ("2 L", 2_150),
            ("3 L", 3_190),
            ("4 L", 4_090),
            ("5 L", 4_950),
            ("10 L", 9_400),
            ("20 L", 17_900),
            ("60 L", 49_900),
        ],
    ),
    (
        "quarts",
        &[
            ("4 US fl oz", 260),
            ("8 US fl oz", 430),
            ("1 US pt", 700),
            ("1 US qt", 1_150),
            ("1.5 US qt", 1_690),
            ("2 US qt", 2_190),
            ("3 US qt", 3_150),
            ("1 US gal", 3_990),
            ("5 US qt", 4_890),
            ("2 US gal", 7_600),
            ("5 US gal", 17_700),
            ("15 US gal", 49_800),
        ],
    ),
    (
        "litres and quarts",
        &[
            ("0.25 L", 420),
            ("0.5 L", 700),
            ("1 US pt", 690),
            ("1 US qt", 1_150),
            ("1 L", 1_190),
            ("2 L", 2_150),
            ("2 US qt", 2_190),
            ("1 US gal", 3_990),
            ("4 L", 4_090),
            ("5 L", 4_950),
            ("5 US gal", 17_700),
            ("20 L", 17_900),
        ],
    ),
    (
        "odd sizes",
        &[
            ("0.33 L", 510),
            ("0.473 L", 690),
            ("0.568 L", 800),
            ("0.75 L", 980),
            ("0.946 L", 1_150),
            ("1.136 L", 1_310),
            ("1.75 L", 1_910),
            ("3.785 L", 3_990),
            ("4.546 L", 4_600),
            ("7.57 L", 7_550),
            ("18.93 L", 17_700),
            ("22.7 L", 20_900),
        ],
    ),
];

fn plans(c: &mut Criterion) {
    for (word, shelf) in SHELVES {
        let sizes = shelf.iter().map(|(name, price)| Container {
            name,
            volume: amount(name),
            price: Some(*price),
            stock: None,
        });
        let (sizes, need): (Vec<_>, _) = (sizes.collect(), amount("40 L"));
        c.bench_function(
            &format!("volume.containers, 40 L of 12 sizes, {word}"),
            |bencher| {
                bencher.iter(|| containers(black_box(need), black_box(&sizes), &[], None));
            },
        );
    }
}
>>>>>>> main

/// The same calculators with arguments and answer as JSON.
fn json(c: &mut Criterion) {
    for name in ["torque.applied_torque", "fluid.viscosity_index"] {
        let texts: Vec<String> = cases(name)
            .iter()
            .map(|given| given.0.to_string())
            .collect();
        let mut turns = texts.iter().cycle();
        c.bench_function(&format!("JSON/{name}"), |bencher| {
            bencher.iter(|| turns.next().map(|text| calculate(name, black_box(text))));
        });
    }
}

criterion_group!(
    benches, torque, volume, warm_up, fluid, signal, leak, plans, json
);
criterion_main!(benches);
