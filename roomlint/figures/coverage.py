"""Which way a mounted loudspeaker aims, and how far off that axis a listener sits."""

from __future__ import annotations

import math
from typing import NamedTuple

from roomlint.figures.direction import Point3, Vector3, angle_between_deg, cross, dot, toward
from roomlint.figures.domain import Refused

UP: Vector3 = (0.0, 0.0, 1.0)
FRONT: Vector3 = (0.0, 1.0, 0.0)
COVERED_DB = 6.0
MOST_DROP_DB = 12.0


class Frame(NamedTuple):
    """Three unit vectors at right angles: to the right, up, and out along the axis."""

    right: Vector3
    up: Vector3
    out: Vector3


class OffAxis(NamedTuple):
    """A direction in a loudspeaker's own frame: left of its axis and above it are positive, deg."""

    horizontal_deg: float
    vertical_deg: float


def frame_of(axis: Vector3, top: Vector3 = UP) -> Frame:
    """Return the frame that looks out along `axis` without roll, its top as near to `top` as it can be.

    An axis along `top` itself (a loudspeaker facing straight down) takes the room's front for its top.
    Raises Refused for an axis without length.
    """
    length = math.hypot(*axis)
    if length == 0.0:
        raise Refused("an axis without length aims nowhere")
    out = (axis[0] / length, axis[1] / length, axis[2] / length)
    side = cross(out, top)
    if math.hypot(*side) < 1e-9:  # noqa: PLR2004  parallel to rounding
        side = cross(out, UP if abs(top[1]) > abs(top[2]) else FRONT)
    width = math.hypot(*side)
    right = (side[0] / width, side[1] / width, side[2] / width)
    return Frame(right, cross(right, out), out)


def drop_db(off: OffAxis, half_horizontal_deg: float, half_vertical_deg: float) -> float:
    """Return how much weaker a loudspeaker is off its axis than on it, dB.

    6 dB times the square of the direction in units of half its nominal coverage, sideways and up together: naught
    ahead, 6 dB at the nominal angles, which are its -6 dB points, and no more than 12 dB. Half angles above 0 deg,
    else Refused. Source: the definition of coverage; the curve between is practice, ours.
    """
    if half_horizontal_deg <= 0.0 or half_vertical_deg <= 0.0:
        raise Refused(
            f"coverage is above 0 deg to each side, not {half_horizontal_deg:g} and {half_vertical_deg:g} deg"
        )
    square = (off.horizontal_deg / half_horizontal_deg) ** 2 + (off.vertical_deg / half_vertical_deg) ** 2
    return min(COVERED_DB * square, MOST_DROP_DB)


def mounted_axis(
    normal: Vector3,
    top: Vector3 = UP,
    *,
    swivel_deg: float = 0.0,
    tilt_deg: float = 0.0,
    baffle_deg: float = 0.0,
    baffle_toward_deg: float = 0.0,
) -> Vector3:
    """Return the unit vector a loudspeaker aims along, from the plane it is mounted on and the mount's joints.

    `normal` points from the wall, slope or ceiling into the room; `top` says which way up means in that plane:
    `UP` on a wall, `FRONT` on a ceiling. The drivers aim `baffle_deg` away from the cabinet's own axis, toward
    the direction `baffle_toward_deg` counted from the cabinet's top to its left (0 up, 90 left, 180 down, seen
    looking along the axis). The mount then tilts the cabinet (positive toward the top), then swivels it
    (positive to the left). All angles in deg.
    """
    plane = frame_of(normal, top)
    lean, toward_angle = math.radians(baffle_deg), math.radians(baffle_toward_deg)
    right = -math.sin(lean) * math.sin(toward_angle)
    up = math.sin(lean) * math.cos(toward_angle)
    out = math.cos(lean)
    tilt, swivel = math.radians(tilt_deg), math.radians(swivel_deg)
    up, out = up * math.cos(tilt) + out * math.sin(tilt), out * math.cos(tilt) - up * math.sin(tilt)
    right, out = right * math.cos(swivel) - out * math.sin(swivel), out * math.cos(swivel) + right * math.sin(swivel)
    return (
        right * plane.right[0] + up * plane.up[0] + out * plane.out[0],
        right * plane.right[1] + up * plane.up[1] + out * plane.out[1],
        right * plane.right[2] + up * plane.up[2] + out * plane.out[2],
    )


def off_axis_deg(axis: Vector3, speaker: Point3, target: Point3) -> float:
    """Return the angle between a loudspeaker's axis and the line to a target, 0..180 deg."""
    return angle_between_deg(axis, toward(speaker, target))


def off_axis_parts(axis: Vector3, speaker: Point3, target: Point3, top: Vector3 = UP) -> OffAxis:
    """Return how far left of and above its axis a loudspeaker sees a target, deg.

    Azimuth and elevation in the loudspeaker's own frame without roll (see `frame_of`): the horizontal part in
    (-180, 180], the vertical part in -90..90. Coverage is stated per plane, so it is judged per plane.
    """
    frame = frame_of(axis, top)
    line = toward(speaker, target)
    right, up, out = dot(line, frame.right), dot(line, frame.up), dot(line, frame.out)
    horizontal = math.degrees(math.atan2(-right, out)) + 0.0
    return OffAxis(horizontal, math.degrees(math.atan2(up, math.hypot(right, out))))
