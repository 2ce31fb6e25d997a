//! What is shown: a check and its result told in English, with the cautions that belong to them.
//!
//! [`text`] tells one result, [`story`] a whole check entry by entry. Neither can leave a caution out. A host
//! that words its own pages takes the sentences one by one ([`verdict`], [`finding`], [`reason`], [`next_act`],
//! [`unmet`], [`caution`], [`departure`]) or the whole catalogue ([`messages`]).

mod catalogue;
mod cautions;
mod event;
mod known;
mod markup;
mod outlook;
mod page;
mod picture;
mod sentence;
mod sheet;
mod story;
mod text;

pub use catalogue::{Message, message, messages};
pub use known::departure;
pub use outlook::outlook;
pub use picture::{Picture, Rig, picture};
pub use sentence::{caution, finding, lint, next_act, reason, unmet, verdict};
pub use story::story;
pub use text::text;
