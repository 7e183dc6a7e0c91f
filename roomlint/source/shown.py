"""How many decimals a figure is shown with, by its unit."""

from __future__ import annotations

from roomlint.source.dimensions import SYMBOLS


def decimals(unit: str) -> int:
    """Return the decimals of a unit; more would claim more than the trade measures."""
    symbol = SYMBOLS.get(unit)
    return symbol.decimals if symbol is not None else 2
