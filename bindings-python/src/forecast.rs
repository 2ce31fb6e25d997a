//! A forecast that is kept up.

use crate::argument::{Given, kind, read};
use crate::data::{Outlook, Told};
use crate::error::answer;
use brimline::warm_up::{self, Asked};
use pyo3::prelude::*;
use std::sync::{Mutex, MutexGuard, PoisonError};

/// When the window of temperature opens and closes, told again with every reading.
///
/// It takes what the function `forecast` takes, and answers the same for the same readings and pours. `min` opens the
/// window, `max` closes it; `scatter` is what readings scatter, 0.5 °C unless given; `held` is the fluid in the unit, which
/// a pour mixes with. However long it runs, at most 64 readings are held. It changes with every reading, so it is neither
/// hashed nor pickled; `copy.copy` makes one that goes its own way.
///
/// Raises `QuantityError`: `wrong_kind`, `out_of_range`.
///
/// >>> from brimline.warm_up import Forecast
/// >>> forecast = Forecast(min="50 °C", max="60 °C")
/// >>> for minute, reading in enumerate([19.9, 25.89, 31.93, 36.97, 41.3, 45.55]):
/// ...     forecast.sample(f"{minute} min", reading=f"{reading} °C")
/// >>> forecast.answer()["method"]
/// 'first_order'
#[pyclass(frozen, module = "brimline.warm_up")]
pub(crate) struct Forecast(Mutex<warm_up::Forecast>);

#[pymethods]
impl Forecast {
    #[new]
    #[pyo3(signature = (*, min=None, max=None, scatter=None, held=None))]
    fn new(
        min: Option<Given<'_, '_, kind::Temperature>>,
        max: Option<Given<'_, '_, kind::Temperature>>,
        scatter: Option<Given<'_, '_, kind::Difference>>,
        held: Option<Given<'_, '_, kind::Volume>>,
    ) -> PyResult<Self> {
        read!(min, max, scatter, held);
        let asked = Asked {
            min,
            max,
            scatter,
            held,
        };
        answer(|| warm_up::Forecast::new(asked)).map(Forecast::of)
    }

    /// Takes a reading in, in order of time.
    ///
    /// Raises `QuantityError`: `wrong_kind`, `out_of_range` for a time before the last; the forecast is then as it was.
    ///
    /// >>> from brimline.warm_up import Forecast
    /// >>> forecast = Forecast(min="50 °C")
    /// >>> forecast.sample("0 s", reading="19.9 °C")
    /// >>> forecast.answer()
    /// {'method': 'none', 'reason': 'too_few', 'now': '19.90 °C', 'suspect': []}
    #[pyo3(signature = (at, *, reading))]
    fn sample(
        &self,
        at: Given<'_, '_, kind::Time>,
        reading: Given<'_, '_, kind::Temperature>,
    ) -> PyResult<()> {
        read!(at, reading);
        self.change(|forecast| forecast.sample(at, reading))
    }

    /// Takes a pour in, in order of time; with nothing known of the fluid in the unit it starts the forecast anew.
    ///
    /// Raises `QuantityError`: `wrong_kind`, `out_of_range`; the forecast is then as it was.
    ///
    /// >>> from brimline.warm_up import Forecast
    /// >>> forecast = Forecast(min="50 °C", held="6.8 L")
    /// >>> forecast.sample("0 s", reading="45.8 °C")
    /// >>> forecast.poured("10 s", volume="0.25 L", temperature="18 °C")
    #[pyo3(signature = (at, *, volume, temperature))]
    fn poured(
        &self,
        at: Given<'_, '_, kind::Time>,
        volume: Given<'_, '_, kind::Volume>,
        temperature: Given<'_, '_, kind::Temperature>,
    ) -> PyResult<()> {
        read!(at, volume, temperature);
        self.change(|forecast| forecast.poured(at, volume, temperature))
    }

    /// What the readings so far tell, times counted from the last reading or pour.
    ///
    /// >>> from brimline.warm_up import Forecast
    /// >>> Forecast(min="50 °C").answer()
    /// {'method': 'none', 'reason': 'too_few', 'suspect': []}
    fn answer<'py>(&self, py: Python<'py>) -> PyResult<Told<'py, Outlook>> {
        let outlook = answer(|| Ok(self.held().answer()))?;
        Told::answer(py, &outlook)
    }

    /// The same in English.
    ///
    /// >>> from brimline.warm_up import Forecast
    /// >>> Forecast(min="50 °C").text()
    /// 'There are too few readings yet to say when the window opens.'
    fn text(&self) -> PyResult<String> {
        self.told(&brimline::report::Teller::english())
    }

    fn __copy__(&self) -> Self {
        Forecast::of(self.held().clone())
    }

    fn __deepcopy__(&self, _memo: &Bound<'_, PyAny>) -> Self {
        self.__copy__()
    }
}

impl Forecast {
    fn of(forecast: warm_up::Forecast) -> Self {
        Forecast(Mutex::new(forecast))
    }

    /// What the readings so far tell, by a teller.
    pub(crate) fn told(&self, teller: &brimline::report::Teller) -> PyResult<String> {
        answer(|| Ok(teller.outlook(&self.held().answer())))
    }

    fn held(&self) -> MutexGuard<'_, warm_up::Forecast> {
        // What is held is whole: it is changed all at once.
        self.0.lock().unwrap_or_else(PoisonError::into_inner)
    }

    fn change(
        &self,
        change: impl FnOnce(&mut warm_up::Forecast) -> Result<(), brimline::Error>,
    ) -> PyResult<()> {
        let mut held = self.held();
        let changed = answer(|| {
            let mut changed = held.clone();
            change(&mut changed).map(|()| changed)
        });
        *held = changed?;
        Ok(())
    }
}
