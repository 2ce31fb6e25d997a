//! The pictures show what the result says: every place and every text is read back from the SVG and compared.

#[path = "pictures/drawn.rs"]
mod drawn;
#[path = "pictures/read_back.rs"]
mod read_back;
#[path = "pictures/warm_up.rs"]
mod warm_up;

use brimline::report::{self, Picture};
use brimline::torque::{ToolJob, tool_suits};
use brimline::{Pack, evaluate};
use drawn::{amount, cut, drawn, examples, rig};
use read_back::{Axis, all, attribute, interval, is_bar, number};
use roxmltree::{Document, Node};

#[test]
fn the_narrowing_is_that_of_the_result() {
    let pack = Pack::embedded().expect("the embedded pack reads");
    let (mut rows_seen, mut cuts) = (0, 0);
    for example in examples() {
        let text = drawn(&example, Picture::Narrowing);
        let svg = Document::parse(&text).expect("well-formed");
        let axis = Axis::of(&svg, "x");
        let rows = all(svg.root(), "row");
        for row in &rows {
            let (found, now) = (interval(*row, "data-as-found"), interval(*row, "data-now"));
            let seq = attribute(*row, "data-entry");
            assert!(
                is_bar(*row, "found", &found, &axis),
                "{} {seq}: {found}",
                example.name
            );
            assert!(
                is_bar(*row, "now", &now, &axis),
                "{} {seq}: {now}",
                example.name
            );
            rows_seen += 1;
            // What the library says of a journal that ends there.
            let Some(cut) = cut(&example.text, seq.parse().expect("a number")) else {
                continue;
            };
            let then = evaluate(&pack, cut.as_str()).expect("the beginning evaluates");
            assert_eq!(
                (then.as_found(), then.now()),
                (found, now),
                "{} {seq}",
                example.name
            );
            cuts += 1;
        }
        let last = rows.last().expect("a row");
        let result = &example.result;
        assert_eq!(
            interval(*last, "data-as-found"),
            result.as_found(),
            "{}",
            example.name
        );
        assert_eq!(
            interval(*last, "data-now"),
            result.now(),
            "{}",
            example.name
        );
        let level = all(svg.root(), "level")[0];
        assert!(axis.is_at(number(level, "x1"), 0.0));
        let limit = all(svg.root(), "limit")
            .into_iter()
            .find(|node| node.has_tag_name("line"));
        let limit = limit.expect("every example has a limit");
        let wanted = result
            .sheet()
            .and_then(|sheet| sheet.leak_limit.as_ref()?.limit());
        let wanted = wanted.expect("a limit");
        assert_eq!(attribute(limit, "data-limit"), wanted.to_string());
        axis.assert_shows(
            number(limit, "x1"),
            wanted.times(-1).expect("small"),
            "limit",
        );
        // In words as well.
        let told: Vec<&str> = svg.descendants().filter_map(|node| node.text()).collect();
        for words in [
            report::departure(&result.as_found()),
            report::departure(&result.now()),
        ] {
            assert!(
                told.iter().any(|text| text.contains(&words)),
                "{}: {words}",
                example.name
            );
        }
        assert!(told.contains(&format!("leak limit {wanted}").as_str()));
    }
    assert!(
        rows_seen > 40 && cuts > 20,
        "{rows_seen} rows, {cuts} compared"
    );
}

#[test]
fn the_torque_is_that_of_the_sheet_and_the_tool() {
    let rig = rig();
    for example in examples() {
        let text = drawn(&example, Picture::Closing);
        let svg = Document::parse(&text).expect("well-formed");
        let (plug, tool) = (Axis::of(&svg, "plug"), Axis::of(&svg, "tool"));
        let sheet = example.result.sheet().expect("every example has a sheet");
        let closing = sheet.closing.as_ref().expect("a closing");
        let (target, tolerance) = (closing.torque.expect("a torque"), closing.tolerance);
        let asked = all(svg.root(), "asked")[0];
        assert_eq!(attribute(asked, "data-torque"), target.to_string());
        let mark = all(asked, "level")[0];
        plug.assert_shows(number(mark, "x1"), target, &example.name);
        let tolerance = tolerance.expect("a tolerance");
        let band = all(asked, "band")[0];
        let [low, high] = [target.checked_sub(tolerance), target.checked_add(tolerance)];
        plug.assert_shows(number(band, "x"), low.expect("small"), "lower");
        let right = number(band, "x") + number(band, "width");
        plug.assert_shows(right, high.expect("small"), "upper");
        // The tool: what the calculator says, at its place on the tool's own scale.
        let job = ToolJob {
            target,
            tolerance: Some(tolerance),
            adapter: rig.adapter,
            angle: None,
        };
        let fit = tool_suits(&job, &[rig.tool])
            .expect("it is judged")
            .tools
            .remove(0);
        let setting = fit.setting.expect("a setting");
        let told = all(svg.root(), "setting")[0];
        assert_eq!(attribute(told, "data-setting"), setting.to_string());
        let tip = |node: Node<'_, '_>| -> f64 {
            let point = attribute(node, "d").split('L').nth(2).expect("the tip");
            point
                .split(' ')
                .next()
                .expect("x")
                .parse()
                .expect("a place")
        };
        tool.assert_shows(tip(all(told, "found")[0]), setting, "setting");
        let range = svg
            .descendants()
            .find(|node| node.has_attribute("data-max"));
        let range = range.expect("the range");
        tool.assert_shows(number(range, "x"), amount("5 N·m"), "lowest");
        tool.assert_shows(
            number(range, "x") + number(range, "width"),
            rig.tool.max,
            "largest",
        );
        for entered in all(svg.root(), "entered") {
            let torque = amount(attribute(entered, "data-torque"));
            plug.assert_shows(tip(all(entered, "found")[0]), torque, "entered");
        }
    }
}

#[test]
fn a_picture_stands_alone() {
    for example in examples() {
        for (_, which) in Picture::WORDS {
            let text = drawn(&example, *which);
            assert_eq!(text, drawn(&example, *which), "the same bytes");
            let svg = Document::parse(&text).expect("well-formed");
            let root = svg.root_element();
            let named = attribute(root, "aria-labelledby").split(' ');
            for id in named {
                let told = svg
                    .descendants()
                    .find(|node| node.attribute("id") == Some(id));
                assert!(
                    told.and_then(|told| told.text())
                        .is_some_and(|text| text.len() > 5)
                );
            }
            let outside = text.replace("http://www.w3.org/2000/svg", "");
            for never in [
                "<script", "http", "url(", "@import", "NaN", "inf\"", "{", "}",
            ] {
                let (_, after) = outside.split_once("</style>").expect("a style");
                assert!(!after.contains(never), "{never}");
            }
            // Each mark of an axis says its own number.
            for mark in svg
                .descendants()
                .filter(|node| node.has_attribute("data-value"))
            {
                let value = amount(attribute(mark, "data-value")).to_f64().abs();
                let told: f64 = mark.text().expect("a number").parse().expect("a number");
                assert_eq!(told, value);
                let axis = mark.parent().expect("it stands in an axis");
                let axis = Axis::of(&svg, attribute(axis, "data-axis"));
                let place = if attribute(mark, "text-anchor") == "middle" {
                    number(mark, "x")
                } else {
                    number(mark, "y") - 4.0
                };
                axis.assert_shows(place, amount(attribute(mark, "data-value")), &example.name);
            }
        }
    }
}

/// The check itself: a bar that is a third of a pixel off is seen.
#[test]
fn a_bar_that_lies_is_seen() {
    let all_of = examples();
    let example = all_of
        .iter()
        .find(|example| example.name.ends_with("plain_check.json"));
    let text = drawn(example.expect("it is there"), Picture::Narrowing);
    let honest = |text: &str| {
        let svg = Document::parse(text).expect("well-formed");
        let axis = Axis::of(&svg, "x");
        let row = all(svg.root(), "row")[0];
        is_bar(row, "found", &interval(row, "data-as-found"), &axis)
    };
    assert!(honest(&text));
    let svg = Document::parse(&text).expect("well-formed");
    let bars = all(all(svg.root(), "row")[0], "found");
    let x = attribute(bars[0], "x");
    let moved = format!("{:.2}", x.parse::<f64>().expect("a place") + 0.33);
    let lying = text.replace(
        &format!("class=\"found\" x=\"{x}\""),
        &format!("class=\"found\" x=\"{moved}\""),
    );
    assert_ne!(lying, text);
    assert!(!honest(&lying));
}
