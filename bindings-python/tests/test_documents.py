"""Documents as str, bytes and mappings, good ones and hostile ones."""

import json
import pickle
import unittest
from collections import OrderedDict
from collections.abc import Iterator, Mapping
from datetime import date, datetime, timedelta, timezone
from decimal import Decimal
from typing import Any

import jobs

from brimline import (
    Amount,
    BrimlineError,
    DocumentError,
    Interval,
    LevelCheck,
    LimitError,
    Limits,
    Pack,
    QuantityError,
    evaluate,
    evaluate_many,
    story,
)

TEXT = json.dumps(jobs.journal())
EXPECTED = evaluate(jobs.PACK, TEXT)
PACK_TEXT = jobs.PACK.to_json()


class Shelf(Mapping[str, Any]):
    """A mapping that is no dict."""

    def __init__(self, inner: dict[str, Any]) -> None:
        self.inner = inner

    def __getitem__(self, key: str) -> Any:
        return self.inner[key]

    def __iter__(self) -> Iterator[str]:
        return iter(self.inner)

    def __len__(self) -> int:
        return len(self.inner)


class EveryForm(unittest.TestCase):
    def test_the_job_is_decided(self) -> None:
        self.assertEqual(EXPECTED.verdict, "at_level")
        # At the level after 0.25 L ± 2 % by a meter and less 20 mL ± 20 mL by a jug: 0.205 to 0.255 L net.
        self.assertEqual(EXPECTED.as_found, Interval("-0.255 L", "-0.205 L"))
        self.assertEqual(EXPECTED.now, Interval("0 L", "0 L"))

    def test_journals(self) -> None:
        lines = "".join(json.dumps(line) + "\n" for line in [jobs.HEADER, *jobs.entries()])
        forms: list[Any] = [
            TEXT,
            TEXT.encode(),
            bytearray(TEXT.encode()),
            jobs.journal(),
            OrderedDict(jobs.journal()),
            Shelf({**jobs.HEADER, "entries": [Shelf(entry) for entry in jobs.entries()]}),
            lines,
            lines.encode(),
        ]
        for form in forms:
            self.assertEqual(evaluate(jobs.PACK, form), EXPECTED)

    def test_packs(self) -> None:
        for form in (PACK_TEXT, PACK_TEXT.encode(), json.loads(PACK_TEXT)):
            self.assertEqual(Pack.from_json(form), jobs.PACK)
            self.assertEqual(evaluate(form, TEXT), EXPECTED)

    def test_quantities_and_moments_in_a_mapping(self) -> None:
        journal = jobs.journal()
        pour = journal["entries"][9]
        pour["volume"] = Amount(Decimal("0.25"), "L")
        hour_ahead = timezone(timedelta(hours=1))
        moment = datetime.fromisoformat(pour["at"].replace("Z", "+00:00"))
        pour["at"] = moment.astimezone(hour_ahead)
        self.assertEqual(evaluate(jobs.PACK, journal), EXPECTED)
        journal["entries"][9]["at"] = datetime(2026, 3, 2, 9, 18)  # without its offset
        with self.assertRaises(DocumentError) as raised:
            evaluate(jobs.PACK, journal)
        self.assertEqual(raised.exception.faults[0].path, "entries[9].at")

    def test_an_ext_of_the_host_is_kept(self) -> None:
        journal = {**jobs.journal(), "ext": {"bay": 3, "Übergabe": ["morgen", None, 1.5]}}
        kept = LevelCheck.replay(jobs.PACK, journal).journal_lines().splitlines()[0]
        self.assertEqual(json.loads(kept)["ext"], journal["ext"])
        self.assertIn("Übergabe", kept)

    def test_what_has_no_place(self) -> None:
        for wrong in (None, 7, ["a list"], object()):
            with self.assertRaisesRegex(TypeError, "a document is str, bytes or a mapping, not"):
                evaluate(jobs.PACK, wrong)  # type: ignore[arg-type]
        with self.assertRaisesRegex(TypeError, "Decimal has no place in a document"):
            evaluate(jobs.PACK, {**jobs.HEADER, "entries": [{"seq": Decimal(1)}]})
        with self.assertRaises(TypeError):
            evaluate("{}")  # type: ignore[call-arg]
        with self.assertRaises(TypeError):
            evaluate(jobs.PACK, TEXT, True)  # type: ignore[misc]

    def test_flip_and_why_not_on_demand(self) -> None:
        self.assertIsNone(EXPECTED.flip)
        self.assertIsNone(EXPECTED.why_not)
        asked = evaluate(jobs.PACK, TEXT, flip=True, why_not="low")
        assert asked.flip is not None and asked.why_not is not None
        self.assertIn("temperature", [flip["changed"] for flip in asked.flip])
        self.assertGreater(len(asked.why_not), 0)
        self.assertEqual(asked.to_dict()["flip"], asked.flip)

    def test_a_story(self) -> None:
        told = story(jobs.PACK, jobs.journal())
        self.assertEqual(story(PACK_TEXT.encode(), TEXT), told)
        self.assertIn("0.25 L", told)
        with self.assertRaises(DocumentError):
            story(jobs.PACK, {})

    def test_a_day_as_text_or_date(self) -> None:
        asked = jobs.PACK.select(unit="pipit TRANSAXLE", day=date(2022, 1, 1))
        self.assertEqual(asked["answer"], "one")
        self.assertEqual(asked["candidates"][0]["edition"], 1)
        self.assertEqual(jobs.PACK.select(unit="Pipit transaxle", day="2022-01-01"), asked)


class Many(unittest.TestCase):
    def test_errors_stand_in_their_place(self) -> None:
        journals: list[Any] = [TEXT, b"\xff", jobs.journal(), "{", TEXT]
        answers = evaluate_many(jobs.PACK, (journal for journal in journals))
        kinds = [answer.kind if isinstance(answer, BrimlineError) else answer.verdict for answer in answers]
        self.assertEqual(kinds, ["at_level", "not_utf8", "at_level", "syntax", "at_level"])

    def test_none_and_wrong(self) -> None:
        self.assertEqual(evaluate_many(jobs.PACK, []), [])
        with self.assertRaises(TypeError):
            evaluate_many(jobs.PACK, [7])  # type: ignore[list-item]
        with self.assertRaises(DocumentError):
            evaluate_many("{", [TEXT])


class Hostile(unittest.TestCase):
    def refused(self, journal: Any, limits: Limits | None = None) -> BrimlineError:
        with self.assertRaises(BrimlineError) as raised:
            evaluate(jobs.PACK, journal, limits=limits)
        return raised.exception

    def test_not_utf8(self) -> None:
        text = TEXT.encode()
        error = self.refused(text[:30] + b"\xff" + text[30:])
        self.assertEqual((error.kind, error.faults[0].offset), ("not_utf8", 30))
        self.assertEqual(self.refused(TEXT.replace("check", "\ud800")).kind, "not_utf8")
        self.assertEqual(self.refused({**jobs.journal(), "job_id": "\udfff"}).kind, "not_utf8")
        with self.assertRaises(BrimlineError) as raised:
            Amount("1 \ud800")
        self.assertEqual(raised.exception.kind, "not_utf8")

    def test_lines_torn_within_a_character(self) -> None:
        header = (json.dumps(jobs.HEADER) + "\n").encode()
        torn = '{"seq":1,"note":"21 °'.encode()[:-1]
        for journal in [header + torn, bytearray(header + torn)]:
            answers = [evaluate(jobs.PACK, journal), evaluate_many(jobs.PACK, [journal])[0]]
            for answer in answers:
                assert not isinstance(answer, BrimlineError)
                self.assertEqual((answer.findings[0]["id"], answer.findings[0]["args"]), ("torn_line", {"bytes": len(torn)}))
            check = LevelCheck.replay(jobs.PACK, journal)
            self.assertEqual(pickle.loads(pickle.dumps(check)).evaluation(), check.evaluation())
            self.assertIn("Pipit transaxle", story(jobs.PACK, journal))
        # Not at the end, it is no power cut; nor is it in a text that is no lines.
        self.assertEqual(self.refused(header + torn + b"\n").kind, "not_utf8")
        self.assertEqual(self.refused(torn).kind, "not_utf8")

    def test_every_truncation(self) -> None:
        for end in range(0, len(TEXT), 7):
            self.assertIsInstance(self.refused(TEXT[:end]), DocumentError)

    def test_deep(self) -> None:
        self.assertEqual(self.refused("[" * 1_000_000).kind, "limit")
        self.assertEqual(self.refused('{"a":' * 1_000_000).kind, "limit")
        nested: dict[str, Any] = {}
        for _ in range(100_000):
            nested = {"a": nested}
        error = self.refused(nested)
        self.assertIsInstance(error, LimitError)
        self.assertIn("depth", error.message)
        while nested:  # taken apart here, since doing so in one go is as deep
            nested = nested["a"]

    def test_round(self) -> None:
        circle: dict[str, Any] = {}
        circle["entries"] = circle
        with self.assertRaises(ValueError):
            evaluate(jobs.PACK, circle)

    def test_large(self) -> None:
        error = self.refused(" " * 20_000_000)
        self.assertEqual((error.kind, error.faults[0].allowed), ("limit", ("up to 16777216",)))
        self.assertEqual(self.refused(jobs.journal(51), Limits(entries=50)).kind, "limit")
        self.assertEqual(self.refused({**jobs.journal(), "job_id": "x" * 10_001}).kind, "limit")
        many = {**jobs.HEADER, "entries": [{"kind": "?"}] * 200}
        *faults, last = self.refused(many, Limits(faults=7)).faults
        self.assertEqual((len(faults), last.kind), (7, "limit"))

    def test_not_json(self) -> None:
        for value in (float("nan"), float("inf")):
            error = self.refused({**jobs.journal(), "job_id": value})
            self.assertEqual(error.kind, "syntax")
        self.assertEqual(self.refused("").kind, "syntax")
        self.assertEqual(self.refused("\x00").kind, "syntax")
        twice = TEXT.replace('"job":', '"job": "check", "job":')
        self.assertEqual(self.refused(twice).faults[0].kind, "duplicate_field")

    def test_an_exception_of_the_host_passes(self) -> None:
        class Broken(Shelf):
            def __iter__(self) -> Iterator[str]:
                raise KeyError("the host's own")

        with self.assertRaisesRegex(KeyError, "the host's own"):
            evaluate(jobs.PACK, Broken({"a": 1}))
        with self.assertRaisesRegex(ZeroDivisionError, "division"):
            evaluate_many(jobs.PACK, (1 // 0 for _ in range(3)))  # type: ignore[misc]

    def test_hostile_texts_of_quantities(self) -> None:
        for text in ("", " ", "\x00", "9" * 100_000, "1 " + "x" * 100_000, "1/0 L", "-", "−", "1 L L", "∞ L"):
            with self.assertRaises(QuantityError) as raised:
                Amount(text)
            self.assertLess(len(str(raised.exception)), 2000)


if __name__ == "__main__":
    unittest.main()
