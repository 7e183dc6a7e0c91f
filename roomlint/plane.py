"""Polygons in a plane: the ground under the reading of a room and under its figures. It imports nothing of roomlint.

An outline is the corner points of a polygon (x to the right, y to the front, m), without repeating the first one.
Piece i runs from corner i to corner i + 1. Corners anticlockwise as seen from above have the inside on their left;
both orders are taken. A wall is one straight side of the room, however many pieces it is written as.
"""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, NamedTuple, TypeAlias

if TYPE_CHECKING:
    from collections.abc import Sequence

Point2: TypeAlias = tuple[float, float]  # m
Outline: TypeAlias = "Sequence[Point2]"
Segment: TypeAlias = tuple[Point2, Point2]

# A tenth of a millimetre: points this near a wall are on it.
ON_WALL_M = 1e-4
# Corners nearer than this are one, and walls nearer than this touch: no tape tells them apart.
SAME_PLACE_M = 1e-3
# A corner this near the line between its neighbours does not turn. Coordinates rounded to a millimetre put it up to
# 1.4 mm off a slanting wall (0.7 mm of its own, 0.7 mm of the ends).
STRAIGHT_WITHIN_M = 2e-3
# Two walls that meet at less than this, deg, lie on each other.
LEAST_CORNER_DEG = 1.0
# Twice the area over the perimeter, m: the width of a long strip. A room is wider than a hand.
LEAST_WIDTH_M = 0.1
_TRIANGLE = 3


class Fault(NamedTuple):
    """One reason why an outline is no simple polygon, with the pieces it lies between and a place.

    `kind` is one of: few-corners, no-length, same-corner, doubles-back, crosses, touches, thin. For same-corner the two
    numbers are corners, for thin and few-corners both are 0.
    """

    kind: str
    first: int
    second: int
    at: Point2


class Wall(NamedTuple):
    """One straight side of a room, as somebody inside who faces it sees it.

    `pieces` are the outline's piece numbers from left to right and `starts_m` how far from the left end each begins;
    `inward` is the unit vector into the room.
    """

    left: Point2
    right: Point2
    length_m: float
    inward: Point2
    pieces: tuple[int, ...]
    starts_m: tuple[float, ...]

    def along_m(self, point: Point2) -> float:
        """Return how far along the wall from its left end a point is, m; beyond 0..length it is past an end."""
        ux, uy = self.direction
        return (point[0] - self.left[0]) * ux + (point[1] - self.left[1]) * uy

    def off_m(self, point: Point2) -> float:
        """Return how far in front of the wall's plane a point is, m; negative behind it."""
        return (point[0] - self.left[0]) * self.inward[0] + (point[1] - self.left[1]) * self.inward[1]

    def at(self, along_m: float, off_m: float = 0.0) -> Point2:
        """Return the point of the plan a distance along the wall and a distance off it."""
        ux, uy = self.direction
        nx, ny = self.inward
        return (self.left[0] + along_m * ux + off_m * nx, self.left[1] + along_m * uy + off_m * ny)

    def piece_at(self, along_m: float) -> int:
        """Return the number of the piece at a distance from the left end."""
        found = self.pieces[0]
        for piece, start in zip(self.pieces, self.starts_m, strict=True):
            if along_m >= start:
                found = piece
        return found

    @property
    def direction(self) -> Point2:
        """The unit vector from the left end to the right one."""
        return (-self.inward[1], self.inward[0])


class Corner(NamedTuple):
    """A corner at which a room's outline turns: its number there, where, and the angle inside the room, deg."""

    number: int
    point: Point2
    inside_deg: float

    @property
    def reentrant(self) -> bool:
        """Whether the corner pokes into the room, as a chimney breast's do; two walls do not enclose a point there."""
        return self.inside_deg > 180.0  # noqa: PLR2004  a straight wall


def signed_area_m2(outline: Outline) -> float:
    """Return the area of a polygon, m2: positive with corners anticlockwise, negative clockwise (shoelace)."""
    # About the first corner, so that a small room far from the origin loses no digits.
    fx, fy = outline[0]
    total = 0.0
    x0, y0 = outline[-1]
    for x1, y1 in outline:
        total += (x0 - fx) * (y1 - fy) - (x1 - fx) * (y0 - fy)
        x0, y0 = x1, y1
    return total / 2.0


def area_m2(outline: Outline) -> float:
    """Return the area of a simple polygon, m2, whichever way its corners run."""
    return abs(signed_area_m2(outline))


def perimeter_m(outline: Outline) -> float:
    """Return the length of all walls together, m."""
    return sum(math.dist(start, end) for start, end in walls(outline))


def centroid(outline: Outline) -> Point2:
    """Return the centre of area. Raises ValueError for a polygon without area."""
    area = signed_area_m2(outline)
    if area == 0.0:
        raise ValueError("an outline without area has no centre")
    fx, fy = outline[0]
    cx = cy = 0.0
    for (x0, y0), (x1, y1) in walls(outline):
        turn = (x0 - fx) * (y1 - fy) - (x1 - fx) * (y0 - fy)
        cx += (x0 + x1 - 2.0 * fx) * turn
        cy += (y0 + y1 - 2.0 * fy) * turn
    return (fx + cx / (6.0 * area), fy + cy / (6.0 * area))


def anticlockwise(outline: Outline) -> tuple[Point2, ...]:
    """Return the corners in anticlockwise order as seen from above, the first one kept first."""
    corners = tuple(outline)
    return corners if signed_area_m2(corners) >= 0.0 else (corners[0], *reversed(corners[1:]))


def walls(outline: Outline) -> tuple[Segment, ...]:
    """Return each piece as its start and end corner, in order."""
    return tuple(zip(outline, (*outline[1:], outline[0]), strict=True))


def bounds(outline: Outline) -> Segment:
    """Return the lowest and the highest x and y of an outline."""
    xs, ys = [x for x, _ in outline], [y for _, y in outline]
    return (min(xs), min(ys)), (max(xs), max(ys))


def why_not_simple(outline: Outline) -> tuple[Fault, ...]:
    """Return what keeps an outline from being a simple polygon that a room can have; nothing for one that is.

    A simple polygon has three corners or more, no two of them in one place (1 mm), no piece that crosses or touches
    another than its neighbours or lies back on a neighbour (under 1 deg), and twice its area over its perimeter is
    more than 0.1 m. Pieces are compared with all others; whoever tells the faults finds each once.
    """
    sides = walls(outline)
    count = len(sides)
    if count < _TRIANGLE:
        return (Fault("few-corners", 0, 0, outline[0] if count else (0.0, 0.0)),)
    # Pairs of pieces about which something has been said already.
    told: set[tuple[int, int]] = set()
    found = _without_length(sides, told) + _same_corners(outline, told)
    for i in range(count):
        for j in range(i + 1, count):
            fault = None if (i, j) in told else _fault_between(sides, i, j)
            if fault is not None:
                found.append(fault)
    if not found and 2.0 * area_m2(outline) < LEAST_WIDTH_M * perimeter_m(outline):
        found.append(Fault("thin", 0, 0, outline[0]))
    return tuple(found)


def turning(outline: Outline, within_m: float = STRAIGHT_WITHIN_M) -> tuple[int, ...]:
    """Return the numbers of the corners at which a simple outline turns, in order.

    A corner within `within_m` of the line between the turning corners on either side only splits a straight wall.
    The straightest is left out first and every one left out stays within that of its wall, so a bow drawn in many
    short pieces is not flattened, and where the list starts or which way it runs changes nothing.
    """
    count = len(outline)
    if all(_bend_m(outline, (i - 1) % count, (i + 1) % count, within_m) > within_m for i in range(count)):
        return tuple(range(count))
    kept = list(range(count))
    while len(kept) > _TRIANGLE:
        bends = [_bend_m(outline, kept[k - 1], kept[(k + 1) % len(kept)], within_m) for k in range(len(kept))]
        least = min(bends)
        if least > within_m:
            break
        del kept[bends.index(least)]
    return tuple(kept)


def true_walls(outline: Outline, kept: Sequence[int] | None = None) -> tuple[Wall, ...]:
    """Return the straight walls of a simple outline, pieces of one wall merged, in the order of the outline.

    `kept` are the corners at which it turns, for one whose corners are moved about by what a tape may be out: then it
    is the room as drawn that says which walls are straight. None: as `turning` finds them.
    """
    count = len(outline)
    kept = turning(outline) if kept is None else kept
    turned = signed_area_m2(outline) >= 0.0
    found = []
    for first, last in zip(kept, (*kept[1:], kept[0] + count), strict=True):
        start, end = outline[first], outline[last % count]
        pieces = [number % count for number in range(first, last)]
        # Facing a wall from inside, a list that runs anticlockwise goes past from right to left.
        left, right = (end, start) if turned else (start, end)
        length = math.dist(left, right)
        ux, uy = (right[0] - left[0]) / length, (right[1] - left[1]) / length
        if turned:
            pieces.reverse()
        ends = [outline[(piece + 1) % count] if turned else outline[piece] for piece in pieces]
        starts = tuple((x - left[0]) * ux + (y - left[1]) * uy for x, y in ends)
        # Going from left to right along a wall that is faced from inside, the room lies on the right hand.
        found.append(Wall(left, right, length, (uy + 0.0, -ux + 0.0), tuple(pieces), starts))
    return tuple(found)


def true_corners(outline: Outline, kept: Sequence[int] | None = None) -> tuple[Corner, ...]:
    """Return the corners at which a simple outline turns, with the angles in the room (`kept`: see `true_walls`)."""
    kept = turning(outline) if kept is None else kept
    turned = 1 if signed_area_m2(outline) >= 0.0 else -1
    found = []
    for k, number in enumerate(kept):
        before, here, after = (
            outline[kept[(k - turned) % len(kept)]],
            outline[number],
            outline[kept[(k + turned) % len(kept)]],
        )
        to_before = math.atan2(before[1] - here[1], before[0] - here[0])
        to_after = math.atan2(after[1] - here[1], after[0] - here[0])
        found.append(Corner(number, here, math.degrees((to_before - to_after) % math.tau)))
    return tuple(found)


def is_rectangle(outline: Outline, tolerance_m: float = 1e-3) -> bool:
    """Say whether the outline is a rectangle along the x and y axes, to a tolerance, however it is cut in pieces."""
    (x0, y0), (x1, y1) = bounds(outline)
    box = ((x0, y0), (x1, y0), (x1, y1), (x0, y1))
    corners = [outline[number] for number in turning(outline)]
    if len(corners) != len(box):
        return False
    return all(any(math.dist(corner, point) <= tolerance_m for point in corners) for corner in box)


def depth_m(outline: Outline, point: Point2) -> float:
    """Return the distance of a point from the nearest piece of an outline, m: positive inside, negative outside."""
    x, y = point
    inside = False
    least = math.inf
    x0, y0 = outline[-1]
    for x1, y1 in outline:
        dx, dy, ox, oy = x1 - x0, y1 - y0, x - x0, y - y0
        if (y0 > y) != (y1 > y) and x < x0 + oy * dx / dy:
            inside = not inside
        square = dx * dx + dy * dy
        share = (ox * dx + oy * dy) / square if square > 0.0 else 0.0
        share = 0.0 if share < 0.0 else min(share, 1.0)
        ox -= share * dx
        oy -= share * dy
        least = min(least, ox * ox + oy * oy)
        x0, y0 = x1, y1
    return math.sqrt(least) if inside else -math.sqrt(least)


def contains(outline: Outline, point: Point2, tolerance_m: float = ON_WALL_M) -> bool:
    """Say whether a point is inside the outline or within `tolerance_m` of a piece; even-odd rule.

    A negative tolerance asks for a point that far inside.
    """
    return depth_m(outline, point) >= -tolerance_m


def distance_to_segment_m(point: Point2, start: Point2, end: Point2) -> float:
    """Return the distance from a point to a wall of finite length, m."""
    return math.dist(point, foot_on_segment(point, start, end))


def foot_on_segment(point: Point2, start: Point2, end: Point2) -> Point2:
    """Return the point of a segment nearest to a point; an end when the foot of the perpendicular lies beyond it."""
    dx, dy = end[0] - start[0], end[1] - start[1]
    square = dx * dx + dy * dy
    if square == 0.0:
        return start
    t = ((point[0] - start[0]) * dx + (point[1] - start[1]) * dy) / square
    t = min(1.0, max(0.0, t))
    return (start[0] + t * dx, start[1] + t * dy)


def segment_gap_m(a: Point2, b: Point2, c: Point2, d: Point2) -> float:
    """Return the distance between segments a-b and c-d, m; 0 when they meet."""
    if crossing(a, b, c, d) is not None:
        return 0.0
    return min(
        distance_to_segment_m(point, start, end) for point, start, end in ((a, c, d), (b, c, d), (c, a, b), (d, a, b))
    )


def crossing(a: Point2, b: Point2, c: Point2, d: Point2) -> float | None:
    """Return where segment a-b meets segment c-d, as the share of the way from a to b; None when it does not.

    Parallel segments meet nowhere, even on one line.
    """
    rx, ry = b[0] - a[0], b[1] - a[1]
    sx, sy = d[0] - c[0], d[1] - c[1]
    across = rx * sy - ry * sx
    if across == 0.0:
        return None
    ox, oy = c[0] - a[0], c[1] - a[1]
    t = (ox * sy - oy * sx) / across
    u = (ox * ry - oy * rx) / across
    return t if 0.0 <= t <= 1.0 and 0.0 <= u <= 1.0 else None


def _without_length(sides: Sequence[Segment], told: set[tuple[int, int]]) -> list[Fault]:
    count = len(sides)
    found = []
    for i, (a, b) in enumerate(sides):
        if math.dist(a, b) < SAME_PLACE_M:
            found.append(Fault("no-length", i, i, a))
            # Its neighbours touch because of it.
            told.add(_pair((i - 1) % count, (i + 1) % count))
            told |= {_pair(i, other) for other in range(count)}
    return found


def _same_corners(outline: Outline, told: set[tuple[int, int]]) -> list[Fault]:
    count = len(outline)
    found = []
    for i in range(count):
        for j in range(i + 2, count - (i == 0)):
            if math.dist(outline[i], outline[j]) < SAME_PLACE_M and _pair(i, (j - 1) % count) not in told:
                found.append(Fault("same-corner", i, j, outline[j]))
                told |= {_pair(p % count, q % count) for p in (i - 1, i) for q in (j - 1, j)}
    return found


def _fault_between(sides: Sequence[Segment], i: int, j: int) -> Fault | None:
    (a, b), (c, d) = sides[i], sides[j]
    after, around = j == i + 1, i == 0 and j == len(sides) - 1
    if after or around:
        corner, before, beyond = (b, a, d) if after else (a, c, b)
        back = _between_deg(corner, before, beyond) < LEAST_CORNER_DEG
        return Fault("doubles-back", i, j, corner) if back else None
    if _apart(a, b, c, d):
        return None
    share, other = crossing(a, b, c, d), crossing(c, d, a, b)
    if share is not None and other is not None and _amid(share, a, b) and _amid(other, c, d):
        return Fault("crosses", i, j, (a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])))
    return Fault("touches", i, j, c) if segment_gap_m(a, b, c, d) <= SAME_PLACE_M else None


def _amid(share: float, start: Point2, end: Point2) -> bool:
    """Say whether a share of the way along a piece is more than a millimetre from either end."""
    length = math.dist(start, end)
    return SAME_PLACE_M < share * length < length - SAME_PLACE_M


def _pair(i: int, j: int) -> tuple[int, int]:
    return (i, j) if i < j else (j, i)


def _apart(a: Point2, b: Point2, c: Point2, d: Point2) -> bool:
    """Say from their extents alone that two segments are more than a millimetre apart."""
    return (
        max(a[0], b[0]) + SAME_PLACE_M < min(c[0], d[0])
        or max(c[0], d[0]) + SAME_PLACE_M < min(a[0], b[0])
        or max(a[1], b[1]) + SAME_PLACE_M < min(c[1], d[1])
        or max(c[1], d[1]) + SAME_PLACE_M < min(a[1], b[1])
    )


def _between_deg(corner: Point2, before: Point2, beyond: Point2) -> float:
    ux, uy = before[0] - corner[0], before[1] - corner[1]
    vx, vy = beyond[0] - corner[0], beyond[1] - corner[1]
    return math.degrees(abs(math.atan2(ux * vy - uy * vx, ux * vx + uy * vy)))


def _bend_m(outline: Outline, before: int, after: int, enough_m: float) -> float:
    """Return how far the outline between two corners strays from the line between them, m; no more once enough."""
    count = len(outline)
    start, end = outline[before], outline[after]
    most = 0.0
    number = (before + 1) % count
    while number != after:
        most = max(most, distance_to_segment_m(outline[number], start, end))
        if most > enough_m:
            break
        number = (number + 1) % count
    return most
