//! Tellings in other words and units, and documents of messages that are the English one but for a few places.

use super::{Request, counter, history, limits, pack};
use brimline::report::{Catalogue, Profile, Teller};
use brimline::{Error, Limits, Options, Pack, Record, evaluate_with};
use serde_json::{Value, json};

/// The English messages with other values at these paths; `null` takes a member out. With other plural rules every text
/// that is not among them has one form.
pub fn english_but(places: &Value) -> Result<String, String> {
    let mut document: Value =
        serde_json::from_str(&Catalogue::english().to_json()).expect("messages are JSON");
    let places = places.as_object().ok_or("english_but is not an object")?;
    if places.contains_key("plurals") {
        // The forms of English are of no use then.
        let parts = document["messages"].as_object_mut().expect("an object");
        let texts = parts.values_mut().filter_map(Value::as_object_mut);
        for text in texts.flat_map(|texts| texts.values_mut()) {
            if let Some(other) = text.get("other").cloned() {
                *text = other;
            }
        }
    }
    for (path, value) in places {
        let (parent, name) = path.rsplit_once('.').unwrap_or(("", path));
        let mut place = &mut document;
        for step in parent.split('.').filter(|step| !step.is_empty()) {
            place = &mut place[step];
        }
        let members = place.as_object_mut().ok_or("a path leads nowhere")?;
        match value {
            Value::Null => drop(members.remove(name)),
            value => drop(members.insert(name.to_string(), value.clone())),
        }
    }
    Ok(document.to_string())
}

/// The answers of documents of messages, profiles, and tellers.
pub fn respond(request: &Request) -> Result<String, Error> {
    let arg = |index: usize| request.args.get(index).map_or("", String::as_str);
    Ok(match request.op.as_str() {
        "messages" => Catalogue::from_json_with(arg(0), &limits(arg(1)))?.to_json(),
        "profile" => Profile::from_json(arg(0))?.to_json(),
        "told" => told(
            &teller(arg(0), arg(1))?,
            &pack(arg(2), &Limits::default())?,
            arg(3),
        )?,
        op => {
            let page = page(op, &teller(arg(0), arg(1))?, &request.args[2..])?;
            json!({"text": lines(&page)}).to_string()
        }
    })
}

fn teller(messages: &str, profile: &str) -> Result<Teller, Error> {
    let given = |text: &'_ str| Some(text.to_string()).filter(|text| !text.is_empty());
    let (messages, profile) = (given(messages), given(profile));
    Teller::from_json(messages.as_deref(), profile.as_deref(), &Limits::default())
}

fn lines(text: &str) -> Vec<String> {
    text.lines().map(String::from).collect()
}

/// The operations that tell what those of the same name without `told_` answer.
pub const PAGES: [&str; 7] = [
    "told_estimate",
    "told_invoice",
    "told_history",
    "told_comebacks",
    "told_follow_up",
    "told_shadow",
    "told_audit",
];

/// What one of them tells, by the arguments of the operation without `told_`.
pub fn page(op: &str, teller: &Teller, args: &[String]) -> Result<String, Error> {
    Ok(match op {
        "told_estimate" => {
            let (check, estimate) = counter::estimated(args)?;
            teller.estimate(&estimate, check.sheet())
        }
        "told_invoice" => {
            let (check, invoice) = counter::billed(args)?;
            teller.invoice(&invoice, check.sheet())
        }
        "told_history" => teller.history(&history::history(args)?),
        "told_comebacks" => teller.comebacks(&history::found(args)?),
        "told_follow_up" => teller.follow_up(&history::due(args)?),
        "told_shadow" => teller.shadow(&history::beside(args)?),
        "told_audit" => teller.audit(&history::audited(args)?),
        other => panic!("unknown op {other}"),
    })
}

/// What a teller tells of a check, line by line, and in sentences of their own.
fn told(teller: &Teller, pack: &Pack, journal: &str) -> Result<String, Error> {
    let mut options = Options::default();
    options.flip = true;
    let evaluation = evaluate_with(pack, journal, &options)?;
    let reasons = evaluation.because().iter();
    let reasons: Vec<String> = reasons.map(|reason| teller.reason(reason)).collect();
    let lacks = Record::seal(pack, journal)?.evidence();
    let lacks: Vec<_> = lacks.iter().map(|own| teller.lack(own.id)).collect();
    let lint: Vec<String> = pack.lint().iter().map(|own| teller.lint(own)).collect();
    Ok(json!({
        "answered": teller.answered("leak", "response", "report"),
        "caution": teller.caution("hot_fluid"),
        "departure": teller.departure(&evaluation.as_found()),
        "lacks": lacks,
        "lint": lint,
        "reasons": reasons,
        "story": lines(&teller.story(pack, journal)?),
        "text": lines(&teller.text(&evaluation)),
        "verdict": teller.verdict(evaluation.verdict()),
    })
    .to_string())
}
