"""Which closed jobs may come back before anybody calls? Three records, and what to do about the first."""

from brimline import Pack, Record, records

FEN = {"vehicle": "Oddry Fen 7", "odometer": "61240 km"}


def sealed(job_id: str, day: str, subject: dict[str, str], reading: str, *poured: str) -> Record:
    """A short job: set up, open, pour, look, close."""
    facts = [
        {"kind": "level", "tilt": "0.2 deg", "toward": "away"},
        {"kind": "engine", "state": "idling"},
        {"kind": "ranges", "dwell": "5 s"},
        {"kind": "selector", "position": "park"},
        {"kind": "plug", "state": "open", "by": "Tilda"},
        *({"kind": "added", "volume": volume, "measured_by": "jug"} for volume in poured),
        {"kind": "temperature", "reading": reading, "source": "scan"},
        {"kind": "flow", "grade": "trickle", "for": "20 s"},
        {"kind": "plug", "state": "closed"},
    ]
    seconds = [0, 40, 130, 145, 190, 230, 255, 610, 633, 720, 745]
    entries = [
        {"seq": seq, "at": f"{day}T08:{second // 60:02}:{second % 60:02}Z", **fact}
        for seq, (second, fact) in enumerate(zip(seconds, facts), 1)
    ]
    journal = {
        "format": "brimline-journal/1",
        "job_id": job_id,
        "procedure": "pipit-level",
        "edition": 2,
        "job": "check",
        "subject": subject,
        "entries": entries,
    }
    return Record.seal(Pack.embedded(), journal)


kept = [
    sealed("too cold", "2025-03-04", FEN, "31 °C"),
    sealed("much went in", "2025-04-08", {"vehicle": "Tarnik Dale 3"}, "43 °C", "0.6 L", "0.6 L"),
    sealed("as it should be", "2025-04-09", {"vehicle": "Kestle Row 1"}, "44 °C"),
]
found = records.comebacks(kept)
for notice in found["notices"]:
    about = ", ".join(f"{cited['job_id']} (entries {cited['entries']})" for cited in notice["records"])
    print(f"{notice['severity']}: {notice['id']}: {about}")

again = records.follow_up(kept[0])
print("and", kept[0].journal["job_id"], "is to be looked at", "now" if again["now"] else again.get("date"))
