"""The shapes of what is answered as data, for annotations: members of the result document and of a pack's answers.

Quantities are text, as `Amount` reads it. Every `id` is stable and language-free; `args` hold quantity text, whole
numbers and ids. A later minor version may add members and words, and takes none away.
"""

from typing import Any, Literal, TypedDict

__all__ = [
    "Args",
    "Candidate",
    "Counted",
    "Difference",
    "Ends",
    "Finding",
    "Flip",
    "Formats",
    "Gate",
    "GateSentences",
    "Gates",
    "Lack",
    "LeakReading",
    "LintFinding",
    "Mixing",
    "NextAct",
    "Offer",
    "Outcome",
    "Outlook",
    "ProcedureRef",
    "Reason",
    "RecordDifference",
    "RecordDocument",
    "SealedPack",
    "Selection",
    "Sentences",
    "Span",
    "Statement",
    "Unmet",
    "Versions",
]

Args = dict[str, str | int]
Ends = list[str | None]
"""The two ends of an interval; `None` where it is unbounded."""


class _Verdict(TypedDict):
    verdict: Literal[
        "on_hold",
        "no_procedure",
        "repeat",
        "incomplete",
        "low",
        "at_level",
        "over",
        "not_low",
        "not_full",
        "not_proven",
    ]


class _Leak(TypedDict):
    by_sheet: Literal["above", "below", "open", "not_applicable"]
    certainty: Literal["clear", "marginal", "open", "not_applicable"]


class _Severity(TypedDict):
    severity: Literal["note", "caution", "stop"]


class _ProcedureRef(TypedDict, total=False):
    edition: int
    digest: str


class ProcedureRef(_ProcedureRef):
    """Which sheet an answer rests on; without `edition` none applied."""

    id: str


class Counted(TypedDict):
    """Nominal volumes up to where the level was found; `None` where one cannot be told."""

    gross: str | None
    net: str | None
    used: str | None


class _LeakReading(_Leak, total=False):
    limit: str
    margin: str


class LeakReading(_LeakReading):
    """What the shortage says of a leak."""

    counted: Counted
    shortage: Ends


class _Finding(_Severity, total=False):
    field: str


class Finding(_Finding):
    """Something in the journal that a person should know of; `entries` are told by `seq`."""

    id: str
    entries: list[int]
    args: Args


class Reason(TypedDict):
    """Why an answer is what it is, down to entries of the journal and fields of the sheet."""

    id: str
    entries: list[int]
    fields: list[str]
    args: Args


class _Wait(TypedDict, total=False):
    wait: str


class NextAct(_Wait):
    """One thing to do next, with the cautions that go with it; `wait` is how long to wait first."""

    id: str
    args: Args
    cautions: list[str]


class Unmet(_Wait):
    """What stands in the way of an act; `wait` is how long it takes to mend itself."""

    id: str
    args: Args


class Gate(TypedDict):
    """Whether an act is allowed."""

    allowed: bool
    unmet: list[Unmet]


class Gates(TypedDict):
    """What may be done now."""

    open: Gate
    pour: Gate
    close: Gate
    stop_engine: Gate


_Change = TypedDict("_Change", {"from": str, "to": str})


class Flip(_Change, _Verdict, _Leak):
    """One change that would turn the answer, and the answer then; `entry` is the `seq` of what it is in."""

    turns: Literal["verdict", "leak"]
    changed: Literal["temperature", "captured", "drained", "added"]
    entry: int


class _Span(TypedDict, total=False):
    likely: str
    latest: str


class Span(_Span):
    """When something happens, counted from the last reading or pour; without `latest` nothing bounds it."""

    earliest: str


class _Outlook(TypedDict, total=False):
    reason: str
    now: str
    rate_per_minute: str
    opens: Span
    closes: Span


class Outlook(_Outlook):
    """When the window opens and closes; `rate_per_minute` is a difference, `suspect` the places of doubted readings."""

    method: Literal["first_order", "slope", "none"]
    suspect: list[int]


class _Outcome(_Verdict, total=False):
    forecast: Outlook
    flip: list[Flip]
    why_not: list[Reason]


class Outcome(_Outcome):
    """The result document; `flip` and `why_not` are there if they were asked for, `forecast` while there is
    something to wait for."""

    format: str
    procedure: ProcedureRef
    rules: str
    as_found: Ends
    net_added: Ends
    now: Ends
    leak: LeakReading
    findings: list[Finding]
    because: list[Reason]
    next: list[NextAct]
    gates: Gates
    cautions: list[str]


class GateSentences(TypedDict):
    """What stands in the way of each act, in English."""

    open: list[str]
    pour: list[str]
    close: list[str]
    stop_engine: list[str]


class Sentences(TypedDict):
    """The result in English: lists in the order of its members, every caution of it by its id."""

    verdict: str
    findings: list[str]
    because: list[str]
    next: list[str]
    gates: GateSentences
    cautions: dict[str, str]


class _Candidate(TypedDict, total=False):
    unit: str


class Candidate(_Candidate):
    """One sheet that fits; `unit` is what to look for on the vehicle."""

    procedure: str
    edition: int


class Selection(TypedDict):
    """What a question for the right sheet finds."""

    answer: Literal["one", "several", "none"]
    candidates: list[Candidate]


_Difference = TypedDict("_Difference", {"from": str, "to": str}, total=False)


class Difference(_Difference):
    """One field in which two editions differ; a side that does not have it is absent."""

    field: str


class _LintFinding(_Severity, total=False):
    args: dict[str, str]


class LintFinding(_LintFinding):
    """One defect of one sheet; `field` is its path within the procedure."""

    id: str
    procedure: str
    edition: int
    field: str


_Pair = TypedDict("_Pair", {"from": str, "to": str})


class _Relation(TypedDict):
    relation: Literal["same", "mixes_with", "replaces", "full_exchange_only", "never", "unknown"]


class Statement(_Pair, _Relation):
    """One relation, as the sheet of the fluid `from` states it."""


class Mixing(_Relation):
    """Whether one fluid may be poured onto another, and the statements that rests on; only `yes` is a yes."""

    answer: Literal["yes", "after_exchange", "no", "unknown"]
    path: list[Statement]
    reason: str


class Offer(TypedDict):
    """What one fluid on offer may do where another is asked for, and the statements that rests on."""

    id: str
    answer: Literal["same", "may_replace", "may_top_up", "after_exchange", "never", "unknown"]
    fill: bool
    top_up: bool
    path: list[Statement]
    reason: str


class SealedPack(TypedDict):
    """The pack a record was sealed with."""

    id: str
    version: str
    digest: str


class RecordDocument(TypedDict):
    """A record: what is kept of a job."""

    format: str
    pack: SealedPack
    journal: dict[str, Any]
    rules: str
    result: Outcome
    digest: str


class Lack(TypedDict):
    """One thing a warranty file is asked for and a record does not say."""

    id: str
    severity: Literal["note", "caution", "stop"]
    entries: list[int]


class _RecordDifference(TypedDict, total=False):
    was: Any
    now: Any


class RecordDifference(_RecordDifference):
    """One place in which today's answer differs from the sealed one; a side that does not have it is absent."""

    path: str


class Formats(TypedDict):
    """The document formats that are read and written."""

    pack: str
    journal: str
    result: str
    record: str
    prices: str
    messages: str
    profile: str
    estimate: str
    invoice: str
    history: str
    comebacks: str
    follow_up: str
    audit: str
    shadow: str


class Versions(TypedDict):
    """The versions of the library, of its rules and of its documents."""

    library: str
    rules: str
    documents: Formats
