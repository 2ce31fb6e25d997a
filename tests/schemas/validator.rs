//! The schemas, and what a general-purpose validator says by them.

use crate::vector_cases::root;
use jsonschema::{Retrieve, Uri, Validator};
use serde_json::{Map, Value};
use std::error::Error;
use std::fs;

pub fn schema(name: &str) -> Value {
    let path = root().join(format!("core/schemas/{name}.schema.json"));
    let text = fs::read_to_string(path).expect("the schema reads");
    serde_json::from_str(&text).expect("a schema is JSON")
}

/// The names of all schemas.
pub fn names() -> Vec<String> {
    let files = fs::read_dir(root().join("core/schemas")).expect("the folder of schemas is there");
    let names = files.filter_map(|file| {
        let name = file.expect("a folder lists").file_name().into_string();
        Some(name.ok()?.strip_suffix(".schema.json")?.to_string())
    });
    let mut names: Vec<String> = names.collect();
    names.sort();
    names
}

/// A schema that another one names: `urn:brimline:schema:journal:1`.
struct Own;

impl Retrieve for Own {
    fn retrieve(&self, uri: &Uri<String>) -> Result<Value, Box<dyn Error + Send + Sync>> {
        let name = uri.as_str().split(':').nth(3).ok_or("no schema of ours")?;
        Ok(schema(name))
    }
}

pub fn validator(schema: &Value) -> Validator {
    jsonschema::draft202012::options()
        .should_validate_formats(true)
        .with_retriever(Own)
        .build(schema)
        .expect("a schema is one of draft 2020-12")
}

/// What the validator says against a document.
pub fn said(validator: &Validator, document: &Value) -> Vec<String> {
    validator
        .iter_errors(document)
        .map(|error| format!("{}: {error}", error.instance_path()))
        .collect()
}

pub fn assert_none(failures: Vec<String>) {
    assert!(
        failures.is_empty(),
        "{} failures:\n{}",
        failures.len(),
        failures.join("\n")
    );
}

pub fn each_object(value: &Value, act: &mut dyn FnMut(&Map<String, Value>)) {
    match value {
        Value::Object(members) => {
            act(members);
            members.values().for_each(|value| each_object(value, act));
        }
        Value::Array(items) => items.iter().for_each(|value| each_object(value, act)),
        _ => {}
    }
}
