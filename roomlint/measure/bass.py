"""What the room's proportions and modes do to the bass, and where loudspeakers and subwoofers meet."""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING, Final

from roomlint.design.base import need
from roomlint.figures import modes
from roomlint.figures.direction import direction_vector
from roomlint.measure.seat_bass import SeatBass

if TYPE_CHECKING:
    from collections.abc import Iterable

    from roomlint.design.listening import Loudspeaker, Seat, Subwoofer
    from roomlint.design.products import Transducer
    from roomlint.design.quantity import Quantity
    from roomlint.figures.direction import Point3
    from roomlint.measure.boundary import Source
    from roomlint.measure.figure import Figure
    from roomlint.measure.world import World

AXIAL_TOP_HZ: Final = 200.0
ROW_PITCH_M: Final = 0.6
"""Less than this along where they face, seats stand in one row."""
_LESS_THAN_TIMES_HEIGHT: Final = 3.0
"""Both plan sides stay under three times the height."""


class Bass(SeatBass):
    """Modes of the room, what they do at the seats, and the crossovers."""

    @property
    def is_box(self) -> bool:
        """Whether the formulas of a box hold."""
        return self.figures.space.is_box

    def rows(self) -> int:
        """Return the number of rows: by their numbers, or by the steps between the ears along where the seats face."""
        seats = self.placed_seats()
        named = {seat.row for seat in seats if seat.row is not None}
        faced = next((seat for seat in seats if seat.reference), seats[0]).facing_deg.value
        x, y, _ = direction_vector(faced, 0.0)
        places = (need(seat.ear, seat, "ear") for seat in seats)
        ears = sorted(ear.x.value * x + ear.y.value * y for ear in places)
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

    def crossover_figure(self, crossover: Quantity) -> Figure:
        """Return a crossover as it is entered."""
        return self.figure("crossover", "Hz", lambda w: w(crossover))

    def crossover_ratio(self, speaker: Loudspeaker, crossover: Quantity) -> Figure:
        """Crossover entered for a loudspeaker over its product's lower limit."""
        product = need(speaker.product, speaker, "product")
        limit = need(self.data(speaker).low_limit_hz, product, "loudspeaker.low_limit")
        return self.figure("crossover over the lower limit", "", lambda w: w(crossover) / w(limit))

    def highest_crossover(self) -> Quantity | None:
        """Return the highest crossover entered, for whatever it is; None when none is."""
        return _highest(setting.crossover_hz for setting in self.design.calibration.settings)

    def highest_shared(self) -> Quantity | None:
        """Return the highest crossover entered for a loudspeaker, up to which subwoofers play together with it.

        What is entered for a subwoofer itself may be the end of the low-frequency channel. None when none is.
        """
        return _highest(self.crossover(speaker) for speaker in self.design.loudspeakers)

    def lower_limit(self, subwoofer: Subwoofer) -> Figure:
        """Lower limit of a subwoofer's band by its sheet."""
        product = need(subwoofer.product, subwoofer, "product")
        data = need(product.loudspeaker, product, "loudspeaker")
        limit = need(data.low_limit_hz, data, "low_limit")
        return self.figure("lower limit", "Hz", lambda w: w(limit), subwoofer)

    def upper_reach(self, subwoofer: Subwoofer, crossover: Quantity) -> Figure:
        """Upper limit of a subwoofer over a crossover."""
        product = need(subwoofer.product, subwoofer, "product")
        limit = need(self.data(subwoofer).high_limit_hz, product, "loudspeaker.high_limit")
        return self.figure("upper limit over the crossover", "", lambda w: w(limit) / w(crossover))

    def low_pass_ratio(self, subwoofer: Subwoofer, crossover: Quantity) -> Figure:
        """Low-pass of a subwoofer over the highest crossover."""
        corner = need(subwoofer.low_pass_hz, subwoofer, "low_pass")
        return self.figure("low-pass over the crossover", "", lambda w: w(corner) / w(crossover))

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

    def axial_step(self, *, largest: bool) -> Figure:
        """Smallest or largest step between two axial modes below 200 Hz; a plan of a metre square has two of them."""

        def steps(world: World) -> list[float]:
            found = modes.axial_modes(
                self.figures.space.box_m(world), AXIAL_TOP_HZ, self.figures.space.sound_speed_m_s(world)
            )
            return [gap.gap_hz for gap in modes.gaps(found)]

        name = "largest step between axial modes" if largest else "smallest step between axial modes"
        pick = max if largest else min
        return self.figure(name, "Hz", lambda w: pick(steps(w)))

    def volume(self) -> Figure:
        """Volume of the room."""
        return self.figure("volume", "m3", self.figures.space.volume_m3)


def _highest(entered: Iterable[Quantity | None]) -> Quantity | None:
    return max((hz for hz in entered if hz is not None), key=lambda hz: hz.value, default=None)
