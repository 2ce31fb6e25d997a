//! Published factors, with all their digits and as printed.

use brimline::convert;

/// Published factors: value, unit, in, out, how many units in the last place the print may be off, source.
const PUBLISHED: &[(f64, &str, &str, f64, &str)] = &[
    (1.0, "US qt", "L", 0.946352946, SP_811),
    (1.0, "US pt", "L", 0.473176473, SP_811),
    (1.0, "US gal", "L", 3.785411784, SP_811),
    (1.0, "US fl oz", "mL", 29.5735295625, SP_811),
    (1.0, "in³", "mL", 16.387064, SP_811),
    (1.0, "imp gal", "L", 4.54609, SP_811),
    (1.0, "imp qt", "L", 1.1365225, IMPERIAL),
    (1.0, "imp pt", "L", 0.56826125, IMPERIAL),
    (1.0, "imp fl oz", "mL", 28.4130625, SP_811),
    (1.0, "lbf·ft", "N·m", 1.3558179483314004, SP_811),
    (1.0, "lbf·in", "N·m", 0.1129848290276167, SP_811),
    (1.0, "kgf·m", "N·m", 9.80665, SP_811),
    (1.0, "N·cm", "N·m", 0.01, SI),
    (1.0, "dN·m", "N·m", 0.1, SI),
    (1.0, "lb", "kg", 0.45359237, SP_811),
    // An avoirdupois ounce is a sixteenth of a pound; it is no unit here.
    (0.0625, "lb", "kg", 0.028349523125, SP_811),
    (1.0, "mm²/s", "mm²/s", 1.0, SP_811),
    (1.0, "psi", "kPa", 6.894757293168361, SP_811),
    (1.0, "bar", "kPa", 100.0, SP_811),
    (1.0, "mi", "km", 1.609344, SP_811),
    (40.0, "°C", "°F", 104.0, SP_811_B9),
    (35.0, "°C", "°F", 95.0, SP_811_B9),
    (45.0, "°C", "°F", 113.0, SP_811_B9),
    (-40.0, "°C", "°F", -40.0, SP_811_B9),
    (100.0, "°C", "°F", 212.0, SP_811_B9),
    (40.0, "°C", "K", 313.15, SP_811_B9),
    (20.0, "Δ°C", "Δ°F", 36.0, SP_811_B9),
];

const SP_811: &str = "NIST SP 811 (2008), appendix B.8, with full digits from 1 in = 25.4 mm, 1 lb = 0.45359237 kg and gn = 9.80665 m/s²";

const SP_811_B9: &str = "NIST SP 811 (2008), appendix B.9, temperature";

const IMPERIAL: &str = "1 imp gal = 4.54609 L exactly, NIST SP 811 (2008), appendix B.8";

const SI: &str = "SI prefixes";

#[test]
fn published_factors() {
    for (number, from, to, expected, source) in PUBLISHED {
        assert_eq!(
            convert(*number, *from, *to).unwrap(),
            *expected,
            "{number} {from} in {to}: {source}"
        );
    }
}

#[test]
fn printed_seven_digits() {
    // NIST SP 811 (2008), appendix B.8, as printed: seven digits, so off by half a unit of the last at most.
    let printed: [(&str, &str, f64); 10] = [
        ("US qt", "m³", 9.463529e-4),
        ("US pt", "m³", 4.731765e-4),
        ("US gal", "m³", 3.785412e-3),
        ("US fl oz", "m³", 2.957353e-5),
        ("imp fl oz", "m³", 2.841306e-5),
        ("in³", "m³", 1.638706e-5),
        ("lbf·ft", "N·m", 1.355818),
        ("lbf·in", "N·m", 1.129848e-1),
        ("psi", "kPa", 6.894757),
        ("lb", "kg", 4.535924e-1),
    ];
    for (from, to, print) in printed {
        let exact = convert(1.0, from, to).unwrap();
        let place = 10_f64.powi(print.log10().floor() as i32 - 6);
        assert!(
            (exact - print).abs() <= 0.5000001 * place,
            "{from}: {exact} against {print}"
        );
    }
}
