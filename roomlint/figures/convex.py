"""Convex bodies: how far apart they are, how deep they overlap, and when one that slides meets another.

A body is the hull of its `points`. `normals` are unit vectors square to its faces and `edges` unit vectors along its
edges, each direction once: the separating-axis theorem needs no more (for two convex polytopes that do not overlap,
a plane between them is parallel to a face of one or to an edge of each). Lengths in m.
"""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, NamedTuple

from roomlint.figures.direction import Point3, Vector3, cross, dot
from roomlint.figures.domain import Refused
from roomlint.plane import Point2, walls

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

# What lies against each other touches; that much overlap is rounding, no collision.
TOUCH_M = 1e-6
_PARALLEL = 1e-9
_POLYGON = 3


class Body(NamedTuple):
    """A convex polytope, a flat convex polygon or a straight edge."""

    points: tuple[Point3, ...]
    normals: tuple[Vector3, ...]
    edges: tuple[Vector3, ...]
    segments: tuple[tuple[Point3, Point3], ...]


def hull(points: Sequence[Point2]) -> tuple[Point2, ...]:
    """Return the corners of the convex hull of points of a plane, anticlockwise (Andrew's chains)."""
    ordered = sorted(set(points))
    if len(ordered) < _POLYGON:
        return tuple(ordered)
    chains = []
    for run in (ordered, ordered[::-1]):
        chain: list[Point2] = []
        for point in run:
            while len(chain) > 1 and _turn(chain[-2], chain[-1], point) <= 0.0:
                chain.pop()
            chain.append(point)
        chains += chain[:-1]
    return tuple(chains)


def plan_gap_m(one: Sequence[Point2], other: Sequence[Point2]) -> float:
    """Return the distance between two convex polygons of the plan, m; negative: the least move that parts them.

    Corners anticlockwise; two points make an edge and one a point. Exact: apart, the nearest features are a corner and
    an edge; overlapping, the least move is square to an edge of one of them.
    """
    most = max(_apart_along_edges(one, other), _apart_along_edges(other, one))
    if -math.inf < most <= 0.0:
        return most
    return min(_corner_to_edges_m(one, other), _corner_to_edges_m(other, one))


def separation_m(one: Body, other: Body) -> float:
    """Return the widest gap that a plane between two bodies shows, m; negative: the least move that parts them.

    Exact when they overlap or touch. Apart, it is a lower bound of their distance (see `gap_m`).
    """
    most = -math.inf
    for axis in _axes(one, other):
        low, high = _extent(one.points, axis)
        from_, to = _extent(other.points, axis)
        most = max(most, from_ - high, low - to)
    return most


def gap_m(one: Body, other: Body) -> float:
    """Return the distance between two bodies, m; negative: the least move that parts them. Exact."""
    least = separation_m(one, other)
    if least <= 0.0:
        return least
    # Two disjoint polytopes are nearest at a corner over a face or at two edges.
    most = min(_corners_over_faces_m(one, other), _corners_over_faces_m(other, one))
    if most - least <= TOUCH_M:
        return most
    most = min(most, *(math.dist(a, b) for a in one.points for b in other.points))
    near, far = _edges_within(one, other, most), _edges_within(other, one, most)
    return min([most, *(segments_gap_m(*a, *b) for a in near for b in far)])


def meeting_m(moving: Body, way: Vector3, still: Body) -> tuple[float, float] | None:
    """Return the shifts along the unit vector `way` between which a sliding body overlaps a still one, m.

    None when it passes clear at every shift. Touching is not overlapping. Exact: two convex bodies overlap for one
    run of shifts, in which they do so on every axis of the separating-axis theorem.
    """
    enter, leave = -math.inf, math.inf
    for axis in _axes(moving, still):
        low, high = _extent(moving.points, axis)
        from_, to = _extent(still.points, axis)
        pace = dot(way, axis)
        first, last = from_ - high + TOUCH_M, to - low - TOUCH_M
        if abs(pace) < _PARALLEL:
            if first >= 0.0 or last <= 0.0:
                return None
            continue
        first, last = first / pace, last / pace
        enter, leave = max(enter, min(first, last)), min(leave, max(first, last))
        if enter >= leave:
            return None
    return enter, leave


def edge(a: Point3, b: Point3) -> Body:
    """Return the straight edge between two points as a body. Raises Refused for points in one place."""
    return Body((a, b), (), (_unit(a, b),), ((a, b),))


def flat(points: Sequence[Point3]) -> Body:
    """Return a flat convex polygon as a body; its corners in order, no three on a line."""
    corners = tuple(points)
    sides = tuple(zip(corners, (*corners[1:], corners[0]), strict=True))
    edges = tuple(_unit(a, b) for a, b in sides)
    square = cross(edges[0], edges[1])
    length = math.hypot(*square)
    normal = (square[0] / length, square[1] / length, square[2] / length)
    # Bodies in the polygon's own plane are parted by a line square to one of its sides.
    return Body(corners, (normal, *(cross(normal, along) for along in edges)), edges, sides)


def segments_gap_m(a: Point3, b: Point3, c: Point3, d: Point3) -> float:
    """Return the distance between the segments a-b and c-d in space, m."""
    u, v, w = _minus(b, a), _minus(d, c), _minus(a, c)
    uu, uv, vv, uw, vw = dot(u, u), dot(u, v), dot(v, v), dot(u, w), dot(v, w)
    under = uu * vv - uv * uv
    # The nearest points of the two lines, brought back onto the segments one after the other.
    s = _share((uv * vw - vv * uw) / under) if under > _PARALLEL * uu * vv else 0.0
    t = _share((uv * s + vw) / vv) if vv > 0.0 else 0.0
    s = _share((uv * t - uw) / uu) if uu > 0.0 else 0.0
    t = _share((uv * s + vw) / vv) if vv > 0.0 else 0.0
    apart = tuple(w[i] + s * u[i] - t * v[i] for i in range(3))
    return math.hypot(*apart)


def _edges_within(one: Body, other: Body, reach_m: float) -> list[tuple[Point3, Point3]]:
    """Return the edges of one body that can be nearer to the other than a distance, judged by the balls around them."""
    count = len(other.points)
    middle = tuple(sum(point[i] for point in other.points) / count for i in range(3))
    reach = reach_m + max(math.dist(middle, point) for point in other.points)
    return [
        (a, b)
        for a, b in one.segments
        if math.dist(((a[0] + b[0]) / 2, (a[1] + b[1]) / 2, (a[2] + b[2]) / 2), middle) < reach + math.dist(a, b) / 2
    ]


def _axes(one: Body, other: Body) -> Iterator[Vector3]:
    yield from one.normals
    yield from other.normals
    for a in one.edges:
        for b in other.edges:
            x, y, z = cross(a, b)
            length = math.sqrt(x * x + y * y + z * z)
            if length > _PARALLEL:
                yield (x / length, y / length, z / length)


def _extent(points: Sequence[Point3], axis: Vector3) -> tuple[float, float]:
    ax, ay, az = axis
    offsets = [x * ax + y * ay + z * az for x, y, z in points]
    return min(offsets), max(offsets)


def _corners_over_faces_m(one: Body, other: Body) -> float:
    """Return the least distance of a corner of one body over the inside of a face of the other; inf without any."""
    least = math.inf
    for normal in other.normals:
        low, high = _extent(other.points, normal)
        for side, sign in ((high, 1.0), (low, -1.0)):
            outward = (sign * normal[0], sign * normal[1], sign * normal[2])
            heights = [dot(point, outward) - sign * side for point in one.points]
            nearest = min(heights)
            if not 0.0 < nearest < least:
                continue
            for point, height in zip(one.points, heights, strict=True):
                if 0.0 < height < least:
                    foot = (
                        point[0] - height * outward[0],
                        point[1] - height * outward[1],
                        point[2] - height * outward[2],
                    )
                    if _holds(other, foot):
                        least = height
    return least


def _holds(body: Body, point: Point3) -> bool:
    for normal in body.normals:
        low, high = _extent(body.points, normal)
        if not low - _PARALLEL <= dot(point, normal) <= high + _PARALLEL:
            return False
    return True


def _apart_along_edges(one: Sequence[Point2], other: Sequence[Point2]) -> float:
    most = -math.inf
    if len(one) == 1:
        return most
    for (x0, y0), (x1, y1) in walls(one):
        nx, ny = y1 - y0, x0 - x1
        length = math.sqrt(nx * nx + ny * ny)
        if length == 0.0:
            continue
        most = max(most, (min([x * nx + y * ny for x, y in other]) - x0 * nx - y0 * ny) / length)
    return most


def _corner_to_edges_m(corners: Sequence[Point2], polygon: Sequence[Point2]) -> float:
    least = math.inf
    x0, y0 = polygon[-1]
    for x1, y1 in polygon:
        dx, dy = x1 - x0, y1 - y0
        square = dx * dx + dy * dy
        for x, y in corners:
            ox, oy = x - x0, y - y0
            share = (ox * dx + oy * dy) / square if square > 0.0 else 0.0
            if share > 0.0:
                share = min(share, 1.0)
                ox -= share * dx
                oy -= share * dy
            least = min(least, ox * ox + oy * oy)
        x0, y0 = x1, y1
    return math.sqrt(least)


def _share(value: float) -> float:
    return min(1.0, max(0.0, value))


def _minus(a: Point3, b: Point3) -> Vector3:
    return (a[0] - b[0], a[1] - b[1], a[2] - b[2])


def _unit(a: Point3, b: Point3) -> Vector3:
    length = math.dist(a, b)
    if length == 0.0:
        raise Refused("an edge without length has no direction")
    return ((b[0] - a[0]) / length, (b[1] - a[1]) / length, (b[2] - a[2]) / length)


def _turn(a: Point2, b: Point2, c: Point2) -> float:
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
