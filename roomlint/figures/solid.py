"""Solids in a room: cabinets, furniture, posts, door leaves and listeners, and the clearance between two of them.

Two kinds are enough. An `Upright` has the same convex plan at all its heights. A `Tilted` is a box that leans: a
cabinet whose axis is neither level nor plumb. Lengths in m; clearances are negative where solids overlap, and then tell
the least move that parts them.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import lru_cache
from typing import TYPE_CHECKING, Final, TypeAlias

from roomlint.figures import convex
from roomlint.figures.convex import Body
from roomlint.figures.coverage import UP, frame_of
from roomlint.figures.direction import Point3, Vector3, direction_vector, dot
from roomlint.figures.domain import Refused, not_negative, positive

if TYPE_CHECKING:
    from roomlint.figures.sight import DoorSwing
    from roomlint.plane import Point2

_NEARLY = 1e-9
# Sides of the polygon that stands around a full circle where a round solid has to be one: 2 % wider at its corners.
_SIDES = 16
_HALF_TURN_DEG = 180.0


@dataclass(frozen=True, slots=True)
class Upright:
    """What stands upright: a convex plan (corners anticlockwise) between two heights; one point and a radius is round.

    `radius_m` is added to the plan all round; only a single point has one.
    """

    plan: tuple[Point2, ...]
    low_m: float
    high_m: float
    radius_m: float = 0.0

    def span(self, start: Point3, end: Point3) -> tuple[float, float] | None:
        """Return the shares of the way from start to end between which a line is inside, None when it never is.

        The shares are not cut to 0..1: a line that goes on as far as it is long gives 2. A line that only runs along a
        face is not inside.
        """
        if self.high_m <= self.low_m:
            return None
        dx, dy, dz = end[0] - start[0], end[1] - start[1], end[2] - start[2]
        enter, leave = _between(start[2], dz, self.low_m, self.high_m)
        if len(self.plan) == 1:
            first, last = _in_disc(start[0] - self.plan[0][0], start[1] - self.plan[0][1], dx, dy, self.radius_m)
            enter, leave = max(enter, first), min(leave, last)
            return (enter, leave) if enter < leave else None
        x0, y0 = self.plan[-1]
        for x1, y1 in self.plan:
            nx, ny = y1 - y0, x0 - x1
            beyond, pace = (start[0] - x0) * nx + (start[1] - y0) * ny, dx * nx + dy * ny
            x0, y0 = x1, y1
            if abs(pace) < _NEARLY:
                if beyond >= 0.0:
                    return None
            elif pace < 0.0:
                enter = max(enter, -beyond / pace)
            else:
                leave = min(leave, -beyond / pace)
        return (enter, leave) if enter < leave else None


@dataclass(frozen=True, slots=True)
class Tilted:
    """A box that leans: its middle, half its sizes, and the unit vectors along its width, its height and its axis."""

    middle: Point3
    half_m: tuple[float, float, float]  # along right, up, out
    axes: tuple[Vector3, Vector3, Vector3]

    @property
    def corners(self) -> tuple[Point3, ...]:
        """The eight corners."""
        (mx, my, mz), (r, u, o) = self.middle, self.axes
        hr, hu, ho = self.half_m
        return tuple(
            (
                mx + a * r[0] + b * u[0] + c * o[0],
                my + a * r[1] + b * u[1] + c * o[1],
                mz + a * r[2] + b * u[2] + c * o[2],
            )
            for a in (-hr, hr)
            for b in (-hu, hu)
            for c in (-ho, ho)
        )

    def span(self, start: Point3, end: Point3) -> tuple[float, float] | None:
        """Return the shares of the way between which a line is inside, None when it never is (see `Upright.span`)."""
        off = (start[0] - self.middle[0], start[1] - self.middle[1], start[2] - self.middle[2])
        way = (end[0] - start[0], end[1] - start[1], end[2] - start[2])
        enter, leave = -math.inf, math.inf
        for axis, half in zip(self.axes, self.half_m, strict=True):
            first, last = _between(dot(off, axis), dot(way, axis), -half, half)
            enter, leave = max(enter, first), min(leave, last)
        return (enter, leave) if enter < leave else None


WATER_KG_M3: Final = 1000.0
Solid: TypeAlias = Upright | Tilted


def by_water(mass_kg: float, width_m: float, height_m: float, depth_m: float) -> float:
    """Return the mass of a box over that of as much water, at 1000 kg/m3: its relative density.

    Sizes above 0 m, else Refused. 6.5 kg in 0.20 by 0.34 by 0.14 m are 0.683.
    """
    for name, size in (("width", width_m), ("height", height_m), ("depth", depth_m)):
        positive(f"the {name} of a box", size, "m")
    return mass_kg / (WATER_KG_M3 * width_m * height_m * depth_m)


def upright_box(low: Point3, high: Point3) -> Upright:
    """Return a box along the room's axes, from its lowest to its highest corner: furniture, a soffit, a riser.

    Raises `Refused` when it has no width, depth or height.
    """
    (x0, y0, z0), (x1, y1, z1) = low, high
    for name, size in (("width", x1 - x0), ("depth", y1 - y0), ("height", z1 - z0)):
        positive(f"the {name} of a box", size, "m")
    return Upright(((x0, y0), (x1, y0), (x1, y1), (x0, y1)), z0, z1)


def post(middle: Point2, radius_m: float, low_m: float, high_m: float) -> Upright:
    """Return a round upright post. Raises `Refused` without a radius or a height."""
    positive("the radius of a post", radius_m, "m")
    positive("the height of a post", high_m - low_m, "m")
    return Upright((middle,), low_m, high_m, radius_m)


def seated(ear: Point3, radius_m: float, floor_m: float = 0.0, above_ear_m: float = 0.0) -> Upright:
    """Return what a listener on a seat takes up: a round column about the ear from its floor to above the ear.

    `floor_m` is the height of the floor or riser under the seat. Raises `Refused` for an ear that is not above it.
    """
    positive("the height of the ear above its floor", ear[2] - floor_m, "m")
    return post((ear[0], ear[1]), radius_m, floor_m, ear[2] + not_negative("the head above the ear", above_ear_m, "m"))


def cabinet(front: Point3, axis: Vector3, width_m: float, height_m: float, depth_m: float, top: Vector3 = UP) -> Solid:
    """Return a cabinet from the middle of its front face and the direction that face looks in.

    `front` is the acoustic centre, in the middle of the front; the box lies behind it along the axis, without roll,
    its top toward `top`; one that looks straight up or down has its top toward the room's front. Sizes above 0 m,
    else `Refused`. For azimuth and elevation in deg the axis is `direction_vector(azimuth, elevation)`.
    """
    for name, size in (("width", width_m), ("height", height_m), ("depth", depth_m)):
        positive(f"the {name} of a cabinet", size, "m")
    if not any(axis):
        raise Refused("a cabinet whose axis has no direction faces nowhere")
    right, up, out = frame_of(axis, top)
    half = depth_m / 2.0
    middle = (front[0] - half * out[0], front[1] - half * out[1], front[2] - half * out[2])
    return _box(middle, (width_m / 2.0, height_m / 2.0, half), (right, up, out))


def door_leaf(swing: DoorSwing, low_m: float, high_m: float, behind_m: float = 0.0) -> Upright:
    """Return what a door leaf sweeps, from its lower to its upper edge, as an upright solid.

    The arc is replaced by a polygon around it, at most 0.12 % of the leaf's width outside (1 mm for 0.8 m), never
    inside. `behind_m` adds that much wall behind the closed leaf, for a leaf of a quarter turn or less: nothing parts
    from it that way. Raises `Refused` for a leaf that turns more than half a turn or not at all.
    """
    turn = swing.swing_deg
    if not 0.0 < abs(turn) <= _HALF_TURN_DEG:
        raise Refused(f"a door leaf turns by more than 0 and at most 180 deg, not {turn:g}")
    pieces = max(2, math.ceil(abs(turn) / 6.0))
    step = turn / pieces
    # The sides touch the arc in their middles, and the first and last corner lie on the leaf's two end positions.
    reach = swing.width_m / math.cos(math.radians(step / 2.0))
    azimuths = [
        swing.closed_deg,
        *(swing.closed_deg + (k + 0.5) * step for k in range(pieces)),
        swing.closed_deg + turn,
    ]
    lengths = [swing.width_m, *(reach for _ in range(pieces)), swing.width_m]
    points = [swing.hinge]
    for azimuth, length in zip(azimuths, lengths, strict=True):
        x, y, _ = direction_vector(azimuth, 0.0)
        points.append((swing.hinge[0] + length * x, swing.hinge[1] + length * y))
    if behind_m > 0.0:
        x, y, _ = direction_vector(swing.closed_deg - math.copysign(90.0, turn), 0.0)
        points += [(px + behind_m * x, py + behind_m * y) for px, py in points[:2]]
    positive("the height of a door leaf", high_m - low_m, "m")
    return Upright(convex.hull(points), low_m, high_m)


def clearance_m(one: Solid, other: Solid, far_m: float = math.inf) -> float:
    """Return the free distance between two solids, m, `far_m` at the most; negative: the least move that parts them.

    Exact for boxes however they lean and for upright solids, round ones with them. Against a leaning box a round solid
    counts as the 16-sided column around it (at most 2 % of its radius wider): the clearance is then told too small by
    that at most.
    """
    if isinstance(one, Upright) and isinstance(other, Upright):
        beside = convex.plan_gap_m(one.plan, other.plan) - one.radius_m - other.radius_m
        above = max(one.low_m - other.high_m, other.low_m - one.high_m)
        return min(math.hypot(beside, above) if beside > 0.0 and above > 0.0 else max(beside, above), far_m)
    # What stands far apart needs no search for its nearest edges.
    if math.isfinite(far_m) and _boxes_apart_m(_around(one), _around(other)) >= far_m:
        return far_m
    return min(convex.gap_m(body(one), body(other)), far_m)


def _around(solid: Solid) -> tuple[tuple[float, float], ...]:
    """Return the box along the room's axes around a solid, as its least and greatest x, y and z."""
    if isinstance(solid, Tilted):
        reach = (
            sum(half * abs(axis[n]) for half, axis in zip(solid.half_m, solid.axes, strict=True)) for n in range(3)
        )
        return tuple((middle - most, middle + most) for middle, most in zip(solid.middle, reach, strict=True))
    xs, ys = zip(*solid.plan, strict=True)
    # A round solid may stand for the polygon around it.
    wide = solid.radius_m / math.cos(math.pi / _SIDES)
    return ((min(xs) - wide, max(xs) + wide), (min(ys) - wide, max(ys) + wide), (solid.low_m, solid.high_m))


def _boxes_apart_m(one: tuple[tuple[float, float], ...], other: tuple[tuple[float, float], ...]) -> float:
    """Return the distance between two boxes along the room's axes, 0 where they meet."""
    return math.hypot(*(max(a - d, c - b, 0.0) for (a, b), (c, d) in zip(one, other, strict=True)))


@lru_cache(maxsize=256)
def body(solid: Solid) -> Body:
    """Return a solid as a convex body: exact for what has corners, the polygon around it for what is round."""
    if isinstance(solid, Tilted):
        corners = solid.corners
        # Corners differ along one axis where their numbers differ in one bit.
        segments = tuple(
            (corners[i], corners[i | bit]) for bit in (1, 2, 4) for i in range(len(corners)) if not i & bit
        )
        return Body(corners, solid.axes, solid.axes, segments)
    plan = solid.plan
    if len(plan) == 1:
        (x, y), reach = plan[0], solid.radius_m / math.cos(math.pi / _SIDES)
        turns = [math.tau * (k + 0.5) / _SIDES for k in range(_SIDES)]
        plan = tuple((x + reach * math.cos(turn), y + reach * math.sin(turn)) for turn in turns)
    low = tuple((x, y, solid.low_m) for x, y in plan)
    high = tuple((x, y, solid.high_m) for x, y in plan)
    around = (*range(1, len(plan)), 0)
    normals: list[Vector3] = [UP]
    edges: list[Vector3] = [UP]
    for i, j in enumerate(around):
        length = math.dist(plan[i], plan[j])
        ux, uy = (plan[j][0] - plan[i][0]) / length, (plan[j][1] - plan[i][1]) / length
        if all(abs(ux * along[1] - uy * along[0]) > _NEARLY for along in edges[1:]):
            normals.append((uy, -ux, 0.0))
            edges.append((ux, uy, 0.0))
            if len(plan) == 2:  # noqa: PLR2004  a slab without thickness ends at its edges
                normals.append((ux, uy, 0.0))
    segments = tuple(
        pair for i, j in enumerate(around) for pair in ((low[i], low[j]), (high[i], high[j]), (low[i], high[i]))
    )
    return Body((*low, *high), tuple(normals), tuple(edges), segments)


def footprint(solid: Solid) -> tuple[Point2, ...]:
    """Return the convex plan that a solid covers, corners anticlockwise; a round one's middle (add its radius)."""
    if isinstance(solid, Upright):
        return solid.plan
    return convex.hull([(x, y) for x, y, _ in solid.corners])


def radius_m(solid: Solid) -> float:
    """Return what a round solid adds to its footprint all round, m; 0 for what has corners."""
    return solid.radius_m if isinstance(solid, Upright) else 0.0


def heights_m(solid: Solid) -> tuple[float, float]:
    """Return the lowest and the highest height of a solid, m."""
    if isinstance(solid, Upright):
        return solid.low_m, solid.high_m
    heights = [z for _, _, z in solid.corners]
    return min(heights), max(heights)


def _box(middle: Point3, half: tuple[float, float, float], axes: tuple[Vector3, Vector3, Vector3]) -> Solid:
    plumb = next((n for n, axis in enumerate(axes) if abs(axis[0]) < _NEARLY and abs(axis[1]) < _NEARLY), None)
    if plumb is None:
        return Tilted(middle, half, axes)
    one, other = (n for n in range(3) if n != plumb)
    a, b = axes[one], axes[other]
    mx, my, mz = middle
    plan = convex.hull(
        [
            (mx + s * half[one] * a[0] + t * half[other] * b[0], my + s * half[one] * a[1] + t * half[other] * b[1])
            for s in (-1.0, 1.0)
            for t in (-1.0, 1.0)
        ]
    )
    return Upright(plan, mz - half[plumb], mz + half[plumb])


def _between(start: float, way: float, low: float, high: float) -> tuple[float, float]:
    if abs(way) < _NEARLY:
        return (-math.inf, math.inf) if low < start < high else (math.inf, -math.inf)
    a, b = (low - start) / way, (high - start) / way
    return (a, b) if a < b else (b, a)


def _in_disc(ox: float, oy: float, dx: float, dy: float, radius: float) -> tuple[float, float]:
    square, half, rest = dx * dx + dy * dy, ox * dx + oy * dy, ox * ox + oy * oy - radius * radius
    if square < _NEARLY * _NEARLY:
        return (-math.inf, math.inf) if rest < 0.0 else (math.inf, -math.inf)
    under = half * half - square * rest
    if under <= 0.0:
        return (math.inf, -math.inf)
    root = math.sqrt(under)
    return (-half - root) / square, (-half + root) / square
