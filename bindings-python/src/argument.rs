//! Arguments of the calculators: read once their names are at hand, so that a refusal can tell them.

use crate::amount;
use crate::asking::{written, written_ratio};
use crate::border::caught;
use crate::document::utf8;
use crate::error::Refused;
use crate::number::{Number, saturated};
use crate::word::{Listed, unknown};
use brimline::{Amount, Error, ErrorKind, Fault, Kind, Measures, Unit, torque};
use pyo3::exceptions::PyTypeError;
use pyo3::prelude::*;
use pyo3::types::{PyBool, PyString};
#[cfg(feature = "introspection")]
use pyo3::{
    inspect::{PyStaticConstant, PyStaticExpr},
    type_hint_identifier, type_hint_subscript, type_hint_union,
};
use std::convert::Infallible;
use std::marker::PhantomData;

/// What is taken for an argument.
pub(crate) trait Argument {
    #[cfg(feature = "introspection")]
    const HINT: PyStaticExpr;

    /// Writes it as JSON.
    fn write(given: &Borrowed<'_, '_, PyAny>, json: &mut String) -> Result<(), Refused> {
        written(given, json, 0)
    }
}

/// What an argument reads as.
pub(crate) trait Read: Argument {
    type Value;

    fn read(given: &Borrowed<'_, '_, PyAny>) -> Result<Self::Value, Refused>;
}

/// An argument as it was handed in.
pub(crate) struct Given<'a, 'py, T>(pub(crate) Borrowed<'a, 'py, PyAny>, PhantomData<T>);

impl<T> Clone for Given<'_, '_, T> {
    fn clone(&self) -> Self {
        *self
    }
}

impl<T> Copy for Given<'_, '_, T> {}

impl<'a, 'py, T: Argument> FromPyObject<'a, 'py> for Given<'a, 'py, T> {
    type Error = Infallible;
    #[cfg(feature = "introspection")]
    const INPUT_TYPE: PyStaticExpr = T::HINT;

    #[inline]
    fn extract(given: Borrowed<'a, 'py, PyAny>) -> Result<Self, Infallible> {
        Ok(Given(given, PhantomData))
    }
}

impl Given<'_, '_, kind::Volume> {
    /// The volume, by itself: bare customary units are of these measures.
    pub(crate) fn in_measures(&self, measures: Option<Measures>) -> Result<Amount, Refused> {
        amount::read(&self.0, Some(Kind::Volume), measures)
    }
}

impl Given<'_, '_, kind::Any> {
    /// The quantity, which is to be of this kind where its text leaves that open.
    pub(crate) fn of_kind(&self, kind: Kind, name: &'static str) -> Result<Amount, Refused> {
        amount::read(&self.0, Some(kind), None).map_err(|refused| of(refused, name))
    }
}

/// The same of one that may be left out.
pub(crate) fn of_kind_if(
    given: Option<Given<'_, '_, kind::Any>>,
    kind: Kind,
    name: &'static str,
) -> Result<Option<Amount>, Refused> {
    given.map(|given| given.of_kind(kind, name)).transpose()
}

/// An argument that must be there, or one that may be left out.
pub(crate) trait Named {
    type Value;

    /// Its value. What is refused is refused under this name.
    fn named(&self, name: &'static str) -> Result<Self::Value, Refused>;
}

impl<T: Read> Named for Given<'_, '_, T> {
    type Value = T::Value;

    #[inline]
    fn named(&self, name: &'static str) -> Result<T::Value, Refused> {
        T::read(&self.0).map_err(|refused| of(refused, name))
    }
}

impl<T: Read> Named for Option<Given<'_, '_, T>> {
    type Value = Option<T::Value>;

    #[inline]
    fn named(&self, name: &'static str) -> Result<Option<T::Value>, Refused> {
        self.as_ref().map(|given| given.named(name)).transpose()
    }
}

/// The refusal of an argument, under its name.
#[cold]
pub(crate) fn of(refused: Refused, name: &'static str) -> Refused {
    match refused {
        Refused::Library(error) => {
            let faults = error.into_faults().into_iter();
            let faults = faults.map(|fault| of_blank(&fault).unwrap_or(fault).at(name));
            refused_for(faults.collect())
        }
        Refused::Python(failed) => Python::attach(|py| {
            if !failed.is_instance_of::<PyTypeError>(py) {
                return Refused::Python(failed);
            }
            let said = format!("argument '{name}': {}", failed.value(py));
            PyTypeError::new_err(said).into()
        }),
    }
}

/// What is said of a text with nothing in it, whatever it was to be.
fn of_blank(fault: &Fault) -> Option<Fault> {
    let got = fault.got.as_deref().filter(|got| got.trim().is_empty())?;
    let hint = "write something, or leave the field out";
    Some(Fault::new(ErrorKind::OutOfRange).got(got).hint(hint))
}

/// A refusal for faults, of which there is one at least.
fn refused_for(faults: Vec<Fault>) -> Refused {
    let internal = || Fault::new(ErrorKind::Internal).into();
    Refused::Library(Error::from_faults(faults).unwrap_or_else(internal))
}

/// What is refused of the arguments of one call: all of them are read before it is raised.
#[derive(Default)]
pub(crate) struct Refusals {
    faults: Vec<Fault>,
    failed: Option<Box<PyErr>>,
}

impl Refusals {
    /// The value, unless it is refused.
    #[inline]
    pub(crate) fn sift<T>(&mut self, read: Result<T, Refused>) -> Option<T> {
        read.map_err(|refused| self.keep(refused)).ok()
    }

    #[cold]
    fn keep(&mut self, refused: Refused) {
        match refused {
            Refused::Library(error) => self.faults.extend(error.into_faults()),
            Refused::Python(failed) => self.failed = self.failed.take().or(Some(failed)),
        }
    }
}

impl From<Refusals> for PyErr {
    #[cold]
    fn from(refusals: Refusals) -> Self {
        let refused = match refusals.failed {
            Some(failed) => Refused::Python(failed),
            None => refused_for(refusals.faults),
        };
        refused.into()
    }
}

/// Reads arguments, each by the name it has here or, where that is a word of Rust or of Python, by another.
macro_rules! read {
    ($($name:ident $(as $told:literal)?),+ $(,)?) => {
        let mut refusals = $crate::argument::Refusals::default();
        $(
            let _told = stringify!($name);
            $(let _told = $told;)?
            let $name = refusals.sift($crate::argument::Named::named(&$name, _told));
        )+
        let ($(Some($name),)+) = ($($name,)+) else {
            return Err(refusals.into());
        };
    };
}
pub(crate) use read;

/// Amounts of one kind, or their texts.
pub(crate) mod kind {
    use super::{Amount, Argument, Kind, Read, Refused, amount, written};
    use pyo3::prelude::*;
    #[cfg(feature = "introspection")]
    use pyo3::{FromPyObject, inspect::PyStaticExpr};

    macro_rules! kinds {
        ($($Name:ident: $kind:expr;)*) => { $(
            pub(crate) struct $Name;

            impl Argument for $Name {
                #[cfg(feature = "introspection")]
                const HINT: PyStaticExpr = <amount::AmountGiven as FromPyObject>::INPUT_TYPE;

                fn write(given: &Borrowed<'_, '_, PyAny>, json: &mut String) -> Result<(), Refused> {
                    amount::expected(given)?;
                    written(given, json, 0)
                }
            }

            impl Read for $Name {
                type Value = Amount;

                #[inline]
                fn read(given: &Borrowed<'_, '_, PyAny>) -> Result<Amount, Refused> {
                    amount::read(given, $kind, None)
                }
            }
        )* };
    }

    kinds! {
        Angle: Some(Kind::Angle);
        Any: None;
        Area: Some(Kind::Area);
        Density: Some(Kind::Density);
        Difference: Some(Kind::TemperatureDifference);
        Expansion: Some(Kind::Expansion);
        Force: Some(Kind::Force);
        KinematicViscosity: Some(Kind::KinematicViscosity);
        Length: Some(Kind::Length);
        Mass: Some(Kind::Mass);
        Temperature: Some(Kind::Temperature);
        Time: Some(Kind::Time);
        Torque: Some(Kind::Torque);
        Volume: Some(Kind::Volume);
    }
}

/// A plain number: an amount, its text, or any number of Python's.
pub(crate) struct Ratio;

impl Argument for Ratio {
    #[cfg(feature = "introspection")]
    const HINT: PyStaticExpr = type_hint_union!(amount::AmountGiven::INPUT_TYPE, f64::INPUT_TYPE);

    fn write(given: &Borrowed<'_, '_, PyAny>, json: &mut String) -> Result<(), Refused> {
        if written_ratio(given, json)? {
            return Ok(());
        }
        amount::expected(given)?;
        written(given, json, 0)
    }
}

impl Read for Ratio {
    type Value = Amount;

    fn read(given: &Borrowed<'_, '_, PyAny>) -> Result<Amount, Refused> {
        if is_number(given)? {
            return given.extract::<Number<'_, '_>>()?.of(Some(Unit::One));
        }
        amount::read(given, Some(Kind::Ratio), None)
    }
}

/// Whether this is a number of Python's: an `int`, `float`, `Decimal`, `Fraction` or what counts as one.
pub(crate) fn is_number(given: &Borrowed<'_, '_, PyAny>) -> PyResult<bool> {
    let is_no_number = given.is_instance_of::<PyString>()
        || given.is_instance_of::<amount::Amount>()
        || given.is_instance_of::<PyBool>();
    Ok(!is_no_number && given.hasattr(pyo3::intern!(given.py(), "__float__"))?)
}

/// A word of a list.
pub(crate) struct WordOf<T>(PhantomData<T>);

impl<T: Listed> Argument for WordOf<T> {
    #[cfg(feature = "introspection")]
    const HINT: PyStaticExpr = T::HINT;
}

impl<T: Listed> Read for WordOf<T> {
    type Value = T;

    fn read(given: &Borrowed<'_, '_, PyAny>) -> Result<T, Refused> {
        let word = given.cast::<PyString>().map_err(PyErr::from)?;
        let word = utf8(&word)?;
        Ok(T::of(word).ok_or_else(|| unknown(word, T::WORDS))?)
    }
}

/// The designation of a thread.
pub(crate) struct Thread;

impl Argument for Thread {
    #[cfg(feature = "introspection")]
    const HINT: PyStaticExpr = type_hint_identifier!("builtins", "str");
}

impl Read for Thread {
    type Value = torque::Thread;

    fn read(given: &Borrowed<'_, '_, PyAny>) -> Result<torque::Thread, Refused> {
        let text = given.cast::<PyString>().map_err(PyErr::from)?;
        let text = utf8(&text)?;
        Ok(caught(|| torque::Thread::parse(text))?)
    }
}

/// A whole number of at least so many, and no more than is counted with.
pub(crate) struct Count<const LEAST: i64>;

impl<const LEAST: i64> Argument for Count<LEAST> {
    #[cfg(feature = "introspection")]
    const HINT: PyStaticExpr = type_hint_identifier!("builtins", "int");
}

impl<const LEAST: i64> Read for Count<LEAST> {
    type Value = u32;

    fn read(given: &Borrowed<'_, '_, PyAny>) -> Result<u32, Refused> {
        let number = saturated(given)?;
        let count = u32::try_from(number).ok().filter(|_| number >= LEAST);
        count.ok_or_else(|| {
            let fault = Fault::new(ErrorKind::OutOfRange).got(&number.to_string());
            Error::from(fault.allowed([format!("{LEAST} to {}", u32::MAX)])).into()
        })
    }
}

macro_rules! taken {
    ($($(#[$about:meta])* $Name:ident: $hint:expr;)*) => { $(
        $(#[$about])*
        pub(crate) struct $Name;

        impl Argument for $Name {
            #[cfg(feature = "introspection")]
            const HINT: PyStaticExpr = $hint;
        }
    )* };
}

taken! {
    /// Bytes, or hexadecimal text, which the library reads.
    Bytes: type_hint_union!(
        type_hint_identifier!("builtins", "bytes"),
        type_hint_identifier!("builtins", "bytearray"),
        type_hint_identifier!("builtins", "str")
    );
    /// True or false, which the library reads.
    Flag: type_hint_identifier!("builtins", "bool");
    /// An identifier: a whole number, or hexadecimal text, which the library reads.
    Identifier: type_hint_union!(
        type_hint_identifier!("builtins", "int"),
        type_hint_identifier!("builtins", "str")
    );
    /// Several quantities, which the library reads.
    Amounts: type_hint_subscript!(
        type_hint_identifier!("collections.abc", "Iterable"),
        amount::AmountGiven::INPUT_TYPE
    );
    /// A text, which the library reads.
    Text: type_hint_identifier!("builtins", "str");
    /// Several things with members, which the library reads.
    List: type_hint_subscript!(
        type_hint_identifier!("collections.abc", "Iterable"),
        Members::HINT
    );
    /// A range, which the library reads from its two ends.
    Range: type_hint_union!(
        <crate::interval::Interval as pyo3::PyTypeInfo>::TYPE_HINT,
        type_hint_subscript!(
            type_hint_identifier!("collections.abc", "Sequence"),
            type_hint_union!(
                amount::AmountGiven::INPUT_TYPE,
                PyStaticExpr::Constant {
                    value: PyStaticConstant::None
                }
            )
        )
    );
    /// A layout that was read before, or one as a mapping.
    Layout: type_hint_union!(
        <crate::linear::Linear as pyo3::PyTypeInfo>::TYPE_HINT,
        Members::HINT
    );
    /// Something with members, which the library reads.
    Members: type_hint_subscript!(
        type_hint_identifier!("collections.abc", "Mapping"),
        type_hint_identifier!("builtins", "str"),
        type_hint_identifier!("typing", "Any")
    );
}
