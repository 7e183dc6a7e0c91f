"""The floor plan: polygons, walls as their edges, and what is near or inside.

A plan is the room's outline as corner points (x to the right, y to the front, m), without repeating the first one.
Wall i runs from corner i to corner i + 1. Corners anticlockwise as seen from above have the room on their left.
"""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, NamedTuple, TypeAlias

from roomlint.figures.domain import Refused

if TYPE_CHECKING:
    from collections.abc import Sequence

Point2: TypeAlias = tuple[float, float]  # m
Outline: TypeAlias = "Sequence[Point2]"
Triangle: TypeAlias = tuple[int, int, int]  # corner numbers, anticlockwise

# A tenth of a millimetre: points this near a wall are on it.
ON_WALL_M = 1e-4
# Twice the area, m2, of a triangle too thin to be one.
_NO_TURN = 1e-9


class NearestWall(NamedTuple):
    """The wall nearest to a point: its number, how far it is, and the point of it that is nearest."""

    wall: int
    distance_m: float
    foot: Point2


class NearestCorner(NamedTuple):
    """The corner of the outline nearest to a point, and how far it is."""

    corner: int
    distance_m: float


def signed_area_m2(outline: Outline) -> float:
    """Return the area of a polygon, m2: positive with corners anticlockwise, negative clockwise (shoelace)."""
    total = 0.0
    x0, y0 = outline[-1]
    for x1, y1 in outline:
        total += x0 * y1 - x1 * y0
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
        raise Refused("an outline without area has no centre")
    cx = cy = 0.0
    for (x0, y0), (x1, y1) in walls(outline):
        turn = x0 * y1 - x1 * y0
        cx += (x0 + x1) * turn
        cy += (y0 + y1) * turn
    return (cx / (6.0 * area), cy / (6.0 * area))


def anticlockwise(outline: Outline) -> tuple[Point2, ...]:
    """Return the corners in anticlockwise order as seen from above, the first one kept first."""
    corners = tuple(outline)
    return corners if signed_area_m2(corners) >= 0.0 else (corners[0], *reversed(corners[1:]))


def walls(outline: Outline) -> tuple[tuple[Point2, Point2], ...]:
    """Return each wall as its start and end corner, in order."""
    return tuple(zip(outline, (*outline[1:], outline[0]), strict=True))


def bounds(outline: Outline) -> tuple[Point2, Point2]:
    """Return the lowest and the highest x and y of an outline."""
    xs, ys = [x for x, _ in outline], [y for _, y in outline]
    return (min(xs), min(ys)), (max(xs), max(ys))


def why_not_simple(outline: Outline) -> str | None:
    """Say what keeps an outline from being a simple polygon, or None when nothing does.

    A simple polygon has three corners or more, no two neighbouring corners in one place, an area, and no wall that
    touches or crosses another one that is not its neighbour, nor one that doubles back on its neighbour.
    """
    sides = walls(outline)
    if len(sides) < 3:  # noqa: PLR2004  a triangle
        return f"an outline needs three corners or more, not {len(sides)}"
    for number, (start, end) in enumerate(sides, 1):
        if math.dist(start, end) < ON_WALL_M:
            return f"wall {number} has no length: two neighbouring corners are the same point"
    for i, (a, b) in enumerate(sides):
        for j in range(i + 1, len(sides)):
            c, d = sides[j]
            after, around = j == i + 1, i == 0 and j == len(sides) - 1
            if after or around:
                corner, before, beyond = (b, a, d) if after else (a, c, b)
                if _doubles_back(corner, before, beyond):
                    return f"walls {i + 1} and {j + 1} double back on each other"
            elif segments_touch(a, b, c, d):
                return f"walls {i + 1} and {j + 1} cross or touch"
    return "the outline encloses no area" if area_m2(outline) < ON_WALL_M else None


def is_convex(outline: Outline) -> bool:
    """Say whether no corner turns inward, so that every two points inside see each other."""
    corners = anticlockwise(outline)
    count = len(corners)
    return all(
        _turn(corners[i - 1], corners[i], corners[(i + 1) % count]) >= -ON_WALL_M * ON_WALL_M for i in range(count)
    )


def is_rectangle(outline: Outline, tolerance_m: float = 1e-3) -> bool:
    """Say whether the outline is a rectangle along the x and y axes, to a tolerance."""
    (x0, y0), (x1, y1) = bounds(outline)
    box = ((x0, y0), (x1, y0), (x1, y1), (x0, y1))
    if len(outline) != len(box):
        return False
    return all(any(math.dist(corner, point) <= tolerance_m for point in outline) for corner in box)


def contains(outline: Outline, point: Point2, tolerance_m: float = ON_WALL_M) -> bool:
    """Say whether a point is inside the outline or within `tolerance_m` of a wall; even-odd rule.

    A negative tolerance asks for a point that far inside.
    """
    x, y = point
    inside = False
    x0, y0 = outline[-1]
    for x1, y1 in outline:
        if (y0 > y) != (y1 > y) and x < x0 + (y - y0) * (x1 - x0) / (y1 - y0):
            inside = not inside
        x0, y0 = x1, y1
    if inside and tolerance_m >= 0.0:
        return True
    near = nearest_wall(outline, point).distance_m
    return near <= tolerance_m if not inside else near >= -tolerance_m


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


def nearest_wall(outline: Outline, point: Point2) -> NearestWall:
    """Return the wall nearest to a point; of walls equally near, the first in the outline."""
    feet = [foot_on_segment(point, start, end) for start, end in walls(outline)]
    distances = [math.dist(point, foot) for foot in feet]
    wall = distances.index(min(distances))
    return NearestWall(wall, distances[wall], feet[wall])


def nearest_corner(outline: Outline, point: Point2) -> NearestCorner:
    """Return the corner nearest to a point in plan."""
    distances = [math.dist(point, corner) for corner in outline]
    corner = distances.index(min(distances))
    return NearestCorner(corner, distances[corner])


def inward_normal(outline: Outline, wall: int) -> Point2:
    """Return the unit vector that points from a wall into the room."""
    start, end = walls(outline)[wall]
    length = math.dist(start, end)
    turn = 1.0 if signed_area_m2(outline) >= 0.0 else -1.0
    return (-turn * (end[1] - start[1]) / length + 0.0, turn * (end[0] - start[0]) / length + 0.0)


def segments_touch(a: Point2, b: Point2, c: Point2, d: Point2) -> bool:
    """Say whether segments a-b and c-d have a point in common, to a tenth of a millimetre."""
    if crossing(a, b, c, d) is not None:
        return True
    ends = ((a, c, d), (b, c, d), (c, a, b), (d, a, b))
    return any(distance_to_segment_m(point, start, end) <= ON_WALL_M for point, start, end in ends)


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


def clipped(outline: Outline, normal: Point2, offset: float) -> tuple[Point2, ...]:
    """Return the part of a polygon where x normal_x + y normal_y <= offset (Sutherland and Hodgman's clipping).

    The parts of a polygon that is not convex stay joined by edges along the cutting line that run there and back;
    they add nothing to areas and integrals.
    """
    kept: list[Point2] = []
    previous = outline[-1]
    before = previous[0] * normal[0] + previous[1] * normal[1] - offset
    for corner in outline:
        here = corner[0] * normal[0] + corner[1] * normal[1] - offset
        if (before < 0.0 < here) or (here < 0.0 < before):
            t = before / (before - here)
            kept.append((previous[0] + t * (corner[0] - previous[0]), previous[1] + t * (corner[1] - previous[1])))
        if here <= 0.0:
            kept.append(corner)
        previous, before = corner, here
    return tuple(kept)


def triangulated(outline: Outline) -> tuple[Triangle, ...]:
    """Return a simple polygon cut into triangles by clipping ears, as corner numbers, anticlockwise.

    A polygon of n corners gives n - 2 triangles. Raises ValueError when the outline is not simple.
    """
    left = list(range(len(outline)))
    if signed_area_m2(outline) < 0.0:
        left.reverse()
    triangles: list[Triangle] = []
    while len(left) > 3:  # noqa: PLR2004  the last triangle
        # Corners in the middle of a straight wall are cut off only when nothing else is left to cut.
        ear = next(
            (k for least in (_NO_TURN, -_NO_TURN) for k in range(len(left)) if _is_ear(outline, left, k, least)), None
        )
        if ear is None:
            raise Refused("the outline crosses itself, so it cannot be cut into triangles")
        triangles.append((left[ear - 1], left[ear], left[(ear + 1) % len(left)]))
        del left[ear]
    triangles.append((left[0], left[1], left[2]))
    return tuple(triangles)


def _is_ear(outline: Outline, left: list[int], k: int, least_turn: float) -> bool:
    before, tip, after = left[k - 1], left[k], left[(k + 1) % len(left)]
    a, b, c = outline[before], outline[tip], outline[after]
    if _turn(a, b, c) < least_turn:
        return False
    others = (outline[i] for i in left if i not in (before, tip, after))
    return not any(
        _turn(a, b, point) >= 0.0 and _turn(b, c, point) >= 0.0 and _turn(c, a, point) >= 0.0 for point in others
    )


def _turn(a: Point2, b: Point2, c: Point2) -> float:
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])


def _doubles_back(corner: Point2, before: Point2, beyond: Point2) -> bool:
    ux, uy = before[0] - corner[0], before[1] - corner[1]
    vx, vy = beyond[0] - corner[0], beyond[1] - corner[1]
    lengths = math.hypot(ux, uy) * math.hypot(vx, vy)
    return ux * vx + uy * vy > 0.0 and abs(ux * vy - uy * vx) <= ON_WALL_M * lengths
