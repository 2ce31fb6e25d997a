//! What this version of the library is and reads.

use crate::check::{JOURNAL_FORMAT, RESULT_FORMAT, RULES};
use crate::estimate::{AUDIT_FORMAT, ESTIMATE_FORMAT, INVOICE_FORMAT, PRICES_FORMAT};
use crate::procedure::PACK_FORMAT;
use crate::record::{
    COMEBACKS_FORMAT, FOLLOW_UP_FORMAT, HISTORY_FORMAT, RECORD_FORMAT, SHADOW_FORMAT,
};
use crate::report::{MESSAGES_FORMAT, PROFILE_FORMAT};
use serde::Serialize;

/// The versions of the library, its rules and its documents.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct Versions {
    /// The library.
    pub library: &'static str,
    /// The rules of evidence; it rises whenever any verdict can change.
    pub rules: &'static str,
    /// The documents read and written.
    pub documents: Documents,
}

/// The formats of the documents.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct Documents {
    /// Packs.
    pub pack: &'static str,
    /// Journals.
    pub journal: &'static str,
    /// Results.
    pub result: &'static str,
    /// Records.
    pub record: &'static str,
    /// Price lists.
    pub prices: &'static str,
    /// Catalogues of messages.
    pub messages: &'static str,
    /// Profiles of shops.
    pub profile: &'static str,
    /// Estimates.
    pub estimate: &'static str,
    /// Invoices.
    pub invoice: &'static str,
    /// Histories of vehicles.
    pub history: &'static str,
    /// What may come back.
    pub comebacks: &'static str,
    /// When a job is looked at again.
    pub follow_up: &'static str,
    /// What records cost a shop.
    pub audit: &'static str,
    /// Where the evidence of old jobs differs from an old rule.
    pub shadow: &'static str,
}

/// The versions of the library, its rules and its documents.
///
/// ```
/// let documents = brimline::versions().documents;
/// assert_eq!(documents.journal, "brimline-journal/1");
/// assert_eq!(documents.follow_up, "brimline-follow-up/1");
/// ```
#[must_use]
pub const fn versions() -> Versions {
    Versions {
        library: env!("CARGO_PKG_VERSION"),
        rules: RULES,
        documents: Documents {
            pack: PACK_FORMAT,
            journal: JOURNAL_FORMAT,
            result: RESULT_FORMAT,
            record: RECORD_FORMAT,
            prices: PRICES_FORMAT,
            messages: MESSAGES_FORMAT,
            profile: PROFILE_FORMAT,
            estimate: ESTIMATE_FORMAT,
            invoice: INVOICE_FORMAT,
            history: HISTORY_FORMAT,
            comebacks: COMEBACKS_FORMAT,
            follow_up: FOLLOW_UP_FORMAT,
            audit: AUDIT_FORMAT,
            shadow: SHADOW_FORMAT,
        },
    }
}
