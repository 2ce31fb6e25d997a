//! What the customer approved, and whether the next pour would pass it.

use super::asked::Asked;
use super::facts::{Facts, path};
use super::variance::apart;
use crate::check::{Finding, LevelCheck};
use crate::error::{Error, ErrorKind, Fault};
use crate::money::{Currency, Money, mixed};
use crate::procedure::Severity;
use crate::quantity::{Amount, Unit};
use alloc::string::{String, ToString};
use alloc::vec::Vec;
use serde::Serialize;

/// What the customer approved, and what is left of it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct Approval {
    /// What was approved, tax included.
    pub ceiling: Money,
    /// The entry that says so, by `seq`; none where the host says so.
    pub entries: Vec<u64>,
    /// What the job comes to if nothing more is poured, tax included.
    pub so_far: Money,
    /// How much of the ceiling is left.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub headroom: Option<Money>,
    /// How far the ceiling is passed already.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub over: Option<Money>,
    /// What is about to be poured (volume).
    #[serde(skip_serializing_if = "Option::is_none")]
    pub planned: Option<Amount>,
    /// What the job comes to after that, tax included.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub after: Option<Money>,
    /// Where that would pass the ceiling: how much can still be poured, to the thousandth (volume).
    #[serde(skip_serializing_if = "Option::is_none")]
    pub affordable: Option<Amount>,
}

/// A ceiling, where it stands, and the entry that says it.
pub(super) struct Ceiling {
    pub(super) money: Money,
    path: String,
    entries: Vec<u64>,
}

impl Ceiling {
    /// The ceiling of the last approval, or else the host's.
    ///
    /// # Errors
    /// As for [`Money::parse`], and `conflict` for another currency, at `entries[2].ceiling`; likewise at
    /// `ceiling` for the host's.
    pub(super) fn of(
        check: &LevelCheck,
        facts: &Facts<'_>,
        asked: &Asked,
        currency: Currency,
    ) -> Result<Option<Self>, Error> {
        let mut faults = Vec::new();
        let mut last = None;
        // Whatever was said before it counts no more.
        if let Some((entry, text)) = facts.approved.last() {
            let at = path(check, entry, "ceiling");
            match Money::parse(text) {
                Ok(money) if money.currency() == currency => {
                    last = Some(Ceiling {
                        money,
                        path: at,
                        entries: Vec::from([entry.seq]),
                    });
                }
                Ok(money) => faults.push(mixed(currency, money.currency()).got(text).at(at)),
                Err(error) => {
                    let read = error.into_faults().into_iter();
                    faults.extend(read.map(|fault| fault.at(at.as_str())));
                }
            }
        }
        let stated = asked.ceiling.map(|money| Ceiling {
            money,
            path: "ceiling".to_string(),
            entries: Vec::new(),
        });
        let stated = stated.filter(|stated| {
            let same = stated.money.currency() == currency;
            if !same {
                faults.push(mixed(currency, stated.money.currency()).at("ceiling"));
            }
            same
        });
        match Error::from_faults(faults) {
            Some(error) => Err(error),
            None => Ok(last.or(stated)),
        }
    }

    /// Refuses a ceiling that does not even pay for the labour.
    ///
    /// # Errors
    /// `out_of_range` where the ceiling stands.
    pub(super) fn covers(&self, labour: Money) -> Result<(), Error> {
        if self.money.minor_units() >= labour.minor_units() {
            return Ok(());
        }
        let hint = "this does not pay for the labour of the job: ask for another approval";
        let fault = Fault::new(ErrorKind::OutOfRange).at(self.path.as_str());
        let fault = fault.got(&self.money.to_string());
        Err(fault
            .allowed([alloc::format!("{labour} and more")])
            .hint(hint)
            .into())
    }

    /// What is left of it, and whether what is planned would pass it. `total` is what the job comes to after a further volume.
    pub(super) fn approval(
        self,
        planned: Option<Amount>,
        total: &mut dyn FnMut(Option<Amount>) -> Result<Money, Error>,
    ) -> Result<(Approval, Vec<Finding>), Error> {
        let so_far = total(None)?;
        let (headroom, over) = apart(so_far, self.money)?;
        // Nothing left is still headroom, of nothing.
        let headroom = match over {
            None => headroom.or(Some(Money::zero(so_far.currency()))),
            Some(_) => None,
        };
        let mut approval = Approval {
            ceiling: self.money,
            entries: self.entries,
            so_far,
            headroom,
            over,
            planned,
            after: None,
            affordable: None,
        };
        let mut findings = Vec::new();
        let found = |id| {
            let finding = Finding::new(id, Severity::Stop).of(approval.entries.clone());
            finding.with("ceiling", self.money)
        };
        if over.is_some() {
            let finding = found("ceiling_passed");
            findings.push(finding.with("total", so_far));
        }
        if let Some(planned) = planned {
            let after = total(Some(planned))?;
            if over.is_none() && after.minor_units() > self.money.minor_units() {
                let affordable = affordable(planned, self.money, total)?;
                let finding = found("call_before_pour").with("planned", planned);
                let finding = finding.with("after", after);
                findings.push(finding.with("affordable", affordable));
                approval.affordable = Some(affordable);
            }
            approval.after = Some(after);
        }
        Ok((approval, findings))
    }
}

/// The most that can be poured under a ceiling, to the thousandth of the unit of what is planned.
fn affordable(
    planned: Amount,
    ceiling: Money,
    total: &mut dyn FnMut(Option<Amount>) -> Result<Money, Error>,
) -> Result<Amount, Error> {
    let unit: Unit = planned.unit();
    let most = planned.to(unit, 3, crate::quantity::Rounding::Ceiling)?;
    let thousandths = |steps| Amount::new(steps, 3, unit);
    // Nothing is affordable, all of it is not.
    let (mut low, mut high) = (
        0_i64,
        most.to(unit, 3, crate::quantity::Rounding::Ceiling)?
            .mantissa(),
    );
    while high.saturating_sub(low) > 1 {
        let middle = low.midpoint(high);
        if total(Some(thousandths(middle)?))?.minor_units() > ceiling.minor_units() {
            high = middle;
        } else {
            low = middle;
        }
    }
    let told = thousandths(low)?;
    Ok(told.to_exact(unit).unwrap_or(told))
}
