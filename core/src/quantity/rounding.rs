//! Where a digit that does not fit goes.

use crate::word::words;

words! {
    /// How a value between two printable ones is rounded.
    ///
    /// ```
    /// use brimline::{Amount, Rounding, Unit};
    /// let limit = Amount::parse("1.5 L")?;
    /// assert_eq!(limit.to(Unit::UsQuart, 2, Rounding::HalfEven)?.to_string(), "1.59 US qt");
    /// assert_eq!(limit.to(Unit::UsQuart, 2, Rounding::Down)?.to_string(), "1.58 US qt");
    /// # Ok::<(), brimline::Error>(())
    /// ```
    #[derive(Default)]
    pub enum Rounding {
        /// To the nearest; halfway to the even digit.
        #[default]
        HalfEven = "half_even",
        /// To the nearest; halfway away from zero.
        HalfUp = "half_up",
        /// Toward zero.
        Down = "down",
        /// Away from zero.
        Up = "up",
        /// Toward minus infinity.
        Floor = "floor",
        /// Toward plus infinity.
        Ceiling = "ceiling",
    }
}

impl Rounding {
    /// Whether `floor + remainder/divisor`, with 0 <= remainder < divisor, goes up to `floor + 1`.
    pub(crate) fn goes_up(self, floor: i128, remainder: u128, divisor: u128) -> bool {
        let negative = floor < 0;
        if remainder == 0 {
            return false;
        }
        let half = remainder.cmp(&divisor.wrapping_sub(remainder));
        match self {
            Rounding::HalfEven => half.is_gt() || (half.is_eq() && floor & 1 == 1),
            Rounding::HalfUp => half.is_gt() || (half.is_eq() && !negative),
            Rounding::Down => negative,
            Rounding::Up => !negative,
            Rounding::Floor => false,
            Rounding::Ceiling => true,
        }
    }
}
