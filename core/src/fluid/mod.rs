//! Oils and what may be poured onto what: viscosity against temperature, viscosity index, blends, grades, relations.

mod blending;
mod grade;
mod index;
mod index_table;
mod mixing;
mod relation;
mod viscosity;

pub use blending::{BlendRule, Component, blend};
pub use grade::{Grade, grade, grade_limits};
pub use index::{Procedure, ViscosityIndex, viscosity_index};
pub use mixing::{MayMix, Mixing, Offer, Offered, Reason, Statement, may_mix, resolve};
pub(crate) use relation::relation;
pub use relation::{Fluid, Relation};
pub use viscosity::{Walther, temperature_for, viscosity_at};

use crate::error::Error;
use crate::quantity::argument::{named, number, of_kind, out_of_range};
use crate::quantity::{Amount, Unit};

/// The viscosities the formulas are given for, in mm²/s.
const VISCOSITIES: Span = Span(0.21, 2e7, "0.21 mm²/s to 20000000 mm²/s");

/// The numbers a formula holds for, and how they are told.
struct Span(f64, f64, &'static str);

impl Span {
    fn holds(&self, number: f64, amount: Amount, name: &'static str) -> Result<f64, Error> {
        if (self.0..=self.1).contains(&number) {
            return Ok(number);
        }
        Err(out_of_range(name, amount).allowed([self.2]).into())
    }
}

/// The number of a viscosity in mm²/s.
fn viscosity(amount: Amount, span: &Span, name: &'static str) -> Result<f64, Error> {
    const UNIT: Unit = Unit::SquareMillimetrePerSecond;
    span.holds(number(name, amount, UNIT)?, amount, name)
}

/// A viscosity that was computed in mm²/s.
fn told(number: f64) -> Result<Amount, Error> {
    Amount::from_computed(number, Unit::SquareMillimetrePerSecond)
}
