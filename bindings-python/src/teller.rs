//! Who tells: the messages of a language and the units of a shop.

use crate::counter::{self, PriceList};
use crate::data::{Sentences, Sheet, Told};
use crate::document::{Document, PackGiven, limits};
use crate::error::answer;
use crate::evaluation::Evaluation;
use crate::forecast::Forecast;
use crate::history::{self, Billed, History};
use crate::interval::Interval;
use crate::level_check::LevelCheck;
use crate::limits::Limits;
use crate::pack::Pack;
use crate::record::Record;
use crate::word::Word;
use brimline::Verdict;
use pyo3::prelude::*;
use std::hash::{Hash, Hasher};

/// Tells answers in the language of a document of messages and in the units of a shop's profile.
///
/// Both are `str`, `bytes` or a mapping. Without messages it tells English, and without a profile each quantity in the unit
/// it was entered or printed in. What is told, cautions above all, is the same for every teller. Tellers are equal where
/// their documents are.
///
/// Raises `DocumentError` with every fault of the messages, or else of the profile: a message or an argument that is
/// missing or unknown, a bracket without its partner, an empty text; `LimitError`; `BrimlineError`: `conflict` where the
/// profile names another language.
///
/// >>> from brimline import Interval, Teller
/// >>> shop = {"format": "brimline-profile/1", "units": {"volume": {"unit": "US qt", "decimals": 2}}}
/// >>> Teller(profile=shop).departure(Interval.parse("[-2.0 L, -1.5 L]"))
/// 'between 1.58 US qt and 2.12 US qt short'
#[pyclass(frozen, eq, hash, module = "brimline")]
pub(crate) struct Teller(brimline::report::Teller);

impl Teller {
    pub(crate) const fn core(&self) -> &brimline::report::Teller {
        &self.0
    }

    fn documents(&self) -> (String, String) {
        let Teller(teller) = self;
        (teller.catalogue().to_json(), teller.profile().to_json())
    }
}

impl PartialEq for Teller {
    fn eq(&self, other: &Self) -> bool {
        self.documents() == other.documents()
    }
}

impl Hash for Teller {
    fn hash<H: Hasher>(&self, state: &mut H) {
        self.documents().hash(state);
    }
}

#[pymethods]
impl Teller {
    #[new]
    #[pyo3(signature = (messages=None, profile=None, *, limits=None))]
    fn new(
        py: Python<'_>,
        messages: Option<Document>,
        profile: Option<Document>,
        limits: Option<PyRef<'_, Limits>>,
    ) -> PyResult<Self> {
        let limits = self::limits(limits);
        let read = || {
            let text = |document: &'_ Option<Document>, name: &str| match document {
                Some(document) => document.text(name).map(|text| Some(text.to_string())),
                None => Ok(None),
            };
            let (messages, profile) = (text(&messages, "messages")?, text(&profile, "profile")?);
            brimline::report::Teller::from_json(messages.as_deref(), profile.as_deref(), &limits)
        };
        py.detach(|| answer(read)).map(Teller)
    }

    /// The tag of the language, as `de`.
    ///
    /// >>> from brimline import Teller
    /// >>> Teller().language
    /// 'en'
    #[getter]
    fn language(&self) -> &str {
        self.0.catalogue().language()
    }

    /// Every message as canonical JSON: the English one is what a translator starts from.
    ///
    /// >>> from brimline import Teller
    /// >>> Teller().messages_json().startswith('{"format":"brimline-messages/1","language":"en"')
    /// True
    fn messages_json(&self) -> String {
        self.0.catalogue().to_json()
    }

    /// Every message as data.
    ///
    /// >>> from brimline import Teller
    /// >>> Teller().messages()["messages"]["unmet"]["plug_not_open"]
    /// 'The plug is not open.'
    fn messages<'py>(&self, py: Python<'py>) -> PyResult<Told<'py, Sheet>> {
        Told::from_json(py, &self.messages_json())
    }

    /// The profile as canonical JSON.
    ///
    /// >>> from brimline import Teller
    /// >>> Teller().profile_json()
    /// '{"format":"brimline-profile/1"}'
    fn profile_json(&self) -> String {
        self.0.profile().to_json()
    }

    /// The result of a check in lines of at most 80 columns, with every caution in full.
    ///
    /// Raises `BrimlineError`: `conflict` for an evaluation that was pickled, which keeps its English only.
    ///
    /// >>> from brimline import Pack, Teller, evaluate
    /// >>> journal = {"format": "brimline-journal/1", "procedure": "pipit-level", "job": "check", "entries": []}
    /// >>> evaluation = evaluate(Pack.embedded(), journal)
    /// >>> Teller().text(evaluation) == evaluation.text()
    /// True
    fn text(&self, evaluation: &Evaluation) -> PyResult<String> {
        answer(|| Ok(self.0.text(evaluation.whole()?)))
    }

    /// The result sentence by sentence, as `Evaluation.sentences` has it.
    ///
    /// Raises `BrimlineError`: `conflict` for an evaluation that was pickled, which keeps its English only.
    fn sentences<'py>(
        &self,
        py: Python<'py>,
        evaluation: &Evaluation,
    ) -> PyResult<Told<'py, Sentences>> {
        let told = || Ok(crate::sentences::sentences(&self.0, evaluation.whole()?));
        Told::from_json(py, &answer(told)?)
    }

    /// A whole check told entry by entry, with every caution in full, as `story` tells it in English.
    ///
    /// Raises `DocumentError` with every fault of the pack, or else of the journal, each with its path; `LimitError`.
    ///
    /// >>> from brimline import Pack, Teller, story
    /// >>> journal = {"format": "brimline-journal/1", "procedure": "pipit-level", "job": "check", "entries": []}
    /// >>> Teller().story(Pack.embedded(), journal) == story(Pack.embedded(), journal)
    /// True
    fn story(&self, py: Python<'_>, pack: PackGiven, journal: Document) -> PyResult<String> {
        let tell = || {
            let pack = pack.read(&brimline::Limits::default())?;
            self.0.story(&pack, &journal.journal()?)
        };
        py.detach(|| answer(tell))
    }

    /// A caution of the library in full, by its id; `None` for a sheet's own, whose text stands on the sheet.
    ///
    /// >>> from brimline import Teller, caution
    /// >>> Teller().caution("torque_unit") == caution("torque_unit")
    /// True
    fn caution(&self, id: &str) -> Option<&str> {
        self.0.caution(id)
    }

    /// What a record lacks, by the id of an item of `Record.evidence()`, as `lack` tells it in English; `None` for no such id.
    ///
    /// >>> from brimline import Teller, lack
    /// >>> Teller().lack("batch") == lack("batch")
    /// True
    fn lack(&self, id: &str) -> Option<&str> {
        self.0.lack(id)
    }

    /// What an id that a calculator answers means, by its room, the list it is of, and the id; `None` where there are no
    /// words, as for names that stand for themselves.
    ///
    /// >>> from brimline import Teller
    /// >>> Teller().answered("leak", "response", "report")
    /// 'Report it to whoever decides about the repair.'
    fn answered(&self, room: &str, list: &str, id: &str) -> Option<&str> {
        self.0.answered(room, list, id)
    }

    /// A verdict in one sentence.
    ///
    /// Raises `BrimlineError`: `unknown_value` for a word of no verdict.
    ///
    /// >>> from brimline import Teller
    /// >>> Teller().verdict("low")
    /// 'Low: at the last look the fluid did not reach the opening.'
    fn verdict(&self, verdict: Word<Verdict>) -> String {
        self.0.verdict(verdict.0)
    }

    /// Every defect of a pack's sheets in one sentence, in the order of `Pack.lint()`.
    ///
    /// >>> from brimline import Pack, Teller
    /// >>> len(Teller().lint(Pack.embedded())) == len(Pack.embedded().lint())
    /// True
    fn lint(&self, py: Python<'_>, pack: PyRef<'_, Pack>) -> PyResult<Vec<String>> {
        let pack = &pack.0;
        let told = || Ok(pack.lint().iter().map(|own| self.0.lint(own)).collect());
        py.detach(|| answer(told))
    }

    /// What a `Forecast` tells so far, as `Forecast.text` tells it in English.
    ///
    /// >>> from brimline import Teller
    /// >>> from brimline.warm_up import Forecast
    /// >>> forecast = Forecast(min="50 °C")
    /// >>> Teller().outlook(forecast) == forecast.text()
    /// True
    fn outlook(&self, forecast: PyRef<'_, Forecast>) -> PyResult<String> {
        forecast.told(&self.0)
    }

    /// What `estimate` answers in lines of at most 80 columns, with every caution in full.
    ///
    /// Raises what `estimate` raises.
    ///
    /// >>> from brimline import LevelCheck, Pack, PriceList, Teller
    /// >>> header = {"format": "brimline-journal/1", "procedure": "pipit-level", "edition": 2, "job": "check"}
    /// >>> told = Teller().estimate(PriceList.embedded(), LevelCheck.start(Pack.embedded(), header))
    /// >>> all(total in told for total in ("62.12 EUR", "81.04 EUR", "185.54 EUR"))
    /// True
    #[pyo3(signature = (prices, check, asked=None))]
    fn estimate(
        &self,
        py: Python<'_>,
        prices: PyRef<'_, PriceList>,
        check: PyRef<'_, LevelCheck>,
        asked: Option<Document>,
    ) -> PyResult<String> {
        let (prices, check) = (&prices.0, &check.check);
        let told = || {
            let estimate = counter::estimated(prices, check, asked.as_ref())?;
            Ok(self.0.estimate(&estimate, check.sheet()))
        };
        py.detach(|| answer(told))
    }

    /// What `invoice` answers in lines of at most 80 columns, with every caution in full.
    ///
    /// Raises what `invoice` raises.
    ///
    /// >>> from brimline import LevelCheck, Pack, PriceList, Teller
    /// >>> journal = {"format": "brimline-journal/1", "procedure": "pipit-level", "edition": 2, "job": "check", "entries": []}
    /// >>> told = Teller().invoice(PriceList.embedded(), LevelCheck.replay(Pack.embedded(), journal))
    /// >>> "46.00 EUR" in told
    /// True
    #[pyo3(signature = (prices, check, estimated=None))]
    fn invoice(
        &self,
        py: Python<'_>,
        prices: PyRef<'_, PriceList>,
        check: PyRef<'_, LevelCheck>,
        estimated: Option<Document>,
    ) -> PyResult<String> {
        let (prices, check) = (&prices.0, &check.check);
        let told = || {
            let invoice = counter::billed(prices, check, estimated.as_ref())?;
            Ok(self.0.invoice(&invoice, check.sheet()))
        };
        py.detach(|| answer(told))
    }

    /// A history in lines of at most 80 columns, with every caution in full, as `History.text` tells it in English.
    ///
    /// >>> from brimline import History, Teller
    /// >>> Teller().history(History.of([])) == History.of([]).text()
    /// True
    fn history(&self, history: PyRef<'_, History>) -> PyResult<String> {
        answer(|| Ok(self.0.history(&history.told)))
    }

    /// What `records.comebacks` answers in lines of at most 80 columns, with every caution in full.
    ///
    /// Raises what `records.comebacks` raises.
    ///
    /// >>> from brimline import Teller
    /// >>> "Nothing was found" in Teller().comebacks([])
    /// True
    #[pyo3(signature = (records, *, rules=None))]
    fn comebacks(
        &self,
        py: Python<'_>,
        records: Vec<PyRef<'_, Record>>,
        rules: Option<Document>,
    ) -> PyResult<String> {
        let records = history::kept(&records);
        let told = || {
            let found = history::found(&records, rules.as_ref())?;
            Ok(self.0.comebacks(&found))
        };
        py.detach(|| answer(told))
    }

    /// What `records.follow_up` answers in lines of at most 80 columns, with every caution in full.
    ///
    /// Raises what `records.follow_up` raises.
    ///
    /// >>> from brimline import Pack, Record, Teller
    /// >>> journal = {"format": "brimline-journal/1", "procedure": "pipit-level", "job": "check", "entries": []}
    /// >>> "Before the vehicle is handed over" in Teller().follow_up(Record.seal(Pack.embedded(), journal))
    /// True
    #[pyo3(signature = (record, *, history=None, rules=None))]
    fn follow_up(
        &self,
        record: PyRef<'_, Record>,
        history: Option<PyRef<'_, History>>,
        rules: Option<Document>,
    ) -> PyResult<String> {
        answer(|| {
            let due = history::due(&record, history.as_deref(), rules.as_ref())?;
            Ok(self.0.follow_up(&due))
        })
    }

    /// What `records.shadow` answers in lines of at most 80 columns.
    ///
    /// Raises what `records.shadow` raises.
    ///
    /// >>> from brimline import Pack, Teller
    /// >>> "0 jobs" in Teller().shadow(Pack.embedded(), [])
    /// True
    fn shadow(
        &self,
        py: Python<'_>,
        pack: PyRef<'_, Pack>,
        jobs: Vec<Document>,
    ) -> PyResult<String> {
        let pack = &pack.0;
        let told = || Ok(self.0.shadow(&history::beside(pack, &jobs)?));
        py.detach(|| answer(told))
    }

    /// What `records.audit` answers in lines of at most 80 columns, with every caution in full.
    ///
    /// Raises what `records.audit` raises.
    ///
    /// >>> from brimline import Pack, PriceList, Teller
    /// >>> "0.00 EUR" in Teller().audit(PriceList.embedded(), Pack.embedded(), [])
    /// True
    #[pyo3(signature = (prices, pack, records, *, billed=None))]
    fn audit<'py>(
        &self,
        py: Python<'py>,
        prices: PyRef<'py, PriceList>,
        pack: PyRef<'py, Pack>,
        records: Vec<PyRef<'py, Record>>,
        billed: Billed<'py>,
    ) -> PyResult<String> {
        let (prices, pack, records) = (&prices.0, &pack.0, history::kept(&records));
        let billed = history::texts(billed)?;
        let told = || {
            Ok(self
                .0
                .audit(&history::audited(prices, pack, records, billed.as_deref())?))
        };
        py.detach(|| answer(told))
    }

    /// A departure from the correct level in words: short, over, or across it.
    ///
    /// >>> from brimline import Interval, Teller
    /// >>> Teller().departure(Interval.parse("(-inf, 0 L]"))
    /// 'at the level or short, by how much is not known'
    fn departure(&self, interval: &Interval) -> String {
        self.0.departure(&interval.0)
    }

    fn __repr__(&self) -> String {
        format!("<Teller {}>", self.language())
    }

    fn __getnewargs__(&self) -> (String, String) {
        self.documents()
    }
}
