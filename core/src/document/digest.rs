//! The digest of a canonical document.

use alloc::string::String;
use sha2::{Digest, Sha256};

/// SHA-256 (FIPS 180-4) of a text's bytes, in lower-case hexadecimal.
///
/// ```
/// // FIPS 180-2, appendix B.1: the message of one block.
/// assert_eq!(
///     brimline::document::digest("abc"),
///     "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"
/// );
/// ```
#[must_use]
pub fn digest(text: &str) -> String {
    digest_of([text])
}

/// The digest of a text that lies in pieces.
pub(crate) fn digest_of<'t>(pieces: impl IntoIterator<Item = &'t str>) -> String {
    const HEX: [char; 16] = [
        '0', '1', '2', '3', '4', '5', '6', '7', '8', '9', 'a', 'b', 'c', 'd', 'e', 'f',
    ];
    let nibble = |value: u8| HEX.get(usize::from(value)).copied().unwrap_or('0');
    let mut hash = Sha256::new();
    for piece in pieces {
        hash.update(piece.as_bytes());
    }
    let mut out = String::with_capacity(64);
    for byte in hash.finalize() {
        out.push(nibble(byte >> 4));
        out.push(nibble(byte & 0x0f));
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    // FIPS 180-2, appendix B.1 to B.3 (one block, two blocks, the long message; FIPS 180-4 names them as its examples), and
    // the message of length 0 of NIST's SHA256ShortMsg vectors. Digests from memory, the same in Python's hashlib.
    #[test]
    fn the_published_messages_have_their_published_digests() {
        let million = "a".repeat(1_000_000);
        let cases = [
            (
                "",
                "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855",
            ),
            (
                "abc",
                "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad",
            ),
            (
                "abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq",
                "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1",
            ),
            (
                &million,
                "cdc76e5c9914fb9281a1c7e284d73e67f1809a48a497200e046d39ccc7112cd0",
            ),
        ];
        for (message, published) in cases {
            assert_eq!(digest(message), published);
        }
        let (head, tail) = million.split_at(777_777);
        assert_eq!(digest_of([head, "", tail]), digest(&million));
    }
}
