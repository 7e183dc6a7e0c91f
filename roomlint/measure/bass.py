"""The modal response of the subwoofers at the seats, and what the room's proportions do to it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from roomlint.design.base import Missing, Value, need
from roomlint.figures import modes
from roomlint.measure.figure import Figure, figure
from roomlint.measure.view import View

if TYPE_CHECKING:
    from roomlint.design.listening import Seat, Subwoofer
    from roomlint.figures.bass import ComplexArray, SeatSpread
    from roomlint.figures.direction import Point3

DECAY_S = 0.5
"""Assumed for every mode; a furnished home room's bass falls about so fast."""
LOW_HZ, HIGH_HZ = 20, 80
AXIAL_TOP_HZ = 200.0
SUM_U_DB = 0.3
"""How far leaving out the highest modes, or finding them numerically, moves an average over the band."""
MODAL_ASSUMPTIONS = (f"decay of {DECAY_S} s for every mode", "closed room with rigid walls")


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

    def spread(self) -> SeatSpread:
        """Return how the level differs from seat to seat, 20 to 80 Hz in steps of 1 Hz.

        Raises ValueError for a point outside the room and for a ceiling that cannot be computed.
        """
        return self.once(("spread",), self._spread)

    def _spread(self) -> SeatSpread:
        from roomlint.figures.bass import BassSource, combined_db, seat_spread

        sources = [
            BassSource(
                s.position.xyz,  # type: ignore[union-attr]  # placed_subwoofers made sure
                s.level_db.value if s.level_db is not None else 0.0,
                s.delay_s.value if s.delay_s is not None else 0.0,
                bool(s.inverted),
            )
            for s in self.placed_subwoofers()
        ]
        ears = [seat.ear.xyz for seat in self.placed_seats()]  # type: ignore[union-attr]  # placed_seats made sure
        frequencies = [float(hz) for hz in range(LOW_HZ, HIGH_HZ + 1)]
        parts = self._transfer([source.position for source in sources], ears, frequencies)
        return seat_spread(combined_db(parts, sources, frequencies), frequencies)

    def _transfer(self, sources: list[Point3], ears: list[Point3], frequencies: list[float]) -> ComplexArray:
        """Return each source's pressure at each ear: by the box formula, or numerically in a room of another shape."""
        space = self.figures.space
        if space.is_box:
            from roomlint.figures.bass import Box, transfer

            return transfer(Box(space.box_m, DECAY_S, space.sound_speed_m_s), sources, ears, frequencies)
        from roomlint.figures import odd_room

        solved = odd_room.solve(space.outline, space.facets, HIGH_HZ, space.sound_speed_m_s)
        return odd_room.transfer(solved, sources, ears, frequencies, DECAY_S)

    def seat_spread(self) -> Figure:
        """Return the mean over 20 to 80 Hz of the level range over all seats."""
        return self._modal("mean level range over the seats, 20 to 80 Hz,", self.spread().mean_range_db)

    def deepest_dip(self, seat: Seat) -> Figure:
        """Return the lowest level of a seat against the mean of all seats, 20 to 80 Hz."""
        spread = self.spread()
        index = self.design.seats.index(seat)
        return self._modal(
            f"deepest dip against the other seats, at {spread.dip_hz[index]:.0f} Hz,", spread.deepest_dip_db[index]
        )

    def _modal(self, name: str, value: float) -> Figure:
        points = [source.position for source in self.design.subwoofers] + [seat.ear for seat in self.design.seats]
        inputs = tuple(point.x for point in points if point is not None)
        shape = () if self.is_box else ("modes of this shape found numerically",)
        # Carrying every coordinate's tolerance through the sum would cost a hundred sums: it is said instead.
        exact = ("positions as exact as written",) if any(value.u > 0 for value in inputs) else ()
        assumes = (*MODAL_ASSUMPTIONS, *shape, *exact, *self.figures.space.air_assumption)
        return Figure(name, value, "dB", SUM_U_DB, inputs=inputs, assumes=assumes)

    def off_middle(self, seat: Seat, axis: str) -> Figure:
        """Return how far a seat is from the middle of the room's width or length, in percent of it."""
        ear, shell = need(seat.ear, seat, "ear"), self.design.shell
        at, side = (ear.x, shell.width_m) if axis == "width" else (ear.y, shell.length_m)
        return figure(f"distance from the middle of the {axis}", "%", lambda x, w: abs(x / w - 0.5) * 100, at, side)

    def first_mode_left(self, axis: str) -> float:
        """Return how strongly the subwoofers together drive the first mode along the width or length, 0 to 1."""
        points = [need(s.position, s, "position").xyz for s in self.design.subwoofers]
        indices = (1, 0, 0) if axis == "width" else (0, 1, 0)
        return abs(modes.drive_factor(self.figures.space.box_m, indices, points))

    def crossover_ratio(self, speaker_id: str) -> Figure:
        """Return the crossover entered for a loudspeaker over its product's lower limit."""
        speaker = next(speaker for speaker in self.design.loudspeakers if speaker.id == speaker_id)
        setting = next(setting for setting in self.design.calibration.settings if setting.id == speaker_id)
        product = need(speaker.product, speaker, "product")
        data = need(product.loudspeaker, product, "loudspeaker")
        limit = need(data.low_limit_hz, product, "loudspeaker.low_limit")
        crossover = need(setting.crossover_hz, setting, "crossover")
        return figure("crossover over the lower limit", "", lambda fc, f3: fc / f3, crossover, limit)

    def highest_crossover(self) -> Value | None:
        """Return the highest crossover entered for any loudspeaker; None when none is."""
        entered = [setting.crossover_hz for setting in self.design.calibration.settings]
        return max((hz for hz in entered if hz is not None), key=lambda hz: hz.value, default=None)

    def upper_reach(self, subwoofer: Subwoofer, crossover: Value) -> Figure:
        """Return the subwoofer's upper limit over a crossover."""
        product = need(subwoofer.product, subwoofer, "product")
        data = need(product.loudspeaker, product, "loudspeaker")
        limit = need(data.high_limit_hz, product, "loudspeaker.high_limit")
        name = f"upper limit over the highest crossover ({crossover.value:.0f} Hz)"
        return figure(name, "", lambda high, fc: high / fc, limit, crossover)

    def second_mode_left(self, axis: str) -> float:
        """Return how strongly the subwoofers together drive the second mode along the width or length, 0 to 1."""
        points = [need(s.position, s, "position").xyz for s in self.design.subwoofers]
        indices = (2, 0, 0) if axis == "width" else (0, 2, 0)
        return abs(modes.drive_factor(self.figures.space.box_m, indices, points))

    def second_mode_at(self, seat: Seat, axis: str) -> Figure:
        """Return how far a seat is from the nearest node of the second mode, in percent of the side."""
        ear, shell = need(seat.ear, seat, "ear"), self.design.shell
        at, side = (ear.x, shell.width_m) if axis == "width" else (ear.y, shell.length_m)
        name = f"distance from the node of the second {axis} mode"
        return figure(name, "%", lambda x, w: min(abs(x / w - 0.25), abs(x / w - 0.75)) * 100, at, side)

    def proportion_margin(self) -> Figure:
        """Return the length ratio l/h and its window 1.1 w/h to 4.5 w/h - 4."""
        width, length, height = self.figures.space.sizes
        name = "length over height"
        return figure(name, "", lambda w, l, h: modes.proportion((l, w, h)).length_ratio, width, length, height)  # noqa: E741

    def proportion_window(self) -> tuple[float, float]:
        """Return the window for the length ratio."""
        shape = modes.proportion(self.figures.space.box_m)
        return shape.lower, shape.upper

    def nearest_whole_ratio(self) -> Figure:
        """Return the deviation, in percent, of the pair of sides that is nearest to a whole-number ratio."""
        width, length, height = self.figures.space.sizes
        names, ratio, whole, _ = min(modes.nearest_multiples(self.figures.space.box_m), key=lambda pair: abs(pair[3]))

        def compute(w: float, l: float, h: float) -> float:  # noqa: E741
            return min(abs(pair[3]) for pair in modes.nearest_multiples((w, l, h))) * 100

        return figure(f"deviation of {names} ({ratio:.2f}) from {whole}", "%", compute, width, length, height)

    def closest_axial(self) -> Figure | None:
        """Return the smallest step between two axial modes below 200 Hz."""
        gaps = modes.gaps(modes.axial_modes(self.figures.space.box_m, AXIAL_TOP_HZ, self.figures.space.sound_speed_m_s))
        return self._gap("smallest step", min(gaps, key=lambda gap: gap.gap_hz)) if gaps else None

    def widest_axial(self) -> Figure | None:
        """Return the largest step between two axial modes below 200 Hz."""
        gaps = modes.gaps(modes.axial_modes(self.figures.space.box_m, AXIAL_TOP_HZ, self.figures.space.sound_speed_m_s))
        return self._gap("largest step", max(gaps, key=lambda gap: gap.gap_hz)) if gaps else None

    def _gap(self, words: str, gap: modes.Gap) -> Figure:
        name = f"{words} between axial modes ({gap.lower.frequency_hz:.1f} and {gap.upper.frequency_hz:.1f} Hz)"
        inputs: tuple[Value, ...] = self.figures.space.sizes
        return Figure(name, gap.gap_hz, "Hz", inputs=inputs, assumes=self.figures.space.air_assumption)

    def uneven_bands(self) -> tuple[list[float], list[float]]:
        """Return the third-octave centres where the mode count falls, and where few modes coincide."""
        bands = modes.third_octave_counts(self.figures.space.box_m, self.figures.space.sound_speed_m_s)
        falling = [band.centre_hz for band in modes.falling_bands(bands)]
        return falling, [band.centre_hz for band in modes.crowded_bands(bands)]

    def volume(self) -> Figure:
        """Return the room's volume."""
        shell = self.design.shell
        return Figure("volume", self.figures.space.volume_m3, "m3", inputs=(shell.width_m, shell.length_m))
