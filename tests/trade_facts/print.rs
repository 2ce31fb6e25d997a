//! What is printed: equivalents, and slips of the unit.

use super::bay::{pack, sheet};
use brimline::{Amount, Rounding, Unit};
use serde_json::{Value, json};

fn amount(text: &str) -> Amount {
    text.parse().expect("an amount")
}

/// In a unit, to so many places.
pub fn told(text: &str, unit: &str, places: u8) -> String {
    let unit = Unit::parse(unit).expect("a unit");
    let told = amount(text).to(unit, places, Rounding::HalfEven);
    told.expect("of that kind").to_string()
}

/// The classes of printed equivalents, by the linter; common practice, no source, the conversions by definition.
#[test]
fn printed_equivalents_are_told_apart() {
    let found = |changed: &[(&str, Value)]| -> Vec<&'static str> {
        let lint = pack(sheet(changed)).lint();
        let ids = lint.iter().map(|finding| finding.id);
        ids.filter(|id| id.starts_with("print_")).collect()
    };
    let torque = |governing: &str, printed: &[&str]| {
        found(&[("/closing", json!({"torque": governing, "printed": printed}))])
    };
    // 12 N·m is 8.85 lbf·ft and 106.2 lbf·in; 108 is twelve times the rounded 9.
    assert_eq!(torque("12 N·m", &["9 lbf·ft", "106 lbf·in"]), [""; 0]);
    assert_eq!(
        torque("12 N·m", &["9 lbf·ft", "108 lbf·in"]),
        ["print_chain_rounded"]
    );
    assert_eq!(torque("12 N·m", &["108 lbf·in"]), ["print_disagrees"]);
    // 14 N·m is 10.3 lbf·ft and 123.9 lbf·in; as pound-feet the latter is twelve times too much.
    assert_eq!(torque("14 N·m", &["10 lbf·ft", "124 lbf·in"]), [""; 0]);
    assert_eq!(
        torque("14 N·m", &["10 lbf·ft", "120 lbf·in"]),
        ["print_chain_rounded"]
    );
    assert_eq!(torque("14 N·m", &["124 lbf·ft"]), ["print_unit_slip"]);
    // 40 °C is 104 °F, 35 °C to 45 °C is 95 °F to 113 °F.
    let window = |limits: Value| found(&[("/conditions/temperature", limits)]);
    assert_eq!(
        window(json!({"min": "40 °C", "printed": ["104 °F"]})),
        [""; 0]
    );
    let both = json!({"min": "35 °C", "max": "45 °C", "printed": ["95 °F", "113 °F"]});
    assert_eq!(window(both), [""; 0]);
    assert_eq!(
        window(json!({"min": "40 °C", "printed": ["105 °F"]})),
        ["print_disagrees"]
    );
    // 1.5 L and 1.6 qt are printed for each other.
    let leak = |limit: &str, printed: &str| {
        found(&[(
            "/leak_limit",
            json!({"more_than": limit, "printed": [printed]}),
        )])
    };
    assert_eq!(leak("1.5 L", "1.6 US qt"), [""; 0]);
    assert_eq!(leak("1.6 US qt", "1.5 L"), [""; 0]);
    assert_eq!(leak("1.5 L", "1.5 US qt"), ["print_unit_slip"]);
}

/// The slips of the unit and what they come to; the conversions by definition.
#[test]
fn slips_of_the_unit_come_to_this() {
    // Torques: the wrong unit under the right number.
    assert_eq!(told("14 lbf·ft", "N·m", 2), "18.98 N·m");
    assert_eq!(told("124 lbf·ft", "N·m", 0), "168 N·m");
    assert_eq!(told("14 lbf·in", "N·m", 2), "1.58 N·m");
    assert_eq!(told("10 N·m", "lbf·ft", 1), "7.4 lbf·ft");
    assert_eq!(told("1.2 kgf·m", "N·m", 2), "11.77 N·m");
    // Temperatures.
    assert_eq!(told("113 °C", "°F", 0), "235 °F");
    assert_eq!(told("45 °F", "°C", 1), "7.2 °C");
    assert_eq!(amount("-40 °C"), amount("-40 °F"));
    // Half a quart and half a litre, and a quart that weighs about 28 ounces has 32 fluid ounces.
    assert_eq!(told("0.5 US qt", "L", 3), "0.473 L");
    assert_eq!(told("0.5 L", "US qt", 3), "0.528 US qt");
    assert_eq!(amount("1 US qt"), amount("32 US fl oz"));
    assert_eq!(told("1.2 imp qt", "US qt", 2), "1.44 US qt");
}
