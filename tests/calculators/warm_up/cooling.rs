//! Fluid that cools, left to stand or mixed with colder.

use super::response::{computed, difference};
use brimline::Unit;
use brimline::warm_up::{Cooling, cool_down, mixed_temperature};
use proptest::prelude::*;

proptest! {
    #![proptest_config(ProptestConfig { cases: 256, failure_persistence: None, ..ProptestConfig::default() })]

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
}
