"""Ways along which a remedy is looked for: one reading of an element, from where to where somebody would change it."""

from __future__ import annotations

import math
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, Final

from roomlint.design.base import Element, Missing, Point
from roomlint.design.listening import Seat
from roomlint.design.quantity import Origin, Quantity, Reading
from roomlint.figures.domain import Refused
from roomlint.measure.world import Moved, World

if TYPE_CHECKING:
    from collections.abc import Iterator

    from roomlint.measure.figure import Figure
    from roomlint.review.room import Room

HAND_M: Final = 0.15
"""Up to this length another screw is what anybody has on the van; practice, ours."""
SEAT_STEP_M: Final = 1.0
"""A row that must go farther than this is another room; practice, ours."""


@dataclass(frozen=True, slots=True)
class Way:
    """One reading that may be another: an element's, by its key, from one value to another."""

    element: Element
    key: str
    reading: Reading
    low: float
    high: float
    nominal: World
    worlds: dict[float, World] = field(default_factory=dict)
    found: dict[tuple[int, float], float | None] = field(default_factory=dict)

    def there(self, figure: Figure, value: float) -> float | None:
        """Return a figure's value with the reading at another value; None where there is none."""
        key = (id(figure), value)  # two figures may be told alike and be computed of other things
        if key not in self.found:
            try:
                found = figure.at(self.world(value))
            except (Missing, Refused):
                found = math.inf
            self.found[key] = found if math.isfinite(found) else None
        return self.found[key]

    def world(self, value: float) -> World:
        """Return the world in which the reading has another value; all figures share what is computed in it."""
        if value not in self.worlds:
            self.worlds[value] = Moved(self.nominal, {self.reading: value - self.reading.value})
        return self.worlds[value]


def ways_of(element: Element, key: str, room: Room) -> Iterator[Way]:
    """Yield the ways of an element's key: of a place each coordinate along which the thing is free to move."""
    found = _value(element, key)
    if isinstance(found, Point):
        shell = room.design.shell
        spans = ((0.0, shell.width_m.value), (0.0, shell.length_m.value), (0.0, room.figures.space.highest_m))
        free = room.figures.staging.free_axes(element)
        for name, quantity, span in zip(("x", "y", "z"), found.values, spans, strict=True):
            if name in free:
                yield from _coordinate(element, key, quantity, _within_reach(element, quantity, span), room)
    elif isinstance(found, Quantity):
        yield from _coordinate(element, key, found, _span_of(found), room)


def _span_of(quantity: Quantity) -> tuple[float, float]:
    """Return how far a value that is no coordinate may be changed: once round, or up to four times as much.

    Of lengths no more than twice as much from a hand's breadth on: a bracket of other sizes is another design.
    """
    if quantity.unit == "deg":
        return (quantity.value - 180.0, quantity.value + 180.0)
    size = abs(quantity.value)
    most = 4.0 * size
    if quantity.unit == "m":
        most = min(most, max(2.0 * size, HAND_M))
    return (0.0, most or 1.0)


def _within_reach(element: Element, quantity: Quantity, span: tuple[float, float]) -> tuple[float, float]:
    """Return the part of a span that somebody would move a thing along: a seat goes a step, not to the other end."""
    if not isinstance(element, Seat):
        return span
    return max(span[0], quantity.value - SEAT_STEP_M), min(span[1], quantity.value + SEAT_STEP_M)


def _value(element: Element, key: str) -> object:
    found: object = element
    for part in key.split("."):
        declared = found.KEYS.get(part) if isinstance(found, Element) else None
        found = getattr(found, declared.attr) if declared is not None else None
        if found is None:
            return None
    return found


def _coordinate(element: Element, key: str, quantity: Quantity, span: tuple[float, float], room: Room) -> Iterator[Way]:
    """Yield the reading that a coordinate was written as, from where it is one end of the span to where the other."""
    own = [
        share for share in quantity.shares if share.reading.origin is Origin.FILE and share.reading.at is quantity.at
    ]
    for share in own[:1]:
        ends = sorted(share.reading.value + (end - quantity.value) / share.slope for end in span)
        path = share.reading.at.path if share.reading.at is not None else ""
        below = path.removeprefix(element.at.path).lstrip(".") or key
        floor = ends[0] if quantity.unit == "deg" else max(ends[0], 0.0)
        # What is written of a pair is the left one's: that one is told where to stand.
        told = getattr(element, "mirrors", None) or element
        yield Way(told, below, share.reading, floor, ends[1], room.figures.world)
