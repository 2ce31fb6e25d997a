//! What is known of a signed volume, in words: a departure is short or over, a net volume is out or in.

use super::sentence::{Given, Value};
use super::teller::Teller;
use crate::quantity::{Amount, Interval, Rounding};
use alloc::string::String;

/// An interval by the messages of `departure` or of `net`.
pub(super) fn told(teller: &Teller, part: &str, interval: &Interval) -> String {
    let (id, given) = shape(interval);
    teller.say(part, id, &given)
}

fn shape(interval: &Interval) -> (&'static str, Given) {
    let nothing = Given::nothing();
    let (Some(lo), Some(hi)) = (interval.lo(), interval.hi()) else {
        return match (interval.lo(), interval.hi()) {
            (_, Some(hi)) if hi.is_zero() => ("zero_or_below", nothing),
            (_, Some(hi)) if hi.is_negative() => ("below", nothing.with_some("near", near(hi))),
            (_, Some(hi)) => ("not_above", nothing.with_some("far", far(hi))),
            (Some(lo), _) if lo.is_zero() => ("zero_or_above", nothing),
            (Some(lo), _) if lo.is_negative() => ("not_below", nothing.with_some("far", far(lo))),
            (Some(lo), _) => ("above", nothing.with_some("near", near(lo))),
            (None, None) => ("unknown", nothing),
        };
    };
    match (lo.is_negative(), hi.is_negative()) {
        _ if lo.is_zero() && hi.is_zero() => ("zero", nothing),
        (true, true) if lo == hi => ("just_below", nothing.with_some("far", far(lo))),
        (true, true) => ("between_below", ends(hi, lo)),
        (true, false) if hi.is_zero() => ("up_to_below", nothing.with_some("far", far(lo))),
        (true, false) => (
            "across",
            nothing
                .with_some("below", far(lo))
                .with_some("above", far(hi)),
        ),
        _ if lo.is_zero() => ("up_to_above", nothing.with_some("far", far(hi))),
        _ if lo == hi => ("just_above", nothing.with_some("far", far(hi))),
        _ => ("between_above", ends(lo, hi)),
    }
}

fn ends(nearer: Amount, farther: Amount) -> Given {
    Given::nothing()
        .with_some("near", near(nearer))
        .with_some("far", far(farther))
}

/// The size of the end that is nearer to zero, rounded towards zero.
fn near(amount: Amount) -> Option<Value> {
    size(amount).map(|size| Value::Amount(size, Rounding::Floor))
}

/// The size of the end that is farther from zero, rounded away from it.
fn far(amount: Amount) -> Option<Value> {
    size(amount).map(|size| Value::Amount(size, Rounding::Ceiling))
}

fn size(amount: Amount) -> Option<Amount> {
    if amount.is_negative() {
        amount.times(-1).ok()
    } else {
        Some(amount)
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::super::{departure, sentence::GLUE};
    use super::*;

    #[test]
    fn every_shape_has_its_words() {
        let cases = [
            ("(-inf, +inf)", "not known"),
            (
                "(-inf, 0 L]",
                "at the level or short, by how much is not known",
            ),
            ("(-inf, -0.25 L]", "at least 0.25 L short"),
            (
                "(-inf, 0.25 L]",
                "at most 0.25 L over; how short is not known",
            ),
            (
                "[0 L, +inf)",
                "at the level or over, by how much is not known",
            ),
            ("[0.25 L, +inf)", "at least 0.25 L over"),
            (
                "[-0.25 L, +inf)",
                "at most 0.25 L short; how much over is not known",
            ),
            ("[0 L, 0 L]", "at the level"),
            ("[-2 L, -2 L]", "2 L short"),
            ("[-2 L, -1.5 L]", "between 1.5 L and 2 L short"),
            ("[-2 L, 0 L]", "at the level or up to 2 L short"),
            ("[-2 L, 1 L]", "between 2 L short and 1 L over"),
            ("[0 L, 0.04 L]", "at the level or up to 0.04 L over"),
            ("[0.5 L, 0.5 L]", "0.5 L over"),
            ("[0.5 L, 0.6 L]", "between 0.5 L and 0.6 L over"),
        ];
        for (interval, words) in cases {
            assert_eq!(departure(&interval.parse().unwrap()), words, "{interval}");
        }
    }

    #[test]
    fn rounding_widens_and_never_narrows() {
        let short = "[-1.061177 L, -1.024441 L]".parse().unwrap();
        assert_eq!(departure(&short), "between 1.024 L and 1.062 L short");
        let over = "[0.005793 L, 0.018272 L]".parse().unwrap();
        assert_eq!(departure(&over), "between 0.005 L and 0.019 L over");
    }

    #[test]
    fn a_net_volume_went_in_or_came_out() {
        let told = |interval: &str| {
            let interval = interval.parse().unwrap();
            super::told(&Teller::english(), "net", &interval).replace(GLUE, " ")
        };
        assert_eq!(told("[0 L, 0 L]"), "nothing");
        assert_eq!(told("[0.98 L, 1.02 L]"), "between 0.98 L and 1.02 L in");
        assert_eq!(told("[-0.7 L, -0.6 L]"), "between 0.6 L and 0.7 L out");
        assert_eq!(
            told("(-inf, 0.5 L]"),
            "at most 0.5 L in; how much came out is not known"
        );
    }
}
