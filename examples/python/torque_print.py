"""Is this torque print a slip? A sheet prints one torque three times; one of them would strip the thread."""

import brimline
from brimline import Amount, torque

for told in torque.equivalents(["14 N·m", "10 lbf·ft", "124 lbf·ft"])["prints"]:
    factor = f": {told['factor']}" if "factor" in told else ""
    print(f"{told['print']:<12}{told['class']}{factor}")

fit = torque.plausible("124 lbf·ft", thread="M10x1", plug="steel")
print("124 lbf·ft on M10x1:", fit["fits"])
lo, hi = (Amount(end).to("N·m", 0) for end in fit["band"] if end)
print("usual is", lo, "to", hi)
if "slip" in fit:
    print("meant may be", fit["slip"]["torque"])
for name in fit["cautions"]:
    print("mind:", brimline.caution(name))
