//! What happened, and what it proves: journals, evidence, verdicts, gates and advice.

mod advice;
mod booking;
mod correction;
mod course;
mod defects;
mod delivery;
mod entry;
mod evaluate;
mod evaluation;
mod evidence;
mod explain;
mod finding;
mod flip;
mod gate;
mod header;
mod journal;
mod leak;
mod ledger;
mod level_check;
mod look;
mod measured;
mod moment;
mod plan;
mod plausible;
mod read;
mod sheet;
mod size;
mod standing;
mod trail;
mod verdict;
mod warming;
mod write;

pub use crate::leak::SeepageClass;
pub(crate) use correction::standing;
pub(crate) use course::{Course, Foretold};
pub use entry::{
    DrainedWhy, Entry, Fact, Grade, Measured, MeasuredBy, PlugState, Source, StripResult, Toward,
    Trend,
};
pub use evaluate::{
    JournalSource, Options, PackSource, evaluate, evaluate_many, evaluate_with, verdict,
};
pub use evaluation::{Counted, Evaluation, LeakReading, ProcedureRef, RULES};
pub(crate) use evaluation::{FORMAT as RESULT_FORMAT, interval};
pub use finding::{Arg, Args, Finding, NextAct, Reason, Unmet};
pub use flip::{Changed, Flip, Turns};
pub use gate::Gate;
pub(crate) use header::FORMAT as JOURNAL_FORMAT;
pub use header::{Header, Job, PackPin, Profile, Subject};
pub use journal::Journal;
pub(crate) use journal::journal;
pub use leak::{BySheet, Certainty};
pub(crate) use ledger::Span;
pub(crate) use level_check::Known;
pub use level_check::LevelCheck;
pub use moment::Moment;

pub(crate) use standing::{Happened, Standing};
pub use verdict::Verdict;
