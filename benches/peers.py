"""How long the package takes beside the nearest general-purpose library doing the same, pair by pair in one run.

The two of a pair are timed in turn, round after round, so that whatever else the machine does falls on both. Told are the
medians over the rounds, in nanoseconds a call, and their ratio. A package that is missing is passed over.

    pip install ./bindings-python pint==0.25.3 scipy==1.17.1 chemicals==1.5.2 cantools==45.1.0
    python benches/peers.py
"""

import math
import statistics
import timeit
from importlib.metadata import version

from brimline import Amount, Unit, convert, fluid, leak, signal, warm_up

ROUNDS = 41
"""Rounds of a pair."""
ROUND_SECONDS = 0.004
"""About how long each of the two takes in a round."""

# The fluid frame of SAE J1939-71, PGN 65272, as a general decoder is told of it.
FRAME = f"""
VERSION ""
BS_:
BU_: gearbox
BO_ {0x98FEF803} Fluid: 8 gearbox
 SG_ Level : 8|8@1+ (0.4,0) [0|100] "%" gearbox
 SG_ Temperature : 32|16@1+ (0.03125,-273) [-273|1734.96875] "degC" gearbox
 SG_ Departure : 48|8@1+ (0.5,-62.5) [-62.5|62.5] "L" gearbox
 SG_ Countdown : 56|4@1+ (1,0) [0|15] "min" gearbox
 SG_ Status : 60|4@1+ (1,0) [0|15] "" gearbox
"""


def conversion_by_unit():
    from pint import UnitRegistry

    registry = UnitRegistry()
    names = {
        "convert": convert,
        "own_from": Unit("N·m"),
        "own_to": Unit("lbf·ft"),
        "torque": 104.25 * registry.newton * registry.metre,
        "to": registry.foot * registry.force_pound,
    }
    return "convert(104.25, own_from, own_to)", "torque.m_as(to)", names


def conversion_by_name():
    from pint import UnitRegistry

    names = {"convert": convert, "Quantity": UnitRegistry().Quantity}
    return "convert(104.25, 'N*m', 'lbf*ft')", "Quantity(104.25, 'N*m').m_as('lbf*ft')", names


def quantity_from_text():
    from pint import UnitRegistry

    names = {"Amount": Amount, "registry": UnitRegistry()}
    return "Amount('104.25 N*m')", "registry('104.25 N*m')", names


def fit_of_eight_points():
    from numpy import array, exp
    from scipy.optimize import curve_fit

    minutes, readings = range(8), [19.9, 25.89, 31.93, 36.97, 41.3, 45.55, 48.79, 52.46]
    names = {
        "fit": warm_up.fit,
        "samples": [{"at": f"{at} min", "reading": f"{reading} °C"} for at, reading in zip(minutes, readings)],
        "curve_fit": curve_fit,
        "response": lambda at, end, start, constant: end - (end - start) * exp(-at / constant),
        "at": array([60.0 * minute for minute in minutes]),
        "readings": array(readings),
        "guess": (60.0, 20.0, 300.0),
    }
    return "float(fit(samples)['asymptote'].split()[0])", "curve_fit(response, at, readings, guess)[0][0]", names


def viscosity_index():
    from chemicals.viscosity import viscosity_index

    thick, thin = Amount("73.30 mm²/s"), Amount("8.86 mm²/s")
    names = {"ours": fluid.viscosity_index, "theirs": viscosity_index, "thick": thick, "thin": thin}
    return (
        "ours(thick, viscosity_100=thin)['index']",
        "theirs(73.30e-6, 8.86e-6, rounding=True)",
        names,
    )


def frame():
    from cantools.database import load_string

    database = load_string(FRAME, "dbc")
    names = {
        "ours": signal.transmission_frame,
        "theirs": database.get_message_by_name("Fluid").decode,
        "data": bytes.fromhex("FF7DFFFF20287A20"),
    }
    return (
        "float(ours(0x18FEF803, data=data)['temperature']['value'].split()[0])",
        "theirs(data)['Temperature']",
        names,
    )


def conformance():
    from scipy.stats import norm

    given = {"uncertainty": Amount("10 mL"), "lower": Amount("490 mL")}
    names = {"ours": leak.conformance, "value": Amount("507 mL"), "given": given, "norm": norm}
    return "float(ours(value, **given).number)", "norm.sf(490.0, 507.0, 10.0)", names


PAIRS = [
    ("convert, kept units", "pint", conversion_by_unit),
    ("convert, unit names", "pint", conversion_by_name),
    ("quantity from text", "pint", quantity_from_text),
    ("fit of eight readings", "scipy", fit_of_eight_points),
    ("viscosity index", "chemicals", viscosity_index),
    ("transmission frame", "cantools", frame),
    ("conformance", "scipy", conformance),
]


def measure(ours, theirs, names):
    """The medians of both, in nanoseconds a call."""
    timers = [timeit.Timer(statement, globals=names) for statement in (ours, theirs)]
    one, other = (eval(statement, names) for statement in (ours, theirs))
    if isinstance(one, float):
        assert math.isclose(one, other, rel_tol=1e-4), f"{one} and {other}"
    calls = [max(1, int(ROUND_SECONDS / (min(timer.repeat(3, 10)) / 10))) for timer in timers]
    rounds = [[timer.timeit(count) / count * 1e9 for timer, count in zip(timers, calls)] for _ in range(ROUNDS)]
    return [statistics.median(column) for column in zip(*rounds)]


def main():
    print(f"{'':24}{'brimline':>12}{'the other':>12}{'ratio':>8}")
    for name, package, prepare in PAIRS:
        try:
            pair = prepare()
        except ImportError:
            print(f"{name:24}skipped: {package} is not installed")
            continue
        ours, theirs = measure(*pair)
        print(f"{name:24}{ours:9.0f} ns{theirs:9.0f} ns{theirs / ours:8.1f}  {package} {version(package)}")


if __name__ == "__main__":
    main()
