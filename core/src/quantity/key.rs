//! The normal form of a unit's name.
//!
//! Dots, spaces, hyphens, stars and brackets between words are one `.`, `°` is `deg`, `Δ` is `delta`, and raised
//! digits are plain ones: `N·m`, `N m`, `N*m` and `N-m` are all `N.m`.

/// FNV-1a over small letters.
pub(super) const fn hash(mut bytes: &[u8]) -> usize {
    let mut hash = FIRST;
    while let Some((byte, rest)) = bytes.split_first() {
        hash = hashed(hash, *byte);
        bytes = rest;
    }
    spread(hash)
}

const FIRST: u32 = 0x811c_9dc5;

const fn hashed(hash: u32, byte: u8) -> u32 {
    (hash ^ byte.to_ascii_lowercase() as u32).wrapping_mul(0x0100_0193)
}

/// The lower bits, which pick a place in a table, take in the upper ones.
const fn spread(hash: u32) -> usize {
    (hash ^ (hash >> 15)) as usize
}

/// A text in normal form.
pub(super) struct Key {
    bytes: [u8; 40],
    len: usize,
    hash: u32,
}

impl Key {
    pub(super) const EMPTY: Key = Key {
        bytes: [0; 40],
        len: 0,
        hash: FIRST,
    };

    /// Takes in a text; `None` where it holds a sign no unit has, or is longer than any unit's name.
    ///
    /// The key is filled where it lies: moved, it would be read before its bytes have settled.
    #[inline(always)]
    pub(super) fn fill(&mut self, text: &str) -> Option<()> {
        let (mut gap, mut rest) = (false, text);
        while let Some(sign) = rest.chars().next() {
            let letters = rest.bytes().position(|byte| !byte.is_ascii_alphanumeric());
            let (word, after) = rest.split_at_checked(letters.unwrap_or(rest.len()))?;
            if !word.is_empty() {
                self.separate(gap)?;
                self.extend(word.as_bytes())?;
                (gap, rest) = (false, after);
                continue;
            }
            rest = rest.get(sign.len_utf8()..)?;
            let word: &[u8] = match sign {
                '.' | '-' | '*' | '(' | ')' | ' ' | '·' | '⋅' | '∙' | '•' | '×' | '‑' => {
                    gap = true;
                    continue;
                }
                '/' | '⁄' | '∕' => {
                    self.push(b'/')?;
                    gap = false;
                    continue;
                }
                '°' | 'º' | '˚' => b"deg",
                'Δ' | '∆' => b"delta",
                '²' => b"2",
                '³' => b"3",
                'ℓ' => b"l",
                '℃' => b"degC",
                '℉' => b"degF",
                '%' => b"%",
                '^' => b"",
                _ if sign.is_whitespace() => {
                    gap = true;
                    continue;
                }
                _ => return None,
            };
            self.separate(gap)?;
            gap = false;
            self.extend(word)?;
        }
        Some(())
    }

    #[inline(always)]
    fn extend(&mut self, word: &[u8]) -> Option<()> {
        let end = self.len.wrapping_add(word.len());
        let room = self.bytes.get_mut(self.len..end)?;
        for (place, byte) in room.iter_mut().zip(word) {
            *place = *byte;
            self.hash = hashed(self.hash, *byte);
        }
        self.len = end;
        Some(())
    }

    /// Sets words apart, but not at the start and not from a stroke.
    fn separate(&mut self, gap: bool) -> Option<()> {
        if gap && !matches!(self.as_bytes().last(), None | Some(b'/')) {
            self.push(b'.')
        } else {
            Some(())
        }
    }

    #[inline(always)]
    fn push(&mut self, byte: u8) -> Option<()> {
        *self.bytes.get_mut(self.len)? = byte;
        self.len = self.len.wrapping_add(1);
        self.hash = hashed(self.hash, byte);
        Some(())
    }

    /// The hash of the name so far.
    pub(super) fn hash(&self) -> usize {
        spread(self.hash)
    }

    pub(super) fn as_bytes(&self) -> &[u8] {
        self.bytes.get(..self.len).unwrap_or_default()
    }
}
