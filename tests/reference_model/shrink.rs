//! Shrinking: the shortest journal and the barest pack for which two answers still differ.

use serde_json::Value;

/// Fields whose absence leaves a readable entry, header or sheet.
const OPTIONAL: &[&str] = &[
    "by",
    "id",
    "trend",
    "captured",
    "captured_by",
    "measured_by",
    "fluid",
    "peak",
    "profile",
    "job_id",
    "subject",
    "edition",
    "pack",
    "capacity",
    "total",
    "refill",
    "step",
    "warming",
    "watch",
    "settle",
    "hold_up",
    "lip_band",
    "surface",
    "offset",
    "bias",
    "conditions",
    "engine",
    "selector",
    "temperature",
    "min",
    "max_age",
    "tilt",
    "ranges",
    "dwell",
    "cooler",
    "thermostat",
    "leak_limit",
    "about",
    "counts",
    "effective",
    "supersedes",
    "density_15",
    "replaces",
    "mixes_with",
    "full_exchange_only",
    "never",
    "half_width",
    "source",
];

/// Drops whatever can be dropped from either document while they still differ.
pub fn shortest(
    mut pack: Value,
    mut journal: Value,
    differ: &dyn Fn(&Value, &Value) -> bool,
) -> (Value, Value) {
    loop {
        let (long, wide) = (journal.to_string().len(), pack.to_string().len());
        journal = without_parts(journal, &|journal| differ(&pack, journal));
        pack = without_parts(pack, &|pack| differ(pack, &journal));
        if (journal.to_string().len(), pack.to_string().len()) == (long, wide) {
            return (pack, journal);
        }
    }
}

/// One pass over every array element and optional field, from the last to the first.
fn without_parts(mut whole: Value, keeps: &dyn Fn(&Value) -> bool) -> Value {
    let mut paths = Vec::new();
    removable(&whole, String::new(), &mut paths);
    for path in paths.iter().rev() {
        let mut less = whole.clone();
        if remove(&mut less, path) && keeps(&less) {
            whole = less;
        }
    }
    whole
}

fn removable(value: &Value, path: String, into: &mut Vec<String>) {
    match value {
        Value::Array(items) => {
            for (place, item) in items.iter().enumerate() {
                into.push(format!("{path}/{place}"));
                removable(item, format!("{path}/{place}"), into);
            }
        }
        Value::Object(fields) => {
            for (name, field) in fields {
                if OPTIONAL.contains(&name.as_str()) {
                    into.push(format!("{path}/{name}"));
                }
                removable(field, format!("{path}/{name}"), into);
            }
        }
        _ => {}
    }
}

fn remove(whole: &mut Value, path: &str) -> bool {
    let (parent, last) = path.rsplit_once('/').expect("a path");
    match whole.pointer_mut(parent) {
        Some(Value::Array(items)) => match last.parse::<usize>() {
            Ok(place) if place < items.len() => {
                items.remove(place);
                true
            }
            _ => false,
        },
        Some(Value::Object(fields)) => fields.remove(last).is_some(),
        _ => false,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    #[test]
    fn only_what_makes_the_difference_is_left() {
        let pack = json!({"procedures": [{"id": "a", "leak_limit": {}}, {"id": "b"}]});
        let journal = json!({"entries": [{"seq": 1}, {"seq": 2, "by": "Ines"}, {"seq": 3}]});
        let differ = |pack: &Value, journal: &Value| {
            pack["procedures"]
                .as_array()
                .is_some_and(|all| all.iter().any(|one| one["id"] == "b"))
                && journal["entries"]
                    .as_array()
                    .is_some_and(|all| all.iter().any(|one| one["seq"] == 2))
        };
        let (pack, journal) = shortest(pack, journal, &differ);
        assert_eq!(pack, json!({"procedures": [{"id": "b"}]}));
        assert_eq!(journal, json!({"entries": [{"seq": 2}]}));
    }
}
