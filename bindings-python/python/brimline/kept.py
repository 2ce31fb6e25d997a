"""The shapes of what `History` and `brimline.records` answer as data, for annotations.

Quantities are text, as `Amount` reads it; `Ends` are the two ends of an interval. Words and ids are stable. A later minor
version may add members and words, and takes none away.
"""

from typing import Literal, TypedDict

from .answers import Args, Ends, Reason

__all__ = [
    "AuditDocument",
    "AuditItem",
    "AuditedRecord",
    "Cited",
    "ComebacksDocument",
    "FollowUpDocument",
    "FollowUpReason",
    "HistoryDocument",
    "Loss",
    "Notice",
    "PlugEvent",
    "ShadowDifference",
    "ShadowDocument",
    "VehicleHistory",
    "Visit",
]


class _Cited(TypedDict, total=False):
    job_id: str
    vehicle: str
    unit: str


class Cited(_Cited):
    """A record that is spoken of, with the entries by `seq`."""

    digest: str
    entries: list[int]


class Notice(TypedDict):
    """Something that records say together."""

    id: str
    severity: Literal["note", "caution", "stop"]
    records: list[Cited]
    args: Args


class _PlugEvent(TypedDict, total=False):
    by: str


class PlugEvent(_PlugEvent):
    """What somebody did to the plug."""

    entry: int
    at: str
    state: Literal["loosened", "open", "closed"]


class _Visit(TypedDict, total=False):
    job_id: str
    at: str
    date: str
    odometer: str
    used: str
    limit: str
    last_opened: str


class Visit(_Visit):
    """One visit of a unit to the shop, as it was recorded."""

    digest: str
    job: str
    verdict: str
    as_found: Ends
    net: Ends
    now: Ends
    by_sheet: Literal["above", "below", "open", "not_applicable"]
    plug: list[PlugEvent]


_Between = TypedDict("_Between", {"from": int, "to": int})


class _Loss(TypedDict, total=False):
    per_1000_km: Ends
    per_30_days: Ends


class Loss(_Loss, _Between):
    """What was lost between two visits, which are told by their indices."""

    lost: Ends


class _VehicleHistory(TypedDict, total=False):
    unit: str
    lost: Ends
    limit: str
    to_limit: Ends


class VehicleHistory(_VehicleHistory):
    """The visits of one unit of one vehicle, and what they say together."""

    vehicle: str
    visits: list[Visit]
    losses: list[Loss]
    trend: Literal["rising", "not_shown", "falling", "not_told"]
    notices: list[Notice]
    cautions: list[str]


class HistoryDocument(TypedDict):
    """The records of a shop by vehicle and unit."""

    format: str
    records: int
    notices: list[Notice]
    vehicles: list[VehicleHistory]


class ComebacksDocument(TypedDict):
    """What was found in many records."""

    format: str
    records: int
    counts: dict[str, int]
    notices: list[Notice]
    cautions: list[str]


class _FollowUpReason(TypedDict, total=False):
    distance: str
    days: int


class FollowUpReason(_FollowUpReason):
    """Why a job is to be looked at again, and by when for this reason alone."""

    id: str
    args: Args


class _FollowUpDocument(TypedDict, total=False):
    job: Literal["recheck", "leak_follow_up"]
    distance: str
    odometer: str
    days: int
    date: str


class FollowUpDocument(_FollowUpDocument):
    """When a job is to be looked at again, and why."""

    format: str
    digest: str
    now: bool
    hot_drive: bool
    because: list[FollowUpReason]
    cautions: list[str]


class ShadowDifference(TypedDict):
    """One answer in which the evidence of an old job differs from what the old rule said."""

    id: Literal["level_differs", "leak_differs", "outside_window"]
    job: str
    grade: Literal["A", "B", "C", "D"]
    was: str
    now: str
    missing: list[str]
    because: list[Reason]


class ShadowDocument(TypedDict):
    """Where the evidence of old jobs says something else than the old rule did."""

    format: str
    jobs: int
    grades: dict[str, int]
    same: int
    not_compared: int
    differences: list[ShadowDifference]


class _AuditedRecord(TypedDict, total=False):
    job_id: str
    vehicle: str
    unit: str
    net: str


class AuditedRecord(_AuditedRecord):
    """A record of which something costs money."""

    digest: str
    entries: list[int]
    args: Args


class AuditItem(TypedDict):
    """One thing that cost money, and the records it is about."""

    id: Literal["never_proven", "leak_missed", "fluid_not_billed", "pour_not_booked", "promise_missed"]
    count: int
    net: str
    unpriced: int
    records: list[AuditedRecord]


class _Prices(TypedDict):
    id: str
    version: str
    digest: str


class AuditDocument(TypedDict):
    """What records cost a shop, without tax, by a price list."""

    format: str
    prices: _Prices
    records: int
    items: list[AuditItem]
    net: str
    cautions: list[str]
