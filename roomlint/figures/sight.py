"""Heads that a line to an ear passes over, and the floor that a door leaf sweeps."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING, NamedTuple

from roomlint import plane
from roomlint.figures.direction import Point3, direction_vector, wrap_deg

if TYPE_CHECKING:
    from roomlint.plane import Point2


class Clearance(NamedTuple):
    """How a line from a source to an ear passes a head.

    The share of the way at which it passes, how far to the side in plan, and how far above the head's top
    (negative below).
    """

    share: float
    aside_m: float
    above_m: float


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
            opened = plane.distance_to_segment_m(point, self.hinge, self._tip(self.closed_deg + self.swing_deg))
            return away - self.width_m if away > self.width_m else -min(self.width_m - away, opened)
        return min(
            plane.distance_to_segment_m(point, self.hinge, self._tip(self.closed_deg)),
            plane.distance_to_segment_m(point, self.hinge, self._tip(self.closed_deg + self.swing_deg)),
        )

    def meets(self, point: Point2, radius_m: float = 0.0) -> bool:
        """Say whether the leaf sweeps over a point, or over a disc of some radius about it."""
        return self.distance_m(point) <= radius_m

    def _tip(self, azimuth: float) -> Point2:
        x, y, _ = direction_vector(azimuth, 0.0)
        return (self.hinge[0] + self.width_m * x, self.hinge[1] + self.width_m * y)
