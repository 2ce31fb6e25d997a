//! The calculators of `brimline.money`.

use crate::argument::{Given, List, Text, WordOf, kind};
use crate::asking::arguments;
use crate::data::{self, Told, shapes_of};
use brimline::Rounding;
use brimline::money::Place;
use pyo3::prelude::*;

shapes_of!("brimline.observed": Totals);

/// What a quantity costs at a price for one of its unit: the exact product, rounded once to the smallest unit of the currency.
///
/// A `price` of zero or above with an ISO 4217 code, up to 9 decimals; a `quantity` of any kind, zero or above; `rounding`
/// `half_even`, `half_up`, `down`, `up`, `floor` or `ceiling`.
///
/// Raises `QuantityError`: `not_a_number` and its kin, `unit_missing` without a currency, `out_of_range` below zero or past 15
/// digits; `BrimlineError`: `unknown_value` for a currency or rounding that is not listed.
///
/// >>> from brimline import money
/// >>> money.cost("11.9050 EUR", quantity="1.05 L", rounding="half_up")  # 12.50025
/// '12.50 EUR'
#[pyfunction]
#[pyo3(signature = (price, *, quantity, rounding))]
pub(crate) fn cost<'py>(
    py: Python<'py>,
    price: Given<'_, 'py, Text>,
    quantity: Given<'_, 'py, kind::Any>,
    rounding: Given<'_, 'py, WordOf<Rounding>>,
) -> PyResult<Told<'py, data::Text>> {
    arguments!(price, quantity, rounding).ask_text(py, "money.cost")
}

/// What lines come to: their net, each tax with what it is on, and the total.
///
/// `lines` have a `net` and, where they bear tax, the `taxes` by name; `rates` have an `id` and a `rate` from 0 to 100 %. Each
/// tax is of the net and is rounded as `rounding` says, on each `line` or once on the `document`. `currency` is an ISO 4217
/// code. Which line bears which tax, the rates and the rounding are the caller's: there is no tax law in here.
///
/// Raises `BrimlineError` and its kinds, with all faults at once: `conflict` for another currency, `unresolved` for a tax
/// without a rate, `duplicate_id`, `out_of_range`, `too_many_digits` for parts of a cent.
///
/// >>> from brimline import money
/// >>> told = money.totals([{"net": "4.97 USD", "taxes": ["goods"]}] * 6, currency="USD",
/// ...     rates=[{"id": "goods", "rate": "7 %"}], rounding="half_up", place="document")
/// >>> told["taxes"][0]["tax"], told["total"]
/// ('2.09 USD', '31.91 USD')
#[pyfunction]
#[pyo3(signature = (lines, *, currency, rates, rounding, place))]
pub(crate) fn totals<'py>(
    py: Python<'py>,
    lines: Given<'_, 'py, List>,
    currency: Given<'_, 'py, Text>,
    rates: Given<'_, 'py, List>,
    rounding: Given<'_, 'py, WordOf<Rounding>>,
    place: Given<'_, 'py, WordOf<Place>>,
) -> PyResult<Told<'py, Totals>> {
    arguments!(currency, lines, rates, rounding, place).ask(py, "money.totals")
}
