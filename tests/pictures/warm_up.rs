//! The warm-up, read back.

use crate::drawn::{amount, cut, drawn, examples, members};
use crate::read_back::{Axis, all, attribute, number};
use brimline::report::Picture;
use brimline::{Amount, Pack, evaluate};
use roxmltree::Document;
use serde_json::Value;

/// A moment of a journal in seconds, all of one day and one offset here.
fn seconds(moment: &str) -> f64 {
    let part = |from: usize| moment[from..from + 2].parse::<f64>().expect("a clock");
    part(11) * 3600.0 + part(14) * 60.0 + part(17)
}

#[test]
fn the_warm_up_is_that_of_the_journal() {
    let pack = Pack::embedded().expect("the embedded pack reads");
    let (mut read, mut forecasts, mut pours, mut outs) = (0, 0, 0, 0);
    for example in examples() {
        let text = drawn(&example, Picture::WarmUp);
        let svg = Document::parse(&text).expect("well-formed");
        let (along, up) = (Axis::of(&svg, "x"), Axis::of(&svg, "y"));
        let axis = svg
            .descendants()
            .find(|node| node.attribute("data-axis") == Some("x"));
        let origin = seconds(attribute(axis.expect("an axis"), "data-origin"));
        let (_, entries) = members(&example.text);
        let of = |seq: &str| {
            let place: u64 = seq.parse().expect("a number");
            let is_it = |entry: &&Value| entry["seq"] == place;
            entries
                .iter()
                .find(is_it)
                .unwrap_or_else(|| panic!("no entry {seq}"))
        };
        let at = |entry: &Value| seconds(entry["at"].as_str().expect("a moment")) - origin;
        // Each reading stands at its time and its temperature, by a sign of any form.
        let readings = all(svg.root(), "reading");
        let wanted = entries
            .iter()
            .filter(|entry| entry["kind"] == "temperature")
            .count();
        assert_eq!(readings.len(), wanted, "{}", example.name);
        let curve = all(svg.root(), "curve")[0];
        let points: Vec<[f64; 2]> = attribute(curve, "d")
            .split(['M', 'L'])
            .filter(|point| !point.is_empty())
            .map(|point| {
                let (x, y) = point.split_once(' ').expect("two places");
                [x.parse().expect("x"), y.parse().expect("y")]
            })
            .collect();
        for reading in &readings {
            let entry = of(attribute(*reading, "data-entry"));
            assert_eq!(
                attribute(*reading, "data-reading"),
                entry["reading"],
                "{}",
                example.name
            );
            assert_eq!(attribute(*reading, "data-source"), entry["source"]);
            let told = amount(attribute(*reading, "data-reading"));
            let stands = |[x, y]: &[f64; 2]| along.is_at(*x, at(entry)) && up.shows(*y, told);
            if let Some(dot) = reading.children().find(|part| part.has_tag_name("circle")) {
                let place = [number(dot, "cx"), number(dot, "cy")];
                assert!(stands(&place), "{}: {told} at {place:?}", example.name);
            }
            let on_curve = matches!(attribute(*reading, "data-source"), "scan" | "network");
            assert_eq!(
                points.iter().any(stands),
                on_curve,
                "{}: {told}",
                example.name
            );
            read += 1;
        }
        let sheet = example.result.sheet().expect("every example has a sheet");
        let window = sheet
            .conditions
            .as_ref()
            .and_then(|asked| asked.temperature.as_ref());
        let window = window.expect("every example has a window");
        let band = all(svg.root(), "band")[0];
        let (top, high) = (number(band, "y"), number(band, "height"));
        if let Some(min) = window.min {
            up.assert_shows(top + high, min, "lower limit");
        }
        match window.max {
            Some(max) => up.assert_shows(top, max, "upper limit"),
            None => assert!((top - up.places[1]).abs() < 0.01, "it runs to the edge"),
        }
        for pour in all(svg.root(), "event") {
            let Some(told) = pour.attribute("data-amount") else {
                continue;
            };
            let entry = of(attribute(pour, "data-entry"));
            let poured = entry
                .get("volume")
                .or(entry.get("mass"))
                .expect("an amount");
            assert_eq!(told, poured);
            pours += 1;
        }
        for out in all(svg.root(), "out")
            .into_iter()
            .filter(|out| out.has_attribute("data-open"))
        {
            let from = number(out, "x");
            assert!(
                along.is_at(from, at(of(attribute(out, "data-open")))),
                "{}",
                example.name
            );
            if let Some(closed) = out.attribute("data-closed") {
                assert!(along.is_at(from + number(out, "width"), at(of(closed))));
            }
            outs += 1;
        }
        for told in all(svg.root(), "forecast") {
            let seq = attribute(told, "data-entry").parse().expect("a number");
            let cut = cut(&example.text, seq).unwrap_or_else(|| example.text.clone());
            let then = evaluate(&pack, cut.as_str()).expect("the beginning evaluates");
            let outlook = then.forecast().expect("it was told then");
            assert_eq!(
                attribute(told, "data-now"),
                outlook.now.expect("a reading").to_string()
            );
            let limit = amount(attribute(told, "data-limit"));
            let span = if Some(limit) == window.min {
                outlook.opens
            } else {
                outlook.closes
            };
            let span = span.expect("it was told then");
            let some = |amount: Option<Amount>| amount.map(|amount| amount.to_string());
            assert_eq!(attribute(told, "data-earliest"), span.earliest.to_string());
            assert_eq!(
                told.attribute("data-likely").map(Into::into),
                some(span.likely)
            );
            assert_eq!(
                told.attribute("data-latest").map(Into::into),
                some(span.latest)
            );
            let likely = all(told, "likely");
            let end = likely.first().map(|line| {
                let (_, end) = attribute(*line, "d").split_once('L').expect("two points");
                let (x, y) = end.split_once(' ').expect("two places");
                [x, y].map(|place| place.parse::<f64>().expect("a place"))
            });
            assert_eq!(end.is_some(), span.likely.is_some());
            if let (Some([x, y]), Some(likely)) = (end, span.likely) {
                let from = at(of(attribute(told, "data-entry")));
                assert!(along.is_at(x, from + likely.to_f64()), "{}", example.name);
                up.assert_shows(y, limit, "the limit of the forecast");
            }
            forecasts += 1;
        }
    }
    assert!(read > 40 && forecasts >= 3 && pours > 10 && outs >= 9);
}
