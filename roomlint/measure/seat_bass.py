"""The bass of the subwoofers at the seats: how it differs from seat to seat, and what is lost at which note."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Any, Final, NamedTuple

from roomlint.design.base import Missing, need
from roomlint.design.quantity import Share, assumed
from roomlint.figures.domain import Refused
from roomlint.measure.figure import Figure
from roomlint.measure.view import View

if TYPE_CHECKING:
    from collections.abc import Callable

    from roomlint.design.listening import Seat, Subwoofer
    from roomlint.design.quantity import Quantity, Reading
    from roomlint.figures.bass import BassSource
    from roomlint.figures.direction import Point3
    from roomlint.figures.modal_sum import ComplexArray
    from roomlint.figures.room_response import RoomResponse
    from roomlint.measure.boundary import Source
    from roomlint.measure.world import World

DECAY_S: Final = (0.5, 0.3, 0.8)
"""Decay of a furnished home room's bass, taken for every mode, and how short and how long it may be."""
DECAY_WORDS: Final = "decay of 0.5 s for every mode, 0.3 to 0.8 s carried"
SHORT_WORDS: Final = "decay of 0.3 s for every mode, the shortest of a furnished room, where dips are shallowest"
LOW_HZ: Final = 20
HIGH_HZ: Final = 80
BAND_HZ: Final = tuple(float(hz) for hz in range(14, 114))
"""Half an octave beyond what is judged, so that a seat's own level has both sides of every note."""
CLOSED: Final = "closed room with rigid walls"
NUMERICAL: Final = "modes of this shape found numerically"


class SeatDip(NamedTuple):
    """The deepest place of a seat's curve."""

    figure: Figure
    frequency: Figure


class Levels(NamedTuple):
    """The statistics of the levels at all seats, computed together; each dip as frequency and depth."""

    mean_range_db: float
    own: tuple[tuple[float, float], ...]
    """Each seat against its own level over an octave."""
    others: tuple[tuple[float, float], ...]
    """Each seat against the mean of the other seats; empty for a lone seat."""
    common: tuple[float, float]
    """Where the seat that loses least, against its own level over an octave, loses most."""


class SeatBass(View):
    """Levels at the seats as a sum over the room's modes.

    What differs from seat to seat is judged at a middle decay, the range of decays carried as uncertainty. A dip is
    judged over a third of an octave and at the shortest decay that a furnished room has: dips are shallowest there, so
    what is bad then is bad at every decay, and nobody is asked to choose between decays that nobody knows.
    """

    def placed_subwoofers(self) -> tuple[Subwoofer, ...]:
        """Return the subwoofers; raises `Missing` for one without a position."""
        for subwoofer in self.design.subwoofers:
            need(subwoofer.position, subwoofer, "position")
        return self.design.subwoofers

    def placed_seats(self) -> tuple[Seat, ...]:
        """Return the seats; raises `Missing` when there is none or one has no ear position."""
        if not self.design.seats:
            raise Missing(self.design, "seats")
        for seat in self.design.seats:
            need(seat.ear, seat, "ear")
        return self.design.seats

    def level(self, subwoofer: Subwoofer) -> Quantity | None:
        """Return a subwoofer's level: its own and the trim that is entered for it together."""
        setting = self.figures.delays.setting_of(subwoofer)
        return _together(subwoofer.level_db, setting.level_db if setting is not None else None)

    def delay(self, subwoofer: Subwoofer) -> Quantity | None:
        """Return a subwoofer's delay: its own and the one that is entered for it together."""
        setting = self.figures.delays.setting_of(subwoofer)
        return _together(subwoofer.delay_s, setting.delay_s if setting is not None else None)

    def inverted(self, source: Source) -> bool:
        """Whether a source's polarity is turned round, by itself or by what is entered for it."""
        setting = self.figures.delays.setting_of(source)
        own = bool(getattr(source, "inverted", None))
        return own != bool(setting is not None and setting.inverted)

    def _source(self, subwoofer: Subwoofer, world: World) -> BassSource:
        from roomlint.figures.bass import BassSource

        level, late = self.level(subwoofer), self.delay(subwoofer)
        return BassSource(
            world.xyz(need(subwoofer.position, subwoofer, "position")),
            world(level) if level is not None else 0.0,
            world(late) if late is not None else 0.0,
            self.inverted(subwoofer),
        )

    def response_in(self, world: World) -> RoomResponse:
        """Return the room's response in a world; refuses a shape that is too large or too intricate."""

        def solved(w: World) -> RoomResponse:
            from roomlint.figures.room_response import solve

            space = self.figures.space
            return solve(space.outline(w), space.facets(w), BAND_HZ[-1], space.sound_speed_m_s(w))

        return world.once("bass response", solved)

    @property
    def _middle_decay(self) -> Quantity:
        return self.once("middle decay", lambda: assumed(DECAY_S[0], 0.3, "s", DECAY_WORDS))

    @property
    def _short_decay(self) -> Quantity:
        return self.once("short decay", lambda: assumed(DECAY_S[1], 0.0, "s", SHORT_WORDS))

    @property
    def _solver(self) -> Reading:
        return self.once("solver", lambda: assumed(0.0, 1.0, "", NUMERICAL)).shares[0].reading

    def _levels(self, world: World, decay: Quantity) -> Levels:
        """Return the statistics of the levels at the seats in a world."""

        def found(w: World) -> Levels:
            from roomlint.figures.bass import drive

            w.assume(CLOSED)
            sources = [self._source(subwoofer, w) for subwoofer in self.placed_subwoofers()]
            ears = [w.xyz(need(seat.ear, seat, "ear")) for seat in self.placed_seats()]
            response = self.response_in(w)
            if response.found_numerically:
                w.assume(NUMERICAL)
            parts = self._pressures(w, response, [source.position for source in sources], ears, w(decay))
            return self._statistics((parts * drive(sources, BAND_HZ)).sum(axis=1))

        return world.once(("bass levels", decay.value), found)

    def _pressures(
        self, world: World, response: RoomResponse, places: list[Point3], ears: list[Point3], decay_s: float
    ) -> ComplexArray:
        """Return the pressure of each subwoofer at each ear; where a few things moved, only theirs is found anew."""
        read: dict[float, tuple[RoomResponse, list[Point3], list[Point3], ComplexArray]] = self.once("as read", dict)
        if world is self.world or decay_s not in read or read[decay_s][0] is not response:
            found = response.transfer(places, ears, BAND_HZ, decay_s)
            if world is self.world:
                read[decay_s] = (response, places, ears, found)
            return found
        _, places_read, ears_read, found = read[decay_s]
        found = found.copy()
        there = [number for number, place in enumerate(places) if place != places_read[number]]
        here = [number for number, ear in enumerate(ears) if ear != ears_read[number]]
        if there:
            found[:, there] = response.transfer([places[number] for number in there], ears, BAND_HZ, decay_s)
        if here:
            found[here] = response.transfer(places, [ears[number] for number in here], BAND_HZ, decay_s)
        return found

    @staticmethod
    def _statistics(pressure: Any) -> Levels:  # noqa: ANN401  complex pressures, seats by frequencies
        from roomlint.figures.bass import level_db, seat_spread, smoothed_db
        from roomlint.figures.bass_dips import (
            NOTE_OCTAVES,
            against_others_db,
            against_own_band_db,
            common_nulls,
            deepest_dips,
        )

        levels = level_db(pressure)
        judged = slice(BAND_HZ.index(LOW_HZ), BAND_HZ.index(HIGH_HZ) + 1)
        notes = smoothed_db(levels, BAND_HZ, 1.0 / NOTE_OCTAVES)
        own = notes - levels + against_own_band_db(levels, BAND_HZ)
        of = (BAND_HZ, LOW_HZ, HIGH_HZ)
        others = deepest_dips(against_others_db(notes), *of) if len(levels) > 1 else ()
        common = common_nulls(own, *of, -math.inf)[0]
        return Levels(
            seat_spread(levels[:, judged], BAND_HZ[judged]).mean_range_db,
            tuple((dip.hz, dip.depth_db) for dip in deepest_dips(own, *of)),
            tuple((dip.hz, dip.depth_db) for dip in others),
            (common.hz, common.depth_db),
        )

    def _changes(self, decay: Quantity) -> tuple[tuple[Reading, Levels], ...]:
        """Return the statistics with each thing that is not known at the ends of its range, one at a time."""
        return self.once(("changes", decay.value), lambda: self._find_changes(decay))

    def _find_changes(self, decay: Quantity) -> tuple[tuple[Reading, Levels], ...]:
        from roomlint.figures.bass import drive

        world, response = self.world, self.response_in(self.world)
        sources = [self._source(subwoofer, world) for subwoofer in self.placed_subwoofers()]
        places = [source.position for source in sources]
        points = [need(seat.ear, seat, "ear") for seat in self.placed_seats()]
        ears = [point.xyz for point in points]
        gains = drive(sources, BAND_HZ)
        paths = response.paths(places, ears)
        pressure = (paths.transfer(BAND_HZ, decay.value) * gains).sum(axis=1)
        found: list[tuple[Reading, Levels]] = []
        if decay.u > 0.0:
            for decay_s in DECAY_S[1:]:
                moved = (paths.transfer(BAND_HZ, decay_s) * gains).sum(axis=1)
                found.append((decay.shares[0].reading, self._statistics(moved)))
        if response.found_numerically:
            coarse = response.coarser.transfer(places, ears, BAND_HZ, decay.value)
            found.append((self._solver, self._statistics((coarse * gains).sum(axis=1))))
        moves = [(s.position, n, True) for n, s in enumerate(self.design.subwoofers) if s.position is not None]
        moves += [(point, n, False) for n, point in enumerate(points)]
        if any(value.u > 0.0 for point, _, _ in moves for value in point.values):
            by_source, by_ear = response.slopes(places, ears, BAND_HZ, decay.value)
            changes: dict[Reading, Any] = {}
            for point, number, is_source in moves:
                for axis, value in enumerate(point.values):
                    # Two places that were measured from one wall move together.
                    for share in (share for share in value.shares if share.change):
                        change = changes.setdefault(share.reading, pressure * 0.0)
                        if is_source:
                            change += share.change * (by_source[:, number, axis] * gains[number])
                        else:
                            change[number] += share.change * (by_ear[number, :, axis] * gains).sum(axis=0)
            for reading, change in changes.items():
                found += ((reading, self._statistics(pressure + way * change)) for way in (1.0, -1.0))
        return tuple(found)

    def _figure(self, name: str, decay: Quantity, pick: Callable[[Levels], float]) -> Figure:
        value = pick(self._levels(self.world, decay))

        def shares() -> list[Share]:
            largest: dict[Reading, float] = {}
            for reading, there in self._changes(decay):
                change = pick(there) - value
                if abs(change) > abs(largest.get(reading, 0.0)):
                    largest[reading] = change
            return [Share(reading, change / reading.u) for reading, change in largest.items()]

        return Figure.together(name, "dB", self.world, lambda w: pick(self._levels(w, decay)), shares)

    def seat_spread(self) -> Figure:
        """Mean over 20 to 80 Hz of the level range over all seats."""
        return self._figure("level range over the seats", self._middle_decay, lambda levels: levels.mean_range_db)

    def own_dip(self, seat: Seat) -> SeatDip:
        """Lowest level of a seat, over a third of an octave, against its own level over an octave, 20 to 80 Hz."""
        return self._dip(seat, "dip against its own band", lambda levels: levels.own)

    def other_dip(self, seat: Seat) -> SeatDip:
        """Lowest level of a seat, over a third of an octave, against the mean of the other seats, 20 to 80 Hz."""
        return self._dip(seat, "dip against the other seats", lambda levels: levels.others)

    def deepest_dip(self, seat: Seat) -> Figure:
        """Lowest level of a seat against the other seats."""
        return self.other_dip(seat).figure

    def common_null(self) -> SeatDip:
        """Level of the note that all seats lose, at the seat that loses least there, against its own octave."""
        figure = self._figure("null common to all seats", self._short_decay, lambda levels: levels.common[1])
        return SeatDip(figure, self._frequency(self._levels(self.world, self._short_decay).common[0]))

    def _dip(self, seat: Seat, name: str, which: Callable[[Levels], tuple[tuple[float, float], ...]]) -> SeatDip:
        number = self.placed_seats().index(seat)
        found = which(self._levels(self.world, self._short_decay))
        if not found:
            raise Refused("one seat has no others to compare with")
        figure = self._figure(name, self._short_decay, lambda levels: which(levels)[number][1])
        return SeatDip(figure, self._frequency(found[number][0]))

    @staticmethod
    def _frequency(hz: float) -> Figure:
        return Figure.plain("frequency", "Hz", hz, u=0.5)


def _together(own: Quantity | None, entered: Quantity | None) -> Quantity | None:
    if own is None or entered is None:
        return own if entered is None else entered
    return own + entered
