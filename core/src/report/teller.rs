//! Who tells: the messages of a language and the units of a shop, through which every telling goes.

use super::known;
use super::language::Catalogue;
use super::outlook::lines;
use super::profile::Profile;
use super::sentence::{GLUE, Given, duration};
use crate::check::{Finding, NextAct, Reason, Unmet, Verdict};
use crate::document::Limits;
use crate::error::{Error, ErrorKind, Fault};
use crate::procedure::LintFinding;
use crate::quantity::{Amount, Interval, Rounding};
use crate::warm_up::Outlook;
use alloc::string::String;

/// Tells answers in the language of a [`Catalogue`] and the units of a [`Profile`]. What is told, cautions above all, is
/// the same for every teller; only the words and the units differ.
///
/// ```
/// use brimline::{Verdict, report::Teller};
/// assert!(Teller::english().verdict(Verdict::Low).starts_with("Low: "));
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Teller {
    catalogue: Catalogue,
    profile: Profile,
}

impl Default for Teller {
    fn default() -> Self {
        Self::english()
    }
}

impl Teller {
    /// English, in the units things were entered or printed in.
    #[must_use]
    pub const fn english() -> Self {
        Teller {
            catalogue: Catalogue::english(),
            profile: Profile::as_entered(),
        }
    }

    /// The messages of a language and the units of a shop.
    ///
    /// # Errors
    /// [`Conflict`](ErrorKind::Conflict) where the profile names another language than the catalogue is in.
    pub fn new(catalogue: Catalogue, profile: Profile) -> Result<Self, Error> {
        match profile.language() {
            Some(language) if !language.eq_ignore_ascii_case(catalogue.language()) => {
                let fault = Fault::new(ErrorKind::Conflict).at("language").got(language);
                let hint = "hand in the messages of the language that the profile names";
                let allowed = [String::from(catalogue.language())];
                Err(fault.allowed(allowed).hint(hint).into())
            }
            _ => Ok(Teller { catalogue, profile }),
        }
    }

    /// The same from the JSON of both documents; English, or no preference, where one is left out.
    ///
    /// # Errors
    /// Every fault of the messages, or else of the profile, with path and position; as [`new`](Teller::new).
    ///
    /// ```
    /// use brimline::{Limits, report::Teller};
    /// let shop = r#"{"format":"brimline-profile/1","units":{"temperature":{"unit":"°F","decimals":0}}}"#;
    /// let teller = Teller::from_json(None, Some(shop), &Limits::default())?;
    /// assert_eq!(teller.catalogue().language(), "en");
    /// # Ok::<(), brimline::Error>(())
    /// ```
    pub fn from_json(
        messages: Option<&str>,
        profile: Option<&str>,
        limits: &Limits,
    ) -> Result<Self, Error> {
        let catalogue = messages.map(|text| Catalogue::from_json_with(text, limits));
        let catalogue = catalogue.unwrap_or(Ok(Catalogue::english()))?;
        let profile = profile.map(|text| Profile::from_json_with(text, limits));
        Self::new(catalogue, profile.unwrap_or(Ok(Profile::as_entered()))?)
    }

    /// The messages.
    #[must_use]
    pub const fn catalogue(&self) -> &Catalogue {
        &self.catalogue
    }

    /// The units.
    #[must_use]
    pub const fn profile(&self) -> &Profile {
        &self.profile
    }

    /// The verdict in one sentence.
    #[must_use]
    pub fn verdict(&self, verdict: Verdict) -> String {
        self.word("answer", verdict.slug())
    }

    /// A finding in one sentence, without its severity and entries.
    #[must_use]
    pub fn finding(&self, finding: &Finding) -> String {
        plain(&self.sentence("finding", finding.id, &Given::from(&finding.args)))
    }

    /// A reason in one sentence, without its entries.
    #[must_use]
    pub fn reason(&self, reason: &Reason) -> String {
        plain(&self.because(reason))
    }

    /// What stands in the way of an act, in one sentence, with the wait that mends it.
    #[must_use]
    pub fn unmet(&self, unmet: &Unmet) -> String {
        plain(&self.obstacle(unmet))
    }

    /// A next act in a sentence or two, with the wait before it. Its cautions are told by
    /// [`caution`](Teller::caution); they belong to it.
    #[must_use]
    pub fn next_act(&self, act: &NextAct) -> String {
        plain(&self.advice(act))
    }

    /// A defect of a sheet in one sentence, without its place.
    #[must_use]
    pub fn lint(&self, finding: &LintFinding) -> String {
        // A print is told as it stands, even where it reads as a quantity.
        let args = finding.args.iter();
        let given = args.fold(
            Given::nothing(),
            |given, (name, value)| match Amount::parse(value) {
                Ok(amount) => given.with(name, amount),
                Err(_) => given.with(name, value),
            },
        );
        plain(&self.sentence("lint", finding.id, &given))
    }

    /// A caution of the library in full; `None` for a sheet's own, whose text stands on the sheet.
    #[must_use]
    pub fn caution(&self, id: &str) -> Option<&str> {
        self.catalogue.text("caution", id, |_| None)
    }

    /// What a record lacks, by the id of the [`Lack`](crate::record::Lack); `None` for no such id.
    #[must_use]
    pub fn lack(&self, id: &str) -> Option<&str> {
        self.catalogue.text("lack", id, |_| None)
    }

    /// What an id that a calculator answers means, in words: by its room, the list it is of, and the id.
    /// `None` where there are none, as for names that stand for themselves (a strength class, a procedure of a standard).
    ///
    /// ```
    /// use brimline::report::Teller;
    /// let teller = Teller::english();
    /// let told = teller.answered("leak", "response", "report");
    /// assert_eq!(told, Some("Report it to whoever decides about the repair."));
    /// ```
    #[must_use]
    pub fn answered(&self, room: &str, list: &str, id: &str) -> Option<&str> {
        let part = alloc::format!("{room}_{list}");
        self.catalogue.text(&part, id, |_| None)
    }

    /// A departure from the correct level: short, over, or across it.
    #[must_use]
    pub fn departure(&self, interval: &Interval) -> String {
        plain(&known::told(self, "departure", interval))
    }

    /// A forecast in one sentence or a few, counted from the last reading or pour.
    #[must_use]
    pub fn outlook(&self, outlook: &Outlook) -> String {
        plain(&lines(self, outlook).join(" "))
    }

    pub(super) fn because(&self, reason: &Reason) -> String {
        self.sentence("reason", reason.id, &Given::from(&reason.args))
    }

    /// A finding behind the word for its severity.
    pub(super) fn found(&self, finding: &Finding) -> String {
        let severity = self.word("severity", finding.severity.slug());
        let said = self.sentence("finding", finding.id, &Given::from(&finding.args));
        alloc::format!("{severity} {said}")
    }

    pub(super) fn obstacle(&self, unmet: &Unmet) -> String {
        let said = self.sentence("unmet", unmet.id, &Given::from(&unmet.args));
        self.waited(said, unmet.wait)
    }

    pub(super) fn advice(&self, act: &NextAct) -> String {
        let said = self.sentence("next", act.id, &Given::from(&act.args));
        self.waited(said, act.wait)
    }

    fn waited(&self, mut said: String, wait: Option<Amount>) -> String {
        if let Some(wait) = wait {
            let given = Given::nothing().with("wait", duration(wait, Rounding::Ceiling));
            said.push(' ');
            said.push_str(&self.say("phrase", "wait", &given));
        }
        said
    }
}

/// Without the glue between numbers and units.
pub(super) fn plain(text: &str) -> String {
    text.replace(GLUE, " ")
}

/// The verdict in one sentence, in English.
///
/// ```
/// use brimline::{Verdict, report};
/// assert!(report::verdict(Verdict::Low).starts_with("Low: "));
/// ```
#[must_use]
pub fn verdict(verdict: Verdict) -> &'static str {
    super::message("answer", verdict.slug()).unwrap_or(verdict.slug())
}

/// A caution of the library in full, in English; `None` for a sheet's own, whose text stands on the sheet.
///
/// ```
/// assert!(brimline::report::caution("hot_fluid").is_some());
/// ```
#[must_use]
pub fn caution(id: &str) -> Option<&'static str> {
    super::message("caution", id)
}

/// What a record lacks in one English sentence, by the id of the [`Lack`](crate::record::Lack); `None` for no such id.
///
/// ```
/// let told = brimline::report::lack("batch");
/// assert_eq!(told, Some("The batch of the fluid is not stated."));
/// ```
#[must_use]
pub fn lack(id: &str) -> Option<&'static str> {
    super::message("lack", id)
}

/// The functions that tell in English what [`Teller`] tells in any language.
macro_rules! in_english {
    ($($(#[$about:meta])* $name:ident: $Type:ty;)*) => {
        $($(#[$about])*
        #[must_use]
        pub fn $name($name: &$Type) -> String {
            Teller::english().$name($name)
        })*
    };
}

in_english! {
    /// A finding in one English sentence: [`Teller::finding`].
    finding: Finding;
    /// A reason in one English sentence: [`Teller::reason`].
    reason: Reason;
    /// What stands in the way of an act, in one English sentence: [`Teller::unmet`].
    unmet: Unmet;
    /// A next act in an English sentence or two: [`Teller::next_act`].
    next_act: NextAct;
    /// A defect of a sheet in one English sentence: [`Teller::lint`].
    lint: LintFinding;
    /// A departure from the correct level, in English: [`Teller::departure`].
    ///
    /// ```
    /// use brimline::report::departure;
    /// assert_eq!(departure(&"[-2.0 L, -1.5 L]".parse()?), "between 1.5 L and 2.0 L short");
    /// assert_eq!(departure(&"(-inf, 0 L]".parse()?), "at the level or short, by how much is not known");
    /// # Ok::<(), brimline::Error>(())
    /// ```
    departure: Interval;
    /// A forecast in an English sentence or a few: [`Teller::outlook`].
    ///
    /// ```
    /// use brimline::{Amount, report, warm_up::{Asked, Sample, forecast}};
    /// let mut samples = Vec::new();
    /// for (minute, reading) in ["30 °C", "32 °C", "34 °C"].into_iter().enumerate() {
    ///     samples.push(Sample { at: Amount::parse(&format!("{minute} min"))?, reading: Amount::parse(reading)? });
    /// }
    /// let asked = Asked { min: Some(Amount::parse("37 °C")?), ..Asked::default() };
    /// let told = report::outlook(&forecast(&samples, &[], asked)?);
    /// assert!(told.starts_with("The window should open in 90 s"));
    /// # Ok::<(), brimline::Error>(())
    /// ```
    outlook: Outlook;
}
