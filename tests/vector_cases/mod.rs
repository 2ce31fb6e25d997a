//! The language-neutral cases of `tests/vectors`, as requests that Rust, Python and C all answer.
//!
//! A request is an operation and its arguments as texts; an answer is one JSON text. The table of operations
//! is in DEVELOPERS.md, "Vectors".

#![allow(
    dead_code,
    unused_imports,
    reason = "each test binary uses its part of it"
)]

mod counter;
mod history;
mod matching;
mod pages;
mod records;
mod runners;
pub mod tellings;

use brimline::{
    Amount, Error, Interval, Kind, LevelCheck, Limits, Measures, Options, Pack, Rounding, Unit,
    Verdict, calculate::calculate, convert, document::canonical, evaluate_with,
};
pub use matching::missing;
pub use runners::{read_answers, write_requests};
use serde_json::{Value, json};
use std::fs;
use std::path::{Path, PathBuf};

/// What is asked of each language.
#[derive(Debug, Clone, PartialEq)]
pub struct Request {
    pub op: String,
    pub args: Vec<String>,
}

/// One case of a vector file.
#[derive(Debug, Clone)]
pub struct Case {
    pub file: String,
    pub name: String,
    pub source: String,
    pub request: Request,
    /// What must be part of the answer: `Ok` of the `out` member, `Err` of the `error` member.
    pub expected: Result<Value, Value>,
}

pub fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).to_path_buf()
}

/// Every case of every file below `tests/vectors`, but for the packs.
pub fn cases() -> Vec<Case> {
    let mut files = Vec::new();
    gather(&root().join("tests/vectors"), &mut files);
    files.sort();
    files.iter().flat_map(|file| read(file)).collect()
}

fn gather(folder: &Path, files: &mut Vec<PathBuf>) {
    for entry in fs::read_dir(folder).expect("the folder of vectors is there") {
        let path = entry.expect("a folder lists").path();
        if path.is_dir() {
            if path.file_name().is_some_and(|name| name != "packs") {
                gather(&path, files);
            }
        } else if path.extension().is_some_and(|ext| ext == "json") {
            files.push(path);
        }
    }
}

fn read(file: &Path) -> Vec<Case> {
    let text = fs::read_to_string(file).expect("a vector file reads");
    let name = file
        .strip_prefix(root().join("tests/vectors"))
        .expect("below the folder")
        .display()
        .to_string();
    let listed: Value =
        serde_json::from_str(&text).unwrap_or_else(|error| panic!("{name}: {error}"));
    let cases = listed
        .as_array()
        .unwrap_or_else(|| panic!("{name}: not a list"));
    cases.iter().map(|case| one(&name, case)).collect()
}

fn one(file: &str, case: &Value) -> Case {
    let text = |member: &str| {
        case[member]
            .as_str()
            .unwrap_or_else(|| panic!("{file}: no {member} in {case}"))
            .to_string()
    };
    let (name, op, source) = (text("name"), text("op"), text("source"));
    assert!(!source.trim().is_empty(), "{file}: {name} has no source");
    for member in case.as_object().expect("a case is an object").keys() {
        let known = ["name", "op", "in", "out", "error", "source", "note"];
        assert!(
            known.contains(&member.as_str()),
            "{file}: {name} has an unknown member {member}"
        );
    }
    let expected = match (case.get("out"), case.get("error")) {
        (Some(out), None) => Ok(out.clone()),
        (None, Some(error)) => Err(error.clone()),
        _ => panic!("{file}: {name} must have one of out and error"),
    };
    if let Err(error) = &expected {
        let says = error.get("kind").or(error.get("faults")).is_some();
        assert!(says, "{file}: {name} says nothing of its error");
    }
    let args = arguments(&op, &case["in"]).unwrap_or_else(|what| panic!("{file}: {name}: {what}"));
    Case {
        file: file.to_string(),
        name,
        source,
        request: Request { op, args },
        expected,
    }
}

/// The members of each operation's `in`, in the order of its arguments. An absent one is the empty text.
const OPERATIONS: &[(&str, &[&str])] = &[
    ("convert", &["number", "from", "to"]),
    ("unit", &["text", "kind", "measures"]),
    ("amount", &["text", "kind", "measures"]),
    ("amount_to", &["amount", "unit", "places", "rounding"]),
    ("amount_add", &["a", "b"]),
    ("amount_sub", &["a", "b"]),
    ("amount_times", &["a", "factor"]),
    ("amount_compare", &["a", "b"]),
    ("interval_intersect", &["a", "b"]),
    (
        "evaluate",
        &["pack", "journal", "flip", "why_not", "limits"],
    ),
    ("live", &["pack", "journal"]),
    ("seal", &["pack", "journal", "limits"]),
    ("reopen", &["record", "limits"]),
    ("evidence", &["pack", "journal"]),
    ("reevaluate", &["pack", "journal", "given", "rules"]),
    ("pack", &["pack", "limits"]),
    ("pack_lint", &["pack"]),
    ("pack_compare", &["pack", "procedure", "from", "to"]),
    ("pack_select", &["pack", "vehicle", "unit", "date"]),
    ("calculate", &["function", "arguments"]),
    ("messages", &["messages", "limits"]),
    ("profile", &["profile"]),
    ("told", &["messages", "profile", "pack", "journal"]),
    (
        "told_estimate",
        &["messages", "profile", "prices", "pack", "journal", "asked"],
    ),
    (
        "told_invoice",
        &[
            "messages", "profile", "prices", "pack", "journal", "estimate",
        ],
    ),
    ("told_history", &["messages", "profile", "pack", "journals"]),
    (
        "told_comebacks",
        &["messages", "profile", "pack", "journals", "rules"],
    ),
    (
        "told_follow_up",
        &["messages", "profile", "pack", "journals", "rules"],
    ),
    ("told_shadow", &["messages", "profile", "pack", "journals"]),
    (
        "told_audit",
        &[
            "messages", "profile", "prices", "pack", "journals", "billed",
        ],
    ),
    ("history", &["pack", "journals"]),
    ("comebacks", &["pack", "journals", "rules"]),
    ("follow_up", &["pack", "journals", "rules"]),
    ("shadow", &["pack", "journals"]),
    ("price_list", &["prices"]),
    ("estimate", &["prices", "pack", "journal", "asked"]),
    ("invoice", &["prices", "pack", "journal", "estimate"]),
    ("waste", &["pack", "journal"]),
    (
        "page",
        &["page", "pack", "journal", "particulars", "medium"],
    ),
    ("audit", &["prices", "pack", "journals", "billed"]),
];

fn arguments(op: &str, given: &Value) -> Result<Vec<String>, String> {
    let (_, names) = OPERATIONS
        .iter()
        .find(|(own, _)| *own == op)
        .ok_or_else(|| format!("unknown op {op}"))?;
    let members = given.as_object().ok_or("in is not an object")?;
    if let Some(unknown) = members.keys().find(|key| !names.contains(&key.as_str())) {
        return Err(format!("{op} has no argument {unknown}"));
    }
    names
        .iter()
        .map(|name| argument(name, members.get(*name)))
        .collect()
}

fn argument(name: &str, value: Option<&Value>) -> Result<String, String> {
    match (name, value) {
        (_, None) => Ok(String::new()),
        ("pack" | "prices", Some(Value::String(text))) if text == "embedded" => Ok(String::new()),
        ("pack", Some(Value::Object(members)))
            if members.len() == 1 && members.contains_key("file") =>
        {
            let file = members["file"].as_str().ok_or("file is not a text")?;
            fs::read_to_string(root().join("tests/vectors/packs").join(file))
                .map_err(|error| format!("{file}: {error}"))
        }
        ("messages", Some(Value::Object(members))) if members.contains_key("english_but") => {
            tellings::english_but(&members["english_but"])
        }
        ("messages" | "profile", Some(Value::Object(members)))
            if members.contains_key("example") =>
        {
            let file = members["example"].as_str().ok_or("example is not a text")?;
            fs::read_to_string(root().join("examples/messages").join(file))
                .map_err(|error| format!("{file}: {error}"))
        }
        ("journals" | "billed", Some(Value::Array(each))) => Ok(history::lines(each)),
        (_, Some(Value::String(text))) => Ok(text.clone()),
        (_, Some(other)) => Ok(other.to_string()),
    }
}

/// The answer of the Rust library.
pub fn answer(request: &Request) -> String {
    respond(request).unwrap_or_else(|error| format!("{{\"error\":{}}}", error.to_json()))
}

fn respond(request: &Request) -> Result<String, Error> {
    let arg = |index: usize| request.args.get(index).map_or("", String::as_str);
    let text = |amount: Amount| json!({"text": amount.to_string()}).to_string();
    Ok(match request.op.as_str() {
        "convert" => {
            let number: f64 = arg(0).parse().expect("a vector's number is a double");
            json!({"bits": format!("{:016x}", convert(number, arg(1), arg(2))?.to_bits())})
                .to_string()
        }
        "unit" => {
            let unit = Unit::parse_as(arg(0), kind(arg(1)), Measures::from_slug(arg(2)))?;
            let (kind, ucum) = (unit.kind().slug(), unit.ucum());
            json!({"symbol": unit.symbol(), "kind": kind, "code": unit.code(), "ucum": ucum, "rec20": unit.rec20()}).to_string()
        }
        "amount" => {
            let amount = amount(arg(0), arg(1), arg(2))?;
            json!({"text": amount.to_string(), "mantissa": amount.mantissa(), "decimals": amount.decimals(),
                   "unit": amount.unit().symbol()})
            .to_string()
        }
        "amount_to" => {
            let rounding = Rounding::from_slug(arg(3)).expect("a vector names a rounding");
            let places = arg(2).parse().expect("a vector's places are a number");
            text(Amount::parse(arg(0))?.to(Unit::parse(arg(1))?, places, rounding)?)
        }
        "amount_add" => text(Amount::parse(arg(0))?.checked_add(Amount::parse(arg(1))?)?),
        "amount_sub" => text(Amount::parse(arg(0))?.checked_sub(Amount::parse(arg(1))?)?),
        "amount_times" => text(
            Amount::parse(arg(0))?.times(arg(1).parse().expect("a vector's factor is whole"))?,
        ),
        "amount_compare" => {
            let order = match Amount::parse(arg(0))?.compare(&Amount::parse(arg(1))?)? {
                std::cmp::Ordering::Less => "less",
                std::cmp::Ordering::Equal => "equal",
                std::cmp::Ordering::Greater => "greater",
            };
            json!({"order": order}).to_string()
        }
        "interval_intersect" => {
            let both = Interval::parse(arg(0))?.intersect(&Interval::parse(arg(1))?)?;
            json!({"text": both.map(|both| both.to_string())}).to_string()
        }
        "evaluate" => {
            let mut options = Options::default();
            options.limits = limits(arg(4));
            options.flip = arg(2) == "true";
            options.why_not = Verdict::from_slug(arg(3));
            let pack = pack(arg(0), &options.limits)?;
            evaluate_with(&pack, arg(1), &options)?.to_json()
        }
        "live" => LevelCheck::replay(&pack(arg(0), &Limits::default())?, arg(1))?
            .evaluation()
            .to_json(),
        "pack" => {
            let pack = pack(arg(0), &limits(arg(1)))?;
            json!({"id": pack.id(), "version": pack.version(), "title": pack.title(), "digest": pack.digest()}).to_string()
        }
        "pack_lint" => format!(
            "{{\"findings\":{}}}",
            canonical(&pack(arg(0), &Limits::default())?.lint())
        ),
        "pack_compare" => {
            let edition = |index: usize| arg(index).parse().expect("a vector's edition is whole");
            let pack = pack(arg(0), &Limits::default())?;
            format!(
                "{{\"differences\":{}}}",
                canonical(&pack.compare(arg(1), edition(2), edition(3))?)
            )
        }
        "pack_select" => {
            let given = |index: usize| Some(arg(index)).filter(|text| !text.is_empty());
            canonical(&pack(arg(0), &Limits::default())?.select(given(1), given(2), given(3))?)
        }
        "calculate" => calculate(arg(0), arg(1))?,
        "page" => return pages::respond(request),
        "messages" | "profile" => return tellings::respond(request),
        op if op.starts_with("told") => return tellings::respond(request),
        "price_list" | "estimate" | "invoice" | "waste" => counter::respond(request)?,
        "history" | "comebacks" | "follow_up" | "shadow" | "audit" => {
            return history::respond(request);
        }
        _ => return records::respond(request),
    })
}

fn pack(text: &str, limits: &Limits) -> Result<Pack, Error> {
    if text.is_empty() {
        Pack::embedded()
    } else {
        Pack::from_json_with(text, limits)
    }
}

fn kind(slug: &str) -> Option<Kind> {
    Kind::ALL.iter().copied().find(|kind| kind.slug() == slug)
}

fn amount(text: &str, kind_slug: &str, measures: &str) -> Result<Amount, Error> {
    match (kind(kind_slug), Measures::from_slug(measures)) {
        (Some(kind), measures) => Amount::parse_as(text, kind, measures),
        (None, None) => Amount::parse(text),
        (None, Some(_)) => panic!("measures without a kind"),
    }
}

/// Limits as a case states them: a JSON object of the names of [`Limits`].
fn limits(text: &str) -> Limits {
    let stated: Value = if text.is_empty() {
        json!({})
    } else {
        serde_json::from_str(text).expect("limits are JSON")
    };
    stated
        .as_object()
        .expect("limits are an object")
        .iter()
        .fold(Limits::default(), |limits, (name, value)| {
            let value = value
                .as_u64()
                .and_then(|value| usize::try_from(value).ok())
                .expect("a limit is a whole number");
            match name.as_str() {
                "bytes" => limits.with_bytes(value),
                "depth" => limits.with_depth(value),
                "entries" => limits.with_entries(value),
                "text" => limits.with_text(value),
                "faults" => limits.with_faults(value),
                other => panic!("no limit {other}"),
            }
        })
}
