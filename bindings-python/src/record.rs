//! Records.

use crate::data::{
    Finding, Journal, Lack, LeakReading, ListOf, Outcome, ProcedureRef, RecordDifference,
    RecordDocument, SealedPack, Told, loaded,
};
use crate::document::{Document, limits};
use crate::error::answer;
use crate::interval::Interval;
use crate::limits::Limits;
use crate::pack::Pack;
use crate::word::Word;
use brimline::Verdict;
use brimline::record::Rules;
use pyo3::prelude::*;
use pyo3::types::PyType;

/// A job as it was closed: its pack's name and digest, its journal, the answer, and a digest over all of it.
///
/// Made by `Record.seal` and `Record.reopen`. What it says of the job is as it was sealed and needs no pack. Records
/// are equal where their digests are.
///
/// >>> from brimline import BrimlineError, Pack, Record
/// >>> journal = {"format": "brimline-journal/1", "procedure": "pipit-level", "job": "check", "entries": []}
/// >>> record = Record.seal(Pack.embedded(), journal)
/// >>> record.verdict, Record.reopen(record.to_json()) == record
/// ('incomplete', True)
/// >>> try:
/// ...     Record.reopen(record.to_json().replace("incomplete", "at_level"))
/// ... except BrimlineError as error:
/// ...     error.kind
/// 'changed'
#[pyclass(frozen, eq, hash, module = "brimline")]
#[derive(PartialEq, Hash)]
pub(crate) struct Record(pub(crate) brimline::Record);

#[pymethods]
impl Record {
    /// Seals a job: evaluates the journal (`str`, `bytes` or a mapping) on the pack, and keeps both with the answer.
    ///
    /// Raises `DocumentError` with every fault of the journal, each with its path; `LimitError`; `BrimlineError`:
    /// `conflict` at `journal.pack.id`, `.version` or `.digest` if the journal names another pack.
    ///
    /// >>> from brimline import Pack, Record
    /// >>> journal = {"format": "brimline-journal/1", "procedure": "pipit-level", "job": "check", "entries": []}
    /// >>> Record.seal(Pack.embedded(), journal).pack["id"]
    /// 'fernhollow'
    #[classmethod]
    #[pyo3(signature = (pack, journal, *, limits=None))]
    fn seal(
        class: &Bound<'_, PyType>,
        pack: PyRef<'_, Pack>,
        journal: Document,
        limits: Option<PyRef<'_, Limits>>,
    ) -> PyResult<Self> {
        let (pack, limits) = (&pack.0, self::limits(limits));
        let seal = || brimline::Record::seal_with(pack, &*journal.journal()?, &limits);
        class.py().detach(|| answer(seal)).map(Record)
    }

    /// Reopens a record from the text it was kept as, `str` or `bytes`.
    ///
    /// Raises `BrimlineError`: `changed` if any byte is not as it was sealed; `DocumentError` with every fault of what is
    /// cut off or no record, each with its path; `LimitError`.
    ///
    /// >>> from brimline import Pack, Record
    /// >>> journal = {"format": "brimline-journal/1", "procedure": "pipit-level", "job": "check", "entries": []}
    /// >>> kept = Record.seal(Pack.embedded(), journal).to_json().encode()
    /// >>> Record.reopen(kept).rules
    /// '1'
    #[classmethod]
    #[pyo3(signature = (json, *, limits=None))]
    fn reopen(
        class: &Bound<'_, PyType>,
        json: Document,
        limits: Option<PyRef<'_, Limits>>,
    ) -> PyResult<Self> {
        let limits = self::limits(limits);
        let reopen = || brimline::Record::reopen_with(json.text("record")?, &limits);
        class.py().detach(|| answer(reopen)).map(Record)
    }

    /// The record as it is kept: canonical JSON, to be stored byte for byte.
    fn to_json(&self) -> &str {
        self.0.to_json()
    }

    /// The record as data.
    fn to_dict<'py>(&self, py: Python<'py>) -> PyResult<Told<'py, RecordDocument>> {
        Told::from_json(py, self.0.to_json())
    }

    /// SHA-256 of the record without its `digest`, in lower-case hexadecimal.
    #[getter]
    fn digest(&self) -> &str {
        self.0.digest()
    }

    /// The pack the job was done on: its name, version and digest.
    #[getter]
    fn pack<'py>(&self, py: Python<'py>) -> PyResult<Told<'py, SealedPack>> {
        Told::answer(py, self.0.pack())
    }

    /// The journal as data.
    #[getter]
    fn journal<'py>(&self, py: Python<'py>) -> PyResult<Told<'py, Journal>> {
        Told::from_json(py, &self.0.journal().to_json())
    }

    /// The version of the rules the answer was given by.
    #[getter]
    fn rules(&self) -> &str {
        self.0.rules()
    }

    /// The answer as it was sealed: the result document as data.
    #[getter]
    fn result<'py>(&self, py: Python<'py>) -> PyResult<Told<'py, Outcome>> {
        Told::from_json(py, self.0.result_json())
    }

    /// When the first entry was made, as it was written; `None` without entries.
    #[getter]
    fn began(&self) -> Option<&str> {
        self.0.began().map(|moment| moment.text())
    }

    /// When the last entry was made, as it was written; `None` without entries.
    #[getter]
    fn ended(&self) -> Option<&str> {
        self.0.ended().map(|moment| moment.text())
    }

    /// Which sheet the answer rests on.
    #[getter]
    fn procedure<'py>(&self, py: Python<'py>) -> PyResult<Told<'py, ProcedureRef>> {
        self.told(py, "procedure")
    }

    /// What could be said of the level, as it was sealed.
    #[getter]
    fn verdict(&self) -> Word<Verdict> {
        Word(self.0.verdict())
    }

    /// What was proved of the departure from the correct level as found (volume; negative is short).
    #[getter]
    fn as_found(&self) -> Interval {
        Interval(self.0.as_found())
    }

    /// What was proved of the net volume added.
    #[getter]
    fn net_added(&self) -> Interval {
        Interval(self.0.net_added())
    }

    /// What was proved of the departure at the end (volume; negative is short).
    #[getter]
    fn now(&self) -> Interval {
        Interval(self.0.now())
    }

    /// What the shortage said of a leak.
    #[getter]
    fn leak<'py>(&self, py: Python<'py>) -> PyResult<Told<'py, LeakReading>> {
        self.told(py, "leak")
    }

    /// What a person should know of the journal, as it was sealed.
    #[getter]
    fn findings<'py>(&self, py: Python<'py>) -> PyResult<Told<'py, ListOf<Finding>>> {
        self.told(py, "findings")
    }

    /// What a warranty file is asked for and this record does not say; only what this job calls for.
    ///
    /// >>> from brimline import Pack, Record
    /// >>> journal = {"format": "brimline-journal/1", "procedure": "pipit-level", "job": "top_up", "entries": [
    /// ...     {"seq": 1, "at": "2026-03-02T09:00:00Z", "kind": "added", "volume": "0.5 L", "measured_by": "jug"}]}
    /// >>> [lack["entries"] for lack in Record.seal(Pack.embedded(), journal).evidence() if lack["id"] == "batch"]
    /// [[1]]
    fn evidence<'py>(&self, py: Python<'py>) -> PyResult<Told<'py, ListOf<Lack>>> {
        let lacks = answer(|| Ok(self.0.evidence()))?;
        Told::answer(py, &lacks)
    }

    /// Evaluates the journal again, and tells where the answer differs from the sealed one, by member of the result
    /// document: `as_recorded` by the rules and the pack it was sealed with, `latest` by those of today. Another
    /// version or digest of the pack is told first.
    ///
    /// Raises `BrimlineError`: `conflict` at `pack.id`, and at `pack.version` and `pack.digest` as recorded, for another
    /// pack; `unknown_value` at `rules` as recorded, if this library does not know those rules.
    ///
    /// >>> from brimline import Pack, Record
    /// >>> journal = {"format": "brimline-journal/1", "procedure": "pipit-level", "job": "check", "entries": []}
    /// >>> Record.seal(Pack.embedded(), journal).reevaluate(Pack.embedded(), "as_recorded")
    /// []
    fn reevaluate<'py>(
        &self,
        py: Python<'py>,
        pack: PyRef<'_, Pack>,
        rules: Word<Rules>,
    ) -> PyResult<Told<'py, ListOf<RecordDifference>>> {
        let (pack, rules) = (&pack.0, rules.0);
        let differences = py.detach(|| answer(|| self.0.reevaluate(pack, rules)))?;
        Told::from_json(py, &brimline::document::canonical(&differences))
    }

    fn __repr__(&self) -> String {
        format!(
            "<Record {}, digest {:.12}>",
            self.0.verdict().slug(),
            self.0.digest()
        )
    }

    fn __reduce__<'py>(&self, py: Python<'py>) -> PyResult<(Bound<'py, PyAny>, (&str,))> {
        let reopened = py.get_type::<Record>().getattr("_from_canonical")?;
        Ok((reopened, (self.0.to_json(),)))
    }

    #[classmethod]
    fn _from_canonical(_class: &Bound<'_, PyType>, json: &str) -> PyResult<Self> {
        // What was read once, under whatever limits, is read again.
        let limits = brimline::Limits::default()
            .with_bytes(usize::MAX)
            .with_text(usize::MAX)
            .with_entries(usize::MAX)
            .with_depth(usize::MAX);
        answer(|| brimline::Record::reopen_with(json, &limits)).map(Record)
    }
}

impl Record {
    /// A member of the answer as it was sealed.
    fn told<'py, S>(&self, py: Python<'py>, name: &str) -> PyResult<Told<'py, S>> {
        Ok(Told::of(loaded(py, self.0.result_json())?.get_item(name)?))
    }
}
