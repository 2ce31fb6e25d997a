//! What a tilt does to a level.

use super::{above_zero, computed, from_zero, number, out_of_range};
use crate::error::Error;
use crate::quantity::{Amount, Unit};
use serde::Serialize;

/// From here on a tilt is a mistyped one, degrees.
const STEEPEST: f64 = 45.0;

/// How far a level deceives at an opening when the unit leans.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[non_exhaustive]
pub struct TiltError {
    /// How much higher or lower the surface stands at the opening, in the unit of the offset.
    pub height: Amount,
    /// What that is in fluid, in L.
    pub volume: Amount,
}

/// How far the level deceives where the opening lies off the middle of the surface and the unit leans.
///
/// `surface` of the fluid, above zero; `offset` of the opening from the middle of the surface along the lean, zero and above;
/// `tilt` 0° to below 45°. Leaning towards the opening it reads too high, away from it too low: an opening on the low side
/// reads full too early, with less in the unit than there should be, one on the high side too late. The height is
/// offset · tan(tilt), the volume surface · height, which holds as long as the surface keeps its size.
///
/// Source: trigonometry.
///
/// # Errors
///
/// [`WrongKind`](crate::ErrorKind::WrongKind), [`OutOfRange`](crate::ErrorKind::OutOfRange).
///
/// ```
/// use brimline::{Amount, volume::tilt_error};
/// let [surface, offset, tilt] = ["0.06 m²", "200 mm", "1 deg"].map(Amount::parse);
/// let error = tilt_error(surface?, offset?, tilt?)?;
/// assert_eq!(format!("{:.3}", error.height.to_f64()), "3.491");
/// assert_eq!(format!("{:.2}", error.volume.to_f64()), "0.21");
/// # Ok::<(), brimline::Error>(())
/// ```
pub fn tilt_error(surface: Amount, offset: Amount, tilt: Amount) -> Result<TiltError, Error> {
    let area = above_zero("surface", surface, Unit::SquareMetre)?;
    let arm = from_zero("offset", offset, Unit::Millimetre)?;
    let lean = number("tilt", tilt, Unit::Degree)?;
    if !(0.0..STEEPEST).contains(&lean) {
        let fault = out_of_range("tilt", tilt).allowed(["0 to below 45 deg"]);
        let hint = "give the size of the tilt; to which side it leans is not asked";
        return Err(fault.hint(hint).into());
    }
    let slope = libm::tan(lean.to_radians());
    Ok(TiltError {
        height: computed("offset", offset.to_f64() * slope, offset.unit())?,
        // A millimetre of a square metre is a litre.
        volume: computed("surface", area * arm * slope, Unit::Litre)?,
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]

    use super::*;
    use crate::error::ErrorKind;

    fn amount(text: &str) -> Amount {
        Amount::parse(text).unwrap()
    }

    #[test]
    fn height_and_volume() {
        // Worked by trigonometry: 200 mm · tan 0.5°, 1°, 2° to the printed digits; 0.06 m² of it.
        for (tilt, height, volume) in [
            ("0 deg", 0.0, 0.0),
            ("0.5 deg", 1.745, 0.1047),
            ("1 deg", 3.491, 0.2095),
            ("2 deg", 6.984, 0.4190),
        ] {
            let error = tilt_error(amount("0.06 m²"), amount("200 mm"), amount(tilt)).unwrap();
            assert!((error.height.to_f64() - height).abs() <= 5e-4, "{tilt}");
            assert!((error.volume.to_f64() - volume).abs() <= 5e-5, "{tilt}");
        }
        let inches = tilt_error(amount("93 in²"), amount("8 in"), amount("1 deg")).unwrap();
        assert_eq!(inches.height.unit(), Unit::Inch);
    }

    #[test]
    fn what_is_no_tilt_is_refused() {
        for (surface, offset, tilt, path) in [
            ("0 m²", "200 mm", "1 deg", "surface"),
            ("0.06 m²", "-1 mm", "1 deg", "offset"),
            ("0.06 m²", "200 mm", "45 deg", "tilt"),
            ("0.06 m²", "200 mm", "-0.1 deg", "tilt"),
            ("0.06 m²", "999999999999999 km", "44 deg", "surface"),
        ] {
            let error = tilt_error(amount(surface), amount(offset), amount(tilt)).unwrap_err();
            assert_eq!(
                (error.kind(), error.first().path.as_str()),
                (ErrorKind::OutOfRange, path)
            );
        }
        let error = tilt_error(amount("60 mm"), amount("200 mm"), amount("1 deg")).unwrap_err();
        assert_eq!(
            (error.kind(), error.first().path.as_str()),
            (ErrorKind::WrongKind, "surface")
        );
    }
}
