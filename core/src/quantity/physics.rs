//! Amounts as physical quantities: doubles in SI, and the quantities of [`uom`].
//!
//! The numbers come from the exact factors of this library; the customary units of `uom` are rounded to seven
//! digits and are never used.

use super::amount::Amount;
use super::convert::{convert, nearest};
use super::exact::power_of_ten;
use super::kind::Kind;
use super::refusal;
use super::unit::{Unit, steps_in_quantum};
use crate::error::{Error, ErrorKind, Fault};
use uom::si::f64 as si;

/// A whole number over another: where both are doubles, the one division rounds once.
fn quotient(above: i128, below: u128) -> Option<f64> {
    let (above, below) = (i64::try_from(above).ok()?, u64::try_from(below).ok()?);
    let is_double =
        |whole: u64| whole.leading_zeros().wrapping_add(whole.trailing_zeros()) >= 64 - 53;
    (is_double(above.unsigned_abs()) && is_double(below)).then(|| above as f64 / below as f64)
}

impl Amount {
    /// Its number in its own unit: the nearest double.
    ///
    /// ```
    /// # use brimline::Amount;
    /// assert_eq!(Amount::parse("1.50 L")?.to_f64(), 1.5);
    /// # Ok::<(), brimline::Error>(())
    /// ```
    #[must_use]
    pub fn to_f64(&self) -> f64 {
        // Below 2^53 over an exact power of ten: the one division rounds once.
        self.mantissa() as f64 / f64::from(power_of_ten(self.decimals()))
    }

    /// Its value in the coherent SI unit of its kind: the nearest double.
    ///
    /// m³, N·m, kg, m, m², K, Pa, s, kg/m³, m²/s, m³/s. An angle is given in radians and rounded twice, pi being
    /// no ratio.
    ///
    /// ```
    /// use brimline::Amount;
    /// assert_eq!(Amount::parse("1 lbf·ft")?.si(), 1.3558179483314004);
    /// assert_eq!(Amount::parse("104 °F")?.si(), 313.15);
    /// # Ok::<(), brimline::Error>(())
    /// ```
    #[must_use]
    pub fn si(&self) -> f64 {
        if self.kind() == Kind::Angle {
            return self.to_f64().to_radians();
        }
        let (above, below) = self.fraction(self.kind().quanta_in_si(), 0);
        quotient(above, below)
            .or_else(|| nearest(above < 0, above.unsigned_abs(), below))
            .unwrap_or_default()
    }

    /// Its number in a unit of its kind: the nearest double or one beside it.
    #[inline]
    pub(crate) fn number_in(&self, unit: Unit) -> Result<f64, Error> {
        if self.unit() == unit {
            return Ok(self.to_f64());
        }
        if self.kind() == unit.kind()
            && let (above, below) = self.fraction(unit.quanta(), unit.offset())
            && let Some(number) = quotient(above, below)
        {
            return Ok(number);
        }
        convert(self.to_f64(), self.unit(), unit)
    }

    /// Its value in steps of so many quanta from an offset, as one whole number over another.
    fn fraction(&self, quanta: u64, offset: i64) -> (i128, u128) {
        // Only temperatures have offsets, whole in hundredths of a quantum.
        const HUNDREDTH: i64 = 10_000_000;
        let zero = self.unit().offset().wrapping_sub(offset) / HUNDREDTH;
        let parts = steps_in_quantum(self.kind());
        let power = power_of_ten(self.decimals());
        let shift = i128::from(zero).wrapping_mul(power.into());
        let size = i128::from(self.unit().quanta()).wrapping_mul(parts.into());
        let above = i128::from(self.mantissa()).wrapping_mul(size);
        let below = u128::from(quanta).wrapping_mul(parts.into());
        (above.wrapping_add(shift), below.wrapping_mul(power.into()))
    }

    /// The amount nearest to a computed value, given in the coherent SI unit of the kind (an angle in radians): 12
    /// significant digits, at most 9 decimals, without trailing zeros.
    ///
    /// # Errors
    ///
    /// [`NotANumber`](crate::ErrorKind::NotANumber) for a NaN or an infinity, [`OutOfRange`](crate::ErrorKind::OutOfRange) from
    /// 10¹⁵ of the unit on.
    ///
    /// ```
    /// use brimline::{Amount, Unit};
    /// assert_eq!(Amount::from_si(0.0002 / 3.0, Unit::Millilitre)?.to_string(), "66.666666667 mL");
    /// assert_eq!(Amount::from_si(313.15, Unit::DegreeFahrenheit)?.to_string(), "104 °F");
    /// # Ok::<(), brimline::Error>(())
    /// ```
    pub fn from_si(value: f64, unit: Unit) -> Result<Self, Error> {
        let kind = unit.kind();
        let value = if kind == Kind::Angle {
            value.to_degrees()
        } else {
            value
        };
        let zero = unit.offset() as f64 / 1e9;
        let quanta = value * kind.quanta_in_si() as f64 - zero;
        Amount::from_computed(quanta / unit.quanta() as f64, unit)
    }

    /// The amount nearest to a number that was computed in the unit: 12 significant digits, at most 9 decimals,
    /// without trailing zeros.
    ///
    /// # Errors
    ///
    /// As [`Amount::from_si`].
    ///
    /// ```
    /// use brimline::{Amount, Unit};
    /// assert_eq!(Amount::from_computed(0.1 + 0.2, Unit::Litre)?.to_string(), "0.3 L");
    /// # Ok::<(), brimline::Error>(())
    /// ```
    pub fn from_computed(number: f64, unit: Unit) -> Result<Self, Error> {
        const LARGEST: f64 = 1e15;
        if !number.is_finite() {
            let fault = Fault::new(ErrorKind::NotANumber).hint("the inputs give no finite number");
            return Err(fault.into());
        }
        let size = number.abs();
        if size >= LARGEST {
            return Err(refusal::of_range().into());
        }
        // As many decimals as leave 12 digits.
        let mut decimals = 9_u8;
        let mut room = 1e3;
        while size >= room && decimals > 0 {
            decimals = decimals.saturating_sub(1);
            room *= 10.0;
        }
        let scaled = number * f64::from(power_of_ten(decimals));
        Amount::trimmed(libm::rint(scaled) as i64, decimals, unit)
    }

    fn si_of(&self, kind: Kind) -> Result<f64, Error> {
        if self.kind() == kind {
            Ok(self.si())
        } else {
            Err(refusal::of_wrong_kind(kind, self.unit()).into())
        }
    }
}

macro_rules! physical {
    ($($(#[doc = $doc:literal])* $name:ident: $kind:ident => $quantity:ident, $unit:path, $sample:literal;)*) => {
        impl Amount {
            $(
                $(#[doc = $doc])*
                ///
                /// # Errors
                ///
                /// [`WrongKind`](crate::ErrorKind::WrongKind) for an amount of another kind.
                ///
                #[doc = concat!("```\nlet amount = brimline::Amount::parse(\"", $sample, "\")?;")]
                #[doc = concat!("assert_eq!(amount.", stringify!($name), "()?.value, amount.si());")]
                #[doc = "# Ok::<(), brimline::Error>(())\n```"]
                pub fn $name(&self) -> Result<si::$quantity, Error> {
                    Ok(si::$quantity::new::<$unit>(self.si_of(Kind::$kind)?))
                }
            )*
        }
    };
}

physical! {
    /// As a volume.
    volume: Volume => Volume, uom::si::volume::cubic_meter, "1 US qt";
    /// As a torque.
    torque: Torque => Torque, uom::si::torque::newton_meter, "14 N·m";
    /// As a mass.
    mass: Mass => Mass, uom::si::mass::kilogram, "1.2 lb";
    /// As a length.
    length: Length => Length, uom::si::length::meter, "150 mm";
    /// As an area.
    area: Area => Area, uom::si::area::square_meter, "0.06 m²";
    /// As a thermodynamic temperature.
    temperature: Temperature => ThermodynamicTemperature, uom::si::thermodynamic_temperature::kelvin, "45 °C";
    /// As a difference of temperatures.
    temperature_difference: TemperatureDifference => TemperatureInterval, uom::si::temperature_interval::kelvin, "2 Δ°C";
    /// As a pressure above that of the surrounding air.
    pressure: Pressure => Pressure, uom::si::pressure::pascal, "30 psi";
    /// As a pressure above vacuum.
    absolute_pressure: AbsolutePressure => Pressure, uom::si::pressure::pascal, "15 psi abs";
    /// As a plane angle.
    angle: Angle => Angle, uom::si::angle::radian, "0.5 deg";
    /// As a time.
    time: Time => Time, uom::si::time::second, "15 min";
    /// As a density.
    density: Density => MassDensity, uom::si::mass_density::kilogram_per_cubic_meter, "838 kg/m³";
    /// As a kinematic viscosity.
    kinematic_viscosity: KinematicViscosity => KinematicViscosity, uom::si::kinematic_viscosity::square_meter_per_second, "24.5 mm²/s";
    /// As a plain number.
    ratio: Ratio => Ratio, uom::si::ratio::ratio, "20 %";
    /// As a force.
    force: Force => Force, uom::si::force::newton, "4940 lbf";
    /// As a coefficient of thermal expansion.
    expansion: Expansion => TemperatureCoefficient, uom::si::temperature_coefficient::per_kelvin, "0.00075 per K";
    /// As a volume flow.
    volume_flow: VolumeFlow => VolumeRate, uom::si::volume_rate::cubic_meter_per_second, "2 mL/s";
}
