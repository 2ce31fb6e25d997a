//! The example journals and what each comes to.
//!
//! Worked by hand from the journals and the rules; the half-widths are the library's own (sealed 1 %, meter 2 %,
//! jug 20 mL, scale 5 g and 2.5 % of density), and sedge-thin weighs 842 kg/m³.

/// What one example journal comes to, worked by hand.
pub struct Example {
    pub file: &'static str,
    pub verdict: &'static str,
    pub as_found: &'static str,
    pub now: &'static str,
    pub leak: (&'static str, &'static str),
    pub used: &'static str,
    pub findings: &'static [&'static str],
    pub told: &'static [&'static str],
}

pub const EXAMPLES: &[Example] = &[
    Example {
        // 10 g: from 5 g / (1.025 × 0.842) = 5.793… mL to 15 g / (0.975 × 0.842) = 18.271… mL ran out of a unit
        // that was at the level after it.
        file: "plain_check.json",
        verdict: "at_level",
        as_found: "[0.005793 L, 0.018272 L]",
        now: "[0 L, 0 L]",
        leak: ("below", "clear"),
        used: "0 L",
        findings: &[],
        told: &[
            "The fluid is at 24 °C; the sheet asks for 42 °C or more.",
            "The plug may come out now.",
            "A slow drip came at 43 °C, with every condition of the sheet met: at level.",
        ],
    },
    Example {
        // In: 4 × 0.25 L and 0.10 L by meter, 1.078 L to 1.122 L; the look before the last pour found nothing.
        // Out: 48 g, from 43 g / (1.025 × 0.842) = 49.823… mL to 53 g / (0.975 × 0.842) = 64.559… mL. Short by
        // 1.078 L − 0.06456 L to 1.122 L − 0.049823 L. Counted: 1.1 L − 48 g / 0.842 = 57.007 mL.
        file: "short_unit.json",
        verdict: "at_level",
        as_found: "[-1.072177 L, -1.01344 L]",
        now: "[0 L, 0 L]",
        leak: ("below", "marginal"),
        used: "1.042993 L",
        findings: &[],
        told: &["Entered as 13 lbf·ft"],
    },
    Example {
        // Nothing at 27 °C and 29 °C proves nothing. In 0.25 L, out 0.18 L and 0.04 L, each by jug: net in
        // 0.03 L give or take 0.06 L, at the level after it.
        file: "opened_too_cold.json",
        verdict: "at_level",
        as_found: "[-0.09 L, 0.03 L]",
        now: "[0 L, 0 L]",
        leak: ("below", "clear"),
        used: "0.03 L",
        findings: &["poured_unproven"],
        told: &[
            "Opened nevertheless: The temperature must be read again: the last reading, 19 °C, is too old.",
            "What was amiss could explain that by itself, so it proves nothing.",
            "Before anything had shown the fluid low, 0.25 L was poured.",
            "A stream came at 42 °C, with every condition of the sheet met: over.",
            "Let it run until it thins",
        ],
    },
    Example {
        // The pipe's own 30 mL and 35 mL are spurts; nothing at 47 °C, above the window, still shows it is not
        // over. Then 0.3 L sealed (3 mL) in, 20 mL out; all that ran out by jug: net in 0.215 L give or take 63 mL.
        file: "window_passed.json",
        verdict: "at_level",
        as_found: "[-0.278 L, -0.152 L]",
        now: "[0 L, 0 L]",
        leak: ("below", "clear"),
        used: "0.215 L",
        findings: &[],
        told: &[
            "The fluid is at 47 °C; the sheet asks for 46 °C or less.",
            "A fast drip came, but as a spurt",
            "Nothing came at 47 °C. What was amiss can only make it read too high, so it is not over.",
            "As found: at most 0.05 L over; how short is not known.",
            "The fluid is at 34 °C; the sheet asks for 36 °C or more. The engine must be running.",
            "The plug may come out now. Next: Open the level plug and look.",
        ],
    },
    Example {
        // Out 0.55 L and 0.05 L by jug, 0.56 L to 0.64 L; a trickle means up to 0.04 L above the lip.
        file: "overfull.json",
        verdict: "at_level",
        as_found: "[0.56 L, 0.68 L]",
        now: "[0 L, 0.04 L]",
        leak: ("below", "clear"),
        used: "0 L",
        findings: &[],
        told: &[
            "A stream came at 36 °C, with every condition of the sheet met: over.",
            "As found: at least 0.53 L over.",
            "It stays out.",
            "As found: between 0.56 L and 0.68 L over. Now: at the level or up to 0.04 L over.",
        ],
    },
    Example {
        // Out 0.7 L by jug, and still at the level or over.
        file: "coolant_found.json",
        verdict: "on_hold",
        as_found: "[0.68 L, +inf)",
        now: "[0 L, +inf)",
        leak: ("open", "open"),
        used: "0 L",
        findings: &[],
        told: &[
            "Coolant poisons people and animals.",
            "looks milky; smell sweet",
            "Settle what holds the job: milky fluid.",
            "coolant strip positive",
            "On hold: nothing is decided about the level before the hold is lifted.",
            "That the level is right.",
        ],
    },
    Example {
        // 0.245 L were in, and nothing came, before the engine stopped with the plug out; what came out then is not
        // known. In all 1.25 L by meter, at most 1.275 L, less 40 mL to 80 mL at the end.
        file: "engine_stopped.json",
        verdict: "at_level",
        as_found: "[-1.235 L, -0.245 L]",
        now: "[0 L, 0 L]",
        leak: ("above", "marginal"),
        used: "1.19 L",
        findings: &["engine_stopped_open"],
        told: &[
            "Stop: The engine stopped with the plug open.",
            "Next: Make the check again: close the plug",
            "how much came out is not known",
            "Past the leak limit: look for the leak.",
        ],
    },
    Example {
        // In 3 × 0.35 and 0.25 US qt by meter, 1.274 to 1.326 US qt; out 1 US fl oz = 0.03125 US qt by jug, give or
        // take 20 mL = 0.0211337… US qt. Gross 1.3 US qt against "at least 1.3 US qt".
        file: "at_the_limit.json",
        verdict: "at_level",
        as_found: "[-1.315884 US qt, -1.221616 US qt]",
        now: "[0 US qt, 0 US qt]",
        leak: ("above", "marginal"),
        used: "1.3 US qt",
        findings: &[],
        told: &[
            "Pour in 0.25 US qt of sorrel-light",
            "Not the whole step of 0.35 US qt: the leak limit of 1.3 US qt lies inside it",
            "At the leak limit itself, which this sheet counts as past it: look for the leak.",
            "the limit is at least 1.3 US qt. Margin 0 US qt.",
            "By the sheet's limit of 1.3 US qt, a count of 1.3 US qt means that the leak must be looked for.",
        ],
    },
    Example {
        // The line that was being written when the power went is left out. 0.2 L by jug, nothing, 0.2 L by jug.
        file: "power_cut.jsonl",
        verdict: "low",
        as_found: "(-inf, -0.18 L]",
        now: "(-inf, 0.22 L]",
        leak: ("open", "open"),
        used: "0.4 L",
        findings: &["torn_line"],
        told: &[
            "Low: at the last look the fluid did not reach the opening.",
            "The last line was cut off and is left out",
            "Look at the opening again. Wait 2 min first.",
        ],
    },
];
