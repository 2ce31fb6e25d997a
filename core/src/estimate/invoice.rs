//! The invoice after a job: what happened, by line and cause.

use super::facts::Facts;
use super::lines::{Line, Total};
use super::price_list::PriceList;
use super::quote::Quote;
use super::variance::Against;
use super::waste::Waste;
use crate::check::{Finding, Job, LevelCheck, PlugState, Standing, Verdict};
use crate::document::canonical;
use crate::error::{Error, Fault};
use crate::money::{Money, mixed};
use crate::procedure::Severity;
use crate::quantity::Amount;
use alloc::string::String;
use alloc::vec::Vec;
use serde::Serialize;

/// The format this version writes.
pub(crate) const FORMAT: &str = "brimline-invoice/1";

/// What to mind once fluid came out.
const DISPOSAL: &str = "disposal";

/// Which price list the sums rest on.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct PricesRef {
    /// Its name.
    pub id: String,
    /// The shop's version of it.
    pub version: String,
    /// The digest of its canonical form.
    pub digest: String,
}

impl PricesRef {
    pub(super) fn of(prices: &PriceList) -> Self {
        PricesRef {
            id: prices.id().into(),
            version: prices.version().into(),
            digest: prices.digest().into(),
        }
    }
}

/// What is left in the containers that hold what went in.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct Leftover {
    /// The fluid.
    pub fluid: String,
    /// The containers: those that were named, or else the cheapest.
    pub containers: Vec<Opened>,
    /// What is left in them (volume).
    pub left: Amount,
}

/// A number of containers of one size.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct Opened {
    /// The price list's name for the container.
    pub container: String,
    /// How many were opened, one or more.
    pub count: u64,
}

/// The invoice after a job.
#[derive(Debug, Clone, Serialize)]
pub struct Invoice {
    format: &'static str,
    prices: PricesRef,
    job: Job,
    lines: Vec<Line>,
    #[serde(flatten)]
    total: Total,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    leftover: Vec<Leftover>,
    waste: Waste,
    #[serde(skip_serializing_if = "Option::is_none")]
    against: Option<Against>,
    findings: Vec<Finding>,
    cautions: Vec<String>,
}

/// The invoice after a job: the facts of its journal under a price list, and how they differ from what was estimated.
///
/// What was poured out of containers is billed, whatever of it came out again. A job on hold, and one whose level was never
/// found, is billed as well, with a finding that says so.
///
/// # Errors
///
/// [`Unresolved`](crate::ErrorKind::Unresolved) for everything that has no price, all at once, with the path of what asks for it:
/// `entries[7].fluid`, `procedure.fluid`, `procedure.closing.seal`, `procedure.labour.hands_on`, `prices.leak_search`, `job`;
/// [`Conflict`](crate::ErrorKind::Conflict) for an estimate in another currency; [`OutOfRange`](crate::ErrorKind::OutOfRange) past 15 digits
/// of money.
///
/// ```
/// use brimline::{LevelCheck, Pack, PriceList, invoice};
/// let journal = r#"{"format":"brimline-journal/1","procedure":"pipit-level","job":"top_up","entries":[
///     {"seq":1,"at":"2026-03-02T09:00:00Z","kind":"plug","state":"open"},
///     {"seq":2,"at":"2026-03-02T09:01:00Z","kind":"added","volume":"0.42 L","measured_by":"jug"}]}"#;
/// let check = LevelCheck::replay(&Pack::embedded()?, journal)?;
/// let invoice = invoice(&PriceList::embedded()?, &check, None)?;
/// let fluid = &invoice.lines()[1];
/// // Billed in steps of 0.05 L at 21.20 EUR/L: 0.45 L.
/// assert_eq!((fluid.id.slug(), fluid.quantity_text().as_str(), fluid.unit_code), ("fluid", "0.45 L", "LTR"));
/// assert_eq!((fluid.net.to_string().as_str(), &fluid.cause.entries[..]), ("9.54 EUR", &[2][..]));
/// # Ok::<(), brimline::Error>(())
/// ```
pub fn invoice(
    prices: &PriceList,
    check: &LevelCheck,
    estimated: Option<&Quote>,
) -> Result<Invoice, Error> {
    let standing = check.standing();
    let facts = Facts::of(check, &standing);
    let lines = facts.work.lines(prices)?;
    let total = lines.total()?;
    let lines = lines.lines;
    let leftover = leftover(&facts, prices);
    if let Some(quote) = estimated {
        same_currency(quote, total.total)?;
    }
    let against =
        estimated.map(|quote| Against::of(quote, &lines, total.total, is_finished(&standing)));
    let findings = findings(&standing, &facts, total.total);
    let mut cautions = standing.cautions.clone();
    let is_out = !facts.work.out.1.is_empty() || !facts.unmeasured.is_empty();
    if is_out && !cautions.iter().any(|own| own == DISPOSAL) {
        cautions.push(DISPOSAL.into());
    }
    Ok(Invoice {
        format: FORMAT,
        prices: PricesRef::of(prices),
        job: standing.job,
        leftover,
        waste: Waste::of(&facts, standing.unit)?,
        against: against.transpose()?,
        findings,
        lines,
        total,
        cautions,
    })
}

/// Whether nothing more is to be expected of a job.
fn is_finished(standing: &Standing<'_>) -> bool {
    let is_closed = standing.plug == Some(PlugState::Closed);
    match standing.verdict {
        Verdict::OnHold => false,
        Verdict::AtLevel => standing.plug.is_none() || is_closed,
        _ => is_closed,
    }
}

fn same_currency(quote: &Quote, total: Money) -> Result<(), Fault> {
    let given = quote.total.currency();
    if given == total.currency() {
        return Ok(());
    }
    Err(mixed(total.currency(), given).at("estimate.likely.total"))
}

fn leftover(facts: &Facts<'_>, prices: &PriceList) -> Vec<Leftover> {
    let opened = facts.work.opened(prices).into_iter();
    let told = opened.map(|(own, opening)| Leftover {
        fluid: own.fluid.clone(),
        containers: opening
            .containers
            .iter()
            .map(|(container, count)| Opened {
                container: container.id.clone(),
                count: *count,
            })
            .collect(),
        left: opening.left,
    });
    told.collect()
}

/// What whoever bills the job should know of it.
fn findings(standing: &Standing<'_>, facts: &Facts<'_>, total: Money) -> Vec<Finding> {
    let mut found = Vec::new();
    match standing.verdict {
        Verdict::OnHold => found.push(Finding::new("billed_on_hold", Severity::Caution)),
        Verdict::AtLevel => {}
        verdict => {
            let finding = Finding::new("billed_without_level", Severity::Caution);
            found.push(finding.with("verdict", verdict.slug()));
        }
    }
    if standing.plug.is_some_and(|plug| plug != PlugState::Closed) {
        found.push(Finding::new("billed_open", Severity::Caution));
    }
    if !facts.unbooked.is_empty() {
        let finding = Finding::new("volume_not_billed", Severity::Caution);
        found.push(finding.of(facts.unbooked.iter().copied()));
    }
    if !facts.unmeasured.is_empty() {
        let finding = Finding::new("waste_unmeasured", Severity::Note);
        found.push(finding.of(facts.unmeasured.iter().copied()));
    }
    if let Some((entry, text)) = facts.approved.last() {
        let same = |ceiling: &Money| ceiling.currency() == total.currency();
        match Money::parse(text).ok().filter(same) {
            Some(ceiling) if ceiling.minor_units() < total.minor_units() => {
                let finding = Finding::new("ceiling_passed", Severity::Stop).of([entry.seq]);
                let finding = finding.with("ceiling", ceiling);
                found.push(finding.with("total", total));
            }
            Some(_) => {}
            None => found.push(Finding::new("ceiling_unread", Severity::Caution).of([entry.seq])),
        }
    }
    found
}

impl Invoice {
    /// The canonical JSON of the invoice document.
    #[must_use]
    pub fn to_json(&self) -> String {
        canonical(self)
    }

    /// Which price list it rests on.
    #[must_use]
    pub fn prices(&self) -> &PricesRef {
        &self.prices
    }

    /// What the job was.
    #[must_use]
    pub fn job(&self) -> Job {
        self.job
    }

    /// The lines: labour first, then fluid, parts, supplies and disposal.
    #[must_use]
    pub fn lines(&self) -> &[Line] {
        &self.lines
    }

    /// What they come to.
    #[must_use]
    pub fn total(&self) -> &Total {
        &self.total
    }

    /// What is left in the containers that were opened, by fluid; nothing of fluid out of the drum, nor, unless whole containers
    /// are billed, where not all of it came out of containers that the journal names.
    #[must_use]
    pub fn leftover(&self) -> &[Leftover] {
        &self.leftover
    }

    /// What came out, for the disposal log.
    #[must_use]
    pub fn waste(&self) -> &Waste {
        &self.waste
    }

    /// How it differs from what was estimated, if an estimate was given.
    #[must_use]
    pub fn against(&self) -> Option<&Against> {
        self.against.as_ref()
    }

    /// What whoever bills the job should know of it.
    #[must_use]
    pub fn findings(&self) -> &[Finding] {
        &self.findings
    }

    /// The cautions that go with the state of the job.
    #[must_use]
    pub fn cautions(&self) -> &[String] {
        &self.cautions
    }
}
