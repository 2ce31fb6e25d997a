//! A journal that is kept entry by entry.

use crate::data::{Finding, ListOf, Told};
use crate::document::{Document, limits};
use crate::error::answer;
use crate::level_check::LevelCheck;
use crate::limits::Limits;
use crate::pack::Pack;
use brimline::Error;
use pyo3::exceptions::PyRuntimeError;
use pyo3::prelude::*;
use pyo3::types::{PyBytes, PyType};
#[cfg(feature = "introspection")]
use pyo3::{inspect::PyStaticExpr, type_hint_identifier};
use std::convert::Infallible;
use std::sync::{Arc, Mutex, PoisonError};

/// A storage of the host's, and what it raised last.
#[derive(Clone)]
struct Storage {
    object: Arc<Py<PyAny>>,
    raised: Arc<Mutex<Option<PyErr>>>,
}

impl FromPyObject<'_, '_> for Storage {
    type Error = Infallible;
    #[cfg(feature = "introspection")]
    const INPUT_TYPE: PyStaticExpr = type_hint_identifier!("brimline.storage", "Storage");

    fn extract(given: Borrowed<'_, '_, PyAny>) -> Result<Self, Infallible> {
        Ok(Storage {
            object: Arc::new(given.to_owned().unbind()),
            raised: Arc::default(),
        })
    }
}

impl Storage {
    fn call(
        &self,
        name: &str,
        argument: impl FnOnce(Python<'_>) -> PyResult<Py<PyAny>>,
    ) -> Result<(), String> {
        Python::attach(|py| {
            let called =
                argument(py).and_then(|argument| self.object.call_method1(py, name, (argument,)));
            called.map(|_| ()).map_err(|raised| {
                let said = raised.to_string();
                *self.raised.lock().unwrap_or_else(PoisonError::into_inner) = Some(raised);
                said
            })
        })
    }

    /// What the library answers; a refusal of the storage has what the storage raised as its cause.
    fn answer<T>(&self, py: Python<'_>, call: impl FnOnce() -> Result<T, Error>) -> PyResult<T> {
        let answered = answer(call);
        let raised = self
            .raised
            .lock()
            .unwrap_or_else(PoisonError::into_inner)
            .take();
        answered.inspect_err(|refused| refused.set_cause(py, raised))
    }
}

impl brimline::record::Storage for Storage {
    fn append(&mut self, bytes: &[u8]) -> Result<(), String> {
        self.call("append", |py| {
            Ok(PyBytes::new(py, bytes).into_any().unbind())
        })
    }

    fn truncate(&mut self, length: usize) -> Result<(), String> {
        self.call("truncate", |py| {
            Ok(length.into_pyobject(py)?.into_any().unbind())
        })
    }
}

/// The journal of a running check, kept entry by entry in a storage of the host's.
///
/// Made by `KeptJournal.start`, or by `KeptJournal.recover` after a power cut. It keeps JSON Lines: the header, then a
/// line for each entry. An entry is answered for only once the storage said that it is durable, so nothing that was
/// answered for is lost. The storage is any object with `append(bytes)`, which returns once the bytes are durable, and
/// `truncate(length)`; both raise what went wrong.
///
/// >>> from brimline import KeptJournal, Pack
/// >>> class Memory(bytearray):
/// ...     def append(self, data):
/// ...         self.extend(data)
/// ...     def truncate(self, length):
/// ...         del self[length:]
/// >>> header = {"format": "brimline-journal/1", "procedure": "pipit-level", "job": "check"}
/// >>> storage = Memory()
/// >>> journal = KeptJournal.start(Pack.embedded(), header, storage)
/// >>> journal.append({"seq": 1, "at": "2026-03-02T09:00:00Z", "kind": "engine", "state": "idling"})
/// []
/// >>> torn = bytes(storage) + b'{"seq":2,"at":"2026-'
/// >>> recovered = KeptJournal.recover(Pack.embedded(), torn, Memory(torn))
/// >>> recovered.check == journal.check, recovered.dropped_bytes
/// (True, 20)
#[pyclass(frozen, module = "brimline")]
pub(crate) struct KeptJournal {
    journal: Mutex<brimline::record::KeptJournal<Storage>>,
    storage: Storage,
    pack: brimline::Pack,
    limits: brimline::Limits,
}

#[pymethods]
impl KeptJournal {
    /// Begins a journal in an empty storage, from its header: `str`, `bytes` or a mapping.
    ///
    /// Raises `DocumentError` with every fault of the header, each with its path; `BrimlineError`: `storage` if the header
    /// could not be kept, what the storage raised being its cause.
    #[classmethod]
    #[pyo3(signature = (pack, header, storage, *, limits=None))]
    fn start(
        class: &Bound<'_, PyType>,
        pack: PyRef<'_, Pack>,
        header: Document,
        storage: Storage,
        limits: Option<PyRef<'_, Limits>>,
    ) -> PyResult<Self> {
        let (pack, limits) = (&pack.0, self::limits(limits));
        let journal = storage.answer(class.py(), || {
            let header = header.text("header")?;
            brimline::record::KeptJournal::start_with(pack, header, storage.clone(), &limits)
        })?;
        Ok(KeptJournal::of(journal, storage, pack, limits))
    }

    /// Takes a journal up again from the bytes that its storage holds. What stands after the last line feed was never
    /// answered for: it is left out, and dropped from the storage before the next entry comes.
    ///
    /// Raises `DocumentError` with every fault of what was kept, each with its path; `BrimlineError`: `unresolved` if not
    /// even the header was kept whole.
    #[classmethod]
    #[pyo3(signature = (pack, kept, storage, *, limits=None))]
    fn recover(
        class: &Bound<'_, PyType>,
        pack: PyRef<'_, Pack>,
        kept: &[u8],
        storage: Storage,
        limits: Option<PyRef<'_, Limits>>,
    ) -> PyResult<Self> {
        let (pack, limits) = (&pack.0, self::limits(limits));
        let journal = storage.answer(class.py(), || {
            brimline::record::KeptJournal::recover_with(pack, kept, storage.clone(), &limits)
        })?;
        Ok(KeptJournal::of(journal, storage, pack, limits))
    }

    /// Records one entry and keeps it; answers the findings that are new with it, once it is durable. An entry that
    /// repeats an earlier one under the same `id` is kept already.
    ///
    /// Raises `DocumentError` if the entry cannot be read or its `seq` does not rise; `BrimlineError`: `storage` if it could
    /// not be kept, what the storage raised being its cause. The check stays as it was, and the same entry can be given
    /// again.
    fn append<'py>(
        &self,
        py: Python<'py>,
        entry: Document,
    ) -> PyResult<Told<'py, ListOf<Finding>>> {
        let findings = self.with(|journal| {
            self.storage
                .answer(py, || journal.append(entry.text("entry")?))
        })?;
        Told::answer(py, &findings)
    }

    /// The check as far as it is kept.
    #[getter]
    fn check(&self) -> PyResult<LevelCheck> {
        self.with(|journal| {
            let check = journal.check().clone();
            Ok(LevelCheck::of(check, &self.pack, &self.limits))
        })
    }

    /// Bytes after the last whole line that the recovery left out.
    #[getter]
    fn dropped_bytes(&self) -> PyResult<usize> {
        self.with(|journal| Ok(journal.dropped_bytes()))
    }

    fn __repr__(&self) -> PyResult<String> {
        let entries = self.with(|journal| Ok(journal.check().entries().count()))?;
        Ok(format!(
            "<KeptJournal of {entries} entries on pack {}>",
            self.pack.id()
        ))
    }
}

type Journal = brimline::record::KeptJournal<Storage>;

impl KeptJournal {
    fn of(
        journal: Journal,
        storage: Storage,
        pack: &brimline::Pack,
        limits: brimline::Limits,
    ) -> Self {
        KeptJournal {
            journal: Mutex::new(journal),
            storage,
            pack: pack.clone(),
            limits,
        }
    }

    /// Does something with the journal, unless somebody else does: a storage may let other threads run.
    fn with<T>(&self, act: impl FnOnce(&mut Journal) -> PyResult<T>) -> PyResult<T> {
        match self.journal.try_lock() {
            Ok(mut journal) => act(&mut journal),
            Err(_) => Err(PyRuntimeError::new_err(
                "this journal is being written to: one entry at a time",
            )),
        }
    }
}
