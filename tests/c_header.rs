//! The C header is the one made from the sources, and the library exports what it and `abi.txt` say.

#[path = "c/compiler.rs"]
mod compiler;

use compiler::{constants, functions, library, root};
use std::collections::BTreeSet;
use std::fs;
use std::process::Command;
use std::sync::OnceLock;

/// The header as cbindgen makes it from the sources.
fn generated() -> String {
    let folder = root().join("bindings-c");
    let config =
        cbindgen::Config::from_file(folder.join("cbindgen.toml")).expect("the settings read");
    let bindings = cbindgen::Builder::new()
        .with_config(config)
        .with_src(folder.join("src/lib.rs"))
        .generate()
        .expect("the sources are read");
    let mut out = Vec::new();
    bindings.write(&mut out);
    String::from_utf8(out).expect("a header is UTF-8")
}

/// The committed header, after it was written again where that is asked for.
fn header() -> &'static str {
    static HEADER: OnceLock<String> = OnceLock::new();
    HEADER.get_or_init(|| {
        if std::env::var_os("BRIMLINE_BLESS").is_some() {
            let path = root().join("bindings-c/include/brimline.h");
            fs::write(path, generated()).expect("the header writes");
        }
        compiler::header()
    })
}

#[test]
fn the_header_is_fresh() {
    let header = header();
    assert!(
        header == generated(),
        "bindings-c/include/brimline.h is stale: BRIMLINE_BLESS=1 cargo test --test c_header"
    );
    assert!(header.is_ascii(), "older compilers read ASCII");
    let longest = header.lines().map(str::len).max();
    assert!(longest <= Some(100), "a line of {longest:?} characters");
}

/// What `abi.txt` promises: functions, and constants with their numbers. Written by hand: nothing blesses it.
fn promised() -> (BTreeSet<String>, BTreeSet<(String, i64)>) {
    let text = fs::read_to_string(root().join("bindings-c/abi.txt")).expect("abi.txt is there");
    let (mut names, mut numbers) = (BTreeSet::new(), BTreeSet::new());
    for line in text
        .lines()
        .filter(|line| !line.starts_with('#') && !line.is_empty())
    {
        match line.split_once(" = ") {
            Some((name, number)) => {
                let number = number.parse().unwrap_or_else(|_| panic!("abi.txt: {line}"));
                numbers.insert((name.to_string(), number));
            }
            None => {
                names.insert(line.to_string());
            }
        }
    }
    (names, numbers)
}

#[test]
fn the_header_keeps_the_promise() {
    let (names, numbers) = promised();
    let declared: BTreeSet<String> = functions(header())
        .iter()
        .map(ToString::to_string)
        .collect();
    let named: BTreeSet<(String, i64)> = constants(header())
        .into_iter()
        .map(|(name, number)| (name.to_string(), number))
        .collect();
    assert!(declared.len() > 50);
    assert_eq!(
        differences(&declared, &names),
        Vec::<String>::new(),
        "functions"
    );
    assert_eq!(
        differences(&named, &numbers),
        Vec::<String>::new(),
        "constants"
    );
}

/// What only one of two sets has.
fn differences<T: Ord + std::fmt::Debug>(
    header: &BTreeSet<T>,
    promise: &BTreeSet<T>,
) -> Vec<String> {
    let only_header = header
        .difference(promise)
        .map(|name| format!("not in abi.txt: {name:?}"));
    let only_promise = promise
        .difference(header)
        .map(|name| format!("not in the header: {name:?}"));
    only_header.chain(only_promise).collect()
}

#[test]
fn the_library_exports_the_promise_and_nothing_else() {
    let output = Command::new("nm")
        .args(["-D", "--defined-only", "--format=posix"])
        .arg(library("libbrimline.so"))
        .output()
        .expect("nm is not there: install binutils, which come with gcc");
    assert!(
        output.status.success(),
        "{}",
        String::from_utf8_lossy(&output.stderr)
    );
    let listed = String::from_utf8(output.stdout).expect("UTF-8");
    let exported: BTreeSet<String> = listed
        .lines()
        .filter_map(|line| line.split_whitespace().next())
        .map(ToString::to_string)
        .collect();
    assert_eq!(exported, promised().0);
}

#[test]
fn every_function_is_called_by_a_c_program() {
    let mut programs = String::new();
    for folder in ["tests/c", "examples/c"] {
        for entry in fs::read_dir(root().join(folder)).expect("programs are there") {
            let path = entry.expect("a folder lists").path();
            if path.extension().is_some_and(|ext| ext == "c") {
                programs += &fs::read_to_string(path).expect("a program reads");
            }
        }
    }
    let missing: Vec<&str> = functions(header())
        .into_iter()
        .filter(|name| !programs.contains(&format!("{name}(")))
        .collect();
    assert!(missing.is_empty(), "not called: {missing:?}");
}

/// Every function of the border ends in the one place that catches panics, or cannot panic.
#[test]
fn every_function_goes_through_the_net() {
    let nets = [
        "answer(",
        "value(",
        "value_if(",
        "tell(",
        "of_two(",
        "guard::answer(",
        "guard::caught(",
        "handle::free(",
        "reckon!(",
        "BRIM_ABI_VERSION",
    ];
    let mut seen = 0;
    for entry in fs::read_dir(root().join("bindings-c/src")).expect("sources are there") {
        let text =
            fs::read_to_string(entry.expect("a folder lists").path()).expect("a source reads");
        for function in text.split("#[unsafe(no_mangle)]").skip(1) {
            let (signature, body) = function.split_once(" {\n").expect("a body");
            let body = body.split("\n}\n").next().expect("an end");
            assert!(signature.contains("extern \"C\" fn brim_"), "{signature}");
            let first = body
                .lines()
                .map(str::trim)
                .find(|line| !line.starts_with("//") && *line != "unsafe {");
            let first = first.expect("a body has a line");
            let first = first.strip_prefix("unsafe { ").unwrap_or(first);
            assert!(
                nets.iter().any(|net| first.starts_with(net)),
                "{signature}\n{body}"
            );
            seen += 1;
        }
    }
    assert_eq!(seen, functions(header()).len());
}

/// What the header tells people to link with is what rustc asks for; `-lc` is what cc adds itself.
#[test]
fn static_linking_is_documented_as_rustc_asks() {
    let (source, made) = (compiler::scratch("empty.rs"), compiler::scratch("empty.a"));
    fs::write(&source, "").expect("it writes");
    let rustc = std::env::var_os("RUSTC").unwrap_or_else(|| "rustc".into());
    let output = Command::new(rustc)
        .args([
            "--crate-type",
            "staticlib",
            "--print",
            "native-static-libs",
            "-o",
        ])
        .args([&made, &source])
        .output()
        .expect("rustc is there");
    let said = String::from_utf8_lossy(&output.stderr);
    let (_, asked) = said
        .split_once("native-static-libs: ")
        .expect("rustc says what it needs");
    let asked = asked.lines().next().expect("a line").split_whitespace();
    let asked: Vec<&str> = asked.filter(|flag| *flag != "-lc").collect();
    assert_eq!(compiler::documented_static_flags(), asked);
}
