"""What will it cost, when must the customer be called, and what did it cost in the end?"""

from pathlib import Path

import brimline

header = {"format": "brimline-journal/1", "procedure": "pipit-level", "edition": 2, "job": "check"}
pack, prices = brimline.Pack.embedded(), brimline.PriceList.embedded()

before = brimline.LevelCheck.start(pack, header)
told = brimline.estimate(prices, before, {"ceiling": "75.00 EUR", "planned": "0.75 L"})
for name in ("best", "likely", "worst"):
    print(f"{name}: {told[name]['volume']} in, {told[name]['total']}")
if "affordable" in told["approval"]:
    print("call the customer before more than", told["approval"]["affordable"], "goes in")

journal = Path("examples/journals/short_unit.json").read_text(encoding="utf-8")
after = brimline.LevelCheck.replay(pack, journal)
billed = brimline.invoice(prices, after, told)
for line in billed["lines"]:
    print(f"{line['item']}: {line['quantity']} at {line['price']}, {line['net']}")
print("total:", billed["total"])
for line in billed["against"]["lines"]:
    print(f"not as estimated: {line['id']}, {', '.join(line['why'])}, {line['entries']}")
