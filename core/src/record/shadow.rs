//! Running beside a host's old rule: where the evidence of an old job says something else, and how good that evidence is.

use crate::check::{
    BySheet, Entry, Evaluation, Fact, Journal, Reason, Verdict, evaluate, journal, standing,
};
use crate::document::{Limits, Reader, canonical};
use crate::error::{Error, ErrorKind, Fault};
use crate::procedure::Pack;
use crate::quantity::{Amount, Measures};
use crate::word::words;
use alloc::collections::BTreeMap;
use alloc::string::String;
use alloc::vec::Vec;
use serde::Serialize;

/// The format this version writes.
pub(crate) const FORMAT: &str = "brimline-shadow/1";

words! {
    /// How good the evidence of an old job is.
    pub enum Grade {
        /// A look at the opening, all that the sheet asks, and how every volume was measured.
        A = "A",
        /// A look at the opening, with gaps.
        B = "B",
        /// No look: a temperature of the fluid, and amounts.
        C = "C",
        /// Amounts alone, or less.
        D = "D",
    }
}

/// An old job: what is known of it, and what the host's old rule said.
///
/// Whatever is known is told as a journal. Of a job of which only amounts were kept, that is a journal of pours.
#[derive(Debug, Clone)]
#[non_exhaustive]
pub struct OldJob {
    /// The host's name of the job.
    pub id: String,
    /// What is known of it.
    pub journal: Journal,
    /// What the old rule said of the level, if it did.
    pub verdict: Option<Verdict>,
    /// What the old rule said of a leak, if it did.
    pub leak: Option<BySheet>,
}

impl OldJob {
    /// An old job of which nothing was said.
    #[must_use]
    pub fn new(id: &str, journal: Journal) -> Self {
        OldJob {
            id: id.into(),
            journal,
            verdict: None,
            leak: None,
        }
    }

    /// Reads an old job: `{"id", "journal": {…}, "verdict"?, "leak"?}`, with the verdict and the leak reading in the words
    /// of a result, as the host translates its own.
    ///
    /// # Errors
    /// Every fault of the document, with path and position.
    ///
    /// ```
    /// use brimline::record::OldJob;
    /// let old = OldJob::from_json(r#"{"id":"4711","verdict":"at_level","journal":{
    ///     "format":"brimline-journal/1","procedure":"pipit-level","job":"check","entries":[]}}"#, None)?;
    /// assert_eq!(old.verdict, Some(brimline::Verdict::AtLevel));
    /// # Ok::<(), brimline::Error>(())
    /// ```
    pub fn from_json(text: &str, pack_measures: Option<Measures>) -> Result<Self, Error> {
        let limits = Limits::default();
        let mut reader = Reader::new(text, &limits)?;
        reader.measures = pack_measures;
        let node = reader.parse_around(&["journal"]);
        let old = node.and_then(|node| {
            let object = reader.object(&node, &["id", "journal", "verdict", "leak"])?;
            let id = reader.required(&object, "id", Reader::text);
            let journal = reader.required(&object, "journal", |reader, node| {
                reader.document(node, |reader, node| journal(reader, node, false))
            });
            let verdict = reader.optional(&object, "verdict", |reader, node| {
                reader.word(node, Verdict::WORDS)
            });
            let leak = reader.optional(&object, "leak", |reader, node| {
                reader.word(node, BySheet::WORDS)
            });
            Some(OldJob {
                id: id?,
                journal: journal?,
                verdict,
                leak,
            })
        });
        reader.finish()?;
        // What read without a fault is there.
        old.ok_or_else(|| Fault::new(ErrorKind::Internal).into())
    }
}

/// Where the evidence of old jobs says something else than the old rule did.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Shadow {
    format: &'static str,
    jobs: usize,
    grades: BTreeMap<&'static str, usize>,
    same: usize,
    not_compared: usize,
    differences: Vec<ShadowDifference>,
}

/// One answer that differs.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct ShadowDifference {
    /// What differs: `level_differs`, `leak_differs`, or `outside_window` for a level that was told right at a temperature
    /// outside the window, by a job of which no look is known.
    pub id: &'static str,
    /// The host's name of the job.
    pub job: String,
    /// How good the evidence is.
    pub grade: Grade,
    /// What the old rule said.
    pub was: &'static str,
    /// What the evidence says.
    pub now: &'static str,
    /// What the sheet asks and the journal does not tell, by the kinds of entries; `measured_by` for a volume of which
    /// nobody said how it was measured.
    pub missing: Vec<&'static str>,
    /// Why.
    pub because: Vec<Reason>,
}

impl Shadow {
    /// How many jobs were looked at.
    #[must_use]
    pub const fn jobs(&self) -> usize {
        self.jobs
    }

    /// How many jobs there are of each [`Grade`], by its word.
    #[must_use]
    pub const fn grades(&self) -> &BTreeMap<&'static str, usize> {
        &self.grades
    }

    /// How many jobs the evidence says the same of, as far as the old rule said anything.
    #[must_use]
    pub const fn same(&self) -> usize {
        self.same
    }

    /// How many jobs say too little for any of their old answers to be compared.
    #[must_use]
    pub const fn not_compared(&self) -> usize {
        self.not_compared
    }

    /// What differs, in the order of the jobs.
    #[must_use]
    pub fn differences(&self) -> &[ShadowDifference] {
        &self.differences
    }

    /// The canonical JSON of the answer.
    #[must_use]
    pub fn to_json(&self) -> String {
        canonical(self)
    }
}

/// Runs beside a host's old rule: evaluates each old job on the pack and tells what differs, with the grade of the evidence.
///
/// A level is compared where somebody looked, which is grades A and B. A leak reading is compared at every grade: an old
/// `below` stands as long as the amounts are not past the limit.
///
/// ```
/// use brimline::{Pack, record::{OldJob, shadow}};
/// let pack = Pack::embedded()?;
/// // The old rule saw 1.2 L go in and said nothing of a leak; the sheet's limit is 1.1 L.
/// let old = OldJob::from_json(r#"{"id":"4711","leak":"below","journal":{
///     "format":"brimline-journal/1","procedure":"pipit-level","job":"check","entries":[
///     {"seq":1,"at":"2025-03-04T09:00:00Z","kind":"added","volume":"1.2 L"}]}}"#, pack.measures())?;
/// let told = shadow(&pack, &[old]);
/// let difference = &told.differences()[0];
/// assert_eq!((difference.id, difference.now), ("leak_differs", "above"));
/// assert_eq!(difference.grade.slug(), "D");
/// # Ok::<(), brimline::Error>(())
/// ```
#[must_use]
pub fn shadow(pack: &Pack, jobs: &[OldJob]) -> Shadow {
    let mut told = Shadow {
        format: FORMAT,
        jobs: jobs.len(),
        grades: BTreeMap::new(),
        same: 0,
        not_compared: 0,
        differences: Vec::new(),
    };
    for job in jobs {
        let Ok(evaluation) = evaluate(pack, &job.journal) else {
            // A journal that was read always evaluates.
            told.not_compared = told.not_compared.saturating_add(1);
            continue;
        };
        let (grade, missing) = graded(&job.journal, &evaluation);
        let count = told.grades.entry(grade.slug()).or_default();
        *count = count.saturating_add(1);
        let answers = [
            level(job, &evaluation, grade),
            leak(job, &evaluation),
            outside(job, &evaluation, grade),
        ];
        let differing = answers.iter().flatten().flatten();
        let before = told.differences.len();
        told.differences
            .extend(differing.map(|(id, was, now)| ShadowDifference {
                id,
                job: job.id.clone(),
                grade,
                was,
                now,
                missing: missing.clone(),
                because: reasons(&evaluation, *id == "leak_differs"),
            }));
        if answers.iter().all(Option::is_none) {
            told.not_compared = told.not_compared.saturating_add(1);
        } else if told.differences.len() == before {
            told.same = told.same.saturating_add(1);
        }
    }
    told
}

/// An answer that could be compared, and how it differs if it does.
type Compared = Option<Option<(&'static str, &'static str, &'static str)>>;

fn level(job: &OldJob, evaluation: &Evaluation, grade: Grade) -> Compared {
    let was = job.verdict?;
    let now = evaluation.verdict();
    let looked = matches!(grade, Grade::A | Grade::B);
    looked.then(|| (was != now).then(|| ("level_differs", was.slug(), now.slug())))
}

fn leak(job: &OldJob, evaluation: &Evaluation) -> Compared {
    let was = job.leak?;
    let now = evaluation.leak().by_sheet;
    // As long as the level was not found, what was not past the limit may still be below it.
    let stands = was == now || (was, now) == (BySheet::Below, BySheet::Open);
    Some((!stands).then(|| ("leak_differs", was.slug(), now.slug())))
}

/// A level that was told right at a temperature outside the window, where no look tells more.
fn outside(job: &OldJob, evaluation: &Evaluation, grade: Grade) -> Compared {
    if job.verdict != Some(Verdict::AtLevel) || grade != Grade::C {
        return None;
    }
    let window = evaluation
        .sheet()?
        .conditions
        .as_ref()?
        .temperature
        .as_ref()?;
    let reading = fluid_readings(&standing(job.journal.entries().iter())).next_back()?;
    let is_outside =
        window.min.is_some_and(|min| reading < min) || window.max.is_some_and(|max| reading > max);
    let was = Verdict::AtLevel.slug();
    Some(is_outside.then(|| ("outside_window", was, Verdict::NotProven.slug())))
}

fn fluid_readings<'e>(entries: &'e [&'e Entry]) -> impl DoubleEndedIterator<Item = Amount> + 'e {
    entries.iter().filter_map(|entry| match &entry.fact {
        Fact::Temperature { reading, source } if source.reads_fluid() => Some(*reading),
        _ => None,
    })
}

/// The grade of a journal, and what it lacks.
fn graded(journal: &Journal, evaluation: &Evaluation) -> (Grade, Vec<&'static str>) {
    let entries = standing(journal.entries().iter());
    let tells = |kind: &str| entries.iter().any(|entry| entry.fact.kind() == kind);
    let conditions = evaluation
        .sheet()
        .and_then(|sheet| sheet.conditions.as_ref());
    let asks = |asked: fn(&crate::procedure::Conditions) -> bool| conditions.is_some_and(asked);
    let volumes = entries.iter().filter_map(|entry| match &entry.fact {
        Fact::Added { measured, .. } | Fact::Drained { measured, .. } => Some(measured),
        _ => None,
    });
    let has_fluid_reading = fluid_readings(&entries).next().is_some();
    let asked = [
        (true, tells("plug"), "plug"),
        (true, tells("flow"), "flow"),
        (
            asks(|sheet| sheet.temperature.is_some()),
            has_fluid_reading,
            "temperature",
        ),
        (
            asks(|sheet| sheet.engine.is_some()),
            tells("engine"),
            "engine",
        ),
        (
            asks(|sheet| sheet.selector.is_some()),
            tells("selector"),
            "selector",
        ),
        (
            asks(|sheet| sheet.ranges.is_some()),
            tells("ranges"),
            "ranges",
        ),
        (asks(|sheet| sheet.tilt.is_some()), tells("level"), "level"),
        (
            true,
            volumes.clone().all(|volume| volume.by.is_some()),
            "measured_by",
        ),
    ];
    let missing: Vec<&'static str> = asked
        .iter()
        .filter(|(asked, told, _)| *asked && !told)
        .map(|(_, _, name)| *name)
        .collect();
    let grade = match (tells("flow"), missing.is_empty()) {
        (true, true) => Grade::A,
        (true, false) => Grade::B,
        (false, _) if has_fluid_reading && volumes.count() > 0 => Grade::C,
        (false, _) => Grade::D,
    };
    (grade, missing)
}

/// The reasons of the leak reading, or the others.
fn reasons(evaluation: &Evaluation, of_leak: bool) -> Vec<Reason> {
    let all = evaluation.because().iter();
    all.filter(|reason| reason.id.starts_with("leak_") == of_leak)
        .cloned()
        .collect()
}
