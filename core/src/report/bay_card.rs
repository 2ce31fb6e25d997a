//! The bay card: what a technician takes to the vehicle before the job begins.

use super::cautions::Cautions;
use super::paper::{Block, Medium, Paper, Section, Table};
use super::particulars::Particulars;
use super::picture::Tightening;
use super::sentence::{Given, Value};
use super::sheet;
use super::teller::Teller;
use super::work_sheet::about;
use crate::check::{Journal, LevelCheck};
use crate::document::canonical;
use crate::error::Error;
use crate::procedure::{Act, Pack, Procedure, TemperatureCondition};
use crate::quantity::{Amount, Rounding, Unit};
use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

/// A bay card in English: [`Teller::bay_card`].
///
/// # Errors
/// Every fault of the journal, with path and position; those of [`tool_suits`](crate::torque::tool_suits) for the tool.
///
/// ```
/// use brimline::{Pack, Unit, report::{Medium, Particulars, bay_card}};
/// let pack = Pack::embedded()?;
/// let journal = r#"{"format":"brimline-journal/1","procedure":"pipit-level","job":"check","entries":[]}"#;
/// let particulars = Particulars { scan_unit: Some(Unit::DegreeFahrenheit), ..Particulars::default() };
/// let card = bay_card(&pack, journal, &particulars, Medium::Text)?;
/// assert!(card.contains("107.6 °F") && card.contains("look for the leak"));
/// # Ok::<(), brimline::Error>(())
/// ```
pub fn bay_card(
    pack: &Pack,
    journal: &str,
    particulars: &Particulars<'_>,
    medium: Medium,
) -> Result<String, Error> {
    Teller::english().bay_card(pack, journal, particulars, medium)
}

impl Teller {
    /// The bay card of a job that is to begin: the window as the scan tool shows it, what must be met before the plug comes out,
    /// the acts in their order, what the pours add up to and where they end, how many containers that is, what the wrench is
    /// set to, and every caution in full. Of the journal only the header counts.
    ///
    /// # Errors
    /// Every fault of the journal, with path and position; those of [`tool_suits`](crate::torque::tool_suits) for the tool.
    pub fn bay_card(
        &self,
        pack: &Pack,
        journal: &str,
        particulars: &Particulars<'_>,
        medium: Medium,
    ) -> Result<String, Error> {
        let journal = Journal::from_json(journal, pack.measures())?;
        let check = LevelCheck::start(pack, &canonical(journal.header()))?;
        let evaluation = check.evaluation();
        let mut cautions = Cautions::on(self, check.sheet());
        cautions.need(evaluation.cautions());
        let mut paper = Paper {
            language: self.catalogue().language().into(),
            title: self.word("page", "bay_card"),
            shop: particulars.shop.iter().map(ToString::to_string).collect(),
            about: about(self, &check, &evaluation),
            ..Paper::default()
        };
        let section = |id, blocks| Section::new(id, self.word("heading", id), blocks);
        if check.sheet().is_none() {
            let found = evaluation.findings().iter();
            let found = found.map(|finding| self.found(finding)).collect();
            paper
                .told
                .push(section("findings", Vec::from([Block::Lines(found)])));
        }
        if let Some(window) = check.sheet().and_then(window_of) {
            let blocks = window_told(self, window, particulars.scan_unit);
            paper.told.push(section("window", blocks));
        }
        let gate = check.gate(Act::Open, None, None)?;
        let unmet = gate
            .unmet
            .iter()
            .map(|unmet| self.obstacle(unmet))
            .collect();
        paper
            .told
            .push(section("before", Vec::from([Block::Ticked(unmet)])));
        if let Some(sheet) = check.sheet() {
            let acts = check.whole_job();
            let acts = acts.iter().map(|act| {
                let mind = cautions.need_for(act);
                format!("{} {mind}", self.advice(act)).trim_end().into()
            });
            let acts: Vec<String> = acts.collect();
            let waits = [
                sheet::ask(self, "watch", "watch", sheet.method.watch),
                sheet::ask(self, "settle", "settle", sheet.method.settle),
            ];
            let waits: Vec<String> = waits.into_iter().flatten().collect();
            let blocks = Vec::from([Block::Lines(waits), Block::Ticked(acts)]);
            paper.told.push(section("order", blocks));
        }
        if let Some(blocks) = pours(self, &check, particulars.container) {
            paper.shown.push(section("pours", blocks));
        }
        let course = check.course();
        let rig = particulars.rig.as_ref();
        if let Some(closing) = Tightening::of(self, &check, &course, rig)? {
            let asked = check.sheet().and_then(|sheet| sheet.closing.as_ref());
            let asked = asked.and_then(|asked| sheet::closing(self, asked));
            let blocks = [
                asked.map(|asked| Block::Lines(Vec::from([asked]))),
                wrench(self, &closing),
            ];
            let blocks: Vec<Block> = blocks.into_iter().flatten().collect();
            paper.shown.push(section("wrench", blocks));
            cautions.need(closing.cautions());
            let (svg, told) = (closing.draw(), closing.told_all());
            let picture = Vec::from([Block::Picture { svg, told }]);
            paper.shown.push(Section::new(
                "closing",
                self.word("picture", "closing"),
                picture,
            ));
        }
        let numbered = Vec::from([Block::Numbered(cautions.all())]);
        paper.foot.push(section("cautions", numbered));
        Ok(paper.write(medium))
    }
}

fn window_of(sheet: &Procedure) -> Option<&TemperatureCondition> {
    sheet.conditions.as_ref()?.temperature.as_ref()
}

/// The window in the unit the scan tool shows, to the tenth inside the limits; then as the sheet prints it.
fn window_told(teller: &Teller, window: &TemperatureCondition, unit: Option<Unit>) -> Vec<Block> {
    let shown = |limit: Option<Amount>, rounding| {
        let limit = limit?;
        let unit = unit.unwrap_or(limit.unit());
        let exact = limit.to_exact(unit).filter(|exact| exact.decimals() <= 1);
        let told = exact.or_else(|| limit.to(unit, 1, rounding).ok());
        told.map(|told| Value::Written(told.to_string()))
    };
    let given = Given::nothing()
        .with_some("min", shown(window.min, Rounding::Ceiling))
        .with_some("max", shown(window.max, Rounding::Floor));
    let id = match (window.min, window.max) {
        (Some(_), Some(_)) => "window",
        (Some(_), None) => "window_from",
        _ => "window_to",
    };
    let lead = teller.sentence("card", id, &given);
    let printed = window
        .min
        .into_iter()
        .chain(window.max)
        .chain(window.printed.iter().copied());
    let printed: Vec<String> = printed
        .map(|print| teller.number(&print.to_string()))
        .collect();
    let given = Given::nothing().with("printed", printed.join(", "));
    let mut lines = Vec::from([teller.sentence("card", "printed", &given)]);
    let age = window.max_age.or(Amount::new(30, 0, Unit::Second).ok());
    lines.extend(age.map(|age| teller.sentence("card", "age", &Given::nothing().with("age", age))));
    Vec::from([Block::Lead(lead), Block::Lines(lines)])
}

/// What the pours add up to, where they end, and how many containers that is.
fn pours(teller: &Teller, check: &LevelCheck, container: Option<Amount>) -> Option<Vec<Block>> {
    let marks = check.pour_marks();
    let nothing = Given::nothing;
    let told = |amount: Amount| teller.say("label", "amount", &nothing().with("amount", amount));
    marks.first()?;
    let limit = check.sheet().and_then(|sheet| sheet.leak_limit.as_ref());
    let governing = limit.and_then(|limit| limit.limit());
    let rows = marks.iter().zip(1_u64..).map(|(mark, number)| {
        let note = if mark.is_past {
            teller.word("card", "past")
        } else if governing
            .is_some_and(|limit| limit.compare(&mark.total).is_ok_and(|order| order.is_eq()))
        {
            teller.word("card", "at_limit")
        } else if mark.is_doubted {
            teller.word("card", "doubt")
        } else {
            String::new()
        };
        Vec::from([number.to_string(), told(mark.pour), told(mark.total), note])
    });
    let columns = [
        ("pour", true),
        ("amount", true),
        ("in_all", true),
        ("note", false),
    ];
    let columns = columns.map(|(id, is_number)| (teller.word("column", id), is_number));
    let table = Table {
        columns: Vec::from(columns),
        rows: rows.collect(),
        totals: Vec::new(),
    };
    let mut blocks = Vec::new();
    let is_counted = marks.iter().any(|mark| mark.is_past);
    if let (true, Some(stated), Some(size)) = (is_counted, limit, container)
        && let Some(limit) = governing
        && let Some((whole, rest)) = containers_to(limit, size)
    {
        let id = if whole == 0 {
            "container"
        } else {
            "containers"
        };
        let given = nothing()
            .with("count", whole)
            .with("size", size)
            .with("limit", limit)
            .with("beyond", sheet::limit_is(stated))
            .with_some(
                "rest",
                rest.map(|rest| Value::Amount(rest, Rounding::Floor)),
            );
        blocks.push(Block::Lead(teller.sentence("card", id, &given)));
    }
    blocks.push(Block::Table(table));
    Some(blocks)
}

/// How many whole containers a limit is, and how much of the next.
fn containers_to(limit: Amount, size: Amount) -> Option<(u64, Option<Amount>)> {
    let whole = limit.count()?.checked_div(size.count()?)?;
    let whole = i64::try_from(whole).ok()?;
    let rest = limit.checked_sub(size.times(whole).ok()?).ok()?;
    Some((
        u64::try_from(whole).ok()?,
        (!rest.is_zero()).then_some(rest),
    ))
}

/// What the tool is set to, what the plug gets, and what is to be known of the tool.
fn wrench(teller: &Teller, closing: &Tightening<'_>) -> Option<Block> {
    let fit = closing.fit.as_ref()?;
    let nothing = Given::nothing;
    let mut lines = Vec::new();
    if let (Some(setting), Some(applied)) = (fit.setting, fit.applied) {
        let off = |is_less| {
            let error = rounded(fit.error?);
            let is_told = !error.is_zero() && error.is_negative() == is_less;
            let size = error.times(if is_less { -1 } else { 1 }).ok();
            size.filter(|_| is_told)
        };
        let given = nothing()
            .with("tool", fit.name)
            .with("setting", Value::Written(setting.to_string()))
            .with("applied", rounded(applied))
            .with_some("less", off(true))
            .with_some("more", off(false));
        lines.push(teller.sentence("card", "set", &given));
    }
    if !fit.suits {
        lines.push(teller.sentence("card", "unsuited", &nothing().with("tool", fit.name)));
    }
    for reason in &fit.reasons {
        let mut given = nothing();
        for (name, amount) in &reason.args {
            given = given.with(name, rounded(*amount));
        }
        lines.push(teller.sentence("tool_reason", reason.id.slug(), &given));
    }
    Some(Block::Lines(lines))
}

/// A computed number to the tenth, as a scale is read.
fn rounded(amount: Amount) -> Amount {
    if amount.decimals() <= 1 {
        return amount;
    }
    amount
        .to(amount.unit(), 1, Rounding::HalfEven)
        .unwrap_or(amount)
}
