//! The constants of the header and the words of the library.

use super::program::compiled;
use crate::compiler::{constants, header, run, scratch};
use brimline::Unit;
use std::collections::BTreeMap;
use std::fmt::Write;
use std::fs;

/// Every constant of the header has the number that the library gives its word, and every word has a constant.
#[test]
fn constants_are_the_numbers_of_words() {
    let mut rows = String::new();
    let mut counted: BTreeMap<&str, usize> = BTreeMap::new();
    for (name, number) in constants(&header()) {
        for (list, prefix) in LISTS {
            if let Some(word) = name.strip_prefix(prefix) {
                let mut word = word.to_lowercase();
                match *list {
                    "STRENGTH_CLASS" => word = word.replace('_', "."),
                    "BASE" => word.insert_str(0, "base_"),
                    _ => {}
                }
                writeln!(rows, "    word(BRIM_LIST_{list}, {name}, \"{word}\");")
                    .expect("it writes");
                *counted.entry(list).or_default() += 1;
            }
        }
        if let Some(unit) = name.strip_prefix("BRIM_UNIT_") {
            let same = |own: &&Unit| snake(&format!("{own:?}")) == unit;
            let own = Unit::ALL
                .iter()
                .find(same)
                .unwrap_or_else(|| panic!("no unit {unit}"));
            assert_eq!(number, i64::from(own.code()), "{name}");
            *counted.entry("UNIT").or_default() += 1;
        }
    }
    assert_eq!(counted["UNIT"], Unit::ALL.len());
    for (list, _) in LISTS {
        writeln!(rows, "    count(BRIM_LIST_{list}, {});", counted[list]).expect("it writes");
    }
    let source = scratch("words.c");
    fs::write(&source, WORDS.replace("ROWS", &rows)).expect("it writes");
    let source = source.to_str().expect("UTF-8");
    for (_, program) in compiled("words", &[source]) {
        run(&program, &[]);
    }
}

const LISTS: &[(&str, &str)] = &[
    ("STATUS", "BRIM_ERROR_"),
    ("KIND", "BRIM_KIND_"),
    ("MEASURES", "BRIM_MEASURES_"),
    ("ROUNDING", "BRIM_ROUNDING_"),
    ("VERDICT", "BRIM_VERDICT_"),
    ("BY_SHEET", "BRIM_BY_SHEET_"),
    ("CERTAINTY", "BRIM_CERTAINTY_"),
    ("SEVERITY", "BRIM_SEVERITY_"),
    ("ACT", "BRIM_ACT_"),
    ("INDEX_PROCEDURE", "BRIM_INDEX_PROCEDURE_"),
    ("SIGNAL_STATE", "BRIM_SIGNAL_STATE_"),
    ("LEVEL_STATUS", "BRIM_LEVEL_STATUS_"),
    ("BYTE_ORDER", "BRIM_BYTE_ORDER_"),
    ("REPLY", "BRIM_REPLY_"),
    ("REFUSAL", "BRIM_REFUSAL_"),
    ("THREAD_CONDITION", "BRIM_THREAD_CONDITION_"),
    ("STRENGTH_CLASS", "BRIM_STRENGTH_CLASS_"),
    ("PLUG", "BRIM_PLUG_"),
    ("FITS", "BRIM_FITS_"),
    ("RULE", "BRIM_RULE_"),
    ("DECISION", "BRIM_DECISION_"),
    ("FORECAST_METHOD", "BRIM_FORECAST_METHOD_"),
    ("FORECAST_REASON", "BRIM_FORECAST_REASON_"),
    ("BASE", "BRIM_BASE_"),
    ("MEDIUM", "BRIM_MEDIUM_"),
    ("PICTURE_OF", "BRIM_PICTURE_OF_"),
];

/// Looks each word up both ways, and counts the numbers that have a word.
const WORDS: &str = r#"
#include "brimline.h"
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static void word(brim_list list, int32_t number, const char *expected) {
    char text[64] = "";
    int32_t back = -1;
    brim_word(list, number, text, sizeof text, NULL, NULL);
    brim_word_number(list, expected, BRIM_TERMINATED, &back, NULL);
    if (strcmp(text, expected) != 0 || back != number) {
        fprintf(stderr, "list %d, number %d: %s, not %s\n", (int)list, (int)number, text, expected);
        exit(1);
    }
}

static void count(brim_list list, int expected) {
    int32_t number;
    int found = 0;
    size_t length;
    for (number = 1; number < 1000; number++) {
        found += brim_word(list, number, NULL, 0, &length, NULL) == BRIM_OK;
    }
    if (found != expected) {
        fprintf(stderr, "list %d: %d words, %d constants\n", (int)list, found, expected);
        exit(1);
    }
}

int main(void) {
ROWS    return 0;
}
"#;

/// `UsFluidOunce` as `US_FLUID_OUNCE`.
fn snake(name: &str) -> String {
    let mut out = String::new();
    for letter in name.chars() {
        if letter.is_uppercase() && !out.is_empty() {
            out.push('_');
        }
        out.extend(letter.to_uppercase());
    }
    out
}
