"""Quantities as the trade writes them: a number, its unit and, when known, how far it may be off.

What a unit is and which dimension it has is pint's to say. Common spellings are answered from the table that
`make_units` wrote with pint; pint itself is loaded only for a spelling that is not in it.
"""

import math
import re
from dataclasses import dataclass
from functools import lru_cache

from roomlint.source.dimensions import DIMENSIONS
from roomlint.source.say import mixes_units, nearest, shorten
from roomlint.source.units import UNITS

__all__ = ["Measure", "QuantityError", "other_unit", "parse"]

MAX_LENGTH = 100
_NEIGHBOURS = (("in", "ft"), ("inches", "feet"), ("mm", "cm", "m"))
"""Units of a length that are taken for one another by a slip of the pen."""


class QuantityError(ValueError):
    """A text that is not the quantity wanted; the message says what was expected and shows an example."""


@dataclass(frozen=True, slots=True)
class Measure:
    """A value in its dimension's canonical unit, with its expanded uncertainty in the same unit."""

    value: float
    u: float = 0.0
    u_given: bool = False
    """Whether the text itself gives the uncertainty: `± 0 mm` says exactly, no `±` says nothing."""


_NO_SHARE = frozenset({"ratio", "level", "angle", "temperature", "conductor"})  # where `± 5 %` of a value says nothing
_COMPOUND = frozenset({"length", "mass", "time"})  # what people write in two units, as 7 ft 6 in
_ABSOLUTE_ZERO_DEGC = -273.15

_FRACTIONS = {
    "½": "1/2", "⅓": "1/3", "⅔": "2/3", "¼": "1/4", "¾": "3/4", "⅕": "1/5", "⅖": "2/5", "⅗": "3/5", "⅘": "4/5",
    "⅙": "1/6", "⅚": "5/6", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8",
}  # fmt: skip
_PLAIN = str.maketrans(
    {fraction: f" {plain} " for fraction, plain in _FRACTIONS.items()}
    | dict.fromkeys("\u00a0\u2002\u2003\u2004\u2005\u2006\u2007\u2008\u2009\u200a\u202f\u205f", " ")
    | dict.fromkeys("′’‘", "'")
    | dict.fromkeys("″”“", '"')
    | dict.fromkeys("−‐‑–", "-")
    | dict.fromkeys("\u2126\u03a9", "ohm")  # ohm sign and capital omega look alike
    | dict.fromkeys("\u00b5\u03bc", "u")  # so do micro sign and mu
    | dict.fromkeys("·⋅", "*")
    | {"⁄": "/", "℃": "degC", "℉": "degF", "º": "°"}
)
# Raised digits belong to a unit, as in m². After a digit they would read as one more digit.
_POWER = re.compile(r"(?<=[A-Za-z])([²³])(?![0-9⁰¹²³⁴-⁹])")
_RAISED = re.compile(r"[⁰¹²³⁴-⁹₀-₉]")
_LOOSE = re.compile(r"(?:~|≈|ca\.?|c\.|about|approx\.?|approximately|roughly|some) *(?=[0-9.+-])", re.IGNORECASE)
_LIMIT = re.compile(r"(?:<|>|≤|≥|<=|>=|max\.?|min\.?|up to|at least|at most|under|over) *(?=[0-9.+-])", re.IGNORECASE)

_DECIMAL = r"(?:[0-9]+(?:\.[0-9]*)?|\.[0-9]+)(?:[eE][+-]?[0-9]+)?"
# The form that nearly every quantity has: a decimal and one unit.
_SIMPLE = re.compile(rf"([+-]?{_DECIMAL}) ?([A-Za-z°%][^0-9+±,]*[0-9]?(?:/[A-Za-z0-9]+)?)")
# A number as US customary lengths are written: 6, 6.5, 1/2, 6 1/2, 6-1/2.
_NUMBER = re.compile(rf"(?:(?P<whole>[0-9]+)(?: +| ?- ?))?(?P<over>[0-9]+)/(?P<under>[0-9]+)|(?P<decimal>{_DECIMAL})")
_RANGE = re.compile(
    rf"(?P<low>{_DECIMAL}) ?(?P<first>[A-Za-z°%'\"]*) ?(?:-|to|or|\.\.\.?) ?"
    rf"(?P<high>{_DECIMAL}) ?(?P<unit>[A-Za-z°%'\"][^0-9]*)"
)
_FEET_AND = re.compile(r"([0-9]+) ?(?:ft|feet|foot|')\.?[ ,-]*([0-9]+(?: ?[0-9]+/[0-9]+)?)")
"""Feet and a number that nobody takes for anything but inches."""
_UNIT_WORD = re.compile(r" ?('{1,2}|\"|[A-Za-z]+\.?)")
_BETWEEN = re.compile(r"[ ]*[-,]?[ ]*")
_UNCERTAIN = re.compile(r" *(?:±|\+ ?/ ?-|\+-) *")
_AWG = re.compile(
    r"(?:# ?)?(?P<size>[0-9]/0|0{1,4}|[1-9][0-9]?) ?AWG|AWG ?(?P<after>[0-9]/0|0{1,4}|[1-9][0-9]?)", re.IGNORECASE
)
_LARGEST_AWG = 40
_LARGEST = 1e30  # no quantity of a room comes near it, in any unit, and no formula overflows below it


@lru_cache(maxsize=4096)  # the same lengths stand in every file of a team
def parse(text: str, dimension: str) -> Measure:
    """Return the quantity that a text gives, in the dimension's canonical unit; raises `QuantityError`.

    Canonical units are those of `ask_pint.CANONICAL`: SI, except degrees, dB, degC and Gb/s; a conductor is its
    cross-section in m2. The uncertainty is in the same unit.
    """
    if len(text) > MAX_LENGTH:
        raise QuantityError(f"{shorten(text)!r} is too long for {_words(dimension)}.")
    plain = " ".join(_POWER.sub(_lowered, text).translate(_PLAIN).split())
    simple = _SIMPLE.fullmatch(plain)
    if simple is not None:
        entry = UNITS.get(simple[2])
        if entry is not None and entry[0] == dimension:
            return Measure(_finite(_convert(float(simple[1]), entry[1]) + entry[2], text, dimension))
    value, mark, spread = _cut(plain)
    number = _value(value, dimension, text)
    if not mark:
        return Measure(number)
    return Measure(number, _uncertainty(spread, number, dimension, text), u_given=True)


def _lowered(found: re.Match[str]) -> str:
    return "2" if found[1] == "²" else "3"


def _uncertainty(spread: str, number: float, dimension: str, whole: str) -> float:
    if dimension != "ratio" and not re.search(r"[^0-9 .,/eE+-]", spread):
        twice = "write it too, such as '2.40 m ± 1 cm'."
        raise QuantityError(f"the uncertainty in {shorten(whole)!r} has no unit; {twice}")
    if spread.endswith("%") and dimension not in _NO_SHARE:
        u = _finite(abs(number) * _value(spread, "ratio", whole), whole, dimension)
    else:
        u = _value(spread, "temperature difference" if dimension == "temperature" else dimension, whole)
    if u < 0:
        raise QuantityError(
            f"the uncertainty in {shorten(whole)!r} is negative; write how far it may be off to each side."
        )
    return u


def _cut(plain: str) -> tuple[str, str, str]:
    found = _UNCERTAIN.search(plain)
    if found is None:
        return plain, "", ""
    return plain[: found.start()], found[0], plain[found.end() :]


def _value(text: str, dimension: str, whole: str) -> float:
    gauge = _AWG.fullmatch(text)
    if gauge is not None:
        if dimension != "conductor":
            said = (
                f"{shorten(whole)!r} is a conductor size, but {_words(dimension)} belongs here, {_such_as(dimension)}."
            )
            raise QuantityError(said)
        return _awg_area_m2(gauge["size"] or gauge["after"], whole)
    _refuse_slips(text, dimension, whole)
    if re.search(r"[0-9],[0-9]", text):
        raise QuantityError(f"{shorten(whole)!r} has a comma in its number; write a decimal point, no thousands mark.")
    sign = -1.0 if text.startswith("-") else 1.0
    rest = text[1:].lstrip() if text[:1] in {"+", "-"} else text
    found = _NUMBER.match(rest)
    if found is None:
        raise QuantityError(_not_a_quantity(whole, dimension))
    number, unit = _number(found, whole), rest[found.end() :].strip()
    if not unit:
        if dimension == "ratio":
            return _finite(sign * number, whole, dimension)
        such = f"such as '{shorten(text)} in'" if dimension == "length" and "/" in text else _such_as(dimension)
        raise QuantityError(f"{shorten(whole)!r} has no unit; write it too, {such}.")
    if not _known(unit) and _several(rest, dimension):
        return _finite(sign * _sum(rest, dimension, whole), whole, dimension)
    if unit[0] in "0123456789./":
        raise QuantityError(
            f"{shorten(whole)!r} has more than one number; write one and its unit, {_such_as(dimension)}."
        )
    factor, offset = _unit(unit, dimension, whole)
    return _finite(_convert(sign * number, factor) + offset, whole, dimension)


def _refuse_slips(text: str, dimension: str, whole: str) -> None:
    """Tell of what people write and no unit explains: raised digits, quotes, ranges, limits, `about`."""
    said = shorten(whole)
    raised = _RAISED.search(text)
    if raised is not None:
        raise QuantityError(f"{said!r} has the raised or lowered digit {raised[0]!r}; write plain digits.")
    if len(text) > 1 and text[0] in "\"'" and text[-1] in "\"'":
        inner = text.strip("\"' ")
        raise QuantityError(f"{said!r} holds quotes of its own; write {shorten(inner)!r} without them.")
    span = _RANGE.fullmatch(text)
    if span is not None and span["unit"] in UNITS and span["first"] in {"", span["unit"]}:
        unit, low, high = span["unit"], *sorted((float(span["low"]), float(span["high"])))
        middle = f"{(low + high) / 2:.6g} {unit} ± {(high - low) / 2:.6g} {unit}"
        raise QuantityError(f"{said!r} is a range; write its middle and how far it may be off: {middle!r}.")
    loose = _LOOSE.match(text)
    if loose is not None:
        sure = text[loose.end() :]
        raise QuantityError(
            f"{said!r} does not say how far off it may be; write {shorten(sure)!r}, and ± with a unit if you know it."
        )
    limit = _LIMIT.match(text)
    if limit is not None:
        raise QuantityError(f"{said!r} is a limit, not a value; write the value itself, {_such_as(dimension)}.")


def _known(unit: str) -> bool:
    return unit in UNITS


def _several(rest: str, dimension: str) -> bool:
    """Whether a text gives one quantity in several units, such as 7 ft 6 in."""
    first = _NUMBER.match(rest)
    if dimension not in _COMPOUND or first is None:
        return False
    unit = _UNIT_WORD.match(rest, first.end())
    return unit is not None and _NUMBER.match(rest, _after(rest, unit.end())) is not None


def _after(text: str, at: int) -> int:
    gap = _BETWEEN.match(text, at)
    return gap.end() if gap is not None else at


def _sum(text: str, dimension: str, whole: str) -> float:
    """Add the parts of a quantity in several units, each smaller than the one before and short of filling it."""
    if mixes_units(text):
        said = (
            f"{shorten(whole)!r} has metric units and those of the United States in one number; write one or the other."
        )
        raise QuantityError(said)
    total, at, last = 0.0, 0, math.inf
    while at < len(text):
        number = _NUMBER.match(text, at)
        if number is None:
            raise QuantityError(_not_a_quantity(whole, dimension))
        unit = _UNIT_WORD.match(text, number.end())
        if unit is None:
            feet = _FEET_AND.fullmatch(text)
            such = f"{feet[1]} ft {feet[2]} in" if feet is not None else "7 ft 6 in"
            raise QuantityError(f"{number[0]!r} in {shorten(whole)!r} has no unit; write it too, such as {such!r}.")
        factor, _ = _unit(unit[1], dimension, whole)
        part = _convert(_number(number, whole), factor)
        at = _after(text, unit.end())
        if factor >= last:
            raise QuantityError(
                f"the parts of {shorten(whole)!r} are out of order; the larger unit comes first, such as '7 ft 6 in'."
            )
        if part >= last * (1 - 1e-9) or (at < len(text) and not _is_whole(number)):
            raise QuantityError(
                f"the parts of {shorten(whole)!r} overlap; write whole larger units and less than one more of them "
                "in the smaller, such as '7 ft 6 in'."
            )
        total, last = total + part, factor
    return total


def other_unit(text: str, dimension: str, low: float, high: float) -> str:
    """Return a length with its number in the neighbouring unit, where only that lies in a range; else an empty text."""
    found = _SIMPLE.fullmatch(" ".join(text.split()))
    if found is None or dimension != "length":
        return ""
    alike = next((units for units in _NEIGHBOURS if found[2] in units), ())
    fitting = (unit for unit in alike if unit != found[2] and low <= float(found[1]) * UNITS[unit][1] <= high)
    unit = next(fitting, "")
    return f"{found[1]} {unit}" if unit else ""


def _is_whole(number: re.Match[str]) -> bool:
    return number["decimal"] is not None and number["decimal"].isdecimal()


def _number(found: re.Match[str], whole: str) -> float:
    if found["decimal"] is not None:
        return float(found["decimal"])
    under = int(found["under"])
    if under == 0:
        raise QuantityError(f"{shorten(whole)!r} divides by zero.")
    return int(found["whole"] or 0) + int(found["over"]) / under


def _unit(spelling: str, dimension: str, whole: str) -> tuple[float, float]:
    """Return factor and offset of a unit that must be of the dimension."""
    entry = UNITS.get(spelling) or _ask_pint(spelling)
    wanted = {"conductor": "area", "temperature difference": "temperature"}.get(dimension, dimension)
    if entry is None:
        near = nearest(spelling, (name for name, (kind, _, _) in UNITS.items() if kind == wanted))
        hint = f"did you mean {near!r}?" if near else f"write {_words(dimension)}, {_such_as(dimension)}."
        raise QuantityError(f"{shorten(spelling)!r} in {shorten(whole)!r} is not a unit; {hint}")
    kind, factor, offset = entry
    if kind != wanted:
        other = next((name for name, (of, _, _) in UNITS.items() if of == wanted and _is_like(spelling, name)), None)
        if other is not None:
            raise QuantityError(
                f"{shorten(whole)!r} is {_words(kind)}, but {_words(dimension)} belongs here; did you mean {other!r}?"
            )
        text = f"{shorten(whole)!r} is {_words(kind)}, but {_words(dimension)} belongs here, {_such_as(dimension)}."
        raise QuantityError(text)
    return factor, 0.0 if dimension == "temperature difference" else offset


def _is_like(spelling: str, name: str) -> bool:
    """Whether one spelling is the other in capitals, or without the deg of a temperature."""
    return spelling.casefold() in {name.casefold(), name.casefold().removeprefix("deg")}


def _ask_pint(spelling: str) -> tuple[str, float, float] | None:
    from roomlint.source.ask_pint import UnknownUnit, look_up

    try:
        unit = look_up(spelling)
    except UnknownUnit:
        return None
    return (unit.dimension or "another_quantity", unit.factor, unit.offset)


def _awg_area_m2(size: str, whole: str) -> float:
    """Area of an AWG size by ASTM B258: diameter 0.127 mm x 92^((36 - n) / 39), with 1/0 as 0, 2/0 as -1 and so on."""
    if size.endswith("/0"):
        n = 1 - int(size[0])
    elif set(size) == {"0"}:
        n = 1 - len(size)
    else:
        n = int(size)
    if n > _LARGEST_AWG:
        raise QuantityError(f"{shorten(whole)!r} is no AWG size; they run from 4/0 to {_LARGEST_AWG}.")
    diameter_m = 0.127e-3 * 92.0 ** ((36 - n) / 39)
    return float(math.pi / 4 * diameter_m**2)


def _convert(number: float, factor: float) -> float:
    """Multiply, or divide where the factor is a whole part of one, so that 35 cm is exactly 0.35 m."""
    if factor < 1.0:
        inverse = 1.0 / factor
        if inverse.is_integer():
            return number / inverse
    return number * factor


def _finite(value: float, text: str, dimension: str) -> float:
    if not abs(value) <= _LARGEST:
        raise QuantityError(f"{shorten(text)!r} is too large for {_words(dimension)}.")
    if dimension == "temperature" and value < _ABSOLUTE_ZERO_DEGC:
        raise QuantityError(f"{shorten(text)!r} is below absolute zero.")
    return value


def _not_a_quantity(text: str, dimension: str) -> str:
    return f"{shorten(text)!r} is not {_words(dimension)}; write a number and its unit, {_such_as(dimension)}."


def _such_as(dimension: str) -> str:
    return f"such as {DIMENSIONS[dimension.partition(' ')[0]].example!r}"


def _words(dimension: str) -> str:
    known = DIMENSIONS.get(dimension)
    if known is not None:
        return known.words
    return dimension.replace("_", " ") if dimension == "another_quantity" else f"a {dimension}"
