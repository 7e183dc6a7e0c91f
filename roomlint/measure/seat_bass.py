"""The bass of the subwoofers at the seats: how it differs from seat to seat, and what is lost at which note."""

from __future__ import annotations

import math
from dataclasses import replace
from typing import TYPE_CHECKING, Final, NamedTuple, TypeAlias

from roomlint.design.base import Missing, need
from roomlint.design.quantity import Share, assumed
from roomlint.figures.domain import Refused
from roomlint.measure.figure import Figure
from roomlint.measure.view import View

if TYPE_CHECKING:
    from collections.abc import Callable

    from roomlint.design.listening import Seat, Subwoofer
    from roomlint.design.quantity import Quantity, Reading
    from roomlint.figures.bass import BassSource, LowPass
    from roomlint.figures.direction import Point3
    from roomlint.figures.modal_sum import Array, ComplexArray
    from roomlint.figures.room_response import Paths, RoomResponse
    from roomlint.measure.boundary import Source
    from roomlint.measure.world import World

DECAYS_S: Final = (0.3, 0.5, 0.8)
"""Decay of every mode: the shortest, a middle and the longest that a furnished home room has in the bass."""
LONGEST_S: Final = 2.0
"""No room of a home rings longer in the bass, whatever its walls: doors and panes give. Practice, ours."""
SHORTEST_S: Final = 0.05
"""No room is as dead; of a measurement that could be naught."""
DECAY_WORDS: Final = "decay of 0.3 to 0.8 s for every mode, the kindest told"
OWN_WORDS: Final = "decay of {:.1f} to {:.1f} s for every mode by the room's finishes at 125 Hz, the kindest told"
LOW_HZ: Final = 20
HIGH_HZ: Final = 80
BAND_HZ: Final = tuple(float(hz) for hz in range(14, 114))
"""Half an octave beyond what is judged, so that a seat's own level has both sides of every note."""
CLOSED: Final = "closed room with rigid walls"
OWN_LOW_PASS: Final = "a subwoofer's own low-pass of the fourth order"  # noqa: S105  a filter
NUMERICAL: Final = "modes of this shape found numerically"

Best: TypeAlias = "Callable[..., float]"
"""`max` or `min`, whichever is kind."""


def _decay_words(decays_s: tuple[float, float, float]) -> str:
    if decays_s == DECAYS_S:
        return DECAY_WORDS
    return OWN_WORDS.format(decays_s[0], decays_s[2])


class SeatDip(NamedTuple):
    """The deepest place of a seat's curve."""

    figure: Figure
    frequency: Figure


class Levels(NamedTuple):
    """The statistics of the levels at all seats, computed together, for one set of levels or for a stack of them."""

    range_db: Array
    """Mean over the band of the loudest less the quietest seat."""
    own: tuple[Array, Array]
    """Each seat over a third of an octave against its own level over an octave: where it is lowest, and how low."""
    others: tuple[Array, Array] | None
    """Each seat over a third of an octave against the mean of the other seats; None for a lone seat."""
    common: tuple[Array, Array]
    """Where the seat that loses least, against its own level over an octave, loses most."""


class SeatBass(View):
    """Levels at the seats as a sum over the room's modes.

    How fast the bass of a room decays few files know, and it moves a dip by some decibels. Each figure is computed at
    a short, a middle and a long decay, or at the measured one and to either side of it by its uncertainty, and the
    kindest of the three is told: what is bad at it is bad at all of them, and nobody is asked to choose between decays
    that nobody knows. A dip is judged over a third of an octave: narrower ones
    fill in and move with a chair.
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

    def decays_s(self, world: World) -> tuple[float, float, float]:
        """Return the shortest, a middle and the longest decay of the bass: as measured, by finishes, or of homes.

        Hard walls ring longer than homes do on average; of soft ones the tables end at 125 Hz, above what is asked, so
        that nothing is told as shorter. The shortest stays one of homes: what is bad at it is bad.
        """
        survey = self.design.survey
        if survey.bass_decay_s is None:
            found = self._by_finishes()
            world.assume(_decay_words(found))
            return found
        middle, u = world(survey.bass_decay_s), survey.bass_decay_s.u
        return max(middle - u, SHORTEST_S), middle, middle + u

    def _by_finishes(self) -> tuple[float, float, float]:
        """Return the decays by what the room is lined with, those of homes where its file does not say."""

        def find() -> tuple[float, float, float]:
            try:
                low, high = self.figures.decaying.modes_s()
            except (Missing, Refused):
                return DECAYS_S
            short, _, long = DECAYS_S
            shortest = min(max(low, short), long)
            # Where nothing is known to ring longer than homes do, nothing is said to; the span stays as wide.
            longest = max(long, min(high, LONGEST_S, shortest * long / short))
            return (shortest, math.sqrt(shortest * longest), longest) if shortest > short else DECAYS_S

        return self.once("decays by finishes", find)

    def level(self, subwoofer: Subwoofer) -> Quantity | None:
        """Return a subwoofer's level: its own and the trim that is entered for it together."""
        setting = self.figures.delays.setting_of(subwoofer)
        return _together(subwoofer.level_db, setting.level_db if setting is not None else None)

    def level_of(self, world: World, subwoofer: Subwoofer) -> float:
        """Return that level in a world; a subwoofer of which nothing is said plays as loud as the others."""
        level = self.level(subwoofer)
        return world(level) if level is not None else 0.0

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

        late = self.delay(subwoofer)
        return BassSource(
            world.xyz(need(subwoofer.position, subwoofer, "position")),
            self.level_of(world, subwoofer),
            world(late) if late is not None else 0.0,
            self.inverted(subwoofer),
            self._low_pass(subwoofer, world),
        )

    @staticmethod
    def _low_pass(subwoofer: Subwoofer, world: World) -> LowPass | None:
        from roomlint.figures.bass import LowPass

        if subwoofer.low_pass_hz is None:
            return None
        world.assume(OWN_LOW_PASS)
        return LowPass(world(subwoofer.low_pass_hz))

    def are_filtered(self) -> bool:
        """Whether any has a low-pass of its own; then raises `Missing` for one that does not say."""
        filtered = any(subwoofer.low_pass_hz is not None for subwoofer in self.design.subwoofers)
        for subwoofer in self.design.subwoofers if filtered else ():
            if subwoofer.low_pass_hz is None and not subwoofer.no_low_pass:
                raise Missing(subwoofer, "low_pass")
        return filtered

    def _gains(self, world: World) -> ComplexArray:
        """Return what the subwoofers are set to by frequency; a low-pass that all have alike is left out."""
        from roomlint.figures.bass import drive, evened

        filtered = self.are_filtered()
        gains = drive([self._source(subwoofer, world) for subwoofer in self.placed_subwoofers()], BAND_HZ)
        return evened(gains) if filtered else gains

    def response_in(self, world: World) -> RoomResponse:
        """Return the room's response in a world; refuses a shape that is too large or too intricate."""

        def solved(w: World) -> RoomResponse:
            from roomlint.figures.room_response import solve

            space = self.figures.space
            return solve(space.outline(w), space.facets(w), BAND_HZ[-1], space.sound_speed_m_s(w))

        return world.once("bass response", solved)

    def levels_db(self) -> tuple[tuple[float, ...], ...]:
        """Return the level of all subwoofers together at each seat, over `BAND_HZ`, as read, at the middle decay."""
        from roomlint.figures.bass import level_db

        decay_s = self.decays_s(self.world)[1]

        paths = self._paths(self.world).weighed(self.weights(self.world, decay_s))
        pressure = (paths * self._gains(self.world)).sum(axis=1)
        return tuple(tuple(row) for row in level_db(pressure).tolist())

    def mode_frequencies_hz(self) -> tuple[float, ...]:
        """Return the frequencies of the room's modes, lowest first, as far as they are well found."""
        return self.response_in(self.world).frequencies_hz

    @property
    def _solver(self) -> Reading:
        return self.once("solver", lambda: assumed(0.0, 1.0, "", NUMERICAL)).shares[0].reading

    def _paths(self, world: World) -> Paths:
        """Return the ways from the subwoofers to the seats in a world."""

        def found(w: World) -> Paths:
            places = [w.xyz(need(subwoofer.position, subwoofer, "position")) for subwoofer in self.placed_subwoofers()]
            ears = [w.xyz(need(seat.ear, seat, "ear")) for seat in self.placed_seats()]
            response = self.response_in(w)
            w.assume(CLOSED)
            if response.found_numerically:
                w.assume(NUMERICAL)
            return self._moved_paths(response, places, ears) if w is not self.world else response.paths(places, ears)

        return world.once("bass paths", found)

    def _moved_paths(self, response: RoomResponse, places: list[Point3], ears: list[Point3]) -> Paths:
        """Return the ways in a world where a few things moved: only theirs are found anew."""
        if response is not self.response_in(self.world):
            return response.paths(places, ears)
        read = self._paths(self.world)
        sources = [need(subwoofer.position, subwoofer, "position").xyz for subwoofer in self.placed_subwoofers()]
        seats = [need(seat.ear, seat, "ear").xyz for seat in self.placed_seats()]
        parts = read.parts.reshape(len(ears), len(places), -1).copy()
        there = [number for number, place in enumerate(places) if place != sources[number]]
        here = [number for number, ear in enumerate(ears) if ear != seats[number]]
        if there:
            anew = response.paths([places[number] for number in there], ears)
            parts[:, there] = anew.parts.reshape(len(ears), len(there), -1)
        if here:
            anew = response.paths(places, [ears[number] for number in here])
            parts[here] = anew.parts.reshape(len(here), len(places), -1)
        return replace(read, parts=parts.reshape(read.parts.shape))

    def _levels(self, world: World) -> Levels:
        """Return the statistics of the levels at the seats in a world, a stack of one for each decay."""

        def found(w: World) -> Levels:
            import numpy as np

            paths = self._paths(w)
            # All decays in one product: what is small costs by the call.
            decays = self.decays_s(w)
            weights = np.concatenate([self.weights(w, decay_s) for decay_s in decays], axis=1)
            ways = paths.weighed(weights)
            apart = ways.reshape(*ways.shape[:2], len(decays), -1) * self._gains(w)[:, None]
            return self.statistics(apart.sum(axis=1).swapaxes(0, 1))

        return world.once("bass levels", found)

    def weights(self, world: World, decay_s: float) -> ComplexArray:
        """Return what the room's modes bring at a decay, wherever things stand in it."""
        return world.once(("bass weights", decay_s), lambda w: self.response_in(w).weights(BAND_HZ, decay_s))

    @staticmethod
    def statistics(pressure: ComplexArray) -> Levels:
        """Return the statistics of pressures, (..., seats, frequencies)."""
        from roomlint.figures import bass_dips
        from roomlint.figures.bass import level_db, seat_range_db, smoothed_db

        levels = level_db(pressure)
        judged = levels[..., BAND_HZ.index(LOW_HZ) : BAND_HZ.index(HIGH_HZ) + 1]
        own = bass_dips.notes_against_own_band_db(levels, BAND_HZ)
        of = (BAND_HZ, LOW_HZ, HIGH_HZ)
        others = None
        if levels.shape[-2] > 1:
            notes = smoothed_db(levels, BAND_HZ, 1.0 / bass_dips.NOTE_OCTAVES)
            others = bass_dips.lowest(bass_dips.against_others_db(notes), *of)
        return Levels(
            seat_range_db(judged), bass_dips.lowest(own, *of), others, bass_dips.lowest_of_all_seats(own, *of)
        )

    def _changes(self) -> tuple[tuple[Reading, ...], Levels]:
        """Return what is not known exactly, and a stack of the statistics with each a little off, a row for each decay.

        Each reading is there twice, up and down. At every decay: which is the kindest may change with a reading.
        """
        return self.once("changes", self._find_changes)

    def _find_changes(self) -> tuple[tuple[Reading, ...], Levels]:
        import numpy as np

        world, response, decays = self.world, self.response_in(self.world), self.decays_s(self.world)
        places = [need(subwoofer.position, subwoofer, "position").xyz for subwoofer in self.placed_subwoofers()]
        points = [need(seat.ear, seat, "ear") for seat in self.placed_seats()]
        ears = [point.xyz for point in points]
        gains, paths = self._gains(world), self._paths(world)
        pressure = np.stack([(paths.weighed(self.weights(world, one)) * gains).sum(axis=1) for one in decays])
        changes: dict[Reading, tuple[ComplexArray, ComplexArray]] = {}
        if response.found_numerically:
            coarse = response.coarser.paths(places, ears)
            off = np.stack([(coarse.transfer(BAND_HZ, one) * gains).sum(axis=1) for one in decays]) - pressure
            changes[self._solver] = off, -off
        # The room first, everything in it held; then what is in it, each with the wall that it was measured from.
        of_room = self.figures.room_moves.changes(response, places, ears, BAND_HZ, decays)
        for reading, ways in of_room.items():
            up, down = (np.stack([(one * gains).sum(axis=1) for one in way]) for way in ways)
            changes[reading] = up, down
        moves = [(s.position, n, True) for n, s in enumerate(self.design.subwoofers) if s.position is not None]
        moves += [(point, n, False) for n, point in enumerate(points)]
        if any(value.u > 0.0 for point, _, _ in moves for value in point.values):
            slopes = response.slopes(places, ears, BAND_HZ, decays)
            for point, number, is_source in moves:
                for axis, value in enumerate(point.values):
                    # Two places that were measured from one wall move together.
                    for share in (share for share in value.shares if share.change):
                        change = np.zeros_like(pressure)
                        for decay, (by_source, by_ear) in enumerate(slopes):
                            if is_source:
                                change[decay] = share.change * (by_source[:, number, axis] * gains[number])
                            else:
                                change[decay, number] = share.change * (by_ear[number, :, axis] * gains).sum(axis=0)
                        up, down = changes.get(share.reading, (np.zeros_like(change), np.zeros_like(change)))
                        changes[share.reading] = up + change, down - change
        moved = [pressure + change for ways in changes.values() for change in ways]
        return tuple(changes), self.statistics(np.stack(moved or [pressure]))

    def _figure(self, name: str, pick: Callable[[Levels], Array], best: Best = max) -> Figure:
        def shares() -> list[Share]:
            readings, moved = self._changes()
            now = compute(self.world)
            changes = [best(decays) - now for decays in pick(moved).tolist()] if readings else []
            ways = zip(changes[0::2], changes[1::2], strict=True)
            return [
                Share(reading, max(up, -down, key=abs) / reading.u)
                for reading, (up, down) in zip(readings, ways, strict=True)
            ]

        def compute(world: World) -> float:
            return best(pick(self._levels(world)).tolist())

        return Figure.together(name, "dB", self.world, compute, shares)

    def seat_spread(self) -> Figure:
        """Mean over 20 to 80 Hz of the level range over all seats."""
        return self._figure("level range over the seats", lambda levels: levels.range_db, min)

    def own_dip(self, seat: Seat) -> SeatDip:
        """Lowest level of a seat, over a third of an octave, against its own level over an octave, 20 to 80 Hz."""
        number = self.placed_seats().index(seat)
        return self._dip("dip against its own band", lambda levels: _of_seat(levels.own, number))

    def other_dip(self, seat: Seat) -> SeatDip:
        """Lowest level of a seat, over a third of an octave, against the mean of the other seats, 20 to 80 Hz."""
        number = self.placed_seats().index(seat)
        return self._dip("dip against the other seats", lambda levels: _of_seat(levels.others, number))

    def deepest_dip(self, seat: Seat) -> Figure:
        """Lowest level of a seat against the other seats."""
        return self.other_dip(seat).figure

    def common_null(self) -> SeatDip:
        """Level of the note that all seats lose, at the seat that loses least there, against its own octave."""
        return self._dip("null common to all seats", lambda levels: levels.common)

    def _dip(self, name: str, which: Callable[[Levels], tuple[Array, Array]]) -> SeatDip:
        figure = self._figure(name, lambda levels: which(levels)[1])
        hz, dips_db = which(self._levels(self.world))
        return SeatDip(figure, self._frequency(float(hz[dips_db.argmax()])))

    @staticmethod
    def _frequency(hz: float) -> Figure:
        return Figure.plain("frequency", "Hz", hz, u=0.5)


def _of_seat(dips: tuple[Array, Array] | None, number: int) -> tuple[Array, Array]:
    if dips is None:
        raise Refused("one seat has no others to compare with")
    return dips[0][..., number], dips[1][..., number]


def _together(own: Quantity | None, entered: Quantity | None) -> Quantity | None:
    if own is None or entered is None:
        return own if entered is None else entered
    return own + entered
