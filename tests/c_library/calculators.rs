//! Calculators by their typed functions, against the same asked by name.

use super::program::{answers_of, parsed, programs, request};
use crate::vector_cases::{Request, answer, cases};
use brimline::calculate::functions;
use serde_json::{Value, json};

/// What has a typed function beside its name, one request or two each; expected is what Rust answers.
const TYPED: &str = r#"
torque.wrench_setting {"target":"14 N·m","lever":"230 mm","adapter":"40 mm","graduation":"0.5 N·m"}
torque.wrench_setting {"target":"14 N·m","lever":"0 mm"}
torque.applied_torque {"setting":"60 lbf·in","lever":"12 in","adapter":"2 in","angle":"45 deg"}
torque.preload {"torque":"14 N·m","diameter":"10 mm","condition":"dry_steel"}
torque.preload {"torque":"14 N·m","diameter":"10 mm","k":"1.5"}
torque.torque_for_preload {"preload":"1275 lbf","diameter":"0.19 in","k":"0.2"}
torque.torque_for_preload {"preload":"1275 lbf","diameter":"0.19 in","condition":"threadlocker"}
torque.proof_load {"thread":"M10","class":"8.8"}
torque.proof_load {"thread":"1/4-20","class":"10.9"}
torque.plausible {"torque":"124 lbf·ft","thread":"M10x1","plug":"steel"}
torque.plausible {"torque":"14 N·m","thread":"M10x1","plug":"hollow"}
volume.correction_factor {"density":"850 kg/m³","temperature":"40 °C"}
volume.at_temperature {"volume":"100 L","from":"20 °C","to":"40 °C","coefficient":"0.0007 per K"}
volume.temperature_error {"volume":"7 L","read_at":"40 °C","reference":"20 °C","density":"850 kg/m³","base":"base_60f_2004"}
volume.base_density {"density":"834.2214 kg/m³","temperature":"40 °C","base":"base_60f"}
volume.density_at {"density":"0.85 g/mL","temperature":"140 °F","base":"base_15c_2004"}
volume.mass {"volume":"7 L","temperature":"40 °C","density":"850 kg/m³"}
volume.volume_of_mass {"mass":"5 lb","temperature":"40 °C","density":"850 kg/m³"}
volume.tilt_error {"surface":"0.06 m²","offset":"200 mm","tilt":"1 deg"}
volume.segment_share {"level":"100 mm","diameter":"1 m"}
volume.exchange {"capacity":"10 L","drained":"4 L","cycles":2}
volume.cycles_needed {"capacity":"7.4 L","drained":"3.5 L","fresh":"85 %"}
volume.flush {"capacity":"7.4 L","flowed":"7.4 L"}
volume.flush_needed {"capacity":"60 L","fresh":"0.99"}
volume.wrong_left {"capacity":"10 L","wrong":"1 L","drained":"4 L","cycles":2}
warm_up.mixed_temperature {"volume":"6 L","temperature":"45 °C","added":"0.5 L","added_temperature":"20 °C"}
warm_up.cool_down {"first":"70 °C","second":"60 °C","elapsed":"10 min","ambient":"20 °C","max":"45 °C","reheat_per_minute":"1.5 °C","reheat_time":"4 min"}
warm_up.response_time {"time_constant":"2 min","share":"0.95"}
fluid.viscosity_at {"viscosity_1":"34 mm²/s","temperature_1":"40 °C","viscosity_2":"7.4 mm²/s","temperature_2":"100 °C","temperature":"20 °C"}
fluid.temperature_for {"viscosity_1":"34 mm²/s","temperature_1":"40 °C","viscosity_2":"7.4 mm²/s","temperature_2":"100 °C","viscosity":"11 mm²/s"}
fluid.viscosity_index {"viscosity_40":"73.30 mm²/s","viscosity_100":"8.86 mm²/s"}
fluid.grade {"viscosity_40":"28.8 mm²/s"}
fluid.grade {"viscosity_40":"1 mm²/s"}
fluid.grade_limits {"grade":46}
fluid.grade_limits {"grade":47}
signal.transmission_frame {"id":"18FEF8FE","data":"FF 5A FF FF 20 28 7A 13"}
signal.transmission_frame {"id":419362046,"data":"FFFFFFFF20287A"}
signal.linear {"data":"7B","layout":{"start":0,"length":8,"order":"little","unit":"°C","scale":"1 Δ°C","offset":"-40 °C","max":"80 °C"}}
signal.linear {"data":"FF80","layout":{"start":7,"length":16,"order":"big","signed":true,"unit":"mL","scale":"0.5 mL"}}
signal.diagnostic_reply {"request":"0105","reply":"41057B","layout":{"start":0,"length":8,"order":"little","unit":"°C","scale":"1 Δ°C","offset":"-40 °C"}}
signal.diagnostic_reply {"request":"22F190","reply":"7F2278"}
leak.against_limit {"estimate":"1.5 L","uncertainty":"0.1 L","limit":"1.4 L","rule":"simple_acceptance"}
leak.against_limit {"estimate":"50 °C","uncertainty":"1 Δ°C","limit":"48 °C","rule":"guarded_rejection","probability":"95 %"}
leak.conformance {"value":"507 mL","uncertainty":"10 mL","lower":"490 mL"}
leak.guard_band {"uncertainty":"0.1 L","probability":"0.95"}
leak.quantile {"probability":"0.3"}
leak.expanded_uncertainty {"uncertainty":"50 mL"}
leak.drip_rate {"drops":60,"in_time":"1 min","drop":"0.05 mL"}
leak.drops_for {"volume":"0.5 L","over":"24 h","drop":"0.05 mL"}
"#;

/// The functions of the table and their arguments.
fn typed() -> impl Iterator<Item = (&'static str, &'static str)> {
    let rows = TYPED.trim().lines();
    rows.map(|row| row.split_once(' ').expect("a name and arguments"))
}

/// A calculator's arguments one after another in the order it takes them, a layout as its members; none where they are
/// no object of single values.
fn one_after_another(function: &str, arguments: &str) -> Option<Vec<String>> {
    const LAYOUT: &[&str] = &[
        "start", "length", "order", "signed", "unit", "scale", "offset", "min", "max",
    ];
    let (_, takes) = functions().find(|(name, _)| *name == function)?;
    let object: serde_json::Map<String, Value> = serde_json::from_str(arguments).ok()?;
    let mut flat = vec![function.to_string()];
    for name in takes {
        match object.get(*name) {
            Some(Value::Object(members)) => {
                flat.extend(LAYOUT.iter().enumerate().map(|(index, member)| {
                    // The first three, the unit and the scale must be there.
                    let needed = index < 3 || index == 4 || index == 5;
                    members
                        .get(*member)
                        .map_or(if needed { "?" } else { "" }.into(), single)
                }));
            }
            None | Some(Value::Null) if *name == "layout" => {
                flat.extend(LAYOUT.iter().map(|_| String::new()));
            }
            Some(Value::String(hexadecimal)) if *name == "id" => {
                let read = u32::from_str_radix(hexadecimal.trim_start_matches("0x"), 16);
                flat.push(read.map_or("?".into(), |id| id.to_string()));
            }
            Some(Value::Array(_)) => return None,
            other => flat.push(other.map_or_else(String::new, single)),
        }
    }
    Some(flat)
}

fn single(value: &Value) -> String {
    value
        .as_str()
        .map_or_else(|| value.to_string(), str::to_string)
}

/// Whether a fault stands at a place in the text of the arguments: what is refused there never reaches the calculator.
fn is_of_the_text(answer: &Value) -> bool {
    let faults = answer["error"]["faults"].as_array();
    faults.is_some_and(|faults| faults.iter().any(|fault| fault.get("line").is_some()))
}

#[test]
fn typed_calculators_answer_as_by_name() {
    let own = typed().map(|(function, arguments)| request("calculate", &[function, arguments]));
    let of_vectors = cases().into_iter().map(|case| case.request);
    let asked = own.chain(of_vectors.filter(|request| request.op == "calculate"));
    let (expected, requests): (Vec<Value>, Vec<Request>) = asked
        .filter_map(|request| {
            let args = one_after_another(&request.args[0], &request.args[1])?;
            let expected = parsed(&answer(&request));
            // Only JSON has types and members.
            let kind = &expected["error"]["kind"];
            let of_json = kind == "wrong_type" || kind == "unknown_field";
            let op = "typed".into();
            (!of_json).then_some((expected, Request { op, args }))
        })
        .unzip();
    for program in programs() {
        let told = answers_of("typed", &requests, program);
        for ((request, expected), told) in requests.iter().zip(&expected).zip(&told) {
            let told = parsed(told);
            if told == json!("by_name") {
                let function = request.args[0].as_str();
                assert!(!typed().any(|(typed, _)| typed == function));
            } else if is_of_the_text(expected) {
                assert!(
                    told == json!("unread") || told.get("error").is_some(),
                    "{request:?}: {told}, {expected}"
                );
            } else {
                assert_eq!(told, *expected, "{}: {request:?}", program.0);
            }
        }
    }
}
