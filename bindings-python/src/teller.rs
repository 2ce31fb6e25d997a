//! Who tells: the messages of a language and the units of a shop.

use crate::data::{Sentences, Sheet, Told};
use crate::document::{Document, PackGiven, limits};
use crate::error::answer;
use crate::evaluation::Evaluation;
use crate::interval::Interval;
use crate::limits::Limits;
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
