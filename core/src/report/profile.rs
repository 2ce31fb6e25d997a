//! How a shop likes to read quantities.

use crate::document::{Ext, Limits, Node, Reader, canonical};
use crate::error::{Error, ErrorKind, Fault};
use crate::procedure;
use crate::quantity::{Amount, Kind, Measures, Rounding, Unit};
use alloc::string::String;
use alloc::vec::Vec;
use serde::ser::SerializeMap;
use serde::{Serialize, Serializer};

/// The format this version reads and writes.
pub(crate) const FORMAT: &str = "brimline-profile/1";

/// More decimals than these no amount has.
const DECIMALS: u8 = 9;

/// The unit in which a shop reads one kind of quantity, and to how many decimals.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct Preferred {
    /// The unit.
    pub unit: Unit,
    /// Decimals, 0 to 9; more are told where fewer would make two different quantities read alike.
    pub decimals: u8,
}

/// The units and the language that a shop reads: how it is told, never what is decided. (What counts as evidence in a
/// shop is the `profile` of a journal.) It stands apart from the messages, because shops that speak one language
/// read different units.
///
/// The document is `{"format","language"?,"measures"?,"units"?:{kind:{"unit","decimals"}},"ext"?}`; `measures` says what
/// bare `qt`, `pt`, `gal` and `fl oz` mean in it.
///
/// ```
/// use brimline::report::{Catalogue, Profile, Teller};
/// let shop = Profile::from_json(r#"{"format":"brimline-profile/1","measures":"us",
///     "units":{"volume":{"unit":"qt","decimals":2},"temperature":{"unit":"°F","decimals":0}}}"#)?;
/// let teller = Teller::new(Catalogue::english(), shop)?;
/// assert_eq!(teller.departure(&"[-2.0 L, -1.5 L]".parse()?), "between 1.58 US qt and 2.12 US qt short");
/// # Ok::<(), brimline::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Profile {
    language: Option<String>,
    measures: Option<Measures>,
    units: Vec<Preferred>,
    ext: Option<Ext>,
}

impl Profile {
    /// No preference: quantities are told in the unit they were entered or printed in.
    #[must_use]
    pub const fn as_entered() -> Self {
        Profile {
            language: None,
            measures: None,
            units: Vec::new(),
            ext: None,
        }
    }

    /// Reads a profile from its JSON text, under the default [`Limits`].
    ///
    /// # Errors
    /// Every fault of the document, with path and position.
    pub fn from_json(text: &str) -> Result<Self, Error> {
        Self::from_json_with(text, &Limits::default())
    }

    /// Reads a profile from its JSON text.
    ///
    /// # Errors
    /// Every fault of the document, with path and position.
    pub fn from_json_with(text: &str, limits: &Limits) -> Result<Self, Error> {
        let mut reader = Reader::new(text, limits)?;
        let read = reader.parse().and_then(|node| profile(&mut reader, &node));
        reader.finish()?;
        // A document that read without a fault is there.
        read.ok_or_else(|| Fault::new(ErrorKind::Internal).into())
    }

    /// The canonical form.
    #[must_use]
    pub fn to_json(&self) -> String {
        canonical(self)
    }

    /// The language it is told in, if the shop says so.
    #[must_use]
    pub fn language(&self) -> Option<&str> {
        self.language.as_deref()
    }

    /// What bare `qt`, `pt`, `gal` and `fl oz` mean in it.
    #[must_use]
    pub const fn measures(&self) -> Option<Measures> {
        self.measures
    }

    /// The unit and the decimals for a kind of quantity, if the shop has a preference.
    #[must_use]
    pub fn preferred(&self, kind: Kind) -> Option<Preferred> {
        self.units
            .iter()
            .find(|preferred| preferred.unit.kind() == kind)
            .copied()
    }

    /// An amount in the unit the shop prefers, rounded; with more decimals where fewer would do harm.
    pub(super) fn told(
        &self,
        amount: Amount,
        rounding: Rounding,
        harms: &dyn Fn(Amount) -> bool,
    ) -> Option<Amount> {
        let Preferred { unit, decimals } = self.preferred(amount.kind())?;
        if unit == amount.unit() && amount.decimals() <= decimals {
            return Some(amount);
        }
        let told = |places| amount.to(unit, places, rounding).ok();
        (decimals..=DECIMALS)
            .filter_map(told)
            .find(|told| !harms(*told))
    }
}

fn profile(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Profile> {
    let fields = &["format", "language", "measures", "units", "ext"];
    let object = reader.object(node, fields)?;
    let known = reader.required(&object, "format", |reader, node| {
        procedure::format(reader, node, FORMAT)
    });
    let language = reader.optional(&object, "language", super::language::tag);
    let measures = reader.optional(&object, "measures", procedure::measures);
    reader.measures = measures;
    let units = reader.optional(&object, "units", units);
    let ext = reader.optional(&object, "ext", Reader::ext);
    known?;
    Some(Profile {
        language,
        measures,
        units: units.unwrap_or_default(),
        ext,
    })
}

fn units(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Vec<Preferred>> {
    let kinds: Vec<&'static str> = Kind::ALL.iter().map(|kind| kind.slug()).collect();
    let object = reader.object(node, &kinds)?;
    let mut read = Vec::new();
    for kind in Kind::ALL {
        let preferred = reader.optional(&object, kind.slug(), |reader, node| {
            preferred(reader, node, *kind)
        });
        read.extend(preferred);
    }
    Some(read)
}

fn preferred(reader: &mut Reader<'_>, node: &Node<'_>, kind: Kind) -> Option<Preferred> {
    let object = reader.object(node, &["unit", "decimals"])?;
    let unit = reader.required(&object, "unit", |reader, node| {
        let text = reader.str(node)?;
        let read = Unit::parse_as(text, kind, reader.measures);
        read.map_err(|error| {
            for fault in error.into_faults() {
                reader.note(fault);
            }
        })
        .ok()
    });
    let decimals = reader.required(&object, "decimals", |reader, node| {
        let value = reader.whole(node, 0)?;
        let decimals = u8::try_from(value)
            .ok()
            .filter(|decimals| *decimals <= DECIMALS);
        if decimals.is_none() {
            let got = alloc::format!("{value}");
            let fault = Fault::new(ErrorKind::OutOfRange).got(&got);
            reader.note(fault.allowed([alloc::format!("0 to {DECIMALS}")]));
        }
        decimals
    });
    Some(Preferred {
        unit: unit?,
        decimals: decimals?,
    })
}

struct Units<'p>(&'p [Preferred]);

impl Serialize for Units<'_> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let by_kind = self
            .0
            .iter()
            .map(|preferred| (preferred.unit.kind().slug(), preferred));
        serializer.collect_map(by_kind)
    }
}

impl Serialize for Profile {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut out = serializer.serialize_map(None)?;
        out.serialize_entry("format", FORMAT)?;
        if let Some(language) = &self.language {
            out.serialize_entry("language", language)?;
        }
        if let Some(measures) = self.measures {
            out.serialize_entry("measures", &measures)?;
        }
        if !self.units.is_empty() {
            out.serialize_entry("units", &Units(&self.units))?;
        }
        if let Some(ext) = &self.ext {
            out.serialize_entry("ext", ext)?;
        }
        out.end()
    }
}
