//! The calculators of `brimline.volume`, but for those of `expansion`.

use crate::amount::Amount;
use crate::argument::{Count, Given, List, Members, Ratio, kind, read};
use crate::asking::arguments;
use crate::data::{Told, shapes_of};
use crate::error::answer;
use brimline::volume;
use pyo3::prelude::*;

shapes_of!("brimline.calculated": ContainerPlans, CyclesNeeded, Exchange, Flush, FlushNeeded, TiltError);

/// How far the level deceives where the opening lies off the middle of the surface and the unit leans.
///
/// `surface` of the fluid above zero; `offset` of the opening from the middle of the surface along the lean, from zero;
/// `tilt` from 0° to below 45°. `height` is in the unit of the offset, `volume` in L. Leaning towards the opening it
/// reads too high, away from it too low: an opening on the low side reads full too early, with less in the unit than
/// there should be, one on the high side too late. Source: trigonometry.
///
/// Raises `QuantityError`: `wrong_kind`, `out_of_range`.
///
/// >>> from brimline import volume
/// >>> told = volume.tilt_error("0.06 m²", offset="200 mm", tilt="1 deg")
/// >>> told["height"][:5], told["volume"][:5]
/// ('3.491', '0.209')
#[pyfunction]
#[pyo3(signature = (surface, *, offset, tilt))]
pub(crate) fn tilt_error<'py>(
    py: Python<'py>,
    surface: Given<'_, 'py, kind::Area>,
    offset: Given<'_, 'py, kind::Length>,
    tilt: Given<'_, 'py, kind::Angle>,
) -> PyResult<Told<'py, TiltError>> {
    read!(surface, offset, tilt);
    Told::answer(py, &answer(|| volume::tilt_error(surface, offset, tilt))?)
}

/// How much a sump holds below a level, in L.
///
/// The sump is a `prismoid` with `height` and the areas `bottom`, `middle` and `top`; a `lying_cylinder` with `diameter`
/// and `length`; or a `strapping` table with `rows` of `level` and `volume`, both rising. The level is measured from the
/// lowest point, within the sump. Source: geometry; the prismoidal formula and the circular segment from memory.
///
/// Raises `QuantityError`: `wrong_kind`, `out_of_range`; what else a sump can have wrong, with its path.
///
/// >>> from brimline import volume
/// >>> drum = {"shape": "lying_cylinder", "diameter": "1 m", "length": "2 m"}
/// >>> volume.volume_below(drum, level="300 mm").to("L", 1)  # a published example gives 396.3 L
/// Amount('396.3 L')
#[pyfunction]
#[pyo3(signature = (sump, *, level))]
pub(crate) fn volume_below(
    py: Python<'_>,
    sump: Given<'_, '_, Members>,
    level: Given<'_, '_, kind::Length>,
) -> PyResult<Amount> {
    arguments!(sump, level).ask_amount(py, "volume.volume_below")
}

/// The level at which a sump holds a volume, in mm from the lowest point.
///
/// The sump is that of `volume_below`, `volume` within what it holds.
///
/// Raises what `volume_below` raises.
///
/// >>> from brimline import volume
/// >>> rows = [{"level": "0 mm", "volume": "0 L"}, {"level": "50 mm", "volume": "2 L"}]
/// >>> volume.level_for({"shape": "strapping", "rows": rows}, volume="1.5 L")
/// Amount('37.5 mm')
#[pyfunction]
#[pyo3(signature = (sump, *, volume))]
pub(crate) fn level_for(
    py: Python<'_>,
    sump: Given<'_, '_, Members>,
    volume: Given<'_, '_, kind::Volume>,
) -> PyResult<Amount> {
    arguments!(sump, volume).ask_amount(py, "volume.level_for")
}

/// The share of a circle that lies below a level.
///
/// `diameter` above zero, `level` from its lowest point, zero to the diameter. Source: geometry, formula from memory.
///
/// Raises `QuantityError`: `wrong_kind`, `out_of_range`.
///
/// >>> from brimline import volume
/// >>> volume.segment_share("100 mm", diameter="1 m")
/// Amount('0.052044019 ratio')
#[pyfunction]
#[pyo3(signature = (level, *, diameter))]
pub(crate) fn segment_share(
    level: Given<'_, '_, kind::Length>,
    diameter: Given<'_, '_, kind::Length>,
) -> PyResult<Amount> {
    read!(level, diameter);
    answer(|| volume::segment_share(level, diameter)).map(Amount)
}

/// What is left of the old fluid after draining and filling a number of times: (1 - drained/capacity)^cycles.
///
/// `capacity` above zero, of all the fluid in the unit; `drained` each time, zero to the capacity; both at one temperature.
/// `used` is in the unit of what is drained. Source: mass balance, formula from memory.
///
/// Raises `QuantityError`: `wrong_kind`, `out_of_range`.
///
/// >>> from brimline import volume
/// >>> left = volume.exchange("10 L", drained="4 L", cycles=2)
/// >>> left["old"], left["fresh"], left["used"]
/// ('0.36 ratio', '0.64 ratio', '8 L')
#[pyfunction]
#[pyo3(signature = (capacity, *, drained, cycles))]
pub(crate) fn exchange<'py>(
    py: Python<'py>,
    capacity: Given<'_, 'py, kind::Volume>,
    drained: Given<'_, 'py, kind::Volume>,
    cycles: Given<'_, 'py, Count<0>>,
) -> PyResult<Told<'py, Exchange>> {
    read!(capacity, drained, cycles);
    Told::answer(py, &answer(|| volume::exchange(capacity, drained, cycles))?)
}

/// What is left of the old fluid when new fluid flows through and mixes perfectly: exp(-flowed/capacity).
///
/// `capacity` above zero, `flowed` from zero, both at one temperature. Imperfect mixing leaves more. Source: the stirred
/// tank, formula from memory; CDC MMWR 1994;43(RR-13), table S3-1 tabulates it for air.
///
/// Raises `QuantityError`: `wrong_kind`, `out_of_range`.
///
/// >>> from brimline import volume
/// >>> volume.flush("7.4 L", flowed="7.4 L")["old"]
/// '0.367879441 ratio'
#[pyfunction]
#[pyo3(signature = (capacity, *, flowed))]
pub(crate) fn flush<'py>(
    py: Python<'py>,
    capacity: Given<'_, 'py, kind::Volume>,
    flowed: Given<'_, 'py, kind::Volume>,
) -> PyResult<Told<'py, Flush>> {
    read!(capacity, flowed);
    Told::answer(py, &answer(|| volume::flush(capacity, flowed))?)
}

/// How much new fluid must flow through, mixing perfectly, until it is a share of the whole.
///
/// `capacity` above zero, `fresh` from 0 to below 1; `volume` is in the unit of the capacity. Source: that of `flush`, solved for the volume.
///
/// Raises `QuantityError`: `wrong_kind`, `out_of_range`.
///
/// >>> from brimline import volume
/// >>> volume.flush_needed("60 L", fresh=0.99)["volume"][:3]  # 276 minutes at one change an hour in the source
/// '276'
#[pyfunction]
#[pyo3(signature = (capacity, *, fresh))]
pub(crate) fn flush_needed<'py>(
    py: Python<'py>,
    capacity: Given<'_, 'py, kind::Volume>,
    fresh: Given<'_, 'py, Ratio>,
) -> PyResult<Told<'py, FlushNeeded>> {
    read!(capacity, fresh);
    Told::answer(py, &answer(|| volume::flush_needed(capacity, fresh))?)
}

/// How often to drain and fill until the new fluid is at least a share of the whole.
///
/// `capacity` above zero; `drained` each time, above zero to the capacity; `fresh` 0 to 1, 1 only where everything is
/// drained. Source: that of `exchange`, solved for the number.
///
/// Raises `QuantityError`: `wrong_kind`, `out_of_range`.
///
/// >>> from brimline import volume
/// >>> needed = volume.cycles_needed("7.4 L", drained="3.5 L", fresh="85 %")
/// >>> needed["cycles"], needed["used"]
/// (3, '10.5 L')
#[pyfunction]
#[pyo3(signature = (capacity, *, drained, fresh))]
pub(crate) fn cycles_needed<'py>(
    py: Python<'py>,
    capacity: Given<'_, 'py, kind::Volume>,
    drained: Given<'_, 'py, kind::Volume>,
    fresh: Given<'_, 'py, Ratio>,
) -> PyResult<Told<'py, CyclesNeeded>> {
    read!(capacity, drained, fresh);
    Told::answer(
        py,
        &answer(|| volume::cycles_needed(capacity, drained, fresh))?,
    )
}

/// The share of a wrong fluid that is left in the whole after draining and filling a number of times.
///
/// `capacity` above zero; `wrong` in it at the start, `drained` each time, both zero to the capacity; all at one
/// temperature. Source: that of `exchange`.
///
/// Raises `QuantityError`: `wrong_kind`, `out_of_range`.
///
/// >>> from brimline import volume
/// >>> volume.wrong_left("10 L", wrong="1 L", drained="4 L", cycles=2)
/// Amount('0.036 ratio')
#[pyfunction]
#[pyo3(signature = (capacity, *, wrong, drained, cycles))]
pub(crate) fn wrong_left(
    capacity: Given<'_, '_, kind::Volume>,
    wrong: Given<'_, '_, kind::Volume>,
    drained: Given<'_, '_, kind::Volume>,
    cycles: Given<'_, '_, Count<0>>,
) -> PyResult<Amount> {
    read!(capacity, wrong, drained, cycles);
    answer(|| volume::wrong_left(capacity, wrong, drained, cycles)).map(Amount)
}

/// Which containers to open for a fill: the fewest, the cheapest, and what leaves least over.
///
/// Each of the `sizes` has a `name` and its `volume`, if need be a `price` in the smallest unit of the one currency and
/// the `stock`. Each of the `opened` ones has `name`, `volume`, `same_fluid`, `sealed`, `clean`, `dated` and, where that is
/// known, `within_date`; those that can be used go first. `bulk` has what is `available`. Volumes count exactly, all at one
/// temperature. `short` is what is missing: do not start. Source: arithmetic; what makes an opened container unfit is
/// common practice, no source.
///
/// Raises `QuantityError`: `wrong_kind`, `out_of_range`; `BrimlineError`: `duplicate_id` for two sizes of one name; all
/// with paths as `sizes[1].volume`.
///
/// >>> from brimline import volume
/// >>> plans = volume.containers("6.5 L", sizes=[{"name": "bottle", "volume": "1 L"}, {"name": "can", "volume": "5 L"}])
/// >>> plans["fewest"]["containers"], plans["least_waste"]["left"]
/// ([{'name': 'can', 'count': 2}], '0.5 L')
#[pyfunction]
#[pyo3(signature = (need, *, sizes, opened=None, bulk=None))]
pub(crate) fn containers<'py>(
    py: Python<'py>,
    need: Given<'_, 'py, kind::Volume>,
    sizes: Given<'_, 'py, List>,
    opened: Option<Given<'_, 'py, List>>,
    bulk: Option<Given<'_, 'py, Members>>,
) -> PyResult<Told<'py, ContainerPlans>> {
    arguments!(need, sizes, opened, bulk).ask(py, "volume.containers")
}
