//! Every calculator by its name, with arguments and answer as JSON: one call for hosts that speak JSON only.
//!
//! The formulas are in [`torque`](crate::torque), [`volume`](crate::volume), [`warm_up`](crate::warm_up),
//! [`fluid`](crate::fluid), [`signal`](crate::signal), [`leak`](crate::leak) and [`money`](crate::money), typed; here their arguments are read
//! and their answers written.

mod arguments;
mod fluid;
mod leak;
mod money;
mod signal;
mod torque;
mod volume;
mod warm_up;

use crate::document::{Limits, Reader};
use crate::error::{Error, ErrorKind, Fault};
use alloc::string::String;
use arguments::Arguments;
pub(crate) use torque::tool;

/// What a calculator answers, once its arguments could be read.
type Answer = Result<String, Error>;

/// One calculator: its name, the arguments it takes, and how it is asked.
struct Function {
    name: &'static str,
    takes: &'static [&'static str],
    ask: fn(&mut Arguments<'_, '_, '_>) -> Option<Answer>,
}

const ROOMS: [&[Function]; 7] = [
    torque::FUNCTIONS,
    volume::FUNCTIONS,
    warm_up::FUNCTIONS,
    fluid::FUNCTIONS,
    signal::FUNCTIONS,
    leak::FUNCTIONS,
    money::FUNCTIONS,
];

/// The name of every calculator and the names of its arguments, room by room.
///
/// ```
/// use brimline::calculate::functions;
/// let (_, takes) = functions().find(|(name, _)| *name == "torque.applied_torque").unwrap();
/// assert_eq!(takes, ["setting", "lever", "adapter", "angle"]);
/// ```
pub fn functions() -> impl Iterator<Item = (&'static str, &'static [&'static str])> {
    let all = ROOMS.iter().copied().flatten();
    all.map(|function| (function.name, function.takes))
}

/// Asks one calculator: its arguments as one JSON object, its answer as canonical JSON.
///
/// Quantities are text with their units, as everywhere. A calculator that answers one quantity answers
/// `{"value": …}`.
///
/// # Errors
///
/// [`UnknownValue`](ErrorKind::UnknownValue) for a name that [`functions`] does not have; every fault of the arguments,
/// with its path and place, as for any document; what the calculator itself refuses, with the argument's name as path.
///
/// ```
/// let answer = brimline::calculate::calculate(
///     "torque.applied_torque",
///     r#"{"setting": "60 lbf·in", "lever": "12 in", "adapter": "2 in"}"#,
/// )?;
/// assert_eq!(answer, r#"{"value":"70 lbf·in"}"#);
/// # Ok::<(), brimline::Error>(())
/// ```
pub fn calculate(function: &str, arguments: &str) -> Result<String, Error> {
    calculate_with(function, arguments, &Limits::default())
}

/// As [`calculate`], within limits of the host's own.
///
/// # Errors
///
/// As [`calculate`].
pub fn calculate_with(function: &str, arguments: &str, limits: &Limits) -> Result<String, Error> {
    let mut all = ROOMS.iter().copied().flatten();
    let Some(called) = all.find(|known| known.name == function) else {
        return Err(unknown(function));
    };
    let mut reader = Reader::new(arguments, limits)?;
    let answer = reader.parse().and_then(|node| {
        let object = reader.object(&node, called.takes)?;
        (called.ask)(&mut Arguments::new(&mut reader, &object))
    });
    reader.finish()?;
    answer.unwrap_or_else(|| Err(Fault::new(ErrorKind::Internal).at("arguments").into()))
}

/// The refusal of a name. What it may be is of its room, where it names one.
#[cold]
fn unknown(function: &str) -> Error {
    let is_near = |name: &&str| name.split('.').next() == function.split('.').next();
    let names = || functions().map(|(name, _)| name);
    let any_near = names().any(|name| is_near(&name));
    let fault = Fault::new(ErrorKind::UnknownValue).at("function");
    let names = names().filter(|name| !any_near || is_near(name));
    fault.got(function).allowed(names).into()
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]

    use super::*;
    use alloc::collections::BTreeSet;

    #[test]
    fn every_calculator_has_a_name_of_its_own_in_its_room() {
        let rooms = [
            "torque", "volume", "warm_up", "fluid", "signal", "leak", "money",
        ];
        let mut seen = BTreeSet::new();
        for (functions, room) in ROOMS.iter().zip(rooms) {
            for function in *functions {
                assert!(
                    function
                        .name
                        .strip_prefix(room)
                        .is_some_and(|rest| rest.starts_with('.'))
                );
                assert!(seen.insert(function.name), "{} stands twice", function.name);
            }
        }
    }

    #[test]
    fn a_wrong_name_is_told_what_its_room_has() {
        fn allowed(name: &str) -> usize {
            let refused = calculate(name, "{}").unwrap_err();
            let names = &refused.first().allowed;
            let room = name.split_once('.').map_or("", |(room, _)| room);
            assert!(names.len() > 20 || names.iter().all(|name| name.starts_with(room)));
            names.len()
        }
        for (room, functions) in [("torque", torque::FUNCTIONS), ("leak", leak::FUNCTIONS)] {
            assert_eq!(allowed(&alloc::format!("{room}.nothing")), functions.len());
        }
        for name in ["", ".", "preload", "torques.preload"] {
            assert_eq!(allowed(name), functions().count());
        }
    }
}
