"""Windows and bounds that people write with other units than the figure has."""

from __future__ import annotations

from roomlint.source.dimensions import SYMBOLS, in_symbol
from roomlint.source.quantity import parse


def in_unit(text: str, unit: str) -> float:
    """Return a quantity's number in the unit of a figure; raises `QuantityError` when it does not fit."""
    return in_symbol(parse(text, SYMBOLS[unit].dimension).value, unit)
