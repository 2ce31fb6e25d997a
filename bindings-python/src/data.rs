//! Data out: the library's answers as plain dicts and lists, and the shapes they have.

use crate::plain::plain;
use pyo3::prelude::*;
use pyo3::sync::PyOnceLock;
use pyo3::types::PyTuple;
#[cfg(feature = "introspection")]
use pyo3::{
    inspect::{PyStaticConstant, PyStaticExpr},
    type_hint_identifier, type_hint_subscript, type_hint_union,
};
use serde::Serialize;
use std::convert::Infallible;
use std::marker::PhantomData;

/// What a JSON answer looks like as data: its name in `brimline.answers`.
pub(crate) trait Shape {
    #[cfg(feature = "introspection")]
    const HINT: PyStaticExpr;
}

/// The data of a JSON text.
pub(crate) fn loaded<'py>(py: Python<'py>, json: &str) -> PyResult<Bound<'py, PyAny>> {
    static LOADS: PyOnceLock<Py<PyAny>> = PyOnceLock::new();
    LOADS.import(py, "json", "loads")?.call1((json,))
}

/// Data of a shape.
pub(crate) struct Told<'py, S>(Bound<'py, PyAny>, PhantomData<S>);

impl<'py, S> Told<'py, S> {
    pub(crate) fn of(data: Bound<'py, PyAny>) -> Self {
        Told(data, PhantomData)
    }

    /// An answer, with the members it has in JSON.
    pub(crate) fn answer<T: Serialize + ?Sized>(py: Python<'py>, answer: &T) -> PyResult<Self> {
        plain(py, answer).map(Told::of)
    }

    /// The data that is written as this JSON.
    pub(crate) fn from_json(py: Python<'py>, json: &str) -> PyResult<Self> {
        loaded(py, json).map(Told::of)
    }
}

impl<'py, S: Shape> IntoPyObject<'py> for Told<'py, S> {
    type Target = PyAny;
    type Output = Bound<'py, PyAny>;
    type Error = Infallible;
    #[cfg(feature = "introspection")]
    const OUTPUT_TYPE: PyStaticExpr = S::HINT;

    fn into_pyobject(self, _: Python<'py>) -> Result<Self::Output, Infallible> {
        Ok(self.0)
    }
}

/// A list of one shape, or nothing.
pub(crate) struct ListOf<S>(PhantomData<S>);
pub(crate) struct Maybe<S>(PhantomData<S>);

impl<S: Shape> Shape for ListOf<S> {
    #[cfg(feature = "introspection")]
    const HINT: PyStaticExpr =
        type_hint_subscript!(type_hint_identifier!("builtins", "list"), S::HINT);
}

impl<S: Shape> Shape for Maybe<S> {
    #[cfg(feature = "introspection")]
    const HINT: PyStaticExpr = type_hint_union!(
        S::HINT,
        PyStaticExpr::Constant {
            value: PyStaticConstant::None
        }
    );
}

macro_rules! shapes {
    ($($Name:ident: $hint:expr;)*) => { $(
        pub(crate) struct $Name;

        impl Shape for $Name {
            #[cfg(feature = "introspection")]
            const HINT: PyStaticExpr = $hint;
        }
    )* };
}

/// Shapes of a module of the package, where they are answered.
macro_rules! shapes_of {
    ($module:literal: $($Name:ident),+) => { $(
        pub(crate) struct $Name;

        impl $crate::data::Shape for $Name {
            #[cfg(feature = "introspection")]
            const HINT: pyo3::inspect::PyStaticExpr =
                pyo3::type_hint_identifier!($module, stringify!($Name));
        }
    )+ };
}
pub(crate) use shapes_of;

shapes_of!(
    "brimline.answers": Difference, Finding, Flip, Gate, Gates, Lack, LeakReading, LintFinding, Mixing, NextAct, Offer, Outcome, Outlook, ProcedureRef, Reason, RecordDifference, RecordDocument, SealedPack, Selection, Sentences, Versions
);
shapes! {
    Answer: type_hint_union!(
        <crate::evaluation::Evaluation as pyo3::PyTypeInfo>::TYPE_HINT,
        type_hint_identifier!("brimline.errors", "BrimlineError")
    );
    Text: type_hint_identifier!("builtins", "str");
    Decimal: type_hint_identifier!("decimal", "Decimal");
    Journal: type_hint_subscript!(
        type_hint_identifier!("builtins", "dict"),
        type_hint_identifier!("builtins", "str"),
        type_hint_identifier!("typing", "Any")
    );
    Sheet: type_hint_subscript!(
        type_hint_identifier!("builtins", "dict"),
        type_hint_identifier!("builtins", "str"),
        type_hint_identifier!("typing", "Any")
    );
}

/// Several texts.
pub(crate) struct Texts<'py>(pub(crate) Bound<'py, PyTuple>);

impl<'py> IntoPyObject<'py> for Texts<'py> {
    type Target = PyTuple;
    type Output = Bound<'py, PyTuple>;
    type Error = Infallible;
    #[cfg(feature = "introspection")]
    const OUTPUT_TYPE: PyStaticExpr = type_hint_subscript!(
        type_hint_identifier!("builtins", "tuple"),
        type_hint_identifier!("builtins", "str"),
        PyStaticExpr::Constant {
            value: PyStaticConstant::Ellipsis
        }
    );

    fn into_pyobject(self, _: Python<'py>) -> Result<Self::Output, Infallible> {
        Ok(self.0)
    }
}
