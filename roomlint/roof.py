"""The ceiling as flat facets over the floor plan, and what a room with it encloses.

A facet is a polygon of the plan with the plane z = a x + b y + c over it. Facets together cover the outline.
Heights are above the floor (z = 0), in m.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING, TypeAlias

from roomlint import cutting, plane
from roomlint.refused import Refused

if TYPE_CHECKING:
    from collections.abc import Sequence

    from roomlint.plane import Outline, Point2

Vector3: TypeAlias = tuple[float, float, float]
Plane: TypeAlias = tuple[float, float, float]  # a, b, c of z = a x + b y + c
Facets: TypeAlias = "Sequence[Facet]"

# Corner heights this near one plane make one flat ceiling: no builder works finer.
FLAT_WITHIN_M = 1e-3
# Upright sides of a raised part lean by this much from foot to head, as plasterboard corners do: a ceiling is then one
# surface without steps, and everything that is computed of it holds.
UPRIGHT_RUN_M = 0.02


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
        return plane.area_m2(self.outline) * math.sqrt(self.a * self.a + self.b * self.b + 1.0)


def flat(outline: Outline, height_m: float) -> tuple[Facet, ...]:
    """Return a level ceiling. The height must be above 0 m, else Refused."""
    return _checked((Facet(tuple(outline), 0.0, 0.0, height_m),))


def mono_pitch(outline: Outline, low_m: float, high_m: float, rises_toward_deg: float) -> tuple[Facet, ...]:
    """Return a ceiling of one slope, from `low_m` at the outline's near edge to `high_m` at its far one.

    `rises_toward_deg` is the azimuth it rises toward: 0 the front, 90 the left. Raises Refused for a height
    that is not above 0 m.
    """
    across = _toward(rises_toward_deg)
    near, far = _extent(outline, across)
    return _checked((_rising(tuple(outline), across, near, low_m, far, high_m),))


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
    across = _toward(ridge_runs_deg - 90.0)
    left, right = _extent(outline, across)
    ridge = (left + right) / 2.0 if ridge_at_m is None else left + ridge_at_m
    if not left < ridge < right:
        raise Refused(f"the ridge must stand within the {right - left:g} m across the room, not at {ridge_at_m} m")
    corners = tuple(outline)
    near_part = cutting.clipped(corners, across, ridge)
    far_part = cutting.clipped(corners, (-across[0], -across[1]), -ridge)
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
        for i, j, k in cutting.triangulated(corners)
        if plane.area_m2((corners[i], corners[j], corners[k])) > plane.ON_WALL_M**2
    ]
    widest = max(facets, key=lambda facet: plane.area_m2(facet.outline))
    one = Facet(corners, widest.a, widest.b, widest.c)
    if all(
        abs(one.height_m(corner) - height) <= FLAT_WITHIN_M for corner, height in zip(corners, heights_m, strict=True)
    ):
        return _checked((one,))
    return _checked(tuple(facets))


def under_planes(outline: Outline, planes: Sequence[Plane]) -> tuple[Facet, ...]:
    """Return a ceiling that is the lowest of some planes everywhere, such as a flat one cut off by slopes.

    `planes` are a, b, c of z = a x + b y + c. Each facet is the part of the plan where its plane is the lowest; planes
    that are nowhere so leave none. Raises Refused for a height that is not above 0 m.
    """
    facets = []
    for number, (a, b, c) in enumerate(planes):
        part = tuple(outline)
        for other, (d, e, f) in enumerate(planes):
            if other != number and len(part) > 2 and (a, b, c) != (d, e, f):  # noqa: PLR2004  a polygon
                part = cutting.clipped(part, (a - d, b - e), f - c)
        if len(part) > 2 and plane.area_m2(part) > plane.ON_WALL_M:  # noqa: PLR2004
            facets.append(Facet(part, a, b, c))
    return _checked(tuple(facets))


def part_sloped(
    outline: Outline, flat_m: float, low_m: float, run_m: float, rises_toward_deg: Sequence[float]
) -> tuple[Facet, ...]:
    """Return a flat ceiling with slopes along some sides: each from `low_m` at its edge of the outline up to the flat.

    `run_m` is how far in plan a slope reaches, `rises_toward_deg` the azimuth that each rises toward (see
    `mono_pitch`). Where two slopes meet, the lower holds. Raises Refused for a run that is not above 0 m and for a
    height that is not.
    """
    if not run_m > 0.0:
        raise Refused(f"a slope must reach some way into the plan, not {run_m:g} m")
    planes: list[Plane] = [(0.0, 0.0, flat_m)]
    for azimuth_deg in rises_toward_deg:
        across = _toward(azimuth_deg)
        near, _ = _extent(outline, across)
        slope = _rising((), across, near, low_m, near + run_m, flat_m)
        planes.append((slope.a, slope.b, slope.c))
    return under_planes(outline, planes)


def tray(
    outline: Outline, low_m: float, high_m: float, opening: tuple[float, float, float, float], run_m: float = 0.0
) -> tuple[Facet, ...]:
    """Return a level ceiling with a raised part in it: a tray or coffer, `low_m` around it and `high_m` in it.

    `opening` is the raised part's left, right, rear and front edge as seen in the lower ceiling, m. Its sides lean
    inwards by `run_m`; upright ones (0 m) are taken as leaning by `UPRIGHT_RUN_M`, half of it to either side of the
    edge, so that the volume is that of upright ones. A raised part lower than what is around it hangs down instead.
    Raises Refused for one that does not lie inside the outline, or whose sides meet.
    """
    left, right, rear, front = opening
    half, inward = (UPRIGHT_RUN_M / 2.0, UPRIGHT_RUN_M / 2.0) if run_m <= UPRIGHT_RUN_M else (0.0, run_m)
    outer = _rectangle(left - half, right + half, rear - half, front + half)
    inner = _rectangle(left + inward, right - inward, rear + inward, front - inward)
    if inner[0][0] >= inner[1][0] or inner[0][1] >= inner[2][1]:
        raise Refused("the sides of the raised part of the ceiling meet before they are up")
    if not all(plane.depth_m(outline, corner) > 0.0 for corner in outer):
        raise Refused("the raised part of the ceiling must lie inside the room, clear of its walls")
    corners = tuple(outline)
    middle = cutting.clipped(cutting.clipped(corners, (1.0, 0.0), outer[1][0]), (-1.0, 0.0), -outer[0][0])
    around = (
        cutting.clipped(corners, (1.0, 0.0), outer[0][0]),
        cutting.clipped(corners, (-1.0, 0.0), -outer[1][0]),
        cutting.clipped(middle, (0.0, 1.0), outer[0][1]),
        cutting.clipped(middle, (0.0, -1.0), -outer[2][1]),
    )
    facets = [Facet(part, 0.0, 0.0, low_m) for part in around if len(part) > 2]  # noqa: PLR2004  a polygon
    for number in range(4):
        ends = (outer[number], outer[(number + 1) % 4], inner[(number + 1) % 4], inner[number])
        places = zip(ends[:3], (low_m, low_m, high_m), strict=True)
        facets.append(Facet(ends, *_plane(*((x, y, z) for (x, y), z in places))))
    return _checked((*facets, Facet(inner, 0.0, 0.0, high_m)))


def over_pieces(pieces: Sequence[tuple[Outline, Sequence[float]]]) -> tuple[Facet, ...]:
    """Return a ceiling of pieces, each a polygon of the plan with a height over each of its corners.

    As `over_corners` for each. That they cover the plan and meet at their edges is the caller's to see.
    """
    return tuple(facet for outline, heights in pieces for facet in over_corners(outline, heights))


def surface_m2(facets: Facets) -> float:
    """Return the area of a ceiling along its slopes, m2; the upright sides of a tray are in it."""
    return sum(facet.area_m2 for facet in facets)


def facet_over(facets: Facets, point: Point2) -> Facet:
    """Return the facet over a point of the plan; for one outside them all, the facet whose edge is nearest."""
    if len(facets) == 1:
        return facets[0]
    for facet in facets:
        if plane.contains(facet.outline, point):
            return facet
    return min(facets, key=lambda facet: cutting.nearest_wall(facet.outline, point).distance_m)


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
        plane.area_m2(facet.outline) * facet.height_m(plane.centroid(facet.outline))
        for facet in facets
        if plane.area_m2(facet.outline) > 0.0
    )


def _rectangle(left: float, right: float, rear: float, front: float) -> tuple[Point2, ...]:
    return ((left, rear), (right, rear), (right, front), (left, front))


def _toward(azimuth_deg: float) -> Point2:
    """Return the unit vector of an azimuth in the plan: 0 the front, positive to the left (ITU-R BS.2076)."""
    turn = math.radians(azimuth_deg)
    return (-math.sin(turn), math.cos(turn))


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
