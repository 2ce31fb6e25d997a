//! The house: each module uses those below it only, no file is long, nothing is unsafe but the C border.

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::{Path, PathBuf};

/// Lines a file may have before its tests.
const MOST_LINES: usize = 400;

/// Every folder with Rust in it.
const HOUSE: [&str; 6] = [
    "core/src",
    "bindings-c/src",
    "bindings-python/src",
    "tests",
    "examples",
    "benches",
];

fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

/// The Rust files below a folder.
fn sources(folder: &str) -> Vec<PathBuf> {
    files(folder, "rs")
}

/// The files below a folder with an extension.
fn files(folder: &str, extension: &str) -> Vec<PathBuf> {
    let (mut files, mut folders) = (Vec::new(), vec![root().join(folder)]);
    while let Some(folder) = folders.pop() {
        for entry in fs::read_dir(&folder).expect("the folder is there") {
            let path = entry.expect("a folder lists").path();
            if path.is_dir() {
                folders.push(path);
            } else if path.extension().is_some_and(|own| own == extension) {
                files.push(path);
            }
        }
    }
    files.sort();
    files
}

fn text(file: &Path) -> String {
    fs::read_to_string(file).expect("a source reads")
}

fn name(file: &Path) -> String {
    let inside = file.strip_prefix(root()).expect("it is in the house");
    inside.display().to_string()
}

/// One row of the table.
#[derive(Debug, Clone, PartialEq)]
struct Row {
    module: String,
    layer: u32,
    may_use: Vec<String>,
}

/// The table under `## Layers`: module, layer, and what it may use.
fn table(page: &str) -> Vec<Row> {
    let (_, section) = page
        .split_once("\n## Layers\n")
        .expect("DEVELOPERS.md has the section");
    let section = section.split("\n## ").next().expect("a section");
    let rows = section.lines().filter(|line| line.starts_with('|')).skip(2);
    rows.map(|line| {
        let cells: Vec<&str> = line.trim_matches('|').split('|').map(str::trim).collect();
        let [module, layer, may_use] = cells[..] else {
            panic!("three cells are needed: {line}");
        };
        Row {
            module: module.to_string(),
            layer: layer.parse().unwrap_or_else(|_| panic!("no layer: {line}")),
            may_use: may_use
                .split(',')
                .map(|module| module.trim().to_string())
                .filter(|module| !module.is_empty())
                .collect(),
        }
    })
    .collect()
}

/// The code of a source, without its comments.
fn code(source: &str) -> String {
    let lines = source
        .lines()
        .map(|line| line.split("//").next().unwrap_or(""));
    lines.collect::<Vec<_>>().join("\n")
}

/// The modules a source names by `crate::…`, in groups and paths alike.
fn used(source: &str) -> BTreeSet<String> {
    let mut modules = BTreeSet::new();
    let identifier = |text: &str| -> String {
        let letters = text
            .chars()
            .take_while(|c| c.is_alphanumeric() || *c == '_');
        letters.collect()
    };
    let code = code(source);
    for (at, _) in code.match_indices("crate::") {
        let before = code[..at].chars().next_back();
        if before.is_some_and(|c| c.is_alphanumeric() || c == '_') {
            continue;
        }
        let rest = &code[at + "crate::".len()..];
        let Some(group) = rest.strip_prefix('{') else {
            modules.insert(identifier(rest));
            continue;
        };
        // The first identifier after the brace and after each comma that is not inside another brace.
        let (mut depth, mut expects) = (0, true);
        for (at, letter) in group.char_indices() {
            match letter {
                '{' => depth += 1,
                '}' if depth == 0 => break,
                '}' => depth -= 1,
                ',' if depth == 0 => expects = true,
                c if expects && !c.is_whitespace() => {
                    modules.insert(identifier(&group[at..]));
                    expects = false;
                }
                _ => {}
            }
        }
    }
    modules
}

/// The module a file of `core/src` belongs to: its folder, or itself.
fn module(file: &Path) -> String {
    let inside = file
        .strip_prefix(root().join("core/src"))
        .expect("a file of the core");
    let first = inside.components().next().expect("it has a name");
    let first = first.as_os_str().to_string_lossy();
    first.trim_end_matches(".rs").to_string()
}

/// What the table forbids, of modules and the modules they use.
fn broken(table: &[Row], uses: &BTreeMap<String, BTreeSet<String>>) -> Vec<String> {
    let mut broken = Vec::new();
    for (index, row) in table.iter().enumerate() {
        if !uses.contains_key(&row.module) {
            broken.push(format!(
                "{} is in the table and not in core/src",
                row.module
            ));
        }
        for used in &row.may_use {
            // Only what stands above it, so that no two can use each other.
            let below = table[..index].iter().find(|other| other.module == *used);
            if below.is_none_or(|other| other.layer > row.layer) {
                broken.push(format!("{} may not be allowed {used}", row.module));
            }
        }
    }
    for (module, used) in uses {
        let Some(row) = table.iter().find(|row| row.module == *module) else {
            broken.push(format!("{module} is not in the table"));
            continue;
        };
        let allowed = |used: &&String| **used == *module || row.may_use.contains(used);
        for used in used.iter().filter(|used| !allowed(used)) {
            broken.push(format!("{module} uses {used}"));
        }
    }
    broken
}

fn assert_none(broken: Vec<String>) {
    assert!(broken.is_empty(), "{}", broken.join("\n"));
}

#[test]
fn modules_use_those_below_them() {
    let mut uses: BTreeMap<String, BTreeSet<String>> = BTreeMap::new();
    for file in sources("core/src") {
        let module = module(&file);
        if module != "lib" {
            uses.entry(module).or_default().extend(used(&text(&file)));
        }
    }
    let table = table(&text(&root().join("DEVELOPERS.md")));
    assert!(table.len() >= 8, "only {} rows", table.len());
    assert_none(broken(&table, &uses));
}

/// The check itself, on a house of its own.
#[test]
fn a_broken_layer_is_seen() {
    let page = "# Page\n\n## Layers\n\nWords.\n\n| module | layer | may use |\n|---|---|---|\n\
                | low | 0 | |\n| mid | 1 | low |\n| top | 2 | low, mid |\n\n## Next\n\n| a | b | c |\n";
    let table = table(page);
    assert_eq!(table.len(), 3);
    assert_eq!(table[2].may_use, ["low", "mid"]);
    let house = |low: &str, mid: &str, top: &str| {
        let sources = [("low", low), ("mid", mid), ("top", top)];
        let uses = sources.map(|(module, source)| (module.to_string(), used(source)));
        broken(&table, &uses.into_iter().collect())
    };
    let sound = "use crate::low::{A, B};\n// use crate::top::C;\nuse crate::{low::D, mid::{E, F}};";
    assert_eq!(house("", "use crate::low::A;", sound), [""; 0]);
    assert_eq!(house("use crate::mid::A;", "", ""), ["low uses mid"]);
    assert_eq!(
        house("fn f() { crate::top::g() }", "", ""),
        ["low uses top"]
    );
    assert_eq!(
        house("", "use crate::{\n    low::A,\n    top::{B},\n};", ""),
        ["mid uses top"]
    );
    assert_eq!(
        house("", "pub(in crate::top) fn f() {}", ""),
        ["mid uses top"]
    );
    let mut upward = table.clone();
    upward[0].may_use.push("mid".into());
    let uses = ["low", "mid", "top", "odd"].map(|module| (module.to_string(), BTreeSet::new()));
    let told = ["low may not be allowed mid", "odd is not in the table"];
    assert_eq!(broken(&upward, &uses.into_iter().collect()), told);
}

fn lines_before_tests(source: &str) -> usize {
    let lines = source.lines();
    lines
        .take_while(|line| line.trim() != "#[cfg(test)]")
        .count()
}

#[test]
fn no_file_is_long() {
    let c = [("tests/c", "c"), ("tests/c", "h"), ("examples/c", "c")];
    let c = c.map(|(folder, extension)| files(folder, extension));
    let files = HOUSE
        .into_iter()
        .flat_map(sources)
        .chain(c.into_iter().flatten());
    let long = files.filter_map(|file| {
        let lines = lines_before_tests(&text(&file));
        (lines > MOST_LINES).then(|| format!("{}: {lines} lines before its tests", name(&file)))
    });
    assert_none(long.collect());
    let source = "a\n".repeat(400);
    assert_eq!(
        lines_before_tests(&format!("{source}#[cfg(test)]\n{source}")),
        400
    );
    assert_eq!(lines_before_tests(&format!("{source}b\n")), 401);
}

/// Files are nouns of the trade, not places for whatever is left over.
#[test]
fn no_file_is_a_drawer() {
    let drawers = [
        "util", "utils", "common", "manager", "helper", "helpers", "misc",
    ];
    let files = HOUSE.into_iter().flat_map(sources).map(|file| name(&file));
    let bad = files.filter(|name| {
        name.trim_end_matches(".rs")
            .split('/')
            .any(|part| drawers.contains(&part))
    });
    assert_none(bad.collect());
}

/// Only what crosses the C border is unsafe; the core forbids it outright.
#[test]
fn nothing_is_unsafe_but_the_c_border() {
    let folders = ["core/src", "bindings-python/src", "examples", "benches"];
    let is_unsafe = |source: &str| {
        let code = code(source);
        let mut words = code.split(|c: char| !c.is_alphanumeric() && c != '_');
        words.any(|word| word == "unsafe")
    };
    let files = folders.into_iter().flat_map(sources);
    let bad = files.filter(|file| is_unsafe(&text(file)));
    assert_none(bad.map(|file| name(&file)).collect());
    assert!(is_unsafe("fn f() { unsafe { g() } }") && !is_unsafe("// unsafe\nfn unsafely() {}"));
    let manifest = text(&root().join("core/Cargo.toml"));
    assert!(manifest.contains("unsafe_code = \"forbid\""));
    assert!(text(&root().join("core/src/lib.rs")).contains("#![no_std]"));
}
