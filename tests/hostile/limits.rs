//! What a document may hold: each limit by name.

use super::documents::{HEADER, journal_of, note, notes, read, read_with, refused, told};
use crate::document_corpus::fullest_pack;
use brimline::{ErrorKind, Limits, Pack};

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
        // An object with a name over the limit is not kept.
        ("limit", "entries[2]"),
        ("limit", "entries[3].kind"),
    ];
    assert_eq!(told(&error), wanted);
    let shown = error.to_json();
    assert!(shown.len() < 6_000, "{} bytes of error", shown.len());
}
