//! What many records say: the history of a unit, jobs that may come back, and when to look again.

use super::{Part, table};

pub(super) static HISTORY: &[Part] = table! {
    history {
        record_twice: "The same record came {times} times. It counts once.",
        vehicle_missing: "These records name no vehicle, so they belong to no history.",
        unit_missing: "Some records of this vehicle name a unit, and these do not. They are a history of their own.",
        job_twice: "The job {job} was sealed more than once. The record with the most entries counts; it is named last.",
        job_again: "The job {job} began more than once. Each counts as a visit: leave out what was not meant.",
        odometer_back: "The odometer goes back from {before} to {now}: was it replaced, or misread? \
            No rate by distance is told here.",
        odometer_unit_changed: "The odometer changes its unit, from {before} to {now}: find out which is right. \
            No rate by distance is told here.",
        odometer_missing: "At these visits no odometer was read. What was lost is told by time only.",
        volume_unbooked: "These visits tell a volume that could not be booked, so nobody knows how much went in or came out. \
            Correct the entries and seal the job again.",
        level_unknown: "What was lost before these visits is not known: the level was not proven at both ends.",
        lost_together: "Together at least {lost_from}[ and at most {lost_to}] was lost. By the leak limit of {limit} that is \
            enough to look for the leak, though no visit was by itself.",
    }
    comeback {
        never_at_level: "Closed without the level ever being proven. The last look said: {verdict}.",
        left_open: "Nobody recorded that the plug was closed again, and the level was not proven. The last look said: \
            {verdict}.",
        job_twice: "The job {job} was sealed more than once. The record with the most entries counts; it is named last.",
        opened_below_window: "The plug was opened and the flow read below the temperature window, and no look within it \
            followed.",
        hold_unresolved: "On hold, and nobody lifted the hold.",
        poured_unchecked: "Fluid was poured[, {gross} in all], and the level was never looked at.",
        leak_not_followed: "By the sheet past the leak limit[, with {used} against {limit}], and the leak was not followed \
            up later.",
        low_again: "Left at its level, and {shortage} short again[ after {days} days][ and {distance}].";
            days one: "Left at its level, and {shortage} short again[ after {days} day][ and {distance}].",
        temperatures_alike: "Every temperature of the fluid is {reading}. Was it written afterwards? Ask.",
        times_equal: "Every entry has the same time. Was it written afterwards? Ask.",
        times_even: "The entries are all {seconds} seconds apart. Was it written afterwards? Ask.";
            seconds one: "The entries are all {seconds} second apart. Was it written afterwards? Ask.",
        times_at_once: "All entries were made within {seconds} seconds. Was it written afterwards? Ask.";
            seconds one: "All entries were made within {seconds} second. Was it written afterwards? Ask.",
        pours_alike: "In {jobs} jobs[ {by}] always wrote the same pour, {amount}. Was it measured? Ask.";
            jobs one: "In {jobs} job[ {by}] always wrote the same pour, {amount}. Was it measured? Ask.",
        looks_alike: "In {jobs} jobs[ {by}] always wrote the same time of looking, {amount}. Was it timed? Ask.";
            jobs one: "In {jobs} job[ {by}] always wrote the same time of looking, {amount}. Was it timed? Ask.",
    }
    follow_up {
        on_hold: "The job is on hold: settle that before the vehicle is handed over.",
        level_not_found: "The level was not proven right: make the check again before the vehicle is handed over. \
            The last look said: {verdict}.",
        past_limit: "By the sheet it is past the leak limit[, with {used} against {limit}]: look for the leak before the \
            vehicle is handed over.",
        leak_searched: "The leak limit[ of {limit}] was passed and the leak was looked for: see whether the repair holds.",
        leak_marginal: "The leak reading is close to its limit[ of {limit}; it turns at {margin}].",
        short_below_limit: "It was short[ by {used}], below the leak limit: a second visit tells how fast it loses fluid.",
        circuit_fills_hot: "The circuit may have filled only in part: look again after one drive that brings the unit to \
            its heat.",
        rate: "At the most it can be losing[, {per_1000_km} per 1000 km][, {per_30_days} per 30 days], it is {allowed} \
            short by then.",
        loss_rising: "The loss is rising.",
        nothing_asks: "Nothing that was recorded asks for another look.",
    }
    audit {
        never_proven: "Levels that were never proven: {count} jobs. To make the checks again costs {net}."; count one:
            "A level that was never proven: {count} job. To make the check again costs {net}.",
        leak_missed: "Past the leak limit and not followed up: {count} jobs. To look for the leaks costs {net}."; count one:
            "Past the leak limit and not followed up: {count} job. To look for the leak costs {net}.",
        fluid_not_billed: "Fluid that was poured and not billed: {count} jobs, {net}."; count one:
            "Fluid that was poured and not billed: {count} job, {net}.",
        pour_not_booked: "Fluid was poured and nobody can say how much, nor whether it was billed: {count} jobs."; count one:
            "Fluid was poured and nobody can say how much, nor whether it was billed: {count} job.",
        promise_missed: "Promised times that were missed: {count} jobs."; count one:
            "Promised times that were missed: {count} job.",
    }
    shadow {
        level_differs: "The old rule said {was_verdict}; the evidence says {now_verdict}.",
        leak_differs: "Of a leak the old rule said {was_by_sheet}; the evidence says {now_by_sheet}.",
        outside_window: "The old rule said {was_verdict}, at a temperature outside the window and with no look that is known.",
    }
    evidence_grade {
        A: "a look, and all that the sheet asks",
        B: "a look, with gaps",
        C: "a temperature and amounts",
        D: "amounts, or less",
    }
    loss_trend {
        rising: "The loss is rising.",
        not_shown: "No change of the loss is shown, and none is ruled out.",
        falling: "The loss is falling.",
        not_told: "One loss alone shows no trend.",
    }
    heading {
        comebacks: "What may come back",
        follow_up: "When to look again",
        audit: "What it cost, without tax",
        shadow: "Where the old rule differs",
    }
    phrase {
        no_history: "No record names a vehicle, so there is no history.",
        no_comebacks: "Nothing was found.",
        of_unit: "{vehicle}[, {unit_name}]",
        visit: "[{date}, ][{odometer}, ]{job}: {verdict}. As found: {found}. Net added: {net}.[ Opened by {by}.][ Opened \
            before: {last_opened}.]",
        loss: "Lost from visit {earlier} to visit {later}: {lost}[; per 1000 km {per_distance}][; per 30 days {per_time}].",
        to_limit: "At the last rate the leak limit of {limit} is {distance} away.",
        ends_one: "{end_from}",
        ends_both: "{end_from} to {end_to}",
        ends_from: "at least {end_from}",
        ends_to: "at most {end_to}",
        ends_none: "not known",
        cited: "[{vehicle}][, {unit_name}][, job {job_id}], record {record}[, entries {entries}]";
            count one: "[{vehicle}][, {unit_name}][, job {job_id}], record {record}[, entry {entries}]",
        audit_total: "All of it, as far as it has a price: {net}.",
        audit_unpriced: "For {count} of them there is no price.",
        shadow_counted: "{jobs} jobs: the same in {same}, too little to compare in {not_compared}."; jobs one:
            "{jobs} job: the same in {same}, too little to compare in {not_compared}.",
        shadow_job: "Job {job_id}, grade {grade} ({grade_words}): {difference}",
        due_now: "Before the vehicle is handed over: {job}.",
        due_hot: "After one drive that brings the unit to its heat: {job}.",
        due_distance: "After {distance} at the latest[, at {odometer} on the odometer]: {job}.",
        due_open: "Soon, for no rate says by when: {job}.",
        due_days: "After {days} days at the latest[, by {date}]: {job}."; days one: "After {days} day at the latest[, by \
            {date}]: {job}.",
    }
};
