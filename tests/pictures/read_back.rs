//! Places of a picture turned into numbers again, by what its axes tell of themselves.

use brimline::{Amount, Interval, Unit, convert};
use roxmltree::{Document, Node};

/// Half of the last digit of a place and of a length, and what binary fractions lose.
const PIXEL: f64 = 0.0101;

pub fn attribute<'a>(node: Node<'a, '_>, name: &str) -> &'a str {
    let value = node.attribute(name);
    value.unwrap_or_else(|| panic!("no {name} on <{}>", node.tag_name().name()))
}

pub fn number(node: Node<'_, '_>, name: &str) -> f64 {
    attribute(node, name).parse().expect(name)
}

pub fn has_class(node: &Node<'_, '_>, class: &str) -> bool {
    let own = node.attribute("class").unwrap_or_default();
    own.split(' ').any(|own| own == class)
}

pub fn all<'a, 'i>(node: Node<'a, 'i>, class: &str) -> Vec<Node<'a, 'i>> {
    node.descendants()
        .filter(|node| has_class(node, class))
        .collect()
}

/// An axis as the picture itself tells it.
pub struct Axis {
    pub numbers: [f64; 2],
    pub places: [f64; 2],
    pub unit: String,
}

impl Axis {
    pub fn of(svg: &Document<'_>, name: &str) -> Self {
        let of_name = |node: &Node<'_, '_>| node.attribute("data-axis") == Some(name);
        let node = svg.descendants().find(of_name).expect("the axis is told");
        Axis {
            numbers: [number(node, "data-from"), number(node, "data-to")],
            places: [number(node, "data-first"), number(node, "data-last")],
            unit: attribute(node, "data-unit").into(),
        }
    }

    pub fn unit(&self) -> Unit {
        let unit = Unit::ALL.iter().find(|unit| unit.symbol() == self.unit);
        *unit.expect("a unit of the library")
    }

    /// Whether what stands at a place is a number, as near as the place is written.
    pub fn is_at(&self, place: f64, wanted: f64) -> bool {
        let [[from, to], [first, last]] = [self.numbers, self.places];
        let per_pixel = ((to - from) / (last - first)).abs();
        let told = from + (place - first) / (last - first) * (to - from);
        (told - wanted).abs() <= PIXEL * per_pixel + 1e-9
    }

    pub fn shows(&self, place: f64, wanted: Amount) -> bool {
        let wanted = convert(wanted.to_f64(), wanted.unit(), self.unit()).expect("one kind");
        self.is_at(place, wanted)
    }

    pub fn assert_shows(&self, place: f64, wanted: Amount, what: &str) {
        assert!(
            self.shows(place, wanted),
            "{what}: {wanted} is not at {place}"
        );
    }
}

/// Whether a bar is the interval: its ends by their places, an unknown end by its point.
pub fn is_bar(row: Node<'_, '_>, class: &str, interval: &Interval, axis: &Axis) -> bool {
    let parts = all(row, class);
    let bar = parts
        .iter()
        .find(|part| part.has_tag_name("rect"))
        .expect("a bar");
    let ends = [number(*bar, "x"), number(*bar, "x") + number(*bar, "width")];
    let is_open = |side: &str| {
        parts
            .iter()
            .any(|part| part.attribute("data-open") == Some(side))
    };
    let shows = |side: &str, place, end: Option<Amount>| match end {
        Some(end) => !is_open(side) && axis.shows(place, end),
        None => is_open(side),
    };
    shows("below", ends[0], interval.lo()) && shows("above", ends[1], interval.hi())
}

pub fn interval(node: Node<'_, '_>, name: &str) -> Interval {
    Interval::parse(attribute(node, name)).expect(name)
}
