//! A tightened joint: torque and the preload it gives, by the short form.

use super::{above_zero, computed, number, of_kind, out_of_range};
use crate::error::{Error, ErrorKind, Fault};
use crate::quantity::{Amount, Interval, Kind, Unit};
use crate::word::words;
use serde::Serialize;

words! {
    /// What the threads and the face under the head are like.
    pub enum ThreadCondition {
        /// Plain steel, dry.
        DrySteel = "dry_steel",
        /// Steel with machine oil.
        MachineOil = "machine_oil",
        /// Cadmium plated.
        Cadmium = "cadmium",
        /// Phosphated and oiled.
        PhosphateAndOil = "phosphate_and_oil",
        /// Zinc plated.
        Zinc = "zinc",
        /// Stainless steel of type 302.
        Stainless = "stainless",
        /// With threadlocker: published values contradict each other, so none is assumed.
        Threadlocker = "threadlocker",
        /// With another lubricant: published values run from 0.086 to 0.52, so none is assumed.
        LubricatedOther = "lubricated_other",
    }
}

/// Torque coefficients in hundredths, lowest and highest, as printed on a fastener supplier's page. Those that are not
/// here have none.
const COEFFICIENTS: &[(ThreadCondition, i64, i64)] = &[
    (ThreadCondition::DrySteel, 18, 27),
    (ThreadCondition::MachineOil, 10, 26),
    (ThreadCondition::Cadmium, 15, 19),
    (ThreadCondition::PhosphateAndOil, 15, 22),
    (ThreadCondition::Zinc, 17, 35),
    (ThreadCondition::Stainless, 30, 50),
];

/// What is known of the torque coefficient K.
///
/// ```
/// use brimline::torque::{Friction, ThreadCondition};
/// let range = Friction::Condition(ThreadCondition::Zinc).range()?;
/// assert_eq!(range.to_string(), "[0.17 ratio, 0.35 ratio]");
/// assert!(Friction::Condition(ThreadCondition::Threadlocker).range().is_err());
/// # Ok::<(), brimline::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Friction {
    /// K itself, a ratio above 0 and up to 1.
    K(Amount),
    /// From one K to another.
    Between(Interval),
    /// The range published for a condition.
    Condition(ThreadCondition),
}

impl Friction {
    /// By K itself or by the condition of the threads, of which one is given.
    ///
    /// # Errors
    ///
    /// [`Conflict`](ErrorKind::Conflict) for both and for neither.
    ///
    /// ```
    /// use brimline::torque::{Friction, ThreadCondition};
    /// assert!(Friction::of(None, Some(ThreadCondition::Zinc)).is_ok());
    /// assert!(Friction::of(None, None).is_err());
    /// ```
    pub fn of(k: Option<Amount>, condition: Option<ThreadCondition>) -> Result<Self, Error> {
        let got = match (k, condition) {
            (Some(k), None) => return Ok(Friction::K(k)),
            (None, Some(condition)) => return Ok(Friction::Condition(condition)),
            (Some(_), Some(_)) => "both",
            (None, None) => "neither",
        };
        let hint = "give k, or the condition of the threads to take its range from";
        let fault = Fault::new(ErrorKind::Conflict).at("k").got(got);
        Err(fault.allowed(["k", "condition"]).hint(hint).into())
    }

    /// The range of K.
    ///
    /// # Errors
    ///
    /// [`WrongKind`](ErrorKind::WrongKind); [`OutOfRange`](ErrorKind::OutOfRange) outside 0 to 1 and for an open end;
    /// [`UnknownValue`](ErrorKind::UnknownValue) for a condition without a range.
    pub fn range(&self) -> Result<Interval, Error> {
        match *self {
            Friction::K(k) => coefficient(k).map(Interval::of),
            Friction::Condition(condition) => published(condition),
            Friction::Between(range) => {
                let (Some(lo), Some(hi)) = (range.lo(), range.hi()) else {
                    let fault = Fault::new(ErrorKind::OutOfRange).at("k");
                    let got = alloc::format!("{range}");
                    return Err(fault.got(&got).hint("give both ends").into());
                };
                coefficient(lo).and(coefficient(hi)).and(Ok(range))
            }
        }
    }
}

/// Refuses what is no torque coefficient.
fn coefficient(k: Amount) -> Result<Amount, Error> {
    of_kind("k", k, Kind::Ratio)?;
    if k.is_zero() || !(0.0..=1.0).contains(&number(k, Unit::One)) {
        return Err(out_of_range("k", k).allowed(["above 0, up to 1"]).into());
    }
    Ok(k)
}

fn published(condition: ThreadCondition) -> Result<Interval, Error> {
    let row = COEFFICIENTS.iter().find(|(own, ..)| *own == condition);
    let Some((_, lo, hi)) = row else {
        let with_range = COEFFICIENTS.iter().map(|(own, ..)| own.slug());
        let fault = Fault::new(ErrorKind::UnknownValue)
            .at("condition")
            .got(condition.slug())
            .allowed(with_range);
        let hint = "published coefficients contradict each other here: give k as it was measured";
        return Err(fault.hint(hint).into());
    };
    let [lo, hi] = [lo, hi].map(|k| Amount::new(*k, 2, Unit::One));
    Interval::new(Some(lo?), Some(hi?))
}

/// The preload a torque gives.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[non_exhaustive]
pub struct Preload {
    /// From the least to the most, in newtons.
    pub preload: Interval,
    /// The coefficients it was reckoned with.
    pub k: Interval,
}

/// The torque a preload takes.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[non_exhaustive]
pub struct JointTorque {
    /// From the least to the most, in newton metres.
    pub torque: Interval,
    /// The coefficients it was reckoned with.
    pub k: Interval,
    /// What to mind, as caution ids.
    pub cautions: &'static [&'static str],
}

/// The preload of a joint that was tightened to `torque`, by the short form F = T / (K·D).
///
/// `torque` and the nominal `diameter` D above zero, K above 0 and up to 1. The scatter of K is carried into the answer.
/// Source: the short form as in Mechanical Fastening, Joining, and Assembly, page 85; the ranges of K as printed on a
/// fastener supplier's page.
///
/// # Errors
///
/// [`WrongKind`](ErrorKind::WrongKind), [`OutOfRange`](ErrorKind::OutOfRange), and those of [`Friction::range`].
///
/// ```
/// use brimline::{Amount, torque::{Friction, ThreadCondition, preload}};
/// let told = preload(
///     Amount::parse("12 N·m")?,
///     Amount::parse("10 mm")?,
///     Friction::Condition(ThreadCondition::DrySteel),
/// )?;
/// // 12 / (0.27 · 0.01) and 12 / (0.18 · 0.01).
/// assert_eq!(told.preload.to_string(), "[4444.44444444 N, 6666.66666667 N]");
/// # Ok::<(), brimline::Error>(())
/// ```
pub fn preload(torque: Amount, diameter: Amount, friction: Friction) -> Result<Preload, Error> {
    above_zero("torque", torque, Kind::Torque)?;
    above_zero("diameter", diameter, Kind::Length)?;
    let k = friction.range()?;
    let unscattered = number(torque, Unit::NewtonMetre) / number(diameter, Unit::Metre);
    let preload = scattered(&k, |k| computed("torque", unscattered / k, Unit::Newton))?;
    Ok(Preload { preload, k })
}

/// The torque that gives a joint its `preload`, by the short form T = K·D·F.
///
/// `preload` and the nominal `diameter` D above zero, K above 0 and up to 1. Source: as [`preload`].
///
/// # Errors
///
/// As [`preload`].
///
/// ```
/// use brimline::{Amount, Unit, Rounding, torque::{Friction, torque_for_preload}};
/// let [preload, diameter] = ["1275 lbf", "0.19 in"].map(Amount::parse);
/// let k = Friction::K(Amount::parse_as("0.2", brimline::Kind::Ratio, None)?);
/// let told = torque_for_preload(preload?, diameter?, k)?;
/// // Mechanical Fastening, Joining, and Assembly, page 85, prints 48.5 lbf·in (48.45).
/// let torque = told.torque.lo().unwrap().to(Unit::PoundForceInch, 2, Rounding::HalfEven)?;
/// assert_eq!(torque.to_string(), "48.45 lbf·in");
/// # Ok::<(), brimline::Error>(())
/// ```
pub fn torque_for_preload(
    preload: Amount,
    diameter: Amount,
    friction: Friction,
) -> Result<JointTorque, Error> {
    above_zero("preload", preload, Kind::Force)?;
    above_zero("diameter", diameter, Kind::Length)?;
    let k = friction.range()?;
    let unscattered = number(preload, Unit::Newton) * number(diameter, Unit::Metre);
    Ok(JointTorque {
        torque: scattered(&k, |k| {
            computed("preload", unscattered * k, Unit::NewtonMetre)
        })?,
        k,
        cautions: &["torque_unit", "threads_as_printed"],
    })
}

/// What comes of the ends of K, from the least to the most.
fn scattered(k: &Interval, at: impl Fn(f64) -> Result<Amount, Error>) -> Result<Interval, Error> {
    let end = |k: Option<Amount>| k.map(|k| at(number(k, Unit::One))).transpose();
    let one = end(k.lo())?;
    let other = if k.lo() == k.hi() { one } else { end(k.hi())? };
    if one <= other {
        Interval::new(one, other)
    } else {
        Interval::new(other, one)
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]

    use super::*;
    use crate::quantity::convert;
    use alloc::string::ToString;

    fn amount(text: &str) -> Amount {
        Amount::parse(text).unwrap()
    }

    fn k(text: &str) -> Friction {
        Friction::K(Amount::parse_as(text, Kind::Ratio, None).unwrap())
    }

    fn number(amount: Amount, unit: Unit) -> f64 {
        convert(amount.to_f64(), amount.unit(), unit).unwrap()
    }

    #[test]
    fn published_torques() {
        for (coefficient, diameter, preload, printed, unit, tolerance) in [
            // Mechanical Fastening, Joining, and Assembly, page 85.
            (
                "0.3",
                "0.19 in",
                "1275 lbf",
                72.7,
                Unit::PoundForceInch,
                0.05,
            ),
            (
                "0.25",
                "0.19 in",
                "1275 lbf",
                60.6,
                Unit::PoundForceInch,
                0.05,
            ),
            (
                "0.2",
                "0.19 in",
                "1275 lbf",
                48.5,
                Unit::PoundForceInch,
                0.05,
            ),
            (
                "0.15",
                "0.19 in",
                "1275 lbf",
                36.3,
                Unit::PoundForceInch,
                0.05,
            ),
            (
                "0.1",
                "0.19 in",
                "1275 lbf",
                24.2,
                Unit::PoundForceInch,
                0.05,
            ),
            // A chart for 3/8-16 of grade 5, which cuts 30.875 down to 30, and 23.16 to 23.
            (
                "0.2",
                "0.375 in",
                "4940 lbf",
                30.0,
                Unit::PoundForceFoot,
                1.0,
            ),
            (
                "0.15",
                "0.375 in",
                "4940 lbf",
                23.0,
                Unit::PoundForceFoot,
                0.5,
            ),
        ] {
            let told =
                torque_for_preload(amount(preload), amount(diameter), k(coefficient)).unwrap();
            let found = number(told.torque.lo().unwrap(), unit);
            // At its edge the printed tolerance gives way by the ninth decimal of a newton metre.
            assert!(
                (found - printed).abs() <= tolerance + 1e-8,
                "{coefficient}: {found}"
            );
        }
    }

    /// A sheet prints K of threadlocked steel as .017 and 130 · (.09 / .17) as 53; the product is 68.8.
    #[test]
    fn a_misprinted_product_is_not_repeated() {
        let diameter = amount("0.5 in");
        let held = preload(amount("130 lbf·ft"), diameter, k("0.17"))
            .unwrap()
            .preload
            .lo()
            .unwrap();
        let told = torque_for_preload(held, diameter, k("0.09")).unwrap();
        let found = number(told.torque.lo().unwrap(), Unit::PoundForceFoot);
        assert!((found - 68.823_529_4).abs() < 5e-7, "{found}");
    }

    #[test]
    fn the_scatter_of_k_is_carried() {
        let condition = Friction::Condition(ThreadCondition::MachineOil);
        let told = torque_for_preload(amount("10 kN"), amount("10 mm"), condition).unwrap();
        assert_eq!(told.torque.to_string(), "[10 N·m, 26 N·m]");
        assert_eq!(told.k.to_string(), "[0.10 ratio, 0.26 ratio]");
        assert_eq!(told.cautions, ["torque_unit", "threads_as_printed"]);
        let back = preload(amount("26 N·m"), amount("10 mm"), condition).unwrap();
        assert_eq!(back.preload.to_string(), "[10000 N, 26000 N]");
        let between = Friction::Between(Interval::new(told.k.lo(), told.k.hi()).unwrap());
        assert_eq!(
            preload(amount("26 N·m"), amount("10 mm"), between).unwrap(),
            back
        );
    }

    #[test]
    fn every_condition_has_a_range_or_a_refusal() {
        for (word, condition) in ThreadCondition::WORDS {
            let ranged = !matches!(word, &"threadlocker" | &"lubricated_other");
            match Friction::Condition(*condition).range() {
                Ok(_) => assert!(ranged, "{word}"),
                Err(error) => {
                    assert!(!ranged, "{word}");
                    assert_eq!(error.first().path, "condition");
                    assert!(error.first().hint.is_some());
                }
            }
        }
    }

    #[test]
    fn what_has_no_meaning_is_refused() {
        let refused = |torque: &str, diameter: &str, friction: Friction| {
            let error = preload(amount(torque), amount(diameter), friction).unwrap_err();
            (error.kind(), error.first().path.to_string())
        };
        let out = |name: &str| (ErrorKind::OutOfRange, name.to_string());
        assert_eq!(refused("0 N·m", "10 mm", k("0.2")), out("torque"));
        assert_eq!(refused("10 N·m", "-10 mm", k("0.2")), out("diameter"));
        for bad in ["0", "-0.2", "1.000000001"] {
            assert_eq!(refused("10 N·m", "10 mm", k(bad)), out("k"));
        }
        assert_eq!(
            refused("10 N·m", "10 mm", Friction::Between(Interval::UNBOUNDED)),
            out("k")
        );
        let kind = |name: &str| (ErrorKind::WrongKind, name.to_string());
        assert_eq!(refused("10 mm", "10 mm", k("0.2")), kind("torque"));
        assert_eq!(
            refused("10 N·m", "10 mm", Friction::K(amount("2 mm"))),
            kind("k")
        );
        assert!(torque_for_preload(amount("10 N·m"), amount("10 mm"), k("0.2")).is_err());
    }
}
