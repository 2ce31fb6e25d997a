"""What many records say together: what may come back, when to look again, what it cost, where an old rule was wrong.

The records are `brimline.Record`s, taken as they were recorded; `brimline.History` has the visits of each unit.
"""

from ._native import audit, comebacks, follow_up, shadow

__all__ = ["audit", "comebacks", "follow_up", "shadow"]
