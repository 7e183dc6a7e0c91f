"""Reads typed values out of a checked tree, collecting every problem on the way."""

from __future__ import annotations

import difflib
import math
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from roomlint.design.base import Point, Value
from roomlint.source.place import Place, Problem
from roomlint.source.quantity import QuantityError, parse

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Mapping

    from roomlint.design.listening import Seat
    from roomlint.design.products import Product
    from roomlint.source.tree import Node

UNITS = {"length": "m", "angle": "deg", "mass": "kg", "time": "s", "frequency": "Hz", "level": "dB", "force": "N"}
"""How a message writes the uncertainty of an input, by dimension."""
LONGEST_M = 200.0
"""No length of a residential room, cable or circuit is longer; a longer one is a slip of the unit."""


@dataclass(slots=True)
class Book:
    """What the readers of one file share."""

    file: str
    problems: list[Problem] = field(default_factory=list)
    products: Mapping[str, Product] = field(default_factory=dict)
    tolerance_m: float = 0.0
    width: Value = Value(0.0)
    length: Value = Value(0.0)
    seats: dict[str, Seat] = field(default_factory=dict)
    surfaces: tuple[str, ...] = ()

    def tell(self, node: Node, text: str) -> None:
        """Add a problem at a node."""
        self.problems.append(Problem(node.place, text))


def items(node: Node) -> list[Node]:
    """Return the items of a list node."""
    return node.value if isinstance(node.value, list) else []


def nearest(name: str, known: Iterable[str]) -> str:
    """Return a sentence that names the nearest known name, or lists what is known."""
    names = sorted(set(known))
    close = difflib.get_close_matches(name, names, n=1)
    if close:
        return f"did you mean {close[0]!r}?"
    return f"known: {', '.join(names[:12])}{' ...' if len(names) > 12 else ''}." if names else "none is known."  # noqa: PLR2004


class Reader:
    """Reads the keys of one mapping."""

    __slots__ = ("book", "node")

    def __init__(self, node: Node, book: Book) -> None:
        self.node = node
        self.book = book

    def at(self, key: str) -> Node | None:
        """Return the node of a key; an explicit null counts as absent."""
        node = self.node.get(key)
        return None if node is None or node.value is None else node

    def below(self, key: str) -> Reader | None:
        """Return a reader of the mapping below a key."""
        node = self.at(key)
        return Reader(node, self.book) if node is not None else None

    def each(self, key: str) -> Iterator[Reader]:
        """Yield a reader for every item of a list."""
        for item in self.nodes(key):
            yield Reader(item, self.book)

    def nodes(self, key: str) -> list[Node]:
        """Return the items of a list as nodes."""
        node = self.at(key)
        return items(node) if node is not None else []

    def text(self, key: str) -> str | None:
        """Return a text."""
        node = self.at(key)
        return str(node.value) if node is not None else None

    def texts(self, key: str) -> tuple[str, ...]:
        """Return a list of texts."""
        return tuple(str(item.value) for item in self.nodes(key))

    def flag(self, key: str) -> bool | None:
        """Return a yes or no."""
        node = self.at(key)
        return bool(node.value) if node is not None else None

    def whole(self, key: str) -> int | None:
        """Return a whole number."""
        node = self.at(key)
        return int(node.value) if node is not None and isinstance(node.value, (int, float)) else None

    def number(self, key: str) -> float | None:
        """Return a plain number."""
        node = self.at(key)
        return float(node.value) if node is not None and isinstance(node.value, (int, float)) else None

    def quantity(self, key: str, dimension: str, *, positive: bool = False) -> Value | None:
        """Return a quantity of a dimension."""
        node = self.at(key)
        return self.value_of(node, dimension, positive=positive) if node is not None else None

    def value_of(self, node: Node, dimension: str, *, positive: bool = False) -> Value | None:
        """Return the quantity that a node holds, or tell what is wrong with it."""
        try:
            measure = parse(str(node.value), dimension)
        except QuantityError as error:
            self.book.tell(node, str(error))
            return None
        if positive and measure.value <= 0:
            self.book.tell(node, f"{node.value!r} must be more than zero.")
            return None
        if dimension == "length" and abs(measure.value) > LONGEST_M:
            self.book.tell(node, f"{node.value!r} is longer than {LONGEST_M:.0f} m; check its unit.")
            return None
        return Value(measure.value, measure.u, UNITS.get(dimension, ""), node)

    def length(self, key: str) -> Value | None:
        """Return a nominal size: it has no uncertainty unless it says so."""
        return self.quantity(key, "length", positive=True)

    def surveyed(self, key: str, *, positive: bool = False) -> Value | None:
        """Return a length measured on site: without an uncertainty of its own it has the survey's."""
        value = self.quantity(key, "length", positive=positive)
        return self._with_tolerance(value) if value is not None else None

    def surveyed_of(self, node: Node) -> Value | None:
        """Return the surveyed length that a node holds."""
        value = self.value_of(node, "length", positive=True)
        return self._with_tolerance(value) if value is not None else None

    def _with_tolerance(self, value: Value) -> Value:
        if value.u > 0 or self.book.tolerance_m == 0:
            return value
        return Value(value.value, self.book.tolerance_m, value.unit, value.at)

    def angle(self, key: str) -> Value | None:
        """Return an angle in degrees."""
        return self.quantity(key, "angle")

    def product(self, key: str, *kinds: str) -> Product | None:
        """Return the product that a key names, which must be of one of the kinds."""
        node = self.at(key)
        if node is None:
            return None
        name = str(node.value)
        found = self.book.products.get(name)
        if found is None:
            known = nearest(name, (p.id for p in self.book.products.values() if p.kind in kinds))
            self.book.tell(node, f"no product sheet has the id {name!r}; {known}")
            return None
        if found.kind not in kinds:
            self.book.tell(node, f"{name!r} is a {found.kind}, but a {' or '.join(kinds)} belongs here.")
            return None
        return found

    def one_of(self, key: str, known: Iterable[str], what: str) -> str | None:
        """Return a name that must be among the known ones."""
        node = self.at(key)
        if node is None:
            return None
        name = str(node.value)
        names = tuple(known)
        if name not in names:
            self.book.tell(node, f"there is no {what} {name!r}; {nearest(name, names)}")
            return None
        return name

    def names(self, key: str, known: Iterable[str], what: str) -> tuple[str, ...]:
        """Return a list of names that must all be among the known ones."""
        names = tuple(known)
        found = []
        for node in self.nodes(key):
            name = str(node.value)
            if name in names:
                found.append(name)
            else:
                self.book.tell(node, f"there is no {what} {name!r}; {nearest(name, names)}")
        return tuple(found)

    def position(self, key: str) -> Point | None:
        """Return a point of the room; None when a coordinate is not given."""
        reader = self.below(key)
        if reader is None:
            return None
        x = reader.one_side("from_left", "from_right", self.book.width)
        y = reader.one_side("from_rear", "from_front", self.book.length)
        z = reader.surveyed("height")
        return Point(x, y, z) if x is not None and y is not None and z is not None else None

    def one_side(self, near: str, far: str, whole: Value) -> Value | None:
        """Return a coordinate given from the near side of the room or from the far one.

        The room is measured from its left and front walls, so a coordinate given from there carries its own
        uncertainty only, and one given from the right or the rear carries the room's size as well.
        """
        here, there = self.at(near), self.at(far)
        if here is not None and there is not None:
            self.book.tell(there, f"give either {near} or {far}, not both.")
            return None
        value = self.surveyed(near if there is None else far)
        if value is None:
            return None
        known_wall = near == "from_left" if there is None else far == "from_front"
        u = value.u if known_wall else math.hypot(value.u, whole.u)
        return Value(value.value if there is None else whole.value - value.value, u, "m", value.at)


def unique(readers: Iterable[Reader], what: str) -> None:
    """Tell of every id that stands twice in a list."""
    seen: dict[str, Place] = {}
    for reader in readers:
        node = reader.at("id")
        if node is None:
            continue
        first = seen.setdefault(str(node.value), node.place)
        if first != node.place:
            reader.book.tell(node, f"{what} {node.value!r} stands twice; the first is on line {first.line}.")
