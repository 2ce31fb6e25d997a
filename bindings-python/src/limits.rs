//! Limits.

use pyo3::prelude::*;
use std::collections::BTreeMap;

/// How much of a document is read before it is refused; every refusal names the limit that was passed.
///
/// `bytes` of one document, `depth` of objects and lists inside each other (at most 100), `entries` of one
/// journal, bytes of any one `text`, `faults` collected before the rest are left out (at least 1). What is not
/// given is as usual.
///
/// >>> from brimline import Limits
/// >>> Limits(entries=50)
/// Limits(bytes=16777216, depth=32, entries=50, text=10000, faults=100)
#[pyclass(frozen, eq, hash, module = "brimline")]
#[derive(Clone, PartialEq, Eq, Hash)]
pub(crate) struct Limits(pub(crate) brimline::Limits);

#[pymethods]
impl Limits {
    #[new]
    #[pyo3(signature = (*, bytes=None, depth=None, entries=None, text=None, faults=None))]
    fn new(
        bytes: Option<usize>,
        depth: Option<usize>,
        entries: Option<usize>,
        text: Option<usize>,
        faults: Option<usize>,
    ) -> Self {
        let usual = brimline::Limits::default();
        Limits(
            usual
                .clone()
                .with_bytes(bytes.unwrap_or(usual.bytes()))
                .with_depth(depth.unwrap_or(usual.depth()))
                .with_entries(entries.unwrap_or(usual.entries()))
                .with_text(text.unwrap_or(usual.text()))
                .with_faults(faults.unwrap_or(usual.faults())),
        )
    }

    /// Bytes of one document.
    #[getter]
    fn bytes(&self) -> usize {
        self.0.bytes()
    }

    /// Objects and lists inside each other; `ext` members are not counted.
    #[getter]
    fn depth(&self) -> usize {
        self.0.depth()
    }

    /// Entries of one journal.
    #[getter]
    fn entries(&self) -> usize {
        self.0.entries()
    }

    /// Bytes of any one text.
    #[getter]
    fn text(&self) -> usize {
        self.0.text()
    }

    /// Faults collected before the rest are left out.
    #[getter]
    fn faults(&self) -> usize {
        self.0.faults()
    }

    fn __repr__(&self) -> String {
        let said = self
            .members()
            .map(|(name, limit)| format!("{name}={limit}"));
        format!("Limits({})", said.join(", "))
    }

    fn __getnewargs_ex__(&self) -> ((), BTreeMap<&'static str, usize>) {
        ((), self.members().into())
    }
}

impl Limits {
    fn members(&self) -> [(&'static str, usize); 5] {
        [
            ("bytes", self.0.bytes()),
            ("depth", self.0.depth()),
            ("entries", self.0.entries()),
            ("text", self.0.text()),
            ("faults", self.0.faults()),
        ]
    }
}
