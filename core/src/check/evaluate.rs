//! One call: a pack and a journal in, the answer out.

use super::correction::{Counted, counted};
use super::delivery::reused_ids;
use super::entry::Entry;
use super::evaluation::Evaluation;
use super::evidence::State;
use super::finding::Finding;
use super::flip;
use super::header::{Header, Job};
use super::journal::Journal;
use super::plausible::unknown_standing;
use super::sheet::Sheet;
use super::verdict::Verdict;
use crate::document::Limits;
use crate::error::Error;
use crate::procedure::{InForce, Pack, Severity};
use alloc::borrow::Cow;
use alloc::string::ToString;
use alloc::vec::Vec;
use jiff::Timestamp;
use jiff::tz::Offset;

/// What an evaluation is asked for beside the answer.
#[derive(Debug, Clone, Default)]
#[non_exhaustive]
pub struct Options {
    /// How much is read before a document is refused.
    pub limits: Limits,
    /// Whether to find the smallest changes that would turn the answer.
    pub flip: bool,
    /// The verdict whose absence is to be explained.
    pub why_not: Option<Verdict>,
}

/// A pack, or its JSON text.
#[derive(Debug, Clone)]
#[non_exhaustive]
pub enum PackSource<'a> {
    /// A pack that was read before.
    Pack(&'a Pack),
    /// The text of one.
    Json(&'a str),
}

impl<'a> From<&'a Pack> for PackSource<'a> {
    fn from(pack: &'a Pack) -> Self {
        PackSource::Pack(pack)
    }
}

impl<'a> From<&'a str> for PackSource<'a> {
    fn from(text: &'a str) -> Self {
        PackSource::Json(text)
    }
}

/// A journal, or its text: one JSON document or JSON Lines.
#[derive(Debug, Clone)]
#[non_exhaustive]
pub enum JournalSource<'a> {
    /// A journal that was read before.
    Journal(&'a Journal),
    /// The text of one.
    Json(&'a str),
}

impl<'a> From<&'a Journal> for JournalSource<'a> {
    fn from(journal: &'a Journal) -> Self {
        JournalSource::Journal(journal)
    }
}

impl<'a> From<&'a str> for JournalSource<'a> {
    fn from(text: &'a str) -> Self {
        JournalSource::Json(text)
    }
}

/// Evaluates a journal on a pack.
///
/// # Errors
/// Every fault of the pack, or else of the journal, with path and position.
///
/// ```
/// let pack = brimline::Pack::embedded()?;
/// let journal = r#"{"format":"brimline-journal/1","procedure":"pipit-level","job":"check","entries":[
///     {"seq":1,"at":"2026-03-02T09:00:00Z","kind":"added","volume":"0.5 L","measured_by":"jug"}]}"#;
/// let evaluation = brimline::evaluate(&pack, journal)?;
/// assert_eq!(evaluation.net_added().to_string(), "[0.48 L, 0.52 L]");
/// # Ok::<(), brimline::Error>(())
/// ```
pub fn evaluate<'a>(
    pack: impl Into<PackSource<'a>>,
    journal: impl Into<JournalSource<'a>>,
) -> Result<Evaluation, Error> {
    evaluate_with(pack, journal, &Options::default())
}

/// Evaluates a journal on a pack, with more asked for.
///
/// # Errors
/// Every fault of the pack, or else of the journal, with path and position.
pub fn evaluate_with<'a>(
    pack: impl Into<PackSource<'a>>,
    journal: impl Into<JournalSource<'a>>,
    options: &Options,
) -> Result<Evaluation, Error> {
    let pack = match pack.into() {
        PackSource::Pack(pack) => Cow::Borrowed(pack),
        PackSource::Json(text) => Cow::Owned(Pack::from_json_with(text, &options.limits)?),
    };
    match journal.into() {
        JournalSource::Journal(journal) => Ok(answer(&pack, journal, options)),
        JournalSource::Json(text) => {
            let journal = Journal::from_json_with(text, pack.measures(), &options.limits)?;
            Ok(answer(&pack, &journal, options))
        }
    }
}

/// Evaluates many journals on one pack, in order; a journal that cannot be read answers its own error.
pub fn evaluate_many<'a, J: Into<JournalSource<'a>>>(
    pack: &'a Pack,
    journals: impl IntoIterator<Item = J>,
) -> Vec<Result<Evaluation, Error>> {
    journals
        .into_iter()
        .map(|journal| evaluate(pack, journal))
        .collect()
}

/// The verdict alone, for going through many journals that were read before; nothing else is worked out.
///
/// ```
/// let pack = brimline::Pack::embedded()?;
/// let text = r#"{"format":"brimline-journal/1","procedure":"pipit-level","job":"check","entries":[]}"#;
/// let journal = brimline::Journal::from_json(text, pack.measures())?;
/// assert_eq!(brimline::verdict(&pack, &journal), brimline::Verdict::Incomplete);
/// # Ok::<(), brimline::Error>(())
/// ```
#[must_use]
pub fn verdict(pack: &Pack, journal: &Journal) -> Verdict {
    let fold = Fold::of(pack, &journal.header, journal.entries.iter(), []);
    fold.state.verdict(&fold.sheet)
}

fn answer(pack: &Pack, journal: &Journal, options: &Options) -> Evaluation {
    let entries = journal.entries.iter();
    let Fold {
        sheet,
        entries,
        about,
        state,
        ..
    } = Fold::of(pack, &journal.header, entries, journal.delivery());
    let mut evaluation = Evaluation::of(&state, &sheet, &journal.header.procedure, about);
    if options.flip {
        evaluation.flip = Some(flip::flips(&sheet, &entries));
    }
    evaluation.why_not = options.why_not.map(|wanted| state.why_not(&sheet, wanted));
    evaluation
}

/// A journal gone through from its first entry to its last.
pub(super) struct Fold<'a> {
    pub(super) sheet: Sheet<'a>,
    /// Which of the pack's sheets applies, by its place there.
    pub(super) place: Option<usize>,
    pub(super) entries: Vec<Counted<'a>>,
    /// Findings of the journal as a whole: of the choice of the sheet, then of corrections and ids.
    pub(super) about: Vec<Finding>,
    pub(super) state: State,
}

impl<'a> Fold<'a> {
    /// `delivery` is what is to be said of how the journal came.
    pub(super) fn of(
        pack: &'a Pack,
        header: &'a Header,
        entries: impl DoubleEndedIterator<Item = &'a Entry> + Clone,
        delivery: impl IntoIterator<Item = Finding>,
    ) -> Self {
        let first = entries.clone().next().map(|entry| entry.at.instant);
        let (place, mut about) = resolve(pack, header, first);
        about.extend(delivery);
        let sheet = Sheet::of(pack, header, place);
        let (counted, findings) = counted(entries.clone(), |drained| sheet.books_drained(drained));
        about.extend(findings);
        about.extend(reused_ids(entries));
        about.extend(unknown_standing(sheet.standing));
        let state = State::after(&sheet, &counted);
        Fold {
            sheet,
            place,
            entries: counted,
            about,
            state,
        }
    }
}

/// Which of the pack's sheets applies, by its place there, and what is to be said of the choice.
fn resolve(
    pack: &Pack,
    header: &Header,
    first: Option<Timestamp>,
) -> (Option<usize>, Vec<Finding>) {
    let mut findings = Vec::new();
    let stop = |id| Finding::new(id, Severity::Stop).with("procedure", header.procedure.as_str());
    if let Some(pin) = &header.pack {
        if pin.id != pack.id() {
            findings.push(
                stop("pack_differs")
                    .with("named", pin.id.as_str())
                    .with("given", pack.id()),
            );
            return (None, findings);
        }
        let other_digest = pin
            .digest
            .as_deref()
            .is_some_and(|digest| digest != pack.digest());
        if pin.version != pack.version() || other_digest {
            let finding = Finding::new("pack_changed", Severity::Caution).field("pack");
            findings.push(
                finding
                    .with("named", pin.version.as_str())
                    .with("given", pack.version()),
            );
        }
    }
    let chosen = match header.edition {
        Some(edition) => {
            let sheet = pack.procedure(&header.procedure, edition);
            if sheet.is_none() {
                findings.push(stop("edition_unknown").with("edition", u64::from(edition)));
            }
            sheet
        }
        None => {
            let day = first.map(|first| Offset::UTC.to_datetime(first).date());
            match pack.in_force(&header.procedure, day) {
                InForce::One(sheet) => Some(sheet),
                InForce::Several(sheets) => {
                    let named = sheets
                        .iter()
                        .map(|sheet| sheet.edition.to_string())
                        .collect::<Vec<_>>();
                    findings.push(stop("editions_clash").with("editions", named.join(" ")));
                    None
                }
                InForce::NotYet => {
                    findings.push(stop("edition_not_begun"));
                    None
                }
                InForce::Unknown => {
                    findings.push(stop("procedure_unknown"));
                    None
                }
            }
        }
    };
    let Some(sheet) = chosen else {
        return (None, findings);
    };
    // A sheet that names no fluid asks for none; one that names an unknown fluid must not be guessed at.
    let unknown = sheet
        .fluid
        .as_deref()
        .filter(|fluid| pack.fluid(fluid).is_none());
    if let Some(fluid) = unknown
        && header.job != Job::ConditionOnly
    {
        let finding = Finding::new("fluid_unresolved", Severity::Stop).field("fluid");
        findings.push(finding.with("fluid", fluid));
    }
    (
        pack.procedures().position(|own| core::ptr::eq(own, sheet)),
        findings,
    )
}
