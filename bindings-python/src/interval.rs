//! Intervals.

use crate::amount::{Amount, AmountGiven};
use crate::document::utf8;
use crate::error::answer;
use pyo3::prelude::*;
use pyo3::types::{PyString, PyType};

/// Everything from one amount to another, both included; without an end it reaches to infinity there.
///
/// The ends are amounts or their texts, of one kind.
///
/// Raises `QuantityError`: `wrong_kind` for ends of two kinds, `out_of_range` where the lower end is above the
/// upper, and what `Amount` raises.
///
/// >>> from brimline import Interval
/// >>> short = Interval("-2.0 L", "-1.5 L")
/// >>> print(short, short.width())
/// [-2.0 L, -1.5 L] 0.5 L
/// >>> "-1.5 L" in short
/// True
/// >>> short.intersect(Interval(None, "-1800 mL"))
/// Interval('-2.0 L', '-1800 mL')
#[pyclass(frozen, eq, hash, module = "brimline")]
#[derive(Clone, Copy, PartialEq, Eq, Hash)]
pub(crate) struct Interval(pub(crate) brimline::Interval);

#[pymethods]
impl Interval {
    #[new]
    #[pyo3(signature = (lo=None, hi=None))]
    fn new(lo: Option<AmountGiven>, hi: Option<AmountGiven>) -> PyResult<Self> {
        let (lo, hi) = (lo.map(|end| end.0), hi.map(|end| end.0));
        answer(|| brimline::Interval::new(lo, hi)).map(Interval)
    }

    /// Reads an interval as it is printed.
    ///
    /// Raises `QuantityError`: `not_a_number` for another form, and what `Interval` raises.
    ///
    /// >>> from brimline import Interval
    /// >>> print(Interval.parse("(-inf, 0 L]").lo)
    /// None
    #[classmethod]
    fn parse(_class: &Bound<'_, PyType>, text: &Bound<'_, PyString>) -> PyResult<Self> {
        let text = utf8(text)?;
        answer(|| brimline::Interval::parse(text)).map(Interval)
    }

    /// Its lower end; `None` where it is unbounded.
    #[getter]
    fn lo(&self) -> Option<Amount> {
        self.0.lo().map(Amount)
    }

    /// Its upper end; `None` where it is unbounded.
    #[getter]
    fn hi(&self) -> Option<Amount> {
        self.0.hi().map(Amount)
    }

    /// Whether an amount lies within, the ends included; so does `amount in interval`.
    ///
    /// Raises `QuantityError`: `wrong_kind`.
    ///
    /// >>> from brimline import Interval
    /// >>> Interval("0 L", "1 L").contains("1001 mL")
    /// False
    fn contains(&self, amount: AmountGiven) -> PyResult<bool> {
        answer(|| self.0.contains(&amount.0))
    }

    fn __contains__(&self, amount: &Bound<'_, PyAny>) -> PyResult<bool> {
        self.contains(amount.extract()?)
    }

    /// What two intervals have in common; `None` where that is nothing.
    ///
    /// Raises `QuantityError`: `wrong_kind`.
    ///
    /// >>> from brimline import Interval
    /// >>> print(Interval("0 L", "1 L").intersect(Interval("2 L", None)))
    /// None
    fn intersect(&self, other: PyRef<'_, Self>) -> PyResult<Option<Self>> {
        answer(|| self.0.intersect(&other.0)).map(|both| both.map(Interval))
    }

    /// Upper end less lower end, in the unit of the upper; `None` where it is unbounded.
    ///
    /// Raises `QuantityError`: `too_many_digits`, `out_of_range`.
    ///
    /// >>> from brimline import Interval
    /// >>> Interval("40 °C", "45 °C").width()
    /// Amount('5 Δ°C')
    fn width(&self) -> PyResult<Option<Amount>> {
        answer(|| self.0.width()).map(|width| width.map(Amount))
    }

    fn __str__(&self) -> String {
        self.0.to_string()
    }

    fn __repr__(&self) -> String {
        let end = |end: Option<brimline::Amount>| {
            end.map_or_else(|| "None".to_string(), |end| format!("'{end}'"))
        };
        format!("Interval({}, {})", end(self.0.lo()), end(self.0.hi()))
    }

    pub(crate) fn __getnewargs__(&self) -> (Option<Amount>, Option<Amount>) {
        (self.lo(), self.hi())
    }
}
