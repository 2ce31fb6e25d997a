"""What a vehicle network says of a gearbox: bytes in, quantities with a state out.

Only a value whose state is `valid` may be used. `Linear` says where a number stands in a row of bytes.

Quantities are `Amount`s or their texts. What cannot be read, or not reckoned with, is refused under the
argument's name.
"""

from ._native import (
    Linear,
    diagnostic_reply,
    linear,
    transmission_frame,
)

__all__ = [
    "Linear",
    "diagnostic_reply",
    "linear",
    "transmission_frame",
]
