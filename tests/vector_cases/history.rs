//! The operations on many records, answered by the Rust library.

use super::{Request, pack};
use brimline::estimate::{Audited, audit};
use brimline::record::{
    ComebackRules, FollowUpRules, OldJob, comebacks_with, follow_up_with, shadow,
};
use brimline::{Amount, Error, History, Limits, PriceList, Record};
use serde_json::Value;

/// Journals or amounts, one a line, so that a language without JSON can part them; an empty line for `null`.
pub fn lines(each: &[Value]) -> String {
    let line = |one: &Value| match one {
        Value::Null => String::new(),
        Value::String(text) => text.clone(),
        other => other.to_string(),
    };
    each.iter().map(line).collect::<Vec<_>>().join("\n")
}

fn audited(request: &Request) -> Result<String, Error> {
    let arg = |index: usize| request.args.get(index).map_or("", String::as_str);
    let pack = pack(arg(1), &Limits::default())?;
    let prices = match arg(0) {
        "" => PriceList::embedded()?,
        text => PriceList::from_json(text)?,
    };
    let mut billed = arg(3).split('\n');
    let jobs = arg(2).lines().map(|journal| {
        let billed = billed.next().filter(|billed| !billed.is_empty());
        Ok(Audited {
            record: Record::seal(&pack, journal)?,
            billed: billed.map(Amount::parse).transpose()?,
        })
    });
    let jobs: Vec<Audited> = jobs.collect::<Result<_, Error>>()?;
    Ok(audit(&prices, &pack, &jobs)?.to_json())
}

pub fn respond(request: &Request) -> Result<String, Error> {
    let arg = |index: usize| request.args.get(index).map_or("", String::as_str);
    if request.op == "audit" {
        return audited(request);
    }
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
