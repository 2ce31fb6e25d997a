//! The units as their definitions say, in exact rationals, written apart from the library.

use brimline::Unit;
use num_bigint::BigInt;
use num_rational::BigRational;
use num_traits::One;

/// A decimal, or a ratio of two.
pub fn rational(text: &str) -> BigRational {
    if let Some((above, below)) = text.split_once('/') {
        return rational(above) / rational(below);
    }
    let (whole, part) = text.split_once('.').unwrap_or((text, ""));
    let digits: BigInt = format!("{whole}{part}").parse().expect("digits");
    BigRational::new(digits, BigInt::from(10).pow(part.len() as u32))
}

/// The size of a unit in the coherent SI unit (an angle in degrees), and its zero.
///
/// Sources: NIST SP 811 (2008), appendix B.8 for the inch, the pound, standard gravity and both gallons, B.9
/// for temperatures; the SI Brochure, 9th edition, for the rest.
pub fn definition(unit: Unit) -> (BigRational, BigRational) {
    let inch = rational("0.0254");
    let pound = rational("0.45359237");
    let gravity = rational("9.80665");
    let pound_force = &pound * &gravity;
    let litre = rational("0.001");
    let us_gallon = inch.pow(3) * rational("231");
    let imperial_gallon = &litre * rational("4.54609");
    let none = rational("0");
    let over = |size: &BigRational, parts: i64| size / BigRational::from(BigInt::from(parts));
    let size = match unit.symbol() {
        "L" => litre,
        "mL" | "cm³" => over(&litre, 1000),
        "m³" => BigRational::one(),
        "in³" => inch.pow(3),
        "US gal" => us_gallon,
        "US qt" => over(&us_gallon, 4),
        "US pt" => over(&us_gallon, 8),
        "US fl oz" => over(&us_gallon, 128),
        "imp gal" => imperial_gallon,
        "imp qt" => over(&imperial_gallon, 4),
        "imp pt" => over(&imperial_gallon, 8),
        "imp fl oz" => over(&imperial_gallon, 160),
        "N·m" => rational("1"),
        "N·cm" => rational("0.01"),
        "dN·m" => rational("0.1"),
        "lbf·ft" => pound_force * inch * rational("12"),
        "lbf·in" => pound_force * inch,
        "ozf·in" => over(&pound_force, 16) * inch,
        "kgf·m" => gravity,
        "kgf·cm" => over(&gravity, 100),
        "kg" => rational("1"),
        "g" => rational("0.001"),
        "lb" => pound,
        "km" => rational("1000"),
        "mi" => inch * rational("12") * rational("5280"),
        "m" => rational("1"),
        "mm" => rational("0.001"),
        "in" => inch,
        "m²" => rational("1"),
        "cm²" => rational("0.0001"),
        "in²" => inch.pow(2),
        "K" => rational("1"),
        "°C" => return (rational("1"), rational("273.15")),
        "°F" => return (rational("5/9"), rational("459.67") * rational("5/9")),
        "Δ°C" => rational("1"),
        "Δ°F" => rational("5/9"),
        "kPa" | "kPa abs" => rational("1000"),
        "bar" => rational("100000"),
        "psi" | "psi abs" => pound_force / inch.pow(2),
        "deg" => rational("1"),
        "s" => rational("1"),
        "min" => rational("60"),
        "h" => rational("3600"),
        "kg/m³" => rational("1"),
        "g/mL" => rational("1000"),
        "mm²/s" => rational("0.000001"),
        "mL/s" => rational("0.000001"),
        "L/min" => over(&litre, 60),
        "ratio" => rational("1"),
        "%" => rational("0.01"),
        "N" => rational("1"),
        "kN" => rational("1000"),
        "lbf" => pound_force,
        "per K" => rational("1"),
        "per °F" => rational("9/5"),
        "mm²" => rational("0.000001"),
        other => panic!("{other} has no definition here"),
    };
    (size, none)
}
