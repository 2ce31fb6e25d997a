//! Conditions: what a sheet asks, whether it was met at an observation, and which way an unmet one errs.

use crate::record::Entry;
use crate::sheet::Sheet;
use crate::words::{Exact, Kind, quantity_of};

/// Which way a reading errs: too low, too high, or it cannot be said.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sign {
    None,
    Low,
    High,
    Both,
}

impl Sign {
    fn with(self, other: Sign) -> Sign {
        match (self, other) {
            (Sign::None, sign) | (sign, Sign::None) => sign,
            (one, same) if one == same => one,
            _ => Sign::Both,
        }
    }

    /// A high sign applies, alone or within `both`.
    pub fn may_be_high(self) -> bool {
        matches!(self, Sign::High | Sign::Both)
    }
}

/// What the samples before an observation prove of the temperature.
#[derive(Debug, PartialEq)]
pub enum Temperature {
    NotAsked,
    NotFresh,
    Fresh(Exact),
}

fn latest<'a>(before: &'a [Entry], kind: &str) -> Option<&'a Entry> {
    before.iter().rev().find(|entry| entry.is(kind))
}

/// The state the engine or the plug was last stated to be in.
pub fn stated<'a>(before: &'a [Entry], kind: &str) -> Option<&'a str> {
    latest(before, kind)?.says("state")
}

/// The engine is stated running, idling or in a hybrid's service mode.
fn engine_runs(before: &[Entry]) -> bool {
    stated(before, "engine").is_some_and(|state| state != "off")
}

/// The entry by which the engine, now stated off, was stopped: stating it off again stops nothing.
fn engine_stop(before: &[Entry]) -> Option<&Entry> {
    let stated = before.iter().rev().filter(|entry| entry.is("engine"));
    stated
        .take_while(|entry| entry.says("state") == Some("off"))
        .last()
}

/// When the flow began: an entry is timed at the end of what it describes.
fn began(flow: &Entry) -> Exact {
    &flow.at - quantity_of(Kind::Time, flow.says("for").expect("how long"))
}

pub fn temperature(sheet: &Sheet, before: &[Entry], flow: &Entry) -> Temperature {
    let Some(window) = &sheet.temperature else {
        return Temperature::NotAsked;
    };
    let reading = |sample: &Entry| {
        quantity_of(
            Kind::Temperature,
            sample.says("reading").expect("a reading"),
        )
    };
    let can_prove = |sample: &&Entry| match sample.says("source") {
        Some("scan" | "network") => true,
        Some("infrared" | "pan") => {
            window.max.is_none()
                && window
                    .min
                    .as_ref()
                    .is_some_and(|min| reading(sample) >= *min)
        }
        _ => false,
    };
    let samples = before.iter().rev().filter(|entry| entry.is("temperature"));
    match samples.clone().find(can_prove) {
        Some(sample) if &flow.at - &sample.at <= window.max_age => {
            Temperature::Fresh(reading(sample))
        }
        _ => Temperature::NotFresh,
    }
}

/// Every condition of the sheet that is unmet at the flow, or was never stated.
pub fn defects(
    sheet: &Sheet,
    before: &[Entry],
    flow: &Entry,
    temperature: &Temperature,
) -> Vec<&'static str> {
    let mut defects = Vec::new();
    if let (Temperature::Fresh(reading), Some(window)) = (temperature, &sheet.temperature) {
        if window.min.as_ref().is_some_and(|min| reading < min) {
            defects.push("below_window");
        }
        if window.max.as_ref().is_some_and(|max| reading > max) {
            defects.push("above_window");
        }
    }
    if sheet.asks_running() && !engine_runs(before) {
        defects.push("engine_off");
    }
    if sheet.asks_off() && stated(before, "engine") != Some("off") {
        defects.push("engine_running");
    }
    if let Some(dwell) = &sheet.ranges_dwell
        && !ranges_cycled(dwell, before)
    {
        defects.push("ranges");
    }
    if let Some(thermostat) = &sheet.cooler
        && cooler_unfilled(thermostat.as_ref(), before)
    {
        defects.push("cooler");
    }
    if let Some(asked) = &sheet.selector {
        let position = latest(before, "selector").and_then(|entry| entry.says("position"));
        if position != Some(asked) {
            defects.push("selector");
        }
    }
    if flow.says("grade") == Some("spitting") {
        defects.push("foam");
    }
    if let Some(max) = &sheet.tilt_max {
        defects.extend(tilted(max, before));
    }
    if let Some(pour) = latest(before, "added")
        && began(flow) - &pour.at < sheet.settle
    {
        defects.push("pour_settle");
    }
    if sheet.side_plug
        && sheet.asks_off()
        && let Some(stop) = engine_stop(before)
        && began(flow) - &stop.at < sheet.settle
    {
        defects.push("stop_settle");
    }
    defects
}

/// Every range was held long enough, with the engine running, since it last started.
fn ranges_cycled(dwell: &Exact, before: &[Entry]) -> bool {
    (0..before.len()).any(|place| {
        let entry = &before[place];
        let long_enough = |entry: &Entry| {
            quantity_of(Kind::Time, entry.says("dwell").expect("a dwell")) >= *dwell
        };
        let stopped_since = before[place..]
            .iter()
            .any(|later| later.is("engine") && later.says("state") == Some("off"));
        entry.is("ranges") && long_enough(entry) && engine_runs(&before[..place]) && !stopped_since
    })
}

/// The cooler was opened, and since then neither filled by confirmation nor by a drive that opened its thermostat.
fn cooler_unfilled(thermostat: Option<&Exact>, before: &[Entry]) -> bool {
    let confirmed = |entry: &Entry, what| entry.is("confirmed") && entry.says("what") == Some(what);
    let hot_drive = |entry: &Entry| {
        let peak = entry
            .says("peak")
            .map(|peak| quantity_of(Kind::Temperature, peak));
        entry.is("driven")
            && matches!((peak, thermostat), (Some(peak), Some(opens)) if peak >= *opens)
    };
    let opened = before
        .iter()
        .rposition(|entry| confirmed(entry, "cooler_opened"));
    opened.is_some_and(|opened| {
        !before[opened..]
            .iter()
            .any(|entry| confirmed(entry, "cooler_filled") || hot_drive(entry))
    })
}

fn tilted(max: &Exact, before: &[Entry]) -> Option<&'static str> {
    let Some(level) = latest(before, "level") else {
        return Some("tilt_unknown");
    };
    let tilt = quantity_of(Kind::Angle, level.says("tilt").expect("a tilt"));
    match level.says("toward") {
        _ if tilt <= *max => None,
        Some("plug") => Some("tilt_toward"),
        Some("away") => Some("tilt_away"),
        _ => Some("tilt_unknown"),
    }
}

/// The sign of one defect: the sheet's own if it states one, else by the method and what it asks.
pub fn sign_of(sheet: &Sheet, defect: &str) -> Sign {
    let stated = sheet.bias.get(defect).map(String::as_str);
    match (stated, defect) {
        (Some("low"), _) => Sign::Low,
        (Some("high"), _) => Sign::High,
        (Some("both"), _) => Sign::Both,
        (_, "below_window") if sheet.expands => Sign::Low,
        (_, "above_window") if sheet.expands => Sign::High,
        (_, "below_window" | "above_window") => Sign::Both,
        (_, "engine_off" | "ranges" | "cooler") => Sign::High,
        (_, "engine_running" | "selector" | "foam") => Sign::Both,
        (_, "tilt_toward") => Sign::High,
        (_, "tilt_away") => Sign::Low,
        (_, "tilt_unknown") => Sign::Both,
        (_, "pour_settle") if sheet.side_plug => Sign::Both,
        (_, "pour_settle" | "stop_settle") => Sign::Low,
        (_, other) => panic!("no such defect: {other}"),
    }
}

/// The signs of all defects together.
pub fn sign(sheet: &Sheet, defects: &[&str]) -> Sign {
    defects
        .iter()
        .fold(Sign::None, |sign, defect| sign.with(sign_of(sheet, defect)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::sheet::Pack;
    use serde_json::{Value, json};

    fn sheet(kind: &str, engine: &str, settle: &str, bias: Value) -> Sheet {
        let pack = json!({"id": "p", "procedures": [{"id": "s", "edition": 1,
            "method": {"kind": kind, "warming": "expands", "settle": settle, "bias": bias},
            "conditions": {"engine": engine}}]});
        Pack::read(&pack).sheets.remove(0)
    }

    fn entry(second: i64, fields: Value) -> Entry {
        let kind = fields["kind"].as_str().expect("a kind").into();
        Entry {
            seq: 1,
            at: crate::words::ratio(second, 1),
            kind,
            fields,
        }
    }

    #[test]
    fn default_signs_by_method() {
        use Sign::{Both, High, Low};
        let table = [
            ("below_window", Low, Low),
            ("above_window", High, High),
            ("engine_off", High, High),
            ("engine_running", Both, Both),
            ("ranges", High, High),
            ("cooler", High, High),
            ("selector", Both, Both),
            ("foam", Both, Both),
            ("tilt_toward", High, High),
            ("tilt_away", Low, Low),
            ("tilt_unknown", Both, Both),
            ("pour_settle", Low, Both),
        ];
        for (defect, at_the_plug, at_the_side) in table {
            for (kind, expected) in [
                ("overflow_plug", at_the_plug),
                ("standpipe", at_the_plug),
                ("side_plug", at_the_side),
            ] {
                let sheet = sheet(kind, "idling", "60 s", json!({}));
                assert_eq!(sign_of(&sheet, defect), expected, "{defect} at a {kind}");
            }
        }
        let side = sheet("side_plug", "off", "60 s", json!({}));
        assert_eq!(sign_of(&side, "stop_settle"), Low);
        let own = sheet("side_plug", "off", "60 s", json!({"stop_settle": "both"}));
        assert_eq!(sign_of(&own, "stop_settle"), Both);
    }

    #[test]
    fn signs_that_pull_apart_leave_nothing() {
        let sheet = sheet("overflow_plug", "idling", "60 s", json!({}));
        assert_eq!(sign(&sheet, &[]), Sign::None);
        assert_eq!(sign(&sheet, &["engine_off", "ranges"]), Sign::High);
        assert_eq!(sign(&sheet, &["engine_off", "tilt_away"]), Sign::Both);
        assert_eq!(sign(&sheet, &["tilt_away", "selector"]), Sign::Both);
    }

    #[test]
    fn settling_counts_from_the_stop_to_the_start_of_the_look() {
        let sheet = sheet("side_plug", "off", "60 s", json!({}));
        let stopped = |second| entry(second, json!({"kind": "engine", "state": "off"}));
        let look = |second| {
            entry(
                second,
                json!({"kind": "flow", "grade": "none", "for": "20 s"}),
            )
        };
        let found =
            |before: &[Entry], look: &Entry| defects(&sheet, before, look, &Temperature::NotAsked);
        // Stopped at 0; a look from 60 to 80 has settled, one from 59 to 79 has not. Said again at 50, it is still off.
        assert_eq!(found(&[stopped(0)], &look(80)), [""; 0]);
        assert_eq!(found(&[stopped(0)], &look(79)), ["stop_settle"]);
        assert_eq!(found(&[stopped(0), stopped(50)], &look(80)), [""; 0]);
    }
}
