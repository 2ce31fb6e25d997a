"""Records: sealed, reopened, and what they say without their pack."""

import json
import pickle
import subprocess
import sys
import tempfile
import unittest
from pathlib import Path

import jobs
from brimline import (
    BrimlineError,
    DocumentError,
    KeptJournal,
    LevelCheck,
    LimitError,
    Limits,
    Pack,
    Record,
    evaluate,
)


class Records(unittest.TestCase):
    def setUp(self) -> None:
        self.record = Record.seal(jobs.PACK, jobs.journal())

    def test_it_says_what_the_evaluation_said(self) -> None:
        evaluation = evaluate(jobs.PACK, jobs.journal())
        for record in (self.record, Record.reopen(self.record.to_json().encode())):
            self.assertEqual(record.result, evaluation.to_dict())
            for name in ("verdict", "as_found", "net_added", "now", "leak", "findings", "procedure", "rules"):
                self.assertEqual(getattr(record, name), getattr(evaluation, name), name)
            self.assertEqual((record.began, record.ended), (jobs.entries()[0]["at"], jobs.entries()[-1]["at"]))
            self.assertEqual(record.pack, {"id": "fernhollow", "version": "3", "digest": jobs.PACK.digest})
            self.assertEqual(record.journal["entries"], jobs.entries())
        self.assertEqual(json.loads(self.record.to_json()), self.record.to_dict())
        self.assertEqual(self.record.to_dict()["digest"], self.record.digest)

    def test_a_changed_byte_is_noticed(self) -> None:
        kept = self.record.to_json()
        with self.assertRaises(BrimlineError) as refused:
            Record.reopen(kept.replace("0.25 L", "0.35 L"))
        self.assertEqual((refused.exception.kind, refused.exception.code), ("changed", 15))
        self.assertEqual(refused.exception.faults[0].path, "digest")
        with self.assertRaises(DocumentError):
            Record.reopen(kept[:-1])
        with self.assertRaises(LimitError):
            Record.reopen(kept, limits=Limits(bytes=100))
        with self.assertRaises(TypeError):
            Record.reopen(7)  # type: ignore[arg-type]

    def test_another_pack_is_told(self) -> None:
        newer = Pack.from_json(jobs.PACK.to_json().replace('"version":"3"', '"version":"4"'))
        with self.assertRaises(BrimlineError) as refused:
            self.record.reevaluate(newer, "as_recorded")
        self.assertEqual([fault.path for fault in refused.exception.faults], ["pack.version", "pack.digest"])
        told = self.record.reevaluate(newer, "latest")
        self.assertEqual(told[0], {"path": "pack.version", "was": "3", "now": "4"})
        with self.assertRaises(BrimlineError):
            self.record.reevaluate(jobs.PACK, "yesterday")  # type: ignore[arg-type]

    def test_it_tells_what_it_lacks(self) -> None:
        self.assertRegex(repr(self.record), r"^<Record at_level, digest [0-9a-f]{12}>$")
        ids = {lack["id"] for lack in self.record.evidence()}
        self.assertLessEqual({"vehicle", "technician", "batch", "closing"}, ids)


class Memory:
    """A storage of so many bytes."""

    def __init__(self, kept: bytes = b"", room: int = 1_000_000) -> None:
        self.kept, self.room = kept, room

    def append(self, data: bytes) -> None:
        self.kept += data[: max(0, self.room - len(self.kept))]
        if len(self.kept) == self.room:
            raise OSError("no room is left")

    def truncate(self, length: int) -> None:
        self.kept = self.kept[:length]


class Journals(unittest.TestCase):
    def test_what_is_kept_is_the_journal(self) -> None:
        storage = Memory()
        journal = KeptJournal.start(jobs.PACK, jobs.HEADER, storage)
        for entry in jobs.entries():
            journal.append(entry)
        self.assertEqual(storage.kept.decode(), journal.check.journal_lines())
        self.assertEqual(journal.check.evaluation(), evaluate(jobs.PACK, jobs.journal()))
        self.assertEqual(pickle.loads(pickle.dumps(journal.check)), journal.check)
        self.assertEqual(repr(journal), "<KeptJournal of 12 entries on pack fernhollow>")

    def test_what_is_not_kept_is_not_recorded(self) -> None:
        storage = Memory()
        journal = KeptJournal.start(jobs.PACK, jobs.HEADER, storage)
        whole = len(storage.kept)
        storage.room = whole + 10
        with self.assertRaises(BrimlineError) as refused:
            journal.append(jobs.entries()[0])
        self.assertEqual((refused.exception.kind, refused.exception.code), ("storage", 16))
        self.assertEqual(refused.exception.faults[0].path, "storage.append")
        self.assertIsInstance(refused.exception.__cause__, OSError)
        self.assertEqual(len(storage.kept), whole + 10)
        self.assertEqual(journal.check, LevelCheck.start(jobs.PACK, jobs.HEADER))

        storage.room = 1_000_000
        recovered = KeptJournal.recover(jobs.PACK, storage.kept, storage)
        self.assertEqual(recovered.dropped_bytes, 10)
        recovered.append(jobs.entries()[0])
        self.assertEqual(storage.kept.decode(), recovered.check.journal_lines())

    def test_a_header_that_was_cut_off(self) -> None:
        with self.assertRaises(BrimlineError) as refused:
            KeptJournal.recover(jobs.PACK, b'{"format"', Memory())
        self.assertEqual(refused.exception.kind, "unresolved")

    def test_a_storage_cannot_write_to_its_own_journal(self) -> None:
        class Impatient(Memory):
            def append(self, data: bytes) -> None:
                super().append(data)
                if held:
                    held[0].append(jobs.entries()[1])

        held: list[KeptJournal] = []
        held.append(KeptJournal.start(jobs.PACK, jobs.HEADER, Impatient()))
        with self.assertRaises(BrimlineError) as refused:
            held[0].append(jobs.entries()[0])
        self.assertIsInstance(refused.exception.__cause__, RuntimeError)

    def test_the_example_takes_its_journal_up_again(self) -> None:
        example = Path(__file__).parents[2] / "examples/python/keep_a_journal.py"
        with tempfile.TemporaryDirectory() as folder:
            file = Path(folder, "journal.jsonl")
            told = []
            for entries in (jobs.entries(9), jobs.entries()[9:]):
                lines = "".join(json.dumps(entry) + "\n" for entry in entries)
                run = subprocess.run(
                    [sys.executable, example, file], input=lines, capture_output=True, text=True, check=True
                )
                told += run.stdout.splitlines()
                with file.open("ab") as torn:
                    torn.write(b'{"seq":')
        self.assertEqual(told[8], "kept, low")
        self.assertEqual(told[9], "7 bytes of a line were cut off")
        self.assertEqual(told[-1], "kept, at_level")


if __name__ == "__main__":
    unittest.main()
