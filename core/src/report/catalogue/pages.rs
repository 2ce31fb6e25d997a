//! What pages and pictures say beside the sentences: titles, labels, legends.

use super::{Part, table};

pub(super) static PAGES: &[Part] = table! {
    picture {
        warm_up: "The warm-up",
        warm_up_told: "Fluid temperature by time[: from {first}][ to {last}][; the sheet asks for {min} or more][; for {max} or less].",
        narrowing: "What is known, entry by entry",
        closing: "The closing torque",
        closing_told: "Torque at the plug[: the sheet asks for {torque}][ ± {tolerance}][; the tool is set to {setting}].",
    }
    label {
        as_found: "As found: {known}.",
        now: "Now: {known}.",
        short: "◂ short",
        over: "over ▸",
        level: "level",
        limit: "leak limit {limit}",
        read: "read {source}",
        window: "window[ from {min}][ up to {max}]",
        plug_out: "plug out",
        looked: "looked",
        poured: "poured in",
        forecast: "forecast after entry {entry}",
        at_plug: "At the plug",
        asked: "{torque}[ ± {tolerance}]",
        entered: "Entry {entry}: {torque}[ = {converted}]",
        on_tool: "On the tool",
        rig: "{tool}[, adapter {adapter}][ at {angle}]",
        set_to: "set to {setting}",
        range: "usable[ from {min}] up to {max}",
    }
    mark {
        flow: "{seen}",
        added: "poured {amount}",
        drained: "out {amount}",
        engine: "engine {state}",
    }
    seen {
        none: "nothing came",
        wet: "wet, no drop",
        slow_drip: "slow drip",
        fast_drip: "fast drip",
        trickle: "trickle",
        stream: "stream",
        gush: "gush",
        spitting: "foam",
    }
};
