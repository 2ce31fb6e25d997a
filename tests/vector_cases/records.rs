//! The operations on records, answered by the Rust library.

use super::{Request, limits, pack};
use brimline::document::canonical;
use brimline::record::Rules;
use brimline::{Error, Limits, Record};
use serde_json::json;

pub fn respond(request: &Request) -> Result<String, Error> {
    let arg = |index: usize| request.args.get(index).map_or("", String::as_str);
    let seal = || Record::seal(&pack(arg(0), &Limits::default())?, arg(1));
    Ok(match request.op.as_str() {
        "seal" => {
            let limits = limits(arg(2));
            let record = Record::seal_with(&pack(arg(0), &limits)?, arg(1), &limits)?;
            record.to_json().to_string()
        }
        "reopen" => as_sealed(&Record::reopen_with(arg(0), &limits(arg(1)))?),
        "evidence" => format!("{{\"lacks\":{}}}", canonical(&seal()?.evidence())),
        "reevaluate" => {
            let rules = Rules::from_slug(arg(3)).expect("a vector names rules");
            let given = pack(arg(2), &Limits::default())?;
            let differences = seal()?.reevaluate(&given, rules)?;
            format!("{{\"differences\":{}}}", canonical(&differences))
        }
        other => panic!("unknown op {other}"),
    })
}

/// What a record says without its pack.
fn as_sealed(record: &Record) -> String {
    let (pack, leak) = (record.pack(), record.leak());
    json!({
        "as_found": record.as_found().to_string(),
        "began": record.began().map(|moment| moment.text()),
        "by_sheet": leak.by_sheet.slug(),
        "certainty": leak.certainty.slug(),
        "digest": record.digest(),
        "ended": record.ended().map(|moment| moment.text()),
        "net_added": record.net_added().to_string(),
        "now": record.now().to_string(),
        "pack": {"digest": pack.digest, "id": pack.id, "version": pack.version},
        "procedure": record.procedure().id,
        "rules": record.rules(),
        "verdict": record.verdict().slug(),
    })
    .to_string()
}
