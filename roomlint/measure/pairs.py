"""What a left and a right of a pair have in common, and where they differ."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Final

from roomlint import cutting, plane
from roomlint.figures import direction
from roomlint.figures.domain import Refused
from roomlint.figures.layouts import parse_label
from roomlint.figures.ray import first_met
from roomlint.measure.view import View

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from roomlint.design.base import Pair
    from roomlint.design.listening import Loudspeaker, Seat
    from roomlint.figures.direction import Point3
    from roomlint.figures.enclosure import Enclosure
    from roomlint.measure.figure import Figure
    from roomlint.measure.world import World

FAR_WALL_M: Final = 2.0
"""Beyond this a surface counts as far, however far it is: what it returns is late and weak."""
_AROUND_DEG: Final = (0.0, 90.0, 180.0)


def pulled_in(shape: Enclosure, point: Point3) -> Point3:
    """Return a point, or the nearest one of the room where it lies behind a surface."""
    x, y, z = point
    if not plane.contains(shape.outline, (x, y)):
        x, y = cutting.nearest_wall(shape.outline, (x, y)).foot
    return (x, y, min(max(z, 0.0), shape.height_m((x, y))))


class Pairs(View):
    """Left against right, at one seat."""

    def angle_difference(self, pair: Pair[Loudspeaker], seat: Seat) -> Figure:
        """How much farther round one of a pair stands than the other."""
        outward = self.figures.angles.outward_deg
        return self._difference("difference of the azimuths", lambda w, one: outward(w, one, seat), pair)

    def height_difference(self, pair: Pair[Loudspeaker], seat: Seat) -> Figure:
        """Difference of a pair's elevations."""
        elevation = self.figures.angles.elevation_deg
        return self._difference("difference of the elevations", lambda w, one: elevation(w, one, seat), pair)

    def _difference(self, name: str, of: Callable[[World, Loudspeaker], float], pair: Pair[Loudspeaker]) -> Figure:
        return self.figure(name, "deg", lambda w: abs(of(w, pair.left) - of(w, pair.right)))

    def beside_the_middle(self, pairs: Sequence[Pair[Loudspeaker]], seat: Seat) -> Figure:
        """How far a seat sits to one side of the middle of every one of some pairs: of the least, and nothing of both.

        To its own left and right, in plan. One pair alone out of place, the others around the seat, moves no middle.
        """
        places = [[self.figures.angles.place(one) for one in (pair.left, pair.right)] for pair in pairs]
        ear = self.figures.angles.ear(seat)

        def compute(world: World) -> float:
            x, y, _ = direction.direction_vector(world(seat.facing_deg) + 90.0, 0.0)
            here = world.xyz(ear)
            aside = []
            for left, right in places:
                one, other = world.xyz(left), world.xyz(right)
                middle = ((one[0] + other[0]) / 2.0, (one[1] + other[1]) / 2.0)
                aside.append((here[0] - middle[0]) * x + (here[1] - middle[1]) * y)
            return max(min(aside), min(-each for each in aside), 0.0)

        return self.figure("distance beside the middle of the pairs", "m", compute)

    def distance_ratio(self, pair: Pair[Loudspeaker], seat: Seat) -> Figure:
        """Larger distance of a pair over the smaller."""

        def compute(world: World) -> float:
            near, far = sorted(self.figures.angles.distance_m(world, one, seat) for one in (pair.left, pair.right))
            if near < direction.COINCIDENT_M:
                raise Refused("a loudspeaker stands where the ear is")
            return far / near

        return self.figure("ratio of the distances", "", compute)

    def base_width(self, pair: Pair[Loudspeaker]) -> Figure:
        """Distance between a left and a right loudspeaker."""
        one, other = (self.figures.angles.place(speaker) for speaker in (pair.left, pair.right))
        return self.figure("base width", "m", lambda w: math.dist(w.xyz(one), w.xyz(other)))

    def surroundings_difference(self, pair: Pair[Loudspeaker], seat: Seat) -> Figure:
        """How much nearer one of a pair has a surface ahead, behind, or out to its own side than the other.

        Directions are the seat's, mirrored for the right one; what is farther than 2 m counts as 2 m.
        """

        def compute(world: World) -> float:
            ways = [self._ways_m(world, speaker, seat) for speaker in (pair.left, pair.right)]
            return max(abs(one - other) for one, other in zip(ways[0], ways[1], strict=True))

        return self.figure("difference of the ways to the surfaces around", "m", compute)

    def _ways_m(self, world: World, speaker: Loudspeaker, seat: Seat) -> list[float]:
        space, side = self.figures.space, parse_label(speaker.label or "").side
        shape, solids = space.enclosure(world), space.obstacles(world)
        facing = world(seat.facing_deg)
        # What hangs at a surface is at most behind it by what a tape may miss; the ways start in the room.
        start = pulled_in(shape, world.xyz(self.figures.angles.place(speaker)))
        ways = (direction.direction_vector(facing + side * around, 0.0) for around in _AROUND_DEG)
        return [min(FAR_WALL_M, first_met(shape, start, way, solids).distance_m) for way in ways]
