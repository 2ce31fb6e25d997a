//! Seepage by what is seen of it.

use crate::word::words;
use serde::Serialize;

words! {
    /// The class of a seepage or leak.
    ///
    /// Source: US Army TM 9-2330-373-14&P, paragraph 4-7; TM 9-2320-269-20-1; TM 5-3895-383-24, paragraph 1-10.
    pub enum SeepageClass {
        /// Wet, or a change of colour.
        I = "I",
        /// Drops form.
        II = "II",
        /// Drops fall.
        III = "III",
    }
}

words! {
    /// What is seen.
    pub enum Look {
        /// Wet or discoloured, without drops.
        WetNoDrops = "wet_no_drops",
        /// Drops form and none falls while it is looked at.
        DropsFormNoneFalls = "drops_form_none_falls",
        /// Drops fall.
        DropsFall = "drops_fall",
    }
}

words! {
    /// What it leads to.
    pub enum Response {
        /// It may run, and the level is checked more often than the schedule says.
        CheckMoreOften = "check_more_often",
        /// It is reported to whoever decides about repair.
        Report = "report",
        /// It does not run.
        DoNotRun = "do_not_run",
    }
}

/// What a class means and leads to.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct Seepage {
    /// The class.
    pub class: SeepageClass,
    /// What is seen.
    pub meaning: Look,
    /// What it leads to.
    pub drives: Response,
    /// What it leads to where the fluid is fuel.
    pub fuel: Response,
    /// What it leads to where the drops run together to a steady stream: of the last class only.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub stream: Option<Response>,
    /// Ids of what to mind.
    pub cautions: &'static [&'static str],
}

const CLASSES: [Seepage; 3] = [
    Seepage {
        class: SeepageClass::I,
        meaning: Look::WetNoDrops,
        drives: Response::CheckMoreOften,
        fuel: Response::DoNotRun,
        stream: None,
        cautions: &["uses_nothing"],
    },
    Seepage {
        class: SeepageClass::II,
        meaning: Look::DropsFormNoneFalls,
        drives: Response::CheckMoreOften,
        fuel: Response::DoNotRun,
        stream: None,
        cautions: &["uses_nothing", "slip_fire"],
    },
    Seepage {
        class: SeepageClass::III,
        meaning: Look::DropsFall,
        drives: Response::Report,
        fuel: Response::DoNotRun,
        stream: Some(Response::DoNotRun),
        cautions: &["uses_nothing", "leak_on_hot", "no_dry_start", "slip_fire"],
    },
];

/// What a class of seepage means and leads to.
///
/// Source: US Army TM 9-2330-373-14&P, paragraph 4-7, TM 9-2320-269-20-1, TM 5-3895-383-24, paragraph 1-10, and the
/// same in five others; the steady stream: TM 10-3930-671-10, paragraph 3-3. The service sheet may ask for more.
///
/// ```
/// use brimline::leak::{Look, Response, SeepageClass, seepage};
/// let seen = seepage(SeepageClass::II);
/// assert_eq!((seen.meaning, seen.drives), (Look::DropsFormNoneFalls, Response::CheckMoreOften));
/// ```
#[must_use]
pub const fn seepage(class: SeepageClass) -> Seepage {
    let [first, second, third] = CLASSES;
    match class {
        SeepageClass::I => first,
        SeepageClass::II => second,
        SeepageClass::III => third,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_class_as_the_manuals_define_it() {
        // US Army TM 9-2330-373-14&P, paragraph 4-7: wetness or discoloration without drops; drops that do not drip; drops
        // that fall. The first two are run with more checks, fuel never; the third is reported.
        let expected = [
            ("I", "wet_no_drops", "check_more_often"),
            ("II", "drops_form_none_falls", "check_more_often"),
            ("III", "drops_fall", "report"),
        ];
        for ((word, class), (class_word, look, response)) in
            SeepageClass::WORDS.iter().zip(expected)
        {
            let told = seepage(*class);
            assert_eq!((*word, told.class), (class_word, *class));
            assert_eq!((told.meaning.slug(), told.drives.slug()), (look, response));
            assert_eq!(told.fuel, Response::DoNotRun);
            assert!(told.cautions.contains(&"uses_nothing"));
        }
    }
}
