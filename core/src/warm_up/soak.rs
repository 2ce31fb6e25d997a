//! Readings of a vehicle that stood overnight: they agree, or one of the sensors or units is wrong.

use super::{difference, from_zero, number, within};
use crate::error::{Error, ErrorKind, Fault};
use crate::quantity::{Amount, Rounding, Unit};
use alloc::string::{String, ToString};
use alloc::vec::Vec;
use serde::Serialize;

/// A reading and what it is a reading of.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Named {
    /// Name of the source, as `fluid` or `coolant`.
    pub name: String,
    /// What it reads.
    pub reading: Amount,
}

/// Whether readings after a cold soak agree.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[non_exhaustive]
pub struct ColdSoak {
    /// Whether all lie within the spread.
    pub agree: bool,
    /// The highest less the lowest, in degrees of the first reading.
    pub apart: Amount,
    /// Those further than the spread from more than half of the others; of two that differ, both.
    pub odd: Vec<String>,
    /// A reading that would agree in the other scale: a question, never a conversion.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub unit_question: Option<OtherUnit>,
}

/// A reading whose number would fit with another unit behind it.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[non_exhaustive]
pub struct OtherUnit {
    /// Name of the source.
    pub name: String,
    /// As it was given.
    pub reading: Amount,
    /// The same number in the other scale.
    pub other: Amount,
}

/// The most sources that are compared with each other.
const MOST: usize = 100;

/// Whether sensors agree on a vehicle that stood overnight with the engine off: fluid, coolant, intake, air.
///
/// 2 to 100 readings, within `spread` (from zero; 5 °C where not given) of each other. Compared exactly, as entered.
/// Source: common practice, no source.
///
/// # Errors
///
/// [`WrongKind`](ErrorKind::WrongKind); [`OutOfRange`](ErrorKind::OutOfRange) for a spread below zero or another number of
/// readings.
///
/// ```
/// use brimline::{Amount, warm_up::{Named, cold_soak}};
/// let named = |name: &str, reading: &str| -> Result<Named, brimline::Error> {
///     Ok(Named { name: name.into(), reading: Amount::parse(reading)? })
/// };
/// let readings = [named("fluid", "68 °C")?, named("coolant", "20 °C")?, named("air", "19 °C")?];
/// let soak = cold_soak(&readings, None)?;
/// assert!(!soak.agree);
/// assert_eq!(soak.odd, ["fluid"]);
/// assert_eq!(soak.unit_question.unwrap().other.to_string(), "68 °F");
/// # Ok::<(), brimline::Error>(())
/// ```
pub fn cold_soak(readings: &[Named], spread: impl Into<Option<Amount>>) -> Result<ColdSoak, Error> {
    let spread = match spread.into() {
        Some(spread) => spread,
        None => Amount::new(5, 0, Unit::CelsiusDifference)?,
    };
    from_zero("spread", spread, Unit::CelsiusDifference)?;
    if !(2..=MOST).contains(&readings.len()) {
        let fault = Fault::new(ErrorKind::OutOfRange).at("readings");
        let got = readings.len().to_string();
        return Err(fault.got(&got).allowed(["2 to 100 readings"]).into());
    }
    for (index, named) in readings.iter().enumerate() {
        number("reading", named.reading, Unit::Kelvin)
            .map_err(|error| within(error, "readings", index))?;
    }
    let count = |amount: &Amount| amount.count().unwrap_or_default();
    let spread = count(&spread);
    let disagree =
        |one: i128, other: &Named| one.abs_diff(count(&other.reading)) > spread.unsigned_abs();
    // A reading never disagrees with itself, so it may stand among the others.
    let is_odd = |at: i128, others: usize| {
        let apart = readings.iter().filter(|other| disagree(at, other)).count();
        apart.saturating_mul(2) > others
    };
    let others = readings.len().saturating_sub(1);
    let odd: Vec<&Named> = readings
        .iter()
        .filter(|named| is_odd(count(&named.reading), others))
        .collect();
    let question = odd.iter().find_map(|named| {
        let other = in_other_scale(named.reading)?;
        let apart = readings.iter().filter(|one| !core::ptr::eq(*one, *named));
        let agreeing = apart.filter(|one| !disagree(count(&other), one)).count();
        (agreeing.saturating_mul(2) >= others).then(|| OtherUnit {
            name: named.name.clone(),
            reading: named.reading,
            other,
        })
    });
    let counts = || readings.iter().map(|named| count(&named.reading));
    let (lowest, highest) = (counts().min(), counts().max());
    let apart = highest
        .unwrap_or_default()
        .saturating_sub(lowest.unwrap_or_default());
    let unit = readings.first().map_or(Unit::CelsiusDifference, |first| {
        difference(first.reading.unit())
    });
    Ok(ColdSoak {
        agree: apart <= spread,
        apart: Amount::from_count(apart, unit, 6, Rounding::HalfEven)?,
        odd: odd.iter().map(|named| named.name.clone()).collect(),
        unit_question: question,
    })
}

/// The same number in the other of the two scales people mix up.
fn in_other_scale(reading: Amount) -> Option<Amount> {
    let unit = match reading.unit() {
        Unit::DegreeCelsius => Unit::DegreeFahrenheit,
        Unit::DegreeFahrenheit => Unit::DegreeCelsius,
        _ => return None,
    };
    Amount::new(reading.mantissa(), reading.decimals(), unit).ok()
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, clippy::arithmetic_side_effects)]

    use super::*;

    fn soak(readings: &[(&str, &str)]) -> ColdSoak {
        let named = |(name, reading): &(&str, &str)| Named {
            name: (*name).into(),
            reading: Amount::parse(reading).unwrap(),
        };
        let readings: Vec<Named> = readings.iter().map(named).collect();
        cold_soak(&readings, None).unwrap()
    }

    #[test]
    fn agreement_is_within_5_degrees_exactly() {
        let agreed = soak(&[("fluid", "20 °C"), ("coolant", "22.5 °C"), ("air", "77 °F")]);
        assert!(agreed.agree && agreed.odd.is_empty());
        assert_eq!(agreed.apart.to_string(), "5 Δ°C");
        let apart = soak(&[
            ("fluid", "20 °C"),
            ("coolant", "22.5 °C"),
            ("air", "77.1 °F"),
        ]);
        // Apart, but none from more than half of the others.
        assert!(!apart.agree && apart.odd.is_empty());
        assert_eq!(
            soak(&[("fluid", "50 °F"), ("air", "10 °C")])
                .apart
                .to_string(),
            "0 Δ°F"
        );
    }

    #[test]
    fn the_odd_one_is_named_and_of_two_both() {
        let odd = soak(&[("fluid", "-12 °C"), ("coolant", "19 °C"), ("air", "20 °C")]);
        assert_eq!(odd.odd, ["fluid"]);
        assert_eq!(odd.unit_question, None);
        assert_eq!(
            soak(&[("fluid", "31 °C"), ("air", "20 °C")]).odd,
            ["fluid", "air"]
        );
    }

    #[test]
    fn a_number_that_fits_the_other_scale_is_asked_about() {
        let asked = soak(&[("fluid", "20 °F"), ("coolant", "19 °C"), ("air", "68 °F")]);
        let question = asked.unit_question.unwrap();
        assert_eq!(
            (question.name.as_str(), question.other.to_string()),
            ("fluid", "20 °C".into())
        );
        assert_eq!(question.reading.to_string(), "20 °F");
        let two = soak(&[("air", "20 °C"), ("fluid", "68 °C")]).unit_question;
        assert_eq!(two.unwrap().name, "fluid");
    }

    #[test]
    fn what_cannot_be_compared_is_refused() {
        let named = |reading: &str| Named {
            name: "fluid".into(),
            reading: Amount::parse(reading).unwrap(),
        };
        let path = |readings: &[Named], spread: Option<&str>| {
            let spread = spread.map(|text| Amount::parse(text).unwrap());
            cold_soak(readings, spread)
                .unwrap_err()
                .first()
                .path
                .clone()
        };
        assert_eq!(path(&[named("20 °C")], None), "readings");
        assert_eq!(path(&alloc::vec![named("20 °C"); 101], None), "readings");
        assert_eq!(
            path(&[named("20 °C"), named("20 L")], None),
            "readings[1].reading"
        );
        assert_eq!(
            path(&[named("20 °C"), named("20 °C")], Some("5 °C")),
            "spread"
        );
        assert_eq!(
            path(&[named("20 °C"), named("20 °C")], Some("-1 Δ°C")),
            "spread"
        );
    }
}
