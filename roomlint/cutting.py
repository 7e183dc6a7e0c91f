"""How a plan is cut, and which piece of its outline is near a point: ground, as `roomlint.plane` is."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, NamedTuple, TypeAlias

from roomlint.plane import Outline, Point2, area_m2, foot_on_segment, signed_area_m2, walls
from roomlint.refused import Refused

if TYPE_CHECKING:
    from collections.abc import Sequence

Triangle: TypeAlias = tuple[int, int, int]  # corner numbers, anticlockwise

# Twice the area, m2, of a triangle too thin to be one.
_NO_TURN = 1e-9


class NearestWall(NamedTuple):
    """The piece of wall nearest to a point: its number, how far it is, and the point of it that is nearest."""

    wall: int
    distance_m: float
    foot: Point2


def nearest_wall(outline: Outline, point: Point2) -> NearestWall:
    """Return the piece nearest to a point; of pieces equally near, the first in the outline.

    Pieces of one wall tell the same distance as the wall does.
    """
    feet = [foot_on_segment(point, start, end) for start, end in walls(outline)]
    distances = [math.dist(point, foot) for foot in feet]
    wall = distances.index(min(distances))
    return NearestWall(wall, distances[wall], feet[wall])


def inward_normal(outline: Outline, wall: int) -> Point2:
    """Return the unit vector that points from a piece of wall into the room."""
    start, end = walls(outline)[wall]
    length = math.dist(start, end)
    turn = 1.0 if signed_area_m2(outline) >= 0.0 else -1.0
    return (-turn * (end[1] - start[1]) / length + 0.0, turn * (end[0] - start[0]) / length + 0.0)


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


def triangles(outline: Outline) -> tuple[tuple[Point2, ...], ...]:
    """Return a simple polygon as triangles, corners anticlockwise. Raises Refused as `triangulated`."""
    return tuple(tuple(outline[corner] for corner in triangle) for triangle in triangulated(outline))


def common_m2(some: Sequence[tuple[Point2, ...]], others: Sequence[tuple[Point2, ...]]) -> float:
    """Return the area that two polygons share, m2, each given as `triangles`."""
    return sum(_common_m2(one, other) for one in some for other in others)


def _common_m2(one: tuple[Point2, ...], other: tuple[Point2, ...]) -> float:
    """Return the area that two triangles share, m2, corners anticlockwise."""
    for axis in (0, 1):
        mine, yours = [corner[axis] for corner in one], [corner[axis] for corner in other]
        if max(mine) <= min(yours) or max(yours) <= min(mine):
            return 0.0
    left = one
    for start, end in walls(other):
        outward = (end[1] - start[1], start[0] - end[0])
        left = clipped(left, outward, start[0] * outward[0] + start[1] * outward[1])
        if not left:
            return 0.0
    return area_m2(left)


def triangulated(outline: Outline) -> tuple[Triangle, ...]:
    """Return a simple polygon cut into triangles by clipping ears, as corner numbers, anticlockwise.

    A polygon of n corners gives n - 2 triangles. Raises Refused when the outline is not simple.
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
