//! Plain text in lines that an 80-column terminal holds.

use super::sentence::GLUE;
use alloc::string::String;

/// The longest line, in characters.
pub(super) const WIDTH: usize = 80;

/// Lines of text, top to bottom.
#[derive(Debug, Default)]
pub(super) struct Page(String);

impl Page {
    pub(super) const fn new() -> Self {
        Page(String::new())
    }

    /// A heading, with a line left free above it.
    pub(super) fn heading(&mut self, text: &str) {
        if !self.0.is_empty() {
            self.0.push('\n');
        }
        self.0.push_str(text);
        self.0.push('\n');
    }

    /// A text behind a label; lines that follow are set in as far as the label is wide.
    pub(super) fn put(&mut self, label: &str, text: &str) {
        let indent = label.chars().count();
        self.0.push_str(label);
        let mut column = indent;
        // What a host typed may hold line feeds and worse.
        for word in text.split(|letter: char| letter == ' ' || letter.is_control()) {
            if word.is_empty() {
                continue;
            }
            let width = word.chars().count();
            let starts = column == indent;
            if !starts && column.saturating_add(1).saturating_add(width) > WIDTH {
                self.0.push('\n');
                self.0.extend(core::iter::repeat_n(' ', indent));
                column = indent;
            } else if !starts {
                self.0.push(' ');
                column = column.saturating_add(1);
            }
            let letters = word
                .chars()
                .map(|letter| if letter == GLUE { ' ' } else { letter });
            self.0.extend(letters);
            column = column.saturating_add(width);
        }
        self.0.push('\n');
    }

    /// A line that is laid out already.
    pub(super) fn line(&mut self, text: &str) {
        self.0.push_str(text);
        self.0.push('\n');
    }

    pub(super) fn append(&mut self, other: Page) {
        if !self.0.is_empty() && !other.0.is_empty() {
            self.0.push('\n');
        }
        self.0.push_str(&other.0);
    }

    pub(super) fn into_text(self) -> String {
        self.0
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn long_text_is_set_in_under_its_label() {
        let mut page = Page::new();
        let word = "measured ".repeat(12);
        page.put("  1. ", &word);
        let text = page.into_text();
        assert!(text.lines().all(|line| line.chars().count() <= WIDTH));
        assert!(text.lines().count() == 2 && text.ends_with('\n'));
        assert!(
            text.lines()
                .nth(1)
                .is_some_and(|line| line.starts_with("     measured"))
        );
    }

    #[test]
    fn a_number_keeps_its_unit_and_typed_text_cannot_break_lines() {
        let mut page = Page::new();
        page.put(
            "",
            &alloc::format!("{}0.25\u{a0}L\u{1b}[1m\r\nx", "a ".repeat(38)),
        );
        let text = page.into_text();
        assert!(text.contains("\n0.25 L [1m x\n"), "{text:?}");
    }
}
