"""First-order reflections by mirror images: where they bounce, how late and how strong they arrive."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, NamedTuple

from roomlint.figures.delay import travel_ms
from roomlint.figures.domain import Refused
from roomlint.figures.enclosure import wall_of
from roomlint.figures.ray import sees
from roomlint.plane import ON_WALL_M

if TYPE_CHECKING:
    from collections.abc import Sequence

    from roomlint.figures.direction import Point3
    from roomlint.figures.enclosure import Enclosure, Opening, Surface
    from roomlint.figures.ray import Spanned


class Reflection(NamedTuple):
    """One bounce off one surface: which, the image of the source, the bounce point, and the two path lengths.

    `number` is that of the wall's piece or the ceiling's facet where it bounces, `opening` that of an opening there.
    """

    kind: str  # wall, ceiling or floor
    number: int
    image: Point3
    bounce: Point3
    path_m: float
    direct_m: float
    opening: int | None = None

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


def reflection_level_db(direct_m: float, reflected_m: float, absorption: float = 0.0) -> float:
    """Return a reflection's level against the direct sound, dB.

    20 log10(r0 / r1) + 10 log10(1 - a): spreading and what the surface absorbs; the source's directivity is left
    out. Lengths above 0 m, absorption coefficient in [0, 1), else Refused.
    """
    if direct_m <= 0.0 or reflected_m <= 0.0:
        raise Refused(f"path lengths must be above 0 m, not {direct_m:g} m and {reflected_m:g} m")
    if not 0.0 <= absorption < 1.0:
        raise Refused(f"an absorption coefficient is from 0 to below 1, not {absorption}")
    return 20.0 * math.log10(direct_m / reflected_m) + 10.0 * math.log10(1.0 - absorption)


def absorption_needed(direct_m: float, reflected_m: float, level_db: float) -> float:
    """Return the absorption coefficient that brings a reflection down to a level against the direct sound.

    1 - 10^((level - 20 log10(r0 / r1)) / 10), and 0 when spreading alone does it. The level is below 0 dB, the
    lengths above 0 m, else Refused.
    """
    if level_db >= 0.0:
        raise Refused(f"the level wanted must be below 0 dB re the direct sound, not {level_db} dB")
    spread = reflection_level_db(direct_m, reflected_m)
    return max(0.0, 1.0 - math.pow(10.0, (level_db - spread) / 10.0))


def reflections_in(
    shape: Enclosure,
    source: Point3,
    listener: Point3,
    solids: Sequence[Spanned] = (),
    openings: Sequence[Opening] = (),
) -> tuple[Reflection, ...]:
    """Return every first-order reflection that reaches a listener: walls in order, floor, then ceiling.

    One counts when source and listener stand in front of the surface, the bounce point lies on the real piece of it
    and neither leg is cut by a wall, the ceiling or a solid. A wall in two pieces reflects once. A bounce on an opening
    is given with that opening's number: a hole returns nothing, a window or a door leaf what it is made of. Source and
    listener are inside the room; the source's own cabinet is not among the solids.
    """
    direct = math.dist(source, listener)
    found = []
    for surface in shape.surfaces:
        before, after = surface.off_m(source), surface.off_m(listener)
        # In the surface itself, a source and its image are one: there is no reflection to speak of.
        if before <= ON_WALL_M or after <= ON_WALL_M:
            continue
        nx, ny, nz = surface.normal
        image = (source[0] - 2.0 * before * nx, source[1] - 2.0 * before * ny, source[2] - 2.0 * before * nz)
        share = before / (before + after)
        bounce = (
            image[0] + share * (listener[0] - image[0]),
            image[1] + share * (listener[1] - image[1]),
            image[2] + share * (listener[2] - image[2]),
        )
        if not shape.holds(surface, bounce):
            continue
        ends = () if shape.convex and not solids else (source, listener)
        if any(sees(shape, end, bounce, solids) is not None for end in ends):
            continue
        number = surface.number_at(bounce)
        opening = _opening_at(shape, surface, bounce, openings)
        found.append(Reflection(surface.kind, number, image, bounce, math.dist(image, listener), direct, opening))
    return tuple(found)


def _opening_at(shape: Enclosure, surface: Surface, at: Point3, openings: Sequence[Opening]) -> int | None:
    if surface.wall is None:
        return None
    along = surface.wall.along_m(at[:2])
    for number, opening in enumerate(openings):
        if opening.piece not in surface.numbers:
            continue
        aside = along - wall_of(shape, opening.piece)[1] - opening.from_left_m
        if 0.0 <= aside <= opening.width_m and 0.0 <= at[2] - opening.sill_m <= opening.height_m:
            return number
    return None
