//! The bench: how a generated job enters what happens, with a clock and the sheet it works by.

use crate::dice::Dice;
use crate::packs::{WINDOWS, Window};
use crate::words::time_text;
use serde_json::{Value, json};

pub const GRADES: &[&str] = &[
    "none",
    "none",
    "wet",
    "slow_drip",
    "fast_drip",
    "trickle",
    "trickle",
    "stream",
    "gush",
    "spitting",
];
pub const VOLUMES: &[&str] = &[
    "0.5 L",
    "0.25 L",
    "0.1 L",
    "250 mL",
    "0.4 US qt",
    "0.1 US qt",
    "1 US pt",
    "8 US fl oz",
    "0.3 imp qt",
    "10 imp fl oz",
    "1 L",
    "0 mL",
    "20 mL",
    "50 mL",
    "1.25 US qt",
    "30 mL",
    "0.333 L",
    "0.123456789 L",
    "0.333333333 US qt",
    "71.0328125 mL",
];
pub const MASSES: &[&str] = &["420 g", "0.2 kg", "0.9 lb", "3 g", "838 g"];
/// Negative, too much for any unit, and either side of one and a half times the generated capacities.
pub const IMPOSSIBLE: &[&str] = &[
    "-0.2 L",
    "5000 L",
    "-30 mL",
    "7000 US qt",
    "11.1 L",
    "11.101 L",
    "12 US qt",
    "12.1 US qt",
    "9.9 imp qt",
    "9.91 imp qt",
    "5.25 L",
    "5251 mL",
    "-0.000001 mL",
];
pub const MEANS: &[&str] = &["sealed", "meter", "jug", "scale", "eye"];

pub struct Bench<'a> {
    pub dice: &'a mut Dice,
    pub sheet: &'a Value,
    pub entries: Vec<Value>,
    /// Seconds since 1970.
    pub clock: i64,
    /// Minutes east of Greenwich in which times are written.
    pub east: i64,
}

impl Bench<'_> {
    pub fn enter(&mut self, wait: i64, mut entry: Value) {
        self.clock += wait;
        entry["at"] = json!(time_text(self.clock, self.east));
        self.entries.push(entry);
    }

    fn asks(&self, condition: &str) -> bool {
        !self.sheet["conditions"][condition].is_null()
    }

    /// The window of the sheet, or any where it has none.
    pub fn window(&self) -> &'static Window {
        let limits = &self.sheet["conditions"]["temperature"];
        let is = |window: &&Window| {
            window.min == limits["min"].as_str() && window.max == limits["max"].as_str()
        };
        WINDOWS.iter().find(is).unwrap_or(&WINDOWS[0])
    }

    /// Everything the sheet asks, but for the one defect wanted.
    pub fn prepare(&mut self, spoilt: Option<&str>) {
        let conditions = self.sheet["conditions"].clone();
        let asked_engine = conditions["engine"].as_str().unwrap_or("idling");
        let level = match spoilt {
            Some("tilt_toward") => Some(("2 deg", "plug")),
            Some("tilt_away") => Some(("1.5 deg", "away")),
            Some("tilt_unknown") if self.dice.chance(50) => None,
            Some("tilt_unknown") => Some(("3 deg", "unknown")),
            _ => Some((self.dice.pick(&["0 deg", "0.5 deg", "0.2 deg"]), "plug")),
        };
        if let Some((tilt, toward)) = level.filter(|_| self.asks("tilt") || self.dice.chance(20)) {
            self.enter(60, json!({"kind": "level", "tilt": tilt, "toward": toward}));
        }
        self.sometimes_say("closing_kit_ready");
        if self.asks("engine") || self.asks("ranges") {
            let wrong = matches!(spoilt, Some("engine_off" | "engine_running"));
            let state = match (wrong, asked_engine) {
                (true, "off") => self.dice.pick(&["idling", "ready"]),
                (true, _) => "off",
                (_, "off") => "off",
                _ => self.dice.pick(&["idling", "ready"]),
            };
            if !wrong || self.dice.chance(60) {
                let wait = if state == "off" { 200 } else { 30 };
                self.enter(wait, json!({"kind": "engine", "state": state}));
            }
        }
        if self.asks("cooler") && (spoilt == Some("cooler") || self.dice.chance(30)) {
            self.enter(30, json!({"kind": "confirmed", "what": "cooler_opened"}));
            if spoilt != Some("cooler") {
                let filled = json!({"kind": "confirmed", "what": "cooler_filled"});
                let driven = json!({"kind": "driven", "distance": "12 km", "peak": "78 °C"});
                let entry = if self.dice.chance(50) { filled } else { driven };
                self.enter(300, entry);
            }
        }
        if self.asks("ranges") && (spoilt != Some("ranges") || self.dice.chance(50)) {
            let dwell = if spoilt == Some("ranges") {
                "1 s"
            } else {
                "5 s"
            };
            self.enter(20, json!({"kind": "ranges", "dwell": dwell}));
        }
        if self.asks("selector") {
            let asked = conditions["selector"].as_str().unwrap_or("park");
            let position = if spoilt == Some("selector") {
                "drive"
            } else {
                asked
            };
            if spoilt != Some("selector") || self.dice.chance(60) {
                self.enter(10, json!({"kind": "selector", "position": position}));
            }
        }
        if spoilt == Some("stop_settle") {
            self.enter(5, json!({"kind": "engine", "state": "off"}));
        }
    }

    fn sometimes_say(&mut self, what: &str) {
        if self.dice.chance(25) {
            self.enter(15, json!({"kind": "confirmed", "what": what}));
        }
    }

    /// A sample that proves the window, or errs below or above it if that is the defect wanted.
    pub fn sample(&mut self, spoilt: Option<&str>) {
        let window = self.window();
        let readings = match spoilt {
            Some("below_window") if !window.below.is_empty() => window.below,
            Some("above_window") if !window.above.is_empty() => window.above,
            _ => window.inside,
        };
        let reading = self.dice.pick(readings);
        let source = self.dice.pick(&["scan", "network"]);
        self.enter(
            5,
            json!({"kind": "temperature", "reading": reading, "source": source}),
        );
    }

    pub fn plug(&mut self, state: &str) {
        self.enter(8, json!({"kind": "plug", "state": state}));
    }

    /// A sample, then a look at the opening for longer than any watch, both in time for each other.
    pub fn look(&mut self, grade: &str, spoilt: Option<&str>) {
        self.sample(spoilt);
        self.flow(10, grade, "30 s", None);
    }

    pub fn flow(
        &mut self,
        wait: i64,
        grade: &str,
        length: &str,
        captured: Option<(&str, Option<&str>)>,
    ) {
        let mut flow = json!({"kind": "flow", "grade": grade, "for": length});
        if let Some((captured, by)) = captured {
            flow["captured"] = json!(captured);
            if let Some(by) = by {
                flow["captured_by"] = json!(by);
            }
        }
        self.enter(wait, flow);
    }

    pub fn pour(&mut self, volume: &str, by: Option<&str>) {
        self.enter(20, amount("added", volume, by));
    }

    /// Long enough for any settle and any look after it.
    pub fn wait(&mut self) {
        self.clock += 150;
    }

    pub fn drained(&mut self, volume: &str, by: Option<&str>, why: &str) {
        let mut entry = amount("drained", volume, by);
        entry["why"] = json!(why);
        self.enter(30, entry);
    }

    pub fn means(&mut self) -> Option<&'static str> {
        self.dice.chance(85).then(|| self.dice.pick(MEANS))
    }

    /// Any volume, seldom a mass or one that cannot be.
    pub fn any_amount(&mut self) -> &'static str {
        let among = self
            .dice
            .weighted(&[(88, VOLUMES), (7, MASSES), (5, IMPOSSIBLE)]);
        self.dice.pick(among)
    }

    /// Anything at all.
    pub fn anything(&mut self) -> Value {
        let kind = self.dice.weighted(&[
            (14, "flow"),
            (12, "added"),
            (12, "temperature"),
            (8, "plug"),
            (6, "engine"),
            (5, "drained"),
            (4, "level"),
            (4, "ranges"),
            (3, "selector"),
            (3, "confirmed"),
            (2, "driven"),
            (2, "fluid"),
            (2, "reading"),
            (1, "hold"),
            (2, "release"),
            (1, "seepage"),
            (1, "tightened"),
            (1, "approved"),
            (1, "note"),
        ]);
        let amount_text = self.any_amount();
        let means = self.means();
        let dice = &mut *self.dice;
        match kind {
            "flow" => {
                let length = dice.pick(&["30 s", "40 s", "15 s", "5 s", "2 s", "0 s", "0.5 min"]);
                let mut flow = json!({"kind": kind, "grade": dice.pick(GRADES), "for": length});
                if dice.chance(40) {
                    flow["captured"] = json!(amount_text);
                    flow["captured_by"] = json!(means.unwrap_or("jug"));
                }
                if dice.chance(10) {
                    flow["trend"] = json!("thinning");
                }
                flow
            }
            "added" => {
                let mut added = amount(kind, amount_text, means);
                let fluids = [
                    "fern-light",
                    "fern-heavy",
                    "fern-axle",
                    "fern-plain",
                    "fern-unheard",
                ];
                if dice.chance(30) {
                    added["fluid"] = json!(fluids[dice.below(fluids.len())]);
                }
                added
            }
            "drained" => {
                let mut drained = amount(kind, amount_text, means);
                drained["why"] = json!(dice.pick(&[
                    "excess",
                    "captured",
                    "captured",
                    "closing_loss",
                    "service"
                ]));
                drained
            }
            "temperature" => {
                let sources = [
                    "scan", "scan", "scan", "network", "infrared", "pan", "coolant", "ambient",
                ];
                let source = sources[dice.below(sources.len())];
                let readings = [
                    "45 °C", "40 °C", "113 °F", "35 °C", "20 °C", "82 °C", "100 °F",
                ];
                json!({"kind": kind, "reading": dice.pick(&readings), "source": source})
            }
            "plug" => {
                json!({"kind": kind, "state": dice.pick(&["open", "open", "closed", "loosened"])})
            }
            "engine" => {
                json!({"kind": kind, "state": dice.pick(&["idling", "off", "off", "ready"])})
            }
            "level" => json!({"kind": kind, "tilt": dice.pick(&["0 deg", "0.5 deg", "1.2 deg"]),
                "toward": dice.pick(&["plug", "away", "unknown"])}),
            "ranges" => json!({"kind": kind, "dwell": dice.pick(&["5 s", "3 s", "1 s"])}),
            "selector" => {
                json!({"kind": kind, "position": dice.pick(&["park", "neutral", "drive"])})
            }
            "confirmed" => json!({"kind": kind,
                "what": dice.pick(&["cooler_opened", "cooler_filled", "pan_empty", "plug_identified"])}),
            "driven" => {
                let mut driven = json!({"kind": kind, "distance": "9 km"});
                if dice.chance(70) {
                    driven["peak"] = json!(dice.pick(&["78 °C", "170 °F", "60 °C"]));
                }
                driven
            }
            "fluid" => match dice.below(4) {
                0 => json!({"kind": kind, "coolant_strip": dice.pick(&["positive", "negative"])}),
                1 => {
                    json!({"kind": kind, "appearance": dice.pick(&["milky", "pink_foam", "foreign"])})
                }
                _ => json!({"kind": kind, "appearance": "clear", "smell": "normal"}),
            },
            "reading" => json!({"kind": kind, "value": "12 mm"}),
            "hold" | "release" => {
                json!({"kind": kind, "reason": "asked the foreman", "by": "Ines"})
            }
            "seepage" => json!({"kind": kind, "place": "pan", "class": "II"}),
            "tightened" => json!({"kind": kind, "torque": "14 N·m"}),
            "approved" => json!({"kind": kind, "ceiling": "180.00", "by": "Ines"}),
            _ => json!({"kind": "note", "text": "the lamp went out"}),
        }
    }
}

/// An entry with a volume or, if its unit says so, a mass.
pub fn amount(kind: &str, text: &str, by: Option<&str>) -> Value {
    let field = if MASSES.contains(&text) {
        "mass"
    } else {
        "volume"
    };
    let mut entry = json!({"kind": kind, field: text});
    if let Some(by) = by {
        entry["measured_by"] = json!(by);
    }
    entry
}
