//! Volumes at temperatures, what a level tells, and what is left after draining.

use crate::amount::brim_amount;
use crate::calculator::reckon;
use crate::error::{brim_error, brim_status};
use crate::list::{self, numbers};
use crate::said::caution;
use brimline_core::volume::{self, Base, Expansion};
use brimline_core::{Amount, Error};
use std::ffi::c_char;

/// The temperature at which the density of an oil is told, and the procedure that goes with it
/// (API MPMS 11.1 / ASTM D1250, lubricating-oil group). 0 stands for `BRIM_BASE_15C`.
pub type brim_base = i32;

/// 15 deg C, the SI form of 1980.
pub const BRIM_BASE_15C: brim_base = 1;
/// 60 deg F, the form of 1980.
pub const BRIM_BASE_60F: brim_base = 2;
/// 60 deg F by the procedure of 2004, the factor rounded to five decimals.
pub const BRIM_BASE_60F_2004: brim_base = 3;
/// 15 deg C by way of 60 deg F, by the procedure of 2004, the factor rounded to five decimals.
pub const BRIM_BASE_15C_2004: brim_base = 4;

numbers! { Base of Base::WORDS.len();
    BRIM_BASE_15C At15C, BRIM_BASE_60F At60F, BRIM_BASE_60F_2004 At60F2004,
    BRIM_BASE_15C_2004 At15C2004,
}

/// The base of a number, 0 being the usual one.
fn base(number: brim_base) -> Result<Base, Error> {
    Ok(list::value_if(number, "base")?.unwrap_or_default())
}

fn expansion(
    density: Option<Amount>,
    at_base: brim_base,
    coefficient: Option<Amount>,
) -> Result<Expansion, Error> {
    Expansion::of(density, list::value_if(at_base, "base")?, coefficient)
}

/// The factor from a volume at a temperature, -50 to 150 deg C, to the volume at the base: a ratio
/// of nine decimals, of five by the procedure of 2004. `density` is that at the base, 800.9 to
/// 1163.5 kg/m3.
///
/// Errors: `BRIM_ERROR_WRONG_KIND`, `BRIM_ERROR_OUT_OF_RANGE`; `BRIM_ERROR_UNKNOWN_VALUE` for a
/// number of no base.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_correction_factor(
    density: *const brim_amount,
    temperature: *const brim_amount,
    base: brim_base,
    factor: *mut brim_amount,
    error: *mut brim_error,
) -> brim_status {
    reckon!(
        error,
        [density, temperature],
        factor = volume::correction_factor(density, temperature, self::base(base)?)?
    )
}

/// What a volume at one temperature becomes at another, both -50 to 150 deg C, in its own unit: by
/// the density of the oil at a base, 800.9 to 1163.5 kg/m3, with `coefficient` NULL; or by a plain
/// coefficient, above zero and at most 0.002 per K, with `density` NULL and `base` 0.
///
/// Errors: `BRIM_ERROR_WRONG_KIND`, `BRIM_ERROR_OUT_OF_RANGE`; `BRIM_ERROR_CONFLICT` for both or
/// neither of density and coefficient, or a coefficient with a base; `BRIM_ERROR_UNKNOWN_VALUE`
/// for a number of no base.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_at_temperature(
    volume: *const brim_amount,
    from: *const brim_amount,
    to: *const brim_amount,
    density: *const brim_amount,
    base: brim_base,
    coefficient: *const brim_amount,
    becomes: *mut brim_amount,
    error: *mut brim_error,
) -> brim_status {
    reckon!(error, [volume, from, to; density, coefficient],
        becomes = volume::at_temperature(volume, from, to, expansion(density, base, coefficient)?)?)
}

/// How much more the fluid takes up at the temperature it is read at than at the reference, below
/// zero where it is colder; in the unit of `volume`, which is what the unit holds at the
/// reference. The rest is as in `brim_at_temperature`. It tells by how much a level deceives; no
/// sheet is corrected by it that does not say so.
///
/// Errors: as `brim_at_temperature`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_temperature_error(
    volume: *const brim_amount,
    read_at: *const brim_amount,
    reference: *const brim_amount,
    density: *const brim_amount,
    base: brim_base,
    coefficient: *const brim_amount,
    more: *mut brim_amount,
    error: *mut brim_error,
) -> brim_status {
    reckon!(error, [volume, read_at, reference; density, coefficient],
        more = volume::temperature_error(volume, read_at, reference, expansion(density, base, coefficient)?)?)
}

/// The density at the base of an oil whose density was observed at a temperature, -50 to 150 deg
/// C, in the unit it was given in; it must come out as 800.9 to 1163.5 kg/m3.
///
/// Errors: as `brim_correction_factor`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_base_density(
    density: *const brim_amount,
    temperature: *const brim_amount,
    base: brim_base,
    at_base: *mut brim_amount,
    error: *mut brim_error,
) -> brim_status {
    reckon!(
        error,
        [density, temperature],
        at_base = volume::base_density(density, temperature, self::base(base)?)?
    )
}

/// The density at a temperature, -50 to 150 deg C, of an oil whose density at the base is given,
/// 800.9 to 1163.5 kg/m3; in its unit.
///
/// Errors: as `brim_correction_factor`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_density_at(
    density: *const brim_amount,
    temperature: *const brim_amount,
    base: brim_base,
    at_temperature: *mut brim_amount,
    error: *mut brim_error,
) -> brim_status {
    reckon!(
        error,
        [density, temperature],
        at_temperature = volume::density_at(density, temperature, self::base(base)?)?
    )
}

/// The mass of a volume at a temperature, -50 to 150 deg C, in kg. `density` is that at the base,
/// 800.9 to 1163.5 kg/m3.
///
/// Errors: as `brim_correction_factor`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_mass(
    volume: *const brim_amount,
    temperature: *const brim_amount,
    density: *const brim_amount,
    base: brim_base,
    mass: *mut brim_amount,
    error: *mut brim_error,
) -> brim_status {
    reckon!(
        error,
        [volume, temperature, density],
        mass = volume::mass(volume, temperature, density, self::base(base)?)?
    )
}

/// The volume of a mass at a temperature, in L; the other way round as `brim_mass`.
///
/// Errors: as `brim_correction_factor`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_volume_of_mass(
    mass: *const brim_amount,
    temperature: *const brim_amount,
    density: *const brim_amount,
    base: brim_base,
    volume: *mut brim_amount,
    error: *mut brim_error,
) -> brim_status {
    reckon!(
        error,
        [mass, temperature, density],
        volume = volume::volume_of_mass(mass, temperature, density, self::base(base)?)?
    )
}

/// How far the level deceives where the opening lies off the middle of the surface and the unit
/// leans: in height, in the unit of `offset`, and in volume, in L. `surface`, an area, is above
/// zero, `offset` along the lean from zero, `tilt` 0 to below 45 deg. Leaning towards the opening
/// it reads too high, away from it too low: an opening on the low side reads full too early, with
/// less in the unit than there should be, one on the high side too late.
///
/// Errors: `BRIM_ERROR_WRONG_KIND`, `BRIM_ERROR_OUT_OF_RANGE`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_tilt_error(
    surface: *const brim_amount,
    offset: *const brim_amount,
    tilt: *const brim_amount,
    height: *mut brim_amount,
    volume: *mut brim_amount,
    error: *mut brim_error,
) -> brim_status {
    reckon!(error, [surface, offset, tilt],
        found = volume::tilt_error(surface, offset, tilt)?; height = found.height, volume = found.volume)
}

/// The share of a circle that lies below a level, a ratio. The diameter is above zero, the level,
/// from the lowest point, zero to the diameter.
///
/// Errors: `BRIM_ERROR_WRONG_KIND`, `BRIM_ERROR_OUT_OF_RANGE`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_segment_share(
    level: *const brim_amount,
    diameter: *const brim_amount,
    share: *mut brim_amount,
    error: *mut brim_error,
) -> brim_status {
    reckon!(
        error,
        [level, diameter],
        share = volume::segment_share(level, diameter)?
    )
}

/// What is left after draining and filling a number of times, mixed in between: the shares of old
/// and fresh fluid, ratios, and the fresh fluid used, in the unit of what is drained. `capacity`,
/// of all the fluid in the unit, is above zero, `drained` each time zero to the capacity, both at
/// one temperature. `buffer` receives the ids of the cautions that whoever does it is shown, a line
/// each: see `brim_caution_text`.
///
/// Errors: `BRIM_ERROR_WRONG_KIND`, `BRIM_ERROR_OUT_OF_RANGE`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_exchange(
    capacity: *const brim_amount,
    drained: *const brim_amount,
    cycles: u32,
    old: *mut brim_amount,
    fresh: *mut brim_amount,
    used: *mut brim_amount,
    buffer: *mut c_char,
    buffer_capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    reckon!(error, [capacity, drained],
        left = {
            let left = volume::exchange(capacity, drained, cycles)?;
            // SAFETY: pointers as the header asks.
            unsafe { caution(left.cautions, buffer, buffer_capacity, length)? };
            left
        };
        old = left.old, fresh = left.fresh, used = left.used)
}

/// How often to drain and fill until the fresh fluid is at least a share of the whole, `fresh`, a
/// ratio of 0 to 1, 1 only where everything is drained; `old_left`, `fresh_there` and `used` are
/// what `brim_exchange` tells of that many times. `buffer` receives the ids of the cautions that
/// whoever does it is shown, a line each: see `brim_caution_text`.
///
/// Errors: `BRIM_ERROR_WRONG_KIND`, `BRIM_ERROR_OUT_OF_RANGE`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_cycles_needed(
    capacity: *const brim_amount,
    drained: *const brim_amount,
    fresh: *const brim_amount,
    cycles: *mut u32,
    old_left: *mut brim_amount,
    fresh_there: *mut brim_amount,
    used: *mut brim_amount,
    buffer: *mut c_char,
    buffer_capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    reckon!(error, [capacity, drained, fresh],
        needed = {
            let needed = volume::cycles_needed(capacity, drained, fresh)?;
            // SAFETY: pointers as the header asks.
            unsafe { caution(needed.cautions, buffer, buffer_capacity, length)? };
            needed
        };
        cycles = needed.cycles, old_left = needed.old, fresh_there = needed.fresh, used = needed.used)
}

/// What is left when fresh fluid flows through and mixes perfectly: the shares of old and fresh
/// fluid, ratios. `capacity` is above zero, `flowed` from zero, both at one temperature. Imperfect
/// mixing leaves more of the old. `buffer` receives the ids of the cautions that whoever does it is
/// shown, a line each: see `brim_caution_text`.
///
/// Errors: `BRIM_ERROR_WRONG_KIND`, `BRIM_ERROR_OUT_OF_RANGE`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_flush(
    capacity: *const brim_amount,
    flowed: *const brim_amount,
    old: *mut brim_amount,
    fresh: *mut brim_amount,
    buffer: *mut c_char,
    buffer_capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    reckon!(error, [capacity, flowed],
        left = {
            let left = volume::flush(capacity, flowed)?;
            // SAFETY: pointers as the header asks.
            unsafe { caution(left.cautions, buffer, buffer_capacity, length)? };
            left
        };
        old = left.old, fresh = left.fresh)
}

/// How much fresh fluid must flow through, mixing perfectly, until it is a share of the whole, a
/// ratio from 0 to below 1; in the unit of the capacity, which is above zero. `buffer` receives the
/// ids of the cautions that whoever does it is shown, a line each: see `brim_caution_text`.
///
/// Errors: `BRIM_ERROR_WRONG_KIND`, `BRIM_ERROR_OUT_OF_RANGE`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_flush_needed(
    capacity: *const brim_amount,
    fresh: *const brim_amount,
    needed: *mut brim_amount,
    buffer: *mut c_char,
    buffer_capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    reckon!(
        error,
        [capacity, fresh],
        needed = {
            let needed = volume::flush_needed(capacity, fresh)?;
            // SAFETY: pointers as the header asks.
            unsafe { caution(needed.cautions, buffer, buffer_capacity, length)? };
            needed.volume
        }
    )
}

/// The share of a wrong fluid, a ratio, that is left in the whole after draining and filling a
/// number of times. `capacity` is above zero; `wrong` in it at the start and `drained` each time
/// are zero to the capacity, all at one temperature.
///
/// Errors: `BRIM_ERROR_WRONG_KIND`, `BRIM_ERROR_OUT_OF_RANGE`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_wrong_left(
    capacity: *const brim_amount,
    wrong: *const brim_amount,
    drained: *const brim_amount,
    cycles: u32,
    left: *mut brim_amount,
    error: *mut brim_error,
) -> brim_status {
    reckon!(
        error,
        [capacity, wrong, drained],
        left = volume::wrong_left(capacity, wrong, drained, cycles)?
    )
}
