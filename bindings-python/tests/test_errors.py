"""What is raised: the classes, their fields, their text."""

import json
import pickle
import unittest
from typing import Any

import jobs

from brimline import (
    Amount,
    BrimlineError,
    DocumentError,
    Fault,
    InternalError,
    LevelCheck,
    LimitError,
    Limits,
    Pack,
    QuantityError,
    evaluate,
)
from brimline.errors import refusal

NINE_WRONGS: dict[str, Any] = {
    **jobs.HEADER,
    "jobb": 1,
    "entries": [
        {"seq": 1, "at": "yesterday", "kind": "engine", "state": "humming"},
        {"seq": 1, "at": "2026-03-02T09:00:00Z", "kind": "added", "volume": "1.2 oz", "measured_by": "jug"},
    ],
}


def refused(call: Any, *arguments: Any, **named: Any) -> BrimlineError:
    try:
        answer = call(*arguments, **named)
    except BrimlineError as error:
        return error
    raise AssertionError(f"not refused: {answer!r}")


class Families(unittest.TestCase):
    def test_by_what_was_handed_in(self) -> None:
        check = LevelCheck.start(jobs.PACK, jobs.HEADER)
        cases: list[tuple[BrimlineError, type[BrimlineError], str]] = [
            (refused(Amount, "9"), QuantityError, "unit_missing"),
            (refused(evaluate, jobs.PACK, "{"), DocumentError, "syntax"),
            (refused(evaluate, jobs.PACK, NINE_WRONGS), DocumentError, "unknown_field"),
            (refused(Pack.from_json, {}), DocumentError, "missing_field"),
            (refused(check.record, {}), DocumentError, "missing_field"),
            (refused(evaluate, jobs.PACK, "{}", limits=Limits(bytes=1)), LimitError, "limit"),
            (refused(jobs.PACK.select), BrimlineError, "conflict"),
            (refused(jobs.PACK.compare, "pipit-level", 1, 9), BrimlineError, "unresolved"),
            (refused(check.gate, "dance"), BrimlineError, "unknown_value"),
            (refused(check.gate, "pour", at="noon"), BrimlineError, "not_a_time"),
            (refused(check.gate, "pour", "1 oz"), QuantityError, "unit_ambiguous"),
            (refused(Amount("1 L").to, "mL", 1, "nearest"), BrimlineError, "unknown_value"),
        ]
        for error, family, kind in cases:
            self.assertIs(type(error), family, error)
            self.assertEqual(error.kind, kind)
            self.assertIsInstance(error, ValueError)

    def test_a_defect_is_an_exception_of_the_package(self) -> None:
        defect = refusal("defect in the library", (Fault("internal", got="overflow"),))
        self.assertIs(type(defect), InternalError)
        self.assertEqual((defect.kind, defect.code), ("internal", 90))

    def test_words_are_told(self) -> None:
        error = refused(Amount("1 L").to, "mL", 1, "nearest")
        words = ("half_even", "half_up", "down", "up", "floor", "ceiling")
        self.assertEqual(error.faults[0].allowed, words)


class Fields(unittest.TestCase):
    def test_every_fault_at_once(self) -> None:
        error = refused(evaluate, jobs.PACK, NINE_WRONGS)
        paths = [fault.path for fault in error.faults]
        self.assertEqual(
            sorted(paths),
            ["entries[0].at", "entries[0].state", "entries[1].seq", "entries[1].volume", "jobb"],
        )
        self.assertEqual(error.message, "\n".join(map(str, error.faults)))
        self.assertEqual(str(error), error.message)

    def test_the_place_in_the_text(self) -> None:
        text = '{"format":"brimline-journal/1",\n "procedure":"wä", "jöb":"check"}'
        error = refused(evaluate, jobs.PACK, text)
        fault = next(fault for fault in error.faults if fault.path == "jöb")
        start = text.index('"check"')
        self.assertEqual(fault.line, 2)
        self.assertEqual(fault.column, start - text.index("\n"))
        self.assertEqual(fault.offset, len(text[:start].encode()))

    def test_the_error_document(self) -> None:
        error = refused(Amount, "1.2 oz")
        document = json.loads(error.to_json())
        fault = error.faults[0]
        self.assertEqual(list(document), ["kind", "code", "message", "faults"])
        self.assertEqual(document["message"], error.message)
        self.assertEqual(document["faults"][0]["allowed"], list(fault.allowed))
        self.assertEqual(document["faults"][0]["hint"], fault.hint)
        self.assertEqual((fault.line, fault.column, fault.offset, fault.path), (None, None, None, ""))

    def test_errors_travel(self) -> None:
        for error in (refused(Amount, "1.2 oz"), refused(evaluate, jobs.PACK, NINE_WRONGS)):
            for protocol in range(2, pickle.HIGHEST_PROTOCOL + 1):
                again = pickle.loads(pickle.dumps(error, protocol))
                self.assertIs(type(again), type(error))
                self.assertEqual(again.faults, error.faults)
                self.assertEqual(again.to_json(), error.to_json())

    def test_faults_are_values(self) -> None:
        fault = refused(evaluate, jobs.PACK, NINE_WRONGS).faults[0]
        self.assertEqual(eval(repr(fault), {"Fault": Fault}), fault)
        self.assertEqual(len({fault, pickle.loads(pickle.dumps(fault))}), 1)
        with self.assertRaises(AttributeError):
            fault.path = "elsewhere"  # type: ignore[misc]

    def test_nothing_is_left_half_done(self) -> None:
        check = LevelCheck.start(jobs.PACK, jobs.HEADER)
        check, _ = check.record(jobs.entries()[0])
        before = check.journal_lines()
        refused(check.record, jobs.entries()[0])  # the same seq again
        self.assertEqual(check.journal_lines(), before)


if __name__ == "__main__":
    unittest.main()
