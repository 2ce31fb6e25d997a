//! Closed lists of words, whose values cross by number.

use brimline_core::check::{BySheet, Certainty};
use brimline_core::estimate::CaseKind;
use brimline_core::procedure::Severity;
use brimline_core::record::Rules;
use brimline_core::{Act, Error, ErrorKind, Fault, Kind, Measures, Rounding, Verdict};

/// What a quantity is a quantity of. 0 where a kind is given: any.
pub type brim_kind = i32;

/// Volume of a liquid.
pub const BRIM_KIND_VOLUME: brim_kind = 1;
/// Turning moment.
pub const BRIM_KIND_TORQUE: brim_kind = 2;
/// Mass.
pub const BRIM_KIND_MASS: brim_kind = 3;
/// Length and distance.
pub const BRIM_KIND_LENGTH: brim_kind = 4;
/// Area.
pub const BRIM_KIND_AREA: brim_kind = 5;
/// A point on a temperature scale.
pub const BRIM_KIND_TEMPERATURE: brim_kind = 6;
/// How far two temperatures are apart.
pub const BRIM_KIND_TEMPERATURE_DIFFERENCE: brim_kind = 7;
/// Pressure above that of the surrounding air, as a gauge shows it.
pub const BRIM_KIND_PRESSURE: brim_kind = 8;
/// Pressure above vacuum.
pub const BRIM_KIND_ABSOLUTE_PRESSURE: brim_kind = 9;
/// Plane angle, in degrees only.
pub const BRIM_KIND_ANGLE: brim_kind = 10;
/// Duration.
pub const BRIM_KIND_TIME: brim_kind = 11;
/// Mass per volume.
pub const BRIM_KIND_DENSITY: brim_kind = 12;
/// Kinematic viscosity.
pub const BRIM_KIND_KINEMATIC_VISCOSITY: brim_kind = 13;
/// Volume per time.
pub const BRIM_KIND_VOLUME_FLOW: brim_kind = 14;
/// A plain number: a share, a factor, a probability.
pub const BRIM_KIND_RATIO: brim_kind = 15;
/// Force.
pub const BRIM_KIND_FORCE: brim_kind = 16;
/// Part of its volume that a liquid gains per degree.
pub const BRIM_KIND_EXPANSION: brim_kind = 17;

/// Whose gallon, quart, pint and fluid ounce a bare name means. 0 where measures are given: not
/// said.
pub type brim_measures = i32;

/// United States liquid measures, from the gallon of 231 cubic inches.
pub const BRIM_MEASURES_US: brim_measures = 1;
/// Imperial measures, from the gallon of 4.54609 L.
pub const BRIM_MEASURES_IMPERIAL: brim_measures = 2;

/// How a value between two printable ones is rounded.
pub type brim_rounding = i32;

/// To the nearest; halfway to the even digit.
pub const BRIM_ROUNDING_HALF_EVEN: brim_rounding = 1;
/// To the nearest; halfway away from zero.
pub const BRIM_ROUNDING_HALF_UP: brim_rounding = 2;
/// Toward zero.
pub const BRIM_ROUNDING_DOWN: brim_rounding = 3;
/// Away from zero.
pub const BRIM_ROUNDING_UP: brim_rounding = 4;
/// Toward minus infinity.
pub const BRIM_ROUNDING_FLOOR: brim_rounding = 5;
/// Toward plus infinity.
pub const BRIM_ROUNDING_CEILING: brim_rounding = 6;

/// What can be said of the level.
pub type brim_verdict = i32;

/// The job is on hold; no level may be told.
pub const BRIM_VERDICT_ON_HOLD: brim_verdict = 1;
/// No sheet applies.
pub const BRIM_VERDICT_NO_PROCEDURE: brim_verdict = 2;
/// The check was broken off and must be made again.
pub const BRIM_VERDICT_REPEAT: brim_verdict = 3;
/// Nothing has been shown yet.
pub const BRIM_VERDICT_INCOMPLETE: brim_verdict = 4;
/// Below the level.
pub const BRIM_VERDICT_LOW: brim_verdict = 5;
/// At the level.
pub const BRIM_VERDICT_AT_LEVEL: brim_verdict = 6;
/// Above the level.
pub const BRIM_VERDICT_OVER: brim_verdict = 7;
/// At the level or above it.
pub const BRIM_VERDICT_NOT_LOW: brim_verdict = 8;
/// At the level or below it.
pub const BRIM_VERDICT_NOT_FULL: brim_verdict = 9;
/// What was seen proves neither.
pub const BRIM_VERDICT_NOT_PROVEN: brim_verdict = 10;

/// What the sheet's own count says of a leak.
pub type brim_by_sheet = i32;

/// Past the limit: a leak must be looked for.
pub const BRIM_BY_SHEET_ABOVE: brim_by_sheet = 1;
/// Not past the limit, with the level found. Never "no leak".
pub const BRIM_BY_SHEET_BELOW: brim_by_sheet = 2;
/// Not past the limit, with the level not found yet.
pub const BRIM_BY_SHEET_OPEN: brim_by_sheet = 3;
/// The sheet has no limit, or the job is not one it applies to.
pub const BRIM_BY_SHEET_NOT_APPLICABLE: brim_by_sheet = 4;

/// How far what is proved bears the count out.
pub type brim_certainty = i32;

/// All that is possible lies on the same side.
pub const BRIM_CERTAINTY_CLEAR: brim_certainty = 1;
/// Something possible lies on the other side.
pub const BRIM_CERTAINTY_MARGINAL: brim_certainty = 2;
/// Nothing is said yet.
pub const BRIM_CERTAINTY_OPEN: brim_certainty = 3;
/// There is nothing to say.
pub const BRIM_CERTAINTY_NOT_APPLICABLE: brim_certainty = 4;

/// How serious a finding is.
pub type brim_severity = i32;

/// Worth knowing.
pub const BRIM_SEVERITY_NOTE: brim_severity = 1;
/// The answer may be worth less than it looks.
pub const BRIM_SEVERITY_CAUTION: brim_severity = 2;
/// Do not go on before this is settled.
pub const BRIM_SEVERITY_STOP: brim_severity = 3;

/// The acts that a gate is asked about.
pub type brim_act = i32;

/// Opening the plug.
pub const BRIM_ACT_OPEN: brim_act = 1;
/// Pouring fluid in.
pub const BRIM_ACT_POUR: brim_act = 2;
/// Closing the plug for good.
pub const BRIM_ACT_CLOSE: brim_act = 3;
/// Stopping the engine.
pub const BRIM_ACT_STOP_ENGINE: brim_act = 4;

/// What a record is evaluated again by.
pub type brim_rules = i32;

/// The rules and the pack it was sealed with.
pub const BRIM_RULES_AS_RECORDED: brim_rules = 1;
/// The rules of this library, and the pack that is given, whatever its edition.
pub const BRIM_RULES_LATEST: brim_rules = 2;

/// The cases of an estimate.
pub type brim_case = i32;

/// Nothing more has to be poured.
pub const BRIM_CASE_BEST: brim_case = 1;
/// What such a job mostly takes.
pub const BRIM_CASE_LIKELY: brim_case = 2;
/// The worst before a new approval.
pub const BRIM_CASE_WORST: brim_case = 3;

/// A closed list whose words have numbers.
pub(crate) trait Listed: Copy + PartialEq + 'static {
    /// Each value with its number; numbers are never changed or reused.
    const NUMBERS: &'static [(i32, Self)];

    /// The word of a value.
    fn word(self) -> &'static str;
}

/// Gives the values of a list their numbers, and sees that none was forgotten.
macro_rules! numbers {
    ($Name:ident of $count:expr; $($number:ident $Case:ident,)+) => {
        impl $crate::list::Listed for $Name {
            const NUMBERS: &'static [(i32, Self)] = &[$(($number, $Name::$Case),)+];

            fn word(self) -> &'static str {
                self.slug()
            }
        }

        const _: () = assert!(<$Name as $crate::list::Listed>::NUMBERS.len() == $count, "a value has no number");
    };
}

pub(crate) use numbers;

numbers! { Measures of Measures::WORDS.len();
    BRIM_MEASURES_US Us, BRIM_MEASURES_IMPERIAL Imperial,
}

numbers! { Rounding of Rounding::WORDS.len();
    BRIM_ROUNDING_HALF_EVEN HalfEven, BRIM_ROUNDING_HALF_UP HalfUp, BRIM_ROUNDING_DOWN Down,
    BRIM_ROUNDING_UP Up, BRIM_ROUNDING_FLOOR Floor, BRIM_ROUNDING_CEILING Ceiling,
}

numbers! { Verdict of Verdict::WORDS.len();
    BRIM_VERDICT_ON_HOLD OnHold, BRIM_VERDICT_NO_PROCEDURE NoProcedure, BRIM_VERDICT_REPEAT Repeat,
    BRIM_VERDICT_INCOMPLETE Incomplete, BRIM_VERDICT_LOW Low, BRIM_VERDICT_AT_LEVEL AtLevel,
    BRIM_VERDICT_OVER Over, BRIM_VERDICT_NOT_LOW NotLow, BRIM_VERDICT_NOT_FULL NotFull,
    BRIM_VERDICT_NOT_PROVEN NotProven,
}

numbers! { BySheet of BySheet::WORDS.len();
    BRIM_BY_SHEET_ABOVE Above, BRIM_BY_SHEET_BELOW Below, BRIM_BY_SHEET_OPEN Open,
    BRIM_BY_SHEET_NOT_APPLICABLE NotApplicable,
}

numbers! { Certainty of Certainty::WORDS.len();
    BRIM_CERTAINTY_CLEAR Clear, BRIM_CERTAINTY_MARGINAL Marginal, BRIM_CERTAINTY_OPEN Open,
    BRIM_CERTAINTY_NOT_APPLICABLE NotApplicable,
}

numbers! { Severity of Severity::WORDS.len();
    BRIM_SEVERITY_NOTE Note, BRIM_SEVERITY_CAUTION Caution, BRIM_SEVERITY_STOP Stop,
}

numbers! { Act of Act::WORDS.len();
    BRIM_ACT_OPEN Open, BRIM_ACT_POUR Pour, BRIM_ACT_CLOSE Close, BRIM_ACT_STOP_ENGINE StopEngine,
}

numbers! { Rules of Rules::WORDS.len();
    BRIM_RULES_AS_RECORDED AsRecorded, BRIM_RULES_LATEST Latest,
}

numbers! { CaseKind of CaseKind::WORDS.len();
    BRIM_CASE_BEST Best, BRIM_CASE_LIKELY Likely, BRIM_CASE_WORST Worst,
}

numbers! { Kind of Kind::ALL.len();
    BRIM_KIND_VOLUME Volume, BRIM_KIND_TORQUE Torque, BRIM_KIND_MASS Mass, BRIM_KIND_LENGTH Length,
    BRIM_KIND_AREA Area, BRIM_KIND_TEMPERATURE Temperature,
    BRIM_KIND_TEMPERATURE_DIFFERENCE TemperatureDifference, BRIM_KIND_PRESSURE Pressure,
    BRIM_KIND_ABSOLUTE_PRESSURE AbsolutePressure, BRIM_KIND_ANGLE Angle, BRIM_KIND_TIME Time,
    BRIM_KIND_DENSITY Density, BRIM_KIND_KINEMATIC_VISCOSITY KinematicViscosity,
    BRIM_KIND_VOLUME_FLOW VolumeFlow, BRIM_KIND_RATIO Ratio, BRIM_KIND_FORCE Force,
    BRIM_KIND_EXPANSION Expansion,
}

/// The number of a value.
pub(crate) fn number<L: Listed>(value: L) -> i32 {
    // Every value has one: `numbers!` counts them.
    L::NUMBERS
        .iter()
        .find(|(_, own)| *own == value)
        .map_or(0, |(number, _)| *number)
}

/// The value of a number.
pub(crate) fn value<L: Listed>(number: i32, name: &'static str) -> Result<L, Error> {
    let found = L::NUMBERS.iter().find(|(own, _)| *own == number);
    found.map(|(_, value)| *value).ok_or_else(|| {
        let known = L::NUMBERS.iter().map(|(own, value)| (*own, value.word()));
        unknown(number, name, known)
    })
}

/// The value of a number, 0 being none.
pub(crate) fn value_if<L: Listed>(number: i32, name: &'static str) -> Result<Option<L>, Error> {
    match number {
        0 => Ok(None),
        number => value(number, name).map(Some),
    }
}

/// The fault of a number that is none of those known.
#[cold]
pub(crate) fn unknown(
    number: i32,
    name: &'static str,
    known: impl Iterator<Item = (i32, &'static str)>,
) -> Error {
    let allowed = known.map(|(number, word)| format!("{number} {word}"));
    let fault = Fault::new(ErrorKind::UnknownValue).at(name);
    fault.got(&number.to_string()).allowed(allowed).into()
}
