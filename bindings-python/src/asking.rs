//! Calculators with lists among their arguments: asked by name, their arguments written as JSON.

use crate::amount::Amount;
use crate::argument::{Argument, Given, is_number};
use crate::data::{Told, loaded};
use crate::document::{TOO_DEEP, plain, utf8};
use crate::error::{answer, raised};
use crate::number::{Number, saturated};
use brimline::document::canonical;
use brimline::{Error, ErrorKind, Fault, Limits, Unit, calculate};
use pyo3::intern;
use pyo3::prelude::*;
use pyo3::pybacked::PyBackedBytes;
use pyo3::types::{PyBool, PyByteArray, PyBytes, PyMapping, PyString};
use std::fmt::Write;

/// Arguments by name, as JSON.
pub(crate) struct Arguments(String);

impl Arguments {
    pub(crate) fn new() -> Self {
        Arguments(String::new())
    }

    /// Adds an argument if it was given.
    pub(crate) fn add(&mut self, name: &str, value: impl Written) -> PyResult<()> {
        let separator = if self.0.is_empty() { '{' } else { ',' };
        let before = self.0.len();
        let _ = write!(self.0, "{separator}\"{name}\":");
        if !value.write(&mut self.0)? {
            self.0.truncate(before);
        }
        Ok(())
    }

    /// What the calculator of this name answers.
    pub(crate) fn ask<'py, S>(self, py: Python<'py>, function: &str) -> PyResult<Told<'py, S>> {
        self.json(py, function)
            .and_then(|json| Told::from_json(py, &json))
    }

    /// What the calculator of this name answers, where that is one quantity.
    pub(crate) fn ask_amount(self, py: Python<'_>, function: &str) -> PyResult<Amount> {
        let json = self.json(py, function)?;
        let text: String = loaded(py, &json)?
            .get_item(intern!(py, "value"))?
            .extract()?;
        answer(|| brimline::Amount::parse(&text)).map(Amount)
    }

    fn json(mut self, py: Python<'_>, function: &str) -> PyResult<String> {
        self.0.push_str(if self.0.is_empty() { "{}" } else { "}" });
        // The text is of the library's own making: no limit is meant for it, and no place in it says anything.
        let limits = Limits::default()
            .with_bytes(usize::MAX)
            .with_text(usize::MAX);
        let ask = || calculate::calculate_with(function, &self.0, &limits).map_err(placeless);
        py.detach(|| answer(ask))
    }
}

/// Asks the calculator of this name with arguments under the names they have here.
macro_rules! ask {
    ($py:expr, $function:literal, $($name:ident),+ $(,)?) => {{
        let mut arguments = $crate::asking::Arguments::new();
        $( arguments.add(stringify!($name), $name)?; )+
        arguments.ask($py, $function)
    }};
}
pub(crate) use ask;

/// As `ask!`, where the answer is one quantity.
macro_rules! ask_amount {
    ($py:expr, $function:literal, $($name:ident),+ $(,)?) => {{
        let mut arguments = $crate::asking::Arguments::new();
        $( arguments.add(stringify!($name), $name)?; )+
        arguments.ask_amount($py, $function)
    }};
}
pub(crate) use ask_amount;

/// The same faults without their places in a text that nobody has seen.
#[cold]
fn placeless(error: Error) -> Error {
    let faults = error.into_faults().into_iter().map(|mut fault| {
        fault.position = None;
        fault
    });
    Error::from_faults(faults.collect()).unwrap_or_else(|| Fault::new(ErrorKind::Internal).into())
}

/// What is written as JSON.
pub(crate) trait Written {
    /// Writes it; `false` where there is nothing to write.
    fn write(self, json: &mut String) -> PyResult<bool>;
}

impl<T: Argument> Written for Given<'_, '_, T> {
    fn write(self, json: &mut String) -> PyResult<bool> {
        T::write(&self.0, json).map(|()| true)
    }
}

impl<T: Written> Written for Option<T> {
    fn write(self, json: &mut String) -> PyResult<bool> {
        self.map_or(Ok(false), |given| given.write(json))
    }
}

/// Writes what Python hands in: numbers that are not whole are ratios, bytes are hexadecimal text.
pub(crate) fn written(
    given: &Borrowed<'_, '_, PyAny>,
    json: &mut String,
    depth: usize,
) -> PyResult<()> {
    let py = given.py();
    if depth > DEEPEST {
        let fault = Fault::new(ErrorKind::Limit);
        return Err(raised(fault.hint(TOO_DEEP).into()));
    }
    if given.is_none() {
        json.push_str("null");
    } else if let Ok(text) = given.cast::<PyString>() {
        json.push_str(&canonical(&utf8(&text)?));
    } else if let Ok(flag) = given.cast::<PyBool>() {
        json.push_str(if flag.is_true() { "true" } else { "false" });
    } else if given.is_instance_of::<PyBytes>() || given.is_instance_of::<PyByteArray>() {
        json.push('"');
        for byte in &*given.extract::<PyBackedBytes>()? {
            let _ = write!(json, "{byte:02X}");
        }
        json.push('"');
    } else if given.hasattr(intern!(py, "__index__"))? {
        let _ = write!(json, "{}", saturated(given)?);
    } else if is_number(given)? {
        let ratio = given.extract::<Number<'_, '_>>()?.of(Some(Unit::One))?;
        json.push_str(&canonical(&ratio));
    } else if let Ok(mapping) = given.cast::<PyMapping>() {
        let mut separator = '{';
        for item in mapping.items()?.iter() {
            let (name, value): (Bound<'_, PyString>, Bound<'_, PyAny>) = item.extract()?;
            json.push(separator);
            json.push_str(&canonical(&utf8(&name)?));
            json.push(':');
            written(&value.as_borrowed(), json, depth + 1)?;
            separator = ',';
        }
        json.push_str(if separator == '{' { "{}" } else { "}" });
    } else if given.hasattr(intern!(py, "__iter__"))? {
        let mut separator = '[';
        for item in given.try_iter()? {
            json.push(separator);
            written(&item?.as_borrowed(), json, depth + 1)?;
            separator = ',';
        }
        json.push_str(if separator == '[' { "[]" } else { "]" });
    } else {
        written(&plain(given)?.as_borrowed(), json, depth + 1)?;
    }
    Ok(())
}

/// How deep mappings and lists may lie inside each other.
const DEEPEST: usize = 32;
