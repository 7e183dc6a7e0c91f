"""Straight ways through a room: what a ray or a cabinet's face meets first, and whether two points see each other."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, NamedTuple, Protocol

from roomlint.figures import convex, solid
from roomlint.figures.domain import Refused
from roomlint.figures.enclosure import FLUSH_WITHIN_M, refuse_outside
from roomlint.plane import ON_WALL_M, contains

if TYPE_CHECKING:
    from collections.abc import Sequence

    from roomlint.figures.direction import Point3, Vector3
    from roomlint.figures.enclosure import Enclosure
    from roomlint.figures.solid import Solid

# A loudspeaker in a wall or on an obstacle's face touches it without being hidden by it.
END_SLACK_M = 0.02
_NEARLY = 1e-9


class Hit(NamedTuple):
    """The first thing a ray meets: how far it is, what it is, its number among its kind, and the point."""

    distance_m: float
    kind: str  # wall, ceiling, floor or obstacle
    number: int
    point: Point3


class Spanned(Protocol):
    """What a line can run through: a solid."""

    def span(self, start: Point3, end: Point3) -> tuple[float, float] | None:
        """Return the shares of the way from start to end between which a line is inside, None when it never is."""


def first_met(shape: Enclosure, start: Point3, direction: Vector3, solids: Sequence[Spanned] = ()) -> Hit:
    """Return the first surface or solid that a ray from a point in the room meets.

    A ray that starts on a surface (to 1 cm behind it) and runs into it meets it at 0 m; one that runs off it does not
    meet it. The same goes for solids; one that the start is inside is met at 0 m. Hit.number is that of the wall's
    piece, the ceiling's facet or the solid. Raises `Refused` for a direction without length and a start outside.
    """
    dx, dy, dz = direction
    length = math.sqrt(dx * dx + dy * dy + dz * dz)
    if length == 0.0:
        raise Refused("a direction without length leads nowhere")
    dx, dy, dz = dx / length, dy / length, dz / length
    way = (dx, dy, dz)
    distance, number = _leaving_convex(shape, start, way) if shape.convex else _leaving(shape, start, way)
    nearest = -1
    if solids:
        x, y, z = start
        beyond = (x + dx, y + dy, z + dz)
        for n, thing in enumerate(solids):
            span = thing.span(start, beyond)
            if span is not None and span[1] > convex.TOUCH_M and span[0] < distance:
                distance, nearest = max(span[0], 0.0), n
    at = (start[0] + distance * dx, start[1] + distance * dy, start[2] + distance * dz)
    if nearest >= 0:
        return Hit(distance, "obstacle", nearest, at)
    surface = shape.surfaces[number]
    return Hit(distance, surface.kind, surface.number_at(at), at)


def ahead_of_face(
    shape: Enclosure, front: Point3, axis: Vector3, width_m: float, height_m: float, solids: Sequence[Solid] = ()
) -> Hit:
    """Return the first thing that a cabinet's front face meets as it moves along its axis, and after how far.

    `front` is the middle of the face, `axis` the direction it looks in. Against solids, and against the edges of
    corners that poke into the room, it is exact; against walls, floor and ceiling so is it under a ceiling without
    valleys: a plane is first met by a corner of the face. Hit.point is where the middle of the face then is. What the
    face overlaps or touches from the start is met at 0 m. Errors as for `first_met`.
    """
    box = solid.cabinet(front, axis, width_m, height_m, 1e-3)
    corners = _face(box, axis)
    length = math.hypot(*axis)
    way = (axis[0] / length, axis[1] / length, axis[2] / length)
    best = first_met(shape, front, way, ())
    for corner in corners:
        # A corner that is outside already has no way left.
        try:
            hit = first_met(shape, corner, way, ())
        except Refused:
            hit = Hit(0.0, "wall", -1, corner)
        if hit.distance_m < best.distance_m:
            best = hit if hit.number >= 0 else best._replace(distance_m=0.0)
    face = convex.flat(corners)
    edges = [
        convex.edge((x, y, 0.0), (x, y, shape.height_m((x, y)))) for x, y in (corner.point for corner in shape.pokes)
    ]
    for kind, bodies in (("wall", edges), ("obstacle", [solid.body(thing) for thing in solids])):
        for number, body in enumerate(bodies):
            run = convex.meeting_m(face, way, body)
            if run is not None and run[1] > convex.TOUCH_M and run[0] < best.distance_m:
                best = Hit(max(run[0], 0.0), kind, number if kind == "obstacle" else shape.pokes[number].number, front)
    distance = best.distance_m
    at = (front[0] + distance * way[0], front[1] + distance * way[1], front[2] + distance * way[2])
    return best._replace(point=at)


def sees(
    shape: Enclosure, a: Point3, b: Point3, solids: Sequence[Spanned] = (), slack_m: float = END_SLACK_M
) -> Hit | None:
    """Return what stands first on the line from a to b, None when they see each other.

    What is met within `slack_m` of either end does not count: a loudspeaker may sit in the wall. Both ends are in the
    room, to a centimetre.
    """
    length = math.dist(a, b)
    if length <= 2.0 * slack_m:
        return None
    way = ((b[0] - a[0]) / length, (b[1] - a[1]) / length, (b[2] - a[2]) / length)
    found = None
    if not shape.convex:
        start = (a[0] + slack_m * way[0], a[1] + slack_m * way[1], a[2] + slack_m * way[2])
        distance, number = _leaving(shape, start, way)
        distance += slack_m
        if distance < length - slack_m:
            at = (a[0] + distance * way[0], a[1] + distance * way[1], a[2] + distance * way[2])
            surface = shape.surfaces[number]
            found = Hit(distance, surface.kind, surface.number_at(at), at)
    first, last = slack_m / length, 1.0 - slack_m / length
    for n, thing in enumerate(solids):
        span = thing.span(a, b)
        if span is None or min(span[1], last) <= max(span[0], first):
            continue
        distance = max(span[0], first) * length
        if found is None or distance < found.distance_m:
            found = Hit(
                distance,
                "obstacle",
                n,
                (a[0] + distance * way[0], a[1] + distance * way[1], a[2] + distance * way[2]),
            )
    return found


def _leaving_convex(shape: Enclosure, start: Point3, way: Vector3) -> tuple[float, int]:
    x, y, z = start
    dx, dy, dz = way
    best, number = math.inf, -1
    for n, (nx, ny, nz, offset) in enumerate(shape.planes):
        off = nx * x + ny * y + nz * z - offset
        if off < -FLUSH_WITHIN_M:
            raise Refused("the way starts outside the room")
        pace = nx * dx + ny * dy + nz * dz
        if pace < -_NEARLY and -off / pace < best:
            best, number = -off / pace, n
    return max(best, 0.0), number


def _leaving(shape: Enclosure, start: Point3, way: Vector3) -> tuple[float, int]:
    refuse_outside(shape, start)
    x, y, z = start
    dx, dy, dz = way
    best, number = math.inf, -1
    for n, (nx, ny, nz, offset) in enumerate(shape.planes):
        pace = nx * dx + ny * dy + nz * dz
        if pace >= -_NEARLY:
            continue
        off = nx * x + ny * y + nz * z - offset
        if off < -FLUSH_WITHIN_M:
            continue
        distance = max(-off / pace, 0.0)
        if distance >= best:
            continue
        # The floor and a wall's height need no look: a ray leaves the room's plan or its ceiling before.
        surface, at = shape.surfaces[n], (x + distance * dx, y + distance * dy)
        if surface.wall is not None:
            slack = ON_WALL_M + (FLUSH_WITHIN_M if off <= 0.0 else 0.0)
            met = -slack <= surface.wall.along_m(at) <= surface.wall.length_m + slack
        else:
            met = surface.kind == "floor" or any(contains(part, at) for part in surface.parts)
        if met:
            best, number = distance, n
    if number < 0:
        raise Refused("the way meets no surface of the room")
    return best, number


def _face(box: Solid, axis: Vector3) -> list[Point3]:
    """Return the four corners of a cabinet's front in order round."""
    points = solid.body(box).points
    ahead = sorted(points, key=lambda p: -(p[0] * axis[0] + p[1] * axis[1] + p[2] * axis[2]))[:4]
    first = ahead[0]
    far = max(ahead, key=lambda p: math.dist(first, p))
    others = [p for p in ahead if p not in (first, far)]
    return [first, others[0], far, others[1]]
