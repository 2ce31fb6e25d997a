//! Whether an answer has what a case expects of it.

use serde_json::Value;

/// What of the expected value is not in the answer, by path; nothing if all of it is.
///
/// `{"near": "66.7 lbf·in", "within": "0.05"}` stands for any number of that unit so close to it;
/// `{"has": […]}` for a list that has something to match each of these, in any order.
pub fn missing(expected: &Value, answer: &Value, path: &str) -> Vec<String> {
    match (expected, answer) {
        (Value::Object(members), given) if members.contains_key("near") => {
            if is_near(members, given) {
                Vec::new()
            } else {
                vec![format!("{path}: expected {expected}, got {given}")]
            }
        }
        (Value::Object(members), Value::Array(given)) if members.contains_key("has") => {
            let wanted = members["has"].as_array().expect("has is a list");
            let found = |item: &Value| given.iter().any(|g| missing(item, g, path).is_empty());
            let lacking = wanted.iter().filter(|item| !found(item));
            lacking
                .map(|item| format!("{path}: no {item} among {answer}"))
                .collect()
        }
        (Value::Object(members), Value::Object(given)) => members
            .iter()
            .flat_map(|(key, value)| {
                missing(
                    value,
                    given.get(key).unwrap_or(&Value::Null),
                    &format!("{path}.{key}"),
                )
            })
            .collect(),
        (Value::Array(items), Value::Array(given)) if items.len() == given.len() => items
            .iter()
            .zip(given)
            .enumerate()
            .flat_map(|(index, (item, given))| missing(item, given, &format!("{path}[{index}]")))
            .collect(),
        _ if expected == answer => Vec::new(),
        _ => vec![format!("{path}: expected {expected}, got {answer}")],
    }
}

fn is_near(expected: &serde_json::Map<String, Value>, given: &Value) -> bool {
    let text = |name: &str| expected.get(name).and_then(Value::as_str);
    let (Some(near), Some(within)) = (text("near"), text("within")) else {
        panic!("near stands with within, both texts: {expected:?}");
    };
    let parts = |text: &str| -> (f64, String) {
        let (number, unit) = text.split_once(' ').unwrap_or((text, "ratio"));
        let number = number
            .parse()
            .unwrap_or_else(|_| panic!("no number: {text}"));
        (number, unit.to_string())
    };
    let within: f64 = within.parse().expect("within is a number");
    let (near, unit) = parts(near);
    let Some((given, of)) = given.as_str().map(parts) else {
        return false;
    };
    // A printed tolerance is decimal; the last bits of a double are not.
    of == unit && (given - near).abs() <= within * (1.0 + 1e-9) + 1e-15
}
