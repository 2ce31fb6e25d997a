"""Objects as values: frozen, equal, hashed, copied, pickled, shared by threads."""

import copy
import inspect
import pickle
import subprocess
import sys
import threading
import time
import unittest
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from typing import Any

import jobs

import brimline
from brimline import (
    Amount,
    Interval,
    LevelCheck,
    LimitError,
    Limits,
    Pack,
    Record,
    Unit,
    convert,
    evaluate,
    evaluate_many,
    story,
)


def values() -> list[tuple[Any, Any]]:
    """Each value beside another of its class."""
    job = evaluate(jobs.PACK, jobs.journal(), flip=True)
    check = LevelCheck.replay(jobs.PACK, jobs.journal(9))
    later, _ = check.record(jobs.entries()[9])
    bare = {"format": "brimline-pack/1", "id": "bare", "version": "1", "title": "Bare"}
    other = Pack.from_json({**bare, "fluids": [], "procedures": []})
    return [
        (Amount("1.50 L"), Amount("1.51 L")),
        (Amount("9 Δ°F"), Amount("9 °F")),
        (Unit("lbf·ft"), Unit("lbf·in")),
        (Interval("-2 L", "0 L"), Interval("-2 L", None)),
        (Interval(), Interval("0 L")),
        (Limits(entries=5, depth=9), Limits(entries=5)),
        (jobs.PACK, other),
        (job, evaluate(jobs.PACK, jobs.journal())),
        (Record.seal(jobs.PACK, jobs.journal()), Record.seal(jobs.PACK, jobs.journal(9))),
        (check, later),
        (later, check),
        (LevelCheck.start(jobs.PACK, jobs.HEADER), check),
    ]


class Values(unittest.TestCase):
    def test_pickles_and_copies_are_equal(self) -> None:
        for value, other in values():
            self.assertNotEqual(value, other)
            again = [copy.copy(value), copy.deepcopy(value)]
            for protocol in range(2, pickle.HIGHEST_PROTOCOL + 1):
                again.append(pickle.loads(pickle.dumps(value, protocol)))
            for twin in again:
                self.assertEqual(twin, value)
                self.assertEqual(hash(twin), hash(value))
                self.assertEqual(repr(twin), repr(value))

    def test_a_pickled_evaluation_says_the_same(self) -> None:
        evaluation = evaluate(jobs.PACK, jobs.journal(), flip=True, why_not="low")
        again = pickle.loads(pickle.dumps(evaluation))
        self.assertEqual(again.to_json(), evaluation.to_json())
        self.assertEqual(again.text(), evaluation.text())
        self.assertEqual(again.sentences(), evaluation.sentences())
        for name in ("verdict", "as_found", "net_added", "now", "leak", "gates", "flip", "why_not"):
            self.assertEqual(getattr(again, name), getattr(evaluation, name))

    def test_a_pickled_check_says_the_same(self) -> None:
        torn = LevelCheck.start(jobs.PACK, jobs.HEADER).journal_lines() + '{"seq":1,"at":"2026-03-02T'
        check = LevelCheck.replay(jobs.PACK, torn)
        self.assertIn("torn_line", [finding["id"] for finding in check.evaluation().findings])
        for entry in jobs.entries():
            check, _ = check.record(entry)
        self.assertNotEqual(check, LevelCheck.replay(jobs.PACK, check.journal_lines()))
        again = pickle.loads(pickle.dumps(check))
        self.assertEqual(again.evaluation().to_json(), check.evaluation().to_json())
        self.assertEqual(again.journal_lines(), check.journal_lines())

    def test_a_pickled_check_keeps_its_limits(self) -> None:
        check = LevelCheck.start(jobs.PACK, jobs.HEADER, limits=Limits(entries=2))
        check, _ = check.record(jobs.entries()[0])
        again = pickle.loads(pickle.dumps(check))
        again, _ = again.record(jobs.entries()[1])
        with self.assertRaises(LimitError):
            again.record(jobs.entries()[2])

    def test_hashes_are_the_same_in_every_process(self) -> None:
        code = "import brimline; print(hash(brimline.Amount('1.5 L')), hash(brimline.Unit('L')))"
        said = subprocess.run([sys.executable, "-B", "-c", code], capture_output=True, check=True, text=True)
        self.assertEqual(said.stdout.split(), [str(hash(Amount("1500 mL"))), str(hash(Unit("L")))])

    def test_frozen(self) -> None:
        for value, _ in values():
            with self.assertRaises((AttributeError, TypeError)):
                value.unit = 1
            with self.assertRaises((AttributeError, TypeError)):
                value.note = 1
            with self.assertRaises(TypeError):
                type("Mine", (type(value),), {})

    def test_answers_are_the_callers_own(self) -> None:
        evaluation = evaluate(jobs.PACK, jobs.journal())
        evaluation.gates["pour"]["allowed"] = True
        evaluation.to_dict()["verdict"] = "low"
        self.assertFalse(evaluation.gates["pour"]["allowed"])
        self.assertEqual(evaluation.to_dict()["verdict"], "at_level")

    def test_representations_tell_what_it_is(self) -> None:
        for value in (Amount("-1.50 L"), Unit("Δ°C"), Interval("0 L", None), Limits(faults=3)):
            names = {"Amount": Amount, "Unit": Unit, "Interval": Interval, "Limits": Limits}
            self.assertEqual(eval(repr(value), names), value)
        self.assertEqual(repr(jobs.PACK)[:19], "<Pack fernhollow 3,")
        three = LevelCheck.replay(jobs.PACK, jobs.journal(3))
        self.assertEqual(repr(three), "<LevelCheck of 3 entries on pack fernhollow>")
        self.assertIn("at_level", repr(evaluate(jobs.PACK, jobs.journal())))


class Threads(unittest.TestCase):
    def test_one_pack_in_many_threads(self) -> None:
        expected = [evaluate(jobs.PACK, jobs.journal(count)).to_json() for count in range(13)]
        check = LevelCheck.start(jobs.PACK, jobs.HEADER)

        def work(count: int) -> str:
            own = check
            for entry in jobs.entries(count):
                own, _ = own.record(entry)
            self.assertEqual(convert(count, "L", "mL"), count * 1000)
            self.assertEqual(own.evaluation().to_json(), expected[count])
            return evaluate(jobs.PACK, jobs.journal(count)).to_json()

        with ThreadPoolExecutor(8) as pool:
            answers = list(pool.map(work, [count % 13 for count in range(200)]))
        self.assertEqual(answers, [expected[count % 13] for count in range(200)])

    def test_long_calls_let_other_threads_run(self) -> None:
        journal = LevelCheck.replay(jobs.PACK, jobs.journal(4000)).journal_lines()
        calls: list[Callable[[], Any]] = [
            lambda: evaluate(jobs.PACK, journal),
            lambda: evaluate_many(jobs.PACK, [journal]),
            lambda: LevelCheck.replay(jobs.PACK, journal),
            lambda: story(jobs.PACK, journal),
        ]
        for call in calls:
            # One try is enough, unless the machine has something else to do.
            tries = (ran_beside(call) for _ in range(20))
            self.assertTrue(any(tries))


def ran_beside(call: Callable[[], Any]) -> bool:
    """Whether this thread ran in the middle half of a call in another."""
    span: list[float] = []

    def work() -> None:
        span.append(time.perf_counter())
        call()
        span.append(time.perf_counter())

    thread = threading.Thread(target=work)
    ticks: list[float] = []
    thread.start()
    while thread.is_alive():
        time.sleep(0.0005)
        ticks.append(time.perf_counter())
    thread.join()
    start, end = span
    quarter = (end - start) / 4
    return any(start + quarter < tick < end - quarter for tick in ticks)


class Import(unittest.TestCase):
    def test_nothing_else_is_imported(self) -> None:
        code = (
            "import sys; before = set(sys.modules); import brimline; "
            "print(*sorted(set(sys.modules) - before))"
        )
        said = subprocess.run([sys.executable, "-B", "-c", code], capture_output=True, check=True, text=True)
        rooms = {name for name in brimline.__all__ if inspect.ismodule(getattr(brimline, name))}
        own = {"brimline", "brimline._native", "brimline.errors"}
        self.assertEqual(set(said.stdout.split()), own | {f"brimline.{room}" for room in rooms})


if __name__ == "__main__":
    unittest.main()
