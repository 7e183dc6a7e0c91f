"""Lengths as a tape shows them: centimetres, or feet and half inches."""

from __future__ import annotations

import re
from typing import Final

_STEP_M: Final = {False: 0.01, True: 0.0127}
_INCH_M: Final = 0.0254
_INCHES_IN_A_FOOT: Final = 12
_LENGTH = re.compile(r"[0-9½¼¾][0-9A-Za-z .'\"/½¼¾⅛⅜⅝⅞±+-]*[A-Za-z'\"]")
_NAME = re.compile(r"[A-Za-z][0-9A-Za-z -]*")
_WORDS: Final = frozenset({"true", "false", "null", "none", "yes", "no", "on", "off", "y", "n"})
"""What some readers of YAML take for something else than a text."""


def stepped(value_m: float, *, us: bool) -> float:
    """Return a length on the grid that it is written in, m: whole centimetres, or half inches."""
    step = _STEP_M[us]
    return round(value_m / step) * step


def written(value_m: float, *, us: bool) -> str:
    """Return a length of that grid as text: `2.40 m`, or `7 ft 6-1/2 in`."""
    if not us:
        return f"{value_m:.2f} m"
    halves = round(value_m / _STEP_M[True])
    feet, rest = divmod(halves, 2 * _INCHES_IN_A_FOOT)
    inches, half = divmod(rest, 2)
    small = f"{inches}-1/2" if inches and half else "1/2" if half else str(inches)
    if feet and small == "0":
        return f"{feet} ft"
    return f"{feet} ft {small} in" if feet else f"{small} in"


def scalar(text: str) -> str:
    """Return a text as YAML takes it between braces too, and nothing but a text; in quotes where it must be."""
    is_plain = _LENGTH.fullmatch(text) or (_NAME.fullmatch(text) and text.lower() not in _WORDS)
    return text if is_plain else "'" + text.replace("'", "''") + "'"
