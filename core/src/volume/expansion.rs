//! How much a fluid takes up at another temperature, by the lubricating-oil group or by a plain coefficient.

use super::density::{Base, celsius, group_density};
use super::{above_zero, computed, from_zero, of_kind, out_of_range};
use crate::error::{Error, ErrorKind, Fault};
use crate::quantity::{Amount, Kind, Unit};

/// How a fluid expands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Expansion {
    /// As the lubricating-oil group, by its density at the base.
    Oil {
        /// Density at the base, 800.9 to 1163.5 kg/m³.
        density: Amount,
        /// Where that density holds.
        base: Base,
    },
    /// By a plain coefficient, of the volume at the temperature one starts from: above zero, at most 0.002 per K.
    Coefficient(Amount),
}

/// The largest coefficient that is still one of a liquid in a gearbox, about twice that of petrol, per K; common practice,
/// no source.
const LARGEST_COEFFICIENT: f64 = 0.002;

impl Expansion {
    /// By a density with its base, 15 °C where none is named, or by a coefficient alone.
    ///
    /// # Errors
    ///
    /// [`Conflict`](ErrorKind::Conflict) for both, for neither, and for a coefficient with a base.
    ///
    /// ```
    /// use brimline::{Amount, volume::{Base, Expansion}};
    /// let density = Amount::parse("850 kg/m³")?;
    /// let oil = Expansion::Oil { density, base: Base::At15C };
    /// assert_eq!(Expansion::of(Some(density), None, None)?, oil);
    /// assert!(Expansion::of(None, None, None).is_err());
    /// # Ok::<(), brimline::Error>(())
    /// ```
    pub fn of(
        density: Option<Amount>,
        base: Option<Base>,
        coefficient: Option<Amount>,
    ) -> Result<Self, Error> {
        let got = match (density, coefficient, base) {
            (Some(density), None, base) => {
                let base = base.unwrap_or_default();
                return Ok(Expansion::Oil { density, base });
            }
            (None, Some(coefficient), None) => return Ok(Expansion::Coefficient(coefficient)),
            (None, Some(_), Some(_)) => "coefficient with base",
            (Some(_), Some(_), _) => "both",
            (None, None, _) => "neither",
        };
        let hint = "give the density with its base, or the coefficient alone";
        let fault = Fault::new(ErrorKind::Conflict).at("density").got(got);
        Err(fault.allowed(["density", "coefficient"]).hint(hint).into())
    }

    /// What a volume grows to between two temperatures, °C, as a multiple of itself.
    fn growth(self, from: f64, to: f64) -> Result<f64, Error> {
        match self {
            Expansion::Oil { density, base } => {
                let density = group_density(density)?;
                Ok(base.factor(density, from) / base.factor(density, to))
            }
            Expansion::Coefficient(coefficient) => {
                let value = above_zero("coefficient", coefficient, Unit::PerKelvin)?;
                if value > LARGEST_COEFFICIENT {
                    let fault = out_of_range("coefficient", coefficient);
                    return Err(fault.allowed(["at most 0.002 per K"]).into());
                }
                Ok(1.0 + value * (to - from))
            }
        }
    }
}

/// What a volume at one temperature becomes at another, in its own unit.
///
/// `volume` zero and above; temperatures -50 °C to 150 °C. By a coefficient the growth is linear from `from`, so the way
/// back with the same coefficient ends a little off.
///
/// Source: as [`correction_factor`](super::correction_factor); the coefficient is common practice, no source (about 0.00075 per K for gearbox fluids).
///
/// # Errors
///
/// [`WrongKind`](crate::ErrorKind::WrongKind), [`OutOfRange`](crate::ErrorKind::OutOfRange).
///
/// ```
/// use brimline::{Amount, volume::{Expansion, at_temperature}};
/// let [cold, from, to, coefficient] = ["100 L", "20 °C", "40 °C", "0.0007 per K"].map(Amount::parse);
/// let warm = at_temperature(cold?, from?, to?, Expansion::Coefficient(coefficient?))?;
/// // An engineering reference page: 100 L of oil gain 1.4 L.
/// assert_eq!(warm.to_string(), "101.4 L");
/// # Ok::<(), brimline::Error>(())
/// ```
pub fn at_temperature(
    volume: Amount,
    from: Amount,
    to: Amount,
    expansion: Expansion,
) -> Result<Amount, Error> {
    let held = own_number(volume)?;
    let (from, to) = (celsius("from", from)?, celsius("to", to)?);
    computed("volume", held * expansion.growth(from, to)?, volume.unit())
}

/// How much more the fluid takes up at the temperature it is read at than at the reference; below zero where it is colder.
///
/// `volume` is what the unit holds at the reference, zero and above; temperatures -50 °C to 150 °C. It tells by how much a
/// level deceives; no sheet is corrected by it that does not say so itself. In the unit of `volume`.
///
/// Source: as [`at_temperature`].
///
/// # Errors
///
/// [`WrongKind`](crate::ErrorKind::WrongKind), [`OutOfRange`](crate::ErrorKind::OutOfRange).
///
/// ```
/// use brimline::{Amount, volume::{Base, Expansion, temperature_error}};
/// let [held, read_at, reference, density] = ["7 L", "40 °C", "20 °C", "850 kg/m³"].map(Amount::parse);
/// let oil = Expansion::Oil { density: density?, base: Base::At15C };
/// let error = temperature_error(held?, read_at?, reference?, oil)?;
/// // By the form of table 54D: 0.106 L.
/// assert_eq!(format!("{:.3}", error.to_f64()), "0.106");
/// # Ok::<(), brimline::Error>(())
/// ```
pub fn temperature_error(
    volume: Amount,
    read_at: Amount,
    reference: Amount,
    expansion: Expansion,
) -> Result<Amount, Error> {
    let held = own_number(volume)?;
    let read_at = celsius("read_at", read_at)?;
    let reference = celsius("reference", reference)?;
    let more = expansion.growth(reference, read_at)? - 1.0;
    computed("volume", held * more, volume.unit())
}

/// The number of a volume of zero and above, in its own unit.
fn own_number(volume: Amount) -> Result<f64, Error> {
    of_kind("volume", volume, Kind::Volume)?;
    from_zero("volume", volume, volume.unit())
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]

    use super::*;
    use alloc::string::String;

    fn amount(text: &str) -> Amount {
        Amount::parse(text).unwrap()
    }

    fn near(got: f64, wanted: f64, within: f64) {
        assert!((got - wanted).abs() <= within, "{got} for {wanted}");
    }

    fn refused(answer: Result<Amount, Error>) -> (ErrorKind, String) {
        let error = answer.unwrap_err();
        (error.kind(), error.first().path.clone())
    }

    #[test]
    fn a_volume_grows_with_the_temperature_and_not_against_it() {
        let oil = Expansion::Oil {
            density: amount("850 kg/m³"),
            base: Base::At15C,
        };
        let at = |volume, from, to, expansion| {
            at_temperature(amount(volume), amount(from), amount(to), expansion)
                .unwrap()
                .to_f64()
        };
        // From the factors above: 7 L at 20 °C are 7.106 L at 40 °C, 7.331 L at 80 °C; at 15 °C 7 · 0.981437 of hot litres.
        near(at("7 L", "20 °C", "40 °C", oil), 7.10603, 5e-6);
        near(at("7 L", "20 °C", "80 °C", oil), 7.331, 5e-4);
        near(at("7 L", "40 °C", "15 °C", oil), 6.870059, 1e-6 * 7.0);
        near(at("7 US qt", "68 °F", "104 °F", oil), 7.10603, 5e-6);
        // An engineering reference page: 100 L at 0.0007 per °C gain 1.4 L on 20 °C.
        let plain = Expansion::Coefficient(amount("0.0007 per K"));
        near(at("100 L", "20 °C", "40 °C", plain), 101.4, 1e-9);
        let plain = Expansion::Coefficient(amount("0.0007 per °F"));
        near(at("100 L", "68 °F", "104 °F", plain), 102.52, 1e-9);
        let error = |read_at, reference| {
            let [read_at, reference] = [read_at, reference].map(amount);
            temperature_error(amount("7 L"), read_at, reference, oil).unwrap()
        };
        near(error("40 °C", "20 °C").to_f64(), 0.10603, 5e-6);
        assert!(error("20 °C", "40 °C").is_negative());
        assert!(error("40 °C", "104 °F").is_zero());
    }

    #[test]
    fn what_is_outside_is_refused() {
        let [held, warm, oil] = ["7 L", "40 °C", "850 kg/m³"].map(amount);
        let out = |path: &str| (ErrorKind::OutOfRange, path.into());
        for coefficient in ["0 per K", "-0.0007 per K", "0.0021 per K", "0.0007 per K"] {
            let by = Expansion::Coefficient(amount(coefficient));
            let answer = at_temperature(held, warm, amount("80 °C"), by);
            assert_eq!(answer.is_ok(), coefficient == "0.0007 per K");
        }
        let by = Expansion::Oil {
            density: oil,
            base: Base::At15C,
        };
        assert_eq!(
            refused(at_temperature(amount("-7 L"), warm, warm, by)),
            out("volume")
        );
        let kind = (ErrorKind::WrongKind, String::from("volume"));
        assert_eq!(
            refused(at_temperature(amount("7 kg"), warm, warm, by)),
            kind
        );
    }
}
