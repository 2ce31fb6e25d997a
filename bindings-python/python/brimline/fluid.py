"""Viscosity against temperature, viscosity index, blends and grades of oils.

What may be poured onto what is asked of a pack: `Pack.may_mix` and `Pack.resolve`.

Quantities are `Amount`s or their texts. What cannot be read, or not reckoned with, is refused under the
argument's name.
"""

from ._native import (
    blend,
    grade,
    grade_limits,
    temperature_for,
    viscosity_at,
    viscosity_index,
)

__all__ = [
    "blend",
    "grade",
    "grade_limits",
    "temperature_for",
    "viscosity_at",
    "viscosity_index",
]
