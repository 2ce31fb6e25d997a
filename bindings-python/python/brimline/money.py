"""Exact money: what a quantity costs, and what lines come to with taxes at the host's own rates.

Money and prices are text, a plain decimal and an ISO 4217 code: `12.50 EUR`. No binary float is anywhere in it, and no tax
law: flags, rates, rounding and its place are the caller's. What cannot be read, or not reckoned with, is refused under the
argument's name.
"""

from ._native import cost, totals

__all__ = ["cost", "totals"]
