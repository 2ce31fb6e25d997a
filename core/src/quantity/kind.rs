//! Kinds of quantity, and the two families of customary volume measures.

use crate::word::words;
use core::fmt;

/// What a quantity is a quantity of. Amounts of different kinds neither add nor compare.
///
/// A temperature and a difference of temperatures are different kinds, and so are a pressure read on a
/// gauge and an absolute one.
///
/// ```
/// use brimline::{Amount, Kind};
/// let window = Amount::parse("45 °C")?;
/// assert_eq!(window.kind(), Kind::Temperature);
/// let tolerance = Amount::parse_as("2 °C", Kind::TemperatureDifference, None)?;
/// assert_eq!(tolerance.to_string(), "2 Δ°C");
/// # Ok::<(), brimline::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[repr(u8)]
#[non_exhaustive]
pub enum Kind {
    /// Volume of a liquid.
    Volume = 1,
    /// Turning moment.
    Torque = 2,
    /// Mass.
    Mass = 3,
    /// Length and distance.
    Length = 4,
    /// Area.
    Area = 5,
    /// A point on a temperature scale.
    Temperature = 6,
    /// How far two temperatures are apart.
    TemperatureDifference = 7,
    /// Pressure above that of the surrounding air, as a gauge shows it.
    Pressure = 8,
    /// Pressure above vacuum.
    AbsolutePressure = 9,
    /// Plane angle, in degrees only.
    Angle = 10,
    /// Duration.
    Time = 11,
    /// Mass per volume.
    Density = 12,
    /// Kinematic viscosity.
    KinematicViscosity = 13,
    /// Volume per time.
    VolumeFlow = 14,
    /// A plain number: a share, a factor, a probability.
    Ratio = 15,
    /// Force.
    Force = 16,
    /// Part of its volume that a liquid gains per degree.
    Expansion = 17,
}

/// What is fixed for a kind: its name and the steps it is counted in.
struct Row {
    slug: &'static str,
    /// Quanta in one coherent SI unit. Every unit of the kind is a whole number of quanta.
    quanta_in_si: u64,
    /// Counts in one quantum, see [`Amount::count`](super::Amount).
    counts_in_quantum: u64,
}

const fn row(slug: &'static str, quanta_in_si: u64, counts_in_quantum: u64) -> Row {
    Row {
        slug,
        quanta_in_si,
        counts_in_quantum,
    }
}

const E6: u64 = 1_000_000;
const E8: u64 = 100_000_000;
const E9: u64 = 1_000_000_000;
const E12: u64 = 1_000_000_000_000;
const E16: u64 = 10_000_000_000_000_000;

impl Kind {
    /// Every kind, in order of number.
    pub const ALL: &'static [Kind] = &[
        Kind::Volume,
        Kind::Torque,
        Kind::Mass,
        Kind::Length,
        Kind::Area,
        Kind::Temperature,
        Kind::TemperatureDifference,
        Kind::Pressure,
        Kind::AbsolutePressure,
        Kind::Angle,
        Kind::Time,
        Kind::Density,
        Kind::KinematicViscosity,
        Kind::VolumeFlow,
        Kind::Ratio,
        Kind::Force,
        Kind::Expansion,
    ];

    /// The steps of each kind. A count is one quantum divided by the last column:
    ///
    /// | kind | quantum | count |
    /// |---|---|---|
    /// | volume | 1e-16 m³ | 1e-22 mL (so that whole per mille of any amount are exact) |
    /// | torque | 1/1.6e17 N·m | 1/1.6e26 N·m |
    /// | mass | 1e-8 kg | 1e-17 kg |
    /// | length | 1e-7 m | 1e-16 m |
    /// | area | 1e-8 m² | 1e-17 m² |
    /// | temperature, from absolute zero, and its difference | 1/9 K | 1/9e9 K |
    /// | pressure, gauge and absolute | 1/1290320000 Pa | 1e-9 of it |
    /// | angle | 1 deg | 1e-9 deg |
    /// | time | 1 s | 1 ns |
    /// | density | 1 kg/m³ | 1e-9 kg/m³ |
    /// | kinematic viscosity | 1 mm²/s | 1e-9 mm²/s |
    /// | volume flow | 1/3 mL/s | 1/3e9 mL/s |
    /// | ratio | 1/100 | 1e-11 |
    /// | force | 1e-13 N | 1e-22 N |
    /// | expansion | 1/5 per kelvin | 2e-10 per kelvin |
    const fn row(self) -> &'static Row {
        match self {
            Kind::Volume => const { &row("volume", E16, E12) },
            Kind::Torque => const { &row("torque", 16 * E16, E9) },
            Kind::Mass => const { &row("mass", E8, E9) },
            Kind::Length => const { &row("length", 10 * E6, E9) },
            Kind::Area => const { &row("area", E8, E9) },
            Kind::Temperature => const { &row("temperature", 9, E9) },
            Kind::TemperatureDifference => const { &row("temperature_difference", 9, E9) },
            Kind::Pressure => const { &row("pressure", 20_000 * 64_516, E9) },
            Kind::AbsolutePressure => const { &row("absolute_pressure", 20_000 * 64_516, E9) },
            Kind::Angle => const { &row("angle", 1, E9) },
            Kind::Time => const { &row("time", 1, E9) },
            Kind::Density => const { &row("density", 1, E9) },
            Kind::KinematicViscosity => const { &row("kinematic_viscosity", E6, E9) },
            Kind::VolumeFlow => const { &row("volume_flow", 3 * E6, E9) },
            Kind::Ratio => const { &row("ratio", 100, E9) },
            Kind::Force => const { &row("force", 10 * E12, E9) },
            Kind::Expansion => const { &row("expansion", 5, E9) },
        }
    }

    /// The stable, language-free name, as `temperature_difference`.
    ///
    /// ```
    /// # use brimline::Kind;
    /// assert_eq!(Kind::KinematicViscosity.slug(), "kinematic_viscosity");
    /// ```
    #[must_use]
    pub const fn slug(self) -> &'static str {
        self.row().slug
    }

    /// Quanta in one coherent SI unit (for an angle: in one degree).
    pub(super) const fn quanta_in_si(self) -> u64 {
        self.row().quanta_in_si
    }

    /// Counts in one quantum: a multiple of 10⁹.
    pub(super) const fn counts_in_quantum(self) -> u64 {
        self.row().counts_in_quantum
    }
}

impl fmt::Display for Kind {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(self.slug())
    }
}

words! {
    /// Whose gallon, quart, pint and fluid ounce a bare name means.
    ///
    /// ```
    /// use brimline::{Amount, Kind, Measures};
    /// let us = Amount::parse_as("1.2 qt", Kind::Volume, Some(Measures::Us))?;
    /// let imperial = Amount::parse_as("1.2 qt", Kind::Volume, Some(Measures::Imperial))?;
    /// assert!(us < imperial);
    /// assert!(Amount::parse("1.2 qt").is_err());
    /// # Ok::<(), brimline::Error>(())
    /// ```
    pub enum Measures {
        /// United States liquid measures, from the gallon of 231 in³.
        Us = "us",
        /// Imperial measures, from the gallon of 4.54609 L.
        Imperial = "imperial",
    }
}
