"""The outline of a room as corners in clockwise order, from a size or from a list of corners."""

from __future__ import annotations

import math
from dataclasses import dataclass
from itertools import combinations
from typing import TYPE_CHECKING

from roomlint.design.quantity import Quantity, exact

if TYPE_CHECKING:
    from roomlint.design.reader import Book
    from roomlint.design.shell import Listed, Shell, Size
    from roomlint.source.tree import Node

SMALLEST_M, LARGEST_M = 1.0, 50.0
"""A room smaller or larger than this is a slip of the unit."""
_SAME_PLACE_M = 0.001
_Spot = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Corner:
    """A corner of the outline; the wall named by `wall` runs from here to the next corner."""

    x: Quantity
    y: Quantity
    wall: str
    height_m: Quantity | None = None
    """Height of the ceiling above this corner, when the ceiling is given by its corners."""

    @property
    def spot(self) -> _Spot:
        """Where it is, as plain numbers."""
        return (self.x.value, self.y.value)


def read_outline(room: Shell, book: Book) -> tuple[Corner, ...]:
    """Return the corners, clockwise seen from above; empty, with problems told, when they make no room.

    The room's width and length are left in the book: what is measured from the right or the front rests on them.
    """
    size, outline = room.at.get("size"), room.at.get("outline")
    if (size is None) == (outline is None):
        book.cross(room.at, "give the room either a size (a rectangle) or an outline (any other shape).")
        return ()
    corners = _rectangle(room.given("size"), book) if size is not None else _polygon(room.given("outline"), book)
    if not corners or book.width is None or book.length is None:
        return ()
    for extent, name in ((book.width, "width"), (book.length, "length")):
        if not SMALLEST_M <= extent.value <= LARGEST_M:
            text = f"a room {extent.value:.2f} m in {name} is not one; expected {SMALLEST_M:.0f} to {LARGEST_M:.0f} m."
            book.cross(extent.at or room.at, text)
    return _clockwise(_with_heights(room, corners, book))


def _rectangle(size: Size | None, book: Book) -> list[Corner]:
    width, length = (size.given("width_m"), size.given("length_m")) if size is not None else (None, None)
    if width is None or length is None:
        return []
    book.width, book.length = width, length
    left = rear = exact(0.0, "m")
    places = ((left, length, "front"), (width, length, "right"), (width, rear, "rear"), (left, rear, "left"))
    return [Corner(x, y, wall) for x, y, wall in places]


def _polygon(listed: tuple[Listed, ...] | None, book: Book) -> list[Corner]:
    points = [(one, one.given("from_left"), one.given("from_front")) for one in listed or ()]
    if not points or any(x is None or y is None for _, x, y in points):
        return []
    xs: list[Quantity] = [x for _, x, _ in points]
    ys: list[Quantity] = [y for _, _, y in points]
    for values, what, side in ((xs, "from_left", "left"), (ys, "from_front", "front")):
        if abs(min(value.value for value in values)) > _SAME_PLACE_M:
            text = f"measure corners from the {side} side of the bounding box: the smallest {what} must be 0 m."
            book.cross(points[0][0].at, text)
    width = book.width = max(xs, key=lambda value: value.value)
    length = book.length = max(ys, key=lambda value: value.value)
    corners = [Corner(_across(x, width), _along(y, length), one.id) for one, x, y in points]
    _tell_of_shape([one for one, _, _ in points], corners, book)
    return corners


def _across(x: Quantity, width: Quantity) -> Quantity:
    """Return how far a corner is from the left side; on a side of the bounding box it is where that side is."""
    if x.value == 0.0:
        return exact(0.0, "m")
    return width if x.value == width.value else x


def _along(from_front: Quantity, length: Quantity) -> Quantity:
    """Return how far a corner is from the rear side."""
    if from_front.value == 0.0:
        return length
    return exact(0.0, "m") if from_front.value == length.value else from_front * -1.0 + length


def _tell_of_shape(listed: list[Listed], corners: list[Corner], book: Book) -> None:
    """Tell what keeps a polygon from being the outline of a room."""
    seen: set[str] = set()
    for one in listed:
        if one.id in seen:
            book.cross(one.at, f"two walls are named {one.id!r}; give each its own name.")
        seen.add(one.id)
    edges = list(zip(corners, corners[1:] + corners[:1], strict=True))
    spots = [(start.spot, end.spot) for start, end in edges]
    for index, (start, end) in enumerate(spots):
        if math.dist(start, end) < _SAME_PLACE_M:
            text = f"wall {corners[index].wall!r} has no length: this corner and the next are one."
            book.cross(listed[index].at, text)
            return
    for (i, first), (j, second) in combinations(enumerate(spots), 2):
        after, around = j == i + 1, i == 0 and j == len(spots) - 1
        names = f"wall {corners[j].wall!r} {{}} wall {corners[i].wall!r}"
        if after or around:
            # Three corners that are both neighbours of one another are for the area below to judge.
            corner, before, beyond = (first[1], first[0], second[1]) if after else (first[0], second[0], first[1])
            if _doubles_back(corner, before, beyond):
                book.cross(listed[j].at, f"{names.format('doubles back on')}; list the corners in order.")
        elif _touch(first, second):
            book.cross(listed[j].at, f"{names.format('crosses or touches')}; list the corners in order.")
    if abs(_signed_area(corners)) < _SAME_PLACE_M:
        book.cross(listed[0].at, "the outline encloses no area.")


def _turn(a: _Spot, b: _Spot, c: _Spot) -> float:
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])


def _doubles_back(corner: _Spot, before: _Spot, beyond: _Spot) -> bool:
    near = abs(_turn(corner, before, beyond)) < _SAME_PLACE_M * math.dist(corner, before)
    ahead = (before[0] - corner[0]) * (beyond[0] - corner[0]) + (before[1] - corner[1]) * (beyond[1] - corner[1])
    return near and ahead > 0.0


def _touch(first: tuple[_Spot, _Spot], second: tuple[_Spot, _Spot]) -> bool:
    """Whether two segments share a point, to a millimetre."""
    a, b = first
    c, d = second
    if _turn(a, b, c) * _turn(a, b, d) < 0 and _turn(c, d, a) * _turn(c, d, b) < 0:
        return True
    ends = ((c, first), (d, first), (a, second), (b, second))
    return any(_off(spot, *segment) < _SAME_PLACE_M for spot, segment in ends)


def _off(spot: _Spot, start: _Spot, end: _Spot) -> float:
    """How far a point is from a segment."""
    dx, dy = end[0] - start[0], end[1] - start[1]
    along = ((spot[0] - start[0]) * dx + (spot[1] - start[1]) * dy) / (dx * dx + dy * dy)
    along = min(1.0, max(0.0, along))
    return math.dist(spot, (start[0] + along * dx, start[1] + along * dy))


def _signed_area(corners: list[Corner]) -> float:
    pairs = zip(corners, corners[1:] + corners[:1], strict=True)
    return sum(a.x.value * b.y.value - b.x.value * a.y.value for a, b in pairs) / 2


def _clockwise(corners: list[Corner]) -> tuple[Corner, ...]:
    """Turn the order round if need be; each wall keeps its name although its first corner is now the other end."""
    if _signed_area(corners) <= 0:
        return tuple(corners)
    backwards = corners[::-1]
    walls = [corner.wall for corner in backwards[1:] + backwards[:1]]
    return tuple(Corner(c.x, c.y, wall, c.height_m) for c, wall in zip(backwards, walls, strict=True))


def _with_heights(room: Shell, corners: list[Corner], book: Book) -> list[Corner]:
    """Add the ceiling heights that are given corner by corner, in the order in which the file lists the corners."""
    ceiling = room.given("ceiling")
    node: Node | None = ceiling.at.get("heights") if ceiling is not None else None
    if node is None or ceiling.given("shape") != "corners":
        return corners
    heights = ceiling.given("heights") or ()
    if len(node.value) != len(corners):
        text = f"give one height a corner: the outline has {len(corners)} corners, heights has {len(node.value)}."
        book.cross(ceiling.at, text)
    if len(heights) != len(corners):
        return corners
    return [Corner(c.x, c.y, c.wall, height) for c, height in zip(corners, heights, strict=True)]
