//! How much of the old fluid is left after draining and filling, or flushing.
//!
//! Everything here takes the fluid for mixed before each drain, and all volumes at one temperature.

use super::{above_zero, computed, from_zero, number, of_kind, out_of_range};
use crate::error::Error;
use crate::quantity::{Amount, Kind, Unit};
use alloc::format;
use serde::Serialize;

/// What is left after a number of changes.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[non_exhaustive]
pub struct Exchange {
    /// Share of the old fluid.
    pub old: Amount,
    /// Share of the new fluid.
    pub fresh: Amount,
    /// New fluid used, in the unit of what is drained.
    pub used: Amount,
    /// What to mind, as caution ids.
    pub cautions: &'static [&'static str],
}

/// What is left after flushing.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[non_exhaustive]
pub struct Flush {
    /// Share of the old fluid.
    pub old: Amount,
    /// Share of the new fluid.
    pub fresh: Amount,
    /// What to mind, as caution ids.
    pub cautions: &'static [&'static str],
}

/// How much it takes to flush.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[non_exhaustive]
pub struct FlushNeeded {
    /// New fluid that must flow through, in the unit of the capacity.
    pub volume: Amount,
    /// What to mind, as caution ids.
    pub cautions: &'static [&'static str],
}

/// How many changes it takes.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[non_exhaustive]
pub struct CyclesNeeded {
    /// How often to drain and fill.
    pub cycles: u32,
    /// Share of the old fluid after them.
    pub old: Amount,
    /// Share of the new fluid after them.
    pub fresh: Amount,
    /// New fluid used, in the unit of what is drained.
    pub used: Amount,
    /// What to mind, as caution ids.
    pub cautions: &'static [&'static str],
}

/// What goes with draining and filling; all but the first with flushing.
const CAUTIONS: &[&str] = &["mix_between", "hot_fluid", "no_dry_start", "disposal"];

fn of_flushing() -> &'static [&'static str] {
    CAUTIONS.get(1..).unwrap_or(CAUTIONS)
}

/// More changes than this are no plan.
const MOST_CYCLES: u32 = 10_000;

/// What binary fractions lose in so many changes.
const ROUNDING: f64 = 1e-11;

/// What is left of the old fluid after draining and filling a number of times: (1 - drained/capacity)^cycles.
///
/// `capacity` above zero, of all the fluid in the unit; `drained` each time, zero to the capacity; both at one temperature.
/// What a drain leaves is taken for mixed with what was filled; without running between the changes it stays worse.
///
/// Source: mass balance, formula from memory.
///
/// # Errors
///
/// [`WrongKind`](crate::ErrorKind::WrongKind), [`OutOfRange`](crate::ErrorKind::OutOfRange).
///
/// ```
/// use brimline::{Amount, volume::exchange};
/// let [capacity, drained] = ["10 L", "4 L"].map(Amount::parse);
/// let twice = exchange(capacity?, drained?, 2)?;
/// assert_eq!(twice.old.to_string(), "0.36 ratio");
/// assert_eq!(twice.used.to_string(), "8 L");
/// # Ok::<(), brimline::Error>(())
/// ```
pub fn exchange(capacity: Amount, drained: Amount, cycles: u32) -> Result<Exchange, Error> {
    let old = power(share_kept(capacity, drained)?, cycles);
    let used = drained.to_f64() * f64::from(cycles);
    Ok(Exchange {
        old: share(old)?,
        fresh: share(1.0 - old)?,
        used: computed("cycles", used, drained.unit())?,
        cautions: CAUTIONS,
    })
}

/// How often to drain and fill until the new fluid is at least a share of the whole.
///
/// `capacity` above zero; `drained` each time, above zero to the capacity; both at one temperature; `fresh` 0 to 1, 1 only
/// where everything is drained.
///
/// Source: as [`exchange`], solved for the number.
///
/// # Errors
///
/// [`WrongKind`](crate::ErrorKind::WrongKind), [`OutOfRange`](crate::ErrorKind::OutOfRange).
///
/// ```
/// use brimline::{Amount, volume::cycles_needed};
/// let [capacity, drained, fresh] = ["7.4 L", "3.5 L", "85 %"].map(Amount::parse);
/// let needed = cycles_needed(capacity?, drained?, fresh?)?;
/// assert_eq!((needed.cycles, needed.used.to_string().as_str()), (3, "10.5 L"));
/// # Ok::<(), brimline::Error>(())
/// ```
pub fn cycles_needed(
    capacity: Amount,
    drained: Amount,
    fresh: Amount,
) -> Result<CyclesNeeded, Error> {
    let kept = share_kept(capacity, drained)?;
    above_zero("drained", drained, drained.unit())?;
    let wanted = share_not(fresh, kept == 0.0)? * (1.0 + ROUNDING);
    let (mut cycles, mut left) = (0_u32, 1.0);
    while left > wanted {
        if cycles == MOST_CYCLES {
            let fault = out_of_range("drained", drained);
            let hint = "so little at a time takes more than 10000 changes";
            return Err(fault.hint(hint).into());
        }
        cycles = cycles.saturating_add(1);
        left *= kept;
    }
    let Exchange {
        old,
        fresh,
        used,
        cautions,
    } = exchange(capacity, drained, cycles)?;
    Ok(CyclesNeeded {
        cycles,
        old,
        fresh,
        used,
        cautions,
    })
}

/// What is left of the old fluid when new fluid flows through and mixes perfectly: exp(-flowed/capacity).
///
/// `capacity` above zero, `flowed` zero and above, both at one temperature. Imperfect mixing leaves more.
///
/// Source: the stirred tank, formula from memory; CDC MMWR 1994;43(RR-13), table S3-1 tabulates it for air.
///
/// # Errors
///
/// [`WrongKind`](crate::ErrorKind::WrongKind), [`OutOfRange`](crate::ErrorKind::OutOfRange).
///
/// ```
/// use brimline::{Amount, volume::flush};
/// let [capacity, flowed] = ["7.4 L", "7.4 L"].map(Amount::parse);
/// assert_eq!(flush(capacity?, flowed?)?.old.to_string(), "0.367879441 ratio");
/// # Ok::<(), brimline::Error>(())
/// ```
pub fn flush(capacity: Amount, flowed: Amount) -> Result<Flush, Error> {
    let held = above_zero("capacity", capacity, Unit::Litre)?;
    let turns = from_zero("flowed", flowed, Unit::Litre)? / held;
    Ok(Flush {
        old: share(libm::exp(-turns))?,
        fresh: share(-libm::expm1(-turns))?,
        cautions: of_flushing(),
    })
}

/// How much new fluid must flow through, mixing perfectly, until it is a share of the whole; in the unit of the capacity.
///
/// `capacity` above zero, `fresh` 0 to below 1.
///
/// Source: as [`flush`], solved for the volume.
///
/// # Errors
///
/// [`WrongKind`](crate::ErrorKind::WrongKind), [`OutOfRange`](crate::ErrorKind::OutOfRange).
///
/// ```
/// use brimline::{Amount, volume::flush_needed};
/// let [capacity, fresh] = ["60 L", "99 %"].map(Amount::parse);
/// // 276 minutes at one change an hour (CDC MMWR 1994;43(RR-13), table S3-1).
/// assert_eq!(format!("{:.0}", flush_needed(capacity?, fresh?)?.volume.to_f64()), "276");
/// # Ok::<(), brimline::Error>(())
/// ```
pub fn flush_needed(capacity: Amount, fresh: Amount) -> Result<FlushNeeded, Error> {
    of_kind("capacity", capacity, Kind::Volume)?;
    let held = above_zero("capacity", capacity, capacity.unit())?;
    let turns = -libm::log(share_not(fresh, false)?);
    Ok(FlushNeeded {
        volume: computed("capacity", held * turns, capacity.unit())?,
        cautions: of_flushing(),
    })
}

/// The share of a wrong fluid that is left in the whole after draining and filling a number of times.
///
/// `capacity` above zero; `wrong` in it at the start, `drained` each time, both zero to the capacity; all at one temperature.
///
/// Source: as [`exchange`].
///
/// # Errors
///
/// [`WrongKind`](crate::ErrorKind::WrongKind), [`OutOfRange`](crate::ErrorKind::OutOfRange).
///
/// ```
/// use brimline::{Amount, volume::wrong_left};
/// let [capacity, wrong, drained] = ["10 L", "1 L", "4 L"].map(Amount::parse);
/// assert_eq!(wrong_left(capacity?, wrong?, drained?, 2)?.to_string(), "0.036 ratio");
/// # Ok::<(), brimline::Error>(())
/// ```
pub fn wrong_left(
    capacity: Amount,
    wrong: Amount,
    drained: Amount,
    cycles: u32,
) -> Result<Amount, Error> {
    let kept = share_kept(capacity, drained)?;
    let first = share_of("wrong", wrong, capacity)?;
    share(first * power(kept, cycles))
}

/// What one drain leaves of the whole.
fn share_kept(capacity: Amount, drained: Amount) -> Result<f64, Error> {
    Ok(1.0 - share_of("drained", drained, capacity)?)
}

/// A part of the capacity, zero to one.
fn share_of(name: &'static str, part: Amount, capacity: Amount) -> Result<f64, Error> {
    let whole = above_zero("capacity", capacity, Unit::Litre)?;
    let volume = from_zero(name, part, Unit::Litre)?;
    if volume > whole {
        let fault = out_of_range(name, part).allowed([format!("at most {capacity}")]);
        return Err(fault.hint("the unit does not hold that much").into());
    }
    Ok(volume / whole)
}

fn power(mut base: f64, mut exponent: u32) -> f64 {
    let mut power = 1.0;
    while exponent > 0 {
        if exponent & 1 == 1 {
            power *= base;
        }
        base *= base;
        exponent >>= 1;
    }
    power
}

/// What a share of fresh fluid leaves to the old; none may be left only where that can be reached.
fn share_not(fresh: Amount, none: bool) -> Result<f64, Error> {
    of_kind("fresh", fresh, Kind::Ratio)?;
    let whole = Amount::new(
        if fresh.unit() == Unit::Percent {
            100
        } else {
            1
        },
        0,
        fresh.unit(),
    )?;
    // Taken off exactly: of 99.9999999 % a double keeps too little.
    let old = whole.checked_sub(fresh)?;
    if fresh.is_negative() || old.is_negative() || (old.is_zero() && !none) {
        let allowed = if none {
            "0 to 100 %"
        } else {
            "0 to below 100 %"
        };
        let fault = out_of_range("fresh", fresh).allowed([allowed]);
        let meant_per_cent = fresh.unit() == Unit::One && fresh.to_f64() > 1.0;
        let fault = if meant_per_cent && fresh.to_f64() <= 100.0 {
            fault.hint(format!(
                "a ratio is at most 1: for per cent write {} %",
                fresh.number()
            ))
        } else if none {
            fault
        } else {
            fault.hint("some of the old fluid always stays")
        };
        return Err(fault.into());
    }
    number("fresh", old, Unit::One)
}

fn share(value: f64) -> Result<Amount, Error> {
    Amount::from_computed(value, Unit::One)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]

    use super::*;
    use crate::error::ErrorKind;
    use alloc::string::{String, ToString};

    fn amount(text: &str) -> Amount {
        Amount::parse(text).unwrap()
    }

    fn near(got: Amount, wanted: f64, within: f64) {
        assert!(
            (got.to_f64() - wanted).abs() <= within,
            "{got} for {wanted}"
        );
    }

    fn refused<T: core::fmt::Debug>(answer: Result<T, Error>) -> (ErrorKind, String) {
        let error = answer.unwrap_err();
        (error.kind(), error.first().path.clone())
    }

    #[test]
    fn drains_and_fills() {
        // Mass balance, formula from memory, worked by hand.
        for (cycles, old) in (0..).zip([1.0, 0.6, 0.36, 0.216, 0.1296, 0.07776]) {
            let left = exchange(amount("10 L"), amount("4 L"), cycles).unwrap();
            near(left.old, old, 1e-9);
            near(left.fresh, 1.0 - old, 1e-9);
            near(left.used, 4.0 * f64::from(cycles), 1e-9);
        }
        // Common practice, no source: new fluid in per cent, to the whole one.
        for (capacity, drained, fresh) in [
            ("7.4 L", "3.5 L", [47, 72, 85, 92]),
            ("8.2 L", "3.6 L", [44, 69, 82, 90]),
        ] {
            for (cycles, fresh) in (1..).zip(fresh) {
                let left = exchange(amount(capacity), amount(drained), cycles).unwrap();
                near(left.fresh, f64::from(fresh) / 100.0, 0.005);
            }
        }
        let all = exchange(amount("7.4 L"), amount("7400 mL"), 1).unwrap();
        assert_eq!((all.old.si(), all.fresh.si()), (0.0, 1.0));
        assert_eq!(
            exchange(amount("7.4 L"), amount("3.5 L"), u32::MAX)
                .unwrap()
                .old
                .si(),
            0.0
        );
    }

    #[test]
    fn how_often() {
        let needed = |drained, fresh| {
            let told = cycles_needed(amount("10 L"), amount(drained), amount(fresh)).unwrap();
            (told.cycles, told.used.to_string())
        };
        let used = |cycles, used: &str| (cycles, used.to_string());
        assert_eq!(needed("4 L", "0.36 ratio"), used(1, "4 L"));
        // Reached exactly, and just missed.
        assert_eq!(needed("4 L", "64 %"), used(2, "8 L"));
        assert_eq!(needed("4 L", "64.0000001 %"), used(3, "12 L"));
        assert_eq!(needed("4 L", "87.04 %"), used(4, "16 L"));
        assert_eq!(needed("5 L", "99.9999999 %"), used(30, "150 L"));
        assert_eq!(needed("9 L", "99.9999999 %"), used(9, "81 L"));
        assert_eq!(needed("4 L", "0 %"), used(0, "0 L"));
        assert_eq!(needed("10 L", "100 %"), used(1, "10 L"));
        assert_eq!(needed("10 L", "0 %"), used(0, "0 L"));
        let told = cycles_needed(amount("7.4 L"), amount("3.5 L"), amount("85 %")).unwrap();
        assert_eq!((told.cycles, told.used.to_string().as_str()), (3, "10.5 L"));
        assert!(told.cautions.contains(&"mix_between"));
    }

    #[test]
    fn flushes() {
        // The stirred tank, formula from memory, values computed apart from this code; 5e-9.
        for (flowed, old) in [
            ("0 L", 1.0),
            ("7.4 L", 0.36787944),
            ("14.8 L", 0.13533528),
            ("22.2 L", 0.04978707),
        ] {
            let left = flush(amount("7.4 L"), amount(flowed)).unwrap();
            near(left.old, old, 5e-9);
            near(left.fresh, 1.0 - old, 5e-9);
        }
        // CDC MMWR 1994;43(RR-13), table S3-1: minutes to 90, 99 and 99.9 % at 1, 2, 4, 6 and 12 changes an hour; 0.5. A litre
        // a minute through 60, 30, 15, 10 and 5 L.
        for (capacity, minutes) in [
            ("60 L", [138.0, 276.0, 414.0]),
            ("30 L", [69.0, 138.0, 207.0]),
            ("15 L", [35.0, 69.0, 104.0]),
            ("10 L", [23.0, 46.0, 69.0]),
            ("5 L", [12.0, 23.0, 35.0]),
        ] {
            for (fresh, minutes) in ["90 %", "0.99 ratio", "99.9 %"].into_iter().zip(minutes) {
                let needed = flush_needed(amount(capacity), amount(fresh)).unwrap();
                near(needed.volume, minutes, 0.5);
            }
        }
        // The table's row of 50 changes, and a textbook problem: 768 from 3 % to 0.01 % at 100 an hour, 43.8 minutes.
        near(
            flush_needed(amount("1.2 L"), amount("99 %"))
                .unwrap()
                .volume,
            6.0,
            0.5,
        );
        let minutes = flush_needed(amount("460.8 L"), amount("99.6666667 %")).unwrap();
        near(minutes.volume, 43.8 * 60.0, 0.05 * 60.0);
    }

    #[test]
    fn a_wrong_fluid() {
        let left = |wrong, cycles| {
            wrong_left(amount("10 L"), amount(wrong), amount("4 L"), cycles).unwrap()
        };
        near(left("1 L", 0), 0.1, 1e-12);
        near(left("1 L", 2), 0.036, 1e-12);
        near(left("10 L", 4), 0.1296, 1e-12);
    }

    #[test]
    fn what_cannot_be_is_refused() {
        let [held, part, share] = ["7.4 L", "3.5 L", "90 %"].map(amount);
        let out = |path: &str| (ErrorKind::OutOfRange, path.to_string());
        let [none, less, more] = ["0 L", "-1 L", "7.5 L"].map(amount);
        assert_eq!(refused(exchange(none, part, 2)), out("capacity"));
        assert_eq!(refused(exchange(held, more, 2)), out("drained"));
        assert_eq!(refused(exchange(held, less, 2)), out("drained"));
        assert_eq!(refused(flush(held, less)), out("flowed"));
        assert_eq!(refused(flush(less, part)), out("capacity"));
        assert_eq!(refused(wrong_left(held, more, part, 2)), out("wrong"));
        assert_eq!(refused(cycles_needed(held, none, share)), out("drained"));
        assert_eq!(
            refused(cycles_needed(held, amount("0.1 mL"), share)),
            out("drained")
        );
        for fresh in ["100 %", "1 ratio", "110 %", "-0.1 ratio"] {
            assert_eq!(refused(flush_needed(held, amount(fresh))), out("fresh"));
            assert_eq!(
                refused(cycles_needed(held, part, amount(fresh))),
                out("fresh")
            );
        }
        assert_eq!(
            refused(cycles_needed(held, held, amount("101 %"))),
            out("fresh")
        );
        // Per cent without the sign.
        for (fresh, hinted) in [
            ("90 ratio", true),
            ("1 ratio", false),
            ("101 ratio", false),
            ("110 %", false),
        ] {
            let error = flush_needed(held, amount(fresh)).unwrap_err();
            let hint = error.first().hint.as_ref().unwrap();
            assert_eq!(hint.ends_with("write 90 %"), hinted, "{fresh}: {hint}");
        }
        let wrong = (ErrorKind::WrongKind, "fresh".to_string());
        assert_eq!(refused(flush_needed(held, part)), wrong);
        let wrong = (ErrorKind::WrongKind, "drained".to_string());
        assert_eq!(refused(exchange(held, amount("3.5 kg"), 1)), wrong);
    }
}
