//! What a job costs, in tables and sections: lines with their totals, what was estimated, what is left over, what came out.

use super::paper::{Block, Section, Table};
use super::sentence::Given;
use super::teller::Teller;
use crate::check::Finding;
use crate::estimate::{Against, Invoice, Leftover, Line, Total, Waste, What};
use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

/// A section under a heading of its own id.
pub(super) fn section(teller: &Teller, id: &'static str, blocks: Vec<Block>) -> Section {
    Section::new(id, teller.word("heading", id), blocks)
}

/// The lines, the taxes, the total.
pub(super) fn lines(teller: &Teller, lines: &[Line], total: &Total) -> Block {
    let columns = [
        ("item", false),
        ("quantity", true),
        ("price", true),
        ("net", true),
    ];
    let columns = columns.map(|(id, is_number)| (teller.word("column", id), is_number));
    let rows = lines.iter().map(|line| {
        let what = teller.word("line", line.id.slug());
        // Where waste goes is no name of the price list.
        let item = match line.id {
            What::Disposal => teller.word("disposal", &line.item),
            _ => line.item.clone(),
        };
        Vec::from([
            format!("{what}: {item}"),
            teller.number(&line.quantity_text()),
            teller.number(&line.price.to_string()),
            teller.number(&line.net.to_string()),
        ])
    });
    let sum = |words: String, money: String| (words, teller.number(&money));
    let mut totals = Vec::from([sum(teller.word("sum", "net"), total.net.to_string())]);
    for tax in &total.taxes {
        let given = Given::nothing()
            .with("tax", tax.id.replace('_', " "))
            .with("rate", tax.rate)
            .with("base", tax.base);
        totals.push(sum(teller.say("sum", "tax", &given), tax.tax.to_string()));
    }
    totals.push(sum(teller.word("sum", "total"), total.total.to_string()));
    Block::Table(Table {
        columns: Vec::from(columns),
        rows: rows.collect(),
        totals,
    })
}

/// The lines of an invoice and what they come to.
pub(super) fn billed(teller: &Teller, invoice: &Invoice) -> Section {
    let table = lines(teller, invoice.lines(), invoice.total());
    section(teller, "invoice", Vec::from([table]))
}

/// What whoever bills the job should know; it is not for the customer. `None` where there is nothing.
pub(super) fn for_shop(teller: &Teller, findings: &[Finding]) -> Option<Section> {
    let found: Vec<String> = findings
        .iter()
        .map(|finding| {
            let first = finding.entries.first();
            let entry = first.map(|seq| {
                let given = Given::nothing().with("entry", seq);
                teller.say("label", "entry", &given)
            });
            let told = teller.found(finding);
            entry.map_or_else(|| told.clone(), |entry| format!("{entry}. {told}"))
        })
        .collect();
    (!found.is_empty()).then(|| section(teller, "shop", Vec::from([Block::Lines(found)])))
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
    let mut told = Vec::from([teller.sentence("against", id, &given)]);
    if !against.lines.is_empty() {
        told.push(teller.sentence("against", "lines", &nothing()));
    }
    let lines = against.lines.iter().map(|line| {
        let why = line.why.iter();
        let why: Vec<String> = why.map(|why| teller.word("differs", why.slug())).collect();
        let entries: Vec<String> = line.entries.iter().map(ToString::to_string).collect();
        let given = nothing()
            .with("estimated", line.estimated)
            .with("billed", line.billed)
            .with("reasons", why.join(", "))
            .with("count", entries.len())
            .with("entries", entries.join(", "));
        (
            teller.word("line", line.id.slug()),
            teller.say("against", "line", &given),
        )
    });
    let blocks = Vec::from([Block::Lines(told), Block::Facts(lines.collect())]);
    section(teller, "against", blocks)
}

/// What is left over in containers that were opened. `None` where nothing is.
pub(super) fn left_over(teller: &Teller, leftover: &[Leftover]) -> Option<Section> {
    let told = leftover.iter().map(|left| {
        let containers = left.containers.iter();
        let containers: Vec<String> = containers
            .map(|own| format!("{} × {}", own.count, own.container))
            .collect();
        let given = Given::nothing()
            .with("fluid", &left.fluid)
            .with("containers", containers.join(", "))
            .with("left", left.left);
        // It begins with the fluid's own name, which stays as it is written.
        teller.say("counter", "leftover", &given)
    });
    let told = Vec::from([Block::Lines(told.collect())]);
    (!leftover.is_empty()).then(|| section(teller, "leftover", told))
}

/// What came out, for the disposal log.
pub(super) fn came_out(teller: &Teller, waste: &Waste) -> Section {
    let (lo, hi) = (waste.between.lo(), waste.between.hi());
    // One volume that is known needs no ends.
    let is_open = lo != hi;
    let given = Given::nothing()
        .with("volume", waste.volume)
        .with("stream", waste.stream.slug())
        .with_some("out_from", lo.filter(|_| is_open))
        .with_some("out_to", hi.filter(|_| is_open));
    let told = teller.sentence("counter", "waste", &given);
    section(
        teller,
        "waste",
        Vec::from([Block::Lines(Vec::from([told]))]),
    )
}
