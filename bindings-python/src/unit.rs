//! Units.

use crate::document::utf8;
use crate::error::{Refused, answer};
use crate::names;
use crate::word::Word;
use brimline::{Kind, Measures};
use pyo3::exceptions::PyTypeError;
use pyo3::prelude::*;
use pyo3::types::{PyString, PyType};
#[cfg(feature = "introspection")]
use pyo3::{inspect::PyStaticExpr, type_hint_identifier, type_hint_union};

/// A unit of measure, as `Unit("ft-lb")`.
///
/// It is read as people type it: `ft-lb`, `N.m`, `deg F`, `cc`, `qt (US)`. Units are equal where they are the same
/// unit: `mL` and `cm³` are two, of one size.
///
/// Raises `QuantityError`: `unit_ambiguous` with the candidates for a name of several sizes (`oz`, bare `qt`),
/// `unit_unknown` with the nearest names, `unit_missing` for an empty text.
///
/// >>> from brimline import Unit
/// >>> unit = Unit("ft-lb")
/// >>> unit.symbol, unit.kind, unit.ucum, unit.rec20
/// ('lbf·ft', 'torque', '[lbf_av].[ft_i]', 'M92')
/// >>> unit == Unit("lbf ft")
/// True
#[pyclass(frozen, eq, hash, module = "brimline")]
#[derive(Clone, Copy, PartialEq, Eq, Hash)]
pub(crate) struct Unit(pub(crate) brimline::Unit);

#[pymethods]
impl Unit {
    #[new]
    fn new(text: UnitGiven) -> Self {
        Unit(text.0)
    }

    /// Reads a unit where its kind, or whose customary measures are meant, is known.
    ///
    /// Raises `QuantityError` as `Unit` does, and `wrong_kind` for a unit of another kind.
    ///
    /// >>> from brimline import Unit
    /// >>> Unit.parse("qt", measures="us")
    /// Unit('US qt')
    /// >>> Unit.parse("°C", kind="temperature_difference")
    /// Unit('Δ°C')
    #[classmethod]
    #[pyo3(signature = (text, *, kind=None, measures=None))]
    fn parse(
        _class: &Bound<'_, PyType>,
        text: &Bound<'_, PyString>,
        kind: Option<Word<Kind>>,
        measures: Option<Word<Measures>>,
    ) -> PyResult<Self> {
        let text = utf8(text)?;
        let (kind, measures) = (kind.map(|kind| kind.0), measures.map(|own| own.0));
        answer(|| brimline::Unit::parse_as(text, kind, measures)).map(Unit)
    }

    /// Every unit, in order of number.
    ///
    /// >>> from brimline import Unit
    /// >>> [unit.symbol for unit in Unit.all() if unit.kind == "pressure"]
    /// ['kPa', 'bar', 'psi']
    #[classmethod]
    fn all(_class: &Bound<'_, PyType>) -> Vec<Unit> {
        brimline::Unit::ALL.iter().copied().map(Unit).collect()
    }

    /// The symbol it is printed with.
    #[getter]
    fn symbol(&self) -> &'static str {
        self.0.symbol()
    }

    /// What it is a unit of.
    #[getter]
    fn kind(&self) -> Word<Kind> {
        Word(self.0.kind())
    }

    /// The code of the Unified Code for Units of Measure, case-sensitive form.
    #[getter]
    fn ucum(&self) -> &'static str {
        self.0.ucum()
    }

    /// The common code of UN/ECE Recommendation 20; `None` where it has none.
    #[getter]
    fn rec20(&self) -> Option<&'static str> {
        self.0.rec20()
    }

    /// The number that stands for it in the C library; it never changes.
    #[getter]
    fn code(&self) -> u16 {
        self.0.code()
    }

    fn __str__(&self) -> &'static str {
        self.0.symbol()
    }

    fn __repr__(&self) -> String {
        format!("Unit('{}')", self.0)
    }

    fn __getnewargs__(&self) -> (&'static str,) {
        (self.0.symbol(),)
    }
}

/// A unit, or its name.
pub(crate) struct UnitGiven(pub(crate) brimline::Unit);

impl FromPyObject<'_, '_> for UnitGiven {
    type Error = Refused;
    #[cfg(feature = "introspection")]
    const INPUT_TYPE: PyStaticExpr = type_hint_union!(
        type_hint_identifier!("builtins", "str"),
        <Unit as pyo3::PyTypeInfo>::TYPE_HINT
    );

    #[inline]
    fn extract(given: Borrowed<'_, '_, PyAny>) -> Result<Self, Refused> {
        if let Ok(name) = given.cast_exact::<PyString>()
            && let Ok(name) = name.to_str()
        {
            return Ok(UnitGiven(names::unit(name)?));
        }
        if let Ok(unit) = given.cast_exact::<Unit>() {
            return Ok(UnitGiven(unit.get().0));
        }
        other(given)
    }
}

/// What is neither a plain text nor a unit.
#[cold]
fn other(given: Borrowed<'_, '_, PyAny>) -> Result<UnitGiven, Refused> {
    if let Ok(name) = given.cast::<PyString>() {
        let name = utf8(&name)?;
        return Ok(UnitGiven(names::unit(name)?));
    }
    let kind = given.get_type().name()?;
    let said = format!("a unit is a Unit or its name, not {kind}");
    Err(PyTypeError::new_err(said).into())
}
