//! Documents that are cut off.

use super::documents::{HEADER, note, read, refused, told};
use super::places::faults_of_the_error;
use crate::document_corpus::{assembled, embedded_pack, fullest_journal, fullest_pack};
use brimline::{ErrorKind, Journal, Measures, Pack, evaluate};
use serde_json::Value;
use std::fmt::Write;

/// The byte places at which a text can be cut.
fn cuts(text: &str) -> impl Iterator<Item = &str> {
    (0..text.len())
        .filter(|end| text.is_char_boundary(*end))
        .map(|end| &text[..end])
}

#[test]
fn every_beginning_of_a_document_is_refused() {
    for text in [fullest_journal(), fullest_pack(), embedded_pack()] {
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
        let read = Journal::from_json(cut, Some(Measures::Us));
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

/// A power cut knows nothing of characters: what it leaves of one is part of the torn line, to the byte.
#[test]
fn a_line_may_be_cut_within_a_character() {
    let (first, last) = (note(1, "a"), note(3, "21 °C, €5 𝄞"));
    let whole = format!("{HEADER}\n{first}\n");
    let text = format!("{whole}{last}");
    let pack = Pack::embedded().expect("it reads");
    for end in whole.len() + 1..text.len() {
        let cut = &text.as_bytes()[..end];
        let journal = Journal::text(cut).expect("it is cut, not wrong");
        let told = evaluate(&pack, &*journal).expect("its whole lines are read");
        let told: Value = serde_json::from_str(&told.to_json()).expect("JSON");
        let finding = &told["findings"][0];
        assert_eq!(finding["id"], "torn_line");
        assert_eq!(finding["args"]["bytes"], end - whole.len());
        if std::str::from_utf8(cut).is_err() {
            for wrong in [
                [cut, b"\n"].concat(),
                [cut, b" "].concat(),
                cut[whole.len()..].to_vec(),
            ] {
                let error = Journal::text(&wrong).expect_err("it is no cut");
                assert_eq!(error.kind(), ErrorKind::NotUtf8);
                assert_eq!(error.first().path, "journal");
            }
        }
    }
}
