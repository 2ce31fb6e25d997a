//! Warming and cooling: what is worked out at once.

use crate::amount::brim_amount;
use crate::calculator::reckon;
use crate::error::{brim_error, brim_status};
use crate::said::caution;
use brimline_core::warm_up::{self, Cooling};
use std::ffi::c_char;

/// The temperature of fluid after more of it was poured in, in the unit of `temperature`:
/// perfectly mixed, nothing lost to the case or the air. The `volume` that was there is above
/// zero, what was `added` from zero.
///
/// Errors: `BRIM_ERROR_WRONG_KIND`, `BRIM_ERROR_OUT_OF_RANGE`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_mixed_temperature(
    volume: *const brim_amount,
    temperature: *const brim_amount,
    added: *const brim_amount,
    added_temperature: *const brim_amount,
    mixed: *mut brim_amount,
    error: *mut brim_error,
) -> brim_status {
    reckon!(
        error,
        [volume, temperature, added, added_temperature],
        mixed = warm_up::mixed_temperature(volume, temperature, added, added_temperature)?
    )
}

/// When fluid that was found too warm has cooled far enough to start again and read the level
/// below the upper limit of the window. `first` and `second` are readings while it cools, the
/// second lower, `elapsed` apart; `ambient` is the air, below both; `max` the upper limit;
/// `reheat_per_minute` the degrees that a minute of running warms again, a difference, and
/// `reheat_time` from starting until the level is read, both from zero. Start at `start_at`, in
/// the unit of `max`; `wait` runs from the second reading, `earliest` and `latest` being its ends
/// where each reading is half its last place off, and in `time_constant` the distance from the
/// air falls to 1/e, all in the unit of `elapsed`. `buffer` receives the ids of the cautions that
/// whoever waits is shown, a line each: see `brim_caution_text`.
///
/// Errors: `BRIM_ERROR_WRONG_KIND`; `BRIM_ERROR_OUT_OF_RANGE` for readings that do not fall by
/// more than the place they are read to or lie at or below the air, for times or rates that
/// cannot be, and where cooling to this air never gets there.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_cool_down(
    first: *const brim_amount,
    second: *const brim_amount,
    elapsed: *const brim_amount,
    ambient: *const brim_amount,
    max: *const brim_amount,
    reheat_per_minute: *const brim_amount,
    reheat_time: *const brim_amount,
    start_at: *mut brim_amount,
    wait: *mut brim_amount,
    earliest: *mut brim_amount,
    latest: *mut brim_amount,
    time_constant: *mut brim_amount,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    reckon!(error, [first, second, elapsed, ambient, max, reheat_per_minute, reheat_time],
        plan = {
            let cooling = Cooling { first, second, elapsed, ambient, max, reheat_per_minute, reheat_time };
            let plan = warm_up::cool_down(cooling)?;
            // SAFETY: pointers as the header asks.
            unsafe { caution(plan.cautions, buffer, capacity, length)? };
            plan
        };
        start_at = plan.target, wait = plan.wait, earliest = plan.earliest, latest = plan.latest,
        time_constant = plan.time_constant)
}

/// How long a first-order response takes to go a share of its way, a ratio from 0 to below 1; in
/// the unit of the time constant, which is above zero.
///
/// Errors: `BRIM_ERROR_WRONG_KIND`, `BRIM_ERROR_OUT_OF_RANGE`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_response_time(
    time_constant: *const brim_amount,
    share: *const brim_amount,
    time: *mut brim_amount,
    error: *mut brim_error,
) -> brim_status {
    reckon!(
        error,
        [time_constant, share],
        time = warm_up::response_time(time_constant, share)?
    )
}
