//! Fluid exchanged in drains and by flushing, and what stays of the old.

use super::given::{amount, volume};
use brimline::volume::{cycles_needed, exchange, flush, flush_needed, wrong_left};
use brimline::{Amount, Unit};
use proptest::prelude::*;

proptest! {
    #[test]
    fn so_many_cycles_are_enough_and_one_less_is_not(
        capacity in 100..=2000_i64, part in 5..=100_i64, fresh in 0..=99_900_i64,
    ) {
        let whole = amount(capacity * 100, 4, Unit::Litre);
        let drained = amount(capacity * part, 4, Unit::Litre);
        let fresh = amount(fresh, 3, Unit::Percent);
        let needed = cycles_needed(whole, drained, fresh).unwrap();
        let after = |cycles| exchange(whole, drained, cycles).unwrap();
        prop_assert_eq!(after(needed.cycles).fresh, needed.fresh);
        prop_assert!(needed.fresh.si() >= fresh.si() - 1e-9);
        if let Some(less) = needed.cycles.checked_sub(1) {
            prop_assert!(after(less).fresh.si() < fresh.si() + 1e-9);
        }
        // All of it wrong is old fluid.
        let wrong = wrong_left(whole, whole, drained, needed.cycles).unwrap();
        prop_assert_eq!(wrong, needed.old);
        prop_assert!((needed.old.si() + needed.fresh.si() - 1.0).abs() < 2e-9);
    }

    #[test]
    fn draining_in_parts_beats_flushing(capacity in volume(), part in 1..=100_i64, cycles in 0..=20_u32) {
        // One volume through, mixing all the while, leaves more than the same in drains.
        let drained = Amount::from_computed(capacity.to_f64() * part as f64 / 100.0, capacity.unit()).unwrap();
        prop_assume!(drained <= capacity);
        let drains = exchange(capacity, drained, cycles).unwrap();
        let flushed = flush(capacity, drains.used).unwrap();
        prop_assert!(drains.old.si() <= flushed.old.si() + 1e-8);
    }

    #[test]
    fn a_flush_and_what_it_needs_invert(capacity in volume(), fresh in 0..=999_999_i64) {
        let fresh = amount(fresh, 6, Unit::One);
        let needed = flush_needed(capacity, fresh).unwrap().volume;
        let told = flush(capacity, needed).unwrap();
        let lost = 1e-9 / capacity.to_f64();
        prop_assert!((told.fresh.si() - fresh.si()).abs() < 2e-9 + lost, "{capacity} {needed:?} {fresh} {}", told.fresh);
    }
}
