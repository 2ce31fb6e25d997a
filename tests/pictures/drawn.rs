//! The pictures of the example journals.

use brimline::report::{Picture, Rig, picture};
use brimline::torque::{Tool, ToolType};
use brimline::{Amount, Evaluation, LevelCheck, Pack, evaluate};
use serde_json::Value;
use std::fs;
use std::path::Path;

pub struct Example {
    pub name: String,
    pub text: String,
    pub check: LevelCheck,
    pub result: Evaluation,
}

pub fn examples() -> Vec<Example> {
    let pack = Pack::embedded().expect("the embedded pack reads");
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("examples/journals");
    let mut files: Vec<_> = fs::read_dir(folder)
        .expect("the folder is there")
        .map(|entry| entry.expect("a folder lists").path())
        .collect();
    files.sort();
    assert!(files.len() >= 9);
    let read = |path: &Path| {
        let text = fs::read_to_string(path).expect("a journal reads");
        Example {
            name: path.display().to_string(),
            check: LevelCheck::replay(&pack, &text).expect("it replays"),
            result: evaluate(&pack, text.as_str()).expect("it evaluates"),
            text,
        }
    };
    files.iter().map(|path| read(path)).collect()
}

/// The header and the entries of a journal, whichever form it has.
pub fn members(text: &str) -> (Value, Vec<Value>) {
    if let Ok(mut whole) = serde_json::from_str::<Value>(text) {
        let entries = whole["entries"].take();
        let header = whole.as_object_mut().expect("a journal is an object");
        header.remove("entries");
        return (whole, entries.as_array().expect("a list").clone());
    }
    let mut lines = text
        .lines()
        .filter_map(|line| serde_json::from_str(line).ok());
    let header = lines.next().expect("a header");
    (header, lines.collect())
}

/// The journal up to an entry; `None` where a later entry reaches back before it.
pub fn cut(text: &str, seq: u64) -> Option<String> {
    let (header, entries) = members(text);
    let place = |entry: &Value| entry["seq"].as_u64().expect("a number");
    let reaches = |entry: &&Value| match entry["kind"].as_str() {
        Some("correction") => entry["of"].as_u64() <= Some(seq),
        Some("drained") => entry["why"] == "captured",
        _ => false,
    };
    if entries
        .iter()
        .filter(|entry| place(entry) > seq)
        .any(|entry| reaches(&entry))
    {
        return None;
    }
    let kept = entries.iter().filter(|entry| place(entry) <= seq);
    let lines: Vec<String> = [&header]
        .into_iter()
        .chain(kept)
        .map(Value::to_string)
        .collect();
    Some(lines.join("\n") + "\n")
}

pub fn amount(text: &str) -> Amount {
    Amount::parse(text).expect(text)
}

pub fn rig() -> Rig<'static> {
    let tool = Tool {
        name: "click wrench, quarter-inch drive",
        tool_type: ToolType::SettingAdjustable,
        max: amount("25 N·m"),
        min: Some(amount("5 N·m")),
        graduation: Some(amount("0.5 N·m")),
        permissible: None,
        lever: Some(amount("230 mm")),
    };
    let mut rig = Rig::new(tool);
    rig.adapter = Some(amount("40 mm"));
    rig
}

pub fn drawn(example: &Example, which: Picture) -> String {
    let svg = picture(&example.check, which, Some(&rig())).expect(&example.name);
    svg.unwrap_or_else(|| panic!("{}: no picture {which:?}", example.name))
}
