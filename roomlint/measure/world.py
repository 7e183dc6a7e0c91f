"""The design's numbers as read, or with some readings moved; a figure is computed in one world or another.

A figure is written once, as a function of a world. In the world as read it gives its value, and the world notes which
readings and assumptions it looked at. With one reading moved by its uncertainty it gives that reading's share; with a
coordinate moved across the room it tells where a thing could stand instead.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, NamedTuple, TypeVar

from roomlint.design.base import Missing
from roomlint.figures.domain import Refused

if TYPE_CHECKING:
    from collections.abc import Callable, Hashable, Mapping

    from roomlint.design.base import Point
    from roomlint.design.quantity import Quantity, Reading
    from roomlint.figures.direction import Point3

T = TypeVar("T")


class Trace(NamedTuple):
    """What a computation looked at, in the order that it did."""

    readings: dict[Reading, None]
    assumes: dict[str, None]

    def add(self, other: Trace) -> None:
        """Take in what a part of the computation looked at."""
        self.readings.update(other.readings)
        self.assumes.update(other.assumes)


class _Known(NamedTuple):
    value: Any
    refusal: Missing | Refused | None
    trace: Trace


class World:
    """The world as read. It remembers what was computed in it, refusals too."""

    __slots__ = ("_known", "_moved", "_trace")

    def __init__(self) -> None:
        self._known: dict[Hashable, _Known] = {}
        self._moved: dict[tuple[Reading, float], World] = {}
        self._trace = Trace({}, {})

    def with_moved(self, reading: Reading, by: float) -> World:
        """Return the world in which one reading is off by so much; kept, for every figure asks for the same ones."""
        found = self._moved.get((reading, by))
        if found is None:
            found = self._moved[(reading, by)] = Moved(self, {reading: by})
        return found

    def release(self) -> None:
        """Let go of what is known here and in the worlds that were moved from here, which hold on to this one."""
        for world in self._moved.values():
            world.release()
        self._moved.clear()
        self._known.clear()

    def __call__(self, quantity: Quantity) -> float:
        """Return a quantity's number in this world."""
        for share in quantity.shares:
            self._trace.readings[share.reading] = None
        return quantity.value

    def xyz(self, point: Point) -> Point3:
        """Return a point's coordinates in this world."""
        return (self(point.x), self(point.y), self(point.z))

    def assume(self, words: str) -> None:
        """Note something that is assumed and is no number, such as `side grain`."""
        self._trace.assumes[words] = None

    def once(self, key: Hashable, compute: Callable[[World], T]) -> T:
        """Compute a part the first time that it is asked for."""
        known = self.known(key, compute)
        self._trace.add(known.trace)
        if known.refusal is not None:
            try:
                raise known.refusal.with_traceback(None)
            finally:
                del known  # by way of this frame what is raised would hold on to itself, and the room with it
        value: T = known.value
        return value

    def known(self, key: Hashable, compute: Callable[[World], Any]) -> _Known:
        """Return what is known of a part, computing it when nothing is."""
        found = self._known.get(key)
        if found is None:
            found = self._known[key] = self._compute(compute)
        return found

    def traced(self, compute: Callable[[World], T]) -> tuple[T, Trace]:
        """Return what a computation gives and what it looked at."""
        found = self._compute(compute)
        if found.refusal is not None:
            try:
                raise found.refusal.with_traceback(None)
            finally:
                del found  # by way of this frame what is raised would hold on to itself, and the room with it
        return found.value, found.trace

    def _compute(self, compute: Callable[[World], Any]) -> _Known:
        outer, self._trace = self._trace, Trace({}, {})
        try:
            return _Known(compute(self), None, self._trace)
        except (Missing, Refused) as refusal:
            return _Known(None, refusal, self._trace)
        finally:
            self._trace = outer


class Moved(World):
    """A world in which some readings differ from what was read, each by so much in its own unit."""

    __slots__ = ("_computed", "_moves", "_nominal", "_readings")

    def __init__(self, nominal: World, moves: Mapping[Reading, float]) -> None:
        super().__init__()
        self._nominal = nominal
        self._moves = moves
        self._readings = frozenset(moves)
        self._computed: dict[int, tuple[Quantity, float]] = {}

    def with_moved(self, reading: Reading, by: float) -> World:
        """Return the world in which a reading, perhaps one that differs already, is off by so much as well."""
        found = self._moved.get((reading, by))
        if found is None:
            moves = {**self._moves, reading: self._moves.get(reading, 0.0) + by}
            found = self._moved[(reading, by)] = Moved(self._nominal, moves)
        return found

    def __call__(self, quantity: Quantity) -> float:
        """Return a quantity's number in this world."""
        value, moves = quantity.value, self._moves
        if quantity.compute is not None and any(share.reading in moves for share in quantity.shares):
            found = self._computed.get(id(quantity))
            if found is None:
                # Kept with its quantity, so that no other can come by its identity.
                found = self._computed[id(quantity)] = (quantity, quantity.compute(self))
            return found[1]
        for share in quantity.shares:
            if share.reading in moves:
                value += share.slope * moves[share.reading]
        return value

    def xyz(self, point: Point) -> Point3:
        """Return a point's coordinates in this world."""
        # What is asked for most: written out, it takes half the time.
        moves, found = self._moves, []
        for quantity in (point.x, point.y, point.z):
            if quantity.compute is not None:
                found.append(self(quantity))
                continue
            value = quantity.value
            for share in quantity.shares:
                if share.reading in moves:
                    value += share.slope * moves[share.reading]
            found.append(value)
        return (found[0], found[1], found[2])

    def assume(self, words: str) -> None:
        """Do nothing: what is assumed was noted in the world as read."""

    def once(self, key: Hashable, compute: Callable[[World], T]) -> T:
        """Compute a part that the moved readings touch; everything else is as it was read."""
        known = self._nominal.known(key, compute)
        # The few that moved are looked for among the many that it rests on.
        if not known.trace.readings.keys().isdisjoint(self._readings):
            known = self.known(key, compute)
        if known.refusal is not None:
            try:
                raise known.refusal.with_traceback(None)
            finally:
                del known  # by way of this frame what is raised would hold on to itself, and the room with it
        value: T = known.value
        return value
