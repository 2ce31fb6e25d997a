//! Forecasts of warm-ups as nobody planned them: noise, outliers, pours, any readings at all.

use super::response::{Truth, computed, noise, readings, truth};
use brimline::warm_up::{
    Asked, Forecast, Method, Outlook, Pour, Sample, Span, fit, forecast, mixed_temperature,
    sensor_doubts,
};
use brimline::{Amount, ErrorKind, Kind, Unit};
use proptest::prelude::*;

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

pub fn asked(min: f64, max: f64) -> Asked {
    Asked {
        min: Some(computed(min, Unit::DegreeCelsius)),
        max: Some(computed(max, Unit::DegreeCelsius)),
        ..Asked::default()
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

proptest! {
    #![proptest_config(ProptestConfig { cases: 256, failure_persistence: None, ..ProptestConfig::default() })]

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
