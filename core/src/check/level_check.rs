//! A check as it happens: append an entry, get what follows from it.

use super::correction::{Counted, reaches_back};
use super::delivery::{id_reused, repeat_delivery};
use super::entry::Entry;
use super::evaluate::Fold;
use super::evaluation::{Evaluation, interval};
use super::evidence::State;
use super::finding::{Finding, NextAct, Reason};
use super::flip;
use super::gate::Gate;
use super::header::{Header, header_from_json};
use super::journal::{Journal, entry_from_json};
use super::sheet::Sheet;
use super::trail::Trail;
use super::verdict::Verdict;
use crate::document::{Limits, canonical};
use crate::error::{Error, ErrorKind, Fault};
use crate::procedure::{Act, Pack, Procedure};
use crate::quantity::{Amount, Interval, Kind, Measures};
use alloc::format;
use alloc::string::{String, ToString};
use alloc::sync::Arc;
use alloc::vec;
use alloc::vec::Vec;

/// A check as it happens. It is a fold over its entries: replaying them gives the same bytes.
///
/// Copies are cheap and independent. Only a correction, or a drained volume that says it was captured, costs a
/// replay.
///
/// ```
/// use brimline::{LevelCheck, Pack};
/// let pack = Pack::embedded()?;
/// let header = r#"{"format":"brimline-journal/1","procedure":"pipit-level","job":"check"}"#;
/// let check = LevelCheck::start(&pack, header)?;
/// let entry = r#"{"seq":1,"at":"2026-03-02T09:00:00Z","kind":"engine","state":"idling"}"#;
/// let (check, findings) = check.record(entry)?;
/// assert!(findings.is_empty());
/// assert_eq!(check.evaluation().verdict().slug(), "incomplete");
/// # Ok::<(), brimline::Error>(())
/// ```
#[derive(Debug, Clone)]
pub struct LevelCheck {
    pack: Pack,
    header: Arc<Header>,
    limits: Limits,
    entries: Trail<Entry>,
    /// Which of the pack's sheets applies, by its place there.
    procedure: Option<usize>,
    /// How the journal was delivered, where it was read whole.
    delivery: Vec<Finding>,
    /// Findings of the journal as a whole, then those of its corrections.
    about: Vec<Finding>,
    pub(super) state: State,
}

/// What is known after one entry.
pub(crate) struct Known {
    pub(crate) verdict: Verdict,
    pub(crate) as_found: Interval,
    pub(crate) net_added: Interval,
    pub(crate) now: Interval,
    pub(crate) cautions: Vec<String>,
    /// Why, if the entry is a look at the opening.
    pub(crate) looked: Vec<Reason>,
}

impl LevelCheck {
    /// Begins a check from the header of a journal, under the default [`Limits`].
    ///
    /// # Errors
    /// Every fault of the header, with path and position.
    pub fn start(pack: &Pack, header: &str) -> Result<Self, Error> {
        Self::start_with(pack, header, &Limits::default())
    }

    /// Begins a check from the header of a journal.
    ///
    /// # Errors
    /// Every fault of the header, with path and position.
    pub fn start_with(pack: &Pack, header: &str, limits: &Limits) -> Result<Self, Error> {
        let header = header_from_json(header, pack.measures(), limits)?;
        Ok(Self::empty(pack, header, limits))
    }

    fn empty(pack: &Pack, header: Header, limits: &Limits) -> Self {
        let mut check = LevelCheck {
            pack: pack.clone(),
            header: Arc::new(header),
            limits: limits.clone(),
            entries: Trail::default(),
            procedure: None,
            delivery: Vec::new(),
            about: Vec::new(),
            state: State::new(),
        };
        check.replay_all();
        check
    }

    /// Builds a check from a whole journal, as if every entry had been recorded in turn.
    ///
    /// # Errors
    /// Every fault of the journal, with path and position.
    pub fn replay(pack: &Pack, journal: &str) -> Result<Self, Error> {
        Self::replay_with(pack, journal, &Limits::default())
    }

    /// Builds a check from a whole journal, within limits of the host's own.
    ///
    /// # Errors
    /// Every fault of the journal, with path and position.
    pub fn replay_with(pack: &Pack, journal: &str, limits: &Limits) -> Result<Self, Error> {
        let journal = Journal::from_json_with(journal, pack.measures(), limits)?;
        Ok(Self::read(pack, journal, limits))
    }

    /// Builds a check from a journal that was read before.
    pub(crate) fn of(pack: &Pack, journal: &Journal) -> Self {
        Self::read(pack, journal.clone(), &Limits::default())
    }

    fn read(pack: &Pack, journal: Journal, limits: &Limits) -> Self {
        let delivery = journal.delivery();
        let mut check = Self::empty(pack, journal.header, limits);
        check.delivery = delivery;
        check.entries = journal.entries.into_iter().collect();
        check.replay_all();
        check
    }

    /// Records one entry, given as JSON, and answers the findings that are new with it.
    ///
    /// An entry that repeats an earlier one under the same `id` changes nothing, and is told here only.
    ///
    /// # Errors
    /// If the entry cannot be read, or its `seq` does not rise; the check stays as it was.
    pub fn record(mut self, entry: &str) -> Result<(Self, Vec<Finding>), Error> {
        let entry = entry_from_json(entry, self.measures(), &self.limits)?;
        let mut new = Vec::new();
        match self.delivered(&entry) {
            Some((seq, true)) => return Ok((self, vec![repeat_delivery(seq)])),
            Some((seq, false)) => new.push(id_reused(seq, entry.seq)),
            None => {}
        }
        self.check_place(&entry)?;
        let known = self.state.findings.len();
        let is_first = self.entries.last().is_none();
        let reaches_back = reaches_back(&entry);
        self.entries.push(entry);
        if is_first || reaches_back {
            let before: Vec<Finding> = self.findings().cloned().collect();
            self.replay_all();
            let new = self
                .findings()
                .filter(|finding| !before.contains(finding))
                .cloned()
                .collect();
            return Ok((self, new));
        }
        if let Some(entry) = self.entries.last() {
            let sheet = Sheet::of(&self.pack, &self.header, self.procedure);
            self.state.take(&sheet, &Counted::plain(entry));
        }
        self.about.extend(new.iter().cloned());
        let fresh = self.state.findings.len().saturating_sub(known);
        let tail = new.len();
        new.extend(self.state.findings.iter().rev().take(fresh).cloned());
        if let Some(tail) = new.get_mut(tail..) {
            tail.reverse();
        }
        Ok((self, new))
    }

    /// The earlier entry under the `id` of this one, and whether it says the same: the first that does, or else
    /// the first of that `id`.
    fn delivered(&self, entry: &Entry) -> Option<(u64, bool)> {
        entry.id.as_ref()?;
        let of_name = || self.entries.iter().filter(|own| own.id == entry.id);
        let same = of_name().find(|own| own.says_the_same(entry));
        let first = of_name().next().map(|own| (own.seq, false));
        same.map(|own| (own.seq, true)).or(first)
    }

    fn check_place(&self, entry: &Entry) -> Result<(), Error> {
        if self.entries.len() >= self.limits.entries() {
            return Err(self
                .limits
                .too_many_entries(self.entries.len().saturating_add(1))
                .into());
        }
        let Some(last) = self.entries.last().filter(|last| entry.seq <= last.seq) else {
            return Ok(());
        };
        let fault = Fault::new(ErrorKind::Sequence)
            .got(&entry.seq.to_string())
            .allowed([format!("more than {}", last.seq)])
            .hint("number the entries in the order they were recorded");
        Err(fault.at("seq").into())
    }

    fn replay_all(&mut self) {
        let delivery = self.delivery.iter().cloned();
        let Fold {
            place,
            about,
            state,
            ..
        } = Fold::of(&self.pack, &self.header, self.entries.iter(), delivery);
        self.procedure = place;
        self.state = state;
        self.about = about;
    }

    fn findings(&self) -> impl Iterator<Item = &Finding> {
        self.about.iter().chain(self.state.findings.iter())
    }

    /// What bare `qt`, `pt`, `gal` and `fl oz` mean in this check: the profile's word, or else the pack's.
    #[must_use]
    pub fn measures(&self) -> Option<Measures> {
        self.header
            .profile
            .as_ref()
            .and_then(|profile| profile.measures)
            .or(self.pack.measures())
    }

    pub(super) fn sheet_now(&self) -> Sheet<'_> {
        Sheet::of(&self.pack, &self.header, self.procedure)
    }

    /// Whether an act is allowed. `planned` is the volume about to be poured; `at` is the moment that is asked
    /// about, RFC 3339, and the newest entry's if not given.
    ///
    /// # Errors
    /// `wrong_kind` if what is planned is no volume, `out_of_range` if it is less than nothing, `not_a_time` for a
    /// bad moment.
    pub fn gate(&self, act: Act, planned: Option<Amount>, at: Option<&str>) -> Result<Gate, Error> {
        if let Some(planned) = planned {
            let kind = match planned.kind() {
                Kind::Volume if !planned.is_negative() => None,
                Kind::Volume => Some(ErrorKind::OutOfRange),
                _ => Some(ErrorKind::WrongKind),
            };
            if let Some(kind) = kind {
                let fault = Fault::new(kind).got(&planned.to_string());
                return Err(fault
                    .allowed(["a volume from nothing upward, as 0.5 L"])
                    .at("planned")
                    .into());
            }
        }
        let at = match at {
            Some(text) => super::moment::instant(text)?.as_nanosecond(),
            None => self.state.at.unwrap_or(0),
        };
        Ok(self.state.gate(&self.sheet_now(), act, planned, at))
    }

    /// The answer so far: the same as [`evaluate`](crate::evaluate) gives for the same journal.
    #[must_use]
    pub fn evaluation(&self) -> Evaluation {
        Evaluation::of(
            &self.state,
            &self.sheet_now(),
            &self.header.procedure,
            self.about.clone(),
        )
    }

    /// The answer so far, with the smallest changes that would turn it and what keeps a verdict away.
    #[must_use]
    pub fn evaluation_with(&self, flip: bool, why_not: Option<Verdict>) -> Evaluation {
        let sheet = self.sheet_now();
        let mut evaluation = self.evaluation();
        if flip {
            let fold = Fold::of(&self.pack, &self.header, self.entries.iter(), []);
            evaluation.flip = Some(flip::flips(&sheet, &fold.entries));
        }
        evaluation.why_not = why_not.map(|wanted| self.state.why_not(&sheet, wanted));
        evaluation
    }

    /// What is known after the newest entry, without working out the whole answer.
    pub(crate) fn known(&self) -> Known {
        let sheet = self.sheet_now();
        let told = |span| interval(span, sheet.unit());
        let newest = self.entries.last().map(|entry| entry.seq);
        let look = self.state.looks.last();
        let mut looked = Vec::new();
        if let Some(look) = look.filter(|look| newest == Some(look.seq)) {
            self.state.because_of(&sheet, look, &mut looked);
        }
        let verdict = self.state.verdict(&sheet);
        Known {
            verdict,
            cautions: self.state.cautions(&sheet, verdict),
            as_found: told(self.state.ledger.found),
            net_added: told(self.state.ledger.net_added()),
            now: told(self.state.ledger.now),
            looked,
        }
    }

    /// What to do next, the first thing first.
    #[must_use]
    pub fn advice(&self) -> Vec<NextAct> {
        let sheet = self.sheet_now();
        self.state
            .next(&sheet, &self.state.leak(&sheet), self.state.at.unwrap_or(0))
    }

    /// The sheet that applies, if one does.
    #[must_use]
    pub fn sheet(&self) -> Option<&Procedure> {
        self.sheet_now().procedure
    }

    /// What the journal says before its first entry.
    #[must_use]
    pub fn header(&self) -> &Header {
        &self.header
    }

    /// The entries as they were recorded, corrections among them.
    pub fn entries(&self) -> impl DoubleEndedIterator<Item = &Entry> + Clone {
        self.entries.iter()
    }

    /// The journal as JSON Lines: the header, then a line for each entry, each ending in a line feed.
    #[must_use]
    pub fn journal_lines(&self) -> String {
        let mut out = canonical(&*self.header);
        out.push('\n');
        for entry in self.entries.iter() {
            out.push_str(&canonical(entry));
            out.push('\n');
        }
        out
    }
}
