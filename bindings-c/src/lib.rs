//! The C library of brimline. It translates and decides nothing: every rule is in the core.
//!
//! The manual for C is `include/brimline.h`, generated from these files. What they share:
//!
//! * `guard` turns what a function has to say into a status, and keeps panics inside;
//! * `handle` gives every opaque C type exactly one ownership;
//! * `text` reads and writes the caller's memory;
//! * `list` gives every word of a closed list its number.

#![allow(
    non_camel_case_types,
    reason = "types carry the names they have in the header"
)]
#![allow(
    clippy::missing_safety_doc,
    reason = "the header states once what every pointer must be"
)]

// The header follows this order.

pub mod versions;

pub mod error;

pub mod list;

pub mod word;

pub mod unit;

pub mod convert;

pub mod amount;

pub mod interval;

pub mod options;

pub mod pack;

pub mod evaluation;

pub mod known;

pub mod findings;

pub mod gate;

pub mod acts;

pub mod check;

pub mod record;

pub mod recorded;

pub mod evidence;

pub mod history;

pub mod comebacks;

pub mod follow_up;

pub mod audit;

pub mod price_list;

pub mod lines;

pub mod estimate;

pub mod invoice;

pub mod keeping;

pub mod report;

pub mod calculate;

pub mod torque;

pub mod volume;

pub mod warm_up;

pub mod forecast;

pub mod fluid;

pub mod signal;

pub mod leak;

pub mod teller;

pub mod sentences;

pub mod pages;

// What the functions share.
mod calculator;
mod getter;
mod guard;
mod handle;
mod said;
mod text;
