"""Remedies: which value of one input clears a failure, tried against everything else that rests on that input."""

from __future__ import annotations

import math
from functools import partial
from typing import TYPE_CHECKING, Final, NamedTuple

from roomlint.design.base import Point
from roomlint.design.quantity import Origin, Quantity, Reading
from roomlint.figures.domain import Refused
from roomlint.measure.figure import Figure
from roomlint.review.verdict import Kind, Remedy

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator, Sequence

    from roomlint.design.base import Element
    from roomlint.review.judging import Judged
    from roomlint.review.room import Room

STEPS: Final = 48
"""Points at which a way is tried before its ends are found."""
_HALVINGS: Final = 12
_TOLD_M: Final = 0.01
"""A remedy is told to the centimetre, rounded inwards."""


class _Way(NamedTuple):
    """One reading that may be another: an element's, by its key, from one value to another."""

    element: Element
    key: str
    reading: Reading
    low: float
    high: float


def remedy_of(failed: Judged, judged: Sequence[Judged], room: Room) -> Remedy | None:
    """Return the change of one value that clears a failure and breaks least, or None when no way does.

    Every way that the rule names is tried from end to end; a value clears the failure when the figure then passes.
    What else rests on that reading is held against its own windows there: a way that breaks nothing is told first,
    and one that breaks something says what.
    """
    best: tuple[int, float, Remedy] | None = None
    for way in _ways(failed, room):
        touched = [other for other in judged if other is not failed and way.reading in other.figure.readings]
        for low, high in _spans(partial(_clears, failed, way), way):
            remedy = _tried(way, low, high, failed, touched)
            if remedy is None:
                continue
            score = (len(remedy.breaks), abs((remedy.low.value + remedy.high.value) / 2.0 - way.reading.value), remedy)
            if best is None or score[:2] < best[:2]:
                best = score
    return best[2] if best is not None else None


def _ways(failed: Judged, room: Room) -> Iterator[_Way]:
    sizes = room.design.shell.width_m.value, room.design.shell.length_m.value
    for element in failed.subject.about:
        for key in failed.rule.cure:
            found = _value(element, key)
            if isinstance(found, Point):
                names = ("x", "y", "z")
                spans = ((0.0, sizes[0]), (0.0, sizes[1]), (0.0, room.figures.space.highest_m))
                for name, quantity, span in zip(names, found.values, spans, strict=True):
                    if name in room.figures.staging.free_axes(element):
                        yield from _coordinate(element, key, quantity, span)
            elif isinstance(found, Quantity):
                yield from _coordinate(element, key, found, (0.0, 4.0 * abs(found.value) or 1.0))


def _value(element: Element, key: str) -> object:
    found: object = element
    for part in key.split("."):
        found = getattr(found, part, None)
        if found is None:
            return None
    return found


def _coordinate(element: Element, key: str, quantity: Quantity, span: tuple[float, float]) -> Iterator[_Way]:
    """Yield the reading that a coordinate was written as, from where it is one end of the span to where the other."""
    own = [
        share for share in quantity.shares if share.reading.origin is Origin.FILE and share.reading.at is quantity.at
    ]
    for share in own[:1]:
        ends = sorted(share.reading.value + (end - quantity.value) / share.slope for end in span)
        written = share.reading.at.path.rpartition(".")[2] if share.reading.at is not None else ""
        below = key if key.endswith(written) else f"{key}.{written}"
        yield _Way(element, below, share.reading, max(ends[0], 0.0), ends[1])


def _clears(judged: Judged, way: _Way, value: float) -> bool:
    try:
        moved = judged.figure.moved({way.reading: value - way.reading.value})
    except Refused:
        return False
    if not math.isfinite(moved):
        return False
    shares = [share for share in judged.figure.shares if share.reading is not way.reading or share.reading.u]
    there = Figure.plain(judged.figure.name, judged.figure.unit, moved, shares=shares)
    return judged.outcome(there)[0] is Kind.PASS


def _breaks(other: Judged, way: _Way, value: float) -> bool:
    """Return whether a figure that rests on the reading fails there, or fails at a higher level, and does not now."""
    kind, level, _, _ = other.outcome(other.figure)
    try:
        moved = other.figure.moved({way.reading: value - way.reading.value})
    except Refused:
        return kind is Kind.PASS
    then, at, _, _ = other.outcome(Figure.plain(other.figure.name, other.figure.unit, moved, u=0.0))
    return then is Kind.FAIL and (kind is not Kind.FAIL or at.rank > level.rank)


def _spans(holds: Callable[[float], bool], way: _Way) -> list[tuple[float, float]]:
    """Return where along a way something holds, the ends found by halving."""
    step = (way.high - way.low) / STEPS
    if step <= 0.0:
        return []
    points = [way.low + step * number for number in range(STEPS + 1)]
    held = [holds(point) for point in points]
    spans: list[tuple[float, float]] = []
    start: float | None = None
    for number, (point, here) in enumerate(zip(points, held, strict=True)):
        if here and start is None:
            start = point if number == 0 else _edge(holds, point, points[number - 1])
        if not here and start is not None:
            spans.append((start, _edge(holds, points[number - 1], point)))
            start = None
    if start is not None:
        spans.append((start, way.high))
    return spans


def _edge(holds: Callable[[float], bool], inside: float, outside: float) -> float:
    for _ in range(_HALVINGS):
        middle = (inside + outside) / 2.0
        if holds(middle):
            inside = middle
        else:
            outside = middle
    return inside


def _tried(way: _Way, low: float, high: float, failed: Judged, touched: list[Judged]) -> Remedy | None:
    """Return the part of a span that breaks nothing else, or all of it with what it breaks."""
    clear = _Way(way.element, way.key, way.reading, low, high)
    whole = [
        span
        for span in _spans(lambda value: not any(_breaks(other, way, value) for other in touched), clear)
        if span[1] - span[0] > _TOLD_M
    ]
    if whole:
        low, high = min(whole, key=lambda span: abs(sum(span) / 2.0 - way.reading.value))
    low, high = math.ceil(low / _TOLD_M - 1e-6) * _TOLD_M, math.floor(high / _TOLD_M + 1e-6) * _TOLD_M
    if high < low or not (_clears(failed, way, low) and _clears(failed, way, high)):
        return None
    broken = {other.rule.id for value in (low, high) for other in touched if _breaks(other, way, value)}
    told = [Figure.plain(way.key, way.reading.unit, value, u=0.0) for value in (low, high, way.reading.value)]
    return Remedy(way.element.words, way.element.key, way.key, *told, breaks=tuple(sorted(broken)))
