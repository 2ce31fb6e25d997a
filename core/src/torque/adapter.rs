//! A wrench with an adapter on it: what it applies, and what it is set to.

use super::{above_zero, computed, number, of_kind, out_of_range};
use crate::error::{Error, ErrorKind, Fault};
use crate::quantity::{Amount, Kind, Unit};
use alloc::format;
use serde::Serialize;

/// A wrench as it is put on the plug.
///
/// ```
/// use brimline::{Amount, torque::Wrench};
/// let [lever, adapter] = ["230 mm", "40 mm"].map(Amount::parse);
/// let wrench = Wrench { adapter: Some(adapter?), ..Wrench::new(lever?) };
/// assert_eq!(wrench.angle, None);
/// # Ok::<(), brimline::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Wrench {
    /// From the mark of the grip to the drive, above zero.
    pub lever: Amount,
    /// From the drive to the plug, above zero and not above the lever; `None` where no adapter is on it.
    pub adapter: Option<Amount>,
    /// Between lever and adapter: 0° straight out, the default, to 180° pointing back.
    pub angle: Option<Amount>,
    /// The step of the scale; `None` where any setting can be set.
    pub graduation: Option<Amount>,
}

impl Wrench {
    /// A wrench without an adapter, set to any value.
    #[must_use]
    pub const fn new(lever: Amount) -> Self {
        Wrench {
            lever,
            adapter: None,
            angle: None,
            graduation: None,
        }
    }

    fn gain(&self) -> Result<f64, Error> {
        above_zero("lever", self.lever, Kind::Length)?;
        match Adapter::of(self.adapter, self.angle)? {
            Some(adapter) => adapter.gain_to_set(self.lever),
            None => Ok(1.0),
        }
    }
}

/// What a wrench is set to, and what that gives.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[non_exhaustive]
pub struct Setting {
    /// What to set it to: on the graduation and in its unit, or unrounded in the unit of the target.
    pub setting: Amount,
    /// The torque at the plug with that setting, in the unit of the target.
    pub applied: Amount,
    /// How far that is from the target, in per cent of it.
    pub error: Amount,
    /// What to mind, as caution ids.
    pub cautions: &'static [&'static str],
}

/// What goes with one for an adapter, with every setting, and with one that is far from the target.
const CAUTIONS: &[&str] = &[
    "grip_at_mark",
    "torque_unit",
    "threads_as_printed",
    "graduation_coarse",
];

/// How far in per cent a setting may be from the target before it is cautioned against: what ISO 6789 allows the wrench
/// itself.
const COARSE_PER_CENT: f64 = 4.0;

/// The cautions of a setting that is so many per cent from the target.
pub(super) fn cautions(with_adapter: bool, per_cent_off: f64) -> &'static [&'static str] {
    let all = usize::from(!with_adapter)..;
    let all = CAUTIONS.get(all).unwrap_or(CAUTIONS);
    match all.split_last() {
        Some((_, of_all)) if per_cent_off.abs() <= COARSE_PER_CENT => of_all,
        _ => all,
    }
}

/// What a wrench is set to so that the plug gets the target.
///
/// S = T·L / (L + E·cos a), rounded to the graduation (halfway to the even step). `target` above zero; `printed` is what
/// the sheet prints, where it is known: a target that is the set-point for it, within 1 %, is refused, for it would be
/// corrected twice. Without an adapter the setting is the target. The rule holds for a reading at the drive as well as
/// for a click, with the hand at the mark of the grip. A setting that comes out more than 4 % from the target carries a
/// caution of its own.
///
/// Source: NAVEDTRA 14315, figures 3-44 and 3-45, and TM 1-1500-204-23-9, figure 8-16, for the straight adapter; the
/// cosine from the geometry. TM 9-254, figure 4-6, prints the angled lever with a multiplication sign for the plus.
///
/// # Errors
///
/// [`WrongKind`](ErrorKind::WrongKind); [`OutOfRange`](ErrorKind::OutOfRange) for what is not above zero, an adapter
/// longer than the lever or pointing back over more than half of it, an angle outside 0° to 180°, a graduation coarser
/// than the setting or too fine for the setting to be told; [`Conflict`](ErrorKind::Conflict) for an angle without an
/// adapter and for a set-point given as target.
///
/// ```
/// use brimline::{Amount, torque::{Wrench, wrench_setting}};
/// let [target, lever, adapter] = ["40 lbf·ft", "12 in", "4 in"].map(Amount::parse);
/// let wrench = Wrench { adapter: Some(adapter?), ..Wrench::new(lever?) };
/// // TM 9-2350-261-20-1, page 2-29.
/// assert_eq!(wrench_setting(target?, &wrench, None)?.setting.to_string(), "30 lbf·ft");
/// # Ok::<(), brimline::Error>(())
/// ```
pub fn wrench_setting(
    target: Amount,
    wrench: &Wrench,
    printed: impl Into<Option<Amount>>,
) -> Result<Setting, Error> {
    above_zero("target", target, Kind::Torque)?;
    let gain = wrench.gain()?;
    if let Some(printed) = printed.into() {
        refuse_set_point(target, printed, gain)?;
    }
    let cautions = |per_cent_off| cautions(wrench.adapter.is_some(), per_cent_off);
    let Some(graduation) = wrench.graduation else {
        let setting = match wrench.adapter {
            Some(_) => computed("target", target.to_f64() / gain, target.unit())?,
            None => target,
        };
        return Ok(Setting {
            setting,
            applied: target,
            error: Amount::new(0, 0, Unit::Percent)?,
            cautions: cautions(0.0),
        });
    };
    above_zero("graduation", graduation, Kind::Torque)?;
    let unit = graduation.unit();
    let wanted = computed("target", number(target, unit) / gain, unit)?;
    let Some(setting) = on_graduation(wanted, graduation)? else {
        let fault = out_of_range("graduation", graduation).allowed([format!("up to {wanted}")]);
        return Err(fault.hint("take a tool with a finer scale").into());
    };
    let applied = number(setting, target.unit()) * gain;
    let error = (applied / target.to_f64() - 1.0) * 100.0;
    let error = computed("target", error, Unit::Percent)?;
    Ok(Setting {
        setting,
        applied: computed("target", applied, target.unit())?,
        error,
        // As it is told, so that 4 % is 4 % whatever binary fractions lose.
        cautions: cautions(error.to_f64()),
    })
}

/// The torque at the plug of a wrench that is set to `setting` and carries an adapter.
///
/// T = S·(L + E·cos a) / L: `lever` L from the mark of the grip to the drive, `adapter` E from the drive to the plug,
/// `angle` a between them, 0° straight out (the default), 90° without effect, 180° pointing back; all but the angle above
/// zero. The answer is in the unit of the setting. Source: TM 9-254, figure 4-5, for the straight adapter; the cosine
/// from the geometry.
///
/// # Errors
///
/// [`WrongKind`](ErrorKind::WrongKind); [`OutOfRange`](ErrorKind::OutOfRange) for what is not above zero, an adapter
/// longer than the lever or pointing back over all of it, an angle outside 0° to 180°.
///
/// ```
/// use brimline::{Amount, torque::applied_torque};
/// let [setting, lever, adapter] = ["60 lbf·in", "12 in", "2 in"].map(Amount::parse);
/// let applied = applied_torque(setting?, lever?, adapter?, None)?;
/// assert_eq!(applied.to_string(), "70 lbf·in");
/// # Ok::<(), brimline::Error>(())
/// ```
pub fn applied_torque(
    setting: Amount,
    lever: Amount,
    adapter: Amount,
    angle: impl Into<Option<Amount>>,
) -> Result<Amount, Error> {
    above_zero("setting", setting, Kind::Torque)?;
    above_zero("lever", lever, Kind::Length)?;
    let gain = Adapter::new(adapter, angle.into())?.gain_or_refuse(lever)?;
    computed("setting", setting.to_f64() * gain, setting.unit())
}

/// What the plug must get at least for one of the setting; common practice, no source.
const LEAST_GAIN: f64 = 0.5;

/// An adapter on a wrench.
#[derive(Clone, Copy)]
pub(super) struct Adapter {
    length: Amount,
    /// How much of it lies along the lever; below zero where it points back.
    along: f64,
}

impl Adapter {
    pub(super) fn new(adapter: Amount, angle: Option<Amount>) -> Result<Self, Error> {
        above_zero("adapter", adapter, Kind::Length)?;
        let mut along = 1.0;
        if let Some(angle) = angle {
            of_kind("angle", angle, Kind::Angle)?;
            let degrees = number(angle, Unit::Degree);
            if !(0.0..=180.0).contains(&degrees) {
                let fault = out_of_range("angle", angle).allowed(["0 deg to 180 deg"]);
                let hint =
                    "0 deg is straight out and 180 deg points back; either side reads the same";
                return Err(fault.hint(hint).into());
            }
            along = libm::cos(degrees.to_radians());
        }
        Ok(Adapter {
            length: adapter,
            along,
        })
    }

    /// The adapter, where there is one.
    pub(super) fn of(
        adapter: Option<Amount>,
        angle: Option<Amount>,
    ) -> Result<Option<Self>, Error> {
        match (adapter, angle) {
            (Some(adapter), angle) => Adapter::new(adapter, angle).map(Some),
            (None, None) => Ok(None),
            (None, Some(angle)) => {
                let fault = Fault::new(ErrorKind::Conflict)
                    .at("angle")
                    .got(&format!("{angle}"));
                let hint =
                    "an angle is that of an adapter: give the adapter, or leave the angle out";
                Err(fault.hint(hint).into())
            }
        }
    }

    /// What the plug gets for one of the setting; `None` where the lever is too short for it.
    pub(super) fn gain(&self, lever: Amount) -> Option<f64> {
        let (length, lever) = (number(self.length, lever.unit()), lever.to_f64());
        let gain = (lever + length * self.along) / lever;
        (length <= lever && gain > 0.0).then_some(gain)
    }

    /// The same where a wrench is to be set: pointing back over more than half of the lever, it would be set to more than
    /// twice the torque, and every fault of an arm counts double.
    pub(super) fn settable(&self, lever: Amount) -> Option<f64> {
        self.gain(lever).filter(|gain| *gain >= LEAST_GAIN)
    }

    fn gain_to_set(&self, lever: Amount) -> Result<f64, Error> {
        let gain = self.gain_or_refuse(lever)?;
        if gain < LEAST_GAIN {
            let fault = out_of_range("adapter", self.length)
                .allowed(["pointing back over at most half of the lever"]);
            let hint = "an adapter pointing back this far takes a setting of more than twice the torque: turn it, or \
                take a longer wrench";
            return Err(fault.hint(hint).into());
        }
        Ok(gain)
    }

    fn gain_or_refuse(&self, lever: Amount) -> Result<f64, Error> {
        self.gain(lever).ok_or_else(|| {
            let fault = out_of_range("adapter", self.length)
                .allowed(["above zero and shorter than the lever"]);
            let hint = "lever: from the grip to the drive; adapter: from the drive to the plug";
            fault.hint(hint).into()
        })
    }
}

/// The multiple of the graduation nearest to an amount in its unit, halfway to the even one; `None` where the graduation
/// is above it.
pub(super) fn on_graduation(wanted: Amount, graduation: Amount) -> Result<Option<Amount>, Error> {
    if graduation > wanted {
        return Ok(None);
    }
    let finest = |amount: Amount| {
        let power = 10_i128.saturating_pow(9_u32.saturating_sub(amount.decimals().into()));
        i128::from(amount.mantissa()).saturating_mul(power)
    };
    let (wanted, step) = (finest(wanted), finest(graduation));
    let whole = wanted.checked_div(step).unwrap_or_default();
    let left = wanted.saturating_sub(whole.saturating_mul(step));
    let left = left.saturating_mul(2);
    let up = left > step || (left == step && whole & 1 == 1);
    let steps = whole.saturating_add(up.into());
    let steps = i64::try_from(steps).unwrap_or(i64::MAX);
    match graduation.times(steps) {
        Ok(setting) => Ok(Some(setting)),
        Err(_) => {
            let hint =
                "the setting has more digits than an amount: give the step that the scale has";
            Err(out_of_range("graduation", graduation).hint(hint).into())
        }
    }
}

/// Refuses a target that is what the wrench is set to for the printed torque.
fn refuse_set_point(target: Amount, printed: Amount, gain: f64) -> Result<(), Error> {
    const NEAR: f64 = 0.01;
    above_zero("printed", printed, Kind::Torque)?;
    let (torque, wanted) = (target.to_f64(), number(printed, target.unit()));
    let set_point = wanted / gain;
    let off = (torque - set_point).abs();
    if off > NEAR * set_point || off >= (torque - wanted).abs() {
        return Ok(());
    }
    let fault = Fault::new(ErrorKind::Conflict)
        .at("target")
        .got(&format!("{target}"))
        .allowed([format!("{printed}")]);
    let hint = "this is what the wrench is set to for the printed torque: give the printed torque as the target, or the \
            adapter is corrected for twice";
    Err(fault.hint(hint).into())
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]

    use super::*;
    use alloc::string::ToString;

    fn amount(text: &str) -> Amount {
        Amount::parse(text).unwrap()
    }

    fn wrench(lever: &str, adapter: &str, angle: &str, graduation: &str) -> Wrench {
        let given = |text: &str| (!text.is_empty()).then(|| amount(text));
        Wrench {
            lever: amount(lever),
            adapter: given(adapter),
            angle: given(angle),
            graduation: given(graduation),
        }
    }

    fn setting(target: &str, wrench: &Wrench) -> Setting {
        wrench_setting(amount(target), wrench, None).unwrap()
    }

    fn refused(
        target: &str,
        wrench: &Wrench,
        printed: Option<&str>,
    ) -> (ErrorKind, alloc::string::String) {
        let error = wrench_setting(amount(target), wrench, printed.map(amount)).unwrap_err();
        (error.kind(), error.first().path.clone())
    }

    /// Printed set-points with half of the last printed digit, or exact where the arithmetic is.
    #[test]
    fn published_settings() {
        for (target, lever, adapter, angle, printed, tolerance) in [
            // NAVEDTRA 14315, figures 3-44 and 3-45.
            ("100 lbf·in", "12 in", "6 in", "", 66.7, 0.05),
            // TM 1-1500-204-23-9, figure 8-16.
            ("300 lbf·in", "10 in", "4 in", "", 214.0, 0.5),
            // TM 9-2350-261-20-1, page 2-29.
            ("40 lbf·ft", "12 in", "4 in", "", 30.0, 1e-9),
            // TM 5-3805-274-13&P, WP 0051, figure 4.
            ("19 lbf·ft", "22 in", "3 in", "", 17.0, 0.5),
            // A light-aircraft maintenance manual, paragraph 2-90.
            ("30 lbf·ft", "12 in", "3 in", "", 24.0, 1e-9),
            // A rotorcraft maintenance manual, figures 20-1 and 20-2: forward, and pointing back.
            ("135 lbf·in", "10 in", "1.5 in", "", 117.39, 0.005),
            ("135 lbf·in", "10 in", "1.5 in", "180 deg", 158.82, 0.005),
            // NAVEDTRA 14008: at a right angle the reading stands.
            ("100 lbf·in", "12 in", "6 in", "90 deg", 100.0, 1e-9),
            // 1200 / (12 + 6 · 0.70711), worked by hand.
            ("100 lbf·in", "12 in", "6 in", "45 deg", 73.8796, 5e-5),
        ] {
            let found = setting(target, &wrench(lever, adapter, angle, "")).setting;
            let off = (found.to_f64() - printed).abs();
            assert!(
                off <= tolerance,
                "{target}, {lever}, {adapter}, {angle}: {found}"
            );
        }
    }

    /// TM 9-254, figure 4-6, prints l_T x l_A cos a for the lever; 6 in at 60 deg is 3 in, so the lever is 15 in.
    #[test]
    fn the_misprinted_sign_is_a_plus() {
        let found = setting("100 lbf·in", &wrench("12 in", "6 in", "60 deg", ""));
        assert_eq!(found.setting.to_string(), "80 lbf·in");
    }

    #[test]
    fn the_setting_is_on_the_graduation() {
        // 14 · 230 / 270 = 11.926 N·m; 12 gives 12 · 270 / 230 = 14.0869565 N·m, 0.621 % more.
        let found = setting("14 N·m", &wrench("230 mm", "40 mm", "", "0.5 N·m"));
        assert_eq!(found.setting.to_string(), "12.0 N·m");
        assert_eq!(found.applied.to_string(), "14.086956522 N·m");
        assert_eq!(found.error.to_string(), "0.621118012 %");
        assert_eq!(
            found.cautions,
            ["grip_at_mark", "torque_unit", "threads_as_printed"]
        );
        // 14 N·m is 10.33 lbf·ft: 10.25 on a quarter scale.
        let found = setting("14 N·m", &wrench("300 mm", "", "", "0.25 lbf·ft"));
        assert_eq!(found.setting.to_string(), "10.25 lbf·ft");
        assert_eq!(found.cautions, ["torque_unit", "threads_as_printed"]);
        // Halfway goes to the even step: 0.35 of 0.1 is 3.5 steps, 0.25 is 2.5.
        for (target, set) in [("0.35 N·m", "0.4 N·m"), ("0.25 N·m", "0.2 N·m")] {
            let found = setting(target, &wrench("300 mm", "", "", "0.1 N·m"));
            assert_eq!(found.setting.to_string(), set);
        }
    }

    #[test]
    fn a_coarse_scale_is_cautioned_against() {
        // 12 N·m on steps of 5 N·m: 10 N·m, 16.7 % less. 12.5 N·m on steps of 0.5 and 1: none, and 4 % less.
        for (target, graduation, coarse) in [
            ("12 N·m", "5 N·m", true),
            ("12.5 N·m", "0.5 N·m", false),
            ("12.5 N·m", "1 N·m", false),
            ("12.51 N·m", "3 N·m", true),
        ] {
            let found = setting(target, &wrench("300 mm", "", "", graduation));
            let is_told = found.cautions.contains(&"graduation_coarse");
            assert_eq!(is_told, coarse, "{target}: {}", found.error);
        }
    }

    #[test]
    fn an_adapter_does_not_point_back_over_half_of_the_lever() {
        let half = setting("14 N·m", &wrench("200 mm", "100 mm", "180 deg", ""));
        assert_eq!(half.setting.to_string(), "28 N·m");
        let more = wrench("200 mm", "101 mm", "180 deg", "");
        let error = wrench_setting(amount("14 N·m"), &more, None).unwrap_err();
        let fault = error.first();
        assert_eq!(
            (error.kind(), fault.path.as_str()),
            (ErrorKind::OutOfRange, "adapter")
        );
        assert!(fault.hint.as_ref().unwrap().contains("pointing back"));
        // What was done is told all the same.
        let [setting, lever, adapter] = ["14 N·m", "200 mm", "150 mm"].map(amount);
        let applied = applied_torque(setting, lever, adapter, amount("180 deg")).unwrap();
        assert_eq!(applied.to_string(), "3.5 N·m");
    }

    #[test]
    fn a_setting_past_the_digits_of_an_amount_is_refused() {
        let wrench = wrench("300 mm", "", "", "0.000000003 N·m");
        assert_eq!(
            refused("1129848290276 N·m", &wrench, None),
            (ErrorKind::OutOfRange, "graduation".to_string())
        );
    }

    #[test]
    fn without_adapter_and_graduation_the_target_stands() {
        let found = setting("14.0 N·m", &wrench("300 mm", "", "", ""));
        assert_eq!(
            (
                found.setting.number().as_str(),
                found.error.to_string().as_str()
            ),
            ("14.0", "0 %")
        );
    }

    #[test]
    fn known_misreadings_are_refused() {
        let out = |name: &str| (ErrorKind::OutOfRange, name.to_string());
        for (target, lever, adapter, angle, graduation, name) in [
            ("14 N·m", "0 mm", "40 mm", "", "", "lever"),
            ("14 N·m", "-230 mm", "40 mm", "", "", "lever"),
            ("14 N·m", "230 mm", "0 mm", "", "", "adapter"),
            ("14 N·m", "230 mm", "-40 mm", "", "", "adapter"),
            ("14 N·m", "40 mm", "230 mm", "", "", "adapter"),
            ("14 N·m", "40 mm", "40 mm", "180 deg", "", "adapter"),
            ("14 N·m", "230 mm", "40 mm", "-1 deg", "", "angle"),
            (
                "14 N·m",
                "230 mm",
                "40 mm",
                "180.000000001 deg",
                "",
                "angle",
            ),
            ("0 N·m", "230 mm", "40 mm", "", "", "target"),
            ("-14 N·m", "230 mm", "40 mm", "", "", "target"),
            ("14 N·m", "230 mm", "40 mm", "", "0 N·m", "graduation"),
            ("14 N·m", "230 mm", "40 mm", "", "15 N·m", "graduation"),
        ] {
            let wrench = wrench(lever, adapter, angle, graduation);
            assert_eq!(refused(target, &wrench, None), out(name));
        }
        let kind = |name: &str| (ErrorKind::WrongKind, name.to_string());
        assert_eq!(
            refused("14 mm", &wrench("1 m", "", "", ""), None),
            kind("target")
        );
        assert_eq!(
            refused("14 N·m", &wrench("1 N·m", "", "", ""), None),
            kind("lever")
        );
        assert_eq!(
            refused("14 N·m", &wrench("1 m", "1 s", "", ""), None),
            kind("adapter")
        );
        assert_eq!(
            refused("14 N·m", &wrench("1 m", "1 mm", "1 s", ""), None),
            kind("angle")
        );
        assert_eq!(
            refused("14 N·m", &wrench("1 m", "", "", "1 mm"), None),
            kind("graduation")
        );
        let conflict = (ErrorKind::Conflict, "angle".to_string());
        assert_eq!(
            refused("14 N·m", &wrench("1 m", "", "45 deg", ""), None),
            conflict
        );
    }

    #[test]
    fn a_set_point_is_no_target() {
        // For 14 N·m this wrench is set to 11.93 N·m.
        let wrench = wrench("230 mm", "40 mm", "", "");
        let conflict = (ErrorKind::Conflict, "target".to_string());
        for target in ["11.93 N·m", "12 N·m"] {
            assert_eq!(refused(target, &wrench, Some("14 N·m")), conflict);
        }
        for (target, printed) in [
            ("14 N·m", "14 N·m"),
            ("124 lbf·in", "14 N·m"),
            ("11 N·m", "14 N·m"),
        ] {
            assert!(wrench_setting(amount(target), &wrench, amount(printed)).is_ok());
        }
        // At a right angle both are one.
        let square = Wrench {
            angle: Some(amount("90 deg")),
            ..wrench
        };
        assert!(wrench_setting(amount("14 N·m"), &square, amount("14 N·m")).is_ok());
    }

    #[test]
    fn an_uncorrected_setting_applies_too_much() {
        // 14 · 270 / 230 = 16.43 N·m.
        let [setting, lever, adapter] = ["14 N·m", "230 mm", "40 mm"].map(amount);
        let applied = applied_torque(setting, lever, adapter, None).unwrap();
        assert!((applied.to_f64() - 16.43).abs() < 0.005);
    }
}
