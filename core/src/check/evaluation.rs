//! The result of an evaluation, and the document it is told in.

use super::evidence::State;
use super::finding::{Finding, NextAct, Reason};
use super::flip::Flip;
use super::gate::Gate;
use super::leak::{BySheet, Certainty};
use super::ledger::Span;
use super::sheet::Sheet;
use super::verdict::Verdict;
use crate::document::canonical;
use crate::procedure::{Act, Pack, Procedure};
use crate::quantity::{Amount, Interval, Rounding, Unit};
use crate::warm_up::Outlook;
use alloc::string::String;
use alloc::vec::Vec;
use serde::Serialize;

/// The format this version writes.
pub(crate) const FORMAT: &str = "brimline-result/1";

/// The version of the rules; it rises whenever any verdict can change.
pub const RULES: &str = "1";

/// The answer to one journal.
///
/// ```
/// let pack = brimline::Pack::embedded()?;
/// let journal = r#"{"format":"brimline-journal/1","procedure":"pipit-level","job":"check","entries":[]}"#;
/// let evaluation = brimline::evaluate(&pack, journal)?;
/// assert_eq!(evaluation.verdict().slug(), "incomplete");
/// # Ok::<(), brimline::Error>(())
/// ```
#[derive(Debug, Clone, Serialize)]
pub struct Evaluation {
    format: &'static str,
    procedure: ProcedureRef,
    rules: &'static str,
    verdict: Verdict,
    as_found: Interval,
    net_added: Interval,
    now: Interval,
    leak: LeakReading,
    findings: Vec<Finding>,
    because: Vec<Reason>,
    next: Vec<NextAct>,
    gates: Gates,
    #[serde(skip_serializing_if = "Option::is_none")]
    forecast: Option<Outlook>,
    cautions: Vec<String>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(super) flip: Option<Vec<Flip>>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(super) why_not: Option<Vec<Reason>>,
    #[serde(skip)]
    pack: Pack,
}

/// Which sheet the answer rests on.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct ProcedureRef {
    /// The procedure the journal names.
    pub id: String,
    /// The edition that applied, if one did.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub edition: Option<u32>,
    /// The digest of that edition.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub digest: Option<String>,
}

/// What the shortage says of a leak.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct LeakReading {
    /// What the sheet's own count says.
    pub by_sheet: BySheet,
    /// The counts, nominal.
    pub counted: Counted,
    /// The governing limit.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub limit: Option<Amount>,
    /// What is proved of the shortage.
    pub shortage: Interval,
    /// How far that bears the count out.
    pub certainty: Certainty,
    /// How much the deciding count would have to change to turn the reading.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub margin: Option<Amount>,
}

/// Nominal volumes up to where the level was found.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct Counted {
    /// What was added.
    pub gross: Option<Amount>,
    /// What was added, less what came out again; not below zero.
    pub net: Option<Amount>,
    /// The one the sheet holds against its limit.
    pub used: Option<Amount>,
}

/// What may be done now.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
struct Gates {
    open: Gate,
    pour: Gate,
    close: Gate,
    stop_engine: Gate,
}

/// A count of volume in a unit: exact if it ends within six decimals, else rounded there.
pub(super) fn told(count: i128, unit: Unit, rounding: Rounding) -> Option<Amount> {
    Amount::from_count(count, unit, 6, rounding).ok()
}

/// The interval of a span, rounded outward.
pub(crate) fn interval(span: Span, unit: Unit) -> Interval {
    let lo = span.lo.and_then(|lo| told(lo, unit, Rounding::Floor));
    let hi = span.hi.and_then(|hi| told(hi, unit, Rounding::Ceiling));
    Interval::new(lo, hi).unwrap_or(Interval::UNBOUNDED)
}

impl Evaluation {
    pub(super) fn of(
        state: &State,
        sheet: &Sheet<'_>,
        named: &str,
        mut findings: Vec<Finding>,
    ) -> Self {
        let unit = sheet.unit();
        let leak = state.leak(sheet);
        let verdict = state.verdict(sheet);
        let at = state.at.unwrap_or(0);
        let counted = |count: i128| told(count, unit, Rounding::HalfUp);
        let gate = |act| state.gate(sheet, act, None, at);
        let applies = leak.by_sheet != BySheet::NotApplicable;
        findings.extend(state.findings.iter().cloned());
        Evaluation {
            format: FORMAT,
            procedure: ProcedureRef {
                id: named.into(),
                edition: sheet.procedure.map(|sheet| sheet.edition),
                digest: sheet.procedure.map(|sheet| sheet.digest().into()),
            },
            rules: RULES,
            verdict,
            as_found: interval(state.ledger.found, unit),
            net_added: interval(state.ledger.net_added(), unit),
            now: interval(state.ledger.now, unit),
            leak: LeakReading {
                by_sheet: leak.by_sheet,
                counted: Counted {
                    gross: counted(leak.gross),
                    net: counted(leak.net),
                    used: counted(leak.used),
                },
                limit: sheet
                    .leak_limit()
                    .filter(|_| applies)
                    .and_then(|limit| limit.limit()),
                shortage: interval(leak.shortage, unit),
                certainty: leak.certainty,
                margin: leak.margin.and_then(counted),
            },
            findings,
            because: state.because(sheet, &leak),
            next: state.next(sheet, &leak, at),
            gates: Gates {
                open: gate(Act::Open),
                pour: gate(Act::Pour),
                close: gate(Act::Close),
                stop_engine: gate(Act::StopEngine),
            },
            forecast: state.outlook(sheet),
            cautions: state.cautions(sheet, verdict),
            flip: None,
            why_not: None,
            pack: sheet.pack.clone(),
        }
    }

    /// The canonical JSON of the result document.
    #[must_use]
    pub fn to_json(&self) -> String {
        canonical(self)
    }

    /// What can be said of the level.
    #[must_use]
    pub fn verdict(&self) -> Verdict {
        self.verdict
    }

    /// Which sheet the answer rests on.
    #[must_use]
    pub fn procedure(&self) -> &ProcedureRef {
        &self.procedure
    }

    /// The sheet itself, if one applied.
    #[must_use]
    pub fn sheet(&self) -> Option<&Procedure> {
        self.pack
            .procedure(&self.procedure.id, self.procedure.edition?)
    }

    /// What is proved of the departure as found; negative is short.
    #[must_use]
    pub fn as_found(&self) -> Interval {
        self.as_found
    }

    /// What is proved of the departure now.
    #[must_use]
    pub fn now(&self) -> Interval {
        self.now
    }

    /// What is proved of the net volume added in between.
    #[must_use]
    pub fn net_added(&self) -> Interval {
        self.net_added
    }

    /// What the shortage says of a leak.
    #[must_use]
    pub fn leak(&self) -> &LeakReading {
        &self.leak
    }

    /// What a person should know of the journal.
    #[must_use]
    pub fn findings(&self) -> &[Finding] {
        &self.findings
    }

    /// Why the answer is what it is.
    #[must_use]
    pub fn because(&self) -> &[Reason] {
        &self.because
    }

    /// What to do next, the first thing first.
    #[must_use]
    pub fn next(&self) -> &[NextAct] {
        &self.next
    }

    /// Whether an act is allowed now.
    #[must_use]
    pub fn gate(&self, act: Act) -> &Gate {
        match act {
            Act::Open => &self.gates.open,
            Act::Pour => &self.gates.pour,
            Act::Close => &self.gates.close,
            Act::StopEngine => &self.gates.stop_engine,
        }
    }

    /// When the window of temperature opens and closes, counted from the last reading or pour; `None` where the engine
    /// does not run, the level has been found, or there is nothing to wait for. It decides nothing.
    #[must_use]
    pub fn forecast(&self) -> Option<&Outlook> {
        self.forecast.as_ref()
    }

    /// The cautions that go with the state of the job. They belong beside every telling of the result.
    #[must_use]
    pub fn cautions(&self) -> &[String] {
        &self.cautions
    }

    /// The smallest changes that would turn the answer, if they were asked for.
    #[must_use]
    pub fn flip(&self) -> &[Flip] {
        self.flip.as_deref().unwrap_or_default()
    }

    /// What keeps the verdict that was asked about away, if one was.
    #[must_use]
    pub fn why_not(&self) -> &[Reason] {
        self.why_not.as_deref().unwrap_or_default()
    }
}
