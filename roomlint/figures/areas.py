"""Areas of a room's surfaces: walls under whatever ceiling, and what rectangles on a wall share."""

from __future__ import annotations

import math
from itertools import pairwise
from typing import TYPE_CHECKING, NamedTuple

from roomlint.cutting import inward_normal
from roomlint.plane import crossing, foot_on_segment, walls
from roomlint.roof import facet_over

if TYPE_CHECKING:
    from roomlint.plane import Outline, Point2
    from roomlint.roof import Facets

_INSIDE_M = 1e-6
_ON_WALL_M = 1e-4


class Patch(NamedTuple):
    """An upright rectangle: from its left and lower edge, width and height, m."""

    left_m: float
    bottom_m: float
    width_m: float
    height_m: float

    @property
    def area_m2(self) -> float:
        """Its area."""
        return self.width_m * self.height_m

    def holds(self, other: Patch) -> bool:
        """Return whether another one lies within it."""
        across = self.left_m <= other.left_m and other.left_m + other.width_m <= self.left_m + self.width_m
        up = self.bottom_m <= other.bottom_m and other.bottom_m + other.height_m <= self.bottom_m + self.height_m
        return across and up

    def common_m2(self, other: Patch) -> float:
        """Return the area that it shares with another one on the same surface, m2."""
        wide = min(self.left_m + self.width_m, other.left_m + other.width_m) - max(self.left_m, other.left_m)
        high = min(self.bottom_m + self.height_m, other.bottom_m + other.height_m) - max(self.bottom_m, other.bottom_m)
        return max(wide, 0.0) * max(high, 0.0)


def wall_areas_m2(outline: Outline, facets: Facets) -> tuple[float, ...]:
    """Return the area of each piece of wall from the floor up to the ceiling, m2, in the outline's order.

    The ceiling's height along the wall is a broken line, with a break wherever a facet ends: its integral is exact.
    Source: plane geometry.
    """
    return tuple(
        _under(start, end, inward_normal(outline, number), facets) for number, (start, end) in enumerate(walls(outline))
    )


def _under(start: Point2, end: Point2, inward: Point2, facets: Facets) -> float:
    length = math.dist(start, end)
    if len(facets) == 1:
        return length * (facets[0].height_m(start) + facets[0].height_m(end)) / 2.0
    breaks = {0.0, 1.0}
    for facet in facets:
        for one, other in walls(facet.outline):
            share = crossing(start, end, one, other)
            if share is not None:
                breaks.add(min(max(share, 0.0), 1.0))
            foot = foot_on_segment(one, start, end)
            if math.dist(foot, one) < _ON_WALL_M:
                breaks.add(math.dist(start, foot) / length)
    ordered = sorted(breaks)
    total = 0.0
    for low, high in pairwise(ordered):
        over = facet_over(facets, _inside(start, end, (low + high) / 2.0, inward))
        ends = [over.height_m(_between(start, end, share)) for share in (low, high)]
        total += (high - low) * length * (ends[0] + ends[1]) / 2.0
    return total


def _between(start: Point2, end: Point2, share: float) -> Point2:
    return (start[0] + share * (end[0] - start[0]), start[1] + share * (end[1] - start[1]))


def _inside(start: Point2, end: Point2, share: float, inward: Point2) -> Point2:
    """Return a point of the plan just before the wall."""
    x, y = _between(start, end, share)
    return (x + _INSIDE_M * inward[0], y + _INSIDE_M * inward[1])
