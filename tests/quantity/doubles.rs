//! Amounts as doubles and as quantities of the physics library.

use super::any::{any_amount, number, value};
use super::nearest::is_nearest;
use brimline::{Amount, ErrorKind, Kind, Unit};
use proptest::prelude::*;

#[test]
fn physical_quantities_have_exact_factors() {
    use brimline::uom::si;
    // The customary units of the physics library are rounded to seven digits; ours are not.
    let torque = Amount::parse("1 lbf·ft").unwrap().torque().unwrap();
    assert_eq!(torque.get::<si::torque::newton_meter>(), 1.3558179483314004);
    let volume = Amount::parse("4 US qt").unwrap().volume().unwrap();
    assert_eq!(volume.get::<si::volume::cubic_meter>(), 0.003785411784);
    let warm = Amount::parse("104 °F").unwrap().temperature().unwrap();
    assert_eq!(warm.get::<si::thermodynamic_temperature::kelvin>(), 313.15);
    let rise = Amount::parse("9 Δ°F")
        .unwrap()
        .temperature_difference()
        .unwrap();
    assert_eq!(rise.get::<si::temperature_interval::kelvin>(), 5.0);
    let angle = Amount::parse("180 deg").unwrap().angle().unwrap();
    assert_eq!(angle.get::<si::angle::radian>(), std::f64::consts::PI);
    assert_eq!(
        Amount::parse("1 L").unwrap().torque().unwrap_err().kind(),
        ErrorKind::WrongKind
    );
    let (gauge, absolute) = (
        Amount::parse("30 psi").unwrap(),
        Amount::parse("30 psi abs").unwrap(),
    );
    assert!(gauge.pressure().is_ok() && gauge.absolute_pressure().is_err());
    assert!(absolute.pressure().is_err() && absolute.absolute_pressure().is_ok());
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 1_000, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn doubles_read_as_their_shortest_decimal(mantissa in -999_999_999_999_999_i64..=999_999_999_999_999, decimals in 0..=9_u8, bits in any::<u64>()) {
        // Fifteen digits survive a double: IEEE 754, and C's DBL_DIG.
        let amount = Amount::new(mantissa, decimals, Unit::Litre).unwrap();
        let read = Amount::from_f64(amount.to_f64(), Unit::Litre).unwrap();
        prop_assert_eq!(read, amount);
        if let Ok(amount) = Amount::from_f64(f64::from_bits(bits), Unit::Litre) {
            prop_assert_eq!(amount.to_f64(), f64::from_bits(bits));
        }
    }

    #[test]
    fn physical_values_are_the_nearest_doubles(amount in any_amount()) {
        prop_assert!(is_nearest(&number(&amount), amount.to_f64()));
        if amount.kind() != Kind::Angle {
            prop_assert!(is_nearest(&value(&amount), amount.si()), "{} is {}", amount, amount.si());
        }
    }
}
