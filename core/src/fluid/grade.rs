//! The viscosity grades of ISO 3448.

use crate::error::{Error, ErrorKind, Fault};
use crate::quantity::{Amount, Interval, Kind, Unit};
use alloc::format;
use serde::Serialize;

/// Each grade with its middle at 40 °C in tenths of mm²/s; the limits are a tenth of the middle below and above.
///
/// Source: ISO 3448:1992, table 1 (ASTM D2422 has the same); seen in print for 15 to 68, the others from memory.
const GRADES: &[(u32, i64)] = &[
    (2, 22),
    (3, 32),
    (5, 46),
    (7, 68),
    (10, 100),
    (15, 150),
    (22, 220),
    (32, 320),
    (46, 460),
    (68, 680),
    (100, 1_000),
    (150, 1_500),
    (220, 2_200),
    (320, 3_200),
    (460, 4_600),
    (680, 6_800),
    (1_000, 10_000),
    (1_500, 15_000),
    (2_200, 22_000),
    (3_200, 32_000),
];

/// Counts of a viscosity in a hundredth of mm²/s.
const HUNDREDTH: i128 = 10_000_000;

/// Where a viscosity at 40 °C lies in the series of grades.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[non_exhaustive]
pub struct Grade {
    /// The number of the grade; `None` between two grades and outside the series.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub grade: Option<u32>,
    /// The lower limit of the grade, in mm²/s at 40 °C; between two grades the upper limit of the one below.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub low: Option<Amount>,
    /// The upper limit of the grade, in mm²/s at 40 °C; between two grades the lower limit of the one above.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub high: Option<Amount>,
}

/// The ISO viscosity grade of an oil, from its viscosity at 40 °C, more than 0 mm²/s. The limits belong to the grade.
///
/// Source: ISO 3448:1992, table 1.
///
/// # Errors
///
/// [`WrongKind`](ErrorKind::WrongKind); [`OutOfRange`](ErrorKind::OutOfRange) for a viscosity not above zero.
///
/// ```
/// use brimline::{Amount, fluid::grade};
/// assert_eq!(grade(Amount::parse("28.8 mm²/s")?)?.grade, Some(32));
/// // Between 32 (up to 35.2) and 46 (from 41.4).
/// assert_eq!(grade(Amount::parse("38 mm²/s")?)?.grade, None);
/// # Ok::<(), brimline::Error>(())
/// ```
pub fn grade(viscosity_40: Amount) -> Result<Grade, Error> {
    super::of_kind("viscosity_40", viscosity_40, Kind::KinematicViscosity)?;
    if viscosity_40.is_zero() || viscosity_40.is_negative() {
        let fault = Fault::new(ErrorKind::OutOfRange).at("viscosity_40");
        let fault = fault.got(&format!("{viscosity_40}"));
        return Err(fault.hint("a viscosity is more than nothing").into());
    }
    // What is past counting is past the series.
    let count = viscosity_40.count().unwrap_or(i128::MAX);
    let mut below = None;
    for (number, middle) in GRADES {
        let (low, high) = ends(*middle);
        if count < i128::from(low).saturating_mul(HUNDREDTH) {
            return Ok(Grade {
                grade: None,
                low: below.map(hundredths).transpose()?,
                high: Some(hundredths(low)?),
            });
        }
        if count <= i128::from(high).saturating_mul(HUNDREDTH) {
            return Ok(Grade {
                grade: Some(*number),
                low: Some(hundredths(low)?),
                high: Some(hundredths(high)?),
            });
        }
        below = Some(high);
    }
    Ok(Grade {
        grade: None,
        low: below.map(hundredths).transpose()?,
        high: None,
    })
}

/// The limits of an ISO viscosity grade, in mm²/s at 40 °C.
///
/// Source: ISO 3448:1992, table 1.
///
/// # Errors
///
/// [`UnknownValue`](ErrorKind::UnknownValue) for a number that is no grade, with all that are.
///
/// ```
/// use brimline::fluid::grade_limits;
/// assert_eq!(grade_limits(46)?.to_string(), "[41.4 mm²/s, 50.6 mm²/s]");
/// # Ok::<(), brimline::Error>(())
/// ```
pub fn grade_limits(grade: u32) -> Result<Interval, Error> {
    let Some((_, middle)) = GRADES.iter().find(|(number, _)| *number == grade) else {
        let fault = Fault::new(ErrorKind::UnknownValue).at("grade");
        let known = GRADES.iter().map(|(number, _)| format!("{number}"));
        return Err(fault.got(&format!("{grade}")).allowed(known).into());
    };
    let (low, high) = ends(*middle);
    Interval::new(Some(hundredths(low)?), Some(hundredths(high)?))
}

/// The limits in hundredths of mm²/s around a middle in tenths.
fn ends(middle: i64) -> (i64, i64) {
    (middle.saturating_mul(9), middle.saturating_mul(11))
}

/// So many hundredths of mm²/s, without trailing zeros.
fn hundredths(number: i64) -> Result<Amount, Error> {
    let (mut number, mut decimals) = (number, 2_u8);
    while decimals > 0 && number % 10 == 0 {
        number /= 10;
        decimals = decimals.saturating_sub(1);
    }
    Amount::new(number, decimals, Unit::SquareMillimetrePerSecond)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]

    use super::*;
    use alloc::string::ToString;

    #[test]
    fn the_limits_in_print() {
        // ISO 3448:1992, table 1, as pages quote it.
        for (grade, limits) in [
            (15, "[13.5 mm²/s, 16.5 mm²/s]"),
            (22, "[19.8 mm²/s, 24.2 mm²/s]"),
            (32, "[28.8 mm²/s, 35.2 mm²/s]"),
            (46, "[41.4 mm²/s, 50.6 mm²/s]"),
            (68, "[61.2 mm²/s, 74.8 mm²/s]"),
            // From memory.
            (2, "[1.98 mm²/s, 2.42 mm²/s]"),
            (7, "[6.12 mm²/s, 7.48 mm²/s]"),
            (100, "[90 mm²/s, 110 mm²/s]"),
            (3200, "[2880 mm²/s, 3520 mm²/s]"),
        ] {
            assert_eq!(grade_limits(grade).unwrap().to_string(), limits);
        }
        let error = grade_limits(40).unwrap_err();
        assert_eq!(
            (error.kind(), error.first().allowed.len()),
            (ErrorKind::UnknownValue, 20)
        );
    }

    #[test]
    fn decided_exactly_at_the_limits() {
        let told = |text: &str| grade(Amount::parse(text).unwrap()).unwrap();
        for (number, _) in GRADES {
            let limits = grade_limits(*number).unwrap();
            for end in [limits.lo().unwrap(), limits.hi().unwrap()] {
                let found = grade(end).unwrap();
                assert_eq!(
                    (found.grade, found.low, found.high),
                    (Some(*number), limits.lo(), limits.hi())
                );
            }
        }
        let gap = told("35.200000001 mm²/s");
        assert_eq!(gap.grade, None);
        let ends = [gap.low, gap.high].map(|end| end.unwrap().to_string());
        assert_eq!(ends, ["35.2 mm²/s", "41.4 mm²/s"]);
        let (thin, thick) = (told("1.97 mm²/s"), told("999999999999999 mm²/s"));
        assert_eq!((thin.grade, thin.low), (None, None));
        assert_eq!((thick.grade, thick.high), (None, None));
    }

    #[test]
    fn refused() {
        for (text, kind) in [
            ("0 mm²/s", ErrorKind::OutOfRange),
            ("-1 mm²/s", ErrorKind::OutOfRange),
            ("32 L", ErrorKind::WrongKind),
        ] {
            let error = grade(Amount::parse(text).unwrap()).unwrap_err();
            assert_eq!((error.kind(), &*error.first().path), (kind, "viscosity_40"));
        }
    }
}
