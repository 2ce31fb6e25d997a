//! Journals for the comparison: one script played at a bench, written down with mishaps, under a header.

use crate::bench::Bench;
use crate::dice::Dice;
use crate::mishap;
use crate::scripts::Script;
use crate::words::day;
use serde_json::{Value, json};

/// A journal of one script by one sheet of the pack, with whatever went wrong in writing it down.
pub fn journal(dice: &mut Dice, pack: &Value, script: Script) -> Value {
    let sheets = pack["procedures"].as_array().expect("the procedures");
    let sheet = &sheets[dice.below(sheets.len())];
    let first_day = dice.pick(&[
        "2024-05-06",
        "2024-05-06",
        "2024-02-29",
        "2023-12-31",
        "2024-05-07",
    ]);
    let east = dice.weighted(&[(6, 0), (1, 120), (1, -330), (1, 600)]);
    // Half the jobs straddle midnight, so that the date of the first entry depends on the zone.
    let hour = dice.weighted(&[(1, 8), (1, 23)]);
    let clock = day(first_day) * 86_400 + hour * 3_600 + 59 * 60;
    let mut bench = Bench {
        dice,
        sheet,
        entries: Vec::new(),
        clock,
        east,
    };
    script(&mut bench);
    let entries = bench.entries;
    let entries = mishap::written_down(dice, sheet, entries);
    header(dice, pack, sheet, entries)
}

fn header(dice: &mut Dice, pack: &Value, sheet: &Value, entries: Vec<Value>) -> Value {
    let job = dice.weighted(&[
        (10, "check"),
        (5, "top_up"),
        (2, "leak_follow_up"),
        (2, "recheck"),
        (1, "new_fill"),
        (1, "exchange"),
        (1, "condition_only"),
    ]);
    let mut journal = json!({"format": "brimline-journal/1", "procedure": sheet["id"], "job": job,
        "entries": entries});
    match dice.below(60) {
        0 => journal["procedure"] = json!("unheard-of"),
        1 => journal["edition"] = json!(77),
        2 => journal["pack"] = json!({"id": "another-house", "version": "1"}),
        3..=5 => journal["pack"] = json!({"id": pack["id"], "version": pack["version"]}),
        6..=48 => journal["edition"] = sheet["edition"].clone(),
        _ => {}
    }
    if dice.chance(15) {
        let widths = [
            json!({"jug": "1.5 %"}),
            json!({"sealed": "10 mL", "meter": "0.5 %"}),
            json!({"eye": "0.1 L", "eye_drained": "5 US fl oz"}),
            json!({"scale": "20 g", "scale_density": "1 %", "jug": "0 mL"}),
        ];
        journal["profile"] = json!({"half_width": widths[dice.below(widths.len())]});
    }
    if dice.chance(10) {
        journal["job_id"] = json!("job-17");
        journal["subject"] = json!({"vehicle": "Tarnik Dale", "complaint": "shudders when cold"});
    }
    journal
}
