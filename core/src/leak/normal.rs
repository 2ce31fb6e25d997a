//! The standard normal distribution: its probabilities and its quantiles.

use core::f64::consts::{FRAC_1_SQRT_2, PI};

/// The density at `z`.
pub(super) fn density(z: f64) -> f64 {
    libm::exp(-0.5 * z * z) / libm::sqrt(2.0 * PI)
}

/// The probability below `z`, infinities included.
pub(super) fn below(z: f64) -> f64 {
    0.5 * libm::erfc(-z * FRAC_1_SQRT_2)
}

/// The probability between two values of z, subtracted in the tail where both are small.
pub(super) fn between(lo: f64, hi: f64) -> f64 {
    if lo > 0.0 {
        below(-lo) - below(-hi)
    } else {
        below(hi) - below(lo)
    }
}

/// A ratio of two polynomials, the highest power first.
struct Fit {
    over: [f64; 8],
    under: [f64; 8],
}

impl Fit {
    fn at(&self, r: f64) -> f64 {
        let horner = |terms: &[f64; 8]| terms.iter().fold(0.0, |sum, term| sum * r + term);
        horner(&self.over) / horner(&self.under)
    }
}

// M. J. Wichura, Algorithm AS 241: the percentage points of the normal distribution, Applied Statistics 37 (1988), 477 to
// 484, routine PPND16: about 1 part in 10^16.

/// Within 0.425 of the middle.
const MIDDLE: Fit = Fit {
    over: [
        2.509_080_928_730_122_7e3,
        3.343_057_558_358_813e4,
        6.726_577_092_700_87e4,
        4.592_195_393_154_987e4,
        1.373_169_376_550_946e4,
        1.971_590_950_306_551_3e3,
        1.331_416_678_917_843_8e2,
        3.387_132_872_796_366_5,
    ],
    under: [
        5.226_495_278_852_854e3,
        2.872_908_573_572_194_3e4,
        3.930_789_580_009_271e4,
        2.121_379_430_158_659_7e4,
        5.394_196_021_424_751e3,
        6.871_870_074_920_579e2,
        4.231_333_070_160_091e1,
        1.0,
    ],
};

/// Down to a tail of 1.4e-11.
const SIDE: Fit = Fit {
    over: [
        7.745_450_142_783_414e-4,
        2.272_384_498_926_918_4e-2,
        2.417_807_251_774_506e-1,
        1.270_458_252_452_368_4,
        3.647_848_324_763_204_5,
        5.769_497_221_460_691,
        4.630_337_846_156_546,
        1.423_437_110_749_683_5,
    ],
    under: [
        1.050_750_071_644_416_9e-9,
        5.475_938_084_995_345e-4,
        1.519_866_656_361_645_7e-2,
        1.481_039_764_274_800_8e-1,
        6.897_673_349_851e-1,
        1.676_384_830_183_803_8,
        2.053_191_626_637_758_8,
        1.0,
    ],
};

/// The value of z that a share of the distribution lies below, for a share within 1e-9 and 1 - 1e-9.
pub(super) fn quantile(share: f64) -> f64 {
    let from_middle = share - 0.5;
    if from_middle.abs() <= 0.425 {
        return from_middle * MIDDLE.at(0.180_625 - from_middle * from_middle);
    }
    let tail = share.min(1.0 - share);
    let size = SIDE.at(libm::sqrt(-libm::log(tail)) - 1.6);
    libm::copysign(size, from_middle)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::arithmetic_side_effects)]

    use super::*;

    #[test]
    fn quantiles_as_in_printed_tables() {
        // M. Abramowitz, I. A. Stegun, Handbook of Mathematical Functions, table 26.5 (from memory; the same from a general
        // statistics library): tails and their z.
        for (tail, z) in [
            (0.1, 1.281_551_565_545),
            (0.05, 1.644_853_626_951),
            (0.025, 1.959_963_984_540),
            (0.01, 2.326_347_874_041),
            (0.001, 3.090_232_306_168),
            (1e-4, 3.719_016_485_456),
            (1e-9, 5.997_807_015_008),
        ] {
            assert!((quantile(tail) + z).abs() < 2e-12, "{tail}");
            // One less the tail is itself rounded.
            assert!((quantile(1.0 - tail) - z).abs() < 2e-8, "{tail}");
        }
        assert!(quantile(0.5).abs() < f64::EPSILON);
    }

    #[test]
    fn quantiles_invert_probabilities_across_the_seams() {
        let mut step = -5999_i32;
        while step < 6000 {
            let z = f64::from(step) / 1000.0;
            let (lower, upper) = (quantile(below(z)), -quantile(below(-z)));
            // The tail that is small is the one that is exact.
            let back = if z < 0.0 { lower } else { upper };
            assert!((back - z).abs() < 1e-13 * (1.0 + z.abs()), "{z}: {back}");
            step += 7;
        }
    }

    #[test]
    fn a_probability_between_is_kept_in_the_tails() {
        assert!((between(f64::NEG_INFINITY, f64::INFINITY) - 1.0).abs() < f64::EPSILON);
        assert!(between(30.0, f64::INFINITY) > 0.0);
        // Three standard deviations either side: 0.9973 (common practice; table 26.1 of the same handbook).
        assert!((between(-3.0, 3.0) - 0.9973).abs() < 1e-5);
    }
}
