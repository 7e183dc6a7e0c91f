"""Subwoofers and a loudspeaker in the band that they share around its crossover, as set, at a seat."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Final

from roomlint.design.base import Missing, need
from roomlint.design.quantity import Share
from roomlint.measure.figure import Figure
from roomlint.measure.seat_bass import BAND_HZ, DECAYS_S
from roomlint.measure.view import View

if TYPE_CHECKING:
    from roomlint.design.base import Point
    from roomlint.design.listening import Loudspeaker, Seat
    from roomlint.design.quantity import Quantity
    from roomlint.figures.direction import Point3
    from roomlint.figures.modal_sum import ComplexArray
    from roomlint.figures.room_response import RoomResponse
    from roomlint.measure.boundary import Source
    from roomlint.measure.world import World

FILTERS: Final = "a crossover of the fourth order, high- and low-pass alike"
HALF_OCTAVE: Final = math.sqrt(2.0)
WIDEST_HZ: Final = 156.0
"""Half an octave above 110 Hz, the highest crossover that is judged."""


class Crossing(View):
    """How the subwoofers and a loudspeaker add up through the crossover that is entered for it."""

    def late_s(self, world: World, source: Source) -> float:
        """Return the delay that is in force for a source: what is entered and its own; raises `Missing` without."""
        entered = self.figures.delays.entered_ms(world, source)
        own: Quantity | None = getattr(source, "delay_s", None)
        if entered is None and own is None:
            setting = self.figures.delays.setting_of(source)
            raise Missing(setting, "delay") if setting is not None else Missing(source, "delay")
        return (entered or 0.0) / 1e3 + (world(own) if own is not None else 0.0)

    def together(self, speaker: Loudspeaker, crossover: Quantity, seat: Seat) -> Figure:
        """Return how much louder both are as set than with the polarity of one turned round, dB.

        Over half an octave to either side of the crossover, by the room's modes, the kindest of three decays; levels
        are taken as matched.
        """
        points = self._points(speaker, seat)
        read = [point.xyz for point in points]

        def compute(world: World) -> float:
            world.assume(FILTERS)
            return self._together(world, speaker, crossover, [world.xyz(point) for point in points])

        def shares() -> list[Share]:
            now = self._together(self.world, speaker, crossover, read)
            changes: dict[object, Share] = {}
            for number, point in enumerate(points):
                for axis, value in enumerate(point.values):
                    for share in (share for share in value.shares if share.change):
                        moved = [list(place) for place in read]
                        moved[number][axis] += share.change
                        places = [(x, y, z) for x, y, z in moved]
                        change = (self._together(self.world, speaker, crossover, places) - now) / share.reading.u
                        known = changes.get(share.reading)
                        slope = change + (known.slope if known is not None else 0.0)
                        changes[share.reading] = Share(share.reading, slope)
            return list(changes.values())

        return Figure.together("level through the crossover", "dB", self.world, compute, shares)

    def _response(self, top_hz: float) -> RoomResponse:
        """Return the room's response up to a frequency: the one of the seats where it reaches there, else a wider one.

        A crossover is judged on both sides of it alike: with one side cut off, some decibels are missing.
        """
        if top_hz <= BAND_HZ[-1]:
            return self.figures.bass.response_in(self.world)

        def solved() -> RoomResponse:
            from roomlint.figures.room_response import solve

            space, world = self.figures.space, self.world
            return solve(space.outline(world), space.facets(world), WIDEST_HZ, space.sound_speed_m_s(world))

        return self.once("wider response", solved)

    def _weights(self, response: RoomResponse, hertz: tuple[float, ...], decay_s: float) -> ComplexArray:
        return self.once(("weights", decay_s, hertz), lambda: response.weights(hertz, decay_s))

    def _points(self, speaker: Loudspeaker, seat: Seat) -> list[Point]:
        bass = self.figures.bass
        subwoofers = [need(one.position, one, "position") for one in bass.placed_subwoofers()]
        return [*subwoofers, need(speaker.position, speaker, "position"), need(seat.ear, seat, "ear")]

    def _together(self, world: World, speaker: Loudspeaker, crossover: Quantity, places: list[Point3]) -> float:
        from roomlint.figures.bass import BassSource, LowPass, drive, high_pass, low_pass, together_db

        bass, corner = self.figures.bass, world(crossover)
        hertz = tuple(float(hz) for hz in range(math.ceil(corner / HALF_OCTAVE), math.floor(corner * HALF_OCTAVE) + 1))
        response = self._response(hertz[-1])
        subwoofers = bass.placed_subwoofers()
        sources = [
            BassSource(place, bass.level_of(world, one), self.late_s(world, one), bass.inverted(one))
            for one, place in zip(subwoofers, places, strict=False)
        ]
        sources.append(BassSource(places[-2], 0.0, self.late_s(world, speaker), bass.inverted(speaker)))
        gains = drive(sources, hertz)
        shared = LowPass(corner)
        gains[:-1] *= low_pass(shared, hertz)
        gains[-1] *= high_pass(shared, hertz)
        for number, one in enumerate(subwoofers):
            if one.low_pass_hz is not None:
                gains[number] *= low_pass(LowPass(world(one.low_pass_hz)), hertz)
        paths = response.paths(places[:-1], places[-1:])
        found = []
        for decay_s in DECAYS_S:
            weights = self._weights(response, hertz, decay_s)
            pressure = paths.weighed(weights)[0] * gains
            found.append(together_db(pressure[:-1].sum(axis=0), pressure[-1]))
        return max(found)
