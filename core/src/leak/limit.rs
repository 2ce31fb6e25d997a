//! Whether a limit is passed, where what is held against it is uncertain.

use super::{above_zero, computed, difference, from_zero, limits, normal, number};
use crate::error::{Error, ErrorKind, Fault};
use crate::quantity::{Amount, Unit};
use crate::word::words;
use alloc::format;
use alloc::string::ToString;
use serde::Serialize;

words! {
    /// How much doubt a decision may carry. The caller chooses.
    ///
    /// Source: JCGM 106:2012, clause 8. A guarded rule never turns the simple decision round, it withholds it.
    pub enum Rule {
        /// Decided by the estimate alone: the risk is shared.
        SimpleAcceptance = "simple_acceptance",
        /// Called below only where the estimate is below by the guard band.
        GuardedAcceptance = "guarded_acceptance",
        /// Called above only where the estimate is above by more than the guard band.
        GuardedRejection = "guarded_rejection",
    }
}

words! {
    /// On which side of a limit.
    pub enum Decision {
        /// Above the limit.
        Above = "above",
        /// At the limit or below it, which is all it says: no gearbox is shown to be tight by it.
        Below = "below",
        /// Within the guard band, where the rule decides nothing.
        Undecided = "undecided",
    }
}

/// How an estimate stands to a limit.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct AgainstLimit {
    /// The probability that the true value is above the limit.
    pub exceeds: Amount,
    /// How far from the limit the estimate must be, for a guarded rule; in the unit of the uncertainty.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub guard_band: Option<Amount>,
    /// What the rule decides.
    pub decision: Decision,
}

/// Decides by a rule whether an estimate is above a limit, and with what probability its true value is.
///
/// Any kind of quantity; the standard `uncertainty` is of the same kind (of a temperature: a difference) and above zero. A
/// guarded rule takes the `probability` that its decision is right, 0.5 to 0.999999999; simple acceptance takes none.
/// The true value is taken as normally distributed about the estimate. Source: JCGM 106:2012, clauses 7 and 8.
///
/// # Errors
///
/// [`WrongKind`](ErrorKind::WrongKind); [`OutOfRange`](ErrorKind::OutOfRange) for an uncertainty that is not above zero or
/// a probability outside the range; [`Conflict`](ErrorKind::Conflict) for a guarded rule without a probability, or simple
/// acceptance with one.
///
/// ```
/// use brimline::{Amount, leak::{Decision, Rule, against_limit}};
/// let [found, uncertainty, limit] = ["1.5 L", "0.1 L", "1.4 L"].map(Amount::parse);
/// let (found, uncertainty, limit) = (found?, uncertainty?, limit?);
/// let simple = against_limit(found, uncertainty, limit, Rule::SimpleAcceptance, None)?;
/// assert_eq!(simple.decision, Decision::Above);
/// // One standard uncertainty above: 84 % (JCGM 106:2012, table 1).
/// assert_eq!(simple.exceeds.to_string(), "0.841344746 ratio");
/// let sure = against_limit(found, uncertainty, limit, Rule::GuardedRejection, Amount::parse("95 %")?)?;
/// assert_eq!(sure.decision, Decision::Undecided);
/// # Ok::<(), brimline::Error>(())
/// ```
pub fn against_limit(
    estimate: Amount,
    uncertainty: Amount,
    limit: Amount,
    rule: Rule,
    probability: impl Into<Option<Amount>>,
) -> Result<AgainstLimit, Error> {
    let over = estimate.to_f64() - number("limit", limit, estimate.unit())?;
    let doubt = above_zero("uncertainty", uncertainty, difference(estimate))?;
    let z = match (rule, probability.into()) {
        (Rule::SimpleAcceptance, None) => None,
        (Rule::SimpleAcceptance, Some(_)) => {
            let hint =
                "simple acceptance takes no probability: leave it out, or choose a guarded rule";
            return Err(probability_conflict(hint));
        }
        (_, Some(probability)) => Some(guard(probability)?),
        (_, None) => {
            let hint = "say with what probability the decision is to be right, as in \"95 %\"";
            return Err(probability_conflict(hint));
        }
    };
    let band = z.map_or(0.0, |z| z * doubt);
    let decision = match (estimate.compare(&limit)?.is_gt(), rule) {
        (true, Rule::GuardedRejection) if over <= band => Decision::Undecided,
        (false, Rule::GuardedAcceptance) if -over < band => Decision::Undecided,
        (true, _) => Decision::Above,
        (false, _) => Decision::Below,
    };
    let band_in_unit = |z| computed("uncertainty", z * uncertainty.to_f64(), uncertainty.unit());
    Ok(AgainstLimit {
        exceeds: probability_of(normal::below(over / doubt))?,
        guard_band: z.map(band_in_unit).transpose()?,
        decision,
    })
}

/// The probability that a true value lies within limits, from its estimate and standard uncertainty.
///
/// Any kind of quantity; the uncertainty is of the same kind (of a temperature: a difference) and above zero; one of the
/// limits may be left out. The true value is taken as normally distributed about the estimate. Source: JCGM 106:2012,
/// clause 7.
///
/// # Errors
///
/// [`WrongKind`](ErrorKind::WrongKind); [`OutOfRange`](ErrorKind::OutOfRange) for an uncertainty that is not above zero or
/// limits the wrong way round; [`Conflict`](ErrorKind::Conflict) without any limit.
///
/// ```
/// use brimline::{Amount, leak::conformance};
/// // JCGM 106:2012, 7.4 (from memory): 507 against a lower limit of 490 conforms with 95.5 %.
/// let [value, uncertainty, lower] = ["507 mL", "10 mL", "490 mL"].map(Amount::parse);
/// let conforms = conformance(value?, uncertainty?, lower?, None)?;
/// assert_eq!(conforms.to_string(), "0.955434537 ratio");
/// # Ok::<(), brimline::Error>(())
/// ```
pub fn conformance(
    value: Amount,
    uncertainty: Amount,
    lower: impl Into<Option<Amount>>,
    upper: impl Into<Option<Amount>>,
) -> Result<Amount, Error> {
    let (lo, hi) = limits(
        [lower.into(), upper.into()],
        value.unit(),
        ["lower", "upper"],
    )?;
    let doubt = above_zero("uncertainty", uncertainty, difference(value))?;
    let at = value.to_f64();
    probability_of(normal::between((lo - at) / doubt, (hi - at) / doubt))
}

/// How far from a limit an estimate must be for a decision that is right with a probability.
///
/// w = z·u, in the unit of the standard `uncertainty` u, which is above zero; z is the quantile of the probability, 0.5 to
/// 0.999999999. Source: JCGM 106:2012, clause 8.3 (clause from memory).
///
/// # Errors
///
/// [`WrongKind`](ErrorKind::WrongKind); [`OutOfRange`](ErrorKind::OutOfRange).
///
/// ```
/// use brimline::{Amount, leak::guard_band};
/// let band = guard_band(Amount::parse("1 Δ°C")?, Amount::parse("95 %")?)?;
/// assert_eq!(band.to_string(), "1.644853627 Δ°C");
/// # Ok::<(), brimline::Error>(())
/// ```
pub fn guard_band(uncertainty: Amount, probability: Amount) -> Result<Amount, Error> {
    let doubt = above_zero("uncertainty", uncertainty, difference(uncertainty))?;
    let band = guard(probability)? * doubt;
    computed("uncertainty", band, uncertainty.unit())
}

/// The number z of standard deviations that a standard normal variable stays below with a probability.
///
/// From 0.000000001 to 0.999999999, negative below a half. Source: Wichura's algorithm AS 241 (1988); the printed values of
/// JCGM 106:2012, table 1, are its own to two decimals, so 0.95 gives 1.64 there and not 1.65.
///
/// # Errors
///
/// [`WrongKind`](ErrorKind::WrongKind); [`OutOfRange`](ErrorKind::OutOfRange).
///
/// ```
/// use brimline::{Amount, Rounding, Unit, leak::quantile};
/// let z = quantile(Amount::parse("95 %")?)?;
/// assert_eq!(z.to(Unit::One, 2, Rounding::HalfEven)?.to_string(), "1.64 ratio");
/// # Ok::<(), brimline::Error>(())
/// ```
pub fn quantile(probability: Amount) -> Result<Amount, Error> {
    let z = normal::quantile(share(probability, LEAST_SHARE)?);
    Amount::from_computed(z, Unit::One)
}

/// The standard uncertainty of a sum whose parts are independent: the root of the sum of their squares.
///
/// Parts of one kind that has a zero, none negative, at least one; the answer is in the unit of the first. Source: JCGM
/// 100:2008, 5.1.2.
///
/// # Errors
///
/// [`WrongKind`](ErrorKind::WrongKind), [`OutOfRange`](ErrorKind::OutOfRange), both with the place in `parts`.
///
/// ```
/// use brimline::{Amount, leak::combined_uncertainty};
/// let parts = [Amount::parse("0.3 L")?, Amount::parse("400 mL")?];
/// assert_eq!(combined_uncertainty(&parts)?.to_string(), "0.5 L");
/// # Ok::<(), brimline::Error>(())
/// ```
pub fn combined_uncertainty(parts: &[Amount]) -> Result<Amount, Error> {
    let Some(first) = parts.first() else {
        let fault = Fault::new(ErrorKind::OutOfRange).at("parts");
        return Err(fault.hint("give at least one part").into());
    };
    let mut squares = 0.0;
    for (index, part) in parts.iter().enumerate() {
        let part = from_zero("parts", *part, difference(*first))
            .map_err(|error| Error::from(error.first().clone().at(format!("parts[{index}]"))))?;
        squares += part * part;
    }
    computed("parts", libm::sqrt(squares), first.unit())
}

/// The half width of an interval that is expected to hold most of what the true value could be.
///
/// U = k·u, in the unit of the standard `uncertainty`; k above zero, 2 where none is given. Source: JCGM 100:2008, 6.2.1;
/// the 2: NIST Technical Note 1297, 6.5 (clauses from memory).
///
/// # Errors
///
/// [`WrongKind`](ErrorKind::WrongKind); [`OutOfRange`](ErrorKind::OutOfRange).
///
/// ```
/// use brimline::{Amount, leak::expanded_uncertainty};
/// let expanded = expanded_uncertainty(Amount::parse("50 mL")?, None)?;
/// assert_eq!(expanded.to_string(), "100 mL");
/// # Ok::<(), brimline::Error>(())
/// ```
pub fn expanded_uncertainty(
    uncertainty: Amount,
    factor: impl Into<Option<Amount>>,
) -> Result<Amount, Error> {
    let doubt = from_zero("uncertainty", uncertainty, difference(uncertainty))?;
    let factor = factor
        .into()
        .map_or(Ok(2.0), |factor| above_zero("factor", factor, Unit::One))?;
    computed("uncertainty", factor * doubt, uncertainty.unit())
}

/// What the quantiles are told from and to.
const LEAST_SHARE: f64 = 0.000_000_001;
const MOST_SHARE: f64 = 0.999_999_999;

/// How many standard uncertainties a guard band is wide.
fn guard(probability: Amount) -> Result<f64, Error> {
    Ok(normal::quantile(share(probability, 0.5)?))
}

/// A probability that a quantile is asked of.
fn share(probability: Amount, least: f64) -> Result<f64, Error> {
    let share = number("probability", probability, Unit::One)?;
    if (least..=MOST_SHARE).contains(&share) {
        return Ok(share);
    }
    let fault = Fault::new(ErrorKind::OutOfRange)
        .at("probability")
        .got(&probability.to_string());
    let least = Amount::from_computed(least, Unit::One)?;
    Err(fault
        .allowed([format!("{least} to {MOST_SHARE} ratio")])
        .into())
}

fn probability_conflict(hint: &'static str) -> Error {
    Fault::new(ErrorKind::Conflict)
        .at("probability")
        .hint(hint)
        .into()
}

/// A probability as it is told.
pub(super) fn probability_of(value: f64) -> Result<Amount, Error> {
    Amount::from_computed(value.clamp(0.0, 1.0), Unit::One)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]

    use super::*;
    use crate::quantity::Rounding;
    use alloc::string::String;
    use alloc::vec::Vec;

    fn amount(text: &str) -> Amount {
        Amount::parse(text).unwrap()
    }

    /// As printed with so many decimals.
    fn printed(amount: Amount, places: u8) -> String {
        let rounded = amount.to(amount.unit(), places, Rounding::HalfEven);
        rounded.unwrap().number().to_string()
    }

    #[test]
    fn quantiles_of_jcgm_106_table_1() {
        // JCGM 106:2012, table 1 (from memory; a statistics library gives the same). 0.95 prints as 1.64, not the common
        // 1.645 and not 1.65.
        for (probability, z) in [
            ("0.80 ratio", "0.84"),
            ("0.90 ratio", "1.28"),
            ("95 %", "1.64"),
            ("99 %", "2.33"),
            ("99.9 %", "3.09"),
        ] {
            assert_eq!(printed(quantile(amount(probability)).unwrap(), 2), z);
        }
        for refused in ["0 %", "100 %", "-5 %", "0.00000009 %", "99.99999991 %"] {
            let error = quantile(amount(refused)).unwrap_err();
            assert_eq!(error.first().path, "probability");
            assert_eq!(
                error.first().allowed,
                ["0.000000001 ratio to 0.999999999 ratio"]
            );
        }
        for edge in ["0.000000001 ratio", "0.999999999 ratio"] {
            assert_eq!(
                printed(quantile(amount(edge)).unwrap(), 3).trim_start_matches('-'),
                "5.998"
            );
        }
    }

    #[test]
    fn conformance_of_jcgm_106() {
        // JCGM 106:2012, 7.4, both examples (from memory): 0.92 and 0.955; the resistor of clause 9: 0.9044.
        let below = conformance(
            amount("-5.47 ratio"),
            amount("0.05 ratio"),
            None,
            amount("-5.40 ratio"),
        );
        assert_eq!(printed(below.unwrap(), 5), "0.91924");
        let bottle = conformance(amount("507 mL"), amount("10 mL"), amount("490 mL"), None);
        assert_eq!(printed(bottle.unwrap(), 4), "0.9554");
        let resistor = conformance(
            amount("1500 ratio"),
            amount("0.12 ratio"),
            amount("1499.8 ratio"),
            amount("1500.2 ratio"),
        );
        assert_eq!(printed(resistor.unwrap(), 4), "0.9044");
    }

    #[test]
    fn guard_band_of_a_temperature_gate() {
        // 40 °C with a standard uncertainty of 1.0 K and 0.5 K at 95 %, from z = 1.6449: accepted from 41.64 and 40.82 °C.
        for (uncertainty, from) in [("1.0 Δ°C", "41.64"), ("0.5 Δ°C", "40.82")] {
            let band = guard_band(amount(uncertainty), amount("95 %")).unwrap();
            assert_eq!(printed(amount("40 °C").checked_add(band).unwrap(), 2), from);
        }
        let decide = |reading: &str, rule| {
            let (reading, limit) = (amount(reading), amount("40 °C"));
            against_limit(reading, amount("1 Δ°C"), limit, rule, amount("95 %"))
                .unwrap()
                .decision
        };
        assert_eq!(decide("41.7 °C", Rule::GuardedRejection), Decision::Above);
        assert_eq!(
            decide("41.6 °C", Rule::GuardedRejection),
            Decision::Undecided
        );
        assert_eq!(decide("39.9 °C", Rule::GuardedRejection), Decision::Below);
        assert_eq!(decide("40.1 °C", Rule::GuardedAcceptance), Decision::Above);
        assert_eq!(
            decide("38.4 °C", Rule::GuardedAcceptance),
            Decision::Undecided
        );
        assert_eq!(decide("38.3 °C", Rule::GuardedAcceptance), Decision::Below);
    }

    #[test]
    fn the_limit_itself_is_decided_exactly() {
        // Fourteen pours of a tenth of a quart are the limit and not above it.
        let found = amount("0.1 US qt").times(14).unwrap();
        let at = against_limit(
            found,
            amount("0.05 US qt"),
            amount("1.4 US qt"),
            Rule::SimpleAcceptance,
            None,
        )
        .unwrap();
        assert_eq!(at.decision, Decision::Below);
        assert_eq!(at.exceeds.to_string(), "0.5 ratio");
        assert_eq!(at.guard_band, None);
    }

    #[test]
    fn uncertainties_of_the_end_gauge() {
        // JCGM 100:2008, H.1 (parts seen in an open transcription, results from memory): in nm, 25, 9.7, 2.9 and 16.6 make
        // 32, the difference 5.8, 3.9 and 6.7 makes 9.7; k = 2.92 makes 93. Here 1 nm is 1 ratio.
        let sum = |parts: &[&str]| {
            let parts: Vec<Amount> = parts.iter().map(|part| amount(part)).collect();
            combined_uncertainty(&parts).unwrap()
        };
        let whole = sum(&["25 ratio", "9.7 ratio", "2.9 ratio", "16.6 ratio"]);
        assert_eq!(printed(whole, 0), "32");
        assert_eq!(
            printed(sum(&["5.8 ratio", "3.9 ratio", "6.7 ratio"]), 1),
            "9.7"
        );
        let expanded = expanded_uncertainty(amount("32 ratio"), amount("2.92 ratio"));
        assert_eq!(printed(expanded.unwrap(), 0), "93");
    }

    #[test]
    fn refusals_name_the_argument() {
        let one = amount("1 L");
        let ask = |uncertainty: &str, limit: &str, rule, probability: Option<&str>| {
            let error = against_limit(
                one,
                amount(uncertainty),
                amount(limit),
                rule,
                probability.map(amount),
            )
            .unwrap_err();
            (error.kind(), error.first().path.clone())
        };
        let simple = Rule::SimpleAcceptance;
        let guarded = Rule::GuardedAcceptance;
        for (answer, kind, path) in [
            (
                ask("1 mm", "1 L", simple, None),
                ErrorKind::WrongKind,
                "uncertainty",
            ),
            (
                ask("0 L", "1 L", simple, None),
                ErrorKind::OutOfRange,
                "uncertainty",
            ),
            (
                ask("1 L", "1 °C", simple, None),
                ErrorKind::WrongKind,
                "limit",
            ),
            (
                ask("1 L", "1 L", simple, Some("95 %")),
                ErrorKind::Conflict,
                "probability",
            ),
            (
                ask("1 L", "1 L", guarded, None),
                ErrorKind::Conflict,
                "probability",
            ),
            (
                ask("1 L", "1 L", guarded, Some("49 %")),
                ErrorKind::OutOfRange,
                "probability",
            ),
            (
                ask("1 L", "1 L", guarded, Some("1 L")),
                ErrorKind::WrongKind,
                "probability",
            ),
        ] {
            assert_eq!(answer, (kind, path.to_string()));
        }
        let none = conformance(one, one, None, None).unwrap_err();
        assert_eq!(none.kind(), ErrorKind::Conflict);
        let crossed = conformance(one, one, amount("2 L"), amount("1 L")).unwrap_err();
        assert_eq!(crossed.first().path, "upper");
        let cold = [amount("1 °C")];
        assert_eq!(
            combined_uncertainty(&cold).unwrap_err().first().path,
            "parts[0]"
        );
        assert_eq!(combined_uncertainty(&[]).unwrap_err().first().path, "parts");
    }
}
