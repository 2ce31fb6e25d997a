//! The lubricating-oil group: its correction factors and densities by temperature, its masses.

use super::{above_zero, computed, from_zero, number, out_of_range};
use crate::error::Error;
use crate::quantity::{Amount, Unit, convert};
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

/// Densities of the group, kg/m³; API MPMS 11.1.
const GROUP: (f64, f64) = (800.9, 1163.5);
/// Temperatures of the group, °C; API MPMS 11.1.
const TEMPERATURES: (f64, f64) = (-50.0, 150.0);
/// What is lost to a density by a factor of five decimals, kg/m³.
const ROUNDED: f64 = 0.01;

/// K1 of the group per °F, kg/m³; K0 and K2 are zero.
const K1_PER_F: f64 = 0.34878;
/// K1 of the group per °C, kg/m³, as the SI tables print it; 1.8 · 0.34878 is 0.627804.
const K1_PER_C: f64 = 0.6278;
/// 60 °F, °C.
const AT_60F: f64 = 140.0 / 9.0;

/// IPTS-68 against ITS-90, by powers of t/630 °C from the first on; API MPMS 11.1-2004, from memory.
const SCALE_SHIFT: [f64; 8] = [
    -0.148759, -0.267408, 1.080760, 1.269056, -4.089591, -1.871251, 7.438081, -3.536296,
];
/// The base of the 2004 constants on IPTS-68, °F; from memory.
const SHIFTED_60F: f64 = 60.0068749;
/// How far that base lies off 60 °F, Δ°F; from memory.
const D60: f64 = 0.01374979547;

impl Base {
    /// How far a temperature, °C, is above the base, in the degrees of its constant.
    fn degrees(self, celsius: f64) -> f64 {
        match self {
            Base::At15C => celsius - 15.0,
            Base::At60F => (celsius - AT_60F) * 1.8,
            Base::At60F2004 | Base::At15C2004 => {
                let scaled = celsius / 630.0;
                let terms = SCALE_SHIFT.iter().rev();
                let shift = terms.fold(0.0, |sum, term| (sum + term) * scaled);
                (celsius - shift) * 1.8 + 32.0 - SHIFTED_60F
            }
        }
    }

    /// The logarithm of the factor to the base from a temperature so many degrees above it.
    fn exponent(self, density: f64, degrees: f64) -> f64 {
        let (a, d60) = match self {
            Base::At15C => (K1_PER_C / density, 0.0),
            Base::At60F => (K1_PER_F / density, 0.0),
            Base::At60F2004 | Base::At15C2004 => {
                // With K0 and K2 zero, the density at the base of the constants; exp(x) - 1 is x + x²/2 to the last digit.
                let half = D60 / 2.0 * K1_PER_F / density;
                let x = half * (1.0 + 0.8 * half);
                let more = x * (1.0 + x / 2.0) / (1.0 + half * (1.0 + 1.6 * half));
                (K1_PER_F / (density * (1.0 + more)), D60)
            }
        };
        -a * degrees * (1.0 + 0.8 * a * (degrees + d60))
    }

    /// The factor from a volume at a temperature, °C, to the base, as its procedure gives it.
    pub(super) fn factor(self, density: f64, celsius: f64) -> f64 {
        let degrees = self.degrees(celsius);
        let exponent = match self {
            Base::At15C | Base::At60F => return libm::exp(self.exponent(density, degrees)),
            Base::At60F2004 => self.exponent(density, degrees),
            Base::At15C2004 => self.exponent_from_15c(density, degrees),
        };
        libm::rint(libm::exp(exponent) * 1e5) / 1e5
    }

    /// The same logarithm where the density is that at 15 °C, and the constants want it at 60 °F.
    fn exponent_from_15c(self, density: f64, degrees: f64) -> f64 {
        let at_15c = self.degrees(15.0);
        let at_60f = observed(density, |at_60f| self.exponent(at_60f, at_15c));
        self.exponent(at_60f, degrees) - self.exponent(at_60f, at_15c)
    }

    /// The density at the base of what has a density at a temperature, °C.
    fn base_density(self, density: f64, celsius: f64) -> f64 {
        let degrees = self.degrees(celsius);
        observed(density, |at_base| match self {
            Base::At15C2004 => self.exponent_from_15c(at_base, degrees),
            _ => self.exponent(at_base, degrees),
        })
    }
}

/// The density at the base of what was observed elsewhere: where its logarithm and that of its factor come to that of the
/// observed, by Newton's method.
fn observed(density: f64, exponent: impl Fn(f64) -> f64) -> f64 {
    let mut at_base = density;
    for _ in 0..12 {
        let exponent = exponent(at_base);
        let wanted = density * libm::exp(-exponent);
        // How the exponent goes with the density, to its third power.
        let step = (wanted - at_base) / (1.0 - exponent * (1.0 - 0.8 * exponent));
        at_base += step;
        if step.abs() < 1e-8 * density {
            break;
        }
    }
    at_base
}

pub(super) fn group_density(density: Amount) -> Result<f64, Error> {
    let value = number("density", density, Unit::KilogramPerCubicMetre)?;
    if (GROUP.0..=GROUP.1).contains(&value) {
        return Ok(value);
    }
    let hint = "the constants are those of lubricating oil; for another fluid give its coefficient";
    let fault = out_of_range("density", density).allowed(["800.9 to 1163.5 kg/m³"]);
    Err(fault.hint(hint).into())
}

pub(super) fn celsius(name: &'static str, temperature: Amount) -> Result<f64, Error> {
    let celsius = number(name, temperature, Unit::DegreeCelsius)?;
    if (TEMPERATURES.0..=TEMPERATURES.1).contains(&celsius) {
        return Ok(celsius);
    }
    let fault = out_of_range(name, temperature).allowed(["-50 to 150 °C"]);
    Err(fault.into())
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
    let at = celsius("temperature", temperature)?;
    let factor = base.factor(group_density(density)?, at);
    computed("temperature", factor, Unit::One)
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
    let observed = above_zero("density", density, Unit::KilogramPerCubicMetre)?;
    let at = celsius("temperature", temperature)?;
    let at_base = base.base_density(observed, at);
    if !(GROUP.0 - ROUNDED..=GROUP.1 + ROUNDED).contains(&at_base) {
        let fault = out_of_range("density", density).allowed(["800.9 to 1163.5 kg/m³ at the base"]);
        let hint = "at the base this is no lubricating oil: read density and temperature again";
        return Err(fault.hint(hint).into());
    }
    let at_base = at_base.clamp(GROUP.0, GROUP.1);
    let number = convert(at_base, Unit::KilogramPerCubicMetre, density.unit())?;
    computed("density", number, density.unit())
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
    let at = celsius("temperature", temperature)?;
    let factor = base.factor(group_density(density)?, at);
    computed("density", density.to_f64() * factor, density.unit())
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
    let held = from_zero("volume", volume, Unit::Litre)?;
    let hot = hot_density(density, temperature, base)?;
    computed("volume", held * hot / 1e3, Unit::Kilogram)
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
    let held = from_zero("mass", mass, Unit::Kilogram)?;
    let hot = hot_density(density, temperature, base)?;
    computed("mass", held / hot * 1e3, Unit::Litre)
}

fn hot_density(density: Amount, temperature: Amount, base: Base) -> Result<f64, Error> {
    let at = celsius("temperature", temperature)?;
    let at_base = group_density(density)?;
    Ok(at_base * base.factor(at_base, at))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]

    use super::*;
    use crate::error::ErrorKind;
    use alloc::string::String;

    fn amount(text: &str) -> Amount {
        Amount::parse(text).unwrap()
    }

    fn factor(density: &str, temperature: &str, base: Base) -> f64 {
        let factor = correction_factor(amount(density), amount(temperature), base);
        factor.unwrap().si()
    }

    fn near(got: f64, wanted: f64, within: f64) {
        assert!((got - wanted).abs() <= within, "{got} for {wanted}");
    }

    fn refused(answer: Result<Amount, Error>) -> (ErrorKind, String) {
        let error = answer.unwrap_err();
        (error.kind(), error.first().path.clone())
    }

    #[test]
    fn the_constants_of_both_scales_are_one() {
        // A degree Celsius is 1.8 degrees Fahrenheit; the SI tables print the product to four digits.
        assert!((K1_PER_F * 1.8 - 0.627804).abs() < 1e-9);
        assert!((K1_PER_F * 1.8 - K1_PER_C).abs() < 5e-5);
    }

    #[test]
    fn factors_to_15c() {
        // ASTM D1250-80, table 54D form: equation and constants seen in print, values computed apart from this code; 1e-6.
        let temperatures = [
            "0 °C", "20 °C", "40 °C", "50 °C", "60 °C", "80 °C", "100 °C",
        ];
        for (density, factors) in [
            (
                "850 kg/m³",
                [
                    1.011041, 0.996303, 0.981437, 0.973960, 0.966455, 0.951370, 0.936194,
                ],
            ),
            (
                "0.87 g/mL",
                [
                    1.010788, 0.996388, 0.981866, 0.974562, 0.967233, 0.952501, 0.937680,
                ],
            ),
            (
                "900 kg/m³",
                [
                    1.010430, 0.996509, 0.982473, 0.975416, 0.968334, 0.954101, 0.939785,
                ],
            ),
        ] {
            for (temperature, wanted) in temperatures.iter().zip(factors) {
                near(factor(density, temperature, Base::At15C), wanted, 1e-6);
            }
        }
        assert_eq!(factor("850 kg/m³", "15 °C", Base::At15C), 1.0);
    }

    #[test]
    fn factors_to_60f() {
        // API MPMS 11.1, table 6D form: constant and range seen in print, values computed apart from this code; 1e-6.
        for (density, temperature, wanted) in [
            ("850 kg/m³", "32 °F", 1.011449),
            ("850 kg/m³", "68 °F", 0.996714),
            ("850 kg/m³", "104 °F", 0.981851),
            ("850 kg/m³", "140 °F", 0.966873),
            ("850 kg/m³", "176 °F", 0.951790),
            ("850 kg/m³", "212 °F", 0.936616),
            ("870 kg/m³", "100 °C", 0.938092),
        ] {
            near(factor(density, temperature, Base::At60F), wanted, 1e-6);
        }
        assert_eq!(factor("850 kg/m³", "60 °F", Base::At60F), 1.0);
    }

    #[test]
    fn factors_of_the_procedure_of_2004() {
        // API MPMS 11.1-2004, 11.1.6.1; constants from memory, values computed apart from this code; 5e-6.
        for (temperature, wanted) in [
            ("59 °F", 1.000401),
            ("104 °F", 0.982266),
            ("212 °F", 0.938076),
        ] {
            near(
                factor("870 kg/m³", temperature, Base::At60F2004),
                wanted,
                5e-6,
            );
        }
        // By way of 60 °F, on the oil of 870 kg/m³ there: 870 · 1.000401 at 15 °C; 1e-5 for the fifth decimal.
        for (temperature, wanted) in [("20 °C", 0.996389), ("100 °C", 0.937700)] {
            near(
                factor("870.349 kg/m³", temperature, Base::At15C2004),
                wanted,
                1e-5,
            );
        }
        assert_eq!(factor("870 kg/m³", "212 °F", Base::At60F2004), 0.93808);
        assert_eq!(factor("870 kg/m³", "15 °C", Base::At15C2004), 1.0);
        // It differs from the form of 1980 by 2e-5 at most.
        for tenth in -500..1500_i64 {
            let at = Amount::new(tenth, 1, Unit::DegreeCelsius).unwrap();
            let oil = amount("870 kg/m³");
            let [new, old] = [Base::At60F2004, Base::At60F]
                .map(|base| correction_factor(oil, at, base).unwrap().si());
            let within = if (0..=1000).contains(&tenth) {
                2.2e-5
            } else {
                6e-5
            };
            near(new, old, within);
        }
    }

    #[test]
    fn the_constant_of_one_scale_is_not_used_with_the_degrees_of_the_other() {
        // 0.34878 with 25 °C would give 0.98971.
        let wanted = factor("850 kg/m³", "40 °C", Base::At15C);
        near(wanted, 0.98144, 5e-6);
        assert!((wanted - 0.98971).abs() > 0.008);
        // Both constants are one: 1.8 · 0.34878.
        near(K1_PER_F * 1.8, K1_PER_C, 5e-6);
    }

    #[test]
    fn densities_and_masses() {
        for base in Base::WORDS.iter().map(|(_, base)| *base) {
            for at in ["-50 °C", "0 °C", "20 °C", "60 °F", "100 °C", "150 °C"] {
                for density in ["800.9 kg/m³", "850 kg/m³", "1.1635 g/mL"] {
                    let hot = density_at(amount(density), amount(at), base).unwrap();
                    let back = base_density(hot, amount(at), base).unwrap();
                    // Five decimals of a factor are 0.006 kg/m³.
                    let within = match base {
                        Base::At15C | Base::At60F => 1e-8,
                        _ => 7e-3,
                    };
                    assert_eq!(back.unit(), amount(density).unit());
                    near(back.si(), amount(density).si(), within);
                }
            }
        }
        // 7 L · 850 kg/m³ · 0.996303.
        let [litres, density] = ["7 L", "850 kg/m³"].map(amount);
        let told = mass(litres, amount("20 °C"), density, Base::At15C).unwrap();
        near(told.to_f64(), 5.92800, 1e-5);
        let back = volume_of_mass(told, amount("20 °C"), density, Base::At15C).unwrap();
        near(back.to_f64(), 7.0, 1e-8);
    }

    #[test]
    fn what_is_outside_is_refused() {
        let [held, warm, oil] = ["7 L", "40 °C", "850 kg/m³"].map(amount);
        let out = |path: &str| (ErrorKind::OutOfRange, path.into());
        for density in ["800.8 kg/m³", "1163.6 kg/m³", "0.74 g/mL", "-850 kg/m³"] {
            let base = Base::default();
            assert_eq!(
                refused(correction_factor(amount(density), warm, base)),
                out("density")
            );
            assert_eq!(
                refused(mass(held, warm, amount(density), base)),
                out("density")
            );
        }
        for density in [
            "780 kg/m³",
            "0 kg/m³",
            "-1 kg/m³",
            "0.000000001 kg/m³",
            "1240 kg/m³",
        ] {
            assert_eq!(
                refused(base_density(amount(density), warm, Base::At15C)),
                out("density")
            );
        }
        // 150 °C without its sign is 302 °F; one more is too much.
        for temperature in ["-50.1 °C", "151 °C", "303 °F", "0 K"] {
            let refusal = refused(correction_factor(oil, amount(temperature), Base::At60F));
            assert_eq!(refusal, out("temperature"));
        }
        let kind = (ErrorKind::WrongKind, String::from("temperature"));
        assert_eq!(
            refused(density_at(oil, amount("40 Δ°C"), Base::At15C)),
            kind
        );
    }
}
