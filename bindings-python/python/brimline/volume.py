"""Volume and temperature, the shape of a sump, exchanging a fluid, which containers to open.

A volume means something only with its temperature. Where several volumes meet here they are taken at one temperature;
`at_temperature` brings them there.

Quantities are `Amount`s or their texts. What cannot be read, or not reckoned with, is refused under the
argument's name.
"""

from ._native import (
    at_temperature,
    base_density,
    containers,
    correction_factor,
    cycles_needed,
    density_at,
    exchange,
    flush,
    flush_needed,
    level_for,
    mass,
    segment_share,
    temperature_error,
    tilt_error,
    volume_below,
    volume_of_mass,
    wrong_left,
)

__all__ = [
    "at_temperature",
    "base_density",
    "containers",
    "correction_factor",
    "cycles_needed",
    "density_at",
    "exchange",
    "flush",
    "flush_needed",
    "level_for",
    "mass",
    "segment_share",
    "temperature_error",
    "tilt_error",
    "volume_below",
    "volume_of_mass",
    "wrong_left",
]
