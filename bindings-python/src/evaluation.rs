//! Evaluations.

use crate::amount::AmountGiven;
use crate::data::{
    Finding, Flip, Gates, LeakReading, ListOf, Maybe, NextAct, Outcome, Outlook, ProcedureRef,
    Reason, Sentences, Text, Told, loaded,
};
use crate::error::answer;
use crate::interval::Interval;
use crate::sentences::sentences;
use crate::word::Word;
use brimline::report::Teller;
use brimline::{Error, ErrorKind, Fault, Verdict};
use pyo3::intern;
use pyo3::prelude::*;
use pyo3::types::PyString;
use std::hash::{Hash, Hasher};

/// The answer to one journal.
///
/// Made by `evaluate` and `LevelCheck.evaluation`. `to_json()` is the result document, the same bytes in every
/// language, and `to_dict()` the same as data; its members are attributes here. `text()` and `sentences()` tell it in
/// English. Evaluations are equal where their documents are, and one that was pickled keeps what it said.
///
/// >>> from brimline import Pack, evaluate
/// >>> journal = {"format": "brimline-journal/1", "procedure": "pipit-level", "job": "check", "entries": [
/// ...     {"seq": 1, "at": "2026-03-02T09:00:00Z", "kind": "added", "volume": "0.5 L", "measured_by": "jug"}]}
/// >>> evaluation = evaluate(Pack.embedded(), journal)
/// >>> evaluation.verdict, str(evaluation.net_added)
/// ('incomplete', '[0.48 L, 0.52 L]')
#[pyclass(frozen, eq, hash, module = "brimline")]
pub(crate) struct Evaluation {
    json: String,
    verdict: Verdict,
    as_found: brimline::Interval,
    net_added: brimline::Interval,
    now: brimline::Interval,
    telling: Telling,
}

/// Where the English comes from.
enum Telling {
    Of(Box<brimline::Evaluation>),
    Kept { text: String, sentences: String },
}

impl From<brimline::Evaluation> for Evaluation {
    fn from(evaluation: brimline::Evaluation) -> Self {
        Evaluation {
            json: evaluation.to_json(),
            verdict: evaluation.verdict(),
            as_found: evaluation.as_found(),
            net_added: evaluation.net_added(),
            now: evaluation.now(),
            telling: Telling::Of(Box::new(evaluation)),
        }
    }
}

impl PartialEq for Evaluation {
    fn eq(&self, other: &Self) -> bool {
        self.json == other.json
    }
}

impl Hash for Evaluation {
    fn hash<H: Hasher>(&self, state: &mut H) {
        self.json.hash(state);
    }
}

#[pymethods]
impl Evaluation {
    #[new]
    fn new(py: Python<'_>, json: String, text: String, sentences: String) -> PyResult<Self> {
        let document = loaded(py, &json)?;
        let interval = |name| -> PyResult<brimline::Interval> {
            let ends = document.get_item(name)?;
            let end =
                |place| -> PyResult<Option<AmountGiven>> { Ok(ends.get_item(place)?.extract()?) };
            let (lo, hi) = (end(0)?, end(1)?);
            answer(|| brimline::Interval::new(lo.map(|end| end.0), hi.map(|end| end.0)))
        };
        Ok(Evaluation {
            verdict: document.get_item("verdict")?.extract::<Word<_>>()?.0,
            as_found: interval("as_found")?,
            net_added: interval("net_added")?,
            now: interval("now")?,
            telling: Telling::Kept { text, sentences },
            json,
        })
    }

    /// The canonical JSON of the result document.
    fn to_json(&self) -> &str {
        &self.json
    }

    /// The result document as data.
    fn to_dict<'py>(&self, py: Python<'py>) -> PyResult<Told<'py, Outcome>> {
        Told::from_json(py, &self.json)
    }

    /// The result told in English lines of at most 80 columns, with every caution in full.
    fn text(&self) -> PyResult<String> {
        answer(|| {
            Ok(match &self.telling {
                Telling::Of(evaluation) => brimline::report::text(evaluation),
                Telling::Kept { text, .. } => text.clone(),
            })
        })
    }

    /// The result in English sentences, for a host that lays out pages of its own: each list in the order of its
    /// member, and every caution by its id.
    ///
    /// >>> from brimline import LevelCheck, Pack
    /// >>> header = {"format": "brimline-journal/1", "procedure": "pipit-level", "job": "check"}
    /// >>> evaluation = LevelCheck.start(Pack.embedded(), header).evaluation()
    /// >>> sentences = evaluation.sentences()
    /// >>> len(sentences["next"]) == len(evaluation.next)
    /// True
    fn sentences<'py>(&self, py: Python<'py>) -> PyResult<Told<'py, Sentences>> {
        Told::from_json(py, &self.sentences_json()?)
    }

    /// Which sheet the answer rests on.
    #[getter]
    fn procedure<'py>(&self, py: Python<'py>) -> PyResult<Told<'py, ProcedureRef>> {
        self.member(py, "procedure")
    }

    /// The version of the rules; it rises whenever any verdict can change.
    #[getter]
    fn rules<'py>(&self, py: Python<'py>) -> PyResult<Told<'py, Text>> {
        self.member(py, "rules")
    }

    /// What can be said of the level.
    #[getter]
    fn verdict(&self) -> Word<Verdict> {
        Word(self.verdict)
    }

    /// What is proved of the departure from the correct level as found (volume; negative is short).
    #[getter]
    fn as_found(&self) -> Interval {
        Interval(self.as_found)
    }

    /// What is proved of the net volume added in between.
    #[getter]
    fn net_added(&self) -> Interval {
        Interval(self.net_added)
    }

    /// What is proved of the departure now (volume; negative is short).
    #[getter]
    fn now(&self) -> Interval {
        Interval(self.now)
    }

    /// What the shortage says of a leak.
    #[getter]
    fn leak<'py>(&self, py: Python<'py>) -> PyResult<Told<'py, LeakReading>> {
        self.member(py, "leak")
    }

    /// What a person should know of the journal.
    #[getter]
    fn findings<'py>(&self, py: Python<'py>) -> PyResult<Told<'py, ListOf<Finding>>> {
        self.member(py, "findings")
    }

    /// Why the answer is what it is.
    #[getter]
    fn because<'py>(&self, py: Python<'py>) -> PyResult<Told<'py, ListOf<Reason>>> {
        self.member(py, "because")
    }

    /// What to do next, the first thing first.
    #[getter]
    fn next<'py>(&self, py: Python<'py>) -> PyResult<Told<'py, ListOf<NextAct>>> {
        self.member(py, "next")
    }

    /// What may be done now, by act: `open`, `pour`, `close`, `stop_engine`.
    #[getter]
    fn gates<'py>(&self, py: Python<'py>) -> PyResult<Told<'py, Gates>> {
        self.member(py, "gates")
    }

    /// When the window of temperature opens and closes, counted from the last reading or pour; `None` where the engine does
    /// not run, the level has been found, or there is nothing to wait for. It decides nothing.
    #[getter]
    fn forecast<'py>(&self, py: Python<'py>) -> PyResult<Told<'py, Maybe<Outlook>>> {
        self.member(py, "forecast")
    }

    /// The cautions that go with the state of the job. They belong beside every telling of the result.
    #[getter]
    fn cautions<'py>(&self, py: Python<'py>) -> PyResult<Told<'py, ListOf<Text>>> {
        self.member(py, "cautions")
    }

    /// The smallest changes that would turn the answer; `None` if they were not asked for.
    #[getter]
    fn flip<'py>(&self, py: Python<'py>) -> PyResult<Told<'py, Maybe<ListOf<Flip>>>> {
        self.member(py, "flip")
    }

    /// What keeps the verdict that was asked about away; `None` if none was.
    #[getter]
    fn why_not<'py>(&self, py: Python<'py>) -> PyResult<Told<'py, Maybe<ListOf<Reason>>>> {
        self.member(py, "why_not")
    }

    fn __repr__(&self) -> String {
        format!(
            "<Evaluation {}, as found {}, now {}>",
            self.verdict.slug(),
            self.as_found,
            self.now
        )
    }

    fn __getnewargs__(&self) -> PyResult<(&str, String, String)> {
        Ok((&self.json, self.text()?, self.sentences_json()?))
    }
}

impl Evaluation {
    /// All of it, from which anything can be told; gone once it was pickled.
    pub(crate) fn whole(&self) -> Result<&brimline::Evaluation, Error> {
        match &self.telling {
            Telling::Of(evaluation) => Ok(evaluation),
            Telling::Kept { .. } => {
                let fault = Fault::new(ErrorKind::Conflict).at("evaluation");
                let hint = "it was pickled and keeps its English only: evaluate the journal again";
                Err(fault.hint(hint).into())
            }
        }
    }

    fn sentences_json(&self) -> PyResult<String> {
        answer(|| {
            Ok(match &self.telling {
                Telling::Of(evaluation) => sentences(&Teller::english(), evaluation),
                Telling::Kept { sentences, .. } => sentences.clone(),
            })
        })
    }

    /// A member of the document, `None` where it is absent.
    fn member<'py, S>(&self, py: Python<'py>, name: &str) -> PyResult<Told<'py, S>> {
        let document = loaded(py, &self.json)?;
        let get = intern!(py, "get");
        Ok(Told::of(
            document.call_method1(get, (PyString::new(py, name),))?,
        ))
    }
}
