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
use crate::quantity::{Amount, Interval, Unit};
use alloc::string::{String, ToString};

/// The value of an argument in SI, which must be of the kind of the unit `like`.
fn si(amount: Amount, like: Unit, name: &str) -> Result<f64, Error> {
    if amount.kind() != like.kind() {
        Amount::new(0, 0, like)?
            .compare(&amount)
            .map_err(|error| named(&error, name))?;
    }
    Ok(amount.si())
}

/// The same of an argument that must be above zero.
fn above_zero(amount: Amount, like: Unit, name: &str) -> Result<f64, Error> {
    let value = si(amount, like, name)?;
    if value > 0.0 {
        Ok(value)
    } else {
        let hint = "this must be more than nothing";
        Err(out_of_range(amount, name, hint).into())
    }
}

/// The same of an argument that must not be below zero.
fn from_zero(amount: Amount, like: Unit, name: &str) -> Result<f64, Error> {
    let value = si(amount, like, name)?;
    if value >= 0.0 {
        Ok(value)
    } else {
        let hint = "this cannot be less than nothing";
        Err(out_of_range(amount, name, hint).into())
    }
}

/// The ends of a range in SI, infinite where it has none; it must have one.
fn ends(range: Interval, like: Unit, name: &str) -> Result<(f64, f64), Error> {
    if range == Interval::UNBOUNDED {
        let fault = Fault::new(ErrorKind::Conflict).at(name);
        return Err(fault
            .hint("give a lower limit, an upper limit, or both")
            .into());
    }
    let end = |end: Option<Amount>, none| end.map_or(Ok(none), |end| si(end, like, name));
    Ok((
        end(range.lo(), f64::NEG_INFINITY)?,
        end(range.hi(), f64::INFINITY)?,
    ))
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
