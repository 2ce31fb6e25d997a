//! Unit names that were read before: a program converts between the same few over and over.

use brimline::{Error, Unit};
use std::sync::atomic::{AtomicU64, Ordering};

/// Short names with their units, each in the one slot its letters lead to; a newcomer takes the slot over.
static SLOTS: [AtomicU64; 256] = [const { AtomicU64::new(0) }; 256];
/// Above the number of every unit.
const CODES: u64 = 1 << 7;
/// Letters that fit beside that number.
const LETTERS: usize = 7;

/// The unit of a name.
#[inline]
pub(crate) fn unit(name: &str) -> Result<Unit, Error> {
    if name.len() > LETTERS {
        return Unit::parse(name);
    }
    // The leading 1 tells names of different lengths apart.
    let letters = name.bytes().fold(1, |key, letter| (key << 8) | u64::from(letter));
    let place = letters.wrapping_mul(0x9e37_79b9_7f4a_7c15) >> 56;
    let slot = &SLOTS[place as usize];
    let seen = slot.load(Ordering::Relaxed);
    if seen / CODES == letters
        && let Some(unit) = Unit::from_code((seen % CODES) as u16)
    {
        return Ok(unit);
    }
    let unit = Unit::parse(name)?;
    if u64::from(unit.code()) < CODES {
        slot.store(letters * CODES + u64::from(unit.code()), Ordering::Relaxed);
    }
    Ok(unit)
}
