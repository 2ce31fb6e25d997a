//! How the opening is closed again, and the time the work takes.

use super::read::{above_zero, amounts};
use crate::document::{Node, Reader};
use crate::quantity::{Amount, Kind};
use crate::word::words;
use alloc::string::String;
use alloc::vec::Vec;
use serde::Serialize;

words! {
    /// What seals the plug.
    pub enum Seal {
        /// A new seal each time.
        New = "new",
        /// The seal may be used again.
        Reuse = "reuse",
        /// The thread or taper seals by itself.
        None = "none",
    }
}

words! {
    /// Threadlocker by strength.
    pub enum Threadlocker {
        /// None.
        None = "none",
        /// Low strength.
        Low = "low",
        /// Medium strength.
        Medium = "medium",
        /// High strength.
        High = "high",
    }
}

/// How the plug is closed.
#[derive(Debug, Clone, Serialize)]
#[non_exhaustive]
pub struct Closing {
    /// The governing torque.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub torque: Option<Amount>,
    /// How far from it is still right, either way (torque).
    #[serde(skip_serializing_if = "Option::is_none")]
    pub tolerance: Option<Amount>,
    /// The same torque as the sheet prints it in other units; never decided on.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub printed: Vec<Amount>,
    /// The thread, as `M10x1`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub thread: Option<String>,
    /// What seals the plug.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub seal: Option<Seal>,
    /// What locks the thread.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub threadlocker: Option<Threadlocker>,
    /// Whether the plug is closed before the engine is stopped. Absent: yes wherever the engine runs.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub close_before_stop: Option<bool>,
    /// Whether what is lost while closing is put back. Absent: no.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub replace_closing_loss: Option<bool>,
}

/// The time the work takes.
#[derive(Debug, Clone, Serialize)]
#[non_exhaustive]
pub struct Labour {
    /// Time with hands on the vehicle.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub hands_on: Option<Amount>,
    /// Time the bay is occupied.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub bay: Option<Amount>,
}

pub(super) fn closing(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Closing> {
    let fields = &[
        "torque",
        "tolerance",
        "printed",
        "thread",
        "seal",
        "threadlocker",
        "close_before_stop",
        "replace_closing_loss",
    ];
    let object = reader.object(node, fields)?;
    let torque = reader.optional(&object, "torque", |reader, node| {
        above_zero(reader, node, Kind::Torque)
    });
    let tolerance = reader.optional(&object, "tolerance", |reader, node| {
        reader.amount_from_zero(node, Kind::Torque)
    });
    let printed = reader.optional(&object, "printed", |reader, node| {
        amounts(reader, node, Kind::Torque)
    });
    let thread = reader.optional(&object, "thread", Reader::text);
    let seal = reader.optional(&object, "seal", |reader, node| {
        reader.word(node, Seal::WORDS)
    });
    let threadlocker = reader.optional(&object, "threadlocker", |reader, node| {
        reader.word(node, Threadlocker::WORDS)
    });
    let close_before_stop = reader.optional(&object, "close_before_stop", Reader::flag);
    let replace_closing_loss = reader.optional(&object, "replace_closing_loss", Reader::flag);
    Some(Closing {
        torque,
        tolerance,
        printed: printed.unwrap_or_default(),
        thread,
        seal,
        threadlocker,
        close_before_stop,
        replace_closing_loss,
    })
}

pub(super) fn labour(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Labour> {
    let object = reader.object(node, &["hands_on", "bay"])?;
    let mut time = |name| {
        reader.optional(&object, name, |reader, node| {
            reader.amount_from_zero(node, Kind::Time)
        })
    };
    Some(Labour {
        hands_on: time("hands_on"),
        bay: time("bay"),
    })
}
