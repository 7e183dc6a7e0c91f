"""How loud amplifiers and loudspeakers get at the seats, and what is asked of them."""

from __future__ import annotations

import math
from functools import cached_property
from typing import TYPE_CHECKING, Final

from roomlint.design.base import Missing, need
from roomlint.design.quantity import assumed
from roomlint.figures import conductors, level, settings
from roomlint.figures.domain import Refused
from roomlint.measure.routing import FRONTS
from roomlint.measure.view import View

if TYPE_CHECKING:
    from roomlint.design.listening import Loudspeaker, Seat, Subwoofer
    from roomlint.design.products import AmplifierData, Transducer
    from roomlint.design.quantity import Quantity
    from roomlint.measure.figure import Figure
    from roomlint.measure.routing import Driven, Source
    from roomlint.measure.world import World

LOW_BAND_HZ: Final = (20.0, 40.0, 60.0, 80.0, 100.0, 120.0)
"""The band of the low-frequency channel, in steps: at a single one a subwoofer off the floor may meet its own null."""
UNSAID: Final = "a reference level of {:.0f} dB, as of rooms of this size, for none is given"
NO_GAIN: Final = "neither walls nor the room lift what arrives"
ONLY_FLOOR: Final = "the floor lifts a subwoofer, walls and the room do not"
TOGETHER: Final = "subwoofers at their most arrive in step"
NO_WIRE: Final = "no loss in a cable that is not listed"
SAG: Final = (0.5, 0.5, "", "into half its rated load an amplifier gives one to two times its rated power")
NEAR_M: Final = 0.15
"""Nearer, a level at 1 m says nothing of what arrives."""
DB_PER_M: Final = 60.0
"""No length moves a level by more than this a metre, from there on."""


class Levels(View):
    """Levels at the seats."""

    # What is asked for

    @cached_property
    def reference_db(self) -> float:
        """Level of one main channel: the one entered, or the one that rooms of such a size are set to."""
        entered = self.design.calibration.reference_level_db
        if entered is not None:
            return entered.value
        return self.room_reference_db()

    @property
    def wanted_db(self) -> float:
        """Full scale of one main channel at the seats."""
        return self.reference_db + level.HEADROOM_DB

    @property
    def low_wanted_db(self) -> float:
        """Full scale of the low-frequency channel at the seats."""
        return self.wanted_db + level.LOW_GAIN_DB

    def _ask(self, world: World) -> None:
        if self.design.calibration.reference_level_db is None:
            world.assume(UNSAID.format(self.reference_db))

    def wanted(self) -> Figure:
        """Full scale that is asked for at the seats."""

        def compute(world: World) -> float:
            self._ask(world)
            return self.wanted_db

        return self.figure("level asked for", "dB", compute)

    def reference_seat(self) -> Seat:
        """Return the seat that levels are set for."""
        return self.figures.delays.reference()

    # What loudspeakers and amplifiers give

    def data(self, source: Source) -> Transducer:
        """Return the data of a source's product."""
        return self.figures.boundary.transducer(source)

    def voltage_sensitivity_db(self, world: World, source: Source) -> float:
        """Return a source's level at 1 m for 2.83 V: as its sheet says, or brought there from one watt."""
        data = self.data(source)
        found = world(need(data.sensitivity_db, data, "sensitivity"))
        if need(data.drive, data, "drive") == "1 W":
            return settings.voltage_sensitivity_db(found, world(need(data.impedance_ohm, data, "impedance")))
        return found

    def arriving_db(self, world: World, source: Source, seat: Seat) -> float:
        """Return what the way to a seat leaves of a level at 1 m, with what surfaces add, dB."""
        way = settings.level_at_seat_db(0.0, self._far_m(world, source, seat))
        if source.boundary_gain_db is not None:
            return way + world(source.boundary_gain_db)
        world.assume(NO_GAIN)
        return way

    def _far_m(self, world: World, source: Source, seat: Seat) -> float:
        far = self.figures.delays.far_m(world, source, seat)
        if far < NEAR_M:
            raise Refused(f"{far:.2f} m away a level at 1 m says nothing")
        return far

    def amplified(self, speaker: Loudspeaker, seat: Seat) -> Figure:
        """Level at a seat at the rated power of what drives a loudspeaker, less its cable's loss."""

        def compute(world: World) -> float:
            self._ask(world)
            volts = level.over_drive_db(self._at_terminals_v(world, speaker)) - self._wire_db(world, speaker)
            return self.voltage_sensitivity_db(world, speaker) + volts + self.arriving_db(world, speaker, seat)

        name = "level at the amplifier's rated power"
        return self.figure(name, "dB", compute, speaker, seat, per_m=DB_PER_M)

    def borne(self, speaker: Loudspeaker, seat: Seat) -> Figure:
        """Level at a seat that a loudspeaker itself reaches: its largest, or that of short peaks at its rated power."""

        def compute(world: World) -> float:
            self._ask(world)
            return self._borne_db(world, speaker) + self.arriving_db(world, speaker, seat)

        return self.figure("level that the loudspeaker bears", "dB", compute, speaker, seat, per_m=DB_PER_M)

    def _borne_db(self, world: World, source: Source) -> float:
        """Return the largest level of a source at 1 m; the less of both where its sheet gives two."""
        data, found = self.data(source), []
        if data.maximum_level_db is not None:
            found.append(world(data.maximum_level_db))
        powered = data.sensitivity_db is not None and data.impedance_ohm is not None and data.drive is not None
        if data.power_rating_w is not None and (powered or not found):
            found.append(level.for_power_db(
                self.voltage_sensitivity_db(world, source), world(need(data.impedance_ohm, data, "impedance")),
                level.SHORT_PEAKS * world(data.power_rating_w),
            ))  # fmt: skip
        if not found:
            raise Missing(data, "maximum_level")
        return min(found)

    def rated_first(self, source: Source) -> bool:
        """Whether a source's power rating ends before its largest level does."""
        stated = self.data(source).maximum_level_db
        return stated is None or self._borne_db(self.world, source) < stated.value

    def ends_first(self, speaker: Loudspeaker, seat: Seat) -> str:
        """Return what of a loudspeaker's chain ends first: amplifier, power rating or largest level."""
        if not self.figures.routing.is_active(speaker):
            amplified = self.amplified(speaker, seat)
            if amplified.value < self.borne(speaker, seat).value:
                return "amplifier"
        else:
            self.borne(speaker, seat)
        return "power rating" if self.rated_first(speaker) else "largest level"

    def peak(self, speaker: Loudspeaker, seat: Seat) -> Figure:
        """Level at a seat that a loudspeaker and what drives it reach."""
        borne = self.borne(speaker, seat)
        if self.figures.routing.is_active(speaker):
            return borne
        amplified = self.amplified(speaker, seat)
        return amplified if amplified.value < borne.value else borne

    def _at_terminals_v(self, world: World, source: Source) -> float:
        """Return the voltage at rated power at a source on its amplifier's output, V, without the cable."""
        way, load = self._way(source), self.figures.routing
        feed = way.feed
        across = load.load_ohm(world, feed)
        volts = self._output_v(world, load.amplifier_data(way.driver), across / 2.0 if feed.bridged else across)
        if feed.bridged:
            volts *= 2.0
        return volts * load.rating_ohm(world, source) / across if feed.wiring == "series" else volts

    def power_match(self, source: Source) -> Figure:
        """Power that a loudspeaker gets at the rated power of what drives it, over what it is rated for."""
        product = need(source.product, source, "product")
        data = need(product.loudspeaker, product, "loudspeaker")
        rating = need(data.power_rating_w, data, "power_rating")

        def compute(world: World) -> float:
            volts = self._at_terminals_v(world, source)
            return level.given_w(volts, self.figures.routing.rating_ohm(world, source)) / world(rating)

        return self.figure("power over the rated power", "", compute, source)

    def _way(self, source: Source) -> Driven:
        ways = self.figures.routing.feeding(source)
        if not ways:
            raise self.figures.routing.unsaid_amplifier() or Missing(self.design, "electronics.amplifiers[].feeds")
        return ways[0]

    def _output_v(self, world: World, data: AmplifierData, load_ohm: float) -> float:
        """Return the voltage that one channel gives into a load at its rated power there.

        By the largest rated load that is no more than the load: into more the voltage is no less.
        """
        rated = [(need(data.power_into_ohm, data, "power_into"), need(data.power_w, data, "power"))]
        rated += [(need(row.load_ohm, row, "load"), need(row.power_w, row, "power")) for row in data.powers]
        under = [row for row in rated if row[0].value <= load_ohm * (1.0 + 1e-6)]
        if under:
            into, power = max(under, key=lambda row: row[0].value)
            return level.rated_v(world(power), world(into))
        into, power = min(rated, key=lambda row: row[0].value)
        sag = self.once("sag", lambda: assumed(*SAG))
        return level.rated_v(world(power), world(into)) * math.pow(load_ohm / world(into), world(sag) / 2.0)

    def _wire_db(self, world: World, source: Source) -> float:
        cables = [cable for cable in self.figures.routing.cables_to(source) if cable.carries == "loudspeaker"]
        if not cables:
            world.assume(NO_WIRE)
            return 0.0
        cabling = self.figures.cabling
        return max(conductors.wire_loss_db(cabling.loop_ohm(world, cable), cabling.least_ohm(world, source))
                   for cable in cables)  # fmt: skip

    # Subwoofers

    def low(self, seat: Seat) -> Figure:
        """Level of all subwoofers together at a seat, each at its most."""
        subwoofers = self.figures.bass.placed_subwoofers()

        def compute(world: World) -> float:
            self._ask(world)
            if len(subwoofers) > 1:
                world.assume(TOGETHER)
            return level.in_step_db([self._low_db(world, one, seat) for one in subwoofers])

        return self.figure("level of the subwoofers", "dB", compute, seat, per_m=DB_PER_M)

    def _low_db(self, world: World, subwoofer: Subwoofer, seat: Seat) -> float:
        borne, data = self._borne_db(world, subwoofer), self.data(subwoofer)
        if not self.figures.routing.is_active(subwoofer) and self.figures.routing.feeding(subwoofer):
            need(data.sensitivity_db, data, "sensitivity")
            volts = level.over_drive_db(self._at_terminals_v(world, subwoofer)) - self._wire_db(world, subwoofer)
            borne = min(borne, self.voltage_sensitivity_db(world, subwoofer) + volts)
        if subwoofer.boundary_gain_db is not None:
            return borne + self.arriving_db(world, subwoofer, seat)
        world.assume(ONLY_FLOOR)
        far = self._far_m(world, subwoofer, seat)
        return settings.level_at_seat_db(borne, far) + self._floor_db(world, subwoofer, seat, far)

    def _floor_db(self, world: World, subwoofer: Subwoofer, seat: Seat, far_m: float) -> float:
        place = world.xyz(need(subwoofer.position, subwoofer, "position"))
        ear = world.xyz(need(seat.ear, seat, "ear"))
        image_m = (far_m**2 + 4.0 * max(place[2], 0.0) * max(ear[2], 0.0)) ** 0.5
        speed = self.figures.space.sound_speed_m_s(world)
        gains = [level.floor_gain_db(far_m, image_m, hz, speed) for hz in LOW_BAND_HZ]
        return level.incoherent_db(gains) - 10.0 * math.log10(len(gains))

    # Between seats, and over a week

    def fronts(self) -> tuple[Loudspeaker, ...]:
        """Return the front three, as far as they are there; raises `Missing` where a label would tell of one more."""
        found = tuple(one for one in self.design.loudspeakers if one.label in FRONTS)
        if len({one.label for one in found}) < len(FRONTS):
            unlabelled = self.figures.arrangement.unlabelled()
            if unlabelled is not None:
                raise unlabelled
        if not found:
            raise Missing(self.design, "loudspeakers")
        return found

    def over_reference(self, seat: Seat) -> Figure:
        """Level of the front three at a seat over that at the reference seat, with each set alike there."""
        fronts, delays = self.fronts(), self.figures.delays
        apart = [delays.gain_over_reference(speaker, seat) for speaker in fronts]
        count = len(fronts)

        def compute(world: World) -> float:
            return level.incoherent_db([one.at(world) for one in apart]) - level.incoherent_db([0.0] * count)

        return self.figure("level over that at the reference seat", "dB", compute, seat)

    def reference_level(self) -> Quantity:
        """Return the reference level that is entered, or raise `Missing`."""
        calibration = self.design.calibration
        return need(calibration.reference_level_db, calibration, "reference_level")

    def reference_figure(self) -> Figure:
        """Return the reference level as entered."""
        entered = self.reference_level()
        return self.figure("reference level", "dB", lambda w: w(entered))

    def room_reference_db(self) -> float:
        """Return the level that rooms of this volume are set to."""
        return level.room_reference_db(self.figures.space.volume_m3(self.world))

    def exposure(self, who: str) -> Figure:
        """Share of a week's allowance of sound that the hours at the reference level take."""
        entered, calibration = self.reference_level(), self.design.calibration
        hours = need(calibration.hours_a_week, calibration, "hours_a_week")
        allowed = level.ALLOWED_DB[who]
        return self.figure(
            "share of the week's sound", "%", lambda w: level.exposure_percent(w(entered), hours, allowed)
        )
