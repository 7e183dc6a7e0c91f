"""The outline of a room as corners in clockwise order, from a size or from a list of corners."""

from __future__ import annotations

from itertools import combinations
from typing import TYPE_CHECKING

from roomlint.design.base import Value
from roomlint.design.shell import Corner

if TYPE_CHECKING:
    from roomlint.design.reader import Book, Reader

SMALLEST_M, LARGEST_M = 1.0, 50.0
"""A room smaller or larger than this is a slip of the unit."""
_SAME_PLACE_M = 0.001


def read_outline(room: Reader) -> tuple[Corner, ...]:
    """Return the corners, clockwise seen from above; empty, with problems told, when they make no room."""
    size, outline = room.below("size"), room.at("outline")
    if (size is None) == (outline is None):
        room.book.tell(room.node, "give the room either a size (a rectangle) or an outline (any other shape).")
        return ()
    corners = _rectangle(size) if size is not None else _polygon(room)
    if not corners:
        return ()
    book = room.book
    book.width = max((corner.x for corner in corners), key=lambda value: value.value)
    book.length = _longest(room, corners)
    for extent, name in ((book.width, "width"), (book.length, "length")):
        if not SMALLEST_M <= extent.value <= LARGEST_M:
            where = extent.at or room.node
            text = f"a room {extent.value:.2f} m in {name} is not one; expected {SMALLEST_M:.0f} to {LARGEST_M:.0f} m."
            book.tell(where, text)
    return _with_heights(room, corners)


def _rectangle(size: Reader) -> tuple[Corner, ...]:
    width, length = size.surveyed("width", positive=True), size.surveyed("length", positive=True)
    if width is None or length is None:
        return ()
    # The room is measured from its left and front walls: those are where they are, the others carry the uncertainty.
    left, right = Value(0.0, 0.0, "m"), width
    front, rear = Value(length.value, 0.0, "m", length.at), Value(0.0, length.u, "m", length.at)
    places = ((left, front, "front"), (right, front, "right"), (right, rear, "rear"), (left, rear, "left"))
    return tuple(Corner(x, y, wall) for x, y, wall in places)


def _polygon(room: Reader) -> tuple[Corner, ...]:
    readers = list(room.each("outline"))
    points = [(_from_datum(reader, "from_left"), _from_datum(reader, "from_front")) for reader in readers]
    known = [(x, y) for x, y in points if x is not None and y is not None]
    if len(known) != len(readers):
        return ()
    for index, (what, side) in enumerate((("from_left", "left"), ("from_front", "front"))):
        nearest = min(pair[index].value for pair in known)
        if abs(nearest) > _SAME_PLACE_M:
            text = f"measure corners from the {side} side of the bounding box: the smallest {what} must be 0 m."
            room.book.tell(readers[0].node, text)
    length = max(y.value for _, y in known)
    corners = [
        Corner(x, Value(length - y.value, y.u, "m", y.at), reader.text("wall") or "")
        for reader, (x, y) in zip(readers, known, strict=True)
    ]
    if not _told_of_shape(room.book, readers, corners) and _signed_area(corners) > 0:
        corners = _reversed(corners)
    return tuple(corners)


def _from_datum(reader: Reader, key: str) -> Value | None:
    """Return how far a corner is from the side that the room is measured from; on that side it is exact."""
    value = reader.surveyed(key)
    return Value(0.0, 0.0, "m", value.at) if value is not None and value.value == 0 else value


def _told_of_shape(book: Book, readers: list[Reader], corners: list[Corner]) -> bool:
    """Tell what is wrong with a polygon, and whether anything is."""
    before = len(book.problems)
    seen: set[str] = set()
    for reader, corner in zip(readers, corners, strict=True):
        if corner.wall in seen:
            book.tell(reader.node, f"two walls are named {corner.wall!r}; give each its own name.")
        seen.add(corner.wall)
    edges = list(zip(corners, corners[1:] + corners[:1], strict=True))
    for index, (start, end) in enumerate(edges):
        if abs(start.x.value - end.x.value) + abs(start.y.value - end.y.value) < _SAME_PLACE_M:
            book.tell(readers[index].node, f"wall {start.wall!r} has no length: this corner and the next are one.")
    for (i, first), (j, second) in combinations(enumerate(edges), 2):
        neighbours = j - i == 1 or (i == 0 and j == len(edges) - 1)
        if not neighbours and _cross(first, second):
            book.tell(
                readers[j].node, f"wall {second[0].wall!r} crosses wall {first[0].wall!r}; list corners in order."
            )
    return len(book.problems) > before


def _turn(a: Corner, b: Corner, c: Corner) -> float:
    ax, ay = a.x.value, a.y.value
    return (b.x.value - ax) * (c.y.value - ay) - (b.y.value - ay) * (c.x.value - ax)


def _cross(first: tuple[Corner, Corner], second: tuple[Corner, Corner]) -> bool:
    a, b = first
    c, d = second
    return _turn(a, b, c) * _turn(a, b, d) < 0 and _turn(c, d, a) * _turn(c, d, b) < 0


def _signed_area(corners: list[Corner]) -> float:
    pairs = zip(corners, corners[1:] + corners[:1], strict=True)
    return sum(a.x.value * b.y.value - b.x.value * a.y.value for a, b in pairs) / 2


def _reversed(corners: list[Corner]) -> list[Corner]:
    """Turn the order round; each wall keeps its name although its first corner is now the other end."""
    backwards = corners[::-1]
    walls = [corner.wall for corner in backwards[1:] + backwards[:1]]
    return [Corner(c.x, c.y, wall, c.height_m) for c, wall in zip(backwards, walls, strict=True)]


def _longest(room: Reader, corners: tuple[Corner, ...]) -> Value:
    """Return the room's extent front to rear with the uncertainty of the measurement that tells it."""
    size = room.below("size")
    if size is not None:
        return size.surveyed("length", positive=True) or corners[0].y
    rear = min(corners, key=lambda corner: corner.y.value).y
    front = max(corner.y.value for corner in corners)
    return Value(front - rear.value, rear.u, "m", rear.at)


def _with_heights(room: Reader, corners: tuple[Corner, ...]) -> tuple[Corner, ...]:
    """Add the ceiling heights that are given corner by corner, in the order in which the file lists the corners."""
    ceiling = room.below("ceiling")
    if ceiling is None or ceiling.text("shape") != "corners":
        return corners
    nodes = ceiling.nodes("heights")
    if len(nodes) != len(corners):
        text = f"give one height a corner: the outline has {len(corners)} corners, heights has {len(nodes)}."
        room.book.tell(ceiling.node, text)
        return corners
    heights = [ceiling.surveyed_of(node) for node in nodes]
    outline = room.nodes("outline")
    if outline:
        # The corners may have been turned round to run clockwise; a height stays with the corner it was listed with.
        listed = {id(node.get("from_left")): height for node, height in zip(outline, heights, strict=True)}
        heights = [listed[id(corner.x.at)] for corner in corners]
    return tuple(Corner(c.x, c.y, c.wall, height) for c, height in zip(corners, heights, strict=True))
