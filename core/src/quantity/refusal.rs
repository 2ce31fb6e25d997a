//! The faults of this room: what was wrong with a text or an operation, and what would do.

use super::kind::Kind;
use super::spelling::{self, Meaning, Refused};
use super::unit::Unit;
use crate::error::{ErrorKind, Fault};
use alloc::borrow::Cow;
use alloc::format;
use alloc::string::String;
use alloc::vec;
use alloc::vec::Vec;

/// The name of a kind in a sentence.
fn spoken(kind: Kind) -> String {
    kind.slug().replace('_', " ")
}

/// The symbols of a kind's units.
pub(super) fn symbols(kind: Kind) -> impl Iterator<Item = &'static str> {
    Unit::ALL
        .iter()
        .filter(move |unit| unit.kind() == kind)
        .map(|unit| unit.symbol())
}

/// A text that is not a unit here.
pub(super) fn of_unit(text: &str, refused: Refused, kind: Option<Kind>) -> Fault {
    match refused {
        Refused::Missing => of_missing_unit(kind),
        Refused::Unknown => of_unknown_unit(text, kind),
        Refused::Letters(meaning) => Fault::new(ErrorKind::UnitAmbiguous)
            .allowed(candidates(meaning))
            .hint("capital and small letters tell units apart: m is metre or milli, M is mega"),
        Refused::Bare { us, imperial } => Fault::new(ErrorKind::UnitAmbiguous)
            .allowed([us.symbol(), imperial.symbol()])
            .hint("say US or imp, or declare measures: us or imperial"),
        Refused::Within(unit) => match kind {
            Some(kind) => of_wrong_kind(kind, unit),
            None => Fault::new(ErrorKind::UnitAmbiguous)
                .allowed([unit.symbol()])
                .hint(format!(
                    "read as {unit} only where a {} is expected",
                    spoken(unit.kind())
                )),
        },
        Refused::Listed(listed) => {
            let fault = Fault::new(listed.kind).hint(listed.hint);
            match kind {
                Some(kind)
                    if !listed
                        .allowed
                        .iter()
                        .any(|symbol| symbols(kind).any(|own| own == *symbol)) =>
                {
                    fault.allowed(symbols(kind))
                }
                _ => fault.allowed(listed.allowed.iter().copied()),
            }
        }
        Refused::WrongKind(unit) => match kind {
            Some(kind) => of_wrong_kind(kind, unit),
            None => of_unknown_unit(text, None),
        },
    }
}

fn candidates(meaning: Meaning) -> Vec<Cow<'static, str>> {
    match meaning {
        Meaning::Unit(unit) | Meaning::Within(unit) => vec![unit.symbol().into()],
        Meaning::Bare { us, imperial } => vec![us.symbol().into(), imperial.symbol().into()],
        Meaning::Refused(listed) => listed.allowed.iter().copied().map(Cow::from).collect(),
    }
}

/// A number that stands alone.
pub(super) fn of_missing_unit(kind: Option<Kind>) -> Fault {
    let fault = Fault::new(ErrorKind::UnitMissing);
    match kind {
        Some(kind) => fault.allowed(symbols(kind)).hint(format!(
            "write the unit of the {} after the number",
            spoken(kind)
        )),
        None => fault.hint("write the unit after the number, as in 1.5 L"),
    }
}

fn of_unknown_unit(text: &str, kind: Option<Kind>) -> Fault {
    let fault = Fault::new(ErrorKind::UnitUnknown);
    let near = nearest(text, kind);
    match kind {
        Some(Kind::TemperatureDifference) if text.contains('/') => fault.allowed(symbols(Kind::TemperatureDifference)).hint(
            "write a difference: where a name ends in per_minute, that of one minute, as in 1.5 °C",
        ),
        _ if !near.is_empty() => fault.allowed(near).hint("the nearest names are listed"),
        Some(kind) => fault.allowed(symbols(kind)),
        None => fault.hint("units are written as L, mL, US qt, N·m, lbf·ft, °C, kPa, min"),
    }
}

/// Words for the slips that cross kinds most often: expected kind, found kind, what to say.
const SLIPS: &[(Kind, Kind, &str)] = &[
    (
        Kind::Torque,
        Kind::Mass,
        "a mass is not a torque: name the arm too, as in lbf·ft, lbf·in or kgf·m",
    ),
    (Kind::Torque, Kind::Length, "a length alone is not a torque"),
    (
        Kind::Volume,
        Kind::Mass,
        "a mass is not a volume: weigh into a field that takes a mass",
    ),
    (
        Kind::Mass,
        Kind::Volume,
        "a volume is not a mass: measure into a field that takes a volume",
    ),
    (Kind::Time, Kind::Length, "m is the metre; minutes are min"),
    (
        Kind::Length,
        Kind::Time,
        "min is the minute; the metre is m, the inch in",
    ),
    (
        Kind::Temperature,
        Kind::Angle,
        "degrees of temperature need their scale: °C or °F",
    ),
    (
        Kind::TemperatureDifference,
        Kind::Angle,
        "degrees of temperature need their scale: °C or °F",
    ),
    (
        Kind::Temperature,
        Kind::TemperatureDifference,
        "a difference of temperatures is not a temperature",
    ),
    (
        Kind::TemperatureDifference,
        Kind::Temperature,
        "a temperature is not a difference of temperatures",
    ),
    (
        Kind::AbsolutePressure,
        Kind::Pressure,
        "this is a gauge pressure: add that of the air, and write abs",
    ),
    (
        Kind::Pressure,
        Kind::AbsolutePressure,
        "this is an absolute pressure: take off that of the air",
    ),
];

/// A unit of another kind than the one expected.
pub(super) fn of_wrong_kind(expected: Kind, found: Unit) -> Fault {
    let slip = SLIPS
        .iter()
        .find(|(wanted, got, _)| *wanted == expected && *got == found.kind());
    let hint = match slip {
        Some((_, _, words)) => Cow::from(*words),
        None => format!(
            "{found} is a unit of {}, not of {}",
            spoken(found.kind()),
            spoken(expected)
        )
        .into(),
    };
    Fault::new(ErrorKind::WrongKind)
        .got(found.symbol())
        .allowed(symbols(expected))
        .hint(hint)
}

/// More digits than an amount holds.
pub(super) fn of_digits() -> Fault {
    Fault::new(ErrorKind::TooManyDigits)
        .hint("an amount holds at most 15 digits, 9 of them decimals")
}

/// A result that does not end within nine decimals.
pub(super) fn of_endless(unit: Unit) -> Fault {
    Fault::new(ErrorKind::TooManyDigits)
        .hint(format!("the exact result does not end within 15 digits in {unit}: convert one of them with a stated rounding first"))
}

/// A result too large for an amount.
pub(super) fn of_range() -> Fault {
    Fault::new(ErrorKind::OutOfRange)
        .hint("an amount holds at most 15 digits before the decimal point")
}

/// Up to three units whose names are nearest to a text.
fn nearest(text: &str, kind: Option<Kind>) -> Vec<&'static str> {
    let Some(typed) = spelling::normal_form(text) else {
        return Vec::new();
    };
    let reach = match typed.len() {
        0..=1 => 0,
        2..=4 => 1,
        _ => 2,
    };
    let mut found: Vec<(usize, Unit)> = Vec::new();
    for (name, meaning) in spelling::all() {
        let (units, count) = match meaning {
            Meaning::Unit(unit) => ([unit, unit], 1),
            Meaning::Bare { us, imperial } => ([us, imperial], 2),
            Meaning::Within(_) | Meaning::Refused(_) => continue,
        };
        let distance = distance(&typed, &name.to_ascii_lowercase());
        if distance > reach {
            continue;
        }
        for unit in units.into_iter().take(count) {
            if kind.is_none_or(|kind| unit.kind() == kind) {
                match found.iter_mut().find(|(_, known)| *known == unit) {
                    Some((known, _)) => *known = distance.min(*known),
                    None => found.push((distance, unit)),
                }
            }
        }
    }
    found.sort();
    found
        .into_iter()
        .take(3)
        .map(|(_, unit)| unit.symbol())
        .collect()
}

/// How many letters are to be changed, added, dropped or swapped with their neighbour.
fn distance(one: &str, other: &str) -> usize {
    let other: Vec<u8> = other.bytes().collect();
    let mut before: Vec<usize> = Vec::new();
    let mut row: Vec<usize> = (0..=other.len()).collect();
    let mut last = None;
    for (line, letter) in one.bytes().enumerate() {
        let mut next = vec![line.saturating_add(1)];
        let mut left = None;
        for (column, target) in other.iter().copied().enumerate() {
            let at =
                |cells: &[usize], column: usize| cells.get(column).copied().unwrap_or(usize::MAX);
            let after = column.saturating_add(1);
            let changed = at(&row, column).saturating_add(usize::from(letter != target));
            let mut best = changed
                .min(at(&row, after).saturating_add(1))
                .min(at(&next, column).saturating_add(1));
            if last == Some(target) && left == Some(letter) {
                best = best.min(at(&before, column.saturating_sub(1)).saturating_add(1));
            }
            next.push(best);
            left = Some(target);
        }
        before = core::mem::replace(&mut row, next);
        last = Some(letter);
    }
    row.last().copied().unwrap_or_default()
}

/// What a person is told of a text that is not a plain number.
pub(super) fn of_number(hint: impl Into<Cow<'static, str>>) -> Fault {
    Fault::new(ErrorKind::NotANumber).hint(hint)
}

/// A comma in a number, with the readings it may have.
pub(super) fn of_comma(readings: Vec<String>) -> Fault {
    Fault::new(ErrorKind::DecimalComma)
        .allowed(readings)
        .hint("write the decimal sign as a point, and no thousands separators")
}
