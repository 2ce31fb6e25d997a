//! Text of anybody's inside HTML or SVG: nothing in it is read as markup.

use super::sentence::GLUE;
use alloc::string::String;
use core::fmt::{self, Display, Write};

/// A text whose letters of meaning are written as entities. Controls, which XML forbids, become spaces.
pub(super) fn escaped(text: impl Display) -> String {
    let mut out = Escaped(String::new());
    // A string takes all that is written to it.
    let _ = write!(out, "{text}");
    out.0
}

struct Escaped(String);

impl Write for Escaped {
    fn write_str(&mut self, text: &str) -> fmt::Result {
        for letter in text.chars() {
            match letter {
                '&' => self.0.push_str("&amp;"),
                '<' => self.0.push_str("&lt;"),
                '>' => self.0.push_str("&gt;"),
                '"' => self.0.push_str("&quot;"),
                '\'' => self.0.push_str("&#39;"),
                // Marks that turn the direction of what follows would let a name rearrange a page.
                '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}' => {}
                '\u{fffe}' | '\u{ffff}' => {}
                GLUE => self.0.push(GLUE),
                letter if letter.is_control() => self.0.push(' '),
                letter => self.0.push(letter),
            }
        }
        Ok(())
    }
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
