//! Words of closed lists: plain `str` in Python.

use crate::error::raised;
use brimline::fluid::BlendRule;
use brimline::leak::{Rule, SeepageClass};
use brimline::money::Place;
use brimline::record::Rules;
use brimline::report::{Medium, Picture};
use brimline::signal::ByteOrder;
use brimline::torque::{PlugKind, StrengthClass, ThreadCondition};
use brimline::volume::Base;
use brimline::{Error, ErrorKind, Fault, Kind, Measures, Rounding, Verdict, procedure::Act};
use pyo3::prelude::*;
use pyo3::types::PyString;
#[cfg(feature = "introspection")]
use pyo3::{
    inspect::{PyStaticConstant, PyStaticExpr},
    type_hint_identifier,
};
use std::convert::Infallible;

/// A closed list whose words are taken and told as text.
pub(crate) trait Listed: Sized + 'static {
    const WORDS: &'static [&'static str];
    #[cfg(feature = "introspection")]
    const HINT: PyStaticExpr;

    fn word(&self) -> &'static str;
    fn of(word: &str) -> Option<Self>;
}

/// A word of a list.
pub(crate) struct Word<T>(pub(crate) T);

impl<T: Listed> FromPyObject<'_, '_> for Word<T> {
    type Error = PyErr;
    #[cfg(feature = "introspection")]
    const INPUT_TYPE: PyStaticExpr = T::HINT;

    fn extract(given: Borrowed<'_, '_, PyAny>) -> PyResult<Self> {
        let word: &str = given.extract()?;
        T::of(word)
            .map(Word)
            .ok_or_else(|| raised(unknown(word, T::WORDS)))
    }
}

impl<'py, T: Listed> IntoPyObject<'py> for Word<T> {
    type Target = PyString;
    type Output = Bound<'py, PyString>;
    type Error = Infallible;
    #[cfg(feature = "introspection")]
    const OUTPUT_TYPE: PyStaticExpr = T::HINT;

    fn into_pyobject(self, py: Python<'py>) -> Result<Self::Output, Infallible> {
        Ok(PyString::intern(py, self.0.word()))
    }
}

/// The refusal of a word that is not on its list.
pub(crate) fn unknown(word: &str, words: &'static [&'static str]) -> Error {
    Fault::new(ErrorKind::UnknownValue)
        .got(word)
        .allowed(words.iter().copied())
        .into()
}

macro_rules! listed {
    ($($List:ty: $words:expr, $of:expr;)*) => { $(
        impl Listed for $List {
            const WORDS: &'static [&'static str] = $words;
            #[cfg(feature = "introspection")]
            const HINT: PyStaticExpr = PyStaticExpr::Subscript {
                value: &type_hint_identifier!("typing", "Literal"),
                slice: &PyStaticExpr::Tuple { elts: &literals::<{ $words.len() }>($words) },
            };

            fn word(&self) -> &'static str {
                self.slug()
            }

            fn of(word: &str) -> Option<Self> {
                $of(word)
            }
        }
    )* };
}

listed! {
    Act: Act::SLUGS, Act::from_slug;
    Base: Base::SLUGS, Base::from_slug;
    BlendRule: BlendRule::SLUGS, BlendRule::from_slug;
    ByteOrder: ByteOrder::SLUGS, ByteOrder::from_slug;
    ErrorKind: ERROR_KINDS, |word| ErrorKind::ALL.iter().copied().find(|kind| kind.slug() == word);
    Kind: KINDS, |word| Kind::ALL.iter().copied().find(|kind| kind.slug() == word);
    Measures: Measures::SLUGS, Measures::from_slug;
    Medium: Medium::SLUGS, Medium::from_slug;
    Picture: Picture::SLUGS, Picture::from_slug;
    Place: Place::SLUGS, Place::from_slug;
    PlugKind: PlugKind::SLUGS, PlugKind::from_slug;
    Rounding: Rounding::SLUGS, Rounding::from_slug;
    Rule: Rule::SLUGS, Rule::from_slug;
    Rules: Rules::SLUGS, Rules::from_slug;
    SeepageClass: SeepageClass::SLUGS, SeepageClass::from_slug;
    StrengthClass: StrengthClass::SLUGS, StrengthClass::from_slug;
    ThreadCondition: ThreadCondition::SLUGS, ThreadCondition::from_slug;
    Verdict: Verdict::SLUGS, Verdict::from_slug;
}

const ERROR_KINDS: &[&str] = &{
    let mut words = [""; ErrorKind::ALL.len()];
    let mut place = 0;
    while place < words.len() {
        words[place] = ErrorKind::ALL[place].slug();
        place += 1;
    }
    words
};

const KINDS: &[&str] = &{
    let mut words = [""; Kind::ALL.len()];
    let mut place = 0;
    while place < words.len() {
        words[place] = Kind::ALL[place].slug();
        place += 1;
    }
    words
};

#[cfg(feature = "introspection")]
const fn literals<const N: usize>(words: &[&'static str]) -> [PyStaticExpr; N] {
    let none = PyStaticExpr::Constant {
        value: PyStaticConstant::None,
    };
    let mut literals = [none; N];
    let mut place = 0;
    while place < N {
        literals[place] = PyStaticExpr::Constant {
            value: PyStaticConstant::Str(words[place]),
        };
        place += 1;
    }
    literals
}
