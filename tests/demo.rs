//! The demonstration: what it tells of each example journal, and what it says of a bad one.

#[path = "demo/examples.rs"]
mod examples;

use brimline::{Pack, Record, evaluate};
use examples::EXAMPLES;
use std::fs;
use std::io::Write;
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Output, Stdio};

struct Told {
    code: Option<i32>,
    out: String,
    err: String,
}

impl From<Output> for Told {
    fn from(output: Output) -> Self {
        let text = |bytes| String::from_utf8(bytes).expect("the demonstration writes UTF-8");
        Told {
            code: output.status.code(),
            out: text(output.stdout),
            err: text(output.stderr),
        }
    }
}

fn demo(args: &[&str]) -> Told {
    start(args).wait_with_output().expect("it ends").into()
}

fn start(args: &[&str]) -> Child {
    let mut command = Command::new(env!("CARGO_BIN_EXE_level_service"));
    // Wherever it is started from.
    command.current_dir(std::env::temp_dir()).args(args);
    command.stdin(Stdio::null());
    command.stdout(Stdio::piped()).stderr(Stdio::piped());
    command.spawn().expect("the demonstration starts")
}

impl Told {
    /// The work sheet it wrote, which is taken away, and what it told before its path.
    fn sheet(&self) -> (String, &str) {
        let (told, path) = self.out.trim_end().rsplit_once('\n').expect("a path");
        let path = Path::new(path.trim());
        let sheet = fs::read_to_string(path).expect("the work sheet is there");
        fs::remove_file(path).expect("it is this run's own");
        (sheet, told)
    }
}

fn demo_reading(input: &str, args: &[&str]) -> Told {
    let mut child = Command::new(env!("CARGO_BIN_EXE_level_service"))
        .args(args)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .expect("the demonstration starts");
    let mut stdin = child.stdin.take().expect("its input is open");
    stdin
        .write_all(input.as_bytes())
        .expect("it reads its input");
    drop(stdin);
    child.wait_with_output().expect("it ends").into()
}

fn journals() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("examples/journals")
}

/// The text on one line, as a reader hears it.
fn flat(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// Each of these in turn, one after the other.
fn assert_in_order(text: &str, parts: &[&str]) {
    let text = flat(text);
    let mut rest = text.as_str();
    for part in parts {
        let Some((_, after)) = rest.split_once(part) else {
            panic!("{part:?} is not told after the ones before it, in:\n{text}");
        };
        rest = after;
    }
}

#[test]
fn the_default_run_tells_the_whole_job() {
    let told = demo(&[]);
    assert_eq!((told.code, told.err.as_str()), (Some(0), ""));
    assert_in_order(
        &told.out,
        &[
            // Setup and cautions.
            "Level check on Oddry Fen estate",
            "pipit-level, edition 2",
            "Fluid at 42 °C or more",
            "Leak limit: more than 1.1 L",
            "Cautions",
            "vehicle maker's current procedure",
            "beside a coolant hose",
            "What happened",
        ],
    );
    assert_in_order(
        &told.out,
        &[
            "What happened",
            // The gate refuses, four times, and then allows.
            "The plug stays in. The closing kit must lie ready.",
            "The fluid is at 22 °C; the sheet asks for 42 °C or more.",
            "The plug stays in. The fluid is at 31 °C; the sheet asks for 42 °C or more.",
            "The plug stays in. The fluid is at 38 °C; the sheet asks for 42 °C or more.",
            "The plug stays in. The fluid is at 41 °C; the sheet asks for 42 °C or more.",
            "The plug may come out now.",
            // The interval narrows: each quarter litre by meter is 0.245 L to 0.255 L.
            "As found: at the level or short",
            "Pour in 0.25 L of sedge-thin",
            "As found: at least 0.245 L short.",
            "As found: at least 0.49 L short.",
            "As found: at least 0.735 L short.",
            "As found: at least 0.98 L short.",
            // Past a quarter of the refill with nothing coming, and the step that decides the leak question.
            "Doubt the opening",
            "Pour in 0.1 L of sedge-thin",
            "Not the whole step of 0.25 L: the leak limit of 1.1 L lies inside it",
            "A trickle came at 47 °C, with every condition of the sheet met: at level.",
            "As found: between 1.013 L and 1.073 L short. Now: at the level.",
            // The mistake: 13 lbf·ft is 13 × 1.3558… = 17.6 N·m.
            "Plug tightened to 13 lbf·ft",
            "Stop: Entered as 13 lbf·ft, which is 17.6 N·m; the sheet asks for 13 N·m.",
            "Entry 36 is corrected",
            "That settles the finding on entry 36.",
            "Verdict At level",
            "As found between 1.013 L and 1.073 L short",
            "Leak reading Below the leak limit. Counted 1.043 L net",
            "Margin 0.057 L. Marginal",
            "Why, by entry",
            "What would turn it",
            // One degree below the window; and 0.06 L more, which is 1.103 L net.
            "Had entry 33 read 41 °C instead of 47 °C, the verdict would be: not low",
            "Had 0.31 L been poured at entry 19 instead of 0.25 L, the leak reading would be: past the limit",
            "What is not proven",
            "That the shortage is clear of the leak limit.",
            "Where the missing fluid went",
        ],
    );
    // The counter: what was estimated and what was billed; the sheet is there where it says. Billed are 75.52 at 19 %,
    // which is 14.3488, and a tenth of a litre of waste, 0.06 at 4 %: 75.52 + 14.35 + 0.06.
    assert_in_order(
        &told.out,
        &[
            "Lines and total",
            "Fluid: ",
            "Total",
            "Against the estimate",
            "estimated at 81.04 EUR with tax and 89.93 EUR is billed: 8.89 EUR more.",
            "Line by line, without tax:",
            "What came out",
            "Work sheet:",
        ],
    );
    // It came out of a drum, so no bottle was opened; and the bill keeps within what was approved.
    assert!(!told.out.contains("What is left over") && !told.out.contains("For the shop"));
    let (sheet, _) = told.sheet();
    assert!(sheet.starts_with("<!DOCTYPE html>") && sheet.contains("Fernhollow Gear &amp; Drive"));
    // 13 N·m × 230 / 270 = 11.07 N·m, on a scale of 0.5 N·m 11.0 N·m.
    assert!(sheet.contains("data-setting=\"11.0 N·m\""));
    assert!(sheet.contains(&digest("short_unit.json")));
    // What the correction settled is no finding of the result.
    assert!(!told.out.contains("Findings"));
}

/// The digest of an example's record.
fn digest(file: &str) -> String {
    let pack = Pack::embedded().expect("the embedded pack reads");
    let journal = fs::read_to_string(journals().join(file)).expect("the journal is there");
    let record = Record::seal(&pack, journal.as_str()).expect("it is sealed");
    record.digest().to_string()
}

#[test]
fn runs_at_one_time_write_a_sheet_each() {
    let files = ["short_unit.json", "overfull.json", "at_the_limit.json"];
    let runs = files.map(|file| start(&[&journals().join(file).to_string_lossy()]));
    let told = runs.map(|run| Told::from(run.wait_with_output().expect("it ends")));
    for (file, told) in files.iter().zip(told) {
        assert_eq!((told.code, told.err.as_str()), (Some(0), ""), "{file}");
        assert!(told.sheet().0.contains(&digest(file)), "{file}");
    }
}

#[test]
fn every_example_comes_to_what_was_worked_by_hand() {
    let pack = Pack::embedded().expect("the embedded pack reads");
    for example in EXAMPLES {
        let text = fs::read_to_string(journals().join(example.file)).expect("the journal is there");
        let result = evaluate(&pack, text.as_str()).expect(example.file);
        let leak = result.leak();
        let findings: Vec<&str> = result.findings().iter().map(|finding| finding.id).collect();
        assert_eq!(result.verdict().slug(), example.verdict, "{}", example.file);
        assert_eq!(
            result.as_found().to_string(),
            example.as_found,
            "{}",
            example.file
        );
        assert_eq!(result.now().to_string(), example.now, "{}", example.file);
        let reading = (leak.by_sheet.slug(), leak.certainty.slug());
        assert_eq!(reading, example.leak, "{}", example.file);
        let used = leak.counted.used.map(|used| used.to_string());
        assert_eq!(used.as_deref(), Some(example.used), "{}", example.file);
        assert_eq!(findings, example.findings, "{}", example.file);
    }
}

#[test]
fn every_example_is_told() {
    let mut files: Vec<String> = fs::read_dir(journals())
        .expect("the folder is there")
        .map(|entry| entry.expect("a folder lists").file_name())
        .map(|name| name.to_string_lossy().into_owned())
        .collect();
    files.sort();
    let mut known: Vec<&str> = EXAMPLES.iter().map(|example| example.file).collect();
    known.sort_unstable();
    assert_eq!(files, known, "every example has its claims here");
    for example in EXAMPLES {
        let file = journals().join(example.file);
        let told = demo(&[&file.to_string_lossy()]);
        assert_eq!(
            (told.code, told.err.as_str()),
            (Some(0), ""),
            "{}",
            example.file
        );
        assert_in_order(&told.out, example.told);
        let out = flat(&told.out);
        for always in [
            "vehicle maker's current procedure",
            "Nobody goes underneath",
            "Hot fluid and hot exhaust burn",
            "What is not proven",
        ] {
            assert!(out.contains(always), "{}: {always}", example.file);
        }
        for never in [" OK", "FAIL", "guaranteed", "no leak."] {
            assert!(!out.contains(never), "{}: {never}", example.file);
        }
        let (_, told) = told.sheet();
        assert!(told.lines().all(|line| line.chars().count() <= 80));
    }
}

#[test]
fn a_bad_journal_tells_every_fault_with_its_place() {
    let journal = r#"{"format":"brimline-journal/1","procedure":"pipit-level","job":"check","entries":[
{"seq":1,"at":"2025-03-04T09:00:00Z","kind":"added","volume":"0.5","measured_by":"jug"},
{"seq":2,"at":"2025-03-04T09:01:00Z","kind":"temperature","reading":"42","source":"scan"},
{"seq":2,"at":"2025-03-04T09:02:00Z","kind":"flow","grade":"torrent","for":"20 s"}]}"#;
    let told = demo_reading(journal, &["-"]);
    assert_eq!((told.code, told.out.as_str()), (Some(1), ""));
    for (path, line) in [
        ("entries[0].volume", "(line 2,"),
        ("entries[1].reading", "(line 3,"),
        ("entries[2].grade", "(line 4,"),
    ] {
        let fault = told.err.lines().find(|line| line.contains(path));
        assert!(
            fault.is_some_and(|fault| fault.contains(line)),
            "{path}:\n{}",
            told.err
        );
    }
}

#[test]
fn a_journal_is_read_from_the_input_and_a_pack_from_a_file() {
    let pack = Path::new(env!("CARGO_MANIFEST_DIR")).join("core/packs/fernhollow.json");
    let pack = pack.to_string_lossy();
    let journal =
        fs::read_to_string(journals().join("short_unit.json")).expect("the journal is there");
    let told = demo_reading(&journal, &["-", &pack]);
    assert_eq!((told.code, told.err.as_str()), (Some(0), ""));
    // Each run names a sheet of its own.
    let again = demo(&[]);
    assert_eq!(told.sheet(), again.sheet());
}

#[test]
fn a_bad_pack_and_a_missing_file_are_named() {
    let file = journals().join("short_unit.json");
    let file = file.to_string_lossy();
    let no_pack = demo(&[&file, &file]);
    assert_eq!((no_pack.code, no_pack.out.as_str()), (Some(1), ""));
    assert!(no_pack.err.contains("format") && no_pack.err.contains("short_unit.json"));
    let nothing = demo(&["nowhere.json"]);
    assert_eq!(nothing.code, Some(1));
    assert!(nothing.err.starts_with("nowhere.json: "));
    let too_many = demo(&["a", "b", "c"]);
    assert_eq!(too_many.code, Some(1));
    assert!(too_many.err.starts_with("usage: "));
    let help = demo(&["--help"]);
    assert!(help.code == Some(0) && help.out.starts_with("usage: "));
}
