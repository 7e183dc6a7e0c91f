"""Azimuths, elevations and distances of what is heard from a seat."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, TypeAlias

from roomlint.design.base import need
from roomlint.figures import direction
from roomlint.figures.layouts import parse_label
from roomlint.measure.view import View

if TYPE_CHECKING:
    from roomlint.design.base import Pair, Point
    from roomlint.design.listening import Loudspeaker, Seat, Subwoofer
    from roomlint.measure.figure import Figure
    from roomlint.measure.world import World

Source: TypeAlias = "Loudspeaker | Subwoofer"


class Angles(View):
    """Directions and distances."""

    def place(self, source: Source) -> Point:
        """Return where a source stands."""
        return need(source.position, source, "position")

    def ear(self, seat: Seat) -> Point:
        """Return where a seat's ear is."""
        return need(seat.ear, seat, "ear")

    def azimuth_deg(self, world: World, source: Source, seat: Seat) -> float:
        """Return the azimuth of a source for a seat in a world, positive to the left, deg."""
        ear, facing = world.xyz(self.ear(seat)), world(seat.facing_deg)
        return direction.azimuth_deg(ear, facing, world.xyz(self.place(source)))

    def elevation_deg(self, world: World, source: Source, seat: Seat) -> float:
        """Return the elevation of a source above a seat's ear in a world, deg."""
        return direction.elevation_deg(world.xyz(self.ear(seat)), world.xyz(self.place(source)))

    def distance_m(self, world: World, source: Source, seat: Seat) -> float:
        """Return the distance from a source to a seat's ear in a world, m."""
        return math.dist(world.xyz(self.ear(seat)), world.xyz(self.place(source)))

    def azimuth(self, source: Source, seat: Seat) -> Figure:
        """Azimuth of a source for a seat, positive to the left."""
        return self.figure("azimuth", "deg", lambda w: self.azimuth_deg(w, source, seat), source.key, seat.key)

    def outward(self, speaker: Loudspeaker, seat: Seat) -> Figure:
        """How far a loudspeaker stands from straight ahead toward the side that its label names.

        Near the label's own angle, so that both sides of straight behind read about 180; negative on the wrong side.
        """
        label = parse_label(need(speaker.label, speaker, "label"))
        sign, nominal = label.side or 1, abs(label.azimuth_deg or 0.0)

        def compute(world: World) -> float:
            return direction.near_deg(sign * self.azimuth_deg(world, speaker, seat), nominal)

        name = "azimuth to the right" if label.side < 0 else "azimuth to the left"
        return self.figure(name, "deg", compute, speaker.key, seat.key)

    def elevation(self, source: Source, seat: Seat) -> Figure:
        """Elevation of a source above a seat's ear."""
        return self.figure("elevation", "deg", lambda w: self.elevation_deg(w, source, seat), source.key, seat.key)

    def distance(self, source: Source, seat: Seat) -> Figure:
        """Distance from a source to a seat's ear."""
        return self.figure("distance", "m", lambda w: self.distance_m(w, source, seat), source.key, seat.key)

    def included(self, pair: Pair[Loudspeaker], seat: Seat) -> Figure:
        """Angle between a left and a right loudspeaker."""

        def compute(world: World) -> float:
            return self.azimuth_deg(world, pair.left, seat) - self.azimuth_deg(world, pair.right, seat)

        return self.figure("included angle", "deg", compute)

    def base_width(self, pair: Pair[Loudspeaker]) -> Figure:
        """Distance between a left and a right loudspeaker."""
        left, right = self.place(pair.left), self.place(pair.right)
        return self.figure("distance between the pair", "m", lambda w: math.dist(w.xyz(left), w.xyz(right)))
