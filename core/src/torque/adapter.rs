//! A wrench with an adapter on it: what it applies, and what it is set to.

use crate::error::{Error, ErrorKind, Fault};
use crate::quantity::Amount;

/// The torque at the plug of a wrench that is set to `setting` and carries an adapter.
///
/// T = S·(L + E·cos a) / L: `lever` L from the middle of the grip to the drive, `adapter` E from the drive to the plug,
/// `angle` a between them, 0° straight out (the default), 90° without effect, 180° pointing back. The answer is in the unit
/// of the setting. Source: TM 9-254, figure 4-5, for the straight adapter; the cosine from the geometry.
///
/// # Errors
///
/// [`WrongKind`](ErrorKind::WrongKind); [`OutOfRange`](ErrorKind::OutOfRange) for a lever or an adapter that is not above
/// zero, an adapter longer than the lever, an angle outside 0° to 180°.
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
    let (lever, adapter) = (lever.length()?.value, adapter.length()?.value);
    let angle = angle
        .into()
        .map_or(Ok(0.0), |angle| angle.angle().map(|angle| angle.value))?;
    if lever <= 0.0 {
        return Err(Fault::new(ErrorKind::OutOfRange).at("lever").into());
    }
    let reach = adapter * libm::cos(angle);
    Amount::from_si(
        setting.torque()?.value * (lever + reach) / lever,
        setting.unit(),
    )
}
