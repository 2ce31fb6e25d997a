//! When the window of temperature opens and closes, told again with every reading.

use crate::amount::{amount, amount_if, brim_amount};
use crate::error::{brim_error, brim_status};
use crate::getter::tell;
use crate::guard::answer;
use crate::handle::{self, Handle};
use crate::list::{number, numbers};
use crate::text::out;
use brimline_core::document::canonical;
use brimline_core::report;
use brimline_core::warm_up::{Asked, Forecast, Method, Outlook, Reason, Span};
use std::ffi::c_char;

/// A forecast that is kept up: readings and pours go in as they come, and it is asked at any time.
/// What it holds does not grow.
///
/// Ownership: `brim_forecast_new` to `brim_forecast_free`. Threads: one at a time. Lifetime: its
/// own.
pub struct brim_forecast {
    _opaque: [u8; 0],
}

impl Handle for brim_forecast {
    type Held = Forecast;
    const MARK: u64 = u64::from_le_bytes(*b"brimfct\0");
}

/// How a forecast was made.
pub type brim_forecast_method = i32;

/// From a first-order response fitted to the readings.
pub const BRIM_FORECAST_METHOD_FIRST_ORDER: brim_forecast_method = 1;
/// From the straight line through the latest readings.
pub const BRIM_FORECAST_METHOD_SLOPE: brim_forecast_method = 2;
/// Not at all.
pub const BRIM_FORECAST_METHOD_NONE: brim_forecast_method = 3;

/// Why a forecast was not made by a first-order response, or not all of it.
pub type brim_forecast_reason = i32;

/// Too few readings are believed.
pub const BRIM_FORECAST_REASON_TOO_FEW: brim_forecast_reason = 1;
/// The readings do not rise.
pub const BRIM_FORECAST_REASON_NOT_WARMING: brim_forecast_reason = 2;
/// The readings do not tell yet whether they get there.
pub const BRIM_FORECAST_REASON_ASYMPTOTE_UNKNOWN: brim_forecast_reason = 3;
/// The readings level out before they get there.
pub const BRIM_FORECAST_REASON_ASYMPTOTE_BELOW: brim_forecast_reason = 4;
/// At this rate it takes more than a day.
pub const BRIM_FORECAST_REASON_TOO_SLOW: brim_forecast_reason = 5;
/// The reading stands still.
pub const BRIM_FORECAST_REASON_STUCK: brim_forecast_reason = 6;

numbers! { Method of Method::WORDS.len();
    BRIM_FORECAST_METHOD_FIRST_ORDER FirstOrder, BRIM_FORECAST_METHOD_SLOPE Slope,
    BRIM_FORECAST_METHOD_NONE None,
}

numbers! { Reason of Reason::WORDS.len();
    BRIM_FORECAST_REASON_TOO_FEW TooFew, BRIM_FORECAST_REASON_NOT_WARMING NotWarming,
    BRIM_FORECAST_REASON_ASYMPTOTE_UNKNOWN AsymptoteUnknown,
    BRIM_FORECAST_REASON_ASYMPTOTE_BELOW AsymptoteBelow,
    BRIM_FORECAST_REASON_TOO_SLOW TooSlow, BRIM_FORECAST_REASON_STUCK Stuck,
}

/// A forecast with no reading yet. NULL leaves out: the temperatures at which the window opens,
/// `min`, and closes, `max`; `scatter`, what readings scatter, a difference above zero, 0.5 deg C
/// if left out; `held`, the fluid in the unit, above zero, which a pour mixes with: without it a
/// pour starts the forecast anew.
///
/// Errors: `BRIM_ERROR_WRONG_KIND`; `BRIM_ERROR_OUT_OF_RANGE` for a scatter or a held volume that
/// is not above zero, a window that ends below its beginning.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_forecast_new(
    min: *const brim_amount,
    max: *const brim_amount,
    scatter: *const brim_amount,
    held: *const brim_amount,
    forecast: *mut *mut brim_forecast,
    error: *mut brim_error,
) -> brim_status {
    answer(error, || {
        // SAFETY: pointers as the header asks.
        let (asked, forecast) = unsafe {
            let asked = Asked {
                min: amount_if(min, "min")?,
                max: amount_if(max, "max")?,
                scatter: amount_if(scatter, "scatter")?,
                held: amount_if(held, "held")?,
            };
            (asked, out(forecast, "forecast")?)
        };
        forecast.put(handle::give(Forecast::new(asked)?));
        Ok(())
    })
}

/// Frees a forecast. NULL is allowed.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_forecast_free(forecast: *mut brim_forecast) {
    // SAFETY: the handle is NULL or the caller's to give back.
    unsafe { handle::free(forecast) }
}

/// Takes a reading in: `at` is a time on a clock of the caller's, not before that of the last
/// reading or pour.
///
/// Errors: `BRIM_ERROR_WRONG_KIND`, `BRIM_ERROR_OUT_OF_RANGE`; the forecast is then as it was.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_forecast_sample(
    forecast: *mut brim_forecast,
    at: *const brim_amount,
    reading: *const brim_amount,
    error: *mut brim_error,
) -> brim_status {
    answer(error, || {
        // SAFETY: pointers as the header asks.
        unsafe {
            let (at, reading) = (amount(at, "at")?, amount(reading, "reading")?);
            handle::change(forecast, "forecast")?.sample(at, reading)
        }
    })
}

/// Takes a pour in, at a time on the clock of the readings: its volume, from zero, and its
/// temperature.
///
/// Errors: as `brim_forecast_sample`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_forecast_poured(
    forecast: *mut brim_forecast,
    at: *const brim_amount,
    volume: *const brim_amount,
    temperature: *const brim_amount,
    error: *mut brim_error,
) -> brim_status {
    answer(error, || {
        // SAFETY: pointers as the header asks.
        unsafe {
            let (at, volume) = (amount(at, "at")?, amount(volume, "volume")?);
            let temperature = amount(temperature, "temperature")?;
            handle::change(forecast, "forecast")?.poured(at, volume, temperature)
        }
    })
}

/// How the readings so far were taken: by which method, and why not by a first-order response, or
/// not all of it; 0 for no reason. `now` is the temperature at the last reading or pour, in the
/// unit last read in, and `rate_per_minute` how many degrees a minute it rises there, a
/// difference; the unit is 0 where there is none.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_forecast_now(
    forecast: *const brim_forecast,
    method: *mut brim_forecast_method,
    reason: *mut brim_forecast_reason,
    now: *mut brim_amount,
    rate_per_minute: *mut brim_amount,
    error: *mut brim_error,
) -> brim_status {
    answer(error, || {
        // SAFETY: pointers as the header asks.
        let (forecast, method, reason, now, rate_per_minute) = unsafe {
            (
                handle::look(forecast, "forecast")?,
                out(method, "method")?,
                out(reason, "reason")?,
                out(now, "now")?,
                out(rate_per_minute, "rate_per_minute")?,
            )
        };
        let outlook = forecast.answer();
        method.put(number(outlook.method));
        reason.put(outlook.reason.map_or(0, number));
        now.put(outlook.now.into());
        rate_per_minute.put(outlook.rate_per_minute.into());
        Ok(())
    })
}

/// When the window opens, in whole seconds from the last reading or pour, 0 s where it has: hardly
/// before `earliest`, most likely at `likely`, hardly after `latest`. The unit is 0 where that is
/// not told.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_forecast_opens(
    forecast: *const brim_forecast,
    earliest: *mut brim_amount,
    likely: *mut brim_amount,
    latest: *mut brim_amount,
    error: *mut brim_error,
) -> brim_status {
    answer(error, || {
        // SAFETY: pointers as the header asks.
        unsafe {
            span(
                forecast,
                |outlook| outlook.opens,
                [earliest, likely, latest],
            )
        }
    })
}

/// When the window closes, as `brim_forecast_opens` tells when it opens.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_forecast_closes(
    forecast: *const brim_forecast,
    earliest: *mut brim_amount,
    likely: *mut brim_amount,
    latest: *mut brim_amount,
    error: *mut brim_error,
) -> brim_status {
    answer(error, || {
        // SAFETY: pointers as the header asks.
        unsafe {
            span(
                forecast,
                |outlook| outlook.closes,
                [earliest, likely, latest],
            )
        }
    })
}

/// Writes when something happens.
///
/// # Safety As [`handle::look`] and [`out`].
unsafe fn span(
    forecast: *const brim_forecast,
    of: fn(Outlook) -> Option<Span>,
    [earliest, likely, latest]: [*mut brim_amount; 3],
) -> Result<(), brimline_core::Error> {
    // SAFETY: as the caller promises.
    let (forecast, earliest, likely, latest) = unsafe {
        (
            handle::look(forecast, "forecast")?,
            out(earliest, "earliest")?,
            out(likely, "likely")?,
            out(latest, "latest")?,
        )
    };
    let told = of(forecast.answer());
    earliest.put(told.map(|told| told.earliest).into());
    likely.put(told.and_then(|told| told.likely).into());
    latest.put(told.and_then(|told| told.latest).into());
    Ok(())
}

/// All that the readings so far tell, as JSON:
/// `{"method","reason"?,"now"?,"rate_per_minute"?,"opens"?,"closes"?,"suspect":[place]}`, `opens`
/// and `closes` being `{"earliest","likely"?,"latest"?}`, and `suspect` the places, from 0, of
/// readings that were not believed.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_forecast_json(
    forecast: *const brim_forecast,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(
            forecast,
            "forecast",
            buffer,
            capacity,
            length,
            error,
            |forecast| Ok(canonical(&forecast.answer())),
        )
    }
}

/// The same in English, a sentence or a few.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_forecast_text(
    forecast: *const brim_forecast,
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        tell(
            forecast,
            "forecast",
            buffer,
            capacity,
            length,
            error,
            |forecast| Ok(report::outlook(&forecast.answer())),
        )
    }
}
