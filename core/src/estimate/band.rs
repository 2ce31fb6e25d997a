//! The estimate before a job: best, likely and worst under one price list.

use super::approval::{Approval, Ceiling};
use super::asked::Asked;
use super::cases::{Assumption, CaseKind, Volumes};
use super::facts::Facts;
use super::invoice::PricesRef;
use super::lines::{Line, Lines, Total};
use super::price_list::PriceList;
use super::quote::{FORMAT, Quote};
use super::shelf::{Shelf, shelf};
use super::work::Times;
use crate::check::{Finding, Job, LevelCheck};
use crate::document::canonical;
use crate::error::{Error, ErrorKind, Fault};
use crate::money::Money;
use crate::procedure::Severity;
use crate::quantity::{Amount, Rounding};
use alloc::string::{String, ToString};
use alloc::vec::Vec;
use serde::Serialize;

/// One case of an estimate: what it assumes, its lines and what they come to.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct Case {
    /// What goes in, all of it (volume).
    pub volume: Amount,
    /// What it assumes.
    pub assumes: Vec<Assumption>,
    /// The lines.
    pub lines: Vec<Line>,
    /// What they come to.
    #[serde(flatten)]
    pub total: Total,
}

/// How long the job takes.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct JobTimes {
    /// With hands on the vehicle (time).
    #[serde(skip_serializing_if = "Option::is_none")]
    pub hands_on: Option<Amount>,
    /// With the bay occupied (time).
    #[serde(skip_serializing_if = "Option::is_none")]
    pub bay: Option<Amount>,
    /// Until the customer is told to come back (time).
    #[serde(skip_serializing_if = "Option::is_none")]
    pub promised: Option<Amount>,
}

/// The estimate before a job, or in the middle of one: what was poured is a fact in all of its cases.
#[derive(Debug, Clone, Serialize)]
pub struct Estimate {
    format: &'static str,
    prices: PricesRef,
    job: Job,
    times: JobTimes,
    poured: Amount,
    best: Case,
    likely: Case,
    worst: Case,
    #[serde(skip_serializing_if = "Option::is_none")]
    approval: Option<Approval>,
    #[serde(skip_serializing_if = "Option::is_none")]
    stock: Option<Shelf>,
    findings: Vec<Finding>,
    cautions: Vec<String>,
}

/// What a job will cost: the best, the likely and the worst case under one price list, each a consistent set of lines.
///
/// Best: nothing more has to be poured. Likely: the host's own volume, or else half of the leak limit in whole steps of the
/// sheet. Worst, before a new approval: poured up to the leak limit, then the leak is looked for, and the plug is replaced.
/// Fills and exchanges take what the sheet says the unit takes.
///
/// # Errors
///
/// [`Unresolved`](ErrorKind::Unresolved) without a sheet, at `procedure`, and for everything that has no price, all at once, as
/// for [`invoice`](super::invoice()); for a container on the shelf that the price list does not know, at
/// `stock.full[0].container`; as for [`Money::parse`] at `entries[4].ceiling`, and [`Conflict`](ErrorKind::Conflict) there and
/// at `ceiling` for another currency; [`OutOfRange`](ErrorKind::OutOfRange) there for a ceiling that does not pay for the
/// labour.
///
/// ```
/// use brimline::{LevelCheck, Pack, PriceList, estimate, estimate::Asked};
/// let header = r#"{"format":"brimline-journal/1","procedure":"pipit-level","edition":2,"job":"check"}"#;
/// let check = LevelCheck::start(&Pack::embedded()?, header)?;
/// let told = estimate(&PriceList::embedded()?, &check, &Asked::default())?;
/// let [best, likely, worst] = told.cases();
/// assert_eq!([best.volume, likely.volume, worst.volume].map(|v| v.to_string()), ["0 L", "0.75 L", "1.1 L"]);
/// // Labour 46.00, seal 1.90, threadlocker 0.80, supplies 3.50: 52.20 and 19 %.
/// assert_eq!(best.total.total.to_string(), "62.12 EUR");
/// # Ok::<(), brimline::Error>(())
/// ```
pub fn estimate(prices: &PriceList, check: &LevelCheck, asked: &Asked) -> Result<Estimate, Error> {
    let standing = check.standing();
    let facts = Facts::of(check, &standing);
    let sheet = standing.sheet.ok_or_else(|| {
        let hint = "an estimate needs the service sheet of the job: see the findings of the check";
        Fault::new(ErrorKind::Unresolved).at("procedure").hint(hint)
    })?;
    let volumes = Volumes::of(&standing, &facts, sheet, asked)?;
    let told = |count| Amount::from_count(count, standing.unit, 6, Rounding::HalfUp);
    let case = |which: CaseKind| -> Result<Case, Error> {
        let (assumed, work) = volumes.case(which, &facts.work);
        let lines = work.lines(prices)?;
        Ok(Case {
            volume: told(assumed.count)?,
            assumes: assumed.assumes.clone(),
            total: lines.total()?,
            lines: lines.lines,
        })
    };
    // The worst case asks for most, so it tells most of what is missing.
    let worst = case(CaseKind::Worst)?;
    let (best, likely) = (case(CaseKind::Best)?, case(CaseKind::Likely)?);
    let mut findings = Vec::new();
    let mut cautions = standing.cautions.clone();
    let approval = match Ceiling::of(check, &facts, asked, prices.currency())? {
        None => None,
        Some(ceiling) => {
            let mut labour = Lines::new(prices);
            facts.work.labour(prices, &mut labour)?;
            ceiling.covers(labour.total()?.total)?;
            let planned = asked.planned.or_else(|| check.next_pour());
            let mut total = |further: Option<Amount>| -> Result<Money, Error> {
                if further.is_none() && volumes.best_is_so_far() {
                    return Ok(best.total.total);
                }
                let further = further.and_then(|volume| volume.count()).unwrap_or(0);
                let work = volumes.so_far(&facts.work, further);
                Ok(work.lines(prices)?.total()?.total)
            };
            let (approval, told) = ceiling.approval(planned, &mut total)?;
            findings.extend(told);
            let highest = worst.total.total;
            if highest.minor_units() > approval.ceiling.minor_units() {
                let finding = Finding::new("worst_past_ceiling", Severity::Note);
                let finding = finding.of(approval.entries.iter().copied());
                let finding = finding.with("ceiling", approval.ceiling);
                findings.push(finding.with("total", highest));
            }
            Some(approval)
        }
    };
    let own = sheet.fluid.as_deref().and_then(|fluid| prices.fluid(fluid));
    let stock = match (&asked.stock, own) {
        (Some(stock), Some(own)) => {
            let newest = check.entries().next_back();
            let day = newest.map(|entry| entry.at.day());
            let need = volumes.still_needed();
            let told = shelf(prices, own, stock, asked.day(day), need, standing.unit)?;
            findings.extend(told.finding);
            for caution in told.cautions {
                if !cautions.iter().any(|own| own == caution) {
                    cautions.push((*caution).to_string());
                }
            }
            Some(told.shelf)
        }
        _ => None,
    };
    let labour = prices.labour(standing.job);
    let times = labour.map(|labour| Times::of(labour, standing.sheet));
    Ok(Estimate {
        format: FORMAT,
        prices: PricesRef::of(prices),
        job: standing.job,
        times: JobTimes {
            hands_on: times.as_ref().and_then(|times| times.hands_on),
            bay: times.as_ref().and_then(|times| times.bay),
            promised: labour.and_then(|labour| labour.promised),
        },
        poured: told(facts.poured())?,
        best,
        likely,
        worst,
        approval,
        stock,
        findings,
        cautions,
    })
}

impl Estimate {
    /// The canonical JSON of the estimate document.
    #[must_use]
    pub fn to_json(&self) -> String {
        canonical(self)
    }

    /// Which price list it rests on.
    #[must_use]
    pub fn prices(&self) -> &PricesRef {
        &self.prices
    }

    /// What the job is.
    #[must_use]
    pub fn job(&self) -> Job {
        self.job
    }

    /// How long it takes.
    #[must_use]
    pub fn times(&self) -> &JobTimes {
        &self.times
    }

    /// What was poured so far (volume).
    #[must_use]
    pub fn poured(&self) -> Amount {
        self.poured
    }

    /// Best, likely and worst.
    #[must_use]
    pub fn cases(&self) -> [&Case; 3] {
        [&self.best, &self.likely, &self.worst]
    }

    /// One of the cases.
    #[must_use]
    pub fn case(&self, kind: CaseKind) -> &Case {
        match kind {
            CaseKind::Best => &self.best,
            CaseKind::Likely => &self.likely,
            CaseKind::Worst => &self.worst,
        }
    }

    /// What the likely case promises, to hold the invoice against.
    #[must_use]
    pub fn quote(&self) -> Quote {
        Quote {
            lines: self.likely.lines.clone(),
            total: self.likely.total.total,
        }
    }

    /// What the customer approved, if a ceiling was given.
    #[must_use]
    pub fn approval(&self) -> Option<&Approval> {
        self.approval.as_ref()
    }

    /// What the worst case would take off the shelf, if the shelf was given.
    #[must_use]
    pub fn stock(&self) -> Option<&Shelf> {
        self.stock.as_ref()
    }

    /// What to mind: before the next pour, before the start.
    #[must_use]
    pub fn findings(&self) -> &[Finding] {
        &self.findings
    }

    /// The cautions that go with the state of the job and with what is on the shelf.
    #[must_use]
    pub fn cautions(&self) -> &[String] {
        &self.cautions
    }
}
