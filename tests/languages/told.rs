//! Everything that is told, with what the host itself wrote in it: the journals of the vectors and the examples, each
//! counter and each set of records of the vectors, every page in every form.

use super::journals::{evaluated, more};
use super::left_over::own_words;
use super::vector_cases::{cases, tellings};
use brimline::estimate::Asked;
use brimline::report::{Medium, Particulars, Teller};
use brimline::{LevelCheck, Pack, PriceList, estimate, evaluate};
use std::rc::Rc;

/// One telling.
pub struct Told {
    /// What it is of, for a failure.
    pub of: String,
    /// What a reader reads.
    pub text: String,
    /// The host's own words in it.
    pub own: Rc<Vec<String>>,
}

/// What a host hands in for a page of any sheet.
const PARTICULARS: &str = r#"{"shop":["Fernhollow Gear & Drive","7 Weir Lane, Oddmere"],
    "tool":{"name":"click wrench","type":"setting_adjustable","max":"25 N·m","min":"5 N·m","graduation":"0.5 N·m","lever":"230 mm"},
    "adapter":"40 mm","scan_unit":"°F","container":"0.946 L","record":"00112233445566778899aabbccddeeff"}"#;

/// What a reader reads of HTML: what stands between the tags, the styles left out.
fn read_aloud(page: &str, medium: Medium) -> String {
    if medium == Medium::Markdown {
        return page.replace('\\', "");
    }
    if medium != Medium::Html {
        return page.into();
    }
    let mut text = String::new();
    for part in page.split('<') {
        let (tag, between) = part.split_once('>').unwrap_or((part, ""));
        if !tag.starts_with("style") {
            text.push(' ');
            text.push_str(between);
        }
    }
    [
        ("&lt;", "<"),
        ("&gt;", ">"),
        ("&quot;", "\""),
        ("&#39;", "'"),
        ("&amp;", "&"),
    ]
    .iter()
    .fold(text, |text, (escape, letter)| text.replace(escape, letter))
}

/// Every telling by this teller; of the journals one in so many.
pub fn everything(teller: &Teller, one_in: usize) -> Vec<Told> {
    let mut told = Vec::new();
    let journals = evaluated().into_iter().chain(more()).step_by(one_in);
    for (index, (pack, journal)) in journals.enumerate() {
        of_a_journal(teller, index, &pack, &journal, &mut told);
    }
    of_counters_and_records(teller, &mut told);
    told
}

/// The text, the story, and both pages, each in one form after the other.
fn of_a_journal(teller: &Teller, index: usize, pack: &Pack, journal: &str, told: &mut Vec<Told>) {
    let (_, medium) = Medium::WORDS[index % Medium::WORDS.len()];
    let prices = PriceList::embedded().expect("the embedded list reads");
    let check = LevelCheck::replay(pack, journal).expect("what evaluates is a check");
    let priced = estimate(&prices, &check, &Asked::default()).ok();
    let quote = priced.map(|estimate| estimate.quote());
    let page = |is_sheet: bool, particulars: &str| {
        Particulars::read(particulars, |read| {
            let mut read = read.clone();
            read.prices = quote.is_some().then(|| prices.clone());
            read.estimate = quote.clone();
            if is_sheet {
                teller.work_sheet(pack, journal, &read, medium)
            } else {
                teller.bay_card(pack, journal, &read, medium)
            }
        })
        .expect("particulars read")
    };
    let evaluation = evaluate(pack, journal).expect("it evaluates");
    let story = teller.story(pack, journal);
    let mut pages = vec![
        ("text", teller.text(&evaluation)),
        ("story", story.expect("what evaluates is told")),
        (
            "lint",
            pack.lint()
                .iter()
                .map(|own| teller.lint(own) + "\n")
                .collect(),
        ),
    ];
    for (of, is_sheet) in [("work sheet", true), ("bay card", false)] {
        // A tool that does not reach the torque of the sheet is refused, and with it the page.
        let page = page(is_sheet, PARTICULARS).or_else(|_| page(is_sheet, "{}"));
        pages.push((of, read_aloud(&page.expect("a page is written"), medium)));
    }
    let own = own_words(&[journal, PARTICULARS, &pack.to_json(), &prices.to_json()]);
    told.extend(pages.into_iter().map(|(of, text)| Told {
        of: format!("{of}, {medium:?}, of {journal}"),
        text,
        own: Rc::clone(&own),
    }));
}

/// What the vectors answer about counters and records, told.
fn of_counters_and_records(teller: &Teller, told: &mut Vec<Told>) {
    let embedded = [
        Pack::embedded().expect("the embedded pack reads").to_json(),
        PriceList::embedded()
            .expect("the embedded list reads")
            .to_json(),
    ];
    for case in cases().iter().filter(|case| case.expected.is_ok()) {
        let op = format!("told_{}", case.request.op);
        if !tellings::PAGES.contains(&op.as_str()) {
            continue;
        }
        let text = tellings::page(&op, teller, &case.request.args);
        let given = embedded.iter().chain(&case.request.args);
        let given: Vec<&str> = given.map(String::as_str).collect();
        told.push(Told {
            of: format!("{op} {}", case.name),
            text: text.expect("it is answered without a teller"),
            own: own_words(&given),
        });
    }
}
