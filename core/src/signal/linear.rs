//! One number in a row of bytes: where it stands, and what a bit of it is worth.

use super::{Reading, State};
use crate::error::{Error, ErrorKind, Fault};
use crate::quantity::{Amount, Unit};
use crate::word::words;
use alloc::format;

words! {
    /// Which byte of a number comes first.
    pub enum ByteOrder {
        /// The low byte first; the number starts at its lowest bit.
        Little = "little",
        /// The high byte first; the number starts at its highest bit.
        Big = "big",
    }
}

/// Where a number stands in a row of bytes, and what it is worth: offset + number · scale.
///
/// Bits are counted from 0, the lowest bit of the first byte, eight to a byte: bit 7 is the highest of the first byte, bit
/// 8 the lowest of the second. This is how the common databases of network signals count.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Linear {
    /// The bit it starts at: its lowest for `little`, its highest for `big`.
    pub start: u32,
    /// How many bits it has, 1 to 64.
    pub length: u32,
    /// Which byte of it comes first.
    pub order: ByteOrder,
    /// Whether its highest bit counts below zero (two's complement).
    pub signed: bool,
    /// The unit of the answer.
    pub unit: Unit,
    /// What one step is worth: of the unit's kind (for a temperature, a difference), not zero.
    pub scale: Amount,
    /// What the number 0 stands for, of the unit's kind; nothing where it is left out.
    pub offset: Option<Amount>,
    /// The least value that is valid, of the unit's kind.
    pub min: Option<Amount>,
    /// The greatest value that is valid, of the unit's kind.
    pub max: Option<Amount>,
}

/// Reads one number from a row of bytes, exactly.
///
/// `valid` from `min` to `max`, both included, `implausible` outside; the value is told in either case. Codes that stand
/// for no value are for the caller to exclude by `min` and `max`. The answer is in the layout's unit, exact to nine
/// decimals or refused. Common practice, no source.
///
/// # Errors
///
/// [`OutOfRange`](ErrorKind::OutOfRange) for a number that does not lie within the data, a length outside 1 to 64, a scale of
/// zero, a value past the digits of an amount; [`WrongKind`](ErrorKind::WrongKind);
/// [`TooManyDigits`](ErrorKind::TooManyDigits) where the value does not end in the unit.
///
/// ```
/// use brimline::{Amount, Unit, signal::{ByteOrder, Linear, linear}};
/// // A temperature as SAE J1979 sends it: one byte, 1 °C a step from -40 °C.
/// let layout = Linear {
///     start: 0,
///     length: 8,
///     order: ByteOrder::Little,
///     signed: false,
///     unit: Unit::DegreeCelsius,
///     scale: Amount::parse("1 Δ°C")?,
///     offset: Some(Amount::parse("-40 °C")?),
///     min: None,
///     max: None,
/// };
/// assert_eq!(linear(&[123], &layout)?.value.unwrap().to_string(), "83 °C");
/// # Ok::<(), brimline::Error>(())
/// ```
pub fn linear(data: &[u8], layout: &Linear) -> Result<Reading, Error> {
    let number = layout.number(data)?;
    let of = |member: &'static str| {
        move |error: Error| Error::from(error.first().clone().at(format!("layout.{member}")))
    };
    if layout.scale.is_zero() {
        let fault = Fault::new(ErrorKind::OutOfRange).got(&format!("{}", layout.scale));
        let fault = fault.hint("a step is worth something, above zero or below");
        return Err(of("scale")(fault.into()));
    }
    let offset = match layout.offset {
        Some(offset) => offset,
        None => Amount::new(0, 0, layout.unit)?,
    };
    let worth = layout.scale.times(number).map_err(of("scale"))?;
    let sum = offset.checked_add(worth).map_err(of("scale"))?;
    let value = if sum.unit() == layout.unit {
        Amount::trimmed(sum.mantissa(), sum.decimals(), sum.unit())?
    } else {
        in_unit(sum, layout.unit)?
    };
    let least = layout.min.map(|min| value.compare(&min).map_err(of("min")));
    let most = layout.max.map(|max| value.compare(&max).map_err(of("max")));
    let within = least.transpose()?.is_none_or(|order| order.is_ge())
        && most.transpose()?.is_none_or(|order| order.is_le());
    let state = if within {
        State::Valid
    } else {
        State::Implausible
    };
    Ok(Reading::new(state, value))
}

/// A value in the unit of the answer, exactly.
fn in_unit(value: Amount, unit: Unit) -> Result<Amount, Error> {
    value.to_exact(unit).ok_or_else(|| {
        let kind = if value.kind() == unit.kind() {
            ErrorKind::TooManyDigits
        } else {
            ErrorKind::WrongKind
        };
        let fault = Fault::new(kind).at("layout.unit").got(unit.symbol());
        let hint = "give scale and offset in the unit of the answer";
        fault.allowed([value.unit().symbol()]).hint(hint).into()
    })
}

impl Linear {
    /// The number as it stands in the data.
    fn number(&self, data: &[u8]) -> Result<i64, Error> {
        let refused = |member: &str, got: u32| {
            let fault = Fault::new(ErrorKind::OutOfRange).at(format!("layout.{member}"));
            fault.got(&format!("{got}"))
        };
        let Some(spare) = 64_u32.checked_sub(self.length).filter(|spare| *spare < 64) else {
            return Err(refused("length", self.length).allowed(["1 to 64"]).into());
        };
        let lowest_first = self.order == ByteOrder::Little;
        // From the highest bit down.
        let mut place = if lowest_first {
            self.start.saturating_add(self.length).saturating_sub(1)
        } else {
            self.start
        };
        let mut raw = 0_u64;
        for _ in 0..self.length {
            let Some(byte) = data.get(place as usize / 8) else {
                let bits = data.len().saturating_mul(8);
                let hint = format!("the data has {bits} bits, and the number goes past them");
                return Err(refused("start", self.start).hint(hint).into());
            };
            raw = raw << 1 | u64::from(byte >> (place % 8) & 1);
            place = match place.checked_rem(8) {
                Some(0) if !lowest_first => place.saturating_add(15),
                _ => place.saturating_sub(1),
            };
        }
        if self.signed {
            return Ok((raw << spare).cast_signed() >> spare);
        }
        i64::try_from(raw).map_err(|_| {
            let hint = "a number above 9223372036854775807 is past every amount";
            refused("length", self.length).hint(hint).into()
        })
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]

    use super::*;
    use alloc::string::ToString;

    fn amount(text: &str) -> Amount {
        Amount::parse(text).unwrap()
    }

    /// So many steps of 1 mL.
    fn steps(start: u32, length: u32, order: ByteOrder, signed: bool) -> Linear {
        Linear {
            start,
            length,
            order,
            signed,
            unit: Unit::Millilitre,
            scale: amount("1 mL"),
            offset: None,
            min: None,
            max: None,
        }
    }

    fn number(data: &[u8], layout: &Linear) -> i64 {
        linear(data, layout).unwrap().value.unwrap().mantissa()
    }

    #[test]
    fn both_orders_and_odd_places() {
        // Worked by hand from the counting of bits: 12 34 56 78 hexadecimal.
        let data = [0x12, 0x34, 0x56, 0x78];
        let (little, big) = (ByteOrder::Little, ByteOrder::Big);
        for (start, length, order, expected) in [
            (0, 8, little, 0x12),
            (7, 8, big, 0x12),
            (0, 16, little, 0x3412),
            (7, 16, big, 0x1234),
            (8, 24, little, 0x78_5634),
            (15, 24, big, 0x34_5678),
            (4, 8, little, 0x41),
            (3, 8, big, 0x23),
            (0, 32, little, 0x7856_3412),
            (7, 32, big, 0x1234_5678),
            (4, 1, little, 1),
            (4, 1, big, 1),
            (0, 1, little, 0),
        ] {
            let layout = steps(start, length, order, false);
            assert_eq!(
                number(&data, &layout),
                expected,
                "{start} {length} {order:?}"
            );
        }
    }

    #[test]
    fn signs() {
        let all = [0xFF; 8];
        for (length, signed, expected) in [
            (8, false, 255),
            (8, true, -1),
            (64, true, -1),
            (1, true, -1),
        ] {
            assert_eq!(
                number(&all, &steps(0, length, ByteOrder::Little, signed)),
                expected
            );
        }
        assert_eq!(number(&[0x80], &steps(0, 8, ByteOrder::Little, true)), -128);
        assert_eq!(number(&[0x7F], &steps(7, 8, ByteOrder::Big, true)), 127);
        let error = linear(&all, &steps(0, 64, ByteOrder::Little, false)).unwrap_err();
        assert_eq!(error.kind(), ErrorKind::OutOfRange);
    }

    fn coolant() -> Linear {
        Linear {
            unit: Unit::DegreeCelsius,
            scale: amount("1 Δ°C"),
            offset: Some(amount("-40 °C")),
            ..steps(0, 8, ByteOrder::Little, false)
        }
    }

    #[test]
    fn a_temperature_of_one_byte() {
        // SAE J1979, service 01, parameter 05: A − 40, −40 to 215 °C.
        for (raw, expected) in [(0, "-40 °C"), (123, "83 °C"), (255, "215 °C")] {
            let reading = linear(&[raw], &coolant()).unwrap();
            assert_eq!(reading.value.unwrap().to_string(), expected);
        }
        // The same, told in °F and offset in °F: 83 °C is 181.4 °F.
        let layout = Linear {
            unit: Unit::DegreeFahrenheit,
            offset: Some(amount("-40 °F")),
            ..coolant()
        };
        assert_eq!(
            linear(&[123], &layout).unwrap().value.unwrap().to_string(),
            "181.4 °F"
        );
        let layout = Linear {
            unit: Unit::DegreeFahrenheit,
            ..coolant()
        };
        assert_eq!(
            linear(&[123], &layout).unwrap().value.unwrap().to_string(),
            "181.4 °F"
        );
    }

    #[test]
    fn a_heavy_vehicle_temperature_by_its_layout() {
        // SAE J1939-71, SPN 177: 0.03125 °C a bit from −273 °C, valid up to 1734.96875 °C.
        let layout = Linear {
            length: 16,
            scale: amount("0.03125 Δ°C"),
            offset: Some(amount("-273 °C")),
            max: Some(amount("1734.96875 °C")),
            ..coolant()
        };
        for (data, state, expected) in [
            ([0xA0, 0x24], State::Valid, "20 °C"),
            ([0xFF, 0xFA], State::Valid, "1734.96875 °C"),
            ([0x00, 0xFE], State::Implausible, "1759 °C"),
        ] {
            let reading = linear(&data, &layout).unwrap();
            assert_eq!(
                (reading.state, reading.value.unwrap().to_string()),
                (state, expected.into())
            );
        }
    }

    #[test]
    fn refused_with_the_place() {
        let data = [0; 2];
        let little = steps(0, 8, ByteOrder::Little, false);
        let out = ErrorKind::OutOfRange;
        for (layout, kind, path) in [
            (Linear { start: 9, ..little }, out, "layout.start"),
            (
                Linear {
                    start: u32::MAX,
                    ..little
                },
                out,
                "layout.start",
            ),
            (
                Linear {
                    start: 8,
                    length: 9,
                    order: ByteOrder::Big,
                    ..little
                },
                out,
                "layout.start",
            ),
            (
                Linear {
                    length: 0,
                    ..little
                },
                out,
                "layout.length",
            ),
            (
                Linear {
                    length: 65,
                    ..little
                },
                out,
                "layout.length",
            ),
            (
                Linear {
                    length: u32::MAX,
                    ..little
                },
                out,
                "layout.length",
            ),
            (
                Linear {
                    scale: amount("0 mL"),
                    ..little
                },
                out,
                "layout.scale",
            ),
            (
                Linear {
                    scale: amount("1 °C"),
                    ..little
                },
                ErrorKind::WrongKind,
                "layout.scale",
            ),
            (
                Linear {
                    offset: Some(amount("1 kg")),
                    ..little
                },
                ErrorKind::WrongKind,
                "layout.scale",
            ),
            (
                Linear {
                    min: Some(amount("1 kg")),
                    ..little
                },
                ErrorKind::WrongKind,
                "layout.min",
            ),
            (
                Linear {
                    max: Some(amount("1 kg")),
                    ..little
                },
                ErrorKind::WrongKind,
                "layout.max",
            ),
            (
                Linear {
                    offset: Some(amount("1 L")),
                    scale: amount("1 L"),
                    unit: Unit::Kilogram,
                    ..little
                },
                ErrorKind::WrongKind,
                "layout.unit",
            ),
            (
                Linear {
                    offset: Some(amount("1 L")),
                    unit: Unit::UsQuart,
                    ..little
                },
                ErrorKind::TooManyDigits,
                "layout.unit",
            ),
        ] {
            let error = linear(&data, &layout).unwrap_err();
            assert_eq!(
                (error.kind(), &*error.first().path),
                (kind, path),
                "{layout:?}"
            );
        }
    }
}
