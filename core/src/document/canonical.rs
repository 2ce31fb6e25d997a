//! The one way a document is written: members in documented order, compact, UTF-8 unescaped.

use alloc::boxed::Box;
use alloc::string::String;
use jiff::civil::Date;
use serde::{Serialize, Serializer};
use serde_json::value::RawValue;

/// The canonical JSON of anything this library answers: members in documented order, compact, UTF-8 unescaped.
///
/// ```
/// let pack = brimline::Pack::embedded()?;
/// let answer = pack.select(Some("no such vehicle"), None, None)?;
/// assert_eq!(brimline::document::canonical(&answer), r#"{"answer":"none","candidates":[]}"#);
/// # Ok::<(), brimline::Error>(())
/// ```
#[must_use]
pub fn canonical<T: Serialize>(value: &T) -> String {
    // What is written here holds text, integers, lists and structs only, so it cannot fail.
    serde_json::to_string(value).unwrap_or_default()
}

/// A calendar day as it is written, `2024-05-01`.
pub(crate) fn day<S: Serializer>(day: &Option<Date>, serializer: S) -> Result<S::Ok, S::Error> {
    match day {
        Some(day) => serializer.collect_str(day),
        None => serializer.serialize_none(),
    }
}

/// Any JSON of the host's, kept as it came but for white space, and never interpreted.
#[derive(Debug, Clone)]
pub(crate) struct Ext(Box<RawValue>);

impl Ext {
    /// Takes a well-formed JSON text and drops the white space between its tokens.
    pub(crate) fn new(json: &str) -> Option<Self> {
        let mut out = String::with_capacity(json.len());
        let (mut inside, mut escaped) = (false, false);
        for letter in json.chars() {
            if inside {
                inside = escaped || letter != '"';
                escaped = !escaped && letter == '\\';
            } else if letter.is_ascii_whitespace() {
                continue;
            } else {
                inside = letter == '"';
            }
            out.push(letter);
        }
        RawValue::from_string(out).ok().map(Ext)
    }
}

impl Ext {
    /// The JSON text.
    pub(crate) fn get(&self) -> &str {
        self.0.get()
    }
}

impl PartialEq for Ext {
    fn eq(&self, other: &Self) -> bool {
        self.0.get() == other.0.get()
    }
}

impl Serialize for Ext {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        self.0.serialize(serializer)
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;

    #[test]
    fn host_json_keeps_its_digits_and_texts() {
        let ext = Ext::new(" { \"a b\" : [ 1.10 , \"x \\\" y\\\\\" , 1e5 ] } ").unwrap();
        assert_eq!(canonical(&ext), "{\"a b\":[1.10,\"x \\\" y\\\\\",1e5]}");
    }
}
