//! Words: what the texts of a pack and of a journal mean, as exact rationals in one base unit per kind.
//!
//! Volumes are in mL, masses in g, times in s, temperatures in K, angles in degrees, densities in g/mL. Every
//! factor is written as the ratio its unit is defined by (the international pound and inch, the US gallon of
//! 231 cubic inches, the imperial gallon of 4.54609 L).

use num_bigint::BigInt;
use num_rational::BigRational;
use num_traits::{One, Signed, Zero};

/// An exact rational number.
pub type Exact = BigRational;

/// The exact ratio `numerator / denominator`.
pub fn ratio(numerator: i64, denominator: i64) -> Exact {
    Exact::new(numerator.into(), denominator.into())
}

/// The kinds of quantity the rules decide on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    Volume,
    Mass,
    Time,
    Temperature,
    Angle,
    Density,
    Percent,
}

/// Symbol, kind, the base units in one of it (numerator, denominator), and the offset added before scaling.
type UnitRow = (&'static str, Kind, i64, i64, i64);

/// Offsets are in hundredths: 273.15 and 459.67.
const UNITS: &[UnitRow] = &[
    ("mL", Kind::Volume, 1, 1, 0),
    ("cm³", Kind::Volume, 1, 1, 0),
    ("L", Kind::Volume, 1_000, 1, 0),
    ("US gal", Kind::Volume, 3_785_411_784, 1_000_000, 0),
    ("US qt", Kind::Volume, 3_785_411_784, 4_000_000, 0),
    ("US pt", Kind::Volume, 3_785_411_784, 8_000_000, 0),
    ("US fl oz", Kind::Volume, 3_785_411_784, 128_000_000, 0),
    ("imp gal", Kind::Volume, 454_609, 100, 0),
    ("imp qt", Kind::Volume, 454_609, 400, 0),
    ("imp pt", Kind::Volume, 454_609, 800, 0),
    ("imp fl oz", Kind::Volume, 454_609, 16_000, 0),
    ("g", Kind::Mass, 1, 1, 0),
    ("kg", Kind::Mass, 1_000, 1, 0),
    ("lb", Kind::Mass, 45_359_237, 100_000, 0),
    ("s", Kind::Time, 1, 1, 0),
    ("min", Kind::Time, 60, 1, 0),
    ("h", Kind::Time, 3_600, 1, 0),
    ("K", Kind::Temperature, 1, 1, 0),
    ("°C", Kind::Temperature, 1, 1, 27_315),
    ("°F", Kind::Temperature, 5, 9, 45_967),
    ("deg", Kind::Angle, 1, 1, 0),
    ("kg/m³", Kind::Density, 1, 1_000, 0),
    ("g/mL", Kind::Density, 1, 1, 0),
    ("%", Kind::Percent, 1, 100, 0),
];

/// A quantity as read: its kind, its exact value in the base unit, and the unit it was written in.
#[derive(Clone, Debug)]
pub struct Quantity {
    pub kind: Kind,
    pub value: Exact,
    pub unit: &'static str,
}

/// Reads a quantity text such as `1.4 US qt`; anything outside the table is a fault of the test itself.
pub fn quantity(text: &str) -> Quantity {
    let (number, symbol) = text
        .split_once(' ')
        .unwrap_or_else(|| panic!("no unit in {text:?}"));
    let (unit, kind, numerator, denominator, offset) = *UNITS
        .iter()
        .find(|row| row.0 == symbol)
        .unwrap_or_else(|| panic!("no such unit in {text:?}"));
    let value = (decimal(number) + ratio(offset, 100)) * ratio(numerator, denominator);
    Quantity { kind, value, unit }
}

/// Reads a quantity text that must be of one kind.
pub fn quantity_of(kind: Kind, text: &str) -> Exact {
    let read = quantity(text);
    assert_eq!(read.kind, kind, "{text:?}");
    read.value
}

/// Reads a plain decimal number such as `-0.25`.
pub fn decimal(text: &str) -> Exact {
    let (digits, places) = match text.split_once('.') {
        Some((whole, fraction)) => (format!("{whole}{fraction}"), fraction.len()),
        None => (text.to_string(), 0),
    };
    let digits: i64 = digits
        .parse()
        .unwrap_or_else(|_| panic!("not a number: {text:?}"));
    Exact::new(digits.into(), power_of_ten(places))
}

fn power_of_ten(places: usize) -> BigInt {
    (0..places).fold(BigInt::one(), |power, _| power * 10)
}

/// How a number that does not end within the printed places is brought to them.
#[derive(Clone, Copy, Debug)]
pub enum Toward {
    Lower,
    Upper,
    /// The nearest, a half away from zero.
    Nearest,
}

/// The whole number beside `value`.
pub fn whole(value: &Exact, toward: Toward) -> Exact {
    match toward {
        Toward::Lower => value.floor(),
        Toward::Upper => value.ceil(),
        Toward::Nearest if value.is_negative() => -(-value + ratio(1, 2)).floor(),
        Toward::Nearest => (value + ratio(1, 2)).floor(),
    }
}

/// The whole microlitre beside a volume in mL.
pub fn whole_microlitres(volume: &Exact, toward: Toward) -> Exact {
    whole(&(volume * ratio(1_000, 1)), toward) / ratio(1_000, 1)
}

/// Writes a volume in a unit: exact if it ends within six decimals, else brought to six; no trailing zeros.
pub fn volume_text(volume: &Exact, unit: &str, toward: Toward) -> String {
    let one = quantity_of(Kind::Volume, &format!("1 {unit}"));
    let millionths = whole(&(volume / one * ratio(1_000_000, 1)), toward).to_integer();
    let sign = if millionths.is_negative() { "-" } else { "" };
    let digits = format!("{:0>7}", millionths.abs().to_string());
    let (before, after) = digits.split_at(digits.len() - 6);
    match after.trim_end_matches('0') {
        "" => format!("{sign}{before} {unit}"),
        after => format!("{sign}{before}.{after} {unit}"),
    }
}

/// Seconds since 1970 of an RFC 3339 time.
pub fn moment(text: &str) -> Exact {
    let (date, rest) = text.split_once('T').expect("a date and a time");
    let zone_at = rest.find(['Z', '+', '-']).expect("a zone");
    let (clock, zone) = rest.split_at(zone_at);
    let east = match zone {
        "Z" => Exact::zero(),
        _ => clock_seconds(&zone[1..]) * ratio(if zone.starts_with('-') { -1 } else { 1 }, 1),
    };
    ratio(day(date) * 86_400, 1) + clock_seconds(clock) - east
}

fn clock_seconds(clock: &str) -> Exact {
    let worth = [3_600, 60, 1];
    clock
        .split(':')
        .zip(worth)
        .map(|(part, worth)| decimal(part) * ratio(worth, 1))
        .sum()
}

/// An RFC 3339 text of a second, written so many minutes east of Greenwich.
pub fn time_text(second: i64, east: i64) -> String {
    let local = second + east * 60;
    let (mut days, clock) = (local.div_euclid(86_400), local.rem_euclid(86_400));
    let leap = |year: i64| (year % 4 == 0 && year % 100 != 0) || year % 400 == 0;
    let mut year = 1970;
    while days >= if leap(year) { 366 } else { 365 } {
        days -= if leap(year) { 366 } else { 365 };
        year += 1;
    }
    let mut month = 0;
    let february = if leap(year) { 29 } else { 28 };
    let months = [31, february, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
    while days >= months[month] {
        days -= months[month];
        month += 1;
    }
    let zone = match east {
        0 => "Z".into(),
        _ => format!(
            "{}{:02}:{:02}",
            if east < 0 { '-' } else { '+' },
            east.abs() / 60,
            east.abs() % 60
        ),
    };
    let (hour, minute, second) = (clock / 3_600, clock / 60 % 60, clock % 60);
    format!(
        "{year}-{:02}-{:02}T{hour:02}:{minute:02}:{second:02}{zone}",
        month + 1,
        days + 1
    )
}

/// Days since 1970 of a date such as `2024-05-01`.
pub fn day(date: &str) -> i64 {
    let parts: Vec<i64> = date
        .split('-')
        .map(|part| part.parse().expect("a date"))
        .collect();
    let leap = |year: i64| (year % 4 == 0 && year % 100 != 0) || year % 400 == 0;
    let months = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
    let years: i64 = (1970..parts[0])
        .map(|year| if leap(year) { 366 } else { 365 })
        .sum();
    let whole_months: i64 = months[..parts[1] as usize - 1].iter().sum();
    let leap_day = i64::from(leap(parts[0]) && parts[1] > 2);
    years + whole_months + leap_day + parts[2] - 1
}

/// The UTC day of an RFC 3339 time.
pub fn utc_day(text: &str) -> i64 {
    let days = (moment(text) / ratio(86_400, 1)).floor().to_integer();
    days.try_into().expect("a day of this era")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_gallons_and_the_pound_follow_from_their_definitions() {
        // 1 US gal = 231 in³ of 16.387064 mL; 1 imp gal = 4.54609 L; 1 lb = 453.59237 g.
        assert_eq!(
            quantity("1 US gal").value,
            ratio(231 * 16_387_064, 1_000_000)
        );
        assert_eq!(quantity("128 US fl oz").value, quantity("1 US gal").value);
        assert_eq!(quantity("160 imp fl oz").value, quantity("1 imp gal").value);
        assert_eq!(quantity("4 imp qt").value, quantity("4546.09 mL").value);
        assert_eq!(quantity("100 lb").value, quantity("45.359237 kg").value);
    }

    #[test]
    fn one_hundred_and_thirteen_fahrenheit_is_forty_five_celsius() {
        // (113 - 32) x 5/9 = 45.
        assert_eq!(quantity("113 °F").value, quantity("45 °C").value);
    }

    #[test]
    fn a_volume_is_written_exactly_or_brought_to_six_places() {
        // A third of a litre does not end; a negative one goes down to -0.333334.
        let third = ratio(1_000, 3);
        assert_eq!(volume_text(&third, "L", Toward::Lower), "0.333333 L");
        assert_eq!(volume_text(&third, "L", Toward::Upper), "0.333334 L");
        assert_eq!(volume_text(&-&third, "L", Toward::Lower), "-0.333334 L");
        assert_eq!(volume_text(&-&third, "L", Toward::Nearest), "-0.333333 L");
        assert_eq!(volume_text(&ratio(-1_500, 1), "L", Toward::Lower), "-1.5 L");
        assert_eq!(
            volume_text(&Exact::zero(), "US qt", Toward::Upper),
            "0 US qt"
        );
    }

    #[test]
    fn days_are_counted_from_1970_in_utc() {
        // 2000-03-01 is day 11017 (30 years of 365, 7 leap days before 2000, 31 + 29 days of the year).
        assert_eq!(day("2000-03-01"), 30 * 365 + 7 + 31 + 29);
        assert_eq!(utc_day("2000-03-01T01:30:00+02:00"), day("2000-02-29"));
        assert_eq!(utc_day("2000-02-29T23:30:00-01:00"), day("2000-03-01"));
    }

    #[test]
    fn written_times_read_back_as_the_same_second() {
        for (second, east) in [
            (0, 0),
            (1_709_251_199, 120),
            (1_709_164_800, -330),
            (1_735_689_599, 0),
        ] {
            assert_eq!(moment(&time_text(second, east)), ratio(second, 1));
        }
        // 2024 is a leap year: 1,709,164,800 s is 2024-02-29T00:00:00Z.
        assert_eq!(time_text(1_709_164_800, 0), "2024-02-29T00:00:00Z");
        assert_eq!(time_text(1_709_164_800, -330), "2024-02-28T18:30:00-05:30");
    }
}
