//! What a shop's records cost it: checks that were never proven, leaks that were missed, fluid that was given away.

use super::books::Books;
use super::invoice::{Invoice, PricesRef};
use super::lines::{Line, What};
use super::price_list::PriceList;
use crate::check::Args;
use crate::document::canonical;
use crate::error::{Error, ErrorKind, Fault};
use crate::money::Money;
use crate::procedure::Pack;
use crate::quantity::{Amount, Kind, Rounding, Unit};
use crate::record::{Cited, Comebacks, Record, Unbooked, by_unit, comebacks};
use alloc::collections::{BTreeMap, BTreeSet};
use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;
use serde::Serialize;

/// The format this version writes.
pub(crate) const FORMAT: &str = "brimline-audit/1";

/// What is found of a job whose level was never proven.
const UNPROVEN: [&str; 5] = [
    "never_at_level",
    "left_open",
    "opened_below_window",
    "hold_unresolved",
    "poured_unchecked",
];

/// A record, and what of its fluid the customer was billed.
#[derive(Debug, Clone)]
pub struct Audited {
    /// The record.
    pub record: Record,
    /// The volume of fluid that was billed; `None` where that is not known.
    pub billed: Option<Amount>,
}

impl Audited {
    /// Records, each with the text of the volume that was billed of it, where that is known; without texts it is of none.
    ///
    /// # Errors
    /// All at once: as for [`Amount::parse`] at `jobs[0].billed`, and there what [`audit`] refuses;
    /// [`Conflict`](ErrorKind::Conflict) at `billed` where there are not as many texts as records.
    pub fn list<T: AsRef<str>>(
        records: Vec<Record>,
        billed: Option<&[Option<T>]>,
    ) -> Result<Vec<Self>, Error> {
        let mut faults = Vec::new();
        let texts = billed.unwrap_or_default();
        if billed.is_some() && texts.len() != records.len() {
            let fault = Fault::new(ErrorKind::Conflict).at("billed");
            let fault = fault.got(&texts.len().to_string());
            let hint = "give one for each record, none where it is not known";
            faults.push(fault.allowed([records.len().to_string()]).hint(hint));
        }
        let mut texts = texts.iter().enumerate();
        let mut jobs = Vec::with_capacity(records.len());
        for record in records {
            let text = texts.next();
            let text = text.and_then(|(index, text)| Some((index, text.as_ref()?.as_ref())));
            let mut billed = None;
            if let Some((index, text)) = text {
                let read = Amount::parse(text).map_err(Error::into_faults);
                let wrong = match &read {
                    Ok(volume) => unbillable(volume).into_iter().collect(),
                    Err(read) => read.clone(),
                };
                let at = format!("jobs[{index}].billed");
                faults.extend(wrong.into_iter().map(|fault| fault.at(at.as_str())));
                billed = read.ok();
            }
            jobs.push(Audited { record, billed });
        }
        Error::from_faults(faults).map_or(Ok(jobs), Err)
    }

    /// A record and its invoice. What was billed is not known where a container of it is on the list no more.
    #[must_use]
    pub fn invoiced(record: Record, prices: &PriceList, invoice: &Invoice) -> Self {
        let volume = |line: &Line| match line.quantity.kind() {
            Kind::Volume => Some((line.quantity.count()?, line.quantity.unit())),
            _ => {
                let (_, container) = prices.container(&line.item)?;
                let pieces = i128::from(line.quantity.mantissa());
                let count = container.size.count()?.checked_mul(pieces)?;
                Some((count, container.size.unit()))
            }
        };
        let fluid = invoice.lines().iter().filter(|line| line.id == What::Fluid);
        let volumes: Option<Vec<(i128, Unit)>> = fluid.map(volume).collect();
        let billed = volumes.and_then(|volumes| {
            // In the unit of the bill, so that nothing is rounded twice.
            let unit = volumes.first().map_or(Unit::Litre, |(_, unit)| *unit);
            let counts = volumes.iter().map(|(count, _)| *count);
            let sum = counts.fold(0, i128::saturating_add);
            Amount::from_count(sum, unit, 6, Rounding::HalfUp).ok()
        });
        Audited { record, billed }
    }
}

/// What a shop's records cost it, without tax, by a price list.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Audit {
    format: &'static str,
    prices: PricesRef,
    records: usize,
    items: Vec<AuditItem>,
    net: Money,
    cautions: Vec<&'static str>,
}

/// One thing that cost money, and the records it is about.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct AuditItem {
    /// What it is: `never_proven` (what doing the check again costs), `leak_missed` (what looking for the leak costs),
    /// `fluid_not_billed` (what the customer would have paid for it), `pour_not_booked` (nobody can say how much was poured, nor
    /// whether it was billed) or `promise_missed`; the last two have no price.
    pub id: &'static str,
    /// How many records it is about.
    pub count: usize,
    /// What it comes to without tax, as far as it has a price.
    pub net: Money,
    /// How many of the records have no price for it.
    pub unpriced: usize,
    /// The records, in the order of their digests.
    pub records: Vec<AuditedRecord>,
}

/// A record of which something costs money.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct AuditedRecord {
    /// The record, and the entries it rests on.
    #[serde(flatten)]
    pub record: Cited,
    /// What it comes to without tax, if it has a price.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub net: Option<Money>,
    /// The quantities it speaks of.
    pub args: Args,
}

impl Audit {
    /// How many different records count.
    #[must_use]
    pub const fn records(&self) -> usize {
        self.records
    }

    /// What cost money, each with its records.
    #[must_use]
    pub fn items(&self) -> &[AuditItem] {
        &self.items
    }

    /// All of it without tax, as far as it has a price.
    #[must_use]
    pub const fn net(&self) -> Money {
        self.net
    }

    /// Ids of what to mind; they belong beside every telling of it.
    #[must_use]
    pub fn cautions(&self) -> &[&'static str] {
        &self.cautions
    }

    /// The canonical JSON of the answer.
    #[must_use]
    pub fn to_json(&self) -> String {
        canonical(self)
    }
}

/// What records cost a shop, by its price list: doing checks again that were never proven, looking for leaks that were missed,
/// fluid that was poured and not billed, pours nobody can tell the volume of, and promised times that were missed.
///
/// What was never proven and what was missed is what [`comebacks`] finds. Fluid is what an invoice would bill: what was
/// poured and could be booked, and its price less the price of what was billed. A job lasts from its first entry of work to its
/// last; approvals and notes are none. Sheets come from the `pack`: where it has not the sheet a record rests on, fluid has no
/// price. What has no price is counted as such. A record that comes twice counts once, and so does a job that was sealed again
/// with more entries; it is billed what its last record tells, or else the last one before it that tells anything.
///
/// # Errors
///
/// [`WrongKind`](ErrorKind::WrongKind) at `jobs[0].billed` for what is no volume and [`OutOfRange`](ErrorKind::OutOfRange) for
/// one below zero, all at once; [`OutOfRange`](ErrorKind::OutOfRange) for more money than a sum holds.
///
/// ```
/// use brimline::estimate::{Audited, audit};
/// use brimline::{Amount, Pack, PriceList, Record};
/// let (pack, prices) = (Pack::embedded()?, PriceList::embedded()?);
/// let record = Record::seal(&pack, r#"{"format":"brimline-journal/1","procedure":"pipit-level","job":"top_up","entries":[
///     {"seq":1,"at":"2026-03-02T09:00:00Z","kind":"added","volume":"0.75 L","measured_by":"jug"}]}"#)?;
/// let told = audit(&prices, &pack, &[Audited { record, billed: Some(Amount::parse("0.5 L")?) }])?;
/// let given_away = &told.items()[2];
/// // 0.25 L at 21.20 EUR/L.
/// assert_eq!((given_away.id, given_away.net.to_string().as_str()), ("fluid_not_billed", "5.30 EUR"));
/// # Ok::<(), brimline::Error>(())
/// ```
pub fn audit(prices: &PriceList, pack: &Pack, jobs: &[Audited]) -> Result<Audit, Error> {
    let mut billed: BTreeMap<&str, Amount> = BTreeMap::new();
    let mut faults = Vec::new();
    for (index, job) in jobs.iter().enumerate() {
        let Some(volume) = job.billed else { continue };
        if let Some(fault) = unbillable(&volume) {
            faults.push(fault.at(format!("jobs[{index}].billed")));
        }
        billed.entry(job.record.digest()).or_insert(volume);
    }
    if let Some(error) = Error::from_faults(faults) {
        return Err(error);
    }
    let records: Vec<Record> = jobs.iter().map(|job| job.record.clone()).collect();
    let counted = counted(&records, &billed);
    let found = comebacks(&records);
    let (unproven, missed) = (of(&found, &UNPROVEN), of(&found, &["leak_not_followed"]));
    let books = Books { prices, pack };
    let mut kinds: [Vec<AuditedRecord>; 5] = Default::default();
    let [
        never_proven,
        leak_missed,
        not_billed,
        not_booked,
        promise_missed,
    ] = &mut kinds;
    for (digest, (record, billed)) in &counted {
        let told = |entries: &BTreeSet<u64>, net, args| AuditedRecord {
            record: Cited::of(record, entries.iter().copied()),
            net,
            args,
        };
        if let Some(entries) = unproven.get(digest) {
            never_proven.push(told(entries, books.again(record), Args::none()));
        }
        if let Some(entries) = missed.get(digest) {
            leak_missed.push(told(entries, books.search(), Args::none()));
        }
        if let Some((net, args)) = billed.and_then(|billed| books.given_away(record, billed)) {
            not_billed.push(told(&BTreeSet::new(), net, args));
        }
        let unbooked = BTreeSet::from_iter(Unbooked::of(record).poured);
        if !unbooked.is_empty() {
            not_booked.push(told(&unbooked, None, Args::none()));
        }
        if let Some(args) = books.late(record) {
            promise_missed.push(told(&BTreeSet::new(), None, args));
        }
    }
    let ids = [
        "never_proven",
        "leak_missed",
        "fluid_not_billed",
        "pour_not_booked",
        "promise_missed",
    ];
    let mut net = Money::new(0, prices.currency())?;
    let mut items = Vec::new();
    for (id, records) in ids.into_iter().zip(kinds) {
        let item = item(id, prices, records)?;
        net = net.plus(item.net)?;
        items.push(item);
    }
    Ok(Audit {
        format: FORMAT,
        prices: PricesRef::of(prices),
        records: counted.len(),
        items,
        net,
        cautions: found.cautions().to_vec(),
    })
}

/// The records that count, each job with the last of its own, by digest; and what was billed of each, where any record of
/// the job tells it.
fn counted<'r>(
    records: &'r [Record],
    billed: &BTreeMap<&str, Amount>,
) -> BTreeMap<&'r str, (&'r Record, Option<Amount>)> {
    let (series, _) = by_unit(records);
    let told = |record: &&Record| billed.get(record.digest()).copied();
    let mut counted = BTreeMap::new();
    for series in &series {
        for record in &series.records {
            counted.insert(record.digest(), (*record, told(record)));
        }
        for sealed in &series.resealed {
            let billed = sealed.iter().rev().find_map(told);
            if let Some(last) = sealed.last() {
                counted.insert(last.digest(), (*last, billed));
            }
        }
    }
    counted
}

/// Why this can be no billed volume, if it cannot.
fn unbillable(billed: &Amount) -> Option<Fault> {
    let fault = |kind, allowed| {
        let fault = Fault::new(kind).got(&billed.to_string());
        Some(fault.allowed([allowed]))
    };
    if billed.kind() != Kind::Volume {
        fault(ErrorKind::WrongKind, Kind::Volume.slug())
    } else if billed.is_negative() {
        fault(ErrorKind::OutOfRange, "0 L and more")
    } else {
        None
    }
}

fn item(
    id: &'static str,
    prices: &PriceList,
    records: Vec<AuditedRecord>,
) -> Result<AuditItem, Error> {
    let mut net = Money::new(0, prices.currency())?;
    for priced in records.iter().filter_map(|record| record.net) {
        net = net.plus(priced)?;
    }
    let unpriced = records.iter().filter(|record| record.net.is_none()).count();
    Ok(AuditItem {
        id,
        count: records.len(),
        net,
        unpriced,
        records,
    })
}

/// The records that something is found of, with all entries it rests on.
fn of<'f>(found: &'f Comebacks, ids: &[&str]) -> BTreeMap<&'f str, BTreeSet<u64>> {
    let mut told: BTreeMap<&str, BTreeSet<u64>> = BTreeMap::new();
    let asked = found
        .notices()
        .iter()
        .filter(|notice| ids.contains(&notice.id));
    for cited in asked.flat_map(|notice| &notice.records) {
        let entries = told.entry(cited.record.digest()).or_default();
        entries.extend(cited.entries.iter().copied());
    }
    told
}
