//! What is kept of a job: a sealed record, in which any changed byte is noticed; and what many of them say together.

mod comeback;
mod follow_up;
mod history;
mod keeping;
mod lack;
mod loss;
mod notice;
mod pattern;
mod reading;
mod recorded;
mod reevaluation;
mod rules;
mod sealing;
mod series;
mod shadow;
mod visit;

pub use crate::document::Difference;
pub(crate) use comeback::FORMAT as COMEBACKS_FORMAT;
pub use comeback::{Comebacks, comebacks, comebacks_with};
pub(crate) use follow_up::FORMAT as FOLLOW_UP_FORMAT;
pub use follow_up::{FollowUp, FollowUpReason, follow_up, follow_up_with};
pub(crate) use history::FORMAT as HISTORY_FORMAT;
pub use history::{History, VehicleHistory};
pub use keeping::{KeptJournal, Storage};
pub use lack::Lack;
pub use loss::Loss;
pub use notice::{Cited, Notice};
pub use recorded::{RecordedFinding, RecordedReason, SealedPack};
pub use reevaluation::Rules;
pub use rules::{ComebackRules, FollowUpRules};
pub(crate) use sealing::FORMAT as RECORD_FORMAT;
pub use sealing::Record;
pub(crate) use series::by_unit;
pub(crate) use shadow::FORMAT as SHADOW_FORMAT;
pub use shadow::{Grade, OldJob, Shadow, ShadowDifference, shadow};
pub use visit::{PlugEvent, Visit};
