//! Oil that grows with the temperature: factors, densities and masses.

use super::given::{amount, base, density, temperature, volume};
use brimline::volume::{
    Base, Expansion, at_temperature, base_density, correction_factor, density_at, mass,
    temperature_error, volume_of_mass,
};
use brimline::{Amount, Unit};
use proptest::prelude::*;

/// Relative difference.
fn apart(one: Amount, other: Amount) -> f64 {
    (one.si() / other.si() - 1.0).abs()
}

fn is_rounded(base: Base) -> bool {
    matches!(base, Base::At60F2004 | Base::At15C2004)
}

proptest! {
    #[test]
    fn there_and_back_is_where_it_was(
        held in volume(), from in temperature(), to in temperature(), density in density(), base in base(),
    ) {
        let oil = Expansion::Oil { density, base };
        let there = at_temperature(held, from, to, oil).unwrap();
        let back = at_temperature(there, to, from, oil).unwrap();
        prop_assert_eq!(there.unit(), held.unit());
        prop_assert!((back.to_f64() - held.to_f64()).abs() <= 1e-9 + 1e-11 * held.to_f64(), "{held} {there} {back}");
        // What it is more is what is told of it.
        let more = temperature_error(held, to, from, oil).unwrap();
        prop_assert!((held.to_f64() + more.to_f64() - there.to_f64()).abs() <= 1e-8 + 1e-10 * held.to_f64());
    }

    #[test]
    fn warm_fluid_takes_more_room(
        held in volume(), one in temperature(), other in temperature(), density in density(), base in base(),
    ) {
        prop_assume!(one != other);
        let (one, other) = if one < other { (one, other) } else { (other, one) };
        let factor = |at| correction_factor(density, at, base).unwrap();
        prop_assert!(factor(other) < factor(one) || is_rounded(base) && factor(other) == factor(one));
        let grown = at_temperature(held, one, other, Expansion::Oil { density, base }).unwrap();
        prop_assert!(grown >= held);
        let plain = Expansion::Coefficient(amount(7, 4, Unit::PerKelvin));
        prop_assert!(temperature_error(held, one, other, plain).unwrap() <= amount(0, 0, Unit::Litre));
    }

    #[test]
    fn heavier_oil_grows_less(at in temperature(), one in density(), other in density(), base in base()) {
        let (one, other) = if one < other { (one, other) } else { (other, one) };
        let factor = |density| (correction_factor(density, at, base).unwrap().si() - 1.0).abs();
        let lost = if is_rounded(base) { 1e-5 } else { 0.0 };
        prop_assert!(factor(other) <= factor(one) + lost);
    }

    #[test]
    fn densities_and_masses_invert(held in volume(), at in temperature(), density in density(), base in base()) {
        let hot = density_at(density, at, base).unwrap();
        let back = base_density(hot, at, base).unwrap();
        let within = if is_rounded(base) { 8e-6 } else { 1e-11 };
        prop_assert!(apart(back, density) <= within, "{density} {hot} {back}");
        let weight = mass(held, at, density, base).unwrap();
        let back = volume_of_mass(weight, at, density, base).unwrap();
        prop_assert!((back.si() - held.si()).abs() <= 1e-11 + 1e-10 * held.si(), "{held} {weight} {back}");
    }

    #[test]
    fn the_forms_agree(at in temperature(), tenths in 8050..=11_600_i64) {
        // The same oil, by its density at 15 °C and at 60 °F. The constant per °C is printed to four digits.
        let at_15c = amount(tenths, 1, Unit::KilogramPerCubicMetre);
        let fahrenheit_60 = amount(60, 0, Unit::DegreeFahrenheit);
        let at_60f = density_at(at_15c, fahrenheit_60, Base::At15C).unwrap();
        let hot = [(at_15c, Base::At15C), (at_60f, Base::At60F), (at_60f, Base::At60F2004), (at_15c, Base::At15C2004)];
        let hot = hot.map(|(density, base)| density_at(density, at, base).unwrap());
        for other in hot {
            prop_assert!(apart(hot[0], other) < 1.2e-4, "{at} {hot:?}");
        }
    }
}
