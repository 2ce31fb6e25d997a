//! Calculators with lists among their arguments: asked by name, their arguments written as JSON.

use crate::amount::Amount;
use crate::argument::{Argument, Given, is_number, of};
use crate::data::{Text, Told, loaded};
use crate::document::{TOO_DEEP, plain, utf8};
use crate::error::{Refused, answer};
use crate::number::{Number, saturated};
use brimline::document::canonical;
use brimline::{Error, ErrorKind, Fault, Limits, Unit, calculate};
use pyo3::intern;
use pyo3::prelude::*;
use pyo3::pybacked::PyBackedBytes;
use pyo3::types::{PyBool, PyByteArray, PyBytes, PyList, PyMapping, PyString};
use std::fmt::Write;

/// Arguments by name, as JSON.
pub(crate) struct Arguments(String);

impl Arguments {
    pub(crate) fn new() -> Self {
        Arguments(String::new())
    }

    /// Adds an argument if it was given.
    pub(crate) fn add(&mut self, name: &'static str, value: impl Written) -> PyResult<()> {
        let separator = if self.0.is_empty() { '{' } else { ',' };
        let before = self.0.len();
        let _ = write!(self.0, "{separator}\"{name}\":");
        let is_written = value.write(&mut self.0);
        if !is_written.map_err(|failed| of(failed, name))? {
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
        let text: String = self.value(py, function)?.extract()?;
        answer(|| brimline::Amount::parse(&text)).map(Amount)
    }

    /// What the calculator of this name answers, where that is one text.
    pub(crate) fn ask_text<'py>(
        self,
        py: Python<'py>,
        function: &str,
    ) -> PyResult<Told<'py, Text>> {
        self.value(py, function).map(Told::of)
    }

    fn value<'py>(self, py: Python<'py>, function: &str) -> PyResult<Bound<'py, PyAny>> {
        loaded(py, &self.json(py, function)?)?.get_item(intern!(py, "value"))
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

/// Arguments under the names they have here.
macro_rules! arguments {
    ($($name:ident),+) => {{
        let mut arguments = $crate::asking::Arguments::new();
        $( arguments.add(stringify!($name), $name)?; )+
        arguments
    }};
}
pub(crate) use arguments;

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
    fn write(self, json: &mut String) -> Result<bool, Refused>;
}

impl<T: Argument> Written for Given<'_, '_, T> {
    fn write(self, json: &mut String) -> Result<bool, Refused> {
        T::write(&self.0, json).map(|()| true)
    }
}

impl<T: Written> Written for Option<T> {
    fn write(self, json: &mut String) -> Result<bool, Refused> {
        self.map_or(Ok(false), |given| given.write(json))
    }
}

/// Members that are ratios: any number of Python's stands for one.
const RATIOS: [&str; 3] = ["permissible", "rate", "share"];

/// A number of Python's as the text of a ratio; `false` for anything else.
pub(crate) fn written_ratio(
    given: &Borrowed<'_, '_, PyAny>,
    json: &mut String,
) -> Result<bool, Refused> {
    let is_number = is_number(given)?;
    if is_number {
        let ratio = given.extract::<Number<'_, '_>>()?.of(Some(Unit::One))?;
        json.push_str(&canonical(&ratio));
    }
    Ok(is_number)
}

/// Writes what Python hands in; bytes are hexadecimal text.
pub(crate) fn written(
    given: &Borrowed<'_, '_, PyAny>,
    json: &mut String,
    depth: usize,
) -> Result<(), Refused> {
    let py = given.py();
    if depth > DEEPEST {
        let fault = Fault::new(ErrorKind::Limit);
        return Err(Error::from(fault.hint(TOO_DEEP)).into());
    }
    // The usual first: asking what something else can do takes longer.
    if given.is_none() {
        json.push_str("null");
    } else if let Ok(text) = given.cast::<PyString>() {
        json.push_str(&canonical(&utf8(&text)?));
    } else if let Ok(amount) = given.cast_exact::<Amount>() {
        json.push_str(&canonical(&amount.get().0));
    } else if let Ok(flag) = given.cast::<PyBool>() {
        json.push_str(if flag.is_true() { "true" } else { "false" });
    } else if let Ok(mapping) = given.cast::<PyMapping>() {
        json.push('{');
        for (place, item) in mapping.items()?.iter().enumerate() {
            let (name, value): (Bound<'_, PyString>, Bound<'_, PyAny>) = item.extract()?;
            let (name, value) = (utf8(&name)?, value.as_borrowed());
            let separator = if place == 0 { "" } else { "," };
            let _ = write!(json, "{separator}{}:", canonical(&name));
            if !(RATIOS.contains(&name) && written_ratio(&value, json)?) {
                written(&value, json, depth + 1)?;
            }
        }
        json.push('}');
    } else if given.is_instance_of::<PyBytes>() || given.is_instance_of::<PyByteArray>() {
        json.push('"');
        for byte in &*given.extract::<PyBackedBytes>().map_err(PyErr::from)? {
            let _ = write!(json, "{byte:02X}");
        }
        json.push('"');
    } else if given.is_instance_of::<PyList>() || given.hasattr(intern!(py, "__iter__"))? {
        json.push('[');
        for (place, item) in given.try_iter()?.enumerate() {
            json.push_str(if place == 0 { "" } else { "," });
            written(&item?.as_borrowed(), json, depth + 1)?;
        }
        json.push(']');
    } else if given.hasattr(intern!(py, "__index__"))? {
        let _ = write!(json, "{}", saturated(given)?);
    } else if is_number(given)? {
        // Nothing that is left to say is such a number: the library tells what it is to be.
        let number = given.extract::<Number<'_, '_>>()?.of(Some(Unit::One))?;
        json.push_str(&number.number());
    } else {
        written(&plain(given)?.as_borrowed(), json, depth + 1)?;
    }
    Ok(())
}

/// How deep mappings and lists may lie inside each other.
const DEEPEST: usize = 32;
