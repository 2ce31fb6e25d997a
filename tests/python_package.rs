//! The Python package: its suite, its answers to every vector, its example and its type stub.
//!
//! The module that cargo built beside this executable is laid next to the package's Python files; Python 3.10 or
//! newer with its standard library is all it takes. `BRIMLINE_PYTHON` names another interpreter than `python3`,
//! `BRIMLINE_BLESS=1` writes the stub anew.

mod vector_cases;

#[path = "../bindings-python/src/border.rs"]
mod border;

use brimline::{Amount, ErrorKind, Evaluation, Pack, evaluate};
use serde_json::Value;
use std::env;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Command, Output};
use std::sync::OnceLock;
use vector_cases::{answer, cases, read_answers, root, write_requests};

/// The built module, by its exact name: files of other names beside it may be stale.
fn module() -> PathBuf {
    let name = format!(
        "{}_native{}",
        env::consts::DLL_PREFIX,
        env::consts::DLL_SUFFIX
    );
    let executable = env::current_exe().expect("the test knows its own place");
    let module = executable.with_file_name(name);
    assert!(module.is_file(), "cargo built no {}", module.display());
    module
}

/// A folder of this test's own.
fn scratch() -> PathBuf {
    Path::new(env!("CARGO_TARGET_TMPDIR")).join("python_package")
}

/// The folder that holds the package `brimline`, laid out once.
fn package() -> &'static Path {
    static LAID: OnceLock<PathBuf> = OnceLock::new();
    LAID.get_or_init(|| {
        let folder = scratch().join("package");
        let package = folder.join("brimline");
        let _ = fs::remove_dir_all(&folder);
        fs::create_dir_all(&package).expect("the folder is made");
        let suffix = if cfg!(windows) { "pyd" } else { "so" };
        let native = package.join(format!("_native.abi3.{suffix}"));
        fs::copy(module(), native).expect("the module is copied");
        let sources = fs::read_dir(root().join("bindings-python/python/brimline"));
        for source in sources.expect("the package's files are there") {
            let source = source.expect("a folder lists").path();
            if source.extension().is_some_and(|ext| ext == "py") {
                let name = source.file_name().expect("a file has a name");
                fs::copy(&source, package.join(name)).expect("a file is copied");
            }
        }
        folder
    })
}

/// Python with the package, strict about warnings.
fn python() -> Command {
    static INTERPRETER: OnceLock<String> = OnceLock::new();
    let interpreter = INTERPRETER.get_or_init(|| {
        let name = env::var("BRIMLINE_PYTHON").unwrap_or_else(|_| "python3".into());
        let asked = "import sys; sys.exit(sys.version_info < (3, 10))";
        let is_there = Command::new(&name).args(["-c", asked]).status();
        assert!(
            is_there.is_ok_and(|status| status.success()),
            "Python 3.10 or newer is needed as `{name}`: install it, or name it in BRIMLINE_PYTHON"
        );
        name
    });
    let mut python = Command::new(interpreter);
    python
        .args(["-B", "-X", "dev", "-X", "utf8", "-W", "error"])
        .env("PYTHONPATH", package())
        .current_dir(package());
    python
}

fn run(mut command: Command) -> Output {
    let output = command.output().expect("Python starts");
    assert!(
        output.status.success(),
        "{command:?}\n{}{}",
        String::from_utf8_lossy(&output.stdout),
        String::from_utf8_lossy(&output.stderr)
    );
    output
}

#[test]
fn the_suite_passes() {
    let mut suite = python();
    suite
        .args(["-m", "unittest", "discover", "-s"])
        .arg(root().join("bindings-python/tests"));
    let said = run(suite).stderr;
    let said = String::from_utf8_lossy(&said);
    let ran = said
        .split("Ran ")
        .nth(1)
        .and_then(|rest| rest.split(' ').next())
        .and_then(|count| count.parse::<usize>().ok());
    assert!(ran.is_some_and(|count| count > 40), "{said}");
}

#[test]
fn every_vector_has_the_bytes_of_rust() {
    let cases = cases();
    let requests: Vec<_> = cases.iter().map(|case| case.request.clone()).collect();
    let folder = scratch();
    fs::create_dir_all(&folder).expect("the folder is made");
    let (asked, answered) = (folder.join("requests"), folder.join("answers"));
    fs::write(&asked, write_requests(&requests)).expect("the requests are written");
    let mut runner = python();
    runner
        .arg(root().join("bindings-python/tests/answer_vectors.py"))
        .args([&asked, &answered]);
    run(runner);
    let answers = read_answers(&fs::read(answered).expect("the answers are there"));
    assert_eq!(answers.len(), cases.len());
    for (case, given) in cases.iter().zip(answers) {
        let ours = answer(&case.request);
        let is_flat = FLAT.contains(&case.request.op.as_str()) && !ours.starts_with("{\"error\"");
        let same = ours == given || (is_flat && value(&ours) == value(&given));
        assert!(
            same,
            "{}: {}\nRust   {ours}\nPython {given}",
            case.file, case.name
        );
    }
}

/// The operations whose answers are put together by the test itself, so that the order of members says nothing.
const FLAT: [&str; 10] = [
    "convert",
    "unit",
    "amount",
    "amount_to",
    "amount_add",
    "amount_sub",
    "amount_times",
    "amount_compare",
    "interval_intersect",
    "pack",
];

fn value(json: &str) -> Value {
    serde_json::from_str(json).expect("an answer is JSON")
}

/// What the example prints of an evaluation.
fn told(evaluation: &Evaluation) -> String {
    let leak = evaluation.leak();
    let margin = |margin: Amount| format!(", margin {margin}");
    let margin = leak.margin.map(margin).unwrap_or_default();
    let (by_sheet, certainty) = (leak.by_sheet.slug(), leak.certainty.slug());
    let mut lines = vec![
        ("verdict", evaluation.verdict().slug().to_string()),
        ("as found", evaluation.as_found().to_string()),
        ("net added", evaluation.net_added().to_string()),
        ("now", evaluation.now().to_string()),
        ("leak limit", format!("{by_sheet}, {certainty}{margin}")),
    ];
    for finding in evaluation.findings() {
        lines.push((finding.severity.slug(), finding.id.to_string()));
    }
    if let Some(act) = evaluation.next().first() {
        lines.push(("next", act.id.to_string()));
        lines.extend(act.cautions.iter().map(|own| ("  mind", own.to_string())));
    }
    let cautions = evaluation.cautions().iter();
    lines.extend(cautions.map(|own| ("caution", own.to_string())));
    let line = |(name, what)| format!("{name:12}{what}\n");
    lines.into_iter().map(line).collect()
}

#[test]
fn the_example_tells_every_journal() {
    let pack = Pack::embedded().expect("the embedded pack reads");
    let journals = fs::read_dir(root().join("examples/journals")).expect("journals are there");
    let mut count = 0;
    for journal in journals {
        let journal = journal.expect("a folder lists").path();
        let text = fs::read_to_string(&journal).expect("a journal reads");
        let evaluation = evaluate(&pack, text.as_str())
            .unwrap_or_else(|refused| panic!("{}: {refused}", journal.display()));
        let mut example = python();
        example
            .arg(root().join("examples/python/level_check.py"))
            .arg(&journal);
        let said = String::from_utf8(run(example).stdout).expect("the example writes UTF-8");
        assert_eq!(said, told(&evaluation), "{}", journal.display());
        count += 1;
    }
    assert!(count >= 5, "only {count} journals");
}

/// The questions a shop asks, as Rust and as Python: both tell the same.
#[test]
fn a_question_has_one_answer() {
    let mut count = 0;
    for script in fs::read_dir(root().join("examples/python")).expect("examples are there") {
        let script = script.expect("a folder lists").path();
        let name = script.file_stem().expect("a file has a name");
        if ["first_check", "level_check", "keep_a_journal"]
            .map(Some)
            .contains(&name.to_str())
        {
            continue;
        }
        let name = format!("{}{}", name.to_string_lossy(), env::consts::EXE_SUFFIX);
        let executable = env::current_exe().expect("the test knows its own place");
        let folder = executable
            .ancestors()
            .nth(2)
            .expect("the folder of the profile");
        let mut example = Command::new(folder.join("examples").join(&name));
        example.current_dir(root());
        let rust = run(example).stdout;
        let mut example = python();
        example.arg(&script).current_dir(root());
        let python = run(example).stdout;
        let text = |bytes: Vec<u8>| String::from_utf8(bytes).expect("UTF-8");
        let (rust, python) = (text(rust), text(python));
        assert!(rust.lines().count() > 0, "{name} says nothing");
        assert_eq!(rust, python, "{name}");
        count += 1;
    }
    assert_eq!(count, 8, "a question is missing");
}

#[test]
fn the_stub_is_fresh() {
    let module = pyo3_introspection::introspect_cdylib(module(), "_native")
        .expect("the module was built with the feature introspection");
    let stubs = pyo3_introspection::module_stub_files(&module);
    let fresh = stubs
        .get(Path::new("__init__.pyi"))
        .unwrap_or_else(|| panic!("no stub among {:?}", stubs.keys()));
    let kept = root().join("bindings-python/python/brimline/_native.pyi");
    if env::var_os("BRIMLINE_BLESS").is_some() {
        fs::write(&kept, fresh).expect("the stub is written");
    }
    let kept = fs::read_to_string(kept).unwrap_or_default();
    let differs = kept
        .lines()
        .zip(fresh.lines())
        .find(|(kept, fresh)| kept != fresh);
    assert!(
        kept == *fresh,
        "_native.pyi is stale, at {differs:?}: run `BRIMLINE_BLESS=1 cargo test --test python_package`"
    );
}

#[test]
fn a_panic_becomes_an_internal_error() {
    let of_text = border::caught::<()>(|| panic!("a defect")).unwrap_err();
    assert_eq!(of_text.kind(), ErrorKind::Internal);
    assert_eq!(
        of_text.to_string(),
        "defect in the library: got \"a defect\""
    );
    let of_value = border::caught::<()>(|| std::panic::panic_any(7)).unwrap_err();
    assert_eq!(of_value.to_string(), "defect in the library");
    assert_eq!(border::caught(|| Ok(7)), Ok(7));
}
