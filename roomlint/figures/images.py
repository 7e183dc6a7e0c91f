"""First-order reflections by mirror images: where they bounce, how late and how strong they arrive."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, NamedTuple

from roomlint.figures import ceiling, plan, sight
from roomlint.figures.delay import travel_ms
from roomlint.figures.direction import Point3, Vector3, dot
from roomlint.figures.domain import Refused

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from roomlint.figures.ceiling import Facets
    from roomlint.figures.plan import Outline, Point2
    from roomlint.figures.sight import Box, Post


class Reflection(NamedTuple):
    """One bounce off one surface: which, the image of the source, the bounce point, and the two path lengths."""

    kind: str  # wall, ceiling or floor
    number: int
    image: Point3
    bounce: Point3
    path_m: float
    direct_m: float

    @property
    def excess_m(self) -> float:
        """How much longer the reflected path is than the direct one, m."""
        return self.path_m - self.direct_m

    def delay_ms(self, speed_m_s: float) -> float:
        """Return how much later than the direct sound it arrives, ms."""
        return travel_ms(self.excess_m, speed_m_s)

    def level_db(self, absorption: float = 0.0) -> float:
        """Return its level against the direct sound, dB (see `reflection_level_db`)."""
        return reflection_level_db(self.direct_m, self.path_m, absorption)


def mirrored_in_wall(point: Point3, start: Point2, end: Point2) -> Point3:
    """Return a point mirrored in the upright plane through a wall. Raises ValueError for a wall without length."""
    wx, wy = end[0] - start[0], end[1] - start[1]
    square = wx * wx + wy * wy
    if square == 0.0:
        raise Refused("a wall without length mirrors nothing")
    off = 2.0 * ((point[0] - start[0]) * wy - (point[1] - start[1]) * wx) / square
    return (point[0] - off * wy, point[1] + off * wx, point[2])


def mirrored_in_plane(point: Point3, on_plane: Point3, normal: Vector3) -> Point3:
    """Return a point mirrored in the plane through `on_plane` at right angles to the unit vector `normal`."""
    offset = (point[0] - on_plane[0], point[1] - on_plane[1], point[2] - on_plane[2])
    off = 2.0 * dot(offset, normal)
    return (point[0] - off * normal[0], point[1] - off * normal[1], point[2] - off * normal[2])


def reflection_level_db(direct_m: float, reflected_m: float, absorption: float = 0.0) -> float:
    """Return a reflection's level against the direct sound, dB.

    20 log10(r0 / r1) + 10 log10(1 - a): spreading and what the surface absorbs; the source's directivity is left
    out. Lengths above 0 m, absorption coefficient in [0, 1), else ValueError.
    """
    if direct_m <= 0.0 or reflected_m <= 0.0:
        raise Refused(f"path lengths must be above 0 m, not {direct_m:g} m and {reflected_m:g} m")
    if not 0.0 <= absorption < 1.0:
        raise Refused(f"an absorption coefficient is from 0 to below 1, not {absorption}")
    return 20.0 * math.log10(direct_m / reflected_m) + 10.0 * math.log10(1.0 - absorption)


def absorption_needed(direct_m: float, reflected_m: float, level_db: float) -> float:
    """Return the absorption coefficient that brings a reflection down to a level against the direct sound.

    1 - 10^((level - 20 log10(r0 / r1)) / 10), and 0 when spreading alone does it. The level is below 0 dB, the
    lengths above 0 m, else ValueError.
    """
    if level_db >= 0.0:
        raise Refused(f"the level wanted must be below 0 dB re the direct sound, not {level_db} dB")
    spread = reflection_level_db(direct_m, reflected_m)
    return max(0.0, 1.0 - math.pow(10.0, (level_db - spread) / 10.0))


def cancellation_db(direct_m: float, reflected_m: float, reflection_factor: float = 1.0) -> float:
    """Return the level at a notch where a reflection cancels the direct sound, dB re the direct sound alone.

    20 log10(1 - g), g = R r0 / r1. The pressure reflection factor R in [0, 1], the reflected path longer than the
    direct one, else ValueError.
    """
    return 20.0 * math.log10(1.0 - _strength(direct_m, reflected_m, reflection_factor))


def reinforcement_db(direct_m: float, reflected_m: float, reflection_factor: float = 1.0) -> float:
    """Return the level where a reflection adds to the direct sound, dB: 20 log10(1 + g) (see `cancellation_db`)."""
    return 20.0 * math.log10(1.0 + _strength(direct_m, reflected_m, reflection_factor))


def reflections(
    source: Point3,
    listener: Point3,
    outline: Outline,
    facets: Facets,
    obstacles: Sequence[Box | Post] = (),
) -> tuple[Reflection, ...]:
    """Return every first-order reflection that reaches a listener: floor, ceiling facets, then walls in order.

    One counts when source and listener stand in front of the surface, the bounce point lies on the surface itself
    and neither leg is cut by a wall or an obstacle. Source and listener are inside the room.
    """
    found = (
        *_floor_and_ceiling(source, listener, outline, facets),
        *_walls(source, listener, outline, facets),
    )
    convex = plan.is_convex(outline)
    return tuple(bounce for bounce in found if _free(bounce, source, listener, None if convex else outline, obstacles))


def _floor_and_ceiling(source: Point3, listener: Point3, outline: Outline, facets: Facets) -> Iterator[Reflection]:
    bounce = _bounce("floor", 0, source, listener, (0.0, 0.0, 0.0), (0.0, 0.0, 1.0))
    if bounce is not None and plan.contains(outline, bounce.bounce[:2]):
        yield bounce
    for number, facet in enumerate(facets):
        x, y = facet.outline[0]
        bounce = _bounce("ceiling", number, source, listener, (x, y, facet.height_m((x, y))), facet.normal)
        if bounce is not None and plan.contains(facet.outline, bounce.bounce[:2]):
            yield bounce


def _walls(source: Point3, listener: Point3, outline: Outline, facets: Facets) -> Iterator[Reflection]:
    for number, (start, end) in enumerate(plan.walls(outline)):
        nx, ny = plan.inward_normal(outline, number)
        bounce = _bounce("wall", number, source, listener, (*start, 0.0), (nx, ny, 0.0))
        if bounce is None:
            continue
        foot = bounce.bounce[:2]
        if plan.distance_to_segment_m(foot, start, end) > plan.ON_WALL_M:
            continue
        if 0.0 <= bounce.bounce[2] <= ceiling.height_m(facets, foot):
            yield bounce


def _bounce(
    kind: str, number: int, source: Point3, listener: Point3, on_plane: Point3, normal: Vector3
) -> Reflection | None:
    before = dot((source[0] - on_plane[0], source[1] - on_plane[1], source[2] - on_plane[2]), normal)
    after = dot((listener[0] - on_plane[0], listener[1] - on_plane[1], listener[2] - on_plane[2]), normal)
    # In the surface itself, a source and its image are one: there is no reflection to speak of.
    if before <= plan.ON_WALL_M or after <= plan.ON_WALL_M:
        return None
    image = mirrored_in_plane(source, on_plane, normal)
    share = before / (before + after)
    at = (
        image[0] + share * (listener[0] - image[0]),
        image[1] + share * (listener[1] - image[1]),
        image[2] + share * (listener[2] - image[2]),
    )
    return Reflection(kind, number, image, at, math.dist(image, listener), math.dist(source, listener))


def _free(
    bounce: Reflection,
    source: Point3,
    listener: Point3,
    outline: Outline | None,
    obstacles: Sequence[Box | Post],
) -> bool:
    for end in (source, listener):
        if outline is not None and sight.wall_between(end[:2], bounce.bounce[:2], outline) is not None:
            return False
        if obstacles and sight.obstacle_between(end, bounce.bounce, obstacles) is not None:
            return False
    return True


def _strength(direct_m: float, reflected_m: float, reflection_factor: float) -> float:
    if not 0.0 < direct_m < reflected_m:
        raise Refused(
            f"the reflected path must be longer than the direct one, not {reflected_m:g} m and {direct_m:g} m"
        )
    if not 0.0 <= reflection_factor <= 1.0:
        raise Refused(f"a pressure reflection factor is from 0 to 1, not {reflection_factor}")
    return reflection_factor * direct_m / reflected_m
