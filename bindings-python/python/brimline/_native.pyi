"""
The native half of `brimline`.
"""

from _typeshed import SupportsGetItem
from brimline.answers import Difference, Finding, Flip, Gate, Gates, LeakReading, LintFinding, NextAct, Outcome, ProcedureRef, Reason, Selection, Sentences, Versions
from brimline.errors import BrimlineError
from collections.abc import Iterable, Mapping
from datetime import date
from decimal import Decimal
from typing import Any, Literal, SupportsFloat, SupportsIndex, final

__all__ = ["Amount", "Evaluation", "Fault", "Interval", "LevelCheck", "Limits", "Pack", "Unit", "calculate", "convert", "error_document", "evaluate", "evaluate_many", "story", "versions"]

@final
class Amount:
    """
    An exact decimal with its unit, as a person typed it or a sheet prints it: `Amount("1.50 L")`, or a number and
    its unit.

    At most 15 digits, 9 of them decimals; the printed resolution is kept. A `float` is read as its shortest
    decimal, so 0.1 is 0.1; a `Decimal` keeps its decimals; a `Fraction` must end within nine.

    Amounts are equal, and hash alike, where their values are, whatever their units. They add, subtract and compare
    only within a kind; two temperatures give a difference, and a difference may be added to a temperature.

    Raises `QuantityError`: `not_a_number`, `too_many_digits`, `decimal_comma` with the readings, `fraction` with its
    neighbours, `unit_missing`, `unit_unknown`, `unit_ambiguous`, `wrong_kind`, `out_of_range`.

    >>> from decimal import Decimal
    >>> from brimline import Amount
    >>> Amount("0.1 US qt") * 14 == Amount("1.4 US qt")
    True
    >>> Amount("1.50 L") + Amount(Decimal("250"), "mL")
    Amount('1.75 L')
    >>> Amount("45 °C") - Amount(104, "deg F")
    Amount('5 Δ°C')
    >>> Amount("1.3 L") < Amount("1.4 US qt")
    True
    """
    def __add__(self, other: object, /) -> Amount: ...
    def __eq__(self, other: object, /) -> bool: ...
    def __float__(self, /) -> float: ...
    def __format__(self, /, layout: str) -> str: ...
    def __ge__(self, other: object, /) -> bool: ...
    def __getnewargs__(self, /) -> tuple[str]: ...
    def __gt__(self, other: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __le__(self, other: object, /) -> bool: ...
    def __lt__(self, other: object, /) -> bool: ...
    def __mul__(self, factor: object, /) -> Amount: ...
    def __ne__(self, other: object, /) -> bool: ...
    def __neg__(self, /) -> Amount: ...
    def __new__(cls, /, number: str | SupportsFloat | SupportsIndex, unit: str | Unit | None = None) -> Amount: ...
    def __radd__(self, other: object, /) -> Amount: ...
    def __repr__(self, /) -> str: ...
    def __rmul__(self, factor: object, /) -> Amount: ...
    def __rsub__(self, other: object, /) -> Amount: ...
    def __str__(self, /) -> str: ...
    def __sub__(self, other: object, /) -> Amount: ...
    @property
    def decimals(self, /) -> int:
        """
        How many of its digits are decimals, 0 to 9.
        """
    @property
    def kind(self, /) -> Literal["volume", "torque", "mass", "length", "area", "temperature", "temperature_difference", "pressure", "absolute_pressure", "angle", "time", "density", "kinematic_viscosity", "volume_flow", "ratio", "force", "expansion"]:
        """
        What it is an amount of.
        """
    @property
    def mantissa(self, /) -> int:
        """
        Its digits as an integer: 150 for `1.50 L`.
        """
    @property
    def number(self, /) -> Decimal:
        """
        Its number in its own unit, with the decimals it is printed with: `Decimal('1.50')` for `1.50 L`.
        """
    @classmethod
    def parse(cls, /, text: str, *, kind: Literal["volume", "torque", "mass", "length", "area", "temperature", "temperature_difference", "pressure", "absolute_pressure", "angle", "time", "density", "kinematic_viscosity", "volume_flow", "ratio", "force", "expansion"] | None = None, measures: Literal["us", "imperial"] | None = None) -> Amount:
        """
        Reads an amount where its kind, or whose customary measures are meant, is known.

        Raises `QuantityError` as `Amount` does, and `wrong_kind` with the units of the kind.

        >>> from brimline import Amount
        >>> Amount.parse("2 °C", kind="temperature_difference")
        Amount('2 Δ°C')
        >>> Amount.parse("1 1/2 qt", measures="us")
        Amount('1.5 US qt')
        """
    @property
    def resolution(self, /) -> Amount:
        """
        One in its last printed place, as a difference: `0.01 L` for `1.50 L`.
        """
    @property
    def si(self, /) -> float:
        """
        Its value in the coherent SI unit of its kind, the nearest double: m³, N·m, kg, m, m², K, Pa, s, kg/m³,
        m²/s, m³/s; an angle in radians.

        >>> from brimline import Amount
        >>> Amount("1 lb").si, Amount("104 °F").si
        (0.45359237, 313.15)
        """
    def to(self, /, unit: str | Unit, places: SupportsIndex, rounding: Literal["half_even", "half_up", "down", "up", "floor", "ceiling"] = ...) -> Amount:
        """
        This amount in another unit of its kind, rounded to `places` decimals (0 to 9).

        Raises `QuantityError`: `wrong_kind`, `too_many_digits`, `out_of_range`.

        >>> from brimline import Amount
        >>> Amount("12 N·m").to("lbf·in", 1)
        Amount('106.2 lbf·in')
        >>> Amount("1.5 L").to("US qt", 2, "down")
        Amount('1.58 US qt')
        """
    def to_exact(self, /, unit: str | Unit) -> Amount | None:
        """
        This amount in another unit where that is exact; `None` where the kinds differ or the decimal does not end
        within the digits of an amount.

        >>> from brimline import Amount
        >>> Amount("1.4 US qt").to_exact("mL")
        Amount('1324.8941244 mL')
        >>> print(Amount("1.3 L").to_exact("US qt"))
        None
        """
    @property
    def unit(self, /) -> Unit:
        """
        Its unit.
        """

@final
class Evaluation:
    """
    The answer to one journal.

    Made by `evaluate` and `LevelCheck.evaluation`. `to_json()` is the result document, the same bytes in every
    language, and `to_dict()` the same as data; its members are attributes here. `text()` and `sentences()` tell it in
    English. Evaluations are equal where their documents are, and one that was pickled keeps what it said.

    >>> from brimline import Pack, evaluate
    >>> journal = {"format": "brimline-journal/1", "procedure": "pipit-level", "job": "check", "entries": [
    ...     {"seq": 1, "at": "2026-03-02T09:00:00Z", "kind": "added", "volume": "0.5 L", "measured_by": "jug"}]}
    >>> evaluation = evaluate(Pack.embedded(), journal)
    >>> evaluation.verdict, str(evaluation.net_added)
    ('incomplete', '[0.48 L, 0.52 L]')
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __getnewargs__(self, /) -> tuple[str, str, str]: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, json: str, text: str, sentences: str) -> Evaluation: ...
    def __repr__(self, /) -> str: ...
    @property
    def as_found(self, /) -> Interval:
        """
        What is proved of the departure from the correct level as found (volume; negative is short).
        """
    @property
    def because(self, /) -> list[Reason]:
        """
        Why the answer is what it is.
        """
    @property
    def cautions(self, /) -> list[str]:
        """
        The cautions that go with the state of the job. They belong beside every telling of the result.
        """
    @property
    def findings(self, /) -> list[Finding]:
        """
        What a person should know of the journal.
        """
    @property
    def flip(self, /) -> list[Flip] | None:
        """
        The smallest changes that would turn the answer; `None` if they were not asked for.
        """
    @property
    def gates(self, /) -> Gates:
        """
        What may be done now, by act: `open`, `pour`, `close`, `stop_engine`.
        """
    @property
    def leak(self, /) -> LeakReading:
        """
        What the shortage says of a leak.
        """
    @property
    def net_added(self, /) -> Interval:
        """
        What is proved of the net volume added in between.
        """
    @property
    def next(self, /) -> list[NextAct]:
        """
        What to do next, the first thing first.
        """
    @property
    def now(self, /) -> Interval:
        """
        What is proved of the departure now (volume; negative is short).
        """
    @property
    def procedure(self, /) -> ProcedureRef:
        """
        Which sheet the answer rests on.
        """
    @property
    def rules(self, /) -> str:
        """
        The version of the rules; it rises whenever any verdict can change.
        """
    def sentences(self, /) -> Sentences:
        """
        The result in English sentences, for a host that lays out pages of its own: each list in the order of its
        member, and every caution by its id.

        >>> from brimline import LevelCheck, Pack
        >>> header = {"format": "brimline-journal/1", "procedure": "pipit-level", "job": "check"}
        >>> evaluation = LevelCheck.start(Pack.embedded(), header).evaluation()
        >>> sentences = evaluation.sentences()
        >>> len(sentences["next"]) == len(evaluation.next)
        True
        """
    def text(self, /) -> str:
        """
        The result told in English lines of at most 80 columns, with every caution in full.
        """
    def to_dict(self, /) -> Outcome:
        """
        The result document as data.
        """
    def to_json(self, /) -> str:
        """
        The canonical JSON of the result document.
        """
    @property
    def verdict(self, /) -> Literal["on_hold", "no_procedure", "repeat", "incomplete", "low", "at_level", "over", "not_low", "not_full", "not_proven"]:
        """
        What can be said of the level.
        """
    @property
    def why_not(self, /) -> list[Reason] | None:
        """
        What keeps the verdict that was asked about away; `None` if none was.
        """

@final
class Fault:
    """
    One thing that is wrong with what was handed in: what, where, what was expected and what to do.

    An exception of this package carries one or more in `faults`, in the order they stand in the document.
    Lines and columns count from 1, the offset counts bytes from 0; `got` is shortened to 80 characters.

    >>> from brimline import Amount, BrimlineError
    >>> try:
    ...     Amount("1.2 oz")
    ... except BrimlineError as error:
    ...     fault = error.faults[0]
    >>> fault.kind, fault.code, fault.got
    ('unit_ambiguous', 26, '1.2 oz')
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __getnewargs__(self, /) -> tuple[Literal["syntax", "limit", "wrong_format", "wrong_type", "missing_field", "unknown_field", "duplicate_field", "unknown_value", "conflict", "unresolved", "duplicate_id", "cycle", "sequence", "not_a_time", "not_a_number", "too_many_digits", "decimal_comma", "fraction", "unit_missing", "unit_unknown", "unit_ambiguous", "wrong_kind", "out_of_range", "null_pointer", "buffer_too_small", "not_utf8", "internal"], str, int | None, int | None, int | None, str | None, tuple[str, ...], str | None]: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, kind: Literal["syntax", "limit", "wrong_format", "wrong_type", "missing_field", "unknown_field", "duplicate_field", "unknown_value", "conflict", "unresolved", "duplicate_id", "cycle", "sequence", "not_a_time", "not_a_number", "too_many_digits", "decimal_comma", "fraction", "unit_missing", "unit_unknown", "unit_ambiguous", "wrong_kind", "out_of_range", "null_pointer", "buffer_too_small", "not_utf8", "internal"], path: str = "", line: SupportsIndex | None = None, column: SupportsIndex | None = None, offset: SupportsIndex | None = None, got: str | None = None, allowed: SupportsGetItem[int, str] = ..., hint: str | None = None) -> Fault: ...
    def __repr__(self, /) -> str: ...
    def __str__(self, /) -> str: ...
    @property
    def allowed(self, /) -> tuple[str, ...]:
        """
        What would have been accepted.
        """
    @property
    def code(self, /) -> int:
        """
        The number of the kind, the status of the C library.
        """
    @property
    def column(self, /) -> int | None:
        """
        The column in characters, from 1.
        """
    @property
    def got(self, /) -> str | None:
        """
        What was found.
        """
    @property
    def hint(self, /) -> str | None:
        """
        What to do about it.
        """
    @property
    def kind(self, /) -> Literal["syntax", "limit", "wrong_format", "wrong_type", "missing_field", "unknown_field", "duplicate_field", "unknown_value", "conflict", "unresolved", "duplicate_id", "cycle", "sequence", "not_a_time", "not_a_number", "too_many_digits", "decimal_comma", "fraction", "unit_missing", "unit_unknown", "unit_ambiguous", "wrong_kind", "out_of_range", "null_pointer", "buffer_too_small", "not_utf8", "internal"]:
        """
        What kind of fault: a stable word.
        """
    @property
    def line(self, /) -> int | None:
        """
        The line in the text, from 1.
        """
    @property
    def offset(self, /) -> int | None:
        """
        The bytes before it.
        """
    @property
    def path(self, /) -> str:
        """
        Where in the document, as `entries[3].volume`; empty outside a document.
        """

@final
class Interval:
    """
    Everything from one amount to another, both included; without an end it reaches to infinity there.

    The ends are amounts or their texts, of one kind.

    Raises `QuantityError`: `wrong_kind` for ends of two kinds, `out_of_range` where the lower end is above the
    upper, and what `Amount` raises.

    >>> from brimline import Interval
    >>> short = Interval("-2.0 L", "-1.5 L")
    >>> print(short, short.width())
    [-2.0 L, -1.5 L] 0.5 L
    >>> "-1.5 L" in short
    True
    >>> short.intersect(Interval(None, "-1800 mL"))
    Interval('-2.0 L', '-1800 mL')
    """
    def __contains__(self, amount: Any, /) -> bool: ...
    def __eq__(self, value: object, /) -> bool: ...
    def __getnewargs__(self, /) -> tuple[Amount | None, Amount | None]: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, lo: Amount | str | None = None, hi: Amount | str | None = None) -> Interval: ...
    def __repr__(self, /) -> str: ...
    def __str__(self, /) -> str: ...
    def contains(self, /, amount: Amount | str) -> bool:
        """
        Whether an amount lies within, the ends included; so does `amount in interval`.

        Raises `QuantityError`: `wrong_kind`.

        >>> from brimline import Interval
        >>> Interval("0 L", "1 L").contains("1001 mL")
        False
        """
    @property
    def hi(self, /) -> Amount | None:
        """
        Its upper end; `None` where it is unbounded.
        """
    def intersect(self, /, other: Interval) -> Interval | None:
        """
        What two intervals have in common; `None` where that is nothing.

        Raises `QuantityError`: `wrong_kind`.

        >>> from brimline import Interval
        >>> print(Interval("0 L", "1 L").intersect(Interval("2 L", None)))
        None
        """
    @property
    def lo(self, /) -> Amount | None:
        """
        Its lower end; `None` where it is unbounded.
        """
    @classmethod
    def parse(cls, /, text: str) -> Interval:
        """
        Reads an interval as it is printed.

        Raises `QuantityError`: `not_a_number` for another form, and what `Interval` raises.

        >>> from brimline import Interval
        >>> print(Interval.parse("(-inf, 0 L]").lo)
        None
        """
    def width(self, /) -> Amount | None:
        """
        Upper end less lower end, in the unit of the upper; `None` where it is unbounded.

        Raises `QuantityError`: `too_many_digits`, `out_of_range`.

        >>> from brimline import Interval
        >>> Interval("40 °C", "45 °C").width()
        Amount('5 Δ°C')
        """

@final
class LevelCheck:
    """
    A check as it happens: append an entry, get what follows from it.

    Made by `LevelCheck.start` from the header of a journal, or by `LevelCheck.replay` from a whole one. It is
    frozen: `record` answers a new check and leaves this one as it was, and copies share what they have in common.
    Replaying a check's journal gives the same bytes.

    >>> from brimline import LevelCheck, Pack
    >>> header = {"format": "brimline-journal/1", "procedure": "pipit-level", "job": "check"}
    >>> check = LevelCheck.start(Pack.embedded(), header)
    >>> check, findings = check.record(
    ...     {"seq": 1, "at": "2026-03-02T09:00:00Z", "kind": "engine", "state": "idling"})
    >>> findings, check.evaluation().verdict
    ([], 'incomplete')
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[Pack, Limits | None, str, list[str]]]: ...
    def __repr__(self, /) -> str: ...
    @classmethod
    def _resume(cls, /, pack: Pack, limits: Limits | None, begun: str | bytes | bytearray | Mapping[str, Any], later: SupportsGetItem[int, str]) -> LevelCheck: ...
    def advice(self, /) -> list[NextAct]:
        """
        What to do next, the first thing first.
        """
    def evaluation(self, /, *, flip: bool = False, why_not: Literal["on_hold", "no_procedure", "repeat", "incomplete", "low", "at_level", "over", "not_low", "not_full", "not_proven"] | None = None) -> Evaluation:
        """
        The answer so far, the same that `evaluate` gives for the same journal. `flip` asks for the smallest changes
        that would turn it, `why_not` for what keeps a verdict away.
        """
    def gate(self, /, act: Literal["open", "pour", "close", "stop_engine"], planned: Amount | str | None = None, at: str | date | None = None) -> Gate:
        """
        Whether an act is allowed, with every item that stands in the way. `planned` is the volume about to be
        poured; `at` is the moment asked about (RFC 3339, or a `datetime` with its offset), else the newest entry's.

        Raises `QuantityError` for a planned amount that cannot be read, `BrimlineError`: `not_a_time`.

        >>> from brimline import LevelCheck, Pack
        >>> header = {"format": "brimline-journal/1", "procedure": "pipit-level", "job": "check"}
        >>> gate = LevelCheck.start(Pack.embedded(), header).gate("pour", planned="0.25 L")
        >>> gate["allowed"], gate["unmet"][0]["id"]
        (False, 'low_not_shown')
        """
    def journal_lines(self, /) -> str:
        """
        The journal as JSON Lines: the header, then a line for each entry, each ending in a line feed.
        """
    def record(self, /, entry: str | bytes | bytearray | Mapping[str, Any]) -> tuple[LevelCheck, list[Finding]]:
        """
        Records one entry and answers the check that follows and the findings that are new with it.

        An entry that repeats an earlier one under the same `id` changes nothing.

        Raises `DocumentError` if the entry cannot be read or its `seq` does not rise; the check stays as it was.

        >>> from brimline import LevelCheck, Pack
        >>> header = {"format": "brimline-journal/1", "procedure": "pipit-level", "job": "check"}
        >>> check = LevelCheck.start(Pack.embedded(), header)
        >>> check, findings = check.record(
        ...     {"seq": 1, "at": "2026-03-02T09:00:00Z", "kind": "flow", "grade": "none", "for": "20 s"})
        >>> [finding["id"] for finding in findings]
        ['plug_not_open']
        """
    @classmethod
    def replay(cls, /, pack: Pack, journal: str | bytes | bytearray | Mapping[str, Any]) -> LevelCheck:
        """
        Builds a check from a whole journal, as if every entry had been recorded in turn.

        Raises `DocumentError` with every fault of the journal, each with its path; `LimitError`.

        >>> from brimline import LevelCheck, Pack
        >>> journal = {"format": "brimline-journal/1", "procedure": "pipit-level", "job": "check", "entries": []}
        >>> LevelCheck.replay(Pack.embedded(), journal).evaluation().verdict
        'incomplete'
        """
    @classmethod
    def start(cls, /, pack: Pack, header: str | bytes | bytearray | Mapping[str, Any], *, limits: Limits | None = None) -> LevelCheck:
        """
        Begins a check from the header of a journal: `str`, `bytes` or a mapping.

        Raises `DocumentError` with every fault of the header, each with its path.

        >>> from brimline import LevelCheck, Pack
        >>> header = '{"format":"brimline-journal/1","procedure":"pipit-level","job":"check"}'
        >>> LevelCheck.start(Pack.embedded(), header).journal_lines() == header + "\\n"
        True
        """

@final
class Limits:
    """
    How much of a document is read before it is refused; every refusal names the limit that was passed.

    `bytes` of one document, `depth` of objects and lists inside each other (at most 100), `entries` of one
    journal, bytes of any one `text`, `faults` collected before the rest are left out (at least 1). What is not
    given is as usual.

    >>> from brimline import Limits
    >>> Limits(entries=50)
    Limits(bytes=16777216, depth=32, entries=50, text=10000, faults=100)
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict[str, int]]: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, *, bytes: SupportsIndex | None = None, depth: SupportsIndex | None = None, entries: SupportsIndex | None = None, text: SupportsIndex | None = None, faults: SupportsIndex | None = None) -> Limits: ...
    def __repr__(self, /) -> str: ...
    @property
    def bytes(self, /) -> int:
        """
        Bytes of one document.
        """
    @property
    def depth(self, /) -> int:
        """
        Objects and lists inside each other; `ext` members are not counted.
        """
    @property
    def entries(self, /) -> int:
        """
        Entries of one journal.
        """
    @property
    def faults(self, /) -> int:
        """
        Faults collected before the rest are left out.
        """
    @property
    def text(self, /) -> int:
        """
        Bytes of any one text.
        """

@final
class Pack:
    """
    The sheets and fluids of one publisher, read and checked.

    Made by `Pack.embedded()` or `Pack.from_json(json)`. Packs are equal where their digests are.

    >>> from brimline import Pack
    >>> pack = Pack.embedded()
    >>> pack.id, pack.title
    ('fernhollow', 'Fernhollow Gear & Drive demonstration sheets (invented)')
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    @classmethod
    def _from_canonical(cls, /, json: str) -> Pack: ...
    def compare(self, /, id: str, from_edition: SupportsIndex, to_edition: SupportsIndex) -> list[Difference]:
        """
        Where two editions of a procedure differ, field by field, in the order of the sheet.

        Raises `BrimlineError`: `unresolved` if the pack lacks one of them.

        >>> from brimline import Pack
        >>> "method.watch" in [d["field"] for d in Pack.embedded().compare("pipit-level", 1, 2)]
        True
        """
    @property
    def digest(self, /) -> str:
        """
        SHA-256 of the canonical form, in lower-case hexadecimal.
        """
    @classmethod
    def embedded(cls, /) -> Pack:
        """
        The embedded demonstration pack: invented units, fluids and numbers of an invented shop.

        >>> from brimline import Pack
        >>> Pack.embedded().id
        'fernhollow'
        """
    @classmethod
    def from_json(cls, /, json: str | bytes | bytearray | Mapping[str, Any], *, limits: Limits | None = None) -> Pack:
        """
        Reads a pack from its JSON: `str`, `bytes` or a mapping.

        Raises `DocumentError` with every fault of the document, each with its path; `LimitError`.

        >>> from brimline import DocumentError, Pack
        >>> try:
        ...     Pack.from_json({"format": "brimline-pack/1", "id": "mine"})
        ... except DocumentError as error:
        ...     [fault.path for fault in error.faults]
        ['version', 'title', 'fluids', 'procedures']
        """
    @property
    def id(self, /) -> str:
        """
        The pack's own name.
        """
    def lint(self, /) -> list[LintFinding]:
        """
        Defects of the sheets themselves, found before anybody works by them.

        >>> from brimline import Pack
        >>> {finding["severity"] for finding in Pack.embedded().lint()} <= {"note", "caution", "stop"}
        True
        """
    def procedure(self, /, id: str, edition: SupportsIndex) -> dict[str, Any] | None:
        """
        One edition of one procedure as data; `None` where the pack lacks it.

        >>> from brimline import Pack
        >>> Pack.embedded().procedure("pipit-level", 2)["supersedes"]
        1
        """
    def procedures(self, /) -> list[dict[str, Any]]:
        """
        Every edition of every procedure, in the order of the document: the sheets as data.

        >>> from brimline import Pack
        >>> {sheet["method"]["kind"] for sheet in Pack.embedded().procedures()} >= {"overflow_plug", "side_plug"}
        True
        """
    def select(self, /, *, vehicle: str | None = None, unit: str | None = None, day: str | date | None = None) -> Selection:
        """
        The sheets for a vehicle or a unit on a day, capital and small letters alike: the answer is `one`, `several`
        or `none`, never a best guess. The day is `YYYY-MM-DD` or a `date`.

        Raises `BrimlineError`: `conflict` if neither vehicle nor unit is named, `not_a_time` for a bad day.

        >>> from brimline import Pack
        >>> Pack.embedded().select(vehicle="no such vehicle")
        {'answer': 'none', 'candidates': []}
        """
    @property
    def title(self, /) -> str:
        """
        What it is called.
        """
    def to_json(self, /) -> str:
        """
        The canonical JSON.
        """
    @property
    def version(self, /) -> str:
        """
        The publisher's version of it.
        """

@final
class Unit:
    """
    A unit of measure, as `Unit("ft-lb")`.

    It is read as people type it: `ft-lb`, `N.m`, `deg F`, `cc`, `qt (US)`. Units are equal where they are the same
    unit: `mL` and `cm³` are two, of one size.

    Raises `QuantityError`: `unit_ambiguous` with the candidates for a name of several sizes (`oz`, bare `qt`),
    `unit_unknown` with the nearest names, `unit_missing` for an empty text.

    >>> from brimline import Unit
    >>> unit = Unit("ft-lb")
    >>> unit.symbol, unit.kind, unit.ucum, unit.rec20
    ('lbf·ft', 'torque', '[lbf_av].[ft_i]', 'M92')
    >>> unit == Unit("lbf ft")
    True
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __getnewargs__(self, /) -> tuple[str]: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, text: str | Unit) -> Unit: ...
    def __repr__(self, /) -> str: ...
    def __str__(self, /) -> str: ...
    @classmethod
    def all(cls, /) -> list[Unit]:
        """
        Every unit, in order of number.

        >>> from brimline import Unit
        >>> [unit.symbol for unit in Unit.all() if unit.kind == "pressure"]
        ['kPa', 'bar', 'psi']
        """
    @property
    def code(self, /) -> int:
        """
        The number that stands for it in the C library; it never changes.
        """
    @property
    def kind(self, /) -> Literal["volume", "torque", "mass", "length", "area", "temperature", "temperature_difference", "pressure", "absolute_pressure", "angle", "time", "density", "kinematic_viscosity", "volume_flow", "ratio", "force", "expansion"]:
        """
        What it is a unit of.
        """
    @classmethod
    def parse(cls, /, text: str, *, kind: Literal["volume", "torque", "mass", "length", "area", "temperature", "temperature_difference", "pressure", "absolute_pressure", "angle", "time", "density", "kinematic_viscosity", "volume_flow", "ratio", "force", "expansion"] | None = None, measures: Literal["us", "imperial"] | None = None) -> Unit:
        """
        Reads a unit where its kind, or whose customary measures are meant, is known.

        Raises `QuantityError` as `Unit` does, and `wrong_kind` for a unit of another kind.

        >>> from brimline import Unit
        >>> Unit.parse("qt", measures="us")
        Unit('US qt')
        >>> Unit.parse("°C", kind="temperature_difference")
        Unit('Δ°C')
        """
    @property
    def rec20(self, /) -> str | None:
        """
        The common code of UN/ECE Recommendation 20; `None` where it has none.
        """
    @property
    def symbol(self, /) -> str:
        """
        The symbol it is printed with.
        """
    @property
    def ucum(self, /) -> str:
        """
        The code of the Unified Code for Units of Measure, case-sensitive form.
        """

def calculate(function: str, arguments: str | bytes | bytearray | Mapping[str, Any], *, limits: Limits | None = None) -> dict[str, Any]:
    """
    Asks one calculator by its name, with its arguments as one mapping or JSON object.

    The calculators are the functions of `brimline.torque`, `volume`, `warm_up`, `fluid`, `signal` and `leak`: this is
    for those who have the name and the arguments as data. One that answers a single quantity answers `{"value": ...}`.

    Raises `DocumentError` for an unknown name and for every fault of the arguments, with its path.

    >>> from brimline import calculate
    >>> calculate("torque.applied_torque", {"setting": "60 lbf·in", "lever": "12 in", "adapter": "2 in"})
    {'value': '70 lbf·in'}
    """

def convert(number: SupportsFloat | SupportsIndex, from_unit: str | Unit, to_unit: str | Unit) -> float:
    """
    Converts a number from one unit to another of the same kind.

    The answer is the double nearest to the exact value, for every pair of a kind and every finite number. The
    number is an `int`, `float`, `Decimal` or `Fraction`, read as the nearest double; units are `Unit`s or names.

    Raises `QuantityError`: `not_a_number` for NaN or infinity, `out_of_range` where the result is above the largest
    double, `wrong_kind` for units of two kinds, and what `Unit` raises.

    >>> from brimline import convert
    >>> convert(104, "°F", "°C")
    40.0
    >>> convert(1, "US gal", "L")
    3.785411784
    """

def error_document(faults: SupportsGetItem[int, Fault], /) -> str:
    """
    The error document of these faults: `{"kind","code","message","faults":[…]}`, the same bytes in every language.

    >>> from brimline import Amount, BrimlineError
    >>> try:
    ...     Amount("9")
    ... except BrimlineError as error:
    ...     print(error.to_json()[:32])
    {"kind":"unit_missing","code":24
    """

def evaluate(pack: Pack | str | bytes | bytearray | Mapping[str, Any], journal: str | bytes | bytearray | Mapping[str, Any], *, flip: bool = False, why_not: Literal["on_hold", "no_procedure", "repeat", "incomplete", "low", "at_level", "over", "not_low", "not_full", "not_proven"] | None = None, limits: Limits | None = None) -> Evaluation:
    """
    Evaluates a journal on a pack.

    The pack is a `Pack` or its JSON, the journal its JSON or JSON Lines; JSON is `str`, `bytes` or a mapping, in
    which quantities may be `Amount`s and moments `datetime`s with their offset. `flip` asks for the smallest changes
    that would turn the answer, `why_not` for what keeps a verdict away.

    Raises `DocumentError` with every fault of the pack, or else of the journal, each with its path; `LimitError`.
    The places told are those in the text, for a mapping in the JSON it is written as.

    >>> from brimline import Amount, Pack, evaluate
    >>> journal = {"format": "brimline-journal/1", "procedure": "pipit-level", "job": "check", "entries": [
    ...     {"seq": 1, "at": "2026-03-02T09:00:00Z", "kind": "added", "volume": Amount(0.5, "L"),
    ...      "measured_by": "jug"}]}
    >>> print(evaluate(Pack.embedded(), journal).net_added)
    [0.48 L, 0.52 L]
    """

def evaluate_many(pack: Pack | str | bytes | bytearray | Mapping[str, Any], journals: Iterable[str | bytes | bytearray | Mapping[str, Any]], *, flip: bool = False, why_not: Literal["on_hold", "no_procedure", "repeat", "incomplete", "low", "at_level", "over", "not_low", "not_full", "not_proven"] | None = None, limits: Limits | None = None) -> list[Evaluation | BrimlineError]:
    """
    Evaluates many journals on one pack, in order. For a journal that cannot be read its error stands in its place.

    The journals come from any iterable, each as `evaluate` takes it; one at a time is held. The other arguments are
    those of `evaluate`.

    Raises `DocumentError` for a pack that cannot be read.

    >>> from brimline import Pack, evaluate_many
    >>> journal = {"format": "brimline-journal/1", "procedure": "pipit-level", "job": "check", "entries": []}
    >>> evaluation, error = evaluate_many(Pack.embedded(), [journal, "{"])
    >>> evaluation.verdict, error.kind
    ('incomplete', 'syntax')
    """

def story(pack: Pack | str | bytes | bytearray | Mapping[str, Any], journal: str | bytes | bytearray | Mapping[str, Any]) -> str:
    """
    A whole check told entry by entry in English, with every caution in full.

    The pack and the journal are those of `evaluate`.

    Raises `DocumentError` with every fault of the pack, or else of the journal, each with its path; `LimitError`.

    >>> from brimline import Pack, story
    >>> journal = {"format": "brimline-journal/1", "procedure": "pipit-level", "job": "check", "entries": []}
    >>> "Pipit transaxle" in story(Pack.embedded(), journal)
    True
    """

def versions() -> Versions:
    """
    The versions of the library, of its rules and of the documents it reads and writes.

    `rules` rises whenever any verdict can change.

    >>> from brimline import versions
    >>> versions()["documents"]["journal"]
    'brimline-journal/1'
    """
