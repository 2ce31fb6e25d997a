//! Documents in: JSON as `str` or `bytes`, or a mapping that is written as JSON first.

use crate::amount::Amount;
use crate::error::raised;
use crate::interval::Interval;
use crate::limits::Limits;
use crate::linear::Linear;
use crate::pack::Pack;
use crate::unit::Unit;
use brimline::document::from_utf8;
use brimline::{Error, ErrorKind, Fault, Journal};
use pyo3::exceptions::{PyRecursionError, PyTypeError, PyUnicodeEncodeError};
use pyo3::intern;
use pyo3::prelude::*;
use pyo3::pybacked::{PyBackedBytes, PyBackedStr};
use pyo3::types::{PyByteArray, PyBytes, PyDict, PyMapping, PyString};
#[cfg(feature = "introspection")]
use pyo3::{inspect::PyStaticExpr, type_hint_identifier, type_hint_subscript, type_hint_union};
use std::borrow::Cow;

/// The text of a document, not copied.
pub(crate) enum Document {
    Text(PyBackedStr),
    Bytes(PyBackedBytes),
}

impl Document {
    /// The text; `name` is the argument it was given as.
    pub(crate) fn text(&self, name: &str) -> Result<&str, Error> {
        match self {
            Document::Text(text) => Ok(text),
            Document::Bytes(bytes) => from_utf8(bytes, name),
        }
    }

    /// The text of a journal, of which the last line may have been cut off.
    pub(crate) fn journal(&self) -> Result<Cow<'_, str>, Error> {
        match self {
            Document::Text(text) => Ok(Cow::Borrowed(text)),
            Document::Bytes(bytes) => Journal::text(bytes),
        }
    }
}

impl FromPyObject<'_, '_> for Document {
    type Error = PyErr;
    #[cfg(feature = "introspection")]
    const INPUT_TYPE: PyStaticExpr = type_hint_union!(
        type_hint_identifier!("builtins", "str"),
        type_hint_identifier!("builtins", "bytes"),
        type_hint_identifier!("builtins", "bytearray"),
        type_hint_subscript!(
            type_hint_identifier!("collections.abc", "Mapping"),
            type_hint_identifier!("builtins", "str"),
            type_hint_identifier!("typing", "Any")
        )
    );

    fn extract(given: Borrowed<'_, '_, PyAny>) -> PyResult<Self> {
        if let Ok(text) = given.cast::<PyString>() {
            return backed(&text);
        }
        if given.is_instance_of::<PyBytes>() || given.is_instance_of::<PyByteArray>() {
            return Ok(Document::Bytes(given.extract()?));
        }
        if given.cast::<PyMapping>().is_ok() {
            return backed(&written(&given)?);
        }
        let kind = given.get_type().name()?;
        Err(PyTypeError::new_err(format!(
            "a document is str, bytes or a mapping, not {kind}"
        )))
    }
}

fn backed(text: &Bound<'_, PyString>) -> PyResult<Document> {
    let backed = PyBackedStr::try_from(text.clone());
    backed.map(Document::Text).map_err(surrogates)
}

/// The bytes of a text, not copied.
#[inline]
pub(crate) fn utf8<'a>(text: &'a Bound<'_, PyString>) -> PyResult<&'a str> {
    text.to_str().map_err(surrogates)
}

/// `str` may hold halves of surrogate pairs, which no UTF-8 has.
#[cold]
fn surrogates(failed: PyErr) -> PyErr {
    if Python::attach(|py| failed.is_instance_of::<PyUnicodeEncodeError>(py)) {
        let fault = Fault::new(ErrorKind::NotUtf8);
        return raised(fault.hint("texts are UTF-8; convert it first").into());
    }
    failed
}

/// A mapping as JSON.
fn written<'py>(mapping: &Bound<'py, PyAny>) -> PyResult<Bound<'py, PyString>> {
    let py = mapping.py();
    let options = PyDict::new(py);
    options.set_item(intern!(py, "ensure_ascii"), false)?;
    options.set_item(intern!(py, "separators"), (",", ":"))?;
    options.set_item(intern!(py, "default"), wrap_pyfunction!(plain, py)?)?;
    let json = py.import(intern!(py, "json"))?;
    match json.call_method(intern!(py, "dumps"), (mapping,), Some(&options)) {
        Ok(text) => Ok(text.cast_into()?),
        Err(failed) if failed.is_instance_of::<PyRecursionError>(py) => {
            let fault = Fault::new(ErrorKind::Limit);
            Err(raised(fault.hint(TOO_DEEP).into()))
        }
        Err(failed) => Err(failed),
    }
}

pub(crate) const TOO_DEEP: &str =
    "mappings and lists lie too deep inside each other; the limit is called depth";

/// What stands in JSON for a value that is not JSON: a quantity is its text, a moment its ISO 8601 form.
#[pyfunction]
pub(crate) fn plain<'py>(value: &Bound<'py, PyAny>) -> PyResult<Bound<'py, PyAny>> {
    let py = value.py();
    if value.is_instance_of::<Amount>() || value.is_instance_of::<Unit>() {
        return Ok(value.str()?.into_any());
    }
    if let Ok(interval) = value.cast::<Interval>() {
        return Ok(interval
            .get()
            .__getnewargs__()
            .into_pyobject(py)?
            .into_any());
    }
    if let Ok(layout) = value.cast::<Linear>() {
        return Ok(layout.get().members(py)?.into_any());
    }
    if value.hasattr(intern!(py, "isoformat"))? {
        return value.call_method0(intern!(py, "isoformat"));
    }
    if value.cast::<PyMapping>().is_ok() {
        return py.get_type::<PyDict>().call1((value,));
    }
    let kind = value.get_type().name()?;
    Err(PyTypeError::new_err(format!(
        "{kind} has no place in a document: write quantities as text or Amount"
    )))
}

/// A moment or a day: its text, or what tells it in ISO 8601.
pub(crate) struct Moment(PyBackedStr);

impl Moment {
    pub(crate) fn text(&self) -> &str {
        &self.0
    }
}

impl FromPyObject<'_, '_> for Moment {
    type Error = PyErr;
    #[cfg(feature = "introspection")]
    const INPUT_TYPE: PyStaticExpr = type_hint_union!(
        type_hint_identifier!("builtins", "str"),
        type_hint_identifier!("datetime", "date")
    );

    fn extract(given: Borrowed<'_, '_, PyAny>) -> PyResult<Self> {
        let isoformat = given.getattr_opt(intern!(given.py(), "isoformat"))?;
        match isoformat {
            Some(isoformat) => isoformat.call0()?.extract().map(Moment),
            None => given.extract().map(Moment).map_err(surrogates),
        }
    }
}

/// Journals, each as [`Document`] takes it.
pub(crate) struct Journals<'a, 'py>(pub(crate) Borrowed<'a, 'py, PyAny>);

impl<'a, 'py> FromPyObject<'a, 'py> for Journals<'a, 'py> {
    type Error = PyErr;
    #[cfg(feature = "introspection")]
    const INPUT_TYPE: PyStaticExpr = type_hint_subscript!(
        type_hint_identifier!("collections.abc", "Iterable"),
        Document::INPUT_TYPE
    );

    fn extract(given: Borrowed<'a, 'py, PyAny>) -> PyResult<Self> {
        Ok(Journals(given))
    }
}

/// A pack that was read before, or the text of one.
pub(crate) enum PackGiven {
    Pack(brimline::Pack),
    Document(Document),
}

impl PackGiven {
    pub(crate) fn source(&self) -> Result<brimline::check::PackSource<'_>, Error> {
        Ok(match self {
            PackGiven::Pack(pack) => pack.into(),
            PackGiven::Document(document) => document.text("pack")?.into(),
        })
    }

    /// The pack itself, read if need be.
    pub(crate) fn read(self, limits: &brimline::Limits) -> Result<brimline::Pack, Error> {
        match self {
            PackGiven::Pack(pack) => Ok(pack),
            PackGiven::Document(document) => {
                brimline::Pack::from_json_with(document.text("pack")?, limits)
            }
        }
    }
}

impl FromPyObject<'_, '_> for PackGiven {
    type Error = PyErr;
    #[cfg(feature = "introspection")]
    const INPUT_TYPE: PyStaticExpr =
        type_hint_union!(<Pack as pyo3::PyTypeInfo>::TYPE_HINT, Document::INPUT_TYPE);

    fn extract(given: Borrowed<'_, '_, PyAny>) -> PyResult<Self> {
        match given.cast::<Pack>() {
            Ok(pack) => Ok(PackGiven::Pack(pack.get().0.clone())),
            Err(_) => given.extract().map(PackGiven::Document),
        }
    }
}

/// Limits that were given, or the usual ones.
pub(crate) fn limits(given: Option<PyRef<'_, Limits>>) -> brimline::Limits {
    given.map_or_else(brimline::Limits::default, |limits| limits.0.clone())
}
