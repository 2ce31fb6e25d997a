"""What the package says of itself: docstrings whose examples run, help, signatures, annotations."""

import ast
import contextlib
import doctest
import inspect
import io
import json
import pydoc
import types
import typing
import unittest
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import jobs
from answer_vectors import by_name

import brimline
from brimline import LevelCheck, answers, billed, calculated, errors, evaluate, kept, observed


def public() -> Iterator[tuple[str, Any]]:
    """Every public object by name, those of the rooms after their modules."""
    for name in brimline.__all__:
        value = getattr(brimline, name)
        yield name, value
        if inspect.ismodule(value):
            yield from ((f"{name}.{inner}", getattr(value, inner)) for inner in value.__all__)


def documented() -> Iterator[tuple[str, Any]]:
    """Every public object and every public attribute of its own, by name."""
    for name, value in public():
        yield name, value
        if inspect.isclass(value):
            for inner in vars(value):
                if not inner.startswith("_"):
                    yield f"{name}.{inner}", getattr(value, inner)


class Docstrings(unittest.TestCase):
    def test_everything_is_documented(self) -> None:
        names = [name for name, value in documented() if not getattr(value, "__doc__", None)]
        fields = ["BrimlineError.message", "BrimlineError.faults"]
        self.assertEqual([name for name in names if name not in fields], [])
        self.assertGreater(len(list(documented())), 80)

    def test_examples_run(self) -> None:
        parser, said = doctest.DocTestParser(), io.StringIO()
        runner = doctest.DocTestRunner(optionflags=doctest.ELLIPSIS)
        shown = []
        for name, value in documented():
            test = parser.get_doctest(inspect.getdoc(value) or "", {}, name, None, None)
            if test.examples:
                shown.append(name)
                runner.run(test, out=said.write)
        self.assertEqual(runner.failures, 0, said.getvalue())
        own = [name for name, value in public() if not (inspect.ismodule(value) or is_error(value))]
        self.assertEqual([name for name in own if name not in shown], [])

    def test_the_readme_runs(self) -> None:
        readme = (Path(__file__).parents[1] / "README.md").read_text(encoding="utf-8")
        blocks = [block.split("```")[0] for block in readme.split("```python\n")[1:]]
        names = {"journal": jobs.journal(), "header": jobs.HEADER, "entry": jobs.entries()[0]}
        said = io.StringIO()
        with contextlib.redirect_stdout(said):
            for block in blocks:
                exec(block, names)
        self.assertEqual(said.getvalue().splitlines()[0], "at_level [-0.255 L, -0.205 L]")
        told = [line.split("  # ") for line in "".join(blocks).splitlines() if "]  # " in line]
        self.assertGreater(len(told), 2)
        for line, value in told:
            self.assertEqual(repr(eval(line, names)), value.partition(": ")[0])

    def test_signatures(self) -> None:
        signatures = {
            "evaluate": "(pack, journal, *, flip=False, why_not=None, limits=None)",
            "evaluate_many": "(pack, journals, *, flip=False, why_not=None, limits=None)",
            "convert": "(number, from_unit, to_unit)",
            "Amount": "(number, unit=None)",
            "Amount.to": "(self, /, unit, places, rounding='half_even')",
            "Limits": "(*, bytes=None, depth=None, entries=None, text=None, faults=None)",
            "LevelCheck.record": "(self, /, entry)",
            "LevelCheck.replay": "(pack, journal, *, limits=None)",
            "torque.applied_torque": "(setting, *, lever, adapter, angle=None)",
        }
        found = dict(documented())
        for name, signature in signatures.items():
            told = str(inspect.signature(found[name]))
            self.assertEqual(told.replace("(self, unit", "(self, /, unit"), signature, name)

    def test_help(self) -> None:
        text = pydoc.plain(pydoc.render_doc(brimline))
        for name in brimline.__all__:
            self.assertIn(name, text)
        self.assertIn("does not replace the vehicle maker's", " ".join(text.split()))
        told = pydoc.plain(pydoc.render_doc(brimline.Amount.to))
        self.assertIn("rounded to `places` decimals", told)


def is_error(value: Any) -> bool:
    return inspect.isclass(value) and issubclass(value, Exception)


class Shapes(unittest.TestCase):
    """Answers have the shapes that `brimline.answers`, `calculated` and `observed` say they have."""

    def fits(self, value: Any, shape: Any, path: str) -> None:
        origin = typing.get_origin(shape)
        inner = typing.get_args(shape)
        if typing.is_typeddict(shape):
            members = typing.get_type_hints(shape)
            self.assertLessEqual(shape.__required_keys__, set(value), path)
            for name, member in value.items():
                self.assertIn(name, members, path)
                self.fits(member, members[name], f"{path}.{name}")
        elif origin is typing.Literal:
            self.assertIn(value, inner, path)
        elif origin is list:
            self.assertIs(type(value), list, path)
            for place, item in enumerate(value):
                self.fits(item, inner[0], f"{path}[{place}]")
        elif origin is dict:
            self.assertIs(type(value), dict, path)
            for name, item in value.items():
                self.fits(item, inner[1], f"{path}.{name}")
        elif origin is types.UnionType:
            self.assertIn(type(value), inner, path)
        else:
            self.assertIs(type(value), shape, path)

    def test_results_of_every_example(self) -> None:
        folder = Path(__file__).parents[2] / "examples" / "journals"
        journals: list[Any] = [path.read_bytes() for path in folder.iterdir()]
        journals.extend(jobs.journal(count) for count in range(13))
        self.assertGreater(len(journals), 13)
        for journal in journals:
            answer = evaluate(jobs.PACK, journal, flip=True, why_not="at_level")
            document = answer.to_dict()
            self.fits(document, answers.Outcome, "result")
            self.assertEqual(list(document)[:3], ["format", "procedure", "rules"])
            for name, member in document.items():
                if name in ("as_found", "net_added", "now"):
                    own, told = getattr(answer, name), typing.cast(list[Any], member)
                    ends = [None if end is None else brimline.Amount(end) for end in told]
                    self.assertEqual([own.lo, own.hi], ends)
                elif name != "format":
                    self.assertEqual(getattr(answer, name), member)
            sentences = answer.sentences()
            self.fits(sentences, answers.Sentences, "sentences")
            for name in ("findings", "because", "next"):
                self.assertEqual(len(sentences[name]), len(document[name]))  # type: ignore[literal-required]
            cautions = {id for act in answer.next for id in act["cautions"]} | set(answer.cautions)
            self.assertLessEqual(cautions, set(sentences["cautions"]))
            text = " ".join(answer.text().split())
            self.assertIn(sentences["verdict"], text)
            for caution in cautions:
                self.assertIn(sentences["cautions"][caution], text)
            written = json.dumps(document, ensure_ascii=False, separators=(",", ":"))
            self.assertEqual(written, answer.to_json())

    def test_other_answers(self) -> None:
        pack = jobs.PACK
        check = LevelCheck.replay(pack, jobs.journal(9))
        _, findings = check.record({**jobs.entries()[9], "volume": "-1 L"})
        told: list[tuple[Any, Any]] = [
            (pack.lint(), list[answers.LintFinding]),
            (pack.compare("pipit-level", 1, 2), list[answers.Difference]),
            (pack.select(vehicle="Oddry Fen"), answers.Selection),
            (check.gate("open"), answers.Gate),
            (check.advice(), list[answers.NextAct]),
            (findings, list[answers.Finding]),
            (pack.may_mix("sedge-thin", "sedge-mid"), answers.Mixing),
            (pack.resolve("sedge-mid", ["sedge-thin", "teasel-wet"]), list[answers.Offer]),
            (brimline.versions(), answers.Versions),
        ]
        for value, shape in told:
            self.assertGreater(len(value), 0)
            self.fits(value, shape, str(shape))

    def test_every_calculator(self) -> None:
        root = Path(__file__).parents[2]
        stub = ast.parse((root / "bindings-python/python/brimline/_native.pyi").read_text(encoding="utf-8"))
        told = {own.name: ast.unparse(own.returns) for own in stub.body if isinstance(own, ast.FunctionDef) and own.returns}
        named = {**vars(answers), **vars(calculated), **vars(observed), "Amount": brimline.Amount, "Interval": brimline.Interval, "str": str}
        seen = set()
        for path in (root / "tests/vectors/calculators").iterdir():
            for case in json.loads(path.read_text(encoding="utf-8")):
                if "out" in case:
                    function, arguments = case["in"]["function"], case["in"]["arguments"]
                    answer = by_name(function, arguments)
                    self.fits(answer, named[told[function.partition(".")[2]]], case["name"])
                    seen.add(function)
        everything = {name for name, value in documented() if inspect.isbuiltin(value) and "." in name}
        rooms = {name for name, value in public() if inspect.ismodule(value)}
        self.assertEqual(seen, {name for name in everything if name.partition(".")[0] in rooms})

    def test_words_are_all_there(self) -> None:
        with self.assertRaises(brimline.BrimlineError) as raised:
            evaluate(jobs.PACK, jobs.journal(), why_not="fine")  # type: ignore[arg-type]
        words = typing.get_args(typing.get_type_hints(answers.Outcome)["verdict"])
        self.assertEqual(words, raised.exception.faults[0].allowed)

    def test_names_are_listed(self) -> None:
        for module in (answers, billed, calculated, errors, kept, observed):
            public = {name for name, value in vars(module).items() if defined_in(module, name, value)}
            self.assertLessEqual(public, {*module.__all__, "refusal"})
            self.assertLessEqual(set(module.__all__), set(vars(module)))


def defined_in(module: types.ModuleType, name: str, value: Any) -> bool:
    return not name.startswith("_") and getattr(value, "__module__", None) == module.__name__


if __name__ == "__main__":
    unittest.main()
