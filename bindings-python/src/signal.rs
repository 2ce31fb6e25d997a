//! The calculators of `brimline.signal`.

use crate::argument::{Bytes, Given, Identifier, Layout};
use crate::asking::arguments;
use crate::data::{Told, shapes_of};
use crate::error::answer;
use crate::linear::Linear;
use brimline::signal;
use pyo3::prelude::*;
use pyo3::pybacked::PyBackedBytes;

shapes_of!("brimline.observed": Frame, Reply, SignalReading);

/// Reads the frame in which a heavy vehicle's transmission tells temperature, level and level status of its fluid:
/// parameter group 65272, eight bytes.
///
/// `id` is the identifier of 29 bits and `data` the bytes; either may be hexadecimal text. Every value has its `state`;
/// only `valid` may be used. A departure counts only with the status `conditions_met`. Source: SAE J1939-71, PGN 65272,
/// SPN 177, 124, 3027, 3028, 3026.
///
/// Raises `QuantityError`: `out_of_range` for another parameter group and for anything but eight bytes;
/// `BrimlineError`: `unknown_value` for text that is not hexadecimal.
///
/// >>> from brimline import signal
/// >>> frame = signal.transmission_frame(0x18FEF8FE, data=bytes.fromhex("FFFF FFFF 2028 7A20"))
/// >>> frame["temperature"], frame["departure"], frame["status"]
/// ({'state': 'valid', 'value': '48 °C'}, {'state': 'valid', 'value': '-1.5 L'}, 'in_gear')
#[pyfunction]
#[pyo3(signature = (id, *, data))]
pub(crate) fn transmission_frame<'py>(
    py: Python<'py>,
    id: Given<'_, 'py, Identifier>,
    data: Given<'_, 'py, Bytes>,
) -> PyResult<Told<'py, Frame>> {
    if let (Ok(id), Ok(data)) = (id.0.extract::<u32>(), data.0.extract::<PyBackedBytes>()) {
        return Told::answer(py, &answer(|| signal::transmission_frame(id, &data))?);
    }
    arguments!(id, data).ask(py, "signal.transmission_frame")
}

/// Reads one number from a row of bytes, exactly: `offset` + number · `scale`.
///
/// `data` is bytes or hexadecimal text, the layout a `Linear` or a mapping with its members. Outside `min` to `max` a
/// value is `implausible`.
///
/// Raises `QuantityError`: `out_of_range` for bits outside the data; what else a layout can have wrong, with its path.
///
/// >>> from brimline import signal
/// >>> layout = {"start": 0, "length": 8, "order": "little", "unit": "°C", "scale": "1 °C", "offset": "-40 °C"}
/// >>> signal.linear(b"\x7b", layout=layout)
/// {'state': 'valid', 'value': '83 °C'}
#[pyfunction]
#[pyo3(signature = (data, *, layout))]
pub(crate) fn linear<'py>(
    py: Python<'py>,
    data: Given<'_, 'py, Bytes>,
    layout: Given<'_, 'py, Layout>,
) -> PyResult<Told<'py, SignalReading>> {
    if let (Ok(layout), Ok(data)) = (
        layout.0.cast_exact::<Linear>(),
        data.0.extract::<PyBackedBytes>(),
    ) {
        return Told::answer(py, &answer(|| signal::linear(&data, &layout.get().0))?);
    }
    arguments!(data, layout).ask(py, "signal.linear")
}

/// Reads what a control unit answers when it is asked for one value: `positive` with data, `negative`, or `pending`.
///
/// `request` and `reply` are bytes or hexadecimal text: a data identifier (service 22) or a parameter of current data
/// (service 01). With a `layout`, as of `linear`, the value in the data is read. Bytes in the answer are hexadecimal
/// text. Source: ISO 14229-1, ReadDataByIdentifier and annex A; SAE J1979, service 01, from memory.
///
/// Raises `BrimlineError` for an answer that does not belong to the request or is cut short.
///
/// >>> from brimline import signal
/// >>> signal.diagnostic_reply("22 11 61", reply=bytes.fromhex("7F 22 31"))
/// {'state': 'negative', 'code': 49, 'reason': 'out_of_range'}
#[pyfunction]
#[pyo3(signature = (request, *, reply, layout=None))]
pub(crate) fn diagnostic_reply<'py>(
    py: Python<'py>,
    request: Given<'_, 'py, Bytes>,
    reply: Given<'_, 'py, Bytes>,
    layout: Option<Given<'_, 'py, Layout>>,
) -> PyResult<Told<'py, Reply>> {
    arguments!(request, reply, layout).ask(py, "signal.diagnostic_reply")
}
