//! The calculators of `brimline.leak`.

use crate::amount::Amount;
use crate::argument::{Amounts, Count, Given, List, Range, Ratio, WordOf, kind, of_kind_if, read};
use crate::asking::arguments;
use crate::data::{Told, shapes_of};
use crate::error::answer;
use brimline::leak::{self, Rule, SeepageClass};
use pyo3::prelude::*;

shapes_of!("brimline.observed": AgainstLimit, Consumption, DripRate, Risks, Seepage);

/// Decides by a rule whether an estimate is above a limit, and with what probability its true value is.
///
/// Any kind of quantity; the standard `uncertainty` is of the same kind (of a temperature: a difference) and above
/// zero. A guarded `rule` takes the `probability` that its decision is right, 0.5 to 0.999999999; `simple_acceptance`
/// takes none. `below` says that the limit is not passed and no more. Source: JCGM 106:2012, clauses 7 and 8.
///
/// Raises `QuantityError`: `wrong_kind`, `out_of_range`; `BrimlineError`: `conflict` for a guarded rule without a
/// probability, or simple acceptance with one.
///
/// >>> from brimline import leak
/// >>> leak.against_limit(  # one standard uncertainty above: 84 %
/// ...     "1.5 L", uncertainty="0.1 L", limit="1.4 L", rule="simple_acceptance")
/// {'exceeds': '0.841344746 ratio', 'decision': 'above'}
/// >>> told = leak.against_limit(
/// ...     "1.5 L", uncertainty="0.1 L", limit="1.4 L", rule="guarded_rejection", probability=0.95)
/// >>> told["decision"], told["guard_band"]
/// ('undecided', '0.164485363 L')
#[pyfunction]
#[pyo3(signature = (estimate, *, uncertainty, limit, rule, probability=None))]
pub(crate) fn against_limit<'py>(
    py: Python<'py>,
    estimate: Given<'_, 'py, kind::Any>,
    uncertainty: Given<'_, 'py, kind::Any>,
    limit: Given<'_, 'py, kind::Any>,
    rule: Given<'_, 'py, WordOf<Rule>>,
    probability: Option<Given<'_, 'py, Ratio>>,
) -> PyResult<Told<'py, AgainstLimit>> {
    read!(estimate, rule, probability);
    let uncertainty = uncertainty.of_kind(of_difference(estimate), "uncertainty")?;
    let limit = limit.of_kind(estimate.kind(), "limit")?;
    let told = answer(|| leak::against_limit(estimate, uncertainty, limit, rule, probability))?;
    Told::answer(py, &told)
}

/// The kind of the difference of two such quantities.
fn of_difference(amount: brimline::Amount) -> brimline::Kind {
    amount.resolution().kind()
}

/// The probability that a true value lies within limits, from its estimate and standard uncertainty.
///
/// Any kind of quantity; the uncertainty is of the same kind (of a temperature: a difference) and above zero; one of the
/// limits may be left out. Source: JCGM 106:2012, clause 7.
///
/// Raises `QuantityError`: `wrong_kind`, `out_of_range`; `BrimlineError`: `conflict` without any limit.
///
/// >>> from brimline import leak
/// >>> leak.conformance("507 mL", uncertainty="10 mL", lower="490 mL")
/// Amount('0.955434537 ratio')
#[pyfunction]
#[pyo3(signature = (value, *, uncertainty, lower=None, upper=None))]
pub(crate) fn conformance(
    value: Given<'_, '_, kind::Any>,
    uncertainty: Given<'_, '_, kind::Any>,
    lower: Option<Given<'_, '_, kind::Any>>,
    upper: Option<Given<'_, '_, kind::Any>>,
) -> PyResult<Amount> {
    read!(value);
    let uncertainty = uncertainty.of_kind(of_difference(value), "uncertainty")?;
    let lower = of_kind_if(lower, value.kind(), "lower")?;
    let upper = of_kind_if(upper, value.kind(), "upper")?;
    answer(|| leak::conformance(value, uncertainty, lower, upper)).map(Amount)
}

/// How far from a limit an estimate must be for a decision that is right with a probability, in the unit of the
/// uncertainty.
///
/// w = z·u with the standard `uncertainty` u above zero and z the quantile of the `probability`, 0.5 to 0.999999999.
/// Source: JCGM 106:2012, clause 8.3 (clause from memory).
///
/// Raises `QuantityError`: `wrong_kind`, `out_of_range`.
///
/// >>> from brimline import leak
/// >>> leak.guard_band("1 Δ°C", probability="95 %")
/// Amount('1.644853627 Δ°C')
#[pyfunction]
#[pyo3(signature = (uncertainty, *, probability))]
pub(crate) fn guard_band(
    uncertainty: Given<'_, '_, kind::Any>,
    probability: Given<'_, '_, Ratio>,
) -> PyResult<Amount> {
    read!(uncertainty, probability);
    answer(|| leak::guard_band(uncertainty, probability)).map(Amount)
}

/// The number of standard deviations that a standard normal variable stays below with a probability.
///
/// From 0.000000001 to 0.999999999, negative below a half. Source: Wichura, Algorithm AS 241 (1988).
///
/// Raises `QuantityError`: `wrong_kind`, `out_of_range`.
///
/// >>> from brimline import leak
/// >>> leak.quantile(0.95).to("ratio", 2)  # as JCGM 106:2012, table 1, prints it
/// Amount('1.64 ratio')
#[pyfunction]
pub(crate) fn quantile(probability: Given<'_, '_, Ratio>) -> PyResult<Amount> {
    read!(probability);
    answer(|| leak::quantile(probability)).map(Amount)
}

/// The standard uncertainty of a sum whose parts are independent, in the unit of the first: the root of the sum of their
/// squares.
///
/// Parts of one kind, none negative, at least one. Source: JCGM 100:2008, 5.1.2.
///
/// Raises `QuantityError`: `wrong_kind`, `out_of_range`, both with the place in `parts`.
///
/// >>> from brimline import leak
/// >>> leak.combined_uncertainty(["0.3 L", "400 mL"])
/// Amount('0.5 L')
#[pyfunction]
pub(crate) fn combined_uncertainty(
    py: Python<'_>,
    parts: Given<'_, '_, Amounts>,
) -> PyResult<Amount> {
    arguments!(parts).ask_amount(py, "leak.combined_uncertainty")
}

/// The half width of an interval that is expected to hold most of what the true value could be: U = k·u.
///
/// In the unit of the standard `uncertainty` u; the `factor` k is above zero, 2 if it is not given. Source: JCGM 100:2008,
/// 6.2.1; the 2: NIST Technical Note 1297, 6.5 (clauses from memory).
///
/// Raises `QuantityError`: `wrong_kind`, `out_of_range`.
///
/// >>> from brimline import leak
/// >>> leak.expanded_uncertainty("50 mL")
/// Amount('100 mL')
#[pyfunction]
#[pyo3(signature = (uncertainty, *, factor=None))]
pub(crate) fn expanded_uncertainty(
    uncertainty: Given<'_, '_, kind::Any>,
    factor: Option<Given<'_, '_, Ratio>>,
) -> PyResult<Amount> {
    read!(uncertainty, factor);
    answer(|| leak::expanded_uncertainty(uncertainty, factor)).map(Amount)
}

/// How often a value out of tolerance would be accepted (`consumer`), and one within it rejected (`producer`).
///
/// True values are spread normally about `mean` with the standard deviation `spread`; each is measured with the standard
/// `uncertainty`, both above zero; what is measured within `acceptance` is accepted, what truly lies within `tolerance`
/// should be. Ranges are an `Interval` or two ends, `None` for one that is not there. Any kind of quantity. Source: JCGM
/// 106:2012, clause 9.
///
/// Raises `QuantityError`: `wrong_kind`, `out_of_range`; `BrimlineError`: `conflict` for a range without an end.
///
/// >>> from brimline import leak
/// >>> told = leak.risks("1500 ratio", spread="0.12 ratio", uncertainty="0.04 ratio",  # the source's resistor
/// ...     tolerance=["1499.8 ratio", "1500.2 ratio"], acceptance=["1499.82 ratio", "1500.18 ratio"])
/// >>> told["consumer"][:5], told["producer"][:5]
/// ('0.009', '0.069')
#[pyfunction]
#[pyo3(signature = (mean, *, spread, uncertainty, tolerance, acceptance))]
pub(crate) fn risks<'py>(
    py: Python<'py>,
    mean: Given<'_, 'py, kind::Any>,
    spread: Given<'_, 'py, kind::Any>,
    uncertainty: Given<'_, 'py, kind::Any>,
    tolerance: Given<'_, 'py, Range>,
    acceptance: Given<'_, 'py, Range>,
) -> PyResult<Told<'py, Risks>> {
    arguments!(mean, spread, uncertainty, tolerance, acceptance).ask(py, "leak.risks")
}

/// What is lost per 1000 km and per 30 days between visits, whether it rises, and how far it is to an allowed shortage.
///
/// Visits in the order they were made, each with the `net` volume added; `odometer`, `date`, `uncertainty` and
/// `odometer_uncertainty` (the most each may be off) where they are known. Rates are intervals in the unit of the later
/// visit; `distance` is in the unit of the last odometer, told only where the last visit found a loss, and without a
/// far end while the loss rises. The trend is `rising` or `falling` only where the first and the last rate have nothing
/// in common, else `not_shown`. A unit that is sealed has no normal consumption. Common practice, no source.
///
/// Raises `QuantityError`: `wrong_kind`, `out_of_range` for an odometer or a date that goes back, with its path, as
/// `visits[2].odometer`.
///
/// >>> from brimline import leak
/// >>> visits = [{"odometer": odometer, "net": net, "uncertainty": "0.1 L", "odometer_uncertainty": "0 km"}
/// ...           for odometer, net in [("40000 km", "1.2 L"), ("50000 km", "0.4 L"), ("60000 km", "0.9 L")]]
/// >>> told = leak.consumption(visits, shortage="0.5 L")
/// >>> told["rates"][1]["per_1000_km"], told["trend"], told["distance"]
/// (['0.08 L', '0.1 L'], 'rising', ['5000 km', None])
#[pyfunction]
#[pyo3(signature = (visits, *, shortage=None))]
pub(crate) fn consumption<'py>(
    py: Python<'py>,
    visits: Given<'_, 'py, List>,
    shortage: Option<Given<'_, 'py, kind::Volume>>,
) -> PyResult<Told<'py, Consumption>> {
    arguments!(visits, shortage).ask(py, "leak.consumption")
}

/// What a class of seepage, `I`, `II` or `III`, means and leads to.
///
/// Source: US Army TM 9-2330-373-14&P, paragraph 4-7; TM 9-2320-269-20-1; TM 5-3895-383-24, paragraph 1-10; the steady
/// stream: TM 10-3930-671-10, paragraph 3-3. The service sheet may ask for more.
///
/// Raises `BrimlineError`: `unknown_value`.
///
/// >>> from brimline import leak
/// >>> told = leak.seepage("II")
/// >>> told["meaning"], told["drives"], told["fuel"]
/// ('drops_form_none_fall', 'check_more_often', 'do_not_run')
#[pyfunction]
pub(crate) fn seepage<'py>(
    py: Python<'py>,
    class_: Given<'_, 'py, WordOf<SeepageClass>>,
) -> PyResult<Told<'py, Seepage>> {
    read!(class_ as "class");
    Told::answer(py, &leak::seepage(class_))
}

/// What a drip loses, from drops counted in a time.
///
/// At least one of `drops`; `in_time` and the volume of one `drop` above zero. A drop has no default: published ones differ
/// fivefold, and oil drops were measured from 0.02 to 0.07 mL.
///
/// Raises `QuantityError`: `wrong_kind`, `out_of_range`.
///
/// >>> from brimline import leak
/// >>> leak.drip_rate(60, in_time="1 min", drop="0.05 mL")
/// {'per_day': '4.32 L', 'per_year': '1576.8 L', 'one_drop_every': '1 s'}
#[pyfunction]
#[pyo3(signature = (drops, *, in_time, drop))]
pub(crate) fn drip_rate<'py>(
    py: Python<'py>,
    drops: Given<'_, 'py, Count<1>>,
    in_time: Given<'_, 'py, kind::Time>,
    drop: Given<'_, 'py, kind::Volume>,
) -> PyResult<Told<'py, DripRate>> {
    read!(drops, in_time, drop);
    Told::answer(py, &answer(|| leak::drip_rate(drops, in_time, drop))?)
}

/// The time from drop to drop, in s, of a drip that loses a volume over a time.
///
/// All above zero; the volume of one `drop` is no more than `volume`.
///
/// Raises `QuantityError`: `wrong_kind`, `out_of_range`.
///
/// >>> from brimline import leak
/// >>> leak.drops_for("0.5 L", over="1440 h", drop="0.04 mL")  # 12500 drops in 60 days
/// Amount('414.72 s')
#[pyfunction]
#[pyo3(signature = (volume, *, over, drop))]
pub(crate) fn drops_for(
    volume: Given<'_, '_, kind::Volume>,
    over: Given<'_, '_, kind::Time>,
    drop: Given<'_, '_, kind::Volume>,
) -> PyResult<Amount> {
    read!(volume, over, drop);
    answer(|| leak::drops_for(volume, over, drop)).map(Amount)
}
