//! How long to let fluid cool that was found too warm.

use super::{above_zero, computed, difference, from_zero, number, out_of_range};
use crate::error::Error;
use crate::quantity::{Amount, Unit};
use serde::Serialize;

/// What was seen of fluid that cools with the engine off, and what starting again will cost.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Cooling {
    /// A reading while cooling.
    pub first: Amount,
    /// A later, lower one.
    pub second: Amount,
    /// The time between the two, above zero.
    pub elapsed: Amount,
    /// The temperature of the air, below both.
    pub ambient: Amount,
    /// The upper limit of the window.
    pub max: Amount,
    /// How many degrees a minute of running warms again, from zero.
    pub reheat_per_minute: Amount,
    /// From starting the engine until the level is read, from zero.
    pub reheat_time: Amount,
}

/// How long to wait, and for what.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[non_exhaustive]
pub struct CoolDown {
    /// Start the engine at this temperature: below the limit by what running warms again.
    pub target: Amount,
    /// Most likely, from the second reading on, in the unit of the elapsed time; 0 where the target is reached.
    pub wait: Amount,
    /// The shortest wait that the last places of the two readings leave open, in the same unit.
    pub earliest: Amount,
    /// The longest.
    pub latest: Amount,
    /// In which the distance from the air falls to 1/e, in the same unit.
    pub time_constant: Amount,
    /// Ids of the cautions that go with it.
    pub cautions: &'static [&'static str],
}

const CAUTIONS: &[&str] = &[
    "hot_fluid",
    "close_before_stop",
    "reheats_on_start",
    "auto_start",
];

/// When fluid that was found too warm has cooled far enough to start again and read the level below the upper limit.
///
/// τ = Δt / ln((T₁ − Ta) / (T₂ − Ta)); target = max − rate · time; wait = τ · ln((T₂ − Ta) / (target − Ta)).
/// Each reading may be half its last place off either way: `earliest` and `latest` are the wait at the ends of both.
/// The target is in the unit of `max`. Source: the lumped thermal capacity of any text on heat transfer; the target from
/// common practice, no source.
///
/// # Errors
///
/// [`WrongKind`](crate::ErrorKind::WrongKind); [`OutOfRange`](crate::ErrorKind::OutOfRange) for readings that do not fall by more than
/// the place they are read to or lie at or below the air, for times or rates that cannot be, and where cooling to this air never reaches the target.
///
/// ```
/// use brimline::{Amount, Kind, Rounding, Unit, warm_up::{Cooling, cool_down}};
/// let rate = Amount::parse_as("1.5 °C", Kind::TemperatureDifference, None)?;
/// let plan = cool_down(Cooling {
///     first: Amount::parse("70 °C")?,
///     second: Amount::parse("60 °C")?,
///     elapsed: Amount::parse("10 min")?,
///     ambient: Amount::parse("20 °C")?,
///     max: Amount::parse("45 °C")?,
///     reheat_per_minute: rate,
///     reheat_time: Amount::parse("4 min")?,
/// })?;
/// assert_eq!(plan.target.to_string(), "39 °C");
/// // 10 / ln(50/40) · ln(40/19)
/// assert_eq!(plan.wait.to(Unit::Minute, 2, Rounding::HalfEven)?.to_string(), "33.36 min");
/// # Ok::<(), brimline::Error>(())
/// ```
pub fn cool_down(cooling: Cooling) -> Result<CoolDown, Error> {
    let ambient = above_zero("ambient", cooling.ambient, Unit::Kelvin)?;
    let first = number("first", cooling.first, Unit::Kelvin)?;
    let second = number("second", cooling.second, Unit::Kelvin)?;
    let elapsed = above_zero("elapsed", cooling.elapsed, Unit::Second)?;
    let max = number("max", cooling.max, Unit::Kelvin)?;
    let rate = from_zero(
        "reheat_per_minute",
        cooling.reheat_per_minute,
        Unit::CelsiusDifference,
    )?;
    let minutes = from_zero("reheat_time", cooling.reheat_time, Unit::Second)? / 60.0;
    if second <= ambient {
        let fault = out_of_range("second", cooling.second);
        return Err(fault.hint("cooling readings lie above the air").into());
    }
    let places = place(cooling.first)?.saturating_add(place(cooling.second)?);
    let count = |reading: Amount| reading.count().unwrap_or_default();
    let fall = count(cooling.first).saturating_sub(count(cooling.second));
    if fall > 0 && fall.saturating_mul(2) <= places {
        let fault = out_of_range("second", cooling.second);
        let hint = "the readings differ by no more than the place they are read to: wait until it has cooled further";
        return Err(fault.hint(hint).into());
    }
    if first <= second {
        let fault = out_of_range("second", cooling.second);
        let hint = "the second reading of a cooling fluid lies below the first: wait until it does";
        return Err(fault.hint(hint).into());
    }
    let target = max - rate * minutes;
    if target <= ambient {
        let fault = out_of_range("max", cooling.max);
        let hint = "cooling to this air never leaves room for what running warms again: shorten the time until \
                    the reading, or warm up from cold and read while it rises";
        return Err(fault.hint(hint).into());
    }
    let time_constant =
        |first: f64, second: f64| elapsed / libm::log((first - ambient) / (second - ambient));
    let unit = cooling.elapsed.unit();
    // Both readings off by so much of half a last place, away from each other.
    let wait = |off: f64| {
        let [first_off, second_off] =
            [cooling.first, cooling.second].map(|reading| off * half_place(reading));
        let (first, second) = (first + first_off, second - second_off);
        if second <= target {
            return Amount::new(0, 0, unit);
        }
        let left = libm::log((second - ambient) / (target - ambient));
        computed("second", time_constant(first, second) * left, unit)
    };
    Ok(CoolDown {
        target: computed("max", target, cooling.max.unit())?,
        wait: wait(0.0)?,
        earliest: wait(1.0)?,
        latest: wait(-1.0)?,
        time_constant: computed("second", time_constant(first, second), unit)?,
        cautions: CAUTIONS,
    })
}

/// The last place a temperature is read to, in counts of temperature.
fn place(reading: Amount) -> Result<i128, Error> {
    let place = Amount::new(1, reading.decimals(), difference(reading.unit()))?;
    Ok(place.count().unwrap_or_default())
}

/// Half of it, in kelvin.
fn half_place(reading: Amount) -> f64 {
    let place = Amount::new(1, reading.decimals(), difference(reading.unit()));
    place.map_or(0.0, |place| place.si() / 2.0)
}

/// How long a first-order response takes to go a share of its way.
///
/// t = −τ · ln(1 − share), `share` from 0 to below 1; in the unit of `time_constant`, above zero. Source: the lumped thermal
/// capacity; a published worked example: from 25 °C, 174 of the 175 degrees to 200 °C take ln 175 = 5.16 time constants.
///
/// # Errors
///
/// [`WrongKind`](crate::ErrorKind::WrongKind), [`OutOfRange`](crate::ErrorKind::OutOfRange).
///
/// ```
/// use brimline::{Amount, Rounding, Unit, warm_up::response_time};
/// let [constant, share] = ["2 min", "95 %"].map(Amount::parse);
/// let time = response_time(constant?, share?)?;
/// assert_eq!(time.to(Unit::Minute, 2, Rounding::HalfEven)?.to_string(), "5.99 min");
/// # Ok::<(), brimline::Error>(())
/// ```
pub fn response_time(time_constant: Amount, share: Amount) -> Result<Amount, Error> {
    let constant = above_zero("time_constant", time_constant, Unit::Second)?;
    let gone = from_zero("share", share, Unit::One)?;
    if gone >= 1.0 {
        let fault = out_of_range("share", share).allowed(["0 to below 1"]);
        return Err(fault.hint("the whole way is never gone").into());
    }
    let time = -constant * libm::log1p(-gone);
    computed("time_constant", time, time_constant.unit())
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, clippy::arithmetic_side_effects)]

    use super::*;
    use crate::quantity::Unit;
    use alloc::string::ToString;

    fn amount(text: &str) -> Amount {
        Amount::parse(text).unwrap()
    }

    fn cooling() -> Cooling {
        Cooling {
            first: amount("70 °C"),
            second: amount("60 °C"),
            elapsed: amount("10 min"),
            ambient: amount("20 °C"),
            max: amount("45 °C"),
            reheat_per_minute: Amount::parse_as(
                "1.5 °C",
                crate::quantity::Kind::TemperatureDifference,
                None,
            )
            .unwrap(),
            reheat_time: amount("240 s"),
        }
    }

    #[test]
    fn the_target_lies_below_the_limit_by_what_running_warms_again() {
        let plan = cool_down(cooling()).unwrap();
        assert_eq!(plan.target, amount("39 °C"));
        // 10 / ln(50/40) = 44.81 min; times ln(40/19) = 33.36 min, from logarithms in a printed table.
        assert!((plan.time_constant.to_f64() - 44.814).abs() < 5e-3);
        assert!((plan.wait.to_f64() - 33.36).abs() < 5e-3);
        assert!(plan.cautions.contains(&"hot_fluid"));
        // Read to a whole degree: 10 / ln(50.5/39.5) · ln(39.5/19), and 10 / ln(49.5/40.5) · ln(40.5/19).
        assert!((plan.earliest.to_f64() - 29.79).abs() < 5e-3, "{plan:?}");
        assert!((plan.latest.to_f64() - 37.72).abs() < 5e-3, "{plan:?}");
        let there = Cooling {
            max: amount("70 °C"),
            ..cooling()
        };
        assert_eq!(cool_down(there).unwrap().wait.to_string(), "0 min");
        assert_eq!(cool_down(there).unwrap().latest.to_string(), "0 min");
    }

    #[test]
    fn what_does_not_cool_there_is_refused() {
        let path = |cooling: Cooling| cool_down(cooling).unwrap_err().first().path.clone();
        assert_eq!(
            path(Cooling {
                second: amount("70 °C"),
                ..cooling()
            }),
            "second"
        );
        assert_eq!(
            path(Cooling {
                second: amount("20 °C"),
                ..cooling()
            }),
            "second"
        );
        // A degree of difference between whole degrees may be none.
        let first = amount("61 °C");
        assert_eq!(path(Cooling { first, ..cooling() }), "second");
        let first = amount("61.1 °C");
        assert!(cool_down(Cooling { first, ..cooling() }).is_ok());
        assert_eq!(
            path(Cooling {
                elapsed: amount("0 min"),
                ..cooling()
            }),
            "elapsed"
        );
        assert_eq!(
            path(Cooling {
                max: amount("26 °C"),
                ..cooling()
            }),
            "max"
        );
        assert_eq!(
            path(Cooling {
                reheat_time: amount("-1 s"),
                ..cooling()
            }),
            "reheat_time"
        );
        assert_eq!(
            path(Cooling {
                reheat_per_minute: amount("1 °C"),
                ..cooling()
            }),
            "reheat_per_minute"
        );
        assert_eq!(
            path(Cooling {
                ambient: amount("-300 °C"),
                ..cooling()
            }),
            "ambient"
        );
    }

    #[track_caller]
    fn near(found: Amount, number: f64, tolerance: f64) {
        let found = found.to_f64();
        assert!((found - number).abs() <= tolerance, "{found} for {number}");
    }

    #[test]
    fn responses_take_what_textbooks_say() {
        // Incropera, example 5.1, companion: from 25 °C to 199 °C in gas of 200 °C, one second of time constant; the
        // companion rounds ln 10 and prints 5.16 s.
        let share = Amount::from_computed(174.0 / 175.0, Unit::One).unwrap();
        near(response_time(amount("1 s"), share).unwrap(), 5.16, 0.01);
        // The same: h 400 W/m²K, ρ 8500 kg/m³, c 400 J/kgK and the diameter printed give that second back.
        near(
            amount("1 s"),
            8500.0 * 400.0 * 7.06e-4 / (6.0 * 400.0),
            1e-3,
        );
        // A companion to Cengel, example 4-1: D 1 mm, h 210, ρ 8500, c 320; 99 % after 10 s (exactly 9.941).
        let constant =
            Amount::from_computed(8500.0 * 320.0 * 0.001 / 6.0 / 210.0, Unit::Second).unwrap();
        near(
            response_time(constant, amount("99 %")).unwrap(),
            9.941,
            5e-4,
        );
        // Any text on heat transfer: 95 % (0.9502) after three time constants.
        near(
            response_time(amount("1 s"), amount("0.9502 ratio")).unwrap(),
            3.0,
            1e-3,
        );
        assert_eq!(
            response_time(amount("1 s"), amount("0 %"))
                .unwrap()
                .to_string(),
            "0 s"
        );
        assert!(response_time(amount("1 s"), amount("100 %")).is_err());
        assert!(response_time(amount("0 s"), amount("50 %")).is_err());
        assert!(response_time(amount("1 s"), amount("-1 %")).is_err());
    }
}
