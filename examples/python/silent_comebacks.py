"""Which closed jobs may come back before anybody calls? Three records, and what to do about the first."""

import brimline
from brimline import Pack, Record, records


def sealed(job_id: str, vehicle: str, reading: str, grade: str) -> Record:
    """A short job: set up, open, look at this temperature, close."""
    facts = [
        ("08:00:00", {"kind": "level", "tilt": "0.2 deg", "toward": "away"}),
        ("08:00:40", {"kind": "engine", "state": "idling"}),
        ("08:02:10", {"kind": "ranges", "dwell": "5 s"}),
        ("08:02:25", {"kind": "selector", "position": "park"}),
        ("08:03:10", {"kind": "plug", "state": "open", "by": "Tilda"}),
        ("08:10:33", {"kind": "temperature", "reading": reading, "source": "scan"}),
        ("08:11:00", {"kind": "flow", "grade": grade, "for": "20 s"}),
        ("08:12:25", {"kind": "plug", "state": "closed"}),
    ]
    journal = {
        "format": "brimline-journal/1",
        "job_id": job_id,
        "procedure": "pipit-level",
        "edition": 2,
        "job": "check",
        "subject": {"vehicle": vehicle, "odometer": "61240 km"},
        "entries": [{"seq": seq, "at": f"2025-03-04T{at}Z", **fact} for seq, (at, fact) in enumerate(facts, 1)],
    }
    return Record.seal(Pack.embedded(), journal)


kept = [
    sealed("too cold", "Oddry Fen 7", "31 °C", "trickle"),
    sealed("closed low", "Tarnik Dale 3", "43 °C", "none"),
    sealed("as it should be", "Kestle Row 1", "44 °C", "trickle"),
]
found = records.comebacks(kept)
for notice in found["notices"]:
    about = "; ".join(f"{cited['job_id']}, entries {cited['entries']}" for cited in notice["records"])
    print(f"{notice['severity']}: {notice['id']}: {about}")
for caution in found["cautions"]:
    print("mind:", brimline.caution(caution))

again = records.follow_up(kept[0])
print("again before it is handed over:", "yes" if again["now"] else "no")
