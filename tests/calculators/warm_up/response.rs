//! A first-order response, and readings of it.

use brimline::warm_up::{Sample, fit, response_time};
use brimline::{Amount, Unit};
use proptest::prelude::*;

pub fn computed(number: f64, unit: Unit) -> Amount {
    Amount::from_computed(number, unit).expect("a small finite number")
}

pub fn difference(number: f64) -> Amount {
    computed(number, Unit::CelsiusDifference)
}

/// A first-order response in degrees Celsius and seconds.
#[derive(Debug, Clone, Copy)]
pub struct Truth {
    pub start: f64,
    pub asymptote: f64,
    pub constant: f64,
}

impl Truth {
    pub fn at(&self, seconds: f64) -> f64 {
        self.asymptote - (self.asymptote - self.start) * (-seconds / self.constant).exp()
    }

    pub fn crossing(&self, celsius: f64) -> f64 {
        let share = (self.asymptote - self.start) / (self.asymptote - celsius);
        self.constant * share.ln()
    }
}

/// No faster than the 6 °C a minute a fluid warms at idle.
pub fn truth() -> impl Strategy<Value = Truth> {
    (5.0..30.0, 70.0..95.0, 950.0..2000.0).prop_map(|(start, asymptote, constant)| Truth {
        start,
        asymptote,
        constant,
    })
}

/// Readings to a hundredth, `step` seconds apart, each off by its share of `scatter`.
pub fn readings(truth: Truth, step: f64, scatter: f64, noise: &[f64]) -> Vec<Sample> {
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
pub fn noise(count: impl Into<prop::collection::SizeRange>) -> impl Strategy<Value = Vec<f64>> {
    prop::collection::vec(-1.0..1.0, count)
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
    fn a_response_takes_longer_for_more(constant in 1.0..5000.0, share in 0.0..0.998) {
        let time = |share| response_time(computed(constant, Unit::Second), computed(share, Unit::One));
        prop_assert!(time(share)? < time(share + 0.001)?);
        let gone = 1.0 - (-time(share)?.si() / constant).exp();
        prop_assert!((gone - share).abs() < 1e-6);
    }
}
