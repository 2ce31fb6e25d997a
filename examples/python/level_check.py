"""Tells what a journal file proves, on the embedded pack: level_check.py JOURNAL"""

import sys
from pathlib import Path

import brimline


def tell(name: str, what: object) -> None:
    print(f"{name:12}{what}")


try:
    evaluation = brimline.evaluate(brimline.Pack.embedded(), Path(sys.argv[1]).read_bytes())
except brimline.BrimlineError as error:
    sys.exit(str(error))
leak = evaluation.leak
margin = f", margin {leak['margin']}" if "margin" in leak else ""
tell("verdict", evaluation.verdict)
tell("as found", evaluation.as_found)
tell("net added", evaluation.net_added)
tell("now", evaluation.now)
tell("leak limit", f"{leak['by_sheet']}, {leak['certainty']}{margin}")
for finding in evaluation.findings:
    tell(finding["severity"], finding["id"])
for act in evaluation.next[:1]:
    tell("next", act["id"])
    for caution in act["cautions"]:
        tell("  mind", caution)
for caution in evaluation.cautions:
    tell("caution", caution)
