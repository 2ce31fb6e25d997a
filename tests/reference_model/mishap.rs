//! Mishaps: what goes wrong in writing a job down, from lost and swapped entries to corrections of corrections.

use crate::bench::{Bench, GRADES};
use crate::dice::Dice;
use crate::words::time_text;
use serde_json::{Value, json};

/// The entries as they reach the journal, numbered.
pub fn written_down(dice: &mut Dice, sheet: &Value, mut entries: Vec<Value>) -> Vec<Value> {
    for _ in 0..dice.weighted(&[(60, 0), (25, 1), (15, 2)]) {
        if entries.is_empty() {
            break;
        }
        let place = dice.below(entries.len());
        match dice.below(5) {
            0 => drop(entries.remove(place)),
            1 if place > 0 => entries.swap(place, place - 1),
            2 => {
                let some_time = time_text(1_714_980_000 + dice.below(90_000) as i64, 0);
                let fraction = dice.pick(&["Z", ".5Z", ".250Z"]);
                entries[place]["at"] = json!(some_time.replace('Z', fraction));
            }
            _ => {
                let stray = stray(dice, sheet, &entries[place]);
                entries.insert(place, stray);
            }
        }
    }
    number(dice, &mut entries);
    for _ in 0..dice.weighted(&[(70, 0), (12, 1), (8, 2), (6, 3), (4, 5)]) {
        correct(dice, sheet, &mut entries);
    }
    if dice.chance(12) {
        repeat(dice, &mut entries);
    }
    entries
}

/// Any entry, written at the time of its neighbour.
fn stray(dice: &mut Dice, sheet: &Value, neighbour: &Value) -> Value {
    let mut bench = Bench {
        dice,
        sheet,
        entries: Vec::new(),
        clock: 0,
        east: 0,
    };
    let mut entry = bench.anything();
    entry["at"] = neighbour["at"].clone();
    entry
}

/// Rising numbers with gaps between them.
fn number(dice: &mut Dice, entries: &mut [Value]) {
    let mut seq = 0;
    for entry in entries {
        seq += 1 + dice.below(4);
        entry["seq"] = json!(seq);
        if dice.chance(10) {
            entry["by"] = json!("Ines");
        }
        if dice.chance(10) {
            entry["id"] = json!(format!("entry-{seq}"));
        }
    }
}

/// Puts an entry where a number is free for it, at the end if nowhere else.
fn put(dice: &mut Dice, entries: &mut Vec<Value>, mut entry: Value, after: usize) {
    let seq_at =
        |entries: &[Value], place: usize| entries[place]["seq"].as_u64().expect("numbered");
    let last = entries.len() - 1;
    let gaps: Vec<usize> = (after..last)
        .filter(|place| seq_at(entries, *place) + 1 < seq_at(entries, place + 1))
        .collect();
    let place = match dice.below(gaps.len() + 1) {
        at if at < gaps.len() => gaps[at],
        _ => last,
    };
    entry["seq"] = json!(seq_at(entries, place) + 1);
    entries.insert(place + 1, entry);
}

fn correct(dice: &mut Dice, sheet: &Value, entries: &mut Vec<Value>) {
    if entries.is_empty() {
        return;
    }
    // As often as not a correction is what gets corrected.
    let corrections: Vec<usize> = (0..entries.len())
        .filter(|place| entries[*place]["kind"] == "correction")
        .collect();
    let place = match corrections.is_empty() || dice.chance(50) {
        true => dice.below(entries.len()),
        false => corrections[dice.below(corrections.len())],
    };
    let of = entries[place].clone();
    let mut entry = json!({"kind": "correction", "of": of["seq"], "reason": "slip of the pen",
        "at": of["at"]});
    match dice.below(3) {
        0 => entry["void"] = json!(true),
        _ => entry["replaces"] = instead(dice, sheet, entries, &of),
    }
    if dice.chance(4) {
        let elsewhere = json!(dice.weighted(&[(1, 999), (1, 10)]));
        if let Some(replaces) = entry.get_mut("replaces") {
            replaces["seq"] = elsewhere.clone();
        }
        entry["of"] = elsewhere;
    }
    put(dice, entries, entry, place);
}

/// What should have been written: the same with another value, another correction, or something else.
fn instead(dice: &mut Dice, sheet: &Value, entries: &[Value], of: &Value) -> Value {
    let mut other = of.clone();
    match of["kind"].as_str() {
        Some("flow") => other["grade"] = json!(dice.pick(GRADES)),
        Some("added" | "drained") if !of["volume"].is_null() => {
            other["volume"] = json!(dice.pick(&["0.2 L", "0.75 US qt", "-0.1 L"]));
        }
        Some("correction") => {
            other = json!({"kind": "correction", "of": of["of"], "void": true, "reason": "meant this",
                "at": of["at"], "seq": of["seq"]});
            let earlier = entries.iter().find(|entry| entry["seq"] == of["of"]);
            if let Some(earlier) = earlier.filter(|_| dice.chance(60)) {
                let fields = other.as_object_mut().expect("an entry");
                fields.remove("void");
                fields.insert("replaces".into(), instead_of_fact(dice, sheet, earlier));
            }
        }
        _ => other = instead_of_fact(dice, sheet, of),
    }
    other["seq"] = of["seq"].clone();
    other
}

fn instead_of_fact(dice: &mut Dice, sheet: &Value, of: &Value) -> Value {
    let mut other = stray(dice, sheet, of);
    other["seq"] = of["seq"].clone();
    other
}

/// The host sends an entry again, or another under a name already used.
fn repeat(dice: &mut Dice, entries: &mut Vec<Value>) {
    if entries.is_empty() {
        return;
    }
    let place = dice.below(entries.len());
    entries[place]["id"] = json!("sent-twice");
    let mut again = entries[place].clone();
    if dice.chance(25) {
        again["by"] = json!("somebody else");
    }
    put(dice, entries, again, place);
}
