//! The ledger: three closed intervals about one number, the departure from the correct level, in mL.

use crate::words::Exact;
use num_traits::Zero;

/// A closed interval; an absent end is unbounded.
#[derive(Clone, Debug, PartialEq)]
pub struct Interval {
    pub lo: Option<Exact>,
    pub hi: Option<Exact>,
}

impl Interval {
    pub fn new(lo: Option<Exact>, hi: Option<Exact>) -> Self {
        Self { lo, hi }
    }

    pub fn everything() -> Self {
        Self::new(None, None)
    }

    pub fn between(lo: Exact, hi: Exact) -> Self {
        Self::new(Some(lo), Some(hi))
    }

    pub fn at_least(lo: Exact) -> Self {
        Self::new(Some(lo), None)
    }

    pub fn at_most(hi: Exact) -> Self {
        Self::new(None, Some(hi))
    }

    /// Every sum of a member of this and a member of the other.
    pub fn plus(&self, other: &Self) -> Self {
        let sum = |a: &Option<Exact>, b: &Option<Exact>| Some(a.as_ref()? + b.as_ref()?);
        Self::new(sum(&self.lo, &other.lo), sum(&self.hi, &other.hi))
    }

    /// The negative of every member.
    pub fn negated(&self) -> Self {
        let negative = |end: &Option<Exact>| end.as_ref().map(|end| -end);
        Self::new(negative(&self.hi), negative(&self.lo))
    }

    /// Every difference: [lo - other.hi, hi - other.lo].
    pub fn minus(&self, other: &Self) -> Self {
        self.plus(&other.negated())
    }

    /// The members of both, or nothing if they share none.
    pub fn meet(&self, other: &Self) -> Option<Self> {
        let lo = self.lo.iter().chain(&other.lo).max().cloned();
        let hi = self.hi.iter().chain(&other.hi).min().cloned();
        match (&lo, &hi) {
            (Some(lo), Some(hi)) if lo > hi => None,
            _ => Some(Self::new(lo, hi)),
        }
    }
}

/// What is known of the unit: as it was found, as it is now, and what was added net since.
#[derive(Clone, Debug, PartialEq)]
pub struct Ledger {
    pub found: Interval,
    pub now: Interval,
    pub net: Interval,
}

/// A constraint left no possible value.
#[derive(Debug, PartialEq)]
pub struct Contradiction;

impl Ledger {
    pub fn new() -> Self {
        Self {
            found: Interval::everything(),
            now: Interval::everything(),
            net: Interval::between(Exact::zero(), Exact::zero()),
        }
    }

    /// A move: fluid went in (positive) or out (negative), somewhere within the interval.
    pub fn moved(&mut self, by: &Interval) {
        self.net = self.net.plus(by);
        self.now = self.now.plus(by);
    }

    /// A constraint: the departure now is within the interval.
    pub fn constrain(&mut self, within: &Interval) -> Result<(), Contradiction> {
        self.now = self.now.meet(within).ok_or(Contradiction)?;
        let before = self.now.minus(&self.net);
        self.found = self.found.meet(&before).ok_or(Contradiction)?;
        Ok(())
    }

    /// The net added as reported: what the intervals of now and as found leave of it.
    pub fn net_added(&self) -> Interval {
        let between = self.now.minus(&self.found);
        self.net.meet(&between).expect("the three intervals agree")
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::words::ratio;

    fn millilitres(lo: i64, hi: i64) -> Interval {
        Interval::between(ratio(lo, 1), ratio(hi, 1))
    }

    #[test]
    fn intervals_subtract_crosswise() {
        // [1, 2] - [10, 30] = [1 - 30, 2 - 10].
        assert_eq!(
            millilitres(1, 2).minus(&millilitres(10, 30)),
            millilitres(-29, -8)
        );
        let short = Interval::at_most(ratio(0, 1));
        assert_eq!(
            short.minus(&millilitres(1, 2)),
            Interval::at_most(ratio(-1, 1))
        );
    }

    #[test]
    fn closed_intervals_that_touch_share_a_point() {
        assert_eq!(
            millilitres(0, 5).meet(&millilitres(5, 9)),
            Some(millilitres(5, 5))
        );
        assert_eq!(millilitres(0, 5).meet(&millilitres(6, 9)), None);
    }

    #[test]
    fn a_constraint_after_a_move_reaches_back_to_as_found() {
        // 400 to 600 mL went in and the unit is now level: it was short by as much.
        let mut ledger = Ledger::new();
        ledger.moved(&millilitres(400, 600));
        assert_eq!(ledger.constrain(&millilitres(0, 0)), Ok(()));
        assert_eq!(ledger.found, millilitres(-600, -400));
        // Nothing moved since, so it cannot be 100 mL over as well.
        assert_eq!(ledger.constrain(&millilitres(100, 100)), Err(Contradiction));
    }

    #[test]
    fn what_is_known_of_both_ends_narrows_the_net_added() {
        // Found exactly 500 short, now exactly level, by a pour of 400 to 600: the pour was 500.
        let mut ledger = Ledger::new();
        assert_eq!(ledger.constrain(&millilitres(-500, -500)), Ok(()));
        ledger.moved(&millilitres(400, 600));
        assert_eq!(ledger.constrain(&millilitres(0, 0)), Ok(()));
        assert_eq!(ledger.net, millilitres(400, 600));
        assert_eq!(ledger.net_added(), millilitres(500, 500));
    }
}
