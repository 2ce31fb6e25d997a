//! What the calculators answer beside quantities: a part for each list of words, named by its room and the list.

use super::{Part, table};

pub(super) static CALCULATORS: &[Part] = table! {
    torque_print_class {
        governing: "the governing print itself",
        exact: "the same value",
        agrees: "the same within half of its last printed digit",
        chain_rounded: "converted from another print that had been rounded before",
        unit_slip: "the number of another unit, or a decimal point elsewhere",
        inconsistent: "another value, for no reason that is known here",
    }
    torque_thread_condition {
        dry_steel: "plain steel, dry",
        machine_oil: "steel with machine oil",
        cadmium: "cadmium plated",
        phosphate_and_oil: "phosphated and oiled",
        zinc: "zinc plated",
        stainless: "stainless steel",
        threadlocker: "with threadlocker: published values contradict each other, so none is assumed",
        lubricated_other: "with another lubricant: published values lie far apart, so none is assumed",
    }
    torque_plug_kind {
        steel: "a solid bolt or plug of steel, in steel",
        light_alloy: "into light alloy, or a plug of it",
        hollow: "a hollow plug",
        unknown: "not known",
    }
    torque_fits {
        yes: "It lies within the band.",
        no: "It lies above the band.",
        not_judged: "It is not judged: it lies below the band, where a plug that seals is right, or the band is none for this plug.",
    }
    torque_basis { steel_bolt: "solid steel bolts in steel", }
    torque_tool_type {
        indicating_beam: "wrench with a bending or twisting beam",
        indicating_dial: "wrench with a rigid housing and a scale, dial or display",
        indicating_electronic: "wrench that measures electronically",
        indicating_screwdriver: "screwdriver with a scale, dial or display",
        indicating_electronic_screwdriver: "screwdriver that measures electronically",
        setting_adjustable: "wrench that is set on a scale or display",
        setting_fixed: "wrench with one setting",
        setting_unscaled: "wrench that is set on a tester, without a scale",
        setting_screwdriver: "screwdriver that is set on a scale or display",
        setting_fixed_screwdriver: "screwdriver with one setting",
        setting_unscaled_screwdriver: "screwdriver that is set on a tester, without a scale",
        setting_beam: "wrench with a bending beam that is set on a scale",
    }
    volume_opened_defect {
        other_fluid: "It holds another fluid.",
        not_sealed: "It did not stand closed.",
        not_clean: "It or the fluid is not clean.",
        not_dated: "Nobody wrote on it when it was opened.",
        out_of_date: "It was opened too long ago.",
        age_unknown: "How long it has been open cannot be told.",
    }
    warm_up_method {
        first_order: "from a curve through the readings that levels out",
        slope: "from a straight line through the latest readings",
        none: "not told",
    }
    warm_up_doubt {
        reading_impossible: "No fluid in a gearbox is so cold or so warm.",
        reading_default: "It is what a broken or absent sensor reads.",
        reading_jumps: "No fluid changes so fast.",
        reading_stuck: "It has stood still for minutes with the engine running.",
    }
    fluid_may_mix {
        yes: "It may be poured onto the other.",
        after_exchange: "It may follow the other after a full exchange, and not meet it.",
        no: "It must not meet the other.",
        unknown: "Nothing that counts is said: find out before it is poured.",
    }
    fluid_offered {
        same: "It is what is asked for.",
        may_replace: "It may stand in for what is asked for.",
        may_top_up: "It may be poured onto what is asked for, and not stand in for it.",
        after_exchange: "It may follow what is asked for after a full exchange.",
        never: "It must not meet what is asked for.",
        unknown: "Nothing that counts is said: find out before it is poured.",
    }
    fluid_reason {
        same_specification: "Both are one specification.",
        said_to_mix: "The poured fluid's sheet says that it mixes with the other.",
        said_to_replace: "The fluid's sheet says that it replaces the other.",
        replaces_only: "The poured fluid's sheet says that it replaces the other, and not that the two may meet.",
        exchange_first: "The poured fluid's sheet asks for a full exchange first.",
        said_never: "The poured fluid's sheet says never.",
        sheets_disagree: "The poured fluid's sheet lets it meet or follow the other; the other's says never.",
        said_the_other_way: "The other fluid's sheet names this one, and a relation goes one way.",
        chain_not_declared: "There is a chain over further fluids, and a chain counts only where its ends are related themselves.",
        fluid_unknown: "The poured fluid is not in the list.",
        not_said: "No sheet relates the two.",
    }
    fluid_relation {
        same: "the same specification",
        mixes_with: "may be poured onto the other",
        replaces: "may stand in for the other; whether it may meet it is not said",
        full_exchange_only: "may follow the other only after a full exchange",
        never: "must not meet the other",
        unknown: "nothing is said, which is never a yes",
    }
    signal_reply_state {
        positive: "It answered with data.",
        negative: "It refused.",
        pending: "The answer comes later: wait for it, and do not ask again.",
    }
    signal_refusal {
        general_reject: "It gave no reason.",
        service_not_supported: "It does not have the service.",
        sub_function_not_supported: "It does not have this part of the service.",
        incorrect_length: "The request has the wrong length or form.",
        response_too_long: "The answer would be too long.",
        busy: "It is busy: ask again.",
        conditions_not_correct: "Its conditions are not met.",
        sequence_error: "The request comes out of order.",
        out_of_range: "It does not have the identifier, or not now.",
        security_access_denied: "It must be unlocked first.",
        authentication_required: "It wants to know first who asks.",
        response_pending: "The answer comes later.",
        sub_function_not_in_session: "It does not have this part of the service in the session it is in.",
        service_not_in_session: "It does not have the service in the session it is in.",
        other: "It gave a code without a name here.",
    }
    signal_level_status {
        conditions_met: "The conditions for measuring are met.",
        settling: "The fluid is still settling; the countdown tells how long.",
        in_gear: "A range is engaged.",
        too_cold: "The fluid is too cold.",
        too_hot: "The fluid is too hot.",
        moving: "The vehicle is moving.",
        not_level: "The vehicle does not stand level.",
        engine_too_slow: "The engine turns too slowly.",
        unknown: "A code without a known meaning.",
        error: "The sender knows that the status is wrong.",
        not_available: "The sender has no status.",
    }
    signal_state {
        valid: "within the range of valid values",
        parameter_specific: "a code whose meaning belongs to the parameter",
        reserved: "a code kept for later use",
        error: "the sender knows that its value is wrong",
        not_available: "the sender has no value",
        implausible: "a valid code for something that cannot be, or outside the range given for it",
    }
    leak_trend {
        rising: "The loss is rising: all that the last rate can be is above all that the first can be.",
        not_shown: "No change of the loss is shown, and none is ruled out.",
        falling: "The loss is falling: all that the last rate can be is below all that the first can be.",
        not_told: "There are no two rates to compare.",
    }
    leak_rule {
        simple_acceptance: "decided by the estimate alone; the risk is shared",
        guarded_acceptance: "called below only where the estimate is below by the guard band",
        guarded_rejection: "called above only where the estimate is above by more than the guard band",
    }
    leak_decision {
        above: "above the limit",
        below: "at the limit or below it, which does not show it to be tight",
        undecided: "within the guard band, where the rule decides nothing",
    }
    leak_look {
        wet_no_drops: "wet or discoloured, without drops",
        drops_form_none_fall: "drops form, and none falls while it is looked at",
        drops_fall: "drops fall",
    }
    leak_response {
        check_more_often: "It may run, with its level checked more often than the schedule says.",
        report: "Report it to whoever decides about the repair.",
        do_not_run: "It is not to be run.",
    }
    money_place {
        line: "tax rounded on each line",
        document: "tax rounded once a rate, on the sum of its lines",
    }
};
