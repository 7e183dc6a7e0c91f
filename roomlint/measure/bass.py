"""The bass of the subwoofers at the seats, and what the room's proportions do to it."""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING, Any, Final, NamedTuple

from roomlint.design.base import Missing, need
from roomlint.design.quantity import Share, assumed
from roomlint.figures import modes
from roomlint.figures.domain import Refused
from roomlint.measure.figure import Figure
from roomlint.measure.view import View

if TYPE_CHECKING:
    from collections.abc import Callable

    from roomlint.design.listening import Loudspeaker, Seat, Subwoofer
    from roomlint.design.products import Transducer
    from roomlint.design.quantity import Quantity, Reading
    from roomlint.figures.bass import BassSource
    from roomlint.figures.direction import Point3
    from roomlint.figures.room_response import RoomResponse
    from roomlint.measure.boundary import Source
    from roomlint.measure.world import World

DECAY_S: Final = (0.5, 0.3, 0.8)
"""Decay of a furnished home room's bass, taken for every mode, and how short and how long it may be."""
LOW_HZ: Final = 20
HIGH_HZ: Final = 80
OVER_HZ: Final = 113
"""Half an octave beyond the band, so that a seat's own level has both sides of it."""
AXIAL_TOP_HZ: Final = 200.0
CLOSED: Final = "closed room with rigid walls"
DECAY_WORDS: Final = "decay of 0.5 s for every mode, 0.3 to 0.8 s carried"
NUMERICAL: Final = "modes of this shape found numerically"
ROW_PITCH_M: Final = 0.6
"""Less than this from front to rear, seats stand in one row."""


class SeatDip(NamedTuple):
    """The deepest place of a seat's curve."""

    figure: Figure
    frequency: Figure


class Levels(NamedTuple):
    """The statistics of the levels at all seats, computed together."""

    mean_range_db: float
    own_dip: tuple[tuple[float, float], ...]
    """Frequency and depth of each seat against its own smoothed level."""
    other_dip: tuple[tuple[float, float], ...]
    """The same against the mean of the other seats; empty for a lone seat."""


class Bass(View):
    """Modes of the room and what they do at the seats."""

    @property
    def is_box(self) -> bool:
        """Whether the formulas of a box hold."""
        return self.figures.space.is_box

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

    def response(self) -> RoomResponse:
        """Return the room's response as read; refuses a shape that is too large or too intricate."""

        def solved(world: World) -> RoomResponse:
            from roomlint.figures.room_response import solve

            space = self.figures.space
            return solve(space.outline(world), space.facets(world), float(OVER_HZ), space.sound_speed_m_s(world))

        return self.world.once("bass response", solved)

    def _band(self) -> list[float]:
        return [float(hz) for hz in range(LOW_HZ, OVER_HZ + 1)]

    def levels(self) -> Levels:
        """Return the statistics of the levels at the seats as read."""

        def found(world: World) -> Levels:
            from roomlint.figures.bass import drive, level_db

            sources = [self._source(subwoofer, world) for subwoofer in self.placed_subwoofers()]
            ears = [world.xyz(need(seat.ear, seat, "ear")) for seat in self.placed_seats()]
            parts = self.response().transfer([source.position for source in sources], ears, self._band(), DECAY_S[0])
            return self._statistics(level_db((parts * drive(sources, self._band())).sum(axis=1)))

        return self.world.once("bass levels", found)

    def _statistics(self, levels_db: Any) -> Levels:  # noqa: ANN401  an array of seats by frequencies
        from roomlint.figures.bass import seat_spread
        from roomlint.figures.bass_dips import against_others_db, against_own_band_db, deepest_dips

        band = self._band()
        inside = HIGH_HZ - LOW_HZ + 1
        own = deepest_dips(against_own_band_db(levels_db, band), band, LOW_HZ, HIGH_HZ)
        others = deepest_dips(against_others_db(levels_db), band, LOW_HZ, HIGH_HZ) if len(levels_db) > 1 else ()
        return Levels(
            seat_spread(levels_db[:, :inside], band[:inside]).mean_range_db,
            tuple((dip.hz, dip.depth_db) for dip in own),
            tuple((dip.hz, dip.depth_db) for dip in others),
        )

    def _changes(self) -> tuple[tuple[Reading, Levels], ...]:
        """Return the statistics with each thing that is not known at the end of its range, one at a time."""
        return self.once("changes", self._find_changes)

    def _find_changes(self) -> tuple[tuple[Reading, Levels], ...]:
        from roomlint.figures.bass import drive, level_db

        sources = [self._source(subwoofer, self.world) for subwoofer in self.placed_subwoofers()]
        places = [source.position for source in sources]
        points = [need(seat.ear, seat, "ear") for seat in self.placed_seats()]
        ears = [point.xyz for point in points]
        band, response = self._band(), self.response()
        gains = drive(sources, band)
        paths = response.paths(places, ears)
        parts = paths.transfer(band, DECAY_S[0])
        found: list[tuple[Reading, Levels]] = []

        def add(reading: Reading, pressure: Any) -> None:  # noqa: ANN401  complex pressures
            found.append((reading, self._statistics(level_db(pressure))))

        for decay_s in DECAY_S[1:]:
            add(self._decay, (paths.transfer(band, decay_s) * gains).sum(axis=1))
        if response.found_numerically:
            coarse = response.coarser.transfer(places, ears, band, DECAY_S[0])
            add(self._solver, (coarse * gains).sum(axis=1))
        moves = [(s.position, n, True) for n, s in enumerate(self.design.subwoofers) if s.position is not None]
        moves += [(point, n, False) for n, point in enumerate(points)]
        if any(value.u > 0.0 for point, _, _ in moves for value in point.values):
            by_source, by_ear = response.slopes(places, ears, band, DECAY_S[0])
            pressure = (parts * gains).sum(axis=1)
            for point, number, is_source in moves:
                for axis, value in enumerate(point.values):
                    if value.u <= 0.0:
                        continue
                    moved = pressure.copy()
                    if is_source:
                        moved += value.u * (by_source[:, number, axis] * gains[number])
                    else:
                        moved[number] += value.u * (by_ear[number, :, axis] * gains).sum(axis=0)
                    add(value.shares[0].reading, moved)
        return tuple(found)

    @property
    def _decay(self) -> Reading:
        return self.once("decay", lambda: assumed(DECAY_S[0], 0.3, "s", DECAY_WORDS)).shares[0].reading

    @property
    def _solver(self) -> Reading:
        return self.once("solver", lambda: assumed(0.0, 1.0, "", NUMERICAL)).shares[0].reading

    def _figure(self, name: str, pick: Callable[[Levels], float]) -> Figure:
        value = pick(self.levels())

        def shares() -> list[Share]:
            largest: dict[Reading, float] = {}
            for reading, there in self._changes():
                largest[reading] = max(largest.get(reading, 0.0), abs(pick(there) - value))
            return [Share(reading, change / reading.u) for reading, change in largest.items() if reading.u > 0.0]

        points = [s.position for s in self.placed_subwoofers()] + [seat.ear for seat in self.placed_seats()]
        readings = [share.reading for point in points if point is not None for q in point.values for share in q.shares]
        told = (DECAY_WORDS, CLOSED, *((NUMERICAL,) if self.response().found_numerically else ()))
        return Figure.many(name, "dB", value, shares, tuple(dict.fromkeys((*readings, self._decay))), told)

    def seat_spread(self) -> Figure:
        """Mean over 20 to 80 Hz of the level range over all seats."""
        return self._figure("level range over the seats", lambda levels: levels.mean_range_db)

    def own_dip(self, seat: Seat) -> SeatDip:
        """Lowest level of a seat against its own level smoothed over an octave, 20 to 80 Hz."""
        return self._dip(seat, "dip against its own band", lambda levels: levels.own_dip)

    def other_dip(self, seat: Seat) -> SeatDip:
        """Lowest level of a seat against the mean of the other seats, 20 to 80 Hz."""
        return self._dip(seat, "dip against the other seats", lambda levels: levels.other_dip)

    def deepest_dip(self, seat: Seat) -> Figure:
        """Lowest level of a seat against the other seats."""
        return self.other_dip(seat).figure

    def _dip(self, seat: Seat, name: str, which: Callable[[Levels], tuple[tuple[float, float], ...]]) -> SeatDip:
        self.placed_subwoofers()
        number = self.placed_seats().index(seat)
        if not which(self.levels()):
            raise Refused("one seat has no others to compare with")
        hz = which(self.levels())[number][0]
        figure = self._figure(name, lambda levels: which(levels)[number][1])
        return SeatDip(figure, Figure.plain("frequency", "Hz", hz, u=0.5))

    def common_null(self) -> SeatDip | None:
        """Return the deepest place at which every seat falls in against its own band; None when there is none."""
        self.placed_subwoofers()
        self.placed_seats()
        dips = self.levels().own_dip
        low, high = min(hz for hz, _ in dips), max(hz for hz, _ in dips)
        # A null of all seats stands at one note, within a semitone or two.
        if high > low * _TOGETHER:
            return None
        figure = self._figure("null common to all seats", lambda levels: max(depth for _, depth in levels.own_dip))
        return SeatDip(figure, Figure.plain("frequency", "Hz", (low + high) / 2.0, u=(high - low) / 2.0 + 0.5))

    def rows(self) -> int:
        """Return the number of rows: by their numbers, or by the steps between the ears from front to rear."""
        seats = self.placed_seats()
        named = {seat.row for seat in seats if seat.row is not None}
        ears = sorted(need(seat.ear, seat, "ear").y.value for seat in seats)
        steps = sum(after - before >= ROW_PITCH_M for before, after in pairwise(ears))
        return max(len(named), steps + 1)

    def off_middle(self, seat: Seat, axis: str) -> Figure:
        """How far a seat is from the middle of the room's width or length, in percent of it."""
        ear, shell = need(seat.ear, seat, "ear"), self.design.shell
        at, side = (ear.x, shell.width_m) if axis == "width" else (ear.y, shell.length_m)
        return self.figure(f"distance from the middle of the {axis}", "%", lambda w: abs(w(at) / w(side) - 0.5) * 100)

    def driven(self, axis: str, order: int) -> float:
        """Return how strongly the subwoofers as set drive a mode along the width or length together, 0 to 1."""

        def found(world: World) -> float:
            from roomlint.figures.bass import mode_drive

            indices = (order, 0, 0) if axis == "width" else (0, order, 0)
            sources = [self._source(subwoofer, world) for subwoofer in self.placed_subwoofers()]
            space = self.figures.space
            return abs(mode_drive(space.box_m(world), indices, sources, space.sound_speed_m_s(world)))

        return self.world.once(("driven", axis, order), found)

    def second_node(self, seat: Seat, axis: str) -> Figure:
        """How far a seat is from the nearest node of the second mode, in percent of the side."""
        ear, shell = need(seat.ear, seat, "ear"), self.design.shell
        at, side = (ear.x, shell.width_m) if axis == "width" else (ear.y, shell.length_m)

        def compute(world: World) -> float:
            share = world(at) / world(side)
            return min(abs(share - 0.25), abs(share - 0.75)) * 100

        return self.figure(f"distance from the node of the second {axis} mode", "%", compute)

    def data(self, source: Source) -> Transducer:
        """Return the loudspeaker data of a source's product."""
        product = need(source.product, source, "product")
        return need(product.loudspeaker, product, "loudspeaker")

    def crossover(self, speaker: Loudspeaker) -> Quantity | None:
        """Return the crossover entered for a loudspeaker."""
        setting = self.figures.delays.setting_of(speaker)
        return setting.crossover_hz if setting is not None else None

    def crossover_ratio(self, speaker: Loudspeaker, crossover: Quantity) -> Figure:
        """Crossover entered for a loudspeaker over its product's lower limit."""
        product = need(speaker.product, speaker, "product")
        limit = need(self.data(speaker).low_limit_hz, product, "loudspeaker.low_limit")
        return self.figure("crossover over the lower limit", "", lambda w: w(crossover) / w(limit))

    def highest_crossover(self) -> Quantity | None:
        """Return the highest crossover entered for any loudspeaker; None when none is."""
        entered = [setting.crossover_hz for setting in self.design.calibration.settings]
        return max((hz for hz in entered if hz is not None), key=lambda hz: hz.value, default=None)

    def upper_reach(self, subwoofer: Subwoofer, crossover: Quantity) -> Figure:
        """Upper limit of a subwoofer over a crossover."""
        product = need(subwoofer.product, subwoofer, "product")
        limit = need(self.data(subwoofer).high_limit_hz, product, "loudspeaker.high_limit")
        return self.figure("upper limit over the crossover", "", lambda w: w(limit) / w(crossover))

    def low_pass_ratio(self, subwoofer: Subwoofer, crossover: Quantity) -> Figure:
        """Low-pass of a subwoofer over the highest crossover."""
        corner = need(subwoofer.low_pass_hz, subwoofer, "low_pass")
        return self.figure("low-pass over the crossover", "", lambda w: w(corner) / w(crossover))

    def upper_end(self, source: Source) -> Figure:
        """Upper limit of a source's product."""
        product = need(source.product, source, "product")
        limit = need(self.data(source).high_limit_hz, product, "loudspeaker.high_limit")
        return self.figure("upper limit", "Hz", lambda w: w(limit))

    def sides(self, world: World) -> Point3:
        """Return length, width and height of a box, the longer plan side first."""
        width, length, height = self.figures.space.box_m(world)
        return max(width, length), min(width, length), height

    def length_ratio(self) -> Figure:
        """Length over height of a box room."""
        return self.figure("length over height", "", lambda w: modes.proportion(self.sides(w)).length_ratio)

    def proportion_window(self) -> tuple[float, float]:
        """Return the window of the length ratio; its low edge above its high one when no length meets it."""
        shape = modes.proportion(self.sides(self.world))
        return shape.lower, min(shape.upper, _LESS_THAN_TIMES_HEIGHT)

    def width_ratio(self) -> Figure:
        """Width over height of a box room."""
        return self.figure("width over height", "", lambda w: self.sides(w)[1] / self.sides(w)[2])

    def axial_step(self, *, largest: bool) -> Figure | None:
        """Smallest or largest step between two axial modes below 200 Hz; None with fewer than two."""

        def steps(world: World) -> list[float]:
            found = modes.axial_modes(
                self.figures.space.box_m(world), AXIAL_TOP_HZ, self.figures.space.sound_speed_m_s(world)
            )
            return [gap.gap_hz for gap in modes.gaps(found)]

        if not steps(self.world):
            return None
        name = "largest step between axial modes" if largest else "smallest step between axial modes"
        pick = max if largest else min
        return self.figure(name, "Hz", lambda w: pick(steps(w)))

    def volume(self) -> Figure:
        """Volume of the room."""
        return self.figure("volume", "m3", self.figures.space.volume_m3)


def _together(own: Quantity | None, entered: Quantity | None) -> Quantity | None:
    if own is None or entered is None:
        return own if entered is None else entered
    return own + entered


_TOGETHER: Final = 1.12
"""Two semitones: dips this close in frequency are one null of the room."""
_LESS_THAN_TIMES_HEIGHT: Final = 3.0
"""Both plan sides stay under three times the height."""
