//! Sumps of every form: the level, the volume below it, and what a tilt makes of them.

use super::given::amount;
use brimline::volume::{Sump, level_for, segment_share, tilt_error, volume_below};
use brimline::{Amount, Unit};
use proptest::prelude::*;

fn prismoid() -> impl Strategy<Value = Sump> {
    // Sides that grow evenly from one rectangle to another.
    (
        10..=500_i64,
        [10..=400_i64, 10..=400],
        [10..=400_i64, 10..=400],
    )
        .prop_map(|(height, [a, b], [c, d])| {
            let area = |size| amount(size, 2, Unit::SquareCentimetre);
            // In quarters of mm², so that the middle is whole.
            let [bottom, middle, top] = [4 * a * b, (a + c) * (b + d), 4 * c * d].map(area);
            Sump::prismoid(amount(height, 0, Unit::Millimetre), bottom, middle, top).unwrap()
        })
}

fn cylinder() -> impl Strategy<Value = Sump> {
    (10..=900_i64, 10..=900_i64).prop_map(|(diameter, length)| {
        let mm = |length| amount(length, 0, Unit::Millimetre);
        Sump::lying_cylinder(mm(diameter), mm(length)).unwrap()
    })
}

fn strapping() -> impl Strategy<Value = Sump> {
    prop::collection::vec((1..=50_i64, 1..=900_i64), 2..12).prop_map(|steps| {
        let (mut level, mut held) = (0, 0);
        let rows = steps.iter().map(|(rise, more)| {
            (level, held) = (level + rise, held + more);
            (
                amount(level, 0, Unit::Millimetre),
                amount(held, 2, Unit::Litre),
            )
        });
        Sump::strapping(&rows.collect::<Vec<_>>()).unwrap()
    })
}

fn sump() -> impl Strategy<Value = Sump> {
    prop_oneof![prismoid(), cylinder(), strapping()]
}

/// The highest level of a sump, mm, as its refusal tells it.
fn highest(sump: &Sump) -> f64 {
    let above = amount(999_999_999, 0, Unit::Millimetre);
    let error = volume_below(sump, above).unwrap_err();
    let allowed = error.first().allowed[0].clone();
    let (_, top) = allowed.split_once(" to ").unwrap();
    Amount::parse(top).unwrap().to_f64()
}

proptest! {
    #[test]
    fn level_and_volume_invert(sump in sump(), share in 1..=999_u32) {
        // Strapping tables begin above zero.
        let top = highest(&sump);
        let level = Amount::from_computed(top * f64::from(share) / 1000.0, Unit::Millimetre).unwrap();
        let Ok(below) = volume_below(&sump, level) else { return Ok(()); };
        let back = level_for(&sump, below).unwrap();
        // The print of the volume has twelve digits.
        prop_assert!((back.to_f64() - level.to_f64()).abs() < 1e-5 * top, "{level} {below} {back}");
        let again = volume_below(&sump, back).unwrap();
        prop_assert!((again.to_f64() - below.to_f64()).abs() <= 2e-9 + 1e-10 * below.to_f64(), "{below} {again}");
    }

    #[test]
    fn more_level_is_more_volume(sump in sump(), one in 0..=1000_u32, other in 0..=1000_u32) {
        prop_assume!(one != other);
        let (one, other) = (one.min(other), one.max(other));
        let top = highest(&sump);
        let at = |share: u32| {
            let level = Amount::from_computed(top * f64::from(share) / 1000.0, Unit::Millimetre).unwrap();
            volume_below(&sump, level).ok()
        };
        if let (Some(less), Some(more)) = (at(one), at(other)) {
            prop_assert!(less < more);
        }
    }

    #[test]
    fn the_rest_of_a_circle_is_the_other_segment(level in 0..=1000_i64) {
        let share = |level| {
            let diameter = amount(1, 0, Unit::Metre);
            segment_share(amount(level, 0, Unit::Millimetre), diameter).unwrap().si()
        };
        prop_assert!((share(level) + share(1000 - level) - 1.0).abs() < 2e-9);
    }

    #[test]
    fn a_steeper_tilt_deceives_more(
        one in 0..450_i64, other in 0..450_i64, surface in 1..=2000_i64, offset in 1..=500_i64,
    ) {
        prop_assume!(one != other);
        let (one, other) = (one.min(other), one.max(other));
        let error = |tilt| {
            let surface = amount(surface, 0, Unit::SquareCentimetre);
            tilt_error(surface, amount(offset, 0, Unit::Millimetre), amount(tilt, 1, Unit::Degree)).unwrap()
        };
        let (less, more) = (error(one), error(other));
        prop_assert!(less.height < more.height && less.volume < more.volume);
        let litres = more.height.si() * surface as f64 * 0.1;
        prop_assert!((more.volume.to_f64() - litres).abs() < 1e-8 + 1e-8 * litres);
    }
}
