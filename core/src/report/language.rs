//! A catalogue of messages in any language, as a document that a host hands in.

use super::catalogue::{Message, find, messages};
use super::plural::{Plural, Plurals};
use super::wording;
use crate::document::{Ext, Limits, Node, Object, Reader, canonical};
use crate::error::{Error, ErrorKind, Fault};
use crate::procedure;
use crate::word::words;
use alloc::borrow::ToOwned;
use alloc::boxed::Box;
use alloc::string::String;
use alloc::sync::Arc;
use alloc::vec::Vec;
use serde::ser::SerializeMap;
use serde::{Serialize, Serializer};

/// The format this version reads and writes.
pub(crate) const FORMAT: &str = "brimline-messages/1";

words! {
    /// What stands before the decimals of a number that is told. Documents always have a point.
    pub enum DecimalSign {
        /// `1.5 L`.
        Point = ".",
        /// `1,5 L`.
        Comma = ",",
    }
}

/// How one message is worded.
#[derive(Debug, Clone, PartialEq, Eq)]
enum Wording {
    /// Alike for every count, or without one.
    Alike(Box<str>),
    /// One text a category, `other` always among them.
    ByCount(Vec<(Plural, Box<str>)>),
}

/// Every message of the library in one language, read and checked. Copies are cheap and share the same data.
///
/// The document is `{"format","language","decimal_sign","plurals"?,"messages":{part:{id:text}},"ext"?}`. A text that goes
/// with a count may be an object, one text for each category of `plurals` and `other`. The English one, by
/// [`to_json`](Catalogue::to_json), is what a translator starts from.
///
/// ```
/// use brimline::report::Catalogue;
/// let english = Catalogue::english();
/// assert_eq!(english.language(), "en");
/// assert_eq!(Catalogue::from_json(&english.to_json())?.to_json(), english.to_json());
/// # Ok::<(), brimline::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Catalogue(Option<Arc<Parts>>);

#[derive(Debug, Clone, PartialEq)]
struct Parts {
    language: String,
    decimal_sign: DecimalSign,
    plurals: Plurals,
    /// One for each message, in the order of [`messages`].
    wordings: Vec<Wording>,
    ext: Option<Ext>,
}

impl Default for Catalogue {
    fn default() -> Self {
        Self::english()
    }
}

impl Catalogue {
    /// The messages as the library words them.
    #[must_use]
    pub const fn english() -> Self {
        Catalogue(None)
    }

    /// Reads a catalogue from its JSON text, under the default [`Limits`].
    ///
    /// # Errors
    /// Every fault of the document, with path and position: a message or an argument that is missing, one that the
    /// library does not have, a bracket without its partner, an empty text, a plural form too few or too many.
    ///
    /// ```
    /// use brimline::report::Catalogue;
    /// let english = Catalogue::english().to_json();
    /// let error = Catalogue::from_json(&english.replace("{bytes}", "some")).unwrap_err();
    /// assert_eq!(error.first().path, "messages.finding.torn_line.one.{bytes}");
    /// ```
    pub fn from_json(text: &str) -> Result<Self, Error> {
        Self::from_json_with(text, &Limits::default())
    }

    /// Reads a catalogue from its JSON text.
    ///
    /// # Errors
    /// As [`from_json`](Catalogue::from_json).
    pub fn from_json_with(text: &str, limits: &Limits) -> Result<Self, Error> {
        let mut reader = Reader::new(text, limits)?;
        let read = reader
            .parse()
            .and_then(|node| catalogue(&mut reader, &node));
        reader.finish()?;
        // A document that read without a fault is there.
        read.map(|parts| Catalogue(Some(Arc::new(parts))))
            .ok_or_else(|| Fault::new(ErrorKind::Internal).into())
    }

    /// The canonical form.
    #[must_use]
    pub fn to_json(&self) -> String {
        canonical(self)
    }

    /// The tag of the language, as `de`.
    #[must_use]
    pub fn language(&self) -> &str {
        self.0.as_ref().map_or("en", |parts| &parts.language)
    }

    /// What stands before the decimals.
    #[must_use]
    pub fn decimal_sign(&self) -> DecimalSign {
        let own = self.0.as_ref().map(|parts| parts.decimal_sign);
        own.unwrap_or(DecimalSign::Point)
    }

    /// The text of a message, where there is one; `count` tells the value of the argument that counts.
    pub(super) fn text(
        &self,
        part: &str,
        id: &str,
        count: impl FnOnce(&str) -> Option<u64>,
    ) -> Option<&str> {
        let (place, message) = find(part, id)?;
        let counted = message.one.and_then(|(name, _)| count(name));
        let Some(parts) = &self.0 else {
            let one = message.one.filter(|_| counted == Some(1));
            return Some(one.map_or(message.text, |(_, one)| one));
        };
        Some(match parts.wordings.get(place)? {
            Wording::Alike(text) => text,
            Wording::ByCount(forms) => {
                let wanted = counted.map_or(Plural::Other, |count| parts.plurals.of(count));
                let form = |plural| forms.iter().find(|(own, _)| *own == plural);
                &form(wanted).or_else(|| form(Plural::Other))?.1
            }
        })
    }

    fn wording(&self, place: usize, message: &Message) -> Wording {
        let own = self.0.as_ref().and_then(|parts| parts.wordings.get(place));
        let alike = || Wording::Alike(message.text.into());
        own.cloned().unwrap_or_else(|| match message.one {
            None => alike(),
            Some((_, one)) => Wording::ByCount(alloc::vec![
                (Plural::One, one.into()),
                (Plural::Other, message.text.into()),
            ]),
        })
    }
}

/// The parts, each once, in the order of the catalogue.
fn parts() -> Vec<&'static str> {
    let mut parts: Vec<&'static str> = Vec::new();
    for message in messages() {
        if !parts.contains(&message.part) {
            parts.push(message.part);
        }
    }
    parts
}

fn catalogue(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Parts> {
    let fields = &[
        "format",
        "language",
        "decimal_sign",
        "plurals",
        "messages",
        "ext",
    ];
    let object = reader.object(node, fields)?;
    let known = reader.required(&object, "format", |reader, node| {
        procedure::format(reader, node, FORMAT)
    });
    let language = reader.required(&object, "language", tag);
    let decimal_sign = reader.required(&object, "decimal_sign", |reader, node| {
        reader.word(node, DecimalSign::WORDS)
    });
    let plurals = reader.optional(&object, "plurals", Plurals::read);
    let plurals = plurals.unwrap_or_default();
    let wordings = reader.required(&object, "messages", |reader, node| {
        wordings(reader, node, &plurals)
    });
    let ext = reader.optional(&object, "ext", Reader::ext);
    known?;
    Some(Parts {
        language: language?,
        decimal_sign: decimal_sign?,
        wordings: wordings?,
        plurals,
        ext,
    })
}

/// A tag of a language, as BCP 47 writes it: letters and digits in groups with hyphens between.
pub(super) fn tag(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<String> {
    let text = reader.str(node)?;
    let is_group = |group: &str| {
        (1..=8).contains(&group.len()) && group.bytes().all(|letter| letter.is_ascii_alphanumeric())
    };
    let begins = text.split('-').next().is_some_and(|group| {
        group.len() >= 2 && group.bytes().all(|letter| letter.is_ascii_alphabetic())
    });
    if begins && text.len() <= 35 && text.split('-').all(is_group) {
        return Some(text.to_owned());
    }
    let hint = "write the tag of the language, as de or pt-BR";
    reader.note(Fault::new(ErrorKind::UnknownValue).got(text).hint(hint));
    None
}

fn wordings(reader: &mut Reader<'_>, node: &Node<'_>, plurals: &Plurals) -> Option<Vec<Wording>> {
    let parts = parts();
    let object = reader.object(node, &parts)?;
    let mut read: Vec<Option<Wording>> = messages().map(|_| None).collect();
    for part in parts {
        reader.required(&object, part, |reader, node| {
            let own = || messages().enumerate().filter(|(_, own)| own.part == part);
            let ids: Vec<&'static str> = own().map(|(_, message)| message.id).collect();
            let object = reader.object(node, &ids)?;
            for (place, message) in own() {
                let text = of_message(reader, &object, message, plurals);
                if let Some(place) = read.get_mut(place) {
                    *place = text;
                }
            }
            Some(())
        });
    }
    read.into_iter().collect()
}

fn of_message(
    reader: &mut Reader<'_>,
    object: &Object<'_, '_>,
    message: &Message,
    plurals: &Plurals,
) -> Option<Wording> {
    reader.required(object, message.id, |reader, node| {
        if message.one.is_none() || !matches!(node, Node::Object(_)) {
            return text(reader, node, message).map(Wording::Alike);
        }
        let slugs = plurals.slugs();
        let forms = reader.object(node, &slugs)?;
        let read = slugs.into_iter().map(|slug| {
            let form = reader.required(&forms, slug, |reader, node| text(reader, node, message));
            Some((Plural::from_slug(slug)?, form?))
        });
        let read: Vec<Option<(Plural, Box<str>)>> = read.collect();
        read.into_iter()
            .collect::<Option<_>>()
            .map(Wording::ByCount)
    })
}

/// One text, held against the English one.
fn text(reader: &mut Reader<'_>, node: &Node<'_>, message: &Message) -> Option<Box<str>> {
    let text = reader.str(node)?;
    let counted = message.one.map(|(name, _)| name);
    let faults = wording::faults(message.text, text, counted);
    let sound = faults.is_empty();
    for (at, fault) in faults {
        match at {
            Some(argument) => reader.note_at(argument, fault),
            None => reader.note(fault),
        }
    }
    sound.then(|| text.into())
}

impl Serialize for Wording {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        match self {
            Wording::Alike(text) => serializer.serialize_str(text),
            Wording::ByCount(forms) => {
                serializer.collect_map(forms.iter().map(|(plural, text)| (plural, text)))
            }
        }
    }
}

/// The messages of one part, by id.
struct Part<'c>(&'c Catalogue, &'static str);

impl Serialize for Part<'_> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let Part(catalogue, part) = self;
        let own = messages()
            .enumerate()
            .filter(|(_, message)| message.part == *part);
        serializer.collect_map(own.map(|(place, own)| (own.id, catalogue.wording(place, own))))
    }
}

struct Messages<'c>(&'c Catalogue);

impl Serialize for Messages<'_> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_map(parts().into_iter().map(|part| (part, Part(self.0, part))))
    }
}

impl Serialize for Catalogue {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let english = Plurals::english();
        let plurals = self.0.as_ref().map_or(&english, |parts| &parts.plurals);
        let mut out = serializer.serialize_map(None)?;
        out.serialize_entry("format", FORMAT)?;
        out.serialize_entry("language", self.language())?;
        out.serialize_entry("decimal_sign", &self.decimal_sign())?;
        if !plurals.is_empty() {
            out.serialize_entry("plurals", plurals)?;
        }
        out.serialize_entry("messages", &Messages(self))?;
        if let Some(ext) = self.0.as_ref().and_then(|parts| parts.ext.as_ref()) {
            out.serialize_entry("ext", ext)?;
        }
        out.end()
    }
}
