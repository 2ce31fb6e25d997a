//! The arithmetic of a sealed-gearbox fluid level check: a service sheet and a journal in, an evidenced
//! verdict out.
//!
//! The library is pure: no clock, file, network, locale, thread or randomness. Time is a value on each entry,
//! and the same input gives the same bytes on every machine.
//!
//! * [`evaluate`] takes a [`Pack`] of service sheets and a journal and answers an [`Evaluation`].
//! * [`LevelCheck`] does the same live, entry by entry.
//! * [`Amount`], [`Interval`], [`Unit`] and [`convert`] are the quantities it is told in.
//! * [`torque`], [`volume`], [`warm_up`], [`fluid`], [`signal`] and [`leak`] are the calculators of a bay and a counter;
//!   [`calculate`](calculate::calculate) asks any of them by name, in JSON.
//! * [`Record`] is what is kept of a job, sealed: any changed byte is noticed; [`History`] is what many of them say together.
//! * [`money`] is exact: sums, prices, and totals with the host's own taxes; [`estimate`] is what a job costs.
//! * [`report`] tells a result, or a whole check entry by entry, in plain English.
//!
//! It calculates from what was entered and from the sheet that was selected. It does not replace the vehicle
//! maker's current procedure or a trained person's judgement.

#![no_std]

extern crate alloc;

pub mod calculate;
pub mod check;
pub mod document;
pub mod error;
pub mod estimate;
pub mod fluid;
pub mod leak;
pub mod money;
pub mod procedure;
pub mod quantity;
pub mod record;
pub mod report;
pub mod signal;
pub mod torque;
mod version;
pub mod volume;
pub mod warm_up;
mod word;

pub use check::{
    Evaluation, Journal, LevelCheck, Options, Verdict, evaluate, evaluate_many, evaluate_with,
    verdict,
};
pub use document::Limits;
pub use error::{Error, ErrorKind, Fault, Position};
pub use estimate::{Estimate, Invoice, PriceList, estimate, invoice};
pub use procedure::{Act, Pack};
pub use quantity::{Amount, Interval, IntoUnit, Kind, Measures, Rounding, Unit, convert};
pub use record::{History, Record};
pub use uom;
pub use version::{Documents, Versions, versions};
