//! The calculators of `brimline.torque`.

use crate::amount::Amount;
use crate::argument::{Amounts, Given, List, Ratio, Thread, WordOf, kind, read};
use crate::asking::arguments;
use crate::data::{Told, shapes_of};
use crate::error::answer;
use brimline::torque::{self, Friction, PlugKind, StrengthClass, ThreadCondition, Wrench};
use pyo3::prelude::*;

shapes_of!("brimline.calculated": Equivalents, JointTorque, Plausibility, Preload, ThreadGeometry, ToolChoice, WrenchSetting);

/// What a wrench is set to so that the plug gets the target: S = T·L / (L + E·cos a).
///
/// `lever` L is from the mark of the grip to the drive, `adapter` E from the drive to the plug and not longer, `angle`
/// a between them from 0° straight out (the default) to 180°, pointing back over at most half of the lever; lengths and
/// torques above zero. With a `graduation` the setting is a multiple of it, half to even, else it is in the unit of the
/// target, unrounded; `applied` is the torque at the plug with that setting, `error` how far that is from the target.
/// Give `printed`, what the sheet prints, and a target that is the set-point for it is refused, for it would be
/// corrected twice. Source: NAVEDTRA 14315, figures 3-44 and 3-45, and TM 1-1500-204-23-9, figure 8-16; the cosine from
/// the geometry.
///
/// Raises `QuantityError`: `wrong_kind`, `out_of_range`; `BrimlineError`: `conflict` for an angle without an adapter and
/// for a set-point given as target.
///
/// >>> from brimline import torque
/// >>> told = torque.wrench_setting("40 lbf·ft", lever="12 in", adapter="4 in")
/// >>> told["setting"], told["applied"], told["error"]
/// ('30 lbf·ft', '40 lbf·ft', '0 %')
#[pyfunction]
#[pyo3(signature = (target, *, lever, adapter=None, angle=None, graduation=None, printed=None))]
pub(crate) fn wrench_setting<'py>(
    py: Python<'py>,
    target: Given<'_, 'py, kind::Torque>,
    lever: Given<'_, 'py, kind::Length>,
    adapter: Option<Given<'_, 'py, kind::Length>>,
    angle: Option<Given<'_, 'py, kind::Angle>>,
    graduation: Option<Given<'_, 'py, kind::Torque>>,
    printed: Option<Given<'_, 'py, kind::Torque>>,
) -> PyResult<Told<'py, WrenchSetting>> {
    read!(target, lever, adapter, angle, graduation, printed);
    let wrench = Wrench {
        lever,
        adapter,
        angle,
        graduation,
    };
    Told::answer(
        py,
        &answer(|| torque::wrench_setting(target, &wrench, printed))?,
    )
}

/// The torque at the plug of a wrench that is set to `setting` and carries an adapter, in the unit of the setting.
///
/// T = S·(L + E·cos a) / L with the `lever` L, `adapter` E and `angle` a of `wrench_setting`. Source: TM 9-254, figure
/// 4-5, for the straight adapter; the cosine from the geometry.
///
/// Raises `QuantityError`: `wrong_kind`, `out_of_range`.
///
/// >>> from brimline import torque
/// >>> torque.applied_torque("60 lbf·in", lever="12 in", adapter="2 in")
/// Amount('70 lbf·in')
#[pyfunction]
#[pyo3(signature = (setting, *, lever, adapter, angle=None))]
pub(crate) fn applied_torque(
    setting: Given<'_, '_, kind::Torque>,
    lever: Given<'_, '_, kind::Length>,
    adapter: Given<'_, '_, kind::Length>,
    angle: Option<Given<'_, '_, kind::Angle>>,
) -> PyResult<Amount> {
    read!(setting, lever, adapter, angle);
    answer(|| torque::applied_torque(setting, lever, adapter, angle)).map(Amount)
}

/// Which tools can tighten the plug, the best first, each with its setting and the reasons for and against it.
///
/// Each tool has a `name`, a `type` of ISO 6789 (as `setting_adjustable`, `indicating_dial`) and its `max`; `min`,
/// `graduation`, `permissible` (a ratio) and, for an adapter, `lever` where they are known. `tolerance` is how far the
/// torque may be off to either side; `adapter` and `angle` are those of `wrench_setting`. A tool that does not suit has
/// rank 0. Source: ISO 6789:2003 for types, deviations and the range that is tested.
///
/// Raises `QuantityError`: `out_of_range`; `BrimlineError`: `conflict`, and what else a tool can have wrong, with its
/// path, as `tools[1].max`.
///
/// >>> from brimline import torque
/// >>> tools = [{"name": "long", "type": "setting_adjustable", "max": "200 N·m"},
/// ...          {"name": "short", "type": "setting_adjustable", "max": "50 N·m"}]
/// >>> told = torque.tool_suits("12 N·m", tools=tools)["tools"]
/// >>> [(tool["name"], tool["rank"], tool["reasons"][0]["id"]) for tool in told]
/// [('short', 1, 'permissible_assumed'), ('long', 0, 'below_range')]
#[pyfunction]
#[pyo3(signature = (target, *, tools, tolerance=None, adapter=None, angle=None))]
pub(crate) fn tool_suits<'py>(
    py: Python<'py>,
    target: Given<'_, 'py, kind::Torque>,
    tools: Given<'_, 'py, List>,
    tolerance: Option<Given<'_, 'py, kind::Torque>>,
    adapter: Option<Given<'_, 'py, kind::Length>>,
    angle: Option<Given<'_, 'py, kind::Angle>>,
) -> PyResult<Told<'py, ToolChoice>> {
    arguments!(target, tolerance, adapter, angle, tools).ask(py, "torque.tool_suits")
}

/// Holds prints of one quantity in several units against the first, which governs, and names what went wrong.
///
/// In this order: the same value is `exact`; within half of its last printed digit a print `agrees`; within that of
/// another print that agrees it is `chain_rounded`; within 3 % of a known factor it is a `unit_slip`, of one between
/// units of nearly one size (litre and quart, imperial and US) only where the number was kept; else it is
/// `inconsistent`. Any one kind of quantity. Common practice, no source.
///
/// Raises `QuantityError`: `wrong_kind` where the kinds differ, `out_of_range` for an empty list.
///
/// >>> from brimline import torque
/// >>> prints = torque.equivalents(["14 N·m", "10 lbf·ft", "168 N·m"])["prints"]
/// >>> [(print["class"], print.get("factor")) for print in prints]
/// [('governing', None), ('agrees', None), ('unit_slip', 'times_12')]
#[pyfunction]
pub(crate) fn equivalents<'py>(
    py: Python<'py>,
    printed: Given<'_, 'py, Amounts>,
) -> PyResult<Told<'py, Equivalents>> {
    arguments!(printed).ask(py, "torque.equivalents")
}

/// The preload of a joint that was tightened to a torque, from the least to the most, in N: F = T / (K·D).
///
/// `diameter` D is the nominal one. Give either `k`, a ratio above 0 and up to 1, or the `condition` of the threads to
/// take its published range from; the scatter of K is carried into the answer. Source: the short form as in Mechanical
/// Fastening, Joining, and Assembly, page 85; the ranges of K as printed on a fastener supplier's page.
///
/// Raises `QuantityError`: `wrong_kind`, `out_of_range`; `BrimlineError`: `conflict` for both or neither of `k` and
/// `condition`, `unknown_value` for a condition without a range (`threadlocker`, `lubricated_other`): sources contradict
/// each other there.
///
/// >>> from brimline import torque
/// >>> torque.preload("12 N·m", diameter="10 mm", condition="dry_steel")["preload"]
/// ['4444.44444444 N', '6666.66666667 N']
#[pyfunction]
#[pyo3(signature = (torque, *, diameter, k=None, condition=None))]
pub(crate) fn preload<'py>(
    py: Python<'py>,
    torque: Given<'_, 'py, kind::Torque>,
    diameter: Given<'_, 'py, kind::Length>,
    k: Option<Given<'_, 'py, Ratio>>,
    condition: Option<Given<'_, 'py, WordOf<ThreadCondition>>>,
) -> PyResult<Told<'py, Preload>> {
    read!(torque, diameter, k, condition);
    let friction = answer(|| Friction::of(k, condition))?;
    Told::answer(py, &answer(|| torque::preload(torque, diameter, friction))?)
}

/// The torque that gives a joint its preload, from the least to the most, in N·m: T = K·D·F.
///
/// `diameter`, `k`, `condition`, the source and what is raised are those of `preload`.
///
/// >>> from brimline import torque
/// >>> torque.torque_for_preload("1000 N", diameter="10 mm", k=0.2)["torque"]
/// ['2 N·m', '2 N·m']
#[pyfunction]
#[pyo3(signature = (preload, *, diameter, k=None, condition=None))]
pub(crate) fn torque_for_preload<'py>(
    py: Python<'py>,
    preload: Given<'_, 'py, kind::Force>,
    diameter: Given<'_, 'py, kind::Length>,
    k: Option<Given<'_, 'py, Ratio>>,
    condition: Option<Given<'_, 'py, WordOf<ThreadCondition>>>,
) -> PyResult<Told<'py, JointTorque>> {
    read!(preload, diameter, k, condition);
    let friction = answer(|| Friction::of(k, condition))?;
    Told::answer(
        py,
        &answer(|| torque::torque_for_preload(preload, diameter, friction))?,
    )
}

/// The geometry of a thread from its designation: `M10x1`, `M10` (coarse), `1/4-20`, `1/4-20 UNC`, `#10-32`.
///
/// Metric threads from M1.6 to M39 in mm, unified ones from #4 to 1 1/2 in in; the stress area in mm² or in². Source:
/// ISO 261, ISO 724, ISO 898-1 for the stress area, ASME B1.1; all from memory.
///
/// Raises `BrimlineError`: `unknown_value` for any other thread, with the pitches the diameter has.
///
/// >>> from brimline import torque
/// >>> told = torque.thread("7/16-20")
/// >>> told["designation"], told["diameter"], told["pitch"]
/// ('7/16-20 UNF', '0.4375 in', '0.05 in')
#[pyfunction]
pub(crate) fn thread<'py>(
    py: Python<'py>,
    designation: Given<'_, 'py, Thread>,
) -> PyResult<Told<'py, ThreadGeometry>> {
    read!(designation);
    Told::answer(py, &designation)
}

/// The load that a bolt of a metric thread and a strength class bears without lengthening, in N.
///
/// The nominal stress area, rounded to three digits, times the stress under proof load. `class_` is one of ISO 898-1,
/// as `8.8`. Source: ISO 898-1, which prints the product to three digits; seen in print for 4.8, 8.8 up to M16 and 10.9,
/// the other classes from memory.
///
/// Raises `BrimlineError`: `unknown_value` for a thread or class that is not known.
///
/// >>> from brimline import torque
/// >>> torque.proof_load("M10", class_="8.8")  # ISO 898-1 prints 33 700 N
/// Amount('33640 N')
#[pyfunction]
#[pyo3(signature = (thread, *, class_))]
pub(crate) fn proof_load(
    thread: Given<'_, '_, Thread>,
    class_: Given<'_, '_, WordOf<StrengthClass>>,
) -> PyResult<Amount> {
    read!(thread, class_ as "class");
    answer(|| torque::proof_load(&thread, class_)).map(Amount)
}

/// Whether a printed torque fits a thread, and if not, which unit would make its number fit.
///
/// The band is one of solid steel bolts that clamp, in steel, and only its upper end judges: a plug that seals gets
/// less. Below the band nothing is judged; below a sixth of its lower end, where no plug holds, a unit is named as a
/// question. A `hollow` plug, one in `light_alloy` and one that is `unknown` are not judged by the band at all, and a
/// unit is named for them as a question only. `torque` above zero. Source: stress area and proof stress of ISO 898-1, T
/// = K·D·F; which shares and coefficients bound the band is common practice, no source.
///
/// Raises `QuantityError`: `wrong_kind`, `out_of_range`; `BrimlineError`: `unknown_value`.
///
/// >>> from brimline import torque
/// >>> told = torque.plausible("124 lbf·ft", thread="M10x1", plug="steel")  # 124 lbf·in is 14 N·m
/// >>> told["fits"], told["slip"]["unit"]
/// ('no', 'lbf·in')
#[pyfunction]
#[pyo3(signature = (torque, *, thread, plug))]
pub(crate) fn plausible<'py>(
    py: Python<'py>,
    torque: Given<'_, 'py, kind::Torque>,
    thread: Given<'_, 'py, Thread>,
    plug: Given<'_, 'py, WordOf<PlugKind>>,
) -> PyResult<Told<'py, Plausibility>> {
    read!(torque, thread, plug);
    Told::answer(py, &answer(|| torque::plausible(torque, &thread, plug))?)
}
