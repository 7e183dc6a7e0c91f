"""The outline of a room as corners in clockwise order, from a size or from a list of corners."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from roomlint import plane
from roomlint.design.quantity import Quantity, exact

if TYPE_CHECKING:
    from roomlint.design.reader import Book
    from roomlint.design.shell import Listed, Shell, Size
    from roomlint.source.node import Node

SMALLEST_M, LARGEST_M = 1.0, 50.0
"""A room smaller or larger than this is a slip of the unit."""
_NO_ROOM = {
    "few-corners": "the outline of a room has three corners or more.",
    "no-length": "wall {first} has no length: this corner and the next are one.",
    "same-corner": "the corners at which walls {first} and {second} begin are one; list each corner once.",
    "doubles-back": "wall {second} doubles back on wall {first}; list the corners in order.",
    "crosses": "wall {second} crosses wall {first}; list the corners in order.",
    "touches": "wall {second} touches wall {first}; list the corners in order.",
    "thin": "the outline encloses no room, only a narrow strip.",
}


@dataclass(frozen=True, slots=True)
class Corner:
    """A corner of the outline; the wall named by `wall` runs from here to the next corner."""

    x: Quantity
    y: Quantity
    wall: str
    height_m: Quantity | None = None
    """Height of the ceiling above this corner, when the ceiling is given by its corners."""

    @property
    def spot(self) -> tuple[float, float]:
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
            wanted = f"{book.words(SMALLEST_M)} to {book.words(LARGEST_M)}"
            text = f"a room {book.words(extent.value)} in {name} is not one; expected {wanted}."
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
        if abs(min(value.value for value in values)) > plane.SAME_PLACE_M:
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
    walls = [repr(corner.wall) for corner in corners]
    for kind, first, second, _ in plane.why_not_simple([corner.spot for corner in corners]):
        text = _NO_ROOM[kind].format(first=walls[first], second=walls[second])
        book.cross(listed[second].at, text)


def _clockwise(corners: list[Corner]) -> tuple[Corner, ...]:
    """Turn the order round if need be; each wall keeps its name although its first corner is now the other end."""
    if plane.signed_area_m2([corner.spot for corner in corners]) <= 0.0:
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
