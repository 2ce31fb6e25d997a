//! The table of units: definitions, numbers, symbols, and names that measures decide.

use super::nearest::{is_nearest, nearest};
use crate::quantity_definitions::definition;
use brimline::{Amount, ErrorKind, Kind, Measures, Unit, convert};
use std::collections::BTreeSet;

#[test]
fn every_unit_is_its_definition() {
    for unit in Unit::ALL {
        let (size, zero) = definition(*unit);
        // In millionths, so that a temperature's zero shows.
        let one = Amount::parse(&format!("1 {unit}")).unwrap();
        if unit.kind() != Kind::Angle {
            assert_eq!(one.si(), nearest(&(&size + &zero)), "1 {unit} in SI");
        }
        for other in Unit::ALL.iter().filter(|other| other.kind() == unit.kind()) {
            let (other_size, other_zero) = definition(*other);
            let exact = (&size + &zero - other_zero) / other_size;
            assert!(
                is_nearest(&exact, convert(1.0, *unit, *other).unwrap()),
                "1 {unit} in {other}"
            );
        }
    }
}

#[test]
fn units_are_one_table() {
    let mut seen = BTreeSet::new();
    for (position, unit) in Unit::ALL.iter().enumerate() {
        assert_eq!(usize::from(unit.code()), position + 1);
        assert_eq!(Unit::from_code(unit.code()), Some(*unit));
        assert_eq!(Unit::parse(unit.symbol()).unwrap(), *unit);
        assert_eq!(unit.symbol().parse::<Unit>().unwrap(), *unit);
        assert!(seen.insert(unit.symbol()), "{unit} stands twice");
    }
    assert_eq!(Unit::from_code(0), None);
    assert_eq!(Unit::from_code(Unit::ALL.len() as u16 + 1), None);
    // The numbers cross borders: these never change.
    assert_eq!(
        [
            Unit::Litre,
            Unit::UsQuart,
            Unit::NewtonMetre,
            Unit::DecinewtonMetre
        ]
        .map(Unit::code),
        [1, 7, 14, 51]
    );
}

#[test]
fn other_capitals_are_never_another_unit() {
    for unit in Unit::ALL {
        let symbol = unit.symbol();
        for text in [
            symbol.to_lowercase(),
            symbol.to_uppercase(),
            symbol.replace('k', "K"),
            symbol.replace('m', "M"),
        ] {
            if let Ok(read) = Unit::parse(&text) {
                assert_eq!(read, *unit, "{text}");
            }
        }
    }
}

#[test]
fn measures_decide_bare_names() {
    let read = |measures| Unit::parse_as("qt", None, measures).unwrap();
    assert_eq!(read(Measures::Us), Unit::UsQuart);
    assert_eq!(read(Measures::Imperial), Unit::ImperialQuart);
    let refused = Unit::parse_as("oz", Kind::Volume, Measures::Us).unwrap_err();
    assert_eq!(refused.kind(), ErrorKind::UnitAmbiguous);
    assert_eq!(refused.first().allowed, ["US fl oz", "imp fl oz"]);
    assert_eq!(refused.first().got.as_deref(), Some("oz"));
}
