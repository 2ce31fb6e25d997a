//! A first-order response through readings, and when it crosses a temperature.

use super::curve::{Curve, Fitted, Point, Shape, Task, Told};
use super::{Sample, above_zero, computed, difference, number, out_of_range, within};
use crate::error::{Error, ErrorKind, Fault};
use crate::quantity::{Amount, Unit};
use alloc::string::ToString;
use alloc::vec::Vec;
use serde::Serialize;

/// The response T(t) = T∞ − (T∞ − T₀)·exp(−t/τ) that lies nearest to readings.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[non_exhaustive]
pub struct Fit {
    /// T∞, the temperature that is neared, in the unit of the first reading.
    pub asymptote: Amount,
    /// T₀, the temperature when the first reading was taken.
    pub start: Amount,
    /// τ, in which the distance falls to 1/e, in the unit of the first time.
    pub time_constant: Amount,
    /// How well each is known; absent where the readings only just settle them.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub standard_errors: Option<StandardErrors>,
    #[serde(skip)]
    found: Found,
}

/// Standard uncertainties of a [`Fit`], from the scatter of the readings about it.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[non_exhaustive]
pub struct StandardErrors {
    /// Of the asymptote; absent where it was held.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub asymptote: Option<Amount>,
    /// Of the temperature at the first reading.
    pub start: Amount,
    /// Of the time constant.
    pub time_constant: Amount,
}

/// When a response crosses a temperature.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[non_exhaustive]
pub struct Crossing {
    /// The time, on the clock of the readings.
    pub at: Amount,
    /// Its standard uncertainty by the delta method; absent where the readings only just settle the response.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub uncertainty: Option<Amount>,
}

/// What was found, in SI after and over the first reading.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Found {
    fitted: Fitted,
    held: Option<f64>,
    first_at: f64,
    first_kelvin: f64,
    last_at: f64,
    time: Unit,
}

/// More steps than any fit was seen to need.
const STEPS: u32 = 200;
/// A step that gains less than this part of the variance is the last.
const ENOUGH: f64 = 1e-12;

/// Fits a first-order response to readings, rising or falling.
///
/// Without `scatter` by least squares; with it (above zero) by soft L1, so that a reading many scatters away draws no
/// harder than one. `asymptote` is held where it is given. At least 3 readings at different times, 2 with an asymptote, in
/// order of time. The asymptote lies beyond the curve at every reading, not beyond every reading: a reading may scatter
/// past it. Times are answered from the clock of the readings, temperatures in the unit of the first.
///
/// Source: Levenberg (1944) and Marquardt (1963); standard errors from the Jacobian at the answer and the residual
/// variance, as `curve_fit` of scipy 1.17.1 gives them, which reproduces the values below.
///
/// # Errors
///
/// [`WrongKind`](ErrorKind::WrongKind); [`OutOfRange`](ErrorKind::OutOfRange) for too few readings, times that go back,
/// readings that are level or straight and so do not tell where they are going.
///
/// ```
/// use brimline::{Amount, warm_up::{Sample, fit}};
/// let readings = [19.9, 25.89, 31.93, 36.97, 41.3, 45.55, 48.79, 52.46];
/// let samples: Vec<Sample> = readings
///     .iter()
///     .zip(0..)
///     .map(|(reading, minute)| Sample {
///         at: Amount::parse(&format!("{minute} min")).unwrap(),
///         reading: Amount::parse(&format!("{reading} °C")).unwrap(),
///     })
///     .collect();
/// let fit = fit(&samples, None, None)?;
/// assert!((fit.asymptote.to_f64() - 80.04189).abs() < 5e-5);
/// assert!((fit.time_constant.si() - 541.471).abs() < 5e-3);
/// let crossing = fit.crossing(Amount::parse("40 °C")?)?;
/// assert!((crossing.at.si() - 220.9982).abs() < 5e-3);
/// assert!((crossing.uncertainty.unwrap().si() - 1.4763).abs() < 2e-3);
/// # Ok::<(), brimline::Error>(())
/// ```
pub fn fit(
    samples: &[Sample],
    scatter: impl Into<Option<Amount>>,
    asymptote: impl Into<Option<Amount>>,
) -> Result<Fit, Error> {
    let scatter = scatter
        .into()
        .map(|scatter| above_zero("scatter", scatter, Unit::CelsiusDifference))
        .transpose()?;
    let asymptote = asymptote.into();
    let end = asymptote
        .map(|end| number("asymptote", end, Unit::Kelvin))
        .transpose()?;
    let Some(first) = samples.first() else {
        return Err(too_few(samples, end.is_some()));
    };
    let read = |sample: &Sample| {
        let at = number("at", sample.at, Unit::Second)?;
        Ok((at, number("reading", sample.reading, Unit::Kelvin)?))
    };
    let (first_at, first_kelvin) = read(first).map_err(|error| within(error, "samples", 0))?;
    let mut points = Vec::with_capacity(samples.len());
    let (mut last_at, mut times) = (0.0, 1_u32);
    for (index, sample) in samples.iter().enumerate() {
        let (at, kelvin) = read(sample).map_err(|error| within(error, "samples", index))?;
        let at = at - first_at;
        if at < last_at {
            let hint = "give the readings in the order they were taken";
            let fault = out_of_range("at", sample.at).hint(hint);
            return Err(within(fault.into(), "samples", index));
        }
        times = times.saturating_add(u32::from(at > last_at));
        last_at = at;
        points.push(Point {
            at,
            over: kelvin - first_kelvin,
            ..Point::default()
        });
    }
    if times < (if end.is_some() { 2 } else { 3 }) {
        return Err(too_few(samples, end.is_some()));
    }
    let held = end.map(|end| end - first_kelvin);
    let task = Task {
        points: &points,
        stirs: &[],
        narrowness: scatter.map_or(0.0, |scatter| 1.0 / (scatter * scatter)),
        asymptote: held,
    };
    let fitted = task
        .fitted(None, None, STEPS, ENOUGH)
        .filter(|fitted| fitted.shape == Shape::Curved)
        .ok_or_else(|| {
            let fault = Fault::new(ErrorKind::OutOfRange).at("samples");
            fault.hint("these readings are too level, straight or few to tell what temperature they near: give it as asymptote, or more readings")
        })?;
    let found = Found {
        fitted,
        held,
        first_at,
        first_kelvin,
        last_at,
        time: first.at.unit(),
    };
    found.told(first.reading.unit(), asymptote)
}

fn too_few(samples: &[Sample], is_held: bool) -> Error {
    let least = if is_held {
        "2 readings at different times"
    } else {
        "3 readings at different times"
    };
    let fault = Fault::new(ErrorKind::OutOfRange).at("samples");
    fault
        .got(&samples.len().to_string())
        .allowed([least])
        .into()
}

impl Found {
    fn task(&self) -> Task<'_> {
        Task {
            points: &[],
            stirs: &[],
            narrowness: 0.0,
            asymptote: self.held,
        }
    }

    fn uncertainty(&self, by: [f64; 3]) -> Option<f64> {
        let normal = &self.fitted.normal;
        let variance = (normal.freedom() > 0.0).then(|| normal.variance())?;
        normal.uncertainty(by, variance)
    }

    fn told(self, unit: Unit, held: Option<Amount>) -> Result<Fit, Error> {
        let Curve { start, loss, .. } = self.fitted.curve;
        let end = self.fitted.curve.asymptote(&self.task());
        let errors = || {
            let end = self.uncertainty(end.by)?;
            let start = self.uncertainty([1.0, 0.0, 0.0])?;
            Some((
                end,
                start,
                self.uncertainty([0.0, 0.0, 1.0 / (loss * loss)])?,
            ))
        };
        let degrees = difference(unit);
        let standard_errors = errors().map(|(end, start, constant)| {
            Ok::<_, Error>(StandardErrors {
                asymptote: match held {
                    Some(_) => None,
                    None => Some(computed("samples", end, degrees)?),
                },
                start: computed("samples", start, degrees)?,
                time_constant: computed("samples", constant, self.time)?,
            })
        });
        let asymptote = match held {
            Some(held) => held,
            None => computed("samples", self.first_kelvin + end.value, unit)?,
        };
        Ok(Fit {
            asymptote,
            start: computed("samples", self.first_kelvin + start, unit)?,
            time_constant: computed("samples", 1.0 / loss, self.time)?,
            standard_errors: standard_errors.transpose()?,
            found: self,
        })
    }
}

impl Fit {
    /// When the response crosses a temperature, before the first reading too.
    ///
    /// In the unit of the first reading's time, on its clock. Source: the delta method; values as in [`fit`].
    ///
    /// # Errors
    ///
    /// [`WrongKind`](ErrorKind::WrongKind); [`OutOfRange`](ErrorKind::OutOfRange) for a temperature at or beyond the
    /// asymptote, and for one that lies after the last reading and nearer to the asymptote than twice its standard error:
    /// there the readings do not tell yet whether it is reached.
    pub fn crossing(&self, temperature: Amount) -> Result<Crossing, Error> {
        let found = &self.found;
        let over = number("temperature", temperature, Unit::Kelvin)? - found.first_kelvin;
        let (curve, task) = (found.fitted.curve, found.task());
        let end = curve.asymptote(&task);
        let refused = |hint| Err(out_of_range("temperature", temperature).hint(hint).into());
        let share = (end.value - over) / (end.value - curve.start);
        // Not a number is no share either.
        if share.is_nan() || share <= 0.0 {
            return refused("the response never gets there: its asymptote lies before it");
        }
        let start = Told {
            value: curve.start,
            by: [1.0, 0.0, 0.0],
        };
        let time = curve.time_to(over, &start, &task);
        let error = found.uncertainty(end.by);
        let left = (end.value - over).abs();
        if time.value > found.last_at && error.is_none_or(|error| left < 2.0 * error) {
            return refused(
                "this lies beyond the readings and too near to the asymptote they show: take more readings",
            );
        }
        let uncertainty = found.uncertainty(time.by);
        Ok(Crossing {
            at: computed("temperature", found.first_at + time.value, found.time)?,
            uncertainty: uncertainty
                .map(|uncertainty| computed("temperature", uncertainty, found.time))
                .transpose()?,
        })
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, clippy::arithmetic_side_effects)]

    use super::*;
    use crate::quantity::Unit;

    /// Drawn from 85 − 65·exp(−t/600) °C with a scatter of 0.3 °C, one a minute.
    const DRAWN: [f64; 8] = [19.9, 25.89, 31.93, 36.97, 41.3, 45.55, 48.79, 52.46];

    fn amount(text: &str) -> Amount {
        Amount::parse(text).unwrap()
    }

    fn samples(readings: &[f64]) -> Vec<Sample> {
        let sample = |(minute, reading): (usize, &f64)| Sample {
            at: Amount::from_computed(60.0 * minute as f64, Unit::Second).unwrap(),
            reading: Amount::from_computed(*reading, Unit::DegreeCelsius).unwrap(),
        };
        readings.iter().enumerate().map(sample).collect()
    }

    fn degrees(text: &str) -> Option<Amount> {
        Amount::parse_as(text, crate::quantity::Kind::TemperatureDifference, None).ok()
    }

    #[track_caller]
    fn near(amount: Amount, number: f64, tolerance: f64) {
        let found = amount.to_f64();
        assert!((found - number).abs() <= tolerance, "{found} for {number}");
    }

    #[test]
    fn least_squares_finds_what_a_published_library_finds() {
        // scipy 1.17.1, optimize.curve_fit on these readings.
        let fit = fit(&samples(&DRAWN), None, None).unwrap();
        near(fit.asymptote, 80.04189, 5e-4);
        near(fit.start, 19.81793, 5e-5);
        near(fit.time_constant, 541.471, 5e-3);
        let errors = fit.standard_errors.clone().unwrap();
        near(errors.asymptote.unwrap(), 2.67195, 1e-3);
        near(errors.start, 0.182998, 1e-5);
        near(errors.time_constant, 34.5545, 1e-2);
        for (temperature, at, uncertainty, tolerance) in [
            ("40 °C", 220.9982, 1.4763, 0.005),
            ("60 °C", 595.7511, 11.7771, 0.05),
        ] {
            let crossing = fit.crossing(amount(temperature)).unwrap();
            near(crossing.at, at, tolerance);
            near(crossing.uncertainty.unwrap(), uncertainty, tolerance);
        }
        let crossing = fit.crossing(amount("50 °C")).unwrap();
        near(crossing.at, 376.58, 0.01);
        near(crossing.uncertainty.unwrap(), 2.23, 0.01);
    }

    #[test]
    fn an_asymptote_may_be_held() {
        // scipy 1.17.1, optimize.curve_fit with T∞ = 85 °C.
        let fit = fit(&samples(&DRAWN), None, amount("85 °C")).unwrap();
        assert_eq!(fit.asymptote.to_string(), "85 °C");
        near(fit.start, 19.98636, 5e-5);
        near(fit.time_constant, 605.269, 5e-3);
        near(fit.crossing(amount("40 °C")).unwrap().at, 222.6994, 5e-3);
        assert_eq!(fit.standard_errors.unwrap().asymptote, None);
    }

    #[test]
    fn one_reading_far_off_draws_no_harder_than_one() {
        // scipy 1.17.1, optimize.least_squares: linear and soft_l1 with f_scale = 0.3.
        let mut readings = DRAWN;
        readings[3] += 6.0;
        let samples = samples(&readings);
        let at_40 = |scatter| {
            let fit = fit(&samples, scatter, None).unwrap();
            fit.crossing(amount("40 °C")).unwrap().at
        };
        near(at_40(None), 197.92, 0.05);
        near(at_40(degrees("0.3 °C")), 219.52, 0.05);
        let robust = fit(&samples, degrees("0.3 °C"), None).unwrap();
        near(robust.asymptote, 78.5, 0.05);
        near(robust.time_constant, 521.0, 0.05);
    }

    #[test]
    fn a_fit_that_is_hardly_settled_is_not_led_on() {
        // scipy 1.17.1: 99.1 ± 36.8 °C, 736 ± 385 s, 40 °C at 216.1 s from the first four readings.
        let fit = fit(&samples(&DRAWN[..4]), None, None).unwrap();
        near(fit.asymptote, 99.1, 0.05);
        near(fit.time_constant, 736.0, 0.5);
        near(
            fit.standard_errors.clone().unwrap().asymptote.unwrap(),
            36.8,
            0.05,
        );
        let error = fit.crossing(amount("40 °C")).unwrap_err();
        assert_eq!(error.first().path, "temperature");
        assert!(fit.crossing(amount("35 °C")).is_ok());
        assert!(fit.crossing(amount("120 °C")).is_err());
    }

    #[test]
    fn three_readings_settle_it_exactly() {
        // T∞ = (y₀·y₂ − y₁²) / (y₀ + y₂ − 2·y₁) for three equally far apart: 75.40 °C; τ = 489.8 s.
        let three: Vec<Sample> = samples(&DRAWN).into_iter().step_by(3).collect();
        let fit = fit(&three, None, None).unwrap();
        near(fit.asymptote, 75.40, 5e-3);
        near(fit.time_constant, 489.8, 0.05);
        assert_eq!(fit.standard_errors, None);
        assert_eq!(fit.crossing(amount("40 °C")).unwrap().uncertainty, None);
        assert!(fit.crossing(amount("55 °C")).is_err());
    }

    #[test]
    fn a_fall_fits_as_a_rise_and_fahrenheit_as_celsius() {
        let falling: Vec<f64> = DRAWN.iter().map(|reading| 100.0 - reading).collect();
        let fall = fit(&samples(&falling), None, None).unwrap();
        near(fall.asymptote, 100.0 - 80.04189, 5e-4);
        near(fall.crossing(amount("60 °C")).unwrap().at, 220.9982, 5e-3);
        let mut samples = samples(&DRAWN);
        for sample in &mut samples {
            let kelvin = sample.reading.si();
            sample.reading = Amount::from_si(kelvin, Unit::DegreeFahrenheit).unwrap();
        }
        let fit = fit(&samples, None, None).unwrap();
        near(fit.asymptote, 80.04189 * 1.8 + 32.0, 1e-3);
        let errors = fit.standard_errors.unwrap();
        near(errors.asymptote.unwrap(), 2.67195 * 1.8, 2e-3);
    }

    #[test]
    fn what_tells_nothing_is_refused() {
        let refused = |readings: &[f64], asymptote: Option<Amount>| {
            let error = fit(&samples(readings), None, asymptote).unwrap_err();
            assert_eq!(error.kind(), ErrorKind::OutOfRange);
            error.first().path.clone()
        };
        assert_eq!(refused(&[], None), "samples");
        assert_eq!(refused(&[20.0, 25.0], None), "samples");
        assert_eq!(refused(&[20.0], Some(amount("85 °C"))), "samples");
        assert_eq!(refused(&[20.0, 25.0, 30.0, 35.0], None), "samples");
        assert_eq!(refused(&[20.0, 25.0, 31.0, 38.0], None), "samples");
        assert_eq!(refused(&[20.0, 20.0, 20.0, 20.0], None), "samples");
        assert!(fit(&samples(&[20.0, 25.0]), None, amount("85 °C")).is_ok());
        let mut back = samples(&DRAWN);
        back.swap(2, 3);
        let error = fit(&back, None, None).unwrap_err();
        assert_eq!(error.first().path, "samples[3].at");
        let error = fit(&samples(&DRAWN), amount("0.3 °C"), None).unwrap_err();
        assert_eq!(error.first().path, "scatter");
        assert_eq!(error.kind(), ErrorKind::WrongKind);
    }
}
