//! What crossing the border costs: an empty call, a conversion by name and a whole evaluation, from C and from
//! Python, side by side. Each program times its own loop and is asked for as many rounds as criterion wants.

use criterion::{Criterion, criterion_group, criterion_main};
use std::env;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;
use std::time::Duration;

const C_PROGRAM: &str = r#"
#define _POSIX_C_SOURCE 199309L
#include "brimline.h"
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

int main(int count, char **args) {
    static char journal[65536];
    long rounds = atol(args[2]), round;
    double number = 0;
    struct timespec begin, end;
    brim_pack *pack = NULL;
    brim_unit from = 0, to = 0;
    FILE *file = fopen(args[3], "rb");
    size_t length = fread(journal, 1, sizeof journal, file);
    (void)count;
    fclose(file);
    brim_pack_embedded(&pack, NULL);
    brim_unit_parse("N*m", 3, 0, 0, &from, NULL);
    brim_unit_parse("ft-lb", 5, 0, 0, &to, NULL);
    clock_gettime(CLOCK_MONOTONIC, &begin);
    for (round = 0; round < rounds; round++) {
        if (strcmp(args[1], "empty") == 0) {
            brim_abi_version();
        } else if (strcmp(args[1], "convert units") == 0) {
            brim_convert_units(104.25, from, to, &number, NULL);
        } else if (strcmp(args[1], "convert names") == 0) {
            brim_convert(104.25, "N*m", 3, "ft-lb", 5, &number, NULL);
        } else {
            brim_evaluation *answer = NULL;
            brim_evaluate(pack, journal, length, NULL, &answer, NULL);
            brim_evaluation_free(answer);
        }
    }
    clock_gettime(CLOCK_MONOTONIC, &end);
    printf("%.0f\n", (end.tv_sec - begin.tv_sec) * 1e9 + (end.tv_nsec - begin.tv_nsec));
    return 0;
}
"#;

const PYTHON_PROGRAM: &str = r#"
import math, sys, time
import brimline
what, rounds, path = sys.argv[1], int(sys.argv[2]), sys.argv[3]
journal = open(path, encoding="utf-8").read()
pack = brimline.Pack.embedded()
empty, convert, evaluate = math.fabs, brimline.convert, brimline.evaluate
newton_metre, foot_pound = brimline.Unit.parse("N*m"), brimline.Unit.parse("ft-lb")
turns = range(rounds)
begin = time.perf_counter_ns()
if what == "empty":
    for _ in turns: empty(104.25)
elif what == "convert units":
    for _ in turns: convert(104.25, newton_metre, foot_pound)
elif what == "convert names":
    for _ in turns: convert(104.25, "N*m", "ft-lb")
else:
    for _ in turns: evaluate(pack, journal)
print(time.perf_counter_ns() - begin)
"#;

fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

/// Cargo has just built the libraries beside this executable.
fn built(name: &str) -> PathBuf {
    env::current_exe()
        .expect("a bench has a file")
        .with_file_name(name)
}

fn folder() -> PathBuf {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join("borders");
    fs::create_dir_all(folder.join("brimline")).expect("the folder is made");
    folder
}

fn c_program() -> PathBuf {
    let (source, program) = (folder().join("borders.c"), folder().join("borders"));
    fs::write(&source, C_PROGRAM).expect("the program is written");
    let libraries = built("libbrimline.so");
    let done = Command::new("cc")
        .args(["-std=c99", "-O2", "-o"])
        .arg(&program)
        .arg(&source)
        .arg(format!("-I{}", root().join("bindings-c/include").display()))
        .arg(&libraries)
        .arg(format!(
            "-Wl,-rpath,{}",
            libraries.parent().expect("in a folder").display()
        ))
        .status();
    assert!(
        done.is_ok_and(|status| status.success()),
        "a C compiler is needed as `cc`"
    );
    program
}

fn python_program() -> PathBuf {
    let package = folder().join("brimline");
    fs::copy(built("lib_native.so"), package.join("_native.abi3.so"))
        .expect("the module is copied");
    let sources = fs::read_dir(root().join("bindings-python/python/brimline"));
    for source in sources.expect("the package's files are there") {
        let source = source.expect("a folder lists").path();
        if source.extension().is_some_and(|ext| ext == "py") {
            let name = source.file_name().expect("a file has a name");
            fs::copy(&source, package.join(name)).expect("a file is copied");
        }
    }
    let program = folder().join("borders.py");
    fs::write(&program, PYTHON_PROGRAM).expect("the program is written");
    program
}

/// How often a program does each round that it is asked for, so that its own start does not show.
const TURNS: u64 = 1_000;

/// The time a program says that many rounds took.
fn time(mut command: Command, what: &str, rounds: u64) -> Duration {
    let journal = root().join("examples/journals/plain_check.json");
    let told = command
        .arg(what)
        .arg((rounds * TURNS).to_string())
        .arg(journal)
        .output()
        .expect("the program runs");
    let text = String::from_utf8(told.stdout).expect("it tells a number");
    let nanoseconds: u64 = text.trim().parse().expect("it tells nanoseconds");
    Duration::from_nanos(nanoseconds.div_ceil(TURNS))
}

fn borders(criterion: &mut Criterion) {
    let (c, python) = (c_program(), python_program());
    let mut group = criterion.benchmark_group("borders");
    group.sample_size(10);
    for what in ["empty", "convert units", "convert names", "evaluate"] {
        group.bench_function(format!("C/{what}"), |bencher| {
            bencher.iter_custom(|rounds| {
                // The library that was just built, not one that cargo's own search path finds first.
                let mut command = Command::new(&c);
                command.env_remove("LD_LIBRARY_PATH");
                time(command, what, rounds)
            });
        });
        group.bench_function(format!("Python/{what}"), |bencher| {
            bencher.iter_custom(|rounds| {
                let mut command = Command::new("python3");
                command.arg("-B").arg(&python).env("PYTHONPATH", folder());
                time(command, what, rounds)
            });
        });
    }
    group.finish();
}

criterion_group!(benches, borders);
criterion_main!(benches);
