"""Directions and distances between a listener and what they hear, in the frame of ITU-R BS.2076.

x to the right, y to the front, z up, in metres. Azimuth 0 is straight ahead and positive to the listener's left,
in (-180, 180]; elevation is positive up. A listener is an ear point and `facing_deg`, the azimuth of the
direction they look in as seen in the room's own frame (0 looks along +y, 90 along -x).
"""

from __future__ import annotations

import math
from itertools import pairwise
from typing import TYPE_CHECKING, NamedTuple, TypeAlias

from roomlint.figures.domain import Refused

if TYPE_CHECKING:
    from collections.abc import Iterable

Point3: TypeAlias = tuple[float, float, float]  # m
Vector3: TypeAlias = tuple[float, float, float]

# Far below what anyone can measure and far above rounding: two points nearer than this have no direction.
COINCIDENT_M = 1e-6
_ROUNDING_DEG = 1e-9


class Gap(NamedTuple):
    """The empty arc between two neighbouring azimuths, counted anticlockwise from `start_deg` to `end_deg`."""

    width_deg: float
    start_deg: float
    end_deg: float


def wrap_deg(angle_deg: float) -> float:
    """Return the same direction as an angle in (-180, 180] deg."""
    return angle_deg - 360.0 * math.ceil((angle_deg - 180.0) / 360.0) + 0.0


def near_deg(angle_deg: float, reference_deg: float) -> float:
    """Return the same direction as the angle nearest to `reference_deg`, so that -179 reads 181 beside 180.

    A window about straight behind can then be judged as plain numbers.
    """
    return reference_deg + wrap_deg(angle_deg - reference_deg)


def distance_m(a: Point3, b: Point3) -> float:
    """Return the straight distance between two points, m."""
    return math.dist(a, b)


def plan_distance_m(a: Point3, b: Point3) -> float:
    """Return the distance between two points as a floor plan shows it, m."""
    return math.hypot(b[0] - a[0], b[1] - a[1])


def azimuth_deg(listener: Point3, facing_deg: float, point: Point3) -> float:
    """Return the azimuth of a point for a listener, (-180, 180] deg, positive to the left.

    az = -atan2(x, y) - facing, wrapped (ITU-R BS.2076 polar convention). A point straight above or below the ear
    has no azimuth; 0 is returned for it. Raises Refused when the point is the ear itself.
    """
    x, y = point[0] - listener[0], point[1] - listener[1]
    if math.hypot(x, y) < COINCIDENT_M:
        _refuse_coincident(listener, point)
        return 0.0
    return wrap_deg(-math.degrees(math.atan2(x, y)) - facing_deg)


def elevation_deg(listener: Point3, point: Point3) -> float:
    """Return the elevation of a point above the ear's horizontal plane, -90..90 deg.

    el = atan2(z, hypot(x, y)) (ITU-R BS.2076). Raises Refused when the point is the ear itself.
    """
    _refuse_coincident(listener, point)
    return math.degrees(math.atan2(point[2] - listener[2], plan_distance_m(listener, point)))


def over_head_deg(listener: Point3, facing_deg: float, point: Point3) -> float:
    """Return the angle of a point in the listener's front-to-rear vertical plane, (-180, 180] deg.

    Counted from straight ahead (0) over the head (90) to straight behind (180): atan2(z, forward), whatever the
    sideways offset. Raises Refused when the point lies on the axis through both ears, where no such angle is.
    """
    facing = direction_vector(facing_deg, 0.0)
    forward = (point[0] - listener[0]) * facing[0] + (point[1] - listener[1]) * facing[1]
    up = point[2] - listener[2]
    if math.hypot(forward, up) < COINCIDENT_M:
        raise Refused("a point beside the ear has no angle over the head: give one ahead, above or behind")
    return math.degrees(math.atan2(up, forward)) + 0.0


def direction_vector(azimuth: float, elevation: float) -> Vector3:
    """Return the unit vector of an azimuth and an elevation in deg.

    x = -sin(az) cos(el), y = cos(az) cos(el), z = sin(el) (ITU-R BS.2076).
    """
    az, el = math.radians(azimuth), math.radians(elevation)
    return (-math.sin(az) * math.cos(el), math.cos(az) * math.cos(el), math.sin(el))


def toward(start: Point3, end: Point3) -> Vector3:
    """Return the unit vector from one point to another. Raises Refused when they coincide."""
    _refuse_coincident(start, end)
    length = math.dist(start, end)
    return ((end[0] - start[0]) / length, (end[1] - start[1]) / length, (end[2] - start[2]) / length)


def angle_between_deg(a: Vector3, b: Vector3) -> float:
    """Return the angle between two vectors, 0..180 deg; atan2 of cross and dot keeps small angles exact.

    Raises Refused for a vector without length.
    """
    if not (any(a) and any(b)):
        raise Refused("a vector without length has no direction")
    across = math.hypot(*cross(a, b))
    return math.degrees(math.atan2(across, dot(a, b)))


def in_circular_range(angle: float, start: float, end: float, tolerance: float = 0.0) -> bool:
    """Say whether an angle lies in the arc that runs anticlockwise from `start` to `end`, widened by `tolerance`.

    All in deg; directions wrap, so -180 and 180 are the same angle. (-180, 180) is the whole circle and
    (180, 180) one direction. An arc longer than a turn is taken modulo 360.
    """
    span = end - start
    if span < 0.0:
        span %= 360.0
    elif span > 360.0:  # noqa: PLR2004  a full turn
        span -= 360.0 * math.ceil(span / 360.0 - 1.0)
    offset = (angle - start + tolerance + _ROUNDING_DEG) % 360.0
    return offset <= span + 2.0 * (tolerance + _ROUNDING_DEG)


def outside_range_deg(angle: float, start: float, end: float) -> float:
    """Return how far an angle lies outside the arc that runs anticlockwise from `start` to `end`, deg; 0 inside it.

    The smaller way round to one of the two ends. All in deg; directions wrap as in `in_circular_range`.
    """
    if in_circular_range(angle, start, end):
        return 0.0
    return min(abs(wrap_deg(angle - start)), abs(wrap_deg(angle - end)))


def gaps_deg(azimuths: Iterable[float]) -> tuple[Gap, ...]:
    """Return the empty arcs between neighbouring azimuths all the way round, in order from straight behind.

    One azimuth leaves one gap of 360 deg. Raises Refused without any.
    """
    ordered = sorted({wrap_deg(azimuth) for azimuth in azimuths})
    if not ordered:
        raise Refused("no loudspeaker, so there is no gap between loudspeakers")
    around = Gap(360.0 - (ordered[-1] - ordered[0]), ordered[-1], ordered[0])
    return (*(Gap(after - before, before, after) for before, after in pairwise(ordered)), around)


def largest_gap_deg(azimuths: Iterable[float]) -> float:
    """Return the widest empty arc between neighbouring azimuths, (0, 360] deg."""
    return max(gap.width_deg for gap in gaps_deg(azimuths))


def free_field_level_db(distance: float, reference_distance: float) -> float:
    """Return the direct sound's level at a distance against that at a reference distance, dB.

    -20 log10(d / d_ref): free field, point source. Both in m and above zero, else Refused.
    """
    if distance <= 0.0 or reference_distance <= 0.0:
        raise Refused(f"distances must be above 0 m, not {distance:g} m and {reference_distance:g} m")
    return -20.0 * math.log10(distance / reference_distance)


def dot(a: Vector3, b: Vector3) -> float:
    """Return the scalar product."""
    return a[0] * b[0] + a[1] * b[1] + a[2] * b[2]


def cross(a: Vector3, b: Vector3) -> Vector3:
    """Return the vector product."""
    return (a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0])


def _refuse_coincident(a: Point3, b: Point3) -> None:
    if math.dist(a, b) < COINCIDENT_M:
        raise Refused("the two points are the same place, so there is no direction from one to the other")
