//! Which sheet applies, which edition of it is in force, and what changed between two editions.

use super::edition::Procedure;
use super::pack::Pack;
use crate::document::{Limits, Node, Reader, canonical};
use crate::error::{Error, ErrorKind, Fault};
use alloc::borrow::ToOwned;
use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;
use core::str::FromStr;
use jiff::civil::Date;
use serde::Serialize;

/// What the pack holds of a procedure on a day.
#[derive(Debug, Clone)]
#[non_exhaustive]
pub enum InForce<'p> {
    /// This edition.
    One(&'p Procedure),
    /// Two or more that begin on the same day and do not supersede each other.
    Several(Vec<&'p Procedure>),
    /// None of its editions has begun.
    NotYet,
    /// No procedure of this name.
    Unknown,
}

/// What a question for the right sheet finds.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct Selection {
    /// `one`, `several` or `none`; never a best guess.
    pub answer: &'static str,
    /// The sheets that fit.
    pub candidates: Vec<Candidate>,
}

/// One sheet that fits.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct Candidate {
    /// The procedure.
    pub procedure: String,
    /// Its edition.
    pub edition: u32,
    /// The unit to look for on the vehicle, which tells several candidates apart.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub unit: Option<String>,
}

/// One field in which two editions differ.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct Difference {
    /// Its path within the procedure.
    pub field: String,
    /// What the first edition says; absent if nothing.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub from: Option<String>,
    /// What the second edition says; absent if nothing.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub to: Option<String>,
}

impl Pack {
    /// The edition of a procedure in force on a day: the newest that has begun. Without a day, the newest.
    #[must_use]
    pub fn in_force(&self, id: &str, day: Option<Date>) -> InForce<'_> {
        let of_name: Vec<&Procedure> = self.procedures().filter(|sheet| sheet.id == id).collect();
        if of_name.is_empty() {
            return InForce::Unknown;
        }
        let begun = |sheet: &&&Procedure| match (sheet.effective, day) {
            (Some(first), Some(day)) => first <= day,
            _ => true,
        };
        let Some(newest) = of_name
            .iter()
            .filter(begun)
            .map(|sheet| sheet.effective)
            .max()
        else {
            return InForce::NotYet;
        };
        let tied: Vec<&Procedure> = of_name
            .into_iter()
            .filter(|sheet| sheet.effective == newest)
            .collect();
        let standing: Vec<&Procedure> = tied
            .iter()
            .filter(|sheet| {
                !tied
                    .iter()
                    .any(|other| other.supersedes == Some(sheet.edition))
            })
            .copied()
            .collect();
        match standing.as_slice() {
            [one] => InForce::One(one),
            _ => InForce::Several(standing),
        }
    }

    /// The sheets for a vehicle or a unit on a day (`YYYY-MM-DD`), upper and lower case alike.
    ///
    /// # Errors
    /// `conflict` if neither vehicle nor unit is named, `not_a_time` for a bad day.
    pub fn select(
        &self,
        vehicle: Option<&str>,
        unit: Option<&str>,
        day: Option<&str>,
    ) -> Result<Selection, Error> {
        if vehicle.is_none() && unit.is_none() {
            let hint = "name the vehicle, the unit or both";
            return Err(Fault::new(ErrorKind::Conflict)
                .allowed(["vehicle", "unit"])
                .hint(hint)
                .into());
        }
        let day = match day {
            None => None,
            Some(text) => Some(Date::from_str(text).map_err(|_| {
                Fault::new(ErrorKind::NotATime)
                    .got(text)
                    .allowed(["YYYY-MM-DD, as 2024-05-01"])
            })?),
        };
        let same = |a: &str, b: &str| a.to_lowercase() == b.trim().to_lowercase();
        let fits = |sheet: &Procedure| {
            vehicle.is_none_or(|vehicle| sheet.fits.iter().any(|name| same(name, vehicle)))
                && unit
                    .is_none_or(|unit| sheet.unit.as_deref().is_some_and(|name| same(name, unit)))
        };
        let mut names: Vec<&str> = Vec::new();
        for sheet in self.procedures() {
            if !names.contains(&sheet.id.as_str()) {
                names.push(&sheet.id);
            }
        }
        let mut found: Vec<&Procedure> = Vec::new();
        for name in names {
            match self.in_force(name, day) {
                InForce::One(sheet) => found.push(sheet),
                InForce::Several(sheets) => found.extend(sheets),
                InForce::NotYet | InForce::Unknown => {}
            }
        }
        let candidates: Vec<Candidate> = found
            .into_iter()
            .filter(|sheet| fits(sheet))
            .map(|sheet| Candidate {
                procedure: sheet.id.clone(),
                edition: sheet.edition,
                unit: sheet.unit.clone(),
            })
            .collect();
        let answer = match candidates.len() {
            0 => "none",
            1 => "one",
            _ => "several",
        };
        Ok(Selection { answer, candidates })
    }

    /// Where two editions of a procedure differ, field by field, in the order of the sheet.
    ///
    /// # Errors
    /// `unresolved` if the pack lacks one of them.
    pub fn compare(&self, id: &str, from: u32, to: u32) -> Result<Vec<Difference>, Error> {
        let fields = |edition: u32| {
            let sheet = self.procedure(id, edition).ok_or_else(|| {
                let named = format!("{id} edition {edition}");
                let held = self
                    .procedures()
                    .map(|sheet| format!("{} edition {}", sheet.id, sheet.edition));
                Fault::new(ErrorKind::Unresolved).got(&named).allowed(held)
            })?;
            let limits = Limits::default()
                .with_bytes(usize::MAX)
                .with_text(usize::MAX);
            let text = canonical(sheet);
            let mut fields = Vec::new();
            let mut reader = Reader::new(&text, &limits)?;
            if let Some(node) = reader.parse() {
                flatten(&node, String::new(), &mut fields);
            }
            Ok::<_, Error>(fields)
        };
        let (before, after) = (fields(from)?, fields(to)?);
        let value = |fields: &[(String, String)], name: &str| {
            fields
                .iter()
                .find(|(own, _)| own == name)
                .map(|(_, value)| value.clone())
        };
        let gone = before
            .iter()
            .filter(|(name, _)| value(&after, name).is_none());
        let names = after.iter().chain(gone).map(|(name, _)| name);
        Ok(names
            .map(|name| Difference {
                field: name.clone(),
                from: value(&before, name),
                to: value(&after, name),
            })
            .filter(|difference| difference.from != difference.to)
            .collect())
    }
}

/// The leaves of a sheet with their paths.
fn flatten(node: &Node<'_>, path: String, out: &mut Vec<(String, String)>) {
    match node {
        Node::Object(members) => {
            for (key, value) in members {
                let inner = if path.is_empty() {
                    key.to_string()
                } else {
                    format!("{path}.{key}")
                };
                flatten(value, inner, out);
            }
        }
        Node::List(items) => {
            for (index, item) in items.iter().enumerate() {
                flatten(item, format!("{path}[{index}]"), out);
            }
        }
        Node::Text(text) => out.push((path, text.to_string())),
        Node::Integer(value) => out.push((path, value.to_string())),
        Node::Bool(value) => out.push((path, value.to_string())),
        Node::Ext(json) => out.push((path, (*json).to_owned())),
        Node::Null | Node::Number | Node::Refused(_) => {}
    }
}
