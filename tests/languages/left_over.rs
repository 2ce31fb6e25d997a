//! What of a telling is neither a message nor a number nor the host's own words.

use super::told::Told;
use brimline::money::Money;
use brimline::{Unit, report};
use serde_json::Value;
use std::collections::BTreeSet;
use std::rc::Rc;
use std::sync::OnceLock;

/// A telling without the host's own words, the units and the digests: on one line, in small letters.
pub fn left_over(told: &Told) -> String {
    let text = without_amounts(&without_digests(&flat(&told.text)));
    let own = told.own.iter();
    own.fold(text, |text, own| match text.contains(own) {
        true => without(&text, own),
        false => text,
    })
}

/// Its words, by whatever is a letter. A grade of evidence has a letter for its name.
pub fn words(text: &str, is_letter: impl Fn(char) -> bool) -> BTreeSet<String> {
    let words = text
        .split(|letter| !is_letter(letter))
        .filter(|word| !word.is_empty());
    let is_grade = |word: &&str| report::message("evidence_grade", &word.to_uppercase()).is_some();
    words
        .filter(|word| !is_grade(word))
        .map(String::from)
        .collect()
}

/// Whether a number has a point before its decimals.
pub fn has_point(text: &str) -> bool {
    let mut parts = text.split('.').peekable();
    let is_digit = |letter: Option<char>| letter.is_some_and(|letter| letter.is_ascii_digit());
    while let (Some(before), Some(after)) = (parts.next(), parts.peek()) {
        if is_digit(before.chars().next_back()) && is_digit(after.chars().next()) {
            return true;
        }
    }
    false
}

/// Members whose texts are a host's own, also where they read like the id of a message.
const NAMES: [&str; 5] = ["id", "job_id", "procedure", "item", "name"];

/// The texts a host wrote, the longest first. A word of a list, as `idling`, is none: it has a message of its own.
pub fn own_words(given: &[&str]) -> Rc<Vec<String>> {
    let mut all = BTreeSet::new();
    let documents = given.iter().map(|text| tree(text));
    documents.for_each(|document| gather(&document, false, &mut all));
    let mut all: Vec<String> = all.into_iter().collect();
    all.sort_by_key(|text| std::cmp::Reverse(text.len()));
    Rc::new(all)
}

/// A document as a tree; the lines of JSON Lines as a list.
fn tree(text: &str) -> Value {
    let parsed = |line: &str| serde_json::from_str::<Value>(line).ok();
    parsed(text).unwrap_or_else(|| text.lines().filter_map(parsed).collect())
}

fn is_listed(text: &str) -> bool {
    static IDS: OnceLock<BTreeSet<&str>> = OnceLock::new();
    let ids = IDS.get_or_init(|| report::messages().map(|message| message.id).collect());
    ids.contains(text)
}

fn gather(value: &Value, is_name: bool, into: &mut BTreeSet<String>) {
    if let Some(ceiling) = value["ceiling"].as_str()
        && Money::parse(ceiling).is_err()
    {
        // A ceiling that is no sum is told as it was written.
        into.insert(without_amounts(&flat(ceiling)));
    }
    match value {
        Value::String(text) => {
            let text = flat(text);
            if is_name || (text.len() > 1 && !is_listed(&text)) {
                // Ids are read aloud with spaces in them. What is a number and no more is told as a number.
                let texts = [text.replace('_', " "), text].map(|text| without_amounts(&text));
                let has_letters =
                    |text: &String| text.contains(|own: char| own.is_ascii_alphabetic());
                into.extend(texts.into_iter().filter(has_letters));
            }
        }
        Value::Array(items) => items.iter().for_each(|item| gather(item, is_name, into)),
        Value::Object(members) => members
            .iter()
            .for_each(|(name, item)| gather(item, NAMES.contains(&name.as_str()), into)),
        _ => {}
    }
}

/// A text on one line and in small letters.
fn flat(text: &str) -> String {
    let text = text.to_lowercase().replace('\u{a0}', " ");
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// A text without another one, wherever that stands by itself.
fn without(text: &str, own: &str) -> String {
    let is_letter =
        |letter: Option<char>| letter.is_some_and(|letter| letter.is_ascii_alphabetic());
    let mut out = String::new();
    let mut rest = text;
    while let Some((before, after)) = rest.split_once(own) {
        out.push_str(before);
        let inside = is_letter(out.chars().next_back()) && is_letter(own.chars().next())
            || is_letter(after.chars().next()) && is_letter(own.chars().next_back());
        out.push_str(if inside { own } else { "·" });
        rest = after;
    }
    out + rest
}

/// A text without SHA-256 digests, whole or their first twelve.
fn without_digests(text: &str) -> String {
    let is_digest =
        |word: &&str| word.len() >= 12 && word.chars().all(|digit| digit.is_ascii_hexdigit());
    let is_apart = |letter: char| !letter.is_alphanumeric();
    let digests: Vec<&str> = text.split(is_apart).filter(is_digest).collect();
    digests.iter().fold(text.into(), |text: String, digest| {
        text.replace(digest, "·")
    })
}

/// The symbols of units, and the beginnings of them that a narrow picture leaves, the longest first.
fn symbols() -> Vec<String> {
    let whole = Unit::ALL.iter().map(|unit| unit.symbol().to_lowercase());
    let cut = |symbol: String| {
        let places: Vec<usize> = symbol
            .char_indices()
            .skip(1)
            .map(|(place, _)| place)
            .collect();
        let cut = places
            .into_iter()
            .map(|place| format!("{}…", &symbol[..place]));
        cut.chain([symbol.clone()]).collect::<Vec<_>>()
    };
    let mut symbols: Vec<String> = whole.flat_map(cut).collect();
    symbols.sort_by_key(|symbol| std::cmp::Reverse(symbol.len()));
    symbols
}

/// A text in which no number has a unit, a currency or a price any more.
fn without_amounts(text: &str) -> String {
    static SYMBOLS: OnceLock<Vec<String>> = OnceLock::new();
    let symbols = SYMBOLS.get_or_init(symbols);
    let unit = |rest: &str| {
        let ends = |symbol: &&String| {
            rest.strip_prefix(symbol.as_str())
                .is_some_and(|after| !after.starts_with(|letter: char| letter.is_alphanumeric()))
        };
        symbols.iter().find(ends).map(|symbol| symbol.len())
    };
    let mut out = String::new();
    let mut rest = text;
    while let Some(letter) = rest.chars().next() {
        let mut taken = letter.len_utf8();
        out.push(letter);
        if letter.is_ascii_digit() {
            let after = &rest[taken..];
            let gap = usize::from(after.starts_with(' '));
            let after = &after[gap..];
            let currency = ["eur/", "eur", "usd/", "usd", "gbp/", "gbp", "jpy/", "jpy"];
            let money = currency.iter().find(|code| after.starts_with(**code));
            let money = money.map_or(0, |code| code.len());
            let more = unit(&after[money..]).unwrap_or(0);
            if money + more > 0 {
                taken += gap + money + more;
            }
        }
        rest = &rest[taken..];
    }
    out
}
