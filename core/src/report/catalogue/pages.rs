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
        entry: "Entry {entry}",
        entry_answered: "Entry {entry}, answered later",
        amount: "{amount}",
        as_found: "As found: {known}.",
        now: "Now: {known}.",
        short: "◂ short",
        over: "over ▸",
        level: "level",
        limit: "leak limit {limit!}",
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
    heading {
        window: "When to open",
        before: "Before the plug comes out",
        order: "The acts in their order",
        pours: "What the pours add up to",
        wrench: "Closing",
        kept: "What this page rests on: rules, and digests by SHA-256",
    }
    page {
        work_sheet: "Work sheet",
        bay_card: "Bay card",
    }
    head {
        job: "Job",
        job_id: "Job number",
        vehicle: "Vehicle",
        unit: "Unit",
        odometer: "Odometer",
        opened: "Last opened",
        complaint: "Complaint",
        sheet: "Service sheet",
        time: "Day and time",
        day_and_time: "{day}, {begun} to {ended}",
        by: "Done by",
        rules: "Rules version",
        pack: "Pack",
        pack_version: "{pack}, version {version}",
        sheet_digest: "Digest of the sheet",
        record: "Record",
    }
    customer {
        head_found: "Found",
        head_done: "Done",
        head_means: "It means",
        head_next: "Next",
        found: "When it came in, the fluid was {known}.",
        found_unknown: "How the fluid stood when it came in is not known.",
        net: "Fluid put in, less what came out again: {known}.",
        tightened: "The plug was tightened to {torque}.",
        tightened_doubt: "For the plug {torque} was entered, and that is in doubt.",
        untightened: "No torque is recorded for the plug.",
        plug_out: "The plug is not in.",
        past_limit: "By the sheet it is past the leak limit, so the leak must be looked for.",
        below_limit: "What was missing is below the leak limit of the sheet. A sealed unit uses no fluid up, so it went somewhere or was never there.",
        marginal: "What was measured leaves room for either side of the limit.",
        find_leak: "Have the leak looked for before the vehicle goes back to daily use.",
        check_again: "Have the level checked again[ after {distance} at the latest][, by {date}]: only a second check shows that it holds.",
        listed_first: "What is listed below comes first.",
        settle_hold: "What holds the job is to be settled first. The vehicle must not be put back into use before that.",
        watch_it: "Nothing more on this visit. Spots underneath, or shifts that come late or hard, are a reason to come back at once.",
        not_done: "The check is to be finished before the vehicle goes back to daily use.",
    }
    means {
        on_hold: "The job is on hold[: {why}]. Nothing is said about the level before that is settled.",
        no_procedure: "No service sheet applies, so nothing can be said about the level.",
        repeat: "The check was broken off and must be made again. How the fluid stands now is not known.",
        incomplete: "The check is not finished. Whether the level is right has not been shown.",
        low: "The fluid is still short.",
        at_level: "The fluid is at its level now, shown with every condition of the service sheet met.",
        over: "The fluid stands too high. What is above the level has to come out.",
        not_low: "The fluid is not short. Whether it stands too high has not been shown.",
        not_full: "The fluid does not stand too high. Whether it is short has not been shown.",
        not_proven: "Whether the level is right has not been shown.",
        low_then: "At the last look the fluid was short; now: {known}.",
        at_level_then: "At the last look the fluid was at its level, shown with every condition of the service sheet met; \
            now: {known}.",
        over_then: "At the last look the fluid stood too high; now: {known}.",
        not_low_then: "At the last look the fluid was not short; now: {known}.",
        not_full_then: "At the last look the fluid did not stand too high; now: {known}.",
    }
    card {
        window: "Open the plug with the scan tool at {min} to {max}.",
        window_from: "Open the plug with the scan tool at {min} or more.",
        window_to: "Open the plug with the scan tool at {max} or less.",
        printed: "The sheet prints {printed}.",
        age: "Read it no more than {age} before the look.",
        at_limit: "ends at the leak limit",
        past: "pour no more, look for the leak",
        doubt: "nothing came: doubt the opening",
        containers: "The leak limit of {limit!} is {count} containers of {size}[ and {rest} of the next]: {beyond}, look for \
            the leak."; count one: "The leak limit of {limit!} is {count} container of {size}[ and {rest} of the next]: {beyond}, \
            look for the leak.",
        container: "The leak limit is {limit!} of one container of {size}: {beyond}, look for the leak.",
        set: "Set {tool} to {setting}: the plug gets {applied}[, {less} less than asked][, {more} more than asked].",
        unsuited: "This tool does not suit: {tool}.",
    }
    tool_reason {
        below_range: "The setting of {setting} is below its range, which begins at {min}.",
        above_range: "The setting of {setting} is above its range, which ends at {max}.",
        tolerance_too_wide: "It may be off by {permissible}, more than the {tolerance} the sheet allows.",
        graduation_coarse: "Its steps of {graduation} are too far apart[: the nearest gives {applied}].",
        fixed_elsewhere: "It has one setting, {setting}[, which gives {applied}].",
        lever_unknown: "Its lever is not known, so nothing can be set for an adapter of {adapter}.",
        lever_too_short: "Its lever of {lever} is too short for an adapter of {adapter}.",
        low_in_range: "The setting of {setting} lies below {tested_from}, from where such tools are tested.",
        permissible_assumed: "How far off it may be, {permissible}, is that of its type: its own certificate says better.",
    }
    sum {
        net: "Without tax",
        tax: "Tax, {tax}: {rate} of {base}",
        total: "Total",
    }
    against {
        more: "The likely case was estimated at {estimated} with tax and {billed} is billed: {difference} more.",
        less: "The likely case was estimated at {estimated} with tax and {billed} is billed: {difference} less.",
        same: "The likely case was estimated at {estimated} with tax, and the same is billed.",
        lines: "Line by line, without tax:",
        line: "{billed} instead of {estimated}: {reasons}[ (entries {entries})]."; count one:
            "{billed} instead of {estimated}: {reasons}[ (entry {entries})].",
    }
    column {
        item: "What",
        quantity: "Quantity",
        price: "Price",
        net: "Net",
        pour: "Pour",
        amount: "Pour in",
        in_all: "In all",
        note: "If nothing comes",
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
