"""The ceiling as flat facets over the floor plan, and what a room with it encloses.

A facet is a polygon of the plan with the plane z = a x + b y + c over it. Facets together cover the outline.
Heights are above the floor (z = 0), in m.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING, TypeAlias

from roomlint.figures import plan
from roomlint.figures.direction import Vector3, direction_vector
from roomlint.figures.domain import Refused

if TYPE_CHECKING:
    from collections.abc import Sequence

    from roomlint.figures.plan import Outline, Point2

Facets: TypeAlias = "Sequence[Facet]"

# Corner heights this near one plane make one flat ceiling: no builder works finer.
FLAT_WITHIN_M = 1e-3


@dataclass(frozen=True, slots=True)
class Facet:
    """One flat part of a ceiling: z = a x + b y + c over the polygon `outline`."""

    outline: tuple[Point2, ...]
    a: float
    b: float
    c: float

    def height_m(self, point: Point2) -> float:
        """Return the height of the facet's plane over a point of the plan, m."""
        return self.a * point[0] + self.b * point[1] + self.c

    @property
    def slope_deg(self) -> float:
        """The steepest slope, deg from level."""
        return math.degrees(math.atan(math.hypot(self.a, self.b)))

    @property
    def normal(self) -> Vector3:
        """The unit vector that points down into the room, at right angles to the facet."""
        length = math.sqrt(self.a * self.a + self.b * self.b + 1.0)
        return (self.a / length, self.b / length, -1.0 / length)

    @property
    def area_m2(self) -> float:
        """The facet's own area along its slope, m2."""
        return plan.area_m2(self.outline) * math.sqrt(self.a * self.a + self.b * self.b + 1.0)


def flat(outline: Outline, height_m: float) -> tuple[Facet, ...]:
    """Return a level ceiling. The height must be above 0 m, else Refused."""
    return _checked((Facet(tuple(outline), 0.0, 0.0, height_m),))


def mono_pitch(outline: Outline, low_m: float, high_m: float, rises_toward_deg: float) -> tuple[Facet, ...]:
    """Return a ceiling of one slope, from `low_m` at the outline's near edge to `high_m` at its far one.

    `rises_toward_deg` is the azimuth it rises toward: 0 the front, 90 the left. Raises Refused for a height
    that is not above 0 m.
    """
    across = direction_vector(rises_toward_deg, 0.0)
    near, far = _extent(outline, (across[0], across[1]))
    return _checked((_rising(tuple(outline), (across[0], across[1]), near, low_m, far, high_m),))


def gable(
    outline: Outline,
    eaves_m: float,
    ridge_m: float,
    ridge_runs_deg: float = 0.0,
    *,
    ridge_at_m: float | None = None,
    far_eaves_m: float | None = None,
) -> tuple[Facet, ...]:
    """Return a ceiling of two slopes that meet at a level ridge.

    The ridge runs along the azimuth `ridge_runs_deg` (0 from rear to front). `ridge_at_m` is its distance from the
    edge of the outline on its left, looking along it; None puts it in the middle. `eaves_m` is the height at that
    left edge, `far_eaves_m` at the right one, the same when None. A ridge lower than its eaves makes a valley.
    Raises Refused for a height that is not above 0 m or a ridge outside the outline.
    """
    # Distance is counted from the left edge to the right, at right angles to the ridge.
    across3 = direction_vector(ridge_runs_deg - 90.0, 0.0)
    across = (across3[0], across3[1])
    left, right = _extent(outline, across)
    ridge = (left + right) / 2.0 if ridge_at_m is None else left + ridge_at_m
    if not left < ridge < right:
        raise Refused(f"the ridge must stand within the {right - left:g} m across the room, not at {ridge_at_m} m")
    corners = tuple(outline)
    near_part = plan.clipped(corners, across, ridge)
    far_part = plan.clipped(corners, (-across[0], -across[1]), -ridge)
    far_m = eaves_m if far_eaves_m is None else far_eaves_m
    return _checked(
        (
            _rising(near_part, across, left, eaves_m, ridge, ridge_m),
            _rising(far_part, across, ridge, ridge_m, right, far_m),
        )
    )


def over_corners(outline: Outline, heights_m: Sequence[float]) -> tuple[Facet, ...]:
    """Return a ceiling through a height over each corner of the outline.

    One facet when the heights lie in one plane to a millimetre, else triangles between the corners; where a
    crease runs is then an assumption. Raises Refused when the numbers of corners and heights differ, when a
    height is not above 0 m, or when the outline is not simple.
    """
    corners = tuple(outline)
    if len(heights_m) != len(corners):
        raise Refused(f"{len(corners)} corners need as many heights, not {len(heights_m)}")
    facets = [
        Facet(
            (corners[i], corners[j], corners[k]),
            *_plane((*corners[i], heights_m[i]), (*corners[j], heights_m[j]), (*corners[k], heights_m[k])),
        )
        for i, j, k in plan.triangulated(corners)
        if plan.area_m2((corners[i], corners[j], corners[k])) > plan.ON_WALL_M**2
    ]
    widest = max(facets, key=lambda facet: plan.area_m2(facet.outline))
    one = Facet(corners, widest.a, widest.b, widest.c)
    if all(
        abs(one.height_m(corner) - height) <= FLAT_WITHIN_M for corner, height in zip(corners, heights_m, strict=True)
    ):
        return _checked((one,))
    return _checked(tuple(facets))


def facet_over(facets: Facets, point: Point2) -> Facet:
    """Return the facet over a point of the plan; for one outside them all, the facet whose edge is nearest."""
    if len(facets) == 1:
        return facets[0]
    for facet in facets:
        if plan.contains(facet.outline, point):
            return facet
    return min(facets, key=lambda facet: plan.nearest_wall(facet.outline, point).distance_m)


def height_m(facets: Facets, point: Point2) -> float:
    """Return the height of the ceiling over a point of the plan, m."""
    return facet_over(facets, point).height_m(point)


def lowest_m(facets: Facets) -> float:
    """Return the height of the ceiling where it is lowest, m."""
    return min(facet.height_m(corner) for facet in facets for corner in facet.outline)


def highest_m(facets: Facets) -> float:
    """Return the height of the ceiling where it is highest, m."""
    return max(facet.height_m(corner) for facet in facets for corner in facet.outline)


def volume_m3(facets: Facets) -> float:
    """Return the volume between floor and ceiling, m3: each facet's plan area times the height over its centroid."""
    return sum(
        plan.area_m2(facet.outline) * facet.height_m(plan.centroid(facet.outline))
        for facet in facets
        if plan.area_m2(facet.outline) > 0.0
    )


def _extent(outline: Outline, across: Point2) -> tuple[float, float]:
    offsets = [x * across[0] + y * across[1] for x, y in outline]
    return min(offsets), max(offsets)


def _rising(
    outline: tuple[Point2, ...], across: Point2, start: float, start_m: float, end: float, end_m: float
) -> Facet:
    rise = (end_m - start_m) / (end - start)
    return Facet(outline, rise * across[0], rise * across[1], start_m - rise * start)


def _plane(p: Vector3, q: Vector3, r: Vector3) -> tuple[float, float, float]:
    ux, uy, uz = q[0] - p[0], q[1] - p[1], q[2] - p[2]
    vx, vy, vz = r[0] - p[0], r[1] - p[1], r[2] - p[2]
    across = ux * vy - uy * vx
    a = (uz * vy - vz * uy) / across
    b = (ux * vz - vx * uz) / across
    return a, b, p[2] - a * p[0] - b * p[1]


def _checked(facets: tuple[Facet, ...]) -> tuple[Facet, ...]:
    lowest = lowest_m(facets)
    if lowest <= 0.0:
        raise Refused(f"a ceiling must stand above the floor everywhere, not at {lowest:g} m")
    return facets
