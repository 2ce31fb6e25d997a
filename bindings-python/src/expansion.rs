//! The calculators of `brimline.volume` that reckon with temperatures.

use crate::amount::Amount;
use crate::argument::{Given, WordOf, kind, read};
use crate::error::answer;
use brimline::volume::{self, Base, Expansion};
use pyo3::prelude::*;

/// The factor from a volume at a temperature to the volume at the base: V at the base = V · factor.
///
/// `density` at the base, 800.9 to 1163.5 kg/m³; `temperature` -50 to 150 °C. The bases are `base_15c` (15 °C, the SI form
/// of 1980; it is meant where none is given), `base_60f` (60 °F, 1980), `base_60f_2004` and `base_15c_2004` (the procedure
/// of 2004, rounded to five decimals). Source: API MPMS 11.1 / ASTM D1250, lubricating-oil group; the procedure of 2004 from memory.
///
/// Raises `QuantityError`: `wrong_kind`, `out_of_range`; `BrimlineError`: `unknown_value`.
///
/// >>> from brimline import volume
/// >>> volume.correction_factor("850 kg/m³", temperature="40 °C").to("ratio", 6)  # as in table 54D
/// Amount('0.981437 ratio')
#[pyfunction]
#[pyo3(signature = (density, *, temperature, base=None))]
pub(crate) fn correction_factor(
    density: Given<'_, '_, kind::Density>,
    temperature: Given<'_, '_, kind::Temperature>,
    base: Option<Given<'_, '_, WordOf<Base>>>,
) -> PyResult<Amount> {
    read!(density, temperature, base);
    let base = base.unwrap_or_default();
    answer(|| volume::correction_factor(density, temperature, base)).map(Amount)
}

/// What a volume at one temperature becomes at another, in its own unit.
///
/// `volume` from zero; temperatures -50 to 150 °C. Give the `density` at the `base`, as for `correction_factor`, or else a
/// plain `coefficient`, at most 0.002 per K, by which the growth is linear from `from_`. Source: that of
/// `correction_factor`; a coefficient is common practice, no source.
///
/// Raises `QuantityError`: `wrong_kind`, `out_of_range`; `BrimlineError`: `conflict` for both or neither of `density` and
/// `coefficient`.
///
/// >>> from brimline import volume
/// >>> volume.at_temperature("100 L", from_="15 °C", to="35 °C", coefficient="0.0007 per K")
/// Amount('101.4 L')
#[pyfunction]
#[pyo3(signature = (volume, *, from_, to, density=None, base=None, coefficient=None))]
pub(crate) fn at_temperature(
    volume: Given<'_, '_, kind::Volume>,
    from_: Given<'_, '_, kind::Temperature>,
    to: Given<'_, '_, kind::Temperature>,
    density: Option<Given<'_, '_, kind::Density>>,
    base: Option<Given<'_, '_, WordOf<Base>>>,
    coefficient: Option<Given<'_, '_, kind::Expansion>>,
) -> PyResult<Amount> {
    read!(volume, from_ as "from", to, density, base, coefficient);
    let expansion = answer(|| Expansion::of(density, base, coefficient))?;
    answer(|| volume::at_temperature(volume, from_, to, expansion)).map(Amount)
}

/// How much more the fluid takes up at the temperature it is read at than at the reference; below zero where it is colder.
///
/// `volume` is what the unit holds at the `reference`, from zero; temperatures -50 to 150 °C; `density`, `base` and
/// `coefficient` are those of `at_temperature`. In the unit of `volume`. It tells by how much a level deceives; no sheet is
/// corrected by it that does not say so itself.
///
/// Raises what `at_temperature` raises.
///
/// >>> from brimline import volume
/// >>> told = volume.temperature_error("6.8 L", read_at="60 °C", reference="40 °C", density="850 kg/m³")
/// >>> told.to("L", 2)
/// Amount('0.11 L')
#[pyfunction]
#[pyo3(signature = (volume, *, read_at, reference, density=None, base=None, coefficient=None))]
pub(crate) fn temperature_error(
    volume: Given<'_, '_, kind::Volume>,
    read_at: Given<'_, '_, kind::Temperature>,
    reference: Given<'_, '_, kind::Temperature>,
    density: Option<Given<'_, '_, kind::Density>>,
    base: Option<Given<'_, '_, WordOf<Base>>>,
    coefficient: Option<Given<'_, '_, kind::Expansion>>,
) -> PyResult<Amount> {
    read!(volume, read_at, reference, density, base, coefficient);
    let expansion = answer(|| Expansion::of(density, base, coefficient))?;
    answer(|| volume::temperature_error(volume, read_at, reference, expansion)).map(Amount)
}

/// The density at the base of a fluid whose density was observed at a temperature, in the unit it was given in.
///
/// `temperature` -50 to 150 °C; what comes out is 800.9 to 1163.5 kg/m³. Bases and source are those of
/// `correction_factor`.
///
/// Raises `QuantityError`: `wrong_kind`, `out_of_range`; `BrimlineError`: `unknown_value`.
///
/// >>> from brimline import volume
/// >>> volume.base_density("834.22 kg/m³", temperature="40 °C").to("kg/m³", 1)
/// Amount('850.0 kg/m³')
#[pyfunction]
#[pyo3(signature = (density, *, temperature, base=None))]
pub(crate) fn base_density(
    density: Given<'_, '_, kind::Density>,
    temperature: Given<'_, '_, kind::Temperature>,
    base: Option<Given<'_, '_, WordOf<Base>>>,
) -> PyResult<Amount> {
    read!(density, temperature, base);
    let base = base.unwrap_or_default();
    answer(|| volume::base_density(density, temperature, base)).map(Amount)
}

/// The density at a temperature of a fluid whose density at the base is known, in the unit it was given in.
///
/// Ranges, bases and source are those of `correction_factor`.
///
/// Raises `QuantityError`: `wrong_kind`, `out_of_range`; `BrimlineError`: `unknown_value`.
///
/// >>> from brimline import volume
/// >>> volume.density_at("850 kg/m³", temperature="40 °C").to("kg/m³", 2)
/// Amount('834.22 kg/m³')
#[pyfunction]
#[pyo3(signature = (density, *, temperature, base=None))]
pub(crate) fn density_at(
    density: Given<'_, '_, kind::Density>,
    temperature: Given<'_, '_, kind::Temperature>,
    base: Option<Given<'_, '_, WordOf<Base>>>,
) -> PyResult<Amount> {
    read!(density, temperature, base);
    let base = base.unwrap_or_default();
    answer(|| volume::density_at(density, temperature, base)).map(Amount)
}

/// The mass of a volume at a temperature, in kg.
///
/// `volume` from zero; `density` is the one at the base. Ranges, bases and source are those of `correction_factor`.
///
/// Raises `QuantityError`: `wrong_kind`, `out_of_range`; `BrimlineError`: `unknown_value`.
///
/// >>> from brimline import volume
/// >>> volume.mass("7 L", temperature="15 °C", density="850 kg/m³")
/// Amount('5.95 kg')
#[pyfunction]
#[pyo3(signature = (volume, *, temperature, density, base=None))]
pub(crate) fn mass(
    volume: Given<'_, '_, kind::Volume>,
    temperature: Given<'_, '_, kind::Temperature>,
    density: Given<'_, '_, kind::Density>,
    base: Option<Given<'_, '_, WordOf<Base>>>,
) -> PyResult<Amount> {
    read!(volume, temperature, density, base);
    let base = base.unwrap_or_default();
    answer(|| volume::mass(volume, temperature, density, base)).map(Amount)
}

/// The volume a mass takes up at a temperature, in L.
///
/// `mass` from zero; `density` is the one at the base. Ranges, bases and source are those of `correction_factor`.
///
/// Raises `QuantityError`: `wrong_kind`, `out_of_range`; `BrimlineError`: `unknown_value`.
///
/// >>> from brimline import volume
/// >>> volume.volume_of_mass("425 g", temperature="15 °C", density="850 kg/m³")
/// Amount('0.5 L')
#[pyfunction]
#[pyo3(signature = (mass, *, temperature, density, base=None))]
pub(crate) fn volume_of_mass(
    mass: Given<'_, '_, kind::Mass>,
    temperature: Given<'_, '_, kind::Temperature>,
    density: Given<'_, '_, kind::Density>,
    base: Option<Given<'_, '_, WordOf<Base>>>,
) -> PyResult<Amount> {
    read!(mass, temperature, density, base);
    let base = base.unwrap_or_default();
    answer(|| volume::volume_of_mass(mass, temperature, density, base)).map(Amount)
}
