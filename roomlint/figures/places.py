"""Where a thing can go: the free stretches along a wall, a ceiling or a line on the floor, in the true room."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, NamedTuple

from roomlint.figures import convex, solid
from roomlint.figures.ceiling import highest_m
from roomlint.figures.convex import TOUCH_M
from roomlint.figures.direction import dot
from roomlint.figures.domain import Refused, not_negative, positive
from roomlint.figures.enclosure import before_opening, solid_clearance, wall_of

if TYPE_CHECKING:
    from collections.abc import Sequence

    from roomlint.figures.direction import Vector3
    from roomlint.figures.enclosure import Enclosure, Opening
    from roomlint.figures.solid import Solid

_NEARLY = 1e-9


class Stretch(NamedTuple):
    """A run of places from `low_m` to `high_m`, both among them."""

    low_m: float
    high_m: float


def free_shifts(
    shape: Enclosure,
    thing: Solid,
    way: Vector3,
    within_m: tuple[float, float],
    solids: Sequence[Solid] = (),
    step_m: float = 0.0,
) -> tuple[Stretch, ...]:
    """Return the shifts of a thing along a straight way at which it is inside the room and clear of all solids, m.

    Shifts lie in `within_m`; ends are rounded inwards to a multiple of `step_m` above 0 m. Touching is allowed. Exact
    for what has corners; round things count as the polygon around them. What is set into a surface is given as the
    part of it that stands in the room. Raises `Refused` for a way without length.
    """
    length = math.hypot(*way)
    if length == 0.0:
        raise Refused("a way without length leads nowhere")
    along = (way[0] / length, way[1] / length, way[2] / length)
    body = solid.body(thing)
    low, high = within_m
    for plane in _straight_bounds(shape):
        normal, offset = plane[:3], plane[3]
        off = min(dot(point, normal) for point in body.points) - offset + TOUCH_M
        pace = dot(along, normal)
        if abs(pace) < _NEARLY:
            if off < 0.0:
                return ()
        elif pace > 0.0:
            low = max(low, -off / pace)
        else:
            high = min(high, -off / pace)
    blocks = [run for other in solids if (run := convex.meeting_m(body, along, solid.body(other))) is not None]
    cuts = [run for other in _other_surfaces(shape) if (run := convex.meeting_m(body, along, other)) is not None]
    found = _left_over(low, high, blocks + cuts)
    if not shape.convex:
        found = [run for run in found if _inside(shape, thing, along, (run.low_m + run.high_m) / 2.0)]
    rounded = (_inwards(run, step_m) for run in found)
    return tuple(run for run in rounded if run is not None)


def along_wall(
    shape: Enclosure,
    piece: int,
    size_m: tuple[float, float, float],
    middle_height_m: float,
    off_m: float = 0.0,
    solids: Sequence[Solid] = (),
    openings: Sequence[Opening] = (),
    step_m: float = 0.0,
) -> tuple[Stretch, ...]:
    """Return where along a wall the middle of a thing of some width, height and depth can be, m from its left end.

    The wall is the whole straight one that `piece` belongs to, seen from inside; the thing has the wall behind its
    whole width, its back `off_m` in front of it and its middle `middle_height_m` up. It stays clear of `openings` of
    that wall and what is before them as far as it reaches, of `solids`, of the other walls and of the true ceiling.
    Ends are rounded inwards to `step_m`. Sizes above 0 m, else `Refused`.
    """
    width, height, depth = (positive("a size", size, "m") for size in size_m)
    back = not_negative("the distance from the wall", off_m, "m")
    wall, _ = wall_of(shape, piece)
    half = width / 2.0
    corners = [wall.at(s, d) for s in (-half, half) for d in (back, back + depth)]
    thing = solid.Upright(convex.hull(corners), middle_height_m - height / 2.0, middle_height_m + height / 2.0)
    before = [before_opening(shape, hole, back + depth) for hole in openings if hole.piece in wall.pieces]
    ux, uy = wall.direction
    return free_shifts(shape, thing, (ux, uy, 0.0), (half, wall.length_m - half), (*solids, *before), step_m)


def _straight_bounds(shape: Enclosure) -> list[tuple[float, float, float, float]]:
    """Return the planes that a thing in the room is in front of wherever it is."""
    kept = {"floor": True, "wall": shape.plan_convex, "ceiling": shape.ceiling_convex}
    return [plane for plane, surface in zip(shape.planes, shape.surfaces, strict=True) if kept[surface.kind]]


def _other_surfaces(shape: Enclosure) -> list[convex.Body]:
    """Return the other surfaces as flat bodies, which a thing that slides is not to run through."""
    found = list(shape.ceiling_pieces)
    if not shape.plan_convex:
        top = highest_m(shape.facets)
        for surface in shape.surfaces:
            if surface.wall is not None:
                (x0, y0), (x1, y1) = surface.wall.left, surface.wall.right
                found.append(convex.flat([(x0, y0, 0.0), (x1, y1, 0.0), (x1, y1, top), (x0, y0, top)]))
    return found


def _left_over(low: float, high: float, blocked: Sequence[tuple[float, float]]) -> list[Stretch]:
    found, start = [], low
    for first, last in sorted(blocked):
        if first >= high:
            break
        if first >= start:
            found.append(Stretch(start, first))
        start = max(start, last)
    if start <= high:
        found.append(Stretch(start, high))
    return found


def _inside(shape: Enclosure, thing: Solid, along: Vector3, shift: float) -> bool:
    moved = solid.shifted(thing, (shift * along[0], shift * along[1], shift * along[2]))
    return solid_clearance(shape, moved).distance_m >= -2.0 * TOUCH_M


def _inwards(run: Stretch, step_m: float) -> Stretch | None:
    if step_m <= 0.0:
        return run
    # A hair of slack, so that an end on a multiple of the step stays there.
    low = math.ceil((run.low_m - TOUCH_M) / step_m - _NEARLY) * step_m
    high = math.floor((run.high_m + TOUCH_M) / step_m + _NEARLY) * step_m
    return Stretch(low + 0.0, high + 0.0) if low <= high else None
