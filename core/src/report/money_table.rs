//! What a job costs, on a page: the lines of its invoice, what they come to, and what was estimated.

use super::cautions::Cautions;
use super::paper::{Block, Medium, Paper, Section, Table};
use super::sentence::Given;
use super::teller::Teller;
use crate::estimate::{Against, Invoice};
use crate::procedure::Procedure;
use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

/// An invoice in plain English lines of at most 80 columns: its lines, its taxes, its total, what it should be known for, and
/// where it was estimated, why it differs from that line by line.
///
/// ```
/// use brimline::{LevelCheck, Pack, PriceList, invoice, report};
/// let journal = r#"{"format":"brimline-journal/1","procedure":"pipit-level","job":"top_up","entries":[
///     {"seq":1,"at":"2026-03-02T09:00:00Z","kind":"plug","state":"open"},
///     {"seq":2,"at":"2026-03-02T09:01:00Z","kind":"added","volume":"0.42 L","measured_by":"jug"}]}"#;
/// let check = LevelCheck::replay(&Pack::embedded()?, journal)?;
/// let told = report::bill(&invoice(&PriceList::embedded()?, &check, None)?, check.sheet());
/// // 0.45 L at 21.20 EUR.
/// assert!(told.contains("9.54 EUR"));
/// # Ok::<(), brimline::Error>(())
/// ```
#[must_use]
pub fn bill(invoice: &Invoice, sheet: Option<&Procedure>) -> String {
    Teller::english().bill(invoice, sheet)
}

impl Teller {
    /// An invoice in plain lines of at most 80 columns: its lines, its taxes, its total, what it should be known for, and where
    /// it was estimated, why it differs from that line by line; every caution in full, those of the sheet in its own words.
    #[must_use]
    pub fn bill(&self, invoice: &Invoice, sheet: Option<&Procedure>) -> String {
        let mut cautions = Cautions::on(self, sheet);
        cautions.need(invoice.cautions());
        let compared = invoice
            .against()
            .map(|against| compared(self, invoice, against));
        let mut told = Vec::from([billed(self, invoice)]);
        told.extend(compared);
        let numbered = Vec::from([Block::Numbered(cautions.all())]);
        told.push(Section::new(
            "cautions",
            self.word("heading", "cautions"),
            numbered,
        ));
        let paper = Paper {
            told,
            ..Paper::default()
        };
        paper.write(Medium::Text)
    }
}

/// The lines, the taxes, the total, and what whoever bills the job should know.
pub(super) fn billed(teller: &Teller, invoice: &Invoice) -> Section {
    let columns = [
        ("item", false),
        ("quantity", true),
        ("price", true),
        ("net", true),
    ];
    let columns = columns.map(|(id, is_number)| (teller.word("column", id), is_number));
    let rows = invoice.lines().iter().map(|line| {
        let what = teller.word("line", line.id.slug());
        Vec::from([
            format!("{what}: {}", line.item),
            teller.number(&line.quantity_text()),
            teller.number(&line.price.to_string()),
            teller.number(&line.net.to_string()),
        ])
    });
    let total = invoice.total();
    let sum = |words: String, money: String| {
        Vec::from([words, String::new(), String::new(), teller.number(&money)])
    };
    let mut totals = Vec::from([sum(teller.word("sum", "net"), total.net.to_string())]);
    for tax in &total.taxes {
        let given = Given::nothing()
            .with("tax", tax.id.replace('_', " "))
            .with("rate", tax.rate)
            .with("base", tax.base);
        totals.push(sum(teller.say("sum", "tax", &given), tax.tax.to_string()));
    }
    totals.push(sum(teller.word("sum", "total"), total.total.to_string()));
    let mut blocks = Vec::from([Block::Table(Table {
        columns: Vec::from(columns),
        rows: rows.collect(),
        totals,
    })]);
    let found: Vec<String> = invoice
        .findings()
        .iter()
        .map(|finding| teller.found(finding))
        .collect();
    if !found.is_empty() {
        blocks.push(Block::Lines(found));
    }
    Section::new("invoice", teller.word("heading", "invoice"), blocks)
}

/// What was estimated, and why the invoice differs from it, line by line.
pub(super) fn compared(teller: &Teller, invoice: &Invoice, against: &Against) -> Section {
    let nothing = Given::nothing;
    let total = invoice.total().total;
    let id = match (against.more, against.less) {
        (Some(_), _) => "more",
        (_, Some(_)) => "less",
        _ => "same",
    };
    let given = nothing()
        .with("estimated", against.estimated)
        .with("billed", total)
        .with_some("difference", against.more.or(against.less));
    let lead = teller.sentence("against", id, &given);
    let lines = against.lines.iter().map(|line| {
        let why: Vec<String> = line
            .why
            .iter()
            .map(|why| teller.word("differs", why.slug()))
            .collect();
        let given = nothing()
            .with("estimated", line.estimated)
            .with("billed", line.billed)
            .with("reasons", why.join(", "));
        (
            teller.word("line", line.id.slug()),
            teller.say("against", "line", &given),
        )
    });
    let blocks = Vec::from([
        Block::Lines(Vec::from([lead])),
        Block::Facts(lines.collect()),
    ]);
    Section::new("against", teller.word("heading", "against"), blocks)
}
