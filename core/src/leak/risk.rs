//! How often a whole run of parts would be judged wrongly.

use super::limit::probability_of;
use super::{above_zero, difference, limits, normal};
use crate::error::Error;
use crate::quantity::{Amount, Interval};
use alloc::vec::Vec;
use serde::Serialize;

/// The risks of a rule before anything is measured.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct Risks {
    /// The probability that a value is out of tolerance and accepted: the consumer's.
    pub consumer: Amount,
    /// The probability that a value is within tolerance and rejected: the producer's.
    pub producer: Amount,
}

/// The global risks of accepting by a measurement.
///
/// The true values are spread normally about `mean` with the standard deviation `spread`; each is measured with the
/// standard `uncertainty`; what is measured within `acceptance` is accepted, what truly lies within `tolerance`
/// should be. Any kind of quantity, `spread` and `uncertainty` of the same (of a temperature: differences), above
/// zero. Integrated over the true value, to the nine decimals that are told, by the eight-point rule of Gauss and
/// Legendre between cuts every two standard deviations of both. Source: JCGM 106:2012, clause 9.
///
/// # Errors
///
/// [`WrongKind`](crate::ErrorKind::WrongKind); [`OutOfRange`](crate::ErrorKind::OutOfRange) for a spread or an uncertainty
/// that is not above zero; [`Conflict`](crate::ErrorKind::Conflict) for a range without an end.
///
/// ```
/// use brimline::{Amount, leak::risks};
/// // The resistor of JCGM 106:2012, clause 9 (inputs seen in print): about 1 % and 7 %.
/// let [mean, spread, uncertainty] = ["1500 ratio", "0.12 ratio", "0.04 ratio"].map(Amount::parse);
/// let tolerance = "[1499.8 ratio, 1500.2 ratio]".parse()?;
/// let acceptance = "[1499.82 ratio, 1500.18 ratio]".parse()?;
/// let risks = risks(mean?, spread?, uncertainty?, tolerance, acceptance)?;
/// assert!(risks.consumer < Amount::parse("1 %")?);
/// assert!(risks.producer < Amount::parse("7 %")?);
/// # Ok::<(), brimline::Error>(())
/// ```
pub fn risks(
    mean: Amount,
    spread: Amount,
    uncertainty: Amount,
    tolerance: Interval,
    acceptance: Interval,
) -> Result<Risks, Error> {
    let middle = mean.to_f64();
    let spread = above_zero("spread", spread, difference(mean))?;
    let doubt = above_zero("uncertainty", uncertainty, difference(mean))? / spread;
    // In standard deviations of the true values from here on.
    let scaled = |range: Interval, name| {
        let (lo, hi) = limits([range.lo(), range.hi()], mean.unit(), [name; 2])?;
        Ok::<_, Error>(((lo - middle) / spread, (hi - middle) / spread))
    };
    let tolerance = scaled(tolerance, "tolerance")?;
    let acceptance = scaled(acceptance, "acceptance")?;
    let (mut consumer, mut producer) = (0.0, 0.0);
    let cuts = cuts(tolerance, acceptance, doubt);
    for (lo, hi) in cuts.iter().zip(cuts.iter().skip(1)) {
        let (half, at) = ((hi - lo) / 2.0, (hi + lo) / 2.0);
        if half <= 0.0 {
            continue;
        }
        let conforms = tolerance.0 <= at && at <= tolerance.1;
        let judged_wrongly = |value: f64| {
            let (lo, hi) = (
                (acceptance.0 - value) / doubt,
                (acceptance.1 - value) / doubt,
            );
            let wrong = if conforms {
                normal::below(lo) + normal::below(-hi)
            } else {
                normal::between(lo, hi)
            };
            normal::density(value) * wrong
        };
        let of_piece = NODES.iter().fold(0.0, |sum, (node, weight)| {
            sum + weight * (judged_wrongly(at - half * node) + judged_wrongly(at + half * node))
        });
        let risk = if conforms {
            &mut producer
        } else {
            &mut consumer
        };
        *risk += half * of_piece;
    }
    Ok(Risks {
        consumer: probability_of(consumer)?,
        producer: probability_of(producer)?,
    })
}

/// Half of the points of the eight-point rule of Gauss and Legendre, with their weights.
const NODES: [(f64, f64); 4] = [
    (0.183_434_642_495_649_8, 0.362_683_783_378_362),
    (0.525_532_409_916_329, 0.313_706_645_877_887_3),
    (0.796_666_477_413_626_7, 0.222_381_034_453_374_47),
    (0.960_289_856_497_536_3, 0.101_228_536_290_376_26),
];

/// How far from the middle a normal distribution is followed, in standard deviations: 1e-15 lies beyond.
const REACH: f64 = 8.0;

/// Where the range of true values is cut: at the tolerance, and every two standard deviations of either distribution.
fn cuts(tolerance: (f64, f64), acceptance: (f64, f64), doubt: f64) -> Vec<f64> {
    const STEPS: [f64; 9] = [-8.0, -6.0, -4.0, -2.0, 0.0, 2.0, 4.0, 6.0, 8.0];
    let about = |middle: f64, width: f64| STEPS.iter().map(move |step| middle + step * width);
    let mut cuts: Vec<f64> = about(0.0, 1.0)
        .chain(about(acceptance.0, doubt))
        .chain(about(acceptance.1, doubt))
        .chain([tolerance.0, tolerance.1])
        .map(|cut| cut.clamp(-REACH, REACH))
        .collect();
    cuts.sort_unstable_by(f64::total_cmp);
    cuts
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]

    use super::*;
    use crate::error::ErrorKind;

    fn ask(mean: &str, spread: &str, doubt: &str, tolerance: &str, acceptance: &str) -> (f64, f64) {
        let [mean, spread, doubt] = [mean, spread, doubt].map(|text| Amount::parse(text).unwrap());
        let [tolerance, acceptance] = [tolerance, acceptance].map(|text| text.parse().unwrap());
        let risks = risks(mean, spread, doubt, tolerance, acceptance).unwrap();
        (risks.consumer.to_f64(), risks.producer.to_f64())
    }

    #[test]
    fn the_resistor_of_jcgm_106() {
        // JCGM 106:2012, clause 9: inputs seen in print, about 1 % and 7 % (from memory); 0.0098783 and 0.0690265 from a
        // general library's quadrature.
        let (consumer, producer) = ask(
            "1500 ratio",
            "0.12 ratio",
            "0.04 ratio",
            "[1499.8 ratio, 1500.2 ratio]",
            "[1499.82 ratio, 1500.18 ratio]",
        );
        assert!((consumer - 0.009_878_3).abs() < 1e-6);
        assert!((producer - 0.069_026_5).abs() < 1e-6);
    }

    #[test]
    fn the_same_as_an_adaptive_quadrature() {
        // By mpmath 1.3, 25 digits, cut at every standard deviation of both distributions.
        for (given, consumer, producer) in [
            (
                ["0 L", "1 L", "1 L", "[-1 L, 1 L]", "[-0.5 L, 1.5 L]"],
                0.101_325_018_449,
                0.290_273_498_675,
            ),
            (
                ["0 L", "1 L", "10 L", "[-1 L, 1 L]", "[-2 L, 2 L]"],
                0.049_678_753_718,
                0.574_625_172_107,
            ),
            (
                [
                    "0.3 L",
                    "0.7 L",
                    "0.001 L",
                    "[0 L, 2 L]",
                    "[0.001 L, 1.9 L]",
                ],
                0.000_043_304_509,
                0.004_119_870_155,
            ),
            (
                ["5 L", "2 L", "0.5 L", "(-inf, 6 L]", "(-inf, 5.2 L]"],
                0.001_938_169_183,
                0.154_758_169_435,
            ),
            (
                ["0 L", "1 L", "0.3 L", "[3 L, 5 L]", "[2.5 L, 5.5 L]"],
                0.006_989_868_478,
                0.000_019_518_104,
            ),
        ] {
            let [mean, spread, doubt, tolerance, acceptance] = given;
            let found = ask(mean, spread, doubt, tolerance, acceptance);
            assert!((found.0 - consumer).abs() < 1e-9, "{given:?}: {found:?}");
            assert!((found.1 - producer).abs() < 1e-9, "{given:?}: {found:?}");
        }
    }

    #[test]
    fn nothing_is_judged_wrongly_by_a_perfect_measurement() {
        let (consumer, producer) = ask(
            "40 °C",
            "1 Δ°C",
            "0.000001 Δ°C",
            "[39 °C, +inf)",
            "[39 °C, +inf)",
        );
        assert!(consumer < 1e-6 && producer < 1e-6);
    }

    #[test]
    fn refusals_name_the_argument() {
        let [one, none, cold] = ["1 L", "0 L", "1 °C"].map(|text| Amount::parse(text).unwrap());
        let range: Interval = "[0 L, 2 L]".parse().unwrap();
        for (answer, kind, path) in [
            (
                risks(one, none, one, range, range),
                ErrorKind::OutOfRange,
                "spread",
            ),
            (
                risks(one, one, cold, range, range),
                ErrorKind::WrongKind,
                "uncertainty",
            ),
            (
                risks(cold, one, one, range, range),
                ErrorKind::WrongKind,
                "spread",
            ),
            (
                risks(one, one, one, Interval::UNBOUNDED, range),
                ErrorKind::Conflict,
                "tolerance",
            ),
            (
                risks(one, one, one, range, Interval::of(cold)),
                ErrorKind::WrongKind,
                "acceptance",
            ),
        ] {
            let error = answer.unwrap_err();
            assert_eq!((error.kind(), error.first().path.as_str()), (kind, path));
        }
    }
}
