//! A whole check, told entry by entry: what happened, what is known after it, what is advised, what was caught.

use super::cautions::Cautions;
use super::event::event;
use super::known::told;
use super::page::Page;
use super::sentence::Given;
use super::sheet::{asks, identity, subject};
use super::teller::Teller;
use super::text::{answer, heading};
use crate::check::{Entry, Fact, Finding, Gate, Journal, Known, LevelCheck, PlugState, Verdict};
use crate::document::canonical;
use crate::error::Error;
use crate::procedure::{Act, Pack};
use crate::quantity::Interval;
use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

/// Under the time and the number of an entry.
const UNDER: &str = "               ";

/// A check told from its journal in plain English lines of at most 80 columns: the job, what the sheet asks, the
/// cautions, each entry with what follows from it, and the result with what would turn it.
///
/// # Errors
/// Every fault of the journal, with path and position.
///
/// ```
/// let pack = brimline::Pack::embedded()?;
/// let journal = r#"{"format":"brimline-journal/1","procedure":"pipit-level","job":"check","entries":[
///     {"seq":1,"at":"2026-03-02T09:00:00Z","kind":"engine","state":"idling"}]}"#;
/// let told = brimline::report::story(&pack, journal)?;
/// assert!(told.contains("Engine idling.") && told.contains("Cautions"));
/// # Ok::<(), brimline::Error>(())
/// ```
pub fn story(pack: &Pack, journal: &str) -> Result<String, Error> {
    Teller::english().story(pack, journal)
}

impl Teller {
    /// A check told from its journal in plain lines of at most 80 columns: the job, what the sheet asks, the
    /// cautions, each entry with what follows from it, and the result with what would turn it.
    ///
    /// # Errors
    /// Every fault of the journal, with path and position.
    pub fn story(&self, pack: &Pack, journal: &str) -> Result<String, Error> {
        let whole = LevelCheck::replay(pack, journal)?;
        let journal = Journal::from_json(journal, pack.measures())?;
        let result = whole.evaluation_with(true, None);
        let mut cautions = Cautions::on(self, whole.sheet());
        let start = LevelCheck::start(pack, &canonical(journal.header()))?;
        cautions.need(start.evaluation().cautions());

        let mut happened = Page::new();
        heading(self, &mut happened, "story");
        let mut telling = Telling {
            teller: self,
            page: happened,
            cautions,
            as_found: Interval::UNBOUNDED,
            now: Interval::UNBOUNDED,
            told_now: Interval::UNBOUNDED,
            verdict: Verdict::Incomplete,
            may_open: false,
            by: None,
            missing: Vec::new(),
        };
        let mut check = start;
        for entry in journal.entries() {
            check = telling.tell(check, entry)?;
        }
        let Telling {
            page: happened,
            mut cautions,
            ..
        } = telling;

        let mut end = Page::new();
        cautions.need(result.cautions());
        answer(self, &mut end, &result, &mut cautions);

        let mut page = Page::new();
        heading(self, &mut page, "job");
        let header = journal.header();
        subject(self, &mut page, header.job.slug(), header.subject.as_ref());
        let label = format!("  {}: ", self.word("heading", "sheet"));
        identity(self, &mut page, &label, result.procedure(), whole.sheet());
        if let Some(sheet) = whole.sheet() {
            heading(self, &mut page, "asks");
            asks(self, &mut page, sheet);
        }
        cautions.tell(&mut page);
        page.append(happened);
        page.append(end);
        Ok(page.into_text())
    }
}

fn is_open(gate: &Gate) -> bool {
    gate.unmet
        .iter()
        .any(|unmet| unmet.id == "plug_already_open")
}

/// The telling so far, and what was last told.
struct Telling<'s> {
    teller: &'s Teller,
    page: Page,
    cautions: Cautions<'s>,
    as_found: Interval,
    now: Interval,
    told_now: Interval,
    verdict: Verdict,
    may_open: bool,
    by: Option<String>,
    /// What kept the plug in when that was last told.
    missing: Vec<String>,
}

impl Telling<'_> {
    fn obstacles(&self, gate: &Gate) -> Vec<String> {
        let unmet = gate.unmet.iter();
        unmet.map(|unmet| self.teller.obstacle(unmet)).collect()
    }

    fn tell(&mut self, check: LevelCheck, entry: &Entry) -> Result<LevelCheck, Error> {
        let at = entry.at.text();
        let opens = matches!(
            &entry.fact,
            Fact::Plug {
                state: PlugState::Open
            }
        );
        let before = check.gate(Act::Open, None, Some(at))?;
        let corrects = matches!(&entry.fact, Fact::Correction { .. });
        let mut earlier = Vec::new();
        if corrects {
            earlier.extend_from_slice(check.evaluation().findings());
        }
        let is_first = check.entries().next().is_none();
        let (check, mut new) = check.record(&canonical(entry))?;
        if is_first {
            new = check.evaluation().findings().to_vec();
        }
        let known = check.known();
        self.cautions.need(&known.cautions);

        let clock = at.get(11..19).unwrap_or(at);
        let label = format!("{clock} {:>4}  ", entry.seq);
        let mut said = event(self.teller, entry, !known.looked.is_empty());
        // Who says so, where that changes.
        if let Some(by) = entry.by.as_ref().filter(|by| self.by.as_ref() != Some(by)) {
            said = format!("{said} ({by})");
            self.by = Some(by.clone());
        }
        self.page.put(&label, &said);
        if opens && !before.allowed && !is_open(&before) {
            let unmet = self.obstacles(&before).join(" ");
            self.phrase("gate_ignored", &Given::nothing().with("unmet", unmet));
        }
        for reason in &known.looked {
            self.under(&self.teller.because(reason));
        }
        for finding in &new {
            self.under(&self.teller.found(finding));
        }
        if corrects {
            self.settled(&earlier, check.evaluation().findings());
        }
        self.known(entry, &known);
        let gate = check.gate(Act::Open, None, Some(at))?;
        if !is_open(&gate) {
            self.opening(&check, entry, &gate);
        }
        let lifts_doubt =
            matches!(&entry.fact, Fact::Confirmed { what } if what == "opening_checked");
        if !known.looked.is_empty() || known.verdict != self.verdict || lifts_doubt {
            self.advise(&check);
        }
        self.verdict = known.verdict;
        Ok(check)
    }

    fn under(&mut self, text: &str) {
        self.page.put(UNDER, text);
    }

    fn phrase(&mut self, id: &str, given: &Given) {
        self.under(&self.teller.sentence("phrase", id, given));
    }

    /// What is known where it changed, and the net volume after each pour.
    fn known(&mut self, entry: &Entry, known: &Known) {
        let (teller, mut said) = (self.teller, Vec::new());
        let mut say_known = |id, part, interval: &Interval| {
            let given = Given::nothing().with("known", told(teller, part, interval));
            said.push(teller.sentence("phrase", id, &given));
        };
        if matches!(entry.fact, Fact::Added { .. } | Fact::Drained { .. }) {
            say_known("known_net", "net", &known.net_added);
        }
        if known.as_found != self.as_found {
            say_known("known_as_found", "departure", &known.as_found);
        }
        // Right after a pour it is anybody's guess, and the next look tells.
        let is_pour = matches!(entry.fact, Fact::Added { .. });
        if !is_pour && known.now != self.now && known.now != self.told_now {
            if known.now != known.as_found {
                say_known("known_now", "departure", &known.now);
            }
            self.told_now = known.now;
        }
        self.now = known.now;
        self.as_found = known.as_found;
        if !said.is_empty() {
            self.under(&said.join(" "));
        }
    }

    /// Whether the plug may come out, at each temperature and where that changes.
    fn opening(&mut self, check: &LevelCheck, entry: &Entry, gate: &Gate) {
        if gate.allowed && !self.may_open {
            self.missing.clear();
            self.phrase("gate_open", &Given::nothing());
            self.advise(check);
        } else if !gate.allowed && matches!(entry.fact, Fact::Temperature { .. }) {
            self.shut(gate);
        }
        self.may_open = gate.allowed;
    }

    /// What keeps the plug in; what was told the last time is not told again.
    fn shut(&mut self, gate: &Gate) {
        let unmet = self.obstacles(gate);
        let is_new = |item: &&String| !self.missing.contains(item);
        let new: Vec<&str> = unmet.iter().filter(is_new).map(String::as_str).collect();
        if new.is_empty() {
            return;
        }
        let rest = (new.len() < unmet.len()).then(|| self.teller.word("phrase", "gate_rest"));
        let given = Given::nothing()
            .with("unmet", new.join(" "))
            .with_some("rest", rest);
        self.missing = unmet;
        self.phrase("gate_shut", &given);
    }

    /// What to do next, each act with its cautions.
    fn advise(&mut self, check: &LevelCheck) {
        let word = self.teller.word("heading", "next_line");
        for act in check.advice() {
            let mind = self.cautions.need_for(&act);
            self.under(&format!("{word} {} {mind}", self.teller.advice(&act)));
        }
    }

    /// Which findings a correction did away with.
    fn settled(&mut self, earlier: &[Finding], now: &[Finding]) {
        for gone in earlier.iter().filter(|finding| !now.contains(finding)) {
            if let Some(seq) = gone.entries.first() {
                self.phrase("settled", &Given::nothing().with("entry", seq));
            }
        }
    }
}
