//! Refusals of the library as exceptions of `brimline.errors`.

use crate::border::caught;
use crate::data::Texts;
use crate::word::Word;
use brimline::{Error, ErrorKind, Position};
use pyo3::prelude::*;
use pyo3::sync::PyOnceLock;
use pyo3::types::PyTuple;
use std::borrow::Cow;

/// What the library answers to a call, its refusal as an exception.
#[inline]
pub(crate) fn answer<T>(call: impl FnOnce() -> Result<T, Error>) -> PyResult<T> {
    caught(call).map_err(raised)
}

/// A refusal that is not raised yet: an exception is large, and most calls have none to carry.
pub(crate) enum Refused {
    Library(Error),
    Python(Box<PyErr>),
}

impl From<Error> for Refused {
    fn from(error: Error) -> Self {
        Refused::Library(error)
    }
}

impl From<PyErr> for Refused {
    fn from(failed: PyErr) -> Self {
        Refused::Python(Box::new(failed))
    }
}

impl From<Refused> for PyErr {
    #[cold]
    fn from(refused: Refused) -> Self {
        match refused {
            Refused::Library(error) => raised(error),
            Refused::Python(failed) => *failed,
        }
    }
}

/// A refusal, ready to be raised.
#[cold]
pub(crate) fn raised(error: Error) -> PyErr {
    Python::attach(|py| exception(py, error).map_or_else(|failed| failed, PyErr::from_value))
}

/// A refusal as an exception object.
pub(crate) fn exception(py: Python<'_>, error: Error) -> PyResult<Bound<'_, PyAny>> {
    static REFUSAL: PyOnceLock<Py<PyAny>> = PyOnceLock::new();
    let refusal = REFUSAL.import(py, "brimline.errors", "refusal")?;
    let message = error.to_string();
    let faults: Vec<_> = error.into_faults().into_iter().map(Fault).collect();
    refusal.call1((message, PyTuple::new(py, faults)?))
}

/// The error document of these faults: `{"kind","code","message","faults":[…]}`, the same bytes in every language.
///
/// >>> from brimline import Amount, BrimlineError
/// >>> try:
/// ...     Amount("9")
/// ... except BrimlineError as error:
/// ...     print(error.to_json()[:32])
/// {"kind":"unit_missing","code":24
#[pyfunction]
#[pyo3(signature = (faults, /))]
pub(crate) fn error_document(faults: Vec<PyRef<'_, Fault>>) -> String {
    let faults = faults.iter().map(|fault| fault.0.clone()).collect();
    Error::from_faults(faults).map_or_else(String::new, |error| error.to_json())
}

/// One thing that is wrong with what was handed in: what, where, what was expected and what to do.
///
/// An exception of this package carries one or more in `faults`, in the order they stand in the document.
/// Lines and columns count from 1, the offset counts bytes from 0; `got` is shortened to 80 characters.
///
/// >>> from brimline import Amount, BrimlineError
/// >>> try:
/// ...     Amount("1.2 oz")
/// ... except BrimlineError as error:
/// ...     fault = error.faults[0]
/// >>> fault.kind, fault.code, fault.got
/// ('unit_ambiguous', 26, '1.2 oz')
#[pyclass(frozen, eq, hash, module = "brimline")]
#[derive(Clone, PartialEq, Eq, Hash)]
pub(crate) struct Fault(brimline::Fault);

#[pymethods]
impl Fault {
    #[new]
    #[pyo3(signature = (kind, path="", line=None, column=None, offset=None, got=None, allowed=Vec::new(), hint=None))]
    #[expect(
        clippy::too_many_arguments,
        reason = "the members of a fault in the error document"
    )]
    fn new(
        kind: Word<ErrorKind>,
        path: &str,
        line: Option<u32>,
        column: Option<u32>,
        offset: Option<u32>,
        got: Option<String>,
        allowed: Vec<String>,
        hint: Option<String>,
    ) -> Self {
        let mut fault = brimline::Fault::new(kind.0).at(path).allowed(allowed);
        if let (Some(line), Some(column), Some(offset)) = (line, column, offset) {
            fault.position = Some(Position {
                line,
                column,
                offset,
            });
        }
        fault.got = got;
        fault.hint = hint.map(Cow::Owned);
        Fault(fault)
    }

    /// What kind of fault: a stable word.
    #[getter]
    fn kind(&self) -> Word<ErrorKind> {
        Word(self.0.kind)
    }

    /// The number of the kind, the status of the C library.
    #[getter]
    fn code(&self) -> i32 {
        self.0.kind.code()
    }

    /// Where in the document, as `entries[3].volume`; empty outside a document.
    #[getter]
    fn path(&self) -> &str {
        &self.0.path
    }

    /// The line in the text, from 1.
    #[getter]
    fn line(&self) -> Option<u32> {
        self.0.position.map(|place| place.line)
    }

    /// The column in characters, from 1.
    #[getter]
    fn column(&self) -> Option<u32> {
        self.0.position.map(|place| place.column)
    }

    /// The bytes before it.
    #[getter]
    fn offset(&self) -> Option<u32> {
        self.0.position.map(|place| place.offset)
    }

    /// What was found.
    #[getter]
    fn got(&self) -> Option<&str> {
        self.0.got.as_deref()
    }

    /// What would have been accepted.
    #[getter]
    fn allowed<'py>(&self, py: Python<'py>) -> PyResult<Texts<'py>> {
        PyTuple::new(py, self.0.allowed.iter().map(Cow::as_ref)).map(Texts)
    }

    /// What to do about it.
    #[getter]
    fn hint(&self) -> Option<&str> {
        self.0.hint.as_deref()
    }

    fn __str__(&self) -> String {
        self.0.to_string()
    }

    fn __repr__(&self, py: Python<'_>) -> PyResult<String> {
        let members = self.__getnewargs__(py)?.into_pyobject(py)?;
        let mut said = Vec::new();
        for (name, value) in MEMBERS.iter().zip(members.iter()) {
            if value.is_truthy()? {
                said.push(format!("{name}={}", value.repr()?));
            }
        }
        Ok(format!("Fault({})", said.join(", ")))
    }

    fn __getnewargs__<'py>(&self, py: Python<'py>) -> PyResult<Members<'_, 'py>> {
        Ok((
            self.kind(),
            self.path(),
            self.line(),
            self.column(),
            self.offset(),
            self.got(),
            self.allowed(py)?,
            self.hint(),
        ))
    }
}

type Members<'a, 'py> = (
    Word<ErrorKind>,
    &'a str,
    Option<u32>,
    Option<u32>,
    Option<u32>,
    Option<&'a str>,
    Texts<'py>,
    Option<&'a str>,
);
const MEMBERS: [&str; 8] = [
    "kind", "path", "line", "column", "offset", "got", "allowed", "hint",
];
