//! A document with one thing changed.

use serde_json::{Value, json};
use std::collections::BTreeSet;

/// One document with one thing changed.
pub struct Mutant {
    /// Where, with list places left out and the kind of entry said.
    pub place: String,
    pub what: String,
    /// What stood there.
    pub was: Value,
    /// What stands there instead; nothing where it is gone.
    pub now: Option<Value>,
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
    let mut out = Vec::new();
    for (pointer, place) in gather(document) {
        let own = document
            .pointer(&pointer)
            .expect("the place is in it")
            .clone();
        let mut add = |what: String, changed: Option<Value>| {
            if seen.insert(format!("{place} {what}")) {
                let mut other = document.clone();
                match changed.clone() {
                    Some(value) => *other.pointer_mut(&pointer).expect("it is there") = value,
                    None => remove(&mut other, &pointer),
                }
                out.push(Mutant {
                    place: place.clone(),
                    what,
                    was: own.clone(),
                    now: changed,
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

/// Every place of a document but those inside `ext`: its pointer, and what it is by the fields that lead to it, the
/// kind of the entry, and the members beside it.
fn gather(document: &Value) -> Vec<(String, String)> {
    let mut out = Vec::new();
    below(document, String::new(), "", "", &mut out);
    out
}

fn below(value: &Value, pointer: String, way: &str, place: &str, out: &mut Vec<(String, String)>) {
    match value {
        Value::Object(members) => {
            let kind = members.get("kind").and_then(Value::as_str).unwrap_or("");
            let names: Vec<&str> = members.keys().map(String::as_str).collect();
            let own = format!("{way}{kind}{{{}}}", names.join(" "));
            for (key, value) in members.iter().filter(|(key, _)| *key != "ext") {
                let (way, place) = (format!("{way}{kind}.{key}"), format!("{own}.{key}"));
                below(value, format!("{pointer}/{key}"), &way, &place, out);
            }
            out.push((pointer, own));
        }
        Value::Array(items) => {
            let (way, inner) = (format!("{way}[]"), format!("{place}[]"));
            for (index, item) in items.iter().enumerate() {
                below(item, format!("{pointer}/{index}"), &way, &inner, out);
            }
            out.push((pointer, place.into()));
        }
        _ => out.push((pointer, place.into())),
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
