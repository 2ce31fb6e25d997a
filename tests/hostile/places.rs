//! Whether a fault stands where it says.

use super::documents::{HEADER, journal_of, note, read, refused, told};
use crate::vector_cases::cases;
use brimline::{Error, ErrorKind, Fault, Journal, Pack};
use serde_json::Value;
use std::fmt::Write;

/// The steps of a path, `entries[3].volume` or `entries[3]["a b"]`; none if a name in it is cut or escaped.
fn pointer(path: &str) -> Option<String> {
    let (mut out, mut rest) = (String::new(), path);
    while !rest.is_empty() {
        let step;
        if let Some(quoted) = rest.strip_prefix("[\"") {
            (step, rest) = quoted.split_once("\"]")?;
        } else if let Some(index) = rest.strip_prefix('[') {
            (step, rest) = index.split_once(']')?;
        } else {
            rest = rest.strip_prefix('.').unwrap_or(rest);
            let end = rest.find(['.', '[']).unwrap_or(rest.len());
            (step, rest) = rest.split_at(end);
        }
        if step.contains(['\\', '…']) {
            return None;
        }
        write!(out, "/{}", step.replace('~', "~0").replace('/', "~1")).ok()?;
    }
    Some(out)
}

/// The innermost value of a document on the way to a path.
fn innermost<'v>(document: &'v Value, path: &str) -> Option<&'v Value> {
    let mut pointer = pointer(path)?;
    loop {
        if let Some(value) = document.pointer(&pointer) {
            return Some(value);
        }
        let end = pointer.rfind('/').expect("the document itself is there");
        pointer.truncate(end);
    }
}

/// What is wrong with the place of a fault.
fn misplaced(text: &str, document: Option<&Value>, fault: &Fault) -> Option<String> {
    let place = match fault.position {
        Some(place) => place,
        None if fault.kind == ErrorKind::Limit => return None,
        None => return Some(format!("{fault}: has no position")),
    };
    let offset = place.offset as usize;
    let Some(rest) = text.get(offset..) else {
        return Some(format!(
            "{fault}: offset {offset} is inside a character or beyond the end"
        ));
    };
    let before = &text[..offset];
    let line = before.matches('\n').count() + 1;
    let column = before.rsplit('\n').next().unwrap_or("").chars().count() + 1;
    if (place.line as usize, place.column as usize) != (line, column) {
        return Some(format!("{fault}: is at line {line}, column {column}"));
    }
    if fault.kind == ErrorKind::Syntax {
        let got = fault.got.as_deref().unwrap_or("");
        return (!rest.starts_with(got)).then(|| format!("{fault}: {rest:?} stands there"));
    }
    let there = serde_json::Deserializer::from_str(rest)
        .into_iter::<Value>()
        .next();
    let (Some(Ok(there)), Some(document)) = (there, document) else {
        return None;
    };
    let wanted = innermost(document, &fault.path)?;
    (there != *wanted).then(|| format!("{fault}: {there} stands there, not {wanted}"))
}

/// A text as another reader sees it, where no member of it stands twice: of two it would see the last alone.
pub fn seen_elsewhere(text: &str) -> Option<Value> {
    let document: Value = serde_json::from_str(text).ok()?;
    let (mut colons, mut quoted, mut escaped) = (0, false, false);
    for letter in text.chars() {
        match letter {
            _ if escaped => escaped = false,
            '\\' => escaped = true,
            '"' => quoted = !quoted,
            ':' if !quoted => colons += 1,
            _ => {}
        }
    }
    (members(&document) == colons).then_some(document)
}

fn members(value: &Value) -> usize {
    match value {
        Value::Object(inner) => inner.len() + inner.values().map(members).sum::<usize>(),
        Value::Array(items) => items.iter().map(members).sum(),
        _ => 0,
    }
}

/// What is wrong with an error: its places, their order, its document form.
pub fn faults_of_the_error(text: &str, document: Option<&Value>, error: &Error) -> Vec<String> {
    let mut wrong: Vec<String> = error
        .faults()
        .filter_map(|fault| misplaced(text, document, fault))
        .collect();
    let offsets: Vec<u32> = error
        .faults()
        .filter_map(|fault| Some(fault.position?.offset))
        .collect();
    if !offsets.is_sorted() {
        wrong.push(format!("not in the order they stand: {error}"));
    }
    if serde_json::from_str::<Value>(&error.to_json()).is_err() {
        wrong.push(format!("no JSON: {}", error.to_json()));
    }
    wrong
}

#[test]
fn every_refusal_of_the_vectors_points_at_its_value() {
    let (mut seen, mut wrong) = (0, Vec::new());
    for case in cases() {
        let args = &case.request.args;
        let text = match case.request.op.as_str() {
            "pack" => &args[0],
            "evaluate" if args[0].is_empty() || Pack::from_json(&args[0]).is_ok() => &args[1],
            _ => continue,
        };
        // Limits of a case's own are told elsewhere.
        if !args[1..].last().is_none_or(String::is_empty) {
            continue;
        }
        let measures = Pack::from_json(&args[0])
            .ok()
            .and_then(|pack| pack.measures());
        let error = match case.request.op.as_str() {
            "pack" => Pack::from_json(text).err(),
            _ => Journal::from_json(text, measures).err(),
        };
        let Some(error) = error else { continue };
        seen += 1;
        let document = seen_elsewhere(text);
        wrong.extend(
            faults_of_the_error(text, document.as_ref(), &error)
                .into_iter()
                .map(|what| format!("{}: {}: {what}", case.file, case.name)),
        );
    }
    assert!(seen > 200, "only {seen} refusals");
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

/// Of two members of one name each keeps its own place.
#[test]
fn a_member_that_stands_twice_is_told_at_its_second_place() {
    let entry =
        r#"{"seq":1,"at":"2026-03-02T09:00:00Z","kind":"added","volume":"0.5","volume":"0.6 L"}"#;
    let text = journal_of(entry);
    let error = refused(read(&text));
    let places: Vec<(&str, &str)> = error
        .faults()
        .map(|fault| {
            let rest = &text[fault.position.expect("it has one").offset as usize..];
            (
                fault.kind.slug(),
                rest.split(['}', ',']).next().expect("something"),
            )
        })
        .collect();
    let wanted = [
        ("unit_missing", "\"0.5\""),
        ("duplicate_field", "\"0.6 L\""),
    ];
    assert_eq!(places, wanted);
}

#[test]
fn a_place_in_json_lines_counts_the_whole_text() {
    let text = format!("{HEADER}\n\n{}\n{{\"seq\":\n", note(1, "é"));
    let error = refused(read(&text));
    let place = error.first().position.expect("it has one");
    assert_eq!(told(&error), [("syntax", "entries[1].seq")]);
    assert_eq!((place.line, place.column), (4, 8));
    assert_eq!(place.offset as usize, text.len() - 1);
}
