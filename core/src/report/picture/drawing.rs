//! A drawing as SVG text: elements, their attributes, and numbers written the same on every machine.

use super::super::markup::{escaped, put_escaped};
use super::super::sentence::GLUE;
use alloc::format;
use alloc::string::{String, ToString};
use core::fmt::{self, Display};

/// A place or a size in the drawing, to a hundredth.
#[derive(Debug, Clone, Copy)]
pub(super) struct Px(pub(super) f64);

impl Display for Px {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let hundredths = libm::rint(self.0 * 100.0) as i64;
        let sign = if hundredths < 0 { "-" } else { "" };
        let size = hundredths.unsigned_abs();
        match (size / 100, size % 100) {
            (whole, 0) => write!(f, "{sign}{whole}"),
            (whole, part) if part % 10 == 0 => write!(f, "{sign}{whole}.{}", part / 10),
            (whole, part) => write!(f, "{sign}{whole}.{part:02}"),
        }
    }
}

/// The attributes of one element.
#[derive(Debug, Clone, Default)]
pub(super) struct Attributes(String);

impl Attributes {
    pub(super) fn class(class: &str) -> Self {
        Attributes::default().with("class", class)
    }

    pub(super) fn with(mut self, name: &str, value: impl Display) -> Self {
        self.0.extend([" ", name, "=\""]);
        put_escaped(&mut self.0, value);
        self.0.push('"');
        self
    }

    pub(super) fn with_some(self, name: &str, value: Option<impl Display>) -> Self {
        match value {
            Some(value) => self.with(name, value),
            None => self,
        }
    }
}

/// A drawing, element after element.
#[derive(Debug, Default)]
pub(super) struct Drawing(String);

impl Drawing {
    fn element(&mut self, name: &str, attributes: &Attributes, places: &[(&str, f64)]) {
        self.0.extend(["<", name, &attributes.0]);
        for (place, px) in places {
            self.0.extend([" ", place, "=\""]);
            put_escaped(&mut self.0, Px(*px));
            self.0.push('"');
        }
        self.0.push_str("/>");
    }

    pub(super) fn rect(&mut self, attributes: Attributes, [x, y]: [f64; 2], [w, h]: [f64; 2]) {
        let places = [("x", x), ("y", y), ("width", w), ("height", h)];
        self.element("rect", &attributes, &places);
    }

    pub(super) fn line(&mut self, attributes: Attributes, from: [f64; 2], to: [f64; 2]) {
        let ([x1, y1], [x2, y2]) = (from, to);
        let places = [("x1", x1), ("y1", y1), ("x2", x2), ("y2", y2)];
        self.element("line", &attributes, &places);
    }

    pub(super) fn circle(&mut self, attributes: Attributes, [cx, cy]: [f64; 2], r: f64) {
        self.element("circle", &attributes, &[("cx", cx), ("cy", cy), ("r", r)]);
    }

    /// Lines from point to point; a class that fills makes a shape of them.
    pub(super) fn path(&mut self, attributes: Attributes, points: &[[f64; 2]]) {
        let mut path = String::new();
        for (index, [x, y]) in points.iter().enumerate() {
            let step = if index == 0 { "M" } else { "L" };
            put_escaped(&mut path, format_args!("{step}{} {}", Px(*x), Px(*y)));
        }
        self.element("path", &attributes.with("d", path), &[]);
    }

    /// A text; `anchor` is `start`, `middle` or `end`.
    pub(super) fn text(&mut self, attributes: Attributes, at: [f64; 2], anchor: &str, text: &str) {
        let [x, y] = at;
        let attributes = attributes
            .with("x", Px(x))
            .with("y", Px(y))
            .with("text-anchor", anchor);
        self.0
            .extend(["<text", &attributes.0, ">", &plain(text), "</text>"]);
    }

    /// What belongs together, with words a pointer or a reader aloud tells.
    pub(super) fn group(
        &mut self,
        attributes: Attributes,
        words: &str,
        draw: impl FnOnce(&mut Drawing),
    ) {
        self.0.extend(["<g", &attributes.0, ">"]);
        if !words.is_empty() {
            self.0.extend(["<title>", &plain(words), "</title>"]);
        }
        draw(self);
        self.0.push_str("</g>");
    }

    /// The whole picture.
    pub(super) fn finish(self, id: &str, size: [f64; 2], title: &str, described: &str) -> String {
        let [width, height] = size.map(Px);
        let (title, described) = (plain(title), plain(described));
        let id = id.to_string();
        format!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"brim-picture\" id=\"brim-{id}\" \
             viewBox=\"0 0 {width} {height}\" role=\"img\" \
             aria-labelledby=\"brim-{id}-title brim-{id}-desc\">\
             <title id=\"brim-{id}-title\">{title}</title><desc id=\"brim-{id}-desc\">{described}</desc>{}</svg>",
            self.0
        )
    }
}

/// A text of at most so many letters; one that is longer ends in dots.
pub(super) fn clipped(text: &str, most: usize) -> String {
    let cut = text.char_indices().nth(most.saturating_sub(1));
    match cut.and_then(|(end, last)| Some((text.get(..end)?, text.get(end..)?, last))) {
        Some((kept, rest, last)) if rest.len() > last.len_utf8() => format!("{kept}…"),
        _ => text.into(),
    }
}

/// Lines do not break in a drawing, so nothing needs to be kept together.
fn plain(text: &str) -> String {
    escaped(text.replace(GLUE, " "))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_long_text_ends_in_dots() {
        assert_eq!(clipped("poured", 6), "poured");
        assert_eq!(clipped("poured in", 6), "poure…");
    }

    #[test]
    fn places_are_written_short() {
        let told = |px: f64| Px(px).to_string();
        assert_eq!([told(3.0), told(0.126), told(-0.001)], ["3", "0.13", "0"]);
        assert_eq!(told(100.0), "100");
    }
}
