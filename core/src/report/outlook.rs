//! When the window of temperature opens and closes, in words.

use super::sentence::{GLUE, Given, duration, sentence};
use crate::quantity::Rounding;
use crate::warm_up::{Outlook, Span};
use alloc::string::String;
use alloc::vec::Vec;

/// A forecast in one sentence or a few, counted from the last reading or pour.
///
/// ```
/// use brimline::{Amount, report, warm_up::{Asked, Sample, forecast}};
/// let mut samples = Vec::new();
/// for (minute, reading) in ["30 °C", "32 °C", "34 °C"].into_iter().enumerate() {
///     samples.push(Sample { at: Amount::parse(&format!("{minute} min"))?, reading: Amount::parse(reading)? });
/// }
/// let asked = Asked { min: Some(Amount::parse("40 °C")?), ..Asked::default() };
/// let told = report::outlook(&forecast(&samples, &[], asked)?);
/// assert!(told.starts_with("The window should open in 3 min"));
/// # Ok::<(), brimline::Error>(())
/// ```
#[must_use]
pub fn outlook(outlook: &Outlook) -> String {
    lines(outlook).join(" ").replace(GLUE, " ")
}

/// The same, sentence by sentence.
pub(super) fn lines(outlook: &Outlook) -> Vec<String> {
    let spans = [
        (outlook.opens, "opens", "opens_from"),
        (outlook.closes, "closes", "closes_from"),
    ];
    let waited_for = spans.iter().filter_map(|(span, known, from)| {
        let span = (*span).filter(waits)?;
        let id = if span.likely.is_some() { known } else { from };
        let given = Given::nothing()
            .with_some(
                "likely",
                span.likely.map(|at| duration(at, Rounding::HalfUp)),
            )
            .with("earliest", duration(span.earliest, Rounding::Floor))
            .with_some(
                "latest",
                span.latest.map(|at| duration(at, Rounding::Ceiling)),
            );
        Some(sentence("forecast", id, &given))
    });
    let why = outlook
        .reason
        .filter(|_| outlook.opens.is_none() || outlook.closes.is_none());
    let why = why.map(|reason| sentence("forecast", reason.slug(), &Given::nothing()));
    waited_for.chain(why).collect()
}

/// Whether it is still to come.
fn waits(span: &Span) -> bool {
    span.latest.is_none_or(|latest| !latest.is_zero())
}
