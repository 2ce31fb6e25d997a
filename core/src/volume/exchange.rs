//! How much of the old fluid is left after draining and filling, or flushing.
//!
//! Everything here takes the fluid for mixed before each drain, and all volumes at one temperature.

use super::{above_zero, from_zero, out_of_range, si, times};
use crate::error::Error;
use crate::quantity::{Amount, Kind, Unit};
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
}

/// What is left after flushing.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[non_exhaustive]
pub struct Flush {
    /// Share of the old fluid.
    pub old: Amount,
    /// Share of the new fluid.
    pub fresh: Amount,
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

const CAUTIONS: &[&str] = &["mix_between", "hot_fluid", "no_dry_start", "disposal"];

/// What binary fractions lose in a number of changes.
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
    let old = share_kept(share_drained(capacity, drained)?, cycles);
    Ok(Exchange {
        old: share(old)?,
        fresh: share(1.0 - old)?,
        used: times("cycles", drained, f64::from(cycles))?,
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
    let part = share_drained(capacity, drained)?;
    above_zero("drained", drained, Kind::Volume)?;
    let old = share_not(fresh, part >= 1.0)?;
    let cycles = if part >= 1.0 {
        if old < 1.0 { 1.0 } else { 0.0 }
    } else {
        let cycles = libm::log(old) / libm::log1p(-part);
        libm::ceil(cycles - ROUNDING * cycles.max(1.0))
    };
    if cycles > f64::from(u32::MAX) {
        let fault = out_of_range("drained", drained);
        return Err(fault.hint("so little at a time never gets there").into());
    }
    let cycles = cycles as u32;
    let Exchange { old, fresh, used } = exchange(capacity, drained, cycles)?;
    Ok(CyclesNeeded {
        cycles,
        old,
        fresh,
        used,
        cautions: CAUTIONS,
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
    let held = above_zero("capacity", capacity, Kind::Volume)?;
    let turns = from_zero("flowed", flowed, Kind::Volume)? / held;
    Ok(Flush {
        old: share(libm::exp(-turns))?,
        fresh: share(-libm::expm1(-turns))?,
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
/// assert_eq!(format!("{:.0}", flush_needed(capacity?, fresh?)?.to_f64()), "276");
/// # Ok::<(), brimline::Error>(())
/// ```
pub fn flush_needed(capacity: Amount, fresh: Amount) -> Result<Amount, Error> {
    above_zero("capacity", capacity, Kind::Volume)?;
    let old = share_not(fresh, false)?;
    times("capacity", capacity, -libm::log(old))
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
    let part = share_drained(capacity, drained)?;
    let first = share_of("wrong", wrong, capacity)?;
    share(first * share_kept(part, cycles))
}

fn share_drained(capacity: Amount, drained: Amount) -> Result<f64, Error> {
    above_zero("capacity", capacity, Kind::Volume)?;
    share_of("drained", drained, capacity)
}

/// A part of the capacity.
fn share_of(name: &'static str, part: Amount, capacity: Amount) -> Result<f64, Error> {
    let volume = from_zero(name, part, Kind::Volume)?;
    if part > capacity {
        let hint = "the unit does not hold that much";
        let fault = out_of_range(name, part).allowed([alloc::format!("at most {capacity}")]);
        return Err(fault.hint(hint).into());
    }
    Ok(volume / capacity.si())
}

fn share_kept(drained: f64, cycles: u32) -> f64 {
    libm::pow(1.0 - drained, cycles.into())
}

/// What a share of fresh fluid leaves to the old; none may be left only where that can be reached.
fn share_not(fresh: Amount, none: bool) -> Result<f64, Error> {
    si("fresh", fresh, Kind::Ratio)?;
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
        let hint = "some of the old fluid always stays";
        let fault = out_of_range("fresh", fresh).allowed([allowed]);
        return Err(if none { fault } else { fault.hint(hint) }.into());
    }
    Ok(old.si())
}

fn share(value: f64) -> Result<Amount, Error> {
    Amount::from_computed(value, Unit::One)
}
