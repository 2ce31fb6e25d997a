//! What went wrong, where, and what to do: the only error of the library.
//!
//! An [`Error`] holds one or more [`Fault`]s, so a document with nine faults answers all nine at once.
//! Every fault has a stable kind ([`ErrorKind`], with a number and a slug that are never reused), and as
//! much of path, position, offending text, allowed values and hint as applies. The same bytes come out in
//! Rust, Python and C.

use alloc::borrow::Cow;
use alloc::boxed::Box;
use alloc::string::String;
use alloc::vec;
use alloc::vec::Vec;
use core::fmt;
use serde::ser::SerializeStruct;
use serde::{Serialize, Serializer};

/// The kinds of fault, with numbers that never change and are never reused.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[repr(i32)]
#[non_exhaustive]
pub enum ErrorKind {
    /// The text is not well-formed JSON.
    Syntax = 1,
    /// A named limit of [`Limits`](crate::Limits) was passed.
    Limit = 2,
    /// The document's `format` is not one this version reads.
    WrongFormat = 3,
    /// A value of another JSON type was expected.
    WrongType = 4,
    /// A required member is absent.
    MissingField = 5,
    /// A member that the format does not have.
    UnknownField = 6,
    /// The same member stands twice in one object.
    DuplicateField = 7,
    /// A word outside the list of allowed words.
    UnknownValue = 8,
    /// Two members that exclude each other, or none of a set of which one is needed.
    Conflict = 9,
    /// A reference to something that is not there.
    Unresolved = 10,
    /// The same identity given twice.
    DuplicateId = 11,
    /// A chain of references that returns to its start.
    Cycle = 12,
    /// `seq` does not rise.
    Sequence = 13,
    /// Not a date or time in the expected form.
    NotATime = 14,
    /// A sealed document whose bytes are not those that were sealed.
    Changed = 15,
    /// The host's storage did not keep or give what was asked of it.
    Storage = 16,
    /// Not a number in plain decimal notation, or not finite.
    NotANumber = 20,
    /// More digits than an amount holds.
    TooManyDigits = 21,
    /// A comma that may be a decimal sign or a thousands separator.
    DecimalComma = 22,
    /// A fraction that has no finite decimal.
    Fraction = 23,
    /// A number without its unit.
    UnitMissing = 24,
    /// A unit this library does not know.
    UnitUnknown = 25,
    /// A unit that names more than one size.
    UnitAmbiguous = 26,
    /// A unit of another kind of quantity than the one expected.
    WrongKind = 27,
    /// A value outside the range that is meaningful here.
    OutOfRange = 28,
    /// The C caller passed a null pointer where a value is needed.
    NullPointer = 40,
    /// The C caller's buffer is too small; the needed length was reported.
    BufferTooSmall = 41,
    /// The C caller's text is not UTF-8.
    NotUtf8 = 42,
    /// A defect of the library itself, caught at its border.
    Internal = 90,
}

impl ErrorKind {
    /// Every kind, in order of number.
    pub const ALL: &'static [ErrorKind] = &[
        ErrorKind::Syntax,
        ErrorKind::Limit,
        ErrorKind::WrongFormat,
        ErrorKind::WrongType,
        ErrorKind::MissingField,
        ErrorKind::UnknownField,
        ErrorKind::DuplicateField,
        ErrorKind::UnknownValue,
        ErrorKind::Conflict,
        ErrorKind::Unresolved,
        ErrorKind::DuplicateId,
        ErrorKind::Cycle,
        ErrorKind::Sequence,
        ErrorKind::NotATime,
        ErrorKind::Changed,
        ErrorKind::Storage,
        ErrorKind::NotANumber,
        ErrorKind::TooManyDigits,
        ErrorKind::DecimalComma,
        ErrorKind::Fraction,
        ErrorKind::UnitMissing,
        ErrorKind::UnitUnknown,
        ErrorKind::UnitAmbiguous,
        ErrorKind::WrongKind,
        ErrorKind::OutOfRange,
        ErrorKind::NullPointer,
        ErrorKind::BufferTooSmall,
        ErrorKind::NotUtf8,
        ErrorKind::Internal,
    ];

    /// The number that crosses the C border.
    #[must_use]
    pub const fn code(self) -> i32 {
        self as i32
    }

    /// The stable, language-free name.
    #[must_use]
    pub const fn slug(self) -> &'static str {
        self.words().0
    }

    /// What is said of the fault in a sentence.
    const fn words(self) -> (&'static str, &'static str) {
        match self {
            ErrorKind::Syntax => ("syntax", "not well-formed JSON"),
            ErrorKind::Limit => ("limit", "over a limit"),
            ErrorKind::WrongFormat => ("wrong_format", "not a format this version reads"),
            ErrorKind::WrongType => ("wrong_type", "wrong type of value"),
            ErrorKind::MissingField => ("missing_field", "required field is missing"),
            ErrorKind::UnknownField => ("unknown_field", "unknown field"),
            ErrorKind::DuplicateField => ("duplicate_field", "field stands twice"),
            ErrorKind::UnknownValue => ("unknown_value", "not one of the allowed values"),
            ErrorKind::Conflict => ("conflict", "fields that do not go together"),
            ErrorKind::Unresolved => ("unresolved", "refers to something that is not there"),
            ErrorKind::DuplicateId => ("duplicate_id", "identity given twice"),
            ErrorKind::Cycle => ("cycle", "chain returns to its start"),
            ErrorKind::Sequence => ("sequence", "seq does not rise"),
            ErrorKind::NotATime => ("not_a_time", "not a date or time"),
            ErrorKind::Changed => ("changed", "changed since it was sealed"),
            ErrorKind::Storage => ("storage", "storage did not do what was asked"),
            ErrorKind::NotANumber => ("not_a_number", "not a plain decimal number"),
            ErrorKind::TooManyDigits => ("too_many_digits", "too many digits"),
            ErrorKind::DecimalComma => ("decimal_comma", "comma in a number"),
            ErrorKind::Fraction => ("fraction", "fraction has no finite decimal"),
            ErrorKind::UnitMissing => ("unit_missing", "unit is missing"),
            ErrorKind::UnitUnknown => ("unit_unknown", "unknown unit"),
            ErrorKind::UnitAmbiguous => ("unit_ambiguous", "unit names more than one size"),
            ErrorKind::WrongKind => ("wrong_kind", "unit of another kind of quantity"),
            ErrorKind::OutOfRange => ("out_of_range", "out of range"),
            ErrorKind::NullPointer => ("null_pointer", "null pointer"),
            ErrorKind::BufferTooSmall => ("buffer_too_small", "buffer is too small"),
            ErrorKind::NotUtf8 => ("not_utf8", "text is not UTF-8"),
            ErrorKind::Internal => ("internal", "defect in the library"),
        }
    }
}

/// A place in a text: line and column count from 1 (columns in characters), the offset in bytes from 0.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Position {
    /// Line, from 1.
    pub line: u32,
    /// Column in characters, from 1.
    pub column: u32,
    /// Bytes before it.
    pub offset: u32,
}

/// One thing that is wrong.
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
#[non_exhaustive]
pub struct Fault {
    /// What kind of fault.
    pub kind: ErrorKind,
    /// Where in the document, as `entries[3].volume`; empty outside a document.
    pub path: String,
    /// Where in the text.
    pub position: Option<Position>,
    /// What was found, shortened to 80 characters.
    pub got: Option<String>,
    /// What would have been accepted.
    pub allowed: Vec<Cow<'static, str>>,
    /// What to do about it.
    pub hint: Option<Cow<'static, str>>,
}

impl Fault {
    /// A fault of this kind, with nothing said of it yet.
    #[must_use]
    pub const fn new(kind: ErrorKind) -> Self {
        Fault {
            kind,
            path: String::new(),
            position: None,
            got: None,
            allowed: Vec::new(),
            hint: None,
        }
    }

    /// Says what was found; longer texts are cut to 80 characters.
    #[must_use]
    #[cold]
    #[inline(never)]
    pub fn got(mut self, text: &str) -> Self {
        let mut kept: String = text.chars().take(80).collect();
        if kept.len() < text.len() {
            kept.push('…');
        }
        self.got = Some(kept);
        self
    }

    /// Says what would have been accepted.
    #[must_use]
    #[cold]
    #[inline(never)]
    pub fn allowed<T: Into<Cow<'static, str>>>(
        mut self,
        values: impl IntoIterator<Item = T>,
    ) -> Self {
        self.allowed = values.into_iter().map(Into::into).collect();
        self
    }

    /// Says what to do.
    #[must_use]
    #[cold]
    #[inline(never)]
    pub fn hint(mut self, text: impl Into<Cow<'static, str>>) -> Self {
        self.hint = Some(text.into());
        self
    }

    /// Says where in the document.
    #[must_use]
    #[cold]
    #[inline(never)]
    pub fn at(mut self, path: impl Into<String>) -> Self {
        self.path = path.into();
        self
    }
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if !self.path.is_empty() {
            write!(f, "{}: ", self.path)?;
        }
        f.write_str(self.kind.words().1)?;
        if let Some(got) = &self.got {
            write!(f, ": got \"{got}\"")?;
        }
        for (index, value) in self.allowed.iter().enumerate() {
            f.write_str(if index == 0 { "; allowed: " } else { ", " })?;
            f.write_str(value)?;
        }
        if let Some(hint) = &self.hint {
            write!(f, "; {hint}")?;
        }
        if let Some(place) = self.position {
            write!(f, " (line {}, column {})", place.line, place.column)?;
        }
        Ok(())
    }
}

/// Everything that is wrong with what was handed in: one fault or more, in the order they stand.
///
/// ```
/// use brimline::{Amount, ErrorKind};
/// let error = Amount::parse("1.2 oz").unwrap_err();
/// assert_eq!(error.kind(), ErrorKind::UnitAmbiguous);
/// assert_eq!(error.faults().count(), 1);
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash, thiserror::Error)]
pub struct Error(Box<Faults>);

#[derive(Debug, Clone, PartialEq, Eq, Hash)]
struct Faults {
    first: Fault,
    rest: Vec<Fault>,
}

impl Error {
    /// An error of several faults; `None` where there are none.
    #[must_use]
    pub fn from_faults(faults: Vec<Fault>) -> Option<Self> {
        let mut faults = faults.into_iter();
        let first = faults.next()?;
        Some(Error(Box::new(Faults {
            first,
            rest: faults.collect(),
        })))
    }

    /// The kind of the first fault.
    #[must_use]
    pub fn kind(&self) -> ErrorKind {
        self.0.first.kind
    }

    /// The first fault.
    #[must_use]
    pub fn first(&self) -> &Fault {
        &self.0.first
    }

    /// Every fault, in the order they stand in the document.
    pub fn faults(&self) -> impl Iterator<Item = &Fault> {
        core::iter::once(&self.0.first).chain(&self.0.rest)
    }

    /// The error as JSON: `{"kind","code","message","faults":[{"kind","code","path"?,"line"?,"column"?,"offset"?,
    /// "got"?,"allowed"?,"hint"?}]}`.
    #[must_use]
    pub fn to_json(&self) -> String {
        // These hold text and integers only, so writing them cannot fail.
        serde_json::to_string(self).unwrap_or_default()
    }

    /// Takes the faults out.
    #[must_use]
    pub fn into_faults(self) -> Vec<Fault> {
        let mut all = vec![self.0.first];
        all.extend(self.0.rest);
        all
    }
}

impl From<Fault> for Error {
    #[cold]
    #[inline(never)]
    fn from(first: Fault) -> Self {
        Error(Box::new(Faults {
            first,
            rest: Vec::new(),
        }))
    }
}

impl fmt::Display for Error {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for (index, fault) in self.faults().enumerate() {
            if index > 0 {
                f.write_str("\n")?;
            }
            write!(f, "{fault}")?;
        }
        Ok(())
    }
}

impl Serialize for Error {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let faults: Vec<&Fault> = self.faults().collect();
        let mut out = serializer.serialize_struct("Error", 4)?;
        out.serialize_field("kind", self.kind().slug())?;
        out.serialize_field("code", &self.kind().code())?;
        out.serialize_field("message", &alloc::format!("{self}"))?;
        out.serialize_field("faults", &faults)?;
        out.end()
    }
}

impl Serialize for Fault {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut out = serializer.serialize_struct("Fault", 9)?;
        out.serialize_field("kind", self.kind.slug())?;
        out.serialize_field("code", &self.kind.code())?;
        if !self.path.is_empty() {
            out.serialize_field("path", &self.path)?;
        }
        if let Some(place) = self.position {
            out.serialize_field("line", &place.line)?;
            out.serialize_field("column", &place.column)?;
            out.serialize_field("offset", &place.offset)?;
        }
        if let Some(got) = &self.got {
            out.serialize_field("got", got)?;
        }
        if !self.allowed.is_empty() {
            out.serialize_field("allowed", &self.allowed)?;
        }
        if let Some(hint) = &self.hint {
            out.serialize_field("hint", hint)?;
        }
        out.end()
    }
}
