"""Azimuths, elevations and distances of what is heard from a seat."""

from __future__ import annotations

import math
from itertools import pairwise
from typing import TYPE_CHECKING, Final, TypeAlias

from roomlint.design.base import need
from roomlint.figures import direction, overhead
from roomlint.figures.domain import Refused
from roomlint.figures.layouts import parse_label
from roomlint.measure.view import View

if TYPE_CHECKING:
    from collections.abc import Sequence

    from roomlint.design.base import Pair, Point
    from roomlint.design.listening import Loudspeaker, Seat, Subwoofer
    from roomlint.figures.layouts import Position
    from roomlint.measure.figure import Figure
    from roomlint.measure.world import World

Source: TypeAlias = "Loudspeaker | Subwoofer"

BELOW_WITHIN_DEG: Final = 45.0
"""An ear-layer loudspeaker farther round than this is not the one below an upper loudspeaker."""


class Angles(View):
    """Directions and distances."""

    def place(self, source: Source) -> Point:
        """Return where a source stands."""
        return need(source.position, source, "position")

    def ear(self, seat: Seat) -> Point:
        """Return where a seat's ear is."""
        return need(seat.ear, seat, "ear")

    def azimuth_deg(self, world: World, source: Source, seat: Seat) -> float:
        """Return the azimuth of a source for a seat in a world, positive to the left, deg; refuses overhead."""
        return world.once(("azimuth", source, seat), lambda w: self._azimuth_deg(w, source, seat))

    def _azimuth_deg(self, world: World, source: Source, seat: Seat) -> float:
        ear, facing = world.xyz(self.ear(seat)), world(seat.facing_deg)
        azimuth = overhead.set_azimuth_deg(ear, facing, world.xyz(self.place(source)))
        if azimuth is None:
            raise Refused("it is straight overhead or underfoot, where an azimuth says nothing")
        return azimuth

    def elevation_deg(self, world: World, source: Source, seat: Seat) -> float:
        """Return the elevation of a source above a seat's ear in a world, deg."""
        return direction.elevation_deg(world.xyz(self.ear(seat)), world.xyz(self.place(source)))

    def distance_m(self, world: World, source: Source, seat: Seat) -> float:
        """Return the distance from a source to a seat's ear in a world, m."""
        return math.dist(world.xyz(self.ear(seat)), world.xyz(self.place(source)))

    def outward_deg(self, world: World, speaker: Loudspeaker, seat: Seat) -> float:
        """Return how far round toward the side of its label a loudspeaker stands in a world, deg.

        Near the label's own angle, so that both sides of straight behind read about 180; negative on the wrong side.
        """
        label = parse_label(need(speaker.label, speaker, "label"))
        sign, nominal = label.side or 1, abs(label.azimuth_deg or 0.0)
        return direction.near_deg(sign * self.azimuth_deg(world, speaker, seat), nominal)

    def leftward_deg(self, world: World, source: Source, seat: Seat) -> float:
        """Return the angle of a source from the upright plane that the seat looks along, positive to the left, deg.

        The arc sine of the sideways part of its unit direction: no jump straight behind, and none overhead.
        """
        ear, facing = world.xyz(self.ear(seat)), world(seat.facing_deg)
        x, y, _ = direction.toward(ear, world.xyz(self.place(source)))
        fx, fy, _ = direction.direction_vector(facing, 0.0)
        return math.degrees(math.asin(max(-1.0, min(1.0, y * fx - x * fy))))

    def off_middle_deg(self, world: World, source: Source, seat: Seat, *, behind: bool) -> float:
        """Return the angle of a source from the upright half plane straight ahead, or straight behind, deg.

        From horizon to zenith that is the nearest direction in the half plane: sideways on its own side, and the angle
        from straight up where the source stands on the other.
        """
        ear, place = world.xyz(self.ear(seat)), world.xyz(self.place(source))
        fx, fy, _ = direction.direction_vector(world(seat.facing_deg), 0.0)
        ahead = (place[0] - ear[0]) * fx + (place[1] - ear[1]) * fy
        if (ahead <= 0.0) if behind else (ahead >= 0.0):
            return abs(self.leftward_deg(world, source, seat))
        return overhead.from_zenith_deg(ear, place)

    def azimuth(self, source: Source, seat: Seat) -> Figure:
        """Azimuth of a source for a seat, positive to the left."""
        return self.figure("azimuth", "deg", lambda w: self.azimuth_deg(w, source, seat), source, seat)

    def outward(self, speaker: Loudspeaker, seat: Seat) -> Figure:
        """How far round toward the side of its label a loudspeaker stands (see `outward_deg`)."""
        right = parse_label(need(speaker.label, speaker, "label")).side < 0
        name = "azimuth to the right" if right else "azimuth to the left"
        return self.figure(name, "deg", lambda w: self.outward_deg(w, speaker, seat), speaker, seat)

    def past_middle(self, speaker: Loudspeaker, seat: Seat) -> Figure:
        """How far past the middle a loudspeaker stands, away from the side of its label; negative on its own side."""
        return self.figure("angle past the middle", "deg", lambda w: self._past_deg(w, speaker, seat))

    def both_past_middle(self, pair: Pair[Loudspeaker], seat: Seat) -> Figure:
        """How far past the middle the nearer of two stands, when each stands on the other's side; negative else."""
        return self.figure(
            "angle past the middle",
            "deg",
            lambda w: min(self._past_deg(w, one, seat) for one in (pair.left, pair.right)),
        )

    def _past_deg(self, world: World, speaker: Loudspeaker, seat: Seat) -> float:
        side = parse_label(need(speaker.label, speaker, "label")).side
        return -side * self.leftward_deg(world, speaker, seat)

    def off_middle(self, source: Source, seat: Seat, *, behind: bool) -> Figure:
        """Angle of a source from straight ahead, or straight behind, whatever its height."""
        name = "angle from straight behind" if behind else "angle from straight ahead"
        return self.figure(name, "deg", lambda w: self.off_middle_deg(w, source, seat, behind=behind))

    def outside_azimuth(self, source: Source, position: Position, seat: Seat) -> Figure:
        """How far a source's azimuth lies outside the arcs that a layout allows, 0 inside them."""

        def compute(world: World) -> float:
            azimuth = self.azimuth_deg(world, source, seat)
            return min(direction.outside_range_deg(azimuth, *arc) for arc in position.azimuth_ranges)

        return self.figure("way round to where the layout wants it", "deg", compute)

    def outside_elevation(self, source: Source, position: Position, seat: Seat) -> Figure:
        """How far a source's elevation lies outside the range that a layout allows, 0 inside it."""
        low, high = position.elevation_range

        def compute(world: World) -> float:
            elevation = self.elevation_deg(world, source, seat)
            return max(low - elevation, elevation - high, 0.0)

        return self.figure("way up or down to where the layout wants it", "deg", compute)

    def elevation(self, source: Source, seat: Seat) -> Figure:
        """Elevation of a source above a seat's ear."""
        return self.figure("elevation", "deg", lambda w: self.elevation_deg(w, source, seat), source, seat)

    def distance(self, source: Source, seat: Seat) -> Figure:
        """Distance from a source to a seat's ear."""
        return self.figure("distance", "m", lambda w: self.distance_m(w, source, seat), source, seat, per_m=2.0)

    def over_head(self, speaker: Loudspeaker, seat: Seat) -> Figure:
        """Angle of a loudspeaker over the head: 0 ahead, 90 above, 180 behind."""

        def compute(world: World) -> float:
            ear, facing = world.xyz(self.ear(seat)), world(seat.facing_deg)
            return direction.over_head_deg(ear, facing, world.xyz(self.place(speaker)))

        return self.figure("angle over the head", "deg", compute)

    def over_bed(self, upper: Loudspeaker, beds: Sequence[Loudspeaker], seat: Seat) -> Figure | None:
        """Elevation of an upper loudspeaker above the nearest below it; None when none stands within 45 deg round."""

        def compute(world: World) -> float:
            at = self.azimuth_deg(world, upper, seat)
            asides = [abs(direction.wrap_deg(self.azimuth_deg(world, bed, seat) - at)) for bed in beds]
            bed = beds[asides.index(min(asides))]
            return self.elevation_deg(world, upper, seat) - self.elevation_deg(world, bed, seat)

        at = self.azimuth(upper, seat).value
        near = (abs(direction.wrap_deg(self.azimuth(bed, seat).value - at)) for bed in beds)
        if min(near, default=math.inf) > BELOW_WITHIN_DEG:
            return None
        return self.figure("elevation above the ear-layer loudspeaker", "deg", compute)

    def under_bed(self, lower: Loudspeaker, beds: Sequence[Loudspeaker], seat: Seat) -> Figure | None:
        """Elevation of a bottom loudspeaker below the nearest above it; None when none stands within 45 deg round."""
        over = self.over_bed(lower, beds, seat)
        return over.then("elevation below the ear-layer loudspeaker", "deg", lambda up: -up) if over else None

    def next_round(self, one: Loudspeaker, other: Loudspeaker, side: int, seat: Seat) -> Figure:
        """How much farther round a side (1 left, -1 right) a loudspeaker stands than the one before it by its label.

        Negative where the two stand in the other order. One of the middle counts on either side.
        """

        def round_deg(world: World, speaker: Loudspeaker) -> float:
            nominal = abs(parse_label(need(speaker.label, speaker, "label")).azimuth_deg or 0.0)
            return direction.near_deg(side * self.azimuth_deg(world, speaker, seat), nominal)

        return self.figure("gap between neighbours", "deg", lambda w: round_deg(w, other) - round_deg(w, one))

    def largest_gap(self, speakers: Sequence[Loudspeaker], seat: Seat) -> Figure:
        """Widest empty arc between neighbouring loudspeakers of the ear layer."""
        return self.figure(
            "largest gap between neighbours",
            "deg",
            lambda w: direction.largest_gap_deg(self.azimuth_deg(w, speaker, seat) for speaker in speakers),
        )

    def uneven_spacing(self, speakers: Sequence[Loudspeaker], seat: Seat) -> Figure:
        """Spread of the intervals between neighbouring loudspeakers of one side."""

        def compute(world: World) -> float:
            found = sorted(self.outward_deg(world, speaker, seat) for speaker in speakers)
            steps = [after - before for before, after in pairwise(found)]
            return max(steps) - min(steps)

        return self.figure("spread of the intervals", "deg", compute)
