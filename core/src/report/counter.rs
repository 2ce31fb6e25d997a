//! What a job will cost, and what it did, told in plain lines.

use super::cautions::Cautions;
use super::page::Page;
use super::sentence::Given;
use super::teller::Teller;
use super::text::heading;
use crate::check::Finding;
use crate::estimate::{
    Against, Approval, CaseKind, Estimate, Invoice, Leftover, Line, Shelf, Total, Waste,
};
use crate::money::Money;
use crate::procedure::Procedure;
use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

/// An estimate in plain English lines of at most 80 columns: [`Teller::estimate`].
///
/// ```
/// use brimline::{LevelCheck, Pack, PriceList, estimate, estimate::Asked, report};
/// let header = r#"{"format":"brimline-journal/1","procedure":"pipit-level","edition":2,"job":"check"}"#;
/// let check = LevelCheck::start(&Pack::embedded()?, header)?;
/// let told = report::estimate(&estimate(&PriceList::embedded()?, &check, &Asked::default())?, check.sheet());
/// assert!(told.contains("62.12 EUR") && told.contains("before a new approval") && told.contains("Cautions"));
/// # Ok::<(), brimline::Error>(())
/// ```
#[must_use]
pub fn estimate(estimate: &Estimate, sheet: Option<&Procedure>) -> String {
    Teller::english().estimate(estimate, sheet)
}

/// An invoice in plain English lines of at most 80 columns: [`Teller::invoice`].
///
/// ```
/// use brimline::{LevelCheck, Pack, PriceList, invoice, report};
/// let journal = r#"{"format":"brimline-journal/1","procedure":"pipit-level","edition":2,"job":"check","entries":[]}"#;
/// let check = LevelCheck::replay(&Pack::embedded()?, journal)?;
/// let told = report::invoice(&invoice(&PriceList::embedded()?, &check, None)?, check.sheet());
/// assert!(told.contains("Labour") && told.contains("46.00 EUR") && told.contains("Cautions"));
/// # Ok::<(), brimline::Error>(())
/// ```
#[must_use]
pub fn invoice(invoice: &Invoice, sheet: Option<&Procedure>) -> String {
    Teller::english().invoice(invoice, sheet)
}

impl Teller {
    /// An estimate in plain lines of at most 80 columns: each case with what it assumes, its lines and totals; what was
    /// approved, what is on the shelf, findings, and every caution in full. The sheet is that of the check; it words its
    /// own cautions.
    #[must_use]
    pub fn estimate(&self, estimate: &Estimate, sheet: Option<&Procedure>) -> String {
        let mut page = Page::new();
        let mut cautions = Cautions::on(self, sheet);
        cautions.need(estimate.cautions());
        for (word, kind) in CaseKind::WORDS {
            let case = estimate.case(*kind);
            heading(self, &mut page, word);
            for assumed in &case.assumes {
                let given = Given::from(&assumed.args);
                page.put("  ", &self.sentence("assumes", assumed.id, &given));
            }
            bill(self, &mut page, &case.lines, &case.total);
        }
        if let Some(approval) = estimate.approval() {
            heading(self, &mut page, "approval");
            page.put("  ", &approved(self, approval));
        }
        if let Some(shelf) = estimate.stock() {
            heading(self, &mut page, "shelf");
            off_the_shelf(self, &mut page, shelf);
        }
        found(self, &mut page, estimate.findings());
        cautions.tell(&mut page);
        page.into_text()
    }

    /// An invoice in plain lines of at most 80 columns: lines and totals, how it differs from the estimate and why, what
    /// is left over, what came out, findings, and every caution in full. The sheet is that of the check; it words its own
    /// cautions.
    #[must_use]
    pub fn invoice(&self, invoice: &Invoice, sheet: Option<&Procedure>) -> String {
        let mut page = Page::new();
        let mut cautions = Cautions::on(self, sheet);
        cautions.need(invoice.cautions());
        heading(self, &mut page, "invoice");
        bill(self, &mut page, invoice.lines(), invoice.total());
        if let Some(against) = invoice.against() {
            heading(self, &mut page, "against");
            differs(self, &mut page, against);
        }
        if !invoice.leftover().is_empty() {
            heading(self, &mut page, "leftover");
            for left in invoice.leftover() {
                page.put("  ", &left_over(self, left));
            }
        }
        heading(self, &mut page, "waste");
        page.put("  ", &came_out(self, invoice.waste()));
        found(self, &mut page, invoice.findings());
        cautions.tell(&mut page);
        page.into_text()
    }
}

/// The widest a name may be, so that a row fits into 80 columns.
const NAME: usize = 30;

/// Lines under each other, then their totals.
fn bill(teller: &Teller, page: &mut Page, lines: &[Line], total: &Total) {
    let glued = |text: &str| teller.number(text).replace('\u{a0}', " ");
    let mut rows: Vec<[String; 4]> = Vec::new();
    for line in lines {
        let item = short(&format!(
            "{}, {}",
            teller.word("line", line.id.slug()),
            line.item
        ));
        let (quantity, price) = (line.quantity_text(), line.price.to_string());
        rows.push([
            item,
            glued(&quantity),
            glued(&price),
            glued(&line.net.to_string()),
        ]);
    }
    let mut sums = |name: String, sum: Money| {
        let sum = glued(&sum.to_string());
        rows.push([short(&name), String::new(), String::new(), sum]);
    };
    sums(teller.word("total", "net"), total.net);
    for tax in &total.taxes {
        sums(
            format!("{}, {}", tax.id, glued(&tax.rate.to_string())),
            tax.tax,
        );
    }
    sums(teller.word("total", "total"), total.total);
    let widest = |column: usize| {
        let cells = rows.iter().filter_map(|row| row.get(column));
        cells.map(|cell| cell.chars().count()).max().unwrap_or(0)
    };
    let [name, quantity, price, net] = [0, 1, 2, 3].map(widest);
    for [a, b, c, d] in &rows {
        page.line(&format!(
            "  {a:<name$}  {b:>quantity$}  {c:>price$}  {d:>net$}"
        ));
    }
}

/// A name that fits its column; what a host typed cannot break the line.
fn short(name: &str) -> String {
    let plain = name.chars().map(|c| if c.is_control() { ' ' } else { c });
    let mut short: String = plain.take(NAME).collect();
    if name.chars().count() > NAME {
        short.pop();
        short.push('…');
    }
    short
}

fn approved(teller: &Teller, approval: &Approval) -> String {
    let given = Given::nothing()
        .with("ceiling", approval.ceiling)
        .with("so_far", approval.so_far)
        .with_some("headroom", approval.headroom)
        .with_some("over", approval.over)
        .with_some("planned", approval.planned)
        .with_some("after", approval.after);
    teller.sentence("counter", "approved", &given)
}

fn off_the_shelf(teller: &Teller, page: &mut Page, shelf: &Shelf) {
    let containers: Vec<String> = shelf
        .containers
        .iter()
        .map(|own| format!("{} × {}", own.count, own.container))
        .chain(shelf.opened.iter().cloned())
        .collect();
    let given = Given::nothing()
        .with("need", shelf.need)
        .with("containers", containers.join(", "))
        .with_some("bulk", shelf.bulk)
        .with_some("left", shelf.left);
    page.put("  ", &teller.sentence("counter", "shelf", &given));
    for unused in &shelf.unused {
        let reasons = unused.reasons.iter();
        let words: Vec<String> = reasons
            .map(|reason| teller.word("volume_opened_defect", reason.slug()))
            .collect();
        let given = Given::nothing().with("container", &unused.name);
        let given = given.with("reasons", words.join(" "));
        page.put("  ", &teller.sentence("counter", "unused", &given));
    }
}

fn differs(teller: &Teller, page: &mut Page, against: &Against) {
    let given = Given::nothing()
        .with("estimated", against.estimated)
        .with_some("more", against.more)
        .with_some("less", against.less);
    page.put("  ", &teller.sentence("counter", "against", &given));
    for own in &against.lines {
        let why: Vec<String> = own
            .why
            .iter()
            .map(|why| teller.word("differs", why.slug()))
            .collect();
        let entries: Vec<String> = own.entries.iter().map(ToString::to_string).collect();
        let given = Given::nothing()
            .with("line", own.id.slug())
            .with("estimated", own.estimated)
            .with("billed", own.billed)
            .with("reasons", why.join(", "))
            .with("entries", entries.join(", "));
        page.put("  ", &teller.sentence("counter", "differs", &given));
    }
}

fn left_over(teller: &Teller, left: &Leftover) -> String {
    let containers = left.containers.iter();
    let containers: Vec<String> = containers
        .map(|own| format!("{} × {}", own.count, own.container))
        .collect();
    let given = Given::nothing()
        .with("fluid", &left.fluid)
        .with("containers", containers.join(", "))
        .with("left", left.left);
    teller.sentence("counter", "leftover", &given)
}

fn came_out(teller: &Teller, waste: &Waste) -> String {
    let given = Given::nothing()
        .with("volume", waste.volume)
        .with("stream", waste.stream.slug())
        .with_some("out_from", waste.between.lo())
        .with_some("out_to", waste.between.hi());
    teller.sentence("counter", "waste", &given)
}

/// Findings behind the numbers of their entries.
fn found(teller: &Teller, page: &mut Page, findings: &[Finding]) {
    if findings.is_empty() {
        return;
    }
    heading(teller, page, "findings");
    for finding in findings {
        let label = match finding.entries.first() {
            Some(seq) => format!("{seq:>4}  "),
            None => "      ".into(),
        };
        page.put(&label, &teller.found(finding));
    }
}
