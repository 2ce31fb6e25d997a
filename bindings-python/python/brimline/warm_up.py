"""When the fluid will be warm enough, and when no longer; what a temperature reading is worth.

`Forecast` is kept up reading by reading; the function `forecast` answers the same for all readings at once.

Quantities are `Amount`s or their texts. What cannot be read, or not reckoned with, is refused under the
argument's name.
"""

from ._native import (
    Forecast,
    cold_soak,
    cool_down,
    crossing,
    fit,
    forecast,
    mixed_temperature,
    response_time,
    sensor_doubts,
)

__all__ = [
    "Forecast",
    "cold_soak",
    "cool_down",
    "crossing",
    "fit",
    "forecast",
    "mixed_temperature",
    "response_time",
    "sensor_doubts",
]
