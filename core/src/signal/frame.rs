//! The frame a heavy vehicle's transmission tells its fluid in.

use super::{Reading, State};
use crate::error::{Error, ErrorKind, Fault};
use crate::quantity::{Amount, Unit};
use crate::word::words;
use alloc::format;
use serde::Serialize;

/// The parameter group of the frame.
const GROUP: u32 = 65_272;

/// The largest identifier of 29 bits.
const LARGEST_ID: u32 = 0x1FFF_FFFF;

/// Raw temperatures, in 1/32 °C from −273 °C, a gearbox can have: −40 °C to 200 °C. Common practice, no source.
const PLAUSIBLE: core::ops::RangeInclusive<i64> = 233 * 32..=473 * 32;

words! {
    /// Whether the level was measured, and if not, what is in the way.
    pub enum LevelStatus {
        /// The conditions for measuring are met.
        ConditionsMet = "conditions_met",
        /// The fluid is still settling; the countdown tells how long.
        Settling = "settling",
        /// A range is engaged.
        InGear = "in_gear",
        /// The fluid is too cold.
        TooCold = "too_cold",
        /// The fluid is too hot.
        TooHot = "too_hot",
        /// The vehicle is moving.
        Moving = "moving",
        /// The vehicle does not stand level.
        NotLevel = "not_level",
        /// The engine turns too slowly.
        EngineTooSlow = "engine_too_slow",
        /// A code without a known meaning.
        Unknown = "unknown",
        /// The sender knows that the status is wrong.
        Error = "error",
        /// The sender has no status.
        NotAvailable = "not_available",
    }
}

/// The statuses by code; codes between the seventh and 14 are unknown. That the engine of code 7 is too slow, and codes 14
/// and 15, are from memory.
const STATUSES: [LevelStatus; 16] = [
    LevelStatus::ConditionsMet,
    LevelStatus::Settling,
    LevelStatus::InGear,
    LevelStatus::TooCold,
    LevelStatus::TooHot,
    LevelStatus::Moving,
    LevelStatus::NotLevel,
    LevelStatus::EngineTooSlow,
    LevelStatus::Unknown,
    LevelStatus::Unknown,
    LevelStatus::Unknown,
    LevelStatus::Unknown,
    LevelStatus::Unknown,
    LevelStatus::Unknown,
    LevelStatus::Error,
    LevelStatus::NotAvailable,
];

/// What the frame says of a transmission's fluid.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct Frame {
    /// Temperature of the fluid, in °C (SPN 177): plausible from −40 to 200 °C.
    pub temperature: Reading,
    /// Level as a share of full, in % (SPN 124).
    pub level: Reading,
    /// How far the level is from right, in L (SPN 3027): above zero too much, below too little.
    pub departure: Reading,
    /// Whether the level was measured (SPN 3026); a departure counts only where the conditions are met.
    pub status: LevelStatus,
    /// Minutes until the level will be measured (SPN 3028); 0 is less than one.
    pub countdown: Reading,
}

/// Reads the frame in which a heavy vehicle's transmission tells temperature, level and level status of its fluid: parameter
/// group 65272, eight bytes.
///
/// Codes for "error", "not available" and the like are told as such before anything is scaled; a temperature that is valid
/// by its code and impossible in a gearbox is `implausible`. The source address and priority in the identifier are not
/// looked at. Source: SAE J1939-71, PGN 65272 (FEF8h): bytes 5 and 6, low byte first, SPN 177; byte 2 SPN 124; byte 7 SPN
/// 3027; byte 8 low half SPN 3028, high half SPN 3026.
///
/// # Errors
///
/// [`OutOfRange`](ErrorKind::OutOfRange) for an identifier of more than 29 bits or of another parameter group, and for
/// anything but eight bytes.
///
/// ```
/// use brimline::signal::{LevelStatus, State, transmission_frame};
/// let frame = transmission_frame(0x18FEF8FE, &[0xFF, 0xFF, 0xFF, 0xFF, 0x20, 0x28, 0x7A, 0x20])?;
/// assert_eq!(frame.temperature.value.unwrap().to_string(), "48 °C");
/// assert_eq!(frame.departure.value.unwrap().to_string(), "-1.5 L");
/// assert_eq!(frame.level.state, State::NotAvailable);
/// assert_eq!(frame.status, LevelStatus::InGear);
/// # Ok::<(), brimline::Error>(())
/// ```
pub fn transmission_frame(id: u32, data: &[u8]) -> Result<Frame, Error> {
    if id > LARGEST_ID || (id >> 8) & 0x3_FFFF != GROUP {
        return Err(of_id(id));
    }
    let &[_, level, _, _, low, high, departure, last] = data else {
        let fault = Fault::new(ErrorKind::OutOfRange).at("data");
        let fault = fault.got(&format!("{} bytes", data.len()));
        return Err(fault.allowed(["8 bytes"]).into());
    };
    Ok(Frame {
        temperature: temperature(low, high)?,
        level: scaled(level, |raw| {
            Amount::trimmed(raw.saturating_mul(4), 1, Unit::Percent)
        })?,
        departure: scaled(departure, |raw| {
            let tenths = raw.saturating_mul(5).saturating_sub(625);
            Amount::trimmed(tenths, 1, Unit::Litre)
        })?,
        status: *STATUSES
            .get(usize::from(last >> 4))
            .unwrap_or(&LevelStatus::Unknown),
        countdown: match last & 0x0F {
            14 => Reading::none(State::Error),
            15 => Reading::none(State::NotAvailable),
            minutes => Reading::new(
                State::Valid,
                Amount::trimmed(minutes.into(), 0, Unit::Minute)?,
            ),
        },
    })
}

fn temperature(low: u8, high: u8) -> Result<Reading, Error> {
    let state = of_code(high);
    if state != State::Valid {
        return Ok(Reading::none(state));
    }
    let raw = i64::from(u16::from_le_bytes([low, high]));
    // A thirty-second of a degree is 0.03125.
    let over_zero = raw.saturating_sub(273 * 32);
    let value = Amount::trimmed(over_zero.saturating_mul(3_125), 5, Unit::DegreeCelsius)?;
    let state = if PLAUSIBLE.contains(&raw) {
        State::Valid
    } else {
        State::Implausible
    };
    Ok(Reading::new(state, value))
}

/// A parameter of one byte.
fn scaled(raw: u8, value: impl FnOnce(i64) -> Result<Amount, Error>) -> Result<Reading, Error> {
    match of_code(raw) {
        State::Valid => Ok(Reading::new(State::Valid, value(raw.into())?)),
        state => Ok(Reading::none(state)),
    }
}

/// What a parameter of one byte, or the high byte of a longer one, stands for. Source: SAE J1939-71, ranges of transmitted
/// values.
const fn of_code(high: u8) -> State {
    match high {
        ..=0xFA => State::Valid,
        0xFB => State::ParameterSpecific,
        0xFC..=0xFD => State::Reserved,
        0xFE => State::Error,
        0xFF => State::NotAvailable,
    }
}

fn of_id(id: u32) -> Error {
    let fault = Fault::new(ErrorKind::OutOfRange).at("id");
    let fault = fault.got(&format!("{id:08X}"));
    if id > LARGEST_ID {
        let hint = "an identifier has 29 bits: take the flags of the interface off";
        return fault.allowed(["0 to 1FFFFFFF"]).hint(hint).into();
    }
    let hint = format!(
        "this frame belongs to parameter group {}",
        (id >> 8) & 0x3_FFFF
    );
    fault
        .allowed(["parameter group 65272 (FEF8 hexadecimal)"])
        .hint(hint)
        .into()
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, clippy::indexing_slicing)]

    use super::*;
    use alloc::string::{String, ToString};

    const ID: u32 = 0x18FE_F8FE;
    const NOTHING: [u8; 8] = [0xFF; 8];

    fn told(reading: Reading) -> (State, String) {
        (
            reading.state,
            reading
                .value
                .map_or(String::new(), |value| value.to_string()),
        )
    }

    fn with(place: usize, byte: u8) -> Frame {
        let mut data = NOTHING;
        data[place] = byte;
        transmission_frame(ID, &data).unwrap()
    }

    fn at(raw: u16) -> (State, String) {
        let mut data = NOTHING;
        [data[4], data[5]] = raw.to_le_bytes();
        told(transmission_frame(ID, &data).unwrap().temperature)
    }

    #[test]
    fn frames_decoded_elsewhere() {
        // SAE J1939-71, PGN 65272; both frames decoded by cantools 45.1.0 as well.
        let data = [0xFF, 0xFF, 0xFF, 0xFF, 0x20, 0x28, 0x7A, 0x20];
        let frame = transmission_frame(ID, &data).unwrap();
        assert_eq!(told(frame.temperature), (State::Valid, "48 °C".into()));
        assert_eq!(told(frame.departure), (State::Valid, "-1.5 L".into()));
        assert_eq!(told(frame.countdown), (State::Valid, "0 min".into()));
        assert_eq!(told(frame.level), (State::NotAvailable, String::new()));
        assert_eq!(frame.status, LevelStatus::InGear);
        let data = [0xFF, 0xFA, 0xFF, 0xFF, 0x20, 0x27, 0x7E, 0x00];
        let frame = transmission_frame(ID, &data).unwrap();
        assert_eq!(told(frame.level), (State::Valid, "100 %".into()));
        assert_eq!(told(frame.temperature), (State::Valid, "40 °C".into()));
        assert_eq!(told(frame.departure), (State::Valid, "0.5 L".into()));
        assert_eq!(frame.status, LevelStatus::ConditionsMet);
    }

    #[test]
    fn temperatures() {
        // SAE J1939-71, SPN 177: 1/32 °C a bit from −273 °C.
        for (raw, expected) in [
            (0x24A0, "20 °C"),
            (0x2720, "40 °C"),
            (0x27C0, "45 °C"),
            (0x2860, "50 °C"),
            (0x2220, "0 °C"),
            (0x2221, "0.03125 °C"),
            (0x221F, "-0.03125 °C"),
            (0x1D20, "-40 °C"),
            (0x3B20, "200 °C"),
        ] {
            assert_eq!(at(raw), (State::Valid, expected.into()), "{raw:04X}");
        }
        // Valid by the code, and no gearbox: the value is kept.
        for (raw, expected) in [
            (0x0000, "-273 °C"),
            (0x1D1F, "-40.03125 °C"),
            (0x3B21, "200.03125 °C"),
            (0xFAFF, "1734.96875 °C"),
        ] {
            assert_eq!(at(raw), (State::Implausible, expected.into()), "{raw:04X}");
        }
        // The trap: high byte first, 45 °C would read as 1265 °C.
        assert_eq!(at(0xC027).0, State::Implausible);
    }

    #[test]
    fn codes_before_scaling() {
        // SAE J1939-71, ranges of two bytes and of one. Scaled, FE00 would be 1759 °C.
        for (codes, state) in [
            ([0xFB00, 0xFBFF], State::ParameterSpecific),
            ([0xFC00, 0xFDFF], State::Reserved),
            ([0xFE00, 0xFEFF], State::Error),
            ([0xFF00, 0xFFFF], State::NotAvailable),
        ] {
            for code in codes {
                assert_eq!(at(code), (state, String::new()), "{code:04X}");
                let high = code.to_be_bytes()[0];
                assert_eq!(told(with(1, high).level), (state, String::new()));
                assert_eq!(told(with(6, high).departure), (state, String::new()));
            }
        }
    }

    #[test]
    fn every_level_and_departure() {
        // SAE J1939-71, SPN 124: 0.4 % a bit. SPN 3027: 0.5 L a bit from −62.5 L.
        for raw in 0..=250_u8 {
            let level = with(1, raw).level.value.unwrap();
            assert_eq!(
                level,
                crate::quantity::Amount::new(i64::from(raw) * 4, 1, Unit::Percent).unwrap()
            );
            let departure = with(6, raw).departure.value.unwrap();
            assert_eq!(departure.to_f64(), f64::from(raw) * 0.5 - 62.5);
            assert_eq!(departure.is_negative(), raw < 125);
        }
        for (raw, expected) in [
            (0, "-62.5 L"),
            (122, "-1.5 L"),
            (124, "-0.5 L"),
            (125, "0 L"),
            (128, "1.5 L"),
            (250, "62.5 L"),
        ] {
            assert_eq!(
                told(with(6, raw).departure),
                (State::Valid, expected.into())
            );
        }
    }

    #[test]
    fn the_two_halves_of_the_last_byte() {
        // SAE J1939-71, SPN 3026 in the high half, SPN 3028 in the low one.
        let frame = with(7, 0x13);
        assert_eq!(frame.status, LevelStatus::Settling);
        assert_eq!(told(frame.countdown), (State::Valid, "3 min".into()));
        for (code, status) in [
            (0, "conditions_met"),
            (1, "settling"),
            (2, "in_gear"),
            (3, "too_cold"),
            (4, "too_hot"),
            (5, "moving"),
            (6, "not_level"),
            // From memory from here on.
            (7, "engine_too_slow"),
            (8, "unknown"),
            (13, "unknown"),
            (14, "error"),
            (15, "not_available"),
        ] {
            assert_eq!(with(7, code << 4).status.slug(), status);
        }
        assert_eq!(told(with(7, 13).countdown), (State::Valid, "13 min".into()));
        assert_eq!(told(with(7, 14).countdown), (State::Error, String::new()));
        assert_eq!(
            told(with(7, 15).countdown),
            (State::NotAvailable, String::new())
        );
    }

    #[test]
    fn other_frames_are_refused() {
        for (id, len, path) in [
            (0x18FE_F7FE, 8, "id"),
            (0x98FE_F8FE, 8, "id"),
            (0x19FE_F8FE, 8, "id"),
            (ID, 7, "data"),
            (ID, 0, "data"),
        ] {
            let error = transmission_frame(id, &NOTHING[..len]).unwrap_err();
            assert_eq!(
                (error.kind(), &*error.first().path),
                (ErrorKind::OutOfRange, path)
            );
        }
        assert!(transmission_frame(ID, &[0; 9]).is_err());
        // Any sender, any priority.
        assert!(transmission_frame(0x0CFE_F803, &NOTHING).is_ok());
    }
}
