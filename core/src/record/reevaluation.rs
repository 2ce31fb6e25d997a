//! A record evaluated again: what would be answered differently.

use super::recorded::SealedPack;
use super::sealing::Record;
use crate::check::{RULES, evaluate};
use crate::document::{Difference, canonical, differences};
use crate::error::{Error, ErrorKind, Fault};
use crate::procedure::Pack;
use crate::word::words;
use alloc::format;
use alloc::string::ToString;
use alloc::vec::Vec;
use serde::Serialize;

words! {
    /// What a record is evaluated again by.
    pub enum Rules {
        /// The rules and the pack it was sealed with.
        AsRecorded = "as_recorded",
        /// The rules of this library, and the pack that is given, whatever its edition.
        Latest = "latest",
    }
}

/// A pack under the path its differences are told at.
#[derive(Serialize)]
struct Named<'p> {
    pack: &'p SealedPack,
}

impl Record {
    /// Evaluates the journal again, and tells where the answer differs from the sealed one, by member of the result
    /// document. Another version or digest of the pack is told first, as `pack.version` and `pack.digest`.
    ///
    /// # Errors
    /// `conflict` at `pack.id`, and at `pack.version` and `pack.digest` as recorded, if the pack is another one;
    /// `unknown_value` at `rules` as recorded, if this library does not know those rules.
    ///
    /// ```
    /// use brimline::record::Rules;
    /// use brimline::{Pack, Record};
    /// let pack = Pack::embedded()?;
    /// let journal = r#"{"format":"brimline-journal/1","procedure":"pipit-level","job":"check","entries":[]}"#;
    /// let record = Record::seal(&pack, journal)?;
    /// assert!(record.reevaluate(&pack, Rules::AsRecorded)?.is_empty());
    ///
    /// let newer = pack.to_json().replacen("\"version\":\"3\"", "\"version\":\"4\"", 1);
    /// let newer = Pack::from_json(&newer)?;
    /// let differences = record.reevaluate(&newer, Rules::Latest)?;
    /// assert_eq!((differences[0].path(), differences[0].now()), ("pack.version", Some("\"4\"")));
    /// let refused = record.reevaluate(&newer, Rules::AsRecorded).unwrap_err();
    /// assert_eq!(refused.first().path, "pack.version");
    /// # Ok::<(), brimline::Error>(())
    /// ```
    pub fn reevaluate(&self, pack: &Pack, rules: Rules) -> Result<Vec<Difference>, Error> {
        let sealed = self.pack();
        let parts = [
            ("id", &*sealed.id, pack.id()),
            ("version", &*sealed.version, pack.version()),
            ("digest", &*sealed.digest, pack.digest()),
        ];
        let mut faults = Vec::new();
        if rules == Rules::AsRecorded && self.rules() != RULES {
            let hint =
                "the version of the library that sealed it knows them; or ask for the latest rules";
            let fault = Fault::new(ErrorKind::UnknownValue).at("rules");
            faults.push(fault.got(self.rules()).allowed([RULES]).hint(hint));
        }
        for (name, was, given) in parts {
            if was != given && (rules == Rules::AsRecorded || name == "id") {
                let fault = Fault::new(ErrorKind::Conflict).at(format!("pack.{name}"));
                let hint = "give the pack it was sealed with, or ask for the latest rules";
                faults.push(fault.got(given).allowed([was.to_string()]).hint(hint));
            }
        }
        if let Some(error) = Error::from_faults(faults) {
            return Err(error);
        }
        let given = SealedPack::of(pack);
        let named = |pack| canonical(&Named { pack });
        let mut found = differences(&named(sealed), &named(&given));
        let answer = evaluate(pack, self.journal())?.to_json();
        found.extend(differences(self.result_json(), &answer));
        Ok(found)
    }
}
