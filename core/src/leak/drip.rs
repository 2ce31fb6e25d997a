//! Drops and what they add up to. The volume of a drop is always given: published ones differ fivefold.

use super::{above_zero, computed, out_of_range};
use crate::error::{Error, ErrorKind, Fault};
use crate::quantity::{Amount, Unit};
use serde::Serialize;

/// What a drip loses.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct DripRate {
    /// In 24 hours, in L.
    pub per_day: Amount,
    /// In 365 days, in L.
    pub per_year: Amount,
    /// The time from drop to drop, in s.
    pub one_drop_every: Amount,
}

const DAY_SECONDS: f64 = 86_400.0;
const YEAR_DAYS: f64 = 365.0;

/// What a drip loses, from drops counted in a time.
///
/// At least one of `drops`; `in_time` and the volume of one `drop` above zero. A drop has no default: one US agency has
/// printed 0.25 mL and 0.33 mL, pharmacy counts 0.05 mL (20 to the mL), and oil drops were measured from 0.02 to 0.07 mL.
///
/// # Errors
///
/// [`WrongKind`](ErrorKind::WrongKind); [`OutOfRange`](ErrorKind::OutOfRange).
///
/// ```
/// use brimline::{Amount, leak::drip_rate};
/// // 60 drops a minute of 0.05 mL: 4.32 L a day.
/// let rate = drip_rate(60, Amount::parse("1 min")?, Amount::parse("0.05 mL")?)?;
/// assert_eq!(rate.per_day.to_string(), "4.32 L");
/// assert_eq!(rate.one_drop_every.to_string(), "1 s");
/// # Ok::<(), brimline::Error>(())
/// ```
pub fn drip_rate(drops: u32, in_time: Amount, drop: Amount) -> Result<DripRate, Error> {
    if drops == 0 {
        let fault = Fault::new(ErrorKind::OutOfRange).at("drops").got("0");
        let hint = "watch until one falls: none in this time may be one in a longer time";
        return Err(fault.allowed(["at least 1"]).hint(hint).into());
    }
    let every = above_zero("in_time", in_time, Unit::Second)? / f64::from(drops);
    let per_day = above_zero("drop", drop, Unit::Litre)? / every * DAY_SECONDS;
    Ok(DripRate {
        per_day: computed("drop", per_day, Unit::Litre)?,
        per_year: computed("drop", per_day * YEAR_DAYS, Unit::Litre)?,
        one_drop_every: computed("in_time", every, Unit::Second)?,
    })
}

/// The time from drop to drop, in s, of a drip that loses a volume over a time.
///
/// All above zero; the volume of one `drop` is no more than `volume`. How long one has to watch a place to see what a known
/// shortage would show there, if all of it dripped from there, evenly.
///
/// # Errors
///
/// [`WrongKind`](ErrorKind::WrongKind); [`OutOfRange`](ErrorKind::OutOfRange).
///
/// ```
/// use brimline::{Amount, leak::drops_for};
/// // Half a litre in 60 days, drops of 0.04 mL: 12500 drops, one in about 7 minutes.
/// let [volume, over, drop] = ["0.5 L", "1440 h", "0.04 mL"].map(Amount::parse);
/// assert_eq!(drops_for(volume?, over?, drop?)?.to_string(), "414.72 s");
/// # Ok::<(), brimline::Error>(())
/// ```
pub fn drops_for(volume: Amount, over: Amount, drop: Amount) -> Result<Amount, Error> {
    let lost = above_zero("volume", volume, Unit::Litre)?;
    let time = above_zero("over", over, Unit::Second)?;
    let drops = lost / above_zero("drop", drop, Unit::Litre)?;
    if drop > volume {
        let hint = "one drop is more than what was lost: check the unit of the drop";
        return Err(out_of_range("drop", drop).hint(hint).into());
    }
    computed("over", time / drops, Unit::Second)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]

    use super::*;
    use crate::quantity::Rounding;
    use alloc::string::ToString;

    fn amount(text: &str) -> Amount {
        Amount::parse(text).unwrap()
    }

    fn us_gallons(volume: Amount) -> f64 {
        let gallons = volume.to(Unit::UsGallon, 6, Rounding::HalfEven);
        gallons.unwrap().to_f64()
    }

    #[test]
    fn the_two_drops_of_one_agency() {
        // USGS drip page: at a quarter of a millilitre 4000 to the litre and 15 140 to the US gallon; an older edition, at a
        // third: 3000 and 11 350. They contradict each other, so a drop is always given.
        for (drop, to_litre, to_gallon) in [
            ("0.25 mL", 4000.0, 15_140.0),
            ("0.333333333 mL", 3000.0, 11_350.0),
        ] {
            for (volume, drops, printed_to) in
                [("1 L", to_litre, 1e-5), ("1 US gal", to_gallon, 10.0)]
            {
                let every = drops_for(amount(volume), amount("1 h"), amount(drop)).unwrap();
                assert!(
                    (3600.0 / every.to_f64() - drops).abs() <= printed_to,
                    "{drop}"
                );
            }
        }
        // The same page, 10 a minute: 14 400 a day, 347 gal a year; a page that quotes the older edition, 20 a minute: 2 gal
        // a day, 925 gal a year, truncated.
        let slow = drip_rate(10, amount("1 min"), amount("0.25 mL")).unwrap();
        assert_eq!(slow.per_day.to_string(), "3.6 L");
        assert!((us_gallons(slow.per_year) - 347.0).abs() < 0.5);
        let older = drip_rate(20, amount("1 min"), amount("0.333333333 mL")).unwrap();
        assert!((us_gallons(older.per_year) - 925.0).abs() < 2.0);
        assert!((us_gallons(older.per_day) - 2.0).abs() < 0.6);
    }

    #[test]
    fn oil_by_the_pharmacy_drop() {
        // 20 drops to the millilitre (a convention): 0.072 L and 4.32 L a day at 1 and 60 a minute.
        for (drops, per_day) in [(1, "0.072 L"), (60, "4.32 L")] {
            let rate = drip_rate(drops, amount("60 s"), amount("0.05 mL")).unwrap();
            assert_eq!(rate.per_day.to_string(), per_day);
        }
    }

    #[test]
    fn refusals_name_the_argument() {
        let (minute, drop, litre) = (amount("1 min"), amount("0.05 mL"), amount("1 L"));
        for (answer, path) in [
            (drip_rate(0, minute, drop).map(|rate| rate.per_day), "drops"),
            (
                drip_rate(1, amount("0 s"), drop).map(|rate| rate.per_day),
                "in_time",
            ),
            (
                drip_rate(1, minute, amount("-1 mL")).map(|rate| rate.per_day),
                "drop",
            ),
            (
                drip_rate(1, minute, amount("1 mm")).map(|rate| rate.per_day),
                "drop",
            ),
            (drops_for(amount("0 L"), minute, drop), "volume"),
            (drops_for(litre, litre, drop), "over"),
            (drops_for(drop, minute, litre), "drop"),
        ] {
            assert_eq!(answer.unwrap_err().first().path, path);
        }
    }
}
