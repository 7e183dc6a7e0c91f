"""Directions overhead, where azimuth loses its meaning.

Straight up, every azimuth is the same direction. The angle from there stays smooth.
"""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from roomlint.figures.direction import COINCIDENT_M, azimuth_deg, distance_m, plan_distance_m
from roomlint.figures.domain import Refused

if TYPE_CHECKING:
    from roomlint.figures.direction import Point3

# At a metre over the ear this is 9 cm in plan, less than a listener's head moves: no azimuth is set out that near.
NO_AZIMUTH_WITHIN_DEG = 5.0
_STRAIGHT_DOWN_DEG = 180.0


def from_zenith_deg(listener: Point3, point: Point3) -> float:
    """Return the angle of a point from straight up over the ear, 0..180 deg: 90 less the elevation.

    atan2(plan distance, height). Raises `Refused` when the point is the ear itself.
    """
    if distance_m(listener, point) < COINCIDENT_M:
        raise Refused("the two points are the same place, so there is no direction from one to the other")
    return math.degrees(math.atan2(plan_distance_m(listener, point), point[2] - listener[2]))


def set_azimuth_deg(
    listener: Point3, facing_deg: float, point: Point3, within_deg: float = NO_AZIMUTH_WITHIN_DEG
) -> float | None:
    """Return the azimuth of a point (see `azimuth_deg`), None within some degrees of straight up or down.

    Raises `Refused` when the point is the ear itself.
    """
    angle = from_zenith_deg(listener, point)
    if min(angle, _STRAIGHT_DOWN_DEG - angle) < within_deg:
        return None
    return azimuth_deg(listener, facing_deg, point)
