//! Every vector, every pair of units and the versions.

use super::program::{answers, answers_of, parsed, programs, request, told};
use crate::vector_cases::{Request, answer, cases};
use brimline::{Unit, convert, versions};
use serde_json::json;

#[test]
fn every_vector_gives_the_bytes_of_rust() {
    let requests: Vec<Request> = cases().into_iter().map(|case| case.request).collect();
    let expected: Vec<String> = requests.iter().map(answer).collect();
    for program in programs() {
        let told = answers_of("vectors", &requests, program);
        for ((request, told), expected) in requests.iter().zip(&told).zip(&expected) {
            assert_eq!(told, expected, "{}: {request:?}", program.0);
        }
    }
}

#[test]
fn every_pair_of_units_converts_by_number_as_in_rust() {
    let mut requests = Vec::new();
    let mut expected = Vec::new();
    for from in Unit::ALL {
        for to in Unit::ALL {
            let (one, other) = (from.code().to_string(), to.code().to_string());
            requests.push(request("convert_units", &["12.5", &one, &other]));
            expected.push(told(convert(12.5, *from, *to), |number| {
                format!("{{\"bits\":\"{:016x}\"}}", number.to_bits())
            }));
        }
    }
    assert_eq!(answers("pairs", &requests), expected);
}

#[test]
fn versions_are_those_of_rust_and_the_interface() {
    let told = answers("versions", &[request("versions", &[])]);
    let mut expected = serde_json::to_value(versions()).expect("JSON");
    expected["abi"] = json!(1);
    assert_eq!(parsed(&told[0]), expected);
}
