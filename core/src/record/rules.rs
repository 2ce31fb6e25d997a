//! From where on something in records is told, and after what a job is looked at again: a shop's own numbers.

use crate::document::{Limits, Node, Object, Reader};
use crate::error::{Error, ErrorKind, Fault};
use crate::quantity::{Amount, Kind, Unit};
use alloc::string::ToString;

const fn km(distance: i64) -> Amount {
    Amount::of_parts(distance, 0, Unit::Kilometre)
}

/// From where on something in many records is told. Every number is common practice, no source, and the host's to change.
///
/// ```
/// use brimline::record::ComebackRules;
/// let rules = ComebackRules::from_json(r#"{"soon_days":30,"soon_distance":"1000 mi"}"#)?;
/// assert_eq!((rules.soon_days, rules.jobs), (30, 5));
/// # Ok::<(), brimline::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
#[non_exhaustive]
pub struct ComebackRules {
    /// Low again within so many days is soon; 90.
    pub soon_days: u32,
    /// Low again within such a distance is soon (length); 5000 km.
    pub soon_distance: Amount,
    /// The least number of temperatures of the fluid, in one job, that are suspicious where all are the same; 3.
    pub readings: u32,
    /// The least number of entries, in one job, whose times are looked at; 5.
    pub entries: u32,
    /// Entries that were all made within so many seconds were made at once; 60.
    pub at_once_seconds: u32,
    /// The least number of jobs of one person whose pours, or looks, are suspicious where all are the same; 5.
    pub jobs: u32,
}

impl Default for ComebackRules {
    fn default() -> Self {
        ComebackRules {
            soon_days: 90,
            soon_distance: km(5000),
            readings: 3,
            entries: 5,
            at_once_seconds: 60,
            jobs: 5,
        }
    }
}

impl ComebackRules {
    /// Reads rules from a JSON object of the names above; what it does not name stays as it is.
    ///
    /// # Errors
    /// Every fault of the document, with path and position.
    pub fn from_json(text: &str) -> Result<Self, Error> {
        const FIELDS: &[&str] = &[
            "soon_days",
            "soon_distance",
            "readings",
            "entries",
            "at_once_seconds",
            "jobs",
        ];
        read(text, FIELDS, |reader, object| {
            let mut rules = ComebackRules::default();
            count(reader, object, "soon_days", 0, &mut rules.soon_days);
            amount(reader, object, "soon_distance", &mut rules.soon_distance);
            count(reader, object, "readings", 2, &mut rules.readings);
            count(reader, object, "entries", 3, &mut rules.entries);
            count(
                reader,
                object,
                "at_once_seconds",
                0,
                &mut rules.at_once_seconds,
            );
            count(reader, object, "jobs", 2, &mut rules.jobs);
            rules
        })
    }
}

/// After what distance and time a job is looked at again. Every value is common practice, no source, and the host's to
/// change.
///
/// ```
/// use brimline::record::FollowUpRules;
/// let rules = FollowUpRules::from_json(r#"{"allowed_shortage":"0.5 US qt"}"#)?;
/// assert_eq!(rules.marginal_distance.to_string(), "500 km");
/// assert!(FollowUpRules::from_json(r#"{"most_distance":"0 km"}"#).is_err());
/// # Ok::<(), brimline::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
#[non_exhaustive]
pub struct FollowUpRules {
    /// The shortage a unit may reach before it is looked at again, where its rate is known (volume, above zero); 0.5 L.
    pub allowed_shortage: Amount,
    /// The distance where a leak reading is close to its limit (length, above zero); 500 km.
    pub marginal_distance: Amount,
    /// The days where it is close to its limit; 14.
    pub marginal_days: u32,
    /// The distance where a unit was short, clearly below its limit, and no rate is known (length, above zero); 2000 km.
    pub short_distance: Amount,
    /// The days for that; 60.
    pub short_days: u32,
    /// The most that a rate may put it off (length, above zero); 10000 km.
    pub most_distance: Amount,
    /// The most days that a rate may put it off; 180.
    pub most_days: u32,
}

impl Default for FollowUpRules {
    fn default() -> Self {
        FollowUpRules {
            allowed_shortage: Amount::of_parts(5, 1, Unit::Litre),
            marginal_distance: km(500),
            marginal_days: 14,
            short_distance: km(2000),
            short_days: 60,
            most_distance: km(10_000),
            most_days: 180,
        }
    }
}

impl FollowUpRules {
    /// Reads rules from a JSON object of the names above; what it does not name stays as it is.
    ///
    /// # Errors
    /// Every fault of the document, with path and position.
    pub fn from_json(text: &str) -> Result<Self, Error> {
        const FIELDS: &[&str] = &[
            "allowed_shortage",
            "marginal_distance",
            "marginal_days",
            "short_distance",
            "short_days",
            "most_distance",
            "most_days",
        ];
        read(text, FIELDS, |reader, object| {
            let mut rules = FollowUpRules::default();
            amount(
                reader,
                object,
                "allowed_shortage",
                &mut rules.allowed_shortage,
            );
            amount(
                reader,
                object,
                "marginal_distance",
                &mut rules.marginal_distance,
            );
            count(reader, object, "marginal_days", 0, &mut rules.marginal_days);
            amount(reader, object, "short_distance", &mut rules.short_distance);
            count(reader, object, "short_days", 0, &mut rules.short_days);
            amount(reader, object, "most_distance", &mut rules.most_distance);
            count(reader, object, "most_days", 0, &mut rules.most_days);
            rules
        })
    }

    /// Every rule that cannot be one, at once.
    pub(super) fn check(&self) -> Result<(), Error> {
        let asked = [
            ("allowed_shortage", self.allowed_shortage, Kind::Volume),
            ("marginal_distance", self.marginal_distance, Kind::Length),
            ("short_distance", self.short_distance, Kind::Length),
            ("most_distance", self.most_distance, Kind::Length),
        ];
        let faults = asked.into_iter().filter_map(|(name, amount, kind)| {
            let fault = if amount.kind() == kind {
                above_zero(amount)?
            } else {
                Fault::new(ErrorKind::WrongKind).allowed([kind.slug()])
            };
            Some(fault.at(name).got(&amount.to_string()))
        });
        Error::from_faults(faults.collect()).map_or(Ok(()), Err)
    }
}

/// What is wrong with an amount that must be above zero.
fn above_zero(amount: Amount) -> Option<Fault> {
    let is_above = !amount.is_negative() && !amount.is_zero();
    let fault = Fault::new(ErrorKind::OutOfRange).got(&amount.to_string());
    (!is_above).then(|| fault.allowed(["above zero"]))
}

fn read<T>(
    text: &str,
    fields: &'static [&'static str],
    rules: impl FnOnce(&mut Reader<'_>, &Object<'_, '_>) -> T,
) -> Result<T, Error> {
    let limits = Limits::default();
    let mut reader = Reader::new(text, &limits)?;
    let node = reader.parse();
    let read = node.and_then(|node| {
        let object = reader.object(&node, fields)?;
        Some(rules(&mut reader, &object))
    });
    reader.finish()?;
    // Rules that read without a fault are there.
    read.ok_or_else(|| Fault::new(ErrorKind::Internal).into())
}

/// Reads a number of at least `least` over the default, if there is one.
fn count(
    reader: &mut Reader<'_>,
    object: &Object<'_, '_>,
    name: &'static str,
    least: i64,
    value: &mut u32,
) {
    let read = reader.optional(object, name, |reader, node| reader.whole(node, least));
    // More than anybody asks for is as good as the most.
    *value = read.map_or(*value, |read| u32::try_from(read).unwrap_or(u32::MAX));
}

/// Reads an amount above zero, of the kind of the default, over it, if there is one.
fn amount(
    reader: &mut Reader<'_>,
    object: &Object<'_, '_>,
    name: &'static str,
    value: &mut Amount,
) {
    let kind = value.kind();
    let read = reader.optional(object, name, |reader, node: &Node<'_>| {
        let amount = reader.amount(node, kind)?;
        match above_zero(amount) {
            Some(fault) => {
                reader.note(fault);
                None
            }
            None => Some(amount),
        }
    });
    *value = read.unwrap_or(*value);
}
