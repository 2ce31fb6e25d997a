//! The operations on many records, answered by the Rust library.

use super::{Request, pack};
use brimline::record::{
    ComebackRules, FollowUpRules, OldJob, comebacks_with, follow_up_with, shadow,
};
use brimline::{Error, History, Limits, Record};
use serde_json::Value;

/// Journals, one a line, so that a language without JSON can part them.
pub fn lines(journals: &[Value]) -> String {
    let lines: Vec<String> = journals.iter().map(ToString::to_string).collect();
    lines.join("\n")
}

pub fn respond(request: &Request) -> Result<String, Error> {
    let arg = |index: usize| request.args.get(index).map_or("", String::as_str);
    let pack = pack(arg(0), &Limits::default())?;
    if request.op == "shadow" {
        let read = |job| OldJob::from_json(job, pack.measures());
        let jobs: Vec<OldJob> = arg(1).lines().map(read).collect::<Result<_, _>>()?;
        return Ok(shadow(&pack, &jobs).to_json());
    }
    let seal = |journal| Record::seal(&pack, journal);
    let records: Vec<Record> = arg(1).lines().map(seal).collect::<Result<_, _>>()?;
    Ok(match request.op.as_str() {
        "history" => History::of(&records).to_json(),
        "comebacks" => {
            let rules = match arg(2) {
                "" => ComebackRules::default(),
                text => ComebackRules::from_json(text)?,
            };
            comebacks_with(&records, &rules).to_json()
        }
        "follow_up" => {
            let rules = match arg(2) {
                "" => FollowUpRules::default(),
                text => FollowUpRules::from_json(text)?,
            };
            let history = History::of(&records);
            let last = records.last().expect("a vector has a record");
            follow_up_with(last, history.of_record(last), &rules)?.to_json()
        }
        other => panic!("unknown op {other}"),
    })
}
