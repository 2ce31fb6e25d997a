"""What do I set this wrench to? 14 N·m at the plug, 40 mm of adapter straight out on a 230 mm wrench."""

import brimline
from brimline import torque

told = torque.wrench_setting("14 N·m", lever="230 mm", adapter="40 mm", graduation="0.5 N·m")

print("set it to  ", told["setting"])
print("that gives ", told["applied"])
print("off by     ", told["error"])
for name in told["cautions"]:
    print("mind       ", brimline.caution(name))
