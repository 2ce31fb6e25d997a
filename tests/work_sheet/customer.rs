//! What the customer reads, in states of a job that are easily told wrong. Worked by hand from the journals.

use super::{PARTICULARS, journal, pack, read_aloud, sheet};
use brimline::report::{self, Medium, Particulars, bay_card};
use serde_json::Value;

/// A journal of the examples up to an entry, with other entries behind it.
fn upto(name: &str, seq: usize, more: &[&str]) -> String {
    let mut journal: Value = serde_json::from_str(&journal(name)).expect("JSON");
    let entries = journal["entries"].as_array_mut().expect("entries");
    entries.truncate(seq);
    entries.extend(
        more.iter()
            .map(|entry| serde_json::from_str(entry).expect("JSON")),
    );
    journal.to_string()
}

fn told(journal: &str) -> String {
    read_aloud(&sheet(journal, PARTICULARS, Medium::Text), Medium::Text)
}

fn assert_says(told: &str, said: &[&str], unsaid: &[&str]) {
    for said in said {
        assert!(told.contains(said), "{said:?} is left out of\n{told}");
    }
    for unsaid in unsaid {
        assert!(!told.contains(unsaid), "{unsaid:?} is told in\n{told}");
    }
}

const OPENED: &str = r#"{"seq":19,"at":"2025-03-04T08:44:30Z","kind":"plug","state":"open"}"#;

/// Entry 16 finds the level, 17 closes, 18 tightens.
#[test]
fn while_the_plug_is_out_something_is_left_to_do() {
    let reopened = upto("plain_check.json", 18, &[OPENED]);
    for journal in [upto("plain_check.json", 16, &[]), reopened] {
        assert_says(
            &told(&journal),
            &["What is listed below comes first.", "The plug is not in."],
            &["Nothing more on this visit", "The plug was tightened"],
        );
    }
    let drips =
        r#"{"seq":21,"at":"2025-03-04T08:48:00Z","kind":"confirmed","what":"drips_checked"}"#;
    assert_says(
        &told(&upto("plain_check.json", 20, &[drips])),
        &[
            "Nothing more on this visit.",
            "The plug was tightened to 13 N·m.",
        ],
        &["What is listed below comes first."],
    );
    assert_says(
        &told(&upto("plain_check.json", 17, &[])),
        &["No torque is recorded for the plug."],
        &["The plug was tightened"],
    );
}

/// 13 lbf·ft is the sheet's number in another unit.
#[test]
fn a_torque_that_is_in_doubt_is_told_as_such() {
    assert_says(
        &told(&upto("short_unit.json", 36, &[])),
        &["For the plug 13 lbf·ft was entered, and that is in doubt."],
        &["The plug was tightened", "Entry 36, answered later"],
    );
    let again = r#"{"seq":37,"at":"2025-05-13T09:45:10Z","kind":"tightened","torque":"13 N·m"}"#;
    assert_says(
        &told(&upto("short_unit.json", 36, &[again])),
        &[
            "The plug was tightened to 13 N·m.",
            "Entry 36, answered later",
        ],
        &["in doubt"],
    );
}

/// 0.25 L by jug, which is 0.23 L to 0.27 L, was poured after the level was found; nothing ran out.
#[test]
fn what_changed_after_the_last_look_is_told_as_it_is_now() {
    let poured = r#"{"seq":17,"at":"2025-03-04T08:42:40Z","kind":"added","volume":"0.25 L","measured_by":"jug"}"#;
    assert_says(
        &told(&upto("plain_check.json", 16, &[poured])),
        &[
            "At the last look the fluid was at its level",
            "now: between 0.23 L and 0.27 L over.",
        ],
        &[
            "The fluid is at its level now",
            "Nothing more on this visit",
        ],
    );
    // Entry 18 looks and nothing comes; entry 19 pours 0.25 L by meter.
    assert_says(
        &told(&upto("short_unit.json", 18, &[])),
        &["The fluid is still short."],
        &["At the last look the fluid was short"],
    );
    assert_says(
        &told(&upto("short_unit.json", 19, &[])),
        &["At the last look the fluid was short; now:"],
        &["The fluid is still short."],
    );
}

#[test]
fn a_hold_is_told_with_its_cause_and_comes_first() {
    assert_says(
        &told(&journal("coolant_found.json")),
        &[
            "The job is on hold: coolant in the fluid.",
            "What holds the job is to be settled first. The vehicle must not be put back into use before that.",
        ],
        &["The check is to be finished"],
    );
}

/// The engine stopped, the check was made again, and that found the level, past the limit by the sheet's count.
#[test]
fn what_was_answered_is_no_order_any_more() {
    assert_says(
        &told(&journal("engine_stopped.json")),
        &[
            "answered later",
            "By the sheet it is past the leak limit, so the leak must be looked for.",
        ],
        &["So much was missing", "It is close to that limit"],
    );
}

/// 0.55 L and 50 mL ran out before the level was there.
#[test]
fn a_surplus_is_told_with_what_may_have_caused_it() {
    let causes = [
        "may_be_overfilled",
        "may_hold_coolant",
        "may_be_another_opening",
    ];
    let causes = causes.map(|id| report::message("reason", id).expect(id));
    let coolant = report::caution("coolant_toxic").expect("a caution");
    let page = told(&journal("overfull.json"));
    assert_says(&page, &causes, &[]);
    assert_says(&page, &[coolant], &[]);
    assert_says(&told(&journal("short_unit.json")), &[], &causes);
}

#[test]
fn the_cautions_of_the_tool_stand_on_the_sheet() {
    let grip = report::caution("grip_at_mark").expect("a caution");
    let text = journal("plain_check.json");
    assert_says(&told(&text), &[grip], &[]);
    let bare = sheet(&text, "{}", Medium::Text);
    assert_says(
        &read_aloud(&bare, Medium::Text),
        &["The closing torque"],
        &[grip],
    );
}

/// A leak reading that is close to its limit: 500 km or 14 days after 2025-05-13 by default, and nothing else is left to do.
#[test]
fn a_second_look_has_its_distance_and_its_day() {
    assert_says(
        &told(&journal("short_unit.json")),
        &["Have the level checked again after 500 km at the latest, by 2025-05-27: only"],
        &["What is listed below comes first."],
    );
}

/// The limit is 1.1 L: 1.1 − 0.946 = 0.154 L, 1.1 = 2 × 0.55 L.
#[test]
fn a_limit_in_containers_is_what_they_hold() {
    for (container, said) in [
        (
            "0.946 L",
            "The leak limit of 1.1 L is 1 container of 0.946 L and 0.154 L of the next: past that, look for the leak.",
        ),
        (
            "0.55 L",
            "The leak limit of 1.1 L is 2 containers of 0.55 L: past that, look for the leak.",
        ),
        (
            "4 L",
            "The leak limit is 1.1 L of one container of 4 L: past that, look for the leak.",
        ),
    ] {
        let particulars = format!(r#"{{"container":"{container}"}}"#);
        let text = journal("short_unit.json");
        let card = Particulars::read(&particulars, |read| {
            bay_card(&pack(), &text, read, Medium::Text)
        });
        let card = card.expect("particulars read").expect("a card is written");
        assert_says(&read_aloud(&card, Medium::Text), &[said], &["More than"]);
    }
}

/// At least 1.3 US qt: 1.3 = 1 + 0.3, and the pour that ends there, 3 × 0.35 + 0.25, is past it.
#[test]
fn a_limit_that_counts_itself_says_so() {
    let text = journal("at_the_limit.json");
    let card = Particulars::read(r#"{"container":"1 US qt"}"#, |read| {
        bay_card(&pack(), &text, read, Medium::Text)
    });
    let card = card.expect("particulars read").expect("a card is written");
    let said = [
        "The leak limit of 1.3 US qt is 1 container of 1 US qt and 0.3 US qt of the next: at that already, look for the leak.",
        "4 0.25 US qt 1.3 US qt pour no more, look for the leak",
    ];
    assert_says(&read_aloud(&card, Medium::Text), &said, &["past that"]);
}
