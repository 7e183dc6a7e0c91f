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
    from roomlint.design.quantity import Quantity, Reading
    from roomlint.figures.direction import Point3
    from roomlint.figures.modal_sum import ComplexArray
    from roomlint.figures.room_response import RoomResponse
    from roomlint.measure.boundary import Source
    from roomlint.measure.world import World

FILTERS: Final = "a crossover of the fourth order, high- and low-pass alike"
HALF_OCTAVE: Final = math.sqrt(2.0)
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

        def compute(world: World) -> float:
            world.assume(FILTERS)
            hertz, gains = self._driven(world, speaker, crossover)
            places = [world.xyz(point) for point in points]
            pressures = self._pressures(hertz, self.figures.bass.decays_s(world), places[:-1], places[-1:])
            return _kindest([decay[0] for decay in pressures], gains)

        def shares() -> list[Share]:
            hertz, gains = self._driven(self.world, speaker, crossover)
            as_read, changes = self._changes(points, hertz)
            now = _kindest(as_read, gains)

            def change(by: list[ComplexArray]) -> float:
                return _kindest([read + one for read, one in zip(as_read, by, strict=True)], gains) - now

            ways = ((reading, change(up), change(down)) for reading, (up, down) in changes.items())
            return [Share(reading, max(up, -down, key=abs) / reading.u) for reading, up, down in ways]

        return Figure.together("level through the crossover", "dB", self.world, compute, shares)

    def _changes(
        self, points: list[Point], hertz: tuple[float, ...]
    ) -> tuple[list[ComplexArray], dict[Reading, tuple[list[ComplexArray], list[ComplexArray]]]]:
        """Return the pressures at the ear, decay by decay, and how each reading changes them, up and down."""
        import numpy as np

        response, decays = self._response(hertz[-1]), self.figures.bass.decays_s(self.world)
        read = [point.xyz for point in points]
        of_room = self.figures.room_moves.changes(response, read[:-1], read[-1:], hertz, decays)
        sources, ears = read[:-1], read[-1:]
        moves: list[tuple[Share, int, float]] = []
        for number, point in enumerate(points):
            for axis, value in enumerate(point.values):
                for share in (share for share in value.shares if share.change):
                    there = _inside(response, read[number], axis, share.change)
                    (sources if number < len(read) - 1 else ears).append(there)
                    moves.append((share, number, share.change / (there[axis] - read[number][axis])))
        # All that may be a little off is looked at together: what is small costs by the call.
        pressures = self._pressures(hertz, decays, sources, ears)
        count = len(read) - 1
        changes = {reading: ([u[0] for u in up], [d[0] for d in down]) for reading, (up, down) in of_room.items()}
        next_source, next_ear = count, 1
        for share, number, way in moves:
            up, down = changes.setdefault(share.reading, ([0.0] * len(decays), [0.0] * len(decays)))
            for n, decay in enumerate(pressures):
                by = np.zeros_like(decay[0, :count])
                if number < count:
                    by[number] = way * (decay[0, next_source] - decay[0, number])
                else:
                    by = way * (decay[next_ear, :count] - decay[0, :count])
                # What rests on one reading moves together: a place from the right with the room's width.
                up[n], down[n] = up[n] + by, down[n] - by
            if number < count:
                next_source += 1
            else:
                next_ear += 1
        return [decay[0, :count] for decay in pressures], changes

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


def _inside(response: RoomResponse, place: Point3, axis: int, by: float) -> Point3:
    """Return a place moved along an axis; the other way where it would leave the room."""
    import numpy as np

    there = [at + by * (along == axis) for along, at in enumerate(place)]
    if not response.shape.holds(np.array([there])).all():
        there[axis] = place[axis] - by
    return there[0], there[1], there[2]


def _kindest(pressures: list[ComplexArray], gains: ComplexArray) -> float:
    """Return how much louder sources, of which the last is the loudspeaker, are together at an ear, dB."""
    from roomlint.figures.bass import together_db

    driven = (decay * gains for decay in pressures)
    return max(together_db(pressure[:-1].sum(axis=0), pressure[-1]) for pressure in driven)
