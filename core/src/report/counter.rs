//! What a job will cost, and what it did, told in plain lines.

use super::cautions::Cautions;
use super::money_table::{billed, came_out, compared, for_shop, left_over, lines, section};
use super::paper::{Block, Medium, Paper, Section};
use super::sentence::Given;
use super::teller::Teller;
use crate::estimate::{Approval, CaseKind, Estimate, Invoice, Shelf};
use crate::procedure::Procedure;
use alloc::format;
use alloc::string::String;
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
        let cases = CaseKind::WORDS.iter().map(|(word, kind)| {
            let case = estimate.case(*kind);
            let assumed = case.assumes.iter();
            let assumed =
                assumed.map(|own| self.sentence("assumes", own.id, &Given::from(&own.args)));
            let told = Block::Lines(assumed.collect());
            let table = lines(self, &case.lines, &case.total);
            section(self, word, Vec::from([told, table]))
        });
        let mut told: Vec<Section> = cases.collect();
        let line = |id, told| section(self, id, Vec::from([Block::Lines(told)]));
        let approval = estimate.approval();
        told.extend(approval.map(|own| line("approval", Vec::from([approved(self, own)]))));
        let shelf = estimate.stock();
        told.extend(shelf.map(|shelf| line("shelf", off_the_shelf(self, shelf))));
        told.extend(for_shop(self, estimate.findings()));
        plainly(self, told, estimate.cautions(), sheet)
    }

    /// An invoice in plain lines of at most 80 columns: lines and totals, how it differs from the estimate and why, what
    /// is left over, what came out, findings, and every caution in full. The sheet is that of the check; it words its own
    /// cautions.
    #[must_use]
    pub fn invoice(&self, invoice: &Invoice, sheet: Option<&Procedure>) -> String {
        let mut told = Vec::from([billed(self, invoice)]);
        let against = invoice.against();
        told.extend(against.map(|against| compared(self, invoice, against)));
        told.extend(left_over(self, invoice.leftover()));
        told.push(came_out(self, invoice.waste()));
        told.extend(for_shop(self, invoice.findings()));
        plainly(self, told, invoice.cautions(), sheet)
    }
}

/// Sections in plain text, and under them every caution in full.
fn plainly(
    teller: &Teller,
    mut told: Vec<Section>,
    ids: &[String],
    sheet: Option<&Procedure>,
) -> String {
    let mut cautions = Cautions::on(teller, sheet);
    cautions.need(ids);
    let numbered = Vec::from([Block::Numbered(cautions.all())]);
    told.push(section(teller, "cautions", numbered));
    let paper = Paper {
        told,
        ..Paper::default()
    };
    paper.write(Medium::Text)
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

fn off_the_shelf(teller: &Teller, shelf: &Shelf) -> Vec<String> {
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
    let mut told = Vec::from([teller.sentence("counter", "shelf", &given)]);
    for unused in &shelf.unused {
        let reasons = unused.reasons.iter();
        let words: Vec<String> = reasons
            .map(|reason| teller.word("volume_opened_defect", reason.slug()))
            .collect();
        let given = Given::nothing().with("container", &unused.name);
        let given = given.with("reasons", words.join(" "));
        told.push(teller.sentence("counter", "unused", &given));
    }
    told
}
