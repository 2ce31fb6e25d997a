"""The live shape: entries one by one, gates, advice, and the same answer as in one call."""

import pickle
import unittest
from datetime import datetime, timedelta, timezone
from typing import Any

import jobs

from brimline import Amount, DocumentError, LevelCheck, LimitError, Limits, QuantityError, evaluate


class Live(unittest.TestCase):
    def check(self, entries: list[dict[str, Any]]) -> LevelCheck:
        check = LevelCheck.start(jobs.PACK, jobs.HEADER)
        for entry in entries:
            check, _ = check.record(entry)
        return check

    def test_the_same_bytes_as_in_one_call(self) -> None:
        for count in range(len(jobs.entries()) + 1):
            live = self.check(jobs.entries(count))
            self.assertEqual(live.evaluation(), evaluate(jobs.PACK, jobs.journal(count)))
            self.assertEqual(live, LevelCheck.replay(jobs.PACK, live.journal_lines()))
        asked = self.check(jobs.entries()).evaluation(flip=True, why_not="low")
        self.assertEqual(asked, evaluate(jobs.PACK, jobs.journal(), flip=True, why_not="low"))

    def test_a_check_stays_as_it_was(self) -> None:
        entries = jobs.entries()
        short = self.check(entries[:9])
        longer, findings = short.record(entries[9])
        self.assertEqual(findings, [])
        self.assertEqual(short.evaluation().verdict, "low")
        self.assertEqual(len(longer.journal_lines().splitlines()), 11)
        self.assertEqual(len(short.journal_lines().splitlines()), 10)

    def test_findings_come_with_the_entry(self) -> None:
        check = self.check(jobs.entries(9))
        pour = {**jobs.entries()[9], "volume": "-0.25 L"}
        after, findings = check.record(pour)
        self.assertEqual([(finding["severity"], finding["entries"]) for finding in findings], [("stop", [10])])
        # Recorded, not booked: nothing is known to have gone in.
        self.assertEqual(after.evaluation().net_added, check.evaluation().net_added)

    def test_an_entry_may_come_twice(self) -> None:
        entry = {**jobs.entries()[0], "id": "tablet-7"}
        check = self.check([entry])
        again, findings = check.record(entry)
        self.assertEqual(again, check)
        self.assertEqual([finding["id"] for finding in findings], ["repeat_delivery"])

    def test_gates(self) -> None:
        check = self.check(jobs.entries(9))
        self.assertTrue(check.gate("pour", "0.25 L")["allowed"])
        for planned in ("0.3 L", Amount(300, "mL")):
            gate = check.gate("pour", planned)
            self.assertEqual([unmet["id"] for unmet in gate["unmet"]], ["step_exceeded"])
            self.assertEqual(gate["unmet"][0]["args"]["step"], "0.25 L")
        poured = self.check(jobs.entries(10))
        moment = datetime.fromisoformat(jobs.entries()[9]["at"].replace("Z", "+00:00")) + timedelta(seconds=30)
        for at in (moment, moment.astimezone(timezone(timedelta(hours=-5))).isoformat()):
            unmet = poured.gate("open", at=at)["unmet"]
            waits = [item["wait"] for item in unmet if item["id"] == "pour_settle"]
            self.assertEqual(waits, ["60 s"])  # 90 s are asked, 30 s are over

    def test_advice_is_the_next_of_the_answer(self) -> None:
        check = self.check(jobs.entries(9))
        self.assertEqual(check.advice(), check.evaluation().next)
        self.assertEqual(check.advice()[0]["id"], "pour")
        self.assertGreater(len(check.advice()[0]["cautions"]), 0)

    def test_limits_hold_live(self) -> None:
        check = LevelCheck.start(jobs.PACK, jobs.HEADER, limits=Limits(entries=1))
        check, _ = check.record(jobs.entries()[0])
        with self.assertRaises(LimitError):
            check.record(jobs.entries()[1])

    def test_limits_hold_in_a_replay(self) -> None:
        with self.assertRaises(LimitError):
            LevelCheck.replay(jobs.PACK, jobs.journal(2), limits=Limits(entries=1))
        check = LevelCheck.replay(jobs.PACK, jobs.journal(2), limits=Limits(entries=2))
        for own in (check, pickle.loads(pickle.dumps(check))):
            with self.assertRaises(LimitError):
                own.record(jobs.entries()[2])

    def test_a_bare_quart_is_one_of_the_check(self) -> None:
        for measures, unit in (("us", "US qt"), ("imperial", "imp qt")):
            header = {**jobs.HEADER, "profile": {"measures": measures}}
            check = LevelCheck.start(jobs.PACK, header)
            for entry in jobs.entries(9):
                check, _ = check.record(entry)
            for planned in ("1 qt", "0.1 qt"):
                self.assertEqual(check.gate("pour", planned), check.gate("pour", planned.replace("qt", unit)))
            self.assertNotEqual(check.gate("pour", "1 qt"), check.gate("pour", "0.1 qt"))
        with self.assertRaises(QuantityError) as raised:
            self.check([]).gate("pour", "1 qt")
        self.assertEqual(raised.exception.kind, "unit_ambiguous")
        with self.assertRaisesRegex(TypeError, "an amount is an Amount or its text"):
            self.check([]).gate("pour", 1)  # type: ignore[arg-type]

    def test_a_correction_takes_effect_at_its_place(self) -> None:
        entries = jobs.entries()
        correction = {
            "seq": 13,
            "at": "2026-03-02T10:00:00Z",
            "kind": "correction",
            "of": 12,
            "reason": "it was a stream",
            "replaces": {**entries[11], "grade": "stream"},
        }
        check = self.check(entries)
        corrected, _ = check.record(correction)
        self.assertEqual((check.evaluation().verdict, corrected.evaluation().verdict), ("at_level", "over"))

    def test_headers_are_read_whole(self) -> None:
        with self.assertRaises(DocumentError) as raised:
            LevelCheck.start(jobs.PACK, {"format": "brimline-journal/2", "job": "polish"})
        paths = [fault.path for fault in raised.exception.faults]
        self.assertIn("format", paths)


if __name__ == "__main__":
    unittest.main()
