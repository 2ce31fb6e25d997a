//! One result, told.

use super::cautions::Cautions;
use super::known::told;
use super::outlook;
use super::page::Page;
use super::sentence::Given;
use super::sheet::{identity, leak_limit};
use super::teller::Teller;
use crate::check::{BySheet, Certainty, Evaluation, Finding, Flip, Reason, Verdict};
use crate::procedure::Act;
use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

/// The result of a check in plain English lines of at most 80 columns: the sheet, the verdict, what is known,
/// the leak reading, why, what would turn it (where that was asked for), what is not proven, findings, next acts,
/// what may be done now, and every caution in full.
///
/// ```
/// let pack = brimline::Pack::embedded()?;
/// let journal = r#"{"format":"brimline-journal/1","procedure":"pipit-level","job":"check","entries":[]}"#;
/// let told = brimline::report::text(&brimline::evaluate(&pack, journal)?);
/// assert!(told.contains("Not finished") && told.contains("Cautions"));
/// # Ok::<(), brimline::Error>(())
/// ```
#[must_use]
pub fn text(evaluation: &Evaluation) -> String {
    Teller::english().text(evaluation)
}

impl Teller {
    /// The result of a check in plain lines of at most 80 columns: the sheet, the verdict, what is known, the leak
    /// reading, why, what would turn it (where that was asked for), what is not proven, findings, next acts, what may
    /// be done now, and every caution in full.
    #[must_use]
    pub fn text(&self, evaluation: &Evaluation) -> String {
        let mut page = Page::new();
        let mut cautions = Cautions::on(self, evaluation.sheet());
        cautions.need(evaluation.cautions());
        heading(self, &mut page, "sheet");
        let (named, sheet) = (evaluation.procedure(), evaluation.sheet());
        identity(self, &mut page, "  ", named, sheet);
        answer(self, &mut page, evaluation, &mut cautions);
        gates(self, &mut page, evaluation);
        cautions.tell(&mut page);
        page.into_text()
    }
}

pub(super) fn heading(teller: &Teller, page: &mut Page, id: &str) {
    page.heading(&teller.word("heading", id));
}

/// The result without the sheet and the gates. Cautions of what is to be done next are taken in.
pub(super) fn answer(
    teller: &Teller,
    page: &mut Page,
    evaluation: &Evaluation,
    cautions: &mut Cautions<'_>,
) {
    heading(teller, page, "verdict");
    let nothing = Given::nothing();
    page.put(
        "  ",
        &teller.sentence("answer", evaluation.verdict().slug(), &nothing),
    );
    heading(teller, page, "known");
    let known = [
        ("as_found", "departure", evaluation.as_found()),
        ("net_added", "net", evaluation.net_added()),
        ("now", "departure", evaluation.now()),
    ];
    let names: Vec<String> = known
        .iter()
        .map(|(id, ..)| teller.word("heading", id))
        .collect();
    let width = widest(&names).saturating_add(2);
    for ((_, part, interval), name) in known.iter().zip(&names) {
        let label = format!("  {name:<width$}");
        page.put(&label, &told(teller, part, interval));
    }
    if let Some(outlook) = evaluation.forecast() {
        put(teller, page, "forecast", &outlook::lines(teller, outlook));
    }
    put(teller, page, "leak", &leak(teller, evaluation));
    reasons(teller, page, "why", evaluation.because());
    flips(teller, page, evaluation);
    reasons(teller, page, "why_not", evaluation.why_not());
    put(teller, page, "unproven", &unproven(teller, evaluation));
    findings(teller, page, evaluation.findings());
    next(teller, page, evaluation, cautions);
}

/// What the shortage says of a leak, sentence by sentence.
pub(super) fn leak(teller: &Teller, evaluation: &Evaluation) -> Vec<String> {
    let leak = evaluation.leak();
    let limit = evaluation
        .sheet()
        .and_then(|sheet| sheet.leak_limit.as_ref());
    let at_limit = leak.margin.is_some_and(|margin| margin.is_zero());
    let nothing = Given::nothing();
    let (part, id) = match leak.by_sheet {
        BySheet::Below if at_limit => ("phrase", "leak_at_limit"),
        BySheet::Above if at_limit => ("phrase", "leak_from_limit"),
        by_sheet => ("leak", by_sheet.slug()),
    };
    let mut lines = Vec::from([teller.sentence(part, id, &nothing)]);
    if let (Some(limit), Some(margin), Some(used)) = (limit, leak.margin, leak.counted.used) {
        let given = leak_limit(limit).with("used", used).with("margin", margin);
        lines.push(teller.sentence("phrase", "leak_count", &given));
    }
    if matches!(leak.certainty, Certainty::Clear | Certainty::Marginal) {
        lines.push(teller.sentence("certainty", leak.certainty.slug(), &nothing));
    }
    lines
}

/// Sentences under a heading.
fn put(teller: &Teller, page: &mut Page, id: &str, lines: &[String]) {
    heading(teller, page, id);
    for line in lines {
        page.put("  ", line);
    }
}

/// The width of the widest of some labels, in characters.
fn widest(labels: &[String]) -> usize {
    let widths = labels.iter().map(|label| label.chars().count());
    widths.max().unwrap_or_default()
}

/// Lines behind the number of the entry they are about; the same number is not repeated.
fn by_entry<'a>(page: &mut Page, lines: impl Iterator<Item = (&'a [u64], String)>) {
    let mut before = None;
    for (entries, line) in lines {
        let first = entries.first();
        let label = match first {
            Some(seq) if before != first => format!("{seq:>4}  "),
            _ => "      ".into(),
        };
        page.put(&label, &line);
        before = first;
    }
}

fn reasons(teller: &Teller, page: &mut Page, id: &str, reasons: &[Reason]) {
    if reasons.is_empty() {
        return;
    }
    heading(teller, page, id);
    by_entry(
        page,
        reasons
            .iter()
            .map(|reason| (reason.entries.as_slice(), teller.because(reason))),
    );
}

fn findings(teller: &Teller, page: &mut Page, findings: &[Finding]) {
    if findings.is_empty() {
        return;
    }
    heading(teller, page, "findings");
    by_entry(
        page,
        findings
            .iter()
            .map(|finding| (finding.entries.as_slice(), teller.found(finding))),
    );
}

fn flips(teller: &Teller, page: &mut Page, evaluation: &Evaluation) {
    let flips = evaluation.flip();
    if flips.is_empty() {
        return;
    }
    heading(teller, page, "flip");
    let (verdict, leak) = (evaluation.verdict(), evaluation.leak());
    let same = |a: &Flip, b: &Flip| (a.changed, a.entry, a.to) == (b.changed, b.entry, b.to);
    for (index, flip) in flips.iter().enumerate() {
        // One change may turn both readings; it is told once, with all that it turns.
        if flips.iter().take(index).any(|earlier| same(earlier, flip)) {
            continue;
        }
        let turns = (flip.by_sheet, flip.certainty) != (leak.by_sheet, leak.certainty);
        let certain = matches!(flip.certainty, Certainty::Clear | Certainty::Marginal);
        let given = Given::nothing()
            .with("entry", flip.entry)
            .with("from", flip.from)
            .with("to", flip.to)
            .with_some(
                "verdict",
                Some(flip.verdict.slug()).filter(|_| flip.verdict != verdict),
            )
            .with_some("by_sheet", Some(flip.by_sheet.slug()).filter(|_| turns))
            .with_some(
                "certain",
                Some(flip.certainty.slug()).filter(|_| turns && certain),
            );
        page.put("  ", &teller.sentence("flip", flip.changed.slug(), &given));
    }
}

/// What the result leaves open, told beside it so that nobody reads more into it.
pub(super) fn unproven(teller: &Teller, evaluation: &Evaluation) -> Vec<String> {
    let (found, leak) = (evaluation.as_found(), evaluation.leak());
    let is_open = found.lo().is_none() || found.hi().is_none();
    let is_short = found.hi().is_some_and(|hi| hi.is_negative());
    let at_level = evaluation.verdict() == Verdict::AtLevel;
    let asked = [
        (!at_level, "unproven_level"),
        (is_open, "unproven_amount"),
        (leak.certainty == Certainty::Marginal, "unproven_side"),
        (is_short, "unproven_cause"),
        (leak.by_sheet != BySheet::Above, "unproven_tight"),
        (at_level, "unproven_later"),
    ];
    let applying = asked.iter().filter(|(applies, _)| *applies);
    let said = |(_, id): &(bool, &str)| teller.sentence("phrase", id, &Given::nothing());
    applying.map(said).collect()
}

fn next(teller: &Teller, page: &mut Page, evaluation: &Evaluation, cautions: &mut Cautions<'_>) {
    if evaluation.next().is_empty() {
        return;
    }
    heading(teller, page, "next");
    for (index, act) in evaluation.next().iter().enumerate() {
        let number = format!("{:>4}  ", index.saturating_add(1));
        let mind = cautions.need_for(act);
        page.put(&number, &format!("{} {mind}", teller.advice(act)));
    }
}

fn gates(teller: &Teller, page: &mut Page, evaluation: &Evaluation) {
    heading(teller, page, "gates");
    let acts = Act::WORDS.iter().map(|(_, act)| *act);
    let names: Vec<String> = acts
        .clone()
        .map(|act| teller.word("act", act.slug()))
        .collect();
    let width = widest(&names).saturating_add(1);
    for (act, name) in acts.zip(&names) {
        let gate = evaluation.gate(act);
        let allowed = if gate.allowed { "yes" } else { "no" };
        let may = teller.word("allowed", allowed);
        let unmet: Vec<String> = gate
            .unmet
            .iter()
            .map(|unmet| teller.obstacle(unmet))
            .collect();
        page.put(
            &format!("  {name:<width$}"),
            &format!("{may} {}", unmet.join(" ")),
        );
    }
}
