//! Tellings in other words and units, and documents of messages that are the English one but for a few places.

use super::{Request, limits, pack};
use brimline::report::{Catalogue, Profile, Teller};
use brimline::{Error, Limits, Options, Pack, evaluate_with};
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
        _ => told(arg(0), arg(1), &pack(arg(2), &Limits::default())?, arg(3))?,
    })
}

/// What a teller tells of a check, line by line.
fn told(messages: &str, profile: &str, pack: &Pack, journal: &str) -> Result<String, Error> {
    let given = |text: &'_ str| Some(text.to_string()).filter(|text| !text.is_empty());
    let (messages, profile) = (given(messages), given(profile));
    let limits = Limits::default();
    let teller = Teller::from_json(messages.as_deref(), profile.as_deref(), &limits)?;
    let mut options = Options::default();
    options.flip = true;
    let evaluation = evaluate_with(pack, journal, &options)?;
    let (text, story) = (teller.text(&evaluation), teller.story(pack, journal)?);
    let lines = |text: &str| text.lines().map(String::from).collect::<Vec<_>>();
    Ok(json!({"caution": teller.caution("hot_fluid"), "text": lines(&text), "story": lines(&story)}).to_string())
}
