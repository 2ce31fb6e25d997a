//! The three intervals of a check, in exact counts of volume.
//!
//! Departure is the signed volume between the fluid in the unit and the correct level; negative is short.
//! The ledger keeps what is known of it as found, of it now, and of the net volume added in between.

/// A closed interval of counts; `None` is unbounded.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Span {
    pub(crate) lo: Option<i128>,
    pub(crate) hi: Option<i128>,
}

impl Span {
    pub(super) const ANY: Span = Span { lo: None, hi: None };
    pub(super) const ZERO: Span = Span {
        lo: Some(0),
        hi: Some(0),
    };
    pub(super) const UP_TO_ZERO: Span = Span {
        lo: None,
        hi: Some(0),
    };
    pub(super) const FROM_ZERO: Span = Span {
        lo: Some(0),
        hi: None,
    };

    pub(super) const fn new(lo: i128, hi: i128) -> Self {
        Span {
            lo: Some(lo),
            hi: Some(hi),
        }
    }

    /// What both allow; `None` if nothing.
    pub(super) fn and(self, other: Span) -> Option<Span> {
        let lo = match (self.lo, other.lo) {
            (Some(a), Some(b)) => Some(a.max(b)),
            (a, b) => a.or(b),
        };
        let hi = match (self.hi, other.hi) {
            (Some(a), Some(b)) => Some(a.min(b)),
            (a, b) => a.or(b),
        };
        match (lo, hi) {
            (Some(lo), Some(hi)) if lo > hi => None,
            _ => Some(Span { lo, hi }),
        }
    }

    pub(crate) fn plus(self, other: Span) -> Span {
        Span {
            lo: sum(self.lo, other.lo),
            hi: sum(self.hi, other.hi),
        }
    }

    pub(super) fn negated(self) -> Span {
        Span {
            lo: self.hi.map(i128::wrapping_neg),
            hi: self.lo.map(i128::wrapping_neg),
        }
    }

    pub(crate) fn minus(self, other: Span) -> Span {
        self.plus(other.negated())
    }
}

/// Booked volumes are bounded far below what a count holds, so sums stay exact; an end that did not would be
/// given up as unbounded.
fn sum(a: Option<i128>, b: Option<i128>) -> Option<i128> {
    a?.checked_add(b?)
}

/// What is known of the departure, and which entries say so.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Ledger {
    /// As found.
    pub(super) found: Span,
    /// Now.
    pub(super) now: Span,
    /// Net added in between.
    pub(super) net: Span,
    /// The entry that bounds the departure from below.
    pub(super) bounds_below: Option<u64>,
    /// The entry that bounds it from above.
    pub(super) bounds_above: Option<u64>,
}

impl Ledger {
    pub(super) const UNKNOWN: Ledger = Ledger {
        found: Span::ANY,
        now: Span::ANY,
        net: Span::ZERO,
        bounds_below: None,
        bounds_above: None,
    };

    /// Fluid went in (positive) or out (negative).
    #[must_use]
    pub(super) fn moved(self, by: Span) -> Ledger {
        let mut next = Ledger {
            now: self.now.plus(by),
            net: self.net.plus(by),
            ..self
        };
        next.bounds_below = self.bounds_below.filter(|_| next.now.lo.is_some());
        next.bounds_above = self.bounds_above.filter(|_| next.now.hi.is_some());
        next
    }

    /// An entry proves that the departure now lies within a span; `None` if that contradicts what is known.
    #[must_use]
    pub(super) fn constrained(self, to: Span, entry: u64) -> Option<Ledger> {
        let now = self.now.and(to)?;
        let found = self.found.and(now.minus(self.net))?;
        let mut next = Ledger { found, now, ..self };
        if now.lo != self.now.lo {
            next.bounds_below = Some(entry);
        }
        if now.hi != self.now.hi {
            next.bounds_above = Some(entry);
        }
        Some(next)
    }

    /// The net volume added, as far as it follows from the other two.
    pub(super) fn net_added(&self) -> Span {
        self.net.and(self.now.minus(self.found)).unwrap_or(self.net)
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;

    // Worked by hand: three half-litre pours without flow and a trickle after the fourth leave the shortage
    // between 1.5 L and 2.0 L. Counts here are millilitres.
    #[test]
    fn a_trickle_after_the_fourth_half_litre() {
        let mut ledger = Ledger::UNKNOWN;
        for entry in 0..3 {
            ledger = ledger
                .constrained(Span::UP_TO_ZERO, entry)
                .unwrap()
                .moved(Span::new(500, 500));
        }
        ledger = ledger
            .constrained(Span::UP_TO_ZERO, 3)
            .unwrap()
            .moved(Span::new(500, 500));
        ledger = ledger.constrained(Span::FROM_ZERO, 4).unwrap();
        ledger = ledger.moved(Span::new(-ledger.now.hi.unwrap().max(0), 0));
        ledger = ledger.constrained(Span::ZERO, 4).unwrap();
        assert_eq!(ledger.found, Span::new(-2000, -1500));
        assert_eq!(ledger.now, Span::ZERO);
        assert_eq!(ledger.net_added(), Span::new(1500, 2000));
    }

    #[test]
    fn what_cannot_be_is_refused() {
        let short = Ledger::UNKNOWN.constrained(Span::new(-10, -5), 1).unwrap();
        assert_eq!(short.constrained(Span::FROM_ZERO, 2), None);
        assert_eq!((short.bounds_below, short.bounds_above), (Some(1), Some(1)));
        assert_eq!(short.moved(Span::UP_TO_ZERO).bounds_below, None);
    }
}
