//! Division of 128 bits by a size known beforehand.

/// A divisor of up to 64 bits with its inverse, worked out by the compiler.
///
/// The division is that of N. Möller and T. Granlund, "Improved division by invariant integers", IEEE
/// Transactions on Computers 60 (2011), algorithm 4: two multiplications, exact.
#[derive(Debug, Clone, Copy)]
pub(super) struct Divisor {
    /// The divisor, shifted up until its leading bit is the highest.
    normal: u64,
    /// By how many bits.
    pub(super) shift: u32,
    /// (2^128 - 1) / normal - 2^64, rounded down.
    inverse: u64,
}

impl Divisor {
    /// Prepares a divisor above 0.
    #[expect(
        clippy::arithmetic_side_effects,
        reason = "evaluated by the compiler only"
    )]
    pub(super) const fn of(divisor: u64) -> Self {
        let shift = divisor.leading_zeros();
        let normal = divisor << shift;
        Divisor {
            normal,
            shift,
            inverse: (u128::MAX / normal as u128 - (1 << 64)) as u64,
        }
    }

    /// Quotient and remainder of a value below 2^127 and the shifted divisor.
    #[inline]
    pub(super) fn divide(self, value: u128) -> (u64, u64) {
        let (high, low) = ((value >> 64) as u64, value as u64);
        let guess = u128::from(self.inverse)
            .wrapping_mul(high.into())
            .wrapping_add(value);
        let mut quotient = ((guess >> 64) as u64).wrapping_add(1);
        let mut rest = low.wrapping_sub(quotient.wrapping_mul(self.normal));
        if rest > guess as u64 {
            quotient = quotient.wrapping_sub(1);
            rest = rest.wrapping_add(self.normal);
        }
        if rest >= self.normal {
            quotient = quotient.wrapping_add(1);
            rest = rest.wrapping_sub(self.normal);
        }
        (quotient, rest)
    }
}
