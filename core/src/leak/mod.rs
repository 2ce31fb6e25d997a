//! How much is lost, and whether a limit is passed, with the uncertainty of the measurement.
//!
//! Nothing here says that a gearbox is tight: a sealed unit has no normal consumption, and what lies below a limit or within
//! an uncertainty is told as that and no more.

mod consumption;
mod drip;
mod limit;
mod normal;
mod risk;
mod seepage;

pub use consumption::{Consumption, Rate, Trend, Visit, consumption};
pub use drip::{DripRate, drip_rate, drops_for};
pub use limit::{
    AgainstLimit, Decision, Rule, against_limit, combined_uncertainty, conformance,
    expanded_uncertainty, guard_band, quantile,
};
pub use risk::{Risks, risks};
pub use seepage::{Look, Response, Seepage, SeepageClass, seepage};

use crate::error::{Error, ErrorKind, Fault};
use crate::quantity::{Amount, Unit, convert};
use alloc::string::{String, ToString};

/// The number of an argument in a unit, of whose kind it must be.
fn number(amount: Amount, unit: Unit, name: &str) -> Result<f64, Error> {
    if amount.unit() == unit {
        return Ok(amount.to_f64());
    }
    let checked = if amount.kind() == unit.kind() {
        convert(amount.to_f64(), amount.unit(), unit)
    } else {
        // Refused, as a unit of another kind than the one that is asked for.
        convert(0.0, unit, amount.unit())
    };
    checked.map_err(|error| named(&error, name))
}

/// The same of an argument that must be above zero.
fn above_zero(amount: Amount, unit: Unit, name: &str) -> Result<f64, Error> {
    let number = number(amount, unit, name)?;
    if number > 0.0 {
        Ok(number)
    } else {
        Err(out_of_range(amount, name, "this must be more than nothing").into())
    }
}

/// The same of an argument that must not be below zero.
fn from_zero(amount: Amount, unit: Unit, name: &str) -> Result<f64, Error> {
    let number = number(amount, unit, name)?;
    if number >= 0.0 {
        Ok(number)
    } else {
        Err(out_of_range(amount, name, "this cannot be less than nothing").into())
    }
}

/// The unit of differences of such amounts.
const fn difference(amount: Amount) -> Unit {
    amount.resolution().unit()
}

/// Two limits in a unit, infinite where there is none; there must be one, and the lower comes first.
fn limits(
    [lower, upper]: [Option<Amount>; 2],
    unit: Unit,
    [lower_name, upper_name]: [&'static str; 2],
) -> Result<(f64, f64), Error> {
    let end = |limit: Option<Amount>, none, name| {
        limit.map_or(Ok(none), |limit| number(limit, unit, name))
    };
    let lo = end(lower, f64::NEG_INFINITY, lower_name)?;
    let hi = end(upper, f64::INFINITY, upper_name)?;
    match upper.or(lower) {
        Some(limit) if lo > hi => {
            Err(out_of_range(limit, upper_name, "the lower limit comes first").into())
        }
        Some(_) => Ok((lo, hi)),
        None => {
            let fault = Fault::new(ErrorKind::Conflict).at(upper_name);
            let hint = "give a lower limit, an upper limit, or both";
            Err(fault.hint(hint).into())
        }
    }
}

/// What was computed in a unit, or why it cannot be told of the argument of this name.
fn computed(number: f64, unit: Unit, name: &str) -> Result<Amount, Error> {
    Amount::from_computed(number, unit).map_err(|error| named(&error, name))
}

/// An error as one of the argument of this name.
fn named(error: &Error, name: impl Into<String>) -> Error {
    error.first().clone().at(name).into()
}

fn out_of_range(got: Amount, name: impl Into<String>, hint: &'static str) -> Fault {
    Fault::new(ErrorKind::OutOfRange)
        .at(name)
        .got(&got.to_string())
        .hint(hint)
}
