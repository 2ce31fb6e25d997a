"""The shapes of what `estimate`, `invoice` and `waste` answer as data, for annotations.

Money and prices are text with their currency, quantities text, as `Amount` reads it; pieces are a plain number. Words and
ids are stable. A later minor version may add members and words, and takes none away.
"""

from typing import Literal, TypedDict

from .answers import Args, Ends, Finding

__all__ = [
    "Against",
    "Approval",
    "Assumption",
    "Case",
    "Cause",
    "Estimate",
    "Invoice",
    "Leftover",
    "Line",
    "OpenedContainers",
    "PricesRef",
    "Shelf",
    "TaxSum",
    "Times",
    "UnusedContainer",
    "Variance",
    "Waste",
]


class PricesRef(TypedDict):
    """Which price list the sums rest on."""

    id: str
    version: str
    digest: str


class Cause(TypedDict):
    """Why a line is there: the rule, and the entries it rests on."""

    policy: Literal[
        "whole_container",
        "used",
        "bulk",
        "hands_on",
        "bay",
        "fixed",
        "customer",
        "sheet",
        "replaced",
        "each_job",
        "volume_out",
    ]
    entries: list[int]


class Line(TypedDict):
    """A line of money: `net` is `price` times `quantity`, rounded once."""

    id: Literal[
        "labour", "wait", "leak_search", "fluid", "plug", "seal", "threadlocker", "supplies", "disposal"
    ]
    item: str
    cause: Cause
    quantity: str
    unit_code: str
    price: str
    net: str
    taxes: list[str]


class TaxSum(TypedDict):
    """What one tax comes to."""

    id: str
    rate: str
    base: str
    tax: str


class Assumption(TypedDict):
    """One thing a case assumes."""

    id: str
    args: Args


class Case(TypedDict):
    """One case of an estimate."""

    volume: str
    assumes: list[Assumption]
    lines: list[Line]
    net: str
    taxes: list[TaxSum]
    total: str


class Times(TypedDict, total=False):
    """How long the job takes."""

    hands_on: str
    bay: str
    promised: str


class _Approved(TypedDict):
    ceiling: str
    entries: list[int]
    so_far: str


class Approval(_Approved, total=False):
    """What the customer approved, and what is left of it."""

    headroom: str
    over: str
    planned: str
    after: str
    affordable: str


class OpenedContainers(TypedDict):
    """A number of containers of one size."""

    container: str
    count: int


class UnusedContainer(TypedDict):
    """An opened container that is not used, and why not."""

    name: str
    reasons: list[Literal["other_fluid", "not_sealed", "not_clean", "not_dated", "out_of_date", "age_unknown"]]


class _Needed(TypedDict):
    need: str
    containers: list[OpenedContainers]
    opened: list[str]
    unused: list[UnusedContainer]


class Shelf(_Needed, total=False):
    """What the worst case would take off the shelf; `short` is how much is missing."""

    short: str
    bulk: str
    left: str


class _Estimate(TypedDict):
    format: str
    prices: PricesRef
    job: Literal["check", "top_up", "new_fill", "exchange", "leak_follow_up", "recheck", "condition_only"]
    times: Times
    poured: str
    best: Case
    likely: Case
    worst: Case
    findings: list[Finding]
    cautions: list[str]


class Estimate(_Estimate, total=False):
    """An estimate: best, likely and worst."""

    approval: Approval
    stock: Shelf


class Leftover(TypedDict):
    """What is left in the containers that hold what went in."""

    fluid: str
    containers: list[OpenedContainers]
    left: str


class Waste(TypedDict):
    """What came out, for the disposal log."""

    stream: Literal["oil", "mixed"]
    volume: str
    between: Ends
    entries: list[int]
    unmeasured: list[int]


class _Differs(TypedDict, total=False):
    more: str
    less: str


class Variance(_Differs):
    """One thing that is billed otherwise than it was estimated."""

    id: Literal[
        "labour", "wait", "leak_search", "fluid", "plug", "seal", "threadlocker", "supplies", "disposal"
    ]
    estimated: str
    billed: str
    why: list[Literal["added", "not_needed", "not_yet", "more", "less", "other_item", "other_price", "other_rounding"]]
    entries: list[int]


class Against(_Differs):
    """What an invoice says against an estimate."""

    estimated: str
    lines: list[Variance]


class _Invoice(TypedDict):
    format: str
    prices: PricesRef
    job: Literal["check", "top_up", "new_fill", "exchange", "leak_follow_up", "recheck", "condition_only"]
    lines: list[Line]
    net: str
    taxes: list[TaxSum]
    total: str
    waste: Waste
    findings: list[Finding]
    cautions: list[str]


class Invoice(_Invoice, total=False):
    """An invoice: the facts of a job by line and cause."""

    leftover: list[Leftover]
    against: Against
