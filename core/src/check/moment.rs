//! A moment as it was written, RFC 3339, and the instant it names.

use crate::document::{Node, Reader};
use crate::error::{ErrorKind, Fault};
use alloc::borrow::ToOwned;
use alloc::string::String;
use core::str::FromStr;
use jiff::Timestamp;
use jiff::civil::Date;
use jiff::tz::Offset;

/// A moment as it was written, and the instant it names.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Moment {
    pub(super) text: String,
    pub(super) instant: Timestamp,
}

impl Moment {
    /// The RFC 3339 text as it was written.
    #[must_use]
    pub fn text(&self) -> &str {
        &self.text
    }

    /// Nanoseconds since 1970-01-01T00:00:00Z.
    #[must_use]
    pub fn nanoseconds(&self) -> i128 {
        self.instant.as_nanosecond()
    }

    /// Its calendar day in UTC, by which editions are chosen as well.
    #[must_use]
    pub fn day(&self) -> Date {
        Offset::UTC.to_datetime(self.instant).date()
    }
}

/// An RFC 3339 date and time with its offset.
pub(super) fn moment(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Moment> {
    let text = reader.str(node)?;
    match instant(text) {
        Ok(instant) => Some(Moment {
            text: text.to_owned(),
            instant,
        }),
        Err(fault) => {
            reader.note(fault);
            None
        }
    }
}

/// The instant an RFC 3339 text names.
pub(super) fn instant(text: &str) -> Result<Timestamp, Fault> {
    let instant = is_rfc_3339(text)
        .then(|| Timestamp::from_str(text).ok())
        .flatten();
    let allowed = ["RFC 3339 with seconds and offset, as 2024-05-01T09:30:00Z"];
    instant.ok_or_else(|| Fault::new(ErrorKind::NotATime).got(text).allowed(allowed))
}

/// The shape of RFC 3339 section 5.6, `full-date T full-time`; the values are checked by the time library.
fn is_rfc_3339(text: &str) -> bool {
    let fits = |text: &str, shape: &str| {
        text.len() == shape.len()
            && text
                .bytes()
                .zip(shape.bytes())
                .all(|(own, wanted)| match wanted {
                    b'0' => own.is_ascii_digit(),
                    b'T' => own.eq_ignore_ascii_case(&b't'),
                    b'+' => own == b'+' || own == b'-',
                    _ => own == wanted,
                })
    };
    let Some((head, tail)) = text.split_at_checked(19) else {
        return false;
    };
    let offset = tail.strip_prefix('.').map_or(tail, |rest| {
        rest.trim_start_matches(|c: char| c.is_ascii_digit())
    });
    let has_digits = !tail.starts_with('.') || tail.len() > offset.len().saturating_add(1);
    fits(head, "0000-00-00T00:00:00")
        && has_digits
        && (offset.eq_ignore_ascii_case("z")
            || fits(offset, "+00:00")
                && offset.get(1..3).is_some_and(|hours| hours < "24")
                && offset.get(4..).is_some_and(|minutes| minutes < "60"))
}
