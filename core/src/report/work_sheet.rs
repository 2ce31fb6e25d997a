//! The work sheet of a job: what the customer is told and what the shop keeps, on one page.

use super::cautions::Cautions;
use super::customer::{customer, second_look};
use super::money_table::{billed, compared, for_shop};
use super::paper::{Block, Medium, Paper, Section};
use super::particulars::Particulars;
use super::picture::{Narrowing, Tightening, WarmUp};
use super::sentence::Given;
use super::sheet::named_sheet;
use super::teller::Teller;
use super::text::{leak, unproven};
use crate::check::{Course, Evaluation, Fact, Finding, Header, LevelCheck, Verdict};
use crate::error::Error;
use crate::estimate::invoice;
use crate::procedure::Pack;
use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

/// A work sheet in English: [`Teller::work_sheet`].
///
/// # Errors
/// Every fault of the journal, with path and position; those of [`tool_suits`](crate::torque::tool_suits) for the tool.
///
/// ```
/// use brimline::{Pack, report::{Medium, Particulars, work_sheet}};
/// let pack = Pack::embedded()?;
/// let journal = r#"{"format":"brimline-journal/1","procedure":"pipit-level","job":"check","entries":[
///     {"seq":1,"at":"2026-03-02T09:00:00Z","kind":"temperature","reading":"31 °C","source":"scan"}]}"#;
/// let page = work_sheet(&pack, journal, &Particulars::default(), Medium::Html)?;
/// assert!(page.starts_with("<!DOCTYPE html>") && page.contains("<svg") && !page.contains("<script"));
/// # Ok::<(), brimline::Error>(())
/// ```
pub fn work_sheet(
    pack: &Pack,
    journal: &str,
    particulars: &Particulars<'_>,
    medium: Medium,
) -> Result<String, Error> {
    Teller::english().work_sheet(pack, journal, particulars, medium)
}

impl Teller {
    /// The work sheet of a job, on one printed page: the shop, the job and the sheet; what was found and done, what it means
    /// and what comes next, in plain sentences; the leak reading; with prices the lines, their total and what was estimated; what is not proven; what a person should know of the
    /// journal; three pictures; every caution in full.
    ///
    /// In HTML it needs nothing from elsewhere and runs nothing, is light or dark as the reader's screen is, and whatever a
    /// host has typed is text in it.
    ///
    /// # Errors
    /// Every fault of the journal, with path and position; those of [`tool_suits`](crate::torque::tool_suits) for the tool; with
    /// prices those of [`invoice`](crate::invoice).
    pub fn work_sheet(
        &self,
        pack: &Pack,
        journal: &str,
        particulars: &Particulars<'_>,
        medium: Medium,
    ) -> Result<String, Error> {
        let check = LevelCheck::replay(pack, journal)?;
        let evaluation = check.evaluation();
        let course = check.course();
        let mut cautions = Cautions::on(self, evaluation.sheet());
        cautions.need(evaluation.cautions());
        let next = next(self, &evaluation, &mut cautions);
        let prices = particulars.prices.as_ref();
        let bill = prices.map(|prices| invoice(prices, &check, particulars.estimate.as_ref()));
        let bill = bill.transpose()?;
        let mut paper = Paper {
            language: self.catalogue().language().into(),
            title: self.word("page", "work_sheet"),
            shop: particulars.shop.iter().map(ToString::to_string).collect(),
            about: about(self, &check, &evaluation),
            ..Paper::default()
        };
        let heading = |id| self.word("heading", id);
        let verdict = self.sentence("answer", evaluation.verdict().slug(), &Given::nothing());
        let plainly = Block::Facts(customer(
            self,
            &course,
            &evaluation,
            second_look(&check, &evaluation).as_ref(),
        ));
        paper.told.push(Section::new(
            "verdict",
            heading("verdict"),
            Vec::from([Block::Lead(verdict), plainly]),
        ));
        let reading = Vec::from([Block::Lines(leak(self, &evaluation))]);
        paper
            .told
            .push(Section::new("leak", heading("leak"), reading));
        let mut open = unproven(self, &evaluation);
        open.extend(surplus(self, &evaluation, &mut cautions));
        let open = Vec::from([Block::Lines(open)]);
        paper
            .told
            .push(Section::new("unproven", heading("unproven"), open));
        if let Some(bill) = &bill {
            cautions.need(bill.cautions());
            paper.told.push(billed(self, bill));
            if let Some(against) = bill.against() {
                paper.told.push(compared(self, bill, against));
            }
            paper.told.extend(for_shop(self, bill.findings()));
        }
        if !evaluation.findings().is_empty() {
            let found = Vec::from([Block::Facts(findings(self, &course, &evaluation))]);
            paper
                .told
                .push(Section::new("findings", heading("findings"), found));
        }
        if !next.is_empty() {
            let acts = Vec::from([Block::Ticked(next)]);
            paper.told.push(Section::new("next", heading("next"), acts));
        }
        paper.shown = pictures(self, &check, &course, particulars, &mut cautions, medium)?;
        let numbered = Vec::from([Block::Numbered(cautions.all())]);
        paper
            .foot
            .push(Section::new("cautions", heading("cautions"), numbered));
        paper.foot.push(kept(self, pack, particulars, &evaluation));
        Ok(paper.write(medium))
    }
}

/// The job, what it is done on, the sheet, the day.
pub(super) fn about(
    teller: &Teller,
    check: &LevelCheck,
    evaluation: &Evaluation,
) -> Vec<(String, String)> {
    let header: &Header = check.header();
    let subject = header.subject.as_ref();
    let odometer = subject.and_then(|subject| subject.odometer);
    let by: Vec<&str> = people(check);
    let sheet = named_sheet(teller, evaluation.procedure(), evaluation.sheet());
    let given = [
        ("job", Some(teller.word("job", header.job.slug()))),
        ("job_id", header.job_id.clone()),
        ("vehicle", subject.map(|subject| subject.vehicle.clone())),
        ("unit", subject.and_then(|subject| subject.unit.clone())),
        (
            "odometer",
            odometer.map(|odometer| teller.number(&odometer.to_string())),
        ),
        (
            "opened",
            subject.and_then(|subject| subject.last_opened.clone()),
        ),
        (
            "complaint",
            subject.and_then(|subject| subject.complaint.clone()),
        ),
        ("sheet", Some(sheet)),
        ("time", time(teller, check)),
        ("by", (!by.is_empty()).then(|| by.join(", "))),
    ];
    given
        .into_iter()
        .filter_map(|(id, value)| Some((teller.word("head", id), value?)))
        .collect()
}

/// Who is named in the entries, each once.
fn people(check: &LevelCheck) -> Vec<&str> {
    let mut people: Vec<&str> = Vec::new();
    for by in check.entries().filter_map(|entry| entry.by.as_deref()) {
        if !people.contains(&by) {
            people.push(by);
        }
    }
    people
}

/// The day and the clock of the first and the last entry, as they were written.
fn time(teller: &Teller, check: &LevelCheck) -> Option<String> {
    let mut entries = check.entries();
    let first = entries.next()?.at.text();
    let last = entries.next_back().map_or(first, |entry| entry.at.text());
    let part = |text: &str, from, to| text.get(from..to).map(String::from);
    let given = Given::nothing()
        .with_some("day", part(first, 0, 10))
        .with_some("begun", part(first, 11, 16))
        .with_some("ended", part(last, 11, 16));
    Some(teller.say("head", "day_and_time", &given))
}

/// What may be the cause where more than the level was found. Of coolant in it nobody reads without its caution.
fn surplus(teller: &Teller, evaluation: &Evaluation, cautions: &mut Cautions<'_>) -> Vec<String> {
    let causes = [
        "may_be_overfilled",
        "may_hold_coolant",
        "may_be_another_opening",
    ];
    let reasons = evaluation.because().iter();
    let told: Vec<String> = reasons
        .filter(|reason| causes.contains(&reason.id))
        .map(|reason| teller.because(reason))
        .collect();
    if !told.is_empty() {
        cautions.need(&["coolant_toxic"]);
    }
    told
}

/// Findings, each behind the entry it is about, and whether later entries have answered it.
fn findings(
    teller: &Teller,
    course: &Course<'_>,
    evaluation: &Evaluation,
) -> Vec<(String, String)> {
    let label = |finding: &Finding| {
        let id = if is_answered(finding, course, evaluation) {
            "entry_answered"
        } else {
            "entry"
        };
        let first = finding.entries.first();
        let given = first.map(|seq| Given::nothing().with("entry", seq));
        given.map_or_else(String::new, |given| teller.say("label", id, &given))
    };
    let findings = evaluation.findings().iter();
    findings
        .map(|finding| (label(finding), teller.found(finding)))
        .collect()
}

/// Whether what a finding asks for was done later: the check made again, or the plug tightened by a number that stands.
fn is_answered(finding: &Finding, course: &Course<'_>, evaluation: &Evaluation) -> bool {
    let doubted = |seq: u64| {
        let mut findings = evaluation.findings().iter();
        findings.any(|other| other.id == "torque_unit_doubt" && other.entries.contains(&seq))
    };
    match finding.id {
        "engine_stopped_open" => !matches!(
            evaluation.verdict(),
            Verdict::Repeat | Verdict::OnHold | Verdict::NoProcedure
        ),
        "torque_unit_doubt" => course.steps.iter().any(|step| {
            let seq = step.entry.seq;
            matches!(step.entry.fact, Fact::Tightened { .. })
                && finding.entries.iter().all(|own| *own < seq)
                && !doubted(seq)
        }),
        _ => false,
    }
}

/// What to do next in the bay, each with the numbers of its cautions.
fn next(teller: &Teller, evaluation: &Evaluation, cautions: &mut Cautions<'_>) -> Vec<String> {
    let acts = evaluation.next().iter();
    acts.map(|act| {
        let mind = cautions.need_for(act);
        format!("{} {mind}", teller.advice(act)).trim_end().into()
    })
    .collect()
}

fn pictures(
    teller: &Teller,
    check: &LevelCheck,
    course: &Course<'_>,
    particulars: &Particulars<'_>,
    cautions: &mut Cautions<'_>,
    medium: Medium,
) -> Result<Vec<Section>, Error> {
    // What is seen need not be told as well.
    let is_told = medium != Medium::Html;
    let narrowing = Narrowing::of(teller, check, course);
    let warm_up = WarmUp::of(teller, check, course);
    let closing = Tightening::of(teller, check, course, particulars.rig.as_ref())?;
    cautions.need(closing.as_ref().map_or(&[][..], Tightening::cautions));
    let words = |told: &dyn Fn() -> Vec<(String, String)>| {
        if is_told { told() } else { Vec::new() }
    };
    let drawn = [
        (
            "narrowing",
            narrowing.map(|drawn| (drawn.draw(), words(&|| drawn.told_all()))),
        ),
        (
            "warm_up",
            warm_up.map(|drawn| (drawn.draw(), words(&|| drawn.told_all()))),
        ),
        (
            "closing",
            closing.map(|drawn| (drawn.draw(), words(&|| drawn.told_all()))),
        ),
    ];
    let sections = drawn.into_iter().filter_map(|(id, drawn)| {
        let (svg, told) = drawn?;
        let picture = Vec::from([Block::Picture { svg, told }]);
        Some(Section::new(id, teller.word("picture", id), picture))
    });
    Ok(sections.collect())
}

/// What the page rests on: the rules, the pack, the digest of the sheet, and the record that was sealed.
fn kept(
    teller: &Teller,
    pack: &Pack,
    particulars: &Particulars<'_>,
    evaluation: &Evaluation,
) -> Section {
    let label = |id: &str| teller.word("head", id);
    let digest = evaluation.procedure().digest.clone();
    let given = Given::nothing()
        .with("pack", pack.id())
        .with("version", pack.version());
    let mut facts = Vec::from([
        (label("rules"), String::from(crate::check::RULES)),
        (label("pack"), teller.say("head", "pack_version", &given)),
    ]);
    facts.extend(digest.map(|digest| (label("sheet_digest"), digest)));
    facts.extend(
        particulars
            .record
            .map(|digest| (label("record"), digest.into())),
    );
    Section::new(
        "kept",
        teller.word("heading", "kept"),
        Vec::from([Block::Facts(facts)]),
    )
}
