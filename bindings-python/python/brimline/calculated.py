"""The shapes of what `torque`, `volume`, `warm_up` and `fluid` answer as data, for annotations.

Quantities are text, as `Amount` reads it; `Ends` are the two ends of an interval. Words and ids are stable. A later minor
version may add members and words, and takes none away.
"""

from typing import Literal, TypedDict

from .answers import Ends

__all__ = [
    "ColdSoak",
    "ContainerCount",
    "ContainerPlan",
    "ContainerPlans",
    "CoolDown",
    "Crossing",
    "CyclesNeeded",
    "Doubt",
    "Equivalents",
    "Exchange",
    "Flush",
    "FlushNeeded",
    "Grade",
    "JointTorque",
    "OpenedUse",
    "OtherUnit",
    "Plausibility",
    "Preload",
    "Print",
    "SensorDoubts",
    "StandardErrors",
    "ThreadGeometry",
    "TiltError",
    "ToolChoice",
    "ToolFit",
    "ToolReason",
    "UnitSlip",
    "ViscosityIndex",
    "WarmUpFit",
    "WrenchSetting",
]


class WrenchSetting(TypedDict):
    """What a wrench is set to, the torque at the plug with that, and how far that is off in %."""

    setting: str
    applied: str
    error: str
    cautions: list[str]


class ToolReason(TypedDict):
    """One reason for or against a tool, with the quantities it is about."""

    id: str
    args: dict[str, str]


class _ToolFit(TypedDict, total=False):
    setting: str
    applied: str
    error: str


class ToolFit(_ToolFit):
    """How one tool suits; rank 1 is the best, 0 one that does not suit."""

    name: str
    suits: bool
    rank: int
    permissible: str
    reasons: list[ToolReason]


class ToolChoice(TypedDict):
    """The tools, those that suit first."""

    tools: list[ToolFit]
    cautions: list[str]


class _Print(TypedDict, total=False):
    gap: str
    factor: str
    through: str


_Class = TypedDict(
    "_Class",
    {"class": Literal["governing", "exact", "agrees", "chain_rounded", "unit_slip", "inconsistent"]},
)


class Print(_Print, _Class):
    """How one print stands to the first: `factor` for a slip, `through` for the rounded print it came from."""

    print: str


class Equivalents(TypedDict):
    """Every print with its class, in the order they were given."""

    prints: list[Print]


class Preload(TypedDict):
    """The preload a torque gives in N, and the coefficients it was reckoned with."""

    preload: Ends
    k: Ends


class JointTorque(TypedDict):
    """The torque a preload takes in N·m, and the coefficients it was reckoned with."""

    torque: Ends
    k: Ends
    cautions: list[str]


class ThreadGeometry(TypedDict):
    """A thread and what follows from its designation."""

    designation: str
    diameter: str
    pitch: str
    pitch_diameter: str
    minor_diameter: str
    root_diameter: str
    stress_area: str


class UnitSlip(TypedDict):
    """The same number in another unit."""

    unit: str
    torque: str


class _Plausibility(TypedDict, total=False):
    slip: UnitSlip


class Plausibility(_Plausibility):
    """Whether a torque fits a thread; the band is in N·m."""

    fits: Literal["yes", "no", "not_judged"]
    band: Ends
    basis: Literal["steel_bolt"]
    cautions: list[str]


class TiltError(TypedDict):
    """How far a level deceives at an opening when the unit leans."""

    height: str
    volume: str


class Flush(TypedDict):
    """Shares of old and new fluid after flushing."""

    old: str
    fresh: str
    cautions: list[str]


class FlushNeeded(TypedDict):
    """How much new fluid must flow through."""

    volume: str
    cautions: list[str]


class Exchange(Flush):
    """Shares of old and new fluid after a number of changes, and how much new fluid they used."""

    used: str


class CyclesNeeded(Exchange):
    """How often to drain and fill, and what that leaves."""

    cycles: int


class ContainerCount(TypedDict):
    """A number of containers of one size."""

    name: str
    count: int


class _ContainerPlan(TypedDict, total=False):
    bulk: str
    price: int


class ContainerPlan(_ContainerPlan):
    """What to open, what to use up first, and what that leaves over."""

    containers: list[ContainerCount]
    opened: list[str]
    total: str
    left: str


class OpenedUse(TypedDict):
    """Whether an opened container can be used, and why not."""

    name: str
    usable: bool
    reasons: list[Literal["other_fluid", "not_sealed", "not_clean", "not_dated", "out_of_date", "age_unknown"]]


class _ContainerPlans(TypedDict, total=False):
    fewest: ContainerPlan
    cheapest: ContainerPlan
    least_waste: ContainerPlan
    short: str


class ContainerPlans(_ContainerPlans):
    """Plans by three measures; none where something is `short`."""

    opened: list[OpenedUse]
    cautions: list[str]


class _StandardErrors(TypedDict, total=False):
    asymptote: str


class StandardErrors(_StandardErrors):
    """How well a fit is known, as standard uncertainties; `asymptote` is not there where it was held."""

    start: str
    time_constant: str


class _WarmUpFit(TypedDict, total=False):
    standard_errors: StandardErrors


class WarmUpFit(_WarmUpFit):
    """The first-order response nearest to readings."""

    asymptote: str
    start: str
    time_constant: str


class _Crossing(TypedDict, total=False):
    uncertainty: str


class Crossing(_Crossing):
    """When a response crosses a temperature, on the clock of the readings."""

    at: str


class CoolDown(TypedDict):
    """How long to wait, and for what temperature."""

    target: str
    wait: str
    earliest: str
    latest: str
    time_constant: str
    cautions: list[str]


class OtherUnit(TypedDict):
    """A reading whose number would fit with another unit behind it: a question, never a conversion."""

    name: str
    reading: str
    other: str


class _ColdSoak(TypedDict, total=False):
    unit_question: OtherUnit


class ColdSoak(_ColdSoak):
    """Whether readings after a cold soak agree, and which are odd."""

    agree: bool
    apart: str
    odd: list[str]


class Doubt(TypedDict):
    """One doubted reading by its place."""

    index: int
    id: Literal["reading_impossible", "reading_default", "reading_jumps", "reading_stuck"]


class SensorDoubts(TypedDict):
    """The readings to be asked about."""

    doubts: list[Doubt]


class ViscosityIndex(TypedDict):
    """A viscosity index and what it came from."""

    index: int
    procedure: Literal["a", "b"]
    l: str
    h: str
    unrounded: str


class Grade(TypedDict, total=False):
    """An ISO viscosity grade with its limits, or the limits on either side of a viscosity between two."""

    grade: int
    low: str
    high: str
