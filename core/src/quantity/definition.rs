//! Sizes by definition, in the quanta of their kinds (see `Kind`).

pub(super) const MILLILITRE: u64 = 10_000_000_000;
pub(super) const CUBIC_INCH: u64 = 254 * 254 * 254 * 10_000; // 1 in = 25.4 mm
pub(super) const US_GALLON: u64 = 231 * CUBIC_INCH;
pub(super) const IMPERIAL_GALLON: u64 = 454_609 * MILLILITRE / 100;
pub(super) const NEWTON_METRE: u64 = 160_000_000_000_000_000;
pub(super) const KILOGRAM_FORCE_METRE: u64 = NEWTON_METRE / 100_000 * 980_665; // gn = 9.80665 m/s²
pub(super) const NEWTON: u64 = 10_000_000_000_000;
pub(super) const POUND_FORCE_E_13: u64 = POUND * 980_665; // in 1e-13 N
pub(super) const POUND_FORCE_FOOT: u64 = POUND_FORCE_E_13 * 16 * 3_048 / 10;
pub(super) const POUND: u64 = 45_359_237; // 0.45359237 kg
pub(super) const INCH: u64 = 254_000;
pub(super) const SQUARE_INCH: u64 = 254 * 254;
pub(super) const PASCAL: u64 = 20_000 * SQUARE_INCH;
pub(super) const POUND_PER_SQUARE_INCH: u64 = POUND_FORCE_E_13 / 5;
// From absolute zero, in 1/9e9 K: 273.15 K and 459.67 °F, the °F of 5/9 K.
pub(super) const CELSIUS_ZERO: i64 = 27_315 * 9 * 10_000_000;
pub(super) const FAHRENHEIT_ZERO: i64 = 45_967 * 5 * 10_000_000;
