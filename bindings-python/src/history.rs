//! What many records say together.

use crate::counter::PriceList;
use crate::data::{Told, shapes_of};
use crate::document::Document;
use crate::error::answer;
use crate::pack::Pack;
use crate::record::Record;
use brimline::estimate::{Audit, Audited};
use brimline::record::{
    ComebackRules, Comebacks, FollowUp, FollowUpRules, OldJob, Shadow, comebacks_with,
    follow_up_with,
};
use pyo3::prelude::*;
use pyo3::types::PyType;

shapes_of!("brimline.kept": AuditDocument, ComebacksDocument, FollowUpDocument, HistoryDocument, ShadowDocument);

/// The records of a shop by vehicle and unit, each in order of time, as they were recorded; no pack is asked.
///
/// Made by `History.of`. A record that comes twice counts once, and the order in which records are given says nothing.
///
/// >>> from brimline import History, Pack, Record
/// >>> journal = {"format": "brimline-journal/1", "procedure": "pipit-level", "job": "check",
/// ...     "subject": {"vehicle": "Tarnik Dale 12"}, "entries": []}
/// >>> history = History.of([Record.seal(Pack.embedded(), journal)])
/// >>> [len(unit["visits"]) for unit in history.to_dict()["vehicles"]]
/// [1]
#[pyclass(frozen, eq, hash, module = "brimline")]
pub(crate) struct History {
    records: Vec<brimline::Record>,
    pub(crate) told: brimline::History,
}

impl PartialEq for History {
    fn eq(&self, other: &Self) -> bool {
        self.told == other.told
    }
}

impl std::hash::Hash for History {
    fn hash<H: std::hash::Hasher>(&self, state: &mut H) {
        self.told.vehicles().len().hash(state);
    }
}

#[pymethods]
impl History {
    /// The history of records.
    ///
    /// >>> from brimline import History
    /// >>> History.of([]).to_dict()["vehicles"]
    /// []
    #[classmethod]
    fn of(class: &Bound<'_, PyType>, records: Vec<PyRef<'_, Record>>) -> PyResult<Self> {
        let records = kept(&records);
        let told = class
            .py()
            .detach(|| answer(|| Ok(brimline::History::of(&records))))?;
        Ok(History { records, told })
    }

    /// The canonical JSON of the history document.
    fn to_json(&self) -> String {
        self.told.to_json()
    }

    /// The history as data.
    fn to_dict<'py>(&self, py: Python<'py>) -> PyResult<Told<'py, HistoryDocument>> {
        Told::from_json(py, &self.told.to_json())
    }

    /// The history in plain English lines, with every caution in full.
    fn text(&self) -> String {
        brimline::report::history(&self.told)
    }

    fn __repr__(&self) -> String {
        format!("<History of {} units>", self.told.vehicles().len())
    }

    fn __reduce__<'py>(&self, py: Python<'py>) -> PyResult<(Bound<'py, PyAny>, (Vec<Record>,))> {
        let of = py.get_type::<History>().getattr("of")?;
        Ok((of, (self.records.iter().cloned().map(Record).collect(),)))
    }
}

pub(crate) fn kept(records: &[PyRef<'_, Record>]) -> Vec<brimline::Record> {
    records.iter().map(|record| record.0.clone()).collect()
}

/// Closed jobs that were never proven right, leaks nobody followed up, holds nobody lifted, units that were soon low
/// again, and records that look as if they were written afterwards.
///
/// From what was recorded, under the rules of that day. A job is not told where a later record of the same unit has found
/// the level. What looks written afterwards is a question to be asked, not proof. `rules` has numbers of the shop's own,
/// as `{"soon_days": 30}`; the others are common practice, no source.
///
/// Raises `DocumentError` with every fault of the rules.
///
/// >>> from brimline import Pack, Record, records
/// >>> journal = {"format": "brimline-journal/1", "procedure": "pipit-level", "job": "check", "entries": [
/// ...     {"seq": 1, "at": "2026-03-02T09:00:00Z", "kind": "plug", "state": "open"},
/// ...     {"seq": 2, "at": "2026-03-02T09:10:00Z", "kind": "plug", "state": "closed"}]}
/// >>> found = records.comebacks([Record.seal(Pack.embedded(), journal)])
/// >>> found["counts"]
/// {'never_at_level': 1}
#[pyfunction]
#[pyo3(signature = (records, *, rules=None))]
pub(crate) fn comebacks<'py>(
    py: Python<'py>,
    records: Vec<PyRef<'py, Record>>,
    rules: Option<Document>,
) -> PyResult<Told<'py, ComebacksDocument>> {
    let records = kept(&records);
    let found = || Ok(found(&records, rules.as_ref())?.to_json());
    Told::from_json(py, &py.detach(|| answer(found))?)
}

/// What may come back, by the shop's own numbers where it has some.
pub(crate) fn found(
    records: &[brimline::Record],
    rules: Option<&Document>,
) -> Result<Comebacks, brimline::Error> {
    let rules = match rules {
        Some(rules) => ComebackRules::from_json(rules.text("rules")?)?,
        None => ComebackRules::default(),
    };
    Ok(comebacks_with(records, &rules))
}

/// When a job is to be looked at again: after what distance or time, and why.
///
/// `history` gives the rate of the record's unit, which is used where the record is its newest visit. `rules` has numbers
/// of the shop's own, as `{"allowed_shortage": "0.5 US qt"}`; the others are common practice, no source. No clock is
/// asked: the day is that of the last work and so many days.
///
/// Raises `DocumentError` with every fault of the rules.
///
/// >>> from brimline import Pack, Record, records
/// >>> journal = {"format": "brimline-journal/1", "procedure": "pipit-level", "job": "check", "entries": []}
/// >>> told = records.follow_up(Record.seal(Pack.embedded(), journal))
/// >>> told["now"], told["because"][0]["id"]
/// (True, 'level_not_found')
#[pyfunction]
#[pyo3(signature = (record, *, history=None, rules=None))]
pub(crate) fn follow_up<'py>(
    py: Python<'py>,
    record: PyRef<'py, Record>,
    history: Option<PyRef<'py, History>>,
    rules: Option<Document>,
) -> PyResult<Told<'py, FollowUpDocument>> {
    let told = answer(|| due(&record, history.as_deref(), rules.as_ref()))?;
    Told::from_json(py, &told.to_json())
}

/// When a job is to be looked at again, by the shop's own numbers where it has some.
pub(crate) fn due(
    record: &Record,
    history: Option<&History>,
    rules: Option<&Document>,
) -> Result<FollowUp, brimline::Error> {
    let history = history.and_then(|history| history.told.of_record(&record.0));
    let rules = match rules {
        Some(rules) => FollowUpRules::from_json(rules.text("rules")?)?,
        None => FollowUpRules::default(),
    };
    follow_up_with(&record.0, history, &rules)
}

/// Runs beside a host's old rule: evaluates old jobs on the pack and tells what differs, and how good the evidence is.
///
/// A job is `{"id", "journal", "verdict"?, "leak"?}`, with what the old rule said in the words of a result. Of a job of
/// which only amounts were kept, the journal is one of pours. Grades: `A` a look and all the sheet asks, `B` a look with
/// gaps, `C` a temperature and amounts, `D` amounts or less.
///
/// Raises `DocumentError` with every fault of the first job that cannot be read.
///
/// >>> from brimline import Pack, records
/// >>> old = {"id": "4711", "leak": "below", "journal": {"format": "brimline-journal/1", "procedure": "pipit-level",
/// ...     "job": "check", "entries": [{"seq": 1, "at": "2025-03-04T09:00:00Z", "kind": "added", "volume": "1.2 L"}]}}
/// >>> [(told["id"], told["now"], told["grade"]) for told in records.shadow(Pack.embedded(), [old])["differences"]]
/// [('leak_differs', 'above', 'D')]
#[pyfunction]
pub(crate) fn shadow<'py>(
    py: Python<'py>,
    pack: PyRef<'py, Pack>,
    jobs: Vec<Document>,
) -> PyResult<Told<'py, ShadowDocument>> {
    let pack = &pack.0;
    let told = || Ok(beside(pack, &jobs)?.to_json());
    Told::from_json(py, &py.detach(|| answer(told))?)
}

/// Where an old rule differs.
pub(crate) fn beside(pack: &brimline::Pack, jobs: &[Document]) -> Result<Shadow, brimline::Error> {
    let read = |job: &Document| OldJob::from_json(job.text("jobs")?, pack.measures());
    let jobs: Vec<OldJob> = jobs.iter().map(read).collect::<Result<_, _>>()?;
    Ok(brimline::record::shadow(pack, &jobs))
}

/// What records cost a shop, by its price list and without tax: doing checks again that were never proven, looking for
/// leaks that were missed, fluid that was poured and not billed, pours nobody can tell the volume of, and promised times
/// that were missed.
///
/// `billed` has, for each record, the volume of fluid the customer was billed, `None` where that is not known. A job that was
/// sealed again counts once, by its last record, billed what the last one tells that tells anything. What has no price is
/// counted.
///
/// Raises `QuantityError` for what is no volume.
///
/// >>> from brimline import Pack, PriceList, Record, records
/// >>> journal = {"format": "brimline-journal/1", "procedure": "pipit-level", "job": "top_up", "entries": [
/// ...     {"seq": 1, "at": "2026-03-02T09:00:00Z", "kind": "added", "volume": "0.75 L", "measured_by": "jug"}]}
/// >>> given = [Record.seal(Pack.embedded(), journal)]
/// >>> told = records.audit(PriceList.embedded(), Pack.embedded(), given, billed=["0.5 L"])
/// >>> [(item["id"], item["net"]) for item in told["items"] if item["count"]]  # 0.25 L at 21.20 EUR/L
/// [('never_proven', '46.00 EUR'), ('fluid_not_billed', '5.30 EUR')]
#[pyfunction]
#[pyo3(signature = (prices, pack, records, *, billed=None))]
pub(crate) fn audit<'py>(
    py: Python<'py>,
    prices: PyRef<'py, PriceList>,
    pack: PyRef<'py, Pack>,
    records: Vec<PyRef<'py, Record>>,
    billed: Billed<'py>,
) -> PyResult<Told<'py, AuditDocument>> {
    let (prices, pack, records) = (&prices.0, &pack.0, kept(&records));
    let billed = texts(billed)?;
    let told = || Ok(audited(prices, pack, records, billed.as_deref())?.to_json());
    Told::from_json(py, &py.detach(|| answer(told))?)
}

/// What was billed of each record, as text.
pub(crate) type Billed<'py> = Option<Vec<Option<Bound<'py, PyAny>>>>;

pub(crate) fn texts(billed: Billed<'_>) -> PyResult<Option<Vec<Option<String>>>> {
    let text = |one: Bound<'_, PyAny>| one.str().map(|text| text.to_string());
    let texts = |each: Vec<Option<Bound<'_, PyAny>>>| {
        let each = each.into_iter();
        each.map(|one| one.map(text).transpose()).collect()
    };
    billed.map(texts).transpose()
}

/// What records cost.
pub(crate) fn audited(
    prices: &brimline::PriceList,
    pack: &brimline::Pack,
    records: Vec<brimline::Record>,
    billed: Option<&[Option<String>]>,
) -> Result<Audit, brimline::Error> {
    brimline::estimate::audit(prices, pack, &Audited::list(records, billed)?)
}
