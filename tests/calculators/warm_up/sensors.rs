//! Sensors that are stuck, and sensors that should agree after a night.

use super::forecast::asked;
use super::response::{Truth, computed, difference, noise, readings};
use brimline::Unit;
use brimline::warm_up::{Method, Named, cold_soak, forecast, sensor_doubts};
use proptest::prelude::*;

proptest! {
    #![proptest_config(ProptestConfig { cases: 256, failure_persistence: None, ..ProptestConfig::default() })]

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
