//! What temperature a pour leaves.

use super::{above_zero, computed, from_zero};
use crate::error::Error;
use crate::quantity::{Amount, Kind};

/// The temperature of fluid after more of it was poured in, before the case warms it again.
///
/// Tm = (V·T + v·t) / (V + v), both of one fluid and measured at one temperature, what each litre carries taken as equal;
/// `volume` above zero, `added` from zero. In the unit of `temperature`. Source: the balance of heat; common practice.
///
/// # Errors
///
/// [`WrongKind`](crate::ErrorKind::WrongKind); [`OutOfRange`](crate::ErrorKind::OutOfRange) for volumes or temperatures
/// that cannot be.
///
/// ```
/// use brimline::{Amount, Rounding, Unit, warm_up::mixed_temperature};
/// let [volume, temperature, added, cold] = ["6.8 L", "45.8 °C", "0.25 L", "18 °C"].map(Amount::parse);
/// let mixed = mixed_temperature(volume?, temperature?, added?, cold?)?;
/// // (6.8 · 45.8 + 0.25 · 18) / 7.05
/// assert_eq!(mixed.to(Unit::DegreeCelsius, 2, Rounding::HalfEven)?.to_string(), "44.81 °C");
/// # Ok::<(), brimline::Error>(())
/// ```
pub fn mixed_temperature(
    volume: Amount,
    temperature: Amount,
    added: Amount,
    added_temperature: Amount,
) -> Result<Amount, Error> {
    let held = above_zero("volume", volume, Kind::Volume)?;
    let warm = above_zero("temperature", temperature, Kind::Temperature)?;
    let poured = from_zero("added", added, Kind::Volume)?;
    let cold = above_zero("added_temperature", added_temperature, Kind::Temperature)?;
    let mixed = warm + (cold - warm) * (poured / (held + poured));
    computed("temperature", mixed, temperature.unit())
}
