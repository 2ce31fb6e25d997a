from pathlib import Path

import brimline

journal = Path("examples/journals/short_unit.json").read_text(encoding="utf-8")
answer = brimline.evaluate(brimline.Pack.embedded(), journal)

print("verdict  ", answer.verdict)
print("as found ", answer.as_found)
print("leak     ", answer.leak["by_sheet"])
# The whole answer in English, with the cautions that belong to it.
print("\n" + answer.text())
