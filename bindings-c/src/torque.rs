//! Wrenches, tightened joints, and torques on threads.

use crate::amount::brim_amount;
use crate::calculator::reckon;
use crate::error::{brim_error, brim_status};
use crate::list::{self, number, numbers};
use crate::said::caution;
use crate::text::text;
use crate::unit::brim_unit;
use brimline_core::torque::{
    self, Fits, Friction, PlugKind, StrengthClass, Thread, ThreadCondition, Wrench,
};
use brimline_core::{Amount, Error};
use std::ffi::c_char;

/// What the threads and the face under the head are like. 0 where K itself is given.
pub type brim_thread_condition = i32;

/// Plain steel, dry.
pub const BRIM_THREAD_CONDITION_DRY_STEEL: brim_thread_condition = 1;
/// Steel with machine oil.
pub const BRIM_THREAD_CONDITION_MACHINE_OIL: brim_thread_condition = 2;
/// Cadmium plated.
pub const BRIM_THREAD_CONDITION_CADMIUM: brim_thread_condition = 3;
/// Phosphated and oiled.
pub const BRIM_THREAD_CONDITION_PHOSPHATE_AND_OIL: brim_thread_condition = 4;
/// Zinc plated.
pub const BRIM_THREAD_CONDITION_ZINC: brim_thread_condition = 5;
/// Stainless steel of type 302.
pub const BRIM_THREAD_CONDITION_STAINLESS: brim_thread_condition = 6;
/// With threadlocker: published values contradict each other, so it has no range.
pub const BRIM_THREAD_CONDITION_THREADLOCKER: brim_thread_condition = 7;
/// With another lubricant: published values run too far apart, so it has no range.
pub const BRIM_THREAD_CONDITION_LUBRICATED_OTHER: brim_thread_condition = 8;

/// A strength class of steel bolts (ISO 898-1); `BRIM_STRENGTH_CLASS_8_8` is 8.8.
pub type brim_strength_class = i32;

/// Soft steel.
pub const BRIM_STRENGTH_CLASS_4_6: brim_strength_class = 1;
/// Soft steel, cold worked.
pub const BRIM_STRENGTH_CLASS_4_8: brim_strength_class = 2;
/// Soft steel.
pub const BRIM_STRENGTH_CLASS_5_6: brim_strength_class = 3;
/// Soft steel, cold worked.
pub const BRIM_STRENGTH_CLASS_5_8: brim_strength_class = 4;
/// Soft steel, cold worked.
pub const BRIM_STRENGTH_CLASS_6_8: brim_strength_class = 5;
/// Quenched and tempered.
pub const BRIM_STRENGTH_CLASS_8_8: brim_strength_class = 6;
/// Quenched and tempered.
pub const BRIM_STRENGTH_CLASS_9_8: brim_strength_class = 7;
/// Quenched and tempered.
pub const BRIM_STRENGTH_CLASS_10_9: brim_strength_class = 8;
/// Quenched and tempered.
pub const BRIM_STRENGTH_CLASS_12_9: brim_strength_class = 9;

/// What is screwed in, and into what.
pub type brim_plug = i32;

/// A solid bolt or plug of steel, in steel. For one that only seals, the band is an upper bound.
pub const BRIM_PLUG_STEEL: brim_plug = 1;
/// Into aluminium or another light alloy, or a plug of one.
pub const BRIM_PLUG_LIGHT_ALLOY: brim_plug = 2;
/// A hollow plug, as one with a standpipe.
pub const BRIM_PLUG_HOLLOW: brim_plug = 3;
/// Not known.
pub const BRIM_PLUG_UNKNOWN: brim_plug = 4;

/// Whether a torque fits a thread.
pub type brim_fits = i32;

/// It lies within the band.
pub const BRIM_FITS_YES: brim_fits = 1;
/// It lies above the band.
pub const BRIM_FITS_NO: brim_fits = 2;
/// It lies below the band, where a plug that seals is right, or the band is none for this plug.
pub const BRIM_FITS_NOT_JUDGED: brim_fits = 3;

numbers! { ThreadCondition of ThreadCondition::WORDS.len();
    BRIM_THREAD_CONDITION_DRY_STEEL DrySteel, BRIM_THREAD_CONDITION_MACHINE_OIL MachineOil,
    BRIM_THREAD_CONDITION_CADMIUM Cadmium, BRIM_THREAD_CONDITION_PHOSPHATE_AND_OIL PhosphateAndOil,
    BRIM_THREAD_CONDITION_ZINC Zinc, BRIM_THREAD_CONDITION_STAINLESS Stainless,
    BRIM_THREAD_CONDITION_THREADLOCKER Threadlocker,
    BRIM_THREAD_CONDITION_LUBRICATED_OTHER LubricatedOther,
}

numbers! { StrengthClass of StrengthClass::WORDS.len();
    BRIM_STRENGTH_CLASS_4_6 Class4_6, BRIM_STRENGTH_CLASS_4_8 Class4_8,
    BRIM_STRENGTH_CLASS_5_6 Class5_6, BRIM_STRENGTH_CLASS_5_8 Class5_8,
    BRIM_STRENGTH_CLASS_6_8 Class6_8, BRIM_STRENGTH_CLASS_8_8 Class8_8,
    BRIM_STRENGTH_CLASS_9_8 Class9_8, BRIM_STRENGTH_CLASS_10_9 Class10_9,
    BRIM_STRENGTH_CLASS_12_9 Class12_9,
}

numbers! { PlugKind of PlugKind::WORDS.len();
    BRIM_PLUG_STEEL Steel, BRIM_PLUG_LIGHT_ALLOY LightAlloy, BRIM_PLUG_HOLLOW Hollow,
    BRIM_PLUG_UNKNOWN Unknown,
}

numbers! { Fits of Fits::WORDS.len();
    BRIM_FITS_YES Yes, BRIM_FITS_NO No, BRIM_FITS_NOT_JUDGED NotJudged,
}

/// What a wrench is set to so that the plug gets the target torque, above zero. `lever` is from
/// the mark of the grip to the drive. NULL leaves out: `adapter`, from the drive to the plug, not
/// above the lever; `angle` between the two, 0 deg straight out, which it is if left out, to 180
/// deg pointing back; `graduation`, the step of the scale; `printed`, what the sheet prints, so
/// that the setting for it is not taken for the target. `setting` is on the graduation and in its
/// unit, else in the unit of the target; `applied` is what the plug gets with it, and `difference`
/// how far that is from the target, in %. `buffer` receives the ids of the cautions that whoever
/// sets the wrench is shown, a line each: see `brim_caution_text`.
///
/// Errors: `BRIM_ERROR_WRONG_KIND`; `BRIM_ERROR_OUT_OF_RANGE` for what is not above zero, an
/// adapter longer than the lever or pointing back over more than half of it, an angle outside 0 to
/// 180 deg, a graduation coarser than the setting; `BRIM_ERROR_CONFLICT` for an angle without an
/// adapter and for a set-point given as target.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_wrench_setting(
    target: *const brim_amount,
    lever: *const brim_amount,
    adapter: *const brim_amount,
    angle: *const brim_amount,
    graduation: *const brim_amount,
    printed: *const brim_amount,
    setting: *mut brim_amount,
    applied: *mut brim_amount,
    difference: *mut brim_amount,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    reckon!(error, [target, lever; adapter, angle, graduation, printed],
        found = {
            let wrench = Wrench { lever, adapter, angle, graduation };
            let found = torque::wrench_setting(target, &wrench, printed)?;
            // SAFETY: pointers as the header asks.
            unsafe { caution(found.cautions, buffer, capacity, length)? };
            found
        };
        setting = found.setting, applied = found.applied, difference = found.error)
}

/// The torque at the plug of a wrench that is set to `setting` and carries an adapter, in the unit
/// of the setting. Lengths and `angle`, which NULL leaves out, are those of `brim_wrench_setting`.
///
/// Errors: `BRIM_ERROR_WRONG_KIND`; `BRIM_ERROR_OUT_OF_RANGE` for what is not above zero, an
/// adapter longer than the lever or pointing back over all of it, an angle outside 0 to 180 deg.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_applied_torque(
    setting: *const brim_amount,
    lever: *const brim_amount,
    adapter: *const brim_amount,
    angle: *const brim_amount,
    applied: *mut brim_amount,
    error: *mut brim_error,
) -> brim_status {
    reckon!(error, [setting, lever, adapter; angle],
        applied = torque::applied_torque(setting, lever, adapter, angle)?)
}

/// The preload of a joint that was tightened to a torque, in N, from the least to the most, by the
/// short form F = T / (K * D). `torque` and the nominal `diameter` are above zero. K is `k`, a
/// ratio above 0 and up to 1, or the range published for `condition`: one of the two, the other
/// NULL or 0. `k_low` and `k_high` receive the range it was reckoned with.
///
/// Errors: `BRIM_ERROR_WRONG_KIND`, `BRIM_ERROR_OUT_OF_RANGE`; `BRIM_ERROR_CONFLICT` for both or
/// neither of `k` and `condition`; `BRIM_ERROR_UNKNOWN_VALUE` for a condition without a range.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_preload(
    torque: *const brim_amount,
    diameter: *const brim_amount,
    k: *const brim_amount,
    condition: brim_thread_condition,
    preload_low: *mut brim_amount,
    preload_high: *mut brim_amount,
    k_low: *mut brim_amount,
    k_high: *mut brim_amount,
    error: *mut brim_error,
) -> brim_status {
    reckon!(error, [torque, diameter; k],
        found = torque::preload(torque, diameter, friction(k, condition)?)?;
        preload_low = found.preload.lo(), preload_high = found.preload.hi(),
        k_low = found.k.lo(), k_high = found.k.hi())
}

/// The torque that gives a joint its preload, in N.m, from the least to the most, by the short
/// form T = K * D * F; `preload`, a force, and the nominal `diameter` are above zero, the rest is
/// as in `brim_preload`. `buffer` receives the ids of the cautions that whoever tightens the joint
/// is shown, a line each: see `brim_caution_text`.
///
/// Errors: as `brim_preload`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_torque_for_preload(
    preload: *const brim_amount,
    diameter: *const brim_amount,
    k: *const brim_amount,
    condition: brim_thread_condition,
    torque_low: *mut brim_amount,
    torque_high: *mut brim_amount,
    k_low: *mut brim_amount,
    k_high: *mut brim_amount,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    reckon!(error, [preload, diameter; k],
        found = {
            let found = torque::torque_for_preload(preload, diameter, friction(k, condition)?)?;
            // SAFETY: pointers as the header asks.
            unsafe { caution(found.cautions, buffer, capacity, length)? };
            found
        };
        torque_low = found.torque.lo(), torque_high = found.torque.hi(),
        k_low = found.k.lo(), k_high = found.k.hi())
}

fn friction(k: Option<Amount>, condition: brim_thread_condition) -> Result<Friction, Error> {
    Friction::of(k, list::value_if(condition, "condition")?)
}

/// The load that a bolt of a metric thread, as `M10x1` or `M10`, and of a strength class bears
/// without lengthening, in N: the nominal stress area times the stress under proof load (ISO
/// 898-1).
///
/// Errors: `BRIM_ERROR_UNKNOWN_VALUE` for a thread that is none, with those there are, and for a
/// unified one.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_proof_load(
    thread: *const c_char,
    thread_length: usize,
    strength_class: brim_strength_class,
    load: *mut brim_amount,
    error: *mut brim_error,
) -> brim_status {
    reckon!(
        error,
        [],
        load = {
            // SAFETY: pointers as the header asks.
            let thread = designated(unsafe { text(thread, thread_length, "thread")? })?;
            torque::proof_load(&thread, list::value(strength_class, "strength_class")?)?
        }
    )
}

/// Whether a printed torque, above zero, fits a thread, as `M10x1` or `1/4-20`. `band_low` to
/// `band_high` is usual for solid steel bolts that clamp, in steel, in N.m. Only its upper end
/// judges, for a plug that seals gets less; for any other plug it is told and judges nothing.
/// `slip_unit` is the unit in which the number would fit, which makes it `slip_torque`; 0 for none,
/// and no more than a question where the fit is not judged, as below a sixth of `band_low`, where
/// no plug holds. `buffer` receives the ids of the cautions that go with it, a line each: see
/// `brim_caution_text`.
///
/// Errors: `BRIM_ERROR_WRONG_KIND`, `BRIM_ERROR_OUT_OF_RANGE`; `BRIM_ERROR_UNKNOWN_VALUE` for a
/// thread that is none, with those there are, and for a number of no plug.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_plausible(
    torque: *const brim_amount,
    thread: *const c_char,
    thread_length: usize,
    plug: brim_plug,
    fits: *mut brim_fits,
    band_low: *mut brim_amount,
    band_high: *mut brim_amount,
    slip_unit: *mut brim_unit,
    slip_torque: *mut brim_amount,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    reckon!(error, [torque],
        found = {
            // SAFETY: pointers as the header asks.
            let thread = designated(unsafe { text(thread, thread_length, "thread")? })?;
            let found = torque::plausible(torque, &thread, list::value(plug, "plug")?)?;
            // SAFETY: the same.
            unsafe { caution(found.cautions, buffer, capacity, length)? };
            found
        };
        fits = number(found.fits), band_low = found.band.lo(), band_high = found.band.hi(),
        slip_unit = found.slip.as_ref().map_or(0, |slip| slip.unit.code()),
        slip_torque = found.slip.as_ref().map(|slip| slip.torque))
}

/// A thread by its designation.
fn designated(designation: &str) -> Result<Thread, Error> {
    Thread::parse(designation).map_err(|refused| refused.first().clone().at("thread").into())
}
