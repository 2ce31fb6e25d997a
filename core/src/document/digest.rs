//! The digest of a canonical document.

use alloc::string::String;
use sha2::{Digest, Sha256};

/// SHA-256 (FIPS 180-4) of a text's bytes, in lower-case hexadecimal.
///
/// ```
/// // FIPS 180-4 example, one block message.
/// assert_eq!(
///     brimline::document::digest("abc"),
///     "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"
/// );
/// ```
#[must_use]
pub fn digest(text: &str) -> String {
    const HEX: [char; 16] = [
        '0', '1', '2', '3', '4', '5', '6', '7', '8', '9', 'a', 'b', 'c', 'd', 'e', 'f',
    ];
    let nibble = |value: u8| HEX.get(usize::from(value)).copied().unwrap_or('0');
    let mut out = String::with_capacity(64);
    for byte in Sha256::digest(text.as_bytes()) {
        out.push(nibble(byte >> 4));
        out.push(nibble(byte & 0x0f));
    }
    out
}
