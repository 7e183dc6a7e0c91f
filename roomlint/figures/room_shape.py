"""A room's shape in one canonical frame, whichever way it was written, and which solver it falls to.

The same room may be written in feet or metres, from any corner, in either direction, mirrored, turned, or with a wall
cut into two collinear ones: here it becomes the same numbers, so that whatever is computed from them cannot tell. The
frame lies along a longest wall; a point of the room is carried into it and back. Lengths in metres.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from itertools import pairwise
from typing import TYPE_CHECKING, Literal, TypeAlias

import numpy as np

from roomlint import cutting, plane
from roomlint.figures.domain import Refused
from roomlint.roof import Facet, height_m

if TYPE_CHECKING:
    from collections.abc import Sequence

    from numpy.typing import NDArray

    from roomlint.figures.modal_sum import Array, Points
    from roomlint.plane import Point2

    Frame: TypeAlias = tuple[Array, Array]  # turn (2, 2), a mirror image when its determinant is -1, then shift (2,)

Kind = Literal["box", "plan", "section", "any"]

BUILT_M = 1e-3  # no builder works finer: what is this near to straight, square or level is
GRACE_M = 0.01  # so far outside a surface a point still counts as on it
STEP_M = 0.01
LEAST_HEIGHT_M = 0.3
MOST_WALLS = 64
GRID_M = 1e-5
# Lengths that people write fall on the middle of a raster's step; they must not fall to either side by rounding.
OFF_RASTER = 0.1234567


@dataclass(frozen=True, slots=True, eq=False)
class RoomShape:
    """A room in its canonical frame: plan and ceiling there, how to get there, and what kind of shape it is."""

    outline: tuple[Point2, ...]  # anticlockwise from the lowest corner
    facets: tuple[Facet, ...]
    frames: tuple[Frame, ...]  # from the writer's frame; several where the room is its own image
    kind: Kind
    breaks: tuple[float, ...]  # of a section: where the ceiling bends
    heights: tuple[float, ...]  # of a section: the ceiling there; of a box or plan: its one height
    level_axis: int  # of a section: the axis in plan along which nothing changes

    @property
    def volume_m3(self) -> float:
        """The volume between floor and ceiling."""
        return sum(
            plane.area_m2(facet.outline) * facet.height_m(plane.centroid(facet.outline)) for facet in self.facets
        )

    def carried(self, points: Points) -> Array:
        """Return points in the canonical frame, (points, 3).

        Raises Refused for a point outside the room by more than a centimetre.
        """
        written = np.asarray(points, dtype=np.float64).reshape(-1, 3)
        if not np.isfinite(written).all():
            raise Refused("a position must be a finite length in each direction")
        found, in_plan, in_height = self._placed(written)
        if not in_plan.all():
            raise Refused(f"the point {_told(written[~in_plan][0])} lies outside the plan of the room")
        if not in_height.all():
            raise Refused(f"the point {_told(written[~in_height][0])} lies below the floor or above the ceiling")
        return found

    def alike(self, points: Points) -> list[Array]:
        """Return points as `carried`, and carried in every other way in which the room looks the same."""
        written = np.asarray(points, dtype=np.float64).reshape(-1, 3)
        return [
            np.concatenate([written[:, :2] @ turn.T + shift, written[:, 2:]], axis=1) for turn, shift in self.frames
        ]

    def holds(self, points: Array) -> NDArray[np.bool_]:
        """Tell which points (points, 3) lie in the room or within a centimetre of it."""
        _, in_plan, in_height = self._placed(points)
        return in_plan & in_height

    def _placed(self, written: Array) -> tuple[Array, NDArray[np.bool_], NDArray[np.bool_]]:
        turn, shift = self.frames[0]
        found = written.copy()
        found[:, :2] = written[:, :2] @ turn.T + shift
        in_plan = _in_plan(self.outline, found[:, :2])
        z, ceiling = found[:, 2], self._ceiling(found[:, :2])
        return found, in_plan, (z >= -GRACE_M) & (z <= ceiling + GRACE_M)

    def _ceiling(self, points: Array) -> Array:
        if self.kind == "section":
            return np.asarray(np.interp(points[:, 1 - self.level_axis], self.breaks, self.heights))
        if self.kind in ("box", "plan"):
            return np.full(len(points), self.heights[0])
        return np.array([height_m(self.facets, (x, y)) for x, y in points.tolist()])


def _told(point: Array) -> str:
    return ", ".join(f"{at:.2f}" for at in point.tolist()) + " m"


def _in_plan(outline: Sequence[Point2], points: Array) -> NDArray[np.bool_]:
    """Tell which points lie in a polygon or within a centimetre of its walls."""
    start = np.asarray(outline)
    end = np.roll(start, -1, axis=0)
    x, y = points[:, :1], points[:, 1:]
    along, offset = end - start, points[:, None, :] - start
    crosses = (start[:, 1] > y) != (end[:, 1] > y)
    rise = np.where(along[:, 1] == 0, 1.0, along[:, 1])
    within = (crosses & (x < start[:, 0] + (y - start[:, 1]) / rise * along[:, 0])).sum(axis=1) % 2 == 1
    part = np.clip((offset * along).sum(axis=2) / (along**2).sum(axis=1), 0, 1)
    near = ((offset - part[:, :, None] * along) ** 2).sum(axis=2).min(axis=1) <= GRACE_M**2
    return np.asarray(within | near)


def shape_of(outline: Sequence[Point2], facets: Sequence[Facet]) -> RoomShape:
    """Return the canonical shape of a room with upright walls, a level floor and a ceiling of flat pieces.

    Raises Refused for an outline that is not simple, has more than 64 walls, or for a ceiling with steps or
    gaps or lower than 0.3 m.
    """
    corners = _straightened(outline)
    if len(corners) > MOST_WALLS:
        raise Refused(f"a plan of {len(corners)} walls is too intricate for its modes; {MOST_WALLS} are the most")
    if plane.area_m2(corners) < BUILT_M:
        raise Refused("the plan encloses no area")
    facets = tuple(facet for facet in facets if plane.area_m2(facet.outline) > BUILT_M**2)
    _check_ceiling(corners, facets)
    frames = [(turn, -(np.asarray(corners) @ turn.T).min(axis=0)) for turn in _turns(corners)]
    written = [_in_frame(corners, facets, *frame) for frame in frames]
    # Judged in the frame, where walls on one line lie on it exactly.
    if plane.why_not_simple(written[0][0]):
        raise Refused("the walls of the plan cross or touch one another")
    signatures = [_signature(*room) for room in written]
    first = min(range(len(frames)), key=lambda number: signatures[number])
    same = [frame for frame, numbers in zip(frames, signatures, strict=True) if _near(numbers, signatures[first])]
    return _classified(*written[first], (frames[first], *(frame for frame in same if frame is not frames[first])))


def _near(numbers: Sequence[float], others: Sequence[float]) -> bool:
    return len(numbers) == len(others) and max(map(abs, map(float.__sub__, numbers, others))) < BUILT_M / 2


def _straightened(outline: Sequence[Point2]) -> tuple[Point2, ...]:
    """Drop corners that repeat the one before or lie in the middle of a straight wall."""
    corners = [(float(x), float(y)) for x, y in outline]
    if len(corners) < 3 or not all(map(math.isfinite, (at for corner in corners for at in corner))):  # noqa: PLR2004
        raise Refused("a plan needs three corners or more, at finite lengths")
    kept = True
    while kept and len(corners) > 3:  # noqa: PLR2004 - a triangle has none to spare
        kept = False
        for number, corner in enumerate(corners):
            before, after = corners[number - 1], corners[(number + 1) % len(corners)]
            if plane.distance_to_segment_m(corner, before, after) < BUILT_M / 10:
                del corners[number]
                kept = True
                break
    return tuple(corners)


def _turns(corners: Sequence[Point2]) -> list[Array]:
    """Return turns that lay a longest wall along x with the room above it, plain and mirrored."""
    around = plane.anticlockwise(corners)
    sides = [(math.dist(start, end), start, end) for start, end in plane.walls(around)]
    longest = max(length for length, _, _ in sides)
    found = []
    for length, start, end in sides:
        if length > longest - BUILT_M:
            cosine, sine = (end[0] - start[0]) / length, (end[1] - start[1]) / length
            turn = np.array([[cosine, sine], [-sine, cosine]])
            found += [turn, np.diag([-1.0, 1.0]) @ turn]
    return found


def _snapped(values: Array, grid: float = GRID_M) -> Array:
    return np.asarray(np.floor(values / grid + 0.5 + OFF_RASTER) * grid)


def _cycled(points: Array) -> tuple[Point2, ...]:
    """Return a polygon anticlockwise from its lowest corner."""
    around = plane.anticlockwise([(x, y) for x, y in points.tolist()])
    first = around.index(min(around))
    return (*around[first:], *around[:first])


def _carried_facet(facet: Facet, turn: Array, shift: Array) -> Facet:
    corners = _cycled(_snapped(np.asarray(facet.outline) @ turn.T + shift))
    slope = turn @ np.array([facet.a, facet.b])
    tilt = _snapped(slope, 1e-8)
    level = _snapped(np.array([facet.c - float(slope @ shift)]))
    return Facet(corners, float(tilt[0]), float(tilt[1]), float(level[0]))


def _in_frame(
    corners: Sequence[Point2], facets: Sequence[Facet], turn: Array, shift: Array
) -> tuple[tuple[Point2, ...], tuple[Facet, ...]]:
    """Plan and ceiling in a frame, the pieces of the ceiling in an order of their own."""
    outline = _cycled(_snapped(np.asarray(corners) @ turn.T + shift))
    carried = (_carried_facet(facet, turn, shift) for facet in facets)
    return outline, tuple(sorted(carried, key=lambda facet: (facet.outline, facet.c)))


def _signature(outline: Sequence[Point2], facets: Sequence[Facet]) -> tuple[float, ...]:
    """Numbers by which one frame is preferred to another; rooms that are the same in two frames have the same."""
    plans = (at for polygon in (outline, *(facet.outline for facet in facets)) for corner in polygon for at in corner)
    heights = (facet.height_m(corner) for facet in facets for corner in facet.outline)
    return (*(round(at, 4) for at in plans), *(round(at, 4) for at in heights))


def _classified(outline: tuple[Point2, ...], carried: tuple[Facet, ...], frames: tuple[Frame, ...]) -> RoomShape:
    square = all(min(abs(x1 - x0), abs(y1 - y0)) < BUILT_M for (x0, y0), (x1, y1) in plane.walls(outline))
    edges = np.array([facet.height_m(corner) for facet in carried for corner in facet.outline])
    if square and np.ptp(edges) < BUILT_M:
        kind: Kind = "box" if len(outline) == 4 else "plan"  # noqa: PLR2004 - four right angles
        return RoomShape(outline, carried, frames, kind, (), (float(edges.mean()),), 0)
    if square and len(outline) == 4:  # noqa: PLR2004
        for level_axis in (0, 1):
            profile = _profile(outline, carried, level_axis)
            if profile is not None:
                return RoomShape(outline, carried, frames, "section", *profile, level_axis)
    return RoomShape(outline, carried, frames, "any", (), (), 0)


def _profile(
    outline: Sequence[Point2], facets: Sequence[Facet], level_axis: int
) -> tuple[tuple[float, ...], tuple[float, ...]] | None:
    """Where the ceiling of a rectangle bends and how high it is there, if it is the same all along an axis."""
    across = 1 - level_axis
    far = max(corner[level_axis] for corner in outline)
    pieces = []
    for facet in facets:
        level = [corner[level_axis] for corner in facet.outline]
        at = [corner[across] for corner in facet.outline]
        ends = (min(at), max(at))
        sloping = abs((facet.a, facet.b)[level_axis]) * far > BUILT_M
        part = (ends[1] - ends[0]) * far
        if sloping or max(level) - min(level) < far - BUILT_M or plane.area_m2(facet.outline) < part * (1 - 1e-3):
            return None
        rise = (facet.a, facet.b)[across]
        pieces.append((ends, (facet.c + rise * ends[0], facet.c + rise * ends[1])))
    pieces.sort()
    if any(abs(first[0][1] - second[0][0]) > BUILT_M for first, second in pairwise(pieces)):
        return None
    breaks = [pieces[0][0][0], *(ends[1] for ends, _ in pieces)]
    heights = [
        pieces[0][1][0],
        *((first[1][1] + second[1][0]) / 2 for first, second in pairwise(pieces)),
        pieces[-1][1][1],
    ]
    return tuple(breaks), tuple(heights)


def _check_ceiling(corners: Sequence[Point2], facets: Sequence[Facet]) -> None:
    """Refuse a ceiling with gaps, steps, or down to the floor."""
    covered = sum(plane.area_m2(facet.outline) for facet in facets)
    if abs(covered / plane.area_m2(corners) - 1) > BUILT_M:
        raise Refused("the ceiling leaves a part of the plan open or covers it twice: its pieces must cover the plan")
    lowest = min(facet.height_m(corner) for facet in facets for corner in facet.outline)
    if not lowest >= LEAST_HEIGHT_M:
        raise Refused(f"the ceiling comes down to {lowest:.2f} m; modes are computed from {LEAST_HEIGHT_M} m up")
    step = 0.0
    for number, facet in enumerate(facets):
        for other in facets[number + 1 :]:
            for here, there in ((facet, other), (other, facet)):
                for corner in here.outline:
                    if cutting.nearest_wall(there.outline, corner).distance_m < BUILT_M:
                        step = max(step, abs(here.height_m(corner) - there.height_m(corner)))
    if step > STEP_M:
        raise Refused(f"the ceiling has a step of {step:.2f} m; only pieces that meet at their edges are modelled")
