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
use crate::quantity::argument::{above_zero, computed, from_zero, number, out_of_range};
use crate::quantity::{Amount, Unit};

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
        limit.map_or(Ok(none), |limit| number(name, limit, unit))
    };
    let lo = end(lower, f64::NEG_INFINITY, lower_name)?;
    let hi = end(upper, f64::INFINITY, upper_name)?;
    match upper.or(lower) {
        Some(limit) if lo > hi => Err(out_of_range(upper_name, limit)
            .hint("the lower limit comes first")
            .into()),
        Some(_) => Ok((lo, hi)),
        None => {
            let fault = Fault::new(ErrorKind::Conflict).at(upper_name);
            let hint = "give a lower limit, an upper limit, or both";
            Err(fault.hint(hint).into())
        }
    }
}
