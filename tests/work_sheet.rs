//! The work sheet and the bay card: what stands on them, in each of their three forms, and what never does.

#[path = "work_sheet/customer.rs"]
mod customer;

use brimline::estimate::Asked;
use brimline::report::{self, Medium, Particulars, Picture, bay_card, picture, work_sheet};
use brimline::{ErrorKind, LevelCheck, Pack, PriceList, estimate, evaluate, invoice};
use std::fs;
use std::path::Path;

const PARTICULARS: &str = r#"{
    "shop": ["Fernhollow Gear & Drive", "7 Weir Lane, Oddmere"],
    "tool": {"name": "click wrench", "type": "setting_adjustable", "max": "25 N·m", "min": "5 N·m",
             "graduation": "0.5 N·m", "lever": "230 mm"},
    "adapter": "40 mm", "scan_unit": "°F", "container": "0.946 L",
    "record": "00112233445566778899aabbccddeeff00112233445566778899aabbccddeeff"}"#;

fn pack() -> Pack {
    Pack::embedded().expect("the embedded pack reads")
}

fn journals() -> Vec<(String, String)> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("examples/journals");
    let mut read: Vec<(String, String)> = fs::read_dir(folder)
        .expect("the folder is there")
        .map(|entry| entry.expect("a folder lists").path())
        .map(|path| {
            let text = fs::read_to_string(&path).expect("a journal reads");
            (path.display().to_string(), text)
        })
        .collect();
    read.sort();
    assert!(read.len() >= 9);
    read
}

fn journal(name: &str) -> String {
    let all = journals();
    let found = all.into_iter().find(|(path, _)| path.ends_with(name));
    found.expect("the journal is there").1
}

fn sheet(journal: &str, particulars: &str, medium: Medium) -> String {
    let page = Particulars::read(particulars, |read| {
        work_sheet(&pack(), journal, read, medium)
    });
    page.expect("particulars read").expect("a sheet is written")
}

fn card(journal: &str, medium: Medium) -> String {
    let page = Particulars::read(PARTICULARS, |read| bay_card(&pack(), journal, read, medium));
    page.expect("particulars read").expect("a card is written")
}

/// What a reader reads: on one line, without markup and escapes.
fn read_aloud(page: &str, medium: Medium) -> String {
    let text = match medium {
        Medium::Html => {
            let body = page.split_once("</head>").expect("a head").1;
            let parts = body.split('<');
            let text: Vec<&str> = parts
                .filter_map(|part| Some(part.split_once('>')?.1))
                .collect();
            let escapes = [
                ("&lt;", "<"),
                ("&gt;", ">"),
                ("&quot;", "\""),
                ("&#39;", "'"),
                ("&amp;", "&"),
            ];
            let text = text.join(" ");
            escapes
                .iter()
                .fold(text, |text, (escape, letter)| text.replace(escape, letter))
        }
        Medium::Markdown => page.replace('\\', ""),
        _ => page.into(),
    };
    let text = text.replace('\u{a0}', " ");
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

#[test]
fn every_form_tells_the_whole_job() {
    for (name, text) in journals() {
        let result = evaluate(&pack(), text.as_str()).expect("it evaluates");
        for (_, medium) in Medium::WORDS {
            let page = sheet(&text, PARTICULARS, *medium);
            assert_eq!(page, sheet(&text, PARTICULARS, *medium), "the same bytes");
            let told = read_aloud(&page, *medium);
            let mut wanted = vec![
                report::verdict(result.verdict()).to_string(),
                report::departure(&result.as_found()),
                "Fernhollow Gear & Drive".into(),
                "What is not proven".into(),
                "00112233445566778899aabbccddeeff".into(),
            ];
            wanted.extend(result.findings().iter().map(report::finding));
            wanted.extend(result.next().iter().map(report::next_act));
            wanted.extend(result.procedure().digest.clone());
            let sheet = result.sheet().expect("every example has a sheet");
            let acts = result
                .next()
                .iter()
                .flat_map(|act| act.cautions.iter().copied());
            for id in result.cautions().iter().map(String::as_str).chain(acts) {
                let own = sheet.cautions.iter().find(|own| own.id == id);
                let own = own.map(|own| own.text.as_str());
                wanted.push(report::caution(id).or(own).expect(id).into());
            }
            for wanted in wanted {
                assert!(
                    told.contains(&wanted),
                    "{name} {medium:?}: {wanted:?} is left out of\n{told}"
                );
            }
            assert!(!told.contains(['{', '}']), "a place left open in {name}");
            if *medium == Medium::Text {
                assert!(
                    page.lines().all(|line| line.chars().count() <= 80),
                    "{page}"
                );
            }
        }
    }
}

#[test]
fn a_sheet_carries_the_pictures_as_they_are() {
    for (name, text) in journals() {
        let page = sheet(&text, PARTICULARS, Medium::Html);
        let check = LevelCheck::replay(&pack(), &text).expect("it replays");
        for which in [Picture::Narrowing, Picture::WarmUp] {
            let alone = picture(&check, which, None)
                .expect("it is drawn")
                .expect("a picture");
            let (head, style) = alone.split_once("<style>").expect("it has a style");
            let (_, rest) = style.split_once("</style>").expect("it has a style");
            assert!(page.contains(&format!("{head}{rest}")), "{name}: {which:?}");
        }
        assert_eq!(page.matches("<svg ").count(), 3, "{name}");
    }
}

#[test]
fn the_lines_of_money_are_those_of_the_invoice() {
    let prices = PriceList::embedded().expect("the embedded prices read");
    let text = journal("short_unit.json");
    let check = LevelCheck::replay(&pack(), &text).expect("it replays");
    let lines = check.journal_lines();
    let header = lines.lines().next().expect("a header");
    let before = LevelCheck::start(&pack(), header).expect("it starts");
    let promised = estimate(&prices, &before, &Asked::default()).expect("it has prices");
    let bill = invoice(&prices, &check, Some(&promised.quote())).expect("it has prices");
    let particulars = format!(
        r#"{{"prices":{},"estimate":{}}}"#,
        prices.to_json(),
        promised.to_json()
    );
    for (_, medium) in Medium::WORDS {
        let told = read_aloud(&sheet(&text, &particulars, *medium), *medium);
        let told = told.replace(" | ", " ");
        assert!(!bill.lines().is_empty());
        for line in bill.lines() {
            let wanted = format!(
                "{} {} {} {}",
                line.item,
                line.quantity_text(),
                line.price,
                line.net
            );
            assert!(told.contains(&wanted), "{medium:?}: {wanted}\n{told}");
        }
        let against = bill.against().expect("it was estimated");
        assert!(!against.lines.is_empty());
        let differences = against
            .lines
            .iter()
            .map(|line| format!("{} instead of {}", line.billed, line.estimated));
        let totals = [
            bill.total().total.to_string(),
            format!("estimated at {} with tax", against.estimated),
        ];
        for wanted in differences.chain(totals) {
            assert!(told.contains(&wanted), "{medium:?}: {wanted}\n{told}");
        }
    }
    let faults = Particulars::read(r#"{"prices":{"format":"brimline-prices/1"}}"#, |_| ())
        .expect_err("it lacks all");
    assert!(
        faults
            .faults()
            .all(|fault| fault.path.starts_with("prices."))
    );
}

/// The tags of a page in order, without what stands in and between them.
fn tags(page: &str) -> Vec<&str> {
    let parts = page.split('<').skip(1);
    parts
        .map(|part| {
            part.split(|c: char| c == '>' || c.is_whitespace())
                .next()
                .unwrap_or("")
        })
        .collect()
}

#[test]
fn whatever_a_host_typed_is_text() {
    let hostile = r#"</title><script>alert('x')</script><img src=x onerror=alert(1)>"&'<svg/onload=alert(2)>"#;
    let text = journal("short_unit.json");
    let typed = |words: &str| {
        let words = serde_json::to_string(words).expect("a string");
        text.replace("\"Oddry Fen estate\"", &words)
            .replace("\"flares in long bends\"", &words)
            .replace("\"drum 2\"", &words)
            .replace("\"Tilda\"", &words)
            .replace("\"short unit\"", &words)
    };
    let shop = |words: &str| {
        let words = serde_json::to_string(words).expect("a string");
        PARTICULARS
            .replace("\"7 Weir Lane, Oddmere\"", &words)
            .replace("\"click wrench\"", &words)
    };
    let (bad, plain) = (typed(hostile), typed("plain"));
    assert!(bad.matches("onerror").count() > 10);
    let bad_page = sheet(&bad, &shop(hostile), Medium::Html);
    assert_eq!(
        tags(&bad_page),
        tags(&sheet(&plain, &shop("plain"), Medium::Html))
    );
    assert!(bad_page.matches("&lt;script&gt;").count() > 10);
    for never in ["<script", "<img", "<svg/"] {
        assert!(!bad_page.contains(never), "{never}");
    }
    // Markdown shows it as it was typed, and takes none of it for markup.
    let told = sheet(&bad, &shop(hostile), Medium::Markdown);
    let open = told.matches('<').count();
    assert!(open > 10 && told.matches("\\<").count() == open);
}

#[test]
fn a_page_needs_nothing_from_elsewhere() {
    let text = journal("short_unit.json");
    for page in [
        sheet(&text, PARTICULARS, Medium::Html),
        card(&text, Medium::Html),
    ] {
        assert!(page.starts_with("<!DOCTYPE html>\n<html lang=\"en\">"));
        assert!(page.contains("default-src 'none'") && page.contains("@media print"));
        assert!(page.contains("prefers-color-scheme:dark"));
        let outside = page.replace("http://www.w3.org/2000/svg", "");
        for never in [
            "http:", "https:", "src=", "href=", "url(", "@import", "<script", "<link", "onload",
        ] {
            assert!(!outside.contains(never), "{never}");
        }
    }
}

/// Worked by hand from the second print of pipit-level: 42 °C is 107.6 °F; steps of 0.25 L, a limit of more than 1.1 L and a
/// least pour of 0.1 L end at 4 × 0.25 + 0.1 = 1.1 L; 1.1 L is one container of 0.946 L and 0.154 L; 13 N·m × 230 / 270 = 11.07 N·m,
/// on a scale of 0.5 N·m 11.0 N·m, which gives 11.0 × 270 / 230 = 12.91 N·m, 0.67 % less.
#[test]
fn the_card_of_a_pipit_is_right() {
    let told = read_aloud(
        &card(&journal("short_unit.json"), Medium::Text),
        Medium::Text,
    );
    let mut rest = told.as_str();
    for part in [
        "Open the plug with the scan tool at 107.6 °F or more.",
        "The sheet prints 42 °C, 107.6 °F.",
        "[ ] The fill opening must be proven to open.",
        "[ ] The wheels must be chocked.",
        "[ ] The engine must be running.",
        "Watch the opening for 20 s. Let a pour settle for 90 s.",
        "[ ] Open the level plug and look.",
        "[ ] Pour in 0.25 L of sedge-thin",
        "[ ] Put the plug in.",
        "[ ] Tighten the plug to 13 N·m ± 1.5 N·m.",
        "[ ] Stop the engine.",
        "The leak limit of 1.1 L is 1 container of 0.946 L and 0.154 L of the next",
        "1 0.25 L 0.25 L 2 0.25 L 0.5 L 3 0.25 L 0.75 L 4 0.25 L 1 L nothing came: doubt the opening",
        "5 0.1 L 1.1 L ends at the leak limit",
        "6 0.25 L 1.35 L pour no more, look for the leak",
        "Set click wrench to 11.0 N·m: the plug gets 12.9 N·m, 0.7 % less than asked.",
        "Cautions",
    ] {
        let Some((_, after)) = rest.split_once(part) else {
            panic!("{part:?} is not told after the ones before it, in:\n{told}");
        };
        rest = after;
    }
    for id in [
        "decision_limit",
        "support",
        "wheels_turn",
        "plug_identity",
        "hot_fluid",
        "exhaust_gas",
        "moving_parts",
        "auto_start",
        "slip_fire",
        "close_before_stop",
        "no_dry_start",
        "torque_unit",
        "after_work",
        "leak_on_hot",
        "disposal",
        "not_proven",
        "grip_at_mark",
        "threads_as_printed",
        "levelling_off",
    ] {
        assert!(
            rest.contains(report::caution(id).expect(id)),
            "{id} is left out"
        );
    }
    assert!(rest.contains("beside a coolant hose"));
}

/// From the sheet of at_the_limit: 106 °F to 124 °F, shown by a tool in °C: 41.11… and 51.11…, so 41.2 °C to 51.1 °C lie inside.
#[test]
fn a_window_in_another_unit_lies_inside_the_limits() {
    let text = journal("at_the_limit.json");
    let particulars = r#"{"scan_unit":"°C"}"#;
    let page = Particulars::read(particulars, |read| {
        bay_card(&pack(), &text, read, Medium::Text)
    });
    let page = page.expect("particulars read").expect("a card is written");
    let told = read_aloud(&page, Medium::Text);
    assert!(told.contains("scan tool at 41.2 °C to 51.1 °C."), "{told}");
}

#[test]
fn what_a_page_is_given_is_read_strictly() {
    let fault = |text: &str| {
        let error = Particulars::read(text, |_| ()).expect_err(text);
        let faults = error.faults().map(|fault| (fault.kind, fault.path.clone()));
        faults.collect::<Vec<_>>()
    };
    let known = [
        (r#"{"scan_unit":"N·m"}"#, ErrorKind::WrongKind, "scan_unit"),
        (r#"{"container":"0 L"}"#, ErrorKind::OutOfRange, "container"),
        (r#"{"container":"2"}"#, ErrorKind::UnitMissing, "container"),
        (r#"{"adapter":"40 mm"}"#, ErrorKind::Conflict, "adapter"),
        (r#"{"shopp":[]}"#, ErrorKind::UnknownField, "shopp"),
        (
            r#"{"tool":{"name":"x","type":"y","max":"25 N·m"}}"#,
            ErrorKind::UnknownValue,
            "tool.type",
        ),
    ];
    for (text, kind, path) in known {
        assert_eq!(fault(text), [(kind, path.to_string())], "{text}");
    }
}
