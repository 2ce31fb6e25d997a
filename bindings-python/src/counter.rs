//! Price lists, estimates and invoices.

use crate::data::{Told, shapes_of};
use crate::document::{Document, limits};
use crate::error::answer;
use crate::level_check::LevelCheck;
use crate::limits::Limits;
use brimline::document::canonical;
use brimline::estimate::{Asked, Quote};
use pyo3::prelude::*;
use pyo3::types::PyType;
use std::hash::{Hash, Hasher};

shapes_of!("brimline.billed": Estimate, Invoice, Waste);

/// The price list of a counter, read and checked: fluid, parts, work and disposal, and what of it is billed.
///
/// Made by `PriceList.embedded()` or `PriceList.from_json(json)`. Lists are equal where their digests are.
///
/// >>> from brimline import PriceList
/// >>> prices = PriceList.embedded()
/// >>> prices.id, prices.currency
/// ('fernhollow-counter', 'EUR')
#[pyclass(frozen, eq, hash, module = "brimline")]
pub(crate) struct PriceList(pub(crate) brimline::PriceList);

impl PartialEq for PriceList {
    fn eq(&self, other: &Self) -> bool {
        self.0.digest() == other.0.digest()
    }
}

impl Hash for PriceList {
    fn hash<H: Hasher>(&self, state: &mut H) {
        self.0.digest().hash(state);
    }
}

#[pymethods]
impl PriceList {
    /// The embedded demonstration list: invented prices of an invented shop, for the embedded pack.
    ///
    /// >>> from brimline import PriceList
    /// >>> PriceList.embedded().version
    /// '1'
    #[classmethod]
    fn embedded(class: &Bound<'_, PyType>) -> PyResult<Self> {
        let read = || answer(brimline::PriceList::embedded);
        class.py().detach(read).map(PriceList)
    }

    /// Reads a price list from its JSON: `str`, `bytes` or a mapping.
    ///
    /// Raises `DocumentError` with every fault of the document, each with its path; `LimitError`.
    ///
    /// >>> from brimline import DocumentError, PriceList
    /// >>> text = PriceList.embedded().to_json().replace('"19 %"', '"119 %"')
    /// >>> try:
    /// ...     PriceList.from_json(text)
    /// ... except DocumentError as error:
    /// ...     [fault.path for fault in error.faults]
    /// ['taxes[0].rate']
    #[classmethod]
    #[pyo3(signature = (json, *, limits=None))]
    fn from_json(
        class: &Bound<'_, PyType>,
        json: Document,
        limits: Option<PyRef<'_, Limits>>,
    ) -> PyResult<Self> {
        let limits = self::limits(limits);
        let read = || brimline::PriceList::from_json_with(json.text("prices")?, &limits);
        class.py().detach(|| answer(read)).map(PriceList)
    }

    /// The list's own name.
    #[getter]
    fn id(&self) -> &str {
        self.0.id()
    }

    /// The shop's version of it.
    #[getter]
    fn version(&self) -> &str {
        self.0.version()
    }

    /// The currency of every price in it, by its ISO 4217 code.
    #[getter]
    fn currency(&self) -> &str {
        self.0.currency().code()
    }

    /// SHA-256 of the canonical form, in lower-case hexadecimal.
    #[getter]
    fn digest(&self) -> &str {
        self.0.digest()
    }

    /// The canonical JSON.
    fn to_json(&self) -> PyResult<String> {
        answer(|| Ok(self.0.to_json()))
    }

    fn __repr__(&self) -> String {
        format!(
            "<PriceList {} {}, digest {:.12}>",
            self.0.id(),
            self.0.version(),
            self.0.digest()
        )
    }

    fn __reduce__<'py>(&self, py: Python<'py>) -> PyResult<(Bound<'py, PyAny>, (String,))> {
        let from_json = py.get_type::<PriceList>().getattr("_from_canonical")?;
        Ok((from_json, (self.to_json()?,)))
    }

    #[classmethod]
    fn _from_canonical(_class: &Bound<'_, PyType>, json: &str) -> PyResult<Self> {
        // What was read once, under whatever limits, is read again.
        let limits = brimline::Limits::default()
            .with_bytes(usize::MAX)
            .with_text(usize::MAX)
            .with_depth(usize::MAX);
        answer(|| brimline::PriceList::from_json_with(json, &limits)).map(PriceList)
    }
}

/// What a job will cost: the best, the likely and the worst case, each a consistent set of lines, as data.
///
/// What was poured on the check is a fact in every case. `asked` is what the host knows besides, as `str`, `bytes` or a
/// mapping, every member optional: `likely` (volume), `planned` (the next pour), `ceiling` (money), `stock` (`full`, `opened`,
/// `bulk`) and `on` (a day).
///
/// Raises `DocumentError` with every fault of what is asked; `BrimlineError`: `unresolved` for everything that has no price,
/// all at once, with its path; `conflict` and `out_of_range` at the ceiling.
///
/// >>> from brimline import LevelCheck, Pack, PriceList, estimate
/// >>> header = {"format": "brimline-journal/1", "procedure": "pipit-level", "edition": 2, "job": "check"}
/// >>> told = estimate(PriceList.embedded(), LevelCheck.start(Pack.embedded(), header), {"ceiling": "100 EUR"})
/// >>> [told[case]["total"] for case in ("best", "likely", "worst")]
/// ['62.12 EUR', '81.04 EUR', '185.54 EUR']
/// >>> [finding["id"] for finding in told["findings"]]
/// ['worst_past_ceiling']
#[pyfunction]
#[pyo3(signature = (prices, check, asked=None))]
pub(crate) fn estimate<'py>(
    py: Python<'py>,
    prices: PyRef<'_, PriceList>,
    check: PyRef<'_, LevelCheck>,
    asked: Option<Document>,
) -> PyResult<Told<'py, Estimate>> {
    let (prices, check) = (&prices.0, &check.check);
    let told = || Ok(estimated(prices, check, asked.as_ref())?.to_json());
    Told::from_json(py, &py.detach(|| answer(told))?)
}

/// What a job will cost, with what the host knows besides.
pub(crate) fn estimated(
    prices: &brimline::PriceList,
    check: &brimline::LevelCheck,
    asked: Option<&Document>,
) -> Result<brimline::Estimate, brimline::Error> {
    let asked = match asked {
        Some(asked) => Asked::from_json(asked.text("asked")?)?,
        None => Asked::default(),
    };
    brimline::estimate(prices, check, &asked)
}

/// What a job costs: the facts of its journal by line and cause, the leftover and the waste, as data.
///
/// With what `estimate` answered, as it was or as JSON, also how the invoice differs from the likely case, line by line, and
/// why.
///
/// Raises `DocumentError` with every fault of the estimate; `BrimlineError`: `unresolved` for everything that has no price,
/// all at once, with its path; `conflict` for an estimate in another currency.
///
/// >>> from brimline import LevelCheck, Pack, PriceList, invoice
/// >>> journal = {"format": "brimline-journal/1", "procedure": "pipit-level", "edition": 2, "job": "top_up", "entries": [
/// ...     {"seq": 1, "at": "2026-03-02T09:00:00Z", "kind": "plug", "state": "open"},
/// ...     {"seq": 2, "at": "2026-03-02T09:01:00Z", "kind": "added", "volume": "0.42 L", "measured_by": "jug"}]}
/// >>> told = invoice(PriceList.embedded(), LevelCheck.replay(Pack.embedded(), journal))
/// >>> fluid = told["lines"][1]
/// >>> fluid["quantity"], fluid["unit_code"], fluid["net"], fluid["cause"]["entries"]
/// ('0.45 L', 'LTR', '9.54 EUR', [2])
#[pyfunction]
#[pyo3(signature = (prices, check, estimated=None))]
pub(crate) fn invoice<'py>(
    py: Python<'py>,
    prices: PyRef<'_, PriceList>,
    check: PyRef<'_, LevelCheck>,
    estimated: Option<Document>,
) -> PyResult<Told<'py, Invoice>> {
    let (prices, check) = (&prices.0, &check.check);
    let told = || Ok(billed(prices, check, estimated.as_ref())?.to_json());
    Told::from_json(py, &py.detach(|| answer(told))?)
}

/// What a job costs, against an estimate where there is one.
pub(crate) fn billed(
    prices: &brimline::PriceList,
    check: &brimline::LevelCheck,
    estimated: Option<&Document>,
) -> Result<brimline::Invoice, brimline::Error> {
    let quote = match estimated {
        Some(estimated) => Some(Quote::from_json(estimated.text("estimated")?)?),
        None => None,
    };
    brimline::invoice(prices, check, quote.as_ref())
}

/// What came out on a job, for the disposal log: the stream it goes to, the volume, and what is proved of that.
///
/// >>> from brimline import LevelCheck, Pack, waste
/// >>> journal = {"format": "brimline-journal/1", "procedure": "pipit-level", "job": "check", "entries": [
/// ...     {"seq": 1, "at": "2026-03-02T09:00:00Z", "kind": "plug", "state": "open"},
/// ...     {"seq": 2, "at": "2026-03-02T09:01:00Z", "kind": "drained", "volume": "0.3 L", "measured_by": "jug",
/// ...      "why": "excess"}]}
/// >>> out = waste(LevelCheck.replay(Pack.embedded(), journal))
/// >>> out["stream"], out["volume"], out["between"]
/// ('oil', '0.3 L', ['0.28 L', '0.32 L'])
#[pyfunction]
pub(crate) fn waste<'py>(
    py: Python<'py>,
    check: PyRef<'_, LevelCheck>,
) -> PyResult<Told<'py, Waste>> {
    let told = answer(|| Ok(canonical(&brimline::estimate::waste(&check.check)?)))?;
    Told::from_json(py, &told)
}
