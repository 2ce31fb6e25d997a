//! Names that are not one unit: of two sizes, of one unit only where the kind is known, or to be refused
//! with what to write instead.

use super::unit::Unit;
use crate::error::ErrorKind;

/// A customary size that differs between the United States and imperial measures.
pub(super) struct Bare {
    pub(super) us: Unit,
    pub(super) imperial: Unit,
    pub(super) names: &'static [&'static str],
}

/// A name that is answered with its candidates.
pub(super) struct Listed {
    pub(super) kind: ErrorKind,
    pub(super) names: &'static [&'static str],
    /// Whether capitals count.
    pub(super) exact: bool,
    pub(super) allowed: &'static [&'static str],
    pub(super) hint: &'static str,
}

/// Bare sizes, in the normal form of spellings.
pub(super) const BARE: &[Bare] = &[
    Bare {
        us: Unit::UsGallon,
        imperial: Unit::ImperialGallon,
        names: &[
            "gal",
            "gals",
            "gallon",
            "gallons",
            "liquid.gallon",
            "liquid.gallons",
            "liq.gal",
        ],
    },
    Bare {
        us: Unit::UsQuart,
        imperial: Unit::ImperialQuart,
        names: &[
            "qt",
            "qts",
            "quart",
            "quarts",
            "liquid.quart",
            "liquid.quarts",
            "liq.qt",
        ],
    },
    Bare {
        us: Unit::UsPint,
        imperial: Unit::ImperialPint,
        names: &[
            "pt",
            "pts",
            "pint",
            "pints",
            "liquid.pint",
            "liquid.pints",
            "liq.pt",
        ],
    },
    Bare {
        us: Unit::UsFluidOunce,
        imperial: Unit::ImperialFluidOunce,
        names: &[
            "fl.oz",
            "fl.ozs",
            "floz",
            "oz.fl",
            "fluid.oz",
            "fluid.ounce",
            "fluid.ounces",
            "fl.ounce",
            "fl.ounces",
        ],
    },
];

/// Names that only the kind of the field makes certain. Capitals count.
pub(super) const WITHIN: &[(Unit, &[&str])] = &[
    (Unit::NewtonMetre, &["nm", "NM"]),
    (
        Unit::KilogramForceMetre,
        &["kg.m", "m.kg", "kgm", "mkg", "Kg.m", "KG.M", "kgM", "KGM"],
    ),
    (
        Unit::KilogramForceCentimetre,
        &["kg.cm", "cm.kg", "kgcm", "Kg.cm", "KG.CM", "KGCM"],
    ),
];

const VOLUMES: &[&str] = &["mL", "L", "US fl oz", "imp fl oz"];

const fn ambiguous(
    names: &'static [&'static str],
    allowed: &'static [&'static str],
    hint: &'static str,
) -> Listed {
    Listed {
        kind: ErrorKind::UnitAmbiguous,
        names,
        exact: false,
        allowed,
        hint,
    }
}

const fn unknown(
    names: &'static [&'static str],
    allowed: &'static [&'static str],
    hint: &'static str,
) -> Listed {
    Listed {
        kind: ErrorKind::UnitUnknown,
        names,
        exact: false,
        allowed,
        hint,
    }
}

/// Names of things people mean, with what to write instead.
pub(super) const REFUSED: &[Listed] = &[
    ambiguous(
        &["oz", "ozs", "ounce", "ounces"],
        &["US fl oz", "imp fl oz"],
        "an ounce is a volume of two sizes or a weight; write the fluid ounce in full, and a weight in g or lb",
    ),
    Listed {
        kind: ErrorKind::UnitAmbiguous,
        names: &["M"],
        exact: true,
        allowed: &["m", "min", "mi"],
        hint: "capital and small letters count: m is the metre, min the minute, mi the mile",
    },
    unknown(
        &["kgf", "kp", "ozf"],
        &["N", "kN", "lbf", "kgf·m", "ozf·in"],
        "a force is given in N, kN or lbf; a torque names its arm",
    ),
    unknown(
        &["ft", "foot", "feet", "yd", "yard", "yards"],
        &["in", "m", "mi"],
        "a length is given in km, mi, m, mm or in",
    ),
    unknown(
        &[
            "cm",
            "centimetre",
            "centimetres",
            "centimeter",
            "centimeters",
        ],
        &["mm", "m"],
        "1 cm is 10 mm",
    ),
    unknown(
        &[
            "cup",
            "cups",
            "tbsp",
            "tsp",
            "teaspoon",
            "tablespoon",
            "dl",
            "cl",
            "hl",
            "drop",
            "drops",
        ],
        VOLUMES,
        "a volume is given in L, mL or a named fluid measure",
    ),
    unknown(
        &["dm3", "mm3"],
        &["L", "mL"],
        "1 dm³ is 1 L and 1000 mm³ are 1 mL",
    ),
    unknown(
        &[
            "mg", "t", "ton", "tons", "tonne", "tonnes", "stone", "grain", "gr",
        ],
        &["kg", "g", "lb"],
        "a mass is given in kg, g or lb",
    ),
    unknown(
        &[
            "ms", "us", "d", "day", "days", "week", "weeks", "wk", "month", "months", "yr", "year",
            "years",
        ],
        &["s", "min", "h"],
        "a duration is given in s, min or h",
    ),
    unknown(
        &[
            "pa", "mpa", "hpa", "mbar", "atm", "at", "inhg", "in.hg", "mmhg", "torr", "kg/cm2",
            "kgf/cm2",
        ],
        &["kPa", "bar", "psi"],
        "a pressure is given in kPa, bar or psi; an absolute one in kPa abs or psi abs",
    ),
    unknown(
        &["bara", "bar.a", "bar.abs", "bar.absolute"],
        &["kPa abs", "psi abs"],
        "1 bar is 100 kPa",
    ),
    unknown(
        &["rad", "rads", "radian", "radians", "mrad", "grad", "gon"],
        &["deg"],
        "an angle is given in degrees",
    ),
    unknown(
        &["cp", "mpa.s", "pa.s", "poise", "centipoise"],
        &["mm²/s"],
        "that is a dynamic viscosity: divide it by the density",
    ),
    unknown(
        &["st", "stokes", "sus", "ssu", "m2/s"],
        &["mm²/s"],
        "a kinematic viscosity is given in mm²/s (cSt); 1 St is 100 mm²/s",
    ),
    unknown(
        &[
            "gpm", "l/s", "l/h", "lph", "gph", "m3/h", "ml/min", "cc/min",
        ],
        &["mL/s", "L/min"],
        "a flow is given in mL/s or L/min",
    ),
    unknown(
        &["g/m3", "lb/gal", "lb/ft3", "lb/in3", "lb/us.gal"],
        &["kg/m³", "g/mL"],
        "a density is given in kg/m³ or g/mL",
    ),
    unknown(
        &["r", "rankine", "degr", "deg.r"],
        &["K", "°C", "°F"],
        "a temperature is given in K, °C or °F",
    ),
];
