//! Deep nesting.

use super::documents::{
    HEADER, journal_of, nested, note, on_a_stack_of, read, read_with, refused, told,
};
use crate::document_corpus::fullest_pack;
use brimline::{ErrorKind, Limits, Pack};

#[test]
fn deep_nesting_is_refused_by_name_wherever_it_is_read() {
    on_a_stack_of(256 * 1024, || {
        for depth in [33, 1_000, 100_000] {
            let lists = nested(depth);
            let text = format!(
                r#"{{"format":"brimline-journal/1","procedure":"p","job":{lists},"entries":[]}}"#
            );
            let error = refused(read(&text));
            // What is not read is not measured.
            assert_eq!(told(&error), [("wrong_type", "job")]);
            let text = journal_of("").replacen('{', &format!("{{\"more\":{lists},"), 1);
            let error = refused(read(&text));
            assert_eq!(told(&error), [("unknown_field", "more")]);
            let error = refused(read(&format!("{HEADER},{}", "[".repeat(depth))));
            assert_eq!(error.kind(), ErrorKind::Syntax);
            // The depth was passed before the text broke off.
            let error = refused(read(&"[".repeat(depth)));
            assert_eq!(error.kind(), ErrorKind::Limit);
            assert!(error.to_string().contains("depth"));
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
