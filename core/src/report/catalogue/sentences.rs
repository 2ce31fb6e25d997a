//! What an answer says: verdicts, findings, reasons, acts, gates, cautions, lint.

use super::{Part, table};

pub(super) static SENTENCES: &[Part] = table! {
    answer {
        on_hold: "On hold: nothing is decided about the level before the hold is lifted.",
        no_procedure: "No service sheet applies, so no level can be told.",
        repeat: "To be made again: the engine stopped with the plug open, so where the level is now is not known.",
        incomplete: "Not finished: there was no look at the opening yet, or the last one shows nothing.",
        low: "Low: at the last look the fluid did not reach the opening.",
        at_level: "At level: at the last look the fluid stood at the opening, with every condition met.",
        over: "Over: at the last look the fluid stood above the opening.",
        not_low: "Not low: at the level or above it; which of the two is not proven.",
        not_full: "Not over: at the level or below it; which of the two is not proven.",
        not_proven: "Not proven: the last look shows neither a low level nor a right one.",
    }
    leak {
        above: "Past the leak limit: look for the leak.",
        below: "Below the leak limit.",
        open: "Open: not past the leak limit so far, and the level has not been found.",
        not_applicable: "None: no leak limit applies here.",
    }
    certainty {
        clear: "Clear: all that is possible lies on that side of the limit.",
        marginal: "Marginal: what is proven of the shortage is not clear of the limit.",
    }
    finding {
        pack_differs: "The journal names the pack {named}; {given} was given. None of its sheets applies.",
        pack_changed: "The journal was made on another state of the pack: version {named} named, {given} given.",
        procedure_unknown: "The pack has no procedure named {procedure}.",
        edition_unknown: "The pack has no edition {edition} of {procedure}.",
        edition_not_begun: "No edition of {procedure} was in force on the day of the first entry.",
        editions_clash: "Several editions of {procedure} are in force at once, none superseding another: {editions}.",
        torn_line: "The last line was cut off and is left out ({bytes} bytes). Enter again what it said.";
            bytes one: "The last line was cut off and is left out ({bytes} byte). Enter again what it said.",
        repeat_delivery: "The same entry came again, word for word. It counts once.",
        id_reused: "Two entries share one id and say different things. Both are kept; correct the wrong one.",
        correction_without_target: "There is no earlier entry {of} to correct, so the correction changes nothing.",
        time_goes_back: "The time goes back here. The order of the entries decides, but waits may be wrong.",
        confirmed_unknown: "Nothing is known by the name {what}. The confirmation is kept and meets no condition.",
        source_proves_nothing: "A temperature {source} does not prove here that the fluid is within the window.",
        reading_impossible: "No fluid in a gearbox is at {reading!}. Read it again.",
        reading_default: "Sensors that are broken or absent read {reading!}. Read the fluid another way first.",
        unit_doubt: "A reading of {reading!} is unlikely here, and {other!} would be in the window. Was the scale mistyped?",
        reading_jumps: "From {before} to {reading} is faster than fluid changes at idle. One reading is doubtful.",
        reading_stuck: "The reading stands still at {reading} while the engine runs. Ask a second source.",
        reading_not_used: "This sheet is read by what comes out of the opening; another reading proves nothing.",
        ranges_without_engine: "Cycling the ranges with the engine stopped fills nothing. It does not count.",
        ranges_too_short: "The ranges were held for {dwell} each; the sheet asks for {asked!}. It does not count.",
        engine_stopped_open: "The engine stopped with the plug open. Fluid ran back and out, nobody knows how much: \
            close, meet the conditions again, and look again.",
        plug_not_open: "A look was recorded while the plug was not open. It proves nothing.",
        contradiction: "This look contradicts what the earlier entries prove and is set aside. One of them is wrong.",
        captured_without_flow: "A volume was captured from an opening that let nothing out. It is not booked.",
        measured_by_missing: "How {amount} was measured is not said. It is taken as exact.",
        density_unknown: "The density of the fluid is not known, so the scale cannot vouch for {amount}.",
        volume_negative: "A volume of {amount!} is below zero and is not booked.",
        volume_impossible: "A volume of {amount!} is more than this gearbox could take or give, and is not booked. \
            Was the unit or the decimal point mistyped?",
        drained_unopened: "Fluid came out, and nothing says that the plug was opened.",
        double_entry: "Every flow already has its captured volume; this would count the same fluid twice. Not booked.",
        zero_volume: "A pour of {amount} was recorded. Was a look at the opening meant?",
        step_exceeded: "At once {amount} was poured; the sheet allows steps of {step!}.",
        poured_unproven: "Before anything had shown the fluid low, {amount} was poured. That is how overfills happen.",
        poured_after_level: "After the level had been reached, {amount} was poured. It may be over by as much.",
        poured_while_flowing: "While fluid ran from the opening, {amount} was poured. It may be in the pan.",
        poured_on_hold: "While the job was on hold, {amount} was poured.",
        running_total_doubt: "The third volume of an even series is {amount!}. Was a running total entered?",
        fluid_foreign: "The fluid {fluid} must never meet the fluid of this unit. The job is on hold.",
        fluid_needs_exchange: "The fluid {fluid} may follow the one in this unit only after a full exchange.",
        fluid_unresolved: "It is not settled which fluid may go in[: nothing in the pack settles {fluid}].",
        closing_order: "A torque was recorded before the plug was recorded closed.",
        torque_unit_doubt: "Entered as {torque!}[, which is {converted!}]; the sheet asks for {asked!}. \
            Same number, other unit: find out what the plug really got.",
        torque_outside: "Tightened to {torque!}[, which is {converted!}]; the sheet asks for {asked!} within its tolerance.",
    }
    reason {
        shows_low: "{grade}[ at {reading}], with every condition of the sheet met: low.",
        shows_at_level: "{grade}[ at {reading}], with every condition of the sheet met: at level[. Captured: {captured}].",
        shows_over: "{grade}[ at {reading}], with every condition of the sheet met: over[. Captured: {captured}].",
        shows_not_low: "{grade}[ at {reading}]. What was amiss can only make it read too low, so it is not low.",
        shows_not_full: "{grade}[ at {reading}]. What was amiss can only make it read too high, so it is not over.",
        shows_nothing: "{grade}[ at {reading}]. What was amiss could explain that by itself, so it proves nothing.",
        spurt: "{grade}, but as a spurt: too short a look, or no more than the opening itself holds. \
            It proves nothing.",
        short_look: "{grade}, but the look was too short. It proves nothing.",
        plug_was_not_open: "{grade}, but the plug was not open. It proves nothing.",
        temperature_missing: "{grade}, but no temperature that counts had been read. It proves nothing.",
        temperature_stale: "{grade}, but the last temperature[, {reading},] was too old by then. It proves nothing.",
        contradicted: "{grade}, which contradicts the other entries named here. It is set aside.",
        below_window: "The fluid was colder than {limit!}: {sign}.[ From {reading} to {limit!} what the unit holds \
            swells by about {volume}.]",
        above_window: "The fluid was warmer than {limit!}: {sign}.[ From {limit!} to {reading} what the unit holds \
            swells by about {volume}.]",
        engine_off: "The engine was off, or not recorded as running: {sign}.",
        engine_running: "The engine was running, or not recorded as off: {sign}.",
        selector: "The selector stood elsewhere, or was not recorded: {sign}.",
        ranges: "The ranges had not been cycled since the engine started: {sign}.",
        cooler: "The cooler circuit had been opened and not yet filled hot: {sign}.",
        foam: "What came out was foam: {sign}.",
        tilt_toward: "It leaned towards the opening by more than {limit!}: {sign}.[ At this opening that is \
            about {volume}.]",
        tilt_away: "It leaned away from the opening by more than {limit!}: {sign}.[ At this opening that is \
            about {volume}.]",
        tilt_unknown: "How it leaned was not recorded, or not which way: {sign}.",
        pour_settle: "The last pour had not settled: {sign}.",
        stop_settle: "The fluid had not settled since the engine stopped: {sign}.",
        held: "On hold: {why}.",
        leak_by_count: "By the sheet's limit of {limit!}, a count of {used} means that the leak must be looked for.",
        leak_by_shortage: "By the sheet's limit of {limit!}, what is proven short means that the leak must be looked for, \
            whatever else was counted.",
        leak_below: "By the sheet, a count of {used} is not past the leak limit of {limit!}.",
        leak_open: "The count so far, {used}, is not past the leak limit of {limit!}; the level is not found yet.",
        leak_not_applicable: "No leak limit applies: the job is of another sort, or no sheet states one.",
        leak_marginal: "The proven shortage[ starts at {shortage_from} and][ ends at {shortage_to} and] \
            is not clear of the limit of {limit!}.",
        may_be_overfilled: "It may have been filled too far: checked cold, or with the engine off.",
        may_hold_coolant: "Coolant may have got into it: look at the fluid, and test it with a strip.",
        may_be_another_opening: "The plug may not be the level plug, or the unit may lean.",
        may_be_lost_outside: "If fluid is missing, it may have leaked to the outside.",
        may_be_lost_into_coolant: "It may have gone into the coolant.",
        may_be_never_filled: "It may never have been there: filled short, or checked wrongly before.",
        no_procedure: "No service sheet applies.",
        must_begin_again: "The check must be made again first.",
        nothing_seen: "Nothing has been seen at the opening yet.",
        grade_says_otherwise: "{grade}, which by itself would mean: {verdict}.",
    }
    next {
        settle_hold: "Settle what holds the job: {why}. A named person lifts the hold.",
        find_fluid: "Find out which fluid the sheet means before anything is poured.",
        find_sheet: "Find the service sheet, and the edition of it, that apply.",
        begin_again: "Make the check again: {phase}.",
        look_for_leak: "Look for the leak, outside and into the coolant, before any more goes in.",
        let_it_thin: "Let it run until it thins to a trickle or a drip, and weigh what comes out. It stays out.",
        weigh_pan: "Weigh what came out at entry {entry}: that may settle the leak question.",
        read_temperature: "Read the temperature of the fluid[: {reading} is too old].",
        mend: "Put right first: {unmet}",
        look_again: "Look at the opening again.",
        open_plug: "Open the level plug and look.",
        doubt_opening: "Doubt the opening: is it the right one, is the funnel in the right unit, is anything blocked? \
            Check, and confirm it.",
        pour: "Pour in[ {volume}][ of {fluid}], measured, and let it settle.[ Not the whole step of {step!}: the leak \
            limit of {limit!} lies inside it, and flow after it would not tell on which side the shortage was.]\
            [ It will chill the fluid to about {mixed}, below the {min!} of the sheet: read the temperature before the \
            next look.]",
        close_plug: "Put the plug in.",
        tighten: "Tighten the plug[ to {torque!}][ ± {tolerance!}].",
        stop_engine: "Stop the engine.",
        look_for_drips: "Run it and look underneath for drips before it is lowered and handed over.",
    }
    forecast {
        opens: "The window should open in {likely}[, at the earliest in {earliest}][, at the latest in {latest}].",
        opens_from: "The window opens in {earliest} or later; how much later the readings do not tell yet.",
        open: "The window is open.",
        closes: "It should close in {likely}[, at the earliest in {earliest}].",
        closes_from: "It closes in {earliest} at the earliest.",
        closed: "The fluid is too warm: the window is closed.",
        unasked: "No window was asked about[: the fluid is at {reading}].",
        too_few: "There are too few readings yet to say when {limit}.",
        not_warming: "The readings do not rise, so nothing says when {limit}.",
        asymptote_unknown: "Where the warming ends cannot be told from these readings yet, nor when {limit}.",
        asymptote_below: "By these readings the warming levels out before {limit}.",
        too_slow: "At this rate it takes longer than a day until {limit}.",
        stuck: "The reading stands still, so nothing says when {limit}: ask a second source.",
    }
    unmet {
        on_hold: "The job is on hold: {why}.",
        no_procedure: "No service sheet applies.",
        plug_already_open: "The plug is out already.",
        fill_opening_proven: "The fill opening must be proven to open.",
        plug_identified: "The level plug must be identified.",
        closing_kit_ready: "The closing kit must lie ready.",
        pan_empty: "The pan underneath must be empty.",
        wheels_chocked: "The wheels must be chocked.",
        temperature_missing: "The temperature of the fluid must be read.",
        temperature_stale: "The temperature must be read again: the last reading[, {reading},] is too old.",
        below_window: "The fluid is at {reading}; the sheet asks for {limit!} or more.",
        above_window: "The fluid is at {reading}; the sheet asks for {limit!} or less.",
        engine_off: "The engine must be running.",
        engine_running: "The engine must be off.",
        selector: "The selector must stand[ in {asked}] as the sheet says.",
        ranges: "The ranges must be cycled with the engine running[, {asked!} each].",
        cooler: "The cooler circuit must be filled hot first.",
        tilt_toward: "It leans {tilt} towards the opening, more than the sheet allows.",
        tilt_away: "It leans {tilt} away from the opening, more than the sheet allows.",
        tilt_unknown: "How it leans[, by {tilt},] and which way must be recorded.",
        pour_settle: "The last pour must settle.",
        stop_settle: "The fluid must settle after the engine stopped.",
        fluid_unresolved: "It is not settled which fluid may go in.",
        more_than_closing_loss: "{planned} is more than was lost while closing.",
        closing_loss_stays_out: "The sheet does not put back what is lost while closing.",
        would_restore_excess: "What ran out was above the level; putting it back would restore the overfill.",
        low_not_shown: "Nothing has shown the fluid low; the verdict is: {verdict}.",
        look_first: "Look at the opening first: entry {entry} was poured since the last look.",
        leak_limit_passed: "The leak limit is passed: look for the leak first.",
        step_exceeded: "{planned} is more than the step of {step!}.",
        opening_doubted: "So much went in with nothing coming that the opening is in doubt.",
        plug_not_open: "The plug is not open.",
        level_not_shown: "The level has not been shown; the verdict is: {verdict}.",
        plug_not_closed: "The plug is {plug} and must be closed first.",
        engine_already_off: "The engine is off already.",
    }
    caution {
        decision_limit: "This is arithmetic from what was entered and the sheet that was chosen. The vehicle maker's \
            current procedure, local rules and a trained person's judgement come first.",
        hot_fluid: "Hot fluid and hot exhaust burn: gloves and eye protection on, face aside when the plug comes out. \
            Above about 60 °C, wait where the sheet allows it.",
        support: "Nobody goes underneath before rated stands or a lift hold it at its rated points and it has been \
            pushed and found steady. Never trust a jack alone.",
        wheels_turn: "Selecting a range turns free wheels: foot brake held, chocks on wheels that stand, nobody under \
            or beside; back to park or neutral before anyone goes under.",
        levelling_off: "Switch self-levelling suspension off and use the maker's lift mode before it is raised.",
        plug_identity: "Be certain of the plug before a tool touches it with the engine running: a pressure tap \
            sprays hot fluid, a drain plug empties the unit.",
        moving_parts: "The engine runs while you work below: hair, sleeves and tools clear of what turns; a fan may \
            start by itself.",
        exhaust_gas: "Lead the exhaust gas outside, or work in the open, for as long as the engine runs.",
        auto_start: "A hybrid or stop-start engine starts and stops by itself: use the maker's running mode. \
            High-voltage parts are for trained people only.",
        slip_fire: "Wipe spilt fluid up at once: it makes floors slippery and burns on a hot exhaust. No flame near, \
            and solvent cleaner away from heat.",
        close_before_stop: "The plug is seated before the engine stops: with the plug open the unit drains, and the \
            check is lost.",
        no_dry_start: "Do not start or drive it with too little fluid in it: the pump runs dry.",
        torque_unit: "Mind the unit of the torque on the wrench as well as the number: threads in aluminium strip.",
        threads_as_printed: "The torque holds for threads in the condition the sheet has them in: dry, oiled or with \
            threadlocker. No factor for another condition is applied; published ones contradict each other.",
        grip_at_mark: "Hold the wrench at the mark of its grip and at the angle that was given, with no tube on the \
            handle: elsewhere the setting is not true.",
        steel_band: "The band is that of solid steel bolts that clamp, in steel. A plug that seals, a hollow one, or one \
            in light alloy takes less: go by its own sheet.",
        graduation_coarse: "The nearest mark of the wrench is more than 4 % from the torque asked for: take a wrench \
            with a finer scale.",
        sooner_if_rising: "The loss is rising and the distance is reckoned at the last rate: the shortage may come before \
            even its near end. Look for the leak.",
        reheats_on_start: "The running engine warms the fluid again at once: start it only when everything is ready for \
            the look, and read the temperature again before it.",
        fluid_by_name: "Go by the name of the specification on the container, never by the colour of what is in it.",
        opened_fluid: "Fluid from a container that was opened before takes up water and dirt: use it only if it stood \
            sealed, clean and within its date.",
        mix_between: "Drive or run it through its ranges between one drain and the next, or the old fluid stays where it \
            is and the shares are not true.",
        no_normal_use: "A sealed unit uses no fluid up: what is missing went somewhere, and a small rate or a low class \
            does not show it to be tight.",
        coolant_toxic: "Coolant poisons people and animals. Keep fluid that has coolant in it apart from other waste.",
        disposal: "Waste fluid goes into no drain and onto no ground; local law says where it goes.",
        leak_on_hot: "Fluid dripping on exhaust, brakes or tyres: the vehicle is not to be driven.",
        after_work: "Look underneath for drips with the engine running before it is handed over, and give \
            threadlocker the curing time its supplier states.",
        not_proven: "Unless the verdict is at level, the level has not been shown to be right, and papers for the \
            customer must say so.",
    }
    lint {
        supersedes_absent: "The edition {edition} that it supersedes is not in the pack.",
        fluid_unstated: "The sheet names no fluid.",
        fluid_unknown: "The pack does not describe the fluid {fluid}.",
        engine_unstated: "The sheet does not say whether the engine runs during the look.",
        tilt_unstated: "The sheet does not say how level the unit must stand.",
        watch_unstated: "The sheet does not say how long the opening is watched.",
        settle_unstated: "The sheet does not say how long a pour settles.",
        hold_up_unstated: "The sheet does not say how much the standpipe itself holds, so that may pass for flow.",
        window_unstated: "The sheet states no temperature window.",
        window_empty: "No temperature lies in the window: {min!} is above {max!}.",
        warming_undeclared: "The sheet does not say what the level does as the unit warms, so no look outside the \
            window proves anything.",
        print_disagrees: "The print of {printed!} does not agree with {governing!}, which governs.",
        print_chain_rounded: "The print of {printed!} was converted from {through!} instead of {governing!} and is off \
            by the rounding between.",
        print_unit_slip: "The print of {printed!} is not {governing!}, which governs: {factor}.",
        thread_unknown: "The thread {thread} is of no series that is known here.",
        torque_unit_doubt: "A torque of {torque!} is more than a steel bolt in {thread} gets; {other!} would be usual. \
            Was the unit mistaken?",
        step_straddles_limit: "Whole steps of {step!} do not add up to the limit of {limit!}: one last pour, unmeasured, \
            would straddle it.",
        limit_over_capacity: "The leak limit of {limit!} is more than a refill of {refill!}.",
        closing_order_unstated: "The sheet does not say whether the plug is closed before the engine stops.",
        closing_order_loses_fluid: "The sheet stops the engine with the plug open, which drains fluid out.",
        torque_unstated: "The sheet states no torque for the plug.",
    }
    flip {
        temperature: "Had entry {entry} read {to} instead of {from}[, the verdict would be: {verdict}]\
            [, the leak reading would be: {by_sheet}][, {certain}].",
        captured: "Had {to} been captured at entry {entry} instead of {from}[, the verdict would be: {verdict}]\
            [, the leak reading would be: {by_sheet}][, {certain}].",
        added: "Had {to} been poured at entry {entry} instead of {from}[, the verdict would be: {verdict}]\
            [, the leak reading would be: {by_sheet}][, {certain}].",
    }
};
