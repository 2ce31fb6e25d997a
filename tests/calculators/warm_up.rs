//! Warm-ups as nobody planned them: noise, outliers, pours, broken sensors, any numbers at all.

use brimline::calculate::calculate;
use brimline::warm_up::{
    Asked, Cooling, Forecast, Method, Named, Outlook, Pour, Sample, Span, cold_soak, cool_down,
    fit, forecast, mixed_temperature, response_time, sensor_doubts,
};
use brimline::{Amount, ErrorKind, Kind, Unit};
use proptest::prelude::*;

fn computed(number: f64, unit: Unit) -> Amount {
    Amount::from_computed(number, unit).expect("a small finite number")
}

fn difference(number: f64) -> Amount {
    computed(number, Unit::CelsiusDifference)
}

/// A first-order response in degrees Celsius and seconds.
#[derive(Debug, Clone, Copy)]
struct Truth {
    start: f64,
    asymptote: f64,
    constant: f64,
}

impl Truth {
    fn at(&self, seconds: f64) -> f64 {
        self.asymptote - (self.asymptote - self.start) * (-seconds / self.constant).exp()
    }

    fn crossing(&self, celsius: f64) -> f64 {
        let share = (self.asymptote - self.start) / (self.asymptote - celsius);
        self.constant * share.ln()
    }
}

/// No faster than the 6 °C a minute a fluid warms at idle.
fn truth() -> impl Strategy<Value = Truth> {
    (5.0..30.0, 70.0..95.0, 950.0..2000.0).prop_map(|(start, asymptote, constant)| Truth {
        start,
        asymptote,
        constant,
    })
}

/// Readings to a hundredth, `step` seconds apart, each off by its share of `scatter`.
fn readings(truth: Truth, step: f64, scatter: f64, noise: &[f64]) -> Vec<Sample> {
    let reading = |(place, noise): (usize, &f64)| {
        let at = step * place as f64;
        let celsius = ((truth.at(at) + scatter * noise) * 100.0).round() / 100.0;
        Sample {
            at: computed(at, Unit::Second),
            reading: computed(celsius, Unit::DegreeCelsius),
        }
    };
    noise.iter().enumerate().map(reading).collect()
}

/// Noise between -1 and 1.
fn noise(count: impl Into<prop::collection::SizeRange>) -> impl Strategy<Value = Vec<f64>> {
    prop::collection::vec(-1.0..1.0, count)
}

fn is_ordered(span: &Span) -> bool {
    let ends = [Some(span.earliest), span.likely, span.latest];
    let told: Vec<f64> = ends.into_iter().flatten().map(|end| end.si()).collect();
    told.is_sorted() && told.iter().all(|end| (0.0..=86_400.0).contains(end))
}

/// What holds of any answer.
fn is_sound(outlook: &Outlook) -> bool {
    let spans = [outlook.opens, outlook.closes];
    let first_order = outlook.method == Method::FirstOrder;
    spans.iter().flatten().all(is_ordered) && (first_order || outlook.reason.is_some())
}

/// Within four standard uncertainties, and half a step between readings: the ends told are two away, what has happened at 0 s.
fn is_near(span: &Span, ahead: f64) -> bool {
    let (Some(likely), Some(latest)) = (span.likely, span.latest) else {
        return span.earliest.si() <= ahead + 1.0;
    };
    (likely.si() - ahead).abs() <= 2.0 * (latest.si() - likely.si()) + 15.0
}

fn asked(min: f64, max: f64) -> Asked {
    Asked {
        min: Some(computed(min, Unit::DegreeCelsius)),
        max: Some(computed(max, Unit::DegreeCelsius)),
        ..Asked::default()
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 256, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn an_exact_response_is_found_again(truth in truth(), step in 60.0_f64..150.0, count in 6_usize..40) {
        let samples: Vec<Sample> = (0..count).map(|place| {
            let at = (step * place as f64).round();
            Sample { at: computed(at, Unit::Second), reading: computed(truth.at(at), Unit::DegreeCelsius) }
        }).collect();
        for scatter in [None, Some(difference(0.5))] {
            let fit = fit(&samples, scatter, None)?;
            prop_assert!((fit.asymptote.to_f64() - truth.asymptote).abs() < 1e-3);
            prop_assert!((fit.start.to_f64() - truth.start).abs() < 1e-3);
            prop_assert!((fit.time_constant.to_f64() - truth.constant).abs() < 0.1);
            let crossing = fit.crossing(computed(55.0, Unit::DegreeCelsius));
            prop_assert!((crossing?.at.si() - truth.crossing(55.0)).abs() < 0.1);
        }
    }

    #[test]
    fn a_noisy_response_is_forecast_within_its_bounds(truth in truth(), noise in noise(30..120)) {
        let samples = readings(truth, 30.0, 0.5, &noise);
        let last = 30.0 * (noise.len() as f64 - 1.0);
        let outlook = forecast(&samples, &[], asked(60.0, 65.0))?;
        prop_assert!(is_sound(&outlook), "{outlook:?}");
        prop_assert!(outlook.suspect.is_empty());
        for (span, limit) in [(outlook.opens, 60.0), (outlook.closes, 65.0)] {
            let ahead = (truth.crossing(limit) - last).max(0.0);
            let span = span.filter(|_| outlook.method == Method::FirstOrder);
            prop_assert!(span.is_none_or(|span| is_near(&span, ahead)), "{ahead}: {outlook:?}");
        }
        // An hour of readings tells where it is going.
        if last > 2.0 * truth.constant {
            prop_assert_eq!(outlook.method, Method::FirstOrder);
        }
    }

    #[test]
    fn outliers_do_not_draw_a_forecast(
        truth in truth(),
        noise in noise(80),
        places in prop::collection::btree_set(1_usize..79, 1..6),
        off in prop_oneof![-60.0..-15.0, 15.0..60.0],
    ) {
        let mut samples = readings(truth, 30.0, 0.3, &noise);
        let clean = forecast(&samples, &[], asked(30.0, 68.0))?;
        let mut alone: Vec<usize> = Vec::new();
        for place in places {
            // Two in a row that agree are a sensor that moved, not outliers.
            if alone.last().is_none_or(|last| place > last + 1) {
                let at = samples[place].reading.to_f64();
                samples[place].reading = computed(at + off, Unit::DegreeCelsius);
                alone.push(place);
            }
        }
        let told = forecast(&samples, &[], asked(30.0, 68.0))?;
        prop_assert!(is_sound(&told));
        // They are suspect, each and alone, where they are still held.
        prop_assert!(told.suspect.iter().all(|place| alone.contains(&(*place as usize))));
        if clean.method == told.method && let (Some(clean), Some(told)) = (clean.closes, told.closes) {
            prop_assert!(clean.latest.is_none_or(|latest| told.earliest <= latest), "{clean:?} {told:?}");
            prop_assert!(told.latest.is_none_or(|latest| clean.earliest <= latest), "{clean:?} {told:?}");
        }
    }

    #[test]
    fn a_pour_goes_on_from_the_mixed_temperature(
        truth in truth(),
        noise in noise(70),
        place in 20_usize..60,
        held in 3.0..9.0,
        share in 0.02..0.3,
        cold in 5.0..25.0,
    ) {
        let poured = held * share;
        let pour_at = 30.0 * place as f64 + 10.0;
        let warm = computed(truth.at(pour_at), Unit::DegreeCelsius);
        let litres = |number| computed(number, Unit::Litre);
        let mixed = mixed_temperature(litres(held), warm, litres(poured), computed(cold, Unit::DegreeCelsius))?;
        let after = Truth { start: mixed.to_f64(), ..truth };
        let mut samples = readings(truth, 30.0, 0.3, &noise);
        for (sample, noise) in samples.iter_mut().zip(&noise).skip(place + 1) {
            let celsius = after.at(sample.at.si() - pour_at) + 0.3 * noise;
            sample.reading = computed((celsius * 100.0).round() / 100.0, Unit::DegreeCelsius);
        }
        let pours = [Pour {
            at: computed(pour_at, Unit::Second),
            volume: litres(poured),
            temperature: computed(cold, Unit::DegreeCelsius),
        }];
        let limit = truth.asymptote - 12.0;
        let asked = Asked { held: Some(litres(held)), ..asked(limit, limit) };
        let outlook = forecast(&samples, &pours, asked)?;
        prop_assert!(is_sound(&outlook));
        prop_assert!(outlook.suspect.is_empty(), "{outlook:?}");
        let last = 30.0 * 69.0;
        let ahead = (after.crossing(limit) + pour_at - last).max(0.0);
        let opens = outlook.opens.filter(|_| outlook.method == Method::FirstOrder);
        prop_assert!(opens.is_none_or(|span| is_near(&span, ahead)), "{ahead}: {outlook:?}");
    }

    #[test]
    fn stuck_sensors_tell_nothing(celsius in -30.0..59.0, noise in noise(12), min in 0.0..60.0) {
        let level = Truth { start: celsius, asymptote: celsius, constant: 1.0 };
        let samples = readings(level, 60.0, 0.2, &noise);
        let outlook = forecast(&samples, &[], asked(min, 70.0))?;
        prop_assert_eq!(outlook.method, Method::None);
        prop_assert_eq!((outlook.opens, outlook.closes), (None, None));
        prop_assert!(sensor_doubts(&samples, true)?.iter().any(|doubt| doubt.index == 5));
        prop_assert!(sensor_doubts(&samples, false)?.is_empty());
    }

    #[test]
    fn live_and_at_once_answer_alike(truth in truth(), noise in noise(3..150), pour in 0_usize..150) {
        let samples = readings(truth, 20.0, 2.0, &noise);
        let pour_at = 20.0 * pour as f64 + 5.0;
        let pour = Pour {
            at: computed(pour_at, Unit::Second),
            volume: computed(0.25, Unit::Litre),
            temperature: computed(18.0, Unit::DegreeCelsius),
        };
        let asked = Asked { held: Some(computed(6.0, Unit::Litre)), ..asked(40.0, 50.0) };
        let mut live = Forecast::new(asked)?;
        let mut is_poured = false;
        for sample in &samples {
            if !is_poured && pour.at < sample.at {
                live.poured(pour.at, pour.volume, pour.temperature)?;
                is_poured = true;
            }
            live.sample(sample.at, sample.reading)?;
            prop_assert!(is_sound(&live.answer()));
        }
        if !is_poured {
            live.poured(pour.at, pour.volume, pour.temperature)?;
        }
        prop_assert_eq!(live.answer(), forecast(&samples, &[pour], asked)?);
    }

    #[test]
    fn any_readings_have_an_answer_or_a_refusal(
        samples in prop::collection::vec((any_amount(Kind::Time), any_amount(Kind::Temperature)), 0..12),
        pours in prop::collection::vec((any_amount(Kind::Time), any_amount(Kind::Volume), any_amount(Kind::Temperature)), 0..4),
        limits in prop::collection::vec(any_amount(Kind::Temperature), 3),
        scatter in any_amount(Kind::TemperatureDifference),
        held in any_amount(Kind::Volume),
        in_order in any::<bool>(),
    ) {
        let mut samples: Vec<Sample> = samples.into_iter().map(|(at, reading)| Sample { at, reading }).collect();
        let mut pours: Vec<Pour> = pours.into_iter()
            .map(|(at, volume, temperature)| Pour { at, volume, temperature }).collect();
        if in_order {
            samples.sort_by(|one, other| one.at.partial_cmp(&other.at).expect("times"));
            pours.sort_by(|one, other| one.at.partial_cmp(&other.at).expect("times"));
        }
        let (min, max) = if limits[0] < limits[1] { (limits[0], limits[1]) } else { (limits[1], limits[0]) };
        for (scatter, held) in [(None, None), (Some(scatter), Some(held))] {
            let asked = Asked { min: Some(min), max: Some(max), scatter, held };
            match forecast(&samples, &pours, asked) {
                Ok(outlook) => prop_assert!(is_sound(&outlook), "{outlook:?}"),
                Err(error) => prop_assert!(error.kind() == ErrorKind::OutOfRange && !error.first().path.is_empty()),
            }
            for asymptote in [None, Some(limits[2])] {
                let told = fit(&samples, scatter, asymptote).and_then(|fit| fit.crossing(min));
                if let Err(error) = told {
                    prop_assert!(error.first().kind != ErrorKind::Internal && !error.first().path.is_empty(), "{error}");
                }
            }
        }
        let _ = sensor_doubts(&samples, true);
    }

    #[test]
    fn cooling_is_waited_for_until_the_target(
        ambient in -20.0..35.0,
        second in 40.0..90.0,
        fall in 1.5..20.0,
        max in 30.0..60.0,
        rate in 0.0..3.0,
        minutes in 0.0..10.0,
    ) {
        let celsius = |number: f64| computed((number * 100.0).round() / 100.0, Unit::DegreeCelsius);
        let cooling = Cooling {
            first: celsius(second + fall),
            second: celsius(second),
            elapsed: computed(600.0, Unit::Second),
            ambient: celsius(ambient),
            max: celsius(max),
            reheat_per_minute: difference(rate),
            reheat_time: computed(minutes, Unit::Minute),
        };
        let target = max - rate * minutes;
        match cool_down(cooling) {
            Ok(plan) => {
                prop_assert!((plan.target.to_f64() - target).abs() < 0.01 && plan.target <= cooling.max);
                let constant = plan.time_constant.si();
                let then = ambient + (second - ambient) * (-plan.wait.si() / constant).exp();
                prop_assert!((then - target.min(second)).abs() < 0.05, "{then} {target}");
                prop_assert!(plan.earliest <= plan.wait && plan.wait <= plan.latest, "{plan:?}");
                // A longer time until the reading wants a longer wait.
                let longer = Cooling { reheat_time: computed(minutes + 1.0, Unit::Minute), ..cooling };
                prop_assert!(cool_down(longer).is_err() || cool_down(longer)?.wait >= plan.wait);
            }
            Err(error) => prop_assert!(error.first().path == "max" && target < ambient + 0.02, "{error}"),
        }
    }

    #[test]
    fn a_mix_lies_between_and_leans_to_the_larger(
        volume in 0.1..10.0, warm in 20.0..100.0, added in 0.0..10.0, cold in -20.0..60.0,
    ) {
        let celsius = |number| computed(number, Unit::DegreeCelsius);
        let litres = |number| computed(number, Unit::Litre);
        let mixed = mixed_temperature(litres(volume), celsius(warm), litres(added), celsius(cold))?.to_f64();
        prop_assert!(warm.min(cold) - 1e-6 <= mixed && mixed <= warm.max(cold) + 1e-6);
        let back = mixed_temperature(litres(added.max(0.1)), celsius(cold), litres(volume), celsius(warm))?.to_f64();
        if added >= 0.1 {
            prop_assert!((mixed - back).abs() < 1e-6);
        }
    }

    #[test]
    fn a_response_takes_longer_for_more(constant in 1.0..5000.0, share in 0.0..0.998) {
        let time = |share| response_time(computed(constant, Unit::Second), computed(share, Unit::One));
        prop_assert!(time(share)? < time(share + 0.001)?);
        let gone = 1.0 - (-time(share)?.si() / constant).exp();
        prop_assert!((gone - share).abs() < 1e-6);
    }

    #[test]
    fn a_soak_agrees_where_no_two_are_further_apart(celsius in prop::collection::vec(-30.0..45.0, 2..8), spread in 0.0_f64..10.0) {
        let readings: Vec<Named> = celsius.iter().enumerate().map(|(place, celsius)| Named {
            name: format!("source {place}"),
            reading: computed((celsius * 10.0_f64).round() / 10.0, Unit::DegreeCelsius),
        }).collect();
        let spread = difference((spread * 10.0_f64).round() / 10.0);
        let soak = cold_soak(&readings, spread)?;
        prop_assert_eq!(soak.agree, soak.apart <= spread);
        prop_assert!(!soak.agree || (soak.odd.is_empty() && soak.unit_question.is_none()));
        let asked = soak.unit_question.map(|question| question.name);
        prop_assert!(asked.is_none_or(|name| soak.odd.contains(&name)));
    }
}

/// Any amount at all of a kind.
fn any_amount(kind: Kind) -> impl Strategy<Value = Amount> {
    let units: Vec<Unit> = Unit::ALL
        .iter()
        .copied()
        .filter(|unit| unit.kind() == kind)
        .collect();
    let mantissa = prop_oneof![
        -1000_i64..1000,
        Just(-40_i64),
        -999_999_999_999_999_i64..1_000_000_000_000_000,
    ];
    (mantissa, 0_u8..=9, prop::sample::select(units)).prop_map(|(mantissa, decimals, unit)| {
        Amount::new(mantissa, decimals, unit).expect("15 digits")
    })
}

#[test]
fn an_update_allocates_nothing() {
    let truth = Truth {
        start: 20.0,
        asymptote: 85.0,
        constant: 600.0,
    };
    let noise: Vec<f64> = (0..200)
        .map(|place| f64::from(place * 37 % 19) / 9.5 - 1.0)
        .collect();
    let samples = readings(truth, 15.0, 0.4, &noise);
    let mut live = Forecast::new(asked(40.0, 50.0)).expect("a window");
    let counted = allocation_counter::measure(|| {
        for sample in &samples {
            live.sample(sample.at, sample.reading).expect("in order");
            assert_eq!(live.answer().suspect.len(), 0);
        }
    });
    assert_eq!(counted.count_total, 0);
}

/// Asks in JSON, and reads the answer.
fn ask(function: &str, arguments: serde_json::Value) -> serde_json::Value {
    let answer = calculate(function, &arguments.to_string());
    serde_json::from_str(&answer.unwrap_or_else(|error| error.to_json())).expect("JSON")
}

#[test]
fn every_calculator_is_asked_by_name() {
    use serde_json::json;
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
