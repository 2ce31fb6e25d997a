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

#[cfg(test)]
mod tests {
    #![allow(clippy::arithmetic_side_effects)]

    use super::*;

    #[test]
    fn divides_as_the_machine_does() {
        let divisors = [
            1,
            2,
            3,
            5,
            500,
            900,
            1 << 53,
            (1 << 53) - 1,
            1_569_064_000_000_000_000,
            u64::MAX,
        ];
        let mut bits: u128 = 1;
        for divisor in divisors {
            let prepared = Divisor::of(divisor);
            let normal = u128::from(divisor) << prepared.shift;
            let ends = [
                0,
                1,
                normal - 1,
                normal,
                normal + 1,
                (1 << 126) - 1,
                1 << 126,
                (1 << 127) - 1,
            ];
            let some = (0..2_000).map(|_| {
                // A Lehmer generator: any odd multiplier gives values of every size here.
                bits = bits
                    .wrapping_mul(0x0da9_4204_e4dd_58b5_1e8a_7b5b_9d2f_0d35)
                    .wrapping_add(1);
                bits >> (1 + bits as u32 % 120)
            });
            for value in ends.into_iter().chain(some) {
                // A quotient has 64 bits where the upper half of the value is below the divisor.
                let value = value.min((normal << 64) - 1);
                let (quotient, rest) = prepared.divide(value);
                assert_eq!(
                    (u128::from(quotient), u128::from(rest)),
                    (value / normal, value % normal)
                );
            }
        }
    }
}
