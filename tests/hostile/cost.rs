//! What reading costs: bounded, and no faster growing than the text.

use super::documents::{HEADER, read};
use allocation_counter::measure;
use brimline::Pack;

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
    // A list costs most just after it outgrew its place.
    let just_outgrown = (1 << 16) + 1;
    for (name, text) in costly(just_outgrown * 2) {
        let (held, _) = cost(&text);
        assert!(held < 60 * text.len() as u64, "{name}: {held} bytes held");
    }
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
    for (name, text) in costly(2_000_000) {
        assert!(
            read(&text).is_err() || name == "line feeds" || name == "standing words",
            "{name}"
        );
        assert!(Pack::from_json(&text).is_err(), "{name}");
    }
    for (name, text) in costly_packs(25_000) {
        let read = Pack::from_json(&text);
        assert_eq!(read.is_ok(), name.starts_with("a chain"), "{name}");
    }
}
