//! Amounts.

use crate::border::caught;
use crate::data::{Decimal, Told};
use crate::document::utf8;
use crate::error::{Refused, answer};
use crate::number::{Number, saturated};
use crate::unit::{Unit, UnitGiven};
use crate::word::Word;
use brimline::{Kind, Measures, Rounding};
use pyo3::basic::CompareOp;
use pyo3::exceptions::PyTypeError;
use pyo3::intern;
use pyo3::prelude::*;
use pyo3::types::{PyInt, PyString, PyType};
#[cfg(feature = "introspection")]
use pyo3::{inspect::PyStaticExpr, type_hint_identifier, type_hint_union};
use std::hash::{DefaultHasher, Hash, Hasher};

/// An exact decimal with its unit, as a person typed it or a sheet prints it: `Amount("1.50 L")`, or a number and
/// its unit.
///
/// At most 15 digits, 9 of them decimals; the printed resolution is kept. A `float` is read as its shortest
/// decimal, so 0.1 is 0.1; a `Decimal` keeps its decimals; a `Fraction` must end within nine.
///
/// Amounts are equal, and hash alike, where their values are, whatever their units. They add, subtract and compare
/// only within a kind; two temperatures give a difference, and a difference may be added to a temperature.
///
/// Raises `QuantityError`: `not_a_number`, `too_many_digits`, `decimal_comma` with the readings, `fraction` with its
/// neighbours, `unit_missing`, `unit_unknown`, `unit_ambiguous`, `wrong_kind`, `out_of_range`.
///
/// >>> from decimal import Decimal
/// >>> from brimline import Amount
/// >>> Amount("0.1 US qt") * 14 == Amount("1.4 US qt")
/// True
/// >>> Amount("1.50 L") + Amount(Decimal("250"), "mL")
/// Amount('1.75 L')
/// >>> Amount("45 °C") - Amount(104, "deg F")
/// Amount('5 Δ°C')
/// >>> Amount("1.3 L") < Amount("1.4 US qt")
/// True
#[pyclass(frozen, module = "brimline")]
pub(crate) struct Amount(pub(crate) brimline::Amount);

#[pymethods]
impl Amount {
    #[new]
    #[pyo3(signature = (number, unit=None))]
    fn new(number: Number<'_, '_>, unit: Option<UnitGiven>) -> PyResult<Self> {
        Ok(Amount(number.of(unit.map(|unit| unit.0))?))
    }

    /// Reads an amount where its kind, or whose customary measures are meant, is known.
    ///
    /// Raises `QuantityError` as `Amount` does, and `wrong_kind` with the units of the kind.
    ///
    /// >>> from brimline import Amount
    /// >>> Amount.parse("2 °C", kind="temperature_difference")
    /// Amount('2 Δ°C')
    /// >>> Amount.parse("1 1/2 qt", measures="us")
    /// Amount('1.5 US qt')
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
        answer(|| brimline::Amount::parse_as(text, kind, measures)).map(Amount)
    }

    /// Its unit.
    #[getter]
    fn unit(&self) -> Unit {
        Unit(self.0.unit())
    }

    /// What it is an amount of.
    #[getter]
    fn kind(&self) -> Word<Kind> {
        Word(self.0.kind())
    }

    /// Its number in its own unit, with the decimals it is printed with: `Decimal('1.50')` for `1.50 L`.
    #[getter]
    fn number<'py>(&self, py: Python<'py>) -> PyResult<Told<'py, Decimal>> {
        let decimal = py
            .import(intern!(py, "decimal"))?
            .getattr(intern!(py, "Decimal"))?;
        decimal.call1((self.0.number(),)).map(Told::of)
    }

    /// Its digits as an integer: 150 for `1.50 L`.
    #[getter]
    fn mantissa(&self) -> i64 {
        self.0.mantissa()
    }

    /// How many of its digits are decimals, 0 to 9.
    #[getter]
    fn decimals(&self) -> u8 {
        self.0.decimals()
    }

    /// One in its last printed place, as a difference: `0.01 L` for `1.50 L`.
    #[getter]
    fn resolution(&self) -> Self {
        Amount(self.0.resolution())
    }

    /// Its value in the coherent SI unit of its kind, the nearest double: m³, N·m, kg, m, m², K, Pa, s, kg/m³,
    /// m²/s, m³/s; an angle in radians.
    ///
    /// >>> from brimline import Amount
    /// >>> Amount("1 lb").si, Amount("104 °F").si
    /// (0.45359237, 313.15)
    #[getter]
    fn si(&self) -> PyResult<f64> {
        answer(|| Ok(self.0.si()))
    }

    /// This amount in another unit of its kind, rounded to `places` decimals (0 to 9).
    ///
    /// Raises `QuantityError`: `wrong_kind`, `too_many_digits`, `out_of_range`.
    ///
    /// >>> from brimline import Amount
    /// >>> Amount("12 N·m").to("lbf·in", 1)
    /// Amount('106.2 lbf·in')
    /// >>> Amount("1.5 L").to("US qt", 2, "down")
    /// Amount('1.58 US qt')
    #[pyo3(
        signature = (unit, places, rounding=Word(Rounding::HalfEven)),
        text_signature = "($self, unit, places, rounding='half_even')"
    )]
    fn to(&self, unit: UnitGiven, places: i64, rounding: Word<Rounding>) -> PyResult<Self> {
        // No amount has so many places, nor fewer than none.
        let places = u8::try_from(places).unwrap_or(u8::MAX);
        answer(|| self.0.to(unit.0, places, rounding.0)).map(Amount)
    }

    /// This amount in another unit where that is exact; `None` where the kinds differ or the decimal does not end
    /// within the digits of an amount.
    ///
    /// >>> from brimline import Amount
    /// >>> Amount("1.4 US qt").to_exact("mL")
    /// Amount('1324.8941244 mL')
    /// >>> print(Amount("1.3 L").to_exact("US qt"))
    /// None
    fn to_exact(&self, unit: UnitGiven) -> PyResult<Option<Self>> {
        answer(|| Ok(self.0.to_exact(unit.0))).map(|exact| exact.map(Amount))
    }

    fn __add__(&self, other: &Self) -> PyResult<Self> {
        answer(|| self.0.checked_add(other.0)).map(Amount)
    }

    fn __sub__(&self, other: &Self) -> PyResult<Self> {
        answer(|| self.0.checked_sub(other.0)).map(Amount)
    }

    fn __radd__(&self, other: &Self) -> PyResult<Self> {
        other.__add__(self)
    }

    fn __rsub__(&self, other: &Self) -> PyResult<Self> {
        other.__sub__(self)
    }

    fn __mul__(&self, factor: &Bound<'_, PyInt>) -> PyResult<Self> {
        let factor = saturated(factor)?;
        answer(|| self.0.times(factor)).map(Amount)
    }

    fn __rmul__(&self, factor: &Bound<'_, PyInt>) -> PyResult<Self> {
        self.__mul__(factor)
    }

    fn __neg__(&self) -> PyResult<Self> {
        answer(|| self.0.times(-1)).map(Amount)
    }

    fn __float__(&self) -> PyResult<f64> {
        answer(|| Ok(self.0.to_f64()))
    }

    fn __richcmp__(&self, other: &Self, op: CompareOp) -> PyResult<bool> {
        match op {
            CompareOp::Eq => answer(|| Ok(self.0 == other.0)),
            CompareOp::Ne => answer(|| Ok(self.0 != other.0)),
            _ => answer(|| self.0.compare(&other.0)).map(|order| op.matches(order)),
        }
    }

    fn __hash__(&self) -> u64 {
        let mut hasher = DefaultHasher::new();
        self.0.hash(&mut hasher);
        hasher.finish()
    }

    fn __str__(&self) -> String {
        self.0.to_string()
    }

    fn __repr__(&self) -> String {
        format!("Amount('{}')", self.0)
    }

    fn __format__(&self, py: Python<'_>, layout: &str) -> PyResult<String> {
        let text = PyString::new(py, &self.0.to_string());
        text.call_method1(intern!(py, "__format__"), (layout,))?
            .extract()
    }

    fn __getnewargs__(&self) -> (String,) {
        (self.0.to_string(),)
    }
}

/// An amount, or its text.
pub(crate) struct AmountGiven(pub(crate) brimline::Amount);

impl FromPyObject<'_, '_> for AmountGiven {
    type Error = Refused;
    #[cfg(feature = "introspection")]
    const INPUT_TYPE: PyStaticExpr = type_hint_union!(
        <Amount as pyo3::PyTypeInfo>::TYPE_HINT,
        type_hint_identifier!("builtins", "str")
    );

    fn extract(given: Borrowed<'_, '_, PyAny>) -> Result<Self, Refused> {
        read(&given, None, None).map(AmountGiven)
    }
}

/// An amount, or what its text says where this kind and these customary measures are meant.
#[inline]
pub(crate) fn read(
    given: &Borrowed<'_, '_, PyAny>,
    kind: Option<Kind>,
    measures: Option<Measures>,
) -> Result<brimline::Amount, Refused> {
    if let Ok(amount) = given.cast_exact::<Amount>() {
        return Ok(amount.get().0);
    }
    if let Ok(text) = given.cast::<PyString>() {
        let text = utf8(&text)?;
        return Ok(caught(|| brimline::Amount::parse_as(text, kind, measures))?);
    }
    Err(no_amount(given).into())
}

/// Refuses what is neither an amount nor a text.
pub(crate) fn expected(given: &Borrowed<'_, '_, PyAny>) -> PyResult<()> {
    let may_be = given.is_instance_of::<Amount>() || given.is_instance_of::<PyString>();
    may_be.then_some(()).ok_or_else(|| no_amount(given))
}

#[cold]
fn no_amount(given: &Borrowed<'_, '_, PyAny>) -> PyErr {
    let name = given.get_type().name();
    let name = name.map_or_else(|_| "that".into(), |name| name.to_string());
    let said = format!("an amount is an Amount or its text, not {name}");
    PyTypeError::new_err(said)
}
