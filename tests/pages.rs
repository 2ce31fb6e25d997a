//! What the pages show is what is there: their code is the examples', their documents evaluate, their tables are whole.

use serde_json::Value;
use std::fs;
use std::path::Path;
use std::process::Command;

fn page(path: &str) -> String {
    fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join(path)).expect("the page is there")
}

/// The fenced blocks of a page with what stands behind their opening fence.
fn blocks(page: &str) -> Vec<(String, String)> {
    let mut blocks = Vec::new();
    let mut lines = page.lines();
    while let Some(line) = lines.next() {
        if let Some(info) = line.strip_prefix("```") {
            let body: Vec<&str> = lines
                .by_ref()
                .take_while(|line| !line.starts_with("```"))
                .collect();
            blocks.push((info.trim().to_string(), body.join("\n") + "\n"));
        }
    }
    blocks
}

#[test]
fn the_readme_shows_the_examples_as_they_are() {
    let readme = blocks(&page("README.md"));
    for (language, file) in [
        ("rust", "examples/rust/first_check.rs"),
        ("python", "examples/python/first_check.py"),
        ("c", "examples/c/first_check.c"),
    ] {
        let shown: Vec<&str> = readme
            .iter()
            .filter(|(info, _)| info == language)
            .map(|(_, body)| body.as_str())
            .collect();
        assert!(
            shown.contains(&page(file).as_str()),
            "README.md does not show {file} as it is"
        );
    }
}

#[test]
fn the_readme_shows_real_output() {
    let told = Command::new(env!("CARGO_BIN_EXE_level_service"))
        .output()
        .expect("the demonstration runs");
    let told = String::from_utf8(told.stdout).expect("it tells UTF-8");
    let (told, sheet) = told.trim_end().rsplit_once('\n').expect("a path");
    fs::remove_file(sheet.trim()).expect("the work sheet is there");
    let shown: Vec<String> = blocks(&page("README.md"))
        .into_iter()
        .filter(|(info, _)| info == "text")
        .map(|(_, body)| body)
        .collect();
    assert!(!shown.is_empty(), "README.md shows no output");
    for block in shown {
        // A line of dots stands for what was left out.
        for part in block.split("\n…\n") {
            assert!(
                told.contains(part.trim_matches('\n')),
                "README.md shows what is not told:\n{part}"
            );
        }
    }
}

#[test]
fn the_readme_shows_real_errors() {
    let blocks = blocks(&page("README.md"));
    let of = |kind: &str| {
        let found = blocks.iter().find(|(info, _)| info == kind);
        found
            .map(|(_, body)| body.trim_end())
            .expect("README.md has such a block")
    };
    let pack = brimline::Pack::embedded().expect("the embedded pack reads");
    let error = brimline::evaluate(&pack, of("json refused")).expect_err("it is refused");
    assert_eq!(error.to_string(), of("errors"));
}

#[test]
fn the_documents_of_the_authors_page_evaluate() {
    let blocks = blocks(&page("core/packs/README.md"));
    let of = |kind: &str| {
        blocks
            .iter()
            .filter(|(info, _)| info == kind)
            .map(|(_, body)| body.clone())
            .collect::<Vec<_>>()
    };
    let (packs, journals) = (of("json pack"), of("json journal"));
    assert_eq!((packs.len(), journals.len()), (2, 1));
    for pack in &packs {
        brimline::Pack::from_json(pack).expect("the pack reads");
    }
    let answer =
        brimline::evaluate(packs[1].as_str(), journals[0].as_str()).expect("the journal evaluates");
    assert_eq!(answer.verdict().slug(), "at_level");
    // Worked by hand: 40 g at 845 kg/m³ is 47.337 mL. By the scale, 35 g/(1.025 × 0.845 g/mL) = 40.409… mL at the least and
    // 45 g/(0.975 × 0.845 g/mL) = 54.6199… mL at the most, outward to the microlitre, came out of a pour of 0.23 to 0.27 L.
    assert_eq!(answer.net_added().to_string(), "[0.17538 L, 0.229591 L]");
}

#[test]
fn the_documents_of_the_page_on_prices_estimate() {
    let of = |path: &str, kind: &str| {
        let blocks = blocks(&page(path)).into_iter();
        let mut own = blocks.filter(|(info, _)| info == kind);
        own.next_back().expect("the page has such a block").1
    };
    let prices = of("core/packs/PRICES.md", "json prices");
    let asked = of("core/packs/PRICES.md", "json asked");
    let asked = brimline::estimate::Asked::from_json(&asked).expect("what is asked reads");
    let pack = brimline::Pack::from_json(&of("core/packs/README.md", "json pack"));
    let header = r#"{"format":"brimline-journal/1","procedure":"plain","job":"check"}"#;
    let check = brimline::LevelCheck::start(&pack.expect("the pack reads"), header)
        .expect("the header reads");
    let list = brimline::PriceList::from_json(&prices).expect("the list reads");
    let told = brimline::estimate(&list, &check, &asked).expect("all of it has a price");
    // Worked by hand: half an hour at 110.00 an hour 55.00, seal 2.10, threadlocker 0.90; 0.6 qt at 14.00 a quart 8.40 in the
    // likely case; in the worst 1 L, 1.0566882 qt, 14.79, the leak search 90.00 and a plug 7.50.
    let totals = told.cases().map(|case| case.total.total.to_string());
    assert_eq!(totals, ["58.00 USD", "66.40 USD", "170.29 USD"]);

    let mut cut: Value = serde_json::from_str(&prices).expect("the list is JSON");
    let members = cut.as_object_mut().expect("the list is an object");
    members.remove("seals");
    members.remove("leak_search");
    let list = brimline::PriceList::from_json(&cut.to_string()).expect("the list reads");
    let error = brimline::estimate(&list, &check, &asked).expect_err("two prices are missing");
    let mut paths: Vec<&str> = error.faults().map(|fault| fault.path.as_str()).collect();
    paths.sort_unstable();
    assert_eq!(paths, ["prices.leak_search", "procedure.closing.seal"]);
}

/// Every property a schema has, wherever it stands.
fn properties(schema: &Value, names: &mut Vec<String>) {
    match schema {
        Value::Object(members) => {
            if let Some(Value::Object(own)) = members.get("properties") {
                names.extend(own.keys().cloned());
            }
            members.values().for_each(|value| properties(value, names));
        }
        Value::Array(items) => items.iter().for_each(|item| properties(item, names)),
        _ => {}
    }
}

/// Holds a page to every field of some documents.
fn tells_every_field(path: &str, schemas: &[&str], least: usize) {
    let page = page(path);
    let mut names = Vec::new();
    for schema in schemas {
        let text = fs::read_to_string(
            Path::new(env!("CARGO_MANIFEST_DIR"))
                .join(format!("core/schemas/{schema}.schema.json")),
        );
        properties(
            &serde_json::from_str(&text.expect("the schema is there")).expect("the schema is JSON"),
            &mut names,
        );
    }
    assert!(names.len() > least);
    let quoted: Vec<&str> = page.split('`').skip(1).step_by(2).collect();
    let told = |name: &str| {
        quoted.iter().any(|text| {
            text.split(|c: char| !(c.is_alphanumeric() || c == '_'))
                .any(|word| word == name)
        })
    };
    let untold: Vec<&String> = names.iter().filter(|name| !told(name)).collect();
    assert!(untold.is_empty(), "{path} says nothing of {untold:?}");
}

#[test]
fn the_authors_pages_tell_every_field() {
    tells_every_field("core/packs/README.md", &["pack", "journal"], 80);
    tells_every_field("core/packs/PRICES.md", &["prices"], 30);
}
