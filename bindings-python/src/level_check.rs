//! A check as it happens.

use crate::argument::{Given, kind};
use crate::data::{Finding, Gate, ListOf, NextAct, Told};
use crate::document::{Document, Moment, limits};
use crate::error::answer;
use crate::evaluation::Evaluation;
use crate::limits::Limits;
use crate::pack::Pack;
use crate::word::Word;
use brimline::{Verdict, procedure::Act};
use pyo3::prelude::*;
use pyo3::types::PyType;
use std::hash::{Hash, Hasher};
use std::sync::Arc;

/// A check as it happens: append an entry, get what follows from it.
///
/// Made by `LevelCheck.start` from the header of a journal, or by `LevelCheck.replay` from a whole one. It is
/// frozen: `record` answers a new check and leaves this one as it was, and copies share what they have in common.
/// Replaying a check's journal gives the same bytes.
///
/// >>> from brimline import LevelCheck, Pack
/// >>> header = {"format": "brimline-journal/1", "procedure": "pipit-level", "job": "check"}
/// >>> check = LevelCheck.start(Pack.embedded(), header)
/// >>> check, findings = check.record(
/// ...     {"seq": 1, "at": "2026-03-02T09:00:00Z", "kind": "engine", "state": "idling"})
/// >>> findings, check.evaluation().verdict
/// ([], 'incomplete')
#[pyclass(frozen, eq, hash, module = "brimline")]
pub(crate) struct LevelCheck {
    pub(crate) check: brimline::LevelCheck,
    pack: brimline::Pack,
    begun: Begun,
}

/// How a check began.
#[derive(Clone)]
struct Begun {
    limits: brimline::Limits,
    /// The journal it was replayed from and how many entries that had; nothing where it was started from a header.
    replayed: Option<(Arc<str>, usize)>,
}

impl PartialEq for LevelCheck {
    /// The same journal on the same pack, answered the same: how a journal was delivered is part of its findings.
    fn eq(&self, other: &Self) -> bool {
        let (one, other_one) = (&self.check, &other.check);
        self.pack.digest() == other.pack.digest()
            && one.journal_lines() == other_one.journal_lines()
            && one.evaluation().to_json() == other_one.evaluation().to_json()
    }
}

impl Hash for LevelCheck {
    fn hash<H: Hasher>(&self, state: &mut H) {
        self.check.journal_lines().hash(state);
    }
}

impl LevelCheck {
    /// A check that goes on from how it is.
    pub(crate) fn of(
        check: brimline::LevelCheck,
        pack: &brimline::Pack,
        limits: &brimline::Limits,
    ) -> Self {
        LevelCheck {
            check,
            pack: pack.clone(),
            begun: Begun {
                limits: limits.clone(),
                replayed: None,
            },
        }
    }
}

#[pymethods]
impl LevelCheck {
    /// Begins a check from the header of a journal: `str`, `bytes` or a mapping.
    ///
    /// Raises `DocumentError` with every fault of the header, each with its path.
    ///
    /// >>> from brimline import LevelCheck, Pack
    /// >>> header = '{"format":"brimline-journal/1","procedure":"pipit-level","job":"check"}'
    /// >>> LevelCheck.start(Pack.embedded(), header).journal_lines() == header + "\n"
    /// True
    #[classmethod]
    #[pyo3(signature = (pack, header, *, limits=None))]
    fn start(
        _class: &Bound<'_, PyType>,
        pack: PyRef<'_, Pack>,
        header: Document,
        limits: Option<PyRef<'_, Limits>>,
    ) -> PyResult<Self> {
        let limits = self::limits(limits);
        let start = || brimline::LevelCheck::start_with(&pack.0, header.text("header")?, &limits);
        Ok(LevelCheck::of(answer(start)?, &pack.0, &limits))
    }

    /// Builds a check from a whole journal, as if every entry had been recorded in turn.
    ///
    /// Raises `DocumentError` with every fault of the journal, each with its path; `LimitError`.
    ///
    /// >>> from brimline import LevelCheck, Pack
    /// >>> journal = {"format": "brimline-journal/1", "procedure": "pipit-level", "job": "check", "entries": []}
    /// >>> LevelCheck.replay(Pack.embedded(), journal).evaluation().verdict
    /// 'incomplete'
    #[classmethod]
    #[pyo3(signature = (pack, journal, *, limits=None))]
    fn replay(
        class: &Bound<'_, PyType>,
        pack: PyRef<'_, Pack>,
        journal: Document,
        limits: Option<PyRef<'_, Limits>>,
    ) -> PyResult<Self> {
        let (pack, limits) = (&pack.0, self::limits(limits));
        let replay = || {
            let text = journal.journal()?;
            let check = brimline::LevelCheck::replay_with(pack, &text, &limits)?;
            let replayed = Some((text.into(), check.entries().count()));
            Ok(LevelCheck {
                check,
                pack: pack.clone(),
                begun: Begun { limits, replayed },
            })
        };
        class.py().detach(|| answer(replay))
    }

    /// Records one entry and answers the check that follows and the findings that are new with it.
    ///
    /// An entry that repeats an earlier one under the same `id` changes nothing.
    ///
    /// Raises `DocumentError` if the entry cannot be read or its `seq` does not rise; the check stays as it was.
    ///
    /// >>> from brimline import LevelCheck, Pack
    /// >>> header = {"format": "brimline-journal/1", "procedure": "pipit-level", "job": "check"}
    /// >>> check = LevelCheck.start(Pack.embedded(), header)
    /// >>> check, findings = check.record(
    /// ...     {"seq": 1, "at": "2026-03-02T09:00:00Z", "kind": "flow", "grade": "none", "for": "20 s"})
    /// >>> [finding["id"] for finding in findings]
    /// ['plug_not_open']
    fn record<'py>(
        &self,
        py: Python<'py>,
        entry: Document,
    ) -> PyResult<(Self, Told<'py, ListOf<Finding>>)> {
        let record = || self.check.clone().record(entry.text("entry")?);
        let (check, findings) = py.detach(|| answer(record))?;
        let follows = LevelCheck {
            check,
            pack: self.pack.clone(),
            begun: self.begun.clone(),
        };
        Ok((follows, Told::answer(py, &findings)?))
    }

    /// Whether an act is allowed, with every item that stands in the way. `planned` is the volume about to be
    /// poured, bare customary units being those of the check; `at` is the moment asked about (RFC 3339, or a `datetime`
    /// with its offset), else the newest entry's.
    ///
    /// Raises `QuantityError` for a planned amount that cannot be read, `BrimlineError`: `not_a_time`.
    ///
    /// >>> from brimline import LevelCheck, Pack
    /// >>> header = {"format": "brimline-journal/1", "procedure": "pipit-level", "job": "check"}
    /// >>> gate = LevelCheck.start(Pack.embedded(), header).gate("pour", planned="0.25 L")
    /// >>> gate["allowed"], gate["unmet"][0]["id"]
    /// (False, 'low_not_shown')
    #[pyo3(signature = (act, planned=None, at=None))]
    fn gate<'py>(
        &self,
        py: Python<'py>,
        act: Word<Act>,
        planned: Option<Given<'_, 'py, kind::Volume>>,
        at: Option<Moment>,
    ) -> PyResult<Told<'py, Gate>> {
        let measures = self.check.measures();
        let planned = planned.map(|volume| volume.in_measures(measures));
        let (planned, at) = (planned.transpose()?, at.as_ref().map(Moment::text));
        let gate = answer(|| self.check.gate(act.0, planned, at))?;
        Told::answer(py, &gate)
    }

    /// The answer so far, the same that `evaluate` gives for the same journal. `flip` asks for the smallest changes
    /// that would turn it, `why_not` for what keeps a verdict away.
    #[pyo3(signature = (*, flip=false, why_not=None))]
    fn evaluation(
        &self,
        py: Python<'_>,
        flip: bool,
        why_not: Option<Word<Verdict>>,
    ) -> PyResult<Evaluation> {
        let why_not = why_not.map(|verdict| verdict.0);
        let evaluate = || Ok(self.check.evaluation_with(flip, why_not).into());
        py.detach(|| answer(evaluate))
    }

    /// What to do next, the first thing first.
    fn advice<'py>(&self, py: Python<'py>) -> PyResult<Told<'py, ListOf<NextAct>>> {
        let advice = answer(|| Ok(self.check.advice()))?;
        Told::answer(py, &advice)
    }

    /// The journal as JSON Lines: the header, then a line for each entry, each ending in a line feed.
    fn journal_lines(&self) -> PyResult<String> {
        answer(|| Ok(self.check.journal_lines()))
    }

    fn __repr__(&self) -> String {
        format!(
            "<LevelCheck of {} entries on pack {}>",
            self.check.entries().count(),
            self.pack.id()
        )
    }

    fn __reduce__<'py>(&self, py: Python<'py>) -> PyResult<(Bound<'py, PyAny>, Parts)> {
        let resume = py.get_type::<LevelCheck>().getattr("_resume")?;
        let lines = self.journal_lines()?;
        let mut entries = lines.lines().map(str::to_owned);
        let header = entries.next().unwrap_or_default();
        let (begun, recorded) = match &self.begun.replayed {
            Some((journal, count)) => (journal.to_string(), *count),
            None => (header, 0),
        };
        let later = entries.skip(recorded).collect();
        let (pack, limits) = (Pack(self.pack.clone()), Limits(self.begun.limits.clone()));
        let replayed = self.begun.replayed.is_some();
        Ok((resume, (pack, limits, replayed, begun, later)))
    }

    #[classmethod]
    fn _resume(
        class: &Bound<'_, PyType>,
        pack: PyRef<'_, Pack>,
        limits: PyRef<'_, Limits>,
        replayed: bool,
        begun: Document,
        later: Vec<String>,
    ) -> PyResult<Self> {
        let begin = if replayed { Self::replay } else { Self::start };
        let mut resumed = begin(class, pack, begun, Some(limits))?;
        for entry in later {
            resumed.check = answer(|| Ok(resumed.check.record(&entry)?.0))?;
        }
        Ok(resumed)
    }
}

/// What a pickled check is made of again: the pack, the limits, whether it was replayed, the journal or else the header
/// it began with, and the entries since.
type Parts = (Pack, Limits, bool, String, Vec<String>);
