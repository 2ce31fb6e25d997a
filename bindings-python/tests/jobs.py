"""A job to test with: a check on the embedded pack that finds the unit short and fills it to the level."""

from datetime import datetime, timedelta, timezone
from typing import Any

from brimline import Pack

PACK = Pack.embedded()
HEADER = {"format": "brimline-journal/1", "procedure": "pipit-level", "edition": 2, "job": "check"}

# What happened, and how many seconds after the entry before: the sheet wants a temperature of the last 30 s, a look
# of 20 s, and 90 s between a pour and a look.
_FACTS: list[tuple[int, dict[str, Any]]] = [
    (0, {"kind": "confirmed", "what": "fill_opening_proven"}),
    (10, {"kind": "confirmed", "what": "plug_identified"}),
    (10, {"kind": "level", "tilt": "0.2 deg", "toward": "plug"}),
    (10, {"kind": "engine", "state": "idling"}),
    (10, {"kind": "ranges", "dwell": "4 s"}),
    (10, {"kind": "selector", "position": "park"}),
    (10, {"kind": "temperature", "reading": "43 °C", "source": "scan"}),
    (5, {"kind": "plug", "state": "open"}),
    (22, {"kind": "flow", "grade": "none", "for": "20 s"}),
    (10, {"kind": "added", "volume": "0.25 L", "measured_by": "meter"}),
    (100, {"kind": "temperature", "reading": "45 °C", "source": "scan"}),
    (22, {"kind": "flow", "grade": "trickle", "for": "20 s", "captured": "20 mL", "captured_by": "jug"}),
]
BEGIN = datetime(2026, 3, 2, 9, tzinfo=timezone.utc)


def entries(count: int = len(_FACTS)) -> list[dict[str, Any]]:
    """That many entries; past the end of the job what happened comes again."""
    listed, now = [], BEGIN
    for place in range(count):
        seconds, fact = _FACTS[place % len(_FACTS)]
        now += timedelta(seconds=seconds)
        listed.append({"seq": place + 1, "at": now.strftime("%Y-%m-%dT%H:%M:%SZ"), **fact})
    return listed


def journal(count: int = len(_FACTS)) -> dict[str, Any]:
    return {**HEADER, "entries": entries(count)}
