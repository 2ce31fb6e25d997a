//! Texts with something odd in them.

use super::documents::{HEADER, journal_of, nested, note, read, refused, told};
use super::places::faults_of_the_error;
use brimline::{ErrorKind, LevelCheck, Limits, Pack};

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
        ("0x10", "syntax", "entries[0]"),
        ("01", "syntax", volume),
        ("+1", "syntax", volume),
        ("1.", "syntax", volume),
        ("'1 L'", "syntax", volume),
        // No double holds it.
        ("1e999", "syntax", volume),
        // JSON is good, and no quantity.
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
