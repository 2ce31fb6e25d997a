//! Text of anybody's inside HTML or SVG: nothing in it is read as markup.

use alloc::string::String;
use core::fmt::{Display, Write};

/// A text whose letters of meaning are written as entities. Controls, which XML forbids, become spaces.
pub(super) fn escaped(text: impl Display) -> String {
    let mut out = String::new();
    put_escaped(&mut out, text);
    out
}

/// The same, behind what is there already.
pub(super) fn put_escaped(out: &mut String, text: impl Display) {
    let before = out.len();
    // A string takes all that is written to it.
    let _ = write!(out, "{text}");
    let Some(put) = out.get(before..).filter(|put| !put.bytes().all(is_plain)) else {
        return;
    };
    let put = String::from(put);
    out.truncate(before);
    for letter in put.chars() {
        match letter {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            '\'' => out.push_str("&#39;"),
            // Marks that turn the direction of what follows would let a name rearrange a page.
            '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}' => {}
            '\u{fffe}' | '\u{ffff}' => {}
            letter if letter.is_control() => out.push(' '),
            letter => out.push(letter),
        }
    }
}

/// Most texts are of such letters only.
const fn is_plain(byte: u8) -> bool {
    matches!(byte, b' '..=b'~') && !matches!(byte, b'&' | b'<' | b'>' | b'"' | b'\'')
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_text_is_read_as_markup() {
        let typed = "<script>alert('x')</script> & \"y\"\u{1b}[1m\u{202e}z\n";
        let told = "&lt;script&gt;alert(&#39;x&#39;)&lt;/script&gt; &amp; &quot;y&quot; [1mz ";
        assert_eq!(escaped(typed), told);
    }
}
