//! Facts of the trade as checks. Where no published source carries one, it says so: common practice, no source.

use brimline::procedure::Defect;
use brimline::{Act, Amount, Evaluation, Pack, Rounding, Unit, Verdict, evaluate};
use serde_json::{Value, json};
use std::collections::BTreeSet;

/// A sheet for a plug low on the case, checked running and warm; `changed` replaces members by path.
fn sheet(changed: &[(&str, Value)]) -> Value {
    let mut sheet = json!({
        "id": "brook-level", "edition": 1, "unit": "Brook transaxle", "fluid": "sedge",
        "capacity": {"total": "7 L", "refill": "6 L"},
        "method": {"kind": "overflow_plug", "warming": "expands", "watch": "15 s", "settle": "60 s"},
        "conditions": {
            "engine": "idling", "selector": "park",
            "temperature": {"min": "45 °C", "max": "55 °C"},
            "tilt": {"max": "0.5 deg"}, "ranges": {"dwell": "3 s"},
        },
        "refill": {"step": "0.5 L"},
        "closing": {"torque": "12 N·m", "close_before_stop": true},
    });
    for (path, value) in changed {
        let (parent, last) = path.rsplit_once('/').expect("a path begins with a slash");
        let parent = sheet.pointer_mut(parent).expect("the block is there");
        let members = parent.as_object_mut().expect("a block");
        if value.is_null() {
            members.remove(last);
        } else {
            members.insert(last.into(), value.clone());
        }
    }
    sheet
}

fn pack(sheet: Value) -> Pack {
    let document = json!({
        "format": "brimline-pack/1", "id": "brook", "version": "1", "title": "Brook sheets (invented)",
        "fluids": [{"id": "sedge", "density_15": "838 kg/m³"}], "procedures": [sheet],
    });
    Pack::from_json(&document.to_string()).expect("the sheet reads")
}

/// A journal as it is written down in the bay, ten seconds an entry unless time is let pass.
struct Bay {
    job: &'static str,
    entries: Vec<Value>,
    seconds: usize,
}

impl Bay {
    /// A job with nothing said yet.
    fn quiet(job: &'static str) -> Self {
        Bay {
            job,
            entries: Vec::new(),
            seconds: 0,
        }
    }

    /// A job with all the conditions stated, warm, and the plug open.
    fn ready() -> Self {
        Bay::quiet("check")
            .says("level", json!({"tilt": "0.1 deg", "toward": "away"}))
            .says("engine", json!({"state": "idling"}))
            .says("selector", json!({"position": "park"}))
            .says("ranges", json!({"dwell": "3 s"}))
            .says("plug", json!({"state": "open"}))
            .warm("50 °C")
    }

    fn says(mut self, kind: &str, fields: Value) -> Self {
        self.seconds += 10;
        let seq = self.entries.len() + 1;
        let (minutes, seconds) = (self.seconds / 60, self.seconds % 60);
        let at = format!("2026-03-02T09:{minutes:02}:{seconds:02}Z");
        let mut entry = json!({"seq": seq, "at": at, "kind": kind});
        for (name, value) in fields.as_object().expect("fields") {
            entry[name] = value.clone();
        }
        self.entries.push(entry);
        self
    }

    fn waits(mut self, seconds: usize) -> Self {
        self.seconds += seconds;
        self
    }

    fn warm(self, reading: &str) -> Self {
        self.says("temperature", json!({"reading": reading, "source": "scan"}))
    }

    fn flow(self, grade: &str) -> Self {
        self.waits(10)
            .says("flow", json!({"grade": grade, "for": "15 s"}))
    }

    /// A pour, settled, and the temperature read again.
    fn pours(self, volume: &str) -> Self {
        self.says("added", json!({"volume": volume}))
            .waits(70)
            .warm("50 °C")
    }

    fn evaluated(&self, pack: &Pack) -> Evaluation {
        let journal = json!({
            "format": "brimline-journal/1", "procedure": "brook-level", "job": self.job, "entries": self.entries,
        });
        evaluate(pack, journal.to_string().as_str()).expect("the journal reads")
    }
}

/// The defects that the reasons of a result name.
fn defects(evaluation: &Evaluation) -> Vec<&'static str> {
    let reasons = evaluation.because().iter().map(|reason| reason.id);
    reasons.filter(|id| Defect::SLUGS.contains(id)).collect()
}

fn amount(text: &str) -> Amount {
    text.parse().expect("an amount")
}

/// In a unit, to so many places.
fn told(text: &str, unit: &str, places: u8) -> String {
    let unit = Unit::parse(unit).expect("a unit");
    let told = amount(text).to(unit, places, Rounding::HalfEven);
    told.expect("of that kind").to_string()
}

// The list of conditions.

/// What the heavy-vehicle frame says of a level reading: SAE J1939-71, PGN 65272, SPN 3026, a nibble. Codes 0 to 6
/// as published, the word of 7 and the codes 14 and 15 from memory; 8 to 13 were not seen.
const STATUSES: &[(u8, &str)] = &[
    (0, "conditions met"),
    (1, "settling timer still running"),
    (2, "transmission in gear"),
    (3, "fluid too cold"),
    (4, "fluid too hot"),
    (5, "vehicle moving"),
    (6, "vehicle not level"),
    (7, "engine speed too low"),
    (14, "error"),
    (15, "not available"),
];

/// A look at the opening under each status, and the defects it is told with.
fn under(status: u8) -> Vec<(Value, Bay, &'static [&'static str])> {
    let look = |bay: Bay| bay.flow("trickle");
    let running = |bay: Bay, defects: &'static [&'static str]| (sheet(&[]), look(bay), defects);
    let tilted =
        |toward: &str| Bay::ready().says("level", json!({"tilt": "2 deg", "toward": toward}));
    let in_gear = || Bay::ready().says("selector", json!({"position": "drive"}));
    match status {
        0 => vec![running(Bay::ready(), &[])],
        1 => {
            let off = [
                ("/method/kind", json!("side_plug")),
                ("/conditions/engine", json!("off")),
                ("/conditions/ranges", Value::Null),
            ];
            let stopped = Bay::ready().says("engine", json!({"state": "off"}));
            vec![
                running(
                    Bay::ready().says("added", json!({"volume": "0.2 L"})),
                    &["pour_settle"],
                ),
                (sheet(&off), look(stopped), &["stop_settle"]),
            ]
        }
        // What moves is not in park.
        2 | 5 => vec![running(in_gear(), &["selector"])],
        3 => vec![running(Bay::ready().warm("44.9 °C"), &["below_window"])],
        4 => vec![running(Bay::ready().warm("55.1 °C"), &["above_window"])],
        6 => vec![
            running(tilted("plug"), &["tilt_toward"]),
            running(tilted("away"), &["tilt_away"]),
            running(tilted("unknown"), &["tilt_unknown"]),
        ],
        7 => {
            let off = [("/conditions/ranges", Value::Null)];
            let stopped = Bay::quiet("check")
                .says("level", json!({"tilt": "0.1 deg", "toward": "away"}))
                .says("selector", json!({"position": "park"}))
                .says("engine", json!({"state": "off"}))
                .says("plug", json!({"state": "open"}))
                .warm("50 °C");
            vec![(sheet(&off), look(stopped), &["engine_off"])]
        }
        _ => Vec::new(),
    }
}

/// Every status of the published list has a defect of ours, and no more; what a bay can do wrong and a vehicle
/// cannot say of itself is listed.
#[test]
fn the_conditions_cover_the_published_list() {
    let mut covered = BTreeSet::new();
    for (status, words) in STATUSES {
        for (sheet, bay, wanted) in under(*status) {
            let evaluation = bay.evaluated(&pack(sheet));
            assert_eq!(defects(&evaluation), wanted, "{words}");
            let clean = evaluation.verdict() == Verdict::AtLevel;
            assert_eq!(clean, *status == 0, "{words}: {:?}", evaluation.verdict());
            covered.extend(wanted.iter().copied());
        }
        // A reading that is in error, or not there, is no reading.
        if *status > 7 {
            let mut bay = Bay::ready();
            bay.entries.retain(|entry| entry["kind"] != "temperature");
            let evaluation = bay.flow("trickle").evaluated(&pack(sheet(&[])));
            assert_eq!(evaluation.verdict(), Verdict::Incomplete, "{words}");
        }
    }
    let beyond_the_list = ["engine_running", "ranges", "cooler", "foam"];
    covered.extend(beyond_the_list);
    assert_eq!(covered, Defect::SLUGS.iter().copied().collect());
}

/// The four beyond the published list; common practice, no source.
#[test]
fn the_conditions_a_vehicle_does_not_tell() {
    let restarted = Bay::ready()
        .says("plug", json!({"state": "closed"}))
        .says("engine", json!({"state": "off"}))
        .says("engine", json!({"state": "idling"}))
        .says("plug", json!({"state": "open"}))
        .warm("50 °C");
    let cooler = [("/conditions/cooler", json!({"thermostat": "78 °C"}))];
    let opened = Bay::ready().says("confirmed", json!({"what": "cooler_opened"}));
    let off = [
        ("/method/kind", json!("side_plug")),
        ("/conditions/engine", json!("off")),
        ("/conditions/ranges", Value::Null),
    ];
    let cases = [
        (sheet(&[]), restarted.flow("trickle"), "ranges"),
        (sheet(&cooler), opened.flow("trickle"), "cooler"),
        (sheet(&[]), Bay::ready().flow("spitting"), "foam"),
        (sheet(&off), Bay::ready().flow("trickle"), "engine_running"),
    ];
    for (sheet, bay, wanted) in cases {
        assert_eq!(defects(&bay.evaluated(&pack(sheet))), [wanted]);
    }
}

// What a look proves. Common practice, no source, throughout.

#[test]
fn a_look_outside_the_window_is_one_sided() {
    let pack = pack(sheet(&[]));
    let verdict = |reading: &str, grade: &str| {
        let bay = Bay::ready().warm(reading).flow(grade);
        bay.evaluated(&pack).verdict().slug()
    };
    // Fluid that runs out cold would stand higher still when warm; cold and dry says nothing.
    assert_eq!(verdict("20 °C", "trickle"), "not_low");
    assert_eq!(verdict("20 °C", "stream"), "not_low");
    assert_eq!(verdict("20 °C", "none"), "not_proven");
    // Dry when too hot is short when right; flow when too hot may be the heat.
    assert_eq!(verdict("80 °C", "none"), "not_full");
    assert_eq!(verdict("80 °C", "stream"), "not_proven");
    // Exactly at either limit is in the window.
    assert_eq!(verdict("45 °C", "trickle"), "at_level");
    assert_eq!(verdict("131 °F", "trickle"), "at_level");
    // 113 °F is 45 °C; the reading is not rounded before it is compared.
    assert_eq!(verdict("112.6 °F", "trickle"), "not_low");
}

#[test]
fn an_engine_that_stands_lets_the_level_rise() {
    let stopped = |grade: &str| {
        let bay = Bay::quiet("check")
            .says("level", json!({"tilt": "0 deg", "toward": "away"}))
            .says("selector", json!({"position": "park"}))
            .says("engine", json!({"state": "off"}))
            .says("plug", json!({"state": "open"}))
            .warm("50 °C")
            .flow(grade);
        bay.evaluated(&pack(sheet(&[]))).verdict().slug()
    };
    assert_eq!(stopped("none"), "not_full");
    assert_eq!(stopped("stream"), "not_proven");
}

#[test]
fn a_temperature_is_good_for_thirty_seconds() {
    let pack = pack(sheet(&[]));
    let aged = |seconds: usize| {
        let bay = Bay::ready().waits(seconds - 20).flow("trickle");
        bay.evaluated(&pack).verdict()
    };
    assert_eq!(aged(30), Verdict::AtLevel);
    assert_eq!(aged(31), Verdict::Incomplete);
}

/// The pan is cooler than the fluid in it: warm enough there is warm enough, and too warm cannot be told.
#[test]
fn a_pan_read_from_outside_proves_the_lower_limit_alone() {
    let read = |changed: &[(&str, Value)], reading: &str, source: &str| {
        let mut bay = Bay::ready();
        bay.entries.pop();
        let reading = json!({"reading": reading, "source": source});
        let bay = bay.says("temperature", reading).flow("trickle");
        bay.evaluated(&pack(sheet(changed))).verdict().slug()
    };
    let no_upper = [("/conditions/temperature/max", Value::Null)];
    for source in ["infrared", "pan"] {
        assert_eq!(read(&no_upper, "45 °C", source), "at_level");
        assert_eq!(read(&no_upper, "44 °C", source), "incomplete");
        assert_eq!(read(&[], "50 °C", source), "incomplete");
    }
    for source in ["coolant", "ambient"] {
        assert_eq!(read(&no_upper, "50 °C", source), "incomplete");
    }
}

/// What stands in the tube of a drain plug runs out first and says nothing.
#[test]
fn the_first_spurt_is_no_flow() {
    let tube = [
        ("/method/kind", json!("standpipe")),
        ("/method/hold_up", json!("40 mL")),
    ];
    let pack = pack(sheet(&tube));
    let spurt = |captured: &str| {
        let flow = json!({"grade": "stream", "for": "15 s", "captured": captured});
        let bay = Bay::ready().waits(10).says("flow", flow);
        bay.evaluated(&pack).verdict()
    };
    assert_eq!(spurt("40 mL"), Verdict::Incomplete);
    assert_eq!(spurt("41 mL"), Verdict::Over);
    // A short look at a flow is no more than that.
    let short = Bay::ready().says("flow", json!({"grade": "stream", "for": "5 s"}));
    assert_eq!(short.evaluated(&pack).verdict(), Verdict::Incomplete);
}

#[test]
fn an_engine_stopped_with_the_plug_open_begins_the_check_again() {
    let bay = Bay::ready()
        .flow("none")
        .says("engine", json!({"state": "off"}));
    let evaluation = bay.evaluated(&pack(sheet(&[])));
    assert_eq!(evaluation.verdict(), Verdict::Repeat);
    // What was seen before still stands: it was short. What is in it now, nobody knows.
    assert_eq!(evaluation.as_found().to_string(), "(-inf, 0 L]");
    assert_eq!(evaluation.now().to_string(), "(-inf, 0 L]");
    assert_eq!(evaluation.next()[0].id, "begin_again");
}

// What a volume is worth, and when a shortage is a leak.

/// Half-widths of the ways of measuring: trade values, no source.
#[test]
fn measuring_has_its_half_widths() {
    let pack = pack(sheet(&[]));
    let net = |kind: &str, fields: Value| {
        let bay = Bay::quiet("check").says(kind, fields);
        bay.evaluated(&pack).net_added().to_string()
    };
    let added = |by: &str| net("added", json!({"volume": "1 L", "measured_by": by}));
    assert_eq!(added("sealed"), "[0.99 L, 1.01 L]");
    assert_eq!(added("meter"), "[0.98 L, 1.02 L]");
    assert_eq!(added("jug"), "[0.98 L, 1.02 L]");
    assert_eq!(added("eye"), "[0.94 L, 1.06 L]");
    let drained = json!({"volume": "1 L", "measured_by": "eye", "why": "service"});
    assert_eq!(net("drained", drained), "[-1.1 L, -0.9 L]");
    // 838 g of 838 kg/m³: 833 g over 858.95 kg/m³ is 0.9697887 L, 843 g over 817.05 kg/m³ is 1.0317606 L.
    let weighed = json!({"mass": "838 g", "measured_by": "scale"});
    assert_eq!(net("added", weighed), "[0.969788 L, 1.031761 L]");
}

/// A shop that pours half a litre or half a quart at a time does not reach the same limit: common practice, no
/// source.
#[test]
fn a_limit_in_litres_is_not_one_in_quarts() {
    let three = |limit: (&str, &str), volume: &str| {
        let (word, limit) = limit;
        let changed = [("/leak_limit", json!({word: limit}))];
        let poured = (0..3).fold(Bay::ready().flow("none"), |bay, _| bay.pours(volume));
        let evaluation = poured.flow("trickle").evaluated(&pack(sheet(&changed)));
        assert_eq!(evaluation.verdict(), Verdict::AtLevel);
        evaluation.leak().by_sheet.slug()
    };
    // Three half-quarts are 1.42 L; three half-litres are 1.5 L exactly, which is "1.5 L or more" and not "more".
    assert_eq!(three(("at_least", "1.5 L"), "0.5 US qt"), "below");
    assert_eq!(three(("at_least", "1.5 L"), "0.5 L"), "above");
    assert_eq!(three(("more_than", "1.5 L"), "0.5 L"), "below");
    // 1.5 L is printed 1.6 qt and 1.6 qt is printed 1.5 L, and 14 mL lie between.
    assert_eq!(told("1.5 L", "US qt", 1), "1.6 US qt");
    assert_eq!(told("1.6 US qt", "L", 1), "1.5 L");
    assert_eq!(told("1.6 US qt", "mL", 0), "1514 mL");
    // Three pours of 0.4 imperial quarts are 1.44 US quarts.
    assert_eq!(three(("more_than", "1.4 US qt"), "0.4 imp qt"), "above");
    assert_eq!(three(("more_than", "1.4 US qt"), "0.4 US qt"), "below");
}

/// Fourteen tenths are 1.4 and no more; in binary doubles they are more.
#[test]
fn fourteen_small_pours_are_exactly_the_limit() {
    assert!((0..14).fold(0.0, |sum, _| sum + 0.1) > 1.4);
    let changed = [("/leak_limit", json!({"more_than": "1.4 US qt"}))];
    let poured = (0..14).fold(Bay::ready().flow("none"), |bay, _| bay.pours("0.1 US qt"));
    let evaluation = poured.flow("trickle").evaluated(&pack(sheet(&changed)));
    let leak = evaluation.leak();
    assert_eq!(leak.by_sheet.slug(), "below");
    assert_eq!(
        leak.counted.used.map(|used| used.to_string()),
        Some("1.4 US qt".into())
    );
    assert_eq!(
        leak.margin.map(|margin| margin.to_string()),
        Some("0 US qt".into())
    );
}

/// With 1.2 poured and a limit of 1.4 a whole step would hide on which side the shortage lies: common practice, no
/// source.
#[test]
fn the_step_before_the_limit_is_the_rest_to_it() {
    let changed = [
        ("/leak_limit", json!({"more_than": "1.4 US qt"})),
        ("/refill", json!({"step": "0.4 US qt", "stop": "3 US qt"})),
    ];
    let pack = pack(sheet(&changed));
    let next = |steps: usize| {
        let bay = (0..steps).fold(Bay::ready().flow("none"), |bay, _| {
            bay.pours("0.4 US qt").flow("none")
        });
        let evaluation = bay.evaluated(&pack);
        let pour = evaluation.next().iter().find(|act| act.id == "pour");
        let volume = pour.and_then(|act| act.args.get("volume").cloned());
        format!("{volume:?}")
    };
    assert!(next(2).contains("0.4 US qt"), "{}", next(2));
    assert!(next(3).contains("0.2 US qt"), "{}", next(3));
}

/// A leak limit speaks of what was found, so it does not apply to a fill after a drain; common practice, no source.
#[test]
fn a_fill_after_a_drain_has_no_leak_limit() {
    let changed = [("/leak_limit", json!({"more_than": "1 L"}))];
    for (job, applies) in [
        ("check", true),
        ("top_up", true),
        ("leak_follow_up", true),
        ("recheck", true),
        ("new_fill", false),
        ("exchange", false),
        ("condition_only", false),
    ] {
        let bay = Bay::quiet(job).says("added", json!({"volume": "5 L"}));
        let by_sheet = bay.evaluated(&pack(sheet(&changed))).leak().by_sheet.slug();
        assert_eq!(
            by_sheet,
            if applies { "above" } else { "not_applicable" },
            "{job}"
        );
    }
}

// What is not done. Common practice, no source.

/// What ran out above the level stays out: putting it back makes the overfill again.
#[test]
fn excess_is_not_put_back() {
    let bay = Bay::ready()
        .flow("stream")
        .says("drained", json!({"volume": "0.4 L", "why": "excess"}))
        .warm("50 °C")
        .flow("trickle");
    let evaluation = bay.evaluated(&pack(sheet(&[])));
    assert_eq!(evaluation.verdict(), Verdict::AtLevel);
    let gate = evaluation.gate(Act::Pour);
    assert!(!gate.allowed);
    assert!(
        gate.unmet
            .iter()
            .any(|unmet| unmet.id == "would_restore_excess")
    );
}

#[test]
fn the_plug_is_closed_before_the_engine_stops() {
    let open = Bay::ready().flow("trickle").evaluated(&pack(sheet(&[])));
    let gate = open.gate(Act::StopEngine);
    assert!(gate.unmet.iter().any(|unmet| unmet.id == "plug_not_closed"));
    let closed = Bay::ready()
        .flow("trickle")
        .says("plug", json!({"state": "closed"}))
        .evaluated(&pack(sheet(&[])));
    assert!(closed.gate(Act::StopEngine).allowed);
}

/// Coolant in the fluid, milky or pink foam: no level is told until somebody lifts the hold by name.
#[test]
fn contamination_holds_the_job() {
    let pack = pack(sheet(&[]));
    for fluid in [
        json!({"coolant_strip": "positive"}),
        json!({"appearance": "milky"}),
        json!({"appearance": "pink_foam"}),
    ] {
        let held = || {
            Bay::ready()
                .says("fluid", fluid.clone())
                .warm("50 °C")
                .flow("trickle")
        };
        let evaluation = held().evaluated(&pack);
        assert_eq!(evaluation.verdict(), Verdict::OnHold);
        assert!(!evaluation.gate(Act::Pour).allowed);
        let released = held().says("release", json!({"reason": "tested again", "by": "Tilda"}));
        assert_eq!(released.evaluated(&pack).verdict(), Verdict::AtLevel);
    }
}

/// A verdict is never a pass or a fail.
#[test]
fn no_verdict_says_ok() {
    for word in Verdict::SLUGS {
        for part in word.split('_') {
            assert!(
                !["ok", "pass", "fail", "good", "bad", "leak"].contains(&part),
                "{word}"
            );
        }
    }
}

// What is printed.

/// The classes of printed equivalents, by the linter; common practice, no source, the conversions by definition.
#[test]
fn printed_equivalents_are_told_apart() {
    let found = |changed: &[(&str, Value)]| -> Vec<&'static str> {
        let lint = pack(sheet(changed)).lint();
        let ids = lint.iter().map(|finding| finding.id);
        ids.filter(|id| id.starts_with("print_")).collect()
    };
    let torque = |governing: &str, printed: &[&str]| {
        found(&[("/closing", json!({"torque": governing, "printed": printed}))])
    };
    // 12 N·m is 8.85 lbf·ft and 106.2 lbf·in; 108 is twelve times the rounded 9.
    assert_eq!(torque("12 N·m", &["9 lbf·ft", "106 lbf·in"]), [""; 0]);
    assert_eq!(
        torque("12 N·m", &["9 lbf·ft", "108 lbf·in"]),
        ["print_chain_rounded"]
    );
    assert_eq!(torque("12 N·m", &["108 lbf·in"]), ["print_disagrees"]);
    // 14 N·m is 10.3 lbf·ft and 123.9 lbf·in; as pound-feet the latter is twelve times too much.
    assert_eq!(torque("14 N·m", &["10 lbf·ft", "124 lbf·in"]), [""; 0]);
    assert_eq!(
        torque("14 N·m", &["10 lbf·ft", "120 lbf·in"]),
        ["print_chain_rounded"]
    );
    assert_eq!(torque("14 N·m", &["124 lbf·ft"]), ["print_unit_slip"]);
    // 40 °C is 104 °F, 35 °C to 45 °C is 95 °F to 113 °F.
    let window = |limits: Value| found(&[("/conditions/temperature", limits)]);
    assert_eq!(
        window(json!({"min": "40 °C", "printed": ["104 °F"]})),
        [""; 0]
    );
    let both = json!({"min": "35 °C", "max": "45 °C", "printed": ["95 °F", "113 °F"]});
    assert_eq!(window(both), [""; 0]);
    assert_eq!(
        window(json!({"min": "40 °C", "printed": ["105 °F"]})),
        ["print_disagrees"]
    );
    // 1.5 L and 1.6 qt are printed for each other.
    let leak = |limit: &str, printed: &str| {
        found(&[(
            "/leak_limit",
            json!({"more_than": limit, "printed": [printed]}),
        )])
    };
    assert_eq!(leak("1.5 L", "1.6 US qt"), [""; 0]);
    assert_eq!(leak("1.6 US qt", "1.5 L"), [""; 0]);
    assert_eq!(leak("1.5 L", "1.5 US qt"), ["print_unit_slip"]);
}

/// The slips of the unit and what they come to; the conversions by definition.
#[test]
fn slips_of_the_unit_come_to_this() {
    // Torques: the wrong unit under the right number.
    assert_eq!(told("14 lbf·ft", "N·m", 2), "18.98 N·m");
    assert_eq!(told("124 lbf·ft", "N·m", 0), "168 N·m");
    assert_eq!(told("14 lbf·in", "N·m", 2), "1.58 N·m");
    assert_eq!(told("10 N·m", "lbf·ft", 1), "7.4 lbf·ft");
    assert_eq!(told("1.2 kgf·m", "N·m", 2), "11.77 N·m");
    // Temperatures.
    assert_eq!(told("113 °C", "°F", 0), "235 °F");
    assert_eq!(told("45 °F", "°C", 1), "7.2 °C");
    assert_eq!(amount("-40 °C"), amount("-40 °F"));
    // Half a quart and half a litre, and a quart that weighs about 28 ounces has 32 fluid ounces.
    assert_eq!(told("0.5 US qt", "L", 3), "0.473 L");
    assert_eq!(told("0.5 L", "US qt", 3), "0.528 US qt");
    assert_eq!(amount("1 US qt"), amount("32 US fl oz"));
    assert_eq!(told("1.2 imp qt", "US qt", 2), "1.44 US qt");
}
