//! What stands around and inside the sentences: what happened, headings, phrases, and words for ids.

use super::{Part, table};

pub(super) static WORDS: &[Part] = table! {
    event {
        confirmed: "Confirmed: {what}.",
        level: "Tilt {tilt} {toward}.",
        engine: "Engine {state}.",
        selector: "Selector in {position}.",
        ranges: "Ranges cycled, {dwell} each.",
        temperature: "Temperature {reading} {source}.",
        plug: "Plug {plug}.",
        flow: "Looked at the opening for {watched}: {grade}[, {trend}][; captured {captured}][ {by}].",
        look: "Looked at the opening for {watched}[, flow {trend}][; captured {captured}][ {by}].",
        reading: "Reading {value}[ on {side}][, {status}].",
        added: "Poured in {amount}[ of {fluid}][ {by}][, from {container}][, batch {batch}].",
        drained: "Came out: {amount}[ {by}], {drained}.",
        fluid: "Fluid examined[: looks {appearance}][; smell {smell}][; debris {debris}][; coolant strip {strip}].",
        seepage: "Seepage of class {class} at {place}.",
        tightened: "Plug tightened to {torque}[, {tool}][, adapter {adapter}].",
        driven: "Driven {distance}[, fluid up to {peak}].",
        approved: "Approved up to {ceiling}.",
        hold: "Put on hold: {stated}.",
        release: "Hold lifted: {stated}.",
        void: "Entry {of} is struck out: {stated}",
        correction: "Entry {of} is corrected: {stated} It now reads: {event}",
        note: "Note: {text}",
    }
    factor {
        times_12: "it is twelve times as much, as inches for feet",
        over_12: "it is a twelfth, as feet for inches",
        n_m_as_lbf_ft: "newton metres were printed as pound-force feet",
        lbf_ft_as_n_m: "pound-force feet were printed as newton metres",
        n_m_as_lbf_in: "newton metres were printed as pound-force inches",
        lbf_in_as_n_m: "pound-force inches were printed as newton metres",
        n_m_as_kgf_m: "newton metres were printed as kilogram-force metres",
        kgf_m_as_n_m: "kilogram-force metres were printed as newton metres",
        litre_as_us_quart: "litres were printed as US quarts",
        us_quart_as_litre: "US quarts were printed as litres",
        imperial_as_us: "imperial measures were printed as US ones",
        us_as_imperial: "US measures were printed as imperial ones",
        same_number: "the number was kept and the scale changed",
        offset_lost: "the zeros of the scales, 32 °F apart, were left out",
        times_10: "it is ten times as much",
        over_10: "it is a tenth",
        times_100: "it is a hundred times as much",
        over_100: "it is a hundredth",
        times_1000: "it is a thousand times as much",
        over_1000: "it is a thousandth",
    }
    departure {
        unknown: "not known",
        zero: "at the level",
        zero_or_below: "at the level or short, by how much is not known",
        zero_or_above: "at the level or over, by how much is not known",
        below: "at least {near} short",
        above: "at least {near} over",
        not_above: "at most {far} over; how short is not known",
        not_below: "at most {far} short; how much over is not known",
        just_below: "{far} short",
        just_above: "{far} over",
        between_below: "between {near} and {far} short",
        between_above: "between {near} and {far} over",
        up_to_below: "at the level or up to {far} short",
        up_to_above: "at the level or up to {far} over",
        across: "between {below} short and {above} over",
    }
    net {
        unknown: "not known",
        zero: "nothing",
        zero_or_below: "nothing in; how much came out is not known",
        zero_or_above: "nothing out; how much went in is not known",
        below: "at least {near} out",
        above: "at least {near} in",
        not_above: "at most {far} in; how much came out is not known",
        not_below: "at most {far} out; how much went in is not known",
        just_below: "{far} out",
        just_above: "{far} in",
        between_below: "between {near} and {far} out",
        between_above: "between {near} and {far} in",
        up_to_below: "nothing or up to {far} out",
        up_to_above: "nothing or up to {far} in",
        across: "between {below} out and {above} in",
    }
    phrase {
        leak_at_limit: "At the leak limit itself, which this sheet does not count as past it.",
        leak_from_limit: "At the leak limit itself, which this sheet counts as past it: look for the leak.",
        leak_count: "Counted {used} {counts}; the limit is {limit_is} {limit!}[, give or take {about!}]. Margin {margin}.",
        unproven_level: "That the level is right.",
        unproven_amount: "How far from the level it was found, beyond what is said above.",
        unproven_side: "That the shortage is clear of the leak limit.",
        unproven_cause: "Where the missing fluid went: outside, into the coolant, or never filled in.",
        unproven_tight: "That nothing leaks. A sealed unit uses no fluid up, so any shortage has a cause.",
        unproven_later: "That the level will hold. Only a later check shows that.",
        wait: "Wait {wait} first.",
        mind: "(cautions {numbers})"; count one: "(caution {numbers})",
        gate_open: "The plug may come out now.",
        gate_shut: "The plug stays in. {unmet}[ {rest}]",
        gate_rest: "What was missing before still is.",
        gate_ignored: "Opened nevertheless: {unmet}",
        settled: "That settles the finding on entry {entry}.",
        known_as_found: "As found: {known}.",
        known_now: "Now: {known}.",
        known_net: "Net so far: {known}.",
    }
    heading {
        sheet: "Sheet",
        job: "The job",
        asks: "What the sheet asks",
        cautions: "Cautions",
        story: "What happened, by time and entry",
        verdict: "Verdict",
        known: "What is known",
        forecast: "Warming up",
        leak: "Leak reading",
        why: "Why, by entry",
        flip: "What would turn it",
        why_not: "What stands against the verdict asked about",
        unproven: "What is not proven",
        findings: "Findings, by entry",
        next: "What to do next",
        gates: "What may be done now",
        as_found: "As found",
        net_added: "Net added",
        now: "Now",
        next_line: "Next:",
    }
    ask {
        sheet: "{procedure}[, edition {edition}][, for the {unit_name}]",
        method: "The level is found at {method}.",
        fluid: "Fluid: {fluid}[, {total!} in all][, {refill!} after a drain].",
        engine: "Engine {state}.",
        selector: "Selector in {position}.",
        tilt: "Tilt up to {tilt!}.",
        ranges: "Ranges cycled[, {dwell!} each].",
        window: "Fluid from {min!} to {max!}, read no more than {max_age!} before the look.",
        window_from: "Fluid at {min!} or more, read no more than {max_age!} before the look.",
        window_to: "Fluid at {max!} or less, read no more than {max_age!} before the look.",
        watch: "Watch the opening for {watch!}.",
        settle: "Let a pour settle for {settle!}.",
        step: "Pour {step!} at a time at most.",
        leak: "Leak limit: {limit_is} {limit!}[, give or take {about!}], counted {counted}.",
        torque: "Tighten the plug to {torque!}[ ± {tolerance!}][, thread {thread}][, {seal}][, {threadlocker}].",
    }
    job {
        check: "Level check",
        top_up: "Top-up",
        new_fill: "New fill",
        exchange: "Fluid exchange",
        leak_follow_up: "Leak follow-up",
        recheck: "Recheck",
        condition_only: "Look at the fluid only",
        title: "{job}[ on {vehicle}][, {unit_name}][, {odometer}]",
        opened: "Last opened: {said}",
        complaint: "Complaint: {said}",
    }
    severity { note: "Note:", caution: "Doubt:", stop: "Stop:", }
    act { open: "Open the plug", pour: "Pour", close: "Close the plug", stop_engine: "Stop the engine", }
    allowed { yes: "yes.", no: "not now.", }
    grade {
        none: "nothing came",
        wet: "the opening was wet, without a drop",
        slow_drip: "a slow drip came",
        fast_drip: "a fast drip came",
        trickle: "a trickle came",
        stream: "a stream came",
        gush: "a gush came",
        spitting: "foam came",
    }
    verdict {
        on_hold: "on hold",
        no_procedure: "no sheet",
        repeat: "to be made again",
        incomplete: "not finished",
        low: "low",
        at_level: "at level",
        over: "over",
        not_low: "not low",
        not_full: "not over",
        not_proven: "not proven",
    }
    by_sheet { above: "past the limit", below: "below the limit", open: "open", not_applicable: "none", }
    certain { clear: "clear", marginal: "marginal", }
    sign {
        low: "that makes a level read too low",
        high: "that makes a level read too high",
        both: "that can mislead either way",
    }
    why {
        coolant: "coolant in the fluid",
        milky: "milky fluid",
        pink_foam: "pink foam",
        foreign_fluid: "fluid that does not belong in it",
        stated: "put on hold by a person",
    }
    limit {
        opens: "the window opens",
        closes: "the window closes",
    }
    phase {
        close: "close the plug and meet every condition again",
        open: "meet every condition, then open the plug",
        look: "look at the opening",
    }
    source {
        scan: "by scan tool",
        network: "over the vehicle network",
        infrared: "by infrared on the case",
        pan: "by probe on the pan",
        coolant: "of the engine coolant",
        ambient: "of the air in the shop",
    }
    by {
        sealed: "from a sealed container",
        meter: "by meter",
        jug: "by jug",
        scale: "by scale",
        eye: "by eye",
    }
    plug { loosened: "loosened", open: "out", closed: "in", }
    state { idling: "idling", off: "off", ready: "in its service mode", }
    position { park: "park", neutral: "neutral", reverse: "reverse", drive: "drive", }
    status {
        valid: "valid",
        error: "in error",
        not_available: "not available",
        conditions_met: "conditions met",
        settling: "still settling",
        in_gear: "a range is engaged",
        too_cold: "too cold",
        too_hot: "too hot",
        moving: "moving",
        not_level: "not level",
        engine_too_slow: "engine too slow",
        unknown: "unknown",
    }
    appearance {
        clear: "clear",
        milky: "milky",
        pink_foam: "like pink foam",
        foreign: "like another fluid",
    }
    smell { none: "none", normal: "normal", burnt: "burnt", sweet: "sweet", }
    debris { none: "none", fine_grey: "fine and grey", }
    strip { negative: "negative", positive: "positive", }
    toward { plug: "towards the opening", away: "away from the opening", unknown: "in an unknown direction", }
    trend { rising: "growing", steady: "steady", thinning: "thinning", stopped: "then stopped", }
    drained {
        excess: "above the level: it stays out",
        captured: "caught from the last flow",
        closing_loss: "lost while closing",
        service: "drained for the work",
    }
    counts { net: "net", gross: "gross", }
    counted { net: "net: poured in, less what ran out", gross: "gross: all that was poured in", }
    limit_is { more_than: "more than", at_least: "at least", }
    beyond { more_than: "past that", at_least: "at that already", }
    method {
        overflow_plug: "a plug low on the case; the unit is filled at the top",
        side_plug: "a plug in the side; the unit is filled through it or above it",
        standpipe: "a standpipe inside the drain plug; its own contents run out first",
    }
    seal { new: "a new seal", reuse: "the seal may be used again", none: "no seal", }
    threadlocker {
        none: "no threadlocker",
        low: "low-strength threadlocker",
        medium: "medium-strength threadlocker",
        high: "high-strength threadlocker",
    }
    what {
        fill_opening_proven: "the fill opening opens",
        closing_kit_ready: "the closing kit lies ready",
        pan_empty: "the pan is empty",
        wheels_chocked: "the wheels are chocked",
        plug_identified: "the level plug is identified",
        opening_checked: "right opening, right unit, nothing blocked",
        cooler_opened: "the cooler circuit was opened",
        cooler_filled: "the cooler circuit was filled hot",
        supports_steady: "the supports are steady",
        exhaust_extracted: "the exhaust is led outside",
        vent_clear: "the vent is clear",
        fill_opening_closed: "the fill opening is closed",
        cleaned_dry: "it is clean and dry underneath",
        drips_checked: "looked for drips",
        plug_replaced: "the plug was replaced",
        leak_searched: "the leak was looked for",
        levelling_off: "self-levelling is switched off",
    }
};
