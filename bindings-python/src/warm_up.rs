//! The calculators of `brimline.warm_up`.

use crate::amount::Amount;
use crate::argument::{Flag, Given, List, Ratio, kind, read};
use crate::asking::arguments;
use crate::data::{Outlook, Told, shapes_of};
use crate::error::answer;
use brimline::warm_up::{self, Cooling};
use pyo3::prelude::*;

shapes_of!("brimline.calculated": ColdSoak, CoolDown, Crossing, SensorDoubts, WarmUpFit);

/// Fits the first-order response T∞ - (T∞ - T₀)·exp(-t/τ) to readings, rising or falling.
///
/// Each sample has the time it was taken `at` and its `reading`: three or more in order of time, two with the
/// `asymptote` held. Without `scatter` by least squares; with it, a difference above zero, by soft L1, so that a reading
/// far off draws no harder than one scatter away. Source: Levenberg (1944) and Marquardt (1963); standard errors as
/// `curve_fit` of scipy 1.17.1 gives them.
///
/// Raises `QuantityError`: `wrong_kind`, `out_of_range` for too few readings, times that go back, and readings that do
/// not tell where they are going.
///
/// >>> from brimline import Amount, warm_up
/// >>> readings = [19.9, 25.89, 31.93, 36.97, 41.3, 45.55, 48.79, 52.46]
/// >>> samples = [{"at": f"{minute} min", "reading": f"{reading} °C"} for minute, reading in enumerate(readings)]
/// >>> Amount(warm_up.fit(samples)["asymptote"]).to("°C", 4)
/// Amount('80.0419 °C')
#[pyfunction]
#[pyo3(signature = (samples, *, scatter=None, asymptote=None))]
pub(crate) fn fit<'py>(
    py: Python<'py>,
    samples: Given<'_, 'py, List>,
    scatter: Option<Given<'_, 'py, kind::Difference>>,
    asymptote: Option<Given<'_, 'py, kind::Temperature>>,
) -> PyResult<Told<'py, WarmUpFit>> {
    arguments!(samples, scatter, asymptote).ask(py, "warm_up.fit")
}

/// When the response that `fit` finds crosses a temperature, and how well that is known.
///
/// `at` is on the clock of the readings, `uncertainty` standard. Source: the delta method.
///
/// Raises what `fit` raises, and `QuantityError`: `out_of_range` for a temperature at or beyond the asymptote, or too
/// near to it to tell.
///
/// >>> from brimline import warm_up
/// >>> readings = [19.9, 25.89, 31.93, 36.97, 41.3, 45.55, 48.79, 52.46]
/// >>> samples = [{"at": f"{60 * minute} s", "reading": f"{reading} °C"} for minute, reading in enumerate(readings)]
/// >>> warm_up.crossing(samples, temperature="40 °C")["at"][:7]
/// '220.998'
#[pyfunction]
#[pyo3(signature = (samples, *, temperature, scatter=None, asymptote=None))]
pub(crate) fn crossing<'py>(
    py: Python<'py>,
    samples: Given<'_, 'py, List>,
    temperature: Given<'_, 'py, kind::Temperature>,
    scatter: Option<Given<'_, 'py, kind::Difference>>,
    asymptote: Option<Given<'_, 'py, kind::Temperature>>,
) -> PyResult<Told<'py, Crossing>> {
    arguments!(samples, scatter, asymptote, temperature).ask(py, "warm_up.crossing")
}

/// When the window of temperature opens and closes: earliest, likely and latest, counted from the last reading.
///
/// Each sample has the time it was taken `at` and its `reading`, in order of time. `min` opens the window, `max` closes it;
/// `scatter` of the readings is 0.5 °C unless given; each of the `pours` has `at`, `volume` and `temperature` and mixes
/// with the fluid `held` in the unit, without which it starts the forecast anew. By a first-order response from four
/// readings on, where they show that its asymptote lies beyond the limit; by the line through the latest ones otherwise;
/// not at all where they do not rise. `Forecast` is the same, kept up reading by reading. Source: the delta method; Theil
/// (1950) and Sen (1968).
///
/// Raises `QuantityError`: `wrong_kind`, `out_of_range`, with the place in the list.
///
/// >>> from brimline import warm_up
/// >>> readings = [19.9, 25.89, 31.93, 36.97, 41.3, 45.55]
/// >>> samples = [{"at": f"{minute} min", "reading": f"{reading} °C"} for minute, reading in enumerate(readings)]
/// >>> told = warm_up.forecast(samples, min="50 °C", max="60 °C")
/// >>> told["method"], sorted(told["opens"])
/// ('first_order', ['earliest', 'latest', 'likely'])
#[pyfunction]
#[pyo3(signature = (samples, *, min=None, max=None, scatter=None, pours=None, held=None))]
pub(crate) fn forecast<'py>(
    py: Python<'py>,
    samples: Given<'_, 'py, List>,
    min: Option<Given<'_, 'py, kind::Temperature>>,
    max: Option<Given<'_, 'py, kind::Temperature>>,
    scatter: Option<Given<'_, 'py, kind::Difference>>,
    pours: Option<Given<'_, 'py, List>>,
    held: Option<Given<'_, 'py, kind::Volume>>,
) -> PyResult<Told<'py, Outlook>> {
    arguments!(samples, min, max, scatter, pours, held).ask(py, "warm_up.forecast")
}

/// The temperature of fluid after more of it was poured in, before the case warms it again, in the unit of `temperature`.
///
/// Tm = (V·T + v·t) / (V + v): `volume` above zero at `temperature`, `added` from zero at `added_temperature`, both of one
/// fluid. Source: the balance of heat; common practice.
///
/// Raises `QuantityError`: `wrong_kind`, `out_of_range`.
///
/// >>> from brimline import warm_up
/// >>> mixed = warm_up.mixed_temperature("6.8 L", temperature="45.8 °C", added="0.25 L", added_temperature="18 °C")
/// >>> mixed.to("°C", 2)  # (6.8 · 45.8 + 0.25 · 18) / 7.05
/// Amount('44.81 °C')
#[pyfunction]
#[pyo3(signature = (volume, *, temperature, added, added_temperature))]
pub(crate) fn mixed_temperature(
    volume: Given<'_, '_, kind::Volume>,
    temperature: Given<'_, '_, kind::Temperature>,
    added: Given<'_, '_, kind::Volume>,
    added_temperature: Given<'_, '_, kind::Temperature>,
) -> PyResult<Amount> {
    read!(volume, temperature, added, added_temperature);
    answer(|| warm_up::mixed_temperature(volume, temperature, added, added_temperature)).map(Amount)
}

/// How long fluid that was found too warm must cool before the engine is started again, and to which temperature.
///
/// `first` and `second` are two readings, `elapsed` apart, while it cools to the air at `ambient`; `max` is the upper
/// limit, which running reaches again at `reheat_per_minute`, a difference, for the `reheat_time` until the level is read:
/// so the target lies below it. The `wait` counts from the second reading; `earliest` and `latest` are its
/// ends where each reading is half its last place off. Source: the lumped thermal capacity; the target
/// from common practice, no source.
///
/// Raises `QuantityError`: `wrong_kind`, `out_of_range` for readings that do not fall by more than the place they are
/// read to or lie at or below the air, and where cooling never reaches the target.
///
/// >>> from brimline import warm_up
/// >>> plan = warm_up.cool_down("70 °C", second="60 °C", elapsed="10 min", ambient="20 °C", max="45 °C",
/// ...     reheat_per_minute="1.5 °C", reheat_time="4 min")
/// >>> plan["target"], plan["wait"][:5]
/// ('39 °C', '33.36')
#[pyfunction]
#[pyo3(signature = (first, *, second, elapsed, ambient, max, reheat_per_minute, reheat_time))]
#[expect(
    clippy::too_many_arguments,
    reason = "they have the names they have in every language"
)]
pub(crate) fn cool_down<'py>(
    py: Python<'py>,
    first: Given<'_, 'py, kind::Temperature>,
    second: Given<'_, 'py, kind::Temperature>,
    elapsed: Given<'_, 'py, kind::Time>,
    ambient: Given<'_, 'py, kind::Temperature>,
    max: Given<'_, 'py, kind::Temperature>,
    reheat_per_minute: Given<'_, 'py, kind::Difference>,
    reheat_time: Given<'_, 'py, kind::Time>,
) -> PyResult<Told<'py, CoolDown>> {
    read!(
        first,
        second,
        elapsed,
        ambient,
        max,
        reheat_per_minute,
        reheat_time
    );
    let cooling = Cooling {
        first,
        second,
        elapsed,
        ambient,
        max,
        reheat_per_minute,
        reheat_time,
    };
    Told::answer(py, &answer(|| warm_up::cool_down(cooling))?)
}

/// How long a first-order response takes to go a share of its way, in the unit of the time constant: -τ·ln(1 - share).
///
/// `time_constant` above zero, `share` from 0 to below 1. Source: the lumped thermal capacity.
///
/// Raises `QuantityError`: `wrong_kind`, `out_of_range`.
///
/// >>> from brimline import warm_up
/// >>> warm_up.response_time("2 min", share=0.95).to("min", 2)
/// Amount('5.99 min')
#[pyfunction]
#[pyo3(signature = (time_constant, *, share))]
pub(crate) fn response_time(
    time_constant: Given<'_, '_, kind::Time>,
    share: Given<'_, '_, Ratio>,
) -> PyResult<Amount> {
    read!(time_constant, share);
    answer(|| warm_up::response_time(time_constant, share)).map(Amount)
}

/// Whether sensors agree on a vehicle that stood overnight with the engine off: fluid, coolant, intake, air.
///
/// Each reading has a `name` and its `reading`, 2 to 100 of them, all to be within `spread` (5 °C unless given).
/// `unit_question` asks about a reading whose number would agree in the other scale; nothing is converted. Common
/// practice, no source.
///
/// Raises `QuantityError`: `wrong_kind`, `out_of_range`.
///
/// >>> from brimline import warm_up
/// >>> readings = [{"name": "fluid", "reading": "68 °C"}, {"name": "coolant", "reading": "20 °C"},
/// ...             {"name": "air", "reading": "19 °C"}]
/// >>> told = warm_up.cold_soak(readings)
/// >>> told["agree"], told["odd"], told["unit_question"]["other"]
/// (False, ['fluid'], '68 °F')
#[pyfunction]
#[pyo3(signature = (readings, *, spread=None))]
pub(crate) fn cold_soak<'py>(
    py: Python<'py>,
    readings: Given<'_, 'py, List>,
    spread: Option<Given<'_, 'py, kind::Difference>>,
) -> PyResult<Told<'py, ColdSoak>> {
    arguments!(readings, spread).ask(py, "warm_up.cold_soak")
}

/// Which readings are to be asked about: those no fluid in a gearbox has, those a broken sensor gives, jumps no fluid makes, and cool
/// ones that stand still while the engine is `running`.
///
/// Each sample has the time it was taken `at` and its `reading`, in order of time. Nothing is deleted or converted.
/// Source: default readings from the codings of SAE J1979 and SAE J1939-71; the rest common practice, no source.
///
/// Raises `QuantityError`: `wrong_kind`, `out_of_range` for times that go back.
///
/// >>> from brimline import warm_up
/// >>> samples = [{"at": f"{at} s", "reading": reading} for at, reading in [(0, "31 °C"), (30, "-40 °F"), (60, "32 °C")]]
/// >>> warm_up.sensor_doubts(samples, running=True)
/// {'doubts': [{'index': 1, 'id': 'reading_default'}]}
#[pyfunction]
#[pyo3(signature = (samples, *, running))]
pub(crate) fn sensor_doubts<'py>(
    py: Python<'py>,
    samples: Given<'_, 'py, List>,
    running: Given<'_, 'py, Flag>,
) -> PyResult<Told<'py, SensorDoubts>> {
    arguments!(samples, running).ask(py, "warm_up.sensor_doubts")
}
