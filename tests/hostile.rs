//! Documents that are cut off, shuffled, huge, deep or garbage: every fault with its place, bounded cost, no panic.

mod document_corpus;
mod vector_cases;

use allocation_counter::measure;
use brimline::{Error, ErrorKind, Fault, Journal, LevelCheck, Limits, Pack, evaluate};
use document_corpus::{
    accepted_journals, accepted_packs, assembled, fullest_journal, fullest_pack,
};
use proptest::prelude::*;
use proptest::test_runner::TestRunner;
use serde_json::Value;
use std::fmt::Write;
use std::thread;
use vector_cases::{answer, cases};

const HEADER: &str = r#"{"format":"brimline-journal/1","procedure":"pipit-level","job":"check"}"#;

fn journal_of(entries: &str) -> String {
    let header = HEADER.trim_end_matches('}');
    format!("{header},\"entries\":[{entries}]}}")
}

fn note(seq: usize, text: &str) -> String {
    format!(r#"{{"seq":{seq},"at":"2026-03-02T09:00:00Z","kind":"note","text":"{text}"}}"#)
}

fn notes(count: usize, text: &str) -> String {
    let entries: Vec<String> = (0..count).map(|seq| note(seq, text)).collect();
    journal_of(&entries.join(","))
}

fn read(text: &str) -> Result<Journal, Error> {
    Journal::from_json(text, None)
}

fn read_with(text: &str, limits: &Limits) -> Result<Journal, Error> {
    Journal::from_json_with(text, None, limits)
}

/// The slugs and paths of every fault.
fn told(error: &Error) -> Vec<(&'static str, &str)> {
    error
        .faults()
        .map(|fault| (fault.kind.slug(), fault.path.as_str()))
        .collect()
}

fn refused<T: std::fmt::Debug>(read: Result<T, Error>) -> Error {
    read.expect_err("this is to be refused")
}

/// Nested lists, this many of them.
fn nested(depth: usize) -> String {
    "[".repeat(depth) + &"]".repeat(depth)
}

/// On the stack a spawned thread of this many bytes has.
fn on_a_stack_of(bytes: usize, act: impl FnOnce() + Send + 'static) {
    let thread = thread::Builder::new().stack_size(bytes).spawn(act);
    thread
        .expect("a thread starts")
        .join()
        .expect("it ends well");
}

// Places.

/// The steps of a path: `entries[3].volume`.
fn pointer(path: &str) -> String {
    let mut out = String::new();
    for step in path.split(['.', '[']).filter(|step| !step.is_empty()) {
        write!(out, "/{}", step.trim_end_matches(']')).expect("a text can be written");
    }
    out
}

/// The innermost value of a document on the way to a path.
fn innermost<'v>(document: &'v Value, path: &str) -> &'v Value {
    let mut pointer = pointer(path);
    loop {
        if let Some(value) = document.pointer(&pointer) {
            return value;
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
    let wanted = innermost(document, &fault.path);
    (there != *wanted).then(|| format!("{fault}: {there} stands there, not {wanted}"))
}

/// What is wrong with an error: its places, their order, its document form.
fn faults_of_the_error(text: &str, document: Option<&Value>, error: &Error) -> Vec<String> {
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
        let document = serde_json::from_str(text).ok();
        // A member that stands twice is the last of them elsewhere.
        let twice = error
            .faults()
            .any(|fault| fault.kind == ErrorKind::DuplicateField);
        let document = document.as_ref().filter(|_| !twice);
        wrong.extend(
            faults_of_the_error(text, document, &error)
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

// Cut off.

/// The byte places at which a text can be cut.
fn cuts(text: &str) -> impl Iterator<Item = &str> {
    (0..text.len())
        .filter(|end| text.is_char_boundary(*end))
        .map(|end| &text[..end])
}

#[test]
fn every_beginning_of_a_document_is_refused() {
    for text in [
        fullest_journal(),
        fullest_pack(),
        document_corpus::embedded_pack(),
    ] {
        let is_pack = text.contains("brimline-pack");
        // White space at the end is nothing that can be cut off.
        for cut in cuts(text.trim_end()) {
            let error = match is_pack {
                true => refused(Pack::from_json(cut)),
                false => refused(read(cut)),
            };
            assert_eq!(error.kind(), ErrorKind::Syntax, "{cut}");
            assert_eq!(faults_of_the_error(cut, None, &error), [""; 0], "{cut}");
        }
    }
}

#[test]
fn every_beginning_of_json_lines_keeps_its_whole_lines() {
    let document = assembled(&fullest_journal());
    let mut header = document.clone();
    let entries = header["entries"].take();
    header.as_object_mut().expect("an object").remove("entries");
    let entries = entries.as_array().expect("a list");
    let mut text = format!("{header}\n");
    for entry in entries {
        writeln!(text, "{entry}").expect("a text can be written");
    }
    let first_line = text.find('\n').expect("it has lines");
    for cut in cuts(&text) {
        let read = Journal::from_json(cut, Some(brimline::Measures::Us));
        if cut.len() <= first_line {
            // Without its line feed the header may be the beginning of something else.
            assert!(read.is_err(), "{cut}");
            continue;
        }
        let journal = read.unwrap_or_else(|error| panic!("{error}: {cut}"));
        let whole = cut[first_line..]
            .lines()
            .filter(|line| serde_json::from_str::<Value>(line).is_ok())
            .count();
        assert_eq!(journal.entries().len(), whole, "{cut}");
        let last = cut.rsplit('\n').next().expect("a line");
        let torn = serde_json::from_str::<Value>(last)
            .is_err()
            .then_some(last.len());
        let pack = Pack::embedded().expect("it reads");
        let result: Value =
            serde_json::from_str(&evaluate(&pack, &journal).expect("it was read").to_json())
                .expect("JSON");
        let bytes = result["findings"]
            .as_array()
            .expect("a list")
            .iter()
            .find(|finding| finding["id"] == "torn_line")
            .map(|finding| finding["args"]["bytes"].clone());
        let wanted = torn.filter(|bytes| *bytes > 0).map(Value::from);
        assert_eq!(bytes, wanted, "{cut}");
    }
}

/// Only the last line can be torn, and only what is no JSON is torn.
#[test]
fn a_bad_line_before_the_last_is_refused() {
    let (first, last) = (note(1, "a"), note(3, "c"));
    let text = format!("{HEADER}\n{first}\n{{\"seq\":2,\"at\n{last}\n");
    let error = refused(read(&text));
    assert_eq!(told(&error), [("syntax", "entries[1]")]);
    let error = refused(read(&format!("{HEADER}\n{first}\n[2]")));
    assert_eq!(told(&error), [("wrong_type", "entries[1]")]);
    // A line that was ended is not torn.
    let error = refused(read(&format!("{HEADER}\n{first}\n{{\"seq\":2\n")));
    assert_eq!(told(&error), [("syntax", "entries[1]")]);
}

// Out of order.

#[test]
fn every_break_of_the_order_is_told() {
    let mut runner = TestRunner::deterministic();
    let orders = Just((1..=12_usize).collect::<Vec<_>>()).prop_shuffle();
    runner
        .run(&(orders, any::<bool>()), |(order, spoilt)| {
            // A fault in an entry does not hide that it is out of its order.
            let text = if spoilt { "" } else { "said" };
            let entries: Vec<String> = order.iter().map(|seq| note(*seq, text)).collect();
            let mut wanted = Vec::new();
            for (index, seq) in order.iter().enumerate() {
                if index > 0 && order[index - 1] > *seq {
                    wanted.push(("sequence", format!("entries[{index}].seq")));
                }
                if spoilt {
                    wanted.push(("out_of_range", format!("entries[{index}].text")));
                }
            }
            let as_lines = format!("{HEADER}\n{}\n", entries.join("\n"));
            for text in [journal_of(&entries.join(",")), as_lines] {
                let found: Vec<(&str, String)> = read(&text).err().map_or_else(Vec::new, |error| {
                    let told = told(&error).into_iter();
                    told.map(|(kind, path)| (kind, path.to_string())).collect()
                });
                prop_assert_eq!(&found, &wanted);
            }
            Ok(())
        })
        .expect("every order is told");
}

// Huge.

#[test]
fn ten_megabytes_are_read_where_the_limit_allows_them() {
    let text = notes(10_000, &"x".repeat(950));
    assert!(text.len() > 10_000_000);
    let error = refused(read_with(&text, &Limits::default().with_bytes(1_000_000)));
    assert_eq!(told(&error), [("limit", "")]);
    assert!(error.to_string().contains("bytes"), "{error}");
    assert_eq!(read(&text).expect("it is read").entries().len(), 10_000);
    let more = format!("{text}{}", " ".repeat(8_000_000));
    assert_eq!(refused(read(&more)).kind(), ErrorKind::Limit);
    let raised = Limits::default().with_bytes(20_000_000);
    assert!(read_with(&more, &raised).is_ok());
    let pack = format!("{}{}", fullest_pack(), " ".repeat(17_000_000));
    assert_eq!(refused(Pack::from_json(&pack)).kind(), ErrorKind::Limit);
    assert!(Pack::from_json_with(&pack, &raised).is_ok());
}

#[test]
fn a_hundred_thousand_entries_are_read_and_no_more() {
    let most = notes(100_000, "x");
    assert_eq!(read(&most).expect("it is read").entries().len(), 100_000);
    let error = refused(read(&notes(100_001, "x")));
    assert_eq!(told(&error), [("limit", "entries")]);
    assert!(error.to_string().contains("entries"), "{error}");
    let lines: Vec<String> = (0..100_001).map(|seq| note(seq, "x")).collect();
    let error = refused(read(&format!("{HEADER}\n{}\n", lines.join("\n"))));
    assert_eq!(told(&error), [("limit", "entries")]);
}

/// Each limit by name: exactly met it is met, one less is refused and named with what was found and allowed.
#[test]
fn every_limit_is_named_and_set_by_itself() {
    let text = journal_of(
        &[
            note(1, "0123456789"),
            r#"{"seq":2,"at":"2026-03-02T09:00:00Z","kind":"correction","of":1,"reason":"x",
                "replaces":{"seq":1,"at":"2026-03-02T09:00:00Z","kind":"note","text":"y"}}"#
                .to_string(),
        ]
        .join(","),
    );
    // The longest text is a moment; document, list, entry and replacing entry are four deep.
    let longest = "2026-03-02T09:00:00Z".len();
    type Set = fn(Limits, usize) -> Limits;
    let limits: [(&str, usize, Set); 4] = [
        ("bytes", text.len(), Limits::with_bytes),
        ("depth", 4, Limits::with_depth),
        ("entries", 2, Limits::with_entries),
        ("text", longest, Limits::with_text),
    ];
    for (name, met, set) in limits {
        let exact = set(Limits::default(), met);
        assert!(read_with(&text, &exact).is_ok(), "{name} exactly met");
        let error = refused(read_with(&text, &set(Limits::default(), met - 1)));
        for fault in error.faults() {
            assert_eq!(fault.kind, ErrorKind::Limit, "{error}");
            assert_eq!(fault.got, Some(met.to_string()), "{error}");
            assert_eq!(fault.allowed, [format!("up to {}", met - 1)], "{error}");
            let hint = fault.hint.as_deref().unwrap_or("");
            assert!(
                hint.starts_with(&format!("the limit is called {name};")),
                "{error}"
            );
        }
    }
    let bad = notes(10, " ");
    let error = refused(read_with(&bad, &Limits::default().with_faults(10)));
    assert_eq!(error.faults().count(), 10);
    let error = refused(read_with(&bad, &Limits::default().with_faults(9)));
    let last = error.faults().last().expect("a fault");
    assert_eq!(error.faults().count(), 10);
    assert_eq!(
        (last.kind, last.got.as_deref()),
        (ErrorKind::Limit, Some("10"))
    );
    assert!(last.hint.as_deref().unwrap_or("").contains("faults"));
}

/// A text that is too long is told with the rest of the faults, whether its field is known or not.
#[test]
fn limits_hold_in_known_and_unknown_members() {
    let long = "x".repeat(10_001);
    let entries = [
        note(1, &long),
        format!(
            r#"{{"seq":2,"at":"2026-03-02T09:00:00Z","kind":"note","text":"a","more":"{long}"}}"#
        ),
        format!(r#"{{"seq":3,"at":"2026-03-02T09:00:00Z","kind":"note","text":"","{long}":1}}"#),
        format!(r#"{{"seq":4,"at":"2026-03-02T09:00:00Z","kind":"{long}"}}"#),
    ];
    let error = refused(read(&journal_of(&entries.join(","))));
    let wanted = [
        ("limit", "entries[0].text"),
        ("limit", "entries[1].more"),
        ("unknown_field", "entries[1].more"),
        ("out_of_range", "entries[2].text"),
        ("limit", "entries[2]"),
        ("limit", "entries[3].kind"),
    ];
    assert_eq!(told(&error), wanted);
    let shown = error.to_json();
    assert!(shown.len() < 6_000, "{} bytes of error", shown.len());
}

// Deep.

#[test]
fn deep_nesting_is_refused_by_name_wherever_it_is_read() {
    on_a_stack_of(256 * 1024, || {
        for depth in [33, 1_000, 100_000] {
            let lists = nested(depth);
            let at = format!("job{}", "[0]".repeat(31));
            let text = format!(
                r#"{{"format":"brimline-journal/1","procedure":"p","job":{lists},"entries":[]}}"#
            );
            let error = refused(read(&text));
            assert_eq!(
                told(&error),
                [("wrong_type", "job"), ("limit", at.as_str())]
            );
            assert!(error.to_string().contains("depth"));
            let at = format!("more{}", "[0]".repeat(31));
            let text = journal_of("").replacen('{', &format!("{{\"more\":{lists},"), 1);
            let error = refused(read(&text));
            assert_eq!(
                told(&error),
                [("unknown_field", "more"), ("limit", at.as_str())]
            );
            // The depth was passed before the text broke off.
            let error = refused(read(&format!("{HEADER},{}", "[".repeat(depth))));
            assert_eq!(error.kind(), ErrorKind::Syntax);
            let error = refused(read(&"[".repeat(depth)));
            assert_eq!(error.kind(), ErrorKind::Limit);
            let error = refused(Pack::from_json(&"{\"a\":".repeat(depth)));
            assert_eq!(error.kind(), ErrorKind::Limit);
        }
    });
}

/// What is the host's may be as deep as it likes: it is kept, and never followed.
#[test]
fn deep_nesting_in_ext_is_kept() {
    on_a_stack_of(256 * 1024, || {
        let lists = nested(200_000);
        let entry = note(1, "x").replacen('{', &format!("{{\"ext\":{lists},"), 1);
        let text = journal_of(&entry).replacen('{', &format!("{{\"ext\":{lists},"), 1);
        let journal = read(&text).expect("it is read");
        assert_eq!(journal.to_json().matches(&lists).count(), 2);
        let pack = fullest_pack().replace(r#"{"shelf": 4}"#, &lists);
        let pack = Pack::from_json(&pack).expect("it is read");
        assert_eq!(pack.to_json().matches(&lists).count(), 1);
        let differences = pack.compare("hollow-level", 1, 2).expect("both are there");
        assert!(differences.iter().any(|one| one.field == "ext"));
        // Broken inside, it is broken.
        let text = text.replacen("]]]", "]}]", 1);
        assert_eq!(refused(read(&text)).kind(), ErrorKind::Syntax);
    });
}

/// The most that can be asked for is borne by a small stack: corrections of corrections, a hundred deep.
#[test]
fn the_greatest_depth_is_borne() {
    on_a_stack_of(2 * 1024 * 1024, || {
        let limits = Limits::default().with_depth(usize::MAX);
        assert_eq!(limits.depth(), 100);
        let correction = |inner: &str| {
            format!(
                r#"{{"seq":1,"at":"2026-03-02T09:00:00Z","kind":"correction","of":1,"reason":"x","replaces":{inner}}}"#
            )
        };
        let mut entry = note(1, "x");
        for _ in 0..97 {
            entry = correction(&entry);
        }
        let journal = read_with(&journal_of(&entry), &limits).expect("it is read");
        let again = read_with(&journal.to_json(), &limits).expect("it is read again");
        assert_eq!(journal.entries(), again.entries());
        let error = refused(read_with(&journal_of(&correction(&entry)), &limits));
        assert_eq!(error.kind(), ErrorKind::Limit);
    });
}

// Odd.

#[test]
fn odd_texts_are_refused_where_they_are_odd() {
    let with = |volume: &str| {
        journal_of(&format!(
            r#"{{"seq":1,"at":"2026-03-02T09:00:00Z","kind":"added","volume":{volume}}}"#
        ))
    };
    let volume = "entries[0].volume";
    let odd: &[(&str, &str, &str)] = &[
        // JSON is bad.
        (r#""\ud800 L""#, "syntax", volume),
        (r#""\udc00\ud800 L""#, "syntax", volume),
        (r#""\u00 L""#, "syntax", volume),
        ("\"1\u{0} L\"", "syntax", volume),
        ("NaN", "syntax", volume),
        ("Infinity", "syntax", volume),
        ("0x10", "syntax", volume),
        ("01", "syntax", volume),
        ("+1", "syntax", volume),
        ("1.", "syntax", volume),
        ("'1 L'", "syntax", volume),
        // JSON is good, and no quantity.
        ("1e999", "wrong_type", volume),
        ("-0", "wrong_type", volume),
        ("123456789012345678901234567890", "wrong_type", volume),
        (r#""1e999 L""#, "", volume),
        (r#""NaN L""#, "not_a_number", volume),
        (r#""inf L""#, "not_a_number", volume),
        (r#""1\u0000 L""#, "", volume),
        (r#""\u202e1 L""#, "not_a_number", volume),
        (r#""1234567890123456 L""#, "too_many_digits", volume),
        (r#""0.1234567890 L""#, "too_many_digits", volume),
        (r#""""#, "out_of_range", volume),
    ];
    for (value, kind, path) in odd {
        let text = with(value);
        let error = refused(read(&text));
        assert_eq!(told(&error).len(), 1, "{value}: {error}");
        assert_eq!(error.first().path, *path, "{value}: {error}");
        if !kind.is_empty() {
            assert_eq!(error.kind().slug(), *kind, "{value}: {error}");
        }
        let document = serde_json::from_str(&text).ok();
        assert_eq!(
            faults_of_the_error(&text, document.as_ref(), &error),
            [""; 0]
        );
    }
    // A pair of surrogates is one character, and an escaped letter is that letter.
    let text = with(r#""0.5 \u004c""#);
    assert_eq!(read(&text).expect("it is read").entries().len(), 1);
    let error = refused(read(&format!("\u{feff}{HEADER}")));
    assert!(error.to_string().contains("byte order mark"), "{error}");
    for nothing in ["", " ", "\n\n", "\0", "\u{feff}"] {
        assert_eq!(refused(read(nothing)).kind(), ErrorKind::Syntax);
        assert_eq!(refused(Pack::from_json(nothing)).kind(), ErrorKind::Syntax);
    }
    for (seq, kind) in [
        ("9007199254740991", None),
        ("9007199254740992", Some("out_of_range")),
        ("-1", Some("out_of_range")),
        ("18446744073709551616", Some("wrong_type")),
        ("1.0", Some("wrong_type")),
        ("1e0", Some("wrong_type")),
        ("\"1\"", Some("wrong_type")),
    ] {
        let text = journal_of(&note(1, "x").replace("\"seq\":1", &format!("\"seq\":{seq}")));
        let found = read(&text).err().map(|error| error.kind().slug());
        assert_eq!(found, kind, "{seq}");
    }
}

/// A live check refuses what cannot be read, and the check before it still stands.
#[test]
fn a_live_check_outlives_what_it_refuses() {
    let pack = Pack::embedded().expect("it reads");
    let limits = Limits::default().with_entries(1).with_bytes(400);
    let check = LevelCheck::start_with(&pack, HEADER, &limits).expect("it starts");
    let (check, _) = check.record(&note(1, "x")).expect("it is recorded");
    let before = check.evaluation().to_json();
    let bad = [
        String::new(),
        nested(100),
        "{".into(),
        note(2, ""),
        note(1, "again"),
        note(2, "one too many"),
        note(2, &"x".repeat(400)),
    ];
    for entry in &bad {
        let error = refused(check.clone().record(entry));
        assert!(error.faults().count() > 0);
        assert_eq!(check.evaluation().to_json(), before, "{entry}");
    }
    for header in ["", "[]", &nested(1_000), &HEADER[..40], &journal_of("")] {
        assert!(LevelCheck::start(&pack, header).is_err(), "{header}");
    }
}

// Cost.

/// Documents of about this many bytes that ask for as much work as they can.
fn costly(bytes: usize) -> Vec<(&'static str, String)> {
    let fill = |head: &str, piece: &str, tail: &str| {
        format!("{head}{}{tail}", piece.repeat(bytes / piece.len()))
    };
    let header = HEADER.trim_end_matches('}');
    let entry = r#"{"seq":1,"at":"2026-03-02T09:00:00Z","kind":"note","text":"x"},"#;
    vec![
        ("members of one name", fill("{", "\"\":0,", "\"\":0}")),
        (
            "a known member again and again",
            fill("{", "\"job\":0,", "\"job\":0}"),
        ),
        ("empty objects", fill("[", "{},", "0]")),
        ("objects of one member", fill("[", "{\"\":0},", "0]")),
        ("lists of one item", fill("[", "[0],", "0]")),
        ("numbers", fill("[", "0,", "0]")),
        ("opened lists", fill("", "[", "")),
        (
            "opened lists in ext",
            fill(&format!("{header},\"ext\":"), "[", ""),
        ),
        ("a long text", fill("\"", "x", "\"")),
        ("escapes", fill("\"", "\\n", "\"")),
        ("line feeds", fill(&format!("{HEADER}\n"), "\n", "")),
        ("broken lines", fill(&format!("{HEADER}\n"), "{\n", "")),
        (
            "entries alike",
            fill(&format!("{header},\"entries\":["), entry, "0]}"),
        ),
        (
            "lines alike",
            fill(
                &format!("{HEADER}\n"),
                &format!("{}\n", &entry[..entry.len() - 1]),
                "",
            ),
        ),
        (
            "standing words",
            fill(
                &format!("{header},\"profile\":{{\"standing\":["),
                "\"a\",",
                "\"a\"]},\"entries\":[]}",
            ),
        ),
    ]
}

/// Packs whose parts lean on each other as much as they can.
fn costly_packs(parts: usize) -> Vec<(&'static str, String)> {
    let pack = |fluids: String, procedures: String| {
        format!(
            r#"{{"format":"brimline-pack/1","id":"p","version":"1","title":"t","fluids":[{fluids}],"procedures":[{procedures}]}}"#
        )
    };
    let joined =
        |item: &dyn Fn(usize) -> String| (1..=parts).map(item).collect::<Vec<_>>().join(",");
    let fluid = |id: usize, next: usize| format!(r#"{{"id":"f{id}","replaces":["f{next}"]}}"#);
    let sheet = |edition: usize, next: usize| {
        format!(
            r#"{{"id":"s","edition":{edition},"supersedes":{next},"method":{{"kind":"side_plug"}}}}"#
        )
    };
    let words = joined(&|word| format!("\"w{word}\""));
    vec![
        (
            "a chain of fluids",
            pack(joined(&|id| fluid(id, id + 1)), String::new()),
        ),
        (
            "a ring of fluids",
            pack(joined(&|id| fluid(id, id % parts + 1)), String::new()),
        ),
        (
            "one fluid again and again",
            pack(joined(&|_| fluid(1, 2)), String::new()),
        ),
        (
            "a chain of editions",
            pack(String::new(), joined(&|id| sheet(id, id + 1))),
        ),
        (
            "a ring of editions",
            pack(String::new(), joined(&|id| sheet(id, id % parts + 1))),
        ),
        (
            "every fluid under every relation",
            pack(
                format!(
                    r#"{{"id":"f","replaces":[{words}],"mixes_with":[{words}],"never":[{words}]}}"#
                ),
                String::new(),
            ),
        ),
    ]
}

/// Reading as both kinds of document: the bytes held at once at most, and those asked for in all.
fn cost(text: &str) -> (u64, u64) {
    let cost = measure(|| {
        drop(read(text));
        drop(Pack::from_json(text));
    });
    (cost.bytes_max, cost.bytes_total)
}

/// The limit of bytes bounds what is held in memory, as `Limits::bytes` says, and what is asked for in all grows
/// with the text and no faster.
#[test]
fn cost_is_bounded_by_the_text() {
    let sizes = [100_000, 200_000, 400_000];
    for index in 0..costly(1).len() {
        let costs = sizes.map(|size| {
            let (name, text) = costly(size).swap_remove(index);
            let (held, asked) = cost(&text);
            let most = 60 * text.len() as u64;
            assert!(held < most, "{name}: {held} bytes held for {}", text.len());
            (name, asked)
        });
        grows_no_faster(&costs);
    }
    for index in 0..costly_packs(1).len() {
        let costs = [1_000, 2_000, 4_000].map(|parts| {
            let (name, text) = costly_packs(parts).swap_remove(index);
            let (held, asked) = cost(&text);
            let most = 60 * text.len() as u64;
            assert!(held < most, "{name}: {held} bytes held for {}", text.len());
            (name, asked)
        });
        grows_no_faster(&costs);
    }
}

/// Twice the text asks for at most some two and a half times the memory; a square would ask for four.
fn grows_no_faster(costs: &[(&str, u64)]) {
    for pair in costs.windows(2) {
        let ((name, half), (_, whole)) = (pair[0], pair[1]);
        let slack = 50_000;
        assert!(
            whole < half * 5 / 2 + slack,
            "{name}: {half}, then {whole} bytes asked for"
        );
    }
}

/// Work that grew as a square would not end in any time a test waits.
#[test]
fn megabytes_that_ask_for_work_end() {
    for (name, text) in costly(4_000_000) {
        assert!(
            read(&text).is_err() || name == "line feeds" || name == "standing words",
            "{name}"
        );
        assert!(Pack::from_json(&text).is_err(), "{name}");
    }
    for (name, text) in costly_packs(50_000) {
        let read = Pack::from_json(&text);
        assert_eq!(read.is_ok(), name.starts_with("a chain"), "{name}");
    }
}

// Anything.

/// One edit of a text's bytes.
#[derive(Debug, Clone)]
enum Edit {
    Replace(prop::sample::Index, u8),
    Insert(prop::sample::Index, Vec<u8>),
    Remove(prop::sample::Index, usize),
    /// A piece of the text itself, elsewhere.
    Copy(prop::sample::Index, prop::sample::Index, usize),
}

fn edits() -> impl Strategy<Value = Vec<Edit>> {
    let place = any::<prop::sample::Index>;
    let telling = prop::sample::select(b"{}[]\",:\\0-9.eE+ \n\tntu\xc3\xa9\xf0".to_vec());
    let edit = prop_oneof![
        (place(), telling.clone()).prop_map(|(at, byte)| Edit::Replace(at, byte)),
        (place(), any::<u8>()).prop_map(|(at, byte)| Edit::Replace(at, byte)),
        (place(), prop::collection::vec(telling, 1..6))
            .prop_map(|(at, bytes)| Edit::Insert(at, bytes)),
        (place(), 1..40_usize).prop_map(|(at, count)| Edit::Remove(at, count)),
        (place(), place(), 1..200_usize).prop_map(|(from, to, count)| Edit::Copy(from, to, count)),
    ];
    prop::collection::vec(edit, 1..5)
}

fn edited(text: &str, edits: &[Edit]) -> String {
    let mut bytes = text.as_bytes().to_vec();
    for edit in edits {
        if bytes.is_empty() {
            break;
        }
        let len = bytes.len();
        match edit {
            Edit::Replace(at, byte) => bytes[at.index(len)] = *byte,
            Edit::Insert(at, piece) => {
                let at = at.index(len);
                bytes.splice(at..at, piece.iter().copied());
            }
            Edit::Remove(at, count) => {
                let at = at.index(len);
                bytes.drain(at..len.min(at + count));
            }
            Edit::Copy(from, to, count) => {
                let (from, to) = (from.index(len), to.index(len));
                let piece = bytes[from..len.min(from + count)].to_vec();
                bytes.splice(to..to, piece);
            }
        }
    }
    String::from_utf8_lossy(&bytes).into_owned()
}

/// Reads a text as everything it could be; never a panic, every error sound, and the same bytes each time.
fn survives(text: &str, pack: &Pack) -> Vec<String> {
    let document: Option<Value> = serde_json::from_str(text).ok();
    let answer = || {
        let journal = read(text);
        let told = match &journal {
            Ok(journal) => evaluate(pack, journal).expect("it was read").to_json(),
            Err(error) => error.to_json(),
        };
        let as_pack = Pack::from_json(text);
        let lint = as_pack.as_ref().map(|pack| pack.lint().len());
        (format!("{told}{lint:?}"), journal.err(), as_pack.err())
    };
    let ((first, journal, as_pack), (second, ..)) = (answer(), answer());
    let mut wrong = Vec::new();
    if first != second {
        wrong.push(format!("two answers: {first} and {second}"));
    }
    for error in [journal, as_pack].into_iter().flatten() {
        let twice = error
            .faults()
            .any(|fault| fault.kind == ErrorKind::DuplicateField);
        let same = document
            .as_ref()
            .filter(|_| !twice && !text.contains("\\u"));
        wrong.extend(faults_of_the_error(text, same, &error));
        if error
            .faults()
            .any(|fault| fault.kind == ErrorKind::Internal)
        {
            wrong.push(format!("internal: {error}"));
        }
    }
    // Well-formed elsewhere is well-formed here, and the other way about.
    let refused_as_text = refusal_of_the_text(text);
    if document.is_some() == refused_as_text {
        wrong.push(format!(
            "well-formed: {}, refused: {refused_as_text}",
            document.is_some()
        ));
    }
    wrong
}

/// Whether a text is refused as no JSON at all, told from a number too large for other readers.
fn refusal_of_the_text(text: &str) -> bool {
    let syntax = |error: &Error| error.faults().any(|fault| fault.kind == ErrorKind::Syntax);
    Pack::from_json(text)
        .err()
        .is_some_and(|error| syntax(&error))
}

#[test]
fn any_edit_of_a_document_is_answered() {
    let pack = Pack::embedded().expect("it reads");
    let mut texts: Vec<String> = accepted_packs().into_values().collect();
    texts.extend(
        accepted_journals()
            .into_values()
            .map(|journal| journal.text),
    );
    let chosen = (any::<prop::sample::Index>(), edits());
    let config = ProptestConfig {
        cases: 3_000,
        failure_persistence: None,
        ..ProptestConfig::default()
    };
    TestRunner::new(config)
        .run(&chosen, |(index, edits)| {
            let text = edited(index.get(&texts), &edits);
            prop_assert_eq!(survives(&text, &pack), Vec::<String>::new());
            Ok(())
        })
        .unwrap_or_else(|error| panic!("{error}"));
}

#[test]
fn any_text_at_all_is_answered() {
    let pack = Pack::embedded().expect("it reads");
    let config = ProptestConfig {
        cases: 2_000,
        failure_persistence: None,
        ..ProptestConfig::default()
    };
    let text = prop_oneof![
        any::<String>(),
        "[\\[\\]{}:,\"0-9a-z\\\\ \n.eE+-]{0,60}",
        "(\\{\"(seq|at|kind|ext|entries)\":){1,6}(null|1|\"x\"|\\[\\])\\}{0,6}",
    ];
    TestRunner::new(config)
        .run(&text, |text| {
            prop_assert_eq!(survives(&text, &pack), Vec::<String>::new());
            Ok(())
        })
        .unwrap_or_else(|error| panic!("{error}"));
}

#[test]
fn answers_are_the_same_each_time() {
    for case in cases().iter().step_by(7) {
        assert_eq!(
            answer(&case.request),
            answer(&case.request),
            "{}",
            case.name
        );
    }
}
