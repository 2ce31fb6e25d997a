//! What is shown: a check and its result told in words, with the cautions that belong to them.
//!
//! [`text`] tells one result, [`story`] a whole check entry by entry, in English. A [`Teller`] tells the same in the
//! language of a [`Catalogue`] and in the units of a [`Profile`]. None can leave a caution out. A host that words its own
//! pages takes the sentences one by one ([`verdict`], [`finding`], [`reason`], [`next_act`], [`unmet`], [`caution`],
//! [`departure`]) or the whole catalogue ([`messages`]).

mod audit;
mod bay_card;
mod catalogue;
mod cautions;
mod counter;
mod customer;
mod event;
mod history;
mod known;
mod language;
mod markup;
mod money_table;
mod outlook;
mod page;
mod paper;
mod particulars;
mod picture;
mod plural;
mod profile;
mod sentence;
mod sheet;
mod story;
mod teller;
mod text;
mod wording;
mod work_sheet;

pub use audit::{audit, shadow};
pub use bay_card::bay_card;
pub use catalogue::{Message, message, messages};
pub use counter::{estimate, invoice};
pub use history::{comebacks, follow_up, history};
pub(crate) use language::FORMAT as MESSAGES_FORMAT;
pub use language::{Catalogue, DecimalSign};
pub use paper::Medium;
pub use particulars::Particulars;
pub use picture::{Picture, Rig, picture};
pub use plural::Plural;
pub(crate) use profile::FORMAT as PROFILE_FORMAT;
pub use profile::{Preferred, Profile};
pub use story::story;
pub use teller::{
    Teller, caution, departure, finding, lack, lint, next_act, outlook, reason, unmet, verdict,
};
pub use text::text;
pub use work_sheet::work_sheet;
