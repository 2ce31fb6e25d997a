"""Which containers do I open? 1.3 L are needed; half a litre is left of one that was opened last week."""

import brimline
from brimline import Amount, volume

sizes = [
    {"name": "quart", "volume": "1 US qt", "price": 1150},
    {"name": "litre", "volume": "1 L", "price": 1290},
]
good = dict.fromkeys(("same_fluid", "sealed", "clean", "dated", "within_date"), True)
told = volume.containers("1.3 L", sizes=sizes, opened=[{"name": "last week's", "volume": "0.5 L", **good}])

for name in ("fewest", "cheapest", "least_waste"):
    plan = told[name]
    left = Amount(plan["left"]).to("L", 2)
    full = ", ".join(f"{own['count']} {own['name']}" for own in plan["containers"])
    print(f"{name.replace('_', ' ')}: {', '.join(plan['opened'])} and {full}, {left} left")
for caution in told["cautions"]:
    print("mind:", brimline.caution(caution))
