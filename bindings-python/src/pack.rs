//! Packs and their procedures.

use crate::data::{Difference, LintFinding, ListOf, Mixing, Offer, Selection, Sheet, Told};
use crate::document::{Document, Moment, limits};
use crate::error::answer;
use crate::limits::Limits;
use brimline::document::canonical;
use pyo3::prelude::*;
use pyo3::pybacked::PyBackedStr;
use pyo3::types::PyType;
use std::hash::{Hash, Hasher};

/// The sheets and fluids of one publisher, read and checked.
///
/// Made by `Pack.embedded()` or `Pack.from_json(json)`. Packs are equal where their digests are.
///
/// >>> from brimline import Pack
/// >>> pack = Pack.embedded()
/// >>> pack.id, pack.title
/// ('fernhollow', 'Fernhollow Gear & Drive demonstration sheets (invented)')
#[pyclass(frozen, eq, hash, module = "brimline")]
#[derive(Clone)]
pub(crate) struct Pack(pub(crate) brimline::Pack);

impl PartialEq for Pack {
    fn eq(&self, other: &Self) -> bool {
        self.0.digest() == other.0.digest()
    }
}

impl Hash for Pack {
    fn hash<H: Hasher>(&self, state: &mut H) {
        self.0.digest().hash(state);
    }
}

#[pymethods]
impl Pack {
    /// The embedded demonstration pack: invented units, fluids and numbers of an invented shop.
    ///
    /// >>> from brimline import Pack
    /// >>> Pack.embedded().id
    /// 'fernhollow'
    #[classmethod]
    fn embedded(class: &Bound<'_, PyType>) -> PyResult<Self> {
        class
            .py()
            .detach(|| answer(brimline::Pack::embedded))
            .map(Pack)
    }

    /// Reads a pack from its JSON: `str`, `bytes` or a mapping.
    ///
    /// Raises `DocumentError` with every fault of the document, each with its path; `LimitError`.
    ///
    /// >>> from brimline import DocumentError, Pack
    /// >>> try:
    /// ...     Pack.from_json({"format": "brimline-pack/1", "id": "mine"})
    /// ... except DocumentError as error:
    /// ...     [fault.path for fault in error.faults]
    /// ['version', 'title', 'fluids', 'procedures']
    #[classmethod]
    #[pyo3(signature = (json, *, limits=None))]
    fn from_json(
        class: &Bound<'_, PyType>,
        json: Document,
        limits: Option<PyRef<'_, Limits>>,
    ) -> PyResult<Self> {
        let limits = self::limits(limits);
        let read = || brimline::Pack::from_json_with(json.text("pack")?, &limits);
        class.py().detach(|| answer(read)).map(Pack)
    }

    /// The pack's own name.
    #[getter]
    fn id(&self) -> &str {
        self.0.id()
    }

    /// The publisher's version of it.
    #[getter]
    fn version(&self) -> &str {
        self.0.version()
    }

    /// What it is called.
    #[getter]
    fn title(&self) -> &str {
        self.0.title()
    }

    /// SHA-256 of the canonical form, in lower-case hexadecimal.
    #[getter]
    fn digest(&self) -> &str {
        self.0.digest()
    }

    /// Every edition of every procedure, in the order of the document: the sheets as data.
    ///
    /// >>> from brimline import Pack
    /// >>> {sheet["method"]["kind"] for sheet in Pack.embedded().procedures()} >= {"overflow_plug", "side_plug"}
    /// True
    fn procedures<'py>(&self, py: Python<'py>) -> PyResult<Told<'py, ListOf<Sheet>>> {
        let sheets: Vec<_> = self.0.procedures().collect();
        Told::from_json(py, &canonical(&sheets))
    }

    /// One edition of one procedure as data; `None` where the pack lacks it.
    ///
    /// >>> from brimline import Pack
    /// >>> Pack.embedded().procedure("pipit-level", 2)["supersedes"]
    /// 1
    fn procedure<'py>(
        &self,
        py: Python<'py>,
        id: &str,
        edition: u32,
    ) -> PyResult<Option<Told<'py, Sheet>>> {
        let sheet = self.0.procedure(id, edition);
        sheet
            .map(|sheet| Told::from_json(py, &canonical(sheet)))
            .transpose()
    }

    /// The sheets for a vehicle or a unit on a day, capital and small letters alike: the answer is `one`, `several`
    /// or `none`, never a best guess. The day is `YYYY-MM-DD` or a `date`.
    ///
    /// Raises `BrimlineError`: `conflict` if neither vehicle nor unit is named, `not_a_time` for a bad day.
    ///
    /// >>> from brimline import Pack
    /// >>> Pack.embedded().select(vehicle="no such vehicle")
    /// {'answer': 'none', 'candidates': []}
    #[pyo3(signature = (*, vehicle=None, unit=None, day=None))]
    fn select<'py>(
        &self,
        py: Python<'py>,
        vehicle: Option<&str>,
        unit: Option<&str>,
        day: Option<Moment>,
    ) -> PyResult<Told<'py, Selection>> {
        let day = day.as_ref().map(Moment::text);
        let selection = answer(|| self.0.select(vehicle, unit, day))?;
        Told::answer(py, &selection)
    }

    /// Defects of the sheets themselves, found before anybody works by them.
    ///
    /// >>> from brimline import Pack
    /// >>> {finding["severity"] for finding in Pack.embedded().lint()} <= {"note", "caution", "stop"}
    /// True
    fn lint<'py>(&self, py: Python<'py>) -> PyResult<Told<'py, ListOf<LintFinding>>> {
        let findings = py.detach(|| answer(|| Ok(self.0.lint())))?;
        Told::answer(py, &findings)
    }

    /// Where two editions of a procedure differ, field by field, in the order of the sheet.
    ///
    /// Raises `BrimlineError`: `unresolved` if the pack lacks one of them.
    ///
    /// >>> from brimline import Pack
    /// >>> "method.watch" in [d["field"] for d in Pack.embedded().compare("pipit-level", 1, 2)]
    /// True
    fn compare<'py>(
        &self,
        py: Python<'py>,
        id: &str,
        from_edition: u32,
        to_edition: u32,
    ) -> PyResult<Told<'py, ListOf<Difference>>> {
        let differences = answer(|| self.0.compare(id, from_edition, to_edition))?;
        Told::answer(py, &differences)
    }

    /// Whether one of its fluids may be poured onto another, by the sheet of the one that is poured; both by id.
    ///
    /// Only `yes` is a yes: what nobody said is `unknown`, and a relation goes one way. `path` has the statements the
    /// answer rests on, or those that exist and do not count. Where the other's sheet says never, nothing is allowed,
    /// not even after a full exchange: `unknown`, `sheets_disagree`. Common practice, no source.
    ///
    /// >>> from brimline import Pack
    /// >>> mixing = Pack.embedded().may_mix("burdock-axle", onto="sedge-thin")
    /// >>> mixing["answer"], mixing["reason"]
    /// ('no', 'said_never')
    fn may_mix<'py>(
        &self,
        py: Python<'py>,
        poured: &str,
        onto: &str,
    ) -> PyResult<Told<'py, Mixing>> {
        let mixing = answer(|| Ok(self.0.may_mix(poured, onto)))?;
        Told::answer(py, &mixing)
    }

    /// What each fluid on offer may do where one of its fluids is asked for, in the order offered; all by id.
    ///
    /// `fill` tells whether a unit emptied by a full exchange may be filled with it, `top_up` whether it may be poured
    /// onto what is asked for. Nothing said is `unknown`, which is never a yes. Common practice, no source.
    ///
    /// >>> from brimline import Pack
    /// >>> offers = Pack.embedded().resolve("sedge-mid", ["sedge-thin", "burdock-axle"])
    /// >>> [offer["answer"] for offer in offers]
    /// ['may_replace', 'never']
    fn resolve<'py>(
        &self,
        py: Python<'py>,
        required: &str,
        offered: Vec<PyBackedStr>,
    ) -> PyResult<Told<'py, ListOf<Offer>>> {
        let offered: Vec<_> = offered.iter().map(|id| &**id).collect();
        let offers = answer(|| Ok(self.0.resolve(required, &offered)))?;
        Told::answer(py, &offers)
    }

    /// The canonical JSON.
    fn to_json(&self) -> PyResult<String> {
        answer(|| Ok(self.0.to_json()))
    }

    fn __repr__(&self) -> String {
        format!(
            "<Pack {} {}, digest {:.12}>",
            self.0.id(),
            self.0.version(),
            self.0.digest()
        )
    }

    fn __reduce__<'py>(&self, py: Python<'py>) -> PyResult<(Bound<'py, PyAny>, (String,))> {
        let from_json = py.get_type::<Pack>().getattr("_from_canonical")?;
        Ok((from_json, (self.to_json()?,)))
    }

    #[classmethod]
    fn _from_canonical(_class: &Bound<'_, PyType>, json: &str) -> PyResult<Self> {
        // What was read once, under whatever limits, is read again.
        let limits = brimline::Limits::default()
            .with_bytes(usize::MAX)
            .with_text(usize::MAX)
            .with_depth(usize::MAX);
        answer(|| brimline::Pack::from_json_with(json, &limits)).map(Pack)
    }
}
