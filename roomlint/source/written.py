"""How a quantity is written, as a regular expression that any JSON Schema validator can hold a file against.

It lets pass whatever `quantity.parse` does: a number, a fraction or a mixed number, then a unit or several, then how
far it may be off. It refuses text without a number or without a unit, and the units that belong to another dimension;
whether a unit exists at all is for the parser to say. The language is what ECMA-262 and Python share.
"""

from __future__ import annotations

import re

from roomlint.source.dimensions import SYMBOLS

_DECIMAL = r"(?:[0-9]+(?:\.[0-9]*)?|\.[0-9]+)(?:[eE][-+]?[0-9]+)?"
_DASH = "[-\u2212\u2010\u2011\u2013]"
_PART = "[\u00bd\u2153\u2154\u00bc\u00be\u2155-\u215e]"
_NUMBER = rf"(?:(?:[0-9]+(?:\s+|\s?{_DASH}\s?))?[0-9]+[/\u2044][0-9]+|(?:[0-9]+\s*(?:{_DASH}\s?)?)?{_PART}|{_DECIMAL})"
_SIGN = rf"(?:{_DASH}|\+)?\s*"
_UNIT = r"(?:[A-Za-z\u00b0%'\u0022\u2032\u2033\u2018\u2019\u201c\u201d\u00b5\u03bc\u2126\u03a9\u2103\u2109\u00ba][^\u00b1,]*)"  # noqa: E501  one set of signs
_SPREAD = r"(?:\u00b1|\+\s?/\s?-|\+-)"
_MORE = {
    "length": ("in", "inch", "feet"), "mass": ("oz", "pounds"), "temperature": ("°C", "°F", "K"), "area": ("kcmil",),
    "time": ("min",), "power": ("kW",),
}  # fmt: skip


def pattern(dimension: str) -> str:
    """Return the form of a quantity of a dimension."""
    own = {"conductor": "area"}.get(dimension, dimension)
    others = {name for name, symbol in SYMBOLS.items() if name and symbol.dimension != own}
    others |= {name for kind, names in _MORE.items() if kind != own for name in names}
    shut = "|".join(re.escape(name).replace(r"\ ", " ") for name in sorted(others))
    unit = f"{_UNIT}?" if dimension == "ratio" else _UNIT
    spread = rf"(?:\s*{_SPREAD}\s*{_SIGN}{_NUMBER}\s*{unit})?"
    refused = rf"(?![^A-Za-z\u00b0%]*(?:{shut})\s*(?:$|{_SPREAD}))"
    gauge = r"|\s*(?:#\s*)?(?:[0-9]/0|[0-9]{1,4})?\s*[Aa][Ww][Gg]\s*(?:[0-9]/0|[0-9]{1,4})?\s*"
    return rf"^(?:\s*{refused}{_SIGN}{_NUMBER}\s*{unit}{spread}{gauge if dimension == 'conductor' else ''})$"
