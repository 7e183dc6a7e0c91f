"""How many decimals a figure is shown with, by its unit."""

from __future__ import annotations

DECIMALS = {
    "deg": 1, "m": 2, "mm": 0, "ms": 2, "dB": 1, "Hz": 1, "%": 1, "N": 0, "A": 1, "mA": 0, "V": 1, "VA": 0, "W": 0, "": 2,
}  # fmt: skip
"""More would claim more than the trade measures."""


def decimals(unit: str) -> int:
    """Return the decimals of a unit."""
    return DECIMALS.get(unit, 2)
