//! Every function with every argument amiss in turn, as the header declares them: nothing that is added can be forgotten.

mod declared;

use super::program::compiled;
use crate::compiler::{functions, header, root, run, scratch};
use declared::{AMOUNTS, Function};
use std::collections::BTreeSet;
use std::fmt::Write;
use std::fs;

/// The files whose functions are calculators: `amiss.c` asks those by hand, for their arguments each want a kind.
const CALCULATORS: [&str; 6] = ["torque", "volume", "warm_up", "fluid", "signal", "leak"];

/// What is expected of a call, which arguments it has otherwise, and what is amiss.
type Row = (&'static str, Vec<(usize, String)>, String);

const NULL: &str = "refused(BRIM_ERROR_NULL_POINTER, ";
const STRANGE: &str = "refused(BRIM_ERROR_UNRESOLVED, ";
const NOT_UTF8: &str = "refused(BRIM_ERROR_NOT_UTF8, ";
const OUT_OF_RANGE: &str = "refused(BRIM_ERROR_OUT_OF_RANGE, ";
const UNKNOWN: &str = "refused(BRIM_ERROR_UNKNOWN_VALUE, ";

impl Function {
    /// One argument amiss in turn, and what goes with others: no room, and no place for the detail.
    fn amiss(&self) -> Vec<Row> {
        let mut rows = Vec::new();
        for (place, param) in self.params.iter().enumerate() {
            let mut put = |expected, changed: &[(usize, &str)], what: &str| {
                let changed = changed
                    .iter()
                    .map(|(place, value)| (*place, value.to_string()));
                rows.push((
                    expected,
                    changed.collect(),
                    format!("{} {what}", param.name),
                ));
            };
            if param.is_pointer() {
                let expected = if self.may_lack(param) { "taken(" } else { NULL };
                put(expected, &[(place, "NULL")], "is NULL");
            }
            if let Some(stranger) = param.stranger() {
                put(STRANGE, &[(place, &stranger)], "is of another type");
            }
            if self.is_measured(place) {
                let odd = (place, "\"\\xff\"");
                // The last line of a journal may be cut off within a character.
                if param.name != "journal" {
                    put(NOT_UTF8, &[odd, (place + 1, "1")], "is not UTF-8");
                }
                let endless = (place + 1, "BRIM_TERMINATED - 1");
                put(OUT_OF_RANGE, &[odd, endless], "is longer than memory");
            }
            if param.is_word() {
                put(UNKNOWN, &[(place, "99")], "is 99");
                put(UNKNOWN, &[(place, "-1")], "is -1");
            }
            if param.is_place() {
                put(OUT_OF_RANGE, &[(place, "(size_t)-1")], "is past the last");
            }
            if param.name == "buffer" {
                let none = [(place, "NULL"), (place + 1, "0"), (place + 2, "NULL")];
                put(NULL, &none, "is none, nor is there a place for the length");
            }
        }
        let needed = self
            .params
            .iter()
            .position(|param| param.is_pointer() && !self.may_lack(param));
        let detail = self.params.iter().position(|param| param.name == "error");
        if let (Some(needed), Some(detail)) = (needed, detail.filter(|detail| *detail > 0)) {
            let none = [needed, detail].map(|place| (place, "NULL".into()));
            rows.push((
                NULL,
                none.to_vec(),
                "something is NULL, and the error".into(),
            ));
        }
        rows
    }

    /// The calls of all rows, each of which frees what it was given.
    fn calls(&self) -> String {
        let whole: Vec<String> = (0..self.params.len())
            .map(|place| self.value(place))
            .collect();
        let well = ("well(", Vec::new(), "nothing is amiss".to_string());
        let mut calls = String::new();
        for (expected, changed, what) in [well].into_iter().chain(self.amiss()) {
            let mut values = whole.clone();
            for (place, value) in changed {
                values[place] = value;
            }
            let (name, values) = (&self.name, values.join(", "));
            calls +=
                &format!("    fresh();\n    {expected}{name}({values}), \"{name}: {what}\");\n");
            for (place, param) in self.params.iter().enumerate() {
                let made = param.made().filter(|_| !expected.starts_with("refused"));
                calls += &made.map_or(String::new(), |made| {
                    format!("    {made}_free(({made} *)given({place}));\n")
                });
            }
        }
        calls
    }
}

/// The functions of the calculators' files.
fn calculators() -> BTreeSet<String> {
    let mut names = BTreeSet::new();
    for room in CALCULATORS {
        let file = root().join(format!("bindings-c/src/{room}.rs"));
        let code = fs::read_to_string(file).expect("a source reads");
        let named = code.split("fn brim_").skip(1);
        names.extend(named.map(|rest| {
            let end = rest.find(|letter: char| !letter.is_alphanumeric() && letter != '_');
            format!("brim_{}", &rest[..end.expect("a name ends")])
        }));
    }
    names
}

/// What `nulls.c` has for the rows.
const BEGIN: &str = r#"
#include "brimline.h"

enum { SIZE = 64 };
extern unsigned char outputs[][SIZE];
extern struct brim_error *failed, *error;
extern void *other;
extern char *pack_json, *prices_json, *record_json;
extern const struct brim_record *records[1];
extern const char *billed[1], *offered[1];
extern const char visit[];
extern size_t lack, line;
void fresh(void);
void refused(brim_status expected, brim_status told, const char *call);
void taken(brim_status told, const char *call);
void well(brim_status told, const char *call);
void *given(size_t index);
int32_t append(void *user, const uint8_t *bytes, size_t length);
int32_t cut_to(void *user, size_t length);
void rows(void);

"#;

#[test]
fn every_argument_amiss_is_answered() {
    let (header, by_hand) = (header(), calculators());
    let (_, code) = header.split_once("extern \"C\" {").expect("C in C++");
    let code: Vec<&str> = code
        .lines()
        .filter(|line| !line.starts_with("//"))
        .collect();
    let code = code.join("\n");
    let (mut rows, mut handles) = (String::new(), BTreeSet::new());
    let mut seen = 0;
    for name in functions(&header)
        .into_iter()
        .filter(|name| !by_hand.contains(*name))
    {
        let function = Function::read(&code, name);
        seen += 1;
        handles.extend(
            function
                .params
                .iter()
                .filter_map(|param| Some(param.handle()?.to_string())),
        );
        if let (Some(of), [param]) = (name.strip_suffix("_free"), function.params.as_slice()) {
            let declared = &param.declared;
            writeln!(rows, "    {of}_free(NULL);").expect("it writes");
            if of != "brim_options" {
                writeln!(rows, "    {of}_free(({declared})other);").expect("it writes");
            }
        } else if !function.params.is_empty() {
            rows += &function.calls();
        }
    }
    assert!(seen > 200, "only {seen} functions");
    let mut source = BEGIN.to_string();
    for of in &handles {
        writeln!(source, "extern struct brim_{of} *{of};").expect("it writes");
    }
    for (name, amount) in AMOUNTS {
        writeln!(
            source,
            "static const struct brim_amount amount_{name} = {amount};"
        )
        .expect("it writes");
    }
    source += &format!("\nvoid rows(void) {{\n{rows}}}\n");
    let file = scratch("nulls_rows.c");
    fs::write(&file, source).expect("it writes");
    let file = file.to_str().expect("UTF-8");
    for (_, program) in compiled("nulls", &["tests/c/nulls.c", file]) {
        run(&program, &[]);
    }
}

/// The calculators are asked amiss by hand.
#[test]
fn every_calculator_is_asked_amiss() {
    let amiss = fs::read_to_string(root().join("tests/c/amiss.c")).expect("it reads");
    let missing: Vec<String> = calculators()
        .into_iter()
        .filter(|name| !amiss.contains(&format!("{name}(")))
        .collect();
    assert!(missing.is_empty(), "not asked amiss: {missing:?}");
}
