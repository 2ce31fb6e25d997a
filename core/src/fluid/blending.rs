//! The viscosity of a blend.

use super::viscosity::{ln_ln, of_ln_ln};
use super::{VISCOSITIES, named, told, viscosity};
use crate::error::{Error, ErrorKind, Fault};
use crate::quantity::{Amount, Unit};
use crate::word::words;
use alloc::format;

/// How far the shares of a blend may be from one together, in counts of a ratio: 10⁻⁹.
const SHARES_OFF: i128 = 100;

words! {
    /// The rule a blend is reckoned by, which also says what the shares are shares of.
    pub enum BlendRule {
        /// Blending number 14.534·ln ln(v + 0.8) + 10.975, natural logarithms, shares by mass.
        RefutasMass = "refutas_mass",
        /// The double logarithm of Z with the Z of ASTM D341, shares by volume.
        WaltherVolume = "walther_volume",
    }
}

impl BlendRule {
    /// What adds up by shares, of a viscosity in mm²/s.
    fn blending_number(self, viscosity: f64) -> f64 {
        match self {
            BlendRule::RefutasMass => 14.534 * libm::log(libm::log(viscosity + 0.8)) + 10.975,
            BlendRule::WaltherVolume => ln_ln(viscosity),
        }
    }

    /// The viscosity in mm²/s of a blending number.
    fn viscosity(self, number: f64) -> f64 {
        match self {
            BlendRule::RefutasMass => libm::exp(libm::exp((number - 10.975) / 14.534)) - 0.8,
            BlendRule::WaltherVolume => of_ln_ln(number),
        }
    }
}

/// One part of a blend.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Component {
    /// Its viscosity at the temperature of the blend, 0.21 to 2·10⁷ mm²/s.
    pub viscosity: Amount,
    /// Its share of the blend, 0 to 1: by mass or by volume, as the rule says.
    pub share: Amount,
}

/// The viscosity of a blend, in mm²/s, at the temperature at which those of its parts hold.
///
/// The shares are 0 to 1 and are 1 together, within 10⁻⁹. Neither rule knows of polymers that thicken an oil. Source:
/// Maples, Petroleum Refinery Process Economics (2000), for the first rule; ASTM D7152 for the second, from memory.
///
/// # Errors
///
/// [`WrongKind`](ErrorKind::WrongKind); [`OutOfRange`](ErrorKind::OutOfRange) outside those spans, and for shares that are not 1
/// together.
///
/// ```
/// use brimline::{Amount, fluid::{BlendRule, Component, blend}};
/// let part = |viscosity, share| {
///     Ok::<_, brimline::Error>(Component { viscosity: Amount::parse(viscosity)?, share: Amount::parse(share)? })
/// };
/// let parts = [part("5 mm²/s", "60 %")?, part("20 mm²/s", "40 %")?];
/// let blended = blend(&parts, BlendRule::RefutasMass)?;
/// assert_eq!(format!("{:.5}", blended.to_f64()), "8.10855");
/// # Ok::<(), brimline::Error>(())
/// ```
pub fn blend(parts: &[Component], rule: BlendRule) -> Result<Amount, Error> {
    let one = Amount::new(1, 0, Unit::One)?.count().unwrap_or_default();
    let (mut shares, mut counted, mut sum) = (0.0, 0_i128, 0.0);
    for (index, part) in parts.iter().enumerate() {
        let here = |error: Error, member: &str| {
            Error::from(error.first().clone().at(format!("parts[{index}].{member}")))
        };
        let number = viscosity(part.viscosity, &VISCOSITIES, "")
            .map_err(|error| here(error, "viscosity"))?;
        let share = part.share.ratio().map_err(|error| here(error, "share"))?;
        if !(0.0..=1.0).contains(&share.value) {
            let fault = Fault::new(ErrorKind::OutOfRange).got(&format!("{}", part.share));
            return Err(here(fault.allowed(["0 to 1"]).into(), "share"));
        }
        shares += share.value;
        counted = counted.saturating_add(part.share.count().unwrap_or(i128::MAX));
        sum += share.value * rule.blending_number(number);
    }
    if counted.abs_diff(one) > SHARES_OFF.unsigned_abs() {
        let fault = Fault::new(ErrorKind::OutOfRange).at("parts");
        let hint = "the shares of all parts are 1, or 100 %, together";
        let got = Amount::from_computed(shares, Unit::One).map(|sum| format!("{sum}"));
        return Err(fault.got(&got.unwrap_or_default()).hint(hint).into());
    }
    named("parts", told(rule.viscosity(sum / shares)))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]

    use super::*;
    use crate::quantity::Kind;

    fn component(viscosity: &str, share: &str) -> Component {
        let share = Amount::parse_as(share, Kind::Ratio, None);
        Component {
            viscosity: Amount::parse(viscosity).unwrap(),
            share: share.unwrap(),
        }
    }

    #[test]
    fn five_and_twenty() {
        // The formula of Maples (2000); 60 % of 5 mm²/s and 40 % of 20 mm²/s computed from it. With log10 in place of ln
        // the blending number of 5 mm²/s would be 9.27.
        let rule = BlendRule::RefutasMass;
        assert!((rule.blending_number(5.0) - 19.173571).abs() < 1e-6);
        assert!((rule.blending_number(20.0) - 27.110588).abs() < 1e-6);
        let parts = [component("5 mm²/s", "0.6"), component("20 mm²/s", "40 %")];
        assert!((blend(&parts, rule).unwrap().to_f64() - 8.10855).abs() < 1e-5);
        // From memory, computed from the formula.
        let other = blend(&parts, BlendRule::WaltherVolume).unwrap();
        assert!((other.to_f64() - 8.0813).abs() < 5e-5);
    }

    #[test]
    fn one_oil_blends_to_itself() {
        for (_, rule) in BlendRule::WORDS {
            for viscosity in ["0.21 mm²/s", "0.9 mm²/s", "5 mm²/s", "680 mm²/s"] {
                let parts = [component(viscosity, "0.25"), component(viscosity, "0.75")];
                let blended = blend(&parts, *rule).unwrap().to_f64();
                let own = parts[0].viscosity.to_f64();
                assert!(
                    (blended - own).abs() <= 1e-9 * own.max(1.0),
                    "{blended} for {own}"
                );
            }
        }
        // Thirds that end: 0.999999999 together.
        let thirds = [component("5 mm²/s", "0.333333333"); 3];
        assert!(blend(&thirds, BlendRule::RefutasMass).is_ok());
    }

    #[test]
    fn refused_with_the_place() {
        let litre = Component {
            viscosity: Amount::parse("20 mm²/s").unwrap(),
            share: Amount::parse("1 L").unwrap(),
        };
        let (half, rule) = (component("5 mm²/s", "0.5"), BlendRule::RefutasMass);
        for (second, kind, path) in [
            (
                component("20 mm²/s", "0.499999998"),
                ErrorKind::OutOfRange,
                "parts",
            ),
            (
                component("20 mm²/s", "-0.5"),
                ErrorKind::OutOfRange,
                "parts[1].share",
            ),
            (
                component("20 mm²/s", "1.5"),
                ErrorKind::OutOfRange,
                "parts[1].share",
            ),
            (
                component("0.2 mm²/s", "0.5"),
                ErrorKind::OutOfRange,
                "parts[1].viscosity",
            ),
            (litre, ErrorKind::WrongKind, "parts[1].share"),
            (
                component("20 L", "50 %"),
                ErrorKind::WrongKind,
                "parts[1].viscosity",
            ),
        ] {
            let error = blend(&[half, second], rule).unwrap_err();
            assert_eq!((error.kind(), &*error.first().path), (kind, path));
        }
        assert_eq!(blend(&[], rule).unwrap_err().first().path, "parts");
    }
}
