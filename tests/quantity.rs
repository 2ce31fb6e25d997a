//! Quantities from the outside: published values, exact rational arithmetic, and properties of text.

mod quantity_definitions;

use brimline::{Amount, ErrorKind, Interval, Kind, Measures, Rounding, Unit, convert};
use num_bigint::BigInt;
use num_rational::BigRational;
use num_traits::{One, Signed, ToPrimitive, Zero};
use proptest::prelude::*;
use quantity_definitions::{definition, rational};
use std::collections::{BTreeSet, HashSet};

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

#[test]
fn every_unit_is_its_definition() {
    for unit in Unit::ALL {
        let (size, zero) = definition(*unit);
        // In millionths, so that a temperature's zero shows.
        let one = Amount::parse(&format!("1 {unit}")).unwrap();
        if unit.kind() != Kind::Angle {
            assert_eq!(one.si(), nearest(&(&size + &zero)), "1 {unit} in SI");
        }
        for other in Unit::ALL.iter().filter(|other| other.kind() == unit.kind()) {
            let (other_size, other_zero) = definition(*other);
            let exact = (&size + &zero - other_zero) / other_size;
            assert!(
                is_nearest(&exact, convert(1.0, *unit, *other).unwrap()),
                "1 {unit} in {other}"
            );
        }
    }
}

fn exact(number: f64) -> BigRational {
    BigRational::from_float(number).expect("a finite number")
}

/// The double nearest to a value of ordinary size, by the exact test below.
fn nearest(value: &BigRational) -> f64 {
    let guess = value.to_f64().expect("a double");
    [guess, guess.next_up(), guess.next_down()]
        .into_iter()
        .find(|guess| is_nearest(value, *guess))
        .expect("one of the neighbours is nearest")
}

/// Whether no double is nearer to the value, and of two as near this is the even one.
fn is_nearest(value: &BigRational, found: f64) -> bool {
    is_nearest_to(value.numer(), value.denom(), found)
}

/// The same of above/below, which need not be in lowest terms; below is positive.
fn is_nearest_to(above: &BigInt, below: &BigInt, found: f64) -> bool {
    if !found.is_finite() || (!above.is_zero() && above.is_negative() != found.is_sign_negative()) {
        return false;
    }
    let even = found.to_bits() & 1 == 0;
    let fraction = found.to_bits() & ((1 << 52) - 1);
    let (whole, exponent) = match found.to_bits() >> 52 & 0x7ff {
        0 => (fraction, -1074),
        biased => (fraction | 1 << 52, biased as i32 - 1075),
    };
    // In quarters of the last place: halfway to the next double up and down, whose place below a power of two is
    // half as large.
    let up = 4 * whole + 2;
    let down = if fraction == 0 && exponent > -1074 {
        (4 * whole).checked_sub(1)
    } else {
        (4 * whole).checked_sub(2)
    };
    let scale = exponent - 2;
    let value = above.abs() << (-scale).max(0) as u32;
    let place = below << scale.max(0) as u32;
    let fits = |order: std::cmp::Ordering| order.is_lt() || (order.is_eq() && even);
    fits(value.cmp(&(&place * up))) && down.is_none_or(|down| fits((&place * down).cmp(&value)))
}

/// Numbers that are the same on every run.
struct Stream(u64);

impl Stream {
    fn bits(&mut self) -> u64 {
        // SplitMix64: Steele, Lea and Flood, OOPSLA 2014.
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut bits = self.0;
        bits = (bits ^ (bits >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        bits = (bits ^ (bits >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        bits ^ (bits >> 31)
    }

    fn below(&mut self, end: u64) -> u64 {
        self.bits() % end
    }

    /// Any finite double; a few decimals; whole numbers; sizes at both ends.
    fn number(&mut self) -> f64 {
        let sign = if self.bits() & 1 == 0 { 1.0 } else { -1.0 };
        let number = match self.below(5) {
            0 | 1 => f64::from_bits(self.bits()),
            2 => self.below(1_000_000_000_000_000) as f64 / 10_f64.powi(self.below(10) as i32),
            3 => f64::from_bits(self.below(1 << 54)),
            _ => f64::MAX / (1.0 + self.below(1 << 40) as f64),
        };
        if number.is_finite() {
            sign * number
        } else {
            sign * self.below(1000) as f64
        }
    }
}

/// Two units of a kind, and what their definitions make of a number: slope · number + shift.
struct Pair {
    from: Unit,
    to: Unit,
    slope: BigRational,
    shift: BigRational,
}

impl Pair {
    fn of(from: Unit, to: Unit) -> Self {
        let ((size, zero), (other_size, other_zero)) = (definition(from), definition(to));
        Pair {
            from,
            to,
            slope: size / &other_size,
            shift: (zero - other_zero) / other_size,
        }
    }

    /// Every pair of every kind.
    fn all() -> impl Iterator<Item = Pair> {
        Unit::ALL.iter().flat_map(|from| {
            Unit::ALL
                .iter()
                .filter(|to| to.kind() == from.kind())
                .map(|to| Pair::of(*from, *to))
        })
    }

    /// The exact result, above and below the stroke, not in lowest terms.
    fn exact(&self, number: f64) -> (BigInt, BigInt) {
        let number = exact(number);
        let scale = self.slope.denom() * number.denom();
        let above =
            self.slope.numer() * number.numer() * self.shift.denom() + self.shift.numer() * &scale;
        (above, scale * self.shift.denom())
    }

    fn check(&self, number: f64) {
        let Pair { from, to, .. } = self;
        let (above, below) = self.exact(number);
        match convert(number, *from, *to) {
            Ok(found) => {
                assert!(
                    is_nearest_to(&above, &below, found),
                    "{number:e} {from} in {to}: {found:e}"
                );
                if self.shift.is_zero() {
                    assert_eq!(
                        found.is_sign_negative(),
                        number.is_sign_negative(),
                        "{number:e} {from} in {to}: {found:e}"
                    );
                }
            }
            Err(error) => {
                assert_eq!(error.kind(), ErrorKind::OutOfRange);
                // From halfway between the largest double and the next power of two on, there is no double.
                let end = (BigInt::one() << 1024) - (BigInt::one() << 970);
                assert!(
                    above.abs() >= end * below,
                    "{number:e} {from} in {to} is refused"
                );
            }
        }
    }
}

#[test]
fn conversions_are_correctly_rounded() {
    let edges = [
        0.0,
        -0.0,
        1.0,
        -1.0,
        f64::MAX,
        f64::MIN,
        f64::MIN_POSITIVE,
        5e-324,
        0.1,
        32.0,
        104.0,
        -459.67,
    ];
    let mut stream = Stream(1);
    for pair in Pair::all() {
        for number in edges {
            pair.check(number);
        }
        for _ in 0..250 {
            pair.check(stream.number());
        }
    }
}

#[test]
fn temperatures_near_each_others_zero() {
    let zeros = [
        -459.67,
        -273.15,
        0.0,
        32.0,
        273.15,
        255.3722222222222,
        -17.77777777777778,
        233.15,
        -40.0,
    ];
    for pair in Pair::all().filter(|pair| pair.from.kind() == Kind::Temperature) {
        for zero in zeros {
            let (mut above, mut below) = (zero, zero);
            for _ in 0..20 {
                pair.check(above);
                pair.check(below);
                (above, below) = (above.next_up(), below.next_down());
            }
        }
        // Every size near the zeros, a sample of those far off.
        for exponent in
            (-1073..=1023).filter(|exponent: &i32| exponent.abs() < 110 || exponent % 17 == 0)
        {
            pair.check(2_f64.powi(exponent));
            pair.check(-1.5 * 2_f64.powi(exponent));
        }
    }
}

/// Numbers whose conversion lies as near to halfway between two doubles as the pair allows, or exactly there.
///
/// With the ratio of the units a/b in lowest terms, scaled by a power of two so that the result has the 53 bits
/// of a double, number · a = b · whole + b/2 + rest; a small rest is sought.
fn near_ties(ratio: &BigRational) -> Vec<f64> {
    let mut found = Vec::new();
    let about = ratio.numer().bits() as i32 - ratio.denom().bits() as i32;
    for down in about - 1..=about + 1 {
        let scaled = ratio * rational("2").pow(-down);
        let (a, b) = (scaled.numer(), scaled.denom());
        let Some(inverse) = a.modinv(b) else { continue };
        let mut near = 0;
        for rest in 0_i64..20_000 {
            let rest = if rest % 2 == 0 {
                rest / 2
            } else {
                -(rest + 1) / 2
            };
            // The remainder of a division by a positive number, taken upward from zero.
            let number: BigInt = ((((b >> 1) + rest) * &inverse) % b + b) % b;
            let (low, high) = (BigInt::one() << 52, BigInt::one() << 53);
            let steps: BigInt = if number < low {
                (&low - &number + b - BigInt::one()) / b
            } else {
                BigInt::zero()
            };
            let number: BigInt = number + steps * b;
            if number < high {
                found.push(number.to_f64().expect("53 bits"));
                near += 1;
            }
            if near == 12 {
                break;
            }
        }
    }
    found
}

#[test]
fn numbers_next_to_a_tie() {
    let mut ties = 0;
    let mut close = 0;
    for pair in Pair::all().filter(|pair| pair.from != pair.to && pair.shift.is_zero()) {
        for number in near_ties(&pair.slope) {
            pair.check(number);
            pair.check(-number * 2_f64.powi(100));
            let (above, below) = pair.exact(number);
            let found = convert(number, pair.from, pair.to).unwrap();
            let place = exact(found.next_up() - found);
            let away =
                (BigRational::new(above, below) - exact(found)).abs() / place - rational("1/2");
            ties += u32::from(away.is_zero());
            close += u32::from(!away.is_zero() && away.abs() < rational("1/1000000000"));
        }
    }
    assert!(ties > 100 && close > 300, "{ties} ties, {close} close");
}

#[test]
fn refused_numbers() {
    for number in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
        assert_eq!(
            convert(number, Unit::Litre, Unit::UsQuart)
                .unwrap_err()
                .kind(),
            ErrorKind::NotANumber
        );
        assert_eq!(
            convert(number, Unit::Litre, Unit::Litre)
                .unwrap_err()
                .kind(),
            ErrorKind::NotANumber
        );
        assert_eq!(
            Amount::from_f64(number, Unit::Litre).unwrap_err().kind(),
            ErrorKind::NotANumber
        );
    }
    assert_eq!(
        convert(1.0, "L", "oz").unwrap_err().kind(),
        ErrorKind::UnitAmbiguous
    );
    assert_eq!(
        convert(1e308, "m³", "mL").unwrap_err().kind(),
        ErrorKind::OutOfRange
    );
    for kind in Kind::ALL {
        for other in Kind::ALL.iter().filter(|other| *other != kind) {
            let unit = |kind: &Kind| *Unit::ALL.iter().find(|unit| unit.kind() == *kind).unwrap();
            assert_eq!(
                convert(1.0, unit(kind), unit(other)).unwrap_err().kind(),
                ErrorKind::WrongKind
            );
        }
    }
}

#[test]
fn units_are_one_table() {
    let mut seen = BTreeSet::new();
    for (position, unit) in Unit::ALL.iter().enumerate() {
        assert_eq!(usize::from(unit.code()), position + 1);
        assert_eq!(Unit::from_code(unit.code()), Some(*unit));
        assert_eq!(Unit::parse(unit.symbol()).unwrap(), *unit);
        assert_eq!(unit.symbol().parse::<Unit>().unwrap(), *unit);
        assert!(seen.insert(unit.symbol()), "{unit} stands twice");
    }
    assert_eq!(Unit::from_code(0), None);
    assert_eq!(Unit::from_code(Unit::ALL.len() as u16 + 1), None);
    // The numbers cross borders: these never change.
    assert_eq!(
        [
            Unit::Litre,
            Unit::UsQuart,
            Unit::NewtonMetre,
            Unit::DecinewtonMetre
        ]
        .map(Unit::code),
        [1, 7, 14, 51]
    );
}

#[test]
fn other_capitals_are_never_another_unit() {
    for unit in Unit::ALL {
        let symbol = unit.symbol();
        for text in [
            symbol.to_lowercase(),
            symbol.to_uppercase(),
            symbol.replace('k', "K"),
            symbol.replace('m', "M"),
        ] {
            if let Ok(read) = Unit::parse(&text) {
                assert_eq!(read, *unit, "{text}");
            }
        }
    }
}

#[test]
fn measures_decide_bare_names() {
    let read = |measures| Unit::parse_as("qt", None, measures).unwrap();
    assert_eq!(read(Measures::Us), Unit::UsQuart);
    assert_eq!(read(Measures::Imperial), Unit::ImperialQuart);
    let refused = Unit::parse_as("oz", Kind::Volume, Measures::Us).unwrap_err();
    assert_eq!(refused.kind(), ErrorKind::UnitAmbiguous);
    assert_eq!(refused.first().allowed, ["US fl oz", "imp fl oz"]);
    assert_eq!(refused.first().got.as_deref(), Some("oz"));
}

#[test]
fn small_pours_reach_a_limit_exactly() {
    // In binary floating point fourteen times 0.1 is more than 1.4: the case that decides on amounts must not.
    assert!((0..14).map(|_| 0.1).sum::<f64>() > 1.4);
    let limit = Amount::parse("1.4 US qt").unwrap();
    let pour = Amount::parse("0.1 US qt").unwrap();
    let mut poured = Amount::parse("0.0 US qt").unwrap();
    for _ in 0..14 {
        assert!(poured < limit);
        poured = poured.checked_add(pour).unwrap();
    }
    assert_eq!(poured, limit);
    assert!(
        poured
            .checked_add(Amount::parse("0.000000001 US qt").unwrap())
            .unwrap()
            > limit
    );
}

#[test]
fn equal_values_are_one_in_a_set() {
    let texts = ["1 L", "1.0 L", "1000 mL", "1000 cm³", "0.001 m³"];
    let set: HashSet<Amount> = texts
        .iter()
        .map(|text| Amount::parse(text).unwrap())
        .collect();
    assert_eq!(set.len(), 1);
    let (gauge, absolute) = (
        Amount::parse("1 psi").unwrap(),
        Amount::parse("1 psi abs").unwrap(),
    );
    assert_ne!(gauge, absolute);
    assert_eq!(gauge.partial_cmp(&absolute), None);
}

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

#[test]
fn values_go_between_threads() {
    fn shared<T: Send + Sync + 'static>() {}
    shared::<Amount>();
    shared::<Interval>();
    shared::<Unit>();
}

fn any_unit() -> impl Strategy<Value = Unit> {
    (0..Unit::ALL.len()).prop_map(|position| Unit::ALL[position])
}

fn any_amount() -> impl Strategy<Value = Amount> {
    let mantissa = prop_oneof![
        -999_999_999_999_999_i64..=999_999_999_999_999,
        -10_000_i64..=10_000
    ];
    (mantissa, 0..=9_u8, any_unit())
        .prop_map(|(mantissa, decimals, unit)| Amount::new(mantissa, decimals, unit).unwrap())
}

fn any_two() -> impl Strategy<Value = (Amount, Amount)> {
    (any_amount(), any_amount()).prop_map(|(one, other)| {
        let units: Vec<Unit> = Unit::ALL
            .iter()
            .copied()
            .filter(|unit| unit.kind() == one.kind())
            .collect();
        let unit = units[other.mantissa().unsigned_abs() as usize % units.len()];
        (
            one,
            Amount::new(other.mantissa(), other.decimals(), unit).unwrap(),
        )
    })
}

fn any_rounding() -> impl Strategy<Value = Rounding> {
    (0..Rounding::WORDS.len()).prop_map(|position| Rounding::WORDS[position].1)
}

fn parts(amount: &Amount) -> (i64, u8, Unit) {
    (amount.mantissa(), amount.decimals(), amount.unit())
}

fn number(amount: &Amount) -> BigRational {
    BigRational::new(
        amount.mantissa().into(),
        BigInt::from(10).pow(amount.decimals().into()),
    )
}

fn value(amount: &Amount) -> BigRational {
    let (size, zero) = definition(amount.unit());
    number(amount) * size + zero
}

/// Rounding as the words say it, on rationals.
fn rounded(number: &BigRational, places: u8, rounding: Rounding) -> BigInt {
    let scaled = number * BigRational::from(BigInt::from(10).pow(places.into()));
    let (floor, ceiling) = (scaled.floor(), scaled.ceil());
    let (toward, away) = if scaled.is_negative() {
        (&ceiling, &floor)
    } else {
        (&floor, &ceiling)
    };
    let chosen = match rounding {
        Rounding::Floor => &floor,
        Rounding::Ceiling => &ceiling,
        Rounding::Down => toward,
        Rounding::Up => away,
        _ => match ((&scaled - toward).abs()).cmp(&(&scaled - away).abs()) {
            std::cmp::Ordering::Less => toward,
            std::cmp::Ordering::Greater => away,
            std::cmp::Ordering::Equal if rounding == Rounding::HalfUp => away,
            std::cmp::Ordering::Equal if (toward.numer() % BigInt::from(2)).is_zero() => toward,
            std::cmp::Ordering::Equal => away,
        },
    };
    chosen.to_integer()
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 1_000, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn what_is_printed_reads_back(amount in any_amount()) {
        let text = amount.to_string();
        let read = Amount::parse(&text).unwrap();
        prop_assert_eq!(parts(&read), parts(&amount));
        prop_assert_eq!(read.to_string(), text.clone());
        prop_assert_eq!(format!("{} {}", amount.number(), amount.unit()), text.clone());
        let json = serde_json::to_string(&amount).unwrap();
        prop_assert_eq!(parts(&serde_json::from_str(&json).unwrap()), parts(&amount));
    }

    #[test]
    fn any_text_is_read_or_refused(text in "\\PC{0,24}", number in "[-+−]?[0-9]{0,17}[.,]?[0-9]{0,11}", unit in "[ a-zA-Z0-9./°·³²^*()-]{0,12}") {
        for text in [text, format!("{number} {unit}"), format!("{number}{unit}")] {
            if let Ok(amount) = Amount::parse(&text) {
                let again = Amount::parse(&amount.to_string()).unwrap();
                prop_assert_eq!(parts(&again), parts(&amount));
            }
            let _ = Interval::parse(&text);
        }
    }

    #[test]
    fn order_is_that_of_the_values((one, other) in any_two()) {
        let order = one.compare(&other).unwrap();
        prop_assert_eq!(order, value(&one).cmp(&value(&other)));
        prop_assert_eq!(other.compare(&one).unwrap(), order.reverse());
        prop_assert_eq!(one == other, order.is_eq());
    }

    #[test]
    fn another_unit_is_rounded_as_said((one, other) in any_two(), places in 0..=9_u8, rounding in any_rounding()) {
        let unit = other.unit();
        let (size, zero) = definition(unit);
        let exact = (value(&one) - zero) / size;
        let expected = rounded(&exact, places, rounding);
        match one.to(unit, places, rounding) {
            Ok(found) => prop_assert_eq!(parts(&found), (expected.to_i64().unwrap(), places, unit)),
            Err(error) => {
                prop_assert!(matches!(error.kind(), ErrorKind::TooManyDigits | ErrorKind::OutOfRange));
                prop_assert!(expected.abs() >= BigInt::from(10).pow(15));
            }
        }
        match one.to_exact(unit) {
            Some(found) => {
                prop_assert_eq!(number(&found), exact);
                prop_assert!(found.decimals() == 0 || found.mantissa() % 10 != 0);
            }
            None => {
                let ends = (&exact * rational("1000000000")).is_integer();
                let digits = exact.numer().abs().to_string().len();
                prop_assert!(!ends || digits > 6, "{one} in {unit} is {exact}");
            }
        }
    }

    #[test]
    fn sums_and_differences_are_exact((one, other) in any_two()) {
        let difference = one.checked_sub(other);
        if one.kind() == Kind::Temperature {
            prop_assert_eq!(one.checked_add(other).unwrap_err().kind(), ErrorKind::WrongKind);
            if let Ok(difference) = difference {
                prop_assert_eq!(difference.kind(), Kind::TemperatureDifference);
                prop_assert_eq!(value(&difference), value(&one) - value(&other));
                prop_assert_eq!(other.checked_add(difference).ok().is_none_or(|sum| sum == one), true);
            }
            return Ok(());
        }
        for (found, expected) in [(one.checked_add(other), value(&one) + value(&other)), (difference, value(&one) - value(&other))] {
            let number = &expected / definition(one.unit()).0;
            match found {
                Ok(found) => {
                    prop_assert_eq!(value(&found), expected);
                    prop_assert_eq!(found.unit(), one.unit());
                }
                Err(error) => {
                    prop_assert!(matches!(error.kind(), ErrorKind::TooManyDigits | ErrorKind::OutOfRange));
                    let short = (&number * rational("1000000")).is_integer() && number.abs() < rational("1000000");
                    prop_assert!(!short || one.decimals() > 6 || other.decimals() > 6, "{one} and {other}: {number}");
                }
            }
        }
    }

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

    #[test]
    fn intervals_print_and_intersect((a, b) in any_two(), (c, d) in any_two(), open in 0..4_u8) {
        let interval = |a: Amount, b: Amount, open: u8| {
            let (lo, hi) = if a <= b { (a, b) } else { (b, a) };
            Interval::new((open & 1 == 0).then_some(lo), (open & 2 == 0).then_some(hi)).unwrap()
        };
        let one = interval(a, b, open);
        let read: Interval = one.to_string().parse().unwrap();
        prop_assert_eq!(read, one);
        prop_assert_eq!(read.to_string(), one.to_string());
        let json = serde_json::to_string(&one).unwrap();
        prop_assert_eq!(serde_json::from_str::<Interval>(&json).unwrap(), one);
        if a.kind() != c.kind() {
            return Ok(());
        }
        let other = interval(c, d, 0);
        let both = one.intersect(&other).unwrap();
        for amount in [a, b, c, d] {
            let in_both = one.contains(&amount).unwrap() && other.contains(&amount).unwrap();
            prop_assert_eq!(both.is_some_and(|both| both.contains(&amount).unwrap()), in_both);
        }
    }
}
