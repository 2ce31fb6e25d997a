//! What temperature a pour leaves.

use super::{above_zero, computed, from_zero};
use crate::error::Error;
use crate::quantity::{Amount, Unit};

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
    let held = above_zero("volume", volume, Unit::Litre)?;
    let warm = above_zero("temperature", temperature, Unit::Kelvin)?;
    let poured = from_zero("added", added, Unit::Litre)?;
    let cold = above_zero("added_temperature", added_temperature, Unit::Kelvin)?;
    let mixed = warm + (cold - warm) * (poured / (held + poured));
    computed("temperature", mixed, temperature.unit())
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]

    use super::*;

    fn mixed(texts: [&str; 4]) -> Result<alloc::string::String, alloc::string::String> {
        let [volume, temperature, added, cold] = texts.map(|text| Amount::parse(text).unwrap());
        mixed_temperature(volume, temperature, added, cold)
            .map(|mixed| alloc::format!("{mixed}"))
            .map_err(|error| error.first().path.clone())
    }

    #[test]
    fn what_is_poured_pulls_by_its_share() {
        // By hand: (2 · 40 + 2 · 20) / 4; the same on the other scale; nothing added.
        assert_eq!(
            mixed(["2 L", "40 °C", "2000 mL", "68 °F"]).unwrap(),
            "30 °C"
        );
        assert_eq!(mixed(["2 L", "104 °F", "2 L", "20 °C"]).unwrap(), "86 °F");
        assert_eq!(mixed(["2 L", "40 °C", "0 L", "20 °C"]).unwrap(), "40 °C");
        assert_eq!(
            mixed(["0 L", "40 °C", "1 L", "20 °C"]).unwrap_err(),
            "volume"
        );
        assert_eq!(
            mixed(["1 L", "40 °C", "-1 L", "20 °C"]).unwrap_err(),
            "added"
        );
        assert_eq!(
            mixed(["1 L", "40 °C", "1 L", "-300 °C"]).unwrap_err(),
            "added_temperature"
        );
        assert_eq!(
            mixed(["1 L", "40 L", "1 L", "20 °C"]).unwrap_err(),
            "temperature"
        );
    }
}
