//! Several prints of one quantity in several units: which agree, and what went wrong with those that do not.

use super::number;
use crate::error::{Error, ErrorKind, Fault};
use crate::quantity::{Amount, Kind, Rounding, Unit};
use crate::word::words;
use alloc::format;
use alloc::vec::Vec;
use serde::Serialize;

words! {
    /// How a print stands to the governing one.
    pub enum PrintClass {
        /// The governing print itself.
        Governing = "governing",
        /// The same value.
        Exact = "exact",
        /// The same within half of its last printed digit.
        Agrees = "agrees",
        /// Converted from another print that had been rounded before.
        ChainRounded = "chain_rounded",
        /// The number of another unit, or a decimal point elsewhere.
        UnitSlip = "unit_slip",
        /// Another value, for no reason that is known here.
        Inconsistent = "inconsistent",
    }
}

words! {
    /// The factor by which a print went astray.
    pub enum SlipFactor {
        /// Twelve times too much, as inches for feet.
        Times12 = "times_12",
        /// A twelfth, as feet for inches.
        Over12 = "over_12",
        /// Newton metres printed as pound-force feet.
        NewtonMetreAsPoundForceFoot = "n_m_as_lbf_ft",
        /// Pound-force feet printed as newton metres.
        PoundForceFootAsNewtonMetre = "lbf_ft_as_n_m",
        /// Newton metres printed as pound-force inches.
        NewtonMetreAsPoundForceInch = "n_m_as_lbf_in",
        /// Pound-force inches printed as newton metres.
        PoundForceInchAsNewtonMetre = "lbf_in_as_n_m",
        /// Newton metres printed as kilogram-force metres.
        NewtonMetreAsKilogramForceMetre = "n_m_as_kgf_m",
        /// Kilogram-force metres printed as newton metres.
        KilogramForceMetreAsNewtonMetre = "kgf_m_as_n_m",
        /// Litres printed as United States quarts.
        LitreAsUsQuart = "litre_as_us_quart",
        /// United States quarts printed as litres.
        UsQuartAsLitre = "us_quart_as_litre",
        /// Imperial measures printed as those of the United States.
        ImperialAsUs = "imperial_as_us",
        /// United States measures printed as imperial ones.
        UsAsImperial = "us_as_imperial",
        /// The number of one temperature scale kept on another.
        SameNumber = "same_number",
        /// A temperature converted by 1.8 alone, without the 32 between the zeros.
        OffsetLost = "offset_lost",
        /// Ten times too much.
        Times10 = "times_10",
        /// A tenth.
        Over10 = "over_10",
        /// A hundred times too much.
        Times100 = "times_100",
        /// A hundredth.
        Over100 = "over_100",
        /// A thousand times too much.
        Times1000 = "times_1000",
        /// A thousandth.
        Over1000 = "over_1000",
    }
}

/// Every print with its class.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[non_exhaustive]
pub struct Equivalents {
    /// In the order they were given.
    pub prints: Vec<Print>,
}

/// One print.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[non_exhaustive]
pub struct Print {
    /// As it was given.
    pub print: Amount,
    /// How it stands to the first.
    pub class: PrintClass,
    /// How far it is from the first, in per cent of that; absent for temperatures, and where the first is zero.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub gap: Option<Amount>,
    /// By what factor, for a [`UnitSlip`](PrintClass::UnitSlip).
    #[serde(skip_serializing_if = "Option::is_none")]
    pub factor: Option<SlipFactor>,
    /// The rounded print it was converted from, for one that is [`ChainRounded`](PrintClass::ChainRounded).
    #[serde(skip_serializing_if = "Option::is_none")]
    pub through: Option<Amount>,
}

/// What the number of a print is held against.
enum Against {
    /// The governing value in the unit of the print.
    Converted,
    /// The governing number as it stands, where the print has another unit.
    Number,
    /// The governing value, where its number rounds to that of the print: units of nearly one size are confused only by
    /// keeping the number.
    KeptNumber,
}
use Against::{Converted, KeptNumber, Number};

/// A slip: the kind it occurs in (any where `None`), and print over governing.
struct Slip(Option<Kind>, Against, f64, SlipFactor);

const TORQUE: Option<Kind> = Some(Kind::Torque);
const VOLUME: Option<Kind> = Some(Kind::Volume);

/// Slips by their sizes; common practice, no source. The unit factors follow from the definitions of the units.
const SLIPS: &[Slip] = &[
    Slip(None, Converted, 12.0, SlipFactor::Times12),
    Slip(None, Converted, 1.0 / 12.0, SlipFactor::Over12),
    Slip(
        TORQUE,
        Converted,
        1.355_818,
        SlipFactor::NewtonMetreAsPoundForceFoot,
    ),
    Slip(
        TORQUE,
        Converted,
        1.0 / 1.355_818,
        SlipFactor::PoundForceFootAsNewtonMetre,
    ),
    Slip(
        TORQUE,
        Converted,
        1.0 / 8.850_746,
        SlipFactor::NewtonMetreAsPoundForceInch,
    ),
    Slip(
        TORQUE,
        Converted,
        8.850_746,
        SlipFactor::PoundForceInchAsNewtonMetre,
    ),
    Slip(
        TORQUE,
        Converted,
        9.806_65,
        SlipFactor::NewtonMetreAsKilogramForceMetre,
    ),
    Slip(
        TORQUE,
        Converted,
        1.0 / 9.806_65,
        SlipFactor::KilogramForceMetreAsNewtonMetre,
    ),
    Slip(
        VOLUME,
        KeptNumber,
        1.0 / 1.056_688,
        SlipFactor::LitreAsUsQuart,
    ),
    Slip(VOLUME, KeptNumber, 1.056_688, SlipFactor::UsQuartAsLitre),
    Slip(VOLUME, KeptNumber, 1.0 / 1.200_95, SlipFactor::ImperialAsUs),
    Slip(VOLUME, KeptNumber, 1.200_95, SlipFactor::UsAsImperial),
    Slip(Some(Kind::Temperature), Number, 1.0, SlipFactor::SameNumber),
    Slip(
        Some(Kind::TemperatureDifference),
        Number,
        1.0,
        SlipFactor::SameNumber,
    ),
    Slip(Some(Kind::Temperature), Number, 1.8, SlipFactor::OffsetLost),
    Slip(
        Some(Kind::Temperature),
        Number,
        1.0 / 1.8,
        SlipFactor::OffsetLost,
    ),
    Slip(None, Converted, 10.0, SlipFactor::Times10),
    Slip(None, Converted, 0.1, SlipFactor::Over10),
    Slip(None, Converted, 100.0, SlipFactor::Times100),
    Slip(None, Converted, 0.01, SlipFactor::Over100),
    Slip(None, Converted, 1000.0, SlipFactor::Times1000),
    Slip(None, Converted, 0.001, SlipFactor::Over1000),
];

/// How near to a factor a print is taken for that slip.
const NEAR: f64 = 0.03;

/// Sorts prints of one quantity: the first governs, each other one is held against it.
///
/// In this order: the same value is `exact`; within half of its last printed digit it `agrees`; within that of another
/// print that itself agrees it is `chain_rounded`; within 3 % of a known factor it is a `unit_slip`, of one between units
/// of nearly one size (litre and quart, imperial and US) only where the number was kept; else it is `inconsistent`. Decided exactly, whatever the kind. The first print is the one to work by; prints are never averaged.
/// Source: common practice, no source.
///
/// # Errors
///
/// [`OutOfRange`](ErrorKind::OutOfRange) for an empty list and for values past some 10¹² of a unit,
/// [`WrongKind`](ErrorKind::WrongKind) where the kinds differ.
///
/// ```
/// use brimline::{Amount, torque::equivalents};
/// // TM 5-3805-274-13&P, WP 0051: 19 · 22/25 = 16.72, printed as 17, and 17 converted on.
/// let [computed, rounded, converted] = ["16.72 lbf·ft", "17 lbf·ft", "23.0 N·m"].map(Amount::parse);
/// let printed = [computed?, rounded?, converted?];
/// let told = equivalents(&printed)?;
/// assert_eq!(told.prints[1].class.slug(), "agrees");
/// assert_eq!(told.prints[2].class.slug(), "chain_rounded");
/// assert_eq!(told.prints[2].through, Some(printed[1]));
/// # Ok::<(), brimline::Error>(())
/// ```
pub fn equivalents(printed: &[Amount]) -> Result<Equivalents, Error> {
    let Some((governing, others)) = printed.split_first() else {
        let fault = Fault::new(ErrorKind::OutOfRange)
            .at("printed")
            .got("nothing");
        return Err(fault
            .allowed(["one print or more, the governing one first"])
            .into());
    };
    let mut counts = Vec::with_capacity(printed.len());
    for (index, print) in printed.iter().enumerate() {
        let named = |mut fault: Fault| {
            fault.path = format!("printed[{index}]");
            fault
        };
        if let Err(error) = governing.compare(print) {
            return Err(named(error.first().clone()).into());
        }
        counts.push(print.count().ok_or_else(|| {
            let fault = Fault::new(ErrorKind::OutOfRange).got(&format!("{print}"));
            named(fault.hint("no print is as large as this"))
        })?);
    }
    let first = counts.first().copied().unwrap_or_default();
    let agreeing = |own: usize, print: &Amount| {
        let rounded = printed.iter().zip(&counts).enumerate().skip(1);
        let count = counts.get(own).copied().unwrap_or_default();
        rounded
            .filter(|(other, _)| *other != own)
            .find(|(_, (other, at))| {
                within_print(first, **at, other) && within_print(**at, count, print)
            })
            .map(|(_, (other, _))| *other)
    };
    let mut prints = Vec::with_capacity(printed.len());
    prints.push(Print {
        print: *governing,
        class: PrintClass::Governing,
        gap: gap(governing, governing),
        factor: None,
        through: None,
    });
    for (index, print) in (1..).zip(others) {
        let count = counts.get(index).copied().unwrap_or_default();
        let (mut factor, mut through) = (None, None);
        let class = if count == first {
            PrintClass::Exact
        } else if within_print(first, count, print) {
            PrintClass::Agrees
        } else if let Some(other) = agreeing(index, print) {
            through = Some(other);
            PrintClass::ChainRounded
        } else if let Some(slip) = slip(governing, print) {
            factor = Some(slip);
            PrintClass::UnitSlip
        } else {
            PrintClass::Inconsistent
        };
        prints.push(Print {
            print: *print,
            class,
            gap: gap(governing, print),
            factor,
            through,
        });
    }
    Ok(Equivalents { prints })
}

/// Whether a value, as a count, is within half of the last digit of a print.
fn within_print(value: i128, count: i128, print: &Amount) -> bool {
    let last = print.resolution().count().unwrap_or_default();
    value.abs_diff(count).saturating_mul(2) <= last.unsigned_abs()
}

/// Whether the number of a print is the governing one, rounded to its own places.
fn keeps_number(governing: &Amount, print: &Amount) -> bool {
    let number = Amount::new(governing.mantissa(), governing.decimals(), print.unit());
    let number =
        number.and_then(|number| number.to(print.unit(), print.decimals(), Rounding::HalfEven));
    number.is_ok_and(|number| number == *print)
}

fn gap(governing: &Amount, print: &Amount) -> Option<Amount> {
    if governing.kind() == Kind::Temperature {
        return None;
    }
    let gap = (print.to_f64() / number(*governing, print.unit()) - 1.0) * 100.0;
    Amount::from_computed(gap, Unit::Percent).ok()
}

/// The slip whose factor is nearest.
fn slip(governing: &Amount, print: &Amount) -> Option<SlipFactor> {
    let converted = number(*governing, print.unit());
    let off = |Slip(kind, against, factor, slip): &Slip| {
        let held_against = match against {
            KeptNumber if !keeps_number(governing, print) => return None,
            Converted | KeptNumber => converted,
            Number if print.unit() != governing.unit() => governing.to_f64(),
            Number => return None,
        };
        let off = (print.to_f64() / held_against / factor - 1.0).abs();
        let known = off <= NEAR && kind.is_none_or(|kind| kind == print.kind());
        known.then_some((off, *slip))
    };
    let nearest = SLIPS.iter().filter_map(off);
    nearest
        .min_by(|one, other| one.0.total_cmp(&other.0))
        .map(|(_, slip)| slip)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, clippy::indexing_slicing)]

    use super::*;
    use alloc::string::{String, ToString};

    fn amounts(texts: &[&str]) -> Vec<Amount> {
        texts
            .iter()
            .map(|text| Amount::parse(text).unwrap())
            .collect()
    }

    /// Classes of all prints but the first, with factor or intermediate print.
    fn classes(texts: &[&str]) -> Vec<String> {
        let told = equivalents(&amounts(texts)).unwrap();
        let say = |print: &Print| {
            let factor = print.factor.map(|factor| factor.slug().to_string());
            let because = factor.or(print.through.map(|through| through.to_string()));
            match because {
                Some(because) => format!("{} {because}", print.class.slug()),
                None => print.class.slug().to_string(),
            }
        };
        told.prints.iter().skip(1).map(say).collect()
    }

    /// Common practice, no source, but where one is named; worked by hand from the definitions of the units.
    #[test]
    fn prints_are_sorted() {
        for (texts, expected) in [
            (&["12 N·m", "9 lbf·ft"][..], &["agrees"][..]),
            (&["12 N·m", "106 lbf·in"], &["agrees"]),
            (&["9 lbf·ft", "108 lbf·in"], &["exact"]),
            (
                &["12 N·m", "9 lbf·ft", "108 lbf·in"],
                &["agrees", "chain_rounded 9 lbf·ft"],
            ),
            (
                &["12 N·m", "108 lbf·in", "9 lbf·ft"],
                &["chain_rounded 9 lbf·ft", "agrees"],
            ),
            (
                &["14 N·m", "10 lbf·ft", "120 lbf·in"],
                &["agrees", "chain_rounded 10 lbf·ft"],
            ),
            (&["12 N·m", "12 lbf·ft"], &["unit_slip n_m_as_lbf_ft"]),
            (&["12 lbf·ft", "12 N·m"], &["unit_slip lbf_ft_as_n_m"]),
            (&["12 N·m", "12 lbf·in"], &["unit_slip n_m_as_lbf_in"]),
            (&["12 lbf·in", "12 N·m"], &["unit_slip lbf_in_as_n_m"]),
            (&["12 N·m", "12 kgf·m"], &["unit_slip n_m_as_kgf_m"]),
            (&["1.2 kgf·m", "1.2 N·m"], &["unit_slip kgf_m_as_n_m"]),
            (&["14 N·m", "124 lbf·ft"], &["unit_slip times_12"]),
            (&["14 N·m", "10.3 lbf·in"], &["unit_slip over_12"]),
            (&["14 N·m", "140 N·m"], &["unit_slip times_10"]),
            (&["14 N·m", "11 lbf·ft"], &["inconsistent"]),
            // The slip of the first hides in the second, which is a true conversion of it.
            (
                &["12 N·m", "12 lbf·ft", "144 lbf·in"],
                &["unit_slip n_m_as_lbf_ft", "unit_slip n_m_as_lbf_ft"],
            ),
            (&["1.5 L", "1.6 US qt"], &["agrees"]),
            (&["1.6 US qt", "1.5 L"], &["agrees"]),
            (&["0.5 US qt", "0.473 L"], &["agrees"]),
            (&["4.0 L", "4.00 US qt"], &["unit_slip litre_as_us_quart"]),
            (&["1.5 L", "1.5 US qt"], &["unit_slip litre_as_us_quart"]),
            (&["1.53 L", "1.5 US qt"], &["unit_slip litre_as_us_quart"]),
            // 1.27 US qt: near the factor, and another number.
            (&["1.2 L", "1.23 US qt"], &["inconsistent"]),
            (&["1.20 US qt", "1.21 L"], &["inconsistent"]),
            (&["2.00 imp qt", "2.05 US qt"], &["inconsistent"]),
            (&["4.00 US qt", "4.00 L"], &["unit_slip us_quart_as_litre"]),
            (&["2 imp qt", "2.00 US qt"], &["unit_slip imperial_as_us"]),
            (&["2 US qt", "2.00 imp qt"], &["unit_slip us_as_imperial"]),
            (&["1.5 L", "150 mL"], &["unit_slip over_10"]),
            (&["40 °C", "104 °F"], &["exact"]),
            (&["43 °C", "109 °F"], &["agrees"]),
            (&["40 °C", "72 °F"], &["unit_slip offset_lost"]),
            (&["104 °F", "58 °C"], &["unit_slip offset_lost"]),
            (&["40 °C", "40 °F"], &["unit_slip same_number"]),
            (&["40 °C", "110 °F"], &["inconsistent"]),
            (&["5 Δ°C", "9 Δ°F"], &["exact"]),
            (&["5 Δ°C", "5.0 Δ°F"], &["unit_slip same_number"]),
            (
                &["0 N·m", "0 lbf·ft", "7 lbf·ft"],
                &["exact", "inconsistent"],
            ),
            // TM 5-3805-274-13&P, WP 0051, figure 4: its prints of 19 lbf·ft, and its chain.
            (&["19 lbf·ft", "25.8 N·m"], &["agrees"]),
            (
                &["16.72 lbf·ft", "17 lbf·ft", "23.0 N·m"],
                &["agrees", "chain_rounded 17 lbf·ft"],
            ),
        ] {
            assert_eq!(classes(texts), expected, "{texts:?}");
        }
    }

    #[test]
    fn gaps_are_told() {
        // 9 lbf·ft is 12.20236 N·m, so 108 lbf·in is 1.686 % over 12 N·m.
        let told = equivalents(&amounts(&["12 N·m", "108 lbf·in"])).unwrap();
        assert_eq!(told.prints[0].gap.unwrap().to_string(), "0 %");
        assert!((told.prints[1].gap.unwrap().to_f64() - 1.686).abs() < 0.0005);
        for texts in [
            ["40 °C", "72 °F"],
            ["0 L", "1 L"],
            ["0.000000001 L", "9999999 m³"],
        ] {
            assert_eq!(equivalents(&amounts(&texts)).unwrap().prints[1].gap, None);
        }
    }

    #[test]
    fn half_of_the_last_digit_is_within_it() {
        // 0.25 and 0.35 lie exactly between two prints of one decimal: either is right.
        for print in ["0.2 L", "0.3 L"] {
            assert_eq!(classes(&["250 mL", print]), ["agrees"]);
        }
        assert_eq!(classes(&["250.000001 mL", "0.2 L"]), ["inconsistent"]);
        assert_eq!(classes(&["-250 mL", "-0.2 L"]), ["agrees"]);
    }

    #[test]
    fn what_cannot_be_sorted_is_refused() {
        let refused = |texts: &[&str]| {
            let error = equivalents(&amounts(texts)).unwrap_err();
            (error.kind(), error.first().path.clone())
        };
        assert_eq!(refused(&[]), (ErrorKind::OutOfRange, "printed".to_string()));
        let mixed = refused(&["12 N·m", "9 lbf·ft", "1 L"]);
        assert_eq!(mixed, (ErrorKind::WrongKind, "printed[2]".to_string()));
        let huge = refused(&["1 N·m", "999999999999999 N·m"]);
        assert_eq!(huge, (ErrorKind::OutOfRange, "printed[1]".to_string()));
    }
}
