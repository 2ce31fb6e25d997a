"""Tellings by a host's own teller: its words and units, its refusals, and English where nothing else is given."""

import copy
import json
import pickle
import unittest
from typing import Any

import jobs
from brimline import (
    BrimlineError,
    DocumentError,
    History,
    LevelCheck,
    PriceList,
    QuantityError,
    Record,
    Teller,
)

PRICES = PriceList.embedded()
CHECK = LevelCheck.replay(jobs.PACK, jobs.journal())
RECORD = Record.seal(jobs.PACK, {**jobs.journal(), "subject": {"vehicle": "Tarnik Dale 12"}})
OLD = {"id": "4711", "verdict": "low", "journal": jobs.journal()}


def marked() -> Teller:
    """Every English text between marks, with a comma, in hundredths of a gallon."""

    def texts(value: Any) -> Any:
        return {name: texts(own) for name, own in value.items()} if isinstance(value, dict) else f"«{value}»"

    messages = json.loads(Teller().messages_json())
    messages["messages"] = texts(messages["messages"])
    messages["decimal_sign"] = ","
    shop = {"format": "brimline-profile/1", "units": {"volume": {"unit": "US gal", "decimals": 2}}}
    return Teller(messages, shop)


class ByATeller(unittest.TestCase):
    def tellings(self, teller: Teller) -> dict[str, str]:
        history = History.of([RECORD])
        return {
            "estimate": teller.estimate(PRICES, CHECK, {"planned": "0.25 L", "ceiling": "300 EUR"}),
            "invoice": teller.invoice(PRICES, CHECK),
            "history": teller.history(history),
            "comebacks": teller.comebacks([RECORD]),
            "follow_up": teller.follow_up(RECORD, history=history),
            "shadow": teller.shadow(jobs.PACK, [OLD]),
            "audit": teller.audit(PRICES, jobs.PACK, [RECORD], billed=["0.1 L"]),
        }

    def test_each_is_in_the_words_and_units_of_the_host(self) -> None:
        for teller in (marked(), copy.deepcopy(marked()), pickle.loads(pickle.dumps(marked()))):
            told = self.tellings(teller)
            for name, text in told.items():
                self.assertGreater(text.count("«"), 1, name)
                self.assertEqual(text.count("«"), text.count("»"), name)
        # 0.25 L is 0.066 gal, and costs 5.30 EUR at 21.20 EUR/L.
        self.assertIn("0,07 US gal", told["estimate"])
        self.assertIn("5,30 EUR", told["invoice"])
        self.assertIn("US gal", told["history"])
        # 0.25 L less 0.1 L at 21.20 EUR/L.
        self.assertIn("3,18 EUR", told["audit"])
        self.assertIn("4711", told["shadow"])

    def test_without_documents_it_is_english(self) -> None:
        told = self.tellings(Teller())
        self.assertEqual(told["history"], History.of([RECORD]).text())
        headings = {name: text.splitlines()[0] for name, text in told.items()}
        self.assertEqual(headings["estimate"], "Best")
        self.assertEqual(headings["comebacks"], "What may come back")
        self.assertEqual(headings["follow_up"], "When to look again")
        self.assertEqual(headings["shadow"], "Where the old rule differs")
        self.assertEqual(headings["audit"], "What it cost, without tax")
        for name in ("estimate", "invoice", "history", "comebacks", "follow_up", "audit"):
            self.assertIn("Cautions", told[name].splitlines(), name)

    def test_what_is_refused_is_refused_as_without_a_teller(self) -> None:
        teller = marked()
        refused: list[tuple[type[Exception], Any]] = [
            (DocumentError, lambda: teller.estimate(PRICES, CHECK, {"ceilings": "80 EUR"})),
            (BrimlineError, lambda: teller.estimate(PRICES, CHECK, {"ceiling": "1 EUR"})),
            (DocumentError, lambda: teller.invoice(PRICES, CHECK, "{")),
            (DocumentError, lambda: teller.comebacks([RECORD], rules={"soon": 1})),
            (DocumentError, lambda: teller.follow_up(RECORD, rules={"soon": 1})),
            (DocumentError, lambda: teller.shadow(jobs.PACK, [{"id": "4711"}])),
            (QuantityError, lambda: teller.audit(PRICES, jobs.PACK, [RECORD], billed=["1 kg"])),
            (BrimlineError, lambda: teller.verdict("full")),  # type: ignore[arg-type]
            (TypeError, lambda: teller.history([RECORD])),  # type: ignore[arg-type]
            (TypeError, lambda: teller.estimate(CHECK, PRICES)),  # type: ignore[arg-type]
            (TypeError, lambda: teller.comebacks(RECORD)),  # type: ignore[arg-type]
            (TypeError, lambda: teller.audit(PRICES, jobs.PACK, [None])),  # type: ignore[list-item]
        ]
        for kind, call in refused:
            with self.assertRaises(kind):
                call()

    def test_ids_have_their_words(self) -> None:
        teller = marked()
        self.assertEqual(teller.lack("batch"), "«The batch of the fluid is not stated.»")
        self.assertIsNone(teller.lack("moon"))
        self.assertEqual(teller.answered("leak", "response", "report"), "«Report it to whoever decides about the repair.»")
        self.assertIsNone(teller.answered("leak", "response", "moon"))
        self.assertTrue(teller.verdict("at_level").startswith("«At level: "))
        found = jobs.PACK.lint()
        told = teller.lint(jobs.PACK)
        self.assertEqual(len(told), len(found))
        self.assertTrue(all(line.startswith("«") for line in told))


if __name__ == "__main__":
    unittest.main()
