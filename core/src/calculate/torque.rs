//! The calculators of `torque`, by name.

use super::arguments::{Arguments, value};
use super::{Answer, Function};
use crate::quantity::Kind;
use crate::torque;

pub(super) const FUNCTIONS: &[Function] = &[Function {
    name: "torque.applied_torque",
    takes: &["setting", "lever", "adapter", "angle"],
    ask: applied_torque,
}];

fn applied_torque(given: &mut Arguments<'_, '_, '_>) -> Option<Answer> {
    let setting = given.amount("setting", Kind::Torque);
    let lever = given.amount("lever", Kind::Length);
    let adapter = given.amount("adapter", Kind::Length);
    let angle = given.amount_if("angle", Kind::Angle);
    value(torque::applied_torque(setting?, lever?, adapter?, angle))
}
