//! The calculators of `brimline.fluid`.

use crate::amount::Amount;
use crate::argument::{Count, Given, List, WordOf, kind, read};
use crate::asking::arguments;
use crate::data::{Told, shapes_of};
use crate::error::answer;
use crate::interval::Interval;
use brimline::fluid::{self, BlendRule};
use pyo3::prelude::*;

shapes_of!("brimline.calculated": Grade, ViscosityIndex);

/// The viscosity of an oil at a temperature, in mm²/s, from its viscosities at two other temperatures.
///
/// Viscosities are 0.21 to 2·10⁷ mm²/s, temperatures -70 to 370 °C; the two points in either order. Source: ASTM
/// D341-03, equations 1 to 3 and annex A1; the spans from memory.
///
/// Raises `QuantityError`: `wrong_kind`, `out_of_range`; `BrimlineError`: `conflict` for two equal temperatures or an
/// oil that would not thin as it warms.
///
/// >>> from brimline import fluid
/// >>> at_80 = fluid.viscosity_at(
/// ...     "32 mm²/s", temperature_1="40 °C", viscosity_2="5.4 mm²/s", temperature_2="100 °C", temperature="80 °C")
/// >>> round(float(at_80), 1)  # as a published worksheet prints it
/// 8.5
#[pyfunction]
#[pyo3(signature = (viscosity_1, *, temperature_1, viscosity_2, temperature_2, temperature))]
pub(crate) fn viscosity_at(
    viscosity_1: Given<'_, '_, kind::KinematicViscosity>,
    temperature_1: Given<'_, '_, kind::Temperature>,
    viscosity_2: Given<'_, '_, kind::KinematicViscosity>,
    temperature_2: Given<'_, '_, kind::Temperature>,
    temperature: Given<'_, '_, kind::Temperature>,
) -> PyResult<Amount> {
    read!(
        viscosity_1,
        temperature_1,
        viscosity_2,
        temperature_2,
        temperature
    );
    let (at_1, at_2) = (temperature_1, temperature_2);
    answer(|| fluid::viscosity_at(viscosity_1, at_1, viscosity_2, at_2, temperature)).map(Amount)
}

/// The temperature, in °C, at which an oil has a viscosity, from its viscosities at two temperatures.
///
/// The spans, the source and what is raised are those of `viscosity_at`.
///
/// >>> from brimline import fluid
/// >>> fluid.temperature_for(
/// ...     "32 mm²/s", temperature_1="40 °C", viscosity_2="5.4 mm²/s", temperature_2="100 °C", viscosity="32 mm²/s")
/// Amount('40 °C')
#[pyfunction]
#[pyo3(signature = (viscosity_1, *, temperature_1, viscosity_2, temperature_2, viscosity))]
pub(crate) fn temperature_for(
    viscosity_1: Given<'_, '_, kind::KinematicViscosity>,
    temperature_1: Given<'_, '_, kind::Temperature>,
    viscosity_2: Given<'_, '_, kind::KinematicViscosity>,
    temperature_2: Given<'_, '_, kind::Temperature>,
    viscosity: Given<'_, '_, kind::KinematicViscosity>,
) -> PyResult<Amount> {
    read!(
        viscosity_1,
        temperature_1,
        viscosity_2,
        temperature_2,
        viscosity
    );
    let (at_1, at_2) = (temperature_1, temperature_2);
    answer(|| fluid::temperature_for(viscosity_1, at_1, viscosity_2, at_2, viscosity)).map(Amount)
}

/// The viscosity index of an oil from its viscosities at 40 °C and at 100 °C.
///
/// At 100 °C from 2 mm²/s on, at 40 °C more than at 100 °C, both up to 2·10⁷ mm²/s. The answer has the index as it is
/// reported, the procedure, L and H, and the index before rounding. Lubricants lie from below 0 to some 400 (from
/// memory): far outside, one of the viscosities or its temperature was mistaken. Source: ASTM D2270-93, procedures A
/// and B, table 1.
///
/// Raises `QuantityError`: `wrong_kind`, `out_of_range`; `BrimlineError`: `conflict` where the oil is not thicker at
/// 40 °C.
///
/// >>> from brimline import fluid
/// >>> found = fluid.viscosity_index("73.30 mm²/s", viscosity_100="8.86 mm²/s")  # the example of procedure A
/// >>> found["index"], found["procedure"], found["l"], found["h"]
/// (92, 'a', '119.94 mm²/s', '69.48 mm²/s')
#[pyfunction]
#[pyo3(signature = (viscosity_40, *, viscosity_100))]
pub(crate) fn viscosity_index<'py>(
    py: Python<'py>,
    viscosity_40: Given<'_, 'py, kind::KinematicViscosity>,
    viscosity_100: Given<'_, 'py, kind::KinematicViscosity>,
) -> PyResult<Told<'py, ViscosityIndex>> {
    read!(viscosity_40, viscosity_100);
    Told::answer(
        py,
        &answer(|| fluid::viscosity_index(viscosity_40, viscosity_100))?,
    )
}

/// The viscosity of a blend, in mm²/s, at the temperature at which those of its parts hold.
///
/// Each part has its `viscosity`, 0.21 to 2·10⁷ mm²/s, and its `share`, 0 to 1, all shares together 1. `rule` is
/// `refutas_mass` with shares by mass, or `walther_volume` with shares by volume. Source: Maples, Petroleum Refinery
/// Process Economics (2000); ASTM D7152, from memory.
///
/// Raises `QuantityError`: `wrong_kind`, `out_of_range`; `BrimlineError`: `unknown_value` for another rule.
///
/// >>> from brimline import fluid
/// >>> parts = [{"viscosity": "5 mm²/s", "share": 0.6}, {"viscosity": "20 mm²/s", "share": "40 %"}]
/// >>> round(float(fluid.blend(parts, rule="refutas_mass")), 5)
/// 8.10855
#[pyfunction]
#[pyo3(signature = (parts, *, rule))]
pub(crate) fn blend(
    py: Python<'_>,
    parts: Given<'_, '_, List>,
    rule: Given<'_, '_, WordOf<BlendRule>>,
) -> PyResult<Amount> {
    arguments!(parts, rule).ask_amount(py, "fluid.blend")
}

/// The ISO viscosity grade of an oil, from its viscosity at 40 °C, more than nothing.
///
/// `low` and `high` are the limits of the grade; between two grades, where there is no `grade`, the limits on either
/// side. Source: ISO 3448:1992, table 1.
///
/// Raises `QuantityError`: `wrong_kind`, `out_of_range`.
///
/// >>> from brimline import fluid
/// >>> fluid.grade("28.8 mm²/s")
/// {'grade': 32, 'low': '28.8 mm²/s', 'high': '35.2 mm²/s'}
/// >>> fluid.grade("38 mm²/s")
/// {'low': '35.2 mm²/s', 'high': '41.4 mm²/s'}
#[pyfunction]
pub(crate) fn grade<'py>(
    py: Python<'py>,
    viscosity_40: Given<'_, 'py, kind::KinematicViscosity>,
) -> PyResult<Told<'py, Grade>> {
    read!(viscosity_40);
    Told::answer(py, &answer(|| fluid::grade(viscosity_40))?)
}

/// The limits of an ISO viscosity grade, in mm²/s at 40 °C.
///
/// Source: ISO 3448:1992, table 1.
///
/// Raises `BrimlineError`: `unknown_value` for a number that is no grade, with all that are.
///
/// >>> from brimline import fluid
/// >>> print(fluid.grade_limits(46))
/// [41.4 mm²/s, 50.6 mm²/s]
#[pyfunction]
pub(crate) fn grade_limits(grade: Given<'_, '_, Count<0>>) -> PyResult<Interval> {
    read!(grade);
    answer(|| fluid::grade_limits(grade)).map(Interval)
}
