"""The shapes of what `signal`, `leak` and `money` answer as data, for annotations.

Quantities are text, as `Amount` reads it; `Ends` are the two ends of an interval. Words and ids are stable. A later minor
version may add members and words, and takes none away.
"""

from typing import Literal, TypedDict

from .answers import Ends

__all__ = [
    "AgainstLimit",
    "Consumption",
    "DripRate",
    "Frame",
    "Rate",
    "Reply",
    "Risks",
    "Seepage",
    "SignalReading",
    "TaxTotal",
    "Totals",
]


class _SignalReading(TypedDict, total=False):
    value: str


class SignalReading(_SignalReading):
    """One value from a network; only a `valid` one may be used."""

    state: Literal["valid", "parameter_specific", "reserved", "error", "not_available", "implausible"]


class Frame(TypedDict):
    """What the frame of a heavy vehicle's transmission says of its fluid."""

    temperature: SignalReading
    level: SignalReading
    departure: SignalReading
    status: str
    countdown: SignalReading


class _Reply(TypedDict, total=False):
    identifier: str
    data: str
    code: int
    reason: str
    reading: SignalReading


class Reply(_Reply):
    """What a control unit answers; bytes are hexadecimal text, `reading` is there if a layout was given."""

    state: Literal["positive", "negative", "pending"]


class _AgainstLimit(TypedDict, total=False):
    guard_band: str


class AgainstLimit(_AgainstLimit):
    """How an estimate stands to a limit; `exceeds` is the probability that the true value is above it."""

    exceeds: str
    decision: Literal["above", "below", "undecided"]


class Risks(TypedDict):
    """How often a value would be accepted wrongly (`consumer`) and rejected wrongly (`producer`)."""

    consumer: str
    producer: str


_Between = TypedDict("_Between", {"from": int, "to": int})


class _Rate(TypedDict, total=False):
    per_1000_km: Ends
    per_30_days: Ends


class Rate(_Rate, _Between):
    """What was lost between two visits, which are told by their indices."""


class _Consumption(TypedDict, total=False):
    distance: Ends


class Consumption(_Consumption):
    """What several visits say together; `distance` is from the last one, in the unit of its odometer."""

    rates: list[Rate]
    trend: Literal["rising", "not_shown", "falling", "not_told"]
    cautions: list[str]


_SeepageClass = TypedDict("_SeepageClass", {"class": Literal["I", "II", "III"]})


class _Seepage(TypedDict, total=False):
    stream: Literal["check_more_often", "report", "do_not_run"]


class Seepage(_Seepage, _SeepageClass):
    """What a class of seepage means and leads to."""

    meaning: Literal["wet_no_drops", "drops_form_none_fall", "drops_fall"]
    drives: Literal["check_more_often", "report", "do_not_run"]
    fuel: Literal["check_more_often", "report", "do_not_run"]
    cautions: list[str]


class DripRate(TypedDict):
    """What a drip loses."""

    per_day: str
    per_year: str
    one_drop_every: str


class TaxTotal(TypedDict):
    """What one tax comes to, at its `rate`, on the lines that bear it."""

    id: str
    rate: str
    base: str
    tax: str


class Totals(TypedDict):
    """What lines come to, sums of money as text: `12.50 EUR`."""

    net: str
    taxes: list[TaxTotal]
    total: str
