//! Conversions between every two units of a kind, against exact rationals.

use super::nearest::{exact, is_nearest_to};
use crate::quantity_definitions::definition;
use brimline::{Amount, ErrorKind, Kind, Unit, convert};
use num_bigint::BigInt;
use num_rational::BigRational;
use num_traits::{One, Signed, Zero};

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
pub struct Pair {
    pub from: Unit,
    pub to: Unit,
    pub slope: BigRational,
    pub shift: BigRational,
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
    pub fn all() -> impl Iterator<Item = Pair> {
        Unit::ALL.iter().flat_map(|from| {
            Unit::ALL
                .iter()
                .filter(|to| to.kind() == from.kind())
                .map(|to| Pair::of(*from, *to))
        })
    }

    /// The exact result, above and below the stroke, not in lowest terms.
    pub fn exact(&self, number: f64) -> (BigInt, BigInt) {
        let number = exact(number);
        let scale = self.slope.denom() * number.denom();
        let above =
            self.slope.numer() * number.numer() * self.shift.denom() + self.shift.numer() * &scale;
        (above, scale * self.shift.denom())
    }

    pub fn check(&self, number: f64) {
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
