"""Compares the installed brimline with general-purpose libraries at random points: peers.py [SEED]

Units and prints with pint, first-order fits, probabilities and areas with scipy, viscosity index with chemicals, frames
with cantools; volume correction, viscosity and blending with their formulas written out here. Every disagreement beyond
rounding is printed, and the exit code is then 1. Where a library is missing, a line says so and nothing is compared.
"""

import math
import random
import sys
from decimal import ROUND_HALF_EVEN, Decimal
from typing import Any

try:
    import cantools
    import numpy
    import pint
    from chemicals.viscosity import viscosity_index
    from scipy.integrate import quad
    from scipy.optimize import brentq, curve_fit, least_squares
    from scipy.stats import norm
except ImportError as missing:
    print(f"peers: skipped, {missing.name} is not installed (pint, scipy, chemicals and cantools are needed)")
    sys.exit(0)

import brimline
from brimline import Amount

POINTS = 400
SEED = int(sys.argv[1]) if len(sys.argv) > 1 else 20_240_501
dice = random.Random(SEED)
differences: list[str] = []
compared = 0


# -- asking and comparing


def member(answer: Any, name: str) -> Any:
    """A member of an answer, whether that is a mapping or an object."""
    return answer[name] if isinstance(answer, dict) else getattr(answer, name)


def number(quantity: Any, unit: str) -> float:
    """A quantity, whether an amount or its text, as a number of a unit."""
    amount = quantity if isinstance(quantity, Amount) else Amount(quantity)
    given = float(amount.number)
    return given if amount.unit.symbol == unit else brimline.convert(given, amount.unit, unit)


def ends(interval: Any, unit: str) -> tuple[float, float]:
    """Both ends of an interval, whether an `Interval` or two texts."""
    low, high = interval if isinstance(interval, list | tuple) else (interval.lo, interval.hi)
    return number(low, unit), number(high, unit)


def same(what: str, ours: Any, theirs: Any) -> None:
    global compared
    compared += 1
    if ours != theirs:
        differences.append(f"{what}: {ours!r}, elsewhere {theirs!r}")


def near(what: str, ours: float, theirs: float, relative: float = 5e-12, absolute: float = 6e-10) -> None:
    """Amounts that were computed have twelve digits, and nine decimals at most."""
    global compared
    compared += 1
    if not abs(ours - theirs) <= absolute + relative * abs(theirs):
        differences.append(f"{what}: {ours!r}, elsewhere {theirs!r}")


def plain(value: float, decimals: int = 6) -> str:
    return f"{value:.{decimals}f}"


def drawn(low: float, high: float, decimals: int = 6) -> float:
    """A random number that its printed decimals tell wholly."""
    return float(plain(dice.uniform(low, high), decimals))


# -- units

units = pint.UnitRegistry()

UNITS = [
    {
        "L": "litre", "mL": "millilitre", "cm³": "cm**3", "m³": "m**3", "in³": "inch**3", "US gal": "gallon", "US qt": "quart",
        "US pt": "pint", "US fl oz": "fluid_ounce", "imp gal": "imperial_gallon", "imp qt": "imperial_quart",
        "imp pt": "imperial_pint", "imp fl oz": "imperial_fluid_ounce",
    },
    {
        "N·m": "newton*meter", "N·cm": "newton*centimeter", "dN·m": "decinewton*meter", "lbf·ft": "force_pound*foot",
        "lbf·in": "force_pound*inch", "ozf·in": "force_ounce*inch", "kgf·m": "force_kilogram*meter",
        "kgf·cm": "force_kilogram*centimeter",
    },
    {"kg": "kilogram", "g": "gram", "lb": "pound"},
    {"km": "kilometer", "mi": "mile", "m": "meter", "mm": "millimeter", "in": "inch"},
    {"m²": "meter**2", "cm²": "cm**2", "mm²": "mm**2", "in²": "inch**2"},
    {"K": "kelvin", "°C": "degC", "°F": "degF"},
    {"Δ°C": "delta_degC", "Δ°F": "delta_degF"},
    {"kPa": "kilopascal", "bar": "bar", "psi": "psi"},
    {"s": "second", "min": "minute", "h": "hour"},
    {"kg/m³": "kg/m**3", "g/mL": "g/mL"},
    {"mL/s": "mL/s", "L/min": "L/min"},
    {"ratio": "dimensionless", "%": "percent"},
    {"N": "newton", "kN": "kilonewton", "lbf": "force_pound"},
    {"per K": "1/delta_degC", "per °F": "1/delta_degF"},
]  # fmt: skip
PINT = {symbol: name for kind in UNITS for symbol, name in kind.items()}


def elsewhere(value: float, unit: str, to: str) -> float:
    return float(units.Quantity(value, PINT[unit]).to(PINT[to]).magnitude)


def unit_conversion() -> None:
    for kind in UNITS:
        for _ in range(POINTS // 2):
            unit, to = dice.choice(list(kind)), dice.choice(list(kind))
            value = dice.uniform(0.5, 10) * 10 ** dice.randint(-3, 4)
            apart = 1e-10 if unit in ("K", "°C", "°F") else 0.0
            near(f"{value!r} {unit} in {to}", brimline.convert(value, unit, to), elsewhere(value, unit, to), 2e-14, apart)


def printed_equivalents() -> None:
    pairs = [("N·m", "lbf·ft"), ("N·m", "lbf·in"), ("lbf·ft", "N·m"), ("L", "US qt"), ("US qt", "L"), ("imp pt", "mL"), ("mm", "in")]
    for _ in range(POINTS):
        first, second = dice.choice(pairs)
        governing = plain(dice.uniform(5, 60), dice.randint(0, 2))
        true = elsewhere(float(governing), first, second)
        step = Decimal(1).scaleb(-dice.randint(3, 5))
        rounded = Decimal(true).quantize(step, ROUND_HALF_EVEN)
        off = Decimal(true * dice.uniform(1.10, 1.15)).quantize(step, ROUND_HALF_EVEN)
        for text, classes in ((rounded, {"exact", "agrees"}), (off, {"inconsistent"})):
            printed = [f"{governing} {first}", f"{text} {second}"]
            answer = member(brimline.torque.equivalents(printed=printed), "prints")[1]
            given = member(answer, "class" if isinstance(answer, dict) else "class_")
            if given not in classes:
                same(f"prints {printed}", given, classes)
            near(f"gap of {printed}", number(member(answer, "gap"), "%"), 100 * (float(text) / true - 1), 1e-9, 2e-9)


# -- torque, through quantities of pint


def torque() -> None:
    for _ in range(POINTS):
        target, lever, share = drawn(5, 200, 3), drawn(150, 600, 2), dice.uniform(0.05, 0.9)
        adapter, angle = float(plain(lever * share / 25.4, 4)), drawn(0, 180, 2)
        a, b = units.Quantity(lever, "mm"), units.Quantity(adapter, "inch")
        reach = b * math.cos(math.radians(angle))
        setting = (units.Quantity(target, "newton*meter") * a / (a + reach)).to("newton*meter").magnitude
        given = {"lever": f"{lever} mm", "adapter": f"{adapter} in", "angle": f"{angle} deg"}
        what = f"{target} N·m with {given}"
        ours = number(member(brimline.torque.wrench_setting(target=f"{target} N·m", **given), "setting"), "N·m")
        near(f"setting for {what}", ours, setting)
        back = number(brimline.torque.applied_torque(setting=f"{plain(setting, 9)} N·m", **given), "N·m")
        near(f"applied by the setting for {what}", back, target, 1e-9)

        k, diameter = drawn(0.08, 0.4, 4), drawn(0.15, 0.75, 4)
        force = units.Quantity(target, "newton*meter") / (k * units.Quantity(diameter, "inch"))
        low, high = ends(member(brimline.torque.preload(torque=f"{target} N·m", diameter=f"{diameter} in", k=f"{k}"), "preload"), "N")
        near(f"preload of {target} N·m, {diameter} in, K {k}", low, force.to("newton").magnitude)
        same(f"preload of {target} N·m, {diameter} in, K {k}: both ends", low, high)


# -- volume: quadratures, and the correction factor written out


def correction() -> None:
    for _ in range(POINTS):
        density, celsius = drawn(800.9, 1163.5, 1), drawn(-50, 150, 2)
        given = {"density": f"{density} kg/m³", "temperature": f"{celsius} °C"}
        for base, k1, apart in (("base_15c", 0.6278, celsius - 15), ("base_60f", 0.34878, celsius * 1.8 + 32 - 60)):
            step = k1 / density * apart
            factor = math.exp(-step * (1 + 0.8 * step))
            ours = number(brimline.volume.correction_factor(base=base, **given), "ratio")
            near(f"factor, {base}, {given}", ours, factor)
            hot = f"{plain(density * factor, 6)} kg/m³"
            back = number(brimline.volume.base_density(density=hot, temperature=f"{celsius} °C", base=base), "kg/m³")
            near(f"base density, {base}, {hot} at {celsius} °C", back, density, 0, 3e-6)


def areas() -> None:
    half = lambda z: 8 / math.pi * math.sqrt(z * (1 - z))  # noqa: E731
    for _ in range(POINTS // 2):
        diameter, length = drawn(50, 900, 2), drawn(80, 900, 2)
        level = float(plain(diameter * dice.random(), 3))
        depth = level / diameter
        share = quad(half, 0, depth, epsabs=1e-13)[0] if depth < 0.5 else 1 - quad(half, 0, 1 - depth, epsabs=1e-13)[0]
        what = f"{level} mm in a circle of {diameter} mm"
        near(what, number(brimline.volume.segment_share(level=f"{level} mm", diameter=f"{diameter} mm"), "ratio"), share, 0, 2e-9)
        sump = {"shape": "lying_cylinder", "diameter": f"{diameter} mm", "length": f"{length} mm"}
        litres = share * math.pi / 4 * diameter**2 * length * 1e-6
        near(f"{what}, {length} mm long", number(brimline.volume.volume_below(sump=sump, level=f"{level} mm"), "L"), litres, 1e-9)
        held = f"{plain(litres, 9)} L"
        near(f"level for {held} in {sump}", number(brimline.volume.level_for(sump=sump, volume=held), "mm"), level, 1e-6, 1e-4)

        height, bottom, middle, top = drawn(50, 300, 1), drawn(300, 900, 1), drawn(300, 900, 1), drawn(300, 900, 1)
        area = numpy.poly1d(numpy.polyfit([0, height / 2, height], [bottom, middle, top], 2))
        sump = {"shape": "prismoid", "height": f"{height} mm", "bottom": f"{bottom} cm²", "middle": f"{middle} cm²", "top": f"{top} cm²"}
        level = float(plain(height * dice.random(), 3))
        litres = quad(area, 0, level)[0] * 1e-4
        near(f"{level} mm in {sump}", number(brimline.volume.volume_below(sump=sump, level=f"{level} mm"), "L"), litres, 1e-9)


# -- warm-up: fits


def response(t: Any, asymptote: float, start: float, tau: float) -> Any:
    return asymptote - (asymptote - start) * numpy.exp(-t / tau)


def slopes(t: Any, asymptote: float, start: float, tau: float) -> Any:
    decay = numpy.exp(-t / tau)
    return numpy.column_stack([1 - decay, decay, -(asymptote - start) * decay * t / tau**2])


def warm_up() -> None:
    noise = numpy.random.default_rng(SEED)
    for _ in range(POINTS // 2):
        truth = (drawn(60, 110, 2), drawn(5, 30, 2), drawn(300, 900, 1))
        count = dice.randint(6, 24)
        t = numpy.round(numpy.linspace(0, truth[2] * dice.uniform(1, 2.5), count))
        readings = numpy.round(response(t, *truth) + noise.normal(0, 0.2, count), 2)
        listed = [{"at": f"{at:.0f} s", "reading": f"{reading:.2f} °C"} for at, reading in zip(t, readings, strict=True)]
        tight = {"ftol": 1e-14, "xtol": 1e-14, "gtol": 1e-14}
        (theirs, spread) = curve_fit(response, t, readings, p0=truth, jac=slopes, maxfev=10_000, **tight)
        errors = numpy.sqrt(numpy.diag(spread))
        answer = brimline.warm_up.fit(samples=listed)
        said = [("asymptote", "°C", "Δ°C"), ("start", "°C", "Δ°C"), ("time_constant", "s", "s")]
        for (name, unit, apart), value, error in zip(said, theirs, errors, strict=True):
            near(f"{name} of {listed}", number(member(answer, name), unit), value, 0, 1e-3 * error)
            ours = number(member(member(answer, "standard_errors"), name), apart)
            near(f"standard error of {name} of {listed}", ours, error, 2e-3)

        asymptote, start, tau = theirs
        wanted = float(plain(dice.uniform(readings[0] + 1, readings[-1] - 1), 2))
        over, whole = asymptote - wanted, asymptote - start
        gradient = numpy.array([-tau * (1 / over - 1 / whole), -tau / whole, -math.log(over / whole)])
        answer = brimline.warm_up.crossing(samples=listed, temperature=f"{wanted} °C")
        near(f"{wanted} °C in {listed}", number(member(answer, "at"), "s"), -tau * math.log(over / whole), 1e-5, 1e-3)
        uncertainty = math.sqrt(gradient @ spread @ gradient)
        near(f"uncertainty of {wanted} °C in {listed}", number(member(answer, "uncertainty"), "s"), uncertainty, 5e-3)

        outlier = dice.randrange(count)
        readings[outlier] = round(readings[outlier] + dice.choice([-1, 1]) * dice.uniform(3, 9), 2)
        listed[outlier]["reading"] = f"{readings[outlier]:.2f} °C"
        misses = lambda p: response(t, *p) - readings  # noqa: E731
        robust = least_squares(misses, truth, loss="soft_l1", f_scale=0.2, jac=lambda p: slopes(t, *p), max_nfev=10_000, **tight)
        answer = brimline.warm_up.fit(samples=listed, scatter="0.2 Δ°C")
        ours = [number(member(answer, name), unit) for name, unit, _ in said]
        cost = lambda p: 0.2**2 * float(numpy.sum(numpy.sqrt(1 + (misses(p) / 0.2) ** 2) - 1))  # noqa: E731
        if cost(ours) > robust.cost * (1 + 1e-6) + 1e-12:
            near(f"robust fit of {listed}: {ours} costs, against {list(robust.x)}", cost(ours), robust.cost, 1e-6)


# -- fluid


def index() -> None:
    for _ in range(POINTS):
        hot = drawn(2.0, 69.9, 3) if dice.random() < 0.8 else drawn(70.1, 200, 2)
        # Between a fluid that thins like water and one that hardly thins, around the reference oils.
        cold = float(plain(hot ** dice.uniform(1.25, 2.1) + hot * 0.2, 3))
        theirs = viscosity_index(cold * 1e-6, hot * 1e-6)
        answer = brimline.fluid.viscosity_index(viscosity_40=f"{cold} mm²/s", viscosity_100=f"{hot} mm²/s")
        what = f"index of {cold} and {hot}"
        near(what, number(member(answer, "unrounded"), "ratio"), theirs, 1e-9, 1e-8)
        if abs(theirs - math.floor(theirs) - 0.5) > 1e-6:
            same(what, member(answer, "index"), int(viscosity_index(cold * 1e-6, hot * 1e-6, rounding=True)))


def raised(viscosity: float) -> float:
    """Z of ASTM D341."""
    return viscosity + 0.7 + math.exp(-1.47 - 1.84 * viscosity - 0.51 * viscosity**2)


def viscosity() -> None:
    loglog = lambda z: math.log10(math.log10(z))  # noqa: E731
    for _ in range(POINTS):
        cold, fall = drawn(10, 400, 2), dice.uniform(3, 12)
        hot, celsius = float(plain(max(cold / fall, 0.8), 3)), drawn(-10, 160, 2)
        at40, at100 = math.log10(313.15), math.log10(373.15)
        slope = (loglog(raised(cold)) - loglog(raised(hot))) / (at100 - at40)
        z = 10 ** 10 ** (loglog(raised(cold)) - slope * (math.log10(celsius + 273.15) - at40))
        if not 0.91 < z < 2e7 or z < raised(0.25):
            continue
        exact = brentq(lambda v: raised(v) - z, 0.2, 2e7, xtol=1e-12, rtol=1e-13)
        points = {"viscosity_1": f"{cold} mm²/s", "temperature_1": "40 °C", "viscosity_2": f"{hot} mm²/s", "temperature_2": "100 °C"}
        ours = number(brimline.fluid.viscosity_at(temperature=f"{celsius} °C", **points), "mm²/s")
        # The standard's own inverse of Z is approximate in its low branch.
        near(f"{points} at {celsius} °C", ours, exact, 1e-8 if exact > 5 else 4e-4, 1e-8)
        if exact > 5:
            back = brimline.fluid.temperature_for(viscosity=f"{plain(exact, 7)} mm²/s", **points)
            near(f"temperature for {exact} of {points}", number(back, "°C"), celsius, 0, 2e-4)


def blend() -> None:
    for _ in range(POINTS):
        thin, thick, share = drawn(4, 60, 2), drawn(60, 600, 2), drawn(0.01, 0.99, 4)
        rest = plain(1 - share, 4)
        parts = [{"viscosity": f"{thin} mm²/s", "share": f"{share}"}, {"viscosity": f"{thick} mm²/s", "share": rest}]
        number_of = lambda v: 14.534 * math.log(math.log(v + 0.8)) + 10.975  # noqa: E731
        mean = share * number_of(thin) + float(rest) * number_of(thick)
        by_mass = math.exp(math.exp((mean - 10.975) / 14.534)) - 0.8
        near(f"Refutas of {parts}", number(brimline.fluid.blend(parts=parts, rule="refutas_mass"), "mm²/s"), by_mass, 1e-10, 1e-9)
        walther = lambda v: math.log10(math.log10(v + 0.7))  # noqa: E731
        by_volume = 10 ** 10 ** (share * walther(thin) + float(rest) * walther(thick)) - 0.7
        near(f"D7152 of {parts}", number(brimline.fluid.blend(parts=parts, rule="walther_volume"), "mm²/s"), by_volume, 1e-6)


# -- leak: probabilities


def probability() -> None:
    for _ in range(POINTS):
        chance = drawn(0.5, 0.999999, 9)
        ours = number(brimline.leak.guard_band(uncertainty="1 L", probability=plain(chance, 9)), "L")
        near(f"quantile of {chance}", ours, norm.ppf(chance), 2e-9, 2e-9)
        value, spread, limit = drawn(0.1, 3, 4), drawn(0.01, 0.5, 4), drawn(0.1, 3, 4)
        given = {"estimate": f"{value} L", "uncertainty": f"{spread} L", "limit": f"{limit} L"}
        given["rule"] = "simple_acceptance"
        ours = number(member(brimline.leak.against_limit(**given), "exceeds"), "ratio")
        near(f"exceeding, {given}", ours, norm.sf(limit, value, spread), 0, 2e-9)
        low, high = sorted((drawn(0.1, 3, 4), drawn(0.1, 3, 4)))
        if low < high:
            given = {"value": f"{value} L", "uncertainty": f"{spread} L", "lower": f"{low} L", "upper": f"{high} L"}
            inside = norm.cdf(high, value, spread) - norm.cdf(low, value, spread)
            near(f"conformance, {given}", number(brimline.leak.conformance(**given), "ratio"), inside, 0, 2e-9)
        parts = [drawn(0.001, 2, 4) for _ in range(dice.randint(1, 6))]
        ours = number(brimline.leak.combined_uncertainty(parts=[f"{part} L" for part in parts]), "L")
        near(f"combined {parts}", ours, float(numpy.linalg.norm(parts)))


def risks() -> None:
    for _ in range(POINTS // 8):
        mean, spread, measured = drawn(9.9, 10.1, 3), drawn(0.05, 0.3, 3), drawn(0.02, 0.15, 3)
        width, guard = drawn(0.1, 0.5, 3), drawn(-0.05, 0.05, 3)
        tolerance, acceptance = (10 - width, 10 + width), (10 - width + guard, 10 + width - guard)
        bound = lambda ends: [f"{plain(end, 6)} L" for end in ends]  # noqa: E731
        accepted = lambda true: norm.cdf(acceptance[1], true, measured) - norm.cdf(acceptance[0], true, measured)  # noqa: E731
        over = lambda what, low, high: quad(what, low, high, epsabs=1e-12, limit=400)[0]  # noqa: E731
        far = (mean - 9 * spread, mean + 9 * spread)
        taken = lambda true: accepted(true) * norm.pdf(true, mean, spread)  # noqa: E731
        left = lambda true: (1 - accepted(true)) * norm.pdf(true, mean, spread)  # noqa: E731
        consumer = over(taken, min(far[0], tolerance[0]), tolerance[0]) + over(taken, tolerance[1], max(far[1], tolerance[1]))
        producer = over(left, *tolerance)
        answer = brimline.leak.risks(
            mean=f"{mean} L", spread=f"{spread} L", uncertainty=f"{measured} L", tolerance=bound(tolerance), acceptance=bound(acceptance)
        )
        what = f"of {mean} ± {spread}, measured to {measured}, {tolerance}, {acceptance}"
        near(f"consumer's risk {what}", number(member(answer, "consumer"), "ratio"), consumer, 0, 5e-8)
        near(f"producer's risk {what}", number(member(answer, "producer"), "ratio"), producer, 0, 5e-8)


# -- signal: frames

FRAME = """VERSION ""
BO_ 2566846718 GearboxFluid: 8 Gearbox
 SG_ level : 8|8@1+ (0.4,0) [0|100] "" Display
 SG_ temperature : 32|16@1+ (0.03125,-273) [0|0] "" Display
 SG_ departure : 48|8@1+ (0.5,-62.5) [0|0] "" Display
 SG_ countdown : 56|4@1+ (1,0) [0|0] "" Display
 SG_ status : 60|4@1+ (1,0) [0|0] "" Display
"""
# What cantools does not know: the first codes of each range, of the high byte or of the nibble.
BYTES = [(0xFF, "not_available"), (0xFE, "error"), (0xFC, "reserved"), (0xFB, "parameter_specific"), (0, "valid")]
STATUSES = ["conditions_met", "settling", "in_gear", "too_cold", "too_hot", "moving", "not_level"]
NIBBLES = [(15, "not_available"), (14, "error"), (0, "valid")]


def state(code: int, ranges: list[tuple[int, str]]) -> str:
    return next(word for first, word in ranges if code >= first)


def frames() -> None:
    message = cantools.database.load_string(FRAME, "dbc").messages[0]
    for _ in range(POINTS * 4):
        data = bytearray(dice.randbytes(8))
        if dice.random() < 0.5:
            data[5] = dice.choice([0x1D, 0x20, 0x27, 0x2B, 0x3B, 0xFA, 0xFB, 0xFC, 0xFD, 0xFE, 0xFF])
        if dice.random() < 0.3:
            data[1], data[6] = dice.randint(0xF8, 0xFF), dice.randint(0xF8, 0xFF)
        theirs = message.decode(bytes(data))
        answer = brimline.signal.transmission_frame(id="18FEF8FE", data=data.hex())
        told = [
            ("temperature", state(data[5], BYTES), "°C"),
            ("level", state(data[1], BYTES), "%"),
            ("departure", state(data[6], BYTES), "L"),
            ("countdown", state(data[7] & 15, NIBBLES), "min"),
        ]
        for name, expected, unit in told:
            reading, value = member(answer, name), float(theirs[name])
            if name == "temperature" and expected == "valid" and not -40 <= value <= 200:
                expected = "implausible"
            same(f"state of {name} in {data.hex()}", str(member(reading, "state")), expected)
            if expected in ("valid", "implausible"):
                near(f"{name} in {data.hex()}", number(member(reading, "value"), unit), value, 0, 1e-9)
        code = data[7] >> 4
        expected = {15: "not_available", 14: "error"}.get(code, STATUSES[code] if code < len(STATUSES) else None)
        if expected:
            same(f"status in {data.hex()}", str(member(answer, "status")), expected)


def linear() -> None:
    made = 0
    while made < POINTS:
        length, order, signed = dice.randint(1, 24), dice.choice(["little", "big"]), dice.random() < 0.5
        start, scale, offset = dice.randrange(64), dice.choice(["1", "0.5", "0.25", "0.1", "0.4", "0.03125", "0.001"]), drawn(-300, 300, 2)
        signal = f"{start}|{length}@{int(order == 'little')}{'-' if signed else '+'} ({scale},{offset})"
        text = f'VERSION ""\nBO_ 291 Anything: 8 Gearbox\n SG_ value : {signal} [0|0] "" Display\n'
        try:
            message = cantools.database.load_string(text, "dbc").messages[0]
        except cantools.database.errors.Error:
            continue  # It does not fit into the eight bytes.
        made += 1
        data = dice.randbytes(8)
        layout = {"start": start, "length": length, "order": order, "signed": signed, "scale": f"{scale} L", "offset": f"{offset} L", "unit": "L"}
        ours = number(member(brimline.signal.linear(data=data.hex(), layout=layout), "value"), "L")
        near(f"{signal} in {data.hex()}", ours, float(message.decode(data)["value"]), 1e-12, 1e-9)


def main() -> int:
    parts = [unit_conversion, printed_equivalents, torque, correction, areas, warm_up, index, viscosity, blend, probability, risks, frames, linear]
    for part in parts:
        before, found = compared, len(differences)
        part()
        print(f"peers: {part.__name__}: {compared - before} compared, {len(differences) - found} differ")
    for difference in differences:
        print(f"peers: {difference}")
    return 1 if differences else 0


if __name__ == "__main__":
    sys.exit(main())
