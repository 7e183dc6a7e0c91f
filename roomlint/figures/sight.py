"""What a straight line through the room meets: surfaces, obstacles, heads and door leaves."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING, NamedTuple

from roomlint.figures import plan
from roomlint.figures.direction import Point3, Vector3, direction_vector, wrap_deg
from roomlint.figures.enclosure import room
from roomlint.figures.ray import END_SLACK_M, Hit, Spanned, first_met

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from roomlint.figures.ceiling import Facet, Facets
    from roomlint.figures.plan import Outline, Point2

__all__ = [
    "END_SLACK_M",
    "Box",
    "Clearance",
    "DoorSwing",
    "Hit",
    "ceiling_between",
    "clearance_over",
    "first_hit",
    "lowest_clearance",
    "obstacle_between",
    "sphere_between",
    "wall_between",
]

_NEARLY = 1e-9


class Clearance(NamedTuple):
    """How a line from a source to an ear passes a head.

    The share of the way at which it passes, how far to the side in plan, and how far above the head's top
    (negative below).
    """

    share: float
    aside_m: float
    above_m: float


@dataclass(frozen=True, slots=True)
class Box:
    """An upright box along the room's axes, from its lowest to its highest corner."""

    low: Point3
    high: Point3

    def span(self, start: Point3, end: Point3) -> tuple[float, float] | None:
        """Return the shares of the way from start to end between which a line is inside, None when it never is.

        The shares are not cut to 0..1: a line that goes on as far as it is long gives 2. A line that only runs
        along a face is not inside.
        """
        enter, leave = -math.inf, math.inf
        for axis in range(3):
            low, high = self.low[axis], self.high[axis]
            way = end[axis] - start[axis]
            if abs(way) < _NEARLY:
                if not low < start[axis] < high:
                    return None
                continue
            a, b = (low - start[axis]) / way, (high - start[axis]) / way
            enter, leave = max(enter, min(a, b)), min(leave, max(a, b))
        return (enter, leave) if enter < leave else None


def first_hit(
    start: Point3,
    direction: Vector3,
    outline: Outline,
    facets: Facets,
    obstacles: Sequence[Spanned] = (),
) -> Hit:
    """Return the first surface or obstacle that a ray from inside the room meets (see `ray.first_met`)."""
    return first_met(room(outline, facets), start, direction, obstacles)


def wall_between(a: Point2, b: Point2, outline: Outline, slack_m: float = END_SLACK_M) -> int | None:
    """Return the number of the first wall that hides two points of the plan from each other, None when none does.

    Walls within `slack_m` of either end do not count: a loudspeaker may sit in the wall.
    """
    length = math.dist(a, b)
    if length == 0.0:
        return None
    slack = slack_m / length
    crossings = [
        (share, wall)
        for wall, (start, end) in enumerate(plan.walls(outline))
        if (share := plan.crossing(a, b, start, end)) is not None and slack < share < 1.0 - slack
    ]
    return min(crossings)[1] if crossings else None


def obstacle_between(a: Point3, b: Point3, obstacles: Sequence[Spanned], slack_m: float = END_SLACK_M) -> int | None:
    """Return the number of the first obstacle on the line between two points, None when it is free.

    The line may be inside an obstacle for `slack_m` at either end.
    """
    length = math.dist(a, b)
    if length == 0.0:
        return None
    slack = slack_m / length
    met = [
        (span[0], number)
        for number, obstacle in enumerate(obstacles)
        if (span := obstacle.span(a, b)) is not None and min(span[1], 1.0 - slack) > max(span[0], slack)
    ]
    return min(met)[1] if met else None


def ceiling_between(a: Point3, b: Point3, facets: Facets, slack_m: float = END_SLACK_M) -> int | None:
    """Return the number of a ceiling facet that the line between two points dips out of the room through.

    Only a ceiling with a valley or a step down can come between two points below it; None when the line is free.
    """
    length = math.dist(a, b)
    if len(facets) == 1 or length == 0.0:
        return None
    unit = ((b[0] - a[0]) / length, (b[1] - a[1]) / length, (b[2] - a[2]) / length)
    met = [
        (distance, number)
        for number, facet in enumerate(facets)
        if (distance := _facet_met(a, unit, facet)) is not None and slack_m < distance < length - slack_m
    ]
    return min(met)[1] if met else None


def sphere_between(a: Point3, b: Point3, centre: Point3, radius_m: float) -> bool:
    """Say whether a ball, such as a head, stands in the line between two points."""
    square = sum((q - p) ** 2 for p, q in zip(a, b, strict=True))
    if square == 0.0:
        return math.dist(a, centre) < radius_m
    share = sum((q - p) * (c - p) for p, q, c in zip(a, b, centre, strict=True)) / square
    share = min(1.0, max(0.0, share))
    nearest = (a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1]), a[2] + share * (b[2] - a[2]))
    return math.dist(nearest, centre) < radius_m


def clearance_over(source: Point3, ear: Point3, head_top: Point3) -> Clearance | None:
    """Return how the line from a source to an ear passes over another listener's head, None when it does not.

    It is taken where the line comes nearest to the head in plan: z = z_source + share (z_ear - z_source). A head
    behind the source or behind the ear, in plan, is not passed.
    """
    dx, dy = ear[0] - source[0], ear[1] - source[1]
    square = dx * dx + dy * dy
    if square == 0.0:
        return None
    hx, hy = head_top[0] - source[0], head_top[1] - source[1]
    share = (hx * dx + hy * dy) / square
    if not 0.0 < share < 1.0:
        return None
    aside = abs(hx * dy - hy * dx) / math.sqrt(square)
    return Clearance(share, aside, source[2] + share * (ear[2] - source[2]) - head_top[2])


def lowest_clearance(
    source: Point3, ear: Point3, head_tops: Iterable[Point3], within_m: float
) -> tuple[int, Clearance] | None:
    """Return the head that a line clears by least, as its number and the clearance; None when it passes none.

    Heads farther than `within_m` to the side of the line in plan are out of its way.
    """
    passed = [
        (clearance.above_m, number, clearance)
        for number, top in enumerate(head_tops)
        if (clearance := clearance_over(source, ear, top)) is not None and clearance.aside_m <= within_m
    ]
    if not passed:
        return None
    _, number, least = min(passed)
    return number, least


@dataclass(frozen=True, slots=True)
class DoorSwing:
    """The quarter of a disc, or less or more, that a door leaf sweeps over the floor.

    The leaf turns about `hinge` from the azimuth `closed_deg` by `swing_deg`, positive anticlockwise seen from
    above, up to half a turn either way.
    """

    hinge: Point2
    width_m: float
    closed_deg: float
    swing_deg: float = 90.0

    @property
    def area_m2(self) -> float:
        """The floor area swept, m2."""
        return math.radians(abs(self.swing_deg)) * self.width_m**2 / 2.0

    def distance_m(self, point: Point2) -> float:
        """Return the distance of a point of the plan from the swept area, m; negative inside it.

        Inside, it is how far the point would have to move to be out of the leaf's way: beyond its tip, or past the
        open leaf. The closed leaf's side is the wall.
        """
        away = math.dist(self.hinge, point)
        azimuth = -math.degrees(math.atan2(point[0] - self.hinge[0], point[1] - self.hinge[1]))
        turned = wrap_deg(azimuth - self.closed_deg - self.swing_deg / 2.0)
        if abs(turned) <= abs(self.swing_deg) / 2.0:
            opened = plan.distance_to_segment_m(point, self.hinge, self._tip(self.closed_deg + self.swing_deg))
            return away - self.width_m if away > self.width_m else -min(self.width_m - away, opened)
        return min(
            plan.distance_to_segment_m(point, self.hinge, self._tip(self.closed_deg)),
            plan.distance_to_segment_m(point, self.hinge, self._tip(self.closed_deg + self.swing_deg)),
        )

    def meets(self, point: Point2, radius_m: float = 0.0) -> bool:
        """Say whether the leaf sweeps over a point, or over a disc of some radius about it."""
        return self.distance_m(point) <= radius_m

    def _tip(self, azimuth: float) -> Point2:
        x, y, _ = direction_vector(azimuth, 0.0)
        return (self.hinge[0] + self.width_m * x, self.hinge[1] + self.width_m * y)


def _facet_met(start: Point3, unit: Vector3, facet: Facet) -> float | None:
    # Height of the ceiling above the ray, at the start and per metre of the way.
    above = facet.height_m((start[0], start[1])) - start[2]
    closing = unit[2] - facet.a * unit[0] - facet.b * unit[1]
    if abs(closing) < _NEARLY:
        return None
    distance = above / closing
    if distance <= plan.ON_WALL_M:
        return None
    at = (start[0] + distance * unit[0], start[1] + distance * unit[1])
    return distance if plan.contains(facet.outline, at) else None
