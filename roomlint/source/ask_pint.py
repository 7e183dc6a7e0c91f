"""The one door to pint: which dimension a unit has, and how it converts to the dimension's canonical unit.

Importing this module loads pint, which takes longer than checking a room; only `quantity`, for a spelling that is
not in its table, and `make_units` do so.
"""

import math
import re
from dataclasses import dataclass
from functools import cache
from typing import Any

import pint

from roomlint.source.dimensions import DIMENSIONS

CANONICAL = {name: dimension.pint for name, dimension in DIMENSIONS.items() if dimension.pint}

_PREFIXED = frozenset(
    {
        *("meter", "gram", "second", "newton", "hertz", "watt", "volt", "ampere", "volt_ampere", "ohm", "pascal"),
        *("lumen", "lux", "candela", "kelvin", "radian", "bit", "byte", "baud", "liter", "joule"),
        *("foot", "circular_mil"),  # kft and kcmil are words of the trade
    }
)
"""Units that people write with a prefix of the SI."""
_FAR = 1800.0  # far from 0 and 1, so that the slope of an offset scale is exact
_WORD = r"[A-Za-z°%_]+(?:(?:\^|\*\*)?-?[1-4])?"
_UNIT = re.compile(rf"{_WORD}(?:(?: ?[*/] ?| ){_WORD}){{0,4}}")
_POWER = re.compile(r"(?<=[A-Za-z°_])(?:\^|\*\*)?(-?[1-4])(?![0-9])")


class UnknownUnit(ValueError):  # noqa: N818 (it names what was met)
    """pint knows no such unit."""


@dataclass(frozen=True, slots=True)
class Unit:
    """How a unit converts: canonical value = number * factor + offset. Without a dimension it is none of ours."""

    dimension: str | None
    name: str
    factor: float = 1.0
    offset: float = 0.0


@cache
def _registry() -> Any:  # noqa: ANN401 (pint builds its registry class at run time)
    return pint.UnitRegistry(autoconvert_offset_to_baseunit=False)


@cache
def _roots() -> dict[str, Any]:
    """Root units tell apart what dimensions cannot: an angle from a ratio, a bit rate from a frequency."""
    registry = _registry()
    return {name: registry.get_root_units(registry.parse_units(unit))[1] for name, unit in CANONICAL.items()}


def look_up(spelling: str) -> Unit:
    """Return what pint knows of a unit; raises `UnknownUnit`."""
    if _UNIT.fullmatch(spelling) is None:  # nothing else reaches pint's own expression parser
        raise UnknownUnit(spelling)
    registry = _registry()
    try:
        unit = registry.parse_units(_POWER.sub(r"**\1", spelling))
        names = set(unit._units)  # noqa: SLF001 (the public form is text to be taken apart again)
        dimension = _dimension(names, registry.get_root_units(unit)[1])
        odd = any(_oddly_prefixed(word) for word in re.findall(r"[A-Za-z_]+", spelling))
        if dimension is None or odd:
            factor = offset = 0.0
        else:
            at = [float(registry.Quantity(x, unit).to(CANONICAL[dimension]).magnitude) for x in (0.0, 1.0, _FAR)]
            factor, offset = _line(*at)
    except Exception as error:  # pint's parser lets many kinds of error through
        raise UnknownUnit(spelling) from error
    if odd:
        raise UnknownUnit(spelling)
    return Unit(dimension, str(unit), factor, offset) if factor else Unit(None, str(unit))


def _oddly_prefixed(word: str) -> bool:
    """Tell whether pint reads a slip of the pen as a prefix that nobody uses: `pin` as picoinch."""
    readings = _registry().parse_unit_name(word)
    return bool(readings) and all(prefix and name not in _PREFIXED for prefix, name, _ in readings)


def _dimension(names: set[str], root: Any) -> str | None:  # noqa: ANN401
    if names == {"decibel"}:
        return "level"
    for dimension, canonical in _roots().items():
        if root == canonical and dimension != "level":
            if dimension == "power" and any(name.endswith("ampere") for name in names):
                return "apparent_power"
            return dimension
    return None


def _line(at_zero: float, at_one: float, far_off: float) -> tuple[float, float]:
    """Return slope and offset; the slope is 0 for a logarithmic unit, which is on no line."""
    slope = at_one if at_zero == 0.0 else (far_off - at_zero) / _FAR
    straight = math.isclose(far_off, at_zero + slope * _FAR, rel_tol=1e-9)
    return (slope, at_zero) if straight and math.isclose(at_one, at_zero + slope, rel_tol=1e-9) else (0.0, 0.0)
