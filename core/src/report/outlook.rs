//! When the window of temperature opens and closes, in words.

use super::sentence::{Given, duration};
use super::teller::Teller;
use crate::quantity::Rounding;
use crate::warm_up::{Outlook, Span};
use alloc::string::String;
use alloc::vec::Vec;

/// A forecast, sentence by sentence; never none.
pub(super) fn lines(teller: &Teller, outlook: &Outlook) -> Vec<String> {
    let say = |id, given: Given| teller.sentence("forecast", id, &given);
    let (opens, closes) = (outlook.opens, outlook.closes);
    if closes.is_some_and(|span| !span.is_ahead()) {
        return alloc::vec![say("closed", Given::nothing())];
    }
    let [asked_min, asked_max] = outlook.asked;
    // Without a lower limit it is open until it closes.
    let is_open = match opens {
        Some(span) => !span.is_ahead(),
        None => !asked_min && closes.is_some(),
    };
    let state = is_open.then(|| say("open", Given::nothing()));
    let opening = opens.filter(Span::is_ahead);
    let opening = opening.map(|span| waited(teller, &span, ["opens", "opens_from"]));
    let closing = closes.map(|span| waited(teller, &span, ["closes", "closes_from"]));
    let untold = match (opens, closes) {
        (None, _) if asked_min => Some("opens"),
        (_, None) if asked_max => Some("closes"),
        _ => None,
    };
    let why = outlook
        .reason
        .zip(untold)
        .map(|(reason, limit)| say(reason.slug(), Given::nothing().with("limit", limit)));
    let mut lines: Vec<String> = [state, opening, closing, why]
        .into_iter()
        .flatten()
        .collect();
    if lines.is_empty() {
        let given = Given::nothing().with_some("reading", outlook.now);
        lines.push(say("unasked", given));
    }
    lines
}

/// When something is still to come, by its message with a likely time or that without.
fn waited(teller: &Teller, span: &Span, [known, from]: [&'static str; 2]) -> String {
    let id = if span.likely.is_some() { known } else { from };
    let likely = span.likely.map(|at| duration(at, Rounding::HalfUp));
    let latest = span.latest.map(|at| duration(at, Rounding::Ceiling));
    let given = Given::nothing()
        .with_some("likely", likely)
        .with("earliest", duration(span.earliest, Rounding::Floor))
        .with_some("latest", latest);
    teller.sentence("forecast", id, &given)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]

    use super::*;
    use crate::quantity::Amount;
    use crate::warm_up::{Asked, Sample, forecast};

    /// One reading a minute.
    fn told(readings: &[&str], min: Option<&str>, max: Option<&str>) -> String {
        let minutes = (0..).zip(readings).map(|(minute, reading)| Sample {
            at: Amount::new(minute, 0, crate::quantity::Unit::Minute).unwrap(),
            reading: Amount::parse(reading).unwrap(),
        });
        let samples: Vec<Sample> = minutes.collect();
        let limit = |text: Option<&str>| text.map(|text| Amount::parse(text).unwrap());
        let asked = Asked {
            min: limit(min),
            max: limit(max),
            ..Asked::default()
        };
        crate::report::outlook(&forecast(&samples, &[], asked).unwrap())
    }

    #[test]
    fn a_window_that_is_open_is_said_to_be() {
        let open = told(&["40 °C"], Some("35 °C"), Some("45 °C"));
        let few = "There are too few readings yet to say when the window closes.";
        assert_eq!(open, alloc::format!("The window is open. {few}"));
        let alone = told(&["40 °C"], Some("35 °C"), None);
        assert_eq!(alone, "The window is open.");
        let falling = ["40 °C", "39 °C", "38 °C"];
        let open = told(&falling, Some("35 °C"), Some("45 °C"));
        let still = "The readings do not rise, so nothing says when the window closes.";
        assert_eq!(open, alloc::format!("The window is open. {still}"));
        let upper = told(&["30 °C", "32 °C", "34 °C"], None, Some("37 °C"));
        assert_eq!(
            upper,
            "The window is open. It should close in 90 s, at the earliest in 60 s."
        );
    }

    #[test]
    fn a_window_that_is_past_is_said_to_be_closed() {
        let closed = "The fluid is too warm: the window is closed.";
        assert_eq!(told(&["50 °C"], Some("35 °C"), Some("45 °C")), closed);
        assert_eq!(told(&["50 °C"], None, Some("45 °C")), closed);
        let rising = ["50 °C", "51 °C", "52 °C"];
        assert_eq!(told(&rising, Some("35 °C"), Some("45 °C")), closed);
    }

    #[test]
    fn a_reason_names_the_limit_it_is_about() {
        let few = |when| alloc::format!("There are too few readings yet to say when {when}.");
        let window = told(&["20 °C"], Some("35 °C"), Some("45 °C"));
        assert_eq!(window, few("the window opens"));
        assert_eq!(
            told(&["20 °C"], None, Some("45 °C")),
            few("the window closes")
        );
        // Three tell a line, and nothing is left to give a reason for.
        let line = told(&["20 °C", "22 °C", "24 °C"], Some("27 °C"), None);
        assert_eq!(
            line,
            "The window should open in 90 s, at the earliest in 60 s."
        );
    }

    #[test]
    fn no_text_is_empty() {
        assert_eq!(told(&[], None, None), "No window was asked about.");
        let reading = told(&["20 °C"], None, None);
        assert_eq!(
            reading,
            "No window was asked about: the fluid is at 20.00 °C."
        );
    }
}
