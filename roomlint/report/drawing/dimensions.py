"""Dimensions as an installer measures: running from the left and from the front, each with what stands there."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

from roomlint.report.drawing.shapes import width_mm

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from roomlint.report.drawing.pen import Pen

SIZE_MM: Final = 2.0
PITCH_MM: Final = 2.9
"""How far apart two values are written at least."""
LINE_MM: Final = 7.0
"""How far outside the room the line of the values is."""
KNEE_MM: Final = 5.0
_TICK_MM: Final = 1.1
_SAME_M: Final = 0.002
_LONGEST: Final = 24
"""Signs of the names at a dimension, beyond which they are counted."""


def marks_of(found: Iterable[tuple[float, str]]) -> list[tuple[float, str]]:
    """Return values with the names of all that stand there, those nearer than two millimetres as one."""
    groups: list[tuple[float, list[str]]] = []
    for value, name in sorted(found):
        if groups and value - groups[-1][0] < _SAME_M:
            if name and name not in groups[-1][1]:
                groups[-1][1].append(name)
        else:
            groups.append((value, [name] if name else []))
    return [(value, _few(names)) for value, names in groups]


def _few(names: Sequence[str]) -> str:
    """Return as many names as fit a dimension, and how many more there are."""
    told = list(names[:1])
    for name in names[1:]:
        if len(", ".join([*told, name])) > _LONGEST:
            break
        told.append(name)
    more = len(names) - len(told)
    return ", ".join(told) + (f" +{more}" if more else "")


def spread(places: Sequence[float], pitch: float, low: float, high: float) -> list[float]:
    """Return places moved as little as keeps each so far from the next, between two ends where they fit."""
    if not places:
        return []
    found = list(places)
    for number in range(1, len(found)):
        found[number] = max(found[number], found[number - 1] + pitch)
    over = found[-1] - high
    if over > 0.0:
        found[-1] -= over
        for number in range(len(found) - 2, -1, -1):
            found[number] = min(found[number], found[number + 1] - pitch)
    under = low - found[0]
    if under > 0.0:
        found = [place + under for place in found]
    # Each moves back toward its own place as far as its neighbours leave it.
    for _ in range(2):
        for number, own in enumerate(places):
            least = found[number - 1] + pitch if number else low
            most = found[number + 1] - pitch if number + 1 < len(found) else high
            found[number] = min(max(own, least), max(most, least))
    return found


def needed_mm(values: Iterable[tuple[float, str]], pen: Pen) -> float:
    """Return how deep a row of running dimensions is on the paper."""
    texts = [_text(pen, value, names) for value, names in values]
    return LINE_MM + KNEE_MM + max((width_mm(text, SIZE_MM) for text in texts), default=0.0) + 2.0


def _text(pen: Pen, value: float, names: str) -> str:
    return f"{pen.length(value)}  {names}".rstrip()


def along_top(pen: Pen, values: Sequence[tuple[float, str]], top_m: float, whole_m: float) -> None:
    """Draw values from the left, above the room; what they are is written upright."""
    y, tick = top_m + pen.m(LINE_MM), pen.m(_TICK_MM)
    knee = y + pen.m(KNEE_MM)
    pen.path(((0.0, y), (whole_m, y)), "dimension")
    pen.keep_clear(((0.0, top_m + pen.m(3.0)), (whole_m, knee)), 0.5)
    pen.arc((0.0, y), pen.m(0.8), "dimension")
    places = spread([pen.mm(value) for value, _ in values], PITCH_MM, -4.0, pen.mm(whole_m) + 8.0)
    for (value, names), place in zip(values, places, strict=True):
        pen.path(((value - tick, y - tick), (value + tick, y + tick)), "dimension")
        pen.path(((value, top_m + pen.m(3.0)), (value, y), (pen.m(place), knee)), "dimension")
        at = (pen.m(place), knee)
        text = _text(pen, value, names)
        pen.words(at, text, SIZE_MM, anchor="start", turn_deg=90.0, shift_mm=(0.7, 0.8), layer="dimension")


def along_left(pen: Pen, values: Sequence[tuple[float, str]], left_m: float, front_m: float, whole_m: float) -> None:
    """Draw values from the front, left of the room."""
    x, tick = left_m - pen.m(LINE_MM), pen.m(_TICK_MM)
    knee = x - pen.m(KNEE_MM)
    pen.path(((x, front_m), (x, front_m - whole_m)), "dimension")
    pen.keep_clear(((knee, front_m - whole_m), (left_m - pen.m(3.0), front_m)), 0.5)
    pen.arc((x, front_m), pen.m(0.8), "dimension")
    places = spread([pen.mm(value) for value, _ in values], PITCH_MM, -4.0, pen.mm(whole_m) + 8.0)
    for (value, names), place in zip(values, places, strict=True):
        v = front_m - value
        pen.path(((x - tick, v - tick), (x + tick, v + tick)), "dimension")
        pen.path(((left_m - pen.m(3.0), v), (x, v), (knee, front_m - pen.m(place))), "dimension")
        text = f"{names}  {pen.length(value)}".lstrip()
        at = (knee, front_m - pen.m(place))
        pen.words(at, text, SIZE_MM, anchor="end", shift_mm=(-0.8, -0.7), layer="dimension")


def across(pen: Pen, start_m: float, end_m: float, at_m: float, *, upright: bool = False) -> None:
    """Draw one dimension between two points of a section, level at a height or upright at a place."""
    tick = pen.m(_TICK_MM)
    ends = [(at_m, one) if upright else (one, at_m) for one in (start_m, end_m)]
    pen.path(ends, "dimension")
    for u, v in ends:
        pen.path(((u - tick, v - tick), (u + tick, v + tick)), "dimension")
    middle = ((ends[0][0] + ends[1][0]) / 2.0, (ends[0][1] + ends[1][1]) / 2.0)
    turn, shift = (90.0, (-0.8, 0.0)) if upright else (0.0, (0.0, 0.8))
    text = pen.length(abs(end_m - start_m))
    pen.words(middle, text, SIZE_MM, turn_deg=turn, shift_mm=shift, layer="dimension")
