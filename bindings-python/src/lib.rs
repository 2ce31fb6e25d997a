//! Python module of brimline: it translates and nothing else.
/// The native half of the package.
#[pyo3::pymodule(gil_used = false)]
mod _native {}
