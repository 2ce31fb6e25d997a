//! How much a fluid takes up at another temperature, by the lubricating-oil group or by a plain coefficient.

use super::{above_zero, computed, from_zero, out_of_range, si, times};
use crate::error::Error;
use crate::quantity::{Amount, Kind, Unit};
use crate::word::words;

words! {
    /// The temperature to which a density and a correction factor refer, and the procedure that reckons it.
    #[derive(Default)]
    pub enum Base {
        /// 15 °C, the SI form of 1980 (table 54D).
        #[default]
        At15C = "base_15c",
        /// 60 °F, the form of 1980 (table 6D).
        At60F = "base_60f",
        /// 60 °F by the procedure of 2004, the factor rounded to five decimals.
        At60F2004 = "base_60f_2004",
        /// 15 °C by way of 60 °F, by the procedure of 2004, the factor rounded to five decimals.
        At15C2004 = "base_15c_2004",
    }
}

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

/// Densities of the group, kg/m³; API MPMS 11.1.
const GROUP: (f64, f64) = (800.9, 1163.5);
/// Temperatures of the group, K: -50 °C to 150 °C; API MPMS 11.1.
const TEMPERATURES: (f64, f64) = (223.15, 423.15);
/// The largest coefficient that is still one of a liquid in a gearbox, about twice that of petrol; common practice, no source.
const LARGEST_COEFFICIENT: f64 = 0.002;
/// What is lost in the print of a density, kg/m³.
const PRINTED: f64 = 1e-6;

/// K1 of the group per °F, kg/m³; K0 and K2 are zero.
const K1_PER_F: f64 = 0.34878;
/// K1 of the group per °C, kg/m³, as the SI tables print it; 1.8 · 0.34878 is 0.627804.
const K1_PER_C: f64 = 0.6278;
const ZERO_C: f64 = 273.15;
const AT_15C: f64 = 288.15;
const AT_60F: f64 = 459.67 / 1.8 + 60.0 / 1.8;

/// IPTS-68 against ITS-90, by powers of t/630 °C from the first on; API MPMS 11.1-2004, from memory.
const SCALE_SHIFT: [f64; 8] = [
    -0.148759, -0.267408, 1.080760, 1.269056, -4.089591, -1.871251, 7.438081, -3.536296,
];
/// 60 °F on IPTS-68; from memory.
const SHIFTED_60F: f64 = 60.0068749;
/// What the base of the constants lies off 60 °F, Δ°F; from memory.
const D60: f64 = 0.01374979547;

impl Base {
    /// The factor from a volume at a temperature, K, to the base, unrounded.
    fn factor(self, density: f64, kelvin: f64) -> f64 {
        match self {
            Base::At15C => factor_1980(K1_PER_C / density * (kelvin - AT_15C)),
            Base::At60F => factor_1980(K1_PER_F / density * (kelvin - AT_60F) * 1.8),
            Base::At60F2004 => factor_2004(density, kelvin),
            Base::At15C2004 => {
                // The constants are those of 60 °F, and so is the density they want.
                let at_60f = Base::At60F2004.base_density(density, AT_15C);
                factor_2004(at_60f, kelvin) / factor_2004(at_60f, AT_15C)
            }
        }
    }

    /// The factor as its procedure gives it.
    fn rounded_factor(self, density: f64, kelvin: f64) -> f64 {
        let factor = self.factor(density, kelvin);
        match self {
            Base::At15C | Base::At60F => factor,
            Base::At60F2004 | Base::At15C2004 => libm::rint(factor * 1e5) / 1e5,
        }
    }

    /// The density at the base of what has a density at a temperature, by Newton's method.
    fn base_density(self, density: f64, kelvin: f64) -> f64 {
        let mut at_base = density;
        for _ in 0..12 {
            let factor = self.factor(at_base, kelvin);
            // The forms differ too little to matter to the slope.
            let part = K1_PER_C / at_base * (kelvin - AT_15C);
            let slope = factor * (1.0 + part * (1.0 + 1.6 * part));
            let step = (at_base * factor - density) / slope;
            at_base -= step;
            if step.abs() < 1e-12 * density {
                break;
            }
        }
        at_base
    }
}

fn factor_1980(part: f64) -> f64 {
    libm::exp(-part * (1.0 + 0.8 * part))
}

fn factor_2004(density: f64, kelvin: f64) -> f64 {
    let celsius = kelvin - ZERO_C;
    let scaled = celsius / 630.0;
    let shift = SCALE_SHIFT
        .iter()
        .rev()
        .fold(0.0, |sum, term| (sum + term) * scaled);
    let fahrenheit = (celsius - shift) * 1.8 + 32.0;
    // With K0 and K2 zero the density is moved to the base of the constants by one exponential.
    let half = D60 / 2.0 * K1_PER_F / density;
    let moved = libm::expm1(half * (1.0 + 0.8 * half)) / (1.0 + half * (1.0 + 1.6 * half));
    let a60 = K1_PER_F / (density * (1.0 + moved));
    let over = fahrenheit - SHIFTED_60F;
    libm::exp(-a60 * over * (1.0 + 0.8 * a60 * (over + D60)))
}

fn group_density(density: Amount) -> Result<f64, Error> {
    let value = si("density", density, Kind::Density)?;
    if (GROUP.0..=GROUP.1).contains(&value) {
        return Ok(value);
    }
    let hint = "the constants are those of lubricating oil; for another fluid give its coefficient";
    let fault = out_of_range("density", density).allowed(["800.9 to 1163.5 kg/m³"]);
    Err(fault.hint(hint).into())
}

fn temperature_of(name: &'static str, temperature: Amount) -> Result<f64, Error> {
    let kelvin = si(name, temperature, Kind::Temperature)?;
    if (TEMPERATURES.0..=TEMPERATURES.1).contains(&kelvin) {
        return Ok(kelvin);
    }
    let fault = out_of_range(name, temperature).allowed(["-50 to 150 °C"]);
    Err(fault.into())
}

impl Expansion {
    /// What a volume grows to between two temperatures, K, as a multiple of itself.
    fn growth(self, from: f64, to: f64) -> Result<f64, Error> {
        match self {
            Expansion::Oil { density, base } => {
                let density = group_density(density)?;
                Ok(base.rounded_factor(density, from) / base.rounded_factor(density, to))
            }
            Expansion::Coefficient(coefficient) => {
                let value = above_zero("coefficient", coefficient, Kind::Expansion)?;
                if value > LARGEST_COEFFICIENT {
                    let fault = out_of_range("coefficient", coefficient);
                    return Err(fault.allowed(["at most 0.002 per K"]).into());
                }
                Ok(1.0 + value * (to - from))
            }
        }
    }
}

/// The factor from a volume at a temperature to the volume at the base: V at the base = V · factor.
///
/// `density` at the base, 800.9 to 1163.5 kg/m³; `temperature` -50 °C to 150 °C. A ratio of nine decimals, of five by the
/// procedure of 2004.
///
/// Source: API MPMS 11.1 / ASTM D1250, lubricating-oil group: exp(-a·Δt·(1 + 0.8·a·Δt)) with a = K1/density, in the forms
/// of 1980 with K1 0.6278 kg/m³ per °C from 15 °C, or 0.34878 kg/m³ per °F from 60 °F: the constant of the one scale must
/// not meet the degrees of the other. The procedure of 2004 (clause 11.1.6.1: shift of the temperature scale by a polynomial
/// of eight terms, base of the constants, rounding) is implemented from memory; it differs by 2·10⁻⁵ at most in what a
/// gearbox sees. Its 15 °C base goes by way of 60 °F.
///
/// # Errors
///
/// [`WrongKind`](crate::ErrorKind::WrongKind), [`OutOfRange`](crate::ErrorKind::OutOfRange).
///
/// ```
/// use brimline::{Amount, volume::{Base, correction_factor}};
/// let [density, hot] = ["850 kg/m³", "40 °C"].map(Amount::parse);
/// let factor = correction_factor(density?, hot?, Base::At15C)?;
/// // The form of table 54D gives 0.981437.
/// assert_eq!(format!("{:.6}", factor.si()), "0.981437");
/// # Ok::<(), brimline::Error>(())
/// ```
pub fn correction_factor(
    density: Amount,
    temperature: Amount,
    base: Base,
) -> Result<Amount, Error> {
    let kelvin = temperature_of("temperature", temperature)?;
    let factor = base.rounded_factor(group_density(density)?, kelvin);
    computed("temperature", factor, Unit::One)
}

/// What a volume at one temperature becomes at another, in its own unit.
///
/// `volume` zero and above; temperatures -50 °C to 150 °C. By a coefficient the growth is linear from `from`, so the way
/// back with the same coefficient ends a little off.
///
/// Source: as [`correction_factor`]; the coefficient is common practice, no source (about 0.00075 per K for gearbox fluids).
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
    from_zero("volume", volume, Kind::Volume)?;
    let (from, to) = (temperature_of("from", from)?, temperature_of("to", to)?);
    times("volume", volume, expansion.growth(from, to)?)
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
    from_zero("volume", volume, Kind::Volume)?;
    let read_at = temperature_of("read_at", read_at)?;
    let reference = temperature_of("reference", reference)?;
    times(
        "volume",
        volume,
        expansion.growth(reference, read_at)? - 1.0,
    )
}

/// The density at the base of a fluid whose density was observed at a temperature, in the unit it was given in.
///
/// `temperature` -50 °C to 150 °C; what comes out must be of the group, 800.9 to 1163.5 kg/m³. By the procedure of 2004 the
/// factor is not rounded within the search.
///
/// Source: as [`correction_factor`].
///
/// # Errors
///
/// [`WrongKind`](crate::ErrorKind::WrongKind), [`OutOfRange`](crate::ErrorKind::OutOfRange).
///
/// ```
/// use brimline::{Amount, volume::{Base, base_density}};
/// let [observed, at] = ["834.2214 kg/m³", "40 °C"].map(Amount::parse);
/// let density = base_density(observed?, at?, Base::At15C)?;
/// // 850 · 0.981437, by the form of table 54D.
/// assert_eq!(format!("{:.3}", density.to_f64()), "850.000");
/// # Ok::<(), brimline::Error>(())
/// ```
pub fn base_density(density: Amount, temperature: Amount, base: Base) -> Result<Amount, Error> {
    let observed = above_zero("density", density, Kind::Density)?;
    let kelvin = temperature_of("temperature", temperature)?;
    let at_base = base.base_density(observed, kelvin);
    if !(GROUP.0 - PRINTED..=GROUP.1 + PRINTED).contains(&at_base) {
        let fault = out_of_range("density", density).allowed(["800.9 to 1163.5 kg/m³ at the base"]);
        let hint = "at the base this is no lubricating oil: read density and temperature again";
        return Err(fault.hint(hint).into());
    }
    computed("density", at_base.clamp(GROUP.0, GROUP.1), density.unit())
}

/// The density at a temperature of a fluid whose density at the base is known, in the unit it was given in.
///
/// `density` at the base, 800.9 to 1163.5 kg/m³; `temperature` -50 °C to 150 °C.
///
/// Source: as [`correction_factor`].
///
/// # Errors
///
/// [`WrongKind`](crate::ErrorKind::WrongKind), [`OutOfRange`](crate::ErrorKind::OutOfRange).
///
/// ```
/// use brimline::{Amount, volume::{Base, density_at}};
/// let [density, at] = ["850 kg/m³", "40 °C"].map(Amount::parse);
/// let hot = density_at(density?, at?, Base::At15C)?;
/// // 850 · 0.981437, by the form of table 54D.
/// assert_eq!(format!("{:.2}", hot.to_f64()), "834.22");
/// # Ok::<(), brimline::Error>(())
/// ```
pub fn density_at(density: Amount, temperature: Amount, base: Base) -> Result<Amount, Error> {
    let kelvin = temperature_of("temperature", temperature)?;
    let factor = base.rounded_factor(group_density(density)?, kelvin);
    times("density", density, factor)
}

/// The mass of a volume at a temperature, in kg.
///
/// `volume` zero and above; `temperature` -50 °C to 150 °C; `density` at the base, 800.9 to 1163.5 kg/m³.
///
/// Source: as [`correction_factor`].
///
/// # Errors
///
/// [`WrongKind`](crate::ErrorKind::WrongKind), [`OutOfRange`](crate::ErrorKind::OutOfRange).
///
/// ```
/// use brimline::{Amount, volume::{Base, mass}};
/// let [volume, at, density] = ["7 L", "15 °C", "850 kg/m³"].map(Amount::parse);
/// assert_eq!(mass(volume?, at?, density?, Base::At15C)?.to_string(), "5.95 kg");
/// # Ok::<(), brimline::Error>(())
/// ```
pub fn mass(
    volume: Amount,
    temperature: Amount,
    density: Amount,
    base: Base,
) -> Result<Amount, Error> {
    let held = from_zero("volume", volume, Kind::Volume)?;
    let hot = hot_density(density, temperature, base)?;
    computed("volume", held * hot, Unit::Kilogram)
}

/// The volume a mass takes up at a temperature, in L.
///
/// `mass` zero and above; `temperature` -50 °C to 150 °C; `density` at the base, 800.9 to 1163.5 kg/m³.
///
/// Source: as [`correction_factor`].
///
/// # Errors
///
/// [`WrongKind`](crate::ErrorKind::WrongKind), [`OutOfRange`](crate::ErrorKind::OutOfRange).
///
/// ```
/// use brimline::{Amount, volume::{Base, volume_of_mass}};
/// let [mass, at, density] = ["420 g", "15 °C", "840 kg/m³"].map(Amount::parse);
/// assert_eq!(volume_of_mass(mass?, at?, density?, Base::At15C)?.to_string(), "0.5 L");
/// # Ok::<(), brimline::Error>(())
/// ```
pub fn volume_of_mass(
    mass: Amount,
    temperature: Amount,
    density: Amount,
    base: Base,
) -> Result<Amount, Error> {
    let held = from_zero("mass", mass, Kind::Mass)?;
    let hot = hot_density(density, temperature, base)?;
    computed("mass", held / hot, Unit::Litre)
}

fn hot_density(density: Amount, temperature: Amount, base: Base) -> Result<f64, Error> {
    let kelvin = temperature_of("temperature", temperature)?;
    let at_base = group_density(density)?;
    Ok(at_base * base.rounded_factor(at_base, kelvin))
}
