//! A document with one thing changed.

use serde_json::{Value, json};
use std::collections::BTreeSet;

/// One document with one thing changed.
pub struct Mutant {
    /// Where, with list places left out and the kind of entry said.
    pub place: String,
    pub what: String,
    pub document: Value,
}

/// What each value is changed to: one of every type, and words that no list has.
fn strangers(own: &Value) -> Vec<Value> {
    let mut all = vec![
        json!(null),
        json!(true),
        json!(false),
        json!(7),
        json!(-1),
        json!(1.5),
        json!(""),
        json!(" "),
        json!("no such word"),
        json!([]),
        json!([7]),
        json!({}),
        json!({"no_such_member": 7}),
    ];
    all.retain(|value| value != own);
    all
}

/// Every mutant of a document whose place and change were not seen before.
pub fn mutants(document: &Value, seen: &mut BTreeSet<String>) -> Vec<Mutant> {
    let mut places = Vec::new();
    gather(document, String::new(), String::new(), &mut places);
    let mut out = Vec::new();
    for (pointer, place) in places {
        let own = document
            .pointer(&pointer)
            .expect("the place is in it")
            .clone();
        let mut add = |what: String, changed: Option<Value>| {
            if seen.insert(format!("{place} {what}")) {
                let mut other = document.clone();
                match changed {
                    Some(value) => *other.pointer_mut(&pointer).expect("it is there") = value,
                    None => remove(&mut other, &pointer),
                }
                out.push(Mutant {
                    place: place.clone(),
                    what,
                    document: other,
                });
            }
        };
        for stranger in strangers(&own) {
            add(format!("becomes {stranger}"), Some(stranger));
        }
        if let Value::Object(members) = &own {
            for (key, value) in [("no_such_member", json!(7)), ("ext", json!([null]))] {
                let mut more = members.clone();
                if more.insert(key.into(), value).is_none() {
                    add(format!("gains {key}"), Some(Value::Object(more)));
                }
            }
        }
        if !pointer.is_empty() {
            add("is gone".into(), None);
        }
    }
    out
}

/// Every place of a document but those inside `ext`, with its spelling; what stands beside it belongs to it.
pub fn gather(value: &Value, pointer: String, mut place: String, out: &mut Vec<(String, String)>) {
    let mut inner = Vec::new();
    match value {
        Value::Object(members) => {
            let kind = members.get("kind").and_then(Value::as_str).unwrap_or("");
            let names: Vec<&str> = members.keys().map(String::as_str).collect();
            place = format!("{place}{kind}{{{}}}", names.join(" "));
            for (key, value) in members.iter().filter(|(key, _)| *key != "ext") {
                inner.push((value, format!("{pointer}/{key}"), format!("{place}.{key}")));
            }
        }
        Value::Array(items) => {
            for (index, item) in items.iter().enumerate() {
                inner.push((item, format!("{pointer}/{index}"), format!("{place}[]")));
            }
        }
        _ => {}
    }
    out.push((pointer, place));
    for (value, pointer, place) in inner {
        gather(value, pointer, place, out);
    }
}

fn remove(document: &mut Value, pointer: &str) {
    let (parent, last) = pointer.rsplit_once('/').expect("it is not the root");
    match document.pointer_mut(parent).expect("it has a parent") {
        Value::Object(members) => {
            members.remove(last);
        }
        Value::Array(items) => {
            items.remove(last.parse().expect("a place in a list"));
        }
        _ => unreachable!("only objects and lists have places"),
    }
}
