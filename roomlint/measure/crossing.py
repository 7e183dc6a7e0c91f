"""Subwoofers and a loudspeaker in the band that they share around its crossover, as set, at a seat."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Final

from roomlint.design.base import Missing, need
from roomlint.design.quantity import Share
from roomlint.measure.figure import Figure
from roomlint.measure.seat_bass import BAND_HZ
from roomlint.measure.view import View

if TYPE_CHECKING:
    from collections.abc import Sequence

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
ENDS: Final = ("loudspeaker", "ear")
"""What the points of a sum end with, after the subwoofers."""
NOWHERE: Final = (0.0, 0.0, 0.0)
"""What a source is set to does not depend on where it stands."""
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
        subwoofers = len(points) - len(ENDS)

        def compute(world: World) -> float:
            world.assume(FILTERS)
            hertz, gains = self._driven(world, speaker, crossover)
            places = [world.xyz(point) for point in points]
            pressures = self._pressures(hertz, self.figures.bass.decays_s(world), places[:-1], places[-1:])
            return _kindest(pressures, range(subwoofers + 1), 0, gains)

        def shares() -> list[Share]:
            hertz, gains = self._driven(self.world, speaker, crossover)
            read, as_read = [point.xyz for point in points], range(subwoofers + 1)
            sources, ears = list(read[:-1]), list(read[-1:])
            moves: list[tuple[Share, list[int], int]] = []
            for number, point in enumerate(points):
                for axis, value in enumerate(point.values):
                    for share in (share for share in value.shares if share.change):
                        x, y, z = (at + share.change * (along == axis) for along, at in enumerate(read[number]))
                        chosen = list(as_read)
                        if number < len(as_read):
                            chosen[number] = len(sources)
                            sources.append((x, y, z))
                            moves.append((share, chosen, 0))
                        else:
                            moves.append((share, chosen, len(ears)))
                            ears.append((x, y, z))
            # All that may be a little off is looked at together: what is small costs by the call.
            pressures = self._pressures(hertz, self.figures.bass.decays_s(self.world), sources, ears)
            now = _kindest(pressures, as_read, 0, gains)
            changes: dict[object, Share] = {}
            for share, chosen, ear in moves:
                slope = (_kindest(pressures, chosen, ear, gains) - now) / share.reading.u
                known = changes.get(share.reading)
                changes[share.reading] = Share(share.reading, slope + (known.slope if known is not None else 0.0))
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

    def _pressures(
        self, hertz: tuple[float, ...], decays: Sequence[float], sources: Sequence[Point3], ears: Sequence[Point3]
    ) -> list[ComplexArray]:
        """Return the pressure at each ear of each source alone, (ears, sources, frequencies), decay by decay."""
        response = self._response(hertz[-1])
        paths = response.paths(sources, ears)
        return [paths.weighed(self._weights(response, hertz, decay_s)) for decay_s in decays]

    def _driven(
        self, world: World, speaker: Loudspeaker, crossover: Quantity
    ) -> tuple[tuple[float, ...], ComplexArray]:
        """Return the frequencies around a crossover and what the subwoofers and the loudspeaker are set to there."""
        from roomlint.figures.bass import BassSource, LowPass, drive, high_pass, low_pass

        bass, corner = self.figures.bass, world(crossover)
        hertz = tuple(float(hz) for hz in range(math.ceil(corner / HALF_OCTAVE), math.floor(corner * HALF_OCTAVE) + 1))
        subwoofers = bass.placed_subwoofers()
        sources = [
            BassSource(NOWHERE, bass.level_of(world, one), self.late_s(world, one), bass.inverted(one))
            for one in subwoofers
        ]
        sources.append(BassSource(NOWHERE, 0.0, self.late_s(world, speaker), bass.inverted(speaker)))
        gains = drive(sources, hertz)
        shared = LowPass(corner)
        gains[:-1] *= low_pass(shared, hertz)
        gains[-1] *= high_pass(shared, hertz)
        for number, one in enumerate(subwoofers if bass.are_filtered() else ()):
            if one.low_pass_hz is not None:
                gains[number] *= low_pass(LowPass(world(one.low_pass_hz)), hertz)
        return hertz, gains


def _kindest(pressures: list[ComplexArray], chosen: Sequence[int], ear: int, gains: ComplexArray) -> float:
    """Return how much louder the chosen sources, of which the last is the loudspeaker, are together at an ear, dB."""
    from roomlint.figures.bass import together_db

    driven = (decay[ear, list(chosen)] * gains for decay in pressures)
    return max(together_db(pressure[:-1].sum(axis=0), pressure[-1]) for pressure in driven)
