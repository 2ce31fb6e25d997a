//! The signs of a drawing, and what they mean.

use super::drawing::{Attributes, Drawing};
use alloc::string::String;

/// The sign of a source, of an event, or of a part of the drawing.
pub(super) fn sign(drawing: &mut Drawing, named: &str, [x, y]: [f64; 2]) {
    let mark = || Attributes::class("mark");
    let aside = || Attributes::class("aside");
    match named {
        "scan" => drawing.circle(mark(), [x, y], 3.5),
        "network" => drawing.rect(mark(), [x - 3.0, y - 3.0], [6.0, 6.0]),
        "infrared" => drawing.path(
            aside(),
            &[
                [x - 4.0, y + 3.5],
                [x, y - 4.0],
                [x + 4.0, y + 3.5],
                [x - 4.0, y + 3.5],
            ],
        ),
        "pan" => drawing.path(
            aside(),
            &[
                [x - 4.0, y],
                [x, y - 4.0],
                [x + 4.0, y],
                [x, y + 4.0],
                [x - 4.0, y],
            ],
        ),
        "coolant" => drawing.rect(aside(), [x - 3.0, y - 3.0], [6.0, 6.0]),
        "ambient" => drawing.circle(aside(), [x, y], 3.0),
        "aside" => drawing.circle(aside(), [x, y], 3.0),
        "pour" => drawing.path(
            Attributes::class("pour"),
            &[
                [x - 4.0, y - 5.0],
                [x + 4.0, y - 5.0],
                [x, y + 3.0],
                [x - 4.0, y - 5.0],
            ],
        ),
        other => drawing.rect(Attributes::class(other), [x - 6.0, y - 4.0], [12.0, 8.0]),
    }
}

/// Signs with their words in lines from a place on; the place of the last line.
pub(super) fn legend(drawing: &mut Drawing, items: &[(&str, String)], top: f64, width: f64) -> f64 {
    let (mut x, mut y) = (LEFT, top);
    for (named, text) in items {
        let wide = 28.0 + text.chars().count() as f64 * LETTER;
        if x > LEFT && x + wide > width {
            (x, y) = (LEFT, y + 16.0);
        }
        sign(drawing, named, [x + 7.0, y - 4.0]);
        drawing.text(Attributes::default(), [x + 17.0, y], "start", text);
        x += wide;
    }
    y
}

const LEFT: f64 = 4.0;
/// How wide a letter of the legend is, at most.
const LETTER: f64 = 6.1;
