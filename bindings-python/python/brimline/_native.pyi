"""
The native half of `brimline`.
"""

from _typeshed import SupportsGetItem
from brimline.answers import Difference, Finding, Flip, Gate, Gates, Lack, LeakReading, LintFinding, Mixing, NextAct, Offer, Outcome, Outlook, ProcedureRef, Reason, RecordDifference, RecordDocument, SealedPack, Selection, Sentences, Versions
from brimline.billed import Estimate, Invoice, Waste
from brimline.calculated import ColdSoak, ContainerPlans, CoolDown, Crossing, CyclesNeeded, Equivalents, Exchange, Flush, FlushNeeded, Grade, JointTorque, Plausibility, Preload, SensorDoubts, ThreadGeometry, TiltError, ToolChoice, ViscosityIndex, WarmUpFit, WrenchSetting
from brimline.errors import BrimlineError
from brimline.kept import AuditDocument, ComebacksDocument, FollowUpDocument, HistoryDocument, ShadowDocument
from brimline.observed import AgainstLimit, Consumption, DripRate, Frame, Reply, Risks, Seepage, SignalReading, Totals
from brimline.storage import Storage
from collections.abc import Iterable, Mapping, Sequence
from datetime import date
from decimal import Decimal
from typing import Any, Literal, SupportsFloat, SupportsIndex, final

__all__ = ["Amount", "Evaluation", "Fault", "Forecast", "History", "Interval", "KeptJournal", "LevelCheck", "Limits", "Linear", "Pack", "PriceList", "Record", "Teller", "Unit", "against_limit", "applied_torque", "at_temperature", "audit", "base_density", "bay_card", "blend", "calculate", "caution", "cold_soak", "combined_uncertainty", "comebacks", "conformance", "consumption", "containers", "convert", "cool_down", "correction_factor", "cost", "crossing", "cycles_needed", "density_at", "diagnostic_reply", "drip_rate", "drops_for", "equivalents", "error_document", "estimate", "evaluate", "evaluate_many", "exchange", "expanded_uncertainty", "fit", "flush", "flush_needed", "follow_up", "forecast", "grade", "grade_limits", "guard_band", "invoice", "lack", "level_for", "linear", "mass", "mixed_temperature", "picture", "plausible", "preload", "proof_load", "quantile", "response_time", "risks", "seepage", "segment_share", "sensor_doubts", "shadow", "story", "temperature_error", "temperature_for", "thread", "tilt_error", "tool_suits", "torque_for_preload", "totals", "transmission_frame", "versions", "viscosity_at", "viscosity_index", "volume_below", "volume_of_mass", "waste", "work_sheet", "wrench_setting", "wrong_left"]

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
    def forecast(self, /) -> Outlook | None:
        """
        When the window of temperature opens and closes, counted from the last reading or pour; `None` where the engine does
        not run, the level has been found, or there is nothing to wait for. It decides nothing.
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
    def __getnewargs__(self, /) -> tuple[Literal["syntax", "limit", "wrong_format", "wrong_type", "missing_field", "unknown_field", "duplicate_field", "unknown_value", "conflict", "unresolved", "duplicate_id", "cycle", "sequence", "not_a_time", "changed", "storage", "not_a_number", "too_many_digits", "decimal_comma", "fraction", "unit_missing", "unit_unknown", "unit_ambiguous", "wrong_kind", "out_of_range", "null_pointer", "buffer_too_small", "not_utf8", "internal"], str, int | None, int | None, int | None, str | None, tuple[str, ...], str | None]: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, kind: Literal["syntax", "limit", "wrong_format", "wrong_type", "missing_field", "unknown_field", "duplicate_field", "unknown_value", "conflict", "unresolved", "duplicate_id", "cycle", "sequence", "not_a_time", "changed", "storage", "not_a_number", "too_many_digits", "decimal_comma", "fraction", "unit_missing", "unit_unknown", "unit_ambiguous", "wrong_kind", "out_of_range", "null_pointer", "buffer_too_small", "not_utf8", "internal"], path: str = "", line: SupportsIndex | None = None, column: SupportsIndex | None = None, offset: SupportsIndex | None = None, got: str | None = None, allowed: SupportsGetItem[int, str] = ..., hint: str | None = None) -> Fault: ...
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
    def kind(self, /) -> Literal["syntax", "limit", "wrong_format", "wrong_type", "missing_field", "unknown_field", "duplicate_field", "unknown_value", "conflict", "unresolved", "duplicate_id", "cycle", "sequence", "not_a_time", "changed", "storage", "not_a_number", "too_many_digits", "decimal_comma", "fraction", "unit_missing", "unit_unknown", "unit_ambiguous", "wrong_kind", "out_of_range", "null_pointer", "buffer_too_small", "not_utf8", "internal"]:
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
class Forecast:
    """
    When the window of temperature opens and closes, told again with every reading.

    It takes what the function `forecast` takes, and answers the same for the same readings and pours. `min` opens the
    window, `max` closes it; `scatter` is what readings scatter, 0.5 °C unless given; `held` is the fluid in the unit, which
    a pour mixes with. However long it runs, at most 64 readings are held. It changes with every reading, so it is neither
    hashed nor pickled; `copy.copy` makes one that goes its own way.

    Raises `QuantityError`: `wrong_kind`, `out_of_range`.

    >>> from brimline.warm_up import Forecast
    >>> forecast = Forecast(min="50 °C", max="60 °C")
    >>> for minute, reading in enumerate([19.9, 25.89, 31.93, 36.97, 41.3, 45.55]):
    ...     forecast.sample(f"{minute} min", reading=f"{reading} °C")
    >>> forecast.answer()["method"]
    'first_order'
    """
    def __copy__(self, /) -> Forecast: ...
    def __deepcopy__(self, /, _memo: Any) -> Forecast: ...
    def __new__(cls, /, *, min: Amount | str | None = None, max: Amount | str | None = None, scatter: Amount | str | None = None, held: Amount | str | None = None) -> Forecast: ...
    def answer(self, /) -> Outlook:
        """
        What the readings so far tell, times counted from the last reading or pour.

        >>> from brimline.warm_up import Forecast
        >>> Forecast(min="50 °C").answer()
        {'method': 'none', 'reason': 'too_few', 'suspect': []}
        """
    def poured(self, /, at: Amount | str, *, volume: Amount | str, temperature: Amount | str) -> None:
        """
        Takes a pour in, in order of time; with nothing known of the fluid in the unit it starts the forecast anew.

        Raises `QuantityError`: `wrong_kind`, `out_of_range`; the forecast is then as it was.

        >>> from brimline.warm_up import Forecast
        >>> forecast = Forecast(min="50 °C", held="6.8 L")
        >>> forecast.sample("0 s", reading="45.8 °C")
        >>> forecast.poured("10 s", volume="0.25 L", temperature="18 °C")
        """
    def sample(self, /, at: Amount | str, *, reading: Amount | str) -> None:
        """
        Takes a reading in, in order of time.

        Raises `QuantityError`: `wrong_kind`, `out_of_range` for a time before the last; the forecast is then as it was.

        >>> from brimline.warm_up import Forecast
        >>> forecast = Forecast(min="50 °C")
        >>> forecast.sample("0 s", reading="19.9 °C")
        >>> forecast.answer()
        {'method': 'none', 'reason': 'too_few', 'now': '19.90 °C', 'suspect': []}
        """
    def text(self, /) -> str:
        """
        The same in English.

        >>> from brimline.warm_up import Forecast
        >>> Forecast(min="50 °C").text()
        'There are too few readings yet to say when the window opens.'
        """

@final
class History:
    """
    The records of a shop by vehicle and unit, each in order of time, as they were recorded; no pack is asked.

    Made by `History.of`. A record that comes twice counts once, and the order in which records are given says nothing.

    >>> from brimline import History, Pack, Record
    >>> journal = {"format": "brimline-journal/1", "procedure": "pipit-level", "job": "check",
    ...     "subject": {"vehicle": "Tarnik Dale 12"}, "entries": []}
    >>> history = History.of([Record.seal(Pack.embedded(), journal)])
    >>> [len(unit["visits"]) for unit in history.to_dict()["vehicles"]]
    [1]
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[list[Record]]]: ...
    def __repr__(self, /) -> str: ...
    @classmethod
    def of(cls, /, records: SupportsGetItem[int, Record]) -> History:
        """
        The history of records.

        >>> from brimline import History
        >>> History.of([]).to_dict()["vehicles"]
        []
        """
    def text(self, /) -> str:
        """
        The history in plain English lines, with every caution in full.
        """
    def to_dict(self, /) -> HistoryDocument:
        """
        The history as data.
        """
    def to_json(self, /) -> str:
        """
        The canonical JSON of the history document.
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
class KeptJournal:
    """
    The journal of a running check, kept entry by entry in a storage of the host's.

    Made by `KeptJournal.start`, or by `KeptJournal.recover` after a power cut. It keeps JSON Lines: the header, then a
    line for each entry. An entry is answered for only once the storage said that it is durable, so nothing that was
    answered for is lost. The storage is any object with `append(bytes)`, which returns once the bytes are durable, and
    `truncate(length)`; both raise what went wrong.

    >>> from brimline import KeptJournal, Pack
    >>> class Memory(bytearray):
    ...     def append(self, data):
    ...         self.extend(data)
    ...     def truncate(self, length):
    ...         del self[length:]
    >>> header = {"format": "brimline-journal/1", "procedure": "pipit-level", "job": "check"}
    >>> storage = Memory()
    >>> journal = KeptJournal.start(Pack.embedded(), header, storage)
    >>> journal.append({"seq": 1, "at": "2026-03-02T09:00:00Z", "kind": "engine", "state": "idling"})
    []
    >>> torn = bytes(storage) + b'{"seq":2,"at":"2026-'
    >>> recovered = KeptJournal.recover(Pack.embedded(), torn, Memory(torn))
    >>> recovered.check == journal.check, recovered.dropped_bytes
    (True, 20)
    """
    def __repr__(self, /) -> str: ...
    def append(self, /, entry: str | bytes | bytearray | Mapping[str, Any]) -> list[Finding]:
        """
        Records one entry and keeps it; answers the findings that are new with it, once it is durable. An entry that
        repeats an earlier one under the same `id` is kept already.

        Raises `DocumentError` if the entry cannot be read or its `seq` does not rise; `BrimlineError`: `storage` if it could
        not be kept, what the storage raised being its cause. The check stays as it was, and the same entry can be given
        again.
        """
    @property
    def check(self, /) -> LevelCheck:
        """
        The check as far as it is kept.
        """
    @property
    def dropped_bytes(self, /) -> int:
        """
        Bytes after the last whole line that the recovery left out.
        """
    @classmethod
    def recover(cls, /, pack: Pack, kept: bytes, storage: Storage, *, limits: Limits | None = None) -> KeptJournal:
        """
        Takes a journal up again from the bytes that its storage holds. What stands after the last line feed was never
        answered for: it is left out, and dropped from the storage before the next entry comes.

        Raises `DocumentError` with every fault of what was kept, each with its path; `BrimlineError`: `unresolved` if not
        even the header was kept whole.
        """
    @classmethod
    def start(cls, /, pack: Pack, header: str | bytes | bytearray | Mapping[str, Any], storage: Storage, *, limits: Limits | None = None) -> KeptJournal:
        """
        Begins a journal in an empty storage, from its header: `str`, `bytes` or a mapping.

        Raises `DocumentError` with every fault of the header, each with its path; `BrimlineError`: `storage` if the header
        could not be kept, what the storage raised being its cause.
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
    def __reduce__(self, /) -> tuple[Any, tuple[Pack, Limits, bool, str, list[str]]]: ...
    def __repr__(self, /) -> str: ...
    @classmethod
    def _resume(cls, /, pack: Pack, limits: Limits, replayed: bool, begun: str | bytes | bytearray | Mapping[str, Any], later: SupportsGetItem[int, str]) -> LevelCheck: ...
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
        poured, bare customary units being those of the check; `at` is the moment asked about (RFC 3339, or a `datetime`
        with its offset), else the newest entry's.

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
    def replay(cls, /, pack: Pack, journal: str | bytes | bytearray | Mapping[str, Any], *, limits: Limits | None = None) -> LevelCheck:
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
class Linear:
    """
    Where a number stands in a row of bytes, and what it is worth: `offset` + number · `scale`.

    What `linear` and `diagnostic_reply` take as a layout, read once for many rows. `start` and `length` are in bits (1 to
    64), `order` is which byte comes first; `scale`, the worth of one step, is of the unit's kind, for a temperature a
    difference; so are `offset`, `min` and `max` if they are given. Bits count from 0, the lowest of the first byte, eight
    to a byte; `start` is the lowest bit of the number for `little`, the highest for `big`, as in the common databases of
    network signals.

    Raises `QuantityError` for a unit or an amount that cannot be read; what does not fit the data is refused with it.

    >>> from brimline.signal import Linear, linear
    >>> layout = Linear(start=0, length=8, order="little", unit="°C", scale="1 °C", offset="-40 °C")
    >>> linear(b"\\x7b", layout=layout)
    {'state': 'valid', 'value': '83 °C'}
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __getnewargs_ex__(self, /) -> tuple[tuple[()], dict]: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, *, start: SupportsIndex, length: SupportsIndex, order: Literal["little", "big"], unit: str | Unit, scale: Amount | str, signed: bool = False, offset: Amount | str | None = None, min: Amount | str | None = None, max: Amount | str | None = None) -> Linear: ...
    def __repr__(self, /) -> str: ...

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
    def may_mix(self, /, poured: str, onto: str) -> Mixing:
        """
        Whether one of its fluids may be poured onto another, by the sheet of the one that is poured; both by id.

        Only `yes` is a yes: what nobody said is `unknown`, and a relation goes one way. `path` has the statements the
        answer rests on, or those that exist and do not count. Where the other's sheet says never, nothing is allowed,
        not even after a full exchange: `unknown`, `sheets_disagree`. Common practice, no source.

        >>> from brimline import Pack
        >>> mixing = Pack.embedded().may_mix("burdock-axle", onto="sedge-thin")
        >>> mixing["answer"], mixing["reason"]
        ('no', 'said_never')
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
    def resolve(self, /, required: str, offered: SupportsGetItem[int, str]) -> list[Offer]:
        """
        What each fluid on offer may do where one of its fluids is asked for, in the order offered; all by id.

        `fill` tells whether a unit emptied by a full exchange may be filled with it, `top_up` whether it may be poured
        onto what is asked for. Nothing said is `unknown`, which is never a yes. Common practice, no source.

        >>> from brimline import Pack
        >>> offers = Pack.embedded().resolve("sedge-mid", ["sedge-thin", "burdock-axle"])
        >>> [offer["answer"] for offer in offers]
        ['may_replace', 'never']
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
class PriceList:
    """
    The price list of a counter, read and checked: fluid, parts, work and disposal, and what of it is billed.

    Made by `PriceList.embedded()` or `PriceList.from_json(json)`. Lists are equal where their digests are.

    >>> from brimline import PriceList
    >>> prices = PriceList.embedded()
    >>> prices.id, prices.currency
    ('fernhollow-counter', 'EUR')
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    @classmethod
    def _from_canonical(cls, /, json: str) -> PriceList: ...
    @property
    def currency(self, /) -> str:
        """
        The currency of every price in it, by its ISO 4217 code.
        """
    @property
    def digest(self, /) -> str:
        """
        SHA-256 of the canonical form, in lower-case hexadecimal.
        """
    @classmethod
    def embedded(cls, /) -> PriceList:
        """
        The embedded demonstration list: invented prices of an invented shop, for the embedded pack.

        >>> from brimline import PriceList
        >>> PriceList.embedded().version
        '1'
        """
    @classmethod
    def from_json(cls, /, json: str | bytes | bytearray | Mapping[str, Any], *, limits: Limits | None = None) -> PriceList:
        """
        Reads a price list from its JSON: `str`, `bytes` or a mapping.

        Raises `DocumentError` with every fault of the document, each with its path; `LimitError`.

        >>> from brimline import DocumentError, PriceList
        >>> text = PriceList.embedded().to_json().replace('"19 %"', '"119 %"')
        >>> try:
        ...     PriceList.from_json(text)
        ... except DocumentError as error:
        ...     [fault.path for fault in error.faults]
        ['taxes[0].rate']
        """
    @property
    def id(self, /) -> str:
        """
        The list's own name.
        """
    def to_json(self, /) -> str:
        """
        The canonical JSON.
        """
    @property
    def version(self, /) -> str:
        """
        The shop's version of it.
        """

@final
class Record:
    """
    A job as it was closed: its pack's name and digest, its journal, the answer, and a digest over all of it.

    Made by `Record.seal` and `Record.reopen`. What it says of the job is as it was sealed and needs no pack. Records
    are equal where their digests are.

    >>> from brimline import BrimlineError, Pack, Record
    >>> journal = {"format": "brimline-journal/1", "procedure": "pipit-level", "job": "check", "entries": []}
    >>> record = Record.seal(Pack.embedded(), journal)
    >>> record.verdict, Record.reopen(record.to_json()) == record
    ('incomplete', True)
    >>> try:
    ...     Record.reopen(record.to_json().replace("incomplete", "at_level"))
    ... except BrimlineError as error:
    ...     error.kind
    'changed'
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __reduce__(self, /) -> tuple[Any, tuple[str]]: ...
    def __repr__(self, /) -> str: ...
    @classmethod
    def _from_canonical(cls, /, json: str) -> Record: ...
    @property
    def as_found(self, /) -> Interval:
        """
        What was proved of the departure from the correct level as found (volume; negative is short).
        """
    @property
    def began(self, /) -> str | None:
        """
        When the first entry was made, as it was written; `None` without entries.
        """
    @property
    def digest(self, /) -> str:
        """
        SHA-256 of the record without its `digest`, in lower-case hexadecimal.
        """
    @property
    def ended(self, /) -> str | None:
        """
        When the last entry was made, as it was written; `None` without entries.
        """
    def evidence(self, /) -> list[Lack]:
        """
        What a warranty file is asked for and this record does not say; only what this job calls for.

        >>> from brimline import Pack, Record
        >>> journal = {"format": "brimline-journal/1", "procedure": "pipit-level", "job": "top_up", "entries": [
        ...     {"seq": 1, "at": "2026-03-02T09:00:00Z", "kind": "added", "volume": "0.5 L", "measured_by": "jug"}]}
        >>> [lack["entries"] for lack in Record.seal(Pack.embedded(), journal).evidence() if lack["id"] == "batch"]
        [[1]]
        """
    @property
    def findings(self, /) -> list[Finding]:
        """
        What a person should know of the journal, as it was sealed.
        """
    @property
    def journal(self, /) -> dict[str, Any]:
        """
        The journal as data.
        """
    @property
    def leak(self, /) -> LeakReading:
        """
        What the shortage said of a leak.
        """
    @property
    def net_added(self, /) -> Interval:
        """
        What was proved of the net volume added.
        """
    @property
    def now(self, /) -> Interval:
        """
        What was proved of the departure at the end (volume; negative is short).
        """
    @property
    def pack(self, /) -> SealedPack:
        """
        The pack the job was done on: its name, version and digest.
        """
    @property
    def procedure(self, /) -> ProcedureRef:
        """
        Which sheet the answer rests on.
        """
    def reevaluate(self, /, pack: Pack, rules: Literal["as_recorded", "latest"]) -> list[RecordDifference]:
        """
        Evaluates the journal again, and tells where the answer differs from the sealed one, by member of the result
        document: `as_recorded` by the rules and the pack it was sealed with, `latest` by those of today. Another
        version or digest of the pack is told first.

        Raises `BrimlineError`: `conflict` at `pack.id`, and at `pack.version` and `pack.digest` as recorded, for another
        pack; `unknown_value` at `rules` as recorded, if this library does not know those rules.

        >>> from brimline import Pack, Record
        >>> journal = {"format": "brimline-journal/1", "procedure": "pipit-level", "job": "check", "entries": []}
        >>> Record.seal(Pack.embedded(), journal).reevaluate(Pack.embedded(), "as_recorded")
        []
        """
    @classmethod
    def reopen(cls, /, json: str | bytes | bytearray | Mapping[str, Any], *, limits: Limits | None = None) -> Record:
        """
        Reopens a record from the text it was kept as, `str` or `bytes`.

        Raises `BrimlineError`: `changed` if any byte is not as it was sealed; `DocumentError` with every fault of what is
        cut off or no record, each with its path; `LimitError`.

        >>> from brimline import Pack, Record
        >>> journal = {"format": "brimline-journal/1", "procedure": "pipit-level", "job": "check", "entries": []}
        >>> kept = Record.seal(Pack.embedded(), journal).to_json().encode()
        >>> Record.reopen(kept).rules
        '1'
        """
    @property
    def result(self, /) -> Outcome:
        """
        The answer as it was sealed: the result document as data.
        """
    @property
    def rules(self, /) -> str:
        """
        The version of the rules the answer was given by.
        """
    @classmethod
    def seal(cls, /, pack: Pack, journal: str | bytes | bytearray | Mapping[str, Any], *, limits: Limits | None = None) -> Record:
        """
        Seals a job: evaluates the journal (`str`, `bytes` or a mapping) on the pack, and keeps both with the answer.

        Raises `DocumentError` with every fault of the journal, each with its path; `LimitError`; `BrimlineError`:
        `conflict` at `journal.pack.id`, `.version` or `.digest` if the journal names another pack.

        >>> from brimline import Pack, Record
        >>> journal = {"format": "brimline-journal/1", "procedure": "pipit-level", "job": "check", "entries": []}
        >>> Record.seal(Pack.embedded(), journal).pack["id"]
        'fernhollow'
        """
    def to_dict(self, /) -> RecordDocument:
        """
        The record as data.
        """
    def to_json(self, /) -> str:
        """
        The record as it is kept: canonical JSON, to be stored byte for byte.
        """
    @property
    def verdict(self, /) -> Literal["on_hold", "no_procedure", "repeat", "incomplete", "low", "at_level", "over", "not_low", "not_full", "not_proven"]:
        """
        What could be said of the level, as it was sealed.
        """

@final
class Teller:
    """
    Tells answers in the language of a document of messages and in the units of a shop's profile.

    Both are `str`, `bytes` or a mapping. Without messages it tells English, and without a profile each quantity in the unit
    it was entered or printed in. What is told, cautions above all, is the same for every teller. Tellers are equal where
    their documents are.

    Raises `DocumentError` with every fault of the messages, or else of the profile: a message or an argument that is
    missing or unknown, a bracket without its partner, an empty text; `LimitError`; `BrimlineError`: `conflict` where the
    profile names another language.

    >>> from brimline import Interval, Teller
    >>> shop = {"format": "brimline-profile/1", "units": {"volume": {"unit": "US qt", "decimals": 2}}}
    >>> Teller(profile=shop).departure(Interval.parse("[-2.0 L, -1.5 L]"))
    'between 1.58 US qt and 2.12 US qt short'
    """
    def __eq__(self, value: object, /) -> bool: ...
    def __getnewargs__(self, /) -> tuple[str, str]: ...
    def __hash__(self, /) -> int: ...
    def __ne__(self, value: object, /) -> bool: ...
    def __new__(cls, /, messages: str | bytes | bytearray | Mapping[str, Any] | None = None, profile: str | bytes | bytearray | Mapping[str, Any] | None = None, *, limits: Limits | None = None) -> Teller: ...
    def __repr__(self, /) -> str: ...
    def answered(self, /, room: str, list: str, id: str) -> str | None:
        """
        What an id that a calculator answers means, by its room, the list it is of, and the id; `None` where there are no
        words, as for names that stand for themselves.

        >>> from brimline import Teller
        >>> Teller().answered("leak", "response", "report")
        'Report it to whoever decides about the repair.'
        """
    def audit(self, /, prices: PriceList, pack: Pack, records: SupportsGetItem[int, Record], *, billed: SupportsGetItem[int, Any | None] | None = None) -> str:
        """
        What `records.audit` answers in lines of at most 80 columns, with every caution in full.

        Raises what `records.audit` raises.

        >>> from brimline import Pack, PriceList, Teller
        >>> "0.00 EUR" in Teller().audit(PriceList.embedded(), Pack.embedded(), [])
        True
        """
    def caution(self, /, id: str) -> str | None:
        """
        A caution of the library in full, by its id; `None` for a sheet's own, whose text stands on the sheet.

        >>> from brimline import Teller, caution
        >>> Teller().caution("torque_unit") == caution("torque_unit")
        True
        """
    def comebacks(self, /, records: SupportsGetItem[int, Record], *, rules: str | bytes | bytearray | Mapping[str, Any] | None = None) -> str:
        """
        What `records.comebacks` answers in lines of at most 80 columns, with every caution in full.

        Raises what `records.comebacks` raises.

        >>> from brimline import Teller
        >>> "Nothing was found" in Teller().comebacks([])
        True
        """
    def departure(self, /, interval: Interval) -> str:
        """
        A departure from the correct level in words: short, over, or across it.

        >>> from brimline import Interval, Teller
        >>> Teller().departure(Interval.parse("(-inf, 0 L]"))
        'at the level or short, by how much is not known'
        """
    def estimate(self, /, prices: PriceList, check: LevelCheck, asked: str | bytes | bytearray | Mapping[str, Any] | None = None) -> str:
        """
        What `estimate` answers in lines of at most 80 columns, with every caution in full.

        Raises what `estimate` raises.

        >>> from brimline import LevelCheck, Pack, PriceList, Teller
        >>> header = {"format": "brimline-journal/1", "procedure": "pipit-level", "edition": 2, "job": "check"}
        >>> told = Teller().estimate(PriceList.embedded(), LevelCheck.start(Pack.embedded(), header))
        >>> all(total in told for total in ("62.12 EUR", "81.04 EUR", "185.54 EUR"))
        True
        """
    def follow_up(self, /, record: Record, *, history: History | None = None, rules: str | bytes | bytearray | Mapping[str, Any] | None = None) -> str:
        """
        What `records.follow_up` answers in lines of at most 80 columns, with every caution in full.

        Raises what `records.follow_up` raises.

        >>> from brimline import Pack, Record, Teller
        >>> journal = {"format": "brimline-journal/1", "procedure": "pipit-level", "job": "check", "entries": []}
        >>> "Before the vehicle is handed over" in Teller().follow_up(Record.seal(Pack.embedded(), journal))
        True
        """
    def history(self, /, history: History) -> str:
        """
        A history in lines of at most 80 columns, with every caution in full, as `History.text` tells it in English.

        >>> from brimline import History, Teller
        >>> Teller().history(History.of([])) == History.of([]).text()
        True
        """
    def invoice(self, /, prices: PriceList, check: LevelCheck, estimated: str | bytes | bytearray | Mapping[str, Any] | None = None) -> str:
        """
        What `invoice` answers in lines of at most 80 columns, with every caution in full.

        Raises what `invoice` raises.

        >>> from brimline import LevelCheck, Pack, PriceList, Teller
        >>> journal = {"format": "brimline-journal/1", "procedure": "pipit-level", "edition": 2, "job": "check", "entries": []}
        >>> told = Teller().invoice(PriceList.embedded(), LevelCheck.replay(Pack.embedded(), journal))
        >>> "46.00 EUR" in told
        True
        """
    def lack(self, /, id: str) -> str | None:
        """
        What a record lacks, by the id of an item of `Record.evidence()`, as `lack` tells it in English; `None` for no such id.

        >>> from brimline import Teller, lack
        >>> Teller().lack("batch") == lack("batch")
        True
        """
    @property
    def language(self, /) -> str:
        """
        The tag of the language, as `de`.

        >>> from brimline import Teller
        >>> Teller().language
        'en'
        """
    def lint(self, /, pack: Pack) -> list[str]:
        """
        Every defect of a pack's sheets in one sentence, in the order of `Pack.lint()`.

        >>> from brimline import Pack, Teller
        >>> len(Teller().lint(Pack.embedded())) == len(Pack.embedded().lint())
        True
        """
    def messages(self, /) -> dict[str, Any]:
        """
        Every message as data.

        >>> from brimline import Teller
        >>> Teller().messages()["messages"]["unmet"]["plug_not_open"]
        'The plug is not open.'
        """
    def messages_json(self, /) -> str:
        """
        Every message as canonical JSON: the English one is what a translator starts from.

        >>> from brimline import Teller
        >>> Teller().messages_json().startswith('{"format":"brimline-messages/1","language":"en"')
        True
        """
    def outlook(self, /, forecast: Forecast) -> str:
        """
        What a `Forecast` tells so far, as `Forecast.text` tells it in English.

        >>> from brimline import Teller
        >>> from brimline.warm_up import Forecast
        >>> forecast = Forecast(min="50 °C")
        >>> Teller().outlook(forecast) == forecast.text()
        True
        """
    def profile_json(self, /) -> str:
        """
        The profile as canonical JSON.

        >>> from brimline import Teller
        >>> Teller().profile_json()
        '{"format":"brimline-profile/1"}'
        """
    def sentences(self, /, evaluation: Evaluation) -> Sentences:
        """
        The result sentence by sentence, as `Evaluation.sentences` has it.

        Raises `BrimlineError`: `conflict` for an evaluation that was pickled, which keeps its English only.
        """
    def shadow(self, /, pack: Pack, jobs: SupportsGetItem[int, str | bytes | bytearray | Mapping[str, Any]]) -> str:
        """
        What `records.shadow` answers in lines of at most 80 columns.

        Raises what `records.shadow` raises.

        >>> from brimline import Pack, Teller
        >>> "0 jobs" in Teller().shadow(Pack.embedded(), [])
        True
        """
    def story(self, /, pack: Pack | str | bytes | bytearray | Mapping[str, Any], journal: str | bytes | bytearray | Mapping[str, Any]) -> str:
        """
        A whole check told entry by entry, with every caution in full, as `story` tells it in English.

        Raises `DocumentError` with every fault of the pack, or else of the journal, each with its path; `LimitError`.

        >>> from brimline import Pack, Teller, story
        >>> journal = {"format": "brimline-journal/1", "procedure": "pipit-level", "job": "check", "entries": []}
        >>> Teller().story(Pack.embedded(), journal) == story(Pack.embedded(), journal)
        True
        """
    def text(self, /, evaluation: Evaluation) -> str:
        """
        The result of a check in lines of at most 80 columns, with every caution in full.

        Raises `BrimlineError`: `conflict` for an evaluation that was pickled, which keeps its English only.

        >>> from brimline import Pack, Teller, evaluate
        >>> journal = {"format": "brimline-journal/1", "procedure": "pipit-level", "job": "check", "entries": []}
        >>> evaluation = evaluate(Pack.embedded(), journal)
        >>> Teller().text(evaluation) == evaluation.text()
        True
        """
    def verdict(self, /, verdict: Literal["on_hold", "no_procedure", "repeat", "incomplete", "low", "at_level", "over", "not_low", "not_full", "not_proven"]) -> str:
        """
        A verdict in one sentence.

        Raises `BrimlineError`: `unknown_value` for a word of no verdict.

        >>> from brimline import Teller
        >>> Teller().verdict("low")
        'Low: at the last look the fluid did not reach the opening.'
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

def against_limit(estimate: Amount | str, *, uncertainty: Amount | str, limit: Amount | str, rule: Literal["simple_acceptance", "guarded_acceptance", "guarded_rejection"], probability: Amount | str | SupportsFloat | SupportsIndex | None = None) -> AgainstLimit:
    """
    Decides by a rule whether an estimate is above a limit, and with what probability its true value is.

    Any kind of quantity; the standard `uncertainty` is of the same kind (of a temperature: a difference) and above
    zero. A guarded `rule` takes the `probability` that its decision is right, 0.5 to 0.999999999; `simple_acceptance`
    takes none. `below` says that the limit is not passed and no more. Source: JCGM 106:2012, clauses 7 and 8.

    Raises `QuantityError`: `wrong_kind`, `out_of_range`; `BrimlineError`: `conflict` for a guarded rule without a
    probability, or simple acceptance with one.

    >>> from brimline import leak
    >>> leak.against_limit(  # one standard uncertainty above: 84 %
    ...     "1.5 L", uncertainty="0.1 L", limit="1.4 L", rule="simple_acceptance")
    {'exceeds': '0.841344746 ratio', 'decision': 'above'}
    >>> told = leak.against_limit(
    ...     "1.5 L", uncertainty="0.1 L", limit="1.4 L", rule="guarded_rejection", probability=0.95)
    >>> told["decision"], told["guard_band"]
    ('undecided', '0.164485363 L')
    """

def applied_torque(setting: Amount | str, *, lever: Amount | str, adapter: Amount | str, angle: Amount | str | None = None) -> Amount:
    """
    The torque at the plug of a wrench that is set to `setting` and carries an adapter, in the unit of the setting.

    T = S·(L + E·cos a) / L with the `lever` L, `adapter` E and `angle` a of `wrench_setting`. Source: TM 9-254, figure
    4-5, for the straight adapter; the cosine from the geometry.

    Raises `QuantityError`: `wrong_kind`, `out_of_range`.

    >>> from brimline import torque
    >>> torque.applied_torque("60 lbf·in", lever="12 in", adapter="2 in")
    Amount('70 lbf·in')
    """

def at_temperature(volume: Amount | str, *, from_: Amount | str, to: Amount | str, density: Amount | str | None = None, base: Literal["base_15c", "base_60f", "base_60f_2004", "base_15c_2004"] | None = None, coefficient: Amount | str | None = None) -> Amount:
    """
    What a volume at one temperature becomes at another, in its own unit.

    `volume` from zero; temperatures -50 to 150 °C. Give the `density` at the `base`, as for `correction_factor`, or else a
    plain `coefficient`, at most 0.002 per K, by which the growth is linear from `from_`. Source: that of
    `correction_factor`; a coefficient is common practice, no source.

    Raises `QuantityError`: `wrong_kind`, `out_of_range`; `BrimlineError`: `conflict` for both or neither of `density` and
    `coefficient`.

    >>> from brimline import volume
    >>> volume.at_temperature("100 L", from_="15 °C", to="35 °C", coefficient="0.0007 per K")
    Amount('101.4 L')
    """

def audit(prices: PriceList, pack: Pack, records: SupportsGetItem[int, Record], *, billed: SupportsGetItem[int, Any | None] | None = None) -> AuditDocument:
    """
    What records cost a shop, by its price list and without tax: doing checks again that were never proven, looking for
    leaks that were missed, fluid that was poured and not billed, pours nobody can tell the volume of, and promised times
    that were missed.

    `billed` has, for each record, the volume of fluid the customer was billed, `None` where that is not known. A job that was
    sealed again counts once, by its last record, billed what the last one tells that tells anything. What has no price is
    counted.

    Raises `QuantityError` for what is no volume.

    >>> from brimline import Pack, PriceList, Record, records
    >>> journal = {"format": "brimline-journal/1", "procedure": "pipit-level", "job": "top_up", "entries": [
    ...     {"seq": 1, "at": "2026-03-02T09:00:00Z", "kind": "added", "volume": "0.75 L", "measured_by": "jug"}]}
    >>> given = [Record.seal(Pack.embedded(), journal)]
    >>> told = records.audit(PriceList.embedded(), Pack.embedded(), given, billed=["0.5 L"])
    >>> [(item["id"], item["net"]) for item in told["items"] if item["count"]]  # 0.25 L at 21.20 EUR/L
    [('never_proven', '46.00 EUR'), ('fluid_not_billed', '5.30 EUR')]
    """

def base_density(density: Amount | str, *, temperature: Amount | str, base: Literal["base_15c", "base_60f", "base_60f_2004", "base_15c_2004"] | None = None) -> Amount:
    """
    The density at the base of a fluid whose density was observed at a temperature, in the unit it was given in.

    `temperature` -50 to 150 °C; what comes out is 800.9 to 1163.5 kg/m³. Bases and source are those of
    `correction_factor`.

    Raises `QuantityError`: `wrong_kind`, `out_of_range`; `BrimlineError`: `unknown_value`.

    >>> from brimline import volume
    >>> volume.base_density("834.22 kg/m³", temperature="40 °C").to("kg/m³", 1)
    Amount('850.0 kg/m³')
    """

def bay_card(pack: Pack | str | bytes | bytearray | Mapping[str, Any], journal: str | bytes | bytearray | Mapping[str, Any], particulars: str | bytes | bytearray | Mapping[str, Any] | None = None, *, medium: Literal["html", "markdown", "text"] = ..., teller: Teller | None = None) -> str:
    """
    The bay card of a job that is to begin: the window as the scan tool shows it, what must be met before the plug comes out, the acts
    in their order, what the pours add up to, how many containers that is, what the wrench is set to, every caution in full.

    The arguments are those of `work_sheet`; of the journal only the header counts, and of the particulars `shop`, `tool`, `adapter`,
    `angle`, `scan_unit` (`°C`, `°F` or `K`) and `container` (the size of one).

    Raises what `work_sheet` raises.

    >>> from brimline import Pack, bay_card
    >>> journal = {"format": "brimline-journal/1", "procedure": "pipit-level", "job": "check", "entries": []}
    >>> "107.6 °F" in bay_card(Pack.embedded(), journal, {"scan_unit": "°F"}, medium="text")
    True
    """

def blend(parts: Iterable[Mapping[str, Any]], *, rule: Literal["refutas_mass", "walther_volume"]) -> Amount:
    """
    The viscosity of a blend, in mm²/s, at the temperature at which those of its parts hold.

    Each part has its `viscosity`, 0.21 to 2·10⁷ mm²/s, and its `share`, 0 to 1, all shares together 1. `rule` is
    `refutas_mass` with shares by mass, or `walther_volume` with shares by volume. Source: Maples, Petroleum Refinery
    Process Economics (2000); ASTM D7152, from memory.

    Raises `QuantityError`: `wrong_kind`, `out_of_range`; `BrimlineError`: `unknown_value` for another rule.

    >>> from brimline import fluid
    >>> parts = [{"viscosity": "5 mm²/s", "share": 0.6}, {"viscosity": "20 mm²/s", "share": "40 %"}]
    >>> round(float(fluid.blend(parts, rule="refutas_mass")), 5)
    8.10855
    """

def calculate(function: str, arguments: str | bytes | bytearray | Mapping[str, Any], *, limits: Limits | None = None) -> dict[str, Any]:
    """
    Asks one calculator by its name, with its arguments as one mapping or JSON object.

    The calculators are the functions of `brimline.torque`, `volume`, `warm_up`, `fluid`, `signal`, `leak` and `money`: this is
    for those who have the name and the arguments as data. One that answers a single quantity answers `{"value": ...}`.

    Raises `DocumentError` with every fault of the arguments, each with its path; `BrimlineError`: `unknown_value` for a
    name of no calculator; what the calculator of this name raises.

    >>> from brimline import calculate
    >>> calculate("torque.applied_torque", {"setting": "60 lbf·in", "lever": "12 in", "adapter": "2 in"})
    {'value': '70 lbf·in'}
    """

def caution(id: str) -> str | None:
    """
    A caution of the library in full, by its id; `None` for a sheet's own, whose text stands on the sheet.

    >>> from brimline import caution
    >>> caution("torque_unit")
    'Mind the unit of the torque on the wrench as well as the number: threads in aluminium strip.'
    """

def cold_soak(readings: Iterable[Mapping[str, Any]], *, spread: Amount | str | None = None) -> ColdSoak:
    """
    Whether sensors agree on a vehicle that stood overnight with the engine off: fluid, coolant, intake, air.

    Each reading has a `name` and its `reading`, 2 to 100 of them, all to be within `spread` (5 °C unless given).
    `unit_question` asks about a reading whose number would agree in the other scale; nothing is converted. Common
    practice, no source.

    Raises `QuantityError`: `wrong_kind`, `out_of_range`.

    >>> from brimline import warm_up
    >>> readings = [{"name": "fluid", "reading": "68 °C"}, {"name": "coolant", "reading": "20 °C"},
    ...             {"name": "air", "reading": "19 °C"}]
    >>> told = warm_up.cold_soak(readings)
    >>> told["agree"], told["odd"], told["unit_question"]["other"]
    (False, ['fluid'], '68 °F')
    """

def combined_uncertainty(parts: Iterable[Amount | str]) -> Amount:
    """
    The standard uncertainty of a sum whose parts are independent, in the unit of the first: the root of the sum of their
    squares.

    Parts of one kind, none negative, at least one. Source: JCGM 100:2008, 5.1.2.

    Raises `QuantityError`: `wrong_kind`, `out_of_range`, both with the place in `parts`.

    >>> from brimline import leak
    >>> leak.combined_uncertainty(["0.3 L", "400 mL"])
    Amount('0.5 L')
    """

def comebacks(records: SupportsGetItem[int, Record], *, rules: str | bytes | bytearray | Mapping[str, Any] | None = None) -> ComebacksDocument:
    """
    Closed jobs that were never proven right, leaks nobody followed up, holds nobody lifted, units that were soon low
    again, and records that look as if they were written afterwards.

    From what was recorded, under the rules of that day. A job is not told where a later record of the same unit has found
    the level. What looks written afterwards is a question to be asked, not proof. `rules` has numbers of the shop's own,
    as `{"soon_days": 30}`; the others are common practice, no source.

    Raises `DocumentError` with every fault of the rules.

    >>> from brimline import Pack, Record, records
    >>> journal = {"format": "brimline-journal/1", "procedure": "pipit-level", "job": "check", "entries": [
    ...     {"seq": 1, "at": "2026-03-02T09:00:00Z", "kind": "plug", "state": "open"},
    ...     {"seq": 2, "at": "2026-03-02T09:10:00Z", "kind": "plug", "state": "closed"}]}
    >>> found = records.comebacks([Record.seal(Pack.embedded(), journal)])
    >>> found["counts"]
    {'never_at_level': 1}
    """

def conformance(value: Amount | str, *, uncertainty: Amount | str, lower: Amount | str | None = None, upper: Amount | str | None = None) -> Amount:
    """
    The probability that a true value lies within limits, from its estimate and standard uncertainty.

    Any kind of quantity; the uncertainty is of the same kind (of a temperature: a difference) and above zero; one of the
    limits may be left out. Source: JCGM 106:2012, clause 7.

    Raises `QuantityError`: `wrong_kind`, `out_of_range`; `BrimlineError`: `conflict` without any limit.

    >>> from brimline import leak
    >>> leak.conformance("507 mL", uncertainty="10 mL", lower="490 mL")
    Amount('0.955434537 ratio')
    """

def consumption(visits: Iterable[Mapping[str, Any]], *, shortage: Amount | str | None = None) -> Consumption:
    """
    What is lost per 1000 km and per 30 days between visits, whether it rises, and how far it is to an allowed shortage.

    Visits in the order they were made, each with the `net` volume added; `odometer`, `date`, `uncertainty` and
    `odometer_uncertainty` (the most each may be off) where they are known. Rates are intervals in the unit of the later
    visit; `distance` is in the unit of the last odometer, told only where the last visit found a loss, and without a
    far end while the loss rises. The trend is `rising` or `falling` only where the first and the last rate have nothing
    in common, else `not_shown`. A unit that is sealed has no normal consumption. Common practice, no source.

    Raises `QuantityError`: `wrong_kind`, `out_of_range` for an odometer or a date that goes back, with its path, as
    `visits[2].odometer`.

    >>> from brimline import leak
    >>> visits = [{"odometer": odometer, "net": net, "uncertainty": "0.1 L", "odometer_uncertainty": "0 km"}
    ...           for odometer, net in [("40000 km", "1.2 L"), ("50000 km", "0.4 L"), ("60000 km", "0.9 L")]]
    >>> told = leak.consumption(visits, shortage="0.5 L")
    >>> told["rates"][1]["per_1000_km"], told["trend"], told["distance"]
    (['0.08 L', '0.1 L'], 'rising', ['5000 km', None])
    """

def containers(need: Amount | str, *, sizes: Iterable[Mapping[str, Any]], opened: Iterable[Mapping[str, Any]] | None = None, bulk: Mapping[str, Any] | None = None) -> ContainerPlans:
    """
    Which containers to open for a fill: the fewest, the cheapest, and what leaves least over.

    Each of the `sizes` has a `name` and its `volume`, if need be a `price` in the smallest unit of the one currency and
    the `stock`. Each of the `opened` ones has `name`, `volume`, `same_fluid`, `sealed`, `clean`, `dated` and, where that is
    known, `within_date`; those that can be used go first. `bulk` has what is `available`. Volumes count exactly, all at one
    temperature. `short` is what is missing: do not start. Source: arithmetic; what makes an opened container unfit is
    common practice, no source.

    Raises `QuantityError`: `wrong_kind`, `out_of_range`; `BrimlineError`: `duplicate_id` for two sizes of one name; all
    with paths as `sizes[1].volume`.

    >>> from brimline import volume
    >>> plans = volume.containers("6.5 L", sizes=[{"name": "bottle", "volume": "1 L"}, {"name": "can", "volume": "5 L"}])
    >>> plans["fewest"]["containers"], plans["least_waste"]["left"]
    ([{'name': 'can', 'count': 2}], '0.5 L')
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

def cool_down(first: Amount | str, *, second: Amount | str, elapsed: Amount | str, ambient: Amount | str, max: Amount | str, reheat_per_minute: Amount | str, reheat_time: Amount | str) -> CoolDown:
    """
    How long fluid that was found too warm must cool before the engine is started again, and to which temperature.

    `first` and `second` are two readings, `elapsed` apart, while it cools to the air at `ambient`; `max` is the upper
    limit, which running reaches again at `reheat_per_minute`, a difference, for the `reheat_time` until the level is read:
    so the target lies below it. The `wait` counts from the second reading; `earliest` and `latest` are its
    ends where each reading is half its last place off. Source: the lumped thermal capacity; the target
    from common practice, no source.

    Raises `QuantityError`: `wrong_kind`, `out_of_range` for readings that do not fall by more than the place they are
    read to or lie at or below the air, and where cooling never reaches the target.

    >>> from brimline import warm_up
    >>> plan = warm_up.cool_down("70 °C", second="60 °C", elapsed="10 min", ambient="20 °C", max="45 °C",
    ...     reheat_per_minute="1.5 °C", reheat_time="4 min")
    >>> plan["target"], plan["wait"][:5]
    ('39 °C', '33.36')
    """

def correction_factor(density: Amount | str, *, temperature: Amount | str, base: Literal["base_15c", "base_60f", "base_60f_2004", "base_15c_2004"] | None = None) -> Amount:
    """
    The factor from a volume at a temperature to the volume at the base: V at the base = V · factor.

    `density` at the base, 800.9 to 1163.5 kg/m³; `temperature` -50 to 150 °C. The bases are `base_15c` (15 °C, the SI form
    of 1980; it is meant where none is given), `base_60f` (60 °F, 1980), `base_60f_2004` and `base_15c_2004` (the procedure
    of 2004, rounded to five decimals). Source: API MPMS 11.1 / ASTM D1250, lubricating-oil group; the procedure of 2004 from memory.

    Raises `QuantityError`: `wrong_kind`, `out_of_range`; `BrimlineError`: `unknown_value`.

    >>> from brimline import volume
    >>> volume.correction_factor("850 kg/m³", temperature="40 °C").to("ratio", 6)  # as in table 54D
    Amount('0.981437 ratio')
    """

def cost(price: str, *, quantity: Amount | str, rounding: Literal["half_even", "half_up", "down", "up", "floor", "ceiling"]) -> str:
    """
    What a quantity costs at a price for one of its unit: the exact product, rounded once to the smallest unit of the currency.

    A `price` of zero or above with an ISO 4217 code, up to 9 decimals; a `quantity` of any kind, zero or above; `rounding`
    `half_even`, `half_up`, `down`, `up`, `floor` or `ceiling`.

    Raises `QuantityError`: `not_a_number` and its kin, `unit_missing` without a currency, `out_of_range` below zero or past 15
    digits; `BrimlineError`: `unknown_value` for a currency or rounding that is not listed.

    >>> from brimline import money
    >>> money.cost("11.9050 EUR", quantity="1.05 L", rounding="half_up")  # 12.50025
    '12.50 EUR'
    """

def crossing(samples: Iterable[Mapping[str, Any]], *, temperature: Amount | str, scatter: Amount | str | None = None, asymptote: Amount | str | None = None) -> Crossing:
    """
    When the response that `fit` finds crosses a temperature, and how well that is known.

    `at` is on the clock of the readings, `uncertainty` standard. Source: the delta method.

    Raises what `fit` raises, and `QuantityError`: `out_of_range` for a temperature at or beyond the asymptote, or too
    near to it to tell.

    >>> from brimline import warm_up
    >>> readings = [19.9, 25.89, 31.93, 36.97, 41.3, 45.55, 48.79, 52.46]
    >>> samples = [{"at": f"{60 * minute} s", "reading": f"{reading} °C"} for minute, reading in enumerate(readings)]
    >>> warm_up.crossing(samples, temperature="40 °C")["at"][:7]
    '220.998'
    """

def cycles_needed(capacity: Amount | str, *, drained: Amount | str, fresh: Amount | str | SupportsFloat | SupportsIndex) -> CyclesNeeded:
    """
    How often to drain and fill until the new fluid is at least a share of the whole.

    `capacity` above zero; `drained` each time, above zero to the capacity; `fresh` 0 to 1, 1 only where everything is
    drained. Source: that of `exchange`, solved for the number.

    Raises `QuantityError`: `wrong_kind`, `out_of_range`.

    >>> from brimline import volume
    >>> needed = volume.cycles_needed("7.4 L", drained="3.5 L", fresh="85 %")
    >>> needed["cycles"], needed["used"]
    (3, '10.5 L')
    """

def density_at(density: Amount | str, *, temperature: Amount | str, base: Literal["base_15c", "base_60f", "base_60f_2004", "base_15c_2004"] | None = None) -> Amount:
    """
    The density at a temperature of a fluid whose density at the base is known, in the unit it was given in.

    Ranges, bases and source are those of `correction_factor`.

    Raises `QuantityError`: `wrong_kind`, `out_of_range`; `BrimlineError`: `unknown_value`.

    >>> from brimline import volume
    >>> volume.density_at("850 kg/m³", temperature="40 °C").to("kg/m³", 2)
    Amount('834.22 kg/m³')
    """

def diagnostic_reply(request: bytes | bytearray | str, *, reply: bytes | bytearray | str, layout: Linear | Mapping[str, Any] | None = None) -> Reply:
    """
    Reads what a control unit answers when it is asked for one value: `positive` with data, `negative`, or `pending`.

    `request` and `reply` are bytes or hexadecimal text: a data identifier (service 22) or a parameter of current data
    (service 01). With a `layout`, as of `linear`, the value in the data is read. Bytes in the answer are hexadecimal
    text. Source: ISO 14229-1, ReadDataByIdentifier and annex A; SAE J1979, service 01, from memory.

    Raises `BrimlineError` for an answer that does not belong to the request or is cut short.

    >>> from brimline import signal
    >>> signal.diagnostic_reply("22 11 61", reply=bytes.fromhex("7F 22 31"))
    {'state': 'negative', 'code': 49, 'reason': 'out_of_range'}
    """

def drip_rate(drops: int, *, in_time: Amount | str, drop: Amount | str) -> DripRate:
    """
    What a drip loses, from drops counted in a time.

    At least one of `drops`; `in_time` and the volume of one `drop` above zero. A drop has no default: published ones differ
    fivefold, and oil drops were measured from 0.02 to 0.07 mL.

    Raises `QuantityError`: `wrong_kind`, `out_of_range`.

    >>> from brimline import leak
    >>> leak.drip_rate(60, in_time="1 min", drop="0.05 mL")
    {'per_day': '4.32 L', 'per_year': '1576.8 L', 'one_drop_every': '1 s'}
    """

def drops_for(volume: Amount | str, *, over: Amount | str, drop: Amount | str) -> Amount:
    """
    The time from drop to drop, in s, of a drip that loses a volume over a time.

    All above zero; the volume of one `drop` is no more than `volume`.

    Raises `QuantityError`: `wrong_kind`, `out_of_range`.

    >>> from brimline import leak
    >>> leak.drops_for("0.5 L", over="1440 h", drop="0.04 mL")  # 12500 drops in 60 days
    Amount('414.72 s')
    """

def equivalents(printed: Iterable[Amount | str]) -> Equivalents:
    """
    Holds prints of one quantity in several units against the first, which governs, and names what went wrong.

    In this order: the same value is `exact`; within half of its last printed digit a print `agrees`; within that of
    another print that agrees it is `chain_rounded`; within 3 % of a known factor it is a `unit_slip`, of one between
    units of nearly one size (litre and quart, imperial and US) only where the number was kept; else it is
    `inconsistent`. Any one kind of quantity. Common practice, no source.

    Raises `QuantityError`: `wrong_kind` where the kinds differ, `out_of_range` for an empty list.

    >>> from brimline import torque
    >>> prints = torque.equivalents(["14 N·m", "10 lbf·ft", "168 N·m"])["prints"]
    >>> [(print["class"], print.get("factor")) for print in prints]
    [('governing', None), ('agrees', None), ('unit_slip', 'times_12')]
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

def estimate(prices: PriceList, check: LevelCheck, asked: str | bytes | bytearray | Mapping[str, Any] | None = None) -> Estimate:
    """
    What a job will cost: the best, the likely and the worst case, each a consistent set of lines, as data.

    What was poured on the check is a fact in every case. `asked` is what the host knows besides, as `str`, `bytes` or a
    mapping, every member optional: `likely` (volume), `planned` (the next pour), `ceiling` (money), `stock` (`full`, `opened`,
    `bulk`) and `on` (a day).

    Raises `DocumentError` with every fault of what is asked; `BrimlineError`: `unresolved` for everything that has no price,
    all at once, with its path; `conflict` and `out_of_range` at the ceiling.

    >>> from brimline import LevelCheck, Pack, PriceList, estimate
    >>> header = {"format": "brimline-journal/1", "procedure": "pipit-level", "edition": 2, "job": "check"}
    >>> told = estimate(PriceList.embedded(), LevelCheck.start(Pack.embedded(), header), {"ceiling": "100 EUR"})
    >>> [told[case]["total"] for case in ("best", "likely", "worst")]
    ['62.12 EUR', '81.04 EUR', '185.54 EUR']
    >>> [finding["id"] for finding in told["findings"]]
    ['worst_past_ceiling']
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

def exchange(capacity: Amount | str, *, drained: Amount | str, cycles: int) -> Exchange:
    """
    What is left of the old fluid after draining and filling a number of times: (1 - drained/capacity)^cycles.

    `capacity` above zero, of all the fluid in the unit; `drained` each time, zero to the capacity; both at one temperature.
    `used` is in the unit of what is drained. Source: mass balance, formula from memory.

    Raises `QuantityError`: `wrong_kind`, `out_of_range`.

    >>> from brimline import volume
    >>> left = volume.exchange("10 L", drained="4 L", cycles=2)
    >>> left["old"], left["fresh"], left["used"]
    ('0.36 ratio', '0.64 ratio', '8 L')
    """

def expanded_uncertainty(uncertainty: Amount | str, *, factor: Amount | str | SupportsFloat | SupportsIndex | None = None) -> Amount:
    """
    The half width of an interval that is expected to hold most of what the true value could be: U = k·u.

    In the unit of the standard `uncertainty` u; the `factor` k is above zero, 2 if it is not given. Source: JCGM 100:2008,
    6.2.1; the 2: NIST Technical Note 1297, 6.5 (clauses from memory).

    Raises `QuantityError`: `wrong_kind`, `out_of_range`.

    >>> from brimline import leak
    >>> leak.expanded_uncertainty("50 mL")
    Amount('100 mL')
    """

def fit(samples: Iterable[Mapping[str, Any]], *, scatter: Amount | str | None = None, asymptote: Amount | str | None = None) -> WarmUpFit:
    """
    Fits the first-order response T∞ - (T∞ - T₀)·exp(-t/τ) to readings, rising or falling.

    Each sample has the time it was taken `at` and its `reading`: three or more in order of time, two with the
    `asymptote` held. Without `scatter` by least squares; with it, a difference above zero, by soft L1, so that a reading
    far off draws no harder than one scatter away. Source: Levenberg (1944) and Marquardt (1963); standard errors as
    `curve_fit` of scipy 1.17.1 gives them.

    Raises `QuantityError`: `wrong_kind`, `out_of_range` for too few readings, times that go back, and readings that do
    not tell where they are going.

    >>> from brimline import Amount, warm_up
    >>> readings = [19.9, 25.89, 31.93, 36.97, 41.3, 45.55, 48.79, 52.46]
    >>> samples = [{"at": f"{minute} min", "reading": f"{reading} °C"} for minute, reading in enumerate(readings)]
    >>> Amount(warm_up.fit(samples)["asymptote"]).to("°C", 4)
    Amount('80.0419 °C')
    """

def flush(capacity: Amount | str, *, flowed: Amount | str) -> Flush:
    """
    What is left of the old fluid when new fluid flows through and mixes perfectly: exp(-flowed/capacity).

    `capacity` above zero, `flowed` from zero, both at one temperature. Imperfect mixing leaves more. Source: the stirred
    tank, formula from memory; CDC MMWR 1994;43(RR-13), table S3-1 tabulates it for air.

    Raises `QuantityError`: `wrong_kind`, `out_of_range`.

    >>> from brimline import volume
    >>> volume.flush("7.4 L", flowed="7.4 L")["old"]
    '0.367879441 ratio'
    """

def flush_needed(capacity: Amount | str, *, fresh: Amount | str | SupportsFloat | SupportsIndex) -> FlushNeeded:
    """
    How much new fluid must flow through, mixing perfectly, until it is a share of the whole.

    `capacity` above zero, `fresh` from 0 to below 1; `volume` is in the unit of the capacity. Source: that of `flush`, solved for the volume.

    Raises `QuantityError`: `wrong_kind`, `out_of_range`.

    >>> from brimline import volume
    >>> volume.flush_needed("60 L", fresh=0.99)["volume"][:3]  # 276 minutes at one change an hour in the source
    '276'
    """

def follow_up(record: Record, *, history: History | None = None, rules: str | bytes | bytearray | Mapping[str, Any] | None = None) -> FollowUpDocument:
    """
    When a job is to be looked at again: after what distance or time, and why.

    `history` gives the rate of the record's unit, which is used where the record is its newest visit. `rules` has numbers
    of the shop's own, as `{"allowed_shortage": "0.5 US qt"}`; the others are common practice, no source. No clock is
    asked: the day is that of the last work and so many days.

    Raises `DocumentError` with every fault of the rules.

    >>> from brimline import Pack, Record, records
    >>> journal = {"format": "brimline-journal/1", "procedure": "pipit-level", "job": "check", "entries": []}
    >>> told = records.follow_up(Record.seal(Pack.embedded(), journal))
    >>> told["now"], told["because"][0]["id"]
    (True, 'level_not_found')
    """

def forecast(samples: Iterable[Mapping[str, Any]], *, min: Amount | str | None = None, max: Amount | str | None = None, scatter: Amount | str | None = None, pours: Iterable[Mapping[str, Any]] | None = None, held: Amount | str | None = None) -> Outlook:
    """
    When the window of temperature opens and closes: earliest, likely and latest, counted from the last reading.

    Each sample has the time it was taken `at` and its `reading`, in order of time. `min` opens the window, `max` closes it;
    `scatter` of the readings is 0.5 °C unless given; each of the `pours` has `at`, `volume` and `temperature` and mixes
    with the fluid `held` in the unit, without which it starts the forecast anew. By a first-order response from four
    readings on, where they show that its asymptote lies beyond the limit; by the line through the latest ones otherwise;
    not at all where they do not rise. `Forecast` is the same, kept up reading by reading. Source: the delta method; Theil
    (1950) and Sen (1968).

    Raises `QuantityError`: `wrong_kind`, `out_of_range`, with the place in the list.

    >>> from brimline import warm_up
    >>> readings = [19.9, 25.89, 31.93, 36.97, 41.3, 45.55]
    >>> samples = [{"at": f"{minute} min", "reading": f"{reading} °C"} for minute, reading in enumerate(readings)]
    >>> told = warm_up.forecast(samples, min="50 °C", max="60 °C")
    >>> told["method"], sorted(told["opens"])
    ('first_order', ['earliest', 'latest', 'likely'])
    """

def grade(viscosity_40: Amount | str) -> Grade:
    """
    The ISO viscosity grade of an oil, from its viscosity at 40 °C, more than nothing.

    `low` and `high` are the limits of the grade; between two grades, where there is no `grade`, the limits on either
    side. Source: ISO 3448:1992, table 1.

    Raises `QuantityError`: `wrong_kind`, `out_of_range`.

    >>> from brimline import fluid
    >>> fluid.grade("28.8 mm²/s")
    {'grade': 32, 'low': '28.8 mm²/s', 'high': '35.2 mm²/s'}
    >>> fluid.grade("38 mm²/s")
    {'low': '35.2 mm²/s', 'high': '41.4 mm²/s'}
    """

def grade_limits(grade: int) -> Interval:
    """
    The limits of an ISO viscosity grade, in mm²/s at 40 °C.

    Source: ISO 3448:1992, table 1.

    Raises `BrimlineError`: `unknown_value` for a number that is no grade, with all that are.

    >>> from brimline import fluid
    >>> print(fluid.grade_limits(46))
    [41.4 mm²/s, 50.6 mm²/s]
    """

def guard_band(uncertainty: Amount | str, *, probability: Amount | str | SupportsFloat | SupportsIndex) -> Amount:
    """
    How far from a limit an estimate must be for a decision that is right with a probability, in the unit of the
    uncertainty.

    w = z·u with the standard `uncertainty` u above zero and z the quantile of the `probability`, 0.5 to 0.999999999.
    Source: JCGM 106:2012, clause 8.3 (clause from memory).

    Raises `QuantityError`: `wrong_kind`, `out_of_range`.

    >>> from brimline import leak
    >>> leak.guard_band("1 Δ°C", probability="95 %")
    Amount('1.644853627 Δ°C')
    """

def invoice(prices: PriceList, check: LevelCheck, estimated: str | bytes | bytearray | Mapping[str, Any] | None = None) -> Invoice:
    """
    What a job costs: the facts of its journal by line and cause, the leftover and the waste, as data.

    With what `estimate` answered, as it was or as JSON, also how the invoice differs from the likely case, line by line, and
    why.

    Raises `DocumentError` with every fault of the estimate; `BrimlineError`: `unresolved` for everything that has no price,
    all at once, with its path; `conflict` for an estimate in another currency.

    >>> from brimline import LevelCheck, Pack, PriceList, invoice
    >>> journal = {"format": "brimline-journal/1", "procedure": "pipit-level", "edition": 2, "job": "top_up", "entries": [
    ...     {"seq": 1, "at": "2026-03-02T09:00:00Z", "kind": "plug", "state": "open"},
    ...     {"seq": 2, "at": "2026-03-02T09:01:00Z", "kind": "added", "volume": "0.42 L", "measured_by": "jug"}]}
    >>> told = invoice(PriceList.embedded(), LevelCheck.replay(Pack.embedded(), journal))
    >>> fluid = told["lines"][1]
    >>> fluid["quantity"], fluid["unit_code"], fluid["net"], fluid["cause"]["entries"]
    ('0.45 L', 'LTR', '9.54 EUR', [2])
    """

def lack(id: str) -> str | None:
    """
    What a record lacks in one English sentence, by the id of an item of `Record.evidence()`; `None` for no such id.

    >>> from brimline import lack
    >>> lack("batch")
    'The batch of the fluid is not stated.'
    """

def level_for(sump: Mapping[str, Any], *, volume: Amount | str) -> Amount:
    """
    The level at which a sump holds a volume, in mm from the lowest point.

    The sump is that of `volume_below`, `volume` within what it holds.

    Raises what `volume_below` raises.

    >>> from brimline import volume
    >>> rows = [{"level": "0 mm", "volume": "0 L"}, {"level": "50 mm", "volume": "2 L"}]
    >>> volume.level_for({"shape": "strapping", "rows": rows}, volume="1.5 L")
    Amount('37.5 mm')
    """

def linear(data: bytes | bytearray | str, *, layout: Linear | Mapping[str, Any]) -> SignalReading:
    """
    Reads one number from a row of bytes, exactly: `offset` + number · `scale`.

    `data` is bytes or hexadecimal text, the layout a `Linear` or a mapping with its members. Outside `min` to `max` a
    value is `implausible`.

    Raises `QuantityError`: `out_of_range` for bits outside the data; what else a layout can have wrong, with its path.

    >>> from brimline import signal
    >>> layout = {"start": 0, "length": 8, "order": "little", "unit": "°C", "scale": "1 °C", "offset": "-40 °C"}
    >>> signal.linear(b"\\x7b", layout=layout)
    {'state': 'valid', 'value': '83 °C'}
    """

def mass(volume: Amount | str, *, temperature: Amount | str, density: Amount | str, base: Literal["base_15c", "base_60f", "base_60f_2004", "base_15c_2004"] | None = None) -> Amount:
    """
    The mass of a volume at a temperature, in kg.

    `volume` from zero; `density` is the one at the base. Ranges, bases and source are those of `correction_factor`.

    Raises `QuantityError`: `wrong_kind`, `out_of_range`; `BrimlineError`: `unknown_value`.

    >>> from brimline import volume
    >>> volume.mass("7 L", temperature="15 °C", density="850 kg/m³")
    Amount('5.95 kg')
    """

def mixed_temperature(volume: Amount | str, *, temperature: Amount | str, added: Amount | str, added_temperature: Amount | str) -> Amount:
    """
    The temperature of fluid after more of it was poured in, before the case warms it again, in the unit of `temperature`.

    Tm = (V·T + v·t) / (V + v): `volume` above zero at `temperature`, `added` from zero at `added_temperature`, both of one
    fluid. Source: the balance of heat; common practice.

    Raises `QuantityError`: `wrong_kind`, `out_of_range`.

    >>> from brimline import warm_up
    >>> mixed = warm_up.mixed_temperature("6.8 L", temperature="45.8 °C", added="0.25 L", added_temperature="18 °C")
    >>> mixed.to("°C", 2)  # (6.8 · 45.8 + 0.25 · 18) / 7.05
    Amount('44.81 °C')
    """

def picture(pack: Pack | str | bytes | bytearray | Mapping[str, Any], journal: str | bytes | bytearray | Mapping[str, Any], which: Literal["warm_up", "narrowing", "closing"], particulars: str | bytes | bytearray | Mapping[str, Any] | None = None, *, teller: Teller | None = None) -> str | None:
    """
    A picture of a check as SVG that stands alone, light or dark as the reader's screen is; `None` where there is nothing to draw.

    `which` is `warm_up`, `narrowing` or `closing`. The other arguments are those of `work_sheet`; of the particulars the tool counts.

    Raises what `work_sheet` raises.

    >>> from brimline import Pack, picture
    >>> journal = {"format": "brimline-journal/1", "procedure": "pipit-level", "job": "check", "entries": [
    ...     {"seq": 1, "at": "2026-03-02T09:00:00Z", "kind": "temperature", "reading": "31 °C", "source": "scan"}]}
    >>> picture(Pack.embedded(), journal, "warm_up").startswith("<svg ")
    True
    >>> picture(Pack.embedded(), journal, "narrowing") is None
    True
    """

def plausible(torque: Amount | str, *, thread: str, plug: Literal["steel", "light_alloy", "hollow", "unknown"]) -> Plausibility:
    """
    Whether a printed torque fits a thread, and if not, which unit would make its number fit.

    The band is one of solid steel bolts that clamp, in steel, and only its upper end judges: a plug that seals gets
    less. Below the band nothing is judged; below a sixth of its lower end, where no plug holds, a unit is named as a
    question. A `hollow` plug, one in `light_alloy` and one that is `unknown` are not judged by the band at all, and a
    unit is named for them as a question only. `torque` above zero. Source: stress area and proof stress of ISO 898-1, T
    = K·D·F; which shares and coefficients bound the band is common practice, no source.

    Raises `QuantityError`: `wrong_kind`, `out_of_range`; `BrimlineError`: `unknown_value`.

    >>> from brimline import torque
    >>> told = torque.plausible("124 lbf·ft", thread="M10x1", plug="steel")  # 124 lbf·in is 14 N·m
    >>> told["fits"], told["slip"]["unit"]
    ('no', 'lbf·in')
    """

def preload(torque: Amount | str, *, diameter: Amount | str, k: Amount | str | SupportsFloat | SupportsIndex | None = None, condition: Literal["dry_steel", "machine_oil", "cadmium", "phosphate_and_oil", "zinc", "stainless", "threadlocker", "lubricated_other"] | None = None) -> Preload:
    """
    The preload of a joint that was tightened to a torque, from the least to the most, in N: F = T / (K·D).

    `diameter` D is the nominal one. Give either `k`, a ratio above 0 and up to 1, or the `condition` of the threads to
    take its published range from; the scatter of K is carried into the answer. Source: the short form as in Mechanical
    Fastening, Joining, and Assembly, page 85; the ranges of K as printed on a fastener supplier's page.

    Raises `QuantityError`: `wrong_kind`, `out_of_range`; `BrimlineError`: `conflict` for both or neither of `k` and
    `condition`, `unknown_value` for a condition without a range (`threadlocker`, `lubricated_other`): sources contradict
    each other there.

    >>> from brimline import torque
    >>> torque.preload("12 N·m", diameter="10 mm", condition="dry_steel")["preload"]
    ['4444.44444444 N', '6666.66666667 N']
    """

def proof_load(thread: str, *, class_: Literal["4.6", "4.8", "5.6", "5.8", "6.8", "8.8", "9.8", "10.9", "12.9"]) -> Amount:
    """
    The load that a bolt of a metric thread and a strength class bears without lengthening, in N.

    The nominal stress area, rounded to three digits, times the stress under proof load. `class_` is one of ISO 898-1,
    as `8.8`. Source: ISO 898-1, which prints the product to three digits; seen in print for 4.8, 8.8 up to M16 and 10.9,
    the other classes from memory.

    Raises `BrimlineError`: `unknown_value` for a thread or class that is not known.

    >>> from brimline import torque
    >>> torque.proof_load("M10", class_="8.8")  # ISO 898-1 prints 33 700 N
    Amount('33640 N')
    """

def quantile(probability: Amount | str | SupportsFloat | SupportsIndex) -> Amount:
    """
    The number of standard deviations that a standard normal variable stays below with a probability.

    From 0.000000001 to 0.999999999, negative below a half. Source: Wichura, Algorithm AS 241 (1988).

    Raises `QuantityError`: `wrong_kind`, `out_of_range`.

    >>> from brimline import leak
    >>> leak.quantile(0.95).to("ratio", 2)  # as JCGM 106:2012, table 1, prints it
    Amount('1.64 ratio')
    """

def response_time(time_constant: Amount | str, *, share: Amount | str | SupportsFloat | SupportsIndex) -> Amount:
    """
    How long a first-order response takes to go a share of its way, in the unit of the time constant: -τ·ln(1 - share).

    `time_constant` above zero, `share` from 0 to below 1. Source: the lumped thermal capacity.

    Raises `QuantityError`: `wrong_kind`, `out_of_range`.

    >>> from brimline import warm_up
    >>> warm_up.response_time("2 min", share=0.95).to("min", 2)
    Amount('5.99 min')
    """

def risks(mean: Amount | str, *, spread: Amount | str, uncertainty: Amount | str, tolerance: Interval | Sequence[Amount | str | None], acceptance: Interval | Sequence[Amount | str | None]) -> Risks:
    """
    How often a value out of tolerance would be accepted (`consumer`), and one within it rejected (`producer`).

    True values are spread normally about `mean` with the standard deviation `spread`; each is measured with the standard
    `uncertainty`, both above zero; what is measured within `acceptance` is accepted, what truly lies within `tolerance`
    should be. Ranges are an `Interval` or two ends, `None` for one that is not there. Any kind of quantity. Source: JCGM
    106:2012, clause 9.

    Raises `QuantityError`: `wrong_kind`, `out_of_range`; `BrimlineError`: `conflict` for a range without an end.

    >>> from brimline import leak
    >>> told = leak.risks("1500 ratio", spread="0.12 ratio", uncertainty="0.04 ratio",  # the source's resistor
    ...     tolerance=["1499.8 ratio", "1500.2 ratio"], acceptance=["1499.82 ratio", "1500.18 ratio"])
    >>> told["consumer"][:5], told["producer"][:5]
    ('0.009', '0.069')
    """

def seepage(class_: Literal["I", "II", "III"]) -> Seepage:
    """
    What a class of seepage, `I`, `II` or `III`, means and leads to.

    Source: US Army TM 9-2330-373-14&P, paragraph 4-7; TM 9-2320-269-20-1; TM 5-3895-383-24, paragraph 1-10; the steady
    stream: TM 10-3930-671-10, paragraph 3-3. The service sheet may ask for more.

    Raises `BrimlineError`: `unknown_value`.

    >>> from brimline import leak
    >>> told = leak.seepage("II")
    >>> told["meaning"], told["drives"], told["fuel"]
    ('drops_form_none_fall', 'check_more_often', 'do_not_run')
    """

def segment_share(level: Amount | str, *, diameter: Amount | str) -> Amount:
    """
    The share of a circle that lies below a level.

    `diameter` above zero, `level` from its lowest point, zero to the diameter. Source: geometry, formula from memory.

    Raises `QuantityError`: `wrong_kind`, `out_of_range`.

    >>> from brimline import volume
    >>> volume.segment_share("100 mm", diameter="1 m")
    Amount('0.052044019 ratio')
    """

def sensor_doubts(samples: Iterable[Mapping[str, Any]], *, running: bool) -> SensorDoubts:
    """
    Which readings are to be asked about: those no fluid in a gearbox has, those a broken sensor gives, jumps no fluid makes, and cool
    ones that stand still while the engine is `running`.

    Each sample has the time it was taken `at` and its `reading`, in order of time. Nothing is deleted or converted.
    Source: default readings from the codings of SAE J1979 and SAE J1939-71; the rest common practice, no source.

    Raises `QuantityError`: `wrong_kind`, `out_of_range` for times that go back.

    >>> from brimline import warm_up
    >>> samples = [{"at": f"{at} s", "reading": reading} for at, reading in [(0, "31 °C"), (30, "-40 °F"), (60, "32 °C")]]
    >>> warm_up.sensor_doubts(samples, running=True)
    {'doubts': [{'index': 1, 'id': 'reading_default'}]}
    """

def shadow(pack: Pack, jobs: SupportsGetItem[int, str | bytes | bytearray | Mapping[str, Any]]) -> ShadowDocument:
    """
    Runs beside a host's old rule: evaluates old jobs on the pack and tells what differs, and how good the evidence is.

    A job is `{"id", "journal", "verdict"?, "leak"?}`, with what the old rule said in the words of a result. Of a job of
    which only amounts were kept, the journal is one of pours. Grades: `A` a look and all the sheet asks, `B` a look with
    gaps, `C` a temperature and amounts, `D` amounts or less.

    Raises `DocumentError` with every fault of the first job that cannot be read.

    >>> from brimline import Pack, records
    >>> old = {"id": "4711", "leak": "below", "journal": {"format": "brimline-journal/1", "procedure": "pipit-level",
    ...     "job": "check", "entries": [{"seq": 1, "at": "2025-03-04T09:00:00Z", "kind": "added", "volume": "1.2 L"}]}}
    >>> [(told["id"], told["now"], told["grade"]) for told in records.shadow(Pack.embedded(), [old])["differences"]]
    [('leak_differs', 'above', 'D')]
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

def temperature_error(volume: Amount | str, *, read_at: Amount | str, reference: Amount | str, density: Amount | str | None = None, base: Literal["base_15c", "base_60f", "base_60f_2004", "base_15c_2004"] | None = None, coefficient: Amount | str | None = None) -> Amount:
    """
    How much more the fluid takes up at the temperature it is read at than at the reference; below zero where it is colder.

    `volume` is what the unit holds at the `reference`, from zero; temperatures -50 to 150 °C; `density`, `base` and
    `coefficient` are those of `at_temperature`. In the unit of `volume`. It tells by how much a level deceives; no sheet is
    corrected by it that does not say so itself.

    Raises what `at_temperature` raises.

    >>> from brimline import volume
    >>> told = volume.temperature_error("6.8 L", read_at="60 °C", reference="40 °C", density="850 kg/m³")
    >>> told.to("L", 2)
    Amount('0.11 L')
    """

def temperature_for(viscosity_1: Amount | str, *, temperature_1: Amount | str, viscosity_2: Amount | str, temperature_2: Amount | str, viscosity: Amount | str) -> Amount:
    """
    The temperature, in °C, at which an oil has a viscosity, from its viscosities at two temperatures.

    The spans, the source and what is raised are those of `viscosity_at`.

    >>> from brimline import fluid
    >>> fluid.temperature_for(
    ...     "32 mm²/s", temperature_1="40 °C", viscosity_2="5.4 mm²/s", temperature_2="100 °C", viscosity="32 mm²/s")
    Amount('40 °C')
    """

def thread(designation: str) -> ThreadGeometry:
    """
    The geometry of a thread from its designation: `M10x1`, `M10` (coarse), `1/4-20`, `1/4-20 UNC`, `#10-32`.

    Metric threads from M1.6 to M39 in mm, unified ones from #4 to 1 1/2 in in; the stress area in mm² or in². Source:
    ISO 261, ISO 724, ISO 898-1 for the stress area, ASME B1.1; all from memory.

    Raises `BrimlineError`: `unknown_value` for any other thread, with the pitches the diameter has.

    >>> from brimline import torque
    >>> told = torque.thread("7/16-20")
    >>> told["designation"], told["diameter"], told["pitch"]
    ('7/16-20 UNF', '0.4375 in', '0.05 in')
    """

def tilt_error(surface: Amount | str, *, offset: Amount | str, tilt: Amount | str) -> TiltError:
    """
    How far the level deceives where the opening lies off the middle of the surface and the unit leans.

    `surface` of the fluid above zero; `offset` of the opening from the middle of the surface along the lean, from zero;
    `tilt` from 0° to below 45°. `height` is in the unit of the offset, `volume` in L. Leaning towards the opening it
    reads too high, away from it too low: an opening on the low side reads full too early, with less in the unit than
    there should be, one on the high side too late. Source: trigonometry.

    Raises `QuantityError`: `wrong_kind`, `out_of_range`.

    >>> from brimline import volume
    >>> told = volume.tilt_error("0.06 m²", offset="200 mm", tilt="1 deg")
    >>> told["height"][:5], told["volume"][:5]
    ('3.491', '0.209')
    """

def tool_suits(target: Amount | str, *, tools: Iterable[Mapping[str, Any]], tolerance: Amount | str | None = None, adapter: Amount | str | None = None, angle: Amount | str | None = None) -> ToolChoice:
    """
    Which tools can tighten the plug, the best first, each with its setting and the reasons for and against it.

    Each tool has a `name`, a `type` of ISO 6789 (as `setting_adjustable`, `indicating_dial`) and its `max`; `min`,
    `graduation`, `permissible` (a ratio) and, for an adapter, `lever` where they are known. `tolerance` is how far the
    torque may be off to either side; `adapter` and `angle` are those of `wrench_setting`. A tool that does not suit has
    rank 0. Source: ISO 6789:2003 for types, deviations and the range that is tested.

    Raises `QuantityError`: `out_of_range`; `BrimlineError`: `conflict`, and what else a tool can have wrong, with its
    path, as `tools[1].max`.

    >>> from brimline import torque
    >>> tools = [{"name": "long", "type": "setting_adjustable", "max": "200 N·m"},
    ...          {"name": "short", "type": "setting_adjustable", "max": "50 N·m"}]
    >>> told = torque.tool_suits("12 N·m", tools=tools)["tools"]
    >>> [(tool["name"], tool["rank"], tool["reasons"][0]["id"]) for tool in told]
    [('short', 1, 'permissible_assumed'), ('long', 0, 'below_range')]
    """

def torque_for_preload(preload: Amount | str, *, diameter: Amount | str, k: Amount | str | SupportsFloat | SupportsIndex | None = None, condition: Literal["dry_steel", "machine_oil", "cadmium", "phosphate_and_oil", "zinc", "stainless", "threadlocker", "lubricated_other"] | None = None) -> JointTorque:
    """
    The torque that gives a joint its preload, from the least to the most, in N·m: T = K·D·F.

    `diameter`, `k`, `condition`, the source and what is raised are those of `preload`.

    >>> from brimline import torque
    >>> torque.torque_for_preload("1000 N", diameter="10 mm", k=0.2)["torque"]
    ['2 N·m', '2 N·m']
    """

def totals(lines: Iterable[Mapping[str, Any]], *, currency: str, rates: Iterable[Mapping[str, Any]], rounding: Literal["half_even", "half_up", "down", "up", "floor", "ceiling"], place: Literal["line", "document"]) -> Totals:
    """
    What lines come to: their net, each tax with what it is on, and the total.

    `lines` have a `net` and, where they bear tax, the `taxes` by name; `rates` have an `id` and a `rate` from 0 to 100 %. Each
    tax is of the net and is rounded as `rounding` says, on each `line` or once on the `document`. `currency` is an ISO 4217
    code. Which line bears which tax, the rates and the rounding are the caller's: there is no tax law in here.

    Raises `BrimlineError` and its kinds, with all faults at once: `conflict` for another currency, `unresolved` for a tax
    without a rate, `duplicate_id`, `out_of_range`, `too_many_digits` for parts of a cent.

    >>> from brimline import money
    >>> told = money.totals([{"net": "4.97 USD", "taxes": ["goods"]}] * 6, currency="USD",
    ...     rates=[{"id": "goods", "rate": "7 %"}], rounding="half_up", place="document")
    >>> told["taxes"][0]["tax"], told["total"]
    ('2.09 USD', '31.91 USD')
    """

def transmission_frame(id: int | str, *, data: bytes | bytearray | str) -> Frame:
    """
    Reads the frame in which a heavy vehicle's transmission tells temperature, level and level status of its fluid:
    parameter group 65272, eight bytes.

    `id` is the identifier of 29 bits and `data` the bytes; either may be hexadecimal text. Every value has its `state`;
    only `valid` may be used. A departure counts only with the status `conditions_met`. Source: SAE J1939-71, PGN 65272,
    SPN 177, 124, 3027, 3028, 3026.

    Raises `QuantityError`: `out_of_range` for another parameter group and for anything but eight bytes;
    `BrimlineError`: `unknown_value` for text that is not hexadecimal.

    >>> from brimline import signal
    >>> frame = signal.transmission_frame(0x18FEF8FE, data=bytes.fromhex("FFFF FFFF 2028 7A20"))
    >>> frame["temperature"], frame["departure"], frame["status"]
    ({'state': 'valid', 'value': '48 °C'}, {'state': 'valid', 'value': '-1.5 L'}, 'in_gear')
    """

def versions() -> Versions:
    """
    The versions of the library, of its rules and of the documents it reads and writes.

    `rules` rises whenever any verdict can change.

    >>> from brimline import versions
    >>> versions()["documents"]["journal"]
    'brimline-journal/1'
    """

def viscosity_at(viscosity_1: Amount | str, *, temperature_1: Amount | str, viscosity_2: Amount | str, temperature_2: Amount | str, temperature: Amount | str) -> Amount:
    """
    The viscosity of an oil at a temperature, in mm²/s, from its viscosities at two other temperatures.

    Viscosities are 0.21 to 2·10⁷ mm²/s, temperatures -70 to 370 °C; the two points in either order. Source: ASTM
    D341-03, equations 1 to 3 and annex A1; the spans from memory.

    Raises `QuantityError`: `wrong_kind`, `out_of_range`; `BrimlineError`: `conflict` for two equal temperatures or an
    oil that would not thin as it warms.

    >>> from brimline import fluid
    >>> at_80 = fluid.viscosity_at(
    ...     "32 mm²/s", temperature_1="40 °C", viscosity_2="5.4 mm²/s", temperature_2="100 °C", temperature="80 °C")
    >>> round(float(at_80), 1)  # as a published worksheet prints it
    8.5
    """

def viscosity_index(viscosity_40: Amount | str, *, viscosity_100: Amount | str) -> ViscosityIndex:
    """
    The viscosity index of an oil from its viscosities at 40 °C and at 100 °C.

    At 100 °C from 2 mm²/s on, at 40 °C more than at 100 °C, both up to 2·10⁷ mm²/s. The answer has the index as it is
    reported, the procedure, L and H, and the index before rounding. Lubricants lie from below 0 to some 400 (from
    memory): far outside, one of the viscosities or its temperature was mistaken. Source: ASTM D2270-93, procedures A
    and B, table 1.

    Raises `QuantityError`: `wrong_kind`, `out_of_range`; `BrimlineError`: `conflict` where the oil is not thicker at
    40 °C.

    >>> from brimline import fluid
    >>> found = fluid.viscosity_index("73.30 mm²/s", viscosity_100="8.86 mm²/s")  # the example of procedure A
    >>> found["index"], found["procedure"], found["l"], found["h"]
    (92, 'a', '119.94 mm²/s', '69.48 mm²/s')
    """

def volume_below(sump: Mapping[str, Any], *, level: Amount | str) -> Amount:
    """
    How much a sump holds below a level, in L.

    The sump is a `prismoid` with `height` and the areas `bottom`, `middle` and `top`; a `lying_cylinder` with `diameter`
    and `length`; or a `strapping` table with `rows` of `level` and `volume`, both rising. The level is measured from the
    lowest point, within the sump. Source: geometry; the prismoidal formula and the circular segment from memory.

    Raises `QuantityError`: `wrong_kind`, `out_of_range`; what else a sump can have wrong, with its path.

    >>> from brimline import volume
    >>> drum = {"shape": "lying_cylinder", "diameter": "1 m", "length": "2 m"}
    >>> volume.volume_below(drum, level="300 mm").to("L", 1)  # a published example gives 396.3 L
    Amount('396.3 L')
    """

def volume_of_mass(mass: Amount | str, *, temperature: Amount | str, density: Amount | str, base: Literal["base_15c", "base_60f", "base_60f_2004", "base_15c_2004"] | None = None) -> Amount:
    """
    The volume a mass takes up at a temperature, in L.

    `mass` from zero; `density` is the one at the base. Ranges, bases and source are those of `correction_factor`.

    Raises `QuantityError`: `wrong_kind`, `out_of_range`; `BrimlineError`: `unknown_value`.

    >>> from brimline import volume
    >>> volume.volume_of_mass("425 g", temperature="15 °C", density="850 kg/m³")
    Amount('0.5 L')
    """

def waste(check: LevelCheck) -> Waste:
    """
    What came out on a job, for the disposal log: the stream it goes to, the volume, and what is proved of that.

    >>> from brimline import LevelCheck, Pack, waste
    >>> journal = {"format": "brimline-journal/1", "procedure": "pipit-level", "job": "check", "entries": [
    ...     {"seq": 1, "at": "2026-03-02T09:00:00Z", "kind": "plug", "state": "open"},
    ...     {"seq": 2, "at": "2026-03-02T09:01:00Z", "kind": "drained", "volume": "0.3 L", "measured_by": "jug",
    ...      "why": "excess"}]}
    >>> out = waste(LevelCheck.replay(Pack.embedded(), journal))
    >>> out["stream"], out["volume"], out["between"]
    ('oil', '0.3 L', ['0.28 L', '0.32 L'])
    """

def work_sheet(pack: Pack | str | bytes | bytearray | Mapping[str, Any], journal: str | bytes | bytearray | Mapping[str, Any], particulars: str | bytes | bytearray | Mapping[str, Any] | None = None, *, medium: Literal["html", "markdown", "text"] = ..., teller: Teller | None = None) -> str:
    """
    The work sheet of a job, on one printed page: what was found and done, what it means and what comes next, the leak reading,
    the lines of money, what is not proven, three pictures, every caution in full.

    The pack and the journal are those of `evaluate`. `particulars` is a mapping or JSON with `shop` (a list of lines), `tool` (as for
    `torque.tool_suits`), `adapter` and `angle` of it, `record` (the digest of the sealed record), `prices` (a price list) and `estimate`
    (the document of an estimate), each of which may be left out. `medium` is `html`, one document that needs nothing from
    elsewhere, `markdown` or `text`. A `Teller` tells in its language and units.

    Raises `DocumentError` with every fault of the pack, or else of the journal, or else of the particulars, each with its path;
    `LimitError`; what the tool and the prices are refused for.

    >>> from brimline import Pack, work_sheet
    >>> journal = {"format": "brimline-journal/1", "procedure": "pipit-level", "job": "check", "entries": []}
    >>> page = work_sheet(Pack.embedded(), journal, {"shop": ["Fernhollow Gear & Drive"]})
    >>> page.startswith("<!DOCTYPE html>"), "<script" in page
    (True, False)
    """

def wrench_setting(target: Amount | str, *, lever: Amount | str, adapter: Amount | str | None = None, angle: Amount | str | None = None, graduation: Amount | str | None = None, printed: Amount | str | None = None) -> WrenchSetting:
    """
    What a wrench is set to so that the plug gets the target: S = T·L / (L + E·cos a).

    `lever` L is from the mark of the grip to the drive, `adapter` E from the drive to the plug and not longer, `angle`
    a between them from 0° straight out (the default) to 180°, pointing back over at most half of the lever; lengths and
    torques above zero. With a `graduation` the setting is a multiple of it, half to even, else it is in the unit of the
    target, unrounded; `applied` is the torque at the plug with that setting, `error` how far that is from the target.
    Give `printed`, what the sheet prints, and a target that is the set-point for it is refused, for it would be
    corrected twice. Source: NAVEDTRA 14315, figures 3-44 and 3-45, and TM 1-1500-204-23-9, figure 8-16; the cosine from
    the geometry.

    Raises `QuantityError`: `wrong_kind`, `out_of_range`; `BrimlineError`: `conflict` for an angle without an adapter and
    for a set-point given as target.

    >>> from brimline import torque
    >>> told = torque.wrench_setting("40 lbf·ft", lever="12 in", adapter="4 in")
    >>> told["setting"], told["applied"], told["error"]
    ('30 lbf·ft', '40 lbf·ft', '0 %')
    """

def wrong_left(capacity: Amount | str, *, wrong: Amount | str, drained: Amount | str, cycles: int) -> Amount:
    """
    The share of a wrong fluid that is left in the whole after draining and filling a number of times.

    `capacity` above zero; `wrong` in it at the start, `drained` each time, both zero to the capacity; all at one
    temperature. Source: that of `exchange`.

    Raises `QuantityError`: `wrong_kind`, `out_of_range`.

    >>> from brimline import volume
    >>> volume.wrong_left("10 L", wrong="1 L", drained="4 L", cycles=2)
    Amount('0.036 ratio')
    """
