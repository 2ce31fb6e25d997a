//! The record: which entries of a journal count, in their order, after repeats, corrections and late captures.

use crate::words::{Exact, moment};
use serde_json::Value;

/// One entry that counts.
#[derive(Clone, Debug)]
pub struct Entry {
    pub seq: u64,
    pub at: Exact,
    pub kind: String,
    pub fields: Value,
}

impl Entry {
    fn read(fields: &Value) -> Self {
        Self {
            seq: fields["seq"].as_u64().expect("the seq"),
            at: moment(fields["at"].as_str().expect("the time")),
            kind: fields["kind"].as_str().expect("the kind").into(),
            fields: fields.clone(),
        }
    }

    pub fn is(&self, kind: &str) -> bool {
        self.kind == kind
    }

    pub fn says(&self, field: &str) -> Option<&str> {
        self.fields[field].as_str()
    }
}

/// The entries that count, in `seq` order; `see` is told what was met on the way.
pub fn entries(journal: &Value, see: &mut dyn FnMut(&str)) -> Vec<Entry> {
    let delivered = journal["entries"].as_array().expect("the entries");
    let mut once = Vec::new();
    for (place, entry) in delivered.iter().enumerate() {
        if is_repeat(entry, &delivered[..place]) {
            see("event: repeated delivery");
            continue;
        }
        let named = |other: &&Value| entry["id"].is_string() && other["id"] == entry["id"];
        if once.iter().any(named) {
            see("event: same id, other content");
        }
        once.push(entry);
    }
    corrected(&once, see).iter().map(Entry::read).collect()
}

/// Delivered before: the same id and the same content in all but `seq`.
fn is_repeat(entry: &Value, earlier: &[Value]) -> bool {
    let content = |entry: &Value| {
        let mut fields = entry.as_object().expect("an entry").clone();
        fields.remove("seq");
        fields
    };
    entry["id"].is_string()
        && earlier
            .iter()
            .any(|other| other["id"] == entry["id"] && content(other) == content(entry))
}

/// What one place of the journal holds once corrected.
#[derive(Clone)]
enum Place {
    AsEntered,
    Void,
    Replaced(Value),
}

/// Corrections are read from the last to the first, so that one which was itself corrected acts as corrected.
fn corrected(entered: &[&Value], see: &mut dyn FnMut(&str)) -> Vec<Value> {
    let mut places = vec![Place::AsEntered; entered.len()];
    for place in (0..entered.len()).rev() {
        let holds = match &places[place] {
            Place::AsEntered => entered[place].clone(),
            Place::Replaced(other) => other.clone(),
            Place::Void => continue,
        };
        if holds["kind"] != "correction" {
            continue;
        }
        let of = (0..place).find(|earlier| entered[*earlier]["seq"] == holds["of"]);
        let Some(of) = of else { continue };
        // Of several living corrections of one entry the last wins, and it was read first.
        if matches!(places[of], Place::AsEntered) {
            if entered[of]["kind"] == "correction" {
                see("event: correction corrected");
            }
            places[of] = match holds["replaces"].is_object() {
                true => Place::Replaced(holds["replaces"].clone()),
                false => Place::Void,
            };
            see(match holds["replaces"].is_object() {
                true => "event: entry replaced",
                false => "event: entry voided",
            });
        }
    }
    let held = |(entered, place): (&&Value, &Place)| match place {
        Place::AsEntered => Some((*entered).clone()),
        Place::Replaced(other) => Some(other.clone()),
        Place::Void => None,
    };
    entered.iter().zip(&places).filter_map(held).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    fn note(seq: u64, text: &str) -> Value {
        json!({"seq": seq, "at": "2024-05-06T08:00:00Z", "kind": "note", "text": text})
    }

    fn correction(seq: u64, of: u64, replaces: Option<Value>) -> Value {
        let mut entry = json!({"seq": seq, "at": "2024-05-06T08:00:00Z", "kind": "correction",
            "of": of, "reason": "slip"});
        match replaces {
            Some(other) => entry["replaces"] = other,
            None => entry["void"] = json!(true),
        }
        entry
    }

    fn notes_left(journal: &[Value]) -> Vec<(u64, String)> {
        entries(&json!({ "entries": journal }), &mut |_| {})
            .iter()
            .filter_map(|entry| Some((entry.seq, entry.says("text")?.into())))
            .collect()
    }

    #[test]
    fn a_voided_correction_leaves_the_entry_as_it_was() {
        let journal = [note(1, "a"), correction(2, 1, None), correction(3, 2, None)];
        assert_eq!(notes_left(&journal), [(1, "a".into())]);
    }

    #[test]
    fn a_replaced_correction_acts_as_its_replacement() {
        let voids = correction(2, 1, None);
        let instead = correction(2, 1, Some(note(1, "b")));
        let journal = [note(1, "a"), voids, correction(3, 2, Some(instead))];
        assert_eq!(notes_left(&journal), [(1, "b".into())]);
    }

    #[test]
    fn the_last_living_correction_wins() {
        let journal = [
            note(1, "a"),
            correction(2, 1, Some(note(1, "b"))),
            correction(3, 1, Some(note(1, "c"))),
            correction(4, 1, None),
            correction(5, 4, None),
        ];
        assert_eq!(notes_left(&journal), [(1, "c".into())]);
    }

    #[test]
    fn a_correction_of_a_later_or_missing_entry_does_nothing() {
        let journal = [
            note(1, "a"),
            correction(2, 3, None),
            note(3, "b"),
            correction(4, 9, None),
        ];
        assert_eq!(notes_left(&journal), [(1, "a".into()), (3, "b".into())]);
    }

    #[test]
    fn only_the_same_content_under_the_same_id_is_a_repeat() {
        let named = |seq, text| {
            let mut entry = note(seq, text);
            entry["id"] = json!("n-1");
            entry
        };
        let journal = [named(1, "a"), named(2, "a"), named(3, "b"), note(4, "a")];
        assert_eq!(
            notes_left(&journal),
            [(1, "a".into()), (3, "b".into()), (4, "a".into())]
        );
    }
}
