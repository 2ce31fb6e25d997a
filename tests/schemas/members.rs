//! The members of a schema's objects, held to documents that have them.

use super::validator::{each_object, schema};
use serde_json::{Map, Value};
use std::collections::BTreeSet;

/// A member of an object of a schema, by the object itself.
type Member<'s> = (*const Map<String, Value>, &'s str);

/// Which members stood in a document, and which were absent where they might have stood.
#[derive(Default)]
struct Seen<'s> {
    there: BTreeSet<Member<'s>>,
    absent: BTreeSet<Member<'s>>,
}

/// The members of a schema that no document has; those beside them that may be absent, and that every document has.
pub fn shown(name: &str, documents: &[Value]) -> (Vec<String>, Vec<String>) {
    let schema = schema(name);
    let mut seen = Seen::default();
    for document in documents {
        mark(&schema, "", document, &mut seen);
    }
    let (mut unused, mut always_there) = (Vec::new(), Vec::new());
    each_object(&schema, &mut |object| {
        let required = object.get("required").and_then(Value::as_array);
        for member in members(object).into_iter().flat_map(Map::keys) {
            let own = (std::ptr::from_ref(object), member.as_str());
            let is_required = required.is_some_and(|all| all.iter().any(|one| one == member));
            if !seen.there.contains(&own) {
                unused.push(format!("{name}: no document has {member} of {object:?}"));
            } else if !is_required && !seen.absent.contains(&own) {
                always_there.push(format!("{name}: {member} is always there: {object:?}"));
            }
        }
    });
    (unused, always_there)
}

/// The members of an object of values; a condition has some as well, which are no object's.
fn members(object: &Map<String, Value>) -> Option<&Map<String, Value>> {
    object.get("type")?;
    object.get("properties")?.as_object()
}

/// Marks the members of a schema that a value has, and those it has not. Another schema's are not looked at.
fn mark<'s>(root: &'s Value, place: &str, value: &Value, seen: &mut Seen<'s>) {
    let schema = root.pointer(place).expect("the place is in the schema");
    if let Some(target) = schema["$ref"].as_str() {
        if let Some(target) = target.strip_prefix('#') {
            mark(root, target, value, seen);
        }
        return;
    }
    // Of the kinds of entry, the one it is.
    if let (Some(kinds), Some(kind)) = (schema["oneOf"].as_array(), value["kind"].as_str()) {
        let targets = kinds.iter().filter_map(|kind| kind["$ref"].as_str());
        for target in targets.filter(|target| target.ends_with(&format!("entry_{kind}"))) {
            mark(root, target.trim_start_matches('#'), value, seen);
        }
        if schema.get("properties").is_none() {
            return;
        }
    }
    let object = schema.as_object().expect("a schema is an object");
    for (member, _) in members(object).into_iter().flatten() {
        let own = (std::ptr::from_ref(object), member.as_str());
        match value.get(member) {
            Some(value) => {
                seen.there.insert(own);
                mark(root, &format!("{place}/properties/{member}"), value, seen);
            }
            None => drop(seen.absent.insert(own)),
        }
    }
    for item in value.as_array().into_iter().flatten() {
        if schema["items"].is_object() {
            mark(root, &format!("{place}/items"), item, seen);
        }
    }
}
