//! The C and C++ compilers, and the freshly built library beside the test executable.

#![allow(dead_code, reason = "each test binary uses its part of it")]

use std::env;
use std::ffi::OsString;
use std::fmt;
use std::fs;
use std::io::ErrorKind;
use std::path::{Path, PathBuf};
use std::process::{Command, Output};
use std::sync::OnceLock;

/// One way to build a C program against the library.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Build {
    pub cpp: bool,
    pub linked_static: bool,
    pub sanitized: bool,
}

impl fmt::Display for Build {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(if self.cpp { "cpp11" } else { "c99" })?;
        f.write_str(if self.linked_static {
            "-static"
        } else {
            "-shared"
        })?;
        f.write_str(if self.sanitized { "-sanitized" } else { "" })
    }
}

/// Both languages, both ways to link, with and without sanitizers where the compiler has them.
pub fn builds() -> Vec<Build> {
    let build = |cpp, linked_static, sanitized| Build {
        cpp,
        linked_static,
        sanitized: sanitized && sanitizers().is_some(),
    };
    vec![
        build(false, false, false),
        build(false, true, true),
        build(true, false, true),
        build(true, true, false),
    ]
}

pub fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

pub fn header() -> String {
    fs::read_to_string(root().join("bindings-c/include/brimline.h")).expect("the header is there")
}

/// A file of the library beside the test executable, by its exact name: cargo has just built it.
pub fn library(name: &str) -> PathBuf {
    let test = env::current_exe().expect("a test has a file");
    let path = test.parent().expect("in a folder").join(name);
    assert!(
        path.exists(),
        "no {name} beside {}: the root package names brimline-c as a dev-dependency for that",
        test.display()
    );
    path
}

/// Where programs and files of a test go.
pub fn scratch(name: &str) -> PathBuf {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join("c");
    fs::create_dir_all(&folder).expect("the folder for tests is there");
    folder.join(name)
}

/// Compiles a program and answers its path.
pub fn compile(name: &str, sources: &[&str], build: Build) -> PathBuf {
    let program = scratch(&format!("{name}-{build}"));
    let mut command = compiler(build.cpp);
    command
        .args(["-pedantic", "-Wall", "-Wextra", "-Werror", "-g"])
        .arg("-I")
        .arg(root().join("bindings-c/include"))
        .args(sources.iter().map(|source| root().join(source)))
        .arg("-o")
        .arg(&program);
    if build.sanitized {
        command.args(SANITIZE);
    }
    if build.linked_static {
        // What came before is C++ to g++, but not the library.
        command
            .args(["-x", "none"])
            .arg(library("libbrimline.a"))
            .args(documented_static_flags());
    } else {
        let folder = library("libbrimline.so");
        let folder = folder.parent().expect("in a folder").display();
        command.args([
            format!("-L{folder}"),
            format!("-Wl,-rpath,{folder}"),
            "-lbrimline".into(),
            "-lpthread".into(),
        ]);
    }
    let output = output(&mut command);
    assert!(
        output.status.success(),
        "{name} does not compile as {build}:\n{}",
        String::from_utf8_lossy(&output.stderr)
    );
    program
}

/// Runs a program that must do well, and answers what it prints.
pub fn run(program: &Path, args: &[&Path]) -> String {
    let output = output(sanitized(Command::new(program).args(args)));
    assert!(
        output.status.success(),
        "{}: {}\n{}",
        program.display(),
        output.status,
        String::from_utf8_lossy(&output.stderr)
    );
    String::from_utf8(output.stdout).expect("it prints UTF-8")
}

/// The flags that the header tells people to link the static library with.
pub fn documented_static_flags() -> Vec<String> {
    let header = header();
    let (_, after) = header
        .split_once("/libbrimline.a ")
        .expect("the header says how to link statically");
    let line = after.lines().next().expect("a line");
    line.split_whitespace().map(str::to_string).collect()
}

const SANITIZE: [&str; 2] = [
    "-fsanitize=address,undefined",
    "-fno-sanitize-recover=undefined",
];

fn compiler(cpp: bool) -> Command {
    let (variable, usual) = if cpp { ("CXX", "c++") } else { ("CC", "cc") };
    let name = env::var_os(variable).unwrap_or_else(|| OsString::from(usual));
    let mut command = Command::new(name);
    if cpp {
        command.args(["-std=c++11", "-x", "c++"]);
    } else {
        command.arg("-std=c99");
    }
    command
}

fn output(command: &mut Command) -> Output {
    match command.output() {
        Ok(output) => output,
        Err(error) if error.kind() == ErrorKind::NotFound => panic!(
            "{} is not there: install gcc and g++ (Debian: build-essential), or name compilers in CC and CXX",
            command.get_program().display()
        ),
        Err(error) => panic!("{}: {error}", command.get_program().display()),
    }
}

/// Sets the sanitizers' options, which mean nothing to other programs, and leaves out cargo's library path: it names
/// a folder with an older library before the one that is linked.
fn sanitized(command: &mut Command) -> &mut Command {
    let leaks = sanitizers().unwrap_or_default();
    command
        .env("ASAN_OPTIONS", format!("detect_leaks={}", u8::from(leaks)))
        .env_remove("LD_LIBRARY_PATH")
}

/// Whether the compiler has sanitizers that see a wrong read, and then whether they also see leaks here.
fn sanitizers() -> Option<bool> {
    static FOUND: OnceLock<Option<bool>> = OnceLock::new();
    *FOUND.get_or_init(|| {
        let found = [true, false]
            .into_iter()
            .find(|leaks| sanitizers_work(*leaks));
        if found.is_none() {
            println!("the C compiler has no sanitizers here: programs run without");
        }
        found
    })
}

/// Whether programs do well under the sanitizers, but not one that reads past its memory.
fn sanitizers_work(leaks: bool) -> bool {
    let does_well = |name: &str, returned: &str, cpp: bool| {
        let (source, program) = (
            scratch(&format!("{name}.c")),
            scratch(&format!("{name}-{cpp}")),
        );
        let body = format!(
            "char *p = (char *)malloc(4); int r; p[3] = 1; r = {returned}; free(p); return r;"
        );
        let text = format!("#include <stdlib.h>\nint main(void) {{ {body} }}\n");
        fs::write(&source, text).expect("it writes");
        let mut command = compiler(cpp);
        command.args(SANITIZE).arg(&source).arg("-o").arg(&program);
        let options = format!("detect_leaks={}", u8::from(leaks));
        output(&mut command).status.success()
            && output(Command::new(&program).env("ASAN_OPTIONS", options))
                .status
                .success()
    };
    let fine = |cpp| does_well("probe-fine", "p[3] - 1", cpp);
    fine(false) && fine(true) && !does_well("probe-wrong", "p[4] == 9 ? 3 : 0", false)
}

/// The constants of the header and their numbers, in order.
pub fn constants(header: &str) -> Vec<(&str, i64)> {
    header
        .lines()
        .filter_map(|line| line.strip_prefix("#define ")?.split_once(' '))
        .filter_map(|(name, number)| Some((name, number.parse().ok()?)))
        .collect()
}

/// The functions that the header declares, in order.
pub fn functions(header: &str) -> Vec<&str> {
    let (_, declared) = header.split_once("extern \"C\" {").expect("C in C++");
    let code = declared.lines().filter(|line| !line.starts_with("//"));
    code.filter_map(|line| {
        let (before, _) = line.split_once('(')?;
        let name = before.rsplit([' ', '*']).next()?;
        (name.starts_with("brim_") && before != name).then_some(name)
    })
    .collect()
}
