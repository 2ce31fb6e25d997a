"""The calculators from Python: what they take, what they answer, how they refuse."""

import copy
import inspect
import keyword
import pickle
import unittest
from collections.abc import Callable, Iterator
from concurrent.futures import ThreadPoolExecutor
from datetime import date
from decimal import Decimal
from fractions import Fraction
from typing import Any

from test_documents import Shelf
from test_errors import refused
from test_values import ran_beside

import brimline
from brimline import Amount, BrimlineError, DocumentError, Interval, LimitError, QuantityError, calculate
from brimline import fluid, leak, money, signal, torque, volume, warm_up

ROOMS = [value for value in vars(brimline).values() if inspect.ismodule(value) and hasattr(value, "__all__")]


def functions() -> Iterator[tuple[str, Callable[..., Any]]]:
    """Every calculator with the name it has in every language."""
    for room in ROOMS:
        name = room.__name__.partition(".")[2]
        if name in brimline.__all__:
            yield from ((f"{name}.{own}", getattr(room, own)) for own in room.__all__)


class Names(unittest.TestCase):
    def test_every_calculator_is_here(self) -> None:
        known = refused(calculate, "", {}).faults[0].allowed
        self.assertEqual({name for name, call in functions() if inspect.isroutine(call)}, set(known))

    def test_arguments_have_the_names_they_have_everywhere(self) -> None:
        for name, call in functions():
            if inspect.isroutine(call):
                faults = refused(calculate, name, {"no such argument": "1"}).faults
                known = next(fault for fault in faults if fault.kind == "unknown_field").allowed
                own = {f"{word}_" if keyword.iskeyword(word) else word for word in known}
                parameters = list(inspect.signature(call).parameters.values())
                self.assertEqual({parameter.name for parameter in parameters}, own, name)
                by_place = [parameter for parameter in parameters if parameter.kind is not parameter.KEYWORD_ONLY]
                self.assertEqual(len(by_place), 1, name)


class Taken(unittest.TestCase):
    def test_amounts_and_their_texts(self) -> None:
        told = torque.wrench_setting("40 lbf·ft", lever="12 in", adapter="4 in", angle="0 deg")
        given = [Amount("40 lbf·ft"), Amount("12 in"), Amount(Fraction(4), "in")]
        self.assertEqual(torque.wrench_setting(given[0], lever=given[1], adapter=given[2]), told)
        self.assertEqual(torque.wrench_setting("40 lbf·ft", lever="304.8 mm", adapter="4 in", angle=None), told)

    def test_a_text_is_read_in_the_kind_of_its_argument(self) -> None:
        arguments = {"uncertainty": "1 °C", "limit": "50 °C", "rule": "simple_acceptance"}
        told = leak.against_limit("51 °C", **arguments)  # type: ignore[arg-type]
        simple = leak.against_limit("51 °C", uncertainty=Amount("1 Δ°C"), limit="50 °C", rule="simple_acceptance")
        self.assertEqual(simple, told)
        wrong = {**arguments, "uncertainty": Amount("1 °C")}
        error = refused(leak.against_limit, "51 °C", **wrong)
        self.assertEqual((error.kind, error.faults[0].path), ("wrong_kind", "uncertainty"))

    def test_ratios_are_any_number(self) -> None:
        forms: list[Any] = ["0.5", "50 %", 0.5, Decimal("0.50"), Fraction(1, 2), Amount("0.5 ratio"), Amount("50 %")]
        for half in forms:
            told = torque.preload("12 N·m", diameter="10 mm", k=half)
            self.assertEqual(told["preload"], ["2400 N", "2400 N"])
            parts = [{"viscosity": "5 mm²/s", "share": half}, {"viscosity": "20 mm²/s", "share": half}]
            self.assertEqual(fluid.blend(parts, rule="walther_volume").kind, "kinematic_viscosity")
            rates = [{"id": "goods", "rate": half}]
            lines = [{"net": "4.97 EUR", "taxes": ["goods"]}]
            sums = money.totals(lines, currency="EUR", rates=rates, rounding="half_even", place="line")
            self.assertEqual(sums["taxes"][0]["tax"], "2.48 EUR")
        self.assertEqual(torque.preload("1 N·m", diameter="1 m", k=1)["preload"], ["1 N", "1 N"])
        for k, kind in ((float("nan"), "not_a_number"), (Fraction(1, 3), "fraction"), (10**30, "too_many_digits")):
            error = refused(torque.preload, "12 N·m", diameter="10 mm", k=k)
            self.assertEqual((error.kind, error.faults[0].path), (kind, "k"))
        wrongs: list[Any] = [True, [], object()]
        for wrong in wrongs:
            with self.assertRaisesRegex(TypeError, "argument 'k'"):
                torque.preload("12 N·m", diameter="10 mm", k=wrong)

    def test_bytes_in_every_form(self) -> None:
        data = bytes.fromhex("FFFFFFFF20287A20")
        told = signal.transmission_frame(0x18FEF8FE, data=data)
        for number, form in ((0x18FEF8FE, bytearray(data)), ("18FEF8FE", data), (0x18FEF8FE, data.hex(" "))):
            self.assertEqual(signal.transmission_frame(number, data=form), told)
        reply = signal.diagnostic_reply(b"\x22\x11\x61", reply="62 11 61 7B")
        self.assertEqual((reply["state"], reply["data"]), ("positive", "7B"))
        for number in (-1, 2**40, "1FFFFFFFFF"):
            self.assertEqual(refused(signal.transmission_frame, number, data=data).faults[0].path, "id")

    def test_a_layout_is_read_once(self) -> None:
        members: dict[str, Any] = {"start": 3, "length": 12, "order": "big", "signed": True, "unit": "°C", "scale": "0.5 °C"}
        limits: dict[str, Any] = {"offset": "-40 °C", "min": "-30 °C"}
        for more in ({}, limits):
            layout = signal.Linear(**members, **more)
            for data in (b"\x01\x23\x45", bytearray(b"\xff\xff\xff"), "00 80 7F"):
                self.assertEqual(signal.linear(data, layout=layout), signal.linear(data, layout={**members, **more}))
            again = [eval(repr(layout), {"Linear": signal.Linear}), copy.deepcopy(layout)]
            again.append(pickle.loads(pickle.dumps(layout)))
            self.assertEqual({layout, *again}, {layout})
            reply = signal.diagnostic_reply("22 11 61", reply="62 11 61 01 23", layout=layout)
            self.assertEqual(reply["reading"], signal.linear("01 23", layout=layout))
            members["scale"] = Amount("-2 Δ°C")
        self.assertEqual(refused(signal.linear, b"\x01", layout=layout).faults[0].path, "layout.start")
        error = refused(signal.Linear, **{**members, "scale": "1 L"})
        self.assertEqual((error.kind, error.faults[0].path), ("wrong_kind", "scale"))

    def test_lists_of_mappings_in_every_form(self) -> None:
        visits: list[dict[str, Any]] = [
            {"odometer": Amount("40000 km"), "net": "1.2 L", "date": date(2026, 1, 2)},
            {"odometer": "50000 km", "net": Amount(Decimal("0.4"), "L"), "date": "2026-03-02"},
        ]
        told = leak.consumption(visits)
        self.assertIn("per_30_days", told["rates"][0])
        for form in (tuple(visits), map(Shelf, visits), (visit for visit in visits)):
            self.assertEqual(leak.consumption(form), told)
        range_ = ["1499.8 mm", "1500.2 mm"]
        given: dict[str, Any] = {"spread": "0.12 mm", "uncertainty": "0.04 mm", "acceptance": range_}
        as_list = leak.risks("1500 mm", tolerance=range_, **given)
        self.assertEqual(leak.risks("1500 mm", tolerance=Interval(*range_), **given), as_list)
        self.assertNotEqual(leak.risks("1500 mm", tolerance=Interval(None, range_[1]), **given), as_list)

    def test_what_has_no_place(self) -> None:
        with self.assertRaisesRegex(TypeError, "argument 'lever': an amount is an Amount or its text, not int"):
            torque.wrench_setting("12 N·m", lever=300)  # type: ignore[arg-type]
        with self.assertRaises(TypeError):
            torque.wrench_setting("12 N·m")  # type: ignore[call-arg]
        with self.assertRaises(TypeError):
            torque.wrench_setting("12 N·m", "300 mm")  # type: ignore[call-arg]
        with self.assertRaises(TypeError):
            torque.equivalents([object()])  # type: ignore[list-item]
        endless: list[Any] = []
        endless.append(endless)
        self.assertIs(type(refused(torque.equivalents, endless)), LimitError)


class Refused(unittest.TestCase):
    def test_by_what_was_wrong(self) -> None:
        tools = [{"name": "short", "type": "setting_adjustable", "max": "0 N·m"}]
        cases: list[tuple[BrimlineError, type[BrimlineError], str, str]] = [
            (refused(torque.wrench_setting, "12 N·m", lever="0 mm"), QuantityError, "out_of_range", "lever"),
            (refused(torque.wrench_setting, "12 kg", lever="1 m"), QuantityError, "wrong_kind", "target"),
            (refused(torque.wrench_setting, "12", lever="1 m"), QuantityError, "unit_missing", "target"),
            (refused(torque.wrench_setting, "1 N·m", lever="1 m", angle="9 deg"), BrimlineError, "conflict", "angle"),
            (refused(torque.tool_suits, "12 N·m", tools=tools), QuantityError, "out_of_range", "tools[0].max"),
            (refused(torque.tool_suits, "12 N·m", tools=[{}]), BrimlineError, "missing_field", "tools[0].name"),
            (refused(torque.preload, "1 N·m", diameter="1 m"), BrimlineError, "conflict", "k"),
            (refused(leak.seepage, "IV"), BrimlineError, "unknown_value", "class"),
            (refused(fluid.grade_limits, 40), BrimlineError, "unknown_value", "grade"),
            (refused(signal.linear, b"", layout={}), BrimlineError, "missing_field", "layout.start"),
        ]
        for error, family, kind, path in cases:
            fault = error.faults[0]
            self.assertEqual((type(error), error.kind, fault.path), (family, kind, path), error)
            self.assertEqual((fault.line, fault.column, fault.offset), (None, None, None))
            self.assertEqual(pickle.loads(pickle.dumps(error)).faults, error.faults)

    def test_a_text_of_arguments_tells_places(self) -> None:
        error = refused(calculate, "torque.wrench_setting", '{"target": "12", "lever": "0 mm"}')
        self.assertEqual((type(error), error.kind, error.faults[0].column), (DocumentError, "unit_missing", 12))

    def test_every_fault_of_the_arguments_at_once(self) -> None:
        error = refused(torque.wrench_setting, "14 lb", lever="250 mm", adapter="40", angle="90 percent")
        paths = [(fault.path, fault.kind) for fault in error.faults]
        self.assertEqual(paths, [("target", "wrong_kind"), ("adapter", "unit_missing"), ("angle", "wrong_kind")])
        error = refused(volume.at_temperature, "1,6 L", from_="20", to="80 °C", base="15", density="850 kg/m³")
        paths = [(fault.path, fault.kind) for fault in error.faults]
        wanted = [("volume", "decimal_comma"), ("from", "unit_missing"), ("base", "unknown_value")]
        self.assertEqual(paths, wanted)
        # What no call can take is a mistake of the program, and told first.
        with self.assertRaisesRegex(TypeError, "argument 'lever'"):
            torque.wrench_setting("14 lb", lever=250)  # type: ignore[arg-type]

    def test_every_fault_of_a_list_at_once(self) -> None:
        parts = [{"viscosity": "5", "share": "1"}, {"viscosity": "5 mm²/s"}]
        error = refused(fluid.blend, parts, rule="mean")
        paths = {fault.path for fault in error.faults}
        self.assertEqual(paths, {"parts[0].viscosity", "parts[1].share", "rule"})


class Live(unittest.TestCase):
    READINGS = [19.9, 25.89, 31.93, 36.97, 41.3, 45.55, 48.79, 52.46]

    def test_reading_by_reading_as_all_at_once(self) -> None:
        pours = [{"at": "150 s", "volume": "0.25 L", "temperature": "18 °C"}]
        samples: list[dict[str, Any]] = []
        live = warm_up.Forecast(min="50 °C", max="60 °C", held="6.8 L")
        for minute, reading in enumerate(self.READINGS):
            sample: dict[str, Any] = {"at": f"{minute} min", "reading": Amount(reading, "°C")}
            samples.append(sample)
            if minute == 3:
                live.poured("150 s", volume="0.25 L", temperature=Amount("18 °C"))
            live.sample(sample["at"], reading=sample["reading"])
            known = {"pours": pours} if minute >= 3 else {}
            told = warm_up.forecast(samples, min="50 °C", max="60 °C", held="6.8 L", **known)  # type: ignore[arg-type]
            self.assertEqual(live.answer(), told)

    def test_a_refused_reading_changes_nothing(self) -> None:
        live = warm_up.Forecast(min="50 °C")
        live.sample("60 s", reading="20 °C")
        before = live.answer()
        for at, reading, path in (("59 s", "21 °C", "at"), ("61 s", "21", "reading"), ("61 s", "21 L", "reading")):
            self.assertEqual(refused(live.sample, at, reading=reading).faults[0].path, path)
            self.assertEqual(live.answer(), before)
        self.assertEqual(refused(warm_up.Forecast, min="50 °C", max="40 °C").faults[0].path, "max")

    def test_a_copy_goes_its_own_way(self) -> None:
        live = warm_up.Forecast(min="50 °C")
        live.sample("0 s", reading="20 °C")
        for own in (copy.copy(live), copy.deepcopy(live)):
            self.assertEqual(own.answer(), live.answer())
            own.sample("60 s", reading="25 °C")
            self.assertNotEqual(own.answer(), live.answer())
        with self.assertRaises(TypeError):
            pickle.dumps(live)

    def test_one_forecast_in_many_threads(self) -> None:
        live = warm_up.Forecast(min="50 °C")

        def work(reading: float) -> None:
            live.sample("0 s", reading=Amount(reading, "°C"))

        with ThreadPoolExecutor(8) as pool:
            list(pool.map(work, [20 + place % 7 / 10 for place in range(500)]))
        self.assertEqual(live.answer()["method"], "none")


class Threads(unittest.TestCase):
    def test_long_calls_let_other_threads_run(self) -> None:
        visits = [{"odometer": f"{at} km", "net": "0.1 L"} for at in range(20_000)]
        # One try is enough, unless the machine has something else to do.
        self.assertTrue(any(ran_beside(lambda: leak.consumption(visits)) for _ in range(20)))


if __name__ == "__main__":
    unittest.main()
