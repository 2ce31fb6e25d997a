"""What many records say together: jobs that may come back, when to look again, and where an old rule was wrong.

The records are `brimline.Record`s, taken as they were recorded; `brimline.History` has the visits of each unit.
"""

from ._native import comebacks, follow_up, shadow

__all__ = ["comebacks", "follow_up", "shadow"]
