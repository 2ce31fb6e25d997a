//! Reading a pack: every fault of it at once.

use super::closing::{Closing, Labour, Seal, Threadlocker};
use super::conditions::{
    Conditions, CoolerCondition, EngineState, RangesCondition, TemperatureCondition, TiltCondition,
};
use super::edition::{Act, Capacity, Caution, Counts, LeakLimit, Procedure, Refill};
use super::method::{Defect, Method, MethodKind, Sign, Warming};
use crate::document::{Ext, Node, Reader};
use crate::error::{ErrorKind, Fault};
use crate::fluid::Fluid;
use crate::quantity::{Amount, Kind, Measures, Unit};
use alloc::string::{String, ToString};
use alloc::vec::Vec;
use core::cmp::Ordering;

/// What a pack document holds.
pub(super) struct PackDocument {
    pub(super) id: String,
    pub(super) version: String,
    pub(super) title: String,
    pub(super) measures: Option<Measures>,
    pub(super) fluids: Vec<Fluid>,
    pub(super) procedures: Vec<Procedure>,
    pub(super) ext: Option<Ext>,
}

/// The format this version reads and writes.
pub(super) const FORMAT: &str = "brimline-pack/1";

/// A document's `format`, which must be the one read here.
pub(crate) fn format(reader: &mut Reader<'_>, node: &Node<'_>, known: &'static str) -> Option<()> {
    let text = reader.str(node)?;
    if text == known {
        return Some(());
    }
    let hint = "a newer format needs a newer version of this library";
    reader.note(
        Fault::new(ErrorKind::WrongFormat)
            .got(text)
            .allowed([known])
            .hint(hint),
    );
    None
}

/// Which measures bare `qt` and its kin are in.
pub(crate) fn measures(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Measures> {
    reader.word(node, Measures::WORDS)
}

pub(super) fn pack(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<PackDocument> {
    let fields = &[
        "format",
        "id",
        "version",
        "title",
        "measures",
        "fluids",
        "procedures",
        "ext",
    ];
    let object = reader.object(node, fields)?;
    let known = reader.required(&object, "format", |reader, node| {
        format(reader, node, FORMAT)
    });
    let id = reader.required(&object, "id", Reader::text);
    let version = reader.required(&object, "version", Reader::text);
    let title = reader.required(&object, "title", Reader::text);
    let measures = reader.optional(&object, "measures", measures);
    reader.measures = measures;
    let fluids = reader.required(&object, "fluids", |reader, node| reader.list(node, fluid));
    let procedures = reader.required(&object, "procedures", |reader, node| {
        reader.list(node, procedure)
    });
    let ext = reader.optional(&object, "ext", Reader::ext);
    known?;
    Some(PackDocument {
        id: id?,
        version: version?,
        title: title?,
        measures,
        fluids: fluids?,
        procedures: procedures?,
        ext,
    })
}

fn fluid(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Fluid> {
    let fields = &[
        "id",
        "replaces",
        "mixes_with",
        "full_exchange_only",
        "never",
        "density_15",
        "viscosity_40",
        "viscosity_100",
    ];
    let object = reader.object(node, fields)?;
    let id = reader.required(&object, "id", Reader::text);
    let mut names = |name| reader.optional(&object, name, texts).unwrap_or_default();
    let (replaces, mixes_with) = (names("replaces"), names("mixes_with"));
    let (full_exchange_only, never) = (names("full_exchange_only"), names("never"));
    let density_15 = reader.optional(&object, "density_15", |reader, node| {
        above_zero(reader, node, Kind::Density)
    });
    let mut viscosity = |name| {
        reader.optional(&object, name, |reader, node| {
            above_zero(reader, node, Kind::KinematicViscosity)
        })
    };
    let (viscosity_40, viscosity_100) = (viscosity("viscosity_40"), viscosity("viscosity_100"));
    if let Some(name) = never.iter().find(|name| {
        [&replaces, &mixes_with, &full_exchange_only]
            .iter()
            .any(|list| list.contains(name))
    }) {
        let hint = "a fluid under never may stand under no other relation";
        reader.note_at(
            "never",
            Fault::new(ErrorKind::Conflict).got(name).hint(hint),
        );
    }
    Some(Fluid {
        id: id?,
        replaces,
        mixes_with,
        full_exchange_only,
        never,
        density_15,
        viscosity_40,
        viscosity_100,
    })
}

fn texts(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Vec<String>> {
    reader.list(node, Reader::text)
}

fn amounts(reader: &mut Reader<'_>, node: &Node<'_>, kind: Kind) -> Option<Vec<Amount>> {
    reader.list(node, |reader, node| reader.amount(node, kind))
}

fn above_zero(reader: &mut Reader<'_>, node: &Node<'_>, kind: Kind) -> Option<Amount> {
    let amount = reader.amount_from_zero(node, kind)?;
    if amount.is_zero() {
        reader.note(
            Fault::new(ErrorKind::OutOfRange)
                .got(&amount.to_string())
                .hint("this must be more than nothing"),
        );
        return None;
    }
    Some(amount)
}

/// A volume the ledger can hold: above zero and not beyond what any unit could.
fn volume(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Amount> {
    let amount = above_zero(reader, node, Kind::Volume)?;
    bounded(reader, amount)
}

fn volume_from_zero(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Amount> {
    let amount = reader.amount_from_zero(node, Kind::Volume)?;
    bounded(reader, amount)
}

fn bounded(reader: &mut Reader<'_>, amount: Amount) -> Option<Amount> {
    let most = Amount::new(1_000, 0, Unit::Litre).ok();
    let over = most.is_none_or(|most| !amount.compare(&most).is_ok_and(Ordering::is_le));
    if over {
        let fault = Fault::new(ErrorKind::OutOfRange)
            .got(&amount.to_string())
            .allowed(["up to 1000 L"]);
        reader.note(fault);
        return None;
    }
    Some(amount)
}

pub(crate) fn edition_number(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<u32> {
    let value = reader.whole(node, 1)?;
    let number = u32::try_from(value).ok();
    if number.is_none() {
        let fault = Fault::new(ErrorKind::OutOfRange).got(&value.to_string());
        reader.note(fault.allowed(["1 to 4294967295"]));
    }
    number
}

fn procedure(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Procedure> {
    let fields = &[
        "id",
        "edition",
        "supersedes",
        "effective",
        "unit",
        "fits",
        "source",
        "fluid",
        "capacity",
        "method",
        "conditions",
        "refill",
        "leak_limit",
        "closing",
        "cautions",
        "labour",
        "ext",
    ];
    let object = reader.object(node, fields)?;
    let id = reader.required(&object, "id", Reader::text);
    let edition = reader.required(&object, "edition", edition_number);
    let supersedes = reader.optional(&object, "supersedes", edition_number);
    let effective = reader.optional(&object, "effective", Reader::date);
    let unit = reader.optional(&object, "unit", Reader::text);
    let fits = reader.optional(&object, "fits", texts);
    let source = reader.optional(&object, "source", Reader::text);
    let fluid = reader.optional(&object, "fluid", Reader::text);
    let capacity = reader.optional(&object, "capacity", capacity);
    let method = reader.required(&object, "method", method);
    let conditions = reader.optional(&object, "conditions", conditions);
    let refill = reader.optional(&object, "refill", refill);
    let leak_limit = reader.optional(&object, "leak_limit", leak_limit);
    let closing = reader.optional(&object, "closing", closing);
    let cautions = reader.optional(&object, "cautions", |reader, node| {
        reader.list(node, caution)
    });
    let labour = reader.optional(&object, "labour", labour);
    let ext = reader.optional(&object, "ext", Reader::ext);
    Some(Procedure {
        id: id?,
        edition: edition?,
        supersedes,
        effective,
        unit,
        fits: fits.unwrap_or_default(),
        source,
        fluid,
        capacity,
        method: method?,
        conditions,
        refill,
        leak_limit,
        closing,
        cautions: cautions.unwrap_or_default(),
        labour,
        ext,
        digest: String::new(),
    })
}

fn capacity(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Capacity> {
    let object = reader.object(node, &["total", "refill"])?;
    let total = reader.optional(&object, "total", volume);
    let refill = reader.optional(&object, "refill", volume);
    Some(Capacity { total, refill })
}

fn method(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Method> {
    let fields = &[
        "kind", "warming", "watch", "settle", "surface", "offset", "hold_up", "lip_band", "bias",
    ];
    let object = reader.object(node, fields)?;
    let kind = reader.required(&object, "kind", |reader, node| {
        reader.word(node, MethodKind::WORDS)
    });
    let warming = reader.optional(&object, "warming", |reader, node| {
        reader.word(node, Warming::WORDS)
    });
    let mut amount = |name, kind| {
        reader.optional(&object, name, |reader, node| {
            reader.amount_from_zero(node, kind)
        })
    };
    let (watch, settle) = (amount("watch", Kind::Time), amount("settle", Kind::Time));
    let (surface, offset) = (
        amount("surface", Kind::Area),
        amount("offset", Kind::Length),
    );
    let hold_up = reader.optional(&object, "hold_up", volume_from_zero);
    let lip_band = reader.optional(&object, "lip_band", volume_from_zero);
    let bias = reader.optional(&object, "bias", bias).unwrap_or_default();
    Some(Method {
        kind: kind?,
        warming,
        watch,
        settle,
        surface,
        offset,
        hold_up,
        lip_band,
        bias,
    })
}

fn bias(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Vec<(Defect, Sign)>> {
    let object = reader.object(node, Defect::SLUGS)?;
    let mut stated = Vec::new();
    for (name, defect) in Defect::WORDS {
        let sign = reader.optional(&object, name, |reader, node| reader.word(node, Sign::WORDS));
        stated.extend(sign.map(|sign| (*defect, sign)));
    }
    Some(stated)
}

fn conditions(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Conditions> {
    let object = reader.object(
        node,
        &[
            "engine",
            "selector",
            "temperature",
            "tilt",
            "ranges",
            "cooler",
        ],
    )?;
    let engine = reader.optional(&object, "engine", |reader, node| {
        reader.word(node, EngineState::WORDS)
    });
    let selector = reader.optional(&object, "selector", Reader::slug);
    let temperature = reader.optional(&object, "temperature", temperature);
    let tilt = reader.optional(&object, "tilt", |reader, node| {
        let object = reader.object(node, &["max"])?;
        let angle = |reader: &mut Reader<'_>, node: &_| reader.amount_from_zero(node, Kind::Angle);
        let max = reader.required(&object, "max", angle)?;
        Some(TiltCondition { max })
    });
    let ranges = reader.optional(&object, "ranges", |reader, node| {
        let object = reader.object(node, &["dwell"])?;
        let dwell = reader.optional(&object, "dwell", |reader, node| {
            reader.amount_from_zero(node, Kind::Time)
        });
        Some(RangesCondition { dwell })
    });
    let cooler = reader.optional(&object, "cooler", |reader, node| {
        let object = reader.object(node, &["thermostat"])?;
        let thermostat = reader.optional(&object, "thermostat", |reader, node| {
            reader.amount(node, Kind::Temperature)
        });
        Some(CoolerCondition { thermostat })
    });
    Some(Conditions {
        engine,
        selector,
        temperature,
        tilt,
        ranges,
        cooler,
    })
}

fn temperature(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<TemperatureCondition> {
    let object = reader.object(node, &["min", "max", "printed", "max_age"])?;
    let mut limit = |name| {
        reader.optional(&object, name, |reader, node| {
            reader.amount(node, Kind::Temperature)
        })
    };
    let (min, max) = (limit("min"), limit("max"));
    let printed = reader.optional(&object, "printed", |reader, node| {
        amounts(reader, node, Kind::Temperature)
    });
    let max_age = reader.optional(&object, "max_age", |reader, node| {
        reader.amount_from_zero(node, Kind::Time)
    });
    if object.get("min").is_none() && object.get("max").is_none() {
        let hint = "state min, max or both, or leave temperature out";
        reader.note(
            Fault::new(ErrorKind::Conflict)
                .allowed(["min", "max"])
                .hint(hint),
        );
    }
    Some(TemperatureCondition {
        min,
        max,
        printed: printed.unwrap_or_default(),
        max_age,
    })
}

fn refill(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Refill> {
    let object = reader.object(node, &["step", "least", "stop"])?;
    let step = reader.optional(&object, "step", volume);
    let least = reader.optional(&object, "least", volume);
    let stop = reader.optional(&object, "stop", volume);
    Some(Refill { step, least, stop })
}

fn leak_limit(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<LeakLimit> {
    let object = reader.object(
        node,
        &["more_than", "at_least", "about", "counts", "printed"],
    )?;
    let more_than = reader.optional(&object, "more_than", volume);
    let at_least = reader.optional(&object, "at_least", volume);
    let about = reader.optional(&object, "about", volume_from_zero);
    let counts = reader.optional(&object, "counts", |reader, node| {
        reader.word(node, Counts::WORDS)
    });
    let printed = reader.optional(&object, "printed", |reader, node| {
        amounts(reader, node, Kind::Volume)
    });
    if object.get("more_than").is_some() == object.get("at_least").is_some() {
        let hint = "state exactly one of them";
        reader.note(
            Fault::new(ErrorKind::Conflict)
                .allowed(["more_than", "at_least"])
                .hint(hint),
        );
    }
    Some(LeakLimit {
        more_than,
        at_least,
        about,
        counts,
        printed: printed.unwrap_or_default(),
    })
}

fn closing(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Closing> {
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

fn caution(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Caution> {
    let object = reader.object(node, &["id", "text", "acts"])?;
    let id = reader.required(&object, "id", Reader::slug);
    let text = reader.required(&object, "text", Reader::text);
    let acts = reader.optional(&object, "acts", |reader, node| {
        reader.list(node, |reader, node| reader.word(node, Act::WORDS))
    });
    Some(Caution {
        id: id?,
        text: text?,
        acts: acts.unwrap_or_default(),
    })
}

fn labour(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Labour> {
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
