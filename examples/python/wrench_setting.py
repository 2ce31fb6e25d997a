"""What do I set this wrench to? 14 N·m at the plug, 40 mm of adapter straight out on a 230 mm wrench."""

import brimline
from brimline import Amount, torque

told = torque.wrench_setting("14 N·m", lever="230 mm", adapter="40 mm", graduation="0.5 N·m")

print("set it to  ", told["setting"])
print("that gives ", Amount(told["applied"]).to("N·m", 2))
print("off by     ", Amount(told["error"]).to("%", 1))
for name in told["cautions"]:
    print("mind       ", brimline.caution(name))
