//! Whether a printed torque fits a thread, and which unit would make it fit.

use super::thread::{StrengthClass, Thread, proof_stress};
use super::{above_zero, number};
use crate::error::Error;
use crate::quantity::{Amount, Interval, Kind, Unit};
use crate::word::words;
use serde::Serialize;

words! {
    /// What is screwed in, and into what.
    pub enum PlugKind {
        /// A solid bolt or plug of steel, in steel. One that only seals is never tightened like one that clamps, so for
        /// it too the band is no more than an upper bound.
        Steel = "steel",
        /// Into aluminium or another light alloy, or a plug of one.
        LightAlloy = "light_alloy",
        /// A hollow plug, as one with a standpipe.
        Hollow = "hollow",
        /// Not known.
        Unknown = "unknown",
    }
}

words! {
    /// Whether a torque fits.
    pub enum Fits {
        /// It lies within the band.
        Yes = "yes",
        /// It lies above the band.
        No = "no",
        /// It lies below the band, where a plug that seals is right, or the band is none for this plug.
        NotJudged = "not_judged",
    }
}

words! {
    /// What a band was reckoned for.
    pub enum Basis {
        /// Solid steel bolts in steel.
        SteelBolt = "steel_bolt",
    }
}

/// What is to be thought of a torque.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[non_exhaustive]
pub struct Plausibility {
    /// Whether it fits.
    pub fits: Fits,
    /// Torques that are usual for a bolt that clamps on this thread, in newton metres.
    pub band: Interval,
    /// What the band was reckoned for.
    pub basis: Basis,
    /// The unit that would make the number fit: where [`fits`](Plausibility::fits) is not judged, no more than a question.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub slip: Option<UnitSlip>,
    /// What to mind, as caution ids.
    pub cautions: &'static [&'static str],
}

/// The same number in another unit.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct UnitSlip {
    /// The other unit.
    pub unit: Unit,
    /// The number in it.
    pub torque: Amount,
}

/// An end of the band: class, share of its proof load, torque coefficient.
struct End(StrengthClass, f64, f64);

/// Three quarters of the proof load of the softest steel with the slipperiest oil; nine tenths of that of common bolts
/// with the roughest dry threads. The shares are usual for bolts that are undone again and for those that are not (from
/// memory); the coefficients are the ends printed for machine oil and for dry steel. The ends are 8.4 to 8.7 apart, so a factor
/// of 8.85 or more always leaves the band.
const LEAST: End = End(StrengthClass::Class4_6, 0.75, 0.10);
const MOST: End = End(StrengthClass::Class8_8, 0.90, 0.27);

impl End {
    /// `volume`: diameter times stress area, in cubic metres.
    fn torque(&self, thread: &Thread, volume: f64) -> Result<Amount, Error> {
        let End(class, share, k) = self;
        let stress = proof_stress(*class, thread);
        Amount::from_computed(k * share * stress * volume, Unit::NewtonMetre)
    }
}

/// What a torque is asked about below, as a share of the lower end of the band: there it holds not even a plug that seals.
/// Common practice, no source; 14 lbf·in meant as 14 N·m on M10x1 lies at 0.145.
const HOLDS_NOTHING: f64 = 1.0 / 6.0;

/// Units a torque is taken for, the likeliest first.
const UNITS: &[Unit] = &[
    Unit::NewtonMetre,
    Unit::PoundForceFoot,
    Unit::PoundForceInch,
    Unit::KilogramForceMetre,
    Unit::KilogramForceCentimetre,
    Unit::DecinewtonMetre,
    Unit::NewtonCentimetre,
    Unit::OunceForceInch,
];

/// Whether a printed `torque` fits a thread, and if not, which unit would make its number fit.
///
/// The band is one of solid steel bolts that clamp, in steel. Only its upper end judges: a plug that seals gets less than
/// a bolt that clamps, so below the band nothing is judged, and no higher torque is proposed. A torque below a sixth of
/// the lower end is asked about, for it would hold no plug. A hollow plug, and any in light alloy, takes less still: for
/// them the band judges nothing, and a unit above it is named as a question only. `torque` above zero.
///
/// Source: stress area and proof stress of ISO 898-1 and the short form T = K·D·F; which shares and coefficients bound
/// the band is common practice, no source. AC 43.13-1B, table 7-1, and a crane manual after DIN 13 lie within.
///
/// # Errors
///
/// [`WrongKind`](crate::ErrorKind::WrongKind), [`OutOfRange`](crate::ErrorKind::OutOfRange).
///
/// ```
/// use brimline::{Amount, Unit, torque::{Fits, PlugKind, Thread, plausible}};
/// let thread = Thread::parse("M10x1")?;
/// // 14 N·m is 124 lbf·in; printed as 124 lbf·ft it strips the thread.
/// let told = plausible(Amount::parse("124 lbf·ft")?, &thread, PlugKind::Steel)?;
/// assert_eq!(told.fits, Fits::No);
/// assert_eq!(told.slip.unwrap().unit, Unit::PoundForceInch);
/// # Ok::<(), brimline::Error>(())
/// ```
pub fn plausible(torque: Amount, thread: &Thread, plug: PlugKind) -> Result<Plausibility, Error> {
    above_zero("torque", torque, Kind::Torque)?;
    let area = number(thread.stress_area, Unit::SquareMetre);
    let volume = number(thread.diameter, Unit::Metre) * area;
    let (least, most) = (LEAST.torque(thread, volume)?, MOST.torque(thread, volume)?);
    let band = Interval::new(Some(least), Some(most))?;
    let is_above = torque > most;
    let fits = match plug {
        PlugKind::Steel if is_above => Fits::No,
        PlugKind::Steel if torque >= least => Fits::Yes,
        _ => Fits::NotJudged,
    };
    let holds_nothing = number(torque, Unit::NewtonMetre) < HOLDS_NOTHING * least.to_f64();
    let slip = if is_above || holds_nothing {
        slip(torque, &band)
    } else {
        None
    };
    Ok(Plausibility {
        fits,
        band,
        basis: Basis::SteelBolt,
        slip,
        cautions: &["steel_band", "torque_unit", "threads_as_printed"],
    })
}

fn slip(torque: Amount, band: &Interval) -> Option<UnitSlip> {
    let others = UNITS.iter().filter(|unit| **unit != torque.unit());
    let read =
        others.filter_map(|unit| Amount::new(torque.mantissa(), torque.decimals(), *unit).ok());
    read.into_iter()
        .find(|torque| band.contains(torque) == Ok(true))
        .map(|torque| UnitSlip {
            unit: torque.unit(),
            torque,
        })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]

    use super::*;
    use crate::error::ErrorKind;
    use alloc::string::ToString;

    fn told(torque: &str, thread: &str, plug: PlugKind) -> Plausibility {
        let thread = Thread::parse(thread).unwrap();
        plausible(Amount::parse(torque).unwrap(), &thread, plug).unwrap()
    }

    #[test]
    fn published_torques_lie_within() {
        for (thread, torques) in [
            // An engine works' norm, by hand, oiled; a crane manual after DIN 13 for class 8.8.
            ("M6", ["9 N·m", "10 N·m"]),
            ("M8", ["21 N·m", "25 N·m"]),
            ("M10", ["42 N·m", "49 N·m"]),
            ("M12", ["74 N·m", "85 N·m"]),
            ("M14", ["115 N·m", "135 N·m"]),
            // The crane manual's fine threads; reprinted VDI 2230 tables for friction 0.10, where they have them.
            ("M8x1", ["27 N·m", "22.8 N·m"]),
            ("M10x1.25", ["52 N·m", "44 N·m"]),
            ("M12x1.25", ["79 N·m", "101 N·m"]),
            ("M12x1.5", ["89 N·m", "89 N·m"]),
            ("M14x1.5", ["145 N·m", "124 N·m"]),
            // AC 43.13-1B, table 7-1, tension nuts.
            ("1/4-20", ["40 lbf·in", "50 lbf·in"]),
            ("1/4-28", ["50 lbf·in", "70 lbf·in"]),
            ("5/16-18", ["80 lbf·in", "90 lbf·in"]),
            ("3/8-16", ["160 lbf·in", "185 lbf·in"]),
            ("1/2-13", ["400 lbf·in", "480 lbf·in"]),
            ("7/16-20", ["450 lbf·in", "500 lbf·in"]),
            ("7/16-14", ["235 lbf·in", "255 lbf·in"]),
            // Common practice, no source.
            ("M10x1", ["14 N·m", "14 N·m"]),
        ] {
            for torque in torques {
                let told = told(torque, thread, PlugKind::Steel);
                assert_eq!(
                    (told.fits, told.slip),
                    (Fits::Yes, None),
                    "{torque} on {thread}: {}",
                    told.band
                );
            }
        }
    }

    #[test]
    fn a_slip_is_named() {
        // 14 N·m is 123.9 lbf·in; read as lbf·ft that is 168 N·m, and 14 lbf·in is 1.58 N·m.
        for (torque, slip) in [
            ("168 N·m", "168 lbf·in"),
            ("124 lbf·ft", "124 lbf·in"),
            ("14.0 kgf·m", "14.0 N·m"),
        ] {
            let told = told(torque, "M10x1", PlugKind::Steel);
            assert_eq!(told.fits, Fits::No);
            let found = told.slip.unwrap();
            assert_eq!(
                (found.torque.to_string(), found.unit),
                (slip.to_string(), found.torque.unit())
            );
            assert!(told.band.contains(&found.torque).unwrap());
        }
        assert_eq!(told("9999999 N·m", "M10x1", PlugKind::Steel).slip, None);
    }

    /// Common practice, no source: sealing plugs with a ring, in steel and in aluminium.
    #[test]
    fn a_plug_that_seals_is_not_called_wrong() {
        for (thread, torque) in [
            ("M18x1.5", "35 N·m"),
            ("M10x1", "8 N·m"),
            ("M12x1.5", "20 N·m"),
            ("M14x1.5", "25 N·m"),
            ("M22x1.5", "50 N·m"),
            ("M24x1.5", "30 N·m"),
        ] {
            for (_, plug) in PlugKind::WORDS {
                let told = told(torque, thread, *plug);
                assert_ne!(told.fits, Fits::No, "{torque} on {thread}: {}", told.band);
                assert_eq!(told.slip, None, "{torque} on {thread}: {}", told.band);
            }
        }
    }

    /// 14 N·m as 14 lbf·in is 1.58 N·m: the plug falls out. It is asked about, whatever the plug.
    #[test]
    fn what_holds_no_plug_is_asked_about() {
        for (torque, slip) in [("1.58 N·m", "1.58 kgf·m"), ("14 lbf·in", "14 N·m")] {
            for (_, plug) in PlugKind::WORDS {
                let told = told(torque, "M10x1", *plug);
                assert_eq!(told.fits, Fits::NotJudged);
                assert_eq!(told.slip.unwrap().torque.to_string(), slip);
            }
        }
    }

    #[test]
    fn other_plugs_are_not_judged_by_steel() {
        for plug in [PlugKind::LightAlloy, PlugKind::Hollow, PlugKind::Unknown] {
            for (torque, slip) in [("14 N·m", false), ("2 N·m", false), ("168 N·m", true)] {
                let told = told(torque, "M10x1", plug);
                assert_eq!((told.fits, told.basis), (Fits::NotJudged, Basis::SteelBolt));
                assert_eq!(told.slip.is_some(), slip);
                assert!(told.cautions.contains(&"steel_band"));
            }
        }
    }

    #[test]
    fn the_band_is_narrower_than_the_slips() {
        for thread in ["M5", "M10x1", "M39", "1/4-20", "1 1/2-6"] {
            let band = told("1 N·m", thread, PlugKind::Steel).band;
            let ratio = band.hi().unwrap().to_f64() / band.lo().unwrap().to_f64();
            assert!(ratio < 8.85, "{thread}: {ratio}");
        }
    }

    #[test]
    fn what_is_no_torque_is_refused() {
        let thread = Thread::parse("M10").unwrap();
        let refused = |text: &str| {
            plausible(Amount::parse(text).unwrap(), &thread, PlugKind::Steel).unwrap_err()
        };
        for (text, kind) in [
            ("0 N·m", ErrorKind::OutOfRange),
            ("14 mm", ErrorKind::WrongKind),
        ] {
            let error = refused(text);
            assert_eq!(
                (error.kind(), error.first().path.as_str()),
                (kind, "torque")
            );
        }
    }
}
