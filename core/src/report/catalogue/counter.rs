//! What the counter says: estimates, invoices, what differs between them.

use super::{Part, table};

pub(super) static COUNTER: &[Part] = table! {
    finding {
        billed_on_hold: "The job is on hold: this bills what was done so far.",
        billed_without_level: "The level was not proven right: this bills what was done so far. The verdict was: {verdict}",
        billed_open: "The plug is not recorded closed: what closes it is not billed yet.",
        volume_not_billed: "A volume here could not be booked, so it is not billed.",
        waste_unmeasured: "What came out here was not measured, or could not be booked: more may have come out than the disposal log says.",
        ceiling_passed: "The job comes to {total}; the customer approved {ceiling}. Ask before anything more is done.",
        ceiling_unread: "The last approval here is no sum in the currency of the price list: nobody can tell whether the job keeps within it.",
        call_before_pour: "Call the customer before the next pour: {planned} more would bring the job to {after}, and \
            {ceiling} is approved. Up to {affordable} can be poured within it.",
        worst_past_ceiling: "At worst the job comes to {total}; the customer approved {ceiling}.",
        stock_short: "Do not start: at worst the job still takes {need}, and {short} of that is not on the shelf.",
    }
    assumes {
        nothing_more: "Nothing more has to be poured.",
        level_found: "The level was found: nothing more is poured.",
        assumed_volume: "Assumed, without the shop's own numbers: {volume} goes in.",
        stated_volume: "By the shop's own numbers {volume} goes in.",
        as_poured: "More was poured already; nothing more is assumed.",
        takes_refill: "The unit takes {volume}, as the sheet says.",
        takes_total: "The unit takes {volume}, as if it were dry.",
        to_limit: "Poured up to the leak limit of {limit}.",
        leak_search: "Then the leak is looked for.",
        leak_due: "The leak limit was passed: the leak is looked for.",
        new_plug: "The plug is replaced.",
        before_new_approval: "This is the worst before a new approval: a repair is none of it.",
    }
    line {
        labour: "Labour",
        wait: "Wait",
        leak_search: "Looking for the leak",
        fluid: "Fluid",
        plug: "Plug",
        seal: "Seal",
        threadlocker: "Threadlocker",
        supplies: "Supplies",
        disposal: "Disposal",
    }
    policy {
        whole_container: "each container that had to be opened",
        used: "what went in, out of containers",
        bulk: "what went in, out of the drum",
        hands_on: "time with hands on the vehicle",
        bay: "time the bay is occupied",
        fixed: "fixed price",
        customer: "the customer pays for the wait",
        sheet: "the sheet asks for it at each closing",
        replaced: "replaced",
        each_job: "on every such job",
        volume_out: "by the volume that came out",
    }
    differs {
        added: "not in the estimate",
        not_needed: "not needed",
        not_yet: "not billed so far",
        more: "more of it",
        less: "less of it",
        other_item: "by another item of the price list",
        other_price: "its price has changed",
        other_rounding: "rounded otherwise",
    }
    heading {
        best: "Best",
        likely: "Likely",
        worst: "Worst, before a new approval",
        approval: "What was approved",
        shelf: "What the worst takes off the shelf",
        invoice: "Lines and total",
        against: "Against the estimate",
        leftover: "What is left over",
        waste: "What came out",
        shop: "For the shop",
    }
    counter {
        approved: "Approved: {ceiling}. So far {so_far}[, which leaves {headroom}][, which is {over} over].[ With {planned} \
            more it is {after}.]",
        shelf: "It still takes {need}[: {containers}][, {bulk} out of the drum][; {left} of it stays over].",
        unused: "Not used: {container}.[ {reasons}]",
        leftover: "{fluid}: {left} in {containers}.",
        waste: "{volume}, {stream}[; it may be as little as {out_from}][ and as much as {out_to}].",
    }
    disposal { oil: "used oil", mixed: "mixed used oil", }
    stream {
        oil: "used oil",
        mixed: "mixed, kept apart: coolant or a foreign fluid was in it",
    }
};
