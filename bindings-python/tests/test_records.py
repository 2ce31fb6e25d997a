"""Records: sealed, reopened, and what they say without their pack."""

import json
import unittest

import jobs
from brimline import BrimlineError, DocumentError, LimitError, Limits, Pack, Record, evaluate


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


if __name__ == "__main__":
    unittest.main()
