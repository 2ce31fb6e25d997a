//! Unit names that were read before: a program converts between the same few over and over.

use crate::border::caught;
use brimline::{Error, Unit};
use std::sync::atomic::{AtomicU64, Ordering};

/// Short names with their units, each in the one slot its bytes lead to; a newcomer takes the slot over.
static SLOTS: [AtomicU64; 256] = [const { AtomicU64::new(0) }; 256];

/// The unit of a name.
#[inline]
pub(crate) fn unit(name: &str) -> Result<Unit, Error> {
    let Some(bytes) = packed(name.as_bytes()) else {
        return caught(|| Unit::parse(name));
    };
    let place = bytes.wrapping_mul(0x9e37_79b9_7f4a_7c15) >> 56;
    let slot = &SLOTS[place as usize];
    let seen = slot.load(Ordering::Relaxed);
    // The lowest byte is the unit's number.
    match Unit::from_code((seen & 0xff) as u16) {
        Some(unit) if seen & !0xff == bytes => Ok(unit),
        _ => read(name, bytes, slot),
    }
}

#[cold]
fn read(name: &str, bytes: u64, slot: &AtomicU64) -> Result<Unit, Error> {
    let unit = caught(|| Unit::parse(name))?;
    if let Ok(code) = u8::try_from(unit.code()) {
        slot.store(bytes | u64::from(code), Ordering::Relaxed);
    }
    Ok(unit)
}

/// The bytes of a short name above a free one; the rest are filled with a byte that no text has.
#[inline]
fn packed(name: &[u8]) -> Option<u64> {
    const NO: u8 = 0xff;
    let bytes = match *name {
        [a] => [0, a, NO, NO, NO, NO, NO, NO],
        [a, b] => [0, a, b, NO, NO, NO, NO, NO],
        [a, b, c] => [0, a, b, c, NO, NO, NO, NO],
        [a, b, c, d] => [0, a, b, c, d, NO, NO, NO],
        [a, b, c, d, e] => [0, a, b, c, d, e, NO, NO],
        [a, b, c, d, e, f] => [0, a, b, c, d, e, f, NO],
        [a, b, c, d, e, f, g] => [0, a, b, c, d, e, f, g],
        _ => return None,
    };
    Some(u64::from_le_bytes(bytes))
}
