//! Amounts as printed, exact; conversions, correctly rounded; physical quantities from exact factors.
//!
//! * [`Amount`] is what a person typed or a sheet prints: an exact decimal with its unit and its printed
//!   resolution. Whatever is decided is decided on amounts, in integers.
//! * [`Interval`] is a closed range of amounts, possibly unbounded.
//! * [`convert`] gives the double nearest to the exact result.
//! * [`Unit`] and [`Kind`] are tables: factors from their definitions, symbols, codes, spellings.

mod ambiguity;
mod amount;
pub(crate) mod argument;
mod arithmetic;
mod convert;
mod definition;
mod display;
mod divisor;
mod exact;
mod interval;
mod key;
mod kind;
mod number;
mod parse;
mod physics;
mod refusal;
mod rounding;
mod spelling;
mod unit;

pub use amount::Amount;
pub use convert::{IntoUnit, convert};
pub use interval::Interval;
pub use kind::{Kind, Measures};
pub(crate) use number::{Number as DecimalNumber, read as read_number};
pub use rounding::Rounding;
pub use unit::Unit;
