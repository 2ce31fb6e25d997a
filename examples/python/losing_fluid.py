"""Is it losing fluid? Four visits, each below the leak limit of its sheet."""

import brimline
from brimline import Amount, Interval, leak


def outward(ends: list[str | None], unit: str) -> Interval:
    """Both ends in whole units, outward."""
    lo, hi = ends
    return Interval(lo and Amount(lo).to(unit, 0, "floor"), hi and Amount(hi).to(unit, 0, "ceiling"))


visits = [
    {"odometer": "41200 km", "net": "0 L", "uncertainty": "0.03 L"},
    {"odometer": "53900 km", "net": "0.15 L", "uncertainty": "0.03 L"},
    {"odometer": "64100 km", "net": "0.25 L", "uncertainty": "0.03 L"},
    {"odometer": "70300 km", "net": "0.30 L", "uncertainty": "0.03 L"},
]
told = leak.consumption(visits, shortage="0.5 L")

for rate in told["rates"]:
    if "per_1000_km" in rate:
        lost = outward(rate["per_1000_km"], "mL")
        print(f"visit {rate['from'] + 1} to {rate['to'] + 1}: {lost} lost per 1000 km")
print("trend:", told["trend"])
if "distance" in told:
    print("half a litre is gone after", outward(told["distance"], "km"))
for caution in told["cautions"]:
    print("mind:", brimline.caution(caution))
