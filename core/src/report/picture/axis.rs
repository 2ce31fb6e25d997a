//! An axis: numbers of one unit along a side of a drawing.

use super::drawing::{Attributes, Px};
use crate::quantity::{Amount, Unit};
use alloc::vec::Vec;

/// Numbers from one end to the other, and the places of those ends in the drawing.
#[derive(Debug, Clone, Copy)]
pub(super) struct Axis {
    from: f64,
    to: f64,
    places: [f64; 2],
}

/// Steps between marks that are read easily, smallest first: mantissa and decimals.
const STEPS: [(i64, u8); 19] = [
    (1, 2),
    (2, 2),
    (5, 2),
    (1, 1),
    (2, 1),
    (5, 1),
    (1, 0),
    (2, 0),
    (5, 0),
    (10, 0),
    (20, 0),
    (50, 0),
    (100, 0),
    (200, 0),
    (500, 0),
    (1000, 0),
    (2000, 0),
    (5000, 0),
    (10000, 0),
];

impl Axis {
    /// From the smallest to the largest of some numbers, with room of a share of that below and above.
    pub(super) fn over(
        numbers: impl IntoIterator<Item = f64>,
        room: [f64; 2],
        places: [f64; 2],
    ) -> Self {
        let (mut from, mut to) = (f64::INFINITY, f64::NEG_INFINITY);
        for number in numbers {
            (from, to) = (from.min(number), to.max(number));
        }
        if from > to {
            (from, to) = (0.0, 1.0);
        }
        if to - from <= 0.0 {
            (from, to) = (from - 0.5, to + 0.5);
        }
        let [below, above] = room.map(|share| (to - from) * share);
        Axis {
            from: from - below,
            to: to + above,
            places,
        }
    }

    /// Between two numbers, the first below the second.
    pub(super) const fn between([from, to]: [f64; 2], places: [f64; 2]) -> Self {
        Axis { from, to, places }
    }

    /// Where a number stands; what lies beyond an end stands at it.
    pub(super) fn at(&self, number: f64) -> f64 {
        let [first, last] = self.places;
        let share = (number - self.from) / (self.to - self.from);
        first + (last - first) * share.clamp(0.0, 1.0)
    }

    pub(super) const fn ends(&self) -> [f64; 2] {
        self.places
    }

    pub(super) const fn numbers(&self) -> [f64; 2] {
        [self.from, self.to]
    }

    /// Multiples of an easy step inside the axis, at most so many.
    pub(super) fn marks(&self, unit: Unit, most: i32) -> Vec<Amount> {
        let fits = |(mantissa, decimals): &&(i64, u8)| {
            let step = *mantissa as f64 / ten_to(*decimals);
            (self.to - self.from) / step <= f64::from(most)
        };
        let Some((mantissa, decimals)) = STEPS.iter().find(fits) else {
            return Vec::new();
        };
        let step = *mantissa as f64 / ten_to(*decimals);
        let first = libm::ceil(self.from / step) as i64;
        let last = libm::floor(self.to / step) as i64;
        (first..=last)
            .filter_map(|place| Amount::new(place.checked_mul(*mantissa)?, *decimals, unit).ok())
            .collect()
    }

    /// What a reader of the drawing needs to turn places into numbers again.
    pub(super) fn described(&self, name: &str, unit: &str) -> Attributes {
        let [first, last] = self.places.map(Px);
        Attributes::class("axis")
            .with("data-axis", name)
            .with("data-unit", unit)
            .with("data-from", self.from)
            .with("data-to", self.to)
            .with("data-first", first)
            .with("data-last", last)
    }
}

const fn ten_to(decimals: u8) -> f64 {
    match decimals {
        0 => 1.0,
        1 => 10.0,
        _ => 100.0,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use alloc::string::ToString;

    #[test]
    fn marks_are_easy_numbers_inside() {
        let axis = Axis::between([-1.3, 0.4], [0.0, 170.0]);
        let marks: Vec<_> = axis
            .marks(Unit::Litre, 6)
            .iter()
            .map(ToString::to_string)
            .collect();
        assert_eq!(marks, ["-1.0 L", "-0.5 L", "0.0 L"]);
        assert!((axis.at(-0.3) - 100.0).abs() < 1e-9);
        assert!((axis.at(9.0) - 170.0).abs() < 1e-9);
    }
}
