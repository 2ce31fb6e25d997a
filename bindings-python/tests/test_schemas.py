"""The shapes of documents are those of their JSON Schemas: the same members, required and not, and the same words."""

import json
import types
import typing
import unittest
from pathlib import Path
from typing import Any

from brimline import answers, billed, kept

FOLDER = Path(__file__).parents[2] / "core" / "schemas"

DOCUMENTS: dict[str, Any] = {
    "result:1": answers.Outcome,
    "record:1": answers.RecordDocument,
    "estimate:1": billed.Estimate,
    "invoice:1": billed.Invoice,
    "invoice:1#/$defs/waste": billed.Waste,
    "history:1": kept.HistoryDocument,
    "comebacks:1": kept.ComebacksDocument,
    "follow-up:1": kept.FollowUpDocument,
    "audit:1": kept.AuditDocument,
    "shadow:1": kept.ShadowDocument,
}

NO_DOCUMENT = {
    "Candidate",
    "Difference",
    "Formats",
    "GateSentences",
    "Lack",
    "LintFinding",
    "Mixing",
    "Offer",
    "RecordDifference",
    "Selection",
    "Sentences",
    "Statement",
    "Versions",
}
"""Shapes of answers that are no part of a document."""

TYPES = {"string": str, "integer": int, "boolean": bool, "null": type(None)}


class Fewer(typing.TypedDict):
    """A member is missing."""

    stream: typing.Literal["oil", "mixed"]
    volume: str
    between: answers.Ends
    entries: list[int]


class Other(Fewer):
    """A member is of another type."""

    unmeasured: list[str]


class Loose(Fewer, total=False):
    """A member is not required."""

    unmeasured: list[int]


class Schemas(unittest.TestCase):
    def setUp(self) -> None:
        self.seen: set[str] = set()

    def resolved(self, name: str, schema: Any) -> tuple[str, Any]:
        """A schema without references, and the name of the file it stands in."""
        while "$ref" in schema:
            file, _, place = schema["$ref"].partition("#")
            name = file.split(":")[3] if file else name
            schema = json.loads((FOLDER / f"{name}.schema.json").read_text(encoding="utf-8"))
            for step in place.split("/")[1:]:
                schema = schema[step]
        return name, schema

    def types_of(self, name: str, schema: Any) -> set[type]:
        """The types of a single value."""
        name, schema = self.resolved(name, schema)
        words = schema.get("enum", [schema["const"]] if "const" in schema else [])
        named = schema.get("type", [])
        several = [self.types_of(name, one) for one in schema.get("oneOf", [])]
        own = {TYPES[one] for one in ([named] if isinstance(named, str) else named)}
        return own.union({type(word) for word in words}, *several)

    def compare(self, shape: Any, name: str, schema: Any, path: str) -> None:
        name, schema = self.resolved(name, schema)
        origin, inner = typing.get_origin(shape), typing.get_args(shape)
        if typing.is_typeddict(shape):
            self.seen.add(shape.__name__)
            members, required = typing.get_type_hints(shape), schema.get("required", [])
            self.assertIs(schema["additionalProperties"], False, path)
            self.assertEqual(set(members), set(schema["properties"]), path)
            self.assertEqual(set(shape.__required_keys__), set(required), path)
            for member, about in schema["properties"].items():
                self.compare(members[member], name, about, f"{path}.{member}")
        elif origin is typing.Literal:
            self.assertEqual(set(inner), set(schema["enum"]), path)
        elif origin is list:
            self.assertEqual(schema["type"], "array", path)
            for item in schema.get("prefixItems") or [schema["items"]]:
                self.compare(inner[0], name, item, f"{path}[]")
        elif origin is dict:
            self.assertEqual(schema["type"], "object", path)
            if inner[1] is not Any:
                self.compare(inner[1], name, schema["additionalProperties"], f"{path}.*")
        else:
            expected = set(inner) if origin in (types.UnionType, typing.Union) else {shape}
            self.assertEqual(expected, self.types_of(name, schema), path)

    def test_documents(self) -> None:
        for place, shape in DOCUMENTS.items():
            self.compare(shape, "", {"$ref": f"urn:brimline:schema:{place}"}, place)
        shapes = {
            name
            for module in (answers, billed, kept)
            for name in module.__all__
            if typing.is_typeddict(getattr(module, name))
        }
        self.assertEqual({name for name in self.seen if not name.startswith("_")}, shapes - NO_DOCUMENT)
        self.assertGreater(len(self.seen), 40)

    def test_a_difference_is_seen(self) -> None:
        waste = {"$ref": "urn:brimline:schema:invoice:1#/$defs/waste"}
        for wrong in (Fewer, Other, Loose):
            with self.subTest(wrong.__name__), self.assertRaises(AssertionError):
                self.compare(wrong, "", waste, "waste")

    def test_every_answer_has_its_shape(self) -> None:
        """A document that is answered has a schema, and every schema of an answer is compared."""
        formats = {path.name.partition(".")[0] for path in FOLDER.iterdir()}
        answered = {place.partition(":")[0] for place in DOCUMENTS}
        given = {"pack", "journal", "prices", "messages", "profile", "error"}
        asked = {"header", "asked", "particulars", "comeback-rules", "follow-up-rules", "old-job"}
        self.assertEqual(formats, answered | given | asked)


if __name__ == "__main__":
    unittest.main()
