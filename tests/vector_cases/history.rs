//! The operations on many records, answered by the Rust library.

use super::counter::prices;
use super::{Request, pack};
use brimline::estimate::{Audit, Audited, audit};
use brimline::record::{
    ComebackRules, Comebacks, FollowUp, FollowUpRules, OldJob, Shadow, comebacks_with,
    follow_up_with, shadow,
};
use brimline::{Amount, Error, History, Limits, Record};
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

/// Prices, pack, journals and what was billed of each.
pub fn audited(args: &[String]) -> Result<Audit, Error> {
    let pack = pack(&args[1], &Limits::default())?;
    let mut billed = args[3].split('\n');
    let jobs = args[2].lines().map(|journal| {
        let billed = billed.next().filter(|billed| !billed.is_empty());
        Ok(Audited {
            record: Record::seal(&pack, journal)?,
            billed: billed.map(Amount::parse).transpose()?,
        })
    });
    let jobs: Vec<Audited> = jobs.collect::<Result<_, Error>>()?;
    audit(&prices(&args[0])?, &pack, &jobs)
}

/// Pack and old jobs.
pub fn beside(args: &[String]) -> Result<Shadow, Error> {
    let pack = pack(&args[0], &Limits::default())?;
    let read = |job| OldJob::from_json(job, pack.measures());
    let jobs: Vec<OldJob> = args[1].lines().map(read).collect::<Result<_, _>>()?;
    Ok(shadow(&pack, &jobs))
}

fn sealed(args: &[String]) -> Result<Vec<Record>, Error> {
    let pack = pack(&args[0], &Limits::default())?;
    let seal = |journal| Record::seal(&pack, journal);
    args[1].lines().map(seal).collect()
}

/// Pack and journals.
pub fn history(args: &[String]) -> Result<History, Error> {
    Ok(History::of(&sealed(args)?))
}

/// Pack, journals and rules.
pub fn found(args: &[String]) -> Result<Comebacks, Error> {
    let records = sealed(args)?;
    let rules = match args[2].as_str() {
        "" => ComebackRules::default(),
        text => ComebackRules::from_json(text)?,
    };
    Ok(comebacks_with(&records, &rules))
}

/// Pack, journals and rules; of the last record.
pub fn due(args: &[String]) -> Result<FollowUp, Error> {
    let records = sealed(args)?;
    let rules = match args[2].as_str() {
        "" => FollowUpRules::default(),
        text => FollowUpRules::from_json(text)?,
    };
    let history = History::of(&records);
    let last = records.last().expect("a vector has a record");
    follow_up_with(last, history.of_record(last), &rules)
}

pub fn respond(request: &Request) -> Result<String, Error> {
    let args = &request.args;
    Ok(match request.op.as_str() {
        "audit" => audited(args)?.to_json(),
        "shadow" => beside(args)?.to_json(),
        "history" => history(args)?.to_json(),
        "comebacks" => found(args)?.to_json(),
        "follow_up" => due(args)?.to_json(),
        other => panic!("unknown op {other}"),
    })
}
