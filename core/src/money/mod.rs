//! Exact money: sums, prices, and totals with taxes at the host's own rates, rounded as and where the host says.
//!
//! No binary float is anywhere in it, and no tax law: flags, rates, rounding and its place are inputs.

mod currency;
mod field;
mod price;
mod sum;
mod totals;

pub use currency::Currency;
pub use price::Price;
pub use sum::Money;
pub(crate) use sum::mixed;
pub(crate) use totals::check_rate;
pub use totals::{Place, TaxRate, TaxRounding, TaxTotal, Taxable, Totals, totals};
