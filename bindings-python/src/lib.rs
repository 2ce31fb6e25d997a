//! The native half of the Python package. It translates and decides nothing: every rule is in the core.
//!
//! * `border` keeps panics inside, `error` raises what the library refuses;
//! * `document`, `number`, `word` and `argument` read what Python hands in, `data` and `plain` hand plain data out;
//! * `torque`, `volume` (with `expansion`), `warm_up`, `fluid`, `signal`, `leak` and `money` are the calculators, `asking` asks
//!   those with lists;
//! * `counter` is the price list, the estimate and the invoice;
//! * every other file is one class of the package.

mod amount;
mod argument;
mod asking;
mod border;
mod counter;
mod data;
mod document;
mod error;
mod evaluation;
mod expansion;
mod fluid;
mod forecast;
mod history;
mod interval;
mod keeping;
mod leak;
mod level_check;
mod limits;
mod linear;
mod money;
mod names;
mod number;
mod pack;
mod pages;
mod plain;
mod record;
mod sentences;
mod signal;
mod teller;
mod torque;
mod unit;
mod volume;
mod warm_up;
mod word;

use crate::border::caught;
use crate::data::{Answer, ListOf, Sheet, Told, Versions};
use crate::document::{Document, Journals, PackGiven};
use crate::error::{Refused, answer, exception};
use crate::evaluation::Evaluation;
use crate::limits::Limits;
use crate::number::Double;
use crate::unit::UnitGiven;
use crate::word::Word;
use brimline::{Options, Verdict};
use pyo3::prelude::*;
use pyo3::types::PyList;

/// The native half of `brimline`.
#[pymodule(gil_used = false)]
mod _native {
    #[pymodule_export]
    use super::{calculate, caution, convert, evaluate, evaluate_many, lack, story, versions};
    #[pymodule_export]
    use crate::amount::Amount;
    #[pymodule_export]
    use crate::counter::{PriceList, estimate, invoice, waste};
    #[pymodule_export]
    use crate::error::{Fault, error_document};
    #[pymodule_export]
    use crate::evaluation::Evaluation;
    #[pymodule_export]
    use crate::expansion::{
        at_temperature, base_density, correction_factor, density_at, mass, temperature_error,
        volume_of_mass,
    };
    #[pymodule_export]
    use crate::fluid::{
        blend, grade, grade_limits, temperature_for, viscosity_at, viscosity_index,
    };
    #[pymodule_export]
    use crate::forecast::Forecast;
    #[pymodule_export]
    use crate::history::{History, audit, comebacks, follow_up, shadow};
    #[pymodule_export]
    use crate::interval::Interval;
    #[pymodule_export]
    use crate::keeping::KeptJournal;
    #[pymodule_export]
    use crate::leak::{
        against_limit, combined_uncertainty, conformance, consumption, drip_rate, drops_for,
        expanded_uncertainty, guard_band, quantile, risks, seepage,
    };
    #[pymodule_export]
    use crate::level_check::LevelCheck;
    #[pymodule_export]
    use crate::limits::Limits;
    #[pymodule_export]
    use crate::linear::Linear;
    #[pymodule_export]
    use crate::money::{cost, totals};
    #[pymodule_export]
    use crate::pack::Pack;
    #[pymodule_export]
    use crate::pages::{bay_card, picture, work_sheet};
    #[pymodule_export]
    use crate::record::Record;
    #[pymodule_export]
    use crate::signal::{diagnostic_reply, linear, transmission_frame};
    #[pymodule_export]
    use crate::teller::Teller;
    #[pymodule_export]
    use crate::torque::{
        applied_torque, equivalents, plausible, preload, proof_load, thread, tool_suits,
        torque_for_preload, wrench_setting,
    };
    #[pymodule_export]
    use crate::unit::Unit;
    #[pymodule_export]
    use crate::volume::{
        containers, cycles_needed, exchange, flush, flush_needed, level_for, segment_share,
        tilt_error, volume_below, wrong_left,
    };
    #[pymodule_export]
    use crate::warm_up::{
        cold_soak, cool_down, crossing, fit, forecast, mixed_temperature, response_time,
        sensor_doubts,
    };
}

/// Converts a number from one unit to another of the same kind.
///
/// The answer is the double nearest to the exact value, for every pair of a kind and every finite number. The
/// number is an `int`, `float`, `Decimal` or `Fraction`, read as the nearest double; units are `Unit`s or names.
///
/// Raises `QuantityError`: `not_a_number` for NaN or infinity, `out_of_range` where the result is above the largest
/// double, `wrong_kind` for units of two kinds, and what `Unit` raises.
///
/// >>> from brimline import convert
/// >>> convert(104, "°F", "°C")
/// 40.0
/// >>> convert(1, "US gal", "L")
/// 3.785411784
#[pyfunction]
fn convert(number: Double, from_unit: UnitGiven, to_unit: UnitGiven) -> Result<f64, Refused> {
    Ok(caught(|| {
        brimline::convert(number.0, from_unit.0, to_unit.0)
    })?)
}

fn options(
    flip: bool,
    why_not: Option<Word<Verdict>>,
    limits: Option<PyRef<'_, Limits>>,
) -> Options {
    let mut options = Options::default();
    options.flip = flip;
    options.why_not = why_not.map(|verdict| verdict.0);
    options.limits = document::limits(limits);
    options
}

/// Evaluates a journal on a pack.
///
/// The pack is a `Pack` or its JSON, the journal its JSON or JSON Lines; JSON is `str`, `bytes` or a mapping, in
/// which quantities may be `Amount`s and moments `datetime`s with their offset. `flip` asks for the smallest changes
/// that would turn the answer, `why_not` for what keeps a verdict away.
///
/// Raises `DocumentError` with every fault of the pack, or else of the journal, each with its path; `LimitError`.
/// The places told are those in the text, for a mapping in the JSON it is written as.
///
/// >>> from brimline import Amount, Pack, evaluate
/// >>> journal = {"format": "brimline-journal/1", "procedure": "pipit-level", "job": "check", "entries": [
/// ...     {"seq": 1, "at": "2026-03-02T09:00:00Z", "kind": "added", "volume": Amount(0.5, "L"),
/// ...      "measured_by": "jug"}]}
/// >>> print(evaluate(Pack.embedded(), journal).net_added)
/// [0.48 L, 0.52 L]
#[pyfunction]
#[pyo3(signature = (pack, journal, *, flip=false, why_not=None, limits=None))]
fn evaluate(
    py: Python<'_>,
    pack: PackGiven,
    journal: Document,
    flip: bool,
    why_not: Option<Word<Verdict>>,
    limits: Option<PyRef<'_, Limits>>,
) -> PyResult<Evaluation> {
    let options = options(flip, why_not, limits);
    py.detach(|| {
        answer(|| {
            let (pack, journal) = (pack.source()?, journal.journal());
            Ok(brimline::evaluate_with(pack, &*journal?, &options)?.into())
        })
    })
}

/// Evaluates many journals on one pack, in order. For a journal that cannot be read its error stands in its place.
///
/// The journals come from any iterable, each as `evaluate` takes it; one at a time is held. The other arguments are
/// those of `evaluate`.
///
/// Raises `DocumentError` for a pack that cannot be read.
///
/// >>> from brimline import Pack, evaluate_many
/// >>> journal = {"format": "brimline-journal/1", "procedure": "pipit-level", "job": "check", "entries": []}
/// >>> evaluation, error = evaluate_many(Pack.embedded(), [journal, "{"])
/// >>> evaluation.verdict, error.kind
/// ('incomplete', 'syntax')
#[pyfunction]
#[pyo3(signature = (pack, journals, *, flip=false, why_not=None, limits=None))]
fn evaluate_many<'py>(
    py: Python<'py>,
    pack: PackGiven,
    journals: Journals<'_, 'py>,
    flip: bool,
    why_not: Option<Word<Verdict>>,
    limits: Option<PyRef<'_, Limits>>,
) -> PyResult<Told<'py, ListOf<Answer>>> {
    let options = options(flip, why_not, limits);
    let pack = py.detach(|| answer(|| pack.read(&options.limits)))?;
    let answers = PyList::empty(py);
    for journal in journals.0.try_iter()? {
        let journal = Document::extract(journal?.as_borrowed())?;
        let evaluate = || {
            let evaluation = brimline::evaluate_with(&pack, &*journal.journal()?, &options)?;
            Ok(Evaluation::from(evaluation))
        };
        match py.detach(|| caught(evaluate)) {
            Ok(evaluation) => answers.append(evaluation)?,
            Err(refused) => answers.append(exception(py, refused)?)?,
        }
    }
    Ok(Told::of(answers.into_any()))
}

/// A whole check told entry by entry in English, with every caution in full.
///
/// The pack and the journal are those of `evaluate`.
///
/// Raises `DocumentError` with every fault of the pack, or else of the journal, each with its path; `LimitError`.
///
/// >>> from brimline import Pack, story
/// >>> journal = {"format": "brimline-journal/1", "procedure": "pipit-level", "job": "check", "entries": []}
/// >>> "Pipit transaxle" in story(Pack.embedded(), journal)
/// True
#[pyfunction]
fn story(py: Python<'_>, pack: PackGiven, journal: Document) -> PyResult<String> {
    let tell = || {
        let pack = pack.read(&brimline::Limits::default())?;
        brimline::report::story(&pack, &journal.journal()?)
    };
    py.detach(|| answer(tell))
}

/// Asks one calculator by its name, with its arguments as one mapping or JSON object.
///
/// The calculators are the functions of `brimline.torque`, `volume`, `warm_up`, `fluid`, `signal`, `leak` and `money`: this is
/// for those who have the name and the arguments as data. One that answers a single quantity answers `{"value": ...}`.
///
/// Raises `DocumentError` with every fault of the arguments, each with its path; `BrimlineError`: `unknown_value` for a
/// name of no calculator; what the calculator of this name raises.
///
/// >>> from brimline import calculate
/// >>> calculate("torque.applied_torque", {"setting": "60 lbf·in", "lever": "12 in", "adapter": "2 in"})
/// {'value': '70 lbf·in'}
#[pyfunction]
#[pyo3(signature = (function, arguments, *, limits=None))]
fn calculate<'py>(
    py: Python<'py>,
    function: &str,
    arguments: Document,
    limits: Option<PyRef<'_, Limits>>,
) -> PyResult<Told<'py, Sheet>> {
    let limits = document::limits(limits);
    let json = answer(|| {
        brimline::calculate::calculate_with(function, arguments.text("arguments")?, &limits)
    })?;
    Told::from_json(py, &json)
}

/// A caution of the library in full, by its id; `None` for a sheet's own, whose text stands on the sheet.
///
/// >>> from brimline import caution
/// >>> caution("torque_unit")
/// 'Mind the unit of the torque on the wrench as well as the number: threads in aluminium strip.'
#[pyfunction]
fn caution(id: &str) -> Option<&'static str> {
    brimline::report::caution(id)
}

/// What a record lacks in one English sentence, by the id of an item of `Record.evidence()`; `None` for no such id.
///
/// >>> from brimline import lack
/// >>> lack("batch")
/// 'The batch of the fluid is not stated.'
#[pyfunction]
fn lack(id: &str) -> Option<&'static str> {
    brimline::report::lack(id)
}

/// The versions of the library, of its rules and of the documents it reads and writes.
///
/// `rules` rises whenever any verdict can change.
///
/// >>> from brimline import versions
/// >>> versions()["documents"]["journal"]
/// 'brimline-journal/1'
#[pyfunction]
fn versions(py: Python<'_>) -> PyResult<Told<'_, Versions>> {
    Told::answer(py, &brimline::versions())
}
