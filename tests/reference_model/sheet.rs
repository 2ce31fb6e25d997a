//! The sheet: what a pack says, and which edition of a procedure is in force for a journal.

use crate::words::{Exact, Kind, day, quantity, quantity_of, utc_day};
use serde_json::Value;
use std::collections::BTreeMap;

/// A fluid of the pack: its density in g/mL, and the fluids it must never meet.
pub struct Fluid {
    pub density: Option<Exact>,
    pub never: Vec<String>,
}

/// The temperature condition, in K; `max_age` in s.
pub struct Window {
    pub min: Option<Exact>,
    pub max: Option<Exact>,
    pub max_age: Exact,
}

/// The leak limit, in mL, with the comparison its print asks for.
pub struct LeakLimit {
    pub text: String,
    pub amount: Exact,
    pub at_least: bool,
    pub about: Exact,
    pub gross: bool,
}

/// One edition of one procedure.
pub struct Sheet {
    pub id: String,
    pub edition: u64,
    pub supersedes: Option<u64>,
    pub effective: Option<i64>,
    pub fluid: Option<String>,
    /// The volume no single amount can exceed 1.5 times: total capacity, else refill capacity.
    pub capacity: Option<Exact>,
    /// The unit intervals are written in.
    pub unit: &'static str,
    pub side_plug: bool,
    pub expands: bool,
    pub watch: Exact,
    pub settle: Exact,
    pub hold_up: Exact,
    pub lip_band: Exact,
    pub bias: BTreeMap<String, String>,
    pub engine: Option<String>,
    pub selector: Option<String>,
    pub temperature: Option<Window>,
    pub tilt_max: Option<Exact>,
    pub ranges_dwell: Option<Exact>,
    /// Present if the sheet speaks of the cooler; inside, its thermostat if stated.
    pub cooler: Option<Option<Exact>>,
    pub leak_limit: Option<LeakLimit>,
}

/// A pack, read.
pub struct Pack {
    pub id: String,
    pub fluids: BTreeMap<String, Fluid>,
    pub sheets: Vec<Sheet>,
}

fn text(value: &Value) -> Option<String> {
    value.as_str().map(String::from)
}

fn amount(kind: Kind, value: &Value) -> Option<Exact> {
    value.as_str().map(|text| quantity_of(kind, text))
}

impl Pack {
    pub fn read(pack: &Value) -> Self {
        let list = |name: &str| pack[name].as_array().cloned().unwrap_or_default();
        let fluid = |fluid: &Value| Fluid {
            density: amount(Kind::Density, &fluid["density_15"]),
            never: fluid["never"]
                .as_array()
                .into_iter()
                .flatten()
                .filter_map(text)
                .collect(),
        };
        Self {
            id: text(&pack["id"]).expect("the id of the pack"),
            fluids: list("fluids")
                .iter()
                .map(|value| {
                    (
                        text(&value["id"]).expect("the id of the fluid"),
                        fluid(value),
                    )
                })
                .collect(),
            sheets: list("procedures").iter().map(Sheet::read).collect(),
        }
    }

    /// The sheet the journal was worked by, or nothing if that cannot be said.
    pub fn in_force(&self, journal: &Value) -> Option<&Sheet> {
        if journal["pack"].is_object() && journal["pack"]["id"] != self.id.as_str() {
            return None;
        }
        let of_procedure = |sheet: &&Sheet| journal["procedure"] == sheet.id.as_str();
        let editions: Vec<&Sheet> = self.sheets.iter().filter(of_procedure).collect();
        if let Some(edition) = journal["edition"].as_u64() {
            return editions.into_iter().find(|sheet| sheet.edition == edition);
        }
        let first_day = journal["entries"][0]["at"].as_str().map(utc_day);
        let already = |sheet: &&Sheet| match (sheet.effective, first_day) {
            (Some(effective), Some(first)) => effective <= first,
            _ => true,
        };
        let candidates: Vec<&Sheet> = editions.into_iter().filter(already).collect();
        let newest = candidates.iter().map(|sheet| sheet.effective).max()?;
        let newest: Vec<&Sheet> = candidates
            .into_iter()
            .filter(|sheet| sheet.effective == newest)
            .collect();
        let superseded = |sheet: &Sheet| {
            newest
                .iter()
                .any(|other| other.supersedes == Some(sheet.edition))
        };
        let mut standing = newest.iter().filter(|sheet| !superseded(sheet));
        match (standing.next(), standing.next()) {
            (Some(sheet), None) => Some(sheet),
            _ => None,
        }
    }
}

impl Sheet {
    fn read(sheet: &Value) -> Self {
        let method = &sheet["method"];
        let conditions = &sheet["conditions"];
        let or_zero = |kind, value: &Value| amount(kind, value).unwrap_or_default();
        let capacity = &sheet["capacity"];
        let limit = &sheet["leak_limit"];
        let limit_text = text(&limit["more_than"]).or(text(&limit["at_least"]));
        let written_in = limit_text
            .clone()
            .or(text(&sheet["refill"]["step"]))
            .or(text(&capacity["refill"]))
            .unwrap_or("1 L".into());
        Self {
            id: text(&sheet["id"]).expect("the id of the procedure"),
            edition: sheet["edition"].as_u64().expect("the edition"),
            supersedes: sheet["supersedes"].as_u64(),
            effective: sheet["effective"].as_str().map(day),
            fluid: text(&sheet["fluid"]),
            capacity: amount(Kind::Volume, &capacity["total"])
                .or(amount(Kind::Volume, &capacity["refill"])),
            unit: quantity(&written_in).unit,
            side_plug: method["kind"] == "side_plug",
            expands: method["warming"] == "expands",
            watch: or_zero(Kind::Time, &method["watch"]),
            settle: or_zero(Kind::Time, &method["settle"]),
            hold_up: or_zero(Kind::Volume, &method["hold_up"]),
            lip_band: or_zero(Kind::Volume, &method["lip_band"]),
            bias: method["bias"]
                .as_object()
                .into_iter()
                .flatten()
                .map(|(defect, sign)| (defect.clone(), text(sign).expect("a sign")))
                .collect(),
            engine: text(&conditions["engine"]),
            selector: text(&conditions["selector"]),
            temperature: conditions["temperature"].as_object().map(|_| {
                let window = &conditions["temperature"];
                Window {
                    min: amount(Kind::Temperature, &window["min"]),
                    max: amount(Kind::Temperature, &window["max"]),
                    max_age: quantity_of(Kind::Time, window["max_age"].as_str().unwrap_or("30 s")),
                }
            }),
            tilt_max: amount(Kind::Angle, &conditions["tilt"]["max"]),
            ranges_dwell: conditions["ranges"]
                .as_object()
                .map(|_| or_zero(Kind::Time, &conditions["ranges"]["dwell"])),
            cooler: conditions["cooler"]
                .as_object()
                .map(|_| amount(Kind::Temperature, &conditions["cooler"]["thermostat"])),
            leak_limit: limit_text.map(|text| LeakLimit {
                amount: quantity_of(Kind::Volume, &text),
                text,
                at_least: limit["at_least"].is_string(),
                about: or_zero(Kind::Volume, &limit["about"]),
                gross: limit["counts"] == "gross",
            }),
        }
    }

    /// The sheet wants the engine running, whether idling or in a hybrid's service mode.
    pub fn asks_running(&self) -> bool {
        self.engine.as_deref().is_some_and(|asked| asked != "off")
    }

    /// The sheet wants the engine off.
    pub fn asks_off(&self) -> bool {
        self.engine.as_deref() == Some("off")
    }
}
