"""Amounts, units, intervals and conversion, from every kind of number Python has."""

import math
import unittest
from decimal import Decimal
from fractions import Fraction
from typing import Any

from brimline import Amount, Interval, QuantityError, Unit, convert


class Conversion(unittest.TestCase):
    def test_published_factors(self) -> None:
        # NIST SP 811 (2008), appendix B.8: exact factors, each rounded here to the nearest double.
        self.assertEqual(convert(1, "lbf·ft", "N·m"), 1.3558179483314004)
        self.assertEqual(convert(1, "US gal", "L"), 3.785411784)
        self.assertEqual(convert(1, "imp gal", "L"), 4.54609)
        self.assertEqual(convert(1, "lb", "kg"), 0.45359237)
        # 104 °F is (104 - 32) · 5/9 °C.
        self.assertEqual(convert(104.0, "deg F", "°C"), 40.0)

    def test_every_kind_of_number(self) -> None:
        for number in (2, 2.0, Decimal("2.0"), Fraction(2), True + 1):
            self.assertEqual(convert(number, "L", "mL"), 2000.0)
        self.assertEqual(convert(Fraction(1, 2), "h", "min"), 30.0)

    def test_units_and_names_alike(self) -> None:
        torque = Unit("ft-lb")
        self.assertEqual(convert(9, torque, "N·m"), convert(9, "lbf ft", Unit("Nm")))

    def test_names_read_before_read_the_same(self) -> None:
        symbols = [unit.symbol for unit in Unit.all()]
        names = [*symbols, *(f" {symbol}" for symbol in symbols), *(symbol.replace("·", "*") for symbol in symbols)]
        units = [Unit(name) for name in names]
        for _ in range(3):
            self.assertEqual([Unit(name) for name in names], units)
        convert(1, "L", "mL")
        for name in ("L\0", "\0L", "L\x01", "LL", "", "l\0\0\0\0\0\0", "Lmmmmmmmmmmmmmmmmmmmm"):
            with self.assertRaises(QuantityError):
                convert(1, name, "mL")

    def test_refusals(self) -> None:
        for number, kind in ((math.nan, "not_a_number"), (-math.inf, "not_a_number"), (10**400, "out_of_range")):
            with self.assertRaises(QuantityError) as raised:
                convert(number, "L", "mL")
            self.assertEqual(raised.exception.kind, kind)
        with self.assertRaises(QuantityError) as raised:
            convert(1, "L", "N·m")
        self.assertEqual(raised.exception.kind, "wrong_kind")
        no_numbers: list[Any] = ["1", None, [], 1j]
        for no_number in no_numbers:
            with self.assertRaises(TypeError):
                convert(no_number, "L", "mL")
        with self.assertRaisesRegex(TypeError, "a unit is a Unit or its name, not int"):
            convert(1, 7, "mL")  # type: ignore[arg-type]


class Amounts(unittest.TestCase):
    def test_numbers_keep_what_was_written(self) -> None:
        cases = [
            (("1.50 L",), "1.50 L"),
            (("1.50", "L"), "1.50 L"),
            (("½", "US qt"), "0.5 US qt"),
            ((7, "N·m"), "7 N·m"),
            ((-7, "N·m"), "-7 N·m"),
            ((0.1, "L"), "0.1 L"),
            ((1e-9, "L"), "0.000000001 L"),
            ((Decimal("1.50"), "L"), "1.50 L"),
            ((Decimal("-0.30"), "L"), "-0.30 L"),
            ((Decimal("1E+3"), "mL"), "1000 mL"),
            ((Decimal("0E+9"), "mL"), "0 mL"),
            ((Fraction(3, 8), "in"), "0.375 in"),
            ((Fraction(-3, 2), "in"), "-1.5 in"),
            ((Fraction(4), "in"), "4 in"),
            ((12, Unit("lbf·in")), "12 lbf·in"),
        ]
        for given, text in cases:
            self.assertEqual(str(Amount(*given)), text)  # type: ignore[arg-type]

    def test_numbers_that_are_no_amount(self) -> None:
        cases: list[tuple[Any, str]] = [
            (0.1 + 0.2, "too_many_digits"),
            (math.nan, "not_a_number"),
            (math.inf, "not_a_number"),
            (1e15, "out_of_range"),
            (10**15, "too_many_digits"),
            (10**5000, "too_many_digits"),
            (Decimal("NaN"), "not_a_number"),
            (Decimal("-Infinity"), "not_a_number"),
            (Decimal("1E+999999"), "too_many_digits"),
            (Decimal("1E-999999"), "too_many_digits"),
            (Decimal("1.0000000001"), "too_many_digits"),
            (Fraction(1, 3), "fraction"),
            (Fraction(1, 10**40), "fraction"),
            (Fraction(10**40, 3), "too_many_digits"),
            ("1,5", "decimal_comma"),
        ]
        for number, kind in cases:
            with self.subTest(kind=kind, of=type(number)), self.assertRaises(QuantityError) as raised:
                Amount(number, "L")
            self.assertEqual(raised.exception.kind, kind)
        with self.assertRaises(QuantityError) as raised:
            Amount(7)
        self.assertEqual(raised.exception.kind, "unit_missing")
        for number in (None, [], object()):
            with self.assertRaises(TypeError):
                Amount(number, "L")  # type: ignore[arg-type]

    def test_a_third_has_neighbours(self) -> None:
        with self.assertRaises(QuantityError) as raised:
            Amount(Fraction(1, 3), "L")
        self.assertEqual(raised.exception.faults[0].allowed, ("0.33 L", "0.34 L"))

    def test_fourteen_tenths_are_not_more(self) -> None:
        limit = Amount("1.4 US qt")
        self.assertEqual(Amount(0.1, "US qt") * 14, limit)
        self.assertFalse(14 * Amount("0.1 US qt") > limit)
        self.assertGreater(sum([0.1] * 14), 1.4)  # as binary floats have it

    def test_arithmetic(self) -> None:
        self.assertEqual(str(Amount("1.50 L") + Amount("250 mL")), "1.75 L")
        self.assertEqual(str(Amount("1 L") - Amount("1 L")), "0 L")
        self.assertEqual(str(-Amount("1.5 L")), "-1.5 L")
        self.assertEqual(str(Amount("45 °C") - Amount("104 °F")), "5 Δ°C")
        self.assertEqual(str(Amount("40 °C") + Amount("9 Δ°F")), "45 °C")
        self.assertEqual(str(Amount("0 L") * 10**40), "0 L")
        for refused in (
            lambda: Amount("40 °C") + Amount("40 °C"),
            lambda: Amount("40 °C") * 2,
            lambda: Amount("1 L") + Amount("1 kg"),
            lambda: Amount("1 L") < Amount("1 kg"),
        ):
            with self.assertRaises(QuantityError) as raised:
                refused()
            self.assertEqual(raised.exception.kind, "wrong_kind")
        with self.assertRaises(QuantityError) as raised:
            Amount("1 L") * 10**40
        self.assertEqual(raised.exception.kind, "out_of_range")
        for wrong in (
            lambda: Amount("1 L") * 1.5,
            lambda: Amount("1 L") + 1,
            lambda: 1 - Amount("1 L"),
            lambda: Amount("1 L") < "2 L",
        ):
            with self.assertRaises(TypeError):
                wrong()

    def test_equal_amounts_are_one_key(self) -> None:
        same = {Amount("1 L"), Amount("1.000 L"), Amount("1000 mL"), Amount("1000 cm³")}
        self.assertEqual(len(same), 1)
        self.assertNotEqual(Amount("1 L"), Amount("1 kg"))
        self.assertNotEqual(Amount("1 L"), 1)
        self.assertEqual(sorted(map(Amount, ["1 L", "1 US qt", "1 imp qt"]))[0], Amount("1 US qt"))

    def test_what_it_tells(self) -> None:
        amount = Amount("-1.50 L")
        self.assertEqual(amount.number, Decimal("-1.50"))
        self.assertEqual(str(amount.number), "-1.50")
        self.assertEqual((amount.mantissa, amount.decimals), (-150, 2))
        self.assertEqual((amount.unit, amount.kind), (Unit("L"), "volume"))
        self.assertEqual(str(amount.resolution), "0.01 L")
        self.assertEqual(float(amount), -1.5)
        self.assertEqual(amount.si, -0.0015)
        self.assertEqual(f"{amount:>10}|{amount}", "   -1.50 L|-1.50 L")

    def test_conversion_with_places(self) -> None:
        torque = Amount("12 N·m")
        self.assertEqual(str(torque.to("lbf·in", 1)), "106.2 lbf·in")
        self.assertEqual(str(torque.to(Unit("lbf·ft"), 0, "ceiling")), "9 lbf·ft")
        self.assertIsNone(torque.to_exact("L"))
        for places in (-1, 10, 300):
            with self.assertRaises(QuantityError) as raised:
                torque.to("lbf·in", places)
            self.assertEqual(raised.exception.kind, "too_many_digits")


class Units(unittest.TestCase):
    def test_all_units_read_their_own_symbol(self) -> None:
        units = Unit.all()
        self.assertGreater(len(units), 40)
        self.assertEqual([Unit(unit.symbol) for unit in units], units)
        self.assertEqual(len({unit.code for unit in units}), len(units))
        self.assertIs(type(units[0].ucum), str)

    def test_bare_measures_need_to_be_told(self) -> None:
        with self.assertRaises(QuantityError) as raised:
            Unit("qt")
        self.assertEqual(raised.exception.faults[0].allowed, ("US qt", "imp qt"))
        self.assertEqual(Unit.parse("qt", measures="imperial"), Unit("imp qt"))


class Intervals(unittest.TestCase):
    def test_ends(self) -> None:
        short = Interval("-2.0 L", Amount("-1.5 L"))
        self.assertEqual((str(short.lo), str(short.hi), str(short.width())), ("-2.0 L", "-1.5 L", "0.5 L"))
        self.assertIn("-1500 mL", short)
        self.assertNotIn(Amount("-1.49 L"), short)
        everything = Interval()
        self.assertEqual((everything.lo, everything.hi, everything.width()), (None, None, None))
        self.assertEqual(Interval.parse(str(short)), short)
        self.assertEqual(str(everything), "(-inf, +inf)")

    def test_refusals(self) -> None:
        for ends, kind in ((("1 L", "0 L"), "out_of_range"), (("0 L", "1 kg"), "wrong_kind")):
            with self.assertRaises(QuantityError) as raised:
                Interval(*ends)
            self.assertEqual(raised.exception.kind, kind)
        with self.assertRaises(QuantityError) as raised:
            Interval.parse("from here to there")
        self.assertEqual(raised.exception.kind, "not_a_number")


if __name__ == "__main__":
    unittest.main()
