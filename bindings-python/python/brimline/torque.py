"""Wrenches and what they are set to, prints of one torque in several units, threads and what they bear.

Every torque is that of threads in the condition the sheet was printed for. No factor for threadlocker or lubricant is
applied anywhere: published ones contradict each other.

Quantities are `Amount`s or their texts. What cannot be read, or not reckoned with, is refused under the
argument's name.
"""

from ._native import (
    applied_torque,
    equivalents,
    plausible,
    preload,
    proof_load,
    thread,
    tool_suits,
    torque_for_preload,
    wrench_setting,
)

__all__ = [
    "applied_torque",
    "equivalents",
    "plausible",
    "preload",
    "proof_load",
    "thread",
    "tool_suits",
    "torque_for_preload",
    "wrench_setting",
]
