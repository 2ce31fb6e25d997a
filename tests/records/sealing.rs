//! A record says what the evaluation said, and no other bytes are a record.

use crate::vector_cases::{cases, root};
use brimline::record::Rules;
use brimline::{ErrorKind, Journal, Pack, Record, evaluate};
use std::fs;

fn example(name: &str) -> String {
    fs::read_to_string(root().join("examples/journals").join(name)).expect("an example reads")
}

fn sealed() -> Record {
    let pack = Pack::embedded().expect("it reads");
    Record::seal(&pack, example("plain_check.json").as_str()).expect("it seals")
}

/// Every pack and journal of the vectors that evaluates and names no other pack.
fn jobs() -> Vec<(String, Pack, String)> {
    let mut jobs = Vec::new();
    for case in cases() {
        if case.request.op != "evaluate" || !case.request.args[4].is_empty() {
            continue;
        }
        let text = case.request.args[0].as_str();
        let pack = if text.is_empty() {
            Pack::embedded()
        } else {
            Pack::from_json(text)
        };
        if let Ok(pack) = pack
            && evaluate(&pack, case.request.args[1].as_str()).is_ok()
        {
            let name = format!("{}: {}", case.file, case.name);
            jobs.push((name, pack, case.request.args[1].clone()));
        }
    }
    let pack = Pack::embedded().expect("it reads");
    for file in fs::read_dir(root().join("examples/journals")).expect("the examples are there") {
        let name = file.expect("a folder lists").file_name();
        let name = name.to_string_lossy().to_string();
        jobs.push((name.clone(), pack.clone(), example(&name)));
    }
    jobs
}

#[test]
fn a_record_says_what_the_evaluation_said() {
    let (mut sealed, mut of_another) = (0, 0);
    for (name, pack, journal) in jobs() {
        let evaluation = evaluate(&pack, journal.as_str()).expect("it evaluated before");
        let record = match Record::seal(&pack, journal.as_str()) {
            Ok(record) => record,
            Err(error) => {
                assert_eq!(error.kind(), ErrorKind::Conflict, "{name}: {error}");
                of_another += 1;
                continue;
            }
        };
        sealed += 1;
        let reopened = Record::reopen(record.to_json()).expect("what is sealed reopens");
        assert_eq!(reopened, record, "{name}");
        assert_eq!(reopened.to_json(), record.to_json(), "{name}");
        for record in [record, reopened] {
            assert_eq!(record.result_json(), evaluation.to_json(), "{name}");
            assert_eq!(record.verdict(), evaluation.verdict(), "{name}");
            assert_eq!(record.as_found(), evaluation.as_found(), "{name}");
            assert_eq!(record.net_added(), evaluation.net_added(), "{name}");
            assert_eq!(record.now(), evaluation.now(), "{name}");
            assert_eq!(record.leak(), evaluation.leak(), "{name}");
            assert_eq!(record.procedure(), evaluation.procedure(), "{name}");
            let ids = record.findings().iter().map(|own| {
                let id = own.id.as_str();
                (id, own.severity, own.entries.clone())
            });
            let told = evaluation.findings().iter();
            let told = told.map(|own| (own.id, own.severity, own.entries.clone()));
            assert!(ids.eq(told), "{name}");
            // The journal needs nobody to say what its quarts were, and says how it was delivered.
            let again = evaluate(&pack, record.journal()).expect("a kept journal evaluates");
            assert_eq!(again.to_json(), evaluation.to_json(), "{name}");
            let kept = Journal::from_json(&record.journal().to_json(), None);
            let kept = kept.expect("a kept journal reads by itself").to_json();
            assert_eq!(kept, record.journal().to_json(), "{name}");
        }
    }
    assert!(sealed > 250, "only {sealed} sealed");
    assert!(of_another > 0, "no journal named another pack");
}

#[test]
fn any_changed_byte_is_noticed() {
    let record = sealed();
    let text = record.to_json();
    let (head, tail) = ("{\"format\":\"brimline-record/1\",".len(), text.len() - 77);
    let mut tried = 0;
    for place in 0..text.len() {
        for mask in [0x01, 0x02, 0x10, 0x20] {
            let mut bytes = text.as_bytes().to_vec();
            bytes[place] ^= mask;
            let Ok(other) = String::from_utf8(bytes) else {
                continue;
            };
            tried += 1;
            let error = Record::reopen(&other).expect_err("a changed record is refused");
            // Where the frame itself is broken the text is no record.
            if (head..tail).contains(&place) {
                assert_eq!(error.kind(), ErrorKind::Changed, "byte {place}: {error}");
                assert_eq!(error.first().path, "digest");
                assert!(error.first().hint.is_some());
            }
        }
    }
    assert!(tried > 5_000, "only {tried} tried");
}

#[test]
fn what_is_cut_off_added_or_written_anew_is_no_record() {
    let record = sealed();
    let text = record.to_json();
    let mut seals = 0;
    for cut in (0..text.len()).filter_map(|cut| text.get(..cut)) {
        let error = Record::reopen(cut).expect_err("a cut record is refused");
        // Right behind the digests of pack and sheet it looks sealed.
        seals += usize::from(error.kind() == ErrorKind::Changed);
        let kinds = [ErrorKind::Syntax, ErrorKind::Changed];
        assert!(
            kinds.contains(&error.kind()),
            "{} bytes: {error}",
            cut.len()
        );
    }
    assert_eq!(seals, 2);
    let spaced: serde_json::Value = serde_json::from_str(text).expect("JSON");
    let pretty = serde_json::to_string_pretty(&spaced).expect("JSON");
    for other in [format!("{text}\n"), format!(" {text}")] {
        let error = Record::reopen(&other).expect_err("white space is a change");
        assert_eq!(error.kind(), ErrorKind::Changed);
        assert!(error.to_string().contains("byte for byte"), "{error}");
    }
    assert_eq!(
        Record::reopen(&pretty)
            .expect_err("so is another layout")
            .kind(),
        ErrorKind::Changed
    );
    assert_eq!(
        Record::reopen(&text.repeat(2))
            .expect_err("twice is too much")
            .kind(),
        ErrorKind::Changed
    );
    let newer = text.replacen("brimline-record/1", "brimline-record/2", 1);
    let error = Record::reopen(&newer).expect_err("a newer format is not read");
    assert_eq!(error.kind(), ErrorKind::WrongFormat);
    assert_eq!(error.first().path, "format");
}

/// A text with the digest it should have had, as somebody would make it who means to deceive, or only to tidy.
fn resealed(before: &str) -> String {
    let digest = brimline::document::digest(&format!("{before}}}"));
    format!("{before},\"digest\":\"{digest}\"}}")
}

#[test]
fn a_record_sealed_by_another_hand_is_still_read_strictly() {
    let record = sealed();
    let text = record.to_json();
    let before = &text[..text.len() - 77];
    assert_eq!(resealed(before), text);
    let refused = |change: &str| {
        let error = Record::reopen(&resealed(change)).expect_err("it is refused");
        (error.kind(), error.first().path.clone())
    };
    let swapped = |from: &str, to: &str| refused(&before.replacen(from, to, 1));
    let path = |text: &str| text.to_string();
    assert_eq!(
        swapped("\"rules\":", "\"rule\":"),
        (ErrorKind::MissingField, path("rules"))
    );
    assert_eq!(
        swapped("\"rules\":\"1\",\"result\"", "\"rules\":\"2\",\"result\""),
        (ErrorKind::Conflict, path("result.rules"))
    );
    assert_eq!(
        swapped("\"seq\":1,", "\"seq\":1,\"mood\":\"good\","),
        (ErrorKind::UnknownField, path("journal.entries[0].mood"))
    );
    assert_eq!(
        swapped("\"verdict\":\"", "\"verdict\":\"very_"),
        (ErrorKind::UnknownValue, path("result.verdict"))
    );
    // The same in other bytes: a member moved, and white space in the answer.
    assert_eq!(
        swapped(
            "{\"format\":\"brimline-result/1\",",
            "{ \"format\":\"brimline-result/1\","
        ),
        (ErrorKind::Changed, path("digest"))
    );
    assert_eq!(
        swapped("\"seq\":1,", "\"seq\": 1,"),
        (ErrorKind::Changed, path("digest"))
    );
    let error = Record::reopen(&resealed(&before.replacen(
        "\"seq\":1,",
        "\"seq\":1,\"mood\":2,",
        1,
    )));
    let place = error.expect_err("it is refused").first().position;
    let place = place.expect("a fault in the journal has its place").offset as usize;
    assert_eq!(
        place,
        before.find("\"seq\":1,").expect("it is there") + "\"seq\":1,\"mood\":".len()
    );
}

#[test]
fn a_journal_of_another_pack_is_not_sealed() {
    let pack = Pack::embedded().expect("it reads");
    let pinned = |pin: &str| {
        format!(
            r#"{{"format":"brimline-journal/1","pack":{pin},"procedure":"pipit-level","job":"check","entries":[]}}"#
        )
    };
    let own = format!(
        r#"{{"id":"{}","version":"{}","digest":"{}"}}"#,
        pack.id(),
        pack.version(),
        pack.digest()
    );
    assert!(Record::seal(&pack, pinned(&own).as_str()).is_ok());
    let other = pinned(r#"{"id":"another","version":"0","digest":"00"}"#);
    let error = Record::seal(&pack, other.as_str()).expect_err("it is refused");
    let told: Vec<(ErrorKind, &str)> = error
        .faults()
        .map(|fault| (fault.kind, fault.path.as_str()))
        .collect();
    assert_eq!(
        told,
        [
            (ErrorKind::Conflict, "journal.pack.id"),
            (ErrorKind::Conflict, "journal.pack.version"),
            (ErrorKind::Conflict, "journal.pack.digest"),
        ]
    );
}

#[test]
fn a_record_can_be_shared_between_threads() {
    fn shared<T: Send + Sync + Clone + Eq + std::hash::Hash>() {}
    shared::<Record>();
}

#[test]
fn rules_that_are_not_known_are_not_guessed_at() {
    let text = sealed()
        .to_json()
        .replace("\"rules\":\"1\"", "\"rules\":\"0\"");
    let old = Record::reopen(&resealed(&text[..text.len() - 77])).expect("older rules are read");
    assert_eq!(old.rules(), "0");
    let pack = Pack::embedded().expect("it reads");
    let error = old
        .reevaluate(&pack, Rules::AsRecorded)
        .expect_err("it is refused");
    assert_eq!(error.kind(), ErrorKind::UnknownValue);
    assert_eq!(error.first().path, "rules");
    let differences = old
        .reevaluate(&pack, Rules::Latest)
        .expect("the latest are known");
    let told: Vec<_> = differences
        .iter()
        .map(|own| (own.path(), own.was(), own.now()))
        .collect();
    assert_eq!(told, [("rules", Some("\"0\""), Some("\"1\""))]);
}
