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
UP: Vector3 = (0.0, 0.0, 1.0)
_POLYGON = 3
_MANY = 8


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


def _widest(one: Body, other: Body) -> tuple[float, Vector3]:
    """Return the widest gap that a plane shows, and the unit vector across it, from the other body to the one."""
    axes = list(_axes(one, other))
    if len(axes) < _MANY:
        most, across = -math.inf, UP
        for axis in axes:
            low, high = _extent(one.points, axis)
            from_, to = _extent(other.points, axis)
            if from_ - high > most:
                most, across = from_ - high, (-axis[0], -axis[1], -axis[2])
            if low - to > most:
                most, across = low - to, axis
        return most, across
    import numpy as np

    directions = np.array(axes).T
    ours, theirs = np.array(one.points) @ directions, np.array(other.points) @ directions
    gaps = np.concatenate([theirs.min(axis=0) - ours.max(axis=0), ours.min(axis=0) - theirs.max(axis=0)])
    widest = int(gaps.argmax())
    x, y, z = axes[widest % len(axes)]
    return float(gaps[widest]), (x, y, z) if widest >= len(axes) else (-x, -y, -z)


def gap_m(one: Body, other: Body) -> float:
    """Return the distance between two bodies, m; negative: the least move that parts them. Exact.

    What lies farther back than the plane between them allows is not looked at.
    """
    least, across = _widest(one, other)
    if least <= 0.0:
        return least
    behind = [dot(point, across) for point in one.points]
    before = [-dot(point, across) for point in other.points]
    near, far = min(behind), min(before)
    # Two disjoint polytopes are nearest at a corner over a face or at two edges.
    most = min(math.dist(a, b) for a in _first(one.points, behind, near) for b in _first(other.points, before, far))
    most = _corners_over_faces_m(one.points, behind, near + most - least, other, most)
    most = _corners_over_faces_m(other.points, before, far + most - least, one, most)
    if most - least <= TOUCH_M:
        return most
    ours = [(a, b, deep - near) for a, b, deep in _edges(one, across, 1.0) if deep - near < most - least]
    theirs = [(a, b, deep - far) for a, b, deep in _edges(other, across, -1.0) if deep - far < most - least]
    # The foremost first: what is found then rules most of the others out.
    ours.sort(key=_depth)
    theirs.sort(key=_depth)
    for a, b, deep in ours:
        for c, d, deeper in theirs:
            if least + deep + deeper < most:
                most = min(most, segments_gap_m(a, b, c, d))
    return most


def _first(points: Sequence[Point3], depths: Sequence[float], least: float) -> list[Point3]:
    """Return the points that lie first behind a plane."""
    return [point for point, depth in zip(points, depths, strict=True) if depth <= least + TOUCH_M]


def _depth(found: tuple[Point3, Point3, float]) -> float:
    return found[2]


def _edges(body: Body, across: Vector3, sign: float) -> Iterator[tuple[Point3, Point3, float]]:
    """Yield a body's edges, each with how far along a vector it begins."""
    for a, b in body.segments:
        yield a, b, min(sign * dot(a, across), sign * dot(b, across))


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
    (ax, ay, az), (cx, cy, cz) = a, c
    ux, uy, uz = b[0] - ax, b[1] - ay, b[2] - az
    vx, vy, vz = d[0] - cx, d[1] - cy, d[2] - cz
    wx, wy, wz = ax - cx, ay - cy, az - cz
    uu, vv = ux * ux + uy * uy + uz * uz, vx * vx + vy * vy + vz * vz
    uv, uw, vw = ux * vx + uy * vy + uz * vz, ux * wx + uy * wy + uz * wz, vx * wx + vy * wy + vz * wz
    under = uu * vv - uv * uv
    # The nearest points of the two lines, brought back onto the segments one after the other.
    s = _share((uv * vw - vv * uw) / under) if under > _PARALLEL * uu * vv else 0.0
    t = _share((uv * s + vw) / vv) if vv > 0.0 else 0.0
    s = _share((uv * t - uw) / uu) if uu > 0.0 else 0.0
    t = _share((uv * s + vw) / vv) if vv > 0.0 else 0.0
    return math.hypot(wx + s * ux - t * vx, wy + s * uy - t * vy, wz + s * uz - t * vz)


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


def _corners_over_faces_m(
    points: Sequence[Point3], depths: Sequence[float], reach: float, other: Body, least: float
) -> float:
    """Return the least distance of a corner, no deeper than a reach, over the inside of a face of another body.

    `least` where there is none that is less.
    """
    near = [point for point, depth in zip(points, depths, strict=True) if depth <= reach]
    faces = [(normal, *_extent(other.points, normal)) for normal in other.normals]
    for (nx, ny, nz), low, high in faces:
        for x, y, z in near:
            along = x * nx + y * ny + z * nz
            height = max(along - high, low - along)
            if 0.0 < height < least:
                step = height if along > high else -height
                if _holds(faces, (x - step * nx, y - step * ny, z - step * nz)):
                    least = height
    return least


def _holds(faces: Sequence[tuple[Vector3, float, float]], point: Point3) -> bool:
    x, y, z = point
    return all(low - _PARALLEL <= x * nx + y * ny + z * nz <= high + _PARALLEL for (nx, ny, nz), low, high in faces)


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
    return 0.0 if value < 0.0 else min(1.0, value)


def _unit(a: Point3, b: Point3) -> Vector3:
    length = math.dist(a, b)
    if length == 0.0:
        raise Refused("an edge without length has no direction")
    return ((b[0] - a[0]) / length, (b[1] - a[1]) / length, (b[2] - a[2]) / length)


def _turn(a: Point2, b: Point2, c: Point2) -> float:
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
