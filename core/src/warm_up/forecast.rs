//! When the window of temperature opens and closes, told again with every reading.

use super::curve::{Fitted, Point, Shape, Stir, Task};
use super::outlook::Outlook;
use super::sensor::{KELVIN, Watch, Word, moment, time};
use super::{Sample, above_zero, from_zero, number, out_of_range, within};
use crate::error::Error;
use crate::quantity::{Amount, Unit};

/// What a forecast is asked, all of it optional.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct Asked {
    /// The temperature at which the window opens.
    pub min: Option<Amount>,
    /// The temperature at which it closes, not below `min`.
    pub max: Option<Amount>,
    /// What readings scatter, a difference above zero; 0.5 °C where not given.
    pub scatter: Option<Amount>,
    /// The fluid in the unit, above zero: what a pour mixes with. Without it a pour starts the forecast anew.
    pub held: Option<Amount>,
}

/// Fluid that was poured in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Pour {
    /// When, on the clock of the readings.
    pub at: Amount,
    /// How much, from zero.
    pub volume: Amount,
    /// How warm it was.
    pub temperature: Amount,
}

/// The most readings held, and the most pours.
const READINGS: usize = 64;
const POURS: usize = 8;
/// A first-order response is fitted to at least so many readings.
pub(super) const LEAST: usize = 4;
/// Steps of the first fit and of every one after it, which begins where the last one ended.
const STEPS: (u32, u32) = (30, 2);
/// A step that gains less than this part of the variance is the last.
const ENOUGH: f64 = 1e-4;
const SCATTER: f64 = 0.5;

/// A forecast that is kept up: a reading or a pour is taken in without allocating, and answered at any time.
///
/// At most 64 readings are held; when they are full, every second of the older half is let go. Doubted readings (see
/// [`sensor_doubts`](super::sensor_doubts), the engine taken as running) are kept and not fitted. Of a reading and a pour at
/// one time the reading comes first. After a pour the response
/// goes on from the mixed temperature, nearing the same asymptote with the same time constant, so that the readings before
/// it still count. At most eight pours are held: with the ninth the oldest is let go, and the readings before it.
///
/// ```
/// use brimline::{Amount, warm_up::{Asked, Forecast, Method}};
/// let mut forecast = Forecast::new(Asked {
///     min: Some(Amount::parse("50 °C")?),
///     max: Some(Amount::parse("60 °C")?),
///     ..Asked::default()
/// })?;
/// for (minute, reading) in [19.9, 25.89, 31.93, 36.97, 41.3, 45.55].into_iter().enumerate() {
///     let at = Amount::parse(&format!("{minute} min"))?;
///     forecast.sample(at, Amount::parse(&format!("{reading} °C"))?)?;
/// }
/// let outlook = forecast.answer();
/// assert_eq!(outlook.method, Method::FirstOrder);
/// // These are drawn from a response that reaches 50 °C after 371 s, 71 s after the last reading.
/// let opens = outlook.opens.unwrap();
/// assert!(opens.earliest.si() <= 71.0 && opens.latest.unwrap().si() >= 71.0);
/// # Ok::<(), brimline::Error>(())
/// ```
#[derive(Debug, Clone)]
pub struct Forecast {
    pub(super) min: Option<f64>,
    pub(super) max: Option<f64>,
    pub(super) scatter: f64,
    held: Option<f64>,
    /// Seconds and kelvin of the first reading.
    pub(super) origin: Option<(f64, f64)>,
    /// Time of the last reading or pour, in nanoseconds and in seconds after the first reading.
    last: Option<i128>,
    pub(super) now: f64,
    /// Readings given, held or not.
    given: u32,
    points: [Point; READINGS],
    count: usize,
    stirs: [Stir; POURS],
    stirred: usize,
    pub(super) watch: Watch,
    pub(super) fitted: Option<Fitted>,
    /// The unit that was last read in.
    pub(super) unit: Unit,
}

impl Forecast {
    /// A forecast with no reading yet.
    ///
    /// # Errors
    ///
    /// [`WrongKind`](crate::ErrorKind::WrongKind); [`OutOfRange`](crate::ErrorKind::OutOfRange) for a scatter or a held
    /// volume that is not above zero, a window that ends below its beginning.
    pub fn new(asked: Asked) -> Result<Self, Error> {
        let temperature = |name, limit: Option<Amount>| {
            limit
                .map(|limit| number(name, limit, Unit::Kelvin))
                .transpose()
        };
        let (min, max) = (
            temperature("min", asked.min)?,
            temperature("max", asked.max)?,
        );
        if let (Some(min), Some(max)) = (asked.min, asked.max)
            && max < min
        {
            let fault = out_of_range("max", max).allowed([alloc::format!("from {min}")]);
            return Err(fault.into());
        }
        let scatter = asked.scatter.map_or(Ok(SCATTER), |scatter| {
            above_zero("scatter", scatter, Unit::CelsiusDifference)
        })?;
        let held = asked
            .held
            .map(|held| above_zero("held", held, Unit::CubicMetre))
            .transpose()?;
        Ok(Forecast {
            min,
            max,
            scatter,
            held,
            origin: None,
            last: None,
            now: 0.0,
            given: 0,
            points: [Point::default(); READINGS],
            count: 0,
            stirs: [Stir::default(); POURS],
            stirred: 0,
            watch: Watch::default(),
            fitted: None,
            unit: Unit::DegreeCelsius,
        })
    }

    /// Takes a reading in, in order of time.
    ///
    /// # Errors
    ///
    /// [`WrongKind`](crate::ErrorKind::WrongKind), [`OutOfRange`](crate::ErrorKind::OutOfRange) for a time before the last;
    /// the forecast is then as it was.
    pub fn sample(&mut self, at: Amount, reading: Amount) -> Result<(), Error> {
        let moment = time(&Sample { at, reading }, self.last)?;
        let (seconds, kelvin) = (at.si(), reading.si());
        let (first_at, first_kelvin) = *self.origin.get_or_insert((seconds, kelvin));
        self.last = Some(moment);
        self.now = seconds - first_at;
        self.unit = reading.unit();
        let word = self.watch.see(&reading, moment, true);
        if word == Word::BelievedAnew {
            for point in &mut self.points {
                point.doubted = true;
            }
            self.fitted = None;
        }
        // Of a reading and a pour at one time the reading comes first.
        let last_stir = self.task().stirs.last().map(|stir| stir.at);
        let mut is_whole = self.fitted.is_some() && last_stir.is_none_or(|at| at < self.now);
        if self.count == READINGS {
            self.thin();
            is_whole = false;
        }
        let point = Point {
            at: self.now,
            over: kelvin - first_kelvin,
            index: self.given,
            doubted: matches!(word, Word::Doubted(_)),
        };
        if let Some(place) = self.points.get_mut(self.count) {
            *place = point;
            self.count = self.count.saturating_add(1);
        }
        self.given = self.given.saturating_add(1);
        if !(is_whole && point.doubted) {
            self.fit(is_whole.then_some(&point));
        }
        Ok(())
    }

    /// Takes a pour in, in order of time; with nothing known of the fluid in the unit it starts the forecast anew.
    ///
    /// # Errors
    ///
    /// As [`sample`](Forecast::sample), and [`OutOfRange`](crate::ErrorKind::OutOfRange) for a volume below zero.
    pub fn poured(&mut self, at: Amount, volume: Amount, temperature: Amount) -> Result<(), Error> {
        let moment = moment(at, self.last)?;
        let poured = from_zero("volume", volume, Unit::CubicMetre)?;
        let kelvin = above_zero("temperature", temperature, Unit::Kelvin)?;
        self.last = Some(moment);
        let held = self.held;
        self.held = held.map(|held| held + poured);
        let (Some((first_at, first_kelvin)), true) = (self.origin, poured > 0.0) else {
            return Ok(());
        };
        if self.stirred == POURS && held.is_some() {
            self.let_oldest_go();
        }
        let place = self.stirs.get_mut(self.stirred);
        if let (Some(held), Some(place)) = (held, place) {
            let kept = held / (held + poured);
            self.now = at.si() - first_at;
            *place = Stir {
                at: self.now,
                kept,
                brought: (1.0 - kept) * (kelvin - first_kelvin),
            };
            self.stirred = self.stirred.saturating_add(1);
            // To the reading as it stands, in counts of temperature.
            let added = kelvin * KELVIN as f64;
            self.watch
                .stir(|count| (kept * count as f64 + (1.0 - kept) * added) as i128);
            self.fit(None);
        } else {
            (self.origin, self.now, self.fitted) = (None, 0.0, None);
            (self.count, self.stirred) = (0, 0);
            self.watch = Watch::default();
        }
        Ok(())
    }

    /// Says what is in the unit now, as fluid was let out.
    pub(crate) fn hold(&mut self, held: Option<Amount>) {
        self.held = held.map(|held| held.si()).filter(|held| *held > 0.0);
    }

    /// Lets the oldest pour go, and the readings before it.
    fn let_oldest_go(&mut self) {
        let oldest = self.stirs.first().map_or(0.0, |stir| stir.at);
        let points = self.points.get_mut(..self.count).unwrap_or_default();
        let before = points.partition_point(|point| point.at <= oldest);
        points.rotate_left(before);
        self.count = self.count.saturating_sub(before);
        self.stirs.rotate_left(1);
        self.stirred = POURS.saturating_sub(1);
        self.fitted = None;
    }

    /// Lets every second of the older half go, and what is doubted in it.
    fn thin(&mut self) {
        let mut kept = 0_usize;
        for place in 0..READINGS {
            let Some(point) = self.points.get(place).copied() else {
                break;
            };
            let is_old = place < READINGS / 2;
            if is_old && (point.doubted || place % 2 == 1) {
                continue;
            }
            if let Some(place) = self.points.get_mut(kept) {
                *place = point;
            }
            kept = kept.saturating_add(1);
        }
        self.count = kept;
    }

    /// What is held, to fit to.
    pub(super) fn task(&self) -> Task<'_> {
        Task {
            points: self.points.get(..self.count).unwrap_or_default(),
            stirs: self.stirs.get(..self.stirred).unwrap_or_default(),
            narrowness: 1.0 / (self.scatter * self.scatter),
            asymptote: None,
        }
    }

    /// Fits anew, with what is known of all readings but one that was added.
    fn fit(&mut self, added: Option<&Point>) {
        let task = self.task();
        let is_enough = task.believed().nth(LEAST.saturating_sub(1)).is_some();
        let before = self.fitted.as_ref();
        let before = before.filter(|before| before.shape != Shape::Step);
        let (first, later) = STEPS;
        let steps = if before.is_some() { later } else { first };
        self.fitted = is_enough
            .then(|| task.fitted(before, added, steps, ENOUGH))
            .flatten();
    }
}

/// When the window opens and closes, from all readings and pours at once: what a [`Forecast`] that was told them one by one
/// answers.
///
/// Both in order of time; of a reading and a pour at one time the reading comes first.
///
/// # Errors
///
/// As [`Forecast::new`], [`Forecast::sample`] and [`Forecast::poured`], with the place in the list.
pub fn forecast(samples: &[Sample], pours: &[Pour], asked: Asked) -> Result<Outlook, Error> {
    let mut forecast = Forecast::new(asked)?;
    let mut pours = pours.iter().enumerate().peekable();
    for (index, sample) in samples.iter().enumerate() {
        while let Some((place, pour)) = pours.next_if(|(_, pour)| pour.at < sample.at) {
            forecast
                .poured(pour.at, pour.volume, pour.temperature)
                .map_err(|error| within(error, "pours", place))?;
        }
        forecast
            .sample(sample.at, sample.reading)
            .map_err(|error| within(error, "samples", index))?;
    }
    for (place, pour) in pours {
        forecast
            .poured(pour.at, pour.volume, pour.temperature)
            .map_err(|error| within(error, "pours", place))?;
    }
    Ok(forecast.answer())
}
