"""How much is lost, and whether a limit is passed, with the uncertainty of the measurement.

Nothing here says that a gearbox is tight: what lies below a limit or within an uncertainty is told as that and no more.

Quantities are `Amount`s or their texts. What cannot be read, or not reckoned with, is refused under the
argument's name.
"""

from ._native import (
    against_limit,
    combined_uncertainty,
    conformance,
    consumption,
    drip_rate,
    drops_for,
    expanded_uncertainty,
    guard_band,
    quantile,
    risks,
    seepage,
)

__all__ = [
    "against_limit",
    "combined_uncertainty",
    "conformance",
    "consumption",
    "drip_rate",
    "drops_for",
    "expanded_uncertainty",
    "guard_band",
    "quantile",
    "risks",
    "seepage",
]
