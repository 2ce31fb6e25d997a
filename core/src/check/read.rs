//! Reading entries: the readable is recorded, the unreadable refused with every fault.

use super::entry::{
    DrainedWhy, Entry, Fact, Grade, Measured, MeasuredBy, PlugState, Source, StripResult, Toward,
    Trend,
};
use super::moment::moment;
use crate::document::{Node, Object, Reader};
use crate::error::{ErrorKind, Fault};
use crate::leak::SeepageClass;
use crate::procedure::EngineState;
use crate::quantity::{Amount, Kind};
use alloc::boxed::Box;
use alloc::string::ToString;

/// Lists the fields of each kind of entry beside those all entries have.
macro_rules! kinds {
    ($($kind:literal [$($field:literal)*])*) => {
        const KINDS: &[(&str, &[&str])] =
            &[$(($kind, &["seq", "at", "kind", "by", "id", $($field,)* "ext"]),)*];
    };
}

kinds! {
    "confirmed" ["what"]
    "level" ["tilt" "toward"]
    "engine" ["state"]
    "selector" ["position"]
    "ranges" ["dwell"]
    "temperature" ["reading" "source"]
    "plug" ["state"]
    "flow" ["grade" "for" "captured" "captured_by" "trend"]
    "reading" ["value" "side" "status"]
    "added" ["volume" "mass" "measured_by" "fluid" "container" "batch"]
    "drained" ["volume" "mass" "measured_by" "why"]
    "fluid" ["appearance" "smell" "debris" "coolant_strip"]
    "seepage" ["place" "class" "cleaned" "dye"]
    "tightened" ["torque" "tool" "adapter"]
    "driven" ["distance" "peak"]
    "approved" ["ceiling"]
    "hold" ["reason"]
    "release" ["reason"]
    "correction" ["of" "void" "replaces" "reason"]
    "note" ["text"]
}

/// Reads one entry.
pub(super) fn entry(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Entry> {
    // The kind decides which fields there may be, so it is looked at before the object is opened.
    let kind = node.member("kind");
    let fields = kind.and_then(Node::text).and_then(|word| {
        let known = KINDS.iter().find(|(kind, _)| *kind == word);
        known.map(|(_, fields)| *fields)
    });
    let object = match fields {
        Some(fields) => reader.object(node, fields)?,
        None => {
            unknown_kind(reader, node, kind);
            reader.any_object(node)?
        }
    };
    let seq = reader.required(&object, "seq", |reader, node| reader.whole(node, 0));
    let at = reader.required(&object, "at", moment);
    let by = reader.optional(&object, "by", Reader::text);
    let id = reader.optional(&object, "id", Reader::text);
    let fact = fields.and_then(|_| fact(reader, &object));
    let ext = reader.optional(&object, "ext", Reader::ext);
    Some(Entry {
        seq: seq?,
        at: at?,
        by,
        id,
        fact: fact?,
        ext,
    })
}

/// What is wrong with a kind that tells nothing of the other fields.
fn unknown_kind(reader: &mut Reader<'_>, node: &Node<'_>, kind: Option<&Node<'_>>) {
    let kinds = KINDS.iter().map(|(kind, _)| *kind);
    match (node, kind) {
        (Node::Object(_), None) => {
            reader.note_at("kind", Fault::new(ErrorKind::MissingField).allowed(kinds));
        }
        (_, Some(kind)) => reader.inside("kind", |reader| {
            if let Some(word) = reader.str(kind) {
                let fault = Fault::new(ErrorKind::UnknownValue).got(word);
                reader.note(fault.allowed(kinds));
            }
        }),
        _ => {}
    }
}

fn fact(reader: &mut Reader<'_>, object: &Object<'_, '_>) -> Option<Fact> {
    Some(match object.peek_text("kind")? {
        "confirmed" => Fact::Confirmed {
            what: reader.required(object, "what", Reader::slug)?,
        },
        "level" => {
            let tilt = reader.required(object, "tilt", |reader, node| {
                reader.amount_from_zero(node, Kind::Angle)
            });
            let toward = reader.required(object, "toward", |reader, node| {
                reader.word(node, Toward::WORDS)
            });
            Fact::Level {
                tilt: tilt?,
                toward: toward?,
            }
        }
        "engine" => Fact::Engine {
            state: reader.required(object, "state", |reader, node| {
                reader.word(node, EngineState::WORDS)
            })?,
        },
        "selector" => Fact::Selector {
            position: reader.required(object, "position", Reader::slug)?,
        },
        "ranges" => Fact::Ranges {
            dwell: reader.required(object, "dwell", |reader, node| {
                reader.amount_from_zero(node, Kind::Time)
            })?,
        },
        "temperature" => {
            let reading = reader.required(object, "reading", |reader, node| {
                reader.amount(node, Kind::Temperature)
            });
            let source = reader.required(object, "source", |reader, node| {
                reader.word(node, Source::WORDS)
            });
            Fact::Temperature {
                reading: reading?,
                source: source?,
            }
        }
        "plug" => Fact::Plug {
            state: reader.required(object, "state", |reader, node| {
                reader.word(node, PlugState::WORDS)
            })?,
        },
        "flow" => flow(reader, object)?,
        "reading" => {
            let value = reader.required(object, "value", Reader::text);
            let side = reader.optional(object, "side", Reader::text);
            let status = reader.optional(object, "status", Reader::slug);
            Fact::Reading {
                value: value?,
                side,
                status,
            }
        }
        "added" => {
            let measured = measured(reader, object);
            let fluid = reader.optional(object, "fluid", Reader::text);
            let container = reader.optional(object, "container", Reader::text);
            let batch = reader.optional(object, "batch", Reader::text);
            Fact::Added {
                measured: measured?,
                fluid,
                container,
                batch,
            }
        }
        "drained" => {
            let measured = measured(reader, object);
            let why = reader.required(object, "why", |reader, node| {
                reader.word(node, DrainedWhy::WORDS)
            });
            Fact::Drained {
                measured: measured?,
                why: why?,
            }
        }
        "fluid" => fluid(reader, object),
        "seepage" => {
            let place = reader.required(object, "place", Reader::text);
            let class = reader.required(object, "class", |reader, node| {
                reader.word(node, SeepageClass::WORDS)
            });
            let cleaned = reader.optional(object, "cleaned", Reader::flag);
            let dye = reader.optional(object, "dye", Reader::flag);
            Fact::Seepage {
                place: place?,
                class: class?,
                cleaned,
                dye,
            }
        }
        "tightened" => {
            let torque = reader.required(object, "torque", |reader, node| {
                reader.amount_from_zero(node, Kind::Torque)
            });
            let tool = reader.optional(object, "tool", Reader::text);
            let adapter = reader.optional(object, "adapter", Reader::text);
            Fact::Tightened {
                torque: torque?,
                tool,
                adapter,
            }
        }
        "driven" => {
            let distance = reader.required(object, "distance", |reader, node| {
                reader.amount_from_zero(node, Kind::Length)
            });
            let peak = reader.optional(object, "peak", |reader, node| {
                reader.amount(node, Kind::Temperature)
            });
            Fact::Driven {
                distance: distance?,
                peak,
            }
        }
        "approved" => {
            named(reader, object);
            Fact::Approved {
                ceiling: reader.required(object, "ceiling", Reader::text)?,
            }
        }
        "hold" => {
            named(reader, object);
            Fact::Hold {
                reason: reader.required(object, "reason", Reader::text)?,
            }
        }
        "release" => {
            named(reader, object);
            Fact::Release {
                reason: reader.required(object, "reason", Reader::text)?,
            }
        }
        "correction" => correction(reader, object)?,
        _ => Fact::Note {
            text: reader.required(object, "text", Reader::text)?,
        },
    })
}

/// Notes that `by` is needed where an entry counts only with a name.
fn named(reader: &mut Reader<'_>, object: &Object<'_, '_>) {
    if object.get("by").is_none() {
        let hint = "say who approves, holds or releases";
        reader.note_at("by", Fault::new(ErrorKind::MissingField).hint(hint));
    }
}

fn flow(reader: &mut Reader<'_>, object: &Object<'_, '_>) -> Option<Fact> {
    let grade = reader.required(object, "grade", |reader, node| {
        reader.word(node, Grade::WORDS)
    });
    let watched = reader.required(object, "for", |reader, node| {
        reader.amount_from_zero(node, Kind::Time)
    });
    let amount = reader.optional(object, "captured", |reader, node| {
        reader.amount_of(node, &[Kind::Volume, Kind::Mass])
    });
    let by = reader.optional(object, "captured_by", |reader, node| {
        reader.word(node, MeasuredBy::WORDS)
    });
    let trend = reader.optional(object, "trend", |reader, node| {
        reader.word(node, Trend::WORDS)
    });
    if object.get("captured_by").is_some() && object.get("captured").is_none() {
        let hint = "say what was captured, or leave captured_by out";
        reader.note_at(
            "captured_by",
            Fault::new(ErrorKind::Conflict)
                .allowed(["captured"])
                .hint(hint),
        );
    }
    let captured = amount.map(|amount| Measured { amount, by });
    Some(Fact::Flow {
        grade: grade?,
        watched: watched?,
        captured,
        trend,
    })
}

fn measured(reader: &mut Reader<'_>, object: &Object<'_, '_>) -> Option<Measured> {
    let mut read =
        |name, kind| reader.optional(object, name, |reader, node| reader.amount(node, kind));
    let (volume, mass): (Option<Amount>, Option<Amount>) =
        (read("volume", Kind::Volume), read("mass", Kind::Mass));
    let by = reader.optional(object, "measured_by", |reader, node| {
        reader.word(node, MeasuredBy::WORDS)
    });
    let has = |name| object.get(name).is_some();
    if has("volume") == has("mass") {
        let hint = "state exactly one of them";
        reader.note(
            Fault::new(ErrorKind::Conflict)
                .allowed(["volume", "mass"])
                .hint(hint),
        );
    }
    Some(Measured {
        amount: volume.or(mass)?,
        by,
    })
}

fn fluid(reader: &mut Reader<'_>, object: &Object<'_, '_>) -> Fact {
    let names = ["appearance", "smell", "debris", "coolant_strip"];
    if names.iter().all(|name| object.get(name).is_none()) {
        let hint = "state at least one of them";
        reader.note(Fault::new(ErrorKind::Conflict).allowed(names).hint(hint));
    }
    let appearance = reader.optional(object, "appearance", Reader::slug);
    let smell = reader.optional(object, "smell", Reader::slug);
    let debris = reader.optional(object, "debris", Reader::slug);
    let coolant_strip = reader.optional(object, "coolant_strip", |reader, node| {
        reader.word(node, StripResult::WORDS)
    });
    Fact::Fluid {
        appearance,
        smell,
        debris,
        coolant_strip,
    }
}

fn correction(reader: &mut Reader<'_>, object: &Object<'_, '_>) -> Option<Fact> {
    let of = reader.required(object, "of", |reader, node| reader.whole(node, 0));
    reader.optional(object, "void", |reader, node| {
        if !reader.flag(node)? {
            let hint = "write true, or leave void out and give replaces";
            reader.note(
                Fault::new(ErrorKind::UnknownValue)
                    .got("false")
                    .allowed(["true"])
                    .hint(hint),
            );
        }
        Some(())
    });
    let replaces = reader.optional(object, "replaces", |reader, node| {
        let entry = entry(reader, node);
        let seq = node.member("seq").and_then(Node::whole);
        if let (Some(of), Some(own)) = (of, seq)
            && of != own
        {
            let hint = "the replacing entry keeps the seq of the entry it replaces";
            let fault = Fault::new(ErrorKind::Conflict).got(&own.to_string());
            reader.note_at("seq", fault.hint(hint));
        }
        entry.map(Box::new)
    });
    let reason = reader.required(object, "reason", Reader::text);
    if object.get("void").is_some() == object.get("replaces").is_some() {
        let hint = "state exactly one of them";
        reader.note(
            Fault::new(ErrorKind::Conflict)
                .allowed(["void", "replaces"])
                .hint(hint),
        );
    }
    Some(Fact::Correction {
        of: of?,
        replaces,
        reason: reason?,
    })
}
