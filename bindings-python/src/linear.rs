//! Where a number stands in a row of bytes.

use crate::argument::{Given, kind, of_kind_if};
use crate::unit::UnitGiven;
use crate::word::Word;
use brimline::Kind;
use brimline::signal::{self, ByteOrder};
use pyo3::prelude::*;
use pyo3::types::PyDict;
use std::hash::{Hash, Hasher};

/// Where a number stands in a row of bytes, and what it is worth: `offset` + number · `scale`.
///
/// What `linear` and `diagnostic_reply` take as a layout, read once for many rows. `start` and `length` are in bits (1 to
/// 64), `order` is which byte comes first; `scale`, the worth of one step, is of the unit's kind, for a temperature a
/// difference; so are `offset`, `min` and `max` if they are given. Bits count from 0, the lowest of the first byte, eight
/// to a byte; `start` is the lowest bit of the number for `little`, the highest for `big`, as in the common databases of
/// network signals.
///
/// Raises `QuantityError` for a unit or an amount that cannot be read; what does not fit the data is refused with it.
///
/// >>> from brimline.signal import Linear, linear
/// >>> layout = Linear(start=0, length=8, order="little", unit="°C", scale="1 °C", offset="-40 °C")
/// >>> linear(b"\x7b", layout=layout)
/// {'state': 'valid', 'value': '83 °C'}
#[pyclass(frozen, eq, hash, module = "brimline.signal")]
#[derive(Clone, Copy, PartialEq, Eq)]
pub(crate) struct Linear(pub(crate) signal::Linear);

impl Hash for Linear {
    fn hash<H: Hasher>(&self, state: &mut H) {
        let own = &self.0;
        (own.start, own.length, own.order, own.signed, own.unit).hash(state);
        (own.scale, own.offset, own.min, own.max).hash(state);
    }
}

#[pymethods]
impl Linear {
    #[new]
    #[pyo3(signature = (*, start, length, order, unit, scale, signed=false, offset=None, min=None, max=None))]
    #[expect(clippy::too_many_arguments, reason = "the members of a layout")]
    fn new(
        start: u32,
        length: u32,
        order: Word<ByteOrder>,
        unit: UnitGiven,
        scale: Given<'_, '_, kind::Any>,
        signed: bool,
        offset: Option<Given<'_, '_, kind::Any>>,
        min: Option<Given<'_, '_, kind::Any>>,
        max: Option<Given<'_, '_, kind::Any>>,
    ) -> PyResult<Self> {
        let kind = unit.0.kind();
        let step = match kind {
            Kind::Temperature => Kind::TemperatureDifference,
            kind => kind,
        };
        Ok(Linear(signal::Linear {
            start,
            length,
            order: order.0,
            signed,
            unit: unit.0,
            scale: scale.of_kind(step, "scale")?,
            offset: of_kind_if(offset, kind, "offset")?,
            min: of_kind_if(min, kind, "min")?,
            max: of_kind_if(max, kind, "max")?,
        }))
    }

    fn __repr__(&self, py: Python<'_>) -> PyResult<String> {
        let mut said = Vec::new();
        for (name, value) in self.members(py)? {
            said.push(format!("{name}={}", value.repr()?));
        }
        Ok(format!("Linear({})", said.join(", ")))
    }

    fn __getnewargs_ex__<'py>(&self, py: Python<'py>) -> PyResult<((), Bound<'py, PyDict>)> {
        Ok(((), self.members(py)?))
    }
}

impl Linear {
    /// As a mapping.
    pub(crate) fn members<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyDict>> {
        let own = &self.0;
        let members = PyDict::new(py);
        members.set_item("start", own.start)?;
        members.set_item("length", own.length)?;
        members.set_item("order", own.order.slug())?;
        members.set_item("unit", own.unit.symbol())?;
        members.set_item("scale", own.scale.to_string())?;
        members.set_item("signed", own.signed)?;
        for (name, amount) in [("offset", own.offset), ("min", own.min), ("max", own.max)] {
            if let Some(amount) = amount {
                members.set_item(name, amount.to_string())?;
            }
        }
        Ok(members)
    }
}
