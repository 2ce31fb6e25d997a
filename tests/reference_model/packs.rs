//! Packs for the comparison: invented sheets with and without every block, limits and windows in mixed units.

use crate::dice::Dice;
use serde_json::{Map, Value, json};

/// A temperature window with readings inside, below and above it; the first inside ones are the limits themselves.
pub struct Window {
    pub min: Option<&'static str>,
    pub max: Option<&'static str>,
    pub inside: &'static [&'static str],
    pub below: &'static [&'static str],
    pub above: &'static [&'static str],
}

pub const WINDOWS: &[Window] = &[
    Window {
        min: Some("45 °C"),
        max: None,
        inside: &["45 °C", "113 °F", "45.1 °C", "60 °C"],
        below: &["44.9 °C", "112.9 °F", "21 °C"],
        above: &[],
    },
    Window {
        min: Some("113 °F"),
        max: None,
        inside: &["45 °C", "113 °F", "114 °F", "52.5 °C"],
        below: &["44.999 °C", "112 °F"],
        above: &[],
    },
    Window {
        min: Some("35 °C"),
        max: Some("45 °C"),
        inside: &["35 °C", "45 °C", "95 °F", "113 °F", "40 °C"],
        below: &["34.9 °C", "20 °C", "94 °F"],
        above: &["45.1 °C", "80 °C", "113.1 °F"],
    },
    Window {
        min: Some("100 °F"),
        max: Some("121 °F"),
        inside: &["100 °F", "121 °F", "40 °C", "37.8 °C"],
        below: &["37.7 °C", "99.9 °F"],
        above: &["49.5 °C", "122 °F"],
    },
    Window {
        min: None,
        max: Some("50 °C"),
        inside: &["50 °C", "122 °F", "18 °C"],
        below: &[],
        above: &["50.5 °C", "123 °F"],
    },
];

/// A leak limit, and a step that reaches it exactly in so many pours.
pub struct Limit {
    pub amount: &'static str,
    pub step: &'static str,
    pub pours: usize,
}

pub const LIMITS: &[Limit] = &[
    Limit {
        amount: "1.2 L",
        step: "0.3 L",
        pours: 4,
    },
    Limit {
        amount: "1.4 US qt",
        step: "0.1 US qt",
        pours: 14,
    },
    Limit {
        amount: "1.2 imp qt",
        step: "0.4 imp qt",
        pours: 3,
    },
    Limit {
        amount: "0.8 L",
        step: "200 mL",
        pours: 4,
    },
    Limit {
        amount: "1000 mL",
        step: "0.25 L",
        pours: 4,
    },
    Limit {
        amount: "48 US fl oz",
        step: "0.3 US qt",
        pours: 5,
    },
];

pub const DEFECTS: &[&str] = &[
    "below_window",
    "above_window",
    "engine_off",
    "engine_running",
    "ranges",
    "cooler",
    "selector",
    "tilt_toward",
    "tilt_away",
    "tilt_unknown",
    "pour_settle",
    "stop_settle",
];

fn object(fields: Vec<(&str, Option<Value>)>) -> Value {
    let stated = fields
        .into_iter()
        .filter_map(|(name, value)| Some((name.to_string(), value?)));
    Value::Object(stated.collect::<Map<_, _>>())
}

fn sometimes(dice: &mut Dice, percent: usize, among: &[&str]) -> Option<Value> {
    let chosen = json!(dice.pick(among));
    dice.chance(percent).then_some(chosen)
}

pub fn pack(dice: &mut Dice) -> Value {
    // Editions: alone; a plain succession; two of one date, one superseding; two of one date at odds.
    let editions: &[(u64, Option<&str>, Option<u64>)] = match dice.below(6) {
        0 => &[(1, None, None)],
        1 => &[
            (1, Some("2024-01-01"), None),
            (2, Some("2024-05-06"), Some(1)),
        ],
        2 => &[
            (1, None, None),
            (2, Some("2024-05-07"), Some(1)),
            (3, Some("2030-01-01"), Some(2)),
        ],
        3 => &[
            (1, Some("2024-05-01"), None),
            (2, Some("2024-05-01"), Some(1)),
        ],
        4 => &[
            (1, None, None),
            (2, None, None),
            (4, Some("2024-05-06"), None),
        ],
        _ => &[(1, Some("2024-02-01"), None), (3, Some("2024-02-01"), None)],
    };
    let mut procedures: Vec<Value> = vec![sheet(dice, "crake-level", (1, None, None))];
    procedures.extend(
        editions
            .iter()
            .map(|edition| sheet(dice, "wren-level", *edition)),
    );
    json!({
        "format": "brimline-pack/1", "id": "fernhollow", "version": "3", "title": "Fernhollow Gear & Drive",
        "fluids": [
            {"id": "fern-light", "density_15": dice.pick(&["838 kg/m³", "0.8 g/mL"]), "replaces": ["fern-heavy"]},
            {"id": "fern-heavy", "density_15": "0.87 g/mL", "mixes_with": ["fern-light"]},
            {"id": "fern-axle", "density_15": "905 kg/m³", "never": ["fern-light", "fern-plain"]},
            {"id": "fern-plain", "full_exchange_only": ["fern-light"]},
        ],
        "procedures": procedures,
    })
}

fn sheet(
    dice: &mut Dice,
    id: &str,
    (edition, effective, supersedes): (u64, Option<&str>, Option<u64>),
) -> Value {
    let fluid = dice.weighted(&[(8, Some("fern-light")), (1, Some("fern-plain")), (1, None)]);
    let capacity = object(vec![
        (
            "total",
            sometimes(dice, 80, &["7.4 L", "8 US qt", "6.6 imp qt"]),
        ),
        (
            "refill",
            sometimes(dice, 70, &["3.5 L", "3.7 US qt", "3100 mL"]),
        ),
    ]);
    let bias: Map<String, Value> = (0..dice.weighted(&[(7, 0), (2, 1), (1, 3)]))
        .map(|_| {
            (
                dice.pick(DEFECTS).to_string(),
                json!(dice.pick(&["low", "high", "both"])),
            )
        })
        .collect();
    let kind = dice.pick(&["overflow_plug", "side_plug", "standpipe"]);
    // Side plugs are the ones often looked at with the engine off.
    let engines: &[&str] = match kind {
        "side_plug" => &["idling", "off", "off", "ready"],
        _ => &["idling", "idling", "idling", "off", "ready"],
    };
    let method = object(vec![
        ("kind", Some(json!(kind))),
        (
            "warming",
            sometimes(dice, 70, &["expands", "expands", "expands", "retains"]),
        ),
        (
            "watch",
            sometimes(dice, 75, &["0 s", "5 s", "15 s", "0.5 min"]),
        ),
        (
            "settle",
            sometimes(dice, 70, &["0 s", "60 s", "90 s", "1 min"]),
        ),
        (
            "hold_up",
            sometimes(dice, 75, &["0 mL", "30 mL", "60 mL", "1 US fl oz"]),
        ),
        (
            "lip_band",
            sometimes(dice, 40, &["0 mL", "50 mL", "0.1 L", "2 imp fl oz"]),
        ),
        ("surface", sometimes(dice, 20, &["0.06 m²"])),
        ("offset", sometimes(dice, 20, &["150 mm"])),
        ("bias", (!bias.is_empty()).then_some(Value::Object(bias))),
    ]);
    let window = &WINDOWS[dice.below(WINDOWS.len())];
    let temperature = object(vec![
        ("min", window.min.map(|min| json!(min))),
        ("max", window.max.map(|max| json!(max))),
        (
            "max_age",
            sometimes(dice, 50, &["30 s", "60 s", "1 min", "10 s"]),
        ),
    ]);
    let tilt = json!({"max": dice.pick(&["0.5 deg", "1 deg"])});
    let ranges = object(vec![("dwell", sometimes(dice, 70, &["3 s", "5 s"]))]);
    let cooler = object(vec![(
        "thermostat",
        sometimes(dice, 70, &["78 °C", "170 °F"]),
    )]);
    let often = |dice: &mut Dice, value: Value| dice.chance(60).then_some(value);
    let conditions = object(vec![
        ("engine", sometimes(dice, 85, engines)),
        ("selector", sometimes(dice, 50, &["park", "neutral"])),
        ("temperature", dice.chance(75).then_some(temperature)),
        ("tilt", often(dice, tilt)),
        ("ranges", often(dice, ranges)),
        ("cooler", often(dice, cooler)),
    ]);
    let limit = LIMITS[dice.below(LIMITS.len())].amount;
    let comparison = dice.pick(&["more_than", "at_least"]);
    let leak_limit = object(vec![
        (comparison, Some(json!(limit))),
        (
            "about",
            sometimes(dice, 50, &["0 L", "0.1 L", "0.1 US qt", "50 mL"]),
        ),
        ("counts", sometimes(dice, 60, &["net", "gross"])),
    ]);
    let step = object(vec![(
        "step",
        sometimes(dice, 100, &["0.25 L", "0.4 US qt", "250 mL"]),
    )]);
    object(vec![
        ("id", Some(json!(id))),
        ("edition", Some(json!(edition))),
        ("supersedes", supersedes.map(|edition| json!(edition))),
        ("effective", effective.map(|date| json!(date))),
        ("unit", Some(json!("Wren transaxle"))),
        ("source", Some(json!("Fernhollow service sheet (invented)"))),
        ("fluid", fluid.map(|fluid| json!(fluid))),
        ("capacity", dice.chance(80).then_some(capacity)),
        ("method", Some(method)),
        ("conditions", dice.chance(92).then_some(conditions)),
        ("refill", dice.chance(70).then_some(step)),
        ("leak_limit", dice.chance(90).then_some(leak_limit)),
    ])
}
